package feeler

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

const (
	// MaxMarks is the most marks that one blade carries.
	MaxMarks = 4
	// MaxThickness is the greatest thickness of a blade.
	MaxThickness = 25 * units.Millimetre
	// MaxBladeError is the greatest error of a blade's thickness.
	MaxBladeError = units.Millimetre
)

// A Mark is a size as it stands on a blade.
type Mark = units.Written[units.Length]

// A Blade is one leaf of a feeler gauge. It may carry several marks, which are
// one thickness: the first is the size it is made to, so that the blade marked
// .003 in / 0.076 mm is 0.0762 mm thick. Make one with [NewBlade] or
// [ParseBlade]; the zero Blade is none. Blades compare with ==.
type Blade struct {
	// Measured is the thickness by micrometer, 0 where the mark is relied on.
	Measured units.Length
	// Error bounds the thickness's error: it lies within ± this. 0 takes the
	// thickness for exact.
	Error units.Length

	marks [MaxMarks]Mark
	n     uint8
}

// NewBlade makes a blade from its marks, the size it is made to first:
//
//	NewBlade(".0025 in", "0.064 mm")
//
// Each mark needs its unit. A further mark must agree with the first to one
// step of its last place, or it is taken for a slip (0.64 mm for 0.064 mm).
// The errors are [InputError]s.
func NewBlade(marks ...string) (Blade, error) {
	var b Blade
	if len(marks) > MaxMarks {
		return Blade{}, inputError("blade", "marks", strconv.Itoa(len(marks)), ErrSize, "at most "+strconv.Itoa(MaxMarks), nil)
	}
	for i, s := range marks {
		w, err := units.ParseWritten[units.Length](s)
		if err != nil {
			return Blade{}, inputError("blade", markField(i), s, ErrSyntax, "a size with its unit", err)
		}
		b.marks[i] = w
		b.n++
	}
	if err := b.check(); err != nil {
		return Blade{}, err
	}
	return b, nil
}

// MustBlade is [NewBlade] for constants and tables; it panics on an error.
func MustBlade(marks ...string) Blade {
	b, err := NewBlade(marks...)
	if err != nil {
		panic(err)
	}
	return b
}

const bladeForm = `write it as ".0025 in / 0.064 mm", and after it, where known, "= 0.0631 mm" as measured and "± 0.002 mm" as its error`

// ParseBlade reads a blade as [Blade.String] writes it: its marks with " / "
// between them, then, where known, the thickness by micrometer and the error.
//
//	.0025 in / 0.064 mm
//	.0025 in / 0.064 mm = 0.0631 mm ± 0.001 mm
//	0.10 mm ± 0.003 mm
//
// The errors are [InputError]s.
func ParseBlade(s string) (Blade, error) {
	const most = 256
	if len(s) > most || !utf8.ValidString(s) {
		return Blade{}, inputError("blade", "", s, ErrSyntax, "at most 256 bytes of UTF-8", nil)
	}
	text := strings.Join(strings.Fields(s), " ")
	if text == "" {
		return Blade{}, inputError("blade", "", s, ErrSyntax, bladeForm, nil)
	}
	rest, tol, hasTol := strings.Cut(text, "±")
	if !hasTol {
		rest, tol, hasTol = strings.Cut(text, "+/-")
	}
	marks, measured, hasMeasured := strings.Cut(rest, "=")
	b, err := NewBlade(strings.Split(marks, " / ")...)
	if err != nil {
		return Blade{}, err
	}
	if hasMeasured {
		if b.Measured, err = sizeOf(measured, "measured thickness"); err != nil {
			return Blade{}, err
		}
	}
	if hasTol {
		if b.Error, err = sizeOf(tol, "error"); err != nil {
			return Blade{}, err
		}
	}
	if err := b.check(); err != nil {
		return Blade{}, err
	}
	return b, nil
}

// sizeOf reads a size above 0: a zero would be lost in writing.
func sizeOf(s, field string) (units.Length, error) {
	v, err := units.Parse[units.Length](s)
	if err != nil {
		return 0, inputError("blade", field, s, ErrSyntax, bladeForm, err)
	}
	if v <= 0 {
		return 0, inputError("blade", field, s, ErrThickness, "above 0; leave it out where it is not known", nil)
	}
	return v, nil
}

func markField(i int) string { return "mark " + strconv.Itoa(i+1) }

// check refuses what no blade is.
func (b *Blade) check() *InputError {
	if b.n == 0 {
		return inputError("blade", "", "", ErrSyntax, "a blade has at least one mark", nil)
	}
	first := b.marks[0].Value
	for i, m := range b.marks[:b.n] {
		switch {
		case m.Value <= 0 || m.Value > MaxThickness:
			return inputError("blade", markField(i), m.String(), ErrThickness, "above 0 and at most "+MaxThickness.String(), nil)
		case int(m.Places) > m.Unit.Places():
			return inputError("blade", markField(i), m.String(), ErrSyntax, "at most "+strconv.Itoa(m.Unit.Places())+" places", nil)
		case (m.Value - first).Abs() > m.Step():
			return inputError("blade", markField(i), m.String(), ErrMarks, "it is not the size "+markText(b.marks[0])+" to its last place", nil)
		}
	}
	if b.Measured != 0 && (b.Measured < first-first/2 || b.Measured > first+first/2) {
		return inputError("blade", "measured thickness", lengthText(b.Measured), ErrThickness, "it is more than half off the mark "+markText(b.marks[0]), nil)
	}
	if b.Error < 0 || b.Error > MaxBladeError || b.Error >= b.Thickness() {
		return inputError("blade", "error", lengthText(b.Error), ErrThickness, "from 0 to "+MaxBladeError.String()+", and less than the thickness "+b.Thickness().String(), nil)
	}
	return nil
}

// Thickness is the thickness as measured or, where it was not, the first mark.
func (b Blade) Thickness() units.Length {
	if b.Measured != 0 {
		return b.Measured
	}
	return b.marks[0].Value
}

// Marks are the marks that the blade carries, the size it is made to first.
func (b Blade) Marks() []Mark { return append([]Mark(nil), b.marks[:b.n]...) }

// Carries reports whether l is exactly one of the blade's marks.
func (b Blade) Carries(l units.Length) bool {
	for _, m := range b.marks[:b.n] {
		if m.Value == l {
			return true
		}
	}
	return false
}

// MarkText is the marks alone, ".0025 in / 0.064 mm".
func (b Blade) MarkText() string { return string(b.appendMarks(make([]byte, 0, 32))) }

func (b Blade) appendMarks(dst []byte) []byte {
	for i, m := range b.marks[:b.n] {
		if i > 0 {
			dst = append(dst, " / "...)
		}
		dst = appendMark(dst, m)
	}
	return dst
}

// String is the blade as [ParseBlade] reads it.
func (b Blade) String() string { return string(b.append(make([]byte, 0, 64))) }

func (b Blade) append(dst []byte) []byte {
	dst = b.appendMarks(dst)
	if b.Measured != 0 {
		dst, _ = units.AppendText(append(dst, " = "...), b.Measured)
	}
	if b.Error != 0 {
		dst, _ = units.AppendText(append(dst, " ± "...), b.Error)
	}
	return dst
}

// MarshalText writes what String gives. A blade that could not be read back is
// an [InputError].
func (b Blade) MarshalText() ([]byte, error) {
	if err := b.check(); err != nil {
		return nil, err
	}
	return b.append(make([]byte, 0, 64)), nil
}

// UnmarshalText reads what [ParseBlade] reads.
func (b *Blade) UnmarshalText(text []byte) error {
	v, err := ParseBlade(string(text))
	if err == nil {
		*b = v
	}
	return err
}

// appendMark writes a mark as it stands on a blade: inches without the nought
// before the point.
func appendMark(dst []byte, m Mark) []byte {
	if m.Unit == units.InInches && m.Denominator == 0 && !m.Compound {
		dst, _ = units.Append(dst, m.Value, units.Style[units.Length]{Unit: m.Unit, Places: int(m.Places), Point: true})
		return dst
	}
	dst, _ = m.Append(dst)
	return dst
}

func markText(m Mark) string { return string(appendMark(make([]byte, 0, 24), m)) }

// lengthText is l in whichever of millimetres and inches shows it exactly in
// fewer places.
func lengthText(l units.Length) string {
	mm, ok := units.Places(l, units.InMillimetres)
	in, finite := units.Places(l, units.InInches)
	if ok && finite && in < mm {
		dst, _ := units.Append(nil, l, units.Style[units.Length]{Unit: units.InInches, Places: in, Point: true})
		return string(dst)
	}
	return l.String()
}
