package crank

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func runOutSurvey() RunOutSurvey {
	turn := func(where, at string, x, y units.Length) RunOutJournal {
		return RunOutJournal{RunOutTurn: RunOutTurn{Where: where, Position: lengthOf(at), Readings: roundTurn(RunOutVector{Cosine: x, Sine: y}, 12)}}
	}
	s := RunOutSurvey{
		Journals: []RunOutJournal{
			turn("main 1", "0 mm", 0, 0),
			turn("main 2", "100 mm", 10e6, 0),
			turn("main 3", "200 mm", 0, 30e6),
			turn("main 4", "300 mm", 8e6, 0),
			turn("main 5", "400 mm", 0, 0),
			turn("flange", "450 mm", 0, 5e6),
		},
		Second: 4, Error: units.Micrometre / 2,
		RunOut:     tolerance.Spec{New: tolerance.MustParseBand("max 0.10 mm")},
		Bend:       tolerance.Spec{New: tolerance.MustParseBand("max 0.02 mm"), Wear: tolerance.MustParseBand("max 0.05 mm")},
		Neighbours: NeighbourLimits{Along: tolerance.Spec{New: tolerance.MustParseBand("max 0.08 mm")}, RightSum: tolerance.Spec{New: tolerance.MustParseBand("max 0.10 mm")}},
	}
	s.Journals[5].Apart = true
	return s
}

func TestInspect(t *testing.T) {
	r, err := runOutSurvey().Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Journals[2].Bend.Standing)
	require.Equal(t, tolerance.AsNew, r.Journals[1].Bend.Standing)
	require.Len(t, r.Neighbours, 4, "the flange is no neighbour")
	require.Equal(t, "bend, main 3", r.WorstAt)
	require.Equal(t, tolerance.Usable, r.Worst)
	require.Equal(t, 2, r.Line.MostAt)
	require.Contains(t, r.Next, "within the wear limits")
	require.Empty(t, r.Notes)
	require.Equal(t, angleOf("90"), r.Neighbours[1].Between)
	require.Equal(t, RightAngles, r.Neighbours[1].Manual[0].Case)
	_, err = json.Marshal(r)
	require.NoError(t, err)

	s := runOutSurvey()
	s.Bend.Wear = tolerance.MustParseBand("max 0.025 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, r.Worst)
	require.Contains(t, r.Next, "straighten, regrind or replace")
	s.Nitrided = true
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "isn't straightened")
	s.Bend.Wear = tolerance.MustParseBand("max 0.03 mm")
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Worst)
	require.Contains(t, r.Next, "not a pass")
	s = runOutSurvey()
	s.RunOut, s.Bend, s.Neighbours = tolerance.Spec{}, tolerance.Spec{}, NeighbourLimits{}
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "no limits were given")
	// US Army TM 9-2815-202-34 p. 4-157 has limits of its own for journal 3.
	s.Journals[2].Limits = tolerance.Spec{New: tolerance.MustParseBand("max 0.05 mm")}
	r, err = s.Inspect()
	require.NoError(t, err)
	require.Equal(t, "run-out as read, main 3", r.WorstAt)
	require.Equal(t, tolerance.OutsideNewBand, r.Worst)
}

// Supports that run out take the whole shaft along, which isn't a bend.
func TestInspect_supports(t *testing.T) {
	s := runOutSurvey()
	before, err := s.Inspect()
	require.NoError(t, err)
	for i := range s.Journals {
		// A tilt of 20 µm at the first main to −40 µm at the fifth.
		at := float64(s.Journals[i].Position) / float64(400*units.Millimetre)
		more := roundTurn(RunOutVector{Cosine: units.Length(20e6 - 60e6*at), Sine: units.Length(5e6 * at)}, 12)
		for k := range more {
			s.Journals[i].Readings[k] += more[k]
		}
	}
	after, err := s.Inspect()
	require.NoError(t, err)
	for i := range s.Journals {
		require.InDelta(t, float64(before.Journals[i].Relative.Cosine), float64(after.Journals[i].Relative.Cosine), 5)
		require.InDelta(t, float64(before.Journals[i].Relative.Sine), float64(after.Journals[i].Relative.Sine), 5)
	}
}

// A journal of 30 µm oval and 5 µm bend: half the reading would make more of it.
func TestInspect_oval(t *testing.T) {
	s := runOutSurvey()
	s.Journals[2].Readings = microns("20 15 3 -10 -17 -10 0 5 2 -5 -10 0")
	s.Journals[2].Back, s.Journals[2].BackRead = 21*units.Micrometre, true
	s.Journals[1].Readings = microns("10 0 -10 0")
	s.Journals[3].Readings = microns("10 0 -10")
	r, err := s.Inspect()
	require.NoError(t, err)
	notes := strings.Join(r.Notes, "\n")
	require.Contains(t, notes, "main 3 isn't round")
	require.Contains(t, notes, "came back 0.001 mm off")
	require.Contains(t, notes, "main 2: 4 readings take three lobes for a bend")
	require.Contains(t, notes, "main 4: 3 readings take an oval for a bend")
}

func TestInspect_blocks(t *testing.T) {
	s := runOutSurvey()
	s.Support, s.Included = OnBlocks, angleOf("90")
	s.Journals[0].Readings = nil
	s.Journals[4].Readings = nil
	r, err := s.Inspect()
	require.NoError(t, err)
	require.Contains(t, strings.Join(r.Notes, "\n"), "main 1 wasn't read: it is taken for round")
	require.Equal(t, tolerance.Usable, r.Journals[2].Bend.Standing)
}

func TestInspect_refuses(t *testing.T) {
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 0.2 mm"), Wear: tolerance.MustParseBand("max 0.1 mm")}
	for _, c := range []struct {
		name  string
		spoil func(*RunOutSurvey)
	}{
		{"two journals", func(s *RunOutSurvey) { s.Journals = s.Journals[:2] }},
		{"one support", func(s *RunOutSurvey) { s.Second = 0 }},
		{"no such support", func(s *RunOutSurvey) { s.Second = 6 }},
		{"negative support", func(s *RunOutSurvey) { s.First = -1 }},
		{"negative error", func(s *RunOutSurvey) { s.Error = -1 }},
		{"no such rest", func(s *RunOutSurvey) { s.Support = 9 }},
		{"no angle", func(s *RunOutSurvey) { s.Support = OnBlocks }},
		{"support not read", func(s *RunOutSurvey) { s.Journals[0].Readings = nil }},
		{"one reading", func(s *RunOutSurvey) { s.Journals[1].Readings = s.Journals[1].Readings[:1] }},
		{"out of order", func(s *RunOutSurvey) { s.Journals[2].Position = 0 }},
		{"bunched", func(s *RunOutSurvey) {
			s.Journals[1].Readings, s.Journals[1].Angles = microns("1 2 3"), []units.Angle{0, 1, 2}
		}},
		{"run-out limits", func(s *RunOutSurvey) { s.RunOut = bad }},
		{"bend limits", func(s *RunOutSurvey) { s.Bend = bad }},
		{"vector limits", func(s *RunOutSurvey) { s.Neighbours.Vector = bad }},
		{"right-angle limits", func(s *RunOutSurvey) { s.Neighbours.RightSum = bad }},
	} {
		s := runOutSurvey()
		c.spoil(&s)
		_, err := s.Inspect()
		require.Error(t, err, c.name)
	}
	_, err := runOutSurvey().Inspect()
	require.NoError(t, err)
}

// Where the angle between high points may belong to two cases, both are tried,
// and where they differ nothing is claimed.
func TestCompareNeighbours_between(t *testing.T) {
	l := NeighbourLimits{Along: tolerance.Spec{New: tolerance.MustParseBand("max 0.020 mm")}, RightSum: tolerance.Spec{New: tolerance.MustParseBand("max 0.030 mm")}}
	a := RunOutVector{Cosine: 7e6, Error: 1e6}
	b := RunOutVector{Cosine: 5e6, Sine: 5e6, Error: 1e6}
	n, err := l.CompareNeighbours("a", a, "b", b)
	require.NoError(t, err)
	require.Equal(t, SameSide, n.Manual[0].Case)
	require.Equal(t, RightAngles, n.Manual[1].Case)
	require.Equal(t, tolerance.CantTell, n.Standing, "14 + 14 ± 4 µm may pass 30, or not")
	l.RightSum = tolerance.Spec{New: tolerance.MustParseBand("max 0.033 mm")}
	n, err = l.CompareNeighbours("a", a, "b", b)
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, n.Standing)
	require.False(t, n.Differ)
	// A right-angle case without limits tells nothing.
	l.RightSum = tolerance.Spec{}
	n, err = l.CompareNeighbours("a", a, "b", b)
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, n.Standing)
	for c, want := range map[NeighbourCase]string{SameSide: "on one side", RightAngles: "at right angles", Opposite: "opposite"} {
		text, err := c.MarshalText()
		require.NoError(t, err)
		require.Equal(t, want, string(text))
	}
	require.Equal(t, Opposite, caseOf(angleOf("135")))
	require.Equal(t, lengthOf("0.003 mm"), NeighbourDifference(lengthOf("0.002 mm"), lengthOf("0.005 mm")))
}

func TestStraightShaft_refuses(t *testing.T) {
	two := []RunOutVector{{}, {}}
	for name, f := range map[string]func() ([]units.Length, []RunOutVector){
		"one":          func() ([]units.Length, []RunOutVector) { return []units.Length{0}, two[:1] },
		"mismatched":   func() ([]units.Length, []RunOutVector) { return []units.Length{0, 1, 2}, two },
		"out of order": func() ([]units.Length, []RunOutVector) { return []units.Length{1, 1}, two },
		"far":          func() ([]units.Length, []RunOutVector) { return []units.Length{0, 11 * units.Metre}, two },
	} {
		_, err := StraightShaft(f())
		require.ErrorIs(t, err, ErrInput, name)
	}
	l, err := StraightShaft([]units.Length{0, units.Metre}, []RunOutVector{{Cosine: 5}, {Sine: 7}})
	require.NoError(t, err)
	require.Zero(t, l.Most, "two places are always in line")
}

// Whatever the readings, a turn is refused or its shape makes sense.
func FuzzSeparate(f *testing.F) {
	f.Add(int64(0), int64(10e6), int64(20e6), int64(10e6), int64(90), int64(180), int64(270), int64(1e6))
	f.Add(int64(-5), int64(1), int64(1<<62), int64(0), int64(0), int64(-1), int64(400), int64(0))
	f.Fuzz(func(t *testing.T, a, b, c, d, p, q, r, e int64) {
		turn := RunOutTurn{Where: "x", Readings: []units.Length{units.Length(a), units.Length(b), units.Length(c), units.Length(d)}, Angles: []units.Angle{0, units.Angle(p) * units.Degree, units.Angle(q) * units.Degree, units.Angle(r) * units.Degree}}
		for _, turn := range []RunOutTurn{turn, {Readings: turn.Readings}} {
			s, err := turn.Separate(units.Length(e))
			if err != nil {
				require.ErrorIs(t, err, ErrInput)
				continue
			}
			lo, _ := s.Total.Lower()
			hi, _ := s.Total.Upper()
			require.LessOrEqual(t, lo, hi)
			require.GreaterOrEqual(t, s.Off.Error, units.Length(0))
			require.GreaterOrEqual(t, s.Own, units.Length(0))
			at, within := s.Off.HighPoint()
			require.True(t, at >= 0 && at < 360*units.Degree && within >= 0 && within <= 180*units.Degree)
		}
	})
}

func BenchmarkRunOut(b *testing.B) {
	s := runOutSurvey()
	turn := s.Journals[1].RunOutTurn
	b.Run("lib=crank/op=separate12", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := turn.Separate(units.Micrometre); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=crank/op=inspect6", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := s.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func TestRunOut_allocatesNothing(t *testing.T) {
	r := microns("0 1 2 3 4 5")
	require.Zero(t, testing.AllocsPerRun(100, func() { runOutSink = RunOut(r[0], r[1:]...) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { floatSink = NeighbourRunOut(tolerance.Float(2), tolerance.Float(3), tolerance.Float(1)) }))
}

var (
	runOutSink units.Length
	floatSink  tolerance.Float
)
