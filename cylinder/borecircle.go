package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A BoreCentre is where a bar stands, seen from the original axis of the bore:
// X toward heading 0°, along the crank, Y toward 90°, across it.
type BoreCentre struct {
	X units.Length `json:"x"`
	Y units.Length `json:"y"`
}

// shift is how far a centre lies from the axis, rounded down and up.
func (c BoreCentre) shift() (least, greatest units.Length) {
	if c.X == 0 || c.Y == 0 {
		d := max(c.X.Abs(), c.Y.Abs())
		return d, d
	}
	d := math.Hypot(float64(c.X), float64(c.Y))
	return units.Length(math.Floor(d * (1 - 1e-15))), units.Length(math.Ceil(d * (1 + 1e-15)))
}

// A wallPoint is a wall point in float64, in picometres: at radius + over from
// the axis, toward (x, y). Working with what lies over the radius keeps its
// digits: walls differ in the fourth.
type wallPoint struct{ x, y, over float64 }

// unit is the direction of a heading. The four that shops use are exact.
func unit(a units.Angle) (x, y float64) {
	const turn, quarter = 360 * units.Degree, 90 * units.Degree
	if a %= turn; a < 0 {
		a += turn
	}
	switch a {
	case 0:
		return 1, 0
	case quarter:
		return 0, 1
	case 2 * quarter:
		return -1, 0
	case 3 * quarter:
		return 0, -1
	}
	y, x = math.Sincos(a.Radians())
	return x, y
}

// reach is how far a wall point lies from a centre, less the radius, and a
// bound on its error. With P = (radius + over)·u,
//
//	|P − C| − radius = (2·radius·over + over² − 2(radius + over)·u·C + |C|²) ÷ (|P − C| + radius)
//
// which cancels nothing but what is small already. Where C lies on the line
// from the axis to P the distance is a sum and, of whole picometres along an
// exact heading, exact.
func (p wallPoint) reach(radius, cx, cy float64) (over, slack float64) {
	along, side := p.x*cx+p.y*cy, p.x*cy-p.y*cx
	if out := p.over - along; side == 0 && radius+out >= 0 && (p.x == 0 || p.y == 0 || cx == 0 && cy == 0) {
		return out, 0
	}
	a, b, c, d := 2*radius*p.over, p.over*p.over, 2*(radius+p.over)*along, cx*cx+cy*cy
	below := math.Hypot(radius+p.over-along, side) + radius
	return (a + b - c + d) / below, (math.Abs(a) + b + math.Abs(c) + d) / below / (1 << 48)
}

// circle is a centre and how much its radius is over the bore's.
type circle struct {
	x, y, over float64
	ok         bool
}

// covers reports whether a point, or the original bore where there is none,
// lies in the circle, but for rounding.
func (c circle) covers(radius float64, p *wallPoint) bool {
	const rounding = 1e-3 // of a picometre
	if p == nil {
		return math.Hypot(c.x, c.y) <= c.over+rounding
	}
	over, slack := p.reach(radius, c.x, c.y)
	return over-slack <= c.over+rounding
}

// leastCircle is the least circle over the original bore, of the given radius,
// and all wall points, whatever their levels: the bar that cuts them is
// straight.
//
// The original bore belongs to it because the walls between the points read
// lie at its radius at the least. Points alone are not enough: with 0.10 mm on
// two neighbouring walls of four and none on the others, the least circle over
// the four points is 0.10 mm over the bore and leaves the unworn wall opposite
// the corner uncut, for which it must be 0.117 mm over.
//
// The algorithm keeps a basis of at most three (points or the bore) that hold
// the circle. While something lies outside, the farthest comes in and the
// basis becomes that of the least circle over these four, which is larger; a
// basis can't come back, so it ends with the least circle of all.
func leastCircle(radius float64, points []wallPoint) circle {
	var basis [3]*wallPoint // nil is the bore itself
	n := 1
	c := circle{ok: true}
	for range 64 + 8*len(points) { // more than it has ever taken; what it reached then covers
		var far *wallPoint
		most := c.over
		for i := range points {
			if over, slack := points[i].reach(radius, c.x, c.y); over-slack > most+1e-3 {
				far, most = &points[i], over
			}
		}
		outside := far != nil
		if !outside && c.covers(radius, nil) {
			return c
		}
		next, nextBasis, m := leastOf(radius, basis[:n], far)
		if !next.ok || !(next.over > c.over) {
			break
		}
		c, basis, n = next, nextBasis, m
	}
	// Rounding leaves the last step undecided by less than a picometre.
	return c
}

// leastOf is the least circle over a basis and one more, which holds it.
func leastOf(radius float64, basis []*wallPoint, more *wallPoint) (best circle, kept [3]*wallPoint, n int) {
	all := append([]*wallPoint{more}, basis...)
	try := func(of ...*wallPoint) {
		c := holding(radius, of)
		if !c.ok || best.ok && c.over >= best.over {
			return
		}
		for _, p := range all {
			if !c.covers(radius, p) {
				return
			}
		}
		best, n = c, copy(kept[:], of)
	}
	try(more)
	for i, p := range basis {
		try(more, p)
		for _, q := range basis[:i] {
			try(more, p, q)
		}
	}
	return best, kept, n
}

// holding is the circle that one, two or three of them hold: the least that
// touches all of them from within.
func holding(radius float64, of []*wallPoint) circle {
	var p []*wallPoint
	bore := false
	for _, q := range of {
		if q == nil {
			bore = true
		} else {
			p = append(p, q)
		}
	}
	switch {
	case len(p) == 0:
		return circle{ok: true}
	case len(p) == 1 && !bore:
		return circle{} // a point alone holds no circle as wide as the bore
	case len(p) == 1: // halfway between the wall and the bore's far side
		return circle{p[0].x * p[0].over / 2, p[0].y * p[0].over / 2, p[0].over / 2, p[0].over >= 0}
	case len(p) == 2 && !bore:
		x := ((radius+p[0].over)*p[0].x + (radius+p[1].over)*p[1].x) / 2
		y := ((radius+p[0].over)*p[0].y + (radius+p[1].over)*p[1].y) / 2
		if p[0].x == -p[1].x && p[0].y == -p[1].y { // opposite: exact
			half := (p[0].over - p[1].over) / 2
			return circle{half * p[0].x, half * p[0].y, (p[0].over + p[1].over) / 2, true}
		}
		over, _ := p[0].reach(radius, x, y)
		return circle{x, y, over, true}
	case len(p) == 2:
		return touching(radius, p[0], p[1])
	}
	return through(radius, p[0], p[1], p[2])
}

// touching is the circle through two points that the bore touches from within.
// With t over the radius R, |P − C| = R + t and |C| = t give
//
//	P·C = over·(2R + over)/2 − R·t
//
// for both: two linear equations for C = A + B·t, and |C| = t is a quadratic.
func touching(radius float64, p, q *wallPoint) circle {
	px, py := (1+p.over/radius)*p.x, (1+p.over/radius)*p.y
	qx, qy := (1+q.over/radius)*q.x, (1+q.over/radius)*q.y
	det := px*qy - py*qx
	if math.Abs(det) < 1e-9 {
		return circle{}
	}
	g, h := p.over*(2+p.over/radius)/2, q.over*(2+q.over/radius)/2
	ax, ay := (g*qy-h*py)/det, (h*px-g*qx)/det
	bx, by := (py-qy)/det, (qx-px)/det
	// (B² − 1)t² + 2(A·B)t + A² = 0
	k, l, m := bx*bx+by*by-1, ax*bx+ay*by, ax*ax+ay*ay
	var roots [2]float64
	if math.Abs(k) < 1e-12 {
		roots = [2]float64{-m / (2 * l), -m / (2 * l)}
	} else {
		d := l*l - k*m
		if d < 0 {
			return circle{}
		}
		s := -(l + math.Copysign(math.Sqrt(d), l))
		roots = [2]float64{s / k, m / s}
	}
	var best circle
	for _, t := range roots {
		if t >= 0 && !math.IsInf(t, 0) && (!best.ok || t < best.over) {
			best = circle{ax + bx*t, ay + by*t, t, true}
		}
	}
	return best
}

// through is the circle through three points: |P|² − 2P·C is the same for all.
func through(radius float64, p, q, r *wallPoint) circle {
	scale := func(w *wallPoint) (x, y, g float64) {
		f := 1 + w.over/radius
		return f * w.x, f * w.y, w.over * (2 + w.over/radius) / 2
	}
	px, py, pg := scale(p)
	qx, qy, qg := scale(q)
	rx, ry, rg := scale(r)
	ax, ay, ag := qx-px, qy-py, qg-pg
	bx, by, bg := rx-px, ry-py, rg-pg
	det := ax*by - ay*bx
	if math.Abs(det) < 1e-12 {
		return circle{}
	}
	x, y := (ag*by-bg*ay)/det, (bg*ax-ag*bx)/det
	over, _ := p.reach(radius, x, y)
	return circle{x, y, over, true}
}
