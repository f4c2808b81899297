package form

import (
	"cmp"
	"math"
	"slices"
)

// MinimumZoneLines finds the two parallel lines that hold all points between
// them and are closest together along the heights (MZLI).
//
// It is exact: the points are bounded above and below by their convex hull,
// and the distance from the lower to the upper bound, which is concave along
// the line, is greatest where a corner of one stands against an edge of the
// other. That greatest distance is the width of the zone and the edge its
// direction. Places may come in any order, which costs a sort.
//
// It fails as [LeastSquaresLine] does. It allocates nothing for up to 512
// points in the order of their places, and once otherwise.
func MinimumZoneLines(points []Point) (Straightness, error) {
	r, err := lookAlong(points)
	if err != nil {
		return Straightness{}, err
	}
	n := len(points)
	var space [3 * inPlace]int
	index := space[:]
	if 3*n > len(index) {
		index = make([]int, 3*n)
	}
	order := index[:n]
	for i := range order {
		order[i] = i
	}
	if !r.sorted {
		slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(points[i].X, points[j].X) })
	}
	// Heights from the end-point line, so that its slope doesn't drown them.
	a := points[r.first]
	h := hulls{points: points, from: a, slope: (points[r.last].Y - a.Y) / r.width}
	upper := h.chain(order, index[n:n:2*n], 1)
	lower := h.chain(order, index[2*n:2*n:3*n], -1)
	s := Straightness{Kind: MZLI, Through: a}
	s.Slope = h.slope + h.widest(upper, lower, &s.contacts)
	s.finish(points)
	s.contacts.order(func(k Contact) float64 { return points[k.Index].X })
	return s, nil
}

// hulls finds the convex hull of points, by their heights above a line.
type hulls struct {
	points []Point
	from   Point
	slope  float64
}

// at is a point from the line.
func (h hulls) at(i int) Point {
	x := h.points[i].X - h.from.X
	return Point{x, h.points[i].Y - h.from.Y - h.slope*x}
}

// chain is the upper (side 1) or lower (side −1) bound, by ascending place; it
// appends to into.
func (h hulls) chain(order, into []int, side float64) []int {
	for _, i := range order {
		p := h.at(i)
		for len(into) > 0 {
			q := h.at(into[len(into)-1])
			if q.X == p.X {
				if side*q.Y >= side*p.Y {
					break // p is no bound
				}
			} else {
				if len(into) < 2 {
					break
				}
				o := h.at(into[len(into)-2])
				if side*((q.X-o.X)*(p.Y-o.Y)-(q.Y-o.Y)*(p.X-o.X)) < 0 {
					break // a proper corner
				}
			}
			into = into[:len(into)-1]
		}
		if len(into) == 0 || h.at(into[len(into)-1]).X < p.X {
			into = append(into, i)
		}
	}
	return into
}

// widest finds where the bounds are farthest apart, notes the contacts, and
// gives the slope of the edge there.
func (h hulls) widest(upper, lower []int, into *contacts) (slope float64) {
	best := math.Inf(-1)
	for side, chain := range [...][]int{upper, lower} {
		other := lower
		if side == 1 {
			other = upper
		}
		k := 1 // the edge of the other chain from k−1 to k
		for at, i := range chain {
			p := h.at(i)
			for k < len(other)-1 && h.at(other[k]).X < p.X {
				k++
			}
			a, b := h.at(other[k-1]), h.at(other[k])
			t := (p.X - a.X) / (b.X - a.X)
			gap := math.Abs(p.Y - (a.Y + t*(b.Y-a.Y)))
			if gap <= best {
				continue
			}
			best = gap
			into.n = 0
			into.add(Contact{i, side == 0, 1})
			if t < 1 {
				into.add(Contact{other[k-1], side == 1, 1 - t})
			}
			if t > 0 {
				into.add(Contact{other[k], side == 1, t})
			}
			slope = (b.Y - a.Y) / (b.X - a.X)
			if t == 0 || t == 1 {
				if opposite := k - 1 + int(t); side == 0 {
					slope = h.between(chain, at, other, opposite)
				} else {
					slope = h.between(other, opposite, chain, at)
				}
			}
		}
	}
	return slope
}

// between is a slope that touches both bounds where a corner of the upper one,
// at i, stands straight above a corner of the lower one, at j. Each end of a
// bound leaves the slope free on one side.
func (h hulls) between(upper []int, i int, lower []int, j int) float64 {
	least, most := math.Inf(-1), math.Inf(1)
	if i < len(upper)-1 {
		least = max(least, h.edge(upper[i], upper[i+1]))
	}
	if j > 0 {
		least = max(least, h.edge(lower[j-1], lower[j]))
	}
	if i > 0 {
		most = min(most, h.edge(upper[i-1], upper[i]))
	}
	if j < len(lower)-1 {
		most = min(most, h.edge(lower[j], lower[j+1]))
	}
	return least + (most-least)/2
}

// edge is the slope from one point to another.
func (h hulls) edge(i, j int) float64 {
	p, q := h.at(i), h.at(j)
	return (q.Y - p.Y) / (q.X - p.X)
}
