package tolerance

// Number is what a formula of one quantity is written in. A function over
// Number[N] is one formula with several readings: called with a
// units.Length it gives the number, with an [Interval] the bracket, with an
// estimate the value and its uncertainty, with a working term the written-out
// solution.
//
// It stays small on purpose, and within one quantity. In a formula each
// quantity should appear once where it can: a bracket that is used twice is
// taken for two independent ones, which widens the result for nothing. Spread
// and Share exist for that reason. A constant is lifted by the function named
// Exactly in each reading's package, never inside a formula; a branch stands
// on a formula's result, never in it.
//
// Add, Sub, Abs, Min, Max and Spread are exact. Scale, ScalePi, MulDiv and
// Share round once, to the nearest quantum (brackets outward). A result that
// leaves the range, or a division by zero, is out of range and stays so.
type Number[N any] interface {
	Add(N) N
	Sub(N) N
	Abs() N
	Min(N) N
	Max(N) N
	// Spread is the greatest less the least of the receiver and more.
	Spread(more ...N) N
	// Scale multiplies by num/den.
	Scale(num, den int64) N
	// ScalePi multiplies by π·num/den.
	ScalePi(num, den int64) N
	// MulDiv multiplies by mul/div.
	MulDiv(mul, div N) N
	// Share is the part of the receiver that part has in part+rest.
	Share(part, rest N) N
}
