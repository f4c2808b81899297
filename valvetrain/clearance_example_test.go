package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// The shim that came out is 2.55 mm, the clearance was 0.32 and 0.25 is wanted.
func ExampleShimForClearance() {
	fmt.Println(valvetrain.ShimForClearance(2550*units.Micrometre, 320*units.Micrometre, 250*units.Micrometre))
	// Output: 2.62 mm
}

// Blades give a bracket, and so does the rule.
func ExampleShimForClearance_bracket() {
	measured, _ := tolerance.HalfOpen(300*units.Micrometre, 350*units.Micrometre)
	old, _ := tolerance.PlusMinus(2550*units.Micrometre, 2*units.Micrometre)
	fmt.Println(valvetrain.ShimForClearance(old, measured, tolerance.Exactly(250*units.Micrometre)))
	// Output: [2.598 mm, 2.652 mm)
}

// The same formula writes its working.
func ExampleShimForClearance_working() {
	n := valvetrain.ShimForClearance(working.Given("old shim", "s", 2550*units.Micrometre), working.Given("measured clearance", "c", 320*units.Micrometre),
		working.Given("wanted clearance", "w", 250*units.Micrometre)).Named("new shim", "n")
	s, _ := working.Solve(n, units.Style[units.Length]{Places: 2})
	fmt.Print(s.Text())
	// Output:
	// new shim = old shim + measured clearance − wanted clearance
	// n = s + c − w
	//   = 2.55 mm + 0.32 mm − 0.25 mm
	//   = 2.62 mm
}

// Of 2.62 mm the shop has only 2.60: the clearance will be 0.27.
func ExampleClearanceWithShim() {
	fmt.Println(valvetrain.ClearanceWithShim(320*units.Micrometre, 2550*units.Micrometre, 2600*units.Micrometre))
	// Output: 0.27 mm
}

// A 2.60 mm shim gave 0.27 where there had been 0.32: the old one was 2.55.
func ExampleShimThatWas() {
	fmt.Println(valvetrain.ShimThatWas(2600*units.Micrometre, 270*units.Micrometre, 320*units.Micrometre))
	// Output: 2.55 mm
}

// A cap under a finger, the blade at the cam, where it moves two thirds as far.
func ExampleShimThroughRocker() {
	r, _ := tolerance.NewRatio(2, 3)
	fmt.Println(valvetrain.ShimThroughRocker(3*units.Millimetre, 300*units.Micrometre, 200*units.Micrometre, r))
	// Output: 3.15 mm
}

func ExampleClearanceThroughRocker() {
	r, _ := tolerance.NewRatio(2, 3)
	fmt.Println(valvetrain.ClearanceThroughRocker(300*units.Micrometre, 3*units.Millimetre, 3150*units.Micrometre, r))
	// Output: 0.2 mm
}

// Arms of 30 mm and 45 mm from the pivot.
func ExampleRockerMove() {
	fmt.Println(valvetrain.RockerMove(200*units.Micrometre, 30*units.Millimetre, 45*units.Millimetre))
	// Output: 0.3 mm
}

// One turn of the nut on a stud, a thread of 1 mm, a rocker of 1.5 to 1.
func ExamplePivotRatio() {
	rocker, _ := tolerance.NewRatio(3, 2)
	stud, _ := valvetrain.PivotRatio(rocker)
	fmt.Println(stud, valvetrain.ScrewChange(units.Millimetre, tolerance.Whole(1), stud))
	// Output: 2.5 2.5 mm
}

// A quarter turn of a 1 mm thread over the pushrod.
func ExampleScrewChange() {
	quarter, _ := tolerance.NewRatio(1, 4)
	rocker, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.ScrewChange(units.Millimetre, quarter, rocker))
	// Output: 0.375 mm
}

func ExampleClearanceAfterScrew() {
	quarter, _ := tolerance.NewRatio(1, 4)
	fmt.Println(valvetrain.ClearanceAfterScrew(450*units.Micrometre, units.Millimetre, quarter, tolerance.Whole(1)))
	// Output: 0.2 mm
}

func ExampleScrewTurns() {
	type f = tolerance.Float
	fmt.Printf("%.2f turn\n", float64(valvetrain.ScrewTurns(f(0.375), f(1), f(1.5))))
	// Output: 0.25 turn
}

func ExampleScrewPitch() {
	fmt.Println(valvetrain.ScrewPitch(20).Text(units.InInches, 3))
	// Output: 0.050 in
}

func ExampleScrewAngle() {
	a, _ := valvetrain.ScrewAngle(tolerance.Exactly(300*units.Micrometre), 750*units.Micrometre, tolerance.Whole(1))
	fmt.Println(a)
	// Output: 144°
}

func ExampleScrewSetting_Plan() {
	measured, _ := tolerance.HalfOpen(350*units.Micrometre, 400*units.Micrometre)
	rocker, _ := tolerance.NewRatio(3, 2)
	p, _ := valvetrain.ScrewSetting{Where: "exhaust 3", Measured: measured, Wanted: tolerance.MustParseBand("0.20–0.30 mm"),
		Pitch: units.Millimetre, Ratio: rocker, Set: feeler.Metric20()}.Plan()
	fmt.Println(p.Turn, "aim", p.Aim)
	fmt.Println(p.Next)
	// Output:
	// [24°, 36°] aim 30°
	// turn, hold the screw while the lock nut is tightened, then prove the clearance with blades: 0.20 mm must go in, 0.30 mm must not
}

// The US Army's own pair for a clearance set with the .013 in blade.
func ExampleProveClearance() {
	band := tolerance.MustBetween(11*units.Thou, 13*units.Thou)
	fmt.Println(valvetrain.ProveClearance(band, feeler.Imperial26()).Next)
	// Output: .011 in / 0.279 mm must go in, .013 in / 0.330 mm must not
}

// 4 mm of travel; bottomed, the plunger leaves 3 mm at the valve, at 1.5 to 1.
func ExampleHydraulicPreload() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.HydraulicPreload(4*units.Millimetre, 3*units.Millimetre, r))
	// Output: 2 mm
}

func ExampleHydraulicClearance() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.HydraulicClearance(4*units.Millimetre, 2*units.Millimetre, r))
	// Output: 3 mm
}

func ExampleHydraulicTravel() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.HydraulicTravel(2*units.Millimetre, 3*units.Millimetre, r))
	// Output: 4 mm
}

func ExamplePushrodForPreload() {
	fmt.Println(valvetrain.PushrodForPreload(190*units.Millimetre, 2*units.Millimetre, 1500*units.Micrometre))
	// Output: 189.5 mm
}

func ExampleHydraulic_Inspect() {
	clearance, _ := tolerance.HalfOpen(3000*units.Micrometre, 3100*units.Micrometre)
	ratio, _ := tolerance.NewRatio(3, 2)
	r, _ := valvetrain.Hydraulic{Where: "inlet 2", Travel: tolerance.Exactly(4 * units.Millimetre), Clearance: clearance, Ratio: ratio,
		ClearanceLimits: tolerance.Spec{New: tolerance.MustParseBand("2.0–4.0 mm")}}.Inspect()
	fmt.Println(r.Clearance.Standing)
	fmt.Println(r.Preload.Least.Text(units.InMillimetres, 3))
	// Output:
	// as new
	// (1.933 mm, 2.000 mm]
}
