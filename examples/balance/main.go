// Balance answers: which bobweight goes on each crankpin, is the crankshaft
// balanced well enough, and if not, which holes or which plug put it right?
//
// Method: a bobweight is all that rotates on the crankpin and the balance
// factor's part of all that reciprocates on it. The permissible residual
// unbalance follows from grade, mass and speed, U = 1000·G·m/ω, and is split to
// the bearings by the lever; the machine's readings are brought there as
// vectors. A hole is a cylinder with the drill's cone, whose mass centre moves
// inward as it gets deeper; a plug of tungsten alloy counts at its density less
// that of the steel it replaces.
//
// Source: the formula of ISO 21940-11; bobweights and factors are common
// practice; holes are checked in package crank against numerical integration.
// The engine in engine.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: a shaft that spins stores energy: guard, clamps and bobweights tight,
// nobody in its plane. Plugs go in parallel to the shaft, so that they can't fly
// out, and are locked. Drill less than reckoned, never into an oil way, a fillet
// or a journal, nor deeper than the maker allows; wear eye protection. The
// engine maker's manual governs.
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
	flags := recipe.Flags("balance", "Which bobweights, is the crankshaft in balance, and what puts it right?\n\n"+
		"Without flags it works out an invented V8. Write your own in a file like\n"+
		"examples/balance/engine.json: under crankpins what was weighed, under rotor what the\n"+
		"balancing machine shows, in g·mm (1 oz·in is 720.08 g·mm), with its heavy places. Each may\n"+
		"be left out. drill is how holes are drilled in the heavy side; planes named under light\n"+
		"have no counterweight there to drill and get a plug opposite instead.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the weights and readings; - for standard input")
	working := flags.Bool("working", false, "write out the working")
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
		var more string
		more, err = e.working()
		page += more
	}
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, page+"\nGuard the spinning shaft. The engine maker's manual governs; this is arithmetic\non what was given.\n")
	return recipe.Answered
}
