package calc

import (
	"errors"
	"fmt"

	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/picture"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

var errBelow = errors.New("must be above 0 mm and have an end below")

func oversize() Calculator {
	return Calculator{
		Name: "oversize", Title: "Oversize", Question: "Which oversize cleans up this bore?",
		Caution: "From diameters alone it isn't known which wall is worn. One size for the block: the worst bore decides. Plated, coated and bare alloy bores are not rebored without the maker's process.",
		Fields: []Field{
			{"finished", "Size last finished to", "standard, or the oversize it is at", "86.000 mm", nil},
			{"greatest", "Greatest diameter read", "with the gauge's error", "86.095 ±0.002 mm", nil},
			{"cut", "Least cut per side", "", "0.01 mm", nil},
			{"hone", "Left for honing", "on the diameter", "0.06 mm", nil},
			{"steps", "Pistons to be had", "", "metric steps", []string{"metric steps", "inch steps"}},
		},
		work: func(f *form) (Answer, error) {
			finished, greatest := f.size("finished"), f.bracket("greatest")
			cut, hone := f.length("cut"), f.length("hone")
			steps := cylinder.MetricSteps()
			switch f.text("steps") {
			case "metric steps":
			case "inch steps":
				steps = cylinder.InchSteps()
			default:
				f.refuse("steps", fmt.Errorf("%.64q is neither metric steps nor inch steps", f.text("steps")))
			}
			for _, field := range []string{"cut", "hone"} {
				if f.err == nil && f.length(field) < 0 {
					f.refuse(field, errors.New("must not be below 0 mm"))
				}
			}
			worn, end := greatest.Lower()
			if f.err == nil && (end == tolerance.Absent || worn < finished) {
				f.refuse("greatest", fmt.Errorf("%v is less than the size last finished to, %v", greatest, finished))
			}
			if most, end := greatest.Upper(); f.err == nil && (end == tolerance.Absent || most > finished+finished/20) {
				f.refuse("greatest", fmt.Errorf("%v is not near %v: is one of them in another unit?", greatest, finished))
			}
			if f.err != nil {
				return Answer{}, f.err
			}
			least, most := cylinder.LeastSizeByDiameters(tolerance.Exactly(finished), greatest, tolerance.Exactly(cut), tolerance.Exactly(hone))
			return choose(finished, least, most, steps), nil
		},
	}
}

// choose is the answer: the step that is sure to do, and the one that may.
func choose(finished units.Length, least, most tolerance.Bracket, steps []units.Length) Answer {
	lo, loEnd := least.Lower()
	hi, hiEnd := most.Upper()
	need, err := tolerance.NewInterval(lo, loEnd, hi, hiEnd)
	if err != nil {
		return Answer{Error: err.Error()}
	}
	var sure, may units.Length
	for _, s := range steps {
		size := finished + s
		if may == 0 && size >= lo {
			may = s
		}
		if sure == 0 && size >= hi {
			sure = s
		}
	}
	a := Answer{Lines: []string{"It needs a finished size in " + span(need) + ", as the wear lies on both walls alike or on one."}}
	limit := tolerance.Band{}
	switch {
	case may == 0:
		a.Says = "none of these steps cleans it up: think of a liner"
	case sure == may:
		a.Says = "+" + sure.String() + " cleans it up"
		limit = tolerance.AtMost(finished + sure)
	case sure == 0:
		a.Says = "can't tell, which is not a pass: +" + may.String() + " may do, and no step is sure to"
		limit = tolerance.AtMost(finished + may)
	default:
		a.Says = "can't tell, which is not a pass: +" + may.String() + " may do, +" + sure.String() + " is sure to"
		limit = tolerance.AtMost(finished + may)
	}
	if sure != may {
		a.Lines = append(a.Lines, "To know more: dial the worn side from an unworn part of the bore, so that it is known which wall is worn and by how much.")
	}
	finding, err := tolerance.Assess("finished size needed", "against the least step that may do", tolerance.Spec{New: limit}, need)
	if err == nil {
		a.Picture = string(picture.FindingNamed(&finding, units.InMillimetres, 3, picture.Names{Measured: "needed", New: "least step"}).Inline("oversize-drawn"))
	}
	return a
}

// span is a bracket to four places, outward.
func span(b tolerance.Bracket) string { return b.Text(units.InMillimetres, 4) }
