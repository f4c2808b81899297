package cylinder

// A BoreShape says in a word how a bore's levels lie to each other, as far as
// their readings tell: a difference that the gauge's own error can explain
// counts as none. The zero value is ShapeNotTold.
type BoreShape uint8

// The shapes.
const (
	ShapeNotTold     BoreShape = iota // fewer than two levels were read in every direction
	ShapeStraight                     // no difference that the readings are sure of
	ShapeWiderTop                     // tapered, as wear leaves a bore
	ShapeWiderBottom                  // tapered the other way: choked, or worn where the wear isn't expected
	ShapeBarrel                       // wider inside than at both ends
	ShapeWaisted                      // narrower inside than at both ends
	ShapeBellTop                      // bell-mouthed: the end flares, the rest is even
	ShapeBellBottom                   //
	ShapeBellBoth                     //
)

var shapeNames = []string{
	"not told", "straight", "wider at the top", "wider at the bottom", "barrel", "waisted",
	"bell-mouthed at the top", "bell-mouthed at the bottom", "bell-mouthed at both ends",
}

// String is the shape in words.
func (s BoreShape) String() string { return wordOf(shapeNames, s) }

// MarshalText writes what String gives.
func (s BoreShape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *BoreShape) UnmarshalText(text []byte) error {
	return readWord("bore shape", shapeNames, text, s)
}

// boreProfile is what the shape follows from: a value of each level from the
// top down (sums of as many readings each), of which the first two, the last
// two, and the extremes inside and without either end are kept.
type boreProfile struct {
	n                           int
	first, second, before, last int64
	innerLeast, innerGreatest   int64 // of the levels between the ends
	restLeast, restGreatest     int64 // of all but the first
	leadLeast, leadGreatest     int64 // of all but the last
}

func (p *boreProfile) add(v int64) {
	if p.n > 0 {
		if p.n == 1 {
			p.second, p.restLeast, p.restGreatest = v, v, v
			p.leadLeast, p.leadGreatest = p.first, p.first
		} else {
			if p.n == 2 {
				p.innerLeast, p.innerGreatest = p.last, p.last
			}
			p.innerLeast, p.innerGreatest = min(p.innerLeast, p.last), max(p.innerGreatest, p.last)
			p.leadLeast, p.leadGreatest = min(p.leadLeast, p.last), max(p.leadGreatest, p.last)
			p.restLeast, p.restGreatest = min(p.restLeast, v), max(p.restGreatest, v)
		}
		p.before = p.last
	} else {
		p.first = v
	}
	p.last = v
	p.n++
}

// shape names the profile; doubt is what two levels may differ by in truth
// and read alike.
//
// A bell mouth is an end that is wider than the level next to it, for sure and
// by more than all the other levels differ among each other; so plain taper,
// whose levels differ step by step, is none. Of three levels none is told from
// taper or a waist.
func (p *boreProfile) shape(doubt int64) BoreShape {
	sure := func(more, less int64) bool { return more-less > doubt }
	if p.n < 2 {
		return ShapeNotTold
	}
	if p.n >= 3 {
		top := sure(p.first, p.second) && p.first-p.second > p.restGreatest-p.restLeast
		bottom := sure(p.last, p.before) && p.last-p.before > p.leadGreatest-p.leadLeast
		inner := p.innerGreatest - p.innerLeast
		both := sure(p.first, p.second) && sure(p.last, p.before) &&
			p.first-p.second > inner && p.last-p.before > inner
		switch {
		case both && p.n > 3:
			return ShapeBellBoth
		case sure(p.innerGreatest, p.first) && sure(p.innerGreatest, p.last):
			return ShapeBarrel
		case sure(p.first, p.innerLeast) && sure(p.last, p.innerLeast):
			return ShapeWaisted
		case top && p.n > 3:
			return ShapeBellTop
		case bottom && p.n > 3:
			return ShapeBellBottom
		}
	}
	switch {
	case sure(p.first, p.last):
		return ShapeWiderTop
	case sure(p.last, p.first):
		return ShapeWiderBottom
	}
	// A level that differs for sure from one end alone is no shape yet.
	if sure(max(p.first, p.restGreatest), min(p.first, p.restLeast)) {
		return ShapeNotTold
	}
	return ShapeStraight
}
