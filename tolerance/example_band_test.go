package tolerance_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What manuals print, read and judged with a 0.10 mm blade that drags while
// the 0.11 mm blade doesn't enter.
func ExampleParseBand() {
	gap, _ := tolerance.ParseBracket("[0.10 mm, 0.11 mm)")
	for _, s := range []string{
		"0.03–0.07 mm", "max 0.10 mm", "less than 0.10 mm", "renew at 0.10 mm or more", "73.00 +0.03/-0.01 mm", `.0012-.0028"`,
	} {
		b, err := tolerance.ParseBand(s)
		fmt.Printf("%s: %v, %v %v\n", s, b, b.Judge(gap), err)
	}
	_, err := tolerance.ParseBand("0.10 mm or more")
	fmt.Println(err)
	// Output:
	// 0.03–0.07 mm: 0.03–0.07 mm, above <nil>
	// max 0.10 mm: max 0.1 mm, undecided <nil>
	// less than 0.10 mm: less than 0.1 mm, above <nil>
	// renew at 0.10 mm or more: less than 0.1 mm, above <nil>
	// 73.00 +0.03/-0.01 mm: 72.99–73.03 mm, below <nil>
	// .0012-.0028": 0.03048–0.07112 mm, above <nil>
	// tolerance: band "0.10 mm or more", at byte 8: ambiguous; is that allowed, or the reading to renew at? write "max …" or "min …", or "renew at … or more"
}

// The load of a valve spring at its installed height.
func ExampleParseBandOf() {
	load, _ := tolerance.ParseBandOf[units.Force]("72–82 lbf")
	fmt.Println(load.Text(units.InPoundsForce, 0))
	// Output: 72–82 lbf
}

func ExampleMustParseBand() {
	fmt.Println(tolerance.MustParseBand("2.5 ±0.02 mm"))
	// Output: 2.48–2.52 mm
}

// A limit keeps the places that the manual prints it with.
func ExampleParsePrinted() {
	p, _ := tolerance.ParsePrinted("0.030–0.070 mm")
	fmt.Println(p, "/", p.Greatest, "/", p.BandOf)
	// Output: 0.030–0.070 mm / 0.070 mm / 0.03–0.07 mm
}

func ExampleParsePrintedOf() {
	seat, _ := tolerance.ParsePrintedOf[units.Angle]("44°30′–45°00′")
	fmt.Println(seat, "/", seat.Least, "/", seat.BandOf)
	// Output: 44°30′–45°00′ / 44° 30′ / 44.5°–45°
}

func ExampleNewBand() {
	b, err := tolerance.NewBand(30*units.Micrometre, tolerance.Closed, 70*units.Micrometre, tolerance.Open)
	fmt.Println(b, err)
	// Output: min 0.03 mm, less than 0.07 mm <nil>
}

func ExampleBetween() {
	fmt.Println(tolerance.Between(30*units.Micrometre, 70*units.Micrometre))
	_, err := tolerance.Between(70*units.Micrometre, 30*units.Micrometre)
	fmt.Println(err)
	// Output:
	// 0.03–0.07 mm <nil>
	// tolerance: band: nothing lies between a least of 0.07 mm and a greatest of 0.03 mm
}

func ExampleMustBetween() {
	fmt.Println(tolerance.MustBetween(30*units.Micrometre, 70*units.Micrometre))
	// Output: 0.03–0.07 mm
}

// A reading on the limit passes.
func ExampleAtMost() {
	limit := 100 * units.Micrometre
	fmt.Println(tolerance.AtMost(limit), tolerance.AtMost(limit).Allows(limit))
	// Output: max 0.1 mm true
}

// Renew at 0.10 mm or more: a reading on the limit fails.
func ExampleLessThan() {
	limit := 100 * units.Micrometre
	fmt.Println(tolerance.LessThan(limit), tolerance.LessThan(limit).Allows(limit))
	// Output: less than 0.1 mm false
}

func ExampleAtLeast() {
	limit := 30 * units.Micrometre
	fmt.Println(tolerance.AtLeast(limit), tolerance.AtLeast(limit).Allows(limit))
	// Output: min 0.03 mm true
}

func ExampleMoreThan() {
	limit := 30 * units.Micrometre
	fmt.Println(tolerance.MoreThan(limit), tolerance.MoreThan(limit).Allows(limit))
	// Output: more than 0.03 mm false
}

func ExampleBandOf_Lower() {
	fmt.Println(tolerance.MustParseBand("min 0.03 mm, less than 0.07 mm").Lower())
	// Output: 0.03 mm closed
}

func ExampleBandOf_Upper() {
	fmt.Println(tolerance.MustParseBand("min 0.03 mm, less than 0.07 mm").Upper())
	// Output: 0.07 mm open
}

// The clearances that two toleranced parts can have.
func ExampleBandOf_Interval() {
	groove, ring := tolerance.MustParseBand("1.53–1.55 mm"), tolerance.MustParseBand("1.47–1.49 mm")
	fmt.Println(groove.Interval().Sub(ring.Interval()))
	// Output: [0.04 mm, 0.08 mm]
}

func ExampleBandFrom() {
	reading, _ := tolerance.ParseBracket("73.02 ±0.005 mm")
	fmt.Println(tolerance.BandFrom(reading))
	// Output: 73.015–73.025 mm
}

func ExampleBandOf_IsZero() {
	fmt.Println(tolerance.Band{}, tolerance.Band{}.IsZero())
	// Output: no limit true
}

func ExampleBandOf_InRange() {
	fmt.Println(tolerance.AtMost(units.OutOfRange[units.Length]()).InRange())
	// Output: false
}

func ExampleBandOf_Allows() {
	b := tolerance.MustParseBand("0.03–0.07 mm")
	fmt.Println(b.Allows(70*units.Micrometre), b.Allows(70*units.Micrometre+units.Picometre))
	// Output: true false
}

// The same limits with three blades: .003 in enters; .0025 in enters and .003
// doesn't; .002 in enters and .0025 doesn't.
func ExampleBandOf_Judge() {
	b := tolerance.MustParseBand("0.03–0.07 mm")
	for _, s := range []string{"[.003 in, ∞)", "[.0025 in, .003 in)", "[.002 in, .0025 in)"} {
		gap, _ := tolerance.ParseBracket(s)
		fmt.Println(gap, b.Judge(gap))
	}
	// Output:
	// [0.0762 mm, ∞) above
	// [0.0635 mm, 0.0762 mm) undecided
	// [0.0508 mm, 0.0635 mm) within
}

// Too tight in one place and too loose in another.
func ExampleBandOf_JudgeAll() {
	b := tolerance.MustParseBand("0.03–0.07 mm")
	front, rear := tolerance.Exactly(20*units.Micrometre), tolerance.Exactly(80*units.Micrometre)
	fmt.Printf("%+v\n", b.JudgeAll(front, rear))
	// Output: {Least:below Greatest:above}
}

func ExampleExtremes() {
	front, _ := tolerance.ParseBracket("[0.05 mm, 0.06 mm)")
	rear, _ := tolerance.ParseBracket("[0.06 mm, 0.07 mm)")
	fmt.Println(tolerance.Extremes(rear, front))
	// Output: [0.05 mm, 0.06 mm) [0.06 mm, 0.07 mm)
}

func ExampleBandOf_String() {
	fmt.Println(tolerance.MustParseBand(`.0012-.0028"`).String())
	// Output: 0.03048–0.07112 mm
}

// Rounded inward: what is printed allows nothing that the band doesn't. Two
// places would leave nothing of it.
func ExampleBandOf_Text() {
	b := tolerance.MustParseBand("0.03–0.07 mm")
	fmt.Println(b.Text(units.InInches, 4))
	fmt.Println(b.Text(units.InInches, 2))
	// Output:
	// 0.0012–0.0027 in
	// 0.0012–0.0027 in
}

// Two columns of one manual.
func ExampleCompare() {
	d := tolerance.Compare(tolerance.MustParseBand("0.03–0.07 mm"), tolerance.MustParseBand("0.0012–0.0028 in"))
	fmt.Println(d)
	// Output: the first alone accepts [0.03 mm, 0.03048 mm), the second alone (0.07 mm, 0.07112 mm]
}

func ExampleDifference_Same() {
	d := tolerance.Compare(tolerance.MustParseBand("max 0.1016 mm"), tolerance.MustParseBand("max .004 in"))
	fmt.Println(d.Same(), d)
	// Output: true both accept the same
}
