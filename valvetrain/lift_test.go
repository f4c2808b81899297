package valvetrain

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/interp"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// liftTable reads a table of vectors: degrees and millimetres.
func liftTable(angles, lifts string) (points []LiftPoint) {
	mm := strings.Split(lifts, ",")
	for i, a := range strings.Split(angles, ",") {
		points = append(points, LiftPoint{timingDeg(a), stemLen(mm[i] + " mm")})
	}
	return points
}

// liftLobe is an invented symmetric lobe of n points: 250° of duration about a
// centre, 10 mm.
func liftLobe(n int, centre float64) LiftTable {
	t := LiftTable{}
	from, step := centre-150, 300/float64(n-1)
	for i := range n {
		a := from + step*float64(i)
		y := 0.0
		if d := math.Abs(a-centre) / 250; d < 0.5 {
			y = 10 * math.Pow(math.Cos(math.Pi*d), 2)
		}
		angle, _ := units.Nearest(a, units.InDegrees)
		lift, _ := units.Nearest(y, units.InMillimetres)
		t.Points = append(t.Points, LiftPoint{angle, lift})
	}
	return t
}

func TestLiftReference(t *testing.T) {
	vectors.Load(t, "reference/valvetrain_lift.txt").Each(t, func(t *testing.T, c vectors.Case) {
		table := LiftTable{Points: liftTable(c.Text("angles"), c.Text("lifts"))}
		require.NoError(t, table.Way.UnmarshalText([]byte(c.Text("way"))))
		curve, err := table.Curve()
		require.NoError(t, err)
		lift, err := curve.Lift(timingDeg(c.Text("query")))
		require.NoError(t, err)
		c.Near("lift", lift.Float(units.InMillimetres))
		level := stemLen(c.Text("level") + " mm")
		opening, closing, err := curve.AnglesAt(level)
		require.NoError(t, err)
		c.Near("opening", opening.Float(units.InDegrees))
		c.Near("closing", closing.Float(units.InDegrees))
		a, err := curve.Analyse(0)
		require.NoError(t, err)
		c.Near("peak_at", a.Peak.Angle.Float(units.InDegrees))
		c.Near("peak", a.Peak.Lift.Float(units.InMillimetres))
		c.Near("area", a.AreaMMDeg)
		above, err := curve.AreaAbove(level)
		require.NoError(t, err)
		c.Near("area_above", above)
		c.Near("up", a.Opening.Value)
		c.Near("down", a.Closing.Value)
		c.Near("faster", a.Upward.Value)
		c.Near("slower", a.Downward.Value)
	})
}

func TestLiftSmoothReference(t *testing.T) {
	vectors.Load(t, "reference/valvetrain_liftsmooth.txt").Each(t, func(t *testing.T, c vectors.Case) {
		curve, err := LiftTable{Points: liftTable(c.Text("angles"), c.Text("lifts"))}.Curve()
		require.NoError(t, err)
		a, err := curve.Analyse(timingDeg(c.Text("half")))
		require.NoError(t, err)
		require.Equal(t, c.Int("fitted"), a.Fitted)
		for col, e := range map[string]LiftExtreme{"up": a.Opening, "down": a.Closing, "faster": a.Upward, "slower": a.Downward} {
			require.Equal(t, timingDeg(c.Text(col+"_at")), e.Angle, col)
			c.Near(col, e.Value)
		}
	})
}

// Both ways against a second library, on tables of many kinds.
func TestLiftPeers(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 10))
	for range 300 {
		n := 4 + r.IntN(60)
		var table LiftTable
		x, y := make([]float64, n), make([]float64, n)
		a := units.Angle(0)
		for i := range n {
			a += units.Degree/10 + units.Angle(r.Int64N(int64(10*units.Degree)))
			l := units.Length(r.Int64N(int64(10 * units.Millimetre)))
			table.Points = append(table.Points, LiftPoint{a, l})
			x[i], y[i] = a.Float(units.InDegrees), l.Float(units.InMillimetres)
		}
		for way, peer := range map[LiftWay]interp.FittablePredictor{LiftShape: &interp.FritschButland{}, LiftSpline: &interp.NotAKnotCubic{}} {
			table.Way = way
			curve, err := table.Curve()
			require.NoError(t, err)
			require.NoError(t, peer.Fit(x, y))
			for range 40 {
				q := table.Points[0].Angle + units.Angle(r.Int64N(int64(a-table.Points[0].Angle+1)))
				got, err := curve.Lift(q)
				require.NoError(t, err)
				want := peer.Predict(q.Float(units.InDegrees))
				require.InDelta(t, want, got.Float(units.InMillimetres), 1e-7*max(1, math.Abs(want)), way)
			}
		}
	}
}

// The points themselves, a curve that is moved, and the shape-preserving way's
// promise.
func TestLiftProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 10))
	for _, way := range []LiftWay{LiftShape, LiftSpline} {
		table := liftLobe(61, 110)
		table.Way = way
		curve, err := table.Curve()
		require.NoError(t, err)
		require.Equal(t, way, curve.Way())
		require.Equal(t, AtValve, curve.Side())
		require.Equal(t, table.Points, curve.Points())
		first, last := curve.Span()
		require.Equal(t, timingDeg("-40"), first)
		require.Equal(t, timingDeg("260"), last)
		for _, p := range table.Points {
			got, err := curve.Lift(p.Angle)
			require.NoError(t, err)
			require.InDelta(t, int64(p.Lift), int64(got), 2)
		}
		by := timingDeg("7.5")
		moved, err := curve.Advanced(by)
		require.NoError(t, err)
		for range 200 {
			l := units.Length(1e8 + r.Int64N(9.8e9))
			o, c, err := curve.AnglesAt(l)
			require.NoError(t, err)
			mo, mc, err := moved.AnglesAt(l)
			require.NoError(t, err)
			require.InDelta(t, int64(o-by), int64(mo), 2)
			require.InDelta(t, int64(c-by), int64(mc), 2)
			d, err := curve.Duration(l)
			require.NoError(t, err)
			require.Equal(t, c-o, d)
			for _, at := range []units.Angle{o, c} {
				got, err := curve.Lift(at)
				require.NoError(t, err)
				require.InDelta(t, int64(l), int64(got), 3)
			}
			middle, after, err := curve.MidOpen(l)
			require.NoError(t, err)
			require.InDelta(t, 110, middle.Float(units.InDegrees), 1e-6, "a symmetric lobe")
			require.InDelta(t, 0, after.Float(units.InDegrees), 1e-6)
			e, err := curve.Events(InletValve, l)
			require.NoError(t, err)
			require.Equal(t, ValveEvents{InletValve, -o, c - 180*units.Degree, TimingLift{l, AtValve}}, e)
		}
		a, err := curve.Analyse(0)
		require.NoError(t, err)
		b, err := moved.Analyse(0)
		require.NoError(t, err)
		require.Equal(t, a.AreaMMDeg, b.AreaMMDeg)
		require.Equal(t, a.Peak.Angle-by, b.Peak.Angle)
		// 10 mm · cos² over 250°: the area is 10·250/2, the greatest velocity
		// 10·π/250 at 45° from the middle of each half.
		require.InEpsilon(t, 1250, a.AreaMMDeg, 2e-3)
		require.InEpsilon(t, 10*math.Pi/250, a.Opening.Value, 6e-3)
		require.InEpsilon(t, -10*math.Pi/250, a.Closing.Value, 6e-3)
	}
}

// An asymmetric lobe: mid-open isn't where it lifts most. And an exhaust valve's
// events are counted from its own dead centres.
func TestLiftEvents(t *testing.T) {
	curve, err := LiftTable{Points: liftTable("-240,-220,-180,-120,-60,0,20,40", "0,0,4,9,7,1,0,0")}.Curve()
	require.NoError(t, err)
	middle, after, err := curve.MidOpen(stemLen("0.5 mm"))
	require.NoError(t, err)
	require.Greater(t, middle, timingDeg("-110"))
	require.Equal(t, timingDeg("-120"), middle+after)
	e, err := curve.Events(ExhaustValve, 0)
	require.NoError(t, err)
	require.Equal(t, ValveEvents{ExhaustValve, timingDeg("40"), timingDeg("20"), TimingLift{}}, e)
	centre, err := e.Centre()
	require.NoError(t, err)
	require.Equal(t, timingDeg("100"), centre)
	far, err := curve.Advanced(timingDeg("700"))
	require.NoError(t, err)
	_, err = far.Events(ExhaustValve, 0)
	require.ErrorIs(t, err, ErrInput, "more than a turn from its dead centre")
}

// Where a spline's greatest lift lies between two points, a lift just below it is
// passed on both sides within that segment: by the curve's parabola there.
func TestLiftNearPeak(t *testing.T) {
	// Exactly 10 − (a − 5)²/10 at its points, which a not-a-knot spline follows.
	curve, err := LiftTable{Way: LiftSpline, Points: liftTable("0,2,4,7,9,10", "7.5,9.1,9.9,9.6,8.4,7.5")}.Curve()
	require.NoError(t, err)
	p, err := curve.Peak()
	require.NoError(t, err)
	require.InDelta(t, 5, p.Angle.Float(units.InDegrees), 1e-6)
	require.InDelta(t, 10, p.Lift.Float(units.InMillimetres), 2e-9)
	o, c, err := curve.AnglesAt(stemLen("9.975 mm"))
	require.NoError(t, err)
	require.InDelta(t, 4.5, o.Float(units.InDegrees), 1e-8)
	require.InDelta(t, 5.5, c.Float(units.InDegrees), 1e-8)
	a, err := curve.Analyse(0)
	require.NoError(t, err)
	require.InDelta(t, 1, a.Opening.Value, 1e-12)
	require.InDelta(t, -1, a.Closing.Value, 1e-12)
	require.InDelta(t, -0.2, a.Upward.Value, 1e-12)
	require.InDelta(t, -0.2, a.Downward.Value, 1e-12)
	require.InDelta(t, 100-250./30, a.AreaMMDeg, 1e-11)
}

func TestLiftAtValve(t *testing.T) {
	table := LiftTable{Side: AtFollower, Points: liftTable("0,40,80,120,160", "0,2,5,2,0")}
	curve, err := table.Curve()
	require.NoError(t, err)
	v, err := curve.AtValve(camRatio("1.6"), stemLen("0.4 mm"))
	require.NoError(t, err)
	require.Equal(t, AtValve, v.Side())
	p, err := v.Peak()
	require.NoError(t, err)
	require.Equal(t, LiftPoint{timingDeg("80"), stemLen("7.6 mm")}, p)
	a, err := v.Analyse(0)
	require.NoError(t, err)
	// The clearance isn't area.
	whole, err := v.AreaAbove(stemLen("-0.4 mm"))
	require.NoError(t, err)
	require.Less(t, a.AreaMMDeg, whole)
	for _, bad := range []func() error{
		func() error { _, err := v.AtValve(camRatio("1"), 0); return err },
		func() error { _, err := curve.AtValve(tolerance.Ratio{}, 0); return err },
		func() error { _, err := curve.AtValve(camRatio("-1"), 0); return err },
		func() error { _, err := curve.AtValve(camRatio("1"), -1); return err },
		func() error { _, err := curve.AtValve(camRatio("1000000000000"), 0); return err },
	} {
		require.ErrorIs(t, bad(), ErrInput)
	}
}

func TestLiftRefuses(t *testing.T) {
	for _, c := range []struct{ angles, lifts, says string }{
		{"0,1,2", "0,1,0", "of 3 points"},
		{"0,1,1,2", "0,1,1,0", "angle of point 3"},
		{"0,2,1,3", "0,1,1,0", "angle of point 3 1° is not beyond"},
		{"0,1,2,2000", "0,1,1,0", "angle of point 4"},
		{"0,1,2,3", "0,1,20000,0", "lift of point 3"},
	} {
		_, err := LiftTable{Points: liftTable(c.angles, c.lifts)}.Curve()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	good := liftTable("0,10,20,30,40", "0,2,4,1,0.5")
	for _, table := range []LiftTable{{Side: 2, Points: good}, {Way: 2, Points: good}} {
		_, err := table.Curve()
		require.ErrorIs(t, err, ErrInput)
	}
	curve, err := LiftTable{Points: good}.Curve()
	require.NoError(t, err)
	wavy, err := LiftTable{Points: liftTable("0,10,20,30,40,50,60", "0,3,1,4,2,1,0")}.Curve()
	require.NoError(t, err)
	for _, c := range []struct {
		says string
		err  func() error
	}{
		{"within the table", func() error { _, err := curve.Lift(-1); return err }},
		{"within the table", func() error { _, err := curve.Lift(41 * units.Degree); return err }},
		{"passed on both flanks", func() error { _, _, err := curve.AnglesAt(stemLen("0.2 mm")); return err }},
		{"below the greatest", func() error { _, _, err := curve.AnglesAt(stemLen("4 mm")); return err }},
		{"within 10 m", func() error { _, _, err := curve.AnglesAt(stemLen("11 m")); return err }},
		{"passed on both flanks", func() error { _, _, err := curve.AnglesAt(-1); return err }},
		{"more than twice", func() error { _, _, err := wavy.AnglesAt(stemLen("2 mm")); return err }},
		{"more than twice", func() error { _, err := wavy.Duration(stemLen("2 mm")); return err }},
		{"more than twice", func() error { _, _, err := wavy.MidOpen(stemLen("2 mm")); return err }},
		{"more than twice", func() error { _, err := wavy.Events(InletValve, stemLen("2 mm")); return err }},
		{"within 10 m", func() error { _, err := curve.AreaAbove(stemLen("-11 m")); return err }},
		{"half-width", func() error { _, err := curve.Analyse(-1); return err }},
		{"on both sides", func() error { _, err := curve.Analyse(21 * units.Degree); return err }},
		{"wide enough for 3", func() error { _, err := curve.Analyse(5 * units.Degree); return err }},
		{"four turns", func() error { _, err := curve.Advanced(1500 * units.Degree); return err }},
	} {
		err := c.err()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
	var none LiftCurve
	first, last := none.Span()
	require.Zero(t, first)
	require.Zero(t, last)
	for _, ask := range []func() error{
		func() error { _, err := none.Lift(0); return err }, func() error { _, err := none.Peak(); return err },
		func() error { _, _, err := none.AnglesAt(0); return err }, func() error { _, err := none.AreaAbove(0); return err },
		func() error { _, err := none.Analyse(0); return err }, func() error { _, err := none.Advanced(0); return err },
		func() error { _, err := none.AtValve(camRatio("1"), 0); return err },
	} {
		require.ErrorContains(t, ask(), "without points")
	}
}

func TestLiftSpeeds(t *testing.T) {
	type f = tolerance.Float
	// 0.1 mm/° at 3000 r/min is 0.1·18000 mm/s; 0.002 mm/°² is 0.002·18000²/1000.
	require.Equal(t, f(1.8), FollowerSpeed(f(0.1), f(3000)))
	require.InDelta(t, 648, float64(FollowerAcceleration(f(0.002), f(3000))), 1e-12)
	require.InDelta(t, 0.1, float64(FollowerSpeedPerDegree(f(1.8), f(3000))), 1e-16)
	require.InDelta(t, 0.002, float64(FollowerAccelerationPerDegree2(f(648), f(3000))), 1e-16)
	v, err := uncertainty.NewDual("velocity", 0.1, "mm", uncertainty.NormalShape, 0.01)
	require.NoError(t, err)
	require.InDelta(t, 0.18, FollowerSpeed(v, uncertainty.ExactlyReal(3000)).StandardUncertainty(), 1e-12)
	s, err := working.SolveReal(FollowerSpeed(working.GivenReal("velocity", "v", 0.1, "mm/°"), working.GivenReal("speed", "n", 3000, "r/min")).Named("speed of the follower", "u", "m/s"), working.RealStyle{Places: 2})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "1.80")
}
