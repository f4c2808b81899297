package valvetrain

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// shimOne is a valve that needs a shim from 2.6 to 2.65 mm.
func shimOne() ShimHead {
	return ShimHead{Valves: []ShimValve{{Where: "inlet 1", Measured: stemAt("[0.30 mm, 0.35 mm)"), Shim: stemAt("2.50 mm"), Wanted: tolerance.MustParseBand("0.15–0.25 mm")}}, Set: feeler.Metric20()}
}

func TestShimWindow(t *testing.T) {
	h := shimOne()
	w, ok := h.Valves[0].Window()
	require.True(t, ok)
	require.Equal(t, stemAt("[2.6 mm, 2.65 mm]"), w)
	require.Equal(t, stemAt("[2.60 mm, 2.65 mm)"), h.Valves[0].Ideal(), "0.20 from 0.30 up to 0.35")
	for _, spoil := range []func(*ShimValve){
		func(v *ShimValve) { v.Measured = stemAt("[0.30 mm, ∞)") }, func(v *ShimValve) { v.Shim = tolerance.Bracket{} },
		func(v *ShimValve) { v.Measured = stemAt("[0.30 mm, 0.45 mm)") }, func(v *ShimValve) { v.Ratio.Num = -1 },
		func(v *ShimValve) { v.Wanted = tolerance.Band{} }, func(v *ShimValve) { v.Shim = stemAt("0.001 mm"); v.Measured = stemAt("0.1 mm") },
	} {
		v := shimOne().Valves[0]
		spoil(&v)
		_, ok := v.Window()
		require.False(t, ok)
	}
}

// What stays open is named, with what would settle it.
func TestShimUnsure(t *testing.T) {
	series := func(sizes ...string) (list []ShimPiece) {
		for _, s := range sizes {
			list = append(list, ShimPiece{s, stemAt(s)})
		}
		return list
	}
	for _, c := range []struct {
		name   string
		change func(*ShimHead)
		doubt  ShimDoubt
		fitted bool
		blade  string
		sure   bool
		says   string
	}{
		{"no upper end", func(h *ShimHead) { h.Valves[0].Measured = stemAt("[0.40 mm, ∞)") }, NoUpperEnd, false, "0.45 mm", false, "until one is refused"},
		{"no thicker blade", func(h *ShimHead) { h.Valves[0].Measured = stemAt("[1.00 mm, ∞)") }, NoUpperEnd, false, "", false, "lay blades together"},
		{"no lower end", func(h *ShimHead) { h.Valves[0].Measured = stemAt("[0 mm, 0.10 mm)") }, NoLowerEnd, false, "0.05 mm", false, "holding the valve open"},
		{"no thinner blade", func(h *ShimHead) { h.Valves[0].Measured = stemAt("[0 mm, 0.05 mm)") }, NoLowerEnd, false, "", false, "thinner by 0.200 mm"},
		{"nor any known", func(h *ShimHead) { h.Valves[0].Measured = stemAt("(-∞, 0.05 mm)") }, NoLowerEnd, false, "", false, "measure again"},
		{"held open through a finger", func(h *ShimHead) {
			h.Valves[0].Measured, h.Valves[0].Ratio = stemAt("[0 mm, 0.05 mm)"), tolerance.Ratio{Num: 1, Den: 2}
		}, NoLowerEnd, false, "", false, "thinner by 0.400 mm"},
		{"not measured", func(h *ShimHead) { h.Valves[0].Shim = tolerance.Bracket{} }, ShimNotMeasured, false, "", false, "micrometer"},
		{"too wide, one blade settles it", func(h *ShimHead) {
			h.Valves[0].Measured, h.Series = stemAt("[0.30 mm, 0.45 mm)"), series("2.60 mm", "2.70 mm")
		}, BracketTooWide, false, "0.35 mm", true, "try 0.35 mm"},
		{"too wide, one helps", func(h *ShimHead) { h.Valves[0].Measured = stemAt("[0.20 mm, 0.35 mm)") }, BracketTooWide, false, "0.25 mm", false, "too roughly"},
		{"too wide, two together", func(h *ShimHead) {
			h.Valves[0].Measured = stemAt("[0.30 mm, 0.42 mm)")
			h.Set = shimBlades("0.10 mm", "0.25 mm", "0.50 mm")
		}, BracketTooWide, false, "0.25 mm + 0.10 mm together", false, "together"},
		{"too wide, no blade", func(h *ShimHead) {
			h.Valves[0].Measured, h.Set = stemAt("[0.30 mm, 0.42 mm)"), feeler.Set{}
		}, BracketTooWide, false, "", false, "no blade of the set"},
		{"none at all", func(*ShimHead) {}, NoShimSuits, false, "", false, "no sizes to buy are given"},
		{"series ends", func(h *ShimHead) { h.Series = series("2.50 mm", "2.55 mm") }, NoShimSuits, false, "", false, "the series ends at 2.55 mm"},
		{"series begins", func(h *ShimHead) { h.Series = series("2.75 mm", "2.70 mm") }, NoShimSuits, false, "", false, "the series begins at 2.70 mm"},
		{"series has a gap", func(h *ShimHead) { h.Series = series("2.70 mm", "2.55 mm", "2.50 mm", "2.75 mm") }, NoShimSuits, false, "", false, "none between 2.55 mm and 2.70 mm"},
		{"a finer reading lets one at hand suit", func(h *ShimHead) {
			h.Series, h.Set = series("2.57 mm", "2.66 mm"), shimBlades("0.32 mm")
		}, NoShimSuits, false, "0.32 mm", true, "known more closely"},
		{"may be in band", func(h *ShimHead) {
			h.Valves[0].Measured, h.Series = stemAt("[0.10 mm, 0.20 mm)"), series("2.45 mm")
		}, OnBothSides, true, "0.15 mm", true, "before the shim is touched"},
		// A blade at a greatest limit that goes in leaves the limit itself open.
		{"may be in band at the limit alone", func(h *ShimHead) {
			h.Valves[0].Measured, h.Series = stemAt("[0.20 mm, 0.30 mm)"), series("2.55 mm")
		}, OnBothSides, true, "0.25 mm", false, "before the shim is touched"},
		{"may be in band, no blade tells", func(h *ShimHead) {
			h.Valves[0].Measured, h.Series, h.Set = stemAt("[0.20 mm, 0.30 mm)"), series("2.55 mm"), feeler.Set{}
		}, OnBothSides, true, "", false, "no blade of the set tells"},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := shimOne()
			c.change(&h)
			p, err := PlanShims(h)
			require.NoError(t, err)
			require.Len(t, p.Undecided, 1)
			u := p.Undecided[0]
			require.Equal(t, c.doubt, u.Doubt)
			require.Equal(t, c.fitted, u.Fitted)
			require.Equal(t, c.blade, u.Blade)
			require.Equal(t, c.sure, u.Sure)
			require.Contains(t, u.Settle, c.says)
			require.Equal(t, c.fitted, p.Moves[0].Then == tolerance.Within)
			require.Equal(t, c.doubt == NoShimSuits || c.fitted, !u.Needed.IsZero())
		})
	}
}

func shimBlades(marks ...string) feeler.Set {
	var blades []feeler.Blade
	for _, m := range marks {
		blades = append(blades, feeler.MustBlade(m))
	}
	set, err := feeler.NewSet("own", "test", blades...)
	if err != nil {
		panic(err)
	}
	return set
}

// Two valves that trade shims, and a tie that takes the thinner shim.
func TestShimTrade(t *testing.T) {
	band := tolerance.MustParseBand("0.20–0.30 mm")
	h := ShimHead{Valves: []ShimValve{
		{Where: "a", Measured: stemAt("0.35 mm"), Shim: stemAt("2.50 mm"), Wanted: band},
		{Where: "b", Measured: stemAt("0.15 mm"), Shim: stemAt("2.60 mm"), Wanted: band},
	}}
	p, err := PlanShims(h)
	require.NoError(t, err)
	require.Equal(t, 2, p.InBand)
	require.Zero(t, p.Bought)
	require.Empty(t, p.Left)
	require.Equal(t, [2]int{1, 0}, [2]int{p.Moves[0].From, p.Moves[1].From})
	require.Zero(t, p.Off)
	require.Equal(t, "a: the shim out of b", p.Moves[0].Text(&h))

	h = ShimHead{Valves: h.Valves[:1], Series: []ShimPiece{{"2.62 mm", stemAt("2.62 mm")}, {"2.58 mm", stemAt("2.58 mm")}}, Drawer: []ShimPiece{{"odd", stemAt("9 mm")}}}
	p, err = PlanShims(h)
	require.NoError(t, err)
	require.Equal(t, 1, p.Moves[0].From, "as near on both sides: the thinner")
	require.Equal(t, stemLen("0.02 mm"), p.Greatest)
	require.Equal(t, []ShimBuy{{1, 1}}, p.Buy)
	require.Equal(t, []ShimLeft{{From: 0}, {From: 0, Spare: true}}, p.Left)
	require.Equal(t, "a: 2.58 mm, to buy", p.Moves[0].Text(&h))
}

func TestShimWords(t *testing.T) {
	h := ShimHead{Valves: []ShimValve{{Where: "a"}}, Drawer: []ShimPiece{{Name: "d"}}}
	for m, want := range map[ShimMove]string{
		{Where: "a"}:                                     "a: not settled, keeps its shim",
		{Where: "a", Action: ShimStays}:                  "a: stays as it is",
		{Where: "a", Action: ShimFromDrawer}:             "a: d from the drawer",
		{Where: "a", Action: ShimFromValve, From: 7}:     "a: the shim out of ?",
		{Where: "a", Action: ShimToBuy, From: -1}:        "a: ?, to buy",
		{Where: "a", Action: ShimAction(99)}:             "a: not settled, keeps its shim",
		{Where: "a", Action: ShimFromDrawer, From: 1000}: "a: ? from the drawer",
	} {
		require.Equal(t, want, m.Text(&h))
	}
	for a := ShimStaysOpen; a <= ShimToBuy; a++ {
		text, err := json.Marshal(a)
		require.NoError(t, err)
		var back ShimAction
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, a, back)
	}
	for d := NoShimDoubt; d <= OnBothSides; d++ {
		text, err := json.Marshal(d)
		require.NoError(t, err)
		var back ShimDoubt
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, d, back)
	}
	var a ShimAction
	var d ShimDoubt
	require.ErrorIs(t, a.UnmarshalText([]byte("borrow")), ErrInput)
	require.ErrorIs(t, d.UnmarshalText([]byte("unsure")), ErrInput)
	require.Equal(t, "(99)", ShimAction(99).String())
}

func TestShimSeries(t *testing.T) {
	s, err := NewShimSeries(stemLen("2.50 mm"), stemLen("2.60 mm"), stemLen("0.025 mm"), stemLen("0.005 mm"))
	require.NoError(t, err)
	require.Len(t, s, 5)
	require.Equal(t, ShimPiece{"2.575 mm", stemAt("2.575 ±0.005 mm")}, s[3])
	gaps, err := ShimGaps(s)
	require.NoError(t, err)
	require.Empty(t, gaps)
	gaps, err = ShimGaps([]ShimPiece{s[4], s[0], s[3]})
	require.NoError(t, err)
	require.Len(t, gaps, 1)
	require.Equal(t, "between 2.5 mm and 2.575 mm, where 2 sizes would stand", gaps[0].String())
	gaps, err = ShimGaps([]ShimPiece{s[0], s[1], s[2], s[4]})
	require.NoError(t, err)
	require.Equal(t, "between 2.55 mm and 2.6 mm, where 1 size would stand", gaps[0].String())
	gaps, err = ShimGaps(nil)
	require.NoError(t, err)
	require.Empty(t, gaps)
	_, err = ShimGaps([]ShimPiece{s[0], s[0]})
	require.ErrorContains(t, err, "only once")
	_, err = ShimGaps([]ShimPiece{{}})
	require.ErrorContains(t, err, "shim size 1")
	for _, bad := range [][4]string{
		{"0 mm", "1 mm", "0.1 mm", "0 mm"}, {"1 mm", "60 mm", "1 mm", "0 mm"}, {"2 mm", "1 mm", "0.1 mm", "0 mm"}, {"1 mm", "2 mm", "0 mm", "0 mm"},
		{"1 mm", "2 mm", "0.3 mm", "0 mm"}, {"1 mm", "2 mm", "0.001 mm", "0 mm"}, {"1 mm", "2 mm", "0.1 mm", "-1 mm"}, {"1 mm", "2 mm", "0.1 mm", "1 mm"},
	} {
		_, err := NewShimSeries(stemLen(bad[0]), stemLen(bad[1]), stemLen(bad[2]), stemLen(bad[3]))
		require.ErrorIs(t, err, ErrInput)
	}
	for _, bad := range []struct {
		wanted units.Length
		sizes  []ShimPiece
	}{{0, s}, {units.Millimetre, nil}, {units.Millimetre, []ShimPiece{{"x", stemAt("-1 mm")}}}, {units.Millimetre, []ShimPiece{{"x", stemAt("51 mm")}}}} {
		_, err := NearestShim(bad.wanted, bad.sizes)
		require.ErrorIs(t, err, ErrInput)
	}
}

func TestShimRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*ShimHead)
		says  string
	}{
		{func(h *ShimHead) { h.Valves = nil }, "valves of the head"},
		{func(h *ShimHead) { h.Valves = make([]ShimValve, 65) }, "valves of the head"},
		{func(h *ShimHead) { h.Drawer = make([]ShimPiece, 257) }, "drawer"},
		{func(h *ShimHead) { h.Series = make([]ShimPiece, 513) }, "series"},
		{func(h *ShimHead) { h.Drawer = []ShimPiece{{"", stemAt("[2 mm, ∞)")}} }, "shim in the drawer 1"},
		{func(h *ShimHead) { h.Series = []ShimPiece{{strings.Repeat("x", 99), stemAt("-2 mm")}} }, "xxx…"},
		{func(h *ShimHead) { h.Valves[0].Measured = stemAt("11 mm") }, "inlet 1: measured clearance"},
		{func(h *ShimHead) { h.Valves[0].Where, h.Valves[0].Shim = "", stemAt("-1 mm") }, "valve 1: shim"},
		{func(h *ShimHead) { h.Valves[0].Wanted = tolerance.MustParseBand("0–0.2 mm") }, "above 0 mm"},
		{func(h *ShimHead) { h.Valves[0].Aim = units.Millimetre }, "clearance aimed at"},
		{func(h *ShimHead) { h.Valves[0].Ratio = tolerance.Ratio{Num: 1, Den: 1000} }, "ratio of blade to shim"},
		{func(h *ShimHead) { h.Valves[0].Measured = stemAt("99 m").Scale(1000000, 1) }, "measured clearance"},
	} {
		h := shimOne()
		c.spoil(&h)
		_, err := PlanShims(h)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
	require.Equal(t, ErrInput, shimField("x", ErrInput))
}

// So many valves in so wide a band that costs can't add up exactly are refused.
func TestShimBeyond(t *testing.T) {
	var h ShimHead
	h.Disturb = true
	for i := range 64 {
		h.Valves = append(h.Valves, ShimValve{Measured: tolerance.Exactly(units.Length(i)*100*units.Micrometre + 600*units.Micrometre), Shim: stemAt("20 mm"), Wanted: tolerance.MustParseBand("0.5–9.5 mm"), Aim: stemLen("0.5 mm")})
	}
	_, err := PlanShims(h)
	require.ErrorIs(t, err, ErrInput)
	require.ErrorContains(t, err, "beyond exact planning")
	h.Valves = h.Valves[:24]
	_, err = PlanShims(h)
	require.NoError(t, err)
}

// A plan is plain data that encodes.
func TestShimPlanJSON(t *testing.T) {
	h := shimOne()
	h.Valves = append(h.Valves, ShimValve{Where: "loose", Measured: stemAt("[0.40 mm, ∞)"), Wanted: h.Valves[0].Wanted})
	h.Series = []ShimPiece{{"2.62 mm", stemAt("2.62 mm")}}
	p, err := PlanShims(h)
	require.NoError(t, err)
	text, err := json.Marshal(p)
	require.NoError(t, err)
	require.Contains(t, string(text), `"action":"to buy"`)
	var back ShimPlan
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, p, back)
}

func FuzzShimPlan(f *testing.F) {
	f.Add("[0.30 mm, 0.35 mm)", "2.50 mm", "0.15–0.25 mm", "2.62 mm", int64(3), int64(2), true)
	f.Add("[0 mm, 0.05 mm)", "2.50 ±0.01 mm", "0.2–0.3 mm", "2.4 mm", int64(0), int64(0), false)
	f.Fuzz(func(t *testing.T, measured, shim, wanted, size string, num, den int64, disturb bool) {
		m, err1 := tolerance.ParseBracket(measured)
		s, err2 := tolerance.ParseBracket(shim)
		w, err3 := tolerance.ParseBand(wanted)
		z, err4 := tolerance.ParseBracket(size)
		if err1 != nil || err2 != nil || err3 != nil || err4 != nil {
			return
		}
		v := ShimValve{Where: "v", Measured: m, Shim: s, Wanted: w, Ratio: tolerance.Ratio{Num: num, Den: den}}
		h := ShimHead{Valves: []ShimValve{v, v}, Series: []ShimPiece{{size, z}}, Drawer: []ShimPiece{{shim, s}}, Disturb: disturb, Set: feeler.Metric20()}
		p, err := PlanShims(h)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		require.Equal(t, len(h.Valves)-p.InBand, func() (n int) {
			for _, u := range p.Undecided {
				if !u.Fitted {
					n++
				}
			}
			return n
		}())
		for i, move := range p.Moves {
			require.Equal(t, h.Valves[i].Wanted.Judge(move.After), move.Then)
			_ = move.Text(&h)
		}
	})
}

// A valve at which no blade was tried isn't one that took every blade.
func TestShimNothingTried(t *testing.T) {
	for _, clearance := range []string{"[0 mm, ∞)", "(-∞, ∞)", "[0.3 mm, ∞)"} {
		h := ShimHead{Set: feeler.Metric20(), Valves: []ShimValve{{
			Where: "inlet 1", Measured: stemAt(clearance), Wanted: tolerance.MustParseBand("0.15–0.25 mm"), Shim: stemAt("2.5 mm"),
		}}}
		p, err := PlanShims(h)
		require.NoError(t, err)
		require.Len(t, p.Undecided, 1)
		require.Equal(t, NoUpperEnd, p.Undecided[0].Doubt)
		want := "no blade was tried: try "
		if strings.HasPrefix(clearance, "[0.3") {
			want = "every blade tried went in: try "
		}
		require.Contains(t, p.Undecided[0].Settle, want)
	}
}
