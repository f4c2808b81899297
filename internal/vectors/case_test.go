package vectors_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// A witness stands in for a test and keeps what is said to it.
type witness struct {
	testing.TB
	fatal string
	said  []string
	logs  []string
}

type stopped struct{}

func (w *witness) Helper()                    {}
func (w *witness) Logf(f string, args ...any) { w.logs = append(w.logs, fmt.Sprintf(f, args...)) }
func (w *witness) Errorf(f string, args ...any) {
	w.said = append(w.said, fmt.Sprintf(f, args...))
}
func (w *witness) Fatalf(f string, args ...any) {
	w.fatal = fmt.Sprintf(f, args...)
	panic(stopped{})
}

// watch runs a test on the first case of a file under a witness.
func watch(t *testing.T, text string, test func(c vectors.Case)) (w *witness) {
	t.Helper()
	f, err := read(text)
	require.NoError(t, err)
	w = &witness{TB: t}
	defer func() {
		if stop := recover(); stop != nil {
			require.Equal(t, stopped{}, stop)
		}
	}()
	for c := range f.All(w) {
		test(c)
	}
	return w
}

// one is a file of one case with one column, a.
func one(cell string) string {
	return header + "# count: 1\ncolumns: id; a\ncase ; " + cell + " # noted\n"
}

func TestCase_reads(t *testing.T) {
	w := watch(t, header+"# count: 1\ncolumns: id; source; text; none; int; float; yes; no; word; spare\n"+
		"x ; p. 3 ; 1/16 in ; - ; -9223372036854775808 ; -1.5e-3 ; yes ; no ; even ; 7 # note", func(c vectors.Case) {
		require.Equal(t, "demo.txt:5", c.Where())
		require.Equal(t, "x", c.ID)
		require.Equal(t, "p. 3", c.Source)
		require.Equal(t, "note", c.Note)
		require.Equal(t, "1/16 in", c.Text("text"))
		require.True(t, c.Has("text"))
		require.False(t, c.Has("none"))
		require.True(t, c.Is("none", "-"))
		require.False(t, c.Is("text", "1/16"))
		require.Equal(t, int64(math.MinInt64), c.Int64("int"))
		require.Equal(t, -0.0015, c.Float("float"))
		require.True(t, c.Bool("yes"))
		require.False(t, c.Bool("no"))
		require.Equal(t, "even", c.Choice("word", "away", "even"))
		require.Equal(t, 7, c.Int("spare"))
	})
	require.Empty(t, w.fatal)
	require.Empty(t, w.said)
	require.Equal(t, []string{"demo.txt: 1 of 1 cases run"}, w.logs)
}

func TestCase_malformed(t *testing.T) {
	for _, c := range []struct {
		cell string
		read func(c vectors.Case)
		want string
	}{
		{"1", func(c vectors.Case) { c.Text("b") }, `column b: unknown; the file has id; a`},
		{"1", func(c vectors.Case) { c.Is("b", "-") }, `column b: unknown; the file has id; a`},
		{"1", func(c vectors.Case) { c.Has("b") }, `column b: unknown; the file has id; a`},
		{"1", func(c vectors.Case) { c.Ignore("b") }, `column b: unknown; the file has id; a`},
		{"-", func(c vectors.Case) { c.Text("a") }, `column a: no value`},
		{"-", func(c vectors.Case) { c.Int64("a") }, `column a: no value`},
		{"-", func(c vectors.Case) { c.Near("a", 0) }, `column a: no value`},
		{"1.0", func(c vectors.Case) { c.Int64("a") }, `column a: "1.0" is not a whole number of 64 bits`},
		{"+1", func(c vectors.Case) { c.Int64("a") }, `column a: "+1" is not a whole number of 64 bits`},
		{"9223372036854775808", func(c vectors.Case) { c.Int64("a") }, `column a: "9223372036854775808" is not a whole number of 64 bits`},
		{"1 mm", func(c vectors.Case) { c.Float("a") }, `column a: "1 mm" is not a decimal number`},
		{"NaN", func(c vectors.Case) { c.Float("a") }, `column a: "NaN" is not a decimal number`},
		{"Inf", func(c vectors.Case) { c.Float("a") }, `column a: "Inf" is not a decimal number`},
		{"0x1p3", func(c vectors.Case) { c.Float("a") }, `column a: "0x1p3" is not a decimal number`},
		{"1_000", func(c vectors.Case) { c.Float("a") }, `column a: "1_000" is not a decimal number`},
		{"1/2", func(c vectors.Case) { c.Float("a") }, `column a: "1/2" is not a decimal number`},
		{"1e999", func(c vectors.Case) { c.Float("a") }, `column a: "1e999" is not a decimal number`},
		{"1.", func(c vectors.Case) { c.Float("a") }, `column a: "1." is not a decimal number`},
		{".5", func(c vectors.Case) { c.Float("a") }, `column a: ".5" is not a decimal number`},
		{"1e", func(c vectors.Case) { c.Float("a") }, `column a: "1e" is not a decimal number`},
		{"1e--5", func(c vectors.Case) { c.Float("a") }, `column a: "1e--5" is not a decimal number`},
		{"1e9999", func(c vectors.Case) { c.Near("a", 1) }, `column a: "1e9999" is not a decimal number, alone or with its ± tolerance`},
		{"1 ± 2 mm", func(c vectors.Case) { c.Near("a", 1) }, `column a: "1 ± 2 mm" is not a decimal number, alone or with its ± tolerance`},
		{"1 ± -2", func(c vectors.Case) { c.Near("a", 1) }, `column a: "1 ± -2" is not a decimal number, alone or with its ± tolerance`},
		{"1 ±", func(c vectors.Case) { c.Near("a", 1) }, `column a: "1 ±" is not a decimal number, alone or with its ± tolerance`},
		{"true", func(c vectors.Case) { c.Bool("a") }, `column a: "true" is none of yes, no`},
		{"evne", func(c vectors.Case) { c.Choice("a", "even", "away") }, `column a: "evne" is none of even, away`},
		{strings.Repeat("x", 70), func(c vectors.Case) { c.Bool("a") }, `column a: "` + strings.Repeat("x", 64) + `"… is none of yes, no`},
	} {
		w := watch(t, one(c.cell), c.read)
		require.Equal(t, "demo.txt:5: "+c.want, w.fatal)
	}
}

func TestCase_near(t *testing.T) {
	for _, c := range []struct {
		cell string
		got  float64
		want string // empty: it agrees
	}{
		{"16.2037", 16.2037, ""},
		{"16.2037", 16.20374, ""},
		{"16.2037", 16.20366, ""},
		{"16.2037", 16.20376, "off by 6e-05, at most 5e-05"},
		{"-16.2037", -16.20364, "off by 6e-05, at most 5e-05"},
		{"0.5", 0.55, "off by 0.05, at most 0.05"}, // as a float 0.55 is a little more
		{"0.5", 0.45, ""},                          // and 0.45 a little more, which is nearer
		{"2", 2.5, ""},
		{"2", 2.51, "off by 0.51, at most 0.5"},
		{"1.20e6", 1_195_635, ""},
		{"1.20e6", 1_194_999, "off by 5e+03, at most 5e+03"},
		{"5.80E-3", 0.005804, ""},
		{"0", 0.5, ""},
		{"16.2 ± 0.001", 16.2009, ""},
		{"16.2±0.001", 16.2011, "off by 0.0011, at most 0.001"},
		{"200 ± 0.5 %", 201, ""},
		{"-200 ± 0.5%", -201.1, "off by 1.1, at most 1"},
		{"3 ± 0", 3, ""},
		{"3 ± 0", math.Nextafter(3, 4), "off by 4.44e-16, at most 0"},
		{"1", math.NaN(), "got NaN, want 1"},
		{"1", math.Inf(-1), "got -Inf, want 1"},
	} {
		w := watch(t, one(c.cell), func(k vectors.Case) { k.Near("a", c.got) })
		require.Empty(t, w.fatal)
		if c.want == "" {
			require.Empty(t, w.said, "%s, %v", c.cell, c.got)
			continue
		}
		require.Len(t, w.said, 1, "%s, %v", c.cell, c.got)
		require.True(t, strings.HasPrefix(w.said[0], "demo.txt:5: column a: got "), w.said[0])
		require.Contains(t, w.said[0], c.want)
	}
}

func TestCase_unread(t *testing.T) {
	text := header + "# count: 2\ncolumns: id; a; b\nx ; 1 ; 2\ny ; 3 ; 4\n"
	w := watch(t, text, func(c vectors.Case) {
		c.Text("a")
		if c.ID == "x" {
			c.Ignore("b")
		}
	})
	require.Equal(t, []string{"demo.txt:6: column b: the test has not read it"}, w.said)

	f, err := read(text)
	require.NoError(t, err)
	w = &witness{TB: t}
	for range f.All(w) {
		break
	}
	require.Equal(t, []string{"demo.txt:5: column a: the test has not read it", "demo.txt:5: column b: the test has not read it"}, w.said)
	require.Equal(t, []string{"demo.txt: 1 of 2 cases run"}, w.logs)
}

func TestFile_each(t *testing.T) {
	f, err := read(header + "# count: 3\ncolumns: a; b\n1 ; 2\n3 ; 4\n5 ; 6\n")
	require.NoError(t, err)
	var names []string
	sum := int64(0)
	f.Each(t, func(t *testing.T, c vectors.Case) {
		names = append(names, t.Name())
		sum += c.Int64("a") * c.Int64("b")
	})
	require.Equal(t, []string{"TestFile_each/line_5", "TestFile_each/line_6", "TestFile_each/line_7"}, names)
	require.Equal(t, int64(2+12+30), sum)
}

// What a failing Each says, told by a run of this test in a process of its own.
func TestFile_eachFails(t *testing.T) {
	const inner = "VECTORS_TEST_INNER"
	if os.Getenv(inner) != "" {
		f, err := read(header + "# count: 4\ncolumns: id; a; b\ngood ; 1 ; 2\nunread ; 3 ; 4\nmalformed ; x ; 4\nnear ; 7 ; 7.25\n")
		require.NoError(t, err)
		f.Each(t, func(t *testing.T, c vectors.Case) {
			a := c.Float("a")
			switch c.ID {
			case "near":
				c.Near("b", a)
			case "good", "malformed":
				c.Ignore("b")
			}
		})
		return
	}
	program, err := os.Executable()
	require.NoError(t, err)
	command := exec.Command(program, "-test.run=^TestFile_eachFails$", "-test.v")
	command.Env = append(os.Environ(), inner+"=1")
	out, err := command.CombinedOutput()
	var exit *exec.ExitError
	require.ErrorAs(t, err, &exit, "it must fail: %s", out)
	for _, line := range []string{
		"--- PASS: TestFile_eachFails/good",
		"--- FAIL: TestFile_eachFails/unread",
		"demo.txt:6: column b: the test has not read it",
		"--- FAIL: TestFile_eachFails/malformed",
		`demo.txt:7: column a: "x" is not a decimal number`,
		"--- FAIL: TestFile_eachFails/near",
		"demo.txt:8: column b: got 7, want 7.25: off by 0.25, at most 0.005",
		"demo.txt: 4 of 4 cases run",
	} {
		require.Contains(t, string(out), line)
	}
	require.NotContains(t, string(out), "demo.txt:5:")
}

// strconv is the judge: what it rounds to the cell agrees with it.
func FuzzCase_near(f *testing.F) {
	f.Add("16.2037", 16.20365)
	f.Add("-0.5", -0.55)
	f.Add("1e-5 ± 3 %", 1e-5)
	f.Fuzz(func(t *testing.T, cell string, got float64) {
		if _, err := read(one(cell)); err != nil {
			return
		}
		var read float64
		w := watch(t, one(cell), func(c vectors.Case) {
			c.Near("a", got)
			read = got
			if !strings.Contains(cell, "±") {
				read = c.Float("a")
			}
		})
		if w.fatal != "" || strings.ContainsAny(cell, "±eE") {
			return
		}
		_, fraction, _ := strings.Cut(strings.Trim(cell, " \t"), ".")
		rounded, err := strconv.ParseFloat(strconv.FormatFloat(got, 'f', len(fraction), 64), 64)
		require.NoError(t, err)
		if len(w.said) == 0 {
			require.InDelta(t, read, got, 0.5*math.Pow10(-len(fraction))*(1+1e-9)+1e-15*math.Abs(got))
		} else {
			require.NotEqual(t, read, rounded)
		}
	})
}
