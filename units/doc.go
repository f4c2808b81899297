// Package units holds lengths, angles and seven other quantities of an engine
// shop exactly, in metric and imperial units at once, reads them as people
// write them, and rounds them once, on the way out, by a rule that is stated.
//
// # The idea
//
//   - Every quantity is a whole number of a quantum, in an int64.
//   - The quantum divides both unit systems: 1 in is 25 400 000 000 pm and
//     1 mm is 1 000 000 000 pm.
//   - So a manual's millimetres and a blade's thousandths are both held as they
//     are, compare with ==, and add without error at the cost of whole numbers.
//   - Nothing is rounded on the way in: a value finer than the quantum is an
//     error.
//   - What is rounded on the way out says so.
//
// The quanta, and what they hold exactly:
//
//	type                   quantum        metric              imperial
//	Length                 1 pm           mm to 9 places      inch to 8, binary fractions to 1/512 in
//	Angle                  1 µas          degrees to 8        degrees, minutes, seconds to 6
//	Volume                 10 fL          cm³ to 11           in³ (16.387 064 cm³) to 5
//	Mass                   1 pg           g to 12             oz (28.349 523 125 g) to 3 and eighths, lb to 7, grain to 4
//	Force                  5·10⁻¹⁵ N      N to 14, kgf to 10  lbf (4.448 221 615 260 5 N) to 2
//	Pressure               5·10⁻¹⁵ N/in²  kPa to 9, bar to 11 psi (lbf/in²) to 2
//	SpringRate             5·10⁻¹⁵ N/in   N/mm to 13          lbf/in to 2
//	TemperatureDifference  1/9 nK         K to 9              °F (5/9 K) to 9
//	Temperature            1/9 nK         °C to 9, from 0 °C  °F to 9
//
// Areas, stresses, torques and plain ratios have no type here: they are
// float64 in coherent units.
//
// # Constants
//
// A whole number of a unit is written as with [time.Duration]: 3*[Thou],
// 70*[Micrometre], 45*[Degree]. For decimals there are untyped scales, in
// capitals, on which the compiler works exactly or not at all:
//
//	const limit units.Length = 0.07 * units.MM     // exact
//	const fine units.Length = 0.00000000001 * units.IN // does not compile: finer than a picometre
//
// Go's whole numbers have three traps, which the check in units/unitvet
// refuses:
//
//	25 / 64 * units.IN      // 0: 25/64 is a division of whole numbers; write 25 * units.IN / 64
//	clearance > 0.07        // doesn't compile, but > 7 does, and means 7 pm
//	bore * stroke           // lengths multiply to no length: see CylinderVolume, BoxVolume, MulDiv
//
// [MustParseLength] and its fellows serve tables, and
// panic on a slip.
//
// # Reading
//
// [ParseLength], its fellows and [Parse] take a number and a unit:
//
//   - decimals, "0.07 mm", ".0025 in", "5. mm", with a point or a decimal
//     comma, "0,07 mm";
//   - fractions, "25/64 in", and mixed numbers after a space or a hyphen,
//     "3 25/64 in", "3-25/64 in";
//   - a sign, + or - or − (U+2212);
//   - descending units, "44° 30′ 15″", "5 ft 3 1/2 in", "2 lb 4 oz", where only
//     the last may have decimals;
//   - a unit by its symbol or one of its common names: µm with either micro
//     sign or as um, inches as in, inch or a double prime or quote;
//   - blanks, no-break and thin ones among them, around all of these but not
//     within a number.
//
// A comma after one to three digits (the first not 0) and before exactly three
// may be a thousands mark, as in "1,000 mm": it is refused as ambiguous. So is
// "mil", a thousandth of an inch to some and a millimetre to others, and "gr".
// There are no exponents, no thousands marks and no default units: a number
// without a unit is an error unless the call names the unit ([ParseIn]).
//
// [Written] keeps the unit and the places that a number was written with.
//
// # Writing
//
// The methods Text and Append write to a unit and a number of places; Append
// also reports whether what it wrote is exactly the value. String, and the
// encoders for JSON, flags, structured logs and text (AppendText, MarshalText,
// UnmarshalText), write the exact value in the type's first unit, or in another
// where that has no finite decimal (20′ is 0.333…°); reading it back gives the
// same value. To a database (Scan, Value) a quantity is its count of quanta.
// [Length.Dual] writes 0.0635 mm (.0025 in). The methods Decimal and
// [FromDecimal] hand over to the decimal package.
//
// # Accuracy
//
// Parsing, Add, Sub, Abs, Min, Max, Spread and [Sum] are exact. Scale, MulDiv,
// Share, ScalePi, [Mean], [BoxVolume] and [CylinderVolume] give the correctly
// rounded quantum: the error is at most half a quantum. [Nearest] and
// [AngleFromRadians], for what arrives as float64, are the one way in that
// rounds. Float and Radians say how near they are.
//
// # Rounding
//
// Every rounding is to nearest with ties to the even digit unless a [Rounding]
// is given: [NearestEven], [NearestAway] (as tables that round half up),
// [Down] and [Up]. A bracket is rounded outward with Down for its lower end and
// Up for its upper one; a band inward, the other way round. The methods Round,
// Places, Append and Decimal report whether anything was rounded.
//
// # Range
//
// A quantity is in range within ±2^61 quanta (±2305 km, ±640 million degrees,
// ±23 m³, ±2.3 t, ±11.5 kN, ±17.8 MPa, ±453 N/mm, ±256 million K; a temperature
// from absolute zero). The parsers take less: lengths to ±100 m. An operation
// that leaves the range or divides by zero gives a value that is out of range
// and stays so through every further method; InRange tells, and it is neither
// printed as a number nor encoded. [Sum] and [Mean] check.
//
// The operators + and - of Go don't check. On lengths as parsed, tens of
// thousands can be added before they wrap; on the other types it may take no
// more than five values at the end of the parser's range. Where a
// value may be out of range, use the methods Add and Sub.
//
// # Errors
//
// Reading gives a [*ParseError], other conversions a [*RangeError]. Each names
// the quantity, the value (at most 64 bytes of it), where it went wrong and
// what was expected, and wraps one of [ErrSyntax], [ErrNoUnit],
// [ErrUnknownUnit], [ErrAmbiguous], [ErrTooFine] and [ErrRange] for errors.Is.
// Nothing panics but the Must functions.
//
// # Sources
//
// The inch is 25.4 mm and the pound 0.453 592 37 kg (24 FR 5348, 1959);
// standard gravity is 9.806 65 m/s² (3rd CGPM, 1901); NIST SP 811 appendix B
// lists these and what derives from them, and states the rounding to even. ISO
// 1 sets the reference temperature at 20 °C.
package units

//go:generate go run ../internal/unitgen .
