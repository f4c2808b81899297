package form

// MinimumZoneCircles finds the two circles about one centre that hold all
// points between them, with the least difference of radii (MZCI). That least
// difference is the roundness deviation that a roundness tolerance by ISO 1101
// limits.
//
// At a centre with the distances d_i and the directions u_i the narrowest zone
// for a shift δ is, to first order, the linear programme of the greatest less
// the least d_i − u_i·δ. It is solved exactly by exchange of contacts, the
// distances are taken anew at the shifted centre, and so on: near the solution
// the error squares in each step. A step is kept where the true zone, not the
// linear one, gets narrower, and halved where it doesn't. At the end the
// centre is where the perpendicular bisectors of the two pairs of contacts
// meet.
//
// Where the profile goes round without a gap of half a turn and its deviations
// are small beside its radius, the result is the narrowest zone of all
// centres, and Global says that this was proved for these points. On an arc,
// and where a profile is far from round, it is the narrowest near the least
// squares centre, and Global is false.
//
// It fails as [LeastSquaresCircle] does, and with [ErrCollinear] where the
// centre runs away, because lines hold the points closer than circles. Three
// points have a zone of no width. It allocates nothing for up to 512 points and
// once for more.
func MinimumZoneCircles(points []Point) (Roundness, error) {
	return settled(MZCI, points)
}

// MaximumInscribedCircle finds the largest circle that has no point inside it
// and is held by points all round (MICI): the largest plug that would go into
// a hole, as far as these points tell.
//
// It works as [MinimumZoneCircles] does, with the linear programme of the
// greatest least d_i − u_i·δ, and ends in the circle through the three
// contacts.
//
// A profile may have several such circles. An oval has two of nearly the same
// size, on its long axis at either side of its middle, as two readings across
// its short axis hold it and the next stop it sideways. Its size is sharp, its
// centre is not: RONt from this centre may exceed the minimum zone's by a
// quarter for an oval of 24 readings, by a hundredth for one of 360.
//
// Where deviations are small beside the radius and no gap between neighbours
// reaches 120°, the result is the largest of all with their centre inside the
// profile, and Global says that this was proved for these points; of equals it
// is one. The proof for a true oval of 360 readings takes some 2 ms, otherwise
// it costs nothing.
//
// It fails as [LeastSquaresCircle] does, and with [ErrPartialArc] where the
// points leave half a turn bare, so that the circle can grow out of the gap
// without end: a half circle, a right-angled or obtuse triangle. It allocates
// nothing for up to 512 points and once for more.
func MaximumInscribedCircle(points []Point) (Roundness, error) {
	return settled(MICI, points)
}

func settled(kind CircleKind, points []Point) (Roundness, error) {
	c, at, err := leastSquares(points)
	if err != nil {
		return Roundness{}, err
	}
	var space [3 * inPlace]float64
	s := newSection(points, c, space[:], kind == MICI)
	var b basis
	at, score, ok := s.settle(&b, at)
	if !ok {
		if kind == MICI {
			return Roundness{}, fault("circle", ErrPartialArc, "points on more than half of a turn")
		}
		return Roundness{}, fault("circle", ErrCollinear, "an arc that circles hold closer than lines")
	}
	r := Roundness{Kind: kind}
	at, r.Global = s.everywhere(&b, at, score)
	s.keep(&b, &r.contacts)
	r.finish(points, c, at)
	return r, nil
}

// unweighted is the weight up to which a column of a basis counts as none.
const unweighted = 1e-12

// keep notes the columns of a basis that bear weight. Where two opposite
// points hold an inscribed circle, those that stop it sideways belong to them.
func (s *section) keep(b *basis, into *contacts) {
	p := s.program()
	for k := range p.rows() {
		if b.weight[k] > unweighted {
			into.add(Contact{b.cols[k].index, b.cols[k].outer, b.weight[k]})
		}
	}
	if s.inner && into.n == 2 {
		for _, stop := range s.stops(b) {
			if stop.index >= 0 && s.d[stop.index] <= 4*s.noise {
				into.add(Contact{Index: stop.index})
			}
		}
	}
}
