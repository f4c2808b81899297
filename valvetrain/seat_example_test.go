package valvetrain_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func seatSquare(degrees units.Angle) valvetrain.SeatAngle {
	return valvetrain.SeatAngleFromSquare(degrees * units.Degree)
}

// The angle that one text calls 30° is another's 60°, and a third's 120°.
func ExampleSeatAngleFromSquare() {
	fmt.Println(valvetrain.SeatAngleFromSquare(30 * units.Degree))
	// Output: 30° (60° from the stem)
}

func ExampleSeatAngleFromStem() {
	fmt.Println(valvetrain.SeatAngleFromStem(60 * units.Degree))
	// Output: 30° (60° from the stem)
}

func ExampleSeatAngleIncluded() {
	fmt.Println(valvetrain.SeatAngleIncluded(120 * units.Degree))
	// Output: 30° (60° from the stem)
}

func ExampleSeatAngle_Included() {
	fmt.Println(seatSquare(45).Included())
	// Output: 90°
}

func ExampleSeatAngle_FromSquare() {
	fmt.Println(seatSquare(30).FromSquare())
	// Output: 30°
}

func ExampleSeatAngle_FromStem() {
	fmt.Println(seatSquare(30).FromStem())
	// Output: 60°
}

func ExampleSeatAngle_Radians() {
	fmt.Printf("%.4f\n", seatSquare(45).Radians())
	// Output: 0.7854
}

func ExampleInterferenceAngle() {
	fmt.Println(valvetrain.InterferenceAngle(45*units.Degree, units.Angle(44.5*units.DEG)))
	// Output: 0.5°
}

func ExampleSeatWidth() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.SeatWidth(f(30), f(27), f(math.Pi/4)))
	// Output: 2.121 mm
}

func ExampleSeatOuter() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.SeatOuter(f(27), f(1.5), f(math.Pi/6)))
	// Output: 29.598 mm
}

func ExampleSeatInner() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.SeatInner(f(29.598), f(1.5), f(math.Pi/6)))
	// Output: 27.000 mm
}

func ExampleSeatMiddle() {
	fmt.Println(valvetrain.SeatMiddle(stemMM("30"), stemMM("27")))
	// Output: 28.5 mm
}

func ExampleSeatWidthLimit() {
	fmt.Println(valvetrain.SeatWidthLimit(60*units.Thou).Text(units.InInches, 3))
	// Output: 0.069 in
}

func ExampleSeatRunOut() {
	fmt.Println(valvetrain.SeatRunOut(stemMM("0"), stemMM("0.03"), stemMM("0.01"), stemMM("-0.01")))
	// Output: 0.04 mm
}

func ExampleSeatInterference() {
	fmt.Println(valvetrain.SeatInterference(units.MustParseLength("1.6445 in"), units.MustParseLength("1.6425 in")).Text(units.InInches, 4))
	// Output: 0.0020 in
}

func ExampleCounterboreFor() {
	fmt.Println(valvetrain.CounterboreFor(stemMM("41.77"), stemMM("0.07")))
	// Output: 41.7 mm
}

func ExampleInsertFor() {
	fmt.Println(valvetrain.InsertFor(stemMM("41.7"), stemMM("0.07")))
	// Output: 41.77 mm
}

// A run-out of 0.05 on a 30° seat, with the stylus square to it: sin 30° is ½.
func ExampleSeatEccentricity() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.SeatEccentricity(f(0.05), f(math.Pi/6), valvetrain.DialSquareToSeat))
	// Output: 0.050 mm
}

func ExampleSeatRunOutFor() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.SeatRunOutFor(f(0.05), f(math.Pi/6), valvetrain.DialSquareToStem))
	// Output: 0.100 mm
}

func ExampleSeatOfWidth() {
	s, err := valvetrain.SeatOfWidth(seatSquare(45), stemBracket("30 mm"), stemBracket("1.5 mm"))
	fmt.Println(s.Inner.Text(units.InMillimetres, 3), err)
	// Output: [27.878 mm, 27.879 mm] <nil>
}

func exampleSeat() valvetrain.Seat {
	return valvetrain.Seat{Angle: seatSquare(45), Outer: stemBracket("30 ±0.05 mm"), Inner: stemBracket("27 ±0.05 mm")}
}

func ExampleSeat_Width() {
	w, err := exampleSeat().Width()
	fmt.Println(w.Text(units.InMillimetres, 2), err)
	// Output: [2.05 mm, 2.20 mm] <nil>
}

func ExampleSeat_Middle() {
	fmt.Println(exampleSeat().Middle())
	// Output: [28.45 mm, 28.55 mm]
}

// Narrowed by half a millimetre from above with 15°.
func ExampleFeedFromAbove() {
	feed := valvetrain.FeedFromAbove(working.GivenReal("narrower by", "Δw", 0.5, "mm"), working.GivenReal("seat", "α", seatSquare(45).Radians(), "rad"),
		working.GivenReal("cutter", "β", seatSquare(15).Radians(), "rad")).Named("feed", "a", "mm")
	s, _ := working.SolveReal(feed, working.RealStyle{Places: 3, Bare: true})
	fmt.Print(s.Text())
	// Output:
	// seat α ≈ 0.7854 (exactly 0.7853981633974483 rad)
	// cutter β ≈ 0.2618 (exactly 0.2617993877991494 rad)
	//
	// feed = narrower by × sine of (seat − cutter) ÷ cosine of (cutter)
	// a = Δw × sin(α − β) ÷ cos(β)
	//   ≈ 0.5 × sin(0.7854 − 0.2618) ÷ cos(0.2618)
	//   ≈ 0.259 mm
}

func ExampleNarrowedFromAbove() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.NarrowedFromAbove(f(0.2588), f(seatSquare(45).Radians()), f(seatSquare(15).Radians())))
	// Output: 0.500 mm
}

// From below, 75° asks for nearly four times the feed of 60°.
func ExampleFeedFromBelow() {
	type f = tolerance.Float
	for _, cutter := range []units.Angle{60, 75} {
		fmt.Printf("%.3f mm\n", valvetrain.FeedFromBelow(f(0.5), f(seatSquare(45).Radians()), f(seatSquare(cutter).Radians())))
	}
	// Output:
	// 0.259 mm
	// 0.966 mm
}

func ExampleNarrowedFromBelow() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.NarrowedFromBelow(f(0.966), f(seatSquare(45).Radians()), f(seatSquare(75).Radians())))
	// Output: 0.500 mm
}

func ExampleFeedToOuter() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.FeedToOuter(f(30), f(29), f(seatSquare(45).Radians()), f(seatSquare(15).Radians())))
	// Output: 0.366 mm
}

func ExampleOuterAfterFeed() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.OuterAfterFeed(f(30), f(0.366), f(seatSquare(45).Radians()), f(seatSquare(15).Radians())))
	// Output: 29.000 mm
}

func ExampleFeedToInner() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.FeedToInner(f(27), f(28), f(seatSquare(45).Radians()), f(seatSquare(60).Radians())))
	// Output: 0.366 mm
}

func ExampleInnerAfterFeed() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.InnerAfterFeed(f(27), f(0.366), f(seatSquare(45).Radians()), f(seatSquare(60).Radians())))
	// Output: 28.000 mm
}

// A tenth off a 45° seat under a 30° cone moves its outer edge by 0.47.
func ExampleOuterAfterReface() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.OuterAfterReface(f(30), f(0.1), f(seatSquare(45).Radians()), f(seatSquare(30).Radians())))
	// Output: 30.473 mm
}

func ExampleInnerAfterReface() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.InnerAfterReface(f(27), f(0.1), f(seatSquare(45).Radians()), f(seatSquare(60).Radians())))
	// Output: 26.727 mm
}

func ExampleSeat_FromAbove() {
	s, err := exampleSeat().FromAbove(seatSquare(15), stemBracket("0.366 mm"))
	fmt.Println(s.Outer.Text(units.InMillimetres, 2), err)
	// Output: [28.95 mm, 29.06 mm] <nil>
}

func ExampleSeat_FromBelow() {
	s, err := exampleSeat().FromBelow(seatSquare(60), stemBracket("0.366 mm"))
	fmt.Println(s.Inner.Text(units.InMillimetres, 2), err)
	// Output: [27.94 mm, 28.05 mm] <nil>
}

func ExampleSeat_Refaced() {
	s, err := exampleSeat().Refaced(stemBracket("0.1 mm"), seatSquare(30), seatSquare(90))
	fmt.Println(s.Outer.Text(units.InMillimetres, 2), s.Inner.Text(units.InMillimetres, 2), err)
	// Output: [30.42 mm, 30.53 mm] [26.95 mm, 27.05 mm] <nil>
}

func ExampleContactClear() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.ContactClear(f(31), f(30), f(math.Pi/4)))
	// Output: 0.707 mm
}

// With 100 mm as the whole, millimetres are per cent of the face.
func ExampleContactPlace() {
	fmt.Println(valvetrain.ContactPlace(stemMM("100"), stemMM("31"), stemMM("26"), stemMM("28.5")))
	// Output: 50 mm
}

func ExampleInterferenceGap() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", valvetrain.InterferenceGap(f(1.5), f(math.Pi/360)))
	// Output: 0.0131 mm
}

func ExampleInterferenceSinkage() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", valvetrain.InterferenceSinkage(f(30), f(29), f(seatSquare(45).Radians()), f(seatSquare(44).Radians())))
	// Output: 0.0172 mm
}

func ExampleSeat_SinkageTo() {
	after := exampleSeat()
	after.Outer = stemBracket("29 mm")
	x, err := exampleSeat().SinkageTo(after, seatSquare(44))
	fmt.Println(x.Text(units.InMillimetres, 3), err)
	// Output: [0.016 mm, 0.019 mm] <nil>
}

func ExampleSeat_ContactOn() {
	c, err := exampleSeat().ContactOn(valvetrain.ValveFace{Angle: seatSquare(45), Outer: stemBracket("31.5 mm"), Inner: stemBracket("26 mm")})
	fmt.Println(err)
	fmt.Println(c.ClearOuter.Text(units.InMillimetres, 2), c.ClearInner.Text(units.InMillimetres, 2))
	fmt.Printf("%.0f to %.0f %%\n", c.FromOuter[0], c.FromOuter[1])
	// Output:
	// <nil>
	// [1.02 mm, 1.10 mm] [0.67 mm, 0.75 mm]
	// 54 to 55 %
}

func ExampleSeatRecession() {
	fmt.Println(valvetrain.SeatRecession(60*units.Thou, 50*units.Thou).Text(units.InInches, 3))
	// Output: 0.010 in
}

func ExampleRecessionByCuts() {
	fmt.Println(valvetrain.RecessionByCuts(stemMM("0.2"), stemMM("0.15")))
	// Output: 0.35 mm
}

func ExampleTipHeightAfter() {
	fmt.Println(valvetrain.TipHeightAfter(stemMM("48"), stemMM("0.35"), stemMM("0.25")))
	// Output: 48.1 mm
}

func ExampleTipGrindFor() {
	fmt.Println(valvetrain.TipGrindFor(stemMM("48"), stemMM("0.35"), stemMM("48.1")))
	// Output: 0.25 mm
}

func ExampleInstalledAfter() {
	fmt.Println(valvetrain.InstalledAfter(stemMM("40"), stemMM("0.35")))
	// Output: 40.35 mm
}

func ExampleRecessionShim() {
	fmt.Println(valvetrain.RecessionShim(stemMM("2.5"), stemMM("0.35"), stemMM("0.25")))
	// Output: 2.4 mm
}

func ExampleFaceRecessionVolume() {
	type f = tolerance.Float
	fmt.Printf("%.1f mm³\n", valvetrain.FaceRecessionVolume(f(32), f(0.1)))
	// Output: 80.4 mm³
}

func ExampleSeatRecessionVolume() {
	type f = tolerance.Float
	fmt.Printf("%.1f mm³\n", valvetrain.SeatRecessionVolume(f(30), f(0.1), f(seatSquare(45).Radians()), f(seatSquare(30).Radians())))
	// Output: 71.8 mm³
}

func ExampleNarrowingVolume() {
	type f = tolerance.Float
	fmt.Printf("%.1f mm³\n", valvetrain.NarrowingVolume(f(30.473), f(30), f(34), f(seatSquare(45).Radians()), f(seatSquare(30).Radians())))
	// Output: 19.0 mm³
}

func ExampleSinkage_VolumeAdded() {
	v, err := valvetrain.Sinkage{Seat: exampleSeat(), Above: seatSquare(30), SeatCut: stemBracket("0.1 mm"), FaceCut: stemBracket("0.1 mm"), Head: stemBracket("32 mm")}.VolumeAdded()
	fmt.Println(v.Text(units.InCubicCentimetres, 4), err)
	// Output: [0.1519 cm³, 0.1525 cm³] <nil>
}

func ExampleSeatPlan_Plan() {
	cuts, err := valvetrain.SeatPlan{
		Seat: exampleSeat(), Above: seatSquare(30), Below: seatSquare(60),
		Outer: 30 * units.Millimetre, Width: 1500 * units.Micrometre, CleanUp: 100 * units.Micrometre,
	}.Plan()
	fmt.Println(err)
	fmt.Println("the seat itself", cuts.Reface)
	fmt.Println("from above", cuts.Above.Text(units.InMillimetres, 3))
	fmt.Println("from below", cuts.Below.Text(units.InMillimetres, 3))
	// Output:
	// <nil>
	// the seat itself 0.1 mm
	// from above [0.089 mm, 0.111 mm]
	// from below [0.403 mm, 0.440 mm]
}

func ExampleSeatSurvey_Inspect() {
	r, err := valvetrain.SeatSurvey{
		Where: "exhaust 3", Seat: exampleSeat(), WidthLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 2.0 mm")},
		Dial: []tolerance.Bracket{stemBracket("0 mm"), stemBracket("0.03 mm"), stemBracket("0.01 mm")}, RunLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")},
	}.Inspect()
	fmt.Println(err)
	fmt.Println(r.Width.Text(units.InMillimetres, 2))
	fmt.Println(r.Next)
	// Output:
	// <nil>
	// exhaust 3: seat width [2.05 mm, 2.20 mm], wear limit max 2.00 mm: too large: past the wear limit
	// bring the seat to its width by cutters from above and below
}
