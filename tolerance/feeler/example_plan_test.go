package feeler_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func ExampleSet_Stack() {
	set := feeler.Imperial26()
	for _, target := range []units.Length{0.0125 * units.IN, 0.5 * units.MM, 0.07 * units.MM} {
		stack, err := set.Stack(target, 3)
		fmt.Printf("%v: %v, off by %v %v\n", target, stack, stack.Off(), err)
	}
	// Output:
	// 0.3175 mm: .011 in + .0015 in = 0.3175 mm, off by 0 mm <nil>
	// 0.5 mm: .018 in + .0015 in = 0.4953 mm, off by -0.0047 mm <nil>
	// 0.07 mm: .003 in = 0.0762 mm, off by 0.0062 mm <nil>
}

func ExampleSet_StackAtMost() {
	set := feeler.Metric8()
	fmt.Println(set.StackAtMost(0.99*units.MM, 3))
	fmt.Println(set.StackAtLeast(0.99*units.MM, 3))
	// Output:
	// 0.50 mm + 0.40 mm + 0.05 mm = 0.95 mm <nil>
	// 0.50 mm + 0.40 mm + 0.10 mm = 1 mm <nil>
}

func ExampleSet_StackAtLeast() {
	fmt.Println(feeler.Imperial26().StackAtLeast(1*units.MM, 2))
	// Output:
	// .025 in + .015 in = 1.016 mm <nil>
}

func ExampleSet_Together() {
	stack, err := feeler.Imperial26().Together(".003 in", "0.381 mm")
	fmt.Println(stack, err)
	fmt.Println(stack.Trial(feeler.Refused))
	_, err = feeler.Imperial26().Together(".003 in", "0.076 mm")
	fmt.Println(err)
	// Output:
	// .015 in + .003 in = 0.4572 mm <nil>
	// .015 in + .003 in refused
	// feeler: stack of up to 2 blades for .003 in: no such stack; each blade once
}

func ExampleStack_WorstError() {
	set, _ := feeler.Metric8().WithErrors(feeler.ErrorClass{UpTo: 0.50 * units.MM, Error: 4 * units.Micrometre})
	stack, err := set.Together("0.05 mm", "0.10 mm", "0.20 mm", "0.30 mm")
	fmt.Println(stack, err)
	fmt.Println("sum of errors", stack.WorstError(), "- root sum of squares", stack.RootSumSquareError())
	// Output:
	// 0.30 mm + 0.20 mm + 0.10 mm + 0.05 mm = 0.65 mm <nil>
	// sum of errors 0.016 mm - root sum of squares 0.008 mm
}

// Which blade to try next, where side clearances up to 0.15 mm are equally
// likely.
func ExamplePlan() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.10 mm")}
	plan, err := feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.15*units.MM))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(plan.Text())
	fmt.Println("trials to expect:", plan.Expected().RatString(), "at most:", plan.Most())
	// Output:
	// try .003 in / 0.076 mm
	//   refused: try .0015 in / 0.038 mm
	//     refused: can't tell, no blade of the set lies in [0 mm, 0.0381 mm)
	//     entered: usable, [0.0381 mm, 0.0762 mm)
	//   entered: try .004 in / 0.102 mm
	//     refused: can't tell, no blade of the set lies in [0.0762 mm, 0.1016 mm)
	//     entered: past the wear limit, [0.1016 mm, ∞)
	// trials to expect: 2 at most: 2
}

// Where most grooves are expected within limits, other blades come first.
func ExamplePrior() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.04–0.07 mm")}
	prior := feeler.Prior{
		{UpTo: 0.04 * units.MM, Weight: 1},
		{UpTo: 0.07 * units.MM, Weight: 8},
		{UpTo: 0.20 * units.MM, Weight: 1},
	}
	plan, _ := feeler.Plan(feeler.Imperial26(), limits, prior)
	fmt.Println(plan.Blade, plan.Expected().RatString())
	plan, _ = feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.20*units.MM))
	fmt.Println(plan.Blade, plan.Expected().RatString())
	// Output:
	// .002 in / 0.051 mm 341/150
	// .003 in / 0.076 mm 3397/2000
}

// Going on from trials that were made already.
func ExamplePlanFrom() {
	set := feeler.Imperial26()
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	trials, _ := set.ParseTrials(".002 in free, .005 in refused")
	gap, _ := feeler.Bracket(trials...)
	plan, err := feeler.PlanFrom(set, limits, feeler.Uniform(0.20*units.MM), gap)
	fmt.Print(plan.Text(), err, "\n")
	// Output:
	// try .003 in / 0.076 mm
	//   refused: try .0025 in / 0.064 mm
	//     refused: as new, [0.0508 mm, 0.0635 mm)
	//     entered: can't tell, no blade of the set lies in [0.0635 mm, 0.0762 mm)
	//   entered: outside the new-part band, [0.0762 mm, 0.127 mm)
	// <nil>
}

func ExampleTree_Next() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	plan, _ := feeler.Plan(feeler.Imperial26(), limits, feeler.Uniform(0.15*units.MM))
	feels := []feeler.Feel{feeler.Refused, feeler.Drag, feeler.Drag}
	for _, feel := range feels {
		if plan.Done() {
			break
		}
		fmt.Println("try", plan.Blade, "-", feel)
		plan = plan.Next(feel)
	}
	fmt.Println(plan.Standing, plan.Bracket)
	// Output:
	// try .003 in / 0.076 mm - refused
	// try .0015 in / 0.038 mm - drag
	// try .0025 in / 0.064 mm - drag
	// can't tell [0.0635 mm, 0.0762 mm)
}

// The trials to expect, from the start and once the first is made.
func ExampleTree_Expected() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	plan, _ := feeler.Plan(feeler.Metric20(), limits, feeler.Uniform(0.20*units.MM))
	fmt.Print(plan.Text())
	fmt.Println(plan.Expected().RatString(), plan.Next(feeler.Refused).Expected().RatString())
	// Output:
	// try 0.10 mm
	//   refused: try 0.05 mm
	//     refused: can't tell, no blade of the set lies in [0 mm, 0.05 mm)
	//     entered: can't tell, no blade of the set lies in [0.05 mm, 0.1 mm)
	//   entered: outside the new-part band, [0.1 mm, ∞)
	// 3/2 1
}

func ExampleUniform() {
	fmt.Println(feeler.Uniform(0.2 * units.MM))
	// Output:
	// [{0.2 mm 1}]
}

// What the 26 inch blades can never tell of limits of 0.03 to 0.07 mm.
func ExampleBlindZones() {
	limits := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm")}
	zones, err := feeler.BlindZones(feeler.Imperial26(), limits, 4)
	for _, z := range zones {
		fmt.Println(z)
	}
	fmt.Println(err)
	// Output:
	// [0 mm, 0.0381 mm) holds 0.03 mm; no stack of up to 4 blades lies in it; a blade of 0.03 mm would close it; or measure the parts by micrometer
	// [0.0635 mm, 0.0762 mm) holds 0.07 mm; no stack of up to 4 blades lies in it; a blade of 0.07 mm would leave [0.07 mm, 0.0762 mm); or measure the parts by micrometer
	// <nil>
}
