package form

import "math"

// surround finds three readings whose directions surround the centre: one, and
// on each side of it the one nearest to its opposite. ok is false where there
// are none, because half a turn is bare.
func (p *program) surround(b *basis) (ok bool) {
	x, y := p.f[0], p.f[1]
	first := 0
	for i, d := range p.v {
		if d < p.v[first] {
			first = i
		}
	}
	left, right := -1, -1 // counter-clockwise and clockwise from it
	var leftDot, rightDot float64
	for i := range p.v {
		cross, dot := x[first]*y[i]-y[first]*x[i], x[first]*x[i]+y[first]*y[i]
		if i == first || cross == 0 && dot > 0 {
			continue
		}
		if cross > 0 && (left < 0 || dot < leftDot) {
			left, leftDot = i, dot
		}
		if cross <= 0 && (right < 0 || dot < rightDot) {
			right, rightDot = i, dot
		}
	}
	if left < 0 || right < 0 || x[left]*y[right]-y[left]*x[right] < -1e-12 {
		return false
	}
	for k, i := range [...]int{first, left, right} {
		b.cols[k] = column{index: i}
	}
	return true
}

// held reports whether all three columns of a one-sided basis bear weight.
func (b *basis) held() bool {
	return b.weight[0] > 1e-9 && b.weight[1] > 1e-9 && b.weight[2] > 1e-9
}

// A stop is the reading that stops a circle shifted along dir, after room.
type stop struct {
	index int // −1 where nothing does
	dir   Point
	room  float64
}

// stops looks to either side of a circle that two opposite points hold alone.
func (s *section) stops(b *basis) (both [2]stop) {
	heavy := 0
	for k := range 3 {
		if b.weight[k] > b.weight[heavy] {
			heavy = k
		}
	}
	u := Point{-s.y[b.cols[heavy].index], s.x[b.cols[heavy].index]}
	for k, side := range [...]float64{1, -1} {
		to := stop{-1, Point{side * u.X, side * u.Y}, math.Inf(1)}
		for i, d := range s.d {
			along := s.x[i]*to.dir.X + s.y[i]*to.dir.Y
			if along > 1e-7 && d < to.room*along {
				to.index, to.room = i, d/along
			}
		}
		both[k] = to
	}
	return both
}

// sideways shifts a circle that two opposite points hold alone along their
// bisector. It grows, by the square of the shift, until a third point stops
// it. bare means that nothing does on one side: the arc is a partial one.
func (s *section) sideways(b *basis, at Point, score float64) (to Point, less float64, ok, bare bool) {
	both := s.stops(b)
	for _, way := range both {
		if way.index < 0 {
			return at, score, false, true
		}
	}
	for _, way := range both {
		if to, less, ok = s.descend(at, Point{way.room * way.dir.X, way.room * way.dir.Y}, score); ok {
			return to, less, true, false
		}
	}
	return at, score, false, false
}
