package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectCheck keeps the first error of a document, with its path.
type inspectCheck struct{ err error }

func (c *inspectCheck) at(path string, err error) {
	if c.err == nil && err != nil {
		c.err = inspection.At(path, err)
	}
}

// want refuses what isn't so.
func (c *inspectCheck) want(path string, ok bool, field, value, want string) {
	if !ok {
		c.at(path, &InputError{field, value, want})
	}
}

// number refuses a count outside from least to most.
func (c *inspectCheck) number(path, field string, n, least, most int) {
	c.want(path, n >= least && n <= most, field, strconv.Itoa(n), "from "+strconv.Itoa(least)+" to "+strconv.Itoa(most))
}

// bound refuses an instrument's error that is none.
func (c *inspectCheck) bound(path string, e units.Length) {
	c.want(path, e >= 0 && e <= 10*units.Millimetre, "error of an instrument", e.String(), "0 mm or more, and at most 10 mm")
}

// inspectLimit refuses limits that contradict each other.
func inspectLimit[Q units.Quantity](c *inspectCheck, path string, l inspection.LimitOf[Q]) {
	if c.err == nil {
		c.at(path, l.Spec().Validate())
	}
}

// Validate refuses limits that can't be: an engine without cylinders, limits that
// contradict each other, stock that can't be. The error is an
// [inspection.PathError].
func (l *Limits) Validate() error {
	c := &inspectCheck{}
	if l == nil {
		return inspection.At("schema", &InputError{"schema of the limits", "of no document", "1"})
	}
	c.want("schema", l.Schema == inspectSchema, "schema of the limits", strconv.Itoa(l.Schema), "1")
	c.number("cylinders", "number of cylinders", l.Cylinders, 1, 24)
	valves := 0
	for k, p := range l.places() {
		if p == nil {
			continue
		}
		path := [2]string{"inlet", "exhaust"}[k]
		c.number(path+".each", "valves in a cylinder", p.Each, 1, 4)
		if c.err == nil {
			valves += p.Each * l.Cylinders
			p.validate(c, path)
		}
	}
	c.number("cylinders", "valves in all", valves, 0, shimValvesMost)
	for i := range l.Camshafts {
		l.validateCam(c, i)
	}
	for i := range l.Drive {
		d, path := &l.Drive[i], inspection.Index("drive", i)
		c.want(path+".part", d.Part != "", "part of the drive", `""`, "named")
		c.want(path+".measure", d.Measure != "", "measure of the drive", `""`, "named")
		c.want(path+".then", d.Then <= inspection.Scrap, "action", d.Then.String(), "one that there is")
		c.want(path+".limit", !d.Limit.IsZero(), "limit", "none", "given")
		c.bound(path+".error", d.Error)
		inspectLimit(c, path+".limit", d.Limit)
		for j := range i {
			c.want(path+".measure", l.Drive[j].Part != d.Part || l.Drive[j].Measure != d.Measure, "measure of the drive", strconv.Quote(inputText(d.Measure)), "listed once of its part")
		}
	}
	l.validateShims(c)
	c.want("blades", len(l.Blades) <= 256, "blades", strconv.Itoa(len(l.Blades)), "at most 256")
	c.bound("bladeError", l.BladeError)
	if c.err == nil {
		_, c.err = l.blades()
	}
	return c.err
}

func (l *Limits) validateShims(c *inspectCheck) {
	s := l.Shims
	if s == nil {
		return
	}
	c.bound("shims.error", s.Error)
	c.want("shims.drawer", len(s.Drawer) <= shimDrawerMost, "shims in the drawer", strconv.Itoa(len(s.Drawer)), "at most 256")
	for i, p := range s.Drawer {
		c.at("shims."+inspection.Index("drawer", i)+".thickness", shimPiece("shim", p.Thickness))
	}
	if q := s.Series; q != nil {
		_, err := NewShimSeries(q.From, q.To, q.Step, q.Error)
		c.at("shims.series", err)
	}
}

func (l *Limits) validateCam(c *inspectCheck, i int) {
	m, path := &l.Camshafts[i], inspection.Index("camshafts", i)
	c.want(path+".name", m.Name != "", "camshaft", `""`, "named")
	for j := range i {
		c.want(path+".name", l.Camshafts[j].Name != m.Name, "camshaft", strconv.Quote(inputText(m.Name)), "listed once")
	}
	c.number(path+".journals", "journals", m.Journals, 0, 32)
	c.number(path+".inletLobes", "inlet lobes", m.InletLobes, 0, 64)
	c.number(path+".exhaustLobes", "exhaust lobes", m.ExhaustLobes, 0, 64)
	c.bound(path+".error", m.Error)
	c.bound(path+".dialError", m.DialError)
	for _, x := range []struct {
		field string
		limit inspection.Limit
	}{{"journal", m.Journal}, {"bearing", m.Bearing}, {"clearance", m.Clearance}, {"runOut", m.RunOut}, {"endFloat", m.EndFloat},
		{"inletLobe.height", m.InletLobe.Height}, {"inletLobe.lift", m.InletLobe.Lift}, {"exhaustLobe.height", m.ExhaustLobe.Height}, {"exhaustLobe.lift", m.ExhaustLobe.Lift}} {
		inspectLimit(c, path+"."+x.field, x.limit)
	}
}

// names refuses a list of names that is too long, or that has one without a
// name or twice.
func (c *inspectCheck) names(path, field string, names []string, most int) {
	c.number(path, field, len(names), 0, most)
	for i, n := range names {
		c.want(inspection.Index(path, i), n != "", field, `""`, "named")
		for _, other := range names[:min(i, most)] {
			c.want(inspection.Index(path, i), n != other, field, strconv.Quote(inputText(n)), "listed once")
		}
	}
}

// span refuses a size that is given, but isn't one.
func (c *inspectCheck) span(path, field string, b tolerance.Bracket) {
	if !b.IsZero() {
		c.at(path, inputBracket(field, b, units.Picometre))
	}
}
