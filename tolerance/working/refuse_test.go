package working_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func refusal(t *testing.T, term working.Term, s units.Style[units.Length]) *working.Error {
	t.Helper()
	solution, err := working.Solve(term, s)
	require.Empty(t, solution)
	var e *working.Error
	require.ErrorAs(t, err, &e)
	return e
}

func TestSolve_outOfRange(t *testing.T) {
	a := working.Given("width", "w", units.Millimetre)
	mm := units.Style[units.Length]{Places: 3}
	e := refusal(t, a.Scale(1, 0), mm)
	require.ErrorIs(t, e, working.ErrRange)
	require.ErrorIs(t, e, units.ErrRange)
	require.EqualError(t, e, "working: solve result: out of range; within ±2^61 quanta, and nothing divided by zero")
	// The first that has a name is told.
	e = refusal(t, a.MulDiv(a, a.Sub(a)).Named("ratio", "q").Add(a).Named("sum", "s"), mm)
	require.Equal(t, "ratio", e.Field)
	e = refusal(t, working.Given("", "x", units.OutOfRange[units.Length]()).Add(a), mm)
	require.Equal(t, "x", e.Field)
	e = refusal(t, working.Exactly(units.OutOfRange[units.Length]()), mm)
	require.Equal(t, "result", e.Field)
	long := "a" + strings.Repeat("ü", 100)
	e = refusal(t, a.Scale(1, 0).Named(long, ""), mm)
	require.Equal(t, "a"+strings.Repeat("ü", 31), e.Field)
}

// Formulas too long to write are refused, at once.
func TestSolve_tooLong(t *testing.T) {
	a := working.Given("reading", "a", units.Micrometre)
	mm := units.Style[units.Length]{Places: 3}
	sum := a
	for range 900 {
		sum = sum.Add(a)
	}
	require.Equal(t, "0.901 mm", text(t, sum, 3).Steps[0].Result)
	for range 900 {
		sum = sum.Add(a)
	}
	e := refusal(t, sum.Named("total", "t"), mm)
	require.ErrorIs(t, e, working.ErrTooLong)
	require.EqualError(t, e, "working: solve total: too long to write out; at most 2000 operands and operations in a line: name the results between")

	// What doubles sixty times in a line would be 2^60 long.
	double := working.Exactly(units.Picometre)
	for range 60 {
		double = double.Add(double)
	}
	require.ErrorIs(t, refusal(t, double, mm), working.ErrTooLong)
	double = double.Spread(double).Share(double, double)
	require.ErrorIs(t, refusal(t, double, mm), working.ErrTooLong)
	// In steps it is sixty lines.
	steps := working.Given("one", "a", units.Picometre)
	for range 60 {
		steps = steps.Add(steps).Named("double", "d")
	}
	s := text(t, steps, 9)
	require.Len(t, s.Steps, 60)
	require.Equal(t, "d₅₉ + d₅₉", s.Steps[59].Symbols)
	require.Equal(t, "1152921504.606846976 mm", s.Steps[59].Result)

	many := a
	for range 10_001 {
		many = many.Max(a).Named("", "m")
	}
	e = refusal(t, many, mm)
	require.ErrorIs(t, e, working.ErrTooLong)
	require.Contains(t, e.Error(), "at most 10000 operations")
	deep := a
	for range 100_000 {
		deep = deep.Abs()
	}
	require.ErrorIs(t, refusal(t, deep, mm), working.ErrTooLong)
}

// A third of an inch is held to a picometre. Multiplied ten million times the
// rounding is inches: in inches, where a picometre is no decimal fraction, no
// line can show it, and in millimetres one can.
func TestSolve_rounded(t *testing.T) {
	third := working.Given("four picometres", "a", 4*units.Picometre).Scale(1, 3).Named("third", "b")
	much := third.Scale(1_000_000_000_000_000, 1).Named("much", "c")
	e := refusal(t, much, units.Style[units.Length]{Unit: units.InInches, Places: 3})
	require.ErrorIs(t, e, working.ErrRounded)
	require.EqualError(t, e, "working: solve much: rounding on the way shows in every line; another unit, or no result that is rounded to a quantum and then multiplied up")
	s := text(t, much, 0)
	require.Equal(t, "1000000000000000 × 0.000000001 mm", s.Steps[1].Numbers)
	require.Equal(t, "≈ 1000000 mm", "≈ "+s.Steps[1].Result)
	require.False(t, s.Steps[1].Exact)
}

// A rounded answer shows no digits finer than the quantum, however many are
// asked for, even where its own line is exact.
func TestSolve_noFinerThanTheQuantum(t *testing.T) {
	third := working.Given("", "a", units.Millimetre).Scale(1, 3).Named("third", "b")
	s := text(t, third.Scale(3, 1), 18)
	require.Equal(t, "0.333333333 mm", s.Steps[0].Result)
	require.Equal(t, "0.999999999 mm", s.Steps[1].Result)
	require.False(t, s.Steps[1].Exact)
}

// A third of 0.001500001 mm is a hair more than 0.0005 mm, which rounds up to
// 0.001 mm; to a picometre it is 0.0005 mm, which rounds to 0.000 mm. One place
// more, and line and result agree.
func TestSolve_oneMorePlace(t *testing.T) {
	third := working.Given("", "a", 1_500_001*units.Picometre).Scale(1, 3)
	require.Equal(t, 500*units.Nanometre, third.Value())
	last := text(t, third, 3).Steps[0]
	require.Equal(t, "0.001500001 mm ÷ 3", last.Numbers)
	require.Equal(t, "0.0005 mm", last.Result)
	require.Equal(t, 4, last.Places)
	require.False(t, last.Exact)
}

func TestSolveReal_refuses(t *testing.T) {
	a := working.GivenReal("load", "F", 320, "N")
	for _, s := range []working.RealStyle{{Places: -1}, {Places: 16}, {Figures: -1}, {Figures: 16}} {
		_, err := working.SolveReal(a, s)
		require.ErrorIs(t, err, working.ErrStyle)
	}
	_, err := working.SolveReal(a, working.RealStyle{Figures: 16})
	require.EqualError(t, err, `working: solve figures "16": not a style to write a solution in; 0 to 15`)
	for _, term := range []working.RealTerm{a.Quo(a.Sub(a)), a.Const(-1).Sqrt(), a.Const(math.NaN()), a.Const(math.Inf(-1)), a.Sub(a).Atan2(a.Sub(a))} {
		_, err := working.SolveReal(term, working.RealStyle{})
		require.ErrorIs(t, err, working.ErrRange)
		require.Contains(t, err.Error(), "a number: nothing divided by zero")
	}
	for _, size := range []float64{1e31, -1e31, 1e-31} {
		_, err := working.SolveReal(working.GivenReal("x", "", size, ""), working.RealStyle{})
		require.EqualError(t, err, "working: solve x: out of range; a magnitude from 1e-30 to 1e30")
	}
	// What float64 has lost, no line can show: (10²⁰ + 1) − 10²⁰ is 0 in it.
	lost := a.Const(1e20).Add(a.Const(1)).Sub(a.Const(1e20))
	require.Zero(t, lost.Value())
	_, err = working.SolveReal(lost, working.RealStyle{Places: 2})
	require.ErrorIs(t, err, working.ErrRounded)
	require.EqualError(t, err, "working: solve result: rounding on the way shows in every line; a formula that doesn't take almost all of a number away from it")
}

// Two numbers that differ in the sixth figure would print alike, and nothing
// can be divided by their difference, nor has a number below zero a root:
// they get more figures.
func TestSolve_differencesSurvive(t *testing.T) {
	a := working.Given("", "a", 50*units.Millimetre+units.Micrometre/10)
	b := working.Given("", "b", 50*units.Millimetre)
	s, err := working.Solve(b.MulDiv(b, a.Sub(b)), units.Style[units.Length]{Unit: units.InInches})
	require.NoError(t, err)
	require.NoError(t, recompute(s.Steps[0], "in"), s.Text())
	require.Equal(t, "984252 in", s.Steps[0].Result) // 25 000 000 mm

	third, close := working.GivenReal("", "a", 1.0/3, ""), working.GivenReal("", "b", 1.0/3-1e-5, "")
	for _, term := range []working.RealTerm{
		third.Quo(third.Sub(close)), close.Sub(third).Atan2(third.Sub(close)), third.Sub(close).Sqrt(),
	} {
		s, err := working.SolveReal(term, working.RealStyle{Figures: 4})
		require.NoError(t, err)
		require.NoError(t, recompute(s.Steps[0]), s.Text())
	}
}
