package inspection

import "github.com/tenthou/tenthou/internal/words"

// A State says what was seen of one thing that needs no size. The zero State
// is NotLooked.
type State uint8

// The states.
const (
	NotLooked State = iota // nobody has looked, or it isn't written down
	No                     // looked, and it isn't so
	Yes                    // it is so
)

var stateNames = []string{"", "no", "yes"}

// String is the state in a word; empty for NotLooked.
func (s State) String() string { return words.Of(stateNames, s) }

// MarshalText writes what String gives.
func (s State) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *State) UnmarshalText(text []byte) error { return read("state", stateNames, text, s) }

// A Condition is what is seen of a part and overrules its sizes.
type Condition struct {
	Cracked State `json:"cracked,omitzero"` // by eye or by any test
	Scored  State `json:"scored,omitzero"`  // scratches that catch a finger nail
	Blued   State `json:"blued,omitzero"`   // the colours of overheating
	Pitted  State `json:"pitted,omitzero"`  // corroded or fretted
	// CrackTested is that a crack test was made (dye, magnetic particles), and
	// PressureTested a pressure test. What they found stands in Cracked.
	CrackTested    State  `json:"crackTested,omitzero"`
	PressureTested State  `json:"pressureTested,omitzero"` // see CrackTested
	Remarks        string `json:"remarks,omitempty"`       // as written at the bench
}

// Care is what the limits ask beside sizes. The zero Care asks for no test.
// Each action is what the maker orders for a part found so; MeasureAgain, the
// zero value, is taken as the usual one.
type Care struct {
	CrackTest    bool   `json:"crackTest,omitzero"`    // a crack test before it is passed
	PressureTest bool   `json:"pressureTest,omitzero"` // a pressure test before it is passed
	Cracked      Action `json:"cracked,omitzero"`      // usually Replace; Repair where the maker allows it
	Scored       Action `json:"scored,omitzero"`       // usually ReconditionSame
	Blued        Action `json:"blued,omitzero"`        // usually Replace: the hardness is in doubt
	Pitted       Action `json:"pitted,omitzero"`       // usually ReconditionSame
}

// or is the action, or the usual one.
func (a Action) or(usual Action) Action {
	if a == MeasureAgain {
		return usual
	}
	return a
}

// Overrule is the decision on a part once its condition is looked at. A crack
// decides whatever was measured: the part is replaced, or repaired where the
// maker allows it. Scores, pits and the colours of overheating make the
// decision worse where sizes alone would have been milder, never better. A part
// that the limits want tested, and that isn't, is not passed and not
// machined: it is measured again, with what is asked.
//
// What a blued or scored part is worth is common practice; the engine maker's
// manual governs.
func (c Condition) Overrule(ask Care, bySize Decision) Decision {
	d := bySize
	if c.Cracked == Yes {
		d.Action, d.Size, d.Settle = ask.Cracked.or(Replace), "", ""
		d.Because = "cracked: that decides, whatever it measures"
		return d
	}
	for _, x := range [...]struct {
		found State
		then  Action
		why   string
	}{
		{c.Blued, ask.Blued.or(Replace), "blued by heat: its hardness is in doubt"},
		{c.Scored, ask.Scored.or(ReconditionSame), "scored"},
		{c.Pitted, ask.Pitted.or(ReconditionSame), "pitted"},
	} {
		if x.found != Yes {
			continue
		}
		if d.Action == MeasureAgain && x.then < Repair {
			d.Because = join(d.Because, x.why) // how far it must be worked is for the sizes to say
			continue
		}
		if x.then > d.Action {
			d.Action, d.Size, d.Settle, d.Because = x.then, "", "", x.why
		}
	}
	if d.Action >= Replace {
		return d
	}
	for _, x := range [...]struct {
		asked bool
		done  State
		what  string
	}{
		{ask.CrackTest, c.CrackTested, "crack test"},
		{ask.PressureTest, c.PressureTested, "pressure test"},
	} {
		if x.asked && x.done != Yes {
			if d.Action != MeasureAgain {
				d.Because = join(d.Because, "by size alone it would be: "+d.Action.String())
			}
			d.Action, d.Size = MeasureAgain, ""
			d.Settle = join(d.Settle, "a "+x.what+", which the limits ask for and no one has written down")
		}
	}
	return d
}

// join is two clauses, or the one there is.
func join(a, b string) string {
	if a == "" {
		return b
	}
	return a + "; " + b
}
