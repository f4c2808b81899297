package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/form"
	"github.com/tenthou/tenthou/units"
)

// paper is the file.
type paper struct {
	Schema     int          `json:"schema"`
	Part       string       `json:"part"`
	Surface    string       `json:"surface"` // "hole" or "shaft"
	Nominal    units.Length `json:"nominal"` // radius
	Unit       string       `json:"unit"`
	Deviations string       `json:"deviations"` // numbers between blanks
	Error      units.Length `json:"error,omitzero"`
	Roundness  limits       `json:"roundness,omitzero"`  // of RONt, a difference of radii
	OutOfRound limits       `json:"outOfRound,omitzero"` // a difference of diameters
}

type limits struct {
	New  tolerance.Printed `json:"new,omitzero"`
	Wear tolerance.Printed `json:"wear,omitzero"`
}

func (l limits) spec() tolerance.Spec {
	return tolerance.Spec{New: l.New.BandOf, Wear: l.Wear.BandOf}
}

// section is a section that was read, with its circles.
type section struct {
	paper
	profile  form.Profile
	shaft    bool                    // else a hole
	circles  []form.RoundnessLengths // of all kinds that there are
	zone     form.RoundnessLengths
	missing  []string // the circles that there aren't, and why
	spectrum form.Spectrum
}

const mostReadings = 3600

func read(name string, data []byte) (s section, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return s, err
	}
	if err = document.DecodeNamed(name, data, &s.paper); err != nil {
		return s, err
	}
	at := func(path string, err error) error {
		where, _ := document.Locate(data, path)
		return fmt.Errorf("%s:%d: %s: %w", name, where.Line, path, err)
	}
	switch {
	case s.Surface != "hole" && s.Surface != "shaft":
		return s, at("surface", fmt.Errorf("a part is a hole or a shaft, not %.64q", s.Surface))
	case s.Error < 0 || s.Error > 0 && s.Error >= s.Nominal:
		return s, at("error", fmt.Errorf("an error is 0 mm or more and below the radius, not %v", s.Error))
	}
	unit, err := units.ParseUnit[units.Length](s.Unit)
	if err != nil {
		return s, at("unit", err)
	}
	s.profile.Nominal, s.shaft = s.Nominal, s.Surface == "shaft"
	for i, f := range strings.Fields(s.Deviations) {
		d, err := units.ParseIn(f, unit)
		if err != nil {
			return s, at("deviations", fmt.Errorf("reading %d: %w", i+1, err))
		}
		s.profile.Deviations = append(s.profile.Deviations, d)
	}
	if n := len(s.profile.Deviations); n < 8 || n > mostReadings {
		return s, at("deviations", fmt.Errorf("%d readings: give 8 to %d, at equal angles", n, mostReadings))
	}
	for _, kind := range []form.CircleKind{form.LSCI, form.MZCI, form.MICI, form.MCCI} {
		c, err := s.profile.Roundness(kind)
		switch {
		case err == nil:
			s.circles = append(s.circles, c)
		case kind == form.MZCI || kind == form.LSCI:
			return s, at("deviations", err)
		default:
			s.missing = append(s.missing, fmt.Sprintf("%v: %v", kind, err))
		}
	}
	s.zone = s.circles[1]
	radii, err := s.profile.Radii(units.InMillimetres)
	if err == nil {
		s.spectrum, err = form.Harmonics(radii)
	}
	if err != nil {
		return s, at("deviations", err)
	}
	return s, nil
}

// within widens a figure by what the readings' errors may do to it; below zero
// it can't be.
func within(l, e units.Length) tolerance.Bracket {
	b, _ := tolerance.NewInterval(l.Sub(e).Max(0), tolerance.Closed, l.Add(e), tolerance.Closed)
	return b
}
