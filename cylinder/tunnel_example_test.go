package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ExampleHousingOvality() {
	fmt.Println(cylinder.HousingOvality(mmOf("60.010"), mmOf("60.018"), mmOf("60.012")))
	// Output: 0.008 mm
}

func ExampleHousingTaper() {
	fmt.Println(cylinder.HousingTaper(mmOf("60.010"), mmOf("60.012")))
	// Output: 0.002 mm
}

func ExampleMainTunnel_Assess() {
	t := cylinder.MainTunnel{
		Caps: cylinder.CapsTorqued, Levels: []string{"front", "rear"}, Directions: []string{"vertical", "60° left", "60° right"},
		Housings: []cylinder.Housing{
			{Where: "main 1", Sizes: [][]tolerance.Bracket{readings("60.010 mm", "60.012 mm", "60.011 mm"), readings("60.012 mm", "60.012 mm", "60.013 mm")}},
			{Where: "main 2", Sizes: [][]tolerance.Bracket{readings("59.990 mm", "60.012 mm", "60.011 mm"), readings("59.992 mm", "60.012 mm", "60.013 mm")}},
		},
		Size:    tolerance.Spec{New: tolerance.MustParseBand("60.000–60.019 mm")},
		Ovality: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.010 mm")},
	}
	r, err := t.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, h := range r.Housings {
		fmt.Println(h.Where+":", h.Standing, "by", h.Governs)
	}
	// Output:
	// main 1: usable by ovality of the housing
	// main 2: past the wear limit by ovality of the housing
}

func ExampleSaddleOffset() {
	fmt.Println(cylinder.SaddleOffset(mmOf("0"), mmOf("-0.03"), mmOf("0.02"), mmOf("0"), mmOf("100"), mmOf("200")))
	// Output: -0.04 mm
}

func ExampleSaddleStep() {
	fmt.Println(cylinder.SaddleStep(mmOf("0.01"), mmOf("-0.02")))
	// Output: 0.03 mm
}

func ExampleSaddleHeight() {
	r := readings("0 mm", "[0.03 mm, 0.04 mm)")
	fmt.Println(cylinder.SaddleHeight(r[0], r[1]))
	// Output: (-0.04 mm, -0.03 mm]
}

// A straight-edge rests on mains 1 and 4; under it blades find these gaps.
func ExampleTunnelLine_Assess() {
	l := cylinder.TunnelLine{Straight: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")}}
	for i, gap := range readings("0 mm", "[0.03 mm, 0.04 mm)", "[0.02 mm, 0.03 mm)", "0 mm") {
		l.Saddles = append(l.Saddles, cylinder.Saddle{
			Where: fmt.Sprint("main ", i+1), At: units.Length(i) * 100 * units.Millimetre,
			Height: cylinder.SaddleHeight(tolerance.Exactly(units.Length(0)), gap),
		})
	}
	r, err := l.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Straightness.Greatest, r.Straightness.Standing, "at", r.Middle)
	// Output: [0.03 mm, 0.04 mm) usable at main 2
}

func ExampleHousingAfterGrinding() {
	fmt.Println(cylinder.HousingAfterGrinding(mmOf("60.01"), mmOf("0.05"), mmOf("0")))
	// Output: 59.96 mm
}

func ExampleLineHoneStock() {
	fmt.Println(cylinder.LineHoneStock(mmOf("60.02"), mmOf("59.96")))
	// Output: 0.06 mm
}

func ExampleLineHoneBlockCut() {
	fmt.Println(cylinder.LineHoneBlockCut(mmOf("250.00"), mmOf("220.02"), mmOf("60.02")))
	// Output: 0.03 mm
}

func ExampleLineHoneCapCut() {
	fmt.Println(cylinder.LineHoneCapCut(mmOf("60.02"), mmOf("59.96"), mmOf("0.03")))
	// Output: 0.03 mm
}

func ExampleCrankRise() {
	fmt.Println(cylinder.CrankRise(mmOf("0.03"), mmOf("60.01"), mmOf("60.02")))
	// Output: 0.025 mm
}

func ExampleCrankRiseCentred() {
	fmt.Println(cylinder.CrankRiseCentred(mmOf("0.05")))
	// Output: 0.025 mm
}

func ExampleDeckAfterCrankRise() {
	fmt.Println(cylinder.DeckAfterCrankRise(mmOf("0.02"), mmOf("0.025")))
	// Output: -0.005 mm
}

func ExampleLineHone_Assess() {
	r := readings("250.00 mm", "60.01 mm", "250.03 mm", "60.03 mm", "249.98 mm", "60.02 mm")
	h := cylinder.LineHone{
		Housings: []cylinder.HonedHousing{{Where: "main 1", Crown: r[0], Size: r[1]}, {Where: "main 2", Crown: r[2], Size: r[3]}, {Where: "main 3", Crown: r[4], Size: r[5]}},
		Finish:   mmOf("60.02"), LeastCut: mmOf("0.01"), Rise: tolerance.MustParseBand("max 0.05 mm"),
	}
	got, err := h.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range got.Cuts {
		fmt.Println(c.Where, "crown", c.BlockCut, "grind", c.Grind, "rise", c.Rise)
	}
	fmt.Println(got.Allowed, "- forced by", got.Forced)
	// Output:
	// main 1 crown 0.04 mm grind 0.04 mm rise 0.035 mm
	// main 2 crown 0.01 mm grind 0.03 mm rise 0.015 mm
	// main 3 crown 0.06 mm grind 0.07 mm rise 0.06 mm
	// above - forced by main 2
}
