package uncertainty

import (
	"strconv"

	"github.com/tenthou/tenthou/units"
)

// Sum adds estimates, with one check of the range. Of temperatures, which
// aren't added, and where an item or the sum is out of range, it is out of
// range.
func Sum[Q units.Quantity](es ...EstimateOf[Q]) EstimateOf[Q] {
	r, err := combine(es, 1)
	if err != nil {
		return broken[Q]()
	}
	return r
}

// Mean is the arithmetic mean of estimates: what they share stays, what each
// has of its own averages out. The value is rounded once to the nearest
// quantum, ties to even. The mean of nothing is an [ErrTooFew], that of an
// item out of range, or of temperatures, an [ErrRange].
func Mean[Q units.Quantity](es ...EstimateOf[Q]) (EstimateOf[Q], error) {
	if len(es) == 0 {
		return EstimateOf[Q]{}, refuse("mean", "", "estimates", 0, ErrTooFew, "at least one")
	}
	return combine(es, len(es))
}

// combine is the sum of es over n.
func combine[Q units.Quantity](es []EstimateOf[Q], n int) (r EstimateOf[Q], err error) {
	values := make([]Q, len(es))
	all := make([]term, 0, len(es))
	place := make(map[*Source]int)
	for i := range es {
		e := &es[i]
		if !units.InRange(e.value) || isTemperature[Q]() {
			return r, refuse("mean", "", "estimate", strconv.Itoa(i+1), ErrRange, "differences and sizes in range")
		}
		values[i] = e.value
		r.terms.kink = r.terms.kink || e.terms.kink
		for j := range e.terms.n {
			s, c := e.terms.at(j)
			k, ok := place[s]
			if !ok {
				k = len(all)
				place[s] = k
				all = append(all, term{src: s})
			}
			all[k].c += c
		}
	}
	if n == 1 {
		r.value, err = units.Sum(values...)
	} else {
		r.value, err = units.Mean(values...)
	}
	if err != nil {
		return EstimateOf[Q]{}, err
	}
	for i := range all {
		all[i].c /= float64(n)
	}
	r.terms.keep(all)
	return r, nil
}
