package cylinder

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Squish (quench) is the height between the crown's edge at top dead centre
// and the head's face: how far the crown stops below the block face, plus the
// compressed gasket. A crown above the face counts below zero.
func Squish[N tolerance.Number[N]](deckBelow, gasket N) N { return deckBelow.Add(gasket) }

// GasketForSquish is the compressed gasket with which a crown has the wanted
// squish. It undoes [Squish].
func GasketForSquish[N tolerance.Number[N]](squish, deckBelow N) N { return squish.Sub(deckBelow) }

// DeckForSquish is how far below the block face the crown must stop for the
// wanted squish. It undoes [Squish].
func DeckForSquish[N tolerance.Number[N]](squish, gasket N) N { return squish.Sub(gasket) }

// A SquishCheck is the squish of all pistons of an engine under one gasket.
// The limits are the engine maker's, measured cold. At speed a rod stretches,
// a piston rocks and both grow with heat, which is what the least squish is
// there for: it isn't to be used up.
type SquishCheck struct {
	Gasket  tolerance.Bracket // compressed
	Pistons []PistonDeck      // all of them: the highest governs
	Limits  tolerance.Spec    // of the squish
}

// A PistonDeck is where one piston stands at top dead centre. Measure over the
// gudgeon pin, where rocking doesn't count, or on both sides and take the mean.
type PistonDeck struct {
	Where string // "piston 3"
	Deck  Deck   // below or above the block face
}

// A SquishReport is what follows for an engine: the least squish, which is that
// of the highest piston, is judged against the lower limit and the greatest
// against the upper.
type SquishReport struct {
	Finding tolerance.Finding   `json:"finding"` // of the least and the greatest
	Squish  []tolerance.Bracket `json:"squish"`  // in the order of the pistons
	Highest []string            `json:"highest"` // the piston that governs, or all those that may
}

// Assess judges the squish of all pistons. It fails with an [InputError] where
// the gasket or a deck is missing or the gasket isn't above zero, with a
// [ContactError] where a piston has, or may have, none, and as
// [tolerance.Assess] does.
func (c SquishCheck) Assess() (SquishReport, error) {
	if err := aboveZero("gasket thickness", c.Gasket); err != nil {
		return SquishReport{}, err
	}
	var r SquishReport
	for _, p := range c.Pistons {
		if _, ok := bothEnds(p.Deck.below); !ok {
			return SquishReport{}, &InputError{"deck of " + p.Where, p.Deck.String(), "measured, and below the block face, above it or level with it"}
		}
		s := Squish(p.Deck.below, c.Gasket)
		lo, _ := s.Lower()
		if hi, _ := s.Upper(); lo <= 0 {
			return SquishReport{}, &ContactError{What: "squish of " + p.Where, Value: s.Text(units.InMillimetres, 3), Certain: hi <= 0}
		}
		r.Squish = append(r.Squish, s)
	}
	r.Highest = c.highest()
	var err error
	r.Finding, err = tolerance.Assess("squish", strings.Join(r.Highest, " or "), c.Limits, r.Squish...)
	return r, err
}

// highest are the pistons that no other is sure to stand above. The gasket is
// the same for all, so that its error doesn't count.
func (c SquishCheck) highest() (names []string) {
	for i, p := range c.Pistons {
		governs := true
		for j, o := range c.Pistons {
			if i != j && surelyBelow(o.Deck.below, p.Deck.below) {
				governs = false
			}
		}
		if governs {
			names = append(names, p.Where)
		}
	}
	return names
}

// Choose says which of the gaskets offered, by their compressed thickness, is
// the thinnest that brings every piston's squish within the limits for
// certain; -1 where none does. Where limits are given for new parts and for
// wear, those for new parts count. Gaskets under which a piston would or may
// hit the head are passed over; other errors are those of Assess.
func (c SquishCheck) Choose(offered ...tolerance.Bracket) (index int, r SquishReport, err error) {
	index = -1
	for i, g := range offered {
		c.Gasket = g
		this, err := c.Assess()
		if _, contact := err.(*ContactError); contact {
			continue
		}
		if err != nil {
			return -1, SquishReport{}, err
		}
		s := this.Finding.Standing
		good := s == tolerance.AsNew || s == tolerance.Usable && c.Limits.New.IsZero()
		if good && (index < 0 || thinner(g, offered[index])) {
			index, r = i, this
		}
	}
	return index, r, nil
}

func thinner(a, b tolerance.Bracket) bool {
	x, _ := a.Lower()
	y, _ := b.Lower()
	return x < y
}
