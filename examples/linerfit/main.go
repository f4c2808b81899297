// Linerfit answers: do these cylinder liners stand and fit as they should,
// which shims put wet ones right, and how are dry ones got in?
//
// Method: a wet liner's protrusion over another shim is the measured one less
// the old shim plus the new; of all ways to lay the shims in stock it takes
// one that brings every place into its band and every step between neighbours
// within its limit. A dry liner's interference is its outside diameter less
// the block's bore; pressure and stresses are those of two pressed rings
// (Lamé), and the temperatures those at which expansion gives the gap wanted.
//
// Source: the arithmetic is geometry and elasticity, checked in package
// cylinder against a textbook and a boundary-value problem; the limits are the
// engine maker's, those in engine.json are invented.
//
// For: shop software, instructors.
//
// Caution: heat in an oven, never with a flame, and wear gloves; dry ice and
// liquid nitrogen displace the air (asphyxia) and burn by cold; pressed parts
// can jump: stand behind a guard. The engine maker's manual governs.
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
	flags := recipe.Flags("linerfit", "Do these cylinder liners stand and fit as they should, and what puts them right?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/linerfit/engine.json: under wet the protrusions of wet liners and the shims you\n"+
		"have, under dry the sizes of dry liners and their bores. Either may be left out.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.String("working", "", "write out the working of one `LINER`, such as \"cylinder 2\"")
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
