package piston

import (
	"strconv"
	"strings"
)

// The words for each kind, which are its text form too.
var (
	ringNames    = []string{"compression ring", "oil ring"}
	outcomeNames = []string{"can't tell", "back in band", "still too large", "too tight", "too tight in one place, too large in another"}
	remedyNames  = []string{
		"measure again",
		"re-use",
		"fit a new ring",
		"re-cut the groove with a spacer, or renew the piston",
		"clean the groove and check that the ring is the right one",
		"see the engine maker's manual",
	}
)

// word is name i; what has none counts as the first.
func word(names []string, i uint8) string {
	if int(i) >= len(names) {
		i = 0
	}
	return names[i]
}

// readWord finds a name.
func readWord[K ~uint8](field string, names []string, text []byte, k *K) error {
	for i, name := range names {
		if name == string(text) {
			*k = K(i)
			return nil
		}
	}
	return &InputError{field, clip(text), "one of \"" + strings.Join(names, "\", \"") + "\""}
}

// clip quotes at most 64 bytes of a text.
func clip(text []byte) string {
	if len(text) > 64 {
		return strconv.Quote(string(text[:64])) + "…"
	}
	return strconv.Quote(string(text))
}

// String is the kind in words.
func (k RingKind) String() string { return word(ringNames, uint8(k)) }

// MarshalText writes what String gives.
func (k RingKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *RingKind) UnmarshalText(text []byte) error { return readWord("ring", ringNames, text, k) }

// String is the outcome in words.
func (o Outcome) String() string { return word(outcomeNames, uint8(o)) }

// MarshalText writes what String gives.
func (o Outcome) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// UnmarshalText reads what String gives.
func (o *Outcome) UnmarshalText(text []byte) error { return readWord("outcome", outcomeNames, text, o) }

// String is the remedy in words.
func (r Remedy) String() string { return word(remedyNames, uint8(r)) }

// MarshalText writes what String gives.
func (r Remedy) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *Remedy) UnmarshalText(text []byte) error { return readWord("remedy", remedyNames, text, r) }
