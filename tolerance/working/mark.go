package working

import (
	"errors"

	"github.com/tenthou/tenthou/units"
)

// A Grade says how an answer stands to the right one. The zero value is
// Wrong.
type Grade uint8

// The grades.
const (
	Wrong Grade = iota
	// Right: no further from the right answer than was allowed.
	Right
	// RoundedTooFar: the right answer rounds to it, at the places that it
	// shows, but it lies further off than was allowed.
	RoundedTooFar
	// NoUnit: a number alone. It may be right in the units that the marking
	// names.
	NoUnit
)

var gradeNames = []string{"wrong", "right", "rounded too far", "no unit"}

// String is the grade in words.
func (g Grade) String() string { return word(gradeNames, int(g)) }

// MarshalText writes what String gives.
func (g Grade) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// UnmarshalText reads what String gives.
func (g *Grade) UnmarshalText(text []byte) error { return readWord("grade", gradeNames, text, g) }

// A Marking is an answer judged, as plain data.
type Marking[Q Quantity[Q]] struct {
	Grade  Grade            `json:"grade"`  // right, wrong, or what between
	Answer units.Written[Q] `json:"answer"` // as read; a number alone in the unit that suits it best
	Right  Q                `json:"right"`  // the right answer
	Off    Q                `json:"off"`    // the answer less the right one
	// Slips are what would explain a wrong answer, or a number without a
	// unit. More than one may; none is proof.
	Slips []Slip `json:"slips,omitempty"`
}

// Mark judges an answer to the question whose solution is t: a number with a
// unit, in any form that package units reads, right if it lies within the
// given distance of the right one.
//
// The slips it knows are a sign, a decimal place (10, 100, 1000), a number
// that is right in another unit, inches and millimetres (25.4), radius and
// diameter (2), and π left out or put in. One is named where the right answer
// with the slip lies within what the answer's last digit leaves open, or
// within the distance allowed, and neither is more than a twentieth of it.
//
// The errors are of type [*Error]: [ErrAnswer] with the parser's reason,
// [ErrTolerance] for a distance below zero, [ErrRange] for a term or distance
// out of range.
func Mark[Q Quantity[Q]](t TermOf[Q], answer string, within Q) (Marking[Q], error) {
	m := Marking[Q]{Right: t.Value()}
	switch {
	case !t.InRange():
		return m, &Error{Op: "mark", Field: clip(t.node().label()), Kind: ErrRange, Want: quantityRange}
	case !units.InRange(within):
		return m, &Error{Op: "mark", Field: "tolerance", Kind: ErrRange, Want: quantityRange}
	case within < 0:
		text, _ := units.AppendText(nil, within)
		return m, &Error{Op: "mark", Field: "tolerance", Value: string(text), Kind: ErrTolerance, Want: "0 or more"}
	}
	w, err := units.ParseWritten[Q](answer)
	if errors.Is(err, units.ErrNoUnit) {
		return m.markNumber(answer, within)
	}
	if err != nil {
		return m, &Error{Op: "mark", Field: "answer", Kind: ErrAnswer, Err: err}
	}
	m.read(w)
	off, ok := apart(w.Value, m.Right)
	switch {
	case ok && off <= within:
		m.Grade = Right
	case ok && 2*uint64(off) <= uint64(w.Step()): // the right answer, at the places of this one
		m.Grade = RoundedTooFar
	default:
		m.Slips = slips(m.Right, w, within)
	}
	return m, nil
}

func (m *Marking[Q]) read(w units.Written[Q]) { m.Answer, m.Off = w, w.Value.Sub(m.Right) }

// markNumber judges a number without a unit: in which would it be right?
func (m Marking[Q]) markNumber(answer string, within Q) (Marking[Q], error) {
	m.Grade = NoUnit
	for _, u := range everyUnit[Q]() {
		w, err := units.ParseWrittenIn(answer, u)
		if err != nil {
			if u == 0 {
				return Marking[Q]{Right: m.Right}, &Error{Op: "mark", Field: "answer", Kind: ErrAnswer, Err: err}
			}
			continue
		}
		right := m.Right != 0 && explains(w.Value, w.Step(), m.Right, within)
		if u == 0 || right && len(m.Slips) == 0 {
			m.read(w)
		}
		if right {
			m.Slips = append(m.Slips, Slip{Kind: OtherUnit, Unit: u.Symbol()})
		}
	}
	return m, nil
}

// apart is how far two quantities are apart; ok is false where that is out of
// range.
func apart[Q Quantity[Q]](a, b Q) (distance Q, ok bool) {
	distance = a.Sub(b)
	return distance.Abs(), units.InRange(distance)
}

// everyUnit lists the units of a quantity: beyond the last, the first comes
// again.
func everyUnit[Q units.Quantity]() (all []units.Unit[Q]) {
	for u := units.Unit[Q](0); u == 0 || u.Symbol() != units.Unit[Q](0).Symbol(); u++ {
		all = append(all, u)
	}
	return all
}
