package cylinder

import (
	"slices"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A RepairLiner is what a bore that doesn't clean up is lined with.
type RepairLiner struct {
	Outside units.Length `json:"outside,omitzero"` // the size that the block is bored to for it; 0 where not known
	Price   Price        `json:"price,omitzero"`   // of one, fitted
}

// An OversizeJob is a block whose bores are to be finished to one size.
type OversizeJob struct {
	Standard  units.Length      `json:"standard"`           // the bore that the kits' oversizes count from
	Bores     []WornBore        `json:"bores"`              // 1 to 1000
	Kits      []PistonKit       `json:"kits"`               // 1 to 1000, in any order
	Clearance tolerance.Bracket `json:"clearance,omitzero"` // of the piston at 20 °C; needed where pistons were measured
	Plan      BoringPlan        `json:"plan"`               // the same for all bores
	Liner     RepairLiner       `json:"liner,omitzero"`     // for those that no kit suits
	Boring    Price             `json:"boring,omitzero"`    // of boring and honing one bore
}

// A KitFit is how one bore would do at the size of one kit.
type KitFit struct {
	Size   tolerance.Bracket `json:"size"`   // it is finished to
	Proved bool              `json:"proved"` // by measured pistons, not the nominal step
	// Spare is how much more than the least size that is. CleansUp is Within
	// where that is 0 or more for sure.
	Spare    tolerance.Bracket `json:"spare"`
	CleansUp tolerance.Verdict `json:"cleansUp"` // Within, Below or Undecided
	// Wall is the thinnest wall left, of those read; WallStands whether it is
	// as thick as it must be. Without readings, or a least wall, there is no
	// doubt to settle: it is Within, and WallRead false.
	Wall       tolerance.Bracket `json:"wall,omitzero"`
	WallAt     string            `json:"wallAt,omitempty"` // where it is
	WallRead   bool              `json:"wallRead"`         // whether any was
	WallStands tolerance.Verdict `json:"wallStands"`       // Within, Below or Undecided
	Allowed    tolerance.Verdict `json:"allowed"`          // at most the largest bore that the maker allows
	Fits       tolerance.Verdict `json:"fits"`             // all three
}

// A BoreChoice is what one bore asks for.
type BoreChoice struct {
	Where string   `json:"where"` // the bore
	Need  BoreNeed `json:"need"`  // the least size for it
	Fits  []KitFit `json:"fits"`  // by the kits' places in [OversizeChoice].Kits
	// Sure is the least kit that fits for sure, Possible the least that may;
	// −1 where there is none.
	Sure     int `json:"sure"`
	Possible int `json:"possible"` // as Sure, of those that may
}

// An OversizeOutcome says what the choice came to. The zero value is
// OversizeUndecided.
type OversizeOutcome uint8

// The outcomes.
const (
	OversizeUndecided OversizeOutcome = iota // what was measured doesn't tell two kits apart
	OversizeKit                              // every bore cleans up at one kit's size
	OversizeLiner                            // no kit suits every bore: line those that it doesn't
)

var oversizeNames = []string{"can't tell", "one size for the block", "line what doesn't clean up"}

// String is the outcome in words.
func (o OversizeOutcome) String() string { return wordOf(oversizeNames, o) }

// MarshalText writes what String gives.
func (o OversizeOutcome) MarshalText() ([]byte, error) { return []byte(o.String()), nil }

// UnmarshalText reads what String gives.
func (o *OversizeOutcome) UnmarshalText(text []byte) error {
	return readWord("oversize outcome", oversizeNames, text, o)
}

// An OversizeChoice is one size for a block.
type OversizeChoice struct {
	Outcome OversizeOutcome `json:"outcome"` // what it came to
	Kits    []PistonKit     `json:"kits"`    // in order of size
	Bores   []BoreChoice    `json:"bores"`   // in the order of the job
	// Kit is the least that fits every bore for sure, Possible the least that
	// may; −1 where there is none.
	Kit      int `json:"kit"`
	Possible int `json:"possible"` // as Kit, of those that may
	// Forced is the bore, by its place, that asks for this size: the one with
	// the least to spare at it or, where no kit suits all, the one that is
	// furthest from cleaning up.
	Forced int `json:"forced"`
	// Settle says what to measure: to tell kits apart, or before boring to a
	// nominal step.
	Settle  string           `json:"settle,omitempty"`
	Options []OversizeOption `json:"options"` // side by side, the smallest size first
}

// MostBores is how many bores and how many kits a job may have.
const MostBores = 1000

// ChooseOversize finds the least kit at whose size every bore of a block cleans
// up, keeps its walls and stays within the largest bore allowed, names the bore
// that forces it, and puts the options side by side. What was measured may not
// tell two kits apart: then the answer is undecided, with what to measure.
//
// It fails, with an [InputError], where there are no bores or no kits or one of
// them can't be, and with a [ProcessError] for bores that aren't rebored.
func ChooseOversize(j *OversizeJob) (OversizeChoice, error) {
	if err := j.check(); err != nil {
		return OversizeChoice{}, err
	}
	c := OversizeChoice{Kits: slices.Clone(j.Kits), Kit: -1, Possible: -1}
	slices.SortStableFunc(c.Kits, func(a, b PistonKit) int { return a.Oversize.Compare(b.Oversize) })
	for i := range j.Bores {
		b, err := j.bore(i, c.Kits)
		if err != nil {
			return OversizeChoice{}, err
		}
		c.Bores = append(c.Bores, b)
	}
	for k := range c.Kits {
		worst := tolerance.Within
		for i := range c.Bores {
			worst = both(worst, c.Bores[i].Fits[k].Fits)
		}
		if worst != tolerance.Below && c.Possible < 0 {
			c.Possible = k
		}
		if worst == tolerance.Within {
			c.Kit = k
			break
		}
	}
	switch {
	case c.Possible < 0:
		c.Outcome = OversizeLiner
	case c.Kit == c.Possible:
		c.Outcome = OversizeKit
	}
	c.Forced = c.forced()
	c.Settle = c.settle()
	c.Options = j.options(&c)
	return c, nil
}

// both joins two verdicts of Within, Below and Undecided: one that fails
// fails, and one that is open leaves it open.
func both(a, b tolerance.Verdict) tolerance.Verdict {
	switch {
	case a == tolerance.Below || b == tolerance.Below:
		return tolerance.Below
	case a == tolerance.Undecided || b == tolerance.Undecided:
		return tolerance.Undecided
	}
	return tolerance.Within
}

// bore works out one bore at every kit's size.
func (j *OversizeJob) bore(i int, kits []PistonKit) (BoreChoice, error) {
	b := &j.Bores[i]
	c := BoreChoice{Where: b.Where, Sure: -1, Possible: -1, Fits: make([]KitFit, len(kits))}
	if c.Where == "" {
		c.Where = "bore " + strconv.Itoa(i+1)
	}
	var err error
	if c.Need, err = LeastSize(b, &j.Plan); err != nil {
		return c, err
	}
	for k := range kits {
		f := &c.Fits[k]
		f.Size, f.Proved = kits[k].size(i, len(j.Bores), j.Standard, j.Clearance)
		if err := j.fit(b, &c.Need, f); err != nil {
			return c, err
		}
		if f.Fits != tolerance.Below && c.Possible < 0 {
			c.Possible = k
		}
		if f.Fits == tolerance.Within && c.Sure < 0 {
			c.Sure = k
		}
	}
	return c, nil
}

// fit judges a size for a bore.
func (j *OversizeJob) fit(b *WornBore, need *BoreNeed, f *KitFit) error {
	f.Spare = f.Size.Sub(need.Size)
	f.CleansUp = tolerance.AtLeast(units.Length(0)).Judge(f.Spare)
	f.WallStands, f.Allowed = tolerance.Within, tolerance.Within
	if j.Plan.LargestBore != 0 {
		f.Allowed = below(tolerance.AtMost(j.Plan.LargestBore).Judge(f.Size))
	}
	if len(b.Sonic) > 0 {
		left, err := WallsLeft(b, need.Centre, f.Size)
		if err != nil {
			return err
		}
		f.WallRead = true
		for i, w := range left {
			lo, _ := bothOf(w.Left)
			if least, _ := bothOf(f.Wall); i == 0 || lo < least {
				f.Wall, f.WallAt = w.Left, w.Where
			}
			// Bored through, or to nothing, it fails whatever was asked.
			f.WallStands = both(f.WallStands, tolerance.AtLeast(max(j.Plan.LeastWall, units.Picometre)).Judge(w.Left))
		}
		if !need.CentreKnown && f.WallStands == tolerance.Within {
			f.WallStands = tolerance.Undecided // the bar's place isn't known
		}
	}
	f.Fits = both(f.CleansUp, both(f.WallStands, f.Allowed))
	return nil
}

// below makes any failure Below.
func below(v tolerance.Verdict) tolerance.Verdict {
	if v == tolerance.Above {
		return tolerance.Below
	}
	return v
}

// forced is the bore with the least to spare at the size of the choice.
func (c *OversizeChoice) forced() int {
	k := c.Kit
	if k < 0 {
		k = c.Possible
	}
	if k < 0 {
		k = len(c.Kits) - 1
	}
	worst, at := units.Length(0), 0
	for i := range c.Bores {
		spare, _ := bothOf(c.Bores[i].Fits[k].Spare)
		if i == 0 || spare < worst {
			worst, at = spare, i
		}
	}
	return at
}

// settle names what would tell the possible kit from the sure one.
func (c *OversizeChoice) settle() string {
	if c.Outcome == OversizeKit && !c.Bores[c.Forced].Fits[c.Kit].Proved {
		return "before boring, measure the pistons of " + c.Kits[c.Kit].Name + ": the size to finish to is theirs and their clearance, not the nominal step"
	}
	if c.Outcome != OversizeUndecided {
		return ""
	}
	var asked []string
	for i := range c.Bores {
		b := &c.Bores[i]
		f := &b.Fits[c.Possible]
		var what []string
		if f.CleansUp == tolerance.Undecided {
			switch {
			case b.Need.ByDiameters:
				what = append(what, "dial the worn side")
			case !f.Proved:
				what = append(what, "measure the pistons of "+c.Kits[c.Possible].Name)
			default:
				what = append(what, "measure pistons and walls more closely")
			}
		}
		if f.WallStands == tolerance.Undecided {
			what = append(what, "read its walls more closely, and dial where the bar stands")
		}
		if f.Allowed == tolerance.Undecided {
			what = append(what, "measure its piston more closely: the largest bore allowed lies within what is known")
		}
		if what != nil {
			asked = append(asked, b.Where+": "+strings.Join(what, ", and "))
		}
	}
	return strings.Join(asked, "; ")
}
