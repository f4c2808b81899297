package cylinder

// A HatchAngle says which of the four angles a cross-hatch is given by, as
// [CrossHatch] has them. The zero value is not stated, and refused.
type HatchAngle uint8

// The angles of a cross-hatch.
const (
	HatchNotStated HatchAngle = iota
	HatchIncluded             // between the marks about the way round
	HatchAboutAxis            // between the marks about the axis
	HatchHalf                 // from a mark to the way round
	HatchFromAxis             // from a mark to the axis
)

var hatchNames = []string{"not stated", "included", "about the axis", "half", "from the axis"}

// String is the angle in words.
func (h HatchAngle) String() string { return wordOf(hatchNames, h) }

// MarshalText writes what String gives.
func (h HatchAngle) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads what String gives.
func (h *HatchAngle) UnmarshalText(text []byte) error {
	return readWord("cross-hatch", hatchNames, text, h)
}

var stepRuleNames = []string{"worst places", "means"}

// String is the rule in words.
func (r StepRule) String() string { return wordOf(stepRuleNames, r) }

// MarshalText writes what String gives.
func (r StepRule) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *StepRule) UnmarshalText(text []byte) error {
	return readWord("step rule", stepRuleNames, text, r)
}
