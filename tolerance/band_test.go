package tolerance_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func bracket(s string) Bracket {
	i, err := ParseBracket(s)
	if err != nil {
		panic(err)
	}
	return i
}

var outOfRange = units.OutOfRange[units.Length]()

// A blade of 0.10 mm drags in the gap: the gap is 0.10 mm or a little more.
// The three ways in which manuals print a limit of 0.10 part there.
func TestBand_onTheLimit(t *testing.T) {
	exactly, drags := bracket("0.10 mm"), bracket("[0.10 mm, 0.11 mm)")
	for _, c := range []struct {
		limit         string
		exact, dragOn Verdict
	}{
		{"max 0.10 mm", Within, Undecided},
		{"renew over 0.10 mm", Within, Undecided},
		{"less than 0.10 mm", Above, Above},
		{"renew at 0.10 mm or more", Above, Above},
		{"min 0.10 mm", Within, Within},
		{"more than 0.10 mm", Below, Undecided},
		{"no limit", Undecided, Undecided},
	} {
		b := MustParseBand(c.limit)
		require.Equal(t, c.exact, b.Judge(exactly), c.limit)
		require.Equal(t, c.dragOn, b.Judge(drags), c.limit)
	}
	// The blade that doesn't enter at all is past neither.
	require.Equal(t, Within, MustParseBand("less than 0.10 mm").Judge(bracket("[0.09 mm, 0.10 mm)")))
}

// Common practice, without a source: see the file.
func TestBand_sideClearance(t *testing.T) {
	vectors.Load(t, "practice/sideclearance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		c.Ignore("set", "enters", "refused", "settles") // of package feeler
		lo, hi, hiEnd := units.MustParseLength(c.Text("least")+" mm"), units.Length(0), Absent
		if c.Has("most") {
			hi, hiEnd = units.MustParseLength(c.Text("most")+" mm"), Open
		} else {
			c.Ignore("most")
		}
		gap, err := NewInterval(lo, Closed, hi, hiEnd)
		require.NoError(t, err)
		require.Equal(t, strings.ToLower(c.Text("verdict")), MustParseBand(c.Text("limits")).Judge(gap).String())
	})
}

func TestSpec_sides(t *testing.T) {
	fresh, wear := MustParseBand("0.03–0.07 mm"), MustParseBand("max 0.10 mm")
	both := Spec{New: fresh, Wear: wear}
	for _, c := range []struct {
		spec     Spec
		stations []string
		want     Standing
	}{
		{both, []string{"0.05 mm"}, AsNew},
		{both, []string{"0.07 mm"}, AsNew},
		{both, []string{"[0.0635 mm, 0.0762 mm)"}, Usable},
		{both, []string{"0.10 mm"}, Usable},
		{both, []string{"0.11 mm"}, PastWearLimit},
		{both, []string{"[0.10 mm, 0.11 mm)"}, CantTell},
		// A greatest wear limit doesn't make good a clearance that is too small.
		{both, []string{"0.02 mm"}, OutsideNewBand},
		// With a band for new parts alone nothing is rejected.
		{Spec{New: fresh}, []string{"0.5 mm"}, OutsideNewBand},
		{Spec{New: fresh}, []string{"0.02 mm", "0.5 mm"}, OutsideNewBand},
		{Spec{New: fresh}, []string{"[0.02 mm, 0.04 mm)"}, CantTell},
		{Spec{Wear: wear}, []string{"0.02 mm"}, Usable},
		{Spec{Wear: wear}, []string{"0.2 mm"}, PastWearLimit},
		{both, []string{"0.02 mm", "0.2 mm"}, PastWearLimit},
		{both, []string{"0.05 mm", "0.2 mm"}, PastWearLimit},
		{both, []string{"0.02 mm", "[0.09 mm, 0.11 mm)"}, CantTell},
		{both, []string{"[0.02 mm, 0.04 mm)", "0.2 mm"}, PastWearLimit},
		{Spec{}, []string{"0.05 mm"}, CantTell},
		{both, nil, CantTell},
	} {
		var stations []Bracket
		for _, s := range c.stations {
			stations = append(stations, bracket(s))
		}
		require.Equal(t, c.want, c.spec.StandAll(stations...), "%v", c.stations)
	}
	require.True(t, Spec{}.IsZero())
	require.False(t, both.IsZero())
	require.NoError(t, both.Validate())
	require.NoError(t, Spec{}.Validate())
	require.NoError(t, Spec{Wear: wear}.Validate())
	err := Spec{New: fresh, Wear: MustParseBand("less than 0.07 mm")}.Validate()
	require.EqualError(t, err, "tolerance: the band for new parts, 0.03–0.07 mm, reaches past the wear limit, less than 0.07 mm")
	require.ErrorIs(t, Spec{New: AtMost(outOfRange)}.Validate(), ErrRange)
	require.ErrorIs(t, Spec{Wear: AtMost(outOfRange)}.Validate(), ErrRange)
}

// What left the range is judged, compared and said of by nobody.
func TestOutOfRange(t *testing.T) {
	lost, good := Exactly(outOfRange), bracket("0.05 mm")
	band, lostBand := MustParseBand("0.03–0.07 mm"), AtLeast(outOfRange)
	require.False(t, lost.InRange())
	require.False(t, lostBand.InRange())
	require.True(t, good.InRange())
	require.Equal(t, lost, BandFrom(lost).Interval())
	for _, b := range []Band{AtMost(outOfRange), LessThan(outOfRange), MoreThan(outOfRange), lostBand} {
		require.Equal(t, lostBand, b)
		require.Equal(t, Undecided, b.Judge(good))
		require.False(t, b.Allows(units.Millimetre))
	}
	require.Equal(t, Undecided, band.Judge(lost))
	require.Equal(t, Sides{}, band.JudgeAll(good, lost))
	require.Equal(t, Sides{}, lostBand.JudgeAll(good))
	require.Equal(t, Sides{}, band.JudgeAll())
	least, greatest := Extremes[units.Length]()
	require.True(t, least.IsZero() && greatest.IsZero())
	require.Equal(t, CantTell, Spec{New: band}.StandAll(good, lost))
	require.Equal(t, CantTell, Spec{New: lostBand}.Stand(good))
	require.False(t, lost.Within(Bracket{}))
	require.False(t, good.Within(lost))
	require.False(t, lost.Contains(0))
	require.False(t, good.Contains(outOfRange))
	_, ok := lost.Intersect(good)
	require.False(t, ok)
	_, ok = good.Intersect(lost)
	require.False(t, ok)
	require.False(t, Compare(band, lostBand).Same())
	require.False(t, Compare(lostBand, lostBand).Same())
	w, ok := lost.Width()
	require.True(t, ok)
	require.False(t, w.InRange())
	m, ok := lost.Middle()
	require.True(t, ok)
	require.False(t, m.InRange())

	for _, got := range []Bracket{
		lost.Add(good), good.Add(lost), lost.Sub(good), good.Sub(lost), lost.Abs(),
		lost.Min(good), good.Min(lost), lost.Max(good), good.Max(lost), lost.Min(Bracket{}), Bracket{}.Add(lost),
		lost.Spread(), good.Spread(lost), lost.Spread(good), good.Spread(good, lost),
		lost.Scale(0, 1), good.Scale(1, 0), lost.ScalePi(0, 1), good.ScalePi(1, 0), Bracket{}.Scale(1, 0),
		lost.MulDiv(good, good), good.MulDiv(lost, good), good.MulDiv(good, lost), good.MulDiv(good, Exactly(units.Length(0))),
		AtLeast(units.Length(1<<61)).Interval().MulDiv(Exactly(units.Length(3)), Exactly(units.Length(2))),
		lost.Share(good, good), good.Share(lost, good), good.Share(good, lost), good.Share(good, good.Sub(good).Sub(good)),
	} {
		require.Equal(t, lost, got)
	}

	_, err := NewInterval(outOfRange, Closed, 0, Absent)
	require.EqualError(t, err, "tolerance: interval: a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero")
	require.ErrorIs(t, err, ErrRange)
	_, err = NewBand(0, Absent, outOfRange, Open)
	require.ErrorIs(t, err, ErrRange)
	_, err = PlusMinus(units.Length(1<<61), 1)
	require.ErrorIs(t, err, ErrRange)
	_, err = PlusMinus(units.Length(1), outOfRange)
	require.ErrorIs(t, err, ErrRange)
	i, err := NewInterval(outOfRange, Absent, outOfRange, End(9))
	require.NoError(t, err)
	require.Equal(t, Bracket{}, i)
}

func TestInterval_orderError(t *testing.T) {
	_, err := HalfOpen(units.Millimetre, units.Millimetre)
	require.EqualError(t, err, "tolerance: interval: nothing lies between a least of 1 mm and a greatest of 1 mm")
	require.ErrorIs(t, err, ErrOrder)
	_, err = PlusMinus(units.Millimetre, -1)
	require.ErrorIs(t, err, ErrOrder)
	_, err = Between(2*units.Millimetre, units.Millimetre)
	require.EqualError(t, err, "tolerance: band: nothing lies between a least of 2 mm and a greatest of 1 mm")
	require.Panics(t, func() { MustBetween(2*units.Millimetre, units.Millimetre) })
}

// A temperature has no sums and no multiples; brackets of it are judged,
// but calculated with only as far as its own type is.
func TestInterval_temperature(t *testing.T) {
	warm, hot := Exactly(20*units.Temperature(units.CELSIUS)), Exactly(90*units.Temperature(units.CELSIUS))
	lost := Exactly(units.OutOfRange[units.Temperature]())
	for _, got := range []Interval[units.Temperature]{
		warm.Add(hot), hot.Sub(warm), warm.Abs(), warm.Spread(hot), warm.Spread(), warm.Scale(0, 1), warm.Scale(2, 1),
		warm.ScalePi(1, 1), warm.MulDiv(warm, hot), warm.Share(warm, hot), Exactly(units.AbsoluteZero - 1),
	} {
		require.Equal(t, lost, got)
	}
	require.Equal(t, warm, warm.Min(hot))
	require.Equal(t, hot, warm.Max(hot))
	both, err := NewInterval(20*units.CELSIUS, Closed, 90*units.Temperature(units.CELSIUS), Open)
	require.NoError(t, err)
	m, ok := both.Middle()
	require.True(t, ok)
	require.Equal(t, 55*units.Temperature(units.CELSIUS), m)
	w, ok := both.Width()
	require.True(t, ok)
	require.False(t, w.InRange())
	_, err = NewInterval(units.AbsoluteZero-1, Open, 0, Absent)
	require.ErrorIs(t, err, ErrRange)
	f, err := Assess("coolant", "", SpecOf[units.Temperature]{New: AtMost[units.Temperature](95 * units.CELSIUS)}, hot)
	require.NoError(t, err)
	require.Equal(t, AsNew, f.Standing)
	require.True(t, f.Margin.IsZero())
}

func TestInterval_middleAndWidth(t *testing.T) {
	for _, c := range []struct{ lo, hi, middle units.Length }{
		{0, 1, 0}, {1, 2, 2}, {-1, 0, 0}, {-2, -1, -2}, {2, 3, 2}, {3, 4, 4}, {-3, 4, 0}, {-4, 7, 2}, {-7, 4, -2}, {5, 5, 5},
		{1<<61 - 1, 1 << 61, 1 << 61}, {-1 << 61, 1 - 1<<61, -1 << 61}, {-1 << 61, 1 << 61, 0},
	} {
		i, err := NewInterval(c.lo, Closed, c.hi, Closed)
		require.NoError(t, err)
		m, ok := i.Middle()
		require.True(t, ok)
		require.Equal(t, c.middle, m, "%v", i)
		w, ok := i.Width()
		require.True(t, ok)
		require.Equal(t, c.hi-c.lo, w)
	}
	for _, i := range []Bracket{{}, bracket("(−∞, 1 mm]"), bracket("(1 mm, ∞)")} {
		_, ok := i.Middle()
		require.False(t, ok)
		_, ok = i.Width()
		require.False(t, ok)
	}
}

func TestWords(t *testing.T) {
	require.Equal(t, []string{"absent", "open", "closed", "absent"}, []string{Absent.String(), Open.String(), Closed.String(), End(7).String()})
	require.Equal(t, "undecided", Verdict(9).String())
	require.Equal(t, "can't tell", Standing(9).String())
	require.Equal(t, "", Mating(9).String())
	var v Verdict
	err := v.UnmarshalText([]byte("inside"))
	require.EqualError(t, err, `tolerance: verdict "inside": not understood; one of "undecided", "within", "below", "above"`)
	require.ErrorIs(t, err, ErrSyntax)
	var s Standing
	require.ErrorContains(t, s.UnmarshalText([]byte(strings.Repeat("é", 100))), `standing "`+strings.Repeat("é", 32)+`"…: not understood; one of "can't tell", "as new"`)
	var m Mating
	require.ErrorContains(t, m.UnmarshalText([]byte("new")), `mating part "new": not understood; one of "", "with a new mating part"`)
}

func TestDifference_string(t *testing.T) {
	for _, c := range [][3]string{
		{"0.03–0.07 mm", "0.03–0.07 mm", "both accept the same"},
		{"0.03–0.07 mm", "0.04–0.06 mm", "the first alone accepts [0.03 mm, 0.04 mm) and (0.06 mm, 0.07 mm]"},
		{"0.04–0.06 mm", "0.03–0.07 mm", "the second alone accepts [0.03 mm, 0.04 mm) and (0.06 mm, 0.07 mm]"},
		{"max 0.06 mm", "less than 0.06 mm", "the first alone accepts 0.06 mm"},
		{"no limit", "max 0.06 mm", "the first alone accepts (0.06 mm, ∞)"},
	} {
		require.Equal(t, c[2], Compare(MustParseBand(c[0]), MustParseBand(c[1])).String())
	}
}

// Printed to any places in either unit, a reading holds what was measured and
// a band allows nothing more.
func TestText_outwardAndInward(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	value := func() units.Length { return units.Length(r.Int64N(2_000_000_000) - 500_000_000) }
	for range 4000 {
		i, err := NewInterval(value(), End(r.IntN(3)), value(), End(r.IntN(3)))
		if err != nil {
			continue
		}
		u, places := units.InMillimetres, r.IntN(7)
		if r.IntN(2) == 0 {
			u = units.InInches
		}
		outside, err := ParseBracket(i.Text(u, places))
		require.NoError(t, err)
		require.True(t, i.Within(outside), "%v in %v", i, outside)
		inside, err := ParseBand(BandFrom(i).Text(u, places))
		require.NoError(t, err)
		require.True(t, inside.Interval().Within(i), "%v in %v", inside, i)
		if w, ok := i.Width(); ok && w > units.Millimetre/10 && places >= 3 {
			in, _ := inside.Interval().Width()
			out, _ := outside.Width()
			step := units.Length(2 * units.Thou)
			require.Less(t, out-in, 2*step)
		}
	}
	require.Equal(t, "0.422–0.444 in", MustParseBand("11 ±0.3 mm").Text(units.InInches, 3))           // the rule of ANSI/IEEE 268, its digits computed apart
	require.Equal(t, "49.13–49.93 mm", MustParseBand("1.950 ±0.016 in").Text(units.InMillimetres, 2)) // the same
}
