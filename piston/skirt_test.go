package piston

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
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

// Each inverse undoes its formula to the quantum, over random sizes, and the
// growth of a clearance is the wear of both parts.
func TestSkirt_inverses(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 2000 {
		a, b, c, d := units.Length(r.Int64N(1e11)), units.Length(r.Int64N(1e11)), units.Length(r.Int64N(1e9)), units.Length(r.Int64N(1e9))
		x := SkirtClearance(a, b)
		require.Equal(t, b, SkirtSize(a, x))
		require.Equal(t, a, SkirtBore(b, x))
		require.Equal(t, SkirtClearance(a+c, b-d), SkirtClearanceWorn(x, c, d))
		require.Equal(t, a, SkirtLower(b, SkirtTaper(a, b)))
		require.Equal(t, -SkirtTaper(a, b), SkirtTaper(b, a))
		require.Equal(t, b, SkirtAlong(a, SkirtOvality(a, b)))
		require.Equal(t, c, SkirtCamDrop(SkirtOvalityOfDrop(c)))
		require.Equal(t, b, SkirtNewSize(a, SkirtWear(a, b)))
		require.Equal(t, b, SkirtNewSize(a, SkirtCollapse(a, b)))
	}
}

// Brackets hold each case; out of range stays; nothing is allocated.
func TestSkirt_brackets(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 1))
	draw := func() (tolerance.Bracket, units.Length) {
		a, w := r.Int64N(1e11), r.Int64N(1e6)
		return ends(units.Length(a), tolerance.Closed, units.Length(a+w), tolerance.Closed), units.Length(a + r.Int64N(w+1))
	}
	for range 1000 {
		a, x := draw()
		b, y := draw()
		c, z := draw()
		require.True(t, SkirtClearanceWorn(SkirtClearance(a, b), c, b).Contains(SkirtClearanceWorn(SkirtClearance(x, y), z, y)))
		require.True(t, SkirtTaper(a, b).Contains(SkirtTaper(x, y)))
		require.True(t, SkirtCamDrop(SkirtOvality(a, b)).Contains(SkirtCamDrop(SkirtOvality(x, y))))
		require.True(t, SkirtCollapse(a, b).Contains(SkirtCollapse(x, y)))
	}
	bad, one := units.OutOfRange[units.Length](), mm("1")
	for name, got := range map[string]units.Length{"clearance": SkirtClearance(bad, one), "size": SkirtSize(one, bad), "bore": SkirtBore(bad, one),
		"worn": SkirtClearanceWorn(one, bad, one), "taper": SkirtTaper(one, bad), "ovality": SkirtOvality(bad, one), "wear": SkirtWear(bad, one),
		"collapse": SkirtCollapse(one, bad), "drop": SkirtCamDrop(bad), "new": SkirtNewSize(bad, one), "pull": PullClearance(bad, one), "strip": PullStrip(one, bad), "allowance": PullAllowance(bad, one)} {
		require.False(t, got.InRange(), name)
	}
	require.Zero(t, testing.AllocsPerRun(100, func() {
		sink = SkirtClearanceWorn(SkirtClearance(one, one), one, one) + SkirtCamDrop(SkirtOvality(one, one)) + SkirtTaper(one, one) + SkirtCollapse(one, one)
	}))
}

// The same formula writes its working and carries uncertainty.
func TestSkirt_otherReadings(t *testing.T) {
	c := SkirtClearance(working.Given("bore", "D", mm("86.012")), working.Given("skirt", "d", mm("85.960"))).Named("clearance", "c")
	s, err := working.Solve(c, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "86.012 mm − 85.960 mm\n  = 0.052 mm")

	bore, err := uncertainty.Normal("bore", mm("86.012"), 3*units.Micrometre)
	require.NoError(t, err)
	skirt, err := uncertainty.Normal("skirt", mm("85.960"), 4*units.Micrometre)
	require.NoError(t, err)
	u := SkirtClearance(bore, skirt)
	require.Equal(t, mm("0.052"), u.Value())
	require.Equal(t, 5*units.Micrometre, u.StandardUncertainty(), "3 and 4 make 5")
}

func TestSkirtClearances(t *testing.T) {
	c, err := MeasureSkirtClearance(at("86.012 ±0.002 mm"), at("85.960 ±0.001 mm"))
	require.NoError(t, err)
	require.Equal(t, at("[0.049 mm, 0.055 mm]"), c)
	// Errors that reach past zero: what goes in has no less than nothing.
	c, err = MeasureSkirtClearance(at("86.000 ±0.002 mm"), at("85.999 ±0.002 mm"))
	require.NoError(t, err)
	require.Equal(t, at("[0 mm, 0.005 mm]"), c)
	_, err = MeasureSkirtClearance(at("86.00 mm"), at("86.02 mm"))
	require.EqualError(t, err, "piston: skirt 86.02 mm is not at most as large as the bore, 86 mm: an interference of 0.02 mm")
	require.ErrorIs(t, err, ErrInput)
	for _, bad := range []struct{ bore, skirt, want string }{
		{"0 mm", "86 mm", "bore 0 mm is not above 0 mm"},
		{"86 mm", "-86 mm", "skirt -86 mm is not above 0 mm"},
		{"86 mm", "3.38 mm", "another unit, or a digit slipped"},
		{"3.38 mm", "86 mm", "another unit, or a digit slipped"},
		{"86 mm", "(−∞, 86 mm]", "skirt (−∞, 86 mm] is not above 0 mm"},
	} {
		_, err := MeasureSkirtClearance(at(bad.bore), at(bad.skirt))
		require.ErrorContains(t, err, bad.want)
	}

	least, greatest, err := SkirtExtremes([]tolerance.Bracket{at("86.010 ±0.002 mm"), at("86.030 ±0.002 mm")}, []tolerance.Bracket{at("85.960 ±0.001 mm"), at("85.950 ±0.001 mm")})
	require.NoError(t, err)
	require.Equal(t, at("[0.047 mm, 0.053 mm]"), least, "least bore less greatest skirt")
	require.Equal(t, at("[0.077 mm, 0.083 mm]"), greatest)
	one := []tolerance.Bracket{at("86 mm")}
	for want, call := range map[string][2][]tolerance.Bracket{
		"bore (none)": {nil, one}, "skirt (none)": {one, nil}, "slipped": {one, {at("3.4 mm")}}, "bore [3.4": {{at("[3.4 mm, ∞)"), at("86 mm")}, one},
	} {
		_, _, err := SkirtExtremes(call[0], call[1])
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, strings.ReplaceAll(want, "bore [3.4", "another unit"))
	}
	_, _, err = SkirtExtremes([]tolerance.Bracket{at("86 mm")}, []tolerance.Bracket{at("-1 mm"), at("86 mm")})
	require.ErrorContains(t, err, "skirt")

	all, err := SkirtClearances(nil, []tolerance.Bracket{at("86.01 mm"), at("86.02 mm")}, []tolerance.Bracket{at("85.96 mm"), at("85.96 mm")})
	require.NoError(t, err)
	require.Equal(t, []tolerance.Bracket{at("0.05 mm"), at("0.06 mm")}, all)
	_, err = SkirtClearances(nil, all, all[:1])
	require.EqualError(t, err, "piston: skirts 1 is not as many as there are bores, 2")
	_, err = SkirtClearances(nil, []tolerance.Bracket{at("86.01 mm"), at("86.02 mm")}, []tolerance.Bracket{at("85.96 mm"), at("86.03 mm")})
	require.ErrorContains(t, err, "piston 2, skirt 86.03 mm")
}

// skirtSurvey is an invented piston.
func skirtSurvey() SkirtSurvey {
	return SkirtSurvey{Where: "piston 3", MeasuringHeight: 18 * units.Millimetre, Stations: []SkirtStation{
		{Height: 5 * units.Millimetre, Across: at("85.950 ±0.002 mm"), New: at("[85.968 mm, 85.980 mm]")},
		{Height: 18 * units.Millimetre, Across: at("85.952 ±0.002 mm"), Along: at("85.720 ±0.002 mm"), New: at("[85.960 mm, 85.972 mm]")},
		{Height: 40 * units.Millimetre, Across: at("85.930 ±0.002 mm")},
	}, Bores: []tolerance.Bracket{at("86.012 ±0.003 mm"), at("86.034 ±0.003 mm")}, Pulled: []tolerance.Bracket{at("[0.06 mm, 0.08 mm]"), at("[0.07 mm, ∞)")}, PullRule: "6 lb"}
}

func skirtLimits() SkirtLimits {
	return SkirtLimits{Size: tolerance.Spec{New: band("85.960–85.972 mm"), Wear: band("min 85.925 mm")},
		Ovality: tolerance.Spec{New: band("0.20–0.28 mm")}, Taper: tolerance.Spec{New: band("0.01–0.03 mm")}, Wear: tolerance.Spec{Wear: band("max 0.043 mm")},
		Collapse: tolerance.Spec{Wear: band("max 0.020 mm")}, Clearance: tolerance.Spec{New: band("0.040–0.065 mm"), Wear: band("max 0.12 mm")},
		Pulled: tolerance.Spec{New: band("0.0045–0.0083 in"), Wear: band("max 0.0120 in")}}
}

// By hand, measure by measure, in the order of the bench.
func TestSkirtSurvey_Inspect(t *testing.T) {
	s, l := skirtSurvey(), skirtLimits()
	got, err := s.Inspect(nil, &l)
	require.NoError(t, err)
	both := func(m SkirtMeasure, station int, x string, st tolerance.Standing) SkirtResult {
		return SkirtResult{Measure: m, Station: station, Known: true, Limited: true, Least: at(x), Greatest: at(x), Standing: st}
	}
	clearance := both(SkirtMeasureClearance, 1, "[0.055 mm, 0.065 mm]", tolerance.Usable)
	clearance.Greatest = at("[0.077 mm, 0.087 mm]")
	pulled := both(SkirtMeasurePulled, -1, "[0.06 mm, 0.08 mm]", tolerance.CantTell)
	pulled.Greatest = at("[0.07 mm, ∞)")
	want := []SkirtResult{
		both(SkirtMeasureSize, 1, "85.952 ±0.002 mm", tolerance.Usable),
		both(SkirtMeasureOvality, 1, "[0.228 mm, 0.236 mm]", tolerance.AsNew),
		both(SkirtMeasureTaper, 0, "[0.016 mm, 0.024 mm]", tolerance.AsNew),
		both(SkirtMeasureWear, 1, "[0.006 mm, 0.022 mm]", tolerance.Usable),
		both(SkirtMeasureCollapse, 0, "[0.016 mm, 0.032 mm]", tolerance.CantTell),
		clearance, pulled,
	}
	require.Empty(t, cmp.Diff(want, got, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })))
	require.Equal(t, tolerance.CantTell, SkirtWorst(got))
	require.Equal(t, tolerance.ClearanceFit, got[5].Fit())
	require.Equal(t, tolerance.UnknownFit, got[0].Fit())

	text, err := json.Marshal(got)
	require.NoError(t, err)
	var back []SkirtResult
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, got, back)

	f, err := s.Finding(&l, got[4])
	require.NoError(t, err)
	require.Equal(t, "piston 3, 5 mm up the skirt", f.Where)
	require.Equal(t, "find out whether it is more than 0.02 mm: it reads 0.004 mm from the limit and is known to ±0.008 mm; measure again, to less than ±0.004 mm with all readings in it together", f.Settle)
	f, err = s.Finding(&l, got[6])
	require.NoError(t, err)
	require.Equal(t, "piston clearance by pull test (6 lb)", f.Measure)
	require.Contains(t, f.Settle, "pull a strip nearer to it")
	for i := range got {
		f, err := s.Finding(&l, got[i])
		require.NoError(t, err)
		require.Equal(t, got[i].Standing, f.Standing)
	}
}

// What has a limit and was not measured is no pass, and says what to measure.
func TestSkirtSurvey_missing(t *testing.T) {
	l := skirtLimits()
	for _, c := range []struct {
		change func(*SkirtSurvey)
		m      SkirtMeasure
		want   string
	}{
		{func(s *SkirtSurvey) { s.MeasuringHeight = 20 * units.Millimetre }, SkirtMeasureSize, "at the measuring height, 20 mm up"},
		{func(s *SkirtSurvey) { s.Stations = nil }, SkirtMeasureClearance, "at the measuring height"},
		{func(s *SkirtSurvey) { s.Stations[1].Along = tolerance.Bracket{} }, SkirtMeasureOvality, "along the gudgeon pin too"},
		{func(s *SkirtSurvey) { s.Stations = s.Stations[1:2] }, SkirtMeasureTaper, "one reading tells no taper"},
		{func(s *SkirtSurvey) { s.Stations[1].New = tolerance.Bracket{} }, SkirtMeasureWear, "look up the size when new"},
		{func(s *SkirtSurvey) { s.Stations[0].New, s.Stations[1].New = tolerance.Bracket{}, tolerance.Bracket{} }, SkirtMeasureCollapse, "near the lower edge"},
		{func(s *SkirtSurvey) { s.Bores = nil }, SkirtMeasureClearance, "measure the bore"},
		{func(s *SkirtSurvey) { s.Pulled = nil }, SkirtMeasurePulled, "by a rule that is named"},
	} {
		s := skirtSurvey()
		c.change(&s)
		got, err := s.Inspect(nil, &l)
		require.NoError(t, err)
		found := false
		for _, r := range got {
			if r.Measure != c.m {
				continue
			}
			found = true
			require.False(t, r.Known)
			require.Equal(t, tolerance.CantTell, r.Standing)
			require.Equal(t, tolerance.UnknownFit, r.Fit())
			f, err := s.Finding(&l, r)
			require.NoError(t, err)
			require.Contains(t, f.Settle, c.want)
		}
		require.True(t, found, c.want)
	}
	// Without a limit it is left out; a taper needs sizes at two heights.
	s := SkirtSurvey{MeasuringHeight: 18 * units.Millimetre, Stations: []SkirtStation{{Height: 5 * units.Millimetre}, {Height: 18 * units.Millimetre, Across: at("85 mm")}}}
	got, err := s.Inspect(nil, &SkirtLimits{})
	require.NoError(t, err)
	require.Len(t, got, 1)
	require.Equal(t, tolerance.CantTell, SkirtWorst(got), "no limit at all")
	require.Empty(t, s.missing(SkirtMeasure(99)))
	require.True(t, (&SkirtLimits{}).Spec(99).IsZero())
}

// An interference and a near contact are named, never passed.
func TestSkirtSurvey_contact(t *testing.T) {
	l := SkirtLimits{Clearance: tolerance.Spec{Wear: band("max 0.12 mm")}}
	for bore, want := range map[string]tolerance.FitKind{"85.900 mm": tolerance.InterferenceFit, "85.953 ±0.003 mm": tolerance.UnknownFit, "86 mm": tolerance.ClearanceFit} {
		s := skirtSurvey()
		s.Bores = []tolerance.Bracket{at(bore)}
		got, err := s.Inspect(nil, &l)
		require.NoError(t, err)
		for _, r := range got {
			if r.Measure == SkirtMeasureClearance {
				require.Equal(t, want, r.Fit(), bore)
			}
		}
	}
	open := SkirtResult{Measure: SkirtMeasureClearance, Known: true, Least: at("(−∞, 0.1 mm]")}
	require.Equal(t, tolerance.UnknownFit, open.Fit())
}

func TestSkirtSurvey_refuses(t *testing.T) {
	l := skirtLimits()
	for want, change := range map[string]func(*SkirtSurvey){
		"readings (none)": func(s *SkirtSurvey) { *s = SkirtSurvey{Where: "piston 3"} },
		"station 2, height 5 mm is not above the height of the station before it": func(s *SkirtSurvey) { s.Stations[1].Height = 5 * units.Millimetre },
		"station 1, height":                                     func(s *SkirtSurvey) { s.Stations[0].Height = units.OutOfRange[units.Length]() },
		"station 2, along the pin 3.3748":                       func(s *SkirtSurvey) { s.Stations[1].Along = at("3.3748 mm") },
		"station 2, across the thrust faces -1 mm is not above": func(s *SkirtSurvey) { s.Stations[1].Across = at("-1 mm") },
		"bore 2 0 mm": func(s *SkirtSurvey) { s.Bores[1] = at("0 mm") },
		"pulled clearance 1 -0.01 mm is not 0 mm or more": func(s *SkirtSurvey) { s.Pulled[0] = at("-0.01 mm") },
		"piston 3, skirt": func(s *SkirtSurvey) { s.Bores[0], s.Bores[1] = at("3.386 mm"), at("3.386 mm") },
	} {
		s := skirtSurvey()
		change(&s)
		got, err := s.Inspect(nil, &l)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
		require.Empty(t, got)
		require.True(t, strings.HasPrefix(err.Error(), "piston: piston 3, "), err)
		set, err := InspectSkirts(make([]SkirtResult, 1), []SkirtSurvey{skirtSurvey(), s}, &l)
		require.Error(t, err)
		require.Len(t, set, 1)
	}
	l.Wear = tolerance.Spec{New: band("min 2 mm"), Wear: band("max 1 mm")}
	s := skirtSurvey()
	_, err := s.Inspect(nil, &l)
	require.ErrorContains(t, err, "skirt wear limits")
	_, err = InspectSkirts(nil, []SkirtSurvey{s}, &l)
	require.ErrorContains(t, err, "skirt wear limits")
	_, err = InspectSkirts(nil, nil, &SkirtLimits{})
	require.ErrorContains(t, err, "pistons (none)")
	_, err = s.Finding(&l, SkirtResult{Measure: SkirtMeasureWear, Known: true, Least: at("1 mm"), Greatest: at("1 mm")})
	require.Error(t, err)
	s.Where, s.Stations[0].Across = strings.Repeat("x", 100), at("-1 mm")
	_, err = s.Inspect(nil, &SkirtLimits{})
	require.ErrorContains(t, err, strings.Repeat("x", 64)+"…")
	s.Where = ""
	_, err = s.Inspect(nil, &SkirtLimits{})
	require.ErrorContains(t, err, "piston: station 1")
}

// The published limits of a fit, and how clearances stand by them.
func TestSkirt_publishedFits(t *testing.T) {
	l := skirtLimits()
	vectors.Load(t, "published/piston_skirt_fits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := SkirtSurvey{Pulled: []tolerance.Bracket{at(c.Text("clearance"))}}
		got, err := s.Inspect(nil, &SkirtLimits{Pulled: l.Pulled})
		require.NoError(t, err)
		require.Equal(t, c.Text("standing"), got[0].Standing.String())
	})
	// The published rate of wear, 0.0005 in for each inch of diameter.
	p, err := wearrate.Published(wearrate.TM10393064714P)
	require.NoError(t, err)
	spec, err := p.Spec(wearrate.PistonWear, units.MustParseLength("4 in"), tolerance.Band{})
	require.NoError(t, err)
	for size, want := range map[string]tolerance.Standing{"3.9943 in": tolerance.Usable, "3.9942 in": tolerance.PastWearLimit} {
		s := SkirtSurvey{MeasuringHeight: 0, Stations: []SkirtStation{{Across: at(size), New: at("3.9963 in")}}}
		got, err := s.Inspect(nil, &SkirtLimits{Wear: spec})
		require.NoError(t, err)
		require.Equal(t, want, SkirtWorst(got))
	}
}

func TestSkirtNames(t *testing.T) {
	for m := range SkirtMeasure(skirtMeasures) {
		text, err := m.MarshalText()
		require.NoError(t, err)
		var back SkirtMeasure
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, m, back)
	}
	var m SkirtMeasure
	require.ErrorIs(t, m.UnmarshalText([]byte("height")), ErrInput)
}

// Readings on the limit itself, and those with one end, settle nothing closer.
func TestSettleBy(t *testing.T) {
	for reading, want := range map[string]string{
		"0.020 ±0.001 mm": "find out whether it is more than 0.02 mm; it reads on the limit itself, so only a finer instrument, or the manual, can tell",
		"[0.010 mm, ∞)":   "find out whether it is more than 0.02 mm",
	} {
		f, err := tolerance.Assess("x", "", tolerance.Spec{Wear: band("max 0.02 mm")}, at(reading))
		require.NoError(t, err)
		settleBy(&f)
		require.Equal(t, want, f.Settle)
	}
	f, err := tolerance.Assess("x", "", tolerance.Spec{New: band("0.02–0.03 mm")}, at("0.019 ±0.002 mm"), at("0.025 mm"))
	require.NoError(t, err)
	settleBy(&f)
	require.Contains(t, f.Settle, "0.001 mm from the limit")
}
