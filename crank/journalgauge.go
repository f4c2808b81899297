package crank

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// A journalGauge is a micrometer made ready: what is off in all its readings
// alike, and what is off in each.
type journalGauge struct {
	in                 instrument.Instrument // step and range folded into its errors
	shaft              instrument.Thermal
	cold               bool         // all at 20 °C: nothing to correct
	offset             units.Length // cold: size = shown + offset
	common, individual units.Length
}

// ready makes a survey's gauge ready, once its first reading has been taken: that
// checks gauge and shaft.
func (s *JournalSurvey) ready(g *journalGauge, first units.Length) error {
	in := &s.Gauge
	none := instrument.Thermal{}
	var err error
	if s.Shaft == none && in.Thermal == none && in.Setting.Thermal == none && !in.Together {
		err = in.Validate() // nothing to correct, which takes the time
	} else {
		_, err = in.Reading(first, s.Shaft)
	}
	if err != nil {
		return err
	}
	half := (in.Step + units.Picometre) / 2 // as package instrument rounds it
	g.common, g.individual = in.Setting.Error.Add(half), in.Error.Add(half)
	if g.common > journalLargest || g.individual > journalLargest {
		return &InputError{journalField(s.Where, "gauge error"), max(g.common, g.individual).String(), "an error that leaves something measured"}
	}
	still := func(t *instrument.Thermal) bool { return t.Above == 0 && t.AboveError == 0 }
	g.cold = still(&in.Thermal) && still(&in.Setting.Thermal) && still(&s.Shaft)
	g.offset = in.Setting.Standard - in.Setting.Reading
	if !g.cold {
		g.in, g.shaft = *in, s.Shaft
		// A mean lies between two steps.
		g.in.Step, g.in.Range = 0, tolerance.Band{}
		g.in.Error, g.in.Setting.Error = g.individual, g.common
	}
	return nil
}

// size holds the size at 20 °C of what showed from lo to hi.
func (g *journalGauge) size(lo, hi units.Length) (tolerance.Bracket, error) {
	if g.cold {
		off := g.common + g.individual
		return journalSpan(lo+g.offset-off, hi+g.offset+off), nil
	}
	a, err := g.in.Reading(lo, g.shaft)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	b, err := g.in.Reading(hi, g.shaft)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	least, _ := a.Bracket.Lower()
	greatest, _ := b.Bracket.Upper()
	return journalSpan(least, greatest), nil
}

// difference holds the difference, at 20 °C, of two sizes whose readings differ by
// lo to hi. What is common drops out; each reading's own error counts.
func (g *journalGauge) difference(lo, hi units.Length) (tolerance.Bracket, error) {
	if g.cold {
		off := 2 * g.individual
		return journalSpan(lo-off, hi+off), nil
	}
	var ends [2]tolerance.Bracket
	for i, d := range [2]units.Length{lo, hi} {
		set, err := g.in.Set(g.shaft, d, 0)
		if err != nil {
			return tolerance.Bracket{}, err
		}
		if ends[i], err = set.Difference(0, 1); err != nil {
			return tolerance.Bracket{}, err
		}
	}
	least, _ := ends[0].Lower()
	greatest, _ := ends[1].Upper()
	return journalSpan(least, greatest), nil
}

// spread is difference for a greatest less a least, which is not below zero.
func (g *journalGauge) spread(lo, hi units.Length) (tolerance.Bracket, error) {
	d, err := g.difference(lo, hi)
	if err != nil {
		return d, err
	}
	least, greatest := journalEnds(d)
	return journalSpan(max(least, 0), greatest), nil
}

// journalQuotient is sum ÷ n rounded down and up; n is above 0.
func journalQuotient(sum, n int64) (lo, hi units.Length) {
	q, rest := sum/n, sum%n
	switch {
	case rest == 0:
		return units.Length(q), units.Length(q)
	case rest < 0:
		q--
	}
	return units.Length(q), units.Length(q + 1)
}
