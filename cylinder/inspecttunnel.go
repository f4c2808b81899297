package cylinder

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A tunnelReady is the limits of the main bearing tunnel made ready.
type tunnelReady struct {
	size, ovality, taper, straight, neighbour measured[units.Length]

	where    []string // "main 2", by its number less 1
	numbers  []string // "2"
	paths    []string // "mains[1].sizes", of a list in the usual order
	lines    []string // "mains[1].line"
	stations []string // "front, vertical"
	near     units.Length
	nearOk   bool
	vertical int // the direction of that name, for a line hone; −1 where there is none
}

func (in *Inspector) readyTunnel() {
	l := in.limits.Tunnel
	t := &tunnelReady{
		size:     ready(in, l.Size, "mainTunnel.size", "housing bore"),
		ovality:  ready(in, l.Ovality, "mainTunnel.ovality", "ovality of the housing"),
		taper:    ready(in, l.Taper, "mainTunnel.taper", "taper of the housing"),
		vertical: slices.Index(l.Directions, "vertical"),
	}
	if u := l.Line; u != nil {
		t.straight = ready(in, u.Straight, "mainTunnel.line.straight", "alignment of the tunnel")
		t.neighbour = ready(in, u.Neighbour, "mainTunnel.line.neighbour", "offset from the neighbours' line")
	}
	t.near, t.nearOk = middleOf(t.size.spec)
	for i := range l.Mains {
		t.numbers = append(t.numbers, strconv.Itoa(i+1))
		t.where = append(t.where, "main "+t.numbers[i])
		t.paths = append(t.paths, inspection.Index("mains", i)+".sizes")
		t.lines = append(t.lines, inspection.Index("mains", i)+".line")
	}
	for _, level := range l.Levels {
		for _, d := range l.Directions {
			t.stations = append(t.stations, level+", "+d)
		}
	}
	in.lengths += 4*l.Mains + 1
	in.tunnel = t
}

// fitsTunnel refuses housings that the limits don't ask for, and caps in
// another one's place.
func (x *inspecting) fitsTunnel() error {
	l := x.in.limits.Tunnel
	for i := range x.r.Mains {
		m := &x.r.Mains[i]
		bad := func(path, value, want string) error {
			return badAt(inspection.Index("mains", i)+"."+path, path, value, want)
		}
		switch {
		case l == nil:
			return inspection.At(inspection.Index("mains", i), notAsked("main"))
		case m.Main > l.Mains:
			return bad("main", strconv.Itoa(m.Main), "from 1 to "+strconv.Itoa(l.Mains)+", as the limits have")
		case len(m.Sizes) > len(l.Levels):
			return bad("sizes", strconv.Itoa(len(m.Sizes)), strconv.Itoa(len(l.Levels))+" at most, as the limits have levels")
		case m.Line.Taken && l.Line == nil:
			return inspection.At(inspection.Index("mains", i), notAsked("line"))
		case m.Crown.Taken && l.Hone == nil:
			return inspection.At(inspection.Index("mains", i), notAsked("crown"))
		}
		for k, row := range m.Sizes {
			if len(row) > len(l.Directions) {
				return bad(inspection.Index("sizes", k), strconv.Itoa(len(row)), strconv.Itoa(len(l.Directions))+" at most, as the limits have directions")
			}
		}
		mark := m.Mark
		if mark == "" {
			mark = x.in.tunnel.numbers[m.Main-1]
		}
		if err := inspection.Matched("main bearing cap", x.in.tunnel.where[m.Main-1], m.Cap, mark); err != nil {
			return inspection.At(inspection.Index("mains", i)+".cap", err)
		}
	}
	return nil
}

// A housingSeen is one housing on its way.
type housingSeen struct {
	m     *ReadingsMain
	index int
	tally tally
}

// mainTunnel judges the main bearing housings, and the line that they make.
func (x *inspecting) mainTunnel() error {
	l, ready := x.in.limits.Tunnel, x.in.tunnel
	if l == nil {
		return nil
	}
	housings := make([]housingSeen, l.Mains)
	absent := len(x.r.Mains)
	for i := range housings {
		housings[i].tally = tallyOf(inspection.StepMainTunnel, "main bearing housing", ready.where[i])
	}
	for i := range x.r.Mains {
		h := &housings[x.r.Mains[i].Main-1]
		h.m, h.index = &x.r.Mains[i], i
	}
	line := tallyOf(inspection.StepMainTunnel, "line of the main bearings", "")
	known := false
	for i := range housings {
		h := &housings[i]
		if h.m == nil {
			h.m, h.index = &ReadingsMain{}, absent
			absent++
		}
		if err := x.housing(h, i); err != nil {
			return err
		}
		x.tests(&h.tally, &l.Care, &h.m.Condition, inspection.Index("mains", h.index), ready.where[i])
		known = known || h.tally.known() || h.m.Condition != (inspection.Condition{})
	}
	if err := x.lineUp(housings, &line); err != nil {
		return err
	}
	if !known && !line.known() {
		return nil
	}
	return x.decideTunnel(housings, &line)
}

// housing judges one housing: all diameters, the ovality at each level and the
// taper along each direction, as MainTunnel does, in one finding each.
func (x *inspecting) housing(h *housingSeen, number int) error {
	l, ready, t := x.in.limits.Tunnel, x.in.tunnel, &h.tally
	var few [3 * 32]tolerance.Bracket
	n, levels := len(l.Directions), len(l.Levels)
	all := few[:0:32]
	across, along := few[32:32:64], few[64:64:96]
	instrument := with(l.With, "bore gauge, caps torqued and shells out")
	path := func() string {
		if h.index == number {
			return ready.paths[number]
		}
		return inspection.Index("mains", h.index) + ".sizes"
	}
	sizes := make([]tolerance.Bracket, levels*n) // zero where not read
	for i := range levels {
		for k := range n {
			var s inspection.Reading
			if i < len(h.m.Sizes) && k < len(h.m.Sizes[i]) {
				s = h.m.Sizes[i][k]
			}
			station := i*n + k
			if !s.Taken {
				x.miss(t, inspection.Index(inspection.Index(path(), i), k), "housing bore", ready.where[number]+", "+ready.stations[station], instrument, ready.size.printed)
				continue
			}
			s, err := s.Within(l.Error)
			if err != nil {
				return inspection.At(inspection.Index(inspection.Index(path(), i), k), err)
			}
			t.taken++
			sizes[station] = s.Value
			all = append(all, s.Value)
			if text, odd := "", false; ready.nearOk {
				if text, odd = oddSize(s.Value, ready.near); odd {
					x.slip(t, inspection.Slip{Path: inspection.Index(inspection.Index(path(), i), k), What: ready.where[number] + ", " + ready.stations[station], Text: text})
				}
			}
		}
	}
	if len(all) == 0 {
		return nil
	}
	x.proofHousing(h, number, sizes, path)
	if x.r.Caps != CapsTorqued {
		t.stands("the bearing caps' state while it was read is "+x.r.Caps.String(), capsSettle)
	}
	for i := range levels {
		if row := taken(sizes, i*n, 1, n, x.scratch[:0]); len(row) > 1 {
			across = append(across, HousingOvality(row[0], row[1:]...))
		}
	}
	for k := range n {
		if column := taken(sizes, k, n, levels, x.scratch[:0]); len(column) > 1 {
			along = append(along, HousingTaper(column[0], column[1:]...))
		}
	}
	for _, j := range [...]struct {
		m        *measured[units.Length]
		stations []tolerance.Bracket
	}{{&ready.size, all}, {&ready.ovality, across}, {&ready.taper, along}} {
		if len(j.stations) == 0 {
			if j.m.asked() {
				t.stands(j.m.name+" isn't known: too little was read", "read it at every level and in every direction")
			}
			continue
		}
		f, err := x.length(t, j.m, ready.where[number], path(), "", j.stations...)
		if err != nil {
			return err
		}
		if f != nil && x.r.Caps != CapsTorqued {
			f.Standing, f.Settle = tolerance.CantTell, capsSettle
		}
	}
	if x.r.Caps != CapsTorqued {
		t.rank, t.open = min(t.rank, rankOpen), nil
	}
	return nil
}

// taken are the brackets that were read of count stations, from one on.
func taken(sizes []tolerance.Bracket, from, step, count int, dst []tolerance.Bracket) []tolerance.Bracket {
	for i := range count {
		if s := sizes[from+i*step]; !s.IsZero() {
			dst = append(dst, s)
		}
	}
	return dst
}

// proofHousing lists a diameter that stands apart from the others in a way that
// has a name. Those that lie together have none.
func (x *inspecting) proofHousing(h *housingSeen, number int, sizes []tolerance.Bracket, path func() string) {
	all := taken(sizes, 0, 1, len(sizes), x.scratch[:0])
	least, greatest := tolerance.Extremes(all...)
	lo, _ := least.Lower()
	if hi, _ := greatest.Upper(); hi-lo <= alike || h.tally.suspect != "" {
		return
	}
	n := len(x.in.limits.Tunnel.Directions)
	set := make([]inspection.Reading, len(sizes))
	paths, places := make([]string, len(sizes)), make([]string, len(sizes))
	for i, s := range sizes {
		set[i] = inspection.Reading{Value: s, Taken: !s.IsZero()}
		paths[i] = inspection.Index(inspection.Index(path(), i/n), i%n)
		places[i] = x.in.tunnel.where[number] + ", " + x.in.tunnel.stations[i]
	}
	for _, s := range inspection.ProofreadReadings(nil, paths, places, set) {
		x.slip(&h.tally, s)
	}
}
