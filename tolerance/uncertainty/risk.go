package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Process is how the sizes that a process makes are spread, before they are
// measured. The continuous distributions of gonum's distuv are processes, as
// distuv.Normal{Mu: 10, Sigma: 0.4}.
type Process interface {
	Prob(x float64) float64     // probability density at x
	CDF(x float64) float64      // the part below x
	Quantile(p float64) float64 // what a part p lies below
}

// Limits are a least and a greatest value; an infinity where there is none.
type Limits struct {
	Lower, Upper float64 // in one unit with the process and the uncertainty
}

// UpperLimit are limits with no least value.
func UpperLimit(upper float64) Limits { return Limits{math.Inf(-1), upper} }

// LowerLimit are limits with no greatest value.
func LowerLimit(lower float64) Limits { return Limits{lower, math.Inf(1)} }

// DrawnIn are the limits drawn in by a guard band at each end they have.
func (l Limits) DrawnIn(guard float64) Limits { return Limits{l.Lower + guard, l.Upper - guard} }

func (l Limits) check(op, field string) error {
	if !(l.Lower < l.Upper) {
		return refuse(op, "", field, l, ErrNoZone, "a least value below a greatest")
	}
	if math.IsInf(l.Lower, -1) && math.IsInf(l.Upper, 1) {
		return refuse(op, "", field, l, ErrNoLimit, "a limit")
	}
	return nil
}

// Risks are what inspecting many parts comes to (JCGM 106, 9.4 and 9.5): the
// global risks, before any part is measured.
type Risks struct {
	Nonconforming float64 `json:"nonconforming"` // part of what is made that doesn't conform
	Accepted      float64 `json:"accepted"`      // part of what is made that is accepted
	Consumer      float64 `json:"consumer"`      // part of what is made that is accepted and doesn't conform
	Producer      float64 `json:"producer"`      // part of what is made that is rejected and does conform
}

// FalselyAccepted is the part of what is accepted that doesn't conform.
func (r Risks) FalselyAccepted() float64 {
	if r.Accepted == 0 {
		return 0
	}
	return r.Consumer / r.Accepted
}

// FalselyRejected is the part of what is rejected that does conform.
func (r Risks) FalselyRejected() float64 {
	if r.Accepted == 1 {
		return 0
	}
	return r.Producer / (1 - r.Accepted)
}

// GlobalRisks are the risks of accepting what reads within the acceptance
// limits where the tolerance limits are what must be kept, by the process's
// spread and the standard uncertainty u of a reading, normally distributed
// (JCGM 106, equations 15 to 20). All are in one unit. To about 11 places.
//
// A negative u is an [ErrUncertainty]; limits that ask nothing an
// [ErrNoLimit], limits with nothing between them an [ErrNoZone]; a process
// that gives no finite numbers an [ErrNotFinite].
func GlobalRisks(process Process, u float64, tolerance, acceptance Limits) (Risks, error) {
	const op = "global risks"
	switch {
	case process == nil:
		return Risks{}, refuse(op, "", "process", "", ErrEmpty, "a distribution of sizes")
	case u-u != 0:
		return Risks{}, refuse(op, "", "standard uncertainty", u, ErrNotFinite, "zero or more")
	case u < 0:
		return Risks{}, refuse(op, "", "standard uncertainty", u, ErrUncertainty, "zero or more")
	}
	if err := tolerance.check(op, "tolerance limits"); err != nil {
		return Risks{}, err
	}
	if err := acceptance.check(op, "acceptance limits"); err != nil {
		return Risks{}, err
	}
	in := inspection{process: process, u: u, accept: acceptance}
	in.least, in.greatest = process.Quantile(1e-17), process.Quantile(1-1e-16)
	conforms := process.CDF(tolerance.Upper) - process.CDF(tolerance.Lower)
	if s := in.least + in.greatest + conforms; s-s != 0 || in.least > in.greatest {
		return Risks{}, refuse(op, "", "process", "", ErrNotFinite, "a distribution with finite quantiles")
	}
	r := Risks{
		Nonconforming: process.CDF(tolerance.Lower) + survival(process, tolerance.Upper),
		Consumer: in.part(in.accepted, math.Inf(-1), tolerance.Lower) +
			in.part(in.accepted, tolerance.Upper, math.Inf(1)),
		Producer: in.part(in.rejected, tolerance.Lower, tolerance.Upper),
	}
	r.Accepted = max(0, min(1, 1-r.Nonconforming-r.Producer+r.Consumer))
	if s := r.Nonconforming + r.Consumer + r.Producer; s-s != 0 {
		return Risks{}, refuse(op, "", "process", "", ErrNotFinite, "finite densities")
	}
	return r, nil
}

// survival is the part of a process above x.
func survival(p Process, x float64) float64 {
	if s, ok := p.(interface{ Survival(float64) float64 }); ok {
		return s.Survival(x)
	}
	return 1 - p.CDF(x)
}

// inspection is a process whose parts are measured.
type inspection struct {
	process         Process
	u               float64
	accept          Limits
	least, greatest float64 // all but nothing that is made lies between
}

// accepted and rejected are the probabilities that a part of size x reads
// within the acceptance limits, and that it doesn't.
func (in *inspection) accepted(x float64) float64 {
	if in.u == 0 {
		if x >= in.accept.Lower && x <= in.accept.Upper {
			return 1
		}
		return 0
	}
	if x > in.accept.Upper {
		return max(0, normalCDF((in.accept.Upper-x)/in.u)-normalCDF((in.accept.Lower-x)/in.u))
	}
	return max(0, normalCDF((x-in.accept.Lower)/in.u)-normalCDF((x-in.accept.Upper)/in.u))
}

func (in *inspection) rejected(x float64) float64 {
	if in.u == 0 {
		return 1 - in.accepted(x)
	}
	return normalCDF((in.accept.Lower-x)/in.u) + normalCDF((x-in.accept.Upper)/in.u)
}

// part integrates density times f from a to b.
func (in *inspection) part(f func(float64) float64, a, b float64) float64 {
	a, b = max(a, in.least), min(b, in.greatest)
	if !(a < b) {
		return 0
	}
	points := []float64{a, b}
	add := func(x float64) {
		if x > a && x < b {
			points = append(points, x)
		}
	}
	for _, limit := range []float64{in.accept.Lower, in.accept.Upper} {
		for _, k := range []float64{0, 1, 2, 4, 8, 16, 32} {
			add(limit - k*in.u)
			add(limit + k*in.u)
		}
	}
	for _, p := range []float64{1e-12, 1e-6, 1e-3, 0.05, 0.25, 0.5, 0.75, 0.95, 1 - 1e-3, 1 - 1e-6, 1 - 1e-12} {
		add(in.process.Quantile(p))
	}
	return integrate(func(x float64) float64 { return in.process.Prob(x) * f(x) }, points)
}

// GuardForRisk is the least guard band, the same at each limit and not below
// zero, that brings the global consumer's risk down to target (JCGM 106,
// 9.5.4). Errors as for [GlobalRisks]; where no guard band narrower than half
// the tolerance does it, an [ErrNoZone].
func GuardForRisk(process Process, u float64, tolerance Limits, target float64) (float64, error) {
	const op = "guard band"
	if !(target > 0 && target < 1) {
		return 0, refuse(op, "", "consumer's risk", target, ErrProbability, "")
	}
	risk := func(guard float64) (float64, error) {
		r, err := GlobalRisks(process, u, tolerance, tolerance.DrawnIn(guard))
		return r.Consumer, err
	}
	r, err := risk(0)
	if err != nil || r <= target {
		return 0, err
	}
	// A reading is never 40 standard uncertainties out.
	near, far := 0.0, 40*u
	if half := (tolerance.Upper - tolerance.Lower) / 2; far >= half {
		far = half * (1 - 1e-9)
	}
	if r, err = risk(far); err != nil || r > target {
		return 0, refuse(op, "", "consumer's risk", target, ErrNoZone, "a risk that a narrower acceptance interval can reach")
	}
	for range 60 {
		g := near + (far-near)/2
		if r, err = risk(g); err != nil {
			return 0, err
		}
		if r > target {
			near = g
		} else {
			far = g
		}
	}
	return far, nil
}

// RisksFor is [GlobalRisks] for a quantity whose sizes are made normally
// distributed about a mean: the acceptance interval is what readings are
// accepted in.
func RisksFor[Q units.Quantity](mean, deviation, u Q, band tolerance.BandOf[Q], acceptance tolerance.Interval[Q]) (Risks, error) {
	if !units.InRange(mean) || !units.InRange(deviation) || !units.InRange(u) || !band.InRange() || !acceptance.InRange() {
		return Risks{}, refuse("global risks", "", "a value", "", ErrRange, "values in range")
	}
	if deviation <= 0 {
		return Risks{}, refuse("global risks", "", "standard deviation of the process", deviation, ErrUncertainty, "above zero")
	}
	return GlobalRisks(gauss{float64(mean), float64(deviation)}, float64(u), limitsOf(band.Interval()), limitsOf(acceptance))
}

func limitsOf[Q units.Quantity](i tolerance.Interval[Q]) Limits {
	l := Limits{math.Inf(-1), math.Inf(1)}
	if lo, end := i.Lower(); end != tolerance.Absent {
		l.Lower = float64(lo)
	}
	if hi, end := i.Upper(); end != tolerance.Absent {
		l.Upper = float64(hi)
	}
	return l
}

// gauss is the normal distribution as a process.
type gauss struct{ mean, deviation float64 }

func (g gauss) Prob(x float64) float64 {
	z := (x - g.mean) / g.deviation
	return math.Exp(-z*z/2) / (g.deviation * math.Sqrt(2*math.Pi))
}
func (g gauss) CDF(x float64) float64      { return normalCDF((x - g.mean) / g.deviation) }
func (g gauss) Survival(x float64) float64 { return normalCDF((g.mean - x) / g.deviation) }
func (g gauss) Quantile(p float64) float64 { return g.mean + g.deviation*normal(p) }
