package form

import "math"

// Plane fits the reference plane of a kind, which [LeastSquaresPlane] and
// [MinimumZonePlanes] also do by name. [ThreePoints] takes the first three
// points; [ThreePointPlane] takes any.
func Plane(kind PlaneKind, points []Point3) (Flatness, error) {
	switch kind {
	case LSPL:
		return LeastSquaresPlane(points)
	case MZPL:
		return MinimumZonePlanes(points)
	case ThreePoints:
		return ThreePointPlane(points, 0, 1, 2)
	}
	return Flatness{}, fault("plane", ErrKind, "LSPL, MZPL or ThreePoints")
}

// LeastSquaresPlane fits the plane from which the sum of the squared
// deviations along the heights is least (LSPL). It fails with [ErrTooFew]
// below three points, [ErrNotFinite], [ErrCoincident] where all stand at one
// place and [ErrCollinear] where their places lie in one line. It allocates
// nothing.
func LeastSquaresPlane(points []Point3) (Flatness, error) {
	look, err := lookOver("plane", points, 3)
	if err != nil {
		return Flatness{}, err
	}
	return leastSquaresPlane(points, look)
}

func leastSquaresPlane(points []Point3, look field) (Flatness, error) {
	if straightIn(points, look) {
		return Flatness{}, fault("plane", ErrCollinear, "places that don't lie in one line")
	}
	// Along the axis of the greater moment first, then across what is left of
	// the other: places nearly in line keep their digits so.
	var xx, xy, yy float64
	for _, p := range points {
		x, y := (p.X-look.middle.X)/look.size, (p.Y-look.middle.Y)/look.size
		xx += x * x
		xy += x * y
		yy += y * y
	}
	swap := yy > xx
	lean, along := xy/xx, xx
	if swap {
		lean, along = xy/yy, yy
	}
	f := Flatness{Kind: LSPL, Through: look.middle}
	// The second time fits what rounding left of the first.
	for range 2 {
		var across, xz, wz float64
		for _, p := range points {
			x, y, z := (p.X-look.middle.X)/look.size, (p.Y-look.middle.Y)/look.size, f.Deviation(p)
			if swap {
				x, y = y, x
			}
			w := y - lean*x
			across += w * w
			xz += x * z
			wz += w * z
		}
		b := wz / across / look.size
		a := xz/along/look.size - lean*b
		if swap {
			a, b = b, a
		}
		f.SlopeX += a
		f.SlopeY += b
	}
	f.finish(points)
	return f, nil
}

// straightIn reports whether the places lie in one line, to rounding.
func straightIn(points []Point3, look field) bool {
	far, at := 0.0, Point3{}
	for _, p := range points {
		x, y := p.X-look.middle.X, p.Y-look.middle.Y
		if d := x*x + y*y; d > far {
			far, at = d, Point3{X: x, Y: y}
		}
	}
	off := 0.0
	for _, p := range points {
		x, y := p.X-look.middle.X, p.Y-look.middle.Y
		off = max(off, (at.X*y-at.Y*x)/look.size, (at.Y*x-at.X*y)/look.size)
	}
	return off <= 1e-12*look.size+8*look.noise
}

// ThreePointPlane takes the plane through the three points of the indices
// given, as a face is set to zero at three corners. What it makes of the rest
// depends on the three as much as on the face: use it to compare with readings
// taken so. It fails as [LeastSquaresPlane] does, with [ErrShape] where an index
// is none of a point and with [ErrCollinear] where the three lie in one line.
func ThreePointPlane(points []Point3, a, b, c int) (Flatness, error) {
	look, err := lookOver("plane", points, 3)
	if err != nil {
		return Flatness{}, err
	}
	for _, i := range [...]int{a, b, c} {
		if i < 0 || i >= len(points) {
			return Flatness{}, fault("plane", ErrShape, "indices of points")
		}
	}
	p, q, r := points[a], points[b], points[c]
	qx, qy, qz := (q.X-p.X)/look.size, (q.Y-p.Y)/look.size, q.Z-p.Z
	rx, ry, rz := (r.X-p.X)/look.size, (r.Y-p.Y)/look.size, r.Z-p.Z
	det := qx*ry - qy*rx
	if det <= 1e-12 && det >= -1e-12 {
		return Flatness{}, fault("plane", ErrCollinear, "three places that don't lie in one line")
	}
	f := Flatness{Kind: ThreePoints, Through: p,
		SlopeX: (qz*ry - rz*qy) / det / look.size, SlopeY: (rz*qx - qz*rx) / det / look.size}
	f.finish(points)
	return f, nil
}

// MinimumZonePlanes finds the two parallel planes that hold all points between
// them and are closest together along the heights (MZPL).
//
// It is exact: the narrowest zone is a linear programme in two slopes, solved
// by exchange of contacts as for [MinimumZoneCircles], and here there is no
// curvature to go back for. The solution is the narrowest of all, and its
// contacts prove it.
//
// It fails as [LeastSquaresPlane] does. It allocates nothing for up to 512
// points and once for more.
func MinimumZonePlanes(points []Point3) (Flatness, error) {
	look, err := lookOver("plane", points, 3)
	if err != nil {
		return Flatness{}, err
	}
	f, err := leastSquaresPlane(points, look)
	if err != nil {
		return Flatness{}, err
	}
	n := len(points)
	var space [3 * inPlace]float64
	work := space[:]
	if 3*n > len(work) {
		work = make([]float64, 3*n)
	}
	p := program{v: work[:n], f: [4][]float64{work[n : 2*n], work[2*n : 3*n]}, dims: 2}
	span := 0.0
	for i, q := range points {
		p.v[i] = f.Deviation(q)
		span = max(span, math.Abs(q.Z-f.Through.Z))
		p.f[0][i], p.f[1][i] = (q.X-look.middle.X)/look.size, (q.Y-look.middle.Y)/look.size
	}
	p.noise = 8 * epsilon * span
	var b basis
	if !p.start(&b) || !p.solve(&b) {
		return Flatness{}, fault("plane", ErrCollinear, "places that don't lie in one line")
	}
	f = Flatness{Kind: MZPL, Through: f.Through,
		SlopeX: f.SlopeX + b.s[0]/look.size, SlopeY: f.SlopeY + b.s[1]/look.size}
	f.finish(points)
	for k, c := range b.cols[:4] {
		if b.weight[k] > unweighted {
			f.contacts.add(Contact{c.index, c.outer, b.weight[k]})
		}
	}
	f.contacts.order(func(k Contact) float64 { return float64(k.Index) })
	return f, nil
}
