package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// engine is the file: the limits, what was read, and what it is to be at heat.
type engine struct {
	Schema          int               `json:"schema"`
	Engine          string            `json:"engine"`
	MeasuringHeight units.Length      `json:"measuringHeight"`
	Limits          limits            `json:"limits,omitzero"`
	Rules           []piston.PullRule `json:"rules,omitempty"`    // of the user's own, beside the published ones
	PullRule        string            `json:"pullRule,omitempty"` // the rule that the pulls are judged by
	Heat            *heat             `json:"heat,omitempty"`
	Pistons         []onePiston       `json:"pistons"`

	set     []piston.SkirtSurvey
	judged  piston.SkirtLimits
	results []piston.SkirtResult
}

// limit is what the manual prints for one measure.
type limit struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limit) spec() tolerance.Spec { return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf} }

type limits struct {
	Size      limit `json:"size,omitzero"`
	Ovality   limit `json:"ovality,omitzero"`
	Taper     limit `json:"taper,omitzero"`
	Wear      limit `json:"wear,omitzero"`
	Collapse  limit `json:"collapse,omitzero"`
	Clearance limit `json:"clearance,omitzero"`
	Pulled    limit `json:"pulled,omitzero"`
}

// heat is what bore and skirt are made of and how warm they become.
type heat struct {
	MeasuredAt units.Temperature                     `json:"measuredAt"`
	BoreMetal  metal                                 `json:"boreMetal"`
	SkirtMetal metal                                 `json:"skirtMetal"`
	BoreAt     tolerance.Interval[units.Temperature] `json:"boreAt"`
	SkirtAt    tolerance.Interval[units.Temperature] `json:"skirtAt"`
	Keep       units.Length                          `json:"keep,omitzero"` // the clearance wanted when hot
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

// onePiston is what was read of one piston.
type onePiston struct {
	Where string                `json:"where"`
	Bores []tolerance.Bracket   `json:"bores,omitempty"`
	Skirt []piston.SkirtStation `json:"skirt,omitempty"`
	Pulls []place               `json:"pulls,omitempty"`
}

// place is where a strip was pulled.
type place struct {
	At     string             `json:"at"`
	Trials []piston.PullTrial `json:"trials"`
}

func (e *engine) rules() []piston.PullRule {
	return append(piston.PublishedPullRules(), e.Rules...)
}

// read reads a file and judges every piston in it. An error names the line and
// the field.
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
		return e, at("pistons", fmt.Errorf("no piston was read"))
	}
	if e.Heat != nil {
		for i, m := range [2]metal{e.Heat.BoreMetal, e.Heat.SkirtMetal} {
			if _, err := m.metal(); err != nil {
				return e, at([2]string{"heat.boreMetal", "heat.skirtMetal"}[i], err)
			}
		}
	}
	rule, err := e.rule()
	if err != nil {
		return e, at("pullRule", err)
	}
	l := e.Limits
	e.judged = piston.SkirtLimits{Size: l.Size.spec(), Ovality: l.Ovality.spec(), Taper: l.Taper.spec(), Wear: l.Wear.spec(),
		Collapse: l.Collapse.spec(), Clearance: l.Clearance.spec(), Pulled: l.Pulled.spec()}
	seen := map[string]bool{}
	for i, p := range e.Pistons {
		path := fmt.Sprintf("pistons[%d]", i)
		if seen[p.Where] {
			return e, at(path+".where", fmt.Errorf("%.64q is there twice", p.Where))
		}
		seen[p.Where] = true
		s := piston.SkirtSurvey{Where: p.Where, Stations: p.Skirt, MeasuringHeight: e.MeasuringHeight, Bores: p.Bores, PullRule: e.PullRule}
		for j, pull := range p.Pulls {
			if rule == nil {
				continue
			}
			r, err := rule.Read(pull.Trials...)
			if err != nil {
				return e, at(fmt.Sprintf("%s.pulls[%d]", path, j), err)
			}
			if r.Told {
				s.Pulled = append(s.Pulled, r.Clearance)
			}
		}
		e.set = append(e.set, s)
		if _, err = s.Inspect(nil, &e.judged); err != nil {
			return e, at(path, err)
		}
	}
	e.results, err = piston.InspectSkirts(nil, e.set, &e.judged)
	return e, err
}

// rule is the one that the pulls are judged by; nil where none is named.
func (e *engine) rule() (*piston.PullRule, error) {
	if e.PullRule == "" {
		return nil, nil
	}
	for _, r := range e.rules() {
		if r.Name == e.PullRule {
			return &r, nil
		}
	}
	return nil, fmt.Errorf("there is no rule %.64q among the published ones and the file's own", e.PullRule)
}
