// Oilpump answers: is this oil pump fit for use, by its clearances and its relief
// spring, and if not, do new gears put it right or is the body worn?
//
// Method: a blade that goes in says that the gap is at least the blade, the next
// one that doesn't that it is less; that bracket is judged against the limits.
// The end clearance is what the straight-edge shows (below zero where the gears
// stand proud), the compressed gasket and the wear of the cover. With new gears
// it is that and the used width less the new. The relief valve opens where the
// spring's load over the valve's area is the oil's pressure.
//
// Source: the arithmetic is geometry and statics; the way of measuring is that
// of US Army manuals (TM 10-3930-638-24&P, TM 5-6115-400-35). The limits in
// engine.json are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: a spring under load can jump: wear eye protection, and take the
// relief valve's plug out slowly. Fill a pump with oil before it is first turned.
// "Can't tell" is not a pass, and the engine maker's manual governs.
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
	flags := recipe.Flags("oilpump", "Is this oil pump fit for use, by its clearances and its relief spring?\n\n"+
		"Without flags it judges an invented pump. Write your own in a file like\n"+
		"examples/oilpump/engine.json: the kind (gear, rotor or crescent), the blades you have, and\n"+
		"for each measure its limits and where which blades went in (free, drag, refused), or what\n"+
		"was read as a size. For the end clearance try under a straight-edge across the body; where\n"+
		"the gears stand proud of it, say \"proud\": true and try between straight-edge and body.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.Bool("working", false, "write out the working of the end clearance and the relief spring")
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
	fmt.Fprint(out, page+"\nFill the pump with oil before it is first turned. The engine maker's manual governs.\n")
	return recipe.Answered
}
