package selective_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

func bracket(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func ExampleParseGrades() {
	g, err := selective.ParseGrades(`
# bore grades
A: 86.000–86.010 mm
B: more than 86.010 mm, max 86.020 mm
`)
	fmt.Println(len(g), g[1].Name, g[1].Band, err)
	_, err = selective.ParseGrades("A: 86.000 to 85.010 mm")
	fmt.Println(err != nil)
	// Output:
	// 2 B more than 86.01 mm, max 86.02 mm <nil>
	// true
}

func ExampleParseGradesOf() {
	g, err := selective.ParseGradesOf[units.Mass]("light: 410–414 g\nheavy: more than 414 g, max 418 g")
	p, _ := g.Place(tolerance.Exactly(units.MustParseMass("415.2 g")))
	fmt.Println(p, err)
	// Output: heavy <nil>
}

func ExampleGradesOf_Validate() {
	g, _ := selective.ParseGrades("A: 86.000–86.010 mm\nB: 86.010–86.020 mm\nC: 86.021–86.030 mm")
	faults, err := g.Validate()
	for _, f := range faults {
		fmt.Println(f.Kind, "between", f.First, "and", f.Second, "at", f.Where)
	}
	fmt.Println(err)
	// Output:
	// shared limit between A and B at 86.01 mm
	// gap between B and C at (86.02 mm, 86.021 mm)
	// <nil>
}

func ExampleGradesOf_Place() {
	g, _ := selective.ParseGrades("A: 86.000–86.010 mm\nB: more than 86.010 mm, max 86.020 mm")
	for _, size := range []string{"86.014 ±0.001 mm", "86.010 ±0.001 mm", "86.020 ±0.001 mm"} {
		p, err := g.Place(bracket(size))
		_, certain := p.Grade()
		fmt.Println(p, certain, err)
	}
	// Output:
	// B true <nil>
	// A or B false <nil>
	// B or in no grade false <nil>
}

func ExampleGradesOf_Table() {
	g := selective.Grades{{Name: "+0.25", Band: tolerance.MustParseBand("86.25 +0.01/0 mm")}}
	text, err := g.Table()
	fmt.Print(text, err)
	// Output:
	// +0.25: 86.25–86.26 mm
	// <nil>
}

func ExampleParseMatingTable() {
	t, err := selective.ParseMatingTable("1 + A: red\n1 + B: blue")
	fmt.Println(t[1].First, t[1].Second, t[1].Class, err)
	// Output: 1 B blue <nil>
}

func ExampleSelect() {
	shells, _ := selective.ParseMatingTable("1 + A: red\n1 + B: blue\n2 + A: blue\n2 + B: green")
	tunnels, _ := selective.ParseGrades("1: 60.000–60.010 mm\n2: more than 60.010 mm, max 60.020 mm")
	journals, _ := selective.ParseGrades("A: more than 54.950 mm, max 54.960 mm\nB: 54.940–54.950 mm")

	tunnel, _ := tunnels.Place(bracket("60.006 ±0.002 mm"))
	journal, _ := journals.Place(bracket("54.951 ±0.002 mm"))
	s, err := selective.Select(shells, tunnel, journal)
	_, certain := s.Class()
	fmt.Println(s.Classes, certain, err)
	// Output: [red blue] false <nil>
}

func ExamplePredict() {
	// Tunnel less journal less two shell walls.
	left := units.MustParseLength("5.050 mm")
	wall := units.MustParseLength("2.506 mm")
	fmt.Println(selective.Predict(left, wall, tolerance.Whole(-2)))
	// Output: 0.038 mm
}

func ExampleSizeFor() {
	// Which shim would give 0.25 mm where 2.55 mm gave 0.32 mm?
	measured, old := units.MustParseLength("0.32 mm"), units.MustParseLength("2.55 mm")
	wanted := units.MustParseLength("0.25 mm")
	fmt.Println(selective.SizeFor(measured.Add(old), wanted, tolerance.Whole(-1)))
	// Output: 2.62 mm
}

func ExampleMiddle() {
	w, err := selective.Middle(tolerance.MustParseBand("0.20–0.30 mm"))
	fmt.Println(w.Aim, err)
	// Output: 0.25 mm <nil>
}

func ExampleChoose() {
	// A valve clearance was felt between two blades, with the old shim of
	// 2.55 mm.
	base := bracket("[0.30 mm, 0.33 mm)").Add(bracket("2.55 mm"))
	wanted := selective.Wanted{Band: tolerance.MustParseBand("0.20–0.30 mm"), Aim: units.MustParseLength("0.25 mm")}
	var stock []selective.Class
	for _, s := range []string{"2.50 mm", "2.60 mm", "2.65 mm", "2.70 mm"} {
		stock = append(stock, selective.Class{Name: s, Size: bracket(s), Stock: 4})
	}
	c, err := selective.Choose(base, tolerance.Whole(-1), stock, wanted)
	for _, x := range c.Candidates {
		fmt.Println(x.Name, x.Fit, x.Verdict)
	}
	best, _ := c.Best()
	fmt.Println("chosen", best.Name, err)
	// Output:
	// 2.60 mm [0.25 mm, 0.28 mm) within
	// 2.65 mm [0.2 mm, 0.23 mm) within
	// 2.70 mm [0.15 mm, 0.18 mm) below
	// 2.50 mm [0.35 mm, 0.38 mm) above
	// chosen 2.60 mm <nil>
}

func ExampleMatch() {
	bores := []selective.Part{
		{Name: "bore 1", Base: bracket("86.012 ±0.001 mm")},
		{Name: "bore 2", Base: bracket("86.004 ±0.001 mm")},
		{Name: "bore 3", Base: bracket("86.041 ±0.001 mm")},
	}
	pistons := []selective.Class{
		{Name: "a", Size: bracket("85.957 ±0.001 mm"), Stock: 1},
		{Name: "b", Size: bracket("85.960 ±0.001 mm"), Stock: 1},
		{Name: "c", Size: bracket("85.955 ±0.001 mm"), Stock: 1},
	}
	wanted, _ := selective.Middle(tolerance.MustParseBand("0.040–0.060 mm"))
	p, err := selective.Match(bores, tolerance.Whole(-1), pistons, wanted)
	for _, x := range p.Pairs {
		fmt.Println(bores[x.Part].Name, "gets piston", pistons[x.Mate].Name, "at", x.Fit)
	}
	for _, l := range p.LeftOver {
		fmt.Println(l.Name, l.Reason, "— the nearest gives", l.Fit, l.Verdict)
	}
	fmt.Println(err)
	// Output:
	// bore 1 gets piston b at [0.05 mm, 0.054 mm]
	// bore 2 gets piston c at [0.047 mm, 0.051 mm]
	// bore 3 fits nowhere — the nearest gives [0.079 mm, 0.083 mm] above
	// <nil>
}

func ExampleMatcherOf_Match() {
	var m selective.Matcher // keeps its memory from one batch to the next
	wanted, _ := selective.Middle(tolerance.MustParseBand("0.04–0.06 mm"))
	for _, bore := range []string{"86.010 mm", "86.011 mm"} {
		p, err := m.Match(
			[]selective.Part{{Name: bore, Base: bracket(bore)}}, tolerance.Whole(-1),
			[]selective.Class{{Name: "std", Size: bracket("85.960 mm"), Stock: 1}}, wanted)
		fmt.Println(p.Pairs[0].Fit, err)
	}
	// Output:
	// 0.05 mm <nil>
	// 0.051 mm <nil>
}
