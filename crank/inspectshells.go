package crank

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// bearing judges one pair of shells.
func (x *shaftRun) bearing(b *shaftBearings, i, place int, sheet *ReadingsBearing, to *shaftGroup, v *partVerdict) {
	p, list := b.page, b.paths[place]
	x.tests(inspection.StepShells, list, b.names[i], p.Care, &sheet.Condition)
	at := &shaftSpot{inspection.StepShells, b.names[i], list, place < b.n}
	walls := p.asksShells() && (given(&p.Wall) || given(&p.Variation)) || p.Method == ByShellWalls && given(&p.OilClearance) && !anyRead(sheet.Bore)
	var survey ShellSurvey
	if walls {
		places := b.places
		if given(&p.Variation) {
			places = max(places, 2)
		}
		for k, half := range [...]*ReadingsShell{&sheet.Upper, &sheet.Lower} {
			read := x.readAll(x.arena(), v, at, half.Walls, places, x.l.Instruments.Wall,
				shaftAsk{[...]string{"upper.walls", "lower.walls"}[k], "shell wall", [...]string{"upper shell", "lower shell"}[k], "ball micrometer", &p.Wall})
			if k == 0 {
				survey.Upper = read
			} else {
				survey.Lower = read
			}
		}
	}
	if given(&p.OilClearance) {
		x.oil(b, i, sheet, list, to, &survey, v, at)
	}
	if p.asksShells() {
		x.halves(b, i, place, sheet, list, to, &survey, v, at)
	}
}

// oil judges one oil clearance by the page's method.
func (x *shaftRun) oil(b *shaftBearings, i int, sheet *ReadingsBearing, path string, to *shaftGroup, walls *ShellSurvey, v *partVerdict, at *shaftSpot) {
	p := b.page
	if p.Method == ByGaugingStrip {
		x.strip(b, i, sheet, path, v, at)
		return
	}
	o := OilReadings{Where: b.names[i]}
	if p.Method == ByShellWalls {
		o.Housing, o.Upper, o.Lower = x.housings(x.arena(), b, i), walls.Upper, walls.Lower
		if anyRead(sheet.Bore) { // measured in place: better than walls
			o.Bore = x.readAll(x.arena(), v, at, sheet.Bore, 0, x.l.Instruments.Bore, shaftAsk{field: "bore", measure: boreMeasure, with: "bore gauge"})
		}
		if len(o.Housing) == 0 && len(o.Bore) == 0 {
			x.missingHousing(b, i, v, at)
		}
		if len(o.Bore) == 0 && (len(o.Housing) == 0 || len(o.Upper) == 0 || len(o.Lower) == 0) {
			return
		}
	} else {
		o.Bore = x.readAll(x.arena(), v, at, sheet.Bore, b.places, x.l.Instruments.Bore, shaftAsk{"bore", boreMeasure, "", "bore gauge, at 90° to the split", nil})
		if len(o.Bore) == 0 {
			return
		}
	}
	s := &to.states[x.journalOf(b, i)]
	if !s.surveyed {
		if v.taken > 0 {
			v.open("the journal's diameter")
		}
		return
	}
	v.slips = append(v.slips, s.v.slips...)
	o.Journal = append(x.arena(), s.report.Least.Size, s.report.Greatest.Size)
	if err := o.check(); err != nil {
		x.doubt(v, path, b.names[i], err)
		return
	}
	bores := o.Bore
	if len(bores) == 0 {
		bores = o.behindWalls()
	}
	least, _ := LeastOilClearance(bores, o.Journal)
	greatest, _ := GreatestOilClearance(bores, o.Journal)
	f, err := tolerance.Assess(oilMeasure, b.names[i], b.oil, least, greatest)
	_, hi := journalEnds(least)
	work := inspection.Replace
	if err != nil || hi < 0 || f.Standing == tolerance.CantTell || runOutRank(f.Standing) >= runOutRank(tolerance.OutsideNewBand) {
		r, err := o.Check(b.oil) // says what follows
		if err != nil {
			x.doubt(v, path, b.names[i], err)
			return
		}
		if f.Standing == tolerance.CantTell {
			if r.Method == ByShellWalls {
				f.Settle = r.Next
			}
		} else if v.next = r.Next; f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below {
			work = inspection.MeasureAgain // its cause isn't known
		}
	}
	x.keep(v, inspection.StepShells, path, &f, work)
}

const boreMeasure = "bore with the shells in place"

// missingHousing notes a housing bore that is asked for: of a main here, of a big
// end with its rod.
func (x *shaftRun) missingHousing(b *shaftBearings, i int, v *partVerdict, at *shaftSpot) {
	ask := shaftAsk{"housing", "housing bore", "", "bore gauge", &b.page.Housing}
	if b != &x.in.ends {
		x.miss(v, at.missing(&ask, 0, 1))
		return
	}
	if x.l.Rods.BigEnd.asks() {
		v.open("the big end's bore") // its line stands with the rods
		return
	}
	_, k := x.rodSheet(i)
	rod := shaftSpot{inspection.StepShells, x.in.rods.eyes[0].names[i], x.in.rods.paths[k], k < x.in.rods.n}
	ask.field = "bigEnd[0].sizes[0]"
	x.miss(v, rod.missing(&ask, -1, 1))
}

// oilMeasure is the name of the measure, whatever the method, so that a clearance
// measured after the work stands beside the one predicted.
const oilMeasure = "oil clearance"

// strip judges one oil clearance by a crushed gauging strip.
func (x *shaftRun) strip(b *shaftBearings, i int, sheet *ReadingsBearing, path string, v *partVerdict, at *shaftSpot) {
	p := b.page
	s := CrushedStrip{Where: b.names[i], Turned: sheet.Strip.Turned, Oiled: sheet.Strip.Oiled}
	front, ok := x.read(v, at, &sheet.Strip.Front, 0, shaftAsk{"strip.front", "width of the gauging strip", "front", "strip's paper", &p.OilClearance})
	rear, ok2 := x.read(v, at, &sheet.Strip.Rear, 0, shaftAsk{"strip.rear", "width of the gauging strip", "rear", "strip's paper", &p.OilClearance})
	if !ok || !ok2 {
		return
	}
	s.Front, s.Rear = front, rear
	if sheet.Strip.Middle.Taken {
		s.Middle = sheet.Strip.Middle.Value
	}
	r, err := p.Strip.Read(&s, p.OilClearance.Spec(), p.StripTaper.Spec())
	if err != nil {
		x.doubt(v, path, b.names[i], err)
		return
	}
	r.Finding.Measure = oilMeasure
	x.keep(v, inspection.StepShells, path, &r.Finding, inspection.Replace)
	if given(&p.StripTaper) {
		x.keep(v, inspection.StepShells, path, &r.TaperFinding, inspection.Replace)
	}
}

// halves judges walls, spread and nip.
func (x *shaftRun) halves(b *shaftBearings, i, place int, sheet *ReadingsBearing, path string, to *shaftGroup, s *ShellSurvey, v *partVerdict, at *shaftSpot) {
	p := b.page
	s.Where = b.names[i]
	limits := b.limits
	if to.current >= 0 {
		limits.Wall = thickened(limits.Wall, to.g.kits[to.current].Undersize)
	}
	if given(&p.Spread) {
		for k, half := range [...]*ReadingsShell{&sheet.Upper, &sheet.Lower} {
			w, _ := x.read(v, at, &half.Width, 0, shaftAsk{[...]string{"upper.width", "lower.width"}[k], "width across the open ends, free", [...]string{"upper shell", "lower shell"}[k], "vernier calliper", &p.Spread})
			if k == 0 {
				s.FreeUpper = w
			} else {
				s.FreeLower = w
			}
		}
	}
	if read := x.housings(x.arena(), b, i); len(read) > 0 {
		least, greatest := tolerance.Extremes(read...)
		lo, _ := journalEnds(least)
		_, hi := journalEnds(greatest)
		s.Housing = journalSpan(lo, hi)
	} else if !b.housing.IsZero() {
		s.Housing = b.housing.Interval()
	}
	if s.Housing.IsZero() && (!s.FreeUpper.IsZero() || !s.FreeLower.IsZero()) {
		x.missingHousing(b, i, v, at)
		s.FreeUpper, s.FreeLower = tolerance.Bracket{}, tolerance.Bracket{}
	}
	if given(&p.Gap) {
		s.Gap, _ = x.read(v, at, &sheet.Gap, 0, shaftAsk{"gap", "gap with one bolt slack", "", "feeler blades", &p.Gap})
	}
	if len(s.Upper) == 0 && len(s.Lower) == 0 && s.FreeUpper.IsZero() && s.FreeLower.IsZero() && s.Gap.IsZero() {
		return
	}
	if err := s.check(); err != nil {
		x.doubt(v, path, b.names[i], err)
		return
	}
	before := v.rank
	var r ShellReport // what says what follows
	for k, half := range [...]struct {
		walls []tolerance.Bracket
		free  tolerance.Bracket
	}{{s.Upper, s.FreeUpper}, {s.Lower, s.FreeLower}} {
		where, path := b.halves[i][k], path
		if at.there {
			path = b.halfPaths[place][k]
		}
		if len(half.walls) > 0 && !limits.Wall.IsZero() {
			x.assess(v, inspection.StepShells, path, "shell wall", where, limits.Wall, inspection.Replace, half.walls...)
		}
		if len(half.walls) > 1 && !limits.Variation.IsZero() {
			x.assess(v, inspection.StepShells, path, "variation of the wall", where, limits.Variation, inspection.Replace, WallVariation(half.walls[0], half.walls[1:]...))
		}
		if !half.free.IsZero() {
			spread := FreeSpread(half.free, s.Housing)
			x.assess(v, inspection.StepShells, path, "free spread", where, limits.Spread, inspection.Replace, spread)
			if lo, _ := journalEnds(spread); lo <= 0 {
				r.Loose = append(r.Loose, shellHalves[k])
			}
		}
	}
	if !s.Gap.IsZero() {
		x.assess(v, inspection.StepShells, path, "gap with one bolt slack", b.names[i], limits.Gap, inspection.Replace, s.Gap)
		if x.err == nil {
			r.Gap = *x.r.Findings[len(x.r.Findings)-1].Length
		}
	}
	if len(r.Loose) > 0 || v.rank > before && v.rank >= runOutRank(tolerance.OutsideNewBand) {
		r.Worst = tolerance.OutsideNewBand
		v.next = clauseBy(strings.Join(r.Loose, " and "), ": ", r.next(true))
	}
}

// thickened are the limits of a shell's wall at an undersize: half of it more.
func thickened(wall tolerance.Spec, undersize units.Length) tolerance.Spec {
	if undersize == 0 || wall.IsZero() {
		return wall
	}
	for _, b := range [...]*tolerance.Band{&wall.New, &wall.Wear} {
		if !b.IsZero() {
			*b = tolerance.BandFrom(UndersizeWall(b.Interval(), tolerance.Exactly(undersize)))
		}
	}
	return wall
}
