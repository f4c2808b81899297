package tolerance_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func sideClearanceSpec() tolerance.Spec {
	return tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")}
}

func ExampleAssess() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	f, err := tolerance.Assess("ring side clearance", "piston 2, top groove", sideClearanceSpec(), gap)
	fmt.Println(f, err)
	_, err = tolerance.Assess("ring side clearance", "piston 3, top groove", sideClearanceSpec())
	fmt.Println(err, errors.Is(err, tolerance.ErrNoReading))
	// Output:
	// piston 2, top groove: ring side clearance [0.0635 mm, 0.0762 mm), new 0.03–0.07 mm, wear limit max 0.1 mm: within the wear limit; whether as new can't be told; to settle it, find out whether it is more than 0.07 mm <nil>
	// tolerance: ring side clearance, piston 3, top groove: no reading given true
}

func ExampleFindingOf_Explain() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	for _, q := range []units.Length{50 * units.Micrometre, 80 * units.Micrometre} {
		f, _ := tolerance.Assess("ring side clearance", "", spec, tolerance.Exactly(q))
		fmt.Println(f.Explain())
	}
	// Output:
	// within the band for new parts
	// too large: outside the new-part band; no wear limit given
}

func ExampleFindingOf_String() {
	f, _ := tolerance.Assess("end gap", "cylinder 1", tolerance.Spec{Wear: tolerance.MustParseBand("max 1 mm")}, tolerance.Exactly(units.Millimetre))
	fmt.Println(f.String())
	// Output: cylinder 1: end gap 1 mm, wear limit max 1 mm: within the wear limit; no band for new parts given
}

// Two places would show 0.07 mm for reading and limit both.
func ExampleFindingOf_Text() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	f, _ := tolerance.Assess("ring side clearance", "", spec, tolerance.Exactly(units.MustParseLength("0.0704 mm")))
	fmt.Println(f.Text(units.InMillimetres, 2))
	fmt.Println(f.Text(units.InInches, 4))
	// Output:
	// ring side clearance 0.0704 mm, new 0.0300–0.0700 mm: too large: outside the new-part band; no wear limit given
	// ring side clearance 0.0028 in, new 0.0012–0.0027 in: too large: outside the new-part band; no wear limit given
}

func ExampleFindingOf_Places() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	f, _ := tolerance.Assess("", "", spec, tolerance.Exactly(units.MustParseLength("0.0704 mm")))
	fmt.Println(f.Places(units.InMillimetres, 2))
	// Output: 4
}

// A finding is plain data.
func ExampleFindingOf_json() {
	f, _ := tolerance.Assess("ring side clearance", "piston 2", sideClearanceSpec(), tolerance.Exactly(80*units.Micrometre))
	text, _ := json.MarshalIndent(f, "", "  ")
	fmt.Println(string(text))
	// Output:
	// {
	//   "measure": "ring side clearance",
	//   "where": "piston 2",
	//   "least": "0.08 mm",
	//   "greatest": "0.08 mm",
	//   "spec": {
	//     "new": "0.03–0.07 mm",
	//     "wear": "max 0.1 mm"
	//   },
	//   "newBand": {
	//     "least": "within",
	//     "greatest": "above"
	//   },
	//   "wearBand": {
	//     "least": "within",
	//     "greatest": "within"
	//   },
	//   "standing": "usable",
	//   "margin": "0.02 mm"
	// }
}

func ExampleSpecOf_Stand() {
	for _, s := range []string{"0.05 mm", "0.09 mm", "0.12 mm", "[0.09 mm, 0.12 mm)", "0.02 mm"} {
		gap, _ := tolerance.ParseBracket(s)
		fmt.Println(gap, sideClearanceSpec().Stand(gap))
	}
	// Output:
	// 0.05 mm as new
	// 0.09 mm usable
	// 0.12 mm past the wear limit
	// [0.09 mm, 0.12 mm) can't tell
	// 0.02 mm outside the new-part band
}

func ExampleSpecOf_StandAll() {
	front, rear := tolerance.Exactly(50*units.Micrometre), tolerance.Exactly(90*units.Micrometre)
	fmt.Println(sideClearanceSpec().StandAll(front, rear))
	// Output: usable
}

func ExampleSpecOf_IsZero() {
	fmt.Println(tolerance.Spec{}.IsZero(), sideClearanceSpec().IsZero())
	// Output: true false
}

// A slip in copying: the two limits can't both be right.
func ExampleSpecOf_Validate() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.30–0.70 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")}
	fmt.Println(spec.Validate())
	// Output: tolerance: the band for new parts, 0.3–0.7 mm, reaches past the wear limit, max 0.1 mm
}

func ExampleVerdict_String() {
	fmt.Println(tolerance.Undecided, tolerance.Within, tolerance.Below, tolerance.Above)
	// Output: undecided within below above
}

func ExampleStanding_String() {
	fmt.Println(tolerance.CantTell, tolerance.OutsideNewBand)
	// Output: can't tell outside the new-part band
}

func ExampleMating_String() {
	fmt.Println(tolerance.WithNewPart)
	// Output: with a new mating part
}

func ExampleParseError() {
	_, err := tolerance.ParseBand("0.03–0.07 furlong")
	var e *tolerance.ParseError
	if errors.As(err, &e) {
		fmt.Printf("byte %d of %q: %v\n", e.Offset, e.Input, e.Kind)
	}
	fmt.Println(errors.Is(err, units.ErrUnknownUnit))
	// Output:
	// byte 12 of "0.03–0.07 furlong": unknown unit
	// true
}
