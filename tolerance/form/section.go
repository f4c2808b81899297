package form

import "math"

// inPlace is the greatest number of points whose working space needs no
// allocation.
const inPlace = 512

// A section is the working space for the points of a profile: the direction
// of each from a centre, and its distance beyond the least.
type section struct {
	points []Point
	cloud
	least   float64 // the least distance
	d, x, y []float64
	noise   float64 // of a distance
	inner   bool    // whether the least distance is sought, not the zone
}

func newSection(points []Point, c cloud, space []float64, inner bool) section {
	n := len(points)
	if 3*n > len(space) {
		space = make([]float64, 3*n)
	}
	return section{points: points, cloud: c, d: space[:n], x: space[n : 2*n], y: space[2*n : 3*n],
		noise: 4*epsilon*c.size + c.noise/4, inner: inner}
}

func (s *section) program() program {
	return program{v: s.d, f: [4][]float64{s.x, s.y}, dims: 2, inner: s.inner, noise: s.noise}
}

// measure takes distances and directions from a centre and gives what is to be
// as little as possible: the greatest less the least distance, or the least
// one's negative.
func (s *section) measure(at Point) (score float64) {
	most, least := 0.0, math.Inf(1)
	d, ux, uy := s.d[:len(s.points)], s.x[:len(s.points)], s.y[:len(s.points)]
	for i, p := range s.points {
		x, y := p.X-s.origin.X-at.X, p.Y-s.origin.Y-at.Y
		r := math.Sqrt(x*x + y*y)
		most, least = max(most, r), min(least, r)
		d[i] = r
		if r == 0 {
			r = 1
		}
		ux[i], uy[i] = x/r, y/r
	}
	for i := range d {
		d[i] -= least
	}
	s.least = least
	if s.inner {
		return -least
	}
	return most - least
}

// optimum solves the linear programme where the section stands, from the basis
// given if warm.
func (s *section) optimum(b *basis, warm bool) bool {
	p := s.program()
	if warm && p.solve(b) {
		return true
	}
	if s.inner {
		return p.surround(b) && p.solve(b)
	}
	return p.start(b) && p.solve(b)
}

// settle goes from a centre to one where no small shift lowers the score, and
// leaves the section there, with the basis that proves it. ok is false where
// the centre runs away, because the points don't hold it.
func (s *section) settle(b *basis, at Point) (to Point, score float64, ok bool) {
	score = s.measure(at)
	for round := 0; ; round++ {
		if !s.optimum(b, round > 0) || math.Abs(at.X)+math.Abs(at.Y) > farthest*s.size {
			return at, score, false
		}
		if round == mostRounds {
			break
		}
		next, less, moved := s.descend(at, Point{b.s[0], b.s[1]}, score)
		if !moved && s.inner && !b.held() {
			var bare bool
			if next, less, moved, bare = s.sideways(b, at, score); bare {
				return at, score, false
			}
		}
		if !moved {
			break
		}
		// A step may gain next to nothing and be a long one all the same.
		near := score-less <= s.noise && dist(at, next) <= 1e-12*s.size
		if at, score = next, less; near {
			break
		}
	}
	to, exact := s.bisectors(b, at)
	if s.inner {
		to, exact = s.circumcentre([3]int{b.cols[0].index, b.cols[1].index, b.cols[2].index}, at)
		exact = exact && b.held()
	}
	if exact {
		if less := s.measure(to); less <= score {
			return to, less, true
		}
		s.measure(at)
	}
	return at, score, true
}

// mostRounds bounds the way of a centre: some five rounds do, more only where
// it creeps along a flat valley.
const mostRounds = 60

// descend shifts the centre by as much of step as makes the score less.
// Afterwards the section stands at the centre it gives.
func (s *section) descend(at, step Point, score float64) (to Point, less float64, ok bool) {
	for range 40 {
		to = Point{at.X + step.X, at.Y + step.Y}
		if to == at {
			break
		}
		if less = s.measure(to); less < score {
			return to, less, true
		}
		step.X /= 2
		step.Y /= 2
	}
	s.measure(at)
	return at, score, false
}

// bisectors is the point nearest the centre at that is as far from one outer
// contact as from the other, and likewise for the inner ones. ok is false
// where there aren't two of each, or their chords are parallel.
func (s *section) bisectors(b *basis, at Point) (to Point, ok bool) {
	pair, ok := b.pairs()
	if !ok {
		return at, false
	}
	return meet(s.bisector(pair[0][0], pair[0][1], at), s.bisector(pair[1][0], pair[1][1], at), at)
}

// pairs gives the two inner and the two outer contacts of a basis; ok is false
// where there are not two and two.
func (b *basis) pairs() (pair [2][2]int, ok bool) {
	var n [2]int
	for k := range 4 {
		side := 0
		if b.cols[k].outer {
			side = 1
		}
		if b.weight[k] <= unweighted || n[side] == 2 {
			return pair, false
		}
		pair[side][n[side]] = b.cols[k].index
		n[side]++
	}
	return pair, true
}

// circumcentre is the point as far from each of three points; ok is false
// where they lie in one line.
func (s *section) circumcentre(i [3]int, at Point) (to Point, ok bool) {
	return meet(s.bisector(i[0], i[1], at), s.bisector(i[0], i[2], at), at)
}

// bisector is the equation a·x + b·y = c of the perpendicular bisector of two
// points, from a centre.
func (s *section) bisector(i, j int, at Point) [3]float64 {
	p, q := s.points[i], s.points[j]
	px, py := p.X-s.origin.X-at.X, p.Y-s.origin.Y-at.Y
	qx, qy := q.X-s.origin.X-at.X, q.Y-s.origin.Y-at.Y
	return [3]float64{p.X - q.X, p.Y - q.Y, ((px-qx)*(px+qx) + (py-qy)*(py+qy)) / 2}
}

// meet is where two lines meet that are given from a centre.
func meet(l, m [3]float64, at Point) (to Point, ok bool) {
	det := l[0]*m[1] - l[1]*m[0]
	if !(math.Abs(det) > 1e-12*(math.Abs(l[0])+math.Abs(l[1]))*(math.Abs(m[0])+math.Abs(m[1]))) {
		return at, false
	}
	return Point{at.X + (l[2]*m[1]-l[1]*m[2])/det, at.Y + (l[0]*m[2]-l[2]*m[0])/det}, true
}
