package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Inspect judges all that was measured of an engine's pistons, rings and
// gudgeon pins: what looks like a slip, findings in the order of the bench,
// what becomes of each part, what is still to be measured, what to order, what
// clearances and gaps will be after the work, and the cautions that apply. A
// half-filled document is the normal case; of an empty one, [Limits.Blank], what
// comes is the list of all readings, in the order of measuring.
//
// The bores come with the readings, as they are and as they will be: see
// [ReadingsBore]. A bore that is finished for another kit asks for a new
// piston, whatever the old one measures.
//
// Undecided is not a pass: such a part is to be measured again, and the
// decision says with what. The engine maker's manual governs.
//
// It fails, with an [inspection.PathError], where limits or readings can't be,
// and where a piston or a pin stands in another one's place, or a piston the
// wrong way round. For many engines of one kind use [Limits.Prepare].
func Inspect(l *Limits, r *Readings) (inspection.Report, error) { return l.Prepare().Inspect(r) }

// Inspect is the function [Inspect] by limits that are ready.
func (in *Inspector) Inspect(r *Readings) (inspection.Report, error) {
	x, again := in.memory.Get().(*inspecting)
	if !again {
		x = new(inspecting)
	}
	x.in, x.r = in, r
	err := x.all()
	report := x.report
	clear(x.pistons) // keep no one's readings
	clear(x.rings)
	clear(x.set[:cap(x.set)])
	*x = inspecting{pistons: x.pistons, rings: x.rings, set: x.set[:0], values: x.values[:0], stations: x.stations, brackets: x.brackets, sections: x.sections}
	in.memory.Put(x)
	if err != nil {
		return inspection.Report{}, err
	}
	return report, nil
}

// inspecting is one inspection on its way.
type inspecting struct {
	in              *Inspector
	r               *Readings
	report          inspection.Report
	step            inspection.Step      // where on the bench it is
	lengths         []tolerance.Finding  // memory for findings
	at              [mostPistons + 1]int // of a piston in the list, from 1
	bore            [mostPistons + 1]int // of a bore in the list, from 1
	pistons         []pistonState
	rings           []ringState           // of all pistons, one after the other
	odd             []*inspection.Reading // that look like a slip
	set             []entry               // memory for a set that is proofread
	values          []inspection.Reading  // and for its values
	storing         bool                  // whether they are gathered, or their ends alone
	entered         int                   // how many were
	wide            bool                  // one lacks an end
	least, greatest units.Length          // their middles
	mass            tally                 // of the set
	massNext        string                // what to do about it
	crowns          tally                 // of the set, for the gasket
	gasket          GasketChoice          // as far as it could be asked for
	marked          bool                  // whether the protrusions were all known

	// Memory for surveys, which are worked out one after the other.
	stations  []SkirtStation
	brackets  []tolerance.Bracket
	sections  []PinSection
	skirts    []SkirtResult
	pins      []PinResult
	places    [2]RingGapStation
	gapsAt    [2]RingGapAt
	pin       PinSurvey
	skirt     SkirtSurvey
	skirtRoom [skirtMeasures]SkirtResult
	pinRoom   [pinMeasures]PinResult
}

// A pistonState is what is known of one piston and its pin on the way.
type pistonState struct {
	doc  *ReadingsPiston // or of nothing
	bore *ReadingsBore   // or of nothing
	here int             // its place in the list, or where it would stand
	kit  *LimitsKit      // that its bore is to be finished for; nil where it stays

	piston, pin, rod tally
	renew            []string             // why another piston is needed
	renewPin         []string             // why another pin is
	renewRod         []string             // why the small end must be renewed
	recut            []groove             // what its grooves are to be cut to
	bores            [2]tolerance.Bracket // where the skirt runs, the least and the greatest
	skirt            tolerance.Bracket    // at the measuring height, as read
	fits             [3]int               // findings on the clearances, from 1: skirt, bosses, small end
	crown            tolerance.Bracket    // protrusion, as read
	holes            pinSums              // of pin and holes, as read
	becomes          inspection.Action    // what becomes of the piston
	pinBecomes       inspection.Action
	rodBecomes       inspection.Action
}

// A ringState is what is known of one ring on the way.
type ringState struct {
	tally
	renew   []string             // why another ring is needed
	groove  groove               // what becomes of its groove
	file    string               // what is to be filed off its ends
	filing  string               // and why
	side    [2]tolerance.Bracket // clearance as read, the least and the greatest
	height  tolerance.Bracket    // of the used ring
	gap     [2]tolerance.Bracket // as known along the travel, the least and the greatest
	fits    [2]int               // findings on them, from 1: side, gap
	becomes inspection.Action
}

var (
	noPiston ReadingsPiston // stands for one that isn't in the document
	noBore   ReadingsBore   // likewise
	noRing   ReadingsRing   // likewise
)

// all goes through the parts in the order of the bench.
func (x *inspecting) all() error {
	if x.in.err != nil {
		return x.in.err
	}
	if err := x.r.Validate(); err != nil {
		return err
	}
	if err := x.fits(); err != nil {
		return err
	}
	x.begin()
	x.missingBores()
	x.proofreadSizes()
	x.step = inspection.StepPistons
	for i := range x.pistons {
		if err := x.skirtOf(i); err != nil {
			return err
		}
	}
	if err := x.masses(); err != nil {
		return err
	}
	x.step = inspection.StepPins
	for i := range x.pistons {
		if err := x.pinOf(i); err != nil {
			return err
		}
	}
	x.step = inspection.StepRings
	for i := range x.pistons {
		if err := x.ringsOf(i); err != nil {
			return err
		}
	}
	x.proofreadRings()
	x.step = inspection.StepAssembly
	if err := x.protrusions(); err != nil {
		return err
	}
	x.decisions()
	x.orders()
	x.cautions()
	return x.predict()
}

// begin makes room and finds each piston's place.
func (x *inspecting) begin() {
	in := x.in
	n := in.limits.Pistons
	x.lengths = make([]tolerance.Finding, 0, n*in.count)
	x.report.Findings = make([]inspection.Finding, 0, n*in.count)
	x.report.Predicted = make([]inspection.Finding, 0, n*in.will)
	x.report.Decisions = make([]inspection.Decision, 0, n*(3+len(in.rings))+2)
	x.skirts, x.pins = x.skirtRoom[:0], x.pinRoom[:0]
	x.report.Slips = append(x.report.Slips, in.slips...)
	if x.pistons == nil {
		x.pistons = make([]pistonState, n)
		x.rings = make([]ringState, n*len(in.rings))
		x.brackets = make([]tolerance.Bracket, 0, in.stations)
		x.sections = make([]PinSection, 0, in.sections)
	}
	next := len(x.r.Pistons)
	for i := range x.pistons {
		p, names := &x.pistons[i], &in.names[i]
		p.doc, p.bore = &noPiston, &noBore
		if at := x.at[i+1]; at > 0 {
			p.doc, p.here = &x.r.Pistons[at-1], at-1
		} else {
			p.here = next
			next++
		}
		if at := x.bore[i+1]; at > 0 {
			p.bore = &x.r.Bores[at-1]
			if p.bore.Oversize != "" {
				p.kit = in.kit(p.bore.Oversize)
			}
		}
		p.piston = tallyOf(inspection.StepPistons, "pistons", names.piston)
		p.pin = tallyOf(inspection.StepPins, "gudgeon pins", names.piston)
		p.rod = tallyOf(inspection.StepPins, "small ends", names.rod)
		for k := range in.rings {
			x.ring(i, k).tally = tallyOf(inspection.StepRings, "rings", names.rings[k])
		}
	}
	x.mass = tallyOf(inspection.StepPistons, "piston masses", "")
	x.crowns = tallyOf(inspection.StepAssembly, "head gasket", "")
}

// ring is the state of one ring.
func (x *inspecting) ring(piston, k int) *ringState { return &x.rings[piston*len(x.in.rings)+k] }

// missingBores lists what of the bores is still to be measured, where they are
// asked for here.
func (x *inspecting) missingBores() {
	for i := range x.r.Bores {
		b := &x.r.Bores[i]
		if b.Elsewhere {
			continue
		}
		names := &x.in.names[b.Cylinder-1]
		miss := func(field, where string) {
			x.report.Missing = append(x.report.Missing, inspection.Missing{
				Step: inspection.StepBores, Path: inspection.Index("bores", i) + "." + field, Measure: "bore", Where: names.cylinder + ", " + where, With: "bore gauge",
			})
		}
		if x.in.boreSkirt {
			for k := range max(1, len(b.Skirt)) {
				if k < len(b.Skirt) && b.Skirt[k].Taken {
					continue
				}
				miss(inspection.Index("skirt", k), "where the skirt runs, reading "+strconv.Itoa(k+1))
			}
		}
		if x.in.boreTravel && !b.Top.Taken {
			miss("top", "mean near the top of the rings' travel")
		}
		if x.in.boreTravel && !b.Bottom.Taken {
			miss("bottom", "mean near the bottom of the rings' travel")
		}
	}
}
