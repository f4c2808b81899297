// Matchedset answers: which piston goes in which bore and on which rod, how
// far apart do the set's masses lie, and what is to come off which part?
//
// Method: of all ways to put the pistons in the bores, the one whose clearances
// are all in the wanted band and whose greatest deviation from the wanted
// clearance is least, then the sum of the deviations; of all ways to put them
// on the rods, the one whose totals are most nearly equal. Both are exact, and
// are compared with the set as it is marked. The lightest part governs a set's
// mass. A rod's ends are weighed apart, level, and must make the whole.
//
// Source: exact assignment, checked in package piston against a
// general-purpose library and against every way of pairing; the balance of
// moments for a rod's ends. Limits on a set's mass such as 2 g are printed in
// army manuals; those in set.json are invented, the engine maker's govern.
//
// For: shop software, instructors, hobbyists.
//
// Caution: taking metal off weakens a part: only where the engine maker allows
// it, at the places meant for it, and never from a crown, a skirt or a rod's
// beam. Wear eye protection when grinding. Parts that have run together stay
// together unless the maker says otherwise, and a cap stays with its rod.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed set.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("matchedset", "Which piston goes in which bore and on which rod, and what is to come off which part?\n\n"+
		"Without flags it judges an invented set. Write your own readings in a file like\n"+
		"examples/matchedset/set.json: the bores and the pistons' skirts with their errors and the\n"+
		"clearance wanted; the masses; each rod whole, its big end and its small end on the scale.\n"+
		"bores with clearance, the pistons' masses, and rods may each be left out. pads says how far\n"+
		"the balance pads lie beyond the bores' centres, for what to take off them.", errs)
	source := flags.Input("set.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.Bool("working", false, "write out the working")
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
	page, err := s.page(*working)
	if err != nil {
		return flags.Fail(place(name, data, err))
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
