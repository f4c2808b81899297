package feeler

import (
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/units"
)

// MaxStackThickness is the greatest thickness of a trial: eight blades laid
// together.
const MaxStackThickness = MaxStack * MaxThickness

// A Trial is one blade, or blades laid together, tried at one place, and how
// it went in. Thickness and Feel are enough; a mark without the thickness is
// not, and [Set.Trial] and [Set.ParseTrials] fill in both. The zero Trial bounds
// nothing. Trials compare with ==.
type Trial struct {
	Blade     string       `json:"blade,omitempty"` // its mark, for the record and for messages
	Thickness units.Length `json:"thickness"`       // together, where several are laid together
	Error     units.Length `json:"error,omitzero"`  // the thickness lies within ± this
	Feel      Feel         `json:"feel"`
}

// name is how messages call what was tried.
func (t Trial) name() string {
	if t.Blade != "" {
		return clipText(t.Blade)
	}
	return lengthText(t.Thickness)
}

// String is the trial in words: ".003 in refused".
func (t Trial) String() string { return t.name() + " " + t.Feel.String() }

// TrialAt is the trial of blade i of the set. It costs no look-up and no
// memory. Where there is no such blade, its thickness is 0, which [Bracket]
// refuses.
func (s Set) TrialAt(i int, feel Feel) Trial {
	if s.d == nil || uint(i) >= uint(len(s.d.trials)) {
		return Trial{Feel: feel}
	}
	t := &s.d.trials[i]
	return Trial{Blade: t.Blade, Thickness: t.Thickness, Error: t.Error, Feel: feel}
}

// Trial is the trial of the blade that carries a mark or, where several marks
// are given, of those blades laid together: their thicknesses and their errors
// are summed. The errors are [MarkError]s and [StackError]s.
func (s Set) Trial(feel Feel, marks ...string) (Trial, error) {
	if len(marks) == 1 {
		i, err := s.Index(marks[0])
		if err != nil {
			return Trial{}, err
		}
		return s.TrialAt(i, feel), nil
	}
	stack, err := s.Together(marks...)
	if err != nil {
		return Trial{}, err
	}
	return stack.Trial(feel), nil
}

// The forms that errors offer.
const (
	trialsForm = `write them as ".002 in free, .0025 in drag, .003 in refused" (or forced, or not tried), blades laid together as ".002 in + .0015 in refused"`
	trialsMark = `write a comma and a space between trials`
)

// ParseTrials reads the trials of one station, with a comma and a space, a
// semicolon or a new line between them:
//
//	.002 in free, .0025 in drag, .003 in refused
//	.025 in + .003 in forced
//
// Each is the mark of a blade of the set, or several with " + " between them
// where they were laid together, and how it went in (see [ParseFeel]). The
// errors are [InputError]s; the mark that the set lacks is their cause.
func (s Set) ParseTrials(text string) ([]Trial, error) {
	if len(text) > setTextMax || !utf8.ValidString(text) {
		return nil, inputError("trials", "", text, ErrSize, "at most 64 KiB of UTF-8", nil)
	}
	var trials []Trial
	line := 0
	for row := range strings.Lines(text) {
		line++
		row = strings.TrimSuffix(strings.TrimSpace(row), ",")
		for part := range strings.SplitSeq(strings.ReplaceAll(row, ", ", ";"), ";") {
			if part = strings.TrimSpace(part); part == "" {
				continue
			}
			t, err := s.parseTrial(part)
			if err != nil {
				err.Line = line
				return nil, err
			}
			trials = append(trials, t)
		}
	}
	return trials, nil
}

func (s Set) parseTrial(text string) (Trial, *InputError) {
	for i, name := range feelNames {
		marks, ok := strings.CutSuffix(text, " "+name)
		if !ok {
			continue
		}
		if holdsFeel(marks) {
			return Trial{}, inputError("trials", "", text, ErrSyntax, trialsMark, nil)
		}
		parts := strings.Split(marks, " + ")
		t, err := s.Trial(Feel(i), parts...)
		if err != nil {
			return Trial{}, inputError("trials", "blade", marks, nil, "", err)
		}
		return t, nil
	}
	return Trial{}, inputError("trials", "", text, ErrSyntax, trialsForm, nil)
}

// holdsFeel reports whether a text that should be marks alone has the end of
// another trial in it.
func holdsFeel(marks string) bool {
	for _, name := range feelNames {
		if strings.Contains(marks, " "+name+" ") || strings.Contains(marks, " "+name+",") {
			return true
		}
	}
	return false
}
