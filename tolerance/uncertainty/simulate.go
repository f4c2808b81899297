package uncertainty

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// Simulate propagates a formula by simulation (JCGM 101): in each trial every
// source of the inputs is drawn once from its distribution, the inputs are
// calculated from the draws, each rounded to the quantum, and f gives the
// trial's result. What inputs share they share in every trial.
//
// It is for formulas for which first order isn't enough: near a kink, a pole
// or a crest ([EstimateOf.NearKink]). Inputs that are themselves results
// bring their sources in by their first-order sensitivities, so give the
// formula's own inputs. f must be a pure function; x is lent to it for the
// one call, x[i] being a value of inputs[i].
//
// No inputs, or no formula, are an [ErrEmpty]; blocks that aren't in order an
// [ErrBlocks]; an input out of range, or a trial in which the result is, an
// [ErrRange] that names the trial.
func Simulate[Q units.Quantity](b Blocks, inputs []EstimateOf[Q], f func(x []Q) Q) (SampleOf[Q], error) {
	const op = "simulation"
	values := make([]Q, len(inputs))
	all := make([]*terms, len(inputs))
	for i := range inputs {
		if !inputs[i].InRange() {
			return SampleOf[Q]{}, refuse(op, "", "input", strconv.Itoa(i+1), ErrRange, "an estimate in range")
		}
		values[i], all[i] = inputs[i].value, &inputs[i].terms
	}
	if f == nil {
		return SampleOf[Q]{}, refuse(op, "", "formula", "", ErrEmpty, "a function of the inputs")
	}
	x := make([]Q, len(inputs))
	s, err := simulate(b, all, func(deviations []float64) float64 {
		for i, d := range deviations {
			if x[i] = values[i] + Q(math.RoundToEven(d)); math.Abs(d) > 1<<61 {
				x[i] = units.OutOfRange[Q]()
			}
		}
		if y := f(x); units.InRange(y) {
			return float64(y)
		}
		return math.NaN()
	})
	return SampleOf[Q]{s}, err
}

// SimulateReal is [Simulate] for formulas that cross quantities, over
// [tolerance.Real].
func SimulateReal(b Blocks, inputs []Dual, f func(x []tolerance.Float) tolerance.Float) (Sample, error) {
	const op = "simulation"
	all := make([]*terms, len(inputs))
	for i := range inputs {
		if !inputs[i].InRange() {
			return Sample{}, refuse(op, "", "input", strconv.Itoa(i+1), ErrRange, "a number in range")
		}
		all[i] = &inputs[i].terms
	}
	if f == nil {
		return Sample{}, refuse(op, "", "formula", "", ErrEmpty, "a function of the inputs")
	}
	x := make([]tolerance.Float, len(inputs))
	return simulate(b, all, func(deviations []float64) float64 {
		for i, d := range deviations {
			x[i] = tolerance.Float(inputs[i].value + d)
		}
		return float64(f(x))
	})
}

// batch is how many trials are drawn at a time: what they need stays in the
// processor's nearest cache.
const batch = 250

// simulate runs the blocks: trial gives the result for the deviations of the
// inputs from their values.
func simulate(b Blocks, inputs []*terms, trial func(deviations []float64) float64) (Sample, error) {
	const op = "simulation"
	if err := b.check(op); err != nil {
		return Sample{}, err
	}
	n := len(inputs)
	if n == 0 {
		return Sample{}, refuse(op, "", "inputs", 0, ErrEmpty, "at least one")
	}
	m := modelOf(inputs)
	deviations := make([]float64, batch*n)
	drawn := make([]float64, batch)
	out := make([]float64, 0, b.Len())
	for block := b.From; block < b.To; block++ {
		stream := newStream(b.Seed, block)
		for range BlockTrials / batch {
			clear(deviations)
			for _, s := range m {
				stream.Fill(drawn, s.source.shape, s.source.freedom)
				for _, in := range s.inputs {
					for t, z := range drawn {
						deviations[t*n+in.input] += float64(in.scale * z)
					}
				}
			}
			for t := range batch {
				y := trial(deviations[t*n : t*n+n])
				if y-y != 0 {
					return Sample{}, refuse(op, "", "trial", strconv.FormatInt(int64(block)*BlockTrials+int64(len(out)%BlockTrials), 10), ErrRange,
						"a formula that is in range for all that its inputs may be")
				}
				out = append(out, y)
			}
		}
	}
	order(out)
	return Sample{sorted: out, blocks: []Blocks{b}}, nil
}

// A drawnSource is a source and the inputs that it moves.
type drawnSource struct {
	source *Source
	inputs []movedInput
}

type movedInput struct {
	input int
	scale float64 // how far one standard deviation moves it
}

// modelOf lists the sources in the order in which they came in.
func modelOf(inputs []*terms) (m []drawnSource) {
	place := make(map[*Source]int)
	for i, t := range inputs {
		for j := range t.n {
			s, c := t.at(j)
			k, ok := place[s]
			if !ok {
				k = len(m)
				place[s] = k
				m = append(m, drawnSource{source: s})
			}
			m[k].inputs = append(m[k].inputs, movedInput{i, c * s.spread})
		}
	}
	return m
}
