package tolerance

import (
	"math"
	"math/bits"
	"strconv"
	"strings"
)

// A Ratio is an exact fraction: the sensitivity of a chain to a link, or a
// rate of wear per unit of diameter. [NewRatio], [Whole] and [ParseRatio]
// give it in its lowest terms with a Den above zero, and then ratios compare
// with ==. The zero Ratio is no ratio.
//
// Its text is a decimal where it has a finite one, else a fraction: "-1",
// "0.0005", "1/3".
type Ratio struct {
	Num, Den int64 // numerator and denominator
}

// NewRatio is num/den. It fails with a [RatioError] where den is zero or
// either is −2^63.
func NewRatio(num, den int64) (Ratio, error) {
	if den == 0 || num == math.MinInt64 || den == math.MinInt64 {
		return Ratio{}, ratioError(strconv.FormatInt(num, 10)+"/"+strconv.FormatInt(den, 10), ErrRange, "a denominator other than zero, both within ±(2^63 − 1)")
	}
	return reduced(num, den), nil
}

// Whole is the whole number n as a ratio; [NewRatio] says which n it is not.
func Whole(n int64) Ratio {
	if n == math.MinInt64 {
		return Ratio{}
	}
	return Ratio{n, 1}
}

func reduced(num, den int64) Ratio {
	if den < 0 {
		num, den = -num, -den
	}
	a, b := max(num, -num), den
	for b != 0 {
		a, b = b, a%b
	}
	return Ratio{num / a, den / a}
}

// Valid reports whether r is a ratio that can be multiplied by: not the zero
// Ratio, nor one with a zero denominator.
func (r Ratio) Valid() bool {
	return r.Den != 0 && r.Num != math.MinInt64 && r.Den != math.MinInt64
}

// Sign is -1, 0 or +1, and 0 for what is no ratio.
func (r Ratio) Sign() int {
	switch {
	case !r.Valid() || r.Num == 0:
		return 0
	case (r.Num < 0) != (r.Den < 0):
		return -1
	}
	return 1
}

// Float is the ratio as a float64, within one unit in the last place;
// not-a-number for what is no ratio.
func (r Ratio) Float() float64 {
	if !r.Valid() {
		return math.NaN()
	}
	return float64(r.Num) / float64(r.Den)
}

// magnitudes are the ratio without its sign.
func (r Ratio) magnitudes() (num, den uint64) {
	return uint64(max(r.Num, -r.Num)), uint64(max(r.Den, -r.Den))
}

// String is the ratio's text.
func (r Ratio) String() string {
	if !r.Valid() {
		return "no ratio"
	}
	r = reduced(r.Num, r.Den)
	if places, scaled, ok := r.decimal(); ok {
		digits := strconv.FormatUint(scaled, 10)
		if places > 0 {
			digits = strings.Repeat("0", max(0, places+1-len(digits))) + digits
			digits = digits[:len(digits)-places] + "." + digits[len(digits)-places:]
		}
		if r.Num < 0 {
			return "-" + digits
		}
		return digits
	}
	return strconv.FormatInt(r.Num, 10) + "/" + strconv.FormatInt(r.Den, 10)
}

// decimal gives the places and the digits of a reduced ratio's finite
// decimal, if it has one that is read back.
func (r Ratio) decimal() (places int, scaled uint64, ok bool) {
	num, den := r.magnitudes()
	for scaled = num; den > 1; places++ {
		if places == ratioPlaces {
			return 0, 0, false
		}
		switch {
		case den%10 == 0:
			den /= 10
			continue
		case den%2 == 0:
			den /= 2
			num = 5
		case den%5 == 0:
			den /= 5
			num = 2
		default:
			return 0, 0, false
		}
		var over uint64
		if over, scaled = bits.Mul64(scaled, num); over != 0 || scaled > math.MaxInt64 {
			return 0, 0, false
		}
	}
	return places, scaled, true
}

// ratioPlaces is the most decimal places that are read and written.
const ratioPlaces = 18

// MarshalText writes what String gives.
func (r Ratio) MarshalText() ([]byte, error) {
	if !r.Valid() {
		return nil, &RangeError{Op: "encode ratio"}
	}
	return []byte(r.String()), nil
}

// UnmarshalText reads what [ParseRatio] reads.
func (r *Ratio) UnmarshalText(text []byte) error {
	v, err := ParseRatio(string(text))
	if err == nil {
		*r = v
	}
	return err
}

const ratioForms = `write it as "-1", "0.0005", "1/3" or "15 %"`

// ParseRatio reads a whole number, a decimal of at most 18 places with a
// point or a comma, a fraction of whole numbers, or a percentage, each with or
// without a sign. A comma before exactly three digits, the first of the number
// not being 0, may be a thousands mark and is refused as ambiguous. The errors
// are [RatioError]s.
func ParseRatio(s string) (Ratio, error) {
	fail := func(kind error, want string) (Ratio, error) { return Ratio{}, ratioError(s, kind, want) }
	t := strings.TrimSpace(s)
	t, percent := strings.CutSuffix(t, "%")
	t = strings.TrimSpace(t)
	negative := false
	for _, sign := range []string{"+", "-", "−"} {
		if rest, ok := strings.CutPrefix(t, sign); ok {
			t, negative = rest, sign != "+"
			break
		}
	}
	num, den, fraction := strings.Cut(t, "/")
	whole, places, decimal := strings.Cut(strings.Replace(num, ",", ".", 1), ".")
	if fraction && (decimal || percent) || !isDigits(whole+places) || decimal && places == "" || fraction && !isDigits(den) {
		return fail(ErrSyntax, ratioForms)
	}
	if strings.Contains(num, ",") && len(places) == 3 && len(whole) <= 3 && whole != "" && whole[0] != '0' {
		return fail(ErrAmbiguous, "the comma may be a thousands mark: write a point, or no mark")
	}
	n, err := strconv.ParseInt(whole+places, 10, 64)
	shift := len(places)
	if percent {
		shift += 2
	}
	d := int64(1)
	if err == nil && fraction {
		d, err = strconv.ParseInt(den, 10, 64)
	}
	if err != nil || shift > ratioPlaces || d == 0 {
		return fail(ErrRange, "at most 18 decimal places, numbers up to 2^63 − 1 and a denominator other than zero")
	}
	for range shift {
		d *= 10
	}
	if negative {
		n = -n
	}
	return reduced(n, d), nil
}

func isDigits(s string) bool {
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// A RatioError says what is no ratio, and what was expected.
type RatioError struct {
	Input string // at most 64 bytes of it
	Kind  error  // ErrSyntax, ErrRange or ErrAmbiguous
	Want  string // what was expected, in words
}

func (e *RatioError) Error() string {
	return "tolerance: ratio " + strconv.Quote(e.Input) + ": " + e.Kind.Error() + "; " + e.Want
}

// Unwrap gives the kind.
func (e *RatioError) Unwrap() error { return e.Kind }

func ratioError(input string, kind error, want string) error {
	const most = 64
	if len(input) > most {
		input = strings.ToValidUTF8(input[:most], "")
	}
	return &RatioError{Input: input, Kind: kind, Want: want}
}
