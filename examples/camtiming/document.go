package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// paper is the file.
type paper struct {
	Schema     int                   `json:"schema"`
	Engine     string                `json:"engine"`
	At         valvetrain.TimingLift `json:"at"`                  // the lift that all events are at
	CrankTeeth int                   `json:"crankTeeth,omitzero"` // of the crankshaft's gear
	RPM        float64               `json:"rpm,omitzero"`        // for speed and acceleration of the lift
	Inlet      given                 `json:"inlet"`
	Exhaust    given                 `json:"exhaust"`
}

// given is one valve: its events by a wheel, or a lift table to find them in.
type given struct {
	Opens  tolerance.Interval[units.Angle] `json:"opens,omitzero"`  // before its dead centre
	Closes tolerance.Interval[units.Angle] `json:"closes,omitzero"` // after its dead centre
	Table  *table                          `json:"table,omitempty"`
	Limits struct {
		Opens  limits `json:"opens,omitzero"`
		Closes limits `json:"closes,omitzero"`
	} `json:"limits,omitzero"`
}

type limits struct {
	New  tolerance.BandOf[units.Angle] `json:"new,omitzero"`
	Wear tolerance.BandOf[units.Angle] `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.SpecOf[units.Angle] {
	return tolerance.SpecOf[units.Angle]{New: l.New, Wear: l.Wear}
}

// valve is one valve that was read and judged.
type valve struct {
	given
	which    valvetrain.TimedValve
	check    valvetrain.TimingCheck
	report   valvetrain.TimingReport
	curve    valvetrain.LiftCurve // without points where no table was given
	analysis valvetrain.LiftAnalysis
}

// engine is a file that was read and judged.
type engine struct {
	paper
	valves [2]valve // inlet, exhaust
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e.paper); err != nil {
		return e, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	if !(e.RPM >= 0 && e.RPM <= 1e5) {
		return e, at("rpm", fmt.Errorf("%g r/min is not from 0 to 100 000", e.RPM))
	}
	for i, v := range []given{e.Inlet, e.Exhaust} {
		e.valves[i] = valve{given: v, which: valvetrain.TimedValve(i)}
		if path, err := e.valves[i].judge(e.paper); err != nil {
			return e, at(e.valves[i].which.String()+path, err)
		}
	}
	return e, nil
}

// judge finds the events, from the table where there is one. An error comes with
// its path in the file.
func (v *valve) judge(p paper) (path string, err error) {
	opens, closes := v.Opens, v.Closes
	switch {
	case v.Table != nil && !(opens.IsZero() && closes.IsZero()):
		return "", fmt.Errorf("events or a table, not both")
	case v.Table == nil && (opens.IsZero() || closes.IsZero()):
		return "", fmt.Errorf("opens and closes, or a table, are needed")
	case v.Table != nil:
		c, field, err := v.Table.curve()
		if err != nil {
			return ".table." + field, err
		}
		if c.Side() != p.At.Side {
			return ".table.side", fmt.Errorf("lifts are %s, and the events are wanted %s: give ratio and clearance", c.Side(), p.At.Side)
		}
		events, err := c.Events(v.which, p.At.Lift)
		if err != nil {
			return ".table", err
		}
		if v.analysis, err = c.Analyse(v.Table.Smoothing); err != nil {
			return ".table.smoothing", err
		}
		v.curve = c
		if opens, err = tolerance.PlusMinus(events.Opens, v.Table.Error); err != nil {
			return ".table.wheelError", err
		}
		if closes, err = tolerance.PlusMinus(events.Closes, v.Table.Error); err != nil {
			return ".table.wheelError", err
		}
	}
	v.check = valvetrain.TimingCheck{Where: v.which.String(), Valve: v.which, At: p.At, CrankTeeth: p.CrankTeeth,
		Opens:  valvetrain.MeasuredEvent{Read: opens, Limits: v.Limits.Opens.spec()},
		Closes: valvetrain.MeasuredEvent{Read: closes, Limits: v.Limits.Closes.spec()}}
	v.report, err = v.check.Inspect()
	return "", err
}
