package feeler_test

import (
	"encoding/json"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func spec(t testing.TB, newBand, wear string) tolerance.Spec {
	t.Helper()
	var s tolerance.Spec
	var err error
	s.New, err = tolerance.ParseBand(newBand)
	require.NoError(t, err)
	s.Wear, err = tolerance.ParseBand(wear)
	require.NoError(t, err)
	return s
}

func TestPlanRefuses(t *testing.T) {
	set, limits, prior := feeler.Metric8(), spec(t, "0.03–0.07 mm", "no limit"), feeler.Uniform(mm)
	for _, c := range []struct {
		set   feeler.Set
		spec  tolerance.Spec
		prior feeler.Prior
		field string
		kind  error
	}{
		{feeler.Set{}, limits, prior, "set", feeler.ErrEmpty},
		{set, tolerance.Spec{}, prior, "limits", tolerance.ErrNoLimit},
		{set, spec(t, "0.03–0.07 mm", "max 0.05 mm"), prior, "limits", tolerance.ErrSpec},
		{set, tolerance.Spec{New: tolerance.AtMost(units.OutOfRange[units.Length]())}, prior, "limits", tolerance.ErrRange},
		{set, limits, nil, "prior", feeler.ErrPrior},
		{set, limits, make(feeler.Prior, 1001), "prior", feeler.ErrPrior},
		{set, limits, feeler.Uniform(0), "prior, piece 1", feeler.ErrPrior},
		{set, limits, feeler.Uniform(-pm), "prior, piece 1", feeler.ErrPrior},
		{set, limits, feeler.Uniform(units.Length(1 << 62)), "prior, piece 1", feeler.ErrPrior},
		{set, limits, feeler.Prior{{UpTo: 2 * pm, Weight: 1}, {UpTo: 2 * pm, Weight: 1}}, "prior, piece 2", feeler.ErrPrior},
		{set, limits, feeler.Prior{{UpTo: 2 * pm, Weight: 1}, {UpTo: 3 * pm, Weight: -1}}, "prior, piece 2", feeler.ErrPrior},
		{set, limits, feeler.Prior{{UpTo: 2 * pm}}, "prior, piece 1", feeler.ErrPrior},
	} {
		tree, err := feeler.Plan(c.set, c.spec, c.prior)
		require.Nil(t, tree)
		var e *feeler.PlanError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, c.kind)
		require.Equal(t, c.field, e.Field)
		require.NotEmpty(t, err.Error())
	}
	below, err := tolerance.NewInterval(-2*pm, tolerance.Closed, -pm, tolerance.Closed)
	require.NoError(t, err)
	_, err = feeler.PlanFrom(set, limits, prior, below)
	require.ErrorIs(t, err, tolerance.ErrRange)
	_, err = feeler.PlanFrom(set, limits, prior, tolerance.Exactly(units.OutOfRange[units.Length]()))
	require.ErrorIs(t, err, tolerance.ErrRange)
	beyond, err := feeler.Bracket(trial(2*mm, drag))
	require.NoError(t, err)
	_, err = feeler.PlanFrom(set, limits, prior, beyond)
	require.EqualError(t, err, "feeler: plan: prior: not a prior; some weight in [2 mm, ∞)")
}

// A tree is as good as the best of all trees, each built out and reckoned by
// its meaning, for limits for new and worn parts and for brackets known before.
func TestPlanAgainstEveryTree(t *testing.T) {
	rnd := rand.New(rand.NewPCG(26, 1))
	size := func(n int64) units.Length { return units.Length(1+rnd.Int64N(n)) * 10 * units.Micrometre }
	for range 400 {
		blades := make([]feeler.Blade, 1+rnd.IntN(6))
		for i := range blades {
			blades[i] = feeler.MustBlade(size(15).String())
		}
		set, err := feeler.NewSet("", "", blades...)
		require.NoError(t, err)
		lo := size(8)
		hi := lo + size(8)
		band, err := tolerance.NewBand(lo, tolerance.End(rnd.IntN(3)), hi, tolerance.End(rnd.IntN(3)))
		require.NoError(t, err)
		s := tolerance.Spec{New: band}
		if rnd.IntN(2) == 0 {
			s.Wear = tolerance.AtMost(hi + size(4))
		}
		if s.IsZero() || s.Validate() != nil {
			continue
		}
		prior := feeler.Prior{}
		top := units.Length(0)
		for range 1 + rnd.IntN(4) {
			top += size(12)
			prior = append(prior, feeler.Piece{UpTo: top, Weight: rnd.Int64N(5)})
		}
		prior[rnd.IntN(len(prior))].Weight++
		known := tolerance.Bracket{}
		if rnd.IntN(2) == 0 {
			known, err = tolerance.HalfOpen(size(6), size(6)+0.06*mm)
			require.NoError(t, err)
		}
		tree, err := feeler.PlanFrom(set, s, prior, known)
		if err != nil {
			require.ErrorIs(t, err, feeler.ErrPrior)
			require.Zero(t, share(prior, known).Sign())
			continue
		}
		known, _ = known.Intersect(tolerance.AtLeast(units.Length(0)).Interval())
		all := share(prior, known)
		best, shape := everyTree(set, s, prior, known)
		require.Equal(t, best.Quo(best, all).RatString(), tree.Expected().RatString())
		require.Equal(t, shape, outline(tree))
		require.LessOrEqual(t, tree.Most(), len(blades))
		requireSound(t, tree, set, s, prior, all)
	}
}

// share is the prior's weight of a bracket, by its definition.
func share(p feeler.Prior, b tolerance.Bracket) *big.Rat {
	sum, from := new(big.Rat), units.Length(0)
	lo, _ := b.Lower()
	hi, hiEnd := b.Upper()
	for _, piece := range p {
		a, z := max(from, lo), piece.UpTo
		if hiEnd != tolerance.Absent {
			z = min(z, hi)
		}
		if z > a {
			part := big.NewRat(int64(z-a), int64(piece.UpTo-from))
			sum.Add(sum, part.Mul(part, big.NewRat(piece.Weight, 1)))
		}
		from = piece.UpTo
	}
	return sum
}

// everyTree tries each blade inside, with every tree on both sides of it, and
// gives the least number of trials to expect times the weight, with the shape of
// the first such tree.
func everyTree(set feeler.Set, s tolerance.Spec, p feeler.Prior, b tolerance.Bracket) (least *big.Rat, shape string) {
	inside := set.Inside(b)
	if len(inside) == 0 || s.Stand(b) != tolerance.CantTell {
		return new(big.Rat), ""
	}
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	for _, blade := range inside {
		below, err := tolerance.NewInterval(lo, loEnd, blade.Thickness(), tolerance.Open)
		if err != nil {
			panic(err)
		}
		above, err := tolerance.NewInterval(blade.Thickness(), tolerance.Closed, hi, hiEnd)
		if err != nil {
			panic(err)
		}
		cost, left := everyTree(set, s, p, below)
		more, right := everyTree(set, s, p, above)
		cost.Add(cost, more).Add(cost, share(p, b))
		if least == nil || cost.Cmp(least) < 0 {
			least, shape = cost, "("+left+blade.MarkText()+right+")"
		}
	}
	return least, shape
}

func outline(t *feeler.Tree) string {
	if t.Done() {
		return ""
	}
	return "(" + outline(t.Refused) + t.Blade.MarkText() + outline(t.Entered) + ")"
}

// requireSound checks what each place of a tree says of itself.
func requireSound(t *testing.T, tree *feeler.Tree, set feeler.Set, s tolerance.Spec, p feeler.Prior, all *big.Rat) {
	t.Helper()
	require.Equal(t, s.Stand(tree.Bracket), tree.Standing)
	want := share(p, tree.Bracket)
	require.Equal(t, want.Quo(want, all).RatString(), tree.Chance.RatString())
	if tree.Done() {
		require.True(t, tree.Standing != tolerance.CantTell || len(set.Inside(tree.Bracket)) == 0)
		require.Equal(t, feeler.Blade{}, tree.Blade)
		require.Same(t, tree, tree.Next(drag))
		return
	}
	require.Same(t, tree.Entered, tree.Next(free))
	require.Same(t, tree.Entered, tree.Next(drag))
	require.Same(t, tree.Refused, tree.Next(forced))
	require.Same(t, tree.Refused, tree.Next(refused))
	require.Same(t, tree, tree.Next(feeler.Untried))
	require.Same(t, tree, tree.Next(99))
	in, err := feeler.Bracket(trial(tree.Blade.Thickness(), drag))
	require.NoError(t, err)
	both, ok := tree.Bracket.Intersect(in)
	require.True(t, ok)
	require.Equal(t, both, tree.Entered.Bracket)
	sum := new(big.Rat).Add(tree.Entered.Chance, tree.Refused.Chance)
	require.Equal(t, tree.Chance.RatString(), sum.RatString())
	requireSound(t, tree.Entered, set, s, p, all)
	requireSound(t, tree.Refused, set, s, p, all)
}

// What is expected is what comes about on the average, gap by gap.
func TestPlanWalked(t *testing.T) {
	set, top := feeler.Imperial26(), units.Length(0.2*mm)
	tree, err := feeler.Plan(set, spec(t, "0.03–0.07 mm", "max 0.10 mm"), feeler.Uniform(top))
	require.NoError(t, err)
	const gaps = 2000 // in the middles of 0.0001 mm, of which each blade is a whole number
	trials := 0
	for i := range gaps {
		gap := top/gaps*units.Length(i) + top/(2*gaps)
		at := tree
		for !at.Done() {
			feel := refused
			if gap >= at.Blade.Thickness() {
				feel = drag
			}
			at = at.Next(feel)
			trials++
		}
		require.True(t, at.Bracket.Contains(gap))
	}
	require.Equal(t, tree.Expected().RatString(), big.NewRat(int64(trials), gaps).RatString())
}

func TestTreeOfNothing(t *testing.T) {
	var none *feeler.Tree
	require.True(t, none.Done())
	require.Zero(t, none.Most())
	require.Empty(t, none.Text())
	require.Zero(t, none.Expected().Sign())
	require.Nil(t, none.Next(drag))
	require.Zero(t, (&feeler.Tree{}).Expected().Sign())

	// Where everything asked is settled before, there is nothing to try.
	known, err := feeler.Bracket(trial(0.2*mm, drag))
	require.NoError(t, err)
	tree, err := feeler.PlanFrom(feeler.Metric20(), spec(t, "0.03–0.07 mm", "no limit"), feeler.Uniform(mm), known)
	require.NoError(t, err)
	require.True(t, tree.Done())
	require.Equal(t, "outside the new-part band, [0.2 mm, ∞)\n", tree.Text())
	require.Equal(t, "0", tree.Expected().RatString())
}

// A part of a plan expects what is left from there.
func TestExpectedFromHalfway(t *testing.T) {
	tree, err := feeler.Plan(feeler.Metric20(), spec(t, "0.12–0.52 mm", "no limit"), feeler.Uniform(mm))
	require.NoError(t, err)
	var walk func(*feeler.Tree) *big.Rat
	walk = func(at *feeler.Tree) *big.Rat {
		sum := new(big.Rat)
		if !at.Done() {
			sum.Add(walk(at.Refused), walk(at.Entered))
			sum.Add(sum, at.Chance)
		}
		return sum
	}
	for at := tree; !at.Done(); at = at.Entered {
		want := walk(at)
		require.Equal(t, want.Quo(want, at.Chance).RatString(), at.Expected().RatString())
	}
	data, err := json.Marshal(tree)
	require.NoError(t, err)
	var again feeler.Tree
	require.NoError(t, json.Unmarshal(data, &again))
	require.Equal(t, tree.Text(), again.Text())
	require.Equal(t, tree.Expected().RatString(), again.Expected().RatString())
}

// The largest set and a thousand pieces are no more than a moment's work.
func TestPlanOfMany(t *testing.T) {
	blades := make([]feeler.Blade, feeler.MaxBlades)
	for i := range blades {
		blades[i] = feeler.MustBlade((units.Length(i+1) * 10 * units.Micrometre).String())
	}
	set, err := feeler.NewSet("", "", blades...)
	require.NoError(t, err)
	prior := make(feeler.Prior, 1000)
	for i := range prior {
		prior[i] = feeler.Piece{UpTo: units.Length(i+1) * units.Length(2_999_993+i), Weight: int64(i%7) * (1 << 60)}
	}
	tree, err := feeler.Plan(set, spec(t, "0.0301–2.5001 mm", "no limit"), prior)
	require.NoError(t, err)
	require.Contains(t, []int{3, 4}, tree.Most(), "four blades are next to the limits")
	require.Equal(t, 1, tree.Expected().Cmp(big.NewRat(1, 1)))
}
