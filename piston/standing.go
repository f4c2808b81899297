package piston

import "github.com/tenthou/tenthou/tolerance"

// stand judges the least and the greatest of several places. Most lie clear of
// every limit, which takes four comparisons to see; the rest goes through
// [tolerance.SpecOf.StandAll].
func stand(spec *tolerance.Spec, least, greatest tolerance.Bracket) tolerance.Standing {
	if least.InRange() && greatest.InRange() && clears(&spec.New, &least, &greatest) && clears(&spec.Wear, &least, &greatest) {
		switch {
		case !spec.New.IsZero():
			return tolerance.AsNew
		case !spec.Wear.IsZero():
			return tolerance.Usable
		}
	}
	if least == greatest {
		return spec.Stand(least)
	}
	return spec.StandAll(least, greatest)
}

// clears reports whether all from least to greatest lies inside a band and not
// on its limits. What is asked on neither side is clear.
func clears(b *tolerance.Band, least, greatest *tolerance.Bracket) bool {
	if at, end := b.Lower(); end != tolerance.Absent {
		if lo, known := least.Lower(); known == tolerance.Absent || lo <= at {
			return false
		}
	}
	if at, end := b.Upper(); end != tolerance.Absent {
		if hi, known := greatest.Upper(); known == tolerance.Absent || hi >= at {
			return false
		}
	}
	return b.InRange()
}

// worst gathers standings.
type worst struct {
	most tolerance.Standing
	open bool
}

func (w *worst) add(s tolerance.Standing) {
	w.open = w.open || s == tolerance.CantTell
	w.most = max(w.most, s)
}

func (w *worst) standing() tolerance.Standing {
	if w.open && w.most != tolerance.PastWearLimit {
		return tolerance.CantTell
	}
	return w.most
}
