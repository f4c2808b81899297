package piston

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Readings are what was measured and seen of an engine's pistons, rings and
// gudgeon pins: the document of readings, schema 1. A reading that is absent,
// or "", is still to be taken.
//
//	{"schema": 1, "pistons": [
//	  {"piston": 1, "mark": "1", "arrow": "front", "skirt": [{"across": "85.964 mm"}],
//	   "rings": [{"sideClearance": [{"tried": ".002 in drag, .0025 in refused"}]}]}]}
//
// The pistons may stand in any order, each with its number; the lists in them
// are in the order of the limits. [ReadReadings] reads it, [Limits.Blank] gives
// one to fill in.
type Readings struct {
	Schema  int              `json:"schema"`            // 1
	Pistons []ReadingsPiston `json:"pistons,omitempty"` // each with its rings and its pin
	// Bores are the cylinders' sizes as they are and as they will be. Where
	// the bores have a document of their own they come from there: see
	// ReadingsBore.Elsewhere.
	Bores []ReadingsBore `json:"bores,omitempty"`
}

// A ReadingsPiston is one piston with what belongs to it.
type ReadingsPiston struct {
	Piston    int                  `json:"piston"`             // the number of the cylinder that it stands in, from 1
	Mark      string               `json:"mark,omitempty"`     // the number on it
	Arrow     string               `json:"arrow,omitempty"`    // where the mark on its crown points: "front"
	Condition inspection.Condition `json:"condition,omitzero"` // of the piston
	Skirt     []ReadingsSkirt      `json:"skirt,omitempty"`    // a place for each of the limits' heights
	Pulls     [][]PullTrial        `json:"pulls,omitempty"`    // for each of the limits' places the pulls of a strip there
	Rings     []ReadingsRing       `json:"rings,omitempty"`    // a place for each of the limits' rings
	Pin       ReadingsPin          `json:"pin,omitzero"`       // its gudgeon pin
	First     inspection.Reading   `json:"first,omitzero"`     // protrusion above one end of the pin's axis; below the block face, below zero
	Second    inspection.Reading   `json:"second,omitzero"`    // and above the other
	Mass      ReadingsMass         `json:"mass,omitzero"`      // complete, as the manual has it weighed
}

// ReadingsMass is a mass on the scale.
type ReadingsMass = inspection.ReadingOf[units.Mass]

// A ReadingsSkirt is a skirt at one height.
type ReadingsSkirt struct {
	Across inspection.Reading `json:"across,omitzero"` // the thrust faces
	Along  inspection.Reading `json:"along,omitzero"`  // the gudgeon pin
}

// A ReadingsRing is one ring with its groove.
type ReadingsRing struct {
	Side      []ReadingsSide     `json:"sideClearance,omitempty"` // a place for each of the limits'
	Height    inspection.Reading `json:"usedHeight,omitzero"`     // of the used ring
	Depth     inspection.Reading `json:"grooveDepth,omitzero"`    // below the land, for the back clearance
	Thickness inspection.Reading `json:"thickness,omitzero"`      // of the ring, radial, for the back clearance
	Land      inspection.Reading `json:"land,omitzero"`           // width of the land that a re-cut takes from
	Top       ReadingsGap        `json:"endGapTop,omitzero"`      // read near the top of the ring's travel
	Bottom    ReadingsGap        `json:"endGapBottom,omitzero"`   // and near its bottom
}

// A ReadingsSide is the side clearance at one place: by blades, or directly,
// or by the groove's width.
type ReadingsSide struct {
	Tried     Tried              `json:"tried,omitempty"`    // ".002 in drag, .0025 in refused"
	Clearance inspection.Reading `json:"clearance,omitzero"` // [0.05 mm, 0.06 mm)
	Width     inspection.Reading `json:"width,omitzero"`     // of the groove, by micrometer
}

// A ReadingsGap is an end gap at one place, the ring square in the bore: by
// blades, or directly.
type ReadingsGap struct {
	Tried Tried              `json:"tried,omitempty"` // "0.35 mm drag, 0.40 mm refused"
	Gap   inspection.Reading `json:"gap,omitzero"`    // 0.38 mm
}

// A ReadingsPin is a gudgeon pin with the holes it runs in: a list for each of
// the limits' sections, and in it one reading for each direction.
type ReadingsPin struct {
	Mark       string                 `json:"mark,omitempty"`       // the number on it
	Condition  inspection.Condition   `json:"condition,omitzero"`   // of the pin
	AtBosses   [][]inspection.Reading `json:"atBosses,omitempty"`   // the pin, where it lies in them
	AtSmallEnd [][]inspection.Reading `json:"atSmallEnd,omitempty"` // the pin, where the rod is
	Bosses     [][]inspection.Reading `json:"bosses,omitempty"`     // of the piston
	SmallEnd   [][]inspection.Reading `json:"smallEnd,omitempty"`   // of the rod
	Between    inspection.Reading     `json:"between,omitzero"`     // the seated circlips
	Length     inspection.Reading     `json:"length,omitzero"`      // of the pin
}

// A ReadingsBore is what is known of a cylinder's bore.
type ReadingsBore struct {
	Cylinder int                  `json:"cylinder"`        // from 1
	Skirt    []inspection.Reading `json:"skirt,omitempty"` // diameters where the skirt runs
	Top      inspection.Reading   `json:"top,omitzero"`    // mean diameter near the top of the rings' travel, where it is worn the most
	Bottom   inspection.Reading   `json:"bottom,omitzero"` // mean diameter near its bottom
	// Oversize names the kit that the bore is to be finished for, of the
	// limits' Kits, and Finish what it will measure then. Without, it stays.
	Oversize string             `json:"oversize,omitempty"`
	Finish   inspection.Reading `json:"finish,omitzero"` // see Oversize
	// Undecided is that what becomes of the bore is still open: no pistons
	// are to be bought for it yet.
	Undecided bool `json:"undecided,omitzero"`
	// Elsewhere is that the bore is measured and asked for in a document of its
	// own. What is missing of it is not listed here, nor is the bore of a
	// cylinder that isn't in the list.
	Elsewhere bool `json:"-"`
}
