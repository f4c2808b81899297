package main

import (
	"fmt"
	"math/rand/v2"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

// A question is one exercise with its answer, which remembers how it is worked
// out.
type question struct {
	name   string
	ask    string
	answer working.Term
	within units.Length // how far off is still right
	unit   units.Unit[units.Length]
	places int
	points int
}

// between is a size on the steps of an instrument.
func between(r *rand.Rand, least, greatest, step units.Length) units.Length {
	return least + units.Length(r.Int64N(int64((greatest-least)/step)+1))*step
}

const (
	micron = units.Micrometre
	mm     = units.Millimetre
	thou   = units.Thou
)

func metric(l units.Length, places int) string { return l.Text(units.InMillimetres, places) }
func inch(l units.Length, places int) string   { return l.Text(units.InInches, places) }

// kinds are the exercises. Each draws its numbers in one order, so that a seed
// goes on meaning the same sheet.
var kinds = []func(*rand.Rand) question{
	func(r *rand.Rand) question {
		groove, ring := between(r, 1540*micron, 1620*micron, 5*micron), between(r, 1470*micron, 1495*micron, 5*micron)
		return question{"side clearance", fmt.Sprintf("A top ring groove is %s wide and the ring %s high. What is the side clearance?", metric(groove, 3), metric(ring, 3)),
			piston.SideClearance(working.Given("groove width", "w", groove), working.Given("ring height", "h", ring)).Named("side clearance", "c"),
			micron, units.InMillimetres, 3, 1}
	},
	func(r *rand.Rand) question {
		clearance, used, fresh := between(r, 60*micron, 110*micron, 5*micron), between(r, 1440*micron, 1470*micron, 5*micron), between(r, 1475*micron, 1490*micron, 5*micron)
		return question{"new ring", fmt.Sprintf("With a used ring of %s the side clearance is %s. What would it be with a new ring of %s?", metric(used, 3), metric(clearance, 3), metric(fresh, 3)),
			piston.ClearanceWithRing(working.Given("clearance", "c", clearance), working.Given("used ring height", "h", used), working.Given("new ring height", "n", fresh)).Named("new clearance", "c₂"),
			micron, units.InMillimetres, 3, 2}
	},
	func(r *rand.Rand) question {
		gap, there := between(r, 250*micron, 450*micron, 50*micron), between(r, 80*mm, 90*mm, 500*micron)
		here := there + between(r, 20*micron, 90*micron, 10*micron)
		return question{"end gap", fmt.Sprintf("A ring's end gap is %s where the bore's mean diameter is %s. What is it where the mean diameter is %s? (3 decimal places)", metric(gap, 2), metric(there, 2), metric(here, 2)),
			piston.RingGapInBore(working.Given("gap", "g", gap), working.Given("bore there", "D₁", there), working.Given("bore here", "D₂", here)).Named("gap here", "g₂"),
			micron, units.InMillimetres, 3, 3}
	},
	func(r *rand.Rand) question {
		finished, wear := between(r, 75*mm, 100*mm, mm), between(r, 40*micron, 180*micron, 10*micron)
		cut, hone := between(r, 10*micron, 20*micron, 5*micron), between(r, 40*micron, 80*micron, 10*micron)
		return question{"least size", fmt.Sprintf("A bore finished to %s is worn %s on one wall. With %s cut from every wall and %s left for honing on the diameter, what is the least size it can be finished to about its original axis?", metric(finished, 3), metric(wear, 2), metric(cut, 3), metric(hone, 2)),
			cylinder.LeastSizeOnAxis(working.Given("finished size", "D₀", finished), working.Given("wear", "w", wear), working.Given("cut per side", "s", cut), working.Given("honing", "h", hone)).Named("least size", "D"),
			micron, units.InMillimetres, 3, 3}
	},
	func(r *rand.Rand) question {
		skirt, clearance := between(r, 79950*micron, 79980*micron, 5*micron), between(r, 25*micron, 60*micron, 5*micron)
		return question{"bore target", fmt.Sprintf("A piston measures %s across its skirt and is to have %s clearance. What size is its bore honed to?", metric(skirt, 3), metric(clearance, 3)),
			cylinder.BoreTarget(working.Given("skirt", "P", skirt), working.Given("clearance", "c", clearance)).Named("bore", "D"),
			micron, units.InMillimetres, 3, 1}
	},
	func(r *rand.Rand) question {
		top := between(r, 35000*thou/10, 36000*thou/10, thou/2)
		bottom := top - between(r, 0, 6*thou, thou/2)
		return question{"taper", fmt.Sprintf("A bore reads %s at the top and %s at the bottom, both across the crank. What is its taper, top less bottom?", inch(top, 4), inch(bottom, 4)),
			cylinder.TaperSigned(working.Given("top", "t", top), working.Given("bottom", "b", bottom)).Named("taper", "x"),
			thou / 10, units.InInches, 4, 1}
	},
	func(r *rand.Rand) question {
		least := between(r, 23600*thou/10, 23620*thou/10, thou/10)
		bend, stock := between(r, 0, 2*thou, thou/2), thou
		return question{"clean size", fmt.Sprintf("The least diameter of a journal is %s, its run-out %s, and %s is to be ground from every side. To what size does it clean up, the run-out taken off too?", inch(least, 4), inch(bend, 4), inch(stock, 4)),
			crank.CleanSizeBent(working.Given("least diameter", "d", least), working.Given("run-out", "r", bend), working.Given("stock per side", "s", stock)).Named("clean size", "d₂"),
			thou / 10, units.InInches, 4, 3}
	},
	func(r *rand.Rand) question {
		finished := between(r, 45*mm, 60*mm, 500*micron)
		hardened := between(r, 400*micron, 900*micron, 100*micron)
		size := finished - 500*micron
		return question{"case left", fmt.Sprintf("A journal hardened %s deep at %s is ground to %s. How deep is the hard case that is left?", metric(hardened, 2), metric(finished, 2), metric(size, 2)),
			crank.CaseLeft(working.Given("case", "h", hardened), working.Given("finished size", "D₀", finished), working.Given("size", "D", size)).Named("case left", "h₂"),
			10 * micron, units.InMillimetres, 2, 2}
	},
}
