package piston

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/wearrate"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// Published fits: the formula on their ends, and as bands.
func TestPin_publishedFits(t *testing.T) {
	vectors.Load(t, "published/piston_pin_fits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		hole, pin := band(c.Text("hole")).Interval(), band(c.Text("pin")).Interval()
		least, greatest := units.MustParseLength(c.Text("least")), units.MustParseLength(c.Text("greatest"))
		require.Equal(t, ends(least, tolerance.Closed, greatest, tolerance.Closed), PinClearance(hole, pin))
		require.Equal(t, ends(-greatest, tolerance.Closed, -least, tolerance.Closed), PinInterference(pin, hole))
	})
	vectors.Load(t, "published/piston_pin_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := PinLimits{SmallEndClearance: tolerance.Spec{New: band(c.Text("new"))}}
		if c.Has("wear") {
			l.SmallEndClearance.Wear = band(c.Text("wear"))
		}
		s := PinSurvey{Fit: PinFloating, AtSmallEnd: pinSection("1 in"), SmallEnd: []PinSection{{Sizes: []tolerance.Bracket{at(c.Text("clearance")).Add(at("1 in"))}}}}
		got, err := s.Inspect(nil, &l)
		require.NoError(t, err)
		require.Equal(t, c.Text("standing"), PinWorst(got).String())
	})
	// The published wear: 0.001 in of the pin in total, 0.0005 in for each inch
	// of the hole.
	p, err := wearrate.Published(wearrate.TM10393064714P)
	require.NoError(t, err)
	one := units.MustParseLength("1 in")
	pin, err := p.Spec(wearrate.GudgeonPinWear, one, tolerance.Band{})
	require.NoError(t, err)
	boss, err := p.Spec(wearrate.PistonPinBoreWear, one, tolerance.Band{})
	require.NoError(t, err)
	s := PinSurvey{AtBosses: pinSection("0.9990 in"), NewPin: at("1 in"), Bosses: pinSection("1.0005 in"), NewBoss: at("1 in")}
	got, err := s.Inspect(nil, &PinLimits{Wear: pin, BossWear: boss})
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, PinWorst(got))
	s.Bosses = pinSection("1.00051 in")
	got, err = s.Inspect(nil, &PinLimits{Wear: pin, BossWear: boss})
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, PinWorst(got))
}

func pinSection(sizes ...string) []PinSection {
	s := PinSection{}
	for _, x := range sizes {
		s.Sizes = append(s.Sizes, at(x))
	}
	return []PinSection{s}
}

// Each inverse undoes its formula to the quantum, and brackets hold each case.
func TestPin_inverses(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 1))
	draw := func() (tolerance.Bracket, units.Length) {
		a, w := r.Int64N(1e11), r.Int64N(1e6)
		return ends(units.Length(a), tolerance.Closed, units.Length(a+w), tolerance.Closed), units.Length(a + r.Int64N(w+1))
	}
	for range 1000 {
		h, x := draw()
		p, y := draw()
		u, z := draw()
		c := PinClearance(x, y)
		require.Equal(t, -c, PinInterference(y, x))
		require.Equal(t, x, PinHole(y, c))
		require.Equal(t, y, PinSize(x, c))
		require.Equal(t, PinClearance(x+z, y-z), PinClearanceWorn(c, z, z))
		require.Equal(t, x, PinNewSize(y, PinWear(y, x)))
		require.Equal(t, x, PinHoleNewSize(y, PinHoleWear(y, x)))
		require.Equal(t, y, PinLength(x, PinEndFloat(x, y)))
		require.Equal(t, z, PinCirclip(x, y, PinBetween(x, y, z)))
		require.Equal(t, PinOvality(x, y, z), PinTaper(z, x, y), "in any order")
		require.True(t, PinClearanceWorn(PinClearance(h, p), u, h).Contains(PinClearanceWorn(c, z, x)))
		require.True(t, PinBetween(h, p, u).Contains(PinBetween(x, y, z)))
		require.True(t, PinOvality(h, p, u).Contains(PinOvality(x, y, z)))
	}
	bad, one := units.OutOfRange[units.Length](), mm("1")
	for name, got := range map[string]units.Length{"clearance": PinClearance(bad, one), "interference": PinInterference(one, bad), "hole": PinHole(bad, one),
		"size": PinSize(one, bad), "worn": PinClearanceWorn(one, one, bad), "wear": PinWear(one, bad), "new": PinNewSize(bad, one), "hole wear": PinHoleWear(bad, one),
		"float": PinEndFloat(one, bad), "length": PinLength(bad, one), "between": PinBetween(one, one, bad), "circlip": PinCirclip(bad, one, one), "oval": PinOvality(one, bad), "taper": PinTaper(bad, one)} {
		require.False(t, got.InRange(), name)
	}
	more := []units.Length{one, one}
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = PinClearance(one, one) + PinEndFloat(one, one) + PinOvality(one, more...) }))
}

func TestPin_otherReadings(t *testing.T) {
	c := PinInterference(working.Given("pin", "d", mm("22.002")), working.Given("small end", "D", mm("21.978"))).Named("interference", "δ")
	s, err := working.Solve(c, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "= 0.024 mm")
	pin, err := uncertainty.Normal("pin", mm("22.002"), 3*units.Micrometre)
	require.NoError(t, err)
	hole, err := uncertainty.Normal("hole", mm("21.978"), 4*units.Micrometre)
	require.NoError(t, err)
	require.Equal(t, 5*units.Micrometre, PinInterference(pin, hole).StandardUncertainty(), "3 and 4 make 5")
	require.Equal(t, 5*units.Micrometre, PinOvality(pin, hole).StandardUncertainty())
}

// pinSurvey is an invented floating pin.
func pinSurvey() PinSurvey {
	two := func(a, b string) []tolerance.Bracket { return []tolerance.Bracket{at(a), at(b)} }
	return PinSurvey{Where: "piston 3", Fit: PinFloating,
		AtBosses:   []PinSection{{"front", two("21.994 ±0.001 mm", "21.992 ±0.001 mm")}, {"rear", two("21.995 ±0.001 mm", "21.993 ±0.001 mm")}},
		AtSmallEnd: []PinSection{{"middle", two("21.990 ±0.001 mm", "21.984 ±0.001 mm")}},
		Bosses:     []PinSection{{"front", two("22.004 ±0.001 mm", "22.006 ±0.001 mm")}, {"rear", two("22.003 ±0.001 mm", "22.009 ±0.001 mm")}},
		SmallEnd:   []PinSection{{"front edge", two("22.012 ±0.001 mm", "22.016 ±0.001 mm")}, {"rear edge", two("22.014 ±0.001 mm", "22.020 ±0.001 mm")}},
		NewPin:     at("[21.995 mm, 22 mm]"), NewBoss: at("[22.002 mm, 22.008 mm]"), NewSmallEnd: at("[22.010 mm, 22.016 mm]"),
		Between: at("70.30 ±0.02 mm"), Length: at("70.00 ±0.01 mm")}
}

func pinLimits() PinLimits {
	wear := func(b string) tolerance.Spec { return tolerance.Spec{Wear: band(b)} }
	return PinLimits{Size: wear("min 21.98 mm"), Ovality: wear("max 0.008 mm"), Taper: wear("max 0.01 mm"), Wear: wear("max 0.0254 mm"),
		BossOvality: wear("max 0.008 mm"), BossTaper: wear("max 0.008 mm"), BossWear: wear("max 0.011 mm"), BossClearance: tolerance.Spec{New: band("0.002–0.013 mm"), Wear: band("max 0.03 mm")},
		SmallEndOvality: wear("max 0.004 mm"), SmallEndTaper: wear("max 0.008 mm"), SmallEndWear: wear("max 0.011 mm"),
		SmallEndClearance:    tolerance.Spec{New: band("0.010–0.021 mm"), Wear: band("max 0.05 mm")},
		SmallEndInterference: tolerance.Spec{New: band("0.015–0.035 mm")}, EndFloat: tolerance.Spec{New: band("0.1–0.5 mm")}}
}

// By hand, measure by measure, in the order of the bench.
func TestPinSurvey_Inspect(t *testing.T) {
	s, l := pinSurvey(), pinLimits()
	got, err := s.Inspect(nil, &l)
	require.NoError(t, err)
	row := func(m PinMeasure, section int, least, greatest string, st tolerance.Standing) PinResult {
		return PinResult{Measure: m, Section: section, Known: true, Limited: true, Least: at(least), Greatest: at(greatest), Standing: st}
	}
	want := []PinResult{
		row(PinMeasureSize, -1, "21.984 ±0.001 mm", "21.995 ±0.001 mm", tolerance.Usable),
		row(PinMeasureOvality, 2, "0.006 ±0.002 mm", "0.006 ±0.002 mm", tolerance.Usable),
		row(PinMeasureTaper, -1, "0.009 ±0.002 mm", "0.009 ±0.002 mm", tolerance.CantTell),
		row(PinMeasureWear, -1, "[-0.001 mm, 0.006 mm]", "[0.010 mm, 0.017 mm]", tolerance.Usable),
		row(PinMeasureBossOvality, 1, "0.006 ±0.002 mm", "0.006 ±0.002 mm", tolerance.Usable),
		row(PinMeasureBossTaper, -1, "0.003 ±0.002 mm", "0.003 ±0.002 mm", tolerance.Usable),
		row(PinMeasureBossWear, -1, "[-0.006 mm, 0.002 mm]", "[0 mm, 0.008 mm]", tolerance.Usable),
		row(PinMeasureBossClearance, -1, "0.008 ±0.002 mm", "0.017 ±0.002 mm", tolerance.Usable),
		row(PinMeasureSmallEndOvality, 1, "0.006 ±0.002 mm", "0.006 ±0.002 mm", tolerance.CantTell),
		row(PinMeasureSmallEndTaper, -1, "0.004 ±0.002 mm", "0.004 ±0.002 mm", tolerance.Usable),
		row(PinMeasureSmallEndWear, -1, "[-0.005 mm, 0.003 mm]", "[0.003 mm, 0.011 mm]", tolerance.Usable),
		row(PinMeasureSmallEndClearance, -1, "0.022 ±0.002 mm", "0.036 ±0.002 mm", tolerance.Usable),
		row(PinMeasureEndFloat, -1, "0.30 ±0.03 mm", "0.30 ±0.03 mm", tolerance.AsNew),
	}
	require.Empty(t, cmp.Diff(want, got, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })))
	require.Equal(t, tolerance.CantTell, PinWorst(got))
	require.Equal(t, tolerance.ClearanceFit, got[7].Fit())
	require.Equal(t, tolerance.UnknownFit, got[0].Fit())
	text, err := json.Marshal(got)
	require.NoError(t, err)
	var back []PinResult
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, got, back)
	for i := range got {
		f, err := s.Finding(&l, got[i])
		require.NoError(t, err)
		require.Equal(t, got[i].Standing, f.Standing)
	}
	for i, place := range map[int]string{1: "piston 3, middle", 4: "piston 3, rear", 8: "piston 3, rear edge", 0: "piston 3"} {
		f, err := s.Finding(&l, got[i])
		require.NoError(t, err)
		require.Equal(t, place, f.Where)
	}
	f, err := s.Finding(&l, got[2])
	require.NoError(t, err)
	require.Contains(t, f.Settle, "0.001 mm from the limit")
	_, err = s.Finding(&PinLimits{Size: tolerance.Spec{New: band("min 2 mm"), Wear: band("max 1 mm")}}, got[0])
	require.Error(t, err)
	require.Empty(t, s.place(PinResult{Measure: PinMeasureBossOvality, Section: 9}))
}

// A pressed pin has interference, no clearance and no end float.
func TestPinSurvey_pressed(t *testing.T) {
	l := pinLimits()
	for hole, want := range map[string]struct {
		st  tolerance.Standing
		fit tolerance.FitKind
	}{
		"21.963 mm": {tolerance.CantTell, tolerance.InterferenceFit}, "21.966 ±0.001 mm": {tolerance.CantTell, tolerance.InterferenceFit},
		"21.955 mm": {tolerance.AsNew, tolerance.InterferenceFit}, "21.930 mm": {tolerance.OutsideNewBand, tolerance.InterferenceFit},
		"22.100 mm": {tolerance.OutsideNewBand, tolerance.ClearanceFit}, "21.982 mm": {tolerance.OutsideNewBand, tolerance.UnknownFit},
	} {
		s := pinSurvey()
		s.Fit, s.SmallEnd = PinPressed, pinSection(hole)
		s.AtSmallEnd = pinSection("21.980 ±0.004 mm")
		if hole == "21.955 mm" || hole == "21.930 mm" {
			s.AtSmallEnd = pinSection("21.980 mm")
		}
		got, err := s.Inspect(nil, &l)
		require.NoError(t, err)
		found := false
		for _, r := range got {
			require.NotEqual(t, PinMeasureSmallEndClearance, r.Measure)
			require.NotEqual(t, PinMeasureEndFloat, r.Measure)
			if r.Measure == PinMeasureSmallEndInterference {
				found = true
				require.Equal(t, want.st, r.Standing, hole)
				require.Equal(t, want.fit, r.Fit(), hole)
			}
		}
		require.True(t, found)
	}
}

// What has a limit and was not measured is no pass, and says what to measure.
func TestPinSurvey_missing(t *testing.T) {
	l := pinLimits()
	s := PinSurvey{Where: "piston 1", AtBosses: pinSection("22 mm")}
	got, err := s.Inspect(nil, &l)
	require.NoError(t, err)
	require.Len(t, got, pinMeasures)
	want := map[PinMeasure]string{
		PinMeasureOvality: "one reading tells no ovality: measure the pin", PinMeasureTaper: "one reading tells no taper: measure the pin",
		PinMeasureWear: "measure the pin, and look up", PinMeasureBossOvality: "the bosses in two directions", PinMeasureBossTaper: "the bosses at two places",
		PinMeasureBossWear: "measure the bosses", PinMeasureBossClearance: "where it lies in them", PinMeasureSmallEndOvality: "the small end in two",
		PinMeasureSmallEndTaper: "the small end at two", PinMeasureSmallEndWear: "measure the small end", PinMeasureSmallEndClearance: "where it lies in it",
		PinMeasureSmallEndInterference: "floats in the small end or is pressed", PinMeasureEndFloat: "between the seated circlips",
	}
	for _, r := range got {
		if r.Measure == PinMeasureSize {
			require.True(t, r.Known)
			continue
		}
		require.False(t, r.Known, r.Measure)
		require.Equal(t, tolerance.CantTell, r.Standing)
		require.Equal(t, tolerance.UnknownFit, r.Fit())
		f, err := s.Finding(&l, r)
		require.NoError(t, err)
		require.Contains(t, f.Settle, want[r.Measure])
	}
	s = PinSurvey{Fit: PinPressed, Between: at("70.2 mm"), Length: at("70 mm")}
	require.Equal(t, "measure the pin", s.missing(PinMeasureSize))
	require.Contains(t, s.missing(PinMeasureSmallEndInterference), "measure the small end")
	got, err = s.Inspect(nil, &PinLimits{})
	require.NoError(t, err)
	require.Empty(t, got)
	require.Equal(t, tolerance.CantTell, PinWorst(got))
	s = PinSurvey{AtSmallEnd: []PinSection{{Sizes: []tolerance.Bracket{at("22 mm")}}, {Sizes: []tolerance.Bracket{at("21.99 mm")}}}, NewPin: at("22 mm")}
	got, err = s.Inspect(nil, &PinLimits{})
	require.NoError(t, err)
	require.Len(t, got, 3, "size, taper, wear of the middle alone")
	require.True(t, (&PinLimits{}).Spec(99).IsZero())
}

func TestPinSurvey_refuses(t *testing.T) {
	l := pinLimits()
	for want, change := range map[string]func(*PinSurvey){
		"readings (none)": func(s *PinSurvey) { *s = PinSurvey{Where: "piston 3"} },
		"bosses, rear 1 diameters is not as many as at the first section, 2": func(s *PinSurvey) { s.Bosses[1].Sizes = s.Bosses[1].Sizes[:1] },
		"pin at the bosses, front 0 diameters":                               func(s *PinSurvey) { s.AtBosses[0].Sizes = nil },
		"small end, front edge, diameter 2 0 mm":                             func(s *PinSurvey) { s.SmallEnd[0].Sizes[1] = at("0 mm") },
		"pin at the small end, section 1, diameter 1 0.8661 mm":              func(s *PinSurvey) { s.AtSmallEnd = pinSection("0.8661 mm") },
		"new pin -1 mm": func(s *PinSurvey) { s.NewPin = at("-1 mm") },
		"new boss 0.866 mm is not near the sizes read": func(s *PinSurvey) { s.NewBoss = at("0.866 mm") },
		"pin length 2.756 mm":                          func(s *PinSurvey) { s.Length = at("2.756 mm") },
		"100 sections":                                 func(s *PinSurvey) { s.Bosses = make([]PinSection, 101) },
	} {
		s := pinSurvey()
		change(&s)
		got, err := s.Inspect(nil, &l)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
		require.ErrorContains(t, err, "piston 3, ")
		require.Empty(t, got)
		set, err := InspectPins(make([]PinResult, 1), []PinSurvey{pinSurvey(), s}, &l)
		require.Error(t, err)
		require.Len(t, set, 1)
	}
	l.Wear = tolerance.Spec{New: band("min 2 mm"), Wear: band("max 1 mm")}
	s := pinSurvey()
	_, err := s.Inspect(nil, &l)
	require.ErrorContains(t, err, "pin wear limits")
	_, err = InspectPins(nil, []PinSurvey{s}, &l)
	require.ErrorContains(t, err, "pin wear limits")
	_, err = InspectPins(nil, nil, &PinLimits{})
	require.ErrorContains(t, err, "pins (none)")
	s.Where, s.NewPin = "", at("-1 mm")
	_, err = s.Inspect(nil, &PinLimits{})
	require.ErrorContains(t, err, "piston: new pin")
}

func TestPinNames(t *testing.T) {
	for m := range PinMeasure(pinMeasures) {
		text, err := m.MarshalText()
		require.NoError(t, err)
		var back PinMeasure
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, m, back)
	}
	for _, f := range []PinFit{PinFitNotStated, PinFloating, PinPressed} {
		text, err := f.MarshalText()
		require.NoError(t, err)
		var back PinFit
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, f, back)
	}
	for _, f := range []PinMatch{PinMatchOpen, PinMatches, PinMismatch} {
		text, err := f.MarshalText()
		require.NoError(t, err)
		var back PinMatch
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, f, back)
	}
	var m PinMeasure
	require.ErrorIs(t, m.UnmarshalText([]byte("colour")), ErrInput)
}

func pinSet() []PinSurvey {
	set := make([]PinSurvey, 8)
	for i := range set {
		set[i] = pinSurvey()
	}
	return set
}

func TestInspectPins_allocatesNothing(t *testing.T) {
	set, l := pinSet(), pinLimits()
	dst, err := InspectPins(nil, set, &l)
	require.NoError(t, err)
	require.Len(t, dst, 104)
	require.Zero(t, testing.AllocsPerRun(100, func() { dst, _ = InspectPins(dst[:0], set, &l) }))
}

func BenchmarkInspectPins(b *testing.B) {
	b.Run("lib=tenthou/op=eight", func(b *testing.B) {
		b.ReportAllocs()
		set, l := pinSet(), pinLimits()
		var dst []PinResult
		for b.Loop() {
			var err error
			if dst, err = InspectPins(dst[:0], set, &l); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=clearance", func(b *testing.B) {
		b.ReportAllocs()
		x, y := mm("22.01"), mm("22")
		for b.Loop() {
			sink = PinClearance(x, y)
		}
	})
}

func FuzzPinSurvey(f *testing.F) {
	f.Add(int64(21_990_000_000), int64(21_985_000_000), int64(22_000_000_000), int64(70_300_000_000), int64(70_000_000_000), uint8(1))
	f.Add(int64(-1), int64(1<<62), int64(0), int64(-1<<63), int64(1), uint8(9))
	f.Fuzz(func(t *testing.T, a, b, hole, between, length int64, fit uint8) {
		x := func(v int64) tolerance.Bracket { return tolerance.Exactly(units.Length(v)) }
		section := func(v ...int64) []PinSection {
			var s PinSection
			for _, v := range v {
				s.Sizes = append(s.Sizes, x(v))
			}
			return []PinSection{s}
		}
		s := PinSurvey{Fit: PinFit(fit), AtBosses: section(a, b), AtSmallEnd: section(b), Bosses: section(hole, hole), SmallEnd: section(hole), NewPin: x(a), Between: x(between), Length: x(length)}
		l := pinLimits()
		got, err := s.Inspect(nil, &l)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		for _, r := range got {
			f, err := s.Finding(&l, r)
			require.NoError(t, err)
			require.Equal(t, r.Standing, f.Standing)
		}
	})
}
