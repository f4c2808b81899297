package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// byBlades is what blades, or a direct reading, or both say of a gap; ok is
// false where there is neither.
func (x *inspecting) byBlades(tried Tried, read inspection.Reading, e units.Length) (gap tolerance.Bracket, ok bool, err error) {
	if gap, ok, err = tried.bracket(&x.in.blades); err != nil || !read.Taken {
		return gap, ok, err
	}
	value := valueOf(read, e)
	if !ok {
		return value, true, nil
	}
	both, ok := gap.Intersect(value)
	if !ok {
		return gap, false, &InputError{"reading", value.String(), "what the blades say too, " + gap.String()}
	}
	return both, true, nil
}

// gapOf judges a ring's end gap along its travel.
func (x *inspecting) gapOf(i, k int, ring *ReadingsRing) error {
	in, p, s := x.in, &x.pistons[i], x.ring(i, k)
	l, ready := &in.limits.Rings[k], &in.rings[k]
	m := &ready.gap
	if !m.asked() {
		return nil
	}
	where, paths := in.names[i].rings[k], &in.paths[p.here].rings[k]
	g := RingGap{Where: where, Thickness: l.Thickness, Limits: m.spec}
	x.places = [2]RingGapStation{}
	places := &x.places
	for at, side := range [2]struct {
		read  *ReadingsGap
		bore  *inspection.Reading
		path  string
		asked bool
		name  string
	}{{&ring.Top, &p.bore.Top, paths.top, ready.top, "top of travel"}, {&ring.Bottom, &p.bore.Bottom, paths.bottom, ready.bottom, "bottom of travel"}} {
		gap, ok, err := x.byBlades(side.read.Tried, side.read.Gap, l.Error)
		if err != nil {
			return inspection.At(side.path, err)
		}
		s.took(ok)
		places[at].Place = side.name
		if ok {
			places[at].Gap = gap
		} else if side.asked {
			x.miss(&s.tally, side.path+".tried", m.name, where+", "+side.name, with(l.GapWith, "feeler blades"), m.printed)
		}
		if side.bore.Taken {
			places[at].Bore = side.bore.Value
		}
	}
	read := [2]bool{!places[0].Gap.IsZero(), !places[1].Gap.IsZero()}
	if !read[0] && !read[1] {
		return nil
	}
	carried := !places[0].Bore.IsZero() && !places[1].Bore.IsZero()
	g.Stations = places[:]
	if !carried && !(read[0] && read[1]) {
		at := 0
		if read[1] {
			at = 1
		}
		g.Stations = places[at : at+1]
		if at == 1 {
			s.stands("the end gap where the bore is worn the most isn't known", "read it near the top of the ring's travel, or measure the bore's mean diameter there and near the bottom")
		} else {
			s.stands("the end gap where the bore is smallest isn't known", "read it near the bottom of the ring's travel, or measure the bore's mean diameter there and near the top")
		}
	}
	path := paths.top
	if !read[0] {
		path = paths.bottom
	}
	if m.spec.IsZero() {
		rests(&s.tally, m, tolerance.CantTell, places[0].Gap, places[1].Gap)
		return nil
	}
	r, err := g.assess(x.gapsAt[:0], x.brackets[:0])
	if err != nil {
		return x.unlike(&s.tally, path, where, err)
	}
	f := x.room()
	*f = r.Finding
	settleMore(f)
	x.report.Findings = append(x.report.Findings, inspection.Finding{Step: x.step, Path: path, Length: f})
	s.fits[1] = x.last() + 1
	rests(&s.tally, m, f.Standing, f.Least, f.Greatest)
	s.gap = [2]tolerance.Bracket{f.Least, f.Greatest}
	x.gapRemedy(s, &r, f)
	return nil
}

// gapRemedy enters what follows for the ring.
func (x *inspecting) gapRemedy(s *ringState, r *RingGapReport, f *tolerance.Finding) {
	switch r.Remedy {
	case RingServes:
		s.note(x.last(), f.Standing, f.Settle)
	case RingFile:
		s.file, s.filing = filing(r.Filing.Sure), f.String()+"; "+r.next()
	case RingOther:
		if f.Standing == tolerance.PastWearLimit {
			s.renew = append(s.renew, f.String()+"; "+r.next())
			return
		}
		s.stands(f.String(), r.next())
	case RingBoreWorn:
		s.stands(f.String()+"; "+r.next(), "decide on the bore first: its oversize brings new rings")
	default:
		if f.Standing == tolerance.CantTell {
			s.note(x.last(), f.Standing, f.Settle)
			return
		}
		s.stands(f.String(), r.next())
	}
}

// proofreadRings proofreads what was read of like rings, over all pistons.
func (x *inspecting) proofreadRings() {
	for k := range x.in.rings {
		x.proof(middleOf(x.in.limits.Rings[k].NewHeight.Interval()), func() {
			for i := range x.pistons {
				h := x.ring(i, k).height
				x.enterRing(i, k, inspection.Reading{Value: h, Taken: !h.IsZero()}, x.paths(i, k).height)
			}
		})
		x.proof(0, func() {
			for i := range x.pistons {
				x.enterRing(i, k, telling(x.ring(i, k).side[1]), x.paths(i, k).side)
			}
		})
		x.proof(0, func() {
			for i := range x.pistons {
				path := x.paths(i, k).bottom
				if r := x.doc(i, k); r.Top.taken() && !r.Bottom.taken() {
					path = x.paths(i, k).top
				}
				x.enterRing(i, k, telling(x.ring(i, k).gap[0]), path)
			}
		})
	}
}

// paths are those of a ring's readings.
func (x *inspecting) paths(i, k int) *ringPaths { return &x.in.paths[x.pistons[i].here].rings[k] }

// doc is what was read of a ring.
func (x *inspecting) doc(i, k int) *ReadingsRing {
	if rings := x.pistons[i].doc.Rings; k < len(rings) {
		return &rings[k]
	}
	return &noRing
}

// enterRing adds a reading of a ring to the set that is proofread.
func (x *inspecting) enterRing(i, k int, r inspection.Reading, path string) {
	x.enter(r, entry{&x.ring(i, k).tally, nil, x.in.names[i].rings[k], path, -1, -1})
}

// telling is a gap as a reading; not taken where blades leave it so open that it
// may be nought, or anything: such a one is in the neighbourhood of every slip.
func telling(gap tolerance.Bracket) inspection.Reading {
	lo, _ := gap.Lower()
	_, end := gap.Upper()
	return inspection.Reading{Value: gap, Taken: end != tolerance.Absent && lo > 0}
}
