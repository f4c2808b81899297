package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance/inspection"

	"github.com/tenthou/tenthou/valvetrain"
)

// smallLimits is a single-cylinder engine with one valve of each kind.
const smallLimits = `{
  "schema": 1, "cylinders": 1,
  "inlet": {
    "each": 1,
    "valve": {"stations": ["top", "bottom"], "oneWay": true,
      "stem": {"new": "6.97–6.98 mm", "wear": "min 6.94 mm"},
      "margin": {"new": "1.0–1.4 mm", "wear": "min 0.6 mm"}, "with": "micrometer"},
    "clearance": {"limit": {"new": "0.08–0.12 mm"}, "at": "cold", "set": "shim"}
  },
  "shims": {"series": {"from": "2.00 mm", "to": "3.00 mm", "step": "0.05 mm"}}
}`

const smallReadings = `{
  "schema": 1,
  "valves": [{"place": "inlet 1", "stem": [{"across": "6.972 mm"}, {"across": "6.951 mm"}], "margin": ""}],
  "clearances": [{"place": "inlet 1", "clearance": "[0.05 mm, 0.06 mm)", "shim": "2.50 mm"}]
}`

// A stem within its limits, a margin nobody has read yet, and a clearance that a
// thinner shim puts right.
func ExampleInspect() {
	limits, err := valvetrain.ReadLimits("engine.json", []byte(smallLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	readings, err := valvetrain.ReadReadings("bench.json", []byte(smallReadings))
	if err != nil {
		fmt.Println(err)
		return
	}
	report, err := valvetrain.Inspect(&limits, &readings)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range report.Decisions {
		fmt.Printf("%s, %s: %s (%s)\n", d.Part, d.Where, d.Action, d.Size)
		if d.Settle != "" {
			fmt.Println(" ", d.Settle)
		}
	}
	for _, m := range report.Missing {
		fmt.Println("still to read:", m.Path, "-", m.Limit)
	}
	for _, o := range report.Orders {
		fmt.Println("to buy:", o.Text())
	}
	fmt.Println("then:", report.Predicted[0])
	// Output:
	// valve, inlet 1: measure again ()
	//   take valve margin
	// valve clearance, inlet 1: recondition to size (2.45 mm, to buy)
	// still to read: valves[0].margin - 1.0–1.4 mm; wear limit min 0.6 mm
	// to buy: valve shim, 2.45 mm (inlet 1): not yet, a decision is open
	// then: inlet 1: valve clearance, cold [0.1 mm, 0.11 mm), new 0.08–0.12 mm: within the band for new parts
}

// A field that no document of limits has is refused with its line.
func ExampleReadLimits() {
	_, err := valvetrain.ReadLimits("engine.json", []byte("{\"schema\": 1, \"cylinders\": 4,\n \"inlet\": {\"each\": 2,\n  \"valve\": {\"margn\": {\"wear\": \"min 0.6 mm\"}}}}"))
	fmt.Println(err)
	// Output: engine.json:3: inlet.valve.margn: unknown field; did you mean "margin"?
}

// A valve that was bedded into one seat stands at another's.
func ExampleReadReadings() {
	_, err := valvetrain.ReadReadings("bench.json", []byte("{\"schema\": 1, \"valves\": [\n {\"place\": \"inlet 1\", \"mark\": \"inlet 1\"},\n {\"place\": \"inlet 2\", \"mark\": \"inlet 3\"}]}"))
	fmt.Println(err)
	// Output: bench.json:3: valves[1].mark: inspection: the valve marked "inlet 3" stands at inlet 2, where "inlet 2" belongs: matched parts keep their place
}

func ExampleLimits_Validate() {
	l := valvetrain.Limits{Schema: 1, Cylinders: 4, Inlet: &valvetrain.LimitsPlace{Each: 9}}
	fmt.Println(l.Validate())
	// Output: inlet.each: valvetrain: valves in a cylinder 9 is not from 1 to 4
}

func ExampleReadings_Validate() {
	at := valvetrain.ValvePlace{Number: 2}
	r := valvetrain.Readings{Schema: 1, Seats: []valvetrain.ReadingsSeat{{Place: at}, {Place: at}}}
	fmt.Println(r.Validate())
	// Output: seats[1].place: valvetrain: place inlet 2 is not listed once: it stands at seats[0] already
}

// The bench sheet of an engine: what is to be measured, in measuring order.
func ExampleLimits_Blank() {
	limits, err := valvetrain.ReadLimits("engine.json", []byte(smallLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	blank := limits.Blank()
	report, err := valvetrain.Inspect(&limits, &blank)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range report.Missing {
		fmt.Printf("%s: %s, %s: %s\n", m.Step, m.Where, m.Measure, m.Limit)
	}
	// Output:
	// valves: inlet 1, top, stem diameter: 6.97–6.98 mm; wear limit min 6.94 mm
	// valves: inlet 1, bottom, stem diameter: 6.97–6.98 mm; wear limit min 6.94 mm
	// valves: inlet 1, valve margin: 1.0–1.4 mm; wear limit min 0.6 mm
	// timing and valve clearance: inlet 1, valve clearance, cold: 0.08–0.12 mm
	// timing and valve clearance: inlet 1, shim in place:
}

// Limits made ready once for many engines.
func ExampleLimits_Prepare() {
	limits, err := valvetrain.ReadLimits("engine.json", []byte(smallLimits))
	if err != nil {
		fmt.Println(err)
		return
	}
	inspector := limits.Prepare()
	for _, cracked := range []inspection.State{inspection.No, inspection.Yes} {
		readings := limits.Blank()
		readings.Valves[0].Condition.Cracked = cracked
		report, err := inspector.Inspect(&readings)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(report.Decisions[0].Action, "-", report.Decisions[0].Because)
	}
	// Output:
	// measure again - 3 readings are still to be taken
	// replace - cracked: that decides, whatever it measures
}

func ExampleInspector_Inspect() {
	limits := valvetrain.Limits{Schema: 1}
	_, err := limits.Prepare().Inspect(&valvetrain.Readings{Schema: 1})
	fmt.Println(err)
	// Output: cylinders: valvetrain: number of cylinders 0 is not from 1 to 24
}

func ExampleValvePlace_UnmarshalText() {
	var p valvetrain.ValvePlace
	fmt.Println(p.UnmarshalText([]byte("exhaust 3")), p.Exhaust, p.Number)
	fmt.Println(p.UnmarshalText([]byte("outlet 3")))
	// Output:
	// <nil> true 3
	// valvetrain: place of a valve "outlet 3" is not "inlet" or "exhaust" and a number from 1: "inlet 3"
}
