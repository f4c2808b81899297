package limits

import (
	"errors"
	"testing"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// What is read is within the system, keeps its own rules and is read back from
// its text; what is refused says why.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"25 H7", "50 H7/g6", "1 in H7", "63/64 in js6/JS7", "⌀25,4 mm ZC11", "50 Z99", "0 H7", "-5 h6", "25 H7/g6/f7",
		"300 M6", "0.05 h11", "1 a11", "", "/", "H", "25 \xff6", "3.000000001 FG01/fg01"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if l, err := ParseLimits(s); err != nil {
			refused(t, s, err)
		} else {
			checkParsed(t, s, l)
			if again, err := ParseLimits(l.String()); err != nil || again != l {
				t.Fatalf("%q: %v read back as %v, %v", s, l, again, err)
			}
		}
		fit, err := Parse(s)
		if err != nil {
			refused(t, s, err)
			return
		}
		checkParsed(t, s, fit.Hole())
		checkParsed(t, s, fit.Shaft())
		if again, err := Parse(fit.String()); err != nil || again != fit {
			t.Fatalf("%q: %v read back as %v, %v", s, fit, again, err)
		}
		if fit.MaxClearance()-fit.MinClearance() != fit.Hole().Tolerance()+fit.Shaft().Tolerance() || fit.Kind() == tolerance.UnknownFit {
			t.Fatalf("%q: %v: %v", s, fit, fit.Describe())
		}
	})
}

func refused(t *testing.T, s string, err error) {
	t.Helper()
	for _, kind := range []error{ErrSyntax, ErrAmbiguous, ErrDeviation, ErrGrade, ErrPair, ErrSize, ErrNotTabulated} {
		if errors.Is(err, kind) {
			if len(err.Error()) > 1200 {
				t.Fatalf("%q: %d bytes of error", s, len(err.Error()))
			}
			return
		}
	}
	t.Fatalf("%q: %v has no kind", s, err)
}

func checkParsed(t *testing.T, s string, l Limits) {
	t.Helper()
	width, err := l.Class().Grade().Tolerance(l.Nominal())
	over, upTo, ok := l.Class().Range()
	switch {
	case l.Nominal() <= 0 || l.Nominal() > 500*units.Millimetre || l.Least() <= 0:
	case err != nil || width != l.Tolerance() || l.Greatest()-l.Least() != width:
	case !ok || l.Nominal() <= over || l.Nominal() > upTo:
	case l.Band().IsZero() || !l.Band().Allows(l.Least()) || !l.Band().Allows(l.Greatest()):
	default:
		return
	}
	t.Fatalf("%q: %v: %v to %v, %v", s, l, l.Least(), l.Greatest(), err)
}
