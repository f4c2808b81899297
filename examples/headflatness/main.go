// Headflatness answers: is this head or block face flat enough, what would a
// skim take, and what becomes of the height and of the compression ratio?
//
// Method: a straight-edge is laid along both edges, both ends and both
// diagonals, and blades are tried under it. A blade that goes in says that the
// gap is at least the blade, one that doesn't that it is less. Each line is
// judged by the limit for its direction; where the straight-edge rocks, by the
// gaps under its two ends held alike. The two diagonals together show a twist,
// which edges and ends don't. A face measured by heights at stations is judged
// by the least distance of two planes that hold it.
//
// Source: the six lines are common practice; what they show and hide is derived
// in package cylinder and checked there by linear programming. The head in
// head.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: a head is heavy and its edges cut: lift it with help or a hoist, set
// it down on wood, never on its valves. Where the camshaft runs in the head its
// tunnel is checked before the face. "Can't tell" is not a pass, and the engine
// maker's manual governs; some heads may not be skimmed at all.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed head.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("headflatness", "Is this face flat enough, what would a skim take, and what is left?\n\n"+
		"Without flags it judges an invented head. Write your own readings in a file like\n"+
		"examples/headflatness/head.json: the blades you have, the manual's limits, and for each line\n"+
		"how the straight-edge lay (rests or rocks) and which blades went in (free, drag, forced, refused).", errs)
	source := flags.Input("head.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.Bool("working", false, "write out the working of the skim")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	doc, err := inspect(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	page, err := doc.page(*working)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
