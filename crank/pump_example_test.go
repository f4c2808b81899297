package crank_test

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func ExamplePumpRadial() {
	fmt.Println(crank.PumpRadial(41*units.Millimetre, 40_900*units.Micrometre))
	// Output: 0.05 mm
}

func ExamplePumpPocket() {
	fmt.Println(crank.PumpPocket(50*units.Micrometre, 40_900*units.Micrometre))
	// Output: 41 mm
}

func ExamplePumpGear() {
	fmt.Println(crank.PumpGear(41*units.Millimetre, 50*units.Micrometre))
	// Output: 40.9 mm
}

// A gear that leans reads .003 in on one side and .002 in on the other.
func ExamplePumpRadialBySides() {
	fmt.Println(crank.PumpRadialBySides(3*units.Thou, 2*units.Thou).Text(units.InInches, 4))
	// Output: 0.0025 in
}

func ExamplePumpRecess() {
	fmt.Println(crank.PumpRecess(25_040*units.Micrometre, 25_000*units.Micrometre))
	// Output: 0.04 mm
}

func ExamplePumpDepth() {
	fmt.Println(crank.PumpDepth(40*units.Micrometre, 25_000*units.Micrometre))
	// Output: 25.04 mm
}

func ExamplePumpWidth() {
	fmt.Println(crank.PumpWidth(25_040*units.Micrometre, 40*units.Micrometre))
	// Output: 25 mm
}

// Gears that stand proud by 0.02 mm, under a gasket of 0.08 mm and a cover that
// is worn 0.03 mm deep.
func ExamplePumpEnd() {
	c := crank.PumpEnd(
		working.Given("recess", "r", -20*units.Micrometre),
		working.Given("gasket", "g", 80*units.Micrometre),
		working.Given("cover wear", "w", 30*units.Micrometre)).Named("end clearance", "c")
	s, _ := working.Solve(c, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	fmt.Print(s.Text())
	// Output:
	// end clearance = recess + gasket + cover wear
	// c = r + g + w
	//   = −0.020 mm + 0.080 mm + 0.030 mm
	//   = 0.090 mm
}

func ExamplePumpGasket() {
	fmt.Println(crank.PumpGasket(60*units.Micrometre, -20*units.Micrometre, 30*units.Micrometre))
	// Output: 0.05 mm
}

func ExamplePumpFaceCut() {
	fmt.Println(crank.PumpFaceCut(150*units.Micrometre, 60*units.Micrometre))
	// Output: 0.09 mm
}

func ExamplePumpEndWithGears() {
	fmt.Println(crank.PumpEndWithGears(150*units.Micrometre, 24_900*units.Micrometre, 25_000*units.Micrometre))
	// Output: 0.05 mm
}

func ExamplePumpFit() {
	bore, _ := tolerance.ParseBracket("[18.24 mm, 18.27 mm]")
	plunger, _ := tolerance.ParseBracket("[18.16 mm, 18.18 mm]")
	fmt.Println(crank.PumpFit(bore, plunger))
	// Output: [0.06 mm, 0.11 mm]
}

// A government manual allows .008 in between gears and body: .008 in went in
// and .009 in didn't, which doesn't tell.
func ExamplePump_Assess() {
	blades := feeler.Imperial26()
	trials, _ := blades.ParseTrials(".008 in drag, .009 in refused")
	gap, _ := feeler.Bracket(trials...)
	r, _ := crank.Pump{Checks: []crank.PumpCheck{{
		Measure: crank.PumpTip, Where: "driven gear", Stations: []tolerance.Bracket{gap},
		Limits: tolerance.Spec{Wear: tolerance.MustParseBand("max .008 in")},
	}}}.Assess()
	fmt.Println(r.Standing)
	fmt.Println(r.Judgements[0].Remedy)
	// Output:
	// can't tell
	// measure again
}

func ExamplePumpKind_String() {
	fmt.Println(crank.RotorPump)
	// Output: rotor
}

func ExamplePumpKind_MarshalText() {
	text, _ := crank.CrescentPump.MarshalText()
	fmt.Println(string(text))
	// Output: crescent
}

func ExamplePumpKind_UnmarshalText() {
	var k crank.PumpKind
	fmt.Println(k.UnmarshalText([]byte("rotor")), k)
	// Output: <nil> rotor
}

func ExamplePumpMeasure_String() {
	fmt.Println(crank.PumpSide)
	// Output: end clearance
}

func ExamplePumpMeasure_MarshalText() {
	text, _ := crank.PumpBacklash.MarshalText()
	fmt.Println(string(text))
	// Output: backlash
}

func ExamplePumpMeasure_UnmarshalText() {
	var m crank.PumpMeasure
	fmt.Println(m.UnmarshalText([]byte("cover wear")), m)
	// Output: <nil> cover wear
}

func ExamplePumpRemedy_String() {
	fmt.Println(crank.PumpRebush)
	// Output: renew the bush or the shaft
}

func ExamplePumpRemedy_MarshalText() {
	text, _ := crank.PumpReUse.MarshalText()
	fmt.Println(string(text))
	// Output: re-use
}

func ExamplePumpRemedy_UnmarshalText() {
	var r crank.PumpRemedy
	fmt.Println(r.UnmarshalText([]byte("ask the manual")), r)
	// Output: <nil> ask the manual
}

// TM 10-3930-638-24&P: 2.125 in free, 18 to 19 lbf at 1.44 in.
func ExampleReliefSpring_Assess() {
	free, _ := tolerance.ParseBracket("2.125 in")
	load, _ := tolerance.ParseInterval[units.Force]("17.5 ±0.25 lbf")
	limit, _ := tolerance.ParsePrintedOf[units.Force]("18–19 lbf")
	r, _ := crank.ReliefSpring{
		Free: free, Height: units.MustParseLength("1.44 in"), Load: load,
		LoadLimits: tolerance.SpecOf[units.Force]{New: limit.BandOf},
	}.Assess()
	fmt.Println(r.Standing)
	fmt.Println(r.Next)
	// Output:
	// outside the new-part band
	// renew the spring; never stretch it, and shim it only where the manual allows
}

func ExampleReliefOpens() {
	load, _ := tolerance.ParseInterval[units.Force]("100 ±1 N")
	seat, _ := tolerance.ParseBracket("16 ±0.02 mm")
	p, _ := crank.ReliefOpens(load, seat)
	fmt.Println(p.Text(units.InBar, 2))
	// Output: [4.91 bar, 5.04 bar]
}

func ExampleReliefRate() {
	fmt.Printf("%.2f lbf/in\n", crank.ReliefRate[tolerance.Float](18.5, 2.125, 1.44))
	// Output: 27.01 lbf/in
}

func ExampleReliefRateByTwo() {
	fmt.Printf("%.1f N/mm\n", crank.ReliefRateByTwo[tolerance.Float](40, 40, 60, 35))
	// Output: 4.0 N/mm
}

func ExampleReliefLoad() {
	fmt.Printf("%.1f N\n", crank.ReliefLoad[tolerance.Float](4, 50, 35))
	// Output: 60.0 N
}

func ExampleReliefHeight() {
	fmt.Printf("%.1f mm\n", crank.ReliefHeight[tolerance.Float](60, 4, 50))
	// Output: 35.0 mm
}

func ExampleReliefPressureMPa() {
	p := crank.ReliefPressureMPa(working.GivenReal("spring's load", "F", 100, "N"), working.GivenReal("seat", "d", 16, "mm"))
	s, _ := working.SolveReal(p.Named("opening pressure", "p", "MPa"), working.RealStyle{Places: 3, Bare: true})
	fmt.Print(s.Text())
	// Output:
	// opening pressure = spring's load ÷ ((π ÷ 4) × seat²)
	// p = F ÷ ((π ÷ 4) × d²)
	//   = 100 ÷ ((π ÷ 4) × (16)²)
	//   ≈ 0.497 MPa
}

func ExampleReliefLoadN() {
	fmt.Printf("%.1f N\n", crank.ReliefLoadN[tolerance.Float](0.5, 16))
	// Output: 100.5 N
}

func ExampleReliefShim() {
	fmt.Printf("%.2f mm\n", crank.ReliefShim[tolerance.Float](0.05, 16, 4))
	// Output: 2.51 mm
}
