package units_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/shopspring/decimal"

	"github.com/tenthou/tenthou/units"
)

// A limit from a manual in millimetres and a blade marked in inches are
// compared as they are: nothing is converted, nothing is rounded.
func Example() {
	const limit units.Length = 0.07 * units.MM
	blade := units.MustParseLength(".003 in")
	fmt.Println(blade, "is over", limit, "by", blade.Sub(limit))
	fmt.Println(blade > limit)
	// Output:
	// 0.0762 mm is over 0.07 mm by 0.0062 mm
	// true
}

// Whole numbers of a unit read like speech; decimals take the untyped scales
// in capitals, which the compiler holds exactly or refuses.
func Example_constants() {
	const bore units.Length = 4.0312 * units.IN
	fmt.Println(3*units.Thou, 70*units.Micrometre, 45*units.Degree)
	fmt.Println(bore)
	fmt.Println(25 * units.Inch / 64)
	// Output:
	// 0.0762 mm 0.07 mm 45°
	// 102.39248 mm
	// 9.921875 mm
}

// The kinds of error are told apart with errors.Is.
func Example_errors() {
	for _, s := range []string{"0.07", "1,000 mm", "2.5 mil", "1/3 in", "0.07 mn", "NaN", "1 000 000 m"} {
		_, err := units.ParseLength(s)
		switch {
		case errors.Is(err, units.ErrNoUnit):
			fmt.Println(s, "has no unit")
		case errors.Is(err, units.ErrAmbiguous):
			fmt.Println(s, "can be read in two ways")
		case errors.Is(err, units.ErrTooFine):
			fmt.Println(s, "is between two picometres")
		case errors.Is(err, units.ErrUnknownUnit):
			fmt.Println(s, "has a unit that nobody knows")
		case errors.Is(err, units.ErrSyntax):
			fmt.Println(s, "is no length")
		}
	}
	// Output:
	// 0.07 has no unit
	// 1,000 mm can be read in two ways
	// 2.5 mil can be read in two ways
	// 1/3 in is between two picometres
	// 0.07 mn has a unit that nobody knows
	// NaN is no length
	// 1 000 000 m is no length
}

// A document holds quantities as text, with their units.
func Example_json() {
	var ring struct {
		Height units.Length
		Mass   units.Mass
		Gap    map[units.Temperature]units.Length
	}
	err := json.Unmarshal([]byte(`{"Height": "1/16 in", "Mass": "12.5 g", "Gap": {"68 °F": "0.3 mm"}}`), &ring)
	fmt.Println(ring.Height, ring.Mass, ring.Gap[units.Reference], err)
	err = json.Unmarshal([]byte(`{"Height": "1.5"}`), &ring)
	fmt.Println(err)
	// Output:
	// 1.5875 mm 12.5 g 0.3 mm <nil>
	// units: length "1.5", at byte 3: no unit; write it as "0.07 mm", "70 µm", ".0025 in", "2.5 thou" or "1/64 in"
}

func ExampleParseError() {
	_, err := units.ParseLength("5.5 ft 3 in")
	var e *units.ParseError
	if errors.As(err, &e) {
		fmt.Println(e.Quantity, e.Offset, e.Kind)
		fmt.Println(e.Want)
	}
	// Output:
	// length 7 not written as a quantity
	// only the last part of a quantity may have decimals
}

func ExampleParseError_Error() {
	_, err := units.ParseMass("40 gr")
	fmt.Println(err)
	// Output: units: mass "40 gr", at byte 3: ambiguous; "gr" is a grain to some and a gram to others: write "grain" or "g"
}

func ExampleParseError_Unwrap() {
	_, err := units.ParseAngle("45")
	fmt.Println(errors.Unwrap(err) == units.ErrNoUnit)
	// Output: true
}

func ExampleRangeError() {
	_, err := units.Sum(units.Millimetre, units.OutOfRange[units.Length]())
	var e *units.RangeError
	if errors.As(err, &e) {
		fmt.Println(e.Op, e.Quantity, e.Value)
	}
	// Output: sum length of item 1
}

func ExampleRangeError_Error() {
	_, err := units.FromDecimal(decimal.RequireFromString("1e30"), units.InMillimetres)
	fmt.Println(err)
	// Output: units: decimal length 1·10^30 mm: out of range; within -2305843009 mm to 2305843009 mm
}

func ExampleRangeError_Unwrap() {
	_, err := units.Mean[units.Length]()
	fmt.Println(errors.Unwrap(err) == units.ErrRange)
	// Output: true
}

// A sheet's typographic marks are read as they stand.
func ExampleParse() {
	for _, s := range []string{"0,07 mm", "70 µm", ".0025″", "3 25/64 in", "−0.02 mm", "5 ft 3 1/2 in"} {
		l, err := units.Parse[units.Length](s)
		fmt.Println(l, err)
	}
	// Output:
	// 0.07 mm <nil>
	// 0.07 mm <nil>
	// 0.0635 mm <nil>
	// 86.121875 mm <nil>
	// -0.02 mm <nil>
	// 1612.9 mm <nil>
}

// A column headed "in" needs no unit in its cells, and takes one that has.
func ExampleParseIn() {
	for _, cell := range []string{".0025", "1/64", "0.1 mm"} {
		l, err := units.ParseIn(cell, units.InInches)
		fmt.Println(l, err)
	}
	// Output:
	// 0.0635 mm <nil>
	// 0.396875 mm <nil>
	// 0.1 mm <nil>
}

func ExampleParseUnit() {
	u, err := units.ParseUnit[units.Pressure]("lb/in2")
	fmt.Println(u, err)
	_, err = units.ParseUnit[units.Pressure]("at")
	fmt.Println(errors.Is(err, units.ErrUnknownUnit))
	// Output:
	// psi <nil>
	// true
}

func ExampleUnit_Symbol() {
	fmt.Println(units.InMicrometres.Symbol(), units.InFahrenheit.Symbol())
	// Output: µm °F
}

func ExampleUnit_String() {
	fmt.Println("gap,", units.InThou)
	// Output: gap, thou
}

// Eight places of an inch are whole picometres; a ninth may not be.
func ExampleUnit_Places() {
	fmt.Println(units.InMillimetres.Places(), units.InInches.Places())
	// Output: 9 8
}

func ExampleUnit_MarshalText() {
	text, err := json.Marshal(map[string]units.Unit[units.Length]{"unit": units.InMillimetres})
	fmt.Println(string(text), err)
	// Output: {"unit":"mm"} <nil>
}

func ExampleUnit_UnmarshalText() {
	var u units.Unit[units.Mass]
	err := json.Unmarshal([]byte(`"ounce"`), &u)
	fmt.Println(u, err)
	// Output: oz <nil>
}

// The four rules at a tie, and beside it.
func ExampleRounding() {
	for _, r := range []units.Rounding{units.NearestEven, units.NearestAway, units.Down, units.Up} {
		tie, _ := units.MustParseLength("-19.05 mm").Round(units.InMillimetres, 1, r)
		fmt.Println(tie, r)
	}
	// Output:
	// -19 mm nearest, ties to even
	// -19.1 mm nearest, ties away from zero
	// -19.1 mm down
	// -19 mm up
}

func ExampleRounding_String() {
	fmt.Println(units.NearestAway)
	// Output: nearest, ties away from zero
}
