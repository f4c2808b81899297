package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// build is an invented engine: 86 × 86 mm, a chamber of 45 cm³.
func build() cylinder.Build {
	return cylinder.Build{
		Bore: exactLength("86 mm"), Stroke: exactLength("86 mm"),
		Chamber:     exactVolume("45 cm³"),
		Gasket:      cylinder.Gasket{Bore: exactLength("87.5 mm"), Thickness: exactLength("1.20 mm")},
		Deck:        cylinder.DeckBelow(exactLength("0.30 mm")),
		Crown:       cylinder.Crown{Dish: exactVolume("3 cm³")},
		OpenAreaMM2: 5200,
	}
}

func ExampleBuild_Compression() {
	c, _ := build().Compression()
	fmt.Println(c.Ratio)

	// With what the readings leave open, every combination of them counts.
	b := build()
	b.Chamber, _ = tolerance.ParseInterval[units.Volume]("45 ±0.2 cm³")
	b.Deck, _ = cylinder.ParseDeck("0.30 ±0.02 mm below")
	c, _ = b.Compression()
	fmt.Println(c.Ratio)

	// The same figure taken for above the block face.
	b = build()
	b.Deck = cylinder.DeckAbove(exactLength("0.30 mm"))
	c, _ = b.Compression()
	fmt.Println(c.Ratio)
	// Output:
	// 9.77
	// 9.72 to 9.82
	// 10.34
}

// A piston that would hit the head is an error, not a ratio.
func ExampleContactError() {
	b := build()
	b.Chamber, b.Crown = exactVolume("10 cm³"), cylinder.Crown{Dome: exactVolume("20 cm³")}
	_, err := b.Compression()
	fmt.Println(err)
	// Output: cylinder: clearance volume (-1.042 cm³, -1.041 cm³) is not above 0: the piston hits the head; do not turn the engine; check the deck's side (below or above the block face), the gasket's compressed thickness and the dome
}

func ExampleDoubt() {
	b, _ := build().Rebored(exactLength("88 mm"))
	c, _ := b.Compression()
	fmt.Println(c.Ratio)
	fmt.Println(c.Doubts[0])
	// Output:
	// 10.17
	// the gasket's bore may be below the cylinder's: it overhangs into the bore, burns and can be struck; fit a gasket made for the bore
}

func ExampleParseDeck() {
	d, _ := cylinder.ParseDeck("0.30 mm below")
	fmt.Println(d.Below())
	d, _ = cylinder.ParseDeck(".012 in above")
	fmt.Println(d.Below())
	_, err := cylinder.ParseDeck("0.30 mm")
	fmt.Println(err)
	// Output:
	// 0.3 mm
	// -0.3048 mm
	// cylinder: deck "0.30 mm" is not a deck such as "0.30 mm below", "0.05 ±0.01 mm above" or "level"
}

func ExampleDeckBelow() {
	fmt.Println(cylinder.DeckBelow(exactLength("0.30 mm")), "is", cylinder.DeckBelow(exactLength("0.30 mm")).Above(), "above")
	// Output: 0.3 mm below is -0.3 mm above
}

func ExampleDeckAbove() {
	fmt.Println(cylinder.DeckAbove(exactLength("0.05 mm")))
	// Output: 0.05 mm above
}

func ExampleLevelDeck() {
	fmt.Println(cylinder.LevelDeck(), cylinder.LevelDeck().Below())
	// Output: level 0 mm
}

func ExampleCompressionRatio() {
	c := cylinder.ClearanceVolume(
		working.GivenReal("chamber", "Vk", 45, "cm³"),
		working.GivenReal("gasket", "Vg", 7.216, "cm³"),
		working.GivenReal("deck", "Vd", 1.743, "cm³"),
		working.GivenReal("crown", "Vp", 3, "cm³"),
		working.GivenReal("ring land", "Vl", 0, "cm³")).Named("clearance volume", "Vc", "cm³")
	r := cylinder.CompressionRatio(working.GivenReal("swept volume", "Vs", 499.557, "cm³"), c).Named("compression ratio", "R", "")
	s, _ := working.SolveReal(r, working.RealStyle{Places: 2})
	fmt.Print(s.Text())
	// Output:
	// clearance volume = chamber + gasket + deck + crown + ring land
	// Vc = Vk + Vg + Vd + Vp + Vl
	//    = 45 cm³ + 7.216 cm³ + 1.743 cm³ + 3 cm³ + 0 cm³
	//    = 56.959 cm³
	//
	// compression ratio = swept volume ÷ clearance volume + 1
	// R = Vs ÷ Vc + 1
	//   = 499.557 cm³ ÷ 56.959 cm³ + 1
	//   ≈ 9.77
}

func ExampleClearanceFor() {
	fmt.Printf("%.3f cm³\n", cylinder.ClearanceFor(tolerance.Float(272.376), 8))
	// Output: 38.911 cm³
}

func ExampleSweptFor() {
	fmt.Printf("%.3f cm³\n", cylinder.SweptFor(tolerance.Float(38.911), 8))
	// Output: 272.377 cm³
}

func ExampleClearanceVolume() {
	fmt.Printf("%.2f cm³\n", cylinder.ClearanceVolume(tolerance.Float(45), 7.216, 1.743, -5, 0))
	// Output: 48.96 cm³
}

// 10 mm down, a flat crown would take 58.088 cm³; 53.1 went in.
func ExampleCrownByFill() {
	fmt.Printf("%.2f cm³: a dome\n", cylinder.CrownByFill(tolerance.Float(8.6), 1, 53.1))
	// Output: -4.99 cm³: a dome
}

func ExampleRingLandVolume() {
	fmt.Printf("%.2f cm³\n", cylinder.RingLandVolume(tolerance.Float(8.6), 8.54, 0.6))
	// Output: 0.48 cm³
}

// The open area is that of the chamber's outline on the face. With the bore's
// the same cut would seem to take 1.16 cm³.
func ExampleSkimVolume() {
	fmt.Printf("%.2f cm³\n", cylinder.SkimVolume(tolerance.Float(52), 0.02))
	// Output: 1.04 cm³
}

func ExampleOpenArea() {
	fmt.Printf("%.0f cm²\n", cylinder.OpenArea(tolerance.Float(45), 43.96, 0.02))
	// Output: 52 cm²
}

func ExampleStrokeForRatio() {
	fmt.Printf("%.3f cm\n", cylinder.StrokeForRatio(tolerance.Float(8.6), 56.958, 10.5))
	// Output: 9.315 cm
}

func ExampleStrokeForRatioSameRod() {
	fmt.Printf("%.3f cm\n", cylinder.StrokeForRatioSameRod(tolerance.Float(8.6), 499.557, 56.958, 10.5))
	// Output: 8.724 cm
}

func ExampleBuild_GasketFor() {
	t, _ := build().GasketFor(tolerance.Ratio{Num: 21, Den: 2}) // 10.5 to 1
	fmt.Println(t.Text(units.InMillimetres, 3))
	_, err := build().GasketFor(tolerance.Whole(20))
	fmt.Println(err)
	// Output:
	// (0.472 mm, 0.473 mm)
	// cylinder: wanted ratio 20 is not one that leaves room for a gasket (it takes (-3.900 mm, -3.899 mm) thick)
}

func ExampleBuild_ChamberFor() {
	v, _ := build().ChamberFor(tolerance.Ratio{Num: 21, Den: 2})
	fmt.Println(v.Text(units.InCubicCentimetres, 2))
	// Output: (40.62 cm³, 40.63 cm³)
}

func ExampleBuild_DeckFor() {
	d, _ := build().DeckFor(tolerance.Ratio{Num: 21, Den: 2})
	fmt.Println(d.Above().Text(units.InMillimetres, 3), "above")
	// Output: (0.452 mm, 0.453 mm) above
}

func ExampleBuild_HeadSkimFor() {
	off, _ := build().HeadSkimFor(tolerance.Whole(10))
	fmt.Println(off.Text(units.InMillimetres, 3))
	_, err := build().HeadSkimFor(tolerance.Whole(9))
	fmt.Println(err)
	// Output:
	// (0.279 mm, 0.280 mm)
	// cylinder: wanted ratio 9 is not above the present ratio: a skim only raises it (it takes a skim of (-1.056 mm, -1.055 mm))
}

func ExampleBuild_BlockSkimFor() {
	off, _ := build().BlockSkimFor(tolerance.Whole(10))
	fmt.Println(off.Text(units.InMillimetres, 3))
	// Output: (0.249 mm, 0.250 mm)
}

func ExampleBuild_StrokeFor() {
	s, _ := build().StrokeFor(tolerance.Ratio{Num: 21, Den: 2})
	fmt.Println(s.Text(units.InMillimetres, 2))
	// Output: (93.15 mm, 93.16 mm)
}

// With rod and piston kept the crown rises by half of what the stroke gains.
func ExampleBuild_StrokeForSameRod() {
	s, deck, _ := build().StrokeForSameRod(tolerance.Ratio{Num: 21, Den: 2})
	fmt.Println(s.Text(units.InMillimetres, 2))
	fmt.Println(deck.Above().Text(units.InMillimetres, 2), "above")
	// Output:
	// (87.24 mm, 87.25 mm)
	// (0.32 mm, 0.33 mm) above
}

func ExampleBuild_Rebored() {
	b, _ := build().Rebored(exactLength("86.5 mm"))
	c, _ := b.Compression()
	fmt.Println(c.Ratio)
	// Output: 9.87
}

func ExampleBuild_HeadSkimmed() {
	b, _ := build().HeadSkimmed(exactLength("0.25 mm"))
	c, _ := b.Compression()
	fmt.Println(b.Chamber, c.Ratio)
	// Output: 43.7 cm³ 9.98
}

func ExampleBuild_BlockSkimmed() {
	b, _ := build().BlockSkimmed(exactLength("0.40 mm"))
	c, _ := b.Compression()
	fmt.Println(b.Deck, c.Ratio)
	// Output: 0.1 mm above 10.14
}

func ExampleRatios_Text() {
	fmt.Println(cylinder.Ratios{Least: 9.7012, Greatest: 9.8411}.Text(1))
	// Output: 9.7 to 9.9
}
