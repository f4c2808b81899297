package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A DeadCentre is a search for top dead centre by a positive stop in the plug's
// hole, or by equal readings of a dial gauge on the piston.
//
// Take the plugs out and turn the engine by hand, gently: a stop bends what it
// meets and can hole a piston, and a valve may stand in its way. Disable fuel
// and ignition.
type DeadCentre struct {
	Where string // "cylinder 1"
	// Before and After are what the wheel shows at the two contacts, before and
	// after its zero, with the wheel's error; a contact on the other side of the
	// zero is below zero.
	Before tolerance.Interval[units.Angle]
	After  tolerance.Interval[units.Angle] // see Before
	// Throw and Rod are half the stroke and the rod between centres; both zero
	// where they aren't known. They are needed for an offset and for Fall.
	Throw units.Length
	Rod   units.Length // between the centres of its eyes
	// Offset is that of the gudgeon pin's line from the crankshaft's axis, pin and
	// cylinder together, above zero to the thrust side; Offsets says that there is
	// one of unknown size or side.
	Offset  units.Length
	Offsets bool // there may be an offset that isn't known
	// Fall is how far below top dead centre both readings of a dial gauge were
	// taken; zero with a positive stop.
	Fall units.Length
}

// A DeadCentreReport is what the two contacts tell.
type DeadCentreReport struct {
	// Correction is where true top dead centre stands on the wheel, after its
	// zero, below zero before it, with the skew of an offset in it.
	Correction tolerance.Interval[units.Angle] `json:"correction"`
	HalfSpan   tolerance.Interval[units.Angle] `json:"halfSpan"`        // of the contacts
	Skew       units.Angle                     `json:"skew,omitzero"`   // of true dead centre after the middle, from the offset
	Wanted     units.Angle                     `json:"wanted,omitzero"` // the half-span that Fall asks for, by throw and rod
	Notes      []string                        `json:"notes,omitempty"` // what to mind
	Next       string                          `json:"next"`            // what to do
}

// stopLeast is the half-span below which a stop is set too near to dead centre:
// common practice, 15° to 20° and more.
const stopLeast = 15 * units.Degree

// Inspect finds true top dead centre from the two contacts. Without an offset it
// is exact to the wheel's error; with one, whose throw and rod are given, the
// skew is added, to 10⁻⁶ of a degree. It fails with an [InputError] where a
// contact isn't bounded or within a half turn, the span isn't above zero for
// certain, or crank and rod can't be.
func (d DeadCentre) Inspect() (DeadCentreReport, error) {
	if err := d.check(); err != nil {
		return DeadCentreReport{}, err
	}
	r := DeadCentreReport{Correction: StopCorrection(d.Before, d.After), HalfSpan: StopHalfSpan(d.Before, d.After)}
	lo, hi := springEnds(r.HalfSpan)
	if lo <= 0 || hi >= units.Turn/2 {
		return DeadCentreReport{}, &InputError{"half-span of the contacts", r.HalfSpan.String(), "above 0° and below 180° for certain"}
	}
	mm := func(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }
	if d.Offset != 0 {
		throw, rod, offset := mm(d.Throw), mm(d.Rod), mm(d.Offset)
		middle, _ := r.HalfSpan.Middle()
		skews := [3]units.Angle{}
		for i, s := range [3]units.Angle{lo, middle, hi} {
			skew, err := units.AngleFromRadians(float64(StopSkew(throw, rod, offset, tolerance.Float(s.Radians()))))
			if err != nil {
				return DeadCentreReport{}, &InputError{"offset", d.Offset.String(), "small enough for the rod to reach"}
			}
			skews[i] = skew
		}
		r.Skew = skews[1]
		r.Correction = r.Correction.Add(inputSpan(min(skews[0], skews[2])-units.Microarcsecond, max(skews[0], skews[2])+units.Microarcsecond))
		r.Notes = append(r.Notes, "with an offset the middle of the contacts isn't quite top dead centre: "+r.Skew.Abs().Text(units.InDegrees, 4)+" were taken into account")
	} else if d.Offsets {
		r.Notes = append(r.Notes, "an offset of pin or cylinder breaks the symmetry: the middle isn't quite top dead centre. Give throw, rod and offset to know by how much; near dead centre it is little")
	}
	if lo < stopLeast {
		r.Notes = append(r.Notes, "the contacts are nearer than 15° to dead centre, where the piston hardly moves: a longer stop, or a greater fall, finds it better")
	}
	if d.Fall != 0 {
		wanted, err := units.AngleFromRadians(float64(FallAngle(mm(d.Throw), mm(d.Rod), mm(d.Fall))))
		if err != nil {
			return DeadCentreReport{}, &InputError{"fall of the piston", d.Fall.String(), "within the stroke"}
		}
		r.Wanted = wanted
		if d.Offset == 0 && !r.HalfSpan.Contains(wanted) {
			r.Notes = append(r.Notes, "throw, rod and fall make a half-span of "+wanted.Text(units.InDegrees, 2)+", which the wheel doesn't show: the dial isn't in line with the cylinder, slips, or was read with the play of the rod to two sides")
		}
	}
	r.Next = d.next(r)
	return r, nil
}

func (d DeadCentre) next(r DeadCentreReport) string {
	half, _ := r.HalfSpan.Middle()
	text := func(a units.Angle) string { return a.Text(units.InDegrees, 2) }
	c, _ := r.Correction.Middle()
	both := "both sides read " + text(half)
	if r.Skew != 0 {
		// The contacts then stand unevenly about dead centre, by the skew.
		both = "the wheel reads " + text(StopBefore(half, -r.Skew)) + " before and " + text(StopAfter(half, -r.Skew)) + " after"
	}
	switch {
	case r.Correction.Contains(0):
		return "none: the wheel's zero is top dead centre as nearly as the wheel is read"
	case c > 0:
		return "true top dead centre is at " + text(c) + " after the wheel's zero: shift wheel or pointer by that, until " + both + ", and try again"
	}
	return "true top dead centre is at " + text(c.Abs()) + " before the wheel's zero: shift wheel or pointer by that, until " + both + ", and try again"
}

func (d DeadCentre) check() error {
	for _, c := range []struct {
		field string
		b     tolerance.Interval[units.Angle]
	}{{"contact before the wheel's zero", d.Before}, {"contact after the wheel's zero", d.After}} {
		lo, loEnd := c.b.Lower()
		hi, hiEnd := c.b.Upper()
		switch {
		case !c.b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
			return &InputError{c.field, c.b.String(), "measured, with a least and a greatest"}
		case lo <= -units.Turn/2 || hi >= units.Turn/2:
			return &InputError{c.field, c.b.String(), "within a half turn of zero"}
		}
	}
	if d.Throw == 0 && d.Rod == 0 {
		switch {
		case d.Offset != 0:
			return &InputError{"throw and rod", "none", "given, for the offset " + d.Offset.String()}
		case d.Fall != 0:
			return &InputError{"throw and rod", "none", "given, for the fall " + d.Fall.String()}
		}
		return nil
	}
	if err := sliderCheck(d.Throw, d.Rod, d.Offset); err != nil {
		return err
	}
	if d.Fall < 0 || d.Fall >= 2*d.Throw {
		return &InputError{"fall of the piston", d.Fall.String(), "0 mm or more, and below the stroke " + (2 * d.Throw).String()}
	}
	return nil
}

// sliderCheck refuses a crank that can't go round.
func sliderCheck(throw, rod, offset units.Length) error {
	if err := firstError(func() error { return inputSize("throw", throw) }, func() error { return inputSize("rod", rod) }); err != nil {
		return err
	}
	if reach := throw.Add(offset.Abs()); offset < -inputLargest || offset > inputLargest || rod <= reach {
		return &InputError{"rod", rod.String(), "longer than throw and offset together, " + reach.String() + ", so that the crank goes round"}
	}
	return nil
}

// A fallCurve is how far a piston is below top dead centre, in millimetres, by
// the angle in radians after it, made ready for many angles. With an offset the
// crank is turned back to where it points at the gudgeon pin.
type fallCurve struct {
	rod, offset, top, forward, turnedBack float64
	bend                                  float64 // bounds the second derivative
}

func newFallCurve(throw, rod, offset float64) fallCurve {
	long := rod + throw
	top := math.Sqrt((long - offset) * (long + offset))
	reach := throw + math.Abs(offset)
	lean := math.Sqrt((rod - reach) * (rod + reach))
	k := throw / long
	// x″ = r·cos θ + (r²cos²θ − r·sin θ·(r·sin θ + e))/q + (r·sin θ + e)²r²cos²θ/q³
	// for the throw's angle θ, with q at least √(l² − (r + |e|)²).
	bend := throw + (throw*throw+throw*reach)/lean + reach*reach*throw*throw/(lean*lean*lean)
	return fallCurve{rod, offset, top, k * top, k * offset, bend}
}

// at is the fall, and its derivative by the angle in radians.
func (c *fallCurve) at(angle float64) (fall, slope float64) {
	sin, cos := math.Sincos(angle)
	across, along := sin*c.forward-cos*c.turnedBack, cos*c.forward+sin*c.turnedBack
	reach := across + c.offset
	q := math.Sqrt((c.rod - reach) * (c.rod + reach))
	return c.top - along - q, across + reach*along/q
}
