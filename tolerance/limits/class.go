package limits

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// A Feature is what a class is for. The standard calls every internal feature a
// hole, a keyway's width too, and every external one a shaft.
type Feature uint8

// The two features of size. The zero Feature is neither.
const (
	Hole  Feature = iota + 1 // internal; its classes are in capitals
	Shaft                    // external; its classes are in small letters
)

// String is "hole" or "shaft".
func (f Feature) String() string {
	switch f {
	case Hole:
		return "hole"
	case Shaft:
		return "shaft"
	}
	return "no feature"
}

// The fundamental deviations in the standard's order, of holes and of shafts.
var (
	holeLetters = [...]string{"A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "J", "JS", "K", "M", "N",
		"P", "R", "S", "T", "U", "V", "X", "Y", "Z", "ZA", "ZB", "ZC"}
	shaftLetters = [...]string{"a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "j", "js", "k", "m", "n",
		"p", "r", "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc"}
)

// Places in the lists of letters.
const (
	letterB  = 1
	letterH  = 10
	letterJ  = 11
	letterJS = 12
	letterK  = 13
	letterM  = 14
	letterN  = 15
	letters  = 28
)

// A Class is a tolerance class: H7 is the hole whose least size is the nominal
// one (H) with a tolerance of grade IT7. The letter, the fundamental deviation,
// says where the tolerance lies; the number, the grade, how wide it is. The
// zero Class is none. Classes compare with ==.
type Class struct {
	feature Feature
	letter  uint8 // a place in the list of letters
	grade   Grade
}

// NewClass makes a class from a fundamental deviation, "H" or "js", and a
// grade. The errors are [ParseError]s.
func NewClass(deviation string, grade Grade) (Class, error) {
	f, l := letterOf(deviation)
	if f == 0 {
		return Class{}, parseError("class", deviation, 0, ErrDeviation, wantDeviation(deviation), nil)
	}
	if !grade.known() {
		return Class{}, parseError("class", deviation, 0, ErrGrade, wantGrade, nil)
	}
	return Class{f, l, grade}, nil
}

// letterOf finds a fundamental deviation; the feature is 0 where there is none.
func letterOf(s string) (Feature, uint8) {
	if s == "" || len(s) > 2 {
		return 0, 0
	}
	f, list := Shaft, &shaftLetters
	if s[0] < 'a' {
		f, list = Hole, &holeLetters
	}
	for i, l := range list {
		if l == s {
			return f, uint8(i)
		}
	}
	return 0, 0
}

// wantDeviation says what was expected instead of a fundamental deviation.
func wantDeviation(s string) string {
	const all = "a hole has A to H, J, JS, K, M, N, P to V, X, Y, Z, ZA, ZB or ZC (and CD, EF, FG), a shaft the same in small letters"
	if upper := strings.ToUpper(s); s != upper && s != strings.ToLower(s) {
		if f, l := letterOf(upper); f != 0 {
			return "write " + upper + " for a hole or " + shaftLetters[l] + " for a shaft"
		}
		for n := min(2, len(s)-1); n >= 1; n-- {
			if f, _ := letterOf(s[len(s)-n:]); f != 0 {
				return "leave a blank before " + s[len(s)-n:] + ", or " + all
			}
		}
	}
	return all
}

// IsZero reports whether c is no class.
func (c Class) IsZero() bool { return c.feature == 0 }

// Feature is what the class is for, a hole or a shaft.
func (c Class) Feature() Feature { return c.feature }

// Deviation is the letter or letters: the fundamental deviation.
func (c Class) Deviation() string {
	switch {
	case c.letter >= letters:
		return ""
	case c.feature == Hole:
		return holeLetters[c.letter]
	case c.feature == Shaft:
		return shaftLetters[c.letter]
	}
	return ""
}

// Grade is the number: the standard tolerance grade.
func (c Class) Grade() Grade { return c.grade }

// Range is the nominal sizes the class is tabulated for: over one size up to
// and including the other. Of t6 it is over 24 up to 500 mm. ok is false where
// there are none, as of K2 or J9.
func (c Class) Range() (over, upTo units.Length, ok bool) {
	for step := range stepEnds {
		least := stepStart(step)
		if !c.tabulated(step, false) {
			continue
		}
		if !ok {
			over, ok = least, true
			if step == 0 && !c.tabulated(step, true) {
				over = small
			}
		}
		upTo = stepEnds[step]
	}
	return over, upTo, ok
}

func (c Class) tabulated(step int, tiny bool) bool {
	if c.IsZero() {
		return false
	}
	_, _, ok := c.deviations(step, tiny)
	return ok
}

// String is the class as a drawing has it: H7.
func (c Class) String() string {
	if c.IsZero() {
		return "no class"
	}
	return c.Deviation() + c.grade.number()
}

// AppendText appends what String gives; nothing for the zero Class.
func (c Class) AppendText(dst []byte) ([]byte, error) {
	return append(append(dst, c.Deviation()...), c.grade.number()...), nil
}

// MarshalText is what AppendText appends.
func (c Class) MarshalText() ([]byte, error) { return c.AppendText(make([]byte, 0, 4)) }

// UnmarshalText reads what [ParseClass] reads; nothing gives the zero Class.
func (c *Class) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*c = Class{}
		return nil
	}
	v, err := ParseClass(string(text))
	if err == nil {
		*c = v
	}
	return err
}
