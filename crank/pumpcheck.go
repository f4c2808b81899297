package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PumpCheck is one measure of an oil pump, at one or more places, with its
// limits. Blades leave brackets; package feeler makes them.
type PumpCheck struct {
	Measure  PumpMeasure         `json:"measure"`         // what was measured
	Where    string              `json:"where,omitempty"` // "driven gear"
	Stations []tolerance.Bracket `json:"stations"`        // of the end clearance what the straight-edge shows: below zero where the gears stand proud
	Limits   tolerance.Spec      `json:"limits"`          // as the manual gives them
}

// A Pump is an oil pump as measured, dry and clean.
type Pump struct {
	Kind   PumpKind    `json:"kind"`            // which measures there are follows from it
	Where  string      `json:"where,omitempty"` // "main oil pump"
	Checks []PumpCheck `json:"checks"`          // in any order
	// Gasket and CoverWear are added to what the straight-edge shows of the
	// end clearance, where the manual's limits are for the pump assembled. Left
	// out they are nothing: then the limits must be for the straight-edge.
	Gasket    tolerance.Bracket `json:"gasket,omitzero"`    // its compressed thickness
	CoverWear tolerance.Bracket `json:"coverWear,omitzero"` // how deep the gears have worn into the cover
	// UsedWidth and NewWidth tell whether new gears bring the end clearance
	// back or the body is worn. Either may be left out.
	UsedWidth tolerance.Bracket `json:"usedWidth,omitzero"` // of the gears or rotors measured, along the shaft
	NewWidth  tolerance.Band    `json:"newWidth,omitzero"`  // of new ones
}

// A PumpJudgement is what follows for one measure.
type PumpJudgement struct {
	Finding tolerance.Finding `json:"finding"` // the clearance, with gasket and cover wear where they were given, against its limits
	Remedy  PumpRemedy        `json:"remedy"`  // what follows
	// WithNewGears is the end clearance that new gears would have, where both
	// widths are given.
	WithNewGears tolerance.Bracket `json:"withNewGears,omitzero"`
	Next         string            `json:"next"` // what to do next, in words
}

// A PumpReport is what follows for a pump.
type PumpReport struct {
	Judgements []PumpJudgement    `json:"judgements"` // in the order of the checks
	Standing   tolerance.Standing `json:"standing"`   // the worst of them; can't tell is no pass
}

// Assess judges every measure, and says what to do. It fails with an
// [InputError] for a pump without a measure, a measure that the kind of pump
// doesn't have, one without a reading, and a clearance below zero but that of
// gears that stand proud; and as [tolerance.Assess] does where limits
// contradict each other.
func (p Pump) Assess() (PumpReport, error) {
	if len(p.Checks) == 0 {
		return PumpReport{}, &InputError{"pump's measures", "of no kind", "one or more"}
	}
	gasket, err := pumpExtra("gasket", p.Gasket)
	if err != nil {
		return PumpReport{}, err
	}
	wear, err := pumpExtra("cover wear", p.CoverWear)
	if err != nil {
		return PumpReport{}, err
	}
	for _, w := range []struct {
		field string
		size  tolerance.Bracket
	}{{"used width of the gears", p.UsedWidth}, {"new width of the gears", p.NewWidth.Interval()}} {
		if lo, _, ok := sliderEnds(w.size); !w.size.IsZero() && (!ok || lo <= 0) {
			return PumpReport{}, &InputError{w.field, w.size.String(), "above 0 mm, known on both sides"}
		}
	}
	r := PumpReport{Standing: tolerance.AsNew}
	for i, c := range p.Checks {
		stations, err := p.stations(i, gasket, wear)
		if err != nil {
			return PumpReport{}, err
		}
		where := p.Where
		if c.Where != "" {
			if where != "" {
				where += ", "
			}
			where += c.Where
		}
		j := PumpJudgement{}
		if j.Finding, err = tolerance.Assess(c.Measure.String(), where, c.Limits, stations...); err != nil {
			return PumpReport{}, err
		}
		p.remedy(c.Measure, &j)
		r.Judgements = append(r.Judgements, j)
		r.Standing = pumpWorse(r.Standing, j.Finding.Standing)
	}
	return r, nil
}

// pumpExtra is what adds to the straight-edge's reading, nothing if left out.
func pumpExtra(field string, b tolerance.Bracket) (tolerance.Bracket, error) {
	if b.IsZero() {
		return tolerance.Exactly(units.Length(0)), nil
	}
	if lo, _, ok := sliderEnds(b); !ok || lo < 0 {
		return b, &InputError{field, b.String(), "0 mm or more, known on both sides"}
	}
	return b, nil
}

// has reports whether a kind of pump has a measure.
func (k PumpKind) has(m PumpMeasure) bool {
	switch m {
	case PumpBody:
		return k != GearPump
	case PumpBacklash:
		return k != RotorPump
	}
	return true
}

// stations are the readings of one check, the end clearance's with what adds to
// it.
func (p Pump) stations(i int, gasket, wear tolerance.Bracket) ([]tolerance.Bracket, error) {
	c := p.Checks[i]
	switch {
	case int(p.Kind) >= len(pumpKinds):
		return nil, &InputError{"kind of pump", strconv.Itoa(int(p.Kind)), "one that has a name"}
	case int(c.Measure) >= len(pumpMeasures):
		return nil, &InputError{"measure " + strconv.Itoa(i+1), strconv.Itoa(int(c.Measure)), "one that has a name"}
	case !p.Kind.has(c.Measure):
		return nil, &InputError{"measure " + strconv.Itoa(i+1), c.Measure.String(), "one that a " + p.Kind.String() + " pump has"}
	case len(c.Stations) == 0:
		return nil, &InputError{c.Measure.String(), "of no place", "measured at one place or more"}
	}
	stations := c.Stations
	if c.Measure == PumpSide {
		stations = make([]tolerance.Bracket, len(c.Stations))
		for k, s := range c.Stations {
			stations[k] = PumpEnd(s, gasket, wear)
		}
	}
	for k, s := range stations {
		if hi, end := s.Upper(); !s.InRange() || end != tolerance.Absent && hi < 0 {
			return nil, &InputError{c.Measure.String() + " at place " + strconv.Itoa(k+1), s.String(), "0 mm or more: the cover would bind on the gears"}
		}
	}
	return stations, nil
}

// pumpWorse is the standing that governs: what is surely past a limit before
// what can't be told, and that before what may be used.
func pumpWorse(a, b tolerance.Standing) tolerance.Standing {
	rank := func(s tolerance.Standing) int {
		switch s {
		case tolerance.AsNew:
			return 0
		case tolerance.Usable:
			return 1
		case tolerance.OutsideNewBand:
			return 3
		case tolerance.PastWearLimit:
			return 4
		}
		return 2
	}
	if rank(b) > rank(a) {
		return b
	}
	return a
}
