package tolerance

import (
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

const bandForms = `write it as "0.03–0.07 mm", "max 0.10 mm", "less than 0.10 mm", "min 0.03 mm", "renew at 0.10 mm or more", "73.00 +0.03/-0.01 mm" or "2.5 ±0.02 mm"`

// ParseBand reads a band of lengths as manuals print it. See [ParseBandOf].
func ParseBand(s string) (Band, error) { return ParseBandOf[units.Length](s) }

// MustParseBand is [ParseBand] for constants and tables; it panics on an error.
func MustParseBand(s string) Band {
	b, err := ParseBand(s)
	if err != nil {
		panic(err)
	}
	return b
}

// ParseBandOf reads a band as manuals print it:
//
//	0.03–0.07 mm            a range: en dash, hyphen, "to" or "…"
//	max 0.10 mm             also maximum, at most, not more than, up to, ≤; or "0.10 mm max"
//	less than 0.10 mm       also under, below, <
//	min 0.03 mm             also minimum, at least, not less than, ≥; or "0.03 mm min"
//	more than 0.03 mm       also over, above, >
//	renew at 0.10 mm or more   the same as less than 0.10 mm; also replace, reject, scrap
//	renew over 0.10 mm      the same as max 0.10 mm
//	73.00 +0.03/-0.01 mm    a size with two deviations
//	2.5 ±0.02 mm            a size with one; also +/-
//	min 0.03 mm, less than 0.07 mm   two one-sided limits, with a comma and a space
//	no limit                asks nothing
//
// A number without a unit takes that of the other number. Each number is read
// as package units reads it. The errors are [ParseError]s.
func ParseBandOf[Q units.Quantity](s string) (BandOf[Q], error) {
	p, err := ParsePrintedOf[Q](s)
	return p.BandOf, err
}

// A PrintedOf is a band with its limits as the manual prints them: which unit,
// how many places. Its text is what was read.
type PrintedOf[Q units.Quantity] struct {
	BandOf[Q]
	Least, Greatest units.Written[Q] // as printed; zero where absent or calculated
	text            string
}

// A Printed is a band of lengths as a manual prints it.
type Printed = PrintedOf[units.Length]

// String is the text that was read, or the band's own.
func (p PrintedOf[Q]) String() string {
	if p.text == "" {
		return p.BandOf.String()
	}
	return p.text
}

// MarshalText writes what String gives.
func (p PrintedOf[Q]) MarshalText() ([]byte, error) {
	if p.text == "" {
		return p.BandOf.MarshalText()
	}
	return []byte(p.text), nil
}

// UnmarshalText reads what [ParsePrintedOf] reads.
func (p *PrintedOf[Q]) UnmarshalText(text []byte) error {
	v, err := ParsePrintedOf[Q](string(text))
	if err == nil {
		*p = v
	}
	return err
}

// ParsePrinted is [ParsePrintedOf] for lengths.
func ParsePrinted(s string) (Printed, error) { return ParsePrintedOf[units.Length](s) }

// ParsePrintedOf reads what [ParseBandOf] reads and keeps how each limit was
// printed.
func ParsePrintedOf[Q units.Quantity](s string) (PrintedOf[Q], error) {
	r := bandReader[Q]{input: s}
	if len(s) > 256 || !utf8.ValidString(s) {
		return PrintedOf[Q]{}, r.fail(ErrSyntax, "at most 256 bytes of UTF-8; "+bandForms, nil)
	}
	text := plainSpaces(s)
	if strings.EqualFold(text, noLimit) {
		return PrintedOf[Q]{text: text}, nil
	}
	p, err := r.read(text)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	p.text = text
	return p, nil
}

const noLimit = "no limit"

// plainSpaces turns every kind of blank into single spaces.
func plainSpaces(s string) string { return strings.Join(strings.Fields(s), " ") }

type bandReader[Q units.Quantity] struct{ input string }

func (r *bandReader[Q]) fail(kind error, want string, cause error) error {
	return parseError("band", r.input, 0, kind, want, cause)
}

// number reads one number, for a limit.
func (r *bandReader[Q]) number(s string, unit *units.Unit[Q]) (w units.Written[Q], err error) {
	s = strings.TrimSpace(s)
	if unit != nil {
		w, err = units.ParseWrittenIn(s, *unit)
	} else {
		w, err = units.ParseWritten[Q](s)
	}
	if err != nil {
		return w, r.fail(ErrSyntax, "", err)
	}
	return w, nil
}

// pair reads two numbers of which one may lack its unit.
func (r *bandReader[Q]) pair(a, b string) (x, y units.Written[Q], err error) {
	if y, err = r.number(b, nil); errors.Is(err, units.ErrNoUnit) {
		if x, err = r.number(a, nil); err != nil {
			return x, y, err
		}
		y, err = r.number(b, &x.Unit)
		return x, y, err
	} else if err != nil {
		return x, y, err
	}
	x, err = r.number(a, &y.Unit)
	return x, y, err
}

func (r *bandReader[Q]) read(s string) (PrintedOf[Q], error) {
	if a, b, ok := strings.Cut(s, ", "); ok {
		return r.twoSided(a, b)
	}
	if p, ok, err := r.oneSided(s); ok {
		return p, err
	}
	for _, mark := range []string{"±", "+/-", "+/−", "+-"} {
		if a, b, ok := strings.Cut(s, mark); ok {
			return r.symmetric(a, b)
		}
	}
	if p, ok, err := r.deviations(s); ok {
		return p, err
	}
	a, b, ok := cutRange(s)
	if !ok {
		if _, err := r.number(s, nil); err == nil {
			return PrintedOf[Q]{}, r.fail(ErrSyntax, "one value is not a band: "+bandForms, nil)
		}
		return PrintedOf[Q]{}, r.fail(ErrSyntax, bandForms, nil)
	}
	lo, hi, err := r.pair(a, b)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	return r.make(lo, Closed, hi, Closed)
}

func (r *bandReader[Q]) make(lo units.Written[Q], loEnd End, hi units.Written[Q], hiEnd End) (PrintedOf[Q], error) {
	b, err := NewBand(lo.Value, loEnd, hi.Value, hiEnd)
	if err != nil {
		return PrintedOf[Q]{}, r.fail(ErrOrder, "the least comes first", err)
	}
	return PrintedOf[Q]{BandOf: b, Least: lo, Greatest: hi}, nil
}

func (r *bandReader[Q]) twoSided(a, b string) (PrintedOf[Q], error) {
	const want = `two one-sided limits, as "min 0.03 mm, less than 0.07 mm"`
	p, okA, err := r.oneSided(a)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	q, okB, err := r.oneSided(b)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	if p.limits.loEnd == Absent {
		p, q = q, p
	}
	if !okA || !okB || p.limits.loEnd == Absent || q.limits.hiEnd == Absent {
		return PrintedOf[Q]{}, r.fail(ErrSyntax, want, nil)
	}
	return r.make(p.Least, p.limits.loEnd, q.Greatest, q.limits.hiEnd)
}

// symmetric reads a size and one tolerance.
func (r *bandReader[Q]) symmetric(size, tol string) (PrintedOf[Q], error) {
	s, t, err := r.pair(size, tol)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	if t.Value < 0 {
		return PrintedOf[Q]{}, r.fail(ErrOrder, "a tolerance after ± has no sign", nil)
	}
	b, err := Between(checkedSub(s.Value, t.Value), checkedAdd(s.Value, t.Value))
	if err != nil {
		return PrintedOf[Q]{}, r.fail(ErrOrder, "", err)
	}
	return PrintedOf[Q]{BandOf: b}, nil
}

// cutRange splits at the one mark of a range.
func cutRange(s string) (a, b string, ok bool) {
	for _, mark := range []string{"–", "—", " to ", "…", "..."} {
		if a, b, ok := strings.Cut(s, mark); ok {
			return a, b, true
		}
	}
	// A hyphen or minus sign marks a range where something that ends a
	// number stands before it: "0.03-0.07", "-0.02 - 0.03".
	for i, c := range s {
		if (c == '-' || c == '−') && endsNumber(s[:i]) {
			return s[:i], s[i+utf8.RuneLen(c):], true
		}
	}
	return "", "", false
}

func endsNumber(s string) bool {
	s = strings.TrimRight(s, " ")
	return s != "" && !strings.HasSuffix(s, "-") && !strings.HasSuffix(s, "−") && strings.ContainsAny(s, "0123456789")
}
