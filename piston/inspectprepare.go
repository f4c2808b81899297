package piston

import (
	"slices"
	"strconv"
	"sync"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// An Inspector is limits made ready, for as many engines of one kind as there
// are: names, paths and the proofreading of the limits are worked out once. It
// may be used by several goroutines at once. [Limits.Prepare] makes one.
type Inspector struct {
	limits Limits
	err    error             // of limits that can't be
	slips  []inspection.Slip // in the limits
	names  []pistonNames     // by the piston's number less 1
	paths  []pistonPaths     // by the piston's place in the list
	count  int               // findings there may be of a piston
	will   int               // and predictions
	blades feeler.Set        // that were used; the zero set where none is named
	memory sync.Pool         // of inspections that are done

	skirt        [skirtMeasures]measured[units.Length]
	skirtLimits  SkirtLimits
	measuring    int // the measuring height's place
	pin          [pinMeasures]measured[units.Length]
	pinLimits    PinLimits
	sections     int // of all lists of a pin
	stations     int // the most brackets that one part is judged by
	smallEnds    bool
	rings        []ringReady
	mass         measured[units.Mass]
	protrusion   measured[units.Length]
	tilt         measured[units.Length]
	head         measured[units.Length]
	boreSkirt    bool              // the bores are needed where the skirt runs
	boreTravel   bool              // and at the ends of the rings' travel
	newSkirt     tolerance.Bracket // at the measuring height
	skirtWith    string
	pinWith      string
	holeWith     string
	massWith     string
	crownWith    string
	skirtPrinted []string // what is asked at each height, as printed
	pinPrinted   [pinLists]string
}

// ringReady is a ring's limits made ready.
type ringReady struct {
	side, back, land, gap measured[units.Length]
	top, bottom           bool // where the end gap is asked for
	widthLimit            string
}

// pistonNames are a piston's words.
type pistonNames struct {
	number, piston, cylinder, rod string
	heights                       []string           // "piston 1, 18 mm up the skirt"
	rings                         []string           // "piston 1, top ring"
	sections                      [pinLists][]string // "piston 1, bosses, front"
}

// pistonPaths are the paths of a place in the list of pistons.
type pistonPaths struct {
	piston string      // "pistons[0]"
	skirt  []string    // "pistons[0].skirt[1].across"
	along  []string    // "pistons[0].skirt[1].along"
	pulls  string      // "pistons[0].pulls"
	rings  []ringPaths // in their order
	lists  [pinLists]string
	pin    string // "pistons[0].pin"
	float  string // "pistons[0].pin.between"
	mass   string // "pistons[0].mass"
	first  string // "pistons[0].first"
}

// ringPaths are the paths of one ring's readings.
type ringPaths struct {
	side, height, back, land, top, bottom string
}

// Prepare makes limits ready to inspect many engines by. The limits must not be
// changed after it. Where they can't be, each inspection says so.
func (l *Limits) Prepare() *Inspector {
	in := &Inspector{limits: *l}
	if in.err = l.Validate(); in.err != nil {
		return in
	}
	in.blades, _ = l.bladeSet()
	in.boreSkirt, in.boreTravel = l.boresFor()
	if l.Skirt != nil {
		in.readySkirt(l.Skirt)
	}
	if l.Mass != nil {
		in.mass = ready(in, l.Mass.Spread, "mass.spread", "mass spread of the pistons")
		in.massWith = with(l.Mass.With, "scale")
		in.count++
	}
	if l.Pins != nil {
		in.readyPins(l.Pins)
	}
	for i := range l.Rings {
		in.readyRing(&l.Rings[i], i)
	}
	if p := l.Protrusion; p != nil {
		in.protrusion = ready(in, p.Limit, "protrusion.limit", "piston protrusion")
		in.tilt = ready(in, p.Tilt, "protrusion.tilt", "difference of the two points")
		in.head = ready(in, p.Clearance, "protrusion.clearance", "piston-to-head clearance")
		in.crownWith = with(p.With, "dial gauge, zeroed on the block face")
		for _, m := range [...]*measured[units.Length]{&in.protrusion, &in.tilt, &in.head} {
			if m.asked() {
				in.count++
			}
		}
	}
	in.stations = mostPlaces
	if l.Pins != nil {
		in.stations = max(in.stations, in.sections*l.Pins.directions())
	}
	for i := range l.Pistons {
		in.names = append(in.names, l.namesOf(i+1))
		in.paths = append(in.paths, l.pathsOf(i))
	}
	return in
}

// Slips are what looks like a slip in the limits themselves.
func (in *Inspector) Slips() []inspection.Slip { return slices.Clone(in.slips) }

func (in *Inspector) readySkirt(l *LimitsSkirt) {
	for m, limit := range l.limits() {
		name := skirtMeasureNames[m]
		if m == int(SkirtMeasurePulled) && l.PullRule != nil {
			name += " (" + clipWords(l.PullRule.Name) + ")"
		}
		in.skirt[m] = ready(in, *limit, "skirt."+skirtPaths[m], name)
		if in.skirt[m].asked() {
			in.count++
		}
	}
	s := &in.skirt
	in.skirtLimits = SkirtLimits{Size: s[0].spec, Ovality: s[1].spec, Taper: s[2].spec, Wear: s[3].spec, Collapse: s[4].spec, Clearance: s[5].spec, Pulled: s[6].spec}
	in.will++
	in.measuring = slices.Index(l.Heights, l.MeasuringHeight)
	in.skirtWith = with(l.With, "outside micrometer")
	in.skirtPrinted = make([]string, len(l.Heights))
	in.skirtPrinted[in.measuring] = s[SkirtMeasureSize].printed
	if len(l.New) > 0 {
		in.newSkirt = l.New[in.measuring].Interval()
		for i, b := range l.New {
			if in.skirtPrinted[i] == "" && !b.IsZero() {
				in.skirtPrinted[i] = "new " + b.String()
			}
		}
	}
}

func (in *Inspector) readyPins(l *LimitsPins) {
	for m, limit := range l.limits() {
		in.pin[m] = ready(in, *limit, "pins."+pinPaths[m], pinMeasureNames[m])
		if in.pin[m].asked() {
			in.count++
			in.smallEnds = in.smallEnds || m >= int(PinMeasureSmallEndOvality) && m <= int(PinMeasureSmallEndInterference)
		}
	}
	s := &in.pin
	in.pinLimits = PinLimits{
		Size: s[0].spec, Ovality: s[1].spec, Taper: s[2].spec, Wear: s[3].spec,
		BossOvality: s[4].spec, BossTaper: s[5].spec, BossWear: s[6].spec, BossClearance: s[7].spec,
		SmallEndOvality: s[8].spec, SmallEndTaper: s[9].spec, SmallEndWear: s[10].spec,
		SmallEndClearance: s[11].spec, SmallEndInterference: s[12].spec, EndFloat: s[13].spec,
	}
	for i := range pinLists {
		in.sections += len(l.list(i))
	}
	for list, fresh := range [pinLists]tolerance.Band{l.NewPin, l.NewPin, l.NewBoss, l.NewSmallEnd} {
		m := [pinLists]PinMeasure{PinMeasureSize, PinMeasureSize, PinMeasureBossClearance, PinMeasureSmallEndClearance}[list]
		if list == pinSmallEnd && l.Fit == PinPressed {
			m = PinMeasureSmallEndInterference
		}
		if !fresh.IsZero() {
			in.pinPrinted[list] = "new " + fresh.String()
		}
		if s[m].asked() {
			if in.pinPrinted[list] != "" {
				in.pinPrinted[list] += "; "
			}
			in.pinPrinted[list] += s[m].name + ": " + s[m].printed
		}
	}
	in.will += 2
	in.pinWith, in.holeWith = with(l.With, "outside micrometer"), with(l.HoleWith, "bore gauge")
}

func (in *Inspector) readyRing(l *LimitsRing, i int) {
	path := inspection.Index("rings", i)
	r := ringReady{
		side: ready(in, l.Side, path+".sideClearance", measure),
		back: ready(in, l.Back, path+".backClearance", "ring back clearance"),
		land: ready(in, l.Land, path+".land", "land width"),
		gap:  ready(in, l.Gap, path+".endGap", ringGapMeasure),
	}
	r.top, r.bottom = l.gapsAt()
	if !l.NewWidth.IsZero() {
		r.widthLimit = "new " + l.NewWidth.String()
	}
	for _, m := range [...]*measured[units.Length]{&r.side, &r.back, &r.land, &r.gap} {
		if m.asked() {
			in.count++
		}
	}
	in.will += 2
	in.rings = append(in.rings, r)
}

// kit is the one of a name, or nil.
func (in *Inspector) kit(name string) *LimitsKit {
	for i := range in.limits.Kits {
		if in.limits.Kits[i].Name == name {
			return &in.limits.Kits[i]
		}
	}
	return nil
}

func (l *Limits) namesOf(number int) pistonNames {
	n := strconv.Itoa(number)
	names := pistonNames{number: n, piston: "piston " + n, cylinder: "cylinder " + n, rod: "rod " + n}
	if l.Skirt != nil {
		for _, h := range l.Skirt.Heights {
			names.heights = append(names.heights, names.piston+", "+h.String()+" up the skirt")
		}
	}
	for i := range l.Rings {
		names.rings = append(names.rings, names.piston+", "+l.Rings[i].Name+" ring")
	}
	if l.Pins != nil {
		for i := range pinLists {
			for _, s := range l.Pins.list(i) {
				names.sections[i] = append(names.sections[i], names.piston+", "+pinListNames[i]+", "+s)
			}
		}
	}
	return names
}

func (l *Limits) pathsOf(i int) pistonPaths {
	piston := inspection.Index("pistons", i)
	p := pistonPaths{piston: piston, pulls: piston + ".pulls", pin: piston + ".pin", float: piston + ".pin.between", mass: piston + ".mass", first: piston + ".first"}
	if l.Skirt != nil {
		for k := range l.Skirt.Heights {
			station := inspection.Index(piston+".skirt", k)
			p.skirt, p.along = append(p.skirt, station+".across"), append(p.along, station+".along")
		}
	}
	for k := range l.Rings {
		ring := inspection.Index(piston+".rings", k)
		p.rings = append(p.rings, ringPaths{ring + ".sideClearance", ring + ".usedHeight", ring + ".grooveDepth", ring + ".land", ring + ".endGapTop", ring + ".endGapBottom"})
	}
	for k := range pinLists {
		p.lists[k] = piston + ".pin." + pinListPaths[k]
	}
	return p
}

// pathOf is the path of the i-th piston in the list.
func (in *Inspector) pathOf(i int) string {
	if i < len(in.paths) {
		return in.paths[i].piston
	}
	return inspection.Index("pistons", i)
}

// with is the instrument given, or the usual one.
func with(given, usual string) string {
	if given == "" {
		return usual
	}
	return given
}
