package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
	"github.com/tenthou/tenthou/valvetrain"
)

// working writes out one valve: from the blades to the bracket, the shim by the
// rule, which shims suit, and what the chosen one gives at both ends.
func (b bench) working(which string) (string, error) {
	which = strings.Join(strings.Fields(which), " ")
	var have []string
	for i := range b.head.Valves {
		if b.head.Valves[i].Where == which {
			return b.workingOf(i)
		}
		have = append(have, strconv.Quote(b.head.Valves[i].Where))
	}
	return "", fmt.Errorf("no valve is called %.64q: the file has %s", which, strings.Join(have, ", "))
}

func (b bench) workingOf(i int) (string, error) {
	v, m := b.head.Valves[i], b.plan.Moves[i]
	var out strings.Builder
	fmt.Fprintf(&out, "%s\n\n", v.Where)
	for _, t := range b.trials[i] {
		fmt.Fprintf(&out, "  %-8s  %v\n", t.Blade, t.Feel)
	}
	fmt.Fprintf(&out, "  so the clearance lies in %v; wanted %v: %s\n", v.Measured, v.Wanted, verdict(m.Now))
	lo, loEnd := v.Measured.Lower()
	hi, hiEnd := v.Measured.Upper()
	// A valve that took no blade may be held open: its middle means nothing.
	if v.Shim.IsZero() || loEnd == tolerance.Absent || lo == 0 || hiEnd == tolerance.Absent || m.Action == valvetrain.ShimStays {
		return out.String() + b.unsure(i), nil
	}
	old, _ := v.Shim.Middle()
	clearance, _ := v.Measured.Middle()
	wanted, _ := v.Wanted.Interval().Middle()
	out.WriteString("\nThe shim by the rule, from the middles:\n")
	ratio := v.Ratio
	if ratio == (tolerance.Ratio{}) {
		ratio = tolerance.Whole(1)
	}
	ideal := valvetrain.ShimForClearance(working.Given("old shim", "s", old), working.Given("measured clearance", "c", clearance), working.Given("wanted clearance", "w", wanted))
	if ratio != tolerance.Whole(1) {
		ideal = valvetrain.ShimThroughRocker(working.Given("old shim", "s", old), working.Given("measured clearance", "c", clearance), working.Given("wanted clearance", "w", wanted), ratio)
	}
	if err := solve(&out, ideal.Named("new shim", "n")); err != nil {
		return "", err
	}
	if w, ok := v.Window(); ok {
		fmt.Fprintf(&out, "\nWith the brackets, a shim suits that lies wholly in %v.\n", w)
	} else {
		out.WriteString("\nWith the brackets, no shim is sure to suit.\n")
	}
	if m.Action == valvetrain.ShimStaysOpen {
		return out.String() + b.unsure(i), nil
	}
	fmt.Fprintf(&out, "Chosen: %s, %s thick.\n", strings.TrimPrefix(m.Text(&b.head), m.Where+": "), mm(m.Shim))
	oldLo, _ := v.Shim.Lower()
	oldHi, _ := v.Shim.Upper()
	newLo, _ := m.Shim.Lower()
	newHi, _ := m.Shim.Upper()
	for _, end := range []struct {
		words    string
		c, s, n2 units.Length
	}{{"The least clearance then:", lo, oldLo, newHi}, {"The greatest, which isn't quite reached where a blade was refused:", hi, oldHi, newLo}} {
		fmt.Fprintf(&out, "\n%s\n", end.words)
		c, s, n := working.Given("measured clearance", "c", end.c), working.Given("old shim", "s", end.s), working.Given("new shim", "n", end.n2)
		after := valvetrain.ClearanceWithShim(c, s, n)
		if ratio != tolerance.Whole(1) {
			after = valvetrain.ClearanceThroughRocker(c, s, n, ratio)
		}
		if err := solve(&out, after.Named("new clearance", "c₂")); err != nil {
			return "", err
		}
	}
	fmt.Fprintf(&out, "\nThe whole of it is in %v.\n", v.Wanted)
	return out.String() + b.unsure(i), nil
}

func solve(out *strings.Builder, t working.Term) error {
	s, err := working.Solve(t, units.Style[units.Length]{Unit: units.InMillimetres, Places: 3})
	if err != nil {
		return err
	}
	out.WriteString(s.Text())
	return nil
}

// unsure is what stays open of a valve.
func (b bench) unsure(i int) string {
	for _, u := range b.plan.Undecided {
		if u.Valve == i {
			return "\n" + recipe.Wrap("Can't tell: "+u.Doubt.String()+"; "+u.Settle, width, "", "  ")
		}
	}
	return ""
}
