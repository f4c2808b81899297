package piston

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Limits as manuals print them.
func TestRingGap_publishedLimits(t *testing.T) {
	vectors.Load(t, "published/piston_ringgap_limits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		limits := tolerance.Spec{Wear: band(c.Text("limits"))}
		g := RingGap{Where: "top ring", Stations: []RingGapStation{{Place: "ring gauge", Gap: at(c.Text("reading"))}}, Limits: limits}
		r, err := g.Assess()
		require.NoError(t, err)
		want := c.Choice("verdict", "within", "above", "below", "undecided")
		require.Equal(t, want, limits.Wear.Judge(r.Finding.Greatest).String())
		remedy := map[string]RingRemedy{"within": RingServes, "above": RingOther, "below": RingFile, "undecided": RingReadAgain}[want]
		require.Equal(t, remedy, r.Remedy, r.Next)
	})
}

func ringGap() RingGap {
	return RingGap{
		Where: "cylinder 2, top ring",
		Stations: []RingGapStation{
			{Place: "top of ring travel", Bore: at("86.110 ±0.003 mm")},
			{Place: "bottom of ring travel", Bore: at("86.015 ±0.003 mm"), Gap: at("[0.30 mm, 0.35 mm)")},
		},
		Thickness: 3500 * units.Micrometre,
		Limits:    tolerance.Spec{New: band("0.25–0.45 mm"), Wear: band("max 1.0 mm")},
	}
}

// The gap read at the bottom is carried to the worn top: by hand
// 0.30 + π·0.095 = 0.598 mm, give or take the bores' 0.019 and the 4 % that the
// ends turn.
func TestRingGap_carried(t *testing.T) {
	g := ringGap()
	r, err := g.Assess()
	require.NoError(t, err)
	require.Equal(t, 0, r.Greatest)
	require.Equal(t, 1, r.Least)
	require.False(t, r.Stations[0].Measured)
	require.True(t, r.Stations[1].Measured)
	lo, _ := r.Stations[0].Gap.Lower()
	hi, _ := r.Stations[0].Gap.Upper()
	require.InDelta(t, 0.30+0.089*3.14159*(86.11-7)/(86.11-3.5), lo.Float(units.InMillimetres), 0.0001)
	require.InDelta(t, 0.35+0.101*3.14159*86.11/(86.11-3.5), hi.Float(units.InMillimetres), 0.0001)
	require.Equal(t, tolerance.Usable, r.Finding.Standing)
	require.Equal(t, RingServes, r.Remedy)

	// A ring whose thickness wasn't measured leaves more open.
	g.Thickness = 0
	thick, err := g.Assess()
	require.NoError(t, err)
	require.True(t, r.Stations[0].Gap.Within(thick.Stations[0].Gap))
	require.NotEqual(t, r.Stations[0].Gap, thick.Stations[0].Gap)
	g.Thickness = 3500 * units.Micrometre

	// Read at both places, each narrows the other.
	g.Stations[0].Gap = at("[0.60 mm, 0.65 mm)")
	both, err := g.Assess()
	require.NoError(t, err)
	require.True(t, both.Stations[0].Gap.Within(r.Stations[0].Gap))
	require.True(t, both.Stations[0].Gap.Within(g.Stations[0].Gap))

	// And where they contradict each other, that is told.
	g.Stations[0].Gap = at("[0.30 mm, 0.35 mm)")
	_, err = g.Assess()
	require.ErrorIs(t, err, ErrInput)
	require.ErrorContains(t, err, "end gap at top of ring travel")
	require.ErrorContains(t, err, "set the ring square")
}

// What a gap comes to in another bore holds the gap of a bent beam, whichever
// edges it was read between.
func TestRingGap_carriedReference(t *testing.T) {
	vectors.Load(t, "reference/piston_ringgap_bore.txt").Each(t, func(t *testing.T, c vectors.Case) {
		if c.Text("what") != "bore" {
			c.Ignore("a", "b", "c", "face", "middle", "back")
			return
		}
		a, b, thick := mm(c.Text("a")), mm(c.Text("b")), mm(c.Text("c"))
		carried := carryRingGap(at("2.5 mm"), tolerance.Exactly(a), tolerance.Exactly(b), thick)
		for _, edge := range []string{"face", "middle", "back"} {
			opening, _, _ := strings.Cut(c.Text(edge), " ")
			x, err := decimal.NewFromString(opening)
			require.NoError(t, err)
			require.True(t, carried.Contains(mm("2.5")+units.Length(x.Shift(9).IntPart())))
		}
	})
}

// What follows from a gap, for every way that it can lie.
func TestRingGap_remedies(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*RingGap)
		remedy RingRemedy
		next   string
	}{
		{"as new", func(g *RingGap) { g.Stations[0].Bore = at("86.020 ±0.003 mm") }, RingServes, "fit it"},
		{"too small", func(g *RingGap) {
			g.Stations[0].Bore, g.Stations[1].Gap = at("86.020 ±0.003 mm"), at("0.20 mm")
		}, RingFile, "too small at top of ring travel: file 0.054 mm to 0.213 mm off the ends in all"},
		{"too small, no upper limit", func(g *RingGap) {
			g.Stations[1].Gap, g.Limits = at("0.20 mm"), tolerance.Spec{New: band("min 0.25 mm")}
		}, RingFile, "file at least 0.05 mm off"},
		{"too small, to the wear limit", func(g *RingGap) { g.Stations[1].Gap = at("0.20 mm") }, RingFile, "file 0.05 mm to 0.4"},
		{"too small, a limit of the used ring", func(g *RingGap) {
			g.Stations[1].Gap, g.Limits = at("0.20 mm"), tolerance.Spec{Wear: band("0.25–1.0 mm")}
		}, RingFile, "file 0.05 mm to 0.4"},
		{"too small by how much?", func(g *RingGap) {
			g.Stations[0].Bore, g.Stations[1].Gap = at("86.020 ±0.003 mm"), at("[0 mm, 0.24 mm)")
			g.Limits = tolerance.Spec{New: band("0.25–0.45 mm")}
		}, RingReadAgain, "how much to file can't be told"},
		{"to the micrometre", func(g *RingGap) {
			g.Stations, g.Limits = g.Stations[1:], tolerance.Spec{New: band("0.2501–0.2504 mm")}
			g.Stations[0].Gap = at("0.20 mm")
		}, RingFile, "file 0.0501 mm to 0.0504 mm off"},
		{"too large", func(g *RingGap) { g.Stations[1].Gap = at("0.90 mm") }, RingOther, "too large at top of ring travel"},
		{"too large, no wear limit", func(g *RingGap) {
			g.Stations, g.Limits = g.Stations[1:], tolerance.Spec{New: band("0.25–0.45 mm")}
			g.Stations[0].Gap = at("0.60 mm")
		}, RingOther, "the engine maker's manual decides"},
		{"a bore too tapered", func(g *RingGap) {
			g.Stations[0].Bore, g.Limits = at("86.310 ±0.003 mm"), tolerance.Spec{New: band("0.25–0.45 mm"), Wear: band("0.25–0.90 mm")}
		}, RingBoreWorn, "no one ring suits both top of ring travel and bottom of ring travel"},
		{"can't tell", func(g *RingGap) {
			g.Stations, g.Limits = g.Stations[1:], tolerance.Spec{Wear: band("max 0.32 mm")}
		}, RingReadAgain, "not a pass"},
		{"no limits", func(g *RingGap) { g.Limits = tolerance.Spec{} }, RingAskManual, "limit"},
		{"a gap wider than all blades", func(g *RingGap) { g.Stations[1].Gap = at("[1.1 mm, ∞)") }, RingOther, "too large"},
		{"every blade went in", func(g *RingGap) {
			g.Stations, g.Limits = g.Stations[1:], tolerance.Spec{New: band("min 0.25 mm")}
			g.Stations[0].Gap = at("[0.20 mm, ∞)")
		}, RingReadAgain, "not a pass"},
		{"the ends may butt", func(g *RingGap) {
			g.Stations[0], g.Stations[1] = g.Stations[1], g.Stations[0]
			g.Stations[0].Gap, g.Stations[1].Gap = tolerance.Bracket{}, at("[0.20 mm, 0.25 mm)")
		}, RingFile, "too small at bottom of ring travel"},
	} {
		t.Run(c.name, func(t *testing.T) {
			g := ringGap()
			c.change(&g)
			r, err := g.Assess()
			require.NoError(t, err)
			require.Equal(t, c.remedy, r.Remedy, r.Next)
			require.Contains(t, r.Next, c.next)
			for _, s := range r.Stations {
				lo, _ := s.Gap.Lower()
				require.GreaterOrEqual(t, lo, units.Length(0))
			}
			text, err := json.Marshal(r)
			require.NoError(t, err)
			var back RingGapReport
			require.NoError(t, json.Unmarshal(text, &back))
			require.Empty(t, cmp.Diff(r, back, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b }), cmp.Comparer(func(a, b tolerance.Band) bool { return a == b })))
		})
	}
}

// After what is sure to do is filed off, every gap the readings allow lies
// within the limits; more or less than what may do never does.
func TestRingFiling_does(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	limits, sure, possible := band("0.25–0.45 mm"), 0, 0
	for range 3000 {
		l := units.Length(r.Int64N(4e8))
		g := l + units.Length(r.Int64N(15e7))
		w := units.Length(r.Int64N(5e7))
		bracket := func(x units.Length) tolerance.Bracket {
			b, err := tolerance.NewInterval(x, tolerance.Closed, x+w, tolerance.Closed)
			require.NoError(t, err)
			return b
		}
		f, err := tolerance.Assess("ring end gap", "", tolerance.Spec{New: limits}, bracket(l), bracket(g))
		require.NoError(t, err)
		filing := fileFor(&f)
		if filing.Ok {
			sure++
			a, _ := filing.Sure.Lower()
			b, _ := filing.Sure.Upper()
			for _, s := range []units.Length{a, b, (a + b) / 2} {
				require.Equal(t, tolerance.Within, limits.Judge(bracket(l+s)))
				require.Equal(t, tolerance.Within, limits.Judge(bracket(g+s)))
			}
			require.True(t, filing.Sure.Within(filing.Possible))
		}
		if filing.Open {
			possible++
			a, _ := filing.Possible.Lower()
			b, _ := filing.Possible.Upper()
			if a > 0 {
				require.Equal(t, tolerance.Below, limits.Judge(bracket(l+a-1)))
			}
			require.Equal(t, tolerance.Above, limits.Judge(bracket(g+b+1)))
		}
	}
	require.Greater(t, sure, 300)
	require.Greater(t, possible, sure)
}

func TestRingGap_refuses(t *testing.T) {
	for want, change := range map[string]func(*RingGap){
		"end gap of no station is not":            func(g *RingGap) { g.Stations = nil },
		"end gap of no station is not read":       func(g *RingGap) { g.Stations[1].Gap = tolerance.Bracket{} },
		"bore at top of ring travel not measured": func(g *RingGap) { g.Stations[0].Bore = tolerance.Bracket{} },
		"bore at station 1 0 mm":                  func(g *RingGap) { g.Stations[0].Bore, g.Stations[0].Place = at("0 mm"), "" },
		"interference":                            func(g *RingGap) { g.Stations[1].Gap = at("-0.1 mm") },
		"shorter than the way round":              func(g *RingGap) { g.Stations[1].Gap = at("300 mm") },
		"ring thickness 30 mm":                    func(g *RingGap) { g.Thickness = 30 * units.Millimetre },
		"in the same bore":                        func(g *RingGap) { g.Stations[0].Bore = at("96 mm") },
		"limit":                                   func(g *RingGap) { g.Limits = tolerance.Spec{New: band("0.2–0.4 mm"), Wear: band("max 0.1 mm")} },
		strings.Repeat("x", 64) + `"…`:            func(g *RingGap) { g.Stations[0].Bore, g.Stations[0].Place = at("0 mm"), strings.Repeat("x", 999) },
	} {
		g := ringGap()
		change(&g)
		_, err := g.Assess()
		require.ErrorContains(t, err, want)
		require.Less(t, len(err.Error()), 400)
	}
	g := ringGap()
	g.Stations = append(g.Stations, RingGapStation{Place: strings.Repeat("y", 99), Bore: at("86.015 mm"), Gap: at("0.8 mm")})
	_, err := g.Assess()
	require.ErrorContains(t, err, "station 3")
}

func TestRingRemedy_text(t *testing.T) {
	for r := RingReadAgain; r <= RingAskManual; r++ {
		text, err := r.MarshalText()
		require.NoError(t, err)
		var back RingRemedy
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, r, back)
	}
	require.Equal(t, RingReadAgain.String(), RingRemedy(99).String())
	var r RingRemedy
	require.ErrorIs(t, r.UnmarshalText([]byte("hit it")), ErrInput)
}

func FuzzRingGap(f *testing.F) {
	f.Add(int64(8611e7), int64(86015e6), int64(3e8), int64(35e7), int64(35e8))
	f.Fuzz(func(t *testing.T, top, bottom, lo, hi, thick int64) {
		gap, err := tolerance.NewInterval(units.Length(lo), tolerance.Closed, units.Length(hi), tolerance.Open)
		if err != nil {
			return
		}
		g := ringGap()
		g.Stations[0].Bore, g.Stations[1].Bore, g.Stations[1].Gap = tolerance.Exactly(units.Length(top)), tolerance.Exactly(units.Length(bottom)), gap
		g.Thickness = units.Length(thick)
		r, err := g.Assess()
		if err != nil {
			return
		}
		for _, s := range r.Stations {
			require.True(t, s.Gap.InRange())
		}
		require.NotEmpty(t, r.Next)
	})
}

func BenchmarkRingGapAssess(b *testing.B) {
	g := ringGap()
	b.Run("lib=tenthou/op=ring", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := g.Assess(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// What a gap opens by between the edges of a ring's ends, worked out from two
// corners, holds every corner, and is no wider than what the two formulas
// together hold.
func TestRingGap_openingAtEdges(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 8))
	for range 3000 {
		lo := units.Length(rng.Int64N(int64(200*units.Millimetre))) + 10*units.Millimetre
		hi := lo + units.Length(rng.Int64N(int64(units.Millimetre)))
		thickness := lo.Scale(1, 5+rng.Int64N(40))
		least := units.Length(rng.Int64N(int64(2*units.Millimetre))) - units.Millimetre
		greatest := least + units.Length(rng.Int64N(int64(units.Millimetre)))
		bore, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
		require.NoError(t, err)
		opening, err := tolerance.NewInterval(least, tolerance.Closed, greatest, tolerance.Closed)
		require.NoError(t, err)
		got := openingAtEdges(opening, bore, thickness)
		all := tolerance.Exactly(thickness)
		wide := hullOf(RingOpeningAtFace(opening, bore, all), RingOpeningAtBack(opening, bore, all))
		for _, b := range []units.Length{lo, hi} {
			for _, o := range []units.Length{least, greatest} {
				for _, x := range []tolerance.Bracket{
					RingOpeningAtFace(tolerance.Exactly(o), tolerance.Exactly(b), all),
					RingOpeningAtBack(tolerance.Exactly(o), tolerance.Exactly(b), all),
				} {
					require.True(t, x.Within(got), "%v in %v", x, got)
				}
			}
		}
		a, _ := got.Lower()
		b, _ := wide.Lower()
		require.GreaterOrEqual(t, a, b)
		a, _ = got.Upper()
		b, _ = wide.Upper()
		require.LessOrEqual(t, a, b)
	}
	// A bore that may be as small as the wall is thick tells nothing.
	bore, err := tolerance.NewInterval(units.Millimetre, tolerance.Closed, 90*units.Millimetre, tolerance.Closed)
	require.NoError(t, err)
	require.True(t, openingAtEdges(at("0.1 mm"), bore, 3*units.Millimetre).IsZero())
}

// Standings by the short way are those of the long one.
func TestStand(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 5))
	end := func() tolerance.End { return tolerance.End(rng.IntN(3)) }
	random := func() tolerance.Bracket {
		for {
			i, err := tolerance.NewInterval(units.Length(rng.IntN(9)), end(), units.Length(rng.IntN(9)), end())
			if err == nil {
				return i
			}
		}
	}
	broken := tolerance.Exactly(units.Length(1) << 62)
	seen := [5]int{}
	for i := range 200_000 {
		spec := tolerance.Spec{New: tolerance.BandFrom(random()), Wear: tolerance.BandFrom(random())}
		a, b := random(), random()
		if i%100 == 0 {
			b = broken
		}
		if i%101 == 0 {
			spec.Wear = tolerance.BandFrom(broken)
		}
		least, greatest := tolerance.Extremes(a, b)
		want := spec.StandAll(least, greatest)
		require.Equal(t, want, stand(&spec, least, greatest), "%v: %v to %v", spec, least, greatest)
		seen[want]++
	}
	for _, n := range seen {
		require.Positive(t, n)
	}
}
