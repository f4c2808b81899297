package main

import (
	"fmt"
	"slices"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// engine is the file.
type engine struct {
	Schema     int                   `json:"schema"`
	Engine     string                `json:"engine"`
	Crankpins  []crank.BobweightPin  `json:"crankpins,omitempty"`
	Rotor      *crank.UnbalanceRotor `json:"rotor,omitempty"`
	Drill      *crank.Drilling       `json:"drill,omitempty"`
	HolesApart units.Angle           `json:"holesApart,omitzero"`
	MostHoles  int                   `json:"mostHoles,omitzero"`
	Plug       *plug                 `json:"plug,omitempty"`
	Light      []string              `json:"light,omitempty"` // planes with no metal to drill at the heavy place
}

// plug is what heavy metal there is.
type plug struct {
	Diameter     units.Length `json:"diameter"`
	Radius       units.Length `json:"radius"` // of the plug's axis from the shaft's
	PlugGPerCM3  float64      `json:"plugGPerCM3"`
	SteelGPerCM3 float64      `json:"steelGPerCM3"`
	Longest      units.Length `json:"longest"`
}

func read(name string, data []byte) (e engine, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return e, err
	}
	if err = document.DecodeNamed(name, data, &e); err != nil {
		return e, err
	}
	at := func(path, format string, args ...any) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %s", name, where.Line, path, fmt.Sprintf(format, args...))
	}
	if len(e.Crankpins) == 0 && e.Rotor == nil {
		return e, at("engine", "there are neither crankpins nor a rotor in the file")
	}
	for i, pin := range e.Crankpins {
		if _, err := pin.Bobweight(); err != nil {
			return e, at(fmt.Sprintf("crankpins[%d]", i), "%v", err)
		}
	}
	if e.Drill != nil {
		if err := e.Drill.Check(); err != nil {
			return e, at("drill", "%v", err)
		}
	}
	if p := e.Plug; p != nil && (p.Diameter <= 0 || p.Radius <= p.Diameter/2 || p.Longest <= 0 || !(p.SteelGPerCM3 >= 0 && p.PlugGPerCM3 > p.SteelGPerCM3 && p.PlugGPerCM3 < 25)) {
		return e, at("plug", "diameter, radius and length must be above zero, and the plug denser than the steel, in g/cm³")
	}
	if e.Rotor == nil {
		return e, nil
	}
	if _, err := e.Rotor.Assess(); err != nil {
		return e, at("rotor", "%v", err)
	}
	for i, l := range e.Light {
		if !slices.ContainsFunc(e.Rotor.Readings, func(r crank.UnbalanceReading) bool { return r.Where == l }) {
			return e, at(fmt.Sprintf("light[%d]", i), "no reading is called %.64q", l)
		}
	}
	return e, nil
}

// length is the plug that adds an unbalance.
func (p plug) length(unbalance float64) units.Length {
	f := func(x float64) tolerance.Float { return tolerance.Float(x) }
	mm := crank.DrillPlugLength(f(unbalance), f(p.Diameter.Float(units.InMillimetres)), f(p.Radius.Float(units.InMillimetres)), f(p.PlugGPerCM3), f(p.SteelGPerCM3))
	l, err := units.Nearest(float64(mm), units.InMillimetres)
	if err != nil {
		return units.OutOfRange[units.Length]()
	}
	return l
}
