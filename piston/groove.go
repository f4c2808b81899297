package piston

import (
	"github.com/tenthou/tenthou/tolerance"
)

// A RingKind says which ring of the pack a groove holds. The zero value is
// CompressionRing.
type RingKind uint8

// The kinds of ring.
const (
	CompressionRing RingKind = iota // top and second
	OilRing                         // an oil control ring assembly
)

// A Remedy is what follows for a ring and its groove. The zero value is
// MeasureAgain. None of them is ever a thicker ring in a worn groove.
type Remedy uint8

// The remedies.
const (
	MeasureAgain Remedy = iota // the readings do not settle it
	ReUse                      // within its limits
	FitNewRing                 // a new ring brings the clearance back
	RenewGroove                // the groove is worn: re-cut it with a spacer, or renew the piston
	CheckFit                   // too tight: clean the groove, check that the ring is the right one
	AskManual                  // no limit is given that decides
)

// A Groove is what was measured of one ring groove with its used ring in it.
type Groove struct {
	Where      string              `json:"where"`               // "piston 2, top groove"
	Ring       RingKind            `json:"ring,omitzero"`       // a compression ring, or an oil control ring assembly
	Stations   []tolerance.Bracket `json:"stations"`            // side clearance, at one or more places round the ring
	Limits     tolerance.Spec      `json:"limits"`              // of the side clearance
	UsedHeight tolerance.Bracket   `json:"usedHeight,omitzero"` // of the used ring; zero where it was not measured
	NewHeight  tolerance.Band      `json:"newHeight,omitzero"`  // of a new ring; zero where unknown
	NewWidth   tolerance.Band      `json:"newWidth,omitzero"`   // of the groove when new; zero where unknown
}

// A GrooveReport is what follows from the readings of one groove. It is plain
// data, and its JSON reads back.
type GrooveReport struct {
	Finding   tolerance.Finding `json:"finding"`       // of the side clearance
	NewRing   NewRing           `json:"newRing"`       // what a new ring would do
	Wear      Wear              `json:"wear,omitzero"` // whose the wear is, where it is known
	WearKnown bool              `json:"wearKnown"`     // whether used height and new sizes were given
	Remedy    Remedy            `json:"remedy"`        // what follows
	Next      string            `json:"next"`          // what to do next, in words
}

// measure is the name of the measure in findings.
const measure = "ring side clearance"

// Assess judges a groove: the greatest clearance against the upper limit and
// the least against the lower, what a new ring would do, whose the wear is,
// and what to do next. An oil control ring assembly is judged only against
// limits that are given for it.
func (g Groove) Assess() (GrooveReport, error) {
	f, err := tolerance.Assess(measure, g.Where, g.Limits, g.Stations...)
	if err != nil {
		return GrooveReport{}, err
	}
	return g.Report(f)
}

// Report is [Groove.Assess] with a finding made elsewhere, such as by package
// feeler, which names the blades that would settle it. The finding must be of
// the groove's own stations and limits.
func (g Groove) Report(f tolerance.Finding) (GrooveReport, error) {
	if err := g.check(f); err != nil {
		return GrooveReport{}, err
	}
	r := GrooveReport{Finding: f}
	allowed := g.Limits.New
	if allowed.IsZero() {
		allowed = g.Limits.Wear
	}
	var err error
	if r.NewRing, err = TryNewRing(g.Stations, g.UsedHeight, g.NewHeight, allowed); err != nil {
		return GrooveReport{}, err
	}
	if !g.UsedHeight.IsZero() && !g.NewHeight.IsZero() && !g.NewWidth.IsZero() {
		if r.Wear, err = ShareWear(f.Greatest, g.UsedHeight, g.NewWidth, g.NewHeight); err != nil {
			return GrooveReport{}, err
		}
		r.WearKnown = true
	}
	r.Remedy, r.Next = g.remedy(r)
	if doubt := g.doubt(r); doubt != "" && (r.Remedy == FitNewRing || r.Remedy == RenewGroove) {
		r.Remedy, r.Next = MeasureAgain, doubt
	}
	return r, nil
}

// check refuses what can't be, whether it is needed for an answer or not.
func (g Groove) check(f tolerance.Finding) error {
	for _, c := range g.Stations {
		if hi, end := c.Upper(); end != tolerance.Absent && hi < 0 {
			return &InputError{"side clearance", c.String(), "0 mm or more: a ring that goes in has room"}
		}
	}
	if !g.NewWidth.IsZero() {
		if err := size("new groove width", g.NewWidth.Interval()); err != nil {
			return err
		}
	}
	if f.Spec != g.Limits {
		return &InputError{"the finding's limits", limitsText(f.Spec), "the groove's: " + limitsText(g.Limits)}
	}
	if least, greatest := tolerance.Extremes(g.Stations...); f.Least != least || f.Greatest != greatest {
		return &InputError{"the finding's clearance", f.Least.String() + " to " + f.Greatest.String(),
			"that of the groove's stations: " + least.String() + " to " + greatest.String()}
	}
	return nil
}

func limitsText(s tolerance.Spec) string {
	return "new " + s.New.String() + ", wear " + s.Wear.String()
}

// doubt names a reading that a costly remedy must not rest on.
func (g Groove) doubt(r GrooveReport) string {
	if g.NewHeight.Judge(g.UsedHeight) == tolerance.Above {
		return ringDoubt
	}
	return r.Wear.Doubt
}

// remedy follows from the standing, and past the limits from what a new ring
// would do.
func (g Groove) remedy(r GrooveReport) (Remedy, string) {
	f := r.Finding
	switch f.Standing {
	case tolerance.AsNew:
		return ReUse, "re-use"
	case tolerance.Usable:
		return ReUse, "may be re-used: " + f.Explain()
	case tolerance.CantTell:
		if g.Limits.IsZero() {
			if g.Ring == OilRing {
				return AskManual, "an oil control ring assembly has no side-clearance limit of its own unless the maker gives one"
			}
			return AskManual, f.Settle
		}
		return MeasureAgain, "not a pass; to settle it, " + f.Settle
	}
	return g.past(r)
}

// past is the remedy for a clearance that is certainly outside.
func (g Groove) past(r GrooveReport) (Remedy, string) {
	f := r.Finding
	tight := f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below
	wide := f.New.Greatest == tolerance.Above || f.Wear.Greatest == tolerance.Above
	if tight && !wide {
		return CheckFit, CheckFit.String() + "; never force it or file the groove"
	}
	// Outside the new-part band is not a reject where no wear limit says so.
	lead := ""
	if tight {
		lead = "too tight in one place and too large in another: look for carbon, a burr or a bent land and try again; "
	}
	if f.Standing == tolerance.OutsideNewBand {
		lead += "no wear limit is given, so the engine maker's manual decides whether it may run; "
	}
	switch r.NewRing.Outcome {
	case RingRestores:
		return FitNewRing, lead + "the ring is worn: a new ring brings the clearance back"
	case RingStillOut, RingUneven:
		return RenewGroove, lead + "the groove is worn, a new ring would still be loose: " + RenewGroove.String() + "; never a thicker ring"
	case RingTooTight:
		return CheckFit, lead + "a new ring would be too tight: check that it is the right one"
	}
	return MeasureAgain, lead + r.NewRing.Settle + ", which tells whether a new ring would bring it back"
}
