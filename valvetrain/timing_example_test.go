package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// An inlet valve that opens 10° after top dead centre and closes 39° after bottom.
func ExampleTimingDuration() {
	fmt.Println(valvetrain.TimingDuration(-10*units.Degree, 39*units.Degree, units.Turn/2))
	// Output:
	// 209°
}

func ExampleTimingCentre() {
	fmt.Println(valvetrain.TimingCentre(-10*units.Degree, 39*units.Degree, units.Turn/2))
	// Output:
	// 114.5°
}

func ExampleTimingNear() {
	fmt.Println(valvetrain.TimingNear(209*units.Degree, units.MustParseAngle("114.5°")))
	// Output:
	// -10°
}

func ExampleTimingFar() {
	fmt.Println(valvetrain.TimingFar(209*units.Degree, units.MustParseAngle("114.5°"), units.Turn/2))
	// Output:
	// 39°
}

// Inlet opens 28° before, exhaust closes 45° after top dead centre (TM 9-8000).
func ExampleTimingOverlap() {
	fmt.Println(valvetrain.TimingOverlap(28*units.Degree, 45*units.Degree))
	// Output:
	// 73°
}

// In degrees of the camshaft.
func ExampleLobeSeparation() {
	fmt.Println(valvetrain.LobeSeparation(105*units.Degree, 110*units.Degree))
	// Output:
	// 107.5°
}

// In degrees of the crankshaft.
func ExampleTimingAdvance() {
	fmt.Println(valvetrain.TimingAdvance(105*units.Degree, 110*units.Degree))
	// Output:
	// 2.5°
}

func ExampleInletCentreFor() {
	fmt.Println(valvetrain.InletCentreFor(units.MustParseAngle("107.5°"), units.MustParseAngle("2.5°")))
	// Output:
	// 105°
}

func ExampleExhaustCentreFor() {
	fmt.Println(valvetrain.ExhaustCentreFor(units.MustParseAngle("107.5°"), units.MustParseAngle("2.5°")))
	// Output:
	// 110°
}

func ExampleCrankDegrees() {
	fmt.Println(valvetrain.CrankDegrees(units.MustParseAngle("107.5°")))
	// Output:
	// 215°
}

func ExampleCamDegrees() {
	fmt.Println(valvetrain.CamDegrees(240 * units.Degree))
	// Output:
	// 120°
}

func ExampleBladeLift() {
	fmt.Println(valvetrain.BladeLift(29*units.Thou, 4*units.Thou).Text(units.InInches, 3))
	// Output:
	// 0.025 in
}

func ExampleEventsOf() {
	at := valvetrain.TimingLift{Lift: 50 * units.Thou, Side: valvetrain.AtValve}
	e, err := valvetrain.EventsOf(valvetrain.InletValve, 209*units.Degree, units.MustParseAngle("114.5°"), at)
	fmt.Println(e.Opens, e.Closes, err)
	_, err = valvetrain.EventsOf(valvetrain.InletValve, 0, 0, at)
	fmt.Println(err)
	// Output:
	// -10° 39° <nil>
	// valvetrain: inlet duration 0° is not above 0° and below 720°; an event on the other side of its dead centre is below zero
}

// A negative opening is legal, and makes 209°, not 229°.
func ExampleValveEvents_Duration() {
	e := valvetrain.ValveEvents{Valve: valvetrain.InletValve, Opens: -10 * units.Degree, Closes: 39 * units.Degree}
	fmt.Println(e.Duration())
	// Output:
	// 209° <nil>
}

func ExampleValveEvents_Centre() {
	e := valvetrain.ValveEvents{Valve: valvetrain.ExhaustValve, Opens: 50 * units.Degree, Closes: 10 * units.Degree}
	fmt.Println(e.Centre())
	// Output:
	// 110° <nil>
}

func ExampleValveEvents_Advanced() {
	e := valvetrain.ValveEvents{Valve: valvetrain.InletValve, Opens: 10 * units.Degree, Closes: 40 * units.Degree}.Advanced(4 * units.Degree)
	fmt.Println(e.Opens, e.Closes)
	// Output:
	// 14° 36°
}

func ExampleCamTiming_Summary() {
	at := valvetrain.TimingLift{Lift: units.Millimetre, Side: valvetrain.AtValve}
	timing := valvetrain.CamTiming{
		Inlet:   valvetrain.ValveEvents{Valve: valvetrain.InletValve, Opens: 10 * units.Degree, Closes: 40 * units.Degree, At: at},
		Exhaust: valvetrain.ValveEvents{Valve: valvetrain.ExhaustValve, Opens: 50 * units.Degree, Closes: 10 * units.Degree, At: at},
	}
	s, _ := timing.Summary()
	fmt.Println("at", s.At)
	fmt.Println("durations", s.InletDuration, s.ExhaustDuration)
	fmt.Println("centres", s.InletCentre, s.ExhaustCentre)
	fmt.Println("overlap", s.Overlap)
	fmt.Println("separation", s.Separation, "of the camshaft, advance", s.Advance)
	// Output:
	// at 1 mm at the valve
	// durations 230° 240°
	// centres 105° 110°
	// overlap 20°
	// separation 107.5° of the camshaft, advance 2.5°
}

func ExampleCamSummary_Timing() {
	s := valvetrain.CamSummary{InletDuration: 230 * units.Degree, ExhaustDuration: 240 * units.Degree, Separation: units.MustParseAngle("107.5°"), Advance: units.MustParseAngle("2.5°")}
	timing, _ := s.Timing()
	fmt.Println(timing.Inlet.Opens, timing.Inlet.Closes, timing.Exhaust.Opens, timing.Exhaust.Closes)
	// Output:
	// 10° 40° 50° 10°
}

// A gear of 33 teeth on the crankshaft: "about 11°" in a manual.
func ExampleToothAngle() {
	tooth, _ := valvetrain.ToothAngle(33)
	fmt.Println(tooth.Text(units.InDegrees, 2))
	// Output:
	// 10.91°
}

// 17° out, with 18° to a tooth: one tooth, and 1° of something else.
func ExampleTeethFor() {
	teeth, left, _ := valvetrain.TeethFor(17*units.Degree, 20)
	fmt.Println(teeth, left)
	// Output:
	// 1 -1°
}

func ExampleTimingCheck_Inspect() {
	read := func(s string) tolerance.Interval[units.Angle] {
		i, err := tolerance.ParseInterval[units.Angle](s)
		if err != nil {
			panic(err)
		}
		return i
	}
	limits := func(s string) tolerance.SpecOf[units.Angle] {
		b, err := tolerance.ParseBandOf[units.Angle](s)
		if err != nil {
			panic(err)
		}
		return tolerance.SpecOf[units.Angle]{New: b}
	}
	check := valvetrain.TimingCheck{Where: "cylinder 1", Valve: valvetrain.InletValve, CrankTeeth: 20,
		Opens:  valvetrain.MeasuredEvent{Read: read("-8 ±0.5°"), Limits: limits("10 ±2°")},
		Closes: valvetrain.MeasuredEvent{Read: read("58 ±0.5°"), Limits: limits("40 ±2°")}}
	r, _ := check.Inspect()
	fmt.Println(r.Next)
	// Output:
	// both events together come 18.0° late: advance the camshaft; about a tooth or more, so check the marks of the drive first
}

// The stop is met at 15° before and 21° after the wheel's zero.
func ExampleStopCorrection() {
	fmt.Println(valvetrain.StopCorrection(15*units.Degree, 21*units.Degree))
	// Output:
	// 3°
}

func ExampleStopHalfSpan() {
	fmt.Println(valvetrain.StopHalfSpan(15*units.Degree, 21*units.Degree))
	// Output:
	// 18°
}

func ExampleStopBefore() {
	fmt.Println(valvetrain.StopBefore(18*units.Degree, 3*units.Degree))
	// Output:
	// 15°
}

func ExampleStopAfter() {
	fmt.Println(valvetrain.StopAfter(18*units.Degree, 3*units.Degree))
	// Output:
	// 21°
}

// A manual: 0.2032 in is 19° before top dead centre.
func ExamplePistonFall() {
	type f = tolerance.Float
	fmt.Printf("%.4f in\n", valvetrain.PistonFall(f(3), f(12), f((19*units.Degree).Radians())))
	// Output:
	// 0.2033 in
}

func ExampleFallAngle() {
	type f = tolerance.Float
	angle, _ := units.AngleFromRadians(float64(valvetrain.FallAngle(f(1.5), f(6), f(0.050))))
	fmt.Println(angle.Text(units.InDegrees, 3))
	// Output:
	// 13.278°
}

// A pin offset by 0.8 mm is of no account, a cylinder 10 mm beside the crankshaft of some.
func ExampleStopSkew() {
	type f = tolerance.Float
	half := f(units.MustParseAngle("18.9°").Radians())
	for _, offset := range []f{0.8, 10} {
		skew, _ := units.AngleFromRadians(float64(valvetrain.StopSkew(43, 143.5, offset, half)))
		fmt.Println(skew.Text(units.InDegrees, 4))
	}
	// Output:
	// 0.0040°
	// 0.0502°
}

func ExampleDeadCentre_Inspect() {
	read := func(s string) tolerance.Interval[units.Angle] {
		i, err := tolerance.ParseInterval[units.Angle](s)
		if err != nil {
			panic(err)
		}
		return i
	}
	r, _ := valvetrain.DeadCentre{Before: read("19 ±0.25°"), After: read("25 ±0.25°")}.Inspect()
	fmt.Println(r.Correction)
	fmt.Println(r.Next)
	// Output:
	// [2.75°, 3.25°]
	// true top dead centre is at 3.00° after the wheel's zero: shift wheel or pointer by that, until both sides read 22.00°, and try again
}

// The gudgeon pin at the contacts, 186.5 mm from the crankshaft at dead centre.
func ExampleStopPinDistance() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.StopPinDistance(f(43), f(143.5), f((18*units.Degree).Radians())))
	// Output: 183.779 mm
}

func ExampleStopSkewOf() {
	type f = tolerance.Float
	skew, _ := units.AngleFromRadians(float64(valvetrain.StopSkewOf(f(183.779), f(186.5), f(10))))
	fmt.Println(skew.Text(units.InDegrees, 3))
	// Output: 0.046°
}
