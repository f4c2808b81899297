package form

import "math"

// everywhere looks for a centre with a lower score than one that the section
// has settled at, and leaves the section at the best, with its basis. global
// reports that there is none better.
//
// Most often the contacts themselves prove it: the distance up to which they
// do exceeds the one from which on the rest of the points does. Where it
// doesn't, as with ovals, the square between is searched by branch and bound.
func (s *section) everywhere(b *basis, at Point, score float64) (best Point, global bool) {
	if !s.inner && score <= s.noise {
		return at, true // no zone is narrower than none
	}
	far := s.beyond()
	h := hunt{section: s, first: at, far: far, best: at, score: score, basis: *b}
	h.know(at, s.near(b))
	if h.known[0].near >= far {
		return at, true
	}
	if far >= s.least/4 {
		return at, false
	}
	global = h.branch(at, far)
	s.measure(h.best)
	*b = h.basis
	return h.best, global
}

// A hunt is a search by branch and bound for the centre of the lowest score.
type hunt struct {
	*section
	first Point   // the middle of the search
	far   float64 // how far it goes
	best  Point
	score float64 // at best
	basis basis   // at best
	known [16]place
	n     int // of known in use
	nodes int
}

// A place is a settled centre with the distance within which nothing is
// better.
type place struct {
	at   Point
	near float64
}

// know keeps a settled centre, if there is room.
func (h *hunt) know(at Point, near float64) {
	if h.n < len(h.known) {
		h.known[h.n] = place{at, near}
		h.n++
	}
}

// mostNodes bounds the search. Ovals at the scale of a bore take some tens to
// some hundreds.
const mostNodes = 3000

// branch searches the square of half width half round m. It reports false
// where the bound on nodes cut it short.
func (h *hunt) branch(m Point, half float64) bool {
	if h.nodes++; h.nodes > mostNodes {
		return false
	}
	// No point of the square is farther from its middle.
	r := half * math.Sqrt2
	if dist(m, h.first)-r > h.far {
		return true
	}
	for _, k := range h.known[:h.n] {
		if dist(m, k.at)+r <= k.near {
			return true
		}
	}
	// A shift of r changes a distance by r at most.
	score := h.measure(m)
	change := 2 * r
	if h.inner {
		change = r
	}
	if score-change >= h.score-h.noise {
		return true
	}
	var b basis
	if h.optimum(&b, false) {
		// The linear programme bounds the score to within curvature.
		bound := b.hi - b.lo
		if h.inner {
			bound = -(h.least + b.lo)
		}
		if bound-r*r/(2*(h.least-r)) >= h.score-h.noise {
			return true
		}
		if math.Abs(b.s[0]) <= r && math.Abs(b.s[1]) <= r {
			h.visit(m, &b)
		}
	}
	half /= 2
	for _, sx := range [...]float64{-half, half} {
		for _, sy := range [...]float64{-half, half} {
			if !h.branch(Point{m.X + sx, m.Y + sy}, half) {
				return false
			}
		}
	}
	return true
}

// visit settles from a centre and keeps what it finds.
func (h *hunt) visit(m Point, b *basis) {
	at, score, ok := h.settle(b, m)
	if !ok {
		return
	}
	for _, k := range h.known[:h.n] {
		if dist(at, k.at) <= k.near {
			return
		}
	}
	if score < h.score {
		h.best, h.score, h.basis = at, score, *b
	}
	h.know(at, h.near(b))
}

func dist(p, q Point) float64 {
	x, y := p.X-q.X, p.Y-q.Y
	return math.Sqrt(x*x + y*y)
}
