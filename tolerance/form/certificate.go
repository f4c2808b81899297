package form

import "math"

// near is the distance from the section's centre within which its contacts
// alone prove that no other centre has a lower score.
//
// For a shift t the contacts keep the score above this one by slope·t −
// t²/(2(r−t)): slope is the least slope of the linear programme round its
// optimum, and the last term the most that a distance gains by curvature. That
// is not negative up to t = 2·slope·r/(1+2·slope).
func (s *section) near(b *basis) float64 {
	slope := s.sharpness(b)
	if s.inner {
		slope = s.slope(b)
	}
	return 2 * slope * s.least / (1 + 2*slope)
}

// beyond is the distance from the section's centre from which on no centre has
// a lower score: in the whole plane for a zone, inside the profile for an
// inscribed circle. It is infinite where the points don't tell.
//
// There is a point along the shift, and one against it, to within half the
// largest gap g between neighbours; c is cos(g/2). At a shift t the square of
// the distance from a point at d is at least d² + 2tdc + t² against it and at
// most d² − 2tdc + t² along it, and d lies between the least and the most.
func (s *section) beyond() float64 {
	c, least, most := s.cover(), s.least, s.least+s.widest()
	zone, squares := most-least, (most-least)*(most+least)
	if !s.inner {
		// The zone is at least the difference of the squares, which is
		// 2tc(least+most) − squares or 4tc·least, by a sum of at most 2(t+most).
		a, b := 2*c*(least+most)-2*zone, 4*c*least-2*zone
		if !(c > 0 && a > 0 && b > 0) {
			return math.Inf(1)
		}
		return max((2*zone*most+squares)/a, 2*zone*most/b)
	}
	// Some point along the shift must be nearer than least: d² − 2tdc + t² −
	// least² is convex in d and in t, so the ends decide.
	root := math.Sqrt(most*most*c*c - squares)
	if !(2*c > 1 && most*c+root > least) {
		return math.Inf(1)
	}
	return squares / (most*c + root)
}

// widest is the greatest of the distances beyond the least.
func (s *section) widest() float64 {
	w := 0.0
	for _, d := range s.d {
		w = max(w, d)
	}
	return w
}

// sharpness is the least slope of the linear zone round its optimum: the least
// distance of one pair's directions from the chord of the other pair, all on
// the circle of radius 1. It is 0 where there aren't two and two contacts.
func (s *section) sharpness(b *basis) float64 {
	pair, ok := b.pairs()
	if !ok {
		return 0
	}
	least := math.Inf(1)
	for side, other := range [...]int{1, 0} {
		for _, k := range pair[other] {
			least = min(least, s.fromChord(Point{s.x[k], s.y[k]}, pair[side][0], pair[side][1]))
		}
	}
	return least
}

// slope is the least slope at a maximum held by three contacts: the least
// distance of the centre from a side of the triangle of their directions.
func (s *section) slope(b *basis) float64 {
	if !b.held() {
		return 0
	}
	least := math.Inf(1)
	for k := range 3 {
		least = min(least, s.fromChord(Point{}, b.cols[k].index, b.cols[(k+1)%3].index))
	}
	return least
}

// fromChord is the distance of a point of the circle of radius 1 from the
// chord of two directions.
func (s *section) fromChord(p Point, i, j int) float64 {
	x, y := s.x[j]-s.x[i], s.y[j]-s.y[i]
	length := math.Sqrt(x*x + y*y)
	if length == 0 {
		return 0
	}
	return math.Abs((p.X-s.x[i])*y-(p.Y-s.y[i])*x) / length
}

// sectors of the circle that cover sorts directions into.
const sectors = 128

// cover is a lower bound of cos(g/2), where g is the largest gap between
// neighbouring directions; 0 where half a turn may be bare.
func (s *section) cover() float64 {
	var taken [sectors]bool
	for i, x := range s.x {
		y := s.y[i]
		// Where the ray crosses the square |x|+|y| = 1, as a number from 0 to 4.
		q := y / (math.Abs(x) + math.Abs(y))
		switch {
		case x < 0:
			q = 2 - q
		case y < 0:
			q += 4
		}
		taken[min(sectors-1, max(0, int(q*(sectors/4))))] = true
	}
	first, last, widest := -1, 0, 0.0
	for k := range 2 * sectors {
		if !taken[k%sectors] {
			continue
		}
		if first < 0 {
			first, last = k, k
		}
		widest = max(widest, sectorAngle(k+1)-sectorAngle(last))
		last = k
		if k == first+sectors {
			break
		}
	}
	if widest >= math.Pi {
		return 0
	}
	return math.Cos(widest / 2)
}

// sectorAngle is the angle at which a sector begins, in radians.
func sectorAngle(k int) float64 {
	const quarter = sectors / 4
	t := float64(k%quarter) / quarter
	return float64(k/quarter)*math.Pi/2 + math.Atan2(t, 1-t)
}
