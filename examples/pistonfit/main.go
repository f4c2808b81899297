// Pistonfit answers: do these pistons fit their bores, worn, collapsed or oval
// as they may be; and what is left of the clearance when they are hot?
//
// Method: the least clearance is the least bore less the greatest skirt, the
// greatest the other way round, each reading with its error, and the skirt
// measured across the thrust faces at the height the manual names. Collapse is
// against the new size at the same height. A feeler strip's pull is read by a
// rule, and the answer names the rule, since manuals' rules disagree; with
// several rules each answer is printed. The hot clearance is that of two bodies
// free to expand, at the temperatures given.
//
// Source: the pull rules are those of US Army TM 9-2815-202-34 and TM
// 10-3930-653-14&P; the rest is geometry and linear expansion, checked in
// package piston. The engine in engine.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs.
// Pistons, rings and feeler strips have sharp edges; circlips fly: guard your
// eyes. Keep fingers out of a bore that a piston may drop through.
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
	flags := recipe.Flags("pistonfit", "Do these pistons fit their bores, cold and hot?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/pistonfit/engine.json: the manual's limits and the height it has the skirt\n"+
		"measured at; of each piston its bore, its skirt from the lower edge up, across the\n"+
		"thrust faces and along the pin; the pulls of a feeler strip with strip and scale; and,\n"+
		"for the hot clearance, metals and temperatures. What you didn't measure, leave out.", errs)
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
