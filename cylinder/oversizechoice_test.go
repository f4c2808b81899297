package cylinder

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
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

// Walls: what a shift takes from each, by hand; and a bar that breaks through.
func TestWallsLeft(t *testing.T) {
	b := WornBore{Finished: 86 * units.Millimetre, Sonic: []SonicWall{
		{Where: "thrust", Heading: thrust, Wall: boreAt("4.00 mm"), Wear: boreAt("0.10 mm")},
		{Where: "other", Heading: other, Wall: boreAt("3.50 mm"), Wear: boreAt("0 mm")},
		{Where: "front", Heading: 0, Wall: boreAt("5.0 ±0.1 mm")},
		{Where: "corner", Heading: 45 * units.Degree, Wall: boreAt("5 mm"), Wear: boreAt("0 mm")},
	}}
	left, err := WallsLeft(&b, BoreCentre{Y: boreLen("0.05 mm")}, boreAt("86.18 mm"))
	require.NoError(t, err)
	require.Equal(t, WallLeft{"thrust", boreAt("0.04 mm"), boreAt("3.96 mm")}, left[0])
	require.Equal(t, WallLeft{"other", boreAt("0.04 mm"), boreAt("3.46 mm")}, left[1])
	require.Equal(t, boreLen("0.04 mm"), WallCut(boreLen("86.18 mm"), b.Finished, boreLen("0.05 mm"), boreLen("0.10 mm")))
	// Square to the shift the sag is 0.05²/86 = 29 nm.
	lo, hi := bothOf(left[2].Cut)
	require.InDelta(t, 0.09-0.05*0.05/2/43.09, hi.Float(units.InMillimetres), 2e-9)
	require.LessOrEqual(t, hi-lo, units.Length(1))
	// At 45°: 0.09 + 0.05/√2 less half the sag.
	lo, _ = bothOf(left[3].Cut)
	require.InDelta(t, 0.09+0.05/1.4142135623730951-0.05*0.05/4/43.09, lo.Float(units.InMillimetres), 3e-9)

	// On the original axis every heading is exact.
	left, err = WallsLeft(&b, BoreCentre{}, boreAt("86.18 mm"))
	require.NoError(t, err)
	require.Equal(t, boreAt("0.09 mm"), left[3].Cut)
	require.Equal(t, boreAt("0 mm"), left[0].Cut, "worn beyond the new bore already")

	size, where, ok, err := LargestByWall(&b, BoreCentre{}, 3*units.Millimetre)
	require.NoError(t, err)
	require.True(t, ok)
	require.Equal(t, "other", where)
	require.Equal(t, boreLen("87 mm"), size)
	size, where, _, err = LargestByWall(&b, BoreCentre{Y: boreLen("0.3 mm")}, 3*units.Millimetre)
	require.NoError(t, err)
	require.Equal(t, "thrust", where, "4 + 0.10 − 3 − 0.3 = 0.8 per side, and 0.8 at the other")
	require.Equal(t, boreLen("87.6 mm"), size)
	_, _, ok, err = LargestByWall(&WornBore{Finished: 1}, BoreCentre{}, 0)
	require.NoError(t, err)
	require.False(t, ok)

	bad := b
	bad.Finished = 0
	for _, f := range []func() error{
		func() error { _, err := WallsLeft(&bad, BoreCentre{}, boreAt("86 mm")); return err },
		func() error { _, err := WallsLeft(&b, BoreCentre{}, boreAt("0 mm")); return err },
		func() error { _, err := WallsLeft(&b, BoreCentre{X: boreLen("30 mm")}, boreAt("86 mm")); return err },
		func() error { _, _, _, err := LargestByWall(&bad, BoreCentre{}, 0); return err },
		func() error { _, _, _, err := LargestByWall(&b, BoreCentre{}, -1); return err },
	} {
		require.ErrorIs(t, f(), ErrInput)
	}
	bad = b
	bad.Sonic = []SonicWall{{}}
	_, _, _, err = LargestByWall(&bad, BoreCentre{}, 0)
	require.ErrorIs(t, err, ErrInput)
	_, err = WallsLeft(&bad, BoreCentre{}, boreAt("86 mm"))
	require.ErrorIs(t, err, ErrInput)

	// The largest size by the wall leaves just that wall, at any centre.
	r := rand.New(rand.NewPCG(15, 1))
	for range 300 {
		b := WornBore{Finished: 86 * units.Millimetre}
		for range 1 + r.IntN(6) {
			b.Sonic = append(b.Sonic, SonicWall{Heading: units.Angle(r.IntN(72)) * 5 * units.Degree,
				Wall: tolerance.Exactly(units.Length(3e9 + r.Int64N(3e9))), Wear: tolerance.Exactly(units.Length(r.Int64N(2e8)))})
		}
		c := BoreCentre{units.Length(r.Int64N(2e8) - 1e8), units.Length(r.Int64N(2e8) - 1e8)}
		least := 2 * units.Millimetre
		size, _, _, err := LargestByWall(&b, c, least)
		require.NoError(t, err)
		left, err := WallsLeft(&b, c, tolerance.Exactly(size))
		require.NoError(t, err)
		thinnest := units.Length(1 << 60)
		for _, w := range left {
			lo, _ := bothOf(w.Left)
			thinnest = min(thinnest, lo)
		}
		require.InDelta(t, float64(least), float64(thinnest), 3)
	}
}

func TestChooseOversize_walls(t *testing.T) {
	j := block("0.10 mm")
	j.Plan.LeastWall = 3 * units.Millimetre
	j.Bores[0].Sonic = []SonicWall{{Where: "front", Heading: 0, Wall: boreAt("3.20 mm"), Wear: boreAt("0 mm")}}
	c := choose(t, j)
	require.Equal(t, OversizeLiner, c.Outcome, "+0.50 leaves 2.95")
	require.Equal(t, tolerance.Below, c.Bores[0].Fits[1].WallStands)
	require.Equal(t, boreAt("2.95 mm"), c.Bores[0].Fits[1].Wall)
	require.Equal(t, "front", c.Bores[0].Fits[1].WallAt)
	j.Plan.Centring = MovedToBore
	c = choose(t, j)
	require.Equal(t, "+0.25 mm", c.Kits[c.Kit].Name)

	// More oversize than wall: bored through.
	j.Plan.LeastWall = 0
	j.Bores[0].Sonic[0].Wall = boreAt("0.12 mm")
	require.Equal(t, OversizeLiner, choose(t, j).Outcome)

	// The wall's own doubt.
	j.Plan.LeastWall = 3 * units.Millimetre
	j.Bores[0].Sonic[0].Wall = boreAt("3.12 ±0.05 mm")
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "read its walls more closely")
	// A moved bar of which the place isn't known.
	j.Bores[0].Sonic[0].Wall = boreAt("5 mm")
	j.Bores[0].Walls, j.Bores[0].Greatest = nil, boreAt("86.01 mm")
	require.Contains(t, choose(t, j).Settle, "dial where the bar stands")

	// The maker's largest bore.
	j = block("0.10 mm")
	j.Plan.LargestBore = boreLen("86.30 mm")
	c = choose(t, j)
	require.Equal(t, OversizeLiner, c.Outcome)
	require.Len(t, c.Options, 1, "nothing larger may be bored at all")
	j.Plan.LargestBore = boreLen("86.50 mm")
	require.Equal(t, OversizeKit, choose(t, j).Outcome)
	j.Clearance = boreAt("0.05 mm")
	j.Kits[1].Pistons = []tolerance.Bracket{boreAt("86.45 ±0.002 mm")}
	c = choose(t, j)
	require.Equal(t, OversizeUndecided, c.Outcome)
	require.Contains(t, c.Settle, "the largest bore allowed lies within what is known")

	// Walls too thin for a liner.
	j = block("0.10 mm", "0.60 mm")
	j.Liner.Outside = boreLen("90 mm")
	j.Plan.LeastWall = 2 * units.Millimetre
	j.Bores[1].Sonic = []SonicWall{{Where: "front", Heading: 0, Wall: boreAt("3.5 mm"), Wear: boreAt("0 mm")}}
	require.Equal(t, tolerance.Below, choose(t, j).Options[0].LinersStand)
	j.Bores[1].Sonic[0].Wall = boreAt("4.5 mm")
	require.Equal(t, tolerance.Within, choose(t, j).Options[0].LinersStand)
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

// Bore bands: the edges by hand, and every size within serves every skirt.
func TestBoreBand(t *testing.T) {
	for _, c := range []struct{ skirt, clearance, want string }{
		{"85.95 ±0.002 mm", "0.04–0.06 mm", "85.992–86.008 mm"},
		{"85.95 mm", "0.05–0.05 mm", "86–86 mm"},
		{"85.95 ±0.002 mm", "max 0.06 mm", "max 86.008 mm"},
		{"85.95 ±0.002 mm", "min 0.04 mm", "min 85.992 mm"},
		{"85.95 ±0.02 mm", "0.04–0.06 mm", ""},
		{"[85.95 mm, ∞)", "0.04–0.06 mm", ""},
		{"[85.95 mm, ∞)", "max 0.06 mm", "max 86.01 mm"},
	} {
		band, ok := BoreBand(boreAt(c.skirt), tolerance.MustParseBand(c.clearance))
		require.Equal(t, c.want != "", ok, "%v", c)
		if ok {
			require.Equal(t, tolerance.MustParseBand(c.want), band)
		}
	}
	_, ok := BoreBand(boreAt("85 mm"), tolerance.Band{})
	require.False(t, ok)
	// An open skirt stands on no end, so the bore may.
	band, ok := BoreBand(boreAt("(85.94 mm, 85.96 mm)"), tolerance.MoreThan(boreLen("0.04 mm")))
	require.True(t, ok)
	require.Equal(t, tolerance.AtLeast(boreLen("86 mm")), band)
}

// By hand: an alloy piston at 30 °C, 19.4e-6, measures 85.95; at 20 °C it is
// 85.95/1.000194 = 85.933329; with 0.05, 85.983329 mm; an iron block at 26 °C,
// 11.4e-6, must then show 85.983329 × 1.0000684 = 85.989210 mm.
func TestFinishSizes(t *testing.T) {
	p := FinishPlan{
		Skirts: []tolerance.Bracket{boreAt("85.95 mm"), boreAt("85.96 ±0.001 mm")}, Clearance: boreLen("0.05 mm"), Honing: boreLen("0.06 mm"),
		Pistons: instrument.At(units.MustParseTemperature("30 °C"), 0, 19.4e-6, 0),
		Block:   instrument.At(units.MustParseTemperature("26 °C"), 0, 11.4e-6, 0),
	}
	s, err := FinishSizes(p)
	require.NoError(t, err)
	near := func(want float64, b tolerance.Bracket) {
		lo, hi := bothOf(b)
		require.InDelta(t, want, lo.Float(units.InMillimetres), 6e-7)
		require.InDelta(t, want, hi.Float(units.InMillimetres), 6e-7)
	}
	near(85.933329, s[0].Skirt)
	near(85.983329, s[0].Finish)
	near(85.923329, s[0].Rough)
	near(85.989210, s[0].FinishNow)
	near(85.929206, s[0].RoughNow)
	// At 20 °C all is exact, and now is the same.
	p.Pistons, p.Block = instrument.Thermal{}, instrument.Thermal{}
	s, err = FinishSizes(p)
	require.NoError(t, err)
	require.Equal(t, FinishSize{boreAt("85.95 mm"), boreAt("86 mm"), boreAt("85.94 mm"), boreAt("86 mm"), boreAt("85.94 mm")}, s[0])
	require.Equal(t, boreAt("[86.009 mm, 86.011 mm]"), s[1].Finish)

	for name, c := range map[string]struct {
		change func(*FinishPlan)
		want   string
	}{
		"no skirt":   {func(p *FinishPlan) { p.Skirts = nil }, "skirts (none)"},
		"skirt":      {func(p *FinishPlan) { p.Skirts = []tolerance.Bracket{boreAt("0 mm")} }, "skirt 1"},
		"clearance":  {func(p *FinishPlan) { p.Clearance = -1 }, "clearance"},
		"hone":       {func(p *FinishPlan) { p.Honing = -1 }, "honing stock"},
		"unit":       {func(p *FinishPlan) { p.Clearance = 20 * units.Millimetre }, "is all in its right unit?"},
		"piston hot": {func(p *FinishPlan) { p.Pistons.PerKelvin = 19.4 }, "coefficient"},
		"block hot":  {func(p *FinishPlan) { p.Block.PerKelvin = 11.4 }, "coefficient"},
	} {
		p := p
		c.change(&p)
		_, err := FinishSizes(p)
		require.ErrorContains(t, err, c.want, name)
	}
}

// The generic formulas hold every case of their brackets, and allocate nothing.
func TestBoreFormulas_brackets(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 1))
	draw := func(lo int64) (tolerance.Bracket, units.Length) {
		a, w := lo+r.Int64N(1e9), r.Int64N(1e6)
		return boreSpan(units.Length(a), units.Length(a+w)), units.Length(a + r.Int64N(w+1))
	}
	for range 1000 {
		d, dx := draw(86e9)
		w, wx := draw(0)
		v, vx := draw(0)
		c, cx := draw(0)
		h, hx := draw(0)
		require.True(t, LeastSizeOnAxis(d, w, c, h).Contains(LeastSizeOnAxis(dx, wx, cx, hx)))
		require.True(t, LeastSizeMoved(d, w, v, c, h).Contains(LeastSizeMoved(dx, wx, vx, cx, hx)))
		require.True(t, BoreShift(w, v).Contains(BoreShift(wx, vx)))
		require.True(t, WallCut(d, d, w, v).Contains(WallCut(dx, dx, wx, vx)))
		require.True(t, SizeForWallCut(c, d, w, v).Contains(SizeForWallCut(cx, dx, wx, vx)))
		require.True(t, TaperPer(w, d, h).Contains(TaperPer(wx, dx, hx)))
		lo, hi := LeastSizeByDiameters(d, d.Add(w), c, h)
		x, y := LeastSizeByDiameters(dx, dx+wx, cx, hx)
		require.True(t, lo.Contains(x) && hi.Contains(y))
	}
	d, w := 86*units.Millimetre, units.Millimetre
	require.Zero(t, testing.AllocsPerRun(100, func() { boreLength = LeastSizeOnAxis(d, w, w, w) + LeastSizeMoved(d, w, w, w, w) + BoreShift(w, d) }))
}

var (
	boreLength units.Length
	boreChoice OversizeChoice
)

func BenchmarkOversize(b *testing.B) {
	d, w := 86*units.Millimetre, units.Millimetre/10
	b.Run("lib=tenthou/op=leastsize", func(b *testing.B) {
		for b.Loop() {
			boreLength = LeastSizeOnAxis(d, w, w, w)
		}
	})
	b.Run("lib=float64/op=leastsize", func(b *testing.B) {
		d, w := 86.0, 0.1
		for b.Loop() {
			boreFloats[0] = d + 2*(w+w) + w
		}
	})
	j := block("0.02 mm", "0.04 mm", "0.19 mm", "0.03 mm")
	j.Plan.Centring = MovedToBore
	b.Run("lib=tenthou/op=choice4", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			boreChoice, _ = ChooseOversize(&j)
		}
	})
	for _, n := range []int{100, 1000, 10_000} {
		r := rand.New(rand.NewPCG(18, 1))
		points := make([]wallPoint, n)
		for i := range points {
			x, y := unit(units.Angle(r.Int64N(int64(360 * units.Degree))))
			points[i] = wallPoint{x, y, float64(r.Int64N(1e8))}
		}
		b.Run("lib=tenthou/op=circle"+map[int]string{100: "100", 1000: "1000", 10_000: "10000"}[n], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				boreFloats[0] = leastCircle(43e9, points).over
			}
		})
	}
}

// FuzzBoreSurvey: whatever the readings, a report whose parts agree or an
// error.
func FuzzBoreSurvey(f *testing.F) {
	f.Add([]byte{30, 31, 28, 25, 24, 20}, int64(86_000_000_000), int64(2_000_000), int64(0), uint8(2), uint8(63), int64(50_000_000))
	f.Add([]byte{255, 0, 128}, int64(0), int64(-1), int64(3), uint8(1), uint8(5), int64(-7))
	f.Add([]byte{9, 9, 9, 9}, int64(1)<<61, int64(1)<<61, int64(1)<<60, uint8(4), uint8(0), int64(1)<<62)
	f.Fuzz(func(t *testing.T, shown []byte, ring, ringError, step int64, headings, taken uint8, limit int64) {
		n := int(headings%6) + 1
		s := BoreSurvey{Gauge: instrument.Instrument{Step: units.Length(step), Setting: instrument.Setting{Standard: units.Length(ring), Error: units.Length(ringError)}}}
		for j := range n {
			s.Headings = append(s.Headings, units.Angle(j)*25*units.Degree)
		}
		for len(shown) >= n && len(s.Levels) < 50 {
			s.Levels = append(s.Levels, BoreLevel{})
			for j := range n {
				s.Readings = append(s.Readings, BoreReading{units.Length(shown[j]) * units.Micrometre, taken>>(j%8)&1 == 1})
			}
			shown = shown[n:]
		}
		l := BoreLimits{Size: tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))}, OutOfRound: tolerance.Spec{Wear: tolerance.AtMost(units.Length(limit))}}
		var r BoreReport
		if err := s.Inspect(&l, &r); err != nil {
			return
		}
		least, _ := bothOf(r.Least.Size)
		_, greatest := bothOf(r.Greatest.Size)
		lo, hi := bothOf(r.Mean)
		require.True(t, least <= lo && lo <= hi && hi <= greatest, "%v %v %v", r.Least.Size, r.Mean, r.Greatest.Size)
		for _, m := range BoreMeasures() {
			if f, err := s.Finding(&l, &r, m); err == nil {
				require.Equal(t, r.Standing[m], f.Standing)
			}
		}
		for _, note := range r.Notes {
			require.NotEmpty(t, note.Text(&s))
		}
		if r.Worst(&l) != tolerance.CantTell {
			require.False(t, l.Size.IsZero() && l.OutOfRound.IsZero())
		}
	})
}
