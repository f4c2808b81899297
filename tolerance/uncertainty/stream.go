package uncertainty

import (
	"math"
	"math/rand/v2"
)

// A Stream is the random numbers of one block: the same for the same seed and
// block, on every machine, whatever other blocks do. Make one with
// [Blocks.Stream]; the zero Stream is that of block 0 with a seed of 0, as
// Fill starts it.
type Stream struct {
	pcg   rand.PCG
	begun bool
}

// newStream spreads seed and block over the 128 bits of the generator's
// state, so that neighbouring blocks begin far apart.
func newStream(seed uint64, block int) Stream {
	a := mix(seed + 0x9e3779b97f4a7c15)
	b := mix(a ^ uint64(block))
	return Stream{pcg: *rand.NewPCG(b, mix(b+a)), begun: true}
}

// mix is the finishing step of SplitMix64 (Steele, Lea and Flood 2014).
func mix(x uint64) uint64 {
	x ^= x >> 30
	x *= 0xbf58476d1ce4e5b9
	x ^= x >> 27
	x *= 0x94d049bb133111eb
	return x ^ x>>31
}

// Fill fills dst with independent deviates of a shape, about zero and with a
// standard deviation of 1. Normal ones with finite degrees of freedom are
// Student's t, with the scale and not the standard deviation 1 (JCGM 101,
// 6.4.9). Rectangular, triangular and U-shaped ones reach ±√3, ±√6 and ±√2.
// Degrees of freedom that aren't above zero are taken as infinite.
func (s *Stream) Fill(dst []float64, shape Shape, freedom Freedom) {
	if !s.begun {
		*s = newStream(0, 0)
	}
	p := &s.pcg
	switch {
	case shape == RectangularShape:
		for i := range dst {
			dst[i] = (uniform(p) - 0.5) * (2 * sqrt3)
		}
	case shape == TriangularShape:
		for i := range dst {
			dst[i] = (uniform(p) + uniform(p) - 1) * sqrt6
		}
	case shape == UShape:
		for i := range dst {
			dst[i] = math.Sqrt2 * math.Cos(math.Pi*uniform(p))
		}
	case freedom > 0 && !math.IsInf(float64(freedom), 0):
		for i := range dst {
			dst[i] = student(p, float64(freedom))
		}
	default:
		for i := range dst {
			dst[i] = gaussian(p)
		}
	}
}

// uniform is between 0 and 1, and neither: one of 2⁵³ values, symmetric.
func uniform(p *rand.PCG) float64 {
	return (float64(p.Uint64()>>11) + 0.5) * 0x1p-53
}

// gaussian is a standard normal deviate by the ziggurat method (Marsaglia and
// Tsang 2000): in 98.8 % of cases one random number, a product and a
// comparison.
func gaussian(p *rand.PCG) float64 {
	for {
		u := p.Uint64()
		layer := u & 255
		x := float64(u>>11) * 0x1p-53 * edges[layer]
		if x >= edges[layer+1] {
			if layer == 0 {
				x = tail(p)
			} else if !wedge(p, layer, x) {
				continue
			}
		}
		// The sign is put in without a branch, which would be taken by chance.
		return math.Float64frombits(math.Float64bits(x) | u&256<<55)
	}
}

// wedge reports whether a point at x in the part of a layer that the density
// runs through lies below it.
func wedge(p *rand.PCG, layer uint64, x float64) bool {
	low, high := math.Exp(-edges[layer]*edges[layer]/2), math.Exp(-edges[layer+1]*edges[layer+1]/2)
	return low+float64(uniform(p)*(high-low)) < math.Exp(-x*x/2)
}

// tail is a normal deviate beyond edges[1] (Marsaglia 1964).
func tail(p *rand.PCG) float64 {
	for {
		x := -math.Log(uniform(p)) / edges[1]
		if y := -math.Log(uniform(p)); 2*y > x*x {
			return edges[1] + x
		}
	}
}

// student is a deviate of Student's t by the polar method (Bailey 1994).
func student(p *rand.PCG, freedom float64) float64 {
	w := math.Expm1(-2 / freedom * math.Log(uniform(p)))
	return math.Sqrt(freedom*w) * math.Cos(2*math.Pi*uniform(p))
}
