package valvetrain

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

func camRatio(s string) tolerance.Ratio {
	r, err := tolerance.ParseRatio(s)
	if err != nil {
		panic(err)
	}
	return r
}

func TestLobePractice(t *testing.T) {
	vectors.Load(t, "practice/valvetrain_cam.txt").Each(t, func(t *testing.T, c vectors.Case) {
		height, base, clearance := stemLen(c.Text("height")), stemLen(c.Text("base")), stemLen(c.Text("clearance"))
		lobe, valve, ratio := stemLen(c.Text("lobe")), stemLen(c.Text("valve")), camRatio(c.Text("ratio"))
		require.Equal(t, lobe, LobeLift(height, base))
		require.Equal(t, height, LobeHeight(base, lobe))
		require.Equal(t, base, LobeBase(height, lobe))
		require.Equal(t, valve, ValveLift(lobe, clearance, ratio))
		require.Equal(t, lobe, LobeLiftFor(valve, clearance, ratio))
		require.Equal(t, clearance, ClearanceFromLifts(lobe, valve, ratio))
		// Clearance that is added is off by twice itself.
		require.Equal(t, 2*clearance, ValveLift(lobe, -clearance, ratio)-valve)
		r, err := RockerRatioOf(valve+clearance, lobe)
		require.NoError(t, err)
		require.Equal(t, ratio, r)
		require.Equal(t, valve, ValveLiftByTravels(lobe, clearance, valve+clearance, lobe))
	})
}

func TestLobeWear(t *testing.T) {
	// 0.30 mm off the height, 0.10 off the base circle: 0.20 mm of lift.
	require.Equal(t, stemLen("0.3 mm"), LobeHeightWear(stemLen("44.6 mm"), stemLen("44.3 mm")))
	require.Equal(t, stemLen("0.1 mm"), LobeBaseWear(stemLen("36 mm"), stemLen("35.9 mm")))
	require.Equal(t, stemLen("0.2 mm"), LobeLiftLoss(LobeLift(stemLen("44.6 mm"), stemLen("36 mm")), LobeLift(stemLen("44.3 mm"), stemLen("35.9 mm"))))
	require.Equal(t, stemLen("0.05 mm"), LobeTaper(stemLen("44.6 mm"), stemLen("44.55 mm"), stemLen("44.58 mm")))
}

func TestCamInverses(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 10))
	for range 2000 {
		a, b := units.Length(r.Int64N(5e10)), units.Length(r.Int64N(1e9))
		require.Equal(t, a, CamJournalFor(CamBearingFor(a, b), b))
		require.Equal(t, b, CamJournalClearance(CamBearingFor(a, b), a))
		require.Equal(t, a, RockerShaftFor(RockerBushFor(a, b), b))
		require.Equal(t, b, RockerClearance(RockerBushFor(a, b), a))
		require.Equal(t, a, FollowerFor(FollowerBoreFor(a, b), b))
		require.Equal(t, b, FollowerClearance(FollowerBoreFor(a, b), a))
		require.Equal(t, b, CamEndFloat(CamThrustSpaceFor(a, b), a))
		require.Equal(t, a, CamThrustPlateFor(CamThrustSpaceFor(a, b), b))
		require.Equal(t, b, CamBend(CamRunOutOf(b)))
		require.Equal(t, b, CamRunOut(a, a+b, a+b/2))
		require.Equal(t, b, RockerShaftWear(a, a-b))
		ratio := tolerance.Ratio{Num: 1 + r.Int64N(20), Den: 1 + r.Int64N(20)}
		lift := LobeLiftFor(a, b, ratio)
		require.InDelta(t, int64(a), int64(ValveLift(lift, b, ratio)), 11)
		require.InDelta(t, int64(a), int64(ValveLiftCamSide(LobeLiftForCamSide(a, b, ratio), b, ratio)), 11)
		require.LessOrEqual(t, ValveLift(a, b, ratio), ValveLift(a, 0, ratio), "clearance takes from the lift")
	}
	require.False(t, ValveLift(stemLen("8 mm"), 0, tolerance.Ratio{}).InRange())
}

// Bracket readings hold every case within their ends.
func TestCamBrackets(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 10))
	draw := func(lo, width int64) (tolerance.Bracket, func() units.Length) {
		a, w := lo+r.Int64N(lo+1), 1+r.Int64N(width)
		return inputSpan(units.Length(a), units.Length(a+w)), func() units.Length { return units.Length(a + r.Int64N(w+1)) }
	}
	ratio := camRatio("1.6")
	for range 300 {
		h, hs := draw(3e10, 1e8)
		b, bs := draw(1e10, 1e8)
		c, cs := draw(1e8, 1e7)
		v, vs := draw(1e10, 1e8)
		lift, travels := ValveLift(LobeLift(h, b), c, ratio), ValveLiftByTravels(h, c, v, b)
		for range 10 {
			x, y, z := hs(), bs(), cs()
			require.True(t, lift.Contains(ValveLift(LobeLift(x, y), z, ratio)))
			require.True(t, travels.Contains(ValveLiftByTravels(x, z, vs(), y)))
		}
	}
}

func TestCamWorkingAndUncertainty(t *testing.T) {
	lobe := LobeLift(working.Given("lobe height", "H", stemLen("44.6 mm")), working.Given("base circle", "D", stemLen("36 mm"))).Named("lobe lift", "s")
	l := ValveLift(lobe, working.Given("valve clearance", "c", stemLen("0.25 mm")), camRatio("3/2")).Named("valve lift", "L")
	s, err := working.Solve(l, units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "12.65 mm")
	require.Contains(t, s.Text(), "s × 3 ÷ 2 − c")

	// Two micrometer readings of 3 and 4 µm make 5 µm.
	h, err := uncertainty.Normal("height", stemLen("44.6 mm"), stemLen("0.003 mm"))
	require.NoError(t, err)
	b, err := uncertainty.Normal("base", stemLen("36 mm"), stemLen("0.004 mm"))
	require.NoError(t, err)
	require.Equal(t, stemLen("0.005 mm"), LobeLift(h, b).StandardUncertainty())

	// 0.01 mm of 8 mm over 5 mm: a ratio of 1.6 ± 0.002.
	v, err := uncertainty.NewDual("valve lift", 8, "mm", uncertainty.NormalShape, 0.01)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	require.InDelta(t, 1.6, RockerRatio(v, x(5)).Value(), 1e-12)
	require.InDelta(t, 0.002, RockerRatio(v, x(5)).StandardUncertainty(), 1e-12)
	sr, err := working.SolveReal(RockerRatioThroughClearance(working.GivenReal("valve lift", "L", 7.75, "mm"), working.GivenReal("clearance", "c", 0.25, "mm"),
		working.GivenReal("lobe lift", "s", 5, "mm")).Named("ratio", "i", ""), working.RealStyle{Places: 3})
	require.NoError(t, err)
	require.Contains(t, sr.Text(), "1.600")
	type f = tolerance.Float
	require.Equal(t, f(8), RockerValveTravel(f(1.6), f(5)))
	require.Equal(t, f(5), RockerCamTravel(f(1.6), f(8)))
}

func TestRockerRatios(t *testing.T) {
	r, err := RockerRatioBetween(stemAt("8 ±0.01 mm"), stemAt("5 ±0.01 mm"))
	require.NoError(t, err)
	require.Equal(t, camRatio("799/501"), r.Least)
	require.Equal(t, camRatio("801/499"), r.Greatest)
	for _, bad := range [][2]string{{"0 mm", "5 mm"}, {"8 mm", "0 mm"}, {"[1 mm, ∞)", "5 mm"}, {"8 mm", "-5 mm"}} {
		_, err := RockerRatioBetween(stemAt(bad[0]), stemAt(bad[1]))
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = RockerRatioOf(0, 1)
	require.ErrorIs(t, err, ErrInput)
	_, err = RockerRatioOf(1, -1)
	require.ErrorIs(t, err, ErrInput)
}

func BenchmarkCam(b *testing.B) {
	b.Run("lib=tenthou/op=valvelift", func(b *testing.B) {
		b.ReportAllocs()
		lobe, c, ratio := stemLen("8.6 mm"), stemLen("0.25 mm"), camRatio("1.6")
		var sink units.Length
		for b.Loop() {
			sink = ValveLift(lobe, c, ratio)
		}
		_ = sink
	})
	b.Run("lib=float64/op=valvelift", func(b *testing.B) {
		b.ReportAllocs()
		lobe, c, ratio := 8.6, 0.25, 1.6
		var sink float64
		for b.Loop() {
			sink = lobe*ratio - c
		}
		_ = sink
	})
	b.Run("lib=tenthou/op=inspect", func(b *testing.B) {
		b.ReportAllocs()
		s := camSurveyed()
		for b.Loop() {
			if _, err := s.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func TestCamAllocatesNothing(t *testing.T) {
	lobe, c, ratio := stemAt("8.6 ±0.01 mm"), stemAt("0.25 mm"), camRatio("1.6")
	require.Zero(t, testing.AllocsPerRun(100, func() { camSink = ValveLift(lobe, c, ratio) }))
}

var camSink tolerance.Bracket
