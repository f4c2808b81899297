package piston

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SkirtStation is a height at which a skirt was measured. A bracket holds the
// micrometer's error; the zero bracket is a size that was not read.
type SkirtStation struct {
	// Height is above the skirt's lower edge, or from wherever the manual
	// counts, the same for all stations.
	Height units.Length      `json:"height"`
	Across tolerance.Bracket `json:"across,omitzero"` // the size across the thrust faces, at right angles to the gudgeon pin
	Along  tolerance.Bracket `json:"along,omitzero"`  // the size along the gudgeon pin
	New    tolerance.Bracket `json:"new,omitzero"`    // the size across the thrust faces at this height when new; of a band, band.Interval()
}

// A SkirtSurvey is what was measured of one piston's skirt and of its bore.
//
// Measure at the temperature the manual names, 20 °C where it names none: an
// alloy piston of 86 mm warm from the hand at 30 °C reads 0.017 mm large.
type SkirtSurvey struct {
	Where    string         `json:"where"`    // "piston 3"
	Stations []SkirtStation `json:"stations"` // from the lower edge up
	// MeasuringHeight is where the manual has the skirt measured; size,
	// ovality, wear and clearance are of the station at that height and of no
	// other, since a skirt is barrelled and nothing in between can be guessed.
	MeasuringHeight units.Length        `json:"measuringHeight"`
	Bores           []tolerance.Bracket `json:"bores,omitempty"`    // of its cylinder, where the skirt runs
	Pulled          []tolerance.Bracket `json:"pulled,omitempty"`   // clearances by a pull test, at several places round the skirt
	PullRule        string              `json:"pullRule,omitempty"` // the name of the [PullRule] that they are by
}

// SkirtLimits are the limits of what is measured on a skirt; a zero Spec is none.
type SkirtLimits struct {
	Size      tolerance.Spec `json:"size,omitzero"`      // across the thrust faces, at the measuring height
	Ovality   tolerance.Spec `json:"ovality,omitzero"`   // on the diameter, at the measuring height
	Taper     tolerance.Spec `json:"taper,omitzero"`     // wider below is above zero
	Wear      tolerance.Spec `json:"wear,omitzero"`      // on the diameter, at the measuring height
	Collapse  tolerance.Spec `json:"collapse,omitzero"`  // on the diameter, at the lowest station
	Clearance tolerance.Spec `json:"clearance,omitzero"` // on the diameter, by micrometers
	Pulled    tolerance.Spec `json:"pulled,omitzero"`    // on the diameter, by the pull test that the limits are meant for
}

// A SkirtMeasure is something measured on a skirt. In their order they are
// taken at the bench.
type SkirtMeasure uint8

// The measures of a skirt.
const (
	SkirtMeasureSize      SkirtMeasure = iota // across the thrust faces, at the measuring height
	SkirtMeasureOvality                       // there, against the size along the gudgeon pin
	SkirtMeasureTaper                         // of the lowest station against the highest
	SkirtMeasureWear                          // at the measuring height, since new
	SkirtMeasureCollapse                      // at the lowest station whose new size is known
	SkirtMeasureClearance                     // bores against the measuring height, by micrometers
	SkirtMeasurePulled                        // by a pull test
)

const skirtMeasures = 7

var skirtMeasureNames = []string{
	"skirt size", "skirt ovality", "skirt taper", "skirt wear", "skirt collapse",
	"piston clearance", "piston clearance by pull test",
}

// String is the measure in words.
func (m SkirtMeasure) String() string { return word(skirtMeasureNames, uint8(m)) }

// MarshalText writes what String gives.
func (m SkirtMeasure) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *SkirtMeasure) UnmarshalText(text []byte) error {
	return readWord("skirt measure", skirtMeasureNames, text, m)
}

// Spec is the limit of one measure; the zero Spec where there is none.
func (l *SkirtLimits) Spec(m SkirtMeasure) tolerance.Spec {
	if m >= skirtMeasures {
		return tolerance.Spec{}
	}
	return *l.specs()[m]
}

func (l *SkirtLimits) specs() [skirtMeasures]*tolerance.Spec {
	return [skirtMeasures]*tolerance.Spec{&l.Size, &l.Ovality, &l.Taper, &l.Wear, &l.Collapse, &l.Clearance, &l.Pulled}
}

// Validate refuses limits that contradict themselves.
func (l *SkirtLimits) Validate() error {
	for m, spec := range l.specs() {
		if err := spec.Validate(); err != nil {
			return &InputError{SkirtMeasure(m).String() + " limits", limitsText(*spec), "limits that agree: " + err.Error()}
		}
	}
	return nil
}

// validate refuses what is no survey.
func (s *SkirtSurvey) validate() error {
	bad := func(field, value, want string) error { return &InputError{s.field(field), value, want} }
	if len(s.Stations)+len(s.Bores)+len(s.Pulled) == 0 {
		return bad("readings", "(none)", "a skirt measured at one height, or a pull test")
	}
	for i := range s.Stations {
		st := &s.Stations[i]
		if i > 0 && st.Height <= s.Stations[i-1].Height || !st.Height.InRange() {
			return bad("station "+strconv.Itoa(i+1)+", height", st.Height.String(), "above the height of the station before it: from the skirt's lower edge up")
		}
		if err := s.alike(i); err != nil {
			return err
		}
	}
	for i := range s.Bores {
		if _, ok := positive(s.Bores[i]); !ok {
			return size(s.field("bore "+strconv.Itoa(i+1)), s.Bores[i])
		}
	}
	for i := range s.Pulled {
		lo, end := s.Pulled[i].Lower()
		if end == tolerance.Absent || lo < 0 || !s.Pulled[i].InRange() {
			return bad("pulled clearance "+strconv.Itoa(i+1), s.Pulled[i].String(), "0 mm or more: a strip can't be pulled where there is an interference")
		}
	}
	return nil
}

// alike refuses sizes of a station that aren't those of one skirt.
func (s *SkirtSurvey) alike(i int) error {
	st := &s.Stations[i]
	var first *tolerance.Bracket
	for k, b := range [3]*tolerance.Bracket{&st.Across, &st.Along, &st.New} {
		if b.IsZero() {
			continue
		}
		if lo, ok := positive(*b); ok {
			if first == nil {
				first = b
				continue
			}
			if f, _ := positive(*first); lo <= f+f/10 && f <= lo+lo/10 {
				continue
			}
		}
		names := [3]string{"across the thrust faces", "along the pin", "new size"}
		field := s.field("station " + strconv.Itoa(i+1) + ", " + names[k])
		if err := size(field, *b); err != nil {
			return err
		}
		return &InputError{field, b.String(), "near the station's other sizes, " + first.String() + ": one of them is in another unit, or a digit slipped"}
	}
	return nil
}

func (s *SkirtSurvey) field(name string) string {
	if s.Where == "" {
		return name
	}
	return clipWords(s.Where) + ", " + name
}

// clipWords is a caller's own name, at most 64 bytes of it.
func clipWords(name string) string {
	if len(name) > 64 {
		return strings.ToValidUTF8(name[:64], "") + "…"
	}
	return name
}
