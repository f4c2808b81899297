package form

import "math"

// MinimumCircumscribedCircle finds the smallest circle that no point lies
// outside of (MCCI): the smallest ring that would go over a shaft, as far as
// these points tell.
//
// It is the exchange of Elzinga and Hearn: from the circle over a long chord,
// the point farthest outside joins the two or three that hold the circle, and
// the smallest circle of these four is next. The radius grows in each step, so
// that no circle comes twice; in practice it ends after some few passes over the
// points. The problem is convex and has one solution, so Global is always true.
//
// Points in one line give the circle over the longest chord. It fails with
// [ErrTooFew] for fewer than three points, [ErrNotFinite] and [ErrCoincident].
// It allocates nothing.
func MinimumCircumscribedCircle(points []Point) (Roundness, error) {
	c, err := look("circle", points, 3)
	if err != nil {
		return Roundness{}, err
	}
	s := section{points: points, cloud: c, noise: 4*epsilon*c.size + c.noise/4}
	start := s.farthest(Point{points[0].X - c.origin.X, points[0].Y - c.origin.Y})
	far := s.farthest(Point{points[start].X - c.origin.X, points[start].Y - c.origin.Y})
	next, ok := s.over(start, far), true
	best, reach := next, math.Inf(1)
	for range mostRings {
		k := s.farthest(next.at)
		d := s.distance(points[k], next.at)
		settled := d <= next.radius+s.noise
		if settled || d < reach {
			best, reach = next, d
		}
		if settled {
			break
		}
		if next, ok = s.around(next, k); !ok {
			break
		}
	}
	r := Roundness{Kind: MCCI, Global: true}
	s.balance(best, &r.contacts)
	r.finish(points, c, best.at)
	return r, nil
}

// mostRings bounds the exchange. The radius grows in each step, but where two
// points hold the circle it may grow by less than float64 can tell, so that it
// can't be asked to; in practice some ten steps do.
const mostRings = 1000

// A ring is a circle and the two or three points that hold it.
type ring struct {
	at     Point
	radius float64
	n      int
	hold   [3]int
}

// farthest is the point farthest from a centre.
func (s *section) farthest(at Point) int {
	far, most := 0, -1.0
	for i, p := range s.points {
		x, y := p.X-s.origin.X-at.X, p.Y-s.origin.Y-at.Y
		if d := x*x + y*y; d > most {
			far, most = i, d
		}
	}
	return far
}

// over is the circle over the chord of two points.
func (s *section) over(i, j int) ring {
	p, q := s.points[i], s.points[j]
	at := Point{((p.X - s.origin.X) + (q.X - s.origin.X)) / 2, ((p.Y - s.origin.Y) + (q.Y - s.origin.Y)) / 2}
	return ring{at, max(s.distance(p, at), s.distance(q, at)), 2, [3]int{i, j}}
}

// through is the circle through three points.
func (s *section) through(i [3]int, near Point) (ring, bool) {
	at, ok := s.circumcentre(i, near)
	if !ok {
		return ring{}, false
	}
	if again, ok := s.circumcentre(i, at); ok {
		at = again // the second time from close by, without cancellation
	}
	r := 0.0
	for _, k := range i {
		r = max(r, s.distance(s.points[k], at))
	}
	return ring{at, r, 3, i}, true
}

// around is the smallest circle round the points that hold a ring and one
// outside it, which then is one of those that hold it.
func (s *section) around(old ring, k int) (best ring, ok bool) {
	try := func(r ring) {
		if ok && r.radius >= best.radius {
			return
		}
		for _, i := range old.hold[:old.n] {
			if s.distance(s.points[i], r.at) > r.radius+s.noise {
				return
			}
		}
		best, ok = r, true
	}
	for a := range old.n {
		try(s.over(old.hold[a], k))
		for b := range a {
			if r, ok := s.through([3]int{old.hold[a], old.hold[b], k}, old.at); ok {
				try(r)
			}
		}
	}
	return best, ok
}

// balance gives the points that hold a ring the weights under which their
// directions cancel: the proof that no shift makes it smaller.
func (s *section) balance(r ring, into *contacts) {
	var u [3]Point
	for k, i := range r.hold[:r.n] {
		p := s.points[i]
		d := s.distance(p, r.at)
		u[k] = Point{(p.X - s.origin.X - r.at.X) / d, (p.Y - s.origin.Y - r.at.Y) / d}
	}
	w := [3]float64{1, 1, 0}
	if r.n == 3 {
		for k := range 3 {
			a, b := u[(k+1)%3], u[(k+2)%3]
			w[k] = a.X*b.Y - a.Y*b.X
		}
	}
	sum := w[0] + w[1] + w[2]
	for k, i := range r.hold[:r.n] {
		into.add(Contact{i, true, math.Max(0, w[k]/sum)})
	}
}
