package piston_test

import (
	"fmt"

	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
)

// A blade of .004 in goes in at the mouth, .002 in alone goes to the root.
func ExampleAssessGrooveTaper() {
	mouth, _ := tolerance.ParseBracket("[0.1016 mm, 0.127 mm)")
	root, _ := tolerance.ParseBracket("[0.0508 mm, 0.0635 mm)")
	limits := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.03 mm")}
	f, err := piston.AssessGrooveTaper("piston 1, top groove", limits, []tolerance.Bracket{mouth}, []tolerance.Bracket{root})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Greatest, f.Standing)
	// Output: (0.0381 mm, 0.0762 mm) past the wear limit
}
