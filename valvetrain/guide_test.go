package valvetrain

import (
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// Rules of service manuals, each on one case, in inches.
func TestHeadRules(t *testing.T) {
	vectors.Load(t, "published/valvetrain_heads.txt").Each(t, func(t *testing.T, c vectors.Case) {
		in := func(col string) units.Length { return stemLen(c.Text(col) + " in") }
		given := in("given")
		var other, got units.Length
		if c.Has("other") {
			other = in("other")
		}
		switch c.Choice("rule", "seat width at most 115 per cent of new", "free length at least 97 per cent of new", "depth after less before",
			"insert less counterbore", "half of a new valve's margin", "free 2.250, load at 1.938 gives a rate in lbf/in", "readings 0, +0.003, -0.002, +0.003 give a run-out") {
		case "seat width at most 115 per cent of new":
			got = SeatWidthLimit(given)
		case "free length at least 97 per cent of new":
			got = SpringFreeLimit(given)
			require.Less(t, stemLen("1.939 in"), got, "3.05 per cent short: renewed")
			require.Equal(t, stemLen("0.061 in"), SpringShortening(given, stemLen("1.939 in")))
		case "depth after less before":
			got = SeatRecession(given, other)
		case "insert less counterbore":
			got = SeatInterference(given, other)
			require.Equal(t, other, CounterboreFor(given, got))
			require.Equal(t, given, InsertFor(other, got))
			require.Equal(t, got, GuideInterference(given, other))
			require.Equal(t, other, HeadBoreFor(given, got))
			require.Equal(t, given, GuideOutsideFor(other, got))
		case "half of a new valve's margin":
			got = ValveMarginHalf(given)
		case "free 2.250, load at 1.938 gives a rate in lbf/in":
			type f = tolerance.Float
			k := SpringRateOfLoads(f(0), f(2.250), f(c.Float("given")), f(c.Float("other")))
			c.Near("expected", float64(k))
			return
		default:
			got = ValveRunOut(0, given, other, given)
			require.Equal(t, got, SeatRunOut(0, given, other, given))
			require.Equal(t, got/2, ValveBend(got))
		}
		require.Equal(t, in("expected"), got)
	})
}

func TestGuideInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	n := func() units.Length { return units.Length(r.Int64N(1e11)) }
	for range 1000 {
		a, b, c, d := n(), n(), n(), n()
		require.Equal(t, a, GuideBoreFor(b, GuideClearance(a, b)))
		require.Equal(t, b, StemFor(a, GuideClearance(a, b)))
		left := RetainerClearance(a, b, c, d)
		require.Equal(t, b, RetainerLift(a, left, c, d))
		require.Equal(t, c, GuideProtrusionFor(a, b, left, d))
		require.Equal(t, GuideClearance(a, b), GuideWear(a, c)+StemWear(b, d)+GuideClearance(c, d), "wear of both adds to the clearance")
		require.Equal(t, b, ValveMarginFor(a, ValveGrindLeft(b, a)))
		require.Equal(t, a-b, ValveMarginAfter(a, b))
		require.Equal(t, a-b, ValveShortening(a, b))
		require.Equal(t, a-b, ValveTipLeft(a, b))
		require.Equal(t, a-b, ValveTipWear(a, b))
		require.Equal(t, a-b, GuideBell(a, b))
		require.Equal(t, max(a, b, c)-min(a, b, c), StemTaper(a, b, c))
		require.Equal(t, max(a, b, c)-min(a, b, c), GuideOutOfRound(a, b, c))
	}
}

func surveyed() GuideSurvey {
	return GuideSurvey{Where: "exhaust 3", Ways: []string{"along", "across"},
		Guide: []GuideStation{
			{"valve end", 0, []tolerance.Bracket{stemAt("8.06 ±0.002 mm"), stemAt("8.09 ±0.002 mm")}},
			{"middle", 25 * units.Millimetre, []tolerance.Bracket{stemAt("8.02 ±0.002 mm"), stemAt("8.03 ±0.002 mm")}},
			{"spring end", 50 * units.Millimetre, []tolerance.Bracket{stemAt("8.04 ±0.002 mm"), stemAt("8.05 ±0.002 mm")}},
		},
		Stem: []StemStation{
			{"top", []tolerance.Bracket{stemAt("7.97 ±0.001 mm")}},
			{"foot", []tolerance.Bracket{stemAt("7.95 ±0.001 mm")}},
		},
		Unworn:          stemAt("7.98 ±0.001 mm"),
		ClearanceLimits: stemWorn("max 0.10 mm"), BoreLimits: stemWorn("max 8.06 mm"), StemLimits: stemWorn("min 7.94 mm"),
		BellLimits: stemWorn("max 0.04 mm"), RoundLimits: stemWorn("max 0.02 mm"), TaperLimits: stemWorn("max 0.03 mm"),
	}
}

// By hand: loosest 8.092 − 7.949 = 0.143, tightest 8.018 − 7.971 = 0.047; bell
// across 8.09 − 8.03 = 0.06 ± 0.004; out-of-round 0.03 ± 0.004; taper 0.02 ±
// 0.002; the stem has lost 0.03 ± 0.002.
func TestGuideSurvey(t *testing.T) {
	r, err := surveyed().Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("0.049 ±0.003 mm").String(), stemAt("[0.046 mm, 0.052 mm]").String())
	require.Equal(t, stemAt("[0.047 mm, 0.053 mm]"), r.Clearance.Least)
	require.Equal(t, stemAt("[0.137 mm, 0.143 mm]"), r.Clearance.Greatest)
	require.Equal(t, tolerance.PastWearLimit, r.Clearance.Standing)
	require.Equal(t, 0, r.Worst)
	require.Equal(t, stemAt("[0.056 mm, 0.064 mm]"), r.Bell.Greatest)
	require.Equal(t, tolerance.PastWearLimit, r.Bell.Standing)
	require.Equal(t, stemAt("[0.026 mm, 0.034 mm]"), r.OutOfRound.Greatest)
	require.Equal(t, stemAt("[0.018 mm, 0.022 mm]"), r.Taper.Greatest)
	require.Equal(t, tolerance.Usable, r.Stem.Standing)
	require.Equal(t, stemAt("[0.028 mm, 0.032 mm]"), r.StemWear)
	require.Empty(t, r.Notes)
	require.Contains(t, r.Next, "recondition the guide")
	want := []RockingStation{{0, stemAt("[0.087 mm, 0.143 mm]")}, {25 * units.Millimetre, stemAt("[0.047 mm, 0.083 mm]")}, {50 * units.Millimetre, stemAt("[0.067 mm, 0.103 mm]")}}
	require.Empty(t, cmp.Diff(want, r.Stations, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })))
	// What rocking would show from the survey.
	travel, err := RockingStations(10*units.Millimetre, r.Stations...)
	require.NoError(t, err)
	require.True(t, travel.InRange())

	// A worn stem is seen first.
	worn := surveyed()
	worn.StemLimits = stemWorn("min 7.96 mm")
	r, err = worn.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "renew the valve")

	// Little measured: the rest is not known, and said so.
	one := GuideSurvey{Where: "inlet 1", Ways: []string{"along"}, Guide: []GuideStation{{"middle", 0, []tolerance.Bracket{stemAt("8.02 mm")}}},
		Stem: []StemStation{{"foot", []tolerance.Bracket{stemAt("7.98 ±0.03 mm")}}}, ClearanceLimits: stemNew("0.02–0.06 mm")}
	r, err = one.Inspect()
	require.NoError(t, err)
	require.Len(t, r.Notes, 3)
	require.Equal(t, tolerance.CantTell, r.Clearance.Standing)
	require.Equal(t, r.Clearance.Settle, r.Next)
	one.ClearanceLimits = tolerance.Spec{}
	one.Stem[0].Stems[0] = stemAt("8.01 ±0.02 mm")
	r, err = one.Inspect()
	require.NoError(t, err)
	lo, _ := r.Clearance.Least.Lower()
	require.Zero(t, lo, "a stem that goes in has no less than nothing")
	one.ClearanceLimits = stemNew("0–0.06 mm")
	r, err = one.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "none for clearance")
}

func TestGuideSurveyRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*GuideSurvey)
		says  string
	}{
		{func(s *GuideSurvey) { s.Ways = nil }, "ways across"},
		{func(s *GuideSurvey) { s.Guide = nil }, "stations of the guide"},
		{func(s *GuideSurvey) { s.Stem = nil }, "places of the stem"},
		{func(s *GuideSurvey) { s.Guide[1].Depth = 0 }, "deeper than the station before"},
		{func(s *GuideSurvey) { s.Guide[0].Depth = -1 }, "depth"},
		{func(s *GuideSurvey) { s.Guide[1].Bores = s.Guide[1].Bores[:1] }, "one for each of the 2 ways"},
		{func(s *GuideSurvey) { s.Guide[1].Bores[0] = stemAt("[8 mm, ∞)") }, "guide, middle, along"},
		{func(s *GuideSurvey) { s.Stem[1].Stems = nil }, "as many as at the other places"},
		{func(s *GuideSurvey) { s.Stem[1].Stems[0] = stemAt("-8 mm") }, "stem, foot"},
		{func(s *GuideSurvey) { s.Stem[0].Stems[0] = stemAt("8.5 mm"); s.Stem[1].Stems[0] = stemAt("8.5 mm") }, "below the guide's bore"},
		{func(s *GuideSurvey) { s.Stem[1].Stems[0] = stemAt("8.5 mm") }, "stem diameter 8.5 mm is not below the guide's bore where it is widest"},
		{func(s *GuideSurvey) { s.Unworn = stemAt("-1 mm") }, "unworn stem"},
		{func(s *GuideSurvey) { s.BellLimits.New = tolerance.MustParseBand("max 0.05 mm") }, "limits of the bell-mouth"},
	} {
		s := surveyed()
		c.spoil(&s)
		_, err := s.Inspect()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

func guideStock() []GuideOption {
	return []GuideOption{
		{Name: "as it is", Way: KeepGuide},
		{Name: "new guide", Way: NewGuide, Finished: stemAt("[8.010 mm, 8.020 mm]"), Stem: stemAt("[7.970 mm, 7.980 mm]")},
		{Name: "+0.20", Way: OversizeStem, Stem: stemAt("[8.170 mm, 8.180 mm]"), Opened: stemAt("[8.210 mm, 8.220 mm]")},
		{Name: "+0.10", Way: OversizeStem, Stem: stemAt("[8.070 mm, 8.080 mm]"), Opened: stemAt("[8.110 mm, 8.120 mm]")},
		{Name: "liner", Way: GuideLiner, Opened: stemAt("[8.5 mm, 8.52 mm]"), Finished: stemAt("[8.010 mm, 8.020 mm]"), Stem: stemAt("[7.970 mm, 7.980 mm]")},
		{Name: "new valve", Way: NewStem, Stem: stemAt("[7.970 mm, 7.980 mm]")},
	}
}

func guideWorn() GuideNeed {
	return GuideNeed{Where: "exhaust 3", Bores: []tolerance.Bracket{stemAt("8.06 ±0.002 mm"), stemAt("8.09 ±0.002 mm")}, Stem: stemAt("7.95 ±0.001 mm"),
		Clearance: tolerance.MustParseBand("0.03–0.06 mm"), LeastCut: stemLen("0.01 mm"), Outside: 13 * units.Millimetre, LeastWall: 2 * units.Millimetre}
}

// By hand: the widest place is 8.092, with the least cut 8.102; +0.10 opens to
// 8.110 at the least and gives 8.110 − 8.080 = 0.030 to 8.120 − 8.070 = 0.050.
func TestGuideRepair(t *testing.T) {
	c, err := ChooseGuideRepair(guideWorn(), guideStock())
	require.NoError(t, err)
	require.Equal(t, 3, c.Chosen)
	require.Equal(t, stemAt("[0.030 mm, 0.050 mm]"), c.Trials[3].Clearance)
	require.Empty(t, c.Trials[3].Why)
	require.Contains(t, c.Next, "+0.10")
	require.Contains(t, c.Trials[0].Why, "above the band")

	// Worn past the +0.10 reamer: the next. Widened more, a liner, then a guide.
	for _, w := range []struct {
		widest, least string
		chosen        int
	}{{"8.105 mm", "2 mm", 2}, {"8.25 mm", "2 mm", 4}, {"8.25 mm", "3 mm", 1}} {
		n := guideWorn()
		n.Bores[1], n.LeastWall = stemAt(w.widest), stemLen(w.least)
		c, err := ChooseGuideRepair(n, guideStock())
		require.NoError(t, err)
		require.Equal(t, w.chosen, c.Chosen, w)
	}

	// Only the stem is worn.
	n := guideWorn()
	n.Bores = []tolerance.Bracket{stemAt("8.02 mm"), stemAt("8.015 mm")}
	c, err = ChooseGuideRepair(n, guideStock())
	require.NoError(t, err)
	require.Equal(t, 5, c.Chosen)
	// Nothing is worn.
	n.Stem = stemAt("7.975 ±0.001 mm")
	c, err = ChooseGuideRepair(n, guideStock())
	require.NoError(t, err)
	require.Equal(t, 0, c.Chosen)
	require.Contains(t, c.Next, "nothing")

	// What may serve isn't chosen.
	n = guideWorn()
	c, err = ChooseGuideRepair(n, []GuideOption{{Name: "+0.10", Way: OversizeStem, Stem: stemAt("[8.05 mm, 8.08 mm]"), Opened: stemAt("[8.110 mm, 8.120 mm]")}})
	require.NoError(t, err)
	require.Equal(t, -1, c.Chosen)
	require.Contains(t, c.Next, "measure the stems")
	c, err = ChooseGuideRepair(n, guideStock()[:1])
	require.NoError(t, err)
	require.Contains(t, c.Next, "none in stock")
	// Whether it cleans up, and whether the wall is left, may not be told.
	c, err = ChooseGuideRepair(n, []GuideOption{
		{Name: "a", Way: OversizeStem, Stem: stemAt("8.05 mm"), Opened: stemAt("[8.095 mm, 8.105 mm]")},
		{Name: "b", Way: GuideLiner, Opened: stemAt("[8.98 mm, 9.02 mm]"), Finished: stemAt("7.99 mm")},
		{Name: "c", Way: OversizeStem, Stem: stemAt("8.0 mm"), Opened: stemAt("8.05 mm")},
		{Name: "d", Way: GuideLiner, Opened: stemAt("9.5 mm"), Finished: stemAt("7.99 mm")},
		{Name: "e", Way: NewGuide, Finished: stemAt("7.96 mm")},
	})
	require.NoError(t, err)
	require.Equal(t, -1, c.Chosen)
	for i, why := range []string{"cleans up the guide isn't told", "wall is left isn't told", "doesn't clean up", "too little of the guide's wall", "below the band"} {
		require.Contains(t, c.Trials[i].Why, why)
	}
	require.Equal(t, tolerance.Above, guideWorst(tolerance.Below, tolerance.Above))
	require.Equal(t, tolerance.Below, guideWorst(tolerance.Below, tolerance.Undecided))
	require.Equal(t, tolerance.Undecided, guideWorst(tolerance.Within, tolerance.Undecided))
}

func TestGuideRepairRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*GuideNeed, *GuideOption)
		says  string
	}{
		{func(n *GuideNeed, o *GuideOption) { n.Bores = nil }, "guide bores"},
		{func(n *GuideNeed, o *GuideOption) { n.Bores[0] = stemAt("0 mm") }, "guide bore"},
		{func(n *GuideNeed, o *GuideOption) { n.Stem = tolerance.Bracket{} }, "stem diameter"},
		{func(n *GuideNeed, o *GuideOption) { n.Clearance = tolerance.Band{} }, "wanted clearance"},
		{func(n *GuideNeed, o *GuideOption) { n.LeastCut = -1 }, "least cut"},
		{func(n *GuideNeed, o *GuideOption) { o.Way = 99 }, "way"},
		{func(n *GuideNeed, o *GuideOption) { o.Opened = tolerance.Bracket{} }, "opened bore"},
		{func(n *GuideNeed, o *GuideOption) { o.Finished = stemAt("8 mm") }, "left out"},
		{func(n *GuideNeed, o *GuideOption) { o.Stem = tolerance.Bracket{} }, "stem"},
		{func(n *GuideNeed, o *GuideOption) { *o = GuideOption{Stem: stemAt("8 mm")} }, "option 1, stem"},
	} {
		n, o := guideWorn(), guideStock()[2]
		c.spoil(&n, &o)
		_, err := ChooseGuideRepair(n, []GuideOption{o})
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	for r := KeepGuide; r <= NewGuide; r++ {
		text, err := r.MarshalText()
		require.NoError(t, err)
		var back GuideRepair
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, r, back)
	}
	require.Contains(t, GuideRepair(200).String(), "200")
	var r GuideRepair
	require.ErrorIs(t, r.UnmarshalText([]byte("weld")), ErrInput)
}

func TestGuideWorkingAndUncertainty(t *testing.T) {
	c := RetainerClearance(working.Given("installed height", "h", stemLen("40 mm")), working.Given("lift", "l", stemLen("10.5 mm")),
		working.Given("guide's protrusion", "p", stemLen("15 mm")), working.Given("seal", "s", stemLen("12.2 mm"))).Named("clearance of the retainer", "c")
	s, err := working.Solve(c, units.Style[units.Length]{Unit: units.InMillimetres, Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "c = h − l − p − s")
	require.Contains(t, s.Text(), "= 2.3 mm")
	b, err := uncertainty.Normal("bore gauge", stemLen("8.05 mm"), stemLen("0.004 mm"))
	require.NoError(t, err)
	d, err := uncertainty.Normal("micrometer", stemLen("7.97 mm"), stemLen("0.003 mm"))
	require.NoError(t, err)
	require.Equal(t, stemLen("0.005 mm"), GuideClearance(b, d).StandardUncertainty(), "3-4-5")
}

func BenchmarkGuide(b *testing.B) {
	b.Run("lib=tenthou/op=survey", func(b *testing.B) {
		b.ReportAllocs()
		s := surveyed()
		for b.Loop() {
			if _, err := s.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=repair", func(b *testing.B) {
		b.ReportAllocs()
		n, stock := guideWorn(), guideStock()
		for b.Loop() {
			if _, err := ChooseGuideRepair(n, stock); err != nil {
				b.Fatal(err)
			}
		}
	})
}
