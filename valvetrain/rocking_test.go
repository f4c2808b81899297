package valvetrain

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// stemAt reads a bracket, stemLen a length, stemBand limits for new parts.
func stemAt(s string) tolerance.Bracket {
	b, err := tolerance.ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return b
}

func stemLen(s string) units.Length { return units.MustParseLength(s) }

func stemNew(s string) tolerance.Spec { return tolerance.Spec{New: tolerance.MustParseBand(s)} }

func stemWorn(s string) tolerance.Spec { return tolerance.Spec{Wear: tolerance.MustParseBand(s)} }

// The exact tilt against a root finder; the simple formula's shortfall lies
// between nothing and its bound.
func TestRockingReference(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "reference/valvetrain_rocking.txt").Each(t, func(t *testing.T, c vectors.Case) {
		D, d, L, h, R := c.Float("bore"), c.Float("stem"), c.Float("engaged"), c.Float("beyond"), c.Float("travel")
		require.InEpsilon(t, c.Float("slope"), float64(RockingSlope(f(D), f(d), f(L))), 1e-11)
		require.InEpsilon(t, R, float64(RockingTravelExact(f(D), f(d), f(L), f(h))), 1e-11)
		require.InDelta(t, D-d, float64(RockingClearanceExact(f(R), f(d), f(L), f(h))), 1e-14)

		mm := func(x float64) units.Length {
			l, err := units.Nearest(x, units.InMillimetres)
			require.NoError(t, err)
			return l
		}
		clearance := mm(D) - mm(d)
		simple := RockingClearance(mm(R), mm(L), mm(h))
		bound := RockingShortfall(mm(R), mm(L), mm(h), mm(d))
		require.LessOrEqual(t, simple, clearance+2, "the simple formula is never above")
		require.LessOrEqual(t, clearance, simple+bound+2, "nor farther below than the bound")

		// And Inspect's bracket holds the truth, without being wider than that.
		r, err := Rocking{Travel: tolerance.Exactly(mm(R)), Engaged: tolerance.Exactly(mm(L)), Beyond: tolerance.Exactly(mm(h)),
			Stem: tolerance.Exactly(mm(d)), Straight: true}.Inspect()
		require.NoError(t, err)
		lo, hi := inputEnds(r.Mean)
		require.LessOrEqual(t, lo, clearance+1)
		require.GreaterOrEqual(t, hi, clearance-1)
		require.LessOrEqual(t, hi-lo, bound+3)
	})
}

// Published check values, part B, 4: R to its digits, the fourth in inches.
func TestRockingTable(t *testing.T) {
	type f = tolerance.Float
	for _, c := range []struct{ D, d, L, h, R, tol float64 }{
		{8.05, 8.00, 50, 20, 0.089993, 5e-7}, {8.05, 8.00, 50, 25, 0.099992, 5e-7},
		{7.05, 7.00, 40, 10, 0.074992, 5e-7}, {0.3752, 0.3720, 2.0, 0.5, 0.0047993, 5e-8},
	} {
		require.InDelta(t, c.R, float64(RockingTravelExact(f(c.D), f(c.d), f(c.L), f(c.h))), c.tol)
	}
	// V43.
	require.Equal(t, stemLen("0.05 mm"), RockingClearance(stemLen("0.09 mm"), stemLen("50 mm"), stemLen("20 mm")))
	// The dial at the guide's end, and half its length out.
	require.Equal(t, stemLen("0.05 mm"), RockingTravel(stemLen("0.05 mm"), stemLen("50 mm"), 0))
	require.Equal(t, stemLen("0.10 mm"), RockingTravel(stemLen("0.05 mm"), stemLen("50 mm"), stemLen("25 mm")))
}

// Every inverse undoes its formula; clearance is linear in the reading.
func TestRockingInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 43))
	for range 2000 {
		L, h := units.Length(1e10+r.Int64N(9e10)), units.Length(1+r.Int64N(6e10))
		n, f := units.Length(r.Int64N(5e8)), units.Length(r.Int64N(5e8))
		require.InDelta(t, int64(n), int64(RockingClearance(RockingTravel(n, L, h), L, h)), 2)
		a, b := RockingClearance(n, L, h), RockingClearance(2*n, L, h)
		require.InDelta(t, int64(2*a), int64(b), 2, "linear in the reading")
		R := RockingMouths(n, f, L, h)
		require.InDelta(t, int64(n), int64(RockingNear(R, f, L, h)), 3)
		require.InDelta(t, int64(f), int64(RockingFar(R, n, L, h)), float64(L/h)+3)
		require.InDelta(t, int64(RockingMean(n, f, L, h)), int64(RockingClearance(R, L, h)), 3, "the simple formula gives the mean")
		require.GreaterOrEqual(t, RockingMean(n, f, L, h), min(n, f)-2)
		require.LessOrEqual(t, RockingMean(n, f, L, h), max(n, f)+2)
		h2 := h + units.Length(1e9+r.Int64N(3e10))
		R2 := RockingMouths(n, f, L, h2)
		loose := float64((L+h2)/(h2-h)) + 5
		require.InDelta(t, int64(n), int64(RockingNearOfTwo(R, h, R2, h2)), loose)
		require.InDelta(t, int64(f), int64(RockingFarOfTwo(R, h, R2, h2, L)), loose)
	}
}

// A linear programme is the judge of the travel over several stations.
func TestRockingStationsReference(t *testing.T) {
	vectors.Load(t, "reference/valvetrain_mouths.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var stations []RockingStation
		clearances := strings.Split(c.Text("clearances"), ",")
		for i, z := range strings.Split(c.Text("depths"), ",") {
			stations = append(stations, RockingStation{stemLen(z + " mm"), stemAt(clearances[i] + " µm")})
		}
		travel, err := RockingStations(stemLen(c.Text("beyond")+" mm"), stations...)
		require.NoError(t, err)
		lo, hi := inputEnds(travel)
		require.LessOrEqual(t, hi-lo, 1*units.Picometre)
		c.Near("travel", float64(lo)/1e6)
		if len(stations) == 2 {
			n, _ := inputEnds(stations[0].Clearance)
			f, _ := inputEnds(stations[1].Clearance)
			require.InDelta(t, int64(lo), int64(RockingMouths(n, f, stations[1].Depth, stemLen(c.Text("beyond")+" mm"))), 1)
		}
	})
	_, err := RockingStations(0, RockingStation{0, stemAt("0.05 mm")})
	require.ErrorIs(t, err, ErrInput)
	for _, bad := range [][]RockingStation{
		{{0, stemAt("0.05 mm")}, {0, stemAt("0.05 mm")}},
		{{-1, stemAt("0.05 mm")}, {2, stemAt("0.05 mm")}},
		{{0, stemAt("-0.05 mm")}, {2, stemAt("0.05 mm")}},
		{{0, stemAt("[0.05 mm, ∞)")}, {2, stemAt("0.05 mm")}},
	} {
		_, err := RockingStations(0, bad...)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = RockingStations(-1, RockingStation{0, stemAt("0.05 mm")}, RockingStation{1, stemAt("0.05 mm")})
	require.ErrorIs(t, err, ErrInput)
}

func rocked() Rocking {
	return Rocking{Where: "exhaust 3", Travel: stemAt("0.09 ±0.005 mm"), Engaged: stemAt("50 ±0.5 mm"), Beyond: stemAt("20 ±0.5 mm"),
		Stem: stemAt("7.95 ±0.002 mm"), ClearanceLimits: stemWorn("max 0.10 mm"), TravelLimits: stemWorn("max 0.15 mm")}
}

// By hand: 0.085·49.5/(49.5 + 41) = 0.046492 and 0.095·50.5/(50.5 + 39) =
// 0.053603; a mouth has at most R·L/(L + h) = 0.095·50.5/(50.5 + 19.5) = 0.068536
// near the dial and R·L/h = 0.095·50.5/19.5 = 0.246026 at the far end.
func TestRockingInspect(t *testing.T) {
	r, err := rocked().Inspect()
	require.NoError(t, err)
	lo, hi := inputEnds(r.Mean)
	require.InDelta(t, 0.046492, lo.Float(units.InMillimetres), 1e-6)
	require.InDelta(t, 0.053603, hi.Float(units.InMillimetres), 1e-5)
	_, near := inputEnds(r.Near)
	_, far := inputEnds(r.Far)
	require.InDelta(t, 0.068536, near.Float(units.InMillimetres), 1e-4)
	require.InDelta(t, 0.246026, far.Float(units.InMillimetres), 3e-4)
	require.Equal(t, tolerance.Usable, r.Travel.Standing, "the manual's limit is for the travel itself")
	require.Equal(t, tolerance.CantTell, r.Clearance.Standing, "a mouth may be past it")
	require.Contains(t, r.Next, "three depths")

	straight := rocked()
	straight.Straight = true
	r, err = straight.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Clearance.Standing)
	require.Equal(t, r.Mean, r.Far)
	require.Contains(t, r.Next, "none by this test")

	// A new guide's clearance known: the mouths are bounded more closely.
	known := rocked()
	known.LeastMouth = stemLen("0.03 mm")
	k, err := known.Inspect()
	require.NoError(t, err)
	_, kFar := inputEnds(k.Far)
	require.Less(t, kFar, far)

	// At the guide's very end the far mouth doesn't show.
	end := rocked()
	end.Beyond = stemAt("0 mm")
	e, err := end.Inspect()
	require.NoError(t, err)
	_, kind := e.Far.Upper()
	require.Equal(t, tolerance.Absent, kind)
	require.Equal(t, tolerance.CantTell, e.Clearance.Standing)

	worn := rocked()
	worn.Travel = stemAt("0.3 ±0.005 mm")
	w, err := worn.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, w.Travel.Standing)
	require.Equal(t, tolerance.PastWearLimit, w.Clearance.Standing, "at least one mouth is no better than the mean")
	require.Contains(t, w.Next, "apart")

	open := rocked()
	open.Straight, open.TravelLimits = true, stemWorn("max 0.09 mm")
	o, err := open.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, o.Travel.Standing)
	require.Equal(t, o.Travel.Settle, o.Next)
}

func TestRockingRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Rocking)
		says  string
	}{
		{func(r *Rocking) { r.Travel = stemAt("[0.05 mm, ∞)") }, "travel of the dial"},
		{func(r *Rocking) { r.Travel = stemAt("-0.1 mm") }, "travel of the dial"},
		{func(r *Rocking) { r.Engaged = stemAt("0 mm") }, "engaged length"},
		{func(r *Rocking) { r.Beyond = stemAt("-1 mm") }, "dial beyond the guide"},
		{func(r *Rocking) { r.Stem = tolerance.Bracket{} }, "stem diameter"},
		{func(r *Rocking) { r.Travel = stemAt("30 mm") }, "small enough"},
		{func(r *Rocking) { r.LeastMouth = -1 }, "least clearance of a mouth"},
		{func(r *Rocking) { r.LeastMouth = stemLen("0.5 mm") }, "least clearance of a mouth"},
		{func(r *Rocking) {
			r.TravelLimits = stemNew("max 0.1 mm")
			r.TravelLimits.Wear = tolerance.MustParseBand("max 0.05 mm")
		}, "limits of the travel"},
		{func(r *Rocking) {
			r.ClearanceLimits = stemNew("max 0.1 mm")
			r.ClearanceLimits.Wear = tolerance.MustParseBand("max 0.05 mm")
		}, "limits of the stem-to-guide"},
		{func(r *Rocking) { r.Beyond = stemAt("0.000000001 mm") }, "dial beyond the guide"},
	} {
		r := rocked()
		c.spoil(&r)
		_, err := r.Inspect()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

// The bracket reading holds every case within its ends.
func TestRockingBrackets(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 43))
	draw := func(lo, width int64) (tolerance.Bracket, func() units.Length) {
		a, w := lo+r.Int64N(lo+1), 1+r.Int64N(width)
		return inputSpan(units.Length(a), units.Length(a+w)), func() units.Length { return units.Length(a + r.Int64N(w+1)) }
	}
	for range 300 {
		R, Rs := draw(5e7, 1e7)
		L, Ls := draw(2e10, 1e9)
		h, hs := draw(1e10, 1e9)
		c, travel := RockingClearance(R, L, h), RockingTravel(R, L, h)
		for range 20 {
			x, y, z := Rs(), Ls(), hs()
			require.True(t, c.Contains(RockingClearance(x, y, z)))
			require.True(t, travel.Contains(RockingTravel(x, y, z)))
		}
	}
}

// The same formula writes its working and carries its uncertainty: at L = 50 and
// h = 20, c = R·5/9, so that a standard uncertainty of 9 µm of travel is one of
// 5 µm of clearance.
func TestRockingWorkingAndUncertainty(t *testing.T) {
	c := RockingClearance(working.Given("travel", "R", stemLen("0.09 mm")), working.Given("engaged", "L", stemLen("50 mm")), working.Given("beyond", "h", stemLen("20 mm"))).
		Named("clearance", "c")
	s, err := working.Solve(c, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "c = R × L ÷ (L + 2 × h)")
	require.Contains(t, s.Text(), "0.050 mm")

	R, err := uncertainty.Normal("dial", stemLen("0.09 mm"), stemLen("0.009 mm"))
	require.NoError(t, err)
	e := RockingClearance(R, uncertainty.Exactly(stemLen("50 mm")), uncertainty.Exactly(stemLen("20 mm")))
	require.Equal(t, stemLen("0.05 mm"), e.Value())
	require.Equal(t, stemLen("0.005 mm"), e.StandardUncertainty())

	d, err := uncertainty.NewDual("travel", 0.09, "mm", uncertainty.NormalShape, 0.009)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	require.InEpsilon(t, 0.005, RockingClearanceExact(d, x(8), x(50), x(20)).StandardUncertainty(), 1e-3)
	sr, err := working.SolveReal(RockingTravelExact(working.GivenReal("bore", "D", 8.05, "mm"), working.GivenReal("stem", "d", 8, "mm"),
		working.GivenReal("engaged", "L", 50, "mm"), working.GivenReal("beyond", "h", 20, "mm")).Named("travel", "R", "mm"), working.RealStyle{Places: 6})
	require.NoError(t, err)
	require.Contains(t, sr.Text(), "0.089993")
}

func TestRockingAllocatesNothing(t *testing.T) {
	R, L, h, d := stemAt("0.09 ±0.005 mm"), stemAt("50 mm"), stemAt("20 mm"), stemAt("8 mm")
	require.Zero(t, testing.AllocsPerRun(100, func() { rockingSink = RockingClearance(R, L, h) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { rockingSink = RockingShortfall(R, L, h, d) }))
}

var rockingSink tolerance.Bracket

func BenchmarkRocking(b *testing.B) {
	b.Run("lib=tenthou/op=clearance", func(b *testing.B) {
		b.ReportAllocs()
		R, L, h := stemLen("0.09 mm"), stemLen("50 mm"), stemLen("20 mm")
		var sink units.Length
		for b.Loop() {
			sink = RockingClearance(R, L, h)
		}
		_ = sink
	})
	b.Run("lib=float64/op=clearance", func(b *testing.B) {
		b.ReportAllocs()
		R, L, h := 0.09, 50.0, 20.0
		var sink float64
		for b.Loop() {
			sink = R * L / (L + 2*h)
		}
		_ = sink
	})
	b.Run("lib=tenthou/op=inspect", func(b *testing.B) {
		b.ReportAllocs()
		r := rocked()
		for b.Loop() {
			if _, err := r.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func FuzzRocking(f *testing.F) {
	f.Add("0.09 ±0.005 mm", "50 mm", "20 mm", "8 mm", int64(0), false)
	f.Add("0.09 mm", "50 mm", "0 mm", "8 mm", int64(1e7), true)
	f.Fuzz(func(t *testing.T, travel, engaged, beyond, stem string, least int64, straight bool) {
		var r Rocking
		for _, x := range []struct {
			text string
			into *tolerance.Bracket
		}{{travel, &r.Travel}, {engaged, &r.Engaged}, {beyond, &r.Beyond}, {stem, &r.Stem}} {
			b, err := tolerance.ParseBracket(x.text)
			if err != nil {
				return
			}
			*x.into = b
		}
		r.LeastMouth, r.Straight = units.Length(least), straight
		out, err := r.Inspect()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, hi := inputEnds(out.Mean)
		require.True(t, 0 <= lo && lo <= hi)
	})
}
