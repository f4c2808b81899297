// Canitdecide answers: can this instrument decide this limit at all, and what
// does it say of the reading at hand?
//
// Method: what is known of the instrument (its step, its permissible error, a
// calibration, repeated readings) makes a budget with a standard uncertainty.
// By ISO 14253-1 a part is proved good only where the reading lies inside the
// limits by a guard band, and proved bad only where it lies outside by one;
// between the two nothing is proved.
//
// Source: JCGM 100 (GUM) for the budget, ISO 14253-1:2017 for the rule (its
// default probability of 95 % as reported in public texts), JCGM 106 for the
// probability that the part conforms.
//
// For: shop software, instructors.
//
// Caution: undecided is not a pass. The engine maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("canitdecide", "Can this instrument decide this limit, and what does it say of this reading?\n\n"+
		"Each flag tells one thing about the instrument; leave out what you don't know, and the\n"+
		"answer is that much too hopeful. Without flags: a micrometer on a ring's height.", errs)
	limits := flags.String("limits", "1.478–1.490 mm", "the `LIMITS` as the manual prints them")
	step := units.MustParseLength("0.01 mm")
	flags.TextVar(&step, "step", step, "the smallest `STEP` that the scale shows")
	permitted := units.MustParseLength("0.004 mm")
	flags.TextVar(&permitted, "error", permitted, "the greatest permissible `ERROR` of the instrument, ±")
	var calibrated units.Length
	flags.TextVar(&calibrated, "calibration", calibrated, "the expanded `UNCERTAINTY` (k = 2) of its calibration")
	readings := flags.String("readings", "1.48 mm, 1.48 mm, 1.49 mm", "the part's `READINGS`, one or more, repeated on the same place")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	band, err := tolerance.ParseBand(*limits)
	if err != nil {
		return flags.Fail(err)
	}
	e, err := estimate(*readings, step, permitted, calibrated)
	if err != nil {
		return flags.Fail(err)
	}
	page, err := answer(band, e)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// estimate is the mean of the readings with all that is known of the
// instrument: each a source of its own, added with the value zero.
func estimate(text string, step, permitted, calibrated units.Length) (e uncertainty.Estimate, err error) {
	var readings []units.Length
	for one := range strings.SplitSeq(text, ", ") {
		l, err := units.ParseLength(one)
		if err != nil {
			return e, err
		}
		readings = append(readings, l)
	}
	if len(readings) == 1 {
		e = uncertainty.Exactly(readings[0])
	} else if e, err = uncertainty.Repeatability("repeated readings", readings...); err != nil {
		return e, err
	}
	scale, err := uncertainty.Resolution("step of the scale", 0, step)
	if err != nil {
		return e, err
	}
	instrument, err := uncertainty.Rectangular("permissible error", 0, permitted)
	if err != nil {
		return e, err
	}
	e = uncertainty.Sum(e, scale, instrument)
	if calibrated == 0 {
		return e, nil
	}
	certificate, err := uncertainty.Calibration("calibration", 0, calibrated, 2)
	return e.Add(certificate), err
}

func answer(band tolerance.Band, e uncertainty.Estimate) (string, error) {
	rule := uncertainty.ISO14253()
	u := e.StandardUncertainty()
	able, err := uncertainty.CanDecide(rule, band, u)
	if err != nil {
		return "", err
	}
	budget, err := e.Budget(units.InMillimetres)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Limits %v\n\nWhat the reading's uncertainty is made of:\n\n%s\n", band, budget.Text())
	if able.Can {
		fmt.Fprintf(&b, "Readings of %s prove that the part conforms;\nwithin %s mm of a limit, on either side, nothing is proved.\n", able.Accept.Text(units.InMillimetres, 4), mm(able.Guard))
	} else {
		fmt.Fprintf(&b, "No reading of this instrument proves that a part conforms: the guard band of %s mm\nat each limit leaves nothing between them. A standard uncertainty of %s mm would leave\nsomething, %s mm would serve well.\n", mm(able.Guard), mm(able.Needed), mm(able.Good))
	}
	j, err := uncertainty.Decide(rule, e, band)
	if err != nil {
		return "", err
	}
	fmt.Fprintf(&b, "\nThe reading %s ±%s mm (one standard uncertainty):\n  %s\n", e.Value().Text(units.InMillimetres, 4), mm(u), j.Text(units.InMillimetres))
	s, err := uncertainty.Settle(rule, e, band)
	if err != nil || s.Decided {
		return b.String(), err
	}
	b.WriteString("  Undecided is not a pass. ")
	if s.Needed == 0 {
		b.WriteString("It stands on the limit: no instrument settles that.\n")
		return b.String(), nil
	}
	fmt.Fprintf(&b, "A standard uncertainty of %s mm would settle it", mm(s.Needed))
	if s.Readings > 0 {
		fmt.Fprintf(&b, ",\n  or the mean of %d such readings if their errors were independent", s.Readings)
	}
	b.WriteString(".\n")
	return b.String(), nil
}

func mm(l units.Length) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Places: 4, Bare: true})
	return string(text)
}
