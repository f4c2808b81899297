package feeler_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// The whole plan, for the wall beside the bench.
func ExampleTree_Text() {
	spec := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")}
	tree, err := feeler.Plan(feeler.Metric20(), spec, feeler.Uniform(0.2*units.MM))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(tree.Text())
	fmt.Println("at most", tree.Most(), "trials")
	// Output:
	// try 0.10 mm
	//   refused: usable, [0 mm, 0.1 mm)
	//   entered: try 0.15 mm
	//     refused: can't tell, no blade of the set lies in [0.1 mm, 0.15 mm)
	//     entered: past the wear limit, [0.15 mm, ∞)
	// at most 2 trials
}

// The plan walked blade by blade, as a program that asks would.
func ExampleTree() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	tree, err := feeler.Plan(feeler.Imperial26(), spec, feeler.Uniform(0.15*units.MM))
	if err != nil {
		fmt.Println(err)
		return
	}
	gap := 0.055 * units.MM // what the hand finds out
	for !tree.Done() {
		feel := feeler.Refused
		if tree.Blade.Thickness() <= units.Length(gap) {
			feel = feeler.Drag
		}
		fmt.Println("try", tree.Blade.MarkText()+":", feel)
		tree = tree.Next(feel)
	}
	fmt.Println(tree.Standing, tree.Bracket)
	// Output:
	// try .003 in / 0.076 mm: refused
	// try .0015 in / 0.038 mm: drag
	// try .0025 in / 0.064 mm: refused
	// as new [0.0381 mm, 0.0635 mm)
}

func ExampleTree_Most() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	tree, err := feeler.Plan(feeler.Imperial26(), spec, feeler.Uniform(0.15*units.MM))
	fmt.Println(tree.Most(), err)
	// Output: 3 <nil>
}

func ExampleTree_Done() {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	known, err := tolerance.HalfOpen(units.Length(0.0635*units.MM), units.Length(0.0762*units.MM))
	if err != nil {
		fmt.Println(err)
		return
	}
	// Between two neighbouring blades nothing is left to try.
	tree, err := feeler.PlanFrom(feeler.Imperial26(), spec, feeler.Uniform(0.15*units.MM), known)
	fmt.Println(tree.Done(), tree.Standing, err)
	// Output: true can't tell <nil>
}

func ExamplePlanError() {
	_, err := feeler.Plan(feeler.Imperial26(), tolerance.Spec{}, feeler.Uniform(0.15*units.MM))
	fmt.Println(err)
	// Output: feeler: plan: limits: no limit given; give a band for new parts or a wear limit
}

func ExampleBlindZone_String() {
	spec := tolerance.Spec{Wear: tolerance.MustParseBand("max 0.10 mm")}
	zones, err := feeler.BlindZones(feeler.Imperial26(), spec, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, z := range zones {
		fmt.Println(z)
	}
	// Output:
	// [0.0762 mm, 0.1016 mm) holds 0.1 mm; .002 in + .0015 in = 0.0889 mm leaves [0.0889 mm, 0.1016 mm); a blade of 0.1 mm would leave [0.1 mm, 0.1016 mm); or measure the parts by micrometer
}

func ExampleStack_At() {
	stack, err := feeler.Imperial26().Stack(0.5*units.MM, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range stack.Len() {
		fmt.Println(stack.At(i))
	}
	fmt.Println(stack.MarkText(), "is off by", stack.Off())
	// Output:
	// .018 in / 0.457 mm
	// .0015 in / 0.038 mm
	// .018 in + .0015 in is off by -0.0047 mm
}

// Blades laid together are one trial, with the sum of their errors.
func ExampleStack_Trial() {
	set, err := feeler.Metric8().WithErrors(feeler.ErrorClass{UpTo: 0.50 * units.MM, Error: 4 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	stack, err := set.Together("0.20 mm", "0.05 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	trial := stack.Trial(feeler.Drag)
	bracket, err := feeler.BracketWithErrors(trial)
	fmt.Println(trial, "±", trial.Error, bracket, err)
	// Output: 0.20 mm + 0.05 mm drag ± 0.008 mm [0.242 mm, ∞) <nil>
}
