package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// LimitsFit are those of a part that slides or turns in a bore.
type LimitsFit struct {
	Size      inspection.Limit `json:"size,omitzero"`      // of the part
	Bore      inspection.Limit `json:"bore,omitzero"`      // that it runs in
	Clearance inspection.Limit `json:"clearance,omitzero"` // on the diameter; asks for both
	Error     units.Length     `json:"error,omitzero"`     // ±, of readings written without one
	With      string           `json:"with,omitempty"`     // the instrument
	Care      inspection.Care  `json:"care,omitzero"`      // of the part
}

// LimitsClearance are those of the valve clearance, and how it is set.
type LimitsClearance struct {
	Limit inspection.Limit `json:"limit"`          // the band, new and used alike, engine cold unless At says otherwise
	At    string           `json:"at,omitempty"`   // "cold", "hot"
	Set   ClearanceSetBy   `json:"set,omitzero"`   // what sets it
	Ratio tolerance.Ratio  `json:"ratio,omitzero"` // of blade to shim or screw, where a rocker stands between; left out, 1
	Pitch units.Length     `json:"pitch,omitzero"` // of the screw's thread
	With  string           `json:"with,omitempty"` // the instrument
	Error units.Length     `json:"error,omitzero"` // ±, of readings written as one value
}

// LimitsShims are the shims that set the clearances: those of all valves are of
// one kind.
type LimitsShims struct {
	Drawer  []ShimPiece   `json:"drawer,omitempty"` // spare ones at hand
	Series  *LimitsSeries `json:"series,omitzero"`  // sizes that may be bought
	Disturb bool          `json:"disturb,omitzero"` // a valve in band may give its shim to another
	Error   units.Length  `json:"error,omitzero"`   // ±, of shims written as one value
	With    string        `json:"with,omitempty"`   // the instrument
}

// LimitsSeries is a series of shims by even steps: see [NewShimSeries].
type LimitsSeries struct {
	From  units.Length `json:"from"`           // the thinnest
	To    units.Length `json:"to"`             // the thickest
	Step  units.Length `json:"step"`           // between sizes
	Error units.Length `json:"error,omitzero"` // ± of each
}

// LimitsCamshaft are those of one camshaft.
type LimitsCamshaft struct {
	Name         string           `json:"name"`                  // "inlet camshaft"
	Journals     int              `json:"journals,omitzero"`     // how many
	InletLobes   int              `json:"inletLobes,omitzero"`   // how many, counted from the drive
	ExhaustLobes int              `json:"exhaustLobes,omitzero"` // see InletLobes
	Journal      inspection.Limit `json:"journal,omitzero"`      // diameter
	Bearing      inspection.Limit `json:"bearing,omitzero"`      // bore of a bearing
	Clearance    inspection.Limit `json:"clearance,omitzero"`    // of a journal in its bearing; asks for both
	RunOut       inspection.Limit `json:"runOut,omitzero"`       // of the middle journal, the dial's whole swing
	EndFloat     inspection.Limit `json:"endFloat,omitzero"`     // along the shaft
	InletLobe    LimitsLobe       `json:"inletLobe,omitzero"`    // of each inlet lobe
	ExhaustLobe  LimitsLobe       `json:"exhaustLobe,omitzero"`  // of each exhaust lobe
	Error        units.Length     `json:"error,omitzero"`        // ±, of sizes written without one
	DialError    units.Length     `json:"dialError,omitzero"`    // ±, of run-out and end float written without one
	With         string           `json:"with,omitempty"`        // the instrument for sizes
	DialWith     string           `json:"dialWith,omitempty"`    // and that for run-out and end float
	Care         inspection.Care  `json:"care,omitzero"`         // of the shaft
}

// LimitsLobe are those of a lobe.
type LimitsLobe struct {
	Height inspection.Limit `json:"height,omitzero"` // from nose to heel
	Lift   inspection.Limit `json:"lift,omitzero"`   // height less base circle; asks for the base circle too
}

// LimitsDrive is one measure of the camshaft's drive, as the manual takes it.
type LimitsDrive struct {
	Part    string            `json:"part"`           // "timing chain"
	Measure string            `json:"measure"`        // "length over 16 links, pulled straight"
	Limit   inspection.Limit  `json:"limit"`          // of it
	Error   units.Length      `json:"error,omitzero"` // ±, of a reading written without one
	With    string            `json:"with,omitempty"` // the instrument
	Then    inspection.Action `json:"then,omitzero"`  // what a part past its limit calls for; left out, replace
}
