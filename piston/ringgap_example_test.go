package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func ringBracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

// A bore that is 0.10 mm larger opens the gap by 0.31 mm.
func ExampleRingGapChange() {
	fmt.Println(piston.RingGapChange(100*units.Micrometre).Text(units.InMillimetres, 4))
	fmt.Println(piston.RingGapChange(units.Thou).Text(units.InInches, 7))
	// Output:
	// 0.3142 mm
	// 0.0031416 in
}

// Read at the unworn bottom, wanted at the worn top: the same formula gives the
// written-out solution.
func ExampleRingGapInBore() {
	s := working.Given("gap at the bottom", "s", 320*units.Micrometre)
	top := piston.RingGapInBore(s, working.Given("bore at the bottom", "A", units.MustParseLength("86.01 mm")),
		working.Given("bore at the top", "B", units.MustParseLength("86.11 mm"))).Named("gap at the top", "S")
	done, _ := working.Solve(top, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	fmt.Print(done.Text())
	// Output:
	// gap at the top = gap at the bottom + π × (bore at the top − bore at the bottom)
	// S = s + π × (B − A)
	//   = 0.320 mm + π × (86.110 mm − 86.010 mm)
	//   ≈ 0.634 mm
}

// A ring reads 1.87 mm in an 86.50 mm bore; new rings of this kind have
// 0.30 mm in their own: it is one for 86.00 mm.
func ExampleBoreForRingGap() {
	made := piston.BoreForRingGap(units.MustParseLength("0.30 mm"), units.MustParseLength("1.87 mm"), units.MustParseLength("86.50 mm"))
	fmt.Println(made.Text(units.InMillimetres, 2))
	// Output: 86.00 mm
}

func ExampleRingGapChangeByRule() {
	fmt.Println(piston.RingGapChangeByRule(units.Thou).Text(units.InInches, 4))
	// Output: 0.0030 in
}

// By the rule of thumb a bore worn 0.008 in opens the gap by 0.024 in; it is
// 0.0011 in more.
func ExampleRingGapRuleError() {
	fmt.Println(piston.RingGapRuleError(8*units.Thou).Text(units.InInches, 4))
	// Output: 0.0011 in
}

func ExampleRingGapAfterFaceWear() {
	gap := piston.RingGapAfterFaceWear(300*units.Micrometre, 50*units.Micrometre)
	fmt.Println(gap.Text(units.InMillimetres, 3))
	// Output: 0.614 mm
}

func ExampleRingFaceWear() {
	wear := piston.RingFaceWear(units.MustParseLength("0.614 mm"), units.MustParseLength("0.30 mm"))
	fmt.Println(wear.Text(units.InMillimetres, 3))
	// Output: 0.050 mm
}

// A standard ring in a bore of +0.50.
func ExampleRingGapInOversize() {
	fmt.Println(piston.RingGapInOversize(300*units.Micrometre, 500*units.Micrometre).Text(units.InMillimetres, 2))
	// Output: 1.87 mm
}

func ExampleRingStockToFile() {
	fmt.Println(piston.RingStockToFile(350*units.Micrometre, 280*units.Micrometre))
	// Output: 0.07 mm
}

func ExampleRingLeastGap() {
	f, _ := piston.RingGapFactorFor("top ring, road engine")
	fmt.Println(piston.RingLeastGap(4*units.Inch, f.Factor).Text(units.InInches, 3), "by", f.Source)
	// Output: 0.016 in by common practice
}

func ExampleRingGapFactors() {
	for _, f := range piston.RingGapFactors() {
		fmt.Printf("%v: %s (%s)\n", f.Factor, f.Use, f.Source)
	}
	// Output:
	// 0.003: any ring, at the least (common practice)
	// 0.004: top ring, road engine (common practice)
	// 0.005: second ring, road engine (from memory)
	// 0.006: top ring, boosted engine (from memory)
}

func ExampleRingGapFactorFor() {
	_, ok := piston.RingGapFactorFor("steam engine")
	fmt.Println(ok)
	// Output: false
}

func ExampleRingBoreDiameter() {
	fmt.Println(piston.RingBoreDiameter(units.MustParseLength("86.10 mm"), units.MustParseLength("86.04 mm")))
	// Output: 86.07 mm
}

// Out-of-round by 0.10 mm changes the way round by less than 0.1 µm.
func ExampleRingOvalExcess() {
	fmt.Println(piston.RingOvalExcess(units.MustParseLength("86.10 mm"), units.MustParseLength("86.00 mm")).Text(units.InMicrometres, 2))
	// Output: 0.09 µm
}

func ExampleRingGapOneSided() {
	fmt.Println(piston.RingGapOneSided(300*units.Micrometre, 80*units.Micrometre))
	// Output: 0.46 mm
}

func ExampleRingGapWornArc() {
	gap := piston.RingGapWornArc(300*units.Micrometre, 30*units.Micrometre, 60*units.Millimetre, 86*units.Millimetre)
	fmt.Println(gap.Text(units.InMillimetres, 3))
	// Output: 0.342 mm
}

// A ring that stands 2 mm out of square reads 0.04 mm too much.
func ExampleRingTiltError() {
	fmt.Println(piston.RingTiltError(86*units.Millimetre, 2*units.Millimetre).Text(units.InMillimetres, 3))
	// Output: 0.037 mm
}

// Where a gap closes by 0.30 mm on the ring's middle line, the edges of its
// face close by more and those of its back by less.
func ExampleRingOpeningAtFace() {
	d, t := 86*units.Millimetre, 3500*units.Micrometre
	fmt.Println(piston.RingOpeningAtFace(-300*units.Micrometre, d, t).Text(units.InMillimetres, 4))
	fmt.Println(piston.RingOpeningAtBack(-300*units.Micrometre, d, t).Text(units.InMillimetres, 4))
	// Output:
	// -0.3127 mm
	// -0.2873 mm
}

func ExampleRingOpeningAtBack() {
	fmt.Println(piston.RingOpeningAtBack(300*units.Micrometre, 86*units.Millimetre, 3500*units.Micrometre).Text(units.InMillimetres, 4))
	// Output: 0.2873 mm
}

func ExampleRingClosingToButt() {
	fmt.Println(piston.RingClosingToButt(300*units.Micrometre, 86*units.Millimetre, 3500*units.Micrometre).Text(units.InMillimetres, 4))
	// Output: 0.2878 mm
}

func ExampleRingGap_Assess() {
	g := piston.RingGap{
		Where: "cylinder 2, top ring",
		Stations: []piston.RingGapStation{
			{Place: "top of ring travel", Bore: ringBracket("86.110 ±0.003 mm")},
			{Place: "bottom of ring travel", Bore: ringBracket("86.015 ±0.003 mm"), Gap: ringBracket("[0.15 mm, 0.20 mm)")},
		},
		Limits: tolerance.Spec{New: tolerance.MustParseBand("0.25–0.45 mm"), Wear: tolerance.MustParseBand("max 1.0 mm")},
	}
	r, err := g.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range r.Stations {
		fmt.Println(s.Place, s.Gap.Text(units.InMillimetres, 3))
	}
	fmt.Println(r.Remedy)
	fmt.Println(r.Next)
	// Output:
	// top of ring travel [0.414 mm, 0.535 mm)
	// bottom of ring travel [0.150 mm, 0.200 mm)
	// file the ends
	// too small at bottom of ring travel: file 0.1 mm to 0.465 mm off the ends in all, little by little, from the face inward, and read again
}

func ringInHeat() piston.RingHeat {
	iron, _ := piston.MetalOf("grey iron")
	return piston.RingHeat{Bore: ringBracket("86.000 ±0.005 mm"), Gap: ringBracket("[0.30 mm, 0.35 mm)"), Thickness: units.MustParseLength("3.5 mm"),
		MeasuredAt: units.Reference, BoreMetal: iron, RingMetal: iron}
}

func ringAt(s string) tolerance.Interval[units.Temperature] {
	return tolerance.Exactly(units.MustParseTemperature(s))
}

func ExampleRingHeat_GapAt() {
	h := ringInHeat()
	gap, _ := h.GapAt(ringAt("110 °C"), ringAt("190 °C"))
	fmt.Println(gap.Text(units.InMillimetres, 3))
	// Output: [0.043 mm, 0.094 mm]
}

func ExampleRingHeat_ButtsAt() {
	h := ringInHeat()
	t, _ := h.ButtsAt(ringAt("110 °C"))
	fmt.Println("the ends may touch with the ring at", t.Text(units.InCelsius, 0))
	// Output: the ends may touch with the ring at 204 °C
}

func ExampleRingHeat_ColdFor() {
	h := ringInHeat()
	gap, _ := h.ColdFor(0, ringAt("110 °C"), ringAt("250 °C"))
	fmt.Println("at least", gap.Text(units.InMillimetres, 2))
	// Output: at least 0.45 mm
}

func ExampleRingGapHot() {
	hot := piston.RingGapHot[tolerance.Float](0.30, 86, 11.4e-6, 170, 11.4e-6, 90)
	fmt.Printf("%.3f mm\n", hot)
	// Output: 0.054 mm
}

func ExampleRingButtingRise() {
	r := piston.RingButtingRise(working.GivenReal("gap", "s", 0.3, "mm"), working.GivenReal("bore", "D", 86, "mm"), working.GivenReal("ring's expansion", "α", 11.4e-6, "/K"),
		working.GivenReal("bore's expansion", "γ", 11.4e-6, "/K"), working.GivenReal("bore's rise", "b", 90, "K")).Named("ring's rise", "r", "K")
	s, _ := working.SolveReal(r, working.RealStyle{Places: 1})
	fmt.Print(s.Text())
	// Output:
	// ring's rise = (gap + π × bore × bore's expansion × bore's rise) ÷ ((π × bore − gap) × ring's expansion)
	// r = (s + π × D × γ × b) ÷ ((π × D − s) × α)
	//   = (0.3 mm + π × 86 mm × 0.0000114 /K × 90 K) ÷ ((π × 86 mm − 0.3 mm) × 0.0000114 /K)
	//   ≈ 187.6 K
}

func ExampleRingButtingBoreRise() {
	fmt.Printf("%.0f K\n", piston.RingButtingBoreRise[tolerance.Float](0.30, 86, 11.4e-6, 230, 11.4e-6))
	// Output: 132 K
}

func ExampleRingGapForHeat() {
	fmt.Printf("%.2f mm\n", piston.RingGapForHeat[tolerance.Float](0, 86, 11.4e-6, 230, 11.4e-6, 90))
	// Output: 0.43 mm
}
