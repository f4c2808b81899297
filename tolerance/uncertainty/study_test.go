package uncertainty_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func publishedStudy(t testing.TB) (s uncertainty.Study) {
	last := ""
	for c := range vectors.Load(t, "published/uncertainty_study.txt").All(t) {
		if c.Text("operator") != last {
			last = c.Text("operator")
			s.Readings = append(s.Readings, nil)
		}
		o := len(s.Readings) - 1
		var cell []units.Length
		for _, trial := range []string{"first", "second", "third"} {
			cell = append(cell, must(units.ParseLength(c.Text(trial)+" mm")))
		}
		s.Readings[o] = append(s.Readings[o], cell)
		require.Len(t, s.Readings[o], c.Int("part"))
	}
	return s
}

func TestStudy_published(t *testing.T) {
	s := publishedStudy(t)
	pooled := must(s.Analyse(units.InMillimetres, uncertainty.PoolUnlessPlain))
	apart := must(s.Analyse(units.InMillimetres, uncertainty.KeepApart))
	ranges := must(s.ByRange(units.InMillimetres))
	require.True(t, pooled.Pooled)
	require.False(t, apart.Pooled)
	require.Equal(t, pooled, must(s.Analyse(units.InMillimetres, uncertainty.PoolAlways)))
	got := map[string]float64{
		"pooled interaction f": pooled.InterEffect.F, "pooled interaction chance": pooled.InterEffect.Chance,
		"pooled error mean": pooled.Error.Mean, "pooled error freedom": float64(pooled.Error.Freedom),
		"apart parts f": apart.PartEffect.F, "apart operators f": apart.OperatorEffect.F, "apart repeatability": apart.Repeatability,
		"pooled repeatability": pooled.Repeatability, "pooled operators": pooled.Operators, "pooled measuring": pooled.Measuring(), "pooled parts": pooled.Parts,
		"pooled total": pooled.Total(), "pooled categories": pooled.Categories(),
		"range repeatability": ranges.Repeatability, "range operators": ranges.Operators, "range measuring": ranges.Measuring(), "range parts": ranges.Parts,
		"range total": ranges.Total(), "range categories": ranges.Categories(),
		"range measuring of total": 100 * ranges.OfTotal(ranges.Measuring()), "range parts of total": 100 * ranges.OfTotal(ranges.Parts),
	}
	for name, e := range map[string]uncertainty.Effect{"parts": pooled.PartEffect, "operators": pooled.OperatorEffect, "interaction": pooled.InterEffect, "scatter": pooled.Scatter, "all": pooled.Whole} {
		got["pooled "+name+" squares"], got["pooled "+name+" freedom"] = e.Squares, float64(e.Freedom)
		if name != "all" {
			got["pooled "+name+" mean"] = e.Mean
		}
	}
	for name, v := range map[string]float64{"repeatability": pooled.Repeatability, "operators": pooled.Operators, "measuring": pooled.Measuring(), "parts": pooled.Parts} {
		got["pooled "+name+" share"], got["pooled "+name+" of total"] = 100*pooled.ShareOfVariance(v), 100*pooled.OfTotal(v)
	}
	expect(t, "published/uncertainty_study_results.txt", "", got)

	// In other units and about another nominal the same.
	moved := uncertainty.Study{Readings: make([][][]units.Length, len(s.Readings))}
	for o, parts := range s.Readings {
		for _, cell := range parts {
			var there []units.Length
			for _, q := range cell {
				there = append(there, q+7*units.Metre)
			}
			moved.Readings[o] = append(moved.Readings[o], there)
		}
	}
	inches := must(moved.Analyse(units.InInches, uncertainty.PoolUnlessPlain))
	relative(t, pooled.Measuring(), 25.4*inches.Measuring(), 1e-12)
	relative(t, pooled.InterEffect.F, inches.InterEffect.F, 1e-11)
	// Operators one by one: offsets add up to nothing.
	sum := 0.0
	squares := 0.0
	for _, each := range pooled.Each {
		sum += each.Offset
		squares += each.Repeatability * each.Repeatability
	}
	require.InDelta(t, 0, sum, 1e-12)
	relative(t, pooled.Scatter.Mean, squares/3, 1e-12)
	// Six deviations of measuring against a band of 2 mm; the unit doesn't matter.
	part := must(uncertainty.OfBand(pooled.Components, tolerance.MustBetween(-mm, mm)))
	relative(t, 6*0.302373/2, part, 1e-5)
	relative(t, part, must(uncertainty.OfBand(inches.Components, tolerance.MustBetween(-mm, mm))), 1e-12)
}

func TestStudy_text(t *testing.T) {
	s := publishedStudy(t)
	v := must(s.Analyse(units.InMillimetres, uncertainty.PoolUnlessPlain))
	require.Equal(t, ""+
		"cause                                  degrees of freedom  mean square     F     by chance  standard deviation  of variance  of total\n"+
		"parts                                                   9     9.82 mm²   246  under 0.01 %             1.04 mm       92.2 %    96.0 %\n"+
		"operators                                               2     1.58 mm²  39.6  under 0.01 %            0.227 mm        4.4 %    20.9 %\n"+
		"repeatability, with operators × parts                  78   0.0400 mm²                                0.200 mm        3.4 %    18.4 %\n"+
		"measuring                                                                                             0.302 mm        7.8 %    27.9 %\n"+
		"all                                                    89                                              1.09 mm      100.0 %   100.0 %\n", v.String())
	apart := must(s.Analyse(units.InMillimetres, uncertainty.KeepApart))
	require.Contains(t, apart.Text(), "operators × parts                  18   0.0199 mm²  0.434       97.41 %")
	require.Contains(t, apart.Markdown(), "| repeatability | 60 | 0.0460 mm² |  |  | 0.214 mm | ")
	c := must(s.ByRange(units.InMillimetres))
	require.Equal(t, ""+
		"cause          standard deviation  of variance  of total\n"+
		"parts                     1.10 mm       92.9 %    96.4 %\n"+
		"operators                0.230 mm        4.0 %    20.0 %\n"+
		"repeatability            0.202 mm        3.1 %    17.6 %\n"+
		"measuring                0.306 mm        7.1 %    26.7 %\n"+
		"all                       1.15 mm      100.0 %   100.0 %\n", c.String())
	require.Equal(t, 8, strings.Count(c.Markdown()+"\n", "\n"))
	require.Contains(t, uncertainty.Components{Unit: "mm", Interaction: 1}.Text(), "operators × parts")
	var back uncertainty.Variance
	require.NoError(t, json.Unmarshal(must(json.Marshal(v)), &back))
	require.Equal(t, v, back)
}

// Made-up studies whose components are known come back, in the mean of many.
func TestStudy_recovers(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 3))
	const runs = 300
	var sums [4]float64
	for range runs {
		var s uncertainty.Study
		var parts [8]float64
		for p := range parts {
			parts[p] = 5 * rng.NormFloat64()
		}
		for range 6 {
			operator := 2 * rng.NormFloat64()
			var row [][]units.Length
			for p := range parts {
				inter := 1.5 * rng.NormFloat64()
				var cell []units.Length
				for range 3 {
					cell = append(cell, units.Length(1e6*(parts[p]+operator+inter+rng.NormFloat64())))
				}
				row = append(row, cell)
			}
			s.Readings = append(s.Readings, row)
		}
		v := must(s.Analyse(units.InMicrometres, uncertainty.KeepApart))
		for i, c := range []float64{v.Parts, v.Operators, v.Interaction, v.Repeatability} {
			sums[i] += c * c / runs
		}
	}
	for i, want := range []float64{25, 4, 2.25, 1} {
		relative(t, want, sums[i], 0.1)
	}
}

func TestStudy_refuses(t *testing.T) {
	cell := []units.Length{1, 2}
	parts := [][]units.Length{cell, cell}
	bad := [][]units.Length{cell, {1, units.OutOfRange[units.Length]()}}
	many := make([][]units.Length, 1001)
	for i := range many {
		many[i] = cell
	}
	for what, c := range map[string]struct {
		readings [][][]units.Length
		kind     error
	}{
		"nothing": {nil, uncertainty.ErrTooFew}, "one operator": {[][][]units.Length{parts}, uncertainty.ErrTooFew},
		"no parts": {[][][]units.Length{nil, nil}, uncertainty.ErrTooFew}, "one part": {[][][]units.Length{parts[:1], parts[:1]}, uncertainty.ErrTooFew},
		"one trial":        {[][][]units.Length{{cell[:1], cell[:1]}, {cell[:1], cell[:1]}}, uncertainty.ErrTooFew},
		"a part missing":   {[][][]units.Length{parts, parts[:1]}, uncertainty.ErrUnbalanced},
		"a trial missing":  {[][][]units.Length{parts, {cell, cell[:1]}}, uncertainty.ErrUnbalanced},
		"a reading broken": {[][][]units.Length{parts, bad}, uncertainty.ErrRange},
	} {
		s := uncertainty.Study{Readings: c.readings}
		_, err := s.Analyse(units.InMillimetres, uncertainty.KeepApart)
		t.Log(what, err)
		refused(t, err, c.kind)
		_, err = s.ByRange(units.InMillimetres)
		refused(t, err, c.kind)
	}
	// Too many for the range factors: operators, parts, trials.
	long := make([]units.Length, 1001)
	for _, readings := range [][][][]units.Length{{many, many}, {{long, long}, {long, long}}, make([][][]units.Length, 1001)} {
		for i := range readings {
			if readings[i] == nil {
				readings[i] = parts
			}
		}
		s := uncertainty.Study{Readings: readings}
		_, err := s.ByRange(units.InMillimetres)
		refused(t, err, uncertainty.ErrRange)
		_, err = s.Analyse(units.InMillimetres, uncertainty.KeepApart)
		require.NoError(t, err)
	}
	// All readings the same: no scatter, nothing tested.
	same := [][]units.Length{{mm, mm}, {mm, mm}}
	v := must(uncertainty.Study{Readings: [][][]units.Length{same, same}}.Analyse(units.InMillimetres, uncertainty.PoolUnlessPlain))
	require.Zero(t, v.Total())
	require.Zero(t, v.OfTotal(1))
	require.True(t, math.IsInf(v.Categories(), 1))
	require.NotContains(t, v.Text(), "NaN")
	_, err := uncertainty.OfBand(v.Components, tolerance.AtMost(mm))
	refused(t, err, uncertainty.ErrNoLimit)
	_, err = uncertainty.OfBand(v.Components, tolerance.MustBetween(mm, mm))
	refused(t, err, uncertainty.ErrNoLimit)
	_, err = uncertainty.OfBand(uncertainty.Components{Unit: "cubits"}, tolerance.MustBetween(0, mm))
	require.ErrorIs(t, err, units.ErrUnknownUnit)
}

func TestRangeFactors(t *testing.T) {
	for c := range vectors.Load(t, "reference/uncertainty_factors.txt").All(t) {
		c.Ignore("grubbs_05", "grubbs_01")
		c.Near("mean", must(uncertainty.RangeFactor(c.Int("n"))))
		c.Near("single", must(uncertainty.SingleRangeFactor(c.Int("n"))))
	}
	// Their reciprocals, as tables for such studies print them (from memory).
	for _, c := range []struct {
		n            int
		many, single float64
	}{{2, 0.8862, 0.7071}, {3, 0.5908, 0.5231}, {10, 0, 0.3146}} {
		if c.many > 0 {
			require.InDelta(t, c.many, 1/must(uncertainty.RangeFactor(c.n)), 5e-5)
		}
		require.InDelta(t, c.single, 1/must(uncertainty.SingleRangeFactor(c.n)), 5e-5)
	}
	for n, kind := range map[int]error{1: uncertainty.ErrTooFew, -1: uncertainty.ErrTooFew, 1001: uncertainty.ErrRange} {
		_, err := uncertainty.RangeFactor(n)
		refused(t, err, kind)
		_, err = uncertainty.SingleRangeFactor(n)
		refused(t, err, kind)
	}
}
