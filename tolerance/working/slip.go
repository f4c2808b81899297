package working

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// A SlipKind is a common way for an answer to go wrong.
type SlipKind uint8

// The kinds of slip.
const (
	NoSlip         SlipKind = iota
	Sign                    // right but for its sign: the difference the wrong way round
	DecimalPlace            // 10, 100 or 1000 times too large or too small
	OtherUnit               // the number is right in another unit
	InchMillimetre          // 25.4 times too large or too small
	Doubled                 // twice the right answer: a diameter for a radius
	Halved                  // half of it: a radius for a diameter
	PiLeftOut               // π times too small
	PiPutIn                 // π times too large
)

var slipNames = []string{"none", "sign", "decimal place", "other unit", "inches and millimetres", "doubled", "halved", "pi left out", "pi put in"}

// String names the slip.
func (k SlipKind) String() string { return word(slipNames, int(k)) }

// MarshalText writes what String gives.
func (k SlipKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *SlipKind) UnmarshalText(text []byte) error { return readWord("slip", slipNames, text, k) }

// A Slip would explain an answer. Where it is a matter of a ratio, the answer
// is Num/Den times the right one.
type Slip struct {
	Kind SlipKind `json:"kind"`           // which of the common ways
	Unit string   `json:"unit,omitempty"` // that the number is right in, for OtherUnit
	Num  int64    `json:"num,omitempty"`
	Den  int64    `json:"den,omitempty"`
}

// ratios are the slips by a ratio, in the order in which they are named.
var ratios = [...]struct {
	kind     SlipKind
	num, den int64
}{
	{Sign, -1, 1},
	{DecimalPlace, 10, 1}, {DecimalPlace, 1, 10},
	{DecimalPlace, 100, 1}, {DecimalPlace, 1, 100},
	{DecimalPlace, 1000, 1}, {DecimalPlace, 1, 1000},
	{InchMillimetre, 127, 5}, {InchMillimetre, 5, 127},
	{Doubled, 2, 1}, {Halved, 1, 2},
}

// slips are those that lead from the right answer to w.
func slips[Q Quantity[Q]](right Q, w units.Written[Q], within Q) (found []Slip) {
	if right == 0 || w.Value == 0 {
		return nil
	}
	value, step := w.Value, w.Step()
	for _, r := range ratios {
		if explains(value, step, right.Scale(r.num, r.den), within.Scale(r.num, r.den).Abs()) {
			found = append(found, Slip{Kind: r.kind, Num: r.num, Den: r.den})
		}
	}
	if !w.Compound {
		from := oneOf(w.Unit)
		for _, u := range everyUnit[Q]() {
			to := oneOf(u)
			if u != w.Unit && explains(value.MulDiv(to, from), step.MulDiv(to, from), right, within) {
				found = append(found, Slip{Kind: OtherUnit, Unit: u.Symbol()})
			}
		}
	}
	if explains(value, step, right.ScalePi(1, 1), within.ScalePi(1, 1)) {
		found = append(found, Slip{Kind: PiPutIn})
	}
	if explains(value.ScalePi(1, 1), step.ScalePi(1, 1), right, within) {
		found = append(found, Slip{Kind: PiLeftOut})
	}
	return found
}

// explains reports whether an answer, with the step of its last digit, may
// come from what a slip has made of the right one: within half the step, where
// that is no more than a twentieth of the answer, or within the tolerance and
// a twentieth of what was made. A quantum is allowed for the rounding of what
// was made.
func explains[Q Quantity[Q]](answer, step, made, within Q) bool {
	off, ok := apart(answer, made)
	if !ok {
		return false
	}
	fine := 10*uint64(step) <= uint64(answer.Abs()) // no step passes 2^58 quanta
	return fine && 2*uint64(off) <= uint64(step)+2 || off <= within && off <= made.Abs()/20
}

// String is the slip in words.
func (s Slip) String() string {
	large := s.Num >= s.Den
	switch s.Kind {
	case Sign:
		return "right but for its sign"
	case DecimalPlace, InchMillimetre:
		times, cause := "25.4", "inches and millimetres"
		if s.Kind == DecimalPlace {
			times, cause = decimal(max(s.Num, s.Den)), "the decimal point"
		}
		if large {
			return times + " times too large: " + cause
		}
		return times + " times too small: " + cause
	case OtherUnit:
		return "the number is right with the unit " + s.Unit
	case Doubled:
		return "twice too large: a diameter for a radius, or counted twice"
	case Halved:
		return "half the size: a radius for a diameter, or halved for nothing"
	case PiLeftOut:
		return "π times too small: π left out"
	case PiPutIn:
		return "π times too large: π put in for nothing"
	}
	return s.Kind.String()
}

// Explain is the marking in words, without the right answer.
func (m Marking[Q]) Explain() string {
	s := m.Grade.String()
	switch {
	case m.Grade == RoundedTooFar:
		return "right as far as it goes, but rounded too far"
	case m.Grade == NoUnit && len(m.Slips) == 0:
		return "no unit"
	}
	words := make([]string, len(m.Slips))
	for i, slip := range m.Slips {
		words[i] = slip.String()
	}
	return both(s, ": ", strings.Join(words, "; or "))
}
