package limits

import (
	"cmp"
	"iter"
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// All goes through the limits of every class of a feature that the standard
// has at a nominal size, by letter and then by grade. There are none for a
// size outside the tables.
func All(nominal units.Length, f Feature) iter.Seq[Limits] {
	return func(yield func(Limits) bool) {
		if f != Hole && f != Shaft {
			return
		}
		step, ok := stepOf(nominal)
		if !ok {
			return
		}
		for l := range uint8(letters) {
			for g := IT01; g <= IT18; g++ {
				c := Class{f, l, g}
				lower, upper, ok := c.deviations(step, nominal <= small)
				if ok && nominal+length(lower) > 0 && !yield(Limits{nominal, lower, upper, c}) {
					return
				}
			}
		}
	}
}

// collect gathers the limits that are wanted, in the order given.
func collect(nominal units.Length, f Feature, wanted func(Limits) bool, order func(a, b Limits) int) ([]Limits, error) {
	if _, ok := stepOf(nominal); !ok {
		return nil, &SizeError{Nominal: nominal}
	}
	var found []Limits
	for l := range All(nominal, f) {
		if wanted(l) {
			found = append(found, l)
		}
	}
	slices.SortStableFunc(found, order)
	return found, nil
}

func finestFirst(a, b Limits) int   { return cmp.Compare(a.Tolerance(), b.Tolerance()) }
func coarsestFirst(a, b Limits) int { return finestFirst(b, a) }

// Holding gives the classes that a measured part of a nominal size keeps for
// certain: all of the bracket lies within their limits. The finest come first,
// those of one width by letter. A bracket without one of its ends is kept by
// none; one with neither, or out of range, is a [BandError], and a nominal size
// outside the tables a [SizeError].
func Holding(nominal units.Length, f Feature, measured tolerance.Bracket) ([]Limits, error) {
	if measured.IsZero() {
		return nil, &BandError{What: "measured size", Kind: tolerance.ErrNoReading}
	}
	if err := check(tolerance.BandFrom(measured), "measured size"); err != nil {
		return nil, err
	}
	return collect(nominal, f, func(l Limits) bool { return l.Band().Judge(measured) == tolerance.Within }, finestFirst)
}

// Within gives the classes whose limits lie within a band, such as one of a
// manual: parts made to them are always allowed by it. The coarsest, which are
// the easiest to make, come first, those of one width by letter. A band that asks
// nothing, or is out of range, is a [BandError], and a nominal size outside the
// tables a [SizeError].
func Within(nominal units.Length, f Feature, allowed tolerance.Band) ([]Limits, error) {
	if err := check(allowed, "allowed sizes"); err != nil {
		return nil, err
	}
	return collect(nominal, f, func(l Limits) bool { return l.Band().Interval().Within(allowed.Interval()) }, coarsestFirst)
}

func check(b tolerance.Band, what string) error {
	switch {
	case b.IsZero():
		return &BandError{What: what, Kind: tolerance.ErrNoLimit}
	case !b.InRange():
		return &BandError{What: what, Kind: tolerance.ErrRange}
	}
	return nil
}

// Named gives the classes whose limits are just those of a band: a manual's
// 25.000–25.021 mm is 25 H7. Several classes may share their limits, as j6 and
// js6 over 250 up to 315 mm do. The errors are those of [Within].
func Named(nominal units.Length, f Feature, band tolerance.Band) ([]Limits, error) {
	if err := check(band, "band"); err != nil {
		return nil, err
	}
	return collect(nominal, f, func(l Limits) bool { return l.Band() == band }, finestFirst)
}

// Mating gives the classes of the other part whose fit with l always keeps a
// clearance within a band, with the coarsest first and those of one width by
// letter: the shafts for a hole and the holes for a shaft. Interference is a
// clearance below zero. A band that asks nothing, or is out of range, is a
// [BandError]; the zero Limits are a [ClassError].
func Mating(l Limits, clearance tolerance.Band) ([]Limits, error) {
	if err := check(clearance, "clearance"); err != nil {
		return nil, err
	}
	other := Shaft
	switch l.class.feature {
	case Hole:
	case Shaft:
		other = Hole
	default:
		return nil, &ClassError{Nominal: l.nominal}
	}
	return collect(l.nominal, other, func(o Limits) bool {
		fit := Fit{l, o}
		if other == Hole {
			fit = Fit{o, l}
		}
		return fit.Clearance().Within(clearance.Interval())
	}, coarsestFirst)
}
