// Package crank holds what is measured on a crankshaft, its bearings and its
// rods, on the oil pump that feeds them, and the balance and the motion that
// follow.
//
// # Journals
//
// A journal is measured in several planes along it, each in several directions. A
// [JournalSurvey] holds what the micrometer showed, with gaps where nothing was
// read:
//
//	          0°      45°     90°     135°
//	front   59.974  59.971  59.968  59.970
//	middle  59.962  59.958  59.955  59.957   ← smaller inside: hourglass
//	rear    59.973  59.970  59.966  59.969
//
// [JournalSurvey.Inspect] gives size, out-of-round (ovality), taper, wear and the
// shape in words, each with its place, and its standing against [JournalLimits],
// fillets, thrust width, stroke and index included. What is off in all readings
// alike counts once in a size and not at all in a difference. Taper is counted in
// four ways that differ on the same readings ([JournalTaperRule]).
//
// # Undersize
//
// A journal is ground about one axis, within all that is worn away:
//
//	finished − 2·greatest wear of a side − 2·stock      on the original throw
//	least − run-out − 2·stock                           a main with a bend left in it
//
// A crankpin wears on one side, so it loses twice what its diameters show;
// diameters alone bound the clean size ([CleanSizeByDiameters]). About a moved
// centre it loses less, and the stroke changes by twice the shift along the throw
// ([CleansUpAt], [StrokeAfterShift]). [ChooseUndersize] finds whether all journals
// of a kind may run on as they are, and else the one undersize that all clean up
// at, from the shells in stock, with the journal that forces it, the least size
// allowed and what is left of the hardened case.
//
// # Oil clearance
//
// The least clearance is the least bore less the greatest journal, the greatest the
// other way. [OilReadings] takes the bore with the shells in place, at 90° to the
// split, or before nip housing less two walls. A crushed gauging strip
// ([StripTable]) is read by the user's own table: wider is tighter, and between two
// marks it is a bracket. [ChooseShells] shares out the halves in stock over all
// bearings at once, mixed ones too, exactly.
//
// # Shells
//
// The backs of both halves are longer than their housing by the nip (crush). With
// one bolt slack all of it stands open there:
//
//	gap = nip of the upper half + nip of the lower half,  interference = gap/π
//
// [ShellSurvey] judges gap, free spread, and the wall by a ball with its variation.
//
// # End float
//
// End float (end play) is read by dial or blades; washers on both sides take off
// twice their oversize. [ThrustTable] keeps a published four-step choice with its
// gaps, where both neighbours are named; [ThrustFit] finds what to fit.
//
// # Run-out
//
// Half of a dial's reading (TIR) is the bend only where the journal is round. A
// [RunOutSurvey] parts eccentricity from ovality and lobing, takes off the
// supports' own run-out by place, and compares neighbouring mains by the vector
// between them ([NeighbourTest]). Web deflection of large shafts is [WebSurvey].
//
// # Rods
//
// [RodCheck] judges length and bend from two signed readings, twist over the real
// span, and side clearance, [RodBore] either eye's size, ovality and taper,
// [BoltCheck] bolts by their free length, growth and stretch. [RodCapShift] tells a
// cap that sits off its rod, [RodCentres] the distance between centres.
//
// # Oil pump
//
// [Pump] judges tip, end, body and backlash by blade and straight-edge, gasket and
// wear of the cover counted, and says of each what to do: new gears, or a body that
// is worn. [ReliefSpring] tells the pressure that the relief valve opens at.
//
// # Balance
//
// [Bobweight] is what a crankpin carries on the balancing machine,
// [UnbalanceRotor] what may be left by grade and speed, split to two planes, and
// [Drilling] the hole or the plug that puts it right. Spin a shaft behind a guard
// and keep out of its plane; set plugs parallel to the shaft, so that they can't fly
// out.
//
// # Geometry
//
// [Slider] is the exact slider-crank, pin offset included: position, speed and
// acceleration by crank angle, and the two angles of a position; [SliderCrank] is
// the same with units, checked. [RodRatio] and [MeanPistonSpeed] go with it, and the
// handbooks' two-term series ([SeriesPosition]) to find what a printed number was
// worked with.
//
// # The whole shaft
//
// [Inspect] goes through all of it by two documents, in the order of the bench:
// [Limits], what the manual and the shop give, and [Readings], what was measured so
// far. It decides for each part and each set, names the journal that forces an
// undersize, orders shells, washers and bolts, predicts what the clearances will be,
// and lists what is still to be read. Condition overrules size: a cracked shaft isn't
// passed by its sizes, nor one that wasn't crack-tested where the limits ask for it.
// [Limits.Blank] makes the empty document, whose missing readings are a bench sheet.
//
// # Accuracy and rounding
//
// Sizes, differences and clean sizes on the original axis are whole picometres,
// and exact; means are rounded outward. A moved centre is found in float64 and
// rounded to the picometre, and its clean size holds for it. Shells are chosen in
// whole picometres. What crosses quantities is float64, as each formula says.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what was
// expected; a journal that isn't ground without its maker's process is a
// [GrindError], and a stock that can't be shared out in reasonable time a
// [ShellSearchError]. No function panics.
//
// # Safety
//
// A shaft is heavy and round: lift it with a hoist and slings, and store it on end
// or in blocks. Test for cracks before and after grinding; restore the fillets,
// where shafts break. A nitrided shaft is not straightened, nor ground without its
// maker's process, and a cracked-cap rod is not straightened. Never file a cap or a
// shell. Bolts tightened to yield are used once.
//
// # Sources
//
// Undersizes without and with grinding: US Army TM 5-3805-262-34, p. 4-24. Taper,
// out-of-round and neighbouring mains: TM 9-2815-202-34, pp. 4-157 and 4-158. Shells
// by ball, and greater at the split: TM 55-1930-208-24 and its family; spread: TM
// 5-3805-255-14. Strips: TM 9-2320-289-34, p. 3-45. Thrust washers: TM
// 5-4210-233-14&P-2, p. 6-152. Rods: TM 9-2815-226-34-1. Unbalance: the formula of
// ISO 21940-11. The rest is geometry, checked against mpmath, scipy and exhaustive
// search; a thousandth of the journal for its clearance, and the common undersizes,
// are common practice.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass, and what stands near contact is rounded
// toward the tighter, and said to be open.
package crank
