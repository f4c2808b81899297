package crank_test

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/crank"
)

// Every error of the package that is about what was read is an InputError.
func ExampleInputError() {
	var err error = &crank.InputError{Field: "main journal 2", Value: "-1.2 mm", Want: "above 0 mm"}
	fmt.Println(err)
	fmt.Println(errors.Is(err, crank.ErrInput))
	// Output:
	// crank: main journal 2 -1.2 mm is not above 0 mm
	// true
}

// The text is built only when it is asked for.
func ExampleInputError_Error() {
	fmt.Println((&crank.InputError{Field: "speed", Value: "0 r/min", Want: "above 0 r/min"}).Error())
	// Output: crank: speed 0 r/min is not above 0 r/min
}

// ErrInput tells a reading that can't be from every other trouble.
func ExampleInputError_Unwrap() {
	e := &crank.InputError{Field: "speed", Value: "0 r/min", Want: "above 0 r/min"}
	fmt.Println(e.Unwrap() == crank.ErrInput)
	// Output: true
}
