// Endfloat answers: is this crankshaft's end float within its limits, and which
// thrust washers put it right?
//
// Method: the float is the difference of a dial's readings with the shaft pushed
// forward and pulled back, or the blades that go in beside the thrust washer and
// those that don't. Other washers change it by the difference of their
// thickness, both sides together, so an oversize on both sides takes off twice
// itself; the two halves of one side must match, since the thrust runs on the
// thicker. Where the manual has a table of washers the float over standard ones
// is looked up in it, and where the table leaves a gap both neighbours are
// named.
//
// Source: table of US Army TM 5-4210-233-14&P-2, p. 6-152 (in package crank);
// the rest is arithmetic of lengths. The engine in engine.json, with its table,
// is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: a shaft that is levered along may turn: keep fingers from the webs,
// and never lever on a cap or a seal. A shaft must not be pinched; turn it by
// hand after the caps are tightened. The engine maker's manual governs.
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
	flags := recipe.Flags("endfloat", "Is this crankshaft's end float within its limits, and which thrust washers put it right?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/endfloat/engine.json: the dial's readings forward and back, or the blades tried, the\n"+
		"manual's limits, the washers that are in, and the manual's table or the washers in stock.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.Bool("working", false, "write out how the float and the washers are worked out")
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
	if err == nil && *working {
		page, err = e.working()
	}
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
