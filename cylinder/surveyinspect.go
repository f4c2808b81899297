package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A BoreExtreme is the greatest or the least size of a bore, and where.
type BoreExtreme struct {
	Size  tolerance.Bracket `json:"size"`  // at 20 °C
	Shown units.Length      `json:"shown"` // as the gauge showed it
	At    Station           `json:"at"`    // where
}

// A BoreSpread is a difference between readings of one bore, and where it is
// the worst.
type BoreSpread struct {
	Value tolerance.Bracket `json:"value"` // a difference of diameters, at 20 °C
	Known bool              `json:"known"` // whether enough was read for it
	At    Station           `json:"at"`    // out-of-round: the level; taper along a direction: that one
}

// A BoreReport is what follows from the survey of one bore. It is plain data;
// stations are by their places in the survey, which names them.
type BoreReport struct {
	Taken    int               `json:"taken"`    // how many readings were
	Missing  int               `json:"missing"`  // and were not
	Greatest BoreExtreme       `json:"greatest"` // of all readings
	Least    BoreExtreme       `json:"least"`    // of all readings
	Mean     tolerance.Bracket `json:"mean"`     // of all readings
	// OutOfRound is that of the worst level: at least so much, since an oval
	// may lie between the directions read. LeastOvalShown is the share of one
	// that these directions are sure to show.
	OutOfRound BoreSpread                       `json:"outOfRound"`
	Taper      [taperRules]BoreSpread           `json:"taper"`          // by [TaperRule]; the last for each BoreLimits.TaperPer
	Choke      BoreSpread                       `json:"choke"`          // mean of the last level less that of the first
	Wear       BoreSpread                       `json:"wear"`           // of the greatest size
	LeastWear  BoreSpread                       `json:"leastWear"`      // of the least size; below zero, smaller than finished
	Ridge      BoreSpread                       `json:"ridge"`          // on the diameter
	Shape      BoreShape                        `json:"shape"`          // of the means of the levels
	Standing   [boreMeasures]tolerance.Standing `json:"standing"`       // by [BoreMeasure]
	Notes      []BoreNote                       `json:"notes,omitzero"` // what must be said beside the figures
}

// boreSums is what one walk over the readings gathers, in what the gauge
// showed.
type boreSums struct {
	sum                     int64
	greatest, least         units.Length
	greatestAt, leastAt     Station
	round                   units.Length // the worst level's spread
	roundAt                 int
	roundKnown              bool
	profile                 boreProfile
	firstFull, lastFull     int          // levels read in every direction that was ever read
	width                   int          // how many directions were ever read
	along, signed           units.Length // the worst by direction
	alongAt, signedAt       int
	alongKnown, signedKnown bool
	means                   [2]int64 // least and greatest level sum
}

// inspect fills a report but for standings and notes. The report's notes keep
// their memory.
func (s *BoreSurvey) inspect(r *BoreReport, per units.Length) error {
	if err := s.validate(); err != nil {
		return err
	}
	*r = BoreReport{Notes: r.Notes[:0]}
	first := -1
	for i := range s.Readings {
		if s.Readings[i].Taken {
			first = i
			break
		}
	}
	if first < 0 {
		return &InputError{s.fieldName("readings"), "(none taken)", "at least one that was taken"}
	}
	g, err := s.gauge(s.Readings[first].Shown)
	if err != nil {
		return err
	}
	var w boreSums
	if err := s.walk(&w, r); err != nil {
		return err
	}
	if err := s.proof(&w, r); err != nil {
		return err
	}
	if err := s.sizes(&w, r, &g); err != nil {
		return err
	}
	if err := s.tapers(&w, r, &g, per); err != nil {
		return err
	}
	return s.wear(r, &g)
}

// check refuses a reading that the gauge can't show.
func (s *BoreSurvey) check(i int, x units.Length) error {
	g := &s.Gauge
	if x < -largest || x > largest {
		st := Station{i / len(s.Headings), i % len(s.Headings)}
		return &InputError{s.fieldName(s.Name(st)), x.String(), "a bore's reading: within ±10 m"}
	}
	if g.Step > 0 && x%g.Step != 0 || !g.Range.IsZero() && !g.Range.Allows(x) {
		_, err := g.Reading(x, s.Block) // says which, and what was expected
		return err
	}
	return nil
}

// walk gathers the extremes, level by level and direction by direction.
func (s *BoreSurvey) walk(w *boreSums, r *BoreReport) error {
	n := len(s.Headings)
	for j := range n {
		if s.walkDown(w, j) {
			w.width++
		}
	}
	w.firstFull, w.lastFull = -1, -1
	for i := range s.Levels {
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
				w.greatest, w.greatestAt = x, Station{i, j}
			}
			if r.Taken+read == 0 || x < w.least {
				w.least, w.leastAt = x, Station{i, j}
			}
			sum += int64(x)
			read++
		}
		if read >= 2 && (!w.roundKnown || greatest-least > w.round) {
			w.round, w.roundAt, w.roundKnown = greatest-least, i, true
		}
		if read == w.width && read > 0 {
			if w.firstFull < 0 {
				w.firstFull = i
				w.means = [2]int64{sum, sum}
			}
			w.lastFull = i
			w.means = [2]int64{min(w.means[0], sum), max(w.means[1], sum)}
			w.profile.add(sum)
		}
		w.sum += sum
		r.Taken += read
	}
	r.Missing = len(s.Readings) - r.Taken
	return nil
}

// walkDown gathers one direction; read is whether it was ever read.
func (s *BoreSurvey) walkDown(w *boreSums, j int) (read bool) {
	n, levels := len(s.Headings), len(s.Levels)
	d := s.down(j)
	if d.to > d.from && (!w.alongKnown || d.greatest-d.least > w.along) {
		w.along, w.alongAt, w.alongKnown = d.greatest-d.least, j, true
	}
	top, bottom := s.Readings[j], s.Readings[(levels-1)*n+j]
	if levels > 1 && top.Taken && bottom.Taken {
		if d := top.Shown - bottom.Shown; !w.signedKnown || d.Abs() > w.signed.Abs() {
			w.signed, w.signedAt, w.signedKnown = d, j, true
		}
	}
	return d.read
}

// sizes fills in the sizes, out-of-round and the mean.
func (s *BoreSurvey) sizes(w *boreSums, r *BoreReport, g *boreGauge) (err error) {
	for _, e := range [2]struct {
		into  *BoreExtreme
		shown units.Length
		at    Station
	}{{&r.Greatest, w.greatest, w.greatestAt}, {&r.Least, w.least, w.leastAt}} {
		e.into.Shown, e.into.At = e.shown, e.at
		if e.into.Size, err = g.size(e.shown, e.shown); err != nil {
			return err
		}
		if hi, _ := e.into.Size.Upper(); hi <= 0 || !e.into.Size.InRange() {
			return &InputError{s.fieldName(s.Name(e.at)), e.into.Size.String(), "a size above 0 mm: which ring was the gauge set on?"}
		}
	}
	lo, hi := boreQuotient(w.sum, int64(r.Taken))
	if r.Mean, err = g.size(lo, hi); err != nil {
		return err
	}
	if w.roundKnown {
		r.OutOfRound.Known, r.OutOfRound.At.Level = true, w.roundAt
		r.OutOfRound.Value, err = g.spread(w.round, w.round)
	}
	return err
}

// wear fills in the wear, from a reading below the ring travel or else from
// the size last finished to, and the ridge.
func (s *BoreSurvey) wear(r *BoreReport, g *boreGauge) (err error) {
	switch {
	case s.Unworn.Taken:
		u := s.Unworn.Shown
		if err := s.check(0, u); err != nil {
			return err
		}
		most, least := r.Greatest.Shown-u, r.Least.Shown-u
		r.Wear.At, r.LeastWear.At, r.Wear.Known, r.LeastWear.Known = r.Greatest.At, r.Least.At, true, true
		if r.Wear.Value, err = g.difference(most, most); err != nil {
			return err
		}
		if r.LeastWear.Value, err = g.difference(least, least); err != nil {
			return err
		}
	case !s.Finished.IsZero():
		lo, hi := bothOf(s.Finished)
		least, _ := bothOf(r.Least.Size)
		if _, most := bothOf(r.Greatest.Size); most < lo/3*2 || least > hi/2*3 {
			return &InputError{s.fieldName(s.Name(r.Greatest.At)), r.Greatest.Size.String(),
				"near the size last finished to, " + s.Finished.String() + ": is one of them in another unit, and which ring was the gauge set on?"}
		}
		r.Wear = BoreSpread{BoreWear(r.Greatest.Size, s.Finished), true, r.Greatest.At}
		r.LeastWear = BoreSpread{BoreWear(r.Least.Size, s.Finished), true, r.Least.At}
	}
	if s.Ridge != (Ridge{}) {
		r.Ridge.Known = true
		if r.Ridge.Value, err = s.Ridge.OnDiameter(); err != nil {
			return err
		}
	}
	return nil
}

// boreQuotient is sum ÷ n rounded down and up; n is above 0.
func boreQuotient(sum, n int64) (lo, hi units.Length) {
	q, rest := sum/n, sum%n
	switch {
	case rest == 0:
		return units.Length(q), units.Length(q)
	case rest < 0:
		q--
	}
	return units.Length(q), units.Length(q + 1)
}
