package cylinder

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// block is four bores of 86 mm, worn on the thrust side by so much each.
func block(wear ...string) OversizeJob {
	j := OversizeJob{
		Standard: 86 * units.Millimetre, Kits: Ladder(units.InMillimetres, MetricSteps()...),
		Plan: BoringPlan{Cut: boreLen("0.01 mm"), Honing: boreLen("0.06 mm")},
	}
	for _, w := range wear {
		j.Bores = append(j.Bores, WornBore{Finished: 86 * units.Millimetre, Walls: []BoreWall{wallAt(thrust, w), wallAt(other, "0 mm")}})
	}
	return j
}

func choose(t *testing.T, j OversizeJob) OversizeChoice {
	t.Helper()
	c, err := ChooseOversize(&j)
	require.NoError(t, err)
	return c
}

// The case of common practice: 0.10 on the thrust side only needs 86.28 on the
// axis and 86.18 moved, so the bar's place decides between +0.50 and +0.25; and
// from the diameter alone, 86.18 to 86.28, it can't be told.
func TestChooseOversize_commonPractice(t *testing.T) {
	j := block("0.02 mm", "0.04 mm", "0.10 mm", "0.03 mm")
	c := choose(t, j)
	require.Equal(t, OversizeKit, c.Outcome)
	require.Equal(t, "+0.50 mm", c.Kits[c.Kit].Name)
	require.Equal(t, 2, c.Forced)
	require.Equal(t, "bore 3", c.Bores[c.Forced].Where)
	require.Equal(t, boreAt("86.28 mm"), c.Bores[2].Need.Size)
	require.Equal(t, boreAt("-0.03 mm"), c.Bores[2].Fits[0].Spare)
	require.Contains(t, c.Settle, "measure the pistons of +0.50 mm")
	for i, want := range []int{0, 0, 1, 0} {
		require.Equal(t, want, c.Bores[i].Sure)
		require.Equal(t, want, c.Bores[i].Possible)
	}

	j.Plan.Centring = MovedToBore
	c = choose(t, j)
	require.Equal(t, "+0.25 mm", c.Kits[c.Kit].Name)
	require.Equal(t, BoreCentre{Y: boreLen("0.05 mm")}, c.Bores[2].Need.Centre)

	j.Plan.Centring = OriginalAxis
	j.Bores[2].Walls, j.Bores[2].Greatest = nil, boreAt("86.10 mm")
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Equal(t, 0, c.Possible)
	require.Equal(t, 1, c.Kit)
	require.Equal(t, boreAt("[86.18 mm, 86.28 mm]"), c.Bores[2].Need.Size)
	require.Equal(t, "bore 3: dial the worn side", c.Settle)
	require.Equal(t, "dial the worn side from the original axis: a diameter doesn't tell how much of the wear is on which wall", c.Bores[2].Need.Settle)
}

// The size is the measured piston's, not the nominal step's: pistons of +0.25
// that measure 0.03 under their step with 0.05 of clearance make 86.27; the
// same ones 0.08 under make 86.22, and 86.25 would have cleaned up.
func TestChooseOversize_provedByPistons(t *testing.T) {
	j := block("0.08 mm")
	require.Equal(t, boreAt("86.24 mm"), choose(t, j).Bores[0].Need.Size)
	require.Equal(t, 0, choose(t, j).Kit)
	j.Clearance = boreAt("0.05 mm")
	j.Kits[0].Pistons = []tolerance.Bracket{boreAt("86.22 ±0.002 mm")}
	c := choose(t, j)
	require.Equal(t, 0, c.Kit)
	require.True(t, c.Bores[0].Fits[0].Proved)
	require.Equal(t, boreAt("[86.268 mm, 86.272 mm]"), c.Bores[0].Fits[0].Size)
	require.Empty(t, c.Settle)
	j.Kits[0].Pistons[0] = boreAt("86.17 ±0.002 mm")
	require.Equal(t, 1, choose(t, j).Kit)
	// On the edge, the piston's own error keeps it open.
	j.Kits[0].Pistons[0] = boreAt("86.189 ±0.002 mm")
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Equal(t, "bore 1: measure pistons and walls more closely", c.Settle)
	// Two pistons for one bore: which one goes in isn't known.
	j.Kits[0].Pistons = []tolerance.Bracket{boreAt("86.195 mm"), boreAt("86.185 mm")}
	c = choose(t, j)
	require.Equal(t, boreAt("[86.235 mm, 86.245 mm]"), c.Bores[0].Fits[0].Size)
	// A worn wall with brackets, and no piston measured.
	j = block("[0.08 mm, 0.09 mm]")
	require.Equal(t, "bore 1: measure the pistons of +0.25 mm", choose(t, j).Settle)
}

func TestChooseOversize_options(t *testing.T) {
	j := block("0.02 mm", "0.04 mm", "0.19 mm", "0.03 mm")
	j.Kits[0].Stock, j.Kits[0].Price = StockOf(4), PriceOf(40_00)
	j.Kits[1].Stock, j.Kits[1].Price = StockOf(3), PriceOf(42_00)
	j.Boring, j.Liner.Price = PriceOf(25_00), PriceOf(150_00)
	c := choose(t, j)
	require.Equal(t, 1, c.Kit)
	require.Equal(t, []OversizeOption{
		{Kit: 0, Lined: []int{2}, LinersStand: tolerance.Within, Enough: tolerance.Within, Total: PriceOf(4*40_00 + 4*25_00 + 150_00)},
		{Kit: 1, LinersStand: tolerance.Within, Enough: tolerance.Below, Total: PriceOf(4*42_00 + 4*25_00)},
	}, c.Options)
	j.Liner.Price, j.Kits[1].Stock = Price{}, Stock{}
	c = choose(t, j)
	require.False(t, c.Options[0].Total.Given, "a liner without a price")
	require.True(t, c.Options[1].Total.Given, "and none is needed here")
	require.Equal(t, tolerance.Undecided, c.Options[1].Enough)

	// None cleans up: line.
	j = block("0.02 mm", "0.60 mm")
	c = choose(t, j)
	require.Equal(t, OversizeLiner, c.Outcome)
	require.Equal(t, -1, c.Kit)
	require.Equal(t, 1, c.Forced)
	require.Len(t, c.Options, 4)
	require.Equal(t, []int{1}, c.Options[0].Lined)
	// An open bore is neither.
	j = block("0.02 mm")
	j.Bores[0].Walls, j.Bores[0].Greatest = nil, boreAt("86.10 mm")
	c = choose(t, j)
	require.Equal(t, []int{0}, c.Options[0].Open)
}

// More wear never makes for a smaller kit.
func TestChooseOversize_monotone(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 1))
	for range 200 {
		j := block("0 mm", "0 mm", "0 mm")
		j.Plan.Centring = Centring(r.IntN(2))
		for i := range j.Bores {
			if r.IntN(2) == 0 {
				j.Bores[i].Walls = nil
				j.Bores[i].Greatest = tolerance.Exactly(86*units.Millimetre + units.Length(r.Int64N(3e8)))
				continue
			}
			for k := range j.Bores[i].Walls {
				j.Bores[i].Walls[k].Wear = tolerance.Exactly(units.Length(r.Int64N(3e8)))
			}
		}
		rank := func(k int) int {
			if k < 0 {
				return len(j.Kits)
			}
			return k
		}
		before := choose(t, j)
		i, by := r.IntN(3), tolerance.Exactly(units.Length(r.Int64N(2e8)))
		if j.Bores[i].Walls == nil {
			j.Bores[i].Greatest = j.Bores[i].Greatest.Add(by)
		} else {
			j.Bores[i].Walls[0].Wear = j.Bores[i].Walls[0].Wear.Add(by)
		}
		after := choose(t, j)
		require.GreaterOrEqual(t, rank(after.Kit), rank(before.Kit))
		require.GreaterOrEqual(t, rank(after.Possible), rank(before.Possible))
		require.LessOrEqual(t, rank(after.Possible), rank(after.Kit))
	}
}

func TestChooseOversize_refuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*OversizeJob)
		want   string
	}{
		"standard":  {func(j *OversizeJob) { j.Standard = 0 }, "standard bore 0 mm"},
		"no bores":  {func(j *OversizeJob) { j.Bores = nil }, "bores 0 is not from 1"},
		"no kits":   {func(j *OversizeJob) { j.Kits = nil }, "oversizes (none)"},
		"many kits": {func(j *OversizeJob) { j.Kits = make([]PistonKit, 1001) }, "1000 at most"},
		"plan":      {func(j *OversizeJob) { j.Plan.Cut = -1 }, "least cut"},
		"cut":       {func(j *OversizeJob) { j.Plan.Cut = 10 * units.Millimetre }, "in its right unit"},
		"hone":      {func(j *OversizeJob) { j.Plan.Honing = 6 * units.Millimetre }, "in its right unit"},
		"thick":     {func(j *OversizeJob) { j.Plan.LeastWall = 76 * units.Millimetre }, "in its right unit"},
		"largest":   {func(j *OversizeJob) { j.Plan.LargestBore = 3.5 * units.MM }, "largest bore allowed 3.5 mm is not from the standard bore 86 mm"},
		"finished":  {func(j *OversizeJob) { j.Bores[0].Finished = 0 }, "size last finished to"},
		"far":       {func(j *OversizeJob) { j.Bores[0].Finished = 3 * units.Millimetre }, "near the standard bore"},
		"oversize":  {func(j *OversizeJob) { j.Kits[0].Oversize, j.Kits[0].Name = -1, "" }, "kit 1, oversize"},
		"inches":    {func(j *OversizeJob) { j.Kits[0].Oversize = 40 * units.Millimetre }, "a quarter of the standard bore"},
		"price":     {func(j *OversizeJob) { j.Kits[0].Price = PriceOf(-1) }, "+0.25 mm, price"},
		"not given": {func(j *OversizeJob) { j.Kits[0].Price = Price{Coins: 5} }, "said to be given"},
		"stock":     {func(j *OversizeJob) { j.Kits[0].Stock = StockOf(-1) }, "stock -1"},
		"piston":    {func(j *OversizeJob) { j.Kits[0].Pistons = []tolerance.Bracket{boreAt("86.30 mm")} }, "a skirt for this kit"},
		"no piston": {func(j *OversizeJob) { j.Kits[0].Pistons = []tolerance.Bracket{{}} }, "+0.25 mm, piston 1"},
		"clearance": {func(j *OversizeJob) { j.Kits[0].Pistons = []tolerance.Bracket{boreAt("86.20 mm")} }, "clearance"},
		"wide": {func(j *OversizeJob) {
			j.Kits[0].Pistons, j.Clearance = []tolerance.Bracket{boreAt("86.20 mm")}, boreAt("1.2 mm")
		}, "a hundredth of the bore"},
		"liner":       {func(j *OversizeJob) { j.Liner.Outside = 80 * units.Millimetre }, "liner, outside"},
		"liner price": {func(j *OversizeJob) { j.Liner.Price = PriceOf(mostCoins + 1) }, "liner, price"},
		"boring":      {func(j *OversizeJob) { j.Boring = PriceOf(-1) }, "boring, price"},
		"wall":        {func(j *OversizeJob) { j.Bores[0].Walls[0].Wear = boreAt("50 mm") }, "less than a quarter"},
	} {
		j := block("0.1 mm")
		c.change(&j)
		_, err := ChooseOversize(&j)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	j := block("0.1 mm")
	j.Bores[0].Surface = PlatedBore
	_, err := ChooseOversize(&j)
	require.ErrorIs(t, err, ErrProcess)
}

func TestLadder(t *testing.T) {
	var names []string
	for _, k := range append(Ladder(units.InMillimetres, MetricSteps()...), Ladder(units.InInches, InchSteps()...)...) {
		names = append(names, k.Name)
	}
	require.Equal(t, []string{"+0.25 mm", "+0.50 mm", "+0.75 mm", "+1.00 mm", "+.010 in", "+.020 in", "+.030 in", "+.040 in"}, names)
	require.Equal(t, "+0.125 mm", Ladder(units.InMillimetres, boreLen("0.125 mm"))[0].Name)
	require.Equal(t, boreLen("5.7610 in"), KitSize(boreLen("5.7510 in"), InchSteps()[0]), "the manual's ladder: each step adds exactly its 0.010 in")
}

var (
	boreLength units.Length
	boreChoice OversizeChoice
)
