package feeler_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

var bladeSeeds = []string{
	".0025 in / 0.064 mm", "1/64 in", "0.10 mm = 0.0985 mm ± 0.001 mm", "0,05 mm +/- 2 µm", "0 ft 0.003 in",
	"0.07", ".0025 in / 0.64 mm", "= ±", "１ mm", "1e400 mm", "0 mm", "-1 mm", "\xff",
}

func FuzzParseBlade(f *testing.F) {
	for _, s := range bladeSeeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		b, err := feeler.ParseBlade(s)
		if err != nil {
			require.Less(t, len(err.Error()), 1000)
			return
		}
		require.Positive(t, b.Thickness())
		require.Less(t, b.Error, b.Thickness())
		again, err := feeler.ParseBlade(b.String())
		require.NoError(t, err, "%q", b.String())
		require.Equal(t, b, again)
	})
}

func FuzzParseSet(f *testing.F) {
	f.Add(ownSet)
	f.Add(feeler.Imperial26().Text())
	f.Add("name:\nsource: # x\n0.1 mm#\r\n0.1 mm")
	for _, s := range bladeSeeds {
		f.Add(s + "\n" + s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		set, err := feeler.ParseSet(s)
		if err != nil {
			require.Less(t, len(err.Error()), 2000)
			return
		}
		require.Positive(t, set.Len())
		again, err := feeler.ParseSet(set.Text())
		require.NoError(t, err)
		require.True(t, set.Equal(again))
		data, err := json.Marshal(set)
		require.NoError(t, err)
		again, err = feeler.ParseSetJSON("", data)
		require.NoError(t, err)
		require.True(t, set.Equal(again))
	})
}

func FuzzParseSetJSON(f *testing.F) {
	f.Add([]byte(`{"schema":1,"name":"a","source":"b","blades":[".0025 in / 0.064 mm","0.1 mm ± 0.002 mm"]}`))
	f.Add([]byte(`{"schema":1,"blades":[]}`))
	f.Add([]byte(`null`))
	f.Fuzz(func(t *testing.T, data []byte) {
		set, err := feeler.ParseSetJSON("f", data)
		if err != nil {
			return
		}
		again, err := feeler.ParseSet(set.Text())
		require.NoError(t, err)
		require.True(t, set.Equal(again))
	})
}

// FuzzParseTrials reads trials, and holds their bracket to what it must be.
func FuzzParseTrials(f *testing.F) {
	f.Add(".002 in free, .0025 in drag, .003 in refused")
	f.Add(".004 in + .0015 in forced; 0.635 mm not tried\n0.64 mm drag")
	f.Add(".003 in free\n.002 in refused")
	set, err := feeler.Imperial26().WithErrors(feeler.ErrorClass{UpTo: units.Millimetre, Error: 0.008 * units.MM})
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, s string) {
		trials, err := set.ParseTrials(s)
		if err != nil {
			require.Less(t, len(err.Error()), 2000)
			return
		}
		b, err := feeler.Bracket(trials...)
		w, errWide := feeler.BracketWithErrors(trials...)
		if err == nil {
			require.NoError(t, errWide, "errors can't make a contradiction")
			require.True(t, b.Within(w))
			for _, blade := range set.Inside(b) {
				require.True(t, b.Contains(blade.Thickness()))
			}
			return
		}
		require.ErrorIs(t, err, feeler.ErrContradiction)
		if errWide == nil {
			require.True(t, w.InRange())
			require.NotEqual(t, tolerance.Bracket{}, w)
		}
	})
}

func FuzzParseFeel(f *testing.F) {
	f.Add("drag")
	f.Add("not tried")
	f.Fuzz(func(t *testing.T, s string) {
		if feel, err := feeler.ParseFeel(s); err == nil {
			require.Equal(t, s, feel.String())
		}
	})
}

// FuzzFind looks sizes up: what is found carries exactly the size asked for.
func FuzzFind(f *testing.F) {
	for _, s := range []string{"0.64 mm", ".0025 in", "0.07", "2.5 mil", "99999999 m", "-0.1 mm", "0.000000001 mm"} {
		f.Add(s)
	}
	set := feeler.Imperial26()
	f.Fuzz(func(t *testing.T, s string) {
		b, err := set.Find(s)
		l, lengthErr := units.Parse[units.Length](s)
		if err == nil {
			require.NoError(t, lengthErr)
			require.True(t, b.Carries(l) || b.Thickness() == l)
			return
		}
		require.ErrorIs(t, err, feeler.ErrNoBlade)
		if lengthErr == nil {
			_, err = set.FindLength(l)
			require.ErrorIs(t, err, feeler.ErrNoBlade)
		}
	})
}

// FuzzStack asks for stacks of any size: what is found is no nearer by one more
// choice than by the one before it.
func FuzzStack(f *testing.F) {
	f.Add(int64(70_000_000), 2)
	f.Add(int64(-1), 9)
	set := feeler.Imperial32()
	f.Fuzz(func(t *testing.T, target int64, most int) {
		st, err := set.Stack(units.Length(target), most)
		if err != nil {
			require.True(t, most < 1 || most > 8 || target < 0 || units.Length(target) > feeler.MaxStackThickness, "%v", err)
			return
		}
		low, errLow := set.StackAtMost(units.Length(target), most)
		high, errHigh := set.StackAtLeast(units.Length(target), most)
		near := units.Length(1) << 60
		if errLow == nil {
			require.LessOrEqual(t, low.Total, low.Target)
			near = -low.Off()
		}
		if errHigh == nil {
			require.GreaterOrEqual(t, high.Total, high.Target)
			near = min(near, high.Off())
		}
		require.Equal(t, near, st.Off().Abs())
	})
}
