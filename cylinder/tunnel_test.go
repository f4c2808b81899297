package cylinder

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func tunnelLine(places, heights []string, unit string) (l TunnelLine) {
	for i := range places {
		l.Saddles = append(l.Saddles, Saddle{Where: "main " + places[i], At: linerLength(places[i] + " mm"), Height: linerAt(heights[i] + " " + unit)})
	}
	return l
}

// The least zone against a linear programme; shifting, tilting and turning
// the line round leave it as it is.
func TestTunnelLine_reference(t *testing.T) {
	r := rand.New(rand.NewPCG(45, 1))
	vectors.Load(t, "reference/cylinder_tunnel_lines.txt").Each(t, func(t *testing.T, c vectors.Case) {
		l := tunnelLine(strings.Fields(c.Text("places")), strings.Fields(c.Text("heights")), "µm")
		got, err := l.Assess()
		require.NoError(t, err)
		hi, _ := got.Straightness.Greatest.Upper()
		lo, _ := got.Straightness.Greatest.Lower()
		// The bracket holds the programme's answer, which is to a picometre or
		// so itself, and is a few picometres wide.
		zone := c.Float("zone") * 1e6
		require.LessOrEqual(t, float64(lo)-0.2, zone)
		require.GreaterOrEqual(t, float64(hi)+0.2, zone)
		require.LessOrEqual(t, hi-lo, 6*units.Picometre)

		n := len(l.Saddles)
		turned := TunnelLine{Saddles: make([]Saddle, n)}
		shift, tilt := units.Length(r.Int64N(1e9)), r.Int64N(1000)-500
		for i, s := range l.Saddles {
			h, _ := s.Height.Middle()
			turned.Saddles[n-1-i] = Saddle{s.Where, -s.At, tolerance.Exactly(h + shift + s.At.Scale(tilt, 1e6))}
		}
		again, err := turned.Assess()
		require.NoError(t, err)
		top, _ := again.Straightness.Greatest.Upper()
		require.InDelta(t, float64(hi), float64(top), 8)
	})
}

// Under a straight-edge with blades: gaps as brackets, 0 where it rests.
func TestTunnelLine_blades(t *testing.T) {
	edge := tolerance.Exactly(units.Length(0))
	l := TunnelLine{Straight: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.05 mm")}, Neighbour: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.03 mm")},
		Step: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.03 mm")}, Level: true}
	for i, gap := range []string{"0 mm", "[0.03 mm, 0.04 mm)", "[0.02 mm, 0.03 mm)", "0 mm"} {
		l.Saddles = append(l.Saddles, Saddle{Where: "main " + string(rune('1'+i)), At: units.Length(i) * 100 * units.Millimetre, Height: SaddleHeight(edge, linerAt(gap))})
	}
	r, err := l.Assess()
	require.NoError(t, err)
	// By hand: the gap at main 2 is off the line of the ends; off that of 1
	// and 4 by 0.03 to 0.04, of 1 and 3 by 0.015 to 0.03, of main 3 less.
	require.Equal(t, linerAt("[0.03 mm, 0.04 mm)"), r.Straightness.Greatest)
	require.Equal(t, tolerance.Usable, r.Straightness.Standing)
	require.Equal(t, [3]string{"main 1", "main 2", "main 4"}, [3]string{r.From, r.Middle, r.To})
	require.Equal(t, linerAt("(-0.03 mm, -0.015 mm)"), r.Offsets[0])
	require.Equal(t, tolerance.CantTell, r.Steps[0].Standing, "0.03 to 0.04 against 0.03")
	require.Equal(t, linerAt("(0 mm, 0.02 mm)"), r.Steps[1].Greatest, "0.03 exactly and less than 0.03 are apart")
	require.Len(t, r.Steps, 3)
}

func TestTunnelLine_refuses(t *testing.T) {
	good := func() TunnelLine { return tunnelLine([]string{"0", "100", "200"}, []string{"0", "1", "0"}, "µm") }
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 2 mm"), Wear: tolerance.MustParseBand("max 1 mm")}
	for want, change := range map[string]func(*TunnelLine){
		"saddles 2":  func(l *TunnelLine) { l.Saddles = l.Saddles[:2] },
		"step limit": func(l *TunnelLine) { l.Step.New = tolerance.MustParseBand("max 1 mm") },
		"height at main 100 25.4 mm off the line of main 0 and main 200": func(l *TunnelLine) { l.Saddles[1].Height = linerAt("25.4 mm") },
		"height at main 100 (−∞":                                         func(l *TunnelLine) { l.Saddles[1].Height = tolerance.Bracket{} },
		"place of main 200 100 mm":                                       func(l *TunnelLine) { l.Saddles[2].At = l.Saddles[1].At },
		"alignment of the tunnel":                                        func(l *TunnelLine) { l.Straight = bad },
		"offset from the neighbour":                                      func(l *TunnelLine) { l.Neighbour = bad },
		"step between saddles":                                           func(l *TunnelLine) { l.Level, l.Step = true, bad },
	} {
		l := good()
		change(&l)
		_, err := l.Assess()
		require.ErrorContains(t, err, want)
	}
	require.False(t, SaddleOffset(units.Length(1), 2, 3, 5, 6, 5).InRange(), "two at one place")
}

func tunnelRow(texts ...string) []tolerance.Bracket {
	var row []tolerance.Bracket
	for _, t := range texts {
		if t == "" {
			row = append(row, tolerance.Bracket{})
			continue
		}
		row = append(row, linerAt(t+" mm"))
	}
	return row
}

func tunnelMain() MainTunnel {
	return MainTunnel{
		Caps: CapsTorqued, Levels: []string{"front", "rear"}, Directions: []string{"vertical", "60° left", "60° right"},
		Housings: []Housing{
			{"main 1", [][]tolerance.Bracket{tunnelRow("60.010", "60.012", "60.011"), tunnelRow("60.012", "60.012", "60.013")}},
			{"main 2", [][]tolerance.Bracket{tunnelRow("59.990", "60.012", "60.011"), tunnelRow("", "60.012", "60.013")}},
		},
		Size:    tolerance.Spec{New: tolerance.MustParseBand("60.000–60.019 mm")},
		Ovality: tolerance.Spec{Wear: tolerance.MustParseBand("max 0.010 mm")},
		Taper:   tolerance.Spec{Wear: tolerance.MustParseBand("max 0.010 mm")},
	}
}

func TestMainTunnel_assess(t *testing.T) {
	r, err := tunnelMain().Assess()
	require.NoError(t, err)
	require.True(t, r.Counts)
	one, two := r.Housings[0], r.Housings[1]
	require.Equal(t, linerAt("0.002 mm"), one.Ovality[0].Greatest)
	require.Equal(t, linerAt("0.002 mm"), one.Taper[0].Greatest)
	require.Equal(t, tolerance.Usable, one.Standing)
	require.Equal(t, []string{"rear, vertical"}, two.Missing)
	require.Equal(t, linerAt("0.022 mm"), two.Ovality[0].Greatest)
	require.Len(t, two.Taper, 2, "no taper along a direction read at one level")
	require.Equal(t, tolerance.PastWearLimit, two.Standing)
	require.Equal(t, "ovality of the housing", two.Governs)
	require.Equal(t, "main 2", r.WorstAt)
	require.Contains(t, r.Next, "main 2 is outside")

	for caps, text := range map[CapState]string{CapsLoose: "loose", CapsNotRecorded: "not recorded"} {
		m := tunnelMain()
		m.Caps = caps
		r, err = m.Assess()
		require.NoError(t, err)
		require.False(t, r.Counts)
		require.Equal(t, tolerance.CantTell, r.Worst)
		require.Contains(t, r.Next, "the caps' state is "+text)
		require.Equal(t, capsSettle, r.Housings[1].Ovality[0].Settle)
	}
	m := tunnelMain()
	m.Housings = m.Housings[:1]
	r, err = m.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "within the limits")
	m.Housings[0].Sizes[0][0] = linerAt("60.015 ±0.006 mm")
	r, err = m.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Worst)
	require.Contains(t, r.Next, "can't be told yet")
	// A limit for what was never read leaves it open.
	m = tunnelMain()
	m.Directions, m.Housings = m.Directions[:1], []Housing{{"main 1", [][]tolerance.Bracket{tunnelRow("60.010"), tunnelRow("60.010")}}}
	r, err = m.Assess()
	require.NoError(t, err)
	require.Equal(t, "what wasn't read", r.Housings[0].Governs)
	require.Equal(t, tolerance.CantTell, r.Worst)
}

func TestMainTunnel_refuses(t *testing.T) {
	bad := tolerance.Spec{New: tolerance.MustParseBand("max 200 mm"), Wear: tolerance.MustParseBand("max 1 mm")}
	for want, change := range map[string]func(*MainTunnel){
		"housings none":                 func(m *MainTunnel) { m.Housings = nil },
		"levels and directions 0 and 3": func(m *MainTunnel) { m.Levels = nil },
		"caps 9":                        func(m *MainTunnel) { m.Caps = 9 },
		"levels of main 1 2 is not 1":   func(m *MainTunnel) { m.Levels = m.Levels[:1] },
		"directions of main 1, front 3": func(m *MainTunnel) { m.Directions = m.Directions[:2] },
		"main 1, front, vertical -1 mm": func(m *MainTunnel) { m.Housings[0].Sizes[0][0] = linerAt("-1 mm") },
		"main 1, rear, vertical 2.362 mm is not like its neighbours, near 60.012 mm": func(m *MainTunnel) {
			m.Housings[0].Sizes[1][0] = linerAt("2.362 mm") // inches
		},
		"main 2, front, 60° left 600.12 mm is not like its neighbours": func(m *MainTunnel) {
			m.Housings[1].Sizes[0][1] = linerAt("600.12 mm")
		},
		"levels of " + strings.Repeat("n", 54) + "… 1 is not 2": func(m *MainTunnel) {
			m.Housings[0].Where, m.Housings[0].Sizes = strings.Repeat("n", 4000), m.Housings[0].Sizes[:1]
		},
		"readings of main 1 none": func(m *MainTunnel) {
			m.Housings[0].Sizes = make([][]tolerance.Bracket, 2)
			m.Housings[0].Sizes[0] = make([]tolerance.Bracket, 3)
			m.Housings[0].Sizes[1] = make([]tolerance.Bracket, 3)
		},
		"housing bore, main 1":             func(m *MainTunnel) { m.Size = bad },
		"ovality of the housing, main 1":   func(m *MainTunnel) { m.Ovality = bad },
		"taper of the housing, main 1, ve": func(m *MainTunnel) { m.Taper = bad },
	} {
		m := tunnelMain()
		change(&m)
		_, err := m.Assess()
		require.ErrorContains(t, err, want)
	}
	var c CapState
	require.NoError(t, c.UnmarshalText([]byte("torqued")))
	require.Equal(t, CapsTorqued, c)
	require.ErrorContains(t, c.UnmarshalText([]byte(strings.Repeat("é", 60))), `one of "not recorded", "torqued", "loose"`)
	text, err := CapState(7).MarshalText()
	require.NoError(t, err)
	require.Equal(t, "not recorded", string(text))
}

// The worked cases of common practice.
func TestLineHone_practice(t *testing.T) {
	vectors.Load(t, "practice/cylinder_tunnel_hone.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) units.Length { return linerLength(c.Text(col) + " mm") }
		size, finish := mm("size"), mm("finish")
		ground := HousingAfterGrinding(size, mm("cap_ground"), mm("block_ground"))
		stock := LineHoneStock(finish, ground)
		cut := stock.Scale(1, 2) // evenly
		require.Equal(t, mm("block_cut"), cut)
		require.Equal(t, mm("rise"), CrankRise(cut, size, finish))
		require.Equal(t, mm("rise"), CrankRiseCentred(size.Sub(ground)))
		require.Equal(t, stock.Sub(cut), LineHoneCapCut(finish, ground, cut))
		deck := linerLength("0.03 mm")
		require.Equal(t, deck-mm("rise"), DeckAfterCrankRise(deck, mm("rise")))
		// The same from heights: crown at 100, the old centre half the size below.
		crown := linerLength("100 mm")
		line := crown.Sub(size.Scale(1, 2)).Add(mm("rise"))
		require.Equal(t, cut, LineHoneBlockCut(crown, line, finish))
	})
}

func tunnelHone() LineHone {
	return LineHone{
		Housings: []HonedHousing{
			{"main 1", linerAt("250.000 mm"), linerAt("60.01 mm")},
			{"main 2", linerAt("250.030 mm"), linerAt("60.03 mm")},
			{"main 3", linerAt("249.980 mm"), linerAt("60.02 mm")},
		},
		Finish: linerLength("60.02 mm"), LeastCut: linerLength("0.01 mm"), Rise: tolerance.MustParseBand("max 0.05 mm"),
	}
}

func TestLineHone_assess(t *testing.T) {
	r, err := tunnelHone().Assess()
	require.NoError(t, err)
	// By hand: the crown of main 2 asks for 250.03 + 0.01 − 30.01 = 220.03.
	require.Equal(t, linerLength("220.03 mm"), r.Line)
	require.Equal(t, "main 2", r.Forced)
	require.Equal(t, HoneCut{"main 1", linerAt("0.04 mm"), linerLength("0.04 mm"), linerAt("0.01 mm"), linerAt("0.035 mm")}, r.Cuts[0])
	require.Equal(t, HoneCut{"main 2", linerAt("0.01 mm"), linerLength("0.03 mm"), linerAt("0.01 mm"), linerAt("0.015 mm")}, r.Cuts[1])
	require.Equal(t, HoneCut{"main 3", linerAt("0.06 mm"), linerLength("0.07 mm"), linerAt("0.01 mm"), linerAt("0.06 mm")}, r.Cuts[2])
	require.Equal(t, linerAt("0.06 mm"), r.Rise)
	require.Equal(t, tolerance.Above, r.Allowed)
	require.Contains(t, r.Next, "rise further than is allowed")

	for want, rise := range map[string]string{"deck clearance": "max 0.07 mm", "finer instrument": "max 0.06 mm"} {
		h := tunnelHone()
		h.Housings[2].Size = linerAt("60.02 ±0.005 mm")
		h.Rise = tolerance.MustParseBand(rise)
		r, err := h.Assess()
		require.NoError(t, err)
		require.Contains(t, r.Next, want)
	}
	h := tunnelHone()
	h.Rise = tolerance.Band{}
	r, err = h.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "no limit is given")
}

// Whatever was read, every crown and cap is cut by the least cut or more, and
// one crown by no more than that: the line is the lowest.
func TestLineHone_properties(t *testing.T) {
	r := rand.New(rand.NewPCG(46, 1))
	for range 500 {
		h := LineHone{Finish: 60 * units.Millimetre, LeastCut: units.Length(r.Int64N(20)) * units.Micrometre}
		for i := range 2 + r.IntN(5) {
			e := units.Length(r.Int64N(5)) * units.Micrometre
			crown, _ := tolerance.PlusMinus(250*units.Millimetre+units.Length(r.Int64N(80)-40)*units.Micrometre, e)
			size, _ := tolerance.PlusMinus(60*units.Millimetre+units.Length(r.Int64N(60)-30)*units.Micrometre, e)
			h.Housings = append(h.Housings, HonedHousing{string(rune('a' + i)), crown, size})
		}
		got, err := h.Assess()
		require.NoError(t, err)
		tightest := units.Length(1 << 60)
		for i, c := range got.Cuts {
			block, _ := c.BlockCut.Lower()
			cap, _ := c.CapCut.Lower()
			require.GreaterOrEqual(t, block, h.LeastCut)
			require.GreaterOrEqual(t, cap, h.LeastCut)
			tightest = min(tightest, block)
			if size, crown := h.Housings[i].Size, h.Housings[i].Crown; size.IsExact() {
				s, _ := size.Lower()
				require.Equal(t, c.Rise, CrankRise(c.BlockCut, tolerance.Exactly(s), tolerance.Exactly(h.Finish)), "%v", crown)
			}
		}
		require.Equal(t, h.LeastCut, tightest)
	}
}

func TestLineHone_refuses(t *testing.T) {
	for want, change := range map[string]func(*LineHone){
		"housings none":                  func(h *LineHone) { h.Housings = nil },
		"finish size 0 mm":               func(h *LineHone) { h.Finish = 0 },
		"least cut -0.01 mm":             func(h *LineHone) { h.LeastCut = linerLength("-0.01 mm") },
		"vertical size of main 1 -1 mm":  func(h *LineHone) { h.Housings[0].Size = linerAt("-1 mm") },
		"vertical size of main 1 [60 mm": func(h *LineHone) { h.Housings[0].Size = linerAt("[60 mm, ∞)") },
		"finish size 6.002 mm is not near the 60.01 mm of main 1": func(h *LineHone) { h.Finish = linerLength("6.002 mm") },
		"finish size 2.363 mm": func(h *LineHone) { h.Finish = linerLength("2.363 mm") },
		"finish size 600.2 mm": func(h *LineHone) { h.Finish = linerLength("600.2 mm") },
		"crown of main 2 -250.03 mm is not near that of main 1, 250 mm": func(h *LineHone) { h.Housings[1].Crown = linerAt("-250.03 mm") },
		"crown of main 2 [0 mm": func(h *LineHone) { h.Housings[1].Crown = linerAt("[0 mm, ∞)") },
		"readings of main 1 2305843009.213693952 mm is not within": func(h *LineHone) {
			for i := range h.Housings {
				h.Housings[i].Crown = tolerance.Exactly(units.Length(1 << 61))
			}
		},
	} {
		h := tunnelHone()
		change(&h)
		_, err := h.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, want)
	}
}

func FuzzTunnelLine(f *testing.F) {
	f.Add(int64(0), int64(3e7), int64(-2e7), int64(0), int64(1e11), int64(2e11))
	f.Add(int64(-1<<63), int64(1<<62), int64(1<<61), int64(-1<<61), int64(1<<61), int64(1<<63-1))
	f.Fuzz(func(t *testing.T, a, b, c, x, y, z int64) {
		l := TunnelLine{Level: true}
		for i, h := range []int64{a, b, c} {
			l.Saddles = append(l.Saddles, Saddle{"m", units.Length([]int64{x, y, z}[i]), tolerance.Exactly(units.Length(h))})
		}
		r, err := l.Assess()
		if err != nil {
			return
		}
		lo, _ := r.Straightness.Greatest.Lower()
		require.GreaterOrEqual(t, lo, units.Length(0))
	})
}

func FuzzLineHone(f *testing.F) {
	f.Add(int64(25e10), int64(60e9), int64(25e10), int64(601e8), int64(6e10), int64(1e7))
	f.Fuzz(func(t *testing.T, c1, s1, c2, s2, finish, least int64) {
		x := func(v int64) tolerance.Bracket { return tolerance.Exactly(units.Length(v)) }
		h := LineHone{Housings: []HonedHousing{{"1", x(c1), x(s1)}, {"2", x(c2), x(s2)}}, Finish: units.Length(finish), LeastCut: units.Length(least)}
		r, err := h.Assess()
		if err != nil {
			return
		}
		for _, c := range r.Cuts {
			lo, _ := c.BlockCut.Lower()
			require.GreaterOrEqual(t, lo, h.LeastCut-1, "half a finish size rounds")
			require.GreaterOrEqual(t, c.Grind, units.Length(0))
		}
	})
}

func BenchmarkTunnel(b *testing.B) {
	b.Run("lib=tenthou/op=housings", func(b *testing.B) {
		b.ReportAllocs()
		m := tunnelMain()
		for b.Loop() {
			if _, err := m.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=line", func(b *testing.B) {
		b.ReportAllocs()
		l := tunnelLine([]string{"0", "100", "200", "300", "400"}, []string{"0", "3", "-4", "8", "0"}, "µm")
		for b.Loop() {
			if _, err := l.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=linehone", func(b *testing.B) {
		b.ReportAllocs()
		h := tunnelHone()
		for b.Loop() {
			if _, err := h.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
