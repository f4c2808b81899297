package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 78

func (e engine) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Crankshaft balance: %s\n", e.Engine)
	if err := e.bobweights(&b); err != nil {
		return "", err
	}
	if err := e.unbalance(&b); err != nil {
		return "", err
	}
	return b.String(), nil
}

// grams is a bracket of masses, as its middle and half its width.
func grams(m crank.BobweightMass) string {
	middle, _ := m.Middle()
	w, _ := m.Width()
	text := middle.Text(units.InGrams, 1)
	if w > 0 {
		text = strings.TrimSuffix(text, " g") + " ±" + (w/2).Text(units.InGrams, 1)
	}
	return text
}

func (e engine) bobweights(b *strings.Builder) error {
	if len(e.Crankpins) == 0 {
		return nil
	}
	b.WriteString("\nBobweights\n")
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  crankpin\trotating\treciprocating\tfactor\tbobweight\n")
	for _, pin := range e.Crankpins {
		r, err := pin.Bobweight()
		if err != nil {
			return err
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\t%v\t%s\n", pin.Where, grams(r.Rotating), grams(r.Reciprocating), pin.Factor, grams(r.Bobweight))
	}
	return w.Flush()
}

func (e engine) unbalance(b *strings.Builder) error {
	if e.Rotor == nil {
		return nil
	}
	rep, err := e.Rotor.Assess()
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\nUnbalance, G %g at %g r/min, %v\n", e.Rotor.GradeMMPS, e.Rotor.RPM, e.Rotor.Mass.Text(units.InKilograms, 2))
	fmt.Fprintf(b, "  permissible in all %.1f g·mm (%.3f oz·in), %.2f µm off centre\n", rep.AllowedGMM, rep.AllowedGMM/crank.GramMillimetresPerOunceInch, rep.EccentricityUM)
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  acting in\tallowed\tat least\tat most, g·mm\tverdict\n")
	for _, p := range []struct {
		name  string
		plane crank.UnbalancePlane
	}{{"bearing A", rep.A}, {"bearing B", rep.B}} {
		fmt.Fprintf(w, "  %s\t%.1f\t%.1f\t%.1f\t%v\n", p.name, p.plane.AllowedGMM, p.plane.LeastGMM, p.plane.GreatestGMM, p.plane.Verdict)
	}
	if err := w.Flush(); err != nil {
		return err
	}
	b.WriteString(recipe.Wrap("Next: "+rep.Next, width, "  ", "    "))
	if rep.Verdict != tolerance.Above {
		return nil
	}
	b.WriteString("\nCorrection\n")
	for _, r := range e.Rotor.Readings {
		b.WriteString(recipe.Wrap(r.Where+": "+e.correct(r), width, "  ", "    "))
	}
	return nil
}

// correct says what takes one reading away.
func (e engine) correct(r crank.UnbalanceReading) string {
	at := r.Angle.Text(units.InDegrees, 1)
	switch {
	case r.AmountGMM == 0:
		return "nothing"
	case r.NoAngle:
		return "find the heavy place first: the machine gave no angle"
	case slices.Contains(e.Light, r.Where):
		return e.plugFor(r)
	case e.Drill == nil:
		return fmt.Sprintf("take %.0f g·mm away at %s; say under drill how", r.AmountGMM, at)
	}
	row, err := e.Drill.Row(r.AmountGMM, e.HolesApart, max(e.MostHoles, 1))
	if err != nil {
		return fmt.Sprintf("take %.0f g·mm away at %s: %v", r.AmountGMM, at, err)
	}
	h := row[0]
	// Rounded down: what was drilled out can't be put back.
	depth, _ := units.Append(nil, h.ToPoint, units.Style[units.Length]{Unit: units.InMillimetres, Places: 1, Rounding: units.Down})
	full, _ := units.Append(nil, h.FullDiameter, units.Style[units.Length]{Unit: units.InMillimetres, Places: 1, Rounding: units.Down})
	text := fmt.Sprintf("drill one hole at %s", at)
	if len(row) > 1 {
		text = fmt.Sprintf("drill %d holes %v apart, their middle at %s, each", len(row), e.HolesApart, at)
	}
	return text + fmt.Sprintf(" %s to the point (%s of the full diameter), which takes out %.2f g at %s from the axis; then spin it again", depth, full, h.MassG, h.CentreRadius.Text(units.InMillimetres, 2))
}

func (e engine) plugFor(r crank.UnbalanceReading) string {
	opposite := (r.Angle + units.Turn/2) % units.Turn
	at := opposite.Text(units.InDegrees, 1)
	if e.Plug == nil {
		return fmt.Sprintf("add %.0f g·mm at %s; say under plug with what", r.AmountGMM, at)
	}
	l := e.Plug.length(r.AmountGMM)
	if !l.InRange() || l > e.Plug.Longest {
		return fmt.Sprintf("a plug of %v would have to be longer than %v: use a larger one, or two", e.Plug.Diameter, e.Plug.Longest)
	}
	return fmt.Sprintf("set a plug of %v diameter, %s long, at %s, %v from the axis, parallel to the shaft so that it can't fly out, and lock it; then spin it again",
		e.Plug.Diameter, l.Text(units.InMillimetres, 1), at, e.Plug.Radius)
}

// working writes out the bobweights' sums, what is permissible, and the depth
// of a hole for each plane.
func (e engine) working() (string, error) {
	var b strings.Builder
	for _, pin := range e.Crankpins {
		r, err := pin.Bobweight()
		if err != nil {
			return "", err
		}
		rot, _ := r.Rotating.Middle()
		rec, _ := r.Reciprocating.Middle()
		t := crank.BobweightOf(working.Given("rotating mass", "R", rot), working.Given("reciprocating mass", "P", rec), pin.Factor).Named("bobweight", "B")
		s, err := working.Solve(t, units.Style[units.Mass]{Unit: units.InGrams, Places: 1})
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "\n%s\n\n%s", pin.Where, s.Text())
	}
	if e.Rotor == nil {
		return b.String(), nil
	}
	g := working.GivenReal
	u := crank.UnbalanceAllowedGMM(g("grade", "G", e.Rotor.GradeMMPS, "mm/s"), g("mass", "m", e.Rotor.Mass.Float(units.InKilograms), "kg"), g("speed", "n", e.Rotor.RPM, "/min"))
	s, err := working.SolveReal(u.Named("permissible unbalance", "U", "g·mm"), working.RealStyle{Places: 1, Bare: true})
	if err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "\n%s", s.Text())
	if e.Drill == nil {
		return b.String(), nil
	}
	for _, r := range e.Rotor.Readings {
		if r.AmountGMM == 0 || r.NoAngle || slices.Contains(e.Light, r.Where) {
			continue
		}
		row, err := e.Drill.Row(r.AmountGMM, e.HolesApart, max(e.MostHoles, 1))
		if err != nil || row[0].FullDiameter == 0 {
			continue
		}
		s, err := working.SolveReal(e.hole(row[0]), working.RealStyle{Places: 1, Bare: true})
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "\n%s, one of %d holes as reckoned\n\n%s", r.Where, len(row), s.Text())
	}
	return b.String(), nil
}

// hole is the unbalance that one hole takes away, in steps.
func (e engine) hole(h crank.Drilled) working.RealTerm {
	mm := func(words, symbol string, l units.Length) working.RealTerm {
		l, _ = l.Round(units.InMillimetres, 3, units.NearestEven)
		return working.GivenReal(words, symbol, l.Float(units.InMillimetres), "mm")
	}
	drill, depth := mm("drill", "d", e.Drill.Diameter), mm("depth of the full diameter", "h", h.FullDiameter)
	radius, rho := mm("radius", "R", e.Drill.Radius), working.GivenReal("density", "ρ", e.Drill.DensityGPerCM3, "g/cm³")
	degrees := working.GivenReal("point", "α", e.Drill.Point.Float(units.InDegrees), "°")
	point := degrees.Mul(degrees.Const(math.Pi/180)).Named("point in radians", "β", "rad")
	height := crank.DrillHole[working.RealTerm]{Diameter: drill, Point: point}.PointHeight().Named("height of the point", "c", "mm")
	volume := crank.DrillVolume(drill, depth, height).Named("volume", "V", "mm³")
	mass := rho.Mul(volume).Quo(rho.Const(1000)).Named("mass", "m", "g")
	if e.Drill.Way == crank.DrillAxial {
		return mass.Mul(radius).Named("unbalance taken away", "U", "g·mm")
	}
	centre := crank.DrillCentroidDepth(depth, height).Named("depth of the mass centre", "z", "mm")
	taken := mass.Mul(radius.Sub(centre))
	if e.Drill.Way == crank.DrillRoundRim {
		taken = taken.Sub(crank.DrillRimGMM(rho, drill))
	}
	return taken.Named("unbalance taken away", "U", "g·mm")
}
