// Package cylinder holds what is measured on a cylinder block: bores, mating
// faces, liners, the main bearing tunnel, and the volumes that follow.
//
// # Bores
//
// A bore is gauged at several levels, each in several directions. A
// [BoreSurvey] holds what the gauge showed, with gaps where nothing was read:
//
//	           along   across the crank
//	top        0.030   0.042  ← the worst of wear: below the ridge, across
//	middle     0.024   0.031
//	bottom     0.015   0.018    deviations from a ring of 86.000 mm
//
// [BoreSurvey.Inspect] gives size, mean, out-of-round, taper, choke, wear, ridge
// and the shape in words, each with its place and, against [BoreLimits], its
// standing; [BoreSurvey.Finding] what would settle an undecided one.
//
// What is off in all readings alike, the setting ring's error, counts once in a
// size and not at all in taper and out-of-round. Two directions at right angles
// see an oval through cos 2φ and miss one at 45° ([OvalShown]), so an
// out-of-round is "at least" so much; [LeastOvalShown] says how little any set of
// directions may show. Taper is counted in five ways that differ on the same
// readings ([TaperRule]); a limit holds with its own. Wear counts from the size
// last finished to: a bore at +0.50 mm, worn by 0.06 mm, is not worn by 0.56 mm.
// A direction never read, a suspect reading, a torque plate left off are
// [BoreNote]s, and [BoreReport.Worst] passes no bore over the first two.
//
// # Oversize
//
// The wall point i lies at finished/2 + wear i from the original axis. To clean
// up, the bored bore must lie beyond each by the least cut, with a straight bar
// at one centre C for all levels, and honing takes its stock off the diameter:
//
//	least size = 2·max|P − C| + 2·cut + hone
//
// [LeastSize] works it out for three places of the bar ([Centring]). The
// unworn bore between the walls read, at finished/2, counts as a wall in every
// direction: four points alone would leave the corner between two unworn walls
// uncut. From diameters alone an excess e needs between finished + e and finished
// + 2e, before cut and hone ([LeastSizeByDiameters]); where that straddles two
// kits, dial the worn side.
//
// [ChooseOversize] finds one size for the block, the bore that forces it, and
// the options side by side, with liners, stock and prices. A size is proved by the
// measured piston and its clearance, not by the nominal step. [WallsLeft] and
// [LargestByWall] say what boring leaves of walls read with an ultrasonic gauge.
// Plated, coated and bare alloy bores are refused without the maker's process.
//
// # Finish sizes
//
// [FinishSizes] gives each bore the size for its own piston, before and after
// honing, at 20 °C and in a block that isn't. [BoreBand] is the band of sizes
// that keeps a clearance within its own.
//
// A block is lifted with a hoist and its own eyes, never by hand. Boring and
// honing throw dust and oil mist: guard eyes and lungs, keep sleeves and gloves
// off the spindle, and wash the bores until a white cloth stays clean, since what
// is left of the hone grinds the new rings.
//
// # Liners
//
// A wet liner stands in a counterbore and protrudes above the block face, so
// that the gasket grips it:
//
//	        ┌────────┐ ↕ protrusion
//	────────┤ flange ├──────── block face
//	        │        │ ↕ counterbore depth
//	        └─┐ shim ┌┘
//
//	protrusion = flange + shim − counterbore depth
//
// [WetLiners] judges protrusion, its variation round a liner, and the step
// between neighbours; [WetLiners.ChooseShims] finds the shims that bring all
// of them within their limits at once, or says what stands in the way. Read
// protrusion with the liner clamped as the manual says.
//
// A dry liner is held by interference. [DryLiner] judges it from the measured
// bore and liner, with the contact pressure and hoop stresses of two rings of
// different materials by Lamé's equations; [DropIn] says how hot the block or
// how cold the liner must be to drop in. Heat in an oven, never with a flame,
// and wear gloves. Dry ice and liquid nitrogen displace the air (asphyxia) and
// burn by cold. Pressed parts can jump or shatter: stand behind a guard. A
// caustic tank dissolves an alloy block, and burns skin and eyes.
//
// # Displacement and compression
//
// A [Build] is what makes the compression ratio of a cylinder, each size with
// the error of its measurement:
//
//	     ┌──╮ chamber ╭──┐       head
//	═════╡  ╰─────────╯  ╞═════  gasket, compressed
//	─────┐               ┌─────  block face
//	     │  deck, below  │
//	     │╔══╗ dish  ╔══╗│
//	     │║  ╚═══════╝  ║│ ← ring land
//
//	ratio = 1 + swept/(chamber + gasket + deck + dish − dome + ring land)
//
// [Build.Compression] gives the least and the greatest ratio over all that the
// readings allow. A [Deck] says whether it is below or above the block face.
// [Build.GasketFor] and its fellows say what gives a wanted ratio,
// [Build.Rebored], [Build.HeadSkimmed] and [Build.BlockSkimmed] what machining
// does. A skim takes the chamber's own open area at the face, not the bore's.
// [SquishCheck] judges the squish (quench), which the highest piston governs.
// [RetardByTeeth] says how late a lowered head makes a camshaft that is driven
// from below. Where a piston may hit the head that is a [ContactError]. Disable
// fuel and ignition before an engine is turned to measure it.
//
// # Flatness
//
// [Face] judges a face by a straight-edge with blades under it, laid along both
// edges, both ends and both diagonals ([SixLines]). On a hump of H it rocks and
// shows H when held level, to 4H rocked over: see [Hump]. A pure twist shows
// nothing along edges, ends or any line parallel to them, and half of itself
// along the diagonals: see [NineHeights]. [FaceGrid] judges a face by heights
// at stations. [FaceSkim] says what a skim takes and what it leaves of the
// height. Where the camshaft runs in the head its tunnel comes first
// ([CamTunnel]). Lift a head with help or a hoist, and set it down on wood.
//
// # Cross-hatch
//
// Four angles go by that name; a [CrossHatch] gives each by its own. [Hone]
// gives it from the setting, and the setting from it; a [StrokeRate] says
// whether strokes or cycles are counted.
//
// # Main bearing tunnel
//
// [MainTunnel] judges size, ovality and taper of every housing, with the caps
// torqued and the shells out; [TunnelLine] judges how the saddles line up, by
// heights or by blades under a straight-edge. [LineHone] says what the least
// line hone takes at each crown and cap, and how far the crank rises: every
// piston rises with it, so the deck clearance shrinks by as much.
//
// # Before the strip
//
// [CompressionTest] and [LeakageTest] compare the cylinders with one another
// and with the manual's limits, and give each pattern as a [Pointer]: it
// points, it never proves. Disable fuel and ignition for compression; in a
// leakage test the air turns the crank, so leave no tool on it.
//
// # A whole block
//
// [Limits] is what the manual and the shop give for a block and its head, and
// [Readings] what was measured, both as documents; a reading left out is still to
// be taken. [Inspect] gives what looks like a slip, findings in the order of the
// bench, what becomes of each part and which one forced it, what is still to be
// measured, what to order and what the bores will be. A cracked part is not saved
// by its sizes, and one that nobody crack-tested, where the limits ask for it,
// isn't passed. [Limits.Blank] is the empty document, whose missing readings are
// the bench sheet.
//
// # Accuracy and rounding of bores
//
// Sizes, differences and least sizes on the original axis are whole picometres,
// and exact; means, and warm readings, are rounded outward. Walls in the plane
// are float64, rounded so that a size covers them all: outward by a picometre or
// two at most.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what was
// expected; a bore that isn't rebored is a [ProcessError]; a reading that its
// gauge can't show is package instrument's. No function panics.
//
// # Sources of bores
//
// That the mean of the stations is judged against the limits of size and
// out-of-round at each station, that each oversize step moves all three limits by
// its own amount, and that a head end wider than the foot is rejected where choke
// is asked for: US Army TM 9-2815-220-24. Wear for each inch of bore and taper
// for each inch of travel: TM 10-3930-647-14&P, in package wearrate. The rest is
// geometry, its least circle checked against scipy's optimiser; oversize steps,
// the least cut and what wears off in service are common practice.
//
// # Accuracy and rounding of volumes
//
// Volumes are rounded outward to 10⁻¹¹ cm³ and heights found from them to the
// picometre; ratios, and angles from speeds, are float64 rounded outward by
// 2⁻⁵⁰ of them.
//
// # Sources of volumes, faces and cross-hatch
//
// Geometry, checked against textbook examples (Gupta; Mathur and Sharma; Kates,
// whose 0.785 for π/4 is 0.051 % short), and against mpmath at every
// combination of ends. What a straight-edge shows is derived, and checked with
// linear programming; limits such as 0.003 in across and 0.006 in along are
// those of US Army TM 5-4320-300-14, cross-hatches of 90° to 120° included of
// TM 10-4320-351-14.
//
// # Sources of the rest
//
// Lamé's solution is checked against a boundary-value problem and a textbook
// (Bhavikatti, Strength of Materials, example 8.8.17; the temperature printed
// there is worked out on the wrong diameter, on the right one it is 41.67 °C),
// the line of saddles against a linear programme, the choice of shims against
// enumeration. What patterns point to is common practice.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package cylinder
