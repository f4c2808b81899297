package tolerance_test

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// deck is the clearance from piston crown to deck: block height less half the
// stroke, the rod's centres and the piston's compression height.
func deck() tolerance.Chain {
	link := func(name, band, sensitivity string) tolerance.Link {
		s, err := tolerance.ParseRatio(sensitivity)
		if err != nil {
			panic(err)
		}
		return tolerance.Link{
			Name: name, Band: tolerance.MustParseBand(band), Sensitivity: s,
			Scatter: tolerance.NormalScatter, Sigmas: 3,
		}
	}
	return tolerance.Chain{Links: []tolerance.Link{
		link("block height", "210.00 ±0.05 mm", "1"),
		link("stroke", "86.00 ±0.04 mm", "-1/2"),
		link("rod centres", "136.50 ±0.03 mm", "-1"),
		link("compression height", "30.20 +0.03/-0.01 mm", "-1"),
	}}
}

func ExampleChainOf_WorstCase() {
	closing, err := deck().WorstCase()
	fmt.Println(closing, err)
	// Output: [0.17 mm, 0.41 mm] <nil>
}

func ExampleChainOf_RootSumSquare() {
	r, err := deck().RootSumSquare(3)
	fmt.Println(r.Within.Text(units.InMillimetres, 3), "about", r.Centre, err)

	// The nominal sizes close to another size: one band lies to one side of
	// its nominal.
	mm := func(s string) units.Length { return units.MustParseLength(s + " mm") }
	nominal, _ := tolerance.ClosingSize(deck(), mm("210"), mm("86"), mm("136.5"), mm("30.2"))
	fmt.Println("nominal", nominal)
	// Output:
	// [0.225 mm, 0.355 mm] about 0.29 mm <nil>
	// nominal 0.3 mm
}

func ExampleChainOf_RoomWorstCase() {
	piston, err := deck().RoomWorstCase(3, tolerance.MustParseBand("0.15–0.45 mm"))
	fmt.Println(piston, err)
	_, err = deck().RoomWorstCase(3, tolerance.MustParseBand("0.25–0.40 mm"))
	fmt.Println(err)
	// Output:
	// 30.15–30.25 mm <nil>
	// tolerance: link 4 "compression height": no room: the others take 0.2 mm of the 0.15 mm wanted, 0.05 mm too much
}

func ExampleChainOf_RoomRootSumSquare() {
	piston, err := deck().RoomRootSumSquare(3, 3, tolerance.MustParseBand("0.25–0.40 mm"))
	fmt.Println(piston.Text(units.InMillimetres, 3), err)
	// Output: 30.133–30.217 mm <nil>
}

func ExampleChainOf_RoomRootSumSquareAbout() {
	// The lot in stock lies about 30.19 mm.
	middle := units.MustParseLength("30.19 mm")
	_, err := deck().RoomRootSumSquareAbout(3, middle, 3, tolerance.MustParseBand("0.25–0.40 mm"))
	fmt.Println(err)
	middle = units.MustParseLength("30.18 mm")
	piston, err := deck().RoomRootSumSquareAbout(3, middle, 3, tolerance.MustParseBand("0.25–0.40 mm"))
	fmt.Println(piston.Text(units.InMillimetres, 3), err)
	// Output:
	// tolerance: link 4 "compression height": no room: the others take 0.123288281 mm of the 0.12 mm wanted, 0.003288281 mm too much
	// 30.147–30.213 mm <nil>
}

func ExampleChainOf_VarianceShares() {
	worst, _ := deck().WorstCaseShares()
	variance, err := deck().VarianceShares()
	for i, l := range deck().Links {
		fmt.Printf("%-18s %4.1f %% of the worst case, %4.1f %% of the variance\n", l.Name, 100*worst[i], 100*variance[i])
	}
	fmt.Println(err)
	// Output:
	// block height       41.7 % of the worst case, 59.5 % of the variance
	// stroke             16.7 % of the worst case,  9.5 % of the variance
	// rod centres        25.0 % of the worst case, 21.4 % of the variance
	// compression height 16.7 % of the worst case,  9.5 % of the variance
	// <nil>
}

// One formula, with sizes and with what was measured.
func ExampleClosingSize() {
	mm := func(s string) units.Length { return units.MustParseLength(s + " mm") }
	fmt.Println(tolerance.ClosingSize(deck(), mm("210.02"), mm("85.98"), mm("136.49"), mm("30.215")))
	bracket := func(s string) tolerance.Bracket {
		b, err := tolerance.ParseBracket(s)
		if err != nil {
			panic(err)
		}
		return b
	}
	fmt.Println(tolerance.ClosingSize(deck(),
		bracket("210.02 ±0.01 mm"), bracket("85.98 ±0.01 mm"), bracket("136.49 ±0.01 mm"), bracket("30.215 ±0.005 mm")))
	// Output:
	// 0.325 mm <nil>
	// [0.295 mm, 0.355 mm] <nil>
}

func ExampleChain() {
	var c tolerance.Chain
	err := json.Unmarshal([]byte(`{"links": [
		{"name": "tunnel bore", "band": "60.000–60.019 mm", "sensitivity": "1"},
		{"name": "shell wall", "band": "2.501–2.505 mm", "sensitivity": "-2"},
		{"name": "journal", "band": "54.942–54.955 mm", "sensitivity": "-1"}]}`), &c)
	fmt.Println(err)
	fmt.Println(c.WorstCase())
	// Output:
	// <nil>
	// [0.035 mm, 0.075 mm] <nil>
}

func ExampleParseRatio() {
	for _, s := range []string{"-1/2", "0.0005", "15 %", "1/3"} {
		r, err := tolerance.ParseRatio(s)
		fmt.Println(r.Num, r.Den, r, err)
	}
	_, err := tolerance.ParseRatio("1,234")
	fmt.Println(err)
	// Output:
	// -1 2 -0.5 <nil>
	// 1 2000 0.0005 <nil>
	// 3 20 0.15 <nil>
	// 1 3 1/3 <nil>
	// tolerance: ratio "1,234": ambiguous; the comma may be a thousands mark: write a point, or no mark
}

func ExampleNewRatio() {
	r, err := tolerance.NewRatio(-6, 4)
	fmt.Println(r, err)
	// Output: -1.5 <nil>
}

func ExampleWhole() {
	fmt.Println(units.MustParseLength("2.5 mm").Scale(tolerance.Whole(-2).Num, tolerance.Whole(-2).Den))
	// Output: -5 mm
}
