package uncertainty_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/units"
)

func TestBudget(t *testing.T) {
	a := must(uncertainty.Normal("a", 10*mm, 3*um, 8))
	b := must(uncertainty.Rectangular("b", 0, 1*um))
	e := a.Add(b.Scale(4, 1))
	also := must(uncertainty.NewDual("c", 1, "K", uncertainty.NormalShape, 0.5)).Sources()
	budget := must(e.Budget(units.InMicrometres, append(also, a.Sources()[0], nil)...))
	want := uncertainty.Budget{Unit: "µm", Value: 10_000, Standard: budget.Standard, Freedom: budget.Freedom, Lines: []uncertainty.Line{
		{Source: "a", Unit: "µm", Standard: 3, Freedom: 8, Sensitivity: 1, Contribution: 3, Share: budget.Lines[0].Share},
		{Source: "b", Unit: "µm", Shape: uncertainty.RectangularShape, Standard: budget.Lines[1].Standard, Freedom: uncertainty.Infinite(), Sensitivity: 4,
			Contribution: budget.Lines[1].Contribution, Share: budget.Lines[1].Share},
		{Source: "c", Unit: "K", Standard: 0.5, Freedom: uncertainty.Infinite()},
	}}
	require.Empty(t, cmp.Diff(want, budget))
	// √(3² + 4²/3) = 3.78594; 4/√3 = 2.30940; shares 0.62791 and 0.37209; 8/(27/43)² = 20.2908: by hand.
	require.InDelta(t, 3.78594, budget.Standard, 5e-6)
	require.InDelta(t, 2.30940, budget.Lines[1].Contribution, 5e-6)
	require.InDelta(t, 0.62791, budget.Lines[0].Share, 5e-6)
	require.InDelta(t, 0.37209, budget.Lines[1].Share, 5e-6)
	require.InDelta(t, 20.2908, float64(budget.Freedom), 5e-5)
	var back uncertainty.Budget
	require.NoError(t, json.Unmarshal(must(json.Marshal(budget)), &back))
	require.Equal(t, budget, back)

	require.Equal(t, ""+
		"source    spread       standard uncertainty  sensitivity  contribution  degrees of freedom    share\n"+
		"a         normal                    3.00 µm         1.00       3.00 µm                   8   62.8 %\n"+
		"b         rectangular              0.577 µm         4.00       2.31 µm                   ∞   37.2 %\n"+
		"c         normal                    0.500 K       0 µm/K          0 µm                   ∞    0.0 %\n"+
		"combined                                                       3.79 µm                20.3  100.0 %\n", budget.String())
	require.Equal(t, ""+
		"| source | spread | standard uncertainty | sensitivity | contribution | degrees of freedom | share |\n"+
		"| --- | --- | ---: | ---: | ---: | ---: | ---: |\n"+
		"| a | normal | 3.00 µm | 1.00 | 3.00 µm | 8 | 62.8 % |\n"+
		"| b | rectangular | 0.577 µm | 4.00 | 2.31 µm | ∞ | 37.2 % |\n"+
		"| c | normal | 0.500 K | 0 µm/K | 0 µm | ∞ | 0.0 % |\n"+
		"| combined |  |  |  | 3.79 µm | 20.3 | 100.0 % |\n", budget.Markdown())
	require.Equal(t, "a", must(budget.Greatest()).Source)
	require.Equal(t, "b", must(must(b.Scale(4, 1).Sub(a.Scale(1, 9)).Budget(units.InMillimetres)).Greatest()).Source)
}

// A plain number that says it is in millimetres is one, beside a length.
func TestBudget_units(t *testing.T) {
	d := must(uncertainty.NewDual("model", 3, "mm", uncertainty.NormalShape, 0.002))
	e := must(uncertainty.FromReal(d, units.InMillimetres)).Add(must(uncertainty.Normal("gauge", 0, 2*um)))
	for _, l := range must(e.Budget(units.InMicrometres)).Lines {
		require.Equal(t, "µm", l.Unit)
		relative(t, 2, l.Standard, 1e-14)
		relative(t, 1, l.Sensitivity, 1e-14)
		relative(t, 2, l.Contribution, 1e-14)
	}
	relative(t, 1, e.Sensitivity(d.Sources()[0]), 1e-14)
}

func TestBudget_refuses(t *testing.T) {
	e := must(uncertainty.Normal("a", 10*mm, 3*um, 0.5))
	_, err := uncertainty.Exactly(mm).Budget(units.InMillimetres)
	refused(t, err, uncertainty.ErrEmpty)
	_, err = e.Scale(1, 0).Budget(units.InMillimetres)
	refused(t, err, uncertainty.ErrRange)
	_, err = uncertainty.ExactlyReal(1).Budget("N")
	refused(t, err, uncertainty.ErrEmpty)
	_, err = uncertainty.ExactlyReal(1).Quo(uncertainty.ExactlyReal(0)).Budget("N")
	refused(t, err, uncertainty.ErrRange)
	_, _, err = must(e.Budget(units.InMillimetres)).Expanded(0.95)
	refused(t, err, uncertainty.ErrFreedom)
	_, err = uncertainty.Budget{}.Greatest()
	refused(t, err, uncertainty.ErrEmpty)
	require.NotEmpty(t, uncertainty.Budget{}.Text(), "an empty one prints as such")
	// A source of zero uncertainty has no share.
	b := must(must(uncertainty.Normal("nothing", mm, 0)).Budget(units.InMillimetres))
	require.Equal(t, uncertainty.Line{Source: "nothing", Unit: "mm", Freedom: uncertainty.Infinite(), Sensitivity: 1}, b.Lines[0])
}

// Names are anyone's: they can't break a table.
func TestBudget_names(t *testing.T) {
	d := must(uncertainty.NewDual("line\nbreak | *bold* `code` [link] <b> a_b \\ \u2028", 1, "", uncertainty.NormalShape, 0.25)).
		Add(must(uncertainty.NewDual("", 2, "m/s", uncertainty.NormalShape, 1e-9))).
		Add(must(uncertainty.NewDual("huge", 0, "", uncertainty.UShape, 0)).Mul(uncertainty.ExactlyReal(1.5e7)))
	b := must(d.Budget("kg"))
	require.Equal(t, 5, strings.Count(b.Text(), "\n"))
	require.Contains(t, b.Text(), "(unnamed)")
	require.Contains(t, b.Text(), "1.00·10⁻⁹ m/s")
	require.Contains(t, b.Text(), "1.00 kg/(m/s)")
	require.Contains(t, b.Text(), "1.50·10⁷ kg")
	markdown := b.Markdown()
	require.Equal(t, 6, strings.Count(markdown, "\n"))
	for line := range strings.SplitSeq(strings.TrimSpace(markdown), "\n") {
		require.Equal(t, 8, strings.Count(line, "|")-strings.Count(line, `\|`), line)
	}
	require.Contains(t, markdown, `line break \| \*bold\* \`+"`code\\`"+` \[link] &lt;b> a\_b \\`)
	plain := must(must(uncertainty.NewDual("x", 2, "m", uncertainty.NormalShape, 1)).Budget(""))
	require.Contains(t, plain.Text(), "1.00 1/m")
}
