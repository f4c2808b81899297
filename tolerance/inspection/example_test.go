package inspection_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// Three bores: one size for the whole block, and the bore that forced it.
func ExampleWorst() {
	block := inspection.Worst(
		inspection.Decision{Where: "cylinder 1", Action: inspection.CleanAndReUse},
		inspection.Decision{Where: "cylinder 2", Action: inspection.ReconditionTo, Size: "+0.50 mm"},
		inspection.Decision{Where: "cylinder 3", Action: inspection.MeasureAgain},
	)
	fmt.Println(block.Where, block.Action, block.Size)
	// Output: cylinder 2 recondition to size +0.50 mm
}

// A crankshaft that measures well, but that no one has crack-tested.
func ExampleCondition_Overrule() {
	ask := inspection.Care{CrackTest: true}
	d := inspection.Condition{}.Overrule(ask, inspection.Decision{Part: "crankshaft", Action: inspection.ReUse, Because: "all journals within the limits"})
	fmt.Println(d.Action)
	fmt.Println(d.Settle)

	d = inspection.Condition{CrackTested: inspection.Yes, Cracked: inspection.Yes}.Overrule(ask, inspection.Decision{Action: inspection.ReUse})
	fmt.Println(d.Action, "-", d.Because)
	// Output:
	// measure again
	// a crack test, which the limits ask for and no one has written down
	// replace - cracked: that decides, whatever it measures
}

// A wear limit whose second column lost a decimal place in print.
func ExampleLimitOf_Proofread() {
	wear, _ := tolerance.ParsePrinted("max 0.006 in")
	also, _ := tolerance.ParsePrinted("max 0.015 mm")
	for _, s := range (inspection.Limit{Wear: wear, WearAlso: also}).Proofread(nil, "limits.sideClearance", "ring side clearance") {
		fmt.Println(s.Path)
		fmt.Println(s.Text)
	}
	// Output:
	// limits.sideClearance.wearAlso
	// greatest: 0.006 in is 0.152 mm: the 0.015 mm printed beside it looks a decimal place off; or the 0.006 in should be 0.0006 in
}

// One reading said a decimal place off.
func ExampleProofreadReadings() {
	var set []inspection.Reading
	for _, s := range []string{"0.042 mm", "0.045 mm", "0.44 mm", "0.046 mm"} {
		var r inspection.Reading
		if err := r.UnmarshalText([]byte(s)); err != nil {
			fmt.Println(err)
		}
		set = append(set, r)
	}
	places := []string{"piston 1", "piston 2", "piston 3", "piston 4"}
	for _, s := range inspection.ProofreadReadings(nil, nil, places, set) {
		fmt.Println(s.What+":", s.Text)
	}
	// Output: piston 3: 0.44 mm against a middle of 0.045 mm: a decimal place
}

// A reading not taken is no nought.
func ExampleReadingOf_Within() {
	gauged := inspection.Read(tolerance.Exactly(86*units.Millimetre + 12*units.Micrometre))
	gauged, err := gauged.Within(2 * units.Micrometre)
	fmt.Println(gauged, err)
	var none inspection.Reading
	none, err = none.Within(2 * units.Micrometre)
	fmt.Printf("%q %v\n", none.String(), err)
	// Output:
	// [86.01 mm, 86.014 mm] <nil>
	// "" <nil>
}

func ExampleRead() {
	r := inspection.Read(tolerance.Exactly(200 * units.Newton))
	fmt.Println(r, r.Taken)
	// Output: 200 N true
}

func ExampleTaken() {
	read := inspection.Read(tolerance.Exactly(60 * units.Millimetre))
	fmt.Println(inspection.Taken(nil, read, inspection.Reading{}, read))
	// Output: [60 mm 60 mm]
}

// A cap on another's housing ruins both.
func ExampleMatched() {
	fmt.Println(inspection.Matched("cap", "main 2", "3", "2"))
	fmt.Println(inspection.Matched("cap", "main 2", "2", "2"))
	// Output:
	// inspection: the cap marked "3" stands at main 2, where "2" belongs: matched parts keep their place
	// <nil>
}

func ExampleAt() {
	err := inspection.Matched("cap", "main 2", "3", "2")
	err = inspection.At(inspection.Index("housings", 1), inspection.At("cap", err))
	fmt.Println(err)
	// Output: housings[1].cap: inspection: the cap marked "3" stands at main 2, where "2" belongs: matched parts keep their place
}

func ExampleIndex() {
	fmt.Println(inspection.Index("cylinders", 2))
	// Output: cylinders[2]
}

func ExampleSteps() {
	for _, s := range inspection.Steps()[:8] {
		fmt.Println(s)
	}
	// Output:
	// identify
	// before strip
	// bolts
	// block
	// block face
	// main bearing tunnel
	// cam tunnel
	// cylinder bores
}

func ExampleFound() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	f, err := tolerance.Assess("ring side clearance", "piston 2, top groove", spec, tolerance.Exactly(50*units.Micrometre))
	if err != nil {
		fmt.Println(err)
	}
	found := inspection.Found(inspection.StepRings, "grooves[2].trials", f)
	fmt.Println(found.Where(), "-", found.Standing())
	// Output: piston 2, top groove - as new
}

// Two parts' reports in the order of the bench.
func ExampleMerge() {
	crank := inspection.Report{Missing: []inspection.Missing{{Step: inspection.StepCrank, Measure: "journal", Where: "main 3"}}}
	bores := inspection.Report{Missing: []inspection.Missing{{Step: inspection.StepBores, Measure: "bore", Where: "cylinder 1, top, across the crank"}}}
	for _, m := range inspection.Merge(crank, bores).Missing {
		fmt.Printf("%s: %s, %s\n", m.Step, m.Measure, m.Where)
	}
	// Output:
	// cylinder bores: bore, cylinder 1, top, across the crank
	// crankshaft: journal, main 3
}

// A clearance came out 0.02 mm more than the work was meant to give.
func ExampleCompared() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.06 mm")}
	finding := func(s string) inspection.Finding {
		read, _ := tolerance.ParseBracket(s)
		f, _ := tolerance.Assess("oil clearance", "main 3", spec, read)
		return inspection.Found(inspection.StepAssembly, "", f)
	}
	departed, agree, _ := inspection.Compared([]inspection.Finding{finding("[0.036 mm, 0.052 mm]")}, []inspection.Finding{finding("[0.072 mm, 0.076 mm]")})
	fmt.Println(agree, departed[0].Where, departed[0].By)
	// Output: 0 main 3 [0.02 mm, 0.04 mm]
}
