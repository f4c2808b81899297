package valvetrain

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func springOuter() Spring {
	return Spring{Where: "exhaust 3, outer", Form: Cylindrical, Free: stemAt("46.0 ±0.1 mm"), OffSquare: stemAt("0.8 mm"),
		Readings:  []SpringReading{{stemAt("30 mm"), springN("700 ±5 N")}, {stemAt("40 mm"), springN("250 ±5 N")}},
		Coil:      SpringCoil{Ends: SquaredGround, Wire: stemAt("4 ±0.02 mm"), Outside: stemAt("30 mm"), Total: tolerance.Ratio{Num: 13, Den: 2}, ShearMPa: 79300},
		Installed: stemAt("38 ±0.1 mm"), Lift: stemAt("10 mm"),
		FreeLimits: stemWorn("min 45 mm"), SquareLimits: stemWorn("max 1.5 mm"), BindLimits: stemWorn("min 1 mm"),
		SeatLimits: springWear("min 300 N"), OpenLimits: springWear("min 750 N")}
}

// By hand: the line through 700 at 30 and 250 at 40 falls by 45 N/mm: 340 at 38
// and 790 at 28. Solid 6 wires of 3.98 to 6.5 of 4.02: 23.88 to 26.13; margin 38 −
// 10 − solid: 1.77 to 4.22.
func TestSpringInspect(t *testing.T) {
	r, err := springOuter().Inspect()
	require.NoError(t, err)
	m, _ := r.Rate.Middle()
	require.InDelta(t, 45, m.Float(units.InNewtonsPerMillimetre), 1e-9)
	require.True(t, r.SeatLoad.Least.Contains(340*units.Newton))
	require.True(t, r.OpenLoad.Least.Contains(790*units.Newton))
	require.Equal(t, stemAt("[23.88 mm, 26.13 mm]"), r.Solid)
	require.Equal(t, stemAt("[1.77 mm, 4.22 mm]"), r.Bind.Least)
	require.Equal(t, tolerance.Usable, r.Bind.Standing)
	require.Len(t, r.Notes, 1)
	require.False(t, r.RateByCoil.IsZero())
	require.Contains(t, r.Next, "none")

	for name, c := range map[string]struct {
		change func(*Spring)
		says   string
	}{
		"short":        {func(s *Spring) { s.Free = stemAt("44 mm") }, "renew the spring"},
		"leaning":      {func(s *Spring) { s.OffSquare = stemAt("1.6 mm") }, "renew the spring"},
		"little left":  {func(s *Spring) { s.Solid = stemAt("27.2 mm") }, "don't run it"},
		"bind unknown": {func(s *Spring) { s.Lift = stemAt("11 ±0.5 mm") }, "more finely"},
		"may bind":     {func(s *Spring) { s.Lift, s.BindLimits = stemAt("12 mm"), tolerance.Spec{} }, "isn't excluded"},
		"weak":         {func(s *Spring) { s.SeatLimits = springWear("min 400 N") }, "installed height"},
		"weak by itself": {func(s *Spring) {
			s.ReadingLimits = []tolerance.SpecOf[units.Force]{springWear("min 750 N"), {}}
		}, "no shim makes good"},
		"one reading": {func(s *Spring) { s.Readings = s.Readings[:1] }, "two heights"},
		"undecided":   {func(s *Spring) { s.SeatLimits = springWear("min 341 N") }, "341 N"},
		"measured solid": {func(s *Spring) {
			s.Solid, s.Form, s.Coil = stemAt("26.5 mm"), Progressive, SpringCoil{}
			s.Readings[0] = SpringReading{stemAt("27 mm"), springN("840 N")}
		}, "none"},
		"no solid":   {func(s *Spring) { s.Coil = SpringCoil{} }, "none"},
		"no lift":    {func(s *Spring) { s.Lift = tolerance.Bracket{} }, "none"},
		"no height":  {func(s *Spring) { s.Installed = tolerance.Bracket{} }, "two heights"},
		"only shape": {func(s *Spring) { *s = Spring{Free: s.Free} }, "two heights"},
	} {
		s := springOuter()
		c.change(&s)
		r, err := s.Inspect()
		require.NoError(t, err, name)
		require.Contains(t, r.Next, c.says, name)
	}
}

func TestSpringRefuses(t *testing.T) {
	for _, c := range []struct {
		spoil func(*Spring)
		says  string
	}{
		{func(s *Spring) { s.Lift = stemAt("15 mm") }, "coil-bound"},
		{func(s *Spring) { s.Form = Conical; s.Coil = SpringCoil{}; s.Solid = stemAt("20 mm") }, "between the readings"},
		{func(s *Spring) { s.Form = Progressive; s.Installed = stemAt("41 mm") }, "between the readings"},
		{func(s *Spring) { s.Free = stemAt("-1 mm") }, "free length"},
		{func(s *Spring) { s.Free = stemAt("36 mm") }, "would be loose"},
		{func(s *Spring) { s.ReadingLimits = make([]tolerance.SpecOf[units.Force], 1) }, "limits of readings"},
		{func(s *Spring) { s.Readings[1].Load = springN("-5 N") }, "reading 2"},
		{func(s *Spring) { s.Readings[1].Load = springN("900 N") }, "above that"},
		{func(s *Spring) { s.Coil.Ends = UnstatedEnds }, "ends"},
		{func(s *Spring) { s.Form, s.Lift = Progressive, stemAt("7 mm"); s.Coil.Ends = UnstatedEnds }, "ends"},
		{func(s *Spring) { s.Lift = stemAt("40 mm") }, "height"},
		{func(s *Spring) { s.FreeLimits.New = tolerance.MustParseBand("min 40 mm") }, "limits of the free length"},
		{func(s *Spring) { s.SquareLimits.New = tolerance.MustParseBand("max 2 mm") }, "limits of the out of square"},
		{func(s *Spring) { s.SeatLimits.New = springBand("min 200 N").New }, "limits of the seat load"},
		{func(s *Spring) {
			s.ReadingLimits = []tolerance.SpecOf[units.Force]{{New: springBand("min 200 N").New, Wear: springBand("min 300 N").New}, {}}
		}, "limits of the load at"},
	} {
		s := springOuter()
		c.spoil(&s)
		_, err := s.Inspect()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
}

// Of three readings the pair around a height counts, of a height over a reading
// both; past them the nearest.
func TestSpringLoadAt(t *testing.T) {
	s := Spring{Form: Cylindrical, Readings: []SpringReading{{stemAt("40 mm"), springN("200 N")}, {stemAt("35 mm"), springN("400 N")}, {stemAt("30 mm"), springN("700 N")}}}
	for h, want := range map[string]string{"38 mm": "280 N", "32 mm": "580 N", "35 mm": "400 N", "42 mm": "120 N", "29 mm": "760 N", "[34 mm, 36 mm]": "[340 N, 460 N]"} {
		l, err := s.LoadAt(stemAt(h))
		require.NoError(t, err)
		require.Equal(t, springN(want), l, h)
	}
	s.Readings[1].Height = stemAt("35 ±0.5 mm")
	l, err := s.LoadAt(stemAt("35.2 mm"))
	require.NoError(t, err)
	require.False(t, l.IsZero())
	_, err = s.LoadAt(tolerance.Bracket{})
	require.ErrorIs(t, err, ErrInput)
	_, err = Spring{}.LoadAt(stemAt("30 mm"))
	require.ErrorIs(t, err, ErrInput)
	s.Readings[0].Load = LoadBracket{}
	_, err = s.LoadAt(stemAt("30 mm"))
	require.ErrorIs(t, err, ErrInput)
}

// The inner spring stands 2 mm lower: 36 closed, 26 open; 100 at 36 and 300 at 26
// join 340 and 790.
func TestSpringNest(t *testing.T) {
	outer := springOuter()
	outer.Installed = stemAt("38 mm")
	inner := Spring{Where: "exhaust 3, inner", Form: Cylindrical, Readings: []SpringReading{{stemAt("36 mm"), springN("100 N")}, {stemAt("26 mm"), springN("300 N")}}, Solid: stemAt("24 mm")}
	n := SpringNest{Where: "exhaust 3", Outer: outer, Inner: inner, Step: stemAt("2 mm"), SeatLimits: springWear("min 400 N"), OpenLimits: springWear("max 1200 N")}
	r, err := n.Inspect()
	require.NoError(t, err)
	require.True(t, r.SeatLoad.Least.Contains(440*units.Newton))
	require.True(t, r.OpenLoad.Least.Contains(1090*units.Newton))
	require.Equal(t, stemAt("26 mm"), r.Inner.OpenHeight)
	require.Equal(t, stemAt("2 mm"), r.Inner.Bind.Least, "the inner spring's own margin")
	require.Equal(t, tolerance.Usable, r.SeatLoad.Standing)

	n.Inner.Readings = nil
	r, err = n.Inspect()
	require.NoError(t, err)
	require.Empty(t, r.SeatLoad.Measure, "without both there is no sum")
	n.Step = tolerance.Bracket{}
	r, err = n.Inspect()
	require.NoError(t, err)
	require.Equal(t, stemAt("28 mm"), r.Inner.OpenHeight)

	for _, c := range []struct {
		spoil func(*SpringNest)
		says  string
	}{
		{func(n *SpringNest) { n.Outer.Installed = tolerance.Bracket{} }, "installed height"},
		{func(n *SpringNest) { n.Inner.Lift = stemAt("9 mm") }, "left out"},
		{func(n *SpringNest) { n.Step = stemAt("[1 mm, ∞)") }, "step"},
		{func(n *SpringNest) { n.Outer.Lift = stemAt("15 mm") }, "coil-bound"},
		{func(n *SpringNest) { n.Step = stemAt("5 mm") }, "coil-bound"},
		{func(n *SpringNest) { n.SeatLimits.New = springBand("min 300 N").New }, "limits of the seat load of both"},
		{func(n *SpringNest) { n.OpenLimits.New = springBand("max 1300 N").New }, "limits of the load of both"},
	} {
		n := SpringNest{Where: "exhaust 3", Outer: outer, Inner: inner, Step: stemAt("2 mm"), SeatLimits: springWear("min 400 N"), OpenLimits: springWear("max 1200 N")}
		c.spoil(&n)
		_, err := n.Inspect()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

func TestSpringSetSpread(t *testing.T) {
	set := []Spring{springOuter(), springOuter(), springOuter()}
	set[1].Free, set[1].Readings = stemAt("45.2 mm"), []SpringReading{{stemAt("30 mm"), springN("660 N")}, {stemAt("40 mm"), springN("240 N")}}
	set[0].Readings = []SpringReading{{stemAt("30 mm"), springN("700 N")}, {stemAt("40 mm"), springN("250 N")}}
	set[2].Readings = set[0].Readings
	s, err := SpringSetSpread(set, stemAt("35 mm"))
	require.NoError(t, err)
	require.Equal(t, springN("25 N"), s.Load, "475 and 450")
	require.Equal(t, 1, s.Weakest)
	require.Equal(t, 0, s.Strongest)
	m, _ := s.Rate.Middle()
	require.InDelta(t, 3, m.Float(units.InNewtonsPerMillimetre), 1e-9)
	require.Equal(t, stemAt("[0.7 mm, 0.9 mm]"), s.Free)
	set[2].Free = tolerance.Bracket{}
	s, err = SpringSetSpread(set, stemAt("35 mm"))
	require.NoError(t, err)
	require.True(t, s.Free.IsZero())

	_, err = SpringSetSpread(nil, stemAt("35 mm"))
	require.ErrorIs(t, err, ErrInput)
	set[0].Where, set[0].Readings = "", nil
	_, err = SpringSetSpread(set, stemAt("35 mm"))
	require.ErrorIs(t, err, ErrInput)
	require.ErrorContains(t, err, "spring 1")
	set[0] = set[1]
	set[0].Free = stemAt("-1 mm")
	_, err = SpringSetSpread(set, stemAt("35 mm"))
	require.ErrorIs(t, err, ErrInput)
}

func springStock() []SpringShim {
	return []SpringShim{{"0.4 mm", stemAt("0.40 ±0.01 mm")}, {"0.8 mm", stemAt("0.80 ±0.01 mm")}, {"1.5 mm", stemAt("1.50 ±0.01 mm")}}
}

func TestSpringShims(t *testing.T) {
	need := SpringShimNeed{Installed: stemAt("38.8 ±0.05 mm"), Height: tolerance.MustParseBand("37.8–38.2 mm"), Most: 2}
	c, err := ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.True(t, c.Ok)
	require.Equal(t, []int{1}, c.Pieces)
	require.Equal(t, stemAt("[37.94 mm, 38.06 mm]"), c.Height)
	require.Equal(t, stemAt("[0.6 mm, 1.0 mm]"), c.Wanted)

	// None needed; two of one size; none that does.
	need.Installed = stemAt("38 mm")
	c, err = ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.True(t, c.Ok)
	require.Empty(t, c.Pieces)
	need.Installed = stemAt("39.6 mm")
	c, err = ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.Equal(t, []int{2}, c.Pieces, "one of 1.5 before two of 0.8")
	c, err = ChooseSpringShims(need, springStock()[:2])
	require.NoError(t, err)
	require.Equal(t, []int{1, 1}, c.Pieces)
	c, err = ChooseSpringShims(need, springStock()[:1])
	require.NoError(t, err)
	require.False(t, c.Ok)
	require.Contains(t, c.Next, "it takes")
	need.Installed = stemAt("37 mm")
	c, err = ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.False(t, c.Ok)
	require.Contains(t, c.Next, "too low")
	// Only an upper limit: fewest shims, and no middle to come near.
	need.Installed, need.Height = stemAt("39 mm"), tolerance.MustParseBand("max 38.7 mm")
	c, err = ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.Equal(t, []int{0}, c.Pieces)
	require.True(t, c.Wanted.IsZero())
	need.Installed = stemAt("0.3 mm")
	need.Height = tolerance.MustParseBand("max 0.1 mm")
	c, err = ChooseSpringShims(need, springStock())
	require.NoError(t, err)
	require.False(t, c.Ok, "a spring can't be shimmed away")
}

// 45 N/mm: 320 to 360 N lie at 38.44 down to 37.56 mm; 38.8 less 0.8 gives 340.
func TestSpringShimsByLoad(t *testing.T) {
	need := SpringShimNeed{Installed: stemAt("38.8 mm"), Load: springBand("320–360 N").New, Most: 2,
		Readings: [2]SpringReading{{stemAt("40 mm"), springN("250 N")}, {stemAt("30 mm"), springN("700 N")}}}
	stock := []SpringShim{{"0.4 mm", stemAt("0.4 mm")}, {"0.8 mm", stemAt("0.8 mm")}}
	c, err := ChooseSpringShims(need, stock)
	require.NoError(t, err)
	require.True(t, c.Ok)
	require.Equal(t, []int{1}, c.Pieces, "0.4 gives 322, which is nearer to the edge")
	require.Equal(t, springN("340 N"), c.Load)
	lo, hi := inputEnds(c.Wanted)
	require.InDelta(t, 0.355556, lo.Float(units.InMillimetres), 1e-6)
	require.InDelta(t, 1.244444, hi.Float(units.InMillimetres), 1e-6)
	need.Load = springBand("min 330 N").New
	c, err = ChooseSpringShims(need, stock)
	require.NoError(t, err)
	require.True(t, c.Ok)
	// Readings too coarse for so narrow a band.
	need.Load, need.Readings[0].Load = springBand("339–341 N").New, springN("250 ±20 N")
	c, err = ChooseSpringShims(need, stock)
	require.NoError(t, err)
	require.False(t, c.Ok)
}

func TestSpringShimsRefuse(t *testing.T) {
	good := SpringShimNeed{Installed: stemAt("38.8 mm"), Height: tolerance.MustParseBand("37.8–38.2 mm"), Most: 2}
	for _, c := range []struct {
		spoil func(*SpringShimNeed, *[]SpringShim)
		says  string
	}{
		{func(n *SpringShimNeed, _ *[]SpringShim) { n.Installed = tolerance.Bracket{} }, "installed height"},
		{func(n *SpringShimNeed, _ *[]SpringShim) { n.Most = 0 }, "from 1 to 4"},
		{func(n *SpringShimNeed, _ *[]SpringShim) { n.Most = 5 }, "from 1 to 4"},
		{func(_ *SpringShimNeed, s *[]SpringShim) { *s = make([]SpringShim, 41) }, "at most 40"},
		{func(_ *SpringShimNeed, s *[]SpringShim) { (*s)[0] = SpringShim{} }, "shim 1"},
		{func(_ *SpringShimNeed, s *[]SpringShim) { (*s)[0].Thickness = stemAt("-1 mm") }, "0.4 mm"},
		{func(n *SpringShimNeed, _ *[]SpringShim) { n.Height = tolerance.Band{} }, "either a height or a load"},
		{func(n *SpringShimNeed, _ *[]SpringShim) { n.Load = springBand("min 3 N").New }, "either a height or a load"},
		{func(n *SpringShimNeed, _ *[]SpringShim) {
			n.Height, n.Load = tolerance.Band{}, springBand("min 3 N").New
		}, "height"},
		{func(n *SpringShimNeed, _ *[]SpringShim) {
			n.Height = tolerance.AtMost(units.OutOfRange[units.Length]())
		}, "out of range"},
	} {
		n, s := good, springStock()
		c.spoil(&n, &s)
		_, err := ChooseSpringShims(n, s)
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.says)
	}
}

// Whatever is chosen is in the band, and no fewer shims would be.
func FuzzSpringShims(f *testing.F) {
	f.Add(int64(388e8), int64(378e8), int64(382e8), int64(4e8), int64(8e8), uint8(2))
	f.Fuzz(func(t *testing.T, installed, least, greatest, a, b int64, most uint8) {
		band, err := tolerance.Between(units.Length(least), units.Length(greatest))
		if err != nil {
			return
		}
		n := SpringShimNeed{Installed: tolerance.Exactly(units.Length(installed)), Height: band, Most: int(most)}
		c, err := ChooseSpringShims(n, []SpringShim{{"a", tolerance.Exactly(units.Length(a))}, {"b", tolerance.Exactly(units.Length(b))}})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		fewest := -1
		for count := 0; count <= n.Most && fewest < 0; count++ {
			for i := 0; i <= count; i++ {
				if h := units.Length(installed - int64(i)*a - int64(count-i)*b); h > 0 && band.Allows(h) {
					fewest = count
				}
			}
		}
		require.Equal(t, fewest >= 0, c.Ok)
		if c.Ok {
			require.Len(t, c.Pieces, fewest)
			require.Equal(t, tolerance.Within, band.Judge(c.Height))
		}
	})
}
