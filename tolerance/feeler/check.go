package feeler

import (
	"slices"

	"github.com/tenthou/tenthou/tolerance"
)

// A Station is the trials made at one place of a part, and where that is.
type Station struct {
	Where  string  `json:"where,omitempty"` // "front", "12 o'clock"
	Trials []Trial `json:"trials"`          // in any order
}

// A Reading is what the trials of a station say.
type Reading struct {
	Where   string            `json:"where,omitempty"`  // the station's
	Bracket tolerance.Bracket `json:"bracket"`          // what its trials say of the gap
	Forced  []Trial           `json:"forced,omitempty"` // counted as refused
	Inside  []Blade           `json:"inside,omitempty"` // blades not tried that would narrow it
}

// String is the reading in words: "front: [0.06 mm, 0.08 mm); try 0.070 mm to
// narrow it".
func (r Reading) String() string {
	s := r.Where
	if s != "" {
		s += ": "
	}
	s += r.Bracket.String()
	if len(r.Inside) > 0 {
		s += "; try " + orList(r.Inside) + " to narrow it"
	}
	for _, t := range r.Forced {
		s += "; " + t.name() + " was forced, which counts as refused"
	}
	return s
}

// A Check is one measure of one part, taken with the blades of one set and
// judged against one spec.
type Check struct {
	Measure string         // "ring side clearance"
	Where   string         // "piston 2, top groove"
	Spec    tolerance.Spec // what the manual gives
	Set     Set            // the blades at hand
	Errors  bool           // whether the errors of the blades widen the brackets
	Most    int            // the most blades to a stack in what would settle it; 0 for 4
}

const usualStack = 4

// Read gives the bracket of one station, the forced trials, and the blades that
// would narrow it. The errors are those of [Bracket], in a [StationError].
func (c Check) Read(s Station) (Reading, error) {
	b, err := bracket(s.Trials, c.Errors)
	if err != nil {
		return Reading{}, &StationError{Where: s.Where, Err: err}
	}
	return Reading{Where: s.Where, Bracket: b, Forced: ForcedTrials(s.Trials...), Inside: c.Set.inside(b, c.Errors)}, nil
}

// Assess judges the stations of a part together, as [tolerance.Assess] does:
// the greatest gap against the upper limits and the least against the lower.
// What would settle a finding that can't tell is said with the blades of the
// set: which to try and what its answer settles, or that no blade and no stack
// of the set can, and what would.
//
// The errors are those of [Check.Read] and of [tolerance.Assess], and a
// [StackError] where Most is out of range.
func (c Check) Assess(stations ...Station) (tolerance.Finding, error) {
	if c.Most < 0 || c.Most > MaxStack {
		return tolerance.Finding{}, &StackError{Most: c.Most, Kind: ErrSize, Want: stackSizes + ", or 0 for 4"}
	}
	readings := make([]Reading, len(stations))
	brackets := make([]tolerance.Bracket, len(stations))
	for i, s := range stations {
		r, err := c.Read(s)
		if err != nil {
			return tolerance.Finding{}, err
		}
		readings[i], brackets[i] = r, r.Bracket
	}
	f, err := tolerance.Assess(c.Measure, c.Where, c.Spec, brackets...)
	if err != nil || f.Settle == "" || len(f.Unsettled) == 0 {
		return f, err // nothing to settle, or no limit to settle it by
	}
	f.Settle, err = c.settle(f, readings)
	return f, err
}

// settle says what would settle the limits that a finding leaves open.
func (c Check) settle(f tolerance.Finding, readings []Reading) (string, error) {
	text := ""
	for _, s := range sidesOf(f.Spec) {
		extreme := f.Greatest
		if s.lower {
			extreme = f.Least
		}
		if s.band.Judge(extreme) != tolerance.Undecided || !slices.Contains(f.Unsettled, s.limit) {
			continue
		}
		for _, r := range readings {
			if s.band.Judge(r.Bracket) != tolerance.Undecided {
				continue
			}
			advice, err := c.advise(r, s)
			if err != nil {
				return "", err
			}
			if r.Where != "" {
				advice = r.Where + ": " + advice
			}
			if len(f.Unsettled) > 1 {
				advice = "on " + lengthText(s.limit) + ", " + advice
			}
			if text != "" {
				text += "; "
			}
			text += advice
		}
	}
	return text, nil
}
