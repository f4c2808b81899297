package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

const exampleLimits = `{
  "schema": 1, "pistons": 2, "arrow": "front", "blades": "imperial 26",
  "skirt": {"heights": ["18 mm"], "measuringHeight": "18 mm", "size": {"wear": "min 85.93 mm"}, "error": "0.002 mm"},
  "rings": [{"name": "top", "sideClearance": {"new": "0.03–0.07 mm", "wear": "max 0.15 mm"}}],
  "care": {"crackTest": true}
}`

const exampleReadings = `{
  "schema": 1,
  "pistons": [
    {"piston": 1, "mark": "1", "arrow": "front", "condition": {"crackTested": "yes", "cracked": "no"},
     "skirt": [{"across": "85.964 mm"}],
     "rings": [{"sideClearance": [{"tried": ".002 in drag, .0025 in refused"}]}]},
    {"piston": 2, "mark": "2", "arrow": "front", "condition": {"crackTested": "yes", "cracked": "no"},
     "skirt": [{"across": "85.921 mm"}],
     "rings": [{"sideClearance": [{"tried": ""}]}]}
  ]
}`

// Two pistons: one to be cleaned and used again, the other past its wear limit.
func ExampleInspect() {
	limits, err := piston.ReadLimits("limits.json", []byte(exampleLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	readings, err := piston.ReadReadings("readings.json", []byte(exampleReadings))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := piston.Inspect(&limits, &readings)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range report.Decisions {
		fmt.Printf("%s: %s\n", d.Where, d.Action)
	}
	for _, o := range report.Orders {
		fmt.Println(o.Count, o.Text())
	}
	for _, m := range report.Missing {
		fmt.Println("still to be measured:", m.Measure, "-", m.Where, "-", m.Limit)
	}
	// Output:
	// piston 1: clean and re-use
	// piston 2: replace
	// piston 1, top ring: re-use
	// piston 2, top ring: replace
	// 1 pistons with rings, the size that is fitted (piston 2)
	// still to be measured: ring side clearance - piston 2, top ring - new 0.03–0.07 mm; wear limit max 0.15 mm
}

// A length without its unit is refused, with the line and the place.
func ExampleReadLimits() {
	_, err := piston.ReadLimits("limits.json", []byte(`{
  "schema": 1,
  "pistons": 4,
  "skirt": {"heights": ["18 mm"], "measuringHeight": "18"}
}`))
	fmt.Println(err)
	// Output:
	// limits.json:4: skirt.measuringHeight: units: length "18", at byte 2: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
}

func ExampleReadReadings() {
	_, err := piston.ReadReadings("readings.json", []byte(`{
  "schema": 1,
  "pistons": [
    {"piston": 3},
    {"piston": 3}
  ]
}`))
	fmt.Println(err)
	// Output:
	// readings.json:5: pistons[1].piston: piston: piston 3 is not another number than that of pistons[0]: two can't have one
}

// The blank bench sheet: what to measure, in the order of measuring.
func ExampleLimits_Blank() {
	limits, err := piston.ReadLimits("limits.json", []byte(exampleLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	blank := limits.Blank()
	report, err := piston.Inspect(&limits, &blank)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range report.Missing[:3] {
		fmt.Printf("%s | %s | %s | %s\n", m.Path, m.Measure, m.Where, m.With)
	}
	// Output:
	// pistons[0].condition.crackTested | crack test | piston 1 | dye or magnetic particles
	// pistons[0].skirt[0].across | skirt | piston 1, 18 mm up the skirt, across the thrust faces | outside micrometer
	// pistons[1].condition.crackTested | crack test | piston 2 | dye or magnetic particles
}

// A piston put back the wrong way round.
func ExampleInspector_Inspect() {
	limits, err := piston.ReadLimits("limits.json", []byte(exampleLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	inspector := limits.Prepare() // for as many engines as there are
	_, err = inspector.Inspect(&piston.Readings{Schema: 1, Pistons: []piston.ReadingsPiston{{Piston: 2, Mark: "2", Arrow: "rear"}}})
	fmt.Println(err)
	report, err := inspector.Inspect(&piston.Readings{Schema: 1, Pistons: []piston.ReadingsPiston{
		{Piston: 1, Condition: inspection.Condition{CrackTested: inspection.Yes, Cracked: inspection.Yes}},
	}})
	fmt.Println(report.Decisions[0].Action, err)
	// Output:
	// pistons[0].arrow: inspection: the piston, by its arrow, marked "rear" stands at cylinder 2, where "front" belongs: matched parts keep their place
	// replace <nil>
}
