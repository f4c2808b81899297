package main

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema    int                 `json:"schema"`
	Engine    string              `json:"engine"`
	Clearance limits              `json:"clearance"`
	Bearings  []crank.OilReadings `json:"bearings"`
	Strips    *strips             `json:"strips,omitempty"`
	Shells    *shells             `json:"shells,omitempty"`

	reports []crank.OilReport
	strips  []crank.StripReport
	job     crank.ShellJob
	choice  crank.ShellChoice
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec { return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf} }

// strips are crushed gauging strips, and the table that came with them.
type strips struct {
	Table crank.StripTable     `json:"table"`
	Taper limits               `json:"taper,omitzero"`
	Read  []crank.CrushedStrip `json:"read"`
}

// shells is what is in stock, and what is wanted of it.
type shells struct {
	Wanted   tolerance.Band `json:"wanted"`
	Aim      units.Length   `json:"aim,omitzero"` // where it isn't given, the middle of what is wanted
	Mixed    bool           `json:"mixed,omitzero"`
	MostStep units.Length   `json:"mostStep,omitzero"`
	Classes  []struct {
		Name   string            `json:"name"`
		Wall   tolerance.Bracket `json:"wall"`
		Uppers *int              `json:"uppers,omitempty"`
		Lowers *int              `json:"lowers,omitempty"`
	} `json:"classes"`
}

// read reads a file and works it out. An error names the line and the field.
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
	if len(e.Bearings) == 0 {
		return e, at("bearings", errors.New("no bearings: give at least one"))
	}
	for i := range e.Bearings {
		r, err := e.Bearings[i].Check(e.Clearance.spec())
		if err != nil {
			return e, at(fmt.Sprintf("bearings[%d]", i), err)
		}
		e.reports = append(e.reports, r)
	}
	if s := e.Strips; s != nil {
		if err := s.Table.Validate(); err != nil {
			return e, at("strips.table", err)
		}
		for i := range s.Read {
			r, err := s.Table.Read(&s.Read[i], e.Clearance.spec(), s.Taper.spec())
			if err != nil {
				return e, at(fmt.Sprintf("strips.read[%d]", i), err)
			}
			e.strips = append(e.strips, r)
		}
	}
	if e.Shells != nil {
		if err := e.shells(); err != nil {
			return e, at("shells", err)
		}
	}
	return e, nil
}

// shells shares out the stock over the bearings whose housing was measured.
func (e *engine) shells() error {
	s := e.Shells
	e.job = crank.ShellJob{Mixed: s.Mixed, MostStep: s.MostStep, Wanted: selective.Wanted{Band: s.Wanted, Aim: s.Aim}}
	if s.Aim == 0 {
		var err error
		if e.job.Wanted, err = selective.Middle(s.Wanted); err != nil {
			return err
		}
	}
	for _, c := range s.Classes {
		class := crank.ShellClass{Name: c.Name, Wall: c.Wall}
		if c.Uppers != nil {
			class.Uppers = crank.HalvesInStock(*c.Uppers)
		}
		if c.Lowers != nil {
			class.Lowers = crank.HalvesInStock(*c.Lowers)
		}
		e.job.Classes = append(e.job.Classes, class)
	}
	for i := range e.Bearings {
		o := &e.Bearings[i]
		if len(o.Housing) == 0 {
			return fmt.Errorf("%s: to choose shells its housing is needed, measured without any", o.Where)
		}
		// The least bore and the greatest journal make the least clearance.
		housing, _ := tolerance.Extremes(o.Housing...)
		_, journal := tolerance.Extremes(o.Journal...)
		e.job.Bearings = append(e.job.Bearings, crank.ShellBearing{Where: o.Where, Housing: housing, Journal: journal})
	}
	var err error
	e.choice, err = crank.ChooseShells(&e.job)
	return err
}
