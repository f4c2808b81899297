// Camtiming answers: how is this camshaft timed, at which lift, does it agree with
// the manual, and what does its lift curve say?
//
// Method: an event is counted before or after its own dead centre, and is below
// zero on the other side: an inlet valve that opens 10° after top dead centre is
// −10°, or its duration comes out 20° too long. Duration is near + 180° + far, the
// centre (mid-open) half of it less near, overlap the two near events, separation
// half the sum of the centres in degrees of the camshaft, advance half their
// difference in degrees of the crankshaft. With a table of lifts the events are
// found on a curve through it, and mid-open is set beside the greatest lift, from
// which it differs on an asymmetric lobe.
//
// Source: definitions; TM 9-8000 and published worked examples, the sign trap among
// them; the curves against scipy, in package valvetrain. The engine in engine.json
// is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: find dead centre first (recipe deadcentre). Turn the engine by hand with
// the plugs out, always the same way: with the timing wrong a valve can meet a
// piston, so stop where it stops. The engine maker's manual governs.
package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("camtiming", "How is this camshaft timed, at which lift, and does it agree with the manual?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/camtiming/engine.json: for each valve the wheel's readings of opening and closing with\n"+
		"their error (\"opens\": \"-10 ±0.5°\" for 10° AFTER its dead centre), or a table of lifts by degrees of\n"+
		"the crankshaft from top dead centre at overlap. Say under at which lift the events are.\n\n"+
		"Turn by hand with the plugs out, one way only, and stop where it stops: valve and piston may have\n"+
		"met. The tension of a belt is set by the engine maker's manual, which governs.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	picture := flags.Bool("svg", false, "write a picture of the lift curves instead")
	work := flags.Bool("working", false, "write out the working")
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
	if *picture {
		p := e.picture()
		if p == "" {
			return flags.Fail(errors.New("-svg: no valve of the file has a table of lifts to draw"))
		}
		fmt.Fprint(out, p)
		return recipe.Answered
	}
	page := e.page()
	if *work {
		solution, err := e.working()
		if err != nil {
			return flags.Fail(err)
		}
		page += solution
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
