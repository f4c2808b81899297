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
// Valve clearance (lash) is read with blades, so it is a bracket. A shim that acts
// directly changes it by its own thickness, new = old + measured − wanted, by shims
// as measured and not as marked; through a rocker the ratio comes in, and a screw
// moves by pitch, turns and ratio. Shims for a whole head are planned at once: in
// band for certain, the fewest bought, and what stays undecided is named with the
// blade that would settle it. A hydraulic follower is judged by its plunger's
// travel.
//
// # Camshaft and timing
//
// A lobe's lift is its height less its base circle; the valve's is that through
// the rocker's ratio, less the clearance, which takes from lift. Openings and
// closings count from their dead centres, and one on the other side of its dead
// centre is below zero, which is legal; a duration of nothing or less is not. An
// event stands at a stated lift, at the follower or at the valve. The middle of
// the opening is not the place of greatest lift on an asymmetric lobe. Dead centre
// is found between two stops, which a pin offset makes uneven.
//
// # Accuracy
//
// Sums and differences of lengths, and loads between exact readings, are exact or
// rounded once, to the quantum. Formulas over tolerance.Real are float64; what
// follows from them as a bracket (widths, feeds, rates, volumes) is rounded
// outward by more than their error, for lengths by a picometre or two. Angles of
// cutters and seats are taken for exact: half a degree of a stone's dressing is
// several per cent of a feed.
//
// # Rounding
//
// Brackets are rounded outward, so that they hold every size that the readings
// allow. Where parts may meet (coil bind, piston and valve) that is toward the
// danger.
//
// # Errors
//
// What can't be is an [InputError], which names the field, the value and what
// was expected; so is a lift that binds a spring for certain. What can't be told is
// no error but a finding that says what would settle it. No function panics.
//
// # Safety
//
// A valve spring under load, and the collets it holds, can leave the bench at
// the height of an eye: wear eye protection, use the compressor the maker names,
// and never stand in line with the spring. A sodium-filled valve is never cut,
// drilled or ground into: sodium burns in air and explodes with water. Dust of
// seats and guides of beryllium alloy harms the lungs for life: don't grind or
// ream them dry, and not at all without the precautions of their maker. Turn an
// engine by hand, with the plugs out, where a stop or a valve can meet a piston.
//
// # Sources
//
// Rocking, the cones and what their cuts do are geometry, derived beside each
// formula and checked with mpmath (root finder, meeting points of lines,
// integrals) and scipy (linear programming); no text with the formulas was found.
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
