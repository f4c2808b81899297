package valvetrain

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SpringMeanDiameter is the mean diameter of a coil: its outside less one wire.
// Of an inside diameter it is that plus one wire.
func SpringMeanDiameter[N tolerance.Number[N]](outside, wire N) N { return outside.Sub(wire) }

// SpringIndex is the coil's mean diameter over the wire's: C = D/d, 4 to 12 in
// most springs.
func SpringIndex[R tolerance.Real[R]](mean, wire R) R { return mean.Quo(wire) }

// SpringRateOfCoil is the rate of a cylindrical helical spring of round wire:
//
//	k = G·d⁴/(8·D³·n)
//
// G is the shear modulus, d the wire, D the mean diameter of the coil and n the
// number of active coils. In N/mm² and mm it is in N/mm, in psi and in in
// lbf/in.
//
// Why: a load F twists the wire everywhere by F·D/2. Over n coils, π·D·n of wire
// of polar moment π·d⁴/32, it turns by θ and the spring closes by θ·D/2, which is
// 8·F·D³·n/(G·d⁴). No curvature factor belongs here: those of Wahl and
// Bergsträsser say how much the stress rises at the inside of the coil, while
// the closing follows from the energy in the whole section. What plain shear
// would add to the closing is 1/(2C²) of it ([SpringShearPart]), 1 per cent at
// C = 7, which the formula leaves out, as all handbooks do; G and d, which
// enters by its fourth power, are seldom known as well.
func SpringRateOfCoil[R tolerance.Real[R]](shear, wire, mean, active R) R {
	square := wire.Mul(wire)
	return shear.Mul(square).Mul(square).Quo(shear.Const(8).Mul(mean).Mul(mean).Mul(mean).Mul(active))
}

// SpringActiveFor is the number of active coils that gives a rate: the inverse
// of [SpringRateOfCoil].
func SpringActiveFor[R tolerance.Real[R]](shear, wire, mean, rate R) R {
	return SpringRateOfCoil(shear, wire, mean, rate)
}

// SpringWireFor is the wire with which active coils of a mean diameter have a
// rate: the inverse of [SpringRateOfCoil] in d.
func SpringWireFor[R tolerance.Real[R]](shear, mean, active, rate R) R {
	fourth := rate.Const(8).Mul(mean).Mul(mean).Mul(mean).Mul(active).Mul(rate).Quo(shear)
	return fourth.Sqrt().Sqrt()
}

// SpringShearFor is the shear modulus that a spring's measured rate tells of: the
// inverse of [SpringRateOfCoil] in G. Where it is far from what the wire is made
// of, coils were counted wrong or the spring isn't the one it is taken for.
func SpringShearFor[R tolerance.Real[R]](wire, mean, active, rate R) R {
	square := wire.Mul(wire)
	return rate.Const(8).Mul(mean).Mul(mean).Mul(mean).Mul(active).Mul(rate).Quo(square.Mul(square))
}

// SpringShearPart is the part that plain shear would add to a spring's closing:
// 1/(2C²), with the index C.
func SpringShearPart[R tolerance.Real[R]](index R) R {
	return index.Const(1).Quo(index.Const(2).Mul(index).Mul(index))
}

// WahlFactor is Wahl's factor of the stress at the inside of a coil, with the
// part of plain shear in it: (4C − 1)/(4C − 4) + 0.615/C.
func WahlFactor[R tolerance.Real[R]](index R) R {
	four := index.Const(4).Mul(index)
	return four.Sub(index.Const(1)).Quo(four.Sub(index.Const(4))).Add(index.Const(0.615).Quo(index))
}

// BergstrasserFactor is Bergsträsser's factor of the same stress:
// (4C + 2)/(4C − 3), within 1 per cent of Wahl's.
func BergstrasserFactor[R tolerance.Real[R]](index R) R {
	four := index.Const(4).Mul(index)
	return four.Add(index.Const(2)).Quo(four.Sub(index.Const(3)))
}

// SpringStress is the greatest shear stress of a spring's wire: K·8·F·D/(π·d³),
// with a curvature factor K ([WahlFactor], [BergstrasserFactor]; 1 for the stress
// of torsion alone). In N and mm it is in N/mm².
func SpringStress[R tolerance.Real[R]](load, mean, wire, factor R) R {
	return factor.Mul(load.Const(8)).Mul(load).Mul(mean).Quo(load.Const(math.Pi).Mul(wire).Mul(wire).Mul(wire))
}

// SpringLoadForStress is the load at which a spring's wire has a shear stress:
// the inverse of [SpringStress].
func SpringLoadForStress[R tolerance.Real[R]](stress, mean, wire, factor R) R {
	return stress.Quo(SpringStress(stress.Const(1), mean, wire, factor))
}

// A SpringCoil is a spring's wire and coils.
type SpringCoil struct {
	Form    SpringForm        `json:"form"`    // what the coils are like
	Ends    SpringEnds        `json:"ends"`    // what its ends are like
	Wire    tolerance.Bracket `json:"wire"`    // diameter of the wire
	Outside tolerance.Bracket `json:"outside"` // diameter over the coils
	Total   tolerance.Ratio   `json:"total"`   // coils from tip to tip of the wire; 6 1/4 is 25/4
	// ShearMPa is the shear modulus of the wire, in N/mm²: steel has about 79 300
	// (11.5 million psi).
	ShearMPa float64 `json:"shearMPa"`
}

// Active is the number of coils that spring: the total less those that lie dead
// in the ends.
func (c SpringCoil) Active() (tolerance.Ratio, error) {
	if err := c.check(); err != nil {
		return tolerance.Ratio{}, err
	}
	return c.active()
}

func (c SpringCoil) active() (tolerance.Ratio, error) {
	n, err := tolerance.NewRatio(c.Total.Num-c.Ends.dead()*c.Total.Den, c.Total.Den)
	if err != nil || n.Sign() <= 0 {
		return tolerance.Ratio{}, &InputError{"total coils", c.Total.String(), "more than the " + strconv.FormatInt(c.Ends.dead(), 10) + " that lie dead in ends that are " + c.Ends.String()}
	}
	return n, nil
}

// Rate is the rate by [SpringRateOfCoil], for every wire and coil that the
// brackets allow, rounded outward. It is refused, with an [InputError], for
// springs that are conical or progressive, whose coils don't share one diameter
// or close one after another: measure their loads. So too where a size can't be.
func (c SpringCoil) Rate() (RateBracket, error) {
	if err := c.check(); err != nil {
		return RateBracket{}, err
	}
	if c.Form != Cylindrical {
		return RateBracket{}, &InputError{"form", c.Form.String(), "cylindrical, with all coils alike: the rate of any other comes from its loads"}
	}
	n, err := c.active()
	if err != nil {
		return RateBracket{}, err
	}
	// Thicker wire in the same outside makes a spring stiffer twice over.
	wLo, wHi := inputEnds(c.Wire)
	oLo, oHi := inputEnds(c.Outside)
	at := func(wire, outside units.Length) float64 {
		type float = tolerance.Float
		mm := func(l units.Length) float { return float(l.Float(units.InMillimetres)) }
		return float64(SpringRateOfCoil(float(c.ShearMPa), mm(wire), mm(SpringMeanDiameter(outside, wire)), float(n.Float())))
	}
	const slack = 1.0 / (1 << 48)
	lo, errLo := units.Nearest(at(wLo, oHi)*(1-slack), units.InNewtonsPerMillimetre)
	hi, errHi := units.Nearest(at(wHi, oLo)*(1+slack), units.InNewtonsPerMillimetre)
	if errLo != nil || errHi != nil {
		return RateBracket{}, &InputError{"wire", c.Wire.String(), "thin enough for a rate within range"}
	}
	if hi > 0 {
		hi += units.SpringRate(1)
	}
	return inputSpan(max(0, lo-units.SpringRate(1)), hi), nil
}

// Solid is the height at which all coils touch, by what the ends are like: see
// [SpringEnds]. A measured solid height is better. It fails as Active does.
func (c SpringCoil) Solid() (tolerance.Bracket, error) {
	if err := c.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	if c.Form == Conical {
		return tolerance.Bracket{}, &InputError{"form", c.Form.String(), "one whose coils stand on one another: measure the solid height of this one"}
	}
	least, greatest := c.Ends.solid()
	lo := SpringSolidHeight(c.Wire, c.Total, least)
	hi := SpringSolidHeight(c.Wire, c.Total, greatest)
	low, _ := inputEnds(lo)
	_, high := inputEnds(hi)
	return inputSpan(low, high), nil
}

func (c SpringCoil) check() error {
	switch {
	case c.Form == UnstatedForm || c.Form > Progressive:
		return &InputError{"form", c.Form.String(), "cylindrical, conical or progressive"}
	case c.Ends == UnstatedEnds || c.Ends > SquaredGround:
		return &InputError{"ends", c.Ends.String(), "plain, plain and ground, squared, or squared and ground"}
	case !(c.ShearMPa >= 1000 && c.ShearMPa <= 1e6):
		return &InputError{"shear modulus", strconv.FormatFloat(c.ShearMPa, 'g', 6, 64) + " N/mm²", "from 1000 to 1000000 N/mm² (79.3 GPa are 79300)"}
	case !c.Total.Valid() || c.Total.Num > 1000*c.Total.Den || c.Total.Den > 1_000_000 || c.Total.Sign() <= 0:
		return &InputError{"total coils", c.Total.String(), "above 0 and at most 1000, in millionths or coarser"}
	}
	if err := firstError(func() error { return inputBracket("wire", c.Wire, units.Picometre) },
		func() error { return inputBracket("outside diameter", c.Outside, units.Picometre) }); err != nil {
		return err
	}
	_, thick := inputEnds(c.Wire)
	if lo, _ := inputEnds(c.Outside); lo <= 2*thick {
		return &InputError{"outside diameter", c.Outside.String(), "above two wires, " + c.Wire.Scale(2, 1).String()}
	}
	return nil
}
