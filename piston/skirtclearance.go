package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// SkirtClearance is the clearance of a piston in its bore, on the diameter: the
// bore less the skirt across the thrust faces, at the height the manual names.
// Below zero it is an interference: the piston does not go in.
func SkirtClearance[N tolerance.Number[N]](bore, skirt N) N { return bore.Sub(skirt) }

// SkirtSize is the skirt that has a clearance in a bore: the inverse of
// [SkirtClearance].
func SkirtSize[N tolerance.Number[N]](bore, clearance N) N { return bore.Sub(clearance) }

// SkirtBore is the bore in which a skirt has a clearance: the inverse of
// [SkirtClearance] for the bore.
func SkirtBore[N tolerance.Number[N]](skirt, clearance N) N { return skirt.Add(clearance) }

// SkirtClearanceWorn is the clearance that wear makes of a new one: both parts'
// wear counts, on the diameter.
func SkirtClearanceWorn[N tolerance.Number[N]](clearance, boreWear, skirtWear N) N {
	return clearance.Add(boreWear).Add(skirtWear)
}

// MeasureSkirtClearance is [SkirtClearance] from micrometer readings, checked:
// the sizes must be above zero and the piston must go in, so an interference
// is an [InputError] that says how large it is. The brackets hold each
// instrument's error.
func MeasureSkirtClearance(bore, skirt tolerance.Bracket) (tolerance.Bracket, error) {
	if err := skirtPair("bore", bore, "skirt", skirt); err != nil {
		return tolerance.Bracket{}, err
	}
	return room("skirt", skirt, "bore", bore)
}

// SkirtExtremes are the least and the greatest clearance of a piston whose bore
// and skirt were read at several places: the least bore less the greatest
// skirt, where it may seize, and the greatest bore less the least skirt, where
// it slaps. Below zero they are interferences. It fails with an [InputError]
// where nothing was read or a size can't be.
func SkirtExtremes(bores, skirts []tolerance.Bracket) (least, greatest tolerance.Bracket, err error) {
	switch {
	case len(bores) == 0:
		return least, greatest, &InputError{"bore", "(none)", "read at one place or more"}
	case len(skirts) == 0:
		return least, greatest, &InputError{"skirt", "(none)", "read at one place or more"}
	}
	bl, bg, sl, sg := bores[0], bores[0], skirts[0], skirts[0]
	if len(bores) > 1 {
		bl, bg = tolerance.Extremes(bores...)
	}
	if len(skirts) > 1 {
		sl, sg = tolerance.Extremes(skirts...)
	}
	if err := skirtPair("bore", bl, "skirt", sg); err != nil {
		return least, greatest, err
	}
	if err := skirtPair("bore", bg, "skirt", sl); err != nil {
		return least, greatest, err
	}
	return SkirtClearance(bl, sg), SkirtClearance(bg, sl), nil
}

// SkirtClearances appends the clearance of each piston in its own bore to dst:
// the first in the first, and so on. Lists of different lengths are refused,
// and so is a piston that does not go in, by its number from 1.
func SkirtClearances(dst, bores, skirts []tolerance.Bracket) ([]tolerance.Bracket, error) {
	if len(bores) != len(skirts) {
		return dst, &InputError{"skirts", strconv.Itoa(len(skirts)), "as many as there are bores, " + strconv.Itoa(len(bores))}
	}
	whole := len(dst)
	for i := range skirts {
		c, err := MeasureSkirtClearance(bores[i], skirts[i])
		if err != nil {
			if e, ok := err.(*InputError); ok {
				e.Field = "piston " + strconv.Itoa(i+1) + ", " + e.Field
			}
			return dst[:whole], err
		}
		dst = append(dst, c)
	}
	return dst, nil
}

// room is what an inner part has in an outer one that it is known to go into.
func room(innerName string, inner tolerance.Bracket, outerName string, outer tolerance.Bracket) (tolerance.Bracket, error) {
	c := outer.Sub(inner)
	if hi, end := c.Upper(); end != tolerance.Absent && (hi < 0 || hi == 0 && end == tolerance.Open) {
		return tolerance.Bracket{}, &InputError{innerName, inner.String(),
			"at most as large as the " + outerName + ", " + outer.String() + ": an interference of " + inner.Sub(outer).String()}
	}
	// A part that goes in has no less than nothing.
	if lo, end := c.Lower(); end != tolerance.Absent && lo < 0 {
		hi, hiEnd := c.Upper()
		c, _ = tolerance.NewInterval(units.Length(0), tolerance.Closed, hi, hiEnd)
	}
	return c, nil
}

// skirtPair refuses an outer and an inner size that are not above zero, or so
// far apart that one of them must be in another unit.
func skirtPair(outerName string, outer tolerance.Bracket, innerName string, inner tolerance.Bracket) error {
	o, outerOK := positive(outer)
	i, innerOK := positive(inner)
	switch { // size says what is wrong; it allocates, so it isn't asked before
	case !outerOK:
		return size(outerName, outer)
	case !innerOK:
		return size(innerName, inner)
	case o > i+i/5 || i > o+o/5:
		return &InputError{innerName, inner.String(), "near the " + outerName + ", " + outer.String() + ": one of them is in another unit, or a digit slipped"}
	}
	return nil
}

// positive is a bracket's lower end, where that makes it a size.
func positive(i tolerance.Bracket) (lo units.Length, ok bool) {
	lo, end := i.Lower()
	return lo, end != tolerance.Absent && i.InRange() && (lo > 0 || lo == 0 && end == tolerance.Open)
}
