package cylinder

import (
	"fmt"
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// The directions that most bores are gauged in, as angles from the crank's
// axis. Across the crank is where the piston's side thrust wears the bore.
const (
	AlongCrank  = 0 * units.Degree
	AcrossCrank = 90 * units.Degree
)

// A BoreLevel is a height at which a bore was gauged.
type BoreLevel struct {
	Name string `json:"name"` // "below the ridge", "25 mm down"
	// Depth is below the block face, growing from one level to the next; it is
	// 0 at all levels where it isn't known.
	Depth units.Length `json:"depth,omitzero"`
}

// A BoreReading is what the gauge showed at one station. The zero value is a
// reading that was not taken, which is not a reading of nothing.
type BoreReading struct {
	Shown units.Length `json:"shown"` // the size, or the deviation from the setting
	Taken bool         `json:"taken"` // false: not read
}

// ReadBore is a reading that was taken.
func ReadBore(shown units.Length) BoreReading { return BoreReading{shown, true} }

// Recorded says whether something was done while the bores were gauged. A
// plate torqued to the block face, and torqued bearing caps, pull a bore to the
// shape that it will run in. The zero value is NotRecorded.
type Recorded uint8

// What may have been recorded.
const (
	NotRecorded Recorded = iota
	RecordedYes
	RecordedNo
)

var recordedNames = []string{"not recorded", "yes", "no"}

// String is the record in words.
func (r Recorded) String() string { return wordOf(recordedNames, r) }

// MarshalText writes what String gives.
func (r Recorded) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *Recorded) UnmarshalText(text []byte) error {
	return readWord("record", recordedNames, text, r)
}

// A BoreSurvey is what was gauged in one bore, with one gauge in one setting:
// any number of levels in any number of directions, with gaps where nothing
// was read.
type BoreSurvey struct {
	Where    string        `json:"where"`    // "cylinder 3"
	Levels   []BoreLevel   `json:"levels"`   // from the block face down
	Headings []units.Angle `json:"headings"` // of the gauge, from the crank's axis; half a turn on is the same one
	// Readings go level by level: the one at level i, heading j is the
	// i × len(Headings) + j-th.
	Readings []BoreReading `json:"readings"`
	// Gauge is what they were taken with. A micrometer reads sizes; a dial bore
	// gauge, whose setting is the ring that it shows 0 on, deviations.
	Gauge instrument.Instrument `json:"gauge"`
	// Block is the block's temperature and expansion; zero at 20 °C.
	Block instrument.Thermal `json:"block,omitzero"`
	// Finished is the size that the bore was last finished to, which wear
	// counts from: 86.50 mm, not 86 mm, for a bore at +0.50.
	Finished tolerance.Bracket `json:"finished,omitzero"`
	// Unworn is a reading with the same gauge below the ring travel. Where it
	// was taken wear counts from it, and the gauge's setting drops out.
	Unworn      BoreReading `json:"unworn,omitzero"`
	Ridge       Ridge       `json:"ridge,omitzero"`       // zero where it was not measured
	TorquePlate Recorded    `json:"torquePlate,omitzero"` // whether one was fitted
	CapsTorqued Recorded    `json:"capsTorqued,omitzero"` // whether the bearing caps were
}

// A Station is where in a survey a reading stands, by its places from 0.
type Station struct {
	Level   int `json:"level"`   // in BoreSurvey.Levels
	Heading int `json:"heading"` // in BoreSurvey.Headings
}

// MostStations is how many readings a survey may have.
const MostStations = 100_000

// At is the reading at a station; one outside the survey was not taken.
func (s *BoreSurvey) At(st Station) BoreReading {
	if st.Level < 0 || st.Level >= len(s.Levels) || st.Heading < 0 || st.Heading >= len(s.Headings) {
		return BoreReading{}
	}
	if i := st.Level*len(s.Headings) + st.Heading; i < len(s.Readings) {
		return s.Readings[i]
	}
	return BoreReading{}
}

// Name is a station in words: "top, across the crank".
func (s *BoreSurvey) Name(st Station) string {
	return s.LevelName(st.Level) + ", " + s.HeadingName(st.Heading)
}

// LevelName is a level in words, by its number from 1 where it has no name.
func (s *BoreSurvey) LevelName(level int) string {
	if level < 0 || level >= len(s.Levels) || s.Levels[level].Name == "" {
		return "level " + strconv.Itoa(level+1)
	}
	return s.Levels[level].Name
}

// HeadingName is a heading in words: "across the crank", "45° to the crank".
func (s *BoreSurvey) HeadingName(heading int) string {
	if heading < 0 || heading >= len(s.Headings) {
		return "direction " + strconv.Itoa(heading+1)
	}
	switch a := halfTurn(s.Headings[heading]); a {
	case AlongCrank:
		return "along the crank"
	case AcrossCrank:
		return "across the crank"
	default:
		return a.Text(units.InDegrees, units.AllPlaces) + " to the crank"
	}
}

// halfTurn brings a gauge's heading to 0° or more and less than 180°: a
// diameter has no front.
func halfTurn(a units.Angle) units.Angle {
	const half = 180 * units.Degree
	if a %= half; a < 0 {
		a += half
	}
	return a
}

// validate refuses what is no survey.
func (s *BoreSurvey) validate() error {
	n := len(s.Headings)
	bad := func(field, value, want string) error {
		return &InputError{s.fieldName(field), value, want}
	}
	switch {
	case len(s.Levels) == 0:
		return bad("levels", "(none)", "one level or more")
	case n == 0:
		return bad("directions", "(none)", "one direction or more")
	case len(s.Levels) > MostStations || n > MostStations || len(s.Levels)*n > MostStations:
		return bad("stations", fmt.Sprint(len(s.Levels), " levels × ", n, " directions"), "100 000 at most")
	case len(s.Readings) != len(s.Levels)*n:
		return bad("readings", strconv.Itoa(len(s.Readings)), fmt.Sprint(len(s.Levels)*n, ": one for each level and direction, untaken ones included"))
	}
	for j, a := range s.Headings {
		if !a.InRange() {
			return bad("direction "+strconv.Itoa(j+1), a.String(), "within the range of an angle")
		}
		for _, b := range s.Headings[:j] {
			if halfTurn(a) == halfTurn(b) {
				return bad("direction "+strconv.Itoa(j+1), a.String(), "another one than those before it: half a turn on is the same diameter")
			}
		}
	}
	if last := s.Levels[len(s.Levels)-1].Depth; last != 0 {
		before := units.Length(math.MinInt64)
		for i := range s.Levels {
			d := s.Levels[i].Depth
			if d <= before || d < -largest || d > largest {
				return bad("depth of "+s.LevelName(i), d.String(), "greater than that of the level above it, from the block face down, or 0 at all levels")
			}
			before = d
		}
	} else {
		for i := range s.Levels {
			if d := s.Levels[i].Depth; d != 0 {
				return bad("depth of "+s.LevelName(i), d.String(), "0 at all levels, or growing to the last")
			}
		}
	}
	if !s.Finished.IsZero() {
		const field = "size last finished to" // named in full only where it is needed
		if boreBracket(field, s.Finished, units.Picometre) != nil {
			return boreBracket(s.fieldName(field), s.Finished, units.Picometre)
		}
	}
	return nil
}

func (s *BoreSurvey) fieldName(field string) string {
	if s.Where == "" {
		return field
	}
	return clip(s.Where) + ", " + field
}
