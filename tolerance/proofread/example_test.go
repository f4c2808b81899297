package proofread_test

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

func ExampleParsePair() {
	p, err := proofread.ParsePair("3/32 in (2.4 mm)")
	fmt.Println(p, err)
	_, err = proofread.ParsePair("0.006 in (0.152)")
	fmt.Println(errors.Is(err, units.ErrNoUnit))
	// Output:
	// 3/32 in (2.4 mm) <nil>
	// true
}

func ExampleParsePairOf() {
	p, err := proofread.ParsePairOf[units.Force]("76 lbf (33.8 N)")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := proofread.CheckPair(p)
	fmt.Println(r, err)
	// Output: 76 lbf is 338.1 N: the 33.8 N printed beside it looks a decimal place off; or the 76 lbf should be 7.6 lbf <nil>
}

func ExampleParsePairIn() {
	p, err := proofread.ParsePairIn("90° (32.22)", units.InDegrees, units.InDegrees)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := proofread.CheckPair(p)
	fmt.Println(r, err)
	// Output: 90° is 90°: the 32.22° printed beside it looks run through a temperature conversion <nil>
}

func ExampleParseLimits() {
	l, err := proofread.ParseLimits("max 0.10 mm (0.004 in)")
	fmt.Println(l, err)
	// Output: max 0.10 mm (max 0.004 in) <nil>
}

func ExampleParseLimitsOf() {
	l, err := proofread.ParseLimitsOf[units.Pressure]("276–414 kPa (40–60 psi)")
	fmt.Println(l, err)
	// Output: 276 kPa to 414 kPa (40 psi to 60 psi) <nil>
}

func ExampleParseColumn() {
	c, err := proofread.ParseColumn("69.920–69.632 mm")
	fmt.Println(c, c.Form, err)
	// Output: 69.920 mm to 69.632 mm a range <nil>
}

func ExampleParseColumnOf() {
	c, err := proofread.ParseColumnOf[units.Angle]("44.5 ±0.5°")
	fmt.Println(c, c.Form, err)
	// Output: 44.5° ±0.5° a size with its tolerance <nil>
}

func ExampleColumnFrom() {
	p, err := tolerance.ParsePrinted("0.03–0.07 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	c, ok := proofread.ColumnFrom(p)
	fmt.Println(c, ok)
	// Output: 0.03 mm to 0.07 mm true
}

func ExampleCheckPair() {
	for _, text := range []string{"0.006 in (0.152 mm)", "0.006 in (0.015 mm)", "0.0035 in (0.0189 mm)", "3/32 in (3.2 mm)", "0.0012 in (0.025 mm)"} {
		p, err := proofread.ParsePair(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		r, err := proofread.CheckPair(p)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(r)
	}
	// Output:
	// 0.006 in and 0.152 mm agree: either from the other
	// 0.006 in is 0.152 mm: the 0.015 mm printed beside it looks a decimal place off; or the 0.006 in should be 0.0006 in
	// 0.0035 in is 0.0889 mm: the 0.0189 mm printed beside it looks like 0.0889 mm with one digit wrong
	// 3.2 mm is 1/8 in: the 3/32 in printed beside it looks like 1/8 in misread
	// 0.025 mm is 0.0010 in: the 0.0012 in printed beside it was rounded twice, by way of 0.03 mm
}

// The parts of an answer are plain data.
func ExampleCheckPair_data() {
	p, _ := proofread.ParsePair("0.001 in (0.05 mm)")
	r, err := proofread.CheckPair(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("tied:", r.Tied())
	for _, s := range r.Slips {
		fmt.Println(s.Rank, s.Kind, "in the", s.In, "figure:", s.Printed, "for", s.Correct)
	}
	// Output:
	// tied: 2
	// 18 factor two in the second figure: 0.05 mm for 0.025 mm
	// 18 factor two in the first figure: 0.001 in for 0.002 in
	// 29 cut off in the first figure: 0.001 in for 0.002 in
}

func ExampleCheckConversion() {
	// 0.177 mm may be the exact figure, which makes 0.007 in.
	p, _ := proofread.ParsePair("0.007 in (0.177 mm)")
	r, _ := proofread.CheckPair(p)
	fmt.Println(r)
	// In a manual that was written in inches it isn't.
	r, _ = proofread.CheckConversion(p, proofread.First)
	fmt.Println(r)
	// Output:
	// 0.007 in and 0.177 mm agree: first from second
	// 0.007 in is 0.178 mm: the 0.177 mm printed beside it was cut off, not rounded
}

func ExampleCheckLimits() {
	l, err := proofread.ParseLimits("2.7548–2.7533 in (69.920–69.632 mm)")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := proofread.CheckLimits(l)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r)
	// Output:
	// least: 69.920 mm is 2.7528 in: the 2.7548 in printed beside it looks like 2.7528 in with one digit wrong
	// greatest: 2.7533 in is 69.934 mm: the 69.632 mm printed beside it looks like 69.932 mm with one digit wrong, and cut off besides
	// the least, 2.7548 in, is above the greatest, 2.7533 in: exchanged, or one of them is wrong
	// the least, 69.920 mm, is above the greatest, 69.632 mm: exchanged, or one of them is wrong
}

func ExampleCheckColumn() {
	c, _ := proofread.ParseColumn("74.915 to 7.4935 in")
	r, err := proofread.CheckColumn(c)
	fmt.Println(r, err)
	// Output: the least, 74.915 in, is above the greatest, 7.4935 in: the 74.915 in looks a decimal place off: 7.4915 in; or the 7.4935 in should be 74.935 in <nil>
}

func ExampleCheckWear() {
	newPart, _ := proofread.ParseColumn("0.03–0.07 mm")
	worn, _ := proofread.ParseColumn("max 0.010 mm")
	r, err := proofread.CheckWear(newPart, worn)
	fmt.Println(r, err)
	// Output: a new part of 0.07 mm is past the wear limit of 0.010 mm: the 0.010 mm looks a decimal place off: 0.10 mm <nil>
}

func ExampleCheckRatio() {
	// A ring's gap grows by π for each unit of bore.
	bore, _ := units.ParseWritten[units.Length]("0.50 mm")
	gap, _ := units.ParseWritten[units.Length]("0.50 mm")
	r, err := proofread.CheckRatio(bore, gap, proofread.Ratio{Num: 1, Den: 1, Pi: true})
	fmt.Println(r, err)
	// Output: from 0.50 mm follows 1.57 mm: the 0.50 mm printed for that looks as if π was left out or taken twice <nil>
}

func ExampleCheckRelated() {
	bore, _ := proofread.ParsePair("0.0012 in (0.03 mm)")
	gap, _ := proofread.ParsePair("0.0031 in (0.08 mm)")
	r, err := proofread.CheckRelated(bore, gap, proofread.Ratio{Num: 1, Den: 1, Pi: true})
	fmt.Println(r, err)
	// Output: 0.0031 in follows from 0.0010 in: the 0.0012 in printed for that was rounded twice, by way of 0.03 mm <nil>
}

func ExampleCheckLift() {
	lift, _ := proofread.ParseColumn("37.23 mm")
	r, err := proofread.CheckLift(lift, proofread.Column{})
	fmt.Println(r, err)
	// Output: 37.23 mm is too much for a lift: it looks like the height of the lobe <nil>
}

func ExampleCheckReadings() {
	r, err := proofread.CheckReadings[units.Length](22.36*units.MM, 22.36*units.MM, 22.86*units.MM, 22.37*units.MM)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Text(units.InMillimetres, 2))
	fmt.Println("without it:", r.Odd[0].Causes[0].Undone)
	// Output:
	// reading 3, 22.86 mm, is 0.50 mm off the 22.36 mm of its neighbours: one turn of a metric micrometer's thimble, 0.5 mm? Measure again
	// without it: 22.36 mm
}

func ExampleCheckBrackets() {
	var clearances []tolerance.Bracket
	for _, text := range []string{"[0.05 mm, 0.06 mm)", "[0.06 mm, 0.07 mm)", "[0.50 mm, 0.60 mm)", "[0.05 mm, 0.06 mm)"} {
		b, err := tolerance.ParseBracket(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		clearances = append(clearances, b)
	}
	r, err := proofread.CheckBrackets(clearances...)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Text(units.InMillimetres, 2))
	// Output: reading 3, [0.50 mm, 0.60 mm), is 0.50 mm off the 0.06 mm of its neighbours: a decimal place? Measure again
}
