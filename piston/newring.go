package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An Outcome says what a new ring would do for the side clearance. The zero
// value is RingCantTell.
type Outcome uint8

// The outcomes of a new ring in the same groove.
const (
	RingCantTell Outcome = iota // depends on what has not been measured closely enough
	RingRestores                // every ring of the new height brings the clearance into its band
	RingStillOut                // the clearance would still be too large: the groove is worn
	RingTooTight                // the clearance would be too small
	RingUneven                  // too small in one place and too large in another
)

// NewRing is what a new ring would do in a groove that was measured.
type NewRing struct {
	Outcome  Outcome           `json:"outcome"`           // in one word
	Least    tolerance.Bracket `json:"least,omitzero"`    // the least clearance it would have
	Greatest tolerance.Bracket `json:"greatest,omitzero"` // the greatest
	// Heights are the ring heights that would bring the clearance into its
	// band whatever the readings leave open; Possible are those that might.
	// With exact readings they are the same. Ok is false where no height is
	// sure to. A height above the new ring's is no remedy: a thicker ring is
	// never fitted into a worn groove.
	Heights  tolerance.Bracket `json:"heights,omitzero"`
	Ok       bool              `json:"heightsKnown"`      // whether any height is sure to
	Possible tolerance.Bracket `json:"possible,omitzero"` // the heights that might
	Settle   string            `json:"settle,omitempty"`  // what would settle an outcome that can't be told
}

// TryNewRing says what a new ring would do for the clearance measured at one
// or more stations of a groove with its used ring in it. newHeight is what new
// rings measure, allowed the clearance wanted with one. Without the used
// ring's height (a zero bracket) the answer is can't tell, and says to measure
// it, since the clearance alone does not tell groove wear from ring wear.
func TryNewRing(stations []tolerance.Bracket, usedHeight tolerance.Bracket, newHeight, allowed tolerance.Band) (NewRing, error) {
	var n NewRing
	if len(stations) == 0 {
		return n, &InputError{"side clearance", "of no station", "measured at one station or more"}
	}
	for _, c := range stations {
		if !c.InRange() {
			return n, &InputError{"side clearance", c.String(), "within the range of a length"}
		}
	}
	if !usedHeight.IsZero() {
		if err := size("used ring height", usedHeight); err != nil {
			return n, err
		}
	}
	if !newHeight.IsZero() {
		if err := size("new ring height", newHeight.Interval()); err != nil {
			return n, err
		}
	}
	least, greatest := tolerance.Extremes(stations...)
	switch {
	case usedHeight.IsZero():
		n.Settle = "measure the used ring's height"
		return n, nil
	case newHeight.IsZero():
		n.Settle = "look up or measure the new ring's height"
		return n, nil
	case allowed.IsZero():
		n.Settle = "no limit is given for the clearance with a new ring: look it up in the engine maker's manual"
		return n, nil
	}
	n.Least = ClearanceWithRing(least, usedHeight, newHeight.Interval())
	n.Greatest = ClearanceWithRing(greatest, usedHeight, newHeight.Interval())
	sides := allowed.JudgeAll(n.Least, n.Greatest)
	switch {
	case sides.Least == tolerance.Below && sides.Greatest == tolerance.Above:
		n.Outcome = RingUneven
	case sides.Least == tolerance.Below:
		n.Outcome = RingTooTight
	case sides.Greatest == tolerance.Above:
		n.Outcome = RingStillOut
	case sides.Least == tolerance.Within && sides.Greatest == tolerance.Within:
		n.Outcome = RingRestores
	default:
		n.Settle = "measure the clearance and the used ring's height more closely, or the new ring itself"
	}
	n.Heights, n.Ok = sureHeights(least, greatest, usedHeight, allowed)
	n.Possible = possibleHeights(least, greatest, usedHeight, allowed)
	return n, nil
}

// possibleHeights: the greatest clearance bounds a ring from below and the
// least from above.
func possibleHeights(least, greatest, used tolerance.Bracket, allowed tolerance.Band) tolerance.Bracket {
	lo, loEnd := RingHeightFor(greatest, used, allowed.Interval()).Lower()
	hi, hiEnd := RingHeightFor(least, used, allowed.Interval()).Upper()
	if i, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd); err == nil {
		return i
	}
	return tolerance.Bracket{} // no ring suits both places: Ok is false too
}

// sureHeights are the heights f for which clearance + used − f is allowed for
// every clearance and used height in the brackets.
func sureHeights(least, greatest, used tolerance.Bracket, allowed tolerance.Band) (tolerance.Bracket, bool) {
	widest, widestEnd := GrooveWidth(greatest, used).Upper()
	narrowest, narrowestEnd := GrooveWidth(least, used).Lower()
	lo, loEnd := allowed.Lower()
	hi, hiEnd := allowed.Upper()
	from, fromEnd := sure(widest, widestEnd, hi, hiEnd)
	to, toEnd := sure(narrowest, narrowestEnd, lo, loEnd)
	if hiEnd != tolerance.Absent && widestEnd == tolerance.Absent || loEnd != tolerance.Absent && narrowestEnd == tolerance.Absent {
		return tolerance.Bracket{}, false
	}
	i, err := tolerance.NewInterval(from, fromEnd, to, toEnd)
	return i, err == nil
}

// sure is the end of the heights that keep a groove of the given width to a
// limit: the height itself serves where either the limit belongs to the band
// or the width is not quite reached.
func sure(width units.Length, widthEnd tolerance.End, limit units.Length, limitEnd tolerance.End) (units.Length, tolerance.End) {
	switch {
	case limitEnd == tolerance.Absent:
		return 0, tolerance.Absent
	case limitEnd == tolerance.Closed || widthEnd == tolerance.Open:
		return width.Sub(limit), tolerance.Closed
	}
	return width.Sub(limit), tolerance.Open
}
