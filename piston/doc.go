// Package piston holds what is measured on pistons, their rings and their
// gudgeon pins: grooves and end gaps, skirts, pins, decks and matched sets.
//
//	    crown   ┌─────────────────────┐ ┐ compression height
//	            ├─ top groove ────────┤ │   (pin's axis to crown)
//	            ├─ second groove ─────┤ │
//	            ├─ oil ring groove ───┤ │
//	            │        ╭───╮        │ │
//	thrust face │        │pin│        │ ┘
//	  of the    │        ╰───╯        │
//	  skirt     │                     │
//	            └─────────────────────┘
//
// The formulas are functions on plain sizes. The structs put readings, limits
// and formulas together and answer with a finding and what to do next. None of
// the limits is built in: they are the engine maker's, for that engine.
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
// An oil control ring assembly has no limit of its own unless the maker gives
// one.
//
// # Ring end gap
//
// The gap between a ring's ends lets it grow with heat. It follows the bore:
//
//	gap elsewhere = gap + π · (mean diameter there − mean diameter where it was read)
//
// exactly rounded by [RingGapInBore] and undone by [BoreForRingGap]. The rule of
// thumb of 3 for 1 falls short by 4.5 %: [RingGapRuleError]. What counts is the
// way round the bore, which is π times the mean of its diameters in all
// directions, whatever its shape: [RingBoreDiameter] for an oval,
// [RingGapOneSided] for a wall worn on one side, where two diameters mislead.
// Wear of the ring's face opens the gap by 2π times the radial wear
// ([RingGapAfterFaceWear]); wear of a bore is told by its diameter, and opens
// it by π times that.
//
// A ring bends about its middle line, and there the formula holds. Between the
// edges of its face the gap changes by bore/(bore − thickness) times as much,
// about 4 %, and between those of its back by less: [RingOpeningAtFace]. So
// [RingGap], which judges the greatest gap at the worn top of the travel and
// the least at its smallest place, holds both in its brackets and says what to
// file off ([RingFiling]).
//
// Hot, the gap closes as the ring grows more than the bore does: [RingHeat]
// tells what is left, the ring's temperature at which its ends touch, and the
// gap to file to, between the edges of the face, which touch first.
// [RingGapFactors] has the trade's rules for the least gap. A standard ring in
// an oversize bore has π times the oversize too much gap, and doesn't touch the
// wall near it: [RingGapInOversize].
//
// # Ring grooves
//
// Behind the ring there must be room too: [RingBackClearance] with the ring
// held flush, the least that it can have, and [RingBackRunning] at work. A worn
// groove is re-cut for a spacer: [ChooseSpacer] takes the thinnest that cleans
// it up and leaves the land its strength.
//
// A keystone (tapered) groove has no side clearance of its own. It is measured
// over two gauge pins, with half the included angle: [KeystoneWidth],
// [KeystoneGroove]. Its ring has more clearance the further out it stands:
// [KeystoneClearance] with its face flush or on the bore, [KeystoneNormal] as a
// blade takes it, [KeystoneSink] as a depth gauge does.
//
// # Skirt
//
// The skirt's clearance is the bore less the skirt, across the thrust faces at
// the height that the maker states: [SkirtClearance], with taper, ovality, wear
// and collapse in [SkirtSurvey]. Or a feeler strip is pulled through it: the
// published rules disagree, so a [PullRule] is data and the answer names it.
// [SkirtHeat] is the clearance hot, from two metals and two temperatures.
//
// # Gudgeon pin
//
// In the piston's bosses and in the small end, floating or pressed, cold or hot:
// [PinSurvey], [PinHeat]. [PinGrades] and [ChoosePin] select.
//
// # Deck and gasket grade
//
// Compression height, rod, half the stroke and block height make the deck:
// [DeckBelow] and [DeckAbove], each size from the others. Protrusion is the mean
// of two points over the pin's axis ([DeckProtrusion]), and the greatest piston
// chooses the head gasket: [GasketCheck].
//
// # Matched sets
//
// [MassSet] tells the spread of a set and what to take from which part,
// [MassRod] a rod's big end and small end apart. [MatchBores] and [MatchRods]
// pair by exact assignment: no other pairing is better.
//
// # A whole set
//
// [Inspect] takes two documents, the manual's [Limits] and the [Readings] at the
// bench, and gives findings in the order of the bench, a decision on each part,
// what is still to be measured, what to order and what clearances will be after
// the work, in the shape that package tolerance/inspection has for all parts of an
// engine. The bores come with the readings: a clearance needs them, a ring gap
// read at one place is carried to the worn top by them, and one that is finished
// for another kit asks for new pistons. A piston in another's place, or the wrong
// way round, is an error.
//
// # One formula, many readings
//
// A formula of lengths is generic over [tolerance.Number]: the same
// [SideClearance] gives the number with lengths, the bracket with intervals,
// the propagated uncertainty with estimates and the written-out solution with
// terms. A formula that crosses quantities, such as [RingGapHot], is generic over
// [tolerance.Real], in millimetres, kelvins and radians.
//
// # Accuracy
//
// Sums and differences are exact. Where a formula over lengths rounds, its
// comment says how often: once, to the nearest quantum of 1 pm, if it says
// nothing. Formulas over reals are good to about 14 digits; what the structs
// give from them is rounded to the dangerous side, by a few picometres or
// 2·10⁻⁹ K. The models behind them (a ring that is equally warm all over, a
// wall that the ring follows) are far coarser, and each comment names its own.
//
// # Rounding
//
// Numbers to the nearest, ties to even; brackets outward, limits inward. A gap
// or a clearance that is left is rounded down, a temperature that may be reached
// down, a gap that is needed up, a protrusion up.
//
// # Errors
//
// A size that can't be is an [InputError], which names the reading, its value
// and what was expected: a ring as wide as its groove, a clearance below zero
// (an interference), a gap as long as the way round the bore, a size of zero or
// less, a temperature below absolute zero, a stock with nothing in it. Formulas
// give no errors: what leaves the range is out of range and stays so.
//
// # Safety
//
// Ring ends and worn groove edges cut, and rings and circlips spring: wear
// gloves and eye protection, and use a ring expander. File rings from the face
// inward, so that a coating isn't torn off. Never force a blade. Pistons and
// rods are heated evenly and never with a flame. A verdict here is arithmetic on
// the readings and limits it was given; Undecided is not a pass, and the engine
// maker's manual governs.
//
// # Sources
//
// The arithmetic is geometry and linear expansion, held by the tests to
// high-precision references. That the way round a convex curve is π times its
// mean width is Cauchy's theorem. Groove width = ring height + side clearance is
// as service manuals give it; that a worn groove is judged with a new ring
// segment held flush, and the piston renewed where a blade of the limit's size
// enters, is from a US Army manual (TM 9-2815-226-34-1, p. 3-143). The rule of
// 3 for 1 is from TM 5-3805-261-34, p. 13-46; that a ring is read near both ends
// of its travel from NAVEDTRA 14076, p. 3-15; keystone grooves over pins from
// TM 10-3930-643-34, p. 13-55; the pull rules name theirs. Expansion
// coefficients are from a textbook or from memory, as each says. Limits such as
// 0.03–0.07 mm are common practice.
package piston
