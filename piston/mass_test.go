package piston

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func weighed(s string) MassBracket {
	b, err := tolerance.ParseInterval[units.Mass](s)
	if err != nil {
		panic(err)
	}
	return b
}

func massSet(limit string, masses ...string) MassSet {
	s := MassSet{Measure: "piston"}
	if limit != "" {
		b, err := tolerance.ParseBandOf[units.Mass](limit)
		if err != nil {
			panic(err)
		}
		s.Spread.New = b
	}
	for i, m := range masses {
		s.Parts = append(s.Parts, MassPart{string(rune('1' + i)), weighed(m)})
	}
	return s
}

func TestMassFormulas(t *testing.T) {
	r := rand.New(rand.NewPCG(54, 1))
	for range 1000 {
		draw := func() units.Mass { return units.Mass(r.Int64N(1e15)) }
		a, b, c := draw(), draw(), draw()
		require.Equal(t, b, MassAfter(a, MassToRemove(a, b)))
		require.Equal(t, a, MassOfPart(MassTotal(a, b, c), b, c))
		require.Equal(t, units.Mass(0), MassEndsOff(a+b, a, b))
		require.Equal(t, b, MassOtherEnd(a+b, a))
		require.Equal(t, max(a, b, c)-min(a, b, c), MassSpread(a, b, c))
	}
	require.Equal(t, units.Mass(0), MassSpread(units.Gram))
	require.False(t, MassTotal(units.OutOfRange[units.Mass](), units.Gram).InRange())
	s, err := working.Solve(MassTotal(working.Given("piston", "p", 412*units.Gram), working.Given("pin", "g", 108*units.Gram)).Named("together", "m"), units.Style[units.Mass]{Unit: units.InGrams})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "520 g")
	three, err := uncertainty.Normal("piston", 412*units.Gram, 3*units.Gram)
	require.NoError(t, err)
	four, err := uncertainty.Normal("pin", 108*units.Gram, 4*units.Gram)
	require.NoError(t, err)
	_, u := MassTotal(three, four).Float(units.InGrams)
	require.InDelta(t, 5, u, 1e-12)
}

// A rod balances where its ends say; the pads' lever of the doc, by hand:
// 10 g at 40 mm beyond an end of a rod of 140 mm.
func TestMassRodLever(t *testing.T) {
	type f = tolerance.Float
	require.InDelta(t, 35, float64(MassCentre(f(140), 450, 150)), 1e-12) // a quarter of the mass on the small end
	require.InDelta(t, 150, float64(MassSmallEnd(f(600), 35, 140)), 1e-12)
	big, small := MassEndsCut(f(10), 0, 140, 40, 30)
	require.InDelta(t, 10.0*180/140, float64(big), 1e-12)
	require.InDelta(t, -10.0*40/140, float64(small), 1e-12)
	big, small = MassPads(f(7), 3, 140, 0, 0)
	require.Equal(t, []f{7, 3}, []f{big, small})
	require.False(t, MassCentre(f(140), 0, 0).InRange())

	// From moments about the small end's centre, term by term.
	r := rand.New(rand.NewPCG(55, 1))
	for range 500 {
		masses, at := [3]float64{}, [3]float64{}
		var whole, moment float64
		for i := range 3 {
			masses[i], at[i] = 50+400*r.Float64(), 140*r.Float64()
			whole += masses[i]
			moment += masses[i] * at[i]
		}
		bigEnd := moment / 140 // carried at 140 mm
		require.InEpsilon(t, 140-moment/whole, float64(MassCentre(f(140), f(bigEnd), f(whole-bigEnd))), 1e-10)
	}
	s, err := working.SolveReal(MassCentre(working.GivenReal("centres", "L", 140, "mm"), working.GivenReal("big end", "b", 450, "g"), working.GivenReal("small end", "s", 150, "g")).Named("from the big end", "x", "mm"), working.RealStyle{Places: 1})
	require.NoError(t, err)
	require.Contains(t, s.Text(), "35.0 mm")
	d, err := uncertainty.NewDual("small end", 150, "g", uncertainty.NormalShape, 1)
	require.NoError(t, err)
	c := MassCentre(uncertainty.ExactlyReal(140), uncertainty.ExactlyReal(450), d)
	require.InEpsilon(t, 140.0*450/600/600, c.StandardUncertainty(), 1e-12) // L·b/(b+s)²
}

// By hand: 412, 415, 410 and 418 g may spread over 4: 415 loses 1, 418 loses 4.
func TestMassSet(t *testing.T) {
	s := massSet("max 4 g", "412 g", "415 g", "410 g", "418 g")
	s.MostOff = 5 * units.Gram
	r, err := s.Assess()
	require.NoError(t, err)
	require.Equal(t, weighed("8 g"), r.Finding.Greatest)
	require.Equal(t, tolerance.OutsideNewBand, r.Finding.Standing)
	require.Equal(t, []string{"3"}, r.Lightest)
	require.Equal(t, []MassCut{
		{"1", weighed("2 g"), 0, true, tolerance.Within},
		{"2", weighed("5 g"), units.Gram, true, tolerance.Within},
		{"3", weighed("0 g"), 0, true, tolerance.Within},
		{"4", weighed("8 g"), 4 * units.Gram, true, tolerance.Within},
	}, r.Cuts)
	require.Equal(t, "take metal from 2, 4, only where the engine maker allows it, a little at a time, and weigh again", r.Next)
	b, err := json.Marshal(r)
	require.NoError(t, err)
	var back MassReport
	require.NoError(t, json.Unmarshal(b, &back))
	require.Empty(t, cmp.Diff(r, back, cmpopts.EquateComparable(MassBracket{}, tolerance.BandOf[units.Mass]{})))

	s.MostOff = 2 * units.Gram
	r, err = s.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "renew 4, or find a heavier part for 3")
	require.Contains(t, r.Next, "take metal from 2,")
	s.MostOff = 0
	r, err = s.Assess()
	require.NoError(t, err)
	require.Equal(t, tolerance.Undecided, r.Cuts[3].Allowed)
	require.Contains(t, r.Next, "ask the engine maker whether and where metal may be taken from 2, 4")

	for _, c := range []struct {
		set  MassSet
		next string
	}{
		{massSet("max 8 g", "410 g", "418 g"), "take nothing off"},
		{massSet("", "410 g", "418 g"), "no limit is given"},
		{massSet("max 2 g", "410 ±1 g", "412 ±0.5 g"), "weigh again on a finer scale, or take off"},
		{massSet("max 1 g", "410 ±1 g", "411 ±1 g"), "not a pass: weigh on a finer scale"},
		{massSet("max 1 g", "410 ±1 g", "415 ±1 g"), "too coarse to bring the set within it"},
		{massSet("less than 5 g", "410 g", "415 g"), "ask the engine maker"},
		{massSet("min 5 g", "410 g", "412 g"), "too coarse"},
	} {
		r, err := c.set.Assess()
		require.NoError(t, err)
		require.Contains(t, r.Next, c.next)
	}
	used := massSet("max 4 g", "410 g", "418 g")
	used.Spread.Wear = tolerance.AtMost(10 * units.Gram)
	r, err = used.Assess()
	require.NoError(t, err)
	require.Contains(t, r.Next, "may stay as it is")
	require.Equal(t, 4*units.Gram, r.Cuts[1].Least)
	// A limit that isn't allowed itself is aimed under.
	r, err = massSet("less than 5 g", "410 g", "415 g").Assess()
	require.NoError(t, err)
	require.Equal(t, units.Mass(1), r.Cuts[1].Least)
}

// The cuts do for every mass that the scale leaves open, and no smaller cut
// of any part does, whatever the others lose.
func TestMassCutsAreTheLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(56, 1))
	worst := func(lo, hi, cut []int64) (most int64) {
		for i := range lo {
			for j := range lo {
				if i != j {
					most = max(most, hi[i]-cut[i]-lo[j]+cut[j])
				}
			}
		}
		return most
	}
	known, unknown := 0, 0
	for range 400 {
		n, limit := 2+r.IntN(2), int64(r.IntN(5))
		lo, hi := make([]int64, n), make([]int64, n)
		s := MassSet{Measure: "piston", Spread: tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(units.Mass(limit))}}
		for i := range n {
			lo[i] = 20 + r.Int64N(8)
			hi[i] = lo[i] + r.Int64N(6)
			b, err := tolerance.NewInterval(units.Mass(lo[i]), tolerance.Closed, units.Mass(hi[i]), tolerance.Closed)
			require.NoError(t, err)
			s.Parts = append(s.Parts, MassPart{string(rune('1' + i)), b})
		}
		rep, err := s.Assess()
		require.NoError(t, err)
		cut := make([]int64, n)
		if rep.Cuts[0].LeastKnown {
			known++
		} else {
			unknown++
			for i := range cut {
				cut[i] = 1 << 40 // no way of cutting may do
			}
		}
		for i, c := range rep.Cuts {
			cut[i] = int64(c.Least)
		}
		if rep.Cuts[0].LeastKnown {
			require.LessOrEqual(t, worst(lo, hi, cut), limit)
		}
		// Every way of cutting to 12.
		try := make([]int64, n)
		var every func(i int)
		every = func(i int) {
			if i == n {
				if worst(lo, hi, try) <= limit {
					for k := range n {
						require.GreaterOrEqual(t, try[k], cut[k])
					}
				}
				return
			}
			for try[i] = 0; try[i] <= 12; try[i]++ {
				every(i + 1)
			}
		}
		every(0)
		// To the lightest: every choice of masses is inside, and its ends are met.
		for i, c := range rep.Cuts {
			least, most := int64(1<<60), int64(0)
			for a := lo[i]; a <= hi[i]; a++ {
				lightLo, lightHi := int64(1<<60), int64(1<<60)
				for j := range n {
					if j != i {
						lightLo, lightHi = min(lightLo, lo[j]), min(lightHi, hi[j])
					}
				}
				least, most = min(least, max(0, a-lightHi)), max(most, max(0, a-lightLo))
			}
			from, _ := c.ToLightest.Lower()
			to, _ := c.ToLightest.Upper()
			require.Equal(t, []int64{least, most}, []int64{int64(from), int64(to)})
		}
	}
	require.Greater(t, known, 100)
	require.Greater(t, unknown, 20)
}

func TestMassRefuses(t *testing.T) {
	good := massSet("max 4 g", "410 g", "412 g")
	for _, c := range []struct {
		change func(*MassSet)
		want   string
	}{
		{func(s *MassSet) { s.Parts = nil }, "mass of the set of no part is not weighed of two parts at least"},
		{func(s *MassSet) { s.Parts = s.Parts[:1] }, "of one part"},
		{func(s *MassSet) { s.Parts = make([]MassPart, MatchMost+1) }, "1000 parts at the most"},
		{func(s *MassSet) { s.Parts[0].Mass = weighed("0 g") }, "mass of part 1 0 g is not above 0 g"},
		{func(s *MassSet) { s.Parts[0].Mass = weighed("-5 g") }, "above 0 g"},
		{func(s *MassSet) { s.Parts[0].Mass = MassBracket{} }, "a reading with both ends"},
		{func(s *MassSet) { s.Parts[0].Mass = tolerance.Exactly(units.OutOfRange[units.Mass]()) }, "within the range"},
		{func(s *MassSet) { s.Parts[1].Where = "1" }, `part "1" is not named once`},
		{func(s *MassSet) { s.MostOff = -1 }, "the most to take off"},
		{func(s *MassSet) {
			s.Spread.Wear = tolerance.AtMost(units.Gram)
		}, "mass spread"},
	} {
		s := massSet("max 4 g", "410 g", "412 g")
		c.change(&s)
		_, err := s.Assess()
		require.ErrorContains(t, err, c.want)
	}
	_, err := good.Assess()
	require.NoError(t, err)
	// An open end at zero is above zero: something was on the scale.
	open := massSet("max 4 g", "(0 g, 1 g]", "1 g")
	_, err = open.Assess()
	require.NoError(t, err)
}

func TestMassRodEnds(t *testing.T) {
	r, err := MassRod{"rod 1", weighed("600 ±0.5 g"), weighed("430 ±0.5 g"), weighed("170.2 ±0.5 g")}.Ends()
	require.NoError(t, err)
	require.True(t, r.Checked)
	require.Equal(t, weighed("[-1.3 g, 1.7 g]"), r.Off)
	// By hand: 600 ±0.5 less 170.2 ±0.5 is 428.8 to 430.8, and 429.5 to 430.5
	// was read.
	require.Equal(t, weighed("[429.5 g, 430.5 g]"), r.BigEnd)
	r, err = MassRod{"rod 1", weighed("600 g"), weighed("430 ±1 g"), weighed("170.6 ±1 g")}.Ends()
	require.NoError(t, err)
	require.Equal(t, weighed("[429 g, 430.4 g]"), r.BigEnd)
	require.Equal(t, weighed("[169.6 g, 171 g]"), r.SmallEnd)

	r, err = MassRod{Where: "rod 1", Whole: weighed("600 ±0.5 g"), BigEnd: weighed("430 ±0.5 g")}.Ends()
	require.NoError(t, err)
	require.False(t, r.Checked)
	require.Equal(t, weighed("[169 g, 171 g]"), r.SmallEnd)
	r, err = MassRod{Where: "rod 1", Whole: weighed("600 ±0.5 g"), SmallEnd: weighed("170 ±0.5 g")}.Ends()
	require.NoError(t, err)
	require.Equal(t, weighed("[429 g, 431 g]"), r.BigEnd)
	r, err = MassRod{Where: "rod 1", Whole: weighed("600 ±2 g"), SmallEnd: weighed("599 ±2 g")}.Ends()
	require.NoError(t, err)
	require.Equal(t, weighed("(0 g, 5 g]"), r.BigEnd)
	b, err := json.Marshal(r)
	require.NoError(t, err)
	var back MassRodEnds
	require.NoError(t, json.Unmarshal(b, &back))
	require.Equal(t, r, back)

	for _, c := range []struct {
		rod  MassRod
		want string
	}{
		{MassRod{Where: "rod 1"}, "mass of the whole of rod 1"},
		{MassRod{Where: "rod 1", Whole: weighed("600 g")}, "ends of rod 1 of no reading"},
		{MassRod{Where: "rod 1", Whole: weighed("600 g"), BigEnd: weighed("-1 g")}, "mass of the big end of rod 1 -1 g is not above 0 g"},
		{MassRod{Where: "rod 1", Whole: weighed("600 g"), SmallEnd: weighed("600 g")}, "mass of the small end of rod 1 600 g is not below the whole, 600 g"},
		{MassRod{"rod 1", weighed("600 ±0.5 g"), weighed("430 ±0.5 g"), weighed("172 ±0.4 g")}, "they differ by [0.6 g, 3.4 g]; level the rod"},
	} {
		_, err := c.rod.Ends()
		require.ErrorIs(t, err, ErrInput)
		require.ErrorContains(t, err, c.want)
	}
}
