package feeler_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

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

func ExampleBlade_Thickness() {
	b := feeler.MustBlade(".003 in", "0.076 mm")
	fmt.Println(b.Thickness(), b.Carries(0.076*units.MM))
	b.Measured = 0.0758 * units.MM
	fmt.Println(b.Thickness())
	// Output:
	// 0.0762 mm true
	// 0.0758 mm
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

func ExampleSet_Index() {
	set := feeler.Imperial26()
	i, err := set.Index("0.064 mm")
	fmt.Println(i, set.TrialAt(i, feeler.Drag), err)
	// Output:
	// 2 .0025 in drag <nil>
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
