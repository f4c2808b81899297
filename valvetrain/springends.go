package valvetrain

import (
	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
)

// SpringForm is what a spring's coils are like. The zero value is UnstatedForm,
// which no formula takes.
type SpringForm uint8

// The forms.
const (
	// UnstatedForm: it wasn't looked at.
	UnstatedForm SpringForm = iota
	// Cylindrical has all active coils of one diameter, wire and pitch.
	Cylindrical
	// Conical tapers, as a beehive does.
	Conical
	// Progressive has coils of different pitch, which close one after another.
	Progressive
)

var springFormNames = []string{"unstated", "cylindrical", "conical", "progressive"}

// String is the form in words.
func (f SpringForm) String() string { return words.Of(springFormNames, f) }

// MarshalText writes what String gives.
func (f SpringForm) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (f *SpringForm) UnmarshalText(text []byte) error {
	return inputWord("form of the spring", springFormNames, text, f)
}

// SpringEnds is what a spring's ends are like. Of n coils in all, from wire d:
//
//	ends               dead coils   solid height
//	plain                  0         (n + 1)·d
//	plain and ground       1         (n − ½)·d to n·d
//	squared (closed)       2         (n + 1)·d to (n + 1½)·d
//	squared and ground     2         (n − ½)·d to n·d
//
// Why: closed up, the wire's middle rises by d in each turn, n·d in all, and half
// a wire stands over it at either end: (n + 1)·d. Grinding takes as much off each
// end as leaves the tip of the wire its thickness: half a wire leaves n·d, the
// figure of machine-design textbooks (from memory), and a quarter, as tips often
// are, (n − ½)·d. That n·d is no lower bound is published: US Army TM
// 9-6115-464-34 has a spring of 6 1/4 coils of 0.177 in, n·d = 1.106 in, bear its
// open load at 1.082 in. For squared ends that aren't ground EN 13906-1 allows up
// to (n + 1½)·d (from memory). A measured solid height is better than any.
//
// The dead coils are the textbooks' as well, from memory; that two of squared and
// ground ends are dead is borne out by the loads that two US Army manuals print
// beside wire and coils. Valve springs are squared and ground as a rule. The zero
// value is UnstatedEnds, which no formula takes.
type SpringEnds uint8

// The ends.
const (
	// UnstatedEnds: they weren't looked at.
	UnstatedEnds SpringEnds = iota
	// Plain ends are cut off as they come.
	Plain
	// PlainGround ends are cut off and ground flat.
	PlainGround
	// Squared ends are bent down to lie on the next coil (closed).
	Squared
	// SquaredGround ends are closed and then ground flat.
	SquaredGround
)

var springEndNames = []string{"unstated", "plain", "plain and ground", "squared", "squared and ground"}

// String is the ends in words.
func (e SpringEnds) String() string { return words.Of(springEndNames, e) }

// MarshalText writes what String gives.
func (e SpringEnds) MarshalText() ([]byte, error) { return []byte(e.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (e *SpringEnds) UnmarshalText(text []byte) error {
	return inputWord("ends of the spring", springEndNames, text, e)
}

// dead is how many coils don't spring.
func (e SpringEnds) dead() int64 {
	switch e {
	case PlainGround:
		return 1
	case Squared, SquaredGround:
		return 2
	}
	return 0
}

// solid is how many wires the solid height has more than the coils, in halves:
// the least and the greatest. Below zero it is fewer.
func (e SpringEnds) solid() (least, greatest int64) {
	switch e {
	case Plain:
		return 2, 2
	case Squared:
		return 2, 3
	}
	return -1, 0
}

// SpringSolidHeight is the solid height of so many coils in all and so many half
// wires more: (n + halves/2)·d. See [SpringEnds] for how many: 0 where tips are
// ground to half a wire, −1 to a quarter, 2 where ends aren't ground. A number of
// coils that is no ratio gives a height out of range.
func SpringSolidHeight[N tolerance.Number[N]](wire N, total tolerance.Ratio, halves int64) N {
	return wire.Scale(2*total.Num+halves*total.Den, 2*total.Den)
}
