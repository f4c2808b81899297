package form

import "math"

// A wall is the working space for the points of a cylinder: the distance of
// each from an axis beyond the least, and how it changes with the axis. The
// slopes of an axis count over half the height, so that all four unknowns are
// lengths of one size.
type wall struct {
	points []Point3
	field
	half  float64 // half the height
	least float64
	d     []float64
	f     [4][]float64
	noise float64
}

// An axis is where it stands at the middle, in X and Y, and how far it leans
// over half the height.
type axis [4]float64

func leastSquaresCylinder(points []Point3) (w *wall, at axis, err error) {
	look, err := lookOver("cylinder", points, 5)
	if err != nil {
		return nil, at, err
	}
	n := len(points)
	work := make([]float64, 5*n)
	w = &wall{points: points, field: look, d: work[:n], noise: 4*epsilon*look.size + look.noise/4}
	for k := range w.f {
		w.f[k] = work[(k+1)*n : (k+2)*n]
	}
	for _, p := range points {
		w.half = max(w.half, math.Abs(p.Z-look.middle.Z))
	}
	if w.half < 1e-9*look.size {
		return nil, at, noAxis()
	}
	w.measure(at)
	last := math.Inf(1)
	for range 200 {
		step, ok := w.step()
		if !ok {
			return nil, at, noAxis()
		}
		size := 0.0
		for d := range at {
			size = max(size, math.Abs(step[d]))
		}
		// Steps shrink by the ratio of form to radius each, down to rounding.
		if size <= near*look.size && size >= last/2 || size == 0 {
			return w, at, nil
		}
		for d := range at {
			at[d] += step[d]
		}
		last = size
		w.measure(at)
		if !(math.Abs(at[0])+math.Abs(at[1]) < 10*look.size && math.Abs(at[2])+math.Abs(at[3]) < w.half) {
			break
		}
	}
	return nil, at, noAxis()
}

// measure takes the distances from an axis and gives the difference of the
// greatest and the least.
func (w *wall) measure(at axis) (zone float64) {
	a, b := at[2]/w.half, at[3]/w.half
	norm := math.Sqrt(1 + a*a + b*b)
	most, least := 0.0, math.Inf(1)
	for i, p := range w.points {
		z := p.Z - w.middle.Z
		// From the axis at the same height, less what lies along the axis.
		x, y := p.X-w.middle.X-at[0]-a*z, p.Y-w.middle.Y-at[1]-b*z
		along := (x*a + y*b) / norm
		x -= along * a / norm
		y -= along * b / norm
		up := along / norm
		d := math.Sqrt(x*x + y*y + up*up)
		most, least = max(most, d), min(least, d)
		w.d[i] = d
		if d == 0 {
			d = 1
		}
		lever := (z + up) / w.half
		w.f[0][i], w.f[1][i] = x/d, y/d
		w.f[2][i], w.f[3][i] = x/d*lever, y/d*lever
	}
	for i := range w.d {
		w.d[i] -= least
	}
	w.least = least
	return most - least
}

// settle goes from an axis to one where no small change makes the zone
// narrower, and gives the basis that proves it.
func (w *wall) settle(at axis) (to axis, b basis, zone float64, ok bool) {
	zone = w.measure(at)
	for round := range 100 {
		p := program{v: w.d, f: w.f, dims: 4, noise: w.noise}
		if round == 0 || !p.solve(&b) {
			if !p.start(&b) || !p.solve(&b) {
				return at, b, zone, false
			}
		}
		gain, moved := 0.0, false
		for step, k := b.s, 0; k < 40 && !moved; k++ {
			to := at
			for d := range to {
				to[d] += step[d]
				step[d] /= 2
			}
			if width := w.measure(to); width < zone {
				gain, moved = zone-width, true
				at, zone = to, width
			}
		}
		if !moved || gain <= w.noise {
			break
		}
	}
	return at, b, zone, true
}

// step is Gauss and Newton's step of the axis.
func (w *wall) step() (to axis, ok bool) {
	var m matrix
	var right [side]float64
	for i, d := range w.d {
		row := [5]float64{1, w.f[0][i], w.f[1][i], w.f[2][i], w.f[3][i]}
		for j := range row {
			for k := range row {
				m[j][k] += row[j] * row[k]
			}
			right[j] += row[j] * d
		}
	}
	inv, ok := m.invert(5)
	if !ok {
		return to, false
	}
	x := inv.times(5, &right)
	copy(to[:], x[1:])
	return to, true
}

// result is the cylinder about an axis, with the contacts of a basis.
func (w *wall) result(kind CylinderKind, at axis, b *basis) Cylindricity {
	zone := w.measure(at)
	n := float64(len(w.d))
	mean := 0.0
	for _, d := range w.d {
		mean += d / n
	}
	c := Cylindricity{Kind: kind, SlopeX: at[2] / w.half, SlopeY: at[3] / w.half, Inner: w.least, Outer: w.least + zone}
	c.Through = Point3{w.middle.X + at[0], w.middle.Y + at[1], w.middle.Z}
	beyond := mean
	if kind == MZCY {
		beyond = zone / 2
	}
	c.Radius = w.least + beyond
	squares := 0.0
	for _, d := range w.d {
		e := (d - beyond) / w.size
		squares += e * e
	}
	c.RootMeanSquare = w.size * math.Sqrt(squares/n)
	for k, col := range b.cols {
		if b.weight[k] > unweighted {
			c.contacts.add(Contact{col.index, col.outer, b.weight[k]})
		}
	}
	c.contacts.order(func(k Contact) float64 { return float64(k.Index) })
	return c
}
