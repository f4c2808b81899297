package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RingRemedy is what follows for a ring's end gap. The zero value is
// RingReadAgain. None of them closes a gap: filing only opens it.
type RingRemedy uint8

// The remedies.
const (
	RingReadAgain RingRemedy = iota // the readings do not settle it
	RingServes                      // within its limits all along its travel
	RingFile                        // too small: file the ends
	RingOther                       // too large: another ring, or the bore is worn
	RingBoreWorn                    // no one ring suits both ends of the travel: the bore is too tapered
	RingAskManual                   // no limit is given that decides
)

var ringRemedyNames = []string{
	"read again",
	"serves",
	"file the ends",
	"renew ring or bore",
	"renew the bore",
	"see the engine maker's manual",
}

// String is the remedy in words.
func (r RingRemedy) String() string { return word(ringRemedyNames, uint8(r)) }

// MarshalText writes what String gives.
func (r RingRemedy) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *RingRemedy) UnmarshalText(text []byte) error {
	return readWord("remedy", ringRemedyNames, text, r)
}

// A RingFiling is what could be filed off a ring's ends, both together, to
// bring its gap within its limits all along its travel.
type RingFiling struct {
	// Sure holds the amounts that do, whatever the readings leave open; it is
	// the zero bracket where Ok is false.
	Sure tolerance.Bracket `json:"sure,omitzero"`
	Ok   bool              `json:"ok"` // whether any amount is sure to
	// Possible holds those that may; Open is whether there are any. Where
	// not, the bore's taper alone is more than the limits allow.
	Possible tolerance.Bracket `json:"possible,omitzero"`
	Open     bool              `json:"open"` // whether any amount may
}

// fileFor is what could be filed: the least gap must come up to the lower
// limit and the greatest stay below the upper. The new-part band governs; where
// it has no such end, or no filing suits it, the wear limit does.
func fileFor(f *tolerance.Finding) (r RingFiling) {
	lo, loEnd := f.Spec.New.Lower()
	if loEnd == tolerance.Absent {
		lo, loEnd = f.Spec.Wear.Lower()
	}
	if loEnd == tolerance.Absent {
		return r // nothing to file to
	}
	hi, hiEnd := f.Spec.New.Upper()
	wear, wearEnd := f.Spec.Wear.Upper()
	if hiEnd == tolerance.Absent {
		hi, hiEnd = wear, wearEnd
	}
	for {
		r = RingFiling{}
		stock := func(least, greatest units.Length) (tolerance.Bracket, bool) {
			to := units.Length(0)
			if hiEnd != tolerance.Absent {
				to = RingStockToFile(hi, greatest)
			}
			from := RingStockToFile(lo, least).Max(0)
			if hiEnd != tolerance.Absent && (from > to || from == to && hiEnd == tolerance.Open) {
				return tolerance.Bracket{}, false
			}
			i, err := tolerance.NewInterval(from, tolerance.Closed, to, hiEnd)
			return i, err == nil
		}
		least, _ := f.Least.Lower()
		greatest, end := f.Greatest.Upper()
		if end != tolerance.Absent || hiEnd == tolerance.Absent {
			r.Sure, r.Ok = stock(least, greatest)
		}
		most, end := f.Least.Upper()
		if end == tolerance.Absent {
			most = ringMost // it may be as large as need be
		}
		greatest, _ = f.Greatest.Lower()
		r.Possible, r.Open = stock(most, greatest)
		if r.Ok || hiEnd == tolerance.Absent || wearEnd == tolerance.Absent || wear <= hi {
			return r
		}
		hi, hiEnd = wear, wearEnd
	}
}

// remedy follows from the standing, and for a gap that is certainly out from
// what filing or another ring could do.
func (r *RingGapReport) remedy() RingRemedy {
	f := &r.Finding
	low, high := r.out()
	switch {
	case f.Spec.IsZero():
		return RingAskManual
	case passes(f.Standing):
		return RingServes
	case !low && !high:
		return RingReadAgain
	case !anyRing(f):
		return RingBoreWorn
	case low && !r.Filing.Ok:
		return RingReadAgain
	case low:
		return RingFile
	}
	return RingOther
}

// out tells on which sides the gap is certainly out of a limit.
func (r *RingGapReport) out() (low, high bool) {
	f := &r.Finding
	return f.New.Least == tolerance.Below || f.Wear.Least == tolerance.Below, f.New.Greatest == tolerance.Above || f.Wear.Greatest == tolerance.Above
}

// next is what to do next, in words.
func (r *RingGapReport) next() string {
	f := &r.Finding
	least, greatest := r.Stations[r.Least].Place, r.Stations[r.Greatest].Place
	switch r.Remedy {
	case RingAskManual:
		return f.Settle
	case RingServes:
		if f.Standing == tolerance.AsNew {
			return "fit it"
		}
		return "may be re-used: " + f.Explain()
	case RingReadAgain:
		if low, _ := r.out(); low {
			return "too small at " + least + ", but how much to file can't be told: read the gap more closely"
		}
		return "not a pass; to settle it, " + f.Settle
	case RingBoreWorn:
		return "no one ring suits both " + greatest + " and " + least + ": the bore is tapered by more than the limits allow"
	case RingFile:
		return "too small at " + least + ": file " + filing(r.Filing.Sure) + " off the ends in all, little by little, from the face inward, and read again"
	}
	next := "too large at " + greatest + ": read the ring where the bore is not worn. If it is too large there too, it is worn or made for a smaller bore: fit another; if not, the bore is worn"
	if f.Standing == tolerance.OutsideNewBand {
		next = "no wear limit is given, so the engine maker's manual decides whether it may run; " + next
	}
	return next
}

// anyRing reports whether some ring could suit the greatest and the least gap
// both: whether the two may differ by no more than the limits do.
func anyRing(f *tolerance.Finding) bool {
	lo, loEnd := f.Spec.New.Lower()
	if loEnd == tolerance.Absent {
		lo, loEnd = f.Spec.Wear.Lower()
	}
	hi, hiEnd := f.Spec.Wear.Upper()
	if hiEnd == tolerance.Absent {
		hi, hiEnd = f.Spec.New.Upper()
	}
	greatest, _ := f.Greatest.Lower()
	least, end := f.Least.Upper()
	return loEnd == tolerance.Absent || hiEnd == tolerance.Absent || end == tolerance.Absent || greatest-least <= hi-lo
}

// filing writes an amount to file, to a micrometre, its least rounded up and
// its greatest down; in full where nothing would be left between.
func filing(i tolerance.Bracket) string {
	lo, _ := i.Lower()
	hi, end := i.Upper()
	l, _ := units.Round(lo, units.InMicrometres, 0, units.Up)
	text := l.String()
	if end == tolerance.Absent {
		return "at least " + text
	}
	h, _ := units.Round(hi, units.InMicrometres, 0, units.Down)
	if h < l {
		return lo.String() + " to " + hi.String()
	}
	return text + " to " + h.String()
}
