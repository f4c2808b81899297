package selective

import (
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const bores = "A: 86.000–86.010 mm\nB: 86.010–86.020 mm\nC: more than 86.020 mm, max 86.030 mm\n"

func mustGrades(t testing.TB, text string) Grades {
	t.Helper()
	g, err := ParseGrades(text)
	require.NoError(t, err)
	return g
}

func bracket(t testing.TB, text string) tolerance.Bracket {
	t.Helper()
	b, err := tolerance.ParseBracket(text)
	require.NoError(t, err, text)
	return b
}

func TestGrades_gapsAsPublished(t *testing.T) {
	vectors.Load(t, "published/fit_gradegaps.txt").Each(t, func(t *testing.T, c vectors.Case) {
		g := Grades{{"smaller", tolerance.MustParseBand(c.Text("smaller"))}, {"larger", tolerance.MustParseBand(c.Text("larger"))}}
		faults, err := g.Validate()
		require.NoError(t, err)
		require.Equal(t, []Fault{{Gap, "smaller", "larger", bracket(t, c.Text("gap"))}}, faults)
		p, err := g.Place(bracket(t, c.Text("gap")))
		require.NoError(t, err)
		require.Equal(t, "in no grade", p.String())
	})
}

func TestGrades_Validate(t *testing.T) {
	for _, c := range []struct {
		text string
		want []Fault
	}{
		{bores, []Fault{{SharedLimit, "A", "B", bracket(t, "86.010 mm")}}},
		{"C: 3–4 mm\nA: 1–2 mm\nB: 2–3 mm", []Fault{{SharedLimit, "A", "B", bracket(t, "2 mm")}, {SharedLimit, "B", "C", bracket(t, "3 mm")}}},
		{"A: less than 1 mm\nB: more than 1 mm", []Fault{{Gap, "A", "B", bracket(t, "1 mm")}}},
		{"A: less than 1 mm\nB: min 1 mm", nil},
		{"A: max 1 mm\nB: more than 1 mm", nil},
		{"A: 1–3 mm\nB: 2–4 mm", []Fault{{Overlap, "A", "B", bracket(t, "[2 mm, 3 mm]")}}},
		// A wide grade bridges what would be a gap between two others.
		{"A: 1–9 mm\nB: 2–3 mm\nC: 5–6 mm", []Fault{{Overlap, "A", "B", bracket(t, "[2 mm, 3 mm]")}, {Overlap, "A", "C", bracket(t, "[5 mm, 6 mm]")}}},
		{"A: 1–2 mm\nB: 1–2 mm", []Fault{{Overlap, "A", "B", bracket(t, "[1 mm, 2 mm]")}}},
		{"A: max 2 mm\nB: max 1 mm\nC: 4–5 mm", []Fault{{Overlap, "B", "A", bracket(t, "(−∞, 1 mm]")}, {Gap, "A", "C", bracket(t, "(2 mm, 4 mm)")}}},
	} {
		got, err := mustGrades(t, c.text).Validate()
		require.NoError(t, err)
		require.Equal(t, c.want, got, c.text)
	}
}

func TestGrades_Place(t *testing.T) {
	g := mustGrades(t, bores+"E: 86.040–86.050 mm")
	for _, c := range []struct {
		size, want string
		grade      string
		shared     bool
	}{
		{"86.005 mm", "A", "A", false},
		{"86.000 mm", "A", "A", false},
		{"86.010 mm", "A or B", "", true},
		{"86.020 mm", "B", "B", false},
		{"86.014 ±0.001 mm", "B", "B", false},
		{"86.010 ±0.001 mm", "A or B", "", false},
		{"86.020 ±0.001 mm", "B or C", "", false},
		{"86.015 ±0.010 mm", "A or B or C", "", false},
		{"86.000 ±0.001 mm", "A or in no grade", "", false},
		{"86.035 ±0.006 mm", "C or E or in no grade", "", false},
		{"86.035 ±0.001 mm", "in no grade", "", false},
		{"[86.005 mm, ∞)", "A or B or C or E or in no grade", "", false},
	} {
		p, err := g.Place(bracket(t, c.size))
		require.NoError(t, err)
		require.Equal(t, c.want, p.String(), c.size)
		require.Equal(t, c.shared, p.Shared, c.size)
		grade, ok := p.Grade()
		require.Equal(t, c.grade != "", ok, c.size)
		require.Equal(t, c.grade, grade, c.size)
	}
	p, err := g.Place(bracket(t, "86.035 ±0.006 mm"))
	require.NoError(t, err)
	require.Equal(t, []tolerance.Bracket{bracket(t, "(86.03 mm, 86.04 mm)")}, p.Outside)
}

// What Place says agrees with asking each band about sizes in the bracket.
func TestGrades_placeHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 3000 {
		var g Grades
		for len(g) < 4 {
			lo := units.Length(r.IntN(20))
			b, err := tolerance.NewBand(lo, tolerance.End(r.IntN(3)), lo+units.Length(r.IntN(6)), tolerance.End(r.IntN(3)))
			if err == nil && !b.IsZero() {
				g = append(g, Grade{string(rune('A' + len(g))), b})
			}
		}
		lo := units.Length(r.IntN(20))
		size, err := tolerance.NewInterval(lo, tolerance.Closed, lo+units.Length(r.IntN(5)), tolerance.Closed)
		require.NoError(t, err)
		p, err := g.Place(size)
		require.NoError(t, err)
		hi, _ := size.Upper()
		for q := lo; q <= hi; q += units.Picometre {
			outside := true
			for _, grade := range g {
				if grade.Band.Allows(q) {
					outside = false
					require.Contains(t, p.Grades, grade.Name)
				}
			}
			holds := false
			for _, o := range p.Outside {
				holds = holds || o.Contains(q)
			}
			require.Equal(t, outside, holds, "%v of %v in %v", q, size, g)
		}
		for _, name := range p.Grades {
			both, ok := size.Intersect(g[name[0]-'A'].Band.Interval())
			require.True(t, ok, "%v", both)
		}
	}
}

func TestParseGrades_refuses(t *testing.T) {
	for _, c := range []struct {
		text string
		kind error
		want string
	}{
		{"", ErrEmpty, "selective: grades: nothing given; at least one grade"},
		{"# nothing\n\n", ErrEmpty, ""},
		{"A 86 mm", ErrSyntax, `selective: table, line 1 "A 86 mm": not written as expected; a name, a colon and what it means, as "A: 86.000–86.010 mm"`},
		{"\n: 1–2 mm", ErrSyntax, ""},
		{"A: big", ErrSyntax, ""},
		{"A: no limit", ErrNoLimit, `selective: grades, line 1 "A", band: no limit given; a band with at least one limit`},
		{"A: 1–2 mm\n# remark\nA: 2–3 mm", ErrDuplicate, `selective: grades, line 3 "A", name: given twice; another name than that of grade 1`},
		{strings.Repeat("A: 1–2 mm\n", MostGrades+1), ErrTooMany, ""},
	} {
		g, err := ParseGrades(c.text)
		require.ErrorIs(t, err, c.kind, c.text)
		require.Nil(t, g)
		var e *InputError
		require.ErrorAs(t, err, &e)
		if c.want != "" {
			require.EqualError(t, err, c.want)
		}
	}
	_, err := ParseGrades("A: big")
	require.ErrorIs(t, err, tolerance.ErrSyntax, "the cause is there too")
}

func TestGrades_refuses(t *testing.T) {
	good := mustGrades(t, bores)
	bad := tolerance.BandFrom(tolerance.Exactly(units.OutOfRange[units.Length]()))
	for _, c := range []struct {
		g    Grades
		kind error
	}{
		{nil, ErrEmpty},
		{make(Grades, MostGrades+1), ErrTooMany},
		{Grades{{"", tolerance.MustParseBand("1–2 mm")}}, ErrName},
		{Grades{{"A", tolerance.Band{}}}, ErrNoLimit},
		{Grades{{"A", bad}}, ErrRange},
		{append(good, good[0]), ErrDuplicate},
	} {
		_, err := c.g.Validate()
		require.ErrorIs(t, err, c.kind)
		_, err = c.g.Place(bracket(t, "1 mm"))
		require.ErrorIs(t, err, c.kind)
		_, err = c.g.Table()
		require.ErrorIs(t, err, c.kind)
	}
	_, err := good.Place(tolerance.Bracket{})
	require.ErrorIs(t, err, ErrNoReading)
	_, err = good.Place(tolerance.Exactly(units.OutOfRange[units.Length]()))
	require.ErrorIs(t, err, ErrRange)
	for _, name := range []string{"#1", " A", "A:B", "A\nB"} {
		_, err := Grades{{name, tolerance.MustParseBand("1–2 mm")}}.Table()
		require.ErrorIs(t, err, ErrSyntax)
	}
}

func TestGrades_roundTrip(t *testing.T) {
	g := mustGrades(t, "# bores\n\tA\t: 86.000–86.010 mm\r\n\nB: 3.3860–3.3866 in\nC: more than 86.020 mm\n")
	text, err := g.Table()
	require.NoError(t, err)
	require.Equal(t, "A: 86–86.01 mm\nB: 86.0044–86.01964 mm\nC: more than 86.02 mm\n", text)
	require.Equal(t, g, mustGrades(t, text))
	b, err := json.Marshal(g)
	require.NoError(t, err)
	var back Grades
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, g, back)
	// The same for masses.
	m, err := ParseGradesOf[units.Mass]("light: 410–414 g\nheavy: more than 414 g, max 418 g")
	require.NoError(t, err)
	p, err := m.Place(tolerance.Exactly(414 * units.Gram))
	require.NoError(t, err)
	require.Equal(t, "light", p.String())
}

func TestWords(t *testing.T) {
	for k := Gap; k <= Overlap; k++ {
		b, err := k.MarshalText()
		require.NoError(t, err)
		var back FaultKind
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, k, back)
	}
	for r := Reason(0); r <= Outnumbered; r++ {
		b, err := r.MarshalText()
		require.NoError(t, err)
		var back Reason
		require.NoError(t, back.UnmarshalText(b))
		require.Equal(t, r, back)
	}
	require.Empty(t, FaultKind(9).String())
	require.Empty(t, Reason(9).String())
	var k FaultKind
	require.ErrorIs(t, k.UnmarshalText([]byte("hole")), ErrSyntax)
	require.ErrorIs(t, k.UnmarshalText(nil), ErrSyntax)
	var r Reason
	require.ErrorIs(t, r.UnmarshalText([]byte("ugly")), ErrSyntax)
	long := refuse("grade", 1, strings.Repeat("ä", 100), "", ErrName, "").(*InputError)
	require.LessOrEqual(t, len(long.Name), 64)
	require.Equal(t, strings.Repeat("ä", 32), long.Name)
	require.Equal(t, strings.Repeat("ä", 31), clip("x" + strings.Repeat("ä", 40))[1:])
}

func TestMatingTable(t *testing.T) {
	table, err := ParseMatingTable("# tunnel + journal: shell\n1 + A: red\n1 + B: blue\n2 + A: blue\n")
	require.NoError(t, err)
	require.Equal(t, MatingTable{{"1", "A", "red"}, {"1", "B", "blue"}, {"2", "A", "blue"}}, table)
	tunnel := mustGrades(t, "1: 60.000–60.010 mm\n2: more than 60.010 mm, max 60.020 mm")
	journal := mustGrades(t, "A: 54.950–54.960 mm\nB: 54.940–54.950 mm")
	for _, c := range []struct {
		tunnel, journal string
		want            Selection
		class           string
	}{
		{"60.005 mm", "54.955 mm", Selection{Classes: []string{"red"}}, "red"},
		{"60.005 mm", "54.950 mm", Selection{Classes: []string{"red", "blue"}}, ""},
		{"60.010 ±0.002 mm", "54.950 ±0.002 mm", Selection{Classes: []string{"red", "blue"}, Missing: [][2]string{{"2", "B"}}}, ""},
		{"60.015 mm", "54.945 mm", Selection{Missing: [][2]string{{"2", "B"}}}, ""},
		{"60.021 mm", "54.945 mm", Selection{Ungraded: true}, ""},
		{"60.015 mm", "54.960 ±0.001 mm", Selection{Classes: []string{"blue"}, Ungraded: true}, ""},
	} {
		first, err := tunnel.Place(bracket(t, c.tunnel))
		require.NoError(t, err)
		second, err := journal.Place(bracket(t, c.journal))
		require.NoError(t, err)
		s, err := Select(table, first, second)
		require.NoError(t, err)
		require.Equal(t, c.want, s)
		class, ok := s.Class()
		require.Equal(t, c.class != "", ok)
		require.Equal(t, c.class, class)
	}
	_, err = Select(table, Place{}, Place{Grades: []string{"A"}})
	require.ErrorIs(t, err, ErrNoReading)
	_, err = Select(nil, Place{Grades: []string{"A"}}, Place{Grades: []string{"A"}})
	require.ErrorIs(t, err, ErrEmpty)
	for _, c := range []struct {
		text string
		kind error
	}{
		{"", ErrEmpty},
		{"1 A: red", ErrSyntax},
		{"1 + A:", ErrSyntax},
		{"1 + A red", ErrSyntax},
		{"1 + : red", ErrName},
		{"1 + A: red\n1 + A: blue", ErrDuplicate},
		{strings.Repeat("1 + A: red\n", MostCombinations+2), ErrTooMany},
	} {
		_, err := ParseMatingTable(c.text)
		require.ErrorIs(t, err, c.kind, "%.20s", c.text)
	}
}
