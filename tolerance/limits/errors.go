package limits

import (
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The kinds of this package's errors, for errors.Is.
var (
	// ErrSyntax: a text is not a class, limits or a fit.
	ErrSyntax = tolerance.ErrSyntax
	// ErrAmbiguous: a text may mean two things.
	ErrAmbiguous = units.ErrAmbiguous
	// ErrDeviation: there is no such fundamental deviation.
	ErrDeviation = errors.New("no such fundamental deviation")
	// ErrGrade: there is no such standard tolerance grade.
	ErrGrade = errors.New("no such standard tolerance grade")
	// ErrPair: a fit that is not a hole and a shaft, in that order.
	ErrPair = errors.New("not a hole and a shaft")
	// ErrSize: a nominal size outside the tables, or too small for a class.
	ErrSize = errors.New("nominal size out of range")
	// ErrNotTabulated: the standard has no figures for a class at that size.
	ErrNotTabulated = errors.New("not tabulated")
	// ErrWidth: no grade is as fine or as coarse as that.
	ErrWidth = errors.New("no grade of that width")
)

// A ParseError says what could not be read, where, and what was expected.
type ParseError struct {
	What   string // "class", "limits", "fit", …
	Input  string // the input, or its first 64 bytes
	Cut    bool   // whether Input was cut
	Offset int    // the place in the input, in bytes
	Kind   error  // ErrSyntax, ErrDeviation, …
	Want   string // what was expected, in words
	Err    error  // the cause, or nil
}

func (e *ParseError) Error() string {
	cut := ""
	if e.Cut {
		cut = "…"
	}
	s := fmt.Sprintf("limits: %s %s%s, at byte %d: %v", e.What, strconv.Quote(e.Input), cut, e.Offset, e.Kind)
	if e.Want != "" {
		s += "; " + e.Want
	}
	if e.Err != nil {
		s += ": " + e.Err.Error()
	}
	return s
}

// Unwrap gives the kind and the cause.
func (e *ParseError) Unwrap() []error {
	if e.Err == nil {
		return []error{e.Kind}
	}
	return []error{e.Kind, e.Err}
}

func parseError(what, input string, offset int, kind error, want string, cause error) error {
	const most = 64
	e := &ParseError{What: what, Input: input, Offset: offset, Kind: kind, Want: want, Err: cause}
	if len(input) > most {
		n := most
		for n > most-utf8.UTFMax && !utf8.RuneStart(input[n]) {
			n--
		}
		e.Input, e.Cut = input[:n], true
	}
	return e
}

// A SizeError names a nominal size outside the tables, or one so small that
// the class would ask for a part of no size.
type SizeError struct {
	Nominal units.Length // the size asked for
	Class   Class        // the class looked up; zero for a grade
	Least   units.Length // where it is not above zero: the least size asked for
}

func (e *SizeError) Error() string {
	if e.Nominal > 0 && e.Nominal <= stepEnds[len(stepEnds)-1] {
		return fmt.Sprintf("limits: %v: %v; the least size of %v would be %v", e.Nominal, ErrSize, e.Class, e.Least)
	}
	return fmt.Sprintf("limits: %v: %v; the tables hold sizes over 0 up to and including 500 mm", e.Nominal, ErrSize)
}

// Unwrap gives [ErrSize].
func (e *SizeError) Unwrap() error { return ErrSize }

// A ClassError names a class, or a grade alone, that the standard has no
// figures for at a nominal size; its text says where it has.
type ClassError struct {
	Class   Class        // zero where a grade alone, or nothing, was given
	Grade   Grade        // zero where a class, or nothing, was given
	Nominal units.Length // the size asked for
}

func (e *ClassError) Error() string {
	c := e.Class
	switch {
	case e.Grade != 0:
		return fmt.Sprintf("limits: %v at %v: %v; IT14 and coarser are for sizes over 1 mm", e.Grade, e.Nominal, ErrNotTabulated)
	case c.IsZero():
		return fmt.Sprintf("limits: %v: %v; no class was given", e.Nominal, ErrNotTabulated)
	}
	s := fmt.Sprintf("limits: %v at %v: %v; ", c, e.Nominal, ErrNotTabulated)
	if over, upTo, ok := c.Range(); ok {
		return s + fmt.Sprintf("%v is for sizes over %s up to and including %v", c, appendSize(nil, over), upTo)
	}
	first, last := c.grades(func(c Class) bool { _, err := c.At(e.Nominal); return err == nil })
	if first == 0 {
		first, last = c.grades(func(c Class) bool { _, _, ok := c.Range(); return ok })
	}
	return s + fmt.Sprintf("%s has the grades %v to %v", c.Deviation(), first, last)
}

// grades are the finest and the coarsest grade of the class's letter that is
// had.
func (c Class) grades(had func(Class) bool) (first, last Grade) {
	for c.grade = IT01; c.grade <= IT18; c.grade++ {
		if !had(c) {
			continue
		}
		if first == 0 {
			first = c.grade
		}
		last = c.grade
	}
	return first, last
}

// Unwrap gives [ErrNotTabulated].
func (e *ClassError) Unwrap() error { return ErrNotTabulated }

// A BandError says that there was nothing to look for.
type BandError struct {
	What string // "measured size", "allowed sizes", "clearance"
	Kind error  // tolerance.ErrNoReading, tolerance.ErrNoLimit or tolerance.ErrRange
}

func (e *BandError) Error() string { return fmt.Sprintf("limits: %s: %v", e.What, e.Kind) }

// Unwrap gives the kind.
func (e *BandError) Unwrap() error { return e.Kind }

// An OrderError names two classes that don't make a hole and a shaft, in that
// order.
type OrderError struct {
	First, Second Class // as given, before and after the stroke
}

func (e *OrderError) Error() string {
	return fmt.Sprintf("limits: %v/%v: %v; %s", e.First, e.Second, ErrPair, e.want())
}

// want says what was expected.
func (e *OrderError) want() string {
	if e.First.feature == Shaft && e.Second.feature == Hole {
		return fmt.Sprintf("the hole comes first: %v/%v", e.Second, e.First)
	}
	return "a fit has one of each, as H7/g6"
}

// Unwrap gives [ErrPair].
func (e *OrderError) Unwrap() error { return ErrPair }

// A WidthError names a tolerance that no grade is as fine or as coarse as.
type WidthError struct {
	Nominal, Width units.Length // the size and the width asked for
	Finest         units.Length // the width of the finest grade, where Width is below it
	Coarsest       units.Length // that of the coarsest, where Width is above it
}

func (e *WidthError) Error() string {
	limit := fmt.Sprintf("the coarsest is %v wide", e.Coarsest)
	switch {
	case !e.Width.InRange():
		limit = "it was calculated beyond ±2^61 quanta or divided by zero"
	case e.Width < 0:
		limit = "a width is not below zero"
	case e.Finest > 0:
		limit = fmt.Sprintf("the finest is %v wide", e.Finest)
	}
	return fmt.Sprintf("limits: %v at %v: %v; %s", e.Width, e.Nominal, ErrWidth, limit)
}

// Unwrap gives [ErrWidth].
func (e *WidthError) Unwrap() error { return ErrWidth }
