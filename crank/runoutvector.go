package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RunOutVector is how far, and in which direction, a journal's centre lies off
// an axis, on the shaft: angles count from the mark, the way the readings were
// counted. The zero value lies on the axis.
type RunOutVector struct {
	Cosine units.Length `json:"cosine"` // toward the mark
	Sine   units.Length `json:"sine"`   // toward 90° from it
	// Error is how far the true vector may lie from this one, whatever the
	// direction; 0 or more.
	Error units.Length `json:"error"`
}

// hypot is the length of the vector in picometres.
func (v RunOutVector) hypot() float64 { return math.Hypot(float64(v.Cosine), float64(v.Sine)) }

// Bend is how far the centre lies off the axis, its error included; to a
// picometre, outward.
func (v RunOutVector) Bend() tolerance.Bracket { return v.times(1) }

// RunOut is the run-out that the vector makes on a round journal: twice the
// bend.
func (v RunOutVector) RunOut() tolerance.Bracket { return v.times(2) }

func (v RunOutVector) times(k float64) tolerance.Bracket {
	h, e := v.hypot(), math.Abs(float64(v.Error))
	lo, hi := math.Floor(k*max(h-e, 0)), math.Ceil(k*(h+e))
	if !(hi < float64(farthest)) {
		return tolerance.Exactly(units.Length(math.MaxInt64)) // out of range
	}
	b, _ := tolerance.NewInterval(units.Length(lo), tolerance.Closed, units.Length(hi), tolerance.Closed) // lo ≤ hi
	return b
}

// HighPoint is the direction of the high point, from 0° to below 360°, and how
// far it may be off on either side: 180° where the errors leave it open.
func (v RunOutVector) HighPoint() (at, within units.Angle) {
	const half = 180 * units.Degree
	h, e := v.hypot(), math.Abs(float64(v.Error))
	if h == 0 {
		return 0, half
	}
	radians := math.Atan2(float64(v.Sine), float64(v.Cosine))
	if radians < 0 {
		radians += 2 * math.Pi
	}
	at, _ = units.AngleFromRadians(radians) // at most a turn
	at %= 2 * half
	if e >= h {
		return at, half
	}
	within, _ = units.AngleFromRadians(math.Asin(e / h))
	return at, within
}

// Sub is v seen from o; the errors add.
func (v RunOutVector) Sub(o RunOutVector) RunOutVector {
	return RunOutVector{v.Cosine.Sub(o.Cosine), v.Sine.Sub(o.Sine), v.Error.Add(o.Error)}
}

// between is the vector that the line between two supports has at a place; the
// errors are weighted as the vectors are.
func (v RunOutVector) between(o RunOutVector, fromFirst, fromSecond units.Length) RunOutVector {
	return RunOutVector{
		Cosine: SupportLine(v.Cosine, o.Cosine, fromFirst, fromSecond),
		Sine:   SupportLine(v.Sine, o.Sine, fromFirst, fromSecond),
		Error:  v.Error.MulDiv(fromSecond, fromFirst+fromSecond).Abs() + o.Error.MulDiv(fromFirst, fromFirst+fromSecond).Abs() + units.Picometre,
	}
}

// angleBetween is the angle between two high points, from 0° to 180°, as the
// least and the greatest that the errors allow.
func (v RunOutVector) angleBetween(o RunOutVector) (least, angle, most units.Angle) {
	const half = 180 * units.Degree
	for _, x := range []RunOutVector{v, o} {
		if x.hypot() == 0 && x.Error == 0 { // on the axis: sum and difference are one
			return 0, 0, 0
		}
	}
	a, ea := v.HighPoint()
	b, eb := o.HighPoint()
	angle = (a - b).Abs()
	if angle > half {
		angle = 2*half - angle
	}
	if v.hypot() == 0 || o.hypot() == 0 {
		angle = 0
	}
	e := ea + eb
	return max(angle-e, 0), angle, min(angle+e, half)
}
