package cylinder_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// An invented twin: two bores, gauged at two levels.
const (
	twinLimits = `{
  "schema": 1,
  "cylinders": 2,
  "bores": {
    "standard": "86 mm",
    "levels": [{"name": "top", "depth": "10 mm"}, {"name": "bottom", "depth": "110 mm"}],
    "gauge": {"name": "inside micrometer", "error": "0.003 mm"},
    "size": {"new": "86.000–86.020 mm", "newAlso": "3.3858–3.3866 in", "wear": "max 86.100 mm"},
    "kits": [{"name": "+0.50 mm", "oversize": "0.50 mm"}],
    "plan": {"cut": "0.01 mm", "honing": "0.05 mm"}
  }
}`
	twinReadings = `{
  "schema": 1,
  "cylinders": [
    {"cylinder": 1, "levels": [{"along": "86.020 mm", "across": "86.041 mm"}, {"along": "86.012 mm", "across": "86.015 mm"}]},
    {"cylinder": 2, "levels": [{"along": "86.052 mm", "across": "86.118 mm"}, {"along": "86.013 mm", "across": "86.017 mm"}]}
  ]
}`
)

func ExampleInspect() {
	limits, err := cylinder.ReadLimits("limits.json", []byte(twinLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	readings, err := cylinder.ReadReadings("readings.json", []byte(twinReadings))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := cylinder.Inspect(&limits, &readings)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range report.Findings {
		fmt.Println(f)
	}
	for _, d := range report.Decisions {
		if d.Where == "" {
			fmt.Printf("%s: %v, %s; %s governs\n", d.Part, d.Action, d.Size, d.Governs)
		}
	}
	for _, o := range report.Orders {
		fmt.Println("order", o.Text())
	}
	// Output:
	// cylinder 1: bore size least [86.009 mm, 86.015 mm], greatest [86.038 mm, 86.044 mm], new 86–86.02 mm, wear limit max 86.1 mm: within the wear limit, outside the band for new parts
	// cylinder 2: bore size least [86.01 mm, 86.016 mm], greatest [86.115 mm, 86.121 mm], new 86–86.02 mm, wear limit max 86.1 mm: too large: past the wear limit
	// cylinder bores: recondition to size, +0.50 mm: 86.5 mm nominal; cylinder 2 governs
	// order pistons with rings, +0.50 mm (cylinder 1, cylinder 2)
}

func ExampleReadLimits() {
	_, err := cylinder.ReadLimits("limits.json", []byte(`{
  "schema": 1,
  "cylinders": 4,
  "bores": {
    "standard": "86",
    "levels": []
  }
}`))
	fmt.Println(err)
	// Output: limits.json:5: bores.standard: units: length "86", at byte 2: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
}

func ExampleReadReadings() {
	_, err := cylinder.ReadReadings("readings.json", []byte(`{
  "schema": 1,
  "cylinders": [
    {"cylinder": 1},
    {"cylinder": 1}
  ]
}`))
	fmt.Println(err)
	// Output: readings.json:5: cylinders[1].cylinder: cylinder: cylinder 1 is not another number than that of cylinders[0]: two can't have one
}

func ExampleLimits_Validate() {
	l := cylinder.Limits{Schema: 1, Cylinders: 4, Banks: [][]int{{1, 3}, {2, 3}}}
	fmt.Println(l.Validate())
	// Output: banks[1][1]: cylinder: cylinder 3 is not one from 1 to 4 that stands in no other place
}

func ExampleReadings_Validate() {
	r := cylinder.Readings{Schema: 1, Mains: []cylinder.ReadingsMain{{Main: 0}}}
	err := r.Validate()
	var at *inspection.PathError
	fmt.Println(errors.As(err, &at), at.Path)
	// Output: true mains[0].main
}

// A blank document inspected is the bench sheet; encoded, it is the file.
func ExampleLimits_Blank() {
	limits, _ := cylinder.ReadLimits("limits.json", []byte(twinLimits))
	blank := limits.Blank()
	report, _ := cylinder.Inspect(&limits, &blank)
	for _, m := range report.Missing[:3] {
		fmt.Printf("%s, %s (%s): %s\n  %s\n", m.Measure, m.Where, m.With, m.Limit, m.Path)
	}
	text, _ := json.Marshal(blank)
	fmt.Println(string(text))
	// Output:
	// bore, cylinder 1, top, along the crank (inside micrometer): new 86.000–86.020 mm (3.3858–3.3866 in); wear limit max 86.100 mm
	//   cylinders[0].levels[0].along
	// bore, cylinder 1, top, across the crank (inside micrometer): new 86.000–86.020 mm (3.3858–3.3866 in); wear limit max 86.100 mm
	//   cylinders[0].levels[0].across
	// bore, cylinder 1, bottom, along the crank (inside micrometer): new 86.000–86.020 mm (3.3858–3.3866 in); wear limit max 86.100 mm
	//   cylinders[0].levels[1].along
	// {"schema":1,"cylinders":[{"cylinder":1,"levels":[{},{}]},{"cylinder":2,"levels":[{},{}]}]}
}

// One Inspector serves many engines of a kind.
func ExampleLimits_Prepare() {
	limits, _ := cylinder.ReadLimits("limits.json", []byte(twinLimits))
	inspector := limits.Prepare()
	for _, engine := range []string{twinReadings, `{"schema": 1}`} {
		readings, _ := cylinder.ReadReadings("engine", []byte(engine))
		report, err := inspector.Inspect(&readings)
		fmt.Println(len(report.Findings), "findings,", len(report.Missing), "readings missing,", err)
	}
	// Output:
	// 2 findings, 0 readings missing, <nil>
	// 0 findings, 8 readings missing, <nil>
}

func ExampleInspector_Inspect() {
	limits := cylinder.Limits{Schema: 1, Cylinders: 1, Block: &cylinder.LimitsBlock{Care: inspection.Care{CrackTest: true}}}
	readings := cylinder.Readings{Schema: 1, Block: cylinder.ReadingsBlock{Condition: inspection.Condition{Cracked: inspection.No}}}
	report, _ := limits.Prepare().Inspect(&readings)
	fmt.Println(report.Decisions[0].Action)
	fmt.Println(report.Decisions[0].Settle)
	// Output:
	// measure again
	// a crack test, which the limits ask for and no one has written down
}

// What the bores will be is what piston clearances and ring gaps follow from.
func ExampleInspector_Outcome() {
	limits, _ := cylinder.ReadLimits("limits.json", []byte(twinLimits))
	readings, _ := cylinder.ReadReadings("readings.json", []byte(twinReadings))
	_, outcome, _ := limits.Prepare().Outcome(&readings)
	for _, b := range outcome.Bores {
		fmt.Println(b.Cylinder, b.Greatest, "becomes", b.GreatestAfter)
	}
	// Output:
	// 1 [86.038 mm, 86.044 mm] becomes [86.5 mm, 86.52 mm]
	// 2 [86.115 mm, 86.121 mm] becomes [86.5 mm, 86.52 mm]
}

func ExampleInspector_Slips() {
	limits, _ := cylinder.ReadLimits("limits.json", []byte(twinLimits))
	limits.Bores.Size.WearAlso, _ = tolerance.ParsePrinted("max 3.8988 in")
	for _, s := range limits.Prepare().Slips() {
		fmt.Println(s.Path)
	}
	// Output: limits.bores.size.wearAlso
}

func ExampleHatchAngle_String() {
	fmt.Println(cylinder.HatchIncluded, "or", cylinder.HatchAboutAxis)
	// Output: included or about the axis
}

func ExampleStepRule_String() {
	fmt.Println(cylinder.WorstStep, "or", cylinder.MeanStep)
	// Output: worst places or means
}
