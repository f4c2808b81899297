package form

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
	// Once more for what rounding left, where the columns are nearly dependent.
	back := a.times(m, &x)
	for k := range m {
		back[k] = v[k] - back[k]
	}
	for k, d := range b.inv.times(m, &back) {
		x[k] += d
	}
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
