// Package piston holds what is measured on pistons and their rings.
//
// # Ring side clearance
//
// A ring must be free to move in its groove and yet seal against the groove's
// lower face. The room it has along the piston's axis is the side clearance:
//
//	      groove width
//	    |←──────────→|
//	────┐            ┌──── piston
//	    │┌──────────┐│
//	    ││   ring   ││  ← bore
//	    │└──────────┘│
//	────┘            └────
//	     |←──────→|
//	     ring height        side clearance = groove width − ring height
//
// It is taken with blades between ring and groove ([tolerance/feeler] turns the
// trials into a bracket), or calculated from two micrometer readings with
// [MeasureSideClearance]. With blades: clean the groove to the metal and the
// ring to its faces, hold a segment of the ring in the groove flush with the
// land, so that it can't tip, and try at several places round the piston. A
// blade reads the least gap over its footprint, so it bridges a hollow and
// misses a step worn into the groove.
//
// One clearance does not tell groove wear from ring wear. With the used ring's
// height it does: [ShareWear] says whose the wear is, [TryNewRing] whether a
// new ring would bring the clearance back. A thicker ring in a worn groove is
// never the remedy, since the groove's faces are no longer flat or square: a
// new ring, the groove re-cut with a spacer, or the piston.
//
// A keystone (tapered) groove has no side clearance of this kind. An oil
// control ring assembly has no limit of its own unless the maker gives one.
//
// # One formula, many readings
//
// The formulas are generic over [tolerance.Number]: the same [SideClearance]
// gives the number with lengths, the bracket with intervals, and the
// written-out solution with terms.
//
// # Accuracy and rounding
//
// Sums and differences are exact. [GrooveShare] rounds once, to the quantum of
// its quantity (1 pm for a length); brackets round outward.
//
// # Errors
//
// A size that can't be is an [InputError], which names the reading, its value
// and what was expected: a ring as wide as its groove, a size of zero or less.
//
// # Safety
//
// Ring ends and worn groove edges cut: wear gloves and eye protection when
// spreading rings, and use a ring expander. Never force a blade. A verdict here
// is arithmetic on the readings and limits it was given; Undecided is not a
// pass, and the engine maker's manual governs.
//
// # Sources
//
// The arithmetic is geometry. Groove width = ring height + side clearance is
// as service manuals give it; that a worn groove is judged with a new ring
// segment held flush, and the piston renewed where a blade of the limit's size
// enters, is from a US Army manual (TM 9-2815-226-34-1, p. 3-143). Limits such
// as 0.03–0.07 mm are common practice.
package piston
