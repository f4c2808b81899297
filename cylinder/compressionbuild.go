package cylinder

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Build is what makes the compression ratio of one cylinder. Each size
// holds the error of its measurement; an exact one is [tolerance.Exactly].
type Build struct {
	Bore   tolerance.Bracket // diameter
	Stroke tolerance.Bracket // twice the crank's throw
	// Chamber is the volume in the head, filled level with its face under a
	// flat plate, plug and valves in place.
	Chamber VolumeBracket
	Gasket  Gasket   // the head gasket's hole
	Deck    Deck     // must be given: below, above or level
	Crown   Crown    // dish and dome, or a down-fill
	Land    RingLand // the crevice above the top ring; zero leaves it out
	// OpenAreaMM2 is the open area of the chamber at the head's face in mm²:
	// its outline, traced on squared paper. A skim of the head needs it.
	OpenAreaMM2 float64
}

// A Gasket is the head gasket's hole at this cylinder: its bore (for a hole
// that isn't round, that of a circle of its area) and the thickness that it is
// compressed to, as its maker gives it or as an old one measures.
type Gasket struct {
	Bore      tolerance.Bracket // diameter of the hole
	Thickness tolerance.Bracket // compressed
}

// A Crown is what the piston's crown adds to the space above the deck edge,
// and what it takes: a dish and valve pockets, a dome. Or, in one, what a
// down-fill took: see [CrownByFill]. The zero Crown is flat.
type Crown struct {
	Dish VolumeBracket // dish and valve pockets
	Dome VolumeBracket // dome
	// FillDepth is how far the deck edge was below the block face for a
	// down-fill. Dish and dome are then left out.
	FillDepth tolerance.Bracket
	Fill      VolumeBracket // what the space then held
}

// A RingLand is the crevice above the top ring: the top land's diameter, and
// its height from the deck edge down to the ring. The zero RingLand leaves the
// crevice out, as most do; counted, it makes the ratio less by up to 0.1 or 0.2
// (from memory).
type RingLand struct {
	Diameter tolerance.Bracket // of the top land
	Height   tolerance.Bracket // of the top land, from the deck edge to the ring
}

// A Compression is what follows from a [Build]. Where the bore isn't exact,
// the ratio's ends take one bore for all of its parts.
type Compression struct {
	Ratio     Ratios        `json:"ratio"`            // 1 + swept/clearance
	Swept     VolumeBracket `json:"swept"`            // of this cylinder
	Clearance VolumeBracket `json:"clearance"`        // the sum of those below
	Chamber   VolumeBracket `json:"chamber"`          // in the head
	Gasket    VolumeBracket `json:"gasket"`           // the hole in the compressed gasket
	Deck      VolumeBracket `json:"deck"`             // below zero where the piston stands above the block face
	Crown     VolumeBracket `json:"crown"`            // below zero for a dome
	Land      VolumeBracket `json:"land"`             // the crevice above the top ring, 0 where it was left out
	Doubts    []Doubt       `json:"doubts,omitempty"` // what to look into before the figure is used
}

// Compression adds up the clearance volume and gives the ratio. Every end is
// that of the worst combination that the brackets allow: the ratio grows with
// the stroke and the dome, and falls with each other volume; the bore it is
// tried with at both of its ends, between which it only rises or only falls.
//
// It fails with an [InputError] where a size is missing, not above zero, or
// known on one side alone, and where the deck isn't given; and with a
// [ContactError] where the clearance volume may be zero or less: the piston
// would hit the head.
func (b Build) Compression() (Compression, error) {
	if err := b.check(needsGasket | needsStroke); err != nil {
		return Compression{}, err
	}
	lo, hi := b.boresOf()
	low, err := lo.compressionAt()
	if err != nil || lo.Bore == hi.Bore {
		return low.with(b), err
	}
	high, err := hi.compressionAt()
	if err != nil {
		return Compression{}, err
	}
	return Compression{
		Ratio: low.Ratio.hull(high.Ratio), Swept: hullOf(low.Swept, high.Swept), Clearance: hullOf(low.Clearance, high.Clearance),
		Chamber: low.Chamber, Gasket: low.Gasket, Deck: hullOf(low.Deck, high.Deck),
		Crown: hullOf(low.Crown, high.Crown), Land: hullOf(low.Land, high.Land),
	}.with(b), nil
}

// boresOf are the build with the least bore and with the greatest.
func (b Build) boresOf() (lo, hi Build) {
	l, _ := bothEnds(b.Bore)
	lo, hi = b, b
	lo.Bore, hi.Bore = tolerance.Exactly(l.lo), tolerance.Exactly(l.hi)
	return lo, hi
}

// compressionAt is the compression with one exact bore: each other size then
// counts in one volume alone.
func (b Build) compressionAt() (Compression, error) {
	c := b.volumes()
	c.Clearance = c.Chamber.Add(c.Gasket).Add(c.Deck).Add(c.Crown).Add(c.Land)
	clear, ok := bothEnds(c.Clearance)
	swept, okSwept := bothEnds(c.Swept)
	switch {
	case !ok || !okSwept:
		return Compression{}, &InputError{"clearance volume", c.Clearance.String(), "within ±23 m³"}
	case clear.lo <= 0:
		return Compression{}, &ContactError{What: "clearance volume", Value: c.Clearance.Text(units.InCubicCentimetres, 3), Certain: clear.hi <= 0}
	}
	c.Ratio = ratiosOf(swept, clear)
	return c, nil
}

// volumes are all parts but their sum, with one exact bore.
func (b Build) volumes() Compression {
	c := Compression{
		Swept:   CylinderVolumeBracket(b.Bore, b.Stroke),
		Chamber: orNothing(b.Chamber),
		Gasket:  CylinderVolumeBracket(b.Gasket.Bore, b.Gasket.Thickness),
		Deck:    CylinderVolumeBracket(b.Bore, b.Deck.below),
	}
	if b.Crown.Fill.IsZero() {
		c.Crown = orNothing(b.Crown.Dish).Sub(orNothing(b.Crown.Dome))
	} else {
		c.Crown = b.Crown.Fill.Sub(CylinderVolumeBracket(b.Bore, b.Crown.FillDepth))
	}
	c.Land = b.land()
	return c
}

// land is the crevice's volume, which grows with its height and falls with
// the land's diameter.
func (b Build) land() VolumeBracket {
	if b.Land == (RingLand{}) {
		return tolerance.Exactly(units.Volume(0))
	}
	h, okH := bothEnds(b.Land.Height)
	d, okD := bothEnds(b.Land.Diameter)
	if !okH || !okD {
		return tolerance.Exactly(units.OutOfRange[units.Volume]())
	}
	ring := func(height, diameter units.Length) VolumeBracket {
		h := tolerance.Exactly(height)
		return CylinderVolumeBracket(b.Bore, h).Sub(CylinderVolumeBracket(tolerance.Exactly(diameter), h))
	}
	return hullOf(ring(h.lo, d.hi), ring(h.hi, d.lo))
}

// A Doubt is something about a build that makes its figures, or the build
// itself, doubtful.
type Doubt uint8

// The doubts. The zero value is none.
const (
	NoDoubt Doubt = iota
	// GasketOverhangs: the gasket's bore is, or may be, below the cylinder's.
	GasketOverhangs
	// CrownAtHead: the crown's edge stands, or may stand, at the head's face.
	CrownAtHead
	// RatioUnusual: the ratio is below 4 or above 30, which is not one that
	// engines have (common practice, and wide).
	RatioUnusual
	// OpenAreaUnusual: the chamber's open area at the face is below a tenth of
	// the bore's or above one and a half times it (common practice, and wide).
	// Over a bowl in the piston a flat head may have so little all the same.
	OpenAreaUnusual
)

var doubtNames = []string{
	"",
	"the gasket's bore may be below the cylinder's: it overhangs into the bore, burns and can be struck; fit a gasket made for the bore",
	"the crown's edge may stand at the head's face or beyond: it hits the head unless the head is recessed there; check the deck's side and the gasket's compressed thickness",
	"a ratio below 4 or above 30 is not one that engines have: check the units, and the deck's side",
	"the chamber's open area at the face is under a tenth of the bore's, or over one and a half times it: check that it is in mm²",
}

// String is the doubt in words, with what to do.
func (d Doubt) String() string { return wordOf(doubtNames, d) }

// MarshalText writes what String gives.
func (d Doubt) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// with is the compression with what is doubtful about the build.
func (c Compression) with(b Build) Compression {
	if b.gasketOverhangs() {
		c.Doubts = append(c.Doubts, GasketOverhangs)
	}
	if lo, _ := b.Deck.below.Add(b.Gasket.Thickness).Lower(); lo <= 0 {
		c.Doubts = append(c.Doubts, CrownAtHead)
	}
	if c.Ratio.Least < 4 || c.Ratio.Greatest > 30 {
		c.Doubts = append(c.Doubts, RatioUnusual)
	}
	if b.openAreaUnusual() {
		c.Doubts = append(c.Doubts, OpenAreaUnusual)
	}
	return c
}

// openAreaUnusual reports it of an area that is given.
func (b Build) openAreaUnusual() bool {
	bore, ok := bothEnds(b.Bore)
	if !ok || b.OpenAreaMM2 == 0 {
		return false
	}
	d := bore.lo.Float(units.InMillimetres)
	share := b.OpenAreaMM2 / (math.Pi / 4 * d * d)
	return share < 0.1 || share > 1.5
}

func (b Build) gasketOverhangs() bool {
	g, okG := bothEnds(b.Gasket.Bore)
	bore, okB := bothEnds(b.Bore)
	return okG && okB && g.lo < bore.hi
}
