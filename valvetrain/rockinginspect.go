package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Rocking is a valve rocked in its guide under a dial gauge.
type Rocking struct {
	Where   string            // "exhaust 3"
	Travel  tolerance.Bracket // R, of the dial, from one extreme to the other
	Engaged tolerance.Bracket // L, of the stem in the guide
	Beyond  tolerance.Bracket // h, from the guide's near end to the dial's contact; 0 or more
	Stem    tolerance.Bracket // diameter of the stem
	// Straight says that the guide is known to be straight, by diameters at
	// several depths. Without it the clearance that is found is a mean of the two
	// mouths, and the worse of them is only bounded.
	Straight bool
	// LeastMouth is the least clearance that either mouth can have: what a guide
	// and a stem of this kind had when new. Zero where that isn't known.
	LeastMouth units.Length
	// TravelLimits are the manual's limits for the dial's travel, read as the
	// manual sets the dial up. ClearanceLimits are those for the clearance.
	// Either may be empty.
	TravelLimits    tolerance.Spec
	ClearanceLimits tolerance.Spec // of the clearance itself; may be empty
}

// A RockingReport is what rocking tells. The findings are judged against the
// limits that were given; without limits they can't tell, and say so.
type RockingReport struct {
	// Mean is the clearance of a straight guide, with the tilt's breadth within
	// it; of any other guide a mean of its mouths, nearer to the near one.
	Mean tolerance.Bracket `json:"mean"`
	Near tolerance.Bracket `json:"near"` // clearance at the mouth near the dial
	// Far is that at the far mouth; without an upper end where the dial stood at
	// the guide's very end.
	Far       tolerance.Bracket `json:"far"`
	Travel    tolerance.Finding `json:"travel"`    // of R itself
	Clearance tolerance.Finding `json:"clearance"` // least and greatest of the mouths
	Next      string            `json:"next"`      // what to do
}

// Inspect works out the clearance from a rocked valve and judges it. In a guide
// that isn't known to be straight the mouths lie anywhere between the least they
// can have and what the travel allows one of them when the other has the least;
// at least one is no larger than the mean, and one no smaller. It fails with an
// [InputError] where a size can't be, and where the clearance would be as large
// as the stem.
func (r Rocking) Inspect() (RockingReport, error) {
	if err := r.check(); err != nil {
		return RockingReport{}, err
	}
	mean := RockingClearance(r.Travel, r.Engaged, r.Beyond)
	mean = inputAtMostMore(mean, RockingShortfall(r.Travel, r.Engaged, r.Beyond, r.Stem))
	stem, _ := r.Stem.Lower()
	if _, hi := inputEnds(mean); !mean.InRange() || hi >= stem {
		return RockingReport{}, &InputError{"travel of the dial", r.Travel.String(), "small enough for a clearance below the stem " + r.Stem.String()}
	}
	out := RockingReport{Mean: mean, Near: mean, Far: mean}
	least, greatest := mean, mean
	if !r.Straight {
		if err := r.mouths(&out); err != nil {
			return RockingReport{}, err
		}
		meanLo, meanHi := inputEnds(mean)
		least = inputSpan(min(r.LeastMouth, meanLo), meanHi)
		greatest = out.Near.Max(out.Far)
		hi, end := greatest.Upper()
		greatest, _ = tolerance.NewInterval(meanLo, tolerance.Closed, max(hi, meanHi), end)
	}
	var err error
	if out.Travel, err = inputAssess("travel of the dial", r.Where, r.TravelLimits, r.Travel); err != nil {
		return RockingReport{}, err
	}
	if out.Clearance, err = inputAssess("stem-to-guide clearance by rocking", r.Where, r.ClearanceLimits, least, greatest); err != nil {
		return RockingReport{}, err
	}
	if !r.Straight && out.Clearance.Standing == tolerance.CantTell && !r.ClearanceLimits.IsZero() {
		out.Clearance.Settle = "measure the guide's bore at three depths, two ways across, and the stem: one rocking can't tell a worn mouth from an even clearance"
	}
	out.Next = r.next(out)
	return out, nil
}

// mouths bounds each mouth by the other's least. The greatest of one goes with
// the least of the other, the greatest travel and the h that favours it. A
// stem that leans by the slope t is broader by at most e = d·t²/2, which takes e
// from either mouth: the near one is then at most 2e more than without, at a
// slope of at most R/L, the far one (L/h + 2)·e, at a slope of at most R/2h.
func (r Rocking) mouths(out *RockingReport) error {
	other := tolerance.Exactly(r.LeastMouth)
	near := RockingNear(r.Travel, other, r.Engaged, r.Beyond)
	broader := r.Stem.MulDiv(r.Travel, r.Engaged).MulDiv(r.Travel, r.Engaged)
	near = inputAtMostMore(near, broader)
	_, nearHi := inputEnds(near)
	if !near.InRange() || nearHi < r.LeastMouth {
		return &InputError{"least clearance of a mouth", r.LeastMouth.String(), "no more than the travel " + r.Travel.String() + " allows"}
	}
	out.Near = inputSpan(r.LeastMouth, nearHi)
	if lo, _ := r.Beyond.Lower(); lo <= 0 {
		out.Far, _ = tolerance.NewInterval(r.LeastMouth, tolerance.Closed, 0, tolerance.Absent)
		return nil
	}
	twice := r.Beyond.Scale(2, 1)
	broader = r.Stem.MulDiv(r.Travel, twice).MulDiv(r.Travel, twice).Scale(1, 2)
	far := RockingFar(r.Travel, other, r.Engaged, r.Beyond)
	far = inputAtMostMore(far, broader.MulDiv(r.Engaged, r.Beyond).Add(broader.Scale(2, 1)))
	if !far.InRange() {
		return &InputError{"dial beyond the guide", r.Beyond.String(), "far enough out for the far mouth to show, or 0 mm"}
	}
	_, farHi := inputEnds(far)
	out.Far = inputSpan(r.LeastMouth, max(r.LeastMouth, farHi))
	return nil
}

func (r Rocking) next(out RockingReport) string {
	switch {
	case out.Travel.Standing >= tolerance.OutsideNewBand || out.Clearance.Standing >= tolerance.OutsideNewBand:
		return "measure the stem and the guide's bore apart, to see which of them is worn, before either is renewed"
	case out.Clearance.Settle != "" && out.Clearance.Standing == tolerance.CantTell:
		return out.Clearance.Settle
	case out.Travel.Settle != "" && out.Travel.Standing == tolerance.CantTell:
		return out.Travel.Settle
	}
	return "none by this test; a guide that rocks little can still be bell-mouthed or out of line with its seat"
}

func (r Rocking) check() error {
	for _, x := range []struct {
		field string
		b     tolerance.Bracket
		least units.Length
	}{
		{"travel of the dial", r.Travel, 0}, {"engaged length", r.Engaged, units.Picometre},
		{"dial beyond the guide", r.Beyond, 0}, {"stem diameter", r.Stem, units.Picometre},
	} {
		if err := inputBracket(x.field, x.b, x.least); err != nil {
			return err
		}
	}
	return inputAllowance("least clearance of a mouth", r.LeastMouth)
}
