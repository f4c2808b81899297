package valvetrain_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func shimBracket(s string) tolerance.Bracket {
	b, _ := tolerance.ParseBracket(s)
	return b
}

// Three valves: one tight and one loose that can trade shims, and one that no
// blade was refused at.
func shimExample() valvetrain.ShimHead {
	wanted := tolerance.MustParseBand("0.15–0.25 mm")
	series, _ := valvetrain.NewShimSeries(2400*units.Micrometre, 2700*units.Micrometre, 50*units.Micrometre, 5*units.Micrometre)
	return valvetrain.ShimHead{
		Valves: []valvetrain.ShimValve{
			{Where: "inlet 1", Measured: shimBracket("[0.30 mm, 0.35 mm)"), Shim: shimBracket("2.502 ±0.002 mm"), Wanted: wanted},
			{Where: "inlet 2", Measured: shimBracket("[0.10 mm, 0.15 mm)"), Shim: shimBracket("2.621 ±0.002 mm"), Wanted: wanted},
			{Where: "inlet 3", Measured: shimBracket("[0.40 mm, ∞)"), Shim: shimBracket("2.450 ±0.002 mm"), Wanted: wanted},
		},
		Series: series,
		Set:    feeler.Metric20(),
	}
}

func ExamplePlanShims() {
	h := shimExample()
	p, _ := valvetrain.PlanShims(h)
	for _, m := range p.Moves {
		fmt.Println(m.Text(&h))
	}
	for _, b := range p.Buy {
		fmt.Println("buy", b.Pieces, "of", h.Series[b.Size].Name)
	}
	for _, u := range p.Undecided {
		fmt.Printf("%s, %v: %s\n", u.Where, u.Doubt, u.Settle)
	}
	// Output:
	// inlet 1: the shim out of inlet 2
	// inlet 2: 2.55 mm, to buy
	// inlet 3: not settled, keeps its shim
	// buy 1 of 2.55 mm
	// inlet 3, no upper end: every blade tried went in: try 0.45 mm, and thicker ones until one is refused
}

// A planner keeps its memory from one head to the next.
func ExampleShimPlanner_Plan() {
	var planner valvetrain.ShimPlanner
	h := shimExample()
	for range 2 {
		p, _ := planner.Plan(&h)
		fmt.Println(p.InBand, "in band,", p.Bought, "bought")
		h.Drawer = append(h.Drawer, valvetrain.ShimPiece{Name: "spare", Thickness: shimBracket("2.560 ±0.002 mm")})
	}
	// Output:
	// 2 in band, 1 bought
	// 2 in band, 0 bought
}

func ExampleShimMove_Text() {
	h := shimExample()
	p, _ := valvetrain.PlanShims(h)
	fmt.Println(p.Moves[0].Text(&h))
	// Output: inlet 1: the shim out of inlet 2
}

// Every shim that will do, and the one that would be best.
func ExampleShimValve_Window() {
	v := shimExample().Valves[0]
	w, ok := v.Window()
	fmt.Println(w, ok)
	// Output: [2.604 mm, 2.65 mm] true
}

func ExampleShimValve_Ideal() {
	fmt.Println(shimExample().Valves[0].Ideal())
	// Output: [2.6 mm, 2.654 mm)
}

func ExampleShimValve_With() {
	fmt.Println(shimExample().Valves[0].With(shimBracket("2.62 mm")))
	// Output: [0.18 mm, 0.234 mm)
}

func ExampleNewShimSeries() {
	s, _ := valvetrain.NewShimSeries(2500*units.Micrometre, 2600*units.Micrometre, 50*units.Micrometre, 5*units.Micrometre)
	for _, x := range s {
		fmt.Println(x.Name, x.Thickness)
	}
	// Output:
	// 2.5 mm [2.495 mm, 2.505 mm]
	// 2.55 mm [2.545 mm, 2.555 mm]
	// 2.6 mm [2.595 mm, 2.605 mm]
}

// 2.60 is as near to 2.58 as to 2.62: the thinner, which leaves more clearance.
func ExampleNearestShim() {
	s, _ := valvetrain.NewShimSeries(2540*units.Micrometre, 2700*units.Micrometre, 40*units.Micrometre, 0)
	at, _ := valvetrain.NearestShim(2600*units.Micrometre, s)
	fmt.Println(s[at].Name)
	// Output: 2.58 mm
}

func ExampleShimGaps() {
	s, _ := valvetrain.NewShimSeries(2500*units.Micrometre, 2700*units.Micrometre, 50*units.Micrometre, 0)
	gaps, _ := valvetrain.ShimGaps(append(s[:2], s[4]))
	fmt.Println(gaps[0])
	// Output: between 2.55 mm and 2.7 mm, where 2 sizes would stand
}
