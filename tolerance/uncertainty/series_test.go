package uncertainty_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// readingsOf reads "1.2 (1.1 1.3)x500".
func readingsOf(t *testing.T, text string) (all []string) {
	for text != "" {
		if group, ok := strings.CutPrefix(text, "("); ok {
			inside, rest, _ := strings.Cut(group, ")x")
			times, rest, _ := strings.Cut(rest, " ")
			for range must(strconv.Atoi(times)) {
				all = append(all, strings.Fields(inside)...)
			}
			text = rest
			continue
		}
		one, rest, _ := strings.Cut(text, " ")
		all, text = append(all, one), rest
	}
	return all
}

// digits is the number of digits that got and want have in common.
func digits(got, want float64) float64 {
	if got == want {
		return 15
	}
	return min(15, -math.Log10(math.Abs(got-want)/math.Abs(want)))
}

// The univariate sets of NIST's StRD, read as millimetres: all certified
// digits. Through float64 readings, MeanDeviation reaches the digits that are
// logged; a float64 reading put to the nearest picometre loses none.
func TestSeries_strd(t *testing.T) {
	vectors.Load(t, "published/uncertainty_strd.txt").Each(t, func(t *testing.T, c vectors.Case) {
		text := readingsOf(t, c.Text("readings"))
		require.Len(t, text, c.Int("n"))
		var exact, nearest []units.Length
		var floats []float64
		for _, one := range text {
			var q units.Length
			require.NoError(t, q.UnmarshalText([]byte(one+" mm")))
			exact = append(exact, q)
			floats = append(floats, must(strconv.ParseFloat(one, 64)))
			nearest = append(nearest, must(units.Nearest(floats[len(floats)-1], units.InMillimetres)))
		}
		require.Equal(t, exact, nearest)
		s := must(uncertainty.NewSeries(exact...))
		c.Near("mean", s.MeanFloat(units.InMillimetres))
		c.Near("deviation", s.StandardDeviation(units.InMillimetres))
		c.Near("autocorrelation", s.Autocorrelation())
		relative(t, s.StandardDeviation(units.InMillimetres)/math.Sqrt(float64(s.Len())), s.StandardError(units.InMillimetres), 1e-15)

		mean, deviation, err := uncertainty.MeanDeviation(floats...)
		require.NoError(t, err)
		certified := func(col string) float64 {
			number, _, _ := strings.Cut(c.Text(col), " ")
			return must(strconv.ParseFloat(number, 64))
		}
		m, d := digits(mean, certified("mean")), digits(deviation, certified("deviation"))
		t.Logf("%s through float64: mean %.1f digits, standard deviation %.1f", c.Text("set"), m, d)
		// Each reading of NumAcc3 has 16 digits, of which 7 are before its deviation.
		least := map[string]float64{"NumAcc2": 14, "NumAcc3": 9}[c.Text("set")]
		require.GreaterOrEqual(t, m, 14.0)
		require.GreaterOrEqual(t, d, max(least, map[bool]float64{true: 0, false: 14}[least > 0]))
	})
}

// Any readings, wherever they lie: judged by exact fractions.
func TestSeries_exact(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	for range 500 {
		base, width := rng.Int64N(1<<62)-1<<61, int64(1)<<uint(rng.IntN(62))
		var readings []units.Length
		for range 2 + rng.IntN(40) {
			readings = append(readings, units.Length(max(-1<<61, min(1<<61, base+rng.Int64N(width)))))
		}
		s := must(uncertainty.NewSeries(readings...))
		n := int64(len(readings))
		sum, squares := new(big.Int), new(big.Int)
		for _, q := range readings {
			v := big.NewInt(int64(q))
			sum.Add(sum, v)
			squares.Add(squares, v.Mul(v, v))
		}
		squares.Mul(squares, big.NewInt(n)).Sub(squares, new(big.Int).Mul(sum, sum))
		variance, _ := new(big.Rat).SetFrac(squares, big.NewInt(n*(n-1))).Float64()
		relative(t, math.Sqrt(variance), s.StandardDeviation(units.InPicometres), 1e-15)
		mean, _ := new(big.Rat).SetFrac(sum, big.NewInt(n)).Float64()
		require.Equal(t, mean, s.MeanFloat(units.InPicometres))
		require.Equal(t, must(units.Mean(readings...)), s.Mean())
		r := s.Autocorrelation()
		require.True(t, r >= -1 && r <= 1)
	}
}

func TestSeries(t *testing.T) {
	s := must(uncertainty.NewSeries(1*mm, 2*mm, 3*mm))
	require.Equal(t, 3, s.Len())
	require.Equal(t, 2*mm, s.At(1))
	require.False(t, s.At(-1).InRange() || s.At(3).InRange())
	e := must(s.Estimate("hand"))
	require.Equal(t, 2*mm, e.Value())
	_, u := e.Float(units.InMillimetres)
	relative(t, 1/math.Sqrt(3), u, 1e-15)
	require.Equal(t, uncertainty.Freedom(2), e.Sources()[0].Freedom())
	require.InDelta(t, 2, float64(e.Freedom()), 1e-12)
	require.Equal(t, 0.0, must(uncertainty.NewSeries(mm, mm)).Autocorrelation())
	require.Equal(t, 0.0, must(uncertainty.NewSeries(mm, mm)).StandardDeviation(units.InMillimetres))

	var zero uncertainty.Series
	require.Zero(t, zero.Len())
	require.False(t, zero.Mean().InRange())
	for _, v := range []float64{zero.MeanFloat(0), zero.StandardDeviation(0), zero.StandardError(0), zero.Autocorrelation()} {
		require.True(t, math.IsNaN(v))
	}
	_, err := zero.Estimate("x")
	refused(t, err, uncertainty.ErrTooFew)

	// Temperatures have a mean in every scale.
	warm := must(uncertainty.NewSeries(units.Temperature(20*units.CELSIUS), units.Temperature(22*units.CELSIUS)))
	relative(t, 69.8, warm.MeanFloat(units.InFahrenheit), 1e-15)
	relative(t, math.Sqrt2*1.8, warm.StandardDeviation(units.InFahrenheit), 1e-15)

	require.Zero(t, testing.AllocsPerRun(100, func() { _ = s.StandardDeviation(units.InMillimetres) }))

	torque := must(uncertainty.RepeatabilityReal("torque", "N·m", 80, 82, 84))
	require.Equal(t, 82.0, torque.Value())
	relative(t, 2/math.Sqrt(3), torque.StandardUncertainty(), 1e-15)
}

func TestGrubbs(t *testing.T) {
	for c := range vectors.Load(t, "published/uncertainty_grubbs.txt").All(t) {
		for col, significance := range map[string]float64{"five": 0.05, "one": 0.01} {
			if c.Has(col) {
				c.Near(col, must(uncertainty.GrubbsCritical(c.Int("n"), significance)))
			}
		}
	}
	for c := range vectors.Load(t, "reference/uncertainty_factors.txt").All(t) {
		c.Ignore("mean", "single", "n")
		for col, significance := range map[string]float64{"grubbs_05": 0.05, "grubbs_01": 0.01} {
			if c.Has(col) {
				c.Near(col, must(uncertainty.GrubbsCritical(c.Int("n"), significance)))
			}
		}
	}
	// The readings and the result of NIST/SEMATECH e-Handbook 1.3.5.17.1, from
	// memory: G = 2.4687646 against 2.032 for 8 readings. It asks for a greatest
	// that stands out at 0.05, which two-sided is 0.10.
	s := must(uncertainty.NewSeries(199_310*um, 199_530*um, 200_190*um, 200_820*um, 201_920*um, 201_950*um, 202_180*um, 245_570*um))
	o := must(s.Grubbs(0.05))
	require.InDelta(t, 2.4687646, o.Statistic, 5e-8)
	require.InDelta(t, 2.032, must(s.Grubbs(0.10)).Critical, 5e-4)
	require.True(t, o.Suspect)
	require.Equal(t, 7, o.Index)
	require.Equal(t, 245_570*um, o.Reading)
	calm := must(must(uncertainty.NewSeries(1*mm, 2*mm, 3*mm)).Grubbs(0.05))
	require.False(t, calm.Suspect)
	require.InDelta(t, 1, calm.Statistic, 1e-12)
	same := must(must(uncertainty.NewSeries(mm, mm, mm)).Grubbs(0.05))
	require.False(t, same.Suspect)
	two := must(uncertainty.NewSeries(mm, 2*mm))
	_, err := two.Grubbs(0.05)
	refused(t, err, uncertainty.ErrTooFew)
	_, err = two.ModifiedZ()
	refused(t, err, uncertainty.ErrTooFew)
	for _, bad := range []float64{0, 1, math.NaN()} {
		_, err = s.Grubbs(bad)
		refused(t, err, uncertainty.ErrProbability)
	}
	_, err = uncertainty.GrubbsCritical(2, 0.05)
	refused(t, err, uncertainty.ErrTooFew)
}

func TestModifiedZ(t *testing.T) {
	// By hand: the median is 4, the distances 3 2 1 0 1 2 96 have the median
	// 2, so 100 stands at 0.6745·96/2 = 32.4 and 1 at 1.01.
	s := must(uncertainty.NewSeries(1*mm, 2*mm, 3*mm, 4*mm, 5*mm, 6*mm, 100*mm))
	all := must(s.ModifiedZ())
	require.Len(t, all, 1)
	require.Equal(t, uncertainty.OutlierOf[units.Length]{Index: 6, Reading: 100 * mm, Statistic: all[0].Statistic, Critical: 3.5, Suspect: true}, all[0])
	require.InDelta(t, 0.6745*96/2, all[0].Statistic, 1e-12)
	// Two that hide each other from Grubbs.
	s = must(uncertainty.NewSeries(1*mm, 2*mm, 3*mm, 4*mm, 5*mm, 6*mm, 100*mm, 101*mm))
	require.Len(t, must(s.ModifiedZ()), 2)
	require.False(t, must(s.Grubbs(0.05)).Suspect)
	// More than half alike: it can't tell.
	require.Empty(t, must(must(uncertainty.NewSeries(mm, mm, mm, 2*mm)).ModifiedZ()))
}
