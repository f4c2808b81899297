// Valveclearance answers: which valves of this head are out of clearance, which
// shim goes where, what has to be bought, and what stays undecided?
//
// Method: blades that go in and that don't bracket each clearance. A shim is
// chosen only if old shim + measured clearance − new shim lands in the band with
// the whole of the brackets, shims being as measured, not as marked. Of all ways
// to use the shims that come out, the drawer's and new ones, the plan is the best:
// most valves in band, fewest shims bought, then the clearances nearest to the
// middles of their bands (an exact assignment).
//
// Source: the arithmetic is geometry; that a gap is confirmed by the next blade
// not going in is measuring practice (JIS B 7524, as cited in package feeler), and
// that a pair of blades proves a set clearance is in US Army instructions
// (TM 5-3820-233-12/1). The plan is checked in package valvetrain against a
// general solver. The head in head.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: measure and set at the temperature the manual says, cold or hot. Turn
// the engine by hand with the plugs out, so that nobody's hand is in the way of a
// stroke. With the camshaft out, pistons clear of the valves; valve springs are
// under load: eye protection. The engine maker's manual governs.
package main

import (
	_ "embed"
	"flag"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed head.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("valveclearance", "Which shim goes under which valve, what must be bought, and what can't be told yet?\n\n"+
		"Without flags it plans an invented head. Write your own readings in a file like\n"+
		"examples/valveclearance/head.json: the clearances the manual wants, and for each valve\n"+
		"which blades you tried (free, drag, forced, refused) and its shim by micrometer. Valves\n"+
		"in band need no shim measured. List spare shims under drawer, and what can be bought\n"+
		"under series.\n\n"+
		"A shim goes in only if the whole bracket of the clearance lands in the band. Measure\n"+
		"cold or hot as the manual says; turn the engine by hand with the plugs out. \"Can't\n"+
		"tell\" is not a pass. The engine maker's manual governs.", errs)
	source := flags.Input("head.json", demo, "the `FILE` with the readings; - for standard input")
	disturb := flags.Bool("disturb", false, "allow shims of valves in band to be used elsewhere, where fewer are bought by it")
	working := flags.String("working", "", "write out the working of one `VALVE`, such as \"inlet 1b\"")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	b, err := read(name, data, *disturb)
	if err != nil {
		return flags.Fail(err)
	}
	page := b.page()
	given := false
	flags.Visit(func(f *flag.Flag) { given = given || f.Name == "working" })
	if given {
		if page, err = b.working(*working); err != nil {
			return flags.Fail(err)
		}
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
