// Compressionratio answers: what compression ratio does this engine have, what
// becomes of it when it is rebored or skimmed, and what would give another?
//
// Method: ratio = 1 + swept volume / clearance volume. The clearance volume is
// the chamber, the hole in the compressed gasket, the deck (which is above zero
// where the piston stops below the block face and below zero where it stands
// above it), the crown (a dish adds, a dome takes away) and, if given, the
// crevice above the top ring. Sizes may carry their errors, "45 ±0.2 cm³": the
// ratio is then the least and the greatest over all of them.
//
// Source: the formulas are geometry, checked in package cylinder against
// textbook examples. The engine of the defaults is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: measure with fuel and ignition disabled, since the engine is turned.
// Take the gasket's compressed thickness from its maker. A higher ratio needs
// fuel to match, and a lower squish can let piston meet head or valves. The
// engine maker's manual governs.
package main

import (
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/recipe"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, _ io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("compressionratio", "What compression ratio does this engine have, and what would change it?\n\n"+
		"Without flags it works out an invented engine. Write sizes with their units, and if you like\n"+
		"with their errors: -bore \"86.02 ±0.01 mm\" -chamber \"45 ±0.2 cm³\" -deck \"0.30 mm below\".", errs)
	var g given
	bore := flags.String("bore", "86 mm", "the cylinder's `DIAMETER`")
	stroke := flags.String("stroke", "86 mm", "the `STROKE`, twice the crank's throw")
	flags.IntVar(&g.cylinders, "cylinders", 4, "how `MANY` cylinders")
	chamber := flags.String("chamber", "45 cm³", "the `VOLUME` of the chamber in the head, filled level under a flat plate")
	gasketBore := flags.String("gasketbore", "87.5 mm", "the `DIAMETER` of the hole in the head gasket")
	gasket := flags.String("gasket", "1.20 mm", "the gasket's compressed `THICKNESS`")
	deck := flags.String("deck", "0.30 mm below", "where the crown's edge `STANDS` at top dead centre: below or above the block face, or level")
	dish := flags.String("dish", "", "the `VOLUME` of the crown's dish and valve pockets")
	dome := flags.String("dome", "", "the `VOLUME` of the crown's dome")
	fillDepth := flags.String("filldepth", "", "for a down-fill: how `DEEP` the crown's edge lay below the block face")
	fill := flags.String("fill", "", "for a down-fill: the `VOLUME` that filled the bore level with the face")
	landDiameter := flags.String("landdiameter", "", "the top land's `DIAMETER`, to count the crevice above the top ring")
	landHeight := flags.String("landheight", "", "the top land's `HEIGHT` above the ring")
	flags.Float64Var(&g.build.OpenAreaMM2, "area", 0, "the chamber's open area at the head's face in `MM²`, for a skim of the head")
	rebore := flags.String("rebore", "", "work out a rebore to this `DIAMETER`")
	skim := flags.String("skim", "", "work out this `CUT` off the head")
	blockSkim := flags.String("blockskim", "", "work out this `CUT` off the block face")
	flags.IntVar(&g.teeth, "teeth", 0, "the `TEETH` of the camshaft's sprocket, for a camshaft driven from below by belt or chain")
	pitch := flags.String("pitch", "", "the `PITCH` of that belt or chain")
	pistons := flags.String("pistons", "", "the decks of `ALL` pistons, for the squish: \"0.04 mm below; 0.06 mm above\"")
	squish := flags.String("squish", "", "the manual's `LIMITS` of the squish")
	wanted := flags.String("wanted", "", "say what would give this `RATIO`, such as 10.5")
	flags.BoolVar(&g.working, "working", false, "write out the working")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	var r reader
	g.build.Bore, g.build.Stroke = length(&r, "bore", *bore), length(&r, "stroke", *stroke)
	g.build.Chamber = volume(&r, "chamber", *chamber)
	g.build.Gasket = cylinder.Gasket{Bore: length(&r, "gasketbore", *gasketBore), Thickness: length(&r, "gasket", *gasket)}
	g.build.Deck = read(&r, "deck", *deck, cylinder.ParseDeck)
	g.build.Crown = cylinder.Crown{Dish: volume(&r, "dish", *dish), Dome: volume(&r, "dome", *dome),
		FillDepth: length(&r, "filldepth", *fillDepth), Fill: volume(&r, "fill", *fill)}
	g.build.Land = cylinder.RingLand{Diameter: length(&r, "landdiameter", *landDiameter), Height: length(&r, "landheight", *landHeight)}
	g.rebore, g.skim, g.blockSkim = length(&r, "rebore", *rebore), length(&r, "skim", *skim), length(&r, "blockskim", *blockSkim)
	g.machining(&r, *rebore, *skim)
	g.chain(&r, *pitch)
	g.pistons(&r, *pistons, *squish)
	g.ratio(&r, *wanted)
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
