package feeler_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func TestFeel(t *testing.T) {
	for i, name := range []string{"not tried", "free", "drag", "forced", "refused"} {
		f := feeler.Feel(i)
		require.Equal(t, name, f.String())
		require.Equal(t, i == 1 || i == 2, f.Entered())
		text, err := f.MarshalText()
		require.NoError(t, err)
		var again feeler.Feel
		require.NoError(t, again.UnmarshalText(text))
		require.Equal(t, f, again)
	}
	_, err := feeler.Feel(7).MarshalText()
	require.ErrorIs(t, err, feeler.ErrFeel)
	for _, s := range []string{"", "Free", "tight", "free ", "\xff", strings.Repeat("free", 1<<20)} {
		_, err := feeler.ParseFeel(s)
		var e *feeler.InputError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, feeler.ErrFeel)
		require.Less(t, len(err.Error()), 300)
		f := feeler.Drag
		require.Error(t, f.UnmarshalText([]byte(s)))
		require.Equal(t, feeler.Drag, f)
	}
}

func TestTrial(t *testing.T) {
	set, err := feeler.Imperial26().WithErrors(feeler.ErrorClass{UpTo: mm, Error: 0.002 * mm})
	require.NoError(t, err)
	single, err := set.Trial(drag, "0.064 mm")
	require.NoError(t, err)
	require.Equal(t, feeler.Trial{Blade: ".0025 in", Thickness: 0.0635 * mm, Error: 0.002 * mm, Feel: drag}, single)
	require.Equal(t, single, set.TrialAt(2, drag))
	both, err := set.Trial(refused, "0.064 mm", ".003 in")
	require.NoError(t, err)
	require.Equal(t, feeler.Trial{Blade: ".003 in + .0025 in", Thickness: 0.1397 * mm, Error: 0.004 * mm, Feel: refused}, both)
	require.Equal(t, ".003 in + .0025 in refused", both.String())
	require.Equal(t, "0 mm not tried", feeler.Trial{}.String())

	data, err := json.Marshal([]feeler.Trial{both, trial(0.07*mm, free)})
	require.NoError(t, err)
	require.JSONEq(t, `[{"blade":".003 in + .0025 in","thickness":"0.1397 mm","error":"0.004 mm","feel":"refused"},{"thickness":"0.07 mm","feel":"free"}]`, string(data))
	var again []feeler.Trial
	require.NoError(t, json.Unmarshal(data, &again))
	require.Equal(t, both, again[0])

	_, err = set.Trial(drag, "0.64 mm")
	require.ErrorIs(t, err, feeler.ErrNoBlade)
	_, err = set.Trial(drag, ".003 in", "0.64 mm")
	require.ErrorIs(t, err, feeler.ErrNoBlade)
	_, err = set.Trial(drag, ".003 in", "0.076 mm")
	require.ErrorIs(t, err, feeler.ErrNoStack)
	_, err = set.Trial(drag)
	require.ErrorIs(t, err, feeler.ErrSize)
}

func TestParseTrials(t *testing.T) {
	set := feeler.Imperial26()
	trials, err := set.ParseTrials(" .002 in free, 0,051 mm drag;\r\n .0025 in + .003 in not tried,\n\n.004 in refused ; ")
	require.NoError(t, err)
	var got []string
	for _, tr := range trials {
		got = append(got, tr.String())
	}
	require.Equal(t, []string{".002 in free", ".002 in drag", ".003 in + .0025 in not tried", ".004 in refused"}, got)

	for _, c := range []struct {
		in   string
		line int
		kind error
	}{
		{".002 in", 1, feeler.ErrSyntax},
		{"free", 1, feeler.ErrSyntax},
		{".002 in free\n.003 in tight", 2, feeler.ErrSyntax},
		{".002 in free\n\n0.64 mm drag", 3, feeler.ErrNoBlade},
		{".002 free", 1, units.ErrNoUnit},
		{".002 in + .002 in free", 1, feeler.ErrNoStack},
		{".002 in\xff free", 0, feeler.ErrSize},
		{strings.Repeat(".002 in free\n", 1<<20), 0, feeler.ErrSize},
	} {
		_, err := set.ParseTrials(c.in)
		var e *feeler.InputError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, c.kind, "%v", err)
		require.Equal(t, c.line, e.Line, "%v", err)
	}
	_, err = set.ParseTrials(".002 in free\n0.64 mm drag")
	require.EqualError(t, err, `feeler: trials, line 2, blade "0.64 mm": no blade is marked 0.64 mm; a decimal place away: .0025 in / 0.064 mm; nearest: .025 in / 0.635 mm`)
	_, err = set.ParseTrials(".002 in free .003 in refused")
	require.EqualError(t, err, `feeler: trials, line 1 ".002 in free .003 in refused": not written as expected; write a comma and a space between trials`)
	_, err = set.ParseTrials(".002 in free,.003 in refused")
	require.ErrorContains(t, err, "a comma and a space between trials")
	_, err = feeler.Bracket(feeler.Trial{Blade: ".002 in", Feel: feeler.Free})
	require.EqualError(t, err, "feeler: trial 1, .002 in free: not a blade's thickness; the thickness is missing, and a mark alone does not give it: Set.Trial looks it up")
	_, err = set.ParseTrials(".002 in free\n0.64 mm drag")
	var mark *feeler.MarkError
	require.True(t, errors.As(err, &mark))
	require.True(t, slices.ContainsFunc(mark.Decimal, func(b feeler.Blade) bool { return b.Carries(0.064 * mm) }))
}

func TestForcedTrials(t *testing.T) {
	trials, err := feeler.Metric20().ParseTrials("0.20 mm free, 0.25 mm forced, 0.30 mm forced, 0.35 mm refused")
	require.NoError(t, err)
	require.Equal(t, trials[1:3], feeler.ForcedTrials(trials...))
	require.Empty(t, feeler.ForcedTrials())
}
