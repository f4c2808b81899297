package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema    int          `json:"schema"`
	Engine    string       `json:"engine"`
	Nominal   units.Length `json:"nominal"`
	Blades    string       `json:"blades,omitempty"` // a set of blades by its name
	Rings     []ring       `json:"rings"`
	Heat      *heat        `json:"heat,omitempty"`
	Cylinders []cylinder   `json:"cylinders"`
}

// ring is a kind of ring, in every cylinder.
type ring struct {
	Name   string `json:"name"`
	Limits struct {
		New  tolerance.Printed `json:"new,omitzero"`
		Wear tolerance.Printed `json:"wear,omitzero"`
	} `json:"limits"`
	Thickness units.Length    `json:"thickness,omitzero"`
	Metal     string          `json:"metal,omitempty"`
	Use       string          `json:"use,omitempty"`    // a rule of the trade by its name
	Factor    tolerance.Ratio `json:"factor,omitzero"`  // or one's own
	Source    string          `json:"source,omitempty"` // and where it is from
}

// heat is how hot the engine is to run.
type heat struct {
	BoreMetal  string                                `json:"boreMetal"`
	MeasuredAt units.Temperature                     `json:"measuredAt"`
	BoreAt     tolerance.Interval[units.Temperature] `json:"boreAt"`
	RingAt     tolerance.Interval[units.Temperature] `json:"ringAt"`
}

type cylinder struct {
	Cylinder int `json:"cylinder"`
	Stations []struct {
		At    string              `json:"at"`
		Bores []tolerance.Bracket `json:"bores"` // in directions that stand evenly round half a turn
	} `json:"stations"`
	Gaps []struct {
		Ring  string            `json:"ring"`
		At    string            `json:"at"`
		Gap   tolerance.Bracket `json:"gap,omitzero"`
		Tried string            `json:"tried,omitempty"`
	} `json:"gaps"`
}

// A row is one ring of one cylinder.
type row struct {
	name     string // "2 top"
	cylinder int
	ring     *ring
	gap      piston.RingGap
	report   piston.RingGapReport
	hot      *piston.RingHeat
	hotGap   tolerance.Bracket
	butts    units.Temperature
}

// read reads a file and judges every ring. An error names line and field.
func read(name string, data []byte) (e engine, rows []row, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, nil, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, nil, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	set, err := e.bladeSet()
	if err != nil {
		return e, nil, at("blades", err)
	}
	for i := range e.Rings {
		if field, err := e.Rings[i].check(e.Rings[:i]); err != nil {
			return e, nil, at(fmt.Sprintf("rings[%d].%s", i, field), err)
		}
	}
	if e.Nominal <= 0 {
		return e, nil, at("nominal", errors.New("a bore is above 0 mm"))
	}
	if e.Heat != nil {
		if err := e.tryHeat(); err != nil {
			return e, nil, at("heat", err)
		}
	}
	if len(e.Cylinders) == 0 {
		return e, nil, at("cylinders", errors.New("there is none"))
	}
	seen := map[int]bool{}
	for i, c := range e.Cylinders {
		path := fmt.Sprintf("cylinders[%d]", i)
		if c.Cylinder < 1 || seen[c.Cylinder] {
			return e, nil, at(path+".cylinder", errors.New("cylinders count from 1, and each is there once"))
		}
		seen[c.Cylinder] = true
		more, field, err := e.judge(set, c)
		if err != nil {
			return e, nil, at(path+field, err)
		}
		rows = append(rows, more...)
	}
	return e, rows, nil
}

func (e engine) bladeSet() (feeler.Set, error) {
	if e.Blades == "" {
		return feeler.Set{}, nil
	}
	var names []string
	for _, set := range feeler.StandardSets() {
		if set.Name() == e.Blades {
			return set, nil
		}
		names = append(names, set.Name())
	}
	return feeler.Set{}, fmt.Errorf("no set of blades is called %.64q: one of %s", e.Blades, strings.Join(names, ", "))
}

// check fills in what a ring names and refuses what is unknown.
func (r *ring) check(before []ring) (field string, err error) {
	if r.Name == "" {
		return "name", errors.New("a ring needs a name")
	}
	for _, b := range before {
		if b.Name == r.Name {
			return "name", fmt.Errorf("ring %.64q is there twice", r.Name)
		}
	}
	if r.Metal != "" {
		if _, ok := piston.MetalOf(r.Metal); !ok {
			return "metal", fmt.Errorf("no expansion is known of %.64q: %s", r.Metal, metals())
		}
	}
	switch {
	case r.Use != "" && r.Factor != tolerance.Ratio{}:
		return "use", errors.New("give the use or the factor, not both")
	case r.Use != "":
		f, ok := piston.RingGapFactorFor(r.Use)
		if !ok {
			return "use", fmt.Errorf("no rule is known for %.64q: give the factor, and its source", r.Use)
		}
		r.Factor, r.Source = f.Factor, f.Source
	case r.Factor != tolerance.Ratio{}:
		if r.Source == "" {
			return "factor", errors.New("a factor needs its source")
		}
		if f := r.Factor.Float(); !(f > 0 && f < 0.05) {
			return "factor", fmt.Errorf("%v for each unit of the bore is no end gap: such as 0.004", r.Factor)
		}
	}
	return "", nil
}

func metals() string {
	var names []string
	for _, m := range piston.Metals() {
		names = append(names, m.Name)
	}
	return "one of " + strings.Join(names, ", ")
}

// judge works out the rings of one cylinder.
func (e engine) judge(set feeler.Set, c cylinder) (rows []row, field string, err error) {
	if len(c.Stations) == 0 {
		return nil, ".stations", errors.New("there is none: give the bore's diameters at top and bottom of the rings' travel")
	}
	stations := make([]piston.RingGapStation, len(c.Stations))
	place := map[string]int{}
	for i, s := range c.Stations {
		if _, ok := place[s.At]; ok || s.At == "" || len(s.Bores) == 0 {
			return nil, fmt.Sprintf(".stations[%d]", i), errors.New("a station has a place of its own and one diameter or more")
		}
		place[s.At] = i
		for j, d := range s.Bores {
			if m, ok := d.Middle(); !ok || (m-e.Nominal).Abs() > e.Nominal/10 {
				return nil, fmt.Sprintf(".stations[%d].bores[%d]", i, j), fmt.Errorf("%s is not near the standard bore, %s", d, e.Nominal)
			}
		}
		stations[i] = piston.RingGapStation{Place: s.At, Bore: piston.RingBoreDiameter(s.Bores[0], s.Bores[1:]...)}
	}
	for i := range e.Rings {
		r := row{name: fmt.Sprintf("%d %s", c.Cylinder, e.Rings[i].Name), cylinder: c.Cylinder, ring: &e.Rings[i]}
		r.gap = piston.RingGap{Where: fmt.Sprintf("cylinder %d, %s ring", c.Cylinder, r.ring.Name), Stations: append([]piston.RingGapStation(nil), stations...),
			Thickness: r.ring.Thickness, Limits: tolerance.Spec{New: r.ring.Limits.New.BandOf, Wear: r.ring.Limits.Wear.BandOf}}
		read := 0
		for j, g := range c.Gaps {
			if g.Ring != r.ring.Name {
				continue
			}
			field := fmt.Sprintf(".gaps[%d]", j)
			k, ok := place[g.At]
			if !ok {
				return nil, field + ".at", fmt.Errorf("the cylinder has no station %.64q", g.At)
			}
			if !r.gap.Stations[k].Gap.IsZero() {
				return nil, field, errors.New("this ring was read there already")
			}
			if r.gap.Stations[k].Gap, err = reading(set, g.Gap, g.Tried); err != nil {
				return nil, field, err
			}
			read++
		}
		if read == 0 {
			continue
		}
		if r.report, err = r.gap.Assess(); err != nil {
			return nil, "", err
		}
		if err = e.warm(&r); err != nil {
			return nil, "", err
		}
		rows = append(rows, r)
	}
	for j, g := range c.Gaps {
		known := false
		for i := range e.Rings {
			known = known || e.Rings[i].Name == g.Ring
		}
		if !known {
			return nil, fmt.Sprintf(".gaps[%d].ring", j), fmt.Errorf("the file has no ring %.64q", g.Ring)
		}
	}
	if len(rows) == 0 {
		return nil, ".gaps", errors.New("no ring was read")
	}
	return rows, "", nil
}

// reading is a gap as it was read, directly or by blades.
func reading(set feeler.Set, gap tolerance.Bracket, tried string) (tolerance.Bracket, error) {
	switch {
	case !gap.IsZero() && tried != "":
		return gap, errors.New("give the gap or the blades tried, not both")
	case !gap.IsZero():
		return gap, nil
	case tried == "":
		return gap, errors.New("give the gap, or the blades tried")
	case set.Len() == 0:
		return gap, errors.New("blades were tried: say under \"blades\" which set they are of")
	}
	trials, err := set.ParseTrials(tried)
	if err != nil {
		return gap, err
	}
	return feeler.BracketWithErrors(trials...)
}

// tryHeat refuses metals and temperatures that can't be, before any ring.
func (e engine) tryHeat() error {
	metal, ok := piston.MetalOf(e.Heat.BoreMetal)
	if !ok {
		return fmt.Errorf("no expansion is known of %.64q: %s", e.Heat.BoreMetal, metals())
	}
	trial := piston.RingHeat{Bore: tolerance.Exactly(e.Nominal), MeasuredAt: e.Heat.MeasuredAt, BoreMetal: metal, RingMetal: metal,
		Gap: tolerance.Exactly(units.Length(0))}
	_, err := trial.GapAt(e.Heat.BoreAt, e.Heat.RingAt)
	return err
}

// warm works out the hot gap where the ring's ends are nearest.
func (e engine) warm(r *row) (err error) {
	if e.Heat == nil || r.ring.Metal == "" {
		return nil
	}
	bore, _ := piston.MetalOf(e.Heat.BoreMetal)
	metal, _ := piston.MetalOf(r.ring.Metal)
	r.hot = &piston.RingHeat{Bore: r.gap.Stations[r.report.Least].Bore, Gap: r.report.Stations[r.report.Least].Gap, Thickness: r.ring.Thickness,
		MeasuredAt: e.Heat.MeasuredAt, BoreMetal: bore, RingMetal: metal}
	if r.hotGap, err = r.hot.GapAt(e.Heat.BoreAt, e.Heat.RingAt); err != nil {
		return err
	}
	r.butts, err = r.hot.ButtsAt(e.Heat.BoreAt)
	return err
}
