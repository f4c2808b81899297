package crank

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RodCheck is the alignment of one rod, read in a fixture against a master or
// a rod of known length, and its side clearance. What wasn't read stays zero.
//
// A rod with a cracked (fracture split) cap isn't straightened, its joint isn't
// touched, and its cap fits no other rod: it is replaced. Never file a cap.
type RodCheck struct {
	Where       string              // "rod 3"
	CrackedCap  bool                // the cap was cracked off, not sawn
	Right, Left tolerance.Bracket   // the dials on the pin, above zero for longer; both or neither
	Span        units.Length        // between the dials' points; 0 where only the reading counts
	Twist       tolerance.Bracket   // as read, by blade or dial
	TwistSpan   units.Length        // that it was read over
	Master      tolerance.Bracket   // between centres, of the master
	Stroke      units.Length        // of the engine, against a slip in the length
	Crankpin    tolerance.Bracket   // between the webs
	Widths      []tolerance.Bracket // of the rods that share the crankpin
	Side        []tolerance.Bracket // the side clearance by blades, instead of widths
	Limits      RodLimits           // zero where none are given
}

// RodLimits are what a manual allows of a rod. Bend and Twist are of the
// readings over the fixture's own span; BendPer and TwistPer over Per.
type RodLimits struct {
	Length   tolerance.Spec // longer than the master above zero: −.002 to 0 in
	Bend     tolerance.Spec
	Twist    tolerance.Spec
	Per      units.Length   // the span that BendPer and TwistPer are over; 0: 100 mm
	BendPer  tolerance.Spec // over Per
	TwistPer tolerance.Spec // over Per
	Centres  tolerance.Spec // between centres
	Side     tolerance.Spec // of the side clearance
}

// per is the span of the limits.
func (l RodLimits) per() units.Length {
	if l.Per == 0 {
		return 100 * units.Millimetre
	}
	return l.Per
}

// A RodReport is what follows for a rod. Findings of what wasn't read are left
// out; those of a length against the master are below zero for a shorter rod.
type RodReport struct {
	Findings []tolerance.Finding `json:"findings"` // length, bend, twist, side clearance, as far as read
	Worst    tolerance.Standing  `json:"worst"`    // of those with limits
	WorstAt  string              `json:"worstAt"`  // the measure
	Next     string              `json:"next"`     // what to do
}

// Assess judges a rod. It fails with an [InputError] where nothing was read,
// where one dial of the two is missing, where a span is missing that a limit
// needs, and where the rod is shorter than half the stroke.
func (c RodCheck) Assess() (RodReport, error) {
	var r RodReport
	if err := c.check(); err != nil {
		return r, err
	}
	r.Findings = make([]tolerance.Finding, 0, rodMeasures)
	var failed error
	err := c.measures(func(m rodMeasure, spec tolerance.Spec, least, greatest tolerance.Bracket) {
		measure := m.name(c.Limits.per())
		f, err := tolerance.Assess(measure, c.Where, spec, least, greatest)
		if err != nil && failed == nil {
			failed = err
		}
		r.Findings = append(r.Findings, f)
		if !spec.IsZero() && (r.WorstAt == "" || runOutRank(f.Standing) > runOutRank(r.Worst)) {
			r.Worst, r.WorstAt = f.Standing, measure
		}
	})
	if err != nil {
		return RodReport{}, err
	}
	if failed != nil {
		return RodReport{}, failed
	}
	r.Next = c.next(r)
	return r, nil
}

// A rodMeasure is one of the measures of a rod.
type rodMeasure uint8

const (
	rodLength rodMeasure = iota
	rodCentres
	rodBend
	rodBendPer
	rodTwist
	rodTwistPer
	rodSide

	rodMeasures = iota
)

// name is the measure in words; per is the span that some are over.
func (m rodMeasure) name(per units.Length) string {
	switch m {
	case rodLength:
		return "length over the master"
	case rodCentres:
		return "distance between centres"
	case rodBend:
		return "bend"
	case rodBendPer:
		return "bend over " + per.String()
	case rodTwist:
		return "twist"
	case rodTwistPer:
		return "twist over " + per.String()
	}
	return "side clearance"
}

// measures works out all that was read, in order.
func (c *RodCheck) measures(visit func(m rodMeasure, spec tolerance.Spec, least, greatest tolerance.Bracket)) error {
	one := func(m rodMeasure, spec tolerance.Spec, b tolerance.Bracket) { visit(m, spec, b, b) }
	exactly := tolerance.Exactly[units.Length]
	if !c.Right.IsZero() {
		length, bend := RodLength(c.Right, c.Left), RodBend(c.Right, c.Left)
		one(rodLength, c.Limits.Length, length)
		if !c.Master.IsZero() {
			centres := c.Master.Add(length)
			if lo, _ := centres.Lower(); lo <= c.Stroke/2 {
				return &InputError{c.Where + ", distance between centres", centres.String(), "above half the stroke of " + c.Stroke.String()}
			}
			one(rodCentres, c.Limits.Centres, centres)
		}
		one(rodBend, c.Limits.Bend, bend)
		if c.Span > 0 {
			one(rodBendPer, c.Limits.BendPer, RodPer(bend, exactly(c.Span), exactly(c.Limits.per())))
		}
	}
	if !c.Twist.IsZero() {
		one(rodTwist, c.Limits.Twist, c.Twist)
		if c.TwistSpan > 0 {
			one(rodTwistPer, c.Limits.TwistPer, RodPer(c.Twist, exactly(c.TwistSpan), exactly(c.Limits.per())))
		}
	}
	switch {
	case len(c.Side) > 0:
		least, greatest := tolerance.Extremes(c.Side...)
		visit(rodSide, c.Limits.Side, least, greatest)
	case len(c.Widths) > 0:
		one(rodSide, c.Limits.Side, RodSideClearance(c.Crankpin, c.Widths[0], c.Widths[1:]...))
	}
	return nil
}

func (c RodCheck) next(r RodReport) string {
	switch {
	case r.WorstAt == "":
		return "no limits were given: compare with the engine maker's manual"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand) && r.WorstAt == "side clearance":
		return "side clearance is out of limits: measure the crankpin's width and the rod's, and replace by the engine maker's manual"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand) && c.CrackedCap:
		return r.WorstAt + " is out of limits, and a rod with a cracked cap isn't straightened or resized: replace it with its cap"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand):
		return r.WorstAt + " is out of limits: replace the rod, or straighten it only where the engine maker's manual allows, and test it for cracks"
	case r.Worst == tolerance.CantTell:
		return r.WorstAt + " can't be told yet, which is not a pass: read it more finely"
	}
	return within(r.Worst) + "; test for cracks"
}

func (c *RodCheck) check() error {
	if c.Right.IsZero() && c.Twist.IsZero() && len(c.Side) == 0 && len(c.Widths) == 0 {
		return &InputError{c.Where + ", readings", "none", "of length and bend, of twist, or of side clearance"}
	}
	if c.Right.IsZero() != c.Left.IsZero() {
		return &InputError{c.Where + ", dials", "one of the two", "both, right and left"}
	}
	if err := inputOf(c.Where, dialBracket("right dial", c.Right)); err != nil {
		return err
	}
	if err := inputOf(c.Where, dialBracket("left dial", c.Left)); err != nil {
		return err
	}
	if !c.Twist.IsZero() {
		if err := inputOf(c.Where, floatBracket("twist", c.Twist)); err != nil {
			return err
		}
	}
	for _, x := range [...]struct {
		name string
		l    units.Length
		need bool
	}{
		{"span of the dials", c.Span, !c.Limits.BendPer.IsZero() && !c.Right.IsZero()},
		{"span of the twist", c.TwistSpan, !c.Limits.TwistPer.IsZero() && !c.Twist.IsZero()},
		{"span of the limits", c.Limits.Per, false},
		{"stroke", c.Stroke, false},
	} {
		if x.l < 0 || x.l > farthest || x.need && x.l == 0 {
			return &InputError{c.Where + ", " + x.name, x.l.String(), "given, above 0 mm and at most 10 m"}
		}
	}
	if !c.Master.IsZero() {
		if err := inputOf(c.Where, thickBracket("master between centres", c.Master)); err != nil {
			return err
		}
	}
	return c.checkSide()
}

func (c *RodCheck) checkSide() error {
	for _, s := range c.Side {
		if err := inputOf(c.Where, floatBracket("side clearance", s)); err != nil {
			return err
		}
	}
	if len(c.Widths) == 0 {
		return nil
	}
	if err := inputOf(c.Where, thickBracket("crankpin between the webs", c.Crankpin)); err != nil {
		return err
	}
	if len(c.Widths) > 4 {
		return &InputError{c.Where + ", rods on the crankpin", fmt.Sprint(len(c.Widths)), "from 1 to 4"}
	}
	for _, w := range c.Widths {
		if err := inputOf(c.Where, thickBracket("width of a rod", w)); err != nil {
			return err
		}
	}
	side := RodSideClearance(c.Crankpin, c.Widths[0], c.Widths[1:]...)
	if hi, _ := side.Upper(); hi < 0 {
		return &InputError{c.Where + ", side clearance", side.String(), "a clearance: the rods are wider than their crankpin, so that they pinch"}
	}
	return nil
}

// dialBracket refuses what no dial shows.
func dialBracket(field string, b tolerance.Bracket) error {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	if !b.IsZero() && (!b.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < -farthest || hi > farthest) {
		return &InputError{field, b.String(), "read, at most 10 m either way"}
	}
	return nil
}
