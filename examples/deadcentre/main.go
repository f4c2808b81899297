// Deadcentre answers: where is true top dead centre on a degree wheel, by a
// positive stop or by equal readings of a dial gauge?
//
// Method: the piston meets the stop at one height on both sides of top dead
// centre, and without an offset that is the same crank angle before and after,
// whatever rod and stroke: dead centre lies midway, (after − before)/2 beyond the
// wheel's zero. An offset of pin or cylinder breaks the symmetry; with throw, rod
// and offset given the error is worked out and taken off. With a dial gauge the
// half-span that the fall asks for is a check.
//
// Source: geometry, checked in package valvetrain against a root finder at high
// precision; the readings of the defaults are invented. That a stop should bite
// 15° to 20° or more from dead centre: common practice.
//
// For: shop software, instructors, hobbyists.
//
// Caution: take the plugs out, disable fuel and ignition, and turn the engine by
// hand, gently: a stop bends what it meets and can hole a piston, and a valve may
// stand in its way. The engine maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("deadcentre", "Where is true top dead centre on the degree wheel?\n\n"+
		"Turn forward to the stop and read the wheel before its zero; turn back to the stop and read it\n"+
		"after its zero. Write readings with their error: -before \"19 ±0.25°\" -after \"25 ±0.25°\". A contact\n"+
		"on the other side of the zero is below zero. With a dial gauge give -fall, -throw and -rod too.\n\n"+
		"Plugs out, fuel and ignition off, by hand, gently: a stop bends what it meets and can hole a\n"+
		"piston, and a valve may stand in its way. The engine maker's manual governs.", errs)
	before := flags.String("before", "19 ±0.25°", "what the wheel shows before its zero, an `ANGLE`")
	after := flags.String("after", "25 ±0.25°", "what the wheel shows after its zero, an `ANGLE`")
	throw := flags.String("throw", "0 mm", "the crank's `THROW`, half the stroke; with -rod, for an offset or a fall")
	rod := flags.String("rod", "0 mm", "the rod's `LENGTH` between the centres of its eyes")
	offset := flags.String("offset", "0 mm", "the `OFFSET` of pin or cylinder, above zero to the thrust side, where the crankpin rises")
	fall := flags.String("fall", "0 mm", "how `FAR` below top dead centre both readings of a dial gauge were taken; 0 mm with a stop")
	unknown := flags.Bool("offset-unknown", false, "there may be an offset, and it isn't known")
	work := flags.Bool("working", false, "write out the working")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	var r reader
	d := valvetrain.DeadCentre{
		Before: read(&r, "before", *before, tolerance.ParseInterval[units.Angle]), After: read(&r, "after", *after, tolerance.ParseInterval[units.Angle]),
		Throw: read(&r, "throw", *throw, units.ParseLength), Rod: read(&r, "rod", *rod, units.ParseLength),
		Offset: read(&r, "offset", *offset, units.ParseLength), Fall: read(&r, "fall", *fall, units.ParseLength), Offsets: *unknown,
	}
	if r.err != nil {
		return flags.Fail(r.err)
	}
	page, err := page(d)
	if err == nil && *work {
		var solution string
		solution, err = solve(d)
		page += solution
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// reader reads flags and keeps the first that can't be read.
type reader struct{ err error }

func read[T any](r *reader, name, text string, parse func(string) (T, error)) (v T) {
	if r.err != nil {
		return v
	}
	v, err := parse(text)
	if err != nil {
		r.err = fmt.Errorf("-%s: %w", name, err)
	}
	return v
}

const width = 78

func page(d valvetrain.DeadCentre) (string, error) {
	report, err := d.Inspect()
	if err != nil {
		return "", err
	}
	var b strings.Builder
	deg := func(i tolerance.Interval[units.Angle]) string { return i.Text(units.InDegrees, 3) }
	fmt.Fprintf(&b, "Top dead centre: contacts at %s before and %s after the wheel's zero\n\n", d.Before, d.After)
	fmt.Fprintf(&b, "half-span                    %s\n", deg(report.HalfSpan))
	fmt.Fprintf(&b, "true dead centre on wheel    %s after its zero\n", deg(report.Correction))
	if report.Skew != 0 {
		fmt.Fprintf(&b, "of which by the offset       %s\n", report.Skew.Text(units.InDegrees, 4))
	}
	if report.Wanted != 0 {
		fmt.Fprintf(&b, "half-span the fall asks for  %s\n", report.Wanted.Text(units.InDegrees, 3))
	}
	b.WriteString("\n")
	for _, n := range report.Notes {
		b.WriteString(recipe.Wrap(n, width, "", "  "))
	}
	b.WriteString(recipe.Wrap("Next: "+report.Next, width, "", "  "))
	b.WriteString("\nPlugs out, by hand, gently: a stop bends what it meets.\n")
	return b.String(), nil
}

// solve writes out the middle of the readings; the offset's part after it.
func solve(d valvetrain.DeadCentre) (string, error) {
	before, _ := d.Before.Middle()
	after, _ := d.After.Middle()
	x, y := working.Given("contact before zero", "b", before), working.Given("contact after zero", "a", after)
	var b strings.Builder
	for _, t := range []working.TermOf[units.Angle]{
		valvetrain.StopHalfSpan(x, y).Named("half-span", "s"), valvetrain.StopCorrection(x, y).Named("dead centre after the wheel's zero", "k"),
	} {
		s, err := working.Solve(t, units.Style[units.Angle]{Unit: units.InDegrees, Places: 2})
		if err != nil {
			return "", err
		}
		b.WriteString("\n" + s.Text())
	}
	if d.Offset == 0 {
		return b.String(), nil
	}
	mm := func(words, symbol string, l units.Length) working.RealTerm {
		return working.GivenReal(words, symbol, l.Float(units.InMillimetres), "mm")
	}
	half := working.GivenReal("half-span", "s", valvetrain.StopHalfSpan(before, after).Radians(), "rad")
	throw, rod := mm("throw", "r", d.Throw), mm("rod", "l", d.Rod)
	contact := valvetrain.StopPinDistance(throw, rod, half).Named("gudgeon pin from the crankshaft at the contacts", "p", "mm")
	dead := throw.Add(rod).Named("gudgeon pin from the crankshaft at dead centre", "q", "mm")
	s, err := working.SolveReal(valvetrain.StopSkewOf(contact, dead, mm("offset", "e", d.Offset)).
		Named("dead centre after the middle, by the offset", "δ", "rad"), working.RealStyle{Places: 6, Bare: true})
	if err != nil {
		return "", err
	}
	return b.String() + "\n" + s.Text(), nil
}
