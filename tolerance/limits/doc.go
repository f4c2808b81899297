// Package limits is the ISO 286 system of limits and fits for sizes up to and
// including 500 mm: what "25 H7" on a drawing asks of a part, what "50 H7/g6"
// comes to between two, and the way back from measured sizes to the classes.
//
// # What a class means
//
// A drawing seldom prints a bore's two limits. It prints the nominal size and
// a class, and the class is looked up:
//
//	25 H7    a hole, 25.000 to 25.021 mm
//	25 g6    a shaft, 24.980 to 24.993 mm
//
// The letter, the fundamental deviation, says where the tolerance lies against
// the nominal size; capitals are for holes, small letters for shafts. The
// number, the grade, says how wide it is: IT6 takes 13 µm at 25 mm, IT7 21,
// IT8 33. Each grade widens as the size grows, in steps, and a step reaches up
// to and including its end: 50 H7 has 25 µm, 50.001 H7 has 30.
//
//	at 25 mm   F7  G7  H7  K7  P7        f6  g6  h6  k6  p6
//	+40 µm
//	           █                                         █
//	+30
//	           █   █                                     █
//	+20
//	               █   █                             █
//	+10
//	               █   █   █                         █
//	  0 ─────────────────────────────────────────────────── nominal
//	                       █                 █   █
//	−10
//	                       █   █             █   █
//	−20
//	                           █         █
//	−30
//	                           █         █
//	−40             holes                     shafts
//
// H holes begin at the nominal size and h shafts end there, so either makes a
// plain base: on the hole basis every hole is an H, as the reamer leaves it,
// and the shaft is turned or ground to suit; on the shaft basis every shaft is
// an h, as a ground bar or a bought pin comes, and the hole is bored to suit.
// [Preferred] lists ten fits of each, which the standard spells the same way
// round, hole first.
//
// # Reaming a guide bore, choosing a pin's fit
//
// Asked to ream a guide to 8 H7, [ParseLimits] gives 8.000 to 8.015 mm: a plug
// gauge of 8.000 must go in and one of 8.015 must not (common practice).
// [Class.At] does the same from parts, [Limits.Band] gives the band that a
// measured bracket is judged against, and [Parse] what hole and shaft together
// leave: a [Fit] with its greatest and least clearance and its kind. Clearance
// counts above zero and interference below.
//
// The other way round: [Mating] finds what pin suits a bush that is already
// there, given the clearance to be kept; [Named] recognises a manual's two
// limits as a class; [Within] finds the classes a manual's band allows;
// [Holding] those that a measured part keeps; [GradeWithin] and [GradeHolding]
// go from a width to a grade.
//
// A class says nothing about an engine. Which fit a guide, a pin or a liner
// needs, hot and worn, is the engine maker's to say, and the maker's manual
// goes before any class found here: a gudgeon pin a class too tight can seize,
// and one a class too loose knocks (common practice).
//
// # What is in the tables
//
// The grades IT01, IT0 and IT1 to IT18; the fundamental deviations A to ZC and
// a to zc, CD, EF, FG, J and JS among them; and delta, which holes K, M and N
// to IT8 and P to ZC to IT7 take on, so that 30 P7/h6 fits as 30 H7/p6 does.
// Any letter is paired with any grade that the standard gives the letter for,
// whether or not its second part prints the limits ready worked: h01 and z18
// are here. What it doesn't give is refused: T up to 24 mm, V up to 14, Y up to
// 18, CD, EF and FG over 10; j but for j5 to j7 (and j8 up to 3 mm); J but for
// J6 to J8; K above IT8 over 3 mm; holes K to ZC finer than IT3, where delta
// ends; and up to and including 1 mm a, b, A, B, N above IT8, and IT14 and
// coarser. Exceptions are kept: M6 over 250 up to 315 mm is −9/−41 µm, where
// the rule gives −11/−43, and k stands off the nominal size only in k4 to k7.
// [Class.Range] tells a class's sizes and [All] a size's classes.
//
// Sizes are in millimetres, or in the unit they are written with: "1 in H7" is
// looked up as 25.4 mm. The inch systems of fits are others, and not here.
//
// # Accuracy
//
// Exact. The tables are whole tenths of a micrometre, [units.Length] holds
// them and their halves, and a look-up adds. It takes tens of nanoseconds and
// allocates nothing.
//
// # Rounding
//
// None. JS and js are half the grade on either side, halves of a micrometre and
// all (16 js6 is ±5.5 µm); older editions let those of IT7 to IT11 be rounded
// down, which this package doesn't. A nominal size is kept as given, to the
// picometre, and the limits of 63/64 in H7 have as many decimals as that takes.
//
// # Errors
//
// A [ParseError] says what in a text could not be read, where and what was
// expected; a [SizeError] that a nominal size is outside the tables, or so
// small that a part of the class would have no size; a [ClassError] that the
// standard has no figures for the class there, and where it has; an
// [OrderError] that a fit is not a hole and a shaft; a [WidthError] that no
// grade is so fine or so coarse; a [BandError] that there was nothing to look
// for. errors.Is compares them with the Err values. Nothing but the Must
// functions panics, and the zero values are safe.
//
// # Sources
//
// ISO 286-1:2010 and ISO 286-2:2010, through public copies of DIN ISO
// 286-1 and of GB/T 1800.2-2020, which has the same content; no copy of the ISO
// text was used. The tables are written from testdata/published/iso286_*.txt by
// internal/tablegen. The tests compare 5694 limit deviations on which at least
// two copies agree and 190 that another table settles (X5 to X7 over 3 up
// to 6 mm among them, which both copies have wrong), those that the
// corrigendum of 2006 put right, and 99 of JIS B 0401; the grades with
// GB/T 1800.3-1998 and with the textbook Machine Drawing; the deviations with
// that book and with Machinery's Handbook (BS 4500:1969); and every cell that
// has a formula with the formula, against a list of the cells where the
// standard's own rounding leaves it. That IT14 and coarser are not for sizes up
// to 1 mm is in Machine Drawing for IT14 to IT16 and from memory for IT17 and
// IT18. The preferred fits are those of ANSI B4.2-1978.
package limits

//go:generate go run ./internal/tablegen
