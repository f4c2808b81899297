package form

import "slices"

import "math"

// A program is the linear programme at the heart of every minimum zone: choose
// s so that all of v_i − s·f_i lie between lo and hi with hi − lo least. With
// inner alone it is that of the greatest inscribed circle: all of v_i − s·f_i
// are at least lo, with lo greatest.
//
// It is solved by its dual, which has a row for each unknown and a column for
// each reading and side:
//
//	greatest Σ λ_i v_i − Σ µ_j v_j  with  Σλ = 1, Σµ = 1, Σ λ_i f_i = Σ µ_j f_j, λ, µ ≥ 0
//
// by the revised simplex method with the basis inverted afresh in each step:
// it is 4 × 4, or 6 × 6 for a cylinder. A step costs one pass over the
// readings. What the exchange of one contact for another does here is the
// exchange algorithm of Chetwynd for roundness and of Stiefel for fits in the
// maximum norm.
type program struct {
	v     []float64
	f     [4][]float64
	dims  int  // of f in use: 2 or 4
	inner bool // the one-sided programme
	noise float64
}

type column struct {
	index int
	outer bool
}

// basis is a set of columns with what follows from it.
type basis struct {
	cols   [side]column
	weight [side]float64
	hi, lo float64
	s      [4]float64
	inv    matrix
}

// rows is the number of rows, and so of columns in the basis.
func (p *program) rows() int {
	if p.inner {
		return p.dims + 1
	}
	return p.dims + 2
}

// row is a reading's line in the equations that hi, lo and s solve.
func (p *program) row(c column) (r [side]float64) {
	k := 1
	if p.inner {
		r[0] = 1
	} else {
		k = 2
		if c.outer {
			r[0] = 1
		} else {
			r[1] = 1
		}
	}
	for d := range p.dims {
		r[k+d] = p.f[d][c.index]
	}
	return r
}

// sign is 1 for a column of the outer side, −1 for one of the inner.
func sign(outer bool) float64 {
	if outer {
		return 1
	}
	return -1
}

// evaluate finds weights, levels and slopes of the basis. ok is false where
// its columns depend on each other, or a weight is negative.
func (b *basis) evaluate(p *program) (ok bool) {
	m := p.rows()
	var a matrix
	var v, right [side]float64
	for k := range m {
		a[k] = p.row(b.cols[k])
		v[k] = p.v[b.cols[k].index]
	}
	if b.inv, ok = a.invert(m); !ok {
		return false
	}
	x := b.inv.times(m, &v)
	k := 2
	if p.inner {
		k = 1
		b.lo = x[0]
		right[0] = -1
	} else {
		b.hi, b.lo = x[0], x[1]
		right[0], right[1] = 1, -1
	}
	copy(b.s[:p.dims], x[k:])
	b.weight = b.inv.transposedTimes(m, &right)
	for k := range m {
		b.weight[k] *= sign(b.cols[k].outer)
		if b.weight[k] < 0 {
			if b.weight[k] < -1e-9 {
				return false
			}
			b.weight[k] = 0
		}
	}
	return true
}

// extremes are the readings farthest out and in under the slopes s.
func (p *program) extremes(s *[4]float64) (outer, inner int, most, least float64) {
	most, least = math.Inf(-1), math.Inf(1)
	v, f0, f1 := p.v, p.f[0][:len(p.v)], p.f[1][:len(p.v)]
	if p.dims == 2 {
		for i, a := range v {
			a -= s[0]*f0[i] + s[1]*f1[i]
			if a > most {
				most, outer = a, i
			}
			if a < least {
				least, inner = a, i
			}
		}
		return outer, inner, most, least
	}
	f2, f3 := p.f[2][:len(p.v)], p.f[3][:len(p.v)]
	for i, a := range v {
		a -= s[0]*f0[i] + s[1]*f1[i] + s[2]*f2[i] + s[3]*f3[i]
		if a > most {
			most, outer = a, i
		}
		if a < least {
			least, inner = a, i
		}
	}
	return outer, inner, most, least
}

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
func (p *program) solve(b *basis) (ok bool) {
	m := p.rows()
	stalled, gained := 0, math.Inf(-1)
	for range 100 * (len(p.v) + patience) {
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
