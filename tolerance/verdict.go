package tolerance

import "strings"

// A Verdict says how what was measured lies to what is allowed. The zero
// value is Undecided: the bracket holds values on both sides of a limit, or
// nothing was measured, or nothing is asked. Undecided is not a pass.
type Verdict uint8

// The verdicts.
const (
	Undecided Verdict = iota
	Within
	Below
	Above
)

var verdictNames = []string{"undecided", "within", "below", "above"}

// String is the verdict in lower case.
func (v Verdict) String() string { return word(verdictNames, int(v)) }

// MarshalText writes what String gives.
func (v Verdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// UnmarshalText reads what String gives.
func (v *Verdict) UnmarshalText(text []byte) error {
	return readWord("verdict", verdictNames, text, v)
}

// A Standing says what a measured part is fit for, judged against the band
// for new parts and the wear limit together. The zero value is CantTell.
type Standing uint8

// The standings, the better first after CantTell.
const (
	// CantTell: the bracket holds values of different standing, or no limit
	// was given. It is not a pass.
	CantTell Standing = iota
	// AsNew: within the band for new parts.
	AsNew
	// Usable: within the wear limit; outside the band for new parts, or not
	// known to be in it.
	Usable
	// OutsideNewBand: outside the band for new parts on a side that has no
	// wear limit. Whether the part may be used is for the maker's manual.
	OutsideNewBand
	// PastWearLimit: past the wear limit.
	PastWearLimit
)

var standingNames = []string{"can't tell", "as new", "usable", "outside the new-part band", "past the wear limit"}

// String is the standing in words.
func (s Standing) String() string { return word(standingNames, int(s)) }

// MarshalText writes what String gives.
func (s Standing) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Standing) UnmarshalText(text []byte) error {
	return readWord("standing", standingNames, text, s)
}

// A Mating says which mating part a limit is meant for: a worn groove is
// judged with a new ring by some manuals and with the used one by others.
type Mating uint8

// The mating parts a limit may be meant for.
const (
	MatingUnstated Mating = iota
	WithNewPart
	WithUsedPart
)

var matingNames = []string{"", "with a new mating part", "with the used mating part"}

// String says it in words; an unstated one is empty.
func (m Mating) String() string { return word(matingNames, int(m)) }

// MarshalText writes what String gives.
func (m Mating) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *Mating) UnmarshalText(text []byte) error {
	return readWord("mating part", matingNames, text, m)
}

// word names the value i; one that has no name is read as the zero value.
func word(names []string, i int) string {
	if i >= len(names) {
		i = 0
	}
	return names[i]
}

func readWord[T ~uint8](what string, names []string, text []byte, into *T) error {
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
		want.WriteString(` "` + n + `"`)
	}
	return parseError(what, string(text), 0, ErrSyntax, want.String(), nil)
}
