package crank_test

import (
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

func journalLength(s string) units.Length { return units.MustParseLength(s) }

func journalBracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleJournalSurvey_Inspect() {
	s := crank.JournalSurvey{
		Where: "main 3", Planes: []crank.JournalPlane{{Name: "front"}, {Name: "middle"}, {Name: "rear"}},
		Headings: []units.Angle{0, 90 * units.Degree},
		Gauge:    instrument.Instrument{Step: journalLength("0.001 mm"), Error: journalLength("0.001 mm")},
		Finished: journalBracket("59.990 mm"),
	}
	for _, mm := range []string{"59.974", "59.968", "59.962", "59.955", "59.973", "59.966"} {
		s.Readings = append(s.Readings, crank.ReadJournal(journalLength(mm+" mm")))
	}
	l := crank.JournalLimits{
		OutOfRound: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.010 mm")},
		Wear:       tolerance.Spec{Wear: tolerance.MustParseBand("max 0.030 mm")},
	}
	var r crank.JournalReport
	if err := s.Inspect(&l, &r); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("shape:", r.Shape)
	fmt.Println("taper:", r.Taper[crank.JournalTaperAlong].Value, "at", s.HeadingName(r.Taper[crank.JournalTaperAlong].At.Heading))
	fmt.Println("out-of-round, at least:", r.OutOfRound.Value, r.Standing[crank.JournalOutOfRoundMeasure])
	fmt.Println("wear:", r.Wear.Value, r.Standing[crank.JournalWearMeasure], "at", s.Name(r.Wear.At))
	fmt.Println("journal:", r.Worst(&l))
	// Output:
	// shape: hourglass
	// taper: [0.01 mm, 0.016 mm] at 90°
	// out-of-round, at least: [0.004 mm, 0.01 mm] usable
	// wear: [0.033 mm, 0.037 mm] past the wear limit at middle, 90°
	// journal: past the wear limit
}

func ExampleInspectJournals() {
	one := crank.JournalSurvey{Planes: make([]crank.JournalPlane, 1), Headings: []units.Angle{0, 90 * units.Degree},
		Readings: []crank.JournalReading{crank.ReadJournal(journalLength("2.4985 in")), crank.ReadJournal(journalLength("2.4980 in"))}}
	l := crank.JournalLimits{OutOfRound: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.0005 in")}}
	reports, err := crank.InspectJournals(nil, []crank.JournalSurvey{one, one}, &l)
	fmt.Println(len(reports), reports[1].Standing[crank.JournalOutOfRoundMeasure], err)
	fmt.Println(reports[1].Notes[0].Text(&one))
	// Output:
	// 2 usable <nil>
	// read in one plane: its taper is not known
}

func ExampleJournalSurvey_Finding() {
	s := crank.JournalSurvey{Where: "main 2", Planes: make([]crank.JournalPlane, 1), Headings: []units.Angle{0, 90 * units.Degree},
		Gauge:    instrument.Instrument{Error: journalLength("0.004 mm")},
		Readings: []crank.JournalReading{crank.ReadJournal(journalLength("59.953 mm")), crank.ReadJournal(journalLength("59.960 mm"))}}
	l := crank.JournalLimits{Size: tolerance.Spec{Wear: tolerance.MustParseBand("min 59.950 mm")}}
	var r crank.JournalReport
	_ = s.Inspect(&l, &r)
	f, err := s.Finding(&l, &r, crank.JournalSizeMeasure)
	fmt.Println(f.Standing, err)
	fmt.Println(f.Settle)
	// Output:
	// can't tell <nil>
	// find out whether the least is less than 59.95 mm: it reads 0.003 mm from the limit, and is known to ±0.004 mm: measure again with a micrometer good to less than ±0.003 mm, setting included
}

func ExampleJournalMeasures() {
	for _, m := range crank.JournalMeasures()[:4] {
		fmt.Println(m)
	}
	// Output:
	// journal size
	// mean journal size
	// out-of-round
	// taper
}

func ExampleReadJournal() {
	fmt.Println(crank.ReadJournal(journalLength("59.98 mm")).Taken, crank.JournalReading{}.Taken)
	// Output: true false
}

func ExampleJournalOutOfRound() {
	fmt.Println(crank.JournalOutOfRound(journalLength("2.9990 in"), journalLength("2.9984 in")).Text(units.InInches, 4))
	// Output: 0.0006 in
}

func ExampleJournalTaper() {
	fmt.Println(crank.JournalTaper(journalLength("59.98 mm"), journalLength("59.96 mm"), journalLength("59.97 mm")))
	// Output: 0.02 mm
}

func ExampleJournalTaperSigned() {
	fmt.Println(crank.JournalTaperSigned(journalLength("59.96 mm"), journalLength("59.98 mm")))
	// Output: -0.02 mm
}

func ExampleJournalTaperPer() {
	taper, over := journalLength("0.006 mm"), journalLength("24 mm")
	per := crank.JournalTaperPer(taper, over, journalLength("100 mm"))
	fmt.Println(per, crank.JournalTaperOver(per, over, journalLength("100 mm")))
	// Output: 0.025 mm 0.006 mm
}

func ExampleJournalTaperOver() {
	// 0.0005 in for each inch, over a journal of 1.2 in.
	fmt.Println(crank.JournalTaperOver(journalLength("0.0005 in"), journalLength("1.2 in"), units.Inch).Text(units.InInches, 4))
	// Output: 0.0006 in
}

func ExampleJournalWear() {
	wear := crank.JournalWear(journalLength("59.74 mm"), journalLength("59.71 mm"))
	fmt.Println(wear, crank.JournalWorn(journalLength("59.74 mm"), wear))
	// Output: 0.03 mm 59.71 mm
}

func ExampleJournalWorn() {
	fmt.Println(crank.JournalWorn(journalLength("60 mm"), journalLength("0.05 mm")))
	// Output: 59.95 mm
}

func ExampleJournalWearOpposite() {
	// 0.08 in all, 0.06 dialled on one side.
	fmt.Println(crank.JournalWearOpposite(journalLength("50 mm"), journalLength("49.92 mm"), journalLength("0.06 mm")))
	// Output: 0.02 mm
}

func ExampleStrokeByHeights() {
	stroke := crank.StrokeByHeights(journalLength("193.52 mm"), journalLength("107.50 mm"))
	fmt.Println(stroke, crank.HeightForStroke(stroke, journalLength("107.50 mm")))
	// Output: 86.02 mm 193.52 mm
}

func ExampleHeightForStroke() {
	fmt.Println(crank.HeightForStroke(journalLength("86 mm"), journalLength("107.50 mm")))
	// Output: 193.5 mm
}

func ExampleIndexError() {
	// Two pins that should be level: the second stands 0.1 mm higher on a throw of 43.
	index := crank.IndexError(tolerance.Float(0), 0.1, 43)
	a, _ := units.AngleFromRadians(float64(index))
	fmt.Println(a.Text(units.InDegrees, 3))
	fmt.Printf("%.3f mm\n", crank.IndexHeight(index, 43))
	// Output:
	// 0.133°
	// 0.100 mm
}

func ExampleIndexHeight() {
	fmt.Printf("%.2f mm\n", crank.IndexHeight(tolerance.Float((units.Degree/2).Radians()), 43))
	// Output: 0.38 mm
}

func ExampleJournalSurvey_WornJournal() {
	s := crank.JournalSurvey{Where: "crankpin 1", Kind: crank.Crankpin, Planes: make([]crank.JournalPlane, 1), Headings: []units.Angle{0, 90 * units.Degree},
		Finished: journalBracket("50 mm"),
		Readings: []crank.JournalReading{crank.ReadJournal(journalLength("49.92 mm")), crank.ReadJournal(journalLength("49.98 mm"))}}
	var r crank.JournalReport
	_ = s.Inspect(&crank.JournalLimits{}, &r)
	w := s.WornJournal(&r, crank.JournalTaperAlong)
	fmt.Println(w.Where, w.Least, w.Greatest, w.OutOfRound, w.Taper.IsZero())
	// Output: crankpin 1 49.92 mm 49.98 mm 0.06 mm true
}
