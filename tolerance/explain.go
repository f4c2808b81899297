package tolerance

import (
	"slices"
	"strings"

	"github.com/tenthou/tenthou/units"
)

// Explain is the standing in a sentence, with what the limits leave open:
// Undecided is never a pass, and a part outside the new-part band is not
// thereby rejected where no wear limit is printed.
func (f FindingOf[Q]) Explain() string {
	wear := f.Spec.Wear.limits
	small, large := f.New.Least == Below, f.New.Greatest == Above // for a new part
	switch f.Standing {
	case AsNew:
		return "within the band for new parts"
	case Usable:
		switch {
		case f.Spec.New.IsZero():
			return "within the wear limit; no band for new parts given"
		case small || large:
			return "within the wear limit, outside the band for new parts"
		}
		return "within the wear limit; whether as new can't be told"
	case OutsideNewBand:
		s := tooFar(small && wear.loEnd == Absent, large && wear.hiEnd == Absent) + ": outside the new-part band; no wear limit given"
		if !wear.IsZero() {
			s += " on that side"
		}
		return s
	case PastWearLimit:
		pastLow, pastHigh := f.Wear.Least == Below, f.Wear.Greatest == Above
		s := tooFar(pastLow, pastHigh) + ": past the wear limit"
		if small && !pastLow || large && !pastHigh {
			s += "; elsewhere " + tooFar(small && !pastLow, large && !pastHigh) + " for the new-part band"
		}
		return s
	}
	switch {
	case f.Spec.IsZero():
		return "can't tell: no limit given"
	case small || large:
		return "can't tell, which is not a pass; " + tooFar(small, large) + " for the new-part band"
	}
	return "can't tell, which is not a pass"
}

// tooFar says on which sides a part fails.
func tooFar(small, large bool) string {
	switch {
	case small && large:
		return "too small in one place and too large in another"
	case small:
		return "too small"
	}
	return "too large"
}

// settle says what would settle the standing, its limits written by number.
func (f FindingOf[Q]) settle(number func(Q) string) string {
	if f.Spec.IsZero() {
		return "look up the limits in the engine maker's manual"
	}
	if f.Standing == OutsideNewBand || f.Standing == PastWearLimit {
		return ""
	}
	var asked []string
	f.open(func(limit Q, end End, upper bool) {
		if q := "whether " + f.subject(upper) + question(end, upper, number(limit)); !slices.Contains(asked, q) {
			asked = append(asked, q)
		}
	})
	if asked == nil {
		return ""
	}
	return "find out " + strings.Join(asked, ", and ")
}

func (f FindingOf[Q]) subject(upper bool) string {
	switch {
	case f.Least == f.Greatest:
		return "it is "
	case upper:
		return "the greatest is "
	}
	return "the least is "
}

// question asks whether a reading lies past a limit.
func question(end End, upper bool, limit string) string {
	switch {
	case upper && end == Closed:
		return "more than " + limit
	case upper:
		return limit + " or more"
	case end == Closed:
		return "less than " + limit
	}
	return limit + " or less"
}

// sentence puts a finding on one line.
func (f FindingOf[Q]) sentence(reading func(Interval[Q]) string, band func(BandOf[Q]) string, number func(Q) string) string {
	s := f.Where
	if s != "" {
		s += ": "
	}
	if f.Measure != "" {
		s += f.Measure + " "
	}
	if f.Least == f.Greatest {
		s += reading(f.Least)
	} else {
		s += "least " + reading(f.Least) + ", greatest " + reading(f.Greatest)
	}
	limit := func(name string, b BandOf[Q], m Mating) {
		if b.IsZero() {
			return
		}
		s += name + band(b)
		if m != MatingUnstated {
			s += " " + m.String()
		}
	}
	limit(", new ", f.Spec.New, f.Spec.NewMating)
	limit(", wear limit ", f.Spec.Wear, f.Spec.WearMating)
	s += ": " + f.Explain()
	settle := f.Settle
	if settle == f.settle(text[Q]) {
		settle = f.settle(number)
	}
	if settle != "" {
		s += "; to settle it, " + settle
	}
	return s
}

// String is the finding in exact values.
func (f FindingOf[Q]) String() string {
	return f.sentence(Interval[Q].String, BandOf[Q].String, text[Q])
}

// Text writes the finding on one line in unit u with at least so many places,
// and as many more as it takes that what is printed does not contradict the
// verdict. Brackets are rounded outward and limits inward; an end that stands
// on a limit is rounded as the limit is.
func (f FindingOf[Q]) Text(u units.Unit[Q], places int) string {
	p := f.figures(u, places)
	return f.sentence(
		func(i Interval[Q]) string {
			if !i.InRange() {
				return outOfRangeText
			}
			return string(i.append(nil, p.number))
		},
		func(b BandOf[Q]) string {
			if !b.InRange() {
				return outOfRangeText
			}
			return string(b.append(nil, p.number))
		},
		func(q Q) string { return string(p.number(nil, q, units.NearestEven)) })
}

// Places is the least number of decimal places, from the given one up, at
// which the readings printed in unit u stand to the printed limits as they do
// in truth. For [units.AllPlaces] it is that itself, unless those don't do.
func (f FindingOf[Q]) Places(u units.Unit[Q], places int) int { return f.figures(u, places).places }

func (f FindingOf[Q]) figures(u units.Unit[Q], places int) *figures[Q] {
	p := &figures[Q]{unit: u, places: places}
	p.limit(f.Spec.New)
	p.limit(f.Spec.Wear)
	p.widen(f.Least, f.Greatest)
	return p
}
