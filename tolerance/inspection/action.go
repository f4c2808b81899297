package inspection

import "github.com/tenthou/tenthou/internal/words"

// An Action is what becomes of a part. The zero Action is MeasureAgain: what
// isn't known is not a pass.
type Action uint8

// The actions, the worse for the part the later, but for MeasureAgain.
const (
	MeasureAgain    Action = iota // something is missing, undecided or doubtful
	ReUse                         // as it is
	CleanAndReUse                 // clean or deglaze, nothing is cut
	ReconditionSame               // work it at the size it has: polish, hone, reface
	ReconditionTo                 // to a named oversize, undersize or height
	Repair                        // liner, bush, insert, weld
	Replace                       // with a new part
	Scrap                         // no part of it can be used
)

var actionNames = []string{
	"measure again", "re-use", "clean and re-use", "recondition at the same size", "recondition to size", "repair", "replace", "scrap",
}

// String is the action in words.
func (a Action) String() string { return words.Of(actionNames, a) }

// MarshalText writes what String gives.
func (a Action) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what String gives.
func (a *Action) UnmarshalText(text []byte) error { return read("action", actionNames, text, a) }

// A Decision is what becomes of one part, or of a set that one part governs,
// and why.
type Decision struct {
	Step   Step   `json:"step"`            // where on the bench it is made
	Part   string `json:"part"`            // "cylinder bores", "main journals"
	Where  string `json:"where,omitempty"` // "cylinder 3"; empty for the whole set
	Action Action `json:"action"`          // what becomes of it
	Size   string `json:"size,omitempty"`  // to what size: "+0.50 mm: 86.50 to 86.52 mm"
	// Because is what forced it, in words: the reading, the limit and the
	// margin, or the part's condition.
	Because string `json:"because"`
	// Governs is the part of the set that decided for all of it: "cylinder 3".
	Governs string `json:"governs,omitempty"`
	// Settle says what to find out, and with what, where that would change the
	// action; a MeasureAgain always has it.
	Settle string `json:"settle,omitempty"`
	// Slips holds what looks like a slip among the limits and readings that
	// the decision rests on, by their paths.
	Slips []string `json:"slips,omitempty"`
}

// Worst is the decision that governs a set: of those that settle something the
// worst for the part, the first of equals; but where none is worse than re-use
// after cleaning, one that asks to measure again comes before it, since a set
// isn't passed with a part unknown. Of no decisions it is the zero one.
func Worst(decisions ...Decision) (worst Decision) {
	open, found := -1, false
	for i, d := range decisions {
		switch {
		case d.Action == MeasureAgain:
			if open < 0 {
				open = i
			}
		case !found || d.Action > worst.Action:
			worst, found = d, true
		}
	}
	if open >= 0 && worst.Action <= CleanAndReUse {
		return decisions[open]
	}
	return worst
}
