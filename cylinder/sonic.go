package cylinder

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A SonicWall is a wall's thickness at one place, read with an ultrasonic
// gauge.
type SonicWall struct {
	Where   string            `json:"where"`   // "thrust side, 60 mm down"
	Heading units.Angle       `json:"heading"` // from the crank's axis, as of a [BoreWall]
	Wall    tolerance.Bracket `json:"wall"`    // as it is, worn
	// Wear of that wall at that place. Where it isn't given it counts as none,
	// so that boring takes the most.
	Wear tolerance.Bracket `json:"wear,omitzero"`
}

// A WallLeft is what finishing to a size leaves of a wall.
type WallLeft struct {
	Where string            `json:"where"` // of the reading
	Cut   tolerance.Bracket `json:"cut"`   // taken from it
	Left  tolerance.Bracket `json:"left"`  // below zero: bored through
}

// WallLeftOf is what is left of a wall of which so much is cut.
func WallLeftOf[N tolerance.Number[N]](wall, cut N) N { return wall.Sub(cut) }

// overSize is how far the bore of a size about a centre lies beyond the
// finished radius toward a heading, rounded down and up. Along u it is where
// |ρu − C| = size/2:
//
//	ρ = u·C + √(size²/4 − |C|² + (u·C)²)
//
// of which the root lies below size/2 by (|C|² − (u·C)²)/(size/2 + root).
func overSize(finished, size units.Length, c BoreCentre, heading units.Angle) (least, greatest units.Length) {
	x, y := unit(heading)
	cx, cy := float64(c.X), float64(c.Y)
	along, side := x*cx+y*cy, x*cy-y*cx
	grown := float64(size-finished) / 2
	if side == 0 && (x == 0 || y == 0 || cx == 0 && cy == 0) {
		return units.Length(math.Floor(grown + along)), units.Length(math.Ceil(grown + along))
	}
	half := float64(size) / 2
	sag := side * side / (half + math.Sqrt(max(half*half-side*side, 0)))
	over := grown + along - sag
	slack := (math.Abs(grown) + math.Abs(along) + sag) / (1 << 48)
	return units.Length(math.Floor(over - slack)), units.Length(math.Ceil(over + slack))
}

// WallsLeft is what finishing a bore to a size about a centre leaves of each
// wall that was read with an ultrasonic gauge: what is cut is the new bore's
// reach toward it less the wear that is there already. Ends are rounded
// outward to the picometre.
func WallsLeft(b *WornBore, c BoreCentre, size tolerance.Bracket) ([]WallLeft, error) {
	if err := boreSize(b.field("size last finished to"), b.Finished); err != nil {
		return nil, err
	}
	if err := boreBracket("size", size, units.Picometre); err != nil {
		return nil, err
	}
	if lim := b.Finished / 4; c.X.Abs() > lim || c.Y.Abs() > lim {
		return nil, &InputError{b.field("centre"), c.X.String() + ", " + c.Y.String(), "within a quarter of the bore of its axis"}
	}
	if err := b.checkSonic(); err != nil {
		return nil, err
	}
	left := make([]WallLeft, len(b.Sonic))
	for i := range b.Sonic {
		cut := b.Sonic[i].cut(b.Finished, size, c)
		left[i] = WallLeft{b.Sonic[i].name(i), cut, WallLeftOf(b.Sonic[i].Wall, cut)}
	}
	return left, nil
}

// cut holds what is taken from a wall.
func (w *SonicWall) cut(finished units.Length, size tolerance.Bracket, c BoreCentre) tolerance.Bracket {
	lo, hi := bothOf(size)
	least, _ := overSize(finished, lo, c, w.Heading)
	_, greatest := overSize(finished, hi, c, w.Heading)
	cut := boreSpan(least, greatest)
	if !w.Wear.IsZero() {
		cut = cut.Sub(w.Wear)
	}
	// Where the new bore doesn't reach the wall nothing is cut.
	return cut.Max(tolerance.Exactly(units.Length(0)))
}

// LargestByWall is the largest size that leaves a wall at least so thick at
// every place read, about a centre, and the place that sets it; ok is false
// where no wall was read. A wall of thickness t at finished/2 + w may be bored to
// w + t − least beyond it, so the size is
//
//	2·min|(finished/2 + w + t − least)·u − C|
//
// the same distance as in [LeastSize]. For a doubtful wall the least that it
// may be counts. Rounded down to the picometre.
func LargestByWall(b *WornBore, c BoreCentre, leastWall units.Length) (size units.Length, where string, ok bool, err error) {
	if err := boreSize(b.field("size last finished to"), b.Finished); err != nil {
		return 0, "", false, err
	}
	if err := boreAllowance("least wall", leastWall); err != nil {
		return 0, "", false, err
	}
	if err := b.checkSonic(); err != nil {
		return 0, "", false, err
	}
	for i := range b.Sonic {
		w := &b.Sonic[i]
		thin, _ := bothOf(w.Wall)
		if !w.Wear.IsZero() {
			worn, _ := bothOf(w.Wear)
			thin += worn
		}
		x, y := unit(w.Heading)
		over, slack := wallPoint{x, y, float64(thin - leastWall)}.reach(float64(b.Finished)/2, float64(c.X), float64(c.Y))
		if d := b.Finished + units.Length(math.Floor(2*(over-slack))); !ok || d < size {
			size, where, ok = d, w.name(i), true
		}
	}
	return size, where, ok, nil
}

func (w *SonicWall) name(i int) string {
	if w.Where == "" {
		return "ultrasonic reading " + strconv.Itoa(i+1)
	}
	return w.Where
}

// checkSonic refuses walls that can't be.
func (b *WornBore) checkSonic() error {
	for i := range b.Sonic {
		w := &b.Sonic[i]
		field := b.field(clip(w.name(i)))
		if err := boreBracket(field+", wall", w.Wall, units.Picometre); err != nil {
			return &InputError{field + ", wall", w.Wall.String(), "a thickness above 0 mm"}
		}
		if !w.Wear.IsZero() {
			if err := boreBracket(field+", wear", w.Wear, -b.Finished/4); err != nil {
				return err
			}
			if _, hi := bothOf(w.Wear); hi > b.Finished/4 {
				return &InputError{field + ", wear", w.Wear.String(), "less than a quarter of the bore"}
			}
		}
		if _, hi := bothOf(w.Wall); hi > b.Finished {
			return &InputError{field + ", wall", w.Wall.String(), "thinner than the bore is wide, " + b.Finished.String() + ": is it in the right unit?"}
		}
		if !w.Heading.InRange() {
			return &InputError{field + ", heading", w.Heading.String(), "within the range of an angle"}
		}
	}
	return nil
}
