package uncertainty_test

import (
	"encoding/json"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func readFreedom(t *testing.T, text string) uncertainty.Freedom {
	if text == "inf" {
		return uncertainty.Infinite()
	}
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return uncertainty.Freedom(v)
}

func TestStudentT(t *testing.T) {
	for c := range vectors.Load(t, "reference/uncertainty_quantiles.txt").All(t) {
		above, freedom := c.Float("above"), readFreedom(t, c.Text("freedom"))
		low := must(uncertainty.StudentT(above, freedom))
		c.Near("quantile", -low)
		// From the other end, as far as 1 − p has digits.
		if above > 1e-3 {
			relative(t, -low, must(uncertainty.StudentT(1-above, freedom)), 1e-11)
		}
	}
	require.Equal(t, 0.0, must(uncertainty.StudentT(0.5, 7)))
	for _, p := range []float64{0, 1, -0.1, 1.1, math.NaN()} {
		_, err := uncertainty.StudentT(p, 5)
		refused(t, err, uncertainty.ErrProbability)
		_, err = uncertainty.CoverageFactor(p, 5)
		refused(t, err, uncertainty.ErrProbability)
	}
	for _, f := range []uncertainty.Freedom{0, -1, uncertainty.Freedom(math.NaN()), uncertainty.Freedom(math.Inf(-1))} {
		_, err := uncertainty.StudentT(0.9, f)
		refused(t, err, uncertainty.ErrFreedom)
		_, err = uncertainty.CoverageFactor(0.9, f)
		refused(t, err, uncertainty.ErrFreedom)
	}
	_, err := uncertainty.CoverageFactor(0.95, 0.99)
	refused(t, err, uncertainty.ErrFreedom)
}

// The factors of GUM table G.2, as a maker of calibrators prints them (a
// course on uncertainty, 2011, page 54), and EA-4/02 table E.1 for 95.45 %.
func TestCoverageFactor(t *testing.T) {
	for _, c := range []struct {
		freedom uncertainty.Freedom
		p, want float64
	}{
		{1, 0.6827, 1.84}, {1, 0.95, 12.71}, {1, 0.9545, 13.97}, {1, 0.99, 63.66}, {2, 0.9973, 19.21}, {4, 0.9545, 2.87}, {5, 0.95, 2.57},
		{8, 0.99, 3.36}, {10, 0.9545, 2.28}, {16.99, 0.9545, 2.17}, {16, 0.95, 2.12}, {20, 0.95, 2.09}, {20.4, 0.9545, 2.13}, {50, 0.99, 2.68},
		{100, 0.95, 1.984}, {100, 0.99, 2.626}, {uncertainty.Infinite(), 0.95, 1.96}, {uncertainty.Infinite(), 0.9545, 2.00}, {uncertainty.Infinite(), 0.99, 2.576},
	} {
		k := must(uncertainty.CoverageFactor(c.p, c.freedom))
		require.InDelta(t, c.want, k, 0.0051, "%v %v", c.freedom, c.p)
	}
	// One-sided factors (normal quantiles, NIST/SEMATECH e-Handbook 1.3.6.7.1).
	for p, want := range map[float64]float64{0.95: 1.644854, 0.975: 1.959964, 0.99: 2.326348} {
		require.InDelta(t, want, must(uncertainty.StudentT(p, uncertainty.Infinite())), 5e-7)
	}
}

func TestEffectiveFreedom(t *testing.T) {
	// The inputs are those of an example of the R package metRology; the
	// answer is arithmetic: u 1, 2·0.3, … from contributions .1, .6, .6, .55.
	contributions := []float64{0.1, 0.6, 0.6, 0.55}
	freedom := []uncertainty.Freedom{uncertainty.Infinite(), 6, 8, 3}
	require.InDelta(t, 15.60796, float64(must(uncertainty.EffectiveFreedom(contributions, freedom))), 5e-6)
	// The same through an estimate.
	var all []uncertainty.Estimate
	for i, c := range contributions {
		all = append(all, must(uncertainty.Normal("x", 0, units.Length(c*1e6), freedom[i])))
	}
	require.InDelta(t, 15.60796, float64(uncertainty.Sum(all...).Freedom()), 5e-6)
	require.InDelta(t, 1.0161201, must(uncertainty.Sum(all...).ExpandedBy(1)).Standard*1000, 5e-8)
	// No fourth power leaves the range.
	for _, scale := range []float64{1e-100, 1e100} {
		var huge []float64
		for _, c := range contributions {
			huge = append(huge, c*scale)
		}
		require.InDelta(t, 15.60796, float64(must(uncertainty.EffectiveFreedom(huge, freedom))), 5e-6)
	}
	require.Equal(t, uncertainty.Infinite(), must(uncertainty.EffectiveFreedom([]float64{0}, []uncertainty.Freedom{3})))
	for _, c := range []struct {
		c    []float64
		f    []uncertainty.Freedom
		kind error
	}{
		{nil, nil, uncertainty.ErrEmpty}, {[]float64{1}, nil, uncertainty.ErrEmpty},
		{[]float64{math.NaN()}, []uncertainty.Freedom{1}, uncertainty.ErrNotFinite}, {[]float64{math.Inf(1)}, []uncertainty.Freedom{1}, uncertainty.ErrNotFinite},
		{[]float64{1}, []uncertainty.Freedom{0}, uncertainty.ErrFreedom}, {[]float64{1}, []uncertainty.Freedom{uncertainty.Freedom(math.NaN())}, uncertainty.ErrFreedom},
	} {
		_, err := uncertainty.EffectiveFreedom(c.c, c.f)
		refused(t, err, c.kind)
	}
}

func TestFreedom(t *testing.T) {
	require.InDelta(t, 50, float64(uncertainty.Reliability(0.10)), 1e-12) // GUM G.4.2, H.1.6
	require.InDelta(t, 2, float64(uncertainty.Reliability(0.50)), 1e-12)
	for _, bad := range []float64{0, -0.1, math.NaN()} {
		require.True(t, math.IsNaN(float64(uncertainty.Reliability(bad))))
	}
	for f, text := range map[uncertainty.Freedom]string{16.75: "16.8", 16: "16", 123.9: "123", uncertainty.Infinite(): "∞", 1e9: "1000000000"} {
		require.Equal(t, text, f.String())
	}
	for _, f := range []uncertainty.Freedom{16.75, 1e-3, 1e300, uncertainty.Infinite()} {
		text := must(json.Marshal(f))
		var back uncertainty.Freedom
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, f, back)
	}
	_, err := uncertainty.Freedom(math.NaN()).MarshalText()
	refused(t, err, uncertainty.ErrNotFinite)
	var f uncertainty.Freedom
	for _, bad := range []string{"", "x", "0", "-1", "NaN"} {
		refused(t, f.UnmarshalText([]byte(bad)), uncertainty.ErrSyntax)
	}
	require.Zero(t, f)
	for _, n := range []int{1, 0, -3} {
		_, err := uncertainty.RelativeUncertainty(n)
		refused(t, err, uncertainty.ErrTooFew)
	}
	// 1/√(2(n − 1)) is the limit (GUM E.4.3, note), with a quarter of 1/(n − 1) more.
	for _, n := range []int{31, 1000, 1_000_000_000} {
		v := float64(n - 1)
		relative(t, (1+1/(8*v))/math.Sqrt(2*v), must(uncertainty.RelativeUncertainty(n)), 1/(v*v)+1e-15)
	}
	// Without a seam where the series takes over.
	below, above := must(uncertainty.RelativeUncertainty(30)), must(uncertainty.RelativeUncertainty(31))
	require.InDelta(t, math.Sqrt(29.0/30), above/below, 2e-4)
}

func TestExpanded(t *testing.T) {
	e := must(uncertainty.Normal("x", 10*mm, 10*um, 4))
	x := must(e.Expanded(0.95))
	require.InDelta(t, 2.776, x.Factor, 5e-4) // Student's t, 4 degrees of freedom
	require.Equal(t, "10.000 mm ± 0.028 mm, k = 2.78, 95 %", x.String())
	lo, _ := x.Interval().Lower()
	require.Equal(t, 10*mm-units.Length(math.Ceil(x.Uncertainty*1e9)), lo)
	var back uncertainty.ExpandedOf[units.Length]
	require.NoError(t, json.Unmarshal(must(json.Marshal(x)), &back))
	require.Equal(t, x, back)
	require.Equal(t, "0.3937 in ± 0.0011 in, k = 2.78, 95 %", x.Text(units.InInches))

	_, err := e.Expanded(1)
	refused(t, err, uncertainty.ErrProbability)
	_, err = must(uncertainty.Normal("x", 0, 1*mm, 0.5)).Expanded(0.95)
	refused(t, err, uncertainty.ErrFreedom)
	bad := e.Scale(1, 0)
	_, err = bad.Expanded(0.95)
	refused(t, err, uncertainty.ErrRange)
	_, err = bad.ExpandedBy(2)
	refused(t, err, uncertainty.ErrRange)
	for _, k := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err = e.ExpandedBy(k)
		refused(t, err, uncertainty.ErrFactor)
	}
	require.Equal(t, "out of range", uncertainty.ExpandedOf[units.Length]{Uncertainty: math.NaN()}.String())
	require.Equal(t, "out of range", uncertainty.ExpandedOf[units.Length]{Value: units.OutOfRange[units.Length]()}.String())

	require.Equal(t, "[9.98 mm, 10.02 mm]", e.Bracket(2).String())
	require.Equal(t, "10 mm", e.Bracket(0).String())
	for _, k := range []float64{-1, math.NaN(), math.Inf(1), 1e30} {
		require.False(t, e.Bracket(k).InRange())
	}
	require.False(t, must(uncertainty.Normal("far", units.Length(1<<61), 1*mm)).Bracket(2).InRange())
}

func TestText(t *testing.T) {
	for _, c := range []struct {
		e    uncertainty.Estimate
		want string
	}{
		{uncertainty.Exactly(2 * mm), "2 mm, exactly"},
		{must(uncertainty.Normal("", 2*mm, 1)), "2.000000000 mm, standard uncertainty 0.000000001 mm"},
		{must(uncertainty.Normal("", 2*mm, 10)).Scale(1, 100), "0.020000000 mm, standard uncertainty 0.000000001 mm"},
		{must(uncertainty.Normal("", 2*mm, 1_234*mm)), "2 mm, standard uncertainty 1300 mm"},
		{must(uncertainty.Normal("", 2*mm, 104*um)), "2.00 mm, standard uncertainty 0.11 mm"},
		{must(uncertainty.Normal("", -1, 100*um)).Abs(), "0.00 mm, standard uncertainty 0.10 mm (first order is not enough: simulate it)"},
	} {
		require.Equal(t, c.want, c.e.String())
		require.Equal(t, `"`+c.want+`"`, string(must(json.Marshal(c.e))))
	}
	for _, c := range []struct {
		d    uncertainty.Dual
		want string
	}{
		{uncertainty.ExactlyReal(0.5), "0.5, exactly"},
		{must(uncertainty.NewDual("", 1249, "", uncertainty.NormalShape, 130)), "1250, standard uncertainty 130"},
		{must(uncertainty.NewDual("", 1e-9, "", uncertainty.NormalShape, 2e-11)), "0.000000001000, standard uncertainty 0.000000000020"},
		{must(uncertainty.NewDual("", 0, "", uncertainty.NormalShape, 1)).Cos(), "1, with no uncertainty to first order, which is not enough: simulate it"},
		{must(uncertainty.NewDual("", 0.1, "", uncertainty.NormalShape, 1)).Cos(), "1.00, standard uncertainty 0.10 (first order is not enough: simulate it)"},
		{must(uncertainty.NewDual("", 0.1, "", uncertainty.NormalShape, math.MaxFloat64)), "0, standard uncertainty 1.8e+308"},
		{uncertainty.ExactlyReal(math.Inf(1)), "out of range"},
	} {
		require.Equal(t, c.want, c.d.String())
		if c.d.InRange() {
			require.Equal(t, c.want, string(must(c.d.MarshalText())))
		}
	}
	_, err := uncertainty.ExactlyReal(math.NaN()).MarshalText()
	refused(t, err, uncertainty.ErrRange)
	_, err = uncertainty.Exactly(mm).Scale(1, 0).MarshalText()
	refused(t, err, uncertainty.ErrRange)
}
