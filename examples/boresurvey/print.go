package main

import (
	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A printer writes lengths for one kind of bench: sizes to so many places, the
// ends of brackets to one more, rounded outward.
type printer struct {
	unit   units.Unit[units.Length]
	places int
}

var (
	metric   = printer{units.InMillimetres, 3}
	imperial = printer{units.InInches, 4}
)

// fine is the printer with places enough for a gauge's step, where its unit has
// them.
func (p printer) fine(step units.Length) printer {
	if places, ok := units.Places(step, p.unit); ok && step > 0 {
		p.places = max(p.places, places)
	}
	return p
}

func (p printer) size(l units.Length) string {
	return p.text(l, p.places, units.NearestEven)
}

func (p printer) end(i tolerance.Bracket, upper bool) string {
	if upper {
		hi, _ := i.Upper()
		return p.text(hi, p.places+1, units.Up)
	}
	lo, _ := i.Lower()
	return p.text(lo, p.places+1, units.Down)
}

func (p printer) text(l units.Length, places int, r units.Rounding) string {
	text, _ := l.Append(nil, units.Style[units.Length]{Unit: p.unit, Places: places, Rounding: r, Bare: true})
	return string(text)
}

// printed are the limits of a measure as the manual prints them.
func (l limits) printed(m cylinder.BoreMeasure) (fresh, worn string) {
	of := map[cylinder.BoreMeasure]limit{
		cylinder.MeasureSize: l.Size, cylinder.MeasureMean: l.Mean, cylinder.MeasureOutOfRound: l.OutOfRound,
		cylinder.MeasureTaper: {l.Taper.New, l.Taper.Wear}, cylinder.MeasureWear: l.Wear, cylinder.MeasureChoke: l.Choke,
		cylinder.MeasureRidge: {l.Ridge.New, l.Ridge.Wear},
	}[m]
	if !of.New.IsZero() {
		fresh = of.New.String()
	}
	if !of.Wear.IsZero() {
		worn = of.Wear.String()
	}
	return fresh, worn
}
