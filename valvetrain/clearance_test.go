package valvetrain

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

var clearanceRatios = []tolerance.Ratio{{Num: 1, Den: 1}, {Num: 3, Den: 2}, {Num: 13, Den: 9}, {Num: 2, Den: 3}, {Num: 1, Den: 100}}

func TestShimPractice(t *testing.T) {
	mm := func(s string) units.Length { return stemLen(s + " mm") }
	vectors.Load(t, "practice/valvetrain_shims.txt").Each(t, func(t *testing.T, c vectors.Case) {
		old, measured, wanted := mm(c.Text("old")), mm(c.Text("measured")), mm(c.Text("wanted"))
		ideal := ShimForClearance(old, measured, wanted)
		require.Equal(t, mm(c.Text("ideal")), ideal)
		var sizes []ShimPiece
		for s := range strings.FieldsSeq(c.Text("sizes")) {
			sizes = append(sizes, ShimPiece{s, tolerance.Exactly(mm(s))})
		}
		at, err := NearestShim(ideal, sizes)
		require.NoError(t, err)
		require.Equal(t, c.Text("chosen"), sizes[at].Name)
		require.Equal(t, mm(c.Text("clearance")), ClearanceWithShim(measured, old, mm(c.Text("chosen"))))
	})
}

func TestProofPublished(t *testing.T) {
	vectors.Load(t, "published/valvetrain_proof.txt").Each(t, func(t *testing.T, c vectors.Case) {
		band := tolerance.MustBetween(stemLen(c.Text("least")), stemLen(c.Text("most")))
		p := ProveClearance(band, feeler.Imperial26())
		require.True(t, p.Ok)
		require.True(t, p.Enters.Carries(stemLen(c.Text("enters"))))
		require.True(t, p.Refused.Carries(stemLen(c.Text("refused"))))
		require.Equal(t, tolerance.Within, band.Judge(p.Proved))
	})
}

func TestProof(t *testing.T) {
	// 0.20 to 0.25: with metric blades the ends themselves.
	p := ProveClearance(tolerance.MustParseBand("0.20–0.25 mm"), feeler.Metric20())
	require.Equal(t, stemAt("[0.2 mm, 0.25 mm)"), p.Proved)
	// An open lower end leaves its own blade out; here there is no other.
	open, err := tolerance.NewBand(stemLen("0.20 mm"), tolerance.Open, stemLen("0.25 mm"), tolerance.Closed)
	require.NoError(t, err)
	require.False(t, ProveClearance(open, feeler.Metric20()).Ok)
	require.True(t, ProveClearance(open, feeler.Imperial32()).Ok, "0.2032 and 0.2286 lie inside")
	// Blades with errors have to be inside by so much.
	set, err := feeler.Metric20().WithErrors(feeler.ErrorClass{UpTo: units.Millimetre, Error: 2 * units.Micrometre})
	require.NoError(t, err)
	require.False(t, ProveClearance(tolerance.MustParseBand("0.20–0.25 mm"), set).Ok)
	p = ProveClearance(tolerance.MustParseBand("0.19–0.26 mm"), set)
	require.Equal(t, stemAt("[0.198 mm, 0.252 mm)"), p.Proved)
	require.Contains(t, ProveClearance(tolerance.MustParseBand("max 0.3 mm"), set).Next, "a least and a greatest")
	require.False(t, ProveClearance(tolerance.MustParseBand("0.2–0.3 mm"), feeler.Set{}).Ok)
}

// Every inverse undoes its formula.
func TestClearanceInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 77))
	for range 2000 {
		old, measured, wanted := units.Length(1e9+r.Int64N(3e9)), units.Length(r.Int64N(6e8)), units.Length(r.Int64N(6e8))
		require.Equal(t, wanted, ClearanceWithShim(measured, old, ShimForClearance(old, measured, wanted)))
		shim := units.Length(1e9 + r.Int64N(3e9))
		require.Equal(t, old, ShimThatWas(shim, ClearanceWithShim(measured, old, shim), measured))
		ratio := clearanceRatios[r.IntN(len(clearanceRatios))]
		require.InDelta(t, int64(wanted), int64(ClearanceThroughRocker(measured, old, ShimThroughRocker(old, measured, wanted, ratio), ratio)), math.Max(2, ratio.Float()+1))
		require.InDelta(t, int64(wanted), int64(ClearanceWithPushrod(measured, old, PushrodForClearance(old, measured, wanted, ratio), ratio)), math.Max(2, ratio.Float()+1))
		require.InDelta(t, int64(wanted), int64(HydraulicPreload(old, HydraulicClearance(old, wanted, ratio), ratio)), 1/ratio.Float()+1)
		require.InDelta(t, int64(old), int64(HydraulicTravel(HydraulicPreload(old, measured, ratio), measured, ratio)), 0)
		require.InDelta(t, int64(measured), int64(PushrodPivotRise(old, PushrodForPivot(old, measured, ratio), ratio)), 2)
		require.Equal(t, wanted, PushrodForPreload(old, measured, wanted)-old+measured)
		// One to one, both forms agree.
		require.Equal(t, ShimForClearance(old, measured, wanted), ShimThroughRocker(old, measured, wanted, tolerance.Whole(1)))
		pitch := units.Length(5e8 + r.Int64N(1e9))
		turns := float64(ScrewTurns(tolerance.Float(measured), tolerance.Float(pitch), tolerance.Float(ratio.Float())))
		a, err := ScrewAngle(tolerance.Exactly(measured), pitch, ratio)
		require.NoError(t, err)
		lo, _ := a.Lower()
		require.InEpsilon(t, turns*360+1, lo.Float(units.InDegrees)+1, 1e-9)
		arm, other := units.Length(1e10+r.Int64N(5e10)), units.Length(1e10+r.Int64N(5e10))
		require.InDelta(t, int64(measured), int64(RockerMove(RockerMove(measured, arm, other), other, arm)), float64(arm)/float64(other)+1)
	}
}

// What is no ratio gives no number that could be taken for one.
func TestClearanceNoRatio(t *testing.T) {
	mm := units.Millimetre
	for _, bad := range []tolerance.Ratio{{}, {Num: 1}, {Num: 0, Den: 1}, {Num: -3, Den: 2}} {
		for _, x := range []units.Length{
			ShimThroughRocker(mm, mm, 0, bad), ClearanceThroughRocker(mm, mm, 0, bad), ScrewChange(mm, tolerance.Whole(1), bad),
			HydraulicPreload(mm, mm, bad), HydraulicClearance(mm, 0, bad), HydraulicTravel(mm, mm, bad),
			PushrodForClearance(mm, mm, 0, bad), ClearanceWithPushrod(mm, mm, 0, bad), PushrodForPivot(mm, mm, bad), PushrodPivotRise(mm, 2*mm, bad),
		} {
			require.False(t, units.InRange(x))
		}
		_, err := PivotRatio(bad)
		require.ErrorIs(t, err, ErrInput)
	}
	require.False(t, units.InRange(ScrewChange(mm, tolerance.Ratio{}, tolerance.Whole(1))))
	require.False(t, units.InRange(CheckingRodLength(mm, mm, tolerance.Ratio{})))
	require.False(t, units.InRange(PushrodPivotRise(mm, 2*mm, tolerance.Ratio{Num: math.MaxInt64, Den: 1})))
	r, err := PivotRatio(tolerance.Ratio{Num: 3, Den: 2})
	require.NoError(t, err)
	require.Equal(t, tolerance.Ratio{Num: 5, Den: 2}, r)
}

// By hand: a pitch of 1 mm, half a turn and a ratio of 1.5 make 0.75 mm; 24 threads
// to the inch, a quarter turn over the valve 1/96 in. A nut on a stud at 1.5 closes
// 2.5 pitches a turn, and presses the plunger in by 1 + 1/1.5 of them.
func TestScrewByHand(t *testing.T) {
	half, quarter, one := tolerance.Ratio{Num: 1, Den: 2}, tolerance.Ratio{Num: 1, Den: 4}, tolerance.Whole(1)
	require.Equal(t, stemLen("0.75 mm"), ScrewChange(units.Millimetre, half, tolerance.Ratio{Num: 3, Den: 2}))
	require.Equal(t, units.Inch/96, ScrewChange(ScrewPitch(24), quarter, one))
	require.Equal(t, stemLen("0.05 mm"), ClearanceAfterScrew(stemLen("0.30 mm"), units.Millimetre, quarter, one))
	stud, err := PivotRatio(tolerance.Ratio{Num: 3, Den: 2})
	require.NoError(t, err)
	require.Equal(t, stemLen("2.5 mm"), ScrewChange(units.Millimetre, one, stud))
	plunger, err := PivotRatio(tolerance.Ratio{Num: 2, Den: 3})
	require.NoError(t, err)
	require.Equal(t, stemLen("5 mm").Scale(1, 3), ScrewChange(units.Millimetre, one, plunger))
	for _, n := range []int{-1, 0, 1001} {
		require.Zero(t, ScrewPitch(n))
	}
	// 0.3 mm at a pitch of 0.75 mm is 0.4 of a turn: 144°.
	a, err := ScrewAngle(stemAt("[0.3 mm, 0.375 mm)"), stemLen("0.75 mm"), one)
	require.NoError(t, err)
	lo, loEnd := a.Lower()
	hi, hiEnd := a.Upper()
	require.Equal(t, 144*units.Degree, lo)
	require.Equal(t, 180*units.Degree, hi)
	require.Equal(t, [2]tolerance.End{tolerance.Closed, tolerance.Open}, [2]tolerance.End{loEnd, hiEnd})
}

func screwSet() ScrewSetting {
	return ScrewSetting{Where: "exhaust 3", Measured: stemAt("[0.35 mm, 0.40 mm)"), Wanted: tolerance.MustParseBand("0.20–0.30 mm"),
		Pitch: stemLen("1 mm"), Ratio: tolerance.Ratio{Num: 3, Den: 2}, Set: feeler.Metric20()}
}

// By hand: 0.35 to 0.40 comes into 0.20 to 0.30 by 0.10 to 0.15, at 1.5 mm a turn
// 24° to 36°; the aim is 0.125, 30°.
func TestScrewPlan(t *testing.T) {
	p, err := screwSet().Plan()
	require.NoError(t, err)
	require.True(t, p.Ok)
	lo, _ := p.Turn.Lower()
	hi, _ := p.Turn.Upper()
	require.Equal(t, [3]units.Angle{24 * units.Degree, 30 * units.Degree, 36 * units.Degree}, [3]units.Angle{lo, p.Aim, hi})
	require.Equal(t, stemAt("[0.225 mm, 0.275 mm)"), p.After)
	require.Contains(t, p.Next, "0.20 mm must go in, 0.30 mm must not")

	wide := screwSet()
	wide.Measured = stemAt("[0.35 mm, 0.50 mm)")
	p, err = wide.Plan()
	require.NoError(t, err)
	require.False(t, p.Ok)
	require.True(t, p.Turn.IsZero())
	require.Contains(t, p.Next, "wider")

	// Exactly as wide: the blade that was refused isn't the clearance, and so the
	// upper limit is kept even where it is left out.
	just := screwSet()
	just.Wanted, err = tolerance.NewBand(stemLen("0.20 mm"), tolerance.Closed, stemLen("0.25 mm"), tolerance.Open)
	require.NoError(t, err)
	p, err = just.Plan()
	require.NoError(t, err)
	require.True(t, p.Ok)
	require.True(t, p.Turn.IsExact())
	just.Measured = stemAt("[0.35 mm, 0.40 mm]")
	p, err = just.Plan()
	require.NoError(t, err)
	require.False(t, p.Ok)
	require.True(t, p.Turn.IsZero())
}

func TestScrewRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*ScrewSetting)
		says  string
	}{
		{func(s *ScrewSetting) { s.Measured = stemAt("[0.35 mm, ∞)") }, "least and a greatest"},
		{func(s *ScrewSetting) { s.Measured = stemAt("11 mm") }, "at most 10 mm"},
		{func(s *ScrewSetting) { s.Wanted = tolerance.MustParseBand("max 0.3 mm") }, "wanted clearance"},
		{func(s *ScrewSetting) { s.Pitch = 0 }, "pitch"},
		{func(s *ScrewSetting) { s.Ratio = tolerance.Ratio{Num: 1000, Den: 1} }, "ratio"},
	} {
		s := screwSet()
		c.spoil(&s)
		_, err := s.Plan()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	one := tolerance.Whole(1)
	for _, change := range []string{"[0.35 mm, ∞)", "11 mm", "-11 mm"} {
		_, err := ScrewAngle(stemAt(change), units.Millimetre, one)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err := ScrewAngle(stemAt("1 mm"), 0, one)
	require.ErrorIs(t, err, ErrInput)
	// A thread so fine that the turns leave the range is refused, not wrapped.
	_, err = ScrewAngle(stemAt("10 mm"), units.Micrometre, tolerance.Ratio{Num: 1, Den: 100})
	if err != nil {
		require.ErrorIs(t, err, ErrInput)
	}
}

// By hand: of 4 mm of travel, 3 mm at the valve over a ratio of 1.5 are 2 mm, and
// leave 2 mm of preload.
func TestHydraulic(t *testing.T) {
	h := Hydraulic{Where: "inlet 2", Travel: stemAt("4 ±0.1 mm"), Clearance: stemAt("[3.0 mm, 3.1 mm)"), Ratio: tolerance.Ratio{Num: 3, Den: 2},
		ClearanceLimits: stemNew("2.0–4.0 mm"), PreloadLimits: stemNew("1.0–3.0 mm")}
	require.Equal(t, stemLen("2 mm"), HydraulicPreload(stemLen("4 mm"), stemLen("3 mm"), h.Ratio))
	r, err := h.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Clearance.Standing)
	require.Equal(t, tolerance.AsNew, r.Preload.Standing)
	lo, hi := inputEnds(r.Preload.Least)
	require.InDelta(t, 3.9-3.1/1.5, lo.Float(units.InMillimetres), 1e-9)
	require.InDelta(t, 2.1, hi.Float(units.InMillimetres), 1e-9)
	require.Equal(t, "none by this test", r.Next)
	for _, c := range []struct {
		change func(*Hydraulic)
		next   string
	}{
		{func(h *Hydraulic) { h.Clearance = stemAt("[0 mm, 0.05 mm)") }, "base circle"},
		{func(h *Hydraulic) { h.Clearance = stemAt("6.0 mm") }, "stop ring"},
		{func(h *Hydraulic) { h.Clearance = stemAt("4.5 mm") }, "another pushrod"},
		{func(h *Hydraulic) { h.Clearance = stemAt("[3.9 mm, 4.1 mm)") }, "find out"},
		{func(h *Hydraulic) { h.ClearanceLimits, h.PreloadLimits = tolerance.Spec{}, stemNew("1.95–3.0 mm") }, "find out"},
	} {
		x := h
		c.change(&x)
		r, err := x.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	contrary := tolerance.Spec{New: tolerance.MustParseBand("max 3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	for _, spoil := range []func(*Hydraulic){
		func(h *Hydraulic) { h.Travel = stemAt("0 mm") }, func(h *Hydraulic) { h.Clearance = stemAt("-1 mm") },
		func(h *Hydraulic) { h.Ratio.Num = -1 }, func(h *Hydraulic) { h.ClearanceLimits = contrary }, func(h *Hydraulic) { h.PreloadLimits = contrary },
	} {
		x := h
		spoil(&x)
		_, err := x.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

// The formulas in their other readings: brackets hold every case, the working is
// written, the uncertainty is that of a sum of squares.
func TestClearanceReadings(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 77))
	for range 200 {
		ratio := clearanceRatios[r.IntN(len(clearanceRatios))]
		bracket := func(at int64) (tolerance.Bracket, func() units.Length) {
			w := 1 + r.Int64N(2e7)
			return inputSpan(units.Length(at), units.Length(at+w)), func() units.Length { return units.Length(at + r.Int64N(w+1)) }
		}
		old, olds := bracket(2e9 + r.Int64N(1e9))
		m, ms := bracket(r.Int64N(5e8))
		s, ss := bracket(2e9 + r.Int64N(1e9))
		for range 10 {
			x, y, z := olds(), ms(), ss()
			require.True(t, ShimThroughRocker(old, m, s, ratio).Contains(ShimThroughRocker(x, y, z, ratio)))
			require.True(t, ClearanceThroughRocker(m, old, s, ratio).Contains(ClearanceThroughRocker(y, x, z, ratio)))
			require.True(t, HydraulicPreload(old, m, ratio).Contains(HydraulicPreload(x, y, ratio)))
			require.True(t, PushrodForPivot(old, m, ratio).Contains(PushrodForPivot(x, y, ratio)))
			require.True(t, RockerMove(m, old, s).Contains(RockerMove(y, x, z)))
		}
	}
	w := ShimThroughRocker(working.Given("old shim", "s", stemLen("2.5 mm")), working.Given("measured", "c", stemLen("0.35 mm")), working.Given("wanted", "w", stemLen("0.20 mm")), tolerance.Ratio{Num: 3, Den: 2})
	s, err := working.Solve(w.Named("new shim", "n"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "n = s + (c − w) × 2 ÷ 3")
	require.Contains(t, s.Text(), "2.60 mm")

	// 3, 4 and 12 µm make 13 µm.
	u := func(name string, at, e string) uncertainty.Estimate {
		x, err := uncertainty.Normal(name, stemLen(at), stemLen(e))
		require.NoError(t, err)
		return x
	}
	e := ShimForClearance(u("old", "2.5 mm", "0.003 mm"), u("blade", "0.35 mm", "0.012 mm"), u("wanted", "0.2 mm", "0.004 mm"))
	require.Equal(t, stemLen("2.65 mm"), e.Value())
	require.Equal(t, stemLen("0.013 mm"), e.StandardUncertainty())
}

func TestClearanceAllocatesNothing(t *testing.T) {
	a, b, c := stemAt("2.5 ±0.001 mm"), stemAt("[0.25 mm, 0.30 mm)"), stemAt("0.2 mm")
	v := ShimValve{Measured: b, Shim: a, Wanted: tolerance.MustParseBand("0.15–0.25 mm"), Ratio: tolerance.Ratio{Num: 3, Den: 2}}
	var sink tolerance.Bracket
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = ShimThroughRocker(a, b, c, tolerance.Ratio{Num: 3, Den: 2}) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { sink, _ = v.Window() }))
	require.Zero(t, testing.AllocsPerRun(100, func() { sink = v.With(a) }))
	_ = sink
}
