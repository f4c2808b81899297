package uncertainty

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"

	"gonum.org/v1/gonum/mathext"
)

// A StudyOf is what a class, or a shop, measures to find out how good its
// measuring is: some operators each measure the same parts a few times, none
// seeing what the others read. Readings[o][p][t] is what operator o read on
// part p the t-th time.
type StudyOf[Q units.Quantity] struct {
	Readings [][][]Q `json:"readings"`
}

// A Study is a study of a length.
type Study = StudyOf[units.Length]

// Interaction says what an analysis of variance does with the interaction of
// operators and parts: some operators reading some parts high.
type Interaction uint8

// What may be done with the interaction.
const (
	// PoolUnlessPlain takes it for scatter unless it stands out with a
	// significance of 0.25, as is the custom.
	PoolUnlessPlain Interaction = iota
	// PoolAlways takes it for scatter.
	PoolAlways
	// KeepApart keeps it as a cause of its own.
	KeepApart
)

// poolAbove is the significance above which an interaction is taken for scatter.
const poolAbove = 0.25

// size is the number of operators, parts and trials; it refuses a study that
// isn't balanced.
func (s StudyOf[Q]) size(op string) (o, p, t int, err error) {
	if o = len(s.Readings); o < 2 {
		return 0, 0, 0, refuse(op, "", "operators", o, ErrTooFew, "at least 2")
	}
	if p = len(s.Readings[0]); p < 2 {
		return 0, 0, 0, refuse(op, "", "parts", p, ErrTooFew, "at least 2")
	}
	if t = len(s.Readings[0][0]); t < 2 {
		return 0, 0, 0, refuse(op, "", "trials", t, ErrTooFew, "at least 2")
	}
	for i, parts := range s.Readings {
		if len(parts) != p {
			return 0, 0, 0, refuse(op, "", fmt.Sprintf("parts of operator %d", i+1), len(parts), ErrUnbalanced, fmt.Sprintf("%d, as the first", p))
		}
		for j, trials := range parts {
			if len(trials) != t {
				return 0, 0, 0, refuse(op, "", fmt.Sprintf("trials of operator %d on part %d", i+1, j+1), len(trials), ErrUnbalanced, fmt.Sprintf("%d, as the first", t))
			}
			for k, q := range trials {
				if !units.InRange(q) {
					return 0, 0, 0, refuse(op, "", fmt.Sprintf("reading of operator %d on part %d, trial %d", i+1, j+1, k+1), "", ErrRange, "a value in range")
				}
			}
		}
	}
	return o, p, t, nil
}

// An Effect is one line of an analysis of variance.
type Effect struct {
	Squares float64 `json:"squares"`         // sum of squares, in the square of the unit
	Freedom int     `json:"freedom"`         // degrees of freedom
	Mean    float64 `json:"mean"`            // squares over degrees of freedom
	F       float64 `json:"f,omitzero"`      // ratio to the mean square that it is tested by
	Chance  float64 `json:"chance,omitzero"` // probability of that ratio or more by chance
}

func effect(squares float64, freedom int) Effect {
	return Effect{Squares: squares, Freedom: freedom, Mean: squares / float64(freedom)}
}

func (e *Effect) testBy(o Effect) {
	if o.Mean > 0 {
		e.F = e.Mean / o.Mean
		a, b := float64(e.Freedom), float64(o.Freedom)
		e.Chance = mathext.RegIncBeta(b/2, a/2, b/(b+a*e.F))
	}
}

// Components are the standard deviations of what readings differ by, in one
// unit, and the usual ratios. It is plain data.
type Components struct {
	Unit          string  `json:"unit"`                 // of all of them
	Repeatability float64 `json:"repeatability"`        // one operator, one part, again and again
	Operators     float64 `json:"operators"`            // between operators
	Interaction   float64 `json:"interaction,omitzero"` // operators who differ on some parts more than on others
	Parts         float64 `json:"parts"`                // between parts
}

// Reproducibility is the standard deviation between operators, their
// interaction with parts included.
func (c Components) Reproducibility() float64 { return math.Hypot(c.Operators, c.Interaction) }

// Measuring is the standard deviation of measuring: repeatability and
// reproducibility together.
func (c Components) Measuring() float64 { return math.Hypot(c.Repeatability, c.Reproducibility()) }

// Total is the standard deviation of all readings: measuring and parts.
func (c Components) Total() float64 { return math.Hypot(c.Measuring(), c.Parts) }

// OfTotal is a component as a part of the total, standard deviation by
// standard deviation. Such parts don't add up to 1; their squares do.
func (c Components) OfTotal(component float64) float64 {
	if t := c.Total(); t > 0 {
		return component / t
	}
	return 0
}

// ShareOfVariance is a component's part in the total variance. Those of
// repeatability, operators, interaction and parts add up to 1.
func (c Components) ShareOfVariance(component float64) float64 {
	x := c.OfTotal(component)
	return x * x
}

// Categories is how many classes of parts the measuring can tell apart:
// √2·parts/measuring. Five and more is good by custom; the whole number is cut,
// not rounded. Where measuring has no scatter at all it is +∞.
func (c Components) Categories() float64 {
	m := c.Measuring()
	if m == 0 {
		return math.Inf(1)
	}
	return math.Sqrt2 * c.Parts / m
}

// OfBand is measuring as a part of what is allowed: six standard deviations
// of measuring over the span of the band. Under 0.1 is good by custom, over
// 0.3 is not. A band without both limits has no span and is an [ErrNoLimit].
func OfBand[Q units.Quantity](c Components, b tolerance.BandOf[Q]) (float64, error) {
	span, ok := b.Interval().Width()
	if !ok || span <= 0 || !units.InRange(span) {
		return 0, refuse("part of the band", "", "band", b, ErrNoLimit, "a band with two limits apart")
	}
	u, err := units.ParseUnit[Q](c.Unit)
	if err != nil {
		return 0, err
	}
	return 6 * c.Measuring() * quantaIn(u) / float64(span), nil
}
