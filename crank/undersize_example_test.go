package crank_test

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleCleanSize() {
	// 50 mm, worn by 0.08 on one side, 0.01 to come off each.
	pin, wear, stock := journalLength("50 mm"), journalLength("0.08 mm"), journalLength("0.01 mm")
	fmt.Println("on the original throw:", crank.CleanSize(pin, wear, stock))
	fmt.Println("with the centre moved:", crank.CleanSizeMoved(pin, wear, 0, stock), "by", crank.CentreShift(wear, 0))
	fmt.Println("which makes of 86 mm of stroke", crank.StrokeAfterShift(journalLength("86 mm"), crank.CentreShift(wear, 0)))
	// Output:
	// on the original throw: 49.82 mm
	// with the centre moved: 49.9 mm by 0.04 mm
	// which makes of 86 mm of stroke 86.08 mm
}

func ExampleWearCleaned() {
	fmt.Println(crank.WearCleaned(journalLength("50 mm"), journalLength("49.75 mm"), journalLength("0.01 mm")))
	// Output: 0.115 mm
}

func ExampleCleanSizeMoved() {
	fmt.Println(crank.CleanSizeMoved(journalLength("50 mm"), journalLength("0.08 mm"), journalLength("0.02 mm"), journalLength("0.01 mm")))
	// Output: 49.88 mm
}

func ExampleCentreShift() {
	fmt.Println(crank.CentreShift(journalLength("0.08 mm"), journalLength("0.02 mm")))
	// Output: 0.03 mm
}

func ExampleStrokeAfterShift() {
	after := crank.StrokeAfterShift(journalLength("86 mm"), journalLength("-0.04 mm"))
	fmt.Println(after, crank.ShiftOfStroke(journalLength("86 mm"), after))
	// Output: 85.92 mm -0.04 mm
}

func ExampleShiftOfStroke() {
	fmt.Println(crank.ShiftOfStroke(journalLength("86 mm"), journalLength("86.25 mm")))
	// Output: 0.125 mm
}

func ExampleIndexAfterShift() {
	fmt.Printf("%.4f rad\n", crank.IndexAfterShift(tolerance.Float(0.043), 43))
	// Output: 0.0010 rad
}

func ExampleCleanSizeBent() {
	least, greatest, runout, stock := journalLength("59.96 mm"), journalLength("59.99 mm"), journalLength("0.04 mm"), journalLength("0.01 mm")
	fmt.Println(crank.CleanSizeBent(least, runout, stock), "to", crank.CleanSizeBentMost(least, greatest, runout, stock))
	// Output: 59.9 mm to 59.93 mm
}

func ExampleCleanSizeBentMost() {
	// Oval and straight: the dial reads half of the out-of-round.
	fmt.Println(crank.CleanSizeBentMost(journalLength("59.96 mm"), journalLength("60 mm"), journalLength("0.02 mm"), 0))
	// Output: 59.96 mm
}

func ExampleRunOutCleaned() {
	fmt.Println(crank.RunOutCleaned(journalLength("59.96 mm"), journalLength("59.75 mm"), journalLength("0.01 mm")))
	// Output: 0.19 mm
}

func ExampleCleanSizeByDiameters() {
	fmt.Println(crank.CleanSizeByDiameters(journalLength("50 mm"), journalLength("49.92 mm"), journalLength("0.01 mm")))
	// Output: 49.82 mm 49.9 mm
}

func ExampleCaseLeft() {
	left := crank.CaseLeft(journalLength("1.5 mm"), journalLength("50 mm"), journalLength("49.5 mm"))
	fmt.Println(left, crank.SizeForCase(journalLength("1.5 mm"), left, journalLength("50 mm")))
	// Output: 1.25 mm 49.5 mm
}

func ExampleSizeForCase() {
	fmt.Println(crank.SizeForCase(journalLength("1.5 mm"), journalLength("1 mm"), journalLength("50 mm")))
	// Output: 49 mm
}

func ExampleUndersizeOf() {
	fmt.Println(crank.UndersizeOf(journalLength("2.7485 in"), 10*units.Thou).Text(units.InInches, 4))
	// Output: 2.7385 in
}

func ExampleUndersizeWall() {
	wall := crank.UndersizeWall(journalLength("0.0780 in"), units.Thou)
	fmt.Println(wall.Text(units.InInches, 4), crank.UndersizeByWall(journalLength("0.0780 in"), wall).Text(units.InInches, 3))
	// Output: 0.0785 in 0.001 in
}

func ExampleUndersizeByWall() {
	fmt.Println(crank.UndersizeByWall(journalLength("1.985 mm"), journalLength("2.110 mm")))
	// Output: 0.25 mm
}

func ExampleShellLadder() {
	for _, k := range crank.ShellLadder(units.InInches, crank.InchUndersizes()...) {
		fmt.Print(k.Name, " ")
	}
	fmt.Println(crank.ShellLadder(units.InMillimetres, crank.MetricUndersizes()...)[0].Name)
	// Output: .010 in .020 in .030 in .040 in 0.25 mm
}

func ExampleInchUndersizes() {
	fmt.Println(len(crank.InchUndersizes()), crank.InchUndersizes()[0].Text(units.InThou, 0))
	// Output: 4 10 thou
}

func ExampleMetricUndersizes() {
	fmt.Println(crank.MetricUndersizes())
	// Output: [0.25 mm 0.5 mm 0.75 mm 1 mm]
}

func ExamplePairsInStock() {
	fmt.Println(crank.PairsInStock(4), crank.ShellStock{}.Known)
	// Output: {4 true} false
}

func ExampleCleansUpAt() {
	pin := crank.WornJournal{Finished: journalBracket("50 mm"), Least: journalBracket("49.92 mm")}
	plan := crank.GrindPlan{Stock: journalLength("0.01 mm")}
	c, err := crank.CleansUpAt(&pin, crank.Crankpin, &plan)
	fmt.Println(c.Size, err, "-", c.Settle)
	pin.Walls = []crank.JournalWall{{Heading: 180 * units.Degree, Wear: journalBracket("0.08 mm")}, {Heading: 0, Wear: journalBracket("0 mm")}}
	c, _ = crank.CleansUpAt(&pin, crank.Crankpin, &plan)
	fmt.Println(c.Size)
	plan.Centring = crank.MovedCentre
	c, _ = crank.CleansUpAt(&pin, crank.Crankpin, &plan)
	fmt.Println(c.Size, "and the stroke grows by", c.StrokeChange)
	pin.Surface = crank.JournalNitrided
	_, err = crank.CleansUpAt(&pin, crank.Crankpin, &plan)
	fmt.Println(err)
	// Output:
	// [49.82 mm, 49.9 mm] <nil> - dial the worn side from the original axis
	// 49.82 mm
	// 49.9 mm and the stroke grows by 0.08 mm
	// crank: a nitrided journal is not ground without the maker's own process for it, which is not given
}

func ExampleChooseUndersize() {
	// The rule of a training manual: thin shells for what is worn by two thousandths
	// at the most; grind one, grind all.
	job := crank.UndersizeJob{
		Kind: crank.Crankpin, Standard: tolerance.MustParseBand("2.748–2.749 in"),
		Kits: []crank.ShellKit{
			{Name: "standard"},
			{Name: ".002", Undersize: 2 * units.Thou, AsIs: tolerance.MustParseBand("min 2.746 in, less than 2.748 in")},
			{Name: ".010", Undersize: 10 * units.Thou, Journal: tolerance.MustParseBand("2.738–2.739 in")},
			{Name: ".020", Undersize: 20 * units.Thou, Journal: tolerance.MustParseBand("2.728–2.729 in")},
		},
	}
	for _, d := range []string{"2.7479 in", "2.7475 in"} {
		job.Journals = append(job.Journals, crank.WornJournal{Finished: job.Standard.Interval(), Least: journalBracket(d)})
	}
	c, err := crank.ChooseUndersize(&job)
	fmt.Println(c.Outcome, c.Kits[c.Journals[1].AsIs].Name, err)

	job.Journals[1].Least = journalBracket("2.7455 in")
	c, _ = crank.ChooseUndersize(&job)
	fmt.Println(c.Outcome, c.Kits[c.Kit].Name, "for", c.Journals[c.Forced].Where)

	job.Journals[1].Least = journalBracket("2.7420 in")
	c, _ = crank.ChooseUndersize(&job)
	fmt.Println(c.Outcome, c.Kits[c.Possible].Name, "or", c.Kits[c.Kit].Name+";", c.Settle)
	// Output:
	// no grinding .002 <nil>
	// grind all to one undersize .010 for crankpin 2
	// can't tell .010 or .020; crankpin 2: dial the worn side from the original axis
}
