package tolerance_test

import (
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestInterval_arithmetic(t *testing.T) {
	type operation struct {
		operands int
		apply    func(x []Bracket) Bracket
		formula  func(x []*big.Rat) *big.Rat // nil where it has no value
	}
	binary := func(apply func(a, b Bracket) Bracket, formula func(z, a, b *big.Rat) *big.Rat) operation {
		return operation{2,
			func(x []Bracket) Bracket { return apply(x[0], x[1]) },
			func(x []*big.Rat) *big.Rat { return formula(new(big.Rat), x[0], x[1]) }}
	}
	least := func(_, a, b *big.Rat) *big.Rat {
		if a.Cmp(b) < 0 {
			return a
		}
		return b
	}
	greatest := func(_, a, b *big.Rat) *big.Rat {
		if a.Cmp(b) > 0 {
			return a
		}
		return b
	}
	spread := func(n int) operation {
		return operation{n,
			func(x []Bracket) Bracket { return x[0].Spread(x[1:]...) },
			func(x []*big.Rat) *big.Rat {
				lo, hi := x[0], x[0]
				for _, v := range x {
					lo, hi = least(nil, lo, v), greatest(nil, hi, v)
				}
				return new(big.Rat).Sub(hi, lo)
			}}
	}
	operations := map[string]operation{
		"Add": binary(Bracket.Add, (*big.Rat).Add),
		"Sub": binary(Bracket.Sub, (*big.Rat).Sub),
		"Min": binary(Bracket.Min, least),
		"Max": binary(Bracket.Max, greatest),
		"Abs": {1,
			func(x []Bracket) Bracket { return x[0].Abs() },
			func(x []*big.Rat) *big.Rat { return new(big.Rat).Abs(x[0]) }},
		"Spread of 1": spread(1),
		"Spread of 2": spread(2),
		"Spread of 3": spread(3),
		"Spread of 4": spread(4),
		"MulDiv": {3,
			func(x []Bracket) Bracket { return x[0].MulDiv(x[1], x[2]) },
			func(x []*big.Rat) *big.Rat {
				if x[2].Sign() == 0 {
					return nil
				}
				v := new(big.Rat).Mul(x[0], x[1])
				return v.Quo(v, x[2])
			}},
		"Share": {3,
			func(x []Bracket) Bracket { return x[0].Share(x[1], x[2]) },
			func(x []*big.Rat) *big.Rat {
				sum := new(big.Rat).Add(x[1], x[2])
				if sum.Sign() == 0 {
					return nil
				}
				v := new(big.Rat).Mul(x[0], x[1])
				return v.Quo(v, sum)
			}},
	}
	for name, o := range operations {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(2, 61))
			kinds := map[string]int{}
			cases := []int{0, 1000, 2000, 4000, 60}[o.operands]
			if name == "Spread of 3" {
				cases = 400 // of many points each
			}
			for range cases {
				x := make([]Bracket, o.operands)
				at := make([][]*big.Rat, o.operands)
				for k := range x {
					x[k] = randomInterval(r)
				}
				for k := range x {
					if o.operands > 1 && strings.HasPrefix(name, "Spread") {
						at[k] = shared(x[k], x)
					} else {
						at[k] = points(r, x[k])
					}
				}
				got := o.apply(x)
				want, ok := judged0(t, name, x, at, o.formula)
				switch {
				case !ok:
					kinds["out of range"]++
					require.False(t, got.InRange(), "%s %v: %v", name, x, got)
					continue
				case want.IsZero():
					kinds["without ends"]++
				default:
					kinds["bracket"]++
				}
				require.Equal(t, want, got, "%s %v: want %v, got %v", name, x, want, got)
			}
			t.Log(kinds)
			require.Greater(t, kinds["bracket"], 40)
		})
	}
}

// judged0 adds what is agreed where a divisor may be zero: one that is zero
// and nothing else is out of range; one that may be leaves no ends, unless it
// is the sum of two sizes.
func judged0(t *testing.T, name string, x []Bracket, at [][]*big.Rat, formula func([]*big.Rat) *big.Rat) (Bracket, bool) {
	divisor := Exactly(units.Length(1))
	sizes := false
	switch name {
	case "MulDiv":
		divisor = x[2]
	case "Share":
		divisor = x[1].Add(x[2])
		positive, negative := AtLeast(units.Length(0)).Interval(), AtMost(units.Length(0)).Interval()
		sizes = x[1].Within(positive) && x[2].Within(positive) || x[1].Within(negative) && x[2].Within(negative)
	}
	switch {
	case !divisor.InRange() || divisor == Exactly(units.Length(0)):
		return Bracket{}, false
	case divisor.Contains(0) && !sizes:
		return Bracket{}, true
	case name == "Share" && !cornersInRange(x[1], x[2]):
		return Bracket{}, false
	}
	return judged(t, at, formula)
}

// cornersInRange reports whether every sum of two ends is in range.
func cornersInRange(i, j Bracket) bool {
	for _, a := range []func(Bracket) (units.Length, End){Bracket.Lower, Bracket.Upper} {
		for _, b := range []func(Bracket) (units.Length, End){Bracket.Lower, Bracket.Upper} {
			p, pEnd := a(i)
			r, rEnd := b(j)
			if pEnd != Absent && rEnd != Absent && !p.Add(r).InRange() {
				return false
			}
		}
	}
	return true
}

func TestInterval_scale(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 61))
	factor := func() int64 {
		switch r.IntN(8) {
		case 0:
			return 0
		case 1:
			return -1 << 63
		case 2:
			return r.Int64() - 1<<62
		}
		return r.Int64N(41) - 20
	}
	broken := 0
	for range 3000 {
		i, num, den := randomInterval(r), factor(), factor()
		by := func(c *big.Rat) func(x []*big.Rat) *big.Rat {
			return func(x []*big.Rat) *big.Rat { return new(big.Rat).Mul(x[0], c) }
		}
		if den == 0 {
			require.False(t, i.Scale(num, den).InRange())
			require.False(t, i.ScalePi(num, den).InRange())
			continue
		}
		ratio := new(big.Rat).SetFrac(big.NewInt(num), big.NewInt(den))
		at := [][]*big.Rat{points(r, i)}
		for n, c := range []*big.Rat{ratio, new(big.Rat).Mul(ratio, pi)} {
			got := [...]Bracket{i.Scale(num, den), i.ScalePi(num, den)}[n]
			want, ok := judged(t, at, by(c))
			if !ok {
				broken++
				require.False(t, got.InRange(), "%v·%v", i, c)
				continue
			}
			require.Equal(t, want, got, "%v·%v/%v, π %d: want %v, got %v", i, num, den, n, want, got)
		}
	}
	require.Greater(t, broken, 100)
}
