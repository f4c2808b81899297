package valvetrain

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A LoadBracket is what is known of a spring's load.
type LoadBracket = tolerance.Interval[units.Force]

// A RateBracket is what is known of a spring's rate.
type RateBracket = tolerance.Interval[units.SpringRate]

// A SpringReading is a spring's load on a tester, at one height.
type SpringReading struct {
	Height tolerance.Bracket `json:"height"` // between the tester's plates, above 0
	Load   LoadBracket       `json:"load"`   // read there, 0 or more
}

func (r SpringReading) check(field string) error {
	if err := inputBracket(field+", height", r.Height, units.Picometre); err != nil {
		return err
	}
	return inputLoad(field+", load", r.Load)
}

func inputLoad(field string, l LoadBracket) error {
	lo, loEnd := l.Lower()
	_, hiEnd := l.Upper()
	if !l.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < 0 {
		return &InputError{field, l.String(), "measured, 0 N or more, with a least and a greatest"}
	}
	return nil
}

// SpringRateBetween is the rate of a spring between two readings, for all loads
// and heights that their brackets allow, rounded outward to the quantum of a
// rate. Between exact readings it is exact to that quantum. It fails with an
// [InputError] where a reading can't be, where the heights aren't apart for
// certain, and where the lower height doesn't bear the greater load for certain.
func SpringRateBetween(a, b SpringReading) (RateBracket, error) {
	if err := springPair(&a, &b); err != nil {
		return RateBracket{}, err
	}
	loads, heights := b.Load.Sub(a.Load), a.Height.Sub(b.Height)
	fLo, fHi := springEnds(loads)
	hLo, hHi := inputEnds(heights)
	// A rate's quantum is a force's, per inch.
	k := inputSpan(units.SpringRate(units.MulDivRound(fLo, units.Inch, hHi, units.Down)), units.SpringRate(units.MulDivRound(fHi, units.Inch, hLo, units.Up)))
	if !k.InRange() {
		return RateBracket{}, &InputError{"heights", a.Height.String() + " and " + b.Height.String(), "far enough apart for a rate within range"}
	}
	return k, nil
}

// springPair puts the taller reading first, and refuses readings that can't be
// or don't tell a rate.
func springPair(a, b *SpringReading) error {
	aLo, _ := inputEnds(a.Height)
	if bLo, _ := inputEnds(b.Height); bLo > aLo {
		*a, *b = *b, *a
	}
	if err := firstError(func() error { return a.check("taller reading") }, func() error { return b.check("shorter reading") }); err != nil {
		return err
	}
	tallLo, _ := inputEnds(a.Height)
	if _, hi := inputEnds(b.Height); hi >= tallLo {
		return &InputError{"heights", a.Height.String() + " and " + b.Height.String(), "apart for certain"}
	}
	_, tallHi := springEnds(a.Load)
	if lo, _ := springEnds(b.Load); lo <= tallHi {
		return &InputError{"load at " + b.Height.String(), b.Load.String(), "above that at " + a.Height.String() + ", " + a.Load.String() + ", for certain"}
	}
	return nil
}

// springEnds are the ends of an interval that has both.
func springEnds[Q units.Quantity](i tolerance.Interval[Q]) (lo, hi Q) {
	lo, _ = i.Lower()
	hi, _ = i.Upper()
	return lo, hi
}

// SpringLoadFrom is the load at a height from two readings, taken as a straight
// line, for all that their brackets allow, rounded outward to the quantum of a
// force. A height past either reading asks for a spring of even rate; a load
// below zero means that the spring is loose there. It fails as
// [SpringRateBetween] does.
func SpringLoadFrom(a, b SpringReading, height tolerance.Bracket) (LoadBracket, error) {
	if err := springPair(&a, &b); err != nil {
		return LoadBracket{}, err
	}
	if err := inputBracket("height", height, units.Picometre); err != nil {
		return LoadBracket{}, err
	}
	f1, h1, f2, h2, h := springBoth(a.Load), springBoth(a.Height), springBoth(b.Load), springBoth(b.Height), springBoth(height)
	// With the others held, the load is a straight line or a hyperbola without a
	// pole in each of the five: its extremes are at the ends.
	var lo, hi units.Force
	for c := range 1 << 5 {
		at := [5]int{c & 1, c >> 1 & 1, c >> 2 & 1, c >> 3 & 1, c >> 4 & 1}
		rise, run, all := f2[at[2]]-f1[at[0]], h1[at[1]]-h[at[4]], h1[at[1]]-h2[at[3]]
		low := f1[at[0]].Add(units.MulDivRound(rise, run, all, units.Down))
		high := f1[at[0]].Add(units.MulDivRound(rise, run, all, units.Up))
		if !low.InRange() || !high.InRange() {
			return LoadBracket{}, &InputError{"height", height.String(), "near enough to the readings for a load within range"}
		}
		if c == 0 {
			lo, hi = low, high
		}
		lo, hi = min(lo, low), max(hi, high)
	}
	return inputSpan(lo, hi), nil
}

// SpringHeightFrom is the height at which a spring bears a load, from two
// readings taken as a straight line: the inverse of [SpringLoadFrom], with its
// errors.
func SpringHeightFrom(a, b SpringReading, load LoadBracket) (tolerance.Bracket, error) {
	if err := springPair(&a, &b); err != nil {
		return tolerance.Bracket{}, err
	}
	if err := inputLoad("load", load); err != nil {
		return tolerance.Bracket{}, err
	}
	f1, h1, f2, h2, f := springBoth(a.Load), springBoth(a.Height), springBoth(b.Load), springBoth(b.Height), springBoth(load)
	var lo, hi units.Length
	for c := range 1 << 5 {
		at := [5]int{c & 1, c >> 1 & 1, c >> 2 & 1, c >> 3 & 1, c >> 4 & 1}
		fall, part, all := h2[at[3]]-h1[at[1]], f[at[4]]-f1[at[0]], f2[at[2]]-f1[at[0]]
		low := h1[at[1]].Add(units.MulDivRound(fall, part, all, units.Down))
		high := h1[at[1]].Add(units.MulDivRound(fall, part, all, units.Up))
		if !low.InRange() || !high.InRange() {
			return tolerance.Bracket{}, &InputError{"load", load.String(), "near enough to the readings for a height within range"}
		}
		if c == 0 {
			lo, hi = low, high
		}
		lo, hi = min(lo, low), max(hi, high)
	}
	return inputSpan(lo, hi), nil
}

// springBoth are the ends of an interval, to be gone through.
func springBoth[Q units.Quantity](i tolerance.Interval[Q]) [2]Q {
	lo, hi := springEnds(i)
	return [2]Q{lo, hi}
}
