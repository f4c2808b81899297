package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

const width = 78

// mm writes a bracket rounded outward; one that is a picometre or two wide, by
// rounding alone, as a number.
func mm(b tolerance.Bracket) string {
	if w, ok := b.Width(); ok && w < units.Nanometre {
		m, _ := b.Middle()
		return m.Text(units.InMillimetres, 3)
	}
	return b.Text(units.InMillimetres, 3)
}

// page is the page for the bench.
func (j job) page() (string, error) {
	now, err := j.plan.Seat.Width()
	if err != nil {
		return "", err
	}
	cuts, err := j.plan.Plan()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	say := func(format string, args ...any) {
		b.WriteString(recipe.Wrap(fmt.Sprintf(format, args...), width, "  ", "    "))
	}
	b.WriteString("Valve seat\n\n")
	seat := j.plan.Seat
	say("angle %s, from the plane square to the stem; outer %s, inner %s", seat.Angle, mm(seat.Outer), mm(seat.Inner))
	say("width along the cone %s", mm(now))
	if err := j.contact(say, "on the valve's face now", seat); err != nil {
		return "", err
	}

	b.WriteString("\nCuts, in this order\n\n")
	refaced, err := cuts.Refaced.Width()
	if err != nil {
		return "", err
	}
	say("1. the seat itself, %s: %s along the stem; it is then %s wide, outer %s, inner %s",
		seat.Angle.FromSquare(), mm(tolerance.Exactly(cuts.Reface)), mm(refaced), mm(cuts.Refaced.Outer), mm(cuts.Refaced.Inner))
	say("2. from above, %s: feed %s from first touch, for an outer diameter of %s", j.plan.Above.FromSquare(), mm(cuts.Above), mm(cuts.Seat.Outer))
	say("3. from below, %s: feed %s from first touch, for an inner diameter of %s", j.plan.Below.FromSquare(), mm(cuts.Below), mm(cuts.Seat.Inner))
	b.WriteString("\n" + recipe.Wrap("Where a feed is a range, feed the lesser, measure, and go on.", width, "  ", "    "))
	if err := j.contact(say, "on the valve's face then", cuts.Seat); err != nil {
		return "", err
	}
	if err := j.after(&b, say, cuts); err != nil {
		return "", err
	}
	b.WriteString("\n" + recipe.Wrap("Guides first: the seat is cut from them. Find out what the seats are made of: dust of beryllium alloy harms the lungs for life. Never cut, drill or grind into a valve filled with sodium. Prove the contact with blue. The engine maker's manual governs.", width, "", ""))
	return b.String(), nil
}

func (j job) contact(say func(string, ...any), when string, s valvetrain.Seat) error {
	c, err := s.ContactOn(j.face)
	if err != nil {
		return err
	}
	place := fmt.Sprintf("%.0f to %.0f %%", c.FromOuter[0], c.FromOuter[1])
	if one := fmt.Sprintf("%.0f %%", c.FromOuter[0]); one == fmt.Sprintf("%.0f %%", c.FromOuter[1]) {
		place = one
	}
	say("%s: %s clear toward the margin, %s toward the port; its middle %s from the outer edge",
		when, mm(c.ClearOuter), mm(c.ClearInner), place)
	for _, side := range []struct {
		clear tolerance.Bracket
		edge  string
	}{{c.ClearOuter, "margin, onto the head's thin edge"}, {c.ClearInner, "port"}} {
		lo, _ := side.clear.Lower()
		hi, _ := side.clear.Upper()
		switch {
		case hi < 0:
			say("this seat reaches past the valve's face toward the %s: don't make it so; choose another diameter or width, or another valve", side.edge)
		case lo < 0:
			say("this seat may reach past the valve's face toward the %s: measure both more finely first", side.edge)
		}
	}
	switch {
	case c.Interference > 0:
		say("interference angle %s: they touch at the seat's outer edge, and the inner stands off by %s until bedded in", c.Interference, mm(c.Gap))
	case c.Interference < 0:
		say("the face is steeper than the seat by %s: they touch at the port's edge, where the seat burns; grind one of them anew", c.Interference.Abs())
	}
	return nil
}

// after is what the cuts do to heights and volume.
func (j job) after(b *strings.Builder, say func(string, ...any), cuts valvetrain.SeatCuts) error {
	sunk := valvetrain.RecessionByCuts(tolerance.Exactly(cuts.Reface), j.faceCut)
	b.WriteString("\nWhat follows\n\n")
	edge, err := j.plan.Seat.SinkageTo(cuts.Seat, j.face.Angle)
	if err != nil {
		return err
	}
	also := ""
	if j.face.Angle != j.plan.Seat.Angle {
		sunk = sunk.Add(edge)
		also = ", and " + mm(edge) + " because the edge moves that it hangs on"
	}
	say("the valve sinks by %s: %s of the seat and %s of the face%s; the manual says how far it may", mm(sunk), mm(tolerance.Exactly(cuts.Reface)), mm(j.faceCut), also)
	installed := valvetrain.InstalledAfter(j.installed, sunk)
	say("the spring's installed height becomes %s: a shim of %s keeps it at %s", mm(installed), mm(sunk), mm(j.installed))
	grind := valvetrain.TipGrindFor(j.tip, sunk, tolerance.Exactly(j.wantTip))
	if hi, _ := grind.Upper(); hi < 0 {
		say("the tip stands %s below the height wanted: none is to be ground off", mm(grind.Abs()))
	} else {
		say("the tip rises to %s: grind %s off it, if the maker allows so much, or take a shim thinner by as much where it acts directly", mm(valvetrain.TipHeightAfter(j.tip, sunk, tolerance.Exactly(units.Length(0)))), mm(grind))
	}
	v, err := valvetrain.Sinkage{Seat: j.plan.Seat, Above: j.plan.Above, SeatCut: tolerance.Exactly(cuts.Reface), FaceCut: j.faceCut, Head: j.head}.VolumeAdded()
	if err != nil {
		return err
	}
	say("the chamber gains %s, and a little more by the cut from above", v.Text(units.InCubicCentimetres, 3))
	return nil
}

// working writes out the two feeds, with the library's own formulas.
func (j job) working() (string, error) {
	cuts, err := j.plan.Plan()
	if err != nil {
		return "", err
	}
	real := working.GivenReal
	middle := func(x tolerance.Bracket) float64 {
		m, _ := x.Middle()
		return m.Float(units.InMillimetres)
	}
	seat := real("seat angle", "α", j.plan.Seat.Angle.Radians(), "rad")
	above := valvetrain.FeedToOuter(real("outer diameter before", "D", middle(cuts.Refaced.Outer), "mm"), real("outer diameter wanted", "D₂", middle(cuts.Seat.Outer), "mm"),
		seat, real("cutter from above", "β", j.plan.Above.Radians(), "rad")).Named("feed from above", "a", "mm")
	below := valvetrain.FeedToInner(real("inner diameter before", "d", middle(cuts.Refaced.Inner), "mm"), real("inner diameter wanted", "d₂", middle(cuts.Seat.Inner), "mm"),
		seat, real("cutter from below", "γ", j.plan.Below.Radians(), "rad")).Named("feed from below", "b", "mm")
	var b strings.Builder
	for _, t := range []working.RealTerm{above, below} {
		s, err := working.SolveReal(t, working.RealStyle{Places: 4, Bare: true})
		if err != nil {
			return "", err
		}
		b.WriteString(s.Text() + "\n")
	}
	return strings.TrimRight(b.String(), "\n") + "\n", nil
}
