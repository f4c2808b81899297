package tolerance_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleClearance() {
	bore, piston := units.MustParseLength("86.012 mm"), units.MustParseLength("85.965 mm")
	fmt.Println(tolerance.Clearance(bore, piston))

	// The same formula on readings with their errors.
	b, _ := tolerance.ParseBracket("86.012 ±0.003 mm")
	p, _ := tolerance.ParseBracket("85.965 ±0.002 mm")
	fmt.Println(tolerance.Clearance(b, p))
	// Output:
	// 0.047 mm
	// [0.042 mm, 0.052 mm]
}

func ExampleHoleSize() {
	pin, clearance := units.MustParseLength("21.995 mm"), units.MustParseLength("0.012 mm")
	fmt.Println(tolerance.HoleSize(pin, clearance))
	// Output: 22.007 mm
}

func ExampleShaftSize() {
	guide, clearance := units.MustParseLength("7.015 mm"), units.MustParseLength("0.045 mm")
	fmt.Println(tolerance.ShaftSize(guide, clearance))
	// Output: 6.97 mm
}

// A seat insert in its counterbore (TM 5-6115-400-35, table 2.1).
func ExampleFitBands() {
	bore, insert := tolerance.MustParseBand("1.6415–1.6425 in"), tolerance.MustParseBand("1.6445–1.6455 in")
	f, err := tolerance.FitBands(bore, insert)
	fmt.Println(f.Kind(), f.Clearance().Text(units.InInches, 4), err)
	// Output: interference [-0.0040 in, -0.0020 in] <nil>
}

func ExampleFitSizes() {
	bore, _ := tolerance.ParseBracket("30.006 ±0.002 mm")
	pin, _ := tolerance.ParseBracket("30.004 ±0.001 mm")
	f, err := tolerance.FitSizes(bore, pin)
	fmt.Println(f.Kind(), f.Clearance(), err)
	// Output: can't tell [-0.001 mm, 0.005 mm] <nil>
}

func ExampleFitOf_Judge() {
	hole, shaft := tolerance.MustParseBand("10.00–10.03 mm"), tolerance.MustParseBand("9.98–9.99 mm")
	f, _ := tolerance.FitBands(hole, shaft)
	wanted := tolerance.MustParseBand("0.02–0.05 mm")
	below, above, _ := f.Outside(wanted)
	mean, _ := f.Mean()
	fmt.Println(f, "with a mean of", mean)
	fmt.Println("wanted", wanted, "is", f.Judge(wanted), "by", below, "below and", above, "above")
	// Output:
	// clearance 0.01–0.05 mm with a mean of 0.03 mm
	// wanted 0.02–0.05 mm is undecided by 0.01 mm below and 0 mm above
}

func ExampleFitOf_Kind() {
	for _, shaft := range []string{"40 -0.009/-0.025 mm", "40 0/-0.016 mm", "40 +0.018/+0.002 mm", "40 +0.059/+0.043 mm"} {
		f, _ := tolerance.FitBands(tolerance.MustParseBand("40 +0.025/0 mm"), tolerance.MustParseBand(shaft))
		fmt.Println(f.Kind(), "—", f)
	}
	// Output:
	// clearance — clearance 0.009–0.05 mm
	// clearance — clearance 0–0.041 mm
	// transition — from 0.018 mm interference to 0.023 mm clearance
	// interference — interference 0.018–0.059 mm
}

func ExampleHoleBand() {
	pin, wanted := tolerance.MustParseBand("21.994–22.000 mm"), tolerance.MustParseBand("0.003–0.015 mm")
	bush, err := tolerance.HoleBand(pin, wanted)
	fmt.Println(bush, err)
	_, err = tolerance.HoleBand(pin, tolerance.MustParseBand("0.003–0.007 mm"))
	fmt.Println(err)
	// Output:
	// 22.003–22.009 mm <nil>
	// tolerance: hole: no room: the others take 0.006 mm of the 0.004 mm wanted, 0.002 mm too much
}

func ExampleShaftBand() {
	bush, wanted := tolerance.MustParseBand("22.003–22.009 mm"), tolerance.MustParseBand("0.003–0.015 mm")
	pin, err := tolerance.ShaftBand(bush, wanted)
	fmt.Println(pin, err)
	// Output: 21.994–22 mm <nil>
}
