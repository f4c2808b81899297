package limits

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func TestFits(t *testing.T) {
	vectors.Load(t, "published/iso286_fits.txt").Each(t, func(t *testing.T, c vectors.Case) {
		f, err := Parse(c.Text("fit"))
		require.NoError(t, err)
		require.Equal(t, c.Text("fit"), f.String())
		require.Equal(t, um(t, c, "hole_upper"), f.Hole().UpperDeviation())
		require.Equal(t, um(t, c, "hole_lower"), f.Hole().LowerDeviation())
		require.Equal(t, um(t, c, "shaft_upper"), f.Shaft().UpperDeviation())
		require.Equal(t, um(t, c, "shaft_lower"), f.Shaft().LowerDeviation())
		require.Equal(t, um(t, c, "max"), f.MaxClearance())
		require.Equal(t, um(t, c, "min"), f.MinClearance())
		require.Equal(t, c.Choice("kind", "clearance", "transition", "interference"), f.Kind().String())
		require.Equal(t, tolerance.MustBetween(um(t, c, "min"), um(t, c, "max")).Interval(), f.Clearance())
		// The fit is the difference of hole and shaft as package tolerance has it.
		require.Equal(t, f.Hole().Band().Interval().Sub(f.Shaft().Band().Interval()), f.Clearance())
		require.Equal(t, f.Nominal(), f.Hole().Nominal())
		require.Equal(t, f.Nominal(), f.Shaft().Nominal())
		again, err := f.Pair().At(f.Nominal())
		require.NoError(t, err)
		require.Equal(t, f, again)
	})
}

// The preferred fits are those of the table, of the kind it says at every size;
// H7/p6 is a transition fit up to 3 mm.
func TestPreferred(t *testing.T) {
	holes, shafts, n := Preferred(Hole), Preferred(Shaft), 0
	for c := range vectors.Load(t, "published/iso286_preferred.txt").All(t) {
		require.Equal(t, c.Text("hole_basis"), holes[n].String())
		require.Equal(t, c.Text("shaft_basis"), shafts[n].String())
		for _, upTo := range stepEnds {
			onHole, err := holes[n].At(upTo)
			require.NoError(t, err)
			onShaft, err := shafts[n].At(upTo)
			require.NoError(t, err)
			kind := c.Text("kind")
			require.Equal(t, kind, onShaft.Kind().String(), "%v", onShaft)
			if c.Is("hole_basis", "H7/p6") && upTo <= 3*units.Millimetre {
				kind = "transition"
			}
			require.Equal(t, kind, onHole.Kind().String(), "%v", onHole)
		}
		n++
	}
	require.Len(t, holes, n)
	require.Len(t, shafts, n)
	require.Empty(t, Preferred(0))
	holes[0] = Pair{}
	require.False(t, Preferred(Hole)[0].IsZero(), "the caller's own")
}

func TestKindAtTheBoundary(t *testing.T) {
	require.Equal(t, tolerance.ClearanceFit, MustParse("25 H7/h6").Kind(), "least clearance 0")
	require.Equal(t, tolerance.InterferenceFit, MustParse("2 P7/h6").Kind(), "greatest clearance 0")
	require.Equal(t, tolerance.TransitionFit, MustParse("25 H7/k6").Kind())
	require.Equal(t, tolerance.UnknownFit, Fit{}.Kind())
	require.True(t, Fit{}.Clearance().IsZero())
	require.Zero(t, Fit{}.MaxClearance())
	require.Equal(t, "no fit", Fit{}.Describe())
}

// The widest fit in the system stays exact: deviations of millimetres.
func TestWidestFit(t *testing.T) {
	f := MustParse("500 A18/a18")
	require.Equal(t, 2*(9700+1650)*units.Micrometre, f.MaxClearance()) // IT18 9700, A 1650
	require.Equal(t, 2*1650*units.Micrometre, f.MinClearance())
}

func TestPairRefuses(t *testing.T) {
	h7, g6 := MustParseClass("H7"), MustParseClass("g6")
	for _, p := range []Pair{{}, {h7, h7}, {g6, h7}, {g6, g6}, {Hole: h7}, {Shaft: g6}} {
		_, err := p.At(25 * units.Millimetre)
		require.ErrorIs(t, err, ErrPair)
		var order *OrderError
		require.ErrorAs(t, err, &order)
		require.Equal(t, OrderError{First: p.Hole, Second: p.Shaft}, *order)
	}
	_, err := Pair{g6, h7}.At(25 * units.Millimetre)
	require.EqualError(t, err, "limits: g6/H7: not a hole and a shaft; the hole comes first: H7/g6")
	_, err = Pair{}.At(25 * units.Millimetre)
	require.EqualError(t, err, "limits: no class/no class: not a hole and a shaft; a fit has one of each, as H7/g6")
	_, err = Pair{h7, MustParseClass("t6")}.At(20 * units.Millimetre)
	require.ErrorIs(t, err, ErrNotTabulated)
	_, err = Pair{MustParseClass("T7"), g6}.At(20 * units.Millimetre)
	require.ErrorIs(t, err, ErrNotTabulated)
	_, err = Pair{h7, g6}.At(501 * units.Millimetre)
	require.ErrorIs(t, err, ErrSize)
}
