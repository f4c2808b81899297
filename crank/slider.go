package crank

import "github.com/tenthou/tenthou/tolerance"

// A Slider is crank, rod and piston as lengths in one unit (millimetres, say),
// for formulas over [tolerance.Real]: read as [tolerance.Float] they give the
// number, as an uncertainty's number the uncertainty too, as working terms the
// written-out solution. Lengths come out in that unit, angles are in radians.
// [SliderCrank] is the same with units, and checked.
//
// Offset is the distance of the line on which the gudgeon pin travels from the
// crankshaft's axis, be the pin offset in the piston or the cylinder beside the
// crankshaft: above zero on the side where the crankpin rises. That is the
// thrust side, since the rod, leaning to the other side while the piston is
// driven down, presses the piston there. Zero where pin and crankshaft are in
// line.
//
//	 offset > 0
//	  ├───┤
//	 ╓╨╖  ¦             The crank turns clockwise here: the pin
//	 ╙┬╜  ¦             travels left of the axis, where the crankpin
//	   ╲  ¦             rises.
//	rod ╲ ¦  ╱ throw
//	     ╲¦ ╱
//	      ╲○            ¦ through the crankshaft's axis, along the
//	      +             cylinder
//
// The formulas hold while the crank can go round, which takes a rod longer than
// throw and offset together; where a shorter one can't reach, they are out of
// range. Float results are within a few units in the last place of throw+rod:
// for a car's engine 10⁻¹³ mm.
//
// With H² = (rod+throw)² − offset², H is the height of the gudgeon pin above
// the crankshaft's axis at top dead centre, where crank and rod are in line:
// not with the throw upright, but offset/(rod+throw) before it, as a sine.
type Slider[R tolerance.Real[R]] struct {
	Throw  R // from the crankshaft's axis to the crankpin's: half the stroke where there is no offset
	Rod    R // between the centres of its eyes
	Offset R // of the gudgeon pin's line from the crankshaft's axis, above zero on the thrust side
}

// TopHeight is the gudgeon pin's height above the crankshaft's axis at top
// dead centre: √((rod+throw)² − offset²).
func (s Slider[R]) TopHeight() R { return legOf(s.Rod.Add(s.Throw), s.Offset) }

// BottomHeight is the gudgeon pin's height above the crankshaft's axis at
// bottom dead centre: √((rod−throw)² − offset²).
func (s Slider[R]) BottomHeight() R { return legOf(s.Rod.Sub(s.Throw), s.Offset) }

// legOf is √(long² − leg²), without squaring what cancels.
func legOf[R tolerance.Real[R]](long, leg R) R {
	return long.Sub(leg).Mul(long.Add(leg)).Sqrt()
}

// Stroke is how far the piston travels, TopHeight − BottomHeight, written so
// that nothing cancels: 4·rod·throw/(TopHeight + BottomHeight). Without offset
// it is twice the throw. With one it is more, on whichever side: the slope of
// √(a² − offset²) is above 1, and a goes from rod − throw to rod + throw.
func (s Slider[R]) Stroke() R {
	return s.Rod.Const(4).Mul(s.Rod).Mul(s.Throw).Quo(s.TopHeight().Add(s.BottomHeight()))
}

// TopAngle is where the throw stands at top dead centre, in radians after
// upright (parallel to the cylinder): −arcsin(offset/(rod+throw)), so before
// it for an offset to the thrust side.
func (s Slider[R]) TopAngle() R {
	return s.Offset.Const(0).Sub(s.Offset.Atan2(s.TopHeight()))
}

// BottomAngle is the crank angle from top to bottom dead centre in radians:
// π − arcsin(offset/(rod−throw)) + arcsin(offset/(rod+throw)). Without offset
// it is half a turn.
func (s Slider[R]) BottomAngle() R {
	down, up := s.Offset.Atan2(s.BottomHeight()), s.Offset.Atan2(s.TopHeight())
	return s.Offset.Const(pi).Sub(down).Add(up)
}

// A SliderCurve is a [Slider] made ready for many angles: what doesn't depend on
// the angle is worked out once. [Slider.Curve] makes one.
type SliderCurve[R tolerance.Real[R]] struct {
	rod, offset, top    R
	forward, turnedBack R // the throw's parts along and across where the crank stands at top dead centre
}

// Curve makes a slider ready for many angles.
func (s Slider[R]) Curve() SliderCurve[R] {
	top := s.TopHeight()
	k := s.Throw.Quo(s.Rod.Add(s.Throw))
	return SliderCurve[R]{s.Rod, s.Offset, top, k.Mul(top), k.Mul(s.Offset)}
}

// crankpin is where the crankpin stands at an angle after top dead centre:
// across from the crankshaft's axis, and along the cylinder from it. With the
// throw's angle after upright θ they are throw·sin θ and throw·cos θ; here θ is
// the angle turned back to top dead centre.
func (c SliderCurve[R]) crankpin(angle R) (across, along R) {
	sin, cos := angle.Sin(), angle.Cos()
	return sin.Mul(c.forward).Sub(cos.Mul(c.turnedBack)), cos.Mul(c.forward).Add(sin.Mul(c.turnedBack))
}

// Position is [Slider.Position].
func (c SliderCurve[R]) Position(angle R) R {
	across, along := c.crankpin(angle)
	return c.top.Sub(along).Sub(legOf(c.rod, across.Add(c.offset)))
}

// Position is how far the piston is below top dead centre at a crank angle in
// radians after it (below zero before it). [PistonPosition] is the same
// without offset, as textbooks write it.
func (s Slider[R]) Position(angle R) R { return s.Curve().Position(angle) }

// PositionOfThrow is the position by the throw's angle in radians after upright
// (the crank angle after top dead centre and [Slider.TopAngle]) and the height
// at top dead centre ([Slider.TopHeight]), for a working in readable steps:
//
//	x = height − throw·cos θ − √(rod² − (throw·sin θ + offset)²)
func (s Slider[R]) PositionOfThrow(topHeight, throwAngle R) R {
	reach := s.Throw.Mul(throwAngle.Sin()).Add(s.Offset)
	return topHeight.Sub(s.Throw.Mul(throwAngle.Cos())).Sub(legOf(s.Rod, reach))
}

// PistonPosition is how far the piston is below top dead centre at a crank
// angle in radians from it, where the gudgeon pin travels in line with the
// crankshaft:
//
//	x = throw + rod − throw·cos θ − √(rod² − throw²·sin²θ)
//
// It is exact; the two-term series of handbooks is not, see [SeriesPosition].
// At 180° it is the stroke, twice the throw. And since the rod leans alike at θ
// and 180° − θ, x(180°−θ) − x(θ) = 2·throw·cos θ: from 60° to 120° any piston
// travels half its stroke, whatever its rod. Throw and rod in one unit give the
// position in it. Where the rod can't reach the result is out of range.
func PistonPosition[R tolerance.Real[R]](throw, rod, angle R) R {
	along := throw.Mul(angle.Cos())
	return throw.Add(rod).Sub(along).Sub(legOf(rod, throw.Mul(angle.Sin())))
}

// SliderStroke is the stroke of a throw where the gudgeon pin travels in line
// with the crankshaft: twice the throw, exactly. With an offset it is more: see
// [Slider.Stroke].
func SliderStroke[N tolerance.Number[N]](throw N) N { return throw.Scale(2, 1) }

// SliderThrow is the throw of a stroke where the gudgeon pin travels in line
// with the crankshaft: half of it, to the nearest quantum. It undoes
// [SliderStroke].
func SliderThrow[N tolerance.Number[N]](stroke N) N { return stroke.Scale(1, 2) }

// RodRatio is the rod's length between centres over the stroke, as the trade
// gives it: 1.5 to 2 in most car engines (common practice). Textbooks mostly
// give rod over throw, which is twice as much; ask which one is meant before a
// number below 2.5 is taken for either.
func RodRatio[R tolerance.Real[R]](rod, stroke R) R { return rod.Quo(stroke) }

// RodOfRatio is the rod's length with a ratio to the stroke. It undoes
// [RodRatio].
func RodOfRatio[R tolerance.Real[R]](ratio, stroke R) R { return ratio.Mul(stroke) }
