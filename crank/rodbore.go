package crank

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
)

// RodOvality is the ovality (out-of-round) of a rod's eye in one plane: the
// greatest of the diameters in several directions less the least.
func RodOvality[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// RodTaper is the taper of a rod's eye in one direction: the greatest of the
// diameters in several planes less the least.
func RodTaper[N tolerance.Number[N]](diameter N, more ...N) N { return diameter.Spread(more...) }

// A RodBore is an eye of a rod, gauged in several planes along it and in several
// directions. A big end is read with its own cap on, the right way round, the
// bolts tightened as the manual says and the shells out. In line with the rod and
// at 45° to 60° on both sides are good directions; at the parting line itself
// the relief of the joint is read, not the bore. Never file a cap or a rod to
// close a bore up.
type RodBore struct {
	Where      string                // "rod 3, big end"
	Planes     []string              // along the bore: "front", "rear"
	Directions []string              // "in line", "60° left"
	Sizes      [][]tolerance.Bracket // a row for each plane; the zero Bracket where none was read
	Size       tolerance.Spec        // of every diameter
	Ovality    tolerance.Spec        // in one plane
	Taper      tolerance.Spec        // in one direction
}

// A RodBoreReport is what follows for an eye.
type RodBoreReport struct {
	Size    tolerance.Finding   `json:"size"`              // the least and the greatest
	Ovality []tolerance.Finding `json:"ovality"`           // plane by plane, where two directions were read
	Taper   []tolerance.Finding `json:"taper"`             // direction by direction, where two planes were read
	Missing []string            `json:"missing,omitempty"` // plane and direction of what was not read
	Worst   tolerance.Standing  `json:"worst"`             // of those with limits; can't tell where a place wasn't read and none is out
	WorstAt string              `json:"worstAt"`           // measure and place
}

// Assess judges size, ovality and taper. The error of a gauge's setting counts
// in the size and cancels in the other two; brackets that hold it make those
// wider than they need be. Two directions may miss an oval altogether.
//
// It fails with an [InputError] where the rows don't fit planes and directions,
// where nothing was read, and where a diameter isn't above zero.
func (b RodBore) Assess() (RodBoreReport, error) {
	var r RodBoreReport
	if err := b.check(); err != nil {
		return r, err
	}
	keep := func(measure, where string, spec tolerance.Spec, at ...tolerance.Bracket) (tolerance.Finding, error) {
		f, err := tolerance.Assess(measure, b.Where+where, spec, at...)
		if !spec.IsZero() && (r.WorstAt == "" || runOutRank(f.Standing) > runOutRank(r.Worst)) {
			r.Worst, r.WorstAt = f.Standing, measure+", "+f.Where
		}
		return f, err
	}
	all := make([]tolerance.Bracket, 0, len(b.Planes)*len(b.Directions))
	r.Ovality, r.Taper = make([]tolerance.Finding, 0, len(b.Planes)), make([]tolerance.Finding, 0, len(b.Directions))
	for i, row := range b.Sizes {
		for k, d := range row {
			if d.IsZero() {
				r.Missing = append(r.Missing, b.Planes[i]+", "+b.Directions[k])
				continue
			}
			all = append(all, d)
		}
	}
	var err error
	if r.Size, err = keep("size", "", b.Size, all...); err != nil {
		return r, err
	}
	for i, row := range b.Sizes {
		if err := b.spread(&r.Ovality, keep, "ovality", b.Planes[i], b.Ovality, row, RodOvality[tolerance.Bracket]); err != nil {
			return r, err
		}
	}
	column := make([]tolerance.Bracket, len(b.Sizes))
	for k := range b.Directions {
		for i, row := range b.Sizes {
			column[i] = row[k]
		}
		if err := b.spread(&r.Taper, keep, "taper", b.Directions[k], b.Taper, column, RodTaper[tolerance.Bracket]); err != nil {
			return r, err
		}
	}
	if len(r.Missing) > 0 && runOutRank(r.Worst) < runOutRank(tolerance.CantTell) && r.WorstAt != "" {
		r.Worst, r.WorstAt = tolerance.CantTell, b.Where+", "+r.Missing[0]+", which wasn't read"
	}
	return r, nil
}

type rodKeep func(measure, where string, spec tolerance.Spec, at ...tolerance.Bracket) (tolerance.Finding, error)

// spread adds a finding on the spread of those of a line that were read.
func (b RodBore) spread(list *[]tolerance.Finding, keep rodKeep, measure, where string, spec tolerance.Spec, line []tolerance.Bracket, of func(tolerance.Bracket, ...tolerance.Bracket) tolerance.Bracket) error {
	read := make([]tolerance.Bracket, 0, len(line))
	for _, d := range line {
		if !d.IsZero() {
			read = append(read, d)
		}
	}
	if len(read) < 2 {
		return nil
	}
	f, err := keep(measure, ", "+where, spec, of(read[0], read[1:]...))
	*list = append(*list, f)
	return err
}

func (b RodBore) check() error {
	if len(b.Planes) == 0 || len(b.Directions) == 0 || len(b.Planes) > 100 || len(b.Directions) > 100 {
		return &InputError{b.Where + ", planes and directions", fmt.Sprint(len(b.Planes), " × ", len(b.Directions)), "from 1 to 100 each"}
	}
	if len(b.Sizes) != len(b.Planes) {
		return &InputError{b.Where + ", rows of diameters", fmt.Sprint(len(b.Sizes)), fmt.Sprint("one for each of ", len(b.Planes), " planes")}
	}
	read := 0
	for i, row := range b.Sizes {
		if len(row) != len(b.Directions) {
			return &InputError{b.Where + ", " + b.Planes[i] + ", diameters", fmt.Sprint(len(row)), fmt.Sprint("one for each of ", len(b.Directions), " directions")}
		}
		for k, d := range row {
			if d.IsZero() {
				continue
			}
			read++
			if err := thickBracket("", d); err != nil {
				return b.diameterError(i, k, err)
			}
		}
	}
	if read < 2 {
		return &InputError{b.Where + ", diameters", fmt.Sprint(read), "two at least"}
	}
	return nil
}

// diameterError names the diameter that an error is about.
func (b RodBore) diameterError(plane, direction int, err error) error {
	if e, ok := err.(*InputError); ok {
		e.Field = b.Where + ", " + b.Planes[plane] + ", " + b.Directions[direction]
	}
	return err
}
