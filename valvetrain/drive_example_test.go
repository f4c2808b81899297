package valvetrain_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// A checking rod of 190 mm, screwed out by two and a half turns of 1 mm.
func ExampleCheckingRodLength() {
	turns, _ := tolerance.NewRatio(5, 2)
	fmt.Println(valvetrain.CheckingRodLength(190*units.Millimetre, units.Millimetre, turns))
	// Output: 192.5 mm
}

// With it 0.60 mm is left at the valve, 0.15 is wanted, at 1.5 to 1.
func ExamplePushrodForClearance() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.PushrodForClearance(192500*units.Micrometre, 600*units.Micrometre, 150*units.Micrometre, r))
	// Output: 192.8 mm
}

func ExampleClearanceWithPushrod() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.ClearanceWithPushrod(600*units.Micrometre, 192500*units.Micrometre, 192800*units.Micrometre, r))
	// Output: 0.15 mm
}

// A pivot raised by 3 mm, for the rocker to stand square at mid-lift.
func ExamplePushrodForPivot() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.PushrodForPivot(190*units.Millimetre, 3*units.Millimetre, r))
	// Output: 195 mm
}

func ExamplePushrodPivotRise() {
	r, _ := tolerance.NewRatio(3, 2)
	fmt.Println(valvetrain.PushrodPivotRise(190*units.Millimetre, 195*units.Millimetre, r))
	// Output: 3 mm
}

// An 8 mm ball in a hole of 4.8 mm: 4 − √(4² − 2.4²) = 0.8.
func ExamplePushrodBallCap() {
	fmt.Printf("%.3f mm\n", float64(valvetrain.PushrodBallCap(tolerance.Float(8), tolerance.Float(4.8))))
	// Output: 0.800 mm
}

func ExamplePushrod_Choose() {
	r, _ := tolerance.NewRatio(3, 2)
	p := valvetrain.Pushrod{Where: "exhaust 3", Checking: shimBracket("192.5 ±0.01 mm"), Measured: shimBracket("[0.60 mm, 0.65 mm)"), Wanted: tolerance.MustParseBand("0.10–0.30 mm"), Ratio: r}
	c, _ := p.Choose([]valvetrain.ShimPiece{{Name: "192.4", Thickness: shimBracket("192.4 ±0.01 mm")}, {Name: "192.8", Thickness: shimBracket("192.8 ±0.01 mm")}})
	fmt.Println(c.Size, c.After)
	fmt.Println(c.Needed.Text(units.InMillimetres, 3))
	// Output:
	// 1 [0.12 mm, 0.23 mm)
	// [192.743 mm, 192.824 mm]
}

func ExamplePushrod_With() {
	p := valvetrain.Pushrod{Checking: shimBracket("190 mm"), Measured: shimBracket("1.0 mm"), Preload: true}
	fmt.Println(p.With(shimBracket("190.5 mm")))
	// Output: 1.5 mm
}

// The contact stands nearest the pivot at the ends of the lift.
func ExampleSweepReach() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.SweepReach(tolerance.Float(36), tolerance.Float(6))))
	// Output: 35.4965 mm
}

// 36 − √(36² − 6²) mm.
func ExampleSweep() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.Sweep(tolerance.Float(36), tolerance.Float(12))))
	// Output: 0.5035 mm
}

func ExampleSweepLift() {
	s := valvetrain.Sweep(tolerance.Float(36), tolerance.Float(12))
	fmt.Printf("%.3f mm\n", float64(valvetrain.SweepLift(tolerance.Float(36), s)))
	// Output: 12.000 mm
}

func ExampleSweepArm() {
	s := valvetrain.Sweep(tolerance.Float(36), tolerance.Float(12))
	fmt.Printf("%.3f mm\n", float64(valvetrain.SweepArm(tolerance.Float(12), s)))
	// Output: 36.000 mm
}

// The roller stands 7.5 mm over the pivot with the valve shut; the lift is 12.
func ExampleSweepMidHeight() {
	fmt.Println(valvetrain.SweepMidHeight(7500*units.Micrometre, 12*units.Millimetre))
	// Output: 1.5 mm
}

func ExampleSweepShutHeight() {
	fmt.Println(valvetrain.SweepShutHeight(0, 12*units.Millimetre))
	// Output: 6 mm
}

func ExampleSweepFrom() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.SweepFrom(tolerance.Float(36), tolerance.Float(0), tolerance.Float(6))))
	// Output: 0.5035 mm
}

// Square at mid-lift, and 3 mm off.
func ExampleSweepWidth() {
	for _, mid := range []units.Length{0, 3 * units.Millimetre} {
		w, _ := valvetrain.SweepWidth(36*units.Millimetre, 12*units.Millimetre, mid)
		fmt.Println(w.Text(units.InMillimetres, 3))
	}
	// Output:
	// 0.504 mm
	// 1.143 mm
}

func ExampleTipContact_Inspect() {
	r, _ := valvetrain.TipContact{Where: "inlet 2", Arm: shimBracket("36 ±0.2 mm"), Lift: shimBracket("12 ±0.1 mm"), Shut: shimBracket("9 ±0.1 mm"),
		Tip: shimBracket("7 mm"), Off: shimBracket("-0.3 ±0.1 mm")}.Inspect()
	fmt.Println("wiped", r.Width.Least.Text(units.InMillimetres, 2))
	fmt.Println("at best", r.Best.Text(units.InMillimetres, 2))
	fmt.Println("raise the pivot by", r.Mid)
	// Output:
	// wiped [1.11 mm, 1.18 mm]
	// at best [0.49 mm, 0.52 mm]
	// raise the pivot by [2.85 mm, 3.15 mm]
}

// 20 links of 9.525 mm are 190.5 mm long when new.
func ExampleChainStretch() {
	fmt.Println(valvetrain.ChainStretch(192405*units.Micrometre, 9525*units.Micrometre, 20))
	// Output: 1.905 mm
}

func ExampleChainLength() {
	fmt.Println(valvetrain.ChainLength(9525*units.Micrometre, 20, tolerance.Ratio{Num: 1, Den: 100}))
	// Output: 192.405 mm
}

func ExampleChainElongation() {
	type f = tolerance.Float
	fmt.Printf("%.2f %%\n", float64(valvetrain.ChainElongation(f(192.405), f(9.525), f(20))))
	// Output: 1.00 %
}

func ExampleChainOverRollers() {
	fmt.Println(valvetrain.ChainOverRollers(196850*units.Micrometre, 6350*units.Micrometre))
	// Output: 190.5 mm
}

func ExampleChainBetweenJaws() {
	fmt.Println(valvetrain.ChainBetweenJaws(196850*units.Micrometre, 184150*units.Micrometre))
	// Output: 190.5 mm
}

func ExampleChainLinks() {
	n, _ := valvetrain.ChainLinks(shimBracket("192.4 ±0.1 mm"), 9525*units.Micrometre, tolerance.Ratio{Num: 2, Den: 100})
	fmt.Println(n)
	_, err := valvetrain.ChainLinks(shimBracket("960 mm"), 9525*units.Micrometre, tolerance.Ratio{Num: 2, Den: 100})
	fmt.Println(err)
	// Output:
	// 20
	// valvetrain: length of the run 960 mm is not that of one number of links: worn by up to 0.02 of it, 99 to 100 links are as long; count them
}

// 1 mm of slack over 200 mm lets the middle go aside by ten.
func ExampleChainDeflection() {
	fmt.Printf("%.2f mm\n", float64(valvetrain.ChainDeflection(tolerance.Float(200), tolerance.Float(1))))
	// Output: 10.01 mm
}

func ExampleChainSlack() {
	fmt.Printf("%.3f mm\n", float64(valvetrain.ChainSlack(tolerance.Float(200), tolerance.Float(10))))
	// Output: 0.998 mm
}

// A millimetre of growth, over a sprocket of 36 teeth.
func ExampleChainRetard() {
	type f = tolerance.Float
	fmt.Printf("%.2f°\n", float64(valvetrain.ChainRetard(f(1), f(36), f(9.525))))
	// Output: 1.05°
}

func ExampleChainGrowth() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", float64(valvetrain.ChainGrowth(f(1), f(36), f(9.525))))
	// Output: 0.9525 mm
}

func ExampleDriveChain_Inspect() {
	r, _ := valvetrain.DriveChain{Where: "camshaft chain", Pitch: 9525 * units.Micrometre, Links: 20, Length: shimBracket("191.4 ±0.1 mm"), Limit: tolerance.Ratio{Num: 1, Den: 100}}.Inspect()
	fmt.Println(r.Length.Standing)
	fmt.Printf("%.2f to %.2f %%\n", r.Least, r.Greatest)
	// Output:
	// usable
	// 0.42 to 0.52 %
}

// The dial stands on an arm twice as long as the pitch radius.
func ExampleGearBacklash() {
	fmt.Println(valvetrain.GearBacklash(200*units.Micrometre, 40*units.Millimetre, 80*units.Millimetre))
	// Output: 0.1 mm
}

func ExampleGearReading() {
	fmt.Println(valvetrain.GearReading(100*units.Micrometre, 40*units.Millimetre, 80*units.Millimetre))
	// Output: 0.2 mm
}

func ExampleGearSquare() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.GearSquare(tolerance.Float(0.2), tolerance.Float(math.Pi/6))))
	// Output: 0.2309 mm
}

func ExampleGearAngle() {
	fmt.Printf("%.3f°\n", float64(valvetrain.GearAngle(tolerance.Float(0.1), tolerance.Float(40))))
	// Output: 0.143°
}

func ExampleGearBacklashForAngle() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.GearBacklashForAngle(tolerance.Float(0.2), tolerance.Float(40))))
	// Output: 0.1396 mm
}

// A blade between straight teeth of 20°.
func ExampleGearGap() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.GearGap(tolerance.Float(0.1), tolerance.Float(math.Pi/9), tolerance.Float(0))))
	// Output: 0.0940 mm
}

func ExampleGearBacklashForGap() {
	fmt.Printf("%.4f mm\n", float64(valvetrain.GearBacklashForGap(tolerance.Float(0.094), tolerance.Float(math.Pi/9), tolerance.Float(0))))
	// Output: 0.1000 mm
}

func ExampleGearPitchRadius() {
	fmt.Println(valvetrain.GearPitchRadius(120*units.Millimetre, 20, 40))
	// Output: 40 mm
}

func ExampleGearPair_Inspect() {
	r, _ := valvetrain.GearPair{Where: "crankshaft gear to idler", Readings: []tolerance.Bracket{shimBracket("0.20 ±0.01 mm"), shimBracket("0.26 ±0.01 mm")},
		PitchRadius: shimBracket("40 mm"), DialRadius: shimBracket("80 mm"), Limits: tolerance.Spec{New: tolerance.MustParseBand("0.05–0.20 mm")}}.Inspect()
	fmt.Println(r.Backlash.Standing)
	fmt.Println(r.Backlash.Least, r.Backlash.Greatest)
	// Output:
	// as new
	// [0.095 mm, 0.105 mm] [0.125 mm, 0.135 mm]
}
