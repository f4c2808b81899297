package piston

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// GrooveRecutWidth is the width to re-cut a worn groove to, so that a new ring
// has its clearance with a spacer beside it:
// ring height + side clearance + spacer.
//
//	────┐                       ┌────
//	    │┌────────┐┌──────────┐ │
//	    ││ spacer ││   ring   │ │   the spacer on the crown's side, so that
//	    │└────────┘└──────────┘ │   the ring seats on the piston's own metal
//	────┘                       └────   (common practice)
func GrooveRecutWidth[N tolerance.Number[N]](ringHeight, clearance, spacer N) N {
	return ringHeight.Add(clearance).Add(spacer)
}

// GrooveSpacer is the spacer that leaves a ring its clearance in a re-cut
// groove: width − ring height − clearance. It undoes [GrooveRecutWidth].
func GrooveSpacer[N tolerance.Number[N]](width, ringHeight, clearance N) N {
	return width.Sub(ringHeight).Sub(clearance)
}

// A Spacer is a groove spacer that can be had.
type Spacer struct {
	Name      string         `json:"name"`      // "0.60 mm"
	Thickness tolerance.Band `json:"thickness"` // what such spacers measure
}

// A GrooveRecut is a worn groove that is to be re-cut for a spacer.
//
// A lathe takes the metal: hold the piston by its own centres, mind hands and
// sleeves, and keep to the engine maker's manual: where it forbids re-cutting,
// or the groove has an iron carrier, the piston is renewed.
type GrooveRecut struct {
	Where      string            `json:"where"`              // "piston 2, top groove"
	Width      tolerance.Bracket `json:"width"`              // of the worn groove at its mouth, where it is widest
	Cut        units.Length      `json:"cut"`                // least cut, of both faces together, that makes them flat and square
	RingHeight tolerance.Band    `json:"ringHeight"`         // what new rings measure
	Clearance  tolerance.Band    `json:"clearance"`          // side clearance wanted with a new ring
	Land       tolerance.Bracket `json:"land,omitzero"`      // of the land that gives the metal; zero where not measured
	LeastLand  units.Length      `json:"leastLand,omitzero"` // what must be left of it
	Spacers    []Spacer          `json:"spacers"`            // that can be had
}

// A SpacerFit is what one spacer does for a groove.
type SpacerFit struct {
	Name string `json:"name"` // the spacer's
	// Width is what the groove may be re-cut to, for every ring and spacer
	// of their bands to have the wanted clearance.
	Width tolerance.Band `json:"width,omitzero"`
	// Possible is whether there is such a width: not so where the tolerances
	// of ring and spacer together leave no room in the clearance's.
	Possible bool              `json:"possible"`
	CleansUp tolerance.Verdict `json:"cleansUp"` // Within: wide enough to cut the wear away; Below: not
	LandLeft tolerance.Verdict `json:"landLeft"` // Within: the land keeps its least; Below: not; Undecided where it was not measured
}

// Fits reports whether the spacer serves for certain.
func (f SpacerFit) Fits() bool {
	return f.Possible && f.CleansUp == tolerance.Within && f.LandLeft == tolerance.Within
}

// A SpacerChoice is what the spacers that can be had do for a groove.
type SpacerChoice struct {
	Fits   []SpacerFit `json:"fits"`   // of each spacer, from the thinnest
	Chosen int         `json:"chosen"` // the thinnest that serves for certain, or −1
	Next   string      `json:"next"`   // what to do next, in words
}

// ChooseSpacer chooses the thinnest spacer for which the groove can be re-cut
// clean: it takes the least metal from the land. It fails with an
// [InputError] where no spacer can be had, and where a size can't be.
func ChooseSpacer(g GrooveRecut) (SpacerChoice, error) {
	if err := g.check(); err != nil {
		return SpacerChoice{}, err
	}
	spacers := slices.Clone(g.Spacers)
	slices.SortStableFunc(spacers, func(a, b Spacer) int {
		x, _ := a.Thickness.Lower()
		y, _ := b.Thickness.Lower()
		return x.Compare(y)
	})
	c := SpacerChoice{Chosen: -1}
	doubt := -1
	for i, s := range spacers {
		f := g.fit(s)
		c.Fits = append(c.Fits, f)
		switch {
		case c.Chosen < 0 && f.Fits():
			c.Chosen = i
		case doubt < 0 && f.Possible && f.CleansUp != tolerance.Below && f.LandLeft != tolerance.Below:
			doubt = i
		}
	}
	switch {
	case c.Chosen >= 0:
		f := c.Fits[c.Chosen]
		c.Next = "re-cut the groove to " + f.Width.String() + " and fit spacer " + f.Name + " on the crown's side"
	case doubt >= 0 && g.Land.IsZero():
		c.Next = "measure the land: spacer " + c.Fits[doubt].Name + " may do"
	case doubt >= 0:
		c.Next = "measure the worn groove and the land more closely: spacer " + c.Fits[doubt].Name + " may do"
	default:
		c.Next = "no spacer that can be had serves: renew the piston"
	}
	return c, nil
}

func (g *GrooveRecut) check() error {
	if len(g.Spacers) == 0 {
		return &InputError{"spacers", "none", "at least one that can be had"}
	}
	if _, err := ringBore("groove width", g.Width); err != nil {
		return err
	}
	bands := []struct {
		field string
		band  tolerance.Band
	}{{"new ring height", g.RingHeight}, {"side clearance wanted", g.Clearance}}
	for _, s := range g.Spacers {
		bands = append(bands, struct {
			field string
			band  tolerance.Band
		}{"thickness of spacer " + clip([]byte(s.Name)), s.Thickness})
	}
	for _, b := range bands {
		lo, loEnd := b.band.Lower()
		hi, hiEnd := b.band.Upper()
		if loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo <= 0 || hi > ringMost {
			return &InputError{b.field, b.band.String(), "from a least above 0 mm to a greatest"}
		}
	}
	if g.Cut < 0 || g.Cut > ringMost {
		return &InputError{"cut", g.Cut.String(), "0 mm or more"}
	}
	if g.LeastLand < 0 || g.LeastLand > ringMost {
		return &InputError{"least land", g.LeastLand.String(), "0 mm or more"}
	}
	if !g.Land.IsZero() {
		if _, err := ringBore("land", g.Land); err != nil {
			return err
		}
	}
	return nil
}

// fit tries one spacer.
func (g *GrooveRecut) fit(s Spacer) SpacerFit {
	f := SpacerFit{Name: s.Name}
	h0, _ := g.RingHeight.Lower()
	h1, _ := g.RingHeight.Upper()
	s0, _ := s.Thickness.Lower()
	s1, _ := s.Thickness.Upper()
	c0, c0End := g.Clearance.Lower()
	c1, c1End := g.Clearance.Upper()
	width, err := tolerance.NewBand(GrooveRecutWidth(h1, c0, s1), c0End, GrooveRecutWidth(h0, c1, s0), c1End)
	if err != nil {
		return f
	}
	f.Width, f.Possible = width, true
	// The groove is cut to its greatest allowed width at the most.
	lo, _ := g.Width.Lower()
	hi, _ := g.Width.Upper()
	widest, _ := width.Upper()
	need, _ := tolerance.NewInterval(lo+g.Cut, tolerance.Closed, hi+g.Cut, tolerance.Closed)
	f.CleansUp = within(tolerance.AtMost(widest).Judge(need))
	if g.Land.IsZero() {
		return f
	}
	// What widens the groove comes off the land: down to the band's least, or
	// what cleans up where that is more.
	narrowest, _ := width.Lower()
	l0, _ := g.Land.Lower()
	l1, _ := g.Land.Upper()
	left, _ := tolerance.NewInterval(l0-max(narrowest-lo, g.Cut), tolerance.Closed, l1-max(narrowest-hi, g.Cut), tolerance.Closed)
	f.LandLeft = tolerance.AtLeast(g.LeastLand).Judge(left)
	return f
}

// within turns what is above an upper limit into what falls short.
func within(v tolerance.Verdict) tolerance.Verdict {
	if v == tolerance.Above {
		return tolerance.Below
	}
	return v
}
