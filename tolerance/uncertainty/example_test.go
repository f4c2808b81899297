package uncertainty_test

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// A bore read five times on a gauge that was set in a ring: what is it, and
// how well is that known?
func Example() {
	mean, err := uncertainty.Repeatability("five readings", 86_021*units.Micrometre, 86_024*units.Micrometre, 86_022*units.Micrometre, 86_020*units.Micrometre, 86_023*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	ring, err := uncertainty.Calibration("setting ring", 0, 1*units.Micrometre, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	scale, err := uncertainty.Resolution("dial", 0, 2*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	bore := mean.Add(ring).Add(scale)
	fmt.Println(bore)
	result, _ := bore.Expanded(0.95)
	fmt.Println(result)
	budget, _ := bore.Budget(units.InMicrometres)
	fmt.Print(budget)
	// Output:
	// 86.0220 mm, standard uncertainty 0.0011 mm
	// 86.0220 mm ± 0.0022 mm, k = 2.10, 95 %
	// source         spread       standard uncertainty  sensitivity  contribution  degrees of freedom    share
	// five readings  normal                   0.707 µm         1.00      0.707 µm                   4   46.2 %
	// setting ring   normal                   0.500 µm         1.00      0.500 µm                   ∞   23.1 %
	// dial           rectangular              0.577 µm         1.00      0.577 µm                   ∞   30.8 %
	// combined                                                            1.04 µm                18.8  100.0 %
}

// The ring's error is in both bores, so it is not in their difference.
func ExampleEstimateOf_Sub() {
	ring, _ := uncertainty.Calibration("setting ring", 0, 4*units.Micrometre, 2)
	top, _ := uncertainty.Resolution("dial at the top", 86_040*units.Micrometre, 2*units.Micrometre)
	bottom, _ := uncertainty.Resolution("dial at the bottom", 86_025*units.Micrometre, 2*units.Micrometre)
	top, bottom = top.Add(ring), bottom.Add(ring)
	fmt.Println("top:  ", top)
	fmt.Println("taper:", top.Sub(bottom))
	fmt.Println("x − x:", top.Sub(top))
	// Output:
	// top:   86.0400 mm, standard uncertainty 0.0021 mm
	// taper: 0.01500 mm, standard uncertainty 0.00082 mm
	// x − x: 0 mm, exactly
}

// A bore that is round within its uncertainty: the linear picture of |a − b|
// fails there, and says so.
func ExampleEstimateOf_NearKink() {
	a, _ := uncertainty.Normal("across", 86_021*units.Micrometre, 2*units.Micrometre)
	b, _ := uncertainty.Normal("along", 86_020*units.Micrometre, 2*units.Micrometre)
	round := func(x []units.Length) units.Length { return outOfRound(x[0], x[1]) }
	fmt.Println(outOfRound(a, b))
	s, err := uncertainty.Simulate(uncertainty.Trials(1, 100_000), []uncertainty.Estimate{a, b}, round)
	if err != nil {
		fmt.Println(err)
		return
	}
	most, _ := s.Quantile(0.95)
	fmt.Println("95 % lie below", most.Text(units.InMillimetres, 4))
	// Output:
	// 0.0010 mm, standard uncertainty 0.0029 mm (first order is not enough: simulate it)
	// 95 % lie below 0.0059 mm
}

func ExampleWithin() {
	// A blade of 0.10 mm goes in, one of 0.15 mm doesn't.
	gap, _ := tolerance.HalfOpen(100*units.Micrometre, 150*units.Micrometre)
	e, err := uncertainty.Within("between two blades", gap)
	fmt.Println(e, err)
	// Output: 0.125 mm, standard uncertainty 0.015 mm <nil>
}

func ExampleNewDual() {
	// A torque wrench checked by hanging weights: 250 N at an arm of 0.4 m.
	force, _ := uncertainty.NewDual("spring balance", 250, "N", uncertainty.RectangularShape, 2)
	arm, _ := uncertainty.NewDual("arm", 0.400, "m", uncertainty.NormalShape, 0.001)
	fmt.Println(force.Mul(arm))
	// Output: 100.00, standard uncertainty 0.53
}

func ExampleEstimateOf_Real() {
	// Swept volume crosses from lengths to a volume: π/4·bore²·stroke.
	bore, _ := uncertainty.Normal("bore", 86*units.Millimetre, 5*units.Micrometre)
	stroke, _ := uncertainty.Normal("stroke", 90*units.Millimetre, 20*units.Micrometre)
	volume, _ := uncertainty.FromReal(sweptVolume(bore.Real(units.InCentimetres), stroke.Real(units.InCentimetres)), units.InCubicCentimetres)
	fmt.Println(volume)
	// Output: 522.79 cm³, standard uncertainty 0.14 cm³
}

func sweptVolume[R tolerance.Real[R]](bore, stroke R) R {
	quarterPi := bore.Const(3.141592653589793 / 4)
	return quarterPi.Mul(bore.Mul(bore)).Mul(stroke)
}

func ExampleAtReference() {
	// A warm aluminium piston under a cooler micrometer.
	at := func(name string, t units.Temperature) uncertainty.EstimateOf[units.Temperature] {
		e, _ := uncertainty.Rectangular(name, t, units.Temperature(1*units.CELSIUS))
		return e
	}
	steel, _ := uncertainty.NewDual("steel", 11.5e-6, "1/K", uncertainty.RectangularShape, 1e-6)
	aluminium, _ := uncertainty.NewDual("aluminium", 21e-6, "1/K", uncertainty.RectangularShape, 1e-6)
	e, err := uncertainty.AtReference(uncertainty.Exactly(85_980*units.Micrometre),
		uncertainty.Body{Temperature: at("micrometer", 22*units.CELSIUS), Expansion: steel},
		uncertainty.Body{Temperature: at("piston", 31*units.CELSIUS), Expansion: aluminium})
	fmt.Println(e, err)
	// Output: 85.9621 mm, standard uncertainty 0.0014 mm <nil>
}

func ExampleCorrelated() {
	// A certificate gives two rings with a correlation of 0.8.
	rings, err := uncertainty.Correlated([]string{"ring 1", "ring 2"},
		[]units.Length{80 * units.Millimetre, 90 * units.Millimetre},
		[]units.Length{500 * units.Nanometre, 500 * units.Nanometre},
		[][]float64{{1, 0.8}, {0.8, 1}})
	fmt.Println(rings[1].Sub(rings[0]), err)
	// Output: 10.00000 mm, standard uncertainty 0.00032 mm <nil>
}

func ExampleCoverageFactor() {
	k, err := uncertainty.CoverageFactor(0.99, 16.7) // cut to 16: GUM H.1
	fmt.Printf("%.2f %v\n", k, err)
	_, err = uncertainty.CoverageFactor(0.99, 0)
	fmt.Println(errors.Is(err, uncertainty.ErrFreedom))
	// Output:
	// 2.92 <nil>
	// true
}

func ExampleEffectiveFreedom() {
	f, _ := uncertainty.EffectiveFreedom([]float64{0.25, 0.57, 0.82}, []uncertainty.Freedom{9, 4, 14})
	fmt.Println(f, f.Truncated())
	// Output: 19 18
}

func ExampleRoundUncertainty() {
	for _, u := range []float64{10.47, 28.05, 0.0271} {
		rounded, places, _ := uncertainty.RoundUncertainty(u)
		fmt.Println(rounded, places)
	}
	// Output:
	// 11 0
	// 28 0
	// 0.028 3
}

func ExampleRelativeUncertainty() {
	for _, n := range []int{2, 5, 10, 30} {
		r, _ := uncertainty.RelativeUncertainty(n)
		fmt.Printf("the scatter of %d readings is known to %.0f %%\n", n, 100*r)
	}
	// Output:
	// the scatter of 2 readings is known to 76 %
	// the scatter of 5 readings is known to 36 %
	// the scatter of 10 readings is known to 24 %
	// the scatter of 30 readings is known to 13 %
}
