package main

import (
	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// head is the file.
type head struct {
	Schema    int            `json:"schema"`
	Part      string         `json:"part"`
	Blades    string         `json:"blades,omitempty"`    // "metric 20", …
	OwnBlades []feeler.Blade `json:"ownBlades,omitempty"` // or one's own, a blade a text
	Limits    limits         `json:"limits"`
	Lines     []line         `json:"lines,omitempty"`   // by straight-edge,
	Heights   *heights       `json:"heights,omitempty"` // or by heights
	Tunnel    *tunnel        `json:"camTunnel,omitempty"`
	Skim      *skim          `json:"skim,omitempty"`
	Engine    *engine        `json:"engine,omitempty"` // for what a skim does to the ratio
}

// limits are those of the gap under a straight-edge. Flatness is that of a
// face by heights, as a drawing gives it.
type limits struct {
	Overall    spec    `json:"overall,omitzero"`
	Lengthwise spec    `json:"lengthwise,omitzero"`
	Across     spec    `json:"across,omitzero"`
	Diagonal   spec    `json:"diagonal,omitzero"`
	Local      []local `json:"local,omitempty"`
	Flatness   spec    `json:"flatness,omitzero"`
}

// spec is what the manual gives, as it prints it.
type spec struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

type local struct {
	Over  units.Length `json:"over"` // "150 mm"
	Limit spec         `json:"limit"`
}

type line struct {
	Name      string             `json:"name"`
	Direction cylinder.Direction `json:"direction"`
	Seat      cylinder.Seat      `json:"straightEdge"`   // "rests", "rocks" or "unsaid"
	Ends      []string           `json:"ends,omitempty"` // where it rocks: what was tried under its two ends
	Gaps      []gap              `json:"gaps,omitempty"`
}

type gap struct {
	At    string       `json:"at"`
	Tried string       `json:"tried"`         // ".002 in free, .0025 in drag, .003 in refused"
	Over  units.Length `json:"over,omitzero"` // a short straight-edge's length
}

type heights struct {
	StepLengthwise units.Length     `json:"stepLengthwise"`
	StepAcross     units.Length     `json:"stepAcross"`
	Error          units.Length     `json:"error"` // each height is within ± this
	Rows           [][]units.Length `json:"rows"`  // each lengthwise
}

// tunnel is that of a camshaft in the head.
type tunnel struct {
	Tried string `json:"tried,omitempty"` // under a straight-edge along it; left out where it wasn't checked
	Limit spec   `json:"limit,omitzero"`
}

type skim struct {
	Stock       units.Length      `json:"stock"`
	Step        units.Length      `json:"step,omitzero"`
	Height      tolerance.Bracket `json:"height,omitzero"`
	LeastHeight units.Length      `json:"leastHeight,omitzero"`
	MostOff     units.Length      `json:"mostOff,omitzero"`
	OffBefore   tolerance.Bracket `json:"offBefore,omitzero"`
}

// engine is what the ratio comes from. With an open area the part is a head,
// without one a block.
type engine struct {
	Bore        tolerance.Bracket      `json:"bore"`
	Stroke      tolerance.Bracket      `json:"stroke"`
	Chamber     cylinder.VolumeBracket `json:"chamber"`
	GasketBore  tolerance.Bracket      `json:"gasketBore"`
	Gasket      tolerance.Bracket      `json:"gasket"`
	Deck        cylinder.Deck          `json:"deck"`
	Dish        cylinder.VolumeBracket `json:"dish,omitzero"`
	Dome        cylinder.VolumeBracket `json:"dome,omitzero"`
	OpenAreaMM2 float64                `json:"openAreaMM2,omitempty"`
	CamTeeth    int                    `json:"camTeeth,omitempty"`
	CamPitch    units.Length           `json:"camPitch,omitzero"`
}
