package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What machining does to a build: each gives the build after it, whose
// [Build.Compression] is then what comes of it. A build is a plain value, so
// that another gasket or piston is simply put in.

// Rebored is the build with another bore. The deck's share and the ring
// land's crevice grow with it; chamber and gasket stay, and so does the crown:
// put that of the new piston in where it differs. Where the gasket's bore is
// then below the cylinder's, Compression says so.
func (b Build) Rebored(bore tolerance.Bracket) (Build, error) {
	if err := aboveZero("bore", bore); err != nil {
		return b, err
	}
	b.Bore = bore
	return b, nil
}

// HeadSkimmed is the build with so much taken off the head's face: the chamber
// loses its open area at the face (not the bore's) times the cut. A chamber
// that narrows above its face loses a little less, so that the ratio is at
// most what this gives: fill the chamber again after the cut. It fails with an
// [InputError] where the open area isn't known, and where the cut may take
// more than the chamber holds.
func (b Build) HeadSkimmed(off tolerance.Bracket) (Build, error) {
	area, err := b.openArea()
	if err != nil {
		return b, err
	}
	if err := checkCut(off); err != nil {
		return b, err
	}
	// 10 fL are 10¹⁹ cubic picometres, and 1 mm is 10⁹ pm.
	after := b.Chamber.Sub(quantaAs[units.Volume](off).Scale(int64(area), 10_000_000_000))
	if lo, _ := after.Lower(); !after.InRange() || lo < 0 {
		return b, &InputError{"skim", off.String(), "less than the chamber's volume " + b.Chamber.Text(units.InCubicCentimetres, 2) + " over its open area"}
	}
	b.Chamber = after
	return b, nil
}

// BlockSkimmed is the build with so much taken off the block face: the crown
// then stands so much higher.
func (b Build) BlockSkimmed(off tolerance.Bracket) (Build, error) {
	if err := checkCut(off); err != nil {
		return b, err
	}
	if b.Deck.IsZero() {
		return b, &InputError{"deck", b.Deck.String(), "measured, and below the block face, above it or level with it"}
	}
	b.Deck.below = b.Deck.below.Sub(off)
	return b, nil
}

// checkCut refuses what can't be taken off.
func checkCut(off tolerance.Bracket) error {
	if off.IsZero() {
		return &InputError{"skim", "(not given)", "0 mm or more"}
	}
	return notNegative("skim", off)
}
