package calc

import (
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/picture"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func blades() Calculator {
	var names []string
	for _, s := range feeler.StandardSets() {
		names = append(names, s.Name())
	}
	return Calculator{
		Name: "blades", Title: "Blade verdict", Question: "What do these blades prove of a clearance?",
		Caution: "One blade that enters proves a least clearance, not a greatest. Never force a blade.",
		Fields: []Field{
			{"set", "Set of blades", "marks are looked up in it, never rounded", feeler.Imperial26().Name(), names},
			{"tried", "Blades tried", "a mark, and free, drag, forced or refused", ".002 in free, .0025 in drag, .003 in refused", nil},
			{"new", "Limits for new parts", "as printed", "0.03–0.07 mm", nil},
			{"wear", "Wear limit", "may be left empty", "", nil},
		},
		work: func(f *form) (Answer, error) {
			set := feeler.Set{}
			for _, s := range feeler.StandardSets() {
				if s.Name() == f.text("set") {
					set = s
				}
			}
			if set.Len() == 0 {
				f.refuse("set", fmt.Errorf("no set is called %.64q: %s", f.text("set"), strings.Join(names, ", ")))
			}
			tried := read(f, "tried", set.ParseTrials)
			spec := tolerance.Spec{New: maybe(f, "new", tolerance.ParseBand), Wear: maybe(f, "wear", tolerance.ParseBand)}
			if f.err != nil {
				return Answer{}, f.err
			}
			check := feeler.Check{Measure: "clearance", Spec: spec, Set: set}
			station := feeler.Station{Trials: tried}
			finding, err := check.Assess(station)
			if err != nil {
				return Answer{}, &fieldError{"tried", err}
			}
			a := Answer{Says: finding.Explain(), Picture: string(picture.Finding(&finding, units.InMillimetres, 3).Inline("blades-drawn"))}
			a.Lines = append(a.Lines, "The clearance lies in "+finding.Least.String()+".")
			if finding.Settle != "" {
				a.Lines = append(a.Lines, "To know more: "+finding.Settle)
			}
			if len(feeler.ForcedTrials(tried...)) > 0 {
				a.Lines = append(a.Lines, "A blade that went in by force counts as refused.")
			}
			return a, nil
		},
	}
}
