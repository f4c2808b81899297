package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// A PairOf is one size printed twice, as a rule in two units: 0.006 in
// (0.152 mm).
type PairOf[Q units.Quantity] struct {
	First  units.Written[Q] `json:"first"`  // as printed
	Second units.Written[Q] `json:"second"` // as printed beside it
}

// A Pair is one length printed twice.
type Pair = PairOf[units.Length]

// String is the pair as it is printed.
func (p PairOf[Q]) String() string { return p.First.String() + " (" + p.Second.String() + ")" }

// side is the figure on one side.
func (p PairOf[Q]) side(s Side) units.Written[Q] {
	if s == Second {
		return p.Second
	}
	return p.First
}

func (p PairOf[Q]) inRange() error {
	if err := inRange("first", p.First); err != nil {
		return err
	}
	return inRange("second", p.Second)
}

// A Relation says what two figures were held to.
type Relation uint8

// What two figures can be held to.
const (
	SameSize    Relation = iota // one size in two units
	InOrder                     // least and greatest of one column
	WithinWear                  // the limit for new parts and the wear limit
	InRatio                     // a second measure that follows from the first
	LiftNotSize                 // a lobe's lift and what it can be
)

var relationNames = [...]string{"same size", "in order", "within wear", "in ratio", "lift"}

// String is the relation in lower case.
func (r Relation) String() string { return word(relationNames[:], r) }

// MarshalText writes what String gives.
func (r Relation) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *Relation) UnmarshalText(text []byte) error {
	return readWord("relation", relationNames[:], text, r)
}

// A Limit says which figure of a column is meant.
type Limit uint8

// The figures that a column can have.
const (
	Value Limit = iota
	Least
	Greatest
	Size    // before a ±
	Allowed // after a ±
)

var limitNames = [...]string{"value", "least", "greatest", "size", "tolerance"}

// String is the figure's name in lower case.
func (l Limit) String() string { return word(limitNames[:], l) }

// MarshalText writes what String gives.
func (l Limit) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads what String gives.
func (l *Limit) UnmarshalText(text []byte) error { return readWord("limit", limitNames[:], text, l) }

// A SlipOf is one explanation of two figures that don't agree: a suspicion,
// which nothing acts upon.
type SlipOf[Q units.Quantity] struct {
	Kind    Kind             `json:"kind"`            // what may have happened
	Also    Kind             `json:"also,omitzero"`   // a small slip that must come on top, or NoSlip
	In      Side             `json:"in"`              // the figure that would be wrong
	Shift   int              `json:"shift,omitzero"`  // DecimalPlace: how many places too far right (too great) the digits stand
	Printed units.Written[Q] `json:"printed"`         // that figure, as printed
	Undone  units.Written[Q] `json:"undone,omitzero"` // it without the slip, where the slip can be undone; else zero
	Correct units.Written[Q] `json:"correct"`         // what the other figure asks for, as it would have been printed
	Via     units.Written[Q] `json:"via,omitzero"`    // RoundedTwice: the figure between
	Rank    uint8            `json:"rank"`            // the lower, the likelier; equal ranks explain it equally
}

// A Slip is one explanation of two lengths that don't agree.
type Slip = SlipOf[units.Length]

// A ResultOf is what came of holding two figures to each other.
type ResultOf[Q units.Quantity] struct {
	Relation Relation    `json:"relation"`       // what they were held to
	Limit    Limit       `json:"limit"`          // which figure of the column it is
	Pair     PairOf[Q]   `json:"pair"`           // the two figures
	Basis    Basis       `json:"basis"`          // how they agree; Apart where they don't or it isn't SameSize
	Slips    []SlipOf[Q] `json:"slips,omitzero"` // the likeliest first, at most four; none where nothing is amiss
}

// A Result is what came of holding two lengths to each other.
type Result = ResultOf[units.Length]

// Flagged reports whether something is amiss.
func (r ResultOf[Q]) Flagged() bool { return len(r.Slips) > 0 }

// Likeliest is the first of the slips, and the zero one where nothing is amiss.
func (r ResultOf[Q]) Likeliest() SlipOf[Q] {
	if len(r.Slips) == 0 {
		return SlipOf[Q]{}
	}
	return r.Slips[0]
}

// Tied counts the slips that explain it as well as the likeliest one does.
func (r ResultOf[Q]) Tied() (n int) {
	for n < len(r.Slips) && r.Slips[n].Rank == r.Slips[0].Rank {
		n++
	}
	return n
}

// CheckPair holds two printed figures of one size to each other. They agree,
// and nothing is flagged, where some exact size gives both when it is rounded
// to nearest, be it the first figure, the second or a third size. Else the
// slips tell what may have happened. A value out of range is a [CheckError].
func CheckPair[Q units.Quantity](p PairOf[Q]) (ResultOf[Q], error) {
	return checkPair(p, Neither, Neither)
}

// CheckConversion is [CheckPair] where it is known which side the part was
// designed in. That figure is exact and the other must be what rounding it to
// nearest gives: this tells a figure that was cut off in cases where CheckPair
// must allow that it is the exact one.
func CheckConversion[Q units.Quantity](p PairOf[Q], design Side) (ResultOf[Q], error) {
	if design != First && design != Second {
		design = Neither
	}
	return checkPair(p, design, Neither)
}

func checkPair[Q units.Quantity](p PairOf[Q], design, suspect Side) (ResultOf[Q], error) {
	r := ResultOf[Q]{Pair: p}
	if err := p.inRange(); err != nil {
		return r, err
	}
	r.Basis = compare(p.First, p.Second)
	switch r.Basis {
	case FromFirst:
		if design == Second {
			r.Basis = Apart
		}
	case FromSecond:
		if design == First {
			r.Basis = Apart
		}
	case FromThird:
		if design != Neither {
			r.Basis = Apart
		}
	}
	if r.Basis == Apart {
		r.Slips = newSearch(p, design, suspect).slips()
	}
	return r, nil
}
