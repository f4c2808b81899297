package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A JournalExtreme is the greatest or the least size of a journal, and where.
type JournalExtreme struct {
	Size  tolerance.Bracket `json:"size"`  // at 20 °C
	Shown units.Length      `json:"shown"` // as the micrometer showed it
	At    JournalStation    `json:"at"`    // where
}

// A JournalSpread is a difference between readings of one journal, and where it is
// the worst.
type JournalSpread struct {
	Value tolerance.Bracket `json:"value"` // a difference of diameters, at 20 °C
	Known bool              `json:"known"` // whether enough was read for it
	At    JournalStation    `json:"at"`    // out-of-round: the plane; taper along a direction: that one
}

// A JournalReport is what follows from the survey of one journal. It is plain
// data; stations are by their places in the survey, which names them.
type JournalReport struct {
	Taken      int                                 `json:"taken"`          // how many readings were
	Missing    int                                 `json:"missing"`        // and were not
	Greatest   JournalExtreme                      `json:"greatest"`       // of all readings
	Least      JournalExtreme                      `json:"least"`          // of all readings
	Mean       tolerance.Bracket                   `json:"mean"`           // of all readings
	OutOfRound JournalSpread                       `json:"outOfRound"`     // of the worst plane: at least so much
	Taper      [journalTaperRules]JournalSpread    `json:"taper"`          // by [JournalTaperRule]
	Wear       JournalSpread                       `json:"wear"`           // of the least size, from the size last ground to
	Shape      JournalShape                        `json:"shape"`          // of the means of the planes
	Standing   [journalMeasures]tolerance.Standing `json:"standing"`       // by [JournalMeasure]
	Notes      []JournalNote                       `json:"notes,omitzero"` // what must be said beside the figures
}

// A JournalTaperRule is one of the ways in which manuals count the taper of a
// journal. They differ on the same readings, so a limit holds only with its own
// rule. The zero value is JournalTaperAlong.
type JournalTaperRule uint8

// The rules.
const (
	// JournalTaperAlong: the greatest less the least of the planes, read in one
	// direction; of the directions, the greatest.
	JournalTaperAlong JournalTaperRule = iota
	// JournalTaperEnds: the first plane less the last, in one direction, with its
	// sign: above zero the journal is larger at the front. Of the directions, the
	// one that differs most.
	JournalTaperEnds
	// JournalTaperOfMeans: each plane's mean over its directions; the greatest less
	// the least.
	JournalTaperOfMeans
	// JournalTaperOverall: the greatest less the least of all readings. An oval
	// journal has some without any taper.
	JournalTaperOverall

	journalTaperRules = iota
)

var journalTaperNames = []string{
	"greatest less least along one direction",
	"front less rear along one direction",
	"greatest less least of the planes' means",
	"greatest less least of all readings",
}

// String is the rule in words.
func (r JournalTaperRule) String() string { return journalWord(journalTaperNames, r) }

// MarshalText writes what String gives.
func (r JournalTaperRule) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives.
func (r *JournalTaperRule) UnmarshalText(text []byte) error {
	return journalRead("taper rule", journalTaperNames, text, r)
}

// journalSums is what one walk over the readings gathers, in what was shown.
type journalSums struct {
	sum                     int64
	greatest, least         units.Length
	greatestAt, leastAt     JournalStation
	round                   units.Length // the worst plane's spread
	roundAt                 int
	roundKnown              bool
	profile                 journalProfile
	width                   int          // how many directions were ever read
	along, signed           units.Length // the worst by direction
	alongAt, signedAt       int
	alongKnown, signedKnown bool
}

// inspect fills a report but for standings and notes of the limits. The report's
// notes keep their memory.
func (s *JournalSurvey) inspect(r *JournalReport) error {
	if err := s.validate(); err != nil {
		return err
	}
	*r = JournalReport{Notes: r.Notes[:0]}
	first := -1
	for i := range s.Readings {
		if s.Readings[i].Taken {
			first = i
			break
		}
	}
	if first < 0 {
		return &InputError{journalField(s.Where, "readings"), "(none taken)", "at least one that was taken"}
	}
	var g journalGauge
	if err := s.ready(&g, s.Readings[first].Shown); err != nil {
		return err
	}
	var w journalSums
	if err := s.walk(&w, r); err != nil {
		return err
	}
	if err := s.proof(&w, r); err != nil {
		return err
	}
	if err := s.sizes(&w, r, &g); err != nil {
		return err
	}
	return s.tapers(&w, r, &g)
}

// check refuses a reading that the gauge can't show.
func (s *JournalSurvey) check(i int, x units.Length) error {
	g := &s.Gauge
	if x < -journalLargest || x > journalLargest {
		st := JournalStation{i / len(s.Headings), i % len(s.Headings)}
		return &InputError{journalField(s.Where, s.Name(st)), x.String(), "a journal's reading: within ±10 m"}
	}
	if g.Step > 0 && x%g.Step != 0 || !g.Range.IsZero() && !g.Range.Allows(x) {
		_, err := g.Reading(x, s.Shaft) // says which, and what was expected
		return err
	}
	return nil
}

// walk gathers the extremes, plane by plane and direction by direction.
func (s *JournalSurvey) walk(w *journalSums, r *JournalReport) error {
	n := len(s.Headings)
	for j := range n {
		if s.walkAlong(w, j) {
			w.width++
		}
	}
	for i := range s.Planes {
		row := s.Readings[i*n : (i+1)*n]
		read, sum := 0, int64(0)
		var least, greatest units.Length
		for j := range row {
			if !row[j].Taken {
				continue
			}
			x := row[j].Shown
			if err := s.check(i*n+j, x); err != nil {
				return err
			}
			if read == 0 {
				least, greatest = x, x
			}
			least, greatest = min(least, x), max(greatest, x)
			if r.Taken+read == 0 || x > w.greatest {
				w.greatest, w.greatestAt = x, JournalStation{i, j}
			}
			if r.Taken+read == 0 || x < w.least {
				w.least, w.leastAt = x, JournalStation{i, j}
			}
			sum += int64(x)
			read++
		}
		if read >= 2 && (!w.roundKnown || greatest-least > w.round) {
			w.round, w.roundAt, w.roundKnown = greatest-least, i, true
		}
		if read == w.width && read > 0 {
			w.profile.add(sum, i)
		}
		w.sum += sum
		r.Taken += read
	}
	r.Missing = len(s.Readings) - r.Taken
	return nil
}

// walkAlong gathers one direction; read is whether it was ever read.
func (s *JournalSurvey) walkAlong(w *journalSums, j int) (read bool) {
	n, planes := len(s.Headings), len(s.Planes)
	var least, greatest units.Length
	count := 0
	for i := range planes {
		c := &s.Readings[i*n+j]
		if !c.Taken {
			continue
		}
		if count == 0 {
			least, greatest = c.Shown, c.Shown
		}
		least, greatest = min(least, c.Shown), max(greatest, c.Shown)
		count++
	}
	if count > 1 && (!w.alongKnown || greatest-least > w.along) {
		w.along, w.alongAt, w.alongKnown = greatest-least, j, true
	}
	front, rear := &s.Readings[j], &s.Readings[(planes-1)*n+j]
	if planes > 1 && front.Taken && rear.Taken {
		if d := front.Shown - rear.Shown; !w.signedKnown || d.Abs() > w.signed.Abs() {
			w.signed, w.signedAt, w.signedKnown = d, j, true
		}
	}
	return count > 0
}

// sizes fills in the sizes, out-of-round, the mean and the wear.
func (s *JournalSurvey) sizes(w *journalSums, r *JournalReport, g *journalGauge) (err error) {
	r.Greatest.Shown, r.Greatest.At = w.greatest, w.greatestAt
	r.Least.Shown, r.Least.At = w.least, w.leastAt
	for _, e := range [2]*JournalExtreme{&r.Greatest, &r.Least} {
		if e.Size, err = g.size(e.Shown, e.Shown); err != nil {
			return err
		}
		if lo, _ := e.Size.Lower(); lo <= 0 || !e.Size.InRange() {
			return &InputError{journalField(s.Where, s.Name(e.At)), e.Size.String(), "a size above 0 mm: which standard was the micrometer set on?"}
		}
	}
	lo, hi := journalQuotient(w.sum, int64(r.Taken))
	if r.Mean, err = g.size(lo, hi); err != nil {
		return err
	}
	if w.roundKnown {
		r.OutOfRound.Known, r.OutOfRound.At.Plane = true, w.roundAt
		if r.OutOfRound.Value, err = g.spread(w.round, w.round); err != nil {
			return err
		}
	}
	if !s.Finished.IsZero() {
		r.Wear = JournalSpread{JournalWear(s.Finished, r.Least.Size), true, r.Least.At}
	}
	return nil
}

// tapers fills in the tapers by every rule, and the shape.
func (s *JournalSurvey) tapers(w *journalSums, r *JournalReport, g *journalGauge) error {
	set := func(rule JournalTaperRule, of func(lo, hi units.Length) (tolerance.Bracket, error), lo, hi units.Length, at JournalStation) error {
		v, err := of(lo, hi)
		r.Taper[rule] = JournalSpread{v, err == nil, at}
		return err
	}
	if w.alongKnown {
		if err := set(JournalTaperAlong, g.spread, w.along, w.along, JournalStation{Heading: w.alongAt}); err != nil {
			return err
		}
		d := w.greatest - w.least
		if err := set(JournalTaperOverall, g.spread, d, d, w.leastAt); err != nil {
			return err
		}
	}
	if w.signedKnown {
		if err := set(JournalTaperEnds, g.difference, w.signed, w.signed, JournalStation{Heading: w.signedAt}); err != nil {
			return err
		}
	}
	if w.profile.n >= 2 {
		least, greatest := w.profile.ends()
		lo, hi := journalQuotient(greatest-least, int64(w.width))
		if err := set(JournalTaperOfMeans, g.spread, lo, hi, JournalStation{Plane: w.profile.at[0]}); err != nil {
			return err
		}
	}
	r.Shape = w.profile.shape(2 * int64(g.individual) * int64(w.width))
	return nil
}
