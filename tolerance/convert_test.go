package tolerance

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/units"
)

func unitNamed(t *testing.T, c vectors.Case) units.Unit[units.Length] {
	u, err := units.ParseUnit[units.Length](c.Text("unit"))
	require.NoError(t, err, c.Where())
	return u
}

func TestConvertAsPublished(t *testing.T) {
	vectors.Load(t, "published/convertlimits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		b, u := MustParseBand(c.Text("band")), unitNamed(t, c)
		rule := ConvertNearest
		if c.Choice("rule", "nearest", "inward") == "inward" {
			rule = ConvertInward
		}
		got, err := b.Convert(u, ByTolerance, rule)
		require.NoError(t, err)
		require.Equal(t, c.Int("places"), got.Places)
		lo, err := units.ParseIn(c.Text("lower"), u)
		require.NoError(t, err)
		hi, err := units.ParseIn(c.Text("upper"), u)
		require.NoError(t, err)
		require.Equal(t, MustBetween(lo, hi), got.To)
		given, err := b.Convert(u, c.Int("places"), rule)
		require.NoError(t, err)
		require.Equal(t, got, given)
		require.Equal(t, rule == ConvertInward, got.LowerGives < 0 && got.UpperGives < 0, "inward takes at both limits here")
	})
}

func TestPlacesByTolerance(t *testing.T) {
	vectors.Load(t, "practice/placesbytolerance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		least, below := units.MustParseLength(c.Text("least")), units.MustParseLength(c.Text("less_than"))
		u, want := unitNamed(t, c), c.Int("places")
		for _, w := range []units.Length{least, (least + below) / 2, below - 1} {
			n, ok := PlacesByTolerance(w, u)
			require.True(t, ok)
			require.Equal(t, want, n)
		}
		n, ok := PlacesByTolerance(least-1, u)
		require.True(t, !ok || n == want+1)
		n, ok = PlacesByTolerance(below, u)
		require.True(t, !ok || n == want-1)
	})
	_, ok := PlacesByTolerance(units.Millimetre, units.InThou)
	require.False(t, ok)
	_, ok = PlacesByTolerance(0, units.InInches)
	require.False(t, ok)
}

// Whatever the table, its rounding moves a limit by at most 1.97 % of the
// tolerance into millimetres and 2.54 % into inches (published check values,
// part A, section 2).
func TestRuleBoundsWhatRoundingMoves(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 1))
	for range 5000 {
		lo := units.Length(r.Int64N(1e11))
		w := units.Length(1+r.Int64N(9999)) * units.Length(254_000)
		b := MustBetween(lo, lo+w)
		for u, share := range map[units.Unit[units.Length]]int64{units.InMillimetres: 197, units.InInches: 254} {
			c, err := b.Convert(u, ByTolerance, ConvertNearest)
			if errors.Is(err, ErrPlaces) {
				continue
			}
			require.NoError(t, err)
			most := int64(w) * share / 10000
			require.LessOrEqual(t, int64(c.LowerGives.Abs()), most+1)
			require.LessOrEqual(t, int64(c.UpperGives.Abs()), most+1)
		}
	}
}

// An inward result lies inside the exact limits, and accepts nothing that they
// reject; what moved is what the two differ by.
func TestInwardStaysInside(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 1))
	ends := []End{Absent, Open, Closed}
	for range 5000 {
		lo := units.Length(r.Int64N(1e10))
		b, err := NewBand(lo, ends[r.IntN(3)], lo+units.Length(1+r.Int64N(1e9)), ends[r.IntN(3)])
		if err != nil || b.IsZero() {
			continue
		}
		u, places := units.Unit[units.Length](r.IntN(4)), r.IntN(7)
		places = min(places, u.Places())
		c, err := b.Convert(u, places, ConvertInward)
		if errors.Is(err, ErrOrder) {
			continue
		}
		require.NoError(t, err)
		require.True(t, c.To.limits.Within(b.limits), "%v → %v", b, c.To)
		require.LessOrEqual(t, c.LowerGives, units.Length(0))
		require.LessOrEqual(t, c.UpperGives, units.Length(0))
		near, err := b.Convert(u, places, ConvertNearest)
		if err == nil {
			require.Equal(t, near.Exact(), near.To == b)
		}
	}
}

func TestConvertRefuses(t *testing.T) {
	for _, c := range []struct {
		band   string
		unit   units.Unit[units.Length]
		places int
		rule   ConvertRule
		kind   error
	}{
		{"0.031–0.032 mm", units.InMillimetres, 2, ConvertInward, ErrOrder},
		{"0.031–0.032 mm", units.InInches, 9, ConvertInward, ErrPlaces},
		{"0.031–0.032 mm", units.InInches, -1, ConvertInward, ErrPlaces},
		{"max 0.1 mm", units.InInches, ByTolerance, ConvertNearest, ErrPlaces},
		{"0–60 mm", units.InInches, ByTolerance, ConvertNearest, ErrPlaces},
		{"no limit", units.InInches, 3, ConvertNearest, ErrNoLimit},
	} {
		got, err := MustParseBand(c.band).Convert(c.unit, c.places, c.rule)
		require.ErrorIs(t, err, c.kind, c.band)
		require.Zero(t, got)
		var e *ConvertError
		require.ErrorAs(t, err, &e)
		require.NotEmpty(t, e.Error())
	}
	bad := AtMost(units.OutOfRange[units.Length]())
	_, err := bad.Convert(units.InInches, 3, ConvertNearest)
	require.ErrorIs(t, err, ErrRange)
	// Rounded up, the last quantum in range leaves it.
	_, err = AtLeast(units.Length(1<<61)).Convert(units.InMetres, 0, ConvertInward)
	require.ErrorIs(t, err, ErrRange)
	// The rule is for lengths alone.
	_, err = MustBetween(70*units.Newton, 80*units.Newton).Convert(units.InPoundsForce, ByTolerance, ConvertNearest)
	require.ErrorIs(t, err, ErrPlaces)
	c, err := MustBetween(320*units.Newton, 360*units.Newton).Convert(units.InPoundsForce, 1, ConvertInward)
	require.NoError(t, err)
	require.Equal(t, "72.0–80.9 lbf", c.String(), "71.94 to 80.93 lbf: 4.448221615 N a pound")
}

func TestConvertKeepsOpenLimits(t *testing.T) {
	b := MustParseBand("less than 0.1 mm")
	c, err := b.Convert(units.InMillimetres, 2, ConvertInward)
	require.NoError(t, err)
	require.Equal(t, b, c.To)
	require.True(t, c.Exact())
	// 0.1 mm is 0.003937 in: 0.0039 itself may be accepted.
	c, err = b.Convert(units.InInches, 4, ConvertInward)
	require.NoError(t, err)
	require.Equal(t, MustParseBand("max 0.0039 in"), c.To)
	require.Equal(t, "inward", c.Rule.String())
	require.Equal(t, "nearest", ConvertNearest.String())
}

func TestDesignColumn(t *testing.T) {
	for _, c := range []struct{ first, second, want string }{
		// TM 9-2815-220-24 bore limits: inch sizes with their millimetres.
		{"5.7510–5.7530 in", "146.0754–146.1262 mm", "first"},
		{"146.08–146.13 mm", "5.7510–5.7530 in", "second"},
		{"0.03–0.07 mm", "0.0012–0.0028 in", "first"},
		{"max 0.10 mm", "max 0.0039 in", "first"},
		{"max 0.004 in", "max 0.10 mm", ""},      // each follows from the other, with as many digits
		{"0.03–0.07 mm", "0.0015–0.0028 in", ""}, // one of them is wrong
		{"0.254–0.508 mm", "0.010–0.020 in", "second"},
		{"max 0.1 mm", "0.0030–0.0039 in", ""},
		{"11 ±0.3 mm", "0.421–0.445 in", "first"},
		{"0.421–0.445 in", "11 ±0.3 mm", "second"},
		{"11 ±0.3 mm", "10.7–11.3 mm", ""}, // the same, each exactly
	} {
		first, err := ParsePrinted(c.first)
		require.NoError(t, err)
		second, err := ParsePrinted(c.second)
		require.NoError(t, err)
		got, ok := DesignColumn(first, second)
		require.Equal(t, c.want != "", ok, "%s | %s", c.first, c.second)
		switch c.want {
		case "first":
			require.Equal(t, first, got, "%s | %s", c.first, c.second)
		case "second":
			require.Equal(t, second, got, "%s | %s", c.first, c.second)
		}
	}
}
