package units

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// arithmetic is what every quantity but a temperature does.
type arithmetic[Q Quantity] interface {
	methods[Q]
	Add(Q) Q
	Sub(Q) Q
	Abs() Q
	Min(Q) Q
	Max(Q) Q
	Spread(...Q) Q
	Scale(num, den int64) Q
	ScalePi(num, den int64) Q
	MulDiv(mul, div Q) Q
	Share(part, rest Q) Q
}

func inRangeOr(x *big.Int) int64 {
	if x.IsInt64() && -limit <= x.Int64() && x.Int64() <= limit {
		return x.Int64()
	}
	return outOfRange
}

// wantArithmetic holds every operation to math/big, over the whole range.
func wantArithmetic[Q arithmetic[Q]](t *testing.T) {
	rnd, table := seeded(), tableOf[Q]()
	ints := func(x int64) *big.Int { return big.NewInt(x) }
	same := func(want *big.Int, got Q) {
		t.Helper()
		if w := inRangeOr(want); w == outOfRange {
			require.False(t, got.InRange())
		} else {
			require.Equal(t, w, int64(got))
		}
	}
	for range 1500 {
		a, b, c := table.sample(rnd), table.sample(rnd), table.sample(rnd)
		same(new(big.Int).Add(ints(a), ints(b)), Q(a).Add(Q(b)))
		same(new(big.Int).Sub(ints(a), ints(b)), Q(a).Sub(Q(b)))
		same(new(big.Int).Abs(ints(a)), Q(a).Abs())
		same(ints(min(a, b)), Q(a).Min(Q(b)))
		same(ints(max(a, b)), Q(a).Max(Q(b)))
		same(new(big.Int).Sub(ints(max(a, b, c)), ints(min(a, b, c))), Q(a).Spread(Q(b), Q(c)))
		require.Zero(t, Q(a).Spread())
		require.Equal(t, ints(a).Cmp(ints(b)), Q(a).Compare(Q(b)))
		num, den := int64(rnd.Uint64())>>rnd.IntN(64), int64(rnd.Uint64())>>rnd.IntN(64)
		for _, r := range rules {
			wantQuo(t, a, num, den, r, int64(ScaleRound(Q(a), num, den, r)))
			wantQuo(t, a, b, c, r, int64(MulDivRound(Q(a), Length(b), Length(c), r)))
			got := ShareRound(Q(a), Q(b), Q(c), r)
			if sum := b + c; -limit <= sum && sum <= limit {
				wantQuo(t, a, b, sum, r, int64(got))
			} else {
				require.False(t, got.InRange())
			}
		}
		require.Equal(t, ScaleRound(Q(a), num, den, NearestEven), Q(a).Scale(num, den))
		require.Equal(t, ScalePiRound(Q(a), num, den, NearestEven), Q(a).ScalePi(num, den))
		require.Equal(t, MulDivRound(Q(a), Q(b), Q(c), NearestEven), Q(a).MulDiv(Q(b), Q(c)))
		require.Equal(t, ShareRound(Q(a), Q(b), Q(c), NearestEven), Q(a).Share(Q(b), Q(c)))
	}
}

func wantQuo(t *testing.T, a, b, c int64, r Rounding, got int64) {
	t.Helper()
	want := int64(outOfRange)
	if c != 0 {
		x := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(a), big.NewInt(b)), big.NewInt(c))
		want = inRangeOr(rounded(x, r))
	}
	require.Equal(t, want, got, "%d·%d/%d %s", a, b, c, r)
}

func TestArithmetic(t *testing.T) {
	t.Run("Length", wantArithmetic[Length])
	t.Run("Angle", wantArithmetic[Angle])
	t.Run("Volume", wantArithmetic[Volume])
	t.Run("Mass", wantArithmetic[Mass])
	t.Run("Force", wantArithmetic[Force])
	t.Run("Pressure", wantArithmetic[Pressure])
	t.Run("SpringRate", wantArithmetic[SpringRate])
	t.Run("TemperatureDifference", wantArithmetic[TemperatureDifference])
}

// wantSticky: what is out of range stays so through every operation.
func wantSticky[Q arithmetic[Q]](t *testing.T) {
	fine := []Q{0, 1, -1, 7, limit, -limit}
	var bad []Q
	for _, v := range tableOf[Q]().beyond() {
		bad = append(bad, Q(v))
	}
	for _, x := range bad {
		require.False(t, x.InRange(), "%d", int64(x))
		for name, got := range map[string]Q{
			"Abs": x.Abs(), "Spread": x.Spread(), "Scale": x.Scale(1, 1), "Scale by 0": x.Scale(0, 1), "ScalePi": x.ScalePi(1, 4),
			"ScalePi by 0": x.ScalePi(0, 1), "divided": x.Scale(1, math.MaxInt64), "divided by pi": x.ScalePi(1, math.MinInt64),
		} {
			require.False(t, got.InRange(), "%s of %d", name, int64(x))
		}
		for _, y := range append(fine, bad...) {
			for name, got := range map[string]Q{
				"Add": x.Add(y), "Add to": y.Add(x), "Sub": x.Sub(y), "Sub from": y.Sub(x), "Min": x.Min(y), "Min of": y.Min(x),
				"Max": x.Max(y), "Max of": y.Max(x), "Spread": x.Spread(y), "Spread of": y.Spread(x), "Spread three": y.Spread(0, x),
				"MulDiv": x.MulDiv(y, 5), "MulDiv mul": y.MulDiv(x, 5), "MulDiv div": y.MulDiv(5, x),
				"Share": x.Share(y, 5), "Share part": y.Share(x, 5), "Share rest": y.Share(5, x),
			} {
				require.False(t, got.InRange(), "%s: %d, %d", name, int64(x), int64(y))
			}
		}
	}
	for _, y := range fine {
		require.True(t, y.InRange())
		for name, got := range map[string]Q{
			"Scale": y.Scale(1, 0), "ScalePi": y.ScalePi(1, 0), "MulDiv": y.MulDiv(1, 0), "Share": y.Share(1, -1), "Share zero": y.Share(0, 0),
		} {
			require.False(t, got.InRange(), "%s of %d", name, int64(y))
		}
	}
	var most Q = limit
	for name, got := range map[string]Q{
		"Add": most.Add(1), "Add most": most.Add(most), "Sub": (-most).Sub(1), "Spread": most.Spread(-1), "Scale": most.Scale(3, 2), "ScalePi": most.ScalePi(1, 3),
		"Scale wide": most.Scale(math.MaxInt64, 1), "ScalePi wide": most.ScalePi(math.MinInt64, -3), "MulDiv": most.MulDiv(2, 1), "Share": most.Share(3, -1),
	} {
		require.False(t, got.InRange(), "%s", name)
	}
	// Two thirds of a quantum above the limit, rounded up and down.
	require.False(t, most.Scale(3<<60+1, 3<<60).InRange())
	require.Equal(t, most, ScaleRound(most, 3<<60+1, 3<<60, Down))
	require.Equal(t, most, most.Add(0).Abs().Max(0).Scale(1, 1))
	require.Equal(t, -most, (-most).Scale(-1, -1))
}

func TestOutOfRange_sticks(t *testing.T) {
	t.Run("Length", wantSticky[Length])
	t.Run("Angle", wantSticky[Angle])
	t.Run("Volume", wantSticky[Volume])
	t.Run("Mass", wantSticky[Mass])
	t.Run("Force", wantSticky[Force])
	t.Run("Pressure", wantSticky[Pressure])
	t.Run("SpringRate", wantSticky[SpringRate])
	t.Run("TemperatureDifference", wantSticky[TemperatureDifference])
}

// outOfRange: what is out of range has no number in any form.
func (s suite[Q, P]) outOfRange(t *testing.T) {
	require.False(t, OutOfRange[Q]().InRange())
	for _, v := range s.table().beyond() {
		q := Q(v)
		require.False(t, q.InRange(), "%d", v)
		require.False(t, InRange(q), "%d", v)
		for _, u := range s.units() {
			require.True(t, math.IsNaN(q.Float(u)))
			_, ok := q.Places(u)
			require.False(t, ok)
			round, exact := q.Round(u, 2, NearestEven)
			require.False(t, round.InRange())
			require.False(t, exact)
			d, exact := q.Decimal(u, 2, NearestEven)
			require.False(t, exact)
			require.NotZero(t, d.Sign(), "out of range isn't taken for 0")
			text, exact := q.Append(nil, Style[Q]{Unit: u, Places: 2})
			require.False(t, exact)
			require.Equal(t, s.table().quantity+" out of range", string(text))
		}
	}
	for _, v := range []int64{0, 1, limit, max(-limit, s.table().least)} {
		require.True(t, Q(v).InRange())
		require.True(t, InRange(Q(v)))
	}
}

func TestOutOfRange_hasNoNumber(t *testing.T) { each(t, tester.outOfRange) }

func TestTemperature_arithmetic(t *testing.T) {
	rnd := seeded()
	for range 20_000 {
		a, b := Temperature(temperatures.sample(rnd)), Temperature(temperatures.sample(rnd))
		d := a.Sub(b)
		if v := int64(a) - int64(b); ok(v) {
			require.EqualValues(t, v, d)
			require.Equal(t, a, b.Add(d))
		} else {
			require.False(t, d.InRange())
			require.False(t, b.Add(d).InRange())
		}
	}
	cold := AbsoluteZero - 1
	require.False(t, cold.InRange())
	require.False(t, AbsoluteZero.Add(-1).InRange())
	require.False(t, cold.Add(Kelvin).InRange(), "below absolute zero stays out of range")
	require.False(t, cold.Sub(0).InRange())
	require.False(t, Reference.Sub(cold).InRange())
	require.False(t, Reference.Add(OutOfRange[TemperatureDifference]()).InRange())
	require.False(t, Temperature(limit).Add(1).InRange())
	require.Equal(t, AbsoluteZero, Temperature(0).Add(-273*Kelvin-Kelvin*15/100))
	// A temperature has no multiples and no sum.
	for _, got := range []Temperature{
		ScaleRound(Reference, 2, 1, NearestEven), ScalePiRound(Reference, 1, 4, Up), MulDivRound(Reference, Millimetre, Inch, Down), ShareRound(Reference, 1, 1, NearestEven),
	} {
		require.False(t, got.InRange())
	}
	require.False(t, MulDivRound(Millimetre, Reference, Reference, NearestEven).InRange())
}

// Values computed by Python's fractions.
func TestScale_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/ratio.txt").All(t) {
		x, num, den := c.Int64("x"), c.Int64("num"), c.Int64("den")
		require.Equal(t, c.Int64("even"), int64(Length(x).Scale(num, den)), c.Where())
		require.Equal(t, c.Int64("floor"), int64(ScaleRound(Length(x), num, den, Down)), c.Where())
		require.Equal(t, c.Int64("ceil"), int64(ScaleRound(Length(x), num, den, Up)), c.Where())
	}
}
