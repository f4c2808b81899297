package uncertainty

import "math"

// inline is how many sources an estimate holds without allocating.
const inline = 4

// terms are first-order sensitivities to sources, in the order in which the
// sources came in. None of them is zero. Indexes are masked so that the
// compiler need not check them; EstimateOf and Dual are a multiple of 16
// bytes long, which lets the processor pass them on without waiting.
type terms struct {
	src  [inline]*Source
	c    [inline]float64
	more *[]term // where there are more than inline, all of them; never changed
	n    int
	kink bool // first order told too little on the way
}

type term struct {
	src *Source
	c   float64
}

func oneTerm(s *Source, c float64) (t terms) {
	if c != 0 {
		t.src[0], t.c[0], t.n = s, c, 1
	}
	return t
}

// at is the i-th term.
func (t *terms) at(i int) (*Source, float64) {
	if t.more != nil {
		return (*t.more)[i].src, (*t.more)[i].c
	}
	return t.src[i], t.c[i]
}

// of is the sensitivity to s.
func (t *terms) of(s *Source) float64 {
	for i := range t.n {
		if src, c := t.at(i); src == s {
			return c
		}
	}
	return 0
}

// times is k·t.
func (t *terms) times(k float64) (r terms) {
	r.take(t, k)
	return r
}

// take sets t, which holds nothing yet, to k·a.
func (t *terms) take(a *terms, k float64) {
	if a.more != nil {
		t.sumMany(a, k, &terms{}, 0)
		return
	}
	n := 0
	for i := range a.n {
		if c := float64(k * a.c[i&(inline-1)]); c != 0 {
			t.src[n&(inline-1)], t.c[n&(inline-1)] = a.src[i&(inline-1)], c
			n++
		}
	}
	t.n, t.kink = n, a.kink
}

// flip is t.take(t, −1), in place.
func (t *terms) flip() {
	if t.more != nil {
		*t = t.times(-1)
		return
	}
	for i := range t.c {
		t.c[i] = -t.c[i]
	}
}

// sum is ka·a + kb·b.
func sum(a *terms, ka float64, b *terms, kb float64) (r terms) {
	r.sum(a, ka, b, kb)
	return r
}

// sum sets t, which holds nothing yet, to ka·a + kb·b. What cancels drops out.
func (t *terms) sum(a *terms, ka float64, b *terms, kb float64) {
	if a.more != nil || b.more != nil {
		t.sumMany(a, ka, b, kb)
		return
	}
	t.take(a, ka)
	t.kink = a.kink || b.kink
next:
	for i := range b.n {
		s, c := b.src[i&(inline-1)], float64(kb*b.c[i&(inline-1)])
		if c == 0 {
			continue
		}
		for j := range t.n {
			if t.src[j&(inline-1)] == s {
				if t.c[j&(inline-1)] += c; t.c[j&(inline-1)] == 0 {
					t.drop(j)
				}
				continue next
			}
		}
		if t.n == inline {
			*t = terms{}
			t.sumMany(a, ka, b, kb)
			return
		}
		t.src[t.n&(inline-1)], t.c[t.n&(inline-1)] = s, c
		t.n++
	}
}

// drop takes the j-th of the inline terms away.
func (t *terms) drop(j int) {
	t.n--
	copy(t.src[j:], t.src[j+1:])
	copy(t.c[j:], t.c[j+1:])
	t.src[t.n], t.c[t.n] = nil, 0
}

// sumMany is sum for any number of terms.
func (t *terms) sumMany(a *terms, ka float64, b *terms, kb float64) {
	all := make([]term, 0, a.n+b.n)
	for i := range a.n {
		s, c := a.at(i)
		all = append(all, term{s, float64(ka * c)})
	}
	for i := range b.n {
		s, c := b.at(i)
		c = float64(kb * c)
		j := 0
		for j < a.n && all[j].src != s {
			j++
		}
		if j < a.n {
			all[j].c += c
		} else {
			all = append(all, term{s, c})
		}
	}
	t.keep(all)
	t.kink = a.kink || b.kink
}

// keep sets t to those of all that aren't zero; t owns all from then on.
func (t *terms) keep(all []term) {
	kept := all[:0]
	for _, one := range all {
		if one.c != 0 {
			kept = append(kept, one)
		}
	}
	t.n = len(kept)
	if t.n > inline {
		t.more = &kept
		return
	}
	for i, one := range kept {
		t.src[i], t.c[i] = one.src, one.c
	}
}

// spread is the standard uncertainty: the root of the sum of the squares of
// the contributions. Where a sensitivity isn't finite, neither is it.
func (t *terms) spread() float64 {
	if t.more == nil && t.n <= 1 {
		if t.n == 0 {
			return 0
		}
		return math.Abs(t.c[0]) * t.src[0].spread
	}
	squares := 0.0
	for i := range t.n {
		s, c := t.at(i)
		squares += float64(c*s.spread) * (c * s.spread)
	}
	return t.rooted(squares)
}

// rooted is the root of the squares, summed again in units of the greatest
// contribution where they left the range of float64 above or below.
func (t *terms) rooted(squares float64) float64 {
	if squares > 1e-250 && squares < 1e250 {
		return math.Sqrt(squares)
	}
	greatest := 0.0
	for i := range t.n {
		s, c := t.at(i)
		greatest = max(greatest, math.Abs(c*s.spread))
	}
	if greatest == 0 || math.IsInf(greatest, 0) || math.IsNaN(greatest) {
		return greatest
	}
	squares = 0
	for i := range t.n {
		s, c := t.at(i)
		x := c * s.spread / greatest
		squares += x * x
	}
	return greatest * math.Sqrt(squares)
}

// apart is the standard uncertainty of a − b, without calculating the
// difference: it would need room for the sources of both.
func apart(a, b *terms) float64 {
	squares, shared := 0.0, 0
	for i := range a.n {
		s, c := a.at(i)
		for j := range b.n {
			if src, d := b.at(j); src == s {
				c -= d
				shared++
				break
			}
		}
		squares += float64(c*s.spread) * (c * s.spread)
	}
	if shared < b.n {
		for j := range b.n {
			if s, c := b.at(j); a.of(s) == 0 {
				squares += float64(c*s.spread) * (c * s.spread)
			}
		}
	}
	return math.Sqrt(squares)
}

// covariance is that of a and b.
func covariance(a, b *terms) (v float64) {
	for i := range a.n {
		s, c := a.at(i)
		v += float64(c*s.spread) * float64(b.of(s)*s.spread)
	}
	return v
}

// sources are those of t, in order.
func (t *terms) sources() []*Source {
	if t.n == 0 {
		return nil
	}
	all := make([]*Source, t.n)
	for i := range all {
		all[i], _ = t.at(i)
	}
	return all
}

// freedom is the effective degrees of freedom (Welch–Satterthwaite).
func (t *terms) freedom() Freedom {
	var w welch
	for i := range t.n {
		s, c := t.at(i)
		w.scale = max(w.scale, math.Abs(c*s.spread))
	}
	if w.scale-w.scale != 0 {
		return Freedom(math.NaN())
	}
	for i := range t.n {
		s, c := t.at(i)
		w.add(c*s.spread, s.freedom)
	}
	return w.freedom()
}
