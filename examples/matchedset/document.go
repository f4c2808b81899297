package main

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// set is the file.
type set struct {
	Schema         int                `json:"schema"`
	Engine         string             `json:"engine"`
	Clearance      *wanted            `json:"clearance,omitempty"`
	Bores          []piston.MatchPart `json:"bores,omitempty"`
	Pistons        []part             `json:"pistons"`
	PistonSpread   massBand           `json:"pistonSpread,omitzero"`
	PistonMostOff  units.Mass         `json:"pistonMostOff,omitzero"`
	Rods           []piston.MassRod   `json:"rods,omitempty"`
	BigEndSpread   massBand           `json:"bigEndSpread,omitzero"`
	SmallEndSpread massBand           `json:"smallEndSpread,omitzero"`
	RodMostOff     units.Mass         `json:"rodMostOff,omitzero"`
	Pads           *pads              `json:"pads,omitempty"`
	TotalSpread    massBand           `json:"totalSpread,omitzero"`
}

type massBand = tolerance.BandOf[units.Mass]

// wanted is the clearance of a piston in its bore; the aim is the band's middle
// where none is given.
type wanted struct {
	Band tolerance.Band `json:"band"`
	Aim  *units.Length  `json:"aim,omitempty"`
}

// part is a piston: its skirt, its mass, or both.
type part struct {
	Where string             `json:"where"`
	Size  tolerance.Bracket  `json:"size,omitzero"`
	Mass  piston.MassBracket `json:"mass,omitzero"`
}

// pads is where a rod's balance pads lie.
type pads struct {
	Centres units.Length `json:"centres"`
	Big     units.Length `json:"big"`
	Small   units.Length `json:"small"`
}

// placed is an error, and the part of the file that it is in.
type placed struct {
	path string
	err  error
}

func (p *placed) Error() string { return p.path + ": " + p.err.Error() }

// Unwrap gives the error.
func (p *placed) Unwrap() error { return p.err }

// place adds the file's name, and the line where it is known.
func place(name string, data []byte, err error) error {
	var p *placed
	if errors.As(err, &p) {
		if at, ok := document.Locate(data, p.path); ok {
			return fmt.Errorf("%s:%d: %w", name, at.Line, err)
		}
	}
	return fmt.Errorf("%s: %w", name, err)
}

// read reads the file, and refuses with line and path what can't be.
func read(name string, data []byte) (s set, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s); err != nil {
		return s, err
	}
	at := func(path string, err error) error { return place(name, data, &placed{path, err}) }
	for i, r := range s.Rods {
		if _, err := r.Ends(); err != nil {
			return s, at(fmt.Sprintf("rods[%d]", i), err)
		}
	}
	switch weighed := s.weighed(); {
	case len(s.Pistons) == 0:
		return s, at("pistons", errors.New("there are no pistons in the file"))
	case len(s.Bores) > 0 && s.Clearance == nil:
		return s, at("bores", errors.New("bores without the clearance that is wanted"))
	case weighed > 0 && weighed < len(s.Pistons):
		return s, at("pistons", fmt.Errorf("%d of %d have a mass: weigh all of them, or none", weighed, len(s.Pistons)))
	case len(s.Bores) == 0 && weighed == 0 && len(s.Rods) == 0:
		return s, at("pistons", errors.New("neither bores, masses nor rods to match them with"))
	case s.Pads != nil && (s.Pads.Centres <= 0 || s.Pads.Big < 0 || s.Pads.Small < 0):
		return s, at("pads", errors.New("the centres must be above 0 mm, and a pad lies 0 mm or more beyond its bore's centre"))
	}
	if s.Clearance != nil {
		if _, err := s.wanted(); err != nil {
			return s, at("clearance", err)
		}
	}
	return s, nil
}

// weighed counts the pistons with a mass.
func (s set) weighed() (n int) {
	for _, p := range s.Pistons {
		if !p.Mass.IsZero() {
			n++
		}
	}
	return n
}

func (s set) wanted() (selective.Wanted, error) {
	if s.Clearance.Aim != nil {
		return selective.Wanted{Band: s.Clearance.Band, Aim: *s.Clearance.Aim}, nil
	}
	return selective.Middle(s.Clearance.Band)
}

func (s set) skirts() (parts []piston.MatchPart) {
	for _, p := range s.Pistons {
		parts = append(parts, piston.MatchPart{Where: p.Where, Size: p.Size})
	}
	return parts
}

func (s set) masses() (parts []piston.MassPart) {
	for _, p := range s.Pistons {
		parts = append(parts, piston.MassPart{Where: p.Where, Mass: p.Mass})
	}
	return parts
}

// rodMasses are the rods whole, their big ends and their small ends.
func (s set) rodMasses() (whole, big, small []piston.MassPart, err error) {
	for _, r := range s.Rods {
		ends, err := r.Ends()
		if err != nil {
			return nil, nil, nil, err
		}
		whole = append(whole, piston.MassPart{Where: r.Where, Mass: r.Whole})
		big = append(big, piston.MassPart{Where: r.Where, Mass: ends.BigEnd})
		small = append(small, piston.MassPart{Where: r.Where, Mass: ends.SmallEnd})
	}
	return whole, big, small, nil
}

func spread(b massBand) tolerance.SpecOf[units.Mass] { return tolerance.SpecOf[units.Mass]{New: b} }
