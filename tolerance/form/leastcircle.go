package form

import "math"

// LeastSquaresCircle fits the circle from which the sum of the squared
// distances is least, measured along the radius (LSCI; geometric, not the
// limaçon that a table of radii is often summed to, whose radius is off by
// e²/4r at an eccentricity e).
//
// It starts from the algebraic circle of Kåsa and takes Newton's steps, damped
// where one doesn't help. Centre and radius are good to some 1e-13 of the size
// where the points go round; on an arc the points themselves decide less.
//
// It fails with [ErrTooFew] for fewer than three points, [ErrNotFinite],
// [ErrCoincident], and [ErrCollinear] where the points lie in one line or the
// best circle is one. It allocates nothing.
func LeastSquaresCircle(points []Point) (Roundness, error) {
	c, at, err := leastSquares(points)
	if err != nil {
		return Roundness{}, err
	}
	r := Roundness{Kind: LSCI}
	r.finish(points, c, at)
	return r, nil
}

// farthest is how many times the points' own size their centre may lie away
// before an arc is called a line.
const farthest = 1e6

// near is the step, in units of the size, from which on Newton's steps need no
// proof: their gradient tells more than the sum of squares, which is flat.
const near = 1e-5

func leastSquares(points []Point) (c cloud, at Point, err error) {
	if c, err = look("circle", points, 3); err != nil {
		return c, at, err
	}
	line, straight := c.straight(points)
	if straight {
		return c, at, fault("circle", ErrCollinear, "points that bend")
	}
	at, squares := c.least(points)
	// A centre on its way to infinity may creep, and end where nothing gains.
	off := math.Abs(at.X) + math.Abs(at.Y)
	if off > 10*c.size && !(squares < line) || off > farthest*c.size {
		return c, at, fault("circle", ErrCollinear, "an arc that a circle fits better than a line")
	}
	return c, at, nil
}

// least goes from the algebraic circle to the least squares one. Where the
// centre runs away it ends somewhere on the way.
func (c cloud) least(points []Point) (at Point, squares float64) {
	at = c.algebraic(points)
	here, last := c.newton(points, at), math.Inf(1)
	for range 200 {
		step, ok := here.step(0)
		if size := math.Abs(step.X) + math.Abs(step.Y); ok && size <= near {
			if !(size < last/2) {
				break // what is left is rounding
			}
			at, last = c.shift(at, step), size
			here = c.newton(points, at)
			continue
		}
		moved := false
		for damp := 0.0; damp < 1e12 && !moved; damp = max(1e-3, 10*damp) {
			if step, ok = here.step(damp); !ok {
				continue
			}
			to := c.shift(at, step)
			if there := c.newton(points, to); there.squares < here.squares {
				at, here, moved = to, there, true
			}
		}
		if !moved || math.Abs(at.X)+math.Abs(at.Y) > farthest*c.size {
			break
		}
	}
	return at, here.squares
}

// shift is a centre moved by a step in units of the size.
func (c cloud) shift(at, step Point) Point {
	return Point{at.X + step.X*c.size, at.Y + step.Y*c.size}
}

// algebraic is the centre of Kåsa's circle, for which Σ(d²−r²)² is least.
func (c cloud) algebraic(points []Point) Point {
	var xx, xy, yy, xz, yz float64
	for _, p := range points {
		x, y := (p.X-c.origin.X)/c.size, (p.Y-c.origin.Y)/c.size
		z := x*x + y*y
		xx += x * x
		xy += x * y
		yy += y * y
		xz += x * z
		yz += y * z
	}
	// x and y are from their mean, so the constant term stands alone.
	det := 2 * (xx*yy - xy*xy)
	if !(det > 0) {
		return Point{}
	}
	at := Point{c.size * (xz*yy - yz*xy) / det, c.size * (yz*xx - xz*xy) / det}
	if !(math.Abs(at.X)+math.Abs(at.Y) <= farthest*c.size) {
		return Point{}
	}
	return at
}

// normal is the least squares problem at one centre, in units of the size.
type normal struct {
	squares    float64 // Σ of the squared distances from the circle
	gx, gy     float64 // Σ of the deviations along the directions
	xx, xy, yy float64 // Gauss and Newton's matrix
	cx, cy, cz float64 // what curvature adds to it
}

// newton sums the problem up at a centre. Distances are taken from that of the
// first point, so that squares don't cancel.
func (c cloud) newton(points []Point, at Point) (s normal) {
	base := c.distance(points[0], at)
	n := float64(len(points))
	var e, ux, uy float64
	for _, p := range points {
		x, y := p.X-c.origin.X-at.X, p.Y-c.origin.Y-at.Y
		d := math.Sqrt(x*x + y*y)
		e += d - base
	}
	mean := e / n
	for _, p := range points {
		x, y := p.X-c.origin.X-at.X, p.Y-c.origin.Y-at.Y
		d := math.Sqrt(x*x + y*y)
		if d == 0 {
			d = 1 / most
		}
		x, y = x/d, y/d
		r := ((d - base) - mean) / c.size
		s.squares += r * r
		s.gx += r * x
		s.gy += r * y
		ux += x
		uy += y
		s.xx += x * x
		s.xy += x * y
		s.yy += y * y
		k := r * c.size / d
		s.cx += k * y * y
		s.cy += k * x * y
		s.cz += k * x * x
	}
	s.xx -= ux * ux / n
	s.xy -= ux * uy / n
	s.yy -= uy * uy / n
	return s
}

// step is the shift of the centre, in units of the size: Newton's where damp
// is 0, else Gauss and Newton's damped. ok is false where the matrix isn't
// positive.
func (s *normal) step(damp float64) (to Point, ok bool) {
	a, b, d := s.xx+s.cx, s.xy-s.cy, s.yy+s.cz
	if damp > 0 {
		a, b, d = s.xx*(1+damp)+damp*1e-9, s.xy, s.yy*(1+damp)+damp*1e-9
	}
	det := a*d - b*b
	if !(a > 0 && d > 0 && det > 1e-15*a*d) {
		return Point{}, false
	}
	return Point{(s.gx*d - s.gy*b) / det, (s.gy*a - s.gx*b) / det}, true
}
