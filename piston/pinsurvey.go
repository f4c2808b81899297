package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
)

// PinFit says how a gudgeon pin is held in the rod's small end. The zero value
// is PinFitNotStated.
type PinFit uint8

// The fits.
const (
	PinFitNotStated PinFit = iota // not recorded
	PinFloating                   // free in the small end, held by circlips in the piston
	PinPressed                    // with interference in the small end, free in the piston
)

var pinFitNames = []string{"not stated", "floating", "pressed"}

// String is the fit in words.
func (f PinFit) String() string { return word(pinFitNames, uint8(f)) }

// MarshalText writes what String gives.
func (f PinFit) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads what String gives.
func (f *PinFit) UnmarshalText(text []byte) error { return readWord("pin fit", pinFitNames, text, f) }

// A PinSection is a place along a pin, or along a hole for it, and the diameters
// read there in one or more directions.
type PinSection struct {
	Where string              `json:"where"` // "front boss, outer end"
	Sizes []tolerance.Bracket `json:"sizes"` // in the same directions, in the same order, at every section of a list
}

// A PinSurvey is what was measured of one gudgeon pin, of the piston's bosses
// and of the small end that it runs in. What was not measured is left out.
//
// Circlips fly: wear eye protection, cover them while they come out, and fit
// new ones, seated all round, with their gap as the manual says.
type PinSurvey struct {
	Where       string            `json:"where"`                // "piston 3"
	Fit         PinFit            `json:"fit"`                  // in the small end
	AtBosses    []PinSection      `json:"atBosses,omitempty"`   // of the pin, where it lies in the bosses
	AtSmallEnd  []PinSection      `json:"atSmallEnd,omitempty"` // of the pin, where the small end is
	Bosses      []PinSection      `json:"bosses,omitempty"`     // of the piston
	SmallEnd    []PinSection      `json:"smallEnd,omitempty"`   // of the rod, or of its bush
	NewPin      tolerance.Bracket `json:"newPin,omitzero"`      // size when new; of a band, band.Interval()
	NewBoss     tolerance.Bracket `json:"newBoss,omitzero"`     // likewise
	NewSmallEnd tolerance.Bracket `json:"newSmallEnd,omitzero"` // likewise
	Between     tolerance.Bracket `json:"between,omitzero"`     // between the seated circlips; see PinBetween
	Length      tolerance.Bracket `json:"length,omitzero"`      // of the pin
}

// PinLimits are the limits of what is measured of a gudgeon pin and its holes; a
// zero Spec is none.
type PinLimits struct {
	Size                 tolerance.Spec `json:"size,omitzero"`                 // of the pin
	Ovality              tolerance.Spec `json:"ovality,omitzero"`              // of the pin
	Taper                tolerance.Spec `json:"taper,omitzero"`                // of the pin
	Wear                 tolerance.Spec `json:"wear,omitzero"`                 // of the pin
	BossOvality          tolerance.Spec `json:"bossOvality,omitzero"`          // of the piston's bosses
	BossTaper            tolerance.Spec `json:"bossTaper,omitzero"`            // likewise
	BossWear             tolerance.Spec `json:"bossWear,omitzero"`             // likewise
	BossClearance        tolerance.Spec `json:"bossClearance,omitzero"`        // of the pin in the bosses
	SmallEndOvality      tolerance.Spec `json:"smallEndOvality,omitzero"`      // of the small end or its bush
	SmallEndTaper        tolerance.Spec `json:"smallEndTaper,omitzero"`        // likewise
	SmallEndWear         tolerance.Spec `json:"smallEndWear,omitzero"`         // likewise
	SmallEndClearance    tolerance.Spec `json:"smallEndClearance,omitzero"`    // of a floating pin
	SmallEndInterference tolerance.Spec `json:"smallEndInterference,omitzero"` // of a pressed pin
	EndFloat             tolerance.Spec `json:"endFloat,omitzero"`             // of a floating pin between its circlips
}

// A PinMeasure is something measured of a gudgeon pin. In their order they are
// taken at the bench.
type PinMeasure uint8

// The measures of a gudgeon pin.
const (
	PinMeasureSize                 PinMeasure = iota // of the pin, all places
	PinMeasureOvality                                // of the pin, the worst section
	PinMeasureTaper                                  // of the pin, the worst direction
	PinMeasureWear                                   // of the pin, since new
	PinMeasureBossOvality                            // of the bosses, the worst section
	PinMeasureBossTaper                              // of the bosses, the worst direction
	PinMeasureBossWear                               // of the bosses, since new
	PinMeasureBossClearance                          // of the pin in them
	PinMeasureSmallEndOvality                        // of the small end, the worst section
	PinMeasureSmallEndTaper                          // of the small end, the worst direction
	PinMeasureSmallEndWear                           // of the small end, since new
	PinMeasureSmallEndClearance                      // of a pin that isn't pressed
	PinMeasureSmallEndInterference                   // of a pressed pin
	PinMeasureEndFloat                               // of a pin between circlips
)

const pinMeasures = 14

var pinMeasureNames = []string{
	"pin size", "pin ovality", "pin taper", "pin wear",
	"boss ovality", "boss taper", "boss wear", "pin clearance in the bosses",
	"small end ovality", "small end taper", "small end wear", "pin clearance in the small end",
	"pin interference in the small end", "pin end float",
}

// String is the measure in words.
func (m PinMeasure) String() string { return word(pinMeasureNames, uint8(m)) }

// MarshalText writes what String gives.
func (m PinMeasure) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *PinMeasure) UnmarshalText(text []byte) error {
	return readWord("pin measure", pinMeasureNames, text, m)
}

// Spec is the limit of one measure; the zero Spec where there is none.
func (l *PinLimits) Spec(m PinMeasure) tolerance.Spec {
	if m >= pinMeasures {
		return tolerance.Spec{}
	}
	return *l.specs()[m]
}

func (l *PinLimits) specs() [pinMeasures]*tolerance.Spec {
	return [pinMeasures]*tolerance.Spec{
		&l.Size, &l.Ovality, &l.Taper, &l.Wear, &l.BossOvality, &l.BossTaper, &l.BossWear, &l.BossClearance,
		&l.SmallEndOvality, &l.SmallEndTaper, &l.SmallEndWear, &l.SmallEndClearance, &l.SmallEndInterference, &l.EndFloat,
	}
}

// Validate refuses limits that contradict themselves.
func (l *PinLimits) Validate() error {
	for m, spec := range l.specs() {
		if err := spec.Validate(); err != nil {
			return &InputError{PinMeasure(m).String() + " limits", limitsText(*spec), "limits that agree: " + err.Error()}
		}
	}
	return nil
}

// The lists of a survey, in the order of [PinSurvey.list].
const (
	pinAtBosses = iota
	pinAtSmallEnd
	pinBosses
	pinSmallEnd
	pinLists
)

var pinListNames = [pinLists]string{"pin at the bosses", "pin at the small end", "bosses", "small end"}

func (s *PinSurvey) list(i int) []PinSection {
	switch i {
	case pinAtBosses:
		return s.AtBosses
	case pinAtSmallEnd:
		return s.AtSmallEnd
	case pinBosses:
		return s.Bosses
	}
	return s.SmallEnd
}

// mostPinSections is how many sections, or directions, a list may have.
const mostPinSections = 100

// sections refuses a list that can't be, and gives the least and the greatest
// size in it.
func (s *PinSurvey) sections(i int, like *tolerance.Bracket) (least, greatest tolerance.Bracket, err error) {
	list := s.list(i)
	if len(list) > mostPinSections || len(list) > 0 && len(list[0].Sizes) > mostPinSections {
		return least, greatest, &InputError{s.field(pinListNames[i]), strconv.Itoa(len(list)) + " sections", "100 sections and directions at most"}
	}
	for k := range list {
		if n := len(list[k].Sizes); n == 0 || n != len(list[0].Sizes) {
			return least, greatest, &InputError{s.sectionName(i, k), strconv.Itoa(n) + " diameters",
				"as many as at the first section, " + strconv.Itoa(len(list[0].Sizes)) + ", and one or more"}
		}
		for j := range list[k].Sizes {
			b := list[k].Sizes[j]
			lo, ok := positive(b)
			if !ok {
				return least, greatest, size(s.sectionName(i, k)+", diameter "+strconv.Itoa(j+1), b)
			}
			if like.IsZero() {
				*like = b
			}
			if f, _ := positive(*like); lo > f+f/10 || f > lo+lo/10 {
				return least, greatest, &InputError{s.sectionName(i, k) + ", diameter " + strconv.Itoa(j+1), b.String(),
					"near the others, " + like.String() + ": one of them is in another unit, or a digit slipped"}
			}
		}
		l, g := tolerance.Extremes(list[k].Sizes...)
		if k == 0 {
			least, greatest = l, g
		} else {
			least, greatest = least.Min(l), greatest.Max(g)
		}
	}
	return least, greatest, nil
}

func (s *PinSurvey) sectionName(i, k int) string {
	name := s.list(i)[k].Where
	if name == "" {
		name = "section " + strconv.Itoa(k+1)
	}
	return s.field(pinListNames[i] + ", " + clipWords(name))
}

func (s *PinSurvey) field(name string) string {
	if s.Where == "" {
		return name
	}
	return clipWords(s.Where) + ", " + name
}
