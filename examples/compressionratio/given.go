package main

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// given is what the flags say.
type given struct {
	build                   cylinder.Build
	cylinders               int
	rebore, skim, blockSkim tolerance.Bracket
	teeth                   int
	pitch                   units.Length
	squish                  cylinder.SquishCheck
	wanted                  tolerance.Ratio
	working                 bool
}

// reader reads flags and keeps the first that can't be read.
type reader struct{ err error }

// read is the value of a flag; one that was left empty was not given.
func read[T any](r *reader, name, text string, parse func(string) (T, error)) (v T) {
	if text == "" || r.err != nil {
		return v
	}
	v, err := parse(text)
	if err != nil {
		r.err = fmt.Errorf("-%s: %w", name, err)
	}
	return v
}

func length(r *reader, name, text string) tolerance.Bracket {
	return read(r, name, text, tolerance.ParseBracket)
}

func volume(r *reader, name, text string) cylinder.VolumeBracket {
	return read(r, name, text, tolerance.ParseInterval[units.Volume])
}

func (r *reader) fail(name, text, want string) {
	if r.err == nil {
		r.err = fmt.Errorf("-%s: %q: %s", name, text, want)
	}
}

// machining refuses a rebore that isn't one, and a skim of a chamber that isn't
// known.
func (g *given) machining(r *reader, rebore, skim string) {
	bore, _ := g.build.Bore.Lower()
	if to, end := g.rebore.Upper(); end != tolerance.Absent && to < bore {
		r.fail("rebore", rebore, "a rebore is larger than the bore, "+g.build.Bore.String())
	}
	if !g.skim.IsZero() && g.build.OpenAreaMM2 == 0 {
		r.fail("skim", skim, "give -area too, the chamber's own open area at the face, not the bore's")
	}
}

// chain is the camshaft's drive.
func (g *given) chain(r *reader, pitch string) {
	g.pitch = read(r, "pitch", pitch, units.ParseLength)
	if (g.teeth != 0) != (pitch != "") {
		r.fail("pitch", pitch, "give -teeth and -pitch together")
	}
}

// pistons are the decks of all of them, and the squish's limits.
func (g *given) pistons(r *reader, decks, limits string) {
	if decks == "" {
		if limits != "" {
			r.fail("squish", limits, "give the decks of all pistons with -pistons")
		}
		return
	}
	for i, text := range strings.Split(decks, ";") {
		g.squish.Pistons = append(g.squish.Pistons, cylinder.PistonDeck{Where: fmt.Sprintf("piston %d", i+1), Deck: read(r, "pistons", text, cylinder.ParseDeck)})
	}
	g.squish.Gasket = g.build.Gasket.Thickness
	g.squish.Limits.New = read(r, "squish", limits, tolerance.ParseBand)
}

// ratio is the one wanted: 10.5, or 10.5:1.
func (g *given) ratio(r *reader, text string) {
	g.wanted = read(r, "wanted", strings.TrimSuffix(strings.ReplaceAll(text, " ", ""), ":1"), tolerance.ParseRatio)
}
