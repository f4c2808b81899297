package cylinder

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A facesReady is the limits of one kind of face made ready: of the block's, or
// of the heads'.
type facesReady struct {
	l         *LimitsFace
	step      inspection.Step
	part      string // "block face"
	list      string // "blockFaces", in the readings
	lines     []LimitsLine
	heightAt  []string
	direction [Diagonal + 1]measured[units.Length] // of a line, by its direction
	local     []measured[units.Length]
	flat      measured[units.Length] // of a grid
	height    measured[units.Length]
	bow       measured[units.Length] // of a cam tunnel; not asked where there is none
	plain     bool                   // nothing but lines is judged
	banks     []faceNames
}

// faceNames are the names of one bank's face.
type faceNames struct {
	where     string   // "block face, bank 2"
	path      string   // "blockFaces[1]", for a list in the usual order
	heights   string   // "blockFaces[1].heights"
	bank      string   // "bank 2"; empty where there is one alone
	lineNames []string // "block face, bank 2, left edge"
	paths     []string // of the lines, in the readings, for a list in the usual order
}

// face makes the limits of a face ready.
func (in *Inspector) face(l *LimitsFace, step inspection.Step, part, list, path string) *facesReady {
	f := &facesReady{l: l, step: step, part: part, list: list, lines: l.Lines, heightAt: l.HeightAt}
	if f.lines == nil {
		for _, line := range SixLines() {
			f.lines = append(f.lines, LimitsLine{line.Name, line.Direction})
		}
	}
	if f.heightAt == nil {
		f.heightAt = []string{""}
	}
	const gap = "gap under the straight-edge"
	overall := ready(in, l.Overall, path+".overall", gap)
	for d, own := range [...]struct {
		path  string
		limit inspection.Limit
	}{Lengthwise: {".lengthwise", l.Lengthwise}, Across: {".across", l.Across}, Diagonal: {".diagonal", l.Diagonal}} {
		if f.direction[d] = overall; !own.limit.IsZero() {
			f.direction[d] = ready(in, own.limit, path+own.path, gap)
		}
	}
	for i, local := range l.Local {
		f.local = append(f.local, ready(in, local.Limit, path+"."+inspection.Index("local", i)+".limit", "gap within "+local.Over.String()))
	}
	if l.Grid != nil {
		f.flat = ready(in, l.Grid.Flatness, path+".grid.flatness", "flatness")
	}
	if !f.asked() {
		f.lines = nil
	}
	f.height = ready(in, l.Height, path+".height", "height")
	f.plain = l.Local == nil && l.Grid == nil
	for i := range in.banks {
		n := faceNames{where: part, path: inspection.Index(list, i)}
		n.heights = n.path + ".heights"
		if len(in.banks) > 1 {
			n.bank = "bank " + strconv.Itoa(i+1)
			n.where += ", " + n.bank
		}
		for k, line := range f.lines {
			n.lineNames = append(n.lineNames, n.where+", "+line.Name)
			n.paths = append(n.paths, inspection.Index(n.path+".lines", k))
		}
		f.banks = append(f.banks, n)
	}
	in.lengths += len(in.banks) * (len(f.lines) + len(f.local) + 2)
	return f
}

// asked reports whether flatness is.
func (f *facesReady) asked() bool {
	asked := len(f.local) > 0 || f.l.Grid != nil
	for d := range f.direction {
		asked = asked || f.direction[d].asked()
	}
	return asked
}

// fits refuses readings of a face that the limits don't ask for.
func (f *facesReady) fits(r *ReadingsFace, bank, banks int) error {
	if f == nil {
		return notAsked("bank")
	}
	if bank > banks {
		return badAt("bank", "bank", strconv.Itoa(bank), "from 1 to "+strconv.Itoa(banks)+", as the limits have")
	}
	heights := len(f.heightAt)
	if f.l.Height.IsZero() {
		heights = 0
	}
	lines, grid := len(f.lines), f.l.Grid
	if grid != nil {
		lines = 0
	}
	for _, c := range [...]struct {
		path       string
		have, most int
	}{{"lines", len(r.Lines), lines}, {"local", len(r.Local), len(f.local)}, {"heights", len(r.Heights), heights}} {
		if c.have > c.most {
			return badAt(c.path, c.path, strconv.Itoa(c.have), strconv.Itoa(c.most)+" at most, as the limits have")
		}
	}
	if r.OffBefore.Taken && (f.l.Skim == nil || f.l.Skim.MostOff == 0) {
		return notAsked("offBefore")
	}
	switch {
	case grid == nil && len(r.Grid) > 0:
		return notAsked("grid")
	case grid != nil && len(r.Grid) > grid.Rows:
		return badAt("grid", "rows", strconv.Itoa(len(r.Grid)), strconv.Itoa(grid.Rows)+" at most, as the limits have")
	}
	for i, row := range r.Grid {
		if len(row) > grid.Columns {
			return badAt(inspection.Index("grid", i), "columns", strconv.Itoa(len(row)), strconv.Itoa(grid.Columns)+" at most, as the limits have")
		}
	}
	return nil
}

func (x *inspecting) blockFaces() error {
	if x.in.faces == nil {
		return nil
	}
	for bank := range x.in.banks {
		at, r := len(x.r.Faces), &ReadingsFace{}
		for i := range x.r.Faces {
			if x.r.Faces[i].Bank == bank+1 {
				at, r = i, &x.r.Faces[i].ReadingsFace
			}
		}
		if err := x.face(x.in.faces, bank, at, r, nil); err != nil {
			return err
		}
	}
	return nil
}

func (x *inspecting) heads() error {
	if x.in.heads == nil {
		return nil
	}
	for bank := range x.in.banks {
		at, h := len(x.r.Heads), &ReadingsHead{}
		for i := range x.r.Heads {
			if x.r.Heads[i].Bank == bank+1 {
				at, h = i, &x.r.Heads[i]
			}
		}
		if err := x.face(x.in.heads, bank, at, &h.ReadingsFace, h); err != nil {
			return err
		}
	}
	return nil
}

// A oneFace is one face while it is judged.
type oneFace struct {
	*facesReady
	faceNames
	listed bool // the list stands in the usual order, so that the paths do
	r      *ReadingsFace
	level  tally               // of flatness
	high   tally               // of the height
	bent   *tolerance.Finding  // the cam tunnel, where it is past its limits
	bowed  tolerance.Standing  // of the cam tunnel
	bracks []tolerance.Bracket // of the heights
	few    [4]tolerance.Bracket
}

// face judges one face and decides on it.
func (x *inspecting) face(f *facesReady, bank, at int, r *ReadingsFace, head *ReadingsHead) error {
	one := oneFace{facesReady: f, faceNames: f.banks[bank], listed: at == bank, r: r}
	if !one.listed {
		one.path = inspection.Index(f.list, at)
		one.heights = one.path + ".heights"
	}
	one.level = tallyOf(f.step, f.part, one.bank)
	one.high = tallyOf(f.step, f.part, one.bank)
	if err := x.heights(&one); err != nil {
		return err
	}
	var remedy FaceReport
	var err error
	if f.l.Grid != nil {
		remedy, err = x.byGrid(&one, head)
	} else {
		remedy, err = x.byLines(&one, head)
	}
	if err != nil {
		return err
	}
	var care *inspection.Care
	if head != nil {
		care = &x.in.limits.Head.Care
		x.tests(&one.level, care, &head.Condition, one.path, one.where)
	}
	if !one.level.known() && !one.high.known() && (head == nil || head.Condition == (inspection.Condition{})) {
		return nil
	}
	d, err := x.faceDecision(&one, &remedy)
	if err != nil {
		return err
	}
	if head != nil {
		d = head.Condition.Overrule(*care, d)
	}
	x.cut = x.cut || d.Action == inspection.ReconditionTo
	switch {
	case head == nil:
		x.condemn(&d)
	case d.Action >= inspection.Replace:
		x.order(inspection.Order{Step: f.step, What: "head", Count: 1, For: forBank(one.bank), Sure: true})
	}
	x.keep(d)
	return nil
}

func forBank(bank string) []string {
	if bank == "" {
		return nil
	}
	return []string{bank}
}

// heights judges the height of the part.
func (x *inspecting) heights(one *oneFace) error {
	if !one.height.asked() {
		return nil
	}
	instrument := with(one.l.HeightWith, "height gauge or micrometer")
	var at string // of the least, which stops a skim
	var least units.Length
	one.bracks = one.few[:0]
	for i, name := range one.heightAt {
		var h inspection.Reading
		if i < len(one.r.Heights) {
			h = one.r.Heights[i]
		}
		if !h.Taken {
			where := one.where
			if name != "" {
				where += ", " + name
			}
			x.miss(&one.high, inspection.Index(one.heights, i), "height", where, instrument, one.height.printed)
			continue
		}
		h, err := h.Within(one.l.HeightError)
		if err != nil {
			return inspection.At(inspection.Index(one.heights, i), err)
		}
		one.high.taken++
		if lo, _ := h.Value.Lower(); len(one.bracks) == 0 || lo < least {
			least, at = lo, name
		}
		one.bracks = append(one.bracks, h.Value)
	}
	if len(one.bracks) == 0 {
		return nil
	}
	if at != "" {
		at = "least at " + at
	}
	if near, ok := middleOf(one.height.spec); ok {
		for i, b := range one.bracks {
			if text, odd := oddSize(b, near); odd {
				x.slip(&one.high, inspection.Slip{Path: inspection.Index(one.heights, i), What: one.where, Text: text})
			}
		}
	}
	_, err := x.length(&one.high, &one.height, one.where, one.heights, at, one.bracks...)
	return err
}

// linePath is where a line stands in the readings.
func (one *oneFace) linePath(k int) string {
	if one.listed {
		return one.paths[k]
	}
	return inspection.Index(one.path+".lines", k)
}
