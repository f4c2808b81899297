package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A Budget is what a result's uncertainty is made of: a line for each source.
// It is plain data; [Budget.Text] and [Budget.Markdown] set it out as a table.
type Budget struct {
	Unit     string  `json:"unit"`     // of value, standard uncertainty and contributions
	Value    float64 `json:"value"`    // of the result
	Standard float64 `json:"standard"` // combined standard uncertainty
	Freedom  Freedom `json:"freedom"`  // effective, not truncated
	Lines    []Line  `json:"lines"`    // one for each source
	// NearKink says that first order tells too little here: see
	// [EstimateOf.NearKink].
	NearKink bool `json:"nearKink,omitzero"`
}

// A Line is one source's part in a budget (GUM 5.1.2).
type Line struct {
	Source       string  `json:"source"`       // its name
	Unit         string  `json:"unit"`         // of the source's standard uncertainty
	Shape        Shape   `json:"shape"`        // its distribution
	Standard     float64 `json:"standard"`     // in Unit
	Freedom      Freedom `json:"freedom"`      // degrees of freedom of Standard
	Sensitivity  float64 `json:"sensitivity"`  // the result's unit for each of Unit
	Contribution float64 `json:"contribution"` // sensitivity times standard uncertainty, signed
	Share        float64 `json:"share"`        // part of the combined variance, 0 to 1
}

// Budget lists what the uncertainty is made of, in unit u: the sources in the
// order in which they came into the calculation, then those of also that it
// doesn't depend on, with a sensitivity of zero. Sources of the same quantity
// are in unit u too.
//
// An estimate out of range is an [ErrRange]; one without any source an
// [ErrEmpty].
func (e EstimateOf[Q]) Budget(u units.Unit[Q], also ...*Source) (Budget, error) {
	if !e.InRange() {
		return Budget{}, refuse("budget", "", "estimate", "", ErrRange, "an estimate in range")
	}
	b := Budget{Unit: u.Symbol(), NearKink: e.terms.kink}
	b.Value, b.Standard = e.Float(u)
	first := units.Unit[Q](0)
	return b.list(&e.terms, also, first.Symbol(), quantaIn(u)/quantaIn(first), 1/quantaIn(u))
}

// Budget lists what the uncertainty is made of; unit names the unit that the
// number is in. Errors and order as for [EstimateOf.Budget].
func (d Dual) Budget(unit string, also ...*Source) (Budget, error) {
	if !d.InRange() {
		return Budget{}, refuse("budget", "", "number", "", ErrRange, "a number in range")
	}
	b := Budget{Unit: unit, Value: d.value, Standard: d.StandardUncertainty(), NearKink: d.terms.kink}
	return b.list(&d.terms, also, "", 1, 1)
}

// list adds the lines. Sources whose unit is own are shown in b.Unit instead,
// which is so many of own; scale turns sensitivities into b.Unit.
func (b Budget) list(t *terms, also []*Source, own string, many, scale float64) (Budget, error) {
	sources := t.sources()
	for _, s := range also {
		if s != nil && t.of(s) == 0 {
			sources = append(sources, s)
		}
	}
	if len(sources) == 0 {
		return Budget{}, refuse("budget", "", "sources", "", ErrEmpty, "an estimate that depends on something")
	}
	b.Freedom = t.freedom()
	for _, s := range sources {
		l := Line{Source: s.name, Unit: s.unit, Shape: s.shape, Freedom: s.freedom}
		per := s.size
		if own != "" && s.unit == own {
			l.Unit, per = b.Unit, s.size*many
		}
		c := t.of(s) * scale
		l.Standard, l.Sensitivity, l.Contribution = s.spread/per, c*per, c*s.spread
		if b.Standard > 0 {
			l.Share = (l.Contribution / b.Standard) * (l.Contribution / b.Standard)
		}
		b.Lines = append(b.Lines, l)
	}
	return b, nil
}

// Expanded is the coverage factor and the expanded uncertainty, in the
// budget's unit, that cover a part p of the values. Errors as for
// [EstimateOf.Expanded].
func (b Budget) Expanded(p float64) (k, expanded float64, err error) {
	if k, err = CoverageFactor(p, b.Freedom); err != nil {
		return 0, 0, err
	}
	return k, k * b.Standard, nil
}

// Greatest is the line that contributes most: what to better first. A budget
// without lines is an [ErrEmpty].
func (b Budget) Greatest() (Line, error) {
	if len(b.Lines) == 0 {
		return Line{}, refuse("budget", "", "lines", "", ErrEmpty, "a budget with lines")
	}
	top := b.Lines[0]
	for _, l := range b.Lines[1:] {
		if math.Abs(l.Contribution) > math.Abs(top.Contribution) {
			top = l
		}
	}
	return top, nil
}
