package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// A Basis says how two figures agree. The zero Basis is Apart: they don't.
type Basis uint8

// How two figures can agree. Rounding is to nearest, and a tie may go to the
// even digit or away from zero: both rules are in use.
const (
	// Apart: no size rounds to both figures.
	Apart Basis = iota
	// Same: both figures are exactly the same size.
	Same
	// FromFirst: the second figure is the first one rounded.
	FromFirst
	// FromSecond: the first figure is the second one rounded.
	FromSecond
	// FromEither: each is the other one rounded.
	FromEither
	// FromThird: neither is the other one rounded, but a third, exact size
	// rounds to both.
	FromThird
	// Inward: two limits, the least rounded up and the greatest down, so that
	// the rounded ones allow nothing that the others don't: a rule in use for
	// limits, and no slip.
	Inward
)

var basisNames = [...]string{"apart", "the same size", "second from first", "first from second", "either from the other", "both from a third size", "rounded inward"}

// String says it in words.
func (b Basis) String() string { return word(basisNames[:], b) }

// MarshalText writes what String gives.
func (b Basis) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// UnmarshalText reads what String gives.
func (b *Basis) UnmarshalText(text []byte) error { return readWord("basis", basisNames[:], text, b) }

// shown is a printed value and what one step of its last place is worth, in
// quanta. A step of 0 is a value taken as exact.
type shown struct{ value, step int64 }

// sixteenths is the coarsest scale that a fraction is taken to be rounded to:
// 1/2 in is 8/16, since nobody measures in halves. Common practice.
const sixteenths = 16

func show[Q units.Quantity](w units.Written[Q]) shown {
	step := int64(w.Step())
	if d := int64(w.Denominator); d != 0 && d < sixteenths {
		step = step * d / sixteenths
	}
	return shown{int64(w.Value), step}
}

// apart is the distance of two values in range.
func apart(a, b int64) uint64 {
	if a < b {
		a, b = b, a
	}
	return uint64(a - b)
}

// agree reports whether some size lies within half a step of both figures.
func agree(a, b shown) bool { return 2*apart(a.value, b.value) <= uint64(a.step)+uint64(b.step) }

// rounds reports whether to is what from gives when it is rounded to nearest,
// a tie to the even digit or away from zero.
func rounds(from int64, to shown, zero int64) bool {
	d := 2 * apart(from, to.value)
	if d != uint64(to.step) || d == 0 {
		return d < uint64(to.step) || d == 0
	}
	return (to.value-zero)/to.step%2 == 0 || apart(to.value, zero) > apart(from, zero)
}

// zeroOf is what 0 of a unit is: 0 quanta, but for temperatures.
func zeroOf[Q units.Quantity](u units.Unit[Q]) int64 {
	if _, is := any(Q(0)).(units.Temperature); !is {
		return 0
	}
	zero, _ := units.ParseIn("0", u)
	return int64(zero)
}

// compare says how two printed figures agree.
func compare[Q units.Quantity](first, second units.Written[Q]) Basis {
	a, b := show(first), show(second)
	if a.value == b.value {
		return Same
	}
	if !agree(a, b) {
		return Apart
	}
	toSecond := rounds(a.value, b, zeroOf(second.Unit))
	toFirst := rounds(b.value, a, zeroOf(first.Unit))
	switch {
	case toSecond && toFirst:
		return FromEither
	case toSecond:
		return FromFirst
	case toFirst:
		return FromSecond
	}
	return FromThird
}
