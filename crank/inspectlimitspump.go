package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// LimitsPump is what is asked of the oil pump, as [Pump] and [ReliefSpring] have it.
type LimitsPump struct {
	Care      inspection.Care   `json:"care,omitzero"`      // what the maker orders of a pump that is scored or cracked
	Kind      PumpKind          `json:"kind,omitzero"`      // how it is built
	Tip       inspection.Limit  `json:"tip,omitzero"`       // tip clearance
	Body      inspection.Limit  `json:"body,omitzero"`      // outer rotor or gear to the body
	Side      inspection.Limit  `json:"side,omitzero"`      // end clearance
	Backlash  inspection.Limit  `json:"backlash,omitzero"`  // between the teeth
	Cover     inspection.Limit  `json:"cover,omitzero"`     // depth of the cover's wear
	Shaft     inspection.Limit  `json:"shaft,omitzero"`     // shaft in its bush
	Plunger   inspection.Limit  `json:"plunger,omitzero"`   // relief valve's plunger in its bore
	Gasket    tolerance.Bracket `json:"gasket,omitzero"`    // compressed, where the end clearance is meant with it
	CoverWear bool              `json:"coverWear,omitzero"` // the end clearance is meant with the cover's wear
	NewWidth  tolerance.Band    `json:"newWidth,omitzero"`  // of new gears; then those in it are measured too
	Relief    LimitsRelief      `json:"relief,omitzero"`    // relief valve's spring
}

// LimitsRelief is what is asked of the relief valve's spring.
type LimitsRelief struct {
	Free      inspection.Limit                   `json:"free,omitzero"`      // free length
	Height    units.Length                       `json:"height,omitzero"`    // at which the load is read
	Load      inspection.LimitOf[units.Force]    `json:"load,omitzero"`      // at that height
	Installed tolerance.Bracket                  `json:"installed,omitzero"` // height with the valve shut
	Seat      tolerance.Bracket                  `json:"seat,omitzero"`      // diameter that the oil acts on
	Pressure  inspection.LimitOf[units.Pressure] `json:"pressure,omitzero"`  // at which it opens; needs the two above
}

// LimitsBalance is what is asked of masses and balance.
type LimitsBalance struct {
	// BigEnds, SmallEnds and Rods are what the masses of the rods' ends, and of
	// whole rods, may differ by over the set.
	BigEnds   inspection.LimitOf[units.Mass] `json:"bigEnds,omitzero"`
	SmallEnds inspection.LimitOf[units.Mass] `json:"smallEnds,omitzero"` // said with BigEnds
	Rods      inspection.LimitOf[units.Mass] `json:"rods,omitzero"`      // said with BigEnds
	// Bobweight is what the manual prints for one crankpin, by Factor of the
	// reciprocating mass and with Oil on the pin.
	Bobweight inspection.LimitOf[units.Mass] `json:"bobweight,omitzero"`
	Factor    tolerance.Ratio                `json:"factor,omitzero"` // from 0 to 1
	Oil       BobweightMass                  `json:"oil,omitzero"`    // an allowance
	// Rotor is the shaft as it is spun, without readings: its grade, its speed and
	// its planes.
	Rotor *UnbalanceRotor `json:"rotor,omitempty"`
}
