package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func ExampleLiftTable_Curve() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	fmt.Println(curve.Side(), curve.Way(), err)
	table.Points[3].Angle = table.Points[2].Angle
	_, err = table.Curve()
	fmt.Println(err)
	// Output:
	// at the follower shape-preserving <nil>
	// valvetrain: angle of point 4 40° is not beyond that of the point before, 40°
}

func ExampleLiftCurve_Lift() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	lift, _ := curve.Lift(45 * units.Degree)
	fmt.Println(lift.Text(units.InMillimetres, 3))
	// Output:
	// 1.511 mm
}

func ExampleLiftCurve_Peak() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	peak, _ := curve.Peak()
	fmt.Println(peak.Angle, peak.Lift)
	// Output:
	// 100° 5 mm
}

func ExampleLiftCurve_AnglesAt() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	opening, closing, _ := curve.AnglesAt(units.Millimetre)
	fmt.Println(opening.Text(units.InDegrees, 2), closing.Text(units.InDegrees, 2))
	// Output:
	// 36.03° 163.97°
}

func ExampleLiftCurve_Duration() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	duration, _ := curve.Duration(units.MustParseLength("1.2 mm"))
	fmt.Println(duration)
	// Output:
	// 120°
}

func ExampleLiftCurve_MidOpen() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	middle, after, _ := curve.MidOpen(units.Millimetre)
	fmt.Println(middle, after)
	// Output:
	// 100° 0°
}

func ExampleLiftCurve_Events() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	e, _ := curve.Events(valvetrain.InletValve, units.MustParseLength("0.1 mm"))
	fmt.Println(e.Opens, e.Closes, e.At)
	// Output:
	// -10° 10° 0.1 mm at the follower
}

func ExampleLiftCurve_Analyse() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	a, _ := curve.Analyse(0)
	fmt.Printf("%.1f mm·°, %.4f mm/° at %s\n", a.AreaMMDeg, a.Opening.Value, a.Opening.Angle.Text(units.InDegrees, 1))
	// Output:
	// 444.0 mm·°, 0.0928 mm/° at 55.9°
}

func ExampleLiftCurve_AreaAbove() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	area, _ := curve.AreaAbove(units.Millimetre)
	fmt.Printf("%.1f\n", area)
	// Output:
	// 290.3
}

func ExampleLiftCurve_Advanced() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	moved, _ := curve.Advanced(4 * units.Degree)
	fmt.Println(moved.Span())
	// Output:
	// -24° 216°
}

func ExampleLiftCurve_AtValve() {
	table := valvetrain.LiftTable{Side: valvetrain.AtFollower}
	for i, lift := range []string{"0", "0.1", "1.2", "3.6", "5", "3.6", "1.2", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(30*i-20) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	ratio, _ := tolerance.ParseRatio("1.6")
	valve, _ := curve.AtValve(ratio, 250*units.Micrometre)
	peak, _ := valve.Peak()
	fmt.Println(peak.Lift, valve.Side())
	// Output:
	// 7.75 mm at the valve
}

// 0.1 mm per degree of the crankshaft at 3000 r/min.
func ExampleFollowerSpeed() {
	type f = tolerance.Float
	fmt.Println(valvetrain.FollowerSpeed(f(0.1), f(3000)), "m/s")
	// Output:
	// 1.8 m/s
}

func ExampleFollowerSpeedPerDegree() {
	type f = tolerance.Float
	fmt.Println(valvetrain.FollowerSpeedPerDegree(f(1.8), f(3000)), "mm/°")
	// Output:
	// 0.1 mm/°
}

func ExampleFollowerAcceleration() {
	type f = tolerance.Float
	fmt.Printf("%.0f m/s²\n", valvetrain.FollowerAcceleration(f(0.002), f(3000)))
	// Output:
	// 648 m/s²
}

func ExampleFollowerAccelerationPerDegree2() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm/°²\n", valvetrain.FollowerAccelerationPerDegree2(f(648), f(3000)))
	// Output:
	// 0.002 mm/°²
}

// Leaving the angle out makes it too large: the unsafe side.
func ExamplePistonToValve() {
	type f = tolerance.Float
	angle := f((20 * units.Degree).Radians())
	fmt.Printf("%.3f mm\n", valvetrain.PistonToValve(f(4), f(3), f(5), angle))
	fmt.Printf("%.3f mm with the angle left out\n", valvetrain.PistonToValve(f(4), f(3), f(5), f(0)))
	// Output:
	// 1.819 mm
	// 2.000 mm with the angle left out
}

func ExamplePistonToValveFlat() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.PistonToValveFlat(f(4), f(3), f(5), f((20*units.Degree).Radians())))
	// Output:
	// 2.193 mm
}

// A pocket deeper by 0.181 mm would leave 2 mm.
func ExamplePistonValveDrop() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.PistonValveDrop(f(2), f(3), f(5), f((20*units.Degree).Radians())))
	// Output:
	// 4.181 mm
}

func ExamplePistonValveLift() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.PistonValveLift(f(2), f(4), f(3), f((20*units.Degree).Radians())))
	// Output:
	// 4.819 mm
}

func ExamplePocketClearance() {
	fmt.Println(valvetrain.PocketClearance(36*units.Millimetre, 33*units.Millimetre, 400*units.Micrometre))
	// Output:
	// 1.1 mm
}

func ExamplePocketFor() {
	fmt.Println(valvetrain.PocketFor(33*units.Millimetre, units.MustParseLength("1.1 mm"), 400*units.Micrometre))
	// Output:
	// 36 mm
}

func ExamplePocketShift() {
	type f = tolerance.Float
	fmt.Printf("%.3f mm\n", valvetrain.PocketShift(f(3), f((20*units.Degree).Radians())))
	// Output:
	// 1.026 mm
}

func ExamplePistonValve_Inspect() {
	table := valvetrain.LiftTable{}
	for i, lift := range []string{"0", "0.1", "1.9", "5.8", "8", "5.8", "1.9", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(32*i-44) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, _ := table.Curve()
	exactly := tolerance.Exactly[units.Length]
	pair := valvetrain.PistonValve{Where: "inlet 1", Curve: curve, Drop: exactly(4 * units.Millimetre), Inclination: tolerance.Exactly(18 * units.Degree),
		Throw: exactly(43 * units.Millimetre), Rod: exactly(units.MustParseLength("143.5 mm")), Limits: tolerance.Spec{New: tolerance.MustParseBand("min 1.5 mm")}}
	r, _ := pair.Inspect()
	lo, _ := r.Least.Lower()
	fmt.Println(lo.Text(units.InMillimetres, 3), "at", r.At.Text(units.InDegrees, 1))
	fmt.Printf("%.3f mm less for a degree of advance\n", r.PerDegreeMM)
	// Output:
	// 3.414 mm at 3.9°
	// 0.063 mm less for a degree of advance
}

func ExamplePistonValve_Room() {
	table := valvetrain.LiftTable{}
	for i, lift := range []string{"0", "0.1", "1.9", "5.8", "8", "5.8", "1.9", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(32*i-44) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, _ := table.Curve()
	exactly := tolerance.Exactly[units.Length]
	pair := valvetrain.PistonValve{Where: "inlet 1", Curve: curve, Drop: exactly(4 * units.Millimetre), Inclination: tolerance.Exactly(18 * units.Degree),
		Throw: exactly(43 * units.Millimetre), Rod: exactly(units.MustParseLength("143.5 mm")), Limits: tolerance.Spec{New: tolerance.MustParseBand("min 1.5 mm")}}
	room, _ := pair.Room(units.MustParseLength("1.5 mm"))
	fmt.Println(room.Move, room.Left.Text(units.InDegrees, 1))
	// Output:
	// advance 22.3°
}

func ExamplePistonValve_ClearanceAt() {
	table := valvetrain.LiftTable{}
	for i, lift := range []string{"0", "0.1", "1.9", "5.8", "8", "5.8", "1.9", "0.1", "0"} {
		table.Points = append(table.Points, valvetrain.LiftPoint{Angle: units.Angle(32*i-44) * units.Degree, Lift: units.MustParseLength(lift + " mm")})
	}
	curve, _ := table.Curve()
	exactly := tolerance.Exactly[units.Length]
	pair := valvetrain.PistonValve{Where: "inlet 1", Curve: curve, Drop: exactly(4 * units.Millimetre), Inclination: tolerance.Exactly(18 * units.Degree),
		Throw: exactly(43 * units.Millimetre), Rod: exactly(units.MustParseLength("143.5 mm")), Limits: tolerance.Spec{New: tolerance.MustParseBand("min 1.5 mm")}}
	c, _ := pair.ClearanceAt(10 * units.Degree)
	fmt.Println(c.Text(units.InMillimetres, 2))
	// Output:
	// 3.67 mm
}
