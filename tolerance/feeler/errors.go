package feeler

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrSyntax: a text is not a blade, a set, a list of trials or a feel.
	ErrSyntax = errors.New("not written as expected")
	// ErrThickness: a thickness or its error that no blade has.
	ErrThickness = errors.New("not a blade's thickness")
	// ErrMarks: the marks of one blade are too far apart for one thickness.
	ErrMarks = errors.New("marks of one blade disagree")
	// ErrDuplicate: blades of different thickness carry one mark.
	ErrDuplicate = errors.New("one mark on two thicknesses")
	// ErrClass: no class of error covers a blade, or the classes are out of order.
	ErrClass = errors.New("no class of error for it")
	// ErrEmpty: a set without blades.
	ErrEmpty = errors.New("no blades")
	// ErrSize: more than can be read or worked out.
	ErrSize = errors.New("too much")
	// ErrNoBlade: no blade of the set carries the mark.
	ErrNoBlade = errors.New("no such blade")
	// ErrFeel: a feel that is none of this package's.
	ErrFeel = errors.New("unknown feel")
	// ErrContradiction: trials that can't all be right.
	ErrContradiction = errors.New("trials contradict each other")
	// ErrNoStack: no stack of so many blades does what is asked.
	ErrNoStack = errors.New("no such stack")
	// ErrPrior: a prior that says nothing of the clearances asked about.
	ErrPrior = errors.New("not a prior")
)

// An InputError says what is wrong with a blade, a set or a list of trials,
// and in which part of it.
type InputError struct {
	What  string // "blade", "set", "trials", "feel"
	Line  int    // of a text, from 1; 0 where it has one line
	Field string // "mark 2", "measured thickness", "error", "name", …
	Input string // what was read, or its first 64 bytes
	Cut   bool   // whether Input was cut
	Kind  error  // ErrSyntax, ErrThickness, ErrMarks, …
	Want  string // what was expected, in words
	Err   error  // what the reader of a quantity said, or nil
}

func (e *InputError) Error() string {
	var s strings.Builder
	s.WriteString("feeler: " + e.What)
	if e.Line > 0 {
		s.WriteString(", line " + strconv.Itoa(e.Line))
	}
	if e.Field != "" {
		s.WriteString(", " + e.Field)
	}
	if e.Input != "" {
		s.WriteString(" " + strconv.Quote(e.Input))
		if e.Cut {
			s.WriteString("…")
		}
	}
	if e.Kind != nil {
		s.WriteString(": " + e.Kind.Error())
	}
	if e.Want != "" {
		s.WriteString("; " + e.Want)
	}
	if e.Err != nil {
		s.WriteString(": " + strings.TrimPrefix(e.Err.Error(), "feeler: "))
	}
	return s.String()
}

// Unwrap gives the kind and the cause.
func (e *InputError) Unwrap() []error { return kinds(e.Kind, e.Err) }

// A DuplicateError names two blades of different thickness that carry one
// mark: looked up by it, either may be meant.
type DuplicateError struct {
	Mark          Mark  // what both carry
	First, Second Blade // the thinner first
}

func (e *DuplicateError) Error() string {
	return fmt.Sprintf("feeler: set: two blades of different thickness carry the mark %s: %s and %s", markText(e.Mark), e.First, e.Second)
}

// Unwrap gives [ErrDuplicate].
func (e *DuplicateError) Unwrap() error { return ErrDuplicate }

// A MarkError says that no blade of the set carries a mark, and which ones may
// have been meant.
type MarkError struct {
	Mark    string  // as asked for, at most 64 bytes
	Decimal []Blade // the blades a decimal place away: 0.64 mm for 0.064 mm
	Nearest []Blade // the next thinner and the next thicker blade
	Err     error   // why the mark could not be read, or nil
}

func (e *MarkError) Error() string {
	if e.Err != nil {
		return "feeler: no blade is marked " + strconv.Quote(e.Mark) + ": " + e.Err.Error()
	}
	s := "feeler: no blade is marked " + e.Mark
	if len(e.Decimal) > 0 {
		s += "; a decimal place away: " + orList(e.Decimal)
	}
	if len(e.Nearest) > 0 {
		s += "; nearest: " + orList(e.Nearest)
	}
	return s
}

// Unwrap gives [ErrNoBlade] and the cause.
func (e *MarkError) Unwrap() []error { return kinds(ErrNoBlade, e.Err) }

func orList(blades []Blade) string {
	names := make([]string, len(blades))
	for i, b := range blades {
		names[i] = b.MarkText()
	}
	return strings.Join(names, " or ")
}

// A TrialError names a trial that can't be reckoned with.
type TrialError struct {
	Index int   // among the trials of the station
	Trial Trial // as given
	Kind  error // ErrFeel, ErrThickness
}

func (e *TrialError) Error() string {
	want := "above 0 and at most " + MaxStackThickness.String() + ", its error less than itself"
	switch {
	case e.Kind == ErrFeel:
		want = "free, drag, forced, refused or not tried"
	case e.Trial.Thickness == 0:
		want = "the thickness is missing, and a mark alone does not give it: Set.Trial looks it up"
	}
	return fmt.Sprintf("feeler: trial %d, %s: %v; %s", e.Index+1, e.Trial, e.Kind, want)
}

// Unwrap gives the kind.
func (e *TrialError) Unwrap() error { return e.Kind }

// A ContradictionError names two trials of one station that can't both be
// right: a blade entered where a thinner one, or itself, was refused.
type ContradictionError struct {
	Entered, Refused Trial // the two trials
	Errors           bool  // whether the errors of the blades were allowed for
}

func (e *ContradictionError) Error() string {
	how := "the thinner"
	if e.Entered.Thickness == e.Refused.Thickness {
		how = "the equally thick"
	}
	s := fmt.Sprintf("feeler: trials contradict each other: %s entered, but %s %s did not", e.Entered.name(), how, e.Refused.name())
	if e.Errors && (e.Entered.Error > 0 || e.Refused.Error > 0) {
		s += ", which the errors of the blades do not explain"
	}
	return s + ": clean blades and gap, and try both again"
}

// Unwrap gives [ErrContradiction].
func (e *ContradictionError) Unwrap() error { return ErrContradiction }

// A StackError says why there is no stack.
type StackError struct {
	Target units.Length // what was asked for
	Most   int          // the most blades allowed
	Kind   error        // ErrSize, ErrThickness, ErrNoStack, ErrEmpty
	Want   string       // what was expected, in words
}

func (e *StackError) Error() string {
	return fmt.Sprintf("feeler: stack of up to %d blades for %s: %v; %s", e.Most, lengthText(e.Target), e.Kind, e.Want)
}

// Unwrap gives the kind.
func (e *StackError) Unwrap() error { return e.Kind }

// A PlanError says why no plan can be made or no blind zone told.
type PlanError struct {
	What  string // "plan", "blind zones"
	Field string // "set", "limits", "prior", "bracket"
	Kind  error  // ErrEmpty, ErrPrior, or an error of package tolerance
	Want  string // what was expected, in words
}

func (e *PlanError) Error() string {
	s := "feeler: " + e.What + ": " + e.Field + ": " + strings.TrimPrefix(e.Kind.Error(), "tolerance: ")
	if e.Want != "" {
		s += "; " + e.Want
	}
	return s
}

// Unwrap gives the kind.
func (e *PlanError) Unwrap() error { return e.Kind }

// A StationError says at which station trials went wrong.
type StationError struct {
	Where string // as given
	Err   error  // a [ContradictionError] or a [TrialError]
}

func (e *StationError) Error() string {
	if e.Where == "" {
		return e.Err.Error()
	}
	return "feeler: " + clipText(e.Where) + ": " + strings.TrimPrefix(e.Err.Error(), "feeler: ")
}

// Unwrap gives the cause.
func (e *StationError) Unwrap() error { return e.Err }

func kinds(kind, cause error) []error {
	both := make([]error, 0, 2)
	if kind != nil {
		both = append(both, kind)
	}
	if cause != nil {
		both = append(both, cause)
	}
	return both
}

const quoteMax = 64

// clip keeps the first bytes of s, whole characters only.
func clip(s string) (text string, cut bool) {
	if len(s) <= quoteMax {
		return s, false
	}
	n := quoteMax
	for n > quoteMax-utf8.UTFMax && !utf8.RuneStart(s[n]) {
		n--
	}
	return s[:n], true
}

func clipText(s string) string {
	text, cut := clip(s)
	if cut {
		text += "…"
	}
	return strings.ToValidUTF8(text, "\uFFFD")
}

func inputError(what, field, input string, kind error, want string, cause error) *InputError {
	text, cut := clip(input)
	return &InputError{What: what, Field: field, Input: text, Cut: cut, Kind: kind, Want: want, Err: cause}
}
