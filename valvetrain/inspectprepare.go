package valvetrain

import (
	"strconv"
	"strings"
	"sync"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// An Inspector is a document of limits made ready for many engines: checked,
// proofread, its names and paths written once. It doesn't change, and may be
// used by several goroutines at a time. The zero Inspector asks for nothing.
type Inspector struct {
	limits *Limits
	err    error
	slips  []inspection.Slip
	names  []string       // of all places, the inlet valves first
	kinds  [2]inspectKind // inlet, exhaust
	cams   []inspectCam
	drive  []inspectMeasure[units.Length]
	blades feeler.Set
	series []ShimPiece

	text     *strings.Builder // names and paths, one behind the other
	paths    []inspectPaths
	pool     sync.Pool // rooms to work in, each an *inspectRun
	lengths  int       // collections of like readings
	forces   int
	findings int // the most of them that an engine gives
}

// inspectMeasure is one measure of the limits, made ready.
type inspectMeasure[Q units.Quantity] struct {
	asked bool // whether the limits ask for its readings, or judge it where it follows from others
	set   int  // its collection of like readings
	step  inspection.Step
	name  string // "stem diameter"
	with  string // the instrument
	print string // what is asked, as printed
	spec  tolerance.SpecOf[Q]
	other tolerance.SpecOf[Q] // by the second columns, where the limit looks like a slip
	rough bool                // by scale, caliper or eye, of parts that wear apart: only factors are slips
	e     Q                   // ± of a reading written without an error
	least Q                   // what a reading must be at least
	subs  []inspectSub        // the readings of one part
	paths []string            // of its findings, by place in the list of the readings document
	slips []string            // paths of limits that look like slips
}

// inspectSub is one of a part's readings of a measure, its path and its words
// put together only where they are wanted.
type inspectSub struct {
	list  string // "stem", of a row of stations or parts; empty for a single reading
	index int    // in it
	field string // "across", or of a single reading its field; empty for the element itself
	name  string // of the station; of a numbered part what comes before its number
	way   string // "across"
	count bool   // whether the name goes on with the number
}

// path begins with a point.
func (s inspectSub) path() string {
	if s.list == "" {
		return "." + s.field
	}
	at := "." + inspection.Index(s.list, s.index)
	if s.field != "" {
		at += "." + s.field
	}
	return at
}

// where is the reading's place on its part; empty where there is one alone.
func (s inspectSub) where() string {
	switch {
	case s.count:
		return s.name + strconv.Itoa(s.index+1)
	case s.way != "":
		return s.name + ", " + s.way
	}
	return s.name
}

// inspectOnly is a single reading of a part.
func inspectOnly(field string) inspectSub { return inspectSub{field: field} }

// inspectPaths are the paths of one field, by place in its list.
type inspectPaths struct {
	list, field string
	all         []string
}

// inspectKind is what is asked of all valves of one kind.
type inspectKind struct {
	limits   *LimitsPlace
	exhaust  bool
	from, to int // its places

	bore, rock, bell, round, clear                     inspectMeasure[units.Length] // of the guide
	stem, taper, margin, faceRun, stemRun, tip, length inspectMeasure[units.Length] // of the valve
	width, runOut, depth, tipHeight, outer, inner      inspectMeasure[units.Length] // of the seat
	springs                                            []inspectSpring
	follower, rocker                                   inspectFit
	gap, shim                                          inspectMeasure[units.Length] // valve clearance
	newStem                                            tolerance.Bracket
}

type inspectSpring struct {
	limits                               *LimitsSpring
	part                                 string // "outer spring"
	free, square, installed, solid, bind inspectMeasure[units.Length]
	loads                                []inspectMeasure[units.Force]
}

type inspectFit struct{ size, bore, clear inspectMeasure[units.Length] }

// inspectText writes texts one behind another, and gives each out.
func (x *Inspector) write(parts ...string) string {
	start := x.text.Len()
	for _, p := range parts {
		x.text.WriteString(p)
	}
	return x.text.String()[start:]
}

// pathsOf are the paths list[i].field for as many parts as a list can have.
func (x *Inspector) pathsOf(list, field string, count int) []string {
	for _, p := range x.paths {
		if p.list == list && p.field == field && len(p.all) >= count {
			return p.all
		}
	}
	all := make([]string, count)
	for i := range all {
		all[i] = x.write(list, "[", smallNumber(i), "].", field)
	}
	x.paths = append(x.paths, inspectPaths{list, field, all})
	return all
}

// smallNumber is a number in digits; those below 100 cost nothing.
func smallNumber(i int) string { return strconv.Itoa(i) }

// where of a limit and its readings.
type inspectAsk struct {
	step              inspection.Step
	list, field, name string
	with              string
	path              string // in the limits document
	count             int    // parts in the list at most
	parts             int    // parts of this kind
}

// prepareMeasure makes a measure ready. One without limits isn't asked for,
// unless always is set.
func prepareMeasure[Q units.Quantity](x *Inspector, a inspectAsk, l inspection.LimitOf[Q], e, least Q, always bool, subs ...inspectSub) inspectMeasure[Q] {
	m := inspectMeasure[Q]{step: a.step, name: a.name, with: a.with, spec: l.Spec(), e: e, least: least, subs: subs}
	m.asked = always || !m.spec.IsZero()
	if !m.asked {
		return m
	}
	if len(subs) > 0 {
		if _, is := any(e).(units.Length); is {
			m.set, x.lengths = x.lengths, x.lengths+1
		} else {
			m.set, x.forces = x.forces, x.forces+1
		}
	}
	m.paths = x.pathsOf(a.list, a.field, a.count)
	if !m.spec.IsZero() {
		x.findings += a.parts
	}
	m.print = inspectPrint(l)
	before := len(x.slips)
	x.slips = l.Proofread(x.slips, "limits."+a.path, a.name)
	for _, s := range x.slips[before:] {
		m.slips = append(m.slips, s.Path)
		m.other = inspectOther(l)
	}
	return m
}

// inspectPrint is a limit as the manual prints it.
func inspectPrint[Q units.Quantity](l inspection.LimitOf[Q]) string {
	switch {
	case l.New.IsZero() && l.Wear.IsZero():
		return ""
	case l.Wear.IsZero():
		return l.New.String()
	case l.New.IsZero():
		return "wear limit " + l.Wear.String()
	}
	return l.New.String() + "; wear limit " + l.Wear.String()
}

// Prepare makes limits ready for many engines. Limits that can't be, by
// [Limits.Validate], come out as the error of every inspection. The limits must
// not be changed while the inspector is in use.
func (l *Limits) Prepare() *Inspector {
	x := &Inspector{limits: l, text: new(strings.Builder)}
	if x.err = l.Validate(); x.err != nil {
		return x
	}
	for k, p := range l.places() {
		kind := &x.kinds[k]
		kind.exhaust = k == 1
		kind.from = len(x.names)
		if p != nil {
			for i := range p.Each * l.Cylinders {
				x.names = append(x.names, x.write([]string{"inlet ", "exhaust "}[k], smallNumber(i+1)))
			}
		}
		kind.to = len(x.names)
	}
	x.text.Grow(64 * len(x.names) * 12)
	x.prepareCams()
	for i := range l.Drive {
		d := &l.Drive[i]
		a := inspectAsk{step: inspection.StepTimingDrive, list: "drive", field: "reading", name: d.Measure, with: d.With,
			path: inspection.Index("drive", i) + ".limit", count: len(l.Drive), parts: 1}
		x.drive = append(x.drive, prepareMeasure(x, a, d.Limit, d.Error, 0, true, inspectOnly("reading")))
	}
	for k, p := range l.places() {
		if p != nil {
			x.prepareKind(&x.kinds[k], p, []string{"inlet", "exhaust"}[k])
		}
	}
	x.blades = l.bladeSet()
	if s := l.Shims; s != nil && s.Series != nil {
		x.series, _ = NewShimSeries(s.Series.From, s.Series.To, s.Series.Step, s.Series.Error) // checked by Validate
	}
	return x
}

// places are the limits of both kinds.
func (l *Limits) places() [2]*LimitsPlace { return [2]*LimitsPlace{l.Inlet, l.Exhaust} }
