package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// A wear limit is looked at twice where it lies this many times beyond the
// limit for new parts, and an explanation must bring it within usualWear times
// that limit, or within a twentieth of it for slips of a digit or a unit.
// Common practice.
const (
	farWear   = 8
	usualWear = 3
	closeWear = 20
)

// CheckWear holds a measure's limits for new parts and its wear limit to each
// other. A part within the limits for new ones must not be past the wear limit
// ([tolerance.SpecOf.Validate] refuses such a pair); where it is, or where the
// wear limit lies eight times or more away, a shifted decimal point, a figure
// of the other unit or two exchanged digits may explain it. A worn figure
// without a word is a greatest or a least as it lies nearer to the one or the
// other limit for new parts.
//
// The figures count as exact, in whichever units they are. A result's pair is
// the limit for new parts and the wear limit. Values out of range are a
// [CheckError].
func CheckWear[Q units.Quantity](newPart, worn ColumnOf[Q]) (ReportOf[Q], error) {
	return checkWear(newPart, worn, make([]ResultOf[Q], 0, mostResults)) // as in CheckLimits
}

func checkWear[Q units.Quantity](newPart, worn ColumnOf[Q], results []ResultOf[Q]) (r ReportOf[Q], err error) {
	if err := newPart.inRange("limits for new parts"); err != nil {
		return r, err
	}
	if err := worn.inRange("wear limits"); err != nil {
		return r, err
	}
	results = worn.order(newPart.order(results))
	least, hasLeast := newPart.least()
	greatest, hasGreatest := newPart.greatest()
	low, hasLow := worn.least()
	high, hasHigh := worn.greatest()
	if worn.Form == One {
		hasHigh = hasGreatest && (!hasLeast || nearer(worn.A, greatest, least))
		hasLow = !hasHigh
	}
	if hasGreatest && hasHigh {
		w := wear[Q]{pair: PairOf[Q]{greatest, high}, limit: Greatest}
		if hasLeast && newPart.Form != One {
			w.mate = least.Value
		}
		results = append(results, w.result())
	}
	if hasLeast && hasLow {
		w := wear[Q]{pair: PairOf[Q]{least, low}, limit: Least}
		if hasGreatest && newPart.Form != One {
			w.mate = greatest.Value
		}
		results = append(results, w.result())
	}
	if len(results) > 0 {
		r.Results = results
	}
	return r, nil
}

// nearer reports whether a lone wear limit belongs to the greatest: it lies no
// further from it than from the least.
func nearer[Q units.Quantity](w, greatest, least units.Written[Q]) bool {
	return apart(int64(w.Value), int64(greatest.Value)) <= apart(int64(w.Value), int64(least.Value))
}

// wear is one limit for new parts and the wear limit on its side.
type wear[Q units.Quantity] struct {
	pair  PairOf[Q]
	limit Limit
	mate  Q // the other limit for new parts, or 0
}

func (w *wear[Q]) result() ResultOf[Q] {
	r := ResultOf[Q]{Relation: WithinWear, Limit: w.limit, Pair: w.pair}
	a, b := int64(w.pair.First.Value), int64(w.pair.Second.Value)
	past := b < a
	if w.limit == Least {
		past = a < b
	}
	if !past && !(a > 0 && b > 0 && (a/b >= farWear || b/a >= farWear)) {
		return r
	}
	found := shifts(w.pair, func(side Side, a, b int64) bool { return w.right(side, a, b, past) })
	for i := range found { // a wear limit of twice the size explains less than one close by
		c := &found[i]
		if left := int64(w.pair.side(c.In.other()).Value); apart(int64(c.Undone.Value), left) > uint64(left)/closeWear {
			c.Rank += rankNearDecimal - rankDecimalPlace
		}
	}
	found = append(found, w.figure(past)...)
	if past {
		worn := w.pair.Second
		found = append(found, candidate[Q]{SlipOf: SlipOf[Q]{Kind: NewPastWear, In: Second, Printed: worn,
			Correct: decimalOf(w.pair.First.Value, worn.Unit, max(int(worn.Places), matching(w.pair.First, worn))), Rank: rankWrongNumber}})
	}
	r.Slips = ordered(found)
	return r
}

// right reports whether a limit for new parts and a wear limit go together.
// Where they weren't out of order before, they must not come out equal: a wear
// limit of ten times the limit for new parts can be meant.
func (w *wear[Q]) right(side Side, a, b int64, past bool) bool {
	if w.limit == Least {
		if side == First && w.mate != 0 && (a > int64(w.mate) || a < int64(w.mate)/usualWear) {
			return false
		}
		return b > 0 && b <= a && a/usualWear <= b && (past || b < a)
	}
	if side == First && w.mate != 0 && (a < int64(w.mate) || a/usualWear > int64(w.mate)) {
		return false
	}
	return a > 0 && a <= b && b/usualWear <= a && (past || a < b)
}

// figure tries the wear limit as a figure of the other unit and with two digits
// exchanged.
func (w *wear[Q]) figure(past bool) (found []candidate[Q]) {
	worn := w.pair.Second
	f, ok := figureOf(worn)
	if !ok || f.m < 10 {
		return nil
	}
	n := int64(w.pair.First.Value)
	try := func(k Kind, v shown, undone units.Written[Q], rank uint8) {
		beyond := v.value - n
		if w.limit == Least {
			beyond = -beyond
		}
		if beyond >= 0 && beyond <= n/closeWear && (past || beyond > 0) {
			found = append(found, candidate[Q]{
				SlipOf: SlipOf[Q]{Kind: k, In: Second, Printed: worn, Undone: undone, Correct: decimalOf(Q(v.value), worn.Unit, int(worn.Places)), Rank: rank},
				off:    uint64(beyond),
			})
		}
	}
	if length, is := any(worn.Unit).(units.Unit[units.Length]); is && (length == units.InMillimetres || length == units.InInches) {
		g := f
		g.unit = units.Unit[Q](units.InMillimetres + units.InInches - length)
		if v, ok := g.value(f.m, f.places); ok {
			try(WrongUnit, v, g.written(v.value, f.places), rankWrongUnit)
		}
	}
	f.variants(func(x variant) {
		if v, ok := f.value(x.m, x.places); ok && x.kind == DigitsTransposed && x.likely {
			try(DigitsTransposed, v, f.written(v.value, x.places), rankTransposed)
		}
	})
	return found
}
