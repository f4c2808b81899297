package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// MatchMost is how many bores, pistons or rods are paired, and how many parts
// a set of masses has, at the most.
const MatchMost = 1000

// checkCounts refuses lists that can't be paired one to one.
func checkCounts(first string, a int, second string, b int) error {
	switch {
	case a == 0 || b == 0:
		what := first
		if a > 0 {
			what = second
		}
		return &InputError{"list of " + what + "s", "of none", "one " + what + " at least"}
	case a != b:
		return &InputError{"list of " + second + "s", "of " + strconv.Itoa(b), "as long as that of the " + first + "s, " + strconv.Itoa(a)}
	case a > MatchMost:
		return &InputError{"list of " + first + "s", "of " + strconv.Itoa(a), strconv.Itoa(MatchMost) + " at the most"}
	}
	return nil
}

// checkMatch refuses what can't be paired.
func checkMatch(bores, pistons []MatchPart, wanted selective.Wanted) error {
	if err := checkCounts("bore", len(bores), "piston", len(pistons)); err != nil {
		return err
	}
	if err := checkSizes("bore", bores); err != nil {
		return err
	}
	if err := checkSizes("piston", pistons); err != nil {
		return err
	}
	if wanted.Band.IsZero() || !wanted.Band.InRange() {
		return &InputError{"wanted clearance", wanted.Band.String(), "a band with a limit at least"}
	}
	if wanted.Aim.Abs() > matchSizeMost || !wanted.Band.Allows(wanted.Aim) {
		return &InputError{"wanted clearance", wanted.Aim.String(), "in its band, " + wanted.Band.String() + ", and within ±" + matchSizeMost.String()}
	}
	return nil
}

func checkSizes(kind string, parts []MatchPart) error {
	for i := range parts {
		p := &parts[i]
		lo, loEnd := p.Size.Lower()
		hi, hiEnd := p.Size.Upper()
		switch {
		case !p.Size.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent:
			return &InputError{kind + " " + clipped(p.Where), p.Size.String(), "a diameter with both ends"}
		case lo <= 0:
			return &InputError{kind + " " + clipped(p.Where), p.Size.String(), "above 0 mm"}
		case hi > matchSizeMost:
			return &InputError{kind + " " + clipped(p.Where), p.Size.String(), "below " + matchSizeMost.String()}
		}
		for j := range i {
			if parts[j].Where == p.Where {
				return &InputError{kind, clip([]byte(p.Where)), "named once"}
			}
		}
	}
	return nil
}

// matchSizeMost is a diameter beyond any engine's, which keeps sums of
// deviations in range.
const matchSizeMost = 100 * 1000 * units.Millimetre
