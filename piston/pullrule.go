package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// PullClearance is the clearance that a pull test tells, on the diameter: the
// thickness of the strip and what the rule allows for its drag.
func PullClearance[N tolerance.Number[N]](strip, allowance N) N { return strip.Add(allowance) }

// PullStrip is the thickness of strip that a clearance answers to by a rule:
// the inverse of [PullClearance].
func PullStrip[N tolerance.Number[N]](clearance, allowance N) N { return clearance.Sub(allowance) }

// PullAllowance is what a rule must allow for a strip's drag, from a pull in a
// clearance known by micrometers: the inverse of [PullClearance] for the
// allowance, and the way to a rule of one's own.
func PullAllowance[N tolerance.Number[N]](clearance, strip N) N { return clearance.Sub(strip) }

// PullFilm says whether strip and walls were oiled for a pull test. The zero
// value is FilmNotStated.
type PullFilm uint8

// The films.
const (
	FilmNotStated PullFilm = iota // by the rule, or not recorded
	FilmDry                       // wiped clean of oil
	FilmOiled                     // oiled
)

var filmNames = []string{"not stated", "dry", "oiled"}

// String is the film in words.
func (f PullFilm) String() string { return word(filmNames, uint8(f)) }

// MarshalText writes what String gives.
func (f PullFilm) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// UnmarshalText reads what String gives.
func (f *PullFilm) UnmarshalText(text []byte) error { return readWord("film", filmNames, text, f) }

// A PullRule is a rule for telling a piston's clearance from the pull of a
// feeler strip between skirt and bore. Manuals give different ones, which
// disagree, so a rule is the user's data and its name goes with the answer.
//
// A strip of thickness t that slides with a pull in the rule's band tells a
// clearance of t and the allowance. One that slides more easily tells a larger
// clearance, one that pulls harder a smaller one.
type PullRule struct {
	Name   string `json:"name"`   // to choose it by, and to name in the answer
	Source string `json:"source"` // where it is from
	// Strip is the thickness that the rule is for; the zero Band is any, to be
	// tried until one pulls as it should.
	Strip  tolerance.Band                      `json:"strip,omitzero"`
	Width  units.Length                        `json:"width,omitzero"`       // of the strip; 0 where the source gives none
	Length units.Length                        `json:"length,omitzero"`      // of the strip; 0 where the source gives none
	Pull   tolerance.BandOf[units.Force]       `json:"pull"`                 // least and greatest
	Film   PullFilm                            `json:"film,omitzero"`        // dry or oiled
	Place  string                              `json:"place,omitempty"`      // where the strip goes
	At     tolerance.BandOf[units.Temperature] `json:"temperature,omitzero"` // of piston and bore
	Adds   tolerance.Bracket                   `json:"allowance"`            // clearance less strip, for a pull in the band
}

// check refuses what is no rule.
func (r *PullRule) check() error {
	lo, loEnd := r.Adds.Lower()
	hi, hiEnd := r.Adds.Upper()
	_, pullEnd := r.Pull.Upper()
	least, leastEnd := r.Pull.Lower()
	bad := func(field, value, want string) error { return &InputError{r.field(field), value, want} }
	switch {
	case r.Name == "":
		return &InputError{"pull rule", "(no name)", "named, so that the answer can name it"}
	case r.Source == "":
		return bad("source", "(none)", "where the rule is from: rules disagree")
	case pullEnd == tolerance.Absent || leastEnd == tolerance.Absent || least < 0 || !r.Pull.InRange():
		return bad("pull", r.Pull.String(), "a band with a least, 0 N or more, and a greatest")
	case loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < -units.Millimetre || hi > units.Millimetre || !r.Adds.InRange():
		return bad("allowance", r.Adds.String(), "what the strip's drag comes to, with both ends: +.001 in")
	case !r.Strip.InRange() || !r.At.InRange():
		return bad("strip or temperature", r.Strip.String()+", "+r.At.String(), "in range")
	case r.Width < 0 || r.Length < 0:
		return bad("strip width or length", r.Width.String()+", "+r.Length.String(), "0 mm or more")
	}
	return nil
}

func (r *PullRule) field(name string) string {
	return "pull rule " + clip([]byte(r.Name)) + ", " + name
}

// StripFor is the thickness of strip that would slide with a pull in the rule's
// band in a clearance: what to try next. ok is false where the rule is for
// strips of other thicknesses.
func (r PullRule) StripFor(clearance tolerance.Bracket) (strip tolerance.Bracket, ok bool) {
	strip = PullStrip(clearance, r.Adds)
	if r.Strip.IsZero() {
		return strip, strip.InRange()
	}
	strip, ok = strip.Intersect(r.Strip.Interval())
	return strip, ok
}

// PublishedPullRules are two rules from United States Army manuals, as examples
// of rules that disagree; the engine maker's own governs. Both are incomplete:
// neither says how wide the strip is nor whether it is oiled.
//
// The first gives 6 lb (2.7 kg) without limits; that a pull from 5.5 to 6.5 lbf
// counts as that, which is what the figure rounds to, is this package's
// reading. The second gives 0.5 to 1.5 kg and a clearance of 0.025 to 0.045 mm
// for a strip of 0.04 mm, so that it allows from −0.015 to +0.005 mm, and 20 °C
// (taken here for 15 to 25 °C).
func PublishedPullRules() []PullRule {
	pounds, _ := tolerance.Between(11*units.PoundForce/2, 13*units.PoundForce/2)
	kilograms, _ := tolerance.Between(units.KilogramForce/2, 3*units.KilogramForce/2)
	strip, _ := tolerance.Between(40*units.Micrometre, 40*units.Micrometre)
	room, _ := tolerance.Between[units.Temperature](15*units.CELSIUS, 25*units.CELSIUS)
	adds, _ := tolerance.NewInterval(-15*units.Micrometre, tolerance.Closed, 5*units.Micrometre, tolerance.Closed)
	return []PullRule{
		{Name: "6 lb", Source: "TM 9-2815-202-34, p. 6-36; TM 5-4210-233-14&P-2, p. 6-185; TM 5-3810-303-24",
			Pull: pounds, Place: "four places 90° apart, piston upside down", Adds: tolerance.Exactly(units.Thou)},
		{Name: "0.04 mm strip", Source: "TM 10-3930-653-14&P",
			Strip: strip, Pull: kilograms, At: room, Adds: adds},
	}
}
