// Pistontovalve answers: how near do valve and piston come, at which crank angle,
// and how far may the camshaft be moved before they are too near?
//
// Method: at top dead centre the valve is pushed open until it touches the piston:
// that is the drop, along the valve. While the piston falls by x and the valve
// lifts, the clearance along the valve is drop + x·cos ψ − lift, ψ being the
// valve's angle to the bore: leaving it out errs on the unsafe side. The least is
// sought over the whole curve through the table of lifts, with every bracket and
// error on the dangerous side, and rounded down.
//
// Source: geometry, checked in package valvetrain against a general optimiser; the
// engine in engine.json and its limits are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: where a valve can meet a piston, turn the engine by hand with the plugs
// out, and stop where it stops. Valve springs can leave the bench at the height of
// an eye. What heat, stretch and speed take is the user's own allowance here; the
// clearance that is wanted is the engine maker's, whose manual governs.
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
	flags := recipe.Flags("pistontovalve", "How near do valve and piston come, and how far may the camshaft be moved?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/pistontovalve/engine.json: throw (half the stroke) and rod, and for each valve the drop\n"+
		"at top dead centre along the valve, its angle to the bore, and a table of lifts AT THE VALVE by\n"+
		"degrees of the crankshaft from top dead centre at overlap, below zero before it.\n\n"+
		"Turn by hand with the plugs out, and stop where it stops: what doesn't turn is bent by force. The\n"+
		"clearance is rounded toward the dangerous side. The engine maker's manual governs.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	picture := flags.Bool("svg", false, "write a picture of the clearance by crank angle instead")
	work := flags.Bool("working", false, "write out the clearance where it is least")
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
		fmt.Fprint(out, e.picture())
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
