package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// A ShimPiece is a shim: one in hand, by its own thickness as measured, or a size
// that may be bought, by what its maker allows.
type ShimPiece struct {
	Name      string            `json:"name"`      // "2.60 mm"
	Thickness tolerance.Bracket `json:"thickness"` // both ends, above 0 and up to 50 mm
}

// A ShimValve is one valve whose clearance a shim sets.
type ShimValve struct {
	Where    string            // "inlet 3"
	Measured tolerance.Bracket // clearance, as blades bracket it
	// Shim is the one under it now, as measured by micrometer. Zero where it
	// hasn't been measured: then the valve can't be planned unless it stays as
	// it is.
	Shim   tolerance.Bracket
	Wanted tolerance.Band // clearance by the manual: a least above 0 and a greatest
	Aim    units.Length   // clearance to come nearest to, within Wanted; 0 for its middle
	// Ratio is how far the place of the blade moves for each unit at the shim;
	// zero for 1, as over or under a bucket. See [ShimThroughRocker].
	Ratio tolerance.Ratio
}

// A ShimHead is what a plan is made of: valves that take shims of one kind, and
// the shims. Valves that take shims of another kind are another head.
type ShimHead struct {
	Valves []ShimValve // 1 to 64
	Drawer []ShimPiece // spare shims at hand, each of them one piece; up to 256
	Series []ShimPiece // sizes that may be bought, as many of each as needed; up to 512
	// Disturb allows the shim of a valve whose clearance is in band to be taken
	// for another valve where that leaves fewer to buy. The valve then gets
	// another one, and the camshaft may have to come off for it.
	Disturb bool
	Set     feeler.Set // the blades at hand, for what would settle a valve; may be empty
}

// With is the clearance that another shim would give in this valve's place.
func (v ShimValve) With(shim tolerance.Bracket) tolerance.Bracket {
	if ratio := ratioOrOne(v.Ratio); ratio != tolerance.Whole(1) {
		return ClearanceThroughRocker(v.Measured, v.Shim, shim, ratio)
	}
	return ClearanceWithShim(v.Measured, v.Shim, shim)
}

// Ideal is the shim that would bring the clearance to Aim: a bracket as wide as
// the readings leave it.
func (v ShimValve) Ideal() tolerance.Bracket {
	return ShimThroughRocker(v.Shim, v.Measured, tolerance.Exactly(v.aim()), ratioOrOne(v.Ratio))
}

// Window is every shim that brings the whole bracket of the clearance into the
// band; ok is false where none does, since the bracket and the old shim's are
// together wider than the band, or lack an end. A shim of which only the bracket
// is known does so if all of its bracket is in the window.
func (v ShimValve) Window() (window tolerance.Bracket, ok bool) {
	if v.shimDoubt() != NoShimDoubt {
		return tolerance.Bracket{}, false
	}
	ratio := ratioOrOne(v.Ratio)
	if clearanceRatio("", ratio) != nil || clearanceBand(v.Wanted) != nil {
		return tolerance.Bracket{}, false
	}
	window, ok = clearanceWindow(v.Measured, v.Shim, v.Wanted, ratio)
	_, most := inputEnds(window)
	return window, ok && most > 0
}

// clearanceWindow is every piece that brings the whole of a clearance into the
// band, the thicker or longer piece taking clearance away by the ratio. The
// thinnest lets the greatest clearance up to the band's greatest, the thickest the
// least down to its least. Each end is rounded inward.
func clearanceWindow(measured, piece tolerance.Bracket, wanted tolerance.Band, ratio tolerance.Ratio) (tolerance.Bracket, bool) {
	end := func(reading, piece, limit func() (units.Length, tolerance.End), r units.Rounding) (units.Length, tolerance.End) {
		m, mEnd := reading()
		p, pEnd := piece()
		b, bEnd := limit()
		at := p.Add(units.ScaleRound(m.Sub(b), ratio.Den, ratio.Num, r))
		if bEnd == tolerance.Closed || mEnd == tolerance.Open || pEnd == tolerance.Open {
			return at, tolerance.Closed
		}
		return at, tolerance.Open
	}
	least, leastEnd := end(measured.Upper, piece.Upper, wanted.Upper, units.Up)
	most, mostEnd := end(measured.Lower, piece.Lower, wanted.Lower, units.Down)
	w, err := tolerance.NewInterval(least, leastEnd, most, mostEnd)
	return w, err == nil
}

// aim is the clearance aimed at; twiceAim is its double, exact where the band's
// middle isn't a whole picometre.
func (v ShimValve) aim() units.Length {
	if v.Aim != 0 {
		return v.Aim
	}
	m, _ := v.Wanted.Interval().Middle()
	return m
}

func (v ShimValve) twiceAim() units.Length {
	if v.Aim != 0 {
		return 2 * v.Aim
	}
	lo, _ := v.Wanted.Lower()
	hi, _ := v.Wanted.Upper()
	return lo + hi
}

// shimThickest is more than any shim or bucket measures.
const shimThickest = 50 * units.Millimetre

// shimPiece refuses what is no shim.
func shimPiece(field string, p tolerance.Bracket) error {
	if err := inputBracket(field, p, units.Picometre); err != nil {
		return err
	}
	if hi, _ := p.Upper(); hi > shimThickest {
		return &InputError{field, p.String(), "at most 50 mm"}
	}
	return nil
}

// check refuses what can't be; what can't be told is no error.
func (v *ShimValve) check() error {
	lo, _ := v.Measured.Lower()
	hi, _ := v.Measured.Upper() // 0 where it is absent
	if !v.Measured.InRange() || max(lo.Abs(), hi.Abs()) > clearanceLargest {
		return &InputError{"measured clearance", v.Measured.String(), "within ±10 mm"}
	}
	if !v.Shim.IsZero() {
		if err := shimPiece("shim", v.Shim); err != nil {
			return err
		}
	}
	if err := clearanceBand(v.Wanted); err != nil {
		return err
	}
	if v.Aim != 0 && !v.Wanted.Allows(v.Aim) {
		return &InputError{"clearance aimed at", v.Aim.String(), "within " + v.Wanted.String()}
	}
	return clearanceRatio("ratio of blade to shim", ratioOrOne(v.Ratio))
}

// shimField puts a name before an error's field.
func shimField(name string, err error) error {
	e, ok := err.(*InputError)
	switch {
	case !ok:
		return err
	case e.Field != "":
		name += ": " + e.Field
	}
	return &InputError{name, e.Value, e.Want}
}
