package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Readings is what was measured of a valve train: the document that is
// inspected, schema 1. What is left out, or "", is still to be read; so is a
// part that isn't listed. [Limits.Blank] makes an empty one, [ReadReadings]
// reads one.
type Readings struct {
	Schema     int                 `json:"schema"`               // 1
	Engine     string              `json:"engine,omitempty"`     // which one
	Camshafts  []ReadingsCamshaft  `json:"camshafts,omitempty"`  // by name
	Drive      []ReadingsDrive     `json:"drive,omitempty"`      // by part and measure
	Guides     []ReadingsGuide     `json:"guides,omitempty"`     // by place
	Valves     []ReadingsValve     `json:"valves,omitempty"`     // by place
	Seats      []ReadingsSeat      `json:"seats,omitempty"`      // by place
	Springs    []ReadingsSpring    `json:"springs,omitempty"`    // by place and name
	Followers  []ReadingsFit       `json:"followers,omitempty"`  // by place
	Rockers    []ReadingsFit       `json:"rockers,omitempty"`    // by place
	Clearances []ReadingsClearance `json:"clearances,omitempty"` // by place
}

// ReadingsPair is one station of a bore or a stem, measured both ways.
type ReadingsPair struct {
	Across inspection.Reading `json:"across,omitzero"` // across the engine; of a stem, one way
	Along  inspection.Reading `json:"along,omitzero"`  // along the engine; of a stem, square to the first
}

// ReadingsGuide is what was seen and measured of a guide.
type ReadingsGuide struct {
	Place     ValvePlace           `json:"place"`              // "exhaust 3"
	Condition inspection.Condition `json:"condition,omitzero"` // of guide and head there
	Levels    []ReadingsPair       `json:"levels,omitempty"`   // in the order of the limits
	Rocking   inspection.Reading   `json:"rocking,omitzero"`   // the dial's travel
}

// ReadingsValve is what was seen and measured of a valve.
type ReadingsValve struct {
	Place ValvePlace `json:"place"` // where it belongs
	// Mark is the place marked on it when it was taken out: a used valve is bedded
	// into one guide and one seat.
	Mark      string               `json:"mark,omitempty"`
	Condition inspection.Condition `json:"condition,omitzero"` // burnt or channelled counts as pitted
	Stem      []ReadingsPair       `json:"stem,omitempty"`     // in the order of the limits
	Margin    inspection.Reading   `json:"margin,omitzero"`    // the least round the rim
	FaceRun   inspection.Reading   `json:"faceRun,omitzero"`   // the dial's whole swing
	StemRun   inspection.Reading   `json:"stemRun,omitzero"`   // the dial's whole swing
	TipWear   inspection.Reading   `json:"tipWear,omitzero"`   // below the tip's rim
	TipOff    inspection.Reading   `json:"tipOff,omitzero"`    // ground off the tip before, where known; isn't asked for
	Length    inspection.Reading   `json:"length,omitzero"`    // over all
}

// ReadingsSeat is what was seen and measured of a seat.
type ReadingsSeat struct {
	Place     ValvePlace           `json:"place"`              // "exhaust 3"
	Condition inspection.Condition `json:"condition,omitzero"` // of seat and head there
	Width     inspection.Reading   `json:"width,omitzero"`     // along the cone
	RunOut    inspection.Reading   `json:"runOut,omitzero"`    // the dial's whole swing
	Depth     inspection.Reading   `json:"depth,omitzero"`     // of the valve's head
	TipHeight inspection.Reading   `json:"tipHeight,omitzero"` // of the valve's tip
	Outer     inspection.Reading   `json:"outer,omitzero"`     // diameter of the edge toward the chamber
	Inner     inspection.Reading   `json:"inner,omitzero"`     // diameter of the edge toward the port
}

// ReadingsSpring is what was seen and measured of a spring.
type ReadingsSpring struct {
	Place     ValvePlace                          `json:"place"`              // "exhaust 3"
	Name      string                              `json:"name,omitempty"`     // as the limits name it
	Condition inspection.Condition                `json:"condition,omitzero"` // pitted or rusted springs break
	Free      inspection.Reading                  `json:"free,omitzero"`      // length
	Square    inspection.Reading                  `json:"square,omitzero"`    // gap at the top, against a square
	Loads     []inspection.ReadingOf[units.Force] `json:"loads,omitempty"`    // in the order of the limits
	Installed inspection.Reading                  `json:"installed,omitzero"` // height on the head
	Solid     inspection.Reading                  `json:"solid,omitzero"`     // height when coil-bound
}

// ReadingsFit is what was seen and measured of a part in its bore.
type ReadingsFit struct {
	Place     ValvePlace           `json:"place"`              // "exhaust 3"
	Mark      string               `json:"mark,omitempty"`     // the place marked on it when it was taken out
	Condition inspection.Condition `json:"condition,omitzero"` // of the part
	Size      inspection.Reading   `json:"size,omitzero"`      // of the part
	Bore      inspection.Reading   `json:"bore,omitzero"`      // that it runs in
}

// ReadingsClearance is a valve clearance as found: by Trials with blades, or as
// a reading. A bracket of two blades is a reading as well:
// "[0.20 mm, 0.25 mm)".
type ReadingsClearance struct {
	Place     ValvePlace         `json:"place"`              // "exhaust 3"
	Trials    []ReadingsTrial    `json:"trials,omitempty"`   // blades tried, in any order
	Clearance inspection.Reading `json:"clearance,omitzero"` // where no trials are given
	Shim      inspection.Reading `json:"shim,omitzero"`      // under it now, by micrometer
}

// ReadingsTrial is one blade, tried.
type ReadingsTrial struct {
	Blade units.Length `json:"blade"` // its mark
	Feel  feeler.Feel  `json:"feel"`  // how it went in
}

// ReadingsCamshaft is what was seen and measured of a camshaft.
type ReadingsCamshaft struct {
	Name      string               `json:"name"`                   // as the limits name it
	Condition inspection.Condition `json:"condition,omitzero"`     // scored or pitted lobes
	Journals  []ReadingsJournal    `json:"journals,omitempty"`     // from the drive's end, all or none
	RunOut    inspection.Reading   `json:"runOut,omitzero"`        // at the middle journal, the dial's whole swing
	EndFloat  inspection.Reading   `json:"endFloat,omitzero"`      // by blade or dial
	Inlet     []ReadingsLobe       `json:"inletLobes,omitempty"`   // from the drive's end
	Exhaust   []ReadingsLobe       `json:"exhaustLobes,omitempty"` // from the drive's end
}

// ReadingsJournal is one journal of a camshaft with its bearing.
type ReadingsJournal struct {
	Journal inspection.Reading `json:"journal,omitzero"`  // diameter
	Bearing inspection.Reading `json:"bearing,omitzero"`  // bore, its cap tightened
	CapMark string             `json:"capMark,omitempty"` // on its cap: the journal's number
}

// ReadingsLobe is one lobe.
type ReadingsLobe struct {
	Height inspection.Reading `json:"height,omitzero"` // from nose to heel
	Base   inspection.Reading `json:"base,omitzero"`   // base circle's diameter
}

// ReadingsDrive is one measure of the camshaft's drive.
type ReadingsDrive struct {
	Part      string               `json:"part"`               // as the limits name it
	Measure   string               `json:"measure"`            // as the limits name it
	Condition inspection.Condition `json:"condition,omitzero"` // of the part
	Reading   inspection.Reading   `json:"reading,omitzero"`   // of the measure
}
