package units

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var rules = []Rounding{NearestEven, NearestAway, Down, Up}

// rounded is x to a whole number by the rule, on fractions.
func rounded(x *big.Rat, r Rounding) *big.Int {
	down := new(big.Int).Div(x.Num(), x.Denom()) // towards −∞, the denominator being above 0
	rest := new(big.Rat).Sub(x, new(big.Rat).SetInt(down))
	up := rest.Cmp(big.NewRat(1, 2)) > 0
	switch {
	case rest.Sign() == 0 || r == Down:
		up = false
	case r == Up:
		up = true
	case rest.Cmp(big.NewRat(1, 2)) == 0:
		up = down.Bit(0) == 1
		if r == NearestAway {
			up = x.Sign() > 0
		}
	}
	if up {
		down.Add(down, big.NewInt(1))
	}
	return down
}

func ten(n int) *big.Int { return new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(n)), nil) }

// inUnit is v quanta in a unit.
func inUnit(v int64, u *unit) *big.Rat {
	return new(big.Rat).SetFrac(new(big.Int).Sub(big.NewInt(v), big.NewInt(u.zero)), big.NewInt(u.quanta))
}

// decimalText is n/10^places; nought has no sign.
func decimalText(n *big.Int, places int) string {
	digits := new(big.Int).Abs(n).String()
	for len(digits) <= places {
		digits = "0" + digits
	}
	text := digits[:len(digits)-places]
	if places > 0 {
		text += "." + digits[len(digits)-places:]
	}
	if n.Sign() < 0 {
		return "-" + text
	}
	return text
}

func (s suite[Q, P]) styles(t *testing.T) {
	rnd, table := seeded(), s.table()
	for range 2000 {
		v := table.sample(rnd)
		u := Unit[Q](rnd.IntN(len(table.units)))
		row := table.unit(uint8(u))
		style := Style[Q]{Unit: u, Places: rnd.IntN(21), Rounding: rules[rnd.IntN(4)], Bare: rnd.IntN(2) == 0, Sign: rnd.IntN(2) == 0, Point: rnd.IntN(2) == 0}
		places := min(style.Places, 18)
		x := inUnit(v, row)
		scaled := new(big.Rat).Mul(x, new(big.Rat).SetInt(ten(places)))
		n := rounded(scaled, style.Rounding)
		want := decimalText(n, places)
		if style.Point && places > 0 {
			want = strings.Replace(want, "-0.", "-.", 1)
			want = strings.TrimPrefix(want, "0")
		}
		if style.Sign && n.Sign() > 0 {
			want = "+" + want
		}
		if !style.Bare {
			if !row.tight {
				want += " "
			}
			want += row.symbol
		}
		got, exact := Q(v).Append([]byte("= "), style)
		require.Equal(t, "= "+want, string(got), "%d %+v", v, style)
		require.Equal(t, scaled.IsInt(), exact, "%d %+v", v, style)
		generic, exact := Append(nil, Q(v), style)
		require.Equal(t, want, string(generic))
		require.Equal(t, scaled.IsInt(), exact)
		if style == (Style[Q]{Unit: u, Places: style.Places}) {
			require.Equal(t, want, Q(v).Text(u, style.Places))
		}

		// Round goes where the text goes, unless the places are finer than the quantum.
		round, exact := Q(v).Round(u, style.Places, style.Rounding)
		require.Equal(t, scaled.IsInt(), exact)
		wantRound := new(big.Int).Mul(n, big.NewInt(row.quanta))
		wantRound.Quo(wantRound, ten(places)).Add(wantRound, big.NewInt(row.zero))
		switch {
		case style.Places > row.places:
			require.Equal(t, Q(v), round)
		case !wantRound.IsInt64() || !table.inRange(wantRound.Int64()):
			require.False(t, round.InRange())
		default:
			require.Equal(t, wantRound.Int64(), int64(round))
		}
		again, exact2 := Round(Q(v), u, style.Places, style.Rounding)
		require.Equal(t, round, again)
		require.Equal(t, exact, exact2)

		d, exact := Q(v).Decimal(u, style.Places, style.Rounding)
		require.Equal(t, scaled.IsInt(), exact)
		require.Equal(t, decimalText(n, places), d.StringFixed(int32(places)))

		// All places, and how many they are.
		most := 18
		scaled.Mul(x, new(big.Rat).SetInt(ten(most)))
		finite := scaled.IsInt()
		text, exact := Q(v).Append(nil, Style[Q]{Unit: u, Places: AllPlaces, Bare: true})
		count, ok := Q(v).Places(u)
		count2, ok2 := Places(Q(v), u)
		require.Equal(t, []any{finite, finite, finite, count}, []any{exact, ok, ok2, count2})
		d, exact = Q(v).Decimal(u, AllPlaces, NearestEven)
		require.Equal(t, finite, exact)
		_, exact = Q(v).Round(u, AllPlaces, NearestEven)
		require.Equal(t, finite, exact)
		if finite {
			want := decimalText(scaled.Num(), most)
			want = strings.TrimSuffix(strings.TrimRight(want, "0"), ".")
			require.Equal(t, want, string(text))
			_, frac, _ := strings.Cut(want, ".")
			require.Equal(t, len(frac), count)
			require.Equal(t, want, d.String())
		} else {
			want := decimalText(rounded(new(big.Rat).Mul(x, new(big.Rat).SetInt(ten(row.finite))), NearestEven), row.finite)
			require.Equal(t, want, string(text))
			require.Equal(t, want, d.StringFixed(int32(row.finite)))
		}
		s.float(t, v, u, x)
	}
}

// float holds Float to the nearest, or to one unit in the last place of it
// beyond 2^53 quanta.
func (s suite[Q, P]) float(t *testing.T, v int64, u Unit[Q], x *big.Rat) {
	t.Helper()
	got, nearest := Q(v).Float(u), 0.0
	nearest, _ = x.Float64()
	if int64(float64(v)) == v && math.Abs(float64(v)) <= 1<<53 && math.Abs(float64(v-s.table().unit(uint8(u)).zero)) <= 1<<53 {
		require.Equal(t, nearest, got)
		return
	}
	require.True(t, math.Nextafter(nearest, math.Inf(-1)) <= got && got <= math.Nextafter(nearest, math.Inf(1)), "%d: %v, nearest %v", v, got, nearest)
}

func TestStyles(t *testing.T) { each(t, tester.styles) }

func TestRounding_text(t *testing.T) {
	require.Equal(t, "nearest, ties to even", NearestEven.String())
	require.Equal(t, "nearest, ties away from zero", NearestAway.String())
	require.Equal(t, "down", Down.String())
	require.Equal(t, "up", Up.String())
	require.Equal(t, NearestEven.String(), Rounding(200).String())
	l, _ := (25 * Micrometre).Round(InMillimetres, 2, Rounding(200))
	require.Equal(t, 20*Micrometre, l)
}

func TestLength_dual(t *testing.T) {
	for _, c := range []struct {
		l      Length
		mm, in int
		want   string
	}{
		{63_500_000, 4, 4, "0.0635 mm (.0025 in)"},
		{63_500_000, 3, 4, "≈0.064 mm (.0025 in)"},
		{70 * Micrometre, 2, 4, "0.07 mm (≈.0028 in)"},
		{86 * Millimetre, 0, 3, "86 mm (≈3.386 in)"},
		{-20 * Micrometre, AllPlaces, AllPlaces, "-0.02 mm (≈-.000787402 in)"},
		{Inch, AllPlaces, AllPlaces, "25.4 mm (1 in)"},
		{0, 2, 4, "0.00 mm (.0000 in)"},
		{OutOfRange[Length](), 2, 4, "length out of range"},
	} {
		require.Equal(t, c.want, c.l.Dual(c.mm, c.in))
		require.Equal(t, "= "+c.want, string(c.l.AppendDual([]byte("= "), c.mm, c.in)))
	}
}

func TestAngle_textDMS(t *testing.T) {
	for in, want := range map[string][3]string{
		"44.5°":        {"44°30′00″", "44°30′00.00″", "44°30′00.000000″"},
		"-1°0′0.5″":    {"-1°00′00″", "-1°00′00.50″", "-1°00′00.500000″"},
		"-0.4″":        {"0°00′00″", "-0°00′00.40″", "-0°00′00.400000″"},
		"59′59.999″":   {"1°00′00″", "1°00′00.00″", "0°59′59.999000″"},
		"359°59′59.5″": {"360°00′00″", "359°59′59.50″", "359°59′59.500000″"},
		"0°9′9.5″":     {"0°09′10″", "0°09′09.50″", "0°09′09.500000″"},
	} {
		a := MustParseAngle(in)
		require.Equal(t, want, [3]string{a.TextDMS(-1), a.TextDMS(2), a.TextDMS(9)})
		require.Equal(t, a, MustParseAngle(a.TextDMS(6)))
	}
	require.Equal(t, "640511947°00′14″", Angle(limit).TextDMS(0))
	require.Equal(t, "angle out of range", OutOfRange[Angle]().TextDMS(2))
}

// Radians against math/big, π from the standard library's constant.
func TestAngle_radians(t *testing.T) {
	pi := rat("3.14159265358979323846264338327950288419716939937510582097494459")
	rnd := seeded()
	for range 2000 {
		a := Angle(angles.sample(rnd))
		want := new(big.Rat).Mul(inUnit(int64(a), angles.unit(0)), new(big.Rat).Quo(pi, rat("180")))
		off := new(big.Rat).SetFloat64(a.Radians())
		off.Sub(off, want)
		bound := math.Exp2(-52)
		if a.Abs() > 2_500_000*Degree {
			bound *= 1.5
		}
		require.LessOrEqual(t, off.Abs(off).Cmp(want.Abs(want).Mul(want, new(big.Rat).SetFloat64(bound))), 0, "%v", a)

		x, _ := inUnit(int64(a), angles.unit(0)).Float64()
		x *= 0.01
		got, err := AngleFromRadians(x)
		require.NoError(t, err)
		want = new(big.Rat).Mul(new(big.Rat).SetFloat64(x), new(big.Rat).Quo(rat("648000000000"), pi))
		off.SetInt64(int64(got)).Sub(off, want)
		bounds := want.Abs(want).Mul(want, new(big.Rat).SetFloat64(math.Exp2(-52)))
		require.LessOrEqual(t, off.Abs(off).Cmp(bounds.Add(bounds, rat("1/2"))), 0)
	}
	require.True(t, math.IsNaN(OutOfRange[Angle]().Radians()))
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -2e7} {
		_, err := AngleFromRadians(x)
		require.ErrorIs(t, err, ErrRange)
	}
	half, err := AngleFromRadians(math.Pi)
	require.NoError(t, err)
	require.Equal(t, 180*Degree, half)
}
