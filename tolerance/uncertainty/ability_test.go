package uncertainty_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// The factors' formulas are published (NCSLI RP-10; Dobbert 2008); the values
// were worked out by hand to five places.
func TestGuardMethod(t *testing.T) {
	for _, c := range []struct {
		m           uncertainty.GuardMethod
		ratio, want float64
	}{
		{uncertainty.GuardRootSumSquare, 4, 0.96825}, {uncertainty.GuardRootSumSquare, 2, 0.86603}, {uncertainty.GuardRootSumSquare, 1, 0}, {uncertainty.GuardRootSumSquare, 0.5, 0},
		{uncertainty.GuardByUncertainty, 4, 0.75}, {uncertainty.GuardByUncertainty, 2, 0.5}, {uncertainty.GuardByUncertainty, 0.5, 0},
		{uncertainty.GuardPastFour, 4, 1}, {uncertainty.GuardPastFour, 10, 1}, {uncertainty.GuardPastFour, 2, 0.75}, {uncertainty.GuardPastFour, 0.8, 0},
		// e^(0.38·ln 2 − 0.54) = 2^0.38·e^−0.54 = 1.30134·0.58275 = 0.75835.
		{uncertainty.GuardManagedRisk, 2, 1 - (1.04-0.75835)/2}, {uncertainty.GuardManagedRisk, 1, 1 - (1.04 - 0.58275)}, {uncertainty.GuardManagedRisk, 5, 1},
		{uncertainty.GuardManagedRisk, math.Inf(1), 1}, {uncertainty.GuardRootSumSquare, math.Inf(1), 1}, {uncertainty.GuardByUncertainty, math.Inf(1), 1},
		{uncertainty.GuardMethod(9), 2, 0.86603},
	} {
		require.InDelta(t, c.want, must(c.m.Factor(c.ratio)), 1e-5, "%v %v", c.m, c.ratio)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(-1)} {
		_, err := uncertainty.GuardPastFour.Factor(bad)
		refused(t, err, uncertainty.ErrFactor)
	}
}

// Managed risk keeps false acceptance to 2 % whatever the process: tried
// against processes of every width, at ratios from 1.5 to 4 (Dobbert 2008).
func TestGuardMethod_managedRisk(t *testing.T) {
	for _, ratio := range []float64{1.5, 2, 3, 4} {
		u := 1 / (2 * ratio) // of ±1, with a coverage factor of 2
		f := must(uncertainty.GuardManagedRisk.Factor(ratio))
		worst := 0.0
		for sigma := units.Length(200 * um); sigma < 3*mm; sigma += 100 * um {
			band := tolerance.MustBetween(-mm, mm)
			a := units.Length(f * float64(mm))
			r := must(uncertainty.RisksFor(0, sigma, units.Length(u*float64(mm)), band, tolerance.MustBetween(-a, a).Interval()))
			worst = max(worst, r.Consumer)
		}
		require.InDelta(t, 0.02, worst, 0.0015, "at a ratio of %v", ratio)
	}
}

func TestTestUncertaintyRatio(t *testing.T) {
	band := tolerance.MustBetween(9_950*um, 10_050*um)
	require.InDelta(t, 2.5, must(uncertainty.TestUncertaintyRatio(band, 10*um)), 1e-15) // 100/(2·20)
	require.True(t, math.IsInf(must(uncertainty.TestUncertaintyRatio(band, 0)), 1))
	require.True(t, math.IsInf(must(uncertainty.TestUncertaintyRatio(tolerance.AtMost(mm), um)), 1))
	for _, c := range []struct {
		b    tolerance.Band
		u    units.Length
		kind error
	}{{tolerance.Band{}, um, uncertainty.ErrNoLimit}, {band, -um, uncertainty.ErrUncertainty}, {band, 1 << 62, uncertainty.ErrRange}} {
		_, err := uncertainty.TestUncertaintyRatio(c.b, c.u)
		refused(t, err, c.kind)
	}
}

func TestCanDecide(t *testing.T) {
	// A micrometer that shows 0.01 mm, of ±4 µm, against a band of 12 µm.
	band := tolerance.MustBetween(1_478*um, 1_490*um)
	u := must(uncertainty.Resolution("scale", 0, 10*um)).Add(must(uncertainty.Rectangular("error", 0, 4*um))).StandardUncertainty()
	a := must(uncertainty.CanDecide(uncertainty.ISO14253(), band, u))
	require.Equal(t, units.Length(3_696_846), u) // √(10²/12 + 4²/3) = 3.6968455 µm, by hand
	require.False(t, a.Can)
	require.True(t, a.Accept.IsZero())
	require.Equal(t, units.Length(3_636_363), a.Needed) // 6 µm/1.65, cut
	require.Equal(t, 750*nm, a.Good)                    // 12 µm/16
	require.InDelta(t, 0.8115, a.Ratio, 5e-5)           // 12/(4·3.6968)
	// What is needed of the scale where everything else makes 2.309 µm.
	step := must(uncertainty.ResolutionFor(a.Needed, 2_309_401))
	require.InDelta(t, 9.730, step.Float(units.InMicrometres), 5e-4) // √12·√(3.636363² − 2.309401²)
	finer := must(uncertainty.Resolution("scale", 0, step)).Add(must(uncertainty.Rectangular("error", 0, 4*um))).StandardUncertainty()
	require.True(t, must(uncertainty.CanDecide(uncertainty.ISO14253(), band, finer)).Can)
	// One-sided, every instrument decides some readings.
	one := must(uncertainty.CanDecide(uncertainty.ISO14253(), tolerance.AtMost(100*um), u))
	require.True(t, one.Can)
	require.Zero(t, one.Needed)
	require.Zero(t, one.Good)
	require.True(t, math.IsInf(one.Ratio, 1))
	require.Equal(t, 2*one.Guard, one.Doubt)
	require.NoError(t, json.Unmarshal(must(json.Marshal(one)), &uncertainty.AbilityOf[units.Length]{}))

	rule := uncertainty.ISO14253()
	for _, c := range []struct {
		r    uncertainty.Rule
		b    tolerance.Band
		u    units.Length
		kind error
	}{
		{uncertainty.Rule{}, band, u, uncertainty.ErrFactor}, {uncertainty.Rule{Factor: math.NaN()}, band, u, uncertainty.ErrFactor},
		{rule, tolerance.Band{}, u, uncertainty.ErrNoLimit}, {rule, band, -1, uncertainty.ErrUncertainty}, {rule, band, 1 << 62, uncertainty.ErrRange},
		{rule, band, 1 << 61, uncertainty.ErrRange},
	} {
		_, err := uncertainty.CanDecide(c.r, c.b, c.u)
		refused(t, err, c.kind)
	}
	for _, c := range []struct {
		u, other units.Length
		kind     error
	}{{um, um, uncertainty.ErrNoZone}, {um, 2 * um, uncertainty.ErrNoZone}, {-um, 0, uncertainty.ErrUncertainty}, {um, -um, uncertainty.ErrUncertainty}, {1 << 62, 0, uncertainty.ErrRange}} {
		_, err := uncertainty.ResolutionFor(c.u, c.other)
		refused(t, err, c.kind)
	}
	require.Equal(t, units.Length(3_464_101), must(uncertainty.ResolutionFor(um, 0))) // √12
}

// What is said to be needed is enough, and one quantum more is not.
func TestCanDecide_needed(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 14253))
	for range 3000 {
		lo := units.Length(rng.Int64N(1 << 40))
		band := tolerance.MustBetween(lo, lo+units.Length(rng.Int64N(1<<uint(1+rng.IntN(40)))))
		rule := uncertainty.Rule{Manner: uncertainty.Proof, Factor: 0.5 + 3*rng.Float64()}
		needed := must(uncertainty.CanDecide(rule, band, 0)).Needed
		require.True(t, must(uncertainty.CanDecide(rule, band, needed)).Can)
		require.False(t, must(uncertainty.CanDecide(rule, band, needed+1)).Can, "%v %v %v", band, rule, needed)

		e := must(uncertainty.Normal("x", lo+units.Length(rng.Int64N(1<<41)-1<<40), um))
		s := must(uncertainty.Settle(rule, e, band))
		decides := func(u units.Length) bool {
			j := must(uncertainty.Decide(rule, must(uncertainty.Normal("x", e.Value(), u)), band))
			return j.Decision != uncertainty.NotDecided
		}
		if s.Needed > 0 {
			require.True(t, decides(s.Needed), "%v %v %v", band, e, s)
		}
		require.Equal(t, s.Decided, decides(um))
		// Far enough from both limits, no more would do.
		if hi, _ := band.Upper(); s.Needed > 0 && (e.Value() > hi || e.Value() < lo) {
			require.False(t, decides(s.Needed+1), "%v %v %v", band, e, s)
		}
	}
}

func TestSettle(t *testing.T) {
	rule := uncertainty.Rule{Manner: uncertainty.Proof, Factor: 2}
	at := func(v units.Length) uncertainty.Estimate { return must(uncertainty.Normal("x", v, 4*um)) }
	band := tolerance.MustBetween(0, 100*um)
	for _, c := range []struct {
		reading, distance, limit, needed units.Length
		readings                         int
		decided                          bool
	}{
		{96 * um, 4 * um, 100 * um, 2 * um, 4, false},
		{102 * um, 2 * um, 100 * um, units.Length(999_999), 17, false}, // from outside, touching is not enough
		{3 * um, 3 * um, 0, units.Length(1_500_000), 8, false},         // (4/1.5)² = 7.1
		{50 * um, 50 * um, 0, 25 * um, 1, true},
		{120 * um, 20 * um, 100 * um, 9_999_999, 1, true},
		{100 * um, 0, 100 * um, 0, 0, false},
		{100*um - 1, 1, 100 * um, 0, 0, false},
	} {
		s := must(uncertainty.Settle(rule, at(c.reading), band))
		require.Equal(t, uncertainty.SettlementOf[units.Length]{Decided: c.decided, Distance: c.distance, Limit: c.limit, Needed: c.needed, Readings: c.readings}, s, "%v", c.reading)
	}
	// An open end is not reached.
	s := must(uncertainty.Settle(rule, at(96*um), tolerance.LessThan(100*um)))
	require.Equal(t, units.Length(1_999_999), s.Needed)
	require.Equal(t, 0, must(uncertainty.Settle(rule, at(100*um-4), band)).Readings, "more than a million")
	for _, c := range []struct {
		r    uncertainty.Rule
		e    uncertainty.Estimate
		b    tolerance.Band
		kind error
	}{
		{rule, at(0).Scale(1, 0), band, uncertainty.ErrRange}, {rule, at(0), tolerance.Band{}, uncertainty.ErrNoLimit}, {uncertainty.Rule{}, at(0), band, uncertainty.ErrFactor},
	} {
		_, err := uncertainty.Settle(c.r, c.e, c.b)
		refused(t, err, c.kind)
	}
}
