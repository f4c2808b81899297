package working_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
)

// sweptVolume is π/4·b²·s.
func sweptVolume[R tolerance.Real[R]](bore, stroke R) R {
	return bore.Const(math.Pi / 4).Mul(bore).Mul(bore).Mul(stroke)
}

// A real is a formula made up at random over Real.
type real struct {
	op    int
	input int
	c     float64
	name  bool
	args  []*real
}

const (
	realInput = iota
	realConst
	realAdd
	realSub
	realMul
	realQuo
	realSqrt
	realSin
	realCos
	realAtan2
	realKinds
)

var realArity = [realKinds]int{0, 0, 2, 2, 2, 2, 1, 1, 1, 2}

func madeUpReal(r *rand.Rand, depth int) *real {
	f := &real{op: r.IntN(realKinds), input: r.IntN(4)}
	if depth == 0 {
		f.op = r.IntN(2)
	} else if f.op < realAdd && r.IntN(4) > 0 {
		f.op = realAdd + r.IntN(4)
	}
	f.c = []float64{math.Pi, math.Pi / 4, 2, 0.5, 1000, -3, 25.4}[r.IntN(7)]
	for range realArity[f.op] {
		f.args = append(f.args, madeUpReal(r, depth-1))
	}
	if f.op == realMul && r.IntN(2) == 0 {
		f.args[1] = nil // the square of the other
	}
	f.name = f.op >= realAdd && r.IntN(4) == 0
	return f
}

func readReal[R tolerance.Real[R]](f *real, in []R, named func(R) R) R {
	var a [2]R
	for i, g := range f.args {
		if a[i] = a[0]; g != nil {
			a[i] = readReal(g, in, named)
		}
	}
	var n R
	switch f.op {
	case realInput:
		return in[f.input]
	case realConst:
		return in[0].Const(f.c)
	case realAdd:
		n = a[0].Add(a[1])
	case realSub:
		n = a[0].Sub(a[1])
	case realMul:
		n = a[0].Mul(a[1])
	case realQuo:
		n = a[0].Quo(a[1])
	case realSqrt:
		n = a[0].Sqrt()
	case realSin:
		n = a[0].Sin()
	case realCos:
		n = a[0].Cos()
	case realAtan2:
		n = a[0].Atan2(a[1])
	}
	if f.name {
		return named(n)
	}
	return n
}

func TestSolveReal_everyLineRecomputes(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	solved, rounded, out, moved := 0, 0, 0, 0
	for range 2500 {
		f := madeUpReal(r, 1+r.IntN(4))
		floats, terms := make([]tolerance.Float, 4), make([]working.RealTerm, 4)
		for i := range floats {
			switch r.IntN(5) {
			case 0:
				floats[i] = tolerance.Float(r.NormFloat64())
			case 1:
				floats[i] = tolerance.Float(1.56 / 25.4)
			default:
				floats[i] = tolerance.Float(float64(r.IntN(100_000)-1000) / 1000)
			}
			terms[i] = working.GivenReal("size "+strconv.Itoa(i), "abcd"[i:i+1], float64(floats[i]), []string{"mm", "N/mm²", "°", ""}[i])
		}
		k := 0
		want := readReal(f, floats, asItIs)
		got := readReal(f, terms, func(n working.RealTerm) working.RealTerm {
			k++
			return n.Named("result "+strconv.Itoa(k), "r"+strconv.Itoa(k), "mm³")
		})
		if want.InRange() {
			require.Equal(t, float64(want), got.Value(), f)
		}
		style := working.RealStyle{Places: r.IntN(7)}
		if r.IntN(2) == 0 {
			style.Figures = 1 + r.IntN(10)
		}
		s, err := working.SolveReal(got, style)
		switch {
		case errors.Is(err, working.ErrRange):
			out++
			continue
		case errors.Is(err, working.ErrRounded):
			rounded++
			continue
		}
		require.NoError(t, err)
		solved++
		for _, st := range s.Steps {
			require.NoError(t, recompute(st, "mm³", "mm", "N/mm²", "°"), "%s\n%v", s.Text(), f)
		}
		if style.Figures == 0 && s.Steps[len(s.Steps)-1].Places != style.Places {
			moved++
		}
	}
	t.Logf("%d solutions; %d had other places than asked, %d could not be written, %d out of range", solved, moved, rounded, out)
}

func solveReal(t *testing.T, term working.RealTerm, s working.RealStyle) working.Solution {
	t.Helper()
	solution, err := working.SolveReal(term, s)
	require.NoError(t, err)
	return solution
}

func TestSolveReal_notation(t *testing.T) {
	a, b := working.GivenReal("load", "F", 320, "N"), working.GivenReal("rod length", "l", -2.5, "mm")
	k := a.Const
	for _, c := range []struct {
		term                    working.RealTerm
		words, symbols, numbers string
	}{
		{a.Mul(b), "load × rod length", "F × l", "320 N × (−2.5 mm)"},
		{b.Mul(a), "rod length × load", "l × F", "−2.5 mm × 320 N"},
		{a.Mul(b).Mul(a), "load × rod length × load", "F × l × F", "320 N × (−2.5 mm) × 320 N"},
		{a.Mul(b).Quo(a), "load × rod length ÷ load", "F × l ÷ F", "320 N × (−2.5 mm) ÷ 320 N"},
		{a.Quo(b).Mul(a), "(load ÷ rod length) × load", "(F ÷ l) × F", "(320 N ÷ (−2.5 mm)) × 320 N"},
		{a.Quo(b).Quo(a), "(load ÷ rod length) ÷ load", "(F ÷ l) ÷ F", "(320 N ÷ (−2.5 mm)) ÷ 320 N"},
		{a.Mul(b.Mul(a)), "load × (rod length × load)", "F × (l × F)", "320 N × (−2.5 mm × 320 N)"},
		{a.Quo(b.Add(a)), "load ÷ (rod length + load)", "F ÷ (l + F)", "320 N ÷ (−2.5 mm + 320 N)"},
		{a.Mul(a).Quo(b.Mul(b)), "load² ÷ (rod length)²", "F² ÷ l²", "(320 N)² ÷ (−2.5 mm)²"},
		{b.Add(a).Mul(b.Add(a)), "(rod length + load) × (rod length + load)", "(l + F) × (l + F)", "(−2.5 mm + 320 N) × (−2.5 mm + 320 N)"},
		{k(3).Mul(a), "3 × load", "3 × F", "3 × 320 N"},
		{k(-3).Mul(k(-0.5)), "−3 × (−0.5)", "−3 × (−0.5)", "−3 × (−0.5)"},
		{k(math.Pi).Mul(k(2 * math.Pi)).Mul(k(math.Pi / 2)), "π × (2 × π) × (π ÷ 2)", "π × (2 × π) × (π ÷ 2)", "π × (2 × π) × (π ÷ 2)"},
		{a.Mul(k(math.Pi / 180)).Sin(), "sine of (load × (π ÷ 180))", "sin(F × (π ÷ 180))", "sin(320 N × (π ÷ 180))"},
		{a.Sqrt().Add(b.Cos()), "square root of (load) + cosine of (rod length)", "√(F) + cos(l)", "√(320 N) + cos(−2.5 mm)"},
		{b.Atan2(a), "direction of (rod length, load)", "atan2(l, F)", "atan2(−2.5 mm, 320 N)"},
	} {
		st := solveReal(t, c.term, working.RealStyle{Figures: 6}).Steps[0]
		require.Equal(t, c.words, st.Words)
		require.Equal(t, c.symbols, st.Symbols)
		require.Equal(t, c.numbers, st.Numbers)
		require.NoError(t, recompute(st, "mm", "N"))
	}
	sum := b.Add(a)
	require.Equal(t, "(l + F)²", solveReal(t, sum.Mul(sum), working.RealStyle{}).Steps[0].Symbols)
}

func TestSolveReal_style(t *testing.T) {
	a := working.GivenReal("load", "F", 320, "N")
	b := working.GivenReal("length", "", 1.0/3, "m")
	torque := a.Mul(b).Named("torque", "T", "N m")
	s := solveReal(t, torque, working.RealStyle{Places: 1})
	require.Equal(t, "length ≈ 0.3333 m (exactly 0.3333333333333333 m)\n\ntorque = load × length\nT = F × length\n  ≈ 320 N × 0.3333 m\n  ≈ 106.7 N m\n", s.Text())
	s = solveReal(t, torque, working.RealStyle{Places: 1, Bare: true, Sign: true})
	require.Equal(t, "320 × 0.3333", s.Steps[0].Numbers)
	require.Equal(t, "+106.7 N m", s.Steps[0].Result)
	s = solveReal(t, torque, working.RealStyle{Figures: 2})
	require.Equal(t, "107 N m", s.Steps[0].Result)
	// Exact products are exact, and no result shows digits that float64 hasn't.
	s = solveReal(t, a.Mul(a), working.RealStyle{Places: 2})
	require.Equal(t, "102400.00", s.Steps[0].Result)
	require.True(t, s.Steps[0].Exact)
	s = solveReal(t, torque, working.RealStyle{Places: 15})
	require.Equal(t, "106.666666666667 N m", s.Steps[0].Result)
	require.Equal(t, "load\nF\n  = 320 N\n", solveReal(t, a, working.RealStyle{}).Text())
	require.Equal(t, "−320 N m", working.GivenReal("", "", -320, " N\nm ").String())
	require.Equal(t, "0.0000115 (1/K)", working.GivenReal("expansion", "α", 11.5e-6, "1/K").String())
	require.Equal(t, "2°", a.Const(2).Named("", "", "°").String())
	require.Equal(t, "2 °C", a.Const(2).Named("", "", "°C").String())
}

func FuzzSolveReal(f *testing.F) {
	f.Add(uint64(1), 86.0, 86.05, 0.3, int8(3), int8(0))
	f.Add(uint64(5), 1e-9, -1e12, math.Pi, int8(0), int8(9))
	f.Add(uint64(8), math.NaN(), 0.1, 1.0/3, int8(-3), int8(2))
	f.Fuzz(func(t *testing.T, seed uint64, a, b, c float64, places, figures int8) {
		r := rand.New(rand.NewPCG(seed, 0))
		g := madeUpReal(r, 1+r.IntN(4))
		var terms []working.RealTerm
		for i, x := range []float64{a, b, c, a} {
			terms = append(terms, working.GivenReal("", "abcd"[i:i+1], x, "mm"))
		}
		got := readReal(g, terms, func(n working.RealTerm) working.RealTerm { return n.Named("", "r", "N") })
		s, err := working.SolveReal(got, working.RealStyle{Places: int(places), Figures: int(figures)})
		if err != nil {
			var e *working.Error
			require.ErrorAs(t, err, &e)
			return
		}
		for _, st := range s.Steps {
			require.NoError(t, recompute(st, "mm", "N"), s.Text())
		}
	})
}
