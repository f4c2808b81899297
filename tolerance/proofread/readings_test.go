package proofread_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

func lengths(texts ...string) (out []units.Length) {
	for _, text := range texts {
		out = append(out, units.MustParseLength(text))
	}
	return out
}

// The expected sizes are the reading over the factor or less the amount, worked
// by hand. The first is the micrometer of TM 9-243, whose sleeve has a mark each
// half millimetre.
func TestReadings_causes(t *testing.T) {
	for _, c := range []struct {
		readings []units.Length
		index    int
		kind     proofread.Kind
		undone   string
		text     string
	}{
		{lengths("22.36 mm", "22.86 mm", "22.37 mm"), 1, proofread.ThimbleTurn, "22.36 mm",
			"reading 2, 22.86 mm, is 0.495 mm off the 22.365 mm of its neighbours: one turn of a metric micrometer's thimble, 0.5 mm? Measure again"},
		{lengths("22.36 mm", "22.36 mm", "21.86 mm"), 2, proofread.ThimbleTurn, "22.36 mm", ""},
		{lengths("2.8750 in", "2.8752 in", "2.9001 in", "2.8751 in"), 2, proofread.ThimbleTurn, "2.8751 in", ""},
		{lengths("73.02 mm", "73.04 mm", "98.03 mm"), 2, proofread.RodLength, "73.03 mm", ""},
		{lengths("3.0001 in", "2.0003 in", "3.0002 in", "3.0006 in"), 1, proofread.RodLength, "3.0003 in", ""},
		{lengths("0.064 mm", "0.064 mm", "0.64 mm", "0.063 mm"), 2, proofread.DecimalPlace, "0.064 mm", ""},
		{lengths("73.02 mm", "7.302 mm", "73.05 mm"), 1, proofread.DecimalPlace, "73.02 mm", ""},
		{lengths("2.875 mm", "73.02 mm", "73.05 mm"), 0, proofread.WrongUnit, "73.025 mm", ""},
		{lengths("2.875 in", "2.876 in", "73.025 in"), 2, proofread.WrongUnit, "2.875 in", ""},
		{lengths("36.51 mm", "73.02 mm", "73.05 mm"), 0, proofread.FactorTwo, "73.02 mm", ""},
		{lengths("73.02 mm", "73.05 mm", "146.06 mm"), 2, proofread.FactorTwo, "73.03 mm", ""},
		{lengths("0.127 mm", "0.127 mm", "0.05 mm"), 2, proofread.StepsMixed, "0.127 mm", ""},
		{lengths("0.127 mm", "0.127 mm", "0.32258 mm"), 2, proofread.StepsMixed, "0.127 mm", ""},
		{lengths("0.00254 mm", "0.1 mm", "0.1 mm"), 0, proofread.StepsMixed, "0.1 mm", ""},
		{lengths("0.7 mm", "0.01778 mm", "0.7 mm"), 1, proofread.StepsMixed, "0.7 mm", ""},
		{lengths("-1.40 mm", "-1.41 mm", "-14.0 mm"), 2, proofread.DecimalPlace, "-1.40 mm", ""},
	} {
		r, err := proofread.CheckReadings(c.readings...)
		require.NoError(t, err)
		require.True(t, r.Flagged(), "%v", c.readings)
		require.Len(t, r.Odd, 1)
		require.Equal(t, c.index, r.Odd[0].Index)
		require.Equal(t, tolerance.Exactly(c.readings[c.index]), r.Odd[0].Reading)
		first := r.Odd[0].Causes[0]
		require.Equal(t, c.kind, first.Kind, "%s", r)
		require.Equal(t, units.MustParseLength(c.undone), first.Undone, "%s", r)
		require.Equal(t, len(c.readings)-1, r.Agreeing)
		if c.text != "" {
			require.Equal(t, c.text, r.String())
		}
	}
}

// A factor between two quantities that are no lengths, and what isn't suspected.
func TestReadings_generic(t *testing.T) {
	loads := []units.Force{units.MustParseForce("76 lbf"), units.MustParseForce("75 lbf"), units.MustParseForce("7.6 lbf"), units.MustParseForce("76 lbf")}
	r, err := proofread.CheckReadings(loads...)
	require.NoError(t, err)
	require.Len(t, r.Odd, 1)
	require.Equal(t, proofread.DecimalPlace, r.Odd[0].Causes[0].Kind)
	require.Equal(t, loads[0], r.Odd[0].Causes[0].Undone)

	warm := units.MustParseTemperature("20 °C")
	none, err := proofread.CheckReadings(warm, warm, units.MustParseTemperature("200 °C"))
	require.NoError(t, err)
	require.False(t, none.Flagged(), "a temperature has no multiples")
}

func TestReadings_notSuspected(t *testing.T) {
	for _, c := range []struct {
		why      string
		readings []units.Length
	}{
		{"honest wear at the top of the bore", lengths("73.01 mm", "73.02 mm", "73.02 mm", "73.19 mm")},
		{"a taper as great as a turn of the thimble", lengths("73.0 mm", "73.25 mm", "73.5 mm")},
		{"spread as wide as a factor of two", lengths("0.03 mm", "0.04 mm", "0.05 mm", "0.10 mm")},
		{"two against two", lengths("22.36 mm", "22.36 mm", "22.86 mm", "22.86 mm")},
		{"apart, but by nothing that has a name", lengths("22.36 mm", "22.36 mm", "22.66 mm")},
		{"a turn is more than the whole size", lengths("0.05 mm", "0.05 mm", "0.55 mm")},
		{"nought has no factors", lengths("0 mm", "0 mm", "0.3 mm")},
	} {
		r, err := proofread.CheckReadings(c.readings...)
		require.NoError(t, err)
		require.False(t, r.Flagged(), "%s: %s", c.why, r)
		require.Equal(t, "nothing amiss", r.String())
	}
	// A zero error shifts all alike: nothing shows.
	shifted, err := proofread.CheckReadings(lengths("73.51 mm", "73.52 mm", "73.52 mm")...)
	require.NoError(t, err)
	require.False(t, shifted.Flagged())
}

func TestReadings_identical(t *testing.T) {
	r, err := proofread.CheckReadings(lengths("0.05 mm", "0.05 mm", "0.05 mm", "0.05 mm")...)
	require.NoError(t, err)
	want := proofread.Readings{Middle: 50 * units.Micrometre, Agreeing: 4, Identical: true}
	require.Empty(t, cmp.Diff(want, r))
	require.Equal(t, "every reading is the same: measured, or copied?", r.String())
}

// Several slips in one set, among identical copies and brackets, and a gap that
// no blade entered.
func TestReadings_several(t *testing.T) {
	r, err := proofread.CheckReadings(lengths("22.36 mm", "22.86 mm", "22.36 mm", "22.36 mm", "2.236 mm", "22.36 mm", "22.86 mm")...)
	require.NoError(t, err)
	require.Len(t, r.Odd, 3)
	require.Equal(t, 4, r.Agreeing)
	require.Equal(t, []int{1, 4, 6}, []int{r.Odd[0].Index, r.Odd[1].Index, r.Odd[2].Index})

	gap := func(lo, hi string) tolerance.Bracket {
		b, err := tolerance.HalfOpen(units.MustParseLength(lo), units.MustParseLength(hi))
		require.NoError(t, err)
		return b
	}
	var open tolerance.Bracket
	b, err := proofread.CheckBrackets(gap("0.06 mm", "0.07 mm"), open, gap("0.06 mm", "0.065 mm"), gap("0.06 mm", "0.07 mm"), gap("0.60 mm", "0.70 mm"))
	require.NoError(t, err)
	require.Len(t, b.Odd, 1)
	require.Equal(t, 4, b.Odd[0].Index)
	require.Equal(t, proofread.DecimalPlace, b.Odd[0].Causes[0].Kind)
	require.Equal(t, "reading 5, [0.600 mm, 0.700 mm), is 0.585 mm off the 0.065 mm of its neighbours: a decimal place? Measure again", b.Text(units.InMillimetres, 3))
	require.False(t, b.Identical)
}

func TestReadings_refused(t *testing.T) {
	_, err := proofread.CheckReadings(lengths("1 mm", "2 mm")...)
	require.ErrorIs(t, err, proofread.ErrTooFew)
	require.EqualError(t, err, "proofread: readings 2: too few readings; three at least that have a least and a greatest")
	_, err = proofread.CheckReadings(units.OutOfRange[units.Length](), units.Millimetre, units.Millimetre)
	require.ErrorIs(t, err, proofread.ErrRange)
	require.ErrorContains(t, err, "reading 1 ")
	_, err = proofread.CheckReadings[units.Length]()
	require.ErrorIs(t, err, proofread.ErrTooFew)
}

// The ends of the range: no overflow, no panic.
func TestReadings_extremes(t *testing.T) {
	most := units.Length(1 << 61)
	for _, set := range [][]units.Length{{most, most, -most}, {most, 0, -most}, {most, most, most / 10}, {most, most / 10, most / 10}, {-most, -most, -most}} {
		_, err := proofread.CheckReadings(set...)
		require.NoError(t, err)
	}
	full, err := tolerance.NewInterval(-most, tolerance.Closed, most, tolerance.Closed)
	require.NoError(t, err)
	_, err = proofread.CheckBrackets(full, full, full)
	require.NoError(t, err)
}

// wear makes honest readings of one measure at several stations.
func wear(rng *rand.Rand) []units.Length {
	readings := make([]units.Length, 3+rng.IntN(10))
	size := 20*units.Millimetre + units.Length(rng.Int64N(int64(130*units.Millimetre)))
	spread := 10*units.Micrometre + units.Length(rng.Int64N(int64(90*units.Micrometre)))
	if rng.IntN(3) == 0 { // clearances
		size = 50*units.Micrometre + units.Length(rng.Int64N(int64(500*units.Micrometre)))
		spread = size / 8
	}
	for i := range readings {
		readings[i], _ = (size + units.Length(rng.Int64N(int64(spread)))).Round(units.InMicrometres, 0, units.NearestEven)
	}
	return readings
}

// Of thousands of sets of honest readings none is suspected; with a slip in one
// reading that one is, and it alone, and named rightly, at least as often as
// stated.
func TestReadings_power(t *testing.T) {
	const each = 2000
	rng := rand.New(rand.NewPCG(9, 243))
	for range each {
		readings := wear(rng)
		r, err := proofread.CheckReadings(readings...)
		require.NoError(t, err)
		if r.Flagged() {
			t.Fatalf("%v: %s", readings, r)
		}
	}
	for _, slip := range []struct {
		kind  proofread.Kind
		how   string
		make  func(q units.Length) units.Length
		least units.Length // of the sizes that it can happen to
		share float64
	}{
		{proofread.DecimalPlace, "ten times", func(q units.Length) units.Length { return 10 * q }, 0, 0.97},
		{proofread.DecimalPlace, "a tenth", func(q units.Length) units.Length { return q / 10 }, 0, 0.96},
		{proofread.WrongUnit, "25.4 times", func(q units.Length) units.Length { return q.Scale(254, 10) }, 0, 0.97},
		{proofread.WrongUnit, "a 25.4th", func(q units.Length) units.Length { return q.Scale(10, 254) }, 0, 0.96},
		{proofread.StepsMixed, "2.54 times", func(q units.Length) units.Length { return q.Scale(254, 100) }, 0, 0.97},
		{proofread.StepsMixed, "a 39.37th", func(q units.Length) units.Length { return q.Scale(254, 10_000) }, 0, 0.96},
		{proofread.FactorTwo, "twice", func(q units.Length) units.Length { return 2 * q }, 0, 0.95},
		{proofread.FactorTwo, "half", func(q units.Length) units.Length { return q / 2 }, 0, 0.96},
		{proofread.ThimbleTurn, "0.5 mm", func(q units.Length) units.Length { return q + 500*units.Micrometre }, units.Millimetre, 0.90},
		{proofread.ThimbleTurn, "0.025 in", func(q units.Length) units.Length { return q - 25*units.Thou }, units.Millimetre, 0.95},
		{proofread.RodLength, "25 mm", func(q units.Length) units.Length { return q + 25*units.Millimetre }, 26 * units.Millimetre, 0.99},
		{proofread.RodLength, "1 in", func(q units.Length) units.Length { return q - units.Inch }, 26 * units.Millimetre, 0.99},
	} {
		var made, named int
		for made < each {
			readings := wear(rng)
			i := rng.IntN(len(readings))
			if readings[i] < slip.least {
				continue
			}
			made++
			readings[i] = slip.make(readings[i])
			r, err := proofread.CheckReadings(readings...)
			require.NoError(t, err)
			if len(r.Odd) == 1 && r.Odd[0].Index == i && r.Odd[0].Causes[0].Kind == slip.kind {
				named++
			}
		}
		share := float64(named) / float64(made)
		t.Logf("%-30s named %5.1f %%", fmt.Sprintf("%s (%s)", slip.kind, slip.how), 100*share)
		assert.GreaterOrEqual(t, share, slip.share, slip.how)
	}
}
