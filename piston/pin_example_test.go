package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

func ExamplePinClearance() {
	fmt.Println(piston.PinClearance(skirtLength("22.006 mm"), skirtLength("21.998 mm")))
	// The published limits of two mating parts, 0.005 to 0.038 mm.
	fmt.Println(piston.PinClearance(skirtBracket("[30.000 mm, 30.020 mm]"), skirtBracket("[29.982 mm, 29.995 mm]")))
	// Output:
	// 0.008 mm
	// [0.005 mm, 0.038 mm]
}

func ExamplePinInterference() {
	fmt.Println(piston.PinInterference(skirtLength("22.002 mm"), skirtLength("21.978 mm")))
	// Output: 0.024 mm
}

func ExamplePinHole() {
	fmt.Println(piston.PinHole(skirtLength("21.998 mm"), skirtLength("0.008 mm")))
	// Output: 22.006 mm
}

func ExamplePinSize() {
	fmt.Println(piston.PinSize(skirtLength("22.006 mm"), skirtLength("0.008 mm")))
	// Output: 21.998 mm
}

func ExamplePinClearanceWorn() {
	fmt.Println(piston.PinClearanceWorn(skirtLength("0.008 mm"), skirtLength("0.004 mm"), skirtLength("0.006 mm")))
	// Output: 0.018 mm
}

func ExamplePinWear() {
	fmt.Println(piston.PinWear(skirtLength("21.984 mm"), skirtLength("21.998 mm")))
	// Output: 0.014 mm
}

func ExamplePinNewSize() {
	fmt.Println(piston.PinNewSize(skirtLength("21.984 mm"), skirtLength("0.014 mm")))
	// Output: 21.998 mm
}

func ExamplePinHoleWear() {
	fmt.Println(piston.PinHoleWear(skirtLength("22.020 mm"), skirtLength("22.012 mm")))
	// Output: 0.008 mm
}

func ExamplePinHoleNewSize() {
	fmt.Println(piston.PinHoleNewSize(skirtLength("22.020 mm"), skirtLength("0.008 mm")))
	// Output: 22.012 mm
}

func ExamplePinOvality() {
	fmt.Println(piston.PinOvality(skirtLength("21.990 mm"), skirtLength("21.984 mm")))
	// Output: 0.006 mm
}

func ExamplePinTaper() {
	fmt.Println(piston.PinTaper(skirtLength("22.004 mm"), skirtLength("22.001 mm"), skirtLength("22.003 mm")))
	// Output: 0.003 mm
}

func ExamplePinEndFloat() {
	fmt.Println(piston.PinEndFloat(skirtLength("70.30 mm"), skirtLength("70.00 mm")))
	// Output: 0.3 mm
}

func ExamplePinLength() {
	fmt.Println(piston.PinLength(skirtLength("70.30 mm"), skirtLength("0.30 mm")))
	// Output: 70 mm
}

func ExamplePinBetween() {
	fmt.Println(piston.PinBetween(skirtLength("73.10 mm"), skirtLength("1.40 mm"), skirtLength("1.40 mm")))
	// Output: 70.3 mm
}

func ExamplePinCirclip() {
	fmt.Println(piston.PinCirclip(skirtLength("73.10 mm"), skirtLength("1.40 mm"), skirtLength("70.30 mm")))
	// Output: 1.4 mm
}

// A steel pin of 25 mm in a piston of alloy, both 100 K warmer.
func ExamplePinHotClearance() {
	type f = tolerance.Float
	fmt.Printf("%.5f mm\n", float64(piston.PinHotClearance(f(0), 25, 19.4e-6, 100, 11.7e-6, 100)))
	// Output: 0.01925 mm
}

func ExamplePinColdClearance() {
	type f = tolerance.Float
	fmt.Printf("%.5f mm\n", float64(piston.PinColdClearance(f(0.02), 25, 19.4e-6, 100, 11.7e-6, 100)))
	// Output: 0.00075 mm
}

func ExamplePinHoleRise() {
	type f = tolerance.Float
	fmt.Printf("%.1f K\n", float64(piston.PinHoleRise(f(0.03), -0.024, 22.002, 11.7e-6, 11.7e-6, 0)))
	// Output: 210.0 K
}

func ExamplePinRise() {
	type f = tolerance.Float
	fmt.Printf("%.1f K\n", float64(piston.PinRise(f(0.01), -0.024, 22.002, 11.7e-6, 60, 11.7e-6)))
	// Output: -72.1 K
}

// pressedPin is an invented pin pressed into a steel rod.
func pressedPin() piston.PinHeat {
	steel, _ := piston.MetalOf("carbon steel")
	return piston.PinHeat{Hole: skirtBracket("21.978 ±0.001 mm"), Pin: skirtBracket("22.002 ±0.001 mm"), MeasuredAt: units.Reference, HoleMetal: steel, PinMetal: steel}
}

// Never with a flame: an oven or an induction heater, and no hotter than the
// maker allows.
func ExamplePinHeat_HoleLeast() {
	h := pressedPin()
	t, err := h.HoleLeast(30*units.Micrometre, skirtTemperature("20 °C"))
	fmt.Println(t.Text(units.InCelsius, 1), err)
	// Output: 237.8 °C <nil>
}

func ExamplePinHeat_PinMost() {
	h := pressedPin()
	t, err := h.PinMost(10*units.Micrometre, skirtTemperature("150 °C"))
	fmt.Println(t.Text(units.InCelsius, 1), err)
	// Output: 10.0 °C <nil>
}

func ExamplePinHeat_ClearanceAt() {
	h := pressedPin()
	c, err := h.ClearanceAt(skirtTemperature("230 ±10 °C"), skirtTemperature("20 °C"))
	fmt.Println(c.Text(units.InMillimetres, 3), err)
	// Output: [0.025 mm, 0.035 mm] <nil>
}

func pinPiston() (piston.PinSurvey, piston.PinLimits) {
	s := piston.PinSurvey{Where: "piston 3", Fit: piston.PinFloating,
		AtBosses:   []piston.PinSection{{Where: "front boss", Sizes: []tolerance.Bracket{skirtBracket("21.994 ±0.001 mm"), skirtBracket("21.992 ±0.001 mm")}}},
		AtSmallEnd: []piston.PinSection{{Where: "middle", Sizes: []tolerance.Bracket{skirtBracket("21.990 ±0.001 mm"), skirtBracket("21.984 ±0.001 mm")}}},
		Bosses:     []piston.PinSection{{Where: "front boss", Sizes: []tolerance.Bracket{skirtBracket("22.004 ±0.001 mm"), skirtBracket("22.006 ±0.001 mm")}}},
		Between:    skirtBracket("70.30 ±0.02 mm"), Length: skirtBracket("70.00 ±0.01 mm")}
	l := piston.PinLimits{Ovality: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.005 mm")}, BossClearance: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.03 mm")},
		EndFloat: tolerance.Spec{New: tolerance.MustParseBand("0.1–0.5 mm")}}
	return s, l
}

func ExamplePinSurvey_Inspect() {
	s, l := pinPiston()
	results, err := s.Inspect(nil, &l)
	for _, r := range results {
		if r.Limited {
			fmt.Println(r.Measure, r.Greatest, r.Standing)
		}
	}
	fmt.Println(piston.PinWorst(results), err)
	// Output:
	// pin ovality [0.004 mm, 0.008 mm] can't tell
	// pin clearance in the bosses [0.012 mm, 0.016 mm] usable
	// pin end float [0.27 mm, 0.33 mm] as new
	// can't tell <nil>
}

func ExampleInspectPins() {
	s, l := pinPiston()
	results, err := piston.InspectPins(nil, []piston.PinSurvey{s, s}, &l)
	fmt.Println(len(results), results[len(results)-1].Piston, err)
	// Output: 12 1 <nil>
}

func ExamplePinWorst() {
	fmt.Println(piston.PinWorst([]piston.PinResult{{Limited: true, Standing: tolerance.PastWearLimit}, {Limited: true}}))
	// Output: past the wear limit
}

func ExamplePinSurvey_Finding() {
	s, l := pinPiston()
	results, _ := s.Inspect(nil, &l)
	f, err := s.Finding(&l, results[1])
	fmt.Println(f.Where+":", f.Measure, f.Standing, err)
	// Output: piston 3, middle: pin ovality can't tell <nil>
}

func ExamplePinResult_Fit() {
	s, l := pinPiston()
	results, _ := s.Inspect(nil, &l)
	for _, r := range results {
		if r.Measure == piston.PinMeasureBossClearance {
			fmt.Println(r.Fit())
		}
	}
	// Output: clearance
}

func ExamplePinLimits_Spec() {
	_, l := pinPiston()
	fmt.Println(l.Spec(piston.PinMeasureEndFloat).New)
	// Output: 0.1–0.5 mm
}

func ExamplePinLimits_Validate() {
	_, l := pinPiston()
	fmt.Println(l.Validate())
	// Output: <nil>
}

func ExamplePinMeasure_String() {
	fmt.Println(piston.PinMeasureEndFloat)
	// Output: pin end float
}

func ExamplePinFit_String() {
	fmt.Println(piston.PinPressed)
	// Output: pressed
}

// pinGrades are invented: the colours are whatever a maker paints.
func pinGrades() piston.PinGrades {
	pins, _ := selective.ParseGrades("white: 21.994–21.997 mm\nblack: more than 21.997 mm, max 22.000 mm")
	bosses, _ := selective.ParseGrades("white: 22.002–22.005 mm\nblack: more than 22.005 mm, max 22.008 mm")
	return piston.PinGrades{Pins: pins, Bosses: bosses, Wanted: tolerance.MustParseBand("0.005–0.011 mm")}
}

func ExamplePinGrades_Fits() {
	fits, err := pinGrades().Fits()
	for _, f := range fits {
		fmt.Println(f.Boss, "with", f.Pin, f.Clearance, f.Verdict)
	}
	fmt.Println(err)
	// Output:
	// white with white 0.005–0.011 mm within
	// black with black more than 0.005 mm, less than 0.011 mm within
	// <nil>
}

func ExamplePinGrades_Select() {
	s, err := pinGrades().Select(skirtBracket("22.004 ±0.0005 mm"), skirtBracket("21.999 ±0.0005 mm"))
	fmt.Println("boss", s.Boss, "pin", s.Pin, "which", s.Match, "clearance", s.Clearance, s.Verdict, err)
	// Output: boss white pin black which does not go with it clearance [0.004 mm, 0.006 mm] undecided <nil>
}

func ExampleChoosePin() {
	wanted, _ := selective.Middle(tolerance.MustParseBand("0.006–0.010 mm"))
	c, err := piston.ChoosePin(skirtBracket("22.006 mm"), []selective.Class{
		{Name: "white", Size: skirtBracket("21.995 mm"), Stock: 2}, {Name: "black", Size: skirtBracket("21.999 mm"), Stock: 1},
	}, wanted)
	best, ok := c.Best()
	fmt.Println(best.Name, best.Fit, ok, err)
	// Output: black 0.007 mm true <nil>
}

func ExamplePinMatch_String() {
	fmt.Println(piston.PinMismatch)
	// Output: does not go with it
}
