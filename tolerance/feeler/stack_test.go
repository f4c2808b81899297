package feeler_test

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func TestStackRefuses(t *testing.T) {
	set := feeler.Imperial26()
	for _, c := range []struct {
		target units.Length
		most   int
		kind   error
	}{
		{0.1 * mm, 0, feeler.ErrSize},
		{0.1 * mm, -1, feeler.ErrSize},
		{0.1 * mm, 9, feeler.ErrSize},
		{-pm, 2, feeler.ErrThickness},
		{201 * mm, 2, feeler.ErrThickness},
		{units.Length(1 << 62), 2, feeler.ErrThickness},
		{units.OutOfRange[units.Length](), 2, feeler.ErrThickness},
	} {
		for _, stack := range []func(units.Length, int) (feeler.Stack, error){set.Stack, set.StackAtMost, set.StackAtLeast} {
			st, err := stack(c.target, c.most)
			var e *feeler.StackError
			require.ErrorAs(t, err, &e)
			require.ErrorIs(t, err, c.kind)
			require.Equal(t, feeler.Stack{}, st)
		}
	}
	_, err := feeler.Set{}.Stack(mm, 2)
	require.EqualError(t, err, "feeler: stack of up to 2 blades for 1 mm: no blades; a set of blades")
	_, err = set.StackAtMost(0.0380*mm, 2)
	require.EqualError(t, err, "feeler: stack of up to 2 blades for 0.038 mm: no such stack; the thinnest blade is thicker")
	_, err = set.StackAtLeast(2*mm, 2)
	require.EqualError(t, err, "feeler: stack of up to 2 blades for 2 mm: no such stack; that many blades together are thinner")
	_, err = set.Stack(mm, 12)
	require.EqualError(t, err, "feeler: stack of up to 12 blades for 1 mm: too much; 1 to 8 blades")
}

func TestStackParts(t *testing.T) {
	set, err := feeler.Imperial26().WithErrors(feeler.ErrorClass{UpTo: 0.3 * mm, Error: 0.003 * mm}, feeler.ErrorClass{UpTo: mm, Error: 0.004 * mm})
	require.NoError(t, err)
	st, err := set.Stack(0.4*mm, 3)
	require.NoError(t, err)
	require.Equal(t, units.Length(0.4*mm), st.Target)
	require.Equal(t, st.Total-st.Target, st.Off())
	sum := units.Length(0)
	for i := range st.Len() {
		sum += st.At(i).Thickness()
		require.True(t, i == 0 || st.At(i).Thickness() <= st.At(i-1).Thickness())
	}
	require.Equal(t, st.Total, sum)
	require.Equal(t, feeler.Blade{}, st.At(st.Len()))
	require.Equal(t, feeler.Blade{}, st.At(-1))

	st, err = set.Together(".003 in", "0.381 mm", ".002 in")
	require.NoError(t, err)
	require.Equal(t, ".015 in + .003 in + .002 in = 0.508 mm", st.String())
	require.Equal(t, "0.01 mm", st.WorstError().String())
	require.Zero(t, st.Off())
	data, err := json.Marshal(st)
	require.NoError(t, err)
	require.Equal(t, `".015 in + .003 in + .002 in"`, string(data))

	require.Equal(t, "no blades", feeler.Stack{}.String())
	require.Zero(t, feeler.Stack{}.WorstError()+feeler.Stack{}.RootSumSquareError()+feeler.Stack{}.Off())
	require.Equal(t, feeler.Trial{Feel: drag}, feeler.Stack{}.Trial(drag))
}

// No 32 blades are too many, even where nothing may be left out.
func TestStackOfThirtyTwoBladesEnds(t *testing.T) {
	set := hardSet(t)
	for target := units.Length(500 * pm); target < 12*mm; target += 1_700_000_000 * pm {
		st, err := set.Stack(target, 8)
		require.NoError(t, err)
		require.NotZero(t, st.Off())
	}
}

// Each blade lies in a stack once; a set with two alike blades has it twice.
func TestTogetherTakesEachBladeOnce(t *testing.T) {
	one := feeler.MustBlade("0.1 mm")
	better := one
	better.Error = pm
	worse := one
	worse.Error = 2 * units.Micrometre
	set, err := feeler.NewSet("", "", worse, better, feeler.MustBlade("0.3 mm"))
	require.NoError(t, err)
	st, err := set.Together("0.1 mm", "0.3 mm", "0.1 mm")
	require.NoError(t, err)
	require.Equal(t, "0.5 mm", st.Total.String())
	_, err = set.Together("0.1 mm", "0.1 mm", "0.1 mm")
	require.ErrorIs(t, err, feeler.ErrNoStack)
	_, err = set.Together("0.3 mm", "0.3 mm")
	require.ErrorIs(t, err, feeler.ErrNoStack)
	_, err = set.Together("0.3 mm", "0.2 mm")
	require.ErrorIs(t, err, feeler.ErrNoBlade)
	_, err = set.Together(make([]string, 9)...)
	require.ErrorIs(t, err, feeler.ErrSize)
	_, err = feeler.Set{}.Together("0.1 mm")
	require.ErrorIs(t, err, feeler.ErrNoBlade)

	// Of alike blades the one known better is taken.
	st, err = set.Stack(0.4*mm, 2)
	require.NoError(t, err)
	require.Equal(t, []feeler.Blade{feeler.MustBlade("0.3 mm"), better}, []feeler.Blade{st.At(0), st.At(1)})
	st, err = set.Stack(0.2*mm, 2)
	require.NoError(t, err)
	require.Equal(t, []feeler.Blade{worse, better}, []feeler.Blade{st.At(0), st.At(1)})
}

// Every subset of small sets at hand, to the picometre, against the search.
func TestStackAgainstEverySubset(t *testing.T) {
	rnd := rand.New(rand.NewPCG(957, 2008))
	for range 1500 {
		n := 1 + rnd.IntN(9)
		step := []int64{1, 1000, 12_700_000, 50_000_000}[rnd.IntN(4)]
		blades := make([]feeler.Blade, n)
		sum := units.Length(0)
		for i := range blades {
			if i > 0 && rnd.IntN(4) == 0 {
				blades[i] = blades[rnd.IntN(i)]
			} else {
				size := units.Length(step * (1 + rnd.Int64N(max(2, 300_000_000/step))))
				blades[i] = feeler.MustBlade(size.String())
			}
			sum += blades[i].Thickness()
		}
		set, err := feeler.NewSet("", "", blades...)
		require.NoError(t, err)
		target, most := units.Length(rnd.Int64N(int64(sum*5/4)+1)), 1+rnd.IntN(8)
		if rnd.IntN(3) == 0 {
			target = target / 2 * 2 / units.Length(step) * units.Length(step)
		}
		for fit, stack := range []func(units.Length, int) (feeler.Stack, error){set.Stack, set.StackAtMost, set.StackAtLeast} {
			want := everySubset(set.Blades(), target, most, fit)
			st, err := stack(target, most)
			if want == nil {
				require.ErrorIs(t, err, feeler.ErrNoStack)
				continue
			}
			require.NoError(t, err)
			var got []units.Length
			for i := range st.Len() {
				got = append(got, st.At(i).Thickness())
			}
			require.Equal(t, want, got, "%v of %v, %d, %d", target, set.Blades(), most, fit)
		}
	}
}

// everySubset is the best subset by its definition, the thickest blade first.
func everySubset(blades []feeler.Blade, target units.Length, most, fit int) (best []units.Length) {
	missOf := func(sizes []units.Length) units.Length {
		sum := -target
		for _, s := range sizes {
			sum += s
		}
		return sum
	}
	for set := 1; set < 1<<len(blades); set++ {
		var sizes []units.Length
		for i := len(blades) - 1; i >= 0; i-- {
			if set>>i&1 == 1 {
				sizes = append(sizes, blades[i].Thickness())
			}
		}
		off := missOf(sizes)
		if len(sizes) > most || fit == 1 && off > 0 || fit == 2 && off < 0 {
			continue
		}
		if best == nil {
			best = sizes
			continue
		}
		was := missOf(best).Abs()
		switch {
		case off.Abs() != was:
			if off.Abs() < was {
				best = sizes
			}
		case len(sizes) != len(best):
			if len(sizes) < len(best) {
				best = sizes
			}
		case slices.Compare(sizes, best) > 0:
			best = sizes
		}
	}
	return best
}
