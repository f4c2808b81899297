package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// BoreTarget is the size to finish a bore to for its own piston: the skirt as
// measured, where its maker says to, and the clearance wanted.
func BoreTarget[N tolerance.Number[N]](skirt, clearance N) N { return skirt.Add(clearance) }

// PistonClearance is the clearance of a piston in its bore: the inverse of
// [BoreTarget]. Below zero it doesn't go in.
func PistonClearance[N tolerance.Number[N]](bore, skirt N) N { return bore.Sub(skirt) }

// SkirtFor is the skirt with which a bore has the clearance wanted.
func SkirtFor[N tolerance.Number[N]](bore, clearance N) N { return bore.Sub(clearance) }

// RoughBore is the size to bore to, before honing: the finished size less the
// stock left for the hone, on the diameter.
func RoughBore[N tolerance.Number[N]](finish, honing N) N { return finish.Sub(honing) }

// FinishedBore is the size that honing brings a rough bore to: the inverse of
// [RoughBore].
func FinishedBore[N tolerance.Number[N]](rough, honing N) N { return rough.Add(honing) }

// BoreBand is the band of sizes that give a piston a clearance within its own
// band, whatever the skirt is of what its bracket leaves open. ok is false where
// there is none: the skirt is known less well than the clearance is wide.
func BoreBand(skirt tolerance.Bracket, clearance tolerance.Band) (band tolerance.Band, ok bool) {
	least, leastEnd := clearance.Lower()
	most, mostEnd := clearance.Upper()
	thin, thinEnd := skirt.Lower()
	thick, thickEnd := skirt.Upper()
	if clearance.IsZero() || !skirt.InRange() || !clearance.InRange() ||
		leastEnd != tolerance.Absent && thickEnd == tolerance.Absent || mostEnd != tolerance.Absent && thinEnd == tolerance.Absent {
		return band, false
	}
	// An end is left out only where the limit is and the skirt can stand on
	// its own end.
	end := func(limit, skirt tolerance.End) tolerance.End {
		if limit == tolerance.Open && skirt == tolerance.Open {
			return tolerance.Closed
		}
		return limit
	}
	b, err := tolerance.NewBand(thick.Add(least), end(leastEnd, thickEnd), thin.Add(most), end(mostEnd, thinEnd))
	return b, err == nil
}

// A FinishPlan is what the bores of a block are finished for.
type FinishPlan struct {
	// Skirts are what each bore's own piston measured, in the order of the
	// bores, and Pistons the temperature and expansion that they had then.
	Skirts    []tolerance.Bracket `json:"skirts"`
	Pistons   instrument.Thermal  `json:"pistonThermal,omitzero"` // while Skirts were measured
	Clearance units.Length        `json:"clearance"`              // wanted, at 20 °C
	Honing    units.Length        `json:"honing"`                 // stock left for the hone, on the diameter
	// Block is the temperature and expansion that the block has while it is
	// bored and gauged.
	Block instrument.Thermal `json:"block,omitzero"`
}

// A FinishSize is what one bore is finished to.
type FinishSize struct {
	Skirt  tolerance.Bracket `json:"skirt"`  // at 20 °C
	Finish tolerance.Bracket `json:"finish"` // at 20 °C
	Rough  tolerance.Bracket `json:"rough"`  // at 20 °C, before honing
	// FinishNow and RoughNow are the same sizes in the block as warm as it is:
	// what a gauge at 20 °C, or one with its own temperature corrected, must
	// show there.
	FinishNow tolerance.Bracket `json:"finishNow"`
	RoughNow  tolerance.Bracket `json:"roughNow"` // before honing
}

// FinishSizes are the sizes to bore and to hone each bore to. With nothing
// warm the sizes are exact; else they are brackets that hold what temperature and
// expansion leave open, rounded outward.
//
// It fails, with an [InputError] or one of package instrument's, where a
// skirt, clearance or stock can't be, or a temperature or coefficient is none
// to measure at.
func FinishSizes(p FinishPlan) ([]FinishSize, error) {
	if len(p.Skirts) == 0 {
		return nil, &InputError{"skirts", "(none)", "one for each bore"}
	}
	if err := boreAllowance("clearance", p.Clearance); err != nil {
		return nil, err
	}
	if err := boreAllowance("honing stock", p.Honing); err != nil {
		return nil, err
	}
	sizes := make([]FinishSize, len(p.Skirts))
	for i, skirt := range p.Skirts {
		field := "skirt " + strconv.Itoa(i+1)
		if err := boreBracket(field, skirt, units.Picometre); err != nil {
			return nil, err
		}
		if lo, _ := bothOf(skirt); p.Clearance > lo/10 || p.Honing > lo/10 {
			return nil, &InputError{field, skirt.String(), "more than ten times the clearance and the honing stock: is all in its right unit?"}
		}
		s := &sizes[i]
		var err error
		if s.Skirt, err = throughEnds(skirt, p.Pistons.ReferenceSize); err != nil {
			return nil, err
		}
		s.Finish = BoreTarget(s.Skirt, tolerance.Exactly(p.Clearance))
		s.Rough = RoughBore(s.Finish, tolerance.Exactly(p.Honing))
		if s.FinishNow, err = throughEnds(s.Finish, p.Block.SizeAt); err != nil {
			return nil, err
		}
		if s.RoughNow, err = throughEnds(s.Rough, p.Block.SizeAt); err != nil {
			return nil, err
		}
	}
	return sizes, nil
}

// throughEnds is what a rising function makes of a bracket.
func throughEnds(b tolerance.Bracket, f func(units.Length) (tolerance.Bracket, error)) (tolerance.Bracket, error) {
	lo, hi := bothOf(b)
	least, err := f(lo)
	if err != nil {
		return b, err
	}
	greatest, err := f(hi)
	if err != nil {
		return b, err
	}
	lo, _ = bothOf(least)
	_, hi = bothOf(greatest)
	return boreSpan(lo, hi), nil
}
