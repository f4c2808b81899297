// Oilclearance answers: what is the oil clearance of these bearings, does it do, and
// which shells in stock come nearest to the one that is wanted?
//
// Method: least clearance = least bore − greatest journal, greatest the other way;
// the bore measured with the shells in place at 90° to the split, or before nip
// housing − both walls − journal. A crushed gauging strip is read by the table that
// came with it: the wider, the tighter; between two marks it is only known to lie
// between their clearances. Shells are shared out over all bearings at once, one
// half of a pair too if you allow it: a half of a .001 pair changes .0005.
//
// Source: subtraction, checked in package crank; that the greatest journal decides
// the least clearance is geometry, that ends and middle of a strip may differ by
// 0.001 in at the most is US Army TM 9-2320-289-34, p. 3-45. A thousandth of the
// journal's diameter is common practice. The engine and the strip's table in
// engine.json are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs. Never
// file a cap or a shell. Keep shells' backs and housings clean and dry. Hold a shaft
// against the upper shells with a jack that bears it, and keep hands from under it.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("oilclearance", "What is the oil clearance of these bearings, and which shells come nearest?\n\n"+
		"Without flags it works out an invented engine. Write your own in a file like\n"+
		"examples/oilclearance/engine.json: for each bearing its journal and either the bore with\n"+
		"the shells in place, or housing and walls; under strips the widths of crushed gauging\n"+
		"strips, with the table of your own; under shells the classes in stock and what you want.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	work := flags.String("working", "", "write out the working of one `BEARING`, such as \"main 2\"")
	inch := flags.Bool("inch", false, "print in inches")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	e, err := read(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	p := metric
	if *inch {
		p = imperial
	}
	text := e.page(p)
	if *work != "" {
		if text, err = e.working(*work, p); err != nil {
			return flags.Fail(fmt.Errorf("%s: %w", name, err))
		}
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}
