package valvetrain_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func springLoad(s string) valvetrain.LoadBracket {
	l, err := tolerance.ParseInterval[units.Force](s)
	if err != nil {
		panic(err)
	}
	return l
}

func ExampleSpringRateOfLoads() {
	type f = tolerance.Float
	fmt.Printf("%.1f lbf/in\n", valvetrain.SpringRateOfLoads(f(77), f(1.492), f(171.5), f(1.082)))
	// Output: 230.5 lbf/in
}

func ExampleSpringLoadAt() {
	type f = tolerance.Float
	fmt.Printf("%.1f lbf\n", valvetrain.SpringLoadAt(f(236.3), f(1.816), f(1.492)))
	// Output: 76.6 lbf
}

func ExampleSpringHeightFor() {
	type f = tolerance.Float
	fmt.Printf("%.1f mm\n", valvetrain.SpringHeightFor(f(45), f(46), f(360)))
	// Output: 38.0 mm
}

func ExampleSpringFreeFor() {
	type f = tolerance.Float
	fmt.Printf("%.1f mm\n", valvetrain.SpringFreeFor(f(45), f(360), f(38)))
	// Output: 46.0 mm
}

func ExampleSpringLoadBetween() {
	type f = tolerance.Float
	fmt.Printf("%.0f N\n", valvetrain.SpringLoadBetween(f(250), f(40), f(700), f(30), f(38)))
	// Output: 340 N
}

func ExampleSpringOpenHeight() {
	fmt.Println(valvetrain.SpringOpenHeight(stemMM("38"), stemMM("10.5")))
	// Output: 27.5 mm
}

func ExampleCoilBindMargin() {
	m := valvetrain.CoilBindMargin(working.Given("installed height", "h", stemMM("38")), working.Given("lift", "l", stemMM("10.5")), working.Given("solid height", "s", stemMM("25.5"))).
		Named("margin to coil bind", "m")
	s, _ := working.Solve(m, units.Style[units.Length]{Places: 1})
	fmt.Print(s.Text())
	// Output:
	// margin to coil bind = installed height − lift − solid height
	// m = h − l − s
	//   = 38.0 mm − 10.5 mm − 25.5 mm
	//   = 2.0 mm
}

func ExampleLiftToMargin() {
	fmt.Println(valvetrain.LiftToMargin(stemMM("38"), stemMM("1"), stemMM("25.5")))
	// Output: 11.5 mm
}

func ExampleInnerHeight() {
	fmt.Println(valvetrain.InnerHeight(stemMM("38"), stemMM("3")))
	// Output: 35 mm
}

func ExampleSpringShortening() {
	fmt.Println(valvetrain.SpringShortening(stemMM("46"), stemMM("45.2")))
	// Output: 0.8 mm
}

// A spring of 2.000 in when new is renewed below 1.940.
func ExampleSpringFreeLimit() {
	fmt.Println(valvetrain.SpringFreeLimit(2*units.Inch).Text(units.InInches, 3))
	// Output: 1.940 in
}

func ExampleSpringLean() {
	type f = tolerance.Float
	fmt.Printf("%.2f°\n", valvetrain.SpringLean(f(1.0/16), f(2))*180/math.Pi)
	// Output: 1.79°
}

func ExampleSpringOffSquare() {
	type f = tolerance.Float
	fmt.Printf("%.2f mm\n", valvetrain.SpringOffSquare(f(2*math.Pi/180), f(45)))
	// Output: 1.57 mm
}

func ExampleSpringRateBetween() {
	k, err := valvetrain.SpringRateBetween(
		valvetrain.SpringReading{Height: stemBracket("40 mm"), Load: springLoad("250 ±5 N")},
		valvetrain.SpringReading{Height: stemBracket("30 mm"), Load: springLoad("700 ±5 N")})
	fmt.Println(k, err)
	// Output: [44 N/mm, 46 N/mm] <nil>
}

func exampleReadings() (tall, short valvetrain.SpringReading) {
	return valvetrain.SpringReading{Height: stemBracket("40 mm"), Load: springLoad("250 N")},
		valvetrain.SpringReading{Height: stemBracket("30 mm"), Load: springLoad("700 N")}
}

func ExampleSpringLoadFrom() {
	tall, short := exampleReadings()
	l, err := valvetrain.SpringLoadFrom(tall, short, stemBracket("38 ±0.1 mm"))
	fmt.Println(l, err)
	// Output: [335.5 N, 344.5 N] <nil>
}

func ExampleSpringHeightFrom() {
	tall, short := exampleReadings()
	h, err := valvetrain.SpringHeightFrom(tall, short, springLoad("340 N"))
	fmt.Println(h, err)
	// Output: 38 mm <nil>
}

func ExampleSpringMeanDiameter() {
	fmt.Println(valvetrain.SpringMeanDiameter(units.MustParseLength("1.297 in"), 177*units.Thou).Text(units.InInches, 3))
	// Output: 1.120 in
}

func ExampleSpringIndex() {
	type f = tolerance.Float
	fmt.Printf("%.2f\n", valvetrain.SpringIndex(f(1.12), f(0.177)))
	// Output: 6.33
}

// The spring of a manual: 6 1/4 coils, of which two are dead.
func ExampleSpringRateOfCoil() {
	type f = tolerance.Float
	fmt.Printf("%.1f lbf/in\n", valvetrain.SpringRateOfCoil(f(11.5e6), f(0.177), f(1.12), f(4.25)))
	// Output: 236.3 lbf/in
}

func ExampleSpringActiveFor() {
	type f = tolerance.Float
	fmt.Printf("%.1f\n", valvetrain.SpringActiveFor(f(84000), f(4.25), f(34), f(6.25)))
	// Output: 13.9
}

func ExampleSpringWireFor() {
	type f = tolerance.Float
	fmt.Printf("%.2f mm\n", valvetrain.SpringWireFor(f(84000), f(30), f(15), f(16.2037)))
	// Output: 5.00 mm
}

func ExampleSpringShearFor() {
	type f = tolerance.Float
	fmt.Printf("%.0f N/mm²\n", valvetrain.SpringShearFor(f(5), f(30), f(15), f(16.2037)))
	// Output: 84000 N/mm²
}

func ExampleSpringShearPart() {
	type f = tolerance.Float
	fmt.Printf("%.1f %%\n", 100*valvetrain.SpringShearPart(f(7)))
	// Output: 1.0 %
}

func ExampleWahlFactor() {
	fmt.Printf("%.4f\n", valvetrain.WahlFactor(tolerance.Float(6)))
	// Output: 1.2525
}

func ExampleBergstrasserFactor() {
	fmt.Printf("%.4f\n", valvetrain.BergstrasserFactor(tolerance.Float(6)))
	// Output: 1.2381
}

func ExampleSpringStress() {
	type f = tolerance.Float
	fmt.Printf("%.1f N/mm²\n", valvetrain.SpringStress(f(300), f(30), f(5), valvetrain.WahlFactor(f(6))))
	// Output: 229.6 N/mm²
}

func ExampleSpringLoadForStress() {
	type f = tolerance.Float
	fmt.Printf("%.0f N\n", valvetrain.SpringLoadForStress(f(229.64), f(30), f(5), valvetrain.WahlFactor(f(6))))
	// Output: 300 N
}

func ExampleSpringSolidHeight() {
	total, _ := tolerance.NewRatio(25, 4)
	fmt.Println(valvetrain.SpringSolidHeight(stemMM("4"), total, 0), valvetrain.SpringSolidHeight(stemMM("4"), total, -1))
	// Output: 25 mm 23 mm
}

func exampleCoil() valvetrain.SpringCoil {
	total, _ := tolerance.NewRatio(25, 4)
	return valvetrain.SpringCoil{Form: valvetrain.Cylindrical, Ends: valvetrain.SquaredGround, Wire: stemBracket("4.20 ±0.02 mm"),
		Outside: stemBracket("31.0 ±0.1 mm"), Total: total, ShearMPa: 79300}
}

func ExampleSpringCoil_Active() {
	n, err := exampleCoil().Active()
	fmt.Println(n, err)
	// Output: 4.25 <nil>
}

func ExampleSpringCoil_Solid() {
	s, err := exampleCoil().Solid()
	fmt.Println(s, err)
	// Output: [24.035 mm, 26.375 mm] <nil>
}

// A conical spring has no one rate to work out.
func ExampleSpringCoil_Rate() {
	k, err := exampleCoil().Rate()
	fmt.Println(k.Text(units.InNewtonsPerMillimetre, 1), err)
	conical := exampleCoil()
	conical.Form = valvetrain.Conical
	_, err = conical.Rate()
	fmt.Println(err)
	// Output:
	// [36.4 N/mm, 39.0 N/mm] <nil>
	// valvetrain: form conical is not cylindrical, with all coils alike: the rate of any other comes from its loads
}

func ExampleSpringForm_String() {
	fmt.Println(valvetrain.Progressive)
	// Output: progressive
}

func ExampleSpringEnds_String() {
	fmt.Println(valvetrain.SquaredGround)
	// Output: squared and ground
}

func ExampleSpringShimFor() {
	fmt.Println(valvetrain.SpringShimFor(stemMM("38.8"), stemMM("38")))
	// Output: 0.8 mm
}

func ExampleInstalledWithShim() {
	fmt.Println(valvetrain.InstalledWithShim(stemMM("38.8"), stemMM("0.8")))
	// Output: 38 mm
}

// Shims for a seat load, from the spring's own readings.
func ExampleChooseSpringShims() {
	tall, short := exampleReadings()
	wanted, _ := tolerance.ParseBandOf[units.Force]("320–360 N")
	c, err := valvetrain.ChooseSpringShims(
		valvetrain.SpringShimNeed{Installed: stemBracket("38.8 ±0.05 mm"), Load: wanted, Readings: [2]valvetrain.SpringReading{tall, short}, Most: 2},
		[]valvetrain.SpringShim{{Name: "0.4 mm", Thickness: stemBracket("0.4 mm")}, {Name: "0.8 mm", Thickness: stemBracket("0.8 mm")}})
	fmt.Println(err)
	fmt.Println(c.Pieces, c.Height, c.Load)
	// Output:
	// <nil>
	// [1] [37.95 mm, 38.05 mm] [337.75 N, 342.25 N]
}

func exampleSpring() valvetrain.Spring {
	tall, short := exampleReadings()
	limits, _ := tolerance.ParseBandOf[units.Force]("min 300 N")
	return valvetrain.Spring{Where: "exhaust 3", Form: valvetrain.Cylindrical, Free: stemBracket("46 ±0.1 mm"), Readings: []valvetrain.SpringReading{tall, short},
		Solid: stemBracket("25.5 ±0.1 mm"), Installed: stemBracket("38 ±0.1 mm"), Lift: stemBracket("10.5 mm"),
		SeatLimits: tolerance.SpecOf[units.Force]{Wear: limits}, BindLimits: tolerance.Spec{Wear: tolerance.MustParseBand("min 1 mm")}}
}

func ExampleSpring_Inspect() {
	r, err := exampleSpring().Inspect()
	fmt.Println(err)
	fmt.Println(r.SeatLoad.Text(units.InNewtons, 0))
	fmt.Println(r.Bind.Text(units.InMillimetres, 1))
	// Output:
	// <nil>
	// exhaust 3: seat load [335 N, 345 N], wear limit min 300 N: within the wear limit; no band for new parts given
	// exhaust 3: margin to coil bind [1.8 mm, 2.2 mm], wear limit min 1.0 mm: within the wear limit; no band for new parts given
}

// Too much lift is refused, with the lift that would close the coils.
func ExampleSpring_Inspect_coilBind() {
	s := exampleSpring()
	s.Lift = stemBracket("13 mm")
	_, err := s.Inspect()
	fmt.Println(err)
	// Output: valvetrain: lift 13 mm is not below [12.3 mm, 12.7 mm], at which the spring is coil-bound
}

func ExampleSpring_LoadAt() {
	l, err := exampleSpring().LoadAt(stemBracket("35 mm"))
	fmt.Println(l, err)
	// Output: 475 N <nil>
}

func ExampleSpringNest_Inspect() {
	inner := valvetrain.Spring{Where: "exhaust 3, inner", Form: valvetrain.Cylindrical, Solid: stemBracket("22 mm"), Readings: []valvetrain.SpringReading{
		{Height: stemBracket("35 mm"), Load: springLoad("120 N")}, {Height: stemBracket("25 mm"), Load: springLoad("300 N")}}}
	outer := exampleSpring()
	outer.Installed = stemBracket("38 mm")
	r, err := valvetrain.SpringNest{Where: "exhaust 3", Outer: outer, Inner: inner, Step: stemBracket("3 mm")}.Inspect()
	fmt.Println(err)
	fmt.Println("seat load", r.SeatLoad.Least, "margin of the inner spring", r.Inner.Bind.Least)
	// Output:
	// <nil>
	// seat load 460 N margin of the inner spring 2.5 mm
}

func ExampleSpringSetSpread() {
	weak := exampleSpring()
	weak.Where, weak.Readings = "inlet 1", []valvetrain.SpringReading{{Height: stemBracket("40 mm"), Load: springLoad("230 N")}, {Height: stemBracket("30 mm"), Load: springLoad("670 N")}}
	set := []valvetrain.Spring{exampleSpring(), weak}
	s, err := valvetrain.SpringSetSpread(set, stemBracket("38 mm"))
	fmt.Println(s.Load, "weakest", set[s.Weakest].Where, err)
	// Output: 22 N weakest inlet 1 <nil>
}
