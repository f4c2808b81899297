package feeler_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// The .0025 in blade goes into the side clearance of a ring, the .003 in blade
// does not. With limits of 0.03 to 0.07 mm that is neither good nor bad.
func Example_sideClearance() {
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(".002 in free, .0025 in drag, .003 in refused")
	if err != nil {
		fmt.Println(err)
		return
	}
	check := feeler.Check{
		Measure: "side clearance",
		Where:   "piston 2, top ring",
		Spec:    tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")},
		Set:     set,
	}
	finding, err := check.Assess(feeler.Station{Trials: trials})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(finding.Least)
	fmt.Println(finding.Explain())
	fmt.Println("to settle it,", finding.Settle)
	// Output:
	// [0.0635 mm, 0.0762 mm)
	// can't tell, which is not a pass
	// to settle it, try a blade of 0.07 mm (settled if it does not go in; if it does, [0.07 mm, 0.0762 mm) stays open) or measure the parts by micrometer: no blade and no stack of imperial 26 narrows [0.0635 mm, 0.0762 mm)
}

// With the same limits a ring whose .003 in blade enters is past them, and one
// whose .002 in blade enters and .0025 in blade does not is within.
func ExampleCheck_Assess() {
	set := feeler.Imperial26()
	check := feeler.Check{
		Measure: "side clearance",
		Spec:    tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")},
		Set:     set,
	}
	for _, text := range []string{".003 in drag", ".002 in drag, .0025 in refused", ".002 in drag"} {
		trials, _ := set.ParseTrials(text)
		finding, err := check.Assess(feeler.Station{Trials: trials})
		fmt.Println(text, "→", finding.Least, finding.Standing, err)
		if finding.Settle != "" {
			fmt.Println("  to settle it,", finding.Settle)
		}
	}
	// Output:
	// .003 in drag → [0.0762 mm, ∞) outside the new-part band <nil>
	// .002 in drag, .0025 in refused → [0.0508 mm, 0.0635 mm) as new <nil>
	// .002 in drag → [0.0508 mm, ∞) can't tell <nil>
	//   to settle it, try .0025 in / 0.064 mm (settled if it does not go in), then .003 in / 0.076 mm (settled if it goes in)
}

// Two places round one piston: the greatest gap is judged against the upper
// limit, the least against the lower.
func ExampleCheck_Assess_stations() {
	set := feeler.Metric20()
	check := feeler.Check{
		Measure: "end float",
		Where:   "crankshaft",
		Spec:    tolerance.Spec{New: tolerance.MustParseBand("0.08–0.22 mm"), Wear: tolerance.MustParseBand("max 0.35 mm")},
		Set:     set,
	}
	front, _ := set.ParseTrials("0.10 mm free, 0.15 mm refused")
	rear, _ := set.ParseTrials("0.15 mm drag, 0.25 mm refused")
	finding, err := check.Assess(
		feeler.Station{Where: "front", Trials: front},
		feeler.Station{Where: "rear", Trials: rear},
	)
	fmt.Println(finding, err)
	// Output:
	// crankshaft: end float least [0.1 mm, 0.15 mm), greatest [0.15 mm, 0.25 mm), new 0.08–0.22 mm, wear limit max 0.35 mm: within the wear limit; whether as new can't be told; to settle it, rear: try 0.20 mm (settled if it does not go in) <nil>
}

func ExampleCheck_Read() {
	set := feeler.Metric20()
	check := feeler.Check{Set: set}
	trials, _ := set.ParseTrials("0.05 mm free, 0.15 mm forced, 0.20 mm refused")
	reading, err := check.Read(feeler.Station{Where: "front", Trials: trials})
	fmt.Println(reading, err)
	// Output:
	// front: [0.05 mm, 0.15 mm); try 0.10 mm to narrow it; 0.15 mm was forced, which counts as refused <nil>
}

func ExampleBracket() {
	set := feeler.Metric20() // 0.05, 0.10, 0.15 … 1.00 mm
	fmt.Println(feeler.Bracket(set.TrialAt(1, feeler.Free), set.TrialAt(2, feeler.Drag), set.TrialAt(3, feeler.Refused)))
	fmt.Println(feeler.Bracket(set.TrialAt(0, feeler.Forced)))
	fmt.Println(feeler.Bracket(set.TrialAt(19, feeler.Free)))
	fmt.Println(feeler.Bracket())
	fmt.Println(feeler.Bracket(
		feeler.Trial{Thickness: 0.07 * units.MM, Feel: feeler.Drag},
		feeler.Trial{Thickness: 0.06 * units.MM, Feel: feeler.Refused},
	))
	// Output:
	// [0.15 mm, 0.2 mm) <nil>
	// [0 mm, 0.05 mm) <nil>
	// [1 mm, ∞) <nil>
	// [0 mm, ∞) <nil>
	// (−∞, ∞) feeler: trials contradict each other: 0.07 mm entered, but the thinner 0.06 mm did not: clean blades and gap, and try both again
}

// The 0.07 mm blade drags and the 0.08 mm blade does not go in: the gap may be
// 0.07 mm itself. Whether that will do depends on how the limit is worded.
func ExampleBracket_atTheLimit() {
	gap, err := feeler.Bracket(
		feeler.Trial{Thickness: 0.07 * units.MM, Feel: feeler.Drag},
		feeler.Trial{Thickness: 0.08 * units.MM, Feel: feeler.Refused},
	)
	fmt.Println(gap, err)
	for _, limit := range []string{"max 0.07 mm", "less than 0.07 mm", "renew at 0.07 mm or more", "min 0.07 mm", "max 0.08 mm"} {
		fmt.Printf("%s: %v\n", limit, tolerance.MustParseBand(limit).Judge(gap))
	}
	// Output:
	// [0.07 mm, 0.08 mm) <nil>
	// max 0.07 mm: undecided
	// less than 0.07 mm: above
	// renew at 0.07 mm or more: above
	// min 0.07 mm: within
	// max 0.08 mm: within
}

// Blades of ± 0.003 mm widen the bracket. They don't explain that one entered
// which is 0.0127 mm thicker than one that didn't.
func ExampleBracketWithErrors() {
	set, err := feeler.Imperial26().WithErrors(feeler.ErrorClass{UpTo: 0.025 * units.IN, Error: 0.003 * units.MM})
	if err != nil {
		fmt.Println(err)
		return
	}
	trials, _ := set.ParseTrials(".0025 in drag, .003 in refused")
	fmt.Println(feeler.BracketWithErrors(trials...))

	trials, _ = set.ParseTrials(".0025 in refused, .003 in drag")
	_, err = feeler.BracketWithErrors(trials...)
	fmt.Println(err)
	// Output:
	// [0.0605 mm, 0.0792 mm) <nil>
	// feeler: trials contradict each other: .003 in entered, but the thinner .0025 in did not, which the errors of the blades do not explain: clean blades and gap, and try both again
}

func ExampleForcedTrials() {
	trials, _ := feeler.Metric20().ParseTrials("0.20 mm drag, 0.25 mm forced, 0.30 mm refused")
	fmt.Println(feeler.ForcedTrials(trials...))
	// Output:
	// [0.25 mm forced]
}

func ExampleNewBlade() {
	b, err := feeler.NewBlade(".003 in", "0.076 mm")
	fmt.Println(b, "is", b.Thickness(), err)
	_, err = feeler.NewBlade(".003 in", "0.76 mm")
	fmt.Println(err)
	// Output:
	// .003 in / 0.076 mm is 0.0762 mm <nil>
	// feeler: blade, mark 2 "0.76 mm": marks of one blade disagree; it is not the size .003 in to its last place
}

func ExampleMustBlade() {
	b := feeler.MustBlade("0.10 mm")
	b.Measured = 0.098 * units.MM
	b.Error = 1 * units.Micrometre
	fmt.Println(b)
	// Output:
	// 0.10 mm = 0.098 mm ± 0.001 mm
}

func ExampleParseBlade() {
	b, err := feeler.ParseBlade(".0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm")
	fmt.Println(b.MarkText(), b.Thickness(), b.Error, err)
	// Output:
	// .0025 in / 0.064 mm 0.0631 mm 0.001 mm <nil>
}

func ExampleNewSet() {
	set, err := feeler.NewSet("drawer 3", "marks",
		feeler.MustBlade("0.05 mm"), feeler.MustBlade("0.07 mm"), feeler.MustBlade("0.10 mm"))
	fmt.Println(set, err)
	_, err = feeler.NewSet("", "", feeler.MustBlade(".0025 in", "0.064 mm"), feeler.MustBlade("0.064 mm"))
	fmt.Println(err)
	// Output:
	// drawer 3: 3 blades, 0.05 mm to 0.10 mm <nil>
	// feeler: set: two blades of different thickness carry the mark 0.064 mm: .0025 in / 0.064 mm and 0.064 mm
}

func ExampleParseSet() {
	set, err := feeler.ParseSet(`
name: drawer 3
.0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm   # worn
.0015 in / 0.038 mm
`)
	fmt.Println(set, err)
	fmt.Print(set.Text())
	_, err = feeler.ParseSet(".0015 in / 0.038 mm\n.0025 in / 0.64 mm\n")
	fmt.Println(err)
	// Output:
	// drawer 3: 2 blades, .0015 in to .0025 in <nil>
	// name: drawer 3
	// .0015 in / 0.038 mm
	// .0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm
	// feeler: set, line 2, mark 2 "0.64 mm": marks of one blade disagree; it is not the size .0025 in to its last place
}

func ExampleParseSetJSON() {
	set, err := feeler.ParseSetJSON("drawer3.json", []byte(`{
		"schema": 1,
		"name": "drawer 3",
		"blades": [".0015 in / 0.038 mm", "0.10 mm ± 0.003 mm"]
	}`))
	fmt.Println(set, err)
	data, err := json.Marshal(set)
	fmt.Println(string(data), err)
	_, err = feeler.ParseSetJSON("drawer3.json", []byte("{\"schema\": 1,\n\"blades\": [0.10]}"))
	fmt.Println(err)
	// Output:
	// drawer 3: 2 blades, .0015 in to 0.10 mm <nil>
	// {"schema":1,"name":"drawer 3","blades":[".0015 in / 0.038 mm","0.10 mm ± 0.003 mm"]} <nil>
	// drawer3.json:2: blades[0]: wrong type: found the bare number 0.10, want a text in quotes, a quantity with its unit, such as "0.07 mm"
}

func ExampleStandardSets() {
	for _, set := range feeler.StandardSets() {
		fmt.Println(set)
	}
	// Output:
	// metric 8: 8 blades, 0.05 mm to 0.50 mm
	// metric 13: 13 blades, 0.05 mm to 1.00 mm
	// metric 20: 20 blades, 0.05 mm to 1.00 mm
	// imperial 26: 26 blades, .0015 in to .025 in
	// imperial 32: 32 blades, .0015 in to .040 in
}

func ExampleMetric8() {
	for _, b := range feeler.Metric8().Blades() {
		fmt.Print(b, "; ")
	}
	// Output:
	// 0.05 mm; 0.10 mm; 0.15 mm; 0.20 mm; 0.25 mm; 0.30 mm; 0.40 mm; 0.50 mm;
}

func ExampleMetric13() {
	fmt.Println(feeler.Metric13(), "·", feeler.Metric13().Source())
	// Output:
	// metric 13: 13 blades, 0.05 mm to 1.00 mm · catalogue habit, from memory
}

func ExampleMetric20() {
	fmt.Println(feeler.Metric20().Find("0.35 mm"))
	// Output:
	// 0.35 mm <nil>
}

func ExampleImperial26() {
	set := feeler.Imperial26()
	fmt.Println(set.At(2), "is", set.At(2).Thickness())
	// Output:
	// .0025 in / 0.064 mm is 0.0635 mm
}

func ExampleImperial32() {
	set := feeler.Imperial32()
	fmt.Println(set.At(set.Len() - 1))
	// Output:
	// .040 in / 1.016 mm
}

// A blade is found by what is marked on it or by its thickness, exactly.
func ExampleSet_Find() {
	set := feeler.Imperial26()
	for _, mark := range []string{"0.064 mm", "2.5 thou", "0.0635 mm", "0.64 mm", "0.07 mm", "0.07"} {
		b, err := set.Find(mark)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(b, "is", b.Thickness())
	}
	// Output:
	// .0025 in / 0.064 mm is 0.0635 mm
	// .0025 in / 0.064 mm is 0.0635 mm
	// .0025 in / 0.064 mm is 0.0635 mm
	// feeler: no blade is marked 0.64 mm; a decimal place away: .0025 in / 0.064 mm; nearest: .025 in / 0.635 mm
	// feeler: no blade is marked 0.07 mm; nearest: .0025 in / 0.064 mm or .003 in / 0.076 mm
	// feeler: no blade is marked "0.07": units: length "0.07", at byte 4: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
}

func ExampleSet_FindLength() {
	fmt.Println(feeler.Imperial26().FindLength(3 * units.Thou))
	// Output:
	// .003 in / 0.076 mm <nil>
}

func ExampleSet_Measured() {
	set, err := feeler.Imperial26().Measured(".0025 in", 0.0631*units.MM, 1*units.Micrometre)
	fmt.Println(set.At(2), err)
	// Output:
	// .0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm <nil>
}

func ExampleSet_WithErrors() {
	set, err := feeler.Metric8().WithErrors(
		feeler.ErrorClass{UpTo: 0.10 * units.MM, Error: 3 * units.Micrometre},
		feeler.ErrorClass{UpTo: 0.50 * units.MM, Error: 5 * units.Micrometre},
	)
	fmt.Println(set.At(1), "·", set.At(2), err)
	// Output:
	// 0.10 mm ± 0.003 mm · 0.15 mm ± 0.005 mm <nil>
}

func ExampleSet_Inside() {
	set := feeler.Metric20()
	gap, _ := feeler.Bracket(set.TrialAt(1, feeler.Free), set.TrialAt(4, feeler.Refused))
	fmt.Println("try", set.Inside(gap), "to narrow", gap)
	// Output:
	// try [0.15 mm 0.20 mm] to narrow [0.1 mm, 0.25 mm)
}

func ExampleSet_ParseTrials() {
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(".002 in free, 0.064 mm drag; .0015 in + .002 in refused")
	for _, t := range trials {
		fmt.Println(t.Thickness, t.Feel)
	}
	fmt.Println(err)
	_, err = set.ParseTrials(".002 in free, 0.64 mm drag")
	fmt.Println(err)
	// Output:
	// 0.0508 mm free
	// 0.0635 mm drag
	// 0.0889 mm refused
	// <nil>
	// feeler: trials, line 1, blade "0.64 mm": no blade is marked 0.64 mm; a decimal place away: .0025 in / 0.064 mm; nearest: .025 in / 0.635 mm
}

func ExampleSet_Trial() {
	set := feeler.Imperial26()
	fmt.Println(set.Trial(feeler.Drag, "0.064 mm"))
	fmt.Println(set.Trial(feeler.Refused, ".025 in", ".003 in"))
	// Output:
	// .0025 in drag <nil>
	// .025 in + .003 in refused <nil>
}

func ExampleSet_Stack() {
	set := feeler.Imperial26()
	for _, target := range []units.Length{0.0125 * units.IN, 0.5 * units.MM, 0.07 * units.MM} {
		stack, err := set.Stack(target, 3)
		fmt.Printf("%v: %v, off by %v %v\n", target, stack, stack.Off(), err)
	}
	// Output:
	// 0.3175 mm: .011 in + .0015 in = 0.3175 mm, off by 0 mm <nil>
	// 0.5 mm: .018 in + .0015 in = 0.4953 mm, off by -0.0047 mm <nil>
	// 0.07 mm: .003 in = 0.0762 mm, off by 0.0062 mm <nil>
}

func ExampleSet_StackAtMost() {
	set := feeler.Metric8()
	fmt.Println(set.StackAtMost(0.99*units.MM, 3))
	fmt.Println(set.StackAtLeast(0.99*units.MM, 3))
	// Output:
	// 0.50 mm + 0.40 mm + 0.05 mm = 0.95 mm <nil>
	// 0.50 mm + 0.40 mm + 0.10 mm = 1 mm <nil>
}

func ExampleStack_WorstError() {
	set, _ := feeler.Metric8().WithErrors(feeler.ErrorClass{UpTo: 0.50 * units.MM, Error: 4 * units.Micrometre})
	stack, err := set.Together("0.05 mm", "0.10 mm", "0.20 mm", "0.30 mm")
	fmt.Println(stack, err)
	fmt.Println("sum of errors", stack.WorstError(), "- root sum of squares", stack.RootSumSquareError())
	// Output:
	// 0.30 mm + 0.20 mm + 0.10 mm + 0.05 mm = 0.65 mm <nil>
	// sum of errors 0.016 mm - root sum of squares 0.008 mm
}

func ExampleParseFeel() {
	feel, err := feeler.ParseFeel("drag")
	fmt.Println(feel, feel.Entered(), err)
	_, err = feeler.ParseFeel("tight")
	fmt.Println(err)
	// Output:
	// drag true <nil>
	// feeler: feel "tight": unknown feel; one of "free", "drag", "forced", "refused", "not tried"
}

// Which blade to try next, where side clearances up to 0.15 mm are equally
// likely.
func ExamplePlan() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")}
	plan, err := feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.15*units.MM))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan.Text())
	fmt.Println("trials to expect:", plan.Expected().RatString(), "at most:", plan.Most())
	// Output:
	// try .003 in / 0.076 mm
	//   refused: try .0015 in / 0.038 mm
	//     refused: can't tell, no blade of the set lies in [0 mm, 0.0381 mm)
	//     entered: usable, [0.0381 mm, 0.0762 mm)
	//   entered: try .004 in / 0.102 mm
	//     refused: can't tell, no blade of the set lies in [0.0762 mm, 0.1016 mm)
	//     entered: past the wear limit, [0.1016 mm, ∞)
	// trials to expect: 2 at most: 2
}

// Where most grooves are expected within limits, other blades come first.
func ExamplePrior() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.04–0.07 mm")}
	prior := feeler.Prior{
		{UpTo: 0.04 * units.MM, Weight: 1},
		{UpTo: 0.07 * units.MM, Weight: 8},
		{UpTo: 0.20 * units.MM, Weight: 1},
	}
	plan, _ := feeler.Plan(feeler.Imperial26(), limits, prior)
	fmt.Println(plan.Blade, plan.Expected().RatString())
	plan, _ = feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.20*units.MM))
	fmt.Println(plan.Blade, plan.Expected().RatString())
	// Output:
	// .002 in / 0.051 mm 341/150
	// .003 in / 0.076 mm 3397/2000
}

// Going on from trials that were made already.
func ExamplePlanFrom() {
	set := feeler.Imperial26()
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	trials, _ := set.ParseTrials(".002 in free, .005 in refused")
	gap, _ := feeler.Bracket(trials...)
	plan, err := feeler.PlanFrom(set, limits, feeler.Uniform(0.20*units.MM), gap)
	fmt.Print(plan.Text(), err, "\n")
	// Output:
	// try .003 in / 0.076 mm
	//   refused: try .0025 in / 0.064 mm
	//     refused: as new, [0.0508 mm, 0.0635 mm)
	//     entered: can't tell, no blade of the set lies in [0.0635 mm, 0.0762 mm)
	//   entered: outside the new-part band, [0.0762 mm, 0.127 mm)
	// <nil>
}

func ExampleTree_Next() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	plan, _ := feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.15*units.MM))
	feels := []feeler.Feel{feeler.Refused, feeler.Drag, feeler.Drag}
	for _, feel := range feels {
		if plan.Done() {
			break
		}
		fmt.Println("try", plan.Blade, "-", feel)
		plan = plan.Next(feel)
	}
	fmt.Println(plan.Standing, plan.Bracket)
	// Output:
	// try .003 in / 0.076 mm - refused
	// try .0015 in / 0.038 mm - drag
	// try .0025 in / 0.064 mm - drag
	// can't tell [0.0635 mm, 0.0762 mm)
}

func ExampleUniform() {
	fmt.Println(feeler.Uniform(0.2 * units.MM))
	// Output:
	// [{0.2 mm 1}]
}

// What the 26 inch blades can never tell of limits of 0.03 to 0.07 mm.
func ExampleBlindZones() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	zones, err := feeler.BlindZones(feeler.Imperial26(), limits, 4)
	for _, z := range zones {
		fmt.Println(z)
	}
	fmt.Println(err)
	// Output:
	// [0 mm, 0.0381 mm) holds 0.03 mm; no stack of up to 4 blades lies in it; a blade of 0.03 mm would close it; or measure the parts by micrometer
	// [0.0635 mm, 0.0762 mm) holds 0.07 mm; no stack of up to 4 blades lies in it; a blade of 0.07 mm would leave [0.07 mm, 0.0762 mm); or measure the parts by micrometer
	// <nil>
}
