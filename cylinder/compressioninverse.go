package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What would give a wanted ratio. Each of these undoes [Build.Compression]: of
// exact sizes the bracket holds the exact answer and is a few picometres (or
// quanta of volume) wide. Brackets hold every answer that the readings allow.
//
// They fail as Compression does (what they are to find need not be given), and
// with an [InputError] for a ratio that isn't above 1, or that can't be had in
// the way asked for.

// GasketFor is the compressed thickness of the gasket, its bore being given,
// with which the ratio comes about.
func (b Build) GasketFor(ratio tolerance.Ratio) (tolerance.Bracket, error) {
	t, err := solveBuild(b, ratio, needsStroke, func(b Build, c Compression, wanted VolumeBracket) tolerance.Bracket {
		return heightBracket(wanted.Sub(c.Chamber.Add(c.Deck).Add(c.Crown).Add(c.Land)), b.Gasket.Bore)
	})
	if lo, _ := t.Lower(); err == nil && lo <= 0 {
		err = cantHave(ratio, "one that leaves room for a gasket", t.Text(units.InMillimetres, 3)+" thick")
	}
	return t, err
}

// ChamberFor is the volume of the chamber in the head with which the ratio
// comes about.
func (b Build) ChamberFor(ratio tolerance.Ratio) (VolumeBracket, error) {
	v, err := solveBuild(b, ratio, needsStroke|needsGasket, func(b Build, c Compression, wanted VolumeBracket) VolumeBracket {
		return wanted.Sub(c.Gasket.Add(c.Deck).Add(c.Crown).Add(c.Land))
	})
	if lo, _ := v.Lower(); err == nil && lo < 0 {
		err = cantHave(ratio, "one that leaves the chamber a volume", v.Text(units.InCubicCentimetres, 2))
	}
	return v, err
}

// DeckFor is where the crown would have to stand for the ratio to come about.
func (b Build) DeckFor(ratio tolerance.Ratio) (Deck, error) {
	below, err := solveBuild(b, ratio, needsStroke|needsGasket, func(b Build, c Compression, wanted VolumeBracket) tolerance.Bracket {
		return heightBracket(wanted.Sub(c.Chamber.Add(c.Gasket).Add(c.Crown).Add(c.Land)), b.Bore)
	})
	return Deck{below}, err
}

// HeadSkimFor is what to take off the head's face for the ratio to come about,
// from the chamber's open area. A skim only raises the ratio. A chamber that
// narrows above its face loses less than the area says, and the ratio comes
// out a little lower; take a little less than this, and measure again.
func (b Build) HeadSkimFor(ratio tolerance.Ratio) (tolerance.Bracket, error) {
	area, err := b.openArea()
	if err != nil {
		return tolerance.Bracket{}, err
	}
	off, err := solveBuild(b, ratio, needsStroke|needsGasket, func(b Build, c Compression, wanted VolumeBracket) tolerance.Bracket {
		// 10 fL are 10¹⁹ cubic picometres, and 1 mm is 10⁹ pm.
		return quantaAs[units.Length](c.Clearance.Sub(wanted)).Scale(10_000_000_000, int64(area))
	})
	if err != nil {
		return off, err
	}
	if err = skimFound(ratio, off); err == nil {
		_, err = b.HeadSkimmed(off)
	}
	return off, err
}

// BlockSkimFor is what to take off the block face for the ratio to come about.
// A skim only raises the ratio.
func (b Build) BlockSkimFor(ratio tolerance.Ratio) (tolerance.Bracket, error) {
	off, err := solveBuild(b, ratio, needsStroke|needsGasket, func(b Build, c Compression, wanted VolumeBracket) tolerance.Bracket {
		return heightBracket(c.Clearance.Sub(wanted), b.Bore)
	})
	if err != nil {
		return off, err
	}
	return off, skimFound(ratio, off)
}

// skimFound refuses a skim that would have to put metal on.
func skimFound(ratio tolerance.Ratio, off tolerance.Bracket) error {
	if lo, _ := off.Lower(); lo < 0 {
		return cantHave(ratio, "above the present ratio: a skim only raises it", "a skim of "+off.Text(units.InMillimetres, 3))
	}
	return nil
}

// StrokeFor is the stroke with which the ratio comes about where the crown
// goes on stopping at the same deck, by another rod or piston.
func (b Build) StrokeFor(ratio tolerance.Ratio) (tolerance.Bracket, error) {
	r, err := wantedRatio(ratio)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	return solveBuild(b, ratio, needsGasket, func(b Build, c Compression, _ VolumeBracket) tolerance.Bracket {
		return heightBracket(c.Clearance.Scale(r.Num-r.Den, r.Den), b.Bore)
	})
}

// StrokeForSameRod is the stroke with which the ratio comes about where rod
// and piston stay, so that the crown rises by half of what the stroke gains.
// Where that brings the crown above the block face the deck after it says so:
// check the squish.
func (b Build) StrokeForSameRod(ratio tolerance.Ratio) (stroke tolerance.Bracket, deck Deck, err error) {
	r, err := wantedRatio(ratio)
	if err != nil {
		return stroke, deck, err
	}
	stroke, err = solveBuild(b, ratio, needsStroke|needsGasket, func(b Build, c Compression, _ VolumeBracket) tolerance.Bracket {
		room := c.Clearance.Add(c.Swept.Scale(1, 2))
		return heightBracket(room.Scale(2, 1).Scale(r.Num-r.Den, r.Num+r.Den), b.Bore)
	})
	if err != nil {
		return stroke, deck, err
	}
	return stroke, Deck{b.Deck.below.Sub(stroke.Sub(b.Stroke).Scale(1, 2))}, nil
}

// solveBuild finds a size with the least bore and with the greatest: between them
// it only rises or only falls.
func solveBuild[Q units.Quantity](b Build, ratio tolerance.Ratio, n needs, find func(b Build, c Compression, wanted VolumeBracket) tolerance.Interval[Q]) (tolerance.Interval[Q], error) {
	var none tolerance.Interval[Q]
	r, err := wantedRatio(ratio)
	if err != nil {
		return none, err
	}
	if err := b.check(n); err != nil {
		return none, err
	}
	at := func(b Build) (tolerance.Interval[Q], error) {
		c := b.volumes()
		if n&needsGasket != 0 {
			c.Clearance = c.Chamber.Add(c.Gasket).Add(c.Deck).Add(c.Crown).Add(c.Land)
		}
		found := find(b, c, c.Swept.Scale(r.Den, r.Num-r.Den))
		if !found.InRange() {
			return none, &InputError{"wanted ratio", ratio.String(), "one that sizes within range can give"}
		}
		return found, nil
	}
	lo, hi := b.boresOf()
	low, err := at(lo)
	if err != nil || lo.Bore == hi.Bore {
		return low, err
	}
	high, err := at(hi)
	return hullOf(low, high), err
}

func cantHave(ratio tolerance.Ratio, want, found string) error {
	return &InputError{"wanted ratio", ratio.String(), fmt.Sprintf("%s (it takes %s)", want, found)}
}
