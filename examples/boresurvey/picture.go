package main

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The lay of a picture, in millimetres.
const (
	panel  = 90.0  // the width of one direction's picture
	top    = 22.0  // where the block face is drawn
	tall   = 110.0 // the height of the bore
	middle = 20.0  // half the width at which the size last finished to is drawn
	room   = 18.0  // what wear may take beyond that
)

// scale maps a size to a wall's place: so many times as large as it is.
type scale struct {
	from  float64 // the size drawn at middle, mm
	times float64
}

func (s scale) half(size float64) float64 { return middle + s.times*(size-s.from)/2 }

// picture draws one cylinder: each direction's section, the difference from the
// size last finished to exaggerated, with the limits that it is held to.
func picture(r row, print printer) (string, error) {
	s := &r.survey
	sizes := make([]float64, len(s.Readings)) // mm; not-a-number where not read
	most := 0.01
	from, origin := r.from()
	for i, read := range s.Readings {
		sizes[i] = math.NaN()
		if read.Taken {
			c, err := s.Gauge.Reading(read.Shown, s.Block)
			if err != nil {
				return "", err
			}
			sizes[i] = c.Size.Float(units.InMillimetres)
			most = max(most, math.Abs(sizes[i]-from))
		}
	}
	limit, what := r.limit(from, print)
	if !math.IsNaN(limit) {
		most = max(most, math.Abs(limit-from))
	}
	k := scale{from, stepDown(2 * room / most)}
	title := fmt.Sprintf("Cylinder %d: the bore, its differences %.0f times as large", r.number, k.times)
	desc := fmt.Sprintf("Sections of the bore from the block face down, one for each direction gauged. Thick lines with dots: the walls as measured, half of each difference on either side, since a diameter doesn't tell which side is worn. Chain lines: %s, %s.", print.float(from), origin)
	if what != "" {
		desc += " Dashed lines: " + what + "."
	}
	desc += " Greatest " + r.report.Greatest.Size.Text(print.unit, print.places+1) + ", " + s.Name(r.report.Greatest.At) + "; shape: " + r.report.Shape.String() + "; standing: " + r.report.Worst(&r.limits).String() + "."
	p := svg.New(panel*float64(len(s.Headings)), top+tall+26, title, desc)
	p.Text(svg.Start, 3, 6, title)
	for j := range s.Headings {
		r.section(p, k, sizes, j, limit, print)
	}
	y := top + tall + 12
	p.Line(svg.Measured, 3, y, 13, y)
	p.Text(svg.Start, 15, y+1, "measured")
	p.Line(svg.Reference, 3, y+5, 13, y+5)
	p.Text(svg.Start, 15, y+6, print.float(from)+", "+origin)
	if what != "" {
		p.Line(svg.Limit, 3, y+10, 13, y+10)
		p.Text(svg.Start, 15, y+11, what)
	}
	return string(p.Bytes()), nil
}

// section draws one direction.
func (r row) section(p *svg.Picture, k scale, sizes []float64, j int, limit float64, print printer) {
	s := &r.survey
	centre := panel*float64(j) + panel/2
	p.Text(svg.Middle, centre, 13, s.HeadingName(j))
	p.Line(svg.Guide, centre-panel/2+4, top, centre+panel/2-4, top)
	p.Text(svg.Start, centre-panel/2+4, top-1, "block face")
	depth := func(i int) float64 {
		if last := s.Levels[len(s.Levels)-1].Depth; last > 0 {
			return top + tall*math.Max(float64(s.Levels[i].Depth), 0)/float64(last)
		}
		return top + tall*float64(i+1)/float64(len(s.Levels))
	}
	for _, side := range []float64{-1, 1} {
		p.Line(svg.Reference, centre+side*middle, top, centre+side*middle, top+tall+3)
		if !math.IsNaN(limit) {
			p.Line(svg.Limit, centre+side*k.half(limit), top, centre+side*k.half(limit), top+tall+3)
		}
		var run []svg.Point
		for i := range s.Levels {
			size := sizes[i*len(s.Headings)+j]
			if math.IsNaN(size) { // a gap, never a line across it
				p.Polyline(svg.Measured, run)
				run = nil
				if side > 0 {
					p.Mark(svg.Cross, centre, depth(i))
					p.Text(svg.Middle, centre, depth(i)+5, "not read")
				}
				continue
			}
			run = append(run, svg.Point{X: centre + side*k.half(size), Y: depth(i)})
			p.Mark(svg.Dot, centre+side*k.half(size), depth(i))
			if side > 0 {
				p.Text(svg.Middle, centre, depth(i)+1, print.bare(size))
			}
		}
		p.Polyline(svg.Measured, run)
	}
}

// float and bare write a size in mm that was drawn.
func (p printer) float(mm float64) string { return p.bare(mm) + " " + p.unit.Symbol() }

func (p printer) bare(mm float64) string {
	l, _ := units.Nearest(mm, units.InMillimetres)
	return p.size(l)
}

// limit is the greatest size allowed, by a limit of size or of wear.
func (r row) limit(from float64, print printer) (size float64, what string) {
	for _, b := range []tolerance.Band{r.limits.Size.Wear, r.limits.Size.New} {
		if hi, end := b.Upper(); end != tolerance.Absent {
			return hi.Float(units.InMillimetres), "limit of size, " + b.Text(print.unit, print.places)
		}
	}
	for _, b := range []tolerance.Band{r.limits.Wear.Wear, r.limits.Wear.New} {
		if hi, end := b.Upper(); end != tolerance.Absent {
			return from + hi.Float(units.InMillimetres), "limit of wear, " + b.Text(print.unit, print.places)
		}
	}
	return math.NaN(), ""
}

// from is the size that wear counts from, in mm, and what it is: the least size
// read where none is known.
func (r row) from() (mm float64, what string) {
	s := &r.survey
	at, what := r.report.Least.Shown, "the least size read"
	if s.Unworn.Taken {
		at, what = s.Unworn.Shown, "the size below the ring travel"
	} else if lo, end := s.Finished.Lower(); end != tolerance.Absent {
		return lo.Float(units.InMillimetres), "the least size last finished to"
	}
	c, err := s.Gauge.Reading(at, s.Block)
	if err != nil { // it was read before
		return 0, what
	}
	return c.Size.Float(units.InMillimetres), what
}

// stepDown is the greatest of 1, 2, 5, 10, 20, … that isn't more than x.
func stepDown(x float64) float64 {
	ten := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{5, 2} {
		if m*ten <= x {
			return m * ten
		}
	}
	return ten
}
