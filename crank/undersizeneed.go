package crank

import (
	"errors"
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// JournalSurface says how a journal was treated, since that decides whether it may
// be ground at all. The zero value is JournalSurfaceNotStated.
type JournalSurface uint8

// The surfaces.
const (
	JournalSurfaceNotStated JournalSurface = iota
	JournalNotHardened                     // the same through and through
	JournalCaseHardened                    // a deep case, by induction or flame
	JournalNitrided                        // a thin case: not ground, nor straightened, without the maker's own process
	JournalBuiltUp                         // plated, sprayed or welded: as nitrided
)

var journalSurfaceNames = []string{"not stated", "not hardened", "case hardened", "nitrided", "built up"}

// String is the surface in words.
func (s JournalSurface) String() string { return journalWord(journalSurfaceNames, s) }

// MarshalText writes what String gives.
func (s JournalSurface) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads what String gives.
func (s *JournalSurface) UnmarshalText(text []byte) error {
	return journalRead("surface", journalSurfaceNames, text, s)
}

// ErrGrind is the kind of every [GrindError], for errors.Is.
var ErrGrind = errors.New("crank: a journal that isn't ground")

// A GrindError names a journal that isn't ground without its maker's own process.
type GrindError struct {
	Where   string         // "crankpin 2"
	Surface JournalSurface // what forbids it
}

// Error says which, and why.
func (e *GrindError) Error() string {
	return "crank: " + journalField(e.Where, "a "+e.Surface.String()+" journal") + " is not ground without the maker's own process for it, which is not given"
}

// Unwrap gives [ErrGrind].
func (e *GrindError) Unwrap() error { return ErrGrind }

// A WornJournal is what is known of a journal that may have to be ground.
// [JournalSurvey.WornJournal] makes one of a survey.
type WornJournal struct {
	Where    string            `json:"where"`    // "crankpin 3"
	Finished tolerance.Bracket `json:"finished"` // the diameter that it was last ground to
	Least    tolerance.Bracket `json:"least"`    // the least diameter
	// What follows is zero where it was not measured.
	Greatest   tolerance.Bracket `json:"greatest,omitzero"`   // the greatest diameter
	OutOfRound tolerance.Bracket `json:"outOfRound,omitzero"` // a difference of diameters
	Taper      tolerance.Bracket `json:"taper,omitzero"`      // a difference of diameters
	// RunOut is the whole reading of the dial (TIR) that is left after
	// straightening, between the centres that the shaft is ground on; of mains.
	RunOut  tolerance.Bracket `json:"runOut,omitzero"`
	Walls   []JournalWall     `json:"walls,omitzero"`   // dialled from the original axis
	Surface JournalSurface    `json:"surface,omitzero"` // how it was treated
	Case    tolerance.Bracket `json:"case,omitzero"`    // depth of the hardened case at the finished size
	// Process is the maker's own, without which a nitrided or built-up journal is
	// not ground: where it is written down.
	Process string `json:"process,omitempty"`
}

// WornJournal is what a survey tells of a journal that may have to be ground; taper
// is by the rule given. Run-out, walls, surface and case are the caller's to add.
func (s *JournalSurvey) WornJournal(r *JournalReport, rule JournalTaperRule) WornJournal {
	w := WornJournal{Where: s.Where, Finished: s.Finished, Least: r.Least.Size, Greatest: r.Greatest.Size, OutOfRound: r.OutOfRound.Value}
	if rule < journalTaperRules {
		w.Taper = r.Taper[rule].Value
	}
	return w
}

// A GrindPlan is how journals are to be ground.
type GrindPlan struct {
	Centring JournalCentring `json:"centring,omitzero"` // what they are ground about
	Stock    units.Length    `json:"stock"`             // the least to be ground off every side
	// The maker's own limits; zero where not given.
	LeastSize units.Length `json:"leastSize,omitzero"` // that a journal may be ground to
	LeastCase units.Length `json:"leastCase,omitzero"` // depth of hardened case that must stay
}

// A CleanUp is the greatest size that a journal can be ground to.
type CleanUp struct {
	Size        tolerance.Bracket `json:"size"`        // the greatest that cleans up
	Centre      JournalCentre     `json:"centre"`      // what it is ground about
	CentreKnown bool              `json:"centreKnown"` // false: moved, by diameters alone
	// StrokeChange is what grinding about a moved centre adds to a crankpin's
	// stroke: twice the shift along the throw.
	StrokeChange units.Length `json:"strokeChange"`
	// Governs is the wall, by its place in WornJournal.Walls, that asks for it; −1
	// where none does.
	Governs     int    `json:"governs"`
	ByDiameters bool   `json:"byDiameters"`      // without walls or run-out: which side is worn isn't known
	Settle      string `json:"settle,omitempty"` // what would narrow it
}

// CleansUpAt is the greatest size that a journal can be ground to as planned:
//
//	finished − 2·max(wear) − 2·stock       walls dialled, original throw
//	least − run-out − 2·stock              a main with a bend left in it
//	finished − e − 2·stock, e twice        from diameters alone, e = finished − least
//
// All that was measured counts, and each narrows the bracket; where a bend is left,
// what diameters promise at the least counts no more. Walls of a main are dialled
// between the centres that it is ground on, as its run-out is. A wall that wasn't
// dialled counts as unworn, so dial all round; the least diameter then says if one
// was left out. With the centre moved it is the greatest circle within the walls
// and within the unworn journal between them, taken so that it lies within them for
// sure: about 2·shift²/finished below the exact one, 2 µm where a journal of 50 mm
// moves by 0.22 mm.
//
// It fails with an [InputError] where nothing was measured, a size can't be or two
// readings contradict each other, and with a [GrindError] where the journal is not
// one that is ground.
func CleansUpAt(j *WornJournal, kind JournalKind, p *GrindPlan) (CleanUp, error) {
	if err := j.check(kind, p); err != nil {
		return CleanUp{}, err
	}
	c := CleanUp{Governs: -1}
	stock := tolerance.Exactly(p.Stock)
	least, greatest := CleanSizeByDiameters(j.Finished, j.Least, stock)
	lo, _ := journalEnds(least)
	_, hi := journalEnds(greatest)
	lo = min(lo, hi) // larger than it was ground to: no wear, not less than none
	c.CentreKnown = p.Centring == OriginalThrow || len(j.Walls) > 0
	if len(j.Walls) == 0 && j.RunOut.IsZero() {
		c.ByDiameters = true
		if c.Settle = "dial the worn side from the original axis"; kind == MainJournal {
			c.Settle = "dial the worn side, or the run-out, between the centres that it is ground on"
		}
		c.Size = journalSpan(lo, hi)
		return c, nil
	}
	moved := p.Centring == MovedCentre && len(j.Walls) > 0
	if moved {
		c.Centre = movedCentre(j.Walls)
		lo = -journalLargest // what diameters and run-out promise is for the original axis
	}
	if len(j.Walls) > 0 {
		a, b, governs := c.Centre.about(j.Walls)
		size := CleanSize(j.Finished, journalSpan(a, b), stock)
		l, h := journalEnds(size)
		lo, hi = max(lo, l), min(hi, h)
		c.Governs = governs
		if kind == Crankpin {
			c.StrokeChange = StrokeAfterShift(0, c.Centre.Out)
		}
	}
	if !j.RunOut.IsZero() && !moved {
		l, h := j.bent(stock)
		if len(j.Walls) == 0 {
			lo = l // what diameters promise is for the journal's own axis, which a bend puts off the centres
		}
		lo, hi = max(lo, l), min(hi, h)
	}
	if lo > hi {
		return CleanUp{}, &InputError{journalField(j.Where, "least diameter"), journalQuote(j.Least.String()),
			"explained by the walls and the run-out that were dialled: dial the place where it was measured"}
	}
	c.Size = journalSpan(lo, hi)
	return c, nil
}

// bent are the bounds by a run-out.
func (j *WornJournal) bent(stock tolerance.Bracket) (lo, hi units.Length) {
	greatest := j.Greatest
	if greatest.IsZero() {
		greatest = j.Least // a journal taken for round
	}
	lo, _ = journalEnds(CleanSizeBent(j.Least, j.RunOut, stock))
	_, hi = journalEnds(CleanSizeBentMost(j.Least, greatest, j.RunOut, stock))
	if !j.Greatest.IsZero() {
		return lo, hi
	}
	_, hi = journalEnds(j.Least.Sub(stock.Scale(2, 1)))
	return lo, hi
}

// check refuses a journal that can't be, or isn't ground.
func (j *WornJournal) check(kind JournalKind, p *GrindPlan) error {
	if j.Surface >= JournalNitrided && j.Process == "" {
		return &GrindError{Where: journalQuote(j.Where), Surface: j.Surface}
	}
	if err := p.check(); err != nil {
		return err
	}
	if kind > Crankpin {
		return &InputError{"kind", "(unknown)", "a main journal or a crankpin"}
	}
	for _, b := range [...]struct {
		field    string
		value    *tolerance.Bracket
		least    units.Length
		required bool
	}{
		{"size last ground to", &j.Finished, units.Picometre, true}, {"least diameter", &j.Least, units.Picometre, true},
		{"greatest diameter", &j.Greatest, units.Picometre, false}, {"out-of-round", &j.OutOfRound, 0, false},
		{"taper", &j.Taper, -journalLargest, false}, {"run-out", &j.RunOut, 0, false}, {"case", &j.Case, 0, false},
	} {
		if b.required || !b.value.IsZero() {
			if err := journalBracketOf(j.Where, b.field, *b.value, b.least); err != nil {
				return err
			}
		}
	}
	finished, _ := journalEnds(j.Finished)
	lo, _ := journalEnds(j.Least)
	switch {
	case lo < finished/2 || lo > finished+finished/2: // three times the size is another unit
		return &InputError{journalField(j.Where, "least diameter"), journalQuote(j.Least.String()), "near the size last ground to, " + j.Finished.String()}
	case !j.RunOut.IsZero() && kind == Crankpin:
		return &InputError{journalField(j.Where, "run-out"), journalQuote(j.RunOut.String()), "of a crankpin: run-out is of mains, whose axis the shaft is ground on; dial the pin's walls from its original throw"}
	}
	if !j.Greatest.IsZero() {
		if _, most := journalEnds(j.Greatest); most < lo {
			return &InputError{journalField(j.Where, "greatest diameter"), journalQuote(j.Greatest.String()), "at least the least diameter, " + j.Least.String()}
		}
	}
	// Half of the out-of-round shows on the dial wherever the axis lies.
	if oval, _ := journalEnds(j.OutOfRound); !j.RunOut.IsZero() {
		if _, tir := journalEnds(j.RunOut); 2*tir < oval {
			return &InputError{journalField(j.Where, "run-out"), journalQuote(j.RunOut.String()), "at least half of the out-of-round, " + j.OutOfRound.String()}
		}
	}
	return j.checkWalls(finished)
}

func (j *WornJournal) checkWalls(finished units.Length) error {
	if len(j.Walls) > MostJournalStations {
		return &InputError{journalField(j.Where, "walls"), strconv.Itoa(len(j.Walls)), "100 000 at most"}
	}
	for i := range j.Walls {
		w := &j.Walls[i]
		name := w.Where
		if name == "" {
			name = "wall " + strconv.Itoa(i+1)
		}
		field := journalField(j.Where, journalQuote(name))
		if err := journalBracket(field+", wear", w.Wear, -finished/4); err != nil {
			return err
		}
		if _, hi := journalEnds(w.Wear); hi > finished/4 {
			return &InputError{field + ", wear", w.Wear.String(), "less than a quarter of the journal"}
		}
		if !w.Heading.InRange() {
			return &InputError{field + ", heading", w.Heading.String(), "within the range of an angle"}
		}
	}
	return nil
}

func (p *GrindPlan) check() error {
	for _, x := range [...]struct {
		field string
		value units.Length
	}{{"least stock per side", p.Stock}, {"least size allowed", p.LeastSize}, {"least case", p.LeastCase}} {
		if err := journalAllowance(x.field, x.value); err != nil {
			return err
		}
	}
	if p.Centring > MovedCentre {
		return &InputError{"centring", "(unknown)", "one of the two"}
	}
	return nil
}
