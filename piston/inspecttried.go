package piston

import (
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

// Tried are the blades that were tried at one place, and how each went in. In a
// document it is a text:
//
//	.002 in free, .0025 in drag, .003 in refused
//	.025 in + .003 in forced
//
// A blade is as thick as is written, unless the limits name the set that it is
// of.
type Tried []feeler.Trial

// mostTried is how many trials one place may have.
const mostTried = 64

// MarshalText writes what UnmarshalText reads.
func (t Tried) MarshalText() ([]byte, error) {
	var b strings.Builder
	for i, trial := range t {
		if i > 0 {
			b.WriteString(", ")
		}
		if trial.Blade == "" {
			b.WriteString(trial.Thickness.String() + " " + trial.Feel.String())
		} else {
			b.WriteString(trial.String())
		}
	}
	return []byte(b.String()), nil
}

// UnmarshalText reads trials with a comma and a space between them. An empty
// text is none.
func (t *Tried) UnmarshalText(text []byte) error {
	var tried Tried
	for part := range strings.SplitSeq(string(text), ", ") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		if len(tried) == mostTried {
			return &InputError{"trials", clip(text), "64 at the most"}
		}
		at := strings.LastIndexByte(part, ' ')
		feel, err := feeler.ParseFeel(part[at+1:])
		if err != nil && strings.HasSuffix(part, " "+feeler.Untried.String()) {
			at, feel, err = len(part)-len(feeler.Untried.String())-1, feeler.Untried, nil
		}
		if at < 0 || err != nil {
			return &InputError{"trial", clip([]byte(part)), `a blade and how it went in, as ".0025 in drag", with a comma and a space between trials`}
		}
		trial := feeler.Trial{Blade: part[:at], Feel: feel}
		for mark := range strings.SplitSeq(trial.Blade, " + ") {
			thickness, err := units.ParseLength(mark)
			if err != nil {
				return err
			}
			if thickness <= 0 || thickness > feeler.MaxThickness {
				return &InputError{"blade", clip([]byte(mark)), "above 0 mm and at most " + feeler.MaxThickness.String()}
			}
			trial.Thickness += thickness
		}
		tried = append(tried, trial)
	}
	*t = tried
	return nil
}

// bracket is what the trials say of the gap, their blades being as thick as in
// the set, where there is one; ok is false where there are none.
func (t Tried) bracket(set *feeler.Set) (gap tolerance.Bracket, ok bool, err error) {
	if len(t) == 0 {
		return gap, false, nil
	}
	if set.Len() == 0 {
		gap, err = feeler.Bracket(t...)
		return gap, err == nil, err
	}
	var room [8]feeler.Trial // most places have fewer
	trials := append(room[:0], t...)
	for i := range trials {
		if err := thickness(&trials[i], set); err != nil {
			return gap, false, err
		}
	}
	gap, err = feeler.BracketWithErrors(trials...)
	return gap, err == nil, err
}

// thickness gives a trial the thickness that its blade has in a set.
func thickness(t *feeler.Trial, set *feeler.Set) error {
	switch {
	case t.Blade == "":
	case strings.Contains(t.Blade, " + "):
		stack, err := set.Trial(t.Feel, strings.Split(t.Blade, " + ")...)
		if err != nil {
			return err
		}
		*t = stack
	default:
		blade, err := set.FindLength(t.Thickness)
		if err != nil {
			return err
		}
		t.Thickness, t.Error = blade.Thickness(), blade.Error
	}
	return nil
}
