package working_test

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A fraction is a reading of Number of the test's own: exact, and aware of
// whether anything on the way was no whole number of quanta. π makes it
// rounded for good.
type fraction struct {
	r       *big.Rat
	rounded bool
}

var _ tolerance.Number[fraction] = fraction{}

func whole(v int64) fraction { return fraction{r: big.NewRat(v, 1)} }

func of(r *big.Rat, from ...fraction) fraction {
	f := fraction{r: r, rounded: !r.IsInt()}
	for _, g := range from {
		f.rounded = f.rounded || g.rounded
	}
	return f
}

func (f fraction) Add(g fraction) fraction { return of(new(big.Rat).Add(f.r, g.r), f, g) }
func (f fraction) Sub(g fraction) fraction { return of(new(big.Rat).Sub(f.r, g.r), f, g) }
func (f fraction) Abs() fraction           { return of(new(big.Rat).Abs(f.r), f) }
func (f fraction) Min(g fraction) fraction {
	if f.r.Cmp(g.r) < 0 {
		return of(f.r, f, g)
	}
	return of(g.r, f, g)
}
func (f fraction) Max(g fraction) fraction {
	if f.r.Cmp(g.r) > 0 {
		return of(f.r, f, g)
	}
	return of(g.r, f, g)
}

func (f fraction) Spread(more ...fraction) fraction {
	least, most := f, f
	for _, g := range more {
		least, most = least.Min(g), most.Max(g)
	}
	return most.Sub(least)
}

func (f fraction) Scale(num, den int64) fraction {
	return of(new(big.Rat).Mul(f.r, big.NewRat(num, den)), f)
}

func (f fraction) ScalePi(num, _ int64) fraction {
	return fraction{r: new(big.Rat), rounded: f.rounded || num != 0 && f.r.Sign() != 0}
}

func (f fraction) MulDiv(mul, div fraction) fraction {
	if div.r.Sign() == 0 {
		return fraction{r: new(big.Rat), rounded: true}
	}
	v := new(big.Rat).Mul(f.r, mul.r)
	return of(v.Quo(v, div.r), f, mul, div)
}

func (f fraction) Share(part, rest fraction) fraction { return f.MulDiv(part, part.Add(rest)) }

// An answer is marked exact if nothing was rounded on the way and it is
// printed in full, and only then.
func TestSolve_exactMeansExact(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 41))
	exact, rounded := 0, 0
	for range 1500 {
		f := madeUp(r, 1+r.IntN(3), 3, 20)
		terms, fractions := make([]working.Term, 3), make([]fraction, 3)
		for i := range terms {
			l := units.Length(1+r.Int64N(100_000)) * units.Micrometre
			if r.IntN(2) == 0 {
				l = units.Length(1+r.Int64N(10_000)) * units.Thou
			}
			terms[i], fractions[i] = working.Given("", "abc"[i:i+1], l), whole(int64(l))
		}
		got := read(f, terms, func(n working.Term) working.Term { return n.Named("between", "") })
		u := []units.Unit[units.Length]{units.InMillimetres, units.InInches}[r.IntN(2)]
		s, err := working.Solve(got, units.Style[units.Length]{Unit: u, Places: r.IntN(8)})
		if err != nil {
			continue // other tests look at these
		}
		last := s.Steps[len(s.Steps)-1]
		want := read(f, fractions, func(n fraction) fraction { return n })
		printed, err := units.ParseLength(last.Result)
		inFull := err == nil && printed == got.Value()
		if want.rounded || !inFull {
			rounded++
			require.False(t, last.Exact, s.Text())
			continue
		}
		exact++
		require.True(t, last.Exact, s.Text())
		require.Zero(t, want.r.Cmp(big.NewRat(int64(printed), 1)), s.Text())
	}
	require.Greater(t, exact, 300)
	require.Greater(t, rounded, 300)
}
