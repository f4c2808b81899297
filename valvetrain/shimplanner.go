package valvetrain

import (
	"fmt"
	"math/bits"

	"github.com/tenthou/tenthou/internal/assign"
	"github.com/tenthou/tenthou/tolerance"
)

// The most that one head holds.
const (
	shimValvesMost = 64
	shimDrawerMost = 256
)

// A ShimPlanner makes one plan after another in the same memory. The zero value is
// ready. Two goroutines can't use one at the same time. The plans that it gives
// are the caller's.
//
// How: each valve whose shim may change is a row. The columns are the shims in
// hand, each once, and for each valve the size that it would buy: the best one in
// the series for it, since of each size there are as many as needed. A shim
// stands in a row only if it brings the whole bracket into the band; a valve's own
// shim always does, at the cost of a valve that isn't settled. Costs add up in
// steps, each greater than all that the steps below can sum up to, so that the
// least sum of an assignment is the best plan step by step. Then the greatest
// distance is brought down for as long as the least sum stays.
type ShimPlanner struct {
	solver assign.Solver
	rows   []shimRow
	cols   []shimColumn
	cost   []int64
	off    []int64 // twice the distance from the aim
	best   []int   // the column of each row
	pieces []int   // to buy of each size
	used   []bool  // of the shims that come out of valves, then of the drawer's

	// For bringing the greatest distance down.
	base                  []int64 // cost without the lowest step
	even                  []bool  // pairs that cost exactly their prices
	rowPrice, columnPrice []int64
	columnOf, rowOf       []int
	from, queue           []int
}

// shimRow is a valve whose shim may change.
type shimRow struct {
	valve    int
	window   tolerance.Bracket
	inBand   bool
	size     int // the one it would buy; -1 for none
	sizeCost shimPair
}

// shimPair is what a shim in a row comes to: twice the distance from the aim, and
// whether it is on the tight side.
type shimPair struct {
	off   int64
	tight bool
}

// shimColumn is a shim in hand, or the one that a row would buy: of valve, spare
// and buyer, a row, two are shimNone.
type shimColumn struct {
	valve, spare, buyer int
	shim                tolerance.Bracket
}

// Plan plans a whole head; see [PlanShims]. It changes nothing of the head and
// keeps nothing of it.
func (p *ShimPlanner) Plan(h *ShimHead) (ShimPlan, error) {
	if err := h.check(); err != nil {
		return ShimPlan{}, err
	}
	plan := ShimPlan{Moves: make([]ShimMove, len(h.Valves))}
	p.gather(h, plan.Moves)
	if len(p.rows) > 0 {
		if err := p.solve(h); err != nil {
			return ShimPlan{}, err
		}
		p.apply(h, plan.Moves)
	}
	p.sum(h, &plan)
	plan.Undecided = h.unsure(plan.Moves)
	return plan, nil
}

// gather makes the rows and the columns, and writes down what stays as it is.
func (p *ShimPlanner) gather(h *ShimHead, moves []ShimMove) {
	p.rows, p.cols = p.rows[:0], p.cols[:0]
	for i := range h.Valves {
		v := &h.Valves[i]
		now := v.Wanted.Judge(v.Measured)
		m := ShimMove{Valve: i, Where: v.Where, Now: now, From: i, Shim: v.Shim, After: v.Measured, Then: now}
		if now == tolerance.Within {
			m.Action = ShimStays
		}
		moves[i] = m
		if now == tolerance.Within && (!h.Disturb || v.Shim.IsZero()) {
			continue
		}
		if r, ok := h.row(i, now == tolerance.Within); ok {
			p.rows = append(p.rows, r)
			p.cols = append(p.cols, shimColumn{i, shimNone, shimNone, v.Shim})
		}
	}
	if len(p.rows) == 0 {
		return
	}
	for i, s := range h.Drawer {
		for _, r := range p.rows {
			if s.Thickness.Within(r.window) {
				p.cols = append(p.cols, shimColumn{shimNone, i, shimNone, s.Thickness})
				break
			}
		}
	}
	for i, r := range p.rows {
		if r.size >= 0 {
			p.cols = append(p.cols, shimColumn{shimNone, shimNone, i, h.Series[r.size].Thickness})
		}
	}
}

// row is what may become of a valve; ok is false where no shim could suit it.
func (h *ShimHead) row(i int, inBand bool) (r shimRow, ok bool) {
	v := &h.Valves[i]
	r = shimRow{valve: i, inBand: inBand, size: -1}
	if r.window, ok = v.Window(); !ok {
		return r, false
	}
	for k, s := range h.Series {
		if !s.Thickness.Within(r.window) {
			continue
		}
		if c := r.with(v, s.Thickness); r.size < 0 || c.off < r.sizeCost.off || c.off == r.sizeCost.off && !c.tight && r.sizeCost.tight {
			r.size, r.sizeCost = k, c
		}
	}
	return r, true
}

// with is what another shim comes to.
func (r *shimRow) with(v *ShimValve, shim tolerance.Bracket) shimPair {
	over := shimTwiceMiddle(v.With(shim)) - v.twiceAim()
	return shimPair{int64(over.Abs()), over < 0}
}

// solve finds the best assignment into p.best.
func (p *ShimPlanner) solve(h *ShimHead) error {
	rows, cols := len(p.rows), len(p.cols)
	p.cost, p.off = shimRoom(p.cost, rows*cols), shimRoom(p.off, rows*cols)
	greatest := int64(0)
	for i := range p.rows {
		r := &p.rows[i]
		v := &h.Valves[r.valve]
		for j, c := range p.cols {
			pair, ok := shimPair{}, false
			switch {
			case c.buyer != shimNone:
				pair, ok = r.sizeCost, c.buyer == i
			case c.valve == r.valve && r.inBand:
				over := shimTwiceMiddle(v.Measured) - v.twiceAim()
				pair, ok = shimPair{int64(over.Abs()), over < 0}, true
			case c.valve != r.valve && c.shim.Within(r.window):
				pair, ok = r.with(v, c.shim), true
			}
			greatest = max(greatest, p.put(i*cols+j, pair, ok))
		}
	}
	err := p.steps(h, greatest)
	if err != nil {
		return err
	}
	if p.best, _, err = p.solver.LeastSum(p.best[:0], rows, cols, p.cost); err == nil {
		err = p.lower(rows, cols)
	}
	if err != nil {
		return &InputError{"shims of the head", err.Error(), "few enough to plan"} // not reached: steps keeps the sums in range
	}
	return nil
}

// put writes a pair down, and gives its distance.
func (p *ShimPlanner) put(at int, pair shimPair, ok bool) int64 {
	if !ok {
		p.cost[at], p.off[at] = assign.Forbidden, -1
		return 0
	}
	p.off[at] = pair.off
	p.cost[at] = pair.off * int64(len(p.rows)+1)
	if pair.tight {
		p.cost[at]++
	}
	return pair.off
}

// steps adds the greater steps to the costs: for rows m, a distance counts m+1
// times over, so that the tight ones, m at most, stay below one; an in-band valve
// disturbed counts more than all distances can sum up to, a shim bought more than
// that of all valves, a valve not settled more than that of all shims. Each is a
// multiple of m+1, so that the lowest step can be taken off.
func (p *ShimPlanner) steps(h *ShimHead, greatest int64) error {
	m := int64(len(p.rows))
	step, ok := m+1, true
	times := func(k int64) int64 {
		high, low := bits.Mul64(uint64(step), uint64(k))
		if high != 0 || low > 1<<58 {
			ok, low = false, 1
		}
		step = int64(low)
		return step
	}
	disturbed := times(greatest*m + 1)
	bought := disturbed
	if h.Disturb {
		bought = times(m + 1)
	}
	open := times(m + 1)
	if times(2 * m); !ok {
		return &InputError{"wanted clearance of " + fmt.Sprint(len(h.Valves)) + " valves", h.widest().String(), "a narrower band: this many valves in so wide a one are beyond exact planning"}
	}
	for i := range p.rows {
		r := &p.rows[i]
		for j, c := range p.cols {
			at := i*len(p.cols) + j
			switch {
			case c.valve == r.valve:
				if !r.inBand {
					p.cost[at] = open
				}
				continue
			case p.off[at] < 0:
				continue
			case c.buyer != shimNone:
				p.cost[at] += bought
			}
			if r.inBand {
				p.cost[at] += disturbed
			}
		}
	}
	return nil
}

func shimRoom(s []int64, n int) []int64 {
	if cap(s) < n {
		return make([]int64, n)
	}
	return s[:n]
}
