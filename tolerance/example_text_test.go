package tolerance_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A band is read from a document as a manual prints it, and written so that it
// reads back the same.
func ExampleBandOf_UnmarshalText() {
	var limits struct{ New, Wear tolerance.Band }
	err := json.Unmarshal([]byte(`{"New": "0.0012 to 0.0028 in", "Wear": "renew at 0.10 mm or more"}`), &limits)
	text, _ := json.Marshal(limits)
	fmt.Println(string(text), err)
	// Output: {"New":"0.03048–0.07112 mm","Wear":"less than 0.1 mm"} <nil>
}

func ExampleBandOf_MarshalText() {
	text, err := tolerance.LessThan(units.Length(0.10 * units.MM)).MarshalText()
	fmt.Println(string(text), err)
	// Output: less than 0.1 mm <nil>
}

func ExampleInterval_UnmarshalText() {
	var gap tolerance.Bracket
	fmt.Println(gap.UnmarshalText([]byte("[.0025 in, .003 in)")), gap)
	fmt.Println(gap.UnmarshalText([]byte("73.02 ±0.005 mm")), gap)
	// Output:
	// <nil> [0.0635 mm, 0.0762 mm)
	// <nil> [73.015 mm, 73.025 mm]
}

func ExampleInterval_MarshalText() {
	gap, err := tolerance.HalfOpen(units.Length(0.0025*units.IN), units.Length(0.003*units.IN))
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := gap.MarshalText()
	fmt.Println(string(text), err)
	// Output: [0.0635 mm, 0.0762 mm) <nil>
}

// A printed band keeps the manual's words, the band what they mean.
func ExamplePrintedOf_String() {
	p, err := tolerance.ParsePrinted("renew at .0040 in or more")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p)
	fmt.Println(p.BandOf)
	// Output:
	// renew at .0040 in or more
	// less than 0.1016 mm
}

func ExampleDifference_String() {
	mm, in := tolerance.MustParseBand("max 0.10 mm"), tolerance.MustParseBand("max 0.004 in")
	fmt.Println(tolerance.Compare(mm, in))
	fmt.Println(tolerance.Compare(mm, mm))
	// Output:
	// the second alone accepts (0.1 mm, 0.1016 mm]
	// both accept the same
}

// A verdict that is stored and read back; a word that is none is refused.
func ExampleVerdict_UnmarshalText() {
	var v tolerance.Verdict
	fmt.Println(v.UnmarshalText([]byte("above")), v)
	fmt.Println(v.UnmarshalText([]byte("good")))
	// Output:
	// <nil> above
	// tolerance: verdict "good": not understood; one of "undecided", "within", "below", "above"
}

func ExampleStanding_UnmarshalText() {
	var s tolerance.Standing
	fmt.Println(s.UnmarshalText([]byte("past the wear limit")), s == tolerance.PastWearLimit)
	// Output: <nil> true
}

func ExampleConversionOf_Exact() {
	for _, text := range []string{"max 25.4 mm", "max 0.10 mm"} {
		c, err := tolerance.MustParseBand(text).Convert(units.InInches, 4, tolerance.ConvertInward)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(c, c.Exact(), c.UpperGives)
	}
	// Output:
	// max 1.0000 in true 0 mm
	// max 0.0039 in false -0.00094 mm
}

func ExampleSpecError() {
	err := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.05 mm")}.Validate()
	fmt.Println(err)
	// Output:
	// tolerance: the band for new parts, 0.03–0.07 mm, reaches past the wear limit, max 0.05 mm
}

func ExampleAssessError() {
	_, err := tolerance.Assess("end gap", "cylinder 1", tolerance.Spec{Wear: tolerance.MustParseBand("max 1 mm")})
	fmt.Println(err)
	// Output: tolerance: end gap, cylinder 1: no reading given
}

func ExampleOrderError() {
	_, err := tolerance.Between(units.Length(0.07*units.MM), units.Length(0.03*units.MM))
	fmt.Println(err)
	// Output:
	// tolerance: band: nothing lies between a least of 0.07 mm and a greatest of 0.03 mm
}

func ExampleConvertError() {
	// The band is narrower than a step of the places asked for.
	_, err := tolerance.MustParseBand("0.031–0.033 mm").Convert(units.InInches, 3, tolerance.ConvertInward)
	fmt.Println(err)
	// Output:
	// tolerance: convert 0.031–0.033 mm to in: nothing lies between the ends; the band is narrower than the step: give more places
}
