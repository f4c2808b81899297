package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A StripMark is a line of the table that comes with a plastic gauging strip: how
// wide it is crushed at a clearance. The wider it is, the tighter the bearing.
type StripMark struct {
	Width     units.Length `json:"width"`     // of the crushed strip
	Clearance units.Length `json:"clearance"` // that it stands for
}

// A StripTable is the table of one strip, which is the user's own: the paper that
// it came with. Its marks go from narrow to wide.
type StripTable []StripMark

// MostStripMarks is how many marks a table may have.
const MostStripMarks = 1000

// Validate refuses, with an [InputError], a table that isn't one: fewer than two
// marks, and a mark that isn't wider and tighter than the one before it.
func (t StripTable) Validate() error {
	if len(t) < 2 || len(t) > MostStripMarks {
		return &InputError{"strip's table", strconv.Itoa(len(t)) + " marks", "from 2 to 1000"}
	}
	for i, m := range t {
		field := "strip's table, mark " + strconv.Itoa(i+1)
		switch {
		case m.Width <= 0 || m.Width > journalLargest:
			return &InputError{field + ", width", m.Width.String(), "above 0 mm"}
		case m.Clearance <= 0 || m.Clearance > journalLargest:
			return &InputError{field + ", clearance", m.Clearance.String(), "above 0 mm"}
		case i > 0 && m.Width <= t[i-1].Width:
			return &InputError{field + ", width", m.Width.String(), "wider than the mark before it"}
		case i > 0 && m.Clearance >= t[i-1].Clearance:
			return &InputError{field + ", clearance", m.Clearance.String(), "tighter than the mark before it: the wider the strip, the tighter the bearing"}
		}
	}
	return nil
}

// Clearance is what a crushed width stands for. Between two marks it is only known
// to lie between their clearances, which is a bracket; nothing is read between the
// lines. Wider than the widest mark it is from nothing to that mark's; narrower
// than the narrowest, that mark's and more.
func (t StripTable) Clearance(width tolerance.Bracket) (tolerance.Bracket, error) {
	if err := t.Validate(); err != nil {
		return tolerance.Bracket{}, err
	}
	if err := journalBracket("crushed width", width, units.Picometre); err != nil {
		return tolerance.Bracket{}, err
	}
	narrow, wide := journalEnds(width)
	lo, loEnd := units.Length(0), tolerance.Closed
	hi, hiEnd := units.Length(0), tolerance.Absent
	for _, m := range t {
		if m.Width >= wide {
			// The first mark at least as wide as the widest that the strip may be.
			lo = m.Clearance
			if loEnd = tolerance.Open; m.Width == wide {
				loEnd = tolerance.Closed
			}
			break
		}
	}
	for i := len(t) - 1; i >= 0; i-- {
		if m := t[i]; m.Width <= narrow {
			hi = m.Clearance
			if hiEnd = tolerance.Open; m.Width == narrow {
				hiEnd = tolerance.Closed
			}
			break
		}
	}
	return tolerance.NewInterval(lo, loEnd, hi, hiEnd)
}

// Width bounds the width that a strip is crushed to at a clearance, by the same
// table: the inverse of [StripTable.Clearance].
func (t StripTable) Width(clearance tolerance.Bracket) (tolerance.Bracket, error) {
	if err := t.Validate(); err != nil {
		return tolerance.Bracket{}, err
	}
	if err := journalBracket("clearance", clearance, 0); err != nil {
		return tolerance.Bracket{}, err
	}
	tight, loose := journalEnds(clearance)
	lo, loEnd := units.Length(0), tolerance.Open
	hi, hiEnd := units.Length(0), tolerance.Absent
	for i := len(t) - 1; i >= 0; i-- {
		if m := t[i]; m.Clearance >= loose {
			lo = m.Width
			if loEnd = tolerance.Open; m.Clearance == loose {
				loEnd = tolerance.Closed
			}
			break
		}
	}
	for _, m := range t {
		if m.Clearance <= tight {
			hi = m.Width
			if hiEnd = tolerance.Open; m.Clearance == tight {
				hiEnd = tolerance.Closed
			}
			break
		}
	}
	return tolerance.NewInterval(lo, loEnd, hi, hiEnd)
}
