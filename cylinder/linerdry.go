package cylinder

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// LinerInterference is the interference of a dry liner in its block: the
// liner's outside diameter less the block's bore. Below zero it is loose.
func LinerInterference[N tolerance.Number[N]](liner, bore N) N { return liner.Sub(bore) }

// BlockBoreFor is the bore to hone the block to for a liner to have an
// interference in it.
func BlockBoreFor[N tolerance.Number[N]](liner, interference N) N { return liner.Sub(interference) }

// A LinerMaterial is what a pressed joint needs of one of its two materials.
type LinerMaterial struct {
	ModulusMPa float64 `json:"modulusMPa"` // of elasticity, in N/mm²; 100 GPa is 100000
	Poisson    float64 `json:"poisson"`    // from 0 to below 0.5
}

// A DryLiner is a dry liner and the bore that it is pressed into.
//
// Press a liner square and in one stroke, from behind a guard: pressed parts
// can shatter or jump out. The limits are the engine maker's.
type DryLiner struct {
	Where    string              // "cylinder 3"
	Bores    []tolerance.Bracket // of the block, at several places
	Liners   []tolerance.Bracket // outside diameters of the liner, at several places
	Limits   tolerance.Spec      // of the interference
	Inside   units.Length        // bore of the liner before it goes in
	Outside  units.Length        // of the ring of block metal that is taken to hold it
	Liner    LinerMaterial       // what the liner is made of
	Block    LinerMaterial       // what the block is made of
	Length   units.Length        // of the joint; 0 where the press force isn't asked
	Friction float64             // coefficient; 0 where the press force isn't asked
	BlockMax float64             // greatest hoop stress allowed in the block, N/mm²; 0 where not given
}

// A Pressed is what one interference does in a pressed joint. Stresses are in
// N/mm², tension above zero; ForceN is 0 where it wasn't asked for.
type Pressed struct {
	Interference units.Length `json:"interference"` // on the diameter, above zero
	PressureMPa  float64      `json:"pressureMPa"`  // contact pressure at the joint, N/mm²
	BlockMPa     float64      `json:"blockMPa"`     // hoop stress of the block at the joint
	OutsideMPa   float64      `json:"outsideMPa"`   // and at its outside
	LinerMPa     float64      `json:"linerMPa"`     // hoop stress of the liner at the joint
	BoreMPa      float64      `json:"boreMPa"`      // and at its bore
	BoreClosing  units.Length `json:"boreClosing"`  // how much smaller the liner's bore becomes, on the diameter
	ForceN       float64      `json:"forceN,omitempty"`
}

// A DryLinerReport is what follows for one dry liner. Least and Greatest are
// the joint at the least and the greatest interference; where the liner may be
// loose the least holds zeros.
type DryLinerReport struct {
	Finding  tolerance.Finding `json:"finding"` // of the interference, below zero where loose
	Least    Pressed           `json:"least"`
	Greatest Pressed           `json:"greatest"`
	// Stress says how the block's greatest hoop stress lies to BlockMax.
	Stress tolerance.Verdict `json:"stress"`
	Next   string            `json:"next"` // what to do
}

// Assess judges the interference of a dry liner (the greatest liner in the
// least bore, and the other way round) and works out what it does. Pressures
// and stresses are to 1 part in 10¹²; the model's own error is far larger,
// since a block is no ring.
func (d DryLiner) Assess() (DryLinerReport, error) {
	if err := d.check(); err != nil {
		return DryLinerReport{}, err
	}
	bl, bg := tolerance.Extremes(d.Bores...)
	ll, lg := tolerance.Extremes(d.Liners...)
	least, greatest := LinerInterference(ll, bg), LinerInterference(lg, bl)
	f, err := linerAssess("liner interference", d.Where, d.Limits, least, greatest)
	if err != nil {
		return DryLinerReport{}, err
	}
	r := DryLinerReport{Finding: f}
	joint, _ := bl.Lower()
	if lo, end := least.Lower(); end != tolerance.Absent && lo > 0 {
		r.Least = d.Press(lo, joint)
	}
	hi, end := greatest.Upper()
	if end != tolerance.Absent && hi > 0 {
		r.Greatest = d.Press(hi, joint)
	}
	if d.BlockMax > 0 && end != tolerance.Absent {
		switch {
		case r.Greatest.BlockMPa <= d.BlockMax:
			r.Stress = tolerance.Within
		case r.Least.BlockMPa > d.BlockMax:
			r.Stress = tolerance.Above
		}
	}
	r.Next = d.next(r, hi, end)
	return r, nil
}

// Press is what one interference does, at a joint of that diameter. It checks
// nothing: where a size can't be, the figures are not-a-number.
func (d DryLiner) Press(interference, joint units.Length) Pressed {
	type float = tolerance.Float
	in := PressedRing[float]{linerMM(d.Inside), float(d.Liner.ModulusMPa), float(d.Liner.Poisson)}
	out := PressedRing[float]{linerMM(d.Outside), float(d.Block.ModulusMPa), float(d.Block.Poisson)}
	j := linerMM(joint)
	p := LinerPressure(linerMM(interference), j, in, out)
	x := Pressed{Interference: interference, PressureMPa: float64(p),
		BlockMPa: float64(BlockHoopStress(p, j, out.Other)), OutsideMPa: float64(BlockOutsideStress(p, j, out.Other)),
		LinerMPa: float64(LinerHoopStress(p, j, in.Other)), BoreMPa: float64(LinerBoreStress(p, j, in.Other)),
		ForceN: float64(LinerPressForce(float(d.Friction), j, linerMM(d.Length), p))}
	closing, err := units.Nearest(float64(LinerBoreClosing(p, j, in)), units.InMillimetres)
	if err != nil {
		closing = units.OutOfRange[units.Length]()
	}
	x.BoreClosing = closing
	return x
}

func (d DryLiner) next(r DryLinerReport, hi units.Length, end tolerance.End) string {
	lo, loEnd := r.Finding.Least.Lower()
	switch {
	case end != tolerance.Absent && hi <= 0:
		return "the liner is loose in the block: it needs a larger one, or the block bored for an oversize liner"
	case r.Stress == tolerance.Above:
		return "the block would be stressed above what is allowed: ease the bore; don't press it in"
	case r.Finding.Standing == tolerance.CantTell && r.Finding.Settle != "":
		return r.Finding.Settle
	case r.Finding.Standing >= tolerance.OutsideNewBand:
		return "the interference is outside the limits: size the block's bore to the liner, as measured"
	case loEnd == tolerance.Absent || lo <= 0:
		return "the readings don't exclude a loose liner: measure both again with a finer instrument"
	case r.Stress == tolerance.Undecided && d.BlockMax > 0:
		return "the readings don't tell whether the block's stress stays below what is allowed: measure both again with a finer instrument"
	}
	return "press it in square, let it settle, then measure its bore: it closes when pressed; the engine maker's manual governs"
}

func (d DryLiner) check() error {
	if len(d.Bores) == 0 || len(d.Liners) == 0 {
		return linerError("readings", "none", "at least one of the bore and one of the liner")
	}
	var names []string
	for i, b := range d.Bores {
		if err := linerSize("block bore", b); err != nil {
			return err
		}
		names = append(names, "block bore "+strconv.Itoa(i+1))
	}
	for i, l := range d.Liners {
		if err := linerSize("liner outside diameter", l); err != nil {
			return err
		}
		names = append(names, "liner outside diameter "+strconv.Itoa(i+1))
	}
	if err := linerAlike(names, slices.Concat(d.Bores, d.Liners)); err != nil {
		return err
	}
	bl, bg := tolerance.Extremes(d.Bores...)
	most, end := bg.Upper()
	if end == tolerance.Absent {
		most, _ = bg.Lower()
	}
	least, _ := bl.Lower()
	switch {
	case d.Inside <= 0 || d.Inside >= least:
		return linerError("liner bore", d.Inside.String(), "above 0 mm and below the block's bore "+bl.String())
	case !d.Outside.InRange() || d.Outside <= most:
		return linerError("outside of the block's ring", d.Outside.String(), "above the block's bore "+bg.String())
	case d.Length < 0 || !d.Length.InRange():
		return linerError("joint length", d.Length.String(), "0 mm or more")
	case !(d.Friction >= 0 && d.Friction <= 2):
		return linerError("friction", linerNumber(d.Friction), "from 0 to 2")
	case !(d.BlockMax >= 0 && d.BlockMax <= 1e4):
		return linerError("stress allowed", linerNumber(d.BlockMax)+" N/mm²", "from 0 to 10000 N/mm²")
	}
	for i, m := range [...]LinerMaterial{d.Liner, d.Block} {
		name := [...]string{"liner ", "block "}[i]
		if !(m.ModulusMPa >= 1000 && m.ModulusMPa <= 1e6) {
			return linerError(name+"modulus", linerNumber(m.ModulusMPa)+" N/mm²", "from 1000 to 1000000 N/mm²: 100 GPa are 100000")
		}
		if !(m.Poisson >= 0 && m.Poisson < 0.5) {
			return linerError(name+"Poisson's ratio", linerNumber(m.Poisson), "from 0 to below 0.5")
		}
	}
	return nil
}
