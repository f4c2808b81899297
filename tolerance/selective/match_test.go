package selective

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestMatch_everyWay(t *testing.T) {
	brackets := func(t *testing.T, text string) (bs []tolerance.Bracket) {
		for s := range strings.FieldsSeq(text) {
			bs = append(bs, bracket(t, strings.Replace(s, "±", " ±", 1)+" µm"))
		}
		return bs
	}
	var m Matcher
	vectors.Load(t, "reference/fit_batches.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var parts []Part
		for i, b := range brackets(t, c.Text("holes")) {
			parts = append(parts, Part{"hole " + strconv.Itoa(i), b})
		}
		var mates []Class
		for j, b := range brackets(t, c.Text("shafts")) {
			mates = append(mates, Class{"shaft " + strconv.Itoa(j), b, 1})
		}
		lo, hi, _ := strings.Cut(c.Text("band"), " ")
		w := Wanted{tolerance.MustParseBand(lo + "–" + hi + " µm"), units.Length(c.Int64("aim")) * units.Micrometre}
		got, err := m.Match(parts, tolerance.Whole(c.Int64("effect")), mates, w)
		require.NoError(t, err)
		want := strings.Fields(c.Text("mates"))
		mate := make([]string, len(parts))
		var sum units.Length
		for _, p := range got.Pairs {
			mate[p.Part] = strconv.Itoa(p.Mate)
			require.Equal(t, tolerance.Within, w.Band.Judge(p.Fit))
			require.Equal(t, 0, got.Unused[p.Mate])
			sum += p.Distance
		}
		for _, l := range got.LeftOver {
			mate[l.Part] = "x"
			require.Equal(t, parts[l.Part].Name, l.Name)
			require.Equal(t, map[tolerance.Verdict]Reason{
				tolerance.Within: Outnumbered, tolerance.Undecided: CantTell, tolerance.Below: FitsNowhere, tolerance.Above: FitsNowhere,
			}[l.Verdict], l.Reason)
		}
		require.Equal(t, want, mate)
		require.Equal(t, units.Length(c.Int64("greatest"))*units.Micrometre, got.Greatest)
		require.Equal(t, units.Length(c.Int64("sum"))*units.Micrometre, sum)
		again, err := Match(parts, tolerance.Whole(c.Int64("effect")), mates, w)
		require.NoError(t, err)
		require.Equal(t, got, again)
	})
}

// A class serves as many parts as it is in stock, and each part left over is
// told why.
func TestMatch_stock(t *testing.T) {
	parts := []Part{
		{"1", bracket(t, "60.000 mm")}, {"2", bracket(t, "60.001 mm")}, {"3", bracket(t, "60.000 mm")},
		{"worn", bracket(t, "60.200 mm")}, {"doubtful", bracket(t, "60.000 ±0.020 mm")},
	}
	mates := []Class{{"std", bracket(t, "59.960 mm"), 2}, {"over", bracket(t, "59.990 mm"), 7}}
	w, err := Middle(tolerance.MustParseBand("0.030–0.050 mm"))
	require.NoError(t, err)
	got, err := Match(parts, tolerance.Whole(-1), mates, w)
	require.NoError(t, err)
	require.Equal(t, Paired{
		Pairs: []Pairing{{0, 0, bracket(t, "0.040 mm"), 0}, {2, 0, bracket(t, "0.040 mm"), 0}},
		LeftOver: []LeftOver{
			{1, "2", Outnumbered, 0, bracket(t, "0.041 mm"), tolerance.Within},
			{3, "worn", FitsNowhere, 1, bracket(t, "0.210 mm"), tolerance.Above},
			{4, "doubtful", CantTell, 0, bracket(t, "[0.020 mm, 0.060 mm]"), tolerance.Undecided},
		},
		Unused: []int{0, 7},
		Spread: tolerance.Exactly(units.Length(0)),
	}, got)
	b, err := json.Marshal(got)
	require.NoError(t, err)
	var back Paired
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, got, back)

	mates[0].Stock, mates[1].Stock = 0, 0
	got, err = Match(parts[:1], tolerance.Whole(-1), mates, w)
	require.NoError(t, err)
	require.Equal(t, []LeftOver{{0, "1", FitsNowhere, -1, tolerance.Bracket{}, tolerance.Undecided}}, got.LeftOver)
	require.True(t, got.Spread.IsZero())
}

func TestMatch_refuses(t *testing.T) {
	w := Wanted{tolerance.MustParseBand("0.03–0.07 mm"), mm(t, "0.05")}
	part, mate := Part{"1", bracket(t, "60 mm")}, Class{"A", bracket(t, "59.95 mm"), 1}
	many := make([]Part, 3000)
	for i := range many {
		many[i] = part
	}
	plenty := Class{"A", mate.Size, math.MaxInt}
	for i, c := range []struct {
		parts []Part
		mates []Class
		w     Wanted
		kind  error
	}{
		{nil, []Class{mate}, w, ErrEmpty},
		{[]Part{part}, nil, w, ErrEmpty},
		{make([]Part, MostClasses+1), []Class{mate}, w, ErrTooMany},
		{many, []Class{plenty}, w, ErrTooMany},
		{[]Part{{"", part.Base}}, []Class{mate}, w, ErrName},
		{[]Part{{"1", tolerance.Bracket{}}}, []Class{mate}, w, ErrNoReading},
		{[]Part{{"1", bracket(t, "[1 mm, ∞)")}}, []Class{mate}, w, ErrOpen},
		{[]Part{{"1", tolerance.Exactly(units.Length(1 << 61))}}, []Class{{"A", tolerance.Exactly(units.Length(-1 << 61)), 1}}, w, ErrRange},
		{[]Part{part}, []Class{mate}, Wanted{w.Band, 0}, ErrAim},
		{[]Part{{"1", tolerance.Exactly(units.Length(1 << 60))}}, []Class{{"A", tolerance.Exactly(units.Length(0)), 1}},
			Wanted{tolerance.AtLeast(units.Length(0)), 0}, ErrRange},
	} {
		got, err := Match(c.parts, tolerance.Whole(-1), c.mates, c.w)
		require.ErrorIs(t, err, c.kind, "case %d", i)
		require.Zero(t, got)
		require.NotEmpty(t, err.Error())
	}
}

// batch is n bores and n pistons whose clearances are wanted between 30 and
// 70 µm.
func batch(t testing.TB, n int) (parts []Part, mates []Class, w Wanted) {
	r := rand.New(rand.NewPCG(64, 5))
	for i := range n {
		name := strconv.Itoa(i + 1)
		bore, err := tolerance.PlusMinus(86*units.Millimetre+units.Length(r.IntN(30))*units.Micrometre, units.Micrometre)
		require.NoError(t, err)
		piston, err := tolerance.PlusMinus(mm(t, "85.95")+units.Length(r.IntN(30))*units.Micrometre, units.Micrometre)
		require.NoError(t, err)
		parts, mates = append(parts, Part{"bore " + name, bore}), append(mates, Class{"piston " + name, piston, 1})
	}
	w, err := Middle(tolerance.MustParseBand("0.03–0.07 mm"))
	require.NoError(t, err)
	return parts, mates, w
}

func TestMatcher_allocatesTheAnswerAlone(t *testing.T) {
	parts, mates, w := batch(t, 64)
	var m Matcher
	p, err := m.Match(parts, tolerance.Whole(-1), mates, w)
	require.NoError(t, err)
	require.Empty(t, p.LeftOver)
	require.LessOrEqual(t, testing.AllocsPerRun(10, func() {
		_, _ = m.Match(parts, tolerance.Whole(-1), mates, w)
	}), 3.0, "pairs, unused, fits for the spread")
}

// Whatever the batch: an answer or a typed error; no mate twice, no fit out of
// band, and nobody left over who could have been served without taking from
// another.
func FuzzMatch(f *testing.F) {
	f.Add([]byte{10, 20, 30, 40}, []byte{1, 2, 3}, int64(-1), int64(1), int64(5), int64(30), uint8(1))
	f.Add([]byte{0}, []byte{255}, int64(1)<<62, int64(3), int64(-9), int64(1)<<60, uint8(0))
	f.Fuzz(func(t *testing.T, bases, sizes []byte, num, den, lo, width int64, stock uint8) {
		if len(bases) > 12 || len(sizes) > 12 {
			return
		}
		var parts []Part
		for i, b := range bases {
			x, err := tolerance.PlusMinus(units.Length(b), units.Length(b&1))
			require.NoError(t, err)
			parts = append(parts, Part{strconv.Itoa(i), x})
		}
		var mates []Class
		for j, s := range sizes {
			mates = append(mates, Class{strconv.Itoa(j), tolerance.Exactly(units.Length(s)), int(stock&3) - 1})
		}
		band, err := tolerance.Between(units.Length(lo), units.Length(lo)+units.Length(width))
		if err != nil {
			return
		}
		w, err := Middle(band)
		require.NoError(t, err)
		effect := tolerance.Ratio{Num: num, Den: den}
		got, err := Match(parts, effect, mates, w)
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		require.Len(t, parts, len(got.Pairs)+len(got.LeftOver))
		for j, left := range got.Unused {
			require.GreaterOrEqual(t, left, 0)
			for _, l := range got.LeftOver {
				if left > 0 {
					require.NotEqual(t, tolerance.Within, band.Judge(Predict(parts[l.Part].Base, mates[j].Size, effect)))
				}
			}
		}
		for _, p := range got.Pairs {
			require.Equal(t, tolerance.Within, band.Judge(p.Fit))
		}
	})
}

func FuzzParseGrades(f *testing.F) {
	f.Add(bores)
	f.Add("A: max 1 mm\n# x\nB: 5-6 in")
	f.Add("A:\n")
	f.Fuzz(func(t *testing.T, text string) {
		g, err := ParseGrades(text)
		if err != nil {
			var e *InputError
			require.ErrorAs(t, err, &e)
			return
		}
		_, err = g.Validate()
		require.NoError(t, err)
		table, err := g.Table()
		if err != nil {
			return // a name that Parse takes is written, unless it looks like a remark
		}
		back, err := ParseGrades(table)
		require.NoError(t, err)
		require.Equal(t, g, back)
	})
}

func BenchmarkMatch(b *testing.B) {
	parts, mates, w := batch(b, 64)
	var m Matcher
	b.Run("lib=selective/op=match64", func(b *testing.B) {
		for b.Loop() {
			if _, err := m.Match(parts, tolerance.Whole(-1), mates, w); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=selective/op=choose64", func(b *testing.B) {
		for b.Loop() {
			if _, err := Choose(parts[0].Base, tolerance.Whole(-1), mates, w); err != nil {
				b.Fatal(err)
			}
		}
	})
	g := mustGrades(b, bores)
	size := parts[0].Base
	b.Run("lib=selective/op=place", func(b *testing.B) {
		for b.Loop() {
			if _, err := g.Place(size); err != nil {
				b.Fatal(err)
			}
		}
	})
}
