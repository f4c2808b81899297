package main

import (
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// engine is the file.
type engine struct {
	Schema   int               `json:"schema"`
	Engine   string            `json:"engine"`
	Lift     tolerance.Bracket `json:"lift"`
	Outer    kind              `json:"outer"`
	Inner    *kind             `json:"inner,omitempty"`
	Step     tolerance.Bracket `json:"step,omitzero"` // by how much lower the inner spring stands
	SeatBoth loads             `json:"seatBoth,omitzero"`
	OpenBoth loads             `json:"openBoth,omitzero"`
	SpreadAt tolerance.Bracket `json:"spreadAt,omitzero"` // a height to compare the set's outer springs at
	Height   tolerance.Printed `json:"height,omitzero"`   // installed, wanted
	Shims    []struct {
		Name      string            `json:"name"`
		Thickness tolerance.Bracket `json:"thickness"`
	} `json:"shims,omitempty"`
	Most   int `json:"most,omitzero"` // shims on one another
	Valves []struct {
		Where     string            `json:"where"`
		Installed tolerance.Bracket `json:"installed"`
		Outer     readings          `json:"outer"`
		Inner     *readings         `json:"inner,omitempty"`
	} `json:"valves"`
}

// kind is what a manual says of one kind of spring.
type kind struct {
	Form     valvetrain.SpringForm `json:"form"`
	Ends     valvetrain.SpringEnds `json:"ends,omitzero"`
	Wire     tolerance.Bracket     `json:"wire,omitzero"`
	Outside  tolerance.Bracket     `json:"outside,omitzero"`
	Total    tolerance.Ratio       `json:"total,omitzero"`
	ShearMPa float64               `json:"shearMPa,omitzero"`
	Solid    tolerance.Bracket     `json:"solid,omitzero"`
	Free     limits                `json:"free,omitzero"`
	Square   limits                `json:"square,omitzero"`
	Bind     limits                `json:"bind,omitzero"`
	Seat     loads                 `json:"seat,omitzero"`
	Open     loads                 `json:"open,omitzero"`
	Loads    []loads               `json:"loads,omitempty"` // of each reading, in the order of the readings
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

type loads struct {
	New  tolerance.BandOf[units.Force] `json:"new,omitzero"`
	Wear tolerance.BandOf[units.Force] `json:"wear,omitzero"`
}

func (l loads) spec() tolerance.SpecOf[units.Force] {
	return tolerance.SpecOf[units.Force]{New: l.New, Wear: l.Wear}
}

// readings are those of one spring.
type readings struct {
	Free      tolerance.Bracket `json:"free,omitzero"`
	OffSquare tolerance.Bracket `json:"offSquare,omitzero"`
	Loads     []struct {
		Height tolerance.Bracket      `json:"height"`
		Load   valvetrain.LoadBracket `json:"load"`
	} `json:"loads,omitempty"`
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path, what string) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %s", name, where.Line, path, what)
	}
	if len(e.Valves) == 0 {
		return e, at("valves", "there is no valve in the file")
	}
	if !e.Height.IsZero() && e.Most == 0 {
		return e, at("height", "say under most how many shims may lie on one another")
	}
	seen := map[string]bool{}
	for i, v := range e.Valves {
		path := fmt.Sprintf("valves[%d]", i)
		switch {
		case v.Where == "" || seen[v.Where]:
			return e, at(path, fmt.Sprintf("each valve has a name of its own, which %.64q is not", v.Where))
		case (v.Inner == nil) != (e.Inner == nil):
			return e, at(path, "an inner spring is read where the engine has one, and only there")
		}
		seen[v.Where] = true
	}
	return e, nil
}

// spring is one spring of a kind with its readings.
func (k kind) spring(where string, r readings) valvetrain.Spring {
	s := valvetrain.Spring{Where: where, Form: k.Form, Free: r.Free, OffSquare: r.OffSquare, Solid: k.Solid,
		FreeLimits: k.Free.spec(), SquareLimits: k.Square.spec(), BindLimits: k.Bind.spec(), SeatLimits: k.Seat.spec(), OpenLimits: k.Open.spec()}
	for _, x := range r.Loads {
		s.Readings = append(s.Readings, valvetrain.SpringReading(x))
	}
	for _, l := range k.Loads {
		s.ReadingLimits = append(s.ReadingLimits, l.spec())
	}
	if !k.Wire.IsZero() {
		s.Coil = valvetrain.SpringCoil{Ends: k.Ends, Wire: k.Wire, Outside: k.Outside, Total: k.Total, ShearMPa: k.ShearMPa}
	}
	return s
}

// nest is one valve's springs, at the height given.
func (e engine) nest(i int, installed tolerance.Bracket) valvetrain.SpringNest {
	v := e.Valves[i]
	outer := e.Outer.spring(v.Where+", outer", v.Outer)
	outer.Installed, outer.Lift = installed, e.Lift
	n := valvetrain.SpringNest{Where: v.Where, Outer: outer, Step: e.Step, SeatLimits: e.SeatBoth.spec(), OpenLimits: e.OpenBoth.spec()}
	if e.Inner != nil {
		n.Inner = e.Inner.spring(v.Where+", inner", *v.Inner)
	}
	return n
}

// shims chooses those for one valve.
func (e engine) shims(i int) (valvetrain.SpringShimChoice, error) {
	var stock []valvetrain.SpringShim
	for _, s := range e.Shims {
		stock = append(stock, valvetrain.SpringShim(s))
	}
	return valvetrain.ChooseSpringShims(valvetrain.SpringShimNeed{Installed: e.Valves[i].Installed, Height: e.Height.BandOf, Most: e.Most}, stock)
}
