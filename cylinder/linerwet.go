package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// LinerProtrusion is how far a wet liner stands above the block face: the
// height of its flange, and of the shim under it, less the depth of the
// counterbore. Below zero it stands below the face.
func LinerProtrusion[N tolerance.Number[N]](flange, shim, counterbore N) N {
	return flange.Add(shim).Sub(counterbore)
}

// CounterboreDepth is the depth of a counterbore from what stands in it.
func CounterboreDepth[N tolerance.Number[N]](flange, shim, protrusion N) N {
	return flange.Add(shim).Sub(protrusion)
}

// LinerFlange is the height of a flange that protrudes so far over its shim
// and counterbore.
func LinerFlange[N tolerance.Number[N]](protrusion, shim, counterbore N) N {
	return protrusion.Sub(shim).Add(counterbore)
}

// LinerShim is the shim with which a liner protrudes so far from a
// counterbore.
func LinerShim[N tolerance.Number[N]](protrusion, flange, counterbore N) N {
	return protrusion.Sub(flange).Add(counterbore)
}

// ProtrusionWithShim is the protrusion that a liner would have over another
// shim, from the one measured over the shim that is in now.
func ProtrusionWithShim[N tolerance.Number[N]](protrusion, shim, other N) N {
	return protrusion.Sub(shim).Add(other)
}

// ShimForProtrusion is the shim that brings a liner to a wanted protrusion,
// from the one measured over the shim that is in now. Below zero no shim
// does: the counterbore is too shallow by that much.
func ShimForProtrusion[N tolerance.Number[N]](protrusion, shim, wanted N) N {
	return wanted.Sub(protrusion).Add(shim)
}

// CounterboreCut is how much deeper to cut a counterbore so that a liner
// protrudes as wanted over another shim.
func CounterboreCut[N tolerance.Number[N]](protrusion, shim, other, wanted N) N {
	return protrusion.Sub(shim).Add(other).Sub(wanted)
}

// LinerStep is the step between two neighbours: the difference of their
// protrusions.
func LinerStep[N tolerance.Number[N]](a, b N) N { return a.Sub(b).Abs() }

// LinerVariation is how much the protrusion of one liner differs round it. A
// liner that isn't seated, on dirt or a burr, shows so.
func LinerVariation[N tolerance.Number[N]](place N, more ...N) N { return place.Spread(more...) }

// LinerMean is the mean of several protrusions. It rounds once.
func LinerMean[N tolerance.Number[N]](place N, more ...N) N {
	for _, m := range more {
		place = place.Add(m)
	}
	return place.Scale(1, int64(1+len(more)))
}

// A StepRule says what the step between two liners is counted from. The zero
// value is WorstStep. The engine maker's manual says which is meant.
type StepRule uint8

// The rules for a step.
const (
	WorstStep StepRule = iota // from any place on one to any place on the other
	MeanStep                  // from the mean of one to the mean of the other
)

// A WetLiner is one liner, clamped down as the manual says, and what was read
// over it.
type WetLiner struct {
	Where  string              // "cylinder 2"
	Places []tolerance.Bracket // protrusion at several places; below zero, below the face
	Shim   tolerance.Bracket   // under it now; the zero Bracket where there is none
}

// shim is what is under it: nothing, exactly, where none is given.
func (l WetLiner) shim() tolerance.Bracket {
	if l.Shim.IsZero() {
		return tolerance.Exactly(units.Length(0))
	}
	return l.Shim
}

// WetLiners are the liners of one bank in order, each a neighbour of the next.
type WetLiners struct {
	Liners     []WetLiner     // in order along the bank
	Protrusion tolerance.Spec // of every place
	Step       tolerance.Spec // between neighbours
	Variation  tolerance.Spec // round one liner
	Rule       StepRule       // what a step is between; zero: WorstStep
}

// A WetLinerReport holds a finding for each liner, and for each pair of
// neighbours. Without limits they say what was measured and that nothing
// judges it. Variations are of liners read at two places or more.
type WetLinerReport struct {
	Protrusions []tolerance.Finding `json:"protrusions"` // liner by liner; below zero it stands below the face
	Variations  []tolerance.Finding `json:"variations"`
	Steps       []tolerance.Finding `json:"steps"` // between each liner and the next, 0 or more
	// Worst is the worst standing of all; where one can't be told and none is
	// past its limits, that. A variation that has a limit, of a liner read at
	// one place, can't be.
	Worst tolerance.Standing `json:"worst"`
	// WorstAt names where it is.
	WorstAt string `json:"worstAt"`
}

// Assess judges a bank of wet liners. The error of the depth gauge's setting
// is common to all of them and cancels in steps and variations; brackets that
// hold it make those wider than they need be.
func (w WetLiners) Assess() (WetLinerReport, error) {
	if err := w.check(); err != nil {
		return WetLinerReport{}, err
	}
	var r WetLinerReport
	keep := func(list *[]tolerance.Finding, measure, where string, spec tolerance.Spec, stations ...tolerance.Bracket) error {
		f, err := linerAssess(measure, where, spec, stations...)
		if err != nil {
			return err
		}
		*list = append(*list, f)
		if !spec.IsZero() && (r.WorstAt == "" || linerWorse(f.Standing, r.Worst)) {
			r.Worst, r.WorstAt = f.Standing, measure+", "+where
		}
		return nil
	}
	for i, l := range w.Liners {
		if err := keep(&r.Protrusions, "liner protrusion", l.Where, w.Protrusion, l.Places...); err != nil {
			return WetLinerReport{}, err
		}
		if len(l.Places) > 1 {
			if err := keep(&r.Variations, "variation of protrusion", l.Where, w.Variation, LinerVariation(l.Places[0], l.Places[1:]...)); err != nil {
				return WetLinerReport{}, err
			}
		} else if !w.Variation.IsZero() && (r.WorstAt == "" || linerWorse(tolerance.CantTell, r.Worst)) {
			r.Worst, r.WorstAt = tolerance.CantTell, "variation of protrusion, "+l.Where+": read at one place"
		}
		if i == 0 {
			continue
		}
		p := w.Liners[i-1]
		where := p.Where + " to " + l.Where
		if err := keep(&r.Steps, "step between liners", where, w.Step, w.step(p.Places, l.Places)); err != nil {
			return WetLinerReport{}, err
		}
	}
	return r, nil
}

// step is that between two liners by the rule.
func (w WetLiners) step(a, b []tolerance.Bracket) tolerance.Bracket {
	if w.Rule == MeanStep {
		return LinerStep(LinerMean(a[0], a[1:]...), LinerMean(b[0], b[1:]...))
	}
	al, ag := tolerance.Extremes(a...)
	bl, bg := tolerance.Extremes(b...)
	return ag.Sub(bl).Max(bg.Sub(al))
}

// mostProtrusion is far more than any liner protrudes, or any shim is thick.
const mostProtrusion = 10 * units.Millimetre

func (w WetLiners) check() error {
	if len(w.Liners) == 0 {
		return linerError("liners", "none", "at least one")
	}
	if w.Rule > MeanStep {
		return linerError("step rule", fmt.Sprint(uint8(w.Rule)), "WorstStep or MeanStep")
	}
	for _, l := range w.Liners {
		if len(l.Places) == 0 {
			return linerError("protrusion of "+l.Where, "none", "read at one place at least")
		}
		for _, p := range l.Places {
			if err := linerRead("protrusion of "+l.Where, p); err != nil {
				return err
			}
			if lo, end := p.Lower(); end != tolerance.Absent && lo.Abs() > mostProtrusion {
				return linerError("protrusion of "+l.Where, p.String(), "within 10 mm of the block face: is it in the right unit?")
			}
		}
		if lo, end := l.shim().Lower(); !l.shim().InRange() || end == tolerance.Absent || lo < 0 || lo > mostProtrusion {
			return linerError("shim under "+l.Where, l.Shim.String(), "from 0 to 10 mm")
		}
	}
	return nil
}

// linerWorse: past a limit before can't tell before within.
func linerWorse(a, b tolerance.Standing) bool { return linerRank(a) > linerRank(b) }

func linerRank(s tolerance.Standing) int {
	switch s {
	case tolerance.PastWearLimit:
		return 4
	case tolerance.OutsideNewBand:
		return 3
	case tolerance.CantTell:
		return 2
	case tolerance.Usable:
		return 1
	}
	return 0
}
