package engine

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// A Line is what a batch says of one engine.
type Line struct {
	Engine    string                `json:"engine"`
	Decisions []inspection.Decision `json:"decisions"`
	Orders    []inspection.Order    `json:"orders"`
	Slips     []inspection.Slip     `json:"slips"`
	Missing   int                   `json:"missing"`  // readings still to be taken
	Findings  int                   `json:"findings"` // how many
	CantTell  int                   `json:"cantTell"` // of them: not a pass
}

// A Tally sums up a batch: how often each decision falls, and how each measure
// spreads against its limits. Several engines may be added at once.
type Tally struct {
	mutex    sync.Mutex
	engines  int
	decided  map[string]map[inspection.Action]int // by part
	measures map[string]*spread

	kept  sync.Mutex
	kinds map[string]*Inspector // by their limits as written
}

// spread is how one measure lies against its limits.
type spread struct {
	n        int
	standing [tolerance.PastWearLimit + 1]int
	least    units.Length // the worst margin, of lengths
	sum      float64      // of margins, in quanta
	margins  int
}

// NewTally is an empty one.
func NewTally() *Tally {
	return &Tally{decided: map[string]map[inspection.Action]int{}, measures: map[string]*spread{}, kinds: map[string]*Inspector{}}
}

// Line inspects one record, by its own limits or else the shared ones, appends
// its line and counts it.
func (t *Tally) Line(dst, record []byte, shared *Inspector) ([]byte, error) {
	d, in, err := t.read(record)
	if err != nil {
		return dst, err
	}
	if in == nil {
		in = shared
	}
	if in == nil {
		return dst, ErrNoLimits
	}
	result, err := in.Inspect(&d)
	if err != nil {
		return dst, Locate("", record, err)
	}
	line := Line{Engine: d.Engine, Decisions: result.Decisions, Orders: result.Orders, Slips: result.Slips,
		Missing: len(result.Missing), Findings: len(result.Findings), CantTell: result.Count()[tolerance.CantTell]}
	text, err := json.Marshal(line)
	if err != nil {
		return dst, err
	}
	t.add(&result)
	return append(dst, text...), nil
}

// mostKinds is for how many kinds of engine the limits are kept ready.
const mostKinds = 64

// read reads a record with its own limits, which are nil where it has none. The
// limits of engines of one kind are the same to the letter, and are read once.
func (t *Tally) read(record []byte) (d Document, in *Inspector, err error) {
	limits, rest, ok := split(record)
	if !ok {
		if d, err = Read("", record); err == nil && d.Limits != nil {
			in = d.Limits.Prepare()
		}
		return d, in, err
	}
	t.kept.Lock()
	in = t.kinds[string(limits)]
	t.kept.Unlock()
	if in == nil {
		if d, err = Read("", record); err != nil {
			return d, nil, err
		}
		in = d.Limits.Prepare()
		t.kept.Lock()
		if len(t.kinds) < mostKinds {
			t.kinds[string(limits)] = in
		}
		t.kept.Unlock()
		return d, in, nil
	}
	if d, err = Read("", rest); err != nil { // told of the record as it was written
		_, err = Read("", record)
	}
	return d, in, err
}

func (t *Tally) add(r *Result) {
	t.mutex.Lock()
	defer t.mutex.Unlock()
	t.engines++
	for i := range r.Decisions {
		d := &r.Decisions[i]
		by := t.decided[d.Part]
		if by == nil {
			by = map[inspection.Action]int{}
			t.decided[d.Part] = by
		}
		by[d.Action]++
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		name := f.Measure()
		s := t.measures[name]
		if s == nil {
			s = &spread{}
			t.measures[name] = s
		}
		s.n++
		s.standing[f.Standing()]++
		if f.Length == nil {
			continue
		}
		if m, end := f.Length.Margin.Lower(); end != tolerance.Absent {
			if s.margins == 0 || m < s.least {
				s.least = m
			}
			s.margins++
			s.sum += float64(m)
		}
	}
}

// Text is the summary, the measures that fail the most first.
func (t *Tally) Text() string {
	t.mutex.Lock()
	defer t.mutex.Unlock()
	var b strings.Builder
	fmt.Fprintf(&b, "%d engines\n\nHow often each decision falls:\n", t.engines)
	for _, part := range slices.Sorted(maps.Keys(t.decided)) {
		var words []string
		for a := inspection.MeasureAgain; a <= inspection.Scrap; a++ {
			if n := t.decided[part][a]; n > 0 {
				words = append(words, fmt.Sprintf("%s %d", a, n))
			}
		}
		fmt.Fprintf(&b, "  %s: %s\n", part, strings.Join(words, ", "))
	}
	b.WriteString("\nHow each measure spreads against its limits (margin to the nearest limit, in mm; below 0 outside):\n")
	names := slices.SortedFunc(maps.Keys(t.measures), func(x, y string) int {
		return cmp.Or(cmp.Compare(t.measures[y].failing(), t.measures[x].failing()), cmp.Compare(x, y))
	})
	for _, n := range names {
		s := t.measures[n]
		fmt.Fprintf(&b, "  %s: %d, ", n, s.n)
		var words []string
		for st := tolerance.PastWearLimit; ; st-- {
			if s.standing[st] > 0 {
				words = append(words, fmt.Sprintf("%s %d", st, s.standing[st]))
			}
			if st == 0 {
				break
			}
		}
		b.WriteString(strings.Join(words, ", "))
		if s.margins > 0 {
			mean := units.Length(s.sum / float64(s.margins))
			fmt.Fprintf(&b, "; margin at the least %s, on average %s", mm(s.least), mm(mean))
		}
		b.WriteString("\n")
	}
	b.WriteString("\nUndecided is not a pass. The engine maker's manual governs.\n")
	return b.String()
}

// failing is the share that is not within its limits for sure.
func (s *spread) failing() float64 {
	bad := s.standing[tolerance.PastWearLimit] + s.standing[tolerance.OutsideNewBand] + s.standing[tolerance.CantTell]
	return float64(bad) / float64(s.n)
}

func mm(l units.Length) string {
	text, _ := units.Append(nil, l, units.Style[units.Length]{Places: 3, Bare: true})
	return string(text)
}
