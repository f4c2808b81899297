package valvetrain

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A ShimAction is what a plan does with a valve. The zero value is ShimStaysOpen,
// which settles nothing.
type ShimAction uint8

// The actions.
const (
	// ShimStaysOpen: nothing at hand settles it; it keeps its shim and is named
	// among the undecided.
	ShimStaysOpen ShimAction = iota
	// ShimStays: its clearance is in band, and it keeps its shim.
	ShimStays
	// ShimFromValve: it gets the shim that comes out of another valve.
	ShimFromValve
	// ShimFromDrawer: it gets a spare shim.
	ShimFromDrawer
	// ShimToBuy: it gets a size that is to be bought.
	ShimToBuy
)

var shimActionNames = []string{"stays open", "stays", "from another valve", "from the drawer", "to buy"}

// String is the action in words.
func (a ShimAction) String() string { return words.Of(shimActionNames, a) }

// MarshalText writes what String gives.
func (a ShimAction) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (a *ShimAction) UnmarshalText(text []byte) error {
	if want, ok := words.Read(shimActionNames, text, a); !ok {
		return &InputError{"shim action", strconv.Quote(inputText(string(text))), want}
	}
	return nil
}

// A ShimMove is what a plan does with one valve.
type ShimMove struct {
	Valve  int               `json:"valve"`  // its place in the head's list
	Where  string            `json:"where"`  // its name
	Now    tolerance.Verdict `json:"now"`    // of the clearance as measured
	Action ShimAction        `json:"action"` // where its shim comes from
	// From is the place of the valve, of the spare shim or of the size, in its
	// own list, by Action; its own place where it keeps its shim.
	From  int               `json:"from"`
	Shim  tolerance.Bracket `json:"shim"`  // the shim it has then; zero where it keeps an unmeasured one
	After tolerance.Bracket `json:"after"` // its clearance then; as measured where it keeps its shim
	Then  tolerance.Verdict `json:"then"`  // of After: Within, or it is among the undecided
	Off   units.Length      `json:"off"`   // how far After's middle is from the clearance aimed at, rounded up; 0 where it isn't Within
}

// A ShimBuy is a size to buy.
type ShimBuy struct {
	Size   int `json:"size"`   // its place in the series
	Pieces int `json:"pieces"` // how many
}

// A ShimLeft is a shim that is left over: From is the place of the valve it came
// out of, or, with Spare, of the drawer.
type ShimLeft struct {
	From  int  `json:"from"`  // place in its list
	Spare bool `json:"spare"` // whether it came from the drawer
}

// A ShimPlan says, for a whole head, which shim goes where. It is the best of all
// that can be: most valves in band for certain; of those, fewest shims bought;
// then, where that is allowed, fewest in-band valves disturbed; then the least sum
// of distances from the clearances aimed at; then the least greatest distance;
// then the fewest valves on the tight side of their aim, since a clearance that is
// a little large taps where one too small burns the valve (common practice); then
// the first valves get the first shims.
//
// A valve is in band only if the whole bracket of its clearance is. One whose
// clearance lies on both sides of a limit is not: the plan gives it another shim
// where it can, and names it among the undecided all the same, since a blade may
// tell that it needs none. One that nothing settles keeps its own shim.
//
// So the plan never buys more than shimming each valve by itself would, unless it
// brings a valve in that by itself would stay out.
type ShimPlan struct {
	Moves     []ShimMove   `json:"moves"`     // valve by valve, in the head's order
	Buy       []ShimBuy    `json:"buy"`       // in the order of the series
	Left      []ShimLeft   `json:"left"`      // from valves first, then from the drawer
	Undecided []ShimUnsure `json:"undecided"` // valves that can't be told, now or after, in order
	InBand    int          `json:"inBand"`    // valves in band for certain after the plan
	Bought    int          `json:"bought"`    // shims to buy
	Disturbed int          `json:"disturbed"` // valves whose shim is changed though they are in band now
	Off       units.Length `json:"off"`       // sum of all distances from the clearances aimed at, rounded up
	Greatest  units.Length `json:"greatest"`  // the greatest of them, rounded up
}

// PlanShims plans a whole head. See [ShimPlan] for what is best, [ShimPlanner] for
// how it is found. It fails with an [InputError] where a reading can't be; a valve
// that can't be told is no error, but is named among the undecided with what to
// try: one whose clearance has no upper end since every blade went in, one that
// took no blade and may be held open, one whose shim wasn't measured, one whose
// bracket is too wide for the band, and one that no shim suits.
//
// Clearances are measured at the temperature that the engine maker's manual says,
// cold or hot, with the cam on its base circle. Turn the engine by hand with the
// plugs out; with a camshaft out, keep the pistons clear of the valves. Valve
// springs are under load. Measure each clearance again when the shims are in.
func PlanShims(h ShimHead) (ShimPlan, error) {
	var p ShimPlanner
	return p.Plan(&h)
}

// Text is a move in words: "inlet 3: the shim out of exhaust 1". The head, the one
// that was planned, names what the numbers stand for.
func (m ShimMove) Text(h *ShimHead) string {
	var b strings.Builder
	b.WriteString(m.Where)
	b.WriteString(": ")
	named := func(list []ShimPiece) string {
		if m.From < 0 || m.From >= len(list) {
			return "?"
		}
		return list[m.From].Name
	}
	switch m.Action {
	case ShimStays:
		b.WriteString("stays as it is")
	case ShimFromValve:
		from := "?"
		if m.From >= 0 && m.From < len(h.Valves) {
			from = h.Valves[m.From].Where
		}
		fmt.Fprintf(&b, "the shim out of %s", from)
	case ShimFromDrawer:
		fmt.Fprintf(&b, "%s from the drawer", named(h.Drawer))
	case ShimToBuy:
		fmt.Fprintf(&b, "%s, to buy", named(h.Series))
	default:
		b.WriteString("not settled, keeps its shim")
	}
	return b.String()
}
