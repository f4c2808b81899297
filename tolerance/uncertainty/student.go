package uncertainty

import "math"

// Student's t by continued fractions and Newton's method. (The inverse of the
// incomplete beta function in gonum 0.17 is not good enough: for 20 000
// degrees of freedom its quantiles have 9 digits, for 100 000 in the far tail
// none.)

// manyFreedom is from where on expansions about the normal distribution serve.
const manyFreedom = 1e5

// studentT is the quantile of Student's t for 0 < p < 1.
func studentT(p, v float64) float64 {
	switch {
	case p == 0.5:
		return 0
	case p > 0.5:
		return upper(1-p, p-0.5, v)
	}
	return -upper(p, 0.5-p, v)
}

// upper is the t above zero that a part tail of the distribution lies above,
// and a part centre between zero and it; tail + centre is a half, and each is
// given to keep its digits.
func upper(tail, centre, v float64) float64 {
	z := -normal(tail)
	if tail > 0.25 {
		// From the centre, where centre has the digits that tail hasn't.
		z += (centre - 0.5*math.Erf(z/math.Sqrt2)) * math.Sqrt(2*math.Pi) * math.Exp(z*z/2)
	}
	if nearlyNormal(z, v) {
		return z + expand(z, v)
	}
	t := z // never more than the quantile
	for range 60 {
		var next float64
		if tail > 0.25 {
			// The part between zero and t is concave in t: steps from below
			// stay below.
			next = t + (centre-studentCentre(t, v))/studentDensity(t, v)
		} else {
			// The logarithm of the tail is concave in that of t: after the
			// first step, steps come down from above.
			beyond, slope := studentBeyond(t, v)
			next = t * math.Exp(math.Log(beyond/tail)/slope)
		}
		if math.IsInf(next, 1) {
			return next
		}
		if !(next > 0) || math.Abs(next-t) <= 1e-15*next {
			break
		}
		t = next
	}
	return t
}

// nearlyNormal reports whether the expansions hold at t.
func nearlyNormal(t, v float64) bool { return v >= manyFreedom && t*t < v/1000 }

// expand is how much the quantile of Student's t exceeds the normal z, to
// fourth order in 1/v (Abramowitz and Stegun 26.7.5).
func expand(z, v float64) float64 {
	w := z * z
	return z / v * ((w+1)/4 + ((5*w+16)*w+3)/(96*v) + (((3*w+19)*w+17)*w-15)/(384*v*v) +
		((((79*w+776)*w+1482)*w-1920)*w-945)/(92160*v*v*v))
}

// studentCDF is the part of Student's t distribution below t.
func studentCDF(t, v float64) float64 {
	if t > 0 {
		return 1 - studentTail(t, v)
	}
	return studentTail(-t, v)
}

// studentTail is the part of the distribution above t ≥ 0, to about 14 digits
// of itself.
func studentTail(t, v float64) float64 {
	switch {
	case math.IsInf(v, 1):
		return normalCDF(-t)
	case nearlyNormal(t, v):
		z := t // for the z that the expansion takes to t
		for range 4 {
			z = t - expand(z, v)
		}
		return normalCDF(-z)
	}
	beyond, _ := studentBeyond(t, v)
	return beyond
}

// studentBeyond is the part of the distribution above t, and how steeply it
// falls: by what power of t.
func studentBeyond(t, v float64) (beyond, power float64) {
	if t*t < 3 {
		beyond = 0.5 - studentCentre(t, v)
		return beyond, t * studentDensity(t, v) / beyond
	}
	// ½·I_x(v/2, ½) with x = v/(v + t²) and 1 − x = y. What the density times
	// t and this have in common goes out of the power.
	x, y := v/(v+t*t), 1/(1+v/t/t)
	fraction := betaFraction(x, v/2, 0.5)
	return betaFactor(t, v) / v * math.Sqrt(y) * fraction, v / fraction
}

// studentCentre is the part of the distribution between 0 and t, for small t:
// ½·I_y(½, v/2) with y = t²/(v + t²).
func studentCentre(t, v float64) float64 {
	y := t * t / (v + t*t)
	return 0.5 * betaFactor(t, v) / 0.5 * math.Sqrt(y) * betaFraction(y, 0.5, v/2)
}

// betaFactor is x^(v/2)/B(v/2, ½) with x = v/(v + t²).
func betaFactor(t, v float64) float64 {
	return math.Exp(-v/2*logOnePlus(t, v)+logGammaRatio(v/2)) * math.Sqrt(v/2/math.Pi)
}

// logOnePlus is the logarithm of 1 + t²/v, also where t² leaves the range.
func logOnePlus(t, v float64) float64 {
	r := t / math.Sqrt(v)
	if r > 1e9 {
		return 2 * math.Log(r)
	}
	return math.Log1p(r * r)
}

// studentDensity is the density of the distribution at a small t.
func studentDensity(t, v float64) float64 {
	return math.Exp(-(v+1)/2*math.Log1p(t*t/v)+logGammaRatio(v/2)) / math.Sqrt(2*math.Pi)
}

// betaFraction is the continued fraction of the incomplete beta function
// (NIST Digital Library of Mathematical Functions 8.17.22), by Lentz's method.
func betaFraction(x, a, b float64) float64 {
	const tiny = 1e-300
	keep := func(v float64) float64 {
		if math.Abs(v) < tiny {
			return tiny
		}
		return v
	}
	c, d := 1.0, 1/keep(1-(a+b)*x/(a+1))
	f := d
	for m := 1.0; m < 2000; m++ {
		even := m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m))
		d, c = 1/keep(1+even*d), keep(1+even/c)
		f *= d * c
		odd := -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1))
		d, c = 1/keep(1+odd*d), keep(1+odd/c)
		f *= d * c
		if math.Abs(d*c-1) < 1e-16 {
			break
		}
	}
	return f
}

// logGammaRatio is the logarithm of Γ(x + ½)/(√x·Γ(x)).
func logGammaRatio(x float64) float64 {
	if x < 15 {
		above, _ := math.Lgamma(x + 0.5)
		below, _ := math.Lgamma(x)
		return above - below - math.Log(x)/2
	}
	// Stirling's series of the same; what is left out is below 1e-13.
	w := 1 / (x * x)
	return (-1.0/8 + w*(1.0/192+w*(-1.0/640+w*(17.0/14336-w*31.0/18432)))) / x
}
