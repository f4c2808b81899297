package calc

import (
	"github.com/tenthou/tenthou/internal/picture"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

func ringGap() Calculator {
	return Calculator{
		Name: "ringgap", Title: "Ring gap elsewhere", Question: "What is a ring's end gap at another place of the bore?",
		Caution: "A gap that closes hot breaks the ring and the bore. Mind eyes and hands: ring ends are sharp.",
		Fields: []Field{
			{"gap", "End gap as measured", "one size, or a bracket of blades", "[0.254 mm, 0.2794 mm)", nil},
			{"there", "Bore where it was measured", "mean diameter", "86.012 ±0.002 mm", nil},
			{"here", "Bore at the other place", "mean diameter", "86.061 ±0.002 mm", nil},
			{"new", "Limits for the gap", "may be left empty", "0.20–0.40 mm", nil},
		},
		work: func(f *form) (Answer, error) {
			gap, there, here := f.bracket("gap"), f.bracket("there"), f.bracket("here")
			spec := tolerance.Spec{New: maybe(f, "new", tolerance.ParseBand)}
			if f.err != nil {
				return Answer{}, f.err
			}
			for field, b := range map[string]tolerance.Bracket{"gap": gap, "there": there, "here": here} {
				if lo, end := b.Lower(); end == tolerance.Absent || lo < 0 || field != "gap" && lo == 0 {
					return Answer{}, &fieldError{field, errBelow}
				}
			}
			other := piston.RingGapInBore(gap, there, here)
			finding, err := tolerance.Assess("end gap", "other place", spec, other)
			if err != nil {
				return Answer{}, &fieldError{"here", err}
			}
			a := Answer{Says: finding.Explain(), Picture: string(picture.Finding(&finding, units.InMillimetres, 3).Inline("ringgap-drawn"))}
			a.Lines = append(a.Lines, "There the gap lies in "+span(other)+".", "It changes by π for each unit of the bore's mean diameter: 3.14, not 3.")
			if lo, _ := other.Lower(); lo <= 0 {
				a.Lines = append(a.Lines, "The ends may meet there: don't run it.")
			}
			if finding.Settle != "" {
				a.Lines = append(a.Lines, "To know more: "+finding.Settle)
			}
			return a, nil
		},
	}
}
