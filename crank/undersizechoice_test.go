package crank

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The journal that rules out the next lesser undersize is named, not merely the
// smallest in size.
func TestChooseUndersizeNamesTheJournal(t *testing.T) {
	j := manualJob(tolerance.MustParseBand("2.748–2.749 in").Interval(), "2.7479 in", "2.7455 in", "2.7465 in")
	got, err := ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeGrind, got.Outcome)
	require.Equal(t, ".010", got.Kits[got.Kit].Name)
	require.Equal(t, "crankpin 2", got.Journals[got.Forced].Where, "the others could stay")
	require.Empty(t, got.Settle)

	j.Journals[0].Walls = []JournalWall{{Wear: journalAt("0.006 in")}} // on one side
	j.Journals[0].Least = journalAt("2.742 in")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, ".020", got.Kits[got.Kit].Name)
	require.Equal(t, 0, got.Forced)
	require.Equal(t, []string{"standard", ".002", ".010", ".020", ".030"}, []string{got.Kits[0].Name, got.Kits[1].Name, got.Kits[2].Name, got.Kits[3].Name, got.Kits[4].Name})

	// Nothing cleans up: weld or replace.
	j.Journals[1].Walls = []JournalWall{{Wear: journalAt("0.02 in")}}
	j.Journals[1].Least = journalAt("2.7285 in")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeNone, got.Outcome)
	require.Equal(t, "weld and grind, or replace the shaft", got.Outcome.String())
	require.Equal(t, 1, got.Forced)

	// As it is: the journal that takes the greatest undersize is named.
	j = manualJob(tolerance.MustParseBand("2.748–2.749 in").Interval(), "2.7485 in", "2.7475 in")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeAsIs, got.Outcome)
	require.Equal(t, 1, got.Forced)
	require.Equal(t, 0, got.Journals[0].AsIs)
}

// A bracket on both sides of a limit is undecided, and says what to measure.
func TestChooseUndersizeUndecided(t *testing.T) {
	finished := tolerance.MustParseBand("2.748–2.749 in").Interval()
	j := manualJob(finished, "2.7460 ±0.0001 in")
	got, err := ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeUndecided, got.Outcome)
	require.Equal(t, tolerance.Undecided, got.Stays)
	require.Contains(t, got.Settle, "crankpin 1: measure its least diameter more closely")

	// Out-of-round never measured, where the rule asks for it.
	j = manualJob(finished, "2.7475 in")
	j.Journals[0].OutOfRound = tolerance.Bracket{}
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeUndecided, got.Outcome)
	require.Contains(t, got.Settle, "measure out-of-round, taper and run-out more closely")

	// Two kits: 2.7420 is worn by 0.006 to 0.007, of which all may be on one side.
	j = manualJob(finished, "2.7420 in")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeUndecided, got.Outcome)
	require.Equal(t, ".010", got.Kits[got.Possible].Name)
	require.Equal(t, ".020", got.Kits[got.Kit].Name)
	require.Equal(t, "crankpin 1: dial the worn side from the original axis", got.Settle)
	j.Journals[0].Walls = []JournalWall{{Wear: journalAt("[0.0045 in, 0.0052 in]")}}
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeUndecided, got.Outcome)
	require.Contains(t, got.Settle, "measure diameter, walls or run-out more closely: for .010")
	j.Journals[0].Walls[0].Wear = journalAt("0.0045 in")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeGrind, got.Outcome)
	require.Equal(t, ".010", got.Kits[got.Kit].Name)
}

// Printed bands come first; the standard less the step stands in, and says so.
func TestChooseUndersizeNominal(t *testing.T) {
	j := UndersizeJob{Standard: tolerance.MustParseBand("49.98–50.00 mm"), Kits: ShellLadder(units.InMillimetres, MetricUndersizes()...),
		Journals: []WornJournal{{Finished: journalAt("50 mm"), Least: journalAt("49.90 mm")}}, Plan: GrindPlan{Stock: journalMM("0.01")}}
	got, err := ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeGrind, got.Outcome)
	require.Equal(t, []bool{true, true, true, true}, got.Nominal)
	require.Equal(t, "before grinding, look up the journal sizes printed for the shells of 0.25 mm: the standard sizes less the undersize stand in for them", got.Settle)
	require.Equal(t, journalAt("[49.73 mm, 49.75 mm]"), got.Journals[0].Fits[0].GrindTo)
	require.Equal(t, "main journal 1", got.Journals[0].Where)
	j.Kits[0].Journal = tolerance.MustParseBand("49.73–49.74 mm")
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Empty(t, got.Settle)
	require.Equal(t, journalAt("[49.73 mm, 49.74 mm]"), got.Journals[0].Fits[0].GrindTo)
	// On the line it cleans up with just the stock asked for.
	j.Journals[0].Least, j.Journals[0].Walls = journalAt("49.75 mm"), []JournalWall{{Wear: journalAt("0.125 mm")}, {Heading: 180 * units.Degree, Wear: journalAt("0.125 mm")}}
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, journalAt("49.73 mm"), got.Journals[0].Fits[0].GrindTo)
	require.Equal(t, journalAt("0 mm"), got.Journals[0].Fits[0].Spare)
}

func TestChooseUndersizeLimits(t *testing.T) {
	job := func() UndersizeJob {
		return UndersizeJob{Kind: Crankpin, Standard: tolerance.MustParseBand("49.98–50.00 mm"), Kits: ShellLadder(units.InMillimetres, MetricUndersizes()...),
			Journals: []WornJournal{wornPin("49.70 mm", "0 mm", "0 mm", "0.30 mm", "0 mm")}}
	}
	choose := func(j UndersizeJob) UndersizeChoice {
		t.Helper()
		c, err := ChooseUndersize(&j)
		require.NoError(t, err)
		return c
	}
	// 50 − 2 × 0.30 = 49.40: not the 49.48 of 0.50 under, but the 49.23 of 0.75.
	c := choose(job())
	require.Equal(t, "0.75 mm", c.Kits[c.Kit].Name)
	// With the centre moved, 49.70: 0.50 under, and 0.30 more stroke.
	j := job()
	j.Plan.Centring = MovedCentre
	c = choose(j)
	require.Equal(t, "0.50 mm", c.Kits[c.Kit].Name)
	require.Equal(t, journalMM("0.30"), c.Journals[0].Clean.StrokeChange)

	// The least size allowed, above which there is nothing.
	j = job()
	j.Plan.LeastSize = journalMM("49.30")
	require.Equal(t, UndersizeNone, choose(j).Outcome)
	j.Plan.LeastSize = journalMM("49.24")
	c = choose(j)
	require.Equal(t, UndersizeGrind, c.Outcome)
	require.Equal(t, journalAt("[49.24 mm, 49.25 mm]"), c.Journals[0].Fits[c.Kit].GrindTo)
	j.Kits[2].Journal = tolerance.MustParseBand("49.23–49.35 mm")
	j.Journals[0].Walls[2].Wear, j.Journals[0].Least = journalAt("[0.33 mm, 0.345 mm]"), journalAt("49.65 mm")
	j.Plan.LeastSize = journalMM("49.32")
	c = choose(j)
	require.Equal(t, UndersizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "the least size allowed lies within what is known")

	// The case: 0.5 deep, of which (50 − 49.25)/2 = 0.375 go.
	j = job()
	j.Journals[0].Case, j.Journals[0].Surface = journalAt("0.5 mm"), JournalCaseHardened
	c = choose(j)
	require.Equal(t, UndersizeGrind, c.Outcome)
	require.Equal(t, journalAt("0.125 mm"), c.Journals[0].Fits[c.Kit].CaseLeft)
	j.Plan.LeastCase = journalMM("0.12")
	c = choose(j)
	require.Equal(t, journalAt("[49.24 mm, 49.25 mm]"), c.Journals[0].Fits[c.Kit].GrindTo)
	j.Plan.LeastCase = journalMM("0.2")
	require.Equal(t, UndersizeNone, choose(j).Outcome)
	j.Journals[0].Case = journalAt("[0.5 mm, 0.6 mm]")
	c = choose(j)
	require.Equal(t, UndersizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "find how deep its hardened case is")
	j.Journals[0].Case = tolerance.Bracket{}
	require.Equal(t, UndersizeUndecided, choose(j).Outcome, "asked for, and never measured")
	// Ground right through it: nothing left is not enough.
	j.Plan.LeastCase, j.Journals[0].Case = 0, journalAt("0.375 mm")
	require.Equal(t, UndersizeNone, choose(j).Outcome)
	// About a moved centre one side loses the shift more: 0.5 − 0.25 − 0.15.
	j.Plan.Centring, j.Journals[0].Case = MovedCentre, journalAt("0.5 mm")
	c = choose(j)
	require.Equal(t, journalAt("0.1 mm"), c.Journals[0].Fits[1].CaseLeft)
	j.Journals[0].Walls = nil // by diameters the centre isn't known, so neither is the case
	c = choose(j)
	require.Equal(t, tolerance.Undecided, c.Journals[0].Fits[1].CaseStands)
}

// From the shells in stock only.
func TestChooseUndersizeStock(t *testing.T) {
	finished := tolerance.MustParseBand("2.748–2.749 in").Interval()
	j := manualJob(finished, "2.7455 in", "2.7455 in")
	j.Kits[3].Stock = PairsInStock(1)
	got, err := ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, ".020", got.Kits[got.Kit].Name)
	require.Equal(t, []bool{true, true, false, true, true}, got.InStock)
	j.Kits[3].Stock = PairsInStock(2)
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, ".010", got.Kits[got.Kit].Name)

	// Thin shells for two, and one pair there: grind.
	j = manualJob(finished, "2.7475 in", "2.7475 in")
	j.Kits[2].Stock = PairsInStock(1)
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeGrind, got.Outcome)
	require.Equal(t, ".002", got.Kits[got.AsIsShort].Name)
	j.Kits[2].Stock = PairsInStock(2)
	got, err = ChooseUndersize(&j)
	require.NoError(t, err)
	require.Equal(t, UndersizeAsIs, got.Outcome)
	require.Equal(t, -1, got.AsIsShort)
}

func TestChooseUndersizeRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*UndersizeJob)
		want   string
	}{
		"kind":        {func(j *UndersizeJob) { j.Kind = 9 }, "kind (unknown)"},
		"no standard": {func(j *UndersizeJob) { j.Standard = tolerance.Band{} }, "standard journal"},
		"no journals": {func(j *UndersizeJob) { j.Journals = nil }, "journals 0 is not from 1 to 1000"},
		"no kits":     {func(j *UndersizeJob) { j.Kits = nil }, "shells in stock (none) is not at least one kit"},
		"kits":        {func(j *UndersizeJob) { j.Kits = make([]ShellKit, 1001) }, "1000 kits at most"},
		"undersize":   {func(j *UndersizeJob) { j.Kits[0].Undersize = -1 }, ".030, undersize"},
		"stock":       {func(j *UndersizeJob) { j.Kits[0].Stock = ShellStock{Pairs: 3} }, ".030, pairs in stock 3"},
		"band":        {func(j *UndersizeJob) { j.Kits[0].Journal = tolerance.MustParseBand("2.728–2.729 in") }, "within 0.1 mm of the standard journal less the undersize"},
		"open":        {func(j *UndersizeJob) { j.Kits[0].Journal = tolerance.MustParseBand("max 2.729 in") }, "a least and a greatest"},
		"name":        {func(j *UndersizeJob) { j.Kits[0].Name, j.Kits[0].Undersize = "", -1 }, "kit 1, undersize"},
		"finished":    {func(j *UndersizeJob) { j.Journals[0].Finished = journalAt("70 in") }, "near the standard journal"},
		"plan":        {func(j *UndersizeJob) { j.Plan.LeastCase = -1 }, "least case"},
		"journal":     {func(j *UndersizeJob) { j.Journals[0].Least = tolerance.Bracket{} }, "least diameter"},
	} {
		j := manualJob(tolerance.MustParseBand("2.748–2.749 in").Interval(), "2.7455 in")
		c.change(&j)
		_, err := ChooseUndersize(&j)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
}

// More wear never asks for less undersize, and a worn journal never stays where a
// less worn one doesn't: outcome and kit are monotone.
func TestChooseUndersizeIsMonotone(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 1))
	// rank is how much an answer takes off the shaft.
	rank := func(c *UndersizeChoice, k int) int {
		switch {
		case c.Stays == tolerance.Within:
			return -1
		case k < 0:
			return len(c.Kits)
		}
		return k
	}
	for range 300 {
		j := UndersizeJob{Kind: Crankpin, Standard: tolerance.MustParseBand("49.98–50.00 mm"), Kits: ShellLadder(units.InMillimetres, MetricUndersizes()...),
			Plan: GrindPlan{Stock: units.Length(rng.Int64N(2e7)), Centring: JournalCentring(rng.IntN(2))}}
		j.Kits = append(j.Kits, ShellKit{Name: "standard"}, ShellKit{Name: "thin", Undersize: journalMM("0.05"), AsIs: tolerance.MustParseBand("min 49.93 mm, less than 49.98 mm")})
		dialled := rng.IntN(2) == 0
		build := func(wear []units.Length) {
			j.Journals = j.Journals[:0]
			for i := 0; i < len(wear); i += 4 {
				least := 50 * units.Millimetre
				w := WornJournal{Finished: journalAt("50 mm")}
				for k := range 4 {
					least = min(least, 50*units.Millimetre-wear[i+k]-wear[i+(k+2)%4])
					if dialled {
						w.Walls = append(w.Walls, JournalWall{Heading: units.Angle(k) * 90 * units.Degree, Wear: tolerance.Exactly(wear[i+k])})
					}
				}
				w.Least = tolerance.Exactly(least)
				j.Journals = append(j.Journals, w)
			}
		}
		wear := make([]units.Length, 4*(1+rng.IntN(4)))
		for i := range wear {
			wear[i] = units.Length(rng.Int64N(2e8))
		}
		build(wear)
		before, err := ChooseUndersize(&j)
		require.NoError(t, err)
		wear[rng.IntN(len(wear))] += units.Length(rng.Int64N(1e8))
		build(wear)
		after, err := ChooseUndersize(&j)
		require.NoError(t, err)
		require.LessOrEqual(t, rank(&before, before.Kit), rank(&after, after.Kit))
		require.LessOrEqual(t, rank(&before, before.Possible), rank(&after, after.Possible))
		if after.Outcome == UndersizeGrind {
			for i := range after.Journals {
				lo, hi := journalEnds(after.Journals[i].Fits[after.Kit].GrindTo)
				require.LessOrEqual(t, lo, hi)
				clean, _ := journalEnds(after.Journals[i].Clean.Size)
				require.LessOrEqual(t, hi, clean)
			}
		}
	}
}

// From a survey to the choice.
func TestWornJournalOfSurvey(t *testing.T) {
	shaft, l := journalShaft()
	var r JournalReport
	require.NoError(t, shaft[0].Inspect(&l, &r))
	w := shaft[0].WornJournal(&r, JournalTaperAlong)
	require.Equal(t, WornJournal{Where: "main 1", Finished: shaft[0].Finished, Least: r.Least.Size, Greatest: r.Greatest.Size,
		OutOfRound: r.OutOfRound.Value, Taper: r.Taper[JournalTaperAlong].Value}, w)
	require.True(t, shaft[0].WornJournal(&r, 99).Taper.IsZero())
}

var undersizeChoice UndersizeChoice

func BenchmarkChooseUndersize(b *testing.B) {
	j := manualJob(tolerance.MustParseBand("2.748–2.749 in").Interval(), "2.7479 in", "2.7455 in", "2.7465 in", "2.7470 in")
	for i := range j.Journals {
		for k := range 8 {
			j.Journals[i].Walls = append(j.Journals[i].Walls, JournalWall{Heading: units.Angle(k) * 45 * units.Degree, Wear: tolerance.Exactly(units.Length(1+k%3) * 8 * units.Micrometre)})
		}
		j.Journals[i].Least = journalAt("2.7480 in")
	}
	for name, c := range map[string]JournalCentring{"choice4": OriginalThrow, "choice4moved": MovedCentre} {
		j.Plan.Centring = c
		b.Run("lib=tenthou/op="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				undersizeChoice, _ = ChooseUndersize(&j)
			}
		})
	}
	b.Run("lib=float64/op=cleansize", func(b *testing.B) {
		d, w, s := 50.0, 0.08, 0.01
		for b.Loop() {
			journalFloats[0] = d - 2*(w+s)
		}
	})
	b.Run("lib=tenthou/op=cleansize", func(b *testing.B) {
		d, w, s := journalMM("50"), journalMM("0.08"), journalMM("0.01")
		for b.Loop() {
			journalLength = CleanSize(d, w, s)
		}
	})
}

var journalLength units.Length

func FuzzCleansUpAt(f *testing.F) {
	f.Add(int64(50_000_000_000), int64(49_920_000_000), int64(80_000_000), int64(0), int64(0), int64(10_000_000), uint8(1))
	f.Add(int64(50_000_000_000), int64(49_920_000_000), int64(80_000_000), int64(20_000_000), int64(-5), int64(0), uint8(1))
	f.Add(int64(10), int64(8), int64(1), int64(-2), int64(1), int64(1), uint8(0))
	f.Fuzz(func(t *testing.T, finished, least, w1, w2, w3, stock int64, centring uint8) {
		j := WornJournal{Finished: tolerance.Exactly(units.Length(finished)), Least: tolerance.Exactly(units.Length(least))}
		for i, w := range []int64{w1, w2, w3} {
			j.Walls = append(j.Walls, JournalWall{Heading: units.Angle(i) * 120 * units.Degree, Wear: tolerance.Exactly(units.Length(w))})
		}
		c, err := CleansUpAt(&j, Crankpin, &GrindPlan{Centring: JournalCentring(centring), Stock: units.Length(stock)})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, hi := journalEnds(c.Size)
		require.LessOrEqual(t, lo, hi)
		require.LessOrEqual(t, hi, units.Length(least-2*stock))
	})
}
