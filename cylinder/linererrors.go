package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// linerError names a reading that can't be; a caller's own names may be long.
func linerError(field, value, want string) error {
	return &InputError{Field: clip(field), Value: value, Want: want}
}

// linerSize refuses a size that is not above zero.
func linerSize(field string, i tolerance.Bracket) error {
	if !i.InRange() {
		return linerError(field, i.String(), "within the range of a length")
	}
	if lo, end := i.Lower(); end == tolerance.Absent || lo < 0 || lo == 0 && end == tolerance.Closed {
		return linerError(field, i.String(), "above 0 mm")
	}
	return nil
}

// linerRead refuses a reading of which nothing is known.
func linerRead(field string, i tolerance.Bracket) error {
	if !i.InRange() || i.IsZero() {
		return linerError(field, i.String(), "a reading within the range of a length")
	}
	return nil
}

// linerAlike refuses the one of several sizes of one kind that a factor, of
// another unit or a decimal place, sets apart from the rest, and else one that
// is half as large again as the first, or as much smaller.
func linerAlike(names []string, sizes []tolerance.Bracket) error {
	if err := linerFactor(names, sizes); err != nil {
		return err
	}
	for i, s := range sizes {
		if linerBeyond(s, sizes[0]) || linerBeyond(sizes[0], s) {
			return linerError(names[i], s.String(), "near "+clip(names[0])+", "+sizes[0].String()+": is one of them in another unit?")
		}
	}
	return nil
}

// linerBeyond reports whether a is for sure half as large again as b.
func linerBeyond(a, b tolerance.Bracket) bool {
	lo, _ := a.Lower()
	hi, end := b.Upper()
	return end != tolerance.Absent && lo > hi.Scale(3, 2)
}

// linerFactor names the factor, of three sizes or more that have both ends.
func linerFactor(names []string, sizes []tolerance.Bracket) error {
	var both []tolerance.Bracket
	var at []int
	for i, s := range sizes {
		if _, ok := bothEnds(s); ok {
			both, at = append(both, s), append(at, i)
		}
	}
	if len(both) < 3 {
		return nil
	}
	found, err := proofread.CheckBrackets(both...)
	if err != nil {
		return err
	}
	for _, odd := range found.Odd {
		if c := odd.Causes[0]; c.Den != 0 {
			return linerError(names[at[odd.Index]], both[odd.Index].String(), "like its neighbours, near "+found.Middle.String()+": "+c.String())
		}
	}
	return nil
}

// linerAssess is [tolerance.Assess], and says how an undecided finding would be
// settled.
func linerAssess(measure, where string, spec tolerance.Spec, stations ...tolerance.Bracket) (tolerance.Finding, error) {
	f, err := tolerance.Assess(measure, where, spec, stations...)
	if f.Settle != "" && len(f.Unsettled) > 0 {
		f.Settle += ": measure again with a finer instrument"
	}
	return f, err
}

// linerNumber writes a plain number in as few digits as tell it.
func linerNumber(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// linerMM is a length in millimetres for a formula over Real.
func linerMM(l units.Length) tolerance.Float { return tolerance.Float(l.Float(units.InMillimetres)) }

// linerPicometres is a whole number of picometres, out of range where x is.
func linerPicometres(x float64) units.Length {
	if !(x >= -1<<60 && x <= 1<<60) {
		return units.OutOfRange[units.Length]()
	}
	return units.Length(x)
}
