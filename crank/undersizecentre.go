package crank

import (
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A JournalWall is how far the surface of a journal stands below the size it was
// last ground to at one place: at finished/2 − Wear from the original axis, toward
// Heading. It is dialled from that axis, which the unworn edges beside the shell
// still have.
type JournalWall struct {
	Where string `json:"where"` // "front, toward the mains"
	// Heading is from the line from the mains' axis out to the pin's, all the way
	// round; on a main from any mark.
	Heading units.Angle       `json:"heading"`
	Wear    tolerance.Bracket `json:"wear"` // on the radius
}

// A JournalCentre is where a journal is ground about, from its original axis.
type JournalCentre struct {
	Out    units.Length `json:"out"`    // along the throw, away from the mains: the stroke grows by twice this
	Across units.Length `json:"across"` // at right angles to it, toward 90°: the pin's index moves
}

// JournalCentring is where a journal is ground about. The zero value is
// OriginalThrow.
type JournalCentring uint8

// The centres.
const (
	OriginalThrow JournalCentring = iota // the original axis
	MovedCentre                          // the middle of the worn journal: the greatest circle within it
)

var journalCentringNames = []string{"original throw", "moved to the worn journal"}

// String is the centre in words.
func (c JournalCentring) String() string { return journalWord(journalCentringNames, c) }

// MarshalText writes what String gives.
func (c JournalCentring) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads what String gives.
func (c *JournalCentring) UnmarshalText(text []byte) error {
	return journalRead("centring", journalCentringNames, text, c)
}

// A wornSide is a wall by its direction and its wear in picometres.
type wornSide struct{ x, y, wear float64 }

// side is the direction of a heading.
func (w *JournalWall) side(wear units.Length) wornSide {
	turn := w.Heading % (360 * units.Degree)
	sin, cos := math.Sincos(turn.Radians())
	switch turn { // the four that should be exact
	case 90 * units.Degree, -270 * units.Degree:
		sin, cos = 1, 0
	case 180 * units.Degree, -180 * units.Degree:
		sin, cos = 0, -1
	case 270 * units.Degree, -90 * units.Degree:
		sin, cos = -1, 0
	}
	return wornSide{cos, sin, float64(wear)}
}

// excess is how much less than finished/2 the radius is about a centre, so that it
// lies within every side, and within the unworn journal between them:
//
//	max(wear + direction · centre, |centre|)
//
// A side's distance from the centre is not less than its part along its own
// direction, finished/2 − wear − direction · centre, so this never says too little;
// it says too much by about |centre|²/finished at the most, a micrometre where a
// 50 mm journal moves by 0.22 mm.
func excess(sides []wornSide, x, y float64) float64 {
	worst := math.Hypot(x, y)
	for i := range sides {
		worst = max(worst, sides[i].wear+sides[i].x*x+sides[i].y*y)
	}
	return worst
}

// leastExcess is the centre about which the excess is the least.
//
// The excess is the greatest of convex functions, so its least is that of the two
// or three that meet there: one side and the unworn journal opposite, two sides
// that face each other, two and the unworn journal, or three sides. Beginning with none, the side that is
// worst at the centre so far joins those that hold it, and the least over them is
// found by trying each such meeting; the excess grows with every step, so it ends.
func leastExcess(sides []wornSide) (x, y float64) {
	var held []wornSide
	for range 4*len(sides) + 10 { // far more than it takes: it must end
		worst, at := math.Hypot(x, y), -1
		if len(held) > 0 {
			worst = excess(held, x, y)
		}
		const slack = 1e-3 // of a picometre
		for i := range sides {
			if e := sides[i].wear + sides[i].x*x + sides[i].y*y; e > worst+slack {
				worst, at = e, i
			}
		}
		if at < 0 {
			break
		}
		held = append(held, sides[at])
		x, y = meeting(held)
		held = holding(held, x, y)
	}
	return x, y
}

// holding keeps the sides that reach the excess at a centre.
func holding(sides []wornSide, x, y float64) []wornSide {
	worst, kept := excess(sides, x, y), sides[:0]
	for _, s := range sides {
		if s.wear+s.x*x+s.y*y >= worst-1 { // within a picometre
			kept = append(kept, s)
		}
	}
	return kept
}

// meeting is the centre of least excess over a few sides and the unworn journal,
// of all places where one side, two or three of them meet.
func meeting(sides []wornSide) (bx, by float64) {
	best := excess(sides, 0, 0)
	try := func(x, y float64) {
		if e := excess(sides, x, y); e < best {
			best, bx, by = e, x, y
		}
	}
	for i, a := range sides {
		try(-a.x*a.wear/2, -a.y*a.wear/2)
		for j, b := range sides[:i] {
			twoAndRing(a, b, try)
			for _, c := range sides[:j] {
				if x, y, ok := threeMeet(a, b, c); ok {
					try(x, y)
				}
			}
		}
	}
	return bx, by
}

// twoAndRing tries the centres at which two sides and the unworn journal have one
// excess t: a·C = t − wa, b·C = t − wb and |C| = t.
func twoAndRing(a, b wornSide, try func(x, y float64)) {
	det := a.x*b.y - a.y*b.x
	if math.Abs(det) < 1e-9 {
		// Sides that face each other: halfway between them.
		if dx, dy := a.x-b.x, a.y-b.y; dx*dx+dy*dy > 1 {
			by := (b.wear - a.wear) / (dx*dx + dy*dy)
			try(dx*by, dy*by)
		}
		return
	}
	// C = p + t·q, with |C|² = t².
	px, py := (-a.wear*b.y+b.wear*a.y)/det, (-a.x*b.wear+b.x*a.wear)/det
	qx, qy := (b.y-a.y)/det, (a.x-b.x)/det
	k2, k1, k0 := qx*qx+qy*qy-1, 2*(px*qx+py*qy), px*px+py*py
	if math.Abs(k2) < 1e-12 {
		if k1 != 0 {
			t := -k0 / k1
			try(px+t*qx, py+t*qy)
		}
		return
	}
	d := k1*k1 - 4*k2*k0
	if d < 0 {
		return
	}
	for _, sign := range [2]float64{-1, 1} {
		t := (-k1 + sign*math.Sqrt(d)) / (2 * k2)
		try(px+t*qx, py+t*qy)
	}
}

// threeMeet is the centre at which three sides have one excess.
func threeMeet(a, b, c wornSide) (x, y float64, ok bool) {
	ux, uy, u := a.x-c.x, a.y-c.y, c.wear-a.wear
	vx, vy, v := b.x-c.x, b.y-c.y, c.wear-b.wear
	det := ux*vy - uy*vx
	if math.Abs(det) < 1e-9 {
		return 0, 0, false
	}
	return (u*vy - v*uy) / det, (ux*v - vx*u) / det, true
}

// movedCentre is the centre of the greatest circle within the worn sides, to the
// picometre.
func movedCentre(walls []JournalWall) JournalCentre {
	sides := make([]wornSide, len(walls))
	for i := range walls {
		_, hi := journalEnds(walls[i].Wear)
		sides[i] = walls[i].side(hi)
	}
	x, y := leastExcess(sides)
	return JournalCentre{units.Length(math.RoundToEven(x)), units.Length(math.RoundToEven(y))}
}

// about is the excess, from the least to the greatest that the walls' wear allows,
// about a centre, rounded outward.
func (c JournalCentre) about(walls []JournalWall) (lo, hi units.Length, governs int) {
	moved := math.Hypot(float64(c.Out), float64(c.Across))
	least, greatest := moved, moved
	governs = -1
	for i := range walls {
		a, b := journalEnds(walls[i].Wear)
		s := walls[i].side(0)
		along := s.x*float64(c.Out) + s.y*float64(c.Across)
		least = max(least, float64(a)+along)
		if e := float64(b) + along; e > greatest {
			greatest, governs = e, i
		}
	}
	if c == (JournalCentre{}) { // all whole: exact
		return units.Length(least), units.Length(greatest), governs
	}
	return units.Length(math.Floor(least)), units.Length(math.Ceil(greatest)), governs
}

// IndexAfterShift is how far a crankpin stands on from its place, in radians, once
// its centre was moved across the throw: the direction of a pin whose throw is
// throw and which lies so far to the side.
func IndexAfterShift[R tolerance.Real[R]](across, throw R) R { return across.Atan2(throw) }
