// Camwear answers: are this camshaft's lobes and journals fit for use, which lobe
// has lost most, and what does the valve still lift?
//
// Method: lobe lift is height less base circle; both are measured at each lobe,
// near both edges, and the loss is against a new lobe's. At the valve the lift is
// the lobe's times the rocker ratio, less the clearance. Journals are judged by
// diameter, out-of-round and clearance, the shaft by the run-out of its middle,
// half of which is the bend, and by end float. Readings are brackets: a limit
// that lies within one is left open.
//
// Source: definitions, checked in package valvetrain; run-out and clearance as
// US Army TM 9-2815-202-34 judges them (0.002 in; 0.009 in used). The camshaft in
// camshaft.json and its limits are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: valve springs push on a camshaft while its caps come off: slacken them
// evenly as the manual says, or the shaft breaks. Renew the followers with a
// camshaft. The engine maker's manual governs.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed camshaft.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("camwear", "Are this camshaft's lobes and journals fit for use, and which lobe has lost most?\n\n"+
		"Without flags it judges an invented camshaft. Write your own readings in a file like\n"+
		"examples/camwear/camshaft.json: under kinds what the manual says of a lobe of each kind, then each\n"+
		"lobe's heights and base circles, each journal across its ways with its bearing, the run-out of\n"+
		"the middle, and the end float. Write readings with their error: \"44.58 ±0.005 mm\".\n\n"+
		"Valve springs push on the camshaft: slacken its caps evenly, with the pistons clear of the valves.\n"+
		"The engine maker's manual governs.", errs)
	source := flags.Input("camshaft.json", demo, "the `FILE` with the readings; - for standard input")
	lobe := flags.String("working", "", "write out the working of one `LOBE`, such as \"inlet 2\"")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	s, err := read(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	page := s.page()
	if *lobe != "" {
		solution, err := s.working(*lobe)
		if err != nil {
			return flags.Fail(fmt.Errorf("%s: %w", name, err))
		}
		page += solution
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
