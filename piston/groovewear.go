package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Wear is how the growth of a side clearance falls to groove and ring.
type Wear struct {
	Groove tolerance.Bracket `json:"groove"` // how much the groove has widened
	Ring   tolerance.Bracket `json:"ring"`   // how much lower the ring has become
	// The groove's share of both, in per cent, rounded outward; the ring has
	// the rest. It is 0 to 100 where the readings don't tell.
	LeastPercent    int `json:"leastGroovePercent"`    // at the least
	GreatestPercent int `json:"greatestGroovePercent"` // at the greatest
	// Doubt names a reading that can't be wear: a groove narrower or a ring
	// higher than new.
	Doubt string `json:"doubt,omitempty"`
}

// ShareWear tells groove wear from ring wear, from the clearance, the used
// ring's height and the sizes when new. Where the new sizes are bands, the
// wear is a bracket.
func ShareWear(clearance, usedHeight tolerance.Bracket, newWidth, newHeight tolerance.Band) (Wear, error) {
	for _, s := range []struct {
		field string
		size  tolerance.Bracket
	}{{"used ring height", usedHeight}, {"new groove width", newWidth.Interval()}, {"new ring height", newHeight.Interval()}} {
		if err := size(s.field, s.size); err != nil {
			return Wear{}, err
		}
	}
	if !clearance.InRange() {
		return Wear{}, &InputError{"side clearance", clearance.String(), "within the range of a length"}
	}
	w := Wear{
		Groove: GrooveWearByClearance(clearance, usedHeight, newWidth.Interval()),
		Ring:   RingWear(usedHeight, newHeight.Interval()),
	}
	groove, okGroove := notNegative(w.Groove)
	ring, okRing := notNegative(w.Ring)
	switch {
	case !okGroove:
		w.Doubt = "the groove comes out narrower than new: clean it, and check the readings"
	case !okRing:
		w.Doubt = ringDoubt
	}
	w.LeastPercent, w.GreatestPercent = percent(groove, ring)
	return w, nil
}

const ringDoubt = "the used ring is higher than a new one: check that it is the right ring, and the readings"

// notNegative is what of a wear is zero or more; ok is false where nothing is.
func notNegative(i tolerance.Bracket) (tolerance.Bracket, bool) {
	if both, ok := i.Intersect(tolerance.AtLeast(units.Length(0)).Interval()); ok {
		return both, true
	}
	return tolerance.Exactly(units.Length(0)), false
}

// percent is the share of a in a+b, rounded outward.
func percent(a, b tolerance.Bracket) (least, greatest int) {
	// 100 % stands as 100 units of a million quanta, to keep the rounding of
	// the share far below one per cent.
	const one = 1_000_000
	s := GrooveShare(tolerance.Exactly(units.Length(100*one)), a, b)
	lo, loEnd := s.Lower()
	hi, hiEnd := s.Upper()
	if !s.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		return 0, 100
	}
	return int(int64(lo) / one), int((int64(hi) + one - 1) / one)
}
