package tolerance_test

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The judge of the interval arithmetic knows nothing of intervals. It tries
// the formula in exact rationals at points of the operands: the ends that
// belong to them, points a hair inside the ends, far out where there is no
// end, at and beside zero, and some in between. The least and the greatest
// result, rounded outward, must be the ends that the operation gives, closed
// only where a whole number of quanta was hit.

var (
	hair = rat("1e-60")
	far  = rat("1e60")
	most = rat("1e40") // beyond it a result counts as without end
	ends = new(big.Rat).SetInt64(1 << 61)
	pi   = rat("3.1415926535897932384626433832795028841971693993751058209749445923078164062862089986280348253421170680") // published to 100 places
)

func rat(s string) *big.Rat { r, _ := new(big.Rat).SetString(s); return r }

func whole(v int64) *big.Rat { return new(big.Rat).SetInt64(v) }

// points are the values of i that the judge tries.
func points(r *rand.Rand, i Bracket) (list []*big.Rat) {
	add := func(v *big.Rat) {
		if holds(i, v) {
			list = append(list, v)
		}
	}
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	low, high := whole(int64(lo)), whole(int64(hi))
	if loEnd == Absent {
		low = new(big.Rat).Neg(far)
	}
	if hiEnd == Absent {
		high = far
	}
	add(low)
	add(new(big.Rat).Add(low, hair))
	add(high)
	add(new(big.Rat).Sub(high, hair))
	add(new(big.Rat))
	add(hair)
	add(new(big.Rat).Neg(hair))
	between := new(big.Rat).Sub(high, low)
	between.Mul(between, big.NewRat(r.Int64N(999), 1000))
	add(between.Add(between, low))
	return list
}

// shared are the values of i at and beside the ends of all: the spread is
// least where several operands have the same value.
func shared(i Bracket, all []Bracket) (list []*big.Rat) {
	add := func(v *big.Rat) {
		same := func(w *big.Rat) bool { return w.Cmp(v) == 0 }
		if holds(i, v) && !slices.ContainsFunc(list, same) {
			list = append(list, v)
		}
	}
	beside := func(v *big.Rat) {
		add(v)
		add(new(big.Rat).Add(v, hair))
		add(new(big.Rat).Sub(v, hair))
	}
	for _, j := range all {
		if lo, end := j.Lower(); end != Absent {
			beside(whole(int64(lo)))
		}
		if hi, end := j.Upper(); end != Absent {
			beside(whole(int64(hi)))
		}
	}
	if i.IsZero() {
		add(new(big.Rat))
	}
	add(far)
	add(new(big.Rat).Neg(far))
	return list
}

func holds(i Bracket, v *big.Rat) bool {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	below, above := v.Cmp(whole(int64(lo))), v.Cmp(whole(int64(hi)))
	return (loEnd == Absent || below > 0 || below == 0 && loEnd == Closed) &&
		(hiEnd == Absent || above < 0 || above == 0 && hiEnd == Closed)
}

// judged is the interval of the results at the points; ok is false where it
// leaves the range.
func judged(t *testing.T, points [][]*big.Rat, formula func([]*big.Rat) *big.Rat) (i Bracket, ok bool) {
	var least, greatest *big.Rat
	x := make([]*big.Rat, len(points))
	var try func(n int)
	try = func(n int) {
		if n < len(points) {
			for _, x[n] = range points[n] {
				try(n + 1)
			}
			return
		}
		v := formula(x)
		if v == nil {
			return
		}
		if least == nil || v.Cmp(least) < 0 {
			least = v
		}
		if greatest == nil || v.Cmp(greatest) > 0 {
			greatest = v
		}
	}
	try(0)
	require.NotNil(t, least)
	lo, loEnd, ok1 := outward(new(big.Rat).Neg(least))
	hi, hiEnd, ok2 := outward(greatest)
	if !ok1 || !ok2 {
		return i, false
	}
	i, err := NewInterval(units.Length(-lo), loEnd, units.Length(hi), hiEnd)
	require.NoError(t, err)
	return i, true
}

// outward is the least whole number not below v, as an upper end.
func outward(v *big.Rat) (q int64, e End, ok bool) {
	if v.Cmp(most) > 0 {
		return 0, Absent, true
	}
	up := new(big.Int).Neg(v.Num())
	up.Div(up, v.Denom()).Neg(up) // Euclidean division rounds down
	if new(big.Rat).SetInt(new(big.Int).Abs(up)).Cmp(ends) > 0 {
		return 0, Absent, false
	}
	if v.IsInt() {
		return up.Int64(), Closed, true
	}
	return up.Int64(), Open, true
}

// randomInterval has ends of all kinds, small or at the end of the range.
func randomInterval(r *rand.Rand) Bracket {
	value := func() units.Length {
		switch r.IntN(12) {
		case 0:
			return 0
		case 1:
			return units.Length((r.Int64N(5) - 2) << 60)
		case 2:
			return units.Length(r.Int64N(2_000_000_000_001) - 1_000_000_000_000)
		}
		return units.Length(r.IntN(15) - 7)
	}
	for {
		lo, hi := value(), value()
		if r.IntN(6) == 0 {
			return Exactly(lo)
		}
		i, err := NewInterval(min(lo, hi), End(r.IntN(3)), max(lo, hi), End(r.IntN(3)))
		if err == nil {
			return i
		}
	}
}
