// Package wearrate makes wear limits for a part of any size from rates: so much
// for each unit of a journal's diameter, so much for each unit of a piston's
// travel.
//
// # What a rate is
//
// Where a manual gives no limit for the very engine, or one table serves many,
// the limit may be a rate. Since it is a length for each unit of a length, it has
// no unit: 0.001 is a thousandth of an inch for each inch of bore, and a
// hundredth of a millimetre for each ten millimetres.
//
//	cylinder bore wear   0.001 × diameter                        100 mm bore: 0.1 mm
//	bearing clearance    the greatest new + 0.0005 × diameter    2.5 in journal, 0.0035 in: 0.00475 in
//	camshaft journal     the least new − 0.0005 × diameter
//	journal taper        2 × the greatest new
//
// A [Rule] is one row of such a table, a [Profile] the table with its source.
// [Rule.Spec] makes a [tolerance.Spec] of it for the part's own size, to judge
// readings against.
//
// # No default
//
// A rule of wear is a stopgap for a limit that the engine's maker hasn't given.
// Nothing in this package applies one by itself: a user chooses a profile by its
// name ([Published]) or brings one of their own ([ParseProfile]), and the name
// goes into the report. Where the maker's manual has a limit, that governs.
//
// # Accuracy and rounding
//
// Rates are exact fractions. Each product is rounded once to the quantum (1 pm),
// inward: a greatest limit down, a least one up. A reading on the limit is within
// it.
//
// # Errors
//
// Every error is an [InputError] that names the rule, the field, the value and
// what was expected; what a document's reader says is wrapped in it.
//
// # Safety
//
// A part within a rule of wear may still be cracked, scored, bent or out of the
// maker's limit. Safety-critical parts are judged by the maker's manual alone.
//
// # Sources
//
// [Published] names each profile's source. The numbers are from United States
// government manuals; the wording of the items is this module's.
package wearrate
