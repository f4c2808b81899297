package units_test

import (
	"fmt"

	"github.com/tenthou/tenthou/units"
)

func ExampleSum() {
	total, err := units.Sum(units.MustParseLength(".010 in"), units.MustParseLength("0.05 mm"), 3*units.Thou)
	fmt.Println(total, err)
	// Output: 0.3802 mm <nil>
}

func ExampleMean() {
	mean, err := units.Mean(units.MustParseLength("86.01 mm"), units.MustParseLength("86.02 mm"), units.MustParseLength("86.02 mm"))
	fmt.Println(mean, err)
	// Output: 86.016666667 mm <nil>
}

func ExampleInRange() {
	fmt.Println(units.InRange(units.Inch), units.InRange(units.AbsoluteZero-1))
	// Output: true false
}

// Out of range stays out of range.
func ExampleOutOfRange() {
	l := units.Inch.Scale(1, 0) // division by zero
	fmt.Println(l, l == units.OutOfRange[units.Length]())
	fmt.Println(l.Add(units.Inch).Scale(1, 2).InRange())
	// Output:
	// length out of range true
	// false
}

// The ends of a bracket are rounded outward.
func ExampleScaleRound() {
	l := units.Nanometre
	fmt.Println(units.ScaleRound(l, 1, 3, units.Down), units.ScaleRound(l, 1, 3, units.Up))
	// Output: 0.000000333 mm 0.000000334 mm
}

// The circumference of a 4 in bore, to the picometre below and above.
func ExampleScalePiRound() {
	bore := 4 * units.Inch
	fmt.Println(units.ScalePiRound(bore, 1, 1, units.Down))
	fmt.Println(units.ScalePiRound(bore, 1, 1, units.Up))
	// Output:
	// 319.185813604 mm
	// 319.185813605 mm
}

// A load in the ratio of two lengths.
func ExampleMulDivRound() {
	load := units.MustParseForce("320 N")
	fmt.Println(units.MulDivRound(load, 3*units.Millimetre, 4*units.Millimetre, units.NearestEven))
	// Output: 240 N
}

func ExampleShareRound() {
	fmt.Println(units.ShareRound(units.Millimetre, units.Inch, 2*units.Inch, units.Up))
	// Output: 0.333333334 mm
}

// Code for any quantity writes, rounds and asks with functions.
func ExampleAppend() {
	text, exact := units.Append(nil, units.Pound, units.Style[units.Mass]{Unit: units.InGrams, Places: 2})
	fmt.Println(string(text), exact)
	// Output: 453.59 g false
}

func ExampleAppendText() {
	text, err := units.AppendText(nil, units.Ounce)
	fmt.Println(string(text), err)
	// Output: 28.349523125 g <nil>
}

func ExampleRound() {
	v, exact := units.Round(units.CubicInch, units.InCubicCentimetres, 1, units.NearestEven)
	fmt.Println(v, exact)
	// Output: 16.4 cm³ false
}

func ExamplePlaces() {
	fmt.Println(units.Places(units.PoundForce, units.InNewtons))
	// Output: 13 true
}

// A limit as the manual prints it, and a finding in the same manner.
func ExampleParseWritten() {
	limit, err := units.ParseWritten[units.Length]("0.070 mm")
	fmt.Println(limit, limit.Value, limit.Places, err)
	fmt.Println(limit.As(units.MustParseLength(".0025 in")))
	// Output:
	// 0.070 mm 0.07 mm 3 <nil>
	// 0.064 mm
}

func ExampleParseWrittenIn() {
	mark, err := units.ParseWrittenIn(".0030", units.InInches)
	fmt.Println(mark, err)
	// Output: 0.0030 in <nil>
}

func ExampleWritten_As() {
	fraction, _ := units.ParseWritten[units.Length]("25/64 in")
	fmt.Println(fraction.As(units.Inch + units.Inch/32))
	fmt.Println(fraction.As(3 * units.Thou))
	// Output:
	// 1 2/64 in
	// 0.003 in
}

// The last place that a limit is printed to says what it was rounded to.
func ExampleWritten_Step() {
	for _, s := range []string{"0.07 mm", "0.070 mm", "25/64 in"} {
		w, _ := units.ParseWritten[units.Length](s)
		fmt.Println(w.Step())
	}
	// Output:
	// 0.01 mm
	// 0.001 mm
	// 0.396875 mm
}

func ExampleWritten_Exact() {
	limit, _ := units.ParseWritten[units.Length]("0.07 mm")
	fmt.Println(limit.Exact(), limit.As(units.MustParseLength(".0025 in")).Exact())
	// Output: true false
}

func ExampleWritten_String() {
	seat, _ := units.ParseWritten[units.Angle]("44°30'")
	fmt.Println(seat.String())
	// Output: 44° 30′
}

func ExampleWritten_Append() {
	seat, _ := units.ParseWritten[units.Angle]("44°30'")
	text, exact := seat.Append([]byte("seat "))
	fmt.Println(string(text), exact)
	// Output: seat 44° 30′ true
}

func ExampleWritten_MarshalText() {
	limit, _ := units.ParseWritten[units.Length]("0,070mm")
	text, err := limit.MarshalText()
	fmt.Println(string(text), err)
	_, err = limit.As(units.Thou / 10).MarshalText()
	fmt.Println(err)
	// Output:
	// 0.070 mm <nil>
	// units: encode length 0.003 mm: finer than the quantum; as many places as show the value exactly
}

func ExampleWritten_UnmarshalText() {
	var w units.Written[units.Length]
	err := w.UnmarshalText([]byte("3 1/2 in"))
	fmt.Println(w.Value, w.Denominator, err)
	// Output: 88.9 mm 2 <nil>
}
