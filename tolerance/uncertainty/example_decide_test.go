package uncertainty_test

import (
	"fmt"

	"gonum.org/v1/gonum/stat/distuv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func ExampleDecide() {
	band := tolerance.MustParseBand("0.03–0.07 mm")
	e, _ := uncertainty.Normal("clearance", 65*units.Micrometre, 5*units.Micrometre)
	for _, rule := range []uncertainty.Rule{{}, uncertainty.ISO14253()} {
		j, err := uncertainty.Decide(rule, e, band)
		fmt.Println(j, err)
	}
	// Output:
	// accept: within with a guard band of 0 mm; conforms with 84.1 %, risk 15.9 % <nil>
	// not decided: undecided with a guard band of 0.00825 mm; conforms with 84.1 %, risk 15.9 % <nil>
}

func ExampleConformance() {
	e, _ := uncertainty.Normal("gap", 65*units.Micrometre, 5*units.Micrometre)
	p, _ := uncertainty.Conformance(e, tolerance.AtMost(70*units.Micrometre))
	fmt.Printf("%.3f\n", p)
	// Output: 0.841
}

// A micrometer of ±4 µm that shows 0.01 mm, against a ring's height of
// 1.478 to 1.490 mm.
func ExampleCanDecide() {
	scale, _ := uncertainty.Resolution("scale", 0, 10*units.Micrometre)
	permitted, _ := uncertainty.Rectangular("permissible error", 0, 4*units.Micrometre)
	band := tolerance.MustParseBand("1.478–1.490 mm")
	a, _ := uncertainty.CanDecide(uncertainty.ISO14253(), band, scale.Add(permitted).StandardUncertainty())
	fmt.Println("can decide:", a.Can)
	step, _ := uncertainty.ResolutionFor(a.Needed, permitted.StandardUncertainty())
	fmt.Println("a scale of", step.Text(units.InMicrometres, 1), "could, just")
	fine, _ := uncertainty.Resolution("vernier", 0, 1*units.Micrometre)
	a, _ = uncertainty.CanDecide(uncertainty.ISO14253(), band, fine.Add(permitted).StandardUncertainty())
	fmt.Println("with 1 µm it accepts", a.Accept.Text(units.InMillimetres, 4))
	// Output:
	// can decide: false
	// a scale of 9.7 µm could, just
	// with 1 µm it accepts 1.4819–1.4861 mm
}

func ExampleSettle() {
	e, _ := uncertainty.Normal("clearance", 65*units.Micrometre, 5*units.Micrometre)
	s, _ := uncertainty.Settle(uncertainty.ISO14253(), e, tolerance.MustParseBand("0.03–0.07 mm"))
	fmt.Println(s.Decided, s.Distance, "from", s.Limit)
	fmt.Println("needs", s.Needed.Text(units.InMicrometres, 1), "or the mean of", s.Readings)
	// Output:
	// false 0.005 mm from 0.07 mm
	// needs 3.0 µm or the mean of 3
}

func ExampleAcceptanceInterval() {
	i, err := uncertainty.AcceptanceInterval(tolerance.MustParseBand("9.95–10.05 mm"), 20*units.Micrometre, 0.95)
	fmt.Println(tolerance.BandFrom(i).Text(units.InMillimetres, 4), err)
	_, err = uncertainty.AcceptanceInterval(tolerance.MustParseBand("9.95–10.05 mm"), 30*units.Micrometre, 0.95)
	fmt.Println(err)
	// Output:
	// 9.9830–10.0170 mm <nil>
	// uncertainty: acceptance interval: standard uncertainty 0.03 mm: no reading could prove it; less uncertainty, or a wider band
}

// JCGM 106, 9.5.4: ball bearings with a mean error of 1 µm, at most 2 µm
// allowed, measured with u = 0.25 µm.
func ExampleGlobalRisks() {
	made := distuv.Gamma{Alpha: 4, Beta: 4}
	limit := uncertainty.UpperLimit(2)
	r, _ := uncertainty.GlobalRisks(made, 0.25, limit, limit)
	fmt.Printf("%.1f %% are bad; %.1f %% are bad and accepted\n", 100*r.Nonconforming, 100*r.Consumer)
	guard, _ := uncertainty.GuardForRisk(made, 0.25, limit, 0.001)
	fmt.Printf("accept to %.4f µm for a risk of 0.1 %%\n", 2-guard)
	// Output:
	// 4.2 % are bad; 0.8 % are bad and accepted
	// accept to 1.6718 µm for a risk of 0.1 %
}

func ExampleTestUncertaintyRatio() {
	band := tolerance.MustParseBand("9.95–10.05 mm")
	r, _ := uncertainty.TestUncertaintyRatio(band, 10*units.Micrometre)
	f, _ := uncertainty.GuardRootSumSquare.Factor(r)
	fmt.Printf("%.1f to 1: accept within %.2f of the tolerance\n", r, f)
	// Output: 2.5 to 1: accept within 0.92 of the tolerance
}

func ExampleRisksFor() {
	band := tolerance.MustParseBand("9.95–10.05 mm")
	r, _ := uncertainty.RisksFor(10*units.Millimetre, 25*units.Micrometre, 10*units.Micrometre, band, band.Interval())
	fmt.Printf("%.2f %% bad and accepted, %.2f %% good and rejected\n", 100*r.Consumer, 100*r.Producer)
	// Output: 1.09 % bad and accepted, 2.87 % good and rejected
}

func ExampleISO14253() {
	fmt.Println(uncertainty.ISO14253().Manner, uncertainty.ISO14253().Factor)
	// Output: proof 1.65
}

func ExampleUpperLimit() {
	fmt.Println(uncertainty.UpperLimit(0.10), uncertainty.LowerLimit(0.03))
	// Output: {-Inf 0.1} {0.03 +Inf}
}

func ExampleLowerLimit() {
	fmt.Println(uncertainty.LowerLimit(1.5).DrawnIn(0.1))
	// Output: {1.6 +Inf}
}

func ExampleGuardForRisk() {
	// Made to ±2 standard deviations, measured with a quarter of one.
	limits := uncertainty.Limits{Lower: -2, Upper: 2}
	g, err := uncertainty.GuardForRisk(distuv.UnitNormal, 0.25, limits, 0.001)
	fmt.Printf("%.3f %v\n", g, err)
	// Output: 0.326 <nil>
}

func ExampleResolutionFor() {
	// 3 µm are wanted, 2 µm are there already.
	step, err := uncertainty.ResolutionFor(3*units.Micrometre, 2*units.Micrometre)
	fmt.Println(step.Text(units.InMicrometres, 2), err)
	_, err = uncertainty.ResolutionFor(3*units.Micrometre, 4*units.Micrometre)
	fmt.Println(err)
	// Output:
	// 7.75 µm <nil>
	// uncertainty: resolution: everything else 0.004 mm: no reading could prove it; less than what is needed: better everything else first
}

func ExampleGuardMethod_Factor() {
	for _, m := range []uncertainty.GuardMethod{uncertainty.GuardRootSumSquare, uncertainty.GuardByUncertainty, uncertainty.GuardPastFour, uncertainty.GuardManagedRisk} {
		f, _ := m.Factor(3)
		fmt.Printf("%v: %.3f\n", m, f)
	}
	// Output:
	// root sum square: 0.943
	// whole uncertainty: 0.667
	// none past four: 0.917
	// managed risk: 0.948
}
