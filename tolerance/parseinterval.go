package tolerance

import (
	"encoding"
	"strings"

	"github.com/tenthou/tenthou/units"
)

// ParseBracket is [ParseInterval] for lengths.
func ParseBracket(s string) (Bracket, error) { return ParseInterval[units.Length](s) }

const intervalForms = `write it as "0.07 mm", "73.02 ±0.005 mm", "[0.0635 mm, 0.0762 mm)" or "[0.5 mm, ∞)"`

// measuredForms is offered where a reading is written as limits are.
const measuredForms = `limits are written so; write what was measured as "[0.05 mm, 0.07 mm]" or "0.06 ±0.01 mm"`

// ParseInterval reads one value, a reading with its error (73.02 ±0.005 mm),
// or an interval in brackets as [Interval] prints it; a semicolon may stand
// for the comma between the ends. A number without a unit takes that of the
// other one. The errors are [ParseError]s.
func ParseInterval[Q units.Quantity](s string) (Interval[Q], error) {
	if i, ok := plainInterval[Q](s); ok {
		return i, nil
	}
	return (&reader[Q]{what: "interval", input: s}).interval()
}

func (r *reader[Q]) interval() (none Interval[Q], err error) {
	p, err := r.text()
	if err != nil {
		return none, err
	}
	if p.s == "" {
		return none, r.fail(p, ErrSyntax, intervalForms, nil)
	}
	if size, dev, ok := cutSymmetric(p); ok {
		return r.symmetric(size, dev)
	}
	if p.s[0] != '[' && p.s[0] != '(' {
		w, err := r.number(p, nil)
		if err == nil {
			return Exactly(w.Value), nil
		}
		if _, bandErr := r.band(p); bandErr == nil {
			return none, r.fail(part{}, ErrSyntax, measuredForms, nil)
		}
		return none, err
	}
	last := len(p.s) - 1
	if p.s[last] != ']' && p.s[last] != ')' {
		return none, r.fail(p.from(last), ErrSyntax, intervalForms, nil)
	}
	lo, hi, ok := cutEnds(p.to(last).from(1))
	if !ok {
		return none, r.fail(part{}, ErrSyntax, intervalForms, nil)
	}
	loEnd, hiEnd := bracketEnd(p.s[0]), bracketEnd(p.s[last])
	noLo := lo.s == "-"+infinity || lo.s == "−"+infinity
	noHi := hi.s == infinity || hi.s == "+"+infinity
	if noLo && loEnd == Closed || noHi && hiEnd == Closed {
		return none, r.fail(part{}, ErrSyntax, "a round bracket beside ∞", nil)
	}
	var a, b units.Written[Q]
	switch {
	case noLo && noHi:
	case noLo:
		b, err = r.number(hi, nil)
	case noHi:
		a, err = r.number(lo, nil)
	default:
		a, b, err = r.pair(lo, hi)
	}
	if err != nil {
		return none, err
	}
	if noLo {
		loEnd = Absent
	}
	if noHi {
		hiEnd = Absent
	}
	i, err := NewInterval(a.Value, loEnd, b.Value, hiEnd)
	if err != nil {
		return none, r.order(err)
	}
	return i, nil
}

func bracketEnd(c byte) End {
	if c == '[' || c == ']' {
		return Closed
	}
	return Open
}

// cutEnds splits what stands between the brackets: at a semicolon, or at a
// comma that no decimal follows at once.
func cutEnds(p part) (lo, hi part, ok bool) {
	for _, mark := range []string{";", ", "} {
		if lo, hi, ok := p.cut(mark); ok {
			return lo.trim(), hi.trim(), true
		}
	}
	i := strings.IndexByte(p.s, ',')
	if i < 1 || p.s[i-1] >= '0' && p.s[i-1] <= '9' {
		return p, p, false
	}
	return p.to(i).trim(), p.from(i + 1).trim(), true
}

// readWide reads what this package wrote, in the unit of the type's own text,
// over the whole range of Q.
func readWide[Q units.Quantity](s string, unit *units.Unit[Q]) (w units.Written[Q], ok bool) {
	own := units.Unit[Q](0).Symbol()
	name := strings.TrimLeft(s, "-.0123456789 ")
	if name == "" && unit != nil {
		name, s = unit.Symbol(), s+" "+unit.Symbol()
	}
	text, ok := any(&w.Value).(encoding.TextUnmarshaler)
	w.Places = uint8(units.Unit[Q](0).Places())
	return w, ok && name == own && text.UnmarshalText([]byte(s)) == nil
}
