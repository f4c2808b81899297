package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// LinerAssemblyGap is the room in mm on the diameter that a liner has while it
// is dropped into a heated block, or goes in chilled: what the block's bore
// grew less what the liner grew and the interference it has when both are at
// the temperature they were measured at. Bore and interference in mm, the
// coefficients per kelvin, the rises in kelvins from there, below zero for
// what is chilled.
func LinerAssemblyGap[R tolerance.Real[R]](bore, interference, blockPerK, blockRise, linerPerK, linerRise R) R {
	grown := bore.Mul(blockPerK).Mul(blockRise)
	return grown.Sub(bore.Add(interference).Mul(linerPerK).Mul(linerRise)).Sub(interference)
}

// BlockRiseFor is by how many kelvins a block must be warmer than it was
// measured at for a liner to have an assembly gap: [LinerAssemblyGap] solved
// for the block's rise.
func BlockRiseFor[R tolerance.Real[R]](gap, bore, interference, blockPerK, linerPerK, linerRise R) R {
	liner := bore.Add(interference).Mul(linerPerK).Mul(linerRise)
	return gap.Add(interference).Add(liner).Quo(bore.Mul(blockPerK))
}

// LinerRiseFor is by how many kelvins a liner may be warmer than it was
// measured at, and still have an assembly gap; below zero, by how many it must
// be chilled: [LinerAssemblyGap] solved for the liner's rise.
func LinerRiseFor[R tolerance.Real[R]](gap, bore, interference, blockPerK, blockRise, linerPerK R) R {
	grown := bore.Mul(blockPerK).Mul(blockRise)
	return grown.Sub(gap).Sub(interference).Quo(bore.Add(interference).Mul(linerPerK))
}

// A DropIn is a dry liner that is to drop into its block without a press.
//
// Heat the block evenly in an oven, never with a flame, and no hotter than its
// maker allows; wear dry gloves and have the liner's way clear: it seizes
// within seconds. Dry ice and liquid nitrogen push the air out of a closed room
// (asphyxia) and burn the skin by cold: work in the open draught, with face
// shield and loose insulated gloves, never in a closed vessel. Chilled iron is
// brittle, and its frost is water in the joint. Temperatures may be given up to
// 500 °C, since coefficients are those about room temperature.
type DropIn struct {
	Bore       tolerance.Bracket // of the block, at MeasuredAt
	Liner      tolerance.Bracket // outside diameter, at MeasuredAt
	Gap        units.Length      // assembly gap on the diameter, the least that is wanted
	MeasuredAt units.Temperature // of both; the zero value is 0 °C
	BlockPerK  float64           // coefficient of expansion, per kelvin: 21.5e-6
	LinerPerK  float64           // the liner's, likewise: 11.4e-6
}

// check refuses what can't be and gives the worst pair: the least bore, and
// the greatest liner less it.
func (d DropIn) check() (bore, interference units.Length, err error) {
	if err := linerSize("bore", d.Bore); err != nil {
		return 0, 0, err
	}
	if err := linerSize("liner outside diameter", d.Liner); err != nil {
		return 0, 0, err
	}
	bore, _ = d.Bore.Lower()
	most, end := d.Liner.Upper()
	switch {
	case end == tolerance.Absent:
		return 0, 0, linerError("liner outside diameter", d.Liner.String(), "measured: it has no greatest value")
	case bore <= 0:
		return 0, 0, linerError("bore", d.Bore.String(), "above 0 mm")
	case d.Gap < 0 || d.Gap >= bore:
		return 0, 0, linerError("assembly gap", d.Gap.String(), "0 mm or more and below the bore")
	}
	for i, a := range [...]float64{d.BlockPerK, d.LinerPerK} {
		if !(a > 0 && a < 1e-3) {
			return 0, 0, linerError([...]string{"block expansion", "liner expansion"}[i], linerNumber(a)+" per K", "above 0 and below 0.001 per K: 11.4 millionths are 11.4e-6")
		}
	}
	if !d.MeasuredAt.InRange() {
		return 0, 0, linerError("temperature measured at", d.MeasuredAt.String(), "in range")
	}
	return bore, most - bore, nil
}

// mostHeat is more than any block is heated to.
const mostHeat = 500 * units.CELSIUS

// rise is from what both were measured at to t, in kelvins.
func (d DropIn) rise(field string, t units.Temperature) (tolerance.Float, error) {
	if !t.InRange() || t < units.AbsoluteZero || t > mostHeat {
		return 0, linerError(field, t.String(), "above absolute zero and at most 500 °C: coefficients are those about room temperature")
	}
	return tolerance.Float(t.Sub(d.MeasuredAt).Float(units.InKelvins)), nil
}

// after is what both were measured at and x kelvins on.
func (d DropIn) after(field string, x float64) (units.Temperature, error) {
	rise, err := units.Nearest(x, units.InKelvins)
	if err != nil {
		return 0, linerError(field, linerNumber(x)+" K", "a rise that can be reached")
	}
	t := d.MeasuredAt.Add(rise)
	if !t.InRange() {
		return 0, linerError(field, linerNumber(x)+" K", "a fall that stays above absolute zero")
	}
	return t, nil
}

// slack covers what float64 loses, in kelvins.
const slack = 1e-9

// BlockAt is the temperature that the block must have, at the least, for the
// liner at its own to drop in: by the least bore and the greatest liner that
// were measured, to 2e-9 K. It may be below what both were measured at.
func (d DropIn) BlockAt(liner units.Temperature) (units.Temperature, error) {
	bore, over, err := d.check()
	if err != nil {
		return 0, err
	}
	lr, err := d.rise("liner temperature", liner)
	if err != nil {
		return 0, err
	}
	x := BlockRiseFor(linerMM(d.Gap), linerMM(bore), linerMM(over), tolerance.Float(d.BlockPerK), tolerance.Float(d.LinerPerK), lr)
	return d.after("block's rise", float64(x)+slack)
}

// LinerAt is the temperature that the liner may have, at the most, to drop
// into the block at its own; by the same worst pair and as near.
func (d DropIn) LinerAt(block units.Temperature) (units.Temperature, error) {
	bore, over, err := d.check()
	if err != nil {
		return 0, err
	}
	br, err := d.rise("block temperature", block)
	if err != nil {
		return 0, err
	}
	x := LinerRiseFor(linerMM(d.Gap), linerMM(bore), linerMM(over), tolerance.Float(d.BlockPerK), br, tolerance.Float(d.LinerPerK))
	return d.after("liner's fall", float64(x)-slack)
}

// GapAt holds the assembly gap of block and liner at their temperatures;
// below zero the liner doesn't go in. Its ends are to 2 pm, outward.
func (d DropIn) GapAt(block, liner units.Temperature) (tolerance.Bracket, error) {
	if _, _, err := d.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	br, err := d.rise("block temperature", block)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	lr, err := d.rise("liner temperature", liner)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	least := func(bore, liner units.Length) float64 {
		return 1e9 * float64(LinerAssemblyGap(linerMM(bore), linerMM(liner-bore), tolerance.Float(d.BlockPerK), br, tolerance.Float(d.LinerPerK), lr))
	}
	b0, bEnd := d.Bore.Lower()
	l1, lEnd := d.Liner.Upper()
	lo, loEnd := linerPicometres(math.Floor(least(b0, l1))-1), min(bEnd, lEnd)
	var hi units.Length
	b1, bEnd := d.Bore.Upper()
	l0, lEnd := d.Liner.Lower()
	hiEnd := min(bEnd, lEnd)
	if hiEnd != tolerance.Absent {
		hi = linerPicometres(math.Ceil(least(b1, l0)) + 1)
	}
	gap, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return tolerance.Bracket{}, linerError("assembly gap", linerNumber(least(b0, l1)/1e9)+" mm", "within the range of a length")
	}
	return gap, nil
}

// A Coolant is what may chill a liner. The zero value is NoCoolant.
type Coolant uint8

// What may chill a liner.
const (
	NoCoolant      Coolant = iota // nothing does: heat the block as well
	NoChilling                    // it needs none
	Freezer                       // a household freezer, −18 °C
	DryIce                        // solid carbon dioxide, −78.5 °C
	LiquidNitrogen                // −195.8 °C
)

var coolantNames = []string{
	"nothing is cold enough: heat the block as well",
	"no chilling",
	"a freezer, overnight",
	"dry ice, in an open draught, with insulated gloves",
	"liquid nitrogen, in an open draught, with face shield and loose insulated gloves, as its supplier tells",
}

// String is the coolant in words, with its caution.
func (c Coolant) String() string { return wordOf(coolantNames, c) }

// MarshalText writes what String gives.
func (c Coolant) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// CoolantFor is the mildest coolant that chills a liner from a room's
// temperature to t or below. That a freezer keeps −18 °C, dry ice sublimes at
// −78.5 °C and nitrogen boils at −195.8 °C, at one atmosphere, is from memory; a
// liner doesn't quite reach either, and warms on its way.
func CoolantFor(t, room units.Temperature) Coolant {
	switch {
	case !t.InRange() || !room.InRange():
		return NoCoolant
	case t >= room:
		return NoChilling
	case t >= -18*units.CELSIUS:
		return Freezer
	case t >= -78.5*units.CELSIUS:
		return DryIce
	case t >= -195.8*units.CELSIUS:
		return LiquidNitrogen
	}
	return NoCoolant
}
