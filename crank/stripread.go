package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A CrushedStrip is one strip, laid along a journal, crushed by tightening the cap
// and measured in place. The strip must not reach over the bearing's edge.
//
// The shaft's weight must not lie on it: with the engine upright the shaft is held
// against the upper shells with a jack, which lifts and must stand on something
// that bears it.
type CrushedStrip struct {
	Where  string            `json:"where"`           // "main 3"
	Front  tolerance.Bracket `json:"front"`           // width at the front end
	Middle tolerance.Bracket `json:"middle,omitzero"` // and in the middle; zero where not read
	Rear   tolerance.Bracket `json:"rear"`            // and at the rear end
	// Turned is whether the shaft was turned with the strip in, Oiled whether there
	// was oil on journal, shell or its back: either spoils the reading.
	Turned bool `json:"turned,omitzero"`
	Oiled  bool `json:"oiled,omitzero"` // said with Turned
}

// A StripReport is what follows from a strip.
type StripReport struct {
	Front  tolerance.Bracket `json:"front"`           // clearance at the front end
	Middle tolerance.Bracket `json:"middle,omitzero"` // and in the middle, where it was read
	Rear   tolerance.Bracket `json:"rear"`            // and at the rear end
	// Least is where the strip is widest, which is what manuals judge.
	Least tolerance.Bracket `json:"least"`
	// Taper is the greatest less the least of the three: ends against middle and end
	// against end.
	Taper        tolerance.Bracket `json:"taper"`
	Shape        JournalShape      `json:"shape"`        // of the gap's inner wall, the journal, where the bore is straight
	Finding      tolerance.Finding `json:"finding"`      // all places against the limits
	TaperFinding tolerance.Finding `json:"taperFinding"` // against the limits of taper
	Spoiled      bool              `json:"spoiled"`      // turned or oiled: it tells nothing
}

// Read works out a crushed strip by its table, against limits for the clearance and
// for what its ends and middle may differ by. A strip that was turned or oiled
// gives its clearances and no standing: do it again.
//
// It fails with an [InputError] where the table or a width can't be, or an end
// wasn't read: one width tells nothing of taper.
func (t StripTable) Read(s *CrushedStrip, clearance, taper tolerance.Spec) (StripReport, error) {
	r := StripReport{Spoiled: s.Turned || s.Oiled}
	if err := t.Validate(); err != nil {
		return r, err
	}
	places := []tolerance.Bracket{}
	for _, p := range [...]struct {
		field string
		width *tolerance.Bracket
		into  *tolerance.Bracket
	}{{"front width", &s.Front, &r.Front}, {"middle width", &s.Middle, &r.Middle}, {"rear width", &s.Rear, &r.Rear}} {
		if p.width == &s.Middle && p.width.IsZero() {
			continue
		}
		if err := journalBracketOf(s.Where, p.field, *p.width, units.Picometre); err != nil {
			return r, err
		}
		c, err := t.Clearance(*p.width)
		if err != nil {
			return r, err
		}
		*p.into = c
		places = append(places, c)
	}
	r.Least, _ = tolerance.Extremes(places...)
	r.Taper = JournalTaper(places[0], places[1:]...)
	r.Shape = s.shape()
	var err error
	if r.Finding, err = tolerance.Assess("oil clearance, "+ByGaugingStrip.String(), s.Where, clearance, places...); err != nil {
		return r, err
	}
	if r.TaperFinding, err = tolerance.Assess("taper, by gauging strip", s.Where, taper, r.Taper); err != nil {
		return r, err
	}
	if r.Spoiled {
		const again = "wipe journal, shell and its back dry, lay a new strip, and don't turn the shaft"
		for _, f := range [...]*tolerance.Finding{&r.Finding, &r.TaperFinding} {
			f.Standing, f.Settle = tolerance.CantTell, again
		}
	}
	return r, nil
}

// shape names how the widths lie to each other: where the strip is wide the gap is
// narrow, and the journal large. Widths that overlap count as alike.
func (s *CrushedStrip) shape() JournalShape {
	wider := func(a, b tolerance.Bracket) bool {
		lo, _ := a.Lower()
		hi, _ := b.Upper()
		return lo > hi
	}
	switch {
	case !s.Middle.IsZero() && wider(s.Middle, s.Front) && wider(s.Middle, s.Rear):
		return JournalBarrel
	case !s.Middle.IsZero() && wider(s.Front, s.Middle) && wider(s.Rear, s.Middle):
		return JournalHourglass
	case wider(s.Rear, s.Front):
		return JournalSmallerFront
	case wider(s.Front, s.Rear):
		return JournalSmallerRear
	case !s.Middle.IsZero() && (wider(s.Middle, s.Front) || wider(s.Middle, s.Rear) || wider(s.Front, s.Middle) || wider(s.Rear, s.Middle)):
		return JournalShapeNotTold
	}
	return JournalStraight
}
