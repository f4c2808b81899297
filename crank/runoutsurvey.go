package crank

import (
	"fmt"
	"slices"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RunOutSupport says what the shaft turned on. The zero value is BetweenCentres.
type RunOutSupport uint8

// The supports.
const (
	BetweenCentres RunOutSupport = iota // between centres, or rollers elsewhere than on the two journals
	OnBlocks                            // the two journals lie in V-blocks
)

// A RunOutJournal is a turn with its place in the survey.
type RunOutJournal struct {
	RunOutTurn
	// Apart is set for a nose or a flange, to which no neighbour's rule applies.
	Apart  bool
	Limits tolerance.Spec // of the run-out as read, where the manual gives this one its own
}

// A RunOutSurvey is a shaft turned on two supports, with what a dial read at each
// journal. The angles of all journals count from one mark, the same way.
//
// Lift a heavy shaft with a hoist and slings, not by hand, and keep hands from
// between webs while it turns. A shaft that lies long on two supports sags, and
// one that stands aside unsupported bends: let it stand upright.
type RunOutSurvey struct {
	Journals []RunOutJournal // in order along the shaft
	// First and Second are the two journals that the rest are seen from, as
	// places in Journals: the end mains, as a rule. Their own run-out is taken
	// off, weighted by position.
	First, Second int
	Support       RunOutSupport // zero: between centres
	// Included is the angle between the faces of the V-blocks, for OnBlocks. The
	// dial stands on the bisector, opposite the V. A support journal that isn't
	// round rises and falls in its V, which the dial sees elsewhere too: that is
	// taken off as far as the readings on the support tell it. A support without
	// readings is taken for round.
	Included   units.Angle
	Error      units.Length    // of each dial reading
	RunOut     tolerance.Spec  // of the run-out as read, where a journal has no limits of its own
	Bend       tolerance.Spec  // of the bend: half the run-out that the eccentricity makes
	Neighbours NeighbourLimits // of journals next to each other
	// Nitrided is set for a shaft with a nitrided skin, which isn't straightened:
	// the skin cracks.
	Nitrided bool
}

// A RunOutFound is what follows for one journal.
type RunOutFound struct {
	RunOutShape
	Support  bool         `json:"support"`  // one of the two that the rest are seen from
	Relative RunOutVector `json:"relative"` // the eccentricity seen from the line between the supports
	// ByHalf is the bend that half the run-out as read would claim. Where the
	// journal isn't round it differs from Bend.
	ByHalf tolerance.Bracket `json:"byHalf"`
	RunOut tolerance.Finding `json:"runOut"` // as read; the zero Finding for a support without readings
	Bend   tolerance.Finding `json:"bend"`   // of Relative; the zero Finding for a support
}

// A RunOutReport is what follows for a shaft.
type RunOutReport struct {
	Journals   []RunOutFound       `json:"journals"`          // in the order given
	Neighbours []RunOutNeighbour   `json:"neighbours"`        // each main and the next
	Line       ShaftLine           `json:"line"`              // of the mains
	Notes      []string            `json:"notes,omitempty"`   // what the readings don't say
	Worst      tolerance.Standing  `json:"worst"`             // of what was judged by limits
	WorstAt    string              `json:"worstAt,omitempty"` // measure and place
	Next       string              `json:"next"`              // what to do
	findings   []tolerance.Finding // all that were judged against something
}

// Inspect judges a survey: run-out as read, bend seen from the supports,
// neighbours by vectors and by the manual's rules, and straightness.
//
// It fails with an [InputError] where a turn can't be ([RunOutTurn.Separate]),
// where the supports aren't two journals at two places, where a shaft between
// centres wasn't read at them, and where the journals aren't in order; and as
// [tolerance.Assess] does.
func (s RunOutSurvey) Inspect() (RunOutReport, error) {
	var r RunOutReport
	if err := s.check(); err != nil {
		return r, err
	}
	for i, j := range s.Journals {
		f := RunOutFound{Support: i == s.First || i == s.Second}
		f.Where = j.Where
		if len(j.Readings) > 0 {
			shape, err := j.Separate(s.Error)
			if err != nil {
				return RunOutReport{}, err
			}
			f.RunOutShape = shape
		}
		r.Journals = append(r.Journals, f)
	}
	if s.Support == OnBlocks {
		r.Notes = append(r.Notes, s.takeOffBlocks(r.Journals)...)
	}
	for i := range r.Journals {
		if err := s.judge(&r, i); err != nil {
			return RunOutReport{}, err
		}
	}
	if err := s.neighbours(&r); err != nil {
		return RunOutReport{}, err
	}
	if places, offs := s.mains(r.Journals); len(places) > 1 {
		r.Line, _ = StraightShaft(places, offs) // in order, by check
	}
	s.notes(&r)
	for _, f := range r.findings {
		if r.WorstAt == "" || runOutRank(f.Standing) > runOutRank(r.Worst) {
			r.Worst, r.WorstAt = f.Standing, f.Measure+", "+f.Where
		}
	}
	r.Next = s.next(r)
	return r, nil
}

// judge fills in one journal seen from the supports.
func (s RunOutSurvey) judge(r *RunOutReport, i int) (err error) {
	f, j := &r.Journals[i], s.Journals[i]
	first, second := s.Journals[s.First].Position, s.Journals[s.Second].Position
	if !f.Support {
		line := r.Journals[s.First].Off.between(r.Journals[s.Second].Off, j.Position-first, second-j.Position)
		f.Relative = f.Off.Sub(line)
		bend := f.Relative.Bend()
		if f.Bend, err = tolerance.Assess("bend", j.Where, s.Bend, bend); err != nil {
			return err
		}
		r.keep(f.Bend, s.Bend)
	}
	if len(j.Readings) == 0 {
		return nil
	}
	f.ByHalf = BendOfRunOut(f.Total)
	spec := j.Limits
	if spec.IsZero() {
		spec = s.RunOut
	}
	f.RunOut, err = tolerance.Assess("run-out as read", j.Where, spec, f.Total)
	r.keep(f.RunOut, spec)
	return err
}

func (r *RunOutReport) keep(f tolerance.Finding, spec tolerance.Spec) {
	if !spec.IsZero() {
		r.findings = append(r.findings, f)
	}
}

// mains are the places and eccentricities of all but what stands apart.
func (s RunOutSurvey) mains(found []RunOutFound) (places []units.Length, offs []RunOutVector) {
	for i, j := range s.Journals {
		if !j.Apart {
			places, offs = append(places, j.Position), append(offs, found[i].Relative)
		}
	}
	return places, offs
}

// notes says what the readings don't.
func (s RunOutSurvey) notes(r *RunOutReport) {
	for i, f := range r.Journals {
		j := s.Journals[i]
		if j.BackRead && j.Back != j.Readings[0] {
			r.Notes = append(r.Notes, fmt.Sprintf("%s: the dial came back %v off, which widens its readings: secure it and read again", j.Where, j.Back.Sub(j.Readings[0])))
		}
		if slices.Contains(f.Hidden, 3) {
			r.Notes = append(r.Notes, fmt.Sprintf("%s: %d readings take three lobes for a bend: read at 8 places or more", j.Where, len(j.Readings)))
		} else if slices.Contains(f.Hidden, 2) {
			r.Notes = append(r.Notes, fmt.Sprintf("%s: %d readings take an oval for a bend: read at 8 places or more", j.Where, len(j.Readings)))
		}
		if s.unround(f) {
			r.Notes = append(r.Notes, fmt.Sprintf("%s isn't round: half its run-out is not its bend; the eccentricity is, and a micrometer tells the rest", j.Where))
		}
	}
}

// unround reports that a journal's own shape is more than the dial's errors
// make, and more than a twentieth of its run-out.
func (s RunOutSurvey) unround(f RunOutFound) bool {
	total, _ := f.Total.Upper()
	return !f.Support && f.Own-2*(f.reading+f.Off.Error) > total/20
}

// next says what to do.
func (s RunOutSurvey) next(r RunOutReport) string {
	const manual = " by the engine maker's manual"
	switch {
	case len(r.findings) == 0:
		return "no limits were given: compare with the engine maker's manual"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand) && s.Nitrided:
		return r.WorstAt + " is out of limits, and a nitrided shaft isn't straightened: the skin cracks. Replace it, or ask the engine maker"
	case runOutRank(r.Worst) >= runOutRank(tolerance.OutsideNewBand):
		return r.WorstAt + " is out of limits: straighten, regrind or replace" + manual + ", and test for cracks after straightening"
	case r.Worst == tolerance.CantTell:
		return r.WorstAt + " can't be told yet, which is not a pass: read at more places with a finer dial"
	}
	return within(r.Worst) + "; test for cracks and measure the journals" + manual
}

// within says how well what isn't out of limits stands.
func within(s tolerance.Standing) string {
	if s == tolerance.Usable {
		return "within the wear limits given"
	}
	return "within the limits given"
}

// runOutRank: past a limit before can't tell before within.
func runOutRank(s tolerance.Standing) int {
	switch s {
	case tolerance.PastWearLimit:
		return 4
	case tolerance.OutsideNewBand:
		return 3
	case tolerance.CantTell:
		return 2
	case tolerance.Usable:
		return 1
	}
	return 0
}

// mostJournals is more than any shaft has.
const mostJournals = 100

func (s RunOutSurvey) check() error {
	n := len(s.Journals)
	if n < 3 || n > mostJournals {
		return &InputError{"journals under the dial", fmt.Sprint(n), "from 3 to 100, the two supports among them"}
	}
	if s.First < 0 || s.First >= n || s.Second < 0 || s.Second >= n || s.First >= s.Second {
		return &InputError{"supports", fmt.Sprint(s.First+1, " and ", s.Second+1), fmt.Sprint("two of the ", n, " journals, in order")}
	}
	if s.Error < 0 || s.Error > farthest {
		return &InputError{"error of a dial reading", s.Error.String(), "0 mm or more, and at most 10 m"}
	}
	if s.Support > OnBlocks {
		return &InputError{"support", fmt.Sprint(uint8(s.Support)), "between centres or on V-blocks"}
	}
	if s.Support == OnBlocks && (s.Included < 30*units.Degree || s.Included > 150*units.Degree) {
		return &InputError{"included angle of the V-blocks", s.Included.String(), "from 30° to 150°"}
	}
	for i, j := range s.Journals {
		support := i == s.First || i == s.Second
		if len(j.Readings) == 0 && !(support && s.Support == OnBlocks) {
			return &InputError{j.Where + ", dial readings", "0", fmt.Sprintf("from %d to %d round the journal", leastReadings, mostReadings)}
		}
		if len(j.Readings) > 0 {
			if err := j.RunOutTurn.check(s.Error); err != nil {
				return err
			}
		}
		if j.Position.Abs() > farthest || i > 0 && j.Position <= s.Journals[i-1].Position {
			return &InputError{j.Where + ", position", j.Position.String(), "beyond that of the journal before it, and at most 10 m"}
		}
	}
	return nil
}
