// Gudgeonpin answers: are these gudgeon pins and their holes fit for use, which
// grade goes with which boss, and how hot must a rod or piston be for a pin to
// go in?
//
// Method: a clearance is the hole less the pin, the least hole with the greatest
// pin and the other way round, where the pin lies in it; a pressed pin has the
// interference instead. Ovality and taper are of the worst section and
// direction. End float is what lies between the seated circlips less the pin.
// Temperatures are those at which two bodies free to expand leave the gap that
// is asked for, by the least hole and the greatest pin.
//
// Source: the arithmetic is geometry and linear expansion, checked in package
// piston; that pins may wear 0.001 in is TM 10-3930-647-14&P. The engine in
// engine.json, with its colours, is invented.
//
// For: shop software, instructors.
//
// Caution: circlips fly: guard your eyes, and fit new ones. Heat pistons and
// rods in an oven or by induction, never with a flame (an alloy piston that was
// overheated is soft and doesn't show it), no hotter than the maker allows, with
// dry gloves and a face shield. Press with the maker's tooling, never on the
// skirt, from behind a guard. The engine maker's manual governs.
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
	flags := recipe.Flags("gudgeonpin", "Are these gudgeon pins and their holes fit for use, and how are they put together?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/gudgeonpin/engine.json: the manual's limits; of each piston the pin where it\n"+
		"lies in the bosses and where the small end is, the bosses and the small end, each\n"+
		"section in the same directions; the end float's two lengths; and, where you have them,\n"+
		"the maker's grades and the metals and temperatures for assembly. Leave out the rest.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	inch := flags.Bool("inch", false, "print in inches")
	working := ""
	flags.Func("working", "write out the working of one `PISTON`, such as \"piston 2\"", func(name string) error {
		if working = name; name == "" { // an empty variable: the whole page must not stand for it
			return errors.New("no piston is named, such as \"piston 2\"")
		}
		return nil
	})
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
	p := metric
	if *inch {
		p = imperial
	}
	page := e.page
	if working != "" {
		page = func(p printer) (string, error) { return e.working(p, working) }
	}
	text, err := page(p)
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}
