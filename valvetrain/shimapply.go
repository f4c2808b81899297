package valvetrain

import (
	"fmt"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// check refuses what can't be planned.
func (h *ShimHead) check() error {
	if n := len(h.Valves); n < 1 || n > shimValvesMost {
		return &InputError{"valves of the head", fmt.Sprint(n), "from 1 to 64"}
	}
	if n := len(h.Drawer); n > shimDrawerMost {
		return &InputError{"shims in the drawer", fmt.Sprint(n), "at most 256"}
	}
	if n := len(h.Series); n > seriesMost {
		return &InputError{"sizes of the series", fmt.Sprint(n), "at most 512"}
	}
	for i := range h.Valves {
		if err := h.Valves[i].check(); err != nil {
			return shimField(h.name(i), err)
		}
	}
	for i, s := range h.Drawer {
		if err := shimPiece("", s.Thickness); err != nil {
			return shimField(shimName("in the drawer", i, s), err)
		}
	}
	for i, s := range h.Series {
		if err := shimPiece("", s.Thickness); err != nil {
			return shimField(shimName("size", i, s), err)
		}
	}
	return nil
}

// name is what an error calls a valve.
func (h *ShimHead) name(i int) string {
	if h.Valves[i].Where != "" {
		return inputText(h.Valves[i].Where)
	}
	return fmt.Sprint("valve ", i+1)
}

// widest is the widest band of the head.
func (h *ShimHead) widest() tolerance.Band {
	var band tolerance.Band
	most := units.Length(-1)
	for i := range h.Valves {
		if w, _ := h.Valves[i].Wanted.Interval().Width(); w > most {
			most, band = w, h.Valves[i].Wanted
		}
	}
	return band
}

// apply writes the assignment into the moves.
func (p *ShimPlanner) apply(h *ShimHead, moves []ShimMove) {
	for i, j := range p.best {
		r := &p.rows[i]
		m := &moves[r.valve]
		switch {
		case p.cols[j].buyer != shimNone:
			m.Action, m.From, m.Shim = ShimToBuy, r.size, h.Series[r.size].Thickness
		case p.cols[j].valve == r.valve:
			continue
		case p.cols[j].valve >= 0:
			m.Action, m.From, m.Shim = ShimFromValve, p.cols[j].valve, p.cols[j].shim
		default:
			m.Action, m.From, m.Shim = ShimFromDrawer, p.cols[j].spare, p.cols[j].shim
		}
		v := &h.Valves[r.valve]
		m.After = v.With(m.Shim)
		m.Then = v.Wanted.Judge(m.After)
	}
}

// sum adds the moves up, and lists what is to buy and what is left over.
func (p *ShimPlanner) sum(h *ShimHead, plan *ShimPlan) {
	valves, drawer := len(h.Valves), len(h.Drawer)
	if n := valves + drawer; cap(p.used) < n {
		p.used = make([]bool, n)
	}
	p.used = p.used[:valves+drawer]
	clear(p.used)
	if cap(p.pieces) < len(h.Series) {
		p.pieces = make([]int, len(h.Series))
	}
	p.pieces = p.pieces[:len(h.Series)]
	clear(p.pieces)
	var twice, greatest units.Length
	for i := range plan.Moves {
		m := &plan.Moves[i]
		switch m.Action {
		case ShimToBuy:
			p.pieces[m.From]++
			plan.Bought++
		case ShimFromDrawer:
			p.used[valves+m.From] = true
		default: // its own shim, or another valve's
			p.used[m.From] = true
		}
		if m.Now == tolerance.Within && m.Action != ShimStays {
			plan.Disturbed++
		}
		if m.Then == tolerance.Within {
			off := (shimTwiceMiddle(m.After) - h.Valves[i].twiceAim()).Abs()
			twice, greatest = twice+off, max(greatest, off)
			m.Off = (off + units.Picometre) / 2
			plan.InBand++
		}
	}
	plan.Off, plan.Greatest = (twice+units.Picometre)/2, (greatest+units.Picometre)/2
	for k, n := range p.pieces {
		if n > 0 {
			plan.Buy = append(plan.Buy, ShimBuy{k, n})
		}
	}
	left := 0
	for _, used := range p.used {
		if !used {
			left++
		}
	}
	if left == 0 {
		return
	}
	plan.Left = make([]ShimLeft, 0, left)
	for i, used := range p.used {
		switch {
		case used:
		case i < valves:
			plan.Left = append(plan.Left, ShimLeft{From: i})
		default:
			plan.Left = append(plan.Left, ShimLeft{From: i - valves, Spare: true})
		}
	}
}
