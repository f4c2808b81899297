// Package selective fits parts by choice where making them all alike would cost
// too much: pistons and bores sorted into grades, shells and shims picked from
// the sizes in stock, a batch of parts paired with one another.
//
// # What is chosen
//
// A table of grades ([Grades]) is the user's own data: a name and a band for
// each. [GradesOf.Place] says in which grade a measured part falls:
//
//	        A            B            C
//	├───────────┼───────────┼───────────┤      bore, mm
//	86.000      86.010      86.020      86.030
//	                 ├─┤                       86.014 ±0.001: B
//	           ├─┤                             86.010 ±0.001: A or B, and says so
//
// Where two grades select a mating class, as the marks on block and crankshaft
// select the colour of a shell, the combinations are a table too
// ([MatingTable]).
//
// Where sizes are known instead of grades, [Choose] tells which class in stock
// comes nearest to the wanted fit, and [Match] pairs a whole batch. In both a
// fit is
//
//	base + effect × size
//
// a hole less a shaft (base the hole, effect −1), a tunnel less a journal less
// two shell walls (base what lies between, effect −2), a measured valve
// clearance and the old shim less the new one (base their sum, effect −1).
//
// # Which is best
//
// A fit that is in the wanted band for certain comes first, then one that may
// be, then one that isn't. Among those, the one whose greatest possible distance
// from the aim is least. Of two just as near, [Choose] takes the greater
// clearance, which is common practice and the safer side where parts run warm,
// and says that there were two.
//
// [Match] keeps as many fits in band, for certain, as can be; of all ways to do
// that it takes the one with the least greatest distance from the aim, and of
// those the one with the least sum. Parts that are left over are named, each
// with the reason and the nearest mate.
//
// # Ambiguity
//
// A bracket across a boundary, a size on a limit that two grades share, a
// bracket that reaches into no grade: each is reported with all that it may be.
// [GradesOf.Validate] names the gaps, shared limits and overlaps of a table. A
// manual's table may well have them: one prints thrust washers for end play up to
// 0.016 in and from 0.017 in, and nothing for what lies between.
//
// # Accuracy and rounding
//
// All is in whole quanta, and exact; an effect that is a fraction rounds a
// bracket outward. Pairing is exact too, not a search that may stop early.
//
// # Errors
//
// Every error is an [InputError] that names the table, the part or the class,
// the field and what was expected.
//
// # Safety
//
// A fit that is right by the numbers can be wrong by the marks: check that the
// grades stamped on the parts are from the same table, measure again what lies
// near a boundary, and turn the engine by hand before it runs. The engine
// maker's manual governs.
//
// # Sources
//
// The arithmetic of shims (new shim = old shim + measured − wanted clearance,
// the thinner of two as near) is common practice of the trade. The gap in a
// printed table is from TM 5-4210-233-14&P-2, p. 6-152.
package selective
