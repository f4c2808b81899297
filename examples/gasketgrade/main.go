// Gasketgrade answers: which head gasket do these pistons ask for, and what is
// left between piston and head?
//
// Method: each piston's protrusion above the block face is the mean of two
// points above the ends of its gudgeon pin's axis, where its rocking hardly
// shows; their difference tells whether it stands square. The greatest piston
// chooses the row of the engine maker's table, and only where one row is meant
// for certain. The clearance is the gasket's compressed thickness less the
// protrusion. With the sizes of block, crank, rod and piston it also says what
// protrusion to expect.
//
// Source: the arithmetic is geometry (deck = block height − half the stroke −
// rod − compression height); choosing by the greatest protrusion is common
// practice. The table and all limits are the engine maker's, those in
// engine.json are invented.
//
// For: shop software, instructors.
//
// Caution: a gasket that is too thin lets a piston hit the head. Keep fingers
// off the crowns and out of the bores while the crank turns, and turn the
// assembled engine by hand two full turns before it runs. The engine maker's
// manual governs.
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
	flags := recipe.Flags("gasketgrade", "Which head gasket do these pistons ask for, and what is left between piston and head?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/gasketgrade/engine.json: for each piston the two points above the ends of its\n"+
		"gudgeon pin's axis, dial zeroed on the block face, above it counted up and below it with\n"+
		"a minus; and the table of gaskets from the engine maker's manual, least protrusion first,\n"+
		"with the marks in your own words. difference, clearance and stack may be left out.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.Bool("working", false, "write out the working of the piston that chooses")
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
	page, err := e.page(*working)
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
