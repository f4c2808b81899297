package tolerance

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

func TestFit_published(t *testing.T) {
	vectors.Load(t, "published/fit_worked.txt").Each(t, func(t *testing.T, c vectors.Case) {
		hole, shaft := MustParseBand(c.Text("hole")), MustParseBand(c.Text("shaft"))
		least, greatest := units.MustParseLength(c.Text("least")), units.MustParseLength(c.Text("greatest"))
		f, err := FitBands(hole, shaft)
		require.NoError(t, err)
		require.Equal(t, MustBetween(least, greatest).Interval(), f.Clearance())
		got, ok := f.Least()
		require.True(t, ok)
		require.Equal(t, least, got)
		got, ok = f.Greatest()
		require.True(t, ok)
		require.Equal(t, greatest, got)
		mean, ok := f.Mean()
		require.True(t, ok)
		require.Equal(t, least+greatest, 2*mean)
		require.Equal(t, c.Choice("kind", "clearance", "transition", "interference"), f.Kind().String())

		// Back: with this clearance wanted, the shaft's limits ask for this hole.
		back, err := HoleBand(shaft, MustBetween(least, greatest))
		require.NoError(t, err)
		require.Equal(t, hole, back)
		back, err = ShaftBand(hole, MustBetween(least, greatest))
		require.NoError(t, err)
		require.Equal(t, shaft, back)
	})
}

func TestFitOf_Kind(t *testing.T) {
	for _, c := range []struct {
		hole, shaft string
		want        FitKind
		words       string
	}{
		{"10.00–10.02 mm", "9.98–10.00 mm", ClearanceFit, "clearance 0–0.04 mm"},
		{"9.98–10.00 mm", "10.00–10.02 mm", InterferenceFit, "interference 0–0.04 mm"},
		{"10.00–10.00 mm", "10.00–10.00 mm", ClearanceFit, "clearance 0 mm"},
		{"10.00–10.02 mm", "9.99–10.01 mm", TransitionFit, "from 0.01 mm interference to 0.03 mm clearance"},
		{"min 10 mm", "max 9.99 mm", ClearanceFit, "clearance min 0.01 mm"},
		{"max 10 mm", "min 10.01 mm", InterferenceFit, "interference min 0.01 mm"},
		{"more than 10 mm", "max 10 mm", ClearanceFit, "clearance more than 0 mm"},
		{"max 10 mm", "min 9.99 mm", UnknownFit, "clearance (−∞, 0.01 mm]"},
		{"min 10 mm", "max 10.01 mm", UnknownFit, "clearance [-0.01 mm, ∞)"},
		{"min 10 mm", "min 10 mm", UnknownFit, "clearance (−∞, ∞)"},
	} {
		f, err := FitBands(MustParseBand(c.hole), MustParseBand(c.shaft))
		require.NoError(t, err)
		require.Equal(t, c.want, f.Kind(), "%s / %s", c.hole, c.shaft)
		require.Equal(t, c.words, f.String())
	}
	// Two parts that exist: clearance, interference, or the readings don't tell.
	for _, c := range []struct {
		hole, shaft string
		want        FitKind
	}{
		{"10.01 ±0.002 mm", "10.00 ±0.002 mm", ClearanceFit},
		{"10.00 ±0.002 mm", "10.01 ±0.002 mm", InterferenceFit},
		{"10.00 ±0.002 mm", "10.00 ±0.002 mm", UnknownFit},
	} {
		hole, err := ParseBracket(c.hole)
		require.NoError(t, err)
		shaft, err := ParseBracket(c.shaft)
		require.NoError(t, err)
		f, err := FitSizes(hole, shaft)
		require.NoError(t, err)
		require.Equal(t, c.want, f.Kind())
	}
}

func TestFitKind_text(t *testing.T) {
	for k := UnknownFit; k <= InterferenceFit; k++ {
		b, err := k.MarshalText()
		require.NoError(t, err)
		var back FitKind
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, k, back)
	}
	require.Equal(t, "can't tell", FitKind(99).String())
	k := TransitionFit
	require.ErrorIs(t, k.UnmarshalText([]byte("snug")), ErrSyntax)
	require.Equal(t, TransitionFit, k)
}

func TestFitOf_json(t *testing.T) {
	f, err := FitBands(MustParseBand("30.000–30.020 mm"), MustParseBand("29.982–29.995 mm"))
	require.NoError(t, err)
	b, err := json.Marshal(f)
	require.NoError(t, err)
	require.JSONEq(t, `{"hole":"[30 mm, 30.02 mm]","shaft":"[29.982 mm, 29.995 mm]"}`, string(b))
	var back Fit
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, f, back)
}

func TestFitOf_zero(t *testing.T) {
	var f Fit
	require.Equal(t, UnknownFit, f.Kind())
	require.Equal(t, Undecided, f.Judge(MustParseBand("min 0 mm")))
	_, ok := f.Mean()
	require.False(t, ok)
	_, ok = f.Least()
	require.False(t, ok)
	_, ok = f.Greatest()
	require.False(t, ok)
	_, _, ok = f.Outside(MustParseBand("min 0 mm"))
	require.False(t, ok)
	require.Equal(t, "clearance (−∞, ∞)", f.String())
	f.Hole = broken[units.Length]()
	require.Equal(t, UnknownFit, f.Kind())
	require.Equal(t, "clearance out of range", f.String())
}

func TestFitOf_Outside(t *testing.T) {
	f, err := FitBands(MustParseBand("10.00–10.03 mm"), MustParseBand("9.98–9.99 mm"))
	require.NoError(t, err) // clearance 0.01 to 0.05
	for _, c := range []struct {
		wanted, below, above string
		ok                   bool
		verdict              Verdict
	}{
		{"0.01–0.05 mm", "0 mm", "0 mm", true, Within},
		{"0.02–0.04 mm", "0.01 mm", "0.01 mm", true, Undecided},
		{"min 0.06 mm", "0.05 mm", "0 mm", true, Below},
		{"max 0.005 mm", "0 mm", "0.045 mm", true, Above},
		{"no limit", "0 mm", "0 mm", true, Undecided},
	} {
		w := MustParseBand(c.wanted)
		below, above, ok := f.Outside(w)
		require.Equal(t, c.ok, ok)
		require.Equal(t, units.MustParseLength(c.below), below, c.wanted)
		require.Equal(t, units.MustParseLength(c.above), above, c.wanted)
		require.Equal(t, c.verdict, f.Judge(w), c.wanted)
	}
	open, err := FitBands(MustParseBand("min 10 mm"), MustParseBand("max 9.99 mm"))
	require.NoError(t, err)
	_, _, ok := open.Outside(MustParseBand("max 1 mm"))
	require.False(t, ok)
	below, _, ok := open.Outside(MustParseBand("min 0.02 mm"))
	require.True(t, ok)
	require.Equal(t, units.MustParseLength("0.01 mm"), below)
	_, _, ok = open.Outside(BandFrom(broken[units.Length]()))
	require.False(t, ok)
}

// Of every hole and shaft that the bands allow the clearance lies between the
// least and the greatest, and the extremes are had.
func TestFitOf_holdsEveryPair(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range 2000 {
		lo, w := units.Length(r.Int64N(1e11)), units.Length(r.Int64N(1e8))
		lo2, w2 := lo-units.Length(r.Int64N(2e8)), units.Length(r.Int64N(1e8))
		f, err := FitBands(MustBetween(lo, lo+w), MustBetween(lo2, lo2+w2))
		require.NoError(t, err)
		hole, shaft := lo+units.Length(r.Int64N(int64(w)+1)), lo2+units.Length(r.Int64N(int64(w2)+1))
		require.True(t, f.Clearance().Contains(Clearance(hole, shaft)))
		require.Equal(t, hole, HoleSize(shaft, Clearance(hole, shaft)))
		require.Equal(t, shaft, ShaftSize(hole, Clearance(hole, shaft)))
		least, _ := f.Least()
		require.Equal(t, lo-(lo2+w2), least)
	}
}
