package main

import (
	"fmt"

	"github.com/tenthou/tenthou/examples/inspection/engine"
	"github.com/tenthou/tenthou/examples/inspection/report"
	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// drawings are the bores and the journals at an exaggerated scale, each beside
// its limits.
func drawings(d *engine.Document, r *engine.Result) (all []report.Drawing) {
	if l := d.Limits.Cylinder; l != nil && l.Bores != nil {
		for i := range r.Bores {
			b := &r.Bores[i]
			name := fmt.Sprintf("Cylinder %d, from the block face down", b.Cylinder)
			p := profile{title: name, measured: "bore", limits: limitsOf(l.Bores.Size.Spec()), from: l.Bores.Standard + b.Oversize}
			for _, level := range b.Levels {
				if !level.Least.IsZero() {
					p.add(level.Name, level.Least, level.Greatest)
				}
			}
			all = p.drawn(all)
		}
	}
	if l, read := d.Limits.Crank, d.Readings.Crank; l != nil && read != nil {
		for _, m := range read.Mains {
			name := fmt.Sprintf("Main journal %d, from the front", m.Number)
			p := profile{title: name, measured: "journal", limits: limitsOf(l.Mains.Size.Spec())}
			p.from, _ = l.Mains.Size.New.Upper()
			for k, plane := range m.Planes {
				sizes := inspection.Taken(nil, plane.Sizes...)
				if len(sizes) > 0 {
					least, greatest := tolerance.Extremes(sizes...)
					p.add(fmt.Sprintf("plane %d", k+1), least, greatest)
				}
			}
			all = p.drawn(all)
		}
	}
	return all
}

// A limit is one line of sizes that the drawing is held against.
type limit struct {
	name string
	at   units.Length
}

func limitsOf(s tolerance.Spec) (all []limit) {
	add := func(name string, l units.Length, e tolerance.End) {
		if e != tolerance.Absent {
			all = append(all, limit{name, l})
		}
	}
	lo, loEnd := s.New.Lower()
	hi, hiEnd := s.New.Upper()
	add("new", lo, loEnd)
	add("new", hi, hiEnd)
	lo, loEnd = s.Wear.Lower()
	hi, hiEnd = s.Wear.Upper()
	add("worn", lo, loEnd)
	add("worn", hi, hiEnd)
	return all
}

// A profile is a part's sizes along its axis.
type profile struct {
	title, measured string
	from            units.Length // that deviations are counted from
	limits          []limit
	names           []string
	least, greatest []units.Length
}

func (p *profile) add(name string, least, greatest tolerance.Bracket) {
	lo, loEnd := least.Lower()
	hi, hiEnd := greatest.Upper()
	if loEnd != tolerance.Absent && hiEnd != tolerance.Absent {
		p.names, p.least, p.greatest = append(p.names, name), append(p.least, lo), append(p.greatest, hi)
	}
}

func (p *profile) drawn(all []report.Drawing) []report.Drawing {
	if len(p.names) == 0 {
		return all
	}
	return append(all, report.Drawing{Title: p.title, Draw: func(id string) []byte { return p.picture().Inline(id) }})
}

// picture draws the sizes as deviations across the page, the axis down it.
func (p *profile) picture() *svg.Picture {
	const left, right, top, row = 46.0, 132.0, 16.0, 11.0
	lo, hi := p.least[0], p.greatest[0]
	for i := range p.names {
		lo, hi = min(lo, p.least[i]), max(hi, p.greatest[i])
	}
	for _, l := range p.limits {
		lo, hi = min(lo, l.at), max(hi, l.at)
	}
	span := float64(max(hi-lo, units.Micrometre))
	x := func(l units.Length) float64 { return left + 8 + float64(l-lo)/span*(right-left-16) }
	high := top + row*float64(len(p.names)) + 16
	worst := 0
	for i := range p.names {
		if p.greatest[i]-p.least[i] > p.greatest[worst]-p.least[worst] {
			worst = i
		}
	}
	times := (right - left - 16) / (span / float64(units.Millimetre))
	pic := svg.New(140, high, p.title, fmt.Sprintf("The %s at %d places, deviations drawn %.0f times their size; from %s to %s, the widest spread at %s.",
		p.measured, len(p.names), times, mm(lo), mm(hi), p.names[worst]))
	bottom := top + row*float64(len(p.names)) - row/2
	for i, l := range p.limits {
		pic.Line(svg.Limit, x(l.at), top-4, x(l.at), bottom)
		pic.Text(svg.Middle, x(l.at), bottom+4.5+4*float64(i%2), l.name+" "+mm(l.at))
	}
	pic.Text(svg.Start, 2, 6, fmt.Sprintf("%s, %.0f times", p.measured, times))
	for i, name := range p.names {
		y := top + row*float64(i)
		pic.Text(svg.Start, 2, y+1, name)
		pic.Line(svg.Measured, x(p.least[i]), y, x(p.greatest[i]), y)
		pic.Mark(svg.Square, x(p.least[i]), y)
		pic.Mark(svg.Square, x(p.greatest[i]), y)
		pic.Text(svg.Middle, (x(p.least[i])+x(p.greatest[i]))/2, y-2.5, fmt.Sprintf("%s – %s", mm(p.least[i]), mm(p.greatest[i])))
	}
	return pic
}

func mm(l units.Length) string {
	text, _ := units.Append(nil, l, units.Style[units.Length]{Places: 3, Bare: true})
	return string(text)
}
