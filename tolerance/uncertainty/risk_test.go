package uncertainty_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
)

func process(c vectors.Case) (p uncertainty.Process, u float64) {
	first, second := c.Float("first"), c.Float("second")
	switch c.Choice("shape", "gamma", "normal", "intolerance") {
	case "gamma":
		return distuv.Gamma{Alpha: first, Beta: second}, c.Float("u")
	case "intolerance":
		// Within ±1 with the given probability; second is the ratio to u.
		c.Is("u", "-")
		sigma := 1 / must(uncertainty.StudentT((1+first)/2, uncertainty.Infinite()))
		return distuv.Normal{Sigma: sigma}, sigma / second
	}
	return distuv.Normal{Mu: first, Sigma: second}, c.Float("u")
}

func TestGlobalRisks(t *testing.T) {
	vectors.Load(t, "published/uncertainty_risks.txt").Each(t, func(t *testing.T, c vectors.Case) {
		p, u := process(c)
		l := uncertainty.UpperLimit(c.Float("upper"))
		if c.Has("lower") {
			l.Lower = c.Float("lower")
		}
		r := must(uncertainty.GlobalRisks(p, u, l, l.DrawnIn(c.Float("guard"))))
		for name, v := range map[string]float64{"consumer": r.Consumer, "producer": r.Producer, "nonconforming": r.Nonconforming, "accepted_falsely": r.FalselyAccepted()} {
			if c.Has(name) {
				c.Near(name, 100*v)
			}
		}
		require.InDelta(t, 1, r.Accepted+r.Nonconforming-r.Consumer+r.Producer, 1e-15)
	})
}

func TestGlobalRisks_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/uncertainty_risks.txt").All(t) {
		number := func(col string, none float64) float64 {
			if !c.Has(col) {
				return none
			}
			return c.Float(col)
		}
		p, u := process(c)
		limits := uncertainty.Limits{Lower: number("lower", math.Inf(-1)), Upper: number("upper", math.Inf(1))}
		accept := uncertainty.Limits{Lower: number("accept_from", math.Inf(-1)), Upper: number("accept_to", math.Inf(1))}
		r := must(uncertainty.GlobalRisks(p, u, limits, accept))
		c.Near("consumer", r.Consumer)
		c.Near("producer", r.Producer)
	}
}

// JCGM 106, 9.5.4: a guard band of 0.3282 µm, an acceptance limit of
// 1.6718 µm, brings the consumer's risk down to 0.1 %.
func TestGuardForRisk(t *testing.T) {
	bearings := distuv.Gamma{Alpha: 4, Beta: 4}
	limits := uncertainty.UpperLimit(2)
	require.InDelta(t, 0.3282, must(uncertainty.GuardForRisk(bearings, 0.25, limits, 0.001)), 5e-5)
	require.Zero(t, must(uncertainty.GuardForRisk(bearings, 0.25, limits, 0.02)), "the risk is 0.8 % without one")
	two := uncertainty.Limits{Lower: -2, Upper: 2}
	g := must(uncertainty.GuardForRisk(distuv.UnitNormal, 0.25, two, 0.0005))
	require.InDelta(t, 0.0005, must(uncertainty.GlobalRisks(distuv.UnitNormal, 0.25, two, two.DrawnIn(g))).Consumer, 1e-12)
	for _, c := range []struct {
		p      uncertainty.Process
		u      float64
		l      uncertainty.Limits
		target float64
		kind   error
	}{
		{bearings, 0.25, limits, 0, uncertainty.ErrProbability}, {bearings, 0.25, limits, math.NaN(), uncertainty.ErrProbability},
		{bearings, -1, limits, 0.1, uncertainty.ErrUncertainty},
		// Most of what is made is bad, and the instrument can't tell.
		{distuv.Normal{Mu: 3, Sigma: 1}, 5, uncertainty.Limits{Lower: -1, Upper: 1}, 1e-15, uncertainty.ErrNoZone},
	} {
		_, err := uncertainty.GuardForRisk(c.p, c.u, c.l, c.target)
		refused(t, err, c.kind)
	}
}

// broken are processes that give no numbers.
type broken struct {
	uncertainty.Process
	density, quantile float64
}

func (b broken) Prob(float64) float64 { return b.density }
func (b broken) Quantile(p float64) float64 {
	if b.quantile != 0 {
		return b.quantile
	}
	return b.Process.Quantile(p)
}

func TestGlobalRisks_edges(t *testing.T) {
	unit, two := distuv.UnitNormal, uncertainty.Limits{Lower: -2, Upper: 2}
	// With an exact instrument no good part is rejected and no bad one taken.
	r := must(uncertainty.GlobalRisks(unit, 0, two, two))
	require.Zero(t, r.Consumer)
	require.Zero(t, r.Producer)
	require.InDelta(t, r.Accepted, 1-r.Nonconforming, 1e-15)
	require.InDelta(t, math.Erfc(math.Sqrt2), r.Nonconforming, 1e-15)
	// With an exact instrument and a guard band, the guard bands' share is rejected.
	r = must(uncertainty.GlobalRisks(unit, 0, two, two.DrawnIn(1)))
	require.InDelta(t, math.Erf(math.Sqrt2)-math.Erf(1/math.Sqrt2), r.Producer, 1e-13)
	require.InDelta(t, r.Producer/(1-r.Accepted), r.FalselyRejected(), 1e-15)
	// Accepting beyond the tolerance limits.
	r = must(uncertainty.GlobalRisks(unit, 0, two, uncertainty.Limits{Lower: -9, Upper: 9}))
	require.InDelta(t, r.Nonconforming, r.Consumer, 1e-13)
	require.InDelta(t, r.Nonconforming, r.FalselyAccepted(), 1e-13)
	require.Zero(t, uncertainty.Risks{}.FalselyAccepted())
	require.Zero(t, uncertainty.Risks{Accepted: 1}.FalselyRejected())
	// A one-sided limit is the limit of two far apart.
	one := must(uncertainty.GlobalRisks(unit, 0.3, uncertainty.LowerLimit(-1), uncertainty.LowerLimit(-0.9)))
	far := must(uncertainty.GlobalRisks(unit, 0.3, uncertainty.Limits{Lower: -1, Upper: 50}, uncertainty.Limits{Lower: -0.9, Upper: 50}))
	require.InDelta(t, far.Consumer, one.Consumer, 1e-13)
	require.InDelta(t, far.Producer, one.Producer, 1e-13)
	nan := math.NaN()
	for _, c := range []struct {
		p              uncertainty.Process
		u              float64
		limits, accept uncertainty.Limits
		kind           error
	}{
		{nil, 1, two, two, uncertainty.ErrEmpty}, {unit, -1, two, two, uncertainty.ErrUncertainty}, {unit, nan, two, two, uncertainty.ErrNotFinite},
		{unit, math.Inf(1), two, two, uncertainty.ErrNotFinite}, {unit, 1, uncertainty.Limits{Lower: 2, Upper: 1}, two, uncertainty.ErrNoZone},
		{unit, 1, two, uncertainty.Limits{Lower: nan, Upper: 1}, uncertainty.ErrNoZone}, {unit, 1, two, two.DrawnIn(2), uncertainty.ErrNoZone},
		{unit, 1, uncertainty.UpperLimit(math.Inf(1)), two, uncertainty.ErrNoLimit},
		{distuv.Normal{Sigma: nan}, 1, two, two, uncertainty.ErrNotFinite}, {broken{Process: unit, density: nan}, 1, two, two, uncertainty.ErrNotFinite},
		{broken{Process: unit, quantile: math.Inf(1)}, 1, two, two, uncertainty.ErrNotFinite},
	} {
		_, err := uncertainty.GlobalRisks(c.p, c.u, c.limits, c.accept)
		refused(t, err, c.kind)
	}
	band := tolerance.AtMost(mm)
	_, err := uncertainty.RisksFor(0, 0, um, band, band.Interval())
	refused(t, err, uncertainty.ErrUncertainty)
	_, err = uncertainty.RisksFor(0, um, 1<<62, band, band.Interval())
	refused(t, err, uncertainty.ErrRange)
	// Bands without one of their ends.
	low := must(uncertainty.RisksFor(0, um, 300*nm, tolerance.AtLeast(-um), tolerance.AtLeast(-900*nm).Interval()))
	require.InDelta(t, one.Consumer, low.Consumer, 1e-12)
	high := must(uncertainty.RisksFor(0, um, 300*nm, tolerance.AtMost(um), tolerance.AtMost(900*nm).Interval()))
	require.InDelta(t, one.Producer, high.Producer, 1e-12)
}
