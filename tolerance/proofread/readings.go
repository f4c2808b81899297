package proofread

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An OddOf is one reading of a set that stands apart in a way that has a name.
type OddOf[Q units.Quantity] struct {
	Index   int                   `json:"index"`   // from 0
	Reading tolerance.Interval[Q] `json:"reading"` // as given
	Causes  []CauseOf[Q]          `json:"causes"`  // the nearest to its neighbours first; one at least
}

// A ReadingsOf is what came of holding the readings of a set to each other.
type ReadingsOf[Q units.Quantity] struct {
	Middle    Q          `json:"middle"`             // median of the readings that agree
	Spread    Q          `json:"spread"`             // the greatest distance from it among them
	Agreeing  int        `json:"agreeing"`           // how many agree
	Odd       []OddOf[Q] `json:"odd,omitzero"`       // in the order of the readings
	Identical bool       `json:"identical,omitzero"` // every reading is the same: measured, or copied?
}

// A Readings is what came of holding the lengths of a set to each other.
type Readings = ReadingsOf[units.Length]

// Flagged reports whether a reading is suspected.
func (r ReadingsOf[Q]) Flagged() bool { return len(r.Odd) > 0 }

// CheckReadings looks for readings of one measure, at several stations or
// parts, that stand a factor of 10, 25.4, 2.54, 2 or 39.37 (either way) from
// where their neighbours say they should be, or for lengths an amount of
// 0.5 mm, 0.025 in, 25 mm or 1 in. [CheckBrackets] says how. Fewer than three
// readings, and a reading out of range, are a [CheckError].
func CheckReadings[Q units.Quantity](readings ...Q) (ReadingsOf[Q], error) {
	var room [usual]tolerance.Interval[Q]
	brackets := room[:0]
	for _, q := range readings {
		brackets = append(brackets, tolerance.Exactly(q))
	}
	return CheckBrackets(brackets...)
}

// usual is how many readings a set has at most that costs no memory.
const usual = 64

// span is a bracket as its middle and half its width.
type span struct{ middle, half int64 }

// spanOf gives a bracket's span; ok is false where an end is absent.
func spanOf[Q units.Quantity](x tolerance.Interval[Q]) (s span, ok bool) {
	lo, loEnd := x.Lower()
	hi, hiEnd := x.Upper()
	half := int64(apart(int64(lo), int64(hi)) / 2)
	return span{int64(lo) + half, half}, loEnd != tolerance.Absent && hiEnd != tolerance.Absent
}

// CheckBrackets is [CheckReadings] for readings that are brackets. A bracket
// without an end, as of a gap that no blade entered, takes no part.
//
// The neighbours are the readings that agree: those within five times the
// median deviation of the median of all, and in any case within a tenth of it
// or 0.05 mm if that is less (for other quantities a fiftieth). They must be
// more than half. Honest wear spreads them; so a cause is named only where
// undoing it puts the reading among them, within three times their spread of
// their median (or 2 % for a factor, a tenth of the amount up to 0.1 mm for an
// amount, if that is more; never more than half the size), and where the reading
// as it is lies more than twice as far away. Of readings that lie too far apart
// nothing can be told: three times their spread may be a quarter of the amount,
// of the size for factors of 2 and 2.54, and the size for greater ones. An
// amount is looked for only on sizes that are at least as great.
//
// Of temperatures, which have no multiples, nothing is found.
func CheckBrackets[Q units.Quantity](readings ...tolerance.Interval[Q]) (ReadingsOf[Q], error) {
	var r ReadingsOf[Q]
	var room [usual]int64
	middles := room[:0]
	for i, x := range readings {
		if !x.InRange() {
			return r, &CheckError{Field: "reading " + strconv.Itoa(i+1), Value: x.String(), Kind: ErrRange, Want: "a value within the range of its type"}
		}
		if s, ok := spanOf(x); ok {
			middles = append(middles, s.middle)
		}
	}
	if len(middles) < 3 {
		return r, &CheckError{Field: "readings", Value: strconv.Itoa(len(middles)), Kind: ErrTooFew, Want: "three at least that have a least and a greatest"}
	}
	slices.Sort(middles)
	near := neighbours[Q](middles)
	// All that lies between the first and the last of them is one of them.
	isNear := func(s span) bool { return near[0] <= s.middle && s.middle <= near[len(near)-1] }
	middle := median(near)
	spread := int64(0)
	for _, x := range readings {
		if s, ok := spanOf(x); ok && isNear(s) {
			spread = max(spread, int64(apart(s.middle, middle))+s.half)
		}
	}
	r.Middle, r.Spread, r.Agreeing = Q(middle), Q(spread), len(near)
	r.Identical = len(near) == len(readings) && spread == 0
	if len(near) == len(middles) || 2*len(near) <= len(middles) || isTemperature[Q]() {
		return r, nil
	}
	for i, x := range readings {
		if s, ok := spanOf(x); ok && !isNear(s) {
			if found := causes[Q](s.middle, s.half, middle, spread); found != nil {
				r.Odd = append(r.Odd, OddOf[Q]{Index: i, Reading: x, Causes: found})
			}
		}
	}
	return r, nil
}

// neighbours are those of the readings, given in order, that agree with the
// median of all.
func neighbours[Q units.Quantity](middles []int64) (near []int64) {
	middle := median(middles)
	var room [usual]int64
	deviations := room[:0]
	for _, m := range middles {
		deviations = append(deviations, int64(apart(m, middle)))
	}
	slices.Sort(deviations)
	allow := apart(middle, 0) / 50
	if _, is := any(Q(0)).(units.Length); is {
		allow = min(apart(middle, 0)/10, uint64(50*units.Micrometre))
	}
	allow = max(allow, 5*uint64(median(deviations)))
	first, end := 0, len(middles)
	for apart(middles[first], middle) > allow {
		first++
	}
	for apart(middles[end-1], middle) > allow {
		end--
	}
	return middles[first:end]
}

// median is the middle of values in order, or of an even number the mean of
// the two in the middle, rounded down.
func median(values []int64) int64 {
	n := len(values)
	lo, hi := values[(n-1)/2], values[n/2]
	return lo + int64(apart(lo, hi)/2)
}

func isTemperature[Q units.Quantity]() bool {
	_, is := any(Q(0)).(units.Temperature)
	return is
}
