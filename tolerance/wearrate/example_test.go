package wearrate_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/wearrate"
	"github.com/tenthou/tenthou/units"
)

var rate, _ = tolerance.ParseRatio("0.0005")

func ExampleAllowance() {
	fmt.Println(wearrate.Allowance(units.MustParseLength("2.5 in"), rate).Text(units.InInches, 5))
	fmt.Println(wearrate.Allowance(units.MustParseLength("60 mm"), rate))
	// Output:
	// 0.00125 in
	// 0.03 mm
}

func ExampleGreatestWorn() {
	fresh, journal := units.MustParseLength("0.08 mm"), units.MustParseLength("60 mm")
	fmt.Println(wearrate.GreatestWorn(fresh, journal, rate))
	// Output: 0.11 mm
}

func ExampleLeastWorn() {
	fresh, journal := units.MustParseLength("29.95 mm"), units.MustParseLength("30 mm")
	fmt.Println(wearrate.LeastWorn(fresh, journal, rate))
	// Output: 29.935 mm
}

func ExampleSizeFor() {
	// 0.03 mm of wear is within the rate on journals from this size up.
	fmt.Println(wearrate.SizeFor(units.MustParseLength("0.03 mm"), rate))
	// Output: 60 mm
}

func ExampleObserved() {
	r, err := wearrate.Observed(units.MustParseLength("0.043 mm"), units.MustParseLength("86 mm"))
	fmt.Println(r, err)
	// Output: 0.0005 <nil>
}

func ExampleNames() {
	for _, name := range wearrate.Names() {
		fmt.Println(name)
	}
	// Output:
	// TM 10-3930-647-14&P
	// TM 10-3930-671-24
	// NAVEDTRA 14076
}

// A bore of 100 mm by the table of a published manual, chosen by name.
func ExamplePublished() {
	p, err := wearrate.Published(wearrate.TM10393064714P)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, _ := p.Rule(wearrate.CylinderBoreWear)
	s, err := r.Spec(units.MustParseLength("100 mm"), tolerance.Band{})
	fmt.Println(r)
	fmt.Println(s.Wear, err, "by", p.Name)
	// Output:
	// cylinder bore wear: at most 0.001 × bore diameter
	// max 0.1 mm <nil> by TM 10-3930-647-14&P
}

func ExampleProfile_Spec() {
	p, _ := wearrate.Published(wearrate.TM10393064714P)
	journal := units.MustParseLength("2.5 in")
	s, err := p.Spec(wearrate.MainBearingClearance, journal, tolerance.MustParseBand("0.0010–0.0040 in"))
	fmt.Println(s.Wear.Text(units.InInches, 5), err)
	fmt.Println(s.Stand(tolerance.Exactly(units.MustParseLength("0.0050 in"))))
	_, err = p.Spec(wearrate.MainBearingClearance, journal, tolerance.Band{})
	fmt.Println(err)
	// Output:
	// max 0.00525 in <nil>
	// usable
	// wearrate: "main bearing clearance", new-part band no limit: no limit given; the greatest for new parts, which the rule counts from
}

func ExampleParseProfile() {
	p, err := wearrate.ParseProfile("shop.json", []byte(`{
		"schema": 1, "name": "our shop", "source": "records of ten years",
		"rules": [{"item": "cylinder bore wear", "kind": "at most", "rate": "0.0008", "of": "bore diameter"}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := p.Spec("cylinder bore wear", units.MustParseLength("86 mm"), tolerance.Band{})
	fmt.Println(s.Wear, err)
	// Output: max 0.0688 mm <nil>
}
