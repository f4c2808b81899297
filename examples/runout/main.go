// Runout answers: is this crankshaft bent, where, which way and by how much, and
// what of its run-out is only the journals' own shape?
//
// Method: the shaft turns on two supports, and a dial is read at several places
// round each journal, from one mark. The greatest less the least reading is the
// run-out (total indicator reading). Half of that is the bend only where the
// journal is round; the first harmonic of the readings is the eccentricity
// whether it is or not. What the two supports themselves run out is taken off as
// vectors, weighted by position. Neighbouring mains are compared by the length
// of the difference of their vectors, and by the manual's rules for high points
// on one side, opposite and at right angles.
//
// Source: neighbours' rules of US Army TM 9-2815-202-34, p. 4-157; bend as half
// the reading, to be corrected to 0.02 mm, limit 0.05 mm, of TM
// 10-3930-653-14&P. The separation is checked in package crank against numpy. The
// shaft in shaft.json is invented.
//
// For: shop software, instructors.
//
// Caution: lift a shaft with a hoist, keep hands from the webs while it turns.
// A nitrided shaft isn't straightened. The engine maker's manual governs.
package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed shaft.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("runout", "Is this crankshaft bent, where, which way and by how much?\n\n"+
		"Without flags it judges an invented shaft. Write your own readings in a file like\n"+
		"examples/runout/shaft.json: for each journal its place along the shaft and the dial's readings\n"+
		"round it in one unit, from the mark on, at equal angles (12 of them do well), and the limits.", errs)
	source := flags.Input("shaft.json", demo, "the `FILE` with the readings; - for standard input")
	journal := flags.String("journal", "", "one `JOURNAL` alone, for -working and -svg: \"main 3\"")
	picture := flags.Bool("svg", false, "write a polar picture instead: of all centres, or of one journal's readings")
	working := flags.Bool("working", false, "write out the bend of one journal: runout -working -journal \"main 3\"")
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
	at := -1
	if *journal != "" {
		if at = s.find(*journal); at < 0 {
			return flags.Fail(fmt.Errorf("%s: no journal is called %.64q", name, *journal))
		}
	}
	var page string
	switch {
	case *picture && at >= 0:
		page, err = s.journalPicture(at)
	case *picture:
		page = s.picture()
	case *working && at < 0:
		err = errors.New("-working needs a -journal to work out")
	case *working:
		page, err = s.working(at)
	default:
		page = s.page()
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
