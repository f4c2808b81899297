// Springset answers: are these valve springs fit for use, what do they load the
// valves with at their own heights, how near are they to coil bind, and which
// shims bring each to its height?
//
// Method: loads are read at two heights or more and taken as a straight line
// between them; the rate from wire and coils, G·d⁴/(8·D³·n) with two dead coils
// where the ends are squared, is a check on them. Open height is installed height
// less lift, the margin to coil bind that less the solid height. An inner spring
// stands lower by the step of its seat and retainer. Shims are the fewest in stock
// that bring the whole of a height into its band, and everything is then judged
// again with them.
//
// Source: mechanics, checked in package valvetrain against textbooks and the
// springs of two US Army manuals; that free length alone proves nothing:
// NAVEDTRA 14076. The limits in engine.json are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: a spring under load, and the collets that it holds, can leave the bench
// at the height of an eye: wear eye protection, use the tester's guard and a proper
// compressor, and never stand in line with a spring. The engine maker's manual
// governs.
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
	flags := recipe.Flags("springset", "Are these valve springs fit for use, and which shims bring each to its height?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/springset/engine.json: under outer, and inner where there is one, what the manual says\n"+
		"of the kind; under valves each valve's installed height without shims, and for its springs the\n"+
		"free length, how far the top stands off a square, and loads at two heights or more. wire,\n"+
		"outside, total and shearMPa of a kind go together, and may be left out.\n\n"+
		"A spring under load, and its collets, can leave the bench at the height of an eye: wear eye\n"+
		"protection, and never stand in line with it. The engine maker's manual governs.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.String("working", "", "write out the working of one `VALVE`, such as \"exhaust 1\"")
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
