// Package feeler turns trials with feeler blades into what they say of a gap:
// a bracket, not a number.
//
// # What is measured
//
// A blade of known thickness either goes into a gap or it doesn't. One that
// goes in says that the gap is at least the blade; one that doesn't, that it is
// less. The thickest that entered and the thinnest that was tried and refused
// leave a bracket, closed below and open above:
//
//	            .0025 in goes in    .003 in does not
//	                   ▼                  ▼
//	───────────────────[██████████████████)─────────────────→ gap
//	0                0.0635             0.0762 mm
//	                          ▲
//	                  limit 0.07 mm: on which side is the gap?
//
// [Bracket] gives it. A blade that wasn't tried bounds nothing: with none
// entered the bracket is [0, u), with every one entered [t, ∞). Free and Drag
// count as entered, Forced as refused. A blade that drags is not thereby the
// gap's size: a gap that is a little larger drags as well, so the reading is a
// bracket all the same. Judged against limits ([tolerance.Band],
// [tolerance.Spec]) a bracket may lie on both sides of one. Then the verdict is
// Undecided, which is not a pass.
//
// [Check] judges the stations of one part together and says what would settle
// it. [Plan] says which blade to try next, [BlindZones] what a set of blades
// can never decide, and [Set.Stack] which blades laid together come nearest a
// size.
//
// # Blades
//
// A [Blade] is one thickness, whatever is marked on it. Blades marked in both
// units are made to one of them: that of .0025 in / 0.064 mm is 0.0635 mm thick,
// and the second mark is a rounded one, from which there is no way back. The
// first mark counts, unless the blade was measured. Blades are looked up by a
// mark, never by rounding: see [Set.Find].
//
// Sets come as [Metric8], [Metric13], [Metric20], [Imperial26] and
// [Imperial32], from [ParseSet] or [ParseSetJSON], or from [NewSet].
//
// # How to hold the parts
//
// A blade reads the least gap over its footprint: it bridges a hollow, stops at
// a burr, and laid across a curve or held askew reads small. So
//
//   - clean both faces to the metal, wipe the blade, and discard blades that are
//     nicked, bent or worn hollow at the tip;
//   - for ring side clearance hold the ring flush in its groove, at right angles
//     to the piston's axis, so that it can't tip, and slide the blade in from
//     outside between the ring and one face of the groove; try several places
//     round the piston and turn the ring through all of its groove;
//   - slide the blade straight in, without twist; begin with a thin one and go up;
//   - never force a blade: one that goes in by force has sprung or scored the
//     parts, and says no more than one that doesn't go in;
//   - blades laid together add their errors and the oil between them: wipe them
//     dry, and prefer few.
//
// Edges of blades, rings and worn grooves are sharp. Never try a gap on an
// engine that can turn: secure it against starting first. The engine maker's
// manual governs how and where a gap is measured.
//
// # Accuracy
//
// A bracket is as true as the blades and the hands. The blades are taken for
// exact, unless [BracketWithErrors] or [Check] is asked to allow for their
// errors: then a blade of t ± e that entered says at least t−e, and one of u ± e
// that did not, less than u+e. The errors are data of the user's, by class
// ([Set.WithErrors]) or by measurement ([Set.Measured]); none is built in. How
// hard a hand calls drag, and from where on force, is in no bracket.
//
// The error of a stack is given twice: the sum of its blades' errors bounds it,
// and their root sum of squares is to be expected where they are independent.
//
// Within a bracket no value is favoured. Where every one is as likely, the
// middle is the best estimate and width/√12 its standard uncertainty.
//
// A plan is exactly optimal for its prior, a stack for its target: neither is a
// heuristic's answer.
//
// # Rounding
//
// Nothing is rounded but [Stack.RootSumSquareError], up to the picometre.
// Expected numbers of trials are exact fractions.
//
// # Errors
//
// [InputError], [DuplicateError], [MarkError], [TrialError],
// [ContradictionError], [StackError], [PlanError] and [StationError], each with
// a kind for errors.Is. Reading JSON gives the errors of a strict reader, with
// line and path.
//
// # Sources
//
// That the gap is the thickness that goes in, confirmed by the next size not
// going in, is measuring practice attributed to JIS B 7524, and the paired
// blades of US Army valve-clearance instructions (TM 5-3820-233-12/1,
// TM 5-3810-300-24&P-3: .011 in passes, .013 in does not). Two leaves laid
// together, wiped and free of nicks: TM 1-1500-204-23-9. The standard sets are
// habits of the trade, from memory. Side-clearance limits of 0.03 to 0.07 mm in
// the examples are common practice. Stacks and plans are checked
// against exhaustive searches in Python, errors of stacks against mpmath.
package feeler
