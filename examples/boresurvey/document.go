package main

import (
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// engine is the file: the gauge, the limits, and what was read.
type engine struct {
	Schema     int                   `json:"schema"`
	Engine     string                `json:"engine"`
	Gauge      instrument.Instrument `json:"gauge"`
	Block      instrument.Thermal    `json:"block,omitzero"`
	Directions []units.Angle         `json:"directions"`
	Limits     limits                `json:"limits"`
	Cylinders  []bore                `json:"cylinders"`
}

// limit is what the manual prints for one measure.
type limit struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limit) spec() tolerance.Spec { return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf} }

type limits struct {
	Size       limit `json:"size,omitzero"`
	Mean       limit `json:"mean,omitzero"`
	OutOfRound limit `json:"outOfRound,omitzero"`
	Taper      struct {
		New  tolerance.Printed  `json:"new,omitzero"`
		Wear tolerance.Printed  `json:"wear,omitzero"`
		Rule cylinder.TaperRule `json:"rule"`
		Per  units.Length       `json:"per,omitzero"`
	} `json:"taper,omitzero"`
	Wear  limit `json:"wear,omitzero"`
	Choke limit `json:"choke,omitzero"`
	Ridge struct {
		New     tolerance.Printed  `json:"new,omitzero"`
		Wear    tolerance.Printed  `json:"wear,omitzero"`
		Counted cylinder.RidgeSide `json:"counted"`
	} `json:"ridge,omitzero"`
	TorquePlate cylinder.Recorded `json:"torquePlate,omitzero"`
	CapsTorqued cylinder.Recorded `json:"capsTorqued,omitzero"`
}

func (l limits) limits() cylinder.BoreLimits {
	return cylinder.BoreLimits{
		Size: l.Size.spec(), Mean: l.Mean.spec(), OutOfRound: l.OutOfRound.spec(), Wear: l.Wear.spec(), Choke: l.Choke.spec(),
		Taper: limit{l.Taper.New, l.Taper.Wear}.spec(), TaperRule: l.Taper.Rule, TaperPer: l.Taper.Per,
		Ridge: limit{l.Ridge.New, l.Ridge.Wear}.spec(), RidgeCounted: l.Ridge.Counted,
		TorquePlate: l.TorquePlate, CapsTorqued: l.CapsTorqued,
	}
}

// shown is what the gauge showed; a dash is a reading that was not taken.
type shown cylinder.BoreReading

func (s *shown) UnmarshalText(text []byte) error {
	if string(text) == "-" || string(text) == "–" {
		*s = shown{}
		return nil
	}
	x, err := units.ParseLength(string(text))
	*s = shown{x, true}
	return err
}

// bore is what was read in one cylinder.
type bore struct {
	Cylinder    int               `json:"cylinder"`
	Finished    tolerance.Band    `json:"finished,omitzero"` // the size it was last finished to
	Unworn      shown             `json:"unworn,omitzero"`   // read below the ring travel
	Ridge       cylinder.Ridge    `json:"ridge,omitzero"`
	TorquePlate cylinder.Recorded `json:"torquePlate,omitzero"`
	CapsTorqued cylinder.Recorded `json:"capsTorqued,omitzero"`
	Levels      []struct {
		At    string       `json:"at"`
		Depth units.Length `json:"depth,omitzero"`
		Shown []shown      `json:"shown"`
	} `json:"levels"`
}

// row is one cylinder judged.
type row struct {
	number int
	survey cylinder.BoreSurvey
	limits cylinder.BoreLimits
	report cylinder.BoreReport
}

// inspect reads a file and judges every cylinder in it. An error names the line
// and the field.
func inspect(name string, data []byte) (e engine, rows []row, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, nil, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, nil, err
	}
	at := func(path string, err error) error { return document.At(name, data, path, err) }
	if len(e.Cylinders) == 0 {
		return e, nil, at("cylinders", fmt.Errorf("no cylinder was read"))
	}
	l := e.Limits.limits()
	if err := l.Validate(); err != nil {
		return e, nil, at("limits", err)
	}
	seen := map[int]bool{}
	for i, b := range e.Cylinders {
		path := fmt.Sprintf("cylinders[%d]", i)
		switch {
		case b.Cylinder < 1:
			return e, nil, at(path+".cylinder", fmt.Errorf("cylinders count from 1, not %d", b.Cylinder))
		case seen[b.Cylinder]:
			return e, nil, at(path, fmt.Errorf("cylinder %d is there twice", b.Cylinder))
		}
		seen[b.Cylinder] = true
		r := row{number: b.Cylinder, limits: l, survey: cylinder.BoreSurvey{
			Where: fmt.Sprintf("cylinder %d", b.Cylinder), Headings: e.Directions, Gauge: e.Gauge, Block: e.Block,
			Finished: b.Finished.Interval(), Unworn: cylinder.BoreReading(b.Unworn), Ridge: b.Ridge,
			TorquePlate: b.TorquePlate, CapsTorqued: b.CapsTorqued,
		}}
		for k, level := range b.Levels {
			if len(level.Shown) != len(e.Directions) {
				return e, nil, at(fmt.Sprintf("%s.levels[%d].shown", path, k), fmt.Errorf("%d readings for %d directions; write - for one that was not taken", len(level.Shown), len(e.Directions)))
			}
			r.survey.Levels = append(r.survey.Levels, cylinder.BoreLevel{Name: level.At, Depth: level.Depth})
			for _, s := range level.Shown {
				r.survey.Readings = append(r.survey.Readings, cylinder.BoreReading(s))
			}
		}
		if err := r.survey.Inspect(&r.limits, &r.report); err != nil {
			return e, nil, at(path, err)
		}
		rows = append(rows, r)
	}
	return e, rows, nil
}
