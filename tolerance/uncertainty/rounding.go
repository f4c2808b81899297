package uncertainty

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// RoundUncertainty gives an uncertainty two significant digits, as GUM 7.2.6
// asks, and the number of decimal places that the value should then have
// (below zero where that is tens or hundreds). It rounds up, since an
// uncertainty isn't to be understated, unless what it drops is under a tenth
// of the last digit kept: 10.47 becomes 11, and 28.05 becomes 28. (The GUM
// gives these two examples and leaves the bound to common sense; the tenth is
// ours.) So it is never understated by more than one part in a hundred.
//
// Zero stays zero, with no places asked for. A negative uncertainty is an
// [ErrUncertainty], one that isn't finite an [ErrNotFinite].
func RoundUncertainty(u float64) (rounded float64, places int, err error) {
	switch {
	case u-u != 0:
		return 0, 0, refuse("round", "", "uncertainty", u, ErrNotFinite, "zero or more")
	case u < 0:
		return 0, 0, refuse("round", "", "uncertainty", u, ErrUncertainty, "zero or more")
	case u == 0:
		return 0, 0, nil
	}
	digits, exponent := twoDigits(u)
	// Through decimal text: the float64 nearest to the decimal number.
	rounded, err = strconv.ParseFloat(strconv.Itoa(digits)+"e"+strconv.Itoa(exponent), 64)
	if err != nil {
		return 0, 0, refuse("round", "", "uncertainty", u, ErrNotFinite, "a number that two digits can hold")
	}
	return rounded, -exponent, nil
}

// twoDigits is u, above zero, as a whole number of two digits times a power
// of ten. The digits are those of the shortest decimal that is u, so that a
// decimal written by hand rounds by what is written.
func twoDigits(u float64) (digits, exponent int) {
	var room [32]byte
	// "d.ddd…e±xx"
	text := strconv.AppendFloat(room[:0], u, 'e', -1, 64)
	mark := len(text) - 1
	for text[mark] != 'e' {
		mark--
	}
	exponent, _ = strconv.Atoi(string(text[mark+1:]))
	digits = 10 * int(text[0]-'0')
	more := false
	for i := 2; i < mark; i++ {
		switch {
		case i == 2:
			digits += int(text[i] - '0')
		case i == 3:
			more = text[i] >= '1'
		}
	}
	if more {
		digits++
	}
	if digits == 100 {
		digits, exponent = 10, exponent+1
	}
	return digits, exponent - 1
}

// placesFor is how many decimal places of a unit show u, in that unit, to two
// digits: between 0 and what the unit can show. A u of zero asks for all that
// show the value exactly.
func placesFor[Q units.Quantity](u float64, unit units.Unit[Q]) int {
	if u == 0 {
		return units.AllPlaces
	}
	_, exponent := twoDigits(u)
	return max(0, min(-exponent, unit.Places()))
}

// appendUncertainty appends u as RoundUncertainty rounds it, or rounded up to
// the given places where those are fewer.
func appendUncertainty(dst []byte, u float64, places int) []byte {
	places = max(places, 0)
	if u > 0 {
		digits, exponent := twoDigits(u)
		for ; exponent < -places; exponent++ {
			digits = (digits + 9) / 10
		}
		u, _ = strconv.ParseFloat(strconv.Itoa(digits)+"e"+strconv.Itoa(exponent), 64)
	}
	return strconv.AppendFloat(dst, u, 'f', places, 64)
}

// Text is the value and its standard uncertainty in unit u, the uncertainty
// rounded as [RoundUncertainty] does and the value to the same decimal place,
// ties to even: "50.000838 mm, standard uncertainty 0.000032 mm". An estimate
// near a kink says that its uncertainty is doubtful.
func (e EstimateOf[Q]) Text(u units.Unit[Q]) string {
	_, standard := e.Float(u)
	if math.IsNaN(standard) {
		return "out of range"
	}
	places := placesFor(standard, u)
	dst, _ := units.Append(make([]byte, 0, 96), e.value, units.Style[Q]{Unit: u, Places: places})
	if standard == 0 {
		return string(append(dst, exactly(e.terms.kink)...))
	}
	dst = appendUncertainty(append(dst, ", standard uncertainty "...), standard, places)
	dst = append(append(dst, ' '), u.Symbol()...)
	if e.terms.kink {
		dst = append(dst, " (first order is not enough: simulate it)"...)
	}
	return string(dst)
}

// exactly is what is said of a value without uncertainty; near a kink that is
// only what first order makes of it.
func exactly(kink bool) string {
	if kink {
		return ", with no uncertainty to first order, which is not enough: simulate it"
	}
	return ", exactly"
}

// String is [EstimateOf.Text] in the first unit of the quantity: millimetres
// for lengths.
func (e EstimateOf[Q]) String() string { return e.Text(units.Unit[Q](0)) }

// MarshalText writes what String gives, for logs and reports. It can't be
// read back: sources belong to the program that made them. An estimate out of
// range is an [ErrRange].
func (e EstimateOf[Q]) MarshalText() ([]byte, error) {
	if !e.InRange() {
		return nil, refuse("encode", "", "estimate", "", ErrRange, "an estimate in range")
	}
	return []byte(e.String()), nil
}

// MarshalText writes what String gives, as [EstimateOf.MarshalText] does.
func (d Dual) MarshalText() ([]byte, error) {
	if !d.InRange() {
		return nil, refuse("encode", "", "number", "", ErrRange, "a number in range")
	}
	return []byte(d.String()), nil
}

// String is the value and its standard uncertainty, rounded as
// [RoundUncertainty] does.
func (d Dual) String() string {
	u := d.StandardUncertainty()
	if math.IsNaN(u) {
		return "out of range"
	}
	if u == 0 {
		return strconv.FormatFloat(d.value, 'g', -1, 64) + exactly(d.terms.kink)
	}
	s := formatTo(d.value, u) + ", standard uncertainty " + format2(u)
	if d.terms.kink {
		s += " (first order is not enough: simulate it)"
	}
	return s
}

// formatTo writes v to the decimal place that u is rounded to.
func formatTo(v, u float64) string {
	if u == 0 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	_, exponent := twoDigits(u)
	if exponent > 0 && exponent < 300 {
		// Tens, hundreds: through the digits that are kept.
		step := math.Pow10(exponent)
		return strconv.FormatFloat(math.RoundToEven(v/step)*step, 'f', 0, 64)
	}
	return strconv.FormatFloat(v, 'f', min(max(-exponent, 0), 400), 64)
}

// format2 writes u with two significant digits.
func format2(u float64) string {
	r, places, err := RoundUncertainty(u)
	if err != nil {
		return strconv.FormatFloat(u, 'g', 2, 64)
	}
	return strconv.FormatFloat(r, 'f', min(max(places, 0), 400), 64)
}
