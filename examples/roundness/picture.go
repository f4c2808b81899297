package main

import (
	"fmt"
	"math"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const (
	side = 130.0 // of the picture, mm
	mean = 42.0  // the radius that stands for the circle halfway between the zone's two
	room = 14.0  // for the greatest deviation on either side of it
	line = 6.0   // from one line of words to the next
	wide = 60    // letters to a line
)

// picture is the section about the centre of its minimum zone, exaggerated,
// between that zone's circles and those of the limit.
func (s section) picture() string {
	radius := s.zone.Diameter.Float(units.InMillimetres) / 2
	cx, cy := s.zone.CentreX.Float(units.InMillimetres), s.zone.CentreY.Float(units.InMillimetres)
	half := s.zone.RONt.Length().Float(units.InMillimetres) / 2
	limit, has := s.limit()
	scale := exaggeration(max(half, limit/2))

	title := lines("Roundness: " + s.Part)
	legend := []string{
		fmt.Sprintf("deviations × %g; the dot is the first reading, then counter-clockwise", scale),
		fmt.Sprintf("chain lines: minimum zone, %s mm on the radius", mm(s.zone.RONt.Length())),
		fmt.Sprintf("the circle between them: %s mm in diameter", mm(s.zone.Diameter)),
	}
	if has {
		legend = append(legend, fmt.Sprintf("dashed: the limit, %s mm on the radius", fixed(limit)))
	}
	head := line * float64(len(title))
	across, down := side/2, head+side/2
	text := fmt.Sprintf("The section, its deviations %g times exaggerated, between the circles of its minimum zone, %s mm apart on the radius.", scale, mm(s.zone.RONt.Length()))
	if has {
		text += fmt.Sprintf(" Dashed: a zone of %s mm about the same centre, which is what the limit allows.", fixed(limit))
	}
	p := svg.New(side, head+side+line*float64(len(legend)), "Roundness: "+s.Part, text)
	for i, l := range title {
		p.Text(svg.Start, 4, line*float64(i+1), l)
	}
	p.Line(svg.Guide, across-4, down, across+4, down)
	p.Line(svg.Guide, across, down-4, across, down+4)
	for _, r := range []float64{-half, half} {
		p.Circle(svg.Reference, across, down, mean+scale*r)
	}
	if has {
		for _, r := range []float64{-limit / 2, limit / 2} {
			p.Circle(svg.Limit, across, down, mean+scale*r)
		}
	}
	n := len(s.profile.Deviations)
	points := make([]svg.Point, n)
	for i, d := range s.profile.Deviations {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := s.profile.Nominal.Add(d).Float(units.InMillimetres)
		x, y := r*cos-cx, r*sin-cy
		drawn := mean + scale*(math.Hypot(x, y)-radius)
		points[i] = svg.Point{X: across + drawn*cos, Y: down - drawn*sin}
	}
	p.Polygon(svg.Measured, points)
	p.Mark(svg.Dot, points[0].X, points[0].Y)
	for i, l := range legend {
		p.Text(svg.Start, 4, head+side+line*float64(i), l)
	}
	return string(p.Bytes())
}

// lines breaks a text for the picture.
func lines(text string) []string {
	return strings.Split(strings.TrimSuffix(recipe.Wrap(text, wide, "", ""), "\n"), "\n")
}

// limit is the greatest roundness allowed in mm: the wear limit's, else the
// one for new parts.
func (s section) limit() (mm float64, has bool) {
	spec := s.Roundness.spec()
	for _, band := range []tolerance.Band{spec.Wear, spec.New} {
		if hi, end := band.Upper(); end != tolerance.Absent {
			return hi.Float(units.InMillimetres), true
		}
	}
	return 0, false
}

// exaggeration is the greatest of 1, 2, 5, 10, … that keeps a deviation in its
// room.
func exaggeration(deviation float64) float64 {
	best := 1.0
	for tens := 1.0; tens <= 1e5; tens *= 10 {
		for _, k := range []float64{1, 2, 5} {
			if k*tens*deviation <= room {
				best = k * tens
			}
		}
	}
	return best
}
