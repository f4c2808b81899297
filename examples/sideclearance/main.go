// Sideclearance answers: are these ring grooves fit for use, and where they
// aren't, would a new ring do or is the groove worn?
//
// Method: a feeler blade that goes in says that the clearance is at least the
// blade, one that doesn't that it is less. The two leave a bracket, which is
// judged against the limits. Where the bracket has a limit in it, the answer
// is "can't tell", with what would settle it. What a new ring would do follows
// from the used ring's height: new clearance = clearance + used − new height.
//
// Source: the arithmetic is geometry; that the gap is confirmed by the next
// blade not entering is measuring practice (JIS B 7524, as cited in package
// feeler); limits of 0.03 to 0.07 mm are common practice. The engine in
// engine.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs.
// Ring ends and groove edges cut; never force a blade.
package main

import (
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("sideclearance", "Are these ring grooves fit for use, judged by feeler blades?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/sideclearance/engine.json: the blades you have, the manual's limits, and for\n"+
		"each groove which blades you tried and how they went in:\n\n"+
		"  free     slides without touching both faces\n"+
		"  drag     slides with a light, even drag: the gap is at least the blade\n"+
		"  forced   goes in by force only; counts as refused, and may have scored the parts\n"+
		"  refused  does not go in: the gap is less than the blade\n\n"+
		"Hold the ring flush in its clean groove, so that it can't tip, and try several places\n"+
		"round the piston. \"Can't tell\" is not a pass. The engine maker's manual governs.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	groove := flags.String("working", "", "write out the working of one `GROOVE`, such as \"3 second\" for piston 3, second ring")
	plan := flags.String("plan", "", "say in which order to try the blades for this `RING`, and what they can't decide")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	// A flag that is given and would be passed over is a slip, such as an empty
	// variable after -in: the invented engine's answer must not stand for it.
	given := map[string]bool{}
	flags.Visit(func(f *flag.Flag) { given[f.Name] = true })
	if given["working"] && given["plan"] {
		return flags.Fail(errors.New("-working and -plan are two questions: ask one at a time"))
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	e, set, rows, err := inspect(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	var page string
	switch {
	case given["working"]:
		page, err = workingOf(rows, *groove)
	case given["plan"]:
		page, err = plans(e, set, *plan)
	default:
		page = table(e, set, rows)
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
