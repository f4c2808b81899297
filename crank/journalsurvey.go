package crank

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// A JournalKind says what a journal carries. The zero value is MainJournal.
type JournalKind uint8

// The kinds of journal.
const (
	MainJournal JournalKind = iota // runs in the block
	Crankpin                       // carries a rod (rod journal)
)

var journalKindNames = []string{"main journal", "crankpin"}

// String is the kind in words.
func (k JournalKind) String() string { return journalWord(journalKindNames, k) }

// MarshalText writes what String gives.
func (k JournalKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *JournalKind) UnmarshalText(text []byte) error {
	return journalRead("kind of journal", journalKindNames, text, k)
}

// A JournalPlane is a place along a journal at which it was measured, clear of the
// fillets and of oil holes.
type JournalPlane struct {
	Name string `json:"name"` // "front", "rear"
	// Along is its distance from one datum toward the rear, growing from one plane
	// to the next; it is 0 in all planes where it isn't known.
	Along units.Length `json:"along,omitzero"`
}

// A JournalReading is what the micrometer showed at one station. The zero value is
// a reading that was not taken, which is not a reading of nothing.
type JournalReading struct {
	Shown units.Length `json:"shown"` // the size, or the deviation from the setting
	Taken bool         `json:"taken"` // false: not read
}

// ReadJournal is a reading that was taken.
func ReadJournal(shown units.Length) JournalReading { return JournalReading{shown, true} }

// A JournalSurvey is what was measured on one journal, with one micrometer in one
// setting: any number of planes in any number of directions, with gaps where
// nothing was read.
type JournalSurvey struct {
	Where  string         `json:"where"`         // "main 3"
	Kind   JournalKind    `json:"kind,omitzero"` // main journal or crankpin
	Planes []JournalPlane `json:"planes"`        // from the front to the rear
	// Headings are the directions of the diameters, from the line through the axes
	// of mains and pin (on a main, from any mark); half a turn on is the same one.
	Headings []units.Angle `json:"headings"`
	// Readings go plane by plane: the one in plane i, heading j is the i ×
	// len(Headings) + j-th.
	Readings []JournalReading      `json:"readings"`
	Gauge    instrument.Instrument `json:"gauge"`          // what they were taken with
	Shaft    instrument.Thermal    `json:"shaft,omitzero"` // the shaft's temperature and expansion; zero at 20 °C
	// Finished is the size that the journal was last ground to, which wear counts
	// from.
	Finished tolerance.Bracket `json:"finished,omitzero"`
	// What was measured beside the diameters; zero where it was not.
	Fillet      tolerance.Bracket               `json:"fillet,omitzero"`      // radius of the fillets, by gauge
	ThrustWidth tolerance.Bracket               `json:"thrustWidth,omitzero"` // between the thrust faces (on a crankpin, the cheeks)
	Stroke      tolerance.Bracket               `json:"stroke,omitzero"`      // of a crankpin
	Index       tolerance.Interval[units.Angle] `json:"index,omitzero"`       // how far a crankpin stands on from its place; below zero, behind it
}

// A JournalStation is where in a survey a reading stands, by its places from 0.
type JournalStation struct {
	Plane   int `json:"plane"`   // in JournalSurvey.Planes
	Heading int `json:"heading"` // in JournalSurvey.Headings
}

// MostJournalStations is how many readings a survey may have, and MostHeadings
// how many directions.
const (
	MostJournalStations = 100_000
	MostHeadings        = 360 // one for each degree
)

// At is the reading at a station; one outside the survey was not taken.
func (s *JournalSurvey) At(st JournalStation) JournalReading {
	if st.Plane < 0 || st.Plane >= len(s.Planes) || st.Heading < 0 || st.Heading >= len(s.Headings) {
		return JournalReading{}
	}
	if i := st.Plane*len(s.Headings) + st.Heading; i < len(s.Readings) {
		return s.Readings[i]
	}
	return JournalReading{}
}

// Name is a station in words: "front, 90°".
func (s *JournalSurvey) Name(st JournalStation) string {
	return s.PlaneName(st.Plane) + ", " + s.HeadingName(st.Heading)
}

// PlaneName is a plane in words, by its number from 1 where it has no name.
func (s *JournalSurvey) PlaneName(plane int) string {
	if plane < 0 || plane >= len(s.Planes) || s.Planes[plane].Name == "" {
		return "plane " + strconv.Itoa(plane+1)
	}
	return s.Planes[plane].Name
}

// HeadingName is a heading in words: "in line with the throw", "across the throw"
// or its angle.
func (s *JournalSurvey) HeadingName(heading int) string {
	if heading < 0 || heading >= len(s.Headings) {
		return "direction " + strconv.Itoa(heading+1)
	}
	a := journalHalfTurn(s.Headings[heading])
	switch {
	case s.Kind == Crankpin && a == 0:
		return "in line with the throw"
	case s.Kind == Crankpin && a == 90*units.Degree:
		return "across the throw"
	}
	return a.Text(units.InDegrees, units.AllPlaces)
}

// journalHalfTurn brings a heading to 0° or more and less than 180°: a diameter
// has no front.
func journalHalfTurn(a units.Angle) units.Angle {
	const half = 180 * units.Degree
	if a %= half; a < 0 {
		a += half
	}
	return a
}

// validate refuses what is no survey.
func (s *JournalSurvey) validate() error {
	n := len(s.Headings)
	bad := func(field, value, want string) error {
		return &InputError{journalField(s.Where, field), value, want}
	}
	switch {
	case s.Kind > Crankpin:
		return bad("kind", "(unknown)", "a main journal or a crankpin")
	case len(s.Planes) == 0:
		return bad("planes", "(none)", "one plane or more")
	case n == 0:
		return bad("directions", "(none)", "one direction or more")
	case n > MostHeadings:
		return bad("directions", strconv.Itoa(n), "360 at most")
	case len(s.Planes) > MostJournalStations || len(s.Planes)*n > MostJournalStations:
		return bad("stations", fmt.Sprint(len(s.Planes), " planes × ", n, " directions"), "100 000 at most")
	case len(s.Readings) != len(s.Planes)*n:
		return bad("readings", strconv.Itoa(len(s.Readings)), fmt.Sprint(len(s.Planes)*n, ": one for each plane and direction, untaken ones included"))
	}
	for j, a := range s.Headings {
		if !a.InRange() {
			return bad("direction "+strconv.Itoa(j+1), a.String(), "within the range of an angle")
		}
		for _, b := range s.Headings[:j] {
			if journalHalfTurn(a-b) == 0 {
				return bad("direction "+strconv.Itoa(j+1), a.String(), "another one than those before it: half a turn on is the same diameter")
			}
		}
	}
	known := s.Planes[len(s.Planes)-1].Along != 0
	before := units.Length(math.MinInt64)
	for i := range s.Planes {
		d := s.Planes[i].Along
		if known && d <= before || !known && d != 0 || d.Abs() > journalLargest {
			return bad("place of "+s.PlaneName(i), d.String(), "further to the rear than the plane before it, or 0 in all planes")
		}
		before = d
	}
	return s.validateBeside()
}

// validateBeside refuses what was measured beside the diameters and can't be.
func (s *JournalSurvey) validateBeside() error {
	for _, x := range [...]struct {
		field string
		value *tolerance.Bracket
	}{{"size last ground to", &s.Finished}, {"fillet radius", &s.Fillet}, {"thrust width", &s.ThrustWidth}, {"stroke", &s.Stroke}} {
		if !x.value.IsZero() {
			if err := journalBracketOf(s.Where, x.field, *x.value, units.Picometre); err != nil {
				return err
			}
		}
	}
	if s.Index.IsZero() {
		return nil
	}
	lo, loEnd := s.Index.Lower()
	hi, hiEnd := s.Index.Upper()
	const half = 180 * units.Degree
	if !s.Index.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < -half || hi > half {
		return &InputError{journalField(s.Where, "index"), journalQuote(s.Index.String()), "measured, within half a turn either way"}
	}
	return nil
}
