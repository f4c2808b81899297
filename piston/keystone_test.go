package piston

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// The width over pins and back, against pins pushed against cones until they
// touch.
func TestKeystoneWidth_reference(t *testing.T) {
	vectors.Load(t, "reference/piston_keystone_pins.txt").Each(t, func(t *testing.T, c vectors.Case) {
		type f = tolerance.Float
		angle := f(c.Float("angle") * math.Pi / 180)
		pin, dg, w := f(c.Float("pin")), f(c.Float("gauge_diameter")), f(c.Float("width"))
		if c.Choice("groove", "full", "half") == "half" {
			m := KeystoneHalfOverPins(w, pin, dg, angle)
			c.Near("over_pins", float64(m))
			require.InDelta(t, float64(w), float64(KeystoneHalfWidth(m, pin, dg, angle)), 1e-12, "undone")
			return
		}
		m := KeystoneOverPins(w, pin, dg, angle/2)
		c.Near("over_pins", float64(m))
		require.InDelta(t, float64(w), float64(KeystoneWidth(m, pin, dg, angle/2)), 1e-12, "undone")
		require.Less(t, KeystoneOverPins(w+0.01, pin, dg, angle/2), m, "a wider groove lets the pins in deeper")

		g := KeystoneGroove{OverPins: tolerance.Exactly(picometres(math.Round(float64(m) * 1e9))), Pin: tolerance.Exactly(ringLength(t, c.Text("pin")+" mm")),
			GaugeDiameter: ringLength(t, c.Text("gauge_diameter")+" mm"), Included: units.Angle(c.Float("angle") * float64(units.Degree))}
		got, err := g.Width()
		require.NoError(t, err)
		lo, _ := got.Lower()
		hi, _ := got.Upper()
		require.InDelta(t, float64(w)*1e9, float64(lo), 3)
		require.LessOrEqual(t, hi-lo, 4*units.Picometre)
	})
}

// Pins of 0.1150 in, 4.3168 in over them when new, piston renewed at 4.2844 in
// (TM 10-3930-643-34, p. 13-55; the angle isn't printed): the groove has then
// widened by 0.0324·tan β, by hand 0.00170 in at 6° and 0.00427 in at 15°
// included. The included angle in place of its half gives twice as much.
func TestKeystoneWear_published(t *testing.T) {
	type f = tolerance.Float
	rad := func(deg float64) f { return f(deg * math.Pi / 180) }
	require.InDelta(t, 0.00170, float64(KeystoneWear(4.3168, 4.2844, rad(3))), 0.000005)
	require.InDelta(t, 0.00427, float64(KeystoneWear(4.3168, 4.2844, rad(7.5))), 0.000005)
	require.InDelta(t, 2, float64(KeystoneWear(4.3168, 4.2844, rad(15))/KeystoneWear(4.3168, 4.2844, rad(7.5))), 0.05)
	fresh, worn := KeystoneWidth(4.3168, 0.1150, 4.2, rad(7.5)), KeystoneWidth(4.2844, 0.1150, 4.2, rad(7.5))
	require.InDelta(t, float64(worn-fresh), float64(KeystoneWear(4.3168, 4.2844, rad(7.5))), 1e-12)
}

// At the place where the pins touch, the width doesn't depend on the angle;
// pins of the right size touch at the gauge diameter.
func TestKeystoneContact(t *testing.T) {
	type f = tolerance.Float
	const b, dg, w = f(0.13), f(86), f(2.5)
	pin := KeystonePinFor(w, b)
	m := KeystoneOverPins(w, pin, dg, b)
	require.InDelta(t, 86, float64(KeystoneContact(m, pin, b)), 1e-12)
	require.InDelta(t, 0, float64(KeystoneWidth(m, pin, dg, b+1e-5)-KeystoneWidth(m, pin, dg, b-1e-5))/2e-5, 1e-8)
	require.InDelta(t, float64(w), float64(KeystoneWidthAt(KeystoneWidthAt(w, dg, 84, b), 84, dg, b)), 1e-12, "undone")
	require.Greater(t, KeystoneWidthAt(w, dg, 90, b), w, "wider outward")
}

// The bracket holds every case that pins, size and angle allow, and is reached.
func TestKeystoneGroove_widthHoldsAll(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	type f = tolerance.Float
	for range 300 {
		included := (6 + 12*r.Float64()) * math.Pi / 180
		off := r.Float64() * 0.01
		dg, pin := 60e9+r.Float64()*90e9, 1.5e9+r.Float64()*2e9
		over := dg + pin + (r.Float64()-0.4)*pin
		dp, dm := r.Float64()*2e7, r.Float64()*5e7
		br := func(x, d float64) tolerance.Bracket {
			b, err := tolerance.PlusMinus(units.Length(x), units.Length(d))
			require.NoError(t, err)
			return b
		}
		angle := func(x float64) units.Angle {
			a, err := units.AngleFromRadians(x)
			require.NoError(t, err)
			return a
		}
		g := KeystoneGroove{OverPins: br(over, dm), Pin: br(pin, dp), GaugeDiameter: units.Length(dg), Included: angle(included), AngleError: angle(off)}
		w, err := g.Width()
		require.NoError(t, err)
		least, greatest := math.Inf(1), math.Inf(-1)
		for i := range 41 {
			a := (included + off*(float64(i)/20-1)) / 2
			for _, m := range []float64{over - dm, over + dm} {
				for _, d := range []float64{pin - dp, pin + dp} {
					x := float64(KeystoneWidth(f(m), f(d), f(math.Trunc(dg)), f(a)))
					least, greatest = min(least, x), max(greatest, x)
				}
			}
		}
		lo, _ := w.Lower()
		hi, _ := w.Upper()
		require.InDelta(t, least, float64(lo), 2000, "reached to 2 nm, which is what steps of the angle leave")
		require.LessOrEqual(t, float64(lo), least+3)
		require.InDelta(t, greatest, float64(hi), 6)
		require.GreaterOrEqual(t, float64(hi), greatest-3)
	}
}

func keystone() KeystoneGroove {
	return KeystoneGroove{Where: "piston 1, top groove", OverPins: at("89.10 ±0.005 mm"), Pin: at("2.500 ±0.001 mm"), GaugeDiameter: 86 * units.Millimetre,
		Included: 15 * units.Degree, AngleError: units.Degree / 12, Land: 88 * units.Millimetre, Root: 78 * units.Millimetre, Limits: tolerance.Spec{Wear: band("max 2.50 mm")}}
}

func TestKeystoneGroove_assess(t *testing.T) {
	g := keystone()
	f, err := g.Assess()
	require.NoError(t, err)
	// By hand: 2.5/cos 7.5° + (86 + 2.5 − 89.10)·tan 7.5° = 2.5216 − 0.0790.
	lo, _ := f.Least.Lower()
	require.InDelta(t, 2.4426, lo.Float(units.InMillimetres), 0.003)
	require.Equal(t, tolerance.Usable, f.Standing)

	limits, err := g.OverPinsLimits(band("2.30–2.50 mm"))
	require.NoError(t, err)
	least, _ := limits.Lower()
	most, _ := limits.Upper()
	// By hand: 88.5 + (2.52158 − 2.50)/0.131652, and with 2.30.
	require.InDelta(t, 88.6637, least.Float(units.InMillimetres), 0.0005)
	require.InDelta(t, 90.1829, most.Float(units.InMillimetres), 0.0005)
	g.OverPins, g.Pin, g.AngleError, g.Land = tolerance.Exactly(least), at("2.5 mm"), 0, 0
	w, err := g.Width()
	require.NoError(t, err)
	hi, _ := w.Upper()
	require.LessOrEqual(t, hi, 2500*units.Micrometre+2, "rounded inward")

	only, err := g.OverPinsLimits(band("max 2.50 mm"))
	require.NoError(t, err)
	_, end := only.Upper()
	require.Equal(t, tolerance.Absent, end)
	only, err = g.OverPinsLimits(band("min 2.30 mm"))
	require.NoError(t, err)
	_, end = only.Lower()
	require.Equal(t, tolerance.Absent, end)
}

func TestKeystoneGroove_refuses(t *testing.T) {
	for want, change := range map[string]func(*KeystoneGroove){
		"gauge pin 0 mm":                    func(g *KeystoneGroove) { g.Pin = at("0 mm") },
		"gauge pin [2 mm, ∞) is not":        func(g *KeystoneGroove) { g.Pin = at("[2 mm, ∞)") },
		"size over pins -1 mm":              func(g *KeystoneGroove) { g.OverPins = at("-1 mm") },
		"gauge diameter 0 mm":               func(g *KeystoneGroove) { g.GaugeDiameter = 0 },
		"near gauge diameter + pin":         func(g *KeystoneGroove) { g.OverPins = at("60 mm") },
		"the pins must stand out":           func(g *KeystoneGroove) { g.Land = 89500 * units.Micrometre },
		"not the groove's edge":             func(g *KeystoneGroove) { g.Land = 86 * units.Millimetre; g.OverPins = at("89.9 mm") },
		"not on the root":                   func(g *KeystoneGroove) { g.Root = 84200 * units.Micrometre },
		"included angle 0°":                 func(g *KeystoneGroove) { g.Included = 0 },
		"included angle 0.05°":              func(g *KeystoneGroove) { g.Included = units.Degree / 20 },
		"included angle 91°":                func(g *KeystoneGroove) { g.Included = 91 * units.Degree },
		"error of the included angle":       func(g *KeystoneGroove) { g.AngleError = -1 },
		"don't belong together":             func(g *KeystoneGroove) { g.OverPins, g.Included, g.Land = at("107 mm"), 60*units.Degree, 0 },
		"size over pins (0 mm, 1 mm]":       func(g *KeystoneGroove) { g.OverPins = at("(0 mm, 1 mm]") },
		"included angle angle out of range": func(g *KeystoneGroove) { g.AngleError = units.OutOfRange[units.Angle]() },
	} {
		g := keystone()
		change(&g)
		_, err := g.Assess()
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
	}
	for want, change := range map[string]func(*KeystoneGroove) tolerance.Band{
		"gauge pin":      func(g *KeystoneGroove) tolerance.Band { g.Pin = tolerance.Bracket{}; return band("max 2 mm") },
		"included angle": func(g *KeystoneGroove) tolerance.Band { g.Included = 0; return band("max 2 mm") },
		"gauge diameter": func(g *KeystoneGroove) tolerance.Band { g.GaugeDiameter = -1; return band("max 2 mm") },
		"limits":         func(*KeystoneGroove) tolerance.Band { return tolerance.AtMost(11 * units.Metre) },
	} {
		g := keystone()
		b := change(&g)
		_, err := g.OverPinsLimits(b)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
	}
}

// Clearances of keystone rings, by hand at 15° included (tan 7.5° = 0.131652,
// cos 7.5° = 0.991445), and each inverse.
func TestKeystoneClearance(t *testing.T) {
	type f = tolerance.Float
	b := f(7.5 * math.Pi / 180)
	// A groove of 2.60 mm at 86 mm; a ring of 2.45 mm at 1 mm from its face.
	flush := KeystoneClearance(2.60, 86, 2.45, 1, 88, b)
	require.InDelta(t, 0.15, float64(flush), 1e-12, "flush with a land of 88 mm its gauge place is at 86 mm")
	running := KeystoneClearance(2.60, 86, 2.45, 1, 88.6, b)
	require.InDelta(t, 0.15+0.6*0.131652, float64(running), 1e-6)
	require.InDelta(t, float64(running), float64(KeystoneRunning(flush, 88.6, 88, b)), 1e-12)
	require.InDelta(t, float64(flush), float64(KeystoneFlush(running, 88.6, 88, b)), 1e-12)
	require.InDelta(t, 2.45, float64(KeystoneRingWidth(running, 2.60, 86, 1, 88.6, b)), 1e-12)
	require.InDelta(t, 0.15*0.991445, float64(KeystoneNormal(flush, b)), 1e-7)
	require.InDelta(t, 0.15, float64(KeystoneAxial(KeystoneNormal(flush, b), b)), 1e-12)
	sink := KeystoneSink(flush, b)
	require.InDelta(t, 0.15/2/0.131652, float64(sink), 1e-5)
	require.InDelta(t, 0.15, float64(KeystoneClearanceBySink(sink, b)), 1e-12)
	require.InDelta(t, 0, float64(KeystoneClearance(2.60, 86, 2.45, 1, 88-2*sink, b)), 1e-12, "pushed in so far, it jams")
}

func TestKeystone_readings(t *testing.T) {
	g := working.GivenReal
	s, err := working.SolveReal(KeystoneWidth(g("over pins", "M", 89.1, "mm"), g("pin", "d", 2.5, "mm"), g("gauge diameter", "D", 86, "mm"),
		g("half angle", "β", 0.130899694, "rad")).Named("groove width", "w", "mm"), working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "2.4426 mm")
	over, err := uncertainty.NewDual("over pins", 89.1, "mm", uncertainty.NormalShape, 0.01)
	require.NoError(t, err)
	e := uncertainty.ExactlyReal
	w := KeystoneWidth(over, e(2.5), e(86), e(7.5*math.Pi/180))
	require.InDelta(t, 0.00131652, w.StandardUncertainty(), 1e-8, "a groove's width is known tan β as well as the size over pins")
}

func FuzzKeystoneGroove(f *testing.F) {
	f.Add(int64(891e8), int64(25e8), int64(86e9), int64(15*units.Degree), int64(units.Degree/12), int64(88e9), int64(78e9))
	f.Fuzz(func(t *testing.T, over, pin, dg, angle, off, land, root int64) {
		g := KeystoneGroove{OverPins: tolerance.Exactly(units.Length(over)), Pin: tolerance.Exactly(units.Length(pin)), GaugeDiameter: units.Length(dg),
			Included: units.Angle(angle), AngleError: units.Angle(off), Land: units.Length(land), Root: units.Length(root)}
		w, err := g.Width()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, _ := w.Lower()
		require.True(t, w.InRange() && lo > 0)
	})
}

func BenchmarkKeystone(b *testing.B) {
	b.Run("lib=tenthou/op=width", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sinkFloat = float64(KeystoneWidth[tolerance.Float](89.1, 2.5, 86, 0.13))
		}
	})
	g := keystone()
	b.Run("lib=tenthou/op=bracket", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			sinkBracket, _ = g.Width()
		}
	})
}
