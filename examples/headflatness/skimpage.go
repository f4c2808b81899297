package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// skimPage is what a skim would take, what it leaves, and what it does to the
// ratio and to a camshaft driven from below.
func (j judged) skimPage(b *strings.Builder, departure tolerance.Bracket, solve bool) error {
	if j.Skim == nil {
		return nil
	}
	if _, end := departure.Upper(); end == tolerance.Absent {
		b.WriteString("\nWhat a skim would take can't be told: every blade went in. Try a thicker one.\n")
		return nil
	}
	s := cylinder.FaceSkim{Departure: departure, Stock: j.Skim.Stock, Step: j.Skim.Step,
		Height: j.Skim.Height, LeastHeight: j.Skim.LeastHeight, MostOff: j.Skim.MostOff, OffBefore: j.Skim.OffBefore}
	p, err := s.Plan()
	if err != nil {
		return err
	}
	// Lines alone don't say how they lie to each other.
	if j.byEdge != nil && j.byEdge.Flatness.IsZero() {
		fmt.Fprintf(b, "\nA skim that cleans it up would take %v at least.\n", p.Off)
	} else {
		fmt.Fprintf(b, "\nA skim that cleans it up would take %v.\n", p.Off)
	}
	switch {
	case !p.Limited:
		b.WriteString("No limit of height is given: look it up before anything is cut.\n")
	case p.Verdict == tolerance.Within:
		fmt.Fprintf(b, "It would leave %s of what may come off.\n", p.Left.Text(units.InMillimetres, 3))
	case p.Verdict == tolerance.Below:
		fmt.Fprintf(b, "That is %s more than may come off: renew the part, or ask its maker.\n", tolerance.Exactly(units.Length(0)).Sub(p.Left).Text(units.InMillimetres, 3))
	default:
		fmt.Fprintf(b, "Whether the height allows it can't be told (%s left): measure it more closely.\n", p.Left.Text(units.InMillimetres, 3))
	}
	if solve {
		if err := skimWorking(b, s, p); err != nil {
			return err
		}
	}
	return j.enginePage(b, p.Off)
}

// skimWorking writes out the cut and what it leaves, with the library's own
// formulas.
func skimWorking(b *strings.Builder, s cylinder.FaceSkim, p cylinder.SkimPlan) error {
	worst, _ := s.Departure.Upper()
	style := units.Style[units.Length]{Unit: units.InMillimetres, Places: 4}
	cut := cylinder.SkimNeeded(working.Given("departure at most", "d", worst), working.Given("stock", "s", s.Stock)).Named("least cut", "c")
	w, err := working.Solve(cut, style)
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\n%s", w.Text())
	if s.Step > 0 {
		fmt.Fprintf(b, "rounded up to a step of %v: %v\n", s.Step, p.Off)
	}
	if least, end := s.Height.Lower(); end != tolerance.Absent {
		left := cylinder.HeightLeft(working.Given("height at least", "h", least), working.Given("cut", "c", p.Off), working.Given("least height", "m", s.LeastHeight)).Named("what is left", "l")
		if w, err = working.Solve(left, style); err != nil {
			return err
		}
		fmt.Fprintf(b, "\n%s", w.Text())
	}
	return nil
}

// enginePage is what the cut does to the rest of the engine.
func (j judged) enginePage(b *strings.Builder, off units.Length) error {
	if j.Engine == nil {
		return nil
	}
	before, err := j.Engine.build().Compression()
	if err != nil {
		return err
	}
	build, err := j.Engine.skimmed(off)
	if err != nil {
		return err
	}
	after, err := build.Compression()
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "The compression ratio would go from %v to %v (to 1).\n", before.Ratio, after.Ratio)
	for _, d := range after.Doubts {
		b.WriteString(recipe.Wrap("Look into this first: "+d.String()+".", width, "", "  "))
	}
	if j.Engine.CamTeeth == 0 {
		return nil
	}
	r, err := cylinder.RetardByTeeth(tolerance.Exactly(off), j.Engine.CamTeeth, j.Engine.CamPitch)
	if err != nil {
		return err
	}
	cam, _ := r.Cam.Middle()
	crank, _ := r.Crank.Middle()
	b.WriteString(recipe.Wrap(fmt.Sprintf("A camshaft driven from below would be %s late, %s of the crankshaft.",
		cam.Text(units.InDegrees, 2), crank.Text(units.InDegrees, 2)), width, "", "  "))
	return nil
}
