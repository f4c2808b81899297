package crank

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

func microns(text string) (all []units.Length) {
	for f := range strings.FieldsSeq(text) {
		all = append(all, units.MustParseLength(f+" µm"))
	}
	return all
}

func inMicrons(l units.Length) float64 { return l.Float(units.InMicrometres) }

func angleOf(degrees string) units.Angle { return units.MustParseAngle(degrees + "°") }

// Against numpy: eccentricity, high point, shape and the greatest error.
func TestSeparate_reference(t *testing.T) {
	vectors.Load(t, "reference/crank_runout_turns.txt").Each(t, func(t *testing.T, c vectors.Case) {
		turn := RunOutTurn{Where: "main 2", Readings: microns(c.Text("readings"))}
		if c.Has("angles") {
			for f := range strings.FieldsSeq(c.Text("angles")) {
				turn.Angles = append(turn.Angles, angleOf(f))
			}
		}
		s, err := turn.Separate(units.Micrometre)
		require.NoError(t, err)
		c.Near("cosine", inMicrons(s.Off.Cosine))
		c.Near("sine", inMicrons(s.Off.Sine))
		middle, ok := s.Off.RunOut().Middle()
		require.True(t, ok)
		if lo, _ := s.Off.RunOut().Lower(); lo > 0 {
			c.Near("runout", inMicrons(middle))
		} else {
			c.Ignore("runout")
		}
		at, _ := s.Off.HighPoint()
		c.Near("high", at.Float(units.InDegrees))
		total, _ := s.Total.Upper()
		c.Near("total", inMicrons(total-2*units.Micrometre))
		c.Near("own", inMicrons(s.Own))
		require.Equal(t, c.Has("ovality"), s.OvalityTold)
		if s.OvalityTold {
			c.Near("ovality", inMicrons(s.Ovality))
		}
		c.Near("worst", inMicrons(s.Off.Error))
	})
}

// The first harmonic over Real, as the working writes it, is the same.
func TestRunOutComponents(t *testing.T) {
	vectors.Load(t, "reference/crank_runout_turns.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Ignore("total", "own", "ovality", "worst", "angles", "cosine", "sine", "runout", "high")
		var r []tolerance.Float
		for f := range strings.FieldsSeq(c.Text("readings")) {
			x, err := strconv.ParseFloat(f, 64)
			require.NoError(t, err)
			r = append(r, tolerance.Float(x))
		}
		if c.Has("angles") {
			return
		}
		cosine, sine := RunOutComponents(r[0], r[1:]...)
		c.Near("cosine", float64(cosine))
		c.Near("sine", float64(sine))
		c.Near("runout", float64(RunOutOf(cosine, sine)))
		high := float64(HighPoint(cosine, sine)) * 180 / math.Pi
		c.Near("high", math.Mod(high+360, 360))
	})
	cosine, sine := RunOutComponents(tolerance.Float(1), tolerance.Float(2))
	require.False(t, cosine.InRange())
	require.False(t, sine.InRange())
}

// TM 5-3810-305-23 WP 0029: 0, +.003, −.002, +.003 in is .005 in. TM
// 10-3930-653-14&P: the bend is half the dial's reading, .0008 of .0016 in.
func TestRunOut_published(t *testing.T) {
	require.Equal(t, 5*units.Thou, RunOut(0, 3*units.Thou, -2*units.Thou, 3*units.Thou))
	require.Equal(t, lengthOf(".0008 in"), BendOfRunOut(lengthOf(".0016 in")))
	require.Equal(t, lengthOf(".0016 in"), RunOutOfBend(lengthOf(".0008 in")))
}

func TestNeighbours_published(t *testing.T) {
	limits := NeighbourLimits{
		Along:    tolerance.Spec{New: tolerance.MustParseBand("max 0.003 in")},
		RightSum: tolerance.Spec{New: tolerance.MustParseBand("max 0.004 in")}, RightEach: tolerance.Spec{New: tolerance.MustParseBand("max 0.002 in")},
	}
	passes := map[string]tolerance.Standing{"yes": tolerance.AsNew, "no": tolerance.OutsideNewBand}
	vectors.Load(t, "published/crank_runout_manual.txt").Each(t, func(t *testing.T, c vectors.Case) {
		a, b := lengthOf(c.Text("first")), lengthOf(c.Text("second"))
		degrees := c.Float("between")
		v := NeighbourRunOut(tolerance.Float(a.Float(units.InInches)), tolerance.Float(b.Float(units.InInches)), tolerance.Float(degrees*math.Pi/180))
		c.Near("vector", float64(v))
		first := RunOutVector{Cosine: a / 2}
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		half := float64(b) / 2
		second := RunOutVector{Cosine: units.Length(math.Round(half * cos)), Sine: units.Length(math.Round(half * sin))}
		n, err := limits.CompareNeighbours("main 2", first, "main 3", second)
		require.NoError(t, err)
		middle, _ := n.Vector.Greatest.Middle()
		c.Near("vector", middle.Float(units.InInches))
		require.Equal(t, passes[c.Choice("by_vector", "yes", "no")], n.Vector.Standing)
		require.Equal(t, passes[c.Choice("by_rule", "yes", "no")], n.Standing)
		require.Equal(t, c.Has("note"), n.Differ)
		c.Ignore("note")
	})
}

func shaftOf(places, cosines, sines string) (z []units.Length, v []RunOutVector) {
	for i, p := range strings.Fields(places) {
		z = append(z, lengthOf(p+" mm"))
		v = append(v, RunOutVector{Cosine: microns(strings.Fields(cosines)[i])[0], Sine: microns(strings.Fields(sines)[i])[0]})
	}
	return z, v
}

func roundTurn(v RunOutVector, n int) (r []units.Length) {
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r = append(r, units.Length(math.Round(float64(v.Cosine)*cos+float64(v.Sine)*sin)))
	}
	return r
}

// Against numpy: bends seen from the end supports, neighbours, the straight
// line.
func TestInspect_reference(t *testing.T) {
	vectors.Load(t, "reference/crank_runout_shafts.txt").Each(t, func(t *testing.T, c vectors.Case) {
		z, v := shaftOf(c.Text("places"), c.Text("cosines"), c.Text("sines"))
		s := RunOutSurvey{Second: len(z) - 1}
		for i := range z {
			s.Journals = append(s.Journals, RunOutJournal{RunOutTurn: RunOutTurn{Where: fmt.Sprint("main ", i+1), Position: z[i], Readings: roundTurn(v[i], 12)}})
		}
		r, err := s.Inspect()
		require.NoError(t, err)
		bends, neighbours := strings.Fields(c.Text("bends")), strings.Fields(c.Text("neighbours"))
		near := func(want string, b tolerance.Bracket) {
			t.Helper()
			m, ok := b.Middle()
			require.True(t, ok)
			x, err := strconv.ParseFloat(want, 64)
			require.NoError(t, err)
			require.InDelta(t, x, inMicrons(m), 1e-5)
		}
		for i, f := range r.Journals {
			if !f.Support {
				near(bends[i], f.Bend.Greatest)
			}
		}
		for i, n := range r.Neighbours {
			near(neighbours[i], n.Vector.Greatest)
		}
		line, err := StraightShaft(z, v)
		require.NoError(t, err)
		c.Near("most", inMicrons(line.Most))
		require.Equal(t, c.Int("most_at"), line.MostAt+1)
		require.InDelta(t, inMicrons(line.Most), inMicrons(r.Line.Most), 1e-5, "the line doesn't depend on the supports")
	})
}

// Against geometry: what two supports rise in their Vs is taken off the shape of
// the journal between.
func TestBlocks_reference(t *testing.T) {
	vectors.Load(t, "reference/crank_runout_blocks.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := RunOutSurvey{Support: OnBlocks, Included: angleOf(c.Text("included")), Second: 2, Error: units.Micrometre / 100}
		for _, j := range []struct {
			name, readings string
			at             units.Length
		}{{"main 1", "first", 0}, {"main 2", "middle", lengthOf(c.Text("place") + " mm")}, {"main 3", "second", 400 * units.Millimetre}} {
			s.Journals = append(s.Journals, RunOutJournal{RunOutTurn: RunOutTurn{Where: j.name, Position: j.at, Readings: microns(c.Text(j.readings))}})
		}
		r, err := s.Inspect()
		require.NoError(t, err)
		m := r.Journals[1]
		run, _ := m.Relative.RunOut().Middle()
		c.Near("runout", inMicrons(run))
		if c.Is("included", "60") {
			// Two lobes don't show above a V of 60°; none are on these supports.
			require.Contains(t, strings.Join(r.Notes, "\n"), "hide 2 lobes")
		}
		c.Near("ovality", inMicrons(m.Ovality))
		require.Equal(t, 3, m.Lobes)
		c.Near("lobing", inMicrons(m.Lobing))
	})
}

// κ is what the V-block factor of ISO 4292 is made of: |1 + κ|.
func TestBlockRise(t *testing.T) {
	for _, included := range []units.Angle{60 * units.Degree, 72 * units.Degree, 90 * units.Degree, 108 * units.Degree, 120 * units.Degree} {
		require.InDelta(t, -1, blockRise(1, included), 1e-12)
		for n := 2; n <= 22; n++ {
			f, err := form.VBlock{Included: included}.Factor(n)
			require.NoError(t, err)
			require.InDelta(t, f, math.Abs(1+blockRise(n, included)), 1e-12)
		}
	}
	// Printed, circles of ISO 4292 tables: 3 lobes 3.00, 2.00, 1.00.
	require.InDelta(t, 2, blockRise(3, 60*units.Degree), 1e-12)
	require.InDelta(t, 1, blockRise(3, 90*units.Degree), 1e-12)
}

// Turning the mark turns the angles and nothing else; a constant on the dial
// changes nothing.
func TestSeparate_properties(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 2))
	for range 100 {
		n := 8 + r.IntN(9)
		turn := RunOutTurn{Where: "x"}
		for i := range n {
			turn.Readings = append(turn.Readings, units.Length(r.Int64N(100e6)))
			turn.Angles = append(turn.Angles, (units.Angle(360*units.Degree)).Scale(int64(i)*100+r.Int64N(60), int64(n)*100))
		}
		a, err := turn.Separate(units.Micrometre)
		require.NoError(t, err)

		by := units.Angle(r.Int64N(int64(360 * units.Degree)))
		turned, shifted := turn, turn
		turned.Angles, shifted.Readings = nil, nil
		for i := range n {
			turned.Angles = append(turned.Angles, turn.Angles[i]+by)
			shifted.Readings = append(shifted.Readings, turn.Readings[i]+units.Millimetre)
		}
		b, err := turned.Separate(units.Micrometre)
		require.NoError(t, err)
		require.InDelta(t, a.Off.hypot(), b.Off.hypot(), 100)
		at, _ := a.Off.HighPoint()
		bt, _ := b.Off.HighPoint()
		if a.Off.hypot() > 1e6 {
			require.InDelta(t, 0, math.Remainder(float64(bt-at-by), float64(360*units.Degree)), 1e6)
		}
		require.InDelta(t, float64(a.Own), float64(b.Own), 100)
		require.InDelta(t, float64(a.Ovality), float64(b.Ovality), 400)
		c, err := shifted.Separate(units.Micrometre)
		require.NoError(t, err)
		require.InDelta(t, 0, float64(c.Off.Sub(a.Off).Cosine), 100)
		require.InDelta(t, 0, float64(c.Off.Sub(a.Off).Sine), 100)
		require.Equal(t, a.Total, c.Total)

		// Equal angles, given or not, are the same.
		even := RunOutTurn{Readings: turn.Readings}
		given := even
		for i := range n {
			given.Angles = append(given.Angles, units.Angle(360*units.Degree).Scale(int64(i), int64(n))-360*units.Degree)
		}
		x, err := even.Separate(0)
		require.NoError(t, err)
		y, err := given.Separate(0)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(x.Off, y.Off))
	}
}

// The errors of the readings never move the eccentricity by more than is said,
// and come near it.
func TestSeparate_error(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 3))
	for _, n := range []int{3, 4, 5, 7, 8, 12} {
		for _, uneven := range []bool{false, true} {
			turn := RunOutTurn{}
			for i := range n {
				turn.Readings = append(turn.Readings, units.Length(r.Int64N(50e6)))
				if uneven {
					turn.Angles = append(turn.Angles, units.Angle(360*units.Degree).Scale(int64(i)*10+r.Int64N(5), int64(n)*10))
				}
			}
			const e = 5 * units.Micrometre
			a, err := turn.Separate(e)
			require.NoError(t, err)
			greatest := 0.0
			for signs := range 1 << n {
				moved := turn
				moved.Readings = nil
				for i, x := range turn.Readings {
					moved.Readings = append(moved.Readings, x+e*units.Length(1-2*(signs>>i&1)))
				}
				b, err := moved.Separate(0)
				require.NoError(t, err)
				greatest = max(greatest, b.Off.Sub(a.Off).hypot())
			}
			require.LessOrEqual(t, greatest, float64(a.Off.Error)+3)
			require.InDelta(t, float64(a.Off.Error), greatest, 10, "and no more than need be")
		}
	}
}

// With n readings, lobes of n − 1 and n + 1 pass for a bend, and no others up
// to 15.
func TestSeparate_hidden(t *testing.T) {
	for n := 3; n <= 12; n++ {
		for lobes := 2; lobes <= 15; lobes++ {
			turn := RunOutTurn{}
			for i := range n {
				turn.Readings = append(turn.Readings, units.Length(math.Round(1e7*math.Cos(2*math.Pi*float64(i*lobes)/float64(n)+0.4))))
			}
			s, err := turn.Separate(0)
			require.NoError(t, err)
			hidden := false
			for _, h := range s.Hidden {
				hidden = hidden || h == lobes
			}
			require.Equal(t, hidden, s.Off.hypot() > 1e6, "%d readings, %d lobes", n, lobes)
		}
	}
}

// Four uneven readings can't tell an oval from a bend, nine nearly even ones can.
func TestSeparate_hiddenUneven(t *testing.T) {
	turn := RunOutTurn{Readings: microns("0 1 2 3"), Angles: []units.Angle{0, angleOf("80"), angleOf("170"), angleOf("280")}}
	s, err := turn.Separate(0)
	require.NoError(t, err)
	require.Contains(t, s.Hidden, 3)
	turn = RunOutTurn{Readings: microns("0 1 2 3 4 5 6 7 8")}
	for a := range strings.FieldsSeq("1 39 81 121 159 201 239 281 319") {
		turn.Angles = append(turn.Angles, angleOf(a))
	}
	s, err = turn.Separate(0)
	require.NoError(t, err)
	require.NotContains(t, s.Hidden, 2)
	require.NotContains(t, s.Hidden, 3)
	require.Contains(t, s.Hidden, 8)
}

func TestSeparate_refuses(t *testing.T) {
	good := func() RunOutTurn {
		return RunOutTurn{Where: "main 2", Readings: microns("0 10 20 10"), Angles: []units.Angle{0, angleOf("90"), angleOf("180"), angleOf("270")}}
	}
	for _, c := range []struct {
		name, reason string
		spoil        func(*RunOutTurn)
	}{
		{"one reading", "main 2, dial readings 1 is not from 3 to 1000", func(r *RunOutTurn) { r.Readings, r.Angles = r.Readings[:1], nil }},
		{"none", "dial readings 0", func(r *RunOutTurn) { r.Readings, r.Angles = nil, nil }},
		{"too many", "dial readings 1001", func(r *RunOutTurn) { r.Readings, r.Angles = make([]units.Length, 1001), nil }},
		{"mismatched", "angles 3 is not one for each of 4", func(r *RunOutTurn) { r.Angles = r.Angles[:3] }},
		{"repeated", "angle 4 360° is not another place than reading 1", func(r *RunOutTurn) { r.Angles[3] = angleOf("360") }},
		{"far", "dial reading 2", func(r *RunOutTurn) { r.Readings[1] = 11 * units.Metre }},
		{"angle out of range", "angle 1", func(r *RunOutTurn) { r.Angles[0] = math.MaxInt64 }},
		{"position", "position", func(r *RunOutTurn) { r.Position = 11 * units.Metre }},
		{"back", "dial back", func(r *RunOutTurn) { r.BackRead, r.Back = true, math.MaxInt64 }},
		{"bunched", "spread round", func(r *RunOutTurn) { r.Angles = []units.Angle{0, 1, 2, 3} }},
	} {
		turn := good()
		c.spoil(&turn)
		_, err := turn.Separate(units.Micrometre)
		require.ErrorIs(t, err, ErrInput, c.name)
		require.ErrorContains(t, err, c.reason)
	}
	_, err := good().Separate(-1)
	require.ErrorIs(t, err, ErrInput)
	// What the dial came back off by widens the error.
	turn := good()
	turn.Back, turn.BackRead = units.Micrometre, true
	s, err := turn.Separate(0)
	require.NoError(t, err)
	require.InDelta(t, math.Sqrt2*1e6, float64(s.Off.Error), 3) // (2/4)·|2 + 2i|·1 µm
}
