package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// least readings: a size is above nothing, a clearance or wear is not below it,
// and a height may be on either side of its face.
const (
	leastSize   = units.Picometre
	leastHeight = -inputLargest
)

// prepareKind makes ready what is asked of all valves of one kind.
func (x *Inspector) prepareKind(k *inspectKind, p *LimitsPlace, path string) {
	k.limits = p
	n, count := k.to-k.from, len(x.names)
	ask := func(step inspection.Step, list, at, with string) func(field, name, limit string) inspectAsk {
		return func(field, name, limit string) inspectAsk {
			return inspectAsk{step, list, field, name, with, path + "." + at + "." + limit, count, n}
		}
	}
	none := inspection.Limit{}
	if g := p.Guide; g != nil {
		of := ask(inspection.StepGuides, "guides", "guide", g.With)
		stations := len(g.Levels) > 0
		k.bore = prepareMeasure(x, of("levels", "guide bore", "bore"), g.Bore, g.Error, leastSize, stations, stationSubs("levels", g.Levels, g.OneWay)...)
		k.bore.asked = stations
		if stations && len(g.Levels) > 2 {
			k.bell = prepareMeasure(x, of("levels", "bell-mouth of the guide", "bell"), g.Bell, 0, 0, false)
		}
		if stations && !g.OneWay {
			k.round = prepareMeasure(x, of("levels", "out-of-round seen in the guide", "outOfRound"), g.OutOfRound, 0, 0, false)
		}
		k.clear = prepareMeasure(x, of("levels", "stem-to-guide clearance", "clearance"), g.Clearance, 0, 0, false)
		k.clear.asked = k.clear.asked && stations && p.Valve != nil && len(p.Valve.Stations) > 0
		rock := ask(inspection.StepGuides, "guides", "guide", g.DialWith)
		k.rock = prepareMeasure(x, rock("rocking", "travel of the dial, stem rocked", "rocking"), g.Rocking, g.DialError, 0, false, inspectOnly("rocking"))
	}
	if v := p.Valve; v != nil {
		of, dial := ask(inspection.StepValves, "valves", "valve", v.With), ask(inspection.StepValves, "valves", "valve", v.DialWith)
		stations := len(v.Stations) > 0
		k.stem = prepareMeasure(x, of("stem", "stem diameter", "stem"), v.Stem, v.Error, leastSize, stations, stationSubs("stem", v.Stations, v.OneWay)...)
		k.stem.asked = stations
		if len(v.Stations) > 1 {
			k.taper = prepareMeasure(x, of("stem", "taper of the stem", "taper"), v.Taper, 0, 0, false)
		}
		k.margin = prepareMeasure(x, of("margin", "valve margin", "margin"), v.Margin, v.Error, 0, false, inspectOnly("margin"))
		k.faceRun = prepareMeasure(x, dial("faceRun", "run-out of the valve's face", "faceRun"), v.FaceRun, v.Error, 0, false, inspectOnly("faceRun"))
		k.stemRun = prepareMeasure(x, dial("stemRun", "run-out of the stem", "stemRun"), v.StemRun, v.Error, 0, false, inspectOnly("stemRun"))
		k.tip = prepareMeasure(x, dial("tipWear", "wear of the valve's tip", "tipWear"), v.TipWear, v.Error, 0, false, inspectOnly("tipWear"))
		k.length = prepareMeasure(x, of("length", "length of the valve", "length"), v.Length, v.Error, leastSize, false, inspectOnly("length"))
		if k.newStem = v.NewStem; k.newStem.IsZero() && inspectBounded(v.Stem.New.BandOf) {
			k.newStem = v.Stem.New.Interval()
		}
	}
	if s := p.Seat; s != nil {
		of := ask(inspection.StepSeats, "seats", "seat", s.With)
		dial, depth := ask(inspection.StepSeats, "seats", "seat", s.DialWith), ask(inspection.StepSeats, "seats", "seat", s.DepthWith)
		k.width = prepareMeasure(x, of("width", "seat width", "width"), s.Width, s.Error, 0, false, inspectOnly("width"))
		k.runOut = prepareMeasure(x, dial("runOut", "run-out of the seat", "runOut"), s.RunOut, s.Error, 0, false, inspectOnly("runOut"))
		k.depth = prepareMeasure(x, depth("depth", "depth of the valve's head", "depth"), s.Depth, s.Error, leastHeight, false, inspectOnly("depth"))
		k.tipHeight = prepareMeasure(x, depth("tipHeight", "height of the valve's tip", "tipHeight"), s.TipHeight, s.Error, leastSize, false, inspectOnly("tipHeight"))
		k.outer = prepareMeasure(x, of("outer", "outer diameter of the seat", "cut.outer"), none, s.Error, leastSize, s.Cut != nil, inspectOnly("outer"))
		k.inner = prepareMeasure(x, of("inner", "inner diameter of the seat", "cut.width"), none, s.Error, leastSize, s.Cut != nil, inspectOnly("inner"))
	}
	for _, m := range [...]*inspectMeasure[units.Length]{&k.rock, &k.margin, &k.length, &k.width, &k.tipHeight, &k.outer, &k.inner} {
		m.rough = true
	}
	for i := range p.Springs {
		k.springs = append(k.springs, x.prepareSpring(&p.Springs[i], n, path+"."+inspection.Index("springs", i)))
	}
	k.follower = x.prepareFit(p.Follower, "followers", path+".follower", "cam follower", "follower bore", "follower-to-bore clearance", n)
	k.rocker = x.prepareFit(p.Rocker, "rockers", path+".rocker", "rocker shaft", "rocker bush", "rocker-to-shaft clearance", n)
	if c := p.Clearance; c != nil {
		of := ask(inspection.StepTiming, "clearances", "clearance", c.With)
		name := "valve clearance"
		if c.At != "" {
			name += ", " + c.At
		}
		k.gap = prepareMeasure(x, of("clearance", name, "limit"), c.Limit, c.Error, 0, true, inspectOnly("clearance"))
		if c.Set == SetByShim {
			of := ask(inspection.StepTiming, "clearances", "clearance", x.limits.shims().With)
			k.shim = prepareMeasure(x, of("shim", "shim in place", "set"), none, x.limits.shims().Error, leastSize, true, inspectOnly("shim"))
		}
	}
}

func (x *Inspector) prepareSpring(s *LimitsSpring, n int, path string) inspectSpring {
	part := "spring"
	if s.Name != "" {
		part = s.Name + " spring"
	}
	out := inspectSpring{limits: s, part: part}
	count := x.limits.springCount()
	of := func(field, name, limit, with string) inspectAsk {
		if s.Name != "" {
			name += ", " + s.Name
		}
		return inspectAsk{inspection.StepSprings, "springs", field, name, with, path + "." + limit, count, n}
	}
	out.free = prepareMeasure(x, of("free", "free length", "free", s.With), s.Free, s.Error, leastSize, false, inspectOnly("free"))
	out.square = prepareMeasure(x, of("square", "out of square", "square", s.With), s.Square, s.Error, 0, false, inspectOnly("square"))
	for i, l := range s.Loads {
		a := of("loads", "load at "+l.At.String(), inspection.Index("loads", i)+".limit", s.LoadWith)
		out.loads = append(out.loads, prepareMeasure(x, a, l.Limit, s.LoadError, 0, true, inspectSub{list: "loads", index: i}))
	}
	bind := s.Bind.Spec()
	out.installed = prepareMeasure(x, of("installed", "installed height", "installed", s.With), s.Installed, s.Error, leastSize, !bind.IsZero(), inspectOnly("installed"))
	out.solid = prepareMeasure(x, of("solid", "solid height", "bind", s.With), inspection.Limit{}, s.Error, leastSize, !bind.IsZero() && s.Solid.IsZero(), inspectOnly("solid"))
	out.free.rough, out.installed.rough, out.solid.rough = true, true, true
	out.bind = prepareMeasure(x, of("installed", "margin to coil bind", "bind", ""), s.Bind, 0, 0, false)
	return out
}

func (x *Inspector) prepareFit(f *LimitsFit, list, path, size, bore, clearance string, n int) (out inspectFit) {
	if f == nil {
		return out
	}
	of := func(field, name, limit string) inspectAsk {
		return inspectAsk{inspection.StepFollowers, list, field, name, f.With, path + "." + limit, len(x.names), n}
	}
	both := !f.Clearance.IsZero()
	out.size = prepareMeasure(x, of("size", size, "size"), f.Size, f.Error, leastSize, both, inspectOnly("size"))
	out.bore = prepareMeasure(x, of("bore", bore, "bore"), f.Bore, f.Error, leastSize, both, inspectOnly("bore"))
	out.clear = prepareMeasure(x, of("size", clearance, "clearance"), f.Clearance, 0, 0, false)
	return out
}

// stationSubs are the readings of a bore or stem at stations, one way or two.
func stationSubs(field string, stations []string, oneWay bool) []inspectSub {
	subs := make([]inspectSub, 0, 2*len(stations))
	for i, s := range stations {
		if oneWay {
			subs = append(subs, inspectSub{list: field, index: i, field: "across", name: s})
			continue
		}
		subs = append(subs, inspectSub{list: field, index: i, field: "across", name: s, way: "across"}, inspectSub{list: field, index: i, field: "along", name: s, way: "along"})
	}
	return subs
}

// inspectBounded reports whether a band has both ends.
func inspectBounded(b tolerance.Band) bool {
	_, lo := b.Lower()
	_, hi := b.Upper()
	return lo != tolerance.Absent && hi != tolerance.Absent
}
