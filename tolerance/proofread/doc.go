// Package proofread finds slips in printed limits and in readings: a decimal
// point that moved, digits exchanged, a fraction misread, a turn of the
// micrometer lost. It names the likeliest slip and what should stand there, as
// a suspicion. Nothing is ever corrected in silence.
//
// # The idea
//
// A manual prints a size twice, 0.006 in (0.152 mm), and so checks itself:
//
//	          0.006 in = 0.1524 mm
//	               │
//	  0.015        ↓                      printed: 0.015 mm
//	────┼──────────┼──────────────→ mm    ten times that, 0.15 mm, fits
//	    0.015      0.152
//
// [CheckPair] says whether the two figures can be one size, each rounded to the
// places it shows. If they can't, it tries what happens to figures: it undoes
// each slip in each of the two, and keeps those that make them agree.
// [CheckLimits] does so for both columns of a band, [CheckWear] holds the limits
// for new parts to the wear limit, [CheckRatio] and [CheckRelated] a measure to
// one it follows from, [CheckLift] a cam's lift to reason. [CheckReadings] and
// [CheckBrackets] let the readings of a set check each other.
//
// # What agrees
//
// Rounding is to nearest. A tie may go to the even digit or away from zero,
// since manuals follow both rules: 3/32 in is 2.3812 mm by the one and 2.3813 mm
// by the other. Either column may be the one the part was designed in, or both
// may come from a third, exact size; so two figures agree where they are no
// further apart than half a step of each together. [Basis] says which of these
// holds. No pair that was rounded once by either rule is ever flagged.
//
// A figure that was cut off or rounded up instead, or rounded twice on its way,
// is flagged as such, the mildest kind ([Kind.Mild]), but only where no exact
// size rounds to both figures. With a column known to be the designed one,
// [CheckConversion] sees every figure that was not rounded to nearest.
//
// Limits of which one column is the other rounded inward, the least up and the
// greatest down, follow a rule in use and are no slip.
//
// A fraction is rounded to its own denominator, but to sixteenths at least: a
// half is 8/16. Where slips are looked for it counts as exact.
//
// # What is suspected
//
// An explanation must make the figures agree within the rounding that they show
// then, or come near it: a decimal point within 2 %, after which a digit must
// still be wrong or cut off. The simpler comes first: slips of which a figure
// can have few, then slips of digits in the order of how often they happen, then
// two slips at once. [SlipOf.Rank] gives the place; of equal ranks
// ([ResultOf.Tied]) none is likelier.
//
// A factor is a factor whichever figure is wrong: 0.006 in (0.015 mm) may be
// 0.006 in (0.152 mm) or 0.0006 in (0.015 mm). Both are given. First comes the
// one that leaves out what no workshop measures (steps finer than 0.0001 in or
// 0.001 mm, more than a metre), then the one that keeps the rounder figure,
// which is likelier the designed one, and then the second, as the converted one.
// In a band the other limit has a say: the column whose limits lie further
// apart, or are out of order, is suspected first.
//
// # How much it finds
//
// Slips made at random in clearances and sizes, inches to 3 or 4 places and
// millimetres to 2 to 4 (TestPower; a fixed seed, so the shares are the same on
// every machine, and lower ones fail):
//
//	slip                                  flagged   named first   among the explanations
//	decimal place, one or two               100 %         100 %         100 %
//	two neighbouring digits exchanged        99 %          90 %          93 %
//	one digit wrong                          91 %          85 %          96 %
//	one digit lost, not a 0 nor the last     93 %          52 %          84 %
//	one digit doubled, not a 0 nor the last  84 %          57 %          91 %
//	twice, half                             100 %     100, 95 %     100, 95 %
//	fraction taken for the next mark        100 %         100 %         100 %
//	a figure not converted                  100 %         100 %         100 %
//	the two exchanged                       100 %          99 %         100 %
//	hundredths of mm and thou mixed         100 %      82, 92 %      85, 93 %
//	wrong sign                              100 %         100 %         100 %
//	run through a temperature conversion    100 %         100 %         100 %
//
// What isn't flagged changed less than the other figure shows. With figures of
// one or two digits several slips fit by chance as a rule: look up the source.
//
// # Readings
//
// One reading that stands ten times, or 0.5 mm, from where its neighbours say
// it should be is named with its likely cause; [CheckBrackets] gives the
// thresholds. One turn of the thimble is 0.5 mm on a metric micrometer, whose
// sleeve has a mark each half millimetre, and 0.025 in on an inch one: 22.86 for
// 22.36 is a half-millimetre mark miscounted, one whole turn. Of slips made at
// random in sets of 3 to 12 readings nine in ten or more are named, and of
// thousands of honest sets none (TestReadings_power).
//
// What can't be seen from inside a set: an error that all readings share, such as
// a zero error or a ring gauge taken for another; a slip in half of the readings
// or more; one that is no greater than honest wear.
//
// # Accuracy
//
// All comparisons are in whole quanta and exact, but for π, which is held to
// 10⁻¹⁶ where it divides, and for products, which are rounded to a quantum.
//
// # Rounding
//
// What a figure should be is rounded to nearest, ties to even, to the places of
// the figure it stands for, or to as many as the other figure supports.
//
// # Errors
//
// A text that can't be read is a [ParseError]. What can't be checked (a value
// out of range, columns that give different limits, fewer than three readings)
// is a [CheckError], not an answer. For errors.Is: [ErrSyntax], [ErrForm],
// [ErrRange], [ErrTooFew], [ErrRatio].
//
// # Safety
//
// That nothing is flagged proves nothing: both figures can be wrong alike, and a
// suspicion is no correction. What costs an engine, or an arm, is looked up in
// the engine maker's manual.
//
// # Sources
//
// The inch is 25.4 mm (24 FR 5348, 1959). Rounding to even: NIST SP 811,
// B.7.1; half up: 7 CFR 51.322. Limits rounded inward: as IEEE 268 and ASTM SI
// 10 have it, from memory. How often digits go wrong: Verhoeff, Error Detecting
// Decimal Codes (1969), as N. Wagner gives it in The Laws of Cryptography
// (2002). The micrometer's turns: TM 9-243, pp. 7-5 and 7-6. Lift as lobe
// height less base circle is geometry. What a workshop measures, how far a wear
// limit may lie and how much a lobe lifts: common practice. The slips that the
// tests must name are from US Army and Navy manuals; the list stands with their
// numbers in testdata/published.
package proofread
