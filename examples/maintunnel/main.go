// Maintunnel answers: is this main bearing tunnel round, true to size and in
// line, and if it is line honed, what does the hone take and where does the
// crank go?
//
// Method: each housing's diameters, caps torqued and shells out, are judged by
// the least and the greatest, by ovality at each level and taper along each
// direction. The line is judged by the lowest zone that holds every saddle;
// heights come from a dial, or from blades under a straight-edge laid along the
// saddles. The least line hone keeps its line parallel to the block face, and
// grinds each cap by as much as lets it clean up; the crank rises by what is
// taken at the crown less half of what the size grows.
//
// Source: the arithmetic is geometry, checked in package cylinder against a
// linear programme and cases of common practice; limits in engine.json are
// invented.
//
// For: shop software, instructors.
//
// Caution: a block is heavy, so lift it with rated tackle and keep hands and
// feet from under it. The engine maker's manual governs.
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
	flags := recipe.Flags("maintunnel", "Is this main bearing tunnel round, to size and in line, and what would a line hone do?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/maintunnel/engine.json: the diameters of each housing, a row for each level, with\n"+
		"\"\" where one was not read; the saddles along the line, by blades (the gap under a\n"+
		"straight-edge) or by heights; and what a line hone is to reach. line and hone may be left out.\n"+
		"A crown's height grows toward the head, from a plate parallel to the block face; as a depth\n"+
		"under the face it has a minus.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.String("working", "", "write out the working of the line hone at one `HOUSING`, such as \"main 2\"")
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
