package working

import (
	"math"
	"math/big"
	"strconv"
	"strings"
)

// A RealStyle says how the answer of a solution in real numbers is written.
// The zero style rounds it to a whole number.
type RealStyle struct {
	Places  int  // decimal places, 0 to 15
	Figures int  // where above 0: at least so many significant figures instead, to 15
	Bare    bool // leave the units out of the substitutions
	Sign    bool // write + before results that are above zero
}

const (
	realFigures = 15 // that a float64 is worth
	realExact   = 12 // up to which a number is written out rather than rounded
	realUsed    = 4  // at least, of a rounded number that is used further
	// realLeast and realMost bound the magnitudes that a line can show.
	realLeast = 1e-30
	realMost  = 1e30
)

// SolveReal writes out how t was calculated. Inputs and exact results are
// written as they are, where that takes no more than 12 significant figures;
// what is rounded and used further gets as many as it takes for each line to
// re-compute.
//
// The errors are of type [*Error]: [ErrStyle], [ErrRange] for a term that is
// no number, or that a line shows and whose magnitude is not between 10⁻³⁰
// and 10³⁰, [ErrTooLong], and [ErrRounded] where float64 lost so many digits
// that no line would be true.
func SolveReal(t RealTerm, s RealStyle) (Solution, error) {
	for _, f := range []struct {
		name  string
		value int
	}{{"places", s.Places}, {"figures", s.Figures}} {
		if f.value < 0 || f.value > realFigures {
			return Solution{}, &Error{Op: "solve", Field: f.name, Value: strconv.Itoa(f.value), Kind: ErrStyle, Want: "0 to 15"}
		}
	}
	r := &ruler{substitutions: form{bare: s.Bare}, results: form{sign: s.Sign}}
	r.scale = &reals{style: s}
	return solve(t.node(), r)
}

// reals is the scale of real numbers: a quantum and a unit are both 1.
type reals struct {
	style   RealStyle
	figures int // of the answer
}

var (
	bigOne = big.NewInt(1)
	// multiples of π that lines show as such.
	multiples = []struct {
		value    float64
		text     string
		num, den int64
	}{
		{math.Pi, "π", 1, 1},
		{2 * math.Pi, "(2 × π)", 2, 1},
		{math.Pi / 2, "(π ÷ 2)", 1, 2},
		{math.Pi / 4, "(π ÷ 4)", 1, 4},
		{math.Pi / 180, "(π ÷ 180)", 1, 180},
	}
)

func (r *reals) refuses(n *node) string {
	switch x := math.Abs(n.float()); {
	case !(x <= math.MaxFloat64):
		return "a number: nothing divided by zero, no root of a negative number, no direction of a point from itself"
	case x != 0 && (x < realLeast || x > realMost):
		return "a magnitude from 1e-30 to 1e30"
	}
	return ""
}

func (r *reals) symbol(n *node) (text string, value *big.Rat) {
	if n.op == opConstant && n.unit == "" {
		for _, m := range multiples {
			if m.value == n.float() {
				return m.text, new(big.Rat).Mul(pi, big.NewRat(m.num, m.den))
			}
		}
	}
	return "", nil
}

// held is the shortest decimal that tells the number from its neighbours: for
// what was typed in, that is what was typed.
func (r *reals) held(n *node) *big.Rat {
	if _, v := r.symbol(n); v != nil {
		return v
	}
	v, _ := new(big.Rat).SetString(strconv.FormatFloat(n.float(), 'e', -1, 64))
	return v
}

func (r *reals) one() *big.Int { return bigOne }

// exponent is that of ten in the number.
func exponent(n *node) int {
	_, e, _ := strings.Cut(strconv.FormatFloat(n.float(), 'e', -1, 64), "e")
	exp, _ := strconv.Atoi(e)
	return exp
}

// placesFor is how many decimal places show n to so many figures.
func placesFor(n *node, figures int) int { return max(figures-1-exponent(n), 0) }

func (r *reals) asked(n *node, exact bool) int {
	asked := r.style.Places
	if r.style.Figures > 0 {
		asked = placesFor(n, r.style.Figures)
	}
	if !exact {
		asked = min(asked, r.most(n))
	}
	r.figures = asked + exponent(n) + 1
	return asked
}

func (r *reals) start(n *node, _ int) int { return placesFor(n, max(r.figures, realUsed)) }

func (r *reals) padded(needs, _ int) int { return needs }

func (r *reals) most(n *node) int { return placesFor(n, realFigures) }

func (r *reals) finite(n *node) (int, bool) {
	digits, e, _ := strings.Cut(strconv.FormatFloat(math.Abs(n.float()), 'e', -1, 64), "e")
	exp, _ := strconv.Atoi(e)
	figures := max(len(digits)-1, 1) // without the point
	return max(figures-1-exp, 0), figures <= realExact
}

func (r *reals) number(n *node, places int, f form) string {
	v := r.held(n)
	text := decimals(nearest(new(big.Int).Mul(v.Num(), power10(places)), v.Denom()), places, false, f.sign)
	if f.bare {
		return text
	}
	return text + behind(n.unit)
}

func (r *reals) advice() string {
	return "a formula that doesn't take almost all of a number away from it"
}

func (r *reals) exactly(n *node) string { return exactReal(n) }

func exactReal(n *node) string {
	return minus(strconv.FormatFloat(n.float(), 'f', -1, 64)) + behind(n.unit)
}

// behind is a unit as it stands behind a number: degrees, minutes and seconds
// follow at once, 1/K in brackets.
func behind(unit string) string {
	switch {
	case unit == "":
		return ""
	case unit == "°", unit == "′", unit == "″":
		return unit
	case unit[0] >= '0' && unit[0] <= '9':
		return " (" + unit + ")"
	}
	return " " + unit
}
