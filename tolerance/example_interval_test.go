package tolerance_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The .0025 in blade enters, the .003 in blade doesn't.
func ExampleInterval() {
	gap, err := tolerance.HalfOpen(25*units.Thou/10, 3*units.Thou)
	fmt.Println(gap, err)
	fmt.Println(gap.Text(units.InInches, 4))
	// Output:
	// [0.0635 mm, 0.0762 mm) <nil>
	// [0.0025 in, 0.0030 in)
}

// Every blade at hand entered, the thickest being 1 mm.
func ExampleNewInterval() {
	gap, _ := tolerance.NewInterval(units.Millimetre, tolerance.Closed, 0, tolerance.Absent)
	fmt.Println(gap)
	_, err := tolerance.NewInterval(2*units.Millimetre, tolerance.Closed, units.Millimetre, tolerance.Open)
	fmt.Println(err)
	// Output:
	// [1 mm, ∞)
	// tolerance: interval: nothing lies between a least of 2 mm and a greatest of 1 mm
}

func ExampleExactly() {
	fmt.Println(tolerance.Exactly(70 * units.Micrometre))
	// Output: 0.07 mm
}

func ExampleHalfOpen() {
	gap, _ := tolerance.HalfOpen(60*units.Micrometre, 70*units.Micrometre)
	fmt.Println(gap)
	_, err := tolerance.HalfOpen(70*units.Micrometre, 70*units.Micrometre)
	fmt.Println(err)
	// Output:
	// [0.06 mm, 0.07 mm)
	// tolerance: interval: nothing lies between a least of 0.07 mm and a greatest of 0.07 mm
}

// A micrometer that reads to 2 µm.
func ExamplePlusMinus() {
	journal, _ := tolerance.PlusMinus(units.MustParseLength("54.985 mm"), 2*units.Micrometre)
	fmt.Println(journal)
	// Output: [54.983 mm, 54.987 mm]
}

func ExampleParseBracket() {
	for _, s := range []string{"[.0025 in, .003 in)", "73.02 ±0.005 mm", "0.07 mm", "[1 mm, ∞)", "["} {
		fmt.Println(tolerance.ParseBracket(s))
	}
	// Output:
	// [0.0635 mm, 0.0762 mm) <nil>
	// [73.015 mm, 73.025 mm] <nil>
	// 0.07 mm <nil>
	// [1 mm, ∞) <nil>
	// (−∞, ∞) tolerance: interval "[": not understood; write it as "0.07 mm", "73.02 ±0.005 mm", "[0.0635 mm, 0.0762 mm)" or "[0.5 mm, ∞)"
}

// The load of a valve spring at its installed height, as read off a spring
// tester to a pound.
func ExampleParseInterval() {
	load, _ := tolerance.ParseInterval[units.Force]("76 ±1 lbf")
	fmt.Println(load.Text(units.InPoundsForce, 0))
	// Output: [75 lbf, 77 lbf]
}

func ExampleEnd_String() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	_, lo := gap.Lower()
	_, hi := gap.Upper()
	fmt.Println(lo, hi, tolerance.Absent)
	// Output: closed open absent
}

func ExampleInterval_Lower() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Lower())
	// Output: 0.0635 mm closed
}

func ExampleInterval_Upper() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Upper())
	// Output: 0.0762 mm open
}

func ExampleInterval_IsExact() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.IsExact(), tolerance.Exactly(units.Millimetre).IsExact())
	// Output: false true
}

func ExampleInterval_IsZero() {
	var unknown tolerance.Bracket
	fmt.Println(unknown, unknown.IsZero())
	// Output: (−∞, ∞) true
}

func ExampleInterval_InRange() {
	gap := tolerance.Exactly(units.Millimetre)
	lost := gap.Scale(1, 0).Add(gap)
	fmt.Println(lost, lost.InRange())
	// Output: out of range false
}

func ExampleInterval_Contains() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Contains(70*units.Micrometre), gap.Contains(3*units.Thou))
	// Output: true false
}

func ExampleInterval_Within() {
	rough, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fine, _ := tolerance.ParseBracket("[0.07 mm, 0.075 mm)")
	fmt.Println(fine.Within(rough), rough.Within(fine))
	// Output: true false
}

// Two sets of blades, one gap.
func ExampleInterval_Intersect() {
	inch, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	metric, _ := tolerance.ParseBracket("[0.06 mm, 0.07 mm)")
	fmt.Println(inch.Intersect(metric))
	other, _ := tolerance.ParseBracket("[0.08 mm, 0.09 mm)")
	fmt.Println(inch.Intersect(other))
	// Output:
	// [0.0635 mm, 0.07 mm) true
	// out of range false
}

func ExampleInterval_Width() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Width())
	// Output: 0.0127 mm true
}

func ExampleInterval_Middle() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Middle())
	// Output: 0.06985 mm true
}

// Stacked blades, each known to a micrometre.
func ExampleInterval_Add() {
	a, _ := tolerance.ParseBracket("0.30 ±0.001 mm")
	b, _ := tolerance.ParseBracket("0.05 ±0.001 mm")
	fmt.Println(a.Add(b))
	// Output: [0.348 mm, 0.352 mm]
}

// Ring side clearance from two micrometer readings.
func ExampleInterval_Sub() {
	groove, _ := tolerance.ParseBracket("1.570 ±0.002 mm")
	ring, _ := tolerance.ParseBracket("1.490 ±0.002 mm")
	fmt.Println(groove.Sub(ring))
	// Output: [0.076 mm, 0.084 mm]
}

// The taper of a journal is a difference without its sign.
func ExampleInterval_Abs() {
	front, _ := tolerance.ParseBracket("54.981 ±0.002 mm")
	rear, _ := tolerance.ParseBracket("54.983 ±0.002 mm")
	fmt.Println(front.Sub(rear).Abs())
	// Output: [0 mm, 0.006 mm]
}

func ExampleInterval_Min() {
	a, _ := tolerance.ParseBracket("[0.05 mm, 0.07 mm)")
	b, _ := tolerance.ParseBracket("[0.06 mm, 0.065 mm)")
	fmt.Println(a.Min(b), a.Max(b))
	// Output: [0.05 mm, 0.065 mm) [0.06 mm, 0.07 mm)
}

func ExampleInterval_Max() {
	a, _ := tolerance.ParseBracket("[0.05 mm, 0.07 mm)")
	b, _ := tolerance.ParseBracket("0.08 mm")
	fmt.Println(a.Max(b))
	// Output: 0.08 mm
}

// Out-of-round from four diameters at one depth, each to 2 µm. They may all
// be the same.
func ExampleInterval_Spread() {
	var d []tolerance.Bracket
	for _, s := range []string{"86.010 ±0.002 mm", "86.012 ±0.002 mm", "86.013 ±0.002 mm", "86.011 ±0.002 mm"} {
		x, _ := tolerance.ParseBracket(s)
		d = append(d, x)
	}
	fmt.Println(d[0].Spread(d[1:]...))
	// Output: [0 mm, 0.007 mm]
}

// A third of the gap: neither end is a whole number of picometres.
func ExampleInterval_Scale() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in]")
	fmt.Println(gap.Scale(1, 3))
	// Output: (0.021166666 mm, 0.0254 mm]
}

// What an end gap grows by where the bore has worn by 0.05 to 0.06 mm.
func ExampleInterval_ScalePi() {
	wear, _ := tolerance.ParseBracket("[0.05 mm, 0.06 mm]")
	fmt.Println(wear.ScalePi(1, 1).Text(units.InMillimetres, 3))
	// Output: (0.157 mm, 0.189 mm)
}

// Valve lift from cam lift by the two arms of the rocker.
func ExampleInterval_MulDiv() {
	lift, _ := tolerance.ParseBracket("6.20 ±0.01 mm")
	valveArm, _ := tolerance.ParseBracket("36.0 ±0.1 mm")
	pushArm, _ := tolerance.ParseBracket("24.0 ±0.1 mm")
	fmt.Println(lift.MulDiv(valveArm, pushArm).Text(units.InMillimetres, 2))
	// Output: (9.22 mm, 9.38 mm)
}

// Of 0.06 mm too much clearance, how much is the groove's wear, where groove
// and ring have worn by so much?
func ExampleInterval_Share() {
	excess := tolerance.Exactly(60 * units.Micrometre)
	groove, _ := tolerance.ParseBracket("0.04 ±0.002 mm")
	ring, _ := tolerance.ParseBracket("0.02 ±0.002 mm")
	fmt.Println(excess.Share(groove, ring).Text(units.InMillimetres, 4))
	// Output: [0.0380 mm, 0.0420 mm]
}

func ExampleInterval_String() {
	gap, _ := tolerance.HalfOpen(25*units.Thou/10, 3*units.Thou)
	fmt.Println(gap.String())
	// Output: [0.0635 mm, 0.0762 mm)
}

// Rounded outward: what is printed holds what was measured.
func ExampleInterval_Text() {
	gap, _ := tolerance.ParseBracket("[.0025 in, .003 in)")
	fmt.Println(gap.Text(units.InMillimetres, 2))
	fmt.Println(gap.Text(units.InMillimetres, units.AllPlaces))
	// Output:
	// [0.06 mm, 0.08 mm)
	// [0.0635 mm, 0.0762 mm)
}

// Ring side clearance, written once, of two lengths and of two brackets.
func ExampleNumber() {
	groove, _ := tolerance.ParseBracket("1.570 ±0.002 mm")
	ring, _ := tolerance.ParseBracket("1.490 ±0.002 mm")
	fmt.Println(sideClearance(1570*units.Micrometre, 1490*units.Micrometre))
	fmt.Println(sideClearance(groove, ring))
	// Output:
	// 0.08 mm
	// [0.076 mm, 0.084 mm]
}
