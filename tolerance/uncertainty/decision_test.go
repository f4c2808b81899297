package uncertainty_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// bandOf is the band between two limits in nanometres, either of which may be
// a dash.
func bandOf(c vectors.Case) tolerance.Band {
	switch {
	case !c.Has("lower"):
		return tolerance.AtMost(nm * units.Length(c.Int64("upper")))
	case !c.Has("upper"):
		return tolerance.AtLeast(nm * units.Length(c.Int64("lower")))
	}
	return tolerance.MustBetween(nm*units.Length(c.Int64("lower")), nm*units.Length(c.Int64("upper")))
}

func TestConformance(t *testing.T) {
	for c := range vectors.Load(t, "reference/uncertainty_conformance.txt").All(t) {
		e := must(uncertainty.Normal("x", nm*units.Length(c.Int64("reading")), nm*units.Length(c.Int64("u")), readFreedom(t, c.Text("freedom"))))
		p := must(uncertainty.Conformance(e, bandOf(c)))
		c.Near("conforms", p)
		j := must(uncertainty.Decide(uncertainty.Rule{}, e, bandOf(c)))
		require.Equal(t, p, j.Conforms)
		if j.Decision == uncertainty.Reject {
			require.Equal(t, p, j.Risk)
		} else {
			require.InDelta(t, 1-p, j.Risk, 1e-15)
		}
	}
	exact := uncertainty.Exactly(mm)
	require.Equal(t, 1.0, must(uncertainty.Conformance(exact, tolerance.AtMost(mm))))
	require.Equal(t, 0.0, must(uncertainty.Conformance(exact, tolerance.LessThan(mm))))
	_, err := uncertainty.Conformance(exact, tolerance.Band{})
	refused(t, err, uncertainty.ErrNoLimit)
	_, err = uncertainty.Conformance(exact.Scale(1, 0), tolerance.AtMost(mm))
	refused(t, err, uncertainty.ErrRange)
	_, err = uncertainty.Conformance(exact, tolerance.AtMost(units.OutOfRange[units.Length]()))
	refused(t, err, uncertainty.ErrRange)
}

func TestAcceptanceInterval(t *testing.T) {
	const u = 1 * um
	for c := range vectors.Load(t, "reference/uncertainty_acceptance.txt").All(t) {
		half := units.Length(math.Round(c.Float("width") * float64(u) / 2))
		i, err := uncertainty.AcceptanceInterval(tolerance.MustBetween(-half, half), u, c.Float("probability"))
		if c.Text("guard") == "none" {
			refused(t, err, uncertainty.ErrNoZone)
			continue
		}
		require.NoError(t, err)
		hi, end := i.Upper()
		lo, _ := i.Lower()
		require.Equal(t, tolerance.Closed, end)
		require.Equal(t, -hi, lo)
		// Rounded inward: by less than a quantum, a millionth of u.
		guard := float64(half-hi) / float64(u)
		require.InDelta(t, c.Float("guard"), guard, 1e-6, c.Where())
		require.GreaterOrEqual(t, guard, c.Float("guard")-1e-12, c.Where())
	}
	// One-sided: 1.645·u (ISO 14253-1:2017, in round numbers 1.65·u).
	i := must(uncertainty.AcceptanceInterval(tolerance.LessThan(10*um), u, 0.95))
	hi, end := i.Upper()
	require.Equal(t, tolerance.Open, end)
	require.Equal(t, 10*um-units.Length(math.Ceil(1.6448536269514722e6)), hi)
	// An exact instrument takes nothing off.
	require.Equal(t, tolerance.MustBetween(0, mm).Interval(), must(uncertainty.AcceptanceInterval(tolerance.MustBetween(0, mm), 0, 0.95)))
	for _, c := range []struct {
		b    tolerance.Band
		u    units.Length
		p    float64
		kind error
	}{
		{tolerance.Band{}, u, 0.95, uncertainty.ErrNoLimit}, {tolerance.AtMost(mm), -1, 0.95, uncertainty.ErrUncertainty},
		{tolerance.AtMost(mm), u, 0.4, uncertainty.ErrProbability}, {tolerance.AtMost(mm), u, 1, uncertainty.ErrProbability}, {tolerance.AtMost(mm), u, math.NaN(), uncertainty.ErrProbability},
		{tolerance.AtMost(mm), 1 << 62, 0.95, uncertainty.ErrRange}, {tolerance.AtMost(units.OutOfRange[units.Length]()), u, 0.95, uncertainty.ErrRange},
		{tolerance.AtMost(mm), 1 << 61, 0.95, uncertainty.ErrNoZone}, {tolerance.AtLeast(units.Length(1 << 61)), mm, 0.95, uncertainty.ErrNoZone},
	} {
		_, err := uncertainty.AcceptanceInterval(c.b, c.u, c.p)
		refused(t, err, c.kind)
	}
}

func TestDecide(t *testing.T) {
	band := tolerance.MustBetween(9_950*um, 10_050*um)
	plain, accept, reject, proof := uncertainty.PlainAcceptance, uncertainty.GuardedAcceptance, uncertainty.GuardedRejection, uncertainty.Proof
	yes, no, open := uncertainty.Accept, uncertainty.Reject, uncertainty.NotDecided
	for _, c := range []struct {
		reading units.Length
		manner  uncertainty.Manner
		want    uncertainty.Decision
		verdict tolerance.Verdict
	}{
		{10_000 * um, plain, yes, tolerance.Within}, {10_000 * um, accept, yes, tolerance.Within},
		{10_000 * um, reject, yes, tolerance.Within}, {10_000 * um, proof, yes, tolerance.Within},
		{10_040 * um, plain, yes, tolerance.Within}, {10_040 * um, accept, no, tolerance.Undecided},
		{10_040 * um, reject, yes, tolerance.Undecided}, {10_040 * um, proof, open, tolerance.Undecided},
		{10_060 * um, plain, no, tolerance.Above}, {10_060 * um, accept, no, tolerance.Undecided},
		{10_060 * um, reject, yes, tolerance.Undecided}, {10_060 * um, proof, open, tolerance.Undecided},
		{10_100 * um, plain, no, tolerance.Above}, {10_100 * um, accept, no, tolerance.Above},
		{10_100 * um, reject, no, tolerance.Above}, {10_100 * um, proof, no, tolerance.Above},
		{9_900 * um, proof, no, tolerance.Below}, {9_900 * um, plain, no, tolerance.Below},
	} {
		e := must(uncertainty.Normal("gauge", c.reading, 20*um))
		j := must(uncertainty.Decide(uncertainty.Rule{Manner: c.manner, Factor: 2}, e, band))
		require.Equal(t, c.want, j.Decision, "%v by %v", c.reading, c.manner)
		require.Equal(t, c.verdict, j.Verdict, "%v by %v", c.reading, c.manner)
		if c.manner == plain {
			require.Zero(t, j.Guard)
		} else {
			require.Equal(t, 40*um, j.Guard)
		}
		if c.want != open {
			require.InDelta(t, map[bool]float64{true: 1 - j.Conforms, false: j.Conforms}[c.want == yes], j.Risk, 1e-15)
		} else {
			require.LessOrEqual(t, j.Risk, 0.5)
		}
		var back uncertainty.JudgementOf[units.Length]
		require.NoError(t, json.Unmarshal(must(json.Marshal(j)), &back))
		require.Equal(t, j, back)
	}
	// The zero rule goes by the reading alone; the zero judgement is no pass.
	require.Equal(t, uncertainty.Accept, must(uncertainty.Decide(uncertainty.Rule{}, uncertainty.Exactly(10*mm), band)).Decision)
	require.Equal(t, uncertainty.NotDecided, uncertainty.JudgementOf[units.Length]{}.Decision)

	j := must(uncertainty.Decide(uncertainty.ISO14253(), must(uncertainty.Normal("gauge", 10_017*um, 20*um)), band))
	require.Equal(t, "accept: within with a guard band of 0.033 mm; conforms with 95.01 %, risk 4.99 %", j.String())
	for reading, want := range map[units.Length]string{
		10 * mm:     "accept: within with a guard band of 0.033 mm; conforms with 98.76 %, risk 1.24 %",
		10_150 * um: "reject: above with a guard band of 0.033 mm; conforms with under 0.01 %, risk under 0.01 %",
	} {
		require.Equal(t, want, must(uncertainty.Decide(uncertainty.ISO14253(), must(uncertainty.Normal("gauge", reading, 20*um)), band)).String())
	}
	require.Contains(t, must(uncertainty.Decide(uncertainty.ISO14253(), uncertainty.Exactly(10*mm), band)).String(), "conforms with 100 %, risk 0 %")
	require.Contains(t, must(uncertainty.Decide(uncertainty.ISO14253(), must(uncertainty.Normal("x", 10*mm, 5*um)), band)).String(), "conforms with over 99.99 %")
	require.Contains(t, must(uncertainty.Decide(uncertainty.ISO14253(), must(uncertainty.Normal("x", 10_050*um, 5*um)), band)).String(), "not decided: undecided with a guard band of 0.00825 mm; conforms with 50.0 %, risk 50.0 %")

	good := uncertainty.Exactly(10 * mm)
	for _, c := range []struct {
		r    uncertainty.Rule
		e    uncertainty.Estimate
		b    tolerance.Band
		kind error
	}{
		{uncertainty.Rule{Factor: -1}, good, band, uncertainty.ErrFactor}, {uncertainty.Rule{Factor: math.NaN()}, good, band, uncertainty.ErrFactor},
		{uncertainty.Rule{Factor: math.Inf(1)}, good, band, uncertainty.ErrFactor}, {uncertainty.Rule{Manner: 9}, good, band, uncertainty.ErrFactor},
		{uncertainty.ISO14253(), good.Scale(1, 0), band, uncertainty.ErrRange}, {uncertainty.ISO14253(), good, tolerance.Band{}, uncertainty.ErrNoLimit},
		{uncertainty.ISO14253(), good, tolerance.AtMost(units.OutOfRange[units.Length]()), uncertainty.ErrRange},
		{uncertainty.Rule{Manner: proof, Factor: 1e30}, must(uncertainty.Normal("x", 0, um)), band, uncertainty.ErrRange},
	} {
		_, err := uncertainty.Decide(c.r, c.e, c.b)
		refused(t, err, c.kind)
	}
}

// A reading that the rule proves conforms with at least the rule's probability
// where the band is wide, and what it rejects doesn't.
func TestDecide_proves(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 253))
	for range 2000 {
		u := units.Length(1 + rng.Int64N(int64(mm)))
		band := tolerance.MustBetween(-20*u, 20*u)
		e := must(uncertainty.Normal("x", units.Length(rng.Int64N(60*int64(u))-30*int64(u)), u))
		j := must(uncertainty.Decide(uncertainty.ISO14253(), e, band))
		switch j.Decision {
		case uncertainty.Accept:
			require.Greater(t, j.Conforms, 0.95)
		case uncertainty.Reject:
			require.Less(t, j.Conforms, 0.05)
		default:
			// Within a quantum, which the guard band is rounded up to.
			part := 1 / float64(u)
			require.True(t, j.Conforms > 0.049-part && j.Conforms < 0.951+part, "%v %v", j, u)
		}
	}
}
