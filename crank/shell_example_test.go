package crank_test

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

func ExampleOilClearance() {
	housing, wall, journal := journalLength("64.005 mm"), journalLength("2.000 mm"), journalLength("59.965 mm")
	c := crank.OilClearance(housing, wall, journal)
	fmt.Println(c, "before nip")
	fmt.Println(crank.JournalForClearance(housing, wall, c), crank.WallForClearance(housing, c, journal), crank.HousingForClearance(c, wall, journal))
	// Output:
	// 0.04 mm before nip
	// 59.965 mm 2 mm 64.005 mm
}

func ExampleHousingForClearance() {
	fmt.Println(crank.HousingForClearance(journalLength("0.04 mm"), journalLength("2 mm"), journalLength("59.965 mm")))
	// Output: 64.005 mm
}

func ExampleWallForClearance() {
	fmt.Println(crank.WallForClearance(journalLength("64.005 mm"), journalLength("0.04 mm"), journalLength("59.715 mm")))
	// Output: 2.125 mm
}

func ExampleJournalForClearance() {
	fmt.Println(crank.JournalForClearance(journalLength("64.005 mm"), journalLength("2.125 mm"), journalLength("0.04 mm")))
	// Output: 59.715 mm
}

func ExampleOilClearanceOfHalves() {
	// One half of a .001 pair.
	std := journalLength("0.0780 in")
	thick := crank.UndersizeWall(std, units.Thou)
	fmt.Println(crank.OilClearanceOfHalves(journalLength("2.6500 in"), std, thick, journalLength("2.4915 in")).Text(units.InInches, 4))
	// Output: 0.0020 in
}

func ExampleClearanceByHalf() {
	fmt.Println(crank.ClearanceByHalf(0, units.Thou).Text(units.InInches, 4))
	// Output: 0.0005 in
}

func ExampleOilClearanceInstalled() {
	c := crank.OilClearanceInstalled(journalLength("60.002 mm"), journalLength("59.965 mm"))
	fmt.Println(c, crank.JournalForBore(journalLength("60.002 mm"), c))
	// Output: 0.037 mm 59.965 mm
}

func ExampleJournalForBore() {
	fmt.Println(crank.JournalForBore(journalLength("60.002 mm"), journalLength("0.035 mm")))
	// Output: 59.967 mm
}

func ExampleLeastOilClearance() {
	bores := []units.Length{journalLength("60.002 mm"), journalLength("60.006 mm")}
	journals := []units.Length{journalLength("59.965 mm"), journalLength("59.960 mm")}
	least, _ := crank.LeastOilClearance(bores, journals)
	greatest, _ := crank.GreatestOilClearance(bores, journals)
	fmt.Println(least, "to", greatest)
	// Output: 0.037 mm to 0.046 mm
}

func ExampleGreatestOilClearance() {
	_, ok := crank.GreatestOilClearance([]units.Length{}, []units.Length{units.Millimetre})
	fmt.Println(ok)
	// Output: false
}

func ExampleOilClearanceThumb() {
	fmt.Println(crank.OilClearanceThumb(journalLength("2.5 in")).Text(units.InInches, 4))
	// Output: 0.0025 in
}

func ExampleOilReadings_Check() {
	o := crank.OilReadings{Where: "main 3",
		Bore:    []tolerance.Bracket{journalBracket("60.002 ±0.002 mm"), journalBracket("60.006 ±0.002 mm")},
		Journal: []tolerance.Bracket{journalBracket("59.965 ±0.002 mm"), journalBracket("59.960 ±0.002 mm")}}
	r, err := o.Check(tolerance.Spec{New: tolerance.MustParseBand("0.025–0.050 mm"), Wear: tolerance.MustParseBand("max 0.080 mm")})
	fmt.Println(r.Least, r.Greatest, r.Finding.Standing, err)
	o.Journal = []tolerance.Bracket{journalBracket("60.020 mm")}
	_, err = o.Check(tolerance.Spec{})
	fmt.Println(err)
	// Output:
	// [0.033 mm, 0.041 mm] [0.042 mm, 0.05 mm] as new <nil>
	// crank: main 3, oil clearance [-0.02 mm, -0.016 mm] is not a clearance: it is an interference, and the shaft would not turn; check shells, sizes and units
}

func ExampleStripTable_Clearance() {
	// Widths and clearances of an invented strip; use the paper of your own.
	table := crank.StripTable{
		{Width: journalLength("1.2 mm"), Clearance: journalLength("0.076 mm")},
		{Width: journalLength("1.5 mm"), Clearance: journalLength("0.051 mm")},
		{Width: journalLength("2.0 mm"), Clearance: journalLength("0.038 mm")},
	}
	for _, width := range []string{"1.5 mm", "1.7 mm", "2.2 mm"} {
		c, _ := table.Clearance(journalBracket(width))
		fmt.Println(width, "is", c)
	}
	w, _ := table.Width(journalBracket("0.045 mm"))
	fmt.Println("0.045 mm crushes it to", w)
	// Output:
	// 1.5 mm is 0.051 mm
	// 1.7 mm is (0.038 mm, 0.051 mm)
	// 2.2 mm is [0 mm, 0.038 mm)
	// 0.045 mm crushes it to (1.5 mm, 2 mm)
}

func ExampleStripTable_Read() {
	table := crank.StripTable{
		{Width: journalLength("1.2 mm"), Clearance: journalLength("0.076 mm")},
		{Width: journalLength("1.5 mm"), Clearance: journalLength("0.051 mm")},
		{Width: journalLength("2.0 mm"), Clearance: journalLength("0.038 mm")},
	}
	s := crank.CrushedStrip{Where: "rod 2", Front: journalBracket("1.5 mm"), Rear: journalBracket("2.0 mm")}
	clearance, taper := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.06 mm")}, tolerance.Spec{Wear: tolerance.MustParseBand("max 0.025 mm")}
	r, err := table.Read(&s, clearance, taper)
	fmt.Println(r.Least, r.Taper, r.Shape, r.Finding.Standing, err)
	s.Turned = true
	r, _ = table.Read(&s, clearance, taper)
	fmt.Println(r.Finding.Standing, "-", r.Finding.Settle)
	// Output:
	// 0.038 mm 0.013 mm tapered, smaller at the front usable <nil>
	// can't tell - wipe journal, shell and its back dry, lay a new strip, and don't turn the shaft
}

func ExampleNipGap() {
	// Each half stands 0.05 and 0.06 mm above its half housing.
	gap := crank.NipGap(journalLength("0.05 mm"), journalLength("0.06 mm"))
	fmt.Println(gap, "with one bolt slack,", crank.NipInterference(gap, journalLength("64 mm")).Text(units.InMillimetres, 4), "on the diameter")
	fmt.Println(crank.NipOfGap(gap, journalLength("0.05 mm")))
	// Output:
	// 0.11 mm with one bolt slack, 0.0350 mm on the diameter
	// 0.06 mm
}

func ExampleNipOfGap() {
	fmt.Println(crank.NipOfGap(journalLength("0.11 mm"), journalLength("0.05 mm")))
	// Output: 0.06 mm
}

func ExampleNipInterference() {
	// A blade of .004 in goes and .005 doesn't.
	gap, _ := tolerance.HalfOpen(4*units.Thou, 5*units.Thou)
	fmt.Println(crank.NipInterference(gap, journalBracket("64 mm")).Text(units.InMillimetres, 3))
	// Output: (0.032 mm, 0.041 mm)
}

func ExampleNipGapOf() {
	fmt.Println(crank.NipGapOf(journalLength("0.035 mm")).Text(units.InMillimetres, 3))
	// Output: 0.110 mm
}

func ExampleShellNip() {
	nip := crank.ShellNip(journalLength("100.581 mm"), journalLength("64 mm"))
	fmt.Println(nip.Text(units.InMillimetres, 3), crank.HalfPeriphery(nip, journalLength("64 mm")))
	// Output: 0.050 mm 100.581 mm
}

func ExampleHalfPeriphery() {
	fmt.Println(crank.HalfPeriphery(journalLength("0.05 mm"), journalLength("64 mm")).Text(units.InMillimetres, 3))
	// Output: 100.581 mm
}

func ExampleFreeSpread() {
	spread := crank.FreeSpread(journalLength("64.64 mm"), journalLength("64 mm"))
	fmt.Println(spread, crank.FreeWidth(spread, journalLength("64 mm")))
	// Output: 0.64 mm 64.64 mm
}

func ExampleFreeWidth() {
	fmt.Println(crank.FreeWidth(journalLength("0.025 in"), journalLength("2.5 in")).Text(units.InInches, 3))
	// Output: 2.525 in
}

func ExampleWallByBall() {
	wall := crank.WallByBall(journalLength("0.3280 in"), journalLength("0.2500 in"))
	fmt.Println(wall.Text(units.InInches, 4), crank.BallReading(wall, journalLength("0.2500 in")).Text(units.InInches, 4))
	// Output: 0.0780 in 0.3280 in
}

func ExampleBallReading() {
	fmt.Println(crank.BallReading(journalLength("2 mm"), journalLength("6 mm")))
	// Output: 8 mm
}

func ExampleWallVariation() {
	fmt.Println(crank.WallVariation(journalLength("2.001 mm"), journalLength("1.998 mm"), journalLength("2.000 mm")))
	// Output: 0.003 mm
}

func ExampleShellSurvey_Check() {
	gap, _ := tolerance.HalfOpen(2*units.Thou, 3*units.Thou)
	s := crank.ShellSurvey{Where: "main 3", Housing: journalBracket("64 mm"), FreeUpper: journalBracket("64.6 mm"), FreeLower: journalBracket("63.95 mm"), Gap: gap}
	r, err := s.Check(&crank.ShellLimits{Gap: tolerance.Spec{New: tolerance.MustParseBand("0.002–0.004 in")}})
	fmt.Println(r.Gap.Standing, r.Loose, err)
	fmt.Println(r.Next)
	// Output:
	// as new [lower] <nil>
	// a shell that doesn't spring into its housing is not used: it may turn with the shaft
}

func ExampleHalvesInStock() {
	fmt.Println(crank.HalvesInStock(2), crank.ShellHalves{}.Known)
	// Output: {2 true} false
}

func ExampleChooseShells() {
	std := journalLength("0.0780 in")
	job := crank.ShellJob{
		Bearings: []crank.ShellBearing{
			{Where: "main 1", Housing: journalBracket("2.6500 in"), Journal: journalBracket("2.4920 in")},
			{Where: "main 2", Housing: journalBracket("2.6500 in"), Journal: journalBracket("2.4915 in")},
		},
		Classes: []crank.ShellClass{
			{Name: "standard", Wall: tolerance.Exactly(std)},
			{Name: ".001", Wall: tolerance.Exactly(crank.UndersizeWall(std, units.Thou)), Uppers: crank.HalvesInStock(1), Lowers: crank.HalvesInStock(1)},
		},
		Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.0010–0.0025 in"), Aim: journalLength("0.0020 in")},
		Mixed:  true,
	}
	c, err := crank.ChooseShells(&job)
	for i, p := range c.Picks {
		fmt.Println(job.Bearings[i].Where, "upper", job.Classes[p.Upper].Name, "lower", job.Classes[p.Lower].Name, p.Clearance.Text(units.InInches, 4))
	}
	fmt.Println(c.InBand, err)
	// Output:
	// main 1 upper standard lower standard 0.0020 in
	// main 2 upper standard lower .001 0.0020 in
	// 2 <nil>
}
