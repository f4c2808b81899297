package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// file is the head as written down at the bench.
type file struct {
	Schema    int                          `json:"schema"`
	Engine    string                       `json:"engine"`
	Blades    string                       `json:"blades,omitempty"`    // "metric 20", …
	OwnBlades []feeler.Blade               `json:"ownBlades,omitempty"` // or one's own, a blade a text
	Wanted    map[string]tolerance.Printed `json:"wanted"`              // by kind of valve, as the manual prints it
	Ratio     tolerance.Ratio              `json:"ratio,omitzero"`      // of the blade's place to the shim's; 1 over or under a bucket
	Valves    []valve                      `json:"valves"`
	Drawer    []valvetrain.ShimPiece       `json:"drawer,omitempty"` // spare shims, each as measured
	Series    []series                     `json:"series,omitempty"` // sizes that may be bought
	Disturb   bool                         `json:"disturb,omitempty"`
}

type valve struct {
	Where string            `json:"where"`
	Kind  string            `json:"kind"`
	Tried string            `json:"tried"` // "0.20 mm free, 0.25 mm refused"
	Shim  tolerance.Bracket `json:"shim,omitzero"`
}

// series is a run of even steps; one size is a run from it to itself.
type series struct {
	From  units.Length `json:"from"`
	To    units.Length `json:"to"`
	Step  units.Length `json:"step,omitzero"`
	Error units.Length `json:"error,omitzero"` // what the maker allows, ±
}

// bench is a file worked out.
type bench struct {
	file
	head   valvetrain.ShimHead
	trials [][]feeler.Trial
	gaps   []valvetrain.ShimGap
	plan   valvetrain.ShimPlan
}

// read reads a file and plans the head. An error names the line and the field.
func read(name string, data []byte, disturb bool) (b bench, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return b, err
	}
	if err = document.DecodeNamed(name, data, &b.file); err != nil {
		return b, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	set, path, err := b.bladeSet()
	if err != nil {
		return b, at(path, err)
	}
	b.head = valvetrain.ShimHead{Drawer: b.Drawer, Disturb: b.Disturb || disturb, Set: set}
	seen := map[string]bool{}
	for i, v := range b.Valves {
		path := fmt.Sprintf("valves[%d]", i)
		wanted, ok := b.Wanted[v.Kind]
		switch {
		case v.Where == "" || seen[v.Where]:
			return b, at(path+".where", fmt.Errorf("each valve needs a name of its own, not %.64q", v.Where))
		case !ok:
			return b, at(path+".kind", fmt.Errorf("no clearance is wanted for %.64q: the file has %s", v.Kind, strings.Join(b.kinds(), ", ")))
		}
		seen[v.Where] = true
		trials, err := set.ParseTrials(v.Tried)
		if err != nil {
			return b, at(path+".tried", err)
		}
		clearance, err := feeler.BracketWithErrors(trials...)
		if err != nil {
			return b, at(path+".tried", err)
		}
		b.trials = append(b.trials, trials)
		b.head.Valves = append(b.head.Valves, valvetrain.ShimValve{Where: v.Where, Measured: clearance, Shim: v.Shim, Wanted: wanted.BandOf, Ratio: b.Ratio})
	}
	for i, s := range b.Series {
		if s.Step == 0 && s.From == s.To {
			s.Step = s.From
		}
		sizes, err := valvetrain.NewShimSeries(s.From, s.To, s.Step, s.Error)
		if err != nil {
			return b, at(fmt.Sprintf("series[%d]", i), err)
		}
		b.head.Series = append(b.head.Series, sizes...)
	}
	if b.gaps, err = valvetrain.ShimGaps(b.head.Series); err != nil {
		return b, at("series", err)
	}
	if b.plan, err = valvetrain.PlanShims(b.head); err != nil {
		return b, fmt.Errorf("%s: %w", name, err)
	}
	return b, nil
}

// bladeSet is the set that the file names, or its own.
func (f file) bladeSet() (set feeler.Set, field string, err error) {
	if len(f.OwnBlades) > 0 {
		if f.Blades != "" {
			return set, "ownBlades", errors.New("give blades or ownBlades, not both")
		}
		set, err = feeler.NewSet("own blades", "the file", f.OwnBlades...)
		return set, "ownBlades", err
	}
	var names []string
	for _, set := range feeler.StandardSets() {
		if set.Name() == f.Blades {
			return set, "", nil
		}
		names = append(names, set.Name())
	}
	return set, "blades", fmt.Errorf("no set is called %.64q: write %s, or list ownBlades", f.Blades, strings.Join(names, ", "))
}

func (f file) kinds() []string {
	var kinds []string
	for k := range f.Wanted {
		kinds = append(kinds, k)
	}
	slices.Sort(kinds)
	return kinds
}
