package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// middleOf is about where a size must be by its limits.
func middleOf(s tolerance.Spec) (units.Length, bool) {
	for _, b := range [...]tolerance.Band{s.New, s.Wear} {
		lo, loEnd := b.Lower()
		hi, hiEnd := b.Upper()
		switch {
		case loEnd != tolerance.Absent && lo > 0:
			return lo, true
		case hiEnd != tolerance.Absent && hi > 0:
			return hi, true
		}
	}
	return 0, false
}

// oddSize reports a size that is a fifth or more off from where it must be
// about: no wear does that, so a decimal point, a unit or a digit is wrong. The
// text says which, as far as it has a name.
func oddSize(size tolerance.Bracket, near units.Length) (text string, odd bool) {
	lo, _ := size.Lower()
	hi, _ := size.Upper()
	if fifth := near / 5; hi > near-fifth && lo < near+fifth {
		return "", false
	}
	text = size.String() + ", where about " + near.String() + " is expected"
	about := tolerance.Exactly(near)
	if found, err := proofread.CheckBrackets(about, about, about, size); err == nil && len(found.Odd) > 0 {
		text += ": " + found.Odd[0].Causes[0].String()
	}
	return text, true
}
