package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Limits are what the manual and the shop give for an engine's pistons, their
// rings and their gudgeon pins: the document of limits, schema 1. What isn't in
// it isn't asked for.
//
//	{"schema": 1, "pistons": 4, "arrow": "front",
//	 "skirt": {"heights": ["18 mm"], "measuringHeight": "18 mm", "size": {"wear": "min 85.93 mm"}},
//	 "rings": [{"name": "top", "sideClearance": {"new": "0.03–0.07 mm", "wear": "max 0.15 mm"}}]}
//
// [ReadLimits] reads it, [Limits.Blank] is the readings document that goes with
// it, and [Limits.Prepare] makes it ready for many engines.
type Limits struct {
	Schema  int    `json:"schema"`          // 1
	Pistons int    `json:"pistons"`         // how many, 1 to 64, each for the cylinder of its number
	Arrow   string `json:"arrow,omitempty"` // where the mark on a crown must point: "front"
	// Standard is the bore that oversizes count from, and Kits are the sizes
	// that new pistons with their rings can be had in.
	Standard units.Length `json:"standardBore,omitzero"`
	Kits     []LimitsKit  `json:"kits,omitempty"` // see Standard
	// Blades names the standard set of feeler blades that was used, for trials
	// written by their marks: "imperial 26". OwnBlades are one's own. With
	// neither, a blade is taken to be as thick as is written.
	Blades     string            `json:"blades,omitempty"`
	OwnBlades  []feeler.Blade    `json:"ownBlades,omitempty"` // see Blades
	Skirt      *LimitsSkirt      `json:"skirt,omitzero"`      // of each piston
	Rings      []LimitsRing      `json:"rings,omitempty"`     // with their grooves, from the crown down
	NewRings   bool              `json:"newRings,omitzero"`   // fit new ones, whatever the used ones measure
	Pins       *LimitsPins       `json:"pins,omitzero"`       // gudgeon pins, bosses and small ends
	Mass       *LimitsMass       `json:"mass,omitzero"`       // of the set
	Protrusion *LimitsProtrusion `json:"protrusion,omitzero"` // and the head gasket
	Care       inspection.Care   `json:"care,omitzero"`       // of each piston
}

// A LimitsKit is a size that pistons with their rings can be had in.
type LimitsKit struct {
	Name     string         `json:"name"`              // "standard", "+0.50 mm"
	Oversize units.Length   `json:"oversize,omitzero"` // over the standard bore, on the diameter
	Skirt    tolerance.Band `json:"skirt,omitzero"`    // what its skirts measure at the measuring height
}

// LimitsSkirt are those of a piston's skirt, as [SkirtLimits].
type LimitsSkirt struct {
	Heights         []units.Length   `json:"heights"`            // where it is measured, from the lower edge up
	MeasuringHeight units.Length     `json:"measuringHeight"`    // the one of them that the manual states sizes at
	New             []tolerance.Band `json:"new,omitempty"`      // what a new one measures at each height, across the thrust faces
	Size            inspection.Limit `json:"size,omitzero"`      // at the measuring height
	Ovality         inspection.Limit `json:"ovality,omitzero"`   // there; with it a reading along the pin is asked for
	Taper           inspection.Limit `json:"taper,omitzero"`     // wider below is above zero
	Wear            inspection.Limit `json:"wear,omitzero"`      // at the measuring height
	Collapse        inspection.Limit `json:"collapse,omitzero"`  // at the lowest height
	Clearance       inspection.Limit `json:"clearance,omitzero"` // in the bore, by micrometers
	Pulled          inspection.Limit `json:"pulled,omitzero"`    // the same by a pull test
	PullRule        *PullRule        `json:"pullRule,omitzero"`  // that the limits are meant for
	PullAt          []string         `json:"pullAt,omitempty"`   // where the strip is pulled; left out, one place
	Error           units.Length     `json:"error,omitzero"`     // ±, of readings written without one
	With            string           `json:"with,omitempty"`     // the instrument
}

// A LimitsRing are those of one ring and of its groove, the same on every
// piston.
type LimitsRing struct {
	Name string   `json:"name"`          // "top", "second", "oil"
	Kind RingKind `json:"kind,omitzero"` // a compression ring, or an oil control ring assembly

	Side inspection.Limit `json:"sideClearance,omitzero"` // in its groove
	// SideAt are the places round the piston where it is taken; left out, one.
	SideAt []string `json:"sideClearanceAt,omitempty"`
	// ByMicrometer asks for the groove's width at each place and the ring's
	// height, in place of blades.
	ByMicrometer bool           `json:"byMicrometer,omitzero"`
	UsedHeight   bool           `json:"usedHeight,omitzero"`         // ask for the used ring's height, which tells whose the wear is
	NewHeight    tolerance.Band `json:"newHeight,omitzero"`          // of a new ring
	NewWidth     tolerance.Band `json:"newWidth,omitzero"`           // of a new groove
	SideWith     string         `json:"sideClearanceWith,omitempty"` // the instrument

	Back inspection.Limit `json:"backClearance,omitzero"` // behind the ring, its face flush with the land
	Land inspection.Limit `json:"land,omitzero"`          // width of the land that a re-cut takes from
	// Spacers are those that can be had for a re-cut groove, Cut the least that
	// makes worn faces flat and square, and LeastLand what must be left.
	Spacers   []Spacer     `json:"spacers,omitempty"`
	Cut       units.Length `json:"cut,omitzero"`       // see Spacers
	LeastLand units.Length `json:"leastLand,omitzero"` // see Spacers

	Gap inspection.Limit `json:"endGap,omitzero"` // in its bore
	// GapAt are the places of the ring's travel where it is read: "top",
	// "bottom". Left out, at the bottom; the bore's diameters carry it to the
	// other.
	GapAt     []string       `json:"endGapAt,omitempty"`
	NewGap    tolerance.Band `json:"newGap,omitzero"`      // of a new ring in a bore of its nominal size
	Thickness units.Length   `json:"thickness,omitzero"`   // radial, when new
	GapWith   string         `json:"endGapWith,omitempty"` // the instrument
	Error     units.Length   `json:"error,omitzero"`       // ±, of micrometer readings and gaps written without one
}

// LimitsPins are those of gudgeon pins, as [PinLimits], and of what they run
// in: the pistons' bosses and the rods' small ends.
type LimitsPins struct {
	Fit         PinFit   `json:"fit"`                  // in the small end
	Bush        bool     `json:"bush,omitzero"`        // whether a small end has one that can be renewed
	WithPistons bool     `json:"withPistons,omitzero"` // new pistons come with their pins
	Directions  []string `json:"directions,omitempty"` // in which each section is read; left out, one
	AtBosses    []string `json:"atBosses,omitempty"`   // sections of the pin
	AtSmallEnd  []string `json:"atSmallEnd,omitempty"` // sections of the pin
	Bosses      []string `json:"bosses,omitempty"`     // sections of the bosses
	SmallEnd    []string `json:"smallEnd,omitempty"`   // sections of the small end

	Size                 inspection.Limit `json:"size,omitzero"`                 // of the pin
	Ovality              inspection.Limit `json:"ovality,omitzero"`              // of the pin
	Taper                inspection.Limit `json:"taper,omitzero"`                // of the pin
	Wear                 inspection.Limit `json:"wear,omitzero"`                 // of the pin
	BossOvality          inspection.Limit `json:"bossOvality,omitzero"`          // of the bosses
	BossTaper            inspection.Limit `json:"bossTaper,omitzero"`            // of the bosses
	BossWear             inspection.Limit `json:"bossWear,omitzero"`             // of the bosses
	BossClearance        inspection.Limit `json:"bossClearance,omitzero"`        // of the pin in them
	SmallEndOvality      inspection.Limit `json:"smallEndOvality,omitzero"`      // of the small end
	SmallEndTaper        inspection.Limit `json:"smallEndTaper,omitzero"`        // of the small end
	SmallEndWear         inspection.Limit `json:"smallEndWear,omitzero"`         // of the small end
	SmallEndClearance    inspection.Limit `json:"smallEndClearance,omitzero"`    // of a floating pin
	SmallEndInterference inspection.Limit `json:"smallEndInterference,omitzero"` // of a pressed pin
	EndFloat             inspection.Limit `json:"endFloat,omitzero"`             // of a floating pin between its circlips

	NewPin      tolerance.Band  `json:"newPin,omitzero"`      // size
	NewBoss     tolerance.Band  `json:"newBoss,omitzero"`     // size
	NewSmallEnd tolerance.Band  `json:"newSmallEnd,omitzero"` // size, bush and all
	Error       units.Length    `json:"error,omitzero"`       // ±, of readings written without one
	With        string          `json:"with,omitempty"`       // the instrument for the pin
	HoleWith    string          `json:"holeWith,omitempty"`   // and that for bosses and small ends
	Care        inspection.Care `json:"care,omitzero"`        // of each pin
}

// LimitsMass are those of the set's masses.
type LimitsMass struct {
	Spread  inspection.LimitOf[units.Mass] `json:"spread,omitzero"`  // the greatest less the least
	MostOff units.Mass                     `json:"mostOff,omitzero"` // that may be taken from one piston
	Error   units.Mass                     `json:"error,omitzero"`   // ±, of readings written without one
	With    string                         `json:"with,omitempty"`   // the instrument
}

// LimitsProtrusion are those of the pistons' protrusion above the block face,
// and the head gaskets that go with it.
type LimitsProtrusion struct {
	Table     GasketTable      `json:"table,omitempty"`    // the engine maker's
	Limit     inspection.Limit `json:"limit,omitzero"`     // of the mean of two points
	Tilt      inspection.Limit `json:"tilt,omitzero"`      // between the two points of one piston
	Clearance inspection.Limit `json:"clearance,omitzero"` // of the piston to the head's face
	Error     units.Length     `json:"error,omitzero"`     // ±, of readings written without one
	With      string           `json:"with,omitempty"`     // the instrument
}
