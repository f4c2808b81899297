package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// The picture's field, mm.
const (
	left, right  = 16.0, 176.0
	top, bottom  = 16.0, 96.0
	whole, depth = 184.0, 122.0
)

// picture is the lift curves over the crank angle; empty where there is none.
func (e *engine) picture() string {
	from, to, most := math.Inf(1), math.Inf(-1), 0.0
	var says []string
	for i := range e.valves {
		v := &e.valves[i]
		if v.Table == nil {
			continue
		}
		first, last := v.curve.Span()
		from, to = min(from, first.Float(units.InDegrees)), max(to, last.Float(units.InDegrees))
		most = max(most, v.analysis.Peak.Lift.Float(units.InMillimetres))
		says = append(says, fmt.Sprintf("%s, %s: greatest lift %s at %s", v.which, []string{"squares", "triangles"}[i], v.analysis.Peak.Lift.Text(units.InMillimetres, 2)+" "+v.analysis.Side.String(), deg(v.analysis.Peak.Angle)))
	}
	if most <= 0 {
		return ""
	}
	x := func(degrees float64) float64 { return left + (degrees-from)/(to-from)*(right-left) }
	y := func(mm float64) float64 { return bottom - mm/most*(bottom-top) }
	p := svg.New(whole, depth, "Lift: "+e.Engine, "Valve lift over degrees of the crankshaft from top dead centre at overlap. "+strings.Join(says, "; ")+". Chain line: top dead centre; dashed: the lift that the events are at.")
	p.Line(svg.Guide, left, bottom, right, bottom)
	p.Line(svg.Guide, left, bottom, left, top)
	for d := math.Ceil(from/60) * 60; d <= to; d += 60 {
		p.Line(svg.Guide, x(d), bottom, x(d), bottom+1.5)
		p.Text(svg.Middle, x(d), bottom+6, fmt.Sprintf("%g°", d))
	}
	step := math.Pow(10, math.Floor(math.Log10(most)))
	if most/step < 4 {
		step /= 2
	}
	for l := step; l <= most; l += step {
		p.Line(svg.Guide, left-1.5, y(l), left, y(l))
		p.Text(svg.End, left-2.5, y(l)+1.1, fmt.Sprintf("%g", l))
	}
	p.Text(svg.Start, left-8, top-4, "lift, mm")
	if from < 0 && to > 0 {
		p.Line(svg.Reference, x(0), bottom, x(0), top-2)
		p.Text(svg.Middle, x(0), top-4, "top dead centre")
	}
	if at := e.At.Lift.Float(units.InMillimetres); at > 0 && at < most {
		p.Line(svg.Limit, left, y(at), right, y(at))
	}
	for i := range e.valves {
		if v := &e.valves[i]; v.Table != nil {
			v.draw(p, x, y)
		}
	}
	for i, s := range says {
		p.Text(svg.Start, left, bottom+14+6*float64(i), s)
	}
	return string(p.Bytes())
}

// draw draws one curve, its greatest lift and its events: squares for the inlet,
// triangles for the exhaust.
func (v *valve) draw(p *svg.Picture, x, y func(float64) float64) {
	const steps = 180
	first, last := v.curve.Span()
	var points []svg.Point
	for i := range steps + 1 {
		a := first + (last-first).Scale(int64(i), steps)
		lift, err := v.curve.Lift(a)
		if err != nil {
			continue
		}
		points = append(points, svg.Point{X: x(a.Float(units.InDegrees)), Y: y(max(0, lift.Float(units.InMillimetres)))})
	}
	for i := range len(points) - 1 {
		p.Line(svg.Guide, points[i].X, points[i].Y, points[i+1].X, points[i+1].Y)
	}
	mark := svg.Square
	if v.which == valvetrain.ExhaustValve {
		mark = svg.Triangle
	}
	peak := v.analysis.Peak
	p.Mark(mark, x(peak.Angle.Float(units.InDegrees)), y(peak.Lift.Float(units.InMillimetres)))
	if opening, closing, err := v.curve.AnglesAt(v.check.At.Lift); err == nil {
		at := y(v.check.At.Lift.Float(units.InMillimetres))
		p.Mark(mark, x(opening.Float(units.InDegrees)), at)
		p.Mark(mark, x(closing.Float(units.InDegrees)), at)
	}
}
