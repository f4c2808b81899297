package proofread

import (
	"math/bits"

	"github.com/tenthou/tenthou/units"
)

// A ReportOf is what came of the comparisons made of a measure's limits.
type ReportOf[Q units.Quantity] struct {
	Results []ResultOf[Q] `json:"results"` // every comparison made
}

// A Report is what came of the comparisons made of a length's limits.
type Report = ReportOf[units.Length]

// Flagged reports whether something is amiss.
func (r ReportOf[Q]) Flagged() bool {
	for i := range r.Results {
		if r.Results[i].Flagged() {
			return true
		}
	}
	return false
}

// Suspicions are the results in which something is amiss.
func (r ReportOf[Q]) Suspicions() (flagged []ResultOf[Q]) {
	for _, x := range r.Results {
		if x.Flagged() {
			flagged = append(flagged, x)
		}
	}
	return flagged
}

// CheckColumn holds the limits of one column to each other: the least must not
// be above the greatest, and limits of three digits or more don't differ by a
// power of ten. A value out of range is a [CheckError].
func CheckColumn[Q units.Quantity](c ColumnOf[Q]) (ReportOf[Q], error) {
	if err := c.inRange("column"); err != nil {
		return ReportOf[Q]{}, err
	}
	return ReportOf[Q]{Results: c.order(nil)}, nil
}

// CheckLimits holds the two columns of a manual to each other, figure by
// figure as [CheckPair] does, and each column's limits as [CheckColumn] does.
// What one column tells of the other narrows the suspicion: a column whose
// least is above its greatest, or whose limits lie further apart than the
// other's, is suspected first. Limits that were rounded inward in one column
// are no slip.
//
// Columns that differ in form, and values out of range, are a [CheckError].
func CheckLimits[Q units.Quantity](l LimitsOf[Q]) (ReportOf[Q], error) {
	// The compiler takes this call into the caller's code, where the results of a
	// report that isn't kept cost no memory (a test holds it to that).
	return l.check(make([]ResultOf[Q], 0, mostResults))
}

// mostResults are those of two figures and of the order in each column.
const mostResults = 4

func (l LimitsOf[Q]) check(results []ResultOf[Q]) (ReportOf[Q], error) {
	if err := l.match(); err != nil {
		return ReportOf[Q]{}, err
	}
	if err := l.First.inRange("first column"); err != nil {
		return ReportOf[Q]{}, err
	}
	if err := l.Second.inRange("second column"); err != nil {
		return ReportOf[Q]{}, err
	}
	for i := range l.First.count() {
		p := PairOf[Q]{l.First.figure(i), l.Second.figure(i)}
		r := ResultOf[Q]{Pair: p, Limit: l.First.limit(i), Basis: compare(p.First, p.Second)}
		if r.Basis == Apart {
			r.Slips = newSearch(p, Neither, l.suspect()).slips()
		}
		results = append(results, r)
	}
	if l.First.Form == Range {
		l.excuseInward(results)
	}
	return ReportOf[Q]{Results: l.Second.order(l.First.order(results))}, nil
}

// suspect is the column that the other speaks against.
func (l *LimitsOf[Q]) suspect() Side {
	f, s := &l.First, &l.Second
	if f.Form != Range {
		return Neither
	}
	switch fBad, sBad := f.A.Value > f.B.Value, s.A.Value > s.B.Value; {
	case fBad && !sBad:
		return First
	case sBad && !fBad:
		return Second
	case fBad || agree(show(f.A), show(s.A)) == agree(show(f.B), show(s.B)):
		return Neither
	}
	switch wider(f.A.Value, f.B.Value, s.A.Value, s.B.Value) {
	case 1:
		return First
	case -1:
		return Second
	}
	return Neither
}

// wider compares d/c with b/a for sizes above zero: 1 where a and b differ by
// the greater factor.
func wider[Q units.Quantity](a, b, c, d Q) int {
	if min(a, b, c, d) <= 0 {
		return 0
	}
	h1, l1 := bits.Mul64(uint64(b), uint64(c))
	h2, l2 := bits.Mul64(uint64(d), uint64(a))
	switch {
	case h1 > h2 || h1 == h2 && l1 > l2:
		return 1
	case h1 == h2 && l1 == l2:
		return 0
	}
	return -1
}

// excuseInward clears limits of which one column is the other rounded inward:
// the least up, the greatest down.
func (l *LimitsOf[Q]) excuseInward(results []ResultOf[Q]) {
	least, greatest := &results[0], &results[1]
	if !least.Flagged() && !greatest.Flagged() || !inOrder(l.First) || !inOrder(l.Second) {
		return
	}
	for _, side := range []Side{First, Second} {
		lo, loFrom := least.Pair.side(side), least.Pair.side(side.other())
		hi, hiFrom := greatest.Pair.side(side), greatest.Pair.side(side.other())
		up, _ := units.Round(loFrom.Value, lo.Unit, int(lo.Places), units.Up)
		down, _ := units.Round(hiFrom.Value, hi.Unit, int(hi.Places), units.Down)
		if lo.Denominator == 0 && hi.Denominator == 0 && lo.Value == up && hi.Value == down {
			least.Basis, least.Slips, greatest.Basis, greatest.Slips = Inward, nil, Inward, nil
			return
		}
	}
}

func inOrder[Q units.Quantity](c ColumnOf[Q]) bool { return c.A.Value <= c.B.Value }

// order holds the two limits of a range to each other and appends the result.
func (c *ColumnOf[Q]) order(results []ResultOf[Q]) []ResultOf[Q] {
	if c.Form != Range {
		return results
	}
	r := ResultOf[Q]{Relation: InOrder, Limit: Least, Pair: PairOf[Q]{c.A, c.B}}
	if c.close() {
		return append(results, r)
	}
	found := c.shifted()
	if !inOrder(*c) {
		found = append(found, candidate[Q]{SlipOf: SlipOf[Q]{Kind: LeastAboveGreatest, In: First, Printed: c.A, Undone: c.B, Correct: c.B, Rank: rankWrongNumber}})
	} else if !precise(c.A) || !precise(c.B) {
		found = nil
	}
	r.Slips = ordered(found)
	return append(results, r)
}

// shifted tries the point of either limit, and keeps what brings the two within
// a fiftieth of each other.
func (c *ColumnOf[Q]) shifted() []candidate[Q] {
	return shifts(PairOf[Q]{c.A, c.B}, func(side Side, lo, hi int64) bool {
		return lo <= hi && lo > 0 && apart(lo, hi) <= uint64(hi)/50
	})
}

// close reports whether the limits are in order and no shifted point brings
// them nearer to each other: that takes a greatest of ten times the least.
func (c *ColumnOf[Q]) close() bool {
	return inOrder(*c) && (c.A.Value <= 0 || c.B.Value/10 < c.A.Value) && !isTemperature[Q]()
}

// precise reports whether a figure has three digits at least, zeros at its end
// not counted.
func precise[Q units.Quantity](w units.Written[Q]) bool {
	f, ok := figureOf(w)
	return ok && roundness(f.m) >= 3
}

// shifts tries the point of either figure up to three places either way, and
// keeps what makes the two of them right.
func shifts[Q units.Quantity](p PairOf[Q], right func(side Side, a, b int64) bool) (found []candidate[Q]) {
	for _, side := range []Side{First, Second} {
		w, other := p.side(side), p.side(side.other())
		f, ok := figureOf(w)
		if !ok {
			continue
		}
		for shift := -3; shift <= 3; shift++ {
			v, ok := f.value(f.m, f.places+shift)
			if !ok || shift == 0 {
				continue
			}
			a, b := v.value, int64(other.Value)
			if side == Second {
				a, b = b, a
			}
			if !right(side, a, b) {
				continue
			}
			undone := f.written(v.value, f.places+shift)
			found = append(found, candidate[Q]{
				SlipOf: SlipOf[Q]{Kind: DecimalPlace, In: side, Shift: shift, Printed: w, Undone: undone, Correct: undone,
					Rank: rankDecimalPlace + uint8(max(shift, -shift)) - 1},
				suspicions: unlikely(undone) + unlikely(other),
			})
		}
	}
	return found
}
