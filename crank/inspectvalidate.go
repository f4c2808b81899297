package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// mostInspected is how many parts of a kind an inspection takes, and mostPlaces how
// many readings one part has in a row.
const (
	mostInspected = 100
	mostPlaces    = 360
)

// Validate refuses limits that can't be: counts that don't go together, a limit
// below zero, limits that contradict each other, a kit of shells that belongs to
// another journal. Columns that disagree are no error, but a slip. Its error is an
// [inspection.PathError].
func (l *Limits) Validate() error {
	if l.Schema != inspectSchema {
		return inspection.At("schema", &InputError{"schema", strconv.Itoa(l.Schema), "1"})
	}
	for _, check := range [...]func() error{l.checkLayout, l.checkSpecs, l.checkInstruments, l.checkJournals, l.checkBearings, l.checkRods, l.checkThrustPage, l.checkBalance, l.checkPump} {
		if err := check(); err != nil {
			return err
		}
	}
	return nil
}

func countAt(path, field string, n, most int) error {
	if n < 0 || n > most {
		return inspection.At(path, &InputError{field, strconv.Itoa(n), "from 0 to " + strconv.Itoa(most)})
	}
	return nil
}

func (l *Limits) checkLayout() error {
	y := &l.Layout
	for _, c := range [...]struct {
		path, field string
		n, most     int
	}{
		{"layout.mains", "mains", y.Mains, mostInspected}, {"layout.crankpins", "crankpins", y.Crankpins, mostInspected}, {"layout.rods", "rods", y.Rods, mostInspected},
		{"layout.planes", "planes", len(y.Planes), mostPlaces}, {"layout.mainDirections", "directions", len(y.MainDirections), mostPlaces},
		{"layout.pinDirections", "directions", len(y.PinDirections), mostPlaces}, {"layout.dialPlaces", "places round a main", y.DialPlaces, mostPlaces},
		{"mainBearings.places", "places", l.MainBearings.Places, mostInspected}, {"bigEnds.places", "places", l.BigEnds.Places, mostInspected},
		{"mainBolts.count", "bolts of a cap", l.MainBolts.Count, mostInspected}, {"rodBolts.count", "bolts of a rod", l.RodBolts.Count, mostInspected},
		{"rods.planes", "planes", len(l.Rods.Planes), mostInspected}, {"rods.directions", "directions", len(l.Rods.Directions), mostInspected},
		{"thrust.places", "places", l.Thrust.Places, mostPlaces}, {"thrust.halves", "pieces of a side", l.Thrust.Halves, 2},
	} {
		if err := countAt(c.path, c.field, c.n, c.most); err != nil {
			return err
		}
	}
	for _, n := range [...]struct {
		path, field string
		n           int
		asked       bool
	}{
		{"layout.mains", "main journals", y.Mains, l.Mains.asks() || l.MainBearings.asks() || l.MainBolts.asks() || l.Shaft.asksMains()},
		{"layout.crankpins", "crankpins", y.Crankpins, l.Crankpins.asks() || l.BigEnds.asks() || given(&l.Balance.Bobweight)},
		{"layout.rods", "rods", y.Rods, l.Rods.asks() || l.BigEnds.asks() || l.RodBolts.asks() || l.Balance.asked() > 0},
	} {
		if n.asked && n.n == 0 {
			return inspection.At("layout", &InputError{n.field, "0", "their number, since limits are given for them"})
		}
	}
	return l.checkPlaces()
}

// asks reports whether the page asks for anything.
func (p *LimitsJournals) asks() bool {
	return given(&p.Size) || given(&p.OutOfRound) || given(&p.Taper) || given(&p.Wear) || given(&p.Fillet) || given(&p.Stroke) || given(&p.Index)
}

// checkPlaces refuses places that don't go with the counts.
func (l *Limits) checkPlaces() error {
	y := &l.Layout
	switch n := len(y.RodPins); {
	case n != 0 && n != y.Rods:
		return inspection.At("layout.rodPins", &InputError{"crankpins of the rods", strconv.Itoa(n), "one for each of " + strconv.Itoa(y.Rods) + " rods"})
	case n == 0 && y.Rods > 0 && y.Crankpins > 0 && y.Rods != y.Crankpins:
		return inspection.At("layout", &InputError{"crankpins of the rods", "(not given)", "given in rodPins, since " + strconv.Itoa(y.Rods) + " rods are on " + strconv.Itoa(y.Crankpins) + " crankpins"})
	}
	for i, p := range y.RodPins {
		if p < 1 || p > y.Crankpins {
			return inspection.At(inspection.Index("layout.rodPins", i), &InputError{"crankpin", strconv.Itoa(p), "from 1 to " + strconv.Itoa(y.Crankpins)})
		}
	}
	for _, h := range [...]struct {
		path string
		list []units.Angle
	}{{"layout.mainDirections", y.MainDirections}, {"layout.pinDirections", y.PinDirections}} {
		for i, a := range h.list {
			for _, b := range h.list[:i] {
				if journalHalfTurn(a-b) == 0 {
					return inspection.At(inspection.Index(h.path, i), &InputError{"direction", a.String(), "another one than those before it: half a turn on is the same diameter"})
				}
			}
		}
	}
	if n := len(y.Supports); n != 0 && (n != 2 || y.Supports[0] < 1 || y.Supports[0] >= y.Supports[1] || y.Supports[1] > y.Mains) {
		return inspection.At("layout.supports", &InputError{"supports", strconv.Itoa(n) + " numbers", "two of the mains, in order"})
	}
	if y.VBlocks != 0 && (y.VBlocks < 30*units.Degree || y.VBlocks > 150*units.Degree) {
		return inspection.At("layout.vBlocks", &InputError{"included angle of the V-blocks", y.VBlocks.String(), "from 30° to 150°"})
	}
	if n := len(y.Positions); n != 0 && n != y.Mains {
		return inspection.At("layout.positions", &InputError{"positions", strconv.Itoa(n), "one for each of " + strconv.Itoa(y.Mains) + " mains"})
	}
	for i, p := range y.Positions {
		if p.Abs() > farthest || i > 0 && p <= y.Positions[i-1] {
			return inspection.At(inspection.Index("layout.positions", i), &InputError{"position", p.String(), "beyond that of the main before it, and at most 10 m"})
		}
	}
	switch {
	case l.Shaft.asksBend() && (y.DialPlaces < 4 || len(y.Positions) < 3):
		return inspection.At("layout", &InputError{"a bend", "(not to be told)", "asked for with dialPlaces, 4 or more, and the positions of three mains at least"})
	case y.DialPlaces != 0 && y.DialPlaces < 4:
		return inspection.At("layout.dialPlaces", &InputError{"places round a main", strconv.Itoa(y.DialPlaces), "4 or more, or 0 for the dial's whole swing alone"})
	}
	return nil
}

// checkSpecs refuses limits that contradict each other or ask for what is below
// zero.
func (l *Limits) checkSpecs() error {
	for _, x := range l.limits() {
		path := x.page + "." + x.field
		signed := path == "rods.length" || x.field == "taper" || path == "oilPump.side"
		if err := specAt(path, x.limit, signed); err != nil {
			return err
		}
	}
	for _, err := range [...]error{
		specOf("mains.index", l.Mains.Index, true), specOf("crankpins.index", l.Crankpins.Index, true),
		specOf("oilPump.relief.load", l.OilPump.Relief.Load, false), specOf("oilPump.relief.pressure", l.OilPump.Relief.Pressure, false),
		specOf("balance.bigEnds", l.Balance.BigEnds, false), specOf("balance.smallEnds", l.Balance.SmallEnds, false),
		specOf("balance.rods", l.Balance.Rods, false), specOf("balance.bobweight", l.Balance.Bobweight, false),
	} {
		if err != nil {
			return err
		}
	}
	return nil
}

func specAt(path string, limit inspection.Limit, signed bool) error {
	for _, b := range [...]tolerance.Band{limit.New.BandOf, limit.Wear.BandOf} {
		lo, hi := journalEnds(b.Interval())
		if lo.Abs() > farthest || hi.Abs() > farthest {
			return inspection.At(path, &InputError{"limit", journalQuote(b.String()), "within 10 m"})
		}
	}
	return specOf(path, limit, signed)
}

func specOf[Q units.Quantity](path string, limit inspection.LimitOf[Q], signed bool) error {
	spec := limit.Spec()
	if spec.IsZero() {
		return nil
	}
	if err := spec.Validate(); err != nil {
		return inspection.At(path, err)
	}
	for _, b := range [...]tolerance.BandOf[Q]{spec.New, spec.Wear} {
		lo, loEnd := b.Lower()
		hi, hiEnd := b.Upper()
		if !b.IsZero() && (!b.InRange() || !signed && (loEnd != tolerance.Absent && lo < 0 || hiEnd != tolerance.Absent && hi < 0)) {
			return inspection.At(path, &InputError{"limit", journalQuote(b.String()), "0 or more"})
		}
	}
	return nil
}

func (l *Limits) checkInstruments() error {
	for _, m := range [...]struct {
		path string
		err  error
	}{{"instruments.mains", l.Instruments.Mains.Validate()}, {"instruments.crankpins", l.Instruments.Crankpins.Validate()}} {
		if m.err != nil {
			return inspection.At(m.path, m.err)
		}
	}
	for _, e := range [...]struct {
		path string
		e    units.Length
	}{
		{"instruments.dial", l.Instruments.Dial}, {"instruments.bore", l.Instruments.Bore}, {"instruments.wall", l.Instruments.Wall}, {"instruments.bolt", l.Instruments.Bolt},
	} {
		if err := journalAllowance("error", e.e); err != nil {
			return inspection.At(e.path, err)
		}
	}
	return nil
}

// checkJournals refuses kits and plans that an undersize can't be chosen by.
func (l *Limits) checkJournals() error {
	for _, g := range [...]struct {
		path string
		kind JournalKind
		page *LimitsJournals
	}{{"mains", MainJournal, &l.Mains}, {"crankpins", Crankpin, &l.Crankpins}} {
		p := g.page
		if p.TaperRule >= journalTaperRules {
			return inspection.At(g.path+".taperRule", &InputError{"taper rule", "(unknown)", "one of the four"})
		}
		if err := p.Plan.check(); err != nil {
			return inspection.At(g.path+".plan", err)
		}
		if !p.Case.IsZero() {
			if err := journalBracket("hardened case", p.Case, 0); err != nil {
				return inspection.At(g.path+".case", err)
			}
		}
		if len(p.Shells) > mostInspected {
			return inspection.At(g.path+".shells", &InputError{"shells", strconv.Itoa(len(p.Shells)), "100 at most"})
		}
		if standard := p.Size.New; !standard.IsZero() {
			if err := journalBracket("standard journal", standard.Interval(), units.Picometre); err != nil {
				return inspection.At(g.path+".size.new", err)
			}
		} else if len(p.Shells) > 0 {
			return inspection.At(g.path, &InputError{"standard journal", "(not given)", "given in size.new, since undersizes count from it"})
		}
		for k := range p.Shells {
			at := inspection.Index(g.path+".shells", k)
			if err := p.Shells[k].check(k, p.Size.New.BandOf); err != nil {
				return inspection.At(at, err)
			}
			if w := p.Shells[k].Wall; !w.IsZero() {
				if err := journalBracket("wall", w.Interval(), units.Picometre); err != nil {
					return inspection.At(at+".wall", err)
				}
			}
			for j := range k {
				if p.Shells[j].Name == p.Shells[k].Name {
					return inspection.At(at, &InputError{"name", strconv.Quote(journalQuote(p.Shells[k].Name)), "one that no other shells have"})
				}
			}
		}
	}
	if l.Shaft.Surface > JournalBuiltUp {
		return inspection.At("shaft.surface", &InputError{"surface", "(unknown)", "one that has a name"})
	}
	return nil
}

func (l *Limits) checkBearings() error {
	for _, b := range [...]struct {
		path string
		page *LimitsBearings
	}{{"mainBearings", &l.MainBearings}, {"bigEnds", &l.BigEnds}} {
		p := b.page
		if p.Method > ByGaugingStrip {
			return inspection.At(b.path+".method", &InputError{"method", "(unknown)", "one that has a name"})
		}
		if len(p.Strip) > 0 || p.Method == ByGaugingStrip {
			if err := p.Strip.Validate(); err != nil {
				return inspection.At(b.path+".strip", err)
			}
		}
	}
	return nil
}
