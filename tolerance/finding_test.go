package tolerance_test

import (
	"errors"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func spec(fresh, wear string) (s Spec) {
	if fresh != "" {
		s.New = MustParseBand(fresh)
	}
	if wear != "" {
		s.Wear = MustParseBand(wear)
	}
	return s
}

func TestFinding_sentences(t *testing.T) {
	for _, c := range []struct {
		fresh, wear, stations, want string
	}{
		{"0.03–0.07 mm", "max 0.10 mm", "0.05 mm",
			"clearance 0.05 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: within the band for new parts"},
		{"0.03–0.07 mm", "max 0.10 mm", "[0.0635 mm, 0.0762 mm)",
			"clearance [0.0635 mm, 0.0762 mm), new 0.03–0.07 mm, wear limit max 0.1 mm: within the wear limit; whether as new can't be told; to settle it, find out whether it is more than 0.07 mm"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.08 mm",
			"clearance 0.08 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: within the wear limit, outside the band for new parts"},
		{"0.03–0.07 mm", "max 0.10 mm", "[0.06 mm, 0.12 mm)",
			"clearance [0.06 mm, 0.12 mm), new 0.03–0.07 mm, wear limit max 0.1 mm: can't tell, which is not a pass; to settle it, find out whether it is more than 0.1 mm, and whether it is more than 0.07 mm"},
		{"0.03–0.07 mm", "renew at 0.10 mm or more", "[0.08 mm, 0.10 mm]",
			"clearance [0.08 mm, 0.1 mm], new 0.03–0.07 mm, wear limit less than 0.1 mm: can't tell, which is not a pass; too large for the new-part band; to settle it, find out whether it is 0.1 mm or more"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.11 mm",
			"clearance 0.11 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: too large: past the wear limit"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.02 mm|0.11 mm",
			"clearance least 0.02 mm, greatest 0.11 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: too large: past the wear limit; elsewhere too small for the new-part band"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.02 mm|[0.09 mm, 0.11 mm)",
			"clearance least 0.02 mm, greatest [0.09 mm, 0.11 mm), new 0.03–0.07 mm, wear limit max 0.1 mm: can't tell, which is not a pass; too small in one place and too large in another for the new-part band; to settle it, find out whether the greatest is more than 0.1 mm"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.02 mm",
			"clearance 0.02 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: too small: outside the new-part band; no wear limit given on that side"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.02 mm|0.09 mm",
			"clearance least 0.02 mm, greatest 0.09 mm, new 0.03–0.07 mm, wear limit max 0.1 mm: too small: outside the new-part band; no wear limit given on that side"},
		{"0.03–0.07 mm", "", "0.5 mm",
			"clearance 0.5 mm, new 0.03–0.07 mm: too large: outside the new-part band; no wear limit given"},
		{"0.03–0.07 mm", "", "0.02 mm|0.5 mm",
			"clearance least 0.02 mm, greatest 0.5 mm, new 0.03–0.07 mm: too small in one place and too large in another: outside the new-part band; no wear limit given"},
		// What is open makes it neither better nor worse.
		{"0.03–0.07 mm", "", "0.02 mm|[0.06 mm, 0.08 mm)",
			"clearance least 0.02 mm, greatest [0.06 mm, 0.08 mm), new 0.03–0.07 mm: too small: outside the new-part band; no wear limit given"},
		{"0.03–0.07 mm", "", "[0.02 mm, 0.04 mm)|[0.06 mm, 0.08 mm)",
			"clearance least [0.02 mm, 0.04 mm), greatest [0.06 mm, 0.08 mm), new 0.03–0.07 mm: can't tell, which is not a pass; to settle it, find out whether the least is less than 0.03 mm, and whether the greatest is more than 0.07 mm"},
		{"", "min 72.9 mm, max 73.1 mm", "72.8 mm|73.2 mm",
			"clearance least 72.8 mm, greatest 73.2 mm, wear limit 72.9–73.1 mm: too small in one place and too large in another: past the wear limit"},
		{"", "more than 72.9 mm", "[72.9 mm, 73 mm)",
			"clearance [72.9 mm, 73 mm), wear limit more than 72.9 mm: can't tell, which is not a pass; to settle it, find out whether it is 72.9 mm or less"},
		{"", "max 0.10 mm", "[0 mm, 0.1 mm]",
			"clearance [0 mm, 0.1 mm], wear limit max 0.1 mm: within the wear limit; no band for new parts given"},
		{"max 0.1 mm", "max 0.1 mm", "[0 mm, ∞)",
			"clearance [0 mm, ∞), new max 0.1 mm, wear limit max 0.1 mm: can't tell, which is not a pass; to settle it, find out whether it is more than 0.1 mm"},
		{"", "", "0.05 mm", "clearance 0.05 mm: can't tell: no limit given; to settle it, look up the limits in the engine maker's manual"},
	} {
		var stations []Bracket
		for s := range strings.SplitSeq(c.stations, "|") {
			stations = append(stations, bracket(s))
		}
		f, err := Assess("clearance", "", spec(c.fresh, c.wear), stations...)
		require.NoError(t, err)
		require.Equal(t, c.want, f.String())
		require.Contains(t, f.Text(units.InMillimetres, units.AllPlaces), f.Explain())
		require.Equal(t, c.want, f.Text(units.InMillimetres, units.AllPlaces))
	}
}

func TestFinding_text(t *testing.T) {
	f, err := Assess("side clearance", "piston 2, top groove", spec("0.03–0.07 mm", "max 0.10 mm"), bracket("[.0025 in, .003 in)"))
	require.NoError(t, err)
	require.Equal(t, "piston 2, top groove: side clearance [0.0025 in, 0.0030 in), new 0.0012–0.0027 in, wear limit max 0.0039 in: "+
		"within the wear limit; whether as new can't be told; to settle it, find out whether it is more than 0.0027 in", f.Text(units.InInches, 4))
	// At no place but these do 0.07 mm and a picometre more differ.
	past, err := Assess("", "", spec("0.03–0.07 mm", ""), Exactly(70*units.Micrometre+1))
	require.NoError(t, err)
	require.Equal(t, 9, past.Places(units.InMillimetres, 2))
	require.Equal(t, "0.070000001 mm, new 0.030000000–0.070000000 mm: too large: outside the new-part band; no wear limit given", past.Text(units.InMillimetres, 2))
	// The limit is rounded inward and the reading to nearest: four places do.
	require.Equal(t, "0.0028 in, new 0.0012–0.0027 in: too large: outside the new-part band; no wear limit given", past.Text(units.InInches, 4))
	require.Equal(t, units.AllPlaces, past.Places(units.InMillimetres, units.AllPlaces))
	require.Equal(t, units.AllPlaces, past.Places(units.InInches, units.AllPlaces))
	// A picometre below a least of 0.07 mm, 0.002755905511… in, seven do.
	short, err := Assess("", "", spec("min 0.07 mm", ""), Exactly(70*units.Micrometre-1))
	require.NoError(t, err)
	require.Equal(t, "0.0027559 in, new min 0.0027560 in: too small: outside the new-part band; no wear limit given", short.Text(units.InInches, 3))
	short, err = Assess("", "", spec("min 0.05 mm", ""), Exactly(50*units.Micrometre-1))
	require.NoError(t, err)
	require.Equal(t, 8, short.Places(units.InInches, units.AllPlaces), "nine places show both as 0.001968504 in, eight don't")
	// All places that inches take don't tell these two apart.
	close, err := Assess("", "", spec("max 0.07 mm", ""), bracket("[0 mm, 0.069999999 mm]"))
	require.NoError(t, err)
	require.Equal(t, 11, close.Places(units.InInches, units.AllPlaces))
	require.Equal(t, "[0.00000000000 in, 0.00275590548 in], new max 0.00275590551 in: within the band for new parts", close.Text(units.InInches, units.AllPlaces))
	// On the limit, in inches: both are printed alike.
	on, err := Assess("", "", spec("0.03–0.07 mm", ""), Exactly(70*units.Micrometre))
	require.NoError(t, err)
	require.Equal(t, "0.0027 in, new 0.0012–0.0027 in: within the band for new parts", on.Text(units.InInches, 4))
	// One value alone is allowed; it is rounded to nearest.
	one, err := Assess("", "", spec("10–10 mm", ""), bracket("10 mm"))
	require.NoError(t, err)
	require.Equal(t, "0.3937 in, new 0.3937–0.3937 in: within the band for new parts", one.Text(units.InInches, 4))
	// A limit says which mating part it is meant for.
	mated := spec("0.03–0.07 mm", "max 0.10 mm")
	mated.NewMating, mated.WearMating = WithNewPart, WithUsedPart
	with, err := Assess("", "", mated, bracket("0.05 mm"))
	require.NoError(t, err)
	require.Equal(t, "0.05 mm, new 0.03–0.07 mm with a new mating part, wear limit max 0.10 mm with the used mating part: within the band for new parts", with.Text(units.InMillimetres, 2))
	// What a package says itself stays as it is.
	f.Settle = "try the 0.070 mm blade"
	require.True(t, strings.HasSuffix(f.Text(units.InInches, 4), "; to settle it, try the 0.070 mm blade"))
	// Plain data that nobody assessed doesn't break it.
	require.Equal(t, "(−∞, ∞): can't tell: no limit given", Finding{}.Text(units.InMillimetres, 2)[:len("(−∞, ∞): can't tell: no limit given")])
	odd := Finding{Least: Exactly(outOfRange), Spec: Spec{New: AtMost(outOfRange), Wear: MustParseBand("max 1 mm")}}
	require.Contains(t, odd.Text(units.InMillimetres, 2), "out of range")
	require.Contains(t, odd.String(), "out of range")
}

var number = regexp.MustCompile(`-?\d+(\.\d+)?`)

// readBack reads a printed finding, every number by its rank among them all:
// they may be finer than the quantum, and only their order is judged.
func readBack(t *testing.T, line, unit string) (s Spec, least, greatest Bracket) {
	head, _, _ := strings.Cut(strings.ReplaceAll(line, unit, ""), ": ")
	var all []*big.Rat
	for _, n := range number.FindAllString(head, -1) {
		all = append(all, rat(n))
	}
	slices.SortFunc(all, (*big.Rat).Cmp)
	all = slices.CompactFunc(all, func(a, b *big.Rat) bool { return a.Cmp(b) == 0 })
	head = number.ReplaceAllStringFunc(head, func(n string) string {
		k, found := slices.BinarySearchFunc(all, rat(n), (*big.Rat).Cmp)
		require.True(t, found)
		return strconv.Itoa(k) + " mm"
	})
	head, wear, _ := strings.Cut(head, ", wear limit ")
	head, fresh, _ := strings.Cut(head, ", new ")
	first, second, two := strings.Cut(strings.TrimPrefix(head, "least "), ", greatest ")
	if !two {
		second = first
	}
	read := func(s string) Bracket {
		i, err := ParseBracket(s)
		require.NoError(t, err, "%s", line)
		return i
	}
	for _, b := range []struct {
		text string
		into *Band
	}{{fresh, &s.New}, {wear, &s.Wear}} {
		if b.text != "" {
			require.NoError(t, b.into.UnmarshalText([]byte(b.text)), "%s", line)
		}
	}
	return s, read(first), read(second)
}

// What is printed says the same as the verdict, whatever the unit and the
// places asked for.
func TestFinding_textKeepsItsWord(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	count, grown := 0, 0
	for count < 6000 {
		var pool []units.Length
		for range 3 {
			pool = append(pool, units.Length(r.Int64N(12)-2)*10*units.Micrometre, units.Length(r.Int64N(60)-10)*units.Thou/10, units.Length(r.Int64N(100_000_000)))
		}
		value := func() units.Length {
			v := pool[r.IntN(len(pool))]
			switch r.IntN(4) {
			case 0:
				v += units.Length(r.Int64N(5) - 2)
			case 1:
				v += units.Length(r.Int64N(5)-2) * units.Micrometre
			}
			return v
		}
		interval := func() Bracket {
			for {
				if r.IntN(3) == 0 {
					return Exactly(value())
				}
				if i, err := NewInterval(value(), End(r.IntN(3)), value(), End(r.IntN(3))); err == nil {
					return i
				}
			}
		}
		s := Spec{New: BandFrom(interval()), Wear: BandFrom(interval())}
		if r.IntN(4) == 0 {
			s.Wear = Band{}
		}
		f, err := Assess("", "", s, interval(), interval())
		if err != nil {
			require.ErrorIs(t, err, ErrSpec)
			continue
		}
		count++
		u, name, places := units.InMillimetres, " mm", r.IntN(6)-1
		if r.IntN(2) == 0 {
			u, name = units.InInches, " in"
		}
		line := f.Text(u, places)
		spec, least, greatest := readBack(t, line, name)
		require.Equal(t, f.New, spec.New.JudgeAll(least, greatest), "%s; in truth %v", line, f)
		require.Equal(t, f.Wear, spec.Wear.JudgeAll(least, greatest), "%s; in truth %v", line, f)
		require.Equal(t, f.Standing, spec.StandAll(least, greatest), "%s; in truth %v", line, f)
		if f.Places(u, places) != places {
			grown++
		}
	}
	require.Greater(t, grown, 500)
	require.Less(t, grown, count)
}

func TestFinding_margin(t *testing.T) {
	for _, c := range []struct{ fresh, wear, stations, want string }{
		{"0.03–0.07 mm", "", "0.04 mm", "0.01 mm"},
		{"0.03–0.07 mm", "", "0.05 mm", "0.02 mm"},
		{"0.03–0.07 mm", "", "[0.04 mm, 0.065 mm)", "(0.005 mm, 0.02 mm]"},
		{"0.03–0.07 mm", "", "0.02 mm|0.06 mm", "-0.01 mm"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.09 mm", "0.01 mm"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.04 mm|0.09 mm", "0.01 mm"},
		{"0.03–0.07 mm", "max 0.10 mm", "0.02 mm|0.2 mm", "-0.1 mm"},
		{"", "max 0.10 mm", "[0.05 mm, ∞)", "(−∞, 0.05 mm]"},
		{"min 0.03 mm", "", "[0.05 mm, ∞)", "[0.02 mm, ∞)"},
		{"min 0.03 mm", "max 0.1 mm", "[0.05 mm, ∞)", "(−∞, 0.035 mm]"},
		{"", "", "0.05 mm", "(−∞, ∞)"},
		{"1–4 pm", "", "(−∞, ∞)", "(−∞, 0.000000002 mm)"},
	} {
		var stations []Bracket
		for s := range strings.SplitSeq(c.stations, "|") {
			stations = append(stations, bracket(s))
		}
		f, err := Assess("", "", spec(c.fresh, c.wear), stations...)
		require.NoError(t, err)
		require.Equal(t, c.want, f.Margin.String(), "%+v", c)
	}
}

func TestAssess_refuses(t *testing.T) {
	good, lost := bracket("0.05 mm"), Exactly(outOfRange)
	for _, c := range []struct {
		spec     Spec
		stations []Bracket
		kind     error
		want     string
	}{
		{spec("0.03–0.07 mm", ""), nil, ErrNoReading, "no reading given"},
		{spec("0.03–0.07 mm", ""), []Bracket{good, lost}, ErrRange, "reading 2: a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero"},
		{Spec{New: AtMost(outOfRange)}, []Bracket{good}, ErrRange, "limits: a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero"},
		{spec("0.03–0.12 mm", "max 0.10 mm"), []Bracket{good}, ErrSpec, "the band for new parts, 0.03–0.12 mm, reaches past the wear limit, max 0.1 mm"},
		{Spec{New: AtMost(units.Length(1 << 61))}, []Bracket{Exactly(units.Length(-1 << 61))}, ErrRange, "margin: a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero"},
		{Spec{New: MustBetween(-units.Length(1<<61), 1<<61)}, []Bracket{Exactly(units.Length(0))}, ErrRange, "margin: a value is out of range: it was calculated beyond ±2^61 quanta or divided by zero"},
	} {
		for _, name := range [][3]string{
			{"side clearance", "piston 2", "side clearance, piston 2: "}, {"", "piston 2", "piston 2: "}, {"side clearance", "", "side clearance: "}, {"", "", ""},
			{strings.Repeat("é", 100), "piston 2", strings.Repeat("é", 32) + ", piston 2: "},
		} {
			_, err := Assess(name[0], name[1], c.spec, c.stations...)
			require.EqualError(t, err, "tolerance: "+name[2]+c.want)
			require.ErrorIs(t, err, c.kind)
			var e *AssessError
			require.True(t, errors.As(err, &e))
		}
	}
}
