package piston

import "github.com/tenthou/tenthou/tolerance"

// Finding is one result as a finding, with its place, its margin, and what would
// settle one that can't be told. The limits must be those that it was judged
// by.
func (s *PinSurvey) Finding(l *PinLimits, r PinResult) (tolerance.Finding, error) {
	where := s.Where
	if r.Section >= 0 {
		if at := s.place(r); at != "" {
			if where != "" {
				where += ", "
			}
			where += at
		}
	}
	f, err := tolerance.Assess(r.Measure.String(), where, l.Spec(r.Measure), r.Least, r.Greatest)
	if err != nil {
		return f, err
	}
	if !r.Known {
		f.Settle = s.missing(r.Measure)
		return f, nil
	}
	settleBy(&f)
	return f, nil
}

// place names the section of an ovality.
func (s *PinSurvey) place(r PinResult) string {
	list, k := s.Bosses, r.Section
	switch r.Measure {
	case PinMeasureOvality:
		if list = s.AtBosses; k >= len(list) {
			list, k = s.AtSmallEnd, k-len(list)
		}
	case PinMeasureSmallEndOvality:
		list = s.SmallEnd
	}
	if k < len(list) {
		return list[k].Where
	}
	return ""
}

// missing says what to measure for a measure that is not known.
func (s *PinSurvey) missing(m PinMeasure) string {
	of := "pin"
	switch m {
	case PinMeasureBossOvality, PinMeasureBossTaper, PinMeasureBossWear:
		of = "bosses"
	case PinMeasureSmallEndOvality, PinMeasureSmallEndTaper, PinMeasureSmallEndWear:
		of = "small end"
	}
	switch m {
	case PinMeasureSize:
		return "measure the pin"
	case PinMeasureOvality, PinMeasureBossOvality, PinMeasureSmallEndOvality:
		return "one reading tells no ovality: measure the " + of + " in two directions or more at one place"
	case PinMeasureTaper, PinMeasureBossTaper, PinMeasureSmallEndTaper:
		return "one reading tells no taper: measure the " + of + " at two places or more along it"
	case PinMeasureWear, PinMeasureBossWear, PinMeasureSmallEndWear:
		return "measure the " + of + ", and look up the size when new"
	case PinMeasureBossClearance:
		return "measure the bosses, and the pin where it lies in them"
	case PinMeasureSmallEndClearance:
		return "measure the small end, and the pin where it lies in it"
	case PinMeasureSmallEndInterference:
		if s.Fit == PinFitNotStated {
			return "say whether the pin floats in the small end or is pressed into it"
		}
		return "measure the small end, and the pin where it lies in it"
	}
	return "measure the pin's length, and what lies between the seated circlips"
}
