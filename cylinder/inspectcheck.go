package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// badAt is an input error with its path.
func badAt(path, field, value, want string) error {
	return inspection.At(path, &InputError{Field: clip(field), Value: value, Want: want})
}

// Validate refuses readings that can't be, whatever the limits: a number below
// 1, two parts with one number, a size or a pressure below zero. Its errors are
// [inspection.PathError]s. What only the limits tell, [Inspect] checks.
func (r *Readings) Validate() error {
	if r.Schema != inspectSchema {
		return badAt("schema", "schema", strconv.Itoa(r.Schema), strconv.Itoa(inspectSchema))
	}
	if err := r.Conditions.check(); err != nil {
		return inspection.At("testConditions", err)
	}
	if r.Caps > CapsLoose || r.TorquePlate > RecordedNo || r.CapsTorqued > RecordedNo {
		return badAt("caps", "caps or torque plate", "(unknown)", "recorded, or left out")
	}
	if err := numbered("blockFaces", "bank", len(r.Faces), func(i int) int { return r.Faces[i].Bank }); err != nil {
		return err
	}
	for i := range r.Faces {
		if err := r.Faces[i].check(); err != nil {
			return inspection.At(inspection.Index("blockFaces", i), err)
		}
	}
	if err := numbered("mains", "main", len(r.Mains), func(i int) int { return r.Mains[i].Main }); err != nil {
		return err
	}
	for i := range r.Mains {
		if err := r.Mains[i].check(); err != nil {
			return inspection.At(inspection.Index("mains", i), err)
		}
	}
	if err := numbered("cylinders", "cylinder", len(r.Cylinders), func(i int) int { return r.Cylinders[i].Cylinder }); err != nil {
		return err
	}
	for i := range r.Cylinders {
		if err := r.Cylinders[i].check(); err != nil {
			return inspection.At(inspection.Index("cylinders", i), err)
		}
	}
	if err := numbered("heads", "bank", len(r.Heads), func(i int) int { return r.Heads[i].Bank }); err != nil {
		return err
	}
	for i := range r.Heads {
		err := r.Heads[i].check()
		if err == nil && beyond(r.Heads[i].CamBow, 0) {
			err = badAt("camBow", "bow of the cam tunnel", r.Heads[i].CamBow.String(), "0 mm or more")
		}
		if err != nil {
			return inspection.At(inspection.Index("heads", i), err)
		}
	}
	return nil
}

// numbered refuses two parts with one number, and one that isn't from 1 to 64.
func numbered(list, field string, n int, number func(int) int) error {
	var seen [mostCylinders + 1]int
	for i := range n {
		k := number(i)
		if k < 1 || k > mostCylinders {
			return badAt(inspection.Index(list, i)+"."+field, field, strconv.Itoa(k), "from 1 to 64")
		}
		if seen[k] > 0 {
			return badAt(inspection.Index(list, i)+"."+field, field, strconv.Itoa(k), "another number than that of "+inspection.Index(list, seen[k]-1)+": two can't have one")
		}
		seen[k] = i + 1
	}
	return nil
}

// beyond reports whether a reading that was taken is below the least or beyond
// 10 m, or has no lower end.
func beyond(r inspection.Reading, least units.Length) bool {
	if !r.Taken {
		return false
	}
	lo, loEnd := r.Value.Lower()
	hi, hiEnd := r.Value.Upper()
	return !r.Value.InRange() || loEnd == tolerance.Absent || lo < least || lo > largest || hiEnd != tolerance.Absent && hi > largest
}

// unbounded reports whether a reading that was taken lacks an end.
func unbounded(r inspection.Reading) bool {
	_, loEnd := r.Value.Lower()
	_, hiEnd := r.Value.Upper()
	return r.Taken && (loEnd == tolerance.Absent || hiEnd == tolerance.Absent)
}

func badSize(path, field string, r inspection.Reading) error {
	return badAt(path, field, r.String(), "above 0 mm and at most 10 m, with both its ends")
}

func (f *ReadingsFace) check() error {
	for i := range f.Lines {
		l := &f.Lines[i]
		path := func(field string) string { return inspection.Index("lines", i) + "." + field }
		switch {
		case beyond(l.Gap, 0):
			return badAt(path("gap"), "gap", l.Gap.String(), "0 mm or more")
		case beyond(l.Front, 0):
			return badAt(path("front"), "gap", l.Front.String(), "0 mm or more")
		case beyond(l.Rear, 0):
			return badAt(path("rear"), "gap", l.Rear.String(), "0 mm or more")
		case l.Seat == Rests && (l.Front.Taken || l.Rear.Taken):
			return badAt(path("straightEdge"), "straight-edge", l.Seat.String(), `"rocks", where gaps under its ends were read`)
		case l.Seat > Rocks:
			return badAt(path("straightEdge"), "straight-edge", "(unknown)", "rests, rocks or unsaid")
		}
	}
	for i, g := range f.Local {
		if beyond(g, 0) {
			return badAt(inspection.Index("local", i), "gap", g.String(), "0 mm or more")
		}
	}
	for i, h := range f.Heights {
		if beyond(h, units.Picometre) || unbounded(h) {
			return badSize(inspection.Index("heights", i), "height", h)
		}
	}
	for i, row := range f.Grid {
		for j, h := range row {
			if h.Taken && (!h.Value.IsExact() || beyond(h, -largest)) {
				return badAt(inspection.Index(inspection.Index("grid", i), j), "height", h.String(), "a plain height: its error stands in the limits")
			}
		}
	}
	if beyond(f.OffBefore, 0) || unbounded(f.OffBefore) {
		return badAt("offBefore", "taken off before", f.OffBefore.String(), "0 mm or more")
	}
	return nil
}

func (m *ReadingsMain) check() error {
	for i, row := range m.Sizes {
		for j, s := range row {
			if beyond(s, units.Picometre) || unbounded(s) {
				return badSize(inspection.Index(inspection.Index("sizes", i), j), "housing bore", s)
			}
		}
	}
	for _, x := range [...]struct {
		path string
		r    inspection.Reading
	}{{"line", m.Line}, {"crown", m.Crown}} {
		if beyond(x.r, -largest) || unbounded(x.r) {
			return badAt(x.path, x.path, x.r.String(), "a height within ±10 m")
		}
	}
	return nil
}

func (c *ReadingsCylinder) check() error {
	for i := range c.Levels {
		l := &c.Levels[i]
		for j := range 2 + len(l.Angled) {
			if r := l.at(j); r.Taken && (!r.Value.IsExact() || beyond(r, -largest)) {
				return badAt(inspection.Index("levels", i)+"."+levelPath(j), "reading", r.String(), "a plain value, as the gauge shows it: its errors stand in the limits")
			}
		}
	}
	for _, x := range [...]struct {
		path, field string
		r           inspection.Reading
		least       units.Length
	}{
		{"finished", "size last finished to", c.Finished, units.Picometre}, {"ridge", "ridge", c.Ridge, 0},
		{"liner.shim", "shim", c.Liner.Shim, 0},
	} {
		if beyond(x.r, x.least) || unbounded(x.r) {
			return badAt(x.path, x.field, x.r.String(), "from "+x.least.String()+" to 10 m, with both its ends")
		}
	}
	if u := c.Unworn; u.Taken && (!u.Value.IsExact() || beyond(u, -largest)) {
		return badAt("unworn", "reading below the ring travel", u.String(), "a plain value, as the gauge shows it")
	}
	if c.Oversize < 0 || c.Oversize > units.Inch {
		return badAt("oversize", "oversize", c.Oversize.String(), "from 0 to 1 in")
	}
	for i, p := range c.Liner.Protrusion {
		if beyond(p, -mostProtrusion) || unbounded(p) || p.Taken && tolerance.AtMost(mostProtrusion).Judge(p.Value) == tolerance.Above {
			return badAt("liner."+inspection.Index("protrusion", i), "protrusion", p.String(), "within 10 mm of the block face")
		}
	}
	for _, x := range [...]struct {
		path string
		r    inspection.ReadingOf[units.Pressure]
	}{
		{"compression.dry", c.Compression.Dry}, {"compression.wet", c.Compression.Wet}, {"leakage.supply", c.Leakage.Supply}, {"leakage.held", c.Leakage.Held},
	} {
		if !x.r.Taken {
			continue
		}
		if err := stripPressure("pressure", x.r.Value); err != nil {
			return inspection.At(x.path, err)
		}
	}
	if s, h := c.Leakage.Supply, c.Leakage.Held; s.Taken && h.Taken {
		_, end := s.Value.Upper()
		_, heldEnd := h.Value.Upper()
		if lo, _ := s.Value.Lower(); lo <= 0 || end == tolerance.Absent || heldEnd == tolerance.Absent || tolerance.AtMost(lo).Judge(h.Value) == tolerance.Above {
			return badAt("leakage.held", "pressure held", h.String(), "at most the supply, "+s.String()+", which is above 0")
		}
	}
	for i, h := range c.Leakage.Heard {
		if h < AtInlet || h > AllAtOnce {
			return badAt(inspection.Index("leakage.heard", i), "place", "(unknown)", "one where air is heard")
		}
	}
	if a := c.CrossHatch; a.Taken {
		lo, loEnd := a.Value.Lower()
		hi, hiEnd := a.Value.Upper()
		if !a.Value.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < 0 || hi > 180*units.Degree {
			return badAt("crossHatch", "cross-hatch", a.String(), "from 0° to 180°")
		}
	}
	return nil
}

// at is the reading in one of the directions: along, across, further ones.
func (l *ReadingsLevel) at(heading int) inspection.Reading {
	switch {
	case heading == 0:
		return l.Along
	case heading == 1:
		return l.Across
	case heading-2 < len(l.Angled):
		return l.Angled[heading-2]
	}
	return inspection.Reading{}
}

// levelPath is where a direction stands in its level.
func levelPath(heading int) string {
	switch heading {
	case 0:
		return "along"
	case 1:
		return "across"
	}
	return inspection.Index("angled", heading-2)
}
