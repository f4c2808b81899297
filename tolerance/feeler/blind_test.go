package feeler_test

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func texts(brackets []tolerance.Bracket) (s []string) {
	for _, b := range brackets {
		s = append(s, b.String())
	}
	return s
}

// Limits of 0.03 to 0.07 mm and the 26 inch blades: below the thinnest blade
// and around 0.07 mm nothing can be told, and no stack helps.
func TestBlindZonesOfSideClearance(t *testing.T) {
	for most := 1; most <= feeler.MaxStack; most++ {
		zones, err := feeler.BlindZones(feeler.Imperial26(), spec(t, "0.03–0.07 mm", "no limit"), most)
		require.NoError(t, err)
		require.Len(t, zones, 2)
		for i, want := range []string{"[0 mm, 0.0381 mm)", "[0.0635 mm, 0.0762 mm)"} {
			z := zones[i]
			require.Equal(t, want, z.Bracket.String())
			require.Equal(t, []units.Length{[]units.Length{0.03 * mm, 0.07 * mm}[i]}, z.Limits)
			require.Equal(t, tolerance.CantTell, z.Standing)
			require.Empty(t, z.Stacks)
			require.Equal(t, []string{want}, texts(z.Left))
			require.Len(t, z.Remedies, 1)
			require.Equal(t, z.Limits[0], z.Remedies[0].Limit)
		}
		require.Empty(t, zones[0].Remedies[0].Left, "a 0.03 mm blade tells what \"min 0.03 mm\" asks")
		require.Equal(t, []string{"[0.07 mm, 0.0762 mm)"}, texts(zones[1].Remedies[0].Left))
	}
}

// What a blade at the limit leaves depends on the limit's words.
func TestRemedies(t *testing.T) {
	for limit, want := range map[string][]string{
		"max 0.07 mm":       {"[0.07 mm, 0.0762 mm)"},
		"less than 0.07 mm": nil,
		"min 0.07 mm":       nil,
		"more than 0.07 mm": {"[0.07 mm, 0.0762 mm)"},
	} {
		zones, err := feeler.BlindZones(feeler.Imperial26(), spec(t, limit, "no limit"), 4)
		require.NoError(t, err)
		require.Len(t, zones, 1)
		require.Equal(t, want, texts(zones[0].Remedies[0].Left), limit)

		// The remedy is true: with the blade in the set, that is what is left.
		more, err := feeler.NewSet("", "", append(feeler.Imperial26().Blades(), feeler.MustBlade("0.07 mm"))...)
		require.NoError(t, err)
		zones, err = feeler.BlindZones(more, spec(t, limit, "no limit"), 1)
		require.NoError(t, err)
		var left []string
		for _, z := range zones {
			left = append(left, z.Bracket.String())
		}
		require.Equal(t, want, left, limit)
	}
	// No blade of any size tells "max 0.07 mm": those a picometre either side of
	// it leave what lies between.
	tight, err := feeler.NewSet("", "", feeler.MustBlade("0.07 mm"), feeler.MustBlade("0.070000001 mm"))
	require.NoError(t, err)
	zones, err := feeler.BlindZones(tight, spec(t, "max 0.07 mm", "no limit"), 1)
	require.NoError(t, err)
	require.Len(t, zones, 1)
	require.Equal(t, "[0.07 mm, 0.070000001 mm)", zones[0].Bracket.String())
}

func TestBlindZonesWithStacks(t *testing.T) {
	set, err := feeler.NewSet("", "", feeler.MustBlade("0.03 mm"), feeler.MustBlade("0.04 mm"), feeler.MustBlade("0.06 mm"), feeler.MustBlade("0.15 mm"))
	require.NoError(t, err)
	zones, err := feeler.BlindZones(set, spec(t, "less than 0.07 mm", "max 0.095 mm"), 4)
	require.NoError(t, err)
	require.Len(t, zones, 1)
	z := zones[0]
	require.Equal(t, "[0.06 mm, 0.15 mm)", z.Bracket.String())
	require.Equal(t, []units.Length{0.07 * mm, 0.095 * mm}, z.Limits)
	var stacks []string
	for _, st := range z.Stacks {
		stacks = append(stacks, st.String())
	}
	// Those next to 0.07 mm and to 0.095 mm; 0.09 mm is next to both.
	require.Equal(t, []string{"0.04 mm + 0.03 mm = 0.07 mm", "0.06 mm + 0.03 mm = 0.09 mm", "0.06 mm + 0.04 mm = 0.1 mm"}, stacks)
	require.Equal(t, []string{"[0.09 mm, 0.1 mm)"}, texts(z.Left), "0.07 mm is closed, as \"less than\" divides where a stack does")
	require.Equal(t, "[0.06 mm, 0.15 mm) holds 0.07 mm and 0.095 mm; 0.04 mm + 0.03 mm = 0.07 mm and 0.06 mm + 0.03 mm = 0.09 mm and 0.06 mm + 0.04 mm = 0.1 mm leaves [0.09 mm, 0.1 mm); "+
		"a blade of 0.07 mm would close it; a blade of 0.095 mm would leave [0.095 mm, 0.15 mm); or measure the parts by micrometer", z.String())
	data, err := json.Marshal(z)
	require.NoError(t, err)
	require.Contains(t, string(data), `"stacks":["0.04 mm + 0.03 mm",`)

	zones, err = feeler.BlindZones(set, spec(t, "less than 0.07 mm", "no limit"), 2)
	require.NoError(t, err)
	require.Empty(t, zones[0].Left)
	require.Contains(t, zones[0].String(), "0.04 mm + 0.03 mm = 0.07 mm and 0.06 mm + 0.03 mm = 0.09 mm closes it")
	zones, err = feeler.BlindZones(set, spec(t, "less than 0.07 mm", "no limit"), 1)
	require.NoError(t, err)
	require.Equal(t, []string{"[0.06 mm, 0.15 mm)"}, texts(zones[0].Left))
	require.Contains(t, zones[0].String(), "no stack of up to 1 blades lies in it")
}

// Every total of up to so many blades, against what the two nearest ones leave.
func TestBlindZonesAgainstEveryStack(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 7))
	for range 300 {
		blades := make([]feeler.Blade, 1+rnd.IntN(6))
		for i := range blades {
			blades[i] = feeler.MustBlade((units.Length(3+rnd.IntN(20)) * 5 * units.Micrometre).String())
		}
		set, err := feeler.NewSet("", "", blades...)
		require.NoError(t, err)
		lo := units.Length(rnd.IntN(80)) * units.Micrometre
		hi := lo + units.Length(1+rnd.IntN(60))*units.Micrometre
		s := tolerance.Spec{}
		s.New, err = tolerance.NewBand(lo, tolerance.End(rnd.IntN(3)), hi, tolerance.End(1+rnd.IntN(2)))
		require.NoError(t, err)
		if rnd.IntN(2) == 0 {
			s.Wear = tolerance.LessThan(hi + units.Length(1+rnd.IntN(30))*units.Micrometre)
		}
		most := 1 + rnd.IntN(4)
		zones, err := feeler.BlindZones(set, s, most)
		require.NoError(t, err)

		blind := func(most int) (brackets []string) {
			var totals []units.Length
			all := set.Blades()
			for pick := 1; pick < 1<<len(all); pick++ {
				sum, n := units.Length(0), 0
				for i, b := range all {
					if pick>>i&1 == 1 {
						sum, n = sum+b.Thickness(), n+1
					}
				}
				if n <= most {
					totals = append(totals, sum)
				}
			}
			slices.Sort(totals)
			totals = slices.Compact(totals)
			for i := -1; i < len(totals); i++ {
				low, b := units.Length(0), tolerance.Bracket{}
				if i >= 0 {
					low = totals[i]
				}
				if i+1 < len(totals) {
					b, err = tolerance.HalfOpen(low, totals[i+1])
				} else {
					b, err = tolerance.NewInterval(low, tolerance.Closed, 0, tolerance.Absent)
				}
				require.NoError(t, err)
				f, err := tolerance.Assess("gap", "here", s, b)
				require.NoError(t, err)
				if len(f.Unsettled) > 0 {
					brackets = append(brackets, b.String())
				}
			}
			return brackets
		}
		var single, left []string
		for _, z := range zones {
			single = append(single, z.Bracket.String())
			left = append(left, texts(z.Left)...)
		}
		require.Equal(t, blind(1), single)
		require.Equal(t, blind(most), left, "%v %v %d", set.Blades(), s, most)
	}
}

func TestBlindZonesRefuse(t *testing.T) {
	set, s := feeler.Metric8(), spec(t, "0.03–0.07 mm", "no limit")
	_, err := feeler.BlindZones(feeler.Set{}, s, 4)
	require.ErrorIs(t, err, feeler.ErrEmpty)
	_, err = feeler.BlindZones(set, tolerance.Spec{}, 4)
	require.ErrorIs(t, err, tolerance.ErrNoLimit)
	require.EqualError(t, err, "feeler: blind zones: limits: no limit given; give a band for new parts or a wear limit")
	_, err = feeler.BlindZones(set, spec(t, "0.03–0.07 mm", "max 0.05 mm"), 4)
	require.ErrorIs(t, err, tolerance.ErrSpec)
	for _, most := range []int{0, 9, -5} {
		_, err = feeler.BlindZones(set, s, most)
		require.ErrorIs(t, err, feeler.ErrSize)
	}
	// Limits no stack reaches, and limits that blades divide at.
	zones, err := feeler.BlindZones(set, spec(t, "min -1 mm, max 90 m", "no limit"), 8)
	require.NoError(t, err)
	require.Len(t, zones, 1)
	require.Empty(t, zones[0].Stacks)
	require.Equal(t, []string{"[0.5 mm, ∞)"}, texts(zones[0].Left))
	zones, err = feeler.BlindZones(set, spec(t, "min 0.10 mm, less than 0.20 mm", "no limit"), 8)
	require.NoError(t, err)
	require.Empty(t, zones)
}
