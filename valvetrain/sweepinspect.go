package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SweepWidth is the width of the band that the contact wipes over the valve's tip
// in one lift, the rocker's roller or pad standing mid above the pivot's height at
// mid-lift (see [SweepMidHeight]): exactly, by [SweepReach], to float64's
// accuracy. It is least, for any arm and lift, at mid = 0.
//
// It fails with an [InputError] where the lift, or either end of it, is beyond the
// arm.
func SweepWidth(arm, lift, mid units.Length) (units.Length, error) {
	near, far, err := sweepSpan(arm, lift, mid)
	if err != nil {
		return 0, err
	}
	w, err := units.Nearest(far-near, units.InMillimetres)
	if err != nil {
		return 0, &InputError{"rocker arm", arm.String(), "of a rocker"} // not reached: both are within the arm
	}
	return w, nil
}

// sweepSpan is the contact's nearest and farthest reach in millimetres, counted
// from the arm so that no digits are lost.
func sweepSpan(arm, lift, mid units.Length) (near, far float64, err error) {
	switch {
	case arm <= 0 || arm > units.Metre:
		return 0, 0, &InputError{"rocker arm", arm.String(), "above 0 mm and at most 1 m"}
	case lift < 0 || lift > 2*arm:
		return 0, 0, &InputError{"valve lift", lift.String(), "0 mm or more, and less than twice the rocker arm " + arm.String()}
	case mid.Abs()+lift/2+units.Picometre >= arm:
		return 0, 0, &InputError{"height at mid-lift", mid.String(), "so near the pivot's height that the whole lift stays within the arm " + arm.String()}
	}
	in := func(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }
	a := in(arm)
	short := func(y tolerance.Float) float64 { return -float64(SweepFrom(a, 0, y)) } // reach less the arm
	shut, open := in(mid)+in(lift)/2, in(mid)-in(lift)/2
	near, far = math.Min(short(shut), short(open)), math.Max(short(shut), short(open))
	if shut > 0 && open < 0 {
		far = 0
	}
	return near, far, nil
}

// A TipContact is a rocker on a valve's tip, as measured.
type TipContact struct {
	Where string            // "inlet 2"
	Arm   tolerance.Bracket // from the pivot to the roller's centre, or to the pad's centre of curvature
	Lift  tolerance.Bracket // of the valve
	Shut  tolerance.Bracket // height of that centre above the pivot with the valve shut, along the valve's axis; below zero where it is lower
	Tip   tolerance.Bracket // diameter of the valve's tip, its chamfer left out
	// Off is how far the contact stands from the tip's centre with the valve shut,
	// outward from the pivot above zero, as marker on the tip shows it.
	Off tolerance.Bracket
	// WidthLimits and EdgeLimits are the manual's for the width of the wiped band
	// and for what is left of the tip beside it; either may be empty.
	WidthLimits tolerance.Spec
	EdgeLimits  tolerance.Spec // of what is left of the tip, at the nearer edge
}

// A TipReport is how a rocker wipes a valve's tip.
type TipReport struct {
	Width tolerance.Finding `json:"width"` // of the wiped band
	Edge  tolerance.Finding `json:"edge"`  // of the tip left beside it at the nearer edge; below zero the contact runs off
	Best  tolerance.Bracket `json:"best"`  // width with the rocker square at mid-lift
	// Mid is how far the pivot is to be raised for that; below zero, lowered.
	Mid  tolerance.Bracket `json:"mid"`
	Next string            `json:"next"` // what to do
}

// Inspect works out the wiped band for every reading the brackets allow, and
// judges it. What float64 rounds is allowed for by a picometre either way, so that
// a contact is never farther from the edge than is said. It fails with an [InputError] where a reading can't be.
func (c TipContact) Inspect() (TipReport, error) {
	if err := c.check(); err != nil {
		return TipReport{}, err
	}
	aLo, aHi := inputEnds(c.Arm)
	hLo, hHi := inputEnds(c.Lift)
	yLo, yHi := inputEnds(c.Shut)
	r := TipReport{Mid: SweepMidHeight(c.Shut, c.Lift)}
	width := func(arm, lift, mid units.Length) (float64, error) {
		near, far, err := sweepSpan(arm, lift, mid)
		return far - near, err
	}
	// A longer arm wipes less, everything else alike. With the arm and the height
	// shut fixed, the wiped band only grows with the lift beyond where it turns. In
	// the height shut it falls to the least at half the lift and rises again.
	least, greatest := math.Inf(1), 0.0
	in, out := 0.0, 0.0 // how far the contact goes inward and outward from where it stands shut
	for _, arm := range [2]units.Length{aLo, aHi} {
		for _, lift := range [2]units.Length{hLo, hHi} {
			for _, shut := range [3]units.Length{yLo, yHi, min(max(lift/2, yLo), yHi)} {
				w, err := width(arm, lift, shut-lift/2)
				if err != nil {
					return TipReport{}, err
				}
				least, greatest = min(least, w), max(greatest, w)
				near, far, _ := sweepSpan(arm, lift, shut-lift/2)
				a := tolerance.Float(arm.Float(units.InMillimetres))
				at := -float64(SweepFrom(a, 0, tolerance.Float(shut.Float(units.InMillimetres))))
				in, out = max(in, at-near), max(out, far-at)
			}
		}
	}
	bestHi, _ := width(aLo, hHi, 0)
	bestLo, _ := width(aHi, hLo, 0)
	span := func(lo, hi float64) tolerance.Bracket {
		l, err1 := units.Nearest(lo, units.InMillimetres)
		h, err2 := units.Nearest(hi, units.InMillimetres)
		if err1 != nil || err2 != nil {
			return tolerance.Exactly(units.OutOfRange[units.Length]())
		}
		return inputSpan(max(l-units.Picometre, 0), h+units.Picometre)
	}
	r.Best = span(bestLo, bestHi)
	wide := span(least, greatest)
	// What is left at the nearer edge: the tip's radius less how far the contact
	// ever stands from its centre.
	tipLo, tipHi := inputEnds(c.Tip)
	offLo, offHi := inputEnds(c.Off)
	inward, _ := units.Nearest(in, units.InMillimetres)
	outward, _ := units.Nearest(out, units.InMillimetres)
	farthest := max((offHi + outward).Abs(), (offLo - inward).Abs())
	nearest := units.Length(0)
	if !c.Off.Contains(0) {
		nearest = min(offLo.Abs(), offHi.Abs())
	}
	edge := inputSpan(tipLo/2-farthest-units.Picometre, tipHi/2-nearest+units.Picometre)
	var err error
	if r.Width, err = inputAssess("wiped width on the tip", c.Where, c.WidthLimits, wide); err != nil {
		return TipReport{}, err
	}
	if r.Edge, err = inputAssess("tip left beside the contact", c.Where, c.EdgeLimits, edge); err != nil {
		return TipReport{}, err
	}
	r.Next = c.next(r, edge)
	return r, nil
}

func (c TipContact) next(r TipReport, edge tolerance.Bracket) string {
	lo, _ := edge.Lower()
	_, best := inputEnds(r.Best)
	midLo, midHi := inputEnds(r.Mid)
	wide, _ := r.Width.Greatest.Upper()
	switch {
	case lo <= 0:
		return "the contact may run off the tip: bring it nearer to the tip's centre, and the rocker square at mid-lift, before the engine is turned"
	case r.Width.Standing >= tolerance.OutsideNewBand || wide > 2*best:
		if midLo > 0 {
			return "raise the pivot, by as much as it is low at mid-lift, and choose the pushrod again"
		}
		if midHi < 0 {
			return "lower the pivot, by as much as it is high at mid-lift, and choose the pushrod again"
		}
		return "measure the height of the roller over the pivot more finely: it decides how far the pivot is to move"
	case r.Width.Standing == tolerance.CantTell && !c.WidthLimits.IsZero():
		return r.Width.Settle
	case r.Edge.Standing == tolerance.CantTell && !c.EdgeLimits.IsZero():
		return r.Edge.Settle
	}
	return "none by this test; see the mark on the tip after turning by hand"
}

func (c TipContact) check() error {
	for _, x := range []struct {
		field string
		b     tolerance.Bracket
		least units.Length
	}{
		{"rocker arm", c.Arm, units.Picometre}, {"valve lift", c.Lift, units.Picometre},
		{"height of the roller over the pivot", c.Shut, -inputLargest},
		{"diameter of the tip", c.Tip, units.Picometre}, {"contact off the tip's centre", c.Off, -inputLargest},
	} {
		if err := inputBracket(x.field, x.b, x.least); err != nil {
			return err
		}
	}
	return nil
}
