// Roundness answers: how round is this section, by the standard and by the
// trade, what shape is it, and is that within the limit?
//
// Method: the readings are radii at equal angles round the part. Four
// reference circles are laid through them: least squares, minimum zone, maximum
// inscribed and minimum circumscribed. Roundness (RONt) is the greatest less
// the least distance from the centre of one, a difference of radii; the limit
// is held to that of the minimum zone. The trade's out-of-round is a
// difference of diameters: of an oval it is twice as much, and of three lobes
// it is nothing. Harmonics tell the two apart.
//
// Source: terms of ISO 12181-1 (from memory); the circles are checked in
// package tolerance/form against published data. The bore in bore.json is
// invented.
//
// For: shop software, instructors.
//
// Caution: a limit in a manual may mean either figure. The engine maker's manual
// governs.
package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed bore.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("roundness", "How round is this section, what shape is it, and is it within the limit?\n\n"+
		"Without flags it judges an invented bore. Write your own readings in a file like\n"+
		"examples/roundness/bore.json: how far the radius exceeds the nominal one at equal angles,\n"+
		"counter-clockwise, in one unit, and the error of each reading.", errs)
	source := flags.Input("bore.json", demo, "the `FILE` with the readings; - for standard input")
	picture := flags.Bool("picture", false, "write a picture as SVG instead, exaggerated, with its limit: roundness -picture > bore.svg")
	working := flags.Bool("working", false, "write out the trade's out-of-round")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *picture && *working {
		return flags.Fail(errors.New("-working and -picture: one at a time"))
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	s, err := read(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	var page string
	switch {
	case *picture:
		page = s.picture()
	case *working:
		page, err = s.working()
	default:
		page, err = s.page()
	}
	if err != nil {
		return flags.Fail(fmt.Errorf("%s: %w", name, err))
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
