package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleSideClearance() {
	groove, ring := units.MustParseLength("1.560 mm"), units.MustParseLength("1.505 mm")
	fmt.Println(piston.SideClearance(groove, ring))

	// The same formula on micrometer readings with their errors.
	g, _ := tolerance.ParseBracket("1.560 ±0.005 mm")
	r, _ := tolerance.ParseBracket("1.505 ±0.002 mm")
	fmt.Println(piston.SideClearance(g, r))
	// Output:
	// 0.055 mm
	// [0.048 mm, 0.062 mm]
}

func ExampleGrooveWidth() {
	fmt.Println(piston.GrooveWidth(units.MustParseLength("0.055 mm"), units.MustParseLength("1.985 mm")))
	// Output: 2.04 mm
}

func ExampleRingHeight() {
	fmt.Println(piston.RingHeight(units.MustParseLength("2.040 mm"), units.MustParseLength("0.055 mm")))
	// Output: 1.985 mm
}

func ExampleGrooveWear() {
	fmt.Println(piston.GrooveWear(units.MustParseLength("1.565 mm"), units.MustParseLength("1.535 mm")))
	// Output: 0.03 mm
}

func ExampleGrooveWearByClearance() {
	clearance, _ := tolerance.ParseBracket("[0.0762 mm, 0.1016 mm)")
	used := tolerance.Exactly(units.MustParseLength("1.478 mm"))
	fresh := tolerance.Exactly(units.MustParseLength("1.535 mm"))
	fmt.Println(piston.GrooveWearByClearance(clearance, used, fresh))
	// Output: [0.0192 mm, 0.0446 mm)
}

func ExampleRingWear() {
	fmt.Println(piston.RingWear(units.MustParseLength("1.478 mm"), units.MustParseLength("1.490 mm")))
	// Output: 0.012 mm
}

func ExampleGrooveShare() {
	groove, ring := units.MustParseLength("0.030 mm"), units.MustParseLength("0.010 mm")
	fmt.Println(piston.GrooveShare(groove.Add(ring), groove, ring), "of", groove.Add(ring))
	// Output: 0.03 mm of 0.04 mm
}

func ExampleClearanceWithRing() {
	clearance, _ := tolerance.ParseBracket("[0.0762 mm, 0.1016 mm)")
	used := tolerance.Exactly(units.MustParseLength("1.455 mm"))
	fresh := tolerance.MustParseBand("1.478–1.490 mm").Interval()
	fmt.Println(piston.ClearanceWithRing(clearance, used, fresh))
	// Output: [0.0412 mm, 0.0786 mm)
}

func ExampleRingHeightFor() {
	clearance, used := units.MustParseLength("0.09 mm"), units.MustParseLength("1.47 mm")
	wanted := tolerance.MustParseBand("0.03–0.07 mm").Interval()
	fmt.Println(piston.RingHeightFor(tolerance.Exactly(clearance), tolerance.Exactly(used), wanted))
	// Output: [1.49 mm, 1.53 mm]
}

func ExampleGrooveTaper() {
	// The blade that goes in a little way reads the mouth.
	mouth, _ := tolerance.ParseBracket("[0.1016 mm, 0.127 mm)")
	root, _ := tolerance.ParseBracket("[0.0508 mm, 0.0635 mm)")
	fmt.Println(piston.GrooveTaper(mouth, root))
	// Output: (0.0381 mm, 0.0762 mm)
}

func ExampleMeasureSideClearance() {
	groove, _ := tolerance.ParseBracket("1.50 mm")
	ring, _ := tolerance.ParseBracket("1.52 mm")
	_, err := piston.MeasureSideClearance(groove, ring)
	fmt.Println(err)
	// Output: piston: ring height 1.52 mm is not below groove width 1.5 mm
}

// A .003 in blade enters, .004 in doesn't; the used ring is known.
func ExampleTryNewRing() {
	clearance, _ := tolerance.ParseBracket("[0.0762 mm, 0.1016 mm)")
	allowed := tolerance.MustParseBand("0.03–0.07 mm")
	fresh := tolerance.MustParseBand("1.478–1.490 mm")

	used, _ := tolerance.ParseBracket("1.446 mm")
	n, _ := piston.TryNewRing([]tolerance.Bracket{clearance}, used, fresh, allowed)
	fmt.Println(n.Outcome, n.Least)

	used, _ = tolerance.ParseBracket("1.487 mm")
	n, _ = piston.TryNewRing([]tolerance.Bracket{clearance}, used, fresh, allowed)
	fmt.Println(n.Outcome, n.Greatest)

	n, _ = piston.TryNewRing([]tolerance.Bracket{clearance}, tolerance.Bracket{}, fresh, allowed)
	fmt.Printf("%v: %s\n", n.Outcome, n.Settle)
	// Output:
	// back in band [0.0322 mm, 0.0696 mm)
	// still too large [0.0732 mm, 0.1106 mm)
	// can't tell: measure the used ring's height
}

func ExampleShareWear() {
	clearance, _ := tolerance.ParseBracket("[0.0762 mm, 0.1016 mm)")
	used, _ := tolerance.ParseBracket("1.478 mm")
	w, _ := piston.ShareWear(clearance, used, tolerance.MustParseBand("1.530–1.540 mm"), tolerance.MustParseBand("1.490–1.490 mm"))
	fmt.Println("groove", w.Groove)
	fmt.Println("ring", w.Ring)
	fmt.Printf("the groove's share is %d to %d %%\n", w.LeastPercent, w.GreatestPercent)
	// Output:
	// groove [0.0142 mm, 0.0496 mm)
	// ring 0.012 mm
	// the groove's share is 54 to 81 %
}

func ExampleGroove_Assess() {
	clearance, _ := tolerance.ParseBracket("[0.1016 mm, 0.127 mm)")
	used, _ := tolerance.ParseBracket("1.487 mm")
	g := piston.Groove{
		Where:      "piston 3, top groove",
		Stations:   []tolerance.Bracket{clearance},
		Limits:     tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")},
		UsedHeight: used,
		NewHeight:  tolerance.MustParseBand("1.478–1.490 mm"),
	}
	r, err := g.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Finding.Standing)
	fmt.Println(r.Next)
	// Output:
	// past the wear limit
	// the groove is worn, a new ring would still be loose: re-cut the groove with a spacer, or renew the piston; never a thicker ring
}
