package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
)

// engine is the file.
type engine struct {
	Schema     int                 `json:"schema"`
	Engine     string              `json:"engine"`
	Places     string              `json:"places,omitempty"` // how it was measured
	Pistons    []piston.DeckPiston `json:"pistons"`
	Difference limits              `json:"difference,omitzero"` // of a piston's two points
	Clearance  limits              `json:"clearance,omitzero"`  // to the head
	Table      []row               `json:"table"`
	Stack      *piston.DeckStack   `json:"stack,omitempty"`
}

// row is one of the table, as the manual prints it.
type row struct {
	Mark       string            `json:"mark"`
	Protrusion tolerance.Printed `json:"protrusion"`
	Thickness  tolerance.Printed `json:"thickness,omitzero"`
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

// read reads the file, and refuses with line and path what can't be.
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
	for i, p := range e.Pistons {
		if _, _, err := p.Protrusion(); err != nil {
			return e, at(fmt.Sprintf("pistons[%d]", i), err)
		}
	}
	if _, err := e.check().Table.Faults(); err != nil {
		return e, at("table", err)
	}
	if e.Stack != nil {
		if _, err := e.Stack.Protrusion(); err != nil {
			return e, at("stack", err)
		}
	}
	return e, nil
}

func (e engine) check() piston.GasketCheck {
	c := piston.GasketCheck{Pistons: e.Pistons, Tilt: e.Difference.spec(), Clearance: e.Clearance.spec()}
	for _, r := range e.Table {
		c.Table = append(c.Table, piston.GasketRow{Mark: r.Mark, Protrusion: r.Protrusion.BandOf, Thickness: r.Thickness.BandOf})
	}
	return c
}
