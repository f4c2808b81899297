package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// The paths of limits in their section, by their measures.
var (
	skirtPaths = [skirtMeasures]string{"size", "ovality", "taper", "wear", "collapse", "clearance", "pulled"}
	pinPaths   = [pinMeasures]string{
		"size", "ovality", "taper", "wear", "bossOvality", "bossTaper", "bossWear", "bossClearance",
		"smallEndOvality", "smallEndTaper", "smallEndWear", "smallEndClearance", "smallEndInterference", "endFloat",
	}
	pinListPaths = [pinLists]string{"atBosses", "atSmallEnd", "bosses", "smallEnd"}
)

func (l *LimitsSkirt) limits() [skirtMeasures]*inspection.Limit {
	return [skirtMeasures]*inspection.Limit{&l.Size, &l.Ovality, &l.Taper, &l.Wear, &l.Collapse, &l.Clearance, &l.Pulled}
}

func (l *LimitsPins) limits() [pinMeasures]*inspection.Limit {
	return [pinMeasures]*inspection.Limit{
		&l.Size, &l.Ovality, &l.Taper, &l.Wear, &l.BossOvality, &l.BossTaper, &l.BossWear, &l.BossClearance,
		&l.SmallEndOvality, &l.SmallEndTaper, &l.SmallEndWear, &l.SmallEndClearance, &l.SmallEndInterference, &l.EndFloat,
	}
}

// list are the sections of one list, by its place.
func (l *LimitsPins) list(i int) []string {
	return [pinLists][]string{l.AtBosses, l.AtSmallEnd, l.Bosses, l.SmallEnd}[i]
}

// directions is in how many directions a section is read.
func (l *LimitsPins) directions() int { return max(1, len(l.Directions)) }

func (l *LimitsPins) check() error {
	if int(l.Fit) >= len(pinFitNames) {
		return badAt("fit", "pin fit", "(unknown)", "floating, pressed or not stated")
	}
	for i := range pinLists {
		if err := places(pinListPaths[i], l.list(i)); err != nil {
			return err
		}
	}
	if err := places("directions", l.Directions); err != nil {
		return err
	}
	for m, limit := range l.limits() {
		least := -ringMost
		if m == int(PinMeasureSize) {
			least = 0
		}
		if err := limitWithin(pinPaths[m], *limit, least, ringMost); err != nil {
			return err
		}
	}
	if l.Fit == PinPressed && !(l.SmallEndClearance.IsZero() && l.EndFloat.IsZero()) {
		return badAt("smallEndClearance", "limit", "of a floating pin", "left out where the pin is pressed in: its end float too")
	}
	if l.Fit == PinFloating && !l.SmallEndInterference.IsZero() {
		return badAt("smallEndInterference", "limit", "of a pressed pin", "left out where the pin floats")
	}
	if err := sizeBand("newPin", "new pin", l.NewPin); err != nil {
		return err
	}
	if err := sizeBand("newBoss", "new boss", l.NewBoss); err != nil {
		return err
	}
	if err := sizeBand("newSmallEnd", "new small end", l.NewSmallEnd); err != nil {
		return err
	}
	return notNegativeAt("error", l.Error)
}

// The places of a ring's travel.
const (
	gapTop    = "top"
	gapBottom = "bottom"
)

// gapsAt tells where a ring's end gap is to be read.
func (l *LimitsRing) gapsAt() (top, bottom bool) {
	if l.Gap.IsZero() {
		return false, false
	}
	for _, at := range l.GapAt {
		top = top || at == gapTop
		bottom = bottom || at == gapBottom
	}
	return top, bottom || len(l.GapAt) == 0
}

// sides is at how many places the side clearance is taken.
func (l *LimitsRing) sides() int { return max(1, len(l.SideAt)) }

func (l *LimitsRing) check() error {
	if int(l.Kind) >= len(ringNames) {
		return badAt("kind", "ring", "(unknown)", "a compression ring or an oil ring")
	}
	for _, x := range [...]struct {
		path  string
		limit *inspection.Limit
	}{{"sideClearance", &l.Side}, {"backClearance", &l.Back}, {"land", &l.Land}, {"endGap", &l.Gap}} {
		if err := limitWithin(x.path, *x.limit, 0, ringMost); err != nil {
			return err
		}
	}
	if err := places("sideClearanceAt", l.SideAt); err != nil {
		return err
	}
	for i, at := range l.GapAt {
		if at != gapTop && at != gapBottom || i > 0 && at == l.GapAt[0] {
			return badAt(inspection.Index("endGapAt", i), "place", clip([]byte(at)), `"top" or "bottom", each once`)
		}
	}
	if err := sizeBand("newHeight", "new ring height", l.NewHeight); err != nil {
		return err
	}
	if err := sizeBand("newWidth", "new groove width", l.NewWidth); err != nil {
		return err
	}
	if err := sizeBand("newGap", "new ring's end gap", l.NewGap); err != nil {
		return err
	}
	if len(l.Spacers) > mostPlaces {
		return badAt("spacers", "spacers", strconv.Itoa(len(l.Spacers)), "16 at the most")
	}
	if err := named("spacers", len(l.Spacers), func(i int) string { return l.Spacers[i].Name }, ".name"); err != nil {
		return err
	}
	for i, s := range l.Spacers {
		path := inspection.Index("spacers", i) + ".thickness"
		if s.Thickness.IsZero() {
			return badAt(path, "thickness", s.Thickness.String(), "from a least above 0 mm to a greatest")
		}
		if err := sizeBand(path, "thickness", s.Thickness); err != nil {
			return err
		}
	}
	if len(l.Spacers) > 0 && (l.NewHeight.IsZero() || sizeBand("sideClearance.new", "side clearance with a new ring", l.Side.New.BandOf) != nil || l.Side.New.IsZero()) {
		return badAt("spacers", "spacers", "given", "left out where the new ring's height or the side clearance's least and greatest with it aren't")
	}
	for _, x := range [...]struct {
		path  string
		value units.Length
	}{{"cut", l.Cut}, {"leastLand", l.LeastLand}, {"thickness", l.Thickness}, {"error", l.Error}} {
		if err := notNegativeAt(x.path, x.value); err != nil {
			return err
		}
	}
	return nil
}
