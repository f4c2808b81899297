package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// working writes out the fits of one piston's pin, and the heat that puts it in,
// at the middle of each reading. The formulas are the library's own, called with
// terms.
func (e engine) working(p printer, which string) (string, error) {
	for i := range e.set {
		if e.set[i].Where == which {
			return e.write(p, &e.set[i])
		}
	}
	return "", fmt.Errorf("no piston is called %.64q", which)
}

func (e engine) write(p printer, s *piston.PinSurvey) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "%s, each reading taken at its middle\n", s.Where)
	solve := func(t working.Term) error {
		done, err := working.Solve(t, units.Style[units.Length]{Unit: p.unit, Places: p.places})
		if err == nil {
			b.WriteString("\n" + done.Text())
		}
		return err
	}
	for _, f := range []struct {
		name       string
		hole, pins []piston.PinSection
	}{{"boss", s.Bosses, s.AtBosses}, {"small end", s.SmallEnd, s.AtSmallEnd}} {
		if len(f.hole) == 0 || len(f.pins) == 0 {
			continue
		}
		least, _ := extremes(f.hole)
		_, greatest := extremes(f.pins)
		hole, ok := least.Middle()
		pin, ok2 := greatest.Middle()
		if !ok || !ok2 {
			return "", fmt.Errorf("%.64q: a reading has no middle to work with", s.Where)
		}
		h, d := working.Given("least "+f.name, "D", hole), working.Given("greatest pin there", "d", pin)
		t := piston.PinClearance(h, d).Named("least clearance", "c")
		if f.name == "small end" && s.Fit == piston.PinPressed {
			t = piston.PinInterference(d, h).Named("greatest interference", "δ")
		}
		if err := solve(t); err != nil {
			return "", err
		}
	}
	between, ok := s.Between.Middle()
	length, ok2 := s.Length.Middle()
	if ok && ok2 && s.Fit != piston.PinPressed {
		if err := solve(piston.PinEndFloat(working.Given("between circlips", "w", between), working.Given("pin's length", "l", length)).Named("end float", "f")); err != nil {
			return "", err
		}
	}
	return b.String() + e.rise(p, s), nil
}

// rise writes out by how much the hole must be warmer.
func (e engine) rise(p printer, s *piston.PinSurvey) string {
	if e.Assembly == nil {
		return ""
	}
	h, ok := e.heat(s)
	if !ok {
		return ""
	}
	hole, _ := h.Hole.Lower()
	pin, _ := h.Pin.Upper()
	at, _ := e.Assembly.PinAt.Upper()
	g, symbol := working.GivenReal, p.unit.Symbol()
	t := piston.PinHoleRise(g("gap", "g", e.Assembly.Gap.Float(p.unit), symbol), g("least clearance, with the readings' errors", "c", (hole-pin).Float(p.unit), symbol),
		g("pin", "d", pin.Float(p.unit), symbol), g("hole's expansion", "α", h.HoleMetal.PerK, "1/K"),
		g("pin's expansion", "β", h.PinMetal.PerK, "1/K"), g("pin's rise", "U", at.Sub(h.MeasuredAt).Float(units.InKelvins), "K"))
	done, err := working.SolveReal(t.Named("rise of the hole", "T", "K"), working.RealStyle{Places: 1, Bare: true})
	if err != nil {
		return "\n" + err.Error() + "\n"
	}
	return "\n" + done.Text()
}
