package proofread

import (
	"slices"
	"strings"
)

// A Kind names a slip. The zero Kind is no slip.
type Kind uint8

// The kinds of slip. The first three are mild: a figure that was rounded
// carelessly is still of the right size.
const (
	NoSlip Kind = iota

	// CutOff: the figure agrees only as one whose last places were left off.
	CutOff
	// RoundedUp: it agrees only as one that was taken up to the next step.
	RoundedUp
	// RoundedTwice: it agrees only as one that was rounded on the way: 0.025 mm,
	// by way of 0.03 mm, to 0.0012 in.
	RoundedTwice

	// DecimalPlace: the decimal point stands one or more places off.
	DecimalPlace
	// WrongSign: plus for minus.
	WrongSign
	// WrongUnit: a figure of one unit stands as one of the other, off by 25.4.
	WrongUnit
	// UnitsExchanged: the two figures stand in each other's column, or one was
	// multiplied where it should be divided, off by 25.4².
	UnitsExchanged
	// StepsMixed: steps of one scale counted as steps of another: hundredths of
	// a millimetre as thousandths of an inch (2.54), tenths of a millimetre as
	// thousandths (3.937) or ten-thousandths (39.37) of an inch, or back.
	StepsMixed
	// FactorTwo: a radius for a diameter, a diameter for a radius.
	FactorTwo
	// FactorPi: π left out where a diameter makes a circumference.
	FactorPi
	// FractionMisread: another fraction, or another line of a fraction table.
	FractionMisread
	// TemperatureConverted: an angle or a length run through the conversion of
	// degrees Fahrenheit to Celsius, or back.
	TemperatureConverted

	// DigitsTransposed: two digits have changed places.
	DigitsTransposed
	// DigitWrong: one digit is another.
	DigitWrong
	// DigitAdded: one digit too many.
	DigitAdded
	// DigitLost: one digit too few.
	DigitLost
	// TwoDigitsWrong: two digits are others.
	TwoDigitsWrong

	// LeastAboveGreatest: two limits the wrong way round.
	LeastAboveGreatest
	// NewPastWear: a part within the limits for new ones is past the wear limit.
	NewPastWear
	// HeightForLift: the height of a cam's lobe stands as its lift.
	HeightForLift

	// ThimbleTurn: one turn of a micrometer's thimble, 0.5 mm or 0.025 in.
	ThimbleTurn
	// RodLength: one frame size or extension rod, 25 mm or 1 in.
	RodLength

	// WrongNumber: nothing that has a name explains it.
	WrongNumber
)

var kindNames = [...]string{
	"no slip", "cut off", "rounded up", "rounded twice",
	"decimal place", "wrong sign", "wrong unit", "units exchanged", "steps mixed", "factor two", "factor pi", "fraction misread", "temperature converted",
	"digits transposed", "digit wrong", "digit added", "digit lost", "two digits wrong",
	"least above greatest", "new past wear", "height for lift",
	"thimble turn", "rod length",
	"wrong number",
}

// String is the kind in lower case; one that has no name is "no slip".
func (k Kind) String() string { return word(kindNames[:], k) }

// Mild reports whether the figure is of the right size, but carelessly rounded.
func (k Kind) Mild() bool { return k == CutOff || k == RoundedUp || k == RoundedTwice }

// MarshalText writes what String gives.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *Kind) UnmarshalText(text []byte) error {
	return readWord("kind of slip", kindNames[:], text, k)
}

// A Side is one of the two figures that are compared: the columns of a manual,
// least and greatest, new and worn.
type Side uint8

// The sides. Neither, where a design column is asked for, says that it isn't
// known.
const (
	Neither Side = iota
	First
	Second
)

var sideNames = [...]string{"neither", "first", "second"}

// String is the side in lower case.
func (s Side) String() string { return word(sideNames[:], s) }

// MarshalText writes what String gives.
func (s Side) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Side) UnmarshalText(text []byte) error { return readWord("side", sideNames[:], text, s) }

// index is 0 for the first side and 1 for the second.
func (s Side) index() int { return int(s) - 1 }

// other is the opposite side.
func (s Side) other() Side { return First + Second - s }

// word names the value i; one that has no name is read as the zero value.
func word[T ~uint8](names []string, i T) string {
	if int(i) >= len(names) {
		i = 0
	}
	return names[i]
}

func readWord[T ~uint8](what string, names []string, text []byte, into *T) error {
	if i := slices.Index(names, string(text)); i >= 0 {
		*into = T(i)
		return nil
	}
	return parseError(what, string(text), ErrSyntax, `one of "`+strings.Join(names, `", "`)+`"`, nil)
}
