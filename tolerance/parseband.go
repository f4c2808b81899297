package tolerance

import (
	"errors"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

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
//	0.03–0.07 mm            a range: dash, hyphen, "~", "to" or "…"
//	max 0.10 mm             also maximum, at most, not more than, up to, ≤; or "0.10 mm max"
//	less than 0.10 mm       also under, below, <
//	min 0.03 mm             also minimum, at least, not less than, ≥; or "0.03 mm min"
//	more than 0.03 mm       also over, above, >
//	renew at 0.10 mm or more   the same as less than 0.10 mm; also replace, reject, scrap
//	renew over 0.10 mm      the same as max 0.10 mm
//	73.00 +0.03/-0.01 mm    a size with two deviations
//	2.5 ±0.02 mm            a size with one; also +/-
//	min 0.03 mm, less than 0.07 mm   two one-sided limits, with a comma and a space, or "and"
//	no limit                asks nothing
//
// Words may be in capitals. A number without a unit takes that of the other
// number; one without another has none, which is an error. Each number is
// read as package units reads it. What may mean two things is refused: a
// single value, "0.10 mm or more" without a word that says whether that is
// allowed, a hyphen after a blank and before a digit. The errors are
// [ParseError]s.
func ParseBandOf[Q units.Quantity](s string) (BandOf[Q], error) {
	p, err := ParsePrintedOf[Q](s)
	return p.BandOf, err
}

// The forms that errors offer.
const (
	bandForms = `write a range ("0.03–0.07 mm"), a limit ("max 0.10 mm") or a size ("2.5 ±0.02 mm")`
	noLimit   = "no limit"
	oneBand   = `one band at a time: a second column in brackets is a band of its own, and Compare tells where the two part`
	// textMax is the longest text in bytes that is looked at.
	textMax = 256
)

// A reader reads one text.
type reader[Q units.Quantity] struct {
	what  string // for the errors
	input string
	wide  bool // take the whole range of Q, as what was written by a program may need
}

// A part is a piece of the text with plain spaces, and its place there.
type part struct {
	s  string
	at int
}

func (p part) from(i int) part { return part{p.s[i:], p.at + i} }
func (p part) to(i int) part   { return part{p.s[:i], p.at} }

func (p part) trim() part {
	s := strings.TrimLeft(p.s, " ")
	return part{strings.TrimRight(s, " "), p.at + len(p.s) - len(s)}
}

// cut splits at the first mark, in capitals or not; its own first byte is no
// letter.
func (p part) cut(mark string) (before, after part, ok bool) {
	for i := 0; i+len(mark) <= len(p.s); i++ {
		if p.s[i] == mark[0] && strings.EqualFold(p.s[i:i+len(mark)], mark) {
			return p.to(i), p.from(i + len(mark)), true
		}
	}
	return p, part{}, false
}

// text is the input as a part, every kind of blank made a single space.
func (r *reader[Q]) text() (part, error) {
	if len(r.input) > textMax || !utf8.ValidString(r.input) {
		return part{}, r.fail(part{}, ErrSyntax, "at most 256 bytes of UTF-8 text", nil)
	}
	return part{s: strings.Join(strings.Fields(r.input), " ")}, nil
}

func (r *reader[Q]) fail(at part, kind error, want string, cause error) error {
	return parseError(r.what, r.input, place(r.input, at.at), kind, want, cause)
}

// number reads one number.
func (r *reader[Q]) number(p part, unit *units.Unit[Q]) (w units.Written[Q], err error) {
	p = p.trim()
	if unit != nil {
		w, err = units.ParseWrittenIn(p.s, *unit)
	} else {
		w, err = units.ParseWritten[Q](p.s)
	}
	if err == nil {
		return w, nil
	}
	if r.wide && errors.Is(err, units.ErrRange) {
		if w, ok := readWide(p.s, unit); ok {
			return w, nil
		}
	}
	kind, want := ErrSyntax, ""
	if cause := (*units.ParseError)(nil); errors.As(err, &cause) {
		p.at += cause.Offset
		want = cause.Want
		if cause.Kind != units.ErrSyntax {
			kind = cause.Kind
		}
	}
	return w, r.fail(p, kind, want, err)
}

// pair reads two numbers, of which one may lack its unit and then takes the
// other's, if that has one alone.
func (r *reader[Q]) pair(a, b part) (x, y units.Written[Q], err error) {
	x, errX := r.number(a, nil)
	y, errY := r.number(b, nil)
	if errors.Is(errX, units.ErrNoUnit) && errY == nil && !y.Compound {
		x, errX = r.number(a, &y.Unit)
	} else if errors.Is(errY, units.ErrNoUnit) && errX == nil && !x.Compound {
		y, errY = r.number(b, &x.Unit)
	}
	if errX != nil && (errY == nil || !errors.Is(errX, units.ErrNoUnit)) {
		return x, y, errX
	}
	return x, y, errY
}

func (r *reader[Q]) band(p part) (PrintedOf[Q], error) {
	if before, after, ok := p.cut("("); ok {
		after.at-- // point at the bracket
		if before.s != "" {
			return PrintedOf[Q]{}, r.fail(after, ErrSyntax, oneBand, nil)
		}
	}
	for _, mark := range []string{", ", " and "} {
		if a, b, ok := p.cut(mark); ok {
			return r.twoSided(a, b)
		}
	}
	if to, number, err := r.oneSided(p); err != nil {
		return PrintedOf[Q]{}, err
	} else if to != 0 {
		w, err := r.number(number, nil)
		if err != nil {
			return PrintedOf[Q]{}, err
		}
		return limitOf(to, w), nil
	}
	if size, dev, ok := cutSymmetric(p); ok {
		i, err := r.symmetric(size, dev)
		return PrintedOf[Q]{BandOf: BandOf[Q]{i}}, err
	}
	if size, a, b, ok := cutDeviations(p); ok {
		i, err := r.deviations(size, a, b)
		return PrintedOf[Q]{BandOf: BandOf[Q]{i}}, err
	}
	return r.span(p)
}

// twoSided reads two one-sided limits.
func (r *reader[Q]) twoSided(a, b part) (none PrintedOf[Q], err error) {
	var to [2]side
	var number [2]part
	for i, p := range [2]part{a.trim(), b.trim()} {
		if to[i], number[i], err = r.oneSided(p); err != nil {
			return none, err
		}
		if to[i] == 0 || i == 1 && to[0].upper() == to[1].upper() {
			return none, r.fail(p, ErrSyntax, `write two one-sided limits as "min 0.03 mm, less than 0.07 mm"`, nil)
		}
	}
	x, y, err := r.pair(number[0], number[1])
	if err != nil {
		return none, err
	}
	if to[0].upper() {
		to[0], to[1], x, y = to[1], to[0], y, x
	}
	return r.make(x, to[0].end(), y, to[1].end())
}

// span reads a range.
func (r *reader[Q]) span(p part) (none PrintedOf[Q], err error) {
	a, b, minus, ok := cutRange(p)
	if !ok {
		return none, r.notBand(p)
	}
	if minus {
		return none, r.fail(b, ErrAmbiguous, `a range or a number below zero? write "0.03–0.07" or "0.03 to -0.07"`, nil)
	}
	x, y, err := r.pair(a, b)
	if err != nil {
		return none, err
	}
	both, err := r.make(x, Closed, y, Closed)
	if err != nil && r.oneValue(p) { // 1-1/2 in
		return none, r.notBand(p)
	}
	return both, err
}

func (r *reader[Q]) oneValue(p part) bool {
	_, err := r.number(p, nil)
	return err == nil
}

func (r *reader[Q]) notBand(p part) error {
	if r.oneValue(p) {
		return r.fail(part{}, ErrSyntax, `one value is not a band: write "max …", "min …" or a range`, nil)
	}
	return r.fail(part{}, ErrSyntax, bandForms, nil)
}

func (r *reader[Q]) make(lo units.Written[Q], loEnd End, hi units.Written[Q], hiEnd End) (PrintedOf[Q], error) {
	b, err := NewBand(lo.Value, loEnd, hi.Value, hiEnd)
	if err != nil {
		return PrintedOf[Q]{}, r.order(err)
	}
	return PrintedOf[Q]{BandOf: b, Least: lo, Greatest: hi}, nil
}

// order is the error of ends that don't make an interval.
func (r *reader[Q]) order(err error) error {
	kind, want := ErrRange, "ends within the range of the type"
	cause := (*units.ParseError)(nil)
	if errors.Is(err, ErrOrder) {
		kind, want = ErrOrder, "the least comes first"
	} else if errors.As(err, &cause) {
		want = cause.Want
	}
	return r.fail(part{}, kind, want, err)
}

// cutRange splits at the one mark of a range. minus tells that it is a hyphen
// after a blank and before a number, which may be that number's sign.
func cutRange(p part) (a, b part, minus, ok bool) {
	for _, mark := range []string{"–", "—", " to ", "…", "...", "~"} {
		if a, b, ok := p.cut(mark); ok {
			return a, b, false, true
		}
	}
	// A hyphen or minus sign marks a range where something that ends a
	// number stands before it: "0.03-0.07", "-0.02 - 0.03".
	for i, c := range p.s {
		if (c == '-' || c == '−') && endsNumber(p.s[:i]) {
			b := p.from(i + utf8.RuneLen(c))
			return p.to(i), b, p.s[i-1] == ' ' && !strings.HasPrefix(b.s, " "), true
		}
	}
	return p, p, false, false
}

func endsNumber(s string) bool {
	s = strings.TrimRight(s, " ")
	return !strings.HasSuffix(s, "-") && !strings.HasSuffix(s, "−") && strings.ContainsAny(s, "0123456789")
}
