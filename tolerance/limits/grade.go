package limits

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// A Grade is a standard tolerance grade: how wide a tolerance is, from IT01,
// the finest, to IT18. The width grows with the nominal size; see
// [Grade.Tolerance]. The zero Grade is none. Grades compare with < by fineness.
type Grade uint8

// The standard tolerance grades, the finest first.
const (
	IT01 Grade = iota + 1
	IT0
	IT1
	IT2
	IT3
	IT4
	IT5
	IT6
	IT7
	IT8
	IT9
	IT10
	IT11
	IT12
	IT13
	IT14
	IT15
	IT16
	IT17
	IT18
)

var gradeNumbers = [...]string{IT01: "01", IT0: "0", IT1: "1", IT2: "2", IT3: "3", IT4: "4", IT5: "5",
	IT6: "6", IT7: "7", IT8: "8", IT9: "9", IT10: "10", IT11: "11", IT12: "12", IT13: "13", IT14: "14",
	IT15: "15", IT16: "16", IT17: "17", IT18: "18"}

func (g Grade) known() bool { return g >= IT01 && g <= IT18 }

// number is the grade as a class has it: 7 for IT7.
func (g Grade) number() string {
	if !g.known() {
		return ""
	}
	return gradeNumbers[g]
}

// gradeOf is the grade of a number as a class has it, or 0.
func gradeOf(number string) Grade {
	for g := IT01; g <= IT18; g++ {
		if gradeNumbers[g] == number {
			return g
		}
	}
	return 0
}

// ParseGrade reads a grade: "IT7", or "7" alone.
func ParseGrade(s string) (Grade, error) {
	number := s
	if len(s) > 2 && s[:2] == "IT" {
		number = s[2:]
	}
	if g := gradeOf(number); g != 0 {
		return g, nil
	}
	return 0, parseError("grade", s, 0, ErrGrade, wantGrade, nil)
}

const wantGrade = "IT01, IT0 or IT1 to IT18"

// tolerance is the grade's width at a fine step, in nanometres.
func (g Grade) tolerance(step int) int32 {
	return standardTolerances[mainSteps[step]][g-IT01]
}

// Tolerance is the grade's width at a nominal size, exactly as tabulated: 21 µm
// for IT7 at 25 mm. It fails with a [ParseError] for a grade that doesn't
// exist, a [SizeError] for a size outside the tables (over 0 up to and
// including 500 mm) and a [ClassError] for IT14 and coarser up to 1 mm.
func (g Grade) Tolerance(nominal units.Length) (units.Length, error) {
	if !g.known() {
		return 0, parseError("grade", strconv.Itoa(int(g)), 0, ErrGrade, wantGrade, nil)
	}
	step, ok := stepOf(nominal)
	if !ok {
		return 0, &SizeError{Nominal: nominal}
	}
	if g >= IT14 && nominal <= small {
		return 0, &ClassError{Grade: g, Nominal: nominal}
	}
	return length(g.tolerance(step)), nil
}

// GradeWithin is the coarsest grade that is no wider than what is allowed: of
// 0.020 mm at 25 mm, IT6 (13 µm), for IT7 takes 21. Where even IT01 is wider, or
// what is allowed is out of range, it fails with a [WidthError].
func GradeWithin(nominal, allowed units.Length) (Grade, error) {
	step, ok := stepOf(nominal)
	if !ok {
		return 0, &SizeError{Nominal: nominal}
	}
	for g := coarsest(nominal); g >= IT01 && allowed.InRange(); g-- {
		if length(g.tolerance(step)) <= allowed {
			return g, nil
		}
	}
	return 0, &WidthError{Nominal: nominal, Width: allowed, Finest: length(IT01.tolerance(step))}
}

// GradeHolding is the finest grade that is no narrower than a spread: of parts
// at 25 mm that vary by 0.015 mm, IT7 (21 µm), for IT6 has 13. Where even the
// coarsest grade is narrower, or the spread is below zero or out of range, it
// fails with a [WidthError].
func GradeHolding(nominal, spread units.Length) (Grade, error) {
	step, ok := stepOf(nominal)
	if !ok {
		return 0, &SizeError{Nominal: nominal}
	}
	last := coarsest(nominal)
	for g := IT01; g <= last && spread >= 0 && spread.InRange(); g++ {
		if length(g.tolerance(step)) >= spread {
			return g, nil
		}
	}
	return 0, &WidthError{Nominal: nominal, Width: spread, Coarsest: length(last.tolerance(step))}
}

// coarsest is the coarsest grade that is tabulated at a nominal size.
func coarsest(nominal units.Length) Grade {
	if nominal <= small {
		return IT13
	}
	return IT18
}

// String is the grade as the standard writes it: IT7.
func (g Grade) String() string {
	if !g.known() {
		return "no grade"
	}
	return "IT" + gradeNumbers[g]
}

// MarshalText writes what String gives; nothing for the zero Grade.
func (g Grade) MarshalText() ([]byte, error) {
	if g == 0 {
		return []byte{}, nil
	}
	if !g.known() {
		return nil, parseError("grade", strconv.Itoa(int(g)), 0, ErrGrade, wantGrade, nil)
	}
	return []byte(g.String()), nil
}

// UnmarshalText reads what [ParseGrade] reads; nothing gives the zero Grade.
func (g *Grade) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*g = 0
		return nil
	}
	v, err := ParseGrade(string(text))
	if err == nil {
		*g = v
	}
	return err
}
