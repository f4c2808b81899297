package valvetrain

import "github.com/tenthou/tenthou/units"

// ValveEvents are the two events of a valve, in degrees of the crankshaft.
//
//	inlet     Opens before top, Closes after bottom dead centre
//	exhaust   Opens before bottom, Closes after top dead centre
//
// An event on the other side of its dead centre is below zero: an inlet valve
// that opens 10° after top dead centre Opens at −10°. Angles are exact.
type ValveEvents struct {
	Valve  TimedValve  `json:"valve"`  // which valve
	Opens  units.Angle `json:"opens"`  // before its dead centre
	Closes units.Angle `json:"closes"` // after its dead centre
	At     TimingLift  `json:"at"`     // the lift that they are taken at
}

// near and far are the events as [TimingDuration] has them.
func (e ValveEvents) near() units.Angle {
	if e.Valve == ExhaustValve {
		return e.Closes
	}
	return e.Opens
}

func (e ValveEvents) far() units.Angle {
	if e.Valve == ExhaustValve {
		return e.Opens
	}
	return e.Closes
}

// Check refuses a valve that is neither, a lift that is none, an event beyond a
// turn, and events that leave the valve no time open, or none shut. An event on
// the other side of its dead centre is none of that.
func (e ValveEvents) Check() error {
	switch {
	case e.Valve > ExhaustValve:
		return &InputError{"valve", e.Valve.String(), "inlet or exhaust"}
	case e.At.Side > AtFollower:
		return &InputError{"side of the rocker", e.At.Side.String(), "the valve's or the follower's"}
	}
	if err := inputAllowance("lift that the events are at", e.At.Lift); err != nil {
		return err
	}
	for _, a := range []struct {
		field string
		angle units.Angle
	}{{" valve opens", e.Opens}, {" valve closes", e.Closes}} {
		if a.angle < -units.Turn || a.angle > units.Turn {
			return &InputError{e.Valve.String() + a.field, a.angle.String(), "within a turn of its dead centre"}
		}
	}
	return timingOpen(e.Valve, TimingDuration(e.near(), e.far(), units.Turn/2))
}

// timingOpen refuses a duration that no valve has.
func timingOpen(v TimedValve, duration units.Angle) error {
	if duration <= 0 || duration >= 2*units.Turn {
		return &InputError{v.String() + " duration", duration.String(), "above 0° and below 720°; an event on the other side of its dead centre is below zero"}
	}
	return nil
}

// Duration is how long the valve is open. It fails as [ValveEvents.Check] does.
func (e ValveEvents) Duration() (units.Angle, error) {
	if err := e.Check(); err != nil {
		return 0, err
	}
	return TimingDuration(e.near(), e.far(), units.Turn/2), nil
}

// Centre is the mid-open angle: after top dead centre for an inlet valve, before
// it for an exhaust valve, to the nearest microarcsecond; exact for events given
// in degrees to 7 places. Where the lobe is asymmetric it isn't where the lift is
// greatest. It fails as [ValveEvents.Check] does.
func (e ValveEvents) Centre() (units.Angle, error) {
	if err := e.Check(); err != nil {
		return 0, err
	}
	return TimingCentre(e.near(), e.far(), units.Turn/2), nil
}

// EventsOf are the events of a duration and a centre, the inverse of
// [ValveEvents.Duration] and [ValveEvents.Centre]. The centre is after top dead
// centre for an inlet valve, before it for an exhaust valve. It fails with an
// [InputError] where the duration isn't above 0° and below 720°, or the events
// aren't within a turn of their dead centres.
func EventsOf(valve TimedValve, duration, centre units.Angle, at TimingLift) (ValveEvents, error) {
	if err := timingOpen(valve, duration); err != nil {
		return ValveEvents{}, err
	}
	near, far := TimingNear(duration, centre), TimingFar(duration, centre, units.Turn/2)
	e := ValveEvents{Valve: valve, Opens: near, Closes: far, At: at}
	if valve == ExhaustValve {
		e.Opens, e.Closes = far, near
	}
	if err := e.Check(); err != nil {
		return ValveEvents{}, err
	}
	return e, nil
}

// Advanced are the events with the camshaft turned ahead by so many degrees of
// the crankshaft, below zero to retard it: both come earlier by as much,
// duration stays.
func (e ValveEvents) Advanced(by units.Angle) ValveEvents {
	e.Opens, e.Closes = e.Opens.Add(by), e.Closes.Sub(by)
	return e
}

// A CamTiming is the timing of an inlet and an exhaust valve of one cylinder.
type CamTiming struct {
	Inlet   ValveEvents `json:"inlet"`   // of the inlet valve
	Exhaust ValveEvents `json:"exhaust"` // of the exhaust valve, at the same lift
}

// Check refuses events that can't be, valves that are swapped, and events at
// different lifts, which have no common overlap or separation.
func (t CamTiming) Check() error {
	switch {
	case t.Inlet.Valve != InletValve:
		return &InputError{"valve of the inlet events", t.Inlet.Valve.String(), "the inlet valve"}
	case t.Exhaust.Valve != ExhaustValve:
		return &InputError{"valve of the exhaust events", t.Exhaust.Valve.String(), "the exhaust valve"}
	case t.Inlet.At != t.Exhaust.At:
		return &InputError{"lift of the exhaust events", t.Exhaust.At.String(), "that of the inlet events, " + t.Inlet.At.String()}
	}
	return firstError(t.Inlet.Check, t.Exhaust.Check)
}

// A CamSummary is what two valves' events make together. Centres, advance and
// durations are in degrees of the crankshaft, the separation of the camshaft.
type CamSummary struct {
	InletDuration   units.Angle `json:"inletDuration"`   // how long the inlet valve is open
	ExhaustDuration units.Angle `json:"exhaustDuration"` // how long the exhaust valve is open
	InletCentre     units.Angle `json:"inletCentre"`     // after top dead centre
	ExhaustCentre   units.Angle `json:"exhaustCentre"`   // before top dead centre
	Overlap         units.Angle `json:"overlap"`         // both open; below zero both shut
	Separation      units.Angle `json:"separation"`      // degrees of the camshaft
	Advance         units.Angle `json:"advance"`         // ahead of centres that are alike; below zero retarded
	At              TimingLift  `json:"at"`              // the lift that all of it is at
}

// Summary works out durations, centres, overlap, separation and advance. It
// fails as [CamTiming.Check] does.
func (t CamTiming) Summary() (CamSummary, error) {
	if err := t.Check(); err != nil {
		return CamSummary{}, err
	}
	const half = units.Turn / 2
	in, ex := t.Inlet, t.Exhaust
	s := CamSummary{
		InletDuration: TimingDuration(in.near(), in.far(), half), ExhaustDuration: TimingDuration(ex.near(), ex.far(), half),
		InletCentre: TimingCentre(in.near(), in.far(), half), ExhaustCentre: TimingCentre(ex.near(), ex.far(), half),
		Overlap: TimingOverlap(in.near(), ex.near()), At: in.At,
	}
	s.Separation = LobeSeparation(s.InletCentre, s.ExhaustCentre)
	s.Advance = TimingAdvance(s.InletCentre, s.ExhaustCentre)
	return s, nil
}

// Timing is the inverse of [CamTiming.Summary]: the events of durations,
// separation and advance. Centres and overlap of s are not asked. It fails as
// [EventsOf] does.
func (s CamSummary) Timing() (CamTiming, error) {
	in, err := EventsOf(InletValve, s.InletDuration, InletCentreFor(s.Separation, s.Advance), s.At)
	if err != nil {
		return CamTiming{}, err
	}
	ex, err := EventsOf(ExhaustValve, s.ExhaustDuration, ExhaustCentreFor(s.Separation, s.Advance), s.At)
	if err != nil {
		return CamTiming{}, err
	}
	return CamTiming{in, ex}, nil
}
