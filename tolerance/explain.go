package tolerance

import "github.com/tenthou/tenthou/units"

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

// settle says what would settle the standing, its limits written by p.
func (f *FindingOf[Q]) settle(p *figures[Q]) string {
	if f.Spec.IsZero() {
		return "look up the limits in the engine maker's manual"
	}
	if f.Standing == OutsideNewBand || f.Standing == PastWearLimit {
		return ""
	}
	list, n := f.open()
	if n == 0 {
		return ""
	}
	const find, and = "find out ", ", and "
	var room [256]byte
	s := append(room[:0], find...)
	var from, to [4]int // where the questions stand
	asked := 0
	for _, l := range list[:n] {
		before := len(s)
		if asked > 0 {
			s = append(s, and...)
		}
		from[asked] = len(s)
		s = f.question(s, l, p)
		to[asked] = len(s)
		for k := range asked {
			if string(s[from[k]:to[k]]) == string(s[from[asked]:]) {
				s = s[:before]
				break
			}
		}
		if len(s) > before {
			asked++
		}
	}
	return string(s)
}

// question asks whether a reading lies past a limit.
func (f *FindingOf[Q]) question(s []byte, l openLimit[Q], p *figures[Q]) []byte {
	subject, before, after := "the least is ", "", ""
	switch {
	case f.Least == f.Greatest:
		subject = "it is "
	case l.upper:
		subject = "the greatest is "
	}
	switch {
	case l.upper && l.end == Closed:
		before = "more than "
	case l.upper:
		after = " or more"
	case l.end == Closed:
		before = "less than "
	default:
		after = " or less"
	}
	s = append(append(append(s, "whether "...), subject...), before...)
	return append(p.number(s, l.at, units.NearestEven), after...)
}

// sentence puts a finding on one line, its figures written by p.
func (f *FindingOf[Q]) sentence(p *figures[Q]) string {
	var room [512]byte
	s := room[:0]
	if f.Where != "" {
		s = append(append(s, f.Where...), ": "...)
	}
	if f.Measure != "" {
		s = append(append(s, f.Measure...), ' ')
	}
	if f.Least == f.Greatest {
		s = f.Least.appendOrRefuse(s, p)
	} else {
		s = f.Least.appendOrRefuse(append(s, "least "...), p)
		s = f.Greatest.appendOrRefuse(append(s, ", greatest "...), p)
	}
	s = f.Spec.New.appendLimit(s, ", new ", f.Spec.NewMating, p)
	s = f.Spec.Wear.appendLimit(s, ", wear limit ", f.Spec.WearMating, p)
	s = append(append(s, ": "...), f.Explain()...)
	settle := f.Settle
	if p != nil && settle == f.settle(nil) {
		settle = f.settle(p)
	}
	if settle != "" {
		s = append(append(s, "; to settle it, "...), settle...)
	}
	return string(s)
}

// appendOrRefuse appends a reading, or that it is out of range.
func (i Interval[Q]) appendOrRefuse(s []byte, p *figures[Q]) []byte {
	if !i.InRange() {
		return append(s, outOfRangeText...)
	}
	return i.append(s, p)
}

// appendLimit appends a limit that is given, and the mating part it is for.
func (b BandOf[Q]) appendLimit(s []byte, name string, m Mating, p *figures[Q]) []byte {
	if b.IsZero() {
		return s
	}
	s = append(s, name...)
	if b.InRange() {
		s = b.append(s, p)
	} else {
		s = append(s, outOfRangeText...)
	}
	if m != MatingUnstated {
		s = append(append(s, ' '), m.String()...)
	}
	return s
}

// String is the finding in exact values.
func (f FindingOf[Q]) String() string { return f.sentence(nil) }

// Text writes the finding on one line in unit u with at least so many places,
// and as many more as it takes that what is printed does not contradict the
// verdict. Brackets are rounded outward and limits inward; an end that stands
// on a limit is rounded as the limit is.
func (f FindingOf[Q]) Text(u units.Unit[Q], places int) string {
	p := f.figures(u, places)
	return f.sentence(&p)
}

// Places is the least number of decimal places, from the given one up, at
// which the readings printed in unit u stand to the printed limits as they do
// in truth. For [units.AllPlaces] it is that itself, unless those don't do.
func (f FindingOf[Q]) Places(u units.Unit[Q], places int) int { return f.figures(u, places).places }

func (f *FindingOf[Q]) figures(u units.Unit[Q], places int) figures[Q] {
	p := figures[Q]{unit: u, places: places}
	p.limit(f.Spec.New)
	p.limit(f.Spec.Wear)
	p.widen(f.Least, f.Greatest)
	return p
}
