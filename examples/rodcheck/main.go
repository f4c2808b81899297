// Rodcheck answers: are these connecting rods straight, of the right length, and
// fit for use, with their big ends and their bolts?
//
// Method: a rod stands in a fixture that was set to zero by a master. Two dials on
// its pin give the length against the master (half their sum, signs included)
// and the bend (the larger less the smaller). Twist is read across, and both are
// carried from the span that they were read over to 100 mm, or what the manual
// names. Big ends are gauged in several planes and directions; side clearance is
// width from width, or by blades; a bolt's stretch is tightened less free
// length, and its free length says whether it may be used again.
//
// Source: rules of US Army TM 9-2815-226-34-1 and FAA-H-8083-32; the rest is
// arithmetic of lengths. The rods in rods.json are invented.
//
// For: shop software, instructors.
//
// Caution: never file a cap or a rod. A rod with a cracked (fracture split) cap is
// not straightened, and its cap fits no other rod. Bolts that are tightened to
// yield are used once. The engine maker's manual governs.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed rods.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("rodcheck", "Are these connecting rods straight, of the right length, and fit for use?\n\n"+
		"Without flags it judges invented rods. Write your own readings in a file like\n"+
		"examples/rodcheck/rods.json: the limits, and for each rod the two dials on its pin (above zero\n"+
		"for longer than the master), the twist, the big end's diameters and the bolts. What you\n"+
		"didn't read you leave out; a diameter is then a dash.", errs)
	source := flags.Input("rods.json", demo, "the `FILE` with the readings; - for standard input")
	working := flags.String("working", "", "write out the working of one `ROD`, such as \"rod 2\"")
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
	if *working != "" {
		if page, err = s.working(*working); err != nil {
			return flags.Fail(fmt.Errorf("%s: %w", name, err))
		}
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
