package cylinder_test

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mmOf(s string) units.Length { return units.MustParseLength(s + " mm") }

func readings(texts ...string) (b []tolerance.Bracket) {
	for _, t := range texts {
		r, err := tolerance.ParseBracket(t)
		if err != nil {
			panic(err)
		}
		b = append(b, r)
	}
	return b
}

func ExampleLinerProtrusion() {
	fmt.Println(cylinder.LinerProtrusion(mmOf("8.02"), mmOf("0.05"), mmOf("7.98")))
	// Output: 0.09 mm
}

func ExampleCounterboreDepth() {
	fmt.Println(cylinder.CounterboreDepth(mmOf("8.02"), mmOf("0.05"), mmOf("0.09")))
	// Output: 7.98 mm
}

func ExampleLinerFlange() {
	fmt.Println(cylinder.LinerFlange(mmOf("0.09"), mmOf("0.05"), mmOf("7.98")))
	// Output: 8.02 mm
}

func ExampleLinerShim() {
	fmt.Println(cylinder.LinerShim(mmOf("0.09"), mmOf("8.02"), mmOf("7.98")))
	// Output: 0.05 mm
}

func ExampleProtrusionWithShim() {
	r := readings("0.04 ±0.005 mm", "0.05 mm", "0.10 mm")
	fmt.Println(cylinder.ProtrusionWithShim(r[0], r[1], r[2]))
	// Output: [0.085 mm, 0.095 mm]
}

func ExampleShimForProtrusion() {
	fmt.Println(cylinder.ShimForProtrusion(mmOf("0.04"), mmOf("0.05"), mmOf("0.09")))
	// Output: 0.1 mm
}

func ExampleCounterboreCut() {
	fmt.Println(cylinder.CounterboreCut(mmOf("0.04"), mmOf("0"), mmOf("0.20"), mmOf("0.09")))
	// Output: 0.15 mm
}

func ExampleLinerStep() {
	fmt.Println(cylinder.LinerStep(mmOf("0.05"), mmOf("0.09")))
	// Output: 0.04 mm
}

func ExampleLinerVariation() {
	fmt.Println(cylinder.LinerVariation(mmOf("0.05"), mmOf("0.06"), mmOf("0.04")))
	// Output: 0.02 mm
}

func ExampleLinerMean() {
	fmt.Println(cylinder.LinerMean(mmOf("0.05"), mmOf("0.06"), mmOf("0.04")))
	// Output: 0.05 mm
}

func ExampleWetLiners_Assess() {
	w := cylinder.WetLiners{
		Liners: []cylinder.WetLiner{
			{Where: "cylinder 1", Places: readings("0.08 mm", "0.09 mm")},
			{Where: "cylinder 2", Places: readings("0.03 mm", "0.04 mm")},
		},
		Protrusion: tolerance.Spec{New: tolerance.MustParseBand("0.06–0.11 mm")},
		Step:       tolerance.Spec{New: tolerance.MustParseBand("max 0.05 mm")},
	}
	r, err := w.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Worst, "at", r.WorstAt)
	fmt.Println(r.Steps[0].Greatest)
	// Output:
	// outside the new-part band at liner protrusion, cylinder 2
	// 0.06 mm
}

func ExampleWetLiners_ChooseShims() {
	w := cylinder.WetLiners{
		Liners: []cylinder.WetLiner{
			{Where: "cylinder 1", Places: readings("0.08 mm", "0.09 mm")},
			{Where: "cylinder 2", Places: readings("0.03 mm", "0.04 mm")},
		},
		Protrusion: tolerance.Spec{New: tolerance.MustParseBand("0.06–0.11 mm")},
		Step:       tolerance.Spec{New: tolerance.MustParseBand("max 0.05 mm")},
	}
	r := readings("0.05 mm", "0.10 mm")
	c, err := w.ChooseShims([]cylinder.StockShim{{Name: "0.05", Thickness: r[0]}, {Name: "0.10", Thickness: r[1]}}, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c)
	fmt.Println("cylinder 2 needs", c.Needed[1])
	// Output:
	// cylinder 1: no shim; cylinder 2: 0.05
	// cylinder 2 needs [0.03 mm, 0.07 mm]
}

func ExampleLinerInterference() {
	r := readings("96.050 ±0.002 mm", "96.010 ±0.003 mm")
	fmt.Println(cylinder.LinerInterference(r[0], r[1]))
	// Output: [0.035 mm, 0.045 mm]
}

func ExampleBlockBoreFor() {
	fmt.Println(cylinder.BlockBoreFor(mmOf("96.05"), mmOf("0.04")))
	// Output: 96.01 mm
}

// The published example: a 500 mm ring on a 400 mm joint over a 300 mm bore.
func ExampleLinerPressure() {
	type f = tolerance.Float
	liner := cylinder.PressedRing[f]{Other: 300, Modulus: 2e5, Poisson: 0.3}
	block := cylinder.PressedRing[f]{Other: 500, Modulus: 2e5, Poisson: 0.3}
	p := cylinder.LinerPressure(0.2, 400, liner, block)
	fmt.Printf("%.4f N/mm²\n", p)
	fmt.Printf("block %+.2f, liner %+.2f N/mm²\n", cylinder.BlockHoopStress(p, 400, 500), cylinder.LinerBoreStress(p, 400, 300))
	fmt.Printf("back to %.3f mm\n", cylinder.LinerInterferenceFor(p, 400, liner, block))
	// Output:
	// 12.3047 N/mm²
	// block +56.05, liner -56.25 N/mm²
	// back to 0.200 mm
}

func ExampleLinerSpread() {
	fmt.Printf("%.3f\n", cylinder.LinerSpread(tolerance.Float(500), 400))
	// Output: 4.556
}

func ExampleLinerCompliance() {
	type f = tolerance.Float
	c := cylinder.LinerCompliance(400, cylinder.PressedRing[f]{300, 2e5, 0.3}, cylinder.PressedRing[f]{500, 2e5, 0.3})
	fmt.Printf("%.3e mm²/N\n", c)
	// Output: 4.063e-05 mm²/N
}

// The tension is greatest at the joint: more than four times the pressure there.
func ExampleBlockHoopStress() {
	fmt.Printf("%+.2f N/mm²\n", cylinder.BlockHoopStress(tolerance.Float(12.3047), 400, 500))
	// Output: +56.05 N/mm²
}

// The compression is greatest at the bore, further in than the joint.
func ExampleLinerBoreStress() {
	fmt.Printf("%+.2f N/mm²\n", cylinder.LinerBoreStress(tolerance.Float(12.3047), 400, 300))
	// Output: -56.25 N/mm²
}

// What an iron liner needs for 2 N/mm² of grip in an aluminium alloy block.
func ExampleLinerInterferenceFor() {
	type f = tolerance.Float
	liner := cylinder.PressedRing[f]{Other: 91.8, Modulus: 110000, Poisson: 0.26}
	block := cylinder.PressedRing[f]{Other: 112, Modulus: 72000, Poisson: 0.33}
	d := cylinder.LinerInterferenceFor(2, 96, liner, block)
	fmt.Printf("%.3f mm\n", d)
	fmt.Printf("%.1f N/mm²\n", cylinder.LinerPressure(d, 96, liner, block))
	// Output:
	// 0.057 mm
	// 2.0 N/mm²
}

func ExampleBlockOutsideStress() {
	fmt.Printf("%.1f N/mm²\n", cylinder.BlockOutsideStress(tolerance.Float(12.3047), 400, 500))
	// Output: 43.8 N/mm²
}

func ExampleLinerHoopStress() {
	fmt.Printf("%.1f N/mm²\n", cylinder.LinerHoopStress(tolerance.Float(12.3047), 400, 300))
	// Output: -43.9 N/mm²
}

func ExampleLinerBoreClosing() {
	liner := cylinder.PressedRing[tolerance.Float]{Other: 300, Modulus: 2e5, Poisson: 0.3}
	fmt.Printf("%.3f mm\n", cylinder.LinerBoreClosing(12.3047, 400, liner))
	// Output: 0.084 mm
}

func ExampleLinerPressForce() {
	f := cylinder.LinerPressForce(tolerance.Float(0.1), 400, 100, 12.3047)
	fmt.Printf("%.0f kN\n", f/1000)
	fmt.Printf("%.2f N/mm², friction %.2f\n", cylinder.LinerPressureFromForce(f, 0.1, 400, 100), cylinder.LinerFriction(f, 400, 100, 12.3047))
	// Output:
	// 155 kN
	// 12.30 N/mm², friction 0.10
}

func ExampleLinerPressureFromForce() {
	fmt.Printf("%.1f N/mm²\n", cylinder.LinerPressureFromForce(tolerance.Float(20000), 0.12, 96, 150))
	// Output: 3.7 N/mm²
}

func ExampleLinerFriction() {
	fmt.Printf("%.2f\n", cylinder.LinerFriction(tolerance.Float(20000), 96, 150, 3.7))
	// Output: 0.12
}

// An iron liner in an alloy block, both 80 K warmer.
func ExampleLinerInterferenceWarm() {
	fmt.Printf("%.3f mm\n", cylinder.LinerInterferenceWarm(tolerance.Float(0.05), 96, 11.4e-6, 80, 21.5e-6, 80))
	// Output: -0.028 mm
}

func ExampleLinerAssemblyGap() {
	fmt.Printf("%.3f mm\n", cylinder.LinerAssemblyGap(tolerance.Float(96), 0.05, 21.5e-6, 100, 11.4e-6, 0))
	// Output: 0.156 mm
}

func ExampleBlockRiseFor() {
	fmt.Printf("%.1f K\n", cylinder.BlockRiseFor(tolerance.Float(0.05), 96, 0.05, 21.5e-6, 11.4e-6, 0))
	// Output: 48.4 K
}

func ExampleLinerRiseFor() {
	fmt.Printf("%.1f K\n", cylinder.LinerRiseFor(tolerance.Float(0.02), 96, 0.05, 11.4e-6, 0, 11.4e-6))
	// Output: -63.9 K
}

func ExampleDropIn_BlockAt() {
	r := readings("[96.000 mm, 96.006 mm]", "96.050 ±0.003 mm")
	d := cylinder.DropIn{Bore: r[0], Liner: r[1], Gap: mmOf("0.05"), MeasuredAt: units.Reference, BlockPerK: 21.5e-6, LinerPerK: 11.4e-6}
	block, err := d.BlockAt(units.Reference)
	fmt.Println(block.Text(units.InCelsius, 1), err)
	gap, err := d.GapAt(units.MustParseTemperature("80 °C"), units.Reference)
	fmt.Println(tolerance.BandFrom(gap).Judge(tolerance.Exactly(mmOf("0.075"))), err)
	// Output:
	// 69.9 °C <nil>
	// within <nil>
}

func ExampleDropIn_LinerAt() {
	r := readings("96.000 mm", "96.050 mm")
	d := cylinder.DropIn{Bore: r[0], Liner: r[1], Gap: mmOf("0.02"), MeasuredAt: units.Reference, BlockPerK: 11.4e-6, LinerPerK: 11.4e-6}
	liner, err := d.LinerAt(units.Reference)
	fmt.Println(liner.Text(units.InCelsius, 1), err)
	fmt.Println(cylinder.CoolantFor(liner, units.Reference))
	// Output:
	// -43.9 °C <nil>
	// dry ice, in an open draught, with insulated gloves
}

func ExampleDropIn_GapAt() {
	r := readings("96.000 mm", "96.050 mm")
	d := cylinder.DropIn{Bore: r[0], Liner: r[1], MeasuredAt: units.Reference, BlockPerK: 21.5e-6, LinerPerK: 11.4e-6}
	gap, _ := d.GapAt(units.MustParseTemperature("120 °C"), units.Reference)
	least, _ := gap.Lower()
	fmt.Println(least.Text(units.InMillimetres, 3))
	// Output: 0.156 mm
}

func ExampleCoolantFor() {
	fmt.Println(cylinder.CoolantFor(units.MustParseTemperature("-100 °C"), units.Reference))
	// Output: liquid nitrogen, in an open draught, with face shield and loose insulated gloves, as its supplier tells
}

func ExampleLinerExpansionOf() {
	e, ok := cylinder.LinerExpansionOf("cast aluminium 356.0")
	fmt.Println(e.PerK, ok)
	fmt.Println(e.Source)
	// Output:
	// 2.15e-05 true
	// Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6
}

func ExampleLinerExpansions() {
	e := cylinder.LinerExpansions()[0]
	fmt.Println(e.Material, e.PerK, e.Source)
	// Output: grey iron 1.14e-05 from memory
}

func ExampleDryLiner_Assess() {
	d := cylinder.DryLiner{
		Where: "cylinder 3",
		Bores: readings("96.010 mm", "96.014 mm"), Liners: readings("96.050 mm", "96.052 mm"),
		Limits: tolerance.Spec{New: tolerance.MustParseBand("0.03–0.06 mm")},
		Inside: mmOf("91.8"), Outside: mmOf("112"),
		Liner: cylinder.LinerMaterial{ModulusMPa: 110000, Poisson: 0.26}, Block: cylinder.LinerMaterial{ModulusMPa: 110000, Poisson: 0.26},
		Length: mmOf("150"), Friction: 0.12,
	}
	r, err := d.Assess()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Finding.Standing, r.Finding.Greatest)
	fmt.Printf("%.1f N/mm², press %.0f kN, the bore closes by %s\n", r.Greatest.PressureMPa, r.Greatest.ForceN/1000, r.Greatest.BoreClosing.Text(units.InMillimetres, 3))
	// Output:
	// as new 0.042 mm
	// 1.7 N/mm², press 9 kN, the bore closes by 0.032 mm
}

func ExampleDryLiner_Press() {
	d := cylinder.DryLiner{Inside: mmOf("300"), Outside: mmOf("500"),
		Liner: cylinder.LinerMaterial{ModulusMPa: 2e5, Poisson: 0.3}, Block: cylinder.LinerMaterial{ModulusMPa: 2e5, Poisson: 0.3}}
	fmt.Printf("%.4f N/mm²\n", d.Press(mmOf("0.2"), mmOf("400")).PressureMPa)
	// Output: 12.3047 N/mm²
}
