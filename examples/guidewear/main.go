// Guidewear answers: how worn are these valve guides and stems, does rocking
// agree with the diameters, and which of the repairs in stock puts each right?
//
// Method: the clearance at each depth lies from the least bore less the greatest
// stem to the greatest bore less the least stem, since a valve turns and slides;
// bell-mouth is mouth less waist across the same way. A valve rocked under a dial
// has the clearance R·L/(L + 2h) in a straight guide and a mean of its mouths in
// any other; the manual's limit for rocking is compared with the travel R
// itself. What the diameters say rocking should show is found as the least over
// all pairs of depths. A repair is chosen only if the whole of its clearance is
// in the wanted band and its reamer cleans up the widest place.
//
// Source: the arithmetic is geometry, checked in package valvetrain against a
// root finder and a linear programme; the limits in engine.json are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: springs and collets under load can leave the bench at the height of an
// eye, so wear eye protection when valves are taken out. Dust of guides of
// beryllium alloy harms the lungs for life: find out what they are made of before
// reaming. The engine maker's manual governs.
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
	flags := recipe.Flags("guidewear", "How worn are these valve guides and stems, and which repair in stock puts each right?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/guidewear/engine.json: under guide the bores at each depth, counted from the end\n"+
		"nearest the valve's head, one for each way across; under stem its diameters where it runs in\n"+
		"the guide; under rocked the dial's whole travel, the length of guide that the stem is in, and\n"+
		"how far beyond the guide's end the dial stood. guide with stem, or rocked, may be left out.\n\n"+
		"Find out what guides and seats are made of before reaming or grinding: dust of beryllium alloy\n"+
		"harms the lungs for life. Springs under load and collets fly: eye protection. The engine maker's\n"+
		"manual governs.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.String("working", "", "write out the working of one `VALVE`, such as \"exhaust 1\"")
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
	page, err := e.page()
	if err == nil && *working != "" {
		page, err = e.working(*working)
	}
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
