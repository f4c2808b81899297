package uncertainty_test

import (
	"fmt"
	"sync"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func ExampleNewSeries() {
	s, err := uncertainty.NewSeries(60_002*units.Micrometre, 60_004*units.Micrometre, 60_003*units.Micrometre, 60_003*units.Micrometre, 60_013*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v ± %.1f µm of the mean\n", s.Mean(), s.StandardError(units.InMicrometres))
	if o, _ := s.Grubbs(0.05); o.Suspect {
		fmt.Println("look again at reading", o.Index+1, "of", o.Reading)
	}
	// Output:
	// 60.005 mm ± 2.0 µm of the mean
	// look again at reading 5 of 60.013 mm
}

// Six trainees would make a longer table: two of them, three parts, read
// twice.
func ExampleStudyOf_Analyse() {
	um := func(readings ...units.Length) (all []units.Length) {
		for _, r := range readings {
			all = append(all, r*units.Micrometre)
		}
		return all
	}
	study := uncertainty.Study{Readings: [][][]units.Length{
		{um(12, 13), um(25, 24), um(31, 31)}, // the first trainee
		{um(14, 16), um(27, 26), um(34, 33)}, // the second
	}}
	v, err := study.Analyse(units.InMicrometres, uncertainty.PoolUnlessPlain)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(v)
	for i, o := range v.Each {
		fmt.Printf("trainee %d reads %+.1f µm against the rest\n", i+1, o.Offset)
	}
	fmt.Printf("%.0f classes of parts can be told apart\n", v.Categories())
	part, _ := uncertainty.OfBand(v.Components, tolerance.MustParseBand("0.00–0.04 mm"))
	fmt.Printf("measuring takes %.0f %% of the band\n", 100*part)
	// Output:
	// cause                                  degrees of freedom  mean square     F     by chance  standard deviation  of variance  of total
	// parts                                                   2      351 µm²   673  under 0.01 %             9.35 µm       96.5 %    98.2 %
	// operators                                               1     16.3 µm²  31.4        0.05 %             1.62 µm        2.9 %    17.0 %
	// repeatability, with operators × parts                   8    0.521 µm²                                0.722 µm        0.6 %     7.6 %
	// measuring                                                                                              1.78 µm        3.5 %    18.7 %
	// all                                                    11                                              9.52 µm      100.0 %   100.0 %
	// trainee 1 reads -1.2 µm against the rest
	// trainee 2 reads +1.2 µm against the rest
	// 7 classes of parts can be told apart
	// measuring takes 27 % of the band
}

func ExampleStudyOf_ByRange() {
	study := uncertainty.Study{Readings: [][][]units.Length{
		{{12, 13}, {25, 24}, {31, 31}},
		{{14, 16}, {27, 26}, {34, 33}},
	}}
	c, err := study.ByRange(units.InPicometres)
	fmt.Printf("%.3f %.3f %.3f %v\n", c.Repeatability, c.Operators, c.Parts, err)
	// Output: 0.886 1.610 9.678 <nil>
}

// Two halves of a simulation side by side give what one run gives.
func ExampleSimulate() {
	a, _ := uncertainty.Rectangular("a", 30*units.Millimetre, 40*units.Micrometre)
	b, _ := uncertainty.Rectangular("b", 29*units.Millimetre, 30*units.Micrometre)
	gap := func(x []units.Length) units.Length { return x[0].Sub(x[1]) }
	inputs := []uncertainty.Estimate{a, b}

	parts := uncertainty.Trials(42, 200_000).Split(2)
	samples := make([]uncertainty.SampleOf[units.Length], len(parts))
	var group sync.WaitGroup
	for i, blocks := range parts {
		group.Go(func() {
			samples[i], _ = uncertainty.Simulate(blocks, inputs, gap)
		})
	}
	group.Wait()
	s, err := uncertainty.JoinOf(samples...)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s)
	within, _ := s.Conformance(tolerance.MustParseBand("0.95–1.05 mm"))
	fmt.Printf("%.1f %% lie within ±0.05 mm\n", 100*within)
	// Output:
	// 1.000 mm, standard deviation 0.029 mm; 95 % lie in [0.945 mm, 1.055 mm]; 200000 trials
	// 91.7 % lie within ±0.05 mm
}

func ExampleStream_Fill() {
	// A million deviates by oneself: fill, calculate, and make a sample of it.
	stream := uncertainty.Trials(1, 1).Stream(0)
	x := make([]float64, 100_000)
	stream.Fill(x, uncertainty.TriangularShape, uncertainty.Infinite())
	s, _ := uncertainty.NewSample(x)
	fmt.Printf("%.2f\n", s.StandardDeviation())
	// Output: 1.00
}

func ExampleMeanDeviation() {
	mean, s, err := uncertainty.MeanDeviation(80.2, 80.6, 80.4)
	fmt.Printf("%.1f %.1f %v\n", mean, s, err)
	// Output: 80.4 0.2 <nil>
}

func ExampleGrubbsCritical() {
	g, err := uncertainty.GrubbsCritical(10, 0.05)
	fmt.Printf("%.3f %v\n", g, err)
	// Output: 2.290 <nil>
}

func ExampleSeriesOf_Autocorrelation() {
	// An instrument that warms up: each reading a little above the last.
	s, _ := uncertainty.NewSeries(10_001*units.Micrometre, 10_002*units.Micrometre, 10_002*units.Micrometre, 10_004*units.Micrometre,
		10_005*units.Micrometre, 10_005*units.Micrometre, 10_007*units.Micrometre, 10_008*units.Micrometre)
	fmt.Printf("%.2f\n", s.Autocorrelation())
	// Output: 0.59
}

func ExampleRangeFactor() {
	d2, _ := uncertainty.RangeFactor(5)
	fmt.Printf("%.3f\n", d2)
	// Output: 2.326
}

func ExampleSingleRangeFactor() {
	d, _ := uncertainty.SingleRangeFactor(3)
	fmt.Printf("%.4f\n", 1/d)
	// Output: 0.5231
}

func ExampleOfBand() {
	c := uncertainty.Components{Unit: "µm", Repeatability: 3, Operators: 4, Parts: 12}
	part, err := uncertainty.OfBand(c, tolerance.MustParseBand("0.03–0.09 mm"))
	fmt.Printf("%.2f %v\n", part, err)
	// Output: 0.50 <nil>
}

func ExampleTrials() {
	b := uncertainty.Trials(7, 125_000)
	fmt.Println(b.Len(), b.Split(2))
	// Output: 130000 [{7 0 7} {7 7 13}]
}

func ExampleNewSample() {
	s, err := uncertainty.NewSample([]float64{3, 1, 4, 1, 5, 9, 2, 6, 5, 3})
	median, _ := s.Quantile(0.5)
	fmt.Println(s.Len(), median, err)
	// Output: 10 3 <nil>
}

func ExampleJoin() {
	a, _ := uncertainty.NewSample([]float64{3, 1})
	b, _ := uncertainty.NewSample([]float64{2, 4})
	s, err := uncertainty.Join(a, b)
	fmt.Println(s.Len(), s.Mean(), err)
	// Output: 4 2.5 <nil>
}

func ExampleJoinOf() {
	x, _ := uncertainty.Normal("x", 10*units.Millimetre, 20*units.Micrometre)
	same := func(x []units.Length) units.Length { return x[0] }
	first, _ := uncertainty.Simulate(uncertainty.Blocks{Seed: 1, To: 2}, []uncertainty.Estimate{x}, same)
	_, err := uncertainty.JoinOf(first, first)
	fmt.Println(err)
	// Output: uncertainty: join: blocks 0 to 2: not a range of blocks; each block once
}
