package valvetrain

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

type driveFloat = tolerance.Float

func driveMM(t *testing.T, x float64) units.Length {
	l, err := units.Nearest(x, units.InMillimetres)
	require.NoError(t, err)
	return l
}

// scipy is the judge, by following the parts themselves.
func TestDriveReference(t *testing.T) {
	radians := func(s string) driveFloat {
		x, err := strconv.ParseFloat(s, 64)
		require.NoError(t, err)
		return driveFloat(x * math.Pi / 180)
	}
	vectors.Load(t, "reference/valvetrain_drive.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a, b := c.Float("first"), c.Float("second")
		x, y := driveFloat(a), driveFloat(b)
		switch c.Choice("kind", "sweep", "slack", "gear", "cap") {
		case "sweep":
			mid := c.Float("third")
			w, err := SweepWidth(driveMM(t, a), driveMM(t, b), driveMM(t, mid))
			require.NoError(t, err)
			c.Near("expected", w.Float(units.InMillimetres))
			if mid == 0 {
				s := Sweep(x, y)
				c.Near("expected", float64(s))
				require.InEpsilon(t, b, float64(SweepLift(x, s)), 1e-12)
				require.InEpsilon(t, a, float64(SweepArm(y, s)), 1e-12)
			}
		case "slack":
			c.Ignore("third")
			d := ChainDeflection(x, y)
			c.Near("expected", float64(d))
			require.InEpsilon(t, b, float64(ChainSlack(x, d)), 1e-12)
		case "gear":
			pressure, helix, _ := strings.Cut(c.Text("third"), "/")
			gap := GearGap(y, radians(pressure), radians(helix))
			c.Near("expected", float64(gap))
			require.InEpsilon(t, b, float64(GearBacklashForGap(gap, radians(pressure), radians(helix))), 1e-12)
		case "cap":
			c.Ignore("third")
			c.Near("expected", float64(PushrodBallCap(x, y)))
		}
	})
}

// By hand: 20 links of 9.525 mm are 190.5 mm; 192.405 is 1 % more.
func TestChain(t *testing.T) {
	pitch := stemLen("9.525 mm")
	require.Equal(t, stemLen("1.905 mm"), ChainStretch(stemLen("192.405 mm"), pitch, 20))
	require.Equal(t, stemLen("192.405 mm"), ChainLength(pitch, 20, tolerance.Ratio{Num: 1, Den: 100}))
	require.False(t, units.InRange(ChainLength(pitch, 20, tolerance.Ratio{})))
	require.InDelta(t, 1, float64(ChainElongation(driveFloat(192.405), 9.525, 20)), 1e-12)
	require.Equal(t, stemLen("190.5 mm"), ChainOverRollers(stemLen("196.85 mm"), stemLen("6.35 mm")))
	require.Equal(t, stemLen("190.5 mm"), ChainBetweenJaws(stemLen("196.85 mm"), stemLen("184.15 mm")))
	// A tooth's worth of growth lags by a tooth: 360/36 = 10°.
	require.InDelta(t, 10, float64(ChainRetard(driveFloat(9.525), 36, 9.525)), 1e-12)
	require.InDelta(t, 9.525, float64(ChainGrowth(driveFloat(10), 36, 9.525)), 1e-12)

	n, err := ChainLinks(stemAt("192.405 ±0.1 mm"), pitch, tolerance.Ratio{Num: 2, Den: 100})
	require.NoError(t, err)
	require.Equal(t, 20, n)
	_, err = ChainLinks(stemAt("195 ±0.1 mm"), pitch, tolerance.Ratio{Num: 2, Den: 100})
	require.ErrorContains(t, err, "whole number")
	_, err = ChainLinks(stemAt("960 mm"), pitch, tolerance.Ratio{Num: 2, Den: 100})
	require.ErrorContains(t, err, "count them")
	for _, bad := range []struct {
		l    string
		p    units.Length
		most tolerance.Ratio
	}{{"100 mm", 0, tolerance.Whole(0)}, {"[1 mm, ∞)", pitch, tolerance.Whole(0)}, {"100 mm", pitch, tolerance.Whole(1)}, {"100 mm", pitch, tolerance.Ratio{}}, {"1 mm", pitch, tolerance.Whole(0)}} {
		_, err := ChainLinks(stemAt(bad.l), bad.p, bad.most)
		require.ErrorIs(t, err, ErrInput)
	}
}

func driveChain() DriveChain {
	return DriveChain{Where: "camshaft chain", Pitch: stemLen("9.525 mm"), Links: 20, Length: stemAt("191.4 ±0.1 mm"), Limit: tolerance.Ratio{Num: 1, Den: 100},
		Span: stemAt("150 ±1 mm"), Deflection: stemAt("6 ±0.5 mm"), DeflectionLimits: stemWorn("max 10 mm"), Teeth: 36, Pulling: 18}
}

func TestDriveChain(t *testing.T) {
	r, err := driveChain().Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Length.Standing)
	require.InDelta(t, 100*0.8/190.5, r.Least, 1e-9)
	require.InDelta(t, 100*1.0/190.5, r.Greatest, 1e-9)
	// √(150² + 4·6²) − 150 = 0.479235 lies in the slack.
	require.True(t, r.Slack.Contains(stemLen("0.479235 mm")))
	// 0.9 mm over 20 links is 0.81 over 18: 360·0.81/(36·9.525) = 0.850°.
	require.InDelta(t, 0.850, (r.Lag[0]+r.Lag[1])/2, 1e-3)
	require.Contains(t, r.Next, "none by this test")
	for _, c := range []struct {
		change func(*DriveChain)
		next   string
	}{
		{func(c *DriveChain) { c.Length = stemAt("193 mm") }, "renew the chain"},
		{func(c *DriveChain) { c.Deflection = stemAt("12 mm") }, "renew the chain"},
		{func(c *DriveChain) { c.Length = stemAt("192.4 ±0.1 mm") }, "over more links"},
		{func(c *DriveChain) { c.Length = stemAt("190 mm") }, "count the links"},
		{func(c *DriveChain) { c.Deflection = stemAt("10 ±0.5 mm") }, "find out"},
		{func(c *DriveChain) { c.Limit, c.Deflection = tolerance.Ratio{}, tolerance.Bracket{} }, "none is built in"},
	} {
		x := driveChain()
		c.change(&x)
		r, err := x.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	contrary := tolerance.Spec{New: tolerance.MustParseBand("max 3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	for _, spoil := range []func(*DriveChain){
		func(c *DriveChain) { c.Pitch = 0 }, func(c *DriveChain) { c.Links = 0 }, func(c *DriveChain) { c.Links = 9000 }, func(c *DriveChain) { c.Length = stemAt("[190 mm, ∞)") },
		func(c *DriveChain) { c.Length = stemAt("300 mm") }, func(c *DriveChain) { c.Limit = tolerance.Whole(1) }, func(c *DriveChain) { c.Teeth = -1 },
		func(c *DriveChain) { c.Deflection = stemAt("-1 mm") }, func(c *DriveChain) { c.Span = tolerance.Bracket{} }, func(c *DriveChain) { c.DeflectionLimits = contrary },
	} {
		x := driveChain()
		spoil(&x)
		_, err := x.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

func gearPair() GearPair {
	return GearPair{Where: "crankshaft gear to idler", Readings: []tolerance.Bracket{stemAt("0.20 ±0.01 mm"), stemAt("0.26 ±0.01 mm")},
		PitchRadius: stemAt("40 ±0.1 mm"), DialRadius: stemAt("80 ±0.5 mm"), Limits: stemNew("0.05–0.20 mm")}
}

// By hand: at twice the radius the dial reads twice the backlash; 0.1 mm at 40 mm is
// 0.14324°; a dial 30° askew reads cos 30° of it.
func TestGear(t *testing.T) {
	require.Equal(t, stemLen("0.1 mm"), GearBacklash(stemLen("0.2 mm"), stemLen("40 mm"), stemLen("80 mm")))
	require.Equal(t, stemLen("0.2 mm"), GearReading(stemLen("0.1 mm"), stemLen("40 mm"), stemLen("80 mm")))
	require.InDelta(t, 0.143239, float64(GearAngle(driveFloat(0.1), 40)), 1e-6)
	require.InDelta(t, 0.1, float64(GearBacklashForAngle(GearAngle(driveFloat(0.1), 40), 40)), 1e-15)
	require.InDelta(t, 0.2, float64(GearSquare(driveFloat(0.2*math.Sqrt(3)/2), math.Pi/6)), 1e-12)
	require.Equal(t, stemLen("40 mm"), GearPitchRadius(stemLen("120 mm"), 20, 40))
	require.False(t, units.InRange(GearPitchRadius(stemLen("120 mm"), 0, 40)))

	r, err := gearPair().Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Backlash.Standing)
	lo, _ := r.Backlash.Least.Lower()
	_, hi := inputEnds(r.Backlash.Greatest)
	require.InDelta(t, 0.19*39.9/80.5, lo.Float(units.InMillimetres), 1e-9)
	require.InDelta(t, 0.27*40.1/79.5, hi.Float(units.InMillimetres), 1e-9)
	require.True(t, r.Spread.Contains(stemLen("0.03 mm")))
	require.Less(t, r.Angle[0], r.Angle[1])
	require.Equal(t, "none by this test", r.Next)

	askew := gearPair()
	askew.Askew, askew.DialRadius = 30*units.Degree, tolerance.Bracket{}
	askew.Readings = []tolerance.Bracket{stemAt("0.1 mm")}
	a, err := askew.Inspect()
	require.NoError(t, err)
	at, _ := inputEnds(a.Backlash.Least)
	require.InDelta(t, 0.1/math.Cos(math.Pi/6), at.Float(units.InMillimetres), 1e-8)
	require.True(t, a.Spread.Contains(0))
	for _, c := range []struct {
		change func(*GearPair)
		next   string
	}{
		{func(g *GearPair) { g.Readings[0] = stemAt("0 mm") }, "bind"},
		{func(g *GearPair) { g.Readings[0] = stemAt("0.6 mm") }, "apart"},
		{func(g *GearPair) { g.Readings[0] = stemAt("0.40 ±0.01 mm") }, "find out"},
		{func(g *GearPair) { g.Limits = tolerance.Spec{} }, "none are built in"},
	} {
		x := gearPair()
		c.change(&x)
		r, err := x.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	contrary := tolerance.Spec{New: tolerance.MustParseBand("max 3 mm"), Wear: tolerance.MustParseBand("max 2 mm")}
	for _, spoil := range []func(*GearPair){
		func(g *GearPair) { g.Readings = nil }, func(g *GearPair) { g.Readings[0] = stemAt("-1 mm") }, func(g *GearPair) { g.PitchRadius = stemAt("0 mm") },
		func(g *GearPair) { g.DialRadius = stemAt("-1 mm") }, func(g *GearPair) { g.Askew = 80 * units.Degree }, func(g *GearPair) { g.Limits = contrary },
	} {
		x := gearPair()
		spoil(&x)
		_, err := x.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

// The same formulas write their working and carry their uncertainty.
func TestDriveReadings(t *testing.T) {
	s, err := working.Solve(GearBacklash(working.Given("dial", "R", stemLen("0.2 mm")), working.Given("pitch radius", "r", stemLen("40 mm")), working.Given("dial radius", "ρ", stemLen("80 mm"))).
		Named("backlash", "j"), units.Style[units.Length]{Unit: units.InMillimetres, Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "j = R × r ÷ ρ")
	require.Contains(t, s.Text(), "0.10 mm")
	sr, err := working.SolveReal(Sweep(working.GivenReal("arm", "a", 36, "mm"), working.GivenReal("lift", "h", 12, "mm")).Named("width", "s", "mm"), working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, sr.Text(), "0.5035")
	// ds/dh = h/(4·√(a² − h²/4)) = 12/(4·35.496) = 0.0845.
	h, err := uncertainty.NewDual("lift", 12, "mm", uncertainty.NormalShape, 0.1)
	require.NoError(t, err)
	require.InEpsilon(t, 0.1*12/(4*math.Sqrt(36*36-36)), Sweep(uncertainty.ExactlyReal(36), h).StandardUncertainty(), 1e-9)
	// Elongation: 100/(n·p) per millimetre.
	l, err := uncertainty.NewDual("length", 191.4, "mm", uncertainty.NormalShape, 0.05)
	require.NoError(t, err)
	require.InEpsilon(t, 5/190.5, ChainElongation(l, uncertainty.ExactlyReal(9.525), uncertainty.ExactlyReal(20)).StandardUncertainty(), 1e-9)
	// Pushrod: 3 and 4 µm at a ratio of 1 make 5.
	u := func(name, at, e string) uncertainty.Estimate {
		x, err := uncertainty.Normal(name, stemLen(at), stemLen(e))
		require.NoError(t, err)
		return x
	}
	require.Equal(t, stemLen("0.005 mm"), PushrodForClearance(u("rod", "190 mm", "0.003 mm"), u("blade", "0.3 mm", "0.004 mm"), uncertainty.Exactly(stemLen("0.2 mm")), tolerance.Whole(1)).StandardUncertainty())
}

func BenchmarkDrive(b *testing.B) {
	b.Run("lib=tenthou/op=tipcontact", func(b *testing.B) {
		b.ReportAllocs()
		c := tipContact()
		for b.Loop() {
			if _, err := c.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=chain", func(b *testing.B) {
		b.ReportAllocs()
		c := driveChain()
		for b.Loop() {
			if _, err := c.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=gears", func(b *testing.B) {
		b.ReportAllocs()
		g := gearPair()
		for b.Loop() {
			if _, err := g.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// Nothing that can be read panics, and what is answered is in order.
func FuzzDrive(f *testing.F) {
	f.Add("36 ±0.2 mm", "12 mm", "6 mm", "7 mm", "-0.3 mm", int64(9525000000), 20, int64(1), int64(100))
	f.Add("191.4 mm", "[0.3 mm, 0.4 mm)", "0.2 mm", "40 mm", "80 mm", int64(1000000000), 1, int64(3), int64(2))
	f.Fuzz(func(t *testing.T, a, b, c, d, e string, pitch int64, n int, num, den int64) {
		var x [5]tolerance.Bracket
		for i, s := range []string{a, b, c, d, e} {
			var err error
			if x[i], err = tolerance.ParseBracket(s); err != nil {
				return
			}
		}
		ratio := tolerance.Ratio{Num: num, Den: den}
		wanted := tolerance.BandFrom(x[1])
		input := func(err error) bool {
			if err != nil {
				require.ErrorIs(t, err, ErrInput)
			}
			return err == nil
		}
		if r, err := (TipContact{Arm: x[0], Lift: x[1], Shut: x[2], Tip: x[3], Off: x[4]}).Inspect(); input(err) {
			require.True(t, r.Width.Least.InRange() && r.Edge.Least.InRange() && r.Best.InRange())
		}
		if r, err := (DriveChain{Pitch: units.Length(pitch), Links: n, Length: x[0], Limit: ratio, Span: x[3], Deflection: x[2], Teeth: n, Pulling: n}).Inspect(); input(err) {
			require.LessOrEqual(t, r.Least, r.Greatest)
			require.LessOrEqual(t, r.Lag[0], r.Lag[1])
		}
		if r, err := (GearPair{Readings: x[1:3], PitchRadius: x[3], DialRadius: x[4], Askew: units.Angle(pitch)}).Inspect(); input(err) {
			require.LessOrEqual(t, r.Angle[0], r.Angle[1])
		}
		_, err := ScrewSetting{Measured: x[2], Wanted: wanted, Pitch: units.Length(pitch), Ratio: ratio}.Plan()
		input(err)
		_, err = Hydraulic{Travel: x[0], Clearance: x[1], Ratio: ratio}.Inspect()
		input(err)
		_, err = ChainLinks(x[0], units.Length(pitch), ratio)
		input(err)
		p := Pushrod{Checking: x[0], Measured: x[2], Wanted: wanted, Ratio: ratio, Preload: n%2 == 0}
		if c, err := p.Choose([]ShimPiece{{a, x[3]}, {b, x[4]}}); input(err) && c.Ok {
			require.Equal(t, tolerance.Within, wanted.Judge(c.After))
		}
	})
}
