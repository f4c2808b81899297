package feeler

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// candidate is a blade or a stack to try.
type candidate struct {
	name         string
	thickness, e units.Length
}

// advise says what would settle, at one station, on which side of a limit the
// gap lies.
func (c Check) advise(r Reading, s side) (string, error) {
	tries := c.blades(r, s)
	if len(tries) == 0 {
		var err error
		if tries, err = c.stacks(r, s); err != nil {
			return "", err
		}
	}
	if len(tries) == 0 {
		return c.lastResort(r, s), nil
	}
	var text strings.Builder
	for i, t := range tries {
		how, both := outcome(r.Bracket, s, t)
		if both {
			return "try " + t.name + how, nil
		}
		if i > 0 {
			text.WriteString(", then ")
		} else {
			text.WriteString("try ")
		}
		text.WriteString(t.name + how)
	}
	return text.String(), nil
}

// blades are the two blades inside a bracket that are next to a limit.
func (c Check) blades(r Reading, s side) []candidate {
	below, above := -1, -1
	for i, b := range r.Inside {
		if b.Thickness() <= s.limit {
			below = i
		} else if above < 0 {
			above = i
		}
	}
	var tries []candidate
	for _, i := range []int{below, above} {
		if i >= 0 {
			b := r.Inside[i]
			tries = append(tries, candidate{b.MarkText(), b.Thickness(), c.error(b.Error)})
		}
	}
	return tries
}

// stacks are the two stacks inside a bracket that are next to a limit.
func (c Check) stacks(r Reading, s side) ([]candidate, error) {
	if c.Set.Len() == 0 {
		return nil, nil
	}
	var tries []candidate
	for _, f := range []fit{atMost, atLeast} {
		st, err := c.Set.closest(s.limit, c.most(), f)
		if err != nil {
			return nil, err
		}
		if e := c.error(st.WorstError()); st.n > 0 && narrows(r.Bracket, st.Total, e) {
			tries = append(tries, candidate{st.MarkText() + " together", st.Total, e})
		}
	}
	return tries, nil
}

func (c Check) most() int {
	if c.Most == 0 {
		return usualStack
	}
	return c.Most
}

func (c Check) error(e units.Length) units.Length {
	if c.Errors {
		return e
	}
	return 0
}

// outcome says which answer of a trial settles a limit, and whether either
// does.
func outcome(b tolerance.Bracket, s side, t candidate) (how string, both bool) {
	lo, loEnd := b.Lower()
	hi, hiEnd := b.Upper()
	refused, _ := tolerance.NewInterval(lo, loEnd, t.thickness+t.e, tolerance.Open)
	entered, _ := tolerance.NewInterval(t.thickness-t.e, tolerance.Closed, hi, hiEnd)
	out := s.band.Judge(refused) != tolerance.Undecided
	in := s.band.Judge(entered) != tolerance.Undecided
	switch {
	case in && out:
		return " (settled either way)", true
	case in:
		return " (settled if it goes in)", false
	case out:
		return " (settled if it does not go in)", false
	}
	return " (to narrow it)", false
}

// lastResort says what would settle a limit that no blade and no stack of the
// set can.
func (c Check) lastResort(r Reading, s side) string {
	text := "measure the parts by micrometer"
	blade := candidate{name: "a blade of " + lengthText(s.limit), thickness: s.limit}
	if s.limit > 0 && s.limit <= MaxThickness && narrows(r.Bracket, s.limit, 0) {
		how, both := outcome(r.Bracket, s, blade)
		if !both {
			hi, hiEnd := r.Bracket.Upper()
			left, _ := tolerance.NewInterval(s.limit, tolerance.Closed, hi, hiEnd)
			how = strings.TrimSuffix(how, ")") + "; if it does, " + left.String() + " stays open)"
		}
		text = "try " + blade.name + how + " or " + text
	}
	return text + ": no blade and no stack" + c.howMany(r) + " of " + c.Set.title() + " narrows " + r.Bracket.String()
}

// howMany limits what is said of stacks to those that were looked at. Where the
// two thinnest blades together are too thick, none of any number does.
func (c Check) howMany(r Reading) string {
	hi, hiEnd := r.Bracket.Upper()
	if d := c.Set.data(); len(d.thick) < 2 || hiEnd != tolerance.Absent && d.thick[0]+d.thick[1] >= hi {
		return ""
	}
	return " of up to " + strconv.Itoa(c.most()) + " blades"
}
