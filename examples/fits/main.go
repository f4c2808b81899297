// Fits answers: what do two ISO classes give, and do two measured parts fit?
//
// Method: a fit such as 50 H7/g6 is looked up in the tables of ISO 286: the
// limits of hole and shaft, and from them the least and the greatest
// clearance. Two measured parts are hole less shaft. The way back looks for
// the classes that keep a wanted clearance.
//
// Source: ISO 286-1 and -2 (tables up to 500 mm), with the second sources named
// in package limits.
//
// For: shop software, instructors.
//
// Caution: the engine maker's own limits come before any standard fit. Pressed
// and heated parts burn, and may fly: see the maker's manual.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/limits"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("fits", "What does this fit give, and do these two parts keep it?\n\n"+
		"Write a fit as a drawing has it, \"25 H7/g6\" (without any, that is what is shown), or one\n"+
		"class, \"25 H7\", with -wanted, for the classes that may go with it.", errs)
	flags.Words("[FIT]", 1)
	hole := flags.String("hole", "", "the hole as `MEASURED`, \"25.012 mm\" or \"25.012 ±0.002 mm\"")
	shaft := flags.String("shaft", "", "the shaft as `MEASURED`")
	wanted := flags.String("wanted", "", "the `CLEARANCE` wanted, \"0.01–0.04 mm\"; an interference counts below zero")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	text := "25 H7/g6"
	if flags.NArg() > 0 {
		text = flags.Arg(0)
	}
	var want tolerance.Band
	var err error
	if *wanted != "" {
		if want, err = tolerance.ParseBand(*wanted); err != nil {
			return flags.Fail(err)
		}
	}
	var b strings.Builder
	if strings.Contains(text, "/") {
		err = pair(&b, text, *hole, *shaft, want)
	} else {
		err = mating(&b, text, want)
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, b.String())
	return recipe.Answered
}

// pair shows a fit, and two measured parts beside it.
func pair(b *strings.Builder, text, hole, shaft string, want tolerance.Band) error {
	f, err := limits.Parse(text)
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "%v: %v fit, %s\n", f, f.Kind(), f.Describe())
	for _, l := range []limits.Limits{f.Hole(), f.Shaft()} {
		fmt.Fprintf(b, "  %-6v %-4v %v, deviations %s and %s\n", l.Class().Feature(), l.Class(), l.Band(), µm(l.UpperDeviation()), µm(l.LowerDeviation()))
	}
	if !want.IsZero() {
		verdict := judged(want.Judge(f.Clearance()))
		if want.Judge(f.Clearance()) == tolerance.Undecided {
			verdict = "some pairs keep it, some don't: measure the parts"
		}
		fmt.Fprintf(b, "  against the wanted %v: %s\n", want, verdict)
	}
	if hole == "" && shaft == "" {
		return nil
	}
	var sizes [2]tolerance.Bracket
	for i, part := range []struct {
		name, text string
		limits     limits.Limits
	}{{"hole", hole, f.Hole()}, {"shaft", shaft, f.Shaft()}} {
		if part.text == "" {
			return fmt.Errorf("the %s is not given: give -hole and -shaft, or neither", part.name)
		}
		if sizes[i], err = tolerance.ParseBracket(part.text); err != nil {
			return err
		}
		fmt.Fprintf(b, "  measured %s %v: %s\n", part.name, sizes[i], judged(part.limits.Band().Judge(sizes[i])))
	}
	parts, err := tolerance.FitSizes(sizes[0], sizes[1])
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "  together: %v\n", parts)
	if !want.IsZero() {
		fmt.Fprintf(b, "  against the wanted %v: %s\n", want, judged(parts.Judge(want)))
	}
	return nil
}

// mating shows one class, and the classes of the other part that keep a
// wanted clearance with it.
func mating(b *strings.Builder, text string, want tolerance.Band) error {
	l, err := limits.ParseLimits(text)
	if err != nil {
		return err
	}
	fmt.Fprintf(b, "%v: %v, deviations %s and %s\n", l, l.Band(), µm(l.UpperDeviation()), µm(l.LowerDeviation()))
	if want.IsZero() {
		return nil
	}
	found, err := limits.Mating(l, want)
	if err != nil {
		return err
	}
	if len(found) == 0 {
		fmt.Fprintf(b, "no class keeps a clearance of %v with it\n", want)
	}
	const most = 10
	for i, m := range found {
		if i == most {
			fmt.Fprintf(b, "  and %d finer ones\n", len(found)-most)
			break
		}
		if i == 0 {
			fmt.Fprintf(b, "always keep a clearance of %v with it, the easiest to make first:\n", want)
		}
		fmt.Fprintf(b, "  %-5v %v\n", m.Class(), m.Band())
	}
	return nil
}

func µm(l units.Length) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: units.InMicrometres, Places: units.AllPlaces, Sign: true})
	return string(text)
}

func judged(v tolerance.Verdict) string {
	if v == tolerance.Undecided {
		return "undecided, which is not a pass"
	}
	return v.String()
}
