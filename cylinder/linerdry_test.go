package cylinder

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func linerDry() DryLiner {
	return DryLiner{
		Where: "cylinder 3",
		Bores: []tolerance.Bracket{linerAt("400 mm"), linerAt("400.02 mm")}, Liners: []tolerance.Bracket{linerAt("400.2 mm"), linerAt("400.18 mm")},
		Limits: tolerance.Spec{New: tolerance.MustParseBand("0.10–0.25 mm")},
		Inside: linerLength("300 mm"), Outside: linerLength("500 mm"),
		Liner: LinerMaterial{2e5, 0.3}, Block: LinerMaterial{2e5, 0.3},
		Length: linerLength("100 mm"), Friction: 0.1,
	}
}

// The published joint through the checked form: 0.2 mm gives 12.3047 N/mm².
func TestDryLiner_assess(t *testing.T) {
	r, err := linerDry().Assess()
	require.NoError(t, err)
	require.Equal(t, linerAt("0.16 mm"), r.Finding.Least)
	require.Equal(t, linerAt("0.2 mm"), r.Finding.Greatest)
	require.Equal(t, tolerance.AsNew, r.Finding.Standing)
	require.InDelta(t, 12.3047, r.Greatest.PressureMPa, 5e-5)
	require.InEpsilon(t, 0.8*r.Greatest.PressureMPa, r.Least.PressureMPa, 1e-12)
	// By hand: the block's K is (500² + 400²)/(500² − 400²) = 41/9.
	require.InDelta(t, 12.3047*41/9, r.Greatest.BlockMPa, 5e-4)
	// π · 0.1 · 400 · 100 · 12.3047 = 154 625 N.
	require.InDelta(t, 154625, r.Greatest.ForceN, 1)
	require.Equal(t, tolerance.Undecided, r.Stress, "no limit is given")
	require.Contains(t, r.Next, "press it in square")

	require.Equal(t, linerLength("0.16 mm"), LinerInterference(linerLength("400.18 mm"), linerLength("400.02 mm")))
	require.Equal(t, linerLength("400.02 mm"), BlockBoreFor(linerLength("400.18 mm"), linerLength("0.16 mm")))
}

func TestDryLiner_next(t *testing.T) {
	for _, c := range []struct {
		change func(*DryLiner)
		stress tolerance.Verdict
		next   string
	}{
		{func(d *DryLiner) { d.BlockMax = 100 }, tolerance.Within, "press it in"},
		{func(d *DryLiner) { d.BlockMax = 50 }, tolerance.Undecided, "below what is allowed"},
		{func(d *DryLiner) { d.BlockMax = 20 }, tolerance.Above, "stressed above"},
		{func(d *DryLiner) { d.Liners = []tolerance.Bracket{linerAt("399.9 mm")} }, tolerance.Undecided, "loose in the block"},
		{func(d *DryLiner) { d.Limits.New = tolerance.MustParseBand("max 0.1 mm") }, tolerance.Undecided, "outside the limits"},
		{func(d *DryLiner) {
			d.Limits.New = tolerance.MustParseBand("max 0.2 mm")
			d.Liners = []tolerance.Bracket{linerAt("400.18 ±0.05 mm")}
		}, tolerance.Undecided, ""},
		{func(d *DryLiner) {
			d.Limits = tolerance.Spec{Wear: tolerance.MustParseBand("max 0.5 mm")}
			d.Liners = []tolerance.Bracket{linerAt("400.02 mm")}
		}, tolerance.Undecided, "don't exclude a loose liner"},
		{func(d *DryLiner) { d.Liners = []tolerance.Bracket{linerAt("[400.1 mm, ∞)")}; d.BlockMax = 5 }, tolerance.Undecided, ""},
	} {
		d := linerDry()
		c.change(&d)
		r, err := d.Assess()
		require.NoError(t, err)
		require.Equal(t, c.stress, r.Stress)
		require.Contains(t, r.Next, c.next)
		require.NotEmpty(t, r.Next)
	}
}

func TestDryLiner_refuses(t *testing.T) {
	for want, change := range map[string]func(*DryLiner){
		"readings none":               func(d *DryLiner) { d.Bores = nil },
		"block bore -1 mm":            func(d *DryLiner) { d.Bores[1] = linerAt("-1 mm") },
		"liner outside diameter 0 mm": func(d *DryLiner) { d.Liners[1] = linerAt("0 mm") },
		"block bore 2 250 mm is not near block bore 1": func(d *DryLiner) {
			d.Bores, d.Liners = []tolerance.Bracket{linerAt("400 mm"), linerAt("250 mm")}, d.Liners[:1]
		},
		"like its neighbours, near 400.": func(d *DryLiner) {
			d.Bores, d.Liners = []tolerance.Bracket{linerAt("400 mm"), linerAt("400.01 mm")}, []tolerance.Bracket{linerAt("15.7559 mm"), linerAt("400.2 mm"), linerAt("400.21 mm")}
		},
		"liner outside diameter 1 600.2 mm is not near": func(d *DryLiner) { d.Bores, d.Liners = d.Bores[:1], []tolerance.Bracket{linerAt("600.2 mm")} },
		"liner bore 400 mm":                             func(d *DryLiner) { d.Inside = linerLength("400 mm") },
		"liner bore 0 mm":                               func(d *DryLiner) { d.Inside = 0 },
		"outside of the block's ring":                   func(d *DryLiner) { d.Outside = linerLength("400.02 mm") },
		"joint length -1 mm":                            func(d *DryLiner) { d.Length = linerLength("-1 mm") },
		"friction NaN":                                  func(d *DryLiner) { d.Friction = math.NaN() },
		"stress allowed -5":                             func(d *DryLiner) { d.BlockMax = -5 },
		"liner modulus 110":                             func(d *DryLiner) { d.Liner.ModulusMPa = 110 },
		"block modulus NaN":                             func(d *DryLiner) { d.Block.ModulusMPa = math.NaN() },
		"block Poisson's ratio 0.5":                     func(d *DryLiner) { d.Block.Poisson = 0.5 },
		"reaches past the wear limit":                   func(d *DryLiner) { d.Limits.Wear = tolerance.MustParseBand("max 0.2 mm") },
	} {
		d := linerDry()
		change(&d)
		_, err := d.Assess()
		require.ErrorContains(t, err, want)
	}
	d := linerDry()
	d.Bores = []tolerance.Bracket{linerAt("[400 mm, ∞)")}
	_, err := d.Assess()
	require.NoError(t, err)
	require.False(t, (DryLiner{}).Press(1, 0).BoreClosing.InRange())
}

func FuzzDryLiner(f *testing.F) {
	f.Add(int64(400e9), int64(4002e8), int64(300e9), int64(500e9), 2e5, 0.3, 0.1)
	f.Add(int64(-1<<63), int64(1<<62), int64(0), int64(-1), math.NaN(), -1.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, bore, liner, in, out int64, e, nu, mu float64) {
		d := linerDry()
		d.Bores, d.Liners = []tolerance.Bracket{tolerance.Exactly(units.Length(bore))}, []tolerance.Bracket{tolerance.Exactly(units.Length(liner))}
		d.Inside, d.Outside, d.Friction = units.Length(in), units.Length(out), mu
		d.Block = LinerMaterial{e, nu}
		r, err := d.Assess()
		if err != nil {
			return
		}
		require.NotEmpty(t, r.Next)
		if liner > bore {
			require.GreaterOrEqual(t, r.Greatest.PressureMPa, 0.0)
		}
	})
}

func BenchmarkDryLiner(b *testing.B) {
	b.Run("lib=tenthou/op=assess", func(b *testing.B) {
		b.ReportAllocs()
		d := linerDry()
		for b.Loop() {
			if _, err := d.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
