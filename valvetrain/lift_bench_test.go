package valvetrain

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/interp"

	"github.com/tenthou/tenthou/units"
)

// liftEven is the same lobe at 720 even steps of half a degree.
func liftEven() LiftTable {
	t := LiftTable{}
	for i := range 720 {
		a := units.Angle(i-220) * units.Degree / 2
		lift := units.Length(0)
		if d := math.Abs(a.Float(units.InDegrees)-70) / 250; d < 0.5 {
			lift, _ = units.Nearest(10*math.Pow(math.Cos(math.Pi*d), 2), units.InMillimetres)
		}
		t.Points = append(t.Points, LiftPoint{a, lift})
	}
	return t
}

func BenchmarkLift(b *testing.B) {
	for _, way := range []LiftWay{LiftShape, LiftSpline} {
		table := liftEven()
		table.Way = way
		x, y := make([]float64, 720), make([]float64, 720)
		for i, p := range table.Points {
			x[i], y[i] = p.Angle.Float(units.InDegrees), p.Lift.Float(units.InMillimetres)
		}
		name := strings.ReplaceAll(way.String(), " ", "-")
		for _, smoothing := range []string{"0", "2"} {
			b.Run(fmt.Sprintf("lib=tenthou/op=analyse/way=%s/smoothing=%s/n=720", name, smoothing), func(b *testing.B) {
				b.ReportAllocs()
				w := timingDeg(smoothing)
				c, err := table.Curve()
				if err != nil {
					b.Fatal(err)
				}
				for b.Loop() {
					if _, err := c.Analyse(w); err != nil {
						b.Fatal(err)
					}
				}
			})
			b.Run(fmt.Sprintf("lib=tenthou/op=curve-and-analyse/way=%s/smoothing=%s/n=720", name, smoothing), func(b *testing.B) {
				b.ReportAllocs()
				w := timingDeg(smoothing)
				for b.Loop() {
					c, err := table.Curve()
					if err != nil {
						b.Fatal(err)
					}
					if _, err := c.Analyse(w); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
		b.Run("lib=tenthou/op=curve/way="+name+"/n=720", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := table.Curve(); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run("lib=gonum/op=curve/way="+name+"/n=720", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var err error
				if way == LiftShape {
					err = new(interp.FritschButland).Fit(x, y)
				} else {
					err = new(interp.NotAKnotCubic).Fit(x, y)
				}
				if err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("lib=tenthou/op=anglesat/n=720", func(b *testing.B) {
		b.ReportAllocs()
		c, _ := liftLobe(720, 110).Curve()
		for b.Loop() {
			if _, _, err := c.AnglesAt(units.Millimetre); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func TestLiftAllocations(t *testing.T) {
	table := liftLobe(720, 110)
	c, err := table.Curve()
	require.NoError(t, err)
	require.Zero(t, testing.AllocsPerRun(20, func() { liftSink, _ = c.Analyse(2 * units.Degree) }))
	require.Zero(t, testing.AllocsPerRun(20, func() { _, _, _ = c.AnglesAt(units.Millimetre) }))
	require.LessOrEqual(t, testing.AllocsPerRun(20, func() { _, _ = table.Curve() }), 2.0)
	table.Way = LiftSpline
	require.LessOrEqual(t, testing.AllocsPerRun(20, func() { _, _ = table.Curve() }), 3.0)
}

var liftSink LiftAnalysis

func FuzzLift(f *testing.F) {
	f.Add([]byte{0, 10, 1, 20, 5, 10, 9, 20, 5, 10, 0}, false, int64(3e9), int64(units.Degree))
	f.Add([]byte{0, 0, 1, 0, 0, 0, 0, 255, 255, 1, 1}, true, int64(0), int64(0))
	f.Fuzz(func(t *testing.T, data []byte, spline bool, level, smoothing int64) {
		var table LiftTable
		if spline {
			table.Way = LiftSpline
		}
		a := units.Angle(0)
		for i := 0; i+1 < len(data); i += 2 {
			a += units.Angle(data[i]) * units.Degree / 8
			table.Points = append(table.Points, LiftPoint{a, units.Length(data[i+1]) * units.Millimetre / 16})
		}
		c, err := table.Curve()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		p, err := c.Peak()
		require.NoError(t, err)
		for _, q := range table.Points {
			require.GreaterOrEqual(t, p.Lift, q.Lift-2)
			got, err := c.Lift(q.Angle)
			require.NoError(t, err)
			require.InDelta(t, int64(q.Lift), int64(got), 2)
		}
		if a, err := c.Analyse(units.Angle(smoothing)); err != nil {
			require.ErrorIs(t, err, ErrInput)
		} else {
			require.False(t, math.IsNaN(a.AreaMMDeg) || math.IsInf(a.AreaMMDeg, 0))
			require.GreaterOrEqual(t, a.AreaMMDeg, -1e-9)
			require.False(t, math.IsInf(a.Opening.Value, 0) || math.IsInf(a.Downward.Value, 0))
		}
		o, cl, err := c.AnglesAt(units.Length(level))
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		first, last := c.Span()
		require.True(t, first <= o && o <= p.Angle+1 && p.Angle-1 <= cl && cl <= last)
	})
}
