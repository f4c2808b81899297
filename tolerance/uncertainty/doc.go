// Package uncertainty says how good a measured value is, carries that through
// formulas, and decides by it whether a part is within its limits.
//
// # What is measured
//
// A reading is never the size itself. What stands between them are sources of
// doubt: the setting ring's certificate, the scale's resolution, the scatter
// of the hand, a part warm from the honing machine. Each is an [Estimate] of
// its own: a value, often zero, and how its true value may be spread about it.
//
//	ring    Calibration    certificate: U = 1 µm with k = 2      u = 0.5 µm
//	scale   Resolution     shows whole 2 µm                      u = 0.58 µm
//	hand    Repeatability  five readings                         u = s/√5
//
//	bore := reading.Add(ring).Add(scale).Add(hand)
//
// Estimates go through the same formulas as lengths do: any function over
// [tolerance.Number] takes them, and [Dual] does the same for formulas over
// [tolerance.Real], which multiply and divide. To first order, each result
// knows how far it moves with each source, so
//
//   - x − x is exactly zero, with no uncertainty;
//   - a ring's error that two bores share cancels in their difference and
//     counts in full in their size: use one variable for it in both;
//   - a [Budget] can say which source matters most, and by how much.
//
// A Source is whatever call made it, not its name: two calls make two sources,
// and two sources are independent. Where two values go together in a way that
// no common source explains, [Correlated] takes the correlation itself.
//
// # Where first order is not enough
//
// |a − b| has a kink where a and b are equal: a bore that is round within its
// uncertainty has an out-of-round that can't be below zero. There, near a
// division by zero, and where both factors of a product may be zero, the
// linear picture is wrong, and NearKink says so. [Simulate] draws all sources
// from their distributions many times over and needs no such picture. Its
// blocks of trials are independent: run them side by side and join them, and
// the result is the same to the last digit.
//
// # Deciding
//
// A decision rule is agreed before measuring. The usual one draws the limits
// in by a guard band for whoever claims that a part is good, and outward for
// whoever claims that it is not:
//
//	         lower limit                          upper limit
//	  reject      |                                    |      reject
//	==========|---+---|============================|---+---|==========
//	          | doubt |           accept           | doubt |
//
// [Decide] gives the decision, the probability that the part conforms and the
// risk of being wrong. [CanDecide] says whether an instrument can decide a
// band at all, and [Settle] what would settle the reading at hand.
// [GlobalRisks] says what inspecting many parts comes to. A decision that is
// not made is not a pass; where a verdict costs an engine, the engine maker's
// manual has the last word.
//
// # How good is the measuring?
//
// A [Series] of repeated readings gives mean, standard deviation and standard
// error, shows drift, and names a reading that stands apart, as advice. A
// [Study], in which some operators measure the same parts a few times, tells
// the scatter of one hand from the difference between hands.
//
// # Accuracy
//
// Values are exact wherever the operation on the quantity is. Sensitivities
// and uncertainties are float64, good to about 15 digits; sums over repeated
// readings are whole numbers and lose nothing. Quantiles of Student's t are
// good to 12 digits, probabilities to about 14 places, global risks to 11.
// Simulated figures differ between seeds by what
// [SampleOf.QuantileBounds] gives.
//
// # Rounding
//
// A value is rounded once to the nearest quantum where an operation isn't
// exact. In print an uncertainty has two significant digits, rounded up unless
// less than a tenth of a digit would be lost, and the value the same decimal
// places, ties to even. A guard band is rounded up to the quantum, an
// acceptance interval inward, a bracket made of an estimate outward.
//
// # Errors
//
// Each is an [*InputError], which names what was asked, the field, its value
// and what was expected; its kind is one of the Err values. Arithmetic gives
// no errors: a result that leaves the range, or was divided by zero, is out of
// range and stays so, and whatever judges, prints or simulates it refuses it.
//
// # Sources
//
// JCGM 100:2008 (the GUM) for propagation, degrees of freedom and reporting;
// JCGM 101:2008 for simulation; JCGM 106:2012 and ISO 14253-1 for decisions;
// EA-4/02 for budgets; ISO 5725-2 and the NIST/SEMATECH e-Handbook for
// repeated readings. Each function names its own.
package uncertainty
