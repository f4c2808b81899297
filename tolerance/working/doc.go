// Package working writes out how a number was calculated, so that whoever
// reads it can check it with pencil and paper, and marks answers.
//
// # A formula that shows its working
//
// A formula is written once, over [tolerance.Number]:
//
//	func SideClearance[N tolerance.Number[N]](groove, ring N) N { return groove.Sub(ring) }
//
// Called with lengths it gives a length. Called with terms it gives a [Term]:
// the same length, from the same methods, that also remembers where it came
// from. [Solve] writes that out in words, in symbols, in numbers and as a
// result, so the printed working can't disagree with the number:
//
//	side clearance = groove width − ring height
//	c = w − h
//	  = 1.560 mm − 1.505 mm
//	  = 0.055 mm
//
// Inputs are made by [Given], from words, a symbol and a size; constants by
// [Exactly]. A result that gets a name with [TermOf.Named] has lines of its
// own, and later lines show it by its symbol and its number, so a long formula
// is read one step at a time. [TermOf] serves every quantity that has sums;
// [Term] is a length.
//
// Formulas that cross quantities (a volume, a slider-crank, a stress) are
// written over [tolerance.Real]. Their terms are [RealTerm]s, and [SolveReal]
// writes them out in the same way.
//
// A [Solution] is plain data. It prints as text and as Markdown.
//
// # The notation
//
//	a + b   a − b   a × b   a ÷ b      as taught; × and ÷ before + and −, from left to right
//	2 × a   a ÷ 2   a × 2 ÷ 3          a scaled by a ratio
//	π × a ÷ 4                          a scaled by π and a ratio
//	|a|                                magnitude
//	min(a, b)   max(a, b, c)           the least, the greatest
//	max(a, b, c) − min(a, b, c)        the spread
//	a × b ÷ c                          a scaled by the ratio of b to c
//	a × b ÷ (b + c)                    the share of a that b has in b + c
//	√(a)   a²   sin(a)   cos(a)        of real numbers; angles in radians
//	atan2(y, x)                        the direction of the point (x, y), from −π to π
//
// Two things with one symbol are told apart: w₁, w₂.
//
// # Exact or rounded
//
// An equals sign before a result says that it is exactly what the formula
// gives for what was given; ≈ says that it was rounded, in print or on the
// way. An input that the unit asked for has no end to is told once, at the top,
// with what it is exactly:
//
//	groove width w ≈ 0.06142 in (exactly 1.56 mm)
//	ring height h ≈ 0.05925 in (exactly 1.505 mm)
//
//	side clearance = groove width − ring height
//	c = w − h
//	  ≈ 0.06142 in − 0.05925 in
//	  ≈ 0.00217 in
//
// # Accuracy
//
// Every line re-computes: its numbers as printed, worked out exactly and
// rounded to the places of its result, to nearest, ties to even, give its
// result as printed, to the last digit. No line is ever printed that doesn't.
// So:
//
//   - Exact numbers are printed in full. Rounded ones get as many places more
//     than the answer as it takes, and the same ones in every line; no fewer
//     than three significant figures.
//   - Where the quantity rounded to its quantum on the way, and a line shows
//     it, the answer gets a place or two more than were asked for, or the line
//     is split in parts, or the answer gets fewer places. [Step.Places] says.
//   - A rounded answer has no digits finer than a quantum.
//   - If nothing helps, that is an error, [ErrRounded]: a result that was
//     rounded to the quantum and then multiplied up by millions, in a unit that
//     isn't a power of ten of quanta. In millimetres, micrometres, cubic
//     centimetres and grams it can't happen.
//
// In real numbers the numbers of a line are what their shortest decimals say.
// Sums, products, quotients and roots of them are worked out exactly or to 77
// digits; sines, cosines and directions are those of package math.
//
// # Rounding
//
// To nearest, ties to even, as the quantities themselves round: to the quantum
// once in each Scale, ScalePi, MulDiv and Share, and in print once more.
//
// # Marking
//
// [Mark] reads an answer with its unit and says whether it is right, right but
// rounded too far, without a unit, or wrong; and of a wrong one which common
// slips would explain it (decimal place, wrong unit, 25.4, factor 2, sign, π).
// A slip is named because the ratio fits, which is no proof: more than one
// may fit.
//
// # Errors
//
// All are of type [*Error] and have a kind for errors.Is. Words, symbols and
// units may be any text: control characters and line breaks become blanks, and
// Markdown escapes what would mean something there.
//
// # Sources
//
// The rules of precedence and the signs are those of school arithmetic; ×, −
// and the blank between number and unit follow the SI brochure (9th edition,
// 5.4). Rounding half to even: NIST SP 811, B.7.1. A test reads every printed
// line back and works it out with go/constant, thousands of formulas in each
// unit.
package working
