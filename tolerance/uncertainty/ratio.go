package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// TestUncertaintyRatio is the span of a band over twice the expanded
// uncertainty (coverage factor 2) of what it is judged with: the span over
// 4·u (ANSI/NCSL Z540.3). By custom 4 and more is good. A one-sided band has
// no span and an exact instrument no ratio: both give +∞.
//
// A band that asks nothing is an [ErrNoLimit], a negative u an
// [ErrUncertainty].
func TestUncertaintyRatio[Q units.Quantity](b tolerance.BandOf[Q], u Q) (float64, error) {
	if err := checkBand("test uncertainty ratio", b, u); err != nil {
		return 0, err
	}
	span, ok := b.Interval().Width()
	if !ok || u == 0 {
		return math.Inf(1), nil
	}
	return float64(span) / (4 * float64(u)), nil
}

// A GuardMethod makes a guard band from the test uncertainty ratio alone,
// where nothing is known of the process.
type GuardMethod uint8

// The methods, each with its acceptance limits as a part of the tolerance
// limits for a ratio R. A part is never more than 1 nor less than 0.
const (
	// GuardRootSumSquare is √(1 − 1/R²).
	GuardRootSumSquare GuardMethod = iota
	// GuardByUncertainty is 1 − 1/R: the whole expanded uncertainty.
	GuardByUncertainty
	// GuardPastFour is 1.25 − 1/R: none where the ratio is 4 or more.
	GuardPastFour
	// GuardManagedRisk is 1 − (1.04 − e^(0.38·ln R − 0.54))/R: a false
	// acceptance of at most 2 % whatever the process (Dobbert, 2008).
	GuardManagedRisk
)

var guardMethodNames = []string{"root sum square", "whole uncertainty", "none past four", "managed risk"}

// String is the method in words.
func (m GuardMethod) String() string {
	if int(m) >= len(guardMethodNames) {
		m = GuardRootSumSquare
	}
	return guardMethodNames[m]
}

// MarshalText writes what String gives.
func (m GuardMethod) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *GuardMethod) UnmarshalText(text []byte) error {
	return readWord("guard method", guardMethodNames, text, m)
}

// Factor is the acceptance limits as a part of the tolerance limits, 0 to 1,
// for a test uncertainty ratio. A ratio that isn't above zero is an
// [ErrFactor]; +∞ gives 1.
func (m GuardMethod) Factor(ratio float64) (float64, error) {
	if !(ratio > 0) {
		return 0, refuse("guard factor", "", "test uncertainty ratio", ratio, ErrFactor, "above 0")
	}
	var f float64
	switch m {
	case GuardByUncertainty:
		f = 1 - 1/ratio
	case GuardPastFour:
		f = 1.25 - 1/ratio
	case GuardManagedRisk:
		f = 1 - (1.04-math.Exp(0.38*math.Log(ratio)-0.54))/ratio
		if math.IsInf(ratio, 1) {
			f = 1
		}
	default:
		f = math.Sqrt(max(0, 1-1/(ratio*ratio)))
	}
	return max(0, min(1, f)), nil
}
