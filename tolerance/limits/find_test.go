package limits

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func texts(ls []Limits) []string {
	out := make([]string, len(ls))
	for i, l := range ls {
		out[i] = l.String()
	}
	return out
}

// All yields just what At gives, in order, and stops when told.
func TestAllIsWhatAtGives(t *testing.T) {
	for _, nominal := range []units.Length{50 * units.Micrometre, units.Millimetre, 2 * units.Millimetre, 20 * units.Millimetre,
		25*units.Millimetre + 400*units.Micrometre, 300 * units.Millimetre, 500 * units.Millimetre} {
		for _, f := range []Feature{Hole, Shaft} {
			var want []Limits
			for l := range uint8(letters) {
				for g := IT01; g <= IT18; g++ {
					if at, err := (Class{f, l, g}).At(nominal); err == nil {
						want = append(want, at)
					}
				}
			}
			got := slices.Collect(All(nominal, f))
			require.Equal(t, want, got)
			for l := range All(nominal, f) {
				require.Equal(t, want[0], l)
				break
			}
		}
	}
	// By hand at 25 mm, which has no CD, EF or FG. Holes: A to H 8 × 20 grades, J 3,
	// JS 20, K 6 (IT3 to IT8), M to ZC 14 × 16 (from IT3). Shafts: a to h 8 × 20,
	// j 3, js 20, k to zc 15 × 20.
	require.Len(t, slices.Collect(All(25*units.Millimetre, Hole)), 8*20+3+20+6+14*16)
	require.Len(t, slices.Collect(All(25*units.Millimetre, Shaft)), 8*20+3+20+15*20)
	for range All(25*units.Millimetre, 0) {
		t.Fatal("of neither feature")
	}
	for range All(0, Hole) {
		t.Fatal("of no size")
	}
}

// By hand, from the published tables at 25 mm: H7 is +21/0, P7 −14/−35, N7
// −7/−28, K7 +6/−15, JS7 ±10.5, M7 0/−21, R7 −20/−41, J7 +12/−9.
func TestHolding(t *testing.T) {
	reading, err := tolerance.NewInterval(25*units.Millimetre+12*units.Micrometre, tolerance.Closed, 25*units.Millimetre+14*units.Micrometre, tolerance.Open)
	require.NoError(t, err)
	got, err := Holding(25*units.Millimetre, Hole, reading)
	require.NoError(t, err)
	// IT5 is 9 µm: G5 +16/+7. FG is not at 25 mm. IT6 13: G6 +20/+7; H6 ends at 13,
	// below 14. IT7 21: G7, H7; JS7 ends at 10.5 and J7 at 12.
	require.Equal(t, []string{"25 G5", "25 G6", "25 G7", "25 H7", "25 G8", "25 H8", "25 J8", "25 JS8"}, texts(got)[:8])
	require.True(t, slices.IsSortedFunc(got, finestFirst))
	for _, l := range got {
		require.Equal(t, tolerance.Within, l.Band().Judge(reading))
	}
	atLeast, err := tolerance.NewInterval(25*units.Millimetre, tolerance.Closed, 0, tolerance.Absent)
	require.NoError(t, err)
	got, err = Holding(25*units.Millimetre, Hole, atLeast)
	require.NoError(t, err)
	require.Empty(t, got, "nothing says how large it is")
}

func TestWithin(t *testing.T) {
	// A manual's 25.005–25.030 mm allows G6 (+20/+7), not G7 (+28/+7)? It does: 28 is
	// below 30; F6 (+33/+20) is beyond.
	got, err := Within(25*units.Millimetre, Hole, tolerance.MustParseBand("25.005–25.030 mm"))
	require.NoError(t, err)
	require.Equal(t, []string{"25 G7", "25 G6", "25 F5", "25 G5"}, texts(got)[:4]) // F5 +29/+20
	require.True(t, slices.IsSortedFunc(got, coarsestFirst))
	for _, l := range got {
		require.True(t, l.Least() >= 25005*units.Micrometre && l.Greatest() <= 25030*units.Micrometre)
	}
	// One limit alone: everything not above the nominal size.
	got, err = Within(25*units.Millimetre, Shaft, tolerance.AtMost(25*units.Millimetre))
	require.NoError(t, err)
	require.Contains(t, texts(got), "25 h7")
	require.NotContains(t, texts(got), "25 js7")
}

func TestNamed(t *testing.T) {
	for band, want := range map[string][]string{
		"25–25.021 mm":        {"25 H7"},
		"25.001–25.021 mm":    {},
		"more than 25 mm":     {},
		"24.980–24.993 mm":    {},
		"24.9895–25.0105 mm":  {"25 JS7"},
		"24.98 - 25.001 mm":   {},
		"24.986–25.007 mm":    {},
		"24.979–25.000 mm":    {"25 M7"},
		"25.0000–25.00060 mm": {"25 H01"},
	} {
		got, err := Named(25*units.Millimetre, Hole, tolerance.MustParseBand(band))
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(want, texts(got)), band)
	}
	got, err := Named(300*units.Millimetre, Shaft, tolerance.MustParseBand("299.984–300.016 mm"))
	require.NoError(t, err)
	require.Equal(t, []string{"300 j6", "300 js6"}, texts(got)) // j6 ±16 and IT6 32: the published table
}

// What names a class finds it again: at a random size, of every class.
func TestNamedFindsEveryClass(t *testing.T) {
	r := rand.New(rand.NewPCG(286, 2))
	for range 20 {
		nominal := units.Length(r.Int64N(int64(500*units.Millimetre))).Abs() + units.Micrometre
		nominal = min(nominal, 500*units.Millimetre)
		f := Feature(1 + r.IntN(2))
		all := slices.Collect(All(nominal, f))
		l := all[r.IntN(len(all))]
		got, err := Named(nominal, f, l.Band())
		require.NoError(t, err)
		require.Contains(t, got, l)
		inside, err := Within(nominal, f, l.Band())
		require.NoError(t, err)
		require.Contains(t, inside, l)
		require.Equal(t, l.Tolerance(), inside[0].Tolerance(), "nothing wider is inside")
		holding, err := Holding(nominal, f, l.Band().Interval())
		require.NoError(t, err)
		require.Contains(t, holding, l)
		require.Equal(t, l.Tolerance(), holding[0].Tolerance(), "nothing finer holds it")
	}
}

// A pin for a bush, by hand: H7 at 20 mm is +21/0, so that a clearance of 5 to
// 45 µm wants a shaft between −24 and −5: g6 (−7/−20) is the coarsest.
func TestMating(t *testing.T) {
	band := tolerance.MustParseBand("0.005–0.045 mm")
	got, err := Mating(MustParseLimits("20 H7"), band)
	require.NoError(t, err)
	require.Equal(t, []string{"20 g6", "20 g5"}, texts(got)[:2])
	for _, shaft := range got {
		f, err := Pair{MustParseClass("H7"), shaft.Class()}.At(20 * units.Millimetre)
		require.NoError(t, err)
		require.True(t, f.MinClearance() >= 5*units.Micrometre && f.MaxClearance() <= 45*units.Micrometre)
	}
	// The bush for a ground pin, the other way round: h5 at 20 mm is 0/−9, so that
	// the hole lies between +5 and +36: G6 is +20/+7, G7 +28/+7, F6 +33/+20.
	got, err = Mating(MustParseLimits("20 h5"), band)
	require.NoError(t, err)
	require.Equal(t, []string{"20 G7", "20 F6", "20 G6"}, texts(got)[:3])
	// A press fit: at least 15 and at most 45 µm of interference with H6 (+13/0) wants
	// +28 to +45: r5 is +37/+28, r6 +41/+28.
	got, err = Mating(MustParseLimits("20 H6"), tolerance.MustBetween(-45*units.Micrometre, -15*units.Micrometre))
	require.NoError(t, err)
	require.Equal(t, []string{"20 r6", "20 r5", "20 s5"}, texts(got)[:3]) // s5 +44/+35
}

func TestFindRefuses(t *testing.T) {
	huge := units.OutOfRange[units.Length]()
	beyond := tolerance.BandFrom(tolerance.Exactly(huge))
	at25 := 25 * units.Millimetre
	for _, c := range []struct {
		what string
		kind error
		find func() ([]Limits, error)
	}{
		{"measured size", tolerance.ErrNoReading, func() ([]Limits, error) { return Holding(at25, Hole, tolerance.Bracket{}) }},
		{"measured size", tolerance.ErrRange, func() ([]Limits, error) { return Holding(at25, Hole, beyond.Interval()) }},
		{"allowed sizes", tolerance.ErrNoLimit, func() ([]Limits, error) { return Within(at25, Hole, tolerance.Band{}) }},
		{"allowed sizes", tolerance.ErrRange, func() ([]Limits, error) { return Within(at25, Hole, beyond) }},
		{"band", tolerance.ErrNoLimit, func() ([]Limits, error) { return Named(at25, Hole, tolerance.Band{}) }},
		{"clearance", tolerance.ErrNoLimit, func() ([]Limits, error) { return Mating(MustParseLimits("25 H7"), tolerance.Band{}) }},
		{"clearance", tolerance.ErrRange, func() ([]Limits, error) { return Mating(MustParseLimits("25 H7"), beyond) }},
	} {
		got, err := c.find()
		require.Nil(t, got)
		require.ErrorIs(t, err, c.kind)
		var band *BandError
		require.ErrorAs(t, err, &band)
		require.Equal(t, BandError{What: c.what, Kind: c.kind}, *band)
		require.EqualError(t, err, "limits: "+c.what+": "+c.kind.Error())
	}
	ok := tolerance.AtMost(at25)
	for _, nominal := range []units.Length{0, -at25, 501 * units.Millimetre, huge, -huge} {
		_, err := Within(nominal, Hole, ok)
		require.ErrorIs(t, err, ErrSize)
		_, err = Named(nominal, Hole, ok)
		require.ErrorIs(t, err, ErrSize)
		_, err = Holding(nominal, Hole, tolerance.Exactly(at25))
		require.ErrorIs(t, err, ErrSize)
		_, err = GradeWithin(nominal, at25)
		require.ErrorIs(t, err, ErrSize)
		_, err = GradeHolding(nominal, at25)
		require.ErrorIs(t, err, ErrSize)
		_, err = IT7.Tolerance(nominal)
		require.ErrorIs(t, err, ErrSize)
	}
	_, err := Mating(Limits{}, ok)
	require.ErrorIs(t, err, ErrNotTabulated)
	got, err := Within(at25, 0, ok)
	require.NoError(t, err)
	require.Empty(t, got, "neither holes nor shafts")
}
