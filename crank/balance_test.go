package crank

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func grams(t testing.TB, s string) BobweightMass {
	m, err := tolerance.ParseInterval[units.Mass](s)
	require.NoError(t, err, s)
	return m
}

func TestBalancePublished(t *testing.T) {
	vectors.Load(t, "published/crank_balance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		rot, rec, f := float(c.Float("rotating")), float(c.Float("reciprocating")), float(c.Float("factor"))
		throw, radius := float(c.Float("throw")), float(c.Float("radius"))
		m := BalanceMass(rot, rec, f, throw, radius)
		c.Near("mass", float64(m))
		require.InEpsilon(t, float64(f), float64(BalanceFactorOf(m, rot, rec, throw, radius)), 1e-13)
		c.Near("force", float64(BalanceForceN(rec, throw, float(c.Float("rpm")), f, radians(c.Float("angle"))))*c.Float("per"))
	})
	// At a factor of a half the force is the same at every angle.
	for deg := range 90 {
		require.InEpsilon(t, float64(BalanceForceN[float](1, 0.05, 3000, 0.5, 0)), float64(BalanceForceN(1, 0.05, 3000, 0.5, radians(4*float64(deg)))), 1e-14)
	}
}

// Two pistons on one pin: the force that turns with the crank is that of one
// piston's mass, whatever the angle between the banks, and at 90° it is all.
func TestBobweightOfVEngines(t *testing.T) {
	for _, bank := range []float64{45, 60, 72, 90, 120} {
		a := bank / 2 * math.Pi / 180
		var with, against complex128
		for i := range 360 {
			th := float64(i) * math.Pi / 180
			// Banks lie at ±a from the middle; each piston's force is along its bank.
			f := complex(math.Cos(th-a), 0)*complex(math.Cos(a), math.Sin(a)) + complex(math.Cos(th+a), 0)*complex(math.Cos(a), -math.Sin(a))
			turn := complex(math.Cos(th), math.Sin(th))
			with += f / turn / 360
			against += f * turn / 360
		}
		require.InDelta(t, 1, real(with), 1e-12)
		require.InDelta(t, math.Cos(2*a), real(against), 1e-12)
	}
}

func TestBobweight(t *testing.T) {
	vectors.Load(t, "practice/crank_bobweight.txt").Each(t, func(t *testing.T, c vectors.Case) {
		g := func(col string) BobweightMass { return grams(t, c.Text(col)+" g") }
		factor, err := tolerance.ParseRatio(c.Text("factor"))
		require.NoError(t, err)
		pin := BobweightPin{Where: "crankpin 1", Factor: factor, Oil: g("oil")}
		for range c.Int("rods") {
			pin.Rods = append(pin.Rods, BobweightRod{BigEnd: g("bigend"), Shells: g("shells"), SmallEnd: g("smallend"), Piston: g("piston"), Pin: g("pin"), Rings: g("rings"), Locks: g("locks")})
		}
		got, err := pin.Bobweight()
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(Bobweight{"crankpin 1", g("rotating"), g("reciprocating"), g("bobweight")}, got, cmp.Comparer(func(a, b BobweightMass) bool { return a == b })))
		bob, _ := g("bobweight").Middle()
		rot, _ := g("rotating").Middle()
		rec, _ := g("reciprocating").Middle()
		require.Equal(t, bob, BobweightOf(rot, rec, factor))
		require.Equal(t, rot, BobweightRotating(bob, rec, factor))
		require.Equal(t, rec, BobweightReciprocating(bob, rot, factor))
		kg := func(m units.Mass) float { return float(m.Float(units.InGrams)) }
		require.InEpsilon(t, factor.Float(), float64(BobweightFactor(kg(bob), kg(rot), kg(rec))), 1e-13)
	})
}

func TestBobweightReadings(t *testing.T) {
	half := tolerance.Ratio{Num: 1, Den: 2}
	// Brackets: the scale's errors of all parts, the reciprocating ones by half.
	b := BobweightOf(grams(t, "1333 ±0.4 g"), grams(t, "1847 ±1 g"), half)
	require.Equal(t, grams(t, "2256.5 ±0.9 g"), b)
	e, err := uncertainty.Rectangular("scale", 1847*units.Gram, units.Gram)
	require.NoError(t, err)
	est := BobweightOf(uncertainty.Exactly(1333*units.Gram), e, half)
	require.InDelta(t, 0.5/math.Sqrt(3), est.StandardUncertainty().Float(units.InGrams), 1e-9)
	term := BobweightOf(working.Given("rotating", "R", 1333*units.Gram), working.Given("reciprocating", "P", 1847*units.Gram), half).Named("bobweight", "B")
	s, err := working.Solve(term, units.Style[units.Mass]{Unit: units.InGrams, Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "= 2256.5 g")
	require.False(t, BobweightOf(units.Gram, units.Gram, tolerance.Ratio{}).InRange())
}

func TestBobweightRefuses(t *testing.T) {
	good := func() BobweightPin {
		return BobweightPin{Factor: tolerance.Ratio{Num: 1, Den: 2}, Rods: []BobweightRod{{BigEnd: grams(t, "400 g"), SmallEnd: grams(t, "150 g"), Piston: grams(t, "350 g")}}}
	}
	_, err := good().Bobweight()
	require.NoError(t, err)
	for says, change := range map[string]func(*BobweightPin){
		"number of rods on a crankpin 0 is not":              func(p *BobweightPin) { p.Rods = nil },
		"number of rods on pin 3 5":                          func(p *BobweightPin) { p.Where = "pin 3"; p.Rods = make([]BobweightRod, 5) },
		"balance factor of the crankpin 50 is not from 0":    func(p *BobweightPin) { p.Factor = tolerance.Whole(50) },
		"balance factor of the crankpin -0.5":                func(p *BobweightPin) { p.Factor = tolerance.Ratio{Num: -1, Den: 2} },
		"balance factor of the crankpin no ratio":            func(p *BobweightPin) { p.Factor = tolerance.Ratio{} },
		"big end of rod 1 (not given) is not weighed":        func(p *BobweightPin) { p.Rods[0].BigEnd = BobweightMass{} },
		"piston of cylinder 8 0 g is not above 0 g":          func(p *BobweightPin) { p.Rods[0].Where = "cylinder 8"; p.Rods[0].Piston = grams(t, "0 g") },
		"rings of rod 1 -1 g is not 0 g or more":             func(p *BobweightPin) { p.Rods[0].Rings = grams(t, "-1 g") },
		"oil of the crankpin -2 g":                           func(p *BobweightPin) { p.Oil = grams(t, "-2 g") },
		"locks of rod 1 [1 g, ∞) is not known on both sides": func(p *BobweightPin) { p.Rods[0].Locks = tolerance.AtLeast(units.Gram).Interval() },
		"shells of rod 1 [1500000 g": func(p *BobweightPin) {
			p.Rods[0].Shells = tolerance.MustBetween(1500*units.Kilogram, 2000*units.Kilogram).Interval()
		},
	} {
		p := good()
		change(&p)
		_, err := p.Bobweight()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
	}
	long := strings.Repeat("ä", 60)
	require.Equal(t, strings.Repeat("ä", 32)+"…", bobweightName(long, ""))
	require.Equal(t, strings.Repeat("ä", 31)+"…", bobweightName("x"+long, "")[1:])
}

func TestUnbalancePublished(t *testing.T) {
	vectors.Load(t, "published/crank_unbalance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		g, m, n := float(c.Float("grade")), float(c.Float("mass")), float(c.Float("rpm"))
		u := UnbalanceAllowedGMM(g, m, n)
		c.Near("allowed", float64(u))
		c.Near("shop", 9549*float64(g*m/n))
		c.Near("eccentricity", float64(UnbalanceEccentricityUM(g, n)))
		require.InEpsilon(t, float64(u/m), float64(UnbalanceEccentricityUM(g, n)), 1e-14)
		la, lb := float(c.Float("a")), float(c.Float("b"))
		c.Near("allowed_a", float64(UnbalanceAt(u, 0, -la, lb)))
		c.Near("allowed_b", float64(UnbalanceAt(u, 0, lb, -la)))
		require.InEpsilon(t, float64(g), float64(UnbalanceGrade(u, m, n)), 1e-14)
		require.InEpsilon(t, float64(n), float64(UnbalanceRPM(u, g, m)), 1e-14)
		// The checked way gives the same.
		rep, err := UnbalanceRotor{Mass: units.Mass(c.Int("mass")) * units.Kilogram / 2, RPM: float64(n), GradeMMPS: float64(g), BearingA: -units.Length(la) * units.Millimetre, BearingB: units.Length(lb) * units.Millimetre}.Assess()
		require.NoError(t, err)
		require.InEpsilon(t, float64(u)/2, rep.AllowedGMM, 1e-14)
		require.InEpsilon(t, float64(UnbalanceAt(u, 0, -la, lb))/2, rep.A.AllowedGMM, 1e-14)
		require.Equal(t, tolerance.Undecided, rep.Verdict)
	})
	// Rounding of 9549.297 to 9549 is 0.003 %.
	require.InDelta(t, 3.1e-5, 1-9549*math.Pi/30000, 1e-6)
	// 100 g·mm at 3000 r/min: 1e-4 kg·m × (100π)² = 9.8696 N.
	require.InDelta(t, 9.8696, float64(UnbalanceForceN[float](100, 3000)), 1e-4)
	require.InDelta(t, GramMillimetresPerOunceInch, units.Ounce.Float(units.InGrams)*units.Inch.Float(units.InMillimetres), 1e-12)
	grades := UnbalanceGrades()
	for i := 1; i < len(grades); i++ {
		require.InDelta(t, 2.5, grades[i]/grades[i-1], 0.05)
	}
}

func TestUnbalanceReference(t *testing.T) {
	vectors.Load(t, "reference/crank_unbalance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) units.Length { return units.MustParseLength(c.Text(col) + " mm") }
		deg := func(col string) units.Angle { return units.MustParseAngle(c.Text(col) + "°") }
		r := UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: 6000, GradeMMPS: 6.3, BearingA: mm("a"), BearingB: mm("b"), MassCentre: mm("a"),
			Readings: []UnbalanceReading{{At: mm("z1"), AmountGMM: c.Float("u1"), Angle: deg("t1")}, {At: mm("z2"), AmountGMM: c.Float("u2"), Angle: deg("t2") - 5*units.Turn}}}
		rep, err := r.Assess()
		require.NoError(t, err)
		for _, p := range []struct {
			got   UnbalancePlane
			size  string
			angle string
		}{{rep.A, "ua", "ta"}, {rep.B, "ub", "tb"}} {
			require.InEpsilon(t, c.Float(p.size), p.got.GreatestGMM, 1e-10)
			require.InEpsilon(t, c.Float(p.size), p.got.LeastGMM, 1e-10)
			require.InDelta(t, c.Float(p.angle), p.got.Angle.Float(units.InDegrees), 1e-8)
		}
		// An error widens by what of it acts in the plane.
		r.Readings[0].ErrorGMM = 3
		wide, err := r.Assess()
		require.NoError(t, err)
		require.InDelta(t, rep.A.GreatestGMM+math.Abs(3*(c.Float("b")-c.Float("z1"))/(c.Float("b")-c.Float("a"))), wide.A.GreatestGMM, 1e-9)
		r.Readings[0].ErrorGMM = 0
		r.Readings[1].NoAngle = true
		loose, err := r.Assess()
		require.NoError(t, err)
		for col, got := range map[string]float64{"aleast": loose.A.LeastGMM, "agreatest": loose.A.GreatestGMM, "bleast": loose.B.LeastGMM, "bgreatest": loose.B.GreatestGMM} {
			require.InDelta(t, c.Float(col), got, 1e-9, col)
		}
	})
}

func TestUnbalanceVerdicts(t *testing.T) {
	r := UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: 6000, GradeMMPS: 6.3, BearingB: 400 * units.Millimetre, MassCentre: 200 * units.Millimetre}
	at := func(u, e float64) UnbalanceReading { return UnbalanceReading{AmountGMM: u, ErrorGMM: e} } // in plane A
	verdict := func(readings ...UnbalanceReading) tolerance.Verdict {
		r.Readings = readings
		rep, err := r.Assess()
		require.NoError(t, err)
		require.NotEmpty(t, rep.Next)
		return rep.Verdict
	}
	require.Equal(t, tolerance.Undecided, verdict())
	require.Equal(t, tolerance.Within, verdict(at(100, 0)))    // 100.268 allowed
	require.Equal(t, tolerance.Undecided, verdict(at(100, 1))) // the error reaches over
	require.Equal(t, tolerance.Undecided, verdict(at(101, 1))) // and back
	require.Equal(t, tolerance.Above, verdict(at(101, 0.5)))
	// Two that cancel are within; a couple is not.
	opposite := UnbalanceReading{AmountGMM: 300, Angle: units.Turn / 2}
	require.Equal(t, tolerance.Within, verdict(at(300, 0), opposite))
	opposite.At = 400 * units.Millimetre
	require.Equal(t, tolerance.Above, verdict(at(300, 0), opposite))
	// Outside the bearings an unbalance acts more than once over.
	require.Equal(t, tolerance.Above, verdict(UnbalanceReading{AmountGMM: 90, At: -100 * units.Millimetre}))
	// A mass centre outside the bearings: shares by the lever, their sizes.
	r.MassCentre, r.Readings = 500*units.Millimetre, nil
	rep, err := r.Assess()
	require.NoError(t, err)
	require.InDelta(t, 200.535*0.25, rep.A.AllowedGMM, 1e-3)
	require.InDelta(t, 200.535*1.25, rep.B.AllowedGMM, 1e-3)
	r.Limit7030 = true
	rep, err = r.Assess()
	require.NoError(t, err)
	require.InDelta(t, 200.535*0.3, rep.A.AllowedGMM, 1e-3)
	require.InDelta(t, 200.535*0.7, rep.B.AllowedGMM, 1e-3)
}

func TestUnbalanceRefuses(t *testing.T) {
	for says, change := range map[string]func(*UnbalanceRotor){
		"rotor's mass 0 g":                 func(r *UnbalanceRotor) { r.Mass = 0 },
		"rotor's mass -":                   func(r *UnbalanceRotor) { r.Mass = -units.Kilogram },
		"speed 0 r/min is not above":       func(r *UnbalanceRotor) { r.RPM = 0 },
		"balance quality grade -1":         func(r *UnbalanceRotor) { r.GradeMMPS = -1 },
		"balance quality grade NaN":        func(r *UnbalanceRotor) { r.GradeMMPS = math.NaN() },
		"bearing B 0 mm is not at another": func(r *UnbalanceRotor) { r.BearingB = 0 },
		"mass centre 200000 mm":            func(r *UnbalanceRotor) { r.MassCentre = 200 * units.Metre },
		"unbalance of front -5 g·mm":       func(r *UnbalanceRotor) { r.Readings[0].AmountGMM = -5 },
		"error of front -5 g·mm":           func(r *UnbalanceRotor) { r.Readings[0].ErrorGMM = -5 },
		"place of front":                   func(r *UnbalanceRotor) { r.Readings[0].At = 200 * units.Metre },
		"angle of front":                   func(r *UnbalanceRotor) { r.Readings[0].Angle = units.OutOfRange[units.Angle]() },
		"number of planes 101":             func(r *UnbalanceRotor) { r.Readings = make([]UnbalanceReading, 101) },
	} {
		r := UnbalanceRotor{Mass: units.Kilogram, RPM: 1, GradeMMPS: 6.3, BearingB: units.Metre, Readings: []UnbalanceReading{{Where: "front"}}}
		change(&r)
		_, err := r.Assess()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
	}
}

// Whatever the readings, the planes' unbalances stay finite, in order, and what
// is passed is not above what is allowed.
func FuzzUnbalance(f *testing.F) {
	f.Add(20.0, 6000.0, 6.3, int64(0), int64(4e11), int64(2e11), 100.0, 1.0, int64(1e9), true)
	f.Fuzz(func(t *testing.T, amount, rpm, grade float64, a, b, centre int64, second, doubt float64, angle int64, loose bool) {
		rep, err := UnbalanceRotor{Mass: 20 * units.Kilogram, RPM: rpm, GradeMMPS: grade, BearingA: units.Length(a), BearingB: units.Length(b), MassCentre: units.Length(centre),
			Readings: []UnbalanceReading{{AmountGMM: amount, At: units.Length(centre)}, {AmountGMM: second, ErrorGMM: doubt, At: units.Length(b), Angle: units.Angle(angle), NoAngle: loose}}}.Assess()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		for _, p := range []UnbalancePlane{rep.A, rep.B} {
			require.True(t, p.LeastGMM >= 0 && p.LeastGMM <= p.GreatestGMM, "%+v", p)
			if p.Verdict == tolerance.Within {
				require.LessOrEqual(t, p.GreatestGMM, p.AllowedGMM)
			}
		}
		if rep.Verdict == tolerance.Within {
			require.True(t, rep.A.Verdict == tolerance.Within && rep.B.Verdict == tolerance.Within)
		}
	})
}

func TestUnbalanceInversesUndo(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 3))
	for range 500 {
		u, m, n := float(1+500*rnd.Float64()), float(1+50*rnd.Float64()), float(500+9000*rnd.Float64())
		require.InEpsilon(t, float64(u), float64(UnbalanceAllowedGMM(UnbalanceGrade(u, m, n), m, n)), 1e-14)
	}
	d, err := uncertainty.NewDual("mass", 20, "kg", uncertainty.RectangularShape, 0.1)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	got := UnbalanceAllowedGMM(x(6.3), d, x(6000))
	require.InEpsilon(t, 200.5352283*0.005/math.Sqrt(3), got.StandardUncertainty(), 1e-8)
	g := working.GivenReal
	s, err := working.SolveReal(UnbalanceAllowedGMM(g("grade", "G", 6.3, "mm/s"), g("mass", "m", 20, "kg"), g("speed", "n", 6000, "/min")).Named("permissible unbalance", "U", "g·mm"), working.RealStyle{Places: 1, Bare: true})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "200.5 g·mm")
}
