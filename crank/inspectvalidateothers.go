package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

func (l *Limits) checkRods() error {
	p := &l.Rods
	for _, x := range [...]struct {
		path, field string
		size        units.Length
		need        bool
	}{
		{"rods.span", "span of the dials", p.Span, given(&p.BendPer)}, {"rods.twistSpan", "span of the twist", p.TwistSpan, given(&p.TwistPer)},
		{"rods.per", "span of the limits", p.Per, false}, {"rods.stroke", "stroke", p.Stroke, false},
	} {
		switch {
		case x.need && x.size == 0:
			return inspection.At("rods", &InputError{x.field, "(not given)", "given, since a limit over another span needs it"})
		case x.size < 0 || x.size > farthest:
			return inspection.At(x.path, &InputError{x.field, x.size.String(), "above 0 mm and at most 10 m"})
		}
	}
	if p.Master.IsZero() {
		if given(&p.Centres) {
			return inspection.At("rods", &InputError{"master", "(not given)", "given, since the distance between centres counts from it"})
		}
		return nil
	}
	return inspection.At("rods.master", thickBracket("master between centres", p.Master))
}

func (l *Limits) checkThrustPage() error {
	p := &l.Thrust
	if p.Main < 0 || p.Main > l.Layout.Mains {
		return inspection.At("thrust.main", &InputError{"main", strconv.Itoa(p.Main), "one of the mains"})
	}
	if p.Wanted < 0 || p.Wanted > farthest {
		return inspection.At("thrust.wanted", &InputError{"wanted end float", p.Wanted.String(), "0 mm or more, and at most 10 m"})
	}
	if len(p.Stock) > mostThrust {
		return inspection.At("thrust.stock", &InputError{"stock of thrust washers", strconv.Itoa(len(p.Stock)), "100 sizes at most"})
	}
	for i, w := range p.Stock {
		at := inspection.Index("thrust.stock", i)
		if err := thickBracket("thickness", w.Thickness); err != nil {
			return inspection.At(at+".thickness", err)
		}
		if w.Pieces < 0 {
			return inspection.At(at+".pieces", &InputError{"pieces", strconv.Itoa(w.Pieces), "0 or more"})
		}
	}
	if len(p.Stock) > 0 && p.Wanted == 0 {
		if _, err := (ThrustFit{Limits: p.EndFloat.Spec()}).wanted(); err != nil {
			return inspection.At("thrust", err)
		}
	}
	if p.Table != nil {
		return inspection.At("thrust.table", p.Table.check())
	}
	return nil
}

func (l *Limits) checkBalance() error {
	p := &l.Balance
	if given(&p.Bobweight) {
		if f := p.Factor; !f.Valid() || f.Sign() < 0 || f.Float() > 1 {
			return inspection.At("balance", &InputError{"factor", f.String(), "from 0 to 1, such as 1/2 or 50 %"})
		}
		if _, err := bobweightPart("oil", func() string { return "a crankpin" }, p.Oil, false); err != nil {
			return inspection.At("balance.oil", err)
		}
	}
	if p.Rotor == nil {
		return nil
	}
	if len(p.Rotor.Readings) > 0 {
		return inspection.At("balance.rotor.readings", &InputError{"readings", strconv.Itoa(len(p.Rotor.Readings)), "in the document of readings"})
	}
	return inspection.At("balance.rotor", p.Rotor.check())
}

func (l *Limits) checkPump() error {
	p := &l.OilPump
	if int(p.Kind) >= len(pumpKinds) {
		return inspection.At("oilPump.kind", &InputError{"kind of pump", strconv.Itoa(int(p.Kind)), "one that has a name"})
	}
	for _, m := range [...]struct {
		measure PumpMeasure
		path    string
		limit   *inspection.Limit
	}{{PumpBody, "oilPump.body", &p.Body}, {PumpBacklash, "oilPump.backlash", &p.Backlash}} {
		if given(m.limit) && !p.Kind.has(m.measure) {
			return inspection.At(m.path, &InputError{"limit", m.measure.String(), "one that a " + p.Kind.String() + " pump has"})
		}
	}
	if _, err := pumpExtra("gasket", p.Gasket); err != nil {
		return inspection.At("oilPump.gasket", err)
	}
	for _, s := range [...]struct {
		path, field string
		size        tolerance.Bracket
	}{{"oilPump.newWidth", "width of new gears", p.NewWidth.Interval()}, {"oilPump.relief.installed", "installed height", p.Relief.Installed}, {"oilPump.relief.seat", "diameter of the seat", p.Relief.Seat}} {
		if !s.size.IsZero() {
			if err := thickBracket(s.field, s.size); err != nil {
				return inspection.At(s.path, err)
			}
		}
	}
	r := &p.Relief
	switch {
	case r.Height < 0 || r.Height > farthest || r.Height == 0 && (!r.Load.IsZero() || !r.Pressure.IsZero()):
		return inspection.At("oilPump.relief", &InputError{"height", r.Height.String(), "above 0 mm, since the load is read at it"})
	case r.Installed.IsZero() != r.Seat.IsZero():
		return inspection.At("oilPump.relief", &InputError{"opening pressure", "from one of them", "from both the installed height and the seat's diameter, or neither"})
	case !r.Pressure.IsZero() && r.Seat.IsZero():
		return inspection.At("oilPump.relief", &InputError{"opening pressure", "(not to be told)", "asked for with the installed height and the seat's diameter"})
	}
	return nil
}
