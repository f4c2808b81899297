// Undersize answers: may the mains and the crankpins of this shaft run on as they
// are, and else which undersize cleans up all of them, which journal forces it, and
// what is each ground to?
//
// Method: a journal's greatest clean size is finished − 2 × greatest wear of a side −
// 2 × stock on its original throw, least diameter − run-out − 2 × stock on a main
// with a bend left in it. Diameters don't tell which side is worn, so from diameters
// alone it is known only between finished − 2e and finished − e, e being what the
// least diameter lost. It cleans up for a shell whose printed band begins at that
// size or below. One undersize for all mains, and one for all crankpins.
//
// Source: geometry, checked in package crank; that thin shells go on without
// grinding, and that where one is ground all are, by the rule of US Army TM
// 5-3805-262-34, p. 4-24. The shaft in shaft.json is invented.
//
// For: shop software, instructors.
//
// Caution: "can't tell" is not a pass, and the engine maker's manual governs. A
// nitrided or built-up journal isn't ground without the maker's process, nor is a
// nitrided shaft straightened. Test every shaft for cracks before and after
// grinding, and restore the fillets: a shaft breaks there. Lift it with a hoist and
// stand it on end or in blocks.
package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed shaft.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("undersize", "Which undersize do the journals of this crankshaft ask for?\n\n"+
		"Without flags it works out an invented shaft. Write your own in a file like\n"+
		"examples/undersize/shaft.json: for the mains and the crankpins the standard sizes, the\n"+
		"shells that can be had, and for each journal a row of sizes for each plane (\"\" where\n"+
		"nothing was read) and, if you have dialled them, its run-out or its sides' wear from the\n"+
		"original axis (heading 0° on a crankpin: away from the mains).", errs)
	source := flags.Input("shaft.json", demo, "the `FILE` with the journals and shells; - for standard input")
	work := flags.String("working", "", "write out the working of one `JOURNAL`, such as \"crankpin 2\"")
	inch := flags.Bool("inch", false, "print in inches")
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
	p := metric
	if *inch {
		p = imperial
	}
	text := s.page(p)
	if *work != "" {
		if text, err = s.working(*work, p); err != nil {
			return flags.Fail(fmt.Errorf("%s: %w", name, err))
		}
	}
	fmt.Fprint(out, text)
	return recipe.Answered
}
