package uncertainty

import (
	"math"
	"strconv"
)

// Freedom is the degrees of freedom of a standard uncertainty: how well it is
// itself known. From n readings of one thing they are n − 1. Infinite is a
// value taken as known.
type Freedom float64

// Infinite is the degrees of freedom of an uncertainty taken as known, which
// is what a source has for which none are given.
func Infinite() Freedom { return Freedom(math.Inf(1)) }

// Reliability is the degrees of freedom of a standard uncertainty that may
// itself be wrong by the given part of it: 0.10 where it is good to one part
// in ten, which makes 50 (GUM G.4.2, equation G.3). What isn't above zero
// gives not-a-number, which every constructor refuses.
func Reliability(relative float64) Freedom {
	if !(relative > 0) {
		return Freedom(math.NaN())
	}
	return Freedom(1 / (2 * relative * relative))
}

// RelativeUncertainty is how far the standard deviation of n normal readings
// may itself be out, as a part of it: 0.76 for two readings, 0.36 for five,
// 0.24 for ten (GUM E.4.3, table E.1). Fewer than two readings are an
// [ErrTooFew].
func RelativeUncertainty(n int) (float64, error) {
	if n < 2 {
		return 0, refuse("relative uncertainty", "", "readings", n, ErrTooFew, "at least 2")
	}
	// s is σ·χ/√ν with ν = n − 1: its mean is σ·c4, its variance σ²(1 − c4²),
	// where c4 = √(2/ν)·Γ((ν+1)/2)/Γ(ν/2).
	v := float64(n - 1)
	logC4 := logGammaRatio(v / 2)
	return math.Sqrt(math.Expm1(-2 * logC4)), nil
}

// Truncated is the next lower whole number, which tables of Student's t are
// entered with (GUM G.4.1): 16.7 becomes 16.
func (f Freedom) Truncated() Freedom { return Freedom(math.Floor(float64(f))) }

// String is the number to three digits, or ∞.
func (f Freedom) String() string {
	switch {
	case math.IsInf(float64(f), 1):
		return "∞"
	case f >= 100:
		return strconv.FormatFloat(math.Floor(float64(f)), 'f', -1, 64)
	}
	return strconv.FormatFloat(float64(f), 'g', 3, 64)
}

// MarshalText writes the number in full, or ∞, which JSON has no number for.
func (f Freedom) MarshalText() ([]byte, error) {
	if math.IsNaN(float64(f)) {
		return nil, refuse("encode", "", "degrees of freedom", float64(f), ErrNotFinite, "a number or infinity")
	}
	if math.IsInf(float64(f), 1) {
		return []byte("∞"), nil
	}
	return strconv.AppendFloat(nil, float64(f), 'g', -1, 64), nil
}

// UnmarshalText reads what MarshalText writes.
func (f *Freedom) UnmarshalText(text []byte) error {
	if string(text) == "∞" {
		*f = Infinite()
		return nil
	}
	v, err := strconv.ParseFloat(string(text), 64)
	if err != nil || !(v > 0) {
		return refuse("degrees of freedom", "", "text", strconv.Quote(clip(string(text))), ErrSyntax, "a number above zero, or ∞")
	}
	*f = Freedom(v)
	return nil
}

// EffectiveFreedom is the degrees of freedom of the root of the sum of the
// squares of independent contributions, by the Welch–Satterthwaite formula
// u⁴/Σ(uᵢ⁴/νᵢ) (GUM G.4.1, equation G.2b). The result is not truncated. Where
// no contribution has finite degrees of freedom it is infinite.
//
// Slices of different length, and none at all, are an [ErrEmpty]; a
// contribution that isn't finite, an [ErrNotFinite]; degrees of freedom that
// aren't above zero, an [ErrFreedom].
func EffectiveFreedom(contributions []float64, freedom []Freedom) (Freedom, error) {
	const op = "effective degrees of freedom"
	if len(contributions) == 0 || len(contributions) != len(freedom) {
		return 0, refuse(op, "", "contributions", len(contributions), ErrEmpty, "as many contributions as degrees of freedom, at least one")
	}
	var w welch
	for i, c := range contributions {
		if c-c != 0 {
			return 0, refuse(op, "", "contribution", c, ErrNotFinite, "a finite number")
		}
		if !(freedom[i] > 0) {
			return 0, refuse(op, "", "degrees of freedom", float64(freedom[i]), ErrFreedom, "above 0")
		}
		w.scale = max(w.scale, math.Abs(c))
	}
	for i, c := range contributions {
		w.add(c, freedom[i])
	}
	return w.freedom(), nil
}

// welch sums what the Welch–Satterthwaite formula needs, in units of scale,
// the greatest contribution, so that no fourth power leaves the range.
type welch struct{ scale, squares, fourths float64 }

func (w *welch) add(c float64, f Freedom) {
	if c == 0 {
		return
	}
	c /= w.scale
	w.squares += c * c
	w.fourths += c * c * c * c / float64(f)
}

func (w *welch) freedom() Freedom {
	if w.fourths == 0 {
		return Infinite()
	}
	return Freedom(w.squares * w.squares / w.fourths)
}
