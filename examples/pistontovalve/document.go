package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// paper is the file.
type paper struct {
	Schema int               `json:"schema"`
	Engine string            `json:"engine"`
	Throw  tolerance.Bracket `json:"throw"` // half the stroke
	Rod    tolerance.Bracket `json:"rod"`   // between centres
	Offset units.Length      `json:"offset,omitzero"`
	Valves []given           `json:"valves"`
}

// given is one valve over its piston.
type given struct {
	Where       string                          `json:"where"`
	Drop        tolerance.Bracket               `json:"drop"`        // at dead centre, along the valve
	Inclination tolerance.Interval[units.Angle] `json:"inclination"` // of the valve to the bore
	FlatCrown   bool                            `json:"flatCrown,omitzero"`
	LiftError   units.Length                    `json:"liftError,omitzero"`
	TimingError units.Angle                     `json:"timingError,omitzero"`
	Allowance   units.Length                    `json:"allowance,omitzero"` // the user's, for heat and stretch
	Clearance   struct {
		New  tolerance.Printed `json:"new,omitzero"`
		Wear tolerance.Printed `json:"wear,omitzero"`
	} `json:"clearance,omitzero"`
	Wanted units.Length       `json:"wanted,omitzero"` // to ask how far the camshaft may be moved
	Way    valvetrain.LiftWay `json:"way,omitzero"`
	Unit   string             `json:"unit"`   // of the lifts
	Angles string             `json:"angles"` // degrees of the crankshaft between blanks, from top dead centre at overlap
	Lifts  string             `json:"lifts"`  // at the valve, between blanks
	Pocket *struct {
		Diameter tolerance.Bracket `json:"diameter"`
		Head     tolerance.Bracket `json:"head"`
		Beside   tolerance.Bracket `json:"beside"` // the pocket's middle from the valve's axis
	} `json:"pocket,omitempty"`
}

// valve is one that was read and judged.
type valve struct {
	given
	pair   valvetrain.PistonValve
	report valvetrain.PistonValveReport
	room   *valvetrain.PistonValveRoom // nil where not asked, or none was found
	why    string                      // there is no room
}

type engine struct {
	paper
	valves []valve
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e.paper); err != nil {
		return e, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	if len(e.Valves) == 0 {
		return e, at("valves", fmt.Errorf("there is no valve in the file"))
	}
	seen := map[string]bool{}
	for i, g := range e.Valves {
		path := fmt.Sprintf("valves[%d]", i)
		if g.Where == "" || seen[g.Where] {
			return e, at(path+".where", fmt.Errorf("each valve has a name of its own, which %.64q is not", g.Where))
		}
		seen[g.Where] = true
		v := valve{given: g}
		field, err := v.judge(e.paper)
		if err != nil {
			return e, at(path+field, err)
		}
		e.valves = append(e.valves, v)
	}
	return e, nil
}

// judge works one valve out. An error comes with the field that it is in.
func (v *valve) judge(p paper) (field string, err error) {
	table, field, err := v.table()
	if err != nil {
		return field, err
	}
	curve, err := table.Curve()
	if err != nil {
		return ".angles", err
	}
	v.pair = valvetrain.PistonValve{Where: v.Where, Curve: curve, Drop: v.Drop, Inclination: v.Inclination, FlatCrown: v.FlatCrown,
		Throw: p.Throw, Rod: p.Rod, Offset: p.Offset, LiftError: v.LiftError, TimingError: v.TimingError, Allowance: v.Allowance,
		Limits: tolerance.Spec{New: v.Clearance.New.BandOf, Wear: v.Clearance.Wear.BandOf}}
	if v.report, err = v.pair.Inspect(); err != nil {
		return "", err
	}
	if v.Wanted != 0 {
		if room, err := v.pair.Room(v.Wanted); err != nil {
			v.why = err.Error()
		} else {
			v.room = &room
		}
	}
	if v.Pocket != nil {
		radial := valvetrain.PocketClearance(v.Pocket.Diameter, v.Pocket.Head, v.Pocket.Beside)
		if hi, end := radial.Upper(); end == tolerance.Absent || hi < 0 {
			return ".pocket", fmt.Errorf("the head doesn't go in: radial clearance %s", radial)
		}
	}
	return "", nil
}

func (v *valve) table() (t valvetrain.LiftTable, field string, err error) {
	unit, err := units.ParseUnit[units.Length](v.Unit)
	if err != nil {
		return t, ".unit", err
	}
	angles, lifts := strings.Fields(v.Angles), strings.Fields(v.Lifts)
	if len(angles) != len(lifts) {
		return t, ".lifts", fmt.Errorf("%d lifts to %d angles", len(lifts), len(angles))
	}
	t = valvetrain.LiftTable{Side: valvetrain.AtValve, Way: v.Way, Points: make([]valvetrain.LiftPoint, len(angles))}
	for i := range angles {
		if t.Points[i].Angle, err = units.ParseIn(angles[i], units.InDegrees); err != nil {
			return t, ".angles", fmt.Errorf("angle %d: %w", i+1, err)
		}
		if t.Points[i].Lift, err = units.ParseIn(lifts[i], unit); err != nil {
			return t, ".lifts", fmt.Errorf("lift %d: %w", i+1, err)
		}
	}
	return t, "", nil
}
