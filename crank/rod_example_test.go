package crank_test

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleRodLength() {
	fmt.Println(crank.RodLength(inches(".001"), inches("-.002")).Text(units.InInches, 4))
	// Output: -0.0005 in
}

func ExampleRodBend() {
	fmt.Println(crank.RodBend(inches(".001"), inches("-.002")).Text(units.InInches, 4))
	// Output: 0.0030 in
}

func ExampleRodReadings() {
	right, left := crank.RodReadings(inches("-.0005"), inches(".003"))
	fmt.Println(right.Text(units.InInches, 4), left.Text(units.InInches, 4))
	// Output: 0.0010 in -0.0020 in
}

func ExampleRodTurned() {
	rod, fixture := crank.RodTurned(millimetres("0.04"), millimetres("-0.02"))
	fmt.Println("rod", rod, "fixture", fixture)
	// Output: rod 0.03 mm fixture 0.01 mm
}

func ExampleRodTwist() {
	fmt.Println(crank.RodTwist(millimetres("0.02"), millimetres("-0.03")))
	// Output: 0.05 mm
}

// A blade of .006 in under one end of an arbor across blocks 6 in apart, and
// 0.06 mm over 150 mm carried to 100 mm.
func ExampleRodPer() {
	fmt.Println(crank.RodPer(inches(".006"), inches("6"), inches("1")).Text(units.InInches, 3))
	fmt.Println(crank.RodPer(millimetres("0.06"), millimetres("150"), millimetres("100")))
	// Output:
	// 0.001 in
	// 0.04 mm
}

func ExampleRodAngle() {
	fmt.Printf("%.4f°\n", crank.RodAngle(tolerance.Float(0.06), 150)*180/math.Pi)
	// Output: 0.0229°
}

func ExampleRodCentres() {
	fmt.Println(crank.RodCentres(millimetres("96.3"), millimetres("51.6"), millimetres("22")))
	// Output: 133.1 mm
}

func ExampleRodGap() {
	fmt.Println(crank.RodGap(millimetres("133.1"), millimetres("51.6"), millimetres("22")))
	// Output: 96.3 mm
}

func ExampleRodCentresOver() {
	fmt.Println(crank.RodCentresOver(millimetres("169.9"), millimetres("51.6"), millimetres("22")))
	// Output: 133.1 mm
}

func ExampleRodOver() {
	fmt.Println(crank.RodOver(millimetres("133.1"), millimetres("51.6"), millimetres("22")))
	// Output: 169.9 mm
}

// Two rods share the crankpin.
func ExampleRodSideClearance() {
	fmt.Println(crank.RodSideClearance(millimetres("44.2"), millimetres("21.98"), millimetres("21.99")))
	// Output: 0.23 mm
}

func ExampleRodWidths() {
	fmt.Println(crank.RodWidths(millimetres("44.2"), millimetres("0.23")))
	// Output: 43.97 mm
}

func ExampleRodCapShift() {
	fmt.Println(crank.RodCapShift(millimetres("0.03"), millimetres("-0.01")))
	// Output: 0.02 mm
}

func ExampleRodCapShiftByBore() {
	fmt.Printf("%.3f mm\n", crank.RodCapShiftByBore(tolerance.Float(51.591), 51.619, math.Pi/4))
	// Output: 0.020 mm
}

func ExampleRodOvality() {
	fmt.Println(crank.RodOvality(millimetres("51.612"), millimetres("51.606"), millimetres("51.605")))
	// Output: 0.007 mm
}

func ExampleRodTaper() {
	fmt.Println(crank.RodTaper(millimetres("51.612"), millimetres("51.610")))
	// Output: 0.002 mm
}

func ExampleRodBore_Assess() {
	b := crank.RodBore{
		Where: "rod 1, big end", Planes: []string{"front"}, Directions: []string{"in line", "60° left", "60° right"},
		Sizes:   [][]tolerance.Bracket{{bracketOf("51.612 mm"), bracketOf("51.606 mm"), bracketOf("51.605 mm")}},
		Ovality: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.005 mm")},
	}
	r, err := b.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.WorstAt, r.Worst)
	// Output: ovality, rod 1, big end, front past the wear limit
}

func ExampleRodCheck_Assess() {
	r, err := crank.RodCheck{
		Where: "rod 3", Right: bracketOf(".001 in"), Left: bracketOf("-.002 in"),
		Limits: crank.RodLimits{Bend: tolerance.Spec{New: tolerance.MustParseBand("max 0.0015 in")}},
	}.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Next)
	// Output: bend is out of limits: replace the rod, or straighten it only where the engine maker's manual allows, and test it for cracks
}

func ExampleBoltStretch() {
	fmt.Println(crank.BoltStretch(millimetres("62.11"), millimetres("62.25")))
	// Output: 0.14 mm
}

func ExampleBoltTightened() {
	fmt.Println(crank.BoltTightened(millimetres("62.11"), millimetres("0.14")))
	// Output: 62.25 mm
}

func ExampleBoltGrowth() {
	fmt.Println(crank.BoltGrowth(millimetres("62.10"), millimetres("62.11")))
	// Output: 0.01 mm
}

func ExampleBoltArea() {
	fmt.Printf("%.2f mm²\n", crank.BoltArea(tolerance.Float(8)))
	// Output: 50.27 mm²
}

func ExampleBoltLoad() {
	fmt.Printf("%.1f kN\n", crank.BoltLoad(tolerance.Float(0.14), 210_000, crank.BoltArea(tolerance.Float(8)), 55)/1000)
	// Output: 26.9 kN
}

func ExampleBoltStretchUnder() {
	fmt.Printf("%.3f mm\n", crank.BoltStretchUnder(tolerance.Float(26_870), 210_000, crank.BoltArea(tolerance.Float(8)), 55))
	// Output: 0.140 mm
}

func ExampleBoltCheck_Assess() {
	r, err := crank.BoltCheck{Where: "rod 3, bolt 1", Yield: true, Used: true, Free: bracketOf("62.11 mm")}.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Next)
	// Output: renew: a bolt tightened to yield is used once, whatever its length
}

func ExampleWebVertical() {
	fmt.Println(crank.WebVertical(millimetres("0.02"), millimetres("-0.01")))
	// Output: 0.03 mm
}

func ExampleWebHorizontal() {
	fmt.Println(crank.WebHorizontal(millimetres("0.01"), millimetres("0")))
	// Output: 0.01 mm
}

func ExampleWebBottom() {
	fmt.Println(crank.WebBottom(millimetres("-0.009"), millimetres("-0.005")))
	// Output: -0.007 mm
}

// By the mean alone it would be 0.027 mm.
func ExampleWebVerticalAt() {
	fmt.Printf("%.4f mm\n", crank.WebVerticalAt(tolerance.Float(0.02), -0.009, -0.005, math.Pi/6))
	// Output: 0.0289 mm
}

func ExampleWebClosure() {
	fmt.Println(crank.WebClosure(millimetres("0.02"), millimetres("0.01"), millimetres("-0.01"), millimetres("0")))
	// Output: 0 mm
}

func ExampleWebSwing() {
	fmt.Printf("%.3f mm\n", crank.WebSwing(tolerance.Float(0.03), 0.01))
	// Output: 0.032 mm
}

func ExampleWebSurvey_Inspect() {
	s := crank.WebSurvey{
		Throws:   []crank.WebThrow{{Where: "throw 4", Top: bracketOf("0.02 mm"), Port: bracketOf("0.01 mm"), Bottom: bracketOf("-0.01 mm"), Starboard: bracketOf("0 mm")}},
		Vertical: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.03 mm")},
	}
	r, err := s.Inspect()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Throws[0].Vertical, r.Worst)
	// Output: 0.03 mm usable
}
