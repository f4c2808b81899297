package main

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

const (
	side = 130.0 // of the picture, mm
	mean = 42.0  // the radius that stands for the circle halfway between the zone's two
	room = 14.0  // for the greatest deviation on either side of it
)

// picture is the section about the centre of its minimum zone, exaggerated,
// between that zone's circles and those of the limit.
func (s section) picture() string {
	centre := side / 2
	radius := s.zone.Diameter.Float(units.InMillimetres) / 2
	cx, cy := s.zone.CentreX.Float(units.InMillimetres), s.zone.CentreY.Float(units.InMillimetres)
	half := s.zone.RONt.Length().Float(units.InMillimetres) / 2
	limit, has := s.limit()
	scale := exaggeration(max(half, limit/2))

	text := fmt.Sprintf("The section, its deviations %g times exaggerated, between the circles of its minimum zone, %s mm apart on the radius.", scale, mm(s.zone.RONt.Length()))
	if has {
		text += fmt.Sprintf(" Dashed: a zone of %s mm about the same centre, which is what the limit allows.", fixed(limit))
	}
	p := svg.New(side, side+22, "Roundness: "+s.Part, text)
	p.Line(svg.Guide, centre-4, centre, centre+4, centre)
	p.Line(svg.Guide, centre, centre-4, centre, centre+4)
	for _, r := range []float64{-half, half} {
		p.Circle(svg.Reference, centre, centre, mean+scale*r)
	}
	if has {
		for _, r := range []float64{-limit / 2, limit / 2} {
			p.Circle(svg.Limit, centre, centre, mean+scale*r)
		}
	}
	n := len(s.profile.Deviations)
	points := make([]svg.Point, n)
	for i, d := range s.profile.Deviations {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := s.profile.Nominal.Add(d).Float(units.InMillimetres)
		x, y := r*cos-cx, r*sin-cy
		drawn := mean + scale*(math.Hypot(x, y)-radius)
		points[i] = svg.Point{X: centre + drawn*cos, Y: centre - drawn*sin}
	}
	p.Polygon(svg.Measured, points)
	p.Mark(svg.Dot, points[0].X, points[0].Y)
	p.Text(svg.Start, 4, side+5, fmt.Sprintf("deviations × %g; the dot is the first reading, then counter-clockwise", scale))
	p.Text(svg.Start, 4, side+11, fmt.Sprintf("minimum zone (chain lines): %s mm on the radius, about a diameter of %s mm", mm(s.zone.RONt.Length()), mm(s.zone.Diameter)))
	if has {
		p.Text(svg.Start, 4, side+17, fmt.Sprintf("limit (dashed): %s mm on the radius", fixed(limit)))
	}
	return string(p.Bytes())
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
