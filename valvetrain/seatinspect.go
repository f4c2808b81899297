package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SeatSurvey is what is measured on one seat. What wasn't measured is left at
// zero, and has no finding.
type SeatSurvey struct {
	Where  string                          // "exhaust 3"
	Seat   Seat                            // angle and edges; width and contact follow from them
	Widths []tolerance.Bracket             // along the cone, at several places round it, by scale or blue; may be empty
	Dial   []tolerance.Bracket             // readings round the seat, from a pilot in the guide
	Angle  tolerance.Interval[units.Angle] // as measured, from the plane square to the stem; zero where it wasn't
	Face   *ValveFace                      // of the valve that closes on it; nil where it wasn't measured
	Depth  tolerance.Bracket               // of the valve's head below the head's face; zero where it wasn't measured

	WidthLimits tolerance.Spec                // of the width along the cone
	RunLimits   tolerance.Spec                // of the run-out, as the manual dials it
	AngleLimits tolerance.SpecOf[units.Angle] // of the angle, from the plane square to the stem
	ClearLimits tolerance.Spec                // of the face left clear on either side, "min 1/64 in"
	DepthLimits tolerance.Spec                // of Depth
}

// A SeatReport is what a survey tells of a seat. A finding of zero value is of
// something that wasn't measured.
type SeatReport struct {
	Width   tolerance.Finding                `json:"width"`             // least and greatest
	RunOut  tolerance.Finding                `json:"runOut,omitzero"`   // from the guide
	Angle   tolerance.FindingOf[units.Angle] `json:"angle,omitzero"`    // from the plane square to the stem
	Contact *SeatContact                     `json:"contact,omitempty"` // on the valve's face; nil where that was not measured
	Clear   tolerance.Finding                `json:"clear,omitzero"`    // of the face, the lesser side
	Depth   tolerance.Finding                `json:"depth,omitzero"`    // of the valve's head
	Next    string                           `json:"next"`              // what to do
}

// Inspect judges width, run-out, angle, depth, and where the seat lies on the
// valve's face. It fails with an [InputError] where a size can't be.
func (s SeatSurvey) Inspect() (SeatReport, error) {
	width, err := s.Seat.Width()
	if err != nil {
		return SeatReport{}, err
	}
	if err := s.check(); err != nil {
		return SeatReport{}, err
	}
	widths := s.Widths
	if len(widths) == 0 {
		widths = []tolerance.Bracket{width}
	}
	var r SeatReport
	assess := func(into *tolerance.Finding, measure string, spec tolerance.Spec, readings ...tolerance.Bracket) {
		if err == nil {
			*into, err = inputAssess(measure, s.Where, spec, readings...)
		}
	}
	assess(&r.Width, "seat width", s.WidthLimits, widths...)
	if len(s.Dial) > 1 {
		assess(&r.RunOut, "run-out of the seat", s.RunLimits, SeatRunOut(s.Dial[0], s.Dial[1:]...))
	}
	if !s.Depth.IsZero() {
		assess(&r.Depth, "depth of the valve's head", s.DepthLimits, s.Depth)
	}
	if err == nil && !s.Angle.IsZero() {
		r.Angle, err = inputAssess("seat angle", s.Where, s.AngleLimits, s.Angle)
	}
	if err == nil && s.Face != nil {
		var c SeatContact
		if c, err = s.Seat.ContactOn(*s.Face); err == nil {
			r.Contact = &c
			assess(&r.Clear, "face left clear of the seat", s.ClearLimits, c.ClearOuter, c.ClearInner)
		}
	}
	if err != nil {
		return SeatReport{}, err
	}
	r.Next = s.next(r)
	return r, nil
}

func (s SeatSurvey) next(r SeatReport) string {
	bad := func(f tolerance.Finding) bool { return f.Standing >= tolerance.OutsideNewBand }
	switch {
	case bad(r.Depth):
		return "renew the seat insert or the valve, as the manual says: the valve has sunk past what cutting can put right"
	case bad(r.RunOut), r.Angle.Standing >= tolerance.OutsideNewBand:
		return "check the guide first, then cut the seat from it, and narrow it again"
	case bad(r.Clear) && r.Contact != nil:
		outer, _ := r.Contact.ClearOuter.Middle()
		if inner, _ := r.Contact.ClearInner.Middle(); outer < inner {
			return "bring the contact inward: narrow the seat from above"
		}
		return "bring the contact outward: narrow the seat from below"
	case bad(r.Width):
		return "bring the seat to its width by cutters from above and below"
	}
	for _, f := range []tolerance.Finding{r.Width, r.RunOut, r.Clear, r.Depth} {
		if f.Measure != "" && !f.Spec.IsZero() && f.Standing == tolerance.CantTell && f.Settle != "" {
			return f.Measure + ": " + f.Settle
		}
	}
	return "none by these readings; prove the contact with blue, all round"
}

func (s SeatSurvey) check() error {
	for _, w := range s.Widths {
		if err := inputBracket("seat width", w, 0); err != nil {
			return err
		}
	}
	for _, d := range s.Dial {
		if err := inputBracket("dial reading on the seat", d, -inputLargest); err != nil {
			return err
		}
	}
	if len(s.Dial) == 1 {
		return &InputError{"dial readings", "1", "two or more, round one turn"}
	}
	if !s.Depth.IsZero() {
		if err := inputBracket("depth of the valve's head", s.Depth, -inputLargest); err != nil {
			return err
		}
	}
	return inputAngle("seat angle", s.Angle)
}
