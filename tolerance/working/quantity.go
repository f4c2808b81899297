package working

import (
	"math/big"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

const (
	// placesMax is the most decimal places that package units writes.
	placesMax = 18
	// figures is the least number of significant figures of a rounded number
	// that is used further.
	figures = 3
)

// A quantities is the scale of a quantity in one unit.
type quantities[Q Quantity[Q]] struct {
	style  units.Style[Q]
	quanta *big.Int // in one unit
	fine   int      // decimal places of a unit that are no finer than a quantum
	suffix string   // the unit after a number
}

func newRuler[Q Quantity[Q]](s units.Style[Q]) (*ruler, error) {
	switch {
	case s.Places != units.AllPlaces && (s.Places < 0 || s.Places > placesMax):
		return nil, &Error{Op: "solve", Field: "places", Value: strconv.Itoa(s.Places), Kind: ErrStyle, Want: "0 to 18, or units.AllPlaces"}
	case s.Rounding != units.NearestEven:
		return nil, &Error{Op: "solve", Field: "rounding", Value: s.Rounding.String(), Kind: ErrStyle, Want: "nearest, ties to even: the values themselves are rounded so"}
	}
	r := &ruler{substitutions: form{bare: s.Bare}, results: form{sign: s.Sign}}
	one := oneOf(s.Unit)
	text, _ := units.Append(nil, 0, units.Style[Q]{Unit: s.Unit})
	s.Bare, s.Sign = false, false
	r.scale = &quantities[Q]{style: s, quanta: big.NewInt(int64(one)), fine: len(strconv.FormatInt(int64(one), 10)) - 1, suffix: string(text[1:])}
	return r, nil
}

// oneOf is one unit of u.
func oneOf[Q units.Quantity](u units.Unit[Q]) Q {
	one, _ := units.ParseIn("1", u)
	return one
}

// quantityRange is what errors say of a value out of range.
const quantityRange = "within ±2^61 quanta, and nothing divided by zero"

func (q *quantities[Q]) refuses(n *node) string {
	if units.InRange(Q(n.value)) {
		return ""
	}
	return quantityRange
}

func (q *quantities[Q]) symbol(*node) (string, *big.Rat) { return "", nil }

func (q *quantities[Q]) held(n *node) *big.Rat { return new(big.Rat).SetInt64(n.value) }
func (q *quantities[Q]) one() *big.Int         { return q.quanta }
func (q *quantities[Q]) most(*node) int        { return q.fine }

func (q *quantities[Q]) asked(n *node, exact bool) int {
	asked := q.style.Places
	if asked < 0 {
		var finite bool
		if asked, finite = q.finite(n); !finite {
			asked = q.fine
		}
	}
	if !exact { // digits finer than the quantum would say nothing
		asked = min(asked, q.fine)
	}
	return asked
}

func (q *quantities[Q]) start(n *node, asked int) int {
	for n.value != 0 {
		size := big.NewInt(n.value)
		if size.Quo(size.Mul(size, power10(asked)), q.quanta).CmpAbs(power10(figures-1)) >= 0 {
			break
		}
		asked++
	}
	return asked
}

func (q *quantities[Q]) padded(needs, asked int) int {
	if q.style.Places < 0 {
		return needs
	}
	return max(needs, asked)
}

func (q *quantities[Q]) finite(n *node) (int, bool) { return units.Places(Q(n.value), q.style.Unit) }

func (q *quantities[Q]) number(n *node, places int, f form) string {
	if places <= placesMax {
		s := q.style
		s.Places, s.Bare, s.Sign = places, f.bare, f.sign
		text, _ := units.Append(make([]byte, 0, 32), Q(n.value), s)
		return minus(string(text))
	}
	scaled := big.NewInt(n.value)
	text := decimals(nearest(scaled.Mul(scaled, power10(places)), q.quanta), places, q.style.Point, f.sign)
	if f.bare {
		return text
	}
	return text + q.suffix
}

func (q *quantities[Q]) exactly(n *node) string {
	text, _ := units.AppendText(make([]byte, 0, 32), Q(n.value))
	return minus(string(text))
}

func (q *quantities[Q]) advice() string {
	return "another unit, or no result that is rounded to a quantum and then multiplied up"
}
