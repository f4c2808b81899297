package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

var style = units.Style[units.Length]{Unit: units.InMillimetres, Places: 4}

// workingOf writes out one groove: from the blades to the bracket, the bracket
// against the limits, and what a new ring would do.
func workingOf(rows []row, which string) (string, error) {
	for _, r := range rows {
		if r.key() == strings.Join(strings.Fields(which), " ") {
			return r.working()
		}
	}
	var have []string
	for _, r := range rows {
		have = append(have, strconv.Quote(r.key()))
	}
	return "", fmt.Errorf("no groove is called %q: the file has %s", which, strings.Join(have, ", "))
}

func (r row) working() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n", r.part.Where)
	for i, s := range r.stations {
		fmt.Fprintf(&b, "%s:\n", s.Where)
		for _, t := range s.Trials {
			fmt.Fprintf(&b, "  %-8s  %s  %v\n", t.Blade, t.Thickness.Dual(4, 4), t.Feel)
		}
		fmt.Fprintf(&b, "  so the clearance lies in %v\n", r.readings[i].Bracket)
	}
	b.WriteString("\n" + recipe.Wrap(r.report.Finding.Text(units.InMillimetres, 2), width, "", "  "))
	if r.part.UsedHeight.IsZero() || r.part.NewHeight.IsZero() {
		fmt.Fprintf(&b, "\nWhat a new ring would do: %s\n", r.report.NewRing.Settle)
		return b.String(), nil
	}
	b.WriteString("\n" + recipe.Wrap(fmt.Sprintf("With a new ring: the used one is %s high, new ones %s. The least clearance comes with the used ring at its lowest and a new one at its highest:",
		span(r.part.UsedHeight), span(r.part.NewHeight.Interval())), width, "", "") + "\n")
	if err := withRing(&b, r.report.Finding.Least, r.part.UsedHeight, r.part.NewHeight.Interval(), true); err != nil {
		return "", err
	}
	greatest := "The greatest comes the other way round:"
	if _, end := r.report.Finding.Greatest.Upper(); end == tolerance.Open {
		greatest = "The greatest comes the other way round, and is not quite reached, since that blade did not go in:"
	}
	b.WriteString("\n" + recipe.Wrap(greatest, width, "", "") + "\n")
	if err := withRing(&b, r.report.Finding.Greatest, r.part.UsedHeight, r.part.NewHeight.Interval(), false); err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "\nA new ring: %v.\n", r.report.NewRing.Outcome)
	// Heights above the new rings' own would be a thicker ring: no remedy.
	if fit, ok := r.report.NewRing.Heights.Intersect(r.part.NewHeight.Interval()); ok && r.report.NewRing.Ok {
		fmt.Fprintf(&b, "Of new rings, one %v high would bring it back for certain.\n", fit)
	} else {
		b.WriteString("No new ring's height is sure to bring it back.\n")
	}
	b.WriteString("\n" + recipe.Wrap("Do next: "+r.report.Next, width, "", "  "))
	return b.String(), nil
}

// span is what a size may be: 1.444–1.446 mm, or one value.
func span(size tolerance.Bracket) string {
	if size.IsExact() {
		return size.String()
	}
	return tolerance.BandFrom(size).String()
}

// withRing writes out the clearance with a new ring at one end of the
// brackets: the formula is the library's own, called with terms.
func withRing(b *strings.Builder, clearance, used, fresh tolerance.Bracket, least bool) error {
	end := func(i tolerance.Bracket, lower bool) (units.Length, bool) {
		v, e := i.Upper()
		if lower {
			v, e = i.Lower()
		}
		return v, e != tolerance.Absent
	}
	c, ok := end(clearance, least)
	if !ok {
		b.WriteString("no blade was refused, so nothing bounds it\n")
		return nil
	}
	u, _ := end(used, least)
	f, _ := end(fresh, !least)
	t := piston.ClearanceWithRing(
		working.Given("clearance", "c", c),
		working.Given("used ring height", "h", u),
		working.Given("new ring height", "n", f)).Named("new clearance", "c₂")
	s, err := working.Solve(t, style)
	if err != nil {
		return err
	}
	b.WriteString(s.Text())
	return nil
}

// plans says in which order to try the blades, and what they can't decide.
func plans(e engine, set feeler.Set, name string) (string, error) {
	for _, r := range e.Rings {
		if r.Name != name {
			continue
		}
		spec := r.spec()
		if spec.IsZero() {
			return "", fmt.Errorf("the file gives no limits for the %s ring, so there is nothing to plan for", r.Name)
		}
		// Without knowing more, every clearance up to twice the greatest
		// limit is taken to be as likely as any other.
		top := units.Length(0)
		for _, band := range []tolerance.Band{spec.New, spec.Wear} {
			if hi, end := band.Upper(); end != tolerance.Absent {
				top = top.Max(2 * hi)
			}
		}
		tree, err := feeler.Plan(set, spec, feeler.Uniform(top))
		if err != nil {
			return "", err
		}
		var b strings.Builder
		fmt.Fprintf(&b, "%s ring, limits %s\nBlades: %v\n\n%s\n", r.Name, limits(r), set, tree.Text())
		expected, _ := tree.Expected().Float64()
		b.WriteString(recipe.Wrap(fmt.Sprintf("%.1f trials on average, %d at most, if every clearance up to %v is as likely as any other.", expected, tree.Most(), top), width, "", ""))
		zones, err := feeler.BlindZones(set, spec, 4)
		if err != nil {
			return "", err
		}
		if len(zones) > 0 {
			b.WriteString("\nWhat these blades can't decide:\n")
		}
		for _, z := range zones {
			b.WriteString(recipe.Wrap(z.String(), width, "  ", "    "))
		}
		return b.String(), nil
	}
	return "", fmt.Errorf("no ring is called %q: the file lists %s", name, ringNames(e.Rings))
}
