package feeler

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A BlindZone is a range of clearances that the blades of a set can't tell
// apart, with a limit in it.
type BlindZone struct {
	Bracket  tolerance.Bracket   `json:"bracket"`          // between two neighbouring blades
	Limits   []units.Length      `json:"limits"`           // those that it holds gaps on both sides of
	Standing tolerance.Standing  `json:"standing"`         // of a gap in it, by these blades: most often can't tell
	Most     int                 `json:"most"`             // the blades to a stack that were allowed
	Stacks   []Stack             `json:"stacks,omitempty"` // those that narrow it most, the thinnest first
	Left     []tolerance.Bracket `json:"left,omitempty"`   // what stays blind with those stacks; empty where they close it
	Remedies []Remedy            `json:"remedies"`         // what a blade at each limit would do
}

// A Remedy is a blade that the set lacks, made to the size of a limit.
//
// What it leaves blind depends on which side the limit's own gap belongs to. A
// blade tells the gaps of its size and more from those that are less. A limit
// "min" or "less than" divides the gaps in the same place, so a blade at it
// leaves nothing. A limit "max" or "more than" puts its own gap on one side and
// every greater gap on the other, and no blade tells these apart: one at the
// limit, or thinner, goes into both; one that is thicker goes neither into the
// limit's own gap nor into one that is a little greater. So with a limit of
// "max 0.07 mm" a 0.07 mm blade that goes in leaves everything from 0.07 mm to
// the next blade open. A next blade a little thicker leaves less, and none
// leaves nothing: the parts measured by micrometer tell, if anything does.
type Remedy struct {
	Limit units.Length        `json:"limit"`          // the blade's size
	Left  []tolerance.Bracket `json:"left,omitempty"` // empty where the blade closes the zone
}

// BlindZones are the clearances that the set can't decide against the limits:
// each bracket between neighbouring blades that holds gaps on both sides of a
// limit. For each it says whether stacks of up to so many blades (1 to
// [MaxStack]) narrow or close it, and what a blade at the limit would do.
//
// The stacks given are all that matter: where a limit's bracket between all
// possible totals is [a, b), a is the greatest total not above the limit and b
// the least above it, and these two are looked for.
//
// It fails as [Plan] does, and with a [StackError] as [Set.Stack] does.
func BlindZones(set Set, spec tolerance.Spec, most int) ([]BlindZone, error) {
	if set.Len() == 0 {
		return nil, &PlanError{What: "blind zones", Field: "set", Kind: ErrEmpty, Want: "a blade to try"}
	}
	if err := checkSpec("blind zones", spec); err != nil {
		return nil, err
	}
	if most < 1 || most > MaxStack {
		return nil, &StackError{Most: most, Kind: ErrSize, Want: stackSizes}
	}
	var zones []BlindZone
	var sizes []units.Length
	for _, b := range set.Inside(wholeRange()) {
		sizes = append(sizes, b.Thickness())
	}
	for _, cell := range cut(wholeRange(), sizes) {
		limits := undecided(spec, cell)
		if len(limits) == 0 {
			continue
		}
		z := BlindZone{Bracket: cell, Limits: limits, Standing: spec.Stand(cell), Most: most}
		if err := z.stack(set, spec, most); err != nil {
			return nil, err
		}
		for _, l := range limits {
			z.Remedies = append(z.Remedies, Remedy{Limit: l, Left: blind(spec, cut(cell, []units.Length{l}), l)})
		}
		zones = append(zones, z)
	}
	return zones, nil
}

// stack looks for the stacks on either side of each limit.
func (z *BlindZone) stack(set Set, spec tolerance.Spec, most int) error {
	for _, l := range z.Limits {
		for _, f := range []fit{atMost, atLeast} {
			st, err := set.closest(l, most, f)
			if err != nil {
				return err
			}
			if st.n > 0 && narrows(z.Bracket, st.Total, 0) && !slices.ContainsFunc(z.Stacks, func(o Stack) bool { return o.Total == st.Total }) {
				z.Stacks = append(z.Stacks, st)
			}
		}
	}
	slices.SortFunc(z.Stacks, func(a, b Stack) int { return a.Total.Compare(b.Total) })
	var totals []units.Length
	for _, st := range z.Stacks {
		totals = append(totals, st.Total)
	}
	for _, b := range cut(z.Bracket, totals) {
		if len(undecided(spec, b)) > 0 {
			z.Left = append(z.Left, b)
		}
	}
	return nil
}

// closest is the stack whose total is the greatest not above a limit, or the
// least above it; of no blades where there is none.
func (s Set) closest(l units.Length, most int, f fit) (Stack, error) {
	if f == atLeast {
		l += units.Picometre // totals are whole ones
	}
	if l < 0 || l > MaxStackThickness {
		return Stack{}, nil
	}
	st, err := s.stack(l, most, f)
	if e, ok := err.(*StackError); ok && e.Kind == ErrNoStack {
		return Stack{}, nil
	}
	return st, err
}

// cut parts a bracket at sizes inside it, which ascend.
func cut(b tolerance.Bracket, sizes []units.Length) []tolerance.Bracket {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	var parts []tolerance.Bracket
	for _, s := range sizes {
		if part, err := tolerance.NewInterval(lo, loEnd, s, tolerance.Open); err == nil && narrows(b, s, 0) {
			parts = append(parts, part)
			lo, loEnd = s, tolerance.Closed
		}
	}
	last, _ := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return append(parts, last)
}

// blind are the parts in which a limit stays undecided.
func blind(spec tolerance.Spec, parts []tolerance.Bracket, l units.Length) []tolerance.Bracket {
	var left []tolerance.Bracket
	for _, b := range parts {
		if slices.Contains(undecided(spec, b), l) {
			left = append(left, b)
		}
	}
	return left
}

// undecided are the limits that a bracket is on both sides of.
func undecided(spec tolerance.Spec, b tolerance.Bracket) []units.Length {
	var limits []units.Length
	for _, s := range sidesOf(spec) {
		if s.band.Judge(b) == tolerance.Undecided && !slices.Contains(limits, s.limit) {
			limits = append(limits, s.limit)
		}
	}
	slices.Sort(limits)
	return limits
}
