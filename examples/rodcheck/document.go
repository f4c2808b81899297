package main

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// set is the file.
type set struct {
	Schema     int               `json:"schema"`
	Engine     string            `json:"engine"`
	Unit       string            `json:"unit,omitempty"`    // of the page: mm or in; mm if left out
	Blades     string            `json:"blades,omitempty"`  // for side clearances and twist that were tried: "metric 20"
	Fixture    fixture           `json:"fixture,omitzero"`  // spans and master
	Directions []string          `json:"directions"`        // of the big ends' diameters
	Planes     []string          `json:"planes"`            // along their bores
	Crankpin   tolerance.Bracket `json:"crankpin,omitzero"` // between the webs
	CrackedCap bool              `json:"crackedCap"`        // the caps were cracked off, not sawn
	Yield      bool              `json:"boltsYield"`        // bolts are tightened to yield
	Limits     limits            `json:"limits,omitzero"`   // the manual's
	Rods       []rod             `json:"rods"`

	unit   units.Unit[units.Length]
	places int
	judged []judged
}

type fixture struct {
	Span      units.Length      `json:"span,omitzero"`      // between the two dials
	TwistSpan units.Length      `json:"twistSpan,omitzero"` // that twist is read over
	Master    tolerance.Bracket `json:"master,omitzero"`    // between centres
	Stroke    units.Length      `json:"stroke,omitzero"`    // of the engine, against slips
}

type limits struct {
	Length   spec         `json:"length,omitzero"` // over the master: "−0.05–0 mm"
	Bend     spec         `json:"bend,omitzero"`
	Twist    spec         `json:"twist,omitzero"`
	Per      units.Length `json:"per,omitzero"` // that the next two are over; 100 mm if left out
	BendPer  spec         `json:"bendPer,omitzero"`
	TwistPer spec         `json:"twistPer,omitzero"`
	Centres  spec         `json:"centres,omitzero"`
	Side     spec         `json:"side,omitzero"`
	Size     spec         `json:"size,omitzero"` // of the big end
	Ovality  spec         `json:"ovality,omitzero"`
	Taper    spec         `json:"taper,omitzero"`
	Stretch  spec         `json:"stretch,omitzero"` // of bolts
	Free     spec         `json:"free,omitzero"`    // length of bolts for use again
	Growth   spec         `json:"growth,omitzero"`  // of bolts
}

type spec struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (s spec) spec() tolerance.Spec { return tolerance.Spec{New: s.New.BandOf, Wear: s.Wear.BandOf} }

type rod struct {
	Where  string              `json:"where"`
	Right  tolerance.Bracket   `json:"right,omitzero"` // dials on the pin
	Left   tolerance.Bracket   `json:"left,omitzero"`
	Twist  string              `json:"twist,omitempty"` // "0.05 ±0.01 mm", or blades: "0.05 mm drag, 0.10 mm refused"
	Widths []tolerance.Bracket `json:"widths,omitempty"`
	Side   []string            `json:"side,omitempty"`   // by blades, at each place
	BigEnd [][]diameter        `json:"bigEnd,omitempty"` // "-" where one was not read
	Bolts  []bolt              `json:"bolts,omitempty"`
}

// diameter is a bracket, or a dash for one that was not read.
type diameter tolerance.Bracket

// UnmarshalText reads a bracket or a dash.
func (d *diameter) UnmarshalText(text []byte) error {
	if string(text) == "-" || string(text) == "–" {
		*d = diameter{}
		return nil
	}
	return (*tolerance.Bracket)(d).UnmarshalText(text)
}

type bolt struct {
	Where     string            `json:"where"`
	Used      bool              `json:"used"`
	AsNew     tolerance.Bracket `json:"asNew,omitzero"`
	Free      tolerance.Bracket `json:"free"`
	Tightened tolerance.Bracket `json:"tightened,omitzero"`
}

// judged is what follows for a rod.
type judged struct {
	check  crank.RodCheck
	rod    *crank.RodReport
	bigEnd *crank.RodBoreReport
	bolts  []crank.BoltReport
}

func read(name string, data []byte) (s set, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s); err != nil {
		return s, err
	}
	if path, err := s.judge(); err != nil {
		where, _ := document.Locate(data, path)
		return s, fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	return s, nil
}

// judge judges all rods. An error comes with its path.
func (s *set) judge() (path string, err error) {
	switch s.Unit {
	case "", "mm":
		s.unit, s.places = units.InMillimetres, 3
	case "in":
		s.unit, s.places = units.InInches, 4
	default:
		return "unit", fmt.Errorf("a page is in mm or in, not %.64q", s.Unit)
	}
	if len(s.Rods) == 0 {
		return "rods", errors.New("no rods")
	}
	for i, r := range s.Rods {
		path := fmt.Sprintf("rods[%d]", i)
		j, err := s.one(r)
		if err != nil {
			return path, err
		}
		s.judged = append(s.judged, j)
	}
	return "", nil
}

func (s *set) one(r rod) (j judged, err error) {
	l := s.Limits
	j.check = crank.RodCheck{
		Where: r.Where, CrackedCap: s.CrackedCap, Right: r.Right, Left: r.Left, Span: s.Fixture.Span, TwistSpan: s.Fixture.TwistSpan,
		Master: s.Fixture.Master, Stroke: s.Fixture.Stroke, Crankpin: s.Crankpin, Widths: r.Widths,
		Limits: crank.RodLimits{Length: l.Length.spec(), Bend: l.Bend.spec(), Twist: l.Twist.spec(), Per: l.Per, BendPer: l.BendPer.spec(), TwistPer: l.TwistPer.spec(), Centres: l.Centres.spec(), Side: l.Side.spec()},
	}
	if r.Twist != "" {
		if j.check.Twist, err = s.read(r.Twist); err != nil {
			return j, fmt.Errorf("twist: %w", err)
		}
	}
	for _, tried := range r.Side {
		b, err := s.read(tried)
		if err != nil {
			return j, fmt.Errorf("side: %w", err)
		}
		j.check.Side = append(j.check.Side, b)
	}
	if !r.Right.IsZero() || !r.Left.IsZero() || r.Twist != "" || len(r.Side) > 0 || len(r.Widths) > 0 {
		report, err := j.check.Assess()
		if err != nil {
			return j, err
		}
		j.rod = &report
	}
	if len(r.BigEnd) > 0 {
		sizes := make([][]tolerance.Bracket, len(r.BigEnd))
		for i, row := range r.BigEnd {
			for _, d := range row {
				sizes[i] = append(sizes[i], tolerance.Bracket(d))
			}
		}
		report, err := crank.RodBore{Where: r.Where + ", big end", Planes: s.Planes, Directions: s.Directions, Sizes: sizes, Size: l.Size.spec(), Ovality: l.Ovality.spec(), Taper: l.Taper.spec()}.Assess()
		if err != nil {
			return j, err
		}
		j.bigEnd = &report
	}
	for _, b := range r.Bolts {
		report, err := crank.BoltCheck{Where: r.Where + ", " + b.Where, Yield: s.Yield, Used: b.Used, AsNew: b.AsNew, Free: b.Free, Tightened: b.Tightened, Stretch: l.Stretch.spec(), Length: l.Free.spec(), Growth: l.Growth.spec()}.Assess()
		if err != nil {
			return j, err
		}
		j.bolts = append(j.bolts, report)
	}
	if j.rod == nil && j.bigEnd == nil && len(j.bolts) == 0 {
		return j, fmt.Errorf("nothing was read of %.64q", r.Where)
	}
	return j, nil
}

// read is a bracket as it is written, or what blades say that were tried.
func (s *set) read(text string) (tolerance.Bracket, error) {
	if b, err := tolerance.ParseBracket(text); err == nil || s.Blades == "" {
		return b, err
	}
	for _, set := range feeler.StandardSets() {
		if set.Name() == s.Blades {
			trials, err := set.ParseTrials(text)
			if err != nil {
				return tolerance.Bracket{}, err
			}
			return feeler.Bracket(trials...)
		}
	}
	return tolerance.Bracket{}, fmt.Errorf("no set of blades is called %.64q", s.Blades)
}
