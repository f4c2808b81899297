package cylinder

import (
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/instrument"
	"github.com/tenthou/tenthou/units"
)

// A boreGauge is a gauge made ready: what is off in all its readings alike, and
// what is off in each.
type boreGauge struct {
	in                 instrument.Instrument // step and range folded into its errors
	block              instrument.Thermal
	cold               bool         // all at 20 °C: nothing to correct
	offset             units.Length // cold: size = shown + offset
	common, individual units.Length
}

// gauge makes a survey's gauge ready, once its first reading has been taken:
// that checks gauge and block.
func (s *BoreSurvey) gauge(first units.Length) (g boreGauge, err error) {
	none := instrument.Thermal{}
	if s.Block == none && s.Gauge.Thermal == none && s.Gauge.Setting.Thermal == none && !s.Gauge.Together {
		err = s.Gauge.Validate() // nothing to correct, which takes the time
	} else {
		_, err = s.Gauge.Reading(first, s.Block)
	}
	if err != nil {
		return g, err
	}
	half := (s.Gauge.Step + units.Picometre) / 2 // as package instrument rounds it
	g.in, g.block = s.Gauge, s.Block
	g.common, g.individual = s.Gauge.Setting.Error.Add(half), s.Gauge.Error.Add(half)
	if g.common > largest || g.individual > largest {
		return g, &InputError{s.fieldName("gauge error"), max(g.common, g.individual).String(), "an error that leaves something measured"}
	}
	// A mean lies between two steps.
	g.in.Step, g.in.Range = 0, tolerance.Band{}
	g.in.Error, g.in.Setting.Error = g.individual, g.common
	still := func(t *instrument.Thermal) bool { return t.Above == 0 && t.AboveError == 0 }
	g.cold = still(&s.Gauge.Thermal) && still(&s.Gauge.Setting.Thermal) && still(&s.Block)
	g.offset = s.Gauge.Setting.Standard - s.Gauge.Setting.Reading
	return g, nil
}

// size holds the size at 20 °C of what showed from lo to hi.
func (g *boreGauge) size(lo, hi units.Length) (tolerance.Bracket, error) {
	if g.cold {
		off := g.common + g.individual
		return boreSpan(lo+g.offset-off, hi+g.offset+off), nil
	}
	a, err := g.in.Reading(lo, g.block)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	b, err := g.in.Reading(hi, g.block)
	if err != nil {
		return tolerance.Bracket{}, err
	}
	least, _ := a.Bracket.Lower()
	greatest, _ := b.Bracket.Upper()
	return boreSpan(least, greatest), nil
}

// difference holds the difference, at 20 °C, of two sizes whose readings
// differ by lo to hi. What is common drops out; each reading's own error
// counts.
func (g *boreGauge) difference(lo, hi units.Length) (tolerance.Bracket, error) {
	if g.cold {
		off := 2 * g.individual
		return boreSpan(lo-off, hi+off), nil
	}
	var ends [2]tolerance.Bracket
	for i, d := range [2]units.Length{lo, hi} {
		set, err := g.in.Set(g.block, d, 0)
		if err != nil {
			return tolerance.Bracket{}, err
		}
		if ends[i], err = set.Difference(0, 1); err != nil {
			return tolerance.Bracket{}, err
		}
	}
	least, _ := ends[0].Lower()
	greatest, _ := ends[1].Upper()
	return boreSpan(least, greatest), nil
}

// spread is difference for a greatest less a least, which is not below zero.
func (g *boreGauge) spread(lo, hi units.Length) (tolerance.Bracket, error) {
	d, err := g.difference(lo, hi)
	if err != nil {
		return d, err
	}
	least, _ := d.Lower()
	greatest, _ := d.Upper()
	return boreSpan(max(least, 0), greatest), nil
}

// boreSpan is [lo, hi]; out of range where they are not in order.
func boreSpan(lo, hi units.Length) tolerance.Bracket {
	b, err := tolerance.NewInterval(lo, tolerance.Closed, hi, tolerance.Closed)
	if err != nil {
		return tolerance.Exactly(units.OutOfRange[units.Length]())
	}
	return b
}
