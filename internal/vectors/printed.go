package vectors

import (
	"math/big"
	"strings"
)

// expected takes apart "16.2037", "16.2037 ± 0.001" and "16.2 ± 0.5 %". The
// tolerance of the first is half a unit of its last place.
func expected(text string) (value, tolerance *big.Rat, ok bool) {
	number, stated, with := strings.Cut(text, "±")
	value, tolerance, ok = printed(strings.TrimSpace(number))
	if !ok || !with {
		return value, tolerance, ok
	}
	stated, percent := strings.CutSuffix(strings.TrimSpace(stated), "%")
	tolerance, _, ok = printed(strings.TrimSpace(stated))
	if !ok || tolerance.Sign() < 0 {
		return nil, nil, false
	}
	if percent {
		tolerance.Mul(tolerance, new(big.Rat).Abs(value))
		tolerance.Mul(tolerance, big.NewRat(1, 100))
	}
	return value, tolerance, true
}

// printed reads a decimal number with an optional exponent of at most three
// digits, and gives half a unit of its last place with it.
func printed(text string) (value, half *big.Rat, ok bool) {
	digits, exponent := strings.TrimPrefix(text, "-"), ""
	if i := strings.IndexAny(digits, "eE"); i >= 0 {
		digits, exponent = digits[:i], digits[i+1:]
		if size := strings.TrimLeft(exponent, "+-"); !only(size, 3) || len(exponent) > len(size)+1 {
			return nil, nil, false
		}
		exponent = "e" + exponent
	}
	whole, fraction, point := strings.Cut(digits, ".")
	if !only(whole, 400) || point && !only(fraction, 400) {
		return nil, nil, false
	}
	value, _ = new(big.Rat).SetString(text)
	half, _ = new(big.Rat).SetString("5" + exponent)
	ten := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(fraction)+1)), nil)
	return value, half.Quo(half, new(big.Rat).SetInt(ten)), true
}

// only reports whether text is digits, at least one and not too many.
func only(text string, most int) bool {
	return text != "" && len(text) <= most && strings.Trim(text, "0123456789") == ""
}
