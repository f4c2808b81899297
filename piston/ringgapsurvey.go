package piston

import (
	"errors"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RingGapStation is one place of the bore that the ring travels over.
type RingGapStation struct {
	Place string            `json:"place"`         // "top of ring travel"
	Bore  tolerance.Bracket `json:"bore,omitzero"` // mean diameter there, see [RingBoreDiameter]; zero where not measured
	Gap   tolerance.Bracket `json:"gap,omitzero"`  // end gap read there, the ring square; zero where it is to be worked out
}

// A RingGap is a ring's end gap as read in its bore, at one place or more.
//
// The gap is greatest where the bore is most worn, near the top of the travel,
// and least where it is smallest, near the bottom; so the greatest is judged
// against the upper limit and the least, at which the ends would butt, against
// the lower. Where it was read at one place only, the bore's diameters carry it
// to the others by [RingGapInBore].
type RingGap struct {
	Where    string           `json:"where"`    // "cylinder 2, top ring"
	Stations []RingGapStation `json:"stations"` // of the ring's travel
	// Thickness is the ring's radial thickness, which tells how far the gap
	// at another place may be from the one on the ring's middle line; where
	// it is zero, a twentieth of the bore stands for it.
	Thickness units.Length   `json:"thickness,omitzero"`
	Limits    tolerance.Spec `json:"limits"` // of the end gap
}

// ringGapMeasure is the name of the measure in findings.
const ringGapMeasure = "ring end gap"

// A RingGapAt is the gap at one station.
type RingGapAt struct {
	Place    string            `json:"place"`    // the station's
	Gap      tolerance.Bracket `json:"gap"`      // what is known of it, from every place where it was read
	Measured bool              `json:"measured"` // whether it was read there, not worked out
}

// A RingGapReport is what follows from the readings of one ring. It is plain
// data.
type RingGapReport struct {
	Finding  tolerance.Finding `json:"finding"`  // the greatest against the upper limit, the least against the lower
	Stations []RingGapAt       `json:"stations"` // the gap at each
	Greatest int               `json:"greatest"` // the station whose gap may be the greatest
	Least    int               `json:"least"`    // the station whose gap may be the least
	Filing   RingFiling        `json:"filing"`   // what could be filed off
	Remedy   RingRemedy        `json:"remedy"`   // what follows
	Next     string            `json:"next"`     // what to do next, in words
}

// Assess works out the gap at every station, judges it, and says what to do
// next. It fails with an [InputError] where a gap was read nowhere, where a
// station lacks both gap and bore, where sizes can't be, and where two
// readings contradict each other; and as [tolerance.Assess] does.
func (g *RingGap) Assess() (RingGapReport, error) {
	r, err := g.assess(make([]RingGapAt, 0, len(g.Stations)), make([]tolerance.Bracket, 0, len(g.Stations)))
	if err == nil {
		r.Next = r.next()
	}
	return r, err
}

// assess is Assess without the words, in the memory that it is given.
func (g *RingGap) assess(at []RingGapAt, gaps []tolerance.Bracket) (RingGapReport, error) {
	var r RingGapReport
	if err := g.check(); err != nil {
		return r, err
	}
	for i := range g.Stations {
		gap, err := g.at(i)
		if err != nil {
			return r, err
		}
		gaps, at = append(gaps, gap), append(at, RingGapAt{g.Stations[i].Place, gap, !g.Stations[i].Gap.IsZero()})
	}
	r.Stations = at
	var err error
	if r.Finding, err = tolerance.Assess(ringGapMeasure, g.Where, g.Limits, gaps...); err != nil {
		return r, err
	}
	r.Greatest, r.Least = widest(gaps), narrowest(gaps)
	r.Filing = fileFor(&r.Finding)
	r.Remedy = r.remedy()
	return r, nil
}

func (g *RingGap) check() error {
	if len(g.Stations) == 0 {
		return &InputError{"end gap", "of no station", "read at one place of the bore or more"}
	}
	read := false
	for i, s := range g.Stations {
		if s.Bore.IsZero() {
			if s.Gap.IsZero() {
				return &InputError{g.field("bore", i), "not measured", "measured, where the gap was not read"}
			}
		} else if _, err := ringBore("bore", s.Bore); err != nil {
			return g.named(err, i)
		}
		if s.Gap.IsZero() {
			continue
		}
		read = true
		bore := s.Bore
		if bore.IsZero() {
			bore = tolerance.Exactly(ringMost)
		}
		if err := ringGapRead("end gap", s.Gap, bore); err != nil {
			return g.named(err, i)
		}
	}
	if !read {
		return &InputError{"end gap", "of no station", "read at one place of the bore or more"}
	}
	for i, s := range g.Stations {
		if s.Bore.IsZero() {
			continue
		}
		lo, _ := s.Bore.Lower()
		if _, err := ringThickness(g.Thickness, [2]units.Length{lo, lo}); err != nil {
			return err
		}
		for j := range i {
			if least, _ := g.Stations[j].Bore.Lower(); least != 0 && (least-lo).Abs() > lo/10 {
				return &InputError{g.field("bore", i), s.Bore.String(), "near " + g.Stations[j].Bore.String() + ", in the same bore"}
			}
		}
	}
	return nil
}

// named adds a reading's place to the field of an error.
func (g *RingGap) named(err error, i int) error {
	var e *InputError
	errors.As(err, &e) // all of them are
	return &InputError{g.field(e.Field, i), e.Value, e.Want}
}

// field names a reading by its place, for errors.
func (g *RingGap) field(what string, i int) string {
	place := g.Stations[i].Place
	if place == "" {
		place = "station " + strconv.Itoa(i+1)
	}
	if len(place) > 64 {
		place = clip([]byte(place))
	}
	return what + " at " + place
}

// at is what all readings together tell of the gap at one station.
func (g *RingGap) at(i int) (tolerance.Bracket, error) {
	here := g.Stations[i].Gap
	for j, s := range g.Stations {
		if j == i || s.Gap.IsZero() || s.Bore.IsZero() || g.Stations[i].Bore.IsZero() {
			continue
		}
		carried := carryRingGap(s.Gap, s.Bore, g.Stations[i].Bore, g.Thickness)
		both, ok := here.Intersect(carried)
		switch {
		case here.IsZero():
			both = carried
		case !ok:
			return here, &InputError{g.field("end gap", i), here.String(),
				"what the gap at " + g.place(j) + " comes to there, " + carried.String() + ": set the ring square and read both and the bore again"}
		}
		here = both
	}
	if lo, end := here.Lower(); end != tolerance.Absent && lo < 0 {
		return positiveOf(here), nil
	}
	return here, nil
}

func (g *RingGap) place(j int) string {
	if p := g.Stations[j].Place; p != "" && len(p) <= 64 {
		return p
	}
	return "station " + strconv.Itoa(j+1)
}

// positiveOf leaves out what of a gap is below zero: the ends butt there.
func positiveOf(gap tolerance.Bracket) tolerance.Bracket {
	if both, ok := gap.Intersect(tolerance.AtLeast(units.Length(0)).Interval()); ok {
		return both
	}
	return tolerance.Exactly(units.Length(0))
}

// carryRingGap holds the gap in another bore between any two edges of the
// ring's ends, face to back, since a reading doesn't tell which of them are
// nearest. The two bores have both ends, above zero.
func carryRingGap(gap, from, to tolerance.Bracket, thickness units.Length) tolerance.Bracket {
	opening := RingGapChange(to.Sub(from))
	bore, _ := to.Lower()
	if thickness == 0 {
		hi, _ := to.Upper()
		thickness = hi.Scale(1, 20)
	}
	// The gap itself turns too, by gap·thickness·change/bore² at the most.
	most, end := gap.Upper()
	if end == tolerance.Absent {
		most, _ = gap.Lower()
	}
	turn := func(change units.Length) units.Length {
		return units.MulDivRound(units.MulDivRound(most, change.Abs(), bore, units.Up), thickness, bore, units.Up)
	}
	least, _ := opening.Lower()
	greatest, _ := opening.Upper()
	turned, _ := tolerance.NewInterval(-turn(least), tolerance.Closed, turn(greatest), tolerance.Closed)
	return gap.Add(openingAtEdges(opening, to, thickness)).Add(turned)
}

// openingAtEdges holds what [RingOpeningAtFace] and [RingOpeningAtBack] are of
// an opening. The face's factor, above one, is greatest in the smallest bore,
// and the back's, below one, least there, so that two of all corners do.
func openingAtEdges(opening, to tolerance.Bracket, thickness units.Length) tolerance.Bracket {
	bore, _ := to.Lower()
	if bore <= 2*thickness { // a bore hardly known: by all corners
		t := tolerance.Exactly(thickness)
		return hullOf(RingOpeningAtFace(opening, to, t), RingOpeningAtBack(opening, to, t))
	}
	least, _ := opening.Lower()
	greatest, _ := opening.Upper()
	low, high := bore-2*thickness, bore
	if least < 0 {
		low = bore
	}
	if greatest < 0 {
		high = bore - 2*thickness
	}
	by, _ := tolerance.NewInterval(units.MulDivRound(least, low, bore-thickness, units.Down), tolerance.Closed,
		units.MulDivRound(greatest, high, bore-thickness, units.Up), tolerance.Closed)
	return by
}

// hullOf is the least interval that holds both.
func hullOf(a, b tolerance.Bracket) tolerance.Bracket {
	least, greatest := tolerance.Extremes(a, b)
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	i, _ := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return i
}

// widest is the station whose gap may be the greatest, narrowest the one whose
// gap may be the least; the first of several.
func widest(gaps []tolerance.Bracket) (at int) {
	for i := range gaps {
		hi, end := gaps[i].Upper()
		most, mostEnd := gaps[at].Upper()
		if mostEnd != tolerance.Absent && (end == tolerance.Absent || hi > most) {
			at = i
		}
	}
	return at
}

func narrowest(gaps []tolerance.Bracket) (at int) {
	for i := range gaps {
		lo, _ := gaps[i].Lower()
		least, _ := gaps[at].Lower()
		if lo < least {
			at = i
		}
	}
	return at
}
