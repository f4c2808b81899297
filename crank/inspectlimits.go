package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Limits is what the manual and the shop give for a crankshaft, its bearings and
// its rods: the document that readings are inspected by. What isn't in it isn't
// asked for. [ReadLimits] reads it, [Limits.Blank] is the document of readings that
// goes with it, and [Limits.Prepare] makes it ready for many engines.
type Limits struct {
	Schema       int               `json:"schema"`                // 1
	Manual       string            `json:"manual,omitempty"`      // where the limits are printed
	Layout       LimitsLayout      `json:"layout"`                // how many of what, and where they are read
	Instruments  LimitsInstruments `json:"instruments,omitzero"`  // what they are read with
	Shaft        LimitsShaft       `json:"shaft,omitzero"`        // the crankshaft as a whole
	Mains        LimitsJournals    `json:"mains,omitzero"`        // main journals
	Crankpins    LimitsJournals    `json:"crankpins,omitzero"`    // crankpins
	MainBearings LimitsBearings    `json:"mainBearings,omitzero"` // shells of the mains
	BigEnds      LimitsBearings    `json:"bigEnds,omitzero"`      // shells of the big ends
	MainBolts    LimitsBolts       `json:"mainBolts,omitzero"`    // bolts of the main caps
	RodBolts     LimitsBolts       `json:"rodBolts,omitzero"`     // bolts of the rods
	Rods         LimitsRods        `json:"rods,omitzero"`         // connecting rods
	Thrust       LimitsThrust      `json:"thrust,omitzero"`       // end float and its washers
	Balance      LimitsBalance     `json:"balance,omitzero"`      // masses and unbalance
	OilPump      LimitsPump        `json:"oilPump,omitzero"`      // oil pump and relief valve
}

// LimitsLayout is how many parts there are, and where they are read.
type LimitsLayout struct {
	Mains     int `json:"mains,omitzero"`     // main journals, from the front
	Crankpins int `json:"crankpins,omitzero"` // crankpins, from the front
	Rods      int `json:"rods,omitzero"`      // rods, by their cylinders' numbers
	// RodPins is the crankpin of each rod, from 1. Left out, each rod has its own,
	// of its number.
	RodPins []int `json:"rodPins,omitempty"`
	// Planes are the places along a journal, from the front; "front" and "rear" if
	// left out.
	Planes []string `json:"planes,omitempty"`
	// MainDirections and PinDirections are those of a journal's diameters; 0° and
	// 90° if left out. A crankpin's count from the line through the axes of mains
	// and pin.
	MainDirections []units.Angle `json:"mainDirections,omitempty"`
	PinDirections  []units.Angle `json:"pinDirections,omitempty"` // said with MainDirections
	// Positions are those of the mains along the shaft, which a bend seen from the
	// supports needs.
	Positions []units.Length `json:"positions,omitempty"`
	// Supports are the two mains that the shaft is turned on, by their numbers; the
	// first and the last if left out.
	Supports []int `json:"supports,omitempty"`
	// VBlocks is the included angle of the V-blocks under them; 0° where the shaft
	// turns between centres. On blocks the supports aren't dialled.
	VBlocks units.Angle `json:"vBlocks,omitzero"`
	// DialPlaces is at how many equal places round each main the dial is read, 4 to
	// 360; 0 where only the whole swing of the dial is.
	DialPlaces int `json:"dialPlaces,omitzero"`
}

// LimitsInstruments are what the readings are taken with. Readings that are written
// with an error of their own keep it.
type LimitsInstruments struct {
	Mains     instrument.Instrument `json:"mains,omitzero"`     // micrometer for the mains
	Crankpins instrument.Instrument `json:"crankpins,omitzero"` // micrometer for the crankpins
	Dial      units.Length          `json:"dial,omitzero"`      // ± of a dial reading: run-out, end float, rods
	Bore      units.Length          `json:"bore,omitzero"`      // ± of a bore: big ends, small ends, bores in shells
	Wall      units.Length          `json:"wall,omitzero"`      // ± of a shell's wall or a thrust washer
	Bolt      units.Length          `json:"bolt,omitzero"`      // ± of a bolt's length
}

// LimitsShaft is what is asked of the crankshaft as a whole.
type LimitsShaft struct {
	Care inspection.Care `json:"care,omitzero"` // crack test and the like
	// RunOut is the whole reading of the dial (TIR) at a main, Bend how far a main's
	// centre lies off the line of the supports: half of what the eccentricity makes
	// of the run-out.
	RunOut     inspection.Limit `json:"runOut,omitzero"`
	Bend       inspection.Limit `json:"bend,omitzero"`       // needs LimitsLayout.DialPlaces and Positions
	Neighbours LimitsNeighbours `json:"neighbours,omitzero"` // of mains next to each other; needs what Bend does
	Nose       inspection.Limit `json:"nose,omitzero"`       // run-out of the nose
	Flange     inspection.Limit `json:"flange,omitzero"`     // run-out of the flange's rim
	FlangeFace inspection.Limit `json:"flangeFace,omitzero"` // run-out of the flange's or flywheel's face
	Surface    JournalSurface   `json:"surface,omitzero"`    // how the journals were treated
	Process    string           `json:"process,omitempty"`   // the maker's own for grinding them, where the surface asks for one
}

// LimitsNeighbours is what the manual allows between mains next to each other, as
// [NeighbourLimits] has it.
type LimitsNeighbours struct {
	Along     inspection.Limit `json:"along,omitzero"`     // the sum of opposite high points, the difference of those on one side
	RightSum  inspection.Limit `json:"rightSum,omitzero"`  // the sum at right angles
	RightEach inspection.Limit `json:"rightEach,omitzero"` // each at right angles
}

// LimitsJournals is what is asked of the mains, or of the crankpins.
type LimitsJournals struct {
	Care       inspection.Care                 `json:"care,omitzero"`       // crack test of a journal and the like; the shaft has its own
	Size       inspection.Limit                `json:"size,omitzero"`       // of a standard journal; undersizes count from its new band
	OutOfRound inspection.Limit                `json:"outOfRound,omitzero"` // a difference of diameters
	Taper      inspection.Limit                `json:"taper,omitzero"`      // by TaperRule
	TaperRule  JournalTaperRule                `json:"taperRule,omitzero"`  // how the manual counts it
	Wear       inspection.Limit                `json:"wear,omitzero"`       // from the size last ground to
	Fillet     inspection.Limit                `json:"fillet,omitzero"`     // radius of the fillets
	Stroke     inspection.Limit                `json:"stroke,omitzero"`     // of a crankpin
	Index      inspection.LimitOf[units.Angle] `json:"index,omitzero"`      // of a crankpin, from its place
	Case       tolerance.Bracket               `json:"case,omitzero"`       // depth of the hardened case at the standard size
	Shells     []LimitsShells                  `json:"shells,omitempty"`    // the undersizes that can be had, standard too
	Plan       GrindPlan                       `json:"plan,omitzero"`       // how they are ground
	// Beyond is what becomes of the shaft where no undersize cleans all up: usually
	// Replace; Repair where the maker allows welding.
	Beyond inspection.Action `json:"beyond,omitzero"`
}

// LimitsShells is an undersize that shells can be had in, with their wall.
type LimitsShells struct {
	ShellKit
	// Wall is that of one new half at its crown. Left out, it is the standard wall
	// of the bearings and half the undersize.
	Wall tolerance.Band `json:"wall,omitzero"`
}

// LimitsBearings is what is asked of the shells of the mains, or of the big ends.
type LimitsBearings struct {
	Care         inspection.Care  `json:"care,omitzero"`         // scored or pitted shells are replaced unless it says otherwise
	OilClearance inspection.Limit `json:"oilClearance,omitzero"` // on the diameter
	// Method is how the oil clearance is found; the bore with the shells in place,
	// if left out.
	Method OilMethod `json:"method,omitzero"`
	// Places is at how many places each bore, wall and housing is read; 1 if left
	// out.
	Places     int              `json:"places,omitzero"`
	Housing    inspection.Limit `json:"housing,omitzero"`    // bore without shells, cap tightened
	Wall       inspection.Limit `json:"wall,omitzero"`       // of a standard half at its crown
	Variation  inspection.Limit `json:"variation,omitzero"`  // of the wall of one half; needs two places
	Spread     inspection.Limit `json:"spread,omitzero"`     // free, wider than the housing
	Gap        inspection.Limit `json:"gap,omitzero"`        // with one bolt slack: the nip of both halves
	Strip      StripTable       `json:"strip,omitempty"`     // of the gauging strip, where that is the method
	StripTaper inspection.Limit `json:"stripTaper,omitzero"` // what the strip's places may differ by
	Renew      bool             `json:"renew,omitzero"`      // shells are renewed whatever they measure
}

// LimitsBolts is what is asked of bolts, as [BoltCheck] has it.
type LimitsBolts struct {
	Care    inspection.Care  `json:"care,omitzero"`    // crack test and the like
	Count   int              `json:"count,omitzero"`   // of each cap or rod; 2 if left out
	Yield   bool             `json:"yield,omitzero"`   // tightened to yield: used once
	Length  inspection.Limit `json:"length,omitzero"`  // free, for use again
	Growth  inspection.Limit `json:"growth,omitzero"`  // free now, less when new
	Stretch inspection.Limit `json:"stretch,omitzero"` // tightened less free
}

// LimitsRods is what is asked of the connecting rods, as [RodLimits] and [RodBore]
// have it.
type LimitsRods struct {
	Care       inspection.Care `json:"care,omitzero"`       // crack test and the like
	CrackedCap bool            `json:"crackedCap,omitzero"` // the caps were cracked off, not sawn
	// Straighten is that the maker allows bent rods to be straightened; those with
	// cracked caps never are.
	Straighten bool              `json:"straighten,omitzero"`
	Length     inspection.Limit  `json:"length,omitzero"`    // over the master
	Bend       inspection.Limit  `json:"bend,omitzero"`      // over the fixture's span
	Twist      inspection.Limit  `json:"twist,omitzero"`     // over the fixture's span
	Per        units.Length      `json:"per,omitzero"`       // that the next two are over; 100 mm if left out
	BendPer    inspection.Limit  `json:"bendPer,omitzero"`   // over Per
	TwistPer   inspection.Limit  `json:"twistPer,omitzero"`  // over Per
	Centres    inspection.Limit  `json:"centres,omitzero"`   // between centres; needs Master
	Side       inspection.Limit  `json:"side,omitzero"`      // side clearance, by blades
	Span       units.Length      `json:"span,omitzero"`      // between the fixture's dials
	TwistSpan  units.Length      `json:"twistSpan,omitzero"` // that twist is read over
	Master     tolerance.Bracket `json:"master,omitzero"`    // between centres, of the master
	Stroke     units.Length      `json:"stroke,omitzero"`    // of the engine, against a slip in the length
	// Planes and Directions are where eyes are gauged; "front" and "rear", "in line"
	// and "across" if left out.
	Planes     []string  `json:"planes,omitempty"`
	Directions []string  `json:"directions,omitempty"` // said with Planes
	BigEnd     LimitsEye `json:"bigEnd,omitzero"`      // shells out, cap tightened
	SmallEnd   LimitsEye `json:"smallEnd,omitzero"`    // of the bush, or of the bore
}

// LimitsEye is what is asked of an eye of the rods.
type LimitsEye struct {
	Size    inspection.Limit `json:"size,omitzero"`    // of every diameter
	Ovality inspection.Limit `json:"ovality,omitzero"` // in one plane
	Taper   inspection.Limit `json:"taper,omitzero"`   // in one direction
	// Work is what is done to an eye that is out: usually Replace, the rod; Repair
	// (a bush) or ReconditionSame where the maker allows it.
	Work inspection.Action `json:"work,omitzero"`
}

// LimitsThrust is what is asked of the end float.
type LimitsThrust struct {
	Main     int              `json:"main,omitzero"`     // the main that takes the thrust
	EndFloat inspection.Limit `json:"endFloat,omitzero"` // of the shaft
	Places   int              `json:"places,omitzero"`   // how often it is read round a turn; 1 if left out
	Halves   int              `json:"halves,omitzero"`   // pieces on each side, 1 or 2; 0 where washers aren't measured
	Match    inspection.Limit `json:"match,omitzero"`    // what the halves of one side may differ by
	Wanted   units.Length     `json:"wanted,omitzero"`   // the float to come near to; the middle if left out
	Stock    []ThrustWasher   `json:"stock,omitempty"`   // washers that can be had
	Table    *ThrustTable     `json:"table,omitempty"`   // the manual's own choice, where it prints one
}
