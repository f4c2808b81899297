package feeler

import (
	"fmt"
	"math/bits"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

const (
	// MaxBlades is the most blades that a set holds.
	MaxBlades = 256
	nameMax   = 200 // bytes
)

// A Set is the blades at hand, by thickness. It doesn't change once made, and
// copies share it. The zero Set has no blades. Ask [Set.Equal], not ==.
type Set struct{ d *setData }

type setData struct {
	name, source string
	blades       []Blade
	trials       []Trial        // one of each, not made: its first mark, thickness and error
	thick        []units.Length // strictly what blades[i].Thickness() gives
	sums         []units.Length // sums[i] is that of the i thinnest
	grid         units.Length   // every thickness is a whole number of these
}

// NewSet makes a set of blades. The name says which set it is, the source
// where its sizes come from. Two blades may be alike; one mark on blades of
// different thickness is a [DuplicateError], anything else an [InputError].
func NewSet(name, source string, blades ...Blade) (Set, error) {
	d := &setData{name: strings.TrimSpace(name), source: strings.TrimSpace(source)}
	if err := checkName("name", d.name); err != nil {
		return Set{}, err
	}
	if err := checkName("source", d.source); err != nil {
		return Set{}, err
	}
	switch {
	case len(blades) == 0:
		return Set{}, inputError("set", "blades", "", ErrEmpty, "at least one", nil)
	case len(blades) > MaxBlades:
		return Set{}, inputError("set", "blades", strconv.Itoa(len(blades)), ErrSize, "at most "+strconv.Itoa(MaxBlades), nil)
	}
	for i := range blades {
		if err := blades[i].check(); err != nil {
			err.What, err.Field = "set", strings.TrimSuffix("blade "+strconv.Itoa(i+1)+", "+err.Field, ", ")
			return Set{}, err
		}
	}
	d.blades = slices.Clone(blades)
	slices.SortStableFunc(d.blades, compareBlades)
	if err := d.checkMarks(); err != nil {
		return Set{}, err
	}
	n := len(blades)
	d.trials, d.thick, d.sums = make([]Trial, n), make([]units.Length, n), make([]units.Length, n+1)
	for i, b := range d.blades {
		d.thick[i] = b.Thickness()
		d.trials[i] = Trial{Blade: markText(b.marks[0]), Thickness: d.thick[i], Error: b.Error}
		d.sums[i+1] = d.sums[i] + d.thick[i]
		d.grid = gcd(d.grid, d.thick[i])
	}
	return Set{d}, nil
}

// compareBlades puts the thinner first, of alike ones the one known better.
func compareBlades(a, b Blade) int {
	if c := a.Thickness().Compare(b.Thickness()); c != 0 {
		return c
	}
	if c := a.Error.Compare(b.Error); c != 0 {
		return c
	}
	return strings.Compare(a.String(), b.String())
}

func gcd(a, b units.Length) units.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func checkName(field, s string) *InputError {
	bad := strings.IndexFunc(s, func(r rune) bool { return r == utf8.RuneError || unicode.IsControl(r) })
	if bad >= 0 || len(s) > nameMax {
		return inputError("set", field, s, ErrSyntax, "one line of at most "+strconv.Itoa(nameMax)+" bytes of UTF-8", nil)
	}
	return nil
}

func (d *setData) checkMarks() error {
	seen := make(map[units.Length]int, 2*len(d.blades))
	for i := range d.blades {
		b := &d.blades[i]
		for _, m := range b.marks[:b.n] {
			if k, ok := seen[m.Value]; ok && d.blades[k].Thickness() != b.Thickness() {
				return &DuplicateError{Mark: m, First: d.blades[k], Second: *b}
			}
			seen[m.Value] = i
		}
	}
	return nil
}

// data is what the set holds; for the zero Set, nothing.
func (s Set) data() *setData {
	if s.d == nil {
		return &setData{}
	}
	return s.d
}

// Name is the set's name.
func (s Set) Name() string { return s.data().name }

// Source says where the set's sizes come from.
func (s Set) Source() string { return s.data().source }

// Len is the number of blades.
func (s Set) Len() int { return len(s.data().blades) }

// At is blade i, the thinnest being 0. Where there is none it is the zero
// Blade.
func (s Set) At(i int) Blade {
	if d := s.data(); uint(i) < uint(len(d.blades)) {
		return d.blades[i]
	}
	return Blade{}
}

// Blades are all blades, the thinnest first.
func (s Set) Blades() []Blade { return slices.Clone(s.data().blades) }

// Equal reports whether two sets have the same name, source and blades.
func (s Set) Equal(o Set) bool {
	a, b := s.data(), o.data()
	return a.name == b.name && a.source == b.source && slices.Equal(a.blades, b.blades)
}

// String is the set's name with its number of blades and its ends:
// "imperial 26: 26 blades, .0015 in to .025 in". [Set.Text] is all of it.
func (s Set) String() string {
	d := s.data()
	if len(d.blades) == 0 {
		return "no blades"
	}
	name := d.name
	if name != "" {
		name += ": "
	}
	return fmt.Sprintf("%s%d blades, %s to %s", name, len(d.blades), d.trials[0].Blade, d.trials[len(d.trials)-1].Blade)
}

// title names the set in a sentence.
func (s Set) title() string {
	if name := s.Name(); name != "" {
		return name
	}
	return "this set"
}

// Measured is the set with the thickness of one blade by micrometer in place
// of its mark, known to ± e. The mark stays what it is looked up by. It fails
// with a [MarkError] where no blade carries the mark, with a [DuplicateError]
// where another blade carries it too (mark the two apart), and with an
// [InputError] where the thickness is more than half off the mark.
func (s Set) Measured(mark string, thickness, e units.Length) (Set, error) {
	i, err := s.Index(mark)
	if err != nil {
		return Set{}, err
	}
	d := s.data()
	if thickness <= 0 {
		return Set{}, inputError("set", "measured thickness", lengthText(thickness), ErrThickness, "above 0", nil)
	}
	blades := slices.Clone(d.blades)
	blades[i].Measured, blades[i].Error = thickness, e
	if err := blades[i].check(); err != nil {
		err.What, err.Field = "set", "blade "+d.trials[i].Blade+", "+err.Field
		return Set{}, err
	}
	return NewSet(d.name, d.source, blades...)
}

// An ErrorClass is how far blades of up to a thickness may be from it: a row of
// the maker's or a standard's table, or of one's own measurements. No table is
// built in.
type ErrorClass struct {
	UpTo  units.Length `json:"upTo"`  // the greatest marked thickness it covers
	Error units.Length `json:"error"` // ±
}

// WithErrors is the set with each blade's error taken from the first class
// that covers its first mark. A blade that was measured keeps its own error.
// The classes come in order of thickness; it fails with an [InputError] where
// they don't or where none covers a blade.
func (s Set) WithErrors(classes ...ErrorClass) (Set, error) {
	for i, c := range classes {
		if i > 0 && c.UpTo <= classes[i-1].UpTo {
			return Set{}, inputError("set", "error class "+strconv.Itoa(i+1), lengthText(c.UpTo), ErrClass, "each class covers thicker blades than the one before", nil)
		}
	}
	d := s.data()
	blades := slices.Clone(d.blades)
	for i := range blades {
		b := &blades[i]
		if b.Measured != 0 {
			continue
		}
		k := slices.IndexFunc(classes, func(c ErrorClass) bool { return b.marks[0].Value <= c.UpTo })
		if k < 0 {
			return Set{}, inputError("set", "blade", d.trials[i].Blade, ErrClass, "the classes end before it", nil)
		}
		b.Error = classes[k].Error
	}
	return NewSet(d.name, d.source, blades...)
}

// rootUp is the square root of v, rounded up.
func rootUp(v uint64) units.Length {
	if v == 0 {
		return 0
	}
	r := uint64(1) << ((bits.Len64(v) + 1) / 2) // not below the root
	for {
		next := (r + v/r) / 2
		if next >= r {
			break
		}
		r = next
	}
	// r is the root rounded down.
	if r*r < v {
		r++
	}
	return units.Length(r)
}
