package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An AbilityOf says what an instrument can decide of a band by a rule. It is
// plain data.
type AbilityOf[Q units.Quantity] struct {
	Band   tolerance.BandOf[Q] `json:"band"`   // what is to be decided
	Rule   Rule                `json:"rule"`   // and by which rule
	Guard  Q                   `json:"guard"`  // guard band at each limit, rounded up to the quantum
	Accept tolerance.BandOf[Q] `json:"accept"` // readings that prove conformity; asks nothing where there are none
	Can    bool                `json:"can"`    // whether there are any
	Doubt  Q                   `json:"doubt"`  // width about each limit in which a reading proves nothing
	Ratio  float64             `json:"-"`      // test uncertainty ratio; +∞ for a one-sided band
	// Needed is the greatest standard uncertainty that leaves readings that
	// prove conformity, and Good the one that makes the ratio 4. For a
	// one-sided band there is no such bound, and both are 0.
	Needed Q `json:"needed,omitzero"`
	Good   Q `json:"good,omitzero"` // see Needed
}

// CanDecide says whether an instrument whose readings have the standard
// uncertainty u can decide a band at all, and what would. On a one-sided band
// every instrument can decide some readings; what [Settle] says of the
// reading at hand is then the question.
//
// A band that asks nothing is an [ErrNoLimit], a negative u an
// [ErrUncertainty], a rule without a factor above zero an [ErrFactor]: by the
// reading alone everything is decided, rightly or not.
func CanDecide[Q units.Quantity](r Rule, b tolerance.BandOf[Q], u Q) (AbilityOf[Q], error) {
	const op = "ability"
	var none AbilityOf[Q]
	if err := checkBand(op, b, u); err != nil {
		return none, err
	}
	if err := checkFactor(op, r.Factor); err != nil {
		return none, err
	}
	a := AbilityOf[Q]{Band: b, Rule: r, Guard: quanta[Q](math.Ceil(r.Factor * float64(u)))}
	a.Doubt = 2 * min(a.Guard, Q(int64(1)<<60))
	if !units.InRange(a.Guard) {
		return none, refuse(op, "", "guard band", "", ErrRange, "a guard band in range")
	}
	if zone, err := drawn(b.Interval(), a.Guard); err == nil {
		a.Can, a.Accept = true, tolerance.BandFrom(zone)
	}
	a.Ratio, _ = TestUncertaintyRatio(b, u)
	if span, ok := b.Interval().Width(); ok {
		a.Needed = mostFor(span/2, r.Factor)
		a.Good = quanta[Q](math.Floor(float64(span) / 16))
	}
	return a, nil
}

// mostFor is the greatest standard uncertainty that k times stays within reach.
func mostFor[Q units.Quantity](reach Q, k float64) Q {
	u := math.Floor(float64(reach) / k)
	if math.Ceil(k*u) > float64(reach) {
		u--
	}
	return quanta[Q](max(u, 0))
}

// ResolutionFor is the greatest step of a scale that keeps the standard
// uncertainty to u where everything else makes other: √12·√(u² − other²),
// rounded down to the quantum. It is [ErrNoZone] where everything else alone
// is as much as u or more: no scale helps then.
func ResolutionFor[Q units.Quantity](u, other Q) (step Q, err error) {
	const op = "resolution"
	switch {
	case !units.InRange(u) || !units.InRange(other):
		return 0, refuse(op, "", "standard uncertainty", "", ErrRange, "values in range")
	case u < 0 || other < 0:
		return 0, refuse(op, "", "standard uncertainty", min(u, other), ErrUncertainty, "zero or more")
	case other >= u:
		return 0, refuse(op, "", "everything else", other, ErrNoZone, "less than what is needed: better everything else first")
	}
	// (u − other)(u + other) keeps its digits where the two are close.
	rest := math.Sqrt(float64(u-other)) * math.Sqrt(float64(u)+float64(other))
	return quanta[Q](math.Floor(2 * sqrt3 * rest)), nil
}

// A SettlementOf says what would settle a reading that a rule leaves
// undecided. It is plain data.
type SettlementOf[Q units.Quantity] struct {
	Decided  bool `json:"decided"`  // the rule decides the reading as it is
	Distance Q    `json:"distance"` // from the reading to the nearest limit
	Limit    Q    `json:"limit"`    // that limit
	// Needed is the greatest standard uncertainty that decides the reading;
	// 0 where it stands on the limit itself: no instrument settles that, and
	// another reading must.
	Needed Q `json:"needed"`
	// Readings is how many readings of this kind, averaged, would settle it
	// if their errors were independent and the mean stayed where the reading
	// is; 0 where no number does. What they share, a setting ring's error or
	// a zero, doesn't average out.
	Readings int `json:"readings,omitzero"`
}

// Settle says how far a reading stands from the limit nearest to it and what
// standard uncertainty, resolution (with [ResolutionFor]) or number of
// readings would decide it by the rule. Errors as for [CanDecide] and
// [Decide].
func Settle[Q units.Quantity](r Rule, e EstimateOf[Q], b tolerance.BandOf[Q]) (SettlementOf[Q], error) {
	const op = "settle"
	var s SettlementOf[Q]
	if !e.InRange() {
		return s, refuse(op, "", "estimate", "", ErrRange, "an estimate in range")
	}
	if err := checkBand(op, b, 0); err != nil {
		return s, err
	}
	if err := checkFactor(op, r.Factor); err != nil {
		return s, err
	}
	v := b.Judge(e.Bracket(r.Factor))
	s.Decided = v != tolerance.Undecided
	first := true
	for _, side := range []func() (Q, tolerance.End){b.Lower, b.Upper} {
		limit, end := side()
		if end == tolerance.Absent {
			continue
		}
		if d := max(limit, e.value) - min(limit, e.value); first || d < s.Distance {
			s.Distance, s.Limit, first = d, limit, false
		}
	}
	s.Needed = mostFor(s.Distance, r.Factor)
	if s.Distance > 0 && b.Judge(around(e.value, r.Factor*float64(s.Needed))) == tolerance.Undecided {
		// Where the end is open, or the reading outside, touching is not enough.
		s.Needed = mostFor(s.Distance-Q(1), r.Factor)
	}
	if u := e.spread(); s.Needed > 0 {
		n := math.Ceil((u / float64(s.Needed)) * (u / float64(s.Needed)))
		if n <= 1e6 {
			s.Readings = max(1, int(n))
		}
	}
	return s, nil
}
