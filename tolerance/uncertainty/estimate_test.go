package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func TestEstimate_cancels(t *testing.T) {
	x := must(uncertainty.Normal("gauge", 86*mm, 2*um))
	zero := x.Sub(x)
	require.Equal(t, units.Length(0), zero.Value())
	require.Equal(t, units.Length(0), zero.StandardUncertainty())
	require.Empty(t, zero.Sources())
	require.False(t, zero.NearKink())
	require.False(t, zero.Abs().NearKink(), "an exact zero has nothing on the other side")

	// An error that two readings share counts in each and cancels between them.
	ring := must(uncertainty.Calibration("ring", 0, 3*um, 2))
	one := must(uncertainty.Resolution("scale, first", 86_020*um, 2*um)).Add(ring)
	two := must(uncertainty.Resolution("scale, second", 86_005*um, 2*um)).Add(ring)
	_, u := one.Float(units.InMicrometres)
	relative(t, math.Sqrt(1.5*1.5+4.0/12), u, 1e-14)
	taper := one.Sub(two)
	require.Equal(t, 15*um, taper.Value())
	_, u = taper.Float(units.InMicrometres)
	relative(t, math.Sqrt(2*4.0/12), u, 1e-14)
	require.Len(t, taper.Sources(), 2)
	require.Equal(t, 0.0, taper.Sensitivity(ring.Sources()[0]))

	// The same name is not the same source.
	again := must(uncertainty.Normal("gauge", 86*mm, 2*um))
	_, u = x.Sub(again).Float(units.InMicrometres)
	relative(t, 2*math.Sqrt2, u, 1e-14)
}

// Values are those of the quantity itself, whatever the operation.
func TestEstimate_valuesAreTheQuantitys(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	pick := func() (units.Length, uncertainty.Estimate) {
		v := units.Length(rng.Int64N(1<<40) - 1<<39)
		if rng.IntN(20) == 0 {
			v = units.Length(rng.Int64N(1<<62) - 1<<61)
		}
		return v, must(uncertainty.Normal("x", v, units.Length(rng.Int64N(1<<20))))
	}
	for range 3000 {
		a, ea := pick()
		b, eb := pick()
		c, ec := pick()
		n, d := rng.Int64N(2000)-1000, rng.Int64N(20)-10
		for _, r := range []struct {
			want units.Length
			got  uncertainty.Estimate
		}{
			{a.Add(b), ea.Add(eb)}, {a.Sub(b), ea.Sub(eb)}, {a.Abs(), ea.Abs()}, {a.Min(b), ea.Min(eb)}, {a.Max(b), ea.Max(eb)},
			{a.Spread(b, c), ea.Spread(eb, ec)}, {a.Scale(n, d), ea.Scale(n, d)}, {a.ScalePi(n, d), ea.ScalePi(n, d)},
			{a.MulDiv(b, c), ea.MulDiv(eb, ec)}, {a.Share(b, c), ea.Share(eb, ec)},
		} {
			require.Equal(t, r.want.InRange(), r.got.InRange())
			if r.want.InRange() {
				require.Equal(t, r.want, r.got.Value())
			}
		}
	}
}

func TestEstimate_kinks(t *testing.T) {
	at := func(v units.Length) uncertainty.Estimate { return must(uncertainty.Normal("x", v, 1*um)) }
	exact := uncertainty.Exactly[units.Length]
	for _, c := range []struct {
		what string
		got  uncertainty.Estimate
		kink bool
	}{
		{"magnitude at 3 u", at(3 * um).Abs(), true},
		{"magnitude beyond", at(3*um + 1).Abs(), false},
		{"magnitude below zero", at(-2 * um).Abs(), true},
		{"magnitude far below zero", at(-4 * um).Abs(), false},
		{"magnitude of what is exact", exact(0).Abs(), false},
		{"the lesser of two near each other", at(10 * um).Min(at(14 * um)), true}, // 3·√2 µm
		{"the lesser of two apart", at(10 * um).Min(at(15 * um)), false},
		{"the greater of two near each other", at(10 * um).Max(at(14 * um)), true},
		{"the greater of two exact ones", exact(1).Max(exact(1)), false},
		{"spread of two near each other", at(10 * um).Spread(at(11 * um)), true},
		{"spread of two apart", at(10 * um).Spread(at(20 * um)), false},
		{"spread with a second greatest", at(0).Spread(at(20*um), at(19*um)), true},
		{"spread with a second least", at(30*um).Spread(at(0), at(1*um)), true},
		{"spread with the receiver between", at(10*um).Spread(at(0), at(20*um)), false},
		{"spread of one", at(0).Spread(), false},
		{"a divisor that may be zero", exact(mm).MulDiv(exact(mm), at(2*um)), true},
		{"a divisor that can't", exact(mm).MulDiv(exact(mm), at(mm)), false},
		{"two factors that may be zero", at(um).MulDiv(at(um), exact(mm)), true},
		{"one factor that may be zero", at(um).MulDiv(at(mm), exact(mm)), false},
		{"a whole that may be zero", exact(mm).Share(at(um), at(0)), true},
		{"a share of what may be zero by what may be zero", at(um).Share(at(um), exact(mm)), true},
		{"a share of sizes", at(mm).Share(at(mm), at(mm)), false},
	} {
		require.Equal(t, c.kink, c.got.NearKink(), c.what)
		require.True(t, c.got.InRange(), c.what)
		require.Equal(t, c.kink, c.got.Add(exact(mm)).Scale(1, 2).Sub(exact(1)).NearKink(), "the mark stays: "+c.what)
	}
	// What two values share doesn't bring them near each other.
	common := must(uncertainty.Normal("common", 0, 1*mm))
	a, b := at(10*um).Add(common), at(20*um).Add(common)
	require.False(t, a.Max(b).NearKink())
	require.False(t, a.Spread(b).NearKink())
	require.False(t, common.Max(common).NearKink())
	require.False(t, common.Spread(common, common).NearKink())
}

func TestEstimate_outOfRangeSticks(t *testing.T) {
	good := must(uncertainty.Normal("good", 1*mm, 1*um))
	for _, bad := range []uncertainty.Estimate{
		good.Scale(1, 0), good.ScalePi(1, 0), good.MulDiv(good, uncertainty.Exactly[units.Length](0)),
		good.Share(good, good.Scale(-1, 1)), uncertainty.Exactly[units.Length](1 << 61).Add(good),
		uncertainty.Exactly[units.Length](-1 << 61).Sub(good), uncertainty.Exactly(units.OutOfRange[units.Length]()),
		uncertainty.Sum(good, uncertainty.Exactly(units.OutOfRange[units.Length]())),
	} {
		require.False(t, bad.InRange())
		require.False(t, bad.StandardUncertainty().InRange())
		v, u := bad.Float(units.InMillimetres)
		require.True(t, math.IsNaN(v) && math.IsNaN(u))
		require.True(t, math.IsNaN(float64(bad.Freedom())))
		require.True(t, math.IsNaN(uncertainty.Correlation(bad, good)))
		require.False(t, bad.Real(units.InMillimetres).InRange())
		require.False(t, bad.Bracket(2).InRange())
		require.Equal(t, "out of range", bad.String())
		for _, got := range []uncertainty.Estimate{
			bad.Add(good), good.Add(bad), bad.Sub(bad), good.Sub(bad), bad.Abs(), bad.Min(good), good.Min(bad), bad.Max(good), good.Max(bad),
			bad.Spread(), bad.Spread(good), good.Spread(good, bad), bad.Scale(0, 1), bad.ScalePi(0, 1),
			bad.MulDiv(good, good), good.MulDiv(bad, good), good.MulDiv(good, bad),
			bad.Share(good, good), good.Share(bad, good), good.Share(good, bad),
		} {
			require.False(t, got.InRange())
		}
		_, err := uncertainty.Mean(good, bad)
		refused(t, err, uncertainty.ErrRange)
	}
	// So does a sensitivity that no float64 holds.
	wild := must(uncertainty.Normal("wild", 0, units.Length(1<<60)))
	for range 20 {
		wild = wild.MulDiv(uncertainty.Exactly[units.Length](1<<60), uncertainty.Exactly[units.Length](1))
	}
	require.False(t, wild.InRange())
	require.False(t, wild.Scale(0, 1).InRange())
	require.Equal(t, units.Length(0), wild.Value())
}

// Temperatures have estimates, but are not added or multiplied.
func TestEstimate_temperature(t *testing.T) {
	warm := must(uncertainty.Rectangular("thermometer", units.Temperature(23*units.CELSIUS), units.Temperature(0.5*units.CELSIUS)))
	v, u := warm.Float(units.InFahrenheit)
	relative(t, 73.4, v, 1e-14)
	relative(t, 0.9/math.Sqrt(3), u, 1e-14)
	require.Equal(t, "23.00 °C, standard uncertainty 0.29 °C", warm.String())
	for _, bad := range []uncertainty.EstimateOf[units.Temperature]{warm.Add(warm), warm.Sub(warm), warm.Abs(), warm.Scale(1, 2), warm.Spread(warm),
		warm.ScalePi(1, 2), warm.MulDiv(warm, warm), warm.Share(warm, warm)} {
		require.False(t, bad.InRange())
	}
	_, err := uncertainty.Mean(warm, warm)
	refused(t, err, uncertainty.ErrRange)
	require.True(t, warm.Max(warm).InRange())
	require.False(t, uncertainty.Sum(warm, warm).InRange())
}

// More sources than fit inline go through every operation, and come back when
// they cancel.
func TestEstimate_manySources(t *testing.T) {
	var all []uncertainty.Estimate
	for i := range 40 {
		all = append(all, must(uncertainty.Normal("x", units.Length(i+1)*mm, units.Length(i+1)*um)))
	}
	sum := uncertainty.Exactly[units.Length](0)
	squares := 0.0
	for i, x := range all {
		sum = sum.Add(x)
		squares += float64((i + 1) * (i + 1))
		_, u := sum.Float(units.InMicrometres)
		relative(t, math.Sqrt(squares), u, 1e-13)
		require.Len(t, sum.Sources(), i+1)
		require.Equal(t, 1.0, sum.Sensitivity(x.Sources()[0]))
	}
	require.Equal(t, 820*mm, sum.Value())
	together := uncertainty.Sum(all...)
	require.Empty(t, sum.Sub(together).Sources())
	require.Equal(t, sum.StandardUncertainty(), together.StandardUncertainty())
	mean := must(uncertainty.Mean(all...))
	require.Equal(t, 20_500*um, mean.Value())
	_, u := mean.Float(units.InMicrometres)
	relative(t, math.Sqrt(squares)/40, u, 1e-13)
	// Negated, halved and taken apart again.
	down := uncertainty.Exactly[units.Length](0).Sub(sum).Abs().Scale(1, 2).Scale(2, 1)
	require.InDelta(t, 1, uncertainty.Correlation(down, sum), 1e-12)
	for _, x := range all[:37] {
		down = down.Sub(x)
	}
	require.Len(t, down.Sources(), 3)
	_, u = down.Float(units.InMicrometres)
	relative(t, math.Sqrt(38*38+39*39+40*40), u, 1e-13)
	require.False(t, sum.Max(together).NearKink(), "they are one and the same")
	require.True(t, sum.Max(all[0].Add(sum).Sub(uncertainty.Exactly(mm))).NearKink())
	require.Equal(t, uncertainty.Infinite(), sum.Freedom())
}

func TestCorrelation(t *testing.T) {
	a := must(uncertainty.Normal("a", 0, 3*um))
	b := must(uncertainty.Normal("b", 0, 4*um))
	require.Equal(t, 1.0, uncertainty.Correlation(a, a))
	require.Equal(t, -1.0, uncertainty.Correlation(a, a.Scale(-2, 1)))
	require.Equal(t, 0.0, uncertainty.Correlation(a, b))
	require.Equal(t, 0.0, uncertainty.Correlation(a, uncertainty.Exactly[units.Length](1)))
	require.InDelta(t, 0.6, uncertainty.Correlation(a, a.Add(b)), 1e-15)
	force := must(uncertainty.FromReal(a.Real(units.InMillimetres), units.InNewtons))
	require.Equal(t, 1.0, uncertainty.Correlation(a, force), "of different quantities")
	require.InDelta(t, 0.8, uncertainty.CorrelationReal(b.Real(units.InInches), a.Add(b).Real(units.InInches)), 1e-15)
}

func TestEstimate_allocations(t *testing.T) {
	x := must(uncertainty.Normal("x", 86*mm, 2*um))
	y := must(uncertainty.Rectangular("y", 85*mm, 2*um))
	z := must(uncertainty.Triangular("z", 0, 2*um))
	w := must(uncertainty.UShaped("w", 0, 2*um))
	require.Zero(t, testing.AllocsPerRun(100, func() {
		four := x.Add(y).Sub(z).Max(w).Add(z.Add(w)).MulDiv(x, y).Share(x, y)
		four = four.Spread(x, y, z).ScalePi(1, 2).Scale(3, 4).Abs().Min(x)
		_ = four.StandardUncertainty()
		_ = four.Freedom()
		_ = four.InRange()
	}))
	a, b := x.Real(units.InMillimetres), y.Real(units.InMillimetres)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		_ = a.Mul(b).Quo(a.Add(b)).Sqrt().Sin().Cos().Atan2(a.Sub(b)).StandardUncertainty()
	}))
	band := tolerance.MustBetween(80*mm, 90*mm)
	require.Zero(t, testing.AllocsPerRun(100, func() {
		j, err := uncertainty.Decide(uncertainty.ISO14253(), x, band)
		if err != nil || j.Decision != uncertainty.Accept {
			panic("not accepted")
		}
	}))
}

func TestEstimate_oneFormula(t *testing.T) {
	// One formula reads a length and an estimate alike.
	require.Equal(t, 60*um, clearance(86_030*um, 85_970*um))
	e := clearance(must(uncertainty.Normal("bore", 86_030*um, 3*um)), must(uncertainty.Normal("piston", 85_970*um, 4*um)))
	require.Equal(t, 60*um, e.Value())
	require.Equal(t, 5*um, e.StandardUncertainty())
}

func TestFromReal(t *testing.T) {
	x := must(uncertainty.Normal("x", 25_400*um, 254*um))
	back := must(uncertainty.FromReal(x.Real(units.InInches), units.InInches))
	require.Empty(t, must(uncertainty.FromReal(x.Sub(back).Real(units.InInches), units.InInches)).Sources())
	require.Equal(t, x.Value(), back.Value())
	_, err := uncertainty.FromReal(uncertainty.ExactlyReal(math.NaN()), units.InInches)
	require.ErrorIs(t, err, units.ErrRange)
	_, err = uncertainty.FromReal(must(uncertainty.NewDual("x", 0, "", uncertainty.NormalShape, 1)).Sqrt(), units.InInches)
	require.Error(t, err, "the root of an uncertain zero has no first order")
	big := must(uncertainty.NewDual("x", 0, "", uncertainty.NormalShape, 1e300))
	_, err = uncertainty.FromReal(big, units.InInches)
	refused(t, err, uncertainty.ErrNotFinite)
}
