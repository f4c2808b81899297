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
	side  = 130.0 // of the picture, mm
	reach = 46.0  // that the greatest value takes from the middle
)

// picture is the centres of all journals seen along the shaft, from the line
// between the supports, exaggerated, with the limit of the bend round it where
// that isn't far outside.
func (s *shaft) picture() string {
	var most units.Length
	for _, f := range s.report.Journals {
		hi, _ := f.Relative.Bend().Upper()
		most = max(most, hi)
	}
	limit, has := upper(s.Limits.Bend)
	near := has && limit <= 3*most
	if near {
		most = max(most, limit)
	}
	scale := exaggeration(most.Float(units.InMillimetres))
	text := fmt.Sprintf("The journals' centres seen along the shaft from the line between %s and %s, %g times exaggerated, joined in order; the mark is to the right, angles counter-clockwise.", s.Supports[0], s.Supports[1], scale)
	says := ""
	switch {
	case near:
		says = fmt.Sprintf("dashed: the limit of the bend, %s mm", mm(limit))
	case has:
		says = fmt.Sprintf("the limit of the bend, %s mm, lies outside the picture", mm(limit))
	}
	names := s.key()
	p := svg.New(side, side+10+6*float64(len(names)+1), "Bend: "+s.Engine, strings.TrimSpace(text+" "+says))
	axes(p)
	if near {
		p.Circle(svg.Limit, side/2, side/2, scale*limit.Float(units.InMillimetres))
	}
	points := make([]svg.Point, len(s.report.Journals))
	for i, f := range s.report.Journals {
		points[i] = svg.Point{X: side/2 + scale*f.Relative.Cosine.Float(units.InMillimetres), Y: side/2 - scale*f.Relative.Sine.Float(units.InMillimetres)}
	}
	p.Polyline(svg.Measured, points)
	for i, f := range s.report.Journals {
		if f.Support {
			p.Mark(svg.Square, points[i].X, points[i].Y)
			continue
		}
		p.Mark(svg.Dot, points[i].X, points[i].Y)
		at, _ := f.Relative.HighPoint() // the number stands farther out
		sin, cos := math.Sincos(at.Radians())
		p.Text(svg.Middle, points[i].X+3.6*cos, points[i].Y-3.6*sin+1.1, fmt.Sprint(i+1))
	}
	p.Text(svg.Start, 4, side+5, fmt.Sprintf("× %g, joined in order along the shaft; square: the supports", scale))
	p.Text(svg.Start, 4, side+11, says)
	for i, line := range names {
		p.Text(svg.Start, 4, side+17+6*float64(i), line)
	}
	return string(p.Bytes())
}

// key says which number is which journal, some to a line.
func (s *shaft) key() []string {
	var all []string
	for i, f := range s.report.Journals {
		all = append(all, fmt.Sprint(i+1, ": ", f.Where))
	}
	return strings.Split(strings.TrimSpace(recipe.Wrap(strings.Join(all, ",  "), 66, "", "")), "\n")
}

// journalPicture is the readings of one journal round its mean, exaggerated, with
// the eccentricity's circle through them.
func (s *shaft) journalPicture(at int) (string, error) {
	j, f := s.survey.Journals[at], s.report.Journals[at]
	n := len(j.Readings)
	if n == 0 {
		return "", fmt.Errorf("%s wasn't read", j.Where)
	}
	const ring = 32.0 // that stands for the mean reading
	mean := 0.0
	for _, r := range j.Readings {
		mean += r.Float(units.InMillimetres) / float64(n)
	}
	most := 0.0
	for _, r := range j.Readings {
		most = max(most, math.Abs(r.Float(units.InMillimetres)-mean))
	}
	scale := exaggeration(most * reach / 16)
	bend, _ := f.Off.Bend().Middle()
	high, _ := f.Off.HighPoint()
	p := svg.New(side, side+16, "Readings: "+j.Where, fmt.Sprintf("The dial's readings round %s, %g times exaggerated about their mean (thin). Chain line: what an eccentricity of %s mm toward %s makes. The mark is to the right, angles counter-clockwise.", j.Where, scale, mm(bend), high.Text(units.InDegrees, 0)))
	axes(p)
	p.Circle(svg.Guide, side/2, side/2, ring)
	points, round := make([]svg.Point, n), make([]svg.Point, 0, 72)
	place := func(radians, off float64) svg.Point {
		sin, cos := math.Sincos(radians)
		r := ring + scale*off
		return svg.Point{X: side/2 + r*cos, Y: side/2 - r*sin}
	}
	for i, r := range j.Readings {
		angle := 2 * math.Pi * float64(i) / float64(n)
		if len(j.Angles) > 0 {
			angle = j.Angles[i].Radians()
		}
		points[i] = place(angle, r.Float(units.InMillimetres)-mean)
	}
	x, y := f.Off.Cosine.Float(units.InMillimetres), f.Off.Sine.Float(units.InMillimetres)
	for k := range 72 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / 72)
		round = append(round, place(2*math.Pi*float64(k)/72, x*cos+y*sin))
	}
	p.Polygon(svg.Reference, round)
	p.Polygon(svg.Measured, points)
	p.Mark(svg.Dot, points[0].X, points[0].Y)
	p.Text(svg.Start, 4, side+5, fmt.Sprintf("× %g; the dot is the first reading, then counter-clockwise", scale))
	p.Text(svg.Start, 4, side+11, fmt.Sprintf("chain line: eccentricity %s mm, high point at %s", mm(bend), high.Text(units.InDegrees, 0)))
	return string(p.Bytes()), nil
}

// axes are a cross with the angles at its ends.
func axes(p *svg.Picture) {
	const centre, arm = side / 2, 54.0
	p.Line(svg.Guide, centre-arm, centre, centre+arm, centre)
	p.Line(svg.Guide, centre, centre-arm, centre, centre+arm)
	p.Text(svg.Start, centre+arm+1, centre+1, "0°")
	p.Text(svg.Middle, centre, centre-arm-1.5, "90°")
	p.Text(svg.End, centre-arm-1, centre+1, "180°")
	p.Text(svg.Middle, centre, centre+arm+4, "270°")
}

// upper is the greatest bend allowed: the wear limit's, else that for new parts.
func upper(s spec) (units.Length, bool) {
	for _, b := range []tolerance.Band{s.Wear.BandOf, s.New.BandOf} {
		if hi, end := b.Upper(); end != tolerance.Absent {
			return hi, true
		}
	}
	return 0, false
}

// exaggeration is the greatest of 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, … that keeps
// a value in reach.
func exaggeration(mm float64) float64 {
	best := 1.0
	for tens := 1.0; tens <= 1e5; tens *= 10 {
		for _, k := range []float64{1, 1.5, 2, 2.5, 3, 4, 5, 6, 8} {
			if k*tens*mm <= reach {
				best = k * tens
			}
		}
	}
	return best
}
