package piston_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
)

// The blades name what would settle it, and the report what a new ring would
// do meanwhile.
func ExampleGroove_Report() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(".0015 in free, .003 in refused")
	if err != nil {
		fmt.Println(err)
		return
	}
	check := feeler.Check{Measure: "ring side clearance", Where: "piston 2, top groove", Spec: spec, Set: set}
	station := feeler.Station{Where: "thrust side", Trials: trials}
	reading, err := check.Read(station)
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, err := check.Assess(station)
	if err != nil {
		fmt.Println(err)
		return
	}
	g := piston.Groove{Where: check.Where, Stations: []tolerance.Bracket{reading.Bracket}, Limits: spec}
	r, err := g.Report(finding)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Remedy)
	fmt.Println(r.Next)
	fmt.Println(r.NewRing.Settle)
	// Output:
	// measure again
	// not a pass; to settle it, thrust side: try .0025 in / 0.064 mm (settled if it does not go in)
	// measure the used ring's height
}

// A groove is read from JSON, and its report written.
func ExampleGroove_json() {
	var g piston.Groove
	err := json.Unmarshal([]byte(`{
		"where": "piston 3, top groove",
		"stations": ["[0.0762 mm, 0.1016 mm)"],
		"limits": {"new": "0.03–0.07 mm", "wear": "max 0.07 mm"},
		"usedHeight": "1.446 mm",
		"newHeight": "1.478–1.490 mm"
	}`), &g)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := g.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.MarshalIndent(r.NewRing, "", "  ")
	fmt.Println(r.Finding.Standing, err)
	fmt.Println(string(text))
	// Output:
	// past the wear limit <nil>
	// {
	//   "outcome": "back in band",
	//   "least": "[0.0322 mm, 0.0696 mm)",
	//   "greatest": "[0.0322 mm, 0.0696 mm)",
	//   "heights": "[1.4776 mm, 1.4922 mm]",
	//   "heightsKnown": true,
	//   "possible": "[1.4522 mm, 1.5176 mm)"
	// }
}

func ExampleRemedy_String() {
	for _, r := range []piston.Remedy{piston.MeasureAgain, piston.FitNewRing, piston.RenewGroove} {
		fmt.Println(r)
	}
	// Output:
	// measure again
	// fit a new ring
	// re-cut the groove with a spacer, or renew the piston
}

func ExampleOutcome_String() {
	fmt.Println(piston.RingRestores)
	fmt.Println(piston.RingStillOut)
	// Output:
	// back in band
	// still too large
}

func ExampleRingKind_UnmarshalText() {
	var k piston.RingKind
	fmt.Println(k.UnmarshalText([]byte("oil ring")), k == piston.OilRing)
	fmt.Println(k.UnmarshalText([]byte("scraper")))
	// Output:
	// <nil> true
	// piston: ring "scraper" is not one of "compression ring", "oil ring"
}

func ExampleInputError() {
	g := piston.Groove{Where: "piston 1, top groove", Limits: tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}}
	g.Stations = []tolerance.Bracket{tolerance.MustParseBand("0.04–0.05 mm").Interval()}
	g.UsedHeight = tolerance.MustParseBand("-1.49–1.48 mm").Interval()
	_, err := g.Assess()
	fmt.Println(err)
	// Output: piston: used ring height [-1.49 mm, 1.48 mm] is not above 0 mm
}
