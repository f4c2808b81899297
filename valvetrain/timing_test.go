package valvetrain

import (
	"encoding/json"
	"math"
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

func timingDeg(s string) units.Angle { return units.MustParseAngle(s + "°") }

func timingRead(s string) tolerance.Interval[units.Angle] {
	i, err := tolerance.ParseInterval[units.Angle](s)
	if err != nil {
		panic(err)
	}
	return i
}

func timingLimits(s string) tolerance.SpecOf[units.Angle] {
	b, err := tolerance.ParseBandOf[units.Angle](s)
	if err != nil {
		panic(err)
	}
	return tolerance.SpecOf[units.Angle]{New: b}
}

// V20, V21 and the published examples; the sign trap among them.
func TestTimingPublished(t *testing.T) {
	vectors.Load(t, "published/valvetrain_timing.txt").Each(t, func(t *testing.T, c vectors.Case) {
		angle := func(col string) units.Angle { return timingDeg(c.Text(col)) }
		in := ValveEvents{Valve: InletValve, Opens: angle("inlet_opens"), Closes: angle("inlet_closes")}
		d, err := in.Duration()
		require.NoError(t, err)
		require.Equal(t, angle("inlet_duration"), d)
		centre, err := in.Centre()
		require.NoError(t, err)
		require.Equal(t, angle("inlet_centre"), centre)
		back, err := EventsOf(InletValve, d, centre, in.At)
		require.NoError(t, err)
		require.Equal(t, in, back)
		if c.Has("overlap") {
			require.Equal(t, angle("overlap"), TimingOverlap(in.Opens, angle("exhaust_closes")))
		} else {
			c.Ignore("exhaust_closes")
		}
		if !c.Has("separation") {
			c.Ignore("exhaust_opens", "exhaust_closes", "exhaust_duration", "exhaust_centre")
			return
		}
		ex := ValveEvents{Valve: ExhaustValve, Opens: angle("exhaust_opens"), Closes: angle("exhaust_closes")}
		s, err := CamTiming{in, ex}.Summary()
		require.NoError(t, err)
		require.Equal(t, angle("exhaust_duration"), s.ExhaustDuration)
		require.Equal(t, angle("exhaust_centre"), s.ExhaustCentre)
		require.Equal(t, angle("separation"), s.Separation)
		require.Equal(t, angle("overlap"), s.Overlap)
		again, err := s.Timing()
		require.NoError(t, err)
		require.Equal(t, CamTiming{in, ex}, again)
	})
}

// Exact round trips for all events in degrees to 7 places, within a
// microarcsecond for any; moving the camshaft by δ moves events by δ.
func TestTimingProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 10))
	const grid = 360 * units.Microarcsecond
	for range 3000 {
		draw := func() units.Angle {
			return grid * units.Angle(r.Int64N(int64(160*units.Degree/grid))-int64(40*units.Degree/grid))
		}
		at := TimingLift{units.Length(r.Int64N(2e9)), TimingSide(r.IntN(2))}
		tm := CamTiming{ValveEvents{InletValve, draw(), draw(), at}, ValveEvents{ExhaustValve, draw(), draw(), at}}
		s, err := tm.Summary()
		require.NoError(t, err)
		// The two halvings of separation and advance are exact here too.
		back, err := s.Timing()
		require.NoError(t, err)
		require.Equal(t, tm, back)
		require.Equal(t, s.InletDuration.Scale(1, 2)+s.ExhaustDuration.Scale(1, 2)-2*s.Separation, s.Overlap)

		d := draw()
		moved := CamTiming{tm.Inlet.Advanced(d), tm.Exhaust.Advanced(d)}
		m, err := moved.Summary()
		require.NoError(t, err)
		require.Equal(t, s.InletDuration, m.InletDuration)
		require.Equal(t, s.InletCentre-d, m.InletCentre)
		require.Equal(t, s.ExhaustCentre+d, m.ExhaustCentre)
		require.Equal(t, s.Separation, m.Separation)
		require.Equal(t, s.Advance+d, m.Advance)
		require.Equal(t, s.Overlap, m.Overlap)

		e := ValveEvents{TimedValve(r.IntN(2)), draw() + 1, draw(), at}
		dur, err := e.Duration()
		require.NoError(t, err)
		centre, err := e.Centre()
		require.NoError(t, err)
		odd, err := EventsOf(e.Valve, dur, centre, at)
		require.NoError(t, err)
		require.InDelta(t, int64(e.Opens), int64(odd.Opens), 1)
		require.InDelta(t, int64(e.Closes), int64(odd.Closes), 1)
		require.Equal(t, d, CamDegrees(CrankDegrees(d)))
	}
}

func TestTimingRefuses(t *testing.T) {
	for _, c := range []struct {
		e    ValveEvents
		says string
	}{
		{ValveEvents{Valve: 2}, "valve (2) is not inlet or exhaust"},
		{ValveEvents{At: TimingLift{Side: 7}}, "side of the rocker"},
		{ValveEvents{At: TimingLift{Lift: -1}}, "lift that the events are at"},
		{ValveEvents{Opens: 361 * units.Degree}, "inlet valve opens 361°"},
		{ValveEvents{Valve: ExhaustValve, Closes: units.OutOfRange[units.Angle]()}, "exhaust valve closes"},
		{ValveEvents{Opens: -90 * units.Degree, Closes: -90 * units.Degree}, "inlet duration 0° is not above 0°"},
		{ValveEvents{Opens: -190 * units.Degree}, "inlet duration -10°"},
		{ValveEvents{Opens: 300 * units.Degree, Closes: 240 * units.Degree}, "720°"},
	} {
		_, err := c.e.Duration()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
		_, err = c.e.Centre()
		require.ErrorIs(t, err, ErrInput)
	}
	// An opening after dead centre alone is legal.
	d, err := ValveEvents{Opens: -10 * units.Degree, Closes: 39 * units.Degree}.Duration()
	require.NoError(t, err)
	require.Equal(t, 209*units.Degree, d)

	_, err = EventsOf(InletValve, 0, 0, TimingLift{})
	require.ErrorContains(t, err, "inlet duration 0°")
	_, err = EventsOf(InletValve, 240*units.Degree, 900*units.Degree, TimingLift{})
	require.ErrorIs(t, err, ErrInput)
	_, err = EventsOf(InletValve, 240*units.Degree, units.OutOfRange[units.Angle](), TimingLift{})
	require.ErrorIs(t, err, ErrInput)

	ok := CamTiming{ValveEvents{Opens: 10 * units.Degree, Closes: 40 * units.Degree}, ValveEvents{Valve: ExhaustValve, Opens: 40 * units.Degree}}
	for _, spoil := range []func(*CamTiming){
		func(c *CamTiming) { c.Inlet.Valve = ExhaustValve }, func(c *CamTiming) { c.Exhaust.Valve = InletValve },
		func(c *CamTiming) { c.Exhaust.At.Lift = 1 }, func(c *CamTiming) { c.Exhaust.At.Side = AtFollower },
		func(c *CamTiming) { c.Inlet.Opens = -300 * units.Degree },
	} {
		bad := ok
		spoil(&bad)
		_, err := bad.Summary()
		require.ErrorIs(t, err, ErrInput)
	}
	for _, s := range []CamSummary{{}, {InletDuration: 200 * units.Degree}} {
		_, err := s.Timing()
		require.ErrorIs(t, err, ErrInput)
	}
}

func TestTimingWords(t *testing.T) {
	e := ValveEvents{ExhaustValve, timingDeg("40"), timingDeg("-2.5"), TimingLift{stemLen("1 mm"), AtFollower}}
	data, err := json.Marshal(e)
	require.NoError(t, err)
	require.JSONEq(t, `{"valve": "exhaust", "opens": "40°", "closes": "-2.5°", "at": {"lift": "1 mm", "side": "at the follower"}}`, string(data))
	var back ValveEvents
	require.NoError(t, json.Unmarshal(data, &back))
	require.Equal(t, e, back)
	require.Equal(t, "1 mm at the follower", e.At.String())
	for _, bad := range []interface{ UnmarshalText([]byte) error }{new(TimedValve), new(TimingSide), new(LiftWay), new(CamMove)} {
		err := bad.UnmarshalText([]byte(strings.Repeat("x", 100)))
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, "one of ")
		require.Less(t, len(err.Error()), 200)
	}
	for _, w := range []LiftWay{LiftShape, LiftSpline} {
		var got LiftWay
		text, err := w.MarshalText()
		require.NoError(t, err)
		require.NoError(t, got.UnmarshalText(text))
		require.Equal(t, w, got)
	}
	for _, m := range []CamMove{AdvanceCam, RetardCam} {
		var got CamMove
		text, err := m.MarshalText()
		require.NoError(t, err)
		require.NoError(t, got.UnmarshalText(text))
		require.Equal(t, m, got)
	}
}

// A gear of 33 teeth: one is about 11° (TM 5-4210-229-14&P; 360/33 = 10.909…).
// The manual's check: 0.029 in of clearance, a 0.004 in blade.
func TestTooth(t *testing.T) {
	tooth, err := ToothAngle(33)
	require.NoError(t, err)
	require.InDelta(t, 10.909090909, tooth.Float(units.InDegrees), 1e-9)
	require.Equal(t, stemLen("0.025 in"), BladeLift(stemLen("0.029 in"), stemLen("0.004 in")))
	for _, bad := range []int{0, -1, 10_001, math.MinInt} {
		_, err := ToothAngle(bad)
		require.ErrorIs(t, err, ErrInput)
		_, _, err = TeethFor(0, bad)
		require.ErrorIs(t, err, ErrInput)
	}
	_, _, err = TeethFor(361*units.Degree, 33)
	require.ErrorIs(t, err, ErrInput)
	for _, c := range []struct {
		off, left string
		teeth     int
	}{{"11", "0.09090909", 1}, {"-11", "-0.09090909", -1}, {"5", "5", 0}, {"6", "-4.90909091", 1}, {"22", "0.18181818", 2}, {"-16", "5.81818182", -2}, {"0", "0", 0}} {
		teeth, left, err := TeethFor(timingDeg(c.off), 33)
		require.NoError(t, err)
		// −16°: 1.4667 teeth, so one, and −5.0909° left.
		if c.off == "-16" {
			c.teeth, c.left = -1, "-5.09090909"
		}
		require.Equal(t, c.teeth, teeth, c.off)
		require.InDelta(t, int64(timingDeg(c.left)), int64(left), 40)
	}
	r := rand.New(rand.NewPCG(4, 10))
	for range 2000 {
		n, off := 1+r.IntN(200), units.Angle(r.Int64N(int64(2*units.Turn)))-units.Turn
		teeth, left, err := TeethFor(off, n)
		require.NoError(t, err)
		require.Equal(t, off, left+units.Turn.Scale(int64(teeth), int64(n)))
		require.LessOrEqual(t, left.Abs(), units.Turn.Scale(1, int64(2*n))+1)
	}
}

func timingChecked() TimingCheck {
	return TimingCheck{Where: "inlet, cylinder 1", Valve: InletValve, At: TimingLift{stemLen("1 mm"), AtValve}, CrankTeeth: 20,
		Opens:  MeasuredEvent{timingRead("10 ±0.5°"), timingLimits("10 ±2°")},
		Closes: MeasuredEvent{timingRead("41 ±0.5°"), timingLimits("40 ±2°")}}
}

func TestTimingCheck(t *testing.T) {
	r, err := timingChecked().Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, r.Opens.Standing)
	require.Equal(t, timingRead("[230°, 232°]"), r.Duration)
	require.Equal(t, timingRead("[105°, 106°]"), r.Centre)
	require.Equal(t, timingRead("[0°, 1°]"), r.Late)
	require.Equal(t, timingDeg("18"), r.Tooth)
	require.Contains(t, r.Next, "none")
	ex := timingChecked()
	ex.Valve = ExhaustValve
	ex.Opens, ex.Closes = ex.Closes, ex.Opens
	r, err = ex.Inspect()
	require.NoError(t, err)
	require.Equal(t, timingRead("[105°, 106°]"), r.Centre)
	for _, c := range []struct {
		opens, closes, next string
		teeth               int
	}{
		{"-8 ±0.5°", "58 ±0.5°", "18.0° late: advance the camshaft; about a tooth", 1},
		{"28 ±0.5°", "22 ±0.5°", "18.0° early: retard the camshaft; about a tooth", -1},
		{"5 ±0.5°", "45 ±0.5°", "5.0° late: advance the camshaft by that", 0},
		{"15 ±0.5°", "45 ±0.5°", "off to opposite sides", 0},
		{"12 ±0.5°", "40 ±0.5°", "", 0},
		{"10 ±0.5°", "42 ±0.5°", "", 0},
	} {
		k := timingChecked()
		k.Opens.Read, k.Closes.Read = timingRead(c.opens), timingRead(c.closes)
		r, err := k.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
		require.Equal(t, c.teeth, r.Teeth)
		if c.next == "" {
			require.NotContains(t, r.Next, "none")
		}
	}
	k := timingChecked()
	k.Opens.Limits, k.Closes.Limits = timingLimits("max 5°"), tolerance.SpecOf[units.Angle]{}
	r, err = k.Inspect()
	require.NoError(t, err)
	require.Zero(t, r.Late)
	require.Contains(t, r.Next, "check dead centre, clearance")
	clash := tolerance.SpecOf[units.Angle]{New: timingLimits("max 20°").New, Wear: timingLimits("max 5°").New}
	for _, spoil := range []func(*TimingCheck){
		func(k *TimingCheck) { k.Opens.Read = timingRead("[5°, ∞)") }, func(k *TimingCheck) { k.Closes.Read = tolerance.Interval[units.Angle]{} },
		func(k *TimingCheck) { k.Opens.Read = timingRead("[-230°, 20°]") }, func(k *TimingCheck) { k.Opens.Limits = clash },
		func(k *TimingCheck) {
			k.Opens.Limits, k.Closes.Limits = timingLimits("900 ±2°"), timingLimits("40 ±2°")
		},
		func(k *TimingCheck) { k.Closes.Limits = clash }, func(k *TimingCheck) { k.CrankTeeth = -1 }, func(k *TimingCheck) { k.Valve = 9 },
	} {
		k := timingChecked()
		spoil(&k)
		_, err := k.Inspect()
		require.ErrorIs(t, err, ErrInput)
	}
}

func TestTimingWorkingAndUncertainty(t *testing.T) {
	half := working.Exactly(units.Turn / 2)
	d := TimingDuration(working.Given("inlet opens", "o", timingDeg("-10")), working.Given("inlet closes", "c", timingDeg("39")), half).Named("duration", "D")
	s, err := working.Solve(d, units.Style[units.Angle]{Unit: units.InDegrees, Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "209.0°")
	// Each event known to 1° standard: the centre to 1/√2, the duration to √2.
	o, err := uncertainty.Normal("opens", timingDeg("10"), timingDeg("1"))
	require.NoError(t, err)
	c, err := uncertainty.Normal("closes", timingDeg("40"), timingDeg("1"))
	require.NoError(t, err)
	x := uncertainty.Exactly(units.Turn / 2)
	require.InDelta(t, math.Sqrt2, TimingDuration(o, c, x).StandardUncertainty().Float(units.InDegrees), 1e-9)
	require.InDelta(t, math.Sqrt2/2, TimingCentre(o, c, x).StandardUncertainty().Float(units.InDegrees), 1e-9)
}

func BenchmarkTiming(b *testing.B) {
	b.Run("lib=tenthou/op=summary", func(b *testing.B) {
		b.ReportAllocs()
		t := CamTiming{ValveEvents{Opens: 10 * units.Degree, Closes: 40 * units.Degree}, ValveEvents{Valve: ExhaustValve, Opens: 50 * units.Degree, Closes: 10 * units.Degree}}
		for b.Loop() {
			if _, err := t.Summary(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=float64/op=summary", func(b *testing.B) {
		b.ReportAllocs()
		io, ic, eo, ec := 10.0, 40.0, 50.0, 10.0
		var sink [7]float64
		for b.Loop() {
			a, c := (180+ic-io)/2, (180+eo-ec)/2
			sink = [7]float64{io + 180 + ic, eo + 180 + ec, a, c, io + ec, (a + c) / 2, (c - a) / 2}
		}
		_ = sink
	})
}

func TestTimingAllocatesNothing(t *testing.T) {
	tm := CamTiming{ValveEvents{Opens: 10 * units.Degree, Closes: 40 * units.Degree}, ValveEvents{Valve: ExhaustValve, Opens: 50 * units.Degree, Closes: 10 * units.Degree}}
	require.Zero(t, testing.AllocsPerRun(100, func() { timingSink, _ = tm.Summary() }))
}

var timingSink CamSummary

func FuzzTiming(f *testing.F) {
	f.Add(int64(10), int64(40), uint8(0), int64(0))
	f.Add(int64(-10*units.Degree), int64(39*units.Degree), uint8(1), int64(units.Degree))
	f.Fuzz(func(t *testing.T, opens, closes int64, valve uint8, by int64) {
		e := ValveEvents{Valve: TimedValve(valve), Opens: units.Angle(opens), Closes: units.Angle(closes)}.Advanced(units.Angle(by))
		d, err := e.Duration()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, d > 0 && d < 2*units.Turn)
		c, err := e.Centre()
		require.NoError(t, err)
		back, err := EventsOf(e.Valve, d, c, e.At)
		if err == nil { // an event a microarcsecond past a turn may be refused
			require.InDelta(t, int64(e.Opens), int64(back.Opens), 1)
			require.InDelta(t, int64(e.Closes), int64(back.Closes), 1)
		}
	})
}
