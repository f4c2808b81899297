package piston

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

func matchParts(t testing.TB, kind, text, unit string) (parts []MatchPart) {
	for i, s := range strings.Fields(text) {
		b, err := tolerance.ParseBracket(strings.Replace(s, "±", " ±", 1) + " " + unit)
		require.NoError(t, err)
		parts = append(parts, MatchPart{kind + " " + strconv.Itoa(i+1), b})
	}
	return parts
}

func massParts(t testing.TB, kind, text, unit string) (parts []MassPart) {
	for i, s := range strings.Fields(text) {
		b, err := tolerance.ParseInterval[units.Mass](strings.Replace(s, "±", " ±", 1) + " " + unit)
		require.NoError(t, err)
		parts = append(parts, MassPart{kind + " " + strconv.Itoa(i+1), b})
	}
	return parts
}

func TestMatchAsScipy(t *testing.T) {
	var m Matcher
	vectors.Load(t, "reference/piston_matches.txt").Each(t, func(t *testing.T, c vectors.Case) {
		if c.Choice("kind", "bores", "rods") == "rods" {
			r, err := m.Rods(massParts(t, "piston", c.Text("first"), "mg"), massParts(t, "rod", c.Text("second"), "mg"), tolerance.SpecOf[units.Mass]{})
			require.NoError(t, err)
			require.Equal(t, units.Mass(c.Int64("aim"))*units.Milligram, r.Mean)
			require.Equal(t, units.Mass(c.Int64("greatest"))*units.Milligram, r.Best.Greatest)
			require.Equal(t, units.Mass(c.Int64("sum"))*units.Milligram, r.Best.Sum)
			var hi, lo units.Mass = 0, 1 << 60
			used := make([]bool, c.Int("pairs"))
			for i, p := range r.Best.Pairs {
				require.Equal(t, i, p.Piston)
				require.False(t, used[p.Rod])
				used[p.Rod] = true
				l, _ := p.Total.Lower()
				h, _ := p.Total.Upper()
				hi, lo = max(hi, h), min(lo, l)
			}
			require.NotContains(t, used, false)
			require.Equal(t, units.Mass(c.Int64("reach"))*units.Milligram, hi-lo)
			require.LessOrEqual(t, r.Best.Greatest, r.AsMarked.Greatest)
			c.Ignore("band", "possible")
			return
		}
		bores, pistons := matchParts(t, "bore", c.Text("first"), "um"), matchParts(t, "piston", c.Text("second"), "um")
		lo, hi, _ := strings.Cut(c.Text("band"), " ")
		w := selective.Wanted{Band: tolerance.MustParseBand(lo + "–" + hi + " µm"), Aim: units.Length(c.Int64("aim")) * units.Micrometre}
		r, err := m.Bores(bores, pistons, w)
		require.NoError(t, err)
		require.Equal(t, c.Int("pairs"), r.Best.Within)
		require.Equal(t, c.Int("pairs"), len(r.Best.Pairs))
		require.Equal(t, c.Int("possible"), r.Possible)
		require.Equal(t, units.Length(c.Int64("greatest"))*units.Micrometre, r.Best.Greatest)
		require.Equal(t, units.Length(c.Int64("sum"))*units.Micrometre, r.Best.Sum)
		require.Equal(t, len(bores)-r.Best.Within, len(r.Replace))
		require.Equal(t, len(r.Replace), len(r.Needs))
		require.Equal(t, len(r.Replace) == 0, r.Feasible)
		left := make(map[int]bool)
		for _, j := range r.Replace {
			left[j] = true
		}
		for _, p := range r.Best.Pairs {
			require.Equal(t, tolerance.Within, p.Verdict)
			require.False(t, left[p.Piston])
			left[p.Piston] = true
		}
		require.Len(t, left, len(pistons))
		// A piston of the size that is asked for suits its bore.
		for _, n := range r.Needs {
			if n.SizeKnown {
				require.Equal(t, tolerance.Within, w.Band.Judge(tolerance.Clearance(bores[n.Bore].Size, n.Size.Interval())))
			}
		}
		c.Ignore("reach")
	})
}

// Of every way to pair small sets, none beats the chosen one.
func TestMatchIsNeverBeaten(t *testing.T) {
	r := rand.New(rand.NewPCG(57, 1))
	var m Matcher
	for range 400 {
		n := 1 + r.IntN(5)
		var bores, pistons []MatchPart
		for i := range n {
			b, err := tolerance.PlusMinus(86*units.Millimetre+units.Length(r.IntN(12))*units.Micrometre, units.Length(r.IntN(2))*units.Micrometre)
			require.NoError(t, err)
			p, err := tolerance.PlusMinus(86*units.Millimetre-units.Length(20+r.IntN(12))*units.Micrometre, units.Length(r.IntN(2))*units.Micrometre)
			require.NoError(t, err)
			bores, pistons = append(bores, MatchPart{"b" + strconv.Itoa(i), b}), append(pistons, MatchPart{"p" + strconv.Itoa(i), p})
		}
		w := selective.Wanted{Band: band("0.022–0.040 mm"), Aim: mm("0.030")}
		got, err := m.Bores(bores, pistons, w)
		require.NoError(t, err)
		chosen := [3]int64{-int64(got.Best.Within), int64(got.Best.Greatest), int64(got.Best.Sum)}
		used := make([]bool, n)
		var every func(i int, key [3]int64)
		every = func(i int, key [3]int64) {
			if i == n {
				for k := range key {
					if key[k] != chosen[k] {
						require.Greater(t, key[k], chosen[k])
						return
					}
				}
				return
			}
			every(i+1, key)
			for j := range n {
				c := tolerance.Clearance(bores[i].Size, pistons[j].Size)
				if used[j] || w.Band.Judge(c) != tolerance.Within {
					continue
				}
				used[j] = true
				lo, _ := c.Lower()
				hi, _ := c.Upper()
				d := int64(max((lo - w.Aim).Abs(), (hi - w.Aim).Abs()))
				every(i+1, [3]int64{key[0] - 1, max(key[1], d), key[2] + d})
				used[j] = false
			}
		}
		every(0, [3]int64{})
		again, err := MatchBores(bores, pistons, w)
		require.NoError(t, err)
		require.Equal(t, got, again)
	}
}

// Heaviest on lightest: with one error for all, no pairing spreads less.
func TestMatchRodsSpreadIsTheLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(58, 1))
	for range 300 {
		n := 2 + r.IntN(4)
		var pistons, rods []MassPart
		for i := range n {
			pistons = append(pistons, MassPart{"p" + strconv.Itoa(i), tolerance.Exactly(500*units.Gram + units.Mass(r.IntN(12))*units.Gram)})
			rods = append(rods, MassPart{"r" + strconv.Itoa(i), tolerance.Exactly(700*units.Gram + units.Mass(r.IntN(12))*units.Gram)})
		}
		got, err := MatchRods(pistons, rods, tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(3 * units.Gram)})
		require.NoError(t, err)
		best, _ := got.Best.Spread.Upper()
		used := make([]bool, n)
		var every func(i int, lo, hi units.Mass)
		every = func(i int, lo, hi units.Mass) {
			if i == n {
				require.LessOrEqual(t, best, hi-lo)
				return
			}
			for j := range n {
				if !used[j] {
					used[j] = true
					sum, _ := MassTotal(pistons[i].Mass, rods[j].Mass).Lower()
					every(i+1, min(lo, sum), max(hi, sum))
					used[j] = false
				}
			}
		}
		every(0, 1<<60, 0)
		want := tolerance.AsNew
		if best > 3*units.Gram {
			want = tolerance.OutsideNewBand
		}
		require.Equal(t, want, got.Finding.Standing)
	}
}

func TestMatchNext(t *testing.T) {
	w := selective.Wanted{Band: band("0.03–0.05 mm"), Aim: mm("0.04")}
	for _, c := range []struct{ bores, pistons, next string }{
		{"86000 86010", "85960 85970", "leave the pistons as marked"},
		{"86000 86010", "85971 85960", "pair anew: as marked, 1 of 2 are not in the band"},
		{"86000 86004", "85962 85960", "as marked all are in the band"},
		{"86000 86100", "85960 85970", "replace 1 piston, or bore to suit"},
		{"86000 86010", "85960±12 85970", "for 1 bore no piston is in the band for certain, but one may be"},
		{"86000 86010 86200", "85960±12 85970 86800", "replace 2 pistons, or after finer measuring perhaps only 1"},
	} {
		r, err := MatchBores(matchParts(t, "bore", c.bores, "um"), matchParts(t, "piston", c.pistons, "um"), w)
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
		b, err := json.Marshal(r)
		require.NoError(t, err)
		var back BoreMatch
		require.NoError(t, json.Unmarshal(b, &back))
		require.Empty(t, cmp.Diff(r, back, cmpopts.EquateComparable(tolerance.Bracket{}, tolerance.Band{}), cmpopts.EquateEmpty()))
	}
	// A bore so loosely read that no piston would be sure to suit it.
	r, err := MatchBores(matchParts(t, "bore", "86000±15", "um"), matchParts(t, "piston", "85960", "um"), w)
	require.NoError(t, err)
	require.Equal(t, []MatchNeed{{Bore: 0}}, r.Needs)
	// By hand: for a bore of 86.100, pistons of 86.05 to 86.07.
	r, err = MatchBores(matchParts(t, "bore", "86000 86100", "um"), matchParts(t, "piston", "85960 85970", "um"), w)
	require.NoError(t, err)
	require.Equal(t, []MatchNeed{{1, band("86.05–86.07 mm"), true}}, r.Needs)
	require.Equal(t, []int{1}, r.Replace)
	require.Equal(t, 1, r.Possible)

	limit := tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(2 * units.Gram)}
	for _, c := range []struct {
		pistons, rods string
		limit         tolerance.SpecOf[units.Mass]
		next          string
	}{
		{"500 505", "705 700", limit, "leave the pistons on their rods: no pairing is more nearly equal; the totals are within their limit"},
		{"500 505", "700 705", limit, "put piston 1 on rod 2, piston 2 on rod 1; the totals are within"},
		{"500 505", "700 701", limit, "metal must come off"},
		{"500 505", "700 705", tolerance.SpecOf[units.Mass]{}, "no limit is given for the totals"},
	} {
		r, err := MatchRods(massParts(t, "piston", c.pistons, "g"), massParts(t, "rod", c.rods, "g"), c.limit)
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	var many, other []MassPart
	for i := range 60 {
		many = append(many, MassPart{fmt.Sprint("p", i), tolerance.Exactly(units.Mass(500+i) * units.Gram)})
		other = append(other, MassPart{fmt.Sprint("r", i), tolerance.Exactly(units.Mass(500+i) * units.Gram)})
	}
	rods, err := MatchRods(many, other, limit)
	require.NoError(t, err)
	require.Contains(t, rods.Next, "and so on")
	require.Equal(t, units.Mass(0), rods.Best.Greatest)
}

func TestMatchRefuses(t *testing.T) {
	w := selective.Wanted{Band: band("0.03–0.05 mm"), Aim: mm("0.04")}
	bores, pistons := matchParts(t, "bore", "86000 86010", "um"), matchParts(t, "piston", "85960 85970", "um")
	with := func(p []MatchPart, size string) []MatchPart {
		var b tolerance.Bracket
		require.NoError(t, b.UnmarshalText([]byte(size)))
		return []MatchPart{p[0], {"other", b}}
	}
	for _, c := range []struct {
		bores, pistons []MatchPart
		w              selective.Wanted
		want           string
	}{
		{nil, pistons, w, "list of bores of none is not one bore at least"},
		{bores, nil, w, "list of pistons of none"},
		{bores, pistons[:1], w, "list of pistons of 1 is not as long as that of the bores, 2"},
		{make([]MatchPart, MatchMost+1), make([]MatchPart, MatchMost+1), w, "1000 at the most"},
		{with(bores, "0 mm"), pistons, w, "bore other 0 mm is not above 0 mm"},
		{bores, with(pistons, "[1 mm, ∞)"), w, "a diameter with both ends"},
		{bores, with(pistons, "200000 mm"), w, "below 100000 mm"},
		{bores, []MatchPart{pistons[0], pistons[0]}, w, `piston "piston 1" is not named once`},
		{bores, pistons, selective.Wanted{}, "a band with a limit at least"},
		{bores, pistons, selective.Wanted{Band: w.Band}, "wanted clearance 0 mm is not in its band"},
	} {
		r, err := MatchBores(c.bores, c.pistons, c.w)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.want)
		require.Zero(t, r)
	}
	good := massParts(t, "part", "500 505", "g")
	for _, c := range []struct {
		pistons, rods []MassPart
		want          string
	}{
		{nil, good, "list of pistons of none"},
		{good, good[:1], "list of rods of 1"},
		{massParts(t, "part", "500 0", "g"), good, "mass of piston part 2 0 g is not above 0 g"},
		{good, massParts(t, "part", "500 -1", "g"), "mass of rod part 2"},
		{good, massParts(t, "part", "500 2000000", "g"), "below 1000000 g"},
		{[]MassPart{good[0], good[0]}, good, `piston "part 1" is not named once`},
		{massParts(t, "part", "1 1000000", "g"), massParts(t, "part", "1 1000000", "g"), "set of so unlike parts is not one whose deviations can be added up"},
	} {
		r, err := MatchRods(c.pistons, c.rods, tolerance.SpecOf[units.Mass]{})
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.want)
		require.Zero(t, r)
	}
	_, err := MatchRods(good, good, tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(3 * units.Gram), Wear: tolerance.AtMost(units.Gram)})
	require.Error(t, err)
}

func matchSet(t testing.TB, n int) (bores, pistons []MatchPart, w selective.Wanted) {
	r := rand.New(rand.NewPCG(59, uint64(n)))
	for i := range n {
		b, err := tolerance.PlusMinus(86*units.Millimetre+units.Length(r.IntN(30))*units.Micrometre, units.Micrometre)
		require.NoError(t, err)
		p, err := tolerance.PlusMinus(85950*units.Micrometre+units.Length(r.IntN(30))*units.Micrometre, units.Micrometre)
		require.NoError(t, err)
		bores, pistons = append(bores, MatchPart{"bore " + strconv.Itoa(i), b}), append(pistons, MatchPart{"piston " + strconv.Itoa(i), p})
	}
	return bores, pistons, selective.Wanted{Band: band("0.02–0.08 mm"), Aim: mm("0.05")}
}

func TestMatcherAllocatesTheAnswerAlone(t *testing.T) {
	bores, pistons, w := matchSet(t, 16)
	var m Matcher
	_, err := m.Bores(bores, pistons, w)
	require.NoError(t, err)
	require.LessOrEqual(t, testing.AllocsPerRun(20, func() { _, _ = m.Bores(bores, pistons, w) }), 4.0, "two lists of pairs, and words")
	p, r := massPair(16)
	_, err = m.Rods(p, r, tolerance.SpecOf[units.Mass]{})
	require.NoError(t, err)
	require.LessOrEqual(t, testing.AllocsPerRun(20, func() { _, _ = m.Rods(p, r, tolerance.SpecOf[units.Mass]{}) }), 16.0, "two lists of pairs and of totals, the finding, and words")
}

func massPair(n int) (pistons, rods []MassPart) {
	r := rand.New(rand.NewPCG(60, uint64(n)))
	for i := range n {
		p, _ := tolerance.PlusMinus(500*units.Gram+units.Mass(r.IntN(9000))*units.Milligram, 50*units.Milligram)
		q, _ := tolerance.PlusMinus(700*units.Gram+units.Mass(r.IntN(9000))*units.Milligram, 50*units.Milligram)
		pistons, rods = append(pistons, MassPart{"p" + strconv.Itoa(i), p}), append(rods, MassPart{"r" + strconv.Itoa(i), q})
	}
	return pistons, rods
}

func BenchmarkMatch(b *testing.B) {
	for _, n := range []int{4, 8, 16, 32, 64} {
		var m Matcher
		bores, pistons, w := matchSet(b, n)
		b.Run(fmt.Sprintf("lib=tenthou/op=bores%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := m.Bores(bores, pistons, w); err != nil {
					b.Fatal(err)
				}
			}
		})
		p, r := massPair(n)
		b.Run(fmt.Sprintf("lib=tenthou/op=rods%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := m.Rods(p, r, tolerance.SpecOf[units.Mass]{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
