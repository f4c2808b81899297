package crank

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A ThrustStep is one line of a manual's table of thrust washers.
type ThrustStep struct {
	Name      string         `json:"name"`               // "standard", ".005 in oversize"
	Float     tolerance.Band `json:"float"`              // the end float that it is for, over standard washers
	Oversize  units.Length   `json:"oversize"`           // of each side over standard
	Thickness tolerance.Band `json:"thickness,omitzero"` // of a new washer; zero where the table gives none
	Replace   bool           `json:"replace,omitempty"`  // no washer does: replace or recondition the shaft
}

// A ThrustTable is a manual's table that names a thrust washer for an end float.
// The float that it is entered with is the one over standard washers, which is
// [EndFloatWith] of the one measured: the washers that came out are worn.
type ThrustTable struct {
	Source string       `json:"source"` // the manual
	Total  units.Length `json:"total"`  // the washers of both sides that the table counts as standard
	Steps  []ThrustStep `json:"steps"`  // in order of float
}

// PublishedThrustTable is the four-step choice of US Army TM 5-4210-233-14&P-2,
// p. 6-152, for one engine. As printed it leaves out .016 in itself and what
// lies between .016 and .017 in, and between .026 and .027 in. It counts two
// washers of the greatest new thickness, .122 in each, as standard; thinner
// ones, down to .119 in, leave up to .006 in more float than the table thinks,
// so that new washers are to be measured ([ThrustFit]).
func PublishedThrustTable() ThrustTable {
	thou := func(lo, hi int64) tolerance.Band {
		return tolerance.MustBetween(units.Length(lo)*units.Thou, units.Length(hi)*units.Thou)
	}
	return ThrustTable{
		Source: "US Army TM 5-4210-233-14&P-2, p. 6-152",
		Total:  244 * units.Thou,
		Steps: []ThrustStep{
			{Name: "standard", Float: tolerance.LessThan(16 * units.Thou), Thickness: thou(119, 122)},
			{Name: ".005 in oversize", Float: thou(17, 26), Oversize: 5 * units.Thou, Thickness: thou(124, 127)},
			{Name: ".010 in oversize", Float: thou(27, 36), Oversize: 10 * units.Thou, Thickness: thou(129, 132)},
			{Name: "replace the crankshaft", Float: tolerance.MoreThan(36 * units.Thou), Replace: true},
		},
	}
}

// A ThrustPick is a step that a table names, or may name, and the float that
// its washers would give.
type ThrustPick struct {
	Step  ThrustStep        `json:"step"`           // as the table has it
	Float tolerance.Bracket `json:"float,omitzero"` // with new washers of its thickness; zero where none is known
}

// A ThrustChoice is what a table says of an end float.
type ThrustChoice struct {
	Float tolerance.Bracket `json:"float"` // over standard washers
	// Picks is one step where the table decides, else every one that it may
	// mean, in the order of the table.
	Picks   []ThrustPick `json:"picks"`
	Decided bool         `json:"decided"` // one step, for certain
	Gap     bool         `json:"gap"`     // the float lies, or may lie, where the table names none
	// Pinched reports that over standard washers the float would, or may, be
	// nothing or less, which no table says: a shaft must not be pinched.
	Pinched bool   `json:"pinched,omitempty"`
	Settle  string `json:"settle,omitempty"` // what to do where it isn't decided
}

// Choose reads the table for an end float measured over washers of a thickness,
// both sides together. Where the float lies in a gap of the table, or a bracket
// reaches into one, the neighbours on both sides are named and none is chosen.
//
// It fails with an [InputError] where the table has no steps, or they overlap or
// are out of order, and where a reading can't be.
func (t ThrustTable) Choose(float, in tolerance.Bracket) (ThrustChoice, error) {
	if err := t.check(); err != nil {
		return ThrustChoice{}, err
	}
	if err := floatBracket("end float", float); err != nil {
		return ThrustChoice{}, err
	}
	if err := thickBracket("thrust washers, both sides", in); err != nil {
		return ThrustChoice{}, err
	}
	c := ThrustChoice{Float: EndFloatWith(float, in, tolerance.Exactly(t.Total))}
	below, above := -1, len(t.Steps) // the nearest steps that it is surely beyond
	for i, s := range t.Steps {
		switch s.Float.Judge(c.Float) {
		case tolerance.Above:
			below = i
		case tolerance.Below:
			above = min(above, i)
		case tolerance.Within:
			c.Decided = true
		}
	}
	first, last := below+1, above-1
	if !c.Decided {
		// What of the float isn't within the steps that it meets lies in a gap,
		// or beyond the table.
		met := first <= last
		if !met || !reachesDown(t.Steps[first].Float, c.Float) {
			first, c.Gap = max(below, 0), true
		}
		if !met || !reachesUp(t.Steps[last].Float, c.Float) {
			last, c.Gap = min(above, len(t.Steps)-1), true
		}
		c.Gap = c.Gap || t.gapWithin(first, last)
	}
	for _, s := range t.Steps[first : last+1] {
		c.Picks = append(c.Picks, t.pick(s, c.Float))
	}
	if !c.Decided {
		c.Settle = t.settle(c)
	}
	lo, _ := c.Float.Lower()
	c.Pinched = lo <= 0
	return c, nil
}

// pick is a step with the float that its washers leave.
func (t ThrustTable) pick(s ThrustStep, float tolerance.Bracket) ThrustPick {
	p := ThrustPick{Step: s}
	if !s.Replace && !s.Thickness.IsZero() {
		p.Float = EndFloatWith(float, tolerance.Exactly(t.Total), s.Thickness.Interval().Scale(2, 1))
	}
	return p
}

// settle says what decides between the picks.
func (t ThrustTable) settle(c ThrustChoice) string {
	names := make([]string, len(c.Picks))
	for i, p := range c.Picks {
		names[i] = p.Step.Name
	}
	both := strings.Join(names, " or ")
	if c.Gap {
		return "the table names no step for the whole of " + c.Float.String() + ": it may mean " + both +
			"; measure the new washers and take the pair whose float is within the manual's limits, or ask the engine maker"
	}
	return "the reading doesn't tell " + both + " apart: measure the float and the washers more finely"
}

// gapWithin reports whether two steps that follow each other leave values out.
func (t ThrustTable) gapWithin(first, last int) bool {
	for i := first; i < last; i++ {
		hi, hiEnd := t.Steps[i].Float.Upper()
		lo, loEnd := t.Steps[i+1].Float.Lower()
		if lo > hi || hiEnd == tolerance.Open && loEnd == tolerance.Open {
			return true
		}
	}
	return false
}

// reachesDown reports whether no part of x lies below a band, reachesUp whether
// none lies above it.
func reachesDown(b tolerance.Band, x tolerance.Bracket) bool {
	lo, loEnd := b.Lower()
	at, end := x.Lower()
	return loEnd == tolerance.Absent || end != tolerance.Absent &&
		(at > lo || at == lo && (loEnd == tolerance.Closed || end == tolerance.Open))
}

func reachesUp(b tolerance.Band, x tolerance.Bracket) bool {
	hi, hiEnd := b.Upper()
	at, end := x.Upper()
	return hiEnd == tolerance.Absent || end != tolerance.Absent &&
		(at < hi || at == hi && (hiEnd == tolerance.Closed || end == tolerance.Open))
}

func (t ThrustTable) check() error {
	if len(t.Steps) == 0 {
		return &InputError{"thrust washer table", "with no steps", "a table of one step at least"}
	}
	if t.Total <= 0 || t.Total > farthest {
		return &InputError{"standard thrust washers, both sides", t.Total.String(), "above 0 mm and at most 10 m"}
	}
	for i, s := range t.Steps {
		name := fmt.Sprint("thrust washer table, step ", i+1)
		if !s.Float.InRange() || s.Float.IsZero() {
			return &InputError{name, s.Float.String(), "a band of end float"}
		}
		if s.Oversize < 0 || s.Oversize > farthest {
			return &InputError{name + ", oversize", s.Oversize.String(), "0 mm or more, and at most 10 m"}
		}
		if !s.Thickness.IsZero() {
			if err := thickBracket(name+", thickness", s.Thickness.Interval()); err != nil {
				return err
			}
		}
		if i == 0 {
			continue
		}
		hi, hiEnd := t.Steps[i-1].Float.Upper()
		lo, loEnd := s.Float.Lower()
		if hiEnd == tolerance.Absent || loEnd == tolerance.Absent || lo < hi || lo == hi && hiEnd == tolerance.Closed && loEnd == tolerance.Closed {
			return &InputError{name, s.Float.String(), "above the step before it"}
		}
	}
	return nil
}
