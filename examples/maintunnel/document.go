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
	Schema     int               `json:"schema"`
	Engine     string            `json:"engine"`
	Caps       cylinder.CapState `json:"caps"`
	Levels     []string          `json:"levels"`
	Directions []string          `json:"directions"`
	Size       limits            `json:"size"`
	Ovality    limits            `json:"ovality,omitzero"`
	Taper      limits            `json:"taper,omitzero"`
	Housings   []struct {
		Where string      `json:"where"`
		Sizes [][]reading `json:"sizes"` // a row for each level
	} `json:"housings"`
	Line *line `json:"line,omitempty"`
	Hone *hone `json:"hone,omitempty"`
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

// reading is a bracket, or "" where nothing was read.
type reading struct{ tolerance.Bracket }

// UnmarshalText reads a bracket or an empty text.
func (r *reading) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		r.Bracket = tolerance.Bracket{}
		return nil
	}
	return r.Bracket.UnmarshalText(text)
}

// line is what was read along the tunnel.
type line struct {
	By        string `json:"by"` // "heights" or "blades"
	Level     bool   `json:"level,omitzero"`
	Straight  limits `json:"straight"`
	Neighbour limits `json:"neighbour,omitzero"`
	Step      limits `json:"step,omitzero"`
	Saddles   []struct {
		Where   string            `json:"where"`
		At      units.Length      `json:"at"`
		Reading tolerance.Bracket `json:"reading"` // a height, or the gap under the edge
	} `json:"saddles"`
}

// hone is what a line hone is to reach.
type hone struct {
	Finish   units.Length   `json:"finish"`
	LeastCut units.Length   `json:"leastCut"`
	Rise     tolerance.Band `json:"rise,omitzero"`
	Deck     units.Length   `json:"deck,omitzero"` // of the piston below the block face now
	Housings []struct {
		Where string            `json:"where"`
		Crown tolerance.Bracket `json:"crown"`
		Size  tolerance.Bracket `json:"size"`
	} `json:"housings"`
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path string, err error) error { return document.At(name, data, path, err) }
	if e.Line == nil {
		return e, nil
	}
	if e.Line.By != "blades" && e.Line.By != "heights" {
		return e, at("line.by", fmt.Errorf("a line is read by blades or heights, not %.64q", e.Line.By))
	}
	for i, s := range e.Line.Saddles {
		if lo, end := s.Reading.Lower(); e.Line.By == "blades" && (end == tolerance.Absent || lo < 0) {
			return e, at(fmt.Sprintf("line.saddles[%d].reading", i), fmt.Errorf("a gap under a straight-edge is 0 mm or more, not %v", s.Reading))
		}
	}
	return e, nil
}

func (e engine) tunnel() cylinder.MainTunnel {
	t := cylinder.MainTunnel{Caps: e.Caps, Levels: e.Levels, Directions: e.Directions, Size: e.Size.spec(), Ovality: e.Ovality.spec(), Taper: e.Taper.spec()}
	for _, h := range e.Housings {
		one := cylinder.Housing{Where: h.Where}
		for _, row := range h.Sizes {
			var sizes []tolerance.Bracket
			for _, r := range row {
				sizes = append(sizes, r.Bracket)
			}
			one.Sizes = append(one.Sizes, sizes)
		}
		t.Housings = append(t.Housings, one)
	}
	return t
}

func (l line) tunnelLine() cylinder.TunnelLine {
	t := cylinder.TunnelLine{Straight: l.Straight.spec(), Neighbour: l.Neighbour.spec(), Step: l.Step.spec(), Level: l.Level}
	for _, s := range l.Saddles {
		h := s.Reading
		if l.By == "blades" {
			h = cylinder.SaddleHeight(tolerance.Exactly(units.Length(0)), h)
		}
		t.Saddles = append(t.Saddles, cylinder.Saddle{Where: s.Where, At: s.At, Height: h})
	}
	return t
}

func (h hone) lineHone() cylinder.LineHone {
	l := cylinder.LineHone{Finish: h.Finish, LeastCut: h.LeastCut, Rise: h.Rise}
	for _, x := range h.Housings {
		l.Housings = append(l.Housings, cylinder.HonedHousing{Where: x.Where, Crown: x.Crown, Size: x.Size})
	}
	return l
}
