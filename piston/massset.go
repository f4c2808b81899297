package piston

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A MassPart is one part, or one assembly, on the scale.
type MassPart struct {
	Where string      `json:"where"` // "piston 3"
	Mass  MassBracket `json:"mass"`  // the reading and the scale's error
}

// A MassSet is the parts of one kind in an engine, which should weigh alike.
// Weigh them clean, dry and complete, on one scale, in one go.
type MassSet struct {
	Measure string     `json:"measure"` // "piston", "rod big end"
	Parts   []MassPart `json:"parts"`   // all of the set, two at least
	// Spread is the limit on the greatest less the least; zero where none is
	// given.
	Spread tolerance.SpecOf[units.Mass] `json:"spread,omitzero"`
	// MostOff is the most that the maker allows to be taken from one part;
	// zero where nothing is said of it, which is no leave to take anything.
	MostOff units.Mass `json:"mostOff,omitzero"`
}

// A MassCut is what to take from one part.
type MassCut struct {
	Where string `json:"where"` // the part's
	// ToLightest is what brings it to the lightest part, over all that the
	// scale leaves open.
	ToLightest MassBracket `json:"toLightest"`
	// Least is the least to take for the set to be within the limit for
	// certain, once all parts have had theirs taken; zero where the part may
	// stay as it is.
	Least units.Mass `json:"least"`
	// LeastKnown tells whether there is such a value: a limit is given, and
	// the scale is fine enough for it.
	LeastKnown bool `json:"leastKnown"`
	// Allowed is how Least lies to what the maker allows: Within, Above (renew
	// the part), or Undecided where nothing is said of it.
	Allowed tolerance.Verdict `json:"allowed"`
}

// A MassReport is what follows for a set. It is plain data.
type MassReport struct {
	Finding  tolerance.FindingOf[units.Mass] `json:"finding"`  // of the spread
	Lightest []string                        `json:"lightest"` // the part that governs, or all that may
	Cuts     []MassCut                       `json:"cuts"`     // in the order of the parts
	Next     string                          `json:"next"`     // what to do next, in words
}

// Assess gives a set's spread, judges it, and says what to take from which
// part. The lightest part governs: nothing can be put on.
//
// The least to take from a part is as a rule its greatest possible mass less
// the lightest's least possible and the limit. With a scale so coarse that two
// readings together leave open more than twice the limit, no cut is sure to
// do, and LeastKnown is false.
//
// It fails with an [InputError] where there are fewer than two parts or more than [MatchMost], two of
// one name, a mass that isn't above zero or has one end only, or a MostOff
// below zero, and as [tolerance.Assess] does.
func (s MassSet) Assess() (MassReport, error) {
	if err := s.check(); err != nil {
		return MassReport{}, err
	}
	masses := make([]MassBracket, len(s.Parts))
	for i, p := range s.Parts {
		masses[i] = p.Mass
	}
	var r MassReport
	spread := MassSpread(masses[0], masses[1:]...)
	var err error
	if r.Finding, err = tolerance.Assess("mass spread of the "+s.Measure+"s", "the set", s.Spread, spread); err != nil {
		return MassReport{}, err
	}
	least, _ := tolerance.Extremes(masses...)
	top, _ := least.Upper()
	for _, p := range s.Parts {
		if lo, _ := p.Mass.Lower(); lo <= top {
			r.Lightest = append(r.Lightest, p.Where)
		}
	}
	r.Cuts = s.cuts(masses)
	r.Next = s.next(r)
	return r, nil
}

func (s MassSet) check() error {
	if len(s.Parts) < 2 {
		what := "of no part"
		if len(s.Parts) == 1 {
			what = "of one part"
		}
		return &InputError{"mass of the set", what, "weighed of two parts at least"}
	}
	if len(s.Parts) > MatchMost {
		return &InputError{"mass of the set", "of " + strconv.Itoa(len(s.Parts)), "weighed of " + strconv.Itoa(MatchMost) + " parts at the most"}
	}
	for i, p := range s.Parts {
		if err := massAboveZero("part", p.Where, p.Mass); err != nil {
			return err
		}
		for _, o := range s.Parts[:i] {
			if o.Where == p.Where {
				return &InputError{"part", clip([]byte(p.Where)), "named once"}
			}
		}
	}
	if s.MostOff < 0 || !s.MostOff.InRange() {
		return &InputError{"the most to take off", s.MostOff.String(), "0 g or more"}
	}
	return nil
}

// limit is the spread that the cuts aim at: that of new parts where it is
// given.
func (s MassSet) limit() (units.Mass, bool) {
	for _, b := range []tolerance.BandOf[units.Mass]{s.Spread.New, s.Spread.Wear} {
		if most, end := b.Upper(); end == tolerance.Closed {
			return most, true
		} else if end == tolerance.Open {
			return most - units.Mass(1), true
		}
	}
	return 0, false
}

func (s MassSet) cuts(masses []MassBracket) []MassCut {
	cuts := make([]MassCut, len(masses))
	least, known := s.leastCuts(masses)
	none := tolerance.Exactly(units.Mass(0))
	others := make([]MassBracket, 0, len(masses))
	for i, m := range masses {
		others = append(append(others[:0], masses[:i]...), masses[i+1:]...)
		lightestOther, _ := tolerance.Extremes(others...)
		// A part that is the lightest itself has nothing to lose: taken
		// against the others alone, its own bracket counts once.
		c := MassCut{Where: s.Parts[i].Where, ToLightest: none.Max(MassToRemove(m, lightestOther)), LeastKnown: known}
		if known {
			c.Least = least[i]
			c.Allowed = s.allowed(c.Least)
		}
		cuts[i] = c
	}
	return cuts
}

// leastCuts is the least to take from each part for no two of them to differ
// by more than the limit, whatever the scale leaves open: for each pair,
//
//	greatest(i) − cut(i) − least(j) + cut(j) ≤ limit
//
// Going round a ring of parts these add up to the readings' widths, which must
// not be more than the limit for each; the worst ring is the two widest. Where
// that holds, raising each cut to what the others ask of it comes to rest, and
// at the least of all ways to cut.
func (s MassSet) leastCuts(masses []MassBracket) (cuts []units.Mass, ok bool) {
	limit, ok := s.limit()
	if !ok {
		return nil, false
	}
	var widest, second units.Mass
	for _, m := range masses {
		w, _ := m.Width()
		second = max(second, min(w, widest))
		widest = max(widest, w)
	}
	if (widest - limit) > limit-second {
		return nil, false
	}
	cuts = make([]units.Mass, len(masses))
	for changed := true; changed; {
		changed = false
		for j, low := range masses {
			least, _ := low.Lower()
			for i, high := range masses {
				greatest, _ := high.Upper()
				if need := cuts[j] + (greatest - least - limit); i != j && need > cuts[i] {
					cuts[i], changed = need, true
				}
			}
		}
	}
	return cuts, true
}

// allowed judges a cut.
func (s MassSet) allowed(cut units.Mass) tolerance.Verdict {
	switch {
	case cut == 0:
		return tolerance.Within
	case s.MostOff == 0:
		return tolerance.Undecided
	}
	return tolerance.AtMost(s.MostOff).Judge(tolerance.Exactly(cut))
}

// next says what to do.
func (s MassSet) next(r MassReport) string {
	lightest := strings.Join(r.Lightest, " or ")
	switch f := r.Finding; {
	case f.Standing == tolerance.Usable && !f.Spec.New.IsZero():
		return "the set is within the wear limit, and may stay as it is; the cuts would bring it within that of new parts"
	case passes(f.Standing):
		return "the set is within its limit: take nothing off"
	case f.Spec.IsZero():
		return "no limit is given: look up the spread that the engine maker allows; " + lightest + " is the lightest"
	case f.Standing == tolerance.CantTell && !r.Cuts[0].LeastKnown:
		return "not a pass: weigh on a finer scale, whose error is below the limit"
	case f.Standing == tolerance.CantTell:
		return "not a pass: weigh again on a finer scale, or take off what makes it certain; " + f.Settle
	case !r.Cuts[0].LeastKnown:
		return "past the limit, and the scale is too coarse to bring the set within it: weigh on a finer one"
	}
	var cut, over, ask []string
	for _, c := range r.Cuts {
		switch {
		case c.Least == 0:
		case c.Allowed == tolerance.Within:
			cut = append(cut, c.Where)
		case c.Allowed == tolerance.Above:
			over = append(over, c.Where)
		default:
			ask = append(ask, c.Where)
		}
	}
	var say []string
	if len(over) > 0 {
		say = append(say, "renew "+strings.Join(over, ", ")+", or find a heavier part for "+lightest+": more would have to come off than is allowed")
	}
	if len(cut) > 0 {
		say = append(say, "take metal from "+strings.Join(cut, ", ")+", only where the engine maker allows it, a little at a time, and weigh again")
	}
	if len(ask) > 0 {
		say = append(say, "ask the engine maker whether and where metal may be taken from "+strings.Join(ask, ", ")+": nothing was given")
	}
	return strings.Join(say, "; ")
}
