// Package inspection is the shape that an inspection has, whatever the part:
// what a document of limits and one of readings are made of, and what follows
// from them.
//
//	limits ───┐
//	          ├─→ slips → findings → decisions → orders → what it will be → measured again
//	readings ─┘            │
//	                       └─→ what is still to be measured
//
// The packages that know the parts (cylinder, piston, crank, valvetrain) each
// have their own documents, made of these pieces, and give a [Report] each;
// [Merge] puts the reports of one engine into the order of the bench.
//
// # Documents
//
// A [Limit] is what the manual prints of a measure, in one column or two, for
// new parts and for worn ones. A [Reading] is what was measured, or nothing
// yet: a file that is half filled in is the normal case. Nothing is made up for
// a reading that isn't there. It becomes a [Missing] line, and from an empty
// document all lines together are a blank bench sheet.
//
// # Slips come first
//
// [LimitOf.Proofread] holds a manual's columns to each other and
// [ProofreadReadings] the readings of a set. What looks like a slip is listed
// before the findings, a decision that rests on it names it, and nothing is
// corrected.
//
// # Decisions
//
// An [Action] is re-use, re-use after cleaning, recondition at the same size or
// to a named one, repair, replace, scrap, or measure again, which is the zero
// value: what isn't known is not passed. [Worst] finds the decision that
// governs a set. A [Condition] overrules sizes by [Condition.Overrule]: a
// cracked part is not saved by its measures, and one that wasn't crack-tested
// where the limits ask for it isn't passed.
//
// # After the work
//
// A report predicts what sizes and clearances will be. [Compared] holds what
// was measured after the work to that, and names what came out otherwise.
//
// # Accuracy
//
// All is exact: this package compares and sorts what others worked out.
//
// # Errors
//
// Errors are an [InputError], a [MixUpError] for matched parts in each other's
// place, a [MissingError] where a whole document was asked for, or any error
// with its path in a [PathError].
//
// # Safety
//
// No decision here is an order to fit a part. The engine maker's manual governs,
// and work on running engines is for those licensed to do it.
//
// # Sources
//
// The order of the steps follows the trade's own: inspection chapters of US
// training manuals for engine mechanics (NAVEDTRA 14076, FAA-H-8083-32). What a
// scored, pitted or blued part calls for is common practice.
package inspection
