package limits

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/units"
)

// By the published table: at 25 mm IT01 0.6, IT5 9, IT6 13, IT7 21, IT18 3300 µm;
// up to 1 mm IT13, 140 µm, is the coarsest.
func TestGradeOfAWidth(t *testing.T) {
	const um, pm = units.Micrometre, units.Picometre
	for _, c := range []struct {
		nominal, width  units.Length
		within, holding Grade // 0 where there is none
	}{
		{25 * units.Millimetre, 21 * um, IT7, IT7},
		{25 * units.Millimetre, 21*um - pm, IT6, IT7},
		{25 * units.Millimetre, 21*um + pm, IT7, IT8},
		{25 * units.Millimetre, 600 * units.Nanometre, IT01, IT01},
		{25 * units.Millimetre, 600*units.Nanometre - pm, 0, IT01},
		{25 * units.Millimetre, 0, 0, IT01},
		{25 * units.Millimetre, -pm, 0, 0},
		{25 * units.Millimetre, 3300 * um, IT18, IT18},
		{25 * units.Millimetre, 3300*um + pm, IT18, 0},
		{units.Millimetre, 140 * um, IT13, IT13},
		{units.Millimetre, 140*um + pm, IT13, 0},
		{units.Millimetre + pm, 250 * um, IT14, IT14},
		{25 * units.Millimetre, units.OutOfRange[units.Length](), 0, 0},
		{25 * units.Millimetre, -units.OutOfRange[units.Length](), 0, 0},
	} {
		within, err := GradeWithin(c.nominal, c.width)
		if c.within == 0 {
			require.ErrorIs(t, err, ErrWidth)
		} else {
			require.NoError(t, err)
		}
		require.Equal(t, c.within, within, "%v within %v", c.nominal, c.width)
		holding, err := GradeHolding(c.nominal, c.width)
		if c.holding == 0 {
			require.ErrorIs(t, err, ErrWidth)
		} else {
			require.NoError(t, err)
		}
		require.Equal(t, c.holding, holding, "%v holding %v", c.nominal, c.width)
	}
}

func TestGradeRefuses(t *testing.T) {
	for _, g := range []Grade{0, IT18 + 1, 255} {
		_, err := g.Tolerance(25 * units.Millimetre)
		require.ErrorIs(t, err, ErrGrade)
		_, err = NewClass("H", g)
		require.ErrorIs(t, err, ErrGrade)
		require.Equal(t, "", g.number())
	}
	_, err := IT14.Tolerance(units.Millimetre)
	require.ErrorIs(t, err, ErrNotTabulated)
	require.EqualError(t, err, "limits: IT14 at 1 mm: not tabulated; IT14 and coarser are for sizes over 1 mm")
	_, err = Grade(99).MarshalText()
	require.ErrorIs(t, err, ErrGrade)
	for _, s := range []string{"", "IT", "it7", "IT19", "ITIT7", "07", "IT 7", "H7", "7.0", "-1"} {
		_, err := ParseGrade(s)
		require.ErrorIs(t, err, ErrGrade, s)
	}
}

// The finer the grade and the smaller the size, the narrower.
func TestGradesGrow(t *testing.T) {
	for s := range stepEnds {
		for g := IT01; g <= IT18; g++ {
			require.True(t, g == IT01 || g.tolerance(s) > (g-1).tolerance(s), "%v to %v", g, stepEnds[s])
			require.True(t, s == 0 || g.tolerance(s) >= g.tolerance(s-1), "%v to %v", g, stepEnds[s])
		}
	}
}
