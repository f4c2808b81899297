package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// judged is a face with what follows.
type judged struct {
	head
	set    feeler.Set
	byEdge *cylinder.FaceReport // one of the two
	byGrid *cylinder.GridReport
}

// placed is an error with the path to where it lies in the document.
type placed struct {
	path string
	err  error
}

func (p placed) Error() string { return p.err.Error() }
func (p placed) Unwrap() error { return p.err }

// inspect reads a file and judges its face. An error names the line and the
// field.
func inspect(name string, data []byte) (judged, error) {
	var j judged
	if _, err := document.SchemaNamed(name, data, 1); err != nil {
		return j, err
	}
	if err := document.DecodeNamed(name, data, &j.head); err != nil {
		return j, err
	}
	err := j.judge()
	var p placed
	if errors.As(err, &p) {
		err = document.At(name, data, p.path, p.err)
	} else if err != nil {
		err = fmt.Errorf("%s: %w", name, err)
	}
	return j, err
}

func (j *judged) judge() error {
	if (len(j.Lines) > 0) == (j.Heights != nil) {
		return placed{"", errors.New("give either lines, by straight-edge, or heights")}
	}
	if err := j.bladeSet(); err != nil {
		return err
	}
	tunnel, err := j.camTunnel()
	if err != nil {
		return err
	}
	if j.Heights != nil {
		grid, err := j.grid(tunnel)
		if err != nil {
			return err
		}
		r, err := grid.Assess()
		j.byGrid = &r
		return err
	}
	lines, err := j.lines()
	if err != nil {
		return err
	}
	r, err := cylinder.Face{Where: j.Part, Lines: lines, Limits: j.Limits.face(), Tunnel: tunnel}.Assess()
	j.byEdge = &r
	return err
}

// bladeSet is the set that the file names, or its own.
func (j *judged) bladeSet() (err error) {
	switch {
	case len(j.OwnBlades) > 0:
		if j.set, err = feeler.NewSet(j.Part, "the file", j.OwnBlades...); err != nil {
			return placed{"ownBlades", err}
		}
		return nil
	case j.Blades == "" && j.Heights != nil && (j.Tunnel == nil || j.Tunnel.Tried == ""):
		return nil // nothing was tried with blades
	}
	var names []string
	for _, set := range feeler.StandardSets() {
		if set.Name() == j.Blades {
			j.set = set
			return nil
		}
		names = append(names, set.Name())
	}
	return placed{"blades", fmt.Errorf("no set is called %q: write %s, or list ownBlades", j.Blades, strings.Join(names, ", "))}
}

// bracket is what blades say that were tried at a place.
func (j *judged) bracket(path, tried string) (tolerance.Bracket, error) {
	trials, err := j.set.ParseTrials(tried)
	if err != nil {
		return tolerance.Bracket{}, placed{path, err}
	}
	b, err := feeler.Bracket(trials...)
	if err != nil {
		return b, placed{path, err}
	}
	return b, nil
}

func (j *judged) lines() (lines []cylinder.Line, err error) {
	for i, l := range j.Lines {
		path := fmt.Sprintf("lines[%d]", i)
		line := cylinder.Line{Name: l.Name, Direction: l.Direction, Seat: l.Seat}
		if n := len(l.Ends); n != 0 && n != len(line.Ends) {
			return nil, placed{path + ".ends", fmt.Errorf("a straight-edge has 2 ends, not %d", n)}
		}
		for k, tried := range l.Ends {
			if line.Ends[k], err = j.bracket(fmt.Sprintf("%s.ends[%d]", path, k), tried); err != nil {
				return nil, err
			}
		}
		for k, g := range l.Gaps {
			b, err := j.bracket(fmt.Sprintf("%s.gaps[%d].tried", path, k), g.Tried)
			if err != nil {
				return nil, err
			}
			line.Gaps = append(line.Gaps, cylinder.Gap{At: g.At, Gap: b, Over: g.Over})
		}
		lines = append(lines, line)
	}
	return lines, nil
}

func (j *judged) grid(t cylinder.CamTunnel) (cylinder.FaceGrid, error) {
	g := cylinder.FaceGrid{
		Where: j.Part, Error: j.Heights.Error, Flat: j.Limits.Flatness.spec(), Limits: j.Limits.face(), Tunnel: t,
		Grid: form.Grid{StepX: j.Heights.StepLengthwise, StepY: j.Heights.StepAcross},
	}
	for i, row := range j.Heights.Rows {
		if i == 0 {
			g.Grid.Columns = len(row)
		}
		if len(row) != g.Grid.Columns {
			return g, placed{fmt.Sprintf("heights.rows[%d]", i), fmt.Errorf("%d heights, where the first row has %d", len(row), g.Grid.Columns)}
		}
		g.Grid.Heights = append(g.Grid.Heights, row...)
	}
	return g, nil
}

func (j *judged) camTunnel() (t cylinder.CamTunnel, err error) {
	if j.Tunnel == nil {
		return t, nil
	}
	t = cylinder.CamTunnel{InHead: true, Limits: j.Tunnel.Limit.spec()}
	if j.Tunnel.Tried != "" {
		t.Bow, err = j.bracket("camTunnel.tried", j.Tunnel.Tried)
	}
	return t, err
}

func (s spec) spec() tolerance.Spec { return tolerance.Spec{New: s.New.BandOf, Wear: s.Wear.BandOf} }

func (l limits) face() cylinder.FaceLimits {
	f := cylinder.FaceLimits{Overall: l.Overall.spec(), Lengthwise: l.Lengthwise.spec(), Across: l.Across.spec(), Diagonal: l.Diagonal.spec()}
	for _, o := range l.Local {
		f.Local = append(f.Local, cylinder.LocalLimit{Over: o.Over, Limit: o.Limit.spec()})
	}
	return f
}

// build is the engine whose ratio a skim changes.
func (e engine) build() cylinder.Build {
	return cylinder.Build{Bore: e.Bore, Stroke: e.Stroke, Chamber: e.Chamber, Gasket: cylinder.Gasket{Bore: e.GasketBore, Thickness: e.Gasket},
		Deck: e.Deck, Crown: cylinder.Crown{Dish: e.Dish, Dome: e.Dome}, OpenAreaMM2: e.OpenAreaMM2}
}

// skimmed is the engine after a skim: of the head where the chamber's open
// area is given, else of the block face.
func (e engine) skimmed(off units.Length) (cylinder.Build, error) {
	if e.OpenAreaMM2 > 0 {
		return e.build().HeadSkimmed(tolerance.Exactly(off))
	}
	return e.build().BlockSkimmed(tolerance.Exactly(off))
}
