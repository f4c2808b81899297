package cylinder

import (
	"errors"
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ErrContact is the kind of every [ContactError], for errors.Is.
var ErrContact = errors.New("cylinder: the piston may hit the head")

// A ContactError says that a piston would, or may, hit the head: the volume or
// the height left for it at top dead centre is, or may be, zero or less.
type ContactError struct {
	What    string // "clearance volume" or "squish"
	Value   string // "[−1.2 cm³, 0.3 cm³]"
	Certain bool   // whether all of it is zero or less
}

// Error says which way the piston meets the head, and what to check.
func (e *ContactError) Error() string {
	may := "may not be"
	hit := "may hit"
	if e.Certain {
		may, hit = "is not", "hits"
	}
	return fmt.Sprintf("cylinder: %s %s %s above 0: the piston %s the head; do not turn the engine; check the deck's side (below or above the block face), the gasket's compressed thickness and the dome", e.What, e.Value, may, hit)
}

// Unwrap gives [ErrContact] and [ErrInput].
func (e *ContactError) Unwrap() []error { return []error{ErrContact, ErrInput} }

// What a calculation needs of a build; an inverse doesn't need what it finds.
type needs uint8

const (
	needsStroke needs = 1 << iota
	needsGasket
)

// check refuses a build with which nothing can be calculated.
func (b Build) check(n needs) error {
	if err := aboveZero("bore", b.Bore); err != nil {
		return err
	}
	if n&needsStroke != 0 {
		if err := aboveZero("stroke", b.Stroke); err != nil {
			return err
		}
	}
	if err := notNegative("chamber volume", b.Chamber); err != nil {
		return err
	}
	if err := aboveZero("gasket bore", b.Gasket.Bore); err != nil {
		return err
	}
	if n&needsGasket != 0 {
		if err := aboveZero("gasket thickness", b.Gasket.Thickness); err != nil {
			return err
		}
	}
	if err := b.Crown.check(); err != nil {
		return err
	}
	if b.Land != (RingLand{}) {
		if err := b.checkLand(); err != nil {
			return err
		}
	}
	if _, ok := bothEnds(b.Deck.below); !ok {
		return &InputError{"deck", b.Deck.String(), "measured, and below the block face, above it or level with it"}
	}
	if math.IsNaN(b.OpenAreaMM2) || math.IsInf(b.OpenAreaMM2, 0) || b.OpenAreaMM2 < 0 {
		return &InputError{"open area", fmt.Sprint(b.OpenAreaMM2, " mm²"), "0 mm² (not known) or more"}
	}
	return nil
}

func (c Crown) check() error {
	filled := !c.Fill.IsZero() || !c.FillDepth.IsZero()
	if filled && (!c.Dish.IsZero() || !c.Dome.IsZero()) {
		return &InputError{"crown", "dish or dome beside a down-fill", "either of the two: the down-fill holds them"}
	}
	if filled {
		if err := aboveZero("down-fill depth", c.FillDepth); err != nil {
			return err
		}
		return aboveZero("down-fill volume", c.Fill)
	}
	if err := notNegative("dish", c.Dish); err != nil {
		return err
	}
	return notNegative("dome", c.Dome)
}

func (b Build) checkLand() error {
	if err := aboveZero("ring land height", b.Land.Height); err != nil {
		return err
	}
	if err := aboveZero("ring land diameter", b.Land.Diameter); err != nil {
		return err
	}
	d, _ := bothEnds(b.Land.Diameter)
	if bore, _ := bothEnds(b.Bore); d.hi > bore.lo {
		return &InputError{"ring land diameter", b.Land.Diameter.String(), "below the bore " + b.Bore.String()}
	}
	return nil
}

// openArea is the length that times 1 mm is the open area, which is so held to
// 10⁻⁹ mm².
func (b Build) openArea() (units.Length, error) {
	a, err := units.Nearest(b.OpenAreaMM2, units.InMillimetres)
	if err != nil || a <= 0 {
		return 0, &InputError{"open area", fmt.Sprint(b.OpenAreaMM2, " mm²"), "above 0 mm²: a skim takes the chamber's own outline on the face, not the bore's"}
	}
	return a, nil
}

// wantedRatio refuses a ratio that no clearance volume gives.
func wantedRatio(r tolerance.Ratio) (tolerance.Ratio, error) {
	if r.Valid() && r.Den < 0 {
		r.Num, r.Den = -r.Num, -r.Den
	}
	if !r.Valid() || r.Num <= r.Den || r.Num > math.MaxInt64/2 {
		return r, &InputError{"wanted ratio", r.String(), "above 1"}
	}
	return r, nil
}
