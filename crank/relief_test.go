package crank

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func force(t testing.TB, s string) tolerance.Interval[units.Force] {
	f, err := tolerance.ParseInterval[units.Force](s)
	require.NoError(t, err, s)
	return f
}

func TestReliefPublished(t *testing.T) {
	vectors.Load(t, "published/crank_relief.txt").Each(t, func(t *testing.T, c vectors.Case) {
		s := ReliefSpring{Free: pumpBracket(t, c.Text("free")), Height: units.MustParseLength(c.Text("height")), Load: force(t, c.Text("load"))}
		s.FreeLimits.New = pumpBand(t, c, "free_limits")
		p, err := tolerance.ParsePrintedOf[units.Force](c.Text("load_limits"))
		require.NoError(t, err)
		s.LoadLimits.New = p.BandOf
		r, err := s.Assess()
		require.NoError(t, err)
		require.Equal(t, c.Text("standing"), r.Standing.String())
		require.NotEmpty(t, r.Next)
	})
}

func TestReliefReference(t *testing.T) {
	vectors.Load(t, "reference/crank_relief.txt").Each(t, func(t *testing.T, c vectors.Case) {
		about := func(col, unit string) string { return c.Text(col) + " ±" + c.Text(col+"_e") + " " + unit }
		s := ReliefSpring{
			Free: pumpBracket(t, about("free", "mm")), Height: units.MustParseLength(c.Text("height") + " mm"), Load: force(t, about("load", "N")),
			Installed: pumpBracket(t, about("installed", "mm")), Seat: pumpBracket(t, about("seat", "mm")),
		}
		r, err := s.Assess()
		require.NoError(t, err)
		require.Equal(t, tolerance.CantTell, r.Standing)
		lo, _ := r.Rate.Lower()
		hi, _ := r.Rate.Upper()
		outward(t, c.Float("rate0"), c.Float("rate1"), lo.Float(units.InNewtonsPerMillimetre), hi.Float(units.InNewtonsPerMillimetre))
		l0, _ := r.Installed.Lower()
		l1, _ := r.Installed.Upper()
		outward(t, c.Float("load0"), c.Float("load1"), l0.Float(units.InNewtons), l1.Float(units.InNewtons))
		p0, _ := r.Opens.Lower()
		p1, _ := r.Opens.Upper()
		outward(t, c.Float("press0"), c.Float("press1"), p0.Float(units.InMegapascals), p1.Float(units.InMegapascals))
		// The plain formulas and their inverses, at the middle.
		free, height, load, seat := float(c.Float("free")), float(c.Float("height")), float(c.Float("load")), float(c.Float("seat"))
		k := ReliefRate(load, free, height)
		require.InEpsilon(t, float64(load), float64(ReliefLoad(k, free, height)), 1e-14)
		require.InEpsilon(t, float64(height), float64(ReliefHeight(load, k, free)), 1e-14)
		require.InEpsilon(t, float64(k), float64(ReliefRateByTwo(ReliefLoad(k, free, height+3), height+3, load, height)), 1e-12)
		p := ReliefPressureMPa(load, seat)
		require.InEpsilon(t, float64(load), float64(ReliefLoadN(p, seat)), 1e-14)
		// A shim of the thickness opens at the wanted pressure.
		shim := ReliefShim(0.05, seat, k)
		require.InEpsilon(t, float64(p)+0.05, float64(ReliefPressureMPa(ReliefLoad(k, free, height-shim), seat)), 1e-12)
	})
}

// outward fails unless the bracket holds the reference, and is no wider than
// roundings make it.
func outward(t *testing.T, want0, want1, got0, got1 float64) {
	t.Helper()
	require.InEpsilon(t, want0, got0, 1e-12)
	require.InEpsilon(t, want1, got1, 1e-12)
	require.LessOrEqual(t, got0, want0*(1+1e-14))
	require.GreaterOrEqual(t, got1, want1*(1-1e-14))
}

// 100 N on 10 mm: 100/(25π) MPa; and 18.5 lbf at 1.44 in from 2.125 in: 27.007 lbf/in.
func TestReliefByHand(t *testing.T) {
	require.InDelta(t, 1.2732395447, float64(ReliefPressureMPa[float](100, 10)), 1e-10)
	require.InDelta(t, 27.007, float64(ReliefRate[float](18.5, 2.125, 1.44)), 1e-3)
	load, err := uncertainty.NewDual("load", 100, "N", uncertainty.RectangularShape, 1)
	require.NoError(t, err)
	p := ReliefPressureMPa(load, uncertainty.ExactlyReal(10))
	require.InDelta(t, 0.012732395447/math.Sqrt(3), p.StandardUncertainty(), 1e-12)
	g := working.GivenReal
	s, err := working.SolveReal(ReliefPressureMPa(g("load", "F", 100, "N"), g("seat", "d", 10, "mm")).Named("opening pressure", "p", "MPa"), working.RealStyle{Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "1.273 MPa")
}

func TestReliefStandings(t *testing.T) {
	s := ReliefSpring{Free: pumpBracket(t, "50 ±0.1 mm"), Height: 36 * units.Millimetre, Load: force(t, "60 ±0.5 N"), Installed: pumpBracket(t, "38 mm"), Seat: pumpBracket(t, "12 ±0.02 mm")}
	limit := func(text string) tolerance.SpecOf[units.Pressure] {
		p, err := tolerance.ParsePrintedOf[units.Pressure](text)
		require.NoError(t, err)
		return tolerance.SpecOf[units.Pressure]{New: p.BandOf}
	}
	// 60/14·12 N on π·36 mm²: 0.4547 MPa, 4.55 bar.
	for text, want := range map[string]tolerance.Standing{"4–5 bar": tolerance.AsNew, "5–6 bar": tolerance.OutsideNewBand, "4.55–6 bar": tolerance.CantTell} {
		s.PressureLimits = limit(text)
		r, err := s.Assess()
		require.NoError(t, err)
		require.Equal(t, want, r.Standing, text)
		require.Equal(t, want, r.Pressure.Standing, text)
	}
	s.FreeLimits.Wear = tolerance.MustParseBand("min 49 mm")
	s.PressureLimits = limit("4–5 bar")
	r, err := s.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Usable, r.Standing)
}

func TestReliefRefuses(t *testing.T) {
	for says, change := range map[string]func(*ReliefSpring){
		"free length":                                nil,
		"free length 0 mm":                           func(s *ReliefSpring) { s.Free = pumpBracket(t, "0 mm") },
		"height 50 mm is not above":                  func(s *ReliefSpring) { s.Height = 50 * units.Millimetre },
		"height 49.9999 mm is not so far below":      func(s *ReliefSpring) { s.Height = 50*units.Millimetre - 100*units.Nanometre },
		"height 0 mm":                                func(s *ReliefSpring) { s.Height = 0 },
		"spring's load -1 N":                         func(s *ReliefSpring) { s.Load = force(t, "-1 N") },
		"opening pressure from one of them":          func(s *ReliefSpring) { s.Installed = tolerance.Bracket{} },
		"installed height 51 mm":                     func(s *ReliefSpring) { s.Installed = pumpBracket(t, "51 mm") },
		"diameter of the seat -12 mm":                func(s *ReliefSpring) { s.Seat = pumpBracket(t, "-12 mm") },
		"diameter of the seat 0.001 mm is not large": func(s *ReliefSpring) { s.Seat = pumpBracket(t, "0.001 mm") },
	} {
		s := ReliefSpring{Free: pumpBracket(t, "50 mm"), Height: 36 * units.Millimetre, Load: force(t, "60 N"), Installed: pumpBracket(t, "38 mm"), Seat: pumpBracket(t, "12 mm")}
		if change == nil {
			s, says = ReliefSpring{}, "free length"
		} else {
			change(&s)
		}
		_, err := s.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
	}
	_, err := ReliefOpens(force(t, "0 N"), pumpBracket(t, "12 mm"))
	require.ErrorContains(t, err, "spring's load 0 N")
	bad := ReliefSpring{Free: pumpBracket(t, "50 mm"), Height: 36 * units.Millimetre, Load: force(t, "60 N")}
	bad.FreeLimits = tolerance.Spec{New: tolerance.MustParseBand("48–50 mm"), Wear: tolerance.MustParseBand("min 49 mm")}
	_, err = bad.Assess()
	require.Error(t, err)
}

// Whatever is read, the spring is judged or refused.
func FuzzReliefSpring(f *testing.F) {
	f.Add("50 ±0.1 mm", int64(36e9), "60 ±0.5 N", "38 mm", "12 ±0.02 mm")
	f.Fuzz(func(t *testing.T, free string, height int64, load, installed, seat string) {
		s := ReliefSpring{Height: units.Length(height)}
		var err error
		if s.Free, err = tolerance.ParseBracket(free); err != nil {
			return
		}
		if s.Load, err = tolerance.ParseInterval[units.Force](load); err != nil {
			return
		}
		s.Installed, _ = tolerance.ParseBracket(installed)
		s.Seat, _ = tolerance.ParseBracket(seat)
		r, err := s.Assess()
		if err == nil {
			require.NotEmpty(t, r.Next)
		}
	})
}
