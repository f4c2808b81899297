package uncertainty

import (
	"math"

	"github.com/tenthou/tenthou/units"
)

// ByRange analyses a study by averages and ranges, in unit u: the method for
// pencil and paper. It can't tell the interaction of operators and parts from
// scatter, and uses less of what was measured than [StudyOf.Analyse].
//
// Repeatability is the mean range of the cells over d₂ of the trials;
// operators are the range of their means over d₂* of their number, less what
// repeatability puts into those means; parts are the range of theirs over
// d₂*. The factors are calculated for any number ([RangeFactor]), to more
// places than tables print. Errors as for [StudyOf.Analyse].
func (s StudyOf[Q]) ByRange(u units.Unit[Q]) (Components, error) {
	o, p, t, err := s.size("average and range")
	if err != nil {
		return Components{}, err
	}
	size := quantaIn(u)
	base := int64(s.Readings[0][0][0])
	var ranges float64
	operators, parts := make([]float64, o), make([]float64, p)
	for i := range o {
		for j := range p {
			cell := s.Readings[i][j]
			least, greatest := cell[0], cell[0]
			for _, q := range cell {
				least, greatest = min(least, q), max(greatest, q)
				d := float64(int64(q)-base) / size
				operators[i] += d / float64(p*t)
				parts[j] += d / float64(o*t)
			}
			ranges += float64(greatest-least) / size / float64(o*p)
		}
	}
	each, err := RangeFactor(t)
	if err != nil {
		return Components{}, err
	}
	ofOperators, err := SingleRangeFactor(o)
	if err != nil {
		return Components{}, err
	}
	ofParts, err := SingleRangeFactor(p)
	if err != nil {
		return Components{}, err
	}
	c := Components{
		Unit:          u.Symbol(),
		Repeatability: ranges / each,
		Parts:         width(parts) / ofParts,
	}
	between := width(operators) / ofOperators
	c.Operators = math.Sqrt(max(0, between*between-c.Repeatability*c.Repeatability/float64(p*t)))
	return c, nil
}

func width(x []float64) float64 {
	least, greatest := x[0], x[0]
	for _, v := range x {
		least, greatest = min(least, v), max(greatest, v)
	}
	return greatest - least
}
