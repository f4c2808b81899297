package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
)

// engine is the file: which blades, which limits, and what was tried.
type engine struct {
	Schema    int            `json:"schema"`
	Engine    string         `json:"engine"`
	Blades    string         `json:"blades,omitempty"`    // "imperial 26", …
	OwnBlades []feeler.Blade `json:"ownBlades,omitempty"` // or one's own, a blade a text
	Rings     []ring         `json:"rings"`
	Grooves   []groove       `json:"grooves"`
}

// ring is what the manual says of one ring of the pack, the same on every
// piston.
type ring struct {
	Name   string `json:"name"`
	Oil    bool   `json:"oilRing,omitempty"`
	Limits struct {
		New  tolerance.Printed `json:"new,omitzero"`
		Wear tolerance.Printed `json:"wear,omitzero"`
	} `json:"limits"`
	NewHeight tolerance.Band `json:"newHeight,omitzero"`
	NewGroove tolerance.Band `json:"newGroove,omitzero"`
}

func (r ring) spec() tolerance.Spec {
	return tolerance.Spec{New: r.Limits.New.BandOf, Wear: r.Limits.Wear.BandOf}
}

// groove is what was tried in one groove, with its used ring in it.
type groove struct {
	Piston     int               `json:"piston"`
	Ring       string            `json:"ring"`
	UsedHeight tolerance.Bracket `json:"usedHeight,omitzero"`
	Stations   []struct {
		At    string `json:"at"`
		Tried string `json:"tried"` // ".002 in free, .0025 in drag, .003 in refused"
	} `json:"stations"`
}

// bladeSet is the set that the file names, or its own.
func (e engine) bladeSet() (set feeler.Set, field string, err error) {
	if len(e.OwnBlades) > 0 {
		set, err = feeler.NewSet(e.Engine, "the file", e.OwnBlades...)
		return set, "ownBlades", err
	}
	var names []string
	for _, set := range feeler.StandardSets() {
		if set.Name() == e.Blades {
			return set, "", nil
		}
		names = append(names, set.Name())
	}
	return set, "blades", fmt.Errorf("no set is called %q: write %s, or list ownBlades", e.Blades, strings.Join(names, ", "))
}

// row is one groove judged.
type row struct {
	read     groove
	ring     ring
	stations []feeler.Station
	readings []feeler.Reading
	part     piston.Groove
	report   piston.GrooveReport
}

// key names the groove as the flags do: "3 second".
func (r row) key() string { return fmt.Sprint(r.read.Piston, " ", r.read.Ring) }

// inspect reads a file and judges every groove in it. An error names the
// line and the field.
func inspect(name string, data []byte) (e engine, set feeler.Set, rows []row, err error) {
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, set, nil, err
	}
	// at puts the place in front of a slip that several fields make together.
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	if e.Schema != 1 {
		return e, set, nil, at("schema", fmt.Errorf("this reads schema 1, not %d", e.Schema))
	}
	set, field, err := e.bladeSet()
	if err != nil {
		return e, set, nil, at(field, err)
	}
	if path, err := checkRings(e.Rings); err != nil {
		return e, set, nil, at(path, err)
	}
	seen := map[string]bool{}
	for i, g := range e.Grooves {
		path := fmt.Sprintf("grooves[%d]", i)
		key := fmt.Sprint(g.Piston, " ", g.Ring)
		if seen[key] {
			return e, set, nil, at(path, fmt.Errorf("piston %d has its %s ring twice", g.Piston, g.Ring))
		}
		seen[key] = true
		r, err := judge(e, set, g)
		if err != nil {
			return e, set, nil, at(path+r.path, err)
		}
		rows = append(rows, r.row)
	}
	return e, set, rows, nil
}

// checkRings refuses two rings of one name and limits that contradict each
// other, and says where.
func checkRings(rings []ring) (path string, err error) {
	seen := map[string]bool{}
	for i, r := range rings {
		path = fmt.Sprintf("rings[%d]", i)
		switch {
		case r.Name == "":
			return path + ".name", errors.New("a ring needs a name, such as \"top\"")
		case seen[r.Name]:
			return path + ".name", fmt.Errorf("two rings are called %q", r.Name)
		}
		seen[r.Name] = true
		if err := r.spec().Validate(); err != nil {
			return path + ".limits", err
		}
	}
	return "", nil
}

func ringNames(rings []ring) string {
	names := make([]string, len(rings))
	for i, r := range rings {
		names[i] = r.Name
	}
	return strings.Join(names, ", ")
}

// judged is a row, or where in the groove an error lies.
type judged struct {
	row
	path string
}

func judge(e engine, set feeler.Set, g groove) (j judged, err error) {
	j.read = g
	if g.Piston < 1 {
		return judged{path: ".piston"}, fmt.Errorf("pistons count from 1, not %d", g.Piston)
	}
	for _, r := range e.Rings {
		if r.Name == g.Ring {
			j.ring = r
		}
	}
	if j.ring.Name == "" {
		return judged{path: ".ring"}, fmt.Errorf("no ring is called %q: the file lists %s", g.Ring, ringNames(e.Rings))
	}
	j.part = piston.Groove{
		Where:      fmt.Sprintf("piston %d, %s ring", g.Piston, g.Ring),
		Limits:     j.ring.spec(),
		UsedHeight: g.UsedHeight, NewHeight: j.ring.NewHeight, NewWidth: j.ring.NewGroove,
	}
	if j.ring.Oil {
		j.part.Ring = piston.OilRing
	}
	check := feeler.Check{Measure: "ring side clearance", Where: j.part.Where, Spec: j.part.Limits, Set: set,
		Errors: true} // of blades given as "0.10 mm ± 0.002 mm"; the others are taken for exact
	for k, s := range g.Stations {
		j.path = fmt.Sprintf(".stations[%d].tried", k)
		trials, err := set.ParseTrials(s.Tried)
		if err != nil {
			return j, err
		}
		station := feeler.Station{Where: s.At, Trials: trials}
		reading, err := check.Read(station)
		if err != nil {
			return j, err
		}
		j.stations, j.readings = append(j.stations, station), append(j.readings, reading)
		j.part.Stations = append(j.part.Stations, reading.Bracket)
	}
	j.path = ""
	finding, err := check.Assess(j.stations...)
	if err != nil {
		return j, err
	}
	j.report, err = j.part.Report(finding)
	return j, err
}
