package feeler_test

import (
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

func ExampleParseFeel() {
	feel, err := feeler.ParseFeel("drag")
	fmt.Println(feel, feel.Entered(), err)
	_, err = feeler.ParseFeel("tight")
	fmt.Println(err)
	// Output:
	// drag true <nil>
	// feeler: feel "tight": unknown feel; one of "free", "drag", "forced", "refused", "not tried"
}

func ExampleSet_TrialAt() {
	set := feeler.Metric20()
	fmt.Println(feeler.Bracket(set.TrialAt(3, feeler.Drag), set.TrialAt(4, feeler.Refused)))
	// Output:
	// [0.2 mm, 0.25 mm) <nil>
}

// The blades that entered and didn't lie inside their widened bracket, and are
// not named again.
func ExampleSet_InsideWithErrors() {
	set, _ := feeler.Metric20().WithErrors(feeler.ErrorClass{UpTo: 1 * units.MM, Error: 5 * units.Micrometre})
	gap, _ := feeler.BracketWithErrors(set.TrialAt(1, feeler.Free), set.TrialAt(3, feeler.Refused))
	fmt.Println(gap, set.InsideWithErrors(gap))
	// Output:
	// [0.095 mm, 0.205 mm) [0.15 mm ± 0.005 mm]
}
