package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// A FaceGrid is a face measured by its heights over a surface plate, a bridge
// or a machine's table, at stations in rows and columns: X along the crankshaft
// and Y across. Unlike a straight-edge it sees a twist, and it gives flatness
// in the standard's sense.
type FaceGrid struct {
	Where string       // "head"
	Grid  form.Grid    // the heights, out of the metal
	Error units.Length // each height lies within ± this of the true one; 0 for exact
	// Flat is the limit of flatness in the standard's sense, as a drawing
	// gives it. Limits are those of the gap under a straight-edge, as manuals
	// do: they are judged along the rows (lengthwise), the columns (across) and
	// the diagonals.
	Flat   tolerance.Spec
	Limits FaceLimits // local ones are left to the straight-edge
	Tunnel CamTunnel  // of a head with the camshaft in it
}

// A GridReport is what follows from the heights of a face. Stations count
// along the rows, from 0.
type GridReport struct {
	// Flatness is the least distance of two parallel planes that hold the face
	// (minimum zone). With errors of ±e it may be 2e more or less.
	Flatness tolerance.Bracket    `json:"flatness"`
	Zone     form.FlatnessLengths `json:"-"` // the planes, and the stations that they rest on
	// OnCorners is how far the highest station stands over the lowest, set
	// level on three corners: what a machine must cut that is so set, where
	// that of Flatness takes the best tilt.
	OnCorners tolerance.Bracket `json:"onCorners"`
	Lines     []LineReport      `json:"lines"`   // the worst row, the worst column, and diagonals with three stations or more
	Finding   tolerance.Finding `json:"finding"` // of the flatness

	Tunnel   tolerance.Finding  `json:"tunnel,omitzero"` // of the cam tunnel, where it was measured
	Standing tolerance.Standing `json:"standing"`        // the worst of flatness and lines that have a limit
	Remedy   FaceRemedy         `json:"remedy"`          // what follows
	Next     string             `json:"next"`            // what to do next, in words
}

// Assess judges a face by its heights. It sees the stations alone: what lies
// between them is not measured. Local limits are left to the straight-edge.
//
// It fails with an [InputError] for an error below zero, as package form does
// for heights that make no face, and as [tolerance.Assess] does.
func (g FaceGrid) Assess() (GridReport, error) {
	var r GridReport
	if g.Error < 0 || !g.Error.InRange() {
		return r, &InputError{"error of a height", g.Error.String(), "0 mm or more"}
	}
	var err error
	if r.Zone, err = g.Grid.Flatness(form.MZPL); err != nil {
		return r, err
	}
	corners, err := g.Grid.Flatness(form.ThreePoints)
	if err != nil {
		return r, err
	}
	r.Flatness, r.OnCorners = g.within(r.Zone.FLTt), g.within(corners.FLTt)
	if r.Finding, err = tolerance.Assess("flatness", g.Where, g.Flat, r.Flatness); err != nil {
		return r, err
	}
	if r.Lines, err = g.lines(); err != nil {
		return r, err
	}
	f := FaceReport{Lines: r.Lines}
	if !g.Flat.IsZero() {
		f.Lines = append([]LineReport{{Name: "the face as a whole", Departure: r.Flatness, Finding: r.Finding}}, f.Lines...)
	}
	f.Lines = limitedLines(f.Lines)
	f.stand()
	err = Face{Where: g.Where, Tunnel: g.Tunnel}.decide(&f)
	r.Tunnel, r.Standing, r.Remedy, r.Next = f.Tunnel, f.Standing, f.Remedy, f.Next
	return r, err
}

// within is a departure with the errors of the heights: planes or lines that
// hold the heights as read hold the true ones once each is moved out by the
// error, and the other way round.
func (g FaceGrid) within(departure units.Length) tolerance.Bracket {
	e := g.Error.Add(g.Error)
	return spanOf(max(departure.Sub(e), 0), tolerance.Closed, departure.Add(e), tolerance.Closed)
}

// limitedLines are those that a limit is given for; without any, all.
func limitedLines(lines []LineReport) (limited []LineReport) {
	for _, l := range lines {
		if !l.Finding.Spec.IsZero() {
			limited = append(limited, l)
		}
	}
	if len(limited) == 0 {
		return lines
	}
	return limited
}

// lines are the worst row and column, and both diagonals where they have
// stations enough.
func (g FaceGrid) lines() (lines []LineReport, err error) {
	columns, rows := g.Grid.Columns, len(g.Grid.Heights)/g.Grid.Columns
	add := func(name string, d Direction, departure units.Length) error {
		l := LineReport{Name: name, Direction: d, Departure: g.within(departure)}
		if l.Finding, err = tolerance.Assess("departure from straight", name, g.Limits.of(d), l.Departure); err != nil {
			return err
		}
		lines = append(lines, l)
		return nil
	}
	if columns > 2 {
		worst, at, err := g.worst(rows, func(i int) []int { return stationsOf(i*columns, 1, columns) }, g.Grid.StepX)
		if err == nil {
			err = add("row "+strconv.Itoa(at+1), Lengthwise, worst)
		}
		if err != nil {
			return nil, err
		}
	}
	if rows > 2 {
		worst, at, err := g.worst(columns, func(i int) []int { return stationsOf(i, columns, rows) }, g.Grid.StepY)
		if err == nil {
			err = add("column "+strconv.Itoa(at+1), Across, worst)
		}
		if err != nil {
			return nil, err
		}
	}
	// Stations lie on a diagonal at every whole part of both sides.
	parts := gcd(columns-1, rows-1)
	if parts < 2 {
		return lines, nil
	}
	down, along := (rows-1)/parts*columns, (columns-1)/parts
	for i, name := range []string{"diagonal from the first station", "diagonal to the first station of the last row"} {
		line := stationsOf(0, down+along, parts+1)
		if i == 1 {
			line = stationsOf(columns-1, down-along, parts+1)
		}
		worst, _, err := g.worst(1, func(int) []int { return line }, units.Millimetre) // straightness doesn't ask how long a step is
		if err == nil {
			err = add(name, Diagonal, worst)
		}
		if err != nil {
			return nil, err
		}
	}
	return lines, nil
}

// worst is the greatest departure from straight of several lines of stations,
// evenly spaced, and which line has it.
func (g FaceGrid) worst(lines int, stations func(int) []int, step units.Length) (worst units.Length, at int, err error) {
	var heights []units.Length
	for i := range lines {
		heights = heights[:0]
		for _, s := range stations(i) {
			heights = append(heights, g.Grid.Heights[s])
		}
		s, err := form.Heights{Step: step, Heights: heights}.Straightness(form.MZLI)
		if err != nil {
			return 0, 0, err
		}
		if s.STRt > worst {
			worst, at = s.STRt, i
		}
	}
	return worst, at, nil
}

// stationsOf are n stations, from the first on by the step.
func stationsOf(first, step, n int) []int {
	s := make([]int, n)
	for i := range s {
		s[i] = first + i*step
	}
	return s
}

func gcd(a, b int) int {
	for b > 0 {
		a, b = b, a%b
	}
	return a
}
