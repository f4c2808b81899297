package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A BoreWall is how far a wall stands beyond the original bore at one place:
// at finished/2 + Wear from the original axis, toward Heading. It is dialled
// from that axis, which the unworn bottom of the bore, or the land above the
// ring travel, still has.
type BoreWall struct {
	Where   string            `json:"where"`   // "top, thrust side"
	Heading units.Angle       `json:"heading"` // from the crank's axis; half a turn on is the wall opposite
	Wear    tolerance.Bracket `json:"wear"`    // on the radius
}

// Centring is where the boring bar is set up. The zero value is OriginalAxis.
type Centring uint8

// The places for the bar.
const (
	// OriginalAxis keeps the bore where the maker put it.
	OriginalAxis Centring = iota
	// MovedToBore sets the bar in the middle of the worn bore: the least
	// circle over all walls.
	MovedToBore
	// StatedCentre sets it where the user says.
	StatedCentre
)

var centringNames = []string{"original axis", "moved to the worn bore", "stated centre"}

// String is the place in words.
func (c Centring) String() string { return wordOf(centringNames, c) }

// MarshalText writes what String gives.
func (c Centring) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads what String gives.
func (c *Centring) UnmarshalText(text []byte) error {
	return readWord("centring", centringNames, text, c)
}

// A WornBore is what is known of a bore that may have to be bored.
type WornBore struct {
	Where    string       `json:"where"`    // "cylinder 3"
	Finished units.Length `json:"finished"` // the diameter it was last finished to
	// Walls were dialled from the original axis, at any levels.
	Walls []BoreWall `json:"walls,omitzero"`
	// Greatest is the greatest diameter, of a [BoreSurvey]. Alone it doesn't tell
	// which side is worn.
	Greatest tolerance.Bracket `json:"greatest,omitzero"`
	Sonic    []SonicWall       `json:"sonic,omitzero"`   // readings of its walls' thickness
	Surface  BoreSurface       `json:"surface,omitzero"` // what its wall is made of
	// Process is the maker's own, without which a plated, coated or bare alloy
	// bore is not rebored: where it is written down.
	Process string `json:"process,omitempty"`
}

// A BoringPlan is how bores are to be finished.
type BoringPlan struct {
	Centring Centring     `json:"centring,omitzero"` // where the bar stands
	Centre   BoreCentre   `json:"centre,omitzero"`   // for StatedCentre
	Cut      units.Length `json:"cut"`               // the least to be cut from every wall, per side
	Honing   units.Length `json:"honing"`            // left for honing, on the diameter
	// LeastWall is how thick a wall must stay; LargestBore the largest size
	// that the maker allows. Zero where not given.
	LeastWall   units.Length `json:"leastWall,omitzero"`
	LargestBore units.Length `json:"largestBore,omitzero"` // on the diameter
}

// A BoreNeed is the least size that a bore can be finished to.
type BoreNeed struct {
	Size        tolerance.Bracket `json:"size"`        // the least, after honing
	Centre      BoreCentre        `json:"centre"`      // where the bar stands
	CentreKnown bool              `json:"centreKnown"` // false: moved, by diameters alone
	// Governs is the wall, by its place in WornBore.Walls, that asks for it; −1
	// where that is an unworn wall that the moved bar would miss, or where there
	// are only diameters.
	Governs     int    `json:"governs"`
	ByDiameters bool   `json:"byDiameters"`      // without dialled walls: which side is worn isn't known
	Settle      string `json:"settle,omitempty"` // what would narrow it
}

// LeastSize is the least size that a bore can be finished to, with the bar set
// up as planned:
//
//	2·max|P − C| + 2·cut + hone
//
// over all walls P, at all levels at once since the bar is straight, and over
// the unworn bore between them, which lies at finished/2 (see the derivation
// under Oversize in the package documentation). With brackets for the wear, the
// size is a bracket: the centre is that of the greatest wear, the size what it
// takes there.
//
// From a greatest diameter alone it is the bracket of [LeastSizeByDiameters].
// A wall that wasn't dialled counts as unworn, so dial both sides. Where a
// diameter is given too, the walls must explain it, and it tells of the wall
// opposite the most worn one.
//
// The ends are rounded outward to the picometre, the centre to the nearest, and
// the size holds for the rounded centre. It fails with an [InputError] where
// nothing was measured or a size can't be, and with a [ProcessError] where the
// bore is not one that is rebored.
func LeastSize(b *WornBore, p *BoringPlan) (BoreNeed, error) {
	if err := b.check(p); err != nil {
		return BoreNeed{}, err
	}
	need, err := b.overAll(p)
	if err != nil {
		return need, err
	}
	need.Size = LeastSizeOnAxis(need.Size, tolerance.Exactly(units.Length(0)), tolerance.Exactly(p.Cut), tolerance.Exactly(p.Honing))
	return need, nil
}

// overAll is the need before cut and hone.
func (b *WornBore) overAll(p *BoringPlan) (BoreNeed, error) {
	finished := tolerance.Exactly(b.Finished)
	if len(b.Walls) == 0 {
		if b.Greatest.IsZero() {
			return BoreNeed{}, &InputError{b.field("greatest diameter"), "(not given)", "gauged, or the walls dialled"}
		}
		return b.byDiameter(p), nil
	}
	walls, settle, err := b.withOpposite()
	if err != nil {
		return BoreNeed{}, err
	}
	centre := p.Centre
	switch p.Centring {
	case OriginalAxis:
		centre, settle = BoreCentre{}, ""
	case MovedToBore:
		var few [32]wallPoint
		points := few[:0]
		for i := range walls {
			_, hi := bothOf(walls[i].Wear)
			x, y := unit(walls[i].Heading)
			points = append(points, wallPoint{x, y, float64(hi)})
		}
		c := leastCircle(float64(b.Finished)/2, points)
		centre = BoreCentre{units.Length(math.RoundToEven(c.x)), units.Length(math.RoundToEven(c.y))}
	}
	n := BoreNeed{Centre: centre, CentreKnown: true, Governs: -1, Settle: settle}
	near, far := centre.shift()
	lo, hi := b.Finished+2*near, b.Finished+2*far
	for i := range walls {
		least, greatest := walls[i].span(b.Finished, centre)
		lo = max(lo, least)
		if greatest > hi {
			hi, n.Governs = greatest, i
		}
	}
	if n.Governs == len(b.Walls) {
		n.Governs = -1 // the wall opposite, which wasn't dialled
	}
	n.Size = boreSpan(min(lo, hi), hi)
	if !b.Greatest.IsZero() {
		n.Size = n.Size.Max(b.Greatest.Max(finished))
	}
	return n, nil
}

// withOpposite are the walls dialled and, where the one opposite the most worn
// wasn't, that one as the greatest diameter tells of it, which is taken to go
// through the most worn wall. No diameter exceeds the bore by more than twice
// the greatest wear.
func (b *WornBore) withOpposite() (walls []BoreWall, settle string, err error) {
	const half = 180 * units.Degree
	top := &b.Walls[0]
	for i := range b.Walls[1:] {
		if mostOf(b.Walls[i+1].Wear) > mostOf(top.Wear) {
			top = &b.Walls[i+1]
		}
	}
	dialled := false
	for i := range b.Walls {
		dialled = dialled || (b.Walls[i].Heading%(2*half)-top.Heading%(2*half)-half)%(2*half) == 0
	}
	wear := mostOf(top.Wear)
	d, _ := bothOf(b.Greatest)
	switch {
	case b.Greatest.IsZero() && !dialled:
		return b.Walls, "dial the wall opposite the most worn one too, which counts as unworn", nil
	case b.Greatest.IsZero():
		return b.Walls, "", nil
	case d > b.Finished+2*max(wear, 0):
		return nil, "", &InputError{b.field("greatest diameter"), b.Greatest.String(),
			"explained by the walls dialled, of which none is worn by more than " + wear.String() + ": dial the place where it was gauged"}
	case dialled:
		return b.Walls, "", nil
	}
	left := WearOppositeWall(b.Greatest, tolerance.Exactly(b.Finished), top.Wear).Max(tolerance.Exactly(units.Length(0)))
	walls = append(make([]BoreWall, 0, len(b.Walls)+1), b.Walls...)
	return append(walls, BoreWall{Heading: top.Heading%(2*half) + half, Wear: left}), "", nil
}

// mostOf is a checked bracket's upper end.
func mostOf(i tolerance.Bracket) units.Length { _, hi := bothOf(i); return hi }

// span is the least and the greatest diameter about a centre that reaches a
// wall.
func (w *BoreWall) span(finished units.Length, c BoreCentre) (least, greatest units.Length) {
	lo, hi := bothOf(w.Wear)
	x, y := unit(w.Heading)
	r, cx, cy := float64(finished)/2, float64(c.X), float64(c.Y)
	over, slack := wallPoint{x, y, float64(lo)}.reach(r, cx, cy)
	least = finished + units.Length(math.Floor(2*(over-slack)))
	over, slack = wallPoint{x, y, float64(hi)}.reach(r, cx, cy)
	return least, finished + units.Length(math.Ceil(2*(over+slack)))
}

// byDiameter bounds the need from the greatest diameter.
func (b *WornBore) byDiameter(p *BoringPlan) BoreNeed {
	finished, none := tolerance.Exactly(b.Finished), tolerance.Exactly(units.Length(0))
	least, greatest := LeastSizeByDiameters(finished, b.Greatest.Max(finished), none, none)
	lo, _ := bothOf(least)
	_, hi := bothOf(greatest)
	n := BoreNeed{ByDiameters: true, Governs: -1, CentreKnown: p.Centring != MovedToBore}
	if p.Centring == StatedCentre {
		n.Centre = p.Centre
		near, far := p.Centre.shift()
		lo = max(lo, b.Finished+2*near)
		hi += 2 * far
	}
	n.Size = boreSpan(lo, hi)
	if lo != hi {
		n.Settle = "dial the worn side from the original axis: a diameter doesn't tell how much of the wear is on which wall"
	}
	return n
}

// bothOf is a checked bracket's ends.
func bothOf(i tolerance.Bracket) (lo, hi units.Length) {
	lo, _ = i.Lower()
	hi, _ = i.Upper()
	return lo, hi
}
