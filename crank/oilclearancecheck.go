package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An OilMethod is how an oil clearance was found. The zero value is none.
type OilMethod uint8

// The methods.
const (
	NoOilMethod    OilMethod = iota
	ByShellWalls             // housing less two walls less journal, before nip
	ByBore                   // the bore with the shells in place, less journal
	ByGaugingStrip           // a crushed plastic strip
)

var oilMethodNames = []string{"", "by the shells' walls, before nip", "by the bore with the shells in place", "by gauging strip"}

// String is the method in words.
func (m OilMethod) String() string { return journalWord(oilMethodNames, m) }

// MarshalText writes what String gives.
func (m OilMethod) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *OilMethod) UnmarshalText(text []byte) error {
	return journalRead("method", oilMethodNames, text, m)
}

// OilReadings is what was measured on one bearing: its journal, and the bore with
// the shells in place or, where that was not measured, housing and walls. All are
// diameters but the walls, at 20 °C or all at one temperature; readings at several
// places stand beside each other.
type OilReadings struct {
	Where   string              `json:"where"`   // "main 3"
	Journal []tolerance.Bracket `json:"journal"` // in several planes and directions
	// Bore is with the shells in place and the cap tightened as the manual says, at
	// 90° to the split.
	Bore    []tolerance.Bracket `json:"bore,omitzero"`
	Housing []tolerance.Bracket `json:"housing,omitzero"` // shells out, cap tightened
	Upper   []tolerance.Bracket `json:"upper,omitzero"`   // wall of the half in the block or rod, at its crown
	Lower   []tolerance.Bracket `json:"lower,omitzero"`   // wall of the half in the cap, at its crown
}

// An OilReport is what follows.
type OilReport struct {
	Method   OilMethod         `json:"method"`   // bore where it was measured, else walls
	Least    tolerance.Bracket `json:"least"`    // least bore less greatest journal
	Greatest tolerance.Bracket `json:"greatest"` // greatest bore less least journal
	// Thumb is the rule of thumb for the greatest journal. It is common practice and
	// no limit.
	Thumb   tolerance.Bracket `json:"thumb"`
	Finding tolerance.Finding `json:"finding"` // against the limits
	Next    string            `json:"next"`    // what to do
}

// Check works out the oil clearance of one bearing against its limits. The least
// clearance is judged against the lower limit and the greatest against the upper:
// the same two readings that a mean would hide.
//
// It fails, with an [InputError], where a reading is missing or can't be, where the
// journal is larger than its housing, and where the clearance is below zero for
// sure, which is an interference: the shaft would not turn. A bracket that only
// reaches below zero is kept: it can't be told yet whether the shaft turns free.
func (o *OilReadings) Check(limits tolerance.Spec) (OilReport, error) {
	var r OilReport
	if err := o.check(); err != nil {
		return r, err
	}
	bores := o.Bore
	r.Method = ByBore
	if len(bores) == 0 {
		r.Method = ByShellWalls
		bores = o.behindWalls()
	}
	r.Least, _ = LeastOilClearance(bores, o.Journal)
	r.Greatest, _ = GreatestOilClearance(bores, o.Journal)
	_, greatest := tolerance.Extremes(o.Journal...)
	r.Thumb = OilClearanceThumb(greatest)
	if _, hi := journalEnds(r.Least); hi < 0 {
		return r, &InputError{journalField(o.Where, "oil clearance"), r.Least.String(),
			"a clearance: it is an interference, and the shaft would not turn; check shells, sizes and units"}
	}
	var err error
	r.Finding, err = tolerance.Assess("oil clearance, "+r.Method.String(), o.Where, limits, r.Least, r.Greatest)
	r.Next = r.next()
	return r, err
}

// behindWalls are the bores that housing and walls make: every housing reading with
// the thickest and the thinnest walls.
func (o *OilReadings) behindWalls() []tolerance.Bracket {
	thinUpper, thickUpper := tolerance.Extremes(o.Upper...)
	thinLower, thickLower := tolerance.Extremes(o.Lower...)
	bores := make([]tolerance.Bracket, 0, 2*len(o.Housing))
	for _, h := range o.Housing {
		bores = append(bores, h.Sub(thickUpper).Sub(thickLower), h.Sub(thinUpper).Sub(thinLower))
	}
	return bores
}

func (r *OilReport) next() string {
	lo, _ := journalEnds(r.Least)
	switch {
	case r.Finding.Standing == tolerance.CantTell && lo < 0:
		return "what was measured doesn't tell clearance from interference, which is not a pass: measure more closely before the shaft is laid in"
	case r.Finding.Standing == tolerance.CantTell && r.Method == ByShellWalls:
		return "can't be told yet, which is not a pass: tighten the cap on its shells and measure the bore at 90° to the split"
	case r.Finding.Standing == tolerance.CantTell:
		return "can't be told yet, which is not a pass: " + r.Finding.Settle
	case r.Finding.Standing >= tolerance.OutsideNewBand && (r.Finding.Wear.Least == tolerance.Below || r.Finding.New.Least == tolerance.Below):
		return "too tight: look for dirt or a burr behind the shells, then for the wrong undersize or a journal ground too large"
	case r.Finding.Standing >= tolerance.OutsideNewBand:
		return "too wide: other shells, the next undersize or grinding; never file a cap to close it"
	case r.Method == ByShellWalls:
		return "within the limits, before nip; prove it with the bore measured, or a gauging strip, at assembly"
	}
	return "within the limits"
}

func (o *OilReadings) check() error {
	lists := [...]struct {
		field    string
		readings []tolerance.Bracket
		needed   bool
	}{
		{"journal", o.Journal, true}, {"bore", o.Bore, false}, {"housing", o.Housing, len(o.Bore) == 0},
		{"upper shell's wall", o.Upper, len(o.Bore) == 0}, {"lower shell's wall", o.Lower, len(o.Bore) == 0},
	}
	for _, l := range lists {
		if l.needed && len(l.readings) == 0 {
			return &InputError{journalField(o.Where, l.field), "(not given)", "measured: journal, and either the bore with the shells in place or housing and both walls"}
		}
		for i, b := range l.readings {
			if journalBracket(l.field, b, units.Picometre) != nil {
				field := l.field
				if len(l.readings) > 1 {
					field += ", reading " + strconv.Itoa(i+1)
				}
				return journalBracketOf(o.Where, field, b, units.Picometre)
			}
		}
		// Readings of one thing that differ by half are in two units.
		if len(l.readings) > 1 {
			least, greatest := tolerance.Extremes(l.readings...)
			lo, _ := journalEnds(least)
			if _, hi := journalEnds(greatest); hi > lo+lo/2 {
				return &InputError{journalField(o.Where, l.field), least.String(), "near " + greatest.String() + ", which was read of it elsewhere: one of them is in another unit"}
			}
		}
	}
	_, greatest := tolerance.Extremes(o.Journal...)
	journal, _ := journalEnds(greatest)
	outer, outerField := o.Bore, "bore"
	if len(o.Housing) > 0 {
		outer, outerField = o.Housing, "housing bore"
	}
	least, _ := tolerance.Extremes(outer...)
	_, housing := journalEnds(least)
	if len(o.Housing) > 0 && journal >= housing {
		return &InputError{journalField(o.Where, "journal"), greatest.String(), "below the " + outerField + " " + least.String() + ": are both of one bearing, in one unit?"}
	}
	// A bore three times the journal is another unit, or another bearing.
	if journal < housing/2 || journal > 2*housing {
		return &InputError{journalField(o.Where, "journal"), greatest.String(), "near the " + outerField + " " + least.String()}
	}
	return nil
}
