package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// A dial bore gauge set to 0 on a ring of 86 mm, three levels along and across
// the crank, in micrometres.
func surveyed() cylinder.BoreSurvey {
	s := cylinder.BoreSurvey{
		Where:    "cylinder 3",
		Levels:   []cylinder.BoreLevel{{Name: "top", Depth: 15 * units.Millimetre}, {Name: "middle", Depth: 60 * units.Millimetre}, {Name: "bottom", Depth: 115 * units.Millimetre}},
		Headings: []units.Angle{cylinder.AlongCrank, cylinder.AcrossCrank},
		Gauge: instrument.Instrument{Name: "bore gauge", Step: units.Micrometre, Error: units.Micrometre,
			Setting: instrument.Setting{Standard: 86 * units.Millimetre, Error: 2 * units.Micrometre}},
		Finished: tolerance.MustParseBand("86.000–86.010 mm").Interval(),
	}
	for _, shown := range []units.Length{30, 42, 24, 31, 15, 18} {
		s.Readings = append(s.Readings, cylinder.ReadBore(shown*units.Micrometre))
	}
	return s
}

func ExampleBoreSurvey_Inspect() {
	s := surveyed()
	l := cylinder.BoreLimits{
		Size:       tolerance.Spec{Wear: tolerance.MustParseBand("max 86.10 mm")},
		OutOfRound: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")},
		Taper:      tolerance.Spec{Wear: tolerance.MustParseBand("max 0.025 mm")},
	}
	var r cylinder.BoreReport
	if err := s.Inspect(&l, &r); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("greatest", r.Greatest.Size, s.Name(r.Greatest.At))
	fmt.Println("out-of-round at least", r.OutOfRound.Value, s.LevelName(r.OutOfRound.At.Level))
	fmt.Println("taper", r.Taper[cylinder.TaperAlong].Value, r.Standing[cylinder.MeasureTaper])
	fmt.Println("wear", r.Wear.Value, r.Shape)
	fmt.Println("whole bore:", r.Worst(&l))
	// Output:
	// greatest [86.038 mm, 86.046 mm] top, across the crank
	// out-of-round at least [0.009 mm, 0.015 mm] top
	// taper [0.021 mm, 0.027 mm] can't tell
	// wear [0.028 mm, 0.046 mm] wider at the top
	// whole bore: can't tell
}

func ExampleBoreSurvey_Finding() {
	s := surveyed()
	l := cylinder.BoreLimits{Taper: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.025 mm")}}
	var r cylinder.BoreReport
	if err := s.Inspect(&l, &r); err != nil {
		fmt.Println(err)
		return
	}
	f, err := s.Finding(&l, &r, cylinder.MeasureTaper)
	fmt.Println(f.Standing, err)
	fmt.Println(f.Settle)
	// Output:
	// can't tell <nil>
	// find out whether it is more than 0.025 mm: it reads 0.001 mm from the limit, and is known to ±0.003 mm: read again with a gauge good to less than ±0.0005 mm
}

func ExampleInspectBores() {
	bores := []cylinder.BoreSurvey{surveyed(), surveyed()}
	bores[1].Readings[1] = cylinder.BoreReading{} // across at the top was left out
	l := cylinder.BoreLimits{Size: tolerance.Spec{Wear: tolerance.MustParseBand("max 86.10 mm")}}
	reports, err := cylinder.InspectBores(nil, bores, &l)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range reports[1].Notes {
		fmt.Println(n.Text(&bores[1]))
	}
	// Output: not read: top, across the crank
}

func ExampleBoreWear() {
	fmt.Println(cylinder.BoreWear(units.MustParseLength("86.56 mm"), units.MustParseLength("86.50 mm")))
	// Output: 0.06 mm
}

func ExampleSizeWorn() {
	fmt.Println(cylinder.SizeWorn(units.MustParseLength("86.50 mm"), units.MustParseLength("0.06 mm")))
	// Output: 86.56 mm
}

func ExampleWearOppositeWall() {
	fmt.Println(cylinder.WearOppositeWall(units.MustParseLength("86.12 mm"), units.MustParseLength("86 mm"), units.MustParseLength("0.10 mm")))
	// Output: 0.02 mm
}

func ExampleOutOfRound() {
	// 5.7565 in one way and 5.7540 in the other: TM 9-2815-220-24 allows a worn bore 0.0030 in.
	o := cylinder.OutOfRound(units.MustParseLength("5.7565 in"), units.MustParseLength("5.7540 in"))
	fmt.Println(o.Text(units.InInches, 4))
	// Output: 0.0025 in
}

func ExampleOvalShown() {
	// An oval of 0.08 mm that lies at 30° to the gauge's first direction.
	shown := cylinder.OvalShown[tolerance.Float](0.08, 0.5235987755982988)
	fmt.Printf("%.3f mm\n", float64(shown))
	fmt.Printf("%.3f mm\n", float64(cylinder.OvalFrom(shown, tolerance.Float(0.5235987755982988))))
	// Output:
	// 0.040 mm
	// 0.080 mm
}

func ExampleLeastOvalShown() {
	fmt.Println(cylinder.LeastOvalShown(0, 90*units.Degree))
	fmt.Printf("%.2f\n", cylinder.LeastOvalShown(0, 60*units.Degree, 120*units.Degree))
	// Output:
	// 0
	// 0.75
}

func ExampleTaper() {
	fmt.Println(cylinder.Taper(units.MustParseLength("86.042 mm"), units.MustParseLength("86.031 mm"), units.MustParseLength("86.018 mm")))
	// Output: 0.024 mm
}

func ExampleTaperSigned() {
	top, bottom := units.MustParseLength("85.97 mm"), units.MustParseLength("86.01 mm")
	fmt.Println(cylinder.TaperSigned(top, bottom), "which is a choke of", cylinder.BoreChoke(top, bottom))
	// Output: -0.04 mm which is a choke of 0.04 mm
}

func ExampleTaperPer() {
	fmt.Println(cylinder.TaperPer(units.MustParseLength("0.024 mm"), 120*units.Millimetre, 100*units.Millimetre))
	// Output: 0.02 mm
}

func ExampleTaperOver() {
	// 0.0005 in for each inch, over a piston travel of 4.5 in (TM 10-3930-647-14&P).
	limit := cylinder.TaperOver(units.MustParseLength("0.0005 in"), units.MustParseLength("4.5 in"), units.Inch)
	fmt.Println(limit.Text(units.InInches, 5))
	// Output: 0.00225 in
}

func ExampleRidge_OnDiameter() {
	perSide, _ := tolerance.ParseBracket("0.06 ±0.01 mm")
	fmt.Println(cylinder.Ridge{Height: perSide, Counted: cylinder.RidgePerSide}.OnDiameter())
	_, err := cylinder.Ridge{Height: perSide}.OnDiameter()
	fmt.Println(err)
	// Output:
	// [0.1 mm, 0.14 mm] <nil>
	// cylinder: ridge [0.05 mm, 0.07 mm] (not stated how) is not said to be "per side" or "on diameter"
}

func ExampleRidgeDiametral() {
	fmt.Println(cylinder.RidgeDiametral(units.MustParseLength("0.06 mm")), cylinder.RidgeSided(units.MustParseLength("0.12 mm")))
	// Output: 0.12 mm 0.06 mm
}

func ExampleRidgeFromSizes() {
	fmt.Println(cylinder.RidgeFromSizes(units.MustParseLength("86.09 mm"), units.MustParseLength("86.01 mm")))
	// Output: 0.08 mm
}
