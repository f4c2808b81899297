package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func stemMM(s string) units.Length { return units.MustParseLength(s + " mm") }

func stemBracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleGuideClearance() {
	fmt.Println(valvetrain.GuideClearance(stemMM("8.05"), stemMM("7.97")))
	// Output: 0.08 mm
}

func ExampleGuideBoreFor() {
	fmt.Println(valvetrain.GuideBoreFor(stemMM("7.97"), stemMM("0.04")))
	// Output: 8.01 mm
}

func ExampleStemFor() {
	fmt.Println(valvetrain.StemFor(stemMM("8.01"), stemMM("0.04")))
	// Output: 7.97 mm
}

func ExampleGuideWear() {
	fmt.Println(valvetrain.GuideWear(stemMM("8.05"), stemMM("8.00")))
	// Output: 0.05 mm
}

func ExampleStemWear() {
	fmt.Println(valvetrain.StemWear(stemMM("7.95"), stemMM("7.98")))
	// Output: 0.03 mm
}

func ExampleGuideBell() {
	fmt.Println(valvetrain.GuideBell(stemMM("8.09"), stemMM("8.03")))
	// Output: 0.06 mm
}

func ExampleGuideOutOfRound() {
	fmt.Println(valvetrain.GuideOutOfRound(stemMM("8.06"), stemMM("8.09"), stemMM("8.07")))
	// Output: 0.03 mm
}

func ExampleStemTaper() {
	fmt.Println(valvetrain.StemTaper(stemMM("7.97"), stemMM("7.96"), stemMM("7.95")))
	// Output: 0.02 mm
}

func ExampleGuideInterference() {
	fmt.Println(valvetrain.GuideInterference(stemMM("13.05"), stemMM("13.01")))
	// Output: 0.04 mm
}

func ExampleHeadBoreFor() {
	fmt.Println(valvetrain.HeadBoreFor(stemMM("13.05"), stemMM("0.04")))
	// Output: 13.01 mm
}

func ExampleGuideOutsideFor() {
	fmt.Println(valvetrain.GuideOutsideFor(stemMM("13.01"), stemMM("0.04")))
	// Output: 13.05 mm
}

// Installed at 40, lifted by 10.5, over a guide that stands 15 out with 12.2 of
// seal on it.
func ExampleRetainerClearance() {
	fmt.Println(valvetrain.RetainerClearance(stemMM("40"), stemMM("10.5"), stemMM("15"), stemMM("12.2")))
	// Output: 2.3 mm
}

func ExampleRetainerLift() {
	fmt.Println(valvetrain.RetainerLift(stemMM("40"), stemMM("1.5"), stemMM("15"), stemMM("12.2")))
	// Output: 11.3 mm
}

func ExampleGuideProtrusionFor() {
	fmt.Println(valvetrain.GuideProtrusionFor(stemMM("40"), stemMM("10.5"), stemMM("1.5"), stemMM("12.2")))
	// Output: 15.8 mm
}

func exampleSurvey() valvetrain.GuideSurvey {
	return valvetrain.GuideSurvey{
		Where: "exhaust 3", Ways: []string{"along", "across"},
		Guide: []valvetrain.GuideStation{
			{Where: "valve end", Depth: 2 * units.Millimetre, Bores: []tolerance.Bracket{stemBracket("8.06 ±0.002 mm"), stemBracket("8.09 ±0.002 mm")}},
			{Where: "middle", Depth: 24 * units.Millimetre, Bores: []tolerance.Bracket{stemBracket("8.02 ±0.002 mm"), stemBracket("8.03 ±0.002 mm")}},
			{Where: "spring end", Depth: 46 * units.Millimetre, Bores: []tolerance.Bracket{stemBracket("8.04 ±0.002 mm"), stemBracket("8.05 ±0.002 mm")}},
		},
		Stem:            []valvetrain.StemStation{{Where: "lower", Stems: []tolerance.Bracket{stemBracket("7.95 ±0.001 mm")}}},
		ClearanceLimits: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")},
	}
}

func ExampleGuideSurvey_Inspect() {
	r, err := exampleSurvey().Inspect()
	fmt.Println(err)
	fmt.Println(r.Clearance.Text(units.InMillimetres, 3))
	fmt.Println("bell-mouth", r.Bell.Greatest.Text(units.InMillimetres, 3))
	fmt.Println(r.Notes[0])
	// Output:
	// <nil>
	// exhaust 3: stem-to-guide clearance least [0.067 mm, 0.073 mm], greatest [0.137 mm, 0.143 mm], wear limit max 0.100 mm: too large: past the wear limit
	// bell-mouth [0.056 mm, 0.064 mm]
	// the stem's taper is not known: measure it at two places or more
}

// The smallest oversize whose reamer cleans up the widest place.
func ExampleChooseGuideRepair() {
	s := exampleSurvey()
	need := valvetrain.GuideNeed{Where: s.Where, Stem: s.Stem[0].Stems[0], Clearance: tolerance.MustParseBand("0.03–0.06 mm"), LeastCut: 10 * units.Micrometre}
	for _, g := range s.Guide {
		need.Bores = append(need.Bores, g.Bores...)
	}
	c, err := valvetrain.ChooseGuideRepair(need, []valvetrain.GuideOption{
		{Name: "+0.20 stem", Way: valvetrain.OversizeStem, Stem: stemBracket("8.162 ±0.002 mm"), Opened: stemBracket("[8.200 mm, 8.212 mm]")},
		{Name: "+0.15 stem", Way: valvetrain.OversizeStem, Stem: stemBracket("8.112 ±0.002 mm"), Opened: stemBracket("[8.150 mm, 8.162 mm]")},
		{Name: "+0.10 stem", Way: valvetrain.OversizeStem, Stem: stemBracket("8.062 ±0.002 mm"), Opened: stemBracket("[8.100 mm, 8.112 mm]")},
	})
	fmt.Println(err)
	for i, t := range c.Trials {
		fmt.Printf("%s %v %t %q\n", t.Option.Name, t.Clearance, i == c.Chosen, t.Why)
	}
	// Output:
	// <nil>
	// +0.20 stem [0.036 mm, 0.052 mm] false ""
	// +0.15 stem [0.036 mm, 0.052 mm] true ""
	// +0.10 stem [0.036 mm, 0.052 mm] false "whether the reamer cleans up the guide isn't told by the readings: measure the widest place and the reamer's cut again"
}

func ExampleGuideRepair_String() {
	fmt.Println(valvetrain.OversizeStem)
	// Output: oversize stem
}
