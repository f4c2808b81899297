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
	field string              // behind them
}

func (e *entry) place() string {
	path := e.path
	if e.k >= 0 {
		path = inspection.Index(path, e.k)
	}
	if e.j >= 0 {
		path = inspection.Index(path, e.j)
	}
	return path + e.field
}

// enter adds a reading to the set, if it was taken.
func (x *inspecting) enter(r inspection.Reading, e entry) {
	if r.Taken {
		x.values, x.set = append(x.values, r), append(x.set, e)
	}
}

// proof proofreads the set and begins the next. near is about where its
// readings must be, 0 where nothing says so; of two readings it alone can tell.
func (x *inspecting) proof(near units.Length) {
	if !x.clear(near) {
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
	x.values, x.set = x.values[:0], x.set[:0]
}

// clear reports whether the readings lie so near each other, and to where they
// must be, that none can be a slip: that is most often so, and takes no time to
// see. It is the nearness at which package proofread takes them to agree.
func (x *inspecting) clear(near units.Length) bool {
	if len(x.values) == 0 {
		return true
	}
	least, greatest := units.Length(1)<<61, -units.Length(1)<<61
	for i := range x.values {
		lo, loEnd := x.values[i].Value.Lower()
		hi, hiEnd := x.values[i].Value.Upper()
		if loEnd == tolerance.Absent || hiEnd == tolerance.Absent {
			return false
		}
		middle := lo/2 + hi/2
		least, greatest = min(least, middle), max(greatest, middle)
	}
	if near > 0 && (least < near-near/5 || greatest > near+near/5) {
		return false
	}
	return greatest-least <= min(least/10, 50*units.Micrometre)
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
			for i := range x.pistons {
				if p := &x.pistons[i]; k < len(p.doc.Skirt) {
					r := &p.doc.Skirt[k].Across
					x.enter(*r, entry{&p.piston, r, x.in.names[i].heights[k], x.in.paths[p.here].skirt[k], -1, -1, ""})
				}
			}
			x.proof(near)
			for i := range x.pistons {
				if p := &x.pistons[i]; k < len(p.doc.Skirt) {
					r := &p.doc.Skirt[k].Along
					x.enter(*r, entry{&p.piston, r, x.in.names[i].heights[k], x.in.paths[p.here].along[k], -1, -1, ""})
				}
			}
			x.proof(near)
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
		for i := range x.pistons {
			for _, list := range set.lists {
				x.enterPin(i, list)
			}
		}
		x.proof(set.near)
	}
}

var (
	pinOnly      = [...]int{pinAtBosses, pinAtSmallEnd}
	bossOnly     = [...]int{pinBosses}
	smallEndOnly = [...]int{pinSmallEnd}
)

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
			x.enter(*r, entry{t, r, x.in.names[i].sections[list][k], x.in.paths[p.here].lists[list], k, j, ""})
		}
	}
}
