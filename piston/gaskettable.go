package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// A GasketRow is one row of the engine maker's table of head gaskets.
type GasketRow struct {
	Mark       string         `json:"mark"`               // as it is told by: "2 notches", "three holes"
	Protrusion tolerance.Band `json:"protrusion"`         // of the greatest piston
	Thickness  tolerance.Band `json:"thickness,omitzero"` // compressed; zero where the table has none
}

// A GasketTable is the engine maker's table, the least protrusion first. It is
// the user's data: copy it from the manual of that very engine.
type GasketTable []GasketRow

// check refuses a table that can't be used, and rows out of order: a thinner
// gasket for a greater protrusion is a slip of copying, and one that lets a
// piston hit the head.
func (t GasketTable) check() error {
	if len(t) == 0 {
		return &InputError{"gasket table", "of no rows", "a table with a row at least"}
	}
	for i, row := range t {
		where := "row " + strconv.Itoa(i+1) + " of the gasket table"
		if row.Mark == "" {
			return &InputError{"mark of " + where, `""`, "the mark that the gasket is told by"}
		}
		if row.Protrusion.IsZero() || !row.Protrusion.InRange() {
			return &InputError{"protrusion of " + where, row.Protrusion.String(), "a band of protrusions"}
		}
		if !row.Thickness.IsZero() {
			if err := size("thickness of "+where, row.Thickness.Interval()); err != nil {
				return err
			}
			if _, end := row.Thickness.Upper(); end == tolerance.Absent {
				return &InputError{"thickness of " + where, row.Thickness.String(), "a band with a least and a greatest"}
			}
		}
		for j, before := range t[:i] {
			if before.Mark == row.Mark {
				return &InputError{"mark of " + where, strconv.Quote(clipped(row.Mark)), "another than that of row " + strconv.Itoa(j+1)}
			}
		}
		if i == 0 {
			continue
		}
		if before := t[i-1].Protrusion; !above(row.Protrusion, before) {
			return &InputError{"protrusion of " + where, row.Protrusion.String(), "above the row before it, " + before.String() + ": the rows go from the least protrusion up"}
		}
		before := t[i-1].Thickness
		if before.IsZero() != row.Thickness.IsZero() {
			return &InputError{"thickness of " + where, row.Thickness.String(), "given for all rows, or for none"}
		}
		if !before.IsZero() && !above(row.Thickness, before) {
			return &InputError{"thickness of " + where, row.Thickness.String(), "above the row before it, " + before.String() + ": a greater protrusion takes a thicker gasket"}
		}
	}
	return nil
}

// above reports whether each end of b lies above that of a. Only the first
// band may lack a lower end, only the last an upper.
func above(b, a tolerance.Band) bool {
	aLo, aLoEnd := a.Lower()
	aHi, aHiEnd := a.Upper()
	bLo, bLoEnd := b.Lower()
	bHi, bHiEnd := b.Upper()
	return bLoEnd != tolerance.Absent && (aLoEnd == tolerance.Absent || bLo > aLo) &&
		aHiEnd != tolerance.Absent && (bHiEnd == tolerance.Absent || bHi > aHi)
}

// grades are the rows as grades of the protrusion.
func (t GasketTable) grades() selective.Grades {
	g := make(selective.Grades, len(t))
	for i, row := range t {
		g[i] = selective.Grade{Name: row.Mark, Band: row.Protrusion}
	}
	return g
}

// Faults names each gap between rows, each limit that two rows share and each
// overlap. A maker's table may well have them; they matter where the engine's
// greatest protrusion falls on one. It fails with an [InputError] where the
// table is empty, a row has no mark, the mark of another or no protrusion, a
// thickness is not above zero or stands in some rows only, or where the rows
// are out of order.
func (t GasketTable) Faults() ([]selective.Fault, error) {
	if err := t.check(); err != nil {
		return nil, err
	}
	return t.grades().Validate()
}

// rows are the places in the table of the marks.
func (t GasketTable) rows(marks []string) (rows []int) {
	for i, row := range t {
		for _, m := range marks {
			if m == row.Mark {
				rows = append(rows, i)
			}
		}
	}
	return rows
}

// lies says how a protrusion lies to the whole table: Below its first row,
// Above its last, otherwise Undecided.
func (t GasketTable) lies(p tolerance.Bracket) tolerance.Verdict {
	if t[0].Protrusion.Judge(p) == tolerance.Below {
		return tolerance.Below
	}
	if t[len(t)-1].Protrusion.Judge(p) == tolerance.Above {
		return tolerance.Above
	}
	return tolerance.Undecided
}

// edges are the limits of rows that a protrusion doesn't tell which side it
// lies of, as text.
func (t GasketTable) edges(p tolerance.Bracket) (edges []string) {
	seen := units.Length(-1 << 62)
	add := func(at units.Length, end tolerance.End) {
		if end == tolerance.Absent || at == seen {
			return
		}
		lo, loEnd := p.Lower()
		hi, hiEnd := p.Upper()
		if (at > lo || at == lo && loEnd == tolerance.Closed) && (at < hi || at == hi && hiEnd == tolerance.Closed) {
			seen = at
			edges = append(edges, at.String())
		}
	}
	for _, row := range t {
		add(row.Protrusion.Lower())
		add(row.Protrusion.Upper())
	}
	return edges
}
