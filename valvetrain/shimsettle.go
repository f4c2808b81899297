package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// settle says what would settle a valve.
func (h *ShimHead) settle(v *ShimValve, u *ShimUnsure) {
	switch u.Doubt {
	case NoUpperEnd:
		u.Settle = h.settleOpen(v, u)
	case NoLowerEnd:
		u.Settle = h.settleTight(v, u)
	case ShimNotMeasured:
		u.Settle = "measure its shim with a micrometer: a mark doesn't show wear"
	case BracketTooWide:
		u.Blade, u.Sure = h.blade(v.Measured, func(half tolerance.Bracket) bool { return h.canSettle(v, half) })
		if u.Blade == "" {
			u.Settle = "no blade of the set lies inside " + v.Measured.String() + ", and no two together do: get one that does, or measure the shim more finely"
			return
		}
		u.Settle = "try " + u.Blade + ": the clearance is known too roughly for the band"
	case NoShimSuits:
		u.Settle = h.settleStock(v, u)
	case OnBothSides:
		u.Blade, u.Sure = h.blade(v.Measured, func(half tolerance.Bracket) bool { return v.Wanted.Judge(half) != tolerance.Undecided })
		u.Settle = "the clearance may be in band as it is, and no blade of the set tells"
		if u.Blade != "" {
			u.Settle = "try " + u.Blade + " before the shim is touched: the clearance may be in band as it is"
		}
	}
}

func (h *ShimHead) settleOpen(v *ShimValve, u *ShimUnsure) string {
	went := "every blade tried went in"
	if lo, end := v.Measured.Lower(); end == tolerance.Absent || lo <= 0 {
		went = "no blade was tried"
	}
	if inside := h.Set.InsideWithErrors(v.Measured); len(inside) > 0 {
		u.Blade = inside[0].MarkText()
		return went + ": try " + u.Blade + ", and thicker ones until one is refused"
	}
	return went + ", and the set has no thicker one: lay blades together until they are refused"
}

func (h *ShimHead) settleTight(v *ShimValve, u *ShimUnsure) string {
	const held = "no blade went in, and the cam may be holding the valve open: see that it stands on its base circle; "
	thinner := "fit a shim thinner by " + v.aim().Scale(clearanceOver(ratioOrOne(v.Ratio))).Dual(3, 4) + " or more and measure again"
	hi, _ := v.Measured.Upper()
	if b, err := tolerance.NewInterval(0, tolerance.Open, hi, tolerance.Closed); err == nil {
		if inside := h.Set.InsideWithErrors(b); len(inside) > 0 && inside[0].Thickness() < hi {
			u.Blade = inside[0].MarkText()
			return held + "try " + u.Blade + "; if that doesn't go in, " + thinner
		}
	}
	return held + thinner
}

func (h *ShimHead) settleStock(v *ShimValve, u *ShimUnsure) string {
	lo, hi := inputEnds(u.Needed)
	text := "needs a shim wholly in " + u.Needed.String() + ": none in hand is left for it, and "
	var below, above *ShimPiece // the sizes next to what is needed
	for i := range h.Series {
		s := &h.Series[i]
		if m := shimTwiceMiddle(s.Thickness); m < lo+hi {
			if below == nil || m > shimTwiceMiddle(below.Thickness) {
				below = s
			}
		} else if above == nil || m < shimTwiceMiddle(above.Thickness) {
			above = s
		}
	}
	switch {
	case below != nil && above != nil:
		text += fmt.Sprintf("the series has none between %s and %s that suits", inputText(below.Name), inputText(above.Name))
	case below != nil:
		text += "the series ends at " + inputText(below.Name)
	case above != nil:
		text += "the series begins at " + inputText(above.Name)
	default:
		text += "no sizes to buy are given"
	}
	if u.Blade, u.Sure = h.blade(v.Measured, func(half tolerance.Bracket) bool { return h.canSettle(v, half) }); u.Sure {
		return text + "; or try " + u.Blade + ": known more closely, one at hand suits"
	}
	u.Blade = ""
	return text + "; get one of that thickness, or grind one where the engine maker's manual allows"
}

// canSettle reports whether a valve with that clearance would be in band, or could
// be brought into it by a size of the series or a shim of the drawer.
func (h *ShimHead) canSettle(v *ShimValve, clearance tolerance.Bracket) bool {
	with := *v
	with.Measured = clearance
	if v.Wanted.Judge(clearance) == tolerance.Within {
		return true
	}
	w, ok := with.Window()
	if !ok {
		return false
	}
	for _, list := range [2][]ShimPiece{h.Series, h.Drawer} {
		for i := range list {
			if list[i].Thickness.Within(w) {
				return true
			}
		}
	}
	return false
}

// blade is the blade of the set, or failing that the two laid together, that
// halves a clearance best: so that as many halves as can be are settled, and, of
// those, nearest to its middle. Sure reports whether both are.
func (h *ShimHead) blade(b tolerance.Bracket, settled func(half tolerance.Bracket) bool) (marks string, sure bool) {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	middle, _ := b.Middle()
	best, bestOff := -1, units.Length(0)
	try := func(text string, t, e units.Length) {
		count := 0
		if half, err := tolerance.NewInterval(lo, loEnd, t+e, tolerance.Open); err == nil && settled(half) {
			count++
		}
		if half, err := tolerance.NewInterval(t-e, tolerance.Closed, hi, hiEnd); err == nil && settled(half) {
			count++
		}
		if off := (t - middle).Abs(); count > best || count == best && off < bestOff {
			marks, best, bestOff = text, count, off
		}
	}
	for _, x := range h.Set.InsideWithErrors(b) {
		try(x.MarkText(), x.Thickness(), x.Error)
	}
	if best < 2 {
		// Two leaves may be added to make a size.
		if s, err := h.Set.Stack(middle, 2); err == nil && s.Len() == 2 && s.Total-s.WorstError() > lo && s.Total+s.WorstError() < hi {
			try(s.MarkText()+" together", s.Total, s.WorstError())
		}
	}
	return marks, best == 2
}
