package crank

// AngleAfterTop is the crank angle in radians after top dead centre at which
// the piston, going down, is at a position below it. There is another angle
// for the same position, on the way up: [Slider.AngleBeforeTop]. Both undo
// [Slider.Position]. A position that the piston doesn't reach is out of range;
// near the dead centres a small error of the position makes a large one of the
// angle.
func (s Slider[R]) AngleAfterTop(position R) R {
	half, skew := s.angles(position)
	return half.Add(skew)
}

// AngleBeforeTop is the crank angle in radians before top dead centre, above
// zero, at which the piston on its way up is at a position below top dead
// centre. Without offset it is AngleAfterTop of the same position.
func (s Slider[R]) AngleBeforeTop(position R) R {
	half, skew := s.angles(position)
	return half.Sub(skew)
}

// StopSkew is the error of finding top dead centre midway between two crank
// angles of one position, as with a positive stop or equal readings of a dial
// gauge: the midpoint lies that many radians after top dead centre. It is zero
// without offset, below zero for one to the thrust side, and the less the
// nearer to top dead centre the position is.
func (s Slider[R]) StopSkew(position R) R {
	_, skew := s.angles(position)
	return skew
}

// angles are half the angle between the crank's two places at one position,
// and how far its middle lies after top dead centre.
//
// The gudgeon pin is at (−offset, height), at a distance D from the
// crankshaft's axis. The triangle of D, throw and rod has at the axis the angle
// half; tan²(half/2) is (rod²−(D−throw)²)/((D+throw)²−rod²), in which
// (rod+throw)² − D² = position·(top+height) and D² − (rod−throw)² =
// (stroke−position)·(height+bottom), so that nothing cancels at either end.
// The middle is the direction to the gudgeon pin: its angle to that at top
// dead centre has the sine −offset·position/(D·(rod+throw)).
func (s Slider[R]) angles(position R) (half, skew R) {
	top, bottom := s.TopHeight(), s.BottomHeight()
	height := top.Sub(position)
	square := s.Offset.Mul(s.Offset)
	d := height.Mul(height).Add(square).Sqrt()
	above := position.Mul(top.Add(height)).Sqrt()
	below := s.Stroke().Sub(position).Mul(height.Add(bottom)).Sqrt()
	long, short := s.Rod.Add(s.Throw), s.Rod.Sub(s.Throw)
	quarter := d.Add(short).Mul(above).Atan2(d.Add(long).Mul(below))
	half = quarter.Mul(quarter.Const(2))
	// In this order a plain −0 stays out of the way of working and sign.
	skew = skew.Const(0).Sub(s.Offset.Mul(position)).Atan2(top.Mul(height).Add(square))
	return half, skew
}
