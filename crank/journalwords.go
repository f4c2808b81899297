package crank

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// journalLargest is more than any journal measures, and keeps sums of readings
// from wrapping.
const journalLargest = 10 * units.Metre

// journalAllowance refuses what is no allowance: stock to grind off, a run-out.
func journalAllowance(field string, d units.Length) error {
	if d < 0 || d > journalLargest {
		return &InputError{field, d.String(), "0 mm or more, and at most 10 m"}
	}
	return nil
}

// journalBracket refuses a bracket whose ends are not both there and within
// bounds.
func journalBracket(field string, i tolerance.Bracket, least units.Length) error {
	lo, loEnd := i.Lower()
	hi, hiEnd := i.Upper()
	switch {
	case !i.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
		return &InputError{field, journalQuote(i.String()), "measured, with a least and a greatest"}
	case lo < least || hi > journalLargest:
		return &InputError{field, journalQuote(i.String()), "from " + least.String() + " to 10 m"}
	}
	return nil
}

// journalBracketOf is journalBracket for a field of a part; the whole name is made
// only where it is needed.
func journalBracketOf(where, field string, i tolerance.Bracket, least units.Length) error {
	err := journalBracket(field, i, least)
	if e, ok := err.(*InputError); ok {
		e.Field = journalField(where, e.Field)
	}
	return err
}

// journalEnds are the two ends of a bracket that has both.
func journalEnds(i tolerance.Bracket) (lo, hi units.Length) {
	lo, _ = i.Lower()
	hi, _ = i.Upper()
	return lo, hi
}

// journalSpan is [lo, hi]; out of range where they are not in order.
func journalSpan(lo, hi units.Length) tolerance.Bracket {
	b, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	return b
}

// journalQuote cuts a text of the caller's to 64 bytes, whole characters only.
func journalQuote(s string) string {
	const most = 64
	if len(s) <= most {
		return s
	}
	n := most
	for n > 0 && s[n]&0xC0 == 0x80 {
		n--
	}
	return s[:n] + "…"
}

// journalField puts a place before the name of a field.
func journalField(where, field string) string {
	if where == "" {
		return field
	}
	return journalQuote(where) + ", " + field
}

// journalWord names the value i; one that has no name is read as the zero value.
func journalWord[T ~uint8](names []string, i T) string {
	if int(i) >= len(names) {
		i = 0
	}
	return names[i]
}

// journalRead reads what journalWord gives.
func journalRead[T ~uint8](field string, names []string, text []byte, into *T) error {
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return nil
		}
	}
	var want strings.Builder
	want.WriteString("one of")
	for i, n := range names {
		if i > 0 {
			want.WriteString(",")
		}
		fmt.Fprintf(&want, " %q", n)
	}
	return &InputError{field, fmt.Sprintf("%q", journalQuote(string(text))), want.String()}
}

// joined joins two verdicts of Within, Below and Undecided: one that fails fails,
// and one that is open leaves it open.
func joined(a, b tolerance.Verdict) tolerance.Verdict {
	switch {
	case a == tolerance.Below || b == tolerance.Below:
		return tolerance.Below
	case a == tolerance.Undecided || b == tolerance.Undecided:
		return tolerance.Undecided
	}
	return tolerance.Within
}

// failed makes any failure Below.
func failed(v tolerance.Verdict) tolerance.Verdict {
	if v == tolerance.Above {
		return tolerance.Below
	}
	return v
}
