package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// matchSet is an invented set of bores and pistons, and the clearance wanted.
func matchSet() (bores, pistons []piston.MatchPart, wanted selective.Wanted) {
	bores = []piston.MatchPart{{Where: "bore 1", Size: bracketOf("86.002 ±0.001 mm")}, {Where: "bore 2", Size: bracketOf("86.012 ±0.001 mm")}}
	pistons = []piston.MatchPart{{Where: "piston 1", Size: bracketOf("85.972 ±0.001 mm")}, {Where: "piston 2", Size: bracketOf("85.962 ±0.001 mm")}}
	return bores, pistons, selective.Wanted{Band: tolerance.MustParseBand("0.03–0.05 mm"), Aim: units.MustParseLength("0.04 mm")}
}

func ExampleMatchBores() {
	r, _ := piston.MatchBores(matchSet())
	for _, p := range r.Best.Pairs {
		fmt.Println("bore", p.Bore+1, "piston", p.Piston+1, p.Clearance)
	}
	fmt.Println(r.AsMarked.Greatest, "as marked,", r.Best.Greatest, "paired anew")
	fmt.Println(r.Next)
	// Output:
	// bore 1 piston 2 [0.038 mm, 0.042 mm]
	// bore 2 piston 1 [0.038 mm, 0.042 mm]
	// 0.012 mm as marked, 0.002 mm paired anew
	// pair anew: as marked, 2 of 2 are not in the band for certain
}

// One Matcher serves set after set without new memory.
func ExampleMatcher_Bores() {
	var m piston.Matcher
	bores, pistons, wanted := matchSet()
	pistons[0].Size = bracketOf("85.90 mm") // fits nowhere
	r, _ := m.Bores(bores, pistons, wanted)
	fmt.Println(r.Feasible, r.Replace)
	for _, n := range r.Needs {
		fmt.Println(bores[n.Bore].Where, "needs a piston of", n.Size)
	}
	// Output:
	// false [0]
	// bore 2 needs a piston of 85.963–85.981 mm
}

func massSet() (pistons, rods []piston.MassPart) {
	pistons = []piston.MassPart{{Where: "piston 1", Mass: gramsOf("500 g")}, {Where: "piston 2", Mass: gramsOf("505 g")}}
	rods = []piston.MassPart{{Where: "rod 1", Mass: gramsOf("700 g")}, {Where: "rod 2", Mass: gramsOf("704 g")}}
	return pistons, rods
}

func ExampleMatchRods() {
	pistons, rods := massSet()
	r, _ := piston.MatchRods(pistons, rods, tolerance.SpecOf[units.Mass]{New: tolerance.AtMost(2 * units.Gram)})
	fmt.Println(r.AsMarked.Spread, "as marked,", r.Best.Spread, "paired anew:", r.Finding.Standing)
	for _, p := range r.Best.Pairs {
		fmt.Println(pistons[p.Piston].Where, "on", rods[p.Rod].Where, p.Total)
	}
	// Output:
	// 9 g as marked, 1 g paired anew: as new
	// piston 1 on rod 2 1204 g
	// piston 2 on rod 1 1205 g
}

func ExampleMatcher_Rods() {
	var m piston.Matcher
	pistons, rods := massSet()
	r, _ := m.Rods(pistons, rods, tolerance.SpecOf[units.Mass]{})
	fmt.Println(r.Mean, r.Best.Greatest)
	// Output: 1204.5 g 0.5 g
}
