package limits_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/limits"
	"github.com/tenthou/tenthou/units"
)

// A valve guide is to be reamed to 8 H7, and a small-hole gauge reads 8.004 mm,
// give or take 0.002, near one end and 8.014 near the other.
func Example_guideBore() {
	bore := limits.MustParseLimits("8 H7")
	fmt.Printf("%v: %v to %v\n", bore, bore.Least(), bore.Greatest())
	for _, reading := range []string{"8.004 mm", "8.014 mm"} {
		r, err := tolerance.PlusMinus(units.MustParseLength(reading), 2*units.Micrometre)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(reading, bore.Band().Judge(r))
	}
	// Output:
	// 8 H7: 8 mm to 8.015 mm
	// 8.004 mm within
	// 8.014 mm undecided
}

// A bush is honed to 22 H6, and the manual wants the gudgeon pin free by 0.004 to
// 0.030 mm.
func Example_gudgeonPin() {
	bush := limits.MustParseLimits("22 H6")
	pins, err := limits.Mating(bush, tolerance.MustParseBand("0.004–0.030 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	coarsest := pins[0]
	fit, err := limits.Pair{Hole: bush.Class(), Shaft: coarsest.Class()}.At(bush.Nominal())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: pin %v to %v, %s\n", fit, coarsest.Least(), coarsest.Greatest(), fit.Describe())
	// Output: 22 H6/g5: pin 21.984 mm to 21.993 mm, clearance 0.007 to 0.029 mm
}

func ExampleParse() {
	for _, s := range []string{"50 H7/g6", "40 H7/k6", "1 in H7/p6"} {
		f, err := limits.Parse(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v, %v fit: %s\n", f, f.Kind(), f.Describe())
	}
	_, err := limits.Parse("50 h6/H7")
	fmt.Println(errors.Is(err, limits.ErrPair))
	// Output:
	// 50 H7/g6, clearance fit: clearance 0.009 to 0.05 mm
	// 40 H7/k6, transition fit: up to 0.023 mm clearance, up to 0.018 mm interference
	// 25.4 H7/p6, interference fit: interference 0.001 to 0.035 mm
	// true
}

func ExampleMustParse() {
	seat := limits.MustParse("34 H7/s6") // a seat insert in its counterbore
	fmt.Println(seat.Hole().Band(), "and", seat.Shaft().Band())
	// Output: 34–34.025 mm and 34.043–34.059 mm
}

func ExampleParseLimits() {
	for _, s := range []string{"25 H7", "⌀25,4 h6", "63/64 in H7", "20 t6"} {
		l, err := limits.ParseLimits(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: %+v, %+v\n", l, l.LowerDeviation(), l.UpperDeviation())
	}
	// Output:
	// 25 H7: 0 mm, +0.021 mm
	// 25.4 h6: -0.013 mm, 0 mm
	// 25.003125 H7: 0 mm, +0.021 mm
	// limits: t6 at 20 mm: not tabulated; t6 is for sizes over 24 up to and including 500 mm
}

func ExampleMustParseLimits() {
	journal := limits.MustParseLimits("48 h6")
	fmt.Println(journal.Least(), journal.Greatest(), journal.Tolerance())
	// Output: 47.984 mm 48 mm 0.016 mm
}

func ExampleParseBand() {
	band, err := limits.ParseBand("16 js6")
	fmt.Println(band, err)
	_, err = limits.ParseBand("50 Z99")
	fmt.Println(err)
	// Output:
	// 15.9945–16.0055 mm <nil>
	// limits: limits "50 Z99", at byte 4: no such standard tolerance grade; after Z a number from 01, 0, 1 to 18 is expected
}

func ExampleMustParseBand() {
	fmt.Println(limits.MustParseBand("72 H8").Judge(tolerance.Exactly(units.MustParseLength("72.046 mm"))))
	// Output: within
}

func ExampleParseClass() {
	c, err := limits.ParseClass("ZC11")
	fmt.Println(c.Deviation(), c.Grade(), c.Feature(), err)
	// Output: ZC IT11 hole <nil>
}

func ExampleMustParseClass() {
	over, upTo, _ := limits.MustParseClass("v7").Range()
	fmt.Println(over, upTo)
	// Output: 14 mm 500 mm
}

func ExampleParsePair() {
	p, err := limits.ParsePair("H8 / f7")
	fmt.Println(p, err)
	// Output: H8/f7 <nil>
}

func ExampleMustParsePair() {
	f, err := limits.MustParsePair("H8/f7").At(12 * units.Millimetre)
	fmt.Println(f, f.Describe(), err)
	// Output: 12 H8/f7 clearance 0.016 to 0.061 mm <nil>
}

func ExampleNewClass() {
	c, err := limits.NewClass("h", limits.IT5)
	if err != nil {
		fmt.Println(err)
		return
	}
	pin, err := c.At(20 * units.Millimetre)
	fmt.Println(pin, pin.Least(), err)
	_, err = limits.NewClass("Js", limits.IT5)
	fmt.Println(err)
	// Output:
	// 20 h5 19.991 mm <nil>
	// limits: class "Js", at byte 0: no such fundamental deviation; write JS for a hole or js for a shaft
}

// M6 leaves the rule of its neighbours over 250 up to 315 mm.
func ExampleClass_At() {
	m6 := limits.MustParseClass("M6")
	for _, size := range []units.Length{250 * units.Millimetre, 300 * units.Millimetre} {
		l, err := m6.At(size)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(l, l.LowerDeviation(), l.UpperDeviation())
	}
	// Output:
	// 250 M6 -0.037 mm -0.008 mm
	// 300 M6 -0.041 mm -0.009 mm
}

func ExampleClass_Range() {
	_, _, ok := limits.MustParseClass("J9").Range()
	fmt.Println(ok)
	over, upTo, ok := limits.MustParseClass("fg6").Range()
	fmt.Println(over, upTo, ok)
	// Output:
	// false
	// 0 mm 10 mm true
}

func ExamplePair_At() {
	f, err := limits.Pair{Hole: limits.MustParseClass("P7"), Shaft: limits.MustParseClass("h6")}.At(30 * units.Millimetre)
	fmt.Println(f, f.Describe(), err)
	// Output: 30 P7/h6 interference 0.001 to 0.035 mm <nil>
}

func ExampleLimits_Band() {
	fmt.Println(limits.MustParseLimits("25 g6").Band())
	// Output: 24.98–24.993 mm
}

// Limits, classes and fits are texts in JSON; a size is kept in millimetres.
func ExampleLimits_MarshalText() {
	data, err := json.Marshal(map[string]limits.Limits{"bore": limits.MustParseLimits("1 in H7")})
	fmt.Println(string(data), err)
	// Output: {"bore":"25.4 H7"} <nil>
}

func ExampleFit_Kind() {
	for _, p := range []string{"25 H7/h6", "25 H7/n6", "25 H7/s6"} {
		fmt.Println(p, limits.MustParse(p).Kind())
	}
	// Output:
	// 25 H7/h6 clearance
	// 25 H7/n6 transition
	// 25 H7/s6 interference
}

func ExampleFit_MaxClearance() {
	f := limits.MustParse("60 H7/n6")
	fmt.Println(f.MaxClearance(), f.MinClearance(), f.Clearance())
	// Output: 0.01 mm -0.039 mm [-0.039 mm, 0.01 mm]
}
