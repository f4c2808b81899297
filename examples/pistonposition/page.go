package main

import (
	"fmt"
	"math"
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

// given is what the flags say.
type given struct {
	slider         crank.SliderCrank
	rpm            float64
	from, to, step units.Angle
	find           units.Length
	at             units.Angle
	finds, works   bool
	series         bool
}

// reader reads flags and keeps the first that can't be read.
type reader struct{ err error }

func read[T any](r *reader, name, text string, parse func(string) (T, error)) (v T) {
	if r.err != nil {
		return v
	}
	v, err := parse(text)
	if err != nil {
		r.err = fmt.Errorf("-%s: %w", name, err)
	}
	return v
}

// mostLines is more than a page for the bench needs.
const mostLines = 1000

func (g given) page() (string, error) {
	stroke, err := g.slider.Stroke()
	if err != nil {
		return "", err
	}
	down, up, err := g.slider.Peaks(g.rpm)
	if err != nil {
		return "", err
	}
	switch {
	case g.step <= 0 || g.to < g.from:
		return "", fmt.Errorf("-step: from %v to %v by %v is no table: give a step above zero, and the lesser angle first", g.from, g.to, g.step)
	case int64(g.to.Sub(g.from)/g.step) >= mostLines:
		return "", fmt.Errorf("-step: from %v to %v by %v is more than %d lines", g.from, g.to, g.step, mostLines)
	case g.series && g.slider.Offset != 0:
		return "", fmt.Errorf("-series: the two-term series has no offset, and here it is %v", g.slider.Offset)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Piston position: throw %s, rod %s, offset %s, %g r/min\n\n", g.slider.Throw, g.slider.Rod, g.slider.Offset, g.rpm)
	fmt.Fprintf(&b, "stroke          %s\n", stroke.Dual(4, 4))
	f := g.slider.Float()
	fmt.Fprintf(&b, "rod ratio       %.3f (rod to stroke; rod to throw %.3f)\n", float64(crank.RodRatio(f.Rod, tolerance.Float(stroke.Float(units.InMillimetres)))), float64(f.Rod/f.Throw))
	mean, err := g.slider.MeanSpeedMPS(g.rpm)
	if err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "mean speed      %.3f m/s\n", mean)
	fmt.Fprintf(&b, "greatest speed  %.3f m/s down at %s, %.3f m/s up at %s\n", down.SpeedMPS, deg(down.Angle, 2), -up.SpeedMPS, deg(up.Angle, 2))
	if g.slider.Offset != 0 {
		top, bottom, err := g.slider.DeadCentres()
		if err != nil {
			return "", err
		}
		b.WriteString(recipe.Wrap(fmt.Sprintf("At top dead centre the throw stands %s upright; bottom dead centre is %s after that, not 180°.", side(top, 3), deg(bottom, 3)), width, "", "  "))
	}
	if err := g.table(&b); err != nil {
		return "", err
	}
	if g.finds {
		if err := g.angles(&b); err != nil {
			return "", err
		}
	}
	if g.works {
		if err := g.solution(&b); err != nil {
			return "", err
		}
	}
	b.WriteString("\nTurn the engine by hand, with fuel and ignition disabled.\n")
	return b.String(), nil
}

func deg(a units.Angle, places int) string { return a.Text(units.InDegrees, places) }

// side is an angle before or after something.
func side(a units.Angle, places int) string {
	if a < 0 {
		return deg(-a, places) + " before"
	}
	return deg(a, places) + " after"
}

func (g given) table(b *strings.Builder) error {
	b.WriteString("\n")
	var page strings.Builder
	w := tabwriter.NewWriter(&page, 0, 0, 2, ' ', tabwriter.AlignRight)
	lead, under := "", ""
	if g.series {
		lead, under = "by series\t", "mm\t"
	}
	fmt.Fprintf(w, "angle\tbelow top\t\t%sof stroke\tspeed\tacceleration\t\n", lead)
	fmt.Fprintf(w, "\tmm\tin\t%s%%\tm/s\tm/s²\t\n", under)
	f := g.slider.Float()
	for a := g.from; a <= g.to; a += g.step {
		m, err := g.slider.At(a, g.rpm)
		if err != nil {
			return err
		}
		series := ""
		if g.series {
			series = fmt.Sprintf("%.4f\t", float64(crank.SeriesPosition(f.Throw, f.Rod, tolerance.Float(a.Radians()))))
		}
		fmt.Fprintf(w, "%s\t%s\t%s\t%s%.2f\t%.2f\t%.0f\t\n", a, bare(m.Position, units.InMillimetres, 4), bare(m.Position, units.InInches, 5), series, m.Fraction*100, zero(m.SpeedMPS, 2), zero(m.AccelerationMPS2, 0))
	}
	if err := w.Flush(); err != nil {
		return err
	}
	for line := range strings.Lines(page.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return nil
}

func bare(l units.Length, u units.Unit[units.Length], places int) string {
	text, _ := units.Append(nil, l, units.Style[units.Length]{Unit: u, Places: places, Bare: true})
	return string(text)
}

// zero is x, or plain 0 where it is printed as that.
func zero(x float64, places int) float64 {
	if math.Abs(x) < 0.5*math.Pow10(-places) {
		return 0
	}
	return x
}

// angles are the two of one position.
func (g given) angles(b *strings.Builder) error {
	after, before, err := g.slider.AnglesFor(g.find)
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "\nThe piston is %s below top dead centre\n  %s after it, going down\n  %s before it, going up\n", g.find.Dual(3, 4), deg(after, 3), deg(before, 3))
	if g.slider.Offset != 0 {
		skew, err := g.slider.StopError(g.find)
		if err != nil {
			return err
		}
		b.WriteString(recipe.Wrap(fmt.Sprintf("Midway between them is not top dead centre but %s it: correct what a positive stop or a dial gauge shows by that.", side(skew, 4)), width, "", "  "))
	} else if g.find > 0 && after < 15*units.Degree {
		b.WriteString(recipe.Wrap("That is near top dead centre, where the piston hardly moves: a positive stop or dial is better 15° or more away.", width, "", "  "))
	}
	return nil
}

// solution writes out the position at one angle.
func (g given) solution(b *strings.Builder) error {
	if !g.at.InRange() || g.at.Abs() > 1000*units.Turn {
		return fmt.Errorf("-working: crank angle %v is not within a thousand turns", g.at)
	}
	mm := func(words, symbol string, l units.Length) working.RealTerm {
		return working.GivenReal(words, symbol, l.Float(units.InMillimetres), "mm")
	}
	degrees := working.GivenReal("crank angle", "α", g.at.Float(units.InDegrees), "°")
	angle := degrees.Mul(degrees.Const(math.Pi/180)).Named("crank angle in radians", "θ", "rad")
	throw, rod := mm("throw", "r", g.slider.Throw), mm("rod", "l", g.slider.Rod)
	x := crank.PistonPosition(throw, rod, angle)
	if g.slider.Offset != 0 {
		s := crank.Slider[working.RealTerm]{Throw: throw, Rod: rod, Offset: mm("offset", "e", g.slider.Offset)}
		top := s.TopHeight().Named("height at top dead centre", "H", "mm")
		lean := s.TopAngle().Named("throw after upright there", "θ₀", "rad")
		x = s.PositionOfThrow(top, angle.Add(lean).Named("throw after upright", "φ", "rad"))
	}
	s, err := working.SolveReal(x.Named("piston below top dead centre", "x", "mm"), working.RealStyle{Places: 4, Bare: true})
	if err != nil {
		return err
	}
	b.WriteString("\n" + s.Text())
	return nil
}
