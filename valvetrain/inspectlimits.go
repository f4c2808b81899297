package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Limits are what the manual and the shop give for a valve train: the document
// of limits, schema 1. What isn't in it isn't asked for.
//
//	{"schema": 1, "cylinders": 4,
//	 "inlet": {"each": 2,
//	   "valve": {"stations": ["top", "bottom"], "stem": {"new": "5.965–5.980 mm", "wear": "min 5.94 mm"}},
//	   "clearance": {"limit": {"new": "0.15–0.25 mm"}}}}
//
// [ReadLimits] reads it, [Limits.Blank] is the readings document that goes with
// it, and [Limits.Prepare] makes it ready for many engines.
type Limits struct {
	Schema     int              `json:"schema"`              // 1
	Cylinders  int              `json:"cylinders"`           // how many, 1 to 24
	Inlet      *LimitsPlace     `json:"inlet,omitzero"`      // all that belongs to the inlet valves
	Exhaust    *LimitsPlace     `json:"exhaust,omitzero"`    // all that belongs to the exhaust valves
	Camshafts  []LimitsCamshaft `json:"camshafts,omitempty"` // each of them
	Drive      []LimitsDrive    `json:"drive,omitempty"`     // chain, gears, tensioner
	Shims      *LimitsShims     `json:"shims,omitzero"`      // those at hand and those to be had, for the clearances
	Blades     []string         `json:"blades,omitempty"`    // feeler blades at hand, as they are marked
	BladeError units.Length     `json:"bladeError,omitzero"` // ± of their thickness
}

// LimitsPlace is what is given for all valves of one kind, with what belongs to
// each of them.
type LimitsPlace struct {
	Each      int              `json:"each"`               // valves of this kind in a cylinder, 1 to 4
	Guide     *LimitsGuide     `json:"guide,omitzero"`     // the guide in the head
	Valve     *LimitsValve     `json:"valve,omitzero"`     // the valve, out of the head
	Seat      *LimitsSeat      `json:"seat,omitzero"`      // the seat in the head
	Springs   []LimitsSpring   `json:"springs,omitempty"`  // the outer one first
	Follower  *LimitsFit       `json:"follower,omitzero"`  // bucket or tappet in its bore
	Rocker    *LimitsFit       `json:"rocker,omitzero"`    // rocker on its shaft: size is the shaft's, bore the bush's
	Clearance *LimitsClearance `json:"clearance,omitzero"` // valve clearance
	Seals     string           `json:"seals,omitempty"`    // stem seal that every valve gets at assembly: "6 mm stem seal"
}

// LimitsGuide are those of a valve guide. Its bore is asked for where Levels are
// named, the dial's travel where Rocking has a limit.
type LimitsGuide struct {
	Levels     []string         `json:"levels,omitempty"`    // from one mouth to the other: "spring end", "middle", "valve end"
	OneWay     bool             `json:"oneWay,omitzero"`     // measured across alone, not along the engine too
	Bore       inspection.Limit `json:"bore,omitzero"`       // its diameter anywhere
	Bell       inspection.Limit `json:"bell,omitzero"`       // a mouth over the waist, as [GuideBell]
	OutOfRound inspection.Limit `json:"outOfRound,omitzero"` // as [GuideOutOfRound]
	Clearance  inspection.Limit `json:"clearance,omitzero"`  // of the stem, on the diameter
	Rocking    inspection.Limit `json:"rocking,omitzero"`    // of the dial's travel, as the manual sets the dial up
	Error      units.Length     `json:"error,omitzero"`      // ±, of bores written without one
	DialError  units.Length     `json:"dialError,omitzero"`  // ±, of travels written without one
	With       string           `json:"with,omitempty"`      // the instrument for the bore
	DialWith   string           `json:"dialWith,omitempty"`  // and that for rocking
	Care       inspection.Care  `json:"care,omitzero"`       // of the guide and the head round it

	Stock     []LimitsGuideWay `json:"stock,omitempty"`    // what a worn guide can be put right with
	LeastCut  units.Length     `json:"leastCut,omitzero"`  // that a reamer takes everywhere, on the diameter
	Outside   units.Length     `json:"outside,omitzero"`   // of the guide, for the wall that a reamer leaves
	LeastWall units.Length     `json:"leastWall,omitzero"` // per side
}

// LimitsGuideWay is one way to put a worn guide right: see [GuideOption].
type LimitsGuideWay struct {
	Name     string            `json:"name"`              // "+0.10 mm stem", "bronze liner"
	Way      GuideRepair       `json:"way"`               // oversize stem, guide liner or new guide
	Stem     tolerance.Bracket `json:"stem,omitzero"`     // that runs in it; left out for one of standard size
	Opened   tolerance.Bracket `json:"opened,omitzero"`   // what the guide is reamed to
	Finished tolerance.Bracket `json:"finished,omitzero"` // the bore once it is in
}

// LimitsValve are those of a valve.
type LimitsValve struct {
	Stations []string         `json:"stations,omitempty"` // of the stem, from the tip down; left out, the stem isn't asked for
	OneWay   bool             `json:"oneWay,omitzero"`    // measured one way across alone
	Stem     inspection.Limit `json:"stem,omitzero"`      // its diameter anywhere
	Taper    inspection.Limit `json:"taper,omitzero"`     // of the stem, as [StemTaper]
	Margin   inspection.Limit `json:"margin,omitzero"`    // the least round the rim
	FaceRun  inspection.Limit `json:"faceRun,omitzero"`   // run-out of the face, the dial square to it
	StemRun  inspection.Limit `json:"stemRun,omitzero"`   // run-out of the stem's middle
	TipWear  inspection.Limit `json:"tipWear,omitzero"`   // of the tip, below its rim
	Length   inspection.Limit `json:"length,omitzero"`    // over all
	Error    units.Length     `json:"error,omitzero"`     // ±, of sizes written without one
	With     string           `json:"with,omitempty"`     // the instrument for stem and length
	DialWith string           `json:"dialWith,omitempty"` // and that for run-out
	Care     inspection.Care  `json:"care,omitzero"`      // of the valve

	FaceAngle SeatAngle         `json:"faceAngle,omitzero"` // from the plane square to the stem; says what a reface takes of the margin
	TipMost   units.Length      `json:"tipMost,omitzero"`   // the most that may come off the tip
	Sodium    bool              `json:"sodium,omitzero"`    // the stem is hollow and filled with sodium
	NewStem   tolerance.Bracket `json:"newStem,omitzero"`   // of a new valve; left out, the band of Stem
}

// LimitsSeat are those of a seat in the head.
type LimitsSeat struct {
	Width     inspection.Limit `json:"width,omitzero"`      // along the cone, by scale or blue
	RunOut    inspection.Limit `json:"runOut,omitzero"`     // from a pilot in the guide
	Depth     inspection.Limit `json:"depth,omitzero"`      // of the valve's head below the head's face
	TipHeight inspection.Limit `json:"tipHeight,omitzero"`  // of the valve's tip, the valve on its seat
	Error     units.Length     `json:"error,omitzero"`      // ±, of sizes written without one
	With      string           `json:"with,omitempty"`      // the instrument for the width
	DialWith  string           `json:"dialWith,omitempty"`  // for the run-out
	DepthWith string           `json:"depthWith,omitempty"` // for depth and tip height
	Care      inspection.Care  `json:"care,omitzero"`       // of the seat and the head round it
	Cut       *LimitsSeatCut   `json:"cut,omitzero"`        // how it is cut; asks for the seat's two edges
}

// LimitsSeatCut is what a seat is cut to, and with what: see [SeatPlan].
type LimitsSeatCut struct {
	Angle   SeatAngle    `json:"angle"`            // of the seat, from the plane square to the stem, as all here
	Above   SeatAngle    `json:"above"`            // of the cutter from above
	Below   SeatAngle    `json:"below"`            // of the cutter from below
	Throat  SeatAngle    `json:"throat,omitzero"`  // of the throat that is there; left out where it was cut with Below
	Outer   units.Length `json:"outer"`            // diameter wanted
	Width   units.Length `json:"width"`            // wanted, along the cone
	CleanUp units.Length `json:"cleanUp,omitzero"` // least cut of the seat, along the stem
}

// LimitsSpring are those of one spring of each valve.
type LimitsSpring struct {
	Name      string            `json:"name,omitempty"`     // "outer", "inner"; left out for a single one
	Free      inspection.Limit  `json:"free,omitzero"`      // length without load
	Square    inspection.Limit  `json:"square,omitzero"`    // out of square at the top
	Loads     []LimitsLoad      `json:"loads,omitempty"`    // at heights that the manual prints
	Installed inspection.Limit  `json:"installed,omitzero"` // height on the head, valve closed
	Bind      inspection.Limit  `json:"bind,omitzero"`      // margin to coil bind at full lift
	Lift      units.Length      `json:"lift,omitzero"`      // of the valve; wanted with Bind
	Solid     tolerance.Bracket `json:"solid,omitzero"`     // height when coil-bound, as printed; left out, it is asked for
	Error     units.Length      `json:"error,omitzero"`     // ±, of lengths written without one
	LoadError units.Force       `json:"loadError,omitzero"` // ±, of loads written without one
	With      string            `json:"with,omitempty"`     // the instrument for lengths
	LoadWith  string            `json:"loadWith,omitempty"` // and that for loads
	Care      inspection.Care   `json:"care,omitzero"`      // of the spring
	Shims     []SpringShim      `json:"shims,omitempty"`    // spring shims in stock
	MostShims int               `json:"mostShims,omitzero"` // on one another, 1 to 4; left out, 1
	AsSet     bool              `json:"asSet,omitzero"`     // one that fails has all of them replaced
}

// LimitsLoad is what a spring must bear at one height.
type LimitsLoad struct {
	At    units.Length                    `json:"at"`    // height on the tester
	Limit inspection.LimitOf[units.Force] `json:"limit"` // of the load there
}
