package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// An Outcome is what other parts of an engine hang on, beside the report: from
// the bores after the work follow piston clearance and ring gaps, from skims
// and the crank's rise the deck, the squish and the compression ratio. It is
// plain data.
type Outcome struct {
	Bores       []BoreOutcome      `json:"bores,omitempty"`       // by their numbers
	Oversize    *OversizeChoice    `json:"oversize,omitempty"`    // where a bore has to be bored and kits are listed
	Compression *CompressionReport `json:"compression,omitempty"` // with its pointers
	Leakage     *LeakageReport     `json:"leakage,omitempty"`     // with its pointers
	Skims       []Skim             `json:"skims,omitempty"`       // of block faces and heads, whether or not the height allows it
	LineHone    *LineHoneReport    `json:"lineHone,omitempty"`    // with how far the crank rises
	Shims       []ShimChoice       `json:"shims,omitempty"`       // under wet liners, a bank each
}

// A Skim is what a face is to lose.
type Skim struct {
	Step inspection.Step `json:"step"`           // a block face or a head
	Bank string          `json:"bank,omitempty"` // "bank 2"; empty where there is one alone
	Plan SkimPlan        `json:"plan"`           // what to take off, and what it leaves
}

// A BoreOutcome is what one bore is, as far as it was read, and what it will be
// after the work.
type BoreOutcome struct {
	Cylinder int               `json:"cylinder"` // from 1
	Action   inspection.Action `json:"action"`   // what becomes of it
	// Least and Greatest are of all readings, at 20 °C; the zero Bracket where
	// nothing was read, or what was looks like a slip.
	Least    tolerance.Bracket `json:"least,omitzero"`
	Greatest tolerance.Bracket `json:"greatest,omitzero"` // see Least
	// LeastAfter and GreatestAfter are the same after the work: as read for a
	// bore that stays as it is, the size that it is finished to, or the limits
	// for new parts where that waits for its piston. The zero Bracket where the
	// decision is open.
	LeastAfter    tolerance.Bracket `json:"leastAfter,omitzero"`
	GreatestAfter tolerance.Bracket `json:"greatestAfter,omitzero"` // see LeastAfter
	Oversize      units.Length      `json:"oversize"`               // of its piston now
	OversizeAfter units.Length      `json:"oversizeAfter"`          // and after the work
	Finish        FinishSize        `json:"finish,omitzero"`        // for its own piston, where pistons were measured
	Levels        []LevelOutcome    `json:"levels,omitempty"`       // as read, level by level
}

// A LevelOutcome is a bore at one level: a ring gap follows from the bore at
// its place, and is least where the bore is.
type LevelOutcome struct {
	Name     string            `json:"name"`              // "25 mm down"
	Depth    units.Length      `json:"depth,omitzero"`    // below the block face
	Least    tolerance.Bracket `json:"least,omitzero"`    // of its directions; zero where not read
	Greatest tolerance.Bracket `json:"greatest,omitzero"` // see Least
}
