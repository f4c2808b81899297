// Package analyzer holds the check behind the unitvet command, for use in a
// program that runs several checks at once.
//
// A quantity of package github.com/tenthou/tenthou/units is a Go integer that
// counts quanta: a [Length] counts picometres. That makes sums and comparisons
// exact and free, and it lets the compiler accept arithmetic that makes no
// sense. This check refuses what the compiler can't.
//
// # What is refused
//
// The product of two quantities. One factor must be a plain number: 3*units.Thou
// and units.Length(n)*units.Thou pass, width*height and width*units.Millimetre
// don't.
//
// The quotient of two quantities kept as a quantity. It is a plain number, so it
// passes where it becomes an integer at once, as in int64(bore/units.Millimetre),
// and a remainder passes everywhere. float64(a/b) is refused as well: the
// fraction is lost before the conversion, float64(a)/float64(b) keeps it.
//
// Division of whole constants that leaves a remainder, in an expression that is
// a quantity or uses one of the scales. 25/64*units.IN is 0, since Go divides
// 25/64 first; 25.0/64*units.IN is exact.
//
// A bare number where a quantity is meant: assigned, passed, returned, compared,
// added or subtracted. 0 passes everywhere, factors and divisors pass (2*x, x/2),
// and so does an explicit conversion, units.Length(63500000), which says that
// quanta are meant. A step of one quantum, x++ or x--, is refused for the same
// reason.
//
// # Plain numbers and quantities
//
// Which is which is read from the expression, since both may have the same Go
// type. A variable, field or function result is a quantity if its type is one.
// units.Length(n) is as plain as n, so that it can count: a conversion changes
// the type, not what the value stands for. The untyped scales (units.MM,
// units.IN and the like) are quantities, as is an untyped constant of the same
// package that is made from them; an untyped constant of another package is
// taken to be whatever fits.
//
// A type parameter whose every possible type is a quantity is treated as one.
// Package units itself and generated files are not reported on.
//
// # Limits
//
// The check reads one package at a time and follows no variables: a product
// taken by way of int64 variables is not seen, nor is an angle's scale used for
// a length.
//
// [Length]: https://pkg.go.dev/github.com/tenthou/tenthou/units#Length
package analyzer
