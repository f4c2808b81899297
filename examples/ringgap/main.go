// Ringgap answers: are these rings' end gaps right all along their travel, what
// must be filed off where they aren't, and how hot may the rings get before
// their ends touch?
//
// Method: a ring's gap in another place of its bore is the one that was read
// plus π times the change of the mean diameter. The greatest, where the bore is
// most worn, is judged against the upper limit, and the least, at the smallest
// place, against the lower. Since a ring bends about its middle line, the gap
// between the edges of its face changes by a few per cent more, and between
// those of its back by less: brackets hold both, and the heat closes the face's.
//
// Source: geometry and linear expansion, checked in package piston against a
// bent beam; that the gap is read near both ends of the travel is from
// NAVEDTRA 14076, p. 3-15, the rule of 3 for 1 from TM 5-3805-261-34, p. 13-46.
// Expansion coefficients have their source in package piston. The engine in
// engine.json is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: ends that butt score the bore and break lands. "Can't tell" is not a
// pass, and the engine maker's manual governs. Ring ends are sharp and rings
// spring: wear eye protection; file from the face inward.
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
	flags := recipe.Flags("ringgap", "Are these rings' end gaps right, what must be filed, and when do they butt?\n\n"+
		"Without flags it judges an invented engine. Write your own readings in a file like\n"+
		"examples/ringgap/engine.json: for each ring its limits; for each cylinder the bore's\n"+
		"diameters at top and bottom of the rings' travel, in two directions or more that stand\n"+
		"evenly round, and the gaps read there, by blades (\"0.35 mm drag, 0.40 mm refused\") or\n"+
		"directly. One place will do: the bore's diameters carry the gap to the others. Push the\n"+
		"ring square with a piston's crown. With temperatures it tells where the ends touch.", errs)
	source := flags.Input("engine.json", demo, "the `FILE` with the readings; - for standard input")
	work := ""
	flags.Func("working", "write out the working of one `RING`, such as \"2 top\"", func(name string) error {
		if work = name; name == "" { // an empty variable: the whole page must not stand for it
			return errors.New("no ring is named, such as \"2 top\"")
		}
		return nil
	})
	inch := flags.Bool("inch", false, "print in inches")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	e, rows, err := read(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	p := metric
	if *inch {
		p = imperial
	}
	text := ""
	if work != "" {
		if text, err = working(e, rows, work, p); err != nil {
			return flags.Fail(fmt.Errorf("%s: %w", name, err))
		}
	} else {
		text = page(e, rows, p)
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}
