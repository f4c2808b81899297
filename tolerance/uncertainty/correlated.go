package uncertainty

import (
	"fmt"
	"math"

	"github.com/tenthou/tenthou/units"
)

// CorrelatedReal makes numbers whose errors go together as a table of
// correlation coefficients says (GUM 5.2.2), where what they have in common
// isn't known as a source of its own. Each has its name, value and standard
// uncertainty; r[i][j] is the correlation of the i-th and the j-th.
//
// The errors are made of as many independent normal sources: the first is
// that of the first number; the next is what the second has apart from the
// first; and so on. In a budget they stand under the numbers' names.
//
// Lists of different length, an empty one, and a table that isn't symmetric
// with ones on its diagonal, or that no quantities can have (it isn't
// positive semidefinite), are refused as [ErrEmpty] and [ErrCorrelation].
func CorrelatedReal(names []string, values []float64, unit string, standard []float64, r [][]float64) ([]Dual, error) {
	all, err := correlated("correlated numbers", names, unit, 1, standard, r)
	if err != nil {
		return nil, err
	}
	if len(values) != len(names) {
		return nil, refuse("correlated numbers", "", "values", len(values), ErrEmpty, fmt.Sprintf("%d, as many as names", len(names)))
	}
	out := make([]Dual, len(values))
	for i, v := range values {
		if v-v != 0 {
			return nil, refuse("correlated numbers", names[i], "value", v, ErrNotFinite, "a finite number")
		}
		out[i] = Dual{value: v, terms: all[i]}
	}
	return out, nil
}

// Correlated is [CorrelatedReal] for quantities.
func Correlated[Q units.Quantity](names []string, values, standard []Q, r [][]float64) ([]EstimateOf[Q], error) {
	const op = "correlated estimates"
	if len(values) != len(names) || len(standard) != len(names) {
		return nil, refuse(op, "", "values and standard uncertainties", fmt.Sprintf("%d and %d", len(values), len(standard)), ErrEmpty,
			fmt.Sprintf("%d of each, as many as names", len(names)))
	}
	u := make([]float64, len(standard))
	for i, s := range standard {
		if !units.InRange(values[i]) || uint64(s)+1<<61 > 1<<62 {
			return nil, refuse(op, names[i], "value or standard uncertainty", "", ErrRange, "values in range")
		}
		u[i] = float64(s)
	}
	first := units.Unit[Q](0)
	all, err := correlated(op, names, first.Symbol(), quantaIn(first), u, r)
	if err != nil {
		return nil, err
	}
	out := make([]EstimateOf[Q], len(values))
	for i, v := range values {
		out[i] = EstimateOf[Q]{value: v, terms: all[i]}
	}
	return out, nil
}

// correlated factors the table r into L·Lᵀ with L lower triangular
// (Cholesky): the i-th number's error is Σ u[i]·L[i][j]·(source j), the
// sources independent with a standard deviation of 1.
func correlated(op string, names []string, unit string, size float64, u []float64, r [][]float64) ([]terms, error) {
	n := len(names)
	if n == 0 || len(u) != n || len(r) != n {
		return nil, refuse(op, "", "names, standard uncertainties and rows", fmt.Sprintf("%d, %d and %d", n, len(u), len(r)), ErrEmpty, "as many of each, at least one")
	}
	for i := range r {
		if len(r[i]) != n {
			return nil, refuse(op, names[i], "row of correlations", len(r[i]), ErrCorrelation, fmt.Sprintf("%d in each row", n))
		}
		for j := range r[i] {
			if i == j && r[i][j] != 1 || !(math.Abs(r[i][j]) <= 1) || len(r[j]) > i && r[i][j] != r[j][i] {
				return nil, refuse(op, names[i], "correlation", r[i][j], ErrCorrelation, "a symmetric table of −1 to 1, with 1 on its diagonal")
			}
			if i != j && r[i][j] != 0 && u[i] == 0 {
				return nil, refuse(op, names[i], "correlation", r[i][j], ErrCorrelation, "0, since it has no uncertainty to go with another's")
			}
		}
	}
	l, at := cholesky(r)
	if at >= 0 {
		return nil, refuse(op, names[at], "correlations", "", ErrCorrelation, "correlations that quantities can have together")
	}
	out := make([]terms, n)
	for j := range n {
		s, err := newSource(op, names[j], unit, size, NormalShape, u[j], nil)
		if err != nil {
			return nil, err
		}
		for i := j; i < n && u[j] > 0; i++ {
			// Source j has the spread u[j]; number i needs u[i]·l[i][j].
			one := oneTerm(s, l[i][j]*u[i]/u[j])
			out[i] = sum(&out[i], 1, &one, 1)
		}
	}
	return out, nil
}

// cholesky factors a symmetric table with ones on the diagonal. Where it is
// not positive semidefinite, as near as rounding lets tell, at is the row where that shows, else −1.
func cholesky(r [][]float64) (l [][]float64, at int) {
	const slack = 1e-14
	n := len(r)
	l = make([][]float64, n)
	for i := range n {
		l[i] = make([]float64, n)
		for j := 0; j <= i; j++ {
			rest := r[i][j]
			for k := range j {
				rest -= l[i][k] * l[j][k]
			}
			switch {
			case i == j && rest < -1e-9:
				return nil, i
			case i == j && rest > slack:
				l[i][i] = math.Sqrt(rest)
			case i == j: // wholly made of those before
			case l[j][j] > 0:
				l[i][j] = rest / l[j][j]
			case math.Abs(rest) > 1e-6:
				return nil, i
			}
		}
	}
	return l, -1
}
