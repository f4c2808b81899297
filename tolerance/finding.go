package tolerance

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// A FindingOf joins what was measured, where, against what, and what follows.
// It is plain data. [Assess] makes one.
type FindingOf[Q units.Quantity] struct {
	Measure  string      `json:"measure"`  // "ring side clearance"
	Where    string      `json:"where"`    // "piston 2, top groove"
	Least    Interval[Q] `json:"least"`    // the least of the stations
	Greatest Interval[Q] `json:"greatest"` // the greatest of the stations
	Spec     SpecOf[Q]   `json:"spec"`
	New      Sides       `json:"newBand"`  // against the band for new parts
	Wear     Sides       `json:"wearBand"` // against the wear limit
	Standing Standing    `json:"standing"`
	// Margin is how far the readings lie inside the nearest limit that
	// governs them (the wear limit where there is one on that side, else the
	// new-part one); below zero, how far outside.
	Margin Interval[Q] `json:"margin"`
	// Unsettled holds the limits that the readings do not tell which side
	// they lie of: a reading that does would settle it.
	Unsettled []Q `json:"unsettled,omitempty"`
	// Settle says in words what would settle it. Packages that know the
	// instrument put something more useful here.
	Settle string `json:"settle,omitempty"`
}

// A Finding is a finding on a length.
type Finding = FindingOf[units.Length]

// Assess judges readings of one measure, taken at one or more stations of a
// part: the greatest against the upper limits and the least against the
// lower. It fails where nothing was read, where the limits contradict each
// other, and where a value is out of range; with no limits at all it gives a
// finding that can't tell, and says so.
func Assess[Q units.Quantity](measure, where string, spec SpecOf[Q], stations ...Interval[Q]) (FindingOf[Q], error) {
	f := FindingOf[Q]{Measure: measure, Where: where, Spec: spec}
	if len(stations) == 0 {
		return f, &AssessError{Measure: measure, Where: where, Kind: ErrNoReading}
	}
	if err := spec.Validate(); err != nil {
		return f, &AssessError{Measure: measure, Where: where, Kind: err}
	}
	for _, s := range stations {
		if !s.InRange() {
			return f, &AssessError{Measure: measure, Where: where, Kind: ErrRange}
		}
	}
	f.Least, f.Greatest = Extremes(stations...)
	f.New, f.Wear = spec.New.judgeSides(f.Least, f.Greatest), spec.Wear.judgeSides(f.Least, f.Greatest)
	f.Standing = spec.stand(f.Least, f.Greatest)
	f.Margin = spec.margin(f.Least, f.Greatest)
	f.Unsettled = spec.unsettled(f.Least, f.Greatest)
	f.Settle = f.settle()
	return f, nil
}

// An AssessError names a measure that can't be judged, and why.
type AssessError struct {
	Measure, Where string
	Kind           error
}

func (e *AssessError) Error() string {
	return "tolerance: " + e.Measure + ", " + e.Where + ": " + strings.TrimPrefix(e.Kind.Error(), "tolerance: ")
}

// Unwrap gives the cause.
func (e *AssessError) Unwrap() error { return e.Kind }

// governing is the band that the margin counts to: each side's wear limit, or
// where it has none the new-part one.
func (s SpecOf[Q]) governing() Interval[Q] {
	g := s.Wear.limits
	if g.loEnd == Absent {
		g.lo, g.loEnd = s.New.limits.lo, s.New.limits.loEnd
	}
	if g.hiEnd == Absent {
		g.hi, g.hiEnd = s.New.limits.hi, s.New.limits.hiEnd
	}
	return g
}

func (s SpecOf[Q]) margin(least, greatest Interval[Q]) Interval[Q] {
	g := s.governing()
	var m Interval[Q]
	if g.loEnd != Absent {
		m = least.Sub(Exactly(g.lo))
	}
	if g.hiEnd != Absent {
		high := Exactly(g.hi).Sub(greatest)
		if g.loEnd == Absent {
			return high
		}
		m = m.Min(high)
		// One reading can't lie further from both limits than halfway.
		half := Interval[Q]{hi: units.ScaleRound(checkedSub(g.hi, g.lo), 1, 2, units.Up), hiEnd: Closed}
		if !notAbove(m, half) {
			m.hi, m.hiEnd = half.hi, half.hiEnd
		}
	}
	return m
}

// unsettled lists the limits that lie inside a bracket judged against them.
func (s SpecOf[Q]) unsettled(least, greatest Interval[Q]) (limits []Q) {
	add := func(v Q, open bool) {
		for _, l := range limits {
			if l == v {
				return
			}
		}
		if open {
			limits = append(limits, v)
		}
	}
	for _, b := range []BandOf[Q]{s.Wear, s.New} {
		sides := b.judgeSides(least, greatest)
		add(b.limits.lo, b.limits.loEnd != Absent && sides.Least == Undecided)
		add(b.limits.hi, b.limits.hiEnd != Absent && sides.Greatest == Undecided)
	}
	return limits
}

func (f FindingOf[Q]) settle() string {
	switch {
	case f.Spec.IsZero():
		return "no limit is given: look it up in the engine maker's manual"
	case len(f.Unsettled) == 0:
		return ""
	}
	words := "a reading that tells on which side of "
	for i, l := range f.Unsettled {
		if i > 0 {
			words += " and of "
		}
		words += text(l)
	}
	return words + " it lies"
}

// Explain is the standing in a sentence, with what the limits leave open:
// Undecided is never a pass, and a part outside the new-part band is not
// thereby rejected where no wear limit is printed.
func (f FindingOf[Q]) Explain() string {
	switch f.Standing {
	case AsNew:
		return "within the band for new parts"
	case Usable:
		switch {
		case f.Spec.New.IsZero():
			return "within the wear limit"
		case f.New.Least == Undecided || f.New.Greatest == Undecided:
			return "within the wear limit; whether as new can't be told"
		}
		return "within the wear limit, outside the band for new parts"
	case OutsideNewBand:
		way := f.way(f.New)
		if f.Spec.Wear.IsZero() {
			return way + "outside the new-part band; no wear limit given"
		}
		return way + "outside the new-part band; no wear limit given on that side"
	case PastWearLimit:
		return f.way(f.Wear) + "past the wear limit"
	}
	if f.Spec.IsZero() {
		return "can't tell: no limit given"
	}
	return "can't tell, which is not a pass"
}

func (f FindingOf[Q]) way(s Sides) string {
	switch {
	case s.Least == Below && s.Greatest == Above:
		return "too small in one place and too large in another: "
	case s.Least == Below:
		return "too small: "
	case s.Greatest == Above:
		return "too large: "
	}
	return ""
}
