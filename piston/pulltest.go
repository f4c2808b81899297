package piston

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A PullTrial is one pull of a feeler strip between a skirt and its bore.
type PullTrial struct {
	Strip tolerance.Bracket                     `json:"strip"`                // thickness; of several on one another, their sum
	Pull  tolerance.Interval[units.Force]       `json:"pull"`                 // as the scale showed it, with its error
	Width units.Length                          `json:"width,omitzero"`       // of the strip; 0 where not recorded
	Film  PullFilm                              `json:"film,omitzero"`        // dry or oiled
	At    tolerance.Interval[units.Temperature] `json:"temperature,omitzero"` // of piston and bore; zero where not recorded
}

// A PullNote is something about a pull test that must be said beside its answer.
type PullNote uint8

// The notes.
const (
	PullWidthNotRecorded       PullNote = 1 << iota // the rule asks for a width of strip
	PullFilmNotRecorded                             // the rule says dry or oiled
	PullTemperatureNotRecorded                      // the rule gives a temperature
	PullWidthNotInRule                              // a wider strip drags more, and the rule doesn't say how wide
	PullFilmNotInRule                               // oil eases the pull, and the rule doesn't say dry or oiled
	PullStripNotInRule                              // no trial was with a strip that the rule is for
)

var pullNoteNames = [...]string{
	"the width of the strip is not recorded, and the rule is for one width",
	"dry or oiled is not recorded, and the rule is for one of them",
	"the temperature is not recorded, and the rule gives one",
	"the rule doesn't say how wide the strip is, and a wider one drags more",
	"the rule doesn't say whether the strip is dry or oiled",
	"no strip that was pulled is of the rule's thickness",
}

// Texts are the notes in words.
func (n PullNote) Texts() (texts []string) {
	for i, name := range pullNoteNames {
		if n&(1<<i) != 0 {
			texts = append(texts, name)
		}
	}
	return texts
}

// A PullReading is what a pull test tells by one rule, and by which.
type PullReading struct {
	Rule      string            `json:"rule"`           // its name
	Source    string            `json:"source"`         // where the rule is from
	Clearance tolerance.Bracket `json:"clearance"`      // on the diameter; the zero bracket where nothing can be told
	Told      bool              `json:"told"`           // whether any trial told anything
	Notes     PullNote          `json:"notes,omitzero"` // what must be said beside it
	// Refused is why a rule can't be used on the trials; see [ComparePulls].
	Refused string `json:"refused,omitempty"`
}

// String is the clearance and the rule that it is by.
func (r PullReading) String() string {
	if !r.Told {
		return "nothing told by the rule " + r.Rule
	}
	return r.Clearance.String() + " by the rule " + r.Rule
}

// Read tells the clearance from trials at one place, by this rule: a pull in
// the rule's band gives strip and allowance, a lighter one at least the greatest
// of that, a harder one at most the least. A pull that may lie on either side of
// an end of the band, by the scale's error, counts as either. What all trials
// allow is the answer; an end that none gives is 0 or absent.
//
// It fails with an [InputError] where the rule or a trial can't be, where
// a trial was made otherwise than the rule says, and where two trials
// contradict each other, as where a thicker strip pulled more lightly.
func (r PullRule) Read(trials ...PullTrial) (PullReading, error) {
	out := PullReading{Rule: r.Name, Source: r.Source}
	if err := r.check(); err != nil {
		return out, err
	}
	if len(trials) == 0 {
		return out, &InputError{r.field("trials"), "(none)", "one pull or more"}
	}
	if r.Width == 0 {
		out.Notes |= PullWidthNotInRule
	}
	if r.Film == FilmNotStated {
		out.Notes |= PullFilmNotInRule
	}
	told := tolerance.AtLeast(units.Length(0)).Interval()
	served := false
	for i := range trials {
		t := &trials[i]
		if err := r.suits(t, i, &out); err != nil {
			return out, err
		}
		if !r.Strip.IsZero() && r.Strip.Judge(t.Strip) != tolerance.Within {
			continue
		}
		served = true
		this, ok := r.tells(t)
		if !ok {
			continue
		}
		both, ok := told.Intersect(this)
		if !ok {
			return out, &InputError{r.field("trial " + strconv.Itoa(i+1)), "telling a clearance of " + this.String(),
				"in agreement with the trials before it, which tell " + told.String() + ", or with a piston that goes in"}
		}
		told, out.Told = both, true
	}
	if !served {
		out.Notes |= PullStripNotInRule
	}
	if out.Told {
		out.Clearance = told
	}
	return out, nil
}

// suits refuses a trial that is none, or not of this rule.
func (r *PullRule) suits(t *PullTrial, i int, out *PullReading) error {
	bad := func(field, value, want string) error {
		return &InputError{"trial " + strconv.Itoa(i+1) + ", " + field, value, want}
	}
	if _, ok := positive(t.Strip); !ok {
		return size("trial "+strconv.Itoa(i+1)+", strip", t.Strip)
	}
	lo, loEnd := t.Pull.Lower()
	_, hiEnd := t.Pull.Upper()
	_, stripEnd := t.Strip.Upper()
	switch {
	case stripEnd == tolerance.Absent:
		return bad("strip", t.Strip.String(), "of a thickness that has a greatest value")
	case !t.Pull.InRange() || loEnd == tolerance.Absent || hiEnd == tolerance.Absent || lo < 0:
		return bad("pull", t.Pull.String(), "0 N or more, with both ends")
	case t.Width != 0 && r.Width != 0 && t.Width != r.Width:
		return bad("strip width", t.Width.String(), "the rule's "+r.Width.String()+": the drag grows with the width")
	case t.Width == 0 && r.Width != 0:
		out.Notes |= PullWidthNotRecorded
	}
	switch {
	case r.Film == FilmNotStated || r.Film == t.Film:
	case t.Film == FilmNotStated:
		out.Notes |= PullFilmNotRecorded
	default:
		return bad("film", t.Film.String(), r.Film.String()+", as the rule says")
	}
	if r.At.IsZero() {
		return nil
	}
	if t.At.IsZero() {
		out.Notes |= PullTemperatureNotRecorded
		return nil
	}
	if r.At.Judge(t.At) != tolerance.Within {
		return bad("temperature", t.At.String(), "within the rule's "+r.At.String())
	}
	return nil
}

// tells is what one trial tells; ok is false where its pull may be anything.
func (r *PullRule) tells(t *PullTrial) (c tolerance.Bracket, ok bool) {
	in := PullClearance(t.Strip, r.Adds)
	thin, _ := t.Strip.Lower()
	thick, _ := t.Strip.Upper()
	least, _ := r.Adds.Lower()
	most, _ := r.Adds.Upper()
	sides := r.Pull.JudgeAll(t.Pull)
	under, over := sides.Least == tolerance.Undecided, sides.Greatest == tolerance.Undecided
	switch {
	case sides.Least == tolerance.Below: // slides more easily than it should
		return ends(thin.Add(most), tolerance.Closed, 0, tolerance.Absent), true
	case sides.Greatest == tolerance.Above:
		return ends(0, tolerance.Absent, thick.Add(least), tolerance.Closed), true
	case under && over:
		return c, false
	case under:
		return ends(thin.Add(least), tolerance.Closed, 0, tolerance.Absent), true
	case over:
		return ends(0, tolerance.Absent, thick.Add(most), tolerance.Closed), true
	}
	return in, true
}

func ends(lo units.Length, loEnd tolerance.End, hi units.Length, hiEnd tolerance.End) tolerance.Bracket {
	b, _ := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	return b
}
