package uncertainty_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

// 240 formulas propagated by a general-purpose library, half of them with
// correlated inputs, half of them across quantities.
func TestPropagation(t *testing.T) {
	vectors.Load(t, "reference/uncertainty_propagations.txt").Each(t, func(t *testing.T, c vectors.Case) {
		var values, standard []float64
		var names []string
		for i, in := range strings.Fields(c.Text("inputs")) {
			v, u, ok := strings.Cut(in, "±")
			require.True(t, ok)
			values = append(values, must(strconv.ParseFloat(v, 64)))
			standard = append(standard, must(strconv.ParseFloat(u, 64)))
			names = append(names, "x"+strconv.Itoa(i))
		}
		var rho [][]float64
		if c.Has("rho") {
			rho = triangle(t, c.Text("rho"), len(values))
		}
		formula := strings.Fields(c.Text("formula"))
		if c.Choice("kind", "number", "real") == "number" {
			numberCase(t, c, names, values, standard, rho, formula)
		} else {
			realCase(t, c, names, values, standard, rho, formula)
		}
	})
}

// triangle is the table whose lower triangle is given row by row.
func triangle(t *testing.T, text string, n int) [][]float64 {
	given := strings.Fields(text)
	require.Len(t, given, n*(n-1)/2)
	table := make([][]float64, n)
	for i := range table {
		table[i] = make([]float64, n)
		table[i][i] = 1
		for j := range i {
			table[i][j] = must(strconv.ParseFloat(given[0], 64))
			table[j][i] = table[i][j]
			given = given[1:]
		}
	}
	return table
}

func numberCase(t *testing.T, c vectors.Case, names []string, values, standard []float64, rho [][]float64, formula []string) {
	var v, u []units.Length
	for i := range values {
		v, u = append(v, units.Length(values[i])), append(u, units.Length(standard[i]))
	}
	var in []uncertainty.Estimate
	if rho != nil {
		in = must(uncertainty.Correlated(names, v, u, rho))
	} else {
		for i := range v {
			in = append(in, must(uncertainty.Normal(names[i], v[i], u[i])))
		}
	}
	y := polish(t, formula, in, func(t *testing.T, op string, arg string, s *stack[uncertainty.Estimate]) {
		switch op {
		case "scale", "scalepi":
			n, d, _ := strings.Cut(arg, "/")
			num, den := must(strconv.ParseInt(n, 10, 64)), must(strconv.ParseInt(d, 10, 64))
			if a := s.pop(); op == "scale" {
				s.push(a.Scale(num, den))
			} else {
				s.push(a.ScalePi(num, den))
			}
		case "abs":
			s.push(s.pop().Abs())
		case "spread":
			a, b, c := s.pop(), s.pop(), s.pop()
			s.push(a.Spread(b, c))
		case "muldiv", "share":
			c, b, a := s.pop(), s.pop(), s.pop()
			if op == "muldiv" {
				s.push(a.MulDiv(b, c))
			} else {
				s.push(a.Share(b, c))
			}
		default:
			b, a := s.pop(), s.pop()
			f := map[string]func(uncertainty.Estimate) uncertainty.Estimate{"add": a.Add, "sub": a.Sub, "min": a.Min, "max": a.Max}[op]
			require.NotNil(t, f, op)
			s.push(f(b))
		}
	})
	value, u0 := y.Float(units.InPicometres)
	c.Near("value", value)
	c.Near("standard", u0)
	c.Near("with_first", uncertainty.Correlation(y, in[0]))
}

func realCase(t *testing.T, c vectors.Case, names []string, values, standard []float64, rho [][]float64, formula []string) {
	var in []uncertainty.Dual
	if rho != nil {
		in = must(uncertainty.CorrelatedReal(names, values, "", standard, rho))
	} else {
		for i := range values {
			in = append(in, must(uncertainty.NewDual(names[i], values[i], "", uncertainty.NormalShape, standard[i])))
		}
	}
	y := polish(t, formula, in, func(t *testing.T, op string, arg string, s *stack[uncertainty.Dual]) {
		switch op {
		case "const":
			s.push(in[0].Const(must(strconv.ParseFloat(arg, 64))))
		case "sqrt":
			s.push(s.pop().Sqrt())
		case "sin":
			s.push(s.pop().Sin())
		case "cos":
			s.push(s.pop().Cos())
		default:
			b, a := s.pop(), s.pop()
			f := map[string]func(uncertainty.Dual) uncertainty.Dual{"add": a.Add, "sub": a.Sub, "mul": a.Mul, "quo": a.Quo, "atan2": a.Atan2}[op]
			require.NotNil(t, f, op)
			s.push(f(b))
		}
	})
	c.Near("value", y.Value())
	c.Near("standard", y.StandardUncertainty())
	c.Near("with_first", uncertainty.CorrelationReal(y, in[0]))
}

// stack holds the values of a formula in reverse Polish notation.
type stack[V any] struct{ all []V }

func (s *stack[V]) push(v V) { s.all = append(s.all, v) }

func (s *stack[V]) pop() V {
	v := s.all[len(s.all)-1]
	s.all = s.all[:len(s.all)-1]
	return v
}

func polish[V any](t *testing.T, formula []string, in []V, step func(t *testing.T, op, arg string, s *stack[V])) V {
	s := &stack[V]{}
	for _, token := range formula {
		op, arg, _ := strings.Cut(token, ":")
		if i, err := strconv.Atoi(strings.TrimPrefix(op, "x")); op[0] == 'x' && err == nil {
			s.push(in[i])
			continue
		}
		step(t, op, arg, s)
	}
	require.Len(t, s.all, 1)
	return s.all[0]
}

func TestCorrelated_refuses(t *testing.T) {
	names := []string{"a", "b"}
	values, standard := []units.Length{1, 2}, []units.Length{3, 4}
	table := func(ab, ba float64) [][]float64 { return [][]float64{{1, ab}, {ba, 1}} }
	for _, c := range []struct {
		what     string
		names    []string
		values   []units.Length
		standard []units.Length
		r        [][]float64
		kind     error
	}{
		{"nothing", nil, nil, nil, nil, uncertainty.ErrEmpty},
		{"a name too few", names[:1], values, standard, table(0, 0), uncertainty.ErrEmpty},
		{"a row too few", names, values, standard, table(0, 0)[:1], uncertainty.ErrEmpty},
		{"a short row", names, values, standard, [][]float64{{1, 0}, {1}}, uncertainty.ErrCorrelation},
		{"not symmetric", names, values, standard, table(0.1, 0.2), uncertainty.ErrCorrelation},
		{"above 1", names, values, standard, table(1.1, 1.1), uncertainty.ErrCorrelation},
		{"not a number", names, values, standard, table(math.NaN(), math.NaN()), uncertainty.ErrCorrelation},
		{"a diagonal that isn't 1", names, values, standard, [][]float64{{0.9, 0}, {0, 1}}, uncertainty.ErrCorrelation},
		{"with what is exact", names, values, []units.Length{3, 0}, table(0.1, 0.1), uncertainty.ErrCorrelation},
		{"a negative uncertainty", names, values, []units.Length{3, -1}, table(0, 0), uncertainty.ErrUncertainty},
		{"out of range", names, []units.Length{1, 1 << 62}, standard, table(0, 0), uncertainty.ErrRange},
		{"an uncertainty out of range", names, values, []units.Length{3, 1 << 62}, table(0, 0), uncertainty.ErrRange},
	} {
		_, err := uncertainty.Correlated(c.names, c.values, c.standard, c.r)
		t.Log(c.what, err)
		refused(t, err, c.kind)
	}
	// Three that can't all be opposite to each other.
	three := [][]float64{{1, -0.9, -0.9}, {-0.9, 1, -0.9}, {-0.9, -0.9, 1}}
	_, err := uncertainty.CorrelatedReal([]string{"a", "b", "c"}, []float64{1, 2, 3}, "mm", []float64{1, 1, 1}, three)
	refused(t, err, uncertainty.ErrCorrelation)
	// The first two are one; the third can't differ in what it has with them.
	twins := [][]float64{{1, 1, 0.5}, {1, 1, 0.4}, {0.5, 0.4, 1}}
	_, err = uncertainty.CorrelatedReal([]string{"a", "b", "c"}, []float64{1, 2, 3}, "mm", []float64{1, 1, 1}, twins)
	refused(t, err, uncertainty.ErrCorrelation)
	_, err = uncertainty.CorrelatedReal(names, []float64{1}, "mm", []float64{1, 1}, table(0, 0))
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.CorrelatedReal(names, []float64{1, math.Inf(1)}, "mm", []float64{1, 1}, table(0, 0))
	refused(t, err, uncertainty.ErrNotFinite)
	// Perfect correlation is possible, and cancels.
	both := must(uncertainty.CorrelatedReal(names, []float64{5, 5}, "mm", []float64{2, 2}, table(1, 1)))
	require.Equal(t, 0.0, both[0].Sub(both[1]).StandardUncertainty())
	require.Equal(t, 4.0, both[0].Add(both[1]).StandardUncertainty())
	// What has no uncertainty may stand among the rest.
	exact := must(uncertainty.Correlated(names, values, []units.Length{0, 4}, table(0, 0)))
	require.Empty(t, exact[0].Sources())
	require.Equal(t, units.Length(4), exact[0].Add(exact[1]).StandardUncertainty())
}
