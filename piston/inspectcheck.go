package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Validate refuses readings that can't be, whatever the limits: a number below
// 1, two pistons with one number, a size below zero. Its errors are
// [inspection.PathError]s. What only the limits tell, [Inspect] checks.
func (r *Readings) Validate() error {
	if r.Schema != inspectSchema {
		return badAt("schema", "schema", strconv.Itoa(r.Schema), strconv.Itoa(inspectSchema))
	}
	if err := numbered("pistons", "piston", len(r.Pistons), func(i int) int { return r.Pistons[i].Piston }); err != nil {
		return err
	}
	for i := range r.Pistons {
		if err := r.Pistons[i].check(); err != nil {
			return inspection.At(inspection.Index("pistons", i), err)
		}
	}
	if err := numbered("bores", "cylinder", len(r.Bores), func(i int) int { return r.Bores[i].Cylinder }); err != nil {
		return err
	}
	for i := range r.Bores {
		if err := r.Bores[i].check(); err != nil {
			return inspection.At(inspection.Index("bores", i), err)
		}
	}
	return nil
}

// numbered refuses two parts with one number, and one that isn't from 1 to 64.
func numbered(list, field string, n int, number func(int) int) error {
	var seen [mostPistons + 1]int
	for i := range n {
		k := number(i)
		if k < 1 || k > mostPistons {
			return badAt(inspection.Index(list, i)+"."+field, field, strconv.Itoa(k), "from 1 to 64")
		}
		if seen[k] > 0 {
			return badAt(inspection.Index(list, i)+"."+field, field, strconv.Itoa(k), "another number than that of "+inspection.Index(list, seen[k]-1)+": two can't have one")
		}
		seen[k] = i + 1
	}
	return nil
}

// between reports whether a reading, if it was taken, lies from least to most
// with both its ends; the upper one may lack where open is set.
func between[Q units.Quantity](r *inspection.ReadingOf[Q], least, most Q, open bool) bool {
	if !r.Taken {
		return true
	}
	lo, loEnd := r.Value.Lower()
	hi, hiEnd := r.Value.Upper()
	return r.Value.InRange() && loEnd != tolerance.Absent && lo >= least && lo <= most && (hiEnd != tolerance.Absent && hi <= most || hiEnd == tolerance.Absent && open)
}

// sizeAt refuses a size that isn't above zero.
func sizeAt(path, field string, r *inspection.Reading) error {
	if between(r, units.Picometre, ringMost, false) {
		return nil
	}
	return badAt(path, field, r.String(), "above 0 mm and at most 10 m, with both its ends")
}

// gapAt refuses a gap or a clearance below zero.
func gapAt(path, field string, r *inspection.Reading) error {
	if between(r, 0, ringMost, true) {
		return nil
	}
	return badAt(path, field, r.String(), "0 mm or more and at most 10 m, or left out")
}

func (p *ReadingsPiston) check() error {
	for i := range p.Skirt {
		if err := sizeAt("across", "skirt", &p.Skirt[i].Across); err != nil {
			return inspection.At(inspection.Index("skirt", i), err)
		}
		if err := sizeAt("along", "skirt", &p.Skirt[i].Along); err != nil {
			return inspection.At(inspection.Index("skirt", i), err)
		}
	}
	for i := range p.Rings {
		if err := p.Rings[i].check(); err != nil {
			return inspection.At(inspection.Index("rings", i), err)
		}
	}
	if err := p.Pin.check(); err != nil {
		return inspection.At("pin", err)
	}
	for _, x := range [...]struct {
		path string
		r    *inspection.Reading
	}{{"first", &p.First}, {"second", &p.Second}} {
		if !between(x.r, -ringMost, ringMost, false) {
			return badAt(x.path, "protrusion", x.r.String(), "within 10 m of the block face, with both its ends")
		}
	}
	if !between(&p.Mass, units.Mass(1), mostMass, false) {
		return badAt("mass", "mass", p.Mass.String(), "above 0 g and at most 1000 kg, with both its ends")
	}
	return nil
}

func (r *ReadingsRing) check() error {
	for i := range r.Side {
		s := &r.Side[i]
		err := gapAt("clearance", "side clearance", &s.Clearance)
		if err == nil {
			err = sizeAt("width", "groove width", &s.Width)
		}
		if err != nil {
			return inspection.At(inspection.Index("sideClearance", i), err)
		}
		if s.Width.Taken && (s.Clearance.Taken || len(s.Tried) > 0) {
			return badAt(inspection.Index("sideClearance", i), "side clearance", "twice", "by the groove's width, or by blades or directly")
		}
	}
	for _, x := range [...]struct {
		path, field string
		r           *inspection.Reading
	}{
		{"usedHeight", "ring height", &r.Height}, {"grooveDepth", "groove depth", &r.Depth},
		{"thickness", "ring thickness", &r.Thickness}, {"land", "land", &r.Land},
	} {
		if err := sizeAt(x.path, x.field, x.r); err != nil {
			return err
		}
	}
	if err := gapAt("endGapTop.gap", "end gap", &r.Top.Gap); err != nil {
		return err
	}
	return gapAt("endGapBottom.gap", "end gap", &r.Bottom.Gap)
}

// list is one of the pin's lists, in the order of the survey's.
func (p *ReadingsPin) list(i int) [][]inspection.Reading {
	switch i {
	case pinAtBosses:
		return p.AtBosses
	case pinAtSmallEnd:
		return p.AtSmallEnd
	case pinBosses:
		return p.Bosses
	}
	return p.SmallEnd
}

func (p *ReadingsPin) check() error {
	for i := range pinLists {
		for k, section := range p.list(i) {
			for j := range section {
				if !between(&section[j], units.Picometre, ringMost, false) {
					return sizeAt(inspection.Index(inspection.Index(pinListPaths[i], k), j), pinListNames[i], &section[j])
				}
			}
		}
	}
	if err := sizeAt("between", "between circlips", &p.Between); err != nil {
		return err
	}
	return sizeAt("length", "pin length", &p.Length)
}

func (b *ReadingsBore) check() error {
	for i := range b.Skirt {
		if !between(&b.Skirt[i], units.Picometre, ringMost, false) {
			return sizeAt(inspection.Index("skirt", i), "bore", &b.Skirt[i])
		}
	}
	if len(b.Skirt) > mostPlaces {
		return badAt("skirt", "diameters", strconv.Itoa(len(b.Skirt)), "16 at the most")
	}
	for _, x := range [...]struct {
		path string
		r    *inspection.Reading
	}{{"top", &b.Top}, {"bottom", &b.Bottom}, {"finish", &b.Finish}} {
		if err := sizeAt(x.path, "bore", x.r); err != nil {
			return err
		}
	}
	if b.Finish.Taken && b.Oversize == "" {
		return badAt("oversize", "oversize", `""`, "the kit that the bore is finished for")
	}
	return nil
}
