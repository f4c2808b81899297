package valvetrain

import (
	"math"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PistonValve is one valve and the piston that it may meet.
//
// Where a valve can meet a piston, turn the engine by hand with the plugs out,
// and stop where it stops: what doesn't turn is bent by force. Light springs in
// place of the valve's own keep the lift true with an adjuster that gives way.
type PistonValve struct {
	Where string // "exhaust, cylinder 1"
	// Curve is the lift at the valve, its angles from top dead centre at overlap,
	// above zero after it, over the whole approach. On the safe side clearance is
	// left out of it: heat may take it up.
	Curve LiftCurve
	// Drop is how far the valve can be pushed open at top dead centre before it
	// touches the piston, along its axis, with the gasket as it will be.
	Drop tolerance.Bracket
	// Inclination is the angle between the valve's axis and the bore's, from 0° to
	// 80°.
	Inclination tolerance.Interval[units.Angle]
	// FlatCrown says that the crown is flat and square to the bore where the valve
	// meets it. Without it a pocket parallel to the valve's head is taken, which
	// is the safe side of both.
	FlatCrown bool
	Throw     tolerance.Bracket // half the stroke
	Rod       tolerance.Bracket // between the centres of its eyes
	Offset    units.Length      // of the gudgeon pin's line from the crankshaft's axis, above zero to the thrust side

	LiftError   units.Length // of each lift in the curve, either way
	TimingError units.Angle  // of the curve's zero against dead centre, either way
	// Allowance is what the user takes off for what grows and stretches in a
	// running engine: rod, piston, a valve that floats. It is no measurement.
	Allowance units.Length
	Limits    tolerance.Spec // of the clearance; may be empty
}

// A PistonValveReport is what is left between a valve and its piston.
type PistonValveReport struct {
	// Least is the clearance where it is least, along the valve's axis, the
	// allowance taken off. Its lower end has everything on the dangerous side and
	// is rounded down; its upper end has everything on the other.
	Least tolerance.Bracket `json:"least"`
	Shut  bool              `json:"shut"` // least with the valve shut at dead centre; else at At
	At    units.Angle       `json:"at"`   // where the lower end is found, after top dead centre
	Fall  units.Length      `json:"fall"` // of the piston there
	Lift  units.Length      `json:"lift"` // of the valve there, its error added
	// PerDegreeMM is how many millimetres of clearance one degree of advance takes
	// there; below zero, what one degree of retard takes.
	PerDegreeMM float64           `json:"perDegree_mm"`
	Judgment    tolerance.Finding `json:"judgment"` // against the limits
	Next        string            `json:"next"`     // what to do
}

// Inspect finds the least clearance over the curve and judges it.
//
// The lower end takes the least drop, the greatest lift, the least throw and the
// longest rod, the inclination that counts the fall least, and the crank nearer
// to dead centre by the timing's error; then it is rounded down, toward the
// dangerous side. The search leaves out no dip between the table's points (see
// the package's tests: within 10⁻⁹ mm of a general optimiser). What a table
// misses of the cam between its points is not in the bracket.
//
// It fails with an [InputError] where a size can't be, the curve isn't the
// valve's, or its table doesn't hold the whole approach: it begins and ends with
// the valve shut, or 60° and more from dead centre on the far side.
func (p PistonValve) Inspect() (PistonValveReport, error) {
	if err := p.check(); err != nil {
		return PistonValveReport{}, err
	}
	low, high := p.cases()
	worst, best := low.least(), high.least()
	if p.atEnd(worst) {
		return PistonValveReport{}, p.endError()
	}
	allowance := p.Allowance
	lo, hi := liftLength(worst.clearance)-2*units.Picometre-allowance, liftLength(best.clearance)+2*units.Picometre-allowance
	r := PistonValveReport{Least: inputSpan(lo, max(lo, hi)), Shut: worst.segment < 0}
	if !r.Shut {
		s := p.Curve.cubic(worst.segment)
		r.At = p.Curve.angle(worst.segment, worst.t)
		r.Fall, r.Lift, r.PerDegreeMM = liftLength(worst.fall), liftLength(worst.lift), s.slope(worst.t)
	}
	var err error
	if r.Judgment, err = inputAssess("piston-to-valve clearance", p.Where, p.Limits, r.Least); err != nil {
		return PistonValveReport{}, err
	}
	r.Next = p.next(r)
	return r, nil
}

// wellAway is where the piston is so far down that no valve reaches it.
const wellAway = 60

// atEnd tells a table that doesn't hold the whole approach: it begins or ends
// with the valve open and dead centre still ahead, or comes nearest at its end.
func (p *PistonValve) atEnd(n near) bool {
	last := len(p.Curve.y) - 1
	open := p.LiftError.Float(units.InMillimetres)
	first, end := p.Curve.Span()
	away := func(a units.Angle) float64 { return math.Remainder(a.Float(units.InDegrees), 360) }
	if p.Curve.y[0] > open && away(first) > -wellAway || p.Curve.y[last] > open && away(end) < wellAway {
		return true
	}
	return n.segment == 0 && n.t == 0 || n.segment == last-1 && n.t == p.Curve.width(n.segment)
}

func (p *PistonValve) endError() error {
	first, last := p.Curve.Span()
	return &InputError{"lift table", first.String() + " to " + last.String(), "long enough: it begins and ends with the valve shut, or 60° and more from dead centre on the far side"}
}

// cases are the most dangerous and the safest that the brackets allow.
func (p *PistonValve) cases() (low, high approach) {
	mm := func(l units.Length) float64 { return l.Float(units.InMillimetres) }
	dropLo, dropHi := inputEnds(p.Drop)
	throwLo, throwHi := inputEnds(p.Throw)
	rodLo, rodHi := inputEnds(p.Rod)
	leanLo, leanHi := springEnds(p.Inclination)
	kLo, kHi := math.Cos(leanHi.Radians()), math.Cos(leanLo.Radians())
	if p.FlatCrown {
		kLo, kHi = 1/kHi, 1/kLo
	}
	slack := p.TimingError.Float(units.InDegrees)
	low = approach{&p.Curve, newFallCurve(mm(throwLo), mm(rodHi), mm(p.Offset)), mm(dropLo), kLo, mm(p.LiftError), slack, 0}
	high = approach{&p.Curve, newFallCurve(mm(throwHi), mm(rodLo), mm(p.Offset)), mm(dropHi), kHi, -mm(p.LiftError), -slack, 0}
	return low, high
}

func (p *PistonValve) check() error {
	if err := p.Curve.empty(); err != nil {
		return err
	}
	if p.Curve.side != AtValve {
		return &InputError{"lift curve", p.Curve.side.String(), "at the valve: carry it there through ratio and clearance"}
	}
	leanLo, leanLoEnd := p.Inclination.Lower()
	leanHi, leanHiEnd := p.Inclination.Upper()
	if !p.Inclination.InRange() || leanLoEnd == tolerance.Absent || leanHiEnd == tolerance.Absent || leanLo < 0 || leanHi > 80*units.Degree {
		return &InputError{"valve's angle to the bore", p.Inclination.String(), "measured, from 0° to 80°"}
	}
	if p.TimingError < 0 || p.TimingError > 45*units.Degree {
		return &InputError{"error of timing", p.TimingError.String(), "from 0° to 45°"}
	}
	err := firstError(
		func() error { return inputBracket("drop at dead centre", p.Drop, 0) },
		func() error { return inputBracket("throw", p.Throw, units.Picometre) },
		func() error { return inputBracket("rod", p.Rod, units.Picometre) },
		func() error { return inputAllowance("error of the lifts", p.LiftError) },
		func() error { return inputAllowance("allowance", p.Allowance) },
	)
	if err != nil {
		return err
	}
	_, throw := inputEnds(p.Throw)
	rod, _ := inputEnds(p.Rod)
	return sliderCheck(throw, rod, p.Offset)
}

func (p *PistonValve) next(r PistonValveReport) string {
	lo, _ := inputEnds(r.Least)
	switch {
	case lo <= 0:
		return "do not turn this engine by its starter: valve and piston may touch. A deeper pocket, less lift, other timing or a thicker gasket, each as the maker allows"
	case camBad(r.Judgment):
		return "deepen the pocket along the valve's axis, or change timing or lift, as the maker allows, and measure again"
	case p.Limits.IsZero():
		return "look up the clearance that the maker asks for; inlet and exhaust differ"
	}
	return camNext("none by these limits; measure again after any change of gasket, pocket, lift or timing", r.Judgment)
}

// A CamMove is a way to turn a camshaft. The zero value is to advance it.
type CamMove uint8

// The ways.
const (
	AdvanceCam CamMove = iota // ahead: every event earlier
	RetardCam                 // back: every event later
)

var camMoveNames = []string{"advance", "retard"}

// String is the move in one word.
func (m CamMove) String() string { return words.Of(camMoveNames, m) }

// MarshalText writes what String gives.
func (m CamMove) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *CamMove) UnmarshalText(text []byte) error {
	if want, ok := words.Read(camMoveNames, text, m); !ok {
		return &InputError{"move of the camshaft", inputText(string(text)), want}
	}
	return nil
}
