package main

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema      int                 `json:"schema"`
	Engine      string              `json:"engine"`
	Standard    units.Length        `json:"standard"`
	Centring    cylinder.Centring   `json:"centring,omitzero"`
	Centre      cylinder.BoreCentre `json:"centre,omitzero"`
	Cut         units.Length        `json:"cut"`
	Honing      units.Length        `json:"honing"`
	Clearance   tolerance.Bracket   `json:"clearance,omitzero"`
	LeastWall   units.Length        `json:"leastWall,omitzero"`
	LargestBore units.Length        `json:"largestBore,omitzero"`
	Kits        []struct {
		Name     string              `json:"name"`
		Oversize units.Length        `json:"oversize"`
		Pistons  []tolerance.Bracket `json:"pistons,omitzero"`
		Stock    *int                `json:"stock,omitempty"`
		Price    money               `json:"price,omitzero"`
	} `json:"kits"`
	Boring money `json:"boring,omitzero"`
	Liner  struct {
		Outside units.Length `json:"outside,omitzero"`
		Price   money        `json:"price,omitzero"`
	} `json:"liner,omitzero"`
	Bores []struct {
		Cylinder int                  `json:"cylinder"`
		Finished units.Length         `json:"finished"`
		Surface  cylinder.BoreSurface `json:"surface,omitzero"`
		Process  string               `json:"process,omitempty"`
		Greatest tolerance.Bracket    `json:"greatest,omitzero"`
		Walls    []cylinder.BoreWall  `json:"walls,omitzero"`
		Sonic    []cylinder.SonicWall `json:"sonic,omitzero"`
	} `json:"bores"`
}

// money is a price, written with two places.
type money cylinder.Price

func (m *money) UnmarshalText(text []byte) error {
	whole, part, _ := strings.Cut(string(text), ".")
	coins, err := strconv.ParseUint(whole+part, 10, 40)
	if len(part) != 2 || whole == "" || err != nil {
		return errors.New(`not a price: write it with two places and without a currency, as "41.50"`)
	}
	*m = money{Coins: int64(coins), Given: true}
	return nil
}

// read reads a file and works it out. An error names the line and the field.
func read(name string, data []byte, bar *cylinder.Centring) (e engine, j cylinder.OversizeJob, c cylinder.OversizeChoice, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, j, c, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, j, c, err
	}
	at := func(path string, err error) error { return document.At(name, data, path, err) }
	j = cylinder.OversizeJob{
		Standard: e.Standard, Clearance: e.Clearance, Boring: cylinder.Price(e.Boring),
		Liner: cylinder.RepairLiner{Outside: e.Liner.Outside, Price: cylinder.Price(e.Liner.Price)},
		Plan:  cylinder.BoringPlan{Centring: e.Centring, Centre: e.Centre, Cut: e.Cut, Honing: e.Honing, LeastWall: e.LeastWall, LargestBore: e.LargestBore},
	}
	if bar != nil {
		j.Plan.Centring = *bar
	}
	for _, k := range e.Kits {
		kit := cylinder.PistonKit{Name: k.Name, Oversize: k.Oversize, Pistons: k.Pistons, Price: cylinder.Price(k.Price)}
		if k.Stock != nil {
			kit.Stock = cylinder.StockOf(*k.Stock)
		}
		j.Kits = append(j.Kits, kit)
	}
	seen := map[int]bool{}
	for i, b := range e.Bores {
		path := fmt.Sprintf("bores[%d]", i)
		switch {
		case b.Cylinder < 1:
			return e, j, c, at(path+".cylinder", fmt.Errorf("cylinders count from 1, not %d", b.Cylinder))
		case seen[b.Cylinder]:
			return e, j, c, at(path, fmt.Errorf("cylinder %d is there twice", b.Cylinder))
		}
		seen[b.Cylinder] = true
		bore := cylinder.WornBore{Where: fmt.Sprintf("cylinder %d", b.Cylinder), Finished: b.Finished, Surface: b.Surface,
			Process: b.Process, Greatest: b.Greatest, Walls: b.Walls, Sonic: b.Sonic}
		if _, err := cylinder.LeastSize(&bore, &j.Plan); err != nil {
			return e, j, c, at(path, err)
		}
		j.Bores = append(j.Bores, bore)
	}
	if c, err = cylinder.ChooseOversize(&j); err != nil {
		return e, j, c, fmt.Errorf("%s: %w", name, err)
	}
	return e, j, c, nil
}
