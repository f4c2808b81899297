// Package tolerance judges what was measured against what is allowed, and says
// "can't tell" where that is the truth.
//
// # What is measured
//
// A measurement is an [Interval]: what it knows of a size. A blade that enters
// a gap and the next one that doesn't give [0.0635 mm, 0.0762 mm); a
// micrometer gives 73.02 ±0.005 mm; a gap that takes every blade at hand gives
// [1 mm, ∞). Each end is of one of three kinds: closed (the value itself can
// be it), open (it can't), absent (nothing is known on that side). An interval
// of lengths is a [Bracket].
//
//	         0.0635                0.0762
//	───────────●━━━━━━━━━━━━━━━━━━━━━○──────────▶ mm
//	    the blade entered     this one didn't
//
// What is allowed is a [Band], with the same three kinds of end, since manuals
// mean different things: where the 0.10 blade drags and the 0.11 doesn't enter,
// "max 0.10" is undecided and "renew at 0.10 or more" is past. [ParseBand]
// reads what manuals print.
//
// # Verdict and standing
//
// A [Verdict] says how a reading lies to one band: Within where all of it is
// allowed, Below or Above where none of it is, and else Undecided.
//
//	band             ├───────────────┤
//	Within              ●━━━━━○
//	Undecided                    ●━━━━━━○
//	Above                                ●━━━━━━○
//
// Undecided is not a pass, and not a failure. It is what the measurement says,
// and what would settle it is a finer measurement at the limit that lies
// inside the bracket.
//
// A manual may give two limits: a band for new parts, and a wear limit
// (service limit) up to which a used part may go on. A [Spec] holds both, and
// either may be missing. The [Standing] of a part follows from the two
// together: as new, usable, past the wear limit, or can't tell. Where a manual
// prints a band for new parts alone, a worn part outside it is just that,
// "outside the new-part band; no wear limit given": whether it may be used is
// for the engine maker's manual to say, and this package doesn't reject it. A
// wear limit speaks for its own side alone: a clearance that is too small is
// not made good by a greatest wear limit.
//
// A part measured at several stations is judged by its extremes: the greatest
// against the upper limit and the least against the lower ([Extremes],
// [BandOf.JudgeAll], [SpecOf.StandAll]). Both can fail at once.
//
// A [Finding], made by [Assess], joins all of it for one measure of one part:
// where, the readings, the limits, verdicts and standing, the margin, and what
// would settle what is open. It is plain data that encodes to JSON and prints
// itself.
//
// None of this replaces the manual. Limits are the engine maker's, for that
// engine and that way of measuring it; where the manual and a verdict from
// here disagree, the manual governs. A limit typed wrong gives a wrong verdict
// with full confidence: [SpecOf.Validate] finds limits that contradict each
// other, [Compare] tells where a manual's two columns part, and nothing finds
// the rest.
//
// # One formula, several readings
//
// A formula of one quantity is written once, as a function over [Number]:
//
//	func sideClearance[N tolerance.Number[N]](groove, ring N) N { return groove.Sub(ring) }
//
// Called with two lengths it gives a length; with two brackets, the bracket of
// every clearance that they allow; with the estimates of package uncertainty,
// the value and its uncertainty; with the terms of package working, the
// written-out solution. So the printed working can't disagree with the number.
// A formula that crosses quantities is written over [Real].
//
// Fits ([Fit]) and chains of dimensions ([Chain]) are such formulas ready
// made. [BandOf.Convert] writes a band in the other unit.
//
// # Accuracy
//
// Values are whole numbers of the quantum of package units, a picometre for
// lengths. Comparing, adding and subtracting are exact. Every operation on
// intervals gives the tightest interval that holds all results, to the
// quantum; it takes its operands for independent, so a bracket that a formula
// uses twice widens the result for nothing. An interval is a stretch of the
// number line, so its open end may be approached to any degree.
//
// That matters on the limit itself, where float64 misjudges. With sizes to
// 10 in by 0.0001 in and the reading exactly on the upper limit, size plus
// 0.0005, 0.0010 or 0.0020 in, float64 rejects 17.5, 16.2 and 19.9 per cent of
// the good parts. A clearance of exactly 0.0030 in, as groove less ring over
// the same sizes, it finds greater than 0.0030 in in 82.5 per cent. And 12.5
// per cent of the sizes are other numbers after a trip to millimetres and
// back. A test recounts these figures; here all are 0.
//
// # Rounding
//
// Nothing is rounded on the way in. Arithmetic rounds only where a result is
// no whole number of quanta: Scale, ScalePi, MulDiv and Share round a number
// to the nearest, ties to even, and the ends of an interval outward. In print,
// readings are rounded outward, so that what is printed holds what was
// measured, and limits inward, so that what is printed allows nothing that the
// manual doesn't. A finding takes as many decimal places as keep what is
// printed from contradicting its verdict.
//
// # Errors
//
// A result that leaves the range (±2^61 quanta, 2 300 km), or a division by
// zero, is out of range and stays so through further operations; InRange
// tells. It is Undecided against every band, and what prints, encodes or
// assesses refuses it. Constructors and parsers give typed errors
// ([OrderError], [RangeError], [ParseError], [SpecError], [AssessError]) whose
// kinds errors.Is tells apart; nothing panics but what is named Must….
//
// # Sources
//
// That neither conformity nor nonconformity is proved while the uncertainty of
// a measurement reaches over a limit is the decision rule of ISO 14253-1 (from
// memory); here the uncertainty is the bracket, and the answer Undecided. The bracket of two blades, the limits of one-sided
// wording and the new-part band beside the wear limit are common practice of
// the trade. The arithmetic is held to exact rationals by the tests, the
// verdicts to a count of every case on a grid.
package tolerance
