package selective

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func mm(t testing.TB, text string) units.Length {
	t.Helper()
	l, err := units.ParseLength(text + " mm")
	require.NoError(t, err)
	return l
}

func TestChoose_shims(t *testing.T) {
	vectors.Load(t, "practice/fit_shims.txt").Each(t, func(t *testing.T, c vectors.Case) {
		col := func(name string) units.Length { return mm(t, c.Text(name)) }
		old, measured, wanted := col("old"), col("measured"), col("wanted")
		var stock []Class
		for s := col("from"); s <= col("to"); s += col("step") {
			stock = append(stock, Class{Name: s.String(), Size: tolerance.Exactly(s), Stock: 3})
		}
		w, err := Middle(tolerance.MustBetween(wanted-mm(t, "0.05"), wanted+mm(t, "0.05")))
		require.NoError(t, err)
		require.Equal(t, wanted, w.Aim)
		choice, err := Choose(tolerance.Exactly(old+measured), tolerance.Whole(-1), stock, w)
		require.NoError(t, err)
		best, ok := choice.Best()
		require.True(t, ok)
		require.Equal(t, col("shim").String(), best.Name)
		require.Equal(t, tolerance.Exactly(col("gives")), best.Fit)
		require.Equal(t, tolerance.Within, best.Verdict)
		require.Equal(t, c.Int("equal"), choice.Equal)
		require.Len(t, choice.Candidates, len(stock))

		// The inverse gives the size that would be best.
		ideal := SizeFor(old+measured, wanted, tolerance.Whole(-1))
		require.Equal(t, old+measured-wanted, ideal)
		require.Equal(t, wanted, Predict(old+measured, ideal, tolerance.Whole(-1)))
	})
}

// What is in band for certain beats what is nearer but may not be; stock
// decides, and what is out of stock is shown.
func TestChoose_order(t *testing.T) {
	w := Wanted{tolerance.MustParseBand("0.03–0.07 mm"), mm(t, "0.05")}
	stock := []Class{
		{"far", bracket(t, "2.600 mm"), 1},             // 0.2
		{"doubtful", bracket(t, "2.740 ±0.011 mm"), 1}, // 0.038 to 0.082 with the base's error
		{"sure", bracket(t, "2.765 mm"), 1},            // 0.035 ±0.001
		{"gone", bracket(t, "2.750 mm"), 0},            // 0.05
	}
	base := bracket(t, "2.800 ±0.001 mm")
	c, err := Choose(base, tolerance.Whole(-1), stock, w)
	require.NoError(t, err)
	var names []string
	for _, x := range c.Candidates {
		names = append(names, x.Name)
	}
	require.Equal(t, []string{"gone", "sure", "doubtful", "far"}, names)
	best, ok := c.Best()
	require.True(t, ok)
	require.Equal(t, Candidate{2, "sure", bracket(t, "[0.034 mm, 0.036 mm]"), tolerance.Within, mm(t, "0.016"), true}, best)
	require.Equal(t, tolerance.Undecided, c.Candidates[2].Verdict)
	require.Equal(t, tolerance.Above, c.Candidates[3].Verdict)

	// With nothing in stock there is nothing to choose, and it says so.
	c, err = Choose(base, tolerance.Whole(-1), stock[3:], w)
	require.NoError(t, err)
	require.Equal(t, -1, c.Chosen)
	_, ok = c.Best()
	require.False(t, ok)
	_, ok = Choice{}.Best()
	require.False(t, ok)
	b, err := json.Marshal(c)
	require.NoError(t, err)
	require.JSONEq(t, `{"candidates":[{"class":0,"name":"gone","fit":"[0.049 mm, 0.051 mm]","verdict":"within","distance":"0.001 mm","inStock":false}],"chosen":-1}`, string(b))
}

// Both walls of a shell come off the clearance.
func TestChoose_shells(t *testing.T) {
	stock := []Class{
		{"red", tolerance.MustParseBand("2.500–2.504 mm").Interval(), 8},
		{"blue", tolerance.MustParseBand("2.504–2.508 mm").Interval(), 8},
	}
	w, err := Middle(tolerance.MustParseBand("0.020–0.060 mm"))
	require.NoError(t, err)
	c, err := Choose(bracket(t, "5.050 ±0.002 mm"), tolerance.Whole(-2), stock, w)
	require.NoError(t, err)
	best, _ := c.Best()
	require.Equal(t, "blue", best.Name)
	require.Equal(t, bracket(t, "[0.032 mm, 0.044 mm]"), best.Fit)
}

func TestChoose_refuses(t *testing.T) {
	w := Wanted{tolerance.MustParseBand("0.03–0.07 mm"), mm(t, "0.05")}
	base, minus := bracket(t, "2.8 mm"), tolerance.Whole(-1)
	good := Class{"A", bracket(t, "2.75 mm"), 1}
	with := func(change func(*Class)) []Class {
		c := good
		change(&c)
		return []Class{good, c}
	}
	far := tolerance.Exactly(units.OutOfRange[units.Length]())
	for i, c := range []struct {
		base    tolerance.Bracket
		effect  tolerance.Ratio
		classes []Class
		wanted  Wanted
		kind    error
		text    string
	}{
		{base, minus, nil, w, ErrEmpty, "selective: classes: nothing given; at least one class"},
		{base, minus, make([]Class, MostClasses+1), w, ErrTooMany, ""},
		{base, tolerance.Ratio{}, []Class{good}, w, ErrEffect, ""},
		{base, tolerance.Whole(0), []Class{good}, w, ErrEffect, ""},
		{base, minus, with(func(c *Class) { c.Name = "" }), w, ErrName, `selective: class 2, name: no name; a name to report it by`},
		{base, minus, with(func(c *Class) { c.Stock = -1 }), w, ErrStock, `selective: class 2 "A", stock: not a stock; how many there are, 0 or more`},
		{base, minus, with(func(c *Class) { c.Size = tolerance.Bracket{} }), w, ErrNoReading, ""},
		{base, minus, with(func(c *Class) { c.Size = bracket(t, "[1 mm, ∞)") }), w, ErrOpen, ""},
		{base, minus, with(func(c *Class) { c.Size = far }), w, ErrRange, ""},
		{far, minus, []Class{good}, w, ErrRange, ""},
		{tolerance.Bracket{}, minus, []Class{good}, w, ErrNoReading, ""},
		{bracket(t, "(−∞, 3 mm]"), minus, []Class{good}, w, ErrOpen, ""},
		{base, tolerance.Whole(math.MaxInt64), []Class{good}, w, ErrRange, ""},
		{base, minus, []Class{good}, Wanted{}, ErrNoLimit, ""},
		{base, minus, []Class{good}, Wanted{tolerance.BandFrom(far), 0}, ErrRange, ""},
		{base, minus, []Class{good}, Wanted{w.Band, mm(t, "0.08")}, ErrAim, "selective: wanted fit, aim: aim outside the wanted band; a value that 0.03–0.07 mm allows"},
	} {
		choice, err := Choose(c.base, c.effect, c.classes, c.wanted)
		require.ErrorIs(t, err, c.kind, "case %d", i)
		require.Equal(t, -1, choice.Chosen)
		if c.text != "" {
			require.EqualError(t, err, c.text)
		}
	}
	_, err := Middle(tolerance.MustParseBand("max 1 mm"))
	require.ErrorIs(t, err, ErrNoLimit)
	_, err = Middle(tolerance.BandFrom(far))
	require.ErrorIs(t, err, ErrRange)
}
