package crank

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Readings is what was measured of a crankshaft, its bearings and its rods: the
// document that is inspected. What is left out, or "", is still to be read.
// [Limits.Blank] makes an empty one, [ReadReadings] reads one.
type Readings struct {
	Schema       int               `json:"schema"`                 // 1
	Engine       string            `json:"engine,omitempty"`       // which one
	Shaft        ReadingsShaft     `json:"shaft,omitzero"`         // the crankshaft as a whole
	Mains        []ReadingsJournal `json:"mains,omitempty"`        // main journals
	Crankpins    []ReadingsJournal `json:"crankpins,omitempty"`    // crankpins
	MainBearings []ReadingsBearing `json:"mainBearings,omitempty"` // shells, caps and bolts of the mains
	BigEnds      []ReadingsBearing `json:"bigEnds,omitempty"`      // shells of the big ends, by the rods' numbers
	Rods         []ReadingsRod     `json:"rods,omitempty"`         // connecting rods, with their bolts
	Thrust       ReadingsThrust    `json:"thrust,omitzero"`        // end float and thrust washers
	Balance      ReadingsBalance   `json:"balance,omitzero"`       // the balancing machine's readings
	OilPump      ReadingsPump      `json:"oilPump,omitzero"`       // oil pump and relief valve
}

// ReadingsShaft is what was seen and measured of the whole shaft.
type ReadingsShaft struct {
	Condition inspection.Condition `json:"condition,omitzero"` // cracks, colours of heat, tests made
	// Mains and Crankpins name the undersize that they were last ground to, as the
	// limits name it; the standard size if left out.
	Mains      string             `json:"mains,omitempty"`
	Crankpins  string             `json:"crankpins,omitempty"` // said with Mains
	Thermal    instrument.Thermal `json:"thermal,omitzero"`    // its temperature and expansion; zero at 20 °C
	Nose       inspection.Reading `json:"nose,omitzero"`       // run-out, the dial's whole swing
	Flange     inspection.Reading `json:"flange,omitzero"`     // run-out of the rim
	FlangeFace inspection.Reading `json:"flangeFace,omitzero"` // run-out of the face, the shaft held to one end
}

// ReadingsJournal is what was measured of one journal.
type ReadingsJournal struct {
	Number    int                               `json:"number"`             // from 1, from the front
	Condition inspection.Condition              `json:"condition,omitzero"` // of this journal alone
	Planes    []ReadingsPlane                   `json:"planes,omitempty"`   // from the front
	RunOut    inspection.Reading                `json:"runOut,omitzero"`    // of a main: the dial's whole swing
	Dial      []inspection.Reading              `json:"dial,omitempty"`     // of a main: place by place, from the mark
	Fillet    inspection.Reading                `json:"fillet,omitzero"`    // radius
	Stroke    inspection.Reading                `json:"stroke,omitzero"`    // of a crankpin
	Index     inspection.ReadingOf[units.Angle] `json:"index,omitzero"`     // of a crankpin, from its place
	// Walls are its sides, dialled from the original axis. They aren't asked for,
	// and tell which side is worn.
	Walls []JournalWall `json:"walls,omitempty"`
}

// ReadingsPlane is one plane of a journal or of a rod's eye.
type ReadingsPlane struct {
	At    string               `json:"at,omitempty"` // the plane's name, as a check: it must be the one whose turn it is
	Sizes []inspection.Reading `json:"sizes"`        // by direction, as the micrometer or gauge shows them
}

// ReadingsBearing is what was measured of one pair of shells, with its cap.
type ReadingsBearing struct {
	Number    int                  `json:"number"`             // of the main, or of the rod
	Condition inspection.Condition `json:"condition,omitzero"` // of both halves
	// CapMark is the mark on a main's cap and HousingMark that beside it; a housing
	// without one goes by its number.
	CapMark     string               `json:"capMark,omitempty"`
	HousingMark string               `json:"housingMark,omitempty"` // said with CapMark
	Housing     []inspection.Reading `json:"housing,omitempty"`     // of a main: bore without shells, cap tightened
	Bore        []inspection.Reading `json:"bore,omitempty"`        // with the shells in place, at 90° to the split
	Upper       ReadingsShell        `json:"upper,omitzero"`        // half in the block or rod
	Lower       ReadingsShell        `json:"lower,omitzero"`        // half in the cap
	Gap         inspection.Reading   `json:"gap,omitzero"`          // with one bolt slack
	Strip       ReadingsStrip        `json:"strip,omitzero"`        // a crushed gauging strip
	Bolts       []ReadingsBolt       `json:"bolts,omitempty"`       // of a main's cap
}

// ReadingsShell is what was measured of one half shell.
type ReadingsShell struct {
	Walls []inspection.Reading `json:"walls,omitempty"` // at the crown and along it
	Width inspection.Reading   `json:"width,omitzero"`  // across the open ends, free
}

// ReadingsStrip is one crushed gauging strip, as [CrushedStrip] has it.
type ReadingsStrip struct {
	Front  inspection.Reading `json:"front,omitzero"`  // width at the front end
	Middle inspection.Reading `json:"middle,omitzero"` // and in the middle, which isn't asked for
	Rear   inspection.Reading `json:"rear,omitzero"`   // and at the rear end
	Turned bool               `json:"turned,omitzero"` // the shaft was turned with it in
	Oiled  bool               `json:"oiled,omitzero"`  // there was oil
}

// ReadingsBolt is what was measured of one bolt.
type ReadingsBolt struct {
	Number    int                  `json:"number"`             // from 1, of its cap or rod
	Condition inspection.Condition `json:"condition,omitzero"` // of the bolt
	New       bool                 `json:"new,omitzero"`       // never tightened yet
	AsNew     inspection.Reading   `json:"asNew,omitzero"`     // free, when new
	Free      inspection.Reading   `json:"free,omitzero"`      // free, now
	Tightened inspection.Reading   `json:"tightened,omitzero"` // as fitted
}

// ReadingsRod is what was measured of one connecting rod.
type ReadingsRod struct {
	Number    int                  `json:"number"`             // of its cylinder
	Condition inspection.Condition `json:"condition,omitzero"` // of rod and cap
	RodMark   string               `json:"rodMark,omitempty"`  // the mark on the rod
	CapMark   string               `json:"capMark,omitempty"`  // the mark on its cap
	Right     inspection.Reading   `json:"right,omitzero"`     // dial on the pin, above zero for longer
	Left      inspection.Reading   `json:"left,omitzero"`      // the other dial
	Twist     inspection.Reading   `json:"twist,omitzero"`     // over the fixture's span
	Side      []inspection.Reading `json:"side,omitempty"`     // side clearance, by blades
	BigEnd    []ReadingsPlane      `json:"bigEnd,omitempty"`   // shells out, cap tightened
	SmallEnd  []ReadingsPlane      `json:"smallEnd,omitempty"` // bush or bore
	Bolts     []ReadingsBolt       `json:"bolts,omitempty"`    // of its cap
	Masses    ReadingsMasses       `json:"masses,omitzero"`    // as weighed
}

// ReadingsMasses are what hangs on a crankpin with one rod, as [BobweightRod] has it.
type ReadingsMasses struct {
	BigEnd   inspection.ReadingOf[units.Mass] `json:"bigEnd,omitzero"`   // with cap, bolts and nuts
	SmallEnd inspection.ReadingOf[units.Mass] `json:"smallEnd,omitzero"` // with its bush
	Shells   inspection.ReadingOf[units.Mass] `json:"shells,omitzero"`   // both halves
	Piston   inspection.ReadingOf[units.Mass] `json:"piston,omitzero"`   // bare
	Pin      inspection.ReadingOf[units.Mass] `json:"pin,omitzero"`      // gudgeon pin
	Rings    inspection.ReadingOf[units.Mass] `json:"rings,omitzero"`    // all of one piston
	Locks    inspection.ReadingOf[units.Mass] `json:"locks,omitzero"`    // both
}

// ReadingsThrust is what was measured of the end float.
type ReadingsThrust struct {
	Condition inspection.Condition `json:"condition,omitzero"` // of the washers
	EndFloat  []inspection.Reading `json:"endFloat,omitempty"` // by dial or blades
	Front     []inspection.Reading `json:"front,omitempty"`    // thickness of the pieces in front
	Rear      []inspection.Reading `json:"rear,omitempty"`     // and of those behind
}

// ReadingsBalance is what the balancing machine showed.
type ReadingsBalance struct {
	Unbalance []UnbalanceReading `json:"unbalance,omitempty"` // plane by plane
}

// ReadingsPump is what was measured of the oil pump, dry and clean.
type ReadingsPump struct {
	Condition inspection.Condition              `json:"condition,omitzero"` // of gears, body and cover
	Tip       []inspection.Reading              `json:"tip,omitempty"`      // place by place
	Body      []inspection.Reading              `json:"body,omitempty"`     // said with Tip
	Side      []inspection.Reading              `json:"side,omitempty"`     // under the straight-edge; below zero where the gears stand proud
	Backlash  []inspection.Reading              `json:"backlash,omitempty"` // said with Tip
	Cover     []inspection.Reading              `json:"cover,omitempty"`    // depth of wear
	Shaft     []inspection.Reading              `json:"shaft,omitempty"`    // in its bush
	Plunger   []inspection.Reading              `json:"plunger,omitempty"`  // in its bore
	UsedWidth inspection.Reading                `json:"usedWidth,omitzero"` // of the gears
	Free      inspection.Reading                `json:"free,omitzero"`      // length of the relief spring
	Load      inspection.ReadingOf[units.Force] `json:"load,omitzero"`      // of it, at the limits' height
}
