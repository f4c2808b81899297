package piston

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// A HeadContact says whether a piston touches the head's face under the gasket
// chosen. The zero value is HeadContactUnknown. What can't be told for certain
// counts as contact: near zero there is no benefit of the doubt.
type HeadContact uint8

// Whether a piston touches the head.
const (
	HeadContactUnknown HeadContact = iota // no gasket is chosen, or its thickness isn't known
	HeadClear                             // clearance is left, whatever the readings leave open
	HeadMayTouch                          // it may touch
	HeadTouches                           // it touches for certain
)

var headContacts = []string{"not told", "clear of the head", "may touch the head", "touches the head"}

// String is it in words.
func (h HeadContact) String() string { return word(headContacts, uint8(h)) }

// MarshalText writes what String gives.
func (h HeadContact) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// UnmarshalText reads what String gives.
func (h *HeadContact) UnmarshalText(text []byte) error {
	return readWord("contact with the head", headContacts, text, h)
}

// A GasketCheck is what it takes to choose a head gasket by the pistons'
// protrusions. Measure with the block face clean, the piston pushed to one
// side and then the other: over the pin's axis it hardly shows.
type GasketCheck struct {
	Pistons []DeckPiston `json:"pistons"` // all of them: the greatest chooses
	Table   GasketTable  `json:"table"`   // the engine maker's
	// Tilt is how much the two points of one piston may differ, either way;
	// zero where nothing is given. Beyond it the gasket isn't chosen.
	Tilt tolerance.Spec `json:"tilt,omitzero"`
	// Clearance is what the clearance to the head's face must be; zero where
	// nothing is given.
	Clearance tolerance.Spec `json:"clearance,omitzero"`
}

// A GasketPiston is what follows for one piston.
type GasketPiston struct {
	Where      string            `json:"where"`              // as it was given
	Protrusion tolerance.Bracket `json:"protrusion"`         // the mean of its two points
	Side       DeckSide          `json:"side"`               // of the block face
	Tilt       tolerance.Bracket `json:"tilt"`               // first point less second
	Square     tolerance.Finding `json:"square"`             // the tilt's magnitude against its limit
	Clearance  tolerance.Bracket `json:"clearance,omitzero"` // to the head, under the gasket chosen
}

// A GasketChoice is the answer of [GasketCheck.Choose]. It is plain data.
type GasketChoice struct {
	Pistons  []GasketPiston    `json:"pistons"`          // in the order given
	Greatest tolerance.Bracket `json:"greatest"`         // the greatest protrusion
	Governs  []string          `json:"governs"`          // the piston that has it, or all that may
	Faults   []selective.Fault `json:"faults,omitempty"` // of the table: gaps, shared limits, overlaps
	// Verdict is Within where one row is meant for certain, Below and Above
	// where the protrusion lies below the table's first row or above its last,
	// and Undecided otherwise, which is not a choice.
	Verdict tolerance.Verdict `json:"verdict"`
	Row     int               `json:"row"`            // chosen, counted from 0; −1 where none is
	Rows    []int             `json:"rows,omitempty"` // all that may be meant
	// Needs says what would settle it where no row is chosen.
	Needs string `json:"needs,omitempty"`
	// Clearance is the finding on the clearance to the head of all pistons,
	// over the chosen gasket's whole band; zero where no row is chosen or the
	// table has no thicknesses.
	Clearance tolerance.Finding `json:"clearance,omitzero"`
	Contact   HeadContact       `json:"contact"` // of the piston with the least clearance
	Next      string            `json:"next"`    // what to do next, in words
}

// Choose picks the gasket by the greatest protrusion. It is chosen only where
// one row is meant for certain: a bracket across two rows, a value that two
// rows share, one in a gap between rows, and a piston that doesn't stand
// square are each reported with what would settle them.
//
// Some makers choose by the mean of the pistons, with a rule for one that
// stands out; where the manual says so, it governs and this isn't the rule.
//
// It fails with an [InputError] where there are no pistons, a reading is
// missing, two pistons have one name, or the table can't be used
// ([GasketTable.Faults]), and as [tolerance.Assess] does.
func (c GasketCheck) Choose() (GasketChoice, error) {
	r := GasketChoice{Row: -1}
	faults, err := c.Table.Faults()
	if err != nil {
		return GasketChoice{}, err
	}
	r.Faults = faults
	if len(c.Pistons) == 0 {
		return GasketChoice{}, &InputError{"protrusion", "of no piston", "measured on every piston"}
	}
	var crooked []string
	r.Pistons = make([]GasketPiston, 0, len(c.Pistons))
	all := make([]tolerance.Bracket, len(c.Pistons))
	for i, p := range c.Pistons {
		for _, o := range c.Pistons[:i] {
			if o.Where == p.Where {
				return GasketChoice{}, &InputError{"piston", clip([]byte(p.Where)), "named once"}
			}
		}
		g := GasketPiston{Where: p.Where}
		if g.Protrusion, g.Tilt, err = p.Protrusion(); err != nil {
			return GasketChoice{}, err
		}
		if g.Square, err = tolerance.Assess("difference of the two points", p.Where, c.Tilt, g.Tilt.Abs()); err != nil {
			return GasketChoice{}, err
		}
		if !c.Tilt.IsZero() && !passes(g.Square.Standing) {
			crooked = append(crooked, p.Where)
		}
		g.Side = DeckSideOf(g.Protrusion)
		r.Pistons, all[i] = append(r.Pistons, g), g.Protrusion
	}
	_, r.Greatest = tolerance.Extremes(all...)
	r.Governs = r.mayBeGreatest()
	if err := r.place(c.Table, crooked); err != nil {
		return GasketChoice{}, err
	}
	if err := r.clear(c); err != nil {
		return GasketChoice{}, err
	}
	r.Next = r.next(c.Table)
	return r, nil
}

// passes reports a standing that a part may run with.
func passes(s tolerance.Standing) bool { return s == tolerance.AsNew || s == tolerance.Usable }

// mayBeGreatest are the pistons that no other is sure to stand above.
func (r *GasketChoice) mayBeGreatest() (names []string) {
	lo, _ := r.Greatest.Lower()
	for _, p := range r.Pistons {
		// The greatest's lower end is the greatest of all lower ends.
		if hi, _ := p.Protrusion.Upper(); hi >= lo {
			names = append(names, p.Where)
		}
	}
	return names
}

// place finds the rows, and says what would settle which.
func (r *GasketChoice) place(t GasketTable, crooked []string) error {
	p, err := t.grades().Place(r.Greatest)
	if err != nil {
		return err
	}
	r.Rows, r.Verdict = t.rows(p.Grades), t.lies(r.Greatest)
	_, one := p.Grade()
	switch {
	case len(crooked) > 0:
		r.Verdict = tolerance.Undecided
		r.Needs = "find out why the two points of " + strings.Join(crooked, " and ") +
			" differ: measure again right above the ends of the pin's axis, with the dial's base flat on a clean face; if they still do, check the rod for bend and twist"
	case one:
		r.Verdict, r.Row = tolerance.Within, r.Rows[0]
	case r.Verdict == tolerance.Above:
		r.Needs = "the protrusion is above all rows: no gasket of the table is thick enough; check block height, rods and pistons, and that the table is this engine's"
	case r.Verdict == tolerance.Below:
		r.Needs = "the protrusion is below all rows: check that pistons and rods are the right ones, and that the table is this engine's"
	case p.Shared:
		r.Needs = "the table itself gives " + r.Greatest.String() + " to more than one row: the manual, or the maker, must say which; no measurement will"
	case len(r.Rows) == 0 && r.Greatest.IsExact(), len(r.Rows) == 0 && len(t.edges(r.Greatest)) == 0:
		r.Needs = "the table has no row for " + r.Greatest.String() + ", which lies between two of them: the manual, or the maker, must say which; no measurement will"
	default:
		r.Needs = "measure " + strings.Join(r.Governs, " and ") + " more closely: the greatest protrusion " + r.Greatest.String() +
			" may lie on either side of " + strings.Join(t.edges(r.Greatest), " and ")
		if len(p.Outside) > 0 {
			r.Needs += ", where the table may have no row"
		}
	}
	return nil
}

// clear works out the clearance of all pistons under the chosen row.
func (r *GasketChoice) clear(c GasketCheck) error {
	if r.Row < 0 || c.Table[r.Row].Thickness.IsZero() {
		return nil
	}
	all := make([]tolerance.Bracket, len(r.Pistons))
	for i := range r.Pistons {
		all[i] = GasketClearance(c.Table[r.Row].Thickness.Interval(), r.Pistons[i].Protrusion)
		r.Pistons[i].Clearance = all[i]
	}
	var err error
	r.Clearance, err = tolerance.Assess("piston-to-head clearance", "least at "+strings.Join(r.Governs, " or "), c.Clearance, all...)
	if err != nil {
		return err
	}
	r.Contact = headContact(r.Clearance.Least)
	return nil
}

// headContact is what the least clearance says. A clearance of zero touches.
func headContact(least tolerance.Bracket) HeadContact {
	lo, loEnd := least.Lower()
	hi, _ := least.Upper()
	switch {
	case hi <= 0:
		return HeadTouches
	case lo > 0, lo == 0 && loEnd == tolerance.Open:
		return HeadClear
	}
	return HeadMayTouch
}

// LeastClearance is the least clearance that a piston may have to the head
// under the gasket chosen, in millimetres to so many places, rounded down:
// toward the dangerous side, so that what is printed is there for certain. It
// is empty where none is known.
func (r GasketChoice) LeastClearance(places int) string {
	if r.Contact == HeadContactUnknown {
		return ""
	}
	lo, _ := r.Clearance.Least.Lower()
	text, _ := lo.Append(nil, units.Style[units.Length]{Unit: units.InMillimetres, Places: places, Rounding: units.Down})
	return string(text)
}

// next says what to do.
func (r *GasketChoice) next(t GasketTable) string {
	switch {
	case r.Row < 0:
		return "no gasket is chosen: " + r.Needs
	case r.Contact == HeadTouches, r.Contact == HeadMayTouch:
		return "don't build: under the gasket marked " + t[r.Row].Mark + " a piston " + r.Contact.String() + "; check the table and the readings"
	case r.Contact == HeadClear && !r.Clearance.Spec.IsZero() && !passes(r.Clearance.Standing):
		return "not a pass: the gasket marked " + t[r.Row].Mark + " is the table's, but its clearance is not as wanted: " + r.Clearance.Explain()
	}
	return "fit the gasket marked " + t[r.Row].Mark + "; turn the engine by hand two full turns before it runs"
}
