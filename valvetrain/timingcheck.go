package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A MeasuredEvent is one event as the wheel shows it, with what the manual
// allows.
type MeasuredEvent struct {
	Read   tolerance.Interval[units.Angle] `json:"read"`            // as [ValveEvents] counts it, with the wheel's error
	Limits tolerance.SpecOf[units.Angle]   `json:"limits,omitzero"` // may be empty
}

// A TimingCheck is the timing of one valve, measured with a wheel and a dial.
type TimingCheck struct {
	Where  string        // "inlet, cylinder 1"
	Valve  TimedValve    // which valve
	At     TimingLift    // the lift that the events are taken at
	Opens  MeasuredEvent // as [ValveEvents] counts it
	Closes MeasuredEvent // as [ValveEvents] counts it
	// CrankTeeth are those of the crankshaft's gear; 0 where a tooth isn't asked.
	CrankTeeth int
}

// A TimingReport is what a [TimingCheck] tells.
type TimingReport struct {
	Opens    tolerance.FindingOf[units.Angle] `json:"opens"`    // against its limits
	Closes   tolerance.FindingOf[units.Angle] `json:"closes"`   // against its limits
	Duration tolerance.Interval[units.Angle]  `json:"duration"` // of the crankshaft
	Centre   tolerance.Interval[units.Angle]  `json:"centre"`   // mid-open; after top dead centre, of an exhaust valve before it
	// Late is how far both events together come after the middle of their bands,
	// below zero early: half of what opening is late and closing is late. Of
	// limits without a middle it is the zero interval.
	Late tolerance.Interval[units.Angle] `json:"late,omitzero"`
	// Longer is how much longer the valve is open than the middles of the bands
	// ask, below zero shorter; the zero interval where Late is.
	Longer tolerance.Interval[units.Angle] `json:"longer,omitzero"`
	Tooth  units.Angle                     `json:"tooth,omitzero"` // one tooth of the crankshaft's gear
	Teeth  int                             `json:"teeth,omitzero"` // whole teeth nearest to Late
	Next   string                          `json:"next"`           // what to do
}

// Inspect judges measured events. An error of the wheel's zero moves both alike
// and hides in neither duration nor in the sum, so that dead centre is found
// first (see [DeadCentre]). It fails with an [InputError] where an event isn't
// bounded or not within a turn, or where the duration may be 0° or less.
func (c TimingCheck) Inspect() (TimingReport, error) {
	ends := [2]ValveEvents{{c.Valve, 0, 0, c.At}, {c.Valve, 0, 0, c.At}}
	for _, e := range []struct {
		field string
		b     tolerance.Interval[units.Angle]
		into  func(*ValveEvents, units.Angle)
	}{
		{"opens", c.Opens.Read, func(v *ValveEvents, a units.Angle) { v.Opens = a }},
		{"closes", c.Closes.Read, func(v *ValveEvents, a units.Angle) { v.Closes = a }},
	} {
		lo, loEnd := e.b.Lower()
		hi, hiEnd := e.b.Upper()
		if !e.b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
			return TimingReport{}, &InputError{c.Valve.String() + " valve " + e.field, e.b.String(), "measured, with a least and a greatest"}
		}
		e.into(&ends[0], lo)
		e.into(&ends[1], hi)
	}
	for _, e := range ends {
		if err := e.Check(); err != nil {
			return TimingReport{}, err
		}
	}
	near, far := c.Opens.Read, c.Closes.Read
	if c.Valve == ExhaustValve {
		near, far = far, near
	}
	half := tolerance.Exactly(units.Turn / 2)
	r := TimingReport{Duration: TimingDuration(near, far, half), Centre: TimingCentre(near, far, half)}
	var err error
	if r.Opens, err = inputAssess(c.Valve.String()+" valve opens, before its dead centre", c.Where, c.Opens.Limits, c.Opens.Read); err != nil {
		return TimingReport{}, err
	}
	if r.Closes, err = inputAssess(c.Valve.String()+" valve closes, after its dead centre", c.Where, c.Closes.Limits, c.Closes.Read); err != nil {
		return TimingReport{}, err
	}
	if c.CrankTeeth != 0 {
		if r.Tooth, err = ToothAngle(c.CrankTeeth); err != nil {
			return TimingReport{}, err
		}
	}
	opens, okOpens := c.Opens.Limits.New.Interval().Middle()
	closes, okCloses := c.Closes.Limits.New.Interval().Middle()
	if okOpens && okCloses {
		r.Late = tolerance.Exactly(opens).Sub(c.Opens.Read).Add(c.Closes.Read.Sub(tolerance.Exactly(closes))).Scale(1, 2)
		r.Longer = c.Opens.Read.Sub(tolerance.Exactly(opens)).Add(c.Closes.Read.Sub(tolerance.Exactly(closes)))
		if middle, ok := r.Late.Middle(); ok && c.CrankTeeth != 0 {
			if r.Teeth, _, err = TeethFor(middle, c.CrankTeeth); err != nil {
				return TimingReport{}, err
			}
		}
	}
	r.Next = c.next(r)
	return r, nil
}

func (c TimingCheck) next(r TimingReport) string {
	bad := r.Opens.Standing >= tolerance.OutsideNewBand || r.Closes.Standing >= tolerance.OutsideNewBand
	middle, ok := r.Late.Middle()
	longer, _ := r.Longer.Middle()
	side := "late: advance"
	if middle < 0 {
		side = "early: retard"
	}
	switch {
	case bad && ok && longer.Abs() > 2*middle.Abs():
		return "opening and closing are off to opposite sides, so the duration is: check the clearance, the lift that was read at, and the lobe, before the drive"
	case bad && ok && r.Teeth != 0:
		return "both events together come " + middle.Abs().Text(units.InDegrees, 1) + " " + side + " the camshaft; about a tooth or more, so check the marks of the drive first"
	case bad && ok:
		return "both events together come " + middle.Abs().Text(units.InDegrees, 1) + " " + side + " the camshaft by that; check dead centre and clearance first"
	case bad:
		return "check dead centre, clearance and the marks of the drive"
	case r.Opens.Standing == tolerance.CantTell && !c.Opens.Limits.IsZero() && r.Opens.Settle != "":
		return r.Opens.Settle
	case r.Closes.Standing == tolerance.CantTell && !c.Closes.Limits.IsZero() && r.Closes.Settle != "":
		return r.Closes.Settle
	}
	return "none by these limits"
}
