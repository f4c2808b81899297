package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// oneLength is a reading with its path and what it can be.
type oneLength struct {
	path string
	r    *inspection.Reading
	kind lengthKind
}

// manyLengths is a list of them.
type manyLengths struct {
	path string
	list []inspection.Reading
	kind lengthKind
}

func checkAll(ones []oneLength, many []manyLengths) error {
	for i := range ones {
		if err := length(ones[i].path, ones[i].r, ones[i].kind); err != nil {
			return err
		}
	}
	for i := range many {
		if err := lengths(many[i].path, many[i].list, many[i].kind); err != nil {
			return err
		}
	}
	return nil
}

// check refuses what can't be of a bearing, and another housing's cap. Bolts are a
// main's alone.
func (s *ReadingsBearing) check(bolts *LimitsBolts) error {
	housing := s.HousingMark
	if housing == "" {
		housing = strconv.Itoa(s.Number)
	}
	if s.CapMark != "" && s.CapMark != housing {
		return inspection.At("capMark", inspection.Matched("cap", "main "+strconv.Itoa(s.Number), s.CapMark, housing))
	}
	err := checkAll([]oneLength{
		{"upper.width", &s.Upper.Width, above}, {"lower.width", &s.Lower.Width, above}, {"gap", &s.Gap, clearances},
		{"strip.front", &s.Strip.Front, above}, {"strip.middle", &s.Strip.Middle, above}, {"strip.rear", &s.Strip.Rear, above},
	}, []manyLengths{{"housing", s.Housing, above}, {"bore", s.Bore, above}, {"upper.walls", s.Upper.Walls, above}, {"lower.walls", s.Lower.Walls, above}})
	if err != nil {
		return err
	}
	if bolts == nil {
		bolts = &LimitsBolts{}
		if len(s.Bolts) > 0 {
			return inspection.At("bolts", &InputError{"bolts", strconv.Itoa(len(s.Bolts)), "with their rod, in rods"})
		}
	}
	return boltSheets(s.Bolts, bolts.count())
}

// boltSheets refuses bolts that can't be.
func boltSheets(bolts []ReadingsBolt, most int) error {
	for i := range bolts {
		b := &bolts[i]
		if b.Number < 1 || b.Number > most {
			return inspection.At(inspection.Index("bolts", i)+".number", &InputError{"number", strconv.Itoa(b.Number), "from 1 to " + strconv.Itoa(most) + ", as the limits have bolts"})
		}
		for k := range i {
			if bolts[k].Number == b.Number {
				return inspection.At(inspection.Index("bolts", i)+".number", &InputError{"number", strconv.Itoa(b.Number), "one that no other bolt here has"})
			}
		}
		for _, one := range [...]struct {
			field string
			r     *inspection.Reading
		}{{"asNew", &b.AsNew}, {"free", &b.Free}, {"tightened", &b.Tightened}} {
			if err := length(one.field, one.r, above); err != nil {
				return inspection.At(inspection.Index("bolts", i), err)
			}
		}
	}
	return nil
}

// check refuses what can't be of a rod, and another rod's cap.
func (s *ReadingsRod) check(l *Limits) error {
	if s.CapMark != "" && s.RodMark != "" && s.CapMark != s.RodMark {
		return inspection.At("capMark", inspection.Matched("cap", "rod "+strconv.Itoa(s.Number), s.CapMark, s.RodMark))
	}
	err := checkAll([]oneLength{{"right", &s.Right, dials}, {"left", &s.Left, dials}, {"twist", &s.Twist, bounds}}, []manyLengths{{"side", s.Side, clearances}})
	if err != nil {
		return err
	}
	planes, wide := l.Rods.Planes, len(l.Rods.Directions)
	if len(planes) == 0 {
		planes = defaultPlanes
	}
	if wide == 0 {
		wide = 2
	}
	size := func(r *inspection.Reading) error { return errorAt(length("", r, above)) }
	if err := planeSheets("bigEnd", s.BigEnd, planes, wide, size); err != nil {
		return err
	}
	if err := planeSheets("smallEnd", s.SmallEnd, planes, wide, size); err != nil {
		return err
	}
	if s.Masses != (ReadingsMasses{}) {
		for _, f := range massFields {
			if err := massReading("masses."+f.name, f.of(&s.Masses)); err != nil {
				return err
			}
		}
	}
	return boltSheets(s.Bolts, l.RodBolts.count())
}

var defaultPlanes = []string{"front", "rear"}

func massReading(path string, r *inspection.ReadingOf[units.Mass]) error {
	if !r.Taken {
		return nil
	}
	if lo, hi, ok := sliderEnds(r.Value); !ok || lo <= 0 || hi > units.Mass(1000*units.Kilogram) {
		return inspection.At(path, &InputError{"mass", journalQuote(r.String()), "above 0 g, known on both sides, up to 1 t"})
	}
	return nil
}

// check refuses what can't be of a pump.
func (s *ReadingsPump) check() error {
	err := checkAll([]oneLength{{"oilPump.usedWidth", &s.UsedWidth, above}, {"oilPump.free", &s.Free, above}}, []manyLengths{
		{"oilPump.tip", s.Tip, clearances}, {"oilPump.body", s.Body, clearances}, {"oilPump.side", s.Side, gaps}, {"oilPump.backlash", s.Backlash, clearances},
		{"oilPump.cover", s.Cover, bounds}, {"oilPump.shaft", s.Shaft, clearances}, {"oilPump.plunger", s.Plunger, clearances},
	})
	if err != nil || !s.Load.Taken {
		return err
	}
	if lo, _, ok := sliderEnds(s.Load.Value); !ok || lo <= 0 {
		return inspection.At("oilPump.load", &InputError{"load", journalQuote(s.Load.String()), "above 0 N, known on both sides"})
	}
	return nil
}

// begun reports whether anything was read or seen at all.
func (r *Readings) begun() bool {
	var none inspection.Condition
	seen := func(bolts []ReadingsBolt) bool {
		for i := range bolts {
			if bolts[i].read() || bolts[i].Condition != none {
				return true
			}
		}
		return false
	}
	for _, list := range [...][]ReadingsJournal{r.Mains, r.Crankpins} {
		for i := range list {
			if s := &list[i]; anyPlane(s.Planes) || anyRead(s.Dial) || s.RunOut.Taken || s.Fillet.Taken || s.Stroke.Taken || s.Index.Taken || s.Condition != none {
				return true
			}
		}
	}
	for _, list := range [...][]ReadingsBearing{r.MainBearings, r.BigEnds} {
		for i := range list {
			s := &list[i]
			if anyRead(s.Housing) || anyRead(s.Bore) || anyRead(s.Upper.Walls) || anyRead(s.Lower.Walls) || s.Upper.Width.Taken || s.Lower.Width.Taken ||
				s.Gap.Taken || s.Strip.Front.Taken || s.Strip.Rear.Taken || seen(s.Bolts) || s.Condition != none {
				return true
			}
		}
	}
	for i := range r.Rods {
		s := &r.Rods[i]
		if s.Right.Taken || s.Left.Taken || s.Twist.Taken || anyRead(s.Side) || anyPlane(s.BigEnd) || anyPlane(s.SmallEnd) || seen(s.Bolts) ||
			s.Masses != (ReadingsMasses{}) || s.Condition != none {
			return true
		}
	}
	s, t, p := &r.Shaft, &r.Thrust, &r.OilPump
	for _, list := range [...][]inspection.Reading{t.EndFloat, t.Front, t.Rear, p.Tip, p.Body, p.Side, p.Backlash, p.Cover, p.Shaft, p.Plunger} {
		if anyRead(list) {
			return true
		}
	}
	return s.Nose.Taken || s.Flange.Taken || s.FlangeFace.Taken || p.UsedWidth.Taken || p.Free.Taken || p.Load.Taken || len(r.Balance.Unbalance) > 0 ||
		s.Condition != none || t.Condition != none || p.Condition != none
}
