package main

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema int    `json:"schema"`
	Engine string `json:"engine"`
	Wet    *wet   `json:"wet,omitempty"`
	Dry    *dry   `json:"dry,omitempty"`
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

// wet is a bank of wet liners, in order.
type wet struct {
	Protrusion limits `json:"protrusion"`
	Step       limits `json:"step,omitzero"`
	Variation  limits `json:"variation,omitzero"`
	StepFrom   string `json:"stepFrom,omitempty"` // "worst" place to place, or "mean" to mean
	Shims      []struct {
		Name      string            `json:"name"`
		Thickness tolerance.Bracket `json:"thickness"`
	} `json:"shims,omitempty"`
	Most   int `json:"most,omitzero"` // shims on one another
	Liners []struct {
		Where  string              `json:"where"`
		Shim   tolerance.Bracket   `json:"shim,omitzero"` // under it now
		Places []tolerance.Bracket `json:"places"`
	} `json:"liners"`
}

// dry are dry liners, all of one kind.
type dry struct {
	Interference limits                 `json:"interference"`
	Inside       units.Length           `json:"inside"`
	Outside      units.Length           `json:"outside"`
	Length       units.Length           `json:"length,omitzero"`
	Friction     float64                `json:"friction,omitzero"`
	Liner        cylinder.LinerMaterial `json:"liner"`
	Block        cylinder.LinerMaterial `json:"block"`
	BlockMaxMPa  float64                `json:"blockMaxMPa,omitzero"`
	Liners       []struct {
		Where    string              `json:"where"`
		Bores    []tolerance.Bracket `json:"bores"`
		Outsides []tolerance.Bracket `json:"outsides"`
	} `json:"liners"`
	DropIn *dropIn `json:"dropIn,omitempty"`
}

// dropIn is how dry liners are to go in without a press. A coefficient stands
// as blockPerK and linerPerK, or by the name of a material.
type dropIn struct {
	Gap           units.Length      `json:"gap"`
	MeasuredAt    units.Temperature `json:"measuredAt"`
	BlockMaterial string            `json:"blockMaterial,omitempty"`
	LinerMaterial string            `json:"linerMaterial,omitempty"`
	BlockPerK     float64           `json:"blockPerK,omitzero"`
	LinerPerK     float64           `json:"linerPerK,omitzero"`
	LinerAt       units.Temperature `json:"linerAt"` // while the block is heated
	BlockAt       units.Temperature `json:"blockAt"` // while the liner is chilled
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path string, err error) error { return document.At(name, data, path, err) }
	switch {
	case e.Wet == nil && e.Dry == nil:
		return e, at("engine", fmt.Errorf("there are neither wet nor dry liners in the file"))
	case e.Wet != nil && e.Wet.StepFrom != "" && e.Wet.StepFrom != "worst" && e.Wet.StepFrom != "mean":
		return e, at("wet.stepFrom", fmt.Errorf("steps count from worst or mean, not %.64q", e.Wet.StepFrom))
	}
	if e.Dry != nil && e.Dry.DropIn != nil {
		d := e.Dry.DropIn
		for _, c := range []struct {
			path, material string
			perK           *float64
		}{{"dry.dropIn.blockMaterial", d.BlockMaterial, &d.BlockPerK}, {"dry.dropIn.linerMaterial", d.LinerMaterial, &d.LinerPerK}} {
			if c.material == "" {
				continue
			}
			x, ok := cylinder.LinerExpansionOf(c.material)
			switch {
			case *c.perK != 0:
				return e, at(c.path, fmt.Errorf("give the material or its coefficient, not both"))
			case !ok:
				return e, at(c.path, fmt.Errorf("no coefficient is known of %.64q: give it per kelvin", c.material))
			}
			*c.perK = x.PerK
		}
	}
	return e, nil
}

func (w wet) bank() cylinder.WetLiners {
	b := cylinder.WetLiners{Protrusion: w.Protrusion.spec(), Step: w.Step.spec(), Variation: w.Variation.spec()}
	if w.StepFrom == "mean" {
		b.Rule = cylinder.MeanStep
	}
	for _, l := range w.Liners {
		b.Liners = append(b.Liners, cylinder.WetLiner{Where: l.Where, Places: l.Places, Shim: l.Shim})
	}
	return b
}

func (w wet) stock() (s []cylinder.StockShim) {
	for _, x := range w.Shims {
		s = append(s, cylinder.StockShim{Name: x.Name, Thickness: x.Thickness})
	}
	return s
}

func (d dry) liner(i int) cylinder.DryLiner {
	l := d.Liners[i]
	return cylinder.DryLiner{Where: l.Where, Bores: l.Bores, Liners: l.Outsides, Limits: d.Interference.spec(),
		Inside: d.Inside, Outside: d.Outside, Liner: d.Liner, Block: d.Block, Length: d.Length, Friction: d.Friction, BlockMax: d.BlockMaxMPa}
}

// fit is the worst pair of liner and bore, to drop in.
func (d dry) fit(i int) cylinder.DropIn {
	bore, _ := tolerance.Extremes(d.Liners[i].Bores...)
	_, outside := tolerance.Extremes(d.Liners[i].Outsides...)
	return cylinder.DropIn{Bore: bore, Liner: outside, Gap: d.DropIn.Gap, MeasuredAt: d.DropIn.MeasuredAt,
		BlockPerK: d.DropIn.BlockPerK, LinerPerK: d.DropIn.LinerPerK}
}
