package units_test

import (
	"database/sql"
	"fmt"

	"github.com/shopspring/decimal"

	"github.com/tenthou/tenthou/units"
)

func ExampleParseLength() {
	l, err := units.ParseLength("3-25/64 in")
	fmt.Println(l, err)
	// Output: 86.121875 mm <nil>
}

func ExampleMustParseLength() {
	journal := units.MustParseLength("2.7475 in")
	fmt.Println(journal)
	// Output: 69.7865 mm
}

// Sums of many more lengths than an engine has stay in range; the method
// tells where one doesn't.
func ExampleLength_InRange() {
	far := 2_000_000 * units.Metre
	fmt.Println(far.InRange(), far.Add(far).InRange(), far.Add(far).Sub(far).InRange())
	fmt.Println(far.Add(far))
	// Output:
	// true false false
	// length out of range
}

func ExampleLength_Compare() {
	fmt.Println(units.MustParseLength("1/64 in").Compare(units.MustParseLength("0.4 mm")))
	// Output: -1
}

// A stack of two blades.
func ExampleLength_Add() {
	fmt.Println((10 * units.Thou).Add(3 * units.Thou))
	// Output: 0.3302 mm
}

// Piston clearance: bore less skirt.
func ExampleLength_Sub() {
	bore, skirt := units.MustParseLength("86.012 mm"), units.MustParseLength("85.974 mm")
	fmt.Println(bore.Sub(skirt))
	// Output: 0.038 mm
}

func ExampleLength_Abs() {
	fmt.Println(units.MustParseLength("-0.02 mm").Abs())
	// Output: 0.02 mm
}

func ExampleLength_Min() {
	fmt.Println(units.Inch.Min(25 * units.Millimetre))
	// Output: 25 mm
}

func ExampleLength_Max() {
	fmt.Println(units.Inch.Max(25 * units.Millimetre))
	// Output: 25.4 mm
}

// Total indicator reading: greatest less least.
func ExampleLength_Spread() {
	thou := units.Thou
	fmt.Println(units.Length(0).Spread(3*thou, -2*thou, 3*thou).Text(units.InThou, 0))
	// Output: 5 thou
}

// Bend is half the run-out.
func ExampleLength_Scale() {
	runOut := units.MustParseLength("0.0016 in")
	fmt.Println(runOut.Scale(1, 2).Text(units.InInches, 4))
	// Output: 0.0008 in
}

// A ring gap opens by π times what the bore grows.
func ExampleLength_ScalePi() {
	wear := units.MustParseLength("0.50 mm")
	fmt.Println(wear.ScalePi(1, 1).Text(units.InMillimetres, 6))
	// Output: 1.570796 mm
}

// Similar triangles: 0.006 in of twist over 6 in is 0.001 in in 1 in.
func ExampleLength_MulDiv() {
	twist := units.MustParseLength("0.006 in")
	fmt.Println(twist.MulDiv(units.Inch, 6*units.Inch).Text(units.InInches, 4))
	// Output: 0.0010 in
}

// A third of the wear was the ring's, two thirds the groove's.
func ExampleLength_Share() {
	grown := units.MustParseLength("0.09 mm")
	ring, groove := units.MustParseLength("0.01 mm"), units.MustParseLength("0.02 mm")
	fmt.Println(grown.Share(ring, groove), grown.Share(groove, ring))
	// Output: 0.03 mm 0.06 mm
}

func ExampleLength_Text() {
	blade := units.MustParseLength(".0025 in")
	fmt.Println(blade.Text(units.InMillimetres, 3))
	fmt.Println(blade.Text(units.InMicrometres, 1))
	fmt.Println(blade.Text(units.InInches, units.AllPlaces))
	// Output:
	// 0.064 mm
	// 63.5 µm
	// 0.0025 in
}

// Half an inch is exactly 12.7 mm; a manual's 0.07 mm is no whole number of
// tenths of a thou.
func ExampleLength_Append() {
	inch := units.Style[units.Length]{Unit: units.InInches, Places: 4, Point: true}
	for _, s := range []string{"12.7 mm", "0.07 mm"} {
		text, exact := units.MustParseLength(s).Append(nil, inch)
		fmt.Println(string(text), exact)
	}
	// Output:
	// .5000 in true
	// .0028 in false
}

// 3/4 in to one place of a millimetre: to even, and half up as 7 CFR 51.322
// prints it.
func ExampleLength_Round() {
	l := units.MustParseLength("3/4 in")
	for _, r := range []units.Rounding{units.NearestEven, units.NearestAway} {
		round, exact := l.Round(units.InMillimetres, 1, r)
		fmt.Println(round.Text(units.InMillimetres, 1), exact)
	}
	// Output:
	// 19.0 mm false
	// 19.1 mm false
}

func ExampleLength_Places() {
	fmt.Println(units.MustParseLength("1/64 in").Places(units.InMillimetres))
	fmt.Println(units.MustParseLength("1 mm").Places(units.InInches))
	// Output:
	// 6 true
	// 0 false
}

func ExampleLength_Float() {
	fmt.Println(units.MustParseLength("84.9 mm").Float(units.InInches))
	// Output: 3.34251968503937
}

func ExampleLength_Decimal() {
	d, exact := units.MustParseLength("84.9 mm").Decimal(units.InInches, 5, units.NearestEven)
	fmt.Println(d, exact)
	d, exact = units.MustParseLength("0.4476 in").Decimal(units.InMillimetres, units.AllPlaces, units.NearestEven)
	fmt.Println(d, exact)
	// Output:
	// 3.34252 false
	// 11.36904 true
}

func ExampleLength_String() {
	fmt.Println(units.Foot.String())
	// Output: 304.8 mm
}

func ExampleLength_AppendText() {
	line, err := (70 * units.Micrometre).AppendText([]byte("limit: "))
	fmt.Println(string(line), err)
	// Output: limit: 0.07 mm <nil>
}

func ExampleLength_MarshalText() {
	text, err := units.Microinch.MarshalText()
	fmt.Println(string(text), err)
	// Output: 0.0000254 mm <nil>
}

func ExampleLength_UnmarshalText() {
	var l units.Length
	err := l.UnmarshalText([]byte("1/64 in"))
	fmt.Println(l, err)
	// Output: 0.396875 mm <nil>
}

func ExampleLength_Format() {
	l := units.MustParseLength("0.0635 mm")
	fmt.Printf("%v|%.3v|%+v|%12v|%-12v|%q|%d\n", l, l, l, l, l, l, l)
	// Output: 0.0635 mm|0.064 mm|+0.0635 mm|   0.0635 mm|0.0635 mm   |"0.0635 mm"|63500000
}

// A database sorts and sums picometres.
func ExampleLength_Value() {
	v, err := (3 * units.Thou).Value()
	fmt.Println(v, err)
	// Output: 76200000 <nil>
}

// A column that may be NULL is read with sql.Null.
func ExampleLength_Scan() {
	var gap sql.Null[units.Length]
	fmt.Println(gap.Scan(int64(76_200_000)), gap.V, gap.Valid)
	fmt.Println(gap.Scan("3 thou"), gap.V, gap.Valid)
	fmt.Println(gap.Scan(nil), gap.Valid)
	// Output:
	// <nil> 0.0762 mm true
	// <nil> 0.0762 mm true
	// <nil> false
}

// What is rounded is marked.
func ExampleLength_Dual() {
	fmt.Println(units.MustParseLength(".0025 in").Dual(4, 4))
	fmt.Println(units.MustParseLength("0.07 mm").Dual(2, 4))
	// Output:
	// 0.0635 mm (.0025 in)
	// 0.07 mm (≈.0028 in)
}

func ExampleLength_AppendDual() {
	fmt.Println(string(units.Inch.AppendDual([]byte("width "), 1, 3)))
	// Output: width 25.4 mm (1.000 in)
}

// Four cylinders of 68 mm by 75 mm displace 1089.5 cm³.
func ExampleCylinderVolume() {
	one := units.CylinderVolume(68*units.Millimetre, 75*units.Millimetre)
	fmt.Println(one.Scale(4, 1).Text(units.InCubicCentimetres, 1))
	// Output: 1089.5 cm³
}

func ExampleCylinderVolumeRound() {
	v := units.CylinderVolumeRound(2*units.Millimetre, units.Millimetre, units.Up) // π mm³
	fmt.Println(v)
	// Output: 0.00314159266 cm³
}

func ExampleBoxVolume() {
	fmt.Println(units.BoxVolume(units.Inch, units.Inch, units.Inch))
	// Output: 16.387064 cm³
}

func ExampleBoxVolumeRound() {
	fmt.Println(units.BoxVolumeRound(units.Micrometre, units.Micrometre, units.Micrometre, units.Up))
	// Output: 0.00000000001 cm³
}

// Readings that arrive as float64, from a sensor or a spreadsheet.
func ExampleNearest() {
	l, err := units.Nearest(0.0635, units.InMillimetres)
	fmt.Println(l, err, l == units.MustParseLength(".0025 in"))
	// Output: 0.0635 mm <nil> true
}

func ExampleFromDecimal() {
	l, err := units.FromDecimal(decimal.RequireFromString("4.0312"), units.InInches)
	fmt.Println(l, err)
	// Output: 102.39248 mm <nil>
}
