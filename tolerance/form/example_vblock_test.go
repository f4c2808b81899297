package form_test

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

func ExampleVBlock_Factor() {
	v := form.VBlock{Included: 90 * units.Degree}
	for _, n := range []int{2, 3, 5, 7} {
		f, err := v.Factor(n)
		fmt.Printf("%d lobes: %.2f %v\n", n, f, err)
	}
	// Output:
	// 2 lobes: 1.00 <nil>
	// 3 lobes: 2.00 <nil>
	// 5 lobes: 2.00 <nil>
	// 7 lobes: 0.00 <nil>
}

func ExampleVBlock_Table() {
	table, err := form.VBlock{Included: 60 * units.Degree}.Table(2, 6)
	fmt.Println("lobes  two-point  60° V")
	for _, line := range table {
		fmt.Printf("%5d %10.2f %6.2f\n", line.Lobes, line.TwoPoint, line.VBlock)
	}
	fmt.Println(err)
	// Output:
	// lobes  two-point  60° V
	//     2       2.00   0.00
	//     3       0.00   3.00
	//     4       2.00   0.00
	//     5       0.00   0.00
	//     6       2.00   3.00
	// <nil>
}

func ExampleVBlock_Hidden() {
	hidden, err := form.VBlock{Included: 90 * units.Degree}.Hidden(12, 0.5)
	fmt.Println("a 90° V that reads nothing doesn't rule out", hidden, "lobes", err)
	// Output:
	// a 90° V that reads nothing doesn't rule out [4 7 9 12] lobes <nil>
}

func ExampleVBlock_RONt() {
	r, err := form.VBlock{Included: 60 * units.Degree}.RONt(30*units.Micrometre, 3)
	fmt.Println(r, err)
	_, err = form.VBlock{Included: 60 * units.Degree}.RONt(30*units.Micrometre, 5)
	fmt.Println(err)
	// Output:
	// 0.01 mm on the radius <nil>
	// form: V-block, 5 lobes: lobes that this set-up doesn't show; expected another included angle, or a spindle
}

func ExampleVBlock_Swing() {
	// Three lobes of 2 µm, RONt 4 µm, and the eccentricity that a V doesn't see.
	swing, err := form.VBlock{Included: 60 * units.Degree}.Swing(lobed(), 360)
	fmt.Printf("%.3f %v\n", swing, err)
	// Output:
	// 12.000 <nil>
}

func ExampleVBlock_Reading() {
	r, err := form.VBlock{Included: 60 * units.Degree}.Reading(lobed(), 0)
	fmt.Printf("%.3f %v\n", r, err)
	// Output:
	// 6.000 <nil>
}

func ExampleTwoPointFactor() {
	even, _ := form.TwoPointFactor(2)
	odd, _ := form.TwoPointFactor(3)
	fmt.Println(even, odd)
	// Output:
	// 2 0
}
