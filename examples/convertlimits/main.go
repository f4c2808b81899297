// Convertlimits answers: what are these limits in the other unit, and what
// does rounding them give away or take?
//
// Method: the limits are held exactly and rounded once, either each to the
// nearest step or both inward, to as many places as the total tolerance asks
// for. With a second column it tells which of the two governs and which sizes
// one accepts and the other rejects.
//
// Source: 1 in = 25.4 mm (24 FR 5348, 1959). The two rules and the choice of
// places are those of IEEE Std 268 and ASTM SI 10; the table of places is from
// memory.
//
// For: shop software, instructors, hobbyists.
//
// Caution: judge against the column that the maker designed in, unrounded. The
// engine maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("convertlimits", "What are these limits in the other unit, and what does rounding give away?\n\n"+
		"Write the limits as the manual prints them: \"0.03–0.07 mm\", \"max 0.10 mm\",\n"+
		"\"2.5 ±0.02 mm\", \"5.7510-5.7530 in\". Without any it converts 0.03–0.07 mm.", errs)
	flags.Words("[LIMITS]", 1)
	to := flags.String("to", "", "the `UNIT` to convert to, mm, µm, in or thou; if not given, inches from millimetres and the other way round")
	places := flags.Int("places", tolerance.ByTolerance, "so many decimal `PLACES`; -2 chooses them by the total tolerance")
	second := flags.String("second", "", "the manual's other `COLUMN` for the same limits, to compare")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	text := "0.03–0.07 mm"
	if flags.NArg() > 0 {
		text = flags.Arg(0)
	}
	limits, err := tolerance.ParsePrinted(text)
	if err != nil {
		return flags.Fail(err)
	}
	unit, err := target(limits, *to)
	if err != nil {
		return flags.Fail(err)
	}
	page, err := convert(limits, unit, *places)
	if err == nil && *second != "" {
		var more string
		more, err = compare(limits, *second)
		page += more
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// target is the unit asked for, or the other system's.
func target(p tolerance.Printed, name string) (units.Unit[units.Length], error) {
	if name != "" {
		return units.ParseUnit[units.Length](name)
	}
	w := p.Greatest
	if _, end := p.Upper(); end == tolerance.Absent {
		w = p.Least
	}
	switch w.Unit {
	case units.InInches, units.InThou, units.InMicroinches, units.InFeet:
		return units.InMillimetres, nil
	}
	return units.InInches, nil
}

func convert(p tolerance.Printed, u units.Unit[units.Length], places int) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "%v, converted to %v\n", p, u)
	for _, rule := range []tolerance.ConvertRule{tolerance.ConvertNearest, tolerance.ConvertInward} {
		c, err := p.Convert(u, places, rule)
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&b, "  %-8v %v\n", rule, c)
		if _, end := p.Lower(); end != tolerance.Absent {
			fmt.Fprintf(&b, "           least limit %s\n", moved(c.LowerGives))
		}
		if _, end := p.Upper(); end != tolerance.Absent {
			fmt.Fprintf(&b, "           greatest limit %s\n", moved(c.UpperGives))
		}
	}
	return b.String(), nil
}

func moved(gives units.Length) string {
	switch {
	case gives > 0:
		return "gives away " + gives.Dual(units.AllPlaces, 6)
	case gives < 0:
		return "takes " + gives.Abs().Dual(units.AllPlaces, 6)
	}
	return "exact"
}

func compare(first tolerance.Printed, column string) (string, error) {
	second, err := tolerance.ParsePrinted(column)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\nBeside the column %v:\n", second)
	d := tolerance.Compare(first.BandOf, second.BandOf)
	if design, ok := tolerance.DesignColumn(first, second); ok {
		fmt.Fprintf(&b, "  %v governs: the other follows from it by rounding.\n", design)
	} else {
		b.WriteString("  Which one governs can't be told: both follow from each other by rounding, or neither does.\n")
	}
	if d.Same() {
		b.WriteString("  Both accept the same sizes.\n")
	}
	for _, i := range d.OnlyFirst {
		fmt.Fprintf(&b, "  Only %v accepts %v.\n", first, i)
	}
	for _, i := range d.OnlySecond {
		fmt.Fprintf(&b, "  Only %v accepts %v.\n", second, i)
	}
	return b.String(), nil
}
