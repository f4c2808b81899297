package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// A Variance is the analysis of variance of a study: two ways, operators and
// parts, with repeated readings, both taken as picked at random. It is plain
// data; [Variance.Text] and [Variance.Markdown] set it out.
type Variance struct {
	Components
	PartEffect     Effect     `json:"partEffect"`        // between the parts
	OperatorEffect Effect     `json:"operatorEffect"`    // between the operators
	InterEffect    Effect     `json:"interactionEffect"` // operators who differ on some parts more than on others
	Scatter        Effect     `json:"scatter"`           // what is left within the cells
	Whole          Effect     `json:"whole"`             // all readings about their mean
	Pooled         bool       `json:"pooled"`            // the interaction was taken for scatter
	Error          Effect     `json:"error"`             // what repeatability comes from: scatter, with the interaction if pooled
	Each           []Operator `json:"each"`              // the operators one by one
}

// An Operator is how one operator measures beside the rest.
type Operator struct {
	Offset        float64 `json:"offset"`        // mean of the operator's readings less the mean of all
	Repeatability float64 `json:"repeatability"` // standard deviation of readings of one part
}

// Analyse analyses a study by analysis of variance, in unit u (ISO 5725-2;
// the mean squares' expectations as in any text on the random two-way
// layout). Parts and operators are tested by the interaction, the interaction
// by the scatter; where it is pooled, all by the error. A component whose
// estimate comes out negative is 0.
//
// Fewer than two operators, parts or trials are an [ErrTooFew], a cell of
// another size an [ErrUnbalanced], a reading out of range an [ErrRange].
func (s StudyOf[Q]) Analyse(u units.Unit[Q], interaction Interaction) (Variance, error) {
	o, p, t, err := s.size("analysis of variance")
	if err != nil {
		return Variance{}, err
	}
	c := s.cells(u, o, p, t)
	no, np, nt := float64(o), float64(p), float64(t)
	v := Variance{
		PartEffect:     effect(no*nt*c.parts, p-1),
		OperatorEffect: effect(np*nt*c.operators, o-1),
		InterEffect:    effect(nt*c.inter, (p-1)*(o-1)),
		Scatter:        effect(c.within, o*p*(t-1)),
		Each:           c.each,
	}
	v.Whole = effect(v.PartEffect.Squares+v.OperatorEffect.Squares+v.InterEffect.Squares+v.Scatter.Squares, o*p*t-1)
	v.InterEffect.testBy(v.Scatter)
	v.Pooled = interaction == PoolAlways || interaction != KeepApart && v.InterEffect.Chance > poolAbove
	v.Error = v.Scatter
	against := v.InterEffect
	if v.Pooled {
		v.Error = effect(v.Scatter.Squares+v.InterEffect.Squares, v.Scatter.Freedom+v.InterEffect.Freedom)
		against = v.Error
	}
	v.PartEffect.testBy(against)
	v.OperatorEffect.testBy(against)
	root := func(x float64) float64 { return math.Sqrt(max(0, x)) }
	v.Components = Components{
		Unit:          u.Symbol(),
		Repeatability: root(v.Error.Mean),
		Operators:     root((v.OperatorEffect.Mean - against.Mean) / (np * nt)),
		Parts:         root((v.PartEffect.Mean - against.Mean) / (no * nt)),
	}
	if !v.Pooled {
		v.Interaction = root((v.InterEffect.Mean - v.Scatter.Mean) / nt)
	}
	return v, nil
}

// cells are the sums of squares of means about means, and within the cells.
type cells struct {
	parts, operators, inter, within float64
	each                            []Operator
}

// cells takes every reading from the first, exactly, so that what is squared
// is small.
func (s StudyOf[Q]) cells(u units.Unit[Q], o, p, t int) (c cells) {
	size := quantaIn(u)
	base := int64(s.Readings[0][0][0])
	mean := make([]float64, o*p)
	ofPart, ofOperator, grand := make([]float64, p), make([]float64, o), 0.0
	c.each = make([]Operator, o)
	for i := range o {
		for j := range p {
			// The sum of a cell is exact: up to thousands of 62-bit numbers
			// would leave int64, so it goes by float64 beyond 2⁵³.
			total := 0.0
			for _, q := range s.Readings[i][j] {
				total += float64(int64(q) - base)
			}
			m := total / float64(t)
			for _, q := range s.Readings[i][j] {
				d := (float64(int64(q)-base) - m) / size
				c.each[i].Repeatability += d * d
			}
			mean[i*p+j] = m / size
			ofPart[j] += mean[i*p+j] / float64(o)
			ofOperator[i] += mean[i*p+j] / float64(p)
			grand += mean[i*p+j] / float64(o*p)
		}
		c.within += c.each[i].Repeatability
		c.each[i].Repeatability = math.Sqrt(c.each[i].Repeatability / float64(p*(t-1)))
	}
	for _, m := range ofPart {
		c.parts += (m - grand) * (m - grand)
	}
	for i, m := range ofOperator {
		c.each[i].Offset = m - grand
		c.operators += (m - grand) * (m - grand)
		for j := range p {
			d := mean[i*p+j] - m - ofPart[j] + grand
			c.inter += d * d
		}
	}
	return c
}
