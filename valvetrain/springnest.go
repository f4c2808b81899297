package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SpringNest is an outer spring with an inner one, each at its own height.
type SpringNest struct {
	Where string            // "exhaust 3"
	Outer Spring            // with its own installed height and lift
	Inner Spring            // its installed height and lift are found, and left at zero
	Step  tolerance.Bracket // by how much lower the inner spring stands: of its seat and the retainer together; may be below zero

	SeatLimits tolerance.SpecOf[units.Force] // of both together, valve closed
	OpenLimits tolerance.SpecOf[units.Force] // of both together, at full lift
}

// A SpringNestReport is what the two springs do together.
type SpringNestReport struct {
	Outer    SpringReport                     `json:"outer"`             // by itself
	Inner    SpringReport                     `json:"inner"`             // by itself, at its own height
	SeatLoad tolerance.FindingOf[units.Force] `json:"seatLoad,omitzero"` // of both
	OpenLoad tolerance.FindingOf[units.Force] `json:"openLoad,omitzero"` // of both
}

// Inspect judges both springs, the inner one at the outer's height less the
// step, and their loads together. The lift is the same for both. It fails as
// [Spring.Inspect] does.
func (n SpringNest) Inspect() (SpringNestReport, error) {
	step := n.Step
	if step.IsZero() {
		step = tolerance.Exactly(units.Length(0))
	}
	if err := firstError(func() error { return inputBracket("installed height", n.Outer.Installed, units.Picometre) },
		func() error { return inputBracket("step of the inner spring", step, -inputLargest) }); err != nil {
		return SpringNestReport{}, err
	}
	if !n.Inner.Installed.IsZero() || !n.Inner.Lift.IsZero() {
		return SpringNestReport{}, &InputError{"inner spring's height", n.Inner.Installed.String(), "left out: it follows from the outer's and the step"}
	}
	inner := n.Inner
	inner.Installed, inner.Lift = InnerHeight(n.Outer.Installed, step), n.Outer.Lift
	var r SpringNestReport
	var err error
	if r.Outer, err = n.Outer.Inspect(); err != nil {
		return SpringNestReport{}, err
	}
	if r.Inner, err = inner.Inspect(); err != nil {
		return SpringNestReport{}, err
	}
	both := func(a, b tolerance.FindingOf[units.Force], measure string, spec tolerance.SpecOf[units.Force]) (tolerance.FindingOf[units.Force], error) {
		if a.Measure == "" || b.Measure == "" {
			return tolerance.FindingOf[units.Force]{}, nil
		}
		return inputAssess(measure, n.Where, spec, a.Least.Add(b.Least))
	}
	if r.SeatLoad, err = both(r.Outer.SeatLoad, r.Inner.SeatLoad, "seat load of both springs", n.SeatLimits); err != nil {
		return SpringNestReport{}, err
	}
	if r.OpenLoad, err = both(r.Outer.OpenLoad, r.Inner.OpenLoad, "load of both springs at full lift", n.OpenLimits); err != nil {
		return SpringNestReport{}, err
	}
	return r, nil
}
