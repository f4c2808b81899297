// Boresurvey answers: are these bores fit for use; where are they worn the
// most, how far out of round and tapered, and what would settle a doubt?
//
// Method: each bore is gauged at several levels, along and across the crank or
// in more directions. The error of the ring that a dial bore gauge is set on is
// in all readings alike, so it counts once in a size and not at all in taper and
// out-of-round. Wear counts from the size that the bore was last finished to.
// Two directions miss an oval that lies between them, so an out-of-round is at
// least what was read.
//
// Source: that out-of-round is judged at each station, and each oversize has
// its own limits, is as US Army TM 9-2815-220-24 has it; the arithmetic is
// geometry, checked in package cylinder. The engine in engine.json is invented.
//
// For: shop software, instructors.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs.
// Lift a block with a hoist and its own eyes; ridges and rings cut.
package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("boresurvey", "Are these bores fit for use, and where are they worn?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/boresurvey/engine.json: the gauge and what it was set on, the manual's limits,\n"+
		"and what it showed at each level in each direction, 0° along the crank and 90° across.\n"+
		"A dash is a reading that was not taken. A micrometer that shows sizes has no \"setting\".", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	inch := flags.Bool("inch", false, "print in inches")
	work := flags.String("working", "", "write out the working of this `CYLINDER`")
	draw := flags.String("picture", "", "write a picture of this `CYLINDER` as SVG, its wear exaggerated: boresurvey -picture 2 > bore2.svg")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *work != "" && *draw != "" {
		return flags.Fail(errors.New("-working and -picture: one at a time"))
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	e, rows, err := inspect(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	p := metric
	if *inch {
		p = imperial
	}
	p = p.fine(e.Gauge.Step)
	var text string
	switch {
	case *work != "":
		text, err = one(rows, *work, p, working)
	case *draw != "":
		text, err = one(rows, *draw, p, picture)
	default:
		text, err = page(e, rows, p)
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}

// one writes what is asked of one cylinder.
func one(rows []row, number string, p printer, write func(row, printer) (string, error)) (string, error) {
	for _, r := range rows {
		if strconv.Itoa(r.number) == number {
			return write(r, p)
		}
	}
	return "", fmt.Errorf("the file has no cylinder %.64q", number)
}
