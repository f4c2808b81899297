package uncertainty_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func ExampleNormal() {
	// From an earlier evaluation, good to one part in four.
	e, err := uncertainty.Normal("comparator", 0, 4*units.Micrometre, uncertainty.Reliability(0.25))
	fmt.Println(e, err)
	fmt.Println(e.Freedom())
	_, err = uncertainty.Normal("comparator", 0, -4*units.Micrometre)
	fmt.Println(err)
	// Output:
	// 0.0000 mm, standard uncertainty 0.0040 mm <nil>
	// 8
	// uncertainty: normal "comparator": uncertainty -0.004 mm: negative uncertainty; zero or more
}

func ExampleNormalWithin() {
	// "As likely as not between 10.07 and 10.15 mm" (GUM 4.3.5).
	e, err := uncertainty.NormalWithin("judgement", 10_110*units.Micrometre, 40*units.Micrometre, 0.5)
	fmt.Println(e, err)
	// Output: 10.110 mm, standard uncertainty 0.060 mm <nil>
}

func ExampleRectangular() {
	e, err := uncertainty.Rectangular("permissible error", 0, 4*units.Micrometre)
	fmt.Println(e, err)
	// Output: 0.0000 mm, standard uncertainty 0.0023 mm <nil>
}

func ExampleTriangular() {
	e, err := uncertainty.Triangular("two steps of a scale", 0, 10*units.Micrometre)
	fmt.Println(e, err)
	// Output: 0.0000 mm, standard uncertainty 0.0041 mm <nil>
}

func ExampleUShaped() {
	// A thermostat swings the room by half a kelvin to either side (GUM H.1.3.4).
	e, err := uncertainty.UShaped("room", units.Temperature(20*units.CELSIUS), units.Temperature(0.5*units.CELSIUS))
	fmt.Println(e, err)
	// Output: 20.00 °C, standard uncertainty 0.36 °C <nil>
}

func ExampleResolution() {
	e, err := uncertainty.Resolution("micrometer", units.MustParseLength("2.4995 in"), units.MustParseLength(".0001 in"))
	fmt.Println(e.Text(units.InInches), err)
	// Output: 2.499500 in, standard uncertainty 0.000029 in <nil>
}

func ExampleCalibration() {
	e, err := uncertainty.Calibration("setting ring", 80_001*units.Micrometre, 1*units.Micrometre, 2)
	fmt.Println(e, err)
	// Output: 80.00100 mm, standard uncertainty 0.00050 mm <nil>
}

func ExampleRepeatability() {
	e, err := uncertainty.Repeatability("three readings", 25_401*units.Micrometre, 25_403*units.Micrometre, 25_402*units.Micrometre)
	fmt.Println(e, err)
	// Output: 25.40200 mm, standard uncertainty 0.00058 mm <nil>
}

func ExamplePooledRepeatability() {
	// One reading today; forty earlier ones scattered by 1.2 µm.
	e, err := uncertainty.PooledRepeatability("reading", 1_200*units.Nanometre, 39, 25_402*units.Micrometre)
	fmt.Println(e, err)
	// Output: 25.4020 mm, standard uncertainty 0.0012 mm <nil>
}

func ExampleRepeatabilityReal() {
	d, err := uncertainty.RepeatabilityReal("torque", "N·m", 80.2, 80.6, 80.4)
	fmt.Println(d, err)
	// Output: 80.40, standard uncertainty 0.12 <nil>
}

func ExampleExactly() {
	nominal := uncertainty.Exactly(86 * units.Millimetre)
	fmt.Println(nominal)
	// Output: 86 mm, exactly
}

func ExampleExactlyReal() {
	gravity := uncertainty.ExactlyReal(9.80665)
	mass, _ := uncertainty.NewDual("mass", 25, "kg", uncertainty.RectangularShape, 0.05)
	fmt.Println(mass.Mul(gravity), "N")
	// Output: 245.17, standard uncertainty 0.29 N
}

func ExampleFromReal() {
	d, _ := uncertainty.NewDual("model", 3.25, "in", uncertainty.NormalShape, 0.0005)
	e, err := uncertainty.FromReal(d, units.InInches)
	fmt.Println(e, err)
	// Output: 82.550 mm, standard uncertainty 0.013 mm <nil>
}

func ExampleSum() {
	a, _ := uncertainty.Normal("a", 10*units.Millimetre, 3*units.Micrometre)
	b, _ := uncertainty.Normal("b", 20*units.Millimetre, 4*units.Micrometre)
	fmt.Println(uncertainty.Sum(a, b))
	// Output: 30.0000 mm, standard uncertainty 0.0050 mm
}

func ExampleMean() {
	// Three readings on one scale: each has its own scatter, all have the ring.
	ring, _ := uncertainty.Normal("ring", 0, 3*units.Micrometre)
	var all []uncertainty.Estimate
	for range 4 {
		e, _ := uncertainty.Normal("reading", 80*units.Millimetre, 4*units.Micrometre)
		all = append(all, e.Add(ring))
	}
	m, err := uncertainty.Mean(all...)
	fmt.Println(m, err) // √(3² + 4²/4)
	// Output: 80.0000 mm, standard uncertainty 0.0036 mm <nil>
}

func ExampleCorrelation() {
	ring, _ := uncertainty.Normal("ring", 0, 3*units.Micrometre)
	a, _ := uncertainty.Normal("a", 80*units.Millimetre, 4*units.Micrometre)
	b, _ := uncertainty.Normal("b", 90*units.Millimetre, 4*units.Micrometre)
	fmt.Printf("%.2f\n", uncertainty.Correlation(a.Add(ring), b.Add(ring)))
	// Output: 0.36
}

func ExampleCorrelationReal() {
	x, _ := uncertainty.NewDual("x", 3, "m", uncertainty.NormalShape, 0.3)
	y, _ := uncertainty.NewDual("y", 4, "m", uncertainty.NormalShape, 0.3)
	fmt.Printf("%.2f\n", uncertainty.CorrelationReal(x.Add(y), x.Sub(y)))
	fmt.Printf("%.2f\n", uncertainty.CorrelationReal(x.Mul(x), x))
	// Output:
	// 0.00
	// 1.00
}

func ExampleCorrelatedReal() {
	// Slope and offset of a fitted line go against each other.
	line, err := uncertainty.CorrelatedReal([]string{"offset", "slope"}, []float64{0.1, 2}, "", []float64{0.05, 0.02}, [][]float64{{1, -0.9}, {-0.9, 1}})
	fmt.Println(line[0].Add(line[1].Mul(uncertainty.ExactlyReal(2))), err)
	// Output: 4.100, standard uncertainty 0.023 <nil>
}

func ExampleInfinite() {
	k, _ := uncertainty.CoverageFactor(0.9545, uncertainty.Infinite())
	fmt.Printf("%v: k = %.2f\n", uncertainty.Infinite(), k)
	// Output: ∞: k = 2.00
}

func ExampleReliability() {
	fmt.Println(uncertainty.Reliability(0.10), uncertainty.Reliability(0.50)) // GUM H.1.6
	// Output: 50 2
}

func ExampleStudentT() {
	for _, f := range []uncertainty.Freedom{4, 16, uncertainty.Infinite()} {
		t, _ := uncertainty.StudentT(0.975, f)
		fmt.Printf("%v: %.3f\n", f, t)
	}
	// Output:
	// 4: 2.776
	// 16: 2.120
	// ∞: 1.960
}

func ExampleWarmer() {
	room, _ := uncertainty.Rectangular("room", units.Temperature(22*units.CELSIUS), units.Temperature(1*units.CELSIUS))
	hand, _ := uncertainty.Rectangular("warmth of the hand", units.TemperatureDifference(0.5*units.KELVIN), units.TemperatureDifference(0.5*units.KELVIN))
	fmt.Println(uncertainty.Warmer(room, hand))
	// Output: 22.50 °C, standard uncertainty 0.65 °C
}

func ExampleLengthAtReference() {
	// 85.980 mm read under a micrometer at 22 °C on a piston at 31 °C.
	fmt.Printf("%.4f\n", float64(uncertainty.LengthAtReference[tolerance.Float](85.980, 11.5e-6, 2, 21e-6, 11)))
	// Output: 85.9621
}

func ExampleEstimateOf_Expanded() {
	e, _ := uncertainty.Normal("comparison", 50*units.Millimetre+838*units.Nanometre, 31_664*units.Picometre, 16.7)
	x, err := e.Expanded(0.99)
	fmt.Println(x.Text(units.InNanometres), err)
	// Output: 50000838 nm ± 93 nm, k = 2.92, 99 % <nil>
}

func ExampleEstimateOf_Bracket() {
	e, _ := uncertainty.Normal("gap", 65*units.Micrometre, 2*units.Micrometre)
	bracket := e.Bracket(2)
	fmt.Println(bracket, tolerance.AtMost(70*units.Micrometre).Judge(bracket))
	// Output: [0.061 mm, 0.069 mm] within
}

func ExampleBudget_Markdown() {
	bore, _ := uncertainty.Rectangular("bore gauge", 86_030*units.Micrometre, 4*units.Micrometre)
	piston, _ := uncertainty.Normal("micrometer", 85_970*units.Micrometre, 2*units.Micrometre)
	b, err := bore.Sub(piston).Budget(units.InMicrometres)
	fmt.Println(b.Markdown(), err)
	// Output:
	// | source | spread | standard uncertainty | sensitivity | contribution | degrees of freedom | share |
	// | --- | --- | ---: | ---: | ---: | ---: | ---: |
	// | bore gauge | rectangular | 2.31 µm | 1.00 | 2.31 µm | ∞ | 57.1 % |
	// | micrometer | normal | 2.00 µm | -1.00 | -2.00 µm | ∞ | 42.9 % |
	// | combined |  |  |  | 3.06 µm | ∞ | 100.0 % |
	//  <nil>
}

func ExampleDual() {
	// Mean piston speed in m/s from stroke and speed of rotation.
	stroke, _ := uncertainty.NewDual("stroke", 0.140, "m", uncertainty.RectangularShape, 0.0001)
	turns, _ := uncertainty.NewDual("tachometer", 2400.0/60, "1/s", uncertainty.RectangularShape, 0.5)
	fmt.Println(stroke.Mul(turns).Mul(stroke.Const(2)), "m/s")
	// Output: 11.200, standard uncertainty 0.081 m/s
}

func ExampleSimulateReal() {
	// The cosine error of a dial gauge that stands askew, by a few degrees
	// that nobody knows: first order gives nothing.
	tilt, _ := uncertainty.NewDual("tilt", 0, "rad", uncertainty.NormalShape, 3*math.Pi/180)
	fmt.Println(tilt.Cos())
	s, err := uncertainty.SimulateReal(uncertainty.Trials(1, 100_000), []uncertainty.Dual{tilt}, func(x []tolerance.Float) tolerance.Float { return x[0].Cos() })
	if err != nil {
		fmt.Println(err)
		return
	}
	lo, hi, _ := s.Shortest(0.95)
	fmt.Printf("95 %% lie between %.3f and %.3f\n", lo, hi)
	// Output:
	// 1, with no uncertainty to first order, which is not enough: simulate it
	// 95 % lie between 0.995 and 1.000
}
