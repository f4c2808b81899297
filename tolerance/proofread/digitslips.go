package proofread

// digitSlips tries every figure that one slip of a digit would have made into
// this one. A figure of one digit tells nothing: any other is one digit away.
func (s *search[Q]) digitSlips(side Side) {
	f := &s.figs[side.index()]
	if f.m < 10 {
		return
	}
	f.variants(func(v variant) {
		if v.m == 0 {
			return
		}
		x, ok := f.value(v.m, v.places)
		if !ok {
			return
		}
		slip := SlipOf[Q]{Kind: v.kind, In: side, Undone: f.written(x.value, v.places), Rank: rankOf(v)}
		switch fit, off := s.fit(side, x); {
		case fit == fits:
			s.add(slip, off)
		case fit == almost && (v.kind == DigitWrong || v.kind == DigitsTransposed && v.likely):
			slip.Also = CutOff
			slip.Rank += rankAndSmall
			s.add(slip, off)
		}
	})
}

// twoDigits compares the figure with the one that the other asks for at the
// same places: of four digits or more, two may be others.
func (s *search[Q]) twoDigits(side Side) {
	f := &s.figs[side.index()]
	want := decimalOf(s.pair.side(side.other()).Value, f.unit, f.places)
	m := apart(int64(want.Value), f.zero) / uint64(f.step(f.places))
	n := digits(f.m)
	if n >= 4 && n == digits(m) && (int64(want.Value) < f.zero) == f.minus && differing(f.m, m) == 2 {
		s.add(SlipOf[Q]{Kind: TwoDigitsWrong, In: side, Undone: want, Rank: rankTwoDigits}, 0)
	}
}
