package working

import (
	"math/big"
	"strings"
)

// A scale knows the values of one kind of term, and how they are written.
type scale interface {
	// refuses says what a line wants instead of a value that is out of range,
	// or can't be written.
	refuses(n *node) (want string)
	// held is the value, in quanta.
	held(n *node) *big.Rat
	// symbol is the sign by which lines show a constant, and what it stands
	// for; empty for one that they show as a number.
	symbol(n *node) (string, *big.Rat)
	// one is how many quanta a unit has.
	one() *big.Int
	// asked is the number of places that the answer should have; exact tells
	// that nothing was rounded to get it.
	asked(n *node, exact bool) int
	// start is the fewest places of a rounded number that is used further, in
	// a solution whose answer has the places asked for.
	start(n *node, asked int) int
	// padded is how many an exact number gets that needs so many.
	padded(needs, asked int) int
	// most is the decimal places that a rounded value is worth.
	most(n *node) int
	// finite is the least number of places that shows n exactly; ok is false
	// where that is none, or more than one wants to see.
	finite(n *node) (places int, ok bool)
	// number writes n to so many places.
	number(n *node, places int, form form) string
	// exactly writes n exactly.
	exactly(n *node) string
	// advice is what may help where rounding shows.
	advice() string
}

// A form is how a number is set.
type form struct {
	bare bool // without its unit
	sign bool // + where it is above zero
}

// A ruler measures with a scale what stands on paper.
type ruler struct {
	scale
	substitutions, results form
}

// scaled is n in units of the last place.
func (r *ruler) scaled(n *node, places int) *big.Int { return r.scaledRat(r.held(n), places) }

// scaledRat is the same for so many quanta.
func (r *ruler) scaledRat(v *big.Rat, places int) *big.Int {
	return nearest(new(big.Int).Mul(v.Num(), power10(places)), new(big.Int).Mul(v.Denom(), r.one()))
}

// shows is the number that stands on paper for n, in units.
func (r *ruler) shows(it *item) *big.Rat {
	if it.sign != "" {
		return r.held(it.node)
	}
	return new(big.Rat).SetFrac(r.scaled(it.node, it.places), power10(it.places))
}

// decimals writes n units of the last place, of so many places.
func decimals(n *big.Int, places int, point, sign bool) string {
	text := new(big.Int).Abs(n).String()
	if len(text) <= places {
		text = strings.Repeat("0", places+1-len(text)) + text
	}
	if places > 0 {
		text = text[:len(text)-places] + "." + text[len(text)-places:]
		if point {
			text = strings.TrimPrefix(text, "0")
		}
	}
	switch {
	case n.Sign() < 0:
		return minusSign + text
	case n.Sign() > 0 && sign:
		return "+" + text
	}
	return text
}

const minusSign = "−"

// minus puts a proper minus sign for the hyphen.
func minus(text string) string {
	if rest, ok := strings.CutPrefix(text, "-"); ok {
		return minusSign + rest
	}
	return text
}
