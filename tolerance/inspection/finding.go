package inspection

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Finding is one measure judged, of whatever quantity: exactly one of its
// pointers is set. [Found] makes one.
type Finding struct {
	Step Step   `json:"step"`           // where on the bench it was measured
	Path string `json:"path,omitempty"` // of its reading, or the list of them, in the readings document

	Length   *tolerance.Finding                     `json:"length,omitempty"`   // of a length
	Force    *tolerance.FindingOf[units.Force]      `json:"force,omitempty"`    // of a load
	Rate     *tolerance.FindingOf[units.SpringRate] `json:"rate,omitempty"`     // of a spring's rate
	Mass     *tolerance.FindingOf[units.Mass]       `json:"mass,omitempty"`     // of a mass
	Pressure *tolerance.FindingOf[units.Pressure]   `json:"pressure,omitempty"` // of a pressure
	Angle    *tolerance.FindingOf[units.Angle]      `json:"angle,omitempty"`    // of an angle
	Volume   *tolerance.FindingOf[units.Volume]     `json:"volume,omitempty"`   // of a volume
}

// Found is a finding with its place on the bench and in the document. A
// quantity that no part is judged by (temperatures) gives an empty finding.
func Found[Q units.Quantity](step Step, path string, f tolerance.FindingOf[Q]) Finding {
	out := Finding{Step: step, Path: path}
	switch p := any(&f).(type) {
	case *tolerance.Finding:
		out.Length = p
	case *tolerance.FindingOf[units.Force]:
		out.Force = p
	case *tolerance.FindingOf[units.SpringRate]:
		out.Rate = p
	case *tolerance.FindingOf[units.Mass]:
		out.Mass = p
	case *tolerance.FindingOf[units.Pressure]:
		out.Pressure = p
	case *tolerance.FindingOf[units.Angle]:
		out.Angle = p
	case *tolerance.FindingOf[units.Volume]:
		out.Volume = p
	}
	return out
}

// common is what a finding of any quantity has.
type common struct {
	measure, where, settle string
	standing               tolerance.Standing
}

func commonOf[Q units.Quantity](f *tolerance.FindingOf[Q]) common {
	return common{f.Measure, f.Where, f.Settle, f.Standing}
}

func (f Finding) common() common {
	switch {
	case f.Length != nil:
		return commonOf(f.Length)
	case f.Force != nil:
		return commonOf(f.Force)
	case f.Rate != nil:
		return commonOf(f.Rate)
	case f.Mass != nil:
		return commonOf(f.Mass)
	case f.Pressure != nil:
		return commonOf(f.Pressure)
	case f.Angle != nil:
		return commonOf(f.Angle)
	case f.Volume != nil:
		return commonOf(f.Volume)
	}
	return common{}
}

// Measure is what was measured: "ring side clearance".
func (f Finding) Measure() string { return f.common().measure }

// Where is the place: "piston 2, top groove".
func (f Finding) Where() string { return f.common().where }

// Standing is the part's by this measure; of an empty finding CantTell.
func (f Finding) Standing() tolerance.Standing { return f.common().standing }

// Settle is what would tell more of an undecided standing.
func (f Finding) Settle() string { return f.common().settle }

// Explain is the standing in a sentence.
func (f Finding) Explain() string {
	switch {
	case f.Length != nil:
		return f.Length.Explain()
	case f.Force != nil:
		return f.Force.Explain()
	case f.Rate != nil:
		return f.Rate.Explain()
	case f.Mass != nil:
		return f.Mass.Explain()
	case f.Pressure != nil:
		return f.Pressure.Explain()
	case f.Angle != nil:
		return f.Angle.Explain()
	case f.Volume != nil:
		return f.Volume.Explain()
	}
	return ""
}

// String is the finding in exact values.
func (f Finding) String() string {
	switch {
	case f.Length != nil:
		return f.Length.String()
	case f.Force != nil:
		return f.Force.String()
	case f.Rate != nil:
		return f.Rate.String()
	case f.Mass != nil:
		return f.Mass.String()
	case f.Pressure != nil:
		return f.Pressure.String()
	case f.Angle != nil:
		return f.Angle.String()
	case f.Volume != nil:
		return f.Volume.String()
	}
	return ""
}

// Missing is a reading that is still to be taken. From an empty document they
// are the lines of a blank bench sheet.
type Missing struct {
	Step    Step   `json:"step"`            // where on the bench
	Path    string `json:"path"`            // in the readings document
	Measure string `json:"measure"`         // "bore"
	Where   string `json:"where"`           // "cylinder 3, top, across the crank"
	With    string `json:"with,omitempty"`  // the instrument
	Limit   string `json:"limit,omitempty"` // what is asked, as printed
}

// An Order is something to buy for the work.
type Order struct {
	Step  Step     `json:"step"`           // of the part it is for
	What  string   `json:"what"`           // "pistons with rings"
	Size  string   `json:"size,omitempty"` // "+0.50 mm"
	Count int      `json:"count"`          // how many pieces, or sets
	For   []string `json:"for,omitempty"`  // which cylinders, journals, valves
	Sure  bool     `json:"sure"`           // false where a decision is still open: don't buy yet
}

// Text is the order in a line.
func (o Order) Text() string {
	var b strings.Builder
	b.WriteString(o.What)
	if o.Size != "" {
		b.WriteString(", " + o.Size)
	}
	if len(o.For) > 0 {
		b.WriteString(" (" + strings.Join(o.For, ", ") + ")")
	}
	if !o.Sure {
		b.WriteString(": not yet, a decision is open")
	}
	return b.String()
}
