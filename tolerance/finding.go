package tolerance

import (
	"fmt"
	"slices"
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
	Spec     SpecOf[Q]   `json:"spec"`     // the limits
	New      Sides       `json:"newBand"`  // against the band for new parts
	Wear     Sides       `json:"wearBand"` // against the wear limit
	Standing Standing    `json:"standing"` // against both together
	// Margin is how far the readings lie inside the nearest limit that
	// governs them (the wear limit where there is one on that side, else the
	// new-part one); below zero, how far outside. Of temperatures, whose
	// differences are another quantity, it is left out.
	Margin Interval[Q] `json:"margin,omitzero"`
	// Unsettled holds the limits that the readings do not tell which side
	// they lie of, the wear limits first.
	Unsettled []Q `json:"unsettled,omitempty"`
	// Settle says what to find out, or look up, to know more of the standing;
	// it is empty where nothing would make it better or worse. Packages that
	// know the instrument put something more useful here.
	Settle string `json:"settle,omitempty"`
}

// A Finding is a finding on a length.
type Finding = FindingOf[units.Length]

// Assess judges readings of one measure, taken at one or more stations of a
// part: the greatest against the upper limits and the least against the
// lower. It fails, with an [AssessError], where nothing was read, where the
// limits contradict each other, and where a value is out of range; with no
// limits at all it gives a finding that can't tell, and says so.
func Assess[Q units.Quantity](measure, where string, spec SpecOf[Q], stations ...Interval[Q]) (FindingOf[Q], error) {
	f := FindingOf[Q]{Measure: measure, Where: where, Spec: spec}
	fail := func(kind error) (FindingOf[Q], error) {
		return f, &AssessError{Measure: measure, Where: where, Kind: kind}
	}
	if len(stations) == 0 {
		return fail(ErrNoReading)
	}
	if err := spec.Validate(); err != nil {
		return fail(err)
	}
	for i, s := range stations {
		if !s.InRange() {
			return fail(&RangeError{Op: fmt.Sprintf("reading %d", i+1)})
		}
	}
	least, greatest := Extremes(stations...)
	margin := spec.margin(least, greatest)
	if !margin.InRange() {
		return fail(&RangeError{Op: "margin"})
	}
	f.Least, f.Greatest, f.Margin = least, greatest, margin
	f.New, f.Wear = spec.New.judgeSides(least, greatest), spec.Wear.judgeSides(least, greatest)
	f.Standing = spec.stand(least, greatest)
	f.Unsettled = f.unsettled()
	f.Settle = f.settle(nil)
	return f, nil
}

// An AssessError names a measure that can't be judged, and why.
type AssessError struct {
	Measure, Where string // as they were given
	Kind           error  // ErrNoReading, a [RangeError] or a [SpecError]
}

func (e *AssessError) Error() string {
	name := clip(e.Measure)
	if where := clip(e.Where); name == "" {
		name = where
	} else if where != "" {
		name += ", " + where
	}
	if name != "" {
		name += ": "
	}
	return "tolerance: " + name + strings.TrimPrefix(e.Kind.Error(), "tolerance: ")
}

// Unwrap gives the cause.
func (e *AssessError) Unwrap() error { return e.Kind }

// governing is what the margin counts to: each side's wear limit, or where it
// has none the new-part one.
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
	if isTemperature[Q]() {
		return Interval[Q]{}
	}
	g := s.governing()
	low, high := least.Sub(Exactly(g.lo)), Exactly(g.hi).Sub(greatest)
	switch {
	case g.IsZero():
		return Interval[Q]{}
	case g.hiEnd == Absent:
		return low
	case g.loEnd == Absent:
		return high
	}
	// The two add up to the width at most, so no reading lies further from
	// both limits than halfway.
	half := Exactly(checkedSub(g.hi, g.lo)).Scale(1, 2)
	m := low.Min(high)
	if !notAbove(m, half) {
		m.hi, m.hiEnd = half.hi, half.hiEnd
	}
	return m.keep(half, half)
}

// An openLimit is one that the readings may lie on either side of.
type openLimit[Q units.Quantity] struct {
	at    Q
	end   End
	upper bool
}

// open lists the open limits, the wear limits first.
func (f *FindingOf[Q]) open() (list [4]openLimit[Q], n int) {
	add := func(b BandOf[Q], s Sides) {
		if lo, end := b.Lower(); end != Absent && s.Least == Undecided {
			list[n] = openLimit[Q]{lo, end, false}
			n++
		}
		if hi, end := b.Upper(); end != Absent && s.Greatest == Undecided {
			list[n] = openLimit[Q]{hi, end, true}
			n++
		}
	}
	add(f.Spec.Wear, f.Wear)
	add(f.Spec.New, f.New)
	return list, n
}

func (f *FindingOf[Q]) unsettled() (limits []Q) {
	list, n := f.open()
	for _, l := range list[:n] {
		if !slices.Contains(limits, l.at) {
			limits = append(limits, l.at)
		}
	}
	return limits
}
