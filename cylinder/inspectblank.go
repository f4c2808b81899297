package cylinder

import (
	"github.com/tenthou/tenthou/tolerance/inspection"
)

// Blank is a readings document of the shape that the limits ask for, with
// nothing read: every part with its number, every list as long as it is to be.
// Inspected, it gives the list of all readings, which is the bench sheet;
// encoded, the file to type them into. Of limits that can't be it has no parts.
func (l *Limits) Blank() Readings {
	r := Readings{Schema: inspectSchema}
	if l.Validate() != nil {
		return r
	}
	banks := len(l.banks())
	if l.Face != nil {
		for bank := range banks {
			r.Faces = append(r.Faces, ReadingsBankFace{Bank: bank + 1, ReadingsFace: l.Face.blank()})
		}
	}
	if t := l.Tunnel; t != nil {
		for i := range t.Mains {
			m := ReadingsMain{Main: i + 1}
			for range t.Levels {
				m.Sizes = append(m.Sizes, make([]inspection.Reading, len(t.Directions)))
			}
			r.Mains = append(r.Mains, m)
		}
	}
	for i := range l.Cylinders {
		r.Cylinders = append(r.Cylinders, l.blankCylinder(i+1))
	}
	if l.Head != nil {
		for bank := range banks {
			r.Heads = append(r.Heads, ReadingsHead{Bank: bank + 1, ReadingsFace: l.Head.Face.blank()})
		}
	}
	return r
}

func (l *Limits) blankCylinder(number int) ReadingsCylinder {
	c := ReadingsCylinder{Cylinder: number}
	if b := l.Bores; b != nil {
		for range b.Levels {
			level := ReadingsLevel{}
			if len(b.Angles) > 0 {
				level.Angled = make([]inspection.Reading, len(b.Angles))
			}
			c.Levels = append(c.Levels, level)
		}
	}
	if l.Liners != nil {
		c.Liner.Protrusion = make([]inspection.Reading, max(1, len(l.Liners.Places)))
	}
	return c
}

func (l *LimitsFace) blank() ReadingsFace {
	var r ReadingsFace
	switch {
	case l.Grid != nil:
		for range l.Grid.Rows {
			r.Grid = append(r.Grid, make([]inspection.Reading, l.Grid.Columns))
		}
	case l.flatness():
		n := len(l.Lines)
		if l.Lines == nil {
			n = len(SixLines())
		}
		r.Lines = make([]ReadingsLine, n)
		if len(l.Local) > 0 {
			r.Local = make([]inspection.Reading, len(l.Local))
		}
	}
	if !l.Height.IsZero() {
		r.Heights = make([]inspection.Reading, max(1, len(l.HeightAt)))
	}
	return r
}

// flatness reports whether a straight-edge is asked for.
func (l *LimitsFace) flatness() bool {
	return !l.Overall.IsZero() || !l.Lengthwise.IsZero() || !l.Across.IsZero() || !l.Diagonal.IsZero() || len(l.Local) > 0
}
