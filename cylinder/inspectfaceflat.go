package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// byLines judges a face by its straight-edge.
func (x *inspecting) byLines(one *oneFace, head *ReadingsHead) (FaceReport, error) {
	t := &one.level
	instrument := with(one.l.With, "straight-edge and blades")
	read := false
	lines := make([]Line, len(one.lines))
	gaps := make([]Gap, 0, len(one.lines))
	for k, line := range one.lines {
		lines[k] = Line{Name: one.lineNames[k], Direction: line.Direction}
		var r ReadingsLine
		if k < len(one.r.Lines) {
			r = one.r.Lines[k]
		}
		l := &lines[k]
		l.Seat = r.Seat
		printed := one.direction[line.Direction].printed
		switch {
		case r.Seat == Rocks || r.Front.Taken || r.Rear.Taken:
			for e, end := range [...]struct {
				path, where string
				r           inspection.Reading
			}{{".front", ", front end", r.Front}, {".rear", ", rear end", r.Rear}} {
				if l.Ends[e] = end.r.Value; !end.r.Taken {
					x.miss(t, one.linePath(k)+end.path, "gap under the end of the straight-edge", l.Name+end.where, instrument, printed)
				}
			}
		case !r.Gap.Taken:
			x.miss(t, one.linePath(k)+".gap", "gap under the straight-edge", l.Name, instrument, printed)
		}
		if r.Gap.Taken {
			from := len(gaps)
			gaps = append(gaps, Gap{Gap: r.Gap.Value})
			l.Gaps = gaps[from : from+1 : from+1]
		}
		if r.Gap.Taken || r.Front.Taken || r.Rear.Taken {
			read = true
			t.taken++
		}
	}
	for k := range one.r.Local {
		if one.r.Local[k].Taken {
			t.taken++
		}
	}
	if err := x.bow(one, head); err != nil {
		return FaceReport{}, err
	}
	if !read {
		return FaceReport{}, x.localGaps(one, nil)
	}
	return x.gaps(one, lines)
}

// gaps judges the lines. A face that keeps its limits on every line is settled
// by them; what else there is to say of one that may not, Face says.
func (x *inspecting) gaps(one *oneFace, lines []Line) (FaceReport, error) {
	t := &one.level
	for k := range lines {
		l := &lines[k]
		whole := x.wholeLine(l)
		if len(whole) == 0 {
			continue
		}
		f, err := x.judge(t, &one.direction[l.Direction], l.Name, one.linePath(k), whole...)
		if err != nil {
			return FaceReport{}, err
		}
		if f == nil {
			continue
		}
		if f.Standing == tolerance.CantTell && l.Seat == Rocks {
			f.Settle = rockSettle
		}
		settle := ""
		if f.Standing == tolerance.CantTell {
			settle = l.Name + ": " + f.Settle
		}
		x.note(t, f.Standing, !f.Spec.New.IsZero(), settle, "")
	}
	if one.plain && t.rank <= rankUsable && t.rank >= rankAsNew && t.missing == 0 && diagonals(lines) {
		return FaceReport{Remedy: KeepFace}, nil
	}
	face := Face{Where: one.where, Lines: lines, Limits: one.faceLimits()}
	if err := x.localGaps(one, &face); err != nil {
		return FaceReport{}, err
	}
	report := face.shape()
	if doubts := face.doubts(); len(doubts) > 0 && doubts[0] == NoDiagonals {
		t.stands("no diagonal was measured, and a twist shows nothing along edges and ends", "lay the straight-edge along both diagonals")
	}
	return report, nil
}

// shape is how far a face departs from straight and from flat, as
// [Face.Assess] has it, without its findings.
func (f Face) shape() FaceReport {
	var r FaceReport
	departures := make([]tolerance.Bracket, 0, len(f.Lines))
	for _, l := range f.Lines {
		if d := l.Departure(); !d.IsZero() {
			departures = append(departures, d)
		}
	}
	_, r.Worst = tolerance.Extremes(departures...)
	r.twist(f.Lines)
	return r
}

// localGaps judges what is allowed within a short length: by the greatest gap
// under a short straight-edge, or else by every gap under the long one, where
// any was read, which none under a short one exceeds.
func (x *inspecting) localGaps(one *oneFace, face *Face) error {
	t := &one.level
	for k := range one.local {
		path := inspection.Index(one.path+".local", k)
		m := &one.local[k]
		if m.spec.IsZero() {
			rests(t, m, tolerance.CantTell, []tolerance.Bracket{{}})
			continue
		}
		read := k < len(one.r.Local) && one.r.Local[k].Taken
		if read { // the greatest anywhere, so it speaks for the whole face
			if _, err := x.length(t, m, one.where, path, "", one.r.Local[k].Value); err != nil {
				return err
			}
			continue
		}
		miss := func() {
			x.miss(t, path, "gap under a straight-edge of "+one.l.Local[k].Over.String(), one.where, with(one.l.With, "straight-edge and blades"), m.printed)
		}
		if face == nil {
			miss()
			continue
		}
		f, err := face.local(face.Limits.Local[k])
		if err != nil {
			return inspection.At(path, err)
		}
		x.found(t, m, &f, path, "")
		if f.Standing == tolerance.CantTell {
			miss()
		}
	}
	return nil
}

// wholeLine are the gaps that a line is judged by.
func (x *inspecting) wholeLine(l *Line) []tolerance.Bracket {
	whole := x.scratch[:0]
	for i := range l.Gaps {
		if l.Gaps[i].Over == 0 {
			whole = append(whole, l.Gaps[i].Gap)
		}
	}
	for _, e := range l.Ends {
		if !e.IsZero() {
			whole = append(whole, e)
		}
	}
	if len(whole) > 0 && l.Seat == Rocks {
		whole = append(whole[:0], l.Departure())
	}
	return whole
}

const rockSettle = "rock the straight-edge until the gaps under its two ends are alike, and try the blades there: that gap is the hump"

func diagonals(lines []Line) bool {
	for i := range lines {
		if lines[i].Direction == Diagonal {
			return true
		}
	}
	return false
}

// faceLimits are the limits as Face has them.
func (f *facesReady) faceLimits() FaceLimits {
	limits := FaceLimits{Lengthwise: f.direction[Lengthwise].spec, Across: f.direction[Across].spec, Diagonal: f.direction[Diagonal].spec}
	for k := range f.local {
		limits.Local = append(limits.Local, LocalLimit{f.l.Local[k].Over, f.local[k].spec})
	}
	return limits
}

// byGrid judges a face by its heights, once all are there.
func (x *inspecting) byGrid(one *oneFace, head *ReadingsHead) (FaceReport, error) {
	t, g := &one.level, one.l.Grid
	grid := FaceGrid{Where: one.where, Error: g.Error, Flat: one.flat.spec, Limits: one.faceLimits(),
		Grid: form.Grid{Columns: g.Columns, StepX: g.StepLengthwise, StepY: g.StepAcross, Heights: make([]units.Length, 0, g.Rows*g.Columns)}}
	for i := range g.Rows {
		for j := range g.Columns {
			var h inspection.Reading
			if i < len(one.r.Grid) && j < len(one.r.Grid[i]) {
				h = one.r.Grid[i][j]
			}
			if !h.Taken {
				path := inspection.Index(inspection.Index(one.path+".grid", i), j)
				x.miss(t, path, "height of the face", one.where+", row "+strconv.Itoa(i+1)+", column "+strconv.Itoa(j+1), with(one.l.With, "dial gauge over a plate"), one.flat.printed)
				continue
			}
			t.taken++
			q, _ := h.Value.Lower()
			grid.Grid.Heights = append(grid.Grid.Heights, q)
		}
	}
	if err := x.bow(one, head); err != nil {
		return FaceReport{}, err
	}
	if len(grid.Grid.Heights) != g.Rows*g.Columns {
		return FaceReport{}, nil
	}
	report, err := grid.Assess()
	if err != nil {
		return FaceReport{}, inspection.At(one.path+".grid", err)
	}
	x.found(t, &one.flat, &report.Finding, one.path+".grid", "")
	for i := range report.Lines {
		l := &report.Lines[i]
		l.Finding.Where = one.where + ", " + l.Finding.Where
		x.found(t, &one.direction[l.Direction], &l.Finding, one.path+".grid", "")
	}
	return FaceReport{Flatness: report.Flatness, Worst: report.Flatness}, nil
}

// bow judges the cam tunnel of a head, which comes before its face.
func (x *inspecting) bow(one *oneFace, head *ReadingsHead) error {
	if head == nil || x.in.limits.Head.CamTunnel == nil {
		return nil
	}
	t := &one.level
	path := one.path + ".camBow"
	if !head.CamBow.Taken {
		x.miss(t, path, "bow of the cam tunnel", one.where, "straight-edge and blades along the tunnel, caps torqued", one.bow.printed)
		return nil
	}
	t.taken++
	f, err := x.length(t, &one.bow, one.where, path, "", head.CamBow.Value)
	if err != nil || f == nil {
		return err
	}
	one.bowed = f.Standing
	if f.Standing >= tolerance.OutsideNewBand {
		one.bent = f
		t.rank = rankNone // a skim doesn't straighten it, so it is no reason for one
	}
	return nil
}
