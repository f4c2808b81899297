package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// table is a lift curve as it was dialled.
type table struct {
	Side      valvetrain.TimingSide `json:"side"`                // where it was dialled
	Way       valvetrain.LiftWay    `json:"way,omitzero"`        // between the points
	Ratio     *tolerance.Ratio      `json:"ratio,omitempty"`     // with it and the clearance a follower's curve is carried to the valve
	Clearance units.Length          `json:"clearance,omitzero"`  // at the valve
	Unit      string                `json:"unit"`                // of the lifts: "mm", "thou"
	Angles    string                `json:"angles"`              // degrees of the crankshaft between blanks, from top dead centre at overlap
	Lifts     string                `json:"lifts"`               // between blanks
	Error     units.Angle           `json:"wheelError,omitzero"` // of the wheel, either way
	Smoothing units.Angle           `json:"smoothing,omitzero"`  // half-width, for velocity and acceleration
}

// curve draws it. An error comes with the field that it is in.
func (t *table) curve() (c valvetrain.LiftCurve, field string, err error) {
	unit, err := units.ParseUnit[units.Length](t.Unit)
	if err != nil {
		return c, "unit", err
	}
	angles, lifts := strings.Fields(t.Angles), strings.Fields(t.Lifts)
	if len(angles) != len(lifts) {
		return c, "lifts", fmt.Errorf("%d lifts to %d angles", len(lifts), len(angles))
	}
	points := make([]valvetrain.LiftPoint, len(angles))
	for i := range angles {
		if points[i].Angle, err = units.ParseIn(angles[i], units.InDegrees); err != nil {
			return c, "angles", fmt.Errorf("angle %d: %w", i+1, err)
		}
		if points[i].Lift, err = units.ParseIn(lifts[i], unit); err != nil {
			return c, "lifts", fmt.Errorf("lift %d: %w", i+1, err)
		}
	}
	if c, err = (valvetrain.LiftTable{Side: t.Side, Way: t.Way, Points: points}).Curve(); err != nil {
		return c, "angles", err
	}
	if t.Ratio != nil {
		if c, err = c.AtValve(*t.Ratio, t.Clearance); err != nil {
			return c, "ratio", err
		}
	}
	return c, "", nil
}
