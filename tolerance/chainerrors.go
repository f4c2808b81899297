package tolerance

import (
	"errors"
	"strconv"
)

// The kinds of a [ChainError] that other errors don't share.
var (
	// ErrLinks is a chain without links, with too many, or with another
	// number of sizes.
	ErrLinks = errors.New("wrong number of links")
	// ErrSensitivity is a link whose sensitivity is missing or zero.
	ErrSensitivity = errors.New("no sensitivity")
	// ErrScatter is a link whose scatter is missing where it is needed, or
	// that no lot can have.
	ErrScatter = errors.New("no usable scatter")
	// ErrNoTolerance is a chain in which no size may differ.
	ErrNoTolerance = errors.New("nothing has a tolerance")
)

// A ChainError names what is wrong with a chain, and at which link.
type ChainError struct {
	Link  int    // counted from 0; -1 where it is not one link's
	Name  string // the link's name, at most 64 bytes of it
	Field string // "sensitivity", "band", "scatter", "wanted", …
	Kind  error  // ErrLinks, ErrSensitivity, ErrScatter, ErrNoLimit, ErrRange, ErrNoTolerance
	Want  string // what was expected, in words
}

func (e *ChainError) Error() string {
	s := "tolerance: chain: "
	if e.Link >= 0 {
		s += "link " + strconv.Itoa(e.Link+1) + " " + strconv.Quote(e.Name) + ": "
	}
	return s + e.Field + ": " + e.Kind.Error() + "; " + e.Want
}

// Unwrap gives the kind.
func (e *ChainError) Unwrap() error { return e.Kind }

func (c ChainOf[Q]) refuse(link int, field string, kind error, want string) error {
	return &ChainError{Link: link, Name: clip(c.Links[link].Name), Field: field, Kind: kind, Want: want}
}
