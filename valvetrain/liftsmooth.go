package valvetrain

import (
	"math"
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// smoothed fits parabolas about each point with a whole window, and keeps the
// extremes of their slopes and curvatures there.
func (c *LiftCurve) smoothed(a *LiftAnalysis) error {
	first, last := c.Span()
	w := a.Smoothing
	from, to := 0, len(c.points)-1
	for from <= to && c.points[from].Angle-w < first {
		from++
	}
	for to >= from && c.points[to].Angle+w > last {
		to--
	}
	if from > to {
		return &InputError{"half-width of smoothing", w.String(), "small enough for a point to have so much of the table, " + first.String() + " to " + last.String() + ", on both sides"}
	}
	up, down := math.Inf(-1), math.Inf(1)
	faster, slower := math.Inf(-1), math.Inf(1)
	step, even := c.even()
	half := 0
	var even1, even2, mean float64
	if even {
		half = int(w / step)
		even1, even2, mean = evenSums(half, float64(step)/float64(units.Degree))
	}
	lo, hi := from, from
	for i := from; i <= to; i++ {
		var v, acc float64
		if even && half > 0 {
			v, acc = c.evenFit(i, half, even1, even2, mean)
		} else {
			for lo > 0 && c.points[i].Angle-c.points[lo-1].Angle <= w {
				lo--
			}
			for c.points[i].Angle-c.points[lo].Angle > w {
				lo++
			}
			for hi < len(c.points)-1 && c.points[hi+1].Angle-c.points[i].Angle <= w {
				hi++
			}
			if hi-lo < 2 {
				return &InputError{"half-width of smoothing", w.String(), "wide enough for 3 points; about " + c.points[i].Angle.String() + " it holds " + strconv.Itoa(hi-lo+1)}
			}
			v, acc = c.unevenFit(i, lo, hi)
		}
		at := c.points[i].Angle
		if v > up {
			up, a.Opening = v, LiftExtreme{at, v}
		}
		if v < down {
			down, a.Closing = v, LiftExtreme{at, v}
		}
		if acc > faster {
			faster, a.Upward = acc, LiftExtreme{at, acc}
		}
		if acc < slower {
			slower, a.Downward = acc, LiftExtreme{at, acc}
		}
	}
	a.Fitted = to - from + 1
	return nil
}

// even reports whether the points stand at even steps.
func (c *LiftCurve) even() (step units.Angle, ok bool) {
	step = c.points[1].Angle - c.points[0].Angle
	for i := 2; i < len(c.points); i++ {
		if c.points[i].Angle-c.points[i-1].Angle != step {
			return 0, false
		}
	}
	return step, true
}

// evenSums are what a parabola through 2n+1 even steps of h needs: h·Σk²,
// h²·Σ(k² − mean)²/2, and the mean of k².
func evenSums(n int, h float64) (one, two, mean float64) {
	for k := 1; k <= n; k++ {
		one += 2 * float64(k*k)
	}
	mean = one / float64(2*n+1)
	two = mean * mean
	for k := 1; k <= n; k++ {
		d := float64(k*k) - mean
		two += 2 * d * d
	}
	return one * h, two * h * h / 2, mean
}

// evenFit is the slope and the curvature of the best parabola about point i.
func (c *LiftCurve) evenFit(i, n int, one, two, mean float64) (slope, curve float64) {
	// The lift at i is taken off, so that large lifts cancel nothing.
	y := c.y[i]
	right, left := c.y[i+1:i+n+1], c.y[i-n:i]
	for k := range n {
		r, l := right[k]-y, left[n-1-k]-y
		f := float64(k + 1)
		slope += f * (r - l)
		curve += (f*f - mean) * (r + l)
	}
	return slope / one, curve / two
}

// unevenFit solves the normal equations of the parabola about point i through
// the points from lo to hi.
func (c *LiftCurve) unevenFit(i, lo, hi int) (slope, curve float64) {
	// Scaled to the window, and centred on its mean, for good pivots.
	scale := float64(max(c.points[i].Angle-c.points[lo].Angle, c.points[hi].Angle-c.points[i].Angle)) / float64(units.Degree)
	var n, s1, s2, s3, s4, y0, y1, y2 float64
	for j := lo; j <= hi; j++ {
		u := float64(c.points[j].Angle-c.points[i].Angle) / float64(units.Degree) / scale
		y := c.y[j] - c.y[i]
		n++
		s1 += u
		s2 += u * u
		s3 += u * u * u
		s4 += u * u * u * u
		y0 += y
		y1 += u * y
		y2 += u * u * y
	}
	// With the constant taken out: two equations in slope and half the curvature.
	a11, a12, a22 := s2-s1*s1/n, s3-s1*s2/n, s4-s2*s2/n
	b1, b2 := y1-s1*y0/n, y2-s2*y0/n
	det := a11*a22 - a12*a12
	return (b1*a22 - b2*a12) / det / scale, 2 * (a11*b2 - a12*b1) / det / (scale * scale)
}
