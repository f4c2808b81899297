package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectKey is what a part goes by in its list.
type inspectKey struct {
	list, name string
	place      ValvePlace
}

// inspectSeen refuses a part that is listed twice, one without a place, and one
// that stands at another's.
type inspectSeen struct {
	inspectCheck
	at map[inspectKey]int
}

func (c *inspectSeen) part(list string, i int, place ValvePlace, name, part, mark string) {
	path := inspection.Index(list, i)
	c.want(path+".place", place.Number >= 1 && place.Number < 1000, "place", place.String(), "numbered from 1")
	key := inspectKey{list, name, place}
	if j, seen := c.at[key]; seen {
		c.want(path+".place", false, "place", place.String(), "listed once: it stands at "+inspection.Index(list, j)+" already")
	}
	c.at[key] = i
	if mark != "" {
		c.inspectCheck.at(path+".mark", inspection.Matched(part, place.String(), inputText(mark), place.String()))
	}
}

// inspectRead refuses a reading that can't be, or that says nothing.
func inspectRead[Q units.Quantity](c *inspectSeen, path, field string, r inspection.ReadingOf[Q], least Q) {
	if !r.Taken || c.err != nil {
		return
	}
	lo, loEnd := r.Value.Lower()
	_, hiEnd := r.Value.Upper()
	switch {
	case !r.Value.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
		c.want(path, false, field, r.Value.String(), "measured, with a least and a greatest")
	case lo < least:
		c.want(path, false, field, r.Value.String(), "at least "+tolerance.Exactly(least).String())
	}
}

// Validate refuses readings that can't be, whatever the limits: another schema, a
// size that isn't above nothing, two parts of one place, a marked part in
// another's. What isn't there is no error. The error is an
// [inspection.PathError].
func (r *Readings) Validate() error {
	c := &inspectSeen{at: map[inspectKey]int{}}
	if r == nil || r.Schema != inspectSchema {
		return inspection.At("schema", &InputError{"schema of the readings", inspectSchemaOf(r), "1"})
	}
	for i := range r.Camshafts {
		r.Camshafts[i].validate(c, inspection.Index("camshafts", i))
	}
	for i := range r.Drive {
		inspectRead(c, inspection.Index("drive", i)+".reading", "reading", r.Drive[i].Reading, 0)
	}
	for i := range r.Guides {
		g, path := &r.Guides[i], inspection.Index("guides", i)
		c.part("guides", i, g.Place, "", "guide", "")
		c.pairs(path+".levels", "guide bore", g.Levels)
		inspectRead(c, path+".rocking", "travel of the dial", g.Rocking, 0)
	}
	for i := range r.Valves {
		v, path := &r.Valves[i], inspection.Index("valves", i)
		c.part("valves", i, v.Place, "", "valve", v.Mark)
		c.pairs(path+".stem", "stem diameter", v.Stem)
		inspectRead(c, path+".margin", "valve margin", v.Margin, 0)
		inspectRead(c, path+".faceRun", "run-out of the valve's face", v.FaceRun, 0)
		inspectRead(c, path+".stemRun", "run-out of the stem", v.StemRun, 0)
		inspectRead(c, path+".tipWear", "wear of the valve's tip", v.TipWear, 0)
		inspectRead(c, path+".tipOff", "ground off the tip", v.TipOff, 0)
		inspectRead(c, path+".length", "length of the valve", v.Length, leastSize)
	}
	for i := range r.Seats {
		s, path := &r.Seats[i], inspection.Index("seats", i)
		c.part("seats", i, s.Place, "", "seat", "")
		inspectRead(c, path+".width", "seat width", s.Width, 0)
		inspectRead(c, path+".runOut", "run-out of the seat", s.RunOut, 0)
		inspectRead(c, path+".depth", "depth of the valve's head", s.Depth, leastHeight)
		inspectRead(c, path+".tipHeight", "height of the valve's tip", s.TipHeight, leastSize)
		inspectRead(c, path+".outer", "outer diameter of the seat", s.Outer, leastSize)
		inspectRead(c, path+".inner", "inner diameter of the seat", s.Inner, leastSize)
	}
	for i := range r.Springs {
		r.Springs[i].validate(c, i)
	}
	for _, list := range []struct {
		name, part string
		fits       []ReadingsFit
	}{{"followers", "follower", r.Followers}, {"rockers", "rocker", r.Rockers}} {
		for i := range list.fits {
			f, path := &list.fits[i], inspection.Index(list.name, i)
			c.part(list.name, i, f.Place, "", list.part, f.Mark)
			inspectRead(c, path+".size", "size", f.Size, leastSize)
			inspectRead(c, path+".bore", "bore", f.Bore, leastSize)
		}
	}
	for i := range r.Clearances {
		r.Clearances[i].validate(c, i)
	}
	return c.err
}

func (s *ReadingsSpring) validate(c *inspectSeen, i int) {
	path := inspection.Index("springs", i)
	c.part("springs", i, s.Place, s.Name, "spring", "")
	inspectRead(c, path+".free", "free length", s.Free, leastSize)
	inspectRead(c, path+".square", "out of square", s.Square, 0)
	for j, l := range s.Loads {
		inspectRead(c, path+"."+inspection.Index("loads", j), "load", l, 0)
	}
	inspectRead(c, path+".installed", "installed height", s.Installed, leastSize)
	inspectRead(c, path+".solid", "solid height", s.Solid, leastSize)
}

func (x *ReadingsClearance) validate(c *inspectSeen, i int) {
	path := inspection.Index("clearances", i)
	c.part("clearances", i, x.Place, "", "clearance", "")
	c.number(path+".trials", "trials", len(x.Trials), 0, 256)
	for j, t := range x.Trials {
		c.inspectCheck.at(path+"."+inspection.Index("trials", j)+".blade", inputSize("blade", t.Blade))
	}
	if r := x.Clearance; r.Taken {
		lo, _ := r.Value.Lower()
		c.want(path+".clearance", r.Value.InRange() && lo >= 0, "valve clearance", r.Value.String(), "at least 0 mm")
		c.want(path+".clearance", len(x.Trials) == 0, "valve clearance", r.Value.String(), "left out where trials with blades are given")
	}
	inspectRead(c, path+".shim", "shim in place", x.Shim, leastSize)
}

func (x *ReadingsCamshaft) validate(c *inspectSeen, path string) {
	for i, j := range x.Journals {
		at := path + "." + inspection.Index("journals", i)
		inspectRead(c, at+".journal", "camshaft journal", j.Journal, leastSize)
		inspectRead(c, at+".bearing", "camshaft bearing", j.Bearing, leastSize)
		c.inspectCheck.at(at+".capMark", inspection.Matched("cap", "journal "+strconv.Itoa(i+1), inputText(j.CapMark), strconv.Itoa(i+1)))
	}
	inspectRead(c, path+".runOut", "run-out of the middle journal", x.RunOut, 0)
	inspectRead(c, path+".endFloat", "end float of the camshaft", x.EndFloat, 0)
	for _, list := range []struct {
		name  string
		lobes []ReadingsLobe
	}{{"inletLobes", x.Inlet}, {"exhaustLobes", x.Exhaust}} {
		for i, l := range list.lobes {
			at := path + "." + inspection.Index(list.name, i)
			inspectRead(c, at+".height", "lobe height", l.Height, leastSize)
			inspectRead(c, at+".base", "base circle of the lobe", l.Base, leastSize)
		}
	}
}

func (c *inspectSeen) pairs(path, field string, pairs []ReadingsPair) {
	for i, p := range pairs {
		at := inspection.Index(path, i)
		inspectRead(c, at+".across", field, p.Across, leastSize)
		inspectRead(c, at+".along", field, p.Along, leastSize)
	}
}
