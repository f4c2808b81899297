package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A foreseen is what a measure will be, the least and the greatest; the zero
// brackets where that isn't known.
type foreseen [2]tolerance.Bracket

func (f foreseen) known() bool { return !f[0].IsZero() && !f[1].IsZero() }

// both is a size that is the same everywhere.
func both(b tolerance.Bracket) foreseen { return foreseen{b, b} }

// less is what a hole leaves round a part: the least is the least hole's less
// the greatest part's.
func (f foreseen) less(part foreseen) foreseen {
	if !f.known() || !part.known() {
		return foreseen{}
	}
	return foreseen{f[0].Sub(part[1]), f[1].Sub(part[0])}
}

// becomes gives what a part will measure: new where it is renewed, as read where
// it stays, nothing where that is open.
func becomes(a inspection.Action, fresh, asRead foreseen) foreseen {
	switch a {
	case inspection.Replace, inspection.Repair:
		return fresh
	case inspection.MeasureAgain, inspection.Scrap:
		return foreseen{}
	}
	return asRead
}

// predict works out what clearances and gaps will be after the work, against
// the limits for new parts; what stays as it is keeps its finding.
func (x *inspecting) predict() error {
	for i := range x.pistons {
		if err := x.predictSkirt(i); err != nil {
			return err
		}
	}
	for i := range x.pistons {
		if err := x.predictPin(i); err != nil {
			return err
		}
	}
	for i := range x.pistons {
		for k := range x.in.rings {
			if err := x.predictRing(i, k); err != nil {
				return err
			}
		}
	}
	return nil
}

// foresee enters a prediction. Where nothing is done that changes the measure,
// it is the finding at its place, from 1.
func (x *inspecting) foresee(step inspection.Step, m *measured[units.Length], where, path string, will foreseen, at int) error {
	if !will.known() || m.spec.IsZero() {
		return nil
	}
	if at > 0 {
		if f := &x.report.Findings[at-1]; f.Length.Least == will[0] && f.Length.Greatest == will[1] {
			x.report.Predicted = append(x.report.Predicted, *f)
			return nil
		}
	}
	f := x.room()
	var err error
	if *f, err = tolerance.Assess(m.name, where, tolerance.Spec{New: m.spec.New, NewMating: m.spec.NewMating}, will[0], will[1]); err != nil {
		return inspection.At(path, err)
	}
	x.report.Predicted = append(x.report.Predicted, inspection.Finding{Step: step, Path: path, Length: f})
	return nil
}

// boreAfter is what the bore will be where it is, as read or as finished.
func (p *pistonState) boreAfter(asRead foreseen) foreseen {
	switch {
	case p.bore.Undecided:
		return foreseen{}
	case p.kit == nil:
		return asRead
	case p.bore.Finish.Taken:
		return both(p.bore.Finish.Value)
	}
	return foreseen{}
}

func (x *inspecting) predictSkirt(i int) error {
	in, p := x.in, &x.pistons[i]
	m := &in.skirt[SkirtMeasureClearance]
	if !m.asked() {
		return nil
	}
	fresh := in.newSkirt
	if p.kit != nil {
		fresh = p.kit.Skirt.Interval()
	}
	skirt := becomes(p.becomes, both(fresh), both(p.skirt))
	return x.foresee(inspection.StepPistons, m, in.names[i].heights[in.measuring], in.paths[p.here].skirt[in.measuring], p.boreAfter(p.bores).less(skirt), p.fits[0])
}

func (x *inspecting) predictPin(i int) error {
	in, p := x.in, &x.pistons[i]
	l := in.limits.Pins
	if l == nil || p.pin.taken == 0 {
		return nil
	}
	read := func(list int) foreseen { return foreseen{p.holes.least[list], p.holes.greatest[list]} }
	fresh := both(l.NewPin.Interval())
	boss := becomes(p.becomes, both(l.NewBoss.Interval()), read(pinBosses))
	small := becomes(p.rodBecomes, both(l.NewSmallEnd.Interval()), read(pinSmallEnd))
	name, paths := in.names[i].piston, &in.paths[p.here]
	if err := x.foresee(inspection.StepPins, &in.pin[PinMeasureBossClearance], name, paths.lists[pinBosses], boss.less(becomes(p.pinBecomes, fresh, read(pinAtBosses))), p.fits[1]); err != nil {
		return err
	}
	inSmall := small.less(becomes(p.pinBecomes, fresh, read(pinAtSmallEnd)))
	if l.Fit != PinPressed {
		return x.foresee(inspection.StepPins, &in.pin[PinMeasureSmallEndClearance], name, paths.lists[pinSmallEnd], inSmall, p.fits[2])
	}
	if inSmall.known() {
		none := tolerance.Exactly(units.Length(0))
		inSmall = foreseen{none.Sub(inSmall[1]), none.Sub(inSmall[0])}
	}
	return x.foresee(inspection.StepPins, &in.pin[PinMeasureSmallEndInterference], name, paths.lists[pinSmallEnd], inSmall, p.fits[2])
}

func (x *inspecting) predictRing(i, k int) error {
	in, p, s := x.in, &x.pistons[i], x.ring(i, k)
	l, ready := &in.limits.Rings[k], &in.rings[k]
	where, paths := in.names[i].rings[k], &in.paths[p.here].rings[k]
	side := foreseen(s.side)
	if s.becomes == inspection.Replace {
		side = foreseen{}
		switch {
		case p.becomes == inspection.Replace && !l.NewWidth.IsZero() && !l.NewHeight.IsZero():
			side = both(SideClearance(l.NewWidth.Interval(), l.NewHeight.Interval()))
		case p.becomes == inspection.ReconditionTo || p.becomes == inspection.MeasureAgain || p.becomes == inspection.Replace:
		case !s.height.IsZero() && !l.NewHeight.IsZero() && !s.side[0].IsZero():
			h := l.NewHeight.Interval()
			side = foreseen{ClearanceWithRing(s.side[0], s.height, h), ClearanceWithRing(s.side[1], s.height, h)}
		}
	} else if s.becomes == inspection.MeasureAgain {
		side = foreseen{}
	}
	if err := x.foresee(inspection.StepRings, &ready.side, where, paths.side, side, s.fits[0]); err != nil {
		return err
	}
	return x.foresee(inspection.StepRings, &ready.gap, where, paths.bottom, x.gapAfter(i, k), s.fits[1])
}

// gapAfter is a ring's end gap after the work: as read, or a new ring's in the
// bore as it will be.
func (x *inspecting) gapAfter(i, k int) foreseen {
	p, s, l := &x.pistons[i], x.ring(i, k), &x.in.limits.Rings[k]
	switch s.becomes {
	case inspection.ReUse:
		if p.kit != nil {
			return foreseen{}
		}
		return foreseen(s.gap)
	case inspection.Replace:
	default:
		return foreseen{}
	}
	nominal := x.in.limits.Standard
	if p.kit != nil {
		nominal += p.kit.Oversize
	}
	asRead := foreseen{p.bore.Bottom.Value, p.bore.Top.Value}
	if asRead.known() {
		asRead[0], asRead[1] = tolerance.Extremes(asRead[0], asRead[1])
	}
	bore := p.boreAfter(asRead)
	if l.NewGap.IsZero() || nominal == 0 || !bore.known() {
		return foreseen{}
	}
	gap, made := l.NewGap.Interval(), tolerance.Exactly(nominal)
	return foreseen{carryRingGap(gap, made, bore[0], l.Thickness), carryRingGap(gap, made, bore[1], l.Thickness)}
}
