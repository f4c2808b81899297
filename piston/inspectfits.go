package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// notAsked is the error of readings that the limits don't ask for: they would
// be left unjudged.
func notAsked(path string, n int) error {
	return badAt(path, "readings", strconv.Itoa(n), "asked for by the limits, which leave them out")
}

// tooMany refuses a list with more places than the limits have.
func tooMany(path string, n, most int) error {
	if n <= most {
		return nil
	}
	if most == 0 {
		return notAsked(path, n)
	}
	return badAt(path, "places", strconv.Itoa(n), strconv.Itoa(most)+" at the most, as the limits have")
}

// fits refuses readings for which the limits have no place, and parts that
// stand in another one's.
func (x *inspecting) fits() error {
	l := &x.in.limits
	for i := range x.r.Pistons {
		p := &x.r.Pistons[i]
		if p.Piston > l.Pistons {
			return badAt(x.in.pathOf(i)+".piston", "piston", strconv.Itoa(p.Piston), "from 1 to "+strconv.Itoa(l.Pistons)+", as the limits have")
		}
		x.at[p.Piston] = i + 1
		if err := x.in.fits(p); err != nil {
			return inspection.At(x.in.pathOf(i), err)
		}
	}
	for i := range x.r.Bores {
		b := &x.r.Bores[i]
		path := inspection.Index
		if b.Cylinder > l.Pistons {
			return badAt(path("bores", i)+".cylinder", "cylinder", strconv.Itoa(b.Cylinder), "from 1 to "+strconv.Itoa(l.Pistons)+", as the limits have")
		}
		if b.Oversize != "" && x.in.kit(b.Oversize) == nil {
			return badAt(path("bores", i)+".oversize", "oversize", clip([]byte(b.Oversize)), "the name of one of the limits' kits")
		}
		x.bore[b.Cylinder] = i + 1
	}
	return nil
}

func (in *Inspector) fits(p *ReadingsPiston) error {
	l := &in.limits
	place := in.names[p.Piston-1].cylinder
	if err := inspection.At("mark", inspection.Matched("piston", place, p.Mark, in.names[p.Piston-1].number)); err != nil {
		return err
	}
	if l.Arrow != "" {
		if err := inspection.At("arrow", inspection.Matched("piston, by its arrow,", place, p.Arrow, l.Arrow)); err != nil {
			return err
		}
	}
	heights, pulls := 0, 0
	if l.Skirt != nil {
		heights = len(l.Skirt.Heights)
		if !l.Skirt.Pulled.IsZero() {
			pulls = l.Skirt.pulls()
		}
	}
	if err := tooMany("skirt", len(p.Skirt), heights); err != nil {
		return err
	}
	if err := tooMany("pulls", len(p.Pulls), pulls); err != nil {
		return err
	}
	if err := tooMany("rings", len(p.Rings), len(l.Rings)); err != nil {
		return err
	}
	for i := range p.Rings {
		if err := l.Rings[i].fits(&p.Rings[i]); err != nil {
			return inspection.At(inspection.Index("rings", i), err)
		}
	}
	if err := in.fitsPin(&p.Pin, place); err != nil {
		return inspection.At("pin", err)
	}
	if l.Mass == nil && p.Mass.Taken {
		return notAsked("mass", 1)
	}
	if l.Protrusion == nil && (p.First.Taken || p.Second.Taken) {
		return notAsked("first", 1)
	}
	return nil
}

func (l *LimitsRing) fits(r *ReadingsRing) error {
	sides := 0
	if !l.Side.IsZero() {
		sides = l.sides()
	}
	if err := tooMany("sideClearance", len(r.Side), sides); err != nil {
		return err
	}
	for i := range r.Side {
		if r.Side[i].Width.Taken && !l.ByMicrometer {
			return notAsked(inspection.Index("sideClearance", i)+".width", 1)
		}
	}
	if l.Back.IsZero() && (r.Depth.Taken || r.Thickness.Taken) {
		return notAsked("grooveDepth", 1)
	}
	if l.Land.IsZero() && len(l.Spacers) == 0 && r.Land.Taken {
		return notAsked("land", 1)
	}
	if l.Gap.IsZero() && (r.Top.taken() || r.Bottom.taken()) {
		return notAsked("endGapTop", 1)
	}
	return nil
}

func (g *ReadingsGap) taken() bool { return g.Gap.Taken || len(g.Tried) > 0 }

func (in *Inspector) fitsPin(p *ReadingsPin, place string) error {
	l := in.limits.Pins
	for i := range pinLists {
		sections, directions := 0, 0
		if l != nil {
			sections, directions = len(l.list(i)), l.directions()
		}
		list := p.list(i)
		if err := tooMany(pinListPaths[i], len(list), sections); err != nil {
			return err
		}
		for k := range list {
			if len(list[k]) > directions {
				return tooMany(inspection.Index(pinListPaths[i], k), len(list[k]), directions)
			}
		}
	}
	if (l == nil || l.EndFloat.IsZero()) && (p.Between.Taken || p.Length.Taken) {
		return notAsked("between", 1)
	}
	return inspection.At("mark", inspection.Matched("gudgeon pin", place, p.Mark, place[len("cylinder "):]))
}
