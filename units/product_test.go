package units

import (
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// Values computed by mpmath.
func TestVolumes_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/volumes.txt").All(t) {
		l, w, h := Length(c.Int64("length")), Length(c.Int64("width")), Length(c.Int64("height"))
		volume := func(r Rounding) Volume { return BoxVolumeRound(l, w, h, r) }
		plain := BoxVolume(l, w, h)
		if c.Choice("shape", "box", "cylinder") == "cylinder" {
			require.Equal(t, l, w)
			volume = func(r Rounding) Volume { return CylinderVolumeRound(l, h, r) }
			plain = CylinderVolume(l, h)
		}
		for col, got := range map[string]Volume{"even": plain, "floor": volume(Down), "ceil": volume(Up)} {
			if c.Has(col) {
				require.Equal(t, c.Int64(col), int64(got), "%s %s", c.Where(), col)
			} else {
				require.False(t, got.InRange(), c.Where())
			}
		}
	}
}

// Worked examples from print.
func TestCylinderVolume_published(t *testing.T) {
	vectors.Load(t, "published/sweptvolumes.txt").Each(t, func(t *testing.T, c vectors.Case) {
		bore, stroke := MustParseLength(c.Text("bore")), MustParseLength(c.Text("stroke"))
		u, err := ParseUnit[Volume](c.Text("unit"))
		require.NoError(t, err)
		c.Near("expected", CylinderVolume(bore, stroke).Scale(c.Int64("cylinders"), 1).Float(u))
	})
}

func TestVolumes_whole(t *testing.T) {
	pi := new(big.Rat).SetFrac(machin(1000), new(big.Int).Lsh(big.NewInt(1), 1002))
	rnd := seeded()
	in := 0
	for range 4000 {
		a, b, c := lengths.sample(rnd), lengths.sample(rnd), lengths.sample(rnd)
		if rnd.IntN(2) == 0 { // more of those whose volume is in range
			a, b, c = a>>rnd.IntN(40), b>>rnd.IntN(40), c>>rnd.IntN(40)
		}
		for _, r := range rules {
			product := new(big.Int).Mul(big.NewInt(a), big.NewInt(b))
			x := new(big.Rat).SetFrac(product.Mul(product, big.NewInt(c)), new(big.Int).SetUint64(volumeStep))
			require.Equal(t, inRangeOr(rounded(x, r)), int64(BoxVolumeRound(Length(a), Length(b), Length(c), r)), "%d·%d·%d %s", a, b, c, r)

			bore := Length(a).Abs()
			product.Mul(big.NewInt(a), big.NewInt(a))
			x.SetFrac(product.Mul(product, big.NewInt(c)), new(big.Int).SetUint64(volumeStep))
			want := inRangeOr(rounded(x.Mul(x, pi), r))
			require.Equal(t, want, int64(CylinderVolumeRound(bore, Length(c), r)), "%d²·%d·π/4 %s", a, c, r)
			if want != outOfRange && want != 0 {
				in++
			}
		}
	}
	require.Greater(t, in, 300)
}

func TestVolumes_outOfRange(t *testing.T) {
	for _, v := range lengths.beyond() {
		x := Length(v)
		for name, got := range map[string]Volume{
			"length": BoxVolume(x, 1, 1), "width": BoxVolume(1, x, 1), "height": BoxVolume(1, 1, x), "beside nothing": BoxVolume(0, x, 0),
			"bore": CylinderVolume(x, 1), "cylinder": CylinderVolume(1, x), "cylinder of none": CylinderVolume(0, x), "bore of none": CylinderVolume(x, 0),
		} {
			require.False(t, got.InRange(), "%s %d", name, v)
		}
	}
	// 2^64 quanta less a quarter of one: rounded up, they would leave 64 bits.
	require.False(t, BoxVolume(limit, 139, 575_539_568_345_323_741).InRange())
	require.False(t, CylinderVolume(-86*Millimetre, 86*Millimetre).InRange(), "a negative bore")
	require.False(t, CylinderVolume(-1, 0).InRange(), "a negative bore")
	require.EqualValues(t, 0, CylinderVolume(0, 86*Millimetre))
	require.EqualValues(t, 0, CylinderVolume(86*Millimetre, 0))
	require.EqualValues(t, -1000*CubicMillimetre, BoxVolume(-10*Millimetre, 10*Millimetre, 10*Millimetre))
	require.Equal(t, CubicInch, BoxVolume(Inch, Inch, Inch))
	require.Equal(t, Litre, BoxVolume(Metre/10, Metre/10, Metre/10))
}
