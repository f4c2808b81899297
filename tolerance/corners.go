package tolerance

import "github.com/tenthou/tenthou/units"

// An expression that for the other factors held still rises or falls with each
// one has its extremes at corners, where every factor is at one of its ends.
// An edge is one end of one factor, inf telling the infinite ones.
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

// inverse is the edge that the reciprocal has there: at a zero, which lies
// outside the interval, it is infinite, with the sign of what lies next to it.
func (e edge[Q]) inverse(inside int) edge[Q] {
	switch {
	case e.inf != 0:
		return edge[Q]{}
	case e.v == 0:
		return edge[Q]{inf: inside}
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

// hull gathers corners into the interval between the least and the greatest.
type hull[Q units.Quantity] struct {
	r            Interval[Q]
	any          bool // whether r holds a corner
	below, above bool // a corner is infinite
	under, over  bool // a corner is finite, and out of range
	lost         bool // a corner could not be calculated
}

// add takes a corner: its value rounded down and up, the sign of that, and
// whether the corner itself is reached.
func (h *hull[Q]) add(down, up Q, sign int, reached bool) {
	if !inRange(down) || !inRange(up) {
		h.under = h.under || sign < 0
		h.over = h.over || sign > 0
		return
	}
	at := Interval[Q]{down, up, Open, Open}
	if reached && down == up {
		at.loEnd, at.hiEnd = Closed, Closed
	}
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
	h.below = h.below || sign < 0
	h.above = h.above || sign > 0
}

func (h *hull[Q]) interval() Interval[Q] {
	// A side that is infinite needs no finite corner; the other side does.
	if h.lost || h.under && !h.below || h.over && !h.above || !h.any && !(h.below && h.above) {
		return broken[Q]()
	}
	if h.below {
		h.r.lo, h.r.loEnd = 0, Absent
	}
	if h.above {
		h.r.hi, h.r.hiEnd = 0, Absent
	}
	return h.r
}

// MulDiv holds every value of i times one of mul over one of div, rounded
// outward. A divisor that holds zero leaves it without ends; one that comes
// near zero from one side, without an end on that side. A divisor that is
// exactly zero gives an interval out of range.
func (i Interval[Q]) MulDiv(mul, div Interval[Q]) Interval[Q] {
	if !i.InRange() || !mul.InRange() || !div.InRange() || isTemperature[Q]() || div == Exactly(Q(0)) {
		return broken[Q]()
	}
	if div.Contains(0) {
		return Interval[Q]{}
	}
	positive := div.loEnd != Absent && div.lo >= 0
	side := -1
	if positive {
		side = 1
	}
	var h hull[Q]
	for _, x := range i.edges() {
		for _, m := range mul.edges() {
			for _, d := range div.edges() {
				h.quotient(x, m, d, d.inverse(side))
			}
		}
	}
	return h.interval()
}

// quotient takes the corner x·m/d, w being the edge of 1/d. Nothing times
// infinity is nothing here: the one factor stays there while the other goes.
func (h *hull[Q]) quotient(x, m, d, w edge[Q]) {
	sign := x.sign() * m.sign() * w.sign()
	switch {
	case sign == 0:
		h.add(0, 0, 0, x.zero() && x.closed || m.zero() && m.closed)
	case x.inf != 0 || m.inf != 0 || w.inf != 0:
		h.infinite(sign)
	default:
		h.add(units.MulDivRound(x.v, m.v, d.v, units.Down), units.MulDivRound(x.v, m.v, d.v, units.Up),
			sign, x.closed && m.closed && d.closed)
	}
}

// Share holds every share of a value of i that part has in part+rest, rounded
// outward. Of two sizes that may both be zero, the case that both are is left
// out: a share is never more than the whole. Where else part+rest may be zero
// the share is without ends; where it comes near zero from one side, without
// an end on that side. Where part+rest is exactly zero, or can leave the
// range, it is out of range.
func (i Interval[Q]) Share(part, rest Interval[Q]) Interval[Q] {
	whole := part.Add(rest)
	if !i.InRange() || !whole.InRange() || whole == Exactly(Q(0)) {
		return broken[Q]()
	}
	if whole.hiEnd != Absent && whole.hi <= 0 {
		part, rest, whole = part.neg(), rest.neg(), whole.neg()
	}
	sizes := part.loEnd != Absent && part.lo >= 0 && rest.loEnd != Absent && rest.lo >= 0
	if !sizes && (whole.loEnd == Absent || whole.lo < 0 || whole.lo == 0 && whole.loEnd == Closed) {
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

// share takes the corner x·p/(p+r). With p+r above zero that rises or falls
// with p as r's sign is, and with r against p's sign.
func (h *hull[Q]) share(x, p, r edge[Q]) {
	sign := x.sign() * p.sign()
	switch {
	case p.inf != 0 && r.inf != 0, p.zero() && r.zero():
		// Between the corners that share an edge with this one.
	case p.inf == 0 && r.inf == 0 && !inRange(p.v+r.v):
		h.lost = true
	case sign == 0 || r.inf != 0:
		h.add(0, 0, 0, x.zero() && x.closed || p.zero() && p.closed)
	case x.inf != 0 || p.inf == 0 && p.v+r.v == 0:
		h.infinite(sign)
	case p.inf != 0 || r.zero():
		h.add(x.v, x.v, sign, x.closed && r.zero() && r.closed)
	default:
		h.add(units.ShareRound(x.v, p.v, r.v, units.Down), units.ShareRound(x.v, p.v, r.v, units.Up),
			sign, x.closed && p.closed && r.closed)
	}
}
