package feeler_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

const (
	free, drag, forced, refused = feeler.Free, feeler.Drag, feeler.Forced, feeler.Refused
	mm                          = units.MM
	pm                          = units.Picometre
)

func trial(thickness units.Length, feel feeler.Feel) feeler.Trial {
	return feeler.Trial{Thickness: thickness, Feel: feel}
}

func TestBracket(t *testing.T) {
	for _, c := range []struct {
		trials string
		want   string
	}{
		{"", "[0 mm, ∞)"},
		{"0.10 mm not tried", "[0 mm, ∞)"},
		{"0.05 mm refused", "[0 mm, 0.05 mm)"},
		{"0.05 mm forced", "[0 mm, 0.05 mm)"},
		{"1.00 mm drag", "[1 mm, ∞)"},
		{"0.20 mm free", "[0.2 mm, ∞)"},
		{"0.20 mm free; 0.30 mm refused", "[0.2 mm, 0.3 mm)"},
		{"0.20 mm free; 0.25 mm not tried; 0.30 mm refused", "[0.2 mm, 0.3 mm)"},
		{"0.20 mm free, 0.25 mm drag, 0.30 mm forced, 0.35 mm refused", "[0.25 mm, 0.3 mm)"},
		{"0.05 mm free\n0.10 mm free\n0.15 mm free", "[0.15 mm, ∞)"},
		{"0.20 mm + 0.05 mm drag; 0.30 mm refused", "[0.25 mm, 0.3 mm)"},
	} {
		set := feeler.Metric20()
		trials, err := set.ParseTrials(c.trials)
		require.NoError(t, err)
		b, err := feeler.Bracket(trials...)
		require.NoError(t, err)
		require.Equal(t, c.want, b.String())
		// Without errors of the blades the other reading is the same.
		w, err := feeler.BracketWithErrors(trials...)
		require.NoError(t, err)
		require.Equal(t, b, w)
	}
}

func TestContradiction(t *testing.T) {
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(".002 in free, .0025 in refused, .003 in drag, .004 in refused")
	require.NoError(t, err)
	_, err = feeler.Bracket(trials...)
	var e *feeler.ContradictionError
	require.ErrorAs(t, err, &e)
	require.ErrorIs(t, err, feeler.ErrContradiction)
	require.Equal(t, trials[2], e.Entered)
	require.Equal(t, trials[1], e.Refused)
	require.EqualError(t, err, "feeler: trials contradict each other: .003 in entered, but the thinner .0025 in did not: clean blades and gap, and try both again")

	_, err = feeler.Bracket(trial(0.07*mm, drag), trial(0.07*mm, forced))
	require.EqualError(t, err, "feeler: trials contradict each other: 0.07 mm entered, but the equally thick 0.07 mm did not: clean blades and gap, and try both again")
}

// A blade's error explains a contradiction up to the sum of the two errors,
// and never that one blade did both.
func TestContradictionWithErrors(t *testing.T) {
	in := feeler.Trial{Blade: "A", Thickness: 0.0762 * mm, Error: 0.007 * mm, Feel: drag}
	out := feeler.Trial{Blade: "B", Thickness: 0.0635 * mm, Error: 0.006 * mm, Feel: refused}
	b, err := feeler.BracketWithErrors(in, out)
	require.NoError(t, err)
	require.Equal(t, "[0.0692 mm, 0.0695 mm)", b.String())
	in.Error -= 0.0003 * mm
	_, err = feeler.BracketWithErrors(in, out)
	var e *feeler.ContradictionError
	require.ErrorAs(t, err, &e)
	require.True(t, e.Errors)
	require.Contains(t, err.Error(), "the errors of the blades do not explain")

	twice := []feeler.Trial{{Blade: "A", Thickness: 0.07 * mm, Error: 0.002 * mm, Feel: refused}, {Blade: "A", Thickness: 0.07 * mm, Error: 0.002 * mm, Feel: free}}
	_, err = feeler.BracketWithErrors(twice...)
	require.ErrorIs(t, err, feeler.ErrContradiction)
	twice[0].Blade = "B"
	b, err = feeler.BracketWithErrors(twice...)
	require.NoError(t, err)
	require.Equal(t, "[0.068 mm, 0.072 mm)", b.String())
	twice[0].Blade, twice[1].Blade = "", "" // thickness alone doesn't say which blade
	_, err = feeler.BracketWithErrors(twice...)
	require.NoError(t, err)
}

func TestBracketRefuses(t *testing.T) {
	for _, c := range []struct {
		trial feeler.Trial
		kind  error
	}{
		{trial(0, drag), feeler.ErrThickness},
		{trial(-0.1*mm, refused), feeler.ErrThickness},
		{trial(201*mm, refused), feeler.ErrThickness},
		{trial(units.OutOfRange[units.Length](), drag), feeler.ErrThickness},
		{trial(units.Length(1<<62), drag), feeler.ErrThickness},
		{trial(0.1*mm, 5), feeler.ErrFeel},
		{trial(0.1*mm, 255), feeler.ErrFeel},
		{feeler.Imperial26().TrialAt(26, drag), feeler.ErrThickness},
		{feeler.Imperial26().TrialAt(-1, drag), feeler.ErrThickness},
		{feeler.Set{}.TrialAt(0, drag), feeler.ErrThickness},
	} {
		for _, bracket := range []func(...feeler.Trial) (tolerance.Bracket, error){feeler.Bracket, feeler.BracketWithErrors} {
			_, err := bracket(trial(0.05*mm, free), c.trial)
			var e *feeler.TrialError
			require.ErrorAs(t, err, &e, "%v", c.trial)
			require.ErrorIs(t, err, c.kind)
			require.Equal(t, 1, e.Index)
			require.Equal(t, c.trial, e.Trial)
			require.Contains(t, err.Error(), "trial 2")
		}
	}
	for _, e := range []units.Length{-pm, 0.1 * mm, units.OutOfRange[units.Length]()} {
		wrong := feeler.Trial{Thickness: 0.1 * mm, Error: e, Feel: drag}
		_, err := feeler.BracketWithErrors(wrong)
		require.ErrorIs(t, err, feeler.ErrThickness)
		_, err = feeler.Bracket(wrong)
		require.NoError(t, err, "an error that isn't asked about doesn't matter")
	}
	_, err := feeler.Bracket(trial(0.1*mm, 9))
	require.EqualError(t, err, "feeler: trial 1, 0.1 mm feel 9: unknown feel; free, drag, forced, refused or not tried")
}

// A gap of known size, blades that enter when they are no thicker, in any
// order: the bracket holds the gap, is as narrow as the blades allow, and no
// further trial widens it. With errors, whatever the blades truly are.
func TestBracketProperties(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 24))
	for range 3000 {
		gap := units.Length(rnd.Int64N(int64(0.5 * mm)))
		n := rnd.IntN(12)
		trials := make([]feeler.Trial, n)
		widened := make([]feeler.Trial, n)
		for i := range trials {
			truth := pm + units.Length(rnd.Int64N(int64(0.5*mm)))
			if rnd.IntN(8) == 0 {
				truth = max(gap, pm)
			}
			feel := feeler.Feel(1 + rnd.IntN(2))
			if truth > gap {
				feel = feeler.Feel(3 + rnd.IntN(2))
			}
			if rnd.IntN(6) == 0 {
				feel = feeler.Untried
			}
			trials[i] = trial(truth, feel)
			e := units.Length(rnd.Int64N(int64(0.01 * mm)))
			nominal := truth + units.Length(rnd.Int64N(int64(2*e+pm))) - e
			widened[i] = feeler.Trial{Thickness: max(nominal, e+pm), Error: e, Feel: feel}
		}
		b, err := feeler.Bracket(trials...)
		require.NoError(t, err)
		require.True(t, b.Contains(gap))
		for k := range trials {
			less, err := feeler.Bracket(trials[:k]...)
			require.NoError(t, err)
			require.True(t, b.Within(less))
		}
		for _, tr := range trials {
			if tr.Feel != feeler.Untried {
				lo, _ := b.Lower()
				require.False(t, b.Contains(tr.Thickness) && tr.Thickness != lo, "a blade that was tried lies inside")
			}
		}
		w, err := feeler.BracketWithErrors(widened...)
		require.NoError(t, err)
		require.True(t, w.Contains(gap), "%v %v", gap, widened)

		rnd.Shuffle(n, func(i, k int) {
			trials[i], trials[k] = trials[k], trials[i]
			widened[i], widened[k] = widened[k], widened[i]
		})
		again, err := feeler.Bracket(trials...)
		require.NoError(t, err)
		require.Equal(t, b, again)
		again, err = feeler.BracketWithErrors(widened...)
		require.NoError(t, err)
		require.Equal(t, w, again)
	}
}

func TestInside(t *testing.T) {
	set := feeler.Metric20()
	names := func(b string, f func(tolerance.Bracket) []feeler.Blade) string {
		bracket, err := tolerance.ParseBracket(b)
		require.NoError(t, err)
		var s []string
		for _, blade := range f(bracket) {
			s = append(s, strings.TrimSuffix(blade.MarkText(), " mm"))
		}
		return strings.Join(s, " ")
	}
	for b, want := range map[string]string{
		"[0.05 mm, 0.10 mm)": "",
		"[0.05 mm, 0.15 mm)": "0.10",
		"[0 mm, 0.05 mm)":    "",
		"[0 mm, 0.16 mm)":    "0.05 0.10 0.15",
		"[0.90 mm, ∞)":       "0.95 1.00",
		"[1 mm, ∞)":          "",
		"(−∞, 0.07 mm)":      "0.05",
	} {
		require.Equal(t, want, names(b, set.Inside), b)
		require.Equal(t, want, names(b, set.InsideWithErrors), b)
	}
	require.Empty(t, set.Inside(tolerance.Exactly(units.OutOfRange[units.Length]())))

	set, err := set.WithErrors(feeler.ErrorClass{UpTo: mm, Error: 0.02 * mm})
	require.NoError(t, err)
	tried := []feeler.Trial{set.TrialAt(1, drag), set.TrialAt(3, refused)}
	b, err := feeler.BracketWithErrors(tried...)
	require.NoError(t, err)
	require.Equal(t, "[0.08 mm, 0.22 mm)", b.String())
	require.Equal(t, "0.15", names("[0.08 mm, 0.22 mm)", set.InsideWithErrors), "those that were tried narrow nothing")

	alike, err := feeler.NewSet("", "", feeler.MustBlade("0.1 mm"), feeler.MustBlade("0.1 mm"))
	require.NoError(t, err)
	require.Len(t, alike.Inside(tolerance.Bracket{}), 1)
}

func TestHotPathsAllocateNothing(t *testing.T) {
	set, hard := feeler.Imperial32(), hardSet(t)
	var b tolerance.Bracket
	var st feeler.Stack
	var blade feeler.Blade
	var size units.Length
	for name, f := range map[string]func(){
		"bracket": func() {
			var trials [8]feeler.Trial
			for i, k := range benchIndex {
				trials[i] = set.TrialAt(k, benchFeel[i])
			}
			b, _ = feeler.Bracket(trials[:]...)
		},
		"bracket with errors": func() {
			b, _ = feeler.BracketWithErrors(set.TrialAt(1, drag), set.TrialAt(2, refused))
		},
		"trial by mark": func() {
			trial, _ := set.Trial(drag, ".0025 in")
			size = trial.Thickness
		},
		"find":  func() { blade, _ = set.Find("0.064 mm") },
		"stack": func() { st, _ = hard.Stack(hardTarget, 4) },
		"stack of eight at most": func() {
			st, _ = set.StackAtMost(1.2345*mm, 8)
			size = st.WorstError() + st.RootSumSquareError() + st.Off()
			blade = st.At(0)
		},
		"together": func() { st, _ = set.Together(".0025 in", ".003 in") },
	} {
		require.Zero(t, testing.AllocsPerRun(20, f), name)
	}
	_, _, _, _ = b, st, blade, size
}
