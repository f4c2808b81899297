package crank

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func oilAt(sizes ...string) (list []tolerance.Bracket) {
	for _, s := range sizes {
		list = append(list, journalAt(s))
	}
	return list
}

// Least bore less greatest journal, and the other way: never their means.
func TestOilClearanceExtremes(t *testing.T) {
	bores := []units.Length{journalMM("60.040"), journalMM("60.034"), journalMM("60.052")}
	journals := []units.Length{journalMM("59.998"), journalMM("59.990")}
	least, ok := LeastOilClearance(bores, journals)
	require.True(t, ok)
	require.Equal(t, journalMM("0.036"), least)
	greatest, ok := GreatestOilClearance(bores, journals)
	require.True(t, ok)
	require.Equal(t, journalMM("0.062"), greatest)
	_, ok = LeastOilClearance(nil, journals)
	require.False(t, ok)
	_, ok = GreatestOilClearance(bores, nil)
	require.False(t, ok)
	// A thousandth of the journal: .0025 in for 2.5 in.
	require.Equal(t, units.MustParseLength("0.0025 in"), OilClearanceThumb(units.MustParseLength("2.5 in")))
}

func TestOilReadingsCheck(t *testing.T) {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.025–0.050 mm"), Wear: tolerance.MustParseBand("max 0.080 mm")}
	o := OilReadings{Where: "main 3", Journal: oilAt("59.965 mm", "59.960 mm"), Housing: oilAt("64.005 mm", "64.009 mm"), Upper: oilAt("2.000 mm", "1.999 mm"), Lower: oilAt("2.001 mm")}
	r, err := o.Check(limits)
	require.NoError(t, err)
	require.Equal(t, ByShellWalls, r.Method)
	// 64.005 − 2.000 − 2.001 − 59.965 and 64.009 − 1.999 − 2.001 − 59.960.
	require.Equal(t, journalAt("0.039 mm"), r.Least)
	require.Equal(t, journalAt("0.049 mm"), r.Greatest)
	require.Equal(t, journalAt("0.059965 mm"), r.Thumb)
	require.Equal(t, tolerance.AsNew, r.Finding.Standing)
	require.Contains(t, r.Next, "before nip")

	// The bore measured in place is the better one.
	o.Bore = oilAt("60.002 mm", "60.006 mm")
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Equal(t, ByBore, r.Method)
	require.Equal(t, journalAt("0.037 mm"), r.Least)
	require.Equal(t, journalAt("0.046 mm"), r.Greatest)
	require.Equal(t, "within the limits", r.Next)

	// One reading at each: too tight, too wide, can't tell.
	o = OilReadings{Journal: oilAt("59.990 mm"), Bore: oilAt("60.000 mm")}
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Contains(t, r.Next, "too tight")
	o.Bore = oilAt("60.100 mm")
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Equal(t, tolerance.PastWearLimit, r.Finding.Standing)
	require.Contains(t, r.Next, "never file a cap")
	o.Bore = oilAt("60.071 ±0.002 mm")
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Finding.Standing)
	require.Contains(t, r.Next, "can't be told yet, which is not a pass")
	o = OilReadings{Journal: oilAt("59.990 mm"), Housing: oilAt("64.071 ±0.002 mm"), Upper: oilAt("2 mm"), Lower: oilAt("2 mm")}
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Contains(t, r.Next, "measure the bore at 90° to the split")

	// On both sides of nothing: not told, and not passed.
	o = OilReadings{Journal: oilAt("59.990 ±0.005 mm"), Bore: oilAt("59.992 ±0.005 mm")}
	r, err = o.Check(tolerance.Spec{Wear: tolerance.MustParseBand("max 0.080 mm")})
	require.NoError(t, err)
	require.Equal(t, journalAt("[-0.008 mm, 0.012 mm]"), r.Least)
	_, err = o.Check(tolerance.Spec{})
	require.NoError(t, err)
	r, err = o.Check(limits)
	require.NoError(t, err)
	require.Contains(t, r.Next, "too tight")
	r, err = o.Check(tolerance.Spec{New: tolerance.MustParseBand("0–0.05 mm")})
	require.NoError(t, err)
	require.Contains(t, r.Next, "doesn't tell clearance from interference")
}

func TestOilReadingsRefuses(t *testing.T) {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.025–0.050 mm")}
	for name, c := range map[string]struct {
		o    OilReadings
		want string
	}{
		"nothing":      {OilReadings{}, "journal (not given)"},
		"no bore":      {OilReadings{Where: "main 2", Journal: oilAt("60 mm")}, "main 2, housing (not given)"},
		"no lower":     {OilReadings{Journal: oilAt("60 mm"), Housing: oilAt("64 mm"), Upper: oilAt("2 mm")}, "lower shell's wall (not given)"},
		"open":         {OilReadings{Journal: oilAt("60 mm", "[60 mm, ∞)"), Bore: oilAt("60.04 mm")}, "journal, reading 2"},
		"larger":       {OilReadings{Journal: oilAt("64.1 mm"), Housing: oilAt("64 mm"), Upper: oilAt("2 mm"), Lower: oilAt("2 mm")}, "journal 64.1 mm is not below the housing bore 64 mm"},
		"interference": {OilReadings{Where: "main 2", Journal: oilAt("60.05 mm"), Bore: oilAt("60.04 mm")}, "main 2, oil clearance -0.01 mm is not a clearance: it is an interference"},
		"walls":        {OilReadings{Journal: oilAt("60.05 mm"), Housing: oilAt("64 mm"), Upper: oilAt("2 mm"), Lower: oilAt("2 mm")}, "it is an interference"},
		"two units":    {OilReadings{Journal: oilAt("59.96 mm", "2.36 mm"), Bore: oilAt("60.04 mm")}, "journal 2.36 mm is not near 59.96 mm"},
		"inch":         {OilReadings{Journal: oilAt("2.36 mm"), Bore: oilAt("60.04 mm")}, "journal 2.36 mm is not near the bore 60.04 mm"},
	} {
		_, err := c.o.Check(limits)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	o := OilReadings{Journal: oilAt("59.96 mm"), Bore: oilAt("60 mm")}
	_, err := o.Check(tolerance.Spec{New: tolerance.MustParseBand("1–3 mm"), Wear: tolerance.MustParseBand("max 2 mm")})
	require.Error(t, err)
}

// Brackets hold every case that they allow: least and greatest of a bearing drawn
// at random within its readings' brackets.
func TestOilReadingsHoldEveryCase(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	draw := func(lo int64) (tolerance.Bracket, units.Length) {
		a, w := lo+rng.Int64N(20e6), rng.Int64N(5e6)
		return journalSpan(units.Length(a), units.Length(a+w)), units.Length(a + rng.Int64N(w+1))
	}
	for range 500 {
		var o OilReadings
		var b, j []units.Length
		for range 1 + rng.IntN(3) {
			x, v := draw(60_030_000_000)
			o.Bore, b = append(o.Bore, x), append(b, v)
			x, v = draw(59_990_000_000)
			o.Journal, j = append(o.Journal, x), append(j, v)
		}
		r, err := o.Check(tolerance.Spec{})
		require.NoError(t, err)
		least, _ := LeastOilClearance(b, j)
		greatest, _ := GreatestOilClearance(b, j)
		require.True(t, r.Least.Contains(least))
		require.True(t, r.Greatest.Contains(greatest))
	}
}

func FuzzOilReadings(f *testing.F) {
	f.Add(int64(60_000_000_000), int64(64_040_000_000), int64(2_000_000_000), int64(5_000_000))
	f.Add(int64(-1), int64(0), int64(1), int64(-5))
	f.Fuzz(func(t *testing.T, journal, housing, wall, e int64) {
		around := func(q int64) []tolerance.Bracket {
			return []tolerance.Bracket{journalSpan(units.Length(q), units.Length(q).Add(units.Length(e)))}
		}
		o := OilReadings{Journal: around(journal), Housing: around(housing), Upper: around(wall), Lower: around(wall)}
		r, err := o.Check(tolerance.Spec{})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.True(t, r.Least.Contains(OilClearance(units.Length(housing), units.Length(wall), units.Length(journal))))
		require.NotEmpty(t, r.Next)
	})
}

func BenchmarkOilClearance(b *testing.B) {
	housing, wall, journal := journalMM("64.005"), journalMM("2"), journalMM("59.965")
	b.Run("lib=tenthou/op=walls", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			journalLength = OilClearance(housing, wall, journal)
		}
	})
	b.Run("lib=float64/op=walls", func(b *testing.B) {
		housing, wall, journal := 64.005, 2.0, 59.965
		for b.Loop() {
			journalFloats[0] = housing - 2*wall - journal
		}
	})
	o := OilReadings{Journal: oilAt("59.965 mm", "59.960 mm"), Bore: oilAt("60.002 mm", "60.006 mm")}
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.025–0.050 mm")}
	b.Run("lib=tenthou/op=check", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := o.Check(limits); err != nil {
				b.Fatal(err)
			}
		}
	})
}
