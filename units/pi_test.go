package units

import (
	"math"
	"math/big"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// π to 120 decimal places, from the sequence A000796 of the On-Line
// Encyclopedia of Integer Sequences (from memory, high confidence); the first
// 62 are those of the standard library's constant, and machin computes them.
const piDigits = "3.141592653589793238462643383279502884197169399375105820974944592307816406286208998628034825342117067982148086513282306647"

// machin is π·2^bits, rounded down, by 16·arctan(1/5) − 4·arctan(1/239).
func machin(bits uint) *big.Int {
	const guard = 64
	arctan := func(x int64) *big.Int {
		sum := new(big.Int)
		term := new(big.Int).Lsh(big.NewInt(1), bits+guard)
		term.Quo(term, big.NewInt(x))
		for n := int64(1); term.Sign() != 0; n += 2 {
			sum.Add(sum, new(big.Int).Quo(term, big.NewInt(n)))
			term.Quo(term, big.NewInt(-x*x))
		}
		return sum
	}
	a, b := arctan(5), arctan(239)
	a.Mul(a, big.NewInt(16)).Sub(a, b.Mul(b, big.NewInt(4)))
	return a.Rsh(a, guard)
}

func TestPi_words(t *testing.T) {
	words := new(big.Int)
	for _, w := range piWords {
		words.Lsh(words, 64).Or(words, new(big.Int).SetUint64(w))
	}
	digits := new(big.Rat).Mul(rat(piDigits), new(big.Rat).SetInt(new(big.Int).Lsh(big.NewInt(1), 318)))
	require.Equal(t, rounded(digits, Down), words, "the published digits")
	require.Equal(t, machin(318), words, "computed")
	library, _ := new(big.Float).SetPrec(1000).SetString("3.14159265358979323846264338327950288419716939937510582097494459")
	f, _ := library.Float64()
	require.Equal(t, math.Pi, f)
	require.Equal(t, piDigits[:64], "3.14159265358979323846264338327950288419716939937510582097494459")
}

// The bounds that pi.go rests on: of all whole q below a bound, the
// denominators of the convergents bring q·π nearest to a whole number
// (Lagrange), so the last convergent below the bound gives the least distance.
func TestPi_bounds(t *testing.T) {
	const bits = 1000
	one := new(big.Int).Lsh(big.NewInt(1), bits)
	pi := machin(bits)
	for _, c := range []struct{ q, distance uint }{{64, 67}, {126, 131}} {
		num, den := new(big.Int).Set(pi), new(big.Int).Set(one)
		q, before := big.NewInt(0), big.NewInt(1)
		for {
			a, rest := new(big.Int).QuoRem(num, den, new(big.Int))
			next := new(big.Int).Mul(a, q)
			if next.Add(next, before); next.BitLen() > int(c.q) {
				break
			}
			q, before = next, q
			num, den = den, rest
		}
		// |q·π − p|·2^bits, and what the last place of π leaves open.
		distance := new(big.Int).Mul(q, pi)
		distance.Mod(distance, one)
		if other := new(big.Int).Sub(one, distance); other.Cmp(distance) < 0 {
			distance = other
		}
		distance.Sub(distance, q)
		require.Positive(t, distance.Cmp(new(big.Int).Lsh(big.NewInt(1), bits-c.distance)), "q = %d", q)
		require.Negative(t, distance.Cmp(new(big.Int).Lsh(big.NewInt(1), bits-c.distance+2)), "the bound is near: q = %d", q)
	}
}

// Values computed by mpmath, the hard cases found by continued fraction; 90
// 396 794 636 485 pm and its neighbours are among them.
func TestScalePi_reference(t *testing.T) {
	for c := range vectors.Load(t, "reference/pi.txt").All(t) {
		x, num, den := c.Int64("x"), c.Int64("num"), c.Int64("den")
		require.Equal(t, c.Int64("even"), int64(Length(x).ScalePi(num, den)), c.Where())
		require.Equal(t, c.Int64("even"), int64(ScalePiRound(Length(x), num, den, NearestAway)), c.Where())
		require.Equal(t, c.Int64("floor"), int64(ScalePiRound(Length(x), num, den, Down)), c.Where())
		require.Equal(t, c.Int64("ceil"), int64(ScalePiRound(Length(x), num, den, Up)), c.Where())
	}
}

// A π of 64 bits puts 90 396 794 636 485·π, which is 3.3·10⁻¹⁵ below a half,
// on the wrong side of it.
func TestScalePi_short(t *testing.T) {
	const x = 90_396_794_636_485
	exact := new(big.Rat).Mul(rat(piDigits), new(big.Rat).SetInt64(x))
	require.Equal(t, "283989905938046.49999999999999667584", exact.FloatString(20))
	require.Equal(t, Length(283_989_905_938_046), Length(x).ScalePi(1, 1))
	short := new(big.Rat).SetFrac(new(big.Int).Add(new(big.Int).SetUint64(piWords[0]), big.NewInt(1)), new(big.Int).Lsh(big.NewInt(1), 62))
	require.Equal(t, int64(283_989_905_938_047), rounded(short.Mul(short, new(big.Rat).SetInt64(x)), NearestEven).Int64())
}

// scalePi against π·2^1000, over the whole range of its arguments.
func TestScalePi_whole(t *testing.T) {
	pi := new(big.Rat).SetFrac(machin(1000), new(big.Int).Lsh(big.NewInt(1), 1000))
	rnd := seeded()
	for range 5000 {
		a := lengths.sample(rnd)
		num, den := rnd.Int64()>>rnd.IntN(63), rnd.Int64()>>rnd.IntN(63)
		if rnd.IntN(2) == 0 {
			num, den = -num-1, -den-1
		}
		for _, r := range rules {
			want := int64(outOfRange)
			if den != 0 {
				x := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(a), big.NewInt(num)), big.NewInt(den))
				want = inRangeOr(rounded(x.Mul(x, pi), r))
			}
			require.Equal(t, want, scalePi(a, num, den, r), "%d·π·%d/%d %s", a, num, den, r)
		}
	}
}

// timesPi for factors of up to 128 bits.
func TestTimesPi(t *testing.T) {
	pi := machin(318)
	check := func(hi, lo uint64) {
		m := new(big.Int).SetUint64(hi)
		m.Lsh(m, 64).Or(m, new(big.Int).SetUint64(lo))
		want := m.Mul(m, pi).Rsh(m, 256)
		w := timesPi(hi, lo)
		got := new(big.Int)
		for _, word := range w {
			got.Lsh(got, 64).Or(got, new(big.Int).SetUint64(word))
		}
		require.Equal(t, want, got, "%x %x", hi, lo)
	}
	rnd := seeded()
	check(math.MaxUint64, math.MaxUint64)
	check(0, 0)
	for range 5000 {
		check(rnd.Uint64()>>rnd.IntN(64), rnd.Uint64())
	}
}
