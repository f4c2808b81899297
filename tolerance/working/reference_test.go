package working_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func lengthFormula[N tolerance.Number[N]](name string, a, b, c N) N {
	switch name {
	case "clearance":
		return a.Sub(b)
	case "mean":
		return a.Add(b).Scale(1, 2)
	case "gap":
		return a.Add(b.Sub(c).ScalePi(1, 1))
	case "proportion":
		return a.MulDiv(b, c)
	case "share":
		return a.Share(b, c)
	case "spread":
		return a.Spread(b, c)
	case "two_thirds":
		return a.Scale(2, 3)
	}
	return a.ScalePi(1, 1)
}

// Answers of whole formulas against Python's fractions and mpmath.
func TestSolve_reference(t *testing.T) {
	vectors.Load(t, "reference/worked_lengths.txt").Each(t, func(t *testing.T, c vectors.Case) {
		terms := [3]working.Term{}
		for i, name := range []string{"a", "b", "c"} {
			terms[i] = working.Given("", name, units.Length(c.Int64(name)))
		}
		u, err := units.ParseUnit[units.Length](c.Text("unit"))
		require.NoError(t, err)
		term := lengthFormula(c.Choice("formula", "clearance", "mean", "gap", "proportion", "share", "spread", "two_thirds", "circumference"), terms[0], terms[1], terms[2])
		s, err := working.Solve(term, units.Style[units.Length]{Unit: u, Places: c.Int("places")})
		require.NoError(t, err)
		require.Len(t, s.Steps, 1)
		require.Equal(t, c.Text("answer")+" "+u.Symbol(), strings.Replace(s.Steps[0].Result, "−", "-", 1))
		require.Equal(t, c.Bool("exact"), s.Steps[0].Exact)
	})
}

func pistonDrop[R tolerance.Real[R]](throw, rod, angle R) R {
	side := throw.Mul(angle.Sin())
	return throw.Sub(throw.Mul(angle.Cos())).Add(rod).Sub(rod.Mul(rod).Sub(side.Mul(side)).Sqrt())
}

func rodSwing[R tolerance.Real[R]](throw, rod, angle R) R {
	side := throw.Mul(angle.Sin())
	return side.Atan2(rod.Mul(rod).Sub(side.Mul(side)).Sqrt()).Quo(side.Const(math.Pi / 180))
}

// Answers of formulas that cross quantities against mpmath.
func TestSolveReal_reference(t *testing.T) {
	vectors.Load(t, "reference/worked_reals.txt").Each(t, func(t *testing.T, c vectors.Case) {
		given := func(col, unit string) working.RealTerm {
			return working.GivenReal("", col, c.Float(col), unit)
		}
		var term working.RealTerm
		switch c.Choice("formula", "swept", "drop", "swing") {
		case "swept":
			c.Ignore("c")
			term = sweptVolume(given("a", "mm"), given("b", "mm"))
		case "drop":
			term = pistonDrop(given("a", "mm"), given("b", "mm"), given("c", "rad"))
		default:
			term = rodSwing(given("a", "mm"), given("b", "mm"), given("c", "rad"))
		}
		s, err := working.SolveReal(term, working.RealStyle{Figures: c.Int("figures")})
		require.NoError(t, err)
		require.Equal(t, c.Text("answer"), s.Steps[len(s.Steps)-1].Result)
		for _, st := range s.Steps {
			require.NoError(t, recompute(st, "mm", "rad"), s.Text())
		}
	})
}

// Worked by hand in print.
func TestSolve_published(t *testing.T) {
	// 0.4476 in = 10.16 + 1.016 + 0.1778 + 0.01524 mm = 11.36904 mm, exactly
	// (a published table of inch conversions used digit by digit).
	sum := working.Exactly(400 * units.Thou).Add(working.Exactly(40 * units.Thou)).Add(working.Exactly(7 * units.Thou)).Add(working.Exactly(600 * units.Microinch))
	s, err := working.Solve(sum, units.Style[units.Length]{Places: units.AllPlaces})
	require.NoError(t, err)
	require.Equal(t, "10.16 mm + 1.016 mm + 0.1778 mm + 0.01524 mm\n  = 11.36904 mm\n", s.Text())

	// 84.9 mm = 3.34252 in (Machinery's Handbook Pocket Companion).
	s, err = working.Solve(working.Given("", "l", units.MustParseLength("84.9 mm")), units.Style[units.Length]{Unit: units.InInches, Places: 5})
	require.NoError(t, err)
	require.Equal(t, "3.34252 in", s.Steps[0].Result)
	require.False(t, s.Steps[0].Exact)

	// 36 ft × 0.3048 = 10.9728 m (NIST SP 811, B.7.2).
	s, err = working.Solve(working.Exactly(units.Foot).Scale(36, 1), units.Style[units.Length]{Unit: units.InMetres, Places: 4})
	require.NoError(t, err)
	require.Equal(t, "36 × 0.3048 m\n  = 10.9728 m\n", s.Text())

	// Piston 5.161 mm (0.2032 in) down at 19° with a stroke of 6 in and rods of
	// 12 in, as an engine manual's timing page gives it to four figures. 0.203258
	// worked out; the page cut rather than rounded, so its last digit is taken
	// with a unit of slack.
	drop := pistonDrop(working.GivenReal("", "r", 3, "in"), working.GivenReal("", "l", 12, "in"), working.GivenReal("", "θ", 19*math.Pi/180, "rad"))
	require.InDelta(t, 0.2032, drop.Value(), 0.0001)
}
