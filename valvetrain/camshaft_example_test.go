package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// Height less base circle: what a data page prints as lift and is 37 mm is a height.
func ExampleLobeLift() {
	fmt.Println(valvetrain.LobeLift(units.MustParseLength("44.60 mm"), 36*units.Millimetre))
	// Output:
	// 8.6 mm
}

func ExampleLobeHeight() {
	fmt.Println(valvetrain.LobeHeight(36*units.Millimetre, units.MustParseLength("8.6 mm")))
	// Output:
	// 44.6 mm
}

func ExampleLobeBase() {
	fmt.Println(valvetrain.LobeBase(units.MustParseLength("44.6 mm"), units.MustParseLength("8.6 mm")))
	// Output:
	// 36 mm
}

func ExampleLobeHeightWear() {
	fmt.Println(valvetrain.LobeHeightWear(units.MustParseLength("44.6 mm"), units.MustParseLength("44.3 mm")))
	// Output:
	// 0.3 mm
}

func ExampleLobeBaseWear() {
	fmt.Println(valvetrain.LobeBaseWear(36*units.Millimetre, units.MustParseLength("35.9 mm")))
	// Output:
	// 0.1 mm
}

// 0.3 mm off the height and 0.1 mm off the base circle take 0.2 mm of lift.
func ExampleLobeLiftLoss() {
	worn := valvetrain.LobeLift(units.MustParseLength("44.3 mm"), units.MustParseLength("35.9 mm"))
	fmt.Println(valvetrain.LobeLiftLoss(units.MustParseLength("8.6 mm"), worn))
	// Output:
	// 0.2 mm
}

func ExampleLobeTaper() {
	fmt.Println(valvetrain.LobeTaper(units.MustParseLength("44.6 mm"), units.MustParseLength("44.55 mm")))
	// Output:
	// 0.05 mm
}

// A lobe of 0.250 in through a rocker of 1.6, with 0.016 in of clearance at the valve.
func ExampleValveLift() {
	ratio, _ := tolerance.ParseRatio("1.6")
	fmt.Println(valvetrain.ValveLift(units.MustParseLength("0.250 in"), 16*units.Thou, ratio).Text(units.InInches, 3))
	// Output:
	// 0.384 in
}

// The same formula writes its working.
func ExampleValveLift_working() {
	ratio, _ := tolerance.ParseRatio("1.6")
	lift := valvetrain.ValveLift(working.Given("lobe lift", "s", 250*units.Thou), working.Given("valve clearance", "c", 16*units.Thou), ratio).Named("valve lift", "L")
	solution, _ := working.Solve(lift, units.Style[units.Length]{Unit: units.InInches, Places: 3})
	fmt.Print(solution.Text())
	// Output:
	// valve lift = lobe lift × 8 ÷ 5 − valve clearance
	// L = s × 8 ÷ 5 − c
	//   = 0.250 in × 8 ÷ 5 − 0.016 in
	//   = 0.384 in
}

// With a bracket for the lobe, the bracket of the lift.
func ExampleValveLiftByTravels() {
	lobe, _ := tolerance.PlusMinus(250*units.Thou, units.Thou/2)
	exactly := tolerance.Exactly[units.Length]
	lift := valvetrain.ValveLiftByTravels(lobe, exactly(16*units.Thou), exactly(400*units.Thou), exactly(250*units.Thou))
	fmt.Println(lift.Text(units.InInches, 4))
	// Output:
	// [0.3832 in, 0.3848 in]
}

// The same clearance at the valve is 0.010 in at the cam.
func ExampleValveLiftCamSide() {
	ratio, _ := tolerance.ParseRatio("1.6")
	fmt.Println(valvetrain.ValveLiftCamSide(units.MustParseLength("0.250 in"), 10*units.Thou, ratio).Text(units.InInches, 3))
	// Output:
	// 0.384 in
}

func ExampleLobeLiftFor() {
	ratio, _ := tolerance.ParseRatio("1.6")
	fmt.Println(valvetrain.LobeLiftFor(384*units.Thou, 16*units.Thou, ratio).Text(units.InInches, 3))
	// Output:
	// 0.250 in
}

func ExampleLobeLiftForCamSide() {
	ratio, _ := tolerance.ParseRatio("1.6")
	fmt.Println(valvetrain.LobeLiftForCamSide(384*units.Thou, 10*units.Thou, ratio).Text(units.InInches, 3))
	// Output:
	// 0.250 in
}

func ExampleClearanceFromLifts() {
	ratio, _ := tolerance.ParseRatio("1.6")
	fmt.Println(valvetrain.ClearanceFromLifts(250*units.Thou, 384*units.Thou, ratio).Text(units.InInches, 3))
	// Output:
	// 0.016 in
}

func ExampleCamJournalClearance() {
	fmt.Println(valvetrain.CamJournalClearance(units.MustParseLength("29.01 mm"), units.MustParseLength("28.96 mm")))
	// Output:
	// 0.05 mm
}

func ExampleCamBearingFor() {
	fmt.Println(valvetrain.CamBearingFor(units.MustParseLength("28.96 mm"), 50*units.Micrometre))
	// Output:
	// 29.01 mm
}

func ExampleCamJournalFor() {
	fmt.Println(valvetrain.CamJournalFor(units.MustParseLength("29.01 mm"), 50*units.Micrometre))
	// Output:
	// 28.96 mm
}

// The readings of a manual's example: total indicator reading.
func ExampleCamRunOut() {
	fmt.Println(valvetrain.CamRunOut(0, 3*units.Thou, -2*units.Thou, 3*units.Thou).Text(units.InInches, 3))
	// Output:
	// 0.005 in
}

func ExampleCamBend() {
	fmt.Println(valvetrain.CamBend(units.MustParseLength("0.0016 in")).Text(units.InInches, 4))
	// Output:
	// 0.0008 in
}

func ExampleCamRunOutOf() {
	fmt.Println(valvetrain.CamRunOutOf(units.MustParseLength("0.0008 in")).Text(units.InInches, 4))
	// Output:
	// 0.0016 in
}

func ExampleCamEndFloat() {
	fmt.Println(valvetrain.CamEndFloat(units.MustParseLength("5.12 mm"), 5*units.Millimetre))
	// Output:
	// 0.12 mm
}

func ExampleCamThrustPlateFor() {
	fmt.Println(valvetrain.CamThrustPlateFor(units.MustParseLength("5.12 mm"), 120*units.Micrometre))
	// Output:
	// 5 mm
}

func ExampleCamThrustSpaceFor() {
	fmt.Println(valvetrain.CamThrustSpaceFor(5*units.Millimetre, 120*units.Micrometre))
	// Output:
	// 5.12 mm
}

// 8 mm at the valve while the cam side goes 5 mm, both without clearance.
func ExampleRockerRatio() {
	type f = tolerance.Float
	fmt.Println(valvetrain.RockerRatio(f(8), f(5)))
	// Output:
	// 1.6
}

func ExampleRockerRatioThroughClearance() {
	type f = tolerance.Float
	fmt.Println(valvetrain.RockerRatioThroughClearance(f(7.75), f(0.25), f(5)))
	// Output:
	// 1.6
}

func ExampleRockerValveTravel() {
	type f = tolerance.Float
	fmt.Println(valvetrain.RockerValveTravel(f(1.6), f(5)))
	// Output:
	// 8
}

func ExampleRockerCamTravel() {
	type f = tolerance.Float
	fmt.Println(valvetrain.RockerCamTravel(f(1.6), f(8)))
	// Output:
	// 5
}

func ExampleRockerRatioOf() {
	ratio, _ := valvetrain.RockerRatioOf(8*units.Millimetre, 6*units.Millimetre)
	fmt.Println(ratio)
	// Output:
	// 4/3
}

func ExampleRockerRatioBetween() {
	valve, _ := tolerance.PlusMinus(8*units.Millimetre, 10*units.Micrometre)
	cam, _ := tolerance.PlusMinus(5*units.Millimetre, 10*units.Micrometre)
	ratio, _ := valvetrain.RockerRatioBetween(valve, cam)
	fmt.Printf("%.4f to %.4f\n", ratio.Least.Float(), ratio.Greatest.Float())
	// Output:
	// 1.5948 to 1.6052
}

func ExampleRockerClearance() {
	fmt.Println(valvetrain.RockerClearance(units.MustParseLength("16.02 mm"), units.MustParseLength("15.98 mm")))
	// Output:
	// 0.04 mm
}

func ExampleRockerBushFor() {
	fmt.Println(valvetrain.RockerBushFor(units.MustParseLength("15.98 mm"), 40*units.Micrometre))
	// Output:
	// 16.02 mm
}

func ExampleRockerShaftFor() {
	fmt.Println(valvetrain.RockerShaftFor(units.MustParseLength("16.02 mm"), 40*units.Micrometre))
	// Output:
	// 15.98 mm
}

func ExampleRockerShaftWear() {
	fmt.Println(valvetrain.RockerShaftWear(units.MustParseLength("15.985 mm"), units.MustParseLength("15.97 mm")))
	// Output:
	// 0.015 mm
}

func ExampleFollowerClearance() {
	fmt.Println(valvetrain.FollowerClearance(units.MustParseLength("26.01 mm"), units.MustParseLength("25.97 mm")))
	// Output:
	// 0.04 mm
}

func ExampleFollowerBoreFor() {
	fmt.Println(valvetrain.FollowerBoreFor(units.MustParseLength("25.97 mm"), 40*units.Micrometre))
	// Output:
	// 26.01 mm
}

func ExampleFollowerFor() {
	fmt.Println(valvetrain.FollowerFor(units.MustParseLength("26.01 mm"), 40*units.Micrometre))
	// Output:
	// 25.97 mm
}

// A lobe that has lost more lift than allowed at its low edge.
func ExampleCamSurvey_Inspect() {
	size := func(s string) tolerance.Bracket {
		b, err := tolerance.ParseBracket(s)
		if err != nil {
			panic(err)
		}
		return b
	}
	survey := valvetrain.CamSurvey{Where: "inlet camshaft", EndFloat: size("0.12 ±0.01 mm"), Lobes: []valvetrain.CamLobe{{
		Where: "inlet 2", Heights: []tolerance.Bracket{size("44.50 ±0.005 mm"), size("44.54 ±0.005 mm")}, Bases: []tolerance.Bracket{size("36.00 ±0.005 mm")},
		NewHeight: size("44.60 mm"), NewBase: size("36.00 mm"), LossLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.08 mm")},
	}}}
	report, _ := survey.Inspect()
	fmt.Println(report.Lobes[0].Loss)
	fmt.Println(report.Next)
	// Output:
	// inlet 2: lift lost by wear least [0.05 mm, 0.07 mm], greatest [0.09 mm, 0.11 mm], wear limit max 0.08 mm: too large: past the wear limit
	// renew or regrind the camshaft, for inlet 2, and renew the followers with it: a worn follower ruins a new lobe
}

func ExampleRockerPivot_Inspect() {
	size := func(s string) tolerance.Bracket {
		b, err := tolerance.ParseBracket(s)
		if err != nil {
			panic(err)
		}
		return b
	}
	pivot := valvetrain.RockerPivot{Where: "rocker 3", Shafts: []tolerance.Bracket{size("15.97 ±0.002 mm")}, Bushes: []tolerance.Bracket{size("16.02 ±0.003 mm")},
		ClearanceLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.08 mm")}}
	report, _ := pivot.Inspect()
	fmt.Println(report.Clearance)
	// Output:
	// rocker 3: rocker-to-shaft clearance [0.045 mm, 0.055 mm], wear limit max 0.08 mm: within the wear limit; no band for new parts given
}

func ExampleFollowerFit_Inspect() {
	size := func(s string) tolerance.Bracket {
		b, err := tolerance.ParseBracket(s)
		if err != nil {
			panic(err)
		}
		return b
	}
	fit := valvetrain.FollowerFit{Where: "exhaust 2", Followers: []tolerance.Bracket{size("25.97 ±0.002 mm")}, Bores: []tolerance.Bracket{size("26.01 ±0.002 mm")},
		ClearanceLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.07 mm")}}
	report, _ := fit.Inspect()
	fmt.Println(report.Clearance)
	// Output:
	// exhaust 2: follower-to-bore clearance [0.036 mm, 0.044 mm], wear limit max 0.07 mm: within the wear limit; no band for new parts given
}
