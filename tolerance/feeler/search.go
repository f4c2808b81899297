package feeler

import "github.com/tenthou/tenthou/units"

// fit says which totals will do.
type fit uint8

const (
	nearest fit = iota
	atMost
	atLeast
)

func (f fit) want() string {
	if f == atMost {
		return "the thinnest blade is thicker"
	}
	return "that many blades together are thinner"
}

// noMiss is more than any total misses a target by.
const noMiss = units.Length(1) << 60

// miss is how far a total is from the target; noMiss where it won't do.
func (f fit) miss(total, target units.Length) units.Length {
	off := total - target
	switch {
	case off >= 0 && f != atMost:
		return off
	case off <= 0 && f != atLeast:
		return -off
	}
	return noMiss
}

// leastMiss is what no total can come closer than: all totals are whole numbers
// of the grid. A search that has found it is over.
func leastMiss(target, grid units.Length, f fit) units.Length {
	over := target % grid
	switch {
	case f == atMost || over == 0:
		return over
	case f == atLeast:
		return grid - over
	}
	return min(over, grid-over)
}

// stepsMax ends a search that would not end soon.
const stepsMax = 1 << 28

// search looks for the best stack. It goes through the numbers of blades from
// one up, and for each through the choices from the thickest blade down, in
// lexicographic order; so a choice is taken over another only where it is
// strictly nearer.
type search struct {
	a, sums       []units.Length // thicknesses, and the sums of the thinnest
	target, least units.Length
	fit           fit

	pick, best    [MaxStack]uint8
	size, bestLen int // blades to choose, blades chosen
	miss          units.Length
	steps         int
}

func (q *search) run(most int) (found bool, err error) {
	q.miss = noMiss
	for q.size = 1; q.size <= most && q.miss != q.least; q.size++ {
		if q.size == 1 {
			q.single()
		} else {
			q.choose(len(q.a), 0, 0)
		}
		if q.steps > stepsMax {
			return false, ErrSize
		}
	}
	return q.miss != noMiss, nil
}

func (q *search) single() {
	for i := len(q.a) - 1; i >= 0; i-- {
		if miss := q.fit.miss(q.a[i], q.target); miss < q.miss {
			q.miss, q.best[0], q.bestLen = miss, uint8(i), 1
		}
	}
}

// choose tries each blade below a place as the next thickest, those before it
// making up the total. It reports whether this number of blades is done with.
func (q *search) choose(below, depth int, total units.Length) (done bool) {
	need := q.size - depth
	if need == 2 {
		return q.pairs(below, total)
	}
	for i := below - 1; i >= need-1; i-- {
		q.steps++
		if i+1 < below && q.a[i+1] == q.a[i] {
			continue // one as thick has stood here
		}
		most := total + q.sums[i+1] - q.sums[i+1-need]
		least := total + q.a[i] + q.sums[need-1]
		if q.bound(least, most) >= q.miss {
			if most < q.target {
				break // thinner ones even more so
			}
			continue
		}
		q.pick[depth] = uint8(i)
		if q.choose(i, depth+1, total+q.a[i]) || q.steps > stepsMax {
			return true
		}
	}
	return false
}

// bound is the least miss that a total from least to most may have.
func (q *search) bound(least, most units.Length) units.Length {
	if least <= q.target && q.target <= most {
		return 0
	}
	if most < q.target {
		return q.fit.miss(most, q.target)
	}
	return q.fit.miss(least, q.target)
}

// pairs chooses the last two blades below a place in one sweep: i starts at the
// thickest and comes down while the pair is too thick, k starts at the thinnest
// and goes up while it is too thin.
//
// The sweep visits the pair we want: of the best pairs (p, q), p > q, the one
// with the greatest p and then the greatest q. Look at the moment when i comes
// to p or k to q; before the pointers meet one of them does, as i starts at p or
// above and k at q or below.
//
// If k = q and i > p: were a[i]+a[q] not too thick, it would be at least
// a[p]+a[q] and not above the target, so as good a pair with a greater first
// blade, which there is none of. So it is too thick, and i comes down, to p.
//
// If i = p and k < q: were a[p]+a[k] too thick, then a[p]+a[q] would be no
// less, so no better; being best it would be as good only if a[k] = a[q], which
// makes (p, k) the same stack. Else it is too thin, and k goes up, to q.
//
// A sum that is the target itself can't be bettered. Where only totals at most
// or at least the target will do, "too thick" is above it or not below it, and
// the same holds: a pair on the wrong side is passed, and one on the right side
// that is nearer or as near would contradict the choice of (p, q).
func (q *search) pairs(below int, total units.Length) (done bool) {
	a, want := q.a[:below], q.target-total
	q.steps += below
	miss, fit := q.miss, q.fit
	first, second := -1, -1
	for i, k := below-1, 0; k < i; {
		off := a[i] + a[k] - want
		if off > 0 || off == 0 && fit == atLeast {
			// As near as (i, k) was from below, with a thicker second blade, is better.
			if fit != atMost && (off < miss || off == miss && i == first) {
				miss, first, second = off, i, k
			}
			i--
		} else {
			if fit != atLeast && -off < miss {
				miss, first, second = -off, i, k
			}
			k++
		}
	}
	if first >= 0 {
		q.miss, q.best, q.bestLen = miss, q.pick, q.size
		q.best[q.size-2], q.best[q.size-1] = uint8(first), uint8(second)
	}
	return q.miss == q.least
}
