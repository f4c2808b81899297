package valvetrain

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// shimScore is what a plan is judged by, in order.
type shimScore [6]int64

// shimScoreOf takes a plan's score from its moves alone.
func shimScoreOf(h *ShimHead, p *ShimPlan) (s shimScore) {
	for i, m := range p.Moves {
		v := &h.Valves[i]
		if m.Then != tolerance.Within {
			s[0]++
			continue
		}
		if m.Action == ShimToBuy {
			s[1]++
		}
		if m.Now == tolerance.Within && m.Action != ShimStays {
			s[2]++
		}
		over := shimTwiceMiddle(m.After) - v.twiceAim()
		s[3] += int64(over.Abs())
		s[4] = max(s[4], int64(over.Abs()))
		if over < 0 {
			s[5]++
		}
	}
	return s
}

// shimEveryWay tries every way to plan a small head, by nothing but the
// prediction and the judgment of package tolerance.
func shimEveryWay(h *ShimHead) shimScore {
	var best shimScore
	found := false
	var hand []tolerance.Bracket
	owner := map[int]int{} // valve to its shim's place
	free := make([]bool, len(h.Valves))
	for i := range h.Valves {
		v := &h.Valves[i]
		in := v.Wanted.Judge(v.Measured) == tolerance.Within
		free[i] = v.shimDoubt() == NoShimDoubt && (!in || h.Disturb)
		if free[i] {
			owner[i] = len(hand)
			hand = append(hand, v.Shim)
		}
	}
	for _, s := range h.Drawer {
		hand = append(hand, s.Thickness)
	}
	used := make([]bool, len(hand))
	var next func(i int, s shimScore)
	next = func(i int, s shimScore) {
		if i == len(h.Valves) {
			if !found || slices.Compare(s[:], best[:]) < 0 {
				best, found = s, true
			}
			return
		}
		v := &h.Valves[i]
		in := v.Wanted.Judge(v.Measured) == tolerance.Within
		add := func(after tolerance.Bracket, bought, disturbed int64) shimScore {
			t := s
			over := shimTwiceMiddle(after) - v.twiceAim()
			t[1] += bought
			t[2] += disturbed
			t[3] += int64(over.Abs())
			t[4] = max(t[4], int64(over.Abs()))
			if over < 0 {
				t[5]++
			}
			return t
		}
		other := int64(0)
		if in {
			other = 1
		}
		own, has := owner[i]
		if !has || !used[own] { // it keeps its own
			if has {
				used[own] = true
			}
			if in {
				next(i+1, add(v.Measured, 0, 0))
			} else {
				t := s
				t[0]++
				next(i+1, t)
			}
			if has {
				used[own] = false
			}
		}
		if !free[i] {
			return
		}
		for j, shim := range hand {
			if after := v.With(shim); !used[j] && j != own && v.Wanted.Judge(after) == tolerance.Within {
				used[j] = true
				next(i+1, add(after, 0, other))
				used[j] = false
			}
		}
		for _, size := range h.Series {
			if after := v.With(size.Thickness); v.Wanted.Judge(after) == tolerance.Within {
				next(i+1, add(after, 1, other))
			}
		}
	}
	next(0, shimScore{})
	return best
}

// The plan is the best of every way there is, on small heads; and its summary is
// what its moves come to.
func TestShimPlanEveryWay(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	var planner ShimPlanner
	var bought, disturbed, open int64
	for range 8000 {
		h := shimHead(r, 1+r.IntN(4), r.IntN(3), r.IntN(4) > 0, r.IntN(3) == 0)
		if most := 1 + r.IntN(12); len(h.Series) > most {
			at := r.IntN(len(h.Series) - most)
			h.Series = h.Series[at : at+most]
		}
		p, err := planner.Plan(&h)
		require.NoError(t, err)
		got, want := shimScoreOf(&h, &p), shimEveryWay(&h)
		require.Equal(t, want, got, "%+v\n%+v", h, p)
		require.EqualValues(t, got[1], p.Bought)
		require.EqualValues(t, got[2], p.Disturbed)
		require.EqualValues(t, len(h.Valves)-int(got[0]), p.InBand)
		require.EqualValues(t, (got[3]+1)/2, p.Off)
		require.EqualValues(t, (got[4]+1)/2, p.Greatest)
		bought, disturbed, open = bought+got[1], disturbed+got[2], open+got[0]
	}
	require.Greater(t, min(bought, disturbed, open), int64(20), "the heads are mixed: %d bought, %d disturbed, %d open", bought, disturbed, open)
}

// The same where every shim suits nearly every valve, on a grid so coarse that many
// plans have the same sum.
func TestShimPlanCrowd(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 7))
	var planner ShimPlanner
	at := func(least, steps int) tolerance.Bracket {
		return tolerance.Exactly(units.Length(least+10*r.IntN(steps)) * units.Micrometre)
	}
	for range 6000 {
		h := ShimHead{Disturb: r.IntN(2) == 0}
		for range 1 + r.IntN(5) {
			v := ShimValve{Measured: at(140, 20), Shim: at(2500, 8), Wanted: tolerance.MustParseBand("0.15–0.25 mm")}
			if r.IntN(4) == 0 {
				v.Aim = units.Length(160+10*r.IntN(8)) * units.Micrometre
			}
			h.Valves = append(h.Valves, v)
		}
		for range r.IntN(4) {
			h.Drawer = append(h.Drawer, ShimPiece{"spare", at(2480, 12)})
		}
		for range r.IntN(3) {
			h.Series = append(h.Series, ShimPiece{"size", at(2450, 20)})
		}
		p, err := planner.Plan(&h)
		require.NoError(t, err)
		require.Equal(t, shimEveryWay(&h), shimScoreOf(&h, &p), "%+v\n%+v", h, p)
	}
}

// scipy is the judge: 400 heads of up to 32 valves.
func TestShimPlanReference(t *testing.T) {
	um := func(s string) tolerance.Bracket {
		lo, hi, ok := strings.Cut(s, "-")
		require.True(t, ok)
		a, err := strconv.Atoi(lo)
		require.NoError(t, err)
		b, err := strconv.Atoi(hi)
		require.NoError(t, err)
		return inputSpan(units.Length(a)*units.Micrometre, units.Length(b)*units.Micrometre)
	}
	pieces := func(c vectors.Case, col string) (list []ShimPiece) {
		if c.Has(col) {
			for s := range strings.FieldsSeq(c.Text(col)) {
				list = append(list, ShimPiece{s, um(s)})
			}
		}
		return list
	}
	var planner ShimPlanner
	count, most := 0, 0
	for c := range vectors.Load(t, "reference/valvetrain_shims.txt").All(t) {
		h := ShimHead{Disturb: c.Bool("disturb"), Drawer: pieces(c, "drawer"), Series: pieces(c, "series")}
		for s := range strings.FieldsSeq(c.Text("valves")) {
			part := strings.Split(s, "/")
			lo, hi := inputEnds(um(part[0]))
			measured, err := tolerance.HalfOpen(lo, hi)
			require.NoError(t, err)
			aim, err := strconv.Atoi(part[3])
			require.NoError(t, err)
			h.Valves = append(h.Valves, ShimValve{Measured: measured, Shim: um(part[1]), Wanted: tolerance.BandFrom(um(part[2])), Aim: units.Length(aim) * units.Micrometre})
		}
		p, err := planner.Plan(&h)
		require.NoError(t, err)
		got := shimScoreOf(&h, &p)
		require.Equal(t, [5]int{c.Int("in_band"), c.Int("bought"), c.Int("disturbed"), c.Int("twice_off"), c.Int("twice_greatest")},
			[5]int{p.InBand, p.Bought, p.Disturbed, int(got[3] / 1e6), int(got[4] / 1e6)}, c.Where())
		count, most = count+1, max(most, len(h.Valves))
	}
	require.Equal(t, 400, count)
	require.Equal(t, 32, most)
}

// What holds of every plan: no shim is in two places, each valve is in band for
// certain or named with what to try, nothing is bought that shimming each valve by
// itself wouldn't buy, and the truth behind the brackets lands in the band.
func TestShimPlanProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 7))
	within := func(b tolerance.Bracket) units.Length {
		lo, hi := inputEnds(b)
		if _, end := b.Upper(); end == tolerance.Open {
			hi--
		}
		return lo + units.Length(r.Int64N(int64(hi-lo)+1))
	}
	for range 1500 {
		h := shimHead(r, 1+r.IntN(32), r.IntN(12), r.IntN(2) == 0, false)
		p, err := PlanShims(h)
		require.NoError(t, err)
		named := map[int]bool{}
		for _, u := range p.Undecided {
			named[u.Valve] = true
			require.NotEmpty(t, u.Settle)
			require.NotEqual(t, NoShimDoubt, u.Doubt)
			require.Equal(t, u.Fitted, p.Moves[u.Valve].Then == tolerance.Within)
		}
		places, alone, buys, extra := map[string]bool{}, 0, 0, 0
		for i, m := range p.Moves {
			require.Equal(t, m.Then == tolerance.Within, m.Action != ShimStaysOpen)
			if m.Then != tolerance.Within {
				require.True(t, named[i])
				require.Equal(t, h.Valves[i].Shim, m.Shim)
			}
			if m.Action == ShimToBuy {
				buys++
			} else {
				key := fmt.Sprint(m.Action == ShimFromDrawer, m.From)
				require.False(t, places[key], "each shim once")
				places[key] = true
			}
			// One for one: each valve out of band by itself.
			v := &h.Valves[i]
			one := ShimHead{Valves: []ShimValve{*v}, Series: h.Series}
			o, err := PlanShims(one)
			require.NoError(t, err)
			alone += o.Bought
			if o.InBand == 0 && m.Then == tolerance.Within {
				extra++
			}
			if m.Action == ShimStays || m.Action == ShimStaysOpen {
				continue
			}
			truth := within(v.Measured) + within(v.Shim) - within(m.Shim)
			require.True(t, v.Wanted.Allows(truth))
			require.True(t, m.After.Contains(truth))
		}
		require.LessOrEqual(t, buys, alone+extra, "never more than one for one, but to bring another valve in")
		if !h.Disturb {
			require.LessOrEqual(t, buys, alone)
		}
		require.Equal(t, len(h.Drawer)+len(h.Valves), len(p.Left)+len(places))
		pieces := 0
		for _, b := range p.Buy {
			pieces += b.Pieces
		}
		require.Equal(t, p.Bought, pieces)
	}
}

// The same head twice, and with the valves' own memory re-used, is the same plan.
func TestShimPlanRepeats(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 7))
	var planner ShimPlanner
	for range 50 {
		h := shimHead(r, 1+r.IntN(20), r.IntN(12), true, true)
		first, err := PlanShims(h)
		require.NoError(t, err)
		second, err := planner.Plan(&h)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(first, second, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })))
	}
}

func TestShimPlanAllocations(t *testing.T) {
	// Nothing open, nothing to buy: the moves and the left-over shims alone.
	h := ShimHead{Disturb: true, Set: feeler.Metric20()}
	for i := range 16 {
		h.Valves = append(h.Valves, ShimValve{Measured: stemAt("[0.30 mm, 0.31 mm)"), Shim: stemAt("2.50 mm"), Wanted: tolerance.MustParseBand("0.20–0.25 mm")})
		h.Drawer = append(h.Drawer, ShimPiece{"spare", tolerance.Exactly(2580*units.Micrometre + units.Length(i)*units.Micrometre/4)})
	}
	var p ShimPlanner
	plan, err := p.Plan(&h)
	require.NoError(t, err)
	require.Equal(t, 16, plan.InBand)
	require.Equal(t, 2.0, testing.AllocsPerRun(20, func() {
		if _, err := p.Plan(&h); err != nil {
			panic(err)
		}
	}))
}
