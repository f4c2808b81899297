package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// PistonPositionBracket holds every position below top dead centre that the
// brackets of throw, rod and crank angle allow, without offset, rounded
// outward: [PistonPosition] grows with the throw and with the angle from top
// dead centre, on either side of it, and falls with the rod. The angle is
// within half a turn of top dead centre. The brackets with an offset have no
// such directions and aren't offered; there the uncertainty's reading of
// [Slider.Position] serves.
//
// It fails with an [InputError] for sizes that aren't above zero or not bounded
// on both sides, and for a rod that may not be longer than the throw.
func PistonPositionBracket(throw, rod tolerance.Bracket, angle tolerance.Interval[units.Angle]) (tolerance.Bracket, error) {
	var none tolerance.Bracket
	t, r, err := sliderBrackets(throw, rod)
	if err != nil {
		return none, err
	}
	from, to, ok := sliderEnds(angle)
	if !ok || from < -units.Turn/2 || to > units.Turn/2 {
		return none, &InputError{"crank angle", angle.String(), "within 180° of top dead centre on both sides"}
	}
	// A bracket on both sides of top dead centre reaches it.
	lo, hi, _ := sliderEnds(angle.Abs())
	least := PistonPosition(sliderMM(t[0]), sliderMM(r[1]), tolerance.Float(lo.Radians()))
	greatest := PistonPosition(sliderMM(t[1]), sliderMM(r[0]), tolerance.Float(hi.Radians()))
	error := sliderRounding * sliderMM(t[1]+r[1])
	return sliderSpan(
		max(sliderOutward(least-error, units.Down), 0),
		min(sliderOutward(greatest+error, units.Up), 2*t[1])), nil
}

// PistonAngleBracket holds every crank angle after top dead centre at which
// the piston, on its way down, may be at a position below it, without offset,
// rounded outward. On the way up it is as far before. The angle grows with the
// position and the rod, and falls with the throw. Errors are as those of
// [PistonPositionBracket]; the piston must reach the position with every throw.
func PistonAngleBracket(throw, rod, position tolerance.Bracket) (tolerance.Interval[units.Angle], error) {
	var none tolerance.Interval[units.Angle]
	t, r, err := sliderBrackets(throw, rod)
	if err != nil {
		return none, err
	}
	lo, hi, ok := sliderEnds(position)
	if !ok || lo < 0 || hi > 2*t[0] {
		return none, &InputError{"position", position.String(), "from 0 mm to the least stroke, " + (2 * t[0]).String()}
	}
	angle := func(throw, rod, position units.Length, r units.Rounding) units.Angle {
		s := Slider[tolerance.Float]{Throw: sliderMM(throw), Rod: sliderMM(rod)}
		x, stroke := sliderMM(position), s.Stroke()
		// Near the bottom the angle moves far for little: the roundings are
		// laid on the position.
		if error := sliderRounding * stroke; r == units.Up {
			x += error
		} else {
			x -= error
		}
		switch {
		case x <= 0:
			return 0
		case x >= stroke:
			return units.Turn / 2
		}
		return sliderAngleOutward(float64(s.AngleAfterTop(x)), r)
	}
	least, greatest := angle(t[1], r[0], lo, units.Down), angle(t[0], r[1], hi, units.Up)
	i, err := tolerance.NewInterval(max(least, 0), tolerance.Closed, min(greatest, units.Turn/2), tolerance.Closed)
	if err != nil {
		return none, &InputError{"position", position.String(), "one whose crank angle is within range"}
	}
	return i, nil
}

// SliderStrokeBracket holds every stroke that the brackets of throw, rod and
// offset allow, rounded outward: it grows with the throw and with the offset's
// size, and falls with the rod. Errors are as those of
// [PistonPositionBracket].
func SliderStrokeBracket(throw, rod, offset tolerance.Bracket) (tolerance.Bracket, error) {
	var none tolerance.Bracket
	t, r, err := sliderBrackets(throw, rod)
	if err != nil {
		return none, err
	}
	lo, hi, ok := sliderEnds(offset.Abs())
	if !ok || hi > sliderLargest {
		return none, &InputError{"offset", offset.String(), "known on both sides, within 10 m"}
	}
	if err := (SliderCrank{t[1], r[0], hi}).Check(); err != nil {
		return none, err
	}
	stroke := func(throw, rod, offset units.Length, sign tolerance.Float, r units.Rounding) units.Length {
		if offset == 0 {
			return SliderStroke(throw)
		}
		s := SliderCrank{throw, rod, offset}.Float()
		// Near the least rod the root is steep: the roundings of what is under
		// it count for as much more as it is smaller.
		error := sliderRounding * (s.Rod + s.Throw) * (1 + (s.Rod-s.Throw)/s.BottomHeight())
		return sliderOutward(s.Stroke()+sign*error, r)
	}
	return sliderSpan(
		max(stroke(t[0], r[1], lo, -1, units.Down), SliderStroke(t[0])),
		stroke(t[1], r[0], hi, 1, units.Up)), nil
}

// sliderRounding is more than the relative error that a formula's dozen
// roundings can add up to.
const sliderRounding = 1.0 / (1 << 47)

func sliderMM(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }

// sliderEnds are both ends of what is in range and has them.
func sliderEnds[Q units.Quantity](i tolerance.Interval[Q]) (lo, hi Q, ok bool) {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	return lo, hi, i.InRange() && loEnd != tolerance.Absent && hiEnd != tolerance.Absent
}

// sliderBrackets are the ends of throw and rod, least and greatest.
func sliderBrackets(throw, rod tolerance.Bracket) (t, r [2]units.Length, err error) {
	for _, b := range []struct {
		field string
		size  tolerance.Bracket
		into  *[2]units.Length
	}{{"throw", throw, &t}, {"rod", rod, &r}} {
		lo, hi, ok := sliderEnds(b.size)
		if !ok || lo <= 0 || hi > sliderLargest {
			return t, r, &InputError{b.field, b.size.String(), "above 0 mm and at most 10 m, with a least and a greatest"}
		}
		*b.into = [2]units.Length{lo, hi}
	}
	if r[0] <= t[1] {
		return t, r, &InputError{"rod", rod.String(), "longer than half the stroke, " + t[1].String() + ", so that the crank goes round"}
	}
	return t, r, nil
}

// sliderOutward rounds millimetres down or up to the picometre.
func sliderOutward(x tolerance.Float, r units.Rounding) units.Length {
	pm := math.Floor(float64(x) * float64(units.Millimetre))
	if r == units.Up {
		pm = math.Ceil(float64(x) * float64(units.Millimetre))
	}
	return units.Length(pm)
}

// sliderAngleOutward rounds an angle in radians from 0 to π down or up, past
// the error of the formula.
func sliderAngleOutward(x float64, r units.Rounding) units.Angle {
	const slack = 64.0 / (1 << 52)
	quanta := 1 / units.Microarcsecond.Radians()
	if r == units.Up {
		return units.Angle(math.Ceil(x*(1+slack)*quanta)) + 1
	}
	return units.Angle(math.Floor(x*(1-slack)*quanta)) - 1
}

// sliderSpan is the closed bracket between two ends in order.
func sliderSpan(lo, hi units.Length) tolerance.Bracket {
	i, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	return i
}
