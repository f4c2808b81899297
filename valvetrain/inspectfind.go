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

// makeRoom makes room for what like parts give, and for what is found of each.
func (c *inspectRun) makeRoom() {
	x := c.x
	c.sets = make([]inspectSet[units.Length], x.lengths)
	c.loads = make([]inspectSet[units.Force], x.forces)
	c.shelf = make([]inspectPlace, len(x.names))
	c.cams = make([]inspectCamFound, len(x.cams))
	c.driven = make([]inspectDriven, len(x.drive))
	for k := range x.kinds {
		kind := &x.kinds[k]
		n, springs := kind.to-kind.from, len(kind.springs)
		states, coils := make([]inspectState, n*springs), make([]inspectSpringFound, n*springs)
		for i := kind.from; i < kind.to; i++ {
			at := (i - kind.from) * springs
			c.shelf[i].springs, c.shelf[i].coils = states[at:at+springs], coils[at:at+springs]
		}
	}
}

// forget keeps nothing of an engine but the room that was made.
func (c *inspectRun) forget() {
	c.r, c.out, c.err, c.lengths, c.forces = nil, inspection.Report{}, nil, nil, nil
	c.shimPlan, c.shimHead = ShimPlan{}, ShimHead{}
	for i := range c.sets {
		c.sets[i].values, c.sets[i].at = c.sets[i].values[:0], c.sets[i].at[:0]
	}
	for i := range c.loads {
		c.loads[i].values, c.loads[i].at = c.loads[i].values[:0], c.loads[i].at[:0]
	}
	for i := range c.shelf {
		p := &c.shelf[i]
		clear(p.springs)
		clear(p.coils)
		*p = inspectPlace{springs: p.springs, coils: p.coils}
	}
	clear(c.cams)
	clear(c.driven)
}

// layOut names every part.
func (c *inspectRun) layOut() {
	for i := range c.shelf {
		p, name := &c.shelf[i], c.x.names[i]
		p.guide.where, p.guide.list = name, "guides"
		p.valve.where, p.valve.list = name, "valves"
		p.seat.where, p.seat.list = name, "seats"
		p.follower.where, p.follower.list = name, "followers"
		p.rocker.where, p.rocker.list = name, "rockers"
		p.gap.where, p.gap.list = name, "clearances"
		for j := range p.springs {
			p.springs[j].where, p.springs[j].list = name, "springs"
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
