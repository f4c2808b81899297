package working_test

import (
	"errors"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// anySize is a size of anything from a quantum to beyond what a shop meets, of
// either sign: as tools of either system show it, and as none does.
func anySize[Q working.Quantity[Q]](r *rand.Rand) Q {
	us := everyUnit[Q]()
	one, err := units.ParseIn("1", us[r.IntN(min(len(us), 4))])
	if err != nil {
		panic(err)
	}
	var q Q
	switch r.IntN(8) {
	case 0:
		q = Q(r.Int64N(1000))
	case 1:
		q = Q(r.Int64N(1 << 60))
	case 2:
		q = Q(r.Int64N(max(1000*int64(one)%(1<<50), 2)))
	default:
		q = one.Scale(r.Int64N(100_000), []int64{1, 10, 100, 1000, 1000}[r.IntN(5)])
	}
	if r.IntN(8) == 0 {
		return -q
	}
	return q
}

// everyUnit lists the units of a quantity.
func everyUnit[Q units.Quantity]() (us []units.Unit[Q]) {
	for u := units.Unit[Q](0); u == 0 || u.Symbol() != units.Unit[Q](0).Symbol(); u++ {
		us = append(us, u)
	}
	return us
}

// A count is what came of solving many formulas.
type count struct{ solved, lines, moved, split, refused int }

// everyLine solves so many formulas and has the judge read every line.
func everyLine[Q working.Quantity[Q]](t *testing.T, seed uint64, n, places int, most int64, size func(*rand.Rand) Q, us ...units.Unit[Q]) (c count) {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, seed))
	for range n {
		style := units.Style[Q]{Unit: us[r.IntN(len(us))], Places: r.IntN(places+2) - 1, Point: r.IntN(4) == 0, Bare: r.IntN(4) == 0, Sign: r.IntN(4) == 0}
		f := madeUp(r, 1+r.IntN(4), 4, most)
		sizes := make([]Q, 4)
		for i := range sizes {
			sizes[i] = size(r)
		}
		c.judge(t, f, style.Unit.Symbol(), func(named func(int) (string, string)) (working.Solution, string, bool, error) {
			terms := make([]working.TermOf[Q], 4)
			for i := range terms {
				terms[i] = working.Given("size "+strconv.Itoa(i), "abcd"[i:i+1], sizes[i])
			}
			k := 0
			want := read(f, sizes, func(q Q) Q { return q })
			got := read(f, terms, func(n working.TermOf[Q]) working.TermOf[Q] {
				k++
				return n.Named(named(k))
			})
			require.Equal(t, want, got.Value(), f)
			require.Equal(t, units.InRange(want), got.InRange())
			s, err := working.Solve(got, style)
			if err != nil {
				return s, "", got.InRange(), err
			}
			last := s.Steps[len(s.Steps)-1]
			if style.Places >= 0 && style.Places != last.Places {
				c.moved++
			}
			printed := style
			printed.Places, printed.Bare = last.Places, false
			text, _ := units.Append(nil, want, printed)
			return s, string(text), true, nil
		})
	}
	return c
}

func (c *count) judge(t *testing.T, f *formula, unit string, solve func(func(int) (string, string)) (working.Solution, string, bool, error)) {
	t.Helper()
	steps := 1
	s, want, inRange, err := solve(func(k int) (string, string) {
		steps = k + 1
		return "result " + strconv.Itoa(k), "r" + strconv.Itoa(k)
	})
	switch {
	case !inRange:
		require.ErrorIs(t, err, working.ErrRange)
		return
	case errors.Is(err, working.ErrRounded):
		c.refused++
		return
	}
	require.NoError(t, err, f)
	c.solved++
	for _, st := range s.Steps {
		c.lines++
		require.NoError(t, recompute(st, unit), "%s\n%v", s.Text(), f)
	}
	// What is printed is what the quantity prints.
	require.Equal(t, want, strings.Replace(s.Steps[len(s.Steps)-1].Result, "−", "-", 1))
	if len(s.Steps) > steps {
		c.split++
	}
	oneNumberEach(t, s)
}

// oneNumberEach holds that a symbol has the same number wherever it stands: the
// number that its own step or input has.
func oneNumberEach(t *testing.T, s working.Solution) {
	t.Helper()
	numbers := map[string]string{}
	for _, in := range s.Inputs {
		require.NotContains(t, numbers, in.Symbol)
		numbers[in.Symbol] = digitsOf(in.Number)
	}
	for _, st := range s.Steps {
		line := st.Numbers
		for _, symbol := range strings.FieldsFunc(st.Symbols, isSign) {
			number, known := numbers[symbol]
			if !known {
				continue // a factor, or the name of a function
			}
			_, after, found := strings.Cut(line, number)
			require.True(t, found, "%s is %s in\n%s", symbol, number, s.Text())
			line = after
		}
		if st.Symbol != "" {
			numbers[st.Symbol] = digitsOf(st.Result)
		}
	}
}

// digitsOf is a number without its sign and unit.
func digitsOf(s string) string {
	s = strings.TrimLeft(s, "+−")
	if end := strings.IndexFunc(s, func(r rune) bool { return (r < '0' || r > '9') && r != '.' }); end >= 0 {
		return s[:end]
	}
	return s
}

func isSign(r rune) bool { return strings.ContainsRune(" +−×÷|(),", r) }

func TestSolve_everyLineRecomputes(t *testing.T) {
	c := everyLine(t, 1, 1200, 9, 1_000_000, anySize[units.Length], units.InMillimetres, units.InMicrometres)
	t.Logf("mm and µm: %+v", c)
	require.Zero(t, c.refused, "a picometre is a decimal fraction of these")
	require.Greater(t, c.split, 10)
	require.Greater(t, c.moved, 10)

	c = everyLine(t, 2, 1200, 9, 1_000_000, anySize[units.Length], units.InInches, units.InThou)
	t.Logf("in and thou: %+v", c)
	require.Less(t, c.refused, c.solved/50)
	require.Greater(t, c.solved, 900)
}

// Sizes and places as a shop has them: nothing is refused and hardly any
// answer gets other places than asked for.
func TestSolve_shopSizes(t *testing.T) {
	size := func(r *rand.Rand) units.Length {
		if r.IntN(2) == 0 {
			return units.Length(1+r.Int64N(120_000)) * units.Micrometre
		}
		return units.Length(1+r.Int64N(50_000)) * 100 * units.Microinch
	}
	c := everyLine(t, 3, 800, 3, 10, size, units.InMillimetres)
	t.Logf("mm: %+v", c)
	require.Zero(t, c.refused)
	require.Less(t, c.moved, c.solved/50)
	c = everyLine(t, 4, 800, 4, 10, size, units.InInches)
	t.Logf("in: %+v", c)
	require.LessOrEqual(t, c.refused, 2)
	require.Less(t, c.moved, c.solved/50)
}

func TestSolve_everyQuantity(t *testing.T) {
	everyLineOf[units.Length](t)
	everyLineOf[units.Angle](t)
	everyLineOf[units.Volume](t)
	everyLineOf[units.Mass](t)
	everyLineOf[units.Force](t)
	everyLineOf[units.Pressure](t)
	everyLineOf[units.SpringRate](t)
	everyLineOf[units.TemperatureDifference](t)
}

func everyLineOf[Q working.Quantity[Q]](t *testing.T) {
	t.Helper()
	for i, u := range everyUnit[Q]() {
		c := everyLine(t, 10+uint64(i), 80, 8, 1_000_000, anySize[Q], u)
		require.Greater(t, c.solved, 10, u)
		require.LessOrEqual(t, c.refused, 12, u)
	}
}

// FuzzSolve makes a formula from a seed and solves it: every line re-computes.
func FuzzSolve(f *testing.F) {
	f.Add(uint64(1), int64(1_560_000_000), int64(1_505_000_000), int64(55_000_000), uint8(0), int8(3))
	f.Add(uint64(77), int64(1), int64(-1), int64(0), uint8(1), int8(9))
	f.Add(uint64(12345), int64(1)<<61, int64(25_400_000_000), int64(127), uint8(3), int8(18))
	f.Fuzz(func(t *testing.T, seed uint64, a, b, c int64, unit uint8, places int8) {
		r := rand.New(rand.NewPCG(seed, 0))
		g := madeUp(r, 1+r.IntN(4), 3, 1_000_000)
		lengths := []units.Length{units.Length(a), units.Length(b), units.Length(c)}
		terms := make([]working.Term, 3)
		for i, l := range lengths {
			terms[i] = working.Given("", "abc"[i:i+1], l)
		}
		k := 0
		want := read(g, lengths, asItIs)
		got := read(g, terms, func(n working.Term) working.Term {
			k++
			return n.Named("", "r"+strconv.Itoa(k))
		})
		require.Equal(t, want, got.Value())
		style := units.Style[units.Length]{Unit: units.Unit[units.Length](unit), Places: int(places)}
		s, err := working.Solve(got, style)
		var e *working.Error
		if err != nil {
			require.ErrorAs(t, err, &e)
			require.NotErrorIs(t, err, working.ErrTooLong)
			require.Equal(t, places < -1 || places > 18, errors.Is(err, working.ErrStyle))
			return
		}
		for _, st := range s.Steps {
			require.NoError(t, recompute(st, style.Unit.Symbol()), s.Text())
		}
		require.NotEmpty(t, s.Markdown())
	})
}
