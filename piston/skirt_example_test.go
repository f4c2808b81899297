package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func skirtBracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func skirtTemperature(s string) tolerance.Interval[units.Temperature] {
	t, err := tolerance.ParseInterval[units.Temperature](s)
	if err != nil {
		panic(err)
	}
	return t
}

func skirtLength(s string) units.Length { return units.MustParseLength(s) }

// The same formula gives the number, the bracket and the written-out solution.
func ExampleSkirtClearance() {
	fmt.Println(piston.SkirtClearance(skirtLength("86.012 mm"), skirtLength("85.960 mm")))
	fmt.Println(piston.SkirtClearance(skirtBracket("86.012 ±0.002 mm"), skirtBracket("85.960 ±0.001 mm")))
	c := piston.SkirtClearance(working.Given("bore", "D", skirtLength("86.012 mm")), working.Given("skirt", "d", skirtLength("85.960 mm")))
	s, _ := working.Solve(c.Named("clearance", "c"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	fmt.Print(s.Text())
	// Output:
	// 0.052 mm
	// [0.049 mm, 0.055 mm]
	// clearance = bore − skirt
	// c = D − d
	//   = 86.012 mm − 85.960 mm
	//   = 0.052 mm
}

func ExampleSkirtSize() {
	fmt.Println(piston.SkirtSize(skirtLength("86.012 mm"), skirtLength("0.05 mm")))
	// Output: 85.962 mm
}

func ExampleSkirtBore() {
	fmt.Println(piston.SkirtBore(skirtLength("85.960 mm"), skirtLength("0.05 mm")))
	// Output: 86.01 mm
}

// Both parts' wear counts.
func ExampleSkirtClearanceWorn() {
	fmt.Println(piston.SkirtClearanceWorn(skirtLength("0.05 mm"), skirtLength("0.03 mm"), skirtLength("0.01 mm")))
	// Output: 0.09 mm
}

func ExampleMeasureSkirtClearance() {
	fmt.Println(piston.MeasureSkirtClearance(skirtBracket("86.012 ±0.002 mm"), skirtBracket("85.960 ±0.001 mm")))
	_, err := piston.MeasureSkirtClearance(skirtBracket("86.00 mm"), skirtBracket("86.02 mm"))
	fmt.Println(err)
	// Output:
	// [0.049 mm, 0.055 mm] <nil>
	// piston: skirt 86.02 mm is not at most as large as the bore, 86 mm: an interference of 0.02 mm
}

// A worn bore has a least and a greatest clearance.
func ExampleSkirtExtremes() {
	bores := []tolerance.Bracket{skirtBracket("86.010 ±0.002 mm"), skirtBracket("86.034 ±0.002 mm")}
	skirts := []tolerance.Bracket{skirtBracket("85.960 ±0.001 mm")}
	least, greatest, err := piston.SkirtExtremes(bores, skirts)
	fmt.Println(least, greatest, err)
	// Output: [0.047 mm, 0.053 mm] [0.071 mm, 0.077 mm] <nil>
}

func ExampleSkirtClearances() {
	bores := []tolerance.Bracket{skirtBracket("86.010 mm"), skirtBracket("86.014 mm")}
	skirts := []tolerance.Bracket{skirtBracket("85.960 mm"), skirtBracket("85.958 mm")}
	fmt.Println(piston.SkirtClearances(nil, bores, skirts))
	_, err := piston.SkirtClearances(nil, bores, skirts[:1])
	fmt.Println(err)
	// Output:
	// [0.05 mm 0.056 mm] <nil>
	// piston: skirts 1 is not as many as there are bores, 2
}

// A new skirt is wider below, where it runs cooler.
func ExampleSkirtTaper() {
	fmt.Println(piston.SkirtTaper(skirtLength("85.968 mm"), skirtLength("85.945 mm")))
	// Output: 0.023 mm
}

func ExampleSkirtLower() {
	fmt.Println(piston.SkirtLower(skirtLength("85.945 mm"), skirtLength("0.023 mm")))
	// Output: 85.968 mm
}

func ExampleSkirtOvality() {
	fmt.Println(piston.SkirtOvality(skirtLength("85.960 mm"), skirtLength("85.720 mm")))
	// Output: 0.24 mm
}

func ExampleSkirtAlong() {
	fmt.Println(piston.SkirtAlong(skirtLength("85.960 mm"), skirtLength("0.24 mm")))
	// Output: 85.72 mm
}

func ExampleSkirtCamDrop() {
	fmt.Println(piston.SkirtCamDrop(skirtLength("0.24 mm")))
	// Output: 0.12 mm
}

func ExampleSkirtOvalityOfDrop() {
	fmt.Println(piston.SkirtOvalityOfDrop(skirtLength("0.12 mm")))
	// Output: 0.24 mm
}

func ExampleSkirtWear() {
	fmt.Println(piston.SkirtWear(skirtLength("85.945 mm"), skirtLength("85.960 mm")))
	// Output: 0.015 mm
}

// Against the new size at the same height; against that at the measuring
// height a sound skirt of this piston would seem to have grown.
func ExampleSkirtCollapse() {
	fmt.Println(piston.SkirtCollapse(skirtLength("85.950 mm"), skirtLength("85.974 mm")))
	// Output: 0.024 mm
}

func ExampleSkirtNewSize() {
	fmt.Println(piston.SkirtNewSize(skirtLength("85.950 mm"), skirtLength("0.024 mm")))
	// Output: 85.974 mm
}

// A bore of 100 mm in grey iron 80 K warmer, a piston of alloy 200 K warmer:
// 100 · (10.8 · 80 − 19.4 · 200) millionths close what clearance there was.
func ExampleSkirtHotClearance() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", float64(piston.SkirtHotClearance(f(0), 100, 10.8e-6, 80, 19.4e-6, 200)))
	// Output: -0.3016 mm
}

func ExampleSkirtColdClearance() {
	type f = tolerance.Float
	fmt.Printf("%.4f mm\n", float64(piston.SkirtColdClearance(f(0.02), 86, 11.4e-6, 70, 19.4e-6, 130)))
	// Output: 0.1678 mm
}

func ExampleSkirtRiseFor() {
	type f = tolerance.Float
	fmt.Printf("%.1f K\n", float64(piston.SkirtRiseFor(f(0), 0.05, 86, 11.4e-6, 70, 19.4e-6)))
	// Output: 71.1 K
}

func ExampleSkirtBoreRiseFor() {
	type f = tolerance.Float
	fmt.Printf("%.1f K\n", float64(piston.SkirtBoreRiseFor(f(0), 0.05, 86, 11.4e-6, 19.4e-6, 130)))
	// Output: 170.1 K
}

func ExampleSkirtRiseTogether() {
	type f = tolerance.Float
	fmt.Printf("%.1f K\n", float64(piston.SkirtRiseTogether(f(0), 0.05, 86, 11.4e-6, 19.4e-6)))
	// Output: 72.8 K
}

func ExampleMetalOf() {
	m, ok := piston.MetalOf("piston alloy 4032")
	fmt.Println(m.PerK, m.Source, ok)
	_, ok = piston.MetalOf("cheese")
	fmt.Println(ok)
	// Output:
	// 1.94e-05 from memory true
	// false
}

func ExampleMetals() {
	m := piston.Metals()[1]
	fmt.Println(m.Name, m.PerK, m.Source)
	// Output: ductile iron 60-40-18 1.12e-05 Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6
}

func skirtHeat() piston.SkirtHeat {
	iron, _ := piston.MetalOf("grey iron")
	alloy, _ := piston.MetalOf("piston alloy 4032")
	return piston.SkirtHeat{Bore: skirtBracket("86.010 ±0.002 mm"), Clearance: skirtBracket("0.080 ±0.003 mm"), MeasuredAt: units.Reference,
		BoreMetal: iron, SkirtMetal: alloy}
}

func ExampleSkirtHeat_ClearanceAt() {
	h := skirtHeat()
	c, err := h.ClearanceAt(skirtTemperature("90 ±5 °C"), skirtTemperature("120 ±5 °C"))
	fmt.Println(c.Text(units.InMillimetres, 3), err)
	// Piston alloy and iron differ by so much that 150 °C closes it up.
	c, err = h.ClearanceAt(skirtTemperature("90 °C"), skirtTemperature("150 °C"))
	fmt.Println(c.Text(units.InMillimetres, 3), err)
	// Output:
	// [-0.035 mm, -0.001 mm] <nil>
	// [-0.072 mm, -0.065 mm] <nil>
}

func ExampleSkirtHeat_SkirtMost() {
	h := skirtHeat()
	most, err := h.SkirtMost(0, skirtTemperature("90 °C"))
	fmt.Println(most.Text(units.InCelsius, 1), err)
	// Output: 107.4 °C <nil>
}

func ExampleSkirtHeat_TogetherMost() {
	h := skirtHeat()
	most, ok, err := h.TogetherMost(0)
	fmt.Println(most.Text(units.InCelsius, 1), ok, err)
	h.SkirtMetal = h.BoreMetal // an iron piston in an iron bore
	_, ok, err = h.TogetherMost(0)
	fmt.Println(ok, err)
	// Output:
	// 132.1 °C true <nil>
	// false <nil>
}

func ExampleSkirtHeat_ColdFor() {
	h := skirtHeat()
	cold, err := h.ColdFor(20*units.Micrometre, skirtTemperature("90 ±5 °C"), skirtTemperature("140 ±10 °C"))
	fmt.Println(cold.Text(units.InMillimetres, 3), err)
	// Output: 0.173 mm <nil>
}

func skirtPiston() (piston.SkirtSurvey, piston.SkirtLimits) {
	s := piston.SkirtSurvey{Where: "piston 3", MeasuringHeight: 18 * units.Millimetre, Stations: []piston.SkirtStation{
		{Height: 5 * units.Millimetre, Across: skirtBracket("85.950 ±0.002 mm"), New: skirtBracket("85.974 ±0.002 mm")},
		{Height: 18 * units.Millimetre, Across: skirtBracket("85.958 ±0.002 mm"), Along: skirtBracket("85.720 ±0.002 mm")},
	}, Bores: []tolerance.Bracket{skirtBracket("86.012 ±0.003 mm"), skirtBracket("86.034 ±0.003 mm")}}
	l := piston.SkirtLimits{Collapse: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.02 mm")},
		Clearance: tolerance.Spec{New: tolerance.MustParseBand("0.04–0.065 mm"), Wear: tolerance.MustParseBand("max 0.12 mm")}}
	return s, l
}

func ExampleSkirtSurvey_Inspect() {
	s, l := skirtPiston()
	results, err := s.Inspect(nil, &l)
	for _, r := range results {
		fmt.Println(r.Measure, r.Least, r.Standing)
	}
	fmt.Println(piston.SkirtWorst(results), err)
	// Output:
	// skirt size [85.956 mm, 85.96 mm] can't tell
	// skirt ovality [0.234 mm, 0.242 mm] can't tell
	// skirt taper [-0.012 mm, -0.004 mm] can't tell
	// skirt collapse [0.02 mm, 0.028 mm] can't tell
	// piston clearance [0.049 mm, 0.059 mm] usable
	// can't tell <nil>
}

func ExampleInspectSkirts() {
	s, l := skirtPiston()
	results, err := piston.InspectSkirts(nil, []piston.SkirtSurvey{s, s}, &l)
	fmt.Println(len(results), results[9].Piston, results[9].Measure, err)
	// Output: 10 1 piston clearance <nil>
}

func ExampleSkirtWorst() {
	fmt.Println(piston.SkirtWorst([]piston.SkirtResult{
		{Limited: true, Standing: tolerance.AsNew}, {Limited: true, Standing: tolerance.Usable}, {Standing: tolerance.CantTell},
	}))
	// Output: usable
}

// A finding says what would settle it.
func ExampleSkirtSurvey_Finding() {
	s, l := skirtPiston()
	results, _ := s.Inspect(nil, &l)
	f, err := s.Finding(&l, results[3])
	fmt.Println(f.Where+":", f.Measure, f.Standing, err)
	fmt.Println(f.Settle)
	// Output:
	// piston 3, 5 mm up the skirt: skirt collapse can't tell <nil>
	// find out whether it is more than 0.02 mm: it reads 0.004 mm from the limit and is known to ±0.004 mm; measure again, to less than ±0.004 mm with all readings in it together
}

func ExampleSkirtResult_Fit() {
	s, l := skirtPiston()
	s.Bores = []tolerance.Bracket{skirtBracket("85.94 mm")}
	results, _ := s.Inspect(nil, &l)
	fmt.Println(results[4].Measure, results[4].Least, results[4].Fit())
	// Output: piston clearance [-0.02 mm, -0.016 mm] interference
}

func ExampleSkirtLimits_Spec() {
	_, l := skirtPiston()
	fmt.Println(l.Spec(piston.SkirtMeasureClearance).Wear, l.Spec(piston.SkirtMeasureTaper).IsZero())
	// Output: max 0.12 mm true
}

func ExampleSkirtLimits_Validate() {
	l := piston.SkirtLimits{Wear: tolerance.Spec{New: tolerance.MustParseBand("max 0.05 mm"), Wear: tolerance.MustParseBand("max 0.02 mm")}}
	fmt.Println(l.Validate() != nil)
	// Output: true
}

func ExampleSkirtMeasure_String() {
	fmt.Println(piston.SkirtMeasureCollapse)
	// Output: skirt collapse
}

// Two manuals' rules on the same pull: the answers differ, and each has the
// name of its rule.
func ExampleComparePulls() {
	pull, _ := tolerance.ParseInterval[units.Force]("1 ±0.05 kgf")
	readings, disagree := piston.ComparePulls(piston.PublishedPullRules(), piston.PullTrial{Strip: skirtBracket("0.04 mm"), Pull: pull})
	for _, r := range readings {
		fmt.Println(r)
	}
	fmt.Println(disagree)
	// Output:
	// [0.0654 mm, ∞) by the rule 6 lb
	// [0.025 mm, 0.045 mm] by the rule 0.04 mm strip
	// [[0 1]]
}

// The worked example of the manual: 0.004 in at 6 lb is 0.005 in.
func ExamplePullRule_Read() {
	pull, _ := tolerance.ParseInterval[units.Force]("6 ±0.25 lbf")
	r, err := piston.PublishedPullRules()[0].Read(piston.PullTrial{Strip: tolerance.Exactly(4 * units.Thou), Pull: pull})
	fmt.Println(r.Clearance.Text(units.InInches, 4), "by the rule", r.Rule, err)
	for _, note := range r.Notes.Texts() {
		fmt.Println(note)
	}
	// Output:
	// 0.0050 in by the rule 6 lb <nil>
	// the rule doesn't say how wide the strip is, and a wider one drags more
	// the rule doesn't say whether the strip is dry or oiled
}

func ExamplePullRule_StripFor() {
	strip, ok := piston.PublishedPullRules()[0].StripFor(skirtBracket("[0.0045 in, 0.0083 in]"))
	fmt.Println(strip.Text(units.InInches, 4), ok)
	// Output: [0.0035 in, 0.0073 in] true
}

func ExamplePublishedPullRules() {
	for _, r := range piston.PublishedPullRules() {
		fmt.Println(r.Name+":", r.Source)
	}
	// Output:
	// 6 lb: TM 9-2815-202-34, p. 6-36; TM 5-4210-233-14&P-2, p. 6-185; TM 5-3810-303-24
	// 0.04 mm strip: TM 10-3930-653-14&P
}

func ExamplePullClearance() {
	fmt.Println(piston.PullClearance(4*units.Thou, units.Thou).Text(units.InInches, 3))
	// Output: 0.005 in
}

func ExamplePullStrip() {
	fmt.Println(piston.PullStrip(5*units.Thou, units.Thou).Text(units.InInches, 3))
	// Output: 0.004 in
}

// A rule of one's own: pull a strip in a clearance known by micrometers.
func ExamplePullAllowance() {
	fmt.Println(piston.PullAllowance(skirtLength("0.068 mm"), skirtLength("0.05 mm")))
	// Output: 0.018 mm
}

func ExamplePullReading_String() {
	fmt.Println(piston.PullReading{Rule: "6 lb", Clearance: skirtBracket("0.127 mm"), Told: true})
	fmt.Println(piston.PullReading{Rule: "6 lb"})
	// Output:
	// 0.127 mm by the rule 6 lb
	// nothing told by the rule 6 lb
}

func ExamplePullNote_Texts() {
	fmt.Println(piston.PullFilmNotInRule.Texts())
	// Output: [the rule doesn't say whether the strip is dry or oiled]
}

func ExamplePullFilm_String() {
	fmt.Println(piston.FilmDry, "or", piston.FilmOiled)
	// Output: dry or oiled
}
