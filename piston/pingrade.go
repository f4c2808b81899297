package piston

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
)

// A PinPair names the pin's grade that goes with a boss's.
type PinPair struct {
	Boss string `json:"boss"` // the boss's grade, as it is marked
	Pin  string `json:"pin"`  // the pin's
}

// PinGrades are a maker's grades of pins and of the bosses for them. Names,
// such as the colours of paint marks, and sizes are the user's own data.
type PinGrades struct {
	Pins   selective.Grades `json:"pins"`           // of the pins
	Bosses selective.Grades `json:"bosses"`         // of the bosses
	Pairs  []PinPair        `json:"pairs,omitzero"` // which go together; left out where like goes with like
	Wanted tolerance.Band   `json:"wanted"`         // the clearance; the zero Band where none is given
}

// A PinGradeFit is what a pair of grades makes of the clearance.
type PinGradeFit struct {
	PinPair
	// Clearance is of all pins of the one grade in all bosses of the other.
	Clearance tolerance.Band `json:"clearance"`
	// Verdict is on it: Within where every pair of parts keeps the wanted
	// clearance, Below or Above where some don't and on which side, Undecided
	// where some are on both sides or no clearance is wanted.
	Verdict tolerance.Verdict `json:"verdict"`
}

// pairs are the pairs given, or each boss's grade with the pin's of that name.
func (g PinGrades) pairs() []PinPair {
	if g.Pairs != nil {
		return g.Pairs
	}
	pairs := make([]PinPair, 0, len(g.Bosses))
	for _, b := range g.Bosses {
		pairs = append(pairs, PinPair{b.Name, b.Name})
	}
	return pairs
}

func pinGrade(grades selective.Grades, name string) (tolerance.Band, bool) {
	for _, g := range grades {
		if g.Name == name {
			return g.Band, true
		}
	}
	return tolerance.Band{}, false
}

// Fits works out the clearance that each pair of grades gives, the worst of its
// parts included. It fails with an error of package selective where a table
// can't be used, and with an [InputError] where a pair names a grade that isn't
// in its table or stands twice.
func (g PinGrades) Fits() ([]PinGradeFit, error) {
	if _, err := g.Pins.Validate(); err != nil {
		return nil, err
	}
	if _, err := g.Bosses.Validate(); err != nil {
		return nil, err
	}
	var fits []PinGradeFit
	seen := map[string]bool{}
	for _, p := range g.pairs() {
		boss, ok := pinGrade(g.Bosses, p.Boss)
		if !ok || seen[p.Boss] {
			return nil, &InputError{"boss grade of a pair", clip([]byte(p.Boss)), "a grade of the table of bosses, each in one pair"}
		}
		seen[p.Boss] = true
		pin, ok := pinGrade(g.Pins, p.Pin)
		if !ok {
			return nil, &InputError{"pin grade of a pair", clip([]byte(p.Pin)), "a grade of the table of pins, to go with the bosses' " + clip([]byte(p.Boss))}
		}
		fit, err := tolerance.FitBands(boss, pin)
		if err != nil {
			return nil, &InputError{"grades of a pair", clip([]byte(p.Boss)), "bands of sizes: " + err.Error()}
		}
		c := fit.Clearance()
		fits = append(fits, PinGradeFit{p, tolerance.BandFrom(c), bandVerdict(g.Wanted, c)})
	}
	return fits, nil
}

// bandVerdict judges all of a range at once: beyond a limit where any of it is.
func bandVerdict(wanted tolerance.Band, all tolerance.Bracket) tolerance.Verdict {
	v := wanted.Judge(all)
	if v != tolerance.Undecided || wanted.IsZero() {
		return v
	}
	lo, loEnd := all.Lower()
	hi, hiEnd := all.Upper()
	wlo, wloEnd := wanted.Lower()
	whi, whiEnd := wanted.Upper()
	under := wloEnd != tolerance.Absent && (loEnd == tolerance.Absent || lo < wlo || lo == wlo && wloEnd == tolerance.Open && loEnd == tolerance.Closed)
	over := whiEnd != tolerance.Absent && (hiEnd == tolerance.Absent || hi > whi || hi == whi && whiEnd == tolerance.Open && hiEnd == tolerance.Closed)
	switch {
	case under && !over:
		return tolerance.Below
	case over && !under:
		return tolerance.Above
	}
	return tolerance.Undecided
}

// A PinSelection is what the grades say of a pin and a boss that were measured.
type PinSelection struct {
	Pin       selective.Place   `json:"pin"`       // which grades the pin may be of
	Boss      selective.Place   `json:"boss"`      // and the boss
	Clearance tolerance.Bracket `json:"clearance"` // of the two as measured
	Verdict   tolerance.Verdict `json:"verdict"`   // on it, by the wanted band
	GoWith    []string          `json:"goWith"`    // the pins' grades that go with what the boss may be of
	Match     PinMatch          `json:"match"`     // whether the pin's grade goes with the boss's
}

// A PinMatch tells whether a pin's grade goes with a boss's. The zero value is
// PinMatchOpen.
type PinMatch uint8

// The matches.
const (
	PinMatchOpen PinMatch = iota // either may be of another grade too, or of none
	PinMatches                   // for certain
	PinMismatch                  // for certain the pin is of no grade that goes with the boss's
)

var pinMatchNames = []string{"can't tell", "goes with it", "does not go with it"}

// String is the match in words.
func (m PinMatch) String() string { return word(pinMatchNames, uint8(m)) }

// MarshalText writes what String gives.
func (m PinMatch) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what String gives.
func (m *PinMatch) UnmarshalText(text []byte) error {
	return readWord("pin match", pinMatchNames, text, m)
}

// Select places a pin and a boss that were measured, and says whether they go
// together: by their grades and by their clearance. Measured sizes go before
// marks, which may be another table's.
func (g PinGrades) Select(boss, pin tolerance.Bracket) (PinSelection, error) {
	var s PinSelection
	if _, err := g.Fits(); err != nil {
		return s, err
	}
	if err := skirtPair("boss", boss, "pin", pin); err != nil {
		return s, err
	}
	var err error
	if s.Pin, err = g.Pins.Place(pin); err != nil {
		return s, err
	}
	if s.Boss, err = g.Bosses.Place(boss); err != nil {
		return s, err
	}
	s.Clearance = PinClearance(boss, pin)
	s.Verdict = g.Wanted.Judge(s.Clearance)
	for _, p := range g.pairs() {
		for _, name := range s.Boss.Grades {
			if name == p.Boss {
				s.GoWith = append(s.GoWith, p.Pin)
			}
		}
	}
	s.Match = s.matches()
	return s, nil
}

func (s *PinSelection) matches() PinMatch {
	some := false
	for _, name := range s.Pin.Grades {
		for _, w := range s.GoWith {
			some = some || name == w
		}
	}
	_, pin := s.Pin.Grade()
	_, boss := s.Boss.Grade()
	switch {
	case some && pin && boss:
		return PinMatches
	case some:
		return PinMatchOpen
	}
	return PinMismatch
}

// ChoosePin finds the pin in stock whose clearance in a boss comes nearest to
// the wanted one; package selective says what nearest means. Of two as near it
// takes the greater clearance, and says so.
func ChoosePin(boss tolerance.Bracket, pins []selective.Class, wanted selective.Wanted) (selective.Choice, error) {
	if err := size("boss", boss); err != nil {
		return selective.Choice{}, err
	}
	return selective.Choose(boss, tolerance.Whole(-1), pins, wanted)
}
