package crank

import "github.com/tenthou/tenthou/tolerance/inspection"

// Blank is an empty document of readings for the limits: every part with its
// number, every station still to be read. [Inspect] of it gives the lines of a
// bench sheet, as its Missing.
func (l *Limits) Blank() Readings {
	r := Readings{Schema: inspectSchema}
	planes := l.Layout.planes()
	wide := func(n int) int {
		if n == 0 {
			return 2
		}
		return n
	}
	for i := range max(l.Layout.Mains, 0) {
		s := ReadingsJournal{Number: i + 1, Planes: blankPlanes(planes, wide(len(l.Layout.MainDirections)))}
		if n := l.Layout.DialPlaces; n > 0 && l.Shaft.asksMains() {
			s.Dial = make([]inspection.Reading, n)
		}
		if !l.Mains.asks() {
			s.Planes = nil
		}
		r.Mains = append(r.Mains, s)
		b := l.MainBearings.blank(i + 1)
		b.Bolts = l.MainBolts.blank()
		r.MainBearings = append(r.MainBearings, b)
	}
	for i := range max(l.Layout.Crankpins, 0) {
		s := ReadingsJournal{Number: i + 1}
		if l.Crankpins.asks() {
			s.Planes = blankPlanes(planes, wide(len(l.Layout.PinDirections)))
		}
		r.Crankpins = append(r.Crankpins, s)
	}
	rodPlanes := l.Rods.Planes
	if len(rodPlanes) == 0 {
		rodPlanes = defaultPlanes
	}
	for i := range max(l.Layout.Rods, 0) {
		s := ReadingsRod{Number: i + 1, Bolts: l.RodBolts.blank()}
		if l.Rods.BigEnd.asks() {
			s.BigEnd = blankPlanes(rodPlanes, wide(len(l.Rods.Directions)))
		}
		if l.Rods.SmallEnd.asks() {
			s.SmallEnd = blankPlanes(rodPlanes, wide(len(l.Rods.Directions)))
		}
		if given(&l.Rods.Side) {
			s.Side = make([]inspection.Reading, 1)
		}
		r.Rods = append(r.Rods, s)
		if l.BigEnds.asks() {
			r.BigEnds = append(r.BigEnds, l.BigEnds.blank(i+1))
		}
	}
	if given(&l.Thrust.EndFloat) {
		r.Thrust.EndFloat = make([]inspection.Reading, max(l.Thrust.Places, 1))
	}
	if n := l.Thrust.Halves; n > 0 {
		r.Thrust.Front, r.Thrust.Rear = make([]inspection.Reading, n), make([]inspection.Reading, n)
	}
	l.OilPump.blank(&r.OilPump)
	return r
}

func blankPlanes(names []string, wide int) []ReadingsPlane {
	planes := make([]ReadingsPlane, len(names))
	for i, name := range names {
		planes[i] = ReadingsPlane{At: name, Sizes: make([]inspection.Reading, wide)}
	}
	return planes
}

func (p *LimitsBolts) blank() (bolts []ReadingsBolt) {
	if p.asks() || p.Yield {
		for i := range p.count() {
			bolts = append(bolts, ReadingsBolt{Number: i + 1})
		}
	}
	return bolts
}

func (p *LimitsBearings) blank(number int) ReadingsBearing {
	s := ReadingsBearing{Number: number}
	places := max(p.Places, 1)
	if given(&p.OilClearance) && (p.Method == NoOilMethod || p.Method == ByBore) {
		s.Bore = make([]inspection.Reading, places)
	}
	if given(&p.Variation) {
		places = max(places, 2)
	}
	if given(&p.Wall) || given(&p.Variation) || p.Method == ByShellWalls && given(&p.OilClearance) {
		s.Upper.Walls, s.Lower.Walls = make([]inspection.Reading, places), make([]inspection.Reading, places)
	}
	return s
}

func (p *LimitsPump) blank(s *ReadingsPump) {
	for _, m := range [...]struct {
		limit *inspection.Limit
		list  *[]inspection.Reading
	}{
		{&p.Tip, &s.Tip}, {&p.Body, &s.Body}, {&p.Side, &s.Side}, {&p.Backlash, &s.Backlash}, {&p.Cover, &s.Cover}, {&p.Shaft, &s.Shaft}, {&p.Plunger, &s.Plunger},
	} {
		if given(m.limit) {
			*m.list = make([]inspection.Reading, 1)
		}
	}
}
