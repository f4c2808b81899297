package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// engine is the file, and what is made of it.
type engine struct {
	file
	pump     crank.Pump
	valve    crank.ReliefSpring
	blades   feeler.Set
	stations [][]feeler.Station // of each check; none where a size was read
}

type file struct {
	Schema    int               `json:"schema"`
	Engine    string            `json:"engine"`
	Blades    string            `json:"blades,omitempty"`    // "imperial 26", …
	OwnBlades []feeler.Blade    `json:"ownBlades,omitempty"` // or one's own, a blade a text
	Kind      crank.PumpKind    `json:"kind"`
	Gasket    tolerance.Bracket `json:"gasket,omitzero"`
	CoverWear []string          `json:"coverWear,omitempty"` // what was tried under a straight-edge across the cover
	UsedWidth tolerance.Bracket `json:"usedWidth,omitzero"`
	NewWidth  tolerance.Band    `json:"newWidth,omitzero"`
	Checks    []check           `json:"checks"`
	Spring    *spring           `json:"spring,omitempty"`
}

type check struct {
	Measure  crank.PumpMeasure `json:"measure"`
	Where    string            `json:"where,omitempty"`
	Limits   limits            `json:"limits"`
	Stations []station         `json:"stations"`
}

// station is one place: blades tried, or a size read.
type station struct {
	At    string            `json:"at"`
	Tried string            `json:"tried,omitempty"` // ".005 in drag, .006 in refused"
	Read  tolerance.Bracket `json:"read,omitzero"`
	Proud bool              `json:"proud,omitempty"` // the gears stand proud by it
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

type spring struct {
	Free           tolerance.Bracket               `json:"free"`
	FreeLimits     limits                          `json:"freeLimits,omitzero"`
	Height         units.Length                    `json:"height"`
	Load           tolerance.Interval[units.Force] `json:"load"`
	LoadLimits     limitsOf[units.Force]           `json:"loadLimits,omitzero"`
	Installed      tolerance.Bracket               `json:"installed,omitzero"`
	Seat           tolerance.Bracket               `json:"seat,omitzero"`
	PressureLimits limitsOf[units.Pressure]        `json:"pressureLimits,omitzero"`
}

type limitsOf[Q units.Quantity] struct {
	New  tolerance.PrintedOf[Q] `json:"new,omitzero"`
	Wear tolerance.PrintedOf[Q] `json:"wear,omitzero"`
}

func (l limitsOf[Q]) spec() tolerance.SpecOf[Q] {
	return tolerance.SpecOf[Q]{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	var f file
	if err = document.DecodeNamed(name, data, &f); err != nil {
		return e, err
	}
	e = engine{file: f}
	path, err := e.build()
	if err != nil {
		where, _ := document.Locate(data, path)
		return e, fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	return e, nil
}

// build makes the pump of the file, or says where it can't.
func (e *engine) build() (path string, err error) {
	set, path, err := e.set()
	if err != nil {
		return path, err
	}
	e.blades = set
	e.pump = crank.Pump{Kind: e.Kind, Gasket: e.Gasket, UsedWidth: e.UsedWidth, NewWidth: e.NewWidth}
	if len(e.CoverWear) > 0 {
		if e.pump.CoverWear, err = tried(set, strings.Join(e.CoverWear, ", ")); err != nil {
			return "coverWear", err
		}
	}
	for i, c := range e.Checks {
		var stations []feeler.Station
		p := crank.PumpCheck{Measure: c.Measure, Where: c.Where, Limits: c.Limits.spec()}
		for k, s := range c.Stations {
			path := fmt.Sprintf("checks[%d].stations[%d]", i, k)
			gap := s.Read
			switch {
			case (s.Tried == "") == s.Read.IsZero():
				return path, fmt.Errorf("give either what was tried or what was read")
			case s.Proud && c.Measure != crank.PumpSide:
				return path, fmt.Errorf("only gears under a straight-edge stand proud, not a %v", c.Measure)
			case s.Tried != "":
				if gap, err = tried(set, s.Tried); err != nil {
					return path, err
				}
				trials, _ := set.ParseTrials(s.Tried)
				stations = append(stations, feeler.Station{Where: s.At, Trials: trials})
			}
			if s.Proud {
				gap = tolerance.Exactly(units.Length(0)).Sub(gap)
			}
			p.Stations = append(p.Stations, gap)
		}
		e.pump.Checks = append(e.pump.Checks, p)
		e.stations = append(e.stations, stations)
		one := e.pump
		one.Checks = []crank.PumpCheck{p}
		if _, err := one.Assess(); err != nil {
			return fmt.Sprintf("checks[%d]", i), err
		}
	}
	if s := e.Spring; s != nil {
		e.valve = crank.ReliefSpring{Free: s.Free, FreeLimits: s.FreeLimits.spec(), Height: s.Height, Load: s.Load, LoadLimits: s.LoadLimits.spec(),
			Installed: s.Installed, Seat: s.Seat, PressureLimits: s.PressureLimits.spec()}
		if _, err := e.valve.Assess(); err != nil {
			return "spring", err
		}
	}
	return "", nil
}

// tried is the bracket that blades leave.
func tried(set feeler.Set, text string) (tolerance.Bracket, error) {
	trials, err := set.ParseTrials(text)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	return feeler.Bracket(trials...)
}

// set is the blades that the file names, or its own.
func (e *engine) set() (set feeler.Set, path string, err error) {
	if len(e.OwnBlades) > 0 {
		set, err = feeler.NewSet(e.Engine, "the file", e.OwnBlades...)
		return set, "ownBlades", err
	}
	var names []string
	for _, s := range feeler.StandardSets() {
		if s.Name() == e.Blades {
			return s, "", nil
		}
		names = append(names, s.Name())
	}
	if e.Blades == "" {
		return set, "", nil
	}
	return set, "blades", fmt.Errorf("no set is called %.64q; there are %s, or give ownBlades", e.Blades, strings.Join(names, ", "))
}
