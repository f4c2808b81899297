package main

import (
	"fmt"
	"math"
	"strings"
	"text/tabwriter"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

const width = 78

var circleNames = map[form.CircleKind]string{form.LSCI: "least squares", form.MZCI: "minimum zone", form.MICI: "maximum inscribed", form.MCCI: "minimum circumscribed"}

// page is the page for the bench.
func (s section) page() (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "Roundness: %s\n%d readings, ±%v each\n\n", s.Part, len(s.profile.Deviations), s.Error)
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "reference circle\tdiameter, mm\tcentre x, y, mm\tRONt, mm (radius)\n")
	for _, c := range s.circles {
		fmt.Fprintf(w, "%s (%v)\t%s\t%s, %s\t%s\n", circleNames[c.Kind], c.Kind, mm(c.Diameter), mm(c.CentreX), mm(c.CentreY), mm(c.RONt.Length()))
	}
	w.Flush()
	b.WriteString(table.String())
	for _, m := range s.missing {
		b.WriteString(recipe.Wrap("no circle: "+m, width, "", "  "))
	}
	b.WriteString(s.mate())
	// Moving each radius by e at most moves the zone's two circles by e each.
	f, err := tolerance.Assess("roundness (RONt, minimum zone)", "", s.Roundness.spec(), within(s.zone.RONt.Length(), s.Error.Scale(2, 1)))
	if err != nil {
		return "", err
	}
	b.WriteString("\n" + recipe.Wrap("By the standard: "+f.Text(units.InMillimetres, 4), width, "", "  "))
	if d, err := s.profile.OutOfRound(); err != nil {
		b.WriteString(recipe.Wrap("By the trade: "+err.Error(), width, "", "  "))
	} else {
		// Two diameters, two readings each.
		g, err := tolerance.Assess("out-of-round (of diameters)", "", s.OutOfRound.spec(), within(d.Length(), s.Error.Scale(4, 1)))
		if err != nil {
			return "", err
		}
		b.WriteString(recipe.Wrap("By the trade: "+g.Text(units.InMillimetres, 4), width, "", "  "))
	}
	s.shape(&b)
	b.WriteString("\nThe engine maker's manual governs, also in which of the two its limit means.\n")
	return b.String(), nil
}

// mate is the gauge that goes in, or over, as far as this section tells.
func (s section) mate() string {
	kind, text := form.MICI, "The largest plug that goes into this section measures %s mm"
	if s.shaft {
		kind, text = form.MCCI, "The smallest ring that goes over this section measures %s mm"
	}
	for _, c := range s.circles {
		if c.Kind != kind {
			continue
		}
		text = fmt.Sprintf(text, mm(c.Diameter)) + ", as far as its readings tell"
		if !c.Global {
			text += "; out of the middle a larger one may go in"
		}
		return recipe.Wrap(text+".", width, "", "")
	}
	return ""
}

// shape tells the harmonics.
func (s section) shape(b *strings.Builder) {
	b.WriteString("\nShape\n\n")
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprint(w, "order\tshape\tamplitude, mm\tfirst crest at\ton the radius, mm\ton the diameter, mm\n")
	top := min(10, len(s.spectrum.Harmonics)-1)
	for k := 1; k <= top; k++ {
		h := s.spectrum.Order(k)
		radial, diametral := fixed(h.RONt()), fixed(h.OutOfRound())
		if k == 1 {
			radial, diametral = "centre only", ""
		}
		fmt.Fprintf(w, "%d\t%s\t%s\t%.0f°\t%s\t%s\n", k, orderName(k), fixed(h.Amplitude()), h.Crest()*180/math.Pi, radial, diametral)
	}
	w.Flush()
	for line := range strings.Lines(table.String()) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	largest := s.spectrum.Largest(2, top)
	text := fmt.Sprintf("Most of it is order %d (%s).", largest.Order, orderName(largest.Order))
	if largest.Order%2 == 1 {
		text += " A bore gauge or micrometer, which reads diameters, doesn't show odd lobes."
	}
	b.WriteString("\n" + recipe.Wrap(text, width, "", ""))
	// An axis off by e shows a false ovality of e²/4r.
	if e, r := s.spectrum.Eccentricity().Amplitude(), s.spectrum.Mean(); e*e/(4*r) > 1e-5 {
		b.WriteString(recipe.Wrap(fmt.Sprintf("The part stood %s mm off the axis, which adds %s mm to the ovality's amplitude: centre it better.", fixed(e), fixed(e*e/(4*r))), width, "", ""))
	}
}

func orderName(k int) string {
	switch k {
	case 1:
		return "eccentric"
	case 2:
		return "oval"
	}
	return fmt.Sprint(k, " lobes")
}

func mm(l units.Length) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: 4, Bare: true})
	return string(text)
}

func fixed(x float64) string { return fmt.Sprintf("%.4f", x) }

// working writes out the trade's out-of-round from the longest and the
// shortest diameter.
func (s section) working() (string, error) {
	if _, err := s.profile.OutOfRound(); err != nil {
		return "", err
	}
	n := len(s.profile.Deviations) / 2
	diameter := func(i int) units.Length {
		return s.profile.Nominal.Scale(2, 1).Add(s.profile.Deviations[i]).Add(s.profile.Deviations[i+n])
	}
	most, least := 0, 0
	for i := range n {
		if diameter(i) > diameter(most) {
			most = i
		}
		if diameter(i) < diameter(least) {
			least = i
		}
	}
	at := func(i int) string { return fmt.Sprintf("diameter at %.4g°", 180*float64(i)/float64(n)) }
	t := form.OutOfRound(working.Given(at(most), "d₁", diameter(most)), working.Given(at(least), "d₂", diameter(least))).Named("out-of-round", "o")
	solution, err := working.Solve(t, units.Style[units.Length]{Unit: units.InMillimetres, Places: 4})
	if err != nil {
		return "", err
	}
	return solution.Text(), nil
}
