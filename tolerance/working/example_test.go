package working_test

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A formula over tolerance.Number, called with terms, shows its working.
func ExampleSolve() {
	groove := working.Given("groove width", "w", 1560*units.Micrometre)
	ring := working.Given("ring height", "h", 1505*units.Micrometre)
	clearance := sideClearance(groove, ring).Named("side clearance", "c")

	s, err := working.Solve(clearance, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// side clearance = groove width − ring height
	// c = w − h
	//   = 1.560 mm − 1.505 mm
	//   = 0.055 mm
}

// In inches the millimetres have no end. What is rounded says so, and the line
// still re-computes from what it prints.
func ExampleSolve_inches() {
	groove := working.Given("groove width", "w", 1560*units.Micrometre)
	ring := working.Given("ring height", "h", 1505*units.Micrometre)
	clearance := sideClearance(groove, ring).Named("side clearance", "c")

	s, err := working.Solve(clearance, units.Style[units.Length]{Unit: units.InInches, Places: 5, Point: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// groove width w ≈ .06142 in (exactly 1.56 mm)
	// ring height h ≈ .05925 in (exactly 1.505 mm)
	//
	// side clearance = groove width − ring height
	// c = w − h
	//   ≈ .06142 in − .05925 in
	//   ≈ .00217 in
}

// Results that get a name make steps.
func ExampleTermOf_Named() {
	gauge := working.Given("bore of the setting ring", "g", 86*units.Millimetre)
	bore := working.Given("bore, worn", "b", 86*units.Millimetre+120*units.Micrometre)
	gap := working.Given("end gap in the setting ring", "e", 350*units.Micrometre)

	wear := bore.Sub(gauge).Named("wear", "v")
	opened := gap.Add(wear.ScalePi(1, 1)).Named("end gap in the worn bore", "f")

	s, err := working.Solve(opened, units.Style[units.Length]{Places: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// wear = bore, worn − bore of the setting ring
	// v = b − g
	//   = 86.12 mm − 86.00 mm
	//   = 0.12 mm
	//
	// end gap in the worn bore = end gap in the setting ring + π × wear
	// f = e + π × v
	//   = 0.35 mm + π × 0.12 mm
	//   ≈ 0.73 mm
}

// Any quantity that has sums works alike.
func ExampleTermOf() {
	first := working.Given("piston 1", "m₁", 512*units.Gram+300*units.Milligram)
	second := working.Given("piston 2", "m₂", 511*units.Gram+800*units.Milligram)
	third := working.Given("piston 3", "m₃", 513*units.Gram)

	s, err := working.Solve(first.Spread(second, third).Named("spread of the set", "d"), units.Style[units.Mass]{Places: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// spread of the set = greatest of (piston 1, piston 2, piston 3) − least of (piston 1, piston 2, piston 3)
	// d = max(m₁, m₂, m₃) − min(m₁, m₂, m₃)
	//   = max(512.3 g, 511.8 g, 513.0 g) − min(512.3 g, 511.8 g, 513.0 g)
	//   = 1.2 g
}

func ExampleGiven() {
	journal := working.Given("journal diameter", "d", units.MustParseLength("2.4985 in"))
	fmt.Println(journal, journal.Value() == 63461900*units.Nanometre)
	// Output:
	// 63.4619 mm true
}

// A constant shows its size, in the unit it can say exactly where names stand,
// and in the unit asked for among the numbers.
func ExampleExactly() {
	shim := working.Given("shim", "s", 15*units.Thou)
	thicker := shim.Add(working.Exactly(50 * units.Micrometre))

	s, err := working.Solve(thicker, units.Style[units.Length]{Unit: units.InInches, Places: 4})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// shim + 0.05 mm
	// s + 0.05 mm
	//   ≈ 0.0150 in + 0.00197 in
	//   ≈ 0.0170 in
}

func ExampleSolution_Markdown() {
	a := working.Given("width *new*", "w_n", 1520*units.Micrometre)
	b := working.Given("height", "h", 1490*units.Micrometre)
	s, err := working.Solve(a.Sub(b).Named("clearance", "c"), units.Style[units.Length]{Places: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Markdown())
	// Output:
	// **clearance** = width \*new\* − height\
	// c = w\_n − h\
	// = 1.52 mm − 1.49 mm\
	// = **0.03 mm**
}

// A solution is data, for pages of any other kind.
func ExampleSolution() {
	a := working.Given("first reading", "a", 70*units.Micrometre)
	b := working.Given("second reading", "b", 80*units.Micrometre)
	s, err := working.Solve(a.Add(b).Scale(1, 2).Named("mean", "m"), units.Style[units.Length]{Unit: units.InThou, Places: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, in := range s.Inputs {
		fmt.Println(in.Words, in.Number, in.Exact, in.Held)
	}
	for _, st := range s.Steps {
		fmt.Println(st.Name, "|", st.Symbols, "|", st.Numbers, "|", st.Result, st.Exact)
	}
	// Output:
	// first reading 2.76 thou false 0.07 mm
	// second reading 3.15 thou false 0.08 mm
	// mean | (a + b) ÷ 2 | (2.76 thou + 3.15 thou) ÷ 2 | 3.0 thou false
}

// A formula over tolerance.Real crosses quantities; what its numbers are
// measured in stands behind them.
func ExampleSolveReal() {
	bore := working.GivenReal("bore", "b", 86, "mm")
	stroke := working.GivenReal("stroke", "s", 86.05, "mm")
	one := sweptVolume(bore, stroke).Named("swept volume of one cylinder", "V₁", "mm³")
	four := one.Mul(one.Const(4)).Quo(one.Const(1000)).Named("swept volume", "V", "cm³")

	s, err := working.SolveReal(four, working.RealStyle{Places: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// swept volume of one cylinder = (π ÷ 4) × bore × bore × stroke
	// V₁ = (π ÷ 4) × b × b × s
	//    = (π ÷ 4) × 86 mm × 86 mm × 86.05 mm
	//    ≈ 499848 mm³
	//
	// swept volume = swept volume of one cylinder × 4 ÷ 1000
	// V = V₁ × 4 ÷ 1000
	//   ≈ 499848 mm³ × 4 ÷ 1000
	//   ≈ 1999.4 cm³
}

func ExampleGivenReal() {
	fmt.Println(working.GivenReal("spring rate", "k", 31.5, "N/mm"), working.GivenReal("angle", "θ", -19, "°"))
	// Output:
	// 31.5 N/mm −19°
}

func ExampleMark() {
	right := sideClearance(
		working.Given("groove width", "w", 1560*units.Micrometre),
		working.Given("ring height", "h", 1505*units.Micrometre))
	for _, answer := range []string{"0.055 mm", ".0022 in", "0.1 mm", "0.55 mm", "0.055 in", "-.055 mm", "0.055", "0.065 mm"} {
		m, err := working.Mark(right, answer, 1*units.Micrometre)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s: %s\n", answer, m.Explain())
	}
	_, err := working.Mark(right, "about a hair", 1*units.Micrometre)
	fmt.Println(errors.Is(err, working.ErrAnswer))
	// Output:
	// 0.055 mm: right
	// .0022 in: right
	// 0.1 mm: right as far as it goes, but rounded too far
	// 0.55 mm: wrong: 10 times too large: the decimal point
	// 0.055 in: wrong: 25.4 times too large: inches and millimetres; or the number is right with the unit mm
	// -.055 mm: wrong: right but for its sign
	// 0.055: no unit: the number is right with the unit mm
	// 0.065 mm: wrong
	// true
}

func ExampleSolution_Text() {
	worn := working.Given("groove, worn", "w", 1580*units.Micrometre)
	old := working.Given("groove, new", "n", 1550*units.Micrometre)
	high := working.Given("ring, new", "k", 1500*units.Micrometre)
	low := working.Given("ring, worn", "h", 1490*units.Micrometre)

	groove := worn.Sub(old).Named("wear of the groove", "g")
	ring := high.Sub(low).Named("wear of the ring", "r")
	share := working.Exactly(100*units.Micrometre).Share(groove, ring)

	s, err := working.Solve(share.Named("of each 0.1 mm, the groove's", "s"), units.Style[units.Length]{Places: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// wear of the groove = groove, worn − groove, new
	// g = w − n
	//   = 1.58 mm − 1.55 mm
	//   = 0.03 mm
	//
	// wear of the ring = ring, new − ring, worn
	// r = k − h
	//   = 1.50 mm − 1.49 mm
	//   = 0.01 mm
	//
	// of each 0.1 mm, the groove's = 0.10 mm × wear of the groove ÷ (wear of the groove + wear of the ring)
	// s = 0.10 mm × g ÷ (g + r)
	//   = 0.10 mm × 0.03 mm ÷ (0.03 mm + 0.01 mm)
	//   ≈ 0.08 mm
}

// A spring's load at an installed height: its rate times what it is pressed
// together by. The unit of a result is for the formula to know.
func ExampleRealTerm_Named() {
	rate := working.GivenReal("spring rate", "k", 31.5, "N/mm")
	free := working.GivenReal("free length", "L", 47.8, "mm")
	installed := working.GivenReal("installed height", "H", 38.1, "mm")
	load := rate.Mul(free.Sub(installed)).Named("load on the seat", "F", "N")

	s, err := working.SolveReal(load, working.RealStyle{Places: 0})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(s.Text())
	// Output:
	// load on the seat = spring rate × (free length − installed height)
	// F = k × (L − H)
	//   = 31.5 N/mm × (47.8 mm − 38.1 mm)
	//   ≈ 306 N
}

func ExampleMarking_Explain() {
	end := working.Exactly(350 * units.Micrometre)
	m, err := working.Mark(end, "0.7 mm", 10*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(m.Grade, m.Off, m.Slips[0].Kind)
	fmt.Println(m.Explain())
	// Output:
	// wrong 0.35 mm doubled
	// wrong: twice too large: a diameter for a radius, or counted twice
}

func ExampleTermOf_Value() {
	groove := working.Given("groove width", "w", 1560*units.Micrometre)
	ring := working.Given("ring height", "h", 1505*units.Micrometre)
	fmt.Println(sideClearance(groove, ring).Value() == sideClearance(groove.Value(), ring.Value()))
	// Output:
	// true
}
