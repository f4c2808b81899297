package crank

// A JournalShape says in a word how the planes of a journal lie to each other, as
// far as their readings tell: a difference that the micrometer's own error can
// explain counts as none. The zero value is JournalShapeNotTold.
type JournalShape uint8

// The shapes.
const (
	JournalShapeNotTold JournalShape = iota // fewer than two planes were read in every direction
	JournalStraight                         // no difference that the readings are sure of
	JournalSmallerFront                     // tapered toward the front
	JournalSmallerRear                      // tapered toward the rear
	JournalBarrel                           // greater inside than at both ends
	JournalHourglass                        // smaller inside than at both ends
	JournalUneven                           // both, at different places
)

var journalShapeNames = []string{"not told", "straight", "tapered, smaller at the front", "tapered, smaller at the rear", "barrel", "hourglass", "uneven"}

// String is the shape in words.
func (s JournalShape) String() string { return journalWord(journalShapeNames, s) }

// MarshalText writes what String gives.
func (s JournalShape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *JournalShape) UnmarshalText(text []byte) error {
	return journalRead("shape of a journal", journalShapeNames, text, s)
}

// journalProfile is what the shape follows from: a value of each plane from front
// to rear (sums of as many readings each), of which the ends and the extremes
// between them are kept.
type journalProfile struct {
	n                         int
	first, last               int64
	innerLeast, innerGreatest int64 // of the planes between the ends
	at                        [2]int
}

func (p *journalProfile) add(v int64, plane int) {
	switch p.n {
	case 0:
		p.first, p.at[0] = v, plane
	case 1:
	case 2:
		p.innerLeast, p.innerGreatest = p.last, p.last
	default:
		p.innerLeast, p.innerGreatest = min(p.innerLeast, p.last), max(p.innerGreatest, p.last)
	}
	p.last, p.at[1] = v, plane
	p.n++
}

// ends are the least and the greatest of all planes.
func (p *journalProfile) ends() (least, greatest int64) {
	least, greatest = min(p.first, p.last), max(p.first, p.last)
	if p.n > 2 {
		least, greatest = min(least, p.innerLeast), max(greatest, p.innerGreatest)
	}
	return least, greatest
}

// shape names the profile; doubt is what two planes may differ by in truth and
// read alike.
func (p *journalProfile) shape(doubt int64) JournalShape {
	if p.n < 2 {
		return JournalShapeNotTold
	}
	sure := func(more, less int64) bool { return more-less > doubt }
	if p.n > 2 {
		barrel := sure(p.innerGreatest, p.first) && sure(p.innerGreatest, p.last)
		hourglass := sure(p.first, p.innerLeast) && sure(p.last, p.innerLeast)
		switch {
		case barrel && hourglass:
			return JournalUneven
		case barrel:
			return JournalBarrel
		case hourglass:
			return JournalHourglass
		}
	}
	least, greatest := p.ends()
	switch {
	case sure(p.last, p.first):
		return JournalSmallerFront
	case sure(p.first, p.last):
		return JournalSmallerRear
	case sure(greatest, least):
		return JournalShapeNotTold // sure of one end alone: no shape yet
	}
	return JournalStraight
}
