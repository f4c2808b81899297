package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ringMost is more than any ring or bore measures, and keeps sums in range.
const ringMost = 10 * units.Metre

// ringBore refuses what is no bore's diameter, and gives its ends.
func ringBore(field string, d tolerance.Bracket) (ends [2]units.Length, err error) {
	if err := size(field, d); err != nil {
		return ends, err
	}
	lo, _ := d.Lower()
	hi, end := d.Upper()
	if end == tolerance.Absent || hi > ringMost || lo == 0 {
		return ends, &InputError{field, d.String(), "measured, above 0 mm and at most 10 m"}
	}
	return [2]units.Length{lo, hi}, nil
}

// ringGapRead refuses what no end gap can be: less than nothing, or as long as
// the way round the bore, which leaves no ring.
func ringGapRead(field string, gap, bore tolerance.Bracket) error {
	lo, end := gap.Lower()
	switch {
	case !gap.InRange():
		return &InputError{field, gap.String(), "within the range of a length"}
	case end == tolerance.Absent || lo < 0:
		return &InputError{field, gap.String(), "0 mm or more: below zero the ends would overlap, an interference"}
	}
	most, _ := bore.Upper()
	round := most.ScalePi(1, 1)
	if hi, hiEnd := gap.Upper(); lo >= round || hiEnd != tolerance.Absent && hi >= round {
		return &InputError{field, gap.String(), "shorter than the way round the bore, " + round.Text(units.InMillimetres, 3)}
	}
	return nil
}

// ringThickness is a ring's radial thickness, or where it was not measured a
// twentieth of the bore.
func ringThickness(t units.Length, bore [2]units.Length) (units.Length, error) {
	switch {
	case t == 0:
		return bore[1].Scale(1, 20), nil
	case t < 0 || t > bore[0]/4:
		return 0, &InputError{"ring thickness", t.String(), "above 0 mm and a small part of the bore: it is the radial one, not the height"}
	}
	return t, nil
}
