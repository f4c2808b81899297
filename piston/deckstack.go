package piston

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A DeckSide says on which side of the block face a crown stands at top dead
// centre. The zero value is DeckSideUnknown.
type DeckSide uint8

// The sides of the block face.
const (
	DeckSideUnknown   DeckSide = iota // not measured, or the readings leave it open
	DeckSideBelow                     // the crown stops below the block face
	DeckSideAbove                     // it stands above it (proud)
	DeckSideLevelWith                 // exactly level with it
)

var deckSides = []string{"not told from the block face", "below the block face", "above the block face", "level with the block face"}

// String is the side in words.
func (s DeckSide) String() string { return word(deckSides, uint8(s)) }

// MarshalText writes what String gives.
func (s DeckSide) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *DeckSide) UnmarshalText(text []byte) error {
	return readWord("side of the block face", deckSides, text, s)
}

// DeckSideOf is the side on which a crown stands with so much protrusion.
func DeckSideOf(protrusion tolerance.Bracket) DeckSide {
	if !protrusion.InRange() {
		return DeckSideUnknown
	}
	lo, loEnd := protrusion.Lower()
	hi, hiEnd := protrusion.Upper()
	switch {
	case protrusion == tolerance.Exactly(units.Length(0)):
		return DeckSideLevelWith
	case loEnd == tolerance.Open && lo >= 0, loEnd == tolerance.Closed && lo > 0:
		return DeckSideAbove
	case hiEnd == tolerance.Open && hi <= 0, hiEnd == tolerance.Closed && hi < 0:
		return DeckSideBelow
	}
	return DeckSideUnknown
}

// DeckText writes a protrusion in millimetres to so many places with its side
// in words, "0.62 mm above the block face": a plain signed number leaves open
// which way it counts. A bracket is rounded outward. What may lie on either
// side is written "from 0.02 mm below to 0.01 mm above the block face".
func DeckText(protrusion tolerance.Bracket, places int) string {
	down := tolerance.Exactly(units.Length(0)).Sub(protrusion)
	switch side := DeckSideOf(protrusion); side {
	case DeckSideAbove:
		return protrusion.Text(units.InMillimetres, places) + " " + side.String()
	case DeckSideBelow:
		return down.Text(units.InMillimetres, places) + " " + side.String()
	case DeckSideLevelWith:
		return side.String()
	}
	lo, loEnd := down.Upper()
	hi, hiEnd := protrusion.Upper()
	if !protrusion.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		return protrusion.Text(units.InMillimetres, places) + ", " + DeckSideUnknown.String()
	}
	return "from " + roundedUp(lo, places) + " below to " + roundedUp(hi, places) + " above the block face"
}

// roundedUp is a length in millimetres rounded away from the block face.
func roundedUp(l units.Length, places int) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: places, Rounding: units.Up})
	return string(text)
}

// A DeckStack is what makes a crown's height, one size on the other. Each
// bracket holds the error of its measurement, or the tolerance of a drawing;
// an exact size is [tolerance.Exactly].
type DeckStack struct {
	BlockHeight       tolerance.Bracket `json:"blockHeight"`       // block face above the crank's axis
	Stroke            tolerance.Bracket `json:"stroke"`            // twice the crank's throw
	Rod               tolerance.Bracket `json:"rod"`               // centre to centre
	CompressionHeight tolerance.Bracket `json:"compressionHeight"` // pin's axis to the crown
}

// check refuses sizes that can't be.
func (d DeckStack) check() error {
	for _, s := range []struct {
		field string
		size  tolerance.Bracket
	}{{"block height", d.BlockHeight}, {"stroke", d.Stroke}, {"rod", d.Rod}, {"compression height", d.CompressionHeight}} {
		if err := size(s.field, s.size); err != nil {
			return err
		}
	}
	throw := d.Stroke.Scale(1, 2)
	rod, end := d.Rod.Upper()
	if least, _ := throw.Lower(); end != tolerance.Absent && rod <= least {
		return &InputError{"rod", d.Rod.String(), "longer than half the stroke, " + throw.String() + ": the crank can't turn"}
	}
	return nil
}

// Protrusion is how far the crown stands above the block face ([DeckAbove]),
// below zero where it stops below. It fails with an [InputError] where a size
// is missing or not above zero, and where the rod is no longer than half the
// stroke.
func (d DeckStack) Protrusion() (tolerance.Bracket, error) {
	if err := d.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	p := DeckAbove(d.BlockHeight, d.Stroke, d.Rod, d.CompressionHeight)
	if !p.InRange() {
		return tolerance.Bracket{}, &InputError{"protrusion", p.String(), "within the range of a length"}
	}
	return p, nil
}

// Chain is the stack as a chain that closes with the protrusion, for the worst
// case, the root-sum-square of many engines, and what tolerance is left for
// one of the sizes. The sizes are taken to scatter over their brackets as
// stated.
func (d DeckStack) Chain(scatter tolerance.Scatter, sigmas float64) tolerance.Chain {
	half, _ := tolerance.NewRatio(1, 2)
	link := func(name string, b tolerance.Bracket, r tolerance.Ratio) tolerance.Link {
		return tolerance.Link{Name: name, Band: tolerance.BandFrom(b), Sensitivity: r, Scatter: scatter, Sigmas: sigmas}
	}
	return tolerance.Chain{Links: []tolerance.Link{
		link("compression height", d.CompressionHeight, tolerance.Whole(1)),
		link("rod", d.Rod, tolerance.Whole(1)),
		link("stroke", d.Stroke, half),
		link("block height", d.BlockHeight, tolerance.Whole(-1)),
	}}
}

// A DeckPiston is one piston's protrusion as read at top dead centre, at the
// two points of the crown above the ends of the gudgeon pin's axis, on its flat
// part. The dial is zeroed on the block face; readings count above it and hold
// their error.
type DeckPiston struct {
	Where  string            `json:"where"`  // "piston 3"
	First  tolerance.Bracket `json:"first"`  // at one end of the pin's axis
	Second tolerance.Bracket `json:"second"` // at the other
}

// Protrusion is the mean of the two points, [DeckProtrusion], and their
// difference, [DeckTilt]. It fails with an [InputError] where a point is
// missing, has one end only, or is out of range: one point alone can't tell
// a tilt from a height.
func (p DeckPiston) Protrusion() (mean, tilt tolerance.Bracket, err error) {
	for i, read := range [...]tolerance.Bracket{p.First, p.Second} {
		_, lo := read.Lower()
		_, hi := read.Upper()
		if !read.InRange() || lo == tolerance.Absent || hi == tolerance.Absent {
			which := [...]string{"first", "second"}[i]
			return mean, tilt, &InputError{which + " point of " + clipped(p.Where), read.String(), "a reading with both ends, one of two points above the pin's axis"}
		}
	}
	mean, tilt = DeckProtrusion(p.First, p.Second), DeckTilt(p.First, p.Second)
	if !mean.InRange() || !tilt.InRange() {
		return mean, tilt, &InputError{"readings of " + clipped(p.Where), p.First.String() + " and " + p.Second.String(), "within the range of a length"}
	}
	return mean, tilt, nil
}

// clipped is at most 64 bytes of a name.
func clipped(name string) string {
	if len(name) > 64 {
		return strings.ToValidUTF8(name[:64], "") + "…"
	}
	return name
}
