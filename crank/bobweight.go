package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A BobweightMass is what is known of a mass on a crankpin.
type BobweightMass = tolerance.Interval[units.Mass]

// BobweightOf is the mass that stands in for rods and pistons on one crankpin
// while the crankshaft is balanced: all that rotates with the crankpin, and the
// balance factor's part of all that reciprocates on it. In a V engine with two
// rods on a pin that is both rods and both pistons.
//
// Why half, in a V: the primary forces of two pistons of mass m on one pin at
// any angle between their banks add up to a force of m·throw·ω² that turns with
// the crankshaft, and one of m·cos(angle)·throw·ω² that turns against it. The
// first a counterweight can take away, and it is half of the 2m that
// reciprocate; the second is nothing at 90°. Engines whose crankshafts are in
// balance by themselves, in-line ones of four and six cylinders, are balanced
// without bobweights unless their maker says otherwise.
func BobweightOf[N tolerance.Number[N]](rotating, reciprocating N, factor tolerance.Ratio) N {
	return rotating.Add(reciprocating.Scale(factor.Num, factor.Den))
}

// BobweightRotating is the rotating mass that a bobweight leaves room for. It
// undoes [BobweightOf].
func BobweightRotating[N tolerance.Number[N]](bobweight, reciprocating N, factor tolerance.Ratio) N {
	return bobweight.Sub(reciprocating.Scale(factor.Num, factor.Den))
}

// BobweightReciprocating is the reciprocating mass of a bobweight, by the
// balance factor. It undoes [BobweightOf], to the rounding of the factor's
// part.
func BobweightReciprocating[N tolerance.Number[N]](bobweight, rotating N, factor tolerance.Ratio) N {
	return bobweight.Sub(rotating).Scale(factor.Den, factor.Num)
}

// BobweightFactor is the balance factor that a bobweight was made with, from
// masses in one unit.
func BobweightFactor[R tolerance.Real[R]](bobweight, rotating, reciprocating R) R {
	return bobweight.Sub(rotating).Quo(reciprocating)
}

// A BobweightRod is a connecting rod with all that goes with it, as weighed.
// What is left out is taken for nothing, but for both ends of the rod and the
// piston, which must be there. Weigh the rod's ends with both eyes level.
type BobweightRod struct {
	Where    string        `json:"where,omitempty"` // "cylinder 1"
	BigEnd   BobweightMass `json:"bigEnd"`          // with cap, bolts and nuts: rotates
	Shells   BobweightMass `json:"shells,omitzero"` // both halves: rotate
	SmallEnd BobweightMass `json:"smallEnd"`        // with its bush: reciprocates
	Piston   BobweightMass `json:"piston"`          // bare: reciprocates
	Pin      BobweightMass `json:"pin,omitzero"`    // gudgeon pin: reciprocates
	Rings    BobweightMass `json:"rings,omitzero"`  // all of one piston: reciprocate
	Locks    BobweightMass `json:"locks,omitzero"`  // circlips or buttons, both: reciprocate
}

// A BobweightPin is one crankpin with its rods.
type BobweightPin struct {
	Where string         `json:"where,omitempty"` // "crankpin 1"
	Rods  []BobweightRod `json:"rods"`            // one, or in a V engine two
	// Oil is an allowance for the oil in and round the crankpin, once for the
	// pin: a few grams by common practice, and nothing if it is left out.
	Oil    BobweightMass   `json:"oil,omitzero"`
	Factor tolerance.Ratio `json:"factor"` // of the reciprocating mass, from 0 to 1: 1/2 in most V engines
}

// A Bobweight is what follows for one crankpin.
type Bobweight struct {
	Where         string        `json:"where,omitempty"` // the crankpin
	Rotating      BobweightMass `json:"rotating"`        // of all rods on the pin, and the oil
	Reciprocating BobweightMass `json:"reciprocating"`   // all of it, of all rods on the pin
	Bobweight     BobweightMass `json:"bobweight"`       // what to set on the crankpin
}

// mostRodsOnPin is more than stand on a crankpin side by side.
const mostRodsOnPin = 4

// Bobweight adds up what is on the crankpin. It fails with an [InputError] for
// a pin without a rod, a mass that is below zero or not known on both sides, a
// rod end or piston of nothing, and a factor that isn't from 0 to 1 (a
// percentage is written with its sign: 50 is refused).
func (p BobweightPin) Bobweight() (Bobweight, error) {
	if n := len(p.Rods); n == 0 || n > mostRodsOnPin {
		return Bobweight{}, &InputError{"number of rods on " + bobweightName(p.Where, "a crankpin"), strconv.Itoa(n), "from 1 to 4"}
	}
	if f := p.Factor; !f.Valid() || f.Sign() < 0 || f.Float() > 1 {
		return Bobweight{}, &InputError{"balance factor of " + bobweightName(p.Where, "the crankpin"), f.String(), "from 0 to 1, such as 1/2 or 50 %"}
	}
	rotating, err := bobweightPart("oil", func() string { return bobweightName(p.Where, "the crankpin") }, p.Oil, false)
	if err != nil {
		return Bobweight{}, err
	}
	reciprocating := tolerance.Exactly(units.Mass(0))
	for i, r := range p.Rods {
		name := func() string { return bobweightName(r.Where, "rod "+strconv.Itoa(i+1)) }
		for _, part := range []struct {
			field  string
			mass   BobweightMass
			needed bool
			into   *BobweightMass
		}{
			{"big end", r.BigEnd, true, &rotating},
			{"shells", r.Shells, false, &rotating},
			{"small end", r.SmallEnd, true, &reciprocating},
			{"piston", r.Piston, true, &reciprocating},
			{"gudgeon pin", r.Pin, false, &reciprocating},
			{"rings", r.Rings, false, &reciprocating},
			{"locks", r.Locks, false, &reciprocating},
		} {
			m, err := bobweightPart(part.field, name, part.mass, part.needed)
			if err != nil {
				return Bobweight{}, err
			}
			*part.into = part.into.Add(m)
		}
	}
	return Bobweight{p.Where, rotating, reciprocating, BobweightOf(rotating, reciprocating, p.Factor)}, nil
}

// bobweightPart is a mass, nothing where it was left out and isn't needed.
func bobweightPart(field string, of func() string, m BobweightMass, needed bool) (BobweightMass, error) {
	if m.IsZero() && !needed {
		return tolerance.Exactly(units.Mass(0)), nil
	}
	lo, hi, ok := sliderEnds(m)
	switch {
	case m.IsZero():
		return m, &InputError{field + " of " + of(), "(not given)", "weighed"}
	case !ok || hi > units.Mass(1000*units.Kilogram):
		return m, &InputError{field + " of " + of(), m.String(), "known on both sides, up to 1 t"}
	case lo < 0 || needed && lo == 0:
		want := "0 g or more"
		if needed {
			want = "above 0 g"
		}
		return m, &InputError{field + " of " + of(), m.String(), want}
	}
	return m, nil
}

// bobweightName is a name of the caller's, at most 64 bytes of it.
func bobweightName(name, otherwise string) string {
	const most = 64
	if name == "" {
		return otherwise
	}
	if len(name) <= most {
		return name
	}
	n := most
	for n > 0 && name[n]&0xC0 == 0x80 {
		n--
	}
	return name[:n] + "…"
}
