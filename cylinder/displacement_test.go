package cylinder

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// parsed is one length or volume, read from a text.
func parsed[Q units.Quantity](t testing.TB, s string) tolerance.Interval[Q] {
	t.Helper()
	i, err := tolerance.ParseInterval[Q](s)
	require.NoError(t, err, s)
	return i
}

func parsedLength(t testing.TB, s string) tolerance.Bracket { return parsed[units.Length](t, s) }
func parsedVolume(t testing.TB, s string) VolumeBracket     { return parsed[units.Volume](t, s) }

func TestDisplacementPublished(t *testing.T) {
	vectors.Load(t, "published/sweptvolumes.txt").Each(t, func(t *testing.T, c vectors.Case) {
		v, err := Displacement(parsedLength(t, c.Text("bore")), parsedLength(t, c.Text("stroke")), c.Int("cylinders"))
		require.NoError(t, err)
		unit, err := units.ParseUnit[units.Volume](c.Text("unit"))
		require.NoError(t, err)
		m, _ := v.Middle()
		c.Near("expected", m.Float(unit))
	})
}

// 0.785 for π/4 gives what the text prints; π/4 gives 0.051 % more.
func TestShortcutDiffers(t *testing.T) {
	vectors.Load(t, "published/cylinder_displacement_shortcut.txt").Each(t, func(t *testing.T, c vectors.Case) {
		d, h := c.Float("bore"), c.Float("height")
		c.Near("shortcut", 0.785*d*d*h)
		ours := float64(SweptVolume(tolerance.Float(d), tolerance.Float(h)))
		c.Near("exact", ours)
		require.InDelta(t, 0.00051, (ours-0.785*d*d*h)/ours, 0.000005)
	})
}

// The exact volumes are the judge, and they have theirs in package units.
func TestCylinderVolumeBracketHoldsEveryCorner(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 785))
	size := func(most int64) units.Length { return units.Length(rnd.Int64N(most)) }
	for range 3000 {
		b1, b2 := size(120e9), size(120e9)
		h1, h2 := size(20e9)-10e9, size(20e9)-10e9
		bore, height := spanOf(min(b1, b2), tolerance.Closed, max(b1, b2), tolerance.Closed), spanOf(min(h1, h2), tolerance.Closed, max(h1, h2), tolerance.Closed)
		v := CylinderVolumeBracket(bore, height)
		lo, _ := v.Lower()
		hi, _ := v.Upper()
		var corners []units.Volume
		for _, b := range []units.Length{b1, b2} {
			for _, h := range []units.Length{h1, h2} {
				corners = append(corners, units.CylinderVolumeRound(b, h, units.Down), units.CylinderVolumeRound(b, h, units.Up))
			}
		}
		least, greatest := corners[0], corners[0]
		for _, c := range corners {
			least, greatest = min(least, c), max(greatest, c)
		}
		require.Equal(t, [2]units.Volume{least, greatest}, [2]units.Volume{lo, hi})
		// And back: the height that is found holds every height there was.
		if bore.IsExact() || b1 == 0 || b2 == 0 {
			continue
		}
		require.True(t, height.Within(heightBracket(v, bore)))
	}
}

func TestCylinderVolumeBracketEnds(t *testing.T) {
	bore := parsedLength(t, "86 mm")
	require.Equal(t, tolerance.Exactly(units.Volume(0)), CylinderVolumeBracket(bore, parsedLength(t, "0 mm")))
	require.Equal(t, tolerance.Exactly(units.Volume(0)), CylinderVolumeBracket(parsedLength(t, "0 mm"), parsedLength(t, "[1 mm, 2 mm)")))
	_, end := CylinderVolumeBracket(bore, parsedLength(t, "[0 mm, 1 mm)")).Lower()
	require.Equal(t, tolerance.Closed, end)
	_, end = CylinderVolumeBracket(bore, parsedLength(t, "(0 mm, 1 mm)")).Lower()
	require.Equal(t, tolerance.Open, end)
	for _, bad := range [][2]string{{"-1 mm", "1 mm"}, {"[1 mm, ∞)", "1 mm"}, {"1 mm", "(−∞, 1 mm]"}, {"90 m", "90 m"}} {
		require.False(t, CylinderVolumeBracket(parsedLength(t, bad[0]), parsedLength(t, bad[1])).InRange(), bad)
	}
}

// heightOf against exact fractions, with π to 60 digits.
func TestHeightOf(t *testing.T) {
	pi, _ := new(big.Rat).SetString("3.14159265358979323846264338327950288419716939937510582097494459")
	rnd := rand.New(rand.NewPCG(2, 785))
	for range 3000 {
		bore := units.Length(1 + rnd.Int64N(int64(math.Pow(10, 6+6*rnd.Float64()))))
		vol := units.Volume(rnd.Int64N(int64(math.Pow(10, 1+14*rnd.Float64()))))
		if rnd.IntN(2) == 0 {
			vol = -vol
		}
		h := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(int64(vol)), new(big.Int).Exp(big.NewInt(10), big.NewInt(19), nil)),
			new(big.Int).Mul(big.NewInt(int64(bore)), big.NewInt(int64(bore))))
		h.Mul(h, big.NewRat(4, 1)).Quo(h, pi)
		floor := new(big.Int).Div(h.Num(), h.Denom()) // Euclidean, and the denominator is above zero
		if !floor.IsInt64() || floor.Int64() > 1<<59 || floor.Int64() < -1<<59 {
			continue
		}
		down, up := heightOf(vol, bore, false), heightOf(vol, bore, true)
		require.Equal(t, floor.Int64(), int64(down), "%d in %d", vol, bore)
		if vol == 0 {
			require.Equal(t, down, up)
		} else {
			require.Equal(t, down+1, up, "%d in %d", vol, bore)
		}
	}
	require.False(t, heightOf(units.OutOfRange[units.Volume](), units.Millimetre, true).InRange())
	require.False(t, heightOf(units.Litre, units.Micrometre, true).InRange())
	require.False(t, heightBracket(parsedVolume(t, "1 cm³"), parsedLength(t, "0 mm")).InRange())
	require.False(t, heightBracket(parsedVolume(t, "[1 cm³, ∞)"), parsedLength(t, "1 mm")).InRange())
	// A volume below zero is a height below zero, least in the smaller bore.
	h := heightBracket(parsedVolume(t, "-1 cm³"), parsedLength(t, "[80 mm, 81 mm]"))
	lo, _ := h.Lower()
	hi, _ := h.Upper()
	require.InDelta(t, -1000/(math.Pi/4*80*80), lo.Float(units.InMillimetres), 1e-9)
	require.InDelta(t, -1000/(math.Pi/4*81*81), hi.Float(units.InMillimetres), 1e-9)
}

func TestVolumeFormulasUndoEachOther(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 785))
	for range 2000 {
		bore, stroke := tolerance.Float(3+9*rnd.Float64()), tolerance.Float(3+9*rnd.Float64())
		v := SweptVolume(bore, stroke)
		require.InEpsilon(t, float64(stroke), float64(StrokeOf(v, bore)), 1e-14)
		require.InEpsilon(t, float64(bore), float64(BoreOf(v, stroke)), 1e-14)
	}
}

func TestDisplacementRefuses(t *testing.T) {
	good := parsedLength(t, "86 mm")
	for _, c := range []struct {
		bore, stroke tolerance.Bracket
		cylinders    int
		says         string
	}{
		{tolerance.Bracket{}, good, 4, "bore (not given)"},
		{good, tolerance.Bracket{}, 4, "stroke (not given)"},
		{parsedLength(t, "0 mm"), good, 4, "bore 0 mm is not above 0"},
		{good, parsedLength(t, "-1 mm"), 4, "above 0"},
		{parsedLength(t, "[-1 mm, 1 mm]"), good, 4, "above 0"},
		{parsedLength(t, "[1 mm, ∞)"), good, 4, "known on both sides"},
		{tolerance.Exactly(units.OutOfRange[units.Length]()), good, 4, "within range"},
		{good, good, 0, "number of cylinders 0 is not 1 or more"},
		{parsedLength(t, "50 m"), parsedLength(t, "50 m"), 4, "±23 m³"},
	} {
		_, err := Displacement(c.bore, c.stroke, c.cylinders)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

// Nothing that can be read makes a bracket of volumes that doesn't hold the
// volume of its middle.
func FuzzDisplacement(f *testing.F) {
	f.Add("86 ±0.01 mm", "86 mm", 4)
	f.Add("[3 in, 3.01 in)", "(0 mm, 1 mm]", 1)
	f.Fuzz(func(t *testing.T, bore, stroke string, cylinders int) {
		b, err1 := tolerance.ParseBracket(bore)
		s, err2 := tolerance.ParseBracket(stroke)
		if err1 != nil || err2 != nil {
			return
		}
		v, err := Displacement(b, s, cylinders)
		if err != nil {
			require.True(t, strings.HasPrefix(err.Error(), "cylinder: "), err)
			return
		}
		mb, _ := b.Middle()
		ms, _ := s.Middle()
		one := units.CylinderVolume(mb, ms*units.Length(cylinders))
		lo, _ := v.Lower()
		hi, _ := v.Upper()
		require.True(t, lo <= one && one <= hi, "%v %v", v, one)
	})
}
