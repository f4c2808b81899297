package feeler_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func length(t testing.TB, s string) units.Length {
	t.Helper()
	l, err := units.Parse[units.Length](s)
	require.NoError(t, err)
	return l
}

// setOf makes a set of "0.03 0.04 mm".
func setOf(t testing.TB, sizes, unit string) feeler.Set {
	t.Helper()
	var blades []feeler.Blade
	for s := range strings.FieldsSeq(sizes) {
		b, err := feeler.NewBlade(s + " " + unit)
		require.NoError(t, err)
		blades = append(blades, b)
	}
	set, err := feeler.NewSet("", "", blades...)
	require.NoError(t, err)
	return set
}

func TestPublishedBrackets(t *testing.T) {
	vectors.Load(t, "published/feeler_brackets.txt").Each(t, func(t *testing.T, c vectors.Case) {
		b, err := feeler.Bracket(
			feeler.Trial{Thickness: length(t, c.Text("enters")), Feel: feeler.Drag},
			feeler.Trial{Thickness: length(t, c.Text("refused")), Feel: feeler.Refused},
		)
		require.NoError(t, err)
		want, err := tolerance.HalfOpen(length(t, c.Text("least")), length(t, c.Text("most")))
		require.NoError(t, err)
		require.Equal(t, want, b)
	})
}

// The inch sets are the remembered pairs, in order, and those computed beyond.
func TestImperialPairs(t *testing.T) {
	set := feeler.Imperial32()
	remembered, all := 0, 0
	for c := range vectors.Load(t, "practice/bladepairs.txt").All(t) {
		c.Ignore("mm3_away")
		inch, mark := length(t, c.Text("inch")), length(t, c.Text("mm3_even")+" mm")
		b, err := set.FindLength(inch)
		if c.Is("marked", "yes") {
			remembered++
			require.NoError(t, err, c.Where())
		}
		exact := length(t, c.Text("mm")+" mm")
		if err != nil {
			continue // .0075 and the like, which tell the rounding rules apart
		}
		require.Equal(t, set.At(all), b, c.Where())
		all++
		require.Equal(t, exact, b.Thickness(), c.Where())
		require.True(t, b.Carries(inch) && b.Carries(mark), c.Where())
		require.Len(t, b.Marks(), 2)
		require.Equal(t, inch, b.Marks()[0].Value, c.Where())
	}
	require.Equal(t, 32, set.Len())
	require.Equal(t, 32, all)
	require.Equal(t, 27, remembered)
	require.Equal(t, set.Blades()[:26], feeler.Imperial26().Blades())
}

func TestMetricSets(t *testing.T) {
	sets := feeler.StandardSets()
	vectors.Load(t, "practice/feeler_sets.txt").Each(t, func(t *testing.T, c vectors.Case) {
		i := slices.IndexFunc(sets, func(s feeler.Set) bool { return s.Name() == c.Text("set") })
		require.GreaterOrEqual(t, i, 0)
		want := strings.Fields(c.Text("blades"))
		require.Equal(t, len(want), sets[i].Len())
		for k, w := range want {
			require.Equal(t, length(t, w+" mm"), sets[i].At(k).Thickness())
			require.Equal(t, w+" mm", sets[i].At(k).MarkText())
		}
		require.Contains(t, sets[i].Source(), "from memory")
	})
}

func TestMarkSlips(t *testing.T) {
	set := feeler.Imperial26()
	vectors.Load(t, "practice/feeler_slips.txt").Each(t, func(t *testing.T, c vectors.Case) {
		named := func(col string) (blades []feeler.Blade) {
			if !c.Has(col) {
				return nil
			}
			for m := range strings.FieldsSeq(strings.ReplaceAll(c.Text(col), " in", "")) {
				b, err := set.Find(m + " in")
				require.NoError(t, err)
				blades = append(blades, b)
			}
			return blades
		}
		found, slips, near := named("found"), named("slips"), named("nearest")
		b, err := set.Find(c.Text("asked"))
		if found != nil {
			require.NoError(t, err)
			require.Equal(t, found[0], b)
			return
		}
		var e *feeler.MarkError
		require.ErrorAs(t, err, &e)
		require.ErrorIs(t, err, feeler.ErrNoBlade)
		require.Equal(t, slips, e.Decimal)
		require.Equal(t, near, e.Nearest)
		require.Contains(t, e.Error(), c.Text("asked"))
	})
}

// The side-clearance cases of common practice, with what the set can settle.
func TestSideClearancePractice(t *testing.T) {
	vectors.Load(t, "practice/sideclearance.txt").Each(t, func(t *testing.T, c vectors.Case) {
		text := c.Text("set")
		unit := text[strings.LastIndex(text, " ")+1:]
		set := setOf(t, strings.TrimSuffix(text, unit), unit)
		var trials []feeler.Trial
		for col, feel := range map[string]feeler.Feel{"enters": feeler.Drag, "refused": feeler.Refused} {
			if c.Has(col) {
				trial, err := set.Trial(feel, c.Text(col))
				require.NoError(t, err)
				trials = append(trials, trial)
			}
		}
		b, err := feeler.Bracket(trials...)
		require.NoError(t, err)
		lo, hi, hiEnd := length(t, c.Text("least")+" mm"), units.Length(0), tolerance.Absent
		if c.Has("most") {
			hi, hiEnd = length(t, c.Text("most")+" mm"), tolerance.Open
		}
		want, err := tolerance.NewInterval(lo, tolerance.Closed, hi, hiEnd)
		require.NoError(t, err)
		require.Equal(t, want, b)
		band := tolerance.MustParseBand(c.Text("limits"))
		require.Equal(t, strings.ToLower(c.Text("verdict")), band.Judge(b).String())

		check := feeler.Check{Measure: "ring side clearance", Spec: tolerance.Spec{New: band}, Set: set}
		r, err := check.Read(feeler.Station{Trials: trials})
		require.NoError(t, err)
		narrower := len(r.Inside) > 0
		for most := 1; most <= feeler.MaxStack; most++ {
			for _, end := range []units.Length{lo + pm, max(hi-pm, lo+pm)} {
				if st, err := set.StackAtLeast(end, most); err == nil && b.Contains(st.Total) {
					narrower = true
				}
			}
		}
		require.Equal(t, c.Bool("settles"), narrower)
		f, err := check.Assess(feeler.Station{Trials: trials})
		require.NoError(t, err)
		if band.Judge(b) == tolerance.Undecided {
			require.Equal(t, tolerance.CantTell, f.Standing)
			require.Contains(t, f.Settle, "no blade and no stack of this set narrows "+b.String())
			require.Contains(t, f.Settle, "measure the parts by micrometer")
		} else {
			require.Empty(t, f.Settle)
		}
	})
}

func TestStackReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/feeler_stacks.txt").All(t) {
		set := setOf(t, c.Text("blades"), "µm")
		stack := map[string]func(units.Length, int) (feeler.Stack, error){
			"nearest": set.Stack, "most": set.StackAtMost, "least": set.StackAtLeast,
		}[c.Choice("fit", "nearest", "most", "least")]
		st, err := stack(length(t, c.Text("target")+" µm"), c.Int("most"))
		if !c.Has("stack") {
			require.ErrorIs(t, err, feeler.ErrNoStack, c.Where())
			c.Ignore("total")
			continue
		}
		require.NoError(t, err, c.Where())
		require.Equal(t, length(t, c.Text("total")+" µm"), st.Total, c.Where())
		var got []string
		seen := map[feeler.Blade]int{}
		for i := range st.Len() {
			got = append(got, strconv.FormatFloat(st.At(i).Thickness().Float(units.InMicrometres), 'f', -1, 64))
			seen[st.At(i)]++
		}
		require.Equal(t, c.Text("stack"), strings.Join(got, " "), c.Where())
		for b, n := range seen {
			have := 0
			for _, s := range set.Blades() {
				if s == b {
					have++
				}
			}
			require.LessOrEqual(t, n, have, c.Where())
		}
	}
}

func TestStackErrorReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/feeler_errors.txt").All(t) {
		var blades []feeler.Blade
		var marks []string
		for i, s := range strings.Fields(c.Text("errors")) {
			mark := strconv.Itoa(2+i) + " mm"
			b := feeler.MustBlade(mark)
			b.Error = length(t, s+" pm")
			blades, marks = append(blades, b), append(marks, mark)
		}
		set, err := feeler.NewSet("", "", blades...)
		require.NoError(t, err)
		st, err := set.Together(marks...)
		require.NoError(t, err)
		require.Equal(t, c.Int64("sum"), int64(st.WorstError()), c.Where())
		require.Equal(t, c.Int64("root"), int64(st.RootSumSquareError()), c.Where())
	}
}

func TestPlanReference(t *testing.T) {
	for c := range vectors.Load(t, "reference/feeler_plans.txt").All(t) {
		set := setOf(t, c.Text("blades"), "µm")
		end := tolerance.Closed
		if c.Choice("ends", "max", "less than") == "less than" {
			end = tolerance.Open
		}
		band, err := tolerance.NewBand(length(t, c.Text("least")+" µm"), tolerance.Closed, length(t, c.Text("greatest")+" µm"), end)
		require.NoError(t, err)
		var prior feeler.Prior
		for p := range strings.FieldsSeq(c.Text("prior")) {
			upto, weight, _ := strings.Cut(p, ":")
			w, err := strconv.ParseInt(weight, 10, 64)
			require.NoError(t, err)
			prior = append(prior, feeler.Piece{UpTo: length(t, upto+" µm"), Weight: w})
		}
		tree, err := feeler.Plan(set, tolerance.Spec{New: band}, prior)
		require.NoError(t, err, c.Where())
		require.Equal(t, c.Text("tree"), nested(tree), c.Where())
		require.Equal(t, c.Text("expected"), tree.Expected().RatString(), c.Where())
	}
}

// nested writes a tree as the reference file does.
func nested(t *feeler.Tree) string {
	if t.Done() {
		return ""
	}
	size := strings.TrimSuffix(t.Blade.MarkText(), " µm")
	return "(" + nested(t.Refused) + size + nested(t.Entered) + ")"
}
