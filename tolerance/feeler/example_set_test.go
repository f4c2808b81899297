package feeler_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// A table of the blades, with every mark that each carries.
func ExampleSet_Blades() {
	for _, b := range feeler.Imperial26().Blades()[:3] {
		fmt.Printf("%-18s %v\n", b.MarkText(), b.Thickness())
	}
	// Output:
	// .0015 in / 0.038 mm 0.0381 mm
	// .002 in / 0.051 mm 0.0508 mm
	// .0025 in / 0.064 mm 0.0635 mm
}

func ExampleSet_At() {
	set := feeler.Metric8()
	fmt.Println(set.At(0), "to", set.At(set.Len()-1))
	// Output: 0.05 mm to 0.50 mm
}

func ExampleSet_Len() {
	fmt.Println(feeler.Imperial32().Len(), feeler.Set{}.Len())
	// Output: 32 0
}

func ExampleSet_Name() {
	fmt.Println(feeler.Metric13().Name())
	// Output: metric 13
}

func ExampleSet_Source() {
	fmt.Println(feeler.Metric20().Source())
	// Output: catalogue habit, from memory
}

func ExampleSet_String() {
	fmt.Println(feeler.Imperial26())
	// Output: imperial 26: 26 blades, .0015 in to .025 in
}

// What Text writes, ParseSet reads.
func ExampleSet_Text() {
	set, err := feeler.NewSet("my own gauge", "marks", feeler.MustBlade(".0015 in", "0.038 mm"), feeler.MustBlade(".0025 in", "0.064 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	if set, err = set.Measured(".0025 in", 0.0631*units.MM, 0.001*units.MM); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(set.Text())
	back, err := feeler.ParseSet(set.Text())
	fmt.Println(back.Equal(set), err)
	// Output:
	// name: my own gauge
	// source: marks
	// .0015 in / 0.038 mm
	// .0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm
	// true <nil>
}

func ExampleSet_Equal() {
	fmt.Println(feeler.Metric8().Equal(feeler.Metric8()), feeler.Metric8().Equal(feeler.Metric13()))
	// Output: true false
}

// A set is a field of a JSON document like any other.
func ExampleSet_UnmarshalJSON() {
	var bench struct {
		Owner  string
		Blades feeler.Set
	}
	err := json.Unmarshal([]byte(`{"Owner": "bench 2", "Blades": {"schema": 1, "name": "thin", "blades": [".0015 in / 0.038 mm", "0.10 mm"]}}`), &bench)
	fmt.Println(bench.Blades, err)
	// Output: thin: 2 blades, .0015 in to 0.10 mm <nil>
}

func ExampleSet_MarshalJSON() {
	set, err := feeler.NewSet("thin", "marks", feeler.MustBlade("0.05 mm"), feeler.MustBlade("0.10 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(set)
	fmt.Println(string(text), err)
	// Output: {"schema":1,"name":"thin","source":"marks","blades":["0.05 mm","0.10 mm"]} <nil>
}

func ExampleBlade_Marks() {
	for _, m := range feeler.MustBlade(".003 in", "0.076 mm").Marks() {
		fmt.Println(m.Value, m.Unit)
	}
	// Output:
	// 0.0762 mm in
	// 0.076 mm mm
}

func ExampleBlade_Carries() {
	b := feeler.MustBlade(".003 in", "0.076 mm")
	fmt.Println(b.Carries(0.003*units.IN), b.Carries(0.076*units.MM), b.Carries(0.08*units.MM))
	// Output: true true false
}

func ExampleBlade_String() {
	b := feeler.MustBlade(".003 in", "0.076 mm")
	b.Measured, b.Error = 0.0755*units.MM, 0.001*units.MM
	fmt.Println(b)
	// Output: .003 in / 0.076 mm = 0.0755 mm ± 0.001 mm
}

func ExampleFeel_Entered() {
	for _, f := range []feeler.Feel{feeler.Free, feeler.Drag, feeler.Forced, feeler.Refused} {
		fmt.Println(f, f.Entered())
	}
	// Output:
	// free true
	// drag true
	// forced false
	// refused false
}

func ExampleTrial_String() {
	trial, err := feeler.Imperial26().Trial(feeler.Drag, "0.076 mm")
	fmt.Println(trial, trial.Thickness, err)
	// Output: .003 in drag 0.0762 mm <nil>
}

func ExampleReading_String() {
	set := feeler.Metric20()
	trials, err := set.ParseTrials("0.05 mm drag, 0.15 mm refused")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(feeler.Check{Set: set}.Read(feeler.Station{Where: "front", Trials: trials}))
	// Output: front: [0.05 mm, 0.15 mm); try 0.10 mm to narrow it <nil>
}

// One blade misread for its neighbour a decimal place away: the set holds
// .0025 in (0.064 mm) and .025 in (0.635 mm), and 0.64 mm may mean either.
func ExampleMarkError() {
	_, err := feeler.Imperial26().Find("0.64 mm")
	fmt.Println(err)
	if slip := (*feeler.MarkError)(nil); errors.As(err, &slip) {
		fmt.Println(len(slip.Decimal), len(slip.Nearest))
	}
	// Output:
	// feeler: no blade is marked 0.64 mm; a decimal place away: .0025 in / 0.064 mm; nearest: .025 in / 0.635 mm
	// 1 1
}

// A thicker blade cannot go in where a thinner one did not.
func ExampleContradictionError() {
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(".0025 in refused, .003 in drag")
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = feeler.Bracket(trials...)
	fmt.Println(err)
	fmt.Println(errors.Is(err, feeler.ErrContradiction))
	// Output:
	// feeler: trials contradict each other: .003 in entered, but the thinner .0025 in did not: clean blades and gap, and try both again
	// true
}

// A station's error says where it was.
func ExampleStationError() {
	trials := []feeler.Trial{{Thickness: 0.05 * units.MM, Feel: feeler.Refused}, {Thickness: 0.10 * units.MM, Feel: feeler.Free}}
	_, err := feeler.Check{Set: feeler.Metric20()}.Read(feeler.Station{Where: "front", Trials: trials})
	fmt.Println(err)
	// Output: feeler: front: trials contradict each other: 0.1 mm entered, but the thinner 0.05 mm did not: clean blades and gap, and try both again
}

func ExampleDuplicateError() {
	_, err := feeler.NewSet("odd", "", feeler.MustBlade("0.10 mm"), feeler.MustBlade(".004 in", "0.10 mm"))
	fmt.Println(err)
	// Output: feeler: set: two blades of different thickness carry the mark 0.10 mm: 0.10 mm and .004 in / 0.10 mm
}

func ExampleInputError() {
	_, err := feeler.NewBlade(".0025 in", "0.64 mm")
	fmt.Println(err)
	_, err = feeler.Imperial26().ParseTrials(".002 in free, .003 in tight")
	fmt.Println(err)
	// Output:
	// feeler: blade, mark 2 "0.64 mm": marks of one blade disagree; it is not the size .0025 in to its last place
	// feeler: trials, line 1 ".003 in tight": not written as expected; write them as ".002 in free, .0025 in drag, .003 in refused" (or forced, or not tried), blades laid together as ".002 in + .0015 in refused"
}
