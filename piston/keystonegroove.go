package piston

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A KeystoneGroove is a keystone groove as measured over gauge pins.
type KeystoneGroove struct {
	Where         string            `json:"where"`               // "piston 2, top groove"
	OverPins      tolerance.Bracket `json:"overPins"`            // size over the two pins
	Pin           tolerance.Bracket `json:"pin"`                 // diameter of both pins
	GaugeDiameter units.Length      `json:"gaugeDiameter"`       // at which the width is given
	Included      units.Angle       `json:"included"`            // angle between the flanks, such as 15°; not half of it
	AngleError    units.Angle       `json:"angleError,omitzero"` // of the included angle, ±
	Land          units.Length      `json:"land,omitzero"`       // diameter of the land; zero where not measured
	Root          units.Length      `json:"root,omitzero"`       // diameter of the groove's root; zero where not measured
	Limits        tolerance.Spec    `json:"limits"`              // of the width at the gauge diameter
}

// sharpest keeps the tangent in bounds: no ring groove is this steep.
const sharpest = 90 * units.Degree

// angles are half the included angle at its least and its greatest, in radians.
func (g *KeystoneGroove) angles() (least, greatest float64, err error) {
	lo, hi := g.Included.Sub(g.AngleError), g.Included.Add(g.AngleError)
	switch {
	case g.AngleError < 0 || !g.AngleError.InRange():
		return 0, 0, &InputError{"error of the included angle", g.AngleError.String(), "0° or more"}
	case lo <= 0 || hi > sharpest || !hi.InRange():
		return 0, 0, &InputError{"included angle", g.Included.String() + " ±" + g.AngleError.String(), "above 0° and at most 90°, such as 15°"}
	}
	return lo.Radians() / 2, hi.Radians() / 2, nil
}

// check refuses what can't be and gives the ends of pin and size over pins.
func (g *KeystoneGroove) check() (pin, over [2]units.Length, err error) {
	if pin, err = ringBore("gauge pin", g.Pin); err != nil {
		return pin, over, err
	}
	if over, err = ringBore("size over pins", g.OverPins); err != nil {
		return pin, over, err
	}
	switch d := g.GaugeDiameter; {
	case d <= 0 || d > ringMost:
		return pin, over, &InputError{"gauge diameter", d.String(), "above 0 mm and at most 10 m"}
	case (d + pin[0] - over[0]).Abs() > d/4:
		return pin, over, &InputError{"size over pins", g.OverPins.String(), "near gauge diameter + pin, " + (d + pin[0]).String()}
	case g.Land != 0 && over[0] <= g.Land:
		return pin, over, &InputError{"size over pins", g.OverPins.String(), "above the land's diameter, " + g.Land.String() + ": the pins must stand out"}
	}
	return pin, over, nil
}

// Width holds the groove's axial width at its gauge diameter for all that
// pins, size and angle leave open, to 2 pm outward. It grows with the pin and
// falls with the size over the pins; with the angle it grows where the pins
// touch inside the gauge diameter and falls where they touch outside, so both
// ends of the angle count, and where the pins touch right at the gauge
// diameter in between, that too.
//
// It fails with an [InputError] where a size can't be, where pins, size and
// gauge diameter don't belong together, and where the pins would touch the
// groove's edge or lie on its root.
func (g *KeystoneGroove) Width() (tolerance.Bracket, error) {
	pin, over, err := g.check()
	if err != nil {
		return tolerance.Bracket{}, err
	}
	least, greatest, err := g.angles()
	if err != nil {
		return tolerance.Bracket{}, err
	}
	if err := g.touch(pin, over, least, greatest); err != nil {
		return tolerance.Bracket{}, err
	}
	type f = tolerance.Float
	dg := millimetres(g.GaugeDiameter)
	at := func(m, d units.Length, angle float64) float64 {
		return float64(KeystoneWidth(millimetres(m), millimetres(d), dg, f(angle)))
	}
	lo := min(at(over[1], pin[0], least), at(over[1], pin[0], greatest))
	hi := max(at(over[0], pin[1], least), at(over[0], pin[1], greatest))
	// The least over the angle is where sin β = (M − D_g − d)/d.
	if s := float64((millimetres(over[1]) - dg - millimetres(pin[0])) / millimetres(pin[0])); s > math.Sin(least) && s < math.Sin(greatest) {
		lo = min(lo, at(over[1], pin[0], math.Asin(s)))
	}
	w, _ := tolerance.NewInterval(picometres(math.Floor(1e9*lo)-1), tolerance.Closed, picometres(math.Ceil(1e9*hi)+1), tolerance.Closed)
	if l, _ := w.Lower(); l <= 0 {
		return tolerance.Bracket{}, &InputError{"groove width", w.String(), "above 0 mm: pin, size over pins and angle don't belong together"}
	}
	return w, nil
}

// touch refuses pins that don't touch both flanks between land and root.
func (g *KeystoneGroove) touch(pin, over [2]units.Length, least, greatest float64) error {
	type f = tolerance.Float
	outermost := KeystoneContact(millimetres(over[1]), millimetres(pin[0]), f(least))
	root := over[0] - 2*pin[1] // the diameter that the pins reach down to
	switch {
	case g.Land != 0 && outermost > millimetres(g.Land):
		return &InputError{"gauge pin", g.Pin.String(), "thin enough to touch the flanks and not the groove's edge"}
	case g.Root != 0 && root <= g.Root:
		return &InputError{"gauge pin", g.Pin.String(), "thick enough to lie on the flanks and not on the root, " + g.Root.String()}
	}
	return nil
}

// OverPinsLimits are the limits of the size over the pins that stand for
// limits of the width, with the pins and the angle taken at the middle of what
// is known: the greatest width is the least size. Rounded inward, to 2 pm.
func (g *KeystoneGroove) OverPinsLimits(width tolerance.Band) (tolerance.Band, error) {
	pin, ok := g.Pin.Middle()
	if _, err := ringBore("gauge pin", g.Pin); err != nil || !ok {
		return tolerance.Band{}, &InputError{"gauge pin", g.Pin.String(), "measured, and above 0 mm"}
	}
	if _, _, err := g.angles(); err != nil {
		return tolerance.Band{}, err
	}
	if g.GaugeDiameter <= 0 || g.GaugeDiameter > ringMost {
		return tolerance.Band{}, &InputError{"gauge diameter", g.GaugeDiameter.String(), "above 0 mm and at most 10 m"}
	}
	type f = tolerance.Float
	over := func(w units.Length) float64 {
		return 1e9 * float64(KeystoneOverPins(millimetres(w), millimetres(pin), millimetres(g.GaugeDiameter), f(g.Included.Radians()/2)))
	}
	lo, loEnd := width.Lower()
	hi, hiEnd := width.Upper()
	if loEnd != tolerance.Absent && lo.Abs() > ringMost || hiEnd != tolerance.Absent && hi.Abs() > ringMost {
		return tolerance.Band{}, &InputError{"limits of the width", width.String(), "at most 10 m"}
	}
	var least, most units.Length
	if hiEnd != tolerance.Absent {
		least = picometres(math.Ceil(over(hi)) + 1)
	}
	if loEnd != tolerance.Absent {
		most = picometres(math.Floor(over(lo)) - 1)
	}
	return tolerance.NewBand(least, hiEnd, most, loEnd)
}

// Assess judges the groove's width against its limits.
func (g *KeystoneGroove) Assess() (tolerance.Finding, error) {
	w, err := g.Width()
	if err != nil {
		return tolerance.Finding{}, err
	}
	return tolerance.Assess("keystone groove width", g.Where, g.Limits, w)
}
