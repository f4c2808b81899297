package inspection

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// A Limit is what a manual prints of a length.
type Limit = LimitOf[units.Length]

// A LimitOf is what a manual prints of one measure: for new parts and for worn
// ones, each in one column or in two. The first column governs: write there the
// one that the part was designed in. The second is proofread against it.
type LimitOf[Q units.Quantity] struct {
	New      tolerance.PrintedOf[Q] `json:"new,omitzero"`      // for new parts: 0.03–0.07 mm
	NewAlso  tolerance.PrintedOf[Q] `json:"newAlso,omitzero"`  // the same in the other unit: .0012–.0028 in
	Wear     tolerance.PrintedOf[Q] `json:"wear,omitzero"`     // the wear limit: max 0.15 mm
	WearAlso tolerance.PrintedOf[Q] `json:"wearAlso,omitzero"` // the same in the other unit
	// What the limits are meant for, where the manual says it.
	NewMating  tolerance.Mating `json:"newMating,omitzero"`
	WearMating tolerance.Mating `json:"wearMating,omitzero"` // see NewMating
}

// Spec is the limits as they are judged by.
func (l LimitOf[Q]) Spec() tolerance.SpecOf[Q] {
	return tolerance.SpecOf[Q]{New: l.New.BandOf, Wear: l.Wear.BandOf, NewMating: l.NewMating, WearMating: l.WearMating}
}

// IsZero reports whether nothing is printed.
func (l LimitOf[Q]) IsZero() bool { return l == LimitOf[Q]{} }

// A Slip is a suspicion: limits whose columns disagree, a reading that stands a
// factor from its neighbours. Nothing is corrected.
type Slip struct {
	Path string `json:"path"` // "limits.taper.newAlso"
	What string `json:"what"` // "cylinder 3, middle, across the crank"
	Text string `json:"text"` // what is suspected, in words
}

// Proofread holds the columns of a limit to each other, and the wear limit to
// the limits for new parts, and appends what looks like a slip. Limits printed
// as a size with two deviations are checked as limits, without what rounding
// tells.
func (l LimitOf[Q]) Proofread(dst []Slip, path, what string) []Slip {
	columns := func(first, also tolerance.PrintedOf[Q], name string) {
		if also.IsZero() {
			return
		}
		a, okA := proofread.ColumnFrom(first)
		b, okB := proofread.ColumnFrom(also)
		if !okA || !okB {
			if first.IsZero() {
				dst = append(dst, Slip{path + "." + name, what, "a second column stands without a first"})
			} else if _, common := first.Interval().Intersect(also.Interval()); !common {
				dst = append(dst, Slip{path + "." + name, what, first.String() + " and " + also.String() + " have no size in common"})
			}
			return
		}
		report, err := proofread.CheckLimits(proofread.LimitsOf[Q]{First: a, Second: b})
		if err != nil {
			dst = append(dst, Slip{path + "." + name, what, err.Error()})
			return
		}
		if report.Flagged() {
			dst = append(dst, Slip{path + "." + name, what, report.String()})
		}
	}
	columns(l.New, l.NewAlso, "newAlso")
	columns(l.Wear, l.WearAlso, "wearAlso")
	if l.New.IsZero() || l.Wear.IsZero() {
		return dst
	}
	a, okA := proofread.ColumnFrom(l.New)
	b, okB := proofread.ColumnFrom(l.Wear)
	if okA && okB {
		if report, err := proofread.CheckWear(a, b); err == nil && report.Flagged() {
			return append(dst, Slip{path + ".wear", what, report.String()})
		}
	} else if err := l.Spec().Validate(); err != nil {
		return append(dst, Slip{path + ".wear", what, err.Error()})
	}
	return dst
}

// ProofreadReadings appends those of a set's readings that stand a factor or a
// turn of a micrometer from where their neighbours say they should be. paths
// and places name the readings, one each; readings not taken, and sets of
// fewer than three, are passed over.
func ProofreadReadings[Q units.Quantity](dst []Slip, paths, places []string, readings []ReadingOf[Q]) []Slip {
	var at [64]int // most sets fit
	index := at[:0]
	var room [64]tolerance.Interval[Q]
	taken := room[:0]
	for i, r := range readings {
		if r.Taken {
			index, taken = append(index, i), append(taken, r.Value)
		}
	}
	if len(taken) < 3 {
		return dst
	}
	found, err := proofread.CheckBrackets(taken...)
	if err != nil {
		return dst // out of range: judging refuses it by name
	}
	for _, odd := range found.Odd {
		i := index[odd.Index]
		s := Slip{Text: taken[odd.Index].String() + " against a middle of " + tolerance.Exactly(found.Middle).String() + ": " + odd.Causes[0].String()}
		if i < len(paths) {
			s.Path = paths[i]
		}
		if i < len(places) {
			s.What = places[i]
		}
		dst = append(dst, s)
	}
	return dst
}
