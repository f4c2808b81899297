package limits

import (
	"encoding"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What every type writes it reads back, the zero value too.
func TestTextRoundTrips(t *testing.T) {
	for _, nominal := range []units.Length{units.Millimetre / 2, 25 * units.Millimetre, units.Inch, 500 * units.Millimetre, 123456789012} {
		for _, f := range []Feature{Hole, Shaft} {
			for l := range All(nominal, f) {
				roundTrip(t, l, new(Limits))
				roundTrip(t, l.Class(), new(Class))
				roundTrip(t, l.Class().Grade(), new(Grade))
			}
		}
	}
	for _, s := range []string{"25 H7/g6", "50.8 ZC8/zc7", "2 K9/j8"} {
		roundTrip(t, MustParse(s), new(Fit))
		roundTrip(t, MustParse(s).Pair(), new(Pair))
		roundTrip(t, MustParse(s).Kind(), new(tolerance.FitKind))
	}
	roundTrip(t, Limits{}, new(Limits))
	roundTrip(t, Class{}, new(Class))
	roundTrip(t, Grade(0), new(Grade))
	roundTrip(t, Fit{}, new(Fit))
	roundTrip(t, Pair{}, new(Pair))
	roundTrip(t, tolerance.UnknownFit, new(tolerance.FitKind))
}

func roundTrip[T comparable](t *testing.T, v T, into *T) {
	t.Helper()
	text, err := any(v).(encoding.TextMarshaler).MarshalText()
	require.NoError(t, err)
	require.NoError(t, any(into).(encoding.TextUnmarshaler).UnmarshalText(text))
	require.Equal(t, v, *into)
	if a, ok := any(v).(encoding.TextAppender); ok {
		appended, err := a.AppendText([]byte("so: "))
		require.NoError(t, err)
		require.Equal(t, "so: "+string(text), string(appended))
	}
}

// A text that can't be read leaves the value as it was.
func TestUnmarshalRefuses(t *testing.T) {
	l, c, g, f, p, k := MustParseLimits("25 H7"), MustParseClass("H7"), IT7, MustParse("25 H7/g6"), MustParsePair("H7/g6"), tolerance.ClearanceFit
	for v, kind := range map[encoding.TextUnmarshaler]error{&l: ErrSyntax, &c: ErrSyntax, &g: ErrGrade, &f: ErrSyntax, &p: ErrSyntax, &k: ErrSyntax} {
		require.ErrorIs(t, v.UnmarshalText([]byte("nonsense")), kind)
	}
	require.Equal(t, "25 H7 H7 IT7 25 H7/g6 H7/g6 clearance",
		l.String()+" "+c.String()+" "+g.String()+" "+f.String()+" "+p.String()+" "+k.String())
	_, err := Pair{c, c}.MarshalText()
	require.ErrorIs(t, err, ErrPair)
}

// Text forms alone serve JSON, as values and as keys.
func TestJSON(t *testing.T) {
	type sheet struct {
		Bore  Limits
		Pin   Fit
		Kind  tolerance.FitKind
		Stock map[Class]int
	}
	in := sheet{MustParseLimits("25 H7"), MustParse("20 H6/h5"), tolerance.ClearanceFit, map[Class]int{MustParseClass("h6"): 3}}
	data, err := json.Marshal(in)
	require.NoError(t, err)
	require.JSONEq(t, `{"Bore":"25 H7","Pin":"20 H6/h5","Kind":"clearance","Stock":{"h6":3}}`, string(data))
	var out sheet
	require.NoError(t, json.Unmarshal(data, &out))
	require.Equal(t, in, out)
	require.ErrorIs(t, json.Unmarshal([]byte(`{"Bore":"20 t6"}`), &out), ErrNotTabulated)
}

func TestErrorTexts(t *testing.T) {
	_, err := GradeWithin(25*units.Millimetre, units.Picometre)
	require.EqualError(t, err, "limits: 0.000000001 mm at 25 mm: no grade of that width; the finest is 0.0006 mm wide")
	_, err = GradeHolding(25*units.Millimetre, 4*units.Millimetre)
	require.EqualError(t, err, "limits: 4 mm at 25 mm: no grade of that width; the coarsest is 3.3 mm wide")
	_, err = GradeHolding(25*units.Millimetre, -units.Millimetre)
	require.EqualError(t, err, "limits: -1 mm at 25 mm: no grade of that width; a width is not below zero")
	_, err = GradeWithin(25*units.Millimetre, units.OutOfRange[units.Length]())
	require.ErrorIs(t, err, ErrWidth)
	require.ErrorContains(t, err, "length out of range at 25 mm: no grade of that width; it was calculated beyond")
	_, err = NewClass("H", 77)
	require.EqualError(t, err, `limits: class "H", at byte 0: no such standard tolerance grade; IT01, IT0 or IT1 to IT18`)
	require.Equal(t, "hole shaft", Hole.String()+" "+Shaft.String())
}
