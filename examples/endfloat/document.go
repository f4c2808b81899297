package main

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema  int                  `json:"schema"`
	Engine  string               `json:"engine"`
	Bearing string               `json:"bearing"`          // "main 3"
	Unit    string               `json:"unit,omitempty"`   // of the page; mm if left out
	Dial    []dial               `json:"dial,omitempty"`   // either by dial, once or oftener
	Blades  string               `json:"blades,omitempty"` // or by blades of a set: "metric 20"
	Tried   []string             `json:"tried,omitempty"`  // at each place: "0.30 mm drag, 0.35 mm refused"
	Limits  limits               `json:"limits"`
	Washers *washers             `json:"washers,omitempty"` // that are in
	Table   *crank.ThrustTable   `json:"table,omitempty"`   // the manual's
	Stock   []crank.ThrustWasher `json:"stock,omitempty"`
	Wanted  units.Length         `json:"wanted,omitzero"` // float; the middle of the limits if left out

	unit   units.Unit[units.Length]
	places int
	floats []tolerance.Bracket
}

type dial struct {
	Forward tolerance.Bracket `json:"forward"` // "0.31 ±0.005 mm"
	Back    tolerance.Bracket `json:"back"`
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

type washers struct {
	Front []tolerance.Bracket `json:"front"` // one, or two halves
	Rear  []tolerance.Bracket `json:"rear"`
	Match limits              `json:"match,omitzero"` // of the halves of one side
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	switch e.Unit {
	case "", "mm":
		e.unit, e.places = units.InMillimetres, 3
	case "in":
		e.unit, e.places = units.InInches, 4
	default:
		return e, at("unit", fmt.Errorf("a page is in mm or in, not %.64q", e.Unit))
	}
	if (len(e.Dial) > 0) == (len(e.Tried) > 0) {
		return e, fmt.Errorf("%s: give the end float either by dial or by blades that were tried", name)
	}
	for i, d := range e.Dial {
		float := crank.EndFloat(d.Forward, d.Back)
		if !float.InRange() {
			return e, at(fmt.Sprintf("dial[%d]", i), errors.New("readings too large for a dial"))
		}
		e.floats = append(e.floats, float)
	}
	if path, err := e.blades(); err != nil {
		return e, at(path, err)
	}
	if e.Washers == nil && (e.Table != nil || len(e.Stock) > 0) {
		return e, at("engine", errors.New("a table or a stock needs the washers that are in"))
	}
	if path, err := e.assess(); err != nil {
		return e, document.At(name, data, path, err)
	}
	return e, nil
}

// blades reads what was tried.
func (e *engine) blades() (path string, err error) {
	if len(e.Tried) == 0 {
		return "", nil
	}
	for _, set := range feeler.StandardSets() {
		if set.Name() != e.Blades {
			continue
		}
		for i, tried := range e.Tried {
			path := fmt.Sprintf("tried[%d]", i)
			trials, err := set.ParseTrials(tried)
			if err != nil {
				return path, err
			}
			b, err := feeler.Bracket(trials...)
			if err != nil {
				return path, err
			}
			e.floats = append(e.floats, b)
		}
		return "", nil
	}
	return "blades", fmt.Errorf("no set is called %.64q", e.Blades)
}

// assess is a first look at everything, so that a reading, a table or a stock that
// can't be is refused, with its path, before anything is written.
func (e *engine) assess() (path string, err error) {
	if _, err = e.check().Assess(); err != nil {
		switch {
		case errors.Is(err, tolerance.ErrSpec):
			return "limits", err
		case len(e.Dial) > 0:
			return "dial", err
		}
		return "tried", err
	}
	if e.Washers == nil {
		return "", nil
	}
	fit := e.fit()
	if _, err = fit.Sides(); err != nil {
		return "washers", err
	}
	if e.Table != nil {
		in, err := fit.In()
		if err != nil {
			return "washers", err
		}
		if _, err = e.Table.Choose(fit.Float, in); err != nil {
			return "table", err
		}
	}
	if len(e.Stock) > 0 {
		if _, err = fit.Options(e.Stock...); err != nil {
			return "stock", err
		}
	}
	return "", nil
}

func (e *engine) check() crank.EndFloatCheck {
	return crank.EndFloatCheck{Where: e.Bearing, Readings: e.floats, Limits: e.Limits.spec()}
}

// float is one bracket that holds every reading.
func (e *engine) float() tolerance.Bracket {
	least, greatest := tolerance.Extremes(e.floats...)
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	b, _ := tolerance.NewInterval(lo, loEnd, hi, hiEnd) // in order
	return b
}

func (e *engine) fit() crank.ThrustFit {
	return crank.ThrustFit{Float: e.float(), Front: e.Washers.Front, Rear: e.Washers.Rear, Match: e.Washers.Match.spec(), Limits: e.Limits.spec(), Wanted: e.Wanted}
}
