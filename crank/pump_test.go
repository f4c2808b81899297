package crank

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func pumpBracket(t testing.TB, s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	require.NoError(t, err, s)
	return b
}

func pumpBand(t testing.TB, c vectors.Case, col string) (b tolerance.Band) {
	if c.Has(col) {
		p, err := tolerance.ParsePrinted(c.Text(col))
		require.NoError(t, err)
		b = p.BandOf
	}
	return b
}

func TestPumpPublished(t *testing.T) {
	vectors.Load(t, "published/crank_pump.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var kind PumpKind
		require.NoError(t, kind.UnmarshalText([]byte(c.Text("kind"))))
		check := PumpCheck{Stations: []tolerance.Bracket{pumpBracket(t, c.Text("reading"))}, Limits: tolerance.Spec{New: pumpBand(t, c, "new"), Wear: pumpBand(t, c, "wear")}}
		require.NoError(t, check.Measure.UnmarshalText([]byte(c.Text("measure"))))
		r, err := Pump{Kind: kind, Checks: []PumpCheck{check}}.Assess()
		require.NoError(t, err)
		require.Equal(t, c.Text("standing"), r.Standing.String())
		require.NotEmpty(t, r.Judgements[0].Next)
	})
	vectors.Load(t, "published/crank_pump_plunger.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) units.Length { return units.MustParseLength(c.Text(col) + " mm") }
		fit := PumpFit(sliderSpan(mm("bore_least"), mm("bore_greatest")), sliderSpan(mm("plunger_least"), mm("plunger_greatest")))
		require.Equal(t, sliderSpan(mm("least"), mm("greatest")), fit)
	})
}

func TestPumpInversesUndo(t *testing.T) {
	rnd := rand.New(rand.NewPCG(10, 3))
	size := func() units.Length { return units.Length(rnd.Int64N(5e10)) * 2 }
	for range 1000 {
		a, b, c := size(), size(), size()
		require.Equal(t, a, PumpPocket(PumpRadial(a, b), b))
		require.Equal(t, b, PumpGear(a, PumpRadial(a, b)))
		require.Equal(t, a, PumpDepth(PumpRecess(a, b), b))
		require.Equal(t, b, PumpWidth(a, PumpRecess(a, b)))
		require.Equal(t, b, PumpGasket(PumpEnd(a, b, c), a, c))
		require.Equal(t, c, PumpEnd(a-PumpFaceCut(a, c), 0, 0), "the recess falls by what comes off the face")
		require.Equal(t, PumpRecess(a, c), PumpEndWithGears(PumpRecess(a, b), b, c))
		// A gear that leans by any amount reads more on one side and less on
		// the other.
		lean := units.Length(rnd.Int64N(1e6))
		require.Equal(t, PumpRadial(a, b), PumpRadialBySides(PumpRadial(a, b)+lean, PumpRadial(a, b)-lean))
	}
}

func TestPumpReadings(t *testing.T) {
	b := PumpEnd(pumpBracket(t, "[0.05 mm, 0.06 mm)"), pumpBracket(t, "0.03 ±0.005 mm"), pumpBracket(t, "0.02 mm"))
	require.Equal(t, pumpBracket(t, "[0.095 mm, 0.115 mm)"), b)
	e, err := uncertainty.Rectangular("gasket", 30*units.Micrometre, 3*units.Micrometre)
	require.NoError(t, err)
	x := uncertainty.Exactly[units.Length]
	require.InDelta(t, 1.732, PumpEnd(x(50*units.Micrometre), e, x(0)).StandardUncertainty().Float(units.InMicrometres), 1e-3)
	term := PumpRadial(working.Given("pocket", "D", 41*units.Millimetre), working.Given("gear", "d", 40_900*units.Micrometre)).Named("tip clearance", "c")
	s, err := working.Solve(term, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "= 0.050 mm")
}

func TestPumpRemedies(t *testing.T) {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.08 mm"), Wear: tolerance.MustParseBand("max 0.12 mm")}
	only := func(kind PumpKind, m PumpMeasure, limits tolerance.Spec, reading string, change func(*Pump)) PumpJudgement {
		p := Pump{Kind: kind, Where: "main pump", Checks: []PumpCheck{{Measure: m, Where: "driven gear", Stations: []tolerance.Bracket{pumpBracket(t, reading)}, Limits: limits}}}
		if change != nil {
			change(&p)
		}
		r, err := p.Assess()
		require.NoError(t, err)
		require.Equal(t, "main pump, driven gear", r.Judgements[0].Finding.Where)
		return r.Judgements[0]
	}
	widths := func(used, fresh string) func(*Pump) {
		return func(p *Pump) { p.UsedWidth, p.NewWidth = pumpBracket(t, used), tolerance.MustParseBand(fresh) }
	}
	for _, c := range []struct {
		kind    PumpKind
		measure PumpMeasure
		limits  tolerance.Spec
		reading string
		change  func(*Pump)
		remedy  PumpRemedy
		says    string
	}{
		{GearPump, PumpTip, limits, "[0.05 mm, 0.06 mm)", nil, PumpReUse, "re-use"},
		{GearPump, PumpTip, limits, "[0.10 mm, 0.15 mm)", nil, PumpMeasureAgain, "not a pass"},
		{GearPump, PumpTip, limits, "[0.15 mm, 0.20 mm)", nil, PumpRenewGears, "the body is worn"},
		{GearPump, PumpTip, tolerance.Spec{}, "[0.15 mm, 0.20 mm)", nil, PumpAskManual, "no limit"},
		{GearPump, PumpTip, limits, "[0 mm, 0.02 mm)", nil, PumpFreeUp, "seizes"},
		{GearPump, PumpBacklash, tolerance.Spec{New: limits.New}, "0.3 mm", nil, PumpRenewGears, "no wear limit is given"},
		{CrescentPump, PumpBody, limits, "0.3 mm", nil, PumpRenewGears, "renew"},
		{RotorPump, PumpCover, limits, "0.3 mm", nil, PumpFaceCover, "cover"},
		{RotorPump, PumpShaft, limits, "0.3 mm", nil, PumpRebush, "leans"},
		{RotorPump, PumpPlunger, limits, "0.3 mm", nil, PumpRenewValve, "sticks"},
		{GearPump, PumpSide, limits, "0.15 mm", nil, PumpMeasureAgain, "measure the gears' width"},
		{GearPump, PumpSide, limits, "0.15 mm", widths("24.90 mm", "24.99–25.00 mm"), PumpRenewGears, "bring the end clearance back"},
		{GearPump, PumpSide, limits, "0.15 mm", widths("24.99 mm", "24.99–25.00 mm"), PumpFaceBody, "0.060 mm"},
		{GearPump, PumpSide, limits, "0.15 mm", widths("24.80 mm", "24.99–25.00 mm"), PumpMeasureAgain, "would bind"},
		{GearPump, PumpSide, limits, "0.15 mm", widths("24.92 mm", "24.95–25.00 mm"), PumpMeasureAgain, "measure the new gears more finely"},
		{GearPump, PumpSide, limits, "[0.13 mm, 0.19 mm)", widths("24.92 mm", "24.99–25.00 mm"), PumpMeasureAgain, "measure the gap under the straight-edge more finely"},
		{GearPump, PumpSide, limits, "[0.13 mm, ∞)", widths("24.92 mm", "24.99–25.00 mm"), PumpMeasureAgain, "measure the gap under the straight-edge more finely"},
		{GearPump, PumpSide, limits, "0.13 mm", func(p *Pump) {
			widths("24.92 mm", "24.99–25.00 mm")(p)
			p.CoverWear = pumpBracket(t, "[0 mm, 0.03 mm)")
		}, PumpMeasureAgain, "measure the cover's wear more finely"},
		{GearPump, PumpSide, tolerance.Spec{Wear: limits.Wear}, "0.15 mm", widths("24.90 mm", "24.99–25.00 mm"), PumpRenewGears, "bring"},
		// Gears that stand proud, and a gasket and a worn cover that make room.
		{GearPump, PumpSide, limits, "-0.02 mm", func(p *Pump) { p.Gasket, p.CoverWear = pumpBracket(t, "0.06 mm"), pumpBracket(t, "0.01 mm") }, PumpReUse, "re-use"},
	} {
		j := only(c.kind, c.measure, c.limits, c.reading, c.change)
		require.Equal(t, c.remedy, j.Remedy, "%v %s", c.measure, c.reading)
		require.Contains(t, j.Next, c.says)
	}
	wide := only(GearPump, PumpSide, limits, "0.15 mm", widths("24.99 mm", "24.99–25.00 mm"))
	require.Equal(t, pumpBracket(t, "[0.14 mm, 0.15 mm]"), wide.WithNewGears)
}

// What is surely past governs what can't be told, and that what may be used.
func TestPumpStandingIsTheWorst(t *testing.T) {
	order := []tolerance.Standing{tolerance.AsNew, tolerance.Usable, tolerance.CantTell, tolerance.OutsideNewBand, tolerance.PastWearLimit}
	for i, a := range order {
		for k, b := range order {
			require.Equal(t, order[max(i, k)], pumpWorse(a, b))
		}
	}
}

func TestPumpRefuses(t *testing.T) {
	good := func() Pump {
		return Pump{Checks: []PumpCheck{{Measure: PumpSide, Stations: []tolerance.Bracket{pumpBracket(t, "0.05 mm")}}}}
	}
	for says, change := range map[string]func(*Pump){
		"pump's measures of no kind": func(p *Pump) { p.Checks = nil },
		"kind of pump 9":             func(p *Pump) { p.Kind = 9 },
		"measure 1 42":               func(p *Pump) { p.Checks[0].Measure = 42 },
		"measure 1 body clearance is not one that a gear": func(p *Pump) { p.Checks[0].Measure = PumpBody },
		"measure 1 backlash is not one that a rotor pump": func(p *Pump) { p.Kind, p.Checks[0].Measure = RotorPump, PumpBacklash },
		"end clearance of no place":                       func(p *Pump) { p.Checks[0].Stations = nil },
		"end clearance at place 1 -0.05 mm":               func(p *Pump) { p.Checks[0].Stations[0] = pumpBracket(t, "-0.05 mm") },
		"gasket -0.1 mm":                                  func(p *Pump) { p.Gasket = pumpBracket(t, "-0.1 mm") },
		"cover wear [1 mm, ∞)":                            func(p *Pump) { p.CoverWear = pumpBracket(t, "[1 mm, ∞)") },
		"used width of the gears 0 mm":                    func(p *Pump) { p.UsedWidth = pumpBracket(t, "0 mm") },
		"new width of the gears":                          func(p *Pump) { p.NewWidth = tolerance.AtMost(units.Millimetre) },
	} {
		p := good()
		change(&p)
		_, err := p.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
	}
	p := good()
	p.Checks[0].Limits = tolerance.Spec{New: tolerance.MustParseBand("0.03–0.08 mm"), Wear: tolerance.MustParseBand("max 0.02 mm")}
	_, err := p.Assess()
	require.Error(t, err, "limits that contradict each other")
}

func TestPumpWords(t *testing.T) {
	for i := range pumpKinds {
		text, _ := PumpKind(i).MarshalText()
		var k PumpKind
		require.NoError(t, k.UnmarshalText(text))
		require.Equal(t, PumpKind(i), k)
	}
	for i := range pumpMeasures {
		text, _ := PumpMeasure(i).MarshalText()
		var m PumpMeasure
		require.NoError(t, m.UnmarshalText(text))
		require.Equal(t, PumpMeasure(i), m)
	}
	for i := range pumpRemedies {
		text, _ := PumpRemedy(i).MarshalText()
		var r PumpRemedy
		require.NoError(t, r.UnmarshalText(text))
		require.Equal(t, PumpRemedy(i), r)
	}
	var k PumpKind
	require.EqualError(t, k.UnmarshalText([]byte("vane")), `crank: kind of pump "vane" is not one of "gear", "rotor", "crescent"`)
	require.Equal(t, "measure again", PumpRemedy(200).String())
}

var sinkPump PumpReport

func BenchmarkPump(b *testing.B) {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.08 mm"), Wear: tolerance.MustParseBand("max 0.12 mm")}
	one := pumpBracket(b, "[0.05 mm, 0.06 mm)")
	p := Pump{Checks: []PumpCheck{{Measure: PumpTip, Stations: []tolerance.Bracket{one, one}, Limits: limits}, {Measure: PumpSide, Stations: []tolerance.Bracket{one}, Limits: limits}}}
	b.Run("lib=tenthou/op=pump", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sinkPump, _ = p.Assess()
		}
	})
}
