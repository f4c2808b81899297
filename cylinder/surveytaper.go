package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// tapers fills in the tapers by every rule, the choke and the shape.
func (s *BoreSurvey) tapers(w *boreSums, r *BoreReport, g *boreGauge, per units.Length) (err error) {
	if w.alongKnown {
		at := Station{Heading: w.alongAt}
		along, err := g.spread(w.along, w.along)
		if err != nil {
			return err
		}
		r.Taper[TaperAlong] = BoreSpread{along, true, at}
		if r.Taper[TaperPerLength], err = s.perLength(w, g, per, r.Missing > 0); err != nil {
			return err
		}
		all, err := g.spread(w.greatest-w.least, w.greatest-w.least)
		if err != nil {
			return err
		}
		r.Taper[TaperOverall] = BoreSpread{all, true, w.greatestAt}
	}
	if w.signedKnown {
		d, err := g.difference(w.signed, w.signed)
		if err != nil {
			return err
		}
		r.Taper[TaperTopToBottom] = BoreSpread{d, true, Station{Heading: w.signedAt}}
	}
	if w.profile.n >= 2 {
		lo, hi := boreQuotient(w.means[1]-w.means[0], int64(w.width))
		d, err := g.spread(lo, hi)
		if err != nil {
			return err
		}
		r.Taper[TaperOfMeans] = BoreSpread{d, true, Station{Level: w.firstFull}}
		lo, hi = boreQuotient(w.profile.last-w.profile.first, int64(w.width))
		if d, err = g.difference(lo, hi); err != nil {
			return err
		}
		r.Choke = BoreSpread{d, true, Station{Level: w.firstFull}}
	}
	r.Shape = w.profile.shape(2 * int64(g.individual) * int64(w.width))
	return nil
}

// boreDown is one direction of a survey, from the first level read to the last.
type boreDown struct {
	least, greatest units.Length
	from, to        int // levels
	read            bool
}

func (s *BoreSurvey) down(j int) (d boreDown) {
	n := len(s.Headings)
	for i := range s.Levels {
		c := s.Readings[i*n+j]
		if !c.Taken {
			continue
		}
		if !d.read {
			d = boreDown{c.Shown, c.Shown, i, i, true}
		}
		d.least, d.greatest, d.to = min(d.least, c.Shown), max(d.greatest, c.Shown), i
	}
	return d
}

// perLength is the greatest taper for each length per. Where readings are
// missing a direction may be the steepest over a shorter way, and less sure of
// it, so each has its own bracket; At is the one that may be the greatest.
func (s *BoreSurvey) perLength(w *boreSums, g *boreGauge, per units.Length, missing bool) (worst BoreSpread, err error) {
	if per <= 0 {
		return worst, nil
	}
	from, to := w.alongAt, w.alongAt // of equal ways the greatest taper is the steepest
	if missing {
		from, to = 0, len(s.Headings)-1
	}
	for j := from; j <= to; j++ {
		d := s.down(j)
		over := s.Levels[d.to].Depth - s.Levels[d.from].Depth
		if over <= 0 {
			continue
		}
		spread, err := g.spread(d.greatest-d.least, d.greatest-d.least)
		if err != nil {
			return worst, err
		}
		rate := TaperPer(spread, tolerance.Exactly(over), tolerance.Exactly(per))
		if !worst.Known || mostOf(rate) > mostOf(worst.Value) {
			worst.At.Heading = j
		}
		if worst.Known {
			rate = rate.Max(worst.Value)
		}
		worst.Value, worst.Known = rate, true
	}
	return worst, nil
}
