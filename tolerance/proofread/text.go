package proofread

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/units"
)

// looks says of a printed figure what may have happened to it.
func (s SlipOf[Q]) looks() string {
	also := map[Kind]string{CutOff: ", and cut off besides", DigitWrong: ", and a digit wrong besides"}[s.Also]
	switch s.Kind {
	case CutOff:
		return "was cut off, not rounded"
	case RoundedUp:
		return "was rounded up, not to the nearest"
	case RoundedTwice:
		return "was rounded twice, by way of " + s.Via.String()
	case DecimalPlace:
		return "looks " + places(s.Shift) + " off" + also
	case WrongSign:
		return "has the wrong sign"
	case WrongUnit:
		return "looks like a figure in " + plural(s.Undone.Unit.Symbol())
	case UnitsExchanged:
		return "looks exchanged with the other, or one of them was converted the wrong way"
	case StepsMixed:
		return "looks as if hundredths or tenths of a millimetre were mixed up with thousandths of an inch"
	case FactorTwo:
		if s.Undone.Value < s.Printed.Value == (s.Printed.Value > 0) {
			return "looks twice what it should be"
		}
		return "looks half what it should be"
	case FactorPi:
		return "looks as if π was left out or taken twice"
	case FractionMisread:
		return "looks like " + s.Undone.String() + " misread"
	case TemperatureConverted:
		return "looks run through a temperature conversion"
	case DigitsTransposed:
		return "looks like " + s.Undone.String() + " with two digits exchanged" + also
	case DigitWrong:
		return "looks like " + s.Undone.String() + " with one digit wrong" + also
	case DigitAdded:
		return "looks like " + s.Undone.String() + " with a digit too many"
	case DigitLost:
		return "looks like " + s.Undone.String() + " with a digit lost"
	case TwoDigitsWrong:
		return "looks like " + s.Undone.String() + " with two digits wrong"
	}
	return "is a wrong number, or the other figure is"
}

// plural spells out the units that a manual's columns have.
func plural(symbol string) string {
	switch symbol {
	case "in":
		return "inches"
	case "mm":
		return "millimetres"
	}
	return symbol
}

// beside says the same of one of two figures of one unit, and what it would be.
func (s SlipOf[Q]) beside() string {
	text := s.Printed.String() + " " + s.looks()
	if s.Kind == DecimalPlace || s.Kind == WrongUnit {
		text += ": " + s.Correct.String()
	}
	return text
}

// places says a shift of the point in words.
func places(shift int) string {
	words := [...]string{"no decimal place", "a decimal place", "two decimal places", "three decimal places", "four decimal places"}
	n := max(shift, -shift)
	if n >= len(words) {
		return fmt.Sprintf("%d decimal places", n)
	}
	return words[n]
}

// String is the slip in a few words: 0.015 mm for 0.152 mm: decimal place.
func (s SlipOf[Q]) String() string {
	text := s.Printed.String()
	if s.Correct != (units.Written[Q]{}) {
		text += " for " + s.Correct.String()
	}
	text += ": " + s.Kind.String()
	if s.Also != NoSlip {
		text += " and " + s.Also.String()
	}
	return text
}

// String says what is amiss in a sentence that a mechanic reads, with every
// explanation that is as likely as the first:
//
//	0.006 in is 0.152 mm: the 0.015 mm printed beside it looks a decimal place off; or the 0.006 in should be 0.0006 in
func (r ResultOf[Q]) String() string {
	text := ""
	if r.Limit != Value && (r.Relation == SameSize || r.Relation == LiftNotSize) {
		text = r.Limit.String() + ": "
	}
	if !r.Flagged() {
		return text + r.agreed()
	}
	likeliest := r.Slips[0]
	text += r.sentence(likeliest)
	if likeliest.Kind == UnitsExchanged {
		return text
	}
	for _, s := range r.Slips[1:r.Tied()] {
		text += "; or the " + s.Printed.String() + " should be " + s.Correct.String()
		if s.Kind != likeliest.Kind {
			text += " (" + s.Kind.String() + ")"
		}
	}
	return text
}

func (r ResultOf[Q]) agreed() string {
	a, b := r.Pair.First.String(), r.Pair.Second.String()
	switch r.Relation {
	case SameSize:
		return a + " and " + b + " agree: " + r.Basis.String()
	case InOrder:
		return a + " to " + b + " are in order"
	case WithinWear:
		return a + " when new and " + b + " when worn go together"
	case InRatio:
		return b + " follows from " + a
	}
	return a + " can be a lift"
}

func (r ResultOf[Q]) sentence(s SlipOf[Q]) string {
	a, b := r.Pair.First.String(), r.Pair.Second.String()
	other := r.Pair.side(s.In.other()).String()
	switch r.Relation {
	case InOrder:
		text := fmt.Sprintf("the least, %s, and the greatest, %s, are a power of ten apart", a, b)
		if r.Pair.First.Value > r.Pair.Second.Value {
			text = fmt.Sprintf("the least, %s, is above the greatest, %s", a, b)
		}
		if s.Kind == LeastAboveGreatest {
			return text + ": exchanged, or one of them is wrong"
		}
		return text + ": the " + s.beside()
	case WithinWear:
		text := fmt.Sprintf("%s when new and %s when worn are far apart", a, b)
		if r.Limit == Greatest && r.Pair.First.Value > r.Pair.Second.Value || r.Limit == Least && r.Pair.First.Value < r.Pair.Second.Value {
			text = fmt.Sprintf("a new part of %s is past the wear limit of %s", a, b)
		}
		if s.Kind == NewPastWear {
			return text + ": one of the two is wrong"
		}
		return text + ": the " + s.beside()
	case InRatio:
		if s.In == First {
			return fmt.Sprintf("%s follows from %s: the %s printed for that %s", other, s.Correct, s.Printed, s.looks())
		}
		return fmt.Sprintf("from %s follows %s: the %s printed for that %s", other, s.Correct, s.Printed, s.looks())
	case LiftNotSize:
		return s.Printed.String() + " is too much for a lift: it looks like the height of the lobe"
	}
	if s.Kind == UnitsExchanged {
		return fmt.Sprintf("%s is not %s: each %s", a, b, s.looks())
	}
	return fmt.Sprintf("%s is %s: the %s printed beside it %s", other, s.Correct, s.Printed, s.looks())
}

// String is a line for each suspicion, or that there is none.
func (r ReportOf[Q]) String() string {
	var lines []string
	for _, x := range r.Suspicions() {
		lines = append(lines, x.String())
	}
	if len(lines) == 0 {
		return "nothing amiss"
	}
	return strings.Join(lines, "\n")
}

// Text writes a line for each suspected reading in unit u with so many places,
// rounded to nearest, or that there is none:
//
//	reading 3, 22.86 mm, is 0.50 mm off the 22.36 mm of its neighbours: one turn of a metric micrometer's thimble, 0.5 mm? Measure again
func (r ReadingsOf[Q]) Text(u units.Unit[Q], places int) string {
	number := func(q Q) string {
		text, _ := units.Append(nil, q, units.Style[Q]{Unit: u, Places: places})
		return string(text)
	}
	var lines []string
	for _, o := range r.Odd {
		value := o.Reading.Text(u, places)
		middle, _ := o.Reading.Middle()
		causes := make([]string, len(o.Causes))
		for i, c := range o.Causes {
			causes[i] = c.String()
		}
		lines = append(lines, fmt.Sprintf("reading %d, %s, is %s off the %s of its neighbours: %s? Measure again",
			o.Index+1, value, number(Q(apart(int64(middle), int64(r.Middle)))), number(r.Middle), strings.Join(causes, ", or ")))
	}
	switch {
	case len(lines) > 0:
		return strings.Join(lines, "\n")
	case r.Identical:
		return "every reading is the same: measured, or copied?"
	}
	return "nothing amiss"
}

// String is the Text in the first unit of the quantity, exactly.
func (r ReadingsOf[Q]) String() string { return r.Text(0, units.AllPlaces) }
