// Package form says how far a part is from round, straight, flat and
// cylindrical, by the reference elements of the standards and by the measures
// of the trade, and which of the two a reading can tell.
//
// # What is measured
//
// A form is judged beside a reference element that is laid to the readings. Of
// a round profile there are four circles:
//
//	LSCI least squares       MZCI minimum zone
//	     · ·                      ╭─────────╮ outer ┐
//	  ╭──·────╮ ·              ╭─·┼────·────┼╮      │ RONt
//	 ·│   +   │·               │  │    +    │·      │
//	  ╰─·─────╯                ╰·─┼─────────┼╯      │
//	     ·  ·                     ╰──·──────╯ inner ┘
//
//	MICI maximum inscribed: the plug that would go into a hole
//	MCCI minimum circumscribed: the ring that would go over a shaft
//
// [LeastSquaresCircle], [MinimumZoneCircles], [MaximumInscribedCircle] and
// [MinimumCircumscribedCircle] fit them to points in any unit, [Profile] to
// readings in lengths. RONt is the farthest less the nearest reading from the
// centre; it is least for MZCI, and that least is what a roundness tolerance
// limits. Lines ([MinimumZoneLines], [Heights]), planes ([MinimumZonePlanes],
// [Grid]) and cylinders ([MinimumZoneCylinders], [Sections]) go the same way,
// with STRt, FLTt and CYLt.
//
// [Harmonics] takes a round profile apart: how far off centre (order 1), how
// oval (2), with how many lobes, and in which direction the crests lie.
//
// # Radius or diameter
//
// Standard roundness is a difference of radii, the trade's out-of-round one of
// diameters. Of an oval the second is twice the first. Of three lobes, five,
// or any odd number, every diameter is the same, and out-of-round is nothing,
// however far from round the part is:
//
//	lobes   radius              RONt   out-of-round
//	2       R + e·cos 2φ        2e     4e
//	3       R + e·cos 3φ        2e     0
//
// The two are types of their own, [Radial] and [Diametral]. What diameters
// prove of the standards' measures is a bracket with no upper end
// ([Diametral.RONtAtLeast], [Diameters.Shown]). A [VBlock] shows odd lobes and
// hides others; [VBlock.Table] says which, and by what factor it reads.
//
// # How to measure
//
// Clean and deburr, and let part and instrument come to one temperature. Take
// enough readings to find the crests: where one falls midway between two of m
// readings a lobe it is read as cos(π/m) of its height, 0.87 for 6 and 0.97 for
// 12. More lobes than half the readings look like fewer. Two directions across
// see an oval through cos 2φ and miss one that lies at 45° to them, so what they
// show is "at least". Edges of bores and liners are sharp; turn a crank or a
// shaft on the bench only where nobody's hands are in its way. The engine
// maker's manual governs how a bore or a journal is measured and judged.
//
// # Accuracy
//
// The arithmetic is float64. Centre and radius of a least squares circle are
// good to some 1e-13 of the size where points go round; the tests hold them to
// the published fits of 20 data sets by 1e-10.
//
// Minimum zone, inscribed and circumscribed circles are exact: the solution of
// the problem for the points given, to rounding, with its proof. The proof is
// in the contacts and their weights: MCCI and MICI rest on three points round
// the centre (or two across it), MZCI on two outer and two inner ones in turn,
// planes on three and one or two and two. Flatness, straightness and MCCI have
// one best solution. Zones and inscribed circles of round profiles may have
// several that no small shift betters; Global says that the one given is the
// best of all, which is always so at the deviations of real bores and pins,
// read all round. On arcs, and where deviations are large beside the radius,
// Global may be false. A cylinder's zone is the best of nine starts.
//
// Deviations of lines and planes are taken along the heights; at right angles
// they are less by the cosine of the slope.
//
// # Rounding
//
// Readings in lengths are exact. Results in lengths are rounded once, to the
// nearest picometre, from the float64 beneath. Differences of diameters are
// exact; halves of them, as lower ends of brackets, are rounded down.
//
// # Errors
//
// [Error] names the readings, the place and what was expected, with a kind for
// errors.Is: [ErrTooFew], [ErrCoincident], [ErrCollinear], [ErrPartialArc],
// [ErrNotFinite], [ErrRange], [ErrRadius], [ErrKind], [ErrShape], [ErrAngles],
// [ErrHidden]. Readings that repeat are no error.
//
// # Sources
//
// Works are cited from memory. Names and definitions of circles, lines, planes
// and cylinders: ISO 12181-1, 12780-1, 12781-1 and 12180-1. Exchange of contacts
// for reference circles by the dual of a linear programme: D. G. Chetwynd,
// Applications of linear programming to engineering metrology (1985). Smallest
// circle: J. Elzinga and D. W. Hearn, Geometrical solutions for some minimax
// location problems (1972); E. Welzl's of 1991 is faster in theory and needs
// chance. Algebraic circle: I. Kåsa (1976). Bounds by corners against edges of
// the convex hull: A. M. Andrew (1979) for the hull. V-block factors: ISO 4292,
// derived at [VBlock] and checked by geometry.
//
// Checked against: the NIST reference data sets for circles; a reference
// circle of Apache Commons Math; J. C. Moody's surface plate of 1955; scipy's
// Delaunay triangulations, linear programming and optimisers, and numpy's
// Fourier transform, on 500 profiles, 200 faces, 100 lines, 40 bores and 60
// spectra.
package form
