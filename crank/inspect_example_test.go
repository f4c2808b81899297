package crank_test

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
)

const exampleLimits = `{
  "schema": 1,
  "layout": {"mains": 2, "planes": ["middle"], "mainDirections": ["0°", "90°"]},
  "shaft": {"care": {"crackTest": true}},
  "mains": {
    "size": {"new": "59.980–60.000 mm", "wear": "min 59.950 mm"},
    "outOfRound": {"new": "max 0.010 mm", "wear": "max 0.020 mm"},
    "shells": [
      {"name": "standard", "undersize": "0 mm"},
      {"name": "0.25 mm", "undersize": "0.25 mm", "journal": "59.735–59.750 mm"}
    ],
    "plan": {"stock": "0.01 mm"}
  },
  "thrust": {"endFloat": {"new": "0.10–0.25 mm", "wear": "max 0.35 mm"}}
}`

const exampleReadings = `{
  "schema": 1,
  "shaft": {"condition": {"cracked": "no", "crackTested": "yes"}},
  "mains": [
    {"number": 1, "planes": [{"sizes": ["59.988 mm", "59.986 mm"]}]},
    {"number": 2, "planes": [{"sizes": ["59.951 mm", "59.928 mm"]}]}
  ]
}`

// Two mains, of which one is worn out; the end float is still to be read.
func ExampleInspect() {
	limits, err := crank.ReadLimits("limits.json", []byte(exampleLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	readings, err := crank.ReadReadings("readings.json", []byte(exampleReadings))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := crank.Inspect(&limits, &readings)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range report.Decisions {
		fmt.Println(strings.TrimSpace(d.Part+" "+d.Where), "-", strings.TrimSpace(d.Action.String()+" "+d.Size))
	}
	for _, m := range report.Missing {
		fmt.Println("still to read:", m.Measure, "at", m.Path)
	}
	// Output:
	// main journals main 1 - re-use
	// main journals main 2 - recondition to size
	// main journals - recondition to size 0.25 mm undersize: 59.735–59.75 mm
	// crankshaft - recondition to size 0.25 mm undersize: 59.735–59.75 mm
	// still to read: end float at thrust.endFloat[0]
}

// A length without its unit is refused, with the place.
func ExampleReadLimits() {
	_, err := crank.ReadLimits("limits.json", []byte("{\"schema\": 1, \"layout\": {},\n\"instruments\": {\"dial\": \"0.002\"}}"))
	fmt.Println(err)
	_, err = crank.ReadLimits("limits.json", []byte("{\"schema\": 1, \"layout\": {\"mains\": 2, \"supports\": [2, 1]}}"))
	fmt.Println(err)
	// Output:
	// limits.json:2: instruments.dial: units: length "0.002", at byte 5: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
	// limits.json:1: layout.supports: crank: supports 2 numbers is not two of the mains, in order
}

// Two parts with one number.
func ExampleReadReadings() {
	_, err := crank.ReadReadings("readings.json", []byte("{\"schema\": 1, \"rods\": [\n{\"number\": 1},\n{\"number\": 1}]}"))
	fmt.Println(err)
	// Output: readings.json:3: rods[1].number: crank: number 1 is not one that no other part has
}

// The lines of a bench sheet.
func ExampleLimits_Blank() {
	limits, _ := crank.ReadLimits("limits.json", []byte(exampleLimits))
	blank := limits.Blank()
	report, _ := crank.Inspect(&limits, &blank)
	for _, m := range report.Missing[1:4] {
		fmt.Println(m.Where+":", m.Measure, "with", m.With, "-", m.Limit)
	}
	// Output:
	// main 1, middle, 0°: diameter with micrometer - 59.980–60.000 mm; wear limit min 59.950 mm
	// main 1, middle, 90°: diameter with micrometer - 59.980–60.000 mm; wear limit min 59.950 mm
	// main 2, middle, 0°: diameter with micrometer - 59.980–60.000 mm; wear limit min 59.950 mm
}

// Many shafts by one document of limits.
func ExampleLimits_Prepare() {
	limits, _ := crank.ReadLimits("limits.json", []byte(exampleLimits))
	inspector := limits.Prepare()
	for range 2 {
		readings, _ := crank.ReadReadings("readings.json", []byte(exampleReadings))
		report, err := inspector.Inspect(&readings)
		fmt.Println(len(report.Findings), err)
	}
	// Output:
	// 4 <nil>
	// 4 <nil>
}

func ExampleInspector_Inspect() {
	limits, _ := crank.ReadLimits("limits.json", []byte(exampleLimits))
	_, err := limits.Prepare().Inspect(&crank.Readings{Schema: 1, Mains: []crank.ReadingsJournal{{Number: 3}}})
	fmt.Println(err)
	// Output: mains[0].number: crank: number 3 is not one of the 2 that the limits have
}

func ExampleLimits_Validate() {
	l := crank.Limits{Schema: 1, Layout: crank.LimitsLayout{Rods: 4, Crankpins: 2}}
	fmt.Println(l.Validate())
	// Output: layout: crank: crankpins of the rods (not given) is not given in rodPins, since 4 rods are on 2 crankpins
}

func ExampleReadings_Validate() {
	r := crank.Readings{Schema: 1, Mains: []crank.ReadingsJournal{{Number: 0}}}
	fmt.Println(r.Validate())
	// Output: mains[0].number: crank: number 0 is not from 1 to 100
}
