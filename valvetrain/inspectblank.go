package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Blank is the readings document that goes with the limits, with every part and
// station that is asked for and nothing read: what is written on the bench is
// typed into it. [Inspect] of it gives nothing but what is to be measured, in
// measuring order.
func (l *Limits) Blank() Readings {
	r := Readings{Schema: inspectSchema}
	if l == nil {
		return r
	}
	for i := range l.Camshafts {
		c := &l.Camshafts[i]
		one := ReadingsCamshaft{Name: c.Name}
		if !c.Journal.IsZero() || !c.Bearing.IsZero() || !c.Clearance.IsZero() {
			one.Journals = make([]ReadingsJournal, inspectRoom(c.Journals, 32))
		}
		if !c.InletLobe.Height.IsZero() || !c.InletLobe.Lift.IsZero() {
			one.Inlet = make([]ReadingsLobe, inspectRoom(c.InletLobes, 64))
		}
		if !c.ExhaustLobe.Height.IsZero() || !c.ExhaustLobe.Lift.IsZero() {
			one.Exhaust = make([]ReadingsLobe, inspectRoom(c.ExhaustLobes, 64))
		}
		r.Camshafts = append(r.Camshafts, one)
	}
	for _, d := range l.Drive {
		r.Drive = append(r.Drive, ReadingsDrive{Part: d.Part, Measure: d.Measure})
	}
	for k, p := range l.places() {
		if p == nil {
			continue
		}
		for n := 1; n <= inspectRoom(p.Each, 4)*inspectRoom(l.Cylinders, 24); n++ {
			p.blank(&r, ValvePlace{k == 1, n})
		}
	}
	return r
}

func (p *LimitsPlace) blank(r *Readings, at ValvePlace) {
	if g := p.Guide; g != nil {
		r.Guides = append(r.Guides, ReadingsGuide{Place: at, Levels: make([]ReadingsPair, len(g.Levels))})
	}
	if v := p.Valve; v != nil {
		r.Valves = append(r.Valves, ReadingsValve{Place: at, Stem: make([]ReadingsPair, len(v.Stations))})
	}
	if p.Seat != nil {
		r.Seats = append(r.Seats, ReadingsSeat{Place: at})
	}
	for i := range p.Springs {
		s := &p.Springs[i]
		r.Springs = append(r.Springs, ReadingsSpring{Place: at, Name: s.Name, Loads: make([]inspection.ReadingOf[units.Force], len(s.Loads))})
	}
	if p.Follower != nil {
		r.Followers = append(r.Followers, ReadingsFit{Place: at})
	}
	if p.Rocker != nil {
		r.Rockers = append(r.Rockers, ReadingsFit{Place: at})
	}
	if p.Clearance != nil {
		r.Clearances = append(r.Clearances, ReadingsClearance{Place: at})
	}
}

// inspectRoom is a count, within what [Limits.Validate] allows.
func inspectRoom(n, most int) int { return min(max(n, 0), most) }
