package valvetrain

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func seatDeg(s string) SeatAngle { return SeatAngleFromSquare(units.MustParseAngle(s + "°")) }

// nearTo fails unless a bracket of exact sizes is a few quanta wide and holds
// the judge's value.
func nearTo(t *testing.T, want float64, b tolerance.Bracket, what string) {
	t.Helper()
	lo, hi := inputEnds(b)
	require.True(t, b.InRange(), what)
	require.LessOrEqual(t, int64(hi-lo), int64(10), what)
	require.LessOrEqual(t, float64(lo), want*1e9+1, what)
	require.GreaterOrEqual(t, float64(hi), want*1e9-1, what)
}

// Lines in a half plane, their meeting points and integrals are the judge.
func TestSeatReference(t *testing.T) {
	type f = tolerance.Float
	vectors.Load(t, "reference/valvetrain_cone.txt").Each(t, func(t *testing.T, c vectors.Case) {
		mm := func(col string) tolerance.Bracket { return stemAt(c.Text(col) + " mm") }
		real := func(col string) f { return f(c.Float(col)) }
		seat, above, below := seatDeg(c.Text("alpha")), seatDeg(c.Text("beta")), seatDeg(c.Text("gamma"))
		al, be, ga := f(seat.Radians()), f(above.Radians()), f(below.Radians())
		eq := func(col string, got f) {
			t.Helper()
			require.InEpsilon(t, c.Float(col), float64(got), 2e-13, col)
		}
		eq("inner", SeatInner(real("outer"), real("width"), al))
		eq("outer", SeatOuter(real("inner"), real("width"), al))
		eq("width", SeatWidth(real("outer"), real("inner"), al))
		eq("outer_fed", OuterAfterFeed(real("outer"), real("feed_a"), al, be))
		eq("inner_fed", InnerAfterFeed(real("inner"), real("feed_b"), al, ga))
		eq("outer_cut", OuterAfterReface(real("outer"), real("depth"), al, be))
		eq("inner_cut", InnerAfterReface(real("inner"), real("depth"), al, ga))
		eq("to_above", FeedFromAbove(f(0.5), al, be))
		eq("to_below", FeedFromBelow(f(0.5), al, ga))
		eq("run", SeatRunOutFor(f(0.02), al, DialSquareToSeat))
		eq("v_seat", SeatRecessionVolume(real("outer"), real("depth"), al, be))
		eq("v_face", FaceRecessionVolume(real("head"), real("depth")))
		eq("v_top", NarrowingVolume(real("outer"), real("outer_fed"), real("end"), al, be))
		// Inverses: what a difference of diameters loses in digits it may.
		near := func(want float64, got f) { t.Helper(); require.InDelta(t, want, float64(got), 1e-12) }
		near(0.5, NarrowedFromAbove(FeedFromAbove(f(0.5), al, be), al, be))
		near(0.5, NarrowedFromBelow(FeedFromBelow(f(0.5), al, ga), al, ga))
		near(c.Float("feed_a"), FeedToOuter(real("outer"), real("outer_fed"), al, be))
		near(c.Float("feed_b"), FeedToInner(real("inner"), real("inner_fed"), al, ga))
		// The form of the brief: Δw·cos α·(tan α − tan β).
		tan := func(a f) f { return f(math.Tan(float64(a))) }
		near(float64(f(0.5)*f(math.Cos(float64(al)))*(tan(al)-tan(be))), FeedFromAbove(f(0.5), al, be))
		near(float64(f(0.5)*f(math.Cos(float64(al)))*(tan(ga)-tan(al))), FeedFromBelow(f(0.5), al, ga))

		// The same in exact sizes.
		s, err := SeatOfWidth(seat, mm("outer"), mm("width"))
		require.NoError(t, err)
		nearTo(t, c.Float("inner"), s.Inner, "inner")
		w, err := s.Width()
		require.NoError(t, err)
		nearTo(t, c.Float("width"), w, "width")
		x, err := s.FromAbove(above, mm("feed_a"))
		require.NoError(t, err)
		nearTo(t, c.Float("outer_fed"), x.Outer, "outer after feed")
		require.Equal(t, s.Inner, x.Inner)
		x, err = s.FromBelow(below, mm("feed_b"))
		require.NoError(t, err)
		nearTo(t, c.Float("inner_fed"), x.Inner, "inner after feed")
		x, err = s.Refaced(mm("depth"), above, below)
		require.NoError(t, err)
		nearTo(t, c.Float("outer_cut"), x.Outer, "outer after reface")
		nearTo(t, c.Float("inner_cut"), x.Inner, "inner after reface")
		straight, err := s.Refaced(mm("depth"), above, seatDeg("90"))
		require.NoError(t, err)
		require.Equal(t, s.Inner, straight.Inner, "a straight throat stays")

		// What the chamber gains by cutting both, as a bracket.
		head, err := units.Nearest(c.Float("head"), units.InMillimetres)
		require.NoError(t, err)
		v, err := Sinkage{s, above, mm("depth"), mm("depth"), tolerance.Exactly(head)}.VolumeAdded()
		require.NoError(t, err)
		vLo, vHi := springEnds(v)
		want := (c.Float("v_seat") + c.Float("v_face")) / 1000
		require.LessOrEqual(t, vHi-vLo, 20*units.Volume(1))
		require.InDelta(t, want, vLo.Float(units.InCubicCentimetres), 2e-10)
		require.LessOrEqual(t, vLo.Float(units.InCubicCentimetres), want+1e-11)
		require.GreaterOrEqual(t, vHi.Float(units.InCubicCentimetres), want-1e-11)
	})
}

// A 45° seat: 30° and 60° tools, as every manual has them. tan 45° − tan 15° =
// 0.732051, tan 60° − tan 45° = 0.732051 too, and tan 75° − tan 45° = 2.732051:
// to narrow by 1 along the cone takes 0.517638 or 1.931852 of feed.
func TestFeedsOfACommonSeat(t *testing.T) {
	type f = tolerance.Float
	rad := func(d float64) f { return f(d * math.Pi / 180) }
	require.InDelta(t, 0.517638, float64(FeedFromAbove(f(1), rad(45), rad(15))), 5e-7)
	require.InDelta(t, 0.517638, float64(FeedFromBelow(f(1), rad(45), rad(60))), 5e-7)
	require.InDelta(t, 1.931852, float64(FeedFromBelow(f(1), rad(45), rad(75))), 5e-7)
	// With a flat cutter the feed is w·sin α.
	require.InDelta(t, math.Sin(math.Pi/6), float64(FeedFromAbove(f(1), rad(30), 0)), 1e-15)
}

func TestSeatAngle(t *testing.T) {
	a := seatDeg("30")
	require.Equal(t, 60*units.Degree, a.FromStem())
	require.Equal(t, 120*units.Degree, a.Included())
	require.Equal(t, a, SeatAngleFromStem(60*units.Degree))
	require.Equal(t, a, SeatAngleIncluded(120*units.Degree))
	require.Equal(t, "30° (60° from the stem)", a.String())
	require.Equal(t, 45*units.Degree, seatDeg("45").FromStem(), "the one angle that is the same both ways")
	require.Equal(t, "angle out of range", SeatAngleFromSquare(units.OutOfRange[units.Angle]()).String())
	data, err := json.Marshal(a)
	require.NoError(t, err)
	var back SeatAngle
	require.NoError(t, json.Unmarshal(data, &back))
	require.Equal(t, a, back)
	require.Error(t, back.UnmarshalText([]byte("steep")))
	require.Equal(t, units.Degree/2, InterferenceAngle(seatDeg("45").FromSquare(), seatDeg("44.5").FromSquare()))
}

func TestSeatEccentricity(t *testing.T) {
	type f = tolerance.Float
	a := f(math.Pi / 6)
	for d, want := range map[SeatDialDirection]float64{DialSquareToSeat: 0.05, DialSquareToStem: 0.025, DialAlongStem: 0.025 * math.Sqrt(3)} {
		require.InEpsilon(t, want, float64(SeatEccentricity(f(0.05), a, d)), 1e-14)
		require.InEpsilon(t, 0.05, float64(SeatRunOutFor(SeatEccentricity(f(0.05), a, d), a, d)), 1e-14)
		text, err := d.MarshalText()
		require.NoError(t, err)
		var back SeatDialDirection
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, d, back)
		require.ErrorIs(t, back.UnmarshalText([]byte("sideways")), ErrInput)
	}
}

func sample45() Seat { return Seat{seatDeg("45"), stemAt("30 mm"), stemAt("27 mm")} }

func TestSeatRefuses(t *testing.T) {
	good := sample45()
	bad := func(err error, says string) {
		t.Helper()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, says)
	}
	only := func(_ any, err error) error { return err }
	for _, a := range []string{"0", "90", "-45", "135"} {
		s := good
		s.Angle = seatDeg(a)
		bad(only(s.Width()), "seat angle")
		bad(only(SeatOfWidth(seatDeg(a), good.Outer, stemAt("1 mm"))), "seat angle")
	}
	s := good
	s.Inner = stemAt("31 mm")
	bad(only(s.Width()), "inner diameter")
	s.Inner = stemAt("0 mm")
	bad(only(s.Width()), "inner diameter")
	s = good
	s.Outer = tolerance.Bracket{}
	bad(only(s.Width()), "outer diameter")
	bad(only(SeatOfWidth(good.Angle, tolerance.Bracket{}, stemAt("1 mm"))), "outer diameter")
	bad(only(SeatOfWidth(good.Angle, good.Outer, stemAt("-1 mm"))), "seat width")
	bad(only(SeatOfWidth(good.Angle, good.Outer, stemAt("25 mm"))), "leave a port")
	feed := stemAt("0.1 mm")
	bad(only(good.FromAbove(seatDeg("45"), feed)), "cutter from above")
	bad(only(good.FromAbove(seatDeg("-1"), feed)), "cutter from above")
	bad(only(good.FromAbove(seatDeg("15"), stemAt("-0.1 mm"))), "feed")
	bad(only(good.FromAbove(seatDeg("15"), stemAt("2 mm"))), "some of the seat")
	bad(only(good.FromBelow(seatDeg("45"), feed)), "cutter from below")
	bad(only(good.FromBelow(seatDeg("90"), feed)), "cutter from below")
	bad(only(good.FromBelow(SeatAngle{}, feed)), "cutter from below")
	bad(only(good.FromBelow(seatDeg("60"), stemAt("2 mm"))), "some of the seat")
	bad(only(good.Refaced(feed, seatDeg("50"), seatDeg("60"))), "cutter from above")
	bad(only(good.Refaced(feed, seatDeg("15"), SeatAngle{})), "throat")
	bad(only(good.Refaced(stemAt("-1 mm"), seatDeg("15"), seatDeg("60"))), "depth")
	bad(only(good.Refaced(stemAt("30 mm"), seatDeg("15"), seatDeg("60"))), "leave a port")
	bad(only(Sinkage{}.VolumeAdded()), "seat angle")
	bad(only(Sinkage{good, seatDeg("15"), feed, feed, stemAt("29 mm")}.VolumeAdded()), "valve head")
	bad(only(Sinkage{good, seatDeg("15"), stemAt("9 m"), feed, stemAt("31 mm")}.VolumeAdded()), "within range")
	almost := SeatAngleFromSquare(45*units.Degree + 1)
	bad(only(good.FromBelow(almost, feed)), "some of the seat")
	bad(only(good.Refaced(stemAt("10 m"), SeatAngleFromSquare(45*units.Degree-1), seatDeg("90"))), "leave a port")
	require.False(t, seatScaled(stemAt("9 m"), 1e9).InRange())

	// Edges that may be the wrong way round have a width of nothing at the least.
	s = Seat{seatDeg("45"), stemAt("30 ±1 mm"), stemAt("30 ±1 mm")}
	w, err := s.Width()
	require.NoError(t, err)
	lo, _ := inputEnds(w)
	require.Zero(t, lo)
}

func TestSeatContact(t *testing.T) {
	// By hand, 45°: clear outside (31 − 30)/√2 = 0.707107, inside (27 − 26)/√2;
	// the middle of the contact, 28.5, is the middle of the face.
	face := ValveFace{seatDeg("45"), stemAt("31 mm"), stemAt("26 mm")}
	c, err := sample45().ContactOn(face)
	require.NoError(t, err)
	nearTo(t, math.Sqrt2/2, c.ClearOuter, "outside")
	nearTo(t, math.Sqrt2/2, c.ClearInner, "inside")
	require.Equal(t, stemAt("28.5 mm"), c.Middle)
	require.InDelta(t, 50, c.FromOuter[0], 1e-12)
	require.InDelta(t, 50, c.FromOuter[1], 1e-12)
	require.Equal(t, stemAt("0 mm"), c.Gap)
	require.Equal(t, stemLen("50 mm"), ContactPlace(stemLen("100 mm"), stemLen("31 mm"), stemLen("26 mm"), stemLen("28.5 mm")))
	// With a face half a degree flatter the gap is w·sin ½° = 2.12132·0.0087265.
	face.Angle = seatDeg("44.5")
	c, err = sample45().ContactOn(face)
	require.NoError(t, err)
	require.Equal(t, units.Degree/2, c.Interference)
	nearTo(t, 3/math.Sqrt2*math.Sin(math.Pi/360), c.Gap, "gap")

	type f = tolerance.Float
	rad := func(d float64) f { return f(d * math.Pi / 180) }
	require.InEpsilon(t, 0.018511777, float64(InterferenceGap(f(3/math.Sqrt2), rad(0.5))), 1e-7)
	require.InEpsilon(t, math.Sqrt2/2, float64(ContactClear(f(31), f(30), rad(45))), 1e-14)
	// 1 mm off the outer diameter lets the valve sink by half of tan 45° − tan 44.5°.
	require.InEpsilon(t, (1-math.Tan(44.5*math.Pi/180))/2, float64(InterferenceSinkage(f(30), f(29), rad(45), rad(44.5))), 1e-12)

	narrowed, other := sample45(), sample45()
	narrowed.Outer, narrowed.Inner = stemAt("29 mm"), stemAt("27.4 mm")
	other.Angle = seatDeg("30")
	for f, want := range map[string]float64{"44.5": (1 - math.Tan(44.5*math.Pi/180)) / 2, "45": 0, "45.5": 0.2 * (math.Tan(45.5*math.Pi/180) - 1)} {
		x, err := sample45().SinkageTo(narrowed, seatDeg(f))
		require.NoError(t, err)
		nearTo(t, want, x, f)
	}
	_, err = sample45().SinkageTo(other, seatDeg("45"))
	require.ErrorIs(t, err, ErrInput)
	_, err = sample45().SinkageTo(narrowed, seatDeg("90"))
	require.ErrorIs(t, err, ErrInput)

	for _, bad := range []ValveFace{
		{seatDeg("30"), stemAt("31 mm"), stemAt("26 mm")}, {seatDeg("45"), stemAt("25 mm"), stemAt("26 mm")},
		{seatDeg("0"), stemAt("31 mm"), stemAt("26 mm")}, {seatDeg("45"), stemAt("31 ±3 mm"), stemAt("28 mm")},
	} {
		_, err := sample45().ContactOn(bad)
		require.ErrorIs(t, err, ErrInput)
	}
	_, err = Seat{}.ContactOn(face)
	require.ErrorIs(t, err, ErrInput)
}

// Cuts of seat and face add, in tip height and in installed height, and the tip
// or the shim takes it back.
func TestRecession(t *testing.T) {
	cuts := RecessionByCuts(stemLen("0.2 mm"), stemLen("0.15 mm"))
	require.Equal(t, stemLen("0.35 mm"), cuts)
	require.Equal(t, stemLen("40.35 mm"), InstalledAfter(stemLen("40 mm"), cuts))
	grind := TipGrindFor(stemLen("50 mm"), cuts, stemLen("50.1 mm"))
	require.Equal(t, stemLen("0.25 mm"), grind)
	require.Equal(t, stemLen("50.1 mm"), TipHeightAfter(stemLen("50 mm"), cuts, grind))
	require.Equal(t, stemLen("2.4 mm"), RecessionShim(stemLen("2.5 mm"), cuts, grind), "the shim takes what the tip doesn't")
	require.Equal(t, stemLen("28.5 mm"), SeatMiddle(stemLen("30 mm"), stemLen("27 mm")))
}

func TestSeatWorkingAndUncertainty(t *testing.T) {
	g := working.GivenReal
	feed := FeedFromAbove(g("narrower by", "Δw", 0.5, "mm"), g("seat", "α", math.Pi/4, "rad"), g("cutter", "β", math.Pi/12, "rad")).Named("feed", "a", "mm")
	s, err := working.SolveReal(feed, working.RealStyle{Places: 4})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "a = Δw × sin(α − β) ÷ cos(β)")
	require.Contains(t, s.Text(), "0.2588")
	// A half degree of the cutter's angle, at 15° below 45°: −cos(30°)/cos 15° +
	// sin 30°·sin 15°/cos² 15° = −0.7578 of Δw for a radian.
	x := uncertainty.ExactlyReal
	b, err := uncertainty.NewDual("cutter", math.Pi/12, "rad", uncertainty.NormalShape, math.Pi/360)
	require.NoError(t, err)
	want := math.Abs(-math.Cos(math.Pi/6)/math.Cos(math.Pi/12)+math.Sin(math.Pi/6)*math.Sin(math.Pi/12)/math.Pow(math.Cos(math.Pi/12), 2)) * 0.5 * math.Pi / 360
	require.InEpsilon(t, want, FeedFromAbove(x(0.5), x(math.Pi/4), b).StandardUncertainty(), 1e-12)
}
