package crank

import (
	"slices"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// An AsIsRule says up to what a journal may run on without grinding. A zero band
// asks nothing.
type AsIsRule struct {
	OutOfRound tolerance.Band `json:"outOfRound,omitzero"` // a difference of diameters
	Taper      tolerance.Band `json:"taper,omitzero"`      // by the rule that the survey's taper is counted by
	RunOut     tolerance.Band `json:"runOut,omitzero"`     // the whole reading of the dial, of mains
}

// An UndersizeJob is the mains of a shaft, or its crankpins, which all get one
// undersize. Where one is ground, all are.
type UndersizeJob struct {
	Kind     JournalKind    `json:"kind,omitzero"` // mains, or crankpins
	Standard tolerance.Band `json:"standard"`      // the sizes of a new journal, which undersizes count from
	Journals []WornJournal  `json:"journals"`      // 1 to 1000
	Kits     []ShellKit     `json:"kits"`          // 1 to 1000, in any order
	Plan     GrindPlan      `json:"plan"`          // the same for all journals
	AsIs     AsIsRule       `json:"asIs,omitzero"` // for kits that go on a journal as it is
}

// An UndersizeFit is how one journal would do with one kit.
type UndersizeFit struct {
	// AsIs is whether the kit goes on the journal as it is: Below where it doesn't.
	AsIs tolerance.Verdict `json:"asIs"`
	// Ground is whether the journal can be ground for the kit: CleansUp, Allowed
	// and CaseStands together. Below where the kit isn't ground for.
	Ground tolerance.Verdict `json:"ground"`
	// Spare is how much more than the least of the kit's band the clean size is.
	Spare    tolerance.Bracket `json:"spare"`
	CleansUp tolerance.Verdict `json:"cleansUp"` // Within where Spare is 0 or more for sure
	Allowed  tolerance.Verdict `json:"allowed"`  // at least the least size that the maker allows
	// CaseLeft is what is left of the hardened case, at the greatest size that
	// cleans up.
	CaseLeft   tolerance.Bracket `json:"caseLeft,omitzero"`
	CaseStands tolerance.Verdict `json:"caseStands"` // whether that is enough
	// GrindTo is what the journal may be ground to, where Ground is Within.
	GrindTo tolerance.Bracket `json:"grindTo,omitzero"`
}

// A JournalChoice is what one journal asks for.
type JournalChoice struct {
	Where string         `json:"where"` // the journal
	Clean CleanUp        `json:"clean"` // the greatest size it can be ground to
	Fits  []UndersizeFit `json:"fits"`  // by the kits' places in [UndersizeChoice].Kits
	// AsIs is the least undersize that goes on it as it is for sure; −1 where there
	// is none.
	AsIs  int               `json:"asIs"`
	Stays tolerance.Verdict `json:"stays"` // Within where AsIs is one
}

// An UndersizeOutcome says what the choice came to. The zero value is
// UndersizeUndecided.
type UndersizeOutcome uint8

// The outcomes.
const (
	UndersizeUndecided UndersizeOutcome = iota // what was measured doesn't tell
	UndersizeAsIs                              // every journal runs on as it is
	UndersizeGrind                             // all are ground for one kit
	UndersizeNone                              // no kit cleans up every journal: weld and grind, or another shaft
)

var undersizeNames = []string{"can't tell", "no grinding", "grind all to one undersize", "weld and grind, or replace the shaft"}

// String is the outcome in words.
func (o UndersizeOutcome) String() string { return journalWord(undersizeNames, o) }

// MarshalText writes what String gives.
func (o UndersizeOutcome) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// UnmarshalText reads what String gives.
func (o *UndersizeOutcome) UnmarshalText(text []byte) error {
	return journalRead("undersize outcome", undersizeNames, text, o)
}

// An UndersizeChoice is one undersize for the mains, or for the crankpins.
type UndersizeChoice struct {
	Outcome  UndersizeOutcome `json:"outcome"`  // what it came to
	Kits     []ShellKit       `json:"kits"`     // in order of undersize
	Nominal  []bool           `json:"nominal"`  // by kit: standard less undersize stands in for a band that isn't printed
	InStock  []bool           `json:"inStock"`  // by kit: enough pairs for all journals, as far as is known
	Journals []JournalChoice  `json:"journals"` // in the order of the job
	// Stays is whether every journal may run on as it is.
	Stays tolerance.Verdict `json:"stays"`
	// AsIsShort is the kit that there are too few pairs of for that; −1 where there
	// are enough.
	AsIsShort int `json:"asIsShort"`
	// Kit is the least undersize that all journals can be ground to for sure,
	// Possible the least that they may; −1 where there is none.
	Kit      int `json:"kit"`
	Possible int `json:"possible"` // as Kit, of those that may
	// Forced is the journal, by its place, that rules out the next lesser
	// undersize, or running on as it is.
	Forced int    `json:"forced"`
	Settle string `json:"settle,omitempty"` // what to measure or look up before grinding
}

// MostJournals is how many journals and how many kits a job may have.
const MostJournals = 1000

// ChooseUndersize finds whether all journals may run on as they are, and else the
// least undersize, of the shells in stock, that all of them clean up at, and names
// the journal that forces it. What was measured may not tell two kits apart: then
// the answer is undecided, with what to measure.
//
// A journal is ground to the band printed for the shell. It cleans up where that
// band's least size is not above the clean size: on the line, it cleans up with
// just the stock asked for. A case that ends at the surface counts as gone.
//
// It fails, with an [InputError], where there are no journals or no kits or one of
// them can't be, and with a [GrindError] for journals that aren't ground.
func ChooseUndersize(j *UndersizeJob) (UndersizeChoice, error) {
	if err := j.check(); err != nil {
		return UndersizeChoice{}, err
	}
	c := UndersizeChoice{Kits: slices.Clone(j.Kits), AsIsShort: -1, Kit: -1, Possible: -1}
	slices.SortStableFunc(c.Kits, func(a, b ShellKit) int { return a.Undersize.Compare(b.Undersize) })
	for k := range c.Kits {
		_, nominal := c.Kits[k].band(j.Standard)
		c.Nominal = append(c.Nominal, nominal)
		c.InStock = append(c.InStock, c.Kits[k].Stock.enough(len(j.Journals)))
	}
	c.Stays = tolerance.Within
	for i := range j.Journals {
		one, err := j.journal(i, c.Kits)
		if err != nil {
			return UndersizeChoice{}, err
		}
		c.Stays = joined(c.Stays, one.Stays)
		c.Journals = append(c.Journals, one)
	}
	c.stockAsIs()
	for k := range c.Kits {
		ground := tolerance.Within
		for i := range c.Journals {
			ground = joined(ground, c.Journals[i].Fits[k].Ground)
		}
		if ground == tolerance.Below || !c.InStock[k] {
			continue
		}
		if c.Possible < 0 {
			c.Possible = k
		}
		if ground == tolerance.Within {
			c.Kit = k
			break
		}
	}
	switch {
	case c.Stays == tolerance.Within:
		c.Outcome = UndersizeAsIs
	case c.Stays == tolerance.Undecided:
	case c.Possible < 0:
		c.Outcome = UndersizeNone
	case c.Kit == c.Possible:
		c.Outcome = UndersizeGrind
	}
	c.Forced = c.forced()
	c.Settle = j.settle(&c)
	return c, nil
}

// journal works out one journal with every kit.
func (j *UndersizeJob) journal(i int, kits []ShellKit) (JournalChoice, error) {
	w := &j.Journals[i]
	c := JournalChoice{Where: w.Where, AsIs: -1, Stays: tolerance.Below, Fits: make([]UndersizeFit, len(kits))}
	if c.Where == "" {
		c.Where = j.Kind.String() + " " + strconv.Itoa(i+1)
	}
	var err error
	if c.Clean, err = CleansUpAt(w, j.Kind, &j.Plan); err != nil {
		return c, err
	}
	rule := j.mayStay(w)
	for k := range kits {
		f := &c.Fits[k]
		f.AsIs, f.Ground = tolerance.Below, tolerance.Below
		asIs := kits[k].AsIs
		if asIs.IsZero() && kits[k].Undersize == 0 {
			asIs = j.Standard
		}
		if !asIs.IsZero() {
			f.AsIs = joined(rule, failed(asIs.Judge(w.Least)))
		}
		if asIs.IsZero() || !kits[k].Journal.IsZero() {
			j.grind(w, &c.Clean, &kits[k], f)
		}
		if f.AsIs == tolerance.Within && c.AsIs < 0 {
			c.AsIs, c.Stays = k, tolerance.Within
		}
		if f.AsIs == tolerance.Undecided && c.Stays == tolerance.Below {
			c.Stays = tolerance.Undecided
		}
	}
	return c, nil
}

// mayStay judges out-of-round, taper and run-out for running on.
func (j *UndersizeJob) mayStay(w *WornJournal) tolerance.Verdict {
	v := tolerance.Within
	for _, x := range [...]struct {
		band  *tolerance.Band
		value *tolerance.Bracket
	}{{&j.AsIs.OutOfRound, &w.OutOfRound}, {&j.AsIs.Taper, &w.Taper}, {&j.AsIs.RunOut, &w.RunOut}} {
		if !x.band.IsZero() {
			v = joined(v, failed(x.band.Judge(*x.value))) // nothing measured: undecided
		}
	}
	return v
}

// grind judges grinding a journal for a kit. Every demand but the band's greatest
// size asks for a large one, so the largest that cleans up decides.
func (j *UndersizeJob) grind(w *WornJournal, clean *CleanUp, kit *ShellKit, f *UndersizeFit) {
	band, _ := kit.band(j.Standard)
	from, to := journalEnds(band.Interval())
	f.Spare = clean.Size.Sub(tolerance.Exactly(from))
	f.CleansUp = tolerance.AtLeast(units.Length(0)).Judge(f.Spare)
	f.Allowed, f.CaseStands = tolerance.Within, tolerance.Within
	size := clean.Size.Min(tolerance.Exactly(to))
	if j.Plan.LeastSize != 0 {
		f.Allowed = tolerance.AtLeast(j.Plan.LeastSize).Judge(size)
	}
	from = max(from, j.Plan.LeastSize)
	switch {
	case !w.Case.IsZero():
		near, far := clean.Centre.length()
		f.CaseLeft = CaseLeft(w.Case, w.Finished, size).Sub(journalSpan(near, far))
		least := max(j.Plan.LeastCase, units.Picometre)
		f.CaseStands = tolerance.AtLeast(least).Judge(f.CaseLeft)
		shallow, _ := journalEnds(w.Case)
		_, finished := journalEnds(w.Finished)
		from = max(from, SizeForCase(shallow, least+far, finished))
	case j.Plan.LeastCase != 0:
		f.CaseStands = tolerance.Undecided
	}
	if !clean.CentreKnown && f.CaseStands == tolerance.Within && !w.Case.IsZero() {
		f.CaseStands = tolerance.Undecided
	}
	f.Ground = joined(f.CleansUp, joined(f.Allowed, f.CaseStands))
	if f.Ground == tolerance.Within {
		top, _ := journalEnds(size)
		f.GrindTo = journalSpan(from, top)
	}
}

// stockAsIs sees that there are pairs enough for journals that stay as they are.
func (c *UndersizeChoice) stockAsIs() {
	if c.Stays != tolerance.Within {
		return
	}
	for k := range c.Kits {
		n := 0
		for i := range c.Journals {
			if c.Journals[i].AsIs == k {
				n++
			}
		}
		if n > 0 && !c.Kits[k].Stock.enough(n) {
			c.Stays, c.AsIsShort = tolerance.Below, k
			return
		}
	}
}

func (j *UndersizeJob) check() error {
	if j.Kind > Crankpin {
		return &InputError{"kind", "(unknown)", "a main journal or a crankpin"}
	}
	if err := journalBracket("standard journal", j.Standard.Interval(), units.Picometre); err != nil {
		return err
	}
	switch {
	case len(j.Journals) == 0 || len(j.Journals) > MostJournals:
		return &InputError{"journals", strconv.Itoa(len(j.Journals)), "from 1 to 1000"}
	case len(j.Kits) == 0:
		return &InputError{"shells in stock", "(none)", "at least one kit to choose from"}
	case len(j.Kits) > MostJournals:
		return &InputError{"shells in stock", strconv.Itoa(len(j.Kits)), "1000 kits at most"}
	}
	for i := range j.Kits {
		if err := j.Kits[i].check(i, j.Standard); err != nil {
			return err
		}
	}
	least, greatest := journalEnds(j.Standard.Interval())
	for i := range j.Journals {
		// An undersize already there is a few millimetres at most.
		lo, hi := journalEnds(j.Journals[i].Finished)
		if !j.Journals[i].Finished.IsZero() && (lo < least-least/4 || hi > greatest+greatest/100) {
			return &InputError{journalField(j.Journals[i].Where, "size last ground to"), j.Journals[i].Finished.String(), "near the standard journal, " + j.Standard.String()}
		}
	}
	return j.Plan.check()
}

// length is how far a centre moved, rounded down and up.
func (c JournalCentre) length() (near, far units.Length) {
	if c.Out == 0 {
		return c.Across.Abs(), c.Across.Abs()
	}
	if c.Across == 0 {
		return c.Out.Abs(), c.Out.Abs()
	}
	_, far, _ = c.about(nil)
	return max(far-units.Picometre, 0), far
}
