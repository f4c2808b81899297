package form

import (
	"math"
	"slices"
)

// first is the first column, in order, that violates its side; Bland's rule,
// under which no cycle is possible.
func (p *program) first(b *basis, tolerance float64) (c column, found bool) {
	for i, v := range p.v {
		for d := range p.dims {
			v -= b.s[d] * p.f[d][i]
		}
		switch {
		case !p.inner && v-b.hi > tolerance:
			return column{i, true}, true
		case b.lo-v > tolerance:
			return column{i, false}, true
		}
	}
	return column{}, false
}

// patience is the number of steps without gain after which Bland's rule takes
// over.
const patience = 25

// solve improves a feasible basis to an optimal one. ok is false where
// rounding got in the way.
func (p *program) solve(b *basis) (ok bool) { return p.exchange(b, patience) }

func (p *program) exchange(b *basis, patience int) (ok bool) {
	m := p.rows()
	stalled, gained := 0, math.Inf(-1)
	for range 100 * (len(p.v) + 25) {
		if !b.evaluate(p) {
			return false
		}
		goal := b.hi - b.lo
		if p.inner {
			goal = -b.lo
		}
		if goal > gained+p.noise {
			stalled, gained = 0, goal
		} else {
			stalled++
		}
		in, found := p.entering(b, stalled > patience)
		if !found || b.has(in, m) {
			return true // what violates the basis that it belongs to is rounding
		}
		r := p.row(in)
		g := b.inv.transposedTimes(m, &r)
		out := p.leaving(b, in, &g, stalled > patience)
		if out < 0 {
			return false // unbounded: rounding, for the optimum is bounded
		}
		b.cols[out] = in
	}
	return false
}

// has reports whether a column is one of the first m.
func (b *basis) has(c column, m int) bool {
	return slices.Contains(b.cols[:m], c)
}

// entering chooses the column that violates its side most.
func (p *program) entering(b *basis, bland bool) (c column, found bool) {
	if bland {
		return p.first(b, p.noise)
	}
	outer, inner, most, least := p.extremes(&b.s)
	over, under := most-b.hi, b.lo-least
	switch {
	case !p.inner && over > p.noise && over >= under:
		return column{outer, true}, true
	case under > p.noise:
		return column{inner, false}, true
	}
	return column{}, false
}

// leaving chooses the column whose weight falls to zero first; of equals, the
// one with the greatest pivot, or under Bland's rule the first in order.
func (p *program) leaving(b *basis, in column, g *[side]float64, bland bool) int {
	out, ratio, pivot := -1, math.Inf(1), 0.0
	for k := range p.rows() {
		y := sign(b.cols[k].outer) * sign(in.outer) * g[k]
		if y <= 1e-11 {
			continue
		}
		t := b.weight[k] / y
		switch {
		case t < ratio-1e-13:
		case t > ratio+1e-13:
			continue
		case bland && !before(b.cols[k], b.cols[out]):
			continue
		case !bland && y <= pivot:
			continue
		}
		out, ratio, pivot = k, min(t, ratio), y
	}
	return out
}

// before orders columns for Bland's rule.
func before(a, b column) bool {
	return a.index < b.index || a.index == b.index && a.outer && !b.outer
}

// start finds a feasible basis of the two-sided programme: one reading on both
// sides and as many more as make the columns independent, each the farthest
// from the span of those before. ok is false where there are none, because
// the readings lie in a line, or in a plane of the cylinder's four slopes.
func (p *program) start(b *basis) (ok bool) {
	base, q := 0, [4][4]float64{}
	for i, x := range p.f[0] {
		if x > p.f[0][base] {
			base = i
		}
	}
	b.cols[0], b.cols[1] = column{base, true}, column{base, false}
	first := 0.0
	for found := range p.dims {
		far, at, dir := 0.0, -1, [4]float64{}
		for i := range p.v {
			w := p.residual(i, base, found, &q)
			if size := w[0]*w[0] + w[1]*w[1] + w[2]*w[2] + w[3]*w[3]; size > far {
				far, at, dir = size, i, w
			}
		}
		first = max(first, far)
		if at < 0 || far <= 1e-24*first {
			return false
		}
		norm := math.Sqrt(far)
		for d := range dir {
			q[found][d] = dir[d] / norm
		}
		b.cols[2+found] = column{at, true}
	}
	return true
}

// residual is the part of f_i − f_base beyond the span of the directions found.
func (p *program) residual(i, base, found int, q *[4][4]float64) (w [4]float64) {
	for d := range p.dims {
		w[d] = p.f[d][i] - p.f[d][base]
	}
	for k := range found {
		dot := w[0]*q[k][0] + w[1]*q[k][1] + w[2]*q[k][2] + w[3]*q[k][3]
		for d := range p.dims {
			w[d] -= dot * q[k][d]
		}
	}
	return w
}
