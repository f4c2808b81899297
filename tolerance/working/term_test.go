package working_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

var (
	_ tolerance.Number[working.Term]                                = working.Term{}
	_ tolerance.Number[working.TermOf[units.TemperatureDifference]] = working.TermOf[units.TemperatureDifference]{}
	_ tolerance.Real[working.RealTerm]                              = working.RealTerm{}
)

// A term has the value that the quantity's own methods give, in range or out.
func TestTerm_valueIsTheQuantitys(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	out := 0
	for range 5000 {
		f := madeUp(r, r.IntN(6), 3, 1_000_000)
		lengths := []units.Length{anySize[units.Length](r), anySize[units.Length](r), units.Length(r.Uint64())}
		terms := []working.Term{working.Given("a", "a", lengths[0]), working.Exactly(lengths[1]), working.Given("", "c", lengths[2])}
		want := read(f, lengths, asItIs)
		got := read(f, terms, func(n working.Term) working.Term { return n.Named("x", "") })
		require.Equal(t, want, got.Value(), f)
		require.Equal(t, want.InRange(), got.InRange())
		require.Equal(t, want.String(), got.String())
		if !want.InRange() {
			out++
		}
	}
	require.Greater(t, out, 500)
}

func TestTerm_zero(t *testing.T) {
	var z working.Term
	require.Zero(t, z.Value())
	require.True(t, z.InRange())
	require.Equal(t, "0 mm", z.String())
	a := working.Given("a", "a", units.Millimetre)
	require.Equal(t, units.Millimetre, z.Add(a).Sub(z).Max(z).Spread(z, z).Abs().Value())
	require.Equal(t, -units.Millimetre, a.Scale(-1, 1).Min(z).Value())
	require.False(t, a.MulDiv(a, z).InRange())
	require.False(t, a.Share(z, z).InRange())
	require.Equal(t, "0 mm + 1 mm", text(t, z.Add(working.Exactly(units.Millimetre)), 0).Steps[0].Numbers)
	require.Equal(t, "0 mm\n", text(t, z, 0).Text())
	require.Equal(t, "nothing\nn\n  = 0 mm\n", text(t, z.Named("nothing", "n"), 0).Text())
	require.Equal(t, "nothing = 1 mm − 1 mm\n  = 0 mm\n", text(t, working.Exactly(units.Millimetre).Sub(working.Exactly(units.Millimetre)).Named("nothing", ""), 0).Text())

	var r working.RealTerm
	require.Zero(t, r.Value())
	require.True(t, r.InRange())
	require.Equal(t, "0", r.String())
	require.Equal(t, 1.0, r.Cos().Value())
	require.False(t, r.Quo(r).InRange())
	require.False(t, r.Atan2(r).InRange())
	require.False(t, r.Const(-1).Sqrt().InRange())
	require.False(t, r.Const(math.Inf(1)).InRange())
	require.Equal(t, "0 s", r.Named("", "", "s").String())
}

// A term with no name keeps the one it has; one that has a name gets a line of
// its own for the second.
func TestTerm_named(t *testing.T) {
	a := working.Given("a", "a", units.Millimetre)
	require.Equal(t, a, a.Named("", ""))
	require.Equal(t, a, a.Named(" \n", "\x00"))
	twice := a.Add(a).Named("double", "d").Named("diameter", "D")
	require.Equal(t, "double = a + a\nd = a + a\n  = 1 mm + 1 mm\n  = 2 mm\n\ndiameter = double\nD = d\n  = 2 mm\n", text(t, twice, 0).Text())
	// Naming makes a new term, and leaves the old as it was.
	sum := a.Add(a)
	_ = sum.Named("sum", "s")
	require.Equal(t, "a + a\n  = 1 mm + 1 mm\n  = 2 mm\n", text(t, sum, 0).Text())
}

// Each operation allocates its node and nothing else, but for the values that
// a spread hands over, and the second node of a name.
func TestTerm_allocates(t *testing.T) {
	a, b := grooveAndRing()
	for name, op := range map[string]func(){
		"add":    func() { termSink = a.Add(b) },
		"mulDiv": func() { termSink = a.MulDiv(b, a) },
		"spread": func() { termSink = a.Spread(b, a) },
		"scale":  func() { termSink = a.Scale(1, 2) },
		"named":  func() { termSink = a.Add(b).Named("sum", "s").Named("", "") },
	} {
		most := 1.0
		if name == "named" || name == "spread" {
			most = 2
		}
		require.LessOrEqual(t, testing.AllocsPerRun(100, op), most, name)
	}
}

func text(t *testing.T, term working.Term, places int) working.Solution {
	t.Helper()
	s, err := working.Solve(term, units.Style[units.Length]{Places: places})
	require.NoError(t, err)
	return s
}
