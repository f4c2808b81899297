package valvetrain

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A GearPair is the backlash of a pair of timing gears, by a dial gauge, or by a
// blade between the teeth.
type GearPair struct {
	Where string // "crankshaft gear to idler"
	// Readings are the dial's whole movement at several places round the gear, one
	// at least.
	Readings    []tolerance.Bracket
	PitchRadius tolerance.Bracket // of the gear that is rocked
	DialRadius  tolerance.Bracket // at which the dial's plunger stands; zero for the pitch radius
	// Askew is the plunger's angle to the movement, 0 for along it, below 60°.
	Askew  units.Angle
	Limits tolerance.Spec // the manual's, of the backlash at the pitch circle; may be empty
}

// A GearReport is a pair's backlash.
type GearReport struct {
	Backlash tolerance.Finding `json:"backlash"` // at the pitch circle, least and greatest place
	Spread   tolerance.Bracket `json:"spread"`   // greatest place less least: what run-out of the gears makes of it
	// Angle is what the gear can be rocked by, in degrees, at the least and the
	// greatest place.
	Angle [2]float64 `json:"angle"`
	Next  string     `json:"next"` // what to do
}

// Inspect carries the readings to the pitch circle and judges them. It fails with
// an [InputError] where a reading can't be.
func (g GearPair) Inspect() (GearReport, error) {
	if err := g.check(); err != nil {
		return GearReport{}, err
	}
	at := make([]tolerance.Bracket, len(g.Readings))
	for i, r := range g.Readings {
		at[i] = g.carry(r)
	}
	var out GearReport
	var err error
	if out.Backlash, err = inputAssess("backlash at the pitch circle", g.Where, g.Limits, at...); err != nil {
		return GearReport{}, err
	}
	out.Spread = at[0].Spread(at[1:]...)
	lo, _ := out.Backlash.Least.Lower()
	hi, _ := out.Backlash.Greatest.Upper()
	rLo, rHi := inputEnds(g.PitchRadius)
	angle := func(j, r units.Length) float64 {
		return float64(GearAngle(tolerance.Float(j.Float(units.InMillimetres)), tolerance.Float(r.Float(units.InMillimetres))))
	}
	out.Angle = [2]float64{angle(lo, rHi), angle(hi, rLo)}
	switch {
	case lo <= 0:
		out.Next = "one place may have no backlash at all: gears that bind howl and break; look for dirt, burrs, a bent shaft or the wrong gear"
	case out.Backlash.Standing >= tolerance.OutsideNewBand:
		out.Next = "measure gears, bushes and shafts apart, to see which is worn, before any is renewed"
	case out.Backlash.Standing == tolerance.CantTell && !g.Limits.IsZero():
		out.Next = out.Backlash.Settle
	case g.Limits.IsZero():
		out.Next = "look up the limits in the engine maker's manual; none are built in here"
	default:
		out.Next = "none by this test"
	}
	return out, nil
}

// carry brings one reading to the pitch circle.
func (g GearPair) carry(r tolerance.Bracket) tolerance.Bracket {
	if g.Askew != 0 {
		// To the nanometre in a metre either way, which float64 keeps.
		cos, _ := units.Nearest(math.Cos(g.Askew.Radians()), units.InMetres)
		r = r.MulDiv(tolerance.Exactly(units.Metre), inputSpan(cos-units.Nanometre, cos+units.Nanometre))
	}
	if g.DialRadius.IsZero() {
		return r
	}
	return GearBacklash(r, g.PitchRadius, g.DialRadius)
}

func (g GearPair) check() error {
	if len(g.Readings) < 1 || len(g.Readings) > 1000 {
		return &InputError{"readings of the dial", fmt.Sprint(len(g.Readings)), "from 1 to 1000"}
	}
	for i, r := range g.Readings {
		if err := inputBracket(fmt.Sprint("reading ", i+1, " of the dial"), r, 0); err != nil {
			return err
		}
	}
	if err := inputBracket("pitch radius", g.PitchRadius, units.Millimetre); err != nil {
		return err
	}
	if !g.DialRadius.IsZero() {
		if err := inputBracket("radius of the dial", g.DialRadius, units.Millimetre); err != nil {
			return err
		}
	}
	if g.Askew.Abs() >= 60*units.Degree {
		return &InputError{"plunger's angle to the movement", g.Askew.String(), "below 60°; set it along the movement"}
	}
	return nil
}
