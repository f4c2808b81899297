package valvetrain

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A general optimiser is the judge of the least clearance, a root finder of the
// room that is left.
func TestPistonValveReference(t *testing.T) {
	vectors.Load(t, "reference/valvetrain_pistonvalve.txt").Each(t, func(t *testing.T, c vectors.Case) {
		table := LiftTable{Points: liftTable(c.Text("angles"), c.Text("lifts"))}
		require.NoError(t, table.Way.UnmarshalText([]byte(c.Text("way"))))
		curve, err := table.Curve()
		require.NoError(t, err)
		mm := func(col string) tolerance.Bracket { return stemAt(c.Text(col) + " mm") }
		offset := stemLen(c.Text("offset") + " mm")
		p := PistonValve{Curve: curve, Drop: mm("drop"), Inclination: tolerance.Exactly(timingDeg(c.Text("psi"))),
			FlatCrown: c.Choice("crown", "pocket", "flat") == "flat", Throw: mm("throw"), Rod: mm("rod"), Offset: offset}
		r, err := p.Inspect()
		require.NoError(t, err)
		lo, hi := inputEnds(r.Least)
		require.LessOrEqual(t, hi-lo, 5*units.Picometre, "exact readings leave the rounding alone")
		c.Near("least", lo.Float(units.InMillimetres))
		require.Equal(t, !c.Has("at"), r.Shut)
		if !r.Shut {
			c.Near("at", r.At.Float(units.InDegrees))
		}
		wanted := stemLen(c.Text("wanted") + " mm")
		if !c.Has("left") {
			return
		}
		room, err := p.Room(wanted)
		require.NoError(t, err)
		require.False(t, room.Free)
		c.Near("left", room.Left.Float(units.InDegrees))
		// After that move there is as much as wanted, and hardly more.
		by := room.Left
		if room.Move == RetardCam {
			by = -by
		}
		p.Curve, err = curve.Advanced(by)
		require.NoError(t, err)
		r, err = p.Inspect()
		require.NoError(t, err)
		lo, _ = inputEnds(r.Least)
		require.GreaterOrEqual(t, lo, wanted-3)
		require.InDelta(t, wanted.Float(units.InMillimetres), lo.Float(units.InMillimetres), 1e-6)
	})
}

func valveMeets() PistonValve {
	table := liftLobe(151, 105)
	curve, err := table.Curve()
	if err != nil {
		panic(err)
	}
	return PistonValve{Where: "inlet, cylinder 1", Curve: curve, Drop: stemAt("4.2 ±0.02 mm"), Inclination: timingRead("18 ±0.5°"),
		Throw: stemAt("43 mm"), Rod: stemAt("143.5 ±0.1 mm"), LiftError: stemLen("0.01 mm"), TimingError: timingDeg("0.5"),
		Limits: stemWorn("min 1.5 mm")}
}

// The bracket holds the least clearance of every case that the readings allow,
// found by a plain fine grid.
func TestPistonValveBracket(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	p := valveMeets()
	p.Offset = stemLen("0.6 mm")
	for _, flat := range []bool{false, true} {
		p.FlatCrown = flat
		out, err := p.Inspect()
		require.NoError(t, err)
		lo, hi := inputEnds(out.Least)
		draw := func(a, b float64) float64 {
			switch r.IntN(3) {
			case 0:
				return a
			case 1:
				return b
			}
			return a + (b-a)*r.Float64()
		}
		least, greatest := math.Inf(1), math.Inf(-1)
		for range 60 {
			drop, psi, rod := draw(4.18, 4.22), draw(17.5, 18.5)*math.Pi/180, draw(143.4, 143.6)
			lift, timing := draw(-0.01, 0.01), draw(-0.5, 0.5)
			k := math.Cos(psi)
			if flat {
				k = 1 / k
			}
			fall := newFallCurve(43, rod, 0.6)
			c := math.Inf(1)
			for a := -20.0; a < 60; a += 0.05 {
				y, err := p.Curve.Lift(units.Angle(a * float64(units.Degree)))
				require.NoError(t, err)
				x, _ := fall.at((a - timing) * math.Pi / 180)
				c = min(c, drop+k*x-y.Float(units.InMillimetres)-lift)
			}
			require.GreaterOrEqual(t, c, lo.Float(units.InMillimetres))
			require.LessOrEqual(t, c, hi.Float(units.InMillimetres)+1e-4)
			least, greatest = min(least, c), max(greatest, c)
		}
		// And isn't much wider than they need.
		require.InDelta(t, least, lo.Float(units.InMillimetres), 0.02)
		require.InDelta(t, greatest, hi.Float(units.InMillimetres), 0.02)
	}
}

func TestPistonValveInspect(t *testing.T) {
	r, err := valveMeets().Inspect()
	require.NoError(t, err)
	require.False(t, r.Shut)
	require.Greater(t, r.At, 0*units.Degree, "an inlet valve comes nearest after dead centre")
	require.Greater(t, r.PerDegreeMM, 0.0, "advance brings it nearer")

	// By hand at that place: drop and fall and lift make the clearance.
	type f = tolerance.Float
	mm := func(l units.Length) f { return f(l.Float(units.InMillimetres)) }
	lo, _ := inputEnds(r.Least)
	require.InDelta(t, float64(PistonToValve(f(4.18), mm(r.Fall), mm(r.Lift), f(18.5*math.Pi/180))), lo.Float(units.InMillimetres), 1e-8)

	at, err := valveMeets().ClearanceAt(r.At)
	require.NoError(t, err)
	require.InDelta(t, int64(lo), int64(at), 10)
	for a := -20 * units.Degree; a <= 200*units.Degree; a += units.Degree {
		c, err := valveMeets().ClearanceAt(a)
		require.NoError(t, err)
		require.GreaterOrEqual(t, c, lo-2)
	}
	_, err = valveMeets().ClearanceAt(-60 * units.Degree)
	require.ErrorContains(t, err, "within the table")
	_, err = PistonValve{}.ClearanceAt(0)
	require.ErrorIs(t, err, ErrInput)

	// Without the cosine more seems to be left: the unsafe side.
	straight := valveMeets()
	straight.Inclination = timingRead("0°")
	s, err := straight.Inspect()
	require.NoError(t, err)
	wrong, _ := inputEnds(s.Least)
	require.Greater(t, wrong, lo)
	// A flat crown leaves more than a pocket does.
	flat := valveMeets()
	flat.FlatCrown = true
	g, err := flat.Inspect()
	require.NoError(t, err)
	more, _ := inputEnds(g.Least)
	require.Greater(t, more, wrong)

	// One degree of advance takes what the report says.
	p := valveMeets()
	p.Curve, err = p.Curve.Advanced(timingDeg("0.01"))
	require.NoError(t, err)
	a, err := p.Inspect()
	require.NoError(t, err)
	after, _ := inputEnds(a.Least)
	require.InDelta(t, r.PerDegreeMM*0.01, (lo - after).Float(units.InMillimetres), 1e-5)

	p = valveMeets()
	p.Allowance = stemLen("0.3 mm")
	w, err := p.Inspect()
	require.NoError(t, err)
	less, _ := inputEnds(w.Least)
	require.Equal(t, lo-stemLen("0.3 mm"), less)

	for _, c := range []struct {
		drop, limits, next string
	}{
		{"0.5 mm", "min 0.1 mm", "do not turn"}, {"4.2 mm", "min 5 mm", "deepen the pocket"}, {"9 mm", "min 1 mm", "none by these limits"},
	} {
		p := valveMeets()
		p.Drop, p.Limits = stemAt(c.drop), stemWorn(c.limits)
		r, err := p.Inspect()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	p = valveMeets()
	p.Limits = tolerance.Spec{}
	r, err = p.Inspect()
	require.NoError(t, err)
	require.Contains(t, r.Next, "look up")
	p.Limits = stemWorn("min " + lo.String())
	p.LiftError -= 5 * units.Micrometre
	p.Limits = tolerance.Spec{Wear: tolerance.AtLeast(lo + stemLen("0.02 mm"))}
	r, err = p.Inspect()
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, r.Judgment.Standing)
	require.Contains(t, r.Next, "piston-to-valve clearance, inlet, cylinder 1: ")

	// A valve that opens well after dead centre is nearest shut.
	late := valveMeets()
	late.LiftError = 0 // with it a lift of 0 may be a little open
	late.Curve, err = late.Curve.Advanced(timingDeg("-40"))
	require.NoError(t, err)
	l, err := late.Inspect()
	require.NoError(t, err)
	require.True(t, l.Shut)
	drop, _ := inputEnds(late.Drop)
	nearest, _ := inputEnds(l.Least)
	require.InDelta(t, int64(drop), int64(nearest), 3)
	require.Zero(t, l.PerDegreeMM)
}

func TestPistonValveRoom(t *testing.T) {
	p := valveMeets()
	room, err := p.Room(stemLen("1 mm"))
	require.NoError(t, err)
	require.Equal(t, AdvanceCam, room.Move)
	more, err := p.Room(stemLen("0.5 mm"))
	require.NoError(t, err)
	require.Greater(t, more.Left, room.Left)
	// A drop beyond the lift never meets.
	free := valveMeets()
	free.Drop = stemAt("12 mm")
	f, err := free.Room(stemLen("1 mm"))
	require.NoError(t, err)
	require.True(t, f.Free)
	require.Equal(t, timingDeg("105"), f.Left.Abs())
	// Wanted more than is there: the camshaft must come back.
	back, err := p.Room(stemLen("3.5 mm"))
	require.NoError(t, err)
	require.Less(t, back.Left, units.Angle(0))
	_, err = p.Room(stemLen("4.2 mm"))
	require.ErrorContains(t, err, "wanted clearance")
	_, err = p.Room(units.OutOfRange[units.Length]())
	require.ErrorIs(t, err, ErrInput)
	// A lift that may be a hundredth more than read is so at dead centre too.
	long := valveMeets()
	long.Curve, err = LiftTable{Points: liftTable("-300,-20,20,105,190,230", "0,0,1,10,1,0")}.Curve()
	require.NoError(t, err)
	_, err = long.Room(stemLen("4.175 mm"))
	require.ErrorContains(t, err, "moved back by 90° or less")
	bad := valveMeets()
	bad.Curve = LiftCurve{}
	_, err = bad.Room(0)
	require.ErrorIs(t, err, ErrInput)
}

func TestPistonValveRefuses(t *testing.T) {
	follower, err := LiftTable{Side: AtFollower, Points: liftLobe(20, 100).Points}.Curve()
	require.NoError(t, err)
	for _, c := range []struct {
		spoil func(*PistonValve)
		says  string
	}{
		{func(p *PistonValve) { p.Curve = LiftCurve{} }, "lift curve"},
		{func(p *PistonValve) { p.Curve = follower }, "lift curve at the follower"},
		{func(p *PistonValve) { p.Drop = stemAt("[4 mm, ∞)") }, "drop at dead centre"},
		{func(p *PistonValve) { p.Drop = stemAt("-1 mm") }, "drop at dead centre"},
		{func(p *PistonValve) { p.Inclination = timingRead("-1°") }, "valve's angle to the bore"},
		{func(p *PistonValve) { p.Inclination = tolerance.Interval[units.Angle]{} }, "valve's angle to the bore"},
		{func(p *PistonValve) { p.Inclination = timingRead("89°") }, "valve's angle to the bore"},
		{func(p *PistonValve) { p.Throw = stemAt("0 mm") }, "throw"},
		{func(p *PistonValve) { p.Rod = stemAt("40 mm") }, "rod 40 mm"},
		{func(p *PistonValve) { p.Rod = tolerance.Bracket{} }, "rod"},
		{func(p *PistonValve) { p.Offset = stemLen("101 mm") }, "rod 143.4 mm"},
		{func(p *PistonValve) { p.LiftError = -1 }, "error of the lifts"},
		{func(p *PistonValve) { p.TimingError = -1 }, "error of timing"},
		{func(p *PistonValve) { p.TimingError = 46 * units.Degree }, "error of timing"},
		{func(p *PistonValve) { p.Allowance = -1 }, "allowance"},
		{func(p *PistonValve) {
			p.Limits = stemNew("max 1 mm")
			p.Limits.Wear = tolerance.MustParseBand("max 0.5 mm")
		}, "limits of the piston"},
		{func(p *PistonValve) {
			p.Curve, _ = LiftTable{Points: p.Curve.Points()[90:]}.Curve()
			p.Curve, _ = p.Curve.Advanced(100 * units.Degree)
		}, "lift table"},
	} {
		p := valveMeets()
		c.spoil(&p)
		_, err := p.Inspect()
		require.ErrorIs(t, err, ErrInput, c.says)
		require.ErrorContains(t, err, c.says)
	}
	// A table that begins at dead centre, where the error of its first lift is
	// all that there is.
	p := valveMeets()
	p.LiftError, p.TimingError = stemLen("0.5 mm"), 0
	p.Curve, _ = LiftTable{Points: liftTable("0,60,120,180,240", "0.1,1,8,1,0")}.Curve()
	_, err = p.Inspect()
	require.ErrorContains(t, err, "begins and ends with the valve shut")
	p = valveMeets()
	p.Curve, _ = LiftTable{Points: p.Curve.Points()[90:]}.Curve()
	p.Curve, _ = p.Curve.Advanced(100 * units.Degree)
	_, err = p.Room(stemLen("1 mm"))
	require.ErrorContains(t, err, "begins and ends with the valve shut")
}

func TestPistonValveFormulas(t *testing.T) {
	type f = tolerance.Float
	// 3 mm of fall at 20°: cos 20° = 0.939693; the cosine left out is 0.1809 mm.
	psi := f(20 * math.Pi / 180)
	require.InDelta(t, 4+3*0.939692621-5, float64(PistonToValve(f(4), f(3), f(5), psi)), 1e-9)
	require.InDelta(t, 4+3/0.939692621-5, float64(PistonToValveFlat(f(4), f(3), f(5), psi)), 1e-8)
	require.InDelta(t, 0.180922137, float64(PistonToValve(f(4), f(3), f(5), f(0))-PistonToValve(f(4), f(3), f(5), psi)), 1e-9)
	r := rand.New(rand.NewPCG(10, 10))
	for range 1000 {
		drop, x, lift, a := f(9*r.Float64()), f(20*r.Float64()), f(12*r.Float64()), f(r.Float64())
		c := PistonToValve(drop, x, lift, a)
		require.InDelta(t, float64(drop), float64(PistonValveDrop(c, x, lift, a)), 1e-12)
		require.InDelta(t, float64(lift), float64(PistonValveLift(c, drop, x, a)), 1e-12)
		require.GreaterOrEqual(t, PistonToValveFlat(drop, x, lift, a), c)
	}
	// A pocket of 36 mm about a head of 33 mm, 0.4 mm beside: 1.1 mm; 3 mm of
	// fall at 20° moves it by 1.026 mm.
	require.Equal(t, stemLen("1.1 mm"), PocketClearance(stemLen("36 mm"), stemLen("33 mm"), stemLen("-0.4 mm")))
	require.Equal(t, stemLen("36 mm"), PocketFor(stemLen("33 mm"), stemLen("1.1 mm"), stemLen("0.4 mm")))
	require.InDelta(t, 1.026060430, float64(PocketShift(f(3), psi)), 1e-9)

	c, err := uncertainty.NewDual("drop", 4, "mm", uncertainty.NormalShape, 0.02)
	require.NoError(t, err)
	x := uncertainty.ExactlyReal
	require.InDelta(t, 0.02, PistonToValve(c, x(3), x(5), x(0.35)).StandardUncertainty(), 1e-12)
	s, err := working.SolveReal(PistonToValve(working.GivenReal("drop", "c₀", 4, "mm"), working.GivenReal("fall", "x", 3, "mm"), working.GivenReal("lift", "L", 5, "mm"), working.GivenReal("angle", "ψ", 0.3490658504, "rad")).
		Named("clearance", "c", "mm"), working.RealStyle{Places: 3})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "c = c₀ + x × cos(ψ) − L")
	require.Contains(t, s.Text(), "1.819")
	require.Equal(t, stemAt("[1.05 mm, 1.15 mm]"), PocketClearance(stemAt("36 ±0.1 mm"), stemAt("33 mm"), stemAt("0.4 mm")))
}

func BenchmarkPistonValve(b *testing.B) {
	p := valveMeets()
	p.Curve, _ = liftLobe(720, 105).Curve()
	b.Run("lib=tenthou/op=inspect/n=720", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := p.Inspect(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("lib=tenthou/op=room/n=720", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := p.Room(units.Millimetre); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func FuzzPistonValve(f *testing.F) {
	f.Add("4.2 ±0.02 mm", "18 ±0.5°", "43 mm", "143.5 mm", int64(6e8), int64(1e7), int64(units.Degree/2), false)
	f.Add("0 mm", "0°", "43 mm", "43.1 mm", int64(0), int64(0), int64(0), true)
	curve := valveMeets().Curve
	f.Fuzz(func(t *testing.T, drop, lean, throw, rod string, offset, lift, timing int64, flat bool) {
		p := PistonValve{Curve: curve, Offset: units.Length(offset), LiftError: units.Length(lift), TimingError: units.Angle(timing), FlatCrown: flat}
		for _, x := range []struct {
			text string
			into *tolerance.Bracket
		}{{drop, &p.Drop}, {throw, &p.Throw}, {rod, &p.Rod}} {
			b, err := tolerance.ParseBracket(x.text)
			if err != nil {
				return
			}
			*x.into = b
		}
		a, err := tolerance.ParseInterval[units.Angle](lean)
		if err != nil {
			return
		}
		p.Inclination = a
		r, err := p.Inspect()
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		lo, hi := inputEnds(r.Least)
		_, dropHi := inputEnds(p.Drop)
		require.True(t, r.Least.InRange() && lo <= hi && hi <= dropHi+2)
	})
}
