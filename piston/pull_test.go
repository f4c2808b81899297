package piston

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/uncertainty"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

func pulled(strip, pull string) PullTrial {
	p, err := tolerance.ParseInterval[units.Force](pull)
	if err != nil {
		panic(err)
	}
	return PullTrial{Strip: at(strip), Pull: p}
}

func pullRule(name string) PullRule {
	for _, r := range PublishedPullRules() {
		if r.Name == name {
			return r
		}
	}
	panic(name)
}

// The published rules, their worked example, and pulls on either side.
func TestPullRule_published(t *testing.T) {
	vectors.Load(t, "published/piston_pull_rules.txt").Each(t, func(t *testing.T, c vectors.Case) {
		got, err := pullRule(c.Text("rule")).Read(pulled(c.Text("strip"), c.Text("pull")))
		require.NoError(t, err)
		require.Equal(t, c.Text("rule"), got.Rule)
		require.NotEmpty(t, got.Source)
		require.Equal(t, c.Has("clearance"), got.Told)
		if got.Told {
			require.Equal(t, at(c.Text("clearance")), got.Clearance)
		}
	})
}

// The two rules disagree about one pull, and each answer carries its name.
func TestComparePulls(t *testing.T) {
	rules := PublishedPullRules()
	got, disagree := ComparePulls(rules, pulled("0.04 mm", "1 kgf"))
	require.Equal(t, [][2]int{{0, 1}}, disagree)
	require.Equal(t, "[0.0654 mm, ∞) by the rule 6 lb", got[0].String())
	require.Equal(t, "[0.025 mm, 0.045 mm] by the rule 0.04 mm strip", got[1].String())
	require.NotEqual(t, got[0].Source, got[1].Source)

	got, disagree = ComparePulls(rules, pulled("0.08 mm", "6 lbf"))
	require.Empty(t, disagree)
	require.Equal(t, at("0.1054 mm"), got[0].Clearance)
	require.Equal(t, "nothing told by the rule 0.04 mm strip", got[1].String())
	require.Contains(t, got[1].Notes.Texts(), "no strip that was pulled is of the rule's thickness")

	hot := pulled("0.04 mm", "1 kgf")
	hot.At = skirtBetween("30 ±1 °C")
	got, disagree = ComparePulls(rules, hot)
	require.Empty(t, disagree)
	require.True(t, got[0].Told)
	require.Contains(t, got[1].Refused, "temperature [29 °C, 31 °C] is not within the rule's 15–25 °C")
	require.False(t, got[1].Told)
}

// Several trials narrow the answer; the scale's error counts on either side.
func TestPullRule_trials(t *testing.T) {
	six := pullRule("6 lb")
	got, err := six.Read(pulled("0.003 in", "3 lbf"), pulled("0.004 in", "4.5 lbf"), pulled("0.005 in", "8 lbf"))
	require.NoError(t, err)
	require.Equal(t, at("[0.005 in, 0.006 in]"), got.Clearance)
	for pull, want := range map[string]string{
		"6 ±0.25 lbf": "0.005 in", "6.5 ±0.25 lbf": "[0 in, 0.005 in]", "5.5 ±0.25 lbf": "[0.005 in, ∞)",
		"7 ±0.25 lbf": "[0 in, 0.005 in]", "5 ±0.25 lbf": "[0.005 in, ∞)",
	} {
		got, err := six.Read(pulled("0.004 in", pull))
		require.NoError(t, err)
		require.Equal(t, at(want), got.Clearance, pull)
	}
	got, err = six.Read(pulled("0.004 in", "6 ±1 lbf"))
	require.NoError(t, err)
	require.False(t, got.Told, "it may be anything")
	require.True(t, got.Clearance.IsZero())
	// The rule with an allowance from −0.015 to +0.005, and a strip that isn't
	// exact: outward on both sides.
	wide := pullRule("0.04 mm strip")
	wide.Strip = band("0.035–0.045 mm")
	for pull, want := range map[string]string{
		"1 kgf": "[0.023 mm, 0.047 mm]", "0.4 kgf": "[0.043 mm, ∞)", "2 kgf": "[0 mm, 0.027 mm]",
		"1.5 ±0.1 kgf": "[0 mm, 0.047 mm]", "0.5 ±0.1 kgf": "[0.023 mm, ∞)",
	} {
		got, err := wide.Read(pulled("0.040 ±0.002 mm", pull))
		require.NoError(t, err)
		require.Equal(t, at(want), got.Clearance, pull)
	}
	_, err = six.Read(pulled("0.004 in", "6 lbf"), pulled("0.006 in", "4 lbf"))
	require.ErrorContains(t, err, "trial 2 telling a clearance of")
	_, err = wide.Read(pulled("0.036 ±0.001 mm", "0.6 kgf"), pulled("0.045 mm", "0.2 kgf"))
	require.Error(t, err)
	thick := six
	thick.Adds = at("[-0.2 mm, -0.1 mm]")
	_, err = thick.Read(pulled("0.05 mm", "9 lbf"))
	require.ErrorContains(t, err, "a piston that goes in")
}

// A rule that says more asks for more, and what a trial leaves out is noted.
func TestPullRule_conditions(t *testing.T) {
	r := PullRule{Name: "ours", Source: "our shop's own trials in a ring", Width: mm("12.7"), Film: FilmDry, Pull: pullRule("6 lb").Pull, Adds: at("0.02 mm"), At: pullRule("0.04 mm strip").At}
	got, err := r.Read(pulled("0.1 mm", "6 lbf"))
	require.NoError(t, err)
	require.Equal(t, []string{
		"the width of the strip is not recorded, and the rule is for one width",
		"dry or oiled is not recorded, and the rule is for one of them",
		"the temperature is not recorded, and the rule gives one",
	}, got.Notes.Texts())
	whole := pulled("0.1 mm", "6 lbf")
	whole.Width, whole.Film, whole.At = mm("12.7"), FilmDry, skirtBetween("20 ±1 °C")
	got, err = r.Read(whole)
	require.NoError(t, err)
	require.Zero(t, got.Notes)
	require.Empty(t, got.Notes.Texts())
	got, err = pullRule("6 lb").Read(whole)
	require.NoError(t, err)
	require.Equal(t, PullWidthNotInRule|PullFilmNotInRule, got.Notes)

	for want, change := range map[string]func(*PullTrial){
		"trial 1, strip width 25.4 mm is not the rule's 12.7 mm": func(p *PullTrial) { p.Width = mm("25.4") },
		"trial 1, film oiled is not dry":                         func(p *PullTrial) { p.Film = FilmOiled },
		"trial 1, temperature":                                   func(p *PullTrial) { p.At = skirtDegrees(40) },
		"trial 1, strip 0 mm is not above":                       func(p *PullTrial) { p.Strip = at("0 mm") },
		"a greatest value":                                       func(p *PullTrial) { p.Strip = at("[0.1 mm, ∞)") },
		"trial 1, pull -1 N":                                     func(p *PullTrial) { p.Pull = pulled("1 mm", "-1 N").Pull },
		"with both ends":                                         func(p *PullTrial) { p.Pull = pulled("1 mm", "[1 N, ∞)").Pull },
	} {
		p := whole
		change(&p)
		_, err := r.Read(p)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
	}
	for want, change := range map[string]func(*PullRule){
		"pull rule (no name)":               func(r *PullRule) { r.Name = "" },
		"source (none)":                     func(r *PullRule) { r.Source = "" },
		`pull rule "ours", pull`:            func(r *PullRule) { r.Pull = tolerance.AtLeast(units.Newton) },
		"a least, 0 N or more":              func(r *PullRule) { r.Pull = tolerance.AtMost(units.Newton) },
		"what the strip's drag comes to":    func(r *PullRule) { r.Adds = at("[0 mm, ∞)") },
		"allowance 25 mm":                   func(r *PullRule) { r.Adds = at("25 mm") },
		"allowance (−∞":                     func(r *PullRule) { r.Adds = at("(−∞, 1 mm]") },
		"strip width or length -1 mm, 0 mm": func(r *PullRule) { r.Width = -units.Millimetre },
		"strip or temperature":              func(r *PullRule) { r.Strip = tolerance.AtMost(units.OutOfRange[units.Length]()) },
	} {
		r := r
		change(&r)
		_, err := r.Read(whole)
		require.ErrorIs(t, err, ErrInput, want)
		require.ErrorContains(t, err, want)
	}
	_, err = r.Read()
	require.ErrorContains(t, err, "trials (none)")
}

// What to try next, and the inverses, to the quantum.
func TestPullStrip(t *testing.T) {
	strip, ok := pullRule("6 lb").StripFor(band("0.0045–0.0083 in").Interval())
	require.True(t, ok)
	require.Equal(t, at("[0.0035 in, 0.0073 in]"), strip)
	strip, ok = pullRule("0.04 mm strip").StripFor(at("0.04 mm"))
	require.True(t, ok)
	require.Equal(t, at("0.04 mm"), strip)
	_, ok = pullRule("0.04 mm strip").StripFor(at("0.08 mm"))
	require.False(t, ok)
	_, ok = pullRule("6 lb").StripFor(tolerance.Exactly(units.OutOfRange[units.Length]()))
	require.False(t, ok)

	r := rand.New(rand.NewPCG(11, 1))
	for range 1000 {
		s, a := units.Length(r.Int64N(1e9)), units.Length(r.Int64N(1e8)-5e7)
		c := PullClearance(s, a)
		require.Equal(t, s, PullStrip(c, a))
		require.Equal(t, a, PullAllowance(c, s))
	}
	term := PullClearance(working.Given("strip", "t", 4*units.Thou), working.Given("what the drag adds", "a", units.Thou)).Named("clearance", "c")
	w, err := working.Solve(term, units.Style[units.Length]{Unit: units.InInches, Places: 3})
	require.NoError(t, err)
	require.Contains(t, w.Text(), "= 0.005 in")
	e, err := uncertainty.Rectangular("drag", units.Thou, units.Thou/2)
	require.NoError(t, err)
	require.Equal(t, e.StandardUncertainty(), PullClearance(uncertainty.Exactly(4*units.Thou), e).StandardUncertainty())
}

// A rule is data: it is written and reads back.
func TestPullRule_json(t *testing.T) {
	for _, r := range PublishedPullRules() {
		text, err := json.Marshal(r)
		require.NoError(t, err)
		var back PullRule
		require.NoError(t, json.Unmarshal(text, &back))
		require.Equal(t, r, back)
	}
	for _, f := range []PullFilm{FilmNotStated, FilmDry, FilmOiled} {
		text, err := f.MarshalText()
		require.NoError(t, err)
		var back PullFilm
		require.NoError(t, back.UnmarshalText(text))
		require.Equal(t, f, back)
	}
	var f PullFilm
	require.ErrorIs(t, f.UnmarshalText([]byte("wet")), ErrInput)
}

// Drag grows with the strip and shrinks with the clearance: whatever trials a
// piston of a clearance gives by a rule, the answer holds that clearance.
func TestPullRule_holdsTheClearance(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	lo, hi := 20*units.Newton, 30*units.Newton
	pull, err := tolerance.Between(lo, hi)
	require.NoError(t, err)
	rule := PullRule{Name: "model", Source: "invented", Pull: pull, Adds: at("[0.010 mm, 0.030 mm]")}
	for range 500 {
		clearance := units.Length(3e7 + r.Int64N(1e8))
		var trials []PullTrial
		for range 1 + r.IntN(4) {
			strip := units.Length(1e7 + r.Int64N(1e8))
			// 30 N where clearance − strip is 0.010 mm, 20 N where 0.030 mm.
			f := 30*units.Newton - units.Force(clearance-strip-1e7)*(units.Newton/2e6)
			if f < 0 {
				continue
			}
			trials = append(trials, PullTrial{Strip: tolerance.Exactly(strip), Pull: tolerance.Exactly(f)})
		}
		if len(trials) == 0 {
			continue
		}
		got, err := rule.Read(trials...)
		require.NoError(t, err)
		require.True(t, got.Told)
		require.True(t, got.Clearance.Contains(clearance))
	}
}

func FuzzPullRule(f *testing.F) {
	f.Add(int64(1e8), int64(1e8), int64(5_000_000_000_000_000), int64(1e15), int64(25_400_000), int64(0))
	f.Add(int64(-1), int64(1<<62), int64(-5), int64(1<<62), int64(-1<<62), int64(-1))
	f.Fuzz(func(t *testing.T, strip, strip2, pull, pull2, adds, width int64) {
		r := pullRule("6 lb")
		r.Adds, r.Width = tolerance.Exactly(units.Length(adds)), units.Length(width)
		got, err := r.Read(
			PullTrial{Strip: tolerance.Exactly(units.Length(strip)), Pull: tolerance.Exactly(units.Force(pull))},
			PullTrial{Strip: tolerance.Exactly(units.Length(strip2)), Pull: tolerance.Exactly(units.Force(pull2))})
		if err != nil {
			require.ErrorIs(t, err, ErrInput)
			require.NotEmpty(t, err.Error())
			return
		}
		lo, end := got.Clearance.Lower()
		require.True(t, !got.Told || end == tolerance.Closed && lo >= 0)
		_, _ = r.StripFor(got.Clearance)
	})
}

func BenchmarkPullRule(b *testing.B) {
	b.Run("lib=tenthou/op=threetrials", func(b *testing.B) {
		b.ReportAllocs()
		r, x, y, z := pullRule("6 lb"), pulled("0.003 in", "3 lbf"), pulled("0.004 in", "4.5 lbf"), pulled("0.005 in", "8 lbf")
		for b.Loop() {
			if _, err := r.Read(x, y, z); err != nil {
				b.Fatal(err)
			}
		}
	})
}
