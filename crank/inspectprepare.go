package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// An Inspector is a document of limits made ready for many engines: names and
// paths are written out, and the limits are proofread, once. [Limits.Prepare]
// makes one; it may be used by many goroutines at once.
type Inspector struct {
	l     Limits
	err   error // what Validate found
	slips []inspection.Slip

	mains, pins  shaftJournals
	shells, ends shaftBearings
	rods         shaftRods
	room         int                 // findings that a whole document gives, about
	slipped      map[string][]string // by page, the paths of its limits that look like slips
}

// shaftJournals are the mains or the crankpins made ready.
type shaftJournals struct {
	kind         JournalKind
	page         *LimitsJournals
	n            int
	part         string   // "main journals"
	names        []string // "main 1"
	paths        []string // "mains[0]"; at n the list itself, for one that isn't in it
	planesPaths  []string // "mains[0].planes"
	runOutPaths  []string // "mains[0].runOut"
	planes       []JournalPlane
	headings     []units.Angle
	planeWhere   [][]string // "main 1, front"
	headingWhere [][]string // "main 1, 0°"
	limits       JournalLimits
	runOut       tolerance.Spec
	asked        bool // any diameter is
	slips        []string
	kits         []ShellKit
	rule         AsIsRule
	taperMeasure string
	supports     [2]int // the mains that the shaft is turned on, by place
	onBlocks     bool
	micrometer   string
}

// shaftBearings are the shells of the mains or of the big ends made ready.
type shaftBearings struct {
	page      *LimitsBearings
	bolts     *LimitsBolts
	n, places int
	part      string   // "main bearing shells"
	names     []string // "main 1"
	paths     []string // "mainBearings[0]"; at n the list itself
	boltNames [][]string
	boltPaths [][]string  // "rods[0].bolts[0]"
	halves    [][2]string // "main 1, upper shell"
	halfPaths [][2]string // "mainBearings[0].upper"
	slips     []string
	boltSlips []string
	housing   tolerance.Band // of a new one
	oil       tolerance.Spec // of the oil clearance
	limits    ShellLimits
	bolt      BoltCheck // limits alone
}

// shaftRods are the rods made ready.
type shaftRods struct {
	n                  int
	names, paths       []string // "rod 1", "rods[0]"
	planes, directions []string
	measures           [rodMeasures]string
	limits             RodLimits
	eyes               [2]shaftEye // big end, small end
	slips              []string
	pin                []int // of each rod, by place
}

// shaftEye is one eye of the rods made ready.
type shaftEye struct {
	page               *LimitsEye
	field              string // "bigEnd"
	size, ovality      tolerance.Spec
	taper              tolerance.Spec
	names, paths       []string // "rod 1, big end", "rods[0].bigEnd"
	planes, directions [][]string
}

// Prepare makes the limits ready for many engines. They are copied, but what they
// point to must not change any more. An error that [Limits.Validate] would give is
// kept for [Inspector.Inspect].
func (l *Limits) Prepare() *Inspector {
	in := &Inspector{l: *l, err: l.Validate()}
	if in.err != nil {
		return in
	}
	in.slips, in.slipped = in.l.proofread()
	p := &in.l
	in.mains = in.journals(MainJournal, &p.Mains, p.Layout.Mains)
	in.pins = in.journals(Crankpin, &p.Crankpins, p.Layout.Crankpins)
	in.shells = in.bearings("mainBearings", "main", "main bearing shells", &p.MainBearings, &p.MainBolts, p.Layout.Mains, "mainBolts")
	in.ends = in.bearings("bigEnds", "rod", "big-end shells", &p.BigEnds, &p.RodBolts, p.Layout.Rods, "rodBolts")
	if in.ends.housing.IsZero() {
		in.ends.housing = p.Rods.BigEnd.Size.New.BandOf
	}
	in.prepareRods()
	in.room = in.findings()
	return in
}

// findings is how many findings a whole document gives at the most, or about so.
func (in *Inspector) findings() int {
	count := func(limits ...*inspection.Limit) (n int) {
		for _, l := range limits {
			if given(l) {
				n++
			}
		}
		return n
	}
	p := &in.l
	n := 16 // what is there once, and a few predicted
	for _, g := range [...]*shaftJournals{&in.mains, &in.pins} {
		j := g.page
		n += g.n * count(&j.Size, &j.OutOfRound, &j.Taper, &j.Wear, &j.Fillet, &j.Stroke, &p.Shaft.RunOut, &p.Shaft.Bend)
	}
	for _, b := range [...]*shaftBearings{&in.shells, &in.ends} {
		n += b.n * (count(&b.page.OilClearance) + 2*count(&b.page.Wall, &b.page.Variation, &b.page.Spread) + count(&b.page.Gap))
		n += b.n * b.bolts.count() * count(&b.bolts.Length, &b.bolts.Growth, &b.bolts.Stretch)
	}
	r := &p.Rods
	each := count(&r.Length, &r.Bend, &r.Twist, &r.BendPer, &r.TwistPer, &r.Centres, &r.Side)
	for _, e := range [...]*LimitsEye{&r.BigEnd, &r.SmallEnd} {
		each += count(&e.Size) + len(in.rods.planes)*count(&e.Ovality) + len(in.rods.directions)*count(&e.Taper)
	}
	return n + in.rods.n*each
}

func partNames(list, part string, n int) (names, paths []string) {
	names, paths = make([]string, n), make([]string, n+1)
	for i := range n {
		names[i] = part + " " + strconv.Itoa(i+1)
		paths[i] = inspection.Index(list, i)
	}
	paths[n] = list
	return names, paths
}

func (in *Inspector) journals(kind JournalKind, page *LimitsJournals, n int) shaftJournals {
	l := &in.l
	g := shaftJournals{kind: kind, page: page, n: n, part: "main journals", headings: l.Layout.MainDirections, micrometer: l.Instruments.Mains.Name}
	list, one := "mains", "main"
	if kind == Crankpin {
		g.part, list, one, g.headings, g.micrometer = "crankpins", "crankpins", "crankpin", l.Layout.PinDirections, l.Instruments.Crankpins.Name
	}
	if g.micrometer == "" {
		g.micrometer = "micrometer"
	}
	if len(g.headings) == 0 {
		g.headings = []units.Angle{0, 90 * units.Degree}
	}
	for _, p := range l.Layout.planes() {
		g.planes = append(g.planes, JournalPlane{Name: p})
	}
	g.names, g.paths = partNames(list, one, n)
	survey := JournalSurvey{Kind: kind, Planes: g.planes, Headings: g.headings}
	for i := range n {
		g.planesPaths = append(g.planesPaths, g.paths[i]+".planes")
		g.runOutPaths = append(g.runOutPaths, g.paths[i]+".runOut")
		var planes, headings []string
		for k := range g.planes {
			planes = append(planes, g.names[i]+", "+survey.PlaneName(k))
		}
		for k := range g.headings {
			headings = append(headings, g.names[i]+", "+survey.HeadingName(k))
		}
		g.planeWhere, g.headingWhere = append(g.planeWhere, planes), append(g.headingWhere, headings)
	}
	g.planesPaths, g.runOutPaths = append(g.planesPaths, list), append(g.runOutPaths, list)
	g.limits = JournalLimits{
		Size: page.Size.Spec(), OutOfRound: page.OutOfRound.Spec(), Taper: page.Taper.Spec(), TaperRule: page.TaperRule, Wear: page.Wear.Spec(),
		Fillet: page.Fillet.Spec(), Stroke: page.Stroke.Spec(), Index: page.Index.Spec(),
	}
	g.asked = given(&page.Size) || given(&page.OutOfRound) || given(&page.Taper) || given(&page.Wear)
	g.taperMeasure = JournalTaperMeasure.String() + " (" + page.TaperRule.String() + ")"
	for i := range page.Shells {
		g.kits = append(g.kits, page.Shells[i].ShellKit)
	}
	g.rule = AsIsRule{OutOfRound: runningBand(g.limits.OutOfRound), Taper: runningBand(g.limits.Taper)}
	if kind == MainJournal {
		g.runOut = l.Shaft.RunOut.Spec()
		g.rule.RunOut = runningBand(g.runOut)
	}
	g.supports, g.onBlocks = l.Layout.supports(), l.Layout.VBlocks != 0
	g.slips = in.slipped[list]
	return g
}

// runningBand is what a measure may be for a part to run on: the wear limit or,
// where none is given, the limits for new parts.
func runningBand(s tolerance.Spec) tolerance.Band {
	if s.Wear.IsZero() {
		return s.New
	}
	return s.Wear
}

func (l *LimitsLayout) planes() []string {
	if len(l.Planes) == 0 {
		return []string{"front", "rear"}
	}
	return l.Planes
}

// supports are the two mains that the shaft is turned on, by place.
func (l *LimitsLayout) supports() [2]int {
	if len(l.Supports) != 2 {
		return [2]int{0, l.Mains - 1}
	}
	return [2]int{l.Supports[0] - 1, l.Supports[1] - 1}
}

// pin is the crankpin of a rod, both by place.
func (l *LimitsLayout) pin(rod int) int {
	if rod < len(l.RodPins) {
		return l.RodPins[rod] - 1
	}
	return rod
}

func (in *Inspector) bearings(list, one, part string, page *LimitsBearings, bolts *LimitsBolts, n int, boltPage string) shaftBearings {
	b := shaftBearings{page: page, bolts: bolts, n: n, part: part, places: max(page.Places, 1), housing: page.Housing.New.BandOf, oil: page.OilClearance.Spec(), slips: in.slipped[list], boltSlips: in.slipped[boltPage]}
	b.limits = ShellLimits{Wall: page.Wall.Spec(), Variation: page.Variation.Spec(), Spread: page.Spread.Spec(), Gap: page.Gap.Spec()}
	b.bolt = BoltCheck{Yield: bolts.Yield, Stretch: bolts.Stretch.Spec(), Length: bolts.Length.Spec(), Growth: bolts.Growth.Spec()}
	b.names, b.paths = partNames(list, one, n)
	for i := range n {
		names, _ := partNames("", b.names[i]+", bolt", bolts.count())
		b.halves = append(b.halves, [2]string{b.names[i] + ", upper shell", b.names[i] + ", lower shell"})
		b.halfPaths = append(b.halfPaths, [2]string{b.paths[i] + ".upper", b.paths[i] + ".lower"})
		holder := b.paths[i]
		if list == "bigEnds" {
			holder = inspection.Index("rods", i) // a rod's bolts are with it
		}
		_, paths := partNames(holder+".bolts", "", bolts.count())
		b.boltNames, b.boltPaths = append(b.boltNames, names), append(b.boltPaths, paths)
	}
	return b
}

func (p *LimitsBolts) count() int {
	if p.Count == 0 {
		return 2
	}
	return p.Count
}

// asks reports whether the page asks for any length of a bolt.
func (p *LimitsBolts) asks() bool {
	return given(&p.Length) || given(&p.Growth) || given(&p.Stretch)
}

func (in *Inspector) prepareRods() {
	p, g := &in.l.Rods, &in.rods
	g.n = in.l.Layout.Rods
	g.names, g.paths = partNames("rods", "rod", g.n)
	for i := range g.n {
		g.pin = append(g.pin, in.l.Layout.pin(i))
	}
	if g.planes = p.Planes; len(g.planes) == 0 {
		g.planes = defaultPlanes
	}
	if g.directions = p.Directions; len(g.directions) == 0 {
		g.directions = []string{"in line", "across"}
	}
	g.limits = RodLimits{
		Length: p.Length.Spec(), Bend: p.Bend.Spec(), Twist: p.Twist.Spec(), Per: p.Per, BendPer: p.BendPer.Spec(), TwistPer: p.TwistPer.Spec(),
		Centres: p.Centres.Spec(), Side: p.Side.Spec(),
	}
	for m := range g.measures {
		g.measures[m] = rodMeasure(m).name(g.limits.per())
	}
	g.eyes = [2]shaftEye{g.eye(&p.BigEnd, "bigEnd", ", big end"), g.eye(&p.SmallEnd, "smallEnd", ", small end")}
	g.slips = in.slipped["rods"]
}

func (g *shaftRods) eye(p *LimitsEye, field, name string) shaftEye {
	e := shaftEye{page: p, field: field, size: p.Size.Spec(), ovality: p.Ovality.Spec(), taper: p.Taper.Spec()}
	each := func(of string, list []string) (names []string) {
		for _, s := range list {
			names = append(names, of+", "+s)
		}
		return names
	}
	for i, rod := range g.names {
		e.names, e.paths = append(e.names, rod+name), append(e.paths, g.paths[i]+"."+field)
		e.planes, e.directions = append(e.planes, each(rod+name, g.planes)), append(e.directions, each(rod+name, g.directions))
	}
	e.paths = append(e.paths, "rods")
	return e
}

// asks reports whether the page asks for an eye to be gauged.
func (p *LimitsEye) asks() bool { return given(&p.Size) || given(&p.Ovality) || given(&p.Taper) }
