package tolerance

import "github.com/tenthou/tenthou/units"

// A product or quotient of intervals has its extremes at corners, where each
// factor is at one of its ends: for the others held still it is monotone in
// each. edge is one end of one factor, inf telling the infinite ones.
type edge[Q units.Quantity] struct {
	v      Q
	inf    int // -1, 0, +1
	closed bool
}

func (i Interval[Q]) edges() [2]edge[Q] {
	e := [2]edge[Q]{{v: i.lo, closed: i.loEnd == Closed}, {v: i.hi, closed: i.hiEnd == Closed}}
	if i.loEnd == Absent {
		e[0].inf = -1
	}
	if i.hiEnd == Absent {
		e[1].inf = +1
	}
	return e
}

func (e edge[Q]) zero() bool { return e.inf == 0 && e.v == 0 }

func (e edge[Q]) sign() int {
	switch {
	case e.inf != 0:
		return e.inf
	case e.v < 0:
		return -1
	case e.v > 0:
		return 1
	}
	return 0
}

// hull gathers corners.
type hull[Q units.Quantity] struct {
	r         Interval[Q]
	any       bool
	neg, pos  bool // an infinite corner
	undefined bool
}

// add takes one corner: its value rounded down and up, and whether the corner
// is reached.
func (h *hull[Q]) add(down, up Q, reached bool) {
	end := Open
	if reached && down == up {
		end = Closed
	}
	at := Interval[Q]{down, up, end, end}
	if !h.any {
		h.r, h.any = at, true
		return
	}
	if !notBelow(at, h.r) {
		h.r.lo, h.r.loEnd = at.lo, at.loEnd
	}
	if !notAbove(at, h.r) {
		h.r.hi, h.r.hiEnd = at.hi, at.hiEnd
	}
}

func (h *hull[Q]) infinite(sign int) {
	h.neg = h.neg || sign < 0
	h.pos = h.pos || sign > 0
}

func (h *hull[Q]) interval() Interval[Q] {
	if h.undefined || !h.any {
		return Interval[Q]{}
	}
	if h.neg {
		h.r.lo, h.r.loEnd = 0, Absent
	}
	if h.pos {
		h.r.hi, h.r.hiEnd = 0, Absent
	}
	return h.r.settle()
}

// MulDiv holds every value of i times one of mul over one of div, rounded
// outward. A divisor that holds zero, or touches it, makes it unbounded.
func (i Interval[Q]) MulDiv(mul, div Interval[Q]) Interval[Q] {
	if !i.InRange() || !mul.InRange() || !div.InRange() {
		return broken[Q]()
	}
	if div.IsExact() && div.lo == 0 {
		return broken[Q]()
	}
	if touchesZero(div) || i.IsZero() || mul.IsZero() {
		return Interval[Q]{}
	}
	var h hull[Q]
	for _, x := range i.edges() {
		for _, m := range mul.edges() {
			for _, d := range div.edges() {
				h.quotient(x, m, d)
			}
		}
	}
	return h.interval()
}

// touchesZero reports whether zero is in the interval or at one of its ends.
func touchesZero[Q units.Quantity](i Interval[Q]) bool {
	return (i.loEnd == Absent || i.lo <= 0) && (i.hiEnd == Absent || i.hi >= 0)
}

func (h *hull[Q]) quotient(x, m, d edge[Q]) {
	switch {
	case x.zero() || m.zero():
		h.add(0, 0, x.zero() && x.closed || m.zero() && m.closed)
	case d.inf != 0 && (x.inf != 0 || m.inf != 0):
		// Anything between zero and the corners beside it, of either size.
		h.add(0, 0, false)
		h.infinite(x.sign() * m.sign() * d.sign())
	case d.inf != 0:
		h.add(0, 0, false)
	case x.inf != 0 || m.inf != 0:
		h.infinite(x.sign() * m.sign() * d.sign())
	default:
		h.add(units.MulDivRound(x.v, m.v, d.v, units.Down), units.MulDivRound(x.v, m.v, d.v, units.Up), x.closed && m.closed && d.closed)
	}
}

// Share holds every share of a value of i that part has in part+rest, rounded
// outward. Where part+rest can be zero it is unbounded, unless neither can be
// negative: a share of two sizes is never more than the whole.
func (i Interval[Q]) Share(part, rest Interval[Q]) Interval[Q] {
	if !i.InRange() || !part.InRange() || !rest.InRange() {
		return broken[Q]()
	}
	if part.IsExact() && rest.IsExact() && part.lo+rest.lo == 0 {
		return broken[Q]()
	}
	sizes := part.loEnd != Absent && part.lo >= 0 && rest.loEnd != Absent && rest.lo >= 0
	infinite := part.hiEnd == Absent || rest.hiEnd == Absent
	if !sizes && (infinite || part.loEnd == Absent || rest.loEnd == Absent || touchesZero(part.Add(rest))) || i.IsZero() {
		return Interval[Q]{}
	}
	var h hull[Q]
	for _, x := range i.edges() {
		for _, p := range part.edges() {
			for _, r := range rest.edges() {
				h.share(x, p, r)
			}
		}
	}
	return h.interval()
}

func (h *hull[Q]) share(x, p, r edge[Q]) {
	switch {
	case p.zero() && r.zero():
		// Any share between nothing and all of it.
		h.add(0, 0, x.closed)
		h.share(x, edge[Q]{v: 1, closed: x.closed}, r)
	case p.inf != 0 && r.inf != 0:
		// Lies between the corners with one of them infinite.
	case x.zero() || p.zero() || r.inf != 0:
		h.add(0, 0, x.zero() && x.closed || p.zero() && p.closed)
	case x.inf != 0:
		h.infinite(x.inf)
	case p.inf != 0:
		h.add(x.v, x.v, r.zero() && x.closed && r.closed)
	case r.zero():
		h.add(x.v, x.v, x.closed && r.closed)
	default:
		h.add(units.ShareRound(x.v, p.v, r.v, units.Down), units.ShareRound(x.v, p.v, r.v, units.Up), x.closed && p.closed && r.closed)
	}
}
