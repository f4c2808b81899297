package uncertainty

import (
	"math"
	"slices"
)

// The nodes and weights of the Gauss–Kronrod rule with 7 and 15 points
// (QUADPACK, Piessens et al. 1983), outermost first; the last is the middle.
// Every second node belongs to the Gauss rule.
var (
	kronrodNodes = [8]float64{
		0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
		0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
		0.586087235467691130294144691693013, 0.405845151377397166906606412076961,
		0.207784955007898467600689403773245, 0,
	}
	kronrodWeights = [8]float64{
		0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
		0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
		0.169004726639267902826583426598550, 0.190350578064785409913256402421014,
		0.204432940075298892414161999234649, 0.209482141084727828012999174891714,
	}
	gaussWeights = [4]float64{
		0.129484966168869693270611432679082, 0.279705391489276667901467771423780,
		0.381830050505118944950369775488975, 0.417959183673469387755102040816327,
	}
)

// kronrod integrates f over [a, b] and gives how far its two rules differ.
func kronrod(f func(float64) float64, a, b float64) (value, differ float64) {
	middle, half := a+(b-a)/2, (b-a)/2
	y := f(middle)
	value, gauss := kronrodWeights[7]*y, gaussWeights[3]*y
	for i, x := range kronrodNodes[:7] {
		y := f(middle-half*x) + f(middle+half*x)
		value += kronrodWeights[i] * y
		if i%2 == 1 {
			gauss += gaussWeights[i/2] * y
		}
	}
	return value * half, math.Abs(value-gauss) * half
}

// mostRules bounds the work on an integrand that never settles.
const mostRules = 20_000

// integrate integrates f from the first to the last of the points, where f
// may turn sharply at each of them, halving where the two rules differ. The
// result is good to about 10⁻¹² of the whole, which is at most about 1.
func integrate(f func(float64) float64, points []float64) float64 {
	slices.Sort(points)
	left := mostRules
	var halve func(a, b float64, depth int) float64
	halve = func(a, b float64, depth int) float64 {
		left--
		value, differ := kronrod(f, a, b)
		if !(differ >= 1e-13) || depth == 0 || left <= 0 {
			return value
		}
		middle := a + (b-a)/2
		return halve(a, middle, depth-1) + halve(middle, b, depth-1)
	}
	total := 0.0
	for i := 1; i < len(points); i++ {
		if points[i] > points[i-1] {
			total += halve(points[i-1], points[i], 24)
		}
	}
	return total
}
