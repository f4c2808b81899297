package valvetrain

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A plan's cuts, made one after the other, leave the wanted seat.
func TestSeatPlan(t *testing.T) {
	for name, p := range map[string]SeatPlan{
		"clean-up":        {Seat: sample45(), Above: seatDeg("30"), Below: seatDeg("60"), Outer: stemLen("30 mm"), Width: stemLen("1.5 mm"), CleanUp: stemLen("0.1 mm")},
		"outward":         {Seat: sample45(), Above: seatDeg("15"), Below: seatDeg("75"), Outer: stemLen("30.5 mm"), Width: stemLen("1.5 mm")},
		"inward":          {Seat: sample45(), Above: seatDeg("15"), Below: seatDeg("75"), Outer: stemLen("28 mm"), Width: stemLen("1.2 mm")},
		"straight throat": {Seat: sample45(), Above: seatDeg("0"), Below: seatDeg("70"), Throat: seatDeg("90"), Outer: stemLen("29.8 mm"), Width: stemLen("1.2 mm"), CleanUp: stemLen("0.05 mm")},
	} {
		cuts, err := p.Plan()
		require.NoError(t, err, name)
		throat := p.Below
		if p.Throat != (SeatAngle{}) {
			throat = p.Throat
		}
		s, err := p.Seat.Refaced(tolerance.Exactly(cuts.Reface), p.Above, throat)
		require.NoError(t, err, name)
		middle := func(b tolerance.Bracket) tolerance.Bracket { m, _ := b.Middle(); return tolerance.Exactly(m) }
		s, err = s.FromAbove(p.Above, middle(cuts.Above))
		require.NoError(t, err, name)
		s, err = s.FromBelow(p.Below, middle(cuts.Below))
		require.NoError(t, err, name)
		w, err := s.Width()
		require.NoError(t, err, name)
		lo, hi := inputEnds(w)
		require.InDelta(t, int64(p.Width), int64(lo), 20, name)
		require.InDelta(t, int64(p.Width), int64(hi), 20, name)
		lo, _ = inputEnds(s.Outer)
		require.InDelta(t, int64(p.Outer), int64(lo), 20, name)
	}
	// Readings that aren't exact: the reface reaches for every one of them.
	p := SeatPlan{Seat: Seat{seatDeg("45"), stemAt("30 ±0.1 mm"), stemAt("27 ±0.1 mm")}, Above: seatDeg("15"), Below: seatDeg("75"), Outer: stemLen("30.5 mm"), Width: stemLen("1.5 mm")}
	cuts, err := p.Plan()
	require.NoError(t, err)
	lo, _ := inputEnds(cuts.Refaced.Outer)
	require.GreaterOrEqual(t, lo, p.Outer)

	for _, c := range []struct {
		spoil func(*SeatPlan)
		says  string
	}{
		{func(p *SeatPlan) { p.Seat = Seat{} }, "seat angle"},
		{func(p *SeatPlan) { p.Above = seatDeg("50") }, "cutter from above"},
		{func(p *SeatPlan) { p.Below = seatDeg("40") }, "cutter from below"},
		{func(p *SeatPlan) { p.Below = seatDeg("90") }, "cutter from below"},
		{func(p *SeatPlan) { p.Throat = seatDeg("40") }, "throat"},
		{func(p *SeatPlan) { p.Outer = 0 }, "wanted outer diameter"},
		{func(p *SeatPlan) { p.Width = -1 }, "wanted width"},
		{func(p *SeatPlan) { p.CleanUp = -1 }, "clean-up"},
		{func(p *SeatPlan) { p.Width = 40 * units.Millimetre }, "leave a port"},
		{func(p *SeatPlan) { p.Throat, p.Width = seatDeg("90"), 4*units.Millimetre }, "straight throat"},
		{func(p *SeatPlan) { p.Outer = 9 * units.Metre }, "leave a port"},
	} {
		q := p
		c.spoil(&q)
		_, err := q.Plan()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
}

func seatSurvey() SeatSurvey {
	return SeatSurvey{Where: "exhaust 3", Seat: sample45(), Dial: []tolerance.Bracket{stemAt("0 mm"), stemAt("0.03 mm"), stemAt("0.01 mm")},
		Angle: headAngle("45° ±0.1°"), Face: &ValveFace{seatDeg("45"), stemAt("31 mm"), stemAt("26 mm")}, Depth: stemAt("1.3 mm"),
		WidthLimits: stemWorn("max 2.5 mm"), RunLimits: stemWorn("max 0.05 mm"), ClearLimits: stemWorn("min 1/64 in"), DepthLimits: stemWorn("max 1.6 mm"),
		AngleLimits: tolerance.SpecOf[units.Angle]{New: tolerance.MustBetween(units.Angle(44.5*units.DEG), units.Angle(45.5*units.DEG))}}
}

func TestSeatInspect(t *testing.T) {
	r, err := seatSurvey().Inspect()
	require.NoError(t, err)
	nearTo(t, 3/math.Sqrt2, r.Width.Least, "width")
	require.Equal(t, stemAt("0.03 mm"), r.RunOut.Greatest)
	require.Equal(t, tolerance.Usable, r.Clear.Standing)
	require.NotNil(t, r.Contact)
	require.Contains(t, r.Next, "blue")
	for name, c := range map[string]struct {
		change func(*SeatSurvey)
		says   string
	}{
		"deep":     {func(s *SeatSurvey) { s.Depth = stemAt("2 mm") }, "renew the seat insert"},
		"run-out":  {func(s *SeatSurvey) { s.Dial[1] = stemAt("0.1 mm") }, "guide first"},
		"angle":    {func(s *SeatSurvey) { s.Angle = headAngle("46°") }, "guide first"},
		"wide":     {func(s *SeatSurvey) { s.WidthLimits = stemWorn("max 2 mm") }, "to its width"},
		"by scale": {func(s *SeatSurvey) { s.Widths = []tolerance.Bracket{stemAt("2 mm"), stemAt("2.6 mm")} }, "to its width"},
		"too far outward": {func(s *SeatSurvey) {
			s.Face = &ValveFace{seatDeg("45"), stemAt("30.1 mm"), stemAt("25 mm")}
		}, "from above"},
		"too far inward": {func(s *SeatSurvey) {
			s.Face = &ValveFace{seatDeg("45"), stemAt("33 mm"), stemAt("26.9 mm")}
		}, "from below"},
		"undecided": {func(s *SeatSurvey) { s.Widths = []tolerance.Bracket{stemAt("2.5 ±0.1 mm")} }, "seat width: "},
		"bare": {func(s *SeatSurvey) {
			*s = SeatSurvey{Seat: s.Seat}
		}, "blue"},
	} {
		s := seatSurvey()
		c.change(&s)
		r, err := s.Inspect()
		require.NoError(t, err, name)
		require.Contains(t, r.Next, c.says, name)
	}
	for _, c := range []struct {
		spoil func(*SeatSurvey)
		says  string
	}{
		{func(s *SeatSurvey) { s.Seat = Seat{} }, "seat angle"},
		{func(s *SeatSurvey) { s.Widths = []tolerance.Bracket{stemAt("-1 mm")} }, "seat width"},
		{func(s *SeatSurvey) { s.Dial = s.Dial[:1] }, "two or more"},
		{func(s *SeatSurvey) { s.Dial[0] = tolerance.Bracket{} }, "dial reading"},
		{func(s *SeatSurvey) { s.Depth = stemAt("[1 mm, ∞)") }, "depth"},
		{func(s *SeatSurvey) { s.Angle = headAngle("95°") }, "seat angle"},
		{func(s *SeatSurvey) { s.Face.Angle = seatDeg("30") }, "within 5°"},
		{func(s *SeatSurvey) { s.DepthLimits.New = tolerance.MustParseBand("max 2 mm") }, "limits of the depth"},
	} {
		s := seatSurvey()
		c.spoil(&s)
		_, err := s.Inspect()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

func BenchmarkSeat(b *testing.B) {
	type f = tolerance.Float
	b.Run("lib=tenthou/op=feed", func(b *testing.B) {
		b.ReportAllocs()
		var sink f
		for b.Loop() {
			sink = FeedFromAbove(f(0.5), f(0.785), f(0.26))
		}
		_ = sink
	})
	b.Run("lib=tenthou/op=plan", func(b *testing.B) {
		b.ReportAllocs()
		p := SeatPlan{Seat: sample45(), Above: seatDeg("30"), Below: seatDeg("60"), Outer: stemLen("30 mm"), Width: stemLen("1.5 mm"), CleanUp: stemLen("0.1 mm")}
		for b.Loop() {
			if _, err := p.Plan(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func FuzzSeatPlan(f *testing.F) {
	f.Add(int64(45e6*3600), int64(15e6*3600), int64(60e6*3600), int64(30e9), int64(27e9), int64(30e9), int64(15e8), int64(1e8))
	f.Fuzz(func(t *testing.T, a, b, g, outer, inner, wanted, width, clean int64) {
		s := Seat{SeatAngleFromSquare(units.Angle(a)), tolerance.Exactly(units.Length(outer)), tolerance.Exactly(units.Length(inner))}
		p := SeatPlan{Seat: s, Above: SeatAngleFromSquare(units.Angle(b)), Below: SeatAngleFromSquare(units.Angle(g)), Outer: units.Length(wanted), Width: units.Length(width), CleanUp: units.Length(clean)}
		cuts, err := p.Plan()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.GreaterOrEqual(t, cuts.Reface, p.CleanUp)
		for _, x := range []tolerance.Bracket{cuts.Above, cuts.Below} {
			lo, hi := inputEnds(x)
			require.True(t, !x.InRange() || 0 <= lo && lo <= hi)
		}
	})
}
