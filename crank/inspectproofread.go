package crank

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// shaftLimit is one limit of the document, by its path.
type shaftLimit struct {
	page, field, what string
	limit             inspection.Limit
}

// limits are all limits on lengths.
func (l *Limits) limits() []shaftLimit {
	all := []shaftLimit{
		{"shaft", "runOut", "run-out", l.Shaft.RunOut}, {"shaft", "bend", "bend", l.Shaft.Bend}, {"shaft", "nose", "run-out of the nose", l.Shaft.Nose},
		{"shaft", "flange", "run-out of the flange", l.Shaft.Flange}, {"shaft", "flangeFace", "run-out of the flange's face", l.Shaft.FlangeFace},
		{"shaft", "neighbours.along", "mains next to each other", l.Shaft.Neighbours.Along},
		{"shaft", "neighbours.rightSum", "mains next to each other, at right angles", l.Shaft.Neighbours.RightSum},
		{"shaft", "neighbours.rightEach", "mains next to each other, each at right angles", l.Shaft.Neighbours.RightEach},
		{"thrust", "endFloat", "end float", l.Thrust.EndFloat}, {"thrust", "match", "thrust washer halves", l.Thrust.Match},
		{"oilPump", "tip", "pump, tip clearance", l.OilPump.Tip}, {"oilPump", "body", "pump, clearance in the body", l.OilPump.Body},
		{"oilPump", "side", "pump, end clearance", l.OilPump.Side}, {"oilPump", "backlash", "pump, backlash", l.OilPump.Backlash},
		{"oilPump", "cover", "pump, wear of the cover", l.OilPump.Cover}, {"oilPump", "shaft", "pump, shaft in its bush", l.OilPump.Shaft},
		{"oilPump", "plunger", "relief valve's plunger", l.OilPump.Plunger}, {"oilPump", "relief.free", "relief spring, free length", l.OilPump.Relief.Free},
	}
	for _, j := range []struct {
		page, what string
		p          *LimitsJournals
	}{{"mains", "main journals", &l.Mains}, {"crankpins", "crankpins", &l.Crankpins}} {
		all = append(all, shaftLimit{j.page, "size", j.what, j.p.Size}, shaftLimit{j.page, "outOfRound", j.what + ", out-of-round", j.p.OutOfRound},
			shaftLimit{j.page, "taper", j.what + ", taper", j.p.Taper}, shaftLimit{j.page, "wear", j.what + ", wear", j.p.Wear},
			shaftLimit{j.page, "fillet", j.what + ", fillet radius", j.p.Fillet}, shaftLimit{j.page, "stroke", j.what + ", stroke", j.p.Stroke})
	}
	for _, b := range []struct {
		page, what string
		p          *LimitsBearings
	}{{"mainBearings", "main bearings", &l.MainBearings}, {"bigEnds", "big ends", &l.BigEnds}} {
		all = append(all, shaftLimit{b.page, "oilClearance", b.what + ", oil clearance", b.p.OilClearance}, shaftLimit{b.page, "housing", b.what + ", housing bore", b.p.Housing},
			shaftLimit{b.page, "wall", b.what + ", shell wall", b.p.Wall}, shaftLimit{b.page, "variation", b.what + ", variation of the wall", b.p.Variation},
			shaftLimit{b.page, "spread", b.what + ", free spread", b.p.Spread}, shaftLimit{b.page, "gap", b.what + ", gap with one bolt slack", b.p.Gap},
			shaftLimit{b.page, "stripTaper", b.what + ", taper by gauging strip", b.p.StripTaper})
	}
	for _, b := range []struct {
		page, what string
		p          *LimitsBolts
	}{{"mainBolts", "main cap bolts", &l.MainBolts}, {"rodBolts", "rod bolts", &l.RodBolts}} {
		all = append(all, shaftLimit{b.page, "length", b.what + ", free length", b.p.Length}, shaftLimit{b.page, "growth", b.what + ", growth", b.p.Growth},
			shaftLimit{b.page, "stretch", b.what + ", stretch", b.p.Stretch})
	}
	r := &l.Rods
	all = append(all, shaftLimit{"rods", "length", "rods, length over the master", r.Length}, shaftLimit{"rods", "bend", "rods, bend", r.Bend},
		shaftLimit{"rods", "twist", "rods, twist", r.Twist}, shaftLimit{"rods", "bendPer", "rods, bend", r.BendPer}, shaftLimit{"rods", "twistPer", "rods, twist", r.TwistPer},
		shaftLimit{"rods", "centres", "rods, between centres", r.Centres}, shaftLimit{"rods", "side", "rods, side clearance", r.Side})
	for _, e := range []struct {
		name string
		p    *LimitsEye
	}{{"bigEnd", &r.BigEnd}, {"smallEnd", &r.SmallEnd}} {
		what := "rods, " + strings.TrimSuffix(e.name, "End") + " end"
		all = append(all, shaftLimit{"rods", e.name + ".size", what, e.p.Size}, shaftLimit{"rods", e.name + ".ovality", what + ", ovality", e.p.Ovality},
			shaftLimit{"rods", e.name + ".taper", what + ", taper", e.p.Taper})
	}
	return all
}

// proofread holds the limits' columns to each other.
func (l *Limits) proofread() ([]inspection.Slip, map[string][]string) {
	var slips []inspection.Slip
	by := map[string][]string{}
	page := func(name string, from int) {
		for _, s := range slips[from:] {
			by[name] = append(by[name], s.Path)
		}
	}
	for _, x := range l.limits() {
		n := len(slips)
		slips = x.limit.Proofread(slips, "limits."+x.page+"."+x.field, x.what)
		page(x.page, n)
	}
	n := len(slips)
	slips = l.Mains.Index.Proofread(slips, "limits.mains.index", "main journals, index")
	page("mains", n)
	n = len(slips)
	slips = l.Crankpins.Index.Proofread(slips, "limits.crankpins.index", "crankpins, index")
	page("crankpins", n)
	n = len(slips)
	slips = l.OilPump.Relief.Load.Proofread(slips, "limits.oilPump.relief.load", "relief spring, load")
	slips = l.OilPump.Relief.Pressure.Proofread(slips, "limits.oilPump.relief.pressure", "relief valve, opening pressure")
	page("oilPump", n)
	n = len(slips)
	slips = l.Balance.BigEnds.Proofread(slips, "limits.balance.bigEnds", "masses of the big ends")
	slips = l.Balance.SmallEnds.Proofread(slips, "limits.balance.smallEnds", "masses of the small ends")
	slips = l.Balance.Rods.Proofread(slips, "limits.balance.rods", "masses of the rods")
	slips = l.Balance.Bobweight.Proofread(slips, "limits.balance.bobweight", "bobweight")
	page("balance", n)
	return slips, by
}
