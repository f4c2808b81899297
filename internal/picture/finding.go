package picture

import (
	"math"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// The layout, in millimetres.
const (
	width   = 104.0
	left    = 30.0 // of the line of sizes; before it stand the words
	right   = 94.0
	rowHigh = 13.0
	top     = 12.0
)

// A row is one bracket or band.
type row[Q units.Quantity] struct {
	name   string
	stroke svg.Stroke
	lo, hi Q
	loEnd  tolerance.End
	hiEnd  tolerance.End
}

// Names are the words before the rows.
type Names struct{ Measured, New, Wear string }

// Finding draws the readings of a finding against its limits, in a unit with at
// least so many decimal places. A finding with neither readings nor limits
// gives a picture that says so.
func Finding[Q units.Quantity](f *tolerance.FindingOf[Q], unit units.Unit[Q], places int) *svg.Picture {
	return FindingNamed(f, unit, places, Names{"measured", "new parts", "wear limit"})
}

// FindingNamed is Finding with other words before its rows, 15 letters or so.
func FindingNamed[Q units.Quantity](f *tolerance.FindingOf[Q], unit units.Unit[Q], places int, names Names) *svg.Picture {
	rows := rowsOf(f, names)
	title := f.Measure
	if f.Where != "" {
		title += ", " + f.Where
	}
	p := svg.New(width, top+rowHigh*float64(max(len(rows), 1)), title, f.Text(unit, places)+" "+f.Explain()+".")
	scale, ok := scaleOf(rows)
	if !ok {
		p.Text(svg.Start, 4, top+4, "nothing to draw: "+f.Explain())
		return p
	}
	for i, r := range rows {
		y := top + rowHigh*float64(i)
		p.Text(svg.Start, 2, y+1, r.name)
		from, to := place(scale, r.lo, r.loEnd, left), place(scale, r.hi, r.hiEnd, right)
		p.Line(r.stroke, from, y, to, y)
		r.end(p, from, y, r.loEnd, -1)
		r.end(p, to, y, r.hiEnd, +1)
		if r.stroke == svg.Measured {
			r.label(p, from, to, y, unit, max(places, f.Places(unit, places)), places)
			continue
		}
		for _, limit := range []struct {
			x float64
			e tolerance.End
		}{{from, r.loEnd}, {to, r.hiEnd}} {
			if limit.e != tolerance.Absent {
				p.Line(svg.Guide, limit.x, top-2.5, limit.x, y)
			}
		}
		r.label(p, from, to, y, unit, units.AllPlaces, places)
	}
	return p
}

// rowsOf are the brackets and bands there are.
func rowsOf[Q units.Quantity](f *tolerance.FindingOf[Q], names Names) (rows []row[Q]) {
	add := func(name string, s svg.Stroke, lo Q, loEnd tolerance.End, hi Q, hiEnd tolerance.End) {
		if loEnd != tolerance.Absent || hiEnd != tolerance.Absent {
			rows = append(rows, row[Q]{name, s, lo, hi, loEnd, hiEnd})
		}
	}
	lo, loEnd := f.Least.Lower()
	hi, hiEnd := f.Greatest.Upper()
	if loEnd == tolerance.Absent && hiEnd == tolerance.Absent { // one alone may have ends
		hi, hiEnd = f.Least.Upper()
		lo, loEnd = f.Greatest.Lower()
	}
	add(names.Measured, svg.Measured, lo, loEnd, hi, hiEnd)
	for _, b := range []struct {
		name string
		band tolerance.BandOf[Q]
	}{{names.New, f.Spec.New}, {names.Wear, f.Spec.Wear}} {
		lo, loEnd := b.band.Lower()
		hi, hiEnd := b.band.Upper()
		add(b.name, svg.Limit, lo, loEnd, hi, hiEnd)
	}
	return rows
}

// end marks an end of a row; side is −1 on the left and +1 on the right.
func (r row[Q]) end(p *svg.Picture, x, y float64, e tolerance.End, side float64) {
	switch {
	case e == tolerance.Absent: // onward
		p.Polygon(svg.Guide, []svg.Point{{X: x, Y: y - 1.2}, {X: x, Y: y + 1.2}, {X: x + 2*side, Y: y}})
	case r.stroke != svg.Measured:
		p.Line(svg.Guide, x, y-1.5, x, y+1.5)
	case e == tolerance.Open:
		p.Circle(svg.Measured, x, y, 1.1)
	default:
		p.Mark(svg.Square, x, y)
	}
}

// label writes the sizes of the ends beside the row; where they would run into
// each other, as one text.
func (r row[Q]) label(p *svg.Picture, from, to, y float64, unit units.Unit[Q], places, least int) {
	text := func(q Q, r units.Rounding) string {
		style := units.Style[Q]{Unit: unit, Places: places, Rounding: r, Bare: true} // a bracket's end outward
		if n, ok := units.Places(q, unit); ok && (places == units.AllPlaces || n <= places+2) {
			style.Places = max(n, least)
		} else if places == units.AllPlaces {
			style.Places, style.Rounding = least+2, units.NearestEven // a limit without end in this unit
		}
		out, _ := units.Append(nil, q, style)
		return string(out)
	}
	const room = 22 // for one size
	lo, hi := "", ""
	if r.loEnd != tolerance.Absent {
		lo = text(r.lo, units.Down)
	}
	if r.hiEnd != tolerance.Absent {
		hi = text(r.hi, units.Up)
	}
	under := y + 5.5
	if r.stroke == svg.Measured {
		under = y - 3.5 // over it, out of the limits' way
	}
	switch {
	case lo == "" || hi == "":
		x := to
		if lo != "" {
			x = from
		}
		p.Text(svg.Middle, x, under, lo+hi)
	case lo == hi:
		p.Text(svg.Middle, from, under, lo)
	case to-from < room:
		p.Text(svg.Middle, math.Min(math.Max((from+to)/2, left+10), right-10), under, lo+" – "+hi)
	default:
		p.Text(svg.Middle, from, under, lo)
		p.Text(svg.Middle, to, under, hi)
	}
}

// A scale places sizes on the line.
type scale struct{ from, per float64 }

// scaleOf finds room for every end there is, and a little more.
func scaleOf[Q units.Quantity](rows []row[Q]) (s scale, ok bool) {
	least, greatest := math.Inf(1), math.Inf(-1)
	note := func(q Q, e tolerance.End) {
		if e != tolerance.Absent {
			least, greatest = math.Min(least, float64(q)), math.Max(greatest, float64(q))
		}
	}
	for _, r := range rows {
		note(r.lo, r.loEnd)
		note(r.hi, r.hiEnd)
	}
	if len(rows) == 0 {
		return s, false
	}
	span := greatest - least
	if span == 0 {
		span = math.Max(math.Abs(least), 1)
	}
	pad := 0.12 * span
	return scale{least - pad, (right - left) / (span + 2*pad)}, true
}

// place is where a size stands; an absent end at the edge given.
func place[Q units.Quantity](s scale, q Q, e tolerance.End, edge float64) float64 {
	if e == tolerance.Absent {
		return edge
	}
	return left + (float64(q)-s.from)*s.per
}
