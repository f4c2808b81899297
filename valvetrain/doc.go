// Package valvetrain holds what is measured on a cylinder head's working parts
// and on the drive of its camshaft: guides and stems, valves, seats, springs,
// valve clearance, camshafts, timing, and the way from piston to valve.
//
//	    ___ tip
//	   │ │     ─┬─ retainer, collets  ┐
//	   │ │      │                     │ installed height
//	   │ │   spring                   │ of the spring
//	 ┌─┤ ├─┐ ───┴─ spring seat        ┘
//	 │ │ │ │ guide, protruding by so much
//	 │ │ │ │
//	   │ │
//	 ╱ │ │ ╲   seat
//	╱──┴─┴──╲  ← face
//	└───────┘  ← margin
//
// # Stem and guide
//
// The clearance of a stem is guide bore less stem ([GuideClearance]). A
// [GuideSurvey] holds bores at several depths across several ways, and the stem
// where it runs in the guide: a valve turns and slides, so the clearance at a
// depth lies from the least bore less the greatest stem to the greatest bore less
// the least stem. Bell-mouth is mouth less waist across the same way.
//
// Rocked under a dial gauge, with the contact h beyond the guide's end and L of
// the stem engaged, a valve travels R, and in a straight guide
//
//	c = R·L/(L + 2h)
//
// ([RockingClearance], with the derivation; [RockingClearanceExact] takes the
// tilt exactly, and [RockingShortfall] bounds the difference, some nanometres). In
// a bell-mouthed guide the same reading is a weighted mean of the mouths, and
// bounds neither: R = near + (h/L)·(near + far), [RockingMouths]. Two dial places
// tell the mouths apart ([RockingNearOfTwo], [RockingFarOfTwo]);
// [RockingStations] says what a measured guide should show. A manual's limit for
// rocking is a limit for R itself, with the dial where the manual puts it, and
// [Rocking] compares it so.
//
// [ChooseGuideRepair] finds the least work in stock (another valve, an oversize
// stem, a liner, a guide) whose clearance is in its band for certain. Guides come
// before seats, for a seat is cut from its guide.
//
// # Valve
//
// A [Valve] is judged by margin, run-out of face and stem, tip, length and face
// angle. Ground by so much along the stem, its margin loses as much; square to the
// face the depth is that times the cosine of the angle ([GrindSquare]).
//
// # Seat
//
// Angles count from the plane square to the stem, so that the flat chamber is 0°
// and the straight throat 90°; a [SeatAngle] is made by naming the count, since
// others count from the stem (30° is then 60°) or give the whole cone (120°).
//
//	outer = inner + 2·width·cos α
//
// The width is along the cone. A cutter of another angle, fed along the stem from
// where it just touches, narrows the seat by Δw for a feed of
//
//	from above, β flatter:   Δw·cos α·(tan α − tan β)
//	from below, γ steeper:   Δw·cos α·(tan γ − tan α)
//
// ([FeedFromAbove], [FeedFromBelow], and both by diameters). [SeatPlan] finds the
// three cuts that bring a seat to a diameter and a width, [Seat.ContactOn] where it
// lies on the face, [SeatSurvey] judges it. Cuts of seat and face add: by their
// sum the valve sinks, its tip and the spring's retainer rise, the clearance closes
// ([TipGrindFor], [InstalledAfter], [RecessionShim]) and the chamber grows
// ([Sinkage]), by the seat's edge for the one and the valve's head for the other.
//
// # Springs
//
// A [Spring] is judged by length, squareness, loads at heights, and the margin to
// coil bind: installed height − lift − solid height. Free length alone proves
// nothing. Loads are read at two heights or more and joined by straight lines;
// past them only a cylindrical spring is followed. The rate of wire and coils,
// G·d⁴/(8·D³·n) ([SpringRateOfCoil]), takes active coils, not all of them
// ([SpringEnds]), has no curvature factor (those are for stress: [WahlFactor],
// [BergstrasserFactor]), and is refused for conical and progressive springs. An
// inner spring stands at a height of its own ([SpringNest]). [ChooseSpringShims]
// finds the shims for a height or a load; judge the spring again with them, since
// they come out of the margin to coil bind.
//
// # Valve clearance
//
// Valve clearance (lash) is the gap that the train has with the valve shut and the
// cam on its base circle, cold or hot as the manual says. It is read with blades,
// so it is a bracket: at least the blade that went in, less than the one that
// didn't ([ProveClearance] names the two that prove a band). What changes it
// decides the formula:
//
//	shim over or under a bucket   new shim = old shim + measured − wanted
//	shim through a rocker         new shim = old shim + (measured − wanted)/ratio
//	screw                         change = pitch · turns · ratio
//	hydraulic plunger             preload = travel − clearance/ratio
//
// ([ShimForClearance], [ShimThroughRocker], [ScrewChange], [HydraulicPreload]). The
// ratio is how far the place of the blade moves for each unit at the shim or
// screw. It is 1 only where nothing lies between them; for a nut that carries the
// pivot it is 1 + the rocker ratio ([PivotRatio]). Shims count as measured, not
// as marked: a shim worn by 0.03 mm puts the next one out by as much.
//
// [PlanShims] plans a whole head: the shims in hand change places, the fewest are
// bought, and then the clearances lie nearest to their aim. It is exact, the best
// of all plans, in the order that [ShimPlan] gives. A shim is chosen only if the
// whole bracket lands in the band; a valve in band is disturbed only if that is
// allowed; a valve that can't be told stays among the undecided, with the blade
// that would settle it. [ScrewSetting] and [Hydraulic] judge the other two.
//
// # Pushrod and rocker
//
// The rocker ratio is the valve's movement over the pushrod's or cam's, from two
// lifts ([RockerRatioOf]; [RockerRatioThroughClearance] where the clearance is
// in one of them). [Pushrod] finds the length from a checking rod: for a clearance
// the rod is longer by (measured − wanted)/ratio, for a plunger's preload by what
// the preload lacks.
//
// A roller or pad at arm a from the pivot wipes over the valve's tip while the
// valve lifts by h. It wipes least when the rocker stands square to the valve at
// mid-lift:
//
//	width = a − √(a² − h²/4), about h²/(8a)
//
// ([Sweep]; [SweepWidth] for any other height; [TipContact] judges the width and
// what is left of the tip beside it). Raise the pivot and the pushrod grows by
// rise·(1 + 1/ratio): [PushrodForPivot]. [RockerPivot] is a rocker on its shaft,
// [FollowerFit] a follower in its bore.
//
// # Drive
//
// A chain is measured over a run of links, pulled straight; its elongation in per
// cent is the run's growth over its length when new ([ChainElongation]), and the
// limit is the manual's. What the free run can be pressed aside tells its slack
// ([ChainSlack]), what the pulling run has grown the lag of the camshaft
// ([ChainRetard]): [DriveChain]. Backlash read with a dial on an arm is carried to
// the pitch circle by the two radii ([GearBacklash]); a blade between the flanks
// reads less, by the cosines of pressure and helix angle ([GearGap]): [GearPair].
// A toothed belt isn't measured here: its tension, and when it is renewed, are the
// engine maker's manual's.
//
// # Camshaft
//
// A lobe's lift is its height less its base circle's diameter ([LobeLift]), as long
// as the lobe opens over less than 180° of the camshaft. Wear of the height alone
// hides what the base circle has lost; the lift against a new lobe's doesn't
// ([LobeLiftLoss]). Through the rocker
//
//	valve lift = lobe lift · ratio − clearance
//
// ([ValveLift]): clearance is lost motion and takes from the lift. Bend is half
// of the run-out of a middle journal ([CamBend]); a limit is for one or the other.
// [CamSurvey] judges lobes, journals, bearings and end float.
//
// # Timing
//
// Openings and closings count in degrees of the crankshaft from their own dead
// centre, on the side where they usually are; one on the other side is below
// zero, which is legal, and 20° of error where the sign of 10° is lost. Only a
// duration of nothing or less is refused.
//
//	    near          half a turn           far
//	   ├────┼────────────────────────────┼─────────┤   inlet valve open
//	opens  top                         bottom     closes
//
//	duration    near + 180° + far
//	centre      (180° + far − near)/2, after top for inlet, before it for exhaust
//	overlap     inlet's near + exhaust's near
//	separation  (inlet centre + exhaust centre)/2, degrees of the camshaft
//	advance     (exhaust centre − inlet centre)/2, degrees of the crankshaft
//
// ([ValveEvents], [CamTiming], and back with [EventsOf] and [CamSummary.Timing]).
// All of it stands at a stated lift, at the valve or at the follower
// ([TimingLift]), and valves at different lifts aren't compared. The centre is the
// middle of the opening; on an asymmetric lobe the greatest lift is elsewhere.
// [TimingCheck] judges measured events, and says whether a whole tooth
// ([ToothAngle]) would explain them.
//
// First find dead centre. A positive stop meets the piston at one height on both
// sides of it, so it lies midway: [DeadCentre]. An offset of pin or cylinder
// breaks the symmetry, by [StopSkew]: some thousandths of a degree for an offset
// pin, hundredths and more for an offset cylinder.
//
// # Lift curves
//
// A [LiftTable] of angles and lifts becomes a [LiftCurve], drawn through every
// point in one of two ways: keeping the table's shape, or as a cubic spline. It
// tells the lift at an angle, the angles at a lift, its peak, and the area under it.
// A table dialled at the follower is carried to the valve by
// [LiftCurve.AtValve]. Velocity and acceleration are differences of nearly equal
// readings, so [LiftCurve.Analyse] takes them from parabolas fitted over a stated
// half-width; the wider, the more it takes off the peaks.
//
// # Piston to valve
//
// Along the valve's axis, at any crank angle,
//
//	clearance = drop + fall · cos ψ − lift
//
// the drop being what the valve can be pushed open at top dead centre, the fall
// what the piston has come down by then, and ψ the valve's angle to the bore
// ([PistonToValve]; on a flat crown the fall counts with 1/cos ψ,
// [PistonToValveFlat]). Leave cos ψ out and the clearance comes out too large, on
// the unsafe side. It is least not at dead centre but some degrees beside it:
// [PistonValve] searches the whole approach, leaves out no dip between two points
// of the table, and tells how far the camshaft may be moved
// ([PistonValve.Room]). Its lower end has every error on the dangerous side and is
// rounded down. What a running engine takes by heat, stretch and a valve that
// floats is the allowance, which the caller gives. [PocketClearance] is the room
// beside the head in its pocket, [PocketShift] what the piston's fall takes of it.
//
// # A whole head
//
// [Inspect] takes the limits and the readings of a head as documents and gives
// findings, decisions, orders and what is still to be measured.
//
// # Accuracy
//
// Sums and differences of lengths and of angles, and loads between exact
// readings, are exact or rounded once, to the quantum. Formulas over
// tolerance.Real are float64; what follows from them as a bracket (widths, feeds,
// rates, volumes, sweeps, slack) is rounded outward by more than their error, for
// lengths by a picometre or two. Lift curves are within 10⁻⁹ mm of the curve
// through the table, and the least clearance to the piston within 10⁻⁹ mm of the
// true least of that curve. Shim plans are exact. Angles of cutters and seats are
// taken for exact: half a degree of a stone's dressing is several per cent of a
// feed. The readings are far coarser than any of this: what a table misses of the
// cam between its points, no arithmetic gives back.
//
// # Rounding
//
// Brackets are rounded outward, so that they hold every size that the readings
// allow; windows, of shims and pushrods that suit, inward. Where parts may meet
// (coil bind, piston and valve) that is toward the danger; what a camshaft may be
// moved is rounded down.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what was
// expected: a stem that isn't below its guide, a lift that binds a spring for
// certain, angles that don't grow, a duration of nothing, a lift table that doesn't
// hold the whole approach. What can't be told is no error but a finding that says
// what would settle it, as is a clearance without an upper end. Plain formulas give
// no errors: what leaves the range is out of range, or NaN, and stays so. No
// function panics.
//
// # Safety
//
// A valve spring under load, and the collets it holds, can leave the bench at
// the height of an eye: wear eye protection, use the compressor the maker names,
// and never stand in line with the spring. Springs push on a camshaft while its
// caps come off: slacken them evenly, as the manual says, or it breaks.
//
// A sodium-filled valve is never cut, drilled or ground into: sodium burns in air
// and explodes with water. Dust of seats and guides of beryllium alloy harms the
// lungs for life: don't grind or ream them dry, and not at all without the
// precautions of their maker.
//
// Turn an engine by hand, with the plugs out and fuel and ignition off, where a
// stop or a valve can meet a piston, and stop where it stops: what doesn't turn is
// bent by force. With the camshaft or its drive out, keep the pistons clear of the
// valves before either is turned. Measure and set clearances at the temperature
// that the manual gives, cold or hot. Tension a belt by the maker's manual alone.
//
// # Sources
//
// Rocking, the cones and what their cuts do, sweeps, slack, dead centre and the
// way from piston to valve are geometry, derived beside each formula and checked
// with mpmath (root finder, meeting points of lines, integrals), the mouths of a
// guide with scipy's linear programming; least clearances and lift curves with its
// optimiser and interpolation, shim plans with its integer programming and
// assignment on 400 heads; no text with the formulas was found. Timing: US Army TM
// 9-8000, and texts on setting camshafts, the lost sign among them; blades that
// prove a clearance, TM 5-3820-233-12/1; limits of camshafts, TM 9-2815-202-34.
// Rates of springs: textbooks (Wentzell; Jindal; Sadhu Singh), and wire, coils and
// loads that US Army TM 9-6115-464-34 and TM 10-4320-344-24 print of two valve
// springs, which bear out two dead coils, and that ground ends stand lower than
// all their wires. Rules of manuals are named beside their functions: TM
// 10-3930-671-24 for margin and the face left clear, TM 10-3930-664-24 for depth,
// TM 5-6115-400-35 for inserts, NAVEDTRA 14076 for free length; wear per part is in
// package wearrate. Ends, dead coils and curvature factors are from memory.
//
// None of it replaces the engine maker's manual, whose limits and methods
// govern. "Can't tell" is not a pass.
package valvetrain
