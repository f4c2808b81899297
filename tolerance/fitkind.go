package tolerance

// A FitKind says whether a shaft goes in its hole freely. The zero value is
// UnknownFit.
type FitKind uint8

// The kinds of fit, by ISO 286-1:2010, 3.3.
const (
	// UnknownFit: a missing limit, or readings on both sides of zero, leave
	// it open.
	UnknownFit FitKind = iota
	// ClearanceFit: there is always clearance, or in the extreme case none:
	// the least hole is as large as the greatest shaft, or larger.
	ClearanceFit
	// TransitionFit: of what the bands allow some pairs have clearance and
	// some interference. Two parts that exist have one or the other, so a fit
	// of measured sizes is never of this kind.
	TransitionFit
	// InterferenceFit: there is always interference, or in the extreme case
	// none: the greatest hole is as small as the least shaft, or smaller.
	InterferenceFit
)

var fitKindNames = []string{"can't tell", "clearance", "transition", "interference"}

// String is the kind in lower case.
func (k FitKind) String() string { return word(fitKindNames, int(k)) }

// MarshalText writes what String gives.
func (k FitKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *FitKind) UnmarshalText(text []byte) error {
	return readWord("kind of fit", fitKindNames, text, k)
}

// Kind is the kind of fit. Where hole and shaft can be of one size alone,
// the same, both extreme cases meet; it counts as a clearance fit.
func (f FitOf[Q]) Kind() FitKind {
	c := f.Clearance()
	switch {
	case !c.InRange():
		return UnknownFit
	case c.loEnd != Absent && c.lo >= 0:
		return ClearanceFit
	case c.hiEnd != Absent && c.hi <= 0:
		return InterferenceFit
	case f.Measured || c.loEnd == Absent || c.hiEnd == Absent:
		return UnknownFit
	}
	return TransitionFit
}
