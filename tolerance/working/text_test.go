package working_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// How each operation is written, and where brackets stand.
func TestSolve_notation(t *testing.T) {
	a := working.Given("width", "a", 3*units.Millimetre)
	b := working.Given("height", "b", 2*units.Millimetre)
	n := working.Given("depth", "n", -units.Millimetre)
	for _, c := range []struct {
		term                    working.Term
		words, symbols, numbers string
	}{
		{a.Add(b), "width + height", "a + b", "3 mm + 2 mm"},
		{a.Sub(b), "width − height", "a − b", "3 mm − 2 mm"},
		{a.Sub(n), "width − depth", "a − n", "3 mm − (−1 mm)"},
		{n.Sub(a), "depth − width", "n − a", "−1 mm − 3 mm"},
		{a.Add(b.Sub(n)), "width + height − depth", "a + b − n", "3 mm + 2 mm − (−1 mm)"},
		{a.Sub(b.Sub(n)), "width − (height − depth)", "a − (b − n)", "3 mm − (2 mm − (−1 mm))"},
		{a.Sub(b.Add(n)), "width − (height + depth)", "a − (b + n)", "3 mm − (2 mm + (−1 mm))"},
		{a.Sub(n.Add(b)), "width − (depth + height)", "a − (n + b)", "3 mm − (−1 mm + 2 mm)"},
		{a.Sub(b).Sub(n), "width − height − depth", "a − b − n", "3 mm − 2 mm − (−1 mm)"},
		{a.Sub(b.Scale(2, 1)), "width − 2 × height", "a − 2 × b", "3 mm − 2 × 2 mm"},
		{a.Sub(b).Abs(), "magnitude of (width − height)", "|a − b|", "|3 mm − 2 mm|"},
		{n.Abs().Sub(a).Abs(), "magnitude of (magnitude of (depth) − width)", "||n| − a|", "||−1 mm| − 3 mm|"},
		{a.Min(b), "least of (width, height)", "min(a, b)", "min(3 mm, 2 mm)"},
		{n.Max(b.Sub(a)), "greatest of (depth, height − width)", "max(n, b − a)", "max(−1 mm, 2 mm − 3 mm)"},
		{a.Spread(b, n), "greatest of (width, height, depth) − least of (width, height, depth)", "max(a, b, n) − min(a, b, n)", "max(3 mm, 2 mm, −1 mm) − min(3 mm, 2 mm, −1 mm)"},
		{a.Spread(b).Scale(1, 2), "(greatest of (width, height) − least of (width, height)) ÷ 2", "(max(a, b) − min(a, b)) ÷ 2", "(max(3 mm, 2 mm) − min(3 mm, 2 mm)) ÷ 2"},
		{a.Scale(2, 1), "2 × width", "2 × a", "2 × 3 mm"},
		{a.Scale(1, 1), "1 × width", "1 × a", "1 × 3 mm"},
		{a.Scale(1, 2), "width ÷ 2", "a ÷ 2", "3 mm ÷ 2"},
		{a.Scale(2, 3), "width × 2 ÷ 3", "a × 2 ÷ 3", "3 mm × 2 ÷ 3"},
		{n.Scale(2, 1), "2 × depth", "2 × n", "2 × (−1 mm)"},
		{n.Scale(1, 2), "depth ÷ 2", "n ÷ 2", "−1 mm ÷ 2"},
		{a.Scale(-1, 1), "−1 × width", "−1 × a", "−1 × 3 mm"},
		{b.Add(a.Scale(-1, 1)), "height + (−1) × width", "b + (−1) × a", "2 mm + (−1) × 3 mm"},
		{a.Scale(-2, -3), "width × (−2) ÷ (−3)", "a × (−2) ÷ (−3)", "3 mm × (−2) ÷ (−3)"},
		{a.Scale(0, 3), "width × 0 ÷ 3", "a × 0 ÷ 3", "3 mm × 0 ÷ 3"},
		{a.Add(b).Scale(1, 2), "(width + height) ÷ 2", "(a + b) ÷ 2", "(3 mm + 2 mm) ÷ 2"},
		{a.Scale(1, 2).Scale(3, 1), "3 × (width ÷ 2)", "3 × (a ÷ 2)", "3 × (3 mm ÷ 2)"},
		{a.ScalePi(1, 1), "π × width", "π × a", "π × 3 mm"},
		{n.ScalePi(1, 4), "π × depth ÷ 4", "π × n ÷ 4", "π × (−1 mm) ÷ 4"},
		{a.ScalePi(3, 2), "π × width × 3 ÷ 2", "π × a × 3 ÷ 2", "π × 3 mm × 3 ÷ 2"},
		{a.MulDiv(b, n), "width × height ÷ depth", "a × b ÷ n", "3 mm × 2 mm ÷ (−1 mm)"},
		{a.MulDiv(b, a.Sub(n)), "width × height ÷ (width − depth)", "a × b ÷ (a − n)", "3 mm × 2 mm ÷ (3 mm − (−1 mm))"},
		{a.Share(b, n), "width × height ÷ (height + depth)", "a × b ÷ (b + n)", "3 mm × 2 mm ÷ (2 mm + (−1 mm))"},
		{n.Share(n, n.Sub(a)), "depth × depth ÷ (depth + depth − width)", "n × n ÷ (n + n − a)", "−1 mm × (−1 mm) ÷ (−1 mm + (−1 mm) − 3 mm)"},
		{a.Share(n.Sub(a), b), "width × (depth − width) ÷ (depth − width + height)", "a × (n − a) ÷ (n − a + b)", "3 mm × (−1 mm − 3 mm) ÷ (−1 mm − 3 mm + 2 mm)"},
	} {
		s := text(t, c.term, 0)
		st := s.Steps[len(s.Steps)-1]
		require.Equal(t, c.words, st.Words)
		require.Equal(t, c.symbols, st.Symbols)
		require.Equal(t, c.numbers, st.Numbers)
		require.NoError(t, recompute(st, "mm"))
	}
}

func TestSolve_style(t *testing.T) {
	groove, ring := grooveAndRing()
	c := sideClearance(groove, ring).Named("side clearance", "c")
	last := func(s units.Style[units.Length]) working.Step {
		solution, err := working.Solve(c, s)
		require.NoError(t, err)
		return solution.Steps[0]
	}
	st := last(units.Style[units.Length]{Places: 4, Bare: true, Sign: true})
	require.Equal(t, "1.5600 − 1.5050", st.Numbers)
	require.Equal(t, "+0.0550 mm", st.Result)
	st = last(units.Style[units.Length]{Places: units.AllPlaces})
	require.Equal(t, "1.56 mm − 1.505 mm", st.Numbers)
	require.Equal(t, "0.055 mm", st.Result)
	st = last(units.Style[units.Length]{Places: 2, Point: true})
	require.Equal(t, "1.56 mm − 1.505 mm", st.Numbers)
	require.Equal(t, ".06 mm", st.Result) // 0.055: a tie, to the even digit
	require.False(t, st.Exact)
	st = last(units.Style[units.Length]{Places: 18})
	require.Equal(t, "0.055000000000000000 mm", st.Result)
	require.True(t, st.Exact)
	// 1.56 mm is 0.0614173228346456692913… in, without end.
	st = last(units.Style[units.Length]{Places: 18, Unit: units.InInches, Point: true})
	require.Equal(t, ".061417322834645669 in − .059251968503937008 in", st.Numbers)
	require.Equal(t, ".002165354330708661 in", st.Result)
	st = last(units.Style[units.Length]{Places: units.AllPlaces, Unit: units.InInches})
	require.Equal(t, "0.0021653543 in", st.Result) // no end: no finer than a picometre
	st = last(units.Style[units.Length]{Places: 3, Unit: 200})
	require.Equal(t, "0.055 mm", st.Result)

	for _, s := range []units.Style[units.Length]{{Places: -2}, {Places: 19}, {Rounding: units.Up}, {Rounding: 77, Places: 3}} {
		_, err := working.Solve(c, s)
		require.ErrorIs(t, err, working.ErrStyle)
	}
	_, err := working.Solve(c, units.Style[units.Length]{Places: -2})
	require.EqualError(t, err, `working: solve places "-2": not a style to write a solution in; 0 to 18, or units.AllPlaces`)
	_, err = working.Solve(c, units.Style[units.Length]{Rounding: units.Down})
	require.EqualError(t, err, `working: solve rounding "down": not a style to write a solution in; nearest, ties to even: the values themselves are rounded so`)
}

// Names are any text; a line stays a line.
func TestSolve_names(t *testing.T) {
	for in, want := range map[string]string{
		"a\nb":                    "a b",
		"  a \t\r\n b ":           "a b",
		"a\x00\x1b[31mb":          "a [31mb",
		"\xff\xfea":               "\uFFFDa",
		"a\u202eb\u200bc":         "a b c",
		"a\u2028b\u2029c":         "a b c",
		"Größe · 1. Ring":         "Größe · 1. Ring",
		"a\u00a0b":                "a b",
		strings.Repeat("w", 2000): strings.Repeat("w", 2000),
	} {
		s := text(t, working.Given(in, "", units.Millimetre).Named("x", ""), 0)
		require.Equal(t, want, s.Inputs[0].Words)
		require.Equal(t, "x = "+want+"\n  = 1 mm\n", s.Text())
	}
	// With nothing to print in it, it is no name.
	require.Equal(t, "1 mm\n", text(t, working.Given("\n", "\u200b", units.Millimetre), 0).Text())
}

func FuzzNames(f *testing.F) {
	f.Add("groove width", "w")
	f.Add("a\nb*c*", "**")
	f.Add("\xff<b>", "1. x")
	f.Fuzz(func(t *testing.T, words, symbol string) {
		a := working.Given(words, symbol, units.Millimetre)
		s := text(t, a.Add(a).Named(symbol, words), 1)
		lines := strings.Split(strings.TrimSuffix(s.Text(), "\n"), "\n")
		require.LessOrEqual(t, len(lines), 4)
		require.Equal(t, len(lines), len(strings.Split(strings.TrimSuffix(s.Markdown(), "\n"), "\n")))
		for _, l := range lines {
			require.NotContains(t, l, "  =  ")
			for _, r := range l {
				require.True(t, unicode.IsPrint(r), "%q", l)
			}
		}
		require.NoError(t, recompute(s.Steps[0], "mm"))
	})
}

// What names mean in Markdown is escaped. cmark 0.30.2 and cmark-gfm 0.29.0
// print each of these as the name that it is.
func TestSolution_markdown(t *testing.T) {
	for name, want := range map[string]string{
		"a*b*":       `a\*b\*`,
		"_x_":        `\_x\_`,
		"`code`":     "\\`code\\`",
		"<b>":        `\<b\>`,
		"[l](u)":     `\[l\](u)`,
		"# head":     `\# head`,
		"- item":     `\- item`,
		"+ plus":     `\+ plus`,
		"===":        `\===`,
		"1. one":     `1\. one`,
		"12) two":    `12\) two`,
		"2nd ring":   "2nd ring",
		"> quote":    `\> quote`,
		"a|b":        `a\|b`,
		"~~s~~":      `\~\~s\~\~`,
		"&amp;":      `\&amp;`,
		"a\\":        `a\\`,
		"ring-width": "ring-width",
		"www.a.b":    `www\.a.b`,
		"http://a":   `http\://a`,
	} {
		a := working.Given(name, "", units.Millimetre)
		require.True(t, strings.HasPrefix(text(t, a.Add(a), 0).Markdown(), want+" + "), name)
	}
	s := text(t, working.Given("a", "a", -units.Millimetre).Abs(), 0)
	require.Equal(t, "magnitude of (a)\\\n\\|a\\|\\\n= \\|−1 mm\\|\\\n= **1 mm**\n", s.Markdown())
}

// Symbols that several things have are told apart; one thing given twice is
// one thing.
func TestSolve_tellsApart(t *testing.T) {
	a := working.Given("first groove", "w", 2*units.Millimetre)
	b := working.Given("second groove", "w", 3*units.Millimetre)
	again := working.Given("first groove", "w", 2*units.Millimetre)
	taken := working.Given("odd one", "w₂", units.Millimetre)
	s := text(t, a.Add(b).Add(again).Add(taken).Named("sum", "w"), 0)
	require.Equal(t, "w₄ = w₁ + w₃ + w₁ + w₂", s.Steps[0].Symbol+" = "+s.Steps[0].Symbols)
	require.Len(t, s.Inputs, 3)

	// A formula's own parts don't clash with what is called like them.
	third := working.Given("p", "p₁", units.Millimetre).Scale(1, 3).Scale(3, 1)
	s = text(t, third, 9)
	require.Len(t, s.Steps, 2)
	require.Equal(t, "part 1", s.Steps[0].Name)
	require.NotEqual(t, s.Inputs[0].Symbol, s.Steps[0].Symbol)
}

func TestSolution_json(t *testing.T) {
	groove, ring := grooveAndRing()
	s := text(t, sideClearance(groove, ring).Named("side clearance", "c"), 3)
	data, err := json.Marshal(s)
	require.NoError(t, err)
	require.JSONEq(t, `{"inputs":[
		{"words":"groove width","symbol":"w","number":"1.560 mm","exact":true,"held":"1.56 mm"},
		{"words":"ring height","symbol":"h","number":"1.505 mm","exact":true,"held":"1.505 mm"}],
		"steps":[{"name":"side clearance","symbol":"c","words":"groove width − ring height","symbols":"w − h",
		"numbers":"1.560 mm − 1.505 mm","result":"0.055 mm","places":3,"numbersExact":true,"exact":true}]}`, string(data))
	var back working.Solution
	require.NoError(t, json.Unmarshal(data, &back))
	require.Empty(t, cmp.Diff(s, back))
	require.Empty(t, working.Solution{}.Text())
	require.Empty(t, working.Solution{}.Markdown())
	require.Equal(t, "= x: "+s.Text(), string(s.AppendText([]byte("= x: "))))
}
