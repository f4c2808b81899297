package valvetrain

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// seriesMost is the most sizes that a series has.
const seriesMost = 512

// NewShimSeries is a series of sizes from one to another, both included, by even
// steps, each of them within ± error of its mark: 0 takes the marks for exact,
// which new shims seldom are. It fails with an [InputError] where the steps don't
// come out even, or make more than 512 sizes.
func NewShimSeries(from, to, step, err units.Length) ([]ShimPiece, error) {
	switch {
	case from <= 0 || to > shimThickest || to < from:
		return nil, &InputError{"shim series", from.String() + " to " + to.String(), "from above 0 mm to at most 50 mm, the thinner size first"}
	case step <= 0 || (to-from)%step != 0:
		return nil, &InputError{"step of the shim series", step.String(), "above 0 mm and even from " + from.String() + " to " + to.String()}
	case int64((to-from)/step) >= seriesMost:
		return nil, &InputError{"step of the shim series", step.String(), "coarse enough for at most 512 sizes"}
	case err < 0 || err >= from:
		return nil, &InputError{"error of the shim series", err.String(), "0 mm or more, and less than the thinnest size"}
	}
	var series []ShimPiece
	for at := from; at <= to; at += step {
		b, _ := tolerance.PlusMinus(at, err)
		series = append(series, ShimPiece{Name: at.String(), Thickness: b})
	}
	return series, nil
}

// shimTwiceMiddle is the sum of a bracket's ends, twice its middle.
func shimTwiceMiddle(b tolerance.Bracket) units.Length {
	lo, hi := inputEnds(b)
	return lo + hi
}

// NearestShim is the place in a list of the shim whose middle is nearest to the
// one wanted; of two as near, the thinner, since a clearance that is a little
// large taps where one that is too small burns the valve (common practice). It
// fails with an [InputError] for an empty list and for what is no shim.
//
// It asks no band: [PlanShims] takes a shim only if the whole bracket lands in it.
func NearestShim(wanted units.Length, sizes []ShimPiece) (int, error) {
	if err := inputSize("wanted shim", wanted); err != nil {
		return 0, err
	}
	if len(sizes) == 0 {
		return 0, &InputError{"shim sizes", "none", "one or more"}
	}
	best, bestOff := 0, units.Length(0)
	for i, s := range sizes {
		if err := shimPiece(shimName("size", i, s), s.Thickness); err != nil {
			return 0, err
		}
		off := shimTwiceMiddle(s.Thickness) - 2*wanted
		if i == 0 || off.Abs() < bestOff.Abs() || off.Abs() == bestOff.Abs() && off < bestOff {
			best, bestOff = i, off
		}
	}
	return best, nil
}

// A ShimGap is a step that a series leaves out.
type ShimGap struct {
	Below   ShimPiece `json:"below"`   // the size under the gap
	Above   ShimPiece `json:"above"`   // the size over it
	Missing int       `json:"missing"` // how many sizes would fill it at the series' own step
}

// ShimGaps are the places where a series, in any order, makes a longer step than
// its usual one, which is the one that it makes most often (of two as often, the
// shorter). It fails with an [InputError] for what is no shim and for two sizes of
// one thickness.
func ShimGaps(series []ShimPiece) ([]ShimGap, error) {
	sorted := slices.Clone(series)
	for i, s := range sorted {
		if err := shimPiece(shimName("size", i, s), s.Thickness); err != nil {
			return nil, err
		}
	}
	slices.SortFunc(sorted, func(a, b ShimPiece) int {
		return cmp.Compare(shimTwiceMiddle(a.Thickness), shimTwiceMiddle(b.Thickness))
	})
	step := func(i int) units.Length {
		return shimTwiceMiddle(sorted[i+1].Thickness) - shimTwiceMiddle(sorted[i].Thickness)
	}
	often, usual := map[units.Length]int{}, units.Length(0)
	for i := range len(sorted) - 1 {
		d := step(i)
		if d == 0 {
			return nil, &InputError{shimName("size", i, sorted[i]), sorted[i].Thickness.String(), "in the series only once"}
		}
		often[d]++
		if n := often[d]; n > often[usual] || n == often[usual] && d < usual {
			usual = d
		}
	}
	var gaps []ShimGap
	for i := range len(sorted) - 1 {
		if d := step(i); d > usual {
			gaps = append(gaps, ShimGap{sorted[i], sorted[i+1], int((d - units.Picometre) / usual)})
		}
	}
	return gaps, nil
}

// String is the gap in words.
func (g ShimGap) String() string {
	sizes := "size"
	if g.Missing != 1 {
		sizes = "sizes"
	}
	return fmt.Sprintf("between %s and %s, where %d %s would stand", inputText(g.Below.Name), inputText(g.Above.Name), g.Missing, sizes)
}

// shimName is what an error calls a shim.
func shimName(kind string, i int, p ShimPiece) string {
	if p.Name != "" {
		return "shim " + inputText(p.Name)
	}
	return fmt.Sprint("shim ", kind, " ", i+1)
}
