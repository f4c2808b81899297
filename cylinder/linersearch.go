package cylinder

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
)

// shimSearch goes along the bank: the best way to reach each stack under one
// liner follows from those under the liner before.
type shimSearch struct {
	w      WetLiners
	band   tolerance.Band
	step   tolerance.Band
	stacks []stack
}

// option is one stack under one liner that brings it into the band.
type option struct {
	stack           int
	places          []tolerance.Bracket
	least, greatest tolerance.Bracket
	off             float64
	cost            cost
	from            int // the option before, −1 for none
}

// cost is compared by the worst liner first.
type cost struct{ worst, sum float64 }

func (c cost) less(o cost) bool {
	return c.worst < o.worst || c.worst == o.worst && c.sum < o.sum
}

func (s shimSearch) choose() ShimChoice {
	var c ShimChoice
	for _, l := range s.w.Liners {
		c.Needed = append(c.Needed, neededShims(l, s.band))
	}
	rows := make([][]option, len(s.w.Liners))
	for i, l := range s.w.Liners {
		for k, st := range s.stacks {
			if o := s.option(l, k, st); s.band.JudgeAll(o.places...) == (tolerance.Sides{Least: tolerance.Within, Greatest: tolerance.Within}) {
				rows[i] = append(rows[i], o)
			}
		}
		if len(rows[i]) == 0 {
			return s.blocked(c, i)
		}
	}
	// The least worst first; then, among ways no worse, the least sum. Both
	// are found by going along the bank once.
	if worst, at := s.along(rows, math.Inf(1), true); at >= 0 {
		c.Blocked = fmt.Sprintf("no two shims that suit %s and %s keep the step between them within its limit", s.w.Liners[at-1].Where, s.w.Liners[at].Where)
		c.Next = "get shims of finer steps, or cut the higher one's counterbore; the engine maker's manual says how deep it may be"
		return c
	} else {
		s.along(rows, worst, false)
	}
	return s.trace(c, rows)
}

func (s shimSearch) option(l WetLiner, k int, st stack) option {
	o := option{stack: k, from: -1}
	for _, p := range l.Places {
		o.places = append(o.places, ProtrusionWithShim(p, l.shim(), st.total))
	}
	o.least, o.greatest = tolerance.Extremes(o.places...)
	o.off = away(o.least, o.greatest, s.band)
	return o
}

// along fills in the costs, leaving out options further off than cap. It gives
// the least worst distance, and the first liner that no way reaches, or −1.
func (s shimSearch) along(rows [][]option, cap float64, worstOnly bool) (worst float64, at int) {
	never := cost{math.Inf(1), math.Inf(1)}
	for i := range rows {
		reached := false
		for k := range rows[i] {
			o := &rows[i][k]
			o.cost, o.from = never, -1
			if o.off > cap {
				continue
			}
			best := cost{}
			if i > 0 {
				best = never
				for f := range rows[i-1] {
					if b := rows[i-1][f].cost; b.less(best) && s.stepAllowed(rows[i-1][f], *o) {
						best, o.from = b, f
					}
				}
				if o.from < 0 {
					continue
				}
			}
			o.cost.worst = max(best.worst, o.off)
			if o.cost.sum = best.sum + o.off; worstOnly {
				o.cost.sum = 0
			} else {
				o.cost.worst = 0
			}
			reached = true
		}
		if !reached {
			return 0, i
		}
	}
	worst = math.Inf(1)
	for _, o := range rows[len(rows)-1] {
		worst = min(worst, o.cost.worst)
	}
	return worst, -1
}

func (s shimSearch) stepAllowed(a, b option) bool {
	return s.step.IsZero() || s.step.Judge(s.w.step(a.places, b.places)) == tolerance.Within
}

// trace walks the best way back.
func (s shimSearch) trace(c ShimChoice, rows [][]option) ShimChoice {
	last := len(rows) - 1
	best := 0
	for k := range rows[last] {
		if rows[last][k].cost.less(rows[last][best].cost) {
			best = k
		}
	}
	c.Picks = make([]ShimPick, len(rows))
	chosen := make([]option, len(rows))
	for i := last; i >= 0; i-- {
		o := rows[i][best]
		st := s.stacks[o.stack]
		c.Picks[i] = ShimPick{Where: s.w.Liners[i].Where, Shims: st.names, Total: st.total, Least: o.least, Greatest: o.greatest}
		chosen[i], best = o, o.from
	}
	for i := 1; i <= last; i++ {
		c.Steps = append(c.Steps, s.w.step(chosen[i-1].places, chosen[i].places))
	}
	c.Ok = true
	c.Next = "fit them, clamp the liners and measure again: what governs is what they measure then"
	return c
}

// blocked says why nothing suits one liner.
func (s shimSearch) blocked(c ShimChoice, i int) ShimChoice {
	l, need := s.w.Liners[i], c.Needed[i]
	hi, end := need.Upper()
	switch {
	case need.IsZero():
		c.Blocked = l.Where + " varies by more round its places, or is read more coarsely, than the band is wide: no shim suits it"
		c.Next = "clean and seat it, dress the counterbore level, and measure again with a finer instrument"
	case end != tolerance.Absent && hi < 0:
		c.Blocked = fmt.Sprintf("%s stands too high even without a shim, by %v or more", l.Where, -hi)
		c.Next = "check that it is seated; then its counterbore must be cut deeper, as the engine maker's manual allows"
	default:
		c.Blocked = fmt.Sprintf("no shim in stock suits %s: it needs %v", l.Where, need)
		c.Next = "get a shim of that thickness, or cut the counterbore for one that can be had"
	}
	return c
}
