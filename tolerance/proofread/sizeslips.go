package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// fit says how a figure without its slip lies to the other figure.
type fit uint8

const (
	misses fit = iota
	almost     // agrees as a figure that was cut off
	fits
)

// fit compares what an undone slip gives in place of a figure with the other
// figure. To nought everything small enough would fit.
func (s *search[Q]) fit(side Side, x shown) (fit, uint64) {
	other, zero := s.at[side.other().index()], s.figs[side.index()].zero
	off := apart(x.value, other.value)
	switch {
	case other.value == zero:
		return misses, off
	case agree(x, other):
		return fits, off
	}
	short := (x.value < zero) == (other.value < zero) && apart(x.value, zero) < apart(other.value, zero)
	if short && 2*off < 2*uint64(x.step)+uint64(other.step) {
		return almost, off
	}
	return misses, off
}

// sign tries the other sign.
func (s *search[Q]) sign(side Side) {
	f := s.figs[side.index()]
	f.minus = !f.minus
	if v, ok := f.value(f.m, f.places); ok {
		if fit, off := s.fit(side, v); fit == fits {
			s.add(SlipOf[Q]{Kind: WrongSign, In: side, Undone: f.written(v.value, f.places), Rank: rankSign}, off)
		}
	}
}

// decimalPlace tries the point up to four places either way. Where that gives
// nearly the other figure (within 2 %), a second, smaller slip may have come
// on top.
func (s *search[Q]) decimalPlace(side Side) {
	f, other := &s.figs[side.index()], s.at[side.other().index()]
	for shift := -4; shift <= 4; shift++ {
		places := f.places + shift // the digits stand so far too far right
		v, ok := f.value(f.m, places)
		if shift == 0 || f.m == 0 || !ok {
			continue
		}
		slip := SlipOf[Q]{Kind: DecimalPlace, In: side, Shift: shift, Undone: f.written(v.value, places)}
		far := uint8(max(shift, -shift)) - 1
		switch fit, off := s.fit(side, v); {
		case fit == fits:
			slip.Rank = rankDecimalPlace + far
			s.add(slip, off)
		case off <= apart(other.value, f.zero)/50:
			slip.Rank = rankNearDecimal + far/2
			if fit == almost {
				slip.Also, slip.Rank = CutOff, rankDecimalAndSmall
			} else if s.oneDigitOff(side, places, v) {
				slip.Also, slip.Rank = DigitWrong, rankDecimalAndSmall
			}
			s.add(slip, off)
		}
	}
}

// oneDigitOff reports whether v differs in one digit from what the other
// figure asks for at so many places.
func (s *search[Q]) oneDigitOff(side Side, places int, v shown) bool {
	f, other := &s.figs[side.index()], s.pair.side(side.other())
	if places < 0 {
		return false
	}
	want := decimalOf(other.Value, f.unit, places)
	step := uint64(f.step(places))
	return differing(apart(v.value, f.zero)/step, apart(int64(want.Value), f.zero)/step) == 1
}

// factor tries the double and the half. It may have been made from the figure
// after that was rounded, so it shows no finer steps than the figure does.
func (s *search[Q]) factor(side Side) {
	w, at := s.pair.side(side), s.at[side.index()]
	try := func(x shown, undone units.Written[Q]) {
		if fit, off := s.fit(side, x); fit == fits && at.value != 0 {
			s.add(SlipOf[Q]{Kind: FactorTwo, In: side, Undone: undone, Rank: rankFactor}, off)
		}
	}
	if f := &s.figs[side.index()]; s.digits[side.index()] {
		if v, ok := f.value(2*f.m, f.places); ok {
			try(shown{v.value, 2 * v.step}, f.written(v.value, f.places))
		}
		m, places := f.m/2, f.places
		if f.m%2 == 1 {
			m, places = 5*f.m, places+1
		}
		if v, ok := f.value(m, places); ok {
			try(shown{v.value, f.step(f.places)}, f.written(v.value, places))
		}
		return
	}
	if w.Denominator == 0 || w.Denominator > finestFraction || w.Compound {
		return
	}
	half, double := w, w
	half.Value, double.Value = w.Value/2, 2*w.Value
	half.Denominator *= 2
	if double.Denominator%2 == 0 {
		double.Denominator /= 2
	}
	if double.Denominator == 1 {
		double.Denominator = 0
	}
	if units.InRange(double.Value) {
		try(shown{int64(double.Value), 0}, double)
	}
	if half.Denominator <= finestFraction {
		try(shown{int64(half.Value), 0}, half)
	}
}

// unitMixed tries the figure in the other one's unit, the two figures
// exchanged, and for inches and millimetres the steps of one scale counted as
// those of the other.
func (s *search[Q]) unitMixed(side Side) {
	i, o := side.index(), side.other().index()
	w, other := s.pair.side(side), s.pair.side(side.other())
	if !s.digits[i] || !s.digits[o] || w.Unit == other.Unit || s.figs[i].m == 0 || s.figs[o].m == 0 {
		return
	}
	mine, theirs := s.figs[i], s.figs[o]
	mine.unit, mine.zero, theirs.unit, theirs.zero = theirs.unit, theirs.zero, mine.unit, mine.zero
	x, okX := mine.value(mine.m, mine.places)
	y, okY := theirs.value(theirs.m, theirs.places)
	if okX {
		if fit, off := s.fit(side, x); fit == fits {
			s.add(SlipOf[Q]{Kind: WrongUnit, In: side, Undone: mine.written(x.value, mine.places), Rank: rankWrongUnit}, off)
		}
	}
	if okX && okY && agree(x, y) {
		rank := uint8(rankUnitsExchanged)
		if min(mine.m, theirs.m) < 10 { // one digit may fit by chance
			rank = rankCoarse
		}
		s.add(SlipOf[Q]{Kind: UnitsExchanged, In: side, Undone: theirs.written(y.value, theirs.places), Rank: rank}, apart(x.value, y.value))
	}
	if length, is := any(w).(units.Written[units.Length]); is && metricAndInch(length.Unit, any(other.Unit).(units.Unit[units.Length])) {
		s.stepsMixed(side)
	}
}

func metricAndInch(a, b units.Unit[units.Length]) bool {
	inch := func(u units.Unit[units.Length]) bool {
		return u == units.InInches || u == units.InThou || u == units.InMicroinches || u == units.InFeet
	}
	return inch(a) != inch(b)
}

// stepsMixed needs two digits on both sides, or the same digit: else some such
// factor fits by chance too often.
func (s *search[Q]) stepsMixed(side Side) {
	f, o := &s.figs[side.index()], &s.figs[side.other().index()]
	if (f.m < 10 || o.m < 10) && significant(f.m) != significant(o.m) {
		return
	}
	at := s.at[side.index()]
	for _, den := range []int64{100, 1000, 10_000} { // 2.54, 0.254 and 0.0254
		for _, up := range []bool{true, false} {
			num, den := int64(254), den
			if !up {
				num, den = den, num
			}
			v := int64(units.ScaleRound(Q(at.value), num, den, units.NearestEven))
			step := int64(units.ScaleRound(Q(at.step), num, den, units.NearestEven))
			if !units.InRange(Q(v)) || !units.InRange(Q(step)) {
				continue
			}
			if fit, off := s.fit(side, shown{v, max(step, at.step)}); fit == fits {
				s.add(SlipOf[Q]{Kind: StepsMixed, In: side, Undone: decimalOf(Q(v), f.unit, matching(s.pair.side(side.other()), s.pair.side(side))), Rank: rankStepsMixed}, off)
			}
		}
	}
}
