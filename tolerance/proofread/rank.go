package proofread

// The ranks of the explanations, the likelier first. What leads the order:
//
//   - careless rounding, which takes the least to explain;
//   - slips of which a figure can have few (a decimal point, a factor, a unit),
//     since that one of them fits by chance is unlikely;
//   - slips of a digit, of which a figure can have dozens. By Verhoeff's count
//     of errors in written numbers (1969; as given by N. Wagner, The Laws of
//     Cryptography, 2002) 60 to 95 % are one wrong digit, 10 to 20 % two
//     neighbours exchanged, 10 to 20 % a digit lost or added and 0.5 to 1.5 %
//     two digits exchanged across a third. Of a figure with n digits there are
//     9n with one digit wrong, n-1 with two exchanged, n with one too few and
//     about 10n with one more, so each single one is the likelier in the order
//     exchanged, wrong, added, lost, exchanged across a third;
//   - explanations that need two slips. A decimal point and a small slip come
//     before a single digit that would change the size as much: a first digit
//     for a 0, a digit lost or added.
const (
	rankCutOff           = 1
	rankRoundedUp        = 2
	rankRoundedTwice     = 3
	rankDecimalPlace     = 10 // and one more for each further place
	rankSign             = 14
	rankWrongUnit        = 15
	rankUnitsExchanged   = 16
	rankFraction         = 17
	rankFactor           = 18
	rankTemperature      = 19
	rankTransposed       = 20
	rankStepsMixed       = 21
	rankDigitWrong       = 22
	rankDecimalAndSmall  = 23
	rankLeadingDigit     = 24
	rankDigitDoubled     = 25
	rankDigitAdded       = 26
	rankDigitLost        = 27
	rankTransposedAcross = 28
	rankCoarse           = 29
	rankAndSmall         = 10 // added where a figure was cut off besides
	rankNearDecimal      = 40
	rankTwoDigits        = 42
	rankWrongNumber      = 50
)

func rankOf(v variant) uint8 {
	switch {
	case v.kind == DigitsTransposed && v.likely:
		return rankTransposed
	case v.kind == DigitsTransposed:
		return rankTransposedAcross
	case v.kind == DigitWrong && v.likely:
		return rankDigitWrong
	case v.kind == DigitWrong:
		return rankLeadingDigit
	case v.likely:
		return rankDigitDoubled
	case v.kind == DigitAdded:
		return rankDigitAdded
	}
	return rankDigitLost
}
