package cylinder

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Readings are what was measured and seen of a cylinder block and its head: the
// document of readings, schema 1. A reading that is absent, or "", is still to
// be taken.
//
//	{"schema": 1, "cylinders": [
//	  {"cylinder": 1, "levels": [{"along": "86.012 mm", "across": "86.031 mm"},
//	                             {"along": "86.010 mm", "across": ""}]}]}
//
// Its parts may stand in any order, each with its number from 1.
// [ReadReadings] reads it, [Limits.Blank] gives one to fill in.
type Readings struct {
	Schema      int                `json:"schema"`                  // 1
	Conditions  TestConditions     `json:"testConditions,omitzero"` // of the compression and the leakage test
	Block       ReadingsBlock      `json:"block,omitzero"`          // cracks and pressure test
	Faces       []ReadingsBankFace `json:"blockFaces,omitempty"`    // one for each bank
	Caps        CapState           `json:"caps,omitzero"`           // while the main tunnel was read
	Mains       []ReadingsMain     `json:"mains,omitempty"`         // the main bearing housings
	TorquePlate Recorded           `json:"torquePlate,omitzero"`    // while the bores were gauged
	CapsTorqued Recorded           `json:"capsTorqued,omitzero"`    // while the bores were gauged
	Cylinders   []ReadingsCylinder `json:"cylinders,omitempty"`     // with their bores and liners
	Heads       []ReadingsHead     `json:"heads,omitempty"`         // one for each bank
}

// ReadingsBlock is what was seen of the block.
type ReadingsBlock struct {
	Condition inspection.Condition `json:"condition,omitzero"` // cracks, crack test, pressure test
	Thermal   instrument.Thermal   `json:"thermal,omitzero"`   // while the bores were gauged; at 20 °C where left out
}

// ReadingsFace is what was measured of a face.
type ReadingsFace struct {
	Lines   []ReadingsLine         `json:"lines,omitempty"`   // in the order of the limits' lines
	Local   []inspection.Reading   `json:"local,omitempty"`   // the greatest gap under each short straight-edge, in the limits' order
	Grid    [][]inspection.Reading `json:"grid,omitempty"`    // heights, a list for each row; exact values
	Heights []inspection.Reading   `json:"heights,omitempty"` // of the part, in the order of the limits' places
	// OffBefore is what was taken off it before, where the limits ask.
	OffBefore inspection.Reading `json:"offBefore,omitzero"`
}

// ReadingsLine is what blades showed under the straight-edge along one line.
type ReadingsLine struct {
	Seat Seat               `json:"straightEdge,omitzero"` // "rests" on both ends or "rocks"
	Gap  inspection.Reading `json:"gap,omitzero"`          // where it rests: the greatest under it
	// Where it rocks: the gaps under its two ends, both of one setting.
	Front inspection.Reading `json:"front,omitzero"`
	Rear  inspection.Reading `json:"rear,omitzero"` // see Front; on a line across, its right end
}

// ReadingsBankFace is the block face of one bank.
type ReadingsBankFace struct {
	Bank int `json:"bank"` // from 1
	ReadingsFace
}

// ReadingsHead is the head of one bank.
type ReadingsHead struct {
	Bank      int                  `json:"bank"`               // from 1
	Condition inspection.Condition `json:"condition,omitzero"` // cracks, crack test, pressure test
	ReadingsFace
	CamBow inspection.Reading `json:"camBow,omitzero"` // of the tunnel of a camshaft in it
}

// ReadingsMain is one main bearing housing.
type ReadingsMain struct {
	Main      int                  `json:"main"`               // from 1
	Mark      string               `json:"mark,omitempty"`     // stamped on the block; left out, its number
	Cap       string               `json:"cap,omitempty"`      // the mark on the cap that stands there
	Condition inspection.Condition `json:"condition,omitzero"` // of housing and cap
	// Sizes are diameters, a list for each of the limits' levels and in it one
	// for each direction.
	Sizes [][]inspection.Reading `json:"sizes,omitempty"`
	Line  inspection.Reading     `json:"line,omitzero"`  // its height, or the gap under a straight-edge along the tunnel
	Crown inspection.Reading     `json:"crown,omitzero"` // its crown's height, for a line hone
}

// ReadingsCylinder is one cylinder: its tests, its bore, its liner.
type ReadingsCylinder struct {
	Cylinder    int                  `json:"cylinder"`             // from 1
	Condition   inspection.Condition `json:"condition,omitzero"`   // of its bore
	Compression ReadingsCompression  `json:"compression,omitzero"` // before the strip
	Leakage     ReadingsLeakage      `json:"leakage,omitzero"`     // before the strip
	// Oversize is that of the piston that ran in it; the limits of size count
	// from there.
	Oversize units.Length `json:"oversize,omitzero"`
	// Finished is the size that it was last finished to. Left out, it is taken
	// to have been anywhere within the limits of size for new parts.
	Finished inspection.Reading `json:"finished,omitzero"`
	Unworn   inspection.Reading `json:"unworn,omitzero"`  // with the same gauge, below the ring travel
	Ridge    inspection.Reading `json:"ridge,omitzero"`   // counted as the limits do
	Levels   []ReadingsLevel    `json:"levels,omitempty"` // in the order of the limits
	Walls    []BoreWall         `json:"walls,omitempty"`  // dialled from the original axis
	Sonic    []SonicWall        `json:"sonic,omitempty"`  // walls read with an ultrasonic gauge
	// CrossHatch is the angle of the marks, as the limits count it.
	CrossHatch inspection.ReadingOf[units.Angle] `json:"crossHatch,omitzero"`
	Liner      ReadingsLiner                     `json:"liner,omitzero"` // of a block with wet ones
}

// ReadingsLevel is a bore at one of the limits' levels. Readings are exact
// values, as the gauge shows them: its errors stand in the limits.
type ReadingsLevel struct {
	Along  inspection.Reading   `json:"along,omitzero"`   // along the crank
	Across inspection.Reading   `json:"across,omitzero"`  // across the crank
	Angled []inspection.Reading `json:"angled,omitempty"` // in the limits' further directions
}

// ReadingsCompression is what the gauge showed, above the atmosphere.
type ReadingsCompression struct {
	Dry inspection.ReadingOf[units.Pressure] `json:"dry,omitzero"` // as the engine is
	Wet inspection.ReadingOf[units.Pressure] `json:"wet,omitzero"` // with a little oil in
}

// ReadingsLeakage is what the tester showed, above the atmosphere.
type ReadingsLeakage struct {
	Supply    inspection.ReadingOf[units.Pressure] `json:"supply,omitzero"`    // before the orifice
	Held      inspection.ReadingOf[units.Pressure] `json:"held,omitzero"`      // in the cylinder
	Heard     []Heard                              `json:"heard,omitempty"`    // where air escapes
	Neighbour int                                  `json:"neighbour,omitzero"` // the cylinder where it was heard
}

// ReadingsLiner is a wet liner in its place.
type ReadingsLiner struct {
	Mark       string               `json:"mark,omitempty"`       // on the liner: the number of its cylinder
	Protrusion []inspection.Reading `json:"protrusion,omitempty"` // in the order of the limits' places; below zero, below the face
	Shim       inspection.Reading   `json:"shim,omitzero"`        // under it now
}
