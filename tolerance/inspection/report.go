package inspection

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Report is what follows from a document of limits and one of readings,
// whatever the part. It is plain data.
type Report struct {
	Slips     []Slip     `json:"slips"`     // what looks like one, before anything that rests on it
	Findings  []Finding  `json:"findings"`  // in bench order
	Decisions []Decision `json:"decisions"` // in bench order
	Missing   []Missing  `json:"missing"`   // what is still to be measured, in bench order
	Orders    []Order    `json:"orders"`    // what to buy
	// Predicted is what the clearances and sizes will be after that work, as
	// brackets against the limits for new parts.
	Predicted []Finding `json:"predicted"`
	Cautions  []string  `json:"cautions"` // where this work hurts people or parts
}

// Merge is several reports as one, in bench order; within a step the order of
// the reports is kept. A caution is said once.
func Merge(reports ...Report) Report {
	var m Report
	for i := range reports {
		r := &reports[i]
		m.Slips = append(m.Slips, r.Slips...)
		for _, c := range r.Cautions {
			if !slices.Contains(m.Cautions, c) {
				m.Cautions = append(m.Cautions, c)
			}
		}
	}
	m.Findings = inSteps(reports, func(r *Report) []Finding { return r.Findings }, func(f *Finding) Step { return f.Step })
	m.Decisions = inSteps(reports, func(r *Report) []Decision { return r.Decisions }, func(d *Decision) Step { return d.Step })
	m.Missing = inSteps(reports, func(r *Report) []Missing { return r.Missing }, func(x *Missing) Step { return x.Step })
	m.Orders = inSteps(reports, func(r *Report) []Order { return r.Orders }, func(o *Order) Step { return o.Step })
	m.Predicted = inSteps(reports, func(r *Report) []Finding { return r.Predicted }, func(f *Finding) Step { return f.Step })
	return m
}

// inSteps puts the lists of several reports into bench order, each item moved
// once: how many a step has tells where it begins.
func inSteps[T any](reports []Report, list func(*Report) []T, step func(*T) Step) []T {
	var from [256]int // by Step
	n := 0
	for i := range reports {
		of := list(&reports[i])
		for k := range of {
			from[step(&of[k])]++
		}
		n += len(of)
	}
	if n == 0 {
		return nil
	}
	at := 0
	for i, count := range from {
		from[i], at = at, at+count
	}
	all := make([]T, n)
	for i := range reports {
		of := list(&reports[i])
		for k := range of {
			s := step(&of[k])
			all[from[s]] = of[k]
			from[s]++
		}
	}
	return all
}

// Count is how many findings have each standing, by [tolerance.Standing].
func (r *Report) Count() (n [tolerance.PastWearLimit + 1]int) {
	for i := range r.Findings {
		n[r.Findings[i].Standing()]++
	}
	return n
}

// Complete fails, with a [MissingError], where a reading is missing.
func (r *Report) Complete() error {
	if len(r.Missing) == 0 {
		return nil
	}
	return &MissingError{r.Missing[0], len(r.Missing) - 1}
}

// A Departure is a measure that came out otherwise than predicted.
type Departure struct {
	Measure   string            `json:"measure"`   // "oil clearance"
	Where     string            `json:"where"`     // "main 3"
	Predicted tolerance.Bracket `json:"predicted"` // before the work
	Built     tolerance.Bracket `json:"built"`     // measured after it, at every station
	// By is how far at least the measured one lies outside the predicted, and
	// at most; positive above it. Of one that may be as predicted it is empty.
	By tolerance.Bracket `json:"by"`
}

// Compared holds what was measured after the work to what was predicted, by
// measure and place. It gives the measures that differ for sure (their brackets
// have no value in common), how many agree as far as is known, and the
// predicted ones that were not measured again.
func Compared(predicted, built []Finding) (departed []Departure, agree int, unmeasured []Finding) {
	type key struct{ measure, where string }
	at := make(map[key]*tolerance.Finding, len(built))
	for _, f := range built {
		if f.Length != nil {
			at[key{f.Measure(), f.Where()}] = f.Length
		}
	}
	for _, p := range predicted {
		b, ok := at[key{p.Measure(), p.Where()}]
		if p.Length == nil || !ok {
			unmeasured = append(unmeasured, p)
			continue
		}
		was, is := over(p.Length), over(b)
		if _, common := was.Intersect(is); common {
			agree++
			continue
		}
		departed = append(departed, Departure{p.Measure(), p.Where(), was, is, is.Sub(was)})
	}
	return departed, agree, unmeasured
}

// over is from the least of a finding's readings to the greatest.
func over(f *tolerance.Finding) tolerance.Bracket {
	lo, loEnd := f.Least.Lower()
	hi, hiEnd := f.Greatest.Upper()
	i, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return tolerance.Exactly(units.Length(1) << 62) // out of range, as what made it
	}
	return i
}
