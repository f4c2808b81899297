package piston

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

// An entry is one reading of a set that is proofread.
type entry struct {
	t     *tally              // of the part that rests on it
	r     *inspection.Reading // nil where it isn't one by itself
	where string              // "piston 1, 18 mm up the skirt"
	path  string              // of its list
	k, j  int                 // its places in the list; −1 for none
}

func (e *entry) place() string {
	path := e.path
	if e.k >= 0 {
		path = inspection.Index(path, e.k)
	}
	if e.j >= 0 {
		path = inspection.Index(path, e.j)
	}
	return path
}

// enter adds a reading to the set, if it was taken: first to its ends alone, and
// where those don't show that all is well, to the list.
func (x *inspecting) enter(r inspection.Reading, e entry) {
	if !r.Taken {
		return
	}
	if x.storing {
		x.values, x.set = append(x.values, r), append(x.set, e)
		return
	}
	lo, loEnd := r.Value.Lower()
	hi, hiEnd := r.Value.Upper()
	if loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
		x.wide = true
		return
	}
	middle := lo/2 + hi/2
	if x.entered == 0 {
		x.least, x.greatest = middle, middle
	}
	x.least, x.greatest = min(x.least, middle), max(x.greatest, middle)
	x.entered++
}

// proof proofreads the set of those readings that each enters. near is about
// where they must be, 0 where nothing says so; of two readings it alone can
// tell.
func (x *inspecting) proof(near units.Length, each func()) {
	x.entered, x.wide, x.storing = 0, false, false
	each()
	if x.clear(near) {
		return
	}
	x.values, x.set, x.storing = x.values[:0], x.set[:0], true
	each()
	if odd := inspection.ProofreadReadings(nil, nil, nil, x.values); len(odd) > 0 {
		x.nameSlips()
	} else if near > 0 {
		for i := range x.values {
			if text, odd := oddSize(x.values[i].Value, near); odd {
				x.slip(&x.set[i], text)
			}
		}
	}
}

// clear reports whether the readings lie so near each other, and to where they
// must be, that none can be a slip: that is most often so, and takes no time to
// see. It is the nearness at which package proofread takes them to agree.
func (x *inspecting) clear(near units.Length) bool {
	if x.wide || near > 0 && x.entered > 0 && (x.least < near-near/5 || x.greatest > near+near/5) {
		return false
	}
	return x.entered == 0 || x.greatest-x.least <= min(x.least/10, 50*units.Micrometre)
}

// nameSlips enters the slips of the set with their places. It is proofread again
// for them, which is seldom.
func (x *inspecting) nameSlips() {
	paths, places := make([]string, len(x.set)), make([]string, len(x.set))
	for i := range x.set {
		paths[i], places[i] = strconv.Itoa(i), x.set[i].where
	}
	for _, s := range inspection.ProofreadReadings(nil, paths, places, x.values) {
		if i, err := strconv.Atoi(s.Path); err == nil {
			x.slip(&x.set[i], s.Text)
		}
	}
}

// slip enters a reading that looks like one. It is left out of what follows.
func (x *inspecting) slip(e *entry, text string) {
	s := inspection.Slip{Path: e.place(), What: e.where, Text: text}
	x.doubtful(e.t, s)
	if e.r != nil {
		x.odd = append(x.odd, e.r)
	}
}

// doubtful enters a slip that a part rests on.
func (x *inspecting) doubtful(t *tally, s inspection.Slip) {
	x.report.Slips = append(x.report.Slips, s)
	t.rest(s.Path)
	if t.suspect == "" {
		t.suspect = s.What + ": " + s.Text
	}
}

// good reports whether a reading was taken and doesn't look like a slip.
func (x *inspecting) good(r *inspection.Reading) bool {
	if !r.Taken {
		return false
	}
	return !slices.Contains(x.odd, r)
}

// oddSize reports a size that is a fifth or more off from where it must be
// about: no wear does that, so a decimal point, a unit or a digit is wrong. The
// text says which, as far as it has a name.
func oddSize(size tolerance.Bracket, near units.Length) (text string, odd bool) {
	lo, _ := size.Lower()
	hi, _ := size.Upper()
	if fifth := near / 5; hi > near-fifth && lo < near+fifth {
		return "", false
	}
	text = size.String() + ", where about " + near.String() + " is expected"
	about := tolerance.Exactly(near)
	if found, err := proofread.CheckBrackets(about, about, about, size); err == nil && len(found.Odd) > 0 {
		text += ": " + found.Odd[0].Causes[0].String()
	}
	return text, true
}

// middleOf is about where a size must be; 0 where nothing says so.
func middleOf(bands ...tolerance.Bracket) units.Length {
	for _, b := range bands {
		if lo, end := b.Lower(); end != tolerance.Absent && lo > 0 {
			return lo
		}
		if hi, end := b.Upper(); end != tolerance.Absent && hi > 0 {
			return hi
		}
	}
	return 0
}

// proofreadSizes proofreads skirts and pins, over all pistons.
func (x *inspecting) proofreadSizes() {
	if l := x.in.limits.Skirt; l != nil {
		near := middleOf(x.in.newSkirt, l.Size.New.Interval(), l.Size.Wear.Interval(), tolerance.Exactly(x.in.limits.Standard))
		for k := range l.Heights {
			x.proof(near, func() { x.enterSkirt(k, true) })
			x.proof(near, func() { x.enterSkirt(k, false) })
		}
	}
	l := x.in.limits.Pins
	if l == nil {
		return
	}
	pin := middleOf(l.NewPin.Interval(), l.Size.New.Interval(), l.Size.Wear.Interval())
	for _, set := range [...]struct {
		lists []int
		near  units.Length
	}{
		{pinOnly[:], pin}, {bossOnly[:], middleOf(l.NewBoss.Interval(), tolerance.Exactly(pin))}, {smallEndOnly[:], middleOf(l.NewSmallEnd.Interval(), tolerance.Exactly(pin))},
	} {
		x.proof(set.near, func() {
			for i := range x.pistons {
				for _, list := range set.lists {
					x.enterPin(i, list)
				}
			}
		})
	}
}

var (
	pinOnly      = [...]int{pinAtBosses, pinAtSmallEnd}
	bossOnly     = [...]int{pinBosses}
	smallEndOnly = [...]int{pinSmallEnd}
)

// enterSkirt adds what was read of all skirts at a height, one way.
func (x *inspecting) enterSkirt(k int, across bool) {
	for i := range x.pistons {
		p := &x.pistons[i]
		if k >= len(p.doc.Skirt) {
			continue
		}
		r, path := &p.doc.Skirt[k].Across, x.in.paths[p.here].skirt[k]
		if !across {
			r, path = &p.doc.Skirt[k].Along, x.in.paths[p.here].along[k]
		}
		x.enter(*r, entry{&p.piston, r, x.in.names[i].heights[k], path, -1, -1})
	}
}

// enterPin adds a list of a pin's readings to the set.
func (x *inspecting) enterPin(i, list int) {
	p := &x.pistons[i]
	t := &p.pin
	switch list {
	case pinBosses:
		t = &p.piston
	case pinSmallEnd:
		t = &p.rod
	}
	for k, section := range p.doc.Pin.list(list) {
		for j := range section {
			r := &section[j]
			x.enter(*r, entry{t, r, x.in.names[i].sections[list][k], x.in.paths[p.here].lists[list], k, j})
		}
	}
}
