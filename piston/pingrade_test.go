package piston

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
)

func pinGrades(t *testing.T) PinGrades {
	pins, err := selective.ParseGrades("white: 21.994–21.997 mm\nblack: more than 21.997 mm, max 22.000 mm")
	require.NoError(t, err)
	bosses, err := selective.ParseGrades("white: 22.002–22.005 mm\nblack: more than 22.005 mm, max 22.008 mm")
	require.NoError(t, err)
	return PinGrades{Pins: pins, Bosses: bosses, Wanted: band("0.005–0.011 mm")}
}

// By hand: like with like keeps the clearance, crossed it doesn't.
func TestPinGrades_Fits(t *testing.T) {
	g := pinGrades(t)
	fits, err := g.Fits()
	require.NoError(t, err)
	require.Len(t, fits, 2)
	for _, f := range fits {
		require.Equal(t, tolerance.Within, f.Verdict)
		require.Equal(t, f.Boss, f.Pin)
	}
	require.Equal(t, "0.005–0.011 mm", fits[0].Clearance.String())
	g.Pairs = []PinPair{{"white", "black"}, {"black", "white"}}
	fits, err = g.Fits()
	require.NoError(t, err)
	require.Equal(t, tolerance.Below, fits[0].Verdict, "0.002 to 0.008")
	require.Equal(t, tolerance.Above, fits[1].Verdict, "0.008 to 0.014")
	g.Wanted = band("0.006–0.007 mm")
	g.Pairs = nil
	fits, err = g.Fits()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, fits[0].Verdict, "out on both sides")
	g.Wanted = tolerance.Band{}
	fits, err = g.Fits()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, fits[0].Verdict)
	for band, want := range map[string]tolerance.Verdict{"max 0.010 mm": tolerance.Above, "min 0.006 mm": tolerance.Below, "more than 0.005 mm": tolerance.Below, "less than 0.011 mm": tolerance.Above} {
		g.Wanted = tolerance.MustParseBand(band)
		fits, err = g.Fits()
		require.NoError(t, err)
		require.Equal(t, want, fits[0].Verdict, band)
	}

	for want, change := range map[string]func(*PinGrades){
		`pair "green"`:                   func(g *PinGrades) { g.Pairs = []PinPair{{"green", "white"}} },
		`pair "blue"`:                    func(g *PinGrades) { g.Pairs = []PinPair{{"white", "blue"}} },
		`pair "white" is not a grade of`: func(g *PinGrades) { g.Pairs = []PinPair{{"white", "white"}, {"white", "black"}} },
		"nothing given":                  func(g *PinGrades) { g.Pins = nil },
		"grades: ":                       func(g *PinGrades) { g.Bosses = nil },
		`pin grade of a pair "black"`:    func(g *PinGrades) { g.Pins = g.Pins[:1] },
	} {
		g := pinGrades(t)
		change(&g)
		_, err := g.Fits()
		require.ErrorContains(t, err, want)
		_, err = g.Select(at("22.004 mm"), at("21.996 mm"))
		require.ErrorContains(t, err, want)
	}
}

func TestPinGrades_Select(t *testing.T) {
	g := pinGrades(t)
	for _, c := range []struct {
		boss, pin string
		match     PinMatch
		verdict   tolerance.Verdict
	}{
		{"22.004 mm", "21.996 mm", PinMatches, tolerance.Within},
		{"22.004 mm", "21.999 mm", PinMismatch, tolerance.Within},
		{"22.002 mm", "21.999 mm", PinMismatch, tolerance.Below},
		{"22.004 mm", "21.997 ±0.001 mm", PinMatchOpen, tolerance.Within},
		{"22.005 ±0.001 mm", "21.996 mm", PinMatchOpen, tolerance.Within},
		{"22.012 mm", "21.996 mm", PinMismatch, tolerance.Above},
	} {
		s, err := g.Select(at(c.boss), at(c.pin))
		require.NoError(t, err)
		require.Equal(t, c.match, s.Match, "%v", c)
		require.Equal(t, c.verdict, s.Verdict, "%v", c)
	}
	_, err := g.Select(at("22 mm"), at("0.866 mm"))
	require.ErrorContains(t, err, "another unit")
}

// The nearest in stock; of two as near the greater clearance, and it says so.
func TestChoosePin(t *testing.T) {
	wanted, err := selective.Middle(band("0.006–0.010 mm"))
	require.NoError(t, err)
	stock := []selective.Class{{Name: "white", Size: at("21.995 mm"), Stock: 2}, {Name: "black", Size: at("21.999 mm"), Stock: 1}, {Name: "blue", Size: at("21.997 mm")}}
	c, err := ChoosePin(at("22.005 mm"), stock, wanted)
	require.NoError(t, err)
	best, ok := c.Best()
	require.True(t, ok)
	require.Equal(t, "white", best.Name)
	require.Equal(t, at("0.010 mm"), best.Fit)
	require.Equal(t, 1, c.Equal)
	_, err = ChoosePin(at("0 mm"), stock, wanted)
	require.ErrorIs(t, err, ErrInput)
	_, err = ChoosePin(at("22 mm"), nil, wanted)
	require.ErrorIs(t, err, selective.ErrEmpty)
}
