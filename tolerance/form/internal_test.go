package form

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Bland's rule, slow and safe, is the judge of the exchange by the greatest
// violation, on problems full of ties.
func TestProgram_bland(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 20))
	for range 300 {
		n, dims := 6+rng.IntN(40), 2+2*rng.IntN(2)
		p := program{dims: dims, v: make([]float64, n), noise: 1e-13}
		for d := range dims {
			p.f[d] = make([]float64, n)
			for i := range p.f[d] {
				p.f[d][i] = float64(rng.IntN(5))
			}
		}
		for i := range p.v {
			p.v[i] = float64(rng.IntN(4))
		}
		var fast, slow basis
		if !p.start(&fast) {
			continue
		}
		slow = fast
		require.True(t, p.solve(&fast))
		require.True(t, p.exchange(&slow, 0))
		require.InDelta(t, slow.hi-slow.lo, fast.hi-fast.lo, 1e-11)
	}
}

func TestProgram_blandInner(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 21))
	for range 200 {
		n := 4 + rng.IntN(30)
		p := program{dims: 2, v: make([]float64, n), noise: 1e-13, inner: true}
		p.f[0], p.f[1] = make([]float64, n), make([]float64, n)
		for i := range p.v {
			p.v[i] = float64(rng.IntN(3))
			p.f[1][i], p.f[0][i] = sincos(rng.IntN(12), 12)
		}
		var fast, slow basis
		if !p.surround(&fast) {
			continue
		}
		slow = fast
		require.True(t, p.solve(&fast))
		require.True(t, p.exchange(&slow, 0))
		require.InDelta(t, slow.lo, fast.lo, 1e-12)
	}
}

// What rounding could do to a programme is refused, not answered.
func TestProgram_singular(t *testing.T) {
	p := program{dims: 2, v: make([]float64, 3), f: [4][]float64{{1, 1, 1}, {2, 2, 2}}}
	var b basis
	require.False(t, p.start(&b))
	require.False(t, p.solve(&b))
	require.False(t, p.surround(&b))
	b.cols = [side]column{{0, true}, {1, false}, {2, true}, {0, false}}
	require.False(t, b.evaluate(&p))
	// A basis with a negative weight is none.
	q := program{dims: 2, v: make([]float64, 4), f: [4][]float64{{0, 1, 0, 5}, {0, 0, 1, 5}}}
	b.cols = [side]column{{0, true}, {1, true}, {2, true}, {3, false}}
	require.False(t, b.evaluate(&q))
}

// The bound on how far off a better centre can be holds for every centre.
func TestSection_bounds(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 22))
	for range 60 {
		n := 6 + rng.IntN(40)
		radii := make([]float64, n)
		for i := range radii {
			radii[i] = 10 + 0.3*rng.NormFloat64()
		}
		points := Polar(radii)
		c, at, err := leastSquares(points)
		require.NoError(t, err)
		for _, inner := range []bool{false, true} {
			s := newSection(points, c, nil, inner)
			var b basis
			at, score, ok := s.settle(&b, at)
			if !ok {
				continue
			}
			near, beyond, least := s.near(&b), s.beyond(), s.least
			for range 200 {
				r := 12 * rng.Float64()
				sin, cos := math.Sincos(2 * math.Pi * rng.Float64())
				to := Point{at.X + r*cos, at.Y + r*sin}
				if r <= near || r >= beyond && (!inner || r < least) {
					require.GreaterOrEqual(t, s.measure(to), score-1e-12, "%v of %v to %v", r, near, beyond)
				}
			}
		}
	}
}

// Where Global is said, no start anywhere near ends lower. Deviations are up to
// a tenth of the radius here: with smaller ones the contacts alone prove every
// zone, and the search has nothing to do.
func TestSection_everywhere(t *testing.T) {
	rng := rand.New(rand.NewPCG(23, 23))
	searched := map[bool]int{}
	for round := range 3000 {
		n := 9 + rng.IntN(40)
		radii := make([]float64, n)
		high, lobes := 0.5+0.3*rng.Float64(), float64(2+rng.IntN(4))
		noise := 0.4 * high * rng.Float64()
		for i := range radii {
			radii[i] = 10 + high*math.Cos(lobes*2*math.Pi*float64(i)/float64(n)) + noise*rng.NormFloat64()
		}
		points := Polar(radii)
		c, at, err := leastSquares(points)
		require.NoError(t, err)
		for _, inner := range []bool{false, true} {
			s := newSection(points, c, nil, inner)
			var b basis
			from, score, ok := s.settle(&b, at)
			if !ok {
				continue
			}
			search, far := s.near(&b) < s.beyond(), s.beyond()
			best, global := s.everywhere(&b, from, score)
			lowest := s.measure(best)
			require.LessOrEqual(t, lowest, score)
			if !global || round%20 != 0 && (inner || !search) {
				continue // inscribed circles are searched for often, zones seldom
			}
			if search {
				searched[inner]++
			}
			for range 60 {
				start := Point{from.X + far*(2*rng.Float64()-1), from.Y + far*(2*rng.Float64()-1)}
				if _, other, ok := s.settle(&b, start); ok {
					require.GreaterOrEqual(t, other, lowest-1e-9)
				}
			}
		}
	}
	t.Log("searched, zones and inscribed:", searched[false], searched[true])
	require.Greater(t, searched[false], 5)
	require.Greater(t, searched[true], 20)
}

func TestCover(t *testing.T) {
	for _, gap := range []float64{20, 90, 150} {
		var points []Point
		for a := 0.0; a <= 360-gap; a += 5 {
			sin, cos := math.Sincos(a * math.Pi / 180)
			points = append(points, Point{cos, sin})
		}
		s := newSection(points, cloud{size: 1}, nil, false)
		s.measure(Point{})
		c := s.cover()
		exact := math.Cos(gap * math.Pi / 360)
		require.LessOrEqual(t, c, exact+1e-12)
		require.InDelta(t, exact, c, 0.1)
	}
	s := newSection([]Point{{X: 1}, {Y: 1}, {X: 1, Y: 1}}, cloud{size: 1}, nil, false)
	s.measure(Point{})
	require.Zero(t, s.cover())
	require.True(t, math.IsInf(s.beyond(), 1))
	s.inner = true
	require.True(t, math.IsInf(s.beyond(), 1))
}
