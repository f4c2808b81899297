// Pistonposition answers: where is the piston at each crank angle, how fast does
// it go, and at which two crank angles is it at a place?
//
// Method: the exact geometry of crank and rod, the offset of the gudgeon pin
// included, x = throw + rod − throw·cos θ − √(rod² − throw²·sin²θ) without one.
// Angles count from top dead centre, where crank and rod are in line, which with
// an offset is not where the throw stands upright.
//
// Source: geometry, checked in package crank against a government manual's pair,
// textbooks and high-precision arithmetic; the engine of the defaults is
// invented. Handbooks that work with the two-term series print other numbers:
// -series shows them beside.
//
// For: instructors, hobbyists.
//
// Caution: turn the engine by hand, with fuel and ignition disabled, and keep
// clear of what moves. A positive stop bends what it meets: turn gently, and
// find it 15° or more from top dead centre. The engine maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("pistonposition", "Where is the piston at each crank angle, and how fast does it go?\n\n"+
		"Without flags it tabulates an invented engine. Write sizes and angles with their units:\n"+
		"-throw \"1.5 in\" -rod \"6 in\" -from 0° -to 360° -step 10°. The throw is half the stroke, but\n"+
		"for an engine with an offset, whose stroke is a little more. -find 0.050in gives the two\n"+
		"crank angles at which the piston is that far below top dead centre, as for a dial gauge.", errs)
	var g given
	throw := flags.String("throw", "43 mm", "the crank's `THROW`, from the shaft's axis to the crankpin's")
	rod := flags.String("rod", "143.5 mm", "the rod's `LENGTH` between the centres of its eyes")
	offset := flags.String("offset", "0 mm", "the gudgeon pin's `OFFSET` from the crankshaft's axis: above zero on the thrust side, where the crankpin rises")
	flags.Float64Var(&g.rpm, "speed", 3000, "the crankshaft's revolutions per `MINUTE`")
	from := flags.String("from", "0°", "the table's first crank `ANGLE` after top dead centre")
	to := flags.String("to", "180°", "the table's last crank `ANGLE`")
	step := flags.String("step", "15°", "the table's `STEP`")
	find := flags.String("find", "", "say at which two crank angles the piston is this `FAR` below top dead centre")
	flags.BoolVar(&g.series, "series", false, "show beside it what the two-term series of handbooks gives (without offset only)")
	working := flags.String("working", "", "write out the working at this crank `ANGLE`")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	var r reader
	g.slider = crank.SliderCrank{Throw: read(&r, "throw", *throw, units.ParseLength), Rod: read(&r, "rod", *rod, units.ParseLength), Offset: read(&r, "offset", *offset, units.ParseLength)}
	g.from, g.to, g.step = read(&r, "from", *from, units.ParseAngle), read(&r, "to", *to, units.ParseAngle), read(&r, "step", *step, units.ParseAngle)
	if *find != "" {
		g.find, g.finds = read(&r, "find", *find, units.ParseLength), true
	}
	if *working != "" {
		g.at, g.works = read(&r, "working", *working, units.ParseAngle), true
	}
	if r.err != nil {
		return flags.Fail(r.err)
	}
	page, err := g.page()
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
