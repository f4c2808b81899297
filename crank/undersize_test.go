package crank

import (
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// manualKits are the shells of the manual in crank_undersize_manual.txt.
func manualKits() []ShellKit {
	return []ShellKit{
		{Name: ".030", Undersize: 30 * units.Thou, Journal: tolerance.MustParseBand("2.718–2.719 in")},
		{Name: "standard", AsIs: tolerance.MustParseBand("2.748–2.749 in")},
		{Name: ".002", Undersize: 2 * units.Thou, AsIs: tolerance.MustParseBand("min 2.746 in, less than 2.748 in")},
		{Name: ".010", Undersize: 10 * units.Thou, Journal: tolerance.MustParseBand("2.738–2.739 in")},
		{Name: ".020", Undersize: 20 * units.Thou, Journal: tolerance.MustParseBand("2.728–2.729 in")},
	}
}

func manualJob(finished tolerance.Bracket, journals ...string) UndersizeJob {
	thou := tolerance.AtMost(units.Thou / 2)
	j := UndersizeJob{Kind: Crankpin, Standard: tolerance.MustParseBand("2.748–2.749 in"), Kits: manualKits(), AsIs: AsIsRule{OutOfRound: thou, Taper: thou}}
	for _, d := range journals {
		zero := tolerance.Exactly(units.Length(0))
		j.Journals = append(j.Journals, WornJournal{Finished: finished, Least: journalAt(d), OutOfRound: zero, Taper: zero})
	}
	return j
}

func TestUndersizeOfManual(t *testing.T) {
	vectors.Load(t, "published/crank_undersize_manual.txt").Each(t, func(t *testing.T, c vectors.Case) {
		j := manualJob(tolerance.MustParseBand(c.Text("finished")).Interval(), c.Text("journal"))
		j.Journals[0].OutOfRound, j.Journals[0].Taper = journalAt(c.Text("out_of_round")), journalAt(c.Text("taper"))
		got, err := ChooseUndersize(&j)
		require.NoError(t, err)
		require.Equal(t, c.Text("outcome"), got.Outcome.String())
		if got.Outcome == UndersizeAsIs {
			require.Equal(t, c.Text("shells"), got.Kits[got.Journals[0].AsIs].Name)
			require.False(t, c.Has("ground"))
			return
		}
		require.Equal(t, c.Text("shells"), got.Kits[got.Kit].Name)
		require.Equal(t, tolerance.MustParseBand(c.Text("ground")), got.Kits[got.Kit].Journal)
		require.Equal(t, 0, got.Forced)
		// It is ground to the whole of the band, or as much of it as cleans up.
		require.True(t, got.Journals[0].Fits[got.Kit].GrindTo.Within(got.Kits[got.Kit].Journal.Interval()))
	})
}

func TestUndersizeFormulasOfTheTrade(t *testing.T) {
	vectors.Load(t, "practice/crank_journals.txt").Each(t, func(t *testing.T, c vectors.Case) {
		v := func(col string) units.Length {
			if !c.Has(col) {
				return 0
			}
			return journalMM(c.Text(col))
		}
		a, b, x := v("a"), v("b"), v("c")
		var got units.Length
		switch c.Choice("rule", "clean", "bent", "moved", "diameters", "case", "wall", "oil", "halves", "half", "stroke") {
		case "clean":
			got = CleanSize(a, b, x)
			require.Equal(t, b, WearCleaned(a, got, x))
		case "bent":
			got = CleanSizeBent(a, b, x)
			require.Equal(t, b, RunOutCleaned(a, got, x))
			require.Equal(t, got, CleanSizeBentMost(a, a, b, x), "round: the two bounds meet")
		case "moved":
			got = CleanSizeMoved(a, b, x, journalMM("0.02"))
			require.Equal(t, got, CleanSize(a, max(b, x), journalMM("0.02"))+2*CentreShift(b, x).Abs())
		case "diameters":
			var most units.Length
			got, most = CleanSizeByDiameters(a, b, x)
			require.Equal(t, b-2*x, most)
		case "case":
			got = CaseLeft(a, b, x)
			require.Equal(t, x, SizeForCase(a, got, b))
		case "wall":
			got = UndersizeWall(a, b)
			require.Equal(t, b, UndersizeByWall(a, got))
		case "oil":
			got = OilClearance(a, b, x)
			require.Equal(t, got, OilClearanceOfHalves(a, b, b, x))
			require.Equal(t, got, OilClearanceInstalled(a-2*b, x))
			require.Equal(t, a, HousingForClearance(got, b, x))
			require.Equal(t, b, WallForClearance(a, got, x))
			require.Equal(t, x, JournalForClearance(a, b, got))
			require.Equal(t, x, JournalForBore(a-2*b, got))
		case "halves":
			got = OilClearanceOfHalves(a+x, b, x, x)
		case "half":
			got = ClearanceByHalf(a, b)
		case "stroke":
			got = StrokeAfterShift(a, b)
			require.Equal(t, b, ShiftOfStroke(a, got))
		}
		require.Equal(t, v("expected"), got)
	})
	require.Equal(t, journalMM("49.75"), UndersizeOf(journalMM("50"), journalMM("0.25")))
	// A pin 43 mm from the axis and moved 0.1 mm across it stands on by 1/430.
	require.InDelta(t, math.Atan(1.0/430), float64(IndexAfterShift(tolerance.Float(0.1), 43)), 1e-15)
}

// The bounds for a bent journal hold whatever its shape: surfaces of random lobes,
// read by a dial from the axis and by a micrometer through it.
func TestCleanSizeBentHoldsForAnyShape(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 1))
	for range 300 {
		const n = 720
		var r [n]float64
		for k := range 1 + rng.IntN(6) {
			amp, phase := rng.Float64()*2e7/float64(k+1), rng.Float64()*2*math.Pi
			for i := range r {
				r[i] += amp * math.Cos(float64(k+1)*(2*math.Pi*float64(i)/n)+phase)
			}
		}
		least, most := math.Inf(1), math.Inf(-1)
		lo, hi := math.Inf(1), math.Inf(-1)
		for i := range r {
			least, most = min(least, r[i]), max(most, r[i])
			d := r[i] + r[(i+n/2)%n]
			lo, hi = min(lo, d), max(hi, d)
		}
		const mean = 60_000_000_000
		exact := mean + 2*least
		at := func(x float64) units.Length { return units.Length(math.Round(mean + x)) }
		runout := units.Length(math.Round(most - least))
		require.LessOrEqual(t, float64(CleanSizeBent(at(lo), runout, 0)), exact+2)
		require.GreaterOrEqual(t, float64(CleanSizeBentMost(at(lo), at(hi), runout, 0)), exact-2)
	}
}

// The moved centre against an optimiser that knows the true distances.
func TestMovedCentreReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/crank_undersize_centre.txt").All(t) {
		size := units.Length(c.Int64("size"))
		j := WornJournal{Finished: tolerance.Exactly(size), Least: tolerance.Exactly(size)}
		for w := range strings.FieldsSeq(c.Text("walls")) {
			heading, wear, _ := strings.Cut(w, ":")
			over, err := strconv.ParseInt(wear, 10, 64)
			require.NoError(t, err)
			j.Walls = append(j.Walls, JournalWall{Heading: units.MustParseAngle(heading + "°"), Wear: tolerance.Exactly(units.Length(over))})
		}
		got, err := CleansUpAt(&j, Crankpin, &GrindPlan{Centring: MovedCentre})
		require.NoError(t, err)
		lo, _ := journalEnds(got.Size)
		less := float64(size - lo)
		require.GreaterOrEqual(t, less, c.Float("less")-1000, c.Where())
		require.LessOrEqual(t, less, c.Float("less")+c.Float("slack"), c.Where())
		require.Equal(t, 2*got.Centre.Out, got.StrokeChange)
		// True distances from the centre: nothing that is gone lies inside.
		for _, w := range j.Walls {
			s := w.side(0)
			worn, _ := journalEnds(w.Wear)
			r := float64(size)/2 - float64(worn)
			require.GreaterOrEqual(t, 2*math.Hypot(r*s.x-float64(got.Centre.Out), r*s.y-float64(got.Centre.Across)), float64(lo)-0.01)
		}
	}
}

func wornPin(least string, walls ...string) WornJournal {
	j := WornJournal{Finished: journalAt("50 mm"), Least: journalAt(least)}
	for i, w := range walls {
		j.Walls = append(j.Walls, JournalWall{Heading: units.Angle(i) * 360 * units.Degree / units.Angle(len(walls)), Wear: journalAt(w)})
	}
	return j
}

// What is known narrows the clean size: diameters, then walls, then a moved centre.
func TestCleansUpAt(t *testing.T) {
	p := GrindPlan{Stock: journalMM("0.01")}
	at := func(j WornJournal, kind JournalKind) CleanUp {
		t.Helper()
		c, err := CleansUpAt(&j, kind, &p)
		require.NoError(t, err)
		return c
	}
	c := at(wornPin("49.92 mm"), Crankpin)
	require.Equal(t, journalAt("[49.82 mm, 49.9 mm]"), c.Size, "e once or twice")
	require.True(t, c.ByDiameters && c.CentreKnown)
	require.Equal(t, "dial the worn side from the original axis", c.Settle)
	require.Contains(t, at(wornPin("49.92 mm"), MainJournal).Settle, "run-out")

	c = at(wornPin("49.92 mm", "0 mm", "0 mm", "0.08 mm", "0 mm"), Crankpin)
	require.Equal(t, journalAt("49.82 mm"), c.Size, "all on one side")
	require.Equal(t, 2, c.Governs)
	c = at(wornPin("49.92 mm", "0.04 mm", "0 mm", "[0.03 mm, 0.04 mm]", "0 mm"), Crankpin)
	require.Equal(t, journalAt("49.9 mm"), c.Size, "evenly")
	c = at(wornPin("49.92 mm", "0 mm", "0 mm", "[0.06 mm, 0.08 mm]", "0 mm"), Crankpin)
	require.Equal(t, journalAt("[49.82 mm, 49.86 mm]"), c.Size)
	c = at(wornPin("50.01 mm"), Crankpin)
	require.Equal(t, journalAt("49.99 mm"), c.Size, "larger than it was ground to: no wear")

	// A wall left out: the diameter says so.
	j := wornPin("49.80 mm", "0 mm", "0 mm", "0.08 mm", "0 mm")
	_, err := CleansUpAt(&j, Crankpin, &p)
	require.ErrorContains(t, err, "dial the place where it was measured")

	// The centre moves away from the mains by half the wear on the side toward them,
	// and the stroke grows by the wear.
	p.Centring = MovedCentre
	c = at(wornPin("49.92 mm", "0 mm", "0 mm", "0.08 mm", "0 mm"), Crankpin)
	require.Equal(t, journalAt("49.9 mm"), c.Size)
	require.Equal(t, JournalCentre{Out: journalMM("0.04")}, c.Centre)
	require.Equal(t, journalMM("0.08"), c.StrokeChange)
	c = at(wornPin("49.92 mm", "0 mm", "0.08 mm", "0 mm", "0 mm"), MainJournal)
	require.Equal(t, JournalCentre{Across: journalMM("-0.04")}, c.Centre)
	require.Zero(t, c.StrokeChange)
	c = at(wornPin("49.92 mm"), Crankpin)
	require.False(t, c.CentreKnown)
	require.Equal(t, journalAt("[49.82 mm, 49.9 mm]"), c.Size)
	p.Centring = OriginalThrow

	// A main that is bent and not worn: 49.99 ± nothing, 0.02 off its centres' axis,
	// which its diameters don't know of.
	bent := wornPin("49.99 mm")
	bent.Finished, bent.Greatest, bent.RunOut = journalAt("49.99 mm"), journalAt("49.99 mm"), journalAt("0.04 mm")
	require.Equal(t, journalAt("49.93 mm"), at(bent, MainJournal).Size)

	// A bend comes off too.
	main := wornPin("49.96 mm")
	main.RunOut = journalAt("0.04 mm")
	require.Equal(t, journalAt("[49.9 mm, 49.94 mm]"), at(main, MainJournal).Size, "round or oval isn't known")
	main.Greatest = journalAt("49.96 mm")
	require.Equal(t, journalAt("49.9 mm"), at(main, MainJournal).Size, "round: the run-out is all eccentricity")
	main.Greatest = journalAt("49.99 mm")
	require.Equal(t, journalAt("[49.9 mm, 49.93 mm]"), at(main, MainJournal).Size)
	main.Walls = []JournalWall{{Wear: journalAt("0.03 mm")}}
	require.Equal(t, journalAt("49.92 mm"), at(main, MainJournal).Size)
	main.RunOut, main.OutOfRound = journalAt("0.01 mm"), journalAt("[0.021 mm, 0.03 mm]")
	_, err = CleansUpAt(&main, MainJournal, &p)
	require.ErrorContains(t, err, "at least half of the out-of-round")
}

func TestCleansUpAtRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*WornJournal, *GrindPlan, *JournalKind)
		want   string
	}{
		"kind":     {func(j *WornJournal, p *GrindPlan, k *JournalKind) { *k = 7 }, "kind (unknown)"},
		"finished": {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Finished = tolerance.Bracket{} }, "pin 2, size last ground to"},
		"least":    {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Least = tolerance.Bracket{} }, "least diameter"},
		"inch":     {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Least = journalAt("1.96 mm") }, "near the size last ground to"},
		"run-out":  {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.RunOut = journalAt("0.02 mm") }, "run-out is of mains"},
		"negative": {func(j *WornJournal, p *GrindPlan, k *JournalKind) { *k = MainJournal; j.RunOut = journalAt("-0.02 mm") }, "from 0 mm"},
		"greatest": {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Greatest = journalAt("49.8 mm") }, "at least the least diameter"},
		"wear":     {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Walls[0].Wear = journalAt("20 mm") }, "wall 1, wear 20 mm is not less than a quarter"},
		"no wear":  {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Walls[0].Wear = tolerance.Bracket{} }, "a least and a greatest"},
		"heading": {func(j *WornJournal, p *GrindPlan, k *JournalKind) {
			j.Walls[0].Heading = units.OutOfRange[units.Angle]()
		}, "heading"},
		"walls":    {func(j *WornJournal, p *GrindPlan, k *JournalKind) { j.Walls = make([]JournalWall, 100_001) }, "100 000 at most"},
		"stock":    {func(j *WornJournal, p *GrindPlan, k *JournalKind) { p.Stock = -1 }, "least stock per side"},
		"centring": {func(j *WornJournal, p *GrindPlan, k *JournalKind) { p.Centring = 9 }, "one of the two"},
	} {
		j, p, k := wornPin("49.92 mm", "0.08 mm"), GrindPlan{}, Crankpin
		j.Where = "pin 2"
		c.change(&j, &p, &k)
		_, err := CleansUpAt(&j, k, &p)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	for _, s := range []JournalSurface{JournalNitrided, JournalBuiltUp} {
		j := wornPin("49.92 mm")
		j.Where, j.Surface = "crankpin 2", s
		_, err := CleansUpAt(&j, Crankpin, &GrindPlan{})
		require.ErrorIs(t, err, ErrGrind)
		require.EqualError(t, err, "crank: crankpin 2, a "+s.String()+" journal is not ground without the maker's own process for it, which is not given")
		j.Process = "workshop manual, section 7"
		_, err = CleansUpAt(&j, Crankpin, &GrindPlan{})
		require.NoError(t, err)
	}
}
