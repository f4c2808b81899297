package calc

import (
	"errors"
	"fmt"
	"strings"

	"github.com/tenthou/tenthou/internal/picture"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

func shim() Calculator {
	return Calculator{
		Name: "shim", Title: "Valve shim", Question: "Which shim puts this valve's clearance right?",
		Caution: "A shim is chosen only where the whole bracket lands in band. Measure cold or hot as the manual says, and the shim itself: marks wear off. Turn the engine by hand with the plugs out.",
		Fields: []Field{
			{"measured", "Clearance as measured", "a bracket of blades, or one size", "[0.33 mm, 0.35 mm)", nil},
			{"wanted", "Clearance wanted", "as printed", "0.20–0.30 mm", nil},
			{"old", "Shim in there now", "by micrometer", "2.55 ±0.002 mm", nil},
			{"from", "Thinnest shim to be had", "", "2.00 mm", nil},
			{"to", "Thickest shim to be had", "", "3.00 mm", nil},
			{"step", "Step between them", "", "0.05 mm", nil},
			{"error", "Shims to be had are within ±", "", "0.005 mm", nil},
		},
		work: func(f *form) (Answer, error) {
			measured, old := f.bracket("measured"), f.bracket("old")
			wanted := read(f, "wanted", tolerance.ParseBand)
			from, to, step, off := f.size("from"), f.size("to"), f.size("step"), f.length("error")
			if lo, end := measured.Lower(); f.err == nil && (end == tolerance.Absent || lo < 0) {
				f.refuse("measured", errors.New("must not be below 0 mm"))
			}
			if f.err != nil {
				return Answer{}, f.err
			}
			series, err := valvetrain.NewShimSeries(from, to, step, off)
			if err != nil {
				return Answer{}, &fieldError{"step", err}
			}
			head := valvetrain.ShimHead{Series: series, Valves: []valvetrain.ShimValve{{Where: "this valve", Measured: measured, Shim: old, Wanted: wanted}}}
			plan, err := valvetrain.PlanShims(head)
			if err != nil {
				return Answer{}, &fieldError{refusedBy(err), err}
			}
			return shimAnswer(head, plan)
		},
	}
}

// refusedBy is the field that a plan's error is about.
func refusedBy(err error) string {
	in := (*valvetrain.InputError)(nil)
	if !errors.As(err, &in) {
		return "measured"
	}
	for _, word := range []struct{ in, field string }{{"shim", "old"}, {"wanted", "wanted"}, {"band", "wanted"}} {
		if strings.Contains(in.Field, word.in) {
			return word.field
		}
	}
	return "measured"
}

func shimAnswer(head valvetrain.ShimHead, plan valvetrain.ShimPlan) (Answer, error) {
	move, valve := plan.Moves[0], head.Valves[0]
	finding, err := tolerance.Assess("valve clearance", "with that shim", tolerance.Spec{New: valve.Wanted}, move.After)
	if err != nil {
		return Answer{}, &fieldError{"measured", err}
	}
	a := Answer{Picture: string(picture.FindingNamed(&finding, units.InMillimetres, 3, picture.Names{Measured: "then", New: "wanted"}).Inline("shim-drawn"))}
	switch {
	case move.Then != tolerance.Within:
		a.Says = "can't tell, which is not a pass: no shim is sure to bring it into the band"
	case plan.Bought == 0:
		a.Says = "in band as it is: leave the shim"
	default:
		a.Says = "fit " + head.Series[move.From].Name
	}
	for _, u := range plan.Undecided {
		a.Lines = append(a.Lines, "To know more: "+u.Settle)
	}
	a.Lines = append(a.Lines, fmt.Sprintf("The clearance is in %s now and would be in %s then.", span(valve.Measured), span(move.After)))
	ideal := valve.Ideal()
	a.Lines = append(a.Lines, "For the middle of the band the shim would have to be in "+span(ideal)+".")
	return a, nil
}
