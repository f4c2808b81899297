package feeler

import "strconv"

// A Feel says how a blade went into the gap. The zero value is Untried, which
// bounds nothing.
type Feel uint8

// The feels of a blade. Free and Drag count as entered: the gap is at least
// the blade. Forced and Refused don't: the gap is less. A blade that goes in
// by force only springs or scores the parts; [ForcedTrials] reports it.
const (
	Untried Feel = iota
	Free         // slides without touching both faces
	Drag         // slides with a light, even drag
	Forced       // goes in by force only
	Refused      // does not go in
)

var feelNames = [...]string{"not tried", "free", "drag", "forced", "refused"}

// Entered reports whether the blade went in: free or with drag.
func (f Feel) Entered() bool { return f == Free || f == Drag }

// String is the feel in words.
func (f Feel) String() string {
	if int(f) >= len(feelNames) {
		return "feel " + strconv.Itoa(int(f))
	}
	return feelNames[f]
}

// MarshalText writes what String gives. An unknown feel is an [InputError].
func (f Feel) MarshalText() ([]byte, error) {
	if int(f) >= len(feelNames) {
		return nil, feelError(f.String())
	}
	return []byte(feelNames[f]), nil
}

// UnmarshalText reads what String gives.
func (f *Feel) UnmarshalText(text []byte) error {
	v, err := ParseFeel(string(text))
	if err == nil {
		*f = v
	}
	return err
}

// ParseFeel reads "free", "drag", "forced", "refused" or "not tried". Anything
// else is an [InputError].
func ParseFeel(s string) (Feel, error) {
	for i, name := range feelNames {
		if name == s {
			return Feel(i), nil
		}
	}
	return 0, feelError(s)
}

func feelError(s string) error {
	return inputError("feel", "", s, ErrFeel, `one of "free", "drag", "forced", "refused", "not tried"`, nil)
}
