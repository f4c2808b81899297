// Oversize answers: which oversize cleans up all bores of a block, which one
// forces it, and would a liner and a smaller size do instead?
//
// Method: the bored wall must lie beyond every worn one by the least cut, with a
// straight bar at one place for all levels, and honing takes its stock off the
// diameter: least size = 2 × greatest distance of a wall from the bar + 2 × cut +
// hone. A diameter doesn't tell which wall is worn, so from diameters alone the
// size is known only between finished + e and finished + 2e. A size is the
// measured piston's with its clearance, not the nominal step.
//
// Source: geometry, checked in package cylinder; oversize steps, the least cut
// and the hone's stock are common practice. The engine in engine.json is
// invented.
//
// For: shop software, instructors.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs.
// Plated, coated and bare alloy bores are not bored without the maker's process.
// Boring and honing throw dust and oil mist: guard eyes and lungs, and lift the
// block with a hoist.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("oversize", "Which oversize cleans up all bores of this block?\n\n"+
		"Without flags it works out an invented engine. Write your own in a file like\n"+
		"examples/oversize/engine.json: for each bore the size it was last finished to, its\n"+
		"greatest diameter and, if you have dialled them, its walls' wear from the original axis\n"+
		"(heading 0° along the crank, 90° across); the kits that can be had; and if you like the\n"+
		"pistons as measured, walls read with an ultrasonic gauge, stock and prices.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the bores and kits; - for standard input")
	centring := flags.String("bar", "", "set the bar up `HERE` instead: \"original axis\" or \"moved to the worn bore\"")
	work := flags.String("working", "", "write out the working of this `CYLINDER`")
	inch := flags.Bool("inch", false, "print in inches")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	var bar *cylinder.Centring
	if *centring != "" {
		bar = new(cylinder.Centring)
		if err := bar.UnmarshalText([]byte(*centring)); err != nil {
			return flags.Fail(err)
		}
	}
	e, job, choice, err := read(name, data, bar)
	if err != nil {
		return flags.Fail(err)
	}
	p := metric
	if *inch {
		p = imperial
	}
	var text string
	if *work != "" {
		text, err = working(e, job, choice, *work, p)
	} else {
		text, err = page(e, job, choice, p)
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}
