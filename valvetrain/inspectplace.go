package valvetrain

import (
	"bytes"
	"strconv"

	"github.com/tenthou/tenthou/internal/words"
)

// A ValvePlace is one valve's place in the engine: its kind, and its number
// along the engine from the drive's end, each kind counted by itself. Its text
// is "inlet 3" or "exhaust 2". What belongs to a valve goes by its place.
type ValvePlace struct {
	Exhaust bool // an exhaust valve, not an inlet one
	Number  int  // from 1
}

// String is the place in words.
func (p ValvePlace) String() string {
	if p.Exhaust {
		return "exhaust " + strconv.Itoa(p.Number)
	}
	return "inlet " + strconv.Itoa(p.Number)
}

// MarshalText writes what String gives.
func (p ValvePlace) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (p *ValvePlace) UnmarshalText(text []byte) error {
	var at ValvePlace
	number, ok := bytes.CutPrefix(text, []byte("inlet "))
	if !ok {
		number, ok = bytes.CutPrefix(text, []byte("exhaust "))
		at.Exhaust = true
	}
	for _, c := range number {
		if ok = ok && c >= '0' && c <= '9' && at.Number < 100; ok {
			at.Number = 10*at.Number + int(c-'0')
		}
	}
	if !ok || at.Number == 0 || number[0] == '0' {
		return &InputError{"place of a valve", strconv.Quote(inputText(string(text))), `"inlet" or "exhaust" and a number from 1: "inlet 3"`}
	}
	*p = at
	return nil
}

// ClearanceSetBy is what sets a valve clearance.
type ClearanceSetBy uint8

// What sets a clearance.
const (
	SetByOther ClearanceSetBy = iota // as the manual says
	SetByShim                        // a shim, or a bucket by its thickness
	SetByScrew                       // a screw or nut on the rocker
)

var clearanceSetNames = []string{"", "shim", "screw"}

// String is what sets it in a word; empty for SetByOther.
func (s ClearanceSetBy) String() string { return words.Of(clearanceSetNames, s) }

// MarshalText writes what String gives.
func (s ClearanceSetBy) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (s *ClearanceSetBy) UnmarshalText(text []byte) error {
	if want, ok := words.Read(clearanceSetNames, text, s); !ok {
		return &InputError{"what sets the clearance", strconv.Quote(inputText(string(text))), want}
	}
	return nil
}
