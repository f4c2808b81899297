package crank

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// nanometres reads "64000768/64000769".
func nanometres(t *testing.T, text string) tolerance.Bracket {
	t.Helper()
	a, b, _ := strings.Cut(text, "/")
	lo, err := strconv.ParseInt(a, 10, 64)
	require.NoError(t, err)
	hi, err := strconv.ParseInt(b, 10, 64)
	require.NoError(t, err)
	return journalSpan(units.Length(lo)*units.Nanometre, units.Length(hi)*units.Nanometre)
}

// honest holds a choice to its job: stock kept, figures those of the halves picked.
func honest(t *testing.T, j *ShellJob, c *ShellChoice) {
	t.Helper()
	uppers, lowers := make([]int, len(j.Classes)), make([]int, len(j.Classes))
	in, greatest, sum := 0, units.Length(0), units.Length(0)
	require.Len(t, c.Picks, len(j.Bearings))
	for i, p := range c.Picks {
		uppers[p.Upper]++
		lowers[p.Lower]++
		require.Equal(t, OilClearanceOfHalves(j.Bearings[i].Housing, j.Classes[p.Upper].Wall, j.Classes[p.Lower].Wall, j.Bearings[i].Journal), p.Clearance)
		require.Equal(t, j.Wanted.Band.Judge(p.Clearance), p.Verdict)
		lo, hi := journalEnds(p.Clearance)
		require.Equal(t, max(hi-j.Wanted.Aim, j.Wanted.Aim-lo), p.Distance)
		if p.Verdict == tolerance.Within {
			in++
		}
		greatest, sum = max(greatest, p.Distance), sum+p.Distance
		require.True(t, j.Mixed || p.Upper == p.Lower)
	}
	for k := range j.Classes {
		require.True(t, !j.Classes[k].Uppers.Known || uppers[k] <= j.Classes[k].Uppers.Pieces)
		require.True(t, !j.Classes[k].Lowers.Known || lowers[k] <= j.Classes[k].Lowers.Pieces)
	}
	require.Equal(t, []any{in, greatest, sum}, []any{c.InBand, c.Greatest, c.Sum})
}

// Chosen shells are never beaten by brute force: every way, by another program.
func TestChooseShellsReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/crank_shell_choice.txt").All(t) {
		j := ShellJob{Mixed: c.Bool("mixed"), MostStep: units.Length(c.Int64("step")) * units.Nanometre,
			Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.020–0.050 mm"), Aim: units.Length(c.Int64("aim")) * units.Nanometre}}
		for f := range strings.FieldsSeq(c.Text("bearings")) {
			h, jo, _ := strings.Cut(f, ":")
			j.Bearings = append(j.Bearings, ShellBearing{Housing: nanometres(t, h), Journal: nanometres(t, jo)})
		}
		for f := range strings.FieldsSeq(c.Text("classes")) {
			p := strings.Split(f, ":")
			u, err := strconv.Atoi(p[1])
			require.NoError(t, err)
			l, err := strconv.Atoi(p[2])
			require.NoError(t, err)
			j.Classes = append(j.Classes, ShellClass{Wall: nanometres(t, p[0]), Uppers: HalvesInStock(u), Lowers: HalvesInStock(l)})
		}
		got, err := ChooseShells(&j)
		if c.Is("out", "none") {
			require.ErrorIs(t, err, ErrInput, c.Where())
			c.Ignore("greatest", "sum")
			continue
		}
		require.NoError(t, err, c.Where())
		honest(t, &j, &got)
		require.Equal(t, c.Int("out"), len(j.Bearings)-got.InBand, c.Where())
		require.Equal(t, units.Length(c.Int64("greatest"))*units.Nanometre, got.Greatest, c.Where())
		require.Equal(t, units.Length(c.Int64("sum"))*units.Nanometre, got.Sum, c.Where())
	}
}

// Without mixing it is package selective's own pairing, where that finds one in band
// for all.
func TestChooseShellsAgreesWithSelective(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 1))
	agreed := 0
	for range 300 {
		j := ShellJob{Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.015–0.055 mm"), Aim: journalMM("0.035")}}
		var parts []selective.Part
		var mates []selective.Class
		for i := range 2 + rng.IntN(4) {
			b := ShellBearing{Housing: tolerance.Exactly(journalMM("64") + units.Length(rng.Int64N(16e6))), Journal: tolerance.Exactly(journalMM("59.965") + units.Length(rng.Int64N(20e6)))}
			j.Bearings = append(j.Bearings, b)
			parts = append(parts, selective.Part{Name: fmt.Sprint(i), Base: b.Housing.Sub(b.Journal)})
		}
		for k := range 2 + rng.IntN(4) {
			wall, n := tolerance.Exactly(journalMM("1.99")+units.Length(k)*5*units.Micrometre), rng.IntN(4)
			j.Classes = append(j.Classes, ShellClass{Wall: wall, Uppers: HalvesInStock(n), Lowers: HalvesInStock(n)})
			mates = append(mates, selective.Class{Name: fmt.Sprint(k), Size: wall, Stock: n})
		}
		want, err := selective.Match(parts, tolerance.Whole(-2), mates, j.Wanted)
		if err != nil || len(want.LeftOver) > 0 {
			continue
		}
		got, err := ChooseShells(&j)
		require.NoError(t, err)
		honest(t, &j, &got)
		require.Equal(t, len(parts), got.InBand)
		require.Equal(t, want.Greatest, got.Greatest)
		agreed++
	}
	require.Greater(t, agreed, 50)
}

func shellClasses(n int) []ShellClass {
	var classes []ShellClass
	for k := range n {
		classes = append(classes, ShellClass{Name: strconv.Itoa(k), Wall: tolerance.Exactly(journalMM("1.985") + units.Length(k)*3*units.Micrometre)})
	}
	return classes
}

// shellMains are 5 mains and 9 classes.
func shellMains() ShellJob {
	j := ShellJob{Classes: shellClasses(9), Mixed: true, Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.025–0.050 mm"), Aim: journalMM("0.035")}}
	for i := range 5 {
		j.Bearings = append(j.Bearings, ShellBearing{Housing: tolerance.Exactly(journalMM("64.000") + units.Length(i)*3*units.Micrometre), Journal: tolerance.Exactly(journalMM("59.972") - units.Length(i*i)*units.Micrometre)})
	}
	return j
}

// One half of a .001 pair changes the clearance by .0005.
func TestChooseShellsMixesHalves(t *testing.T) {
	std := units.MustParseLength("0.0780 in")
	j := ShellJob{
		Bearings: []ShellBearing{{Where: "main 1", Housing: journalAt("2.6500 in"), Journal: journalAt("2.4915 in")}},
		Classes: []ShellClass{{Name: "standard", Wall: tolerance.Exactly(std)}, {Name: ".001", Wall: tolerance.Exactly(UndersizeWall(std, units.Thou))},
			{Name: ".002", Wall: tolerance.Exactly(UndersizeWall(std, 2*units.Thou))}},
		Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.0010–0.0025 in"), Aim: units.MustParseLength("0.0020 in")},
	}
	// 2.6500 − 0.1560 − 2.4915 = 0.0025; .001: 0.0015; one half of it: 0.0020.
	got, err := ChooseShells(&j)
	require.NoError(t, err)
	require.Equal(t, units.MustParseLength("0.0005 in"), got.Greatest)
	require.Equal(t, ShellPick{0, 0, journalAt("0.0025 in"), tolerance.Within, units.MustParseLength("0.0005 in")}, got.Picks[0], "of two as near, the greater")
	j.Mixed, j.MostStep = true, units.MustParseLength("0.0005 in")
	got, err = ChooseShells(&j)
	require.NoError(t, err)
	require.Equal(t, ShellPick{0, 1, journalAt("0.0020 in"), tolerance.Within, 0}, got.Picks[0])
	require.Equal(t, units.MustParseLength("0.0005 in"), ClearanceByHalf(0, units.Thou))
	// Halves of one class before mixed ones that come out the same.
	j.Classes[0].Wall, j.MostStep = tolerance.Exactly(UndersizeWall(std, -units.Thou)), 0
	j.Wanted.Aim = units.MustParseLength("0.0015 in")
	got, err = ChooseShells(&j)
	require.NoError(t, err)
	require.Equal(t, 1, got.Picks[0].Upper)
	require.Equal(t, 1, got.Picks[0].Lower)
}

func TestChooseShellsRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*ShellJob)
		want   string
	}{
		"no bearings": {func(j *ShellJob) { j.Bearings = nil }, "bearings 0 is not from 1 to 64"},
		"no classes":  {func(j *ShellJob) { j.Classes = nil }, "shells in stock (none) is not at least one class"},
		"classes":     {func(j *ShellJob) { j.Classes = make([]ShellClass, 65) }, "64 at most"},
		"no band":     {func(j *ShellJob) { j.Wanted = selective.Wanted{} }, "a band with at least one limit"},
		"aim":         {func(j *ShellJob) { j.Wanted.Aim = 0 }, "aim 0 mm is not a value that"},
		"far aim": {func(j *ShellJob) {
			j.Wanted = selective.Wanted{Band: tolerance.AtLeast(units.Length(0)), Aim: 11 * units.Metre}
		}, "at most 10 m"},
		"step":    {func(j *ShellJob) { j.MostStep = -1 }, "most step between halves"},
		"wall":    {func(j *ShellJob) { j.Classes[0].Wall = tolerance.Bracket{} }, "0, wall"},
		"unnamed": {func(j *ShellJob) { j.Classes[0] = ShellClass{} }, "class 1, wall"},
		"halves":  {func(j *ShellJob) { j.Classes[0].Lowers.Pieces = 2 }, "halves in stock 2"},
		"housing": {func(j *ShellJob) { j.Bearings[1].Housing = tolerance.Bracket{} }, "bearing 2, housing"},
		"journal": {func(j *ShellJob) { j.Bearings[1].Journal = tolerance.Bracket{} }, "bearing 2, journal"},
		"larger":  {func(j *ShellJob) { j.Bearings[1].Journal = journalAt("64.1 mm") }, "below the housing bore"},
		"tight":   {func(j *ShellJob) { j.Bearings[1].Where, j.Bearings[1].Journal = "main 2", journalAt("60.1 mm") }, "main 2, journal 60.1 mm is not small enough for the thinnest shells"},
		"short": {func(j *ShellJob) {
			for k := range j.Classes {
				j.Classes[k].Uppers = HalvesInStock(0)
			}
			j.Classes[3].Uppers = HalvesInStock(4)
		}, "4 pairs is not a pair for each of 5 bearings"},
		"no pair": {func(j *ShellJob) {
			for k := range j.Classes {
				j.Classes[k].Uppers = HalvesInStock(0)
			}
		}, "an upper and a lower half that go together"},
		"no sharing": {func(j *ShellJob) {
			j.Mixed, j.Bearings, j.Classes = false, j.Bearings[:2], j.Classes[:2]
			j.Classes[0].Uppers, j.Classes[0].Lowers = HalvesInStock(1), HalvesInStock(1)
			j.Classes[1].Uppers, j.Classes[1].Lowers = HalvesInStock(1), HalvesInStock(0)
			j.Classes = append(j.Classes, ShellClass{Wall: j.Classes[1].Wall, Uppers: HalvesInStock(0), Lowers: HalvesInStock(1)})
		}, "halves that go together for all of 2 bearings"},
	} {
		j := shellMains()
		c.change(&j)
		_, err := ChooseShells(&j)
		require.ErrorIs(t, err, ErrInput, name)
		require.ErrorContains(t, err, c.want, name)
	}
	err := &ShellSearchError{7}
	require.ErrorIs(t, err, ErrShellSearch)
	require.EqualError(t, err, "crank: too many ways to share out the shells: gave up after 7 steps; mix only halves that differ by one step, or count more shells")
}

var shellChoice ShellChoice

func BenchmarkChooseShells(b *testing.B) {
	free := shellMains()
	short := shellMains()
	for k := range short.Classes {
		short.Classes[k].Uppers, short.Classes[k].Lowers = HalvesInStock(1), HalvesInStock(1)
	}
	pairs := shellMains()
	pairs.Mixed = false
	for name, j := range map[string]*ShellJob{"5x9mixed": &free, "5x9mixedshort": &short, "5x9pairs": &pairs} {
		b.Run("lib=tenthou/op="+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var err error
				if shellChoice, err = ChooseShells(j); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("lib=selective/op=5x9pairs", func(b *testing.B) {
		var parts []selective.Part
		var mates []selective.Class
		for i, x := range pairs.Bearings {
			parts = append(parts, selective.Part{Name: strconv.Itoa(i), Base: x.Housing.Sub(x.Journal)})
		}
		for _, x := range pairs.Classes {
			mates = append(mates, selective.Class{Name: x.Name, Size: x.Wall, Stock: 5})
		}
		b.ReportAllocs()
		for b.Loop() {
			if _, err := selective.Match(parts, tolerance.Whole(-2), mates, pairs.Wanted); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// The largest engines, with a stock that is short everywhere: it ends, and with an
// honest answer or a typed one.
func TestChooseShellsWithALotOfBearings(t *testing.T) {
	rng := rand.New(rand.NewPCG(32, 1))
	for range 20 {
		j := ShellJob{Classes: shellClasses(9), Mixed: true, MostStep: 3 * units.Micrometre, Wanted: shellMains().Wanted}
		for k := range j.Classes {
			j.Classes[k].Uppers, j.Classes[k].Lowers = HalvesInStock(1+rng.IntN(2)), HalvesInStock(1+rng.IntN(2))
		}
		for range 8 {
			j.Bearings = append(j.Bearings, ShellBearing{Housing: tolerance.Exactly(journalMM("64.000") + units.Length(rng.Int64N(12e6))), Journal: tolerance.Exactly(journalMM("59.960") + units.Length(rng.Int64N(14e6)))})
		}
		got, err := ChooseShells(&j)
		if err != nil {
			require.True(t, errors.Is(err, ErrInput) || errors.Is(err, ErrShellSearch), err)
			continue
		}
		honest(t, &j, &got)
	}
}

// A stock so short, and halves so alike, that it gives up says so in time.
func TestChooseShellsGivesUp(t *testing.T) {
	j := ShellJob{Classes: shellClasses(40), Mixed: true, Wanted: selective.Wanted{Band: tolerance.MustParseBand("0.025–0.050 mm"), Aim: journalMM("0.0351")}}
	rng := rand.New(rand.NewPCG(33, 1))
	for k := range j.Classes {
		j.Classes[k].Wall = tolerance.Exactly(journalMM("1.985") + units.Length(rng.Int64N(20e6)))
		j.Classes[k].Uppers, j.Classes[k].Lowers = HalvesInStock(1), HalvesInStock(1)
	}
	for range 30 {
		j.Bearings = append(j.Bearings, ShellBearing{Housing: tolerance.Exactly(journalMM("64.000") + units.Length(rng.Int64N(12e6))), Journal: tolerance.Exactly(journalMM("59.980"))})
	}
	_, err := ChooseShells(&j)
	require.ErrorIs(t, err, ErrShellSearch)
}

// FuzzChooseShells: whatever the job, an honest choice or a typed error.
func FuzzChooseShells(f *testing.F) {
	f.Add(int64(64_000_000_000), int64(59_965_000_000), int64(2_000_000_000), int64(3_000_000), int64(35_000_000), uint8(3), uint8(4), uint64(0x123456))
	f.Add(int64(1), int64(0), int64(-1), int64(0), int64(5), uint8(1), uint8(0), uint64(0))
	f.Fuzz(func(t *testing.T, housing, journal, wall, step, aim int64, bearings, classes uint8, stock uint64) {
		j := ShellJob{Mixed: stock&1 == 1, Wanted: selective.Wanted{Band: tolerance.AtLeast(units.Length(0)), Aim: units.Length(aim)}}
		for i := range int64(bearings % 5) {
			j.Bearings = append(j.Bearings, ShellBearing{Housing: tolerance.Exactly(units.Length(housing).Add(units.Length(i * 1000))), Journal: tolerance.Exactly(units.Length(journal))})
		}
		for k := range int64(classes % 5) {
			j.Classes = append(j.Classes, ShellClass{Wall: tolerance.Exactly(units.Length(wall).Add(units.Length(step).Scale(k, 1))), Uppers: HalvesInStock(int(stock >> (8 * k) & 3)), Lowers: HalvesInStock(int(stock >> (8*k + 2) & 3))})
		}
		c, err := ChooseShells(&j)
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			return
		}
		honest(t, &j, &c)
	})
}
