package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// engine is the file: the limits, what was read, the grades and the assembly.
type engine struct {
	Schema   int           `json:"schema"`
	Engine   string        `json:"engine"`
	Fit      piston.PinFit `json:"fit"` // in the small end
	Limits   limits        `json:"limits,omitzero"`
	New      fresh         `json:"new,omitzero"`
	Grades   *grades       `json:"grades,omitempty"`
	Assembly *assembly     `json:"assembly,omitempty"`
	Pistons  []onePin      `json:"pistons"`

	set     []piston.PinSurvey
	judged  piston.PinLimits
	results []piston.PinResult
}

// limit is what the manual prints for one measure.
type limit struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limit) spec() tolerance.Spec { return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf} }

type limits struct {
	Size                 limit `json:"size,omitzero"`
	Ovality              limit `json:"ovality,omitzero"`
	Taper                limit `json:"taper,omitzero"`
	Wear                 limit `json:"wear,omitzero"`
	BossOvality          limit `json:"bossOvality,omitzero"`
	BossTaper            limit `json:"bossTaper,omitzero"`
	BossWear             limit `json:"bossWear,omitzero"`
	BossClearance        limit `json:"bossClearance,omitzero"`
	SmallEndOvality      limit `json:"smallEndOvality,omitzero"`
	SmallEndTaper        limit `json:"smallEndTaper,omitzero"`
	SmallEndWear         limit `json:"smallEndWear,omitzero"`
	SmallEndClearance    limit `json:"smallEndClearance,omitzero"`
	SmallEndInterference limit `json:"smallEndInterference,omitzero"`
	EndFloat             limit `json:"endFloat,omitzero"`
}

// fresh are the sizes when new.
type fresh struct {
	Pin      tolerance.Band `json:"pin,omitzero"`
	Boss     tolerance.Band `json:"boss,omitzero"`
	SmallEnd tolerance.Band `json:"smallEnd,omitzero"`
}

// grades are the maker's.
type grades struct {
	Pins   selective.Grades `json:"pins"`
	Bosses selective.Grades `json:"bosses"`
	Pairs  []piston.PinPair `json:"pairs,omitempty"` // left out where like goes with like
	Wanted tolerance.Band   `json:"wanted"`
}

// assembly is how a pin is put into the hole that holds it.
type assembly struct {
	Into       string                                `json:"into"` // "bosses" or "small end"
	Gap        units.Length                          `json:"gap"`
	MeasuredAt units.Temperature                     `json:"measuredAt"`
	HoleMetal  metal                                 `json:"holeMetal"`
	PinMetal   metal                                 `json:"pinMetal"`
	PinAt      tolerance.Interval[units.Temperature] `json:"pinAt"`              // while the hole is heated
	HoleAt     tolerance.Interval[units.Temperature] `json:"holeAt"`             // while the pin is chilled
	Most       units.Temperature                     `json:"most"`               // that the maker allows the hole
	RunningAt  tolerance.Interval[units.Temperature] `json:"runningAt,omitzero"` // of pin and hole together
}

// metal is one of the list, by its name, or one's own by its coefficient.
type metal struct {
	Name      string  `json:"name,omitempty"`
	PerK      float64 `json:"perK,omitzero"`
	PerKError float64 `json:"perKError,omitzero"`
}

func (m metal) metal() (piston.Metal, error) {
	if m.PerK != 0 {
		return piston.Metal{Name: m.Name, PerK: m.PerK, PerKError: m.PerKError}, nil
	}
	known, ok := piston.MetalOf(m.Name)
	if !ok {
		return known, fmt.Errorf("no coefficient is known of %.64q: give it as perK, per kelvin", m.Name)
	}
	return known, nil
}

// onePin is what was read of one piston.
type onePin struct {
	Where      string              `json:"where"`
	AtBosses   []piston.PinSection `json:"atBosses,omitempty"`
	AtSmallEnd []piston.PinSection `json:"atSmallEnd,omitempty"`
	Bosses     []piston.PinSection `json:"bosses,omitempty"`
	SmallEnd   []piston.PinSection `json:"smallEnd,omitempty"`
	Between    tolerance.Bracket   `json:"between,omitzero"`
	Length     tolerance.Bracket   `json:"length,omitzero"`
}

// read reads a file and judges every pin in it. An error names the line and the
// field.
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
	if len(e.Pistons) == 0 {
		return e, at("pistons", fmt.Errorf("no pin was read"))
	}
	if a := e.Assembly; a != nil {
		if a.Into != "bosses" && a.Into != "small end" {
			return e, at("assembly.into", fmt.Errorf("a pin is put into the bosses or the small end, not %.64q", a.Into))
		}
		for i, m := range [2]metal{a.HoleMetal, a.PinMetal} {
			if _, err := m.metal(); err != nil {
				return e, at([2]string{"assembly.holeMetal", "assembly.pinMetal"}[i], err)
			}
		}
	}
	if e.Grades != nil {
		if _, err := e.pinGrades().Fits(); err != nil {
			return e, at("grades", err)
		}
	}
	l := e.Limits
	e.judged = piston.PinLimits{Size: l.Size.spec(), Ovality: l.Ovality.spec(), Taper: l.Taper.spec(), Wear: l.Wear.spec(),
		BossOvality: l.BossOvality.spec(), BossTaper: l.BossTaper.spec(), BossWear: l.BossWear.spec(), BossClearance: l.BossClearance.spec(),
		SmallEndOvality: l.SmallEndOvality.spec(), SmallEndTaper: l.SmallEndTaper.spec(), SmallEndWear: l.SmallEndWear.spec(),
		SmallEndClearance: l.SmallEndClearance.spec(), SmallEndInterference: l.SmallEndInterference.spec(), EndFloat: l.EndFloat.spec()}
	seen := map[string]bool{}
	for i, p := range e.Pistons {
		path := fmt.Sprintf("pistons[%d]", i)
		if seen[p.Where] {
			return e, at(path+".where", fmt.Errorf("%.64q is there twice", p.Where))
		}
		seen[p.Where] = true
		s := piston.PinSurvey{Where: p.Where, Fit: e.Fit, AtBosses: p.AtBosses, AtSmallEnd: p.AtSmallEnd, Bosses: p.Bosses, SmallEnd: p.SmallEnd,
			NewPin: e.New.Pin.Interval(), NewBoss: e.New.Boss.Interval(), NewSmallEnd: e.New.SmallEnd.Interval(), Between: p.Between, Length: p.Length}
		if _, err := s.Inspect(nil, &e.judged); err != nil {
			return e, at(path, err)
		}
		e.set = append(e.set, s)
	}
	e.results, err = piston.InspectPins(nil, e.set, &e.judged)
	return e, err
}

func (e *engine) pinGrades() piston.PinGrades {
	return piston.PinGrades{Pins: e.Grades.Pins, Bosses: e.Grades.Bosses, Pairs: e.Grades.Pairs, Wanted: e.Grades.Wanted}
}
