package uncertainty_test

import (
	"encoding/binary"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// Any formula of any values: the value is the quantity's own, what is taken
// from itself is nothing, nothing panics.
func FuzzEstimate(f *testing.F) {
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9}, int64(86_000_000_000), int64(85_000_000_000), int64(2_000_000), int64(3))
	f.Add([]byte{9, 8, 5, 3, 3, 3, 3, 3}, int64(1)<<61, int64(-1)<<61, int64(1)<<61, int64(0))
	f.Add([]byte{7, 0, 6, 0, 8}, int64(0), int64(1), int64(0), int64(-1))
	f.Fuzz(func(t *testing.T, program []byte, a, b, u, k int64) {
		x, err := uncertainty.Normal("x", units.Length(a), units.Length(u))
		if err != nil {
			refusedAs(t, err)
			return
		}
		y, err := uncertainty.Rectangular("y", units.Length(b), units.Length(u))
		if err != nil {
			refusedAs(t, err)
			return
		}
		e, v, other, w := x, units.Length(a), y, units.Length(b)
		for i, op := range program[:min(len(program), 40)] {
			switch op % 10 {
			case 0:
				e, v = e.Add(other), v.Add(w)
			case 1:
				e, v = e.Sub(other), v.Sub(w)
			case 2:
				e, v = e.Abs(), v.Abs()
			case 3:
				e, v = e.Min(other), v.Min(w)
			case 4:
				e, v = e.Max(other), v.Max(w)
			case 5:
				e, v = e.Spread(other, x), v.Spread(w, units.Length(a))
			case 6:
				e, v = e.Scale(k, int64(i+1)), v.Scale(k, int64(i+1))
			case 7:
				e, v = e.ScalePi(k, 1000), v.ScalePi(k, 1000)
			case 8:
				e, v = e.MulDiv(other, y), v.MulDiv(w, units.Length(b))
			case 9:
				e, v = e.Share(other, x), v.Share(w, units.Length(a))
			}
			if op >= 128 {
				e, v, other, w = other, w, e, v
			}
		}
		if !v.InRange() {
			require.False(t, e.InRange())
			return
		}
		require.Equal(t, v, e.Value())
		if !e.InRange() {
			require.Equal(t, "out of range", e.String())
			return
		}
		none := e.Sub(e)
		require.Empty(t, none.Sources())
		require.Equal(t, units.Length(0), none.Value())
		require.LessOrEqual(t, len(e.Sources()), 2)
		value, standard := e.Float(units.InMillimetres)
		require.False(t, math.IsNaN(value) || standard < 0)
		require.InDelta(t, map[bool]float64{true: 0, false: 1}[standard == 0], uncertainty.Correlation(e, e), 1e-9)
		require.NotContains(t, e.String(), "NaN")
		j, err := uncertainty.Decide(uncertainty.ISO14253(), e, tolerance.AtMost(units.Length(b)))
		if err != nil {
			refusedAs(t, err)
			return
		}
		require.True(t, j.Conforms >= 0 && j.Conforms <= 1 && j.Risk >= 0 && j.Risk <= 1, "%v", j)
	})
}

func refusedAs(t *testing.T, err error) {
	var input *uncertainty.InputError
	require.ErrorAs(t, err, &input)
}

// Any formula of any numbers.
func FuzzDual(f *testing.F) {
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7}, 3.0, 0.1, 4.0)
	f.Add([]byte{3, 3, 3, 4}, 0.0, 0.0, math.Inf(1))
	f.Add([]byte{7, 4, 3, 2}, math.MaxFloat64, 1e300, -1.0)
	f.Fuzz(func(t *testing.T, program []byte, a, u, b float64) {
		x, err := uncertainty.NewDual("x", a, "", uncertainty.TriangularShape, u)
		if err != nil {
			refusedAs(t, err)
			return
		}
		y := x.Const(b)
		v, w := tolerance.Float(a), tolerance.Float(b)
		for _, op := range program[:min(len(program), 40)] {
			switch op % 8 {
			case 0:
				x, v = x.Add(y), v.Add(w)
			case 1:
				x, v = x.Sub(y), v.Sub(w)
			case 2:
				x, v = x.Mul(y), v.Mul(w)
			case 3:
				x, v = x.Quo(y), v.Quo(w)
			case 4:
				x, v = x.Sqrt(), v.Sqrt()
			case 5:
				x, v = x.Sin(), v.Sin()
			case 6:
				x, v = x.Cos(), v.Cos()
			case 7:
				x, v = x.Atan2(y), v.Atan2(w)
			}
			if op >= 128 {
				x, v, y, w = y, w, x, v
			}
		}
		if !v.InRange() {
			require.False(t, x.InRange())
			require.True(t, math.IsNaN(x.StandardUncertainty()))
			return
		}
		require.Equal(t, float64(v), x.Value())
		if x.InRange() {
			require.GreaterOrEqual(t, x.StandardUncertainty(), 0.0)
			require.Equal(t, 0.0, x.Sub(x).StandardUncertainty())
			require.NotContains(t, x.String(), "NaN")
		}
	})
}

func FuzzStudentT(f *testing.F) {
	for _, v := range []float64{1, 2.5, 16.7, 1e5, 1e9, math.Inf(1), 0, math.NaN()} {
		f.Add(0.975, v)
		f.Add(1e-300, v)
		f.Add(0.5, v)
	}
	f.Fuzz(func(t *testing.T, p, v float64) {
		q, err := uncertainty.StudentT(p, uncertainty.Freedom(v))
		if err != nil {
			refusedAs(t, err)
			require.False(t, p > 0 && p < 1 && v > 0)
			return
		}
		require.False(t, math.IsNaN(q), "%v %v", p, v)
		require.Equal(t, p < 0.5, q < 0, "%v %v: %v", p, v, q)
		if k, err := uncertainty.CoverageFactor(p, uncertainty.Freedom(v)); err == nil {
			require.GreaterOrEqual(t, k, 0.0)
		}
	})
}

func FuzzRoundUncertainty(f *testing.F) {
	for _, u := range []float64{10.47, 28.05, 9.96, 5e-324, math.MaxFloat64, 0, -1} {
		f.Add(u)
	}
	f.Fuzz(func(t *testing.T, u float64) {
		r, places, err := uncertainty.RoundUncertainty(u)
		if err != nil {
			refusedAs(t, err)
			return
		}
		// Never understated by more than 1 %, nor overstated by more than a digit.
		if u > 1e-300 {
			require.GreaterOrEqual(t, r, u*(1-0.0101))
			require.LessOrEqual(t, r, u*1.0901)
		}
		if u > 1e-300 {
			require.InDelta(t, -math.Log10(r), float64(places), 2.1)
		}
	})
}

// Any values come out in order, and joined in any parts.
func FuzzNewSample(f *testing.F) {
	f.Add([]byte("one two three four five six seven eight"), uint8(3))
	f.Add([]byte(strings.Repeat("\x00\x01\x02\x03\x04\x05\x06\x3f", 300)), uint8(200))
	f.Fuzz(func(t *testing.T, data []byte, cut uint8) {
		var x []float64
		for ; len(data) >= 8; data = data[8:] {
			if v := math.Float64frombits(binary.LittleEndian.Uint64(data)); v-v == 0 {
				x = append(x, v)
			}
		}
		if len(x) < 2 {
			return
		}
		at := 1 + int(cut)%(len(x)-1)
		whole := must(uncertainty.NewSample(x))
		joined := must(uncertainty.Join(must(uncertainty.NewSample(x[:at])), must(uncertainty.NewSample(x[at:]))))
		slices.Sort(x)
		for i := range x {
			p := (float64(i) + 0.5) / float64(len(x))
			if a, b := must(whole.Quantile(p)), must(joined.Quantile(p)); a != x[i] || b != x[i] {
				t.Fatalf("%d of %d: %v and %v, want %v", i, len(x), a, b, x[i])
			}
		}
		lo, hi, err := whole.Shortest(0.5)
		require.NoError(t, err)
		require.LessOrEqual(t, lo, hi)
	})
}
