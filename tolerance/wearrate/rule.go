package wearrate

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Kind says what a rule limits, and what it counts from. The zero value says
// nothing.
type Kind uint8

// The kinds of rule.
const (
	// AtMost: the measure may be the allowance at the most. For wear, taper
	// and out-of-round; with a rate of 1.15 of its width when new, for a seat.
	AtMost Kind = iota + 1
	// AtLeast: the measure must be the allowance at the least. With a rate of
	// 0.97 of its length when new, for a spring.
	AtLeast
	// AboveNew: the measure may exceed the greatest for new parts by the
	// allowance.
	AboveNew
	// BelowNew: the measure may fall short of the least for new parts by the
	// allowance.
	BelowNew
)

var kindNames = [...]string{"", "at most", "at least", "above the greatest new", "below the least new"}

// String is the kind in words.
func (k Kind) String() string {
	if int(k) >= len(kindNames) {
		k = 0
	}
	return kindNames[k]
}

// MarshalText writes what String gives.
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *Kind) UnmarshalText(text []byte) error {
	for i, name := range kindNames[1:] {
		if name == string(text) {
			*k = Kind(i + 1)
			return nil
		}
	}
	return refuse("", "kind", string(text), ErrRule, `"at most", "at least", "above the greatest new" or "below the least new"`)
}

// A Rule is one row of a table of rates. The allowance is rate × size + plus; at
// least one of the two is given.
type Rule struct {
	Item string `json:"item"` // what is measured: "cylinder bore wear"
	Kind Kind   `json:"kind"` // what is limited, and from where it counts
	// Times multiplies the limit for new parts that AboveNew or BelowNew counts
	// from: 2 for twice the taper of a new shaft. The zero Ratio leaves it as
	// it is.
	Times tolerance.Ratio `json:"times,omitzero"`
	Rate  tolerance.Ratio `json:"rate,omitzero"`  // of the size, not below zero
	Of    string          `json:"of,omitempty"`   // which size: "bore diameter", "piston travel"
	Plus  units.Length    `json:"plus,omitzero"`  // whatever the size, not below zero
	Note  string          `json:"note,omitempty"` // for a reader
}

// NeedsSize reports whether the limit depends on the part's size.
func (r Rule) NeedsSize() bool { return r.Rate.Sign() != 0 }

// NeedsNew reports whether the limit counts from that for new parts.
func (r Rule) NeedsNew() bool { return r.Kind == AboveNew || r.Kind == BelowNew }

// Validate refuses, with an [InputError], a rule that allows nothing, less than
// nothing, or that doesn't say of which size its rate is.
func (r Rule) Validate() error {
	fail := func(field, value string, kind error, want string) error {
		return refuse(r.Item, field, value, kind, want)
	}
	zero := tolerance.Ratio{}
	switch {
	case r.Item == "":
		return fail("item", "", ErrName, "what is measured")
	case r.Kind < AtMost || r.Kind > BelowNew:
		return fail("kind", "", ErrRule, `"at most", "at least", "above the greatest new" or "below the least new"`)
	case r.Rate != zero && r.Rate.Sign() <= 0:
		return fail("rate", r.Rate.String(), ErrRule, "a ratio above zero, or none")
	case r.NeedsSize() && r.Of == "":
		return fail("of", "", ErrRule, "which size the rate is of")
	case !r.Plus.InRange() || r.Plus < 0:
		return fail("plus", r.Plus.String(), ErrRule, "a length not below zero")
	case r.Times != zero && !r.NeedsNew():
		return fail("times", r.Times.String(), ErrRule, "none: the rule doesn't count from the limit for new parts")
	case r.Times != zero && r.Times.Sign() <= 0:
		return fail("times", r.Times.String(), ErrRule, "a ratio above zero, or none")
	case r.Rate == zero && r.Plus == 0 && r.Times == zero:
		return fail("rate", "", ErrRule, "a rate, a length or both")
	}
	return nil
}

// Spec makes the limits for a part of the given size. That is the size that the
// rule's rate is of, as the maker gives it, not a worn one; a rule without a rate
// doesn't look at it. The band for new parts is part of the result; it may be
// the zero Band where the rule doesn't count from it.
//
// It fails with an [InputError] where the rule is not valid, the size is needed
// and not above zero, the band lacks the limit that the rule counts from, a value
// is out of range, or the band for new parts reaches past the limit.
func (r Rule) Spec(size units.Length, fresh tolerance.Band) (tolerance.Spec, error) {
	limit, err := r.limit(size, fresh)
	if err != nil {
		return tolerance.Spec{}, err
	}
	s := tolerance.Spec{New: fresh, Wear: tolerance.AtMost(limit)}
	if r.least() {
		s.Wear = tolerance.AtLeast(limit)
	}
	if err := s.Validate(); err != nil {
		return tolerance.Spec{}, &InputError{Item: clip(r.Item), Field: "new-part band", Value: clip(fresh.String()), Kind: tolerance.ErrSpec, Err: err}
	}
	return s, nil
}

func (r Rule) least() bool { return r.Kind == AtLeast || r.Kind == BelowNew }

// limit is the wear limit, rounded inward.
func (r Rule) limit(size units.Length, fresh tolerance.Band) (units.Length, error) {
	if err := r.Validate(); err != nil {
		return 0, err
	}
	if r.NeedsSize() {
		if err := checkSize(r.Item, r.Of, size); err != nil {
			return 0, err
		}
	}
	if !fresh.InRange() {
		return 0, refuse(r.Item, "new-part band", fresh.String(), ErrRange, "limits within the range of a length")
	}
	limit, inward := r.Plus, units.Down
	if r.Kind == AtLeast {
		inward = units.Up
	}
	if r.NeedsSize() {
		limit = limit.Add(units.ScaleRound(size, r.Rate.Num, r.Rate.Den, inward))
	}
	if r.NeedsNew() {
		from, end, name := units.Length(0), tolerance.Absent, "least"
		toward := units.Up
		if r.Kind == AboveNew {
			name, toward = "greatest", units.Down
			from, end = fresh.Upper()
		} else {
			from, end = fresh.Lower()
		}
		if end == tolerance.Absent {
			return 0, refuse(r.Item, "new-part band", fresh.String(), ErrNoLimit, "the "+name+" for new parts, which the rule counts from")
		}
		if r.Times.Valid() {
			from = units.ScaleRound(from, r.Times.Num, r.Times.Den, toward)
		}
		if r.Kind == BelowNew {
			limit = from.Sub(limit)
		} else {
			limit = from.Add(limit)
		}
	}
	if !limit.InRange() {
		return 0, refuse(r.Item, "limit", "", ErrRange, "within the range of a length")
	}
	return limit, nil
}

// String is the rule in words: "cylinder bore wear: at most 0.001 × bore
// diameter".
func (r Rule) String() string {
	s := r.Item + ": at most "
	if r.least() {
		s = r.Item + ": at least "
	}
	joint := ""
	if r.NeedsNew() {
		if r.Times.Valid() {
			s += r.Times.String() + " × "
		}
		s += "the greatest new"
		joint = " + "
		if r.Kind == BelowNew {
			s = s[:len(s)-len("greatest new")] + "least new"
			joint = " − "
		}
	}
	if r.NeedsSize() {
		s += joint + r.Rate.String() + " × " + r.Of
		if joint == "" {
			joint = " + "
		}
	}
	if r.Plus != 0 {
		s += joint + r.Plus.String()
	}
	return s
}
