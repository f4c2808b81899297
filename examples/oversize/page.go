package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// width is that of the page.
const width = 96

// A printer writes lengths for one kind of bench.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

func (p printer) text(l units.Length, r units.Rounding) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: p.places, Rounding: r, Bare: true})
	return string(text)
}

// size is a length in its unit.
func (p printer) size(l units.Length) string {
	return p.text(l, units.NearestEven) + " " + p.unit.Symbol()
}

// least and most write the ends of a bracket, rounded outward; what lies below
// a nanometre is the rounding of the bar's place, and none of the bore.
func (p printer) least(i tolerance.Bracket) string {
	v, _ := i.Lower()
	return p.text(nanometres(v), units.Down)
}

func (p printer) most(i tolerance.Bracket) string {
	v, _ := i.Upper()
	return p.text(nanometres(v), units.Up)
}

func nanometres(l units.Length) units.Length {
	l, _ = units.Round(l, units.InNanometres, 0, units.NearestEven)
	return l
}

// page is the page for the bench.
func page(e engine, j cylinder.OversizeJob, c cylinder.OversizeChoice, p printer) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Oversize: %s\nStandard bore %s; bar: %v; at least %s cut from every wall, %s to hone\n\n",
		e.Engine, p.size(j.Standard), j.Plan.Centring, p.size(j.Plan.Cut), p.size(j.Plan.Honing))
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\tat least\tat most\tby", p.unit.Symbol())
	for _, k := range c.Kits {
		fmt.Fprint(w, "\t", k.Name)
	}
	fmt.Fprintln(w)
	for _, bore := range c.Bores {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s", bore.Where, p.least(bore.Need.Size), p.most(bore.Need.Size), by(bore.Need))
		for _, f := range bore.Fits {
			fmt.Fprint(w, "\t", verdict(f))
		}
		fmt.Fprintln(w)
	}
	w.Flush()
	b.WriteString("The least size that each bore can be finished to, and what each kit does for it:\n\n")
	trimmed(&b, text.String())
	if strings.Contains(text.String(), nominally) {
		b.WriteString(recipe.Wrap("Nominally: at the nominal step. The size to finish to is the measured piston's with its clearance, so measure that kit's pistons before boring.", width, "", "  "))
	}
	b.WriteString("\n" + recipe.Wrap(answer(c), width, "", ""))
	if c.Settle != "" {
		b.WriteString(recipe.Wrap("Do next: "+c.Settle+".", width, "", "  "))
	}
	for _, bore := range c.Bores {
		if n := bore.Need; n.Settle != "" && !n.ByDiameters {
			b.WriteString(recipe.Wrap(bore.Where+": "+n.Settle+".", width, "", "  "))
		}
	}
	for i := range j.Bores {
		if j.Bores[i].Surface == cylinder.SurfaceNotStated {
			b.WriteString(recipe.Wrap(c.Bores[i].Where+": its surface is not stated; plated, coated and bare alloy bores are not bored as iron is.", width, "", "  "))
		}
	}
	options(&b, j, c)
	walls(&b, c, p)
	if err := finish(&b, j, c, p); err != nil {
		return "", err
	}
	b.WriteString("\nThe engine maker's manual governs; this is arithmetic on the readings and limits given.\n")
	return b.String(), nil
}

func by(n cylinder.BoreNeed) string {
	if n.ByDiameters {
		return "diameter"
	}
	return "walls"
}

// nominally is of a kit whose pistons were not measured.
const nominally = "nominally"

// verdict is how a bore does with a kit, in a word or two.
func verdict(f cylinder.KitFit) string {
	switch {
	case f.CleansUp == tolerance.Below:
		return "too small"
	case f.Allowed == tolerance.Below:
		return "too large"
	case f.WallStands == tolerance.Below:
		return "wall too thin"
	case f.Fits == tolerance.Undecided:
		return "can't tell"
	case !f.Proved:
		return nominally
	}
	return "cleans up"
}

// answer is the outcome in a sentence.
func answer(c cylinder.OversizeChoice) string {
	forced := c.Bores[c.Forced].Where
	switch {
	case c.Outcome == cylinder.OversizeKit:
		return fmt.Sprintf("One size for the block: %s. %s asks for it.", c.Kits[c.Kit].Name, upper(forced))
	case c.Outcome == cylinder.OversizeLiner:
		return fmt.Sprintf("No kit suits every bore: line what doesn't clean up. %s is the furthest from it.", upper(forced))
	case c.Kit < 0:
		return fmt.Sprintf("Can't tell, which is not a pass: %s may do, or none. %s is in doubt.", c.Kits[c.Possible].Name, upper(forced))
	}
	return fmt.Sprintf("Can't tell, which is not a pass: %s may do, and %s will. %s asks for it.", c.Kits[c.Possible].Name, c.Kits[c.Kit].Name, upper(forced))
}

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// options puts them side by side.
func options(b *strings.Builder, j cylinder.OversizeJob, c cylinder.OversizeChoice) {
	if len(c.Options) == 0 {
		return
	}
	names := func(bores []int) string {
		var s []string
		for _, i := range bores {
			s = append(s, c.Bores[i].Where)
		}
		if s == nil {
			return "none"
		}
		return strings.Join(s, ", ")
	}
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "  all bores to\tto be lined\tnot yet known\tin stock\ttotal")
	for _, o := range c.Options {
		lined := names(o.Lined)
		if o.LinersStand == tolerance.Below {
			lined += " (wall too thin for a liner)"
		}
		stock := map[tolerance.Verdict]string{tolerance.Within: "yes", tolerance.Below: "no", tolerance.Undecided: "not said"}[o.Enough]
		total := "a price is missing"
		switch {
		case o.LinersStand == tolerance.Below:
			total = "can't be done so"
		case o.Total.Given:
			total = fmt.Sprintf("%d.%02d", o.Total.Coins/100, o.Total.Coins%100)
		}
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\t%s\n", c.Kits[o.Kit].Name, lined, names(o.Open), stock, total)
	}
	w.Flush()
	fmt.Fprintf(b, "\nThe options side by side, for %d bores:\n\n", len(j.Bores))
	trimmed(b, text.String())
}

// walls says what is left of the walls that were read.
func walls(b *strings.Builder, c cylinder.OversizeChoice, p printer) {
	k := max(c.Kit, c.Possible)
	if k < 0 {
		return
	}
	for _, bore := range c.Bores {
		if f := bore.Fits[k]; f.WallRead {
			fmt.Fprintf(b, "\n%s at %s: the thinnest wall read, %s, keeps %s to %s %s.\n", upper(bore.Where), c.Kits[k].Name, f.WallAt, p.least(f.Wall), p.most(f.Wall), p.unit.Symbol())
		}
	}
}

// finish lists the sizes to bore and hone to, where the pistons were measured.
func finish(b *strings.Builder, j cylinder.OversizeJob, c cylinder.OversizeChoice, p printer) error {
	if c.Kit < 0 || len(c.Kits[c.Kit].Pistons) != len(j.Bores) {
		return nil
	}
	wanted, _ := j.Clearance.Middle()
	sizes, err := cylinder.FinishSizes(cylinder.FinishPlan{Skirts: c.Kits[c.Kit].Pistons, Clearance: wanted, Honing: j.Plan.Honing})
	if err != nil {
		return err
	}
	var text strings.Builder
	w := tabwriter.NewWriter(&text, 0, 0, 2, ' ', 0)
	fmt.Fprintf(w, "  %s\tskirt\tbore to\thone to\n", p.unit.Symbol())
	for i, s := range sizes {
		mid := func(i tolerance.Bracket) string { m, _ := i.Middle(); return p.text(m, units.NearestEven) }
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", c.Bores[i].Where, mid(s.Skirt), mid(s.Rough), mid(s.Finish))
	}
	w.Flush()
	fmt.Fprintf(b, "\nSizes for the pistons of %s with %s of clearance, at 20 °C:\n\n", c.Kits[c.Kit].Name, p.size(wanted))
	trimmed(b, text.String())
	return nil
}

func trimmed(b *strings.Builder, text string) {
	for line := range strings.Lines(text) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}
