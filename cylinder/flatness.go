package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Direction says how a line runs over a face.
type Direction uint8

// The directions. The zero value is none: a line says which it has.
const (
	NoDirection Direction = iota
	Lengthwise            // along the crankshaft
	Across
	Diagonal
)

var directionNames = []string{"no direction", "lengthwise", "across", "diagonal"}

// String is the direction in words.
func (d Direction) String() string { return wordOf(directionNames, d) }

// MarshalText writes what String gives.
func (d Direction) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what String gives.
func (d *Direction) UnmarshalText(text []byte) error {
	return readWord("direction", directionNames, text, d)
}

// A Seat says how the straight-edge lay on a line.
type Seat uint8

// The seats. The zero value is unsaid.
const (
	SeatUnsaid Seat = iota
	// Rests: at both ends, over a hollow. The gap between them is the hollow.
	Rests
	// Rocks: on a hump. What it shows is anything from the hump's height up:
	// see [Hump].
	Rocks
)

var seatNames = []string{"unsaid", "rests", "rocks"}

// String is the seat in words.
func (s Seat) String() string { return wordOf(seatNames, s) }

// MarshalText writes what String gives.
func (s Seat) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *Seat) UnmarshalText(text []byte) error { return readWord("seat", seatNames, text, s) }

// A Line is one line of a face along which a straight-edge was laid, and what
// blades showed of the gaps under it.
type Line struct {
	Name      string    // "left edge"
	Direction Direction // must be given
	Seat      Seat      // whether the straight-edge rested or rocked
	// Ends are the gaps under the two ends where the straight-edge rocks, both
	// of one setting: hold it so that they are alike. Zero where not tried.
	Ends [2]tolerance.Bracket
	// Gaps are those found elsewhere, or where it rests all of them.
	Gaps []Gap
}

// A Gap is what blades showed under a straight-edge at one place.
type Gap struct {
	At  string            // "between cylinders 2 and 3"
	Gap tolerance.Bracket // package feeler makes it of the trials
	// Over is the length of a short straight-edge, for a local limit; 0 where
	// it reached over the whole line.
	Over units.Length
}

// SixLines are the lines of a face as workshops lay them: both edges, both
// ends, both diagonals. Put the gaps in, or make lines of your own.
func SixLines() []Line {
	return []Line{
		{Name: "left edge", Direction: Lengthwise},
		{Name: "right edge", Direction: Lengthwise},
		{Name: "front end", Direction: Across},
		{Name: "rear end", Direction: Across},
		{Name: "diagonal, front left to rear right", Direction: Diagonal},
		{Name: "diagonal, front right to rear left", Direction: Diagonal},
	}
}

// FaceLimits are the limits of the gap under a straight-edge, which is how
// manuals give them. A line without a limit of its own direction is judged by
// Overall; where that isn't given either, it can't be.
type FaceLimits struct {
	Overall    tolerance.Spec // of a line whose direction has none
	Lengthwise tolerance.Spec // along the crankshaft
	Across     tolerance.Spec // across it
	Diagonal   tolerance.Spec // from corner to corner
	Local      []LocalLimit   // within a short length anywhere
}

// A LocalLimit is what a manual allows within so short a length anywhere, such
// as 0.05 mm in any 150 mm.
type LocalLimit struct {
	Over  units.Length   // 150 mm
	Limit tolerance.Spec // of the gap under a straight-edge of that length
}

func (l FaceLimits) of(d Direction) tolerance.Spec {
	own := [...]tolerance.Spec{NoDirection: {}, Lengthwise: l.Lengthwise, Across: l.Across, Diagonal: l.Diagonal}
	if int(d) < len(own) && !own[d].IsZero() {
		return own[d]
	}
	return l.Overall
}

// A Face is the face of a head or a block as measured by straight-edge and
// blades. A [FaceGrid] is one measured by heights.
type Face struct {
	Where  string     // "head" or "block face, left bank"
	Lines  []Line     // [SixLines], or others
	Limits FaceLimits // of the gaps
	Tunnel CamTunnel  // of a head with the camshaft in it
}

// Departure holds how far the line departs from straight, in the standard's
// sense: the least distance of two parallel lines that hold it. Where the
// straight-edge rests, that is the greatest gap under it. Where it rocks it is
// no less than the lesser of the two end gaps ([Hump]) and no more than the
// greatest gap, since the edge lies above the line all along and a parallel to
// it, that much lower, below. Where neither is said it is anything up to the
// greatest gap. It speaks for the places that were tried over the whole line;
// without one, nothing is known.
func (l Line) Departure() tolerance.Bracket {
	whole := l.whole()
	if len(whole) == 0 {
		return tolerance.Bracket{}
	}
	_, greatest := tolerance.Extremes(whole...)
	switch {
	case l.Seat == Rests:
		return greatest
	case l.Seat == Rocks && l.endsTried():
		lo, loEnd := l.Ends[0].Min(l.Ends[1]).Lower()
		hi, hiEnd := greatest.Upper()
		return spanOf(lo, loEnd, hi, hiEnd)
	}
	return anyUpTo(greatest)
}

func (l Line) endsTried() bool { return !l.Ends[0].IsZero() && !l.Ends[1].IsZero() }

// whole are the gaps under a straight-edge over the whole line.
func (l Line) whole() (gaps []tolerance.Bracket) {
	for _, g := range l.Gaps {
		if g.Over == 0 {
			gaps = append(gaps, g.Gap)
		}
	}
	for _, e := range l.Ends {
		if !e.IsZero() {
			gaps = append(gaps, e)
		}
	}
	return gaps
}

// anyUpTo is anything from nothing to the upper end of b.
func anyUpTo(b tolerance.Bracket) tolerance.Bracket {
	hi, end := b.Upper()
	return spanOf(0, tolerance.Closed, hi, end)
}

// anyFrom is anything from the lower end of b up.
func anyFrom(b tolerance.Bracket) tolerance.Bracket {
	lo, end := b.Lower()
	return spanOf(lo, end, 0, tolerance.Absent)
}
