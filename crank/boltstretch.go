package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// BoltStretch is how much longer a bolt is tightened than free, by a micrometer
// over both ends. Exact. It tells the load better than a torque does, which goes
// mostly into friction.
func BoltStretch[N tolerance.Number[N]](free, tightened N) N { return tightened.Sub(free) }

// BoltTightened is the length to tighten a bolt to for a stretch. It undoes
// [BoltStretch].
func BoltTightened[N tolerance.Number[N]](free, stretch N) N { return free.Add(stretch) }

// BoltGrowth is how much a bolt has grown for good: its free length now less
// that when new. A bolt that was never past its yield point hasn't grown.
func BoltGrowth[N tolerance.Number[N]](asNew, now N) N { return now.Sub(asNew) }

// BoltLoad is the load in newtons that stretches a bolt so much, as long as it
// isn't past its yield point: F = δ·E·A/L, with the stretch and the stretched
// length in millimetres, the modulus in N/mm² (210 000 for steel) and the
// cross-section in mm². The stretched length is that between head and nut, and
// about half of each; where the shank has several sections the stretch of each
// adds up ([BoltStretchUnder]).
func BoltLoad[R tolerance.Real[R]](stretchMM, modulusNMM2, areaMM2, lengthMM R) R {
	return stretchMM.Mul(modulusNMM2).Mul(areaMM2).Quo(lengthMM)
}

// BoltStretchUnder is the stretch in millimetres of one section of a bolt under
// a load. It undoes [BoltLoad].
func BoltStretchUnder[R tolerance.Real[R]](loadN, modulusNMM2, areaMM2, lengthMM R) R {
	return loadN.Mul(lengthMM).Quo(modulusNMM2.Mul(areaMM2))
}

// BoltArea is the cross-section of a round shank in mm², from its diameter in
// millimetres.
func BoltArea[R tolerance.Real[R]](diameterMM R) R {
	return diameterMM.Mul(diameterMM).Mul(diameterMM.Const(math.Pi / 4))
}

// A BoltCheck is one rod or main cap bolt, measured over its ends. Lengths that
// weren't measured stay zero. A bolt that is torqued to yield (tightened by
// angle past its yield point) is used once, whatever its length; new ones are
// measured free before they go in.
type BoltCheck struct {
	Where     string            // "rod 3, bolt 1"
	Yield     bool              // tightened to yield: used once
	Used      bool              // has been tightened before
	AsNew     tolerance.Bracket // free, when new
	Free      tolerance.Bracket // free, now
	Tightened tolerance.Bracket // as fitted
	Stretch   tolerance.Spec    // of tightened less free
	Length    tolerance.Spec    // of the free length, for use again
	Growth    tolerance.Spec    // of free now less when new
}

// A BoltReport is what follows for a bolt.
type BoltReport struct {
	Findings []tolerance.Finding `json:"findings"` // stretch, free length, growth, as far as measured
	Worst    tolerance.Standing  `json:"worst"`    // of those with limits
	WorstAt  string              `json:"worstAt"`  // the measure
	Renew    bool                `json:"renew"`    // not to be used again, for certain
	Next     string              `json:"next"`     // what to do
}

// Assess judges a bolt. It fails with an [InputError] where nothing was
// measured, where a length isn't above zero, and where a tightened bolt is
// shorter than free.
func (c BoltCheck) Assess() (BoltReport, error) {
	var r BoltReport
	if err := c.check(); err != nil {
		return r, err
	}
	r.Findings = make([]tolerance.Finding, 0, 3)
	var failed error
	c.measures(func(measure string, spec tolerance.Spec, at tolerance.Bracket) {
		f, err := tolerance.Assess(measure, c.Where, spec, at)
		if err != nil && failed == nil {
			failed = err
		}
		r.Findings = append(r.Findings, f)
		if !spec.IsZero() && (r.WorstAt == "" || runOutRank(f.Standing) > runOutRank(r.Worst)) {
			r.Worst, r.WorstAt = f.Standing, measure
		}
	})
	if failed != nil {
		return BoltReport{}, failed
	}
	out := runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand)
	switch {
	case c.Yield && c.Used:
		r.Renew, r.Next = true, "renew: a bolt tightened to yield is used once, whatever its length"
	case out && r.WorstAt == boltStretch:
		r.Next = "stretch is out of limits: loosen the bolt, measure its free length again, and see to threads and oil before tightening"
	case out:
		r.Renew, r.Next = true, "renew: "+r.WorstAt+" is out of limits"
	case r.WorstAt == "":
		r.Next = "no limits were given: use it again only as the engine maker's manual says"
	case r.Worst == tolerance.CantTell:
		r.Next = r.WorstAt + " can't be told yet, which is not a pass: measure it more finely, or renew"
	default:
		r.Next = within(r.Worst) + "; see to threads, nut and seat too"
	}
	return r, nil
}

// boltStretch is the name of a measure that more than renewing can put right.
const boltStretch = "stretch"

// measures works out all that was measured, in order.
func (c *BoltCheck) measures(visit func(measure string, spec tolerance.Spec, at tolerance.Bracket)) {
	visit("free length", c.Length, c.Free)
	if !c.AsNew.IsZero() {
		visit("growth", c.Growth, BoltGrowth(c.AsNew, c.Free))
	}
	if !c.Tightened.IsZero() {
		visit(boltStretch, c.Stretch, BoltStretch(c.Free, c.Tightened))
	}
}

func (c *BoltCheck) check() error {
	if c.Free.IsZero() {
		return &InputError{c.Where + ", free length", "not measured", "measured"}
	}
	for _, x := range [...]struct {
		name string
		b    tolerance.Bracket
	}{{"free length", c.Free}, {"free length when new", c.AsNew}, {"tightened length", c.Tightened}} {
		if x.b.IsZero() {
			continue
		}
		if err := inputOf(c.Where, thickBracket(x.name, x.b)); err != nil {
			return err
		}
	}
	if c.Tightened.IsZero() {
		return nil
	}
	if hi, _ := BoltStretch(c.Free, c.Tightened).Upper(); hi < units.Length(0) {
		return &InputError{c.Where + ", tightened length", c.Tightened.String(), "at least the free length " + c.Free.String()}
	}
	return nil
}
