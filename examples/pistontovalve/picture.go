package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/units"
)

// The picture's field, mm.
const (
	left, right = 16.0, 176.0
	top, bottom = 16.0, 96.0
	reach       = 60.0 // degrees on either side of top dead centre
)

// picture is the clearance of each valve by crank angle, everything on the
// dangerous side.
func (e *engine) picture() string {
	most, least := 0.0, 0.0
	var says []string
	for i := range e.valves {
		v := &e.valves[i]
		drop, _ := ends(v.Drop)
		lo, _ := ends(v.report.Least)
		most, least = max(most, 2*drop.Float(units.InMillimetres)), min(least, lo.Float(units.InMillimetres))
		says = append(says, fmt.Sprintf("%d: %s, least %s mm", i+1, v.Where, down(lo)))
	}
	x := func(degrees float64) float64 { return left + (degrees+reach)/(2*reach)*(right-left) }
	y := func(mm float64) float64 { return bottom - (mm-least)/(most-least)*(bottom-top) }
	p := svg.New(184, bottom+14+6*float64(len(says)), "Piston to valve: "+e.Engine,
		"Clearance along the valve by degrees of the crankshaft from top dead centre, every error on the dangerous side. "+strings.Join(says, "; ")+". Dashed: the wanted clearance; chain line: top dead centre.")
	p.Line(svg.Guide, left, y(0), right, y(0))
	p.Line(svg.Guide, left, bottom, left, top)
	p.Line(svg.Reference, x(0), bottom, x(0), top-2)
	p.Text(svg.Middle, x(0), top-4, "top dead centre")
	p.Text(svg.Start, left-8, top-4, "clearance, mm")
	for d := -reach; d <= reach; d += 20 {
		p.Line(svg.Guide, x(d), y(0), x(d), y(0)+1.5)
		p.Text(svg.Middle, x(d), bottom+6, fmt.Sprintf("%g°", d))
	}
	step := max(1, math.Ceil(most/8))
	for l := 0.0; l <= most; l += step {
		p.Line(svg.Guide, left-1.5, y(l), left, y(l))
		p.Text(svg.End, left-2.5, y(l)+1.1, fmt.Sprintf("%g", l))
	}
	for i := range e.valves {
		v := &e.valves[i]
		var last *svg.Point
		for d := -2 * reach; d <= 2*reach; d++ { // half degrees
			c, err := v.pair.ClearanceAt(units.Angle(d) * units.Degree / 2)
			at := c.Float(units.InMillimetres)
			if err != nil || at > most {
				last = nil
				continue
			}
			point := svg.Point{X: x(d / 2), Y: y(at)}
			if last != nil {
				p.Line(svg.Guide, last.X, last.Y, point.X, point.Y)
			}
			last = &point
		}
		lo, _ := ends(v.report.Least)
		at := v.report.At.Float(units.InDegrees)
		p.Mark(svg.Mark(i%4), x(at), y(lo.Float(units.InMillimetres)))
		p.Text(svg.Middle, x(at), y(lo.Float(units.InMillimetres))-3, fmt.Sprint(i+1))
		if v.Wanted > 0 {
			p.Line(svg.Limit, left, y(v.Wanted.Float(units.InMillimetres)), right, y(v.Wanted.Float(units.InMillimetres)))
			p.Text(svg.Start, right+1.5, y(v.Wanted.Float(units.InMillimetres))+1.1, fmt.Sprint(i+1))
		}
	}
	for i, s := range says {
		p.Text(svg.Start, left, bottom+13+6*float64(i), s)
	}
	return string(p.Bytes())
}

// down is a clearance rounded toward the dangerous side.
func down(l units.Length) string {
	text, _ := units.Append(nil, l, units.Style[units.Length]{Unit: units.InMillimetres, Places: 2, Bare: true, Rounding: units.Down})
	return string(text)
}
