package form_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

const (
	um = units.Micrometre
	mm = units.Millimetre
	pm = units.Picometre

	uas = units.Microarcsecond
)

func TestTrade_types(t *testing.T) {
	d := form.Diametral(7)
	require.Equal(t, form.Radial(4), d.RONtIfEven(), "a tie goes to even")
	require.Equal(t, form.Diametral(8), form.Radial(4).OutOfRoundIfEven())
	require.Equal(t, units.Length(7), d.Length())
	require.Equal(t, "0.04 mm on the diameter", form.Diametral(40*um).String())
	require.Equal(t, "0.02 mm on the radius", form.Radial(20*um).String())
	lower, end := d.RONtAtLeast().Lower()
	require.Equal(t, units.Length(3), lower, "rounded down")
	require.Equal(t, tolerance.Open, end, "and then more than that")
	_, end = d.RONtAtLeast().Upper()
	require.Equal(t, tolerance.Absent, end)
	require.False(t, form.Diametral(units.OutOfRange[units.Length]()).RONtAtLeast().InRange())
	require.False(t, form.Radial(1<<61).OutOfRoundIfEven().Length().InRange())
	require.Equal(t, "hole shaft", form.Hole.String()+" "+form.Shaft.String())
}

// A bracket of diameters proves no more than its ends do.
func TestFromDiameters(t *testing.T) {
	a, err := tolerance.PlusMinus(86_060*um, 30*um)
	require.NoError(t, err)
	b, err := tolerance.PlusMinus(86_020*um, 30*um)
	require.NoError(t, err)
	all := form.CylindricityFromDiameters(a, b)
	lower, end := all.Lower()
	require.Zero(t, lower)
	require.Equal(t, tolerance.Closed, end)
	require.Equal(t, all, form.RoundnessFromDiameters(a, b))
	require.False(t, form.RoundnessFromDiameters(a, tolerance.Exactly(units.OutOfRange[units.Length]())).InRange())
	// An open end stays open: half of more than 40 is more than 20.
	more, err := tolerance.NewInterval(86_060*um, tolerance.Open, 0, tolerance.Absent)
	require.NoError(t, err)
	require.Equal(t, "(0.02 mm, ∞)", form.RoundnessFromDiameters(more, tolerance.Exactly(86_020*um)).String())
}

func TestDiameters(t *testing.T) {
	d := form.Diameters{
		Levels:   []units.Length{0, 50 * mm, 100 * mm},
		Readings: [][]units.Length{{86_020 * um, 86_060 * um}, {86_015 * um, 86_035 * um}, {86_010 * um, 86_011 * um}},
	}
	s, err := d.Shown()
	require.NoError(t, err)
	want := form.Shown{
		OutOfRound: []form.Diametral{form.Diametral(40 * um), form.Diametral(20 * um), form.Diametral(um)},
		Taper:      []form.Diametral{form.Diametral(10 * um), form.Diametral(49 * um)},
		Overall:    form.Diametral(50 * um),
		RONt:       []tolerance.Bracket{form.Diametral(40 * um).RONtAtLeast(), form.Diametral(20 * um).RONtAtLeast(), form.Diametral(um).RONtAtLeast()},
		CYLt:       form.Diametral(50 * um).RONtAtLeast(),
	}
	require.Empty(t, cmp.Diff(want, s, cmp.Comparer(func(a, b tolerance.Bracket) bool { return a == b })))
	slopes, err := d.Slopes()
	require.NoError(t, err)
	require.InDelta(t, -10e-3/100, slopes[0], 1e-15)
	require.InDelta(t, -49e-3/100, slopes[1], 1e-15)

	d.Levels = d.Levels[:2]
	_, err = d.Slopes()
	require.ErrorIs(t, err, form.ErrShape)
	d.Levels = []units.Length{1 * pm, 2 * pm, units.OutOfRange[units.Length]()}
	_, err = d.Slopes()
	require.ErrorIs(t, err, form.ErrRange)
	d.Levels = []units.Length{1 * pm, 1 * pm, 1 * pm}
	_, err = d.Slopes()
	require.ErrorIs(t, err, form.ErrCoincident)
	d.Readings[1] = d.Readings[1][:1]
	_, err = d.Shown()
	require.ErrorIs(t, err, form.ErrShape)
	require.EqualError(t, err, "form: diameters, reading 2: readings don't match their places; expected the same directions at every level")
	_, err = d.Slopes()
	require.ErrorIs(t, err, form.ErrShape)
	d.Readings[1] = []units.Length{1 * pm, units.OutOfRange[units.Length]()}
	_, err = d.Shown()
	require.ErrorIs(t, err, form.ErrRange)
	for _, none := range [][][]units.Length{nil, {nil}} {
		_, err = form.Diameters{Readings: none}.Shown()
		require.ErrorIs(t, err, form.ErrTooFew)
	}
	_, err = form.Diameters{Levels: make([]units.Length, 2), Readings: [][]units.Length{{1 * pm}, {2 * pm}}}.Slopes()
	require.ErrorIs(t, err, form.ErrTooFew)
}

// A bore of 40 profiles: what its diameters prove is never more than is so.
func TestDiameters_lowerBound(t *testing.T) {
	for _, s := range bores(t) {
		if len(s.Profiles[0].Deviations)%2 != 0 {
			continue
		}
		var all []tolerance.Bracket
		for _, p := range s.Profiles {
			oor, err := p.OutOfRound()
			require.NoError(t, err)
			r, err := p.Roundness(form.MZCI)
			require.NoError(t, err)
			// The spindle's axis is off by up to 0.04 of 43 mm: e²/r is 37 nm.
			require.LessOrEqual(t, oor.Length()/2-40*units.Nanometre, r.RONt.Length())
			n := len(p.Deviations)
			for i := range n / 2 {
				all = append(all, tolerance.Exactly(2*p.Nominal+p.Deviations[i]+p.Deviations[i+n/2]))
			}
		}
		c, err := s.Cylindricity(form.MZCY)
		require.NoError(t, err)
		lower, _ := form.CylindricityFromDiameters(all[0], all[1:]...).Lower()
		require.LessOrEqual(t, lower-40*units.Nanometre, c.CYLt.Length())
	}
}

func TestProfile_refuses(t *testing.T) {
	p := form.Profile{Nominal: 1000 * pm, Deviations: make([]units.Length, 6)}
	for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI} {
		r, err := p.Roundness(kind)
		require.NoError(t, err)
		require.Equal(t, units.Length(2000), r.Diameter)
		require.Zero(t, r.RONt)
	}
	_, err := p.Roundness(0)
	require.ErrorIs(t, err, form.ErrKind)
	_, err = form.Profile{Nominal: 1 * pm, Deviations: make([]units.Length, 2)}.Roundness(form.MZCI)
	require.ErrorIs(t, err, form.ErrTooFew)
	_, err = form.Profile{Nominal: 1 * pm, Deviations: make([]units.Length, 2)}.OutOfRound()
	require.ErrorIs(t, err, form.ErrTooFew)
	for _, c := range []struct {
		deviation units.Length
		kind      error
	}{{-1000 * pm, form.ErrRadius}, {units.OutOfRange[units.Length](), form.ErrRange}, {(1 << 61) * pm, form.ErrRange}} {
		p.Deviations[4] = c.deviation
		_, err = p.Roundness(form.MZCI)
		require.ErrorIs(t, err, c.kind)
		_, err = p.OutOfRound()
		require.ErrorIs(t, err, c.kind)
		_, err = p.Radii(units.InMillimetres)
		require.ErrorIs(t, err, c.kind)
	}
	// Diameters near the end of the range are refused, not wrapped.
	huge := form.Profile{Nominal: 1 * pm, Deviations: []units.Length{(1<<61 - 1) * pm, 0, (1<<61 - 1) * pm, 0}}
	_, err = huge.OutOfRound()
	require.ErrorIs(t, err, form.ErrRange)
	_, err = form.Profile{Nominal: 43 * mm, Deviations: make([]units.Length, 600)}.Roundness(form.MCCI)
	require.NoError(t, err)
}
