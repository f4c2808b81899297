package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// Limits are what the manual and the shop give for a cylinder block and its
// head: the document of limits, schema 1. What isn't in it isn't asked for: an
// engine without liners leaves them out.
//
//	{"schema": 1, "cylinders": 4,
//	 "bores": {"standard": "86 mm", "levels": [{"name": "top"}, {"name": "bottom"}],
//	           "size": {"new": "86.000–86.020 mm", "wear": "max 86.10 mm"}}}
//
// [ReadLimits] reads it, [Limits.Blank] is the readings document that goes with
// it, and [Limits.Prepare] makes it ready for many engines.
type Limits struct {
	Schema    int `json:"schema"`    // 1
	Cylinders int `json:"cylinders"` // how many the block has, 1 to 64
	// Banks are the cylinders' numbers along each bank, from one end. Left out,
	// all stand in one row. Each bank has a block face and a head.
	Banks  [][]int       `json:"banks,omitempty"`
	Strip  *LimitsStrip  `json:"beforeStrip,omitzero"` // compression and leakage
	Block  *LimitsBlock  `json:"block,omitzero"`       // cracks and pressure test
	Face   *LimitsFace   `json:"blockFace,omitzero"`   // of each bank
	Tunnel *LimitsTunnel `json:"mainTunnel,omitzero"`  // the main bearing housings
	Bores  *LimitsBores  `json:"bores,omitzero"`       // the cylinder bores, and what they may be bored to
	Liners *LimitsLiners `json:"liners,omitzero"`      // wet liners
	Finish *LimitsFinish `json:"boreFinish,omitzero"`  // of the bores that stay as they are
	Head   *LimitsHead   `json:"head,omitzero"`        // of each bank
}

// LimitsStrip are those of the tests before the engine is stripped. A
// compression test is asked for where its pressure, difference or share is
// given, a leakage test where a percentage is.
type LimitsStrip struct {
	Compression inspection.LimitOf[units.Pressure] `json:"compression,omitzero"` // of each cylinder, above the atmosphere
	Difference  inspection.LimitOf[units.Pressure] `json:"difference,omitzero"`  // between the highest and the lowest
	LowPercent  int                                `json:"lowPercent,omitzero"`  // how much of the highest each must have
	RisePercent int                                `json:"risePercent,omitzero"` // from which on a wet rise counts
	Wet         bool                               `json:"wet,omitzero"`         // a wet reading is asked of each cylinder; never of a diesel
	// Leakage is the most that a cylinder may leak, and LeakageDifference by how
	// much two may differ, both in per cent of the supply.
	Leakage           int            `json:"leakagePercent,omitzero"`
	LeakageDifference int            `json:"leakageDifferencePercent,omitzero"` // see Leakage
	GaugeError        units.Pressure `json:"gaugeError,omitzero"`               // ±, of readings written without one
	With              string         `json:"with,omitempty"`                    // the instrument
}

func (l *LimitsStrip) compression() bool {
	return !l.Compression.IsZero() || !l.Difference.IsZero() || l.LowPercent > 0
}

func (l *LimitsStrip) leakage() bool { return l.Leakage > 0 || l.LeakageDifference > 0 }

// LimitsBlock is what is asked of the block beside sizes.
type LimitsBlock struct {
	Care inspection.Care `json:"care,omitzero"` // crack and pressure test, and what becomes of a cracked one
}

// LimitsFace are those of a block's or a head's face: by a straight-edge with
// blades along Lines, or by heights on a Grid.
type LimitsFace struct {
	Lines      []LimitsLine     `json:"lines,omitempty"`     // left out: those of [SixLines]
	Overall    inspection.Limit `json:"overall,omitzero"`    // of a line whose direction has none
	Lengthwise inspection.Limit `json:"lengthwise,omitzero"` // along the crankshaft
	Across     inspection.Limit `json:"across,omitzero"`     // across it
	Diagonal   inspection.Limit `json:"diagonal,omitzero"`   // from corner to corner
	Local      []LimitsLocal    `json:"local,omitempty"`     // within a short length anywhere
	Grid       *LimitsGrid      `json:"grid,omitzero"`       // where the face is read by heights instead
	// Height is that of the part, whose least stops a skim; HeightAt names the
	// places where it is read. Left out, one.
	Height      inspection.Limit `json:"height,omitzero"`
	HeightAt    []string         `json:"heightAt,omitempty"`   // see Height
	HeightError units.Length     `json:"heightError,omitzero"` // ±, of readings written without one
	Skim        *LimitsSkim      `json:"skim,omitzero"`        // what a skim takes
	With        string           `json:"with,omitempty"`       // the instrument for flatness
	HeightWith  string           `json:"heightWith,omitempty"` // and that for the height
}

// A LimitsLine is one line for the straight-edge.
type LimitsLine struct {
	Name      string    `json:"name"`      // "left edge"
	Direction Direction `json:"direction"` // lengthwise, across or diagonal
}

// LimitsLocal is what is allowed within a short length anywhere on a face.
type LimitsLocal struct {
	Over  units.Length     `json:"over"`  // the length of the short straight-edge: 150 mm
	Limit inspection.Limit `json:"limit"` // of the gap under it
}

// A LimitsGrid is how a face is read by heights: stations in rows along the
// crankshaft and columns across it.
type LimitsGrid struct {
	Rows           int              `json:"rows"`              // 2 or more
	Columns        int              `json:"columns"`           // 2 or more
	StepLengthwise units.Length     `json:"stepLengthwise"`    // between columns
	StepAcross     units.Length     `json:"stepAcross"`        // between rows
	Error          units.Length     `json:"error,omitzero"`    // ± of each height
	Flatness       inspection.Limit `json:"flatness,omitzero"` // in the standard's sense, as a drawing gives it
}

// LimitsSkim is what a skim takes, and where it must stop.
type LimitsSkim struct {
	Stock   units.Length `json:"stock"`            // least cut at the lowest place; common practice is 0.02 to 0.05 mm
	Step    units.Length `json:"step,omitzero"`    // of the machine's feed
	MostOff units.Length `json:"mostOff,omitzero"` // the most that may ever be taken off
}

// LimitsHead are those of a cylinder head as a face.
type LimitsHead struct {
	Face      LimitsFace        `json:"face"`               // of its joint
	CamTunnel *inspection.Limit `json:"camTunnel,omitzero"` // the bow of a camshaft's tunnel in the head
	Care      inspection.Care   `json:"care,omitzero"`      // crack and pressure test
}

// LimitsTunnel are those of the main bearing housings, read with the caps
// torqued and the shells out.
type LimitsTunnel struct {
	Mains      int              `json:"mains"`             // how many
	Levels     []string         `json:"levels"`            // along each: "front", "rear"
	Directions []string         `json:"directions"`        // "vertical", "60° left", "60° right"
	Size       inspection.Limit `json:"size,omitzero"`     // of every diameter
	Ovality    inspection.Limit `json:"ovality,omitzero"`  // greatest less least diameter at one level
	Taper      inspection.Limit `json:"taper,omitzero"`    // greatest less least diameter along one direction
	Error      units.Length     `json:"error,omitzero"`    // ±, of diameters written without one
	Line       *LimitsLineUp    `json:"line,omitzero"`     // how the housings line up
	Hone       *LimitsLineHone  `json:"lineHone,omitzero"` // for a tunnel past its limits
	Care       inspection.Care  `json:"care,omitzero"`     // of each housing
	With       string           `json:"with,omitempty"`    // the instrument
}

// LimitsLineUp are those of the line that the housings make.
type LimitsLineUp struct {
	Places    []units.Length   `json:"places"`             // of the housings along the tunnel, growing
	ByBlades  bool             `json:"byBlades,omitzero"`  // readings are gaps under a straight-edge, not heights
	Straight  inspection.Limit `json:"straight,omitzero"`  // of the whole line
	Neighbour inspection.Limit `json:"neighbour,omitzero"` // of one off the line of its neighbours
	Error     units.Length     `json:"error,omitzero"`     // ±, of readings written without one
	With      string           `json:"with,omitempty"`     // the instrument
}

// LimitsLineHone is what a line hone is to reach. Where it is given, and the
// tunnel is past its limits, the crowns' heights are asked for.
type LimitsLineHone struct {
	Finish   units.Length   `json:"finish"`        // the size wanted
	LeastCut units.Length   `json:"leastCut"`      // at crown and cap, to clean up
	Rise     tolerance.Band `json:"rise,omitzero"` // how far the crank may rise
}

// LimitsLiners are those of wet liners, clamped as the manual says.
type LimitsLiners struct {
	Places     []string         `json:"places,omitempty"`   // round a liner where protrusion is read; left out, one
	Protrusion inspection.Limit `json:"protrusion"`         // above the block face
	Step       inspection.Limit `json:"step,omitzero"`      // between neighbours of a bank
	Variation  inspection.Limit `json:"variation,omitzero"` // round one liner
	StepFrom   StepRule         `json:"stepFrom,omitzero"`  // what a step counts from
	Shims      []StockShim      `json:"shims,omitempty"`    // in stock
	MostShims  int              `json:"mostShims,omitzero"` // on one another
	Error      units.Length     `json:"error,omitzero"`     // ±, of readings written without one
	With       string           `json:"with,omitempty"`     // the instrument
}

// LimitsFinish are those of a bore's finish.
type LimitsFinish struct {
	CrossHatch inspection.LimitOf[units.Angle] `json:"crossHatch"`     // as Counted
	Counted    HatchAngle                      `json:"counted"`        // which of the four angles it is
	Error      units.Angle                     `json:"error,omitzero"` // ±, of readings written without one
	With       string                          `json:"with,omitempty"` // the instrument
}

// LimitsBores are those of the cylinder bores at their standard size, and what
// they may be bored to. At an oversize the limits of size count from there.
type LimitsBores struct {
	Standard units.Length          `json:"standard"`         // the bore that oversizes count from
	Levels   []BoreLevel           `json:"levels"`           // from the block face down
	Angles   []units.Angle         `json:"angles,omitempty"` // directions beyond those along and across the crank
	Gauge    instrument.Instrument `json:"gauge,omitzero"`   // its readings are exact values
	Unworn   bool                  `json:"unworn,omitzero"`  // a reading below the ring travel is asked for

	Size         inspection.Limit `json:"size,omitzero"`         // the greatest and the least reading
	Mean         inspection.Limit `json:"mean,omitzero"`         // of all readings
	OutOfRound   inspection.Limit `json:"outOfRound,omitzero"`   // a difference of diameters
	Taper        inspection.Limit `json:"taper,omitzero"`        // by TaperRule
	TaperRule    TaperRule        `json:"taperRule,omitzero"`    // how the manual counts it
	TaperPer     units.Length     `json:"taperPer,omitzero"`     // for a taper per length
	Wear         inspection.Limit `json:"wear,omitzero"`         // on the diameter, from the size last finished to
	Choke        inspection.Limit `json:"choke,omitzero"`        // last level less first
	Ridge        inspection.Limit `json:"ridge,omitzero"`        // by RidgeCounted
	RidgeCounted RidgeSide        `json:"ridgeCounted,omitzero"` // of limit and readings alike
	TorquePlate  Recorded         `json:"torquePlate,omitzero"`  // whether one must be fitted
	CapsTorqued  Recorded         `json:"capsTorqued,omitzero"`  // whether the bearing caps must be
	Care         inspection.Care  `json:"care,omitzero"`         // of each bore

	Surface   BoreSurface       `json:"surface,omitzero"`   // what the walls are made of
	Process   string            `json:"process,omitempty"`  // the maker's, for plated, coated and bare alloy bores
	Kits      []PistonKit       `json:"kits,omitempty"`     // oversizes that pistons can be had in
	Clearance tolerance.Bracket `json:"clearance,omitzero"` // of the piston, where kits have measured ones
	Plan      BoringPlan        `json:"plan,omitzero"`      // how the bores are finished
	Liner     RepairLiner       `json:"liner,omitzero"`     // for bores that no kit suits
	Boring    Price             `json:"boring,omitzero"`    // of one bore
}
