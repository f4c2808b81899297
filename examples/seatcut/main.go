// Seatcut answers: how wide is this valve seat and where does it lie on the
// valve, which cuts bring it to the width and place wanted, and what do they do
// to the valve's height, the spring, the tip and the chamber?
//
// Method: seat, cutters and throat are cones, straight lines at angles from the
// plane square to the stem. The outer diameter is the inner one and twice the
// width times the cosine of the angle; a cutter fed along the stem moves the edge
// inward, or outward, by the feed over the difference of the tangents. The seat
// itself is cut first, as deep as clean-up and the wanted edges ask, and that,
// with what the face is ground by, lets the valve sink.
//
// Source: geometry, checked in package valvetrain against meeting points of lines
// and integrals of mpmath. Without flags the sizes are invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: guides come first, for the seat is cut from them. Dust of seats of
// beryllium alloy harms the lungs for life; wear eye protection at the grinder; a
// valve filled with sodium is never cut, drilled or ground into. The engine
// maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/internal/recipe"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("seatcut", "How wide is this valve seat, which cuts bring it to size, and what do they do?\n\n"+
		"Angles count from the plane square to the stem, so that a flat chamber is 0° and a straight\n"+
		"throat 90°; say -count stem where yours count from the stem, or -count included where they\n"+
		"are the whole angle of the cone. Sizes may carry their error: \"30.0 ±0.1 mm\". Feeds count along\n"+
		"the stem, from where the cutter just touches the seat.\n\n"+
		"Find out what the seats are made of first: dust of beryllium alloy harms the lungs for life. Never\n"+
		"cut, drill or grind into a valve filled with sodium. The engine maker's manual governs.", errs)
	g := given{}
	flags.StringVar(&g.count, "count", "square", "how angles count: `square`, stem or included")
	flags.StringVar(&g.angle, "angle", "45°", "the seat's `angle`")
	flags.StringVar(&g.above, "above", "30°", "the `angle` of the cutter from above")
	flags.StringVar(&g.below, "below", "60°", "the `angle` of the cutter from below")
	flags.StringVar(&g.throat, "throat", "", "the `angle` of the throat that is there, where it isn't the lower cutter's")
	flags.StringVar(&g.outer, "outer", "30.0 ±0.05 mm", "the seat's outer `diameter` now")
	flags.StringVar(&g.inner, "inner", "27.0 ±0.05 mm", "the seat's inner `diameter` now")
	flags.StringVar(&g.wantOuter, "want-outer", "30.0 mm", "the outer `diameter` wanted")
	flags.StringVar(&g.wantWidth, "want-width", "1.5 mm", "the `width` wanted, along the cone")
	flags.StringVar(&g.cleanUp, "clean-up", "0.1 mm", "the least cut of the seat itself, along the stem: a `depth`")
	flags.StringVar(&g.faceCut, "face-cut", "0.1 mm", "what the valve's face was ground by, along the stem: a `depth`")
	flags.StringVar(&g.square, "face-square", "", "the same, square to the face: a `depth`")
	flags.StringVar(&g.faceAngle, "face-angle", "", "the `angle` of the valve's face, where it isn't the seat's")
	flags.StringVar(&g.faceOuter, "face-outer", "31.5 mm", "the face's `diameter` at the margin")
	flags.StringVar(&g.faceInner, "face-inner", "26.0 mm", "the face's `diameter` toward the stem")
	flags.StringVar(&g.head, "head", "32.0 mm", "the `diameter` of the valve's head")
	flags.StringVar(&g.installed, "installed", "40.0 mm", "the spring's installed `height` before the cuts")
	flags.StringVar(&g.tip, "tip", "48.0 mm", "the `height` of the valve's tip before the cuts")
	flags.StringVar(&g.wantTip, "want-tip", "48.0 mm", "the `height` of the tip wanted")
	working := flags.Bool("working", false, "write out the working of the two feeds")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	j, err := g.read()
	if err != nil {
		return flags.Fail(err)
	}
	page, err := j.page()
	if err == nil && *working {
		page, err = j.working()
	}
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}
