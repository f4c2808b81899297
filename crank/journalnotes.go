package crank

import (
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A JournalNoteKind says what a note on a survey is about. The zero value is none.
type JournalNoteKind uint8

// The kinds of note.
const (
	NoJournalNote           JournalNoteKind = iota // none
	JournalReadingSuspect                          // a reading stands apart in a way that has a name
	JournalHeadingNeverRead                        // no reading in one of the directions
	JournalPlaneNeverRead                          // no reading in one of the planes
	JournalReadingMissing                          // a station was not read
	JournalOnePlane                                // nothing tells of taper
	JournalOneHeading                              // nothing tells of out-of-round
	JournalLarger                                  // larger than it was last ground to
	JournalGroundBefore                            // too much wear for one that counts from the right size
	JournalWearUnknown                             // a limit on wear, and no size to count from
)

var journalNoteNames = []string{
	"", "suspect reading", "direction never read", "plane never read", "reading missing", "one plane",
	"one direction", "larger than last ground to", "ground undersize before", "wear not known",
}

// String names the kind.
func (k JournalNoteKind) String() string { return journalWord(journalNoteNames, k) }

// MarshalText writes what String gives.
func (k JournalNoteKind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads what String gives.
func (k *JournalNoteKind) UnmarshalText(text []byte) error {
	return journalRead("note", journalNoteNames, text, k)
}

// A JournalNote is something that whoever reads the report must know beside its
// figures.
type JournalNote struct {
	Kind   JournalNoteKind `json:"kind"`             // what it is about
	At     JournalStation  `json:"at"`               // where
	Detail string          `json:"detail,omitempty"` // of a suspect reading: what may have happened
}

// Text is a note in a sentence, its stations named by the survey.
func (n JournalNote) Text(s *JournalSurvey) string {
	switch n.Kind {
	case JournalReadingSuspect:
		return s.Name(n.At) + ": " + n.Detail + "; measure it again"
	case JournalHeadingNeverRead:
		return "never read at " + s.HeadingName(n.At.Heading) + ": what the journal is there is not known"
	case JournalPlaneNeverRead:
		return "never read in " + s.PlaneName(n.At.Plane) + ": what the journal is there is not known"
	case JournalReadingMissing:
		return "not read: " + s.Name(n.At)
	case JournalOnePlane:
		return "read in one plane: its taper is not known"
	case JournalOneHeading:
		return "read in one direction: its out-of-round is not known, nor the wear in any other"
	case JournalLarger:
		return s.Name(n.At) + ": larger than it was last ground to; check the micrometer's setting and the size that wear counts from"
	case JournalGroundBefore:
		return s.Name(n.At) + ": more than wears off in service; was the journal ground undersize before? Wear counts from the size last ground to"
	case JournalWearUnknown:
		return "a limit on wear is given, and not the size last ground to"
	}
	return ""
}

// journalMostWear is more than wears off a journal before its engine is stopped:
// common practice. The first undersize that is ground to is 0.25 mm or .010 in.
const journalMostWear units.Length = 0.23 * units.MM

// notes gathers what must be said beside the figures.
func (s *JournalSurvey) notes(r *JournalReport, l *JournalLimits) {
	add := func(k JournalNoteKind, at JournalStation) {
		r.Notes = append(r.Notes, JournalNote{Kind: k, At: at})
	}
	if r.Missing > 0 {
		s.gaps(r)
	}
	if !r.Taper[JournalTaperAlong].Known {
		add(JournalOnePlane, r.Least.At)
	}
	if !r.OutOfRound.Known {
		add(JournalOneHeading, r.Least.At)
	}
	switch {
	case r.Wear.Known:
		lo, _ := r.Wear.Value.Lower()
		if lo > journalMostWear {
			add(JournalGroundBefore, r.Least.At)
		}
		if grown, _ := JournalWear(s.Finished, r.Greatest.Size).Upper(); grown < 0 {
			add(JournalLarger, r.Greatest.At)
		}
	case !l.Wear.IsZero():
		add(JournalWearUnknown, r.Least.At)
	}
}

// gaps names directions and planes that were never read, and what else is missing.
func (s *JournalSurvey) gaps(r *JournalReport) {
	n := len(s.Headings)
	read := func(i, step, count int) bool {
		for k := range count {
			if s.Readings[i+k*step].Taken {
				return true
			}
		}
		return false
	}
	for j := range s.Headings {
		if !read(j, n, len(s.Planes)) {
			r.Notes = append(r.Notes, JournalNote{Kind: JournalHeadingNeverRead, At: JournalStation{Heading: j}})
		}
	}
	for i := range s.Planes {
		if !read(i*n, 1, n) {
			r.Notes = append(r.Notes, JournalNote{Kind: JournalPlaneNeverRead, At: JournalStation{Plane: i}})
			continue
		}
		for j := range s.Headings {
			if !s.Readings[i*n+j].Taken && read(j, n, len(s.Planes)) {
				r.Notes = append(r.Notes, JournalNote{Kind: JournalReadingMissing, At: JournalStation{i, j}})
			}
		}
	}
}

// journalAlike is how far readings may lie apart before one of them can be odd: the
// same as package proofread allows neighbours.
const journalAlike = 50 * units.Micrometre

// proof holds the readings to each other. A size that is a factor from its
// neighbours is refused by name; other suspicions become notes.
func (s *JournalSurvey) proof(w *journalSums, r *JournalReport) error {
	if w.greatest-w.least <= journalAlike {
		return nil
	}
	offset := s.Gauge.Setting.Standard - s.Gauge.Setting.Reading
	sizes, at := make([]units.Length, 0, r.Taken), make([]JournalStation, 0, r.Taken)
	for i, c := range s.Readings {
		if c.Taken {
			sizes = append(sizes, c.Shown+offset)
			at = append(at, JournalStation{i / len(s.Headings), i % len(s.Headings)})
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
				return &InputError{journalField(s.Where, s.Name(at[odd.Index])), sizes[odd.Index].String(),
					"like its neighbours, near " + found.Middle.String() + ": " + c.String()}
			}
			r.Notes = append(r.Notes, JournalNote{JournalReadingSuspect, at[odd.Index], sizes[odd.Index].String() + " may be " + c.Undone.String() + ": " + c.String()})
		}
	}
	if least := w.least + offset; least > 0 && w.greatest+offset >= least+least/2 {
		return &InputError{journalField(s.Where, s.Name(w.leastAt)), least.String(),
			"near " + (w.greatest + offset).String() + ", which is read elsewhere on this journal: one of them is in another unit"}
	}
	return nil
}
