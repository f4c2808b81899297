package valvetrain

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// inspectSchema is the number of both documents.
const inspectSchema = 1

func inspectSchemaOf(r *Readings) string {
	if r == nil {
		return "of no document"
	}
	return strconv.Itoa(r.Schema)
}

// layOut makes room for what like parts give, and names every part. A part that
// isn't listed stands behind the last one of its list.
func (c *inspectRun) layOut() {
	x := c.x
	room := make([]inspection.Reading, 0, x.asks)
	at := make([]inspectFrom, 0, x.asks)
	give := func(m *inspectMeasure[units.Length], parts int) {
		n := parts * len(m.subs)
		if m.asked && n > 0 && len(room)+n <= cap(room) {
			set := &c.sets[m.set]
			set.readings, set.at = room[len(room):len(room):len(room)+n], at[len(at):len(at):len(at)+n]
			room, at = room[:len(room)+n], at[:len(at)+n]
		}
	}
	for k := range x.kinds {
		kind := &x.kinds[k]
		n := kind.to - kind.from
		if kind.limits == nil {
			continue
		}
		for _, m := range [...]*inspectMeasure[units.Length]{&kind.bore, &kind.rock, &kind.stem, &kind.margin, &kind.faceRun, &kind.stemRun, &kind.tip,
			&kind.length, &kind.width, &kind.runOut, &kind.depth, &kind.tipHeight, &kind.shim} {
			give(m, n)
		}
		springs := len(kind.springs)
		states, coils := make([]inspectState, n*springs), make([]inspectSpringFound, n*springs)
		for i := kind.from; i < kind.to; i++ {
			p, name := &c.shelf[i], x.names[i]
			at := (i - kind.from) * springs
			p.springs, p.coils = states[at:at+springs], coils[at:at+springs]
			for _, s := range [...]struct {
				s    *inspectState
				list string
			}{{&p.guide, "guides"}, {&p.valve, "valves"}, {&p.seat, "seats"}, {&p.follower, "followers"}, {&p.rocker, "rockers"}, {&p.gap, "clearances"}} {
				s.s.where, s.s.list = name, s.list
			}
			for j := range p.springs {
				p.springs[j].where, p.springs[j].list = name, "springs"
			}
		}
	}
}

// findPlaces gives every part that is listed its place.
func (c *inspectRun) findPlaces() error {
	r := c.r
	lists := [...]struct {
		name  string
		count int
		at    func(i int) (ValvePlace, inspection.Condition, string)
		of    func(*inspectPlace) *inspectState
	}{
		{"guides", len(r.Guides), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Guides[i].Place, r.Guides[i].Condition, ""
		}, func(p *inspectPlace) *inspectState { return &p.guide }},
		{"valves", len(r.Valves), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Valves[i].Place, r.Valves[i].Condition, r.Valves[i].Mark
		}, func(p *inspectPlace) *inspectState { return &p.valve }},
		{"seats", len(r.Seats), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Seats[i].Place, r.Seats[i].Condition, ""
		}, func(p *inspectPlace) *inspectState { return &p.seat }},
		{"springs", len(r.Springs), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Springs[i].Place, r.Springs[i].Condition, ""
		}, nil},
		{"followers", len(r.Followers), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Followers[i].Place, r.Followers[i].Condition, r.Followers[i].Mark
		}, func(p *inspectPlace) *inspectState { return &p.follower }},
		{"rockers", len(r.Rockers), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Rockers[i].Place, r.Rockers[i].Condition, r.Rockers[i].Mark
		}, func(p *inspectPlace) *inspectState { return &p.rocker }},
		{"clearances", len(r.Clearances), func(i int) (ValvePlace, inspection.Condition, string) {
			return r.Clearances[i].Place, inspection.Condition{}, ""
		}, func(p *inspectPlace) *inspectState { return &p.gap }},
	}
	for li := range lists {
		list := &lists[li]
		for i := range list.count {
			place, cond, mark := list.at(i)
			k, at, err := c.x.placeOf(place)
			if err != nil {
				return inspection.At(inspection.Index(list.name, i)+".place", err)
			}
			var s *inspectState
			if list.of != nil {
				s = list.of(&c.shelf[at])
			} else if s, err = c.springAt(k, at, r.Springs[i].Name); err != nil {
				return inspection.At(inspection.Index(list.name, i)+".name", err)
			}
			if s.listed {
				return inspection.At(inspection.Index(list.name, i)+".place", &InputError{"place", s.where, "listed once: it stands at " + s.path("") + " already"})
			}
			s.listed, s.index, s.cond = true, i, cond
			if mark != "" {
				if err := inspection.Matched(inspectPartOf[list.name], s.where, inputText(mark), s.where); err != nil {
					return inspection.At(inspection.Index(list.name, i)+".mark", err)
				}
			}
		}
	}
	c.unlisted()
	return c.tooMany()
}

// inspectPartOf names the parts that are marked.
var inspectPartOf = map[string]string{"valves": "valve", "followers": "follower", "rockers": "rocker"}

// unlisted gives the parts that aren't in their list the places behind it.
func (c *inspectRun) unlisted() {
	next := [7]int{len(c.r.Guides), len(c.r.Valves), len(c.r.Seats), len(c.r.Followers), len(c.r.Rockers), len(c.r.Clearances), len(c.r.Springs)}
	for i := range c.shelf {
		p := &c.shelf[i]
		for l, s := range [...]*inspectState{&p.guide, &p.valve, &p.seat, &p.follower, &p.rocker, &p.gap} {
			if !s.listed {
				s.index, next[l] = next[l], next[l]+1
			}
		}
		for j := range p.springs {
			if s := &p.springs[j]; !s.listed {
				s.index, next[6] = next[6], next[6]+1
			}
		}
	}
}

// placeOf finds a valve's place.
func (x *Inspector) placeOf(p ValvePlace) (k *inspectKind, at int, err error) {
	k = &x.kinds[0]
	if p.Exhaust {
		k = &x.kinds[1]
	}
	if n := k.to - k.from; p.Number < 1 || p.Number > n {
		return k, 0, &InputError{"place", p.String(), "one of the " + strconv.Itoa(n) + " that the limits have of its kind, numbered from 1"}
	}
	return k, k.from + p.Number - 1, nil
}

func (c *inspectRun) springAt(k *inspectKind, at int, name string) (*inspectState, error) {
	for j := range k.springs {
		if k.springs[j].limits.Name == name {
			return &c.shelf[at].springs[j], nil
		}
	}
	return nil, &InputError{"spring", strconv.Quote(inputText(name)), "one of those that the limits name"}
}

// tooMany refuses more readings than the limits have stations, loads or lobes
// for.
func (c *inspectRun) tooMany() error {
	refuse := func(list string, i int, field string, n, most int) error {
		if n <= most {
			return nil
		}
		return inspection.At(inspection.Index(list, i)+"."+field, &InputError{"readings", strconv.Itoa(n), "at most the " + strconv.Itoa(most) + " that the limits ask for"})
	}
	for i := range c.r.Guides {
		g := &c.r.Guides[i]
		k, _, _ := c.x.placeOf(g.Place)
		if err := refuse("guides", i, "levels", len(g.Levels), k.limits.guideLevels()); err != nil {
			return err
		}
	}
	for i := range c.r.Valves {
		v := &c.r.Valves[i]
		k, _, _ := c.x.placeOf(v.Place)
		if err := refuse("valves", i, "stem", len(v.Stem), k.limits.stemStations()); err != nil {
			return err
		}
	}
	for i := range c.r.Springs {
		s := &c.r.Springs[i]
		k, _, _ := c.x.placeOf(s.Place)
		for j := range k.springs {
			if k.springs[j].limits.Name == s.Name {
				if err := refuse("springs", i, "loads", len(s.Loads), len(k.springs[j].loads)); err != nil {
					return err
				}
			}
		}
	}
	for i := range c.r.Clearances {
		if err := refuse("clearances", i, "trials", len(c.r.Clearances[i].Trials), feeler.MaxBlades); err != nil {
			return err
		}
	}
	return nil
}

func (p *LimitsPlace) guideLevels() int {
	if p.Guide == nil {
		return 0
	}
	return len(p.Guide.Levels)
}

func (p *LimitsPlace) stemStations() int {
	if p.Valve == nil {
		return 0
	}
	return len(p.Valve.Stations)
}
