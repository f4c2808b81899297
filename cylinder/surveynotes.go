package cylinder

import (
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A BoreNoteKind says what a note on a survey is about.
type BoreNoteKind uint8

// The kinds of note. The zero value is none.
const (
	NoNote               BoreNoteKind = iota
	SuspectReading                    // a reading stands apart in a way that has a name
	DirectionNeverRead                // no reading in one of the directions
	LevelNeverRead                    // no reading at one of the levels
	ReadingMissing                    // a station was not read
	OneLevel                          // nothing tells of taper
	OneDirection                      // nothing tells of out-of-round
	SmallerThanFinished               // wear below zero, without a choke asked for
	FinishedOversize                  // as much wear as an oversize step is
	WearUnknown                       // a limit on wear, and no size to count from
	TorquePlateNotStated              // a state that the limits ask for was not recorded
	TorquePlateDiffers                // or is another one
	CapsNotStated                     //
	CapsDiffer                        //
)

var noteNames = []string{
	"", "suspect reading", "direction never read", "level never read", "reading missing", "one level", "one direction",
	"smaller than finished", "finished oversize before", "wear not known",
	"torque plate not recorded", "torque plate not as asked", "caps not recorded", "caps not as asked",
}

// String names the kind.
func (k BoreNoteKind) String() string { return wordOf(noteNames, k) }

// MarshalText writes what String gives.
func (k BoreNoteKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *BoreNoteKind) UnmarshalText(text []byte) error { return readWord("note", noteNames, text, k) }

// A BoreNote is something that whoever reads the report must know beside its
// figures.
type BoreNote struct {
	Kind   BoreNoteKind `json:"kind"`             // what it is about
	At     Station      `json:"at"`               // where
	Detail string       `json:"detail,omitempty"` // of a suspect reading: what may have happened
}

// Text is a note in a sentence, its stations named by the survey.
func (n BoreNote) Text(s *BoreSurvey) string {
	switch n.Kind {
	case SuspectReading:
		return s.Name(n.At) + ": " + n.Detail + "; gauge it again"
	case DirectionNeverRead:
		return "never read " + s.HeadingName(n.At.Heading) + ": what the bore is there is not known"
	case LevelNeverRead:
		return "never read at " + s.LevelName(n.At.Level) + ": what the bore is there is not known"
	case ReadingMissing:
		return "not read: " + s.Name(n.At)
	case OneLevel:
		return "read at one level: its taper is not known"
	case OneDirection:
		return "read in one direction: its out-of-round is not known, nor the wear in any other"
	case SmallerThanFinished:
		return s.Name(n.At) + ": smaller than it was last finished to; check the gauge's setting and the size that wear counts from, and whether the bore was meant to be choked"
	case FinishedOversize:
		return s.Name(n.At) + ": as much as an oversize step; was the bore finished oversize before? Wear counts from the size last finished to"
	case WearUnknown:
		return "a limit on wear is given, and neither the size last finished to nor a reading below the ring travel"
	case TorquePlateNotStated:
		return "the limits ask for a torque plate fitted or left off: which it was is not recorded"
	case TorquePlateDiffers:
		return "torque plate fitted: " + s.TorquePlate.String() + ", which is not as the limits ask; the bore's shape differs"
	case CapsNotStated:
		return "the limits ask for bearing caps torqued or left off: which it was is not recorded"
	case CapsDiffer:
		return "bearing caps torqued: " + s.CapsTorqued.String() + ", which is not as the limits ask; the bore's shape differs"
	}
	return ""
}

// mostWear is the wear from which on an oversize step may have been taken for
// it: steps are 0.25 mm or .010 in at least (common practice).
const mostWear units.Length = 0.23 * units.MM

// notes gathers what must be said beside the figures.
func (s *BoreSurvey) notes(r *BoreReport, l *BoreLimits) {
	add := func(k BoreNoteKind, at Station) { r.Notes = append(r.Notes, BoreNote{Kind: k, At: at}) }
	if r.Missing > 0 {
		s.gaps(add)
	}
	if !r.Taper[TaperAlong].Known {
		add(OneLevel, r.Greatest.At)
	}
	if !r.OutOfRound.Known {
		add(OneDirection, r.Greatest.At)
	}
	if r.Wear.Known {
		if hi, _ := r.LeastWear.Value.Upper(); hi < 0 && l.Choke.IsZero() {
			add(SmallerThanFinished, r.Least.At)
		}
		if lo, _ := r.Wear.Value.Lower(); lo > mostWear {
			add(FinishedOversize, r.Greatest.At)
		}
	} else if !l.Wear.IsZero() {
		add(WearUnknown, r.Greatest.At)
	}
	for _, c := range [2]struct {
		asked, is          Recorded
		notStated, differs BoreNoteKind
	}{{l.TorquePlate, s.TorquePlate, TorquePlateNotStated, TorquePlateDiffers}, {l.CapsTorqued, s.CapsTorqued, CapsNotStated, CapsDiffer}} {
		switch {
		case c.asked == NotRecorded || c.asked == c.is:
		case c.is == NotRecorded:
			add(c.notStated, Station{})
		default:
			add(c.differs, Station{})
		}
	}
}

// gaps names directions and levels that were never read, and what else is
// missing.
func (s *BoreSurvey) gaps(add func(BoreNoteKind, Station)) {
	never := func(levels, headings int, at func(a, b int) Station, kind BoreNoteKind) map[int]bool {
		empty := map[int]bool{}
		for a := range levels {
			read := false
			for b := range headings {
				read = read || s.At(at(a, b)).Taken
			}
			if !read {
				empty[a] = true
				add(kind, at(a, 0))
			}
		}
		return empty
	}
	headings := never(len(s.Headings), len(s.Levels), func(a, b int) Station { return Station{b, a} }, DirectionNeverRead)
	levels := never(len(s.Levels), len(s.Headings), func(a, b int) Station { return Station{a, b} }, LevelNeverRead)
	for i := range s.Levels {
		for j := range s.Headings {
			if at := (Station{i, j}); !headings[j] && !levels[i] && !s.At(at).Taken {
				add(ReadingMissing, at)
			}
		}
	}
}

// alike is how far readings may lie apart before one of them can be odd: the
// same as package proofread allows neighbours.
const alike = 50 * units.Micrometre

// proof holds the readings to each other. A size that is a factor from its
// neighbours is refused by name; other suspicions become notes.
func (s *BoreSurvey) proof(w *boreSums, r *BoreReport) error {
	if w.greatest-w.least <= alike {
		return nil
	}
	offset := s.Gauge.Setting.Standard - s.Gauge.Setting.Reading
	shown, at := make([]units.Length, 0, r.Taken), make([]Station, 0, r.Taken)
	sizes := make([]units.Length, 0, r.Taken)
	for i, c := range s.Readings {
		if c.Taken {
			shown, sizes = append(shown, c.Shown), append(sizes, c.Shown+offset)
			at = append(at, Station{i / len(s.Headings), i % len(s.Headings)})
		}
	}
	if len(sizes) >= 3 {
		found, err := proofread.CheckReadings(sizes...)
		if err != nil {
			return err
		}
		for _, odd := range found.Odd {
			c := odd.Causes[0]
			if c.Den != 0 {
				return &InputError{s.fieldName(s.Name(at[odd.Index])), sizes[odd.Index].String(),
					"like its neighbours, near " + found.Middle.String() + ": " + c.String()}
			}
			r.Notes = append(r.Notes, BoreNote{SuspectReading, at[odd.Index], sizes[odd.Index].String() + " may be " + c.Undone.String() + ": " + c.String()})
		}
		if offset != 0 && len(found.Odd) == 0 {
			if found, err = proofread.CheckReadings(shown...); err != nil {
				return err
			}
			for _, odd := range found.Odd {
				c := odd.Causes[0]
				r.Notes = append(r.Notes, BoreNote{SuspectReading, at[odd.Index], "a deviation of " + shown[odd.Index].String() + " may be " + c.Undone.String() + ": " + c.String()})
			}
		}
	}
	if least := w.least + offset; least > 0 && w.greatest+offset >= least+least/2 {
		return &InputError{s.fieldName(s.Name(w.leastAt)), least.String(),
			"near " + (w.greatest + offset).String() + ", which is read elsewhere in this bore: one of them is in another unit"}
	}
	return nil
}
