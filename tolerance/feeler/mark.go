package feeler

import (
	"sort"

	"github.com/tenthou/tenthou/units"
)

// Find is the blade that carries a mark, given with its unit. A blade is found
// by exact equality with any of its marks or, failing that, with its
// thickness; never by rounding. Otherwise it fails with a [MarkError], which
// offers the blades that may have been meant.
func (s Set) Find(mark string) (Blade, error) {
	i, err := s.Index(mark)
	return s.At(i), err
}

// Index is the place of the blade that [Set.Find] finds, for [Set.At] and
// [Set.TrialAt]; -1 where it fails.
func (s Set) Index(mark string) (int, error) {
	w, err := units.ParseWritten[units.Length](mark)
	if err != nil {
		return -1, &MarkError{Mark: clipText(mark), Err: err}
	}
	if i := s.data().index(w.Value); i >= 0 {
		return i, nil
	}
	return -1, s.noMark(markText(w), w.Value, w.Step())
}

// FindLength is [Set.Find] for a length that is at hand as such.
func (s Set) FindLength(l units.Length) (Blade, error) {
	if i := s.data().index(l); i >= 0 {
		return s.At(i), nil
	}
	return Blade{}, s.noMark(lengthText(l), l, 0)
}

func (d *setData) index(l units.Length) int {
	for i := range d.blades {
		if d.blades[i].Carries(l) {
			return i
		}
	}
	for i, t := range d.thick {
		if t == l {
			return i
		}
	}
	return -1
}

// noMark gathers what may have been meant by a size written to a step.
func (s Set) noMark(text string, l, step units.Length) error {
	e := &MarkError{Mark: clipText(text)}
	d := s.data()
	if l <= 0 || l > 100*MaxThickness {
		return e
	}
	for i := range d.blades {
		if d.blades[i].slips(l, step) && (i == 0 || d.thick[i] != d.thick[i-1]) {
			e.Decimal = append(e.Decimal, d.blades[i])
		}
	}
	above := sort.Search(len(d.thick), func(i int) bool { return d.thick[i] > l })
	if above > 0 {
		e.Nearest = append(e.Nearest, d.blades[above-1])
	}
	if above < len(d.thick) {
		e.Nearest = append(e.Nearest, d.blades[above])
	}
	return e
}

// slips reports whether l, written to a step, is the blade's thickness or one
// of its marks with the point a place to the left or the right.
func (b *Blade) slips(l, step units.Length) bool {
	if placeAway(l, step, b.Thickness(), 0) {
		return true
	}
	for _, m := range b.marks[:b.n] {
		if placeAway(l, step, m.Value, m.Step()) {
			return true
		}
	}
	return false
}

// placeAway reports whether a is ten times b or a tenth of it, but for what the
// one written more coarsely rounds away. Rounded to one figure most sizes are
// ten times some blade, so more than 2 % off is no slip of the point.
func placeAway(a, stepA, b, stepB units.Length) bool {
	return tenfold(a, stepA, b, stepB) || tenfold(b, stepB, a, stepA)
}

func tenfold(large, stepL, small, stepS units.Length) bool {
	off := (large - 10*small).Abs()
	return 2*off <= max(stepL, 10*stepS) && 50*off <= 10*small
}
