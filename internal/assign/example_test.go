package assign_test

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/assign"
)

// Three bores and three pistons: how many micrometres each clearance would be
// from the wanted one. The second piston doesn't go in the first bore.
var away = []int64{
	4, assign.Forbidden, 8,
	1, 2, 9,
	0, 3, 9,
}

func ExampleSolver_LeastSum() {
	var s assign.Solver
	pistons, a, err := s.LeastSum(nil, 3, 3, away)
	fmt.Println(pistons, a, err)
	// Output: [2 1 0] {3 10 8} <nil>
}

func ExampleSolver_LeastGreatest() {
	var s assign.Solver
	pistons, a, err := s.LeastGreatest(nil, 3, 3, away)
	fmt.Println(pistons, a, err)

	// With a fourth piston of the size of the first, no bore is 8 away.
	pistons, a, err = s.LeastGreatest(nil, 3, 4, []int64{
		4, assign.Forbidden, 8, 4,
		1, 2, 9, 1,
		0, 3, 9, 0,
	})
	fmt.Println(pistons, a, err)
	// Output:
	// [2 1 0] {3 10 8} <nil>
	// [0 1 3] {3 6 4} <nil>
}
