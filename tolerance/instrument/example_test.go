package instrument_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

func ExampleZeroError() {
	rod, reads := units.MustParseLength("25 mm"), units.MustParseLength("25.002 mm")
	fmt.Println(instrument.ZeroError(reads, rod))
	// Output: 0.002 mm
}

func ExampleWithoutZeroError() {
	reading, zero := units.MustParseLength("54.957 mm"), units.MustParseLength("0.002 mm")
	fmt.Println(instrument.WithoutZeroError(reading, zero))
	// Output: 54.955 mm
}

func ExampleFromSetting() {
	ring, _ := tolerance.ParseBracket("86.000 ±0.002 mm")
	dial, _ := tolerance.ParseBracket("0.030 ±0.001 mm")
	fmt.Println(instrument.FromSetting(ring, dial))
	// Output: [86.027 mm, 86.033 mm]
}

func ExampleAtReference() {
	// A dial bore gauge set to 0 on an 86 mm steel ring at 20 °C shows 0.035 mm
	// in an aluminium bore at 35 °C.
	bore := instrument.Expansion[tolerance.Float](23.6e-6, 15)
	size := instrument.AtReference(0.035, 0, 86, 0, 0, bore)
	fmt.Printf("%.4f mm\n", float64(size))
	// Output: 86.0046 mm
}

func ExampleExpansion() {
	e := instrument.Expansion[tolerance.Float](11.5e-6, 10)
	fmt.Printf("%.6f\n", float64(e))
	// Output: 0.000115
}

func ExampleGrowth() {
	// A 25 mm pin of steel, 100 K warmer.
	fmt.Printf("%.5f mm\n", float64(instrument.Growth[tolerance.Float](25, 11.7e-6, 100)))
	// Output: 0.02925 mm
}

func ExampleClearanceGrowth() {
	// An iron bore of 100 mm rises by 80 K, its aluminium piston by 200 K.
	g := instrument.ClearanceGrowth[tolerance.Float](100, 10.8e-6, 80, 19.4e-6, 200)
	fmt.Printf("%.4f mm\n", float64(g))
	// Output: -0.3016 mm
}

func ExampleAt() {
	journal := instrument.At(units.MustParseTemperature("77 °F"), units.Kelvin, 11.5e-6, 0.5e-6)
	fmt.Println(journal.Above)
	// Output: 5 K
}

func ExampleThermal_SizeAt() {
	piston := instrument.At(units.MustParseTemperature("220 °C"), 0, 19.4e-6, 0)
	hot, err := piston.SizeAt(units.MustParseLength("85.95 mm"))
	fmt.Println(hot.Text(units.InMillimetres, 3), err)
	// Output: [86.283 mm, 86.284 mm] <nil>
}

func ExampleInstrument_Reading() {
	micrometer := instrument.Instrument{
		Name:  "micrometer 2",
		Range: tolerance.MustParseBand("50–75 mm"),
		Step:  units.MustParseLength("0.001 mm"),
		Error: units.MustParseLength("0.002 mm"),
		Setting: instrument.Setting{
			Standard: units.MustParseLength("50 mm"),
			Error:    units.MustParseLength("0.0005 mm"),
			Reading:  units.MustParseLength("50.002 mm"),
		},
	}
	c, err := micrometer.Reading(units.MustParseLength("54.957 mm"), instrument.Thermal{})
	fmt.Println("zero error", micrometer.ZeroError())
	fmt.Println(c.Size, "within", c.Bracket, err)
	_, err = micrometer.Reading(units.MustParseLength("5.4957 mm"), instrument.Thermal{})
	fmt.Println(err)
	// Output:
	// zero error 0.002 mm
	// 54.955 mm within [54.9515 mm, 54.9585 mm] <nil>
	// instrument: "micrometer 2", reading 5.4957 mm: between two steps; a whole number of steps of 0.001 mm
}

// One bore, read with one setting at two depths. The ring's error is in both
// sizes; subtracting the brackets would count it twice in the taper, where it is
// not at all.
func ExampleSet_Difference() {
	gauge := instrument.Instrument{
		Name:    "bore gauge",
		Step:    units.MustParseLength("0.001 mm"),
		Error:   units.MustParseLength("0.001 mm"),
		Setting: instrument.Setting{Standard: units.MustParseLength("86 mm"), Error: units.MustParseLength("0.002 mm")},
	}
	s, err := gauge.Set(instrument.Thermal{}, units.MustParseLength("0.042 mm"), units.MustParseLength("0.018 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	top, _ := s.Size(0)
	bottom, _ := s.Size(1)
	taper, err := s.Difference(0, 1)
	fmt.Println("top", top.Bracket, "bottom", bottom.Bracket)
	fmt.Println("taper", taper, err)
	fmt.Println("brackets subtracted", top.Bracket.Sub(bottom.Bracket))
	limit := tolerance.MustParseBand("max 0.03 mm")
	fmt.Println(limit.Judge(taper), "but", limit.Judge(top.Bracket.Sub(bottom.Bracket)))
	// Output:
	// top [86.038 mm, 86.046 mm] bottom [86.014 mm, 86.022 mm]
	// taper [0.021 mm, 0.027 mm] <nil>
	// brackets subtracted [0.016 mm, 0.032 mm]
	// within but undecided
}

func ExampleSet_Spread() {
	gauge := instrument.Instrument{
		Step:    units.MustParseLength("0.0001 in"),
		Setting: instrument.Setting{Standard: units.MustParseLength("3.385 in"), Error: units.MustParseLength("0.0001 in")},
	}
	var readings []units.Length
	for _, s := range []string{"0.0012 in", "0.0019 in", "0.0015 in", "0.0017 in"} {
		readings = append(readings, units.MustParseLength(s))
	}
	s, _ := gauge.Set(instrument.Thermal{}, readings...)
	out, err := s.Spread()
	fmt.Println("out-of-round", out.Text(units.InInches, 4), err)
	// Output: out-of-round [0.0006 in, 0.0008 in] <nil>
}

func ExampleGraduation_Step() {
	metric := instrument.Graduation{Main: units.MustParseLength("0.5 mm"), Divide: []int{50}}
	inch := instrument.Graduation{Main: units.MustParseLength("0.025 in"), Divide: []int{25, 10}}
	a, _ := metric.Step()
	b, err := inch.Step()
	fmt.Println(a, b.Text(units.InInches, 4), err)
	// Output: 0.01 mm 0.0001 in <nil>
}

func ExampleGraduation_Reading() {
	// 17 lines of .025 in on the sleeve, 22 on the thimble, 6 on the vernier.
	inch := instrument.Graduation{Main: units.MustParseLength("0.025 in"), Divide: []int{25, 10}}
	x, err := inch.Reading(17, 22, 6)
	fmt.Println(x.Text(units.InInches, 4), err)
	_, err = inch.Reading(17, 25, 6)
	fmt.Println(err)
	// Output:
	// 0.4476 in <nil>
	// instrument: count of scale 2 25: not a graduation; from 0 to 24
}

func ExampleGraduation_Counts() {
	metric := instrument.Graduation{Main: units.MustParseLength("0.5 mm"), Divide: []int{50}}
	fmt.Println(metric.Counts(units.MustParseLength("22.36 mm")))
	// Output: [44 36] <nil>
}
