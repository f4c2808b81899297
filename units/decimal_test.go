package units

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"
)

func (s suite[Q, P]) decimals(t *testing.T) {
	rnd, table := seeded(), s.table()
	for range 1000 {
		v := Q(table.sample(rnd))
		for _, u := range s.units() {
			d, exact := v.Decimal(u, AllPlaces, NearestEven)
			got, err := FromDecimal(d, u)
			if exact {
				require.NoError(t, err)
				require.Equal(t, int64(v), int64(got))
			} else if err == nil { // rounded onto some quantum, but not onto v
				require.NotEqual(t, int64(v), int64(got))
			}
			// A decimal between two quanta is refused.
			row := table.unit(uint8(u))
			_, err = FromDecimal(d.Add(decimal.New(1, int32(-row.finite-1))), u)
			require.ErrorIs(t, err, ErrTooFine)
		}
	}
	u := Unit[Q](0)
	for _, c := range []struct {
		d    decimal.Decimal
		kind error
	}{
		{decimal.New(1, 2_000_000_000), ErrRange},
		{decimal.New(-1, math.MaxInt32), ErrRange},
		{decimal.New(1, 20), ErrRange},
		{decimal.New(1, -2_000_000_000), ErrTooFine},
		{decimal.New(1, math.MinInt32), ErrTooFine},
		{decimal.New(1, -30), ErrTooFine},
		{decimal.New(1, -60), ErrTooFine},
		{decimal.New(1, -61), ErrTooFine},
		{decimal.NewFromBigInt(ten(1_000_000), 0), ErrRange},
		{decimal.NewFromBigInt(ten(1_000_000), -999_980), ErrRange},
		{decimal.NewFromBigInt(new(big.Int).Add(ten(61), big.NewInt(1)), -61), ErrTooFine},
		{decimal.New(math.MaxInt64, 0), ErrRange},
		{decimal.New(math.MinInt64, 0), ErrRange},
	} {
		got, err := FromDecimal(c.d, u)
		var e *RangeError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, c.kind)
		require.Zero(t, got)
		require.Equal(t, table.quantity, e.Quantity)
		require.LessOrEqual(t, len(e.Value), 64)
		require.Less(t, len(err.Error()), 300)
	}
	for _, zero := range []decimal.Decimal{{}, decimal.New(0, math.MaxInt32), decimal.New(0, math.MinInt32)} {
		got, err := FromDecimal(zero, u)
		require.NoError(t, err)
		require.Zero(t, got)
	}
	got, err := FromDecimal(decimal.RequireFromString("1."+strings.Repeat("0", 60)), u)
	require.NoError(t, err)
	require.EqualValues(t, table.units[0].quanta, got)
}

func TestDecimals(t *testing.T) { each(t, tester.decimals) }

func TestFromDecimal_errors(t *testing.T) {
	_, err := FromDecimal(decimal.RequireFromString("0.00000000001"), InInches)
	require.EqualError(t, err, "units: decimal length 1·10^-11 in: finer than the quantum; a whole number of quanta: every multiple of 0.00000001 in is one")
	_, err = FromDecimal(decimal.New(3, 40), InMillimetres)
	require.EqualError(t, err, "units: decimal length 3·10^40 mm: out of range; within -2305843009 mm to 2305843009 mm")
	_, err = FromDecimal(decimal.NewFromBigInt(ten(50), 0), InMillimetres)
	require.EqualError(t, err, "units: decimal length of more than 40 digits: out of range; within -2305843009 mm to 2305843009 mm")
	_, err = FromDecimal(decimal.New(-300, 0), InCelsius)
	require.EqualError(t, err, "units: decimal temperature -300·10^0 °C: out of range; within -273 °C to 256204778 °C")
}

// Nearest against fractions: every exponent of a float64, and ties.
func (s suite[Q, P]) nearest(t *testing.T) {
	rnd, table := seeded(), s.table()
	check := func(x float64, u Unit[Q]) {
		t.Helper()
		row := table.unit(uint8(u))
		got, err := Nearest(x, u)
		want := new(big.Rat).SetFloat64(x)
		if want != nil {
			want.Mul(want, new(big.Rat).SetInt64(row.quanta))
			n := rounded(want, NearestEven)
			if n.Add(n, big.NewInt(row.zero)); n.IsInt64() && table.inRange(n.Int64()) {
				require.NoError(t, err, "%v", x)
				require.Equal(t, n.Int64(), int64(got), "%v %v", x, u)
				return
			}
		}
		var e *RangeError
		require.ErrorAs(t, err, &e, "%v", x)
		require.ErrorIs(t, err, ErrRange)
		require.Zero(t, got)
		require.LessOrEqual(t, len(e.Value), 64)
	}
	for _, u := range s.units() {
		row := table.unit(uint8(u))
		for _, x := range []float64{0, math.Copysign(0, -1), math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64, 0x1p-1022, 0.1, 1, math.Pi, 1e9} {
			check(x, u)
			check(-x, u)
		}
		for e := -1080; e < 1024; e += 1 + rnd.IntN(8) {
			check(math.Ldexp(1+rnd.Float64(), e), u)
			check(-math.Ldexp(1, e), u)
		}
		// Products about 2^64, where a carry could be lost.
		for range 300 {
			check(math.Exp2(64)/float64(row.quanta)*(1+(rnd.Float64()-0.5)*0x1p-50), u)
		}
		edge := float64(limit) / float64(row.quanta)
		for range 300 {
			check(math.Exp2(-70+rnd.Float64()*140)*float64(1-2*rnd.IntN(2)), u)
			check((float64(rnd.IntN(1000))+0.5)/float64(row.quanta), u) // near a tie, or on it
			check(edge*(1+(rnd.Float64()-0.5)*1e-15), u)
			check(-edge*(1+(rnd.Float64()-0.5)*1e-15), u)
			v := Q(table.sample(rnd))
			check(v.Float(u), u)
		}
	}
	for range 5000 { // float64 holds 2^53 quanta: there and back is the same
		v := Q(rnd.Int64N(1<<51) - 1<<50)
		if !v.InRange() {
			continue
		}
		back, err := Nearest(v.Float(0), Unit[Q](0))
		require.NoError(t, err)
		require.Equal(t, int64(v), int64(back))
	}
}

func TestNearest(t *testing.T) { each(t, tester.nearest) }

// Ties between two quanta, which a power of two in the unit makes exact.
func TestNearest_ties(t *testing.T) {
	for x, want := range map[float64]Length{0.5: 0, 1.5: 2, 2.5: 2, 3.5: 4, -0.5: 0, -1.5: -2, 0.5000001: 1, 1<<52 + 0.5: 1 << 52} {
		got, err := Nearest(x, InPicometres)
		require.NoError(t, err)
		require.Equal(t, want, got, "%v", x)
	}
	_, err := Nearest(math.NaN(), InMillimetres)
	require.EqualError(t, err, "units: nearest length NaN mm: out of range; a finite number within -2305843009 mm to 2305843009 mm")
}

// shiftEven at every shift, against math/big.
func TestShiftEven(t *testing.T) {
	rnd := seeded()
	for n := uint(1); n < 128; n++ {
		for range 200 {
			hi, lo := rnd.Uint64(), rnd.Uint64()
			switch rnd.IntN(4) {
			case 0:
				lo = 0
			case 1: // a tie
				hi, lo = 0, 0
				if n <= 64 {
					lo, hi = 1<<(n-1), rnd.Uint64()
				} else {
					hi = 1<<(n-65) | rnd.Uint64()<<(n-64)
				}
				if n > 64 && rnd.IntN(2) == 0 { // and something beyond it
					lo = 1 << rnd.UintN(n-64)
				}
			case 2:
				hi = 0
			}
			x := new(big.Int).SetUint64(hi)
			x.Lsh(x, 64).Add(x, new(big.Int).SetUint64(lo))
			want := rounded(new(big.Rat).SetFrac(x, new(big.Int).Lsh(big.NewInt(1), n)), NearestEven)
			if want.BitLen() < 64 {
				require.Equal(t, want.Uint64(), shiftEven(hi, lo, n), "%x %x %d", hi, lo, n)
			}
		}
	}
}
