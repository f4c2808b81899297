package crank

import "github.com/tenthou/tenthou/tolerance/inspection"

// notAsked is the error of a reading that the limits don't ask for: it would be
// left unjudged.
func notAsked(path string) error {
	return inspection.At(path, &InputError{"reading", "(given)", "asked for by the limits, which leave it out: it would not be judged"})
}

func anyRead(list []inspection.Reading) bool {
	for i := range list {
		if list[i].Taken {
			return true
		}
	}
	return false
}

func anyPlane(list []ReadingsPlane) bool {
	for i := range list {
		if anyRead(list[i].Sizes) {
			return true
		}
	}
	return false
}

func (b *ReadingsBolt) read() bool { return b.Free.Taken || b.AsNew.Taken || b.Tightened.Taken }

// unasked refuses readings that no limit asks for.
func (l *Limits) unasked(r *Readings) error {
	for i := range r.Mains {
		if path := r.Mains[i].unasked(&l.Mains, l); path != "" {
			return inspection.At(inspection.Index("mains", i), notAsked(path))
		}
	}
	for i := range r.Crankpins {
		if path := r.Crankpins[i].unasked(&l.Crankpins, nil); path != "" {
			return inspection.At(inspection.Index("crankpins", i), notAsked(path))
		}
	}
	for i := range r.MainBearings {
		if path := r.MainBearings[i].unasked(&l.MainBearings, &l.MainBolts); path != "" {
			return inspection.At(inspection.Index("mainBearings", i), notAsked(path))
		}
	}
	for i := range r.BigEnds {
		if path := r.BigEnds[i].unasked(&l.BigEnds, nil); path != "" {
			return inspection.At(inspection.Index("bigEnds", i), notAsked(path))
		}
	}
	for i := range r.Rods {
		if path := r.Rods[i].unasked(l); path != "" {
			return inspection.At(inspection.Index("rods", i), notAsked(path))
		}
	}
	for _, one := range [...]struct {
		given, asked bool
		path         string
	}{
		{r.Shaft.Nose.Taken, given(&l.Shaft.Nose), "shaft.nose"}, {r.Shaft.Flange.Taken, given(&l.Shaft.Flange), "shaft.flange"},
		{r.Shaft.FlangeFace.Taken, given(&l.Shaft.FlangeFace), "shaft.flangeFace"}, {anyRead(r.Thrust.EndFloat), given(&l.Thrust.EndFloat), "thrust.endFloat"},
		{len(r.Balance.Unbalance) > 0, l.Balance.Rotor != nil, "balance.unbalance"},
	} {
		if one.given && !one.asked {
			return notAsked(one.path)
		}
	}
	return r.OilPump.unasked(&l.OilPump)
}

// unasked is the path of a reading that isn't asked for; whole are the limits where
// the journal is a main.
func (s *ReadingsJournal) unasked(p *LimitsJournals, whole *Limits) string {
	sizes := given(&p.Size) || given(&p.OutOfRound) || given(&p.Taper) || given(&p.Wear)
	switch {
	case !sizes && anyPlane(s.Planes):
		return "planes"
	case s.RunOut.Taken && (whole == nil || !given(&whole.Shaft.RunOut) || whole.Layout.DialPlaces > 0):
		return "runOut"
	case whole == nil && len(s.Dial) > 0 || anyRead(s.Dial) && !whole.Shaft.asksMains():
		return "dial"
	case s.Fillet.Taken && !given(&p.Fillet):
		return "fillet"
	case s.Stroke.Taken && !given(&p.Stroke):
		return "stroke"
	case s.Index.Taken && !given(&p.Index):
		return "index"
	}
	return ""
}

// unasked is the path of a reading that isn't asked for; bolts are nil for a big
// end, whose housing is gauged with the rod. A bore is better than walls, and taken
// in their place.
func (s *ReadingsBearing) unasked(p *LimitsBearings, bolts *LimitsBolts) string {
	oil := given(&p.OilClearance)
	walls := given(&p.Wall) || given(&p.Variation) || oil && p.Method == ByShellWalls
	switch {
	case bolts == nil && anyRead(s.Housing):
		return "housing"
	case anyRead(s.Bore) && (!oil || p.Method == ByGaugingStrip):
		return "bore"
	case !walls && anyRead(s.Upper.Walls):
		return "upper.walls"
	case !walls && anyRead(s.Lower.Walls):
		return "lower.walls"
	case s.Upper.Width.Taken && !given(&p.Spread):
		return "upper.width"
	case s.Lower.Width.Taken && !given(&p.Spread):
		return "lower.width"
	case s.Gap.Taken && !given(&p.Gap):
		return "gap"
	case (s.Strip.Front.Taken || s.Strip.Middle.Taken || s.Strip.Rear.Taken) && (!oil || p.Method != ByGaugingStrip):
		return "strip"
	case bolts != nil && !bolts.asks() && boltsRead(s.Bolts):
		return "bolts"
	}
	return ""
}

func boltsRead(bolts []ReadingsBolt) bool {
	for i := range bolts {
		if bolts[i].read() {
			return true
		}
	}
	return false
}

func (s *ReadingsRod) unasked(l *Limits) string {
	p := &l.Rods
	switch {
	case (s.Right.Taken || s.Left.Taken) && !p.asksDials():
		return "right"
	case s.Twist.Taken && !p.asksTwist():
		return "twist"
	case anyRead(s.Side) && !given(&p.Side):
		return "side"
	case anyPlane(s.BigEnd) && !p.BigEnd.asks() && !l.BigEnds.asks():
		return "bigEnd"
	case anyPlane(s.SmallEnd) && !p.SmallEnd.asks():
		return "smallEnd"
	case s.Masses != (ReadingsMasses{}) && l.Balance.asked() == 0:
		return "masses"
	case !l.RodBolts.asks() && boltsRead(s.Bolts):
		return "bolts"
	}
	return ""
}

func (s *ReadingsPump) unasked(p *LimitsPump) error {
	for _, m := range [...]struct {
		given bool
		limit *inspection.Limit
		path  string
	}{
		{anyRead(s.Tip), &p.Tip, "oilPump.tip"}, {anyRead(s.Body), &p.Body, "oilPump.body"}, {anyRead(s.Side), &p.Side, "oilPump.side"},
		{anyRead(s.Backlash), &p.Backlash, "oilPump.backlash"}, {anyRead(s.Cover), &p.Cover, "oilPump.cover"}, {anyRead(s.Shaft), &p.Shaft, "oilPump.shaft"},
		{anyRead(s.Plunger), &p.Plunger, "oilPump.plunger"},
	} {
		if m.given && !given(m.limit) {
			return notAsked(m.path)
		}
	}
	r := &p.Relief
	switch {
	case s.UsedWidth.Taken && (p.NewWidth.IsZero() || !given(&p.Side)):
		return notAsked("oilPump.usedWidth")
	case s.Free.Taken && !given(&r.Free) && !given(&r.Load) && !given(&r.Pressure):
		return notAsked("oilPump.free")
	case s.Load.Taken && !given(&r.Load) && !given(&r.Pressure):
		return notAsked("oilPump.load")
	}
	return nil
}
