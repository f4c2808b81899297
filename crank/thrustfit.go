package crank

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// ThrustMatch is how much the halves of one side differ in thickness: the
// greatest less the least. The thrust runs on the thicker half alone.
func ThrustMatch[N tolerance.Number[N]](half N, more ...N) N { return half.Spread(more...) }

// ThrustSide is the thickness that counts of the halves of one side: the
// greatest.
func ThrustSide[N tolerance.Number[N]](half N, more ...N) N {
	for _, h := range more {
		half = half.Max(h)
	}
	return half
}

// A ThrustWasher is a size of thrust washer that is in stock, measured.
type ThrustWasher struct {
	Name      string            `json:"name"`             // ".005 in oversize"
	Thickness tolerance.Bracket `json:"thickness"`        // over all pieces of this size
	Pieces    int               `json:"pieces,omitempty"` // halves in stock; 0 where they weren't counted
}

// A ThrustFit is a shaft whose end float was measured over the washers that are
// in, and what it shall be.
type ThrustFit struct {
	Float  tolerance.Bracket   // as measured
	Front  []tolerance.Bracket // the halves in front, or the one
	Rear   []tolerance.Bracket // the halves behind, or the one
	Match  tolerance.Spec      // of the halves of one side; zero where there is no limit
	Limits tolerance.Spec      // of the float
	Wanted units.Length        // within them, for the choice; 0: the middle of the limits
}

// Sides judges how the halves of each side match, the front first. A side of
// one piece has nothing to match and is left out.
func (f ThrustFit) Sides() ([]tolerance.Finding, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	var all []tolerance.Finding
	for i, side := range [][]tolerance.Bracket{f.Front, f.Rear} {
		if len(side) < 2 {
			continue
		}
		found, err := tolerance.Assess("difference of thrust washer halves", []string{"front", "rear"}[i], f.Match, ThrustMatch(side[0], side[1:]...))
		if err != nil {
			return nil, err
		}
		all = append(all, found)
	}
	return all, nil
}

// In is the washers that are in, both sides together: the thicker half of each.
func (f ThrustFit) In() (tolerance.Bracket, error) {
	if err := f.check(); err != nil {
		return tolerance.Bracket{}, err
	}
	return ThrustTotal(ThrustSide(f.Front[0], f.Front[1:]...), ThrustSide(f.Rear[0], f.Rear[1:]...)), nil
}

// A ThrustOption is one choice of washers.
type ThrustOption struct {
	Front string            `json:"front"` // name of the washer in front
	Rear  string            `json:"rear"`  // of the one behind
	Float tolerance.Bracket `json:"float"` // that it gives
	Stand tolerance.Finding `json:"stand"` // against the limits
	Shift tolerance.Bracket `json:"shift"` // of the shaft; forward above zero
}

// Options are the pairs of washers in stock, both sides alike first where that
// serves: those within the limits for certain come first, by how near the
// middle of their float is to the wanted one, then by how little the shaft
// shifts. Halves of one side are of one size. None serves where none stands as
// new or, without limits for new parts, as usable.
func (f ThrustFit) Options(stock ...ThrustWasher) ([]ThrustOption, error) {
	in, err := f.In()
	if err != nil {
		return nil, err
	}
	if len(stock) == 0 || len(stock) > mostThrust {
		return nil, &InputError{"stock of thrust washers", fmt.Sprint(len(stock), " sizes"), fmt.Sprint("of 1 to ", mostThrust, " sizes")}
	}
	front, rear := ThrustSide(f.Front[0], f.Front[1:]...), ThrustSide(f.Rear[0], f.Rear[1:]...)
	wanted, err := f.wanted()
	if err != nil {
		return nil, err
	}
	for i, w := range stock {
		if thickBracket("", w.Thickness) != nil {
			return nil, thickBracket(fmt.Sprint("thrust washer in stock ", i+1), w.Thickness)
		}
		if w.Pieces < 0 {
			return nil, &InputError{fmt.Sprint("thrust washer in stock ", i+1, ", pieces"), fmt.Sprint(w.Pieces), "0 or more"}
		}
	}
	all := make([]ThrustOption, 0, len(stock)*len(stock))
	for i, a := range stock {
		for k, b := range stock {
			if !f.enough(i == k, a.Pieces, b.Pieces) {
				continue
			}
			o := ThrustOption{
				Front: a.Name, Rear: b.Name,
				Float: EndFloatWith(f.Float, in, ThrustTotal(a.Thickness, b.Thickness)),
				Shift: ThrustShift(a.Thickness.Sub(front), b.Thickness.Sub(rear)),
			}
			if o.Stand, err = tolerance.Assess("end float", a.Name+" in front, "+b.Name+" behind", f.Limits, o.Float); err != nil {
				return nil, err
			}
			all = append(all, o)
		}
	}
	slices.SortStableFunc(all, func(a, b ThrustOption) int {
		return cmp.Or(
			-cmp.Compare(f.serves(a), f.serves(b)),
			cmp.Compare(twiceOff(a.Float, wanted), twiceOff(b.Float, wanted)),
			cmp.Compare(twiceOff(a.Shift, 0), twiceOff(b.Shift, 0)),
		)
	})
	return all, nil
}

// mostThrust sizes keep the pairs to ten thousand.
const mostThrust = 100

// Serves reports whether an option is within the limits for certain.
func (f ThrustFit) Serves(o ThrustOption) bool { return f.serves(o) == 1 }

func (f ThrustFit) serves(o ThrustOption) int {
	if s := o.Stand.Standing; s == tolerance.AsNew || s == tolerance.Usable && f.Limits.New.IsZero() {
		return 1
	}
	return 0
}

// enough reports whether there are halves enough for both sides.
func (f ThrustFit) enough(same bool, a, b int) bool {
	front, rear := len(f.Front), len(f.Rear)
	if same {
		return a == 0 || a >= front+rear
	}
	return (a == 0 || a >= front) && (b == 0 || b >= rear)
}

// wanted is the float to come near to.
func (f ThrustFit) wanted() (units.Length, error) {
	if f.Wanted < 0 || f.Wanted > farthest {
		return 0, &InputError{"wanted end float", f.Wanted.String(), "0 mm or more, and at most 10 m"}
	}
	if f.Wanted != 0 {
		return f.Wanted, nil
	}
	for _, b := range []tolerance.Band{f.Limits.New, f.Limits.Wear} {
		if m, ok := b.Interval().Middle(); ok {
			return m, nil
		}
	}
	return 0, &InputError{"wanted end float", "not given", "given, since the limits have no middle"}
}

// twiceOff is twice how far the middle of a bracket is from a value.
func twiceOff(b tolerance.Bracket, from units.Length) units.Length {
	lo, _ := b.Lower()
	hi, end := b.Upper()
	if end == tolerance.Absent {
		return 2 * farthest
	}
	return (lo - from + hi - from).Abs()
}

func (f ThrustFit) check() error {
	if err := floatBracket("end float", f.Float); err != nil {
		return err
	}
	for i, side := range [...][]tolerance.Bracket{f.Front, f.Rear} {
		name := [...]string{"thrust washer in front", "thrust washer behind"}[i]
		if len(side) == 0 || len(side) > 2 {
			return &InputError{name, fmt.Sprint(len(side), " pieces"), "one washer, or two halves"}
		}
		for _, h := range side {
			if err := thickBracket(name, h); err != nil {
				return err
			}
		}
	}
	return nil
}
