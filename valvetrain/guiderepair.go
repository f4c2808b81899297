package valvetrain

import (
	"fmt"
	"slices"

	"github.com/tenthou/tenthou/internal/words"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// GuideRepair is a way to bring a stem and its guide back to their clearance.
// The zero value keeps both as they are.
type GuideRepair uint8

// The ways, the least work first.
const (
	// KeepGuide keeps guide and stem.
	KeepGuide GuideRepair = iota
	// NewStem puts in a valve with a stem of standard size, and leaves the guide.
	NewStem
	// OversizeStem reams the guide for a valve with a larger stem.
	OversizeStem
	// GuideLiner reams the guide for a thin liner and finishes the liner to a stem
	// of standard size.
	GuideLiner
	// NewGuide drives in another guide and reams it.
	NewGuide
)

var guideRepairNames = []string{"keep", "new stem", "oversize stem", "guide liner", "new guide"}

// String is the way in words.
func (r GuideRepair) String() string { return words.Of(guideRepairNames, r) }

// MarshalText writes what String gives.
func (r GuideRepair) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what String gives, or fails with an [InputError].
func (r *GuideRepair) UnmarshalText(text []byte) error {
	return inputWord("way to repair a guide", guideRepairNames, text, r)
}

// A GuideOption is one way that the stock on the shelf allows.
type GuideOption struct {
	Name   string            // "+0.10 mm stem", "bronze liner"
	Way    GuideRepair       // what is done
	Stem   tolerance.Bracket // that will run in it; zero to keep the stem that is there
	Opened tolerance.Bracket // what the worn guide is reamed to, for an oversize stem or a liner
	// Finished is the bore that the stem then runs in, of a liner or a new guide
	// once it is in; an oversize stem's is Opened.
	Finished tolerance.Bracket
}

// A GuideNeed is a worn guide that is to have its clearance again.
type GuideNeed struct {
	Where     string              // "exhaust 3"
	Bores     []tolerance.Bracket // of the guide, at all stations and ways
	Stem      tolerance.Bracket   // that is there, over its worn length
	Clearance tolerance.Band      // wanted
	LeastCut  units.Length        // that a reamer must take everywhere, on the diameter
	Outside   units.Length        // of the guide; 0 where its wall isn't asked
	LeastWall units.Length        // that a reamed guide must keep, per side; 0 where not asked
}

// A GuideTrial is what one option would give.
type GuideTrial struct {
	Option    GuideOption       `json:"option"`    // the option tried
	Cleans    tolerance.Verdict `json:"cleans"`    // Within where the reamer cuts all over; so too where none is needed
	Wall      tolerance.Verdict `json:"wall"`      // Within where enough of the guide is left, or none was asked
	Clearance tolerance.Bracket `json:"clearance"` // that it would give
	Fits      tolerance.Verdict `json:"fits"`      // the clearance against what is wanted
	Why       string            `json:"why"`       // what stands in its way; empty where nothing does
}

// A GuideChoice is the way chosen for a guide.
type GuideChoice struct {
	Chosen int          `json:"chosen"` // its place in Trials; −1 where none serves
	Trials []GuideTrial `json:"trials"` // every option, in the order given
	Next   string       `json:"next"`   // what to do
}

// ChooseGuideRepair finds, of the options in stock, the one with the least work
// (as [GuideRepair] orders them), and of equal work the one that opens the guide
// least, whose clearance is in the wanted band for certain: the whole bracket
// must lie in it, and a reamer must clean the guide up over its whole length,
// greatest bore and least cut together. What only may fit isn't chosen, and its
// Why says what to measure.
//
// Guides are renewed or reamed before seats are cut: the seat is cut from the
// guide. Dust of guides and seats of beryllium alloy harms the lungs for life:
// find out what they are made of first. It fails with an [InputError] where a
// size can't be.
func ChooseGuideRepair(need GuideNeed, options []GuideOption) (GuideChoice, error) {
	if err := need.check(); err != nil {
		return GuideChoice{}, err
	}
	choice := GuideChoice{Chosen: -1}
	opens := func(i int) units.Length {
		_, hi := inputEnds(choice.Trials[i].Option.Opened)
		return hi
	}
	for i, o := range options {
		if err := o.check(i); err != nil {
			return GuideChoice{}, err
		}
		t := need.try(o)
		choice.Trials = append(choice.Trials, t)
		if t.Why != "" {
			continue
		}
		c := choice.Chosen
		if c < 0 || o.Way < options[c].Way || o.Way == options[c].Way && opens(i) < opens(c) {
			choice.Chosen = i
		}
	}
	switch {
	case choice.Chosen >= 0 && options[choice.Chosen].Way == KeepGuide:
		choice.Next = "nothing: the clearance is in the band as it is"
	case choice.Chosen >= 0:
		choice.Next = inputText(options[choice.Chosen].Name) + "; measure the finished bore again, then cut the seat from it"
	case slices.ContainsFunc(choice.Trials, func(t GuideTrial) bool {
		return t.Cleans != tolerance.Below && t.Wall != tolerance.Below && t.Fits == tolerance.Undecided
	}):
		choice.Next = "none serves for certain: measure the stems and finished bores of those that may"
	default:
		choice.Next = "none in stock serves: the engine maker's manual says whether a larger stem or another guide can be had"
	}
	return choice, nil
}

// try works one option out.
func (n GuideNeed) try(o GuideOption) GuideTrial {
	t := GuideTrial{Option: o, Cleans: tolerance.Within, Wall: tolerance.Within}
	least, greatest := tolerance.Extremes(n.Bores...)
	stem := o.Stem
	if stem.IsZero() {
		stem = n.Stem
	}
	reamed := o.Way == OversizeStem || o.Way == GuideLiner
	if reamed {
		cut := o.Opened.Sub(greatest)
		t.Cleans = tolerance.AtLeast(n.LeastCut).Judge(cut)
		if n.Outside > 0 && n.LeastWall > 0 {
			wall := tolerance.Exactly(n.Outside).Sub(o.Opened).Scale(1, 2)
			t.Wall = tolerance.AtLeast(n.LeastWall).Judge(wall)
		}
	}
	switch o.Way {
	case OversizeStem:
		t.Clearance = GuideClearance(o.Opened, stem)
		t.Fits = n.Clearance.Judge(t.Clearance)
	case GuideLiner, NewGuide:
		t.Clearance = GuideClearance(o.Finished, stem)
		t.Fits = n.Clearance.Judge(t.Clearance)
	default:
		// From the tightest place to the loosest: both must be in the band.
		tight, loose := GuideClearance(least, stem), GuideClearance(greatest, stem)
		lo, loEnd := tight.Lower()
		hi, hiEnd := loose.Upper()
		t.Clearance, _ = tolerance.NewInterval(lo, loEnd, hi, hiEnd)
		t.Fits = guideWorst(n.Clearance.Judge(tight), n.Clearance.Judge(loose))
	}
	switch {
	case t.Cleans == tolerance.Below:
		t.Why = "the reamer doesn't clean up the worn guide"
	case t.Cleans == tolerance.Undecided:
		t.Why = "whether the reamer cleans up the guide isn't told by the readings: measure the widest place and the reamer's cut again"
	case t.Wall == tolerance.Below:
		t.Why = "too little of the guide's wall would be left"
	case t.Wall == tolerance.Undecided:
		t.Why = "whether enough of the guide's wall is left isn't told by the readings"
	case t.Fits == tolerance.Undecided:
		t.Why = "whether the clearance is in the band isn't told: measure this stem and the finished bore"
	case t.Fits != tolerance.Within:
		t.Why = "the clearance would be " + t.Fits.String() + " the band"
	}
	return t
}

// guideWorst is the verdict of two places together: failed where either is.
func guideWorst(a, b tolerance.Verdict) tolerance.Verdict {
	switch {
	case a == tolerance.Above || b == tolerance.Above:
		return tolerance.Above
	case a == tolerance.Below || b == tolerance.Below:
		return tolerance.Below
	case a == tolerance.Undecided || b == tolerance.Undecided:
		return tolerance.Undecided
	}
	return tolerance.Within
}

func (n GuideNeed) check() error {
	if len(n.Bores) == 0 {
		return &InputError{"guide bores", "none", "one or more"}
	}
	for _, b := range n.Bores {
		if err := inputBracket("guide bore", b, units.Picometre); err != nil {
			return err
		}
	}
	if err := inputBracket("stem diameter", n.Stem, units.Picometre); err != nil {
		return err
	}
	if n.Clearance.IsZero() || !n.Clearance.InRange() {
		return &InputError{"wanted clearance", n.Clearance.String(), "a band with a limit"}
	}
	for _, a := range []struct {
		field string
		l     units.Length
	}{{"least cut", n.LeastCut}, {"outside of the guide", n.Outside}, {"least wall", n.LeastWall}} {
		if err := inputAllowance(a.field, a.l); err != nil {
			return err
		}
	}
	return nil
}

func (o GuideOption) check(i int) error {
	name := inputText(o.Name)
	if name == "" {
		name = fmt.Sprint("option ", i+1)
	}
	if int(o.Way) >= len(guideRepairNames) {
		return &InputError{name + ", way", fmt.Sprint(uint8(o.Way)), "one of those of GuideRepair"}
	}
	need := func(what string, b tolerance.Bracket, wanted bool) error {
		switch {
		case wanted:
			return inputBracket(name+", "+what, b, units.Picometre)
		case !b.IsZero():
			return &InputError{name + ", " + what, b.String(), "left out: " + o.Way.String() + " has none"}
		}
		return nil
	}
	if err := need("opened bore", o.Opened, o.Way == OversizeStem || o.Way == GuideLiner); err != nil {
		return err
	}
	if err := need("finished bore", o.Finished, o.Way == GuideLiner || o.Way == NewGuide); err != nil {
		return err
	}
	if !o.Stem.IsZero() || o.Way == NewStem || o.Way == OversizeStem {
		if err := inputBracket(name+", stem", o.Stem, units.Picometre); err != nil {
			return err
		}
	}
	if o.Way == KeepGuide && !o.Stem.IsZero() {
		return &InputError{name + ", stem", o.Stem.String(), "left out: to keep a guide keeps its stem"}
	}
	return nil
}
