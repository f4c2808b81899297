// Package instrument turns what an instrument shows into what was measured: a
// size at 20 °C, and the bracket that holds it for certain.
//
// # A reading is a number on an instrument
//
// Between the number and the size stand
//
//   - the zero error, found on a setting standard (a setting rod, a ring, closed
//     anvils): the reading of the standard minus its size. It is taken off every
//     reading: size = reading − zero error. A micrometer that reads 25.002 mm on
//     its 25 mm rod has a zero error of +0.002 mm, and reads high;
//   - the step of the scale: the reading is the nearest step, so half a step
//     either way is not known, of the part and of the standard alike;
//   - the permissible error of the instrument beyond that, ± so much;
//   - the error of the standard itself, ± so much;
//   - temperature: lengths are meant at 20 °C (ISO 1). Scale, standard and part
//     have each their own, and their own expansion.
//
// All are in an [Instrument] and in the [Thermal] of the part. A dial bore gauge
// is the same instrument: its standard is the ring that it was set on, and its
// readings are deviations. Set to 0 on a ring of 86.000 mm, it has a zero error of
// −86.000 mm.
//
//	size = (standard × (1 + its expansion) + (reading − reading of the standard)
//	        × (1 + the scale's)) ÷ (1 + the part's)
//
// where an expansion is a coefficient times the kelvins above 20 °C. It holds
// where instrument and standard have not changed their temperature between
// setting and measuring: don't warm them in the hand.
//
// # What is common to a set
//
// An error of the ring, or in setting on it, is in every reading of a set alike.
// It counts once in each size, and not at all in a difference: taper and
// out-of-round measured with one setting don't know the ring. Brackets alone would
// count it twice. A [Set] carries the two parts apart: [Set.Size] has both,
// [Set.Difference] and [Set.Spread] the individual one alone.
//
//	                 ring ±2 µm        step 1 µm, error ±1 µm
//	size             common ±2.5 µm    individual ±1.5 µm    ±4 µm
//	difference       —                 twice                 ±3 µm
//	sizes subtracted                                         ±8 µm, which is too much
//
// # Accuracy and rounding
//
// Without temperatures all is in whole picometres, and exact. Temperature
// corrections are float64, rounded outward by more than their error, so the
// bracket holds what the exact formula gives, and is at most 2 pm wider at each
// end for sizes below 10 m. [Corrected.Size] is rounded to the nearest picometre
// or the one beside it.
//
// The bracket is a bound, not a standard deviation: it holds if every ± given
// does. For uncertainty in the sense of the GUM see package uncertainty.
//
// # Errors
//
// Every error is an [InputError] that names the instrument, the field, the value
// and what was expected. A reading between two steps or outside the instrument's
// range is refused, since it was copied wrong; so is a coefficient of 11.5, which
// was meant as 11.5e-6.
//
// # Sources
//
// The reference temperature is ISO 1's. The model is that of the end gauge in
// JCGM 100:2008 (GUM), H.1; its numbers and those of EA-4/02, S4, are the tests.
// That an error common to two readings drops out of their difference is
// arithmetic.
package instrument
