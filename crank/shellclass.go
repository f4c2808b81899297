package crank

import (
	"strconv"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/selective"
	"github.com/tenthou/tenthou/units"
)

// A ShellClass is a class of half shells in stock: of one colour, one undersize or
// one wall as measured. Half an undersize is on each wall ([UndersizeWall]).
type ShellClass struct {
	Name   string            `json:"name"`            // "red", "standard", ".001"
	Wall   tolerance.Bracket `json:"wall"`            // of one half, or the band of its class: band.Interval()
	Uppers ShellHalves       `json:"uppers,omitzero"` // halves for the block or rod
	Lowers ShellHalves       `json:"lowers,omitzero"` // halves for the cap
}

// ShellHalves is how many halves are there. The zero value is not known: as many as
// it takes.
type ShellHalves struct {
	Pieces int  `json:"pieces"` // 0 or more
	Known  bool `json:"known"`  // false: not counted
}

// HalvesInStock is a number of halves that is known.
func HalvesInStock(pieces int) ShellHalves { return ShellHalves{pieces, true} }

// A ShellBearing is a bearing to find shells for: its oil clearance is Housing −
// two walls − Journal.
type ShellBearing struct {
	Where   string            `json:"where"`   // "main 3"
	Housing tolerance.Bracket `json:"housing"` // bore without shells, cap tightened
	Journal tolerance.Bracket `json:"journal"` // the greatest diameter
}

// A ShellJob is the bearings of a shaft to be given shells at once, from one stock.
type ShellJob struct {
	Bearings []ShellBearing   `json:"bearings"` // 1 to 64
	Classes  []ShellClass     `json:"classes"`  // 1 to 64
	Wanted   selective.Wanted `json:"wanted"`   // the clearance: what is allowed and what is best
	// Mixed allows an upper half of one class with a lower one of another, whose
	// walls differ by MostStep at the most (by their middles); zero: by any.
	Mixed    bool         `json:"mixed,omitzero"`
	MostStep units.Length `json:"mostStep,omitzero"` // between the walls of the two halves
}

// A ShellPick is what one bearing gets.
type ShellPick struct {
	Upper     int               `json:"upper"`     // the class of each half, by its place in the job
	Lower     int               `json:"lower"`     // said with Upper
	Clearance tolerance.Bracket `json:"clearance"` // with them
	Verdict   tolerance.Verdict `json:"verdict"`   // on the clearance, by the wanted band
	Distance  units.Length      `json:"distance"`  // from the aim, the greatest that the bracket allows
}

// A ShellChoice is the answer of [ChooseShells].
type ShellChoice struct {
	Picks    []ShellPick  `json:"picks"`    // in the order of the bearings
	InBand   int          `json:"inBand"`   // how many clearances are in the wanted band for certain
	Greatest units.Length `json:"greatest"` // the greatest distance from the aim
	Sum      units.Length `json:"sum"`      // of all distances
}

// MostBearings is how many bearings and how many classes a job may have.
const MostBearings = 64

func (j *ShellJob) check() error {
	switch {
	case len(j.Bearings) == 0 || len(j.Bearings) > MostBearings:
		return &InputError{"bearings", strconv.Itoa(len(j.Bearings)), "from 1 to 64"}
	case len(j.Classes) == 0:
		return &InputError{"shells in stock", "(none)", "at least one class"}
	case len(j.Classes) > MostBearings:
		return &InputError{"shells in stock", strconv.Itoa(len(j.Classes)) + " classes", "64 at most"}
	case j.Wanted.Band.IsZero() || !j.Wanted.Band.InRange():
		return &InputError{"wanted clearance", j.Wanted.Band.String(), "a band with at least one limit"}
	case !j.Wanted.Band.Allows(j.Wanted.Aim):
		return &InputError{"wanted clearance, aim", j.Wanted.Aim.String(), "a value that " + j.Wanted.Band.String() + " allows"}
	case j.Wanted.Aim.Abs() > journalLargest:
		return &InputError{"wanted clearance, aim", j.Wanted.Aim.String(), "at most 10 m"}
	}
	if err := journalAllowance("most step between halves", j.MostStep); err != nil {
		return err
	}
	thinnest := journalLargest
	for i := range j.Classes {
		c := &j.Classes[i]
		if err := journalBracket("wall", c.Wall, units.Picometre); err != nil {
			return journalBracketOf(c.name(i), "wall", c.Wall, units.Picometre)
		}
		for _, h := range [2]ShellHalves{c.Uppers, c.Lowers} {
			if h.Pieces < 0 || h.Pieces != 0 && !h.Known {
				return &InputError{journalField(c.name(i), "halves in stock"), strconv.Itoa(h.Pieces), "0 or more, and said to be known"}
			}
		}
		lo, _ := journalEnds(c.Wall)
		thinnest = min(thinnest, lo)
	}
	for i := range j.Bearings {
		if err := j.Bearings[i].check(i, thinnest); err != nil {
			return err
		}
	}
	return nil
}

func (c *ShellClass) name(i int) string {
	if c.Name == "" {
		return "class " + strconv.Itoa(i+1)
	}
	return c.Name
}

func (b *ShellBearing) check(i int, thinnest units.Length) error {
	where := b.Where
	if where == "" {
		where = "bearing " + strconv.Itoa(i+1)
	}
	if err := journalBracketOf(where, "housing", b.Housing, units.Picometre); err != nil {
		return err
	}
	if err := journalBracketOf(where, "journal", b.Journal, units.Picometre); err != nil {
		return err
	}
	_, housing := journalEnds(b.Housing)
	if journal, _ := journalEnds(b.Journal); journal >= housing {
		return &InputError{journalField(where, "journal"), b.Journal.String(), "below the housing bore " + b.Housing.String()}
	} else if journal > housing-2*thinnest {
		return &InputError{journalField(where, "journal"), b.Journal.String(),
			"small enough for the thinnest shells, of " + thinnest.String() + ": with any of these it is an interference"}
	}
	return nil
}
