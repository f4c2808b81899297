package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

func exactly(s string) tolerance.Bracket { return tolerance.Exactly(units.MustParseLength(s)) }

func ExampleLeastSizeOnAxis() {
	// 86 mm, worn by 0.10 on the thrust side only; 0.01 per side, 0.06 to hone.
	bore, wear := units.MustParseLength("86 mm"), units.MustParseLength("0.10 mm")
	cut, hone := units.MustParseLength("0.01 mm"), units.MustParseLength("0.06 mm")
	fmt.Println(cylinder.LeastSizeOnAxis(bore, wear, cut, hone))
	fmt.Println(cylinder.LeastSizeMoved(bore, wear, 0, cut, hone), "moved by", cylinder.BoreShift(wear, 0))
	fmt.Println(cylinder.LeastSizeByDiameters(bore, bore+wear, cut, hone))
	// Output:
	// 86.28 mm
	// 86.18 mm moved by 0.05 mm
	// 86.18 mm 86.28 mm
}

func ExampleLeastSize() {
	b := cylinder.WornBore{
		Finished: 86 * units.Millimetre,
		Walls: []cylinder.BoreWall{
			{Where: "top, thrust side", Heading: 90 * units.Degree, Wear: exactly("0.10 mm")},
			{Where: "top, other side", Heading: 270 * units.Degree, Wear: exactly("0 mm")},
		},
	}
	p := cylinder.BoringPlan{Centring: cylinder.MovedToBore, Cut: units.MustParseLength("0.01 mm"), Honing: units.MustParseLength("0.06 mm")}
	n, err := cylinder.LeastSize(&b, &p)
	fmt.Println(n.Size, "with the bar moved across by", n.Centre.Y, err)
	b.Surface = cylinder.PlatedBore
	_, err = cylinder.LeastSize(&b, &p)
	fmt.Println(err)
	// Output:
	// 86.18 mm with the bar moved across by 0.05 mm <nil>
	// cylinder: a plated bore is not rebored without the maker's own process for it, which is not given
}

func ExampleChooseOversize() {
	job := cylinder.OversizeJob{
		Standard: 86 * units.Millimetre,
		Kits:     cylinder.Ladder(units.InMillimetres, cylinder.MetricSteps()...),
		Plan:     cylinder.BoringPlan{Cut: units.MustParseLength("0.01 mm"), Honing: units.MustParseLength("0.06 mm")},
	}
	for _, d := range []string{"86.03 mm", "86.04 mm", "86.10 mm", "86.05 mm"} {
		job.Bores = append(job.Bores, cylinder.WornBore{Finished: 86 * units.Millimetre, Greatest: exactly(d)})
	}
	c, err := cylinder.ChooseOversize(&job)
	fmt.Println(c.Outcome, err)
	fmt.Println(c.Kits[c.Possible].Name, "or", c.Kits[c.Kit].Name+";", c.Settle)

	// The worn side is dialled: 0.08 of it on one wall.
	job.Bores[2].Walls = []cylinder.BoreWall{{Heading: 90 * units.Degree, Wear: exactly("0.08 mm")}}
	c, _ = cylinder.ChooseOversize(&job)
	fmt.Println(c.Outcome, c.Kits[c.Kit].Name, "for", c.Bores[c.Forced].Where)
	// Output:
	// can't tell <nil>
	// +0.25 mm or +0.50 mm; bore 3: dial the worn side
	// one size for the block +0.25 mm for bore 3
}

func ExampleWallsLeft() {
	b := cylinder.WornBore{Finished: 86 * units.Millimetre, Sonic: []cylinder.SonicWall{
		{Where: "thrust", Heading: 90 * units.Degree, Wall: exactly("4.00 mm"), Wear: exactly("0.10 mm")},
		{Where: "other", Heading: 270 * units.Degree, Wall: exactly("3.50 mm"), Wear: exactly("0 mm")},
	}}
	moved := cylinder.BoreCentre{Y: units.MustParseLength("0.05 mm")}
	left, err := cylinder.WallsLeft(&b, moved, exactly("86.25 mm"))
	for _, w := range left {
		fmt.Println(w.Where, "loses", w.Cut, "and keeps", w.Left)
	}
	size, where, _, _ := cylinder.LargestByWall(&b, moved, 3*units.Millimetre)
	fmt.Println("3 mm of wall allow", size, "by", where, err)
	// Output:
	// thrust loses 0.075 mm and keeps 3.925 mm
	// other loses 0.075 mm and keeps 3.425 mm
	// 3 mm of wall allow 87.1 mm by other <nil>
}

func ExampleWallCut() {
	size, bore := units.MustParseLength("86.25 mm"), units.MustParseLength("86 mm")
	shift, wear := units.MustParseLength("0.05 mm"), units.MustParseLength("0.10 mm")
	cut := cylinder.WallCut(size, bore, shift, wear)
	fmt.Println(cut, cylinder.SizeForWallCut(cut, bore, shift, wear), cylinder.WallLeftOf(4*units.Millimetre, cut))
	// Output: 0.075 mm 86.25 mm 3.925 mm
}

func ExampleLadder() {
	for _, k := range cylinder.Ladder(units.InInches, cylinder.InchSteps()...) {
		fmt.Println(k.Name, cylinder.KitSize(units.MustParseLength("3.375 in"), k.Oversize).Text(units.InInches, 3))
	}
	// Output:
	// +.010 in 3.385 in
	// +.020 in 3.395 in
	// +.030 in 3.405 in
	// +.040 in 3.415 in
}

func ExampleBoreTarget() {
	skirt, clearance := units.MustParseLength("86.455 mm"), units.MustParseLength("0.045 mm")
	finish := cylinder.BoreTarget(skirt, clearance)
	fmt.Println(finish, cylinder.RoughBore(finish, units.MustParseLength("0.06 mm")))
	fmt.Println(cylinder.PistonClearance(finish, skirt), cylinder.SkirtFor(finish, clearance), cylinder.FinishedBore(units.MustParseLength("86.44 mm"), units.MustParseLength("0.06 mm")))
	// Output:
	// 86.5 mm 86.44 mm
	// 0.045 mm 86.455 mm 86.5 mm
}

func ExampleBoreBand() {
	skirt, _ := tolerance.ParseBracket("86.455 ±0.002 mm")
	band, ok := cylinder.BoreBand(skirt, tolerance.MustParseBand("0.040–0.050 mm"))
	fmt.Println(band, ok)
	// Output: 86.497–86.503 mm true
}

func ExampleFinishSizes() {
	s, err := cylinder.FinishSizes(cylinder.FinishPlan{
		Skirts:    []tolerance.Bracket{exactly("86.455 mm")},
		Clearance: units.MustParseLength("0.045 mm"), Honing: units.MustParseLength("0.06 mm"),
		// The block is warm from boring.
		Block: instrument.At(units.MustParseTemperature("32 °C"), 0, 11.4e-6, 0),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s[0].Finish, "at 20 °C; now", s[0].FinishNow.Text(units.InMillimetres, 4))
	// Output: 86.5 mm at 20 °C; now [86.5118 mm, 86.5119 mm]
}
