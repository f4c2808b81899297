package cylinder

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
)

// HousingOvality is the ovality (out-of-round) of a housing bore at one level:
// the greatest of the diameters in several directions less the least. It is a
// difference of diameters, twice what roundness as standards count it would
// be for an oval; two directions may miss an oval altogether.
func HousingOvality[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// HousingTaper is the taper of a housing bore along one direction: the
// greatest of the diameters at several levels less the least.
func HousingTaper[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// A CapState says how the bearing caps were when a tunnel was read. The zero
// value is CapsNotRecorded.
type CapState uint8

// The states of the caps.
const (
	CapsNotRecorded CapState = iota
	CapsTorqued              // in place and tightened as the manual says, shells out
	CapsLoose                // in place, not tightened
)

var capStateNames = []string{"not recorded", "torqued", "loose"}

// String is the state in words.
func (c CapState) String() string { return wordOf(capStateNames, c) }

// MarshalText writes what String gives.
func (c CapState) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads what String gives.
func (c *CapState) UnmarshalText(text []byte) error { return readWord("caps", capStateNames, text, c) }

// A Housing is one main bearing housing.
type Housing struct {
	Where string // "main 2"
	// Sizes are the diameters, a row for each of the tunnel's levels and in it
	// one for each of its directions; the zero Bracket where one wasn't read.
	Sizes [][]tolerance.Bracket
}

// A MainTunnel is a block's main bearing tunnel, read with the shells out. It
// must be clean to the metal, the caps in their own places and the right way
// round, and tightened in the manual's order.
type MainTunnel struct {
	Caps       CapState       // zero: not recorded, and nothing then counts
	Levels     []string       // along the bore: "front", "rear"
	Directions []string       // "vertical", "60° left", "60° right"
	Housings   []Housing      // in order along the tunnel
	Size       tolerance.Spec // of every diameter; zero where no limit is given
	Ovality    tolerance.Spec // greatest less least diameter at one level
	Taper      tolerance.Spec // greatest less least diameter along one direction
}

// A HousingReport is what follows for one housing.
type HousingReport struct {
	Where    string              `json:"where"`             // "main 2"
	Size     tolerance.Finding   `json:"size"`              // the least and the greatest diameter, with where they stand
	Ovality  []tolerance.Finding `json:"ovality"`           // level by level, where two directions were read
	Taper    []tolerance.Finding `json:"taper"`             // direction by direction, where two levels were read
	Missing  []string            `json:"missing,omitempty"` // level and direction of what was not read
	Standing tolerance.Standing  `json:"standing"`          // the worst of them
	Governs  string              `json:"governs"`           // the measure that it is of
}

// A MainTunnelReport is what follows for a tunnel. Worst is the worst
// housing's standing, at WorstAt.
type MainTunnelReport struct {
	Housings []HousingReport    `json:"housings"` // in the order given
	Worst    tolerance.Standing `json:"worst"`
	WorstAt  string             `json:"worstAt"`
	// Counts reports whether the readings count: with the caps torqued. Where
	// they don't, every standing is can't tell.
	Counts bool   `json:"counts"`
	Next   string `json:"next"` // what to do
}

const capsSettle = "fit the caps in their places, tighten them as the engine maker's manual says, and measure again"

// Assess judges every housing: size by the least and the greatest diameter,
// ovality at each level, taper along each direction. The setting error of the
// gauge counts in sizes and cancels in ovality and taper; brackets that hold
// it make those wider than they need be.
func (t MainTunnel) Assess() (MainTunnelReport, error) {
	if err := t.check(); err != nil {
		return MainTunnelReport{}, err
	}
	r := MainTunnelReport{Counts: t.Caps == CapsTorqued}
	for _, h := range t.Housings {
		one, err := t.housing(h)
		if err != nil {
			return MainTunnelReport{}, err
		}
		if r.WorstAt == "" || linerWorse(one.Standing, r.Worst) {
			r.Worst, r.WorstAt = one.Standing, one.Where
		}
		r.Housings = append(r.Housings, one)
	}
	switch {
	case !r.Counts:
		r.Next = "the caps' state is " + t.Caps.String() + ": " + capsSettle
	case r.Worst >= tolerance.OutsideNewBand:
		r.Next = r.WorstAt + " is outside its limits: line hone or line bore, or another block; see what a line hone leaves first"
	case r.Worst == tolerance.CantTell:
		r.Next = r.WorstAt + " can't be told yet, which is not a pass: measure as its findings say"
	default:
		r.Next = "within the limits; check the alignment of the line, then fit the shells and measure their clearance"
	}
	return r, nil
}

func (t MainTunnel) housing(h Housing) (HousingReport, error) {
	r := HousingReport{Where: h.Where}
	keep := func(measure, where string, spec tolerance.Spec, stations ...tolerance.Bracket) (tolerance.Finding, error) {
		f, err := linerAssess(measure, where, spec, stations...)
		if err != nil {
			return f, err
		}
		if t.Caps != CapsTorqued {
			f.Standing, f.Settle = tolerance.CantTell, capsSettle
		}
		if !spec.IsZero() && (r.Governs == "" || linerWorse(f.Standing, r.Standing)) {
			r.Standing, r.Governs = f.Standing, measure
		}
		return f, nil
	}
	var all []tolerance.Bracket
	columns := make([][]tolerance.Bracket, len(t.Directions))
	rows := make([][]tolerance.Bracket, len(t.Levels))
	for i, row := range h.Sizes {
		for k, size := range row {
			if size.IsZero() {
				r.Missing = append(r.Missing, t.Levels[i]+", "+t.Directions[k])
				continue
			}
			all, rows[i], columns[k] = append(all, size), append(rows[i], size), append(columns[k], size)
		}
	}
	var err error
	if r.Size, err = keep("housing bore", h.Where, t.Size, all...); err != nil {
		return r, err
	}
	for i, row := range rows {
		if len(row) < 2 {
			continue
		}
		f, err := keep("ovality of the housing", h.Where+", "+t.Levels[i], t.Ovality, HousingOvality(row[0], row[1:]...))
		if err != nil {
			return r, err
		}
		r.Ovality = append(r.Ovality, f)
	}
	for k, column := range columns {
		if len(column) < 2 {
			continue
		}
		f, err := keep("taper of the housing", h.Where+", "+t.Directions[k], t.Taper, HousingTaper(column[0], column[1:]...))
		if err != nil {
			return r, err
		}
		r.Taper = append(r.Taper, f)
	}
	// A limit that nothing was read for leaves the housing open.
	if (!t.Ovality.IsZero() && len(r.Ovality) == 0) || (!t.Taper.IsZero() && len(r.Taper) == 0) {
		if r.Governs == "" || linerWorse(tolerance.CantTell, r.Standing) {
			r.Standing, r.Governs = tolerance.CantTell, "what wasn't read"
		}
	}
	return r, nil
}

func (t MainTunnel) check() error {
	switch {
	case len(t.Housings) == 0:
		return linerError("housings", "none", "at least one")
	case len(t.Levels) == 0 || len(t.Directions) == 0:
		return linerError("levels and directions", fmt.Sprintf("%d and %d", len(t.Levels), len(t.Directions)), "at least one of each")
	case t.Caps > CapsLoose:
		return linerError("caps", fmt.Sprint(uint8(t.Caps)), "a recorded state")
	}
	var all []tolerance.Bracket
	var names []string
	for _, h := range t.Housings {
		if len(h.Sizes) != len(t.Levels) {
			return linerError("levels of "+h.Where, fmt.Sprint(len(h.Sizes)), fmt.Sprintf("%d, as the tunnel has", len(t.Levels)))
		}
		read := false
		for i, row := range h.Sizes {
			if len(row) != len(t.Directions) {
				return linerError("directions of "+h.Where+", "+t.Levels[i], fmt.Sprint(len(row)), fmt.Sprintf("%d, as the tunnel has", len(t.Directions)))
			}
			for k, size := range row {
				if size.IsZero() {
					continue
				}
				read = true
				name := h.Where + ", " + t.Levels[i] + ", " + t.Directions[k]
				if err := linerSize(name, size); err != nil {
					return err
				}
				all, names = append(all, size), append(names, name)
			}
		}
		if !read {
			return linerError("readings of "+h.Where, "none", "at least one diameter")
		}
	}
	return linerAlike(names, all)
}
