package feeler_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/feeler"
	"github.com/tenthou/tenthou/units"
)

func station(t testing.TB, set feeler.Set, where, trials string) feeler.Station {
	t.Helper()
	tr, err := set.ParseTrials(trials)
	require.NoError(t, err)
	return feeler.Station{Where: where, Trials: tr}
}

func TestAssess(t *testing.T) {
	inch, metric := feeler.Imperial26(), feeler.Metric20()
	few, err := feeler.NewSet("", "", feeler.MustBlade("0.03 mm"), feeler.MustBlade("0.04 mm"), feeler.MustBlade("0.15 mm"))
	require.NoError(t, err)
	one, err := feeler.NewSet("", "", feeler.MustBlade("0.05 mm"))
	require.NoError(t, err)
	const micrometer = "measure the parts by micrometer: no blade and no stack of "
	for _, c := range []struct {
		set      feeler.Set
		new      string
		wear     string
		trials   []string
		standing tolerance.Standing
		settle   string
	}{
		// One station, decided either way.
		{inch, "0.03–0.07 mm", "no limit", []string{".002 in free, .0025 in refused"}, tolerance.AsNew, ""},
		{inch, "0.03–0.07 mm", "no limit", []string{".003 in drag"}, tolerance.OutsideNewBand, ""},
		{inch, "0.03–0.07 mm", "max 0.07 mm", []string{".003 in drag"}, tolerance.PastWearLimit, ""},
		// Blades left to try: on one side of the limit, on both, at it.
		{inch, "max 0.07 mm", "no limit", []string{".0025 in free"}, tolerance.CantTell, "try .003 in / 0.076 mm (settled if it goes in)"},
		{inch, "max 0.07 mm", "no limit", []string{".003 in refused"}, tolerance.CantTell, "try .0025 in / 0.064 mm (settled if it does not go in)"},
		{inch, "max 0.07 mm", "no limit", []string{".004 in refused"}, tolerance.CantTell,
			"try .0025 in / 0.064 mm (settled if it does not go in), then .003 in / 0.076 mm (settled if it goes in)"},
		{metric, "less than 0.20 mm", "no limit", []string{".1 mm free, .4 mm refused"}, tolerance.CantTell,
			"try 0.20 mm (settled either way)"},
		{metric, "max 0.20 mm", "no limit", []string{".1 mm free, .4 mm refused"}, tolerance.CantTell,
			"try 0.20 mm (settled if it does not go in), then 0.25 mm (settled if it goes in)"},
		{metric, "min 0.20 mm", "no limit", []string{".1 mm free, .4 mm refused"}, tolerance.CantTell,
			"try 0.20 mm (settled either way)"},
		{metric, "more than 0.20 mm", "no limit", []string{".1 mm free, .4 mm refused"}, tolerance.CantTell,
			"try 0.20 mm (settled if it does not go in), then 0.25 mm (settled if it goes in)"},
		// None left, but a stack.
		{few, "max 0.10 mm", "no limit", []string{".04 mm free, .15 mm refused"}, tolerance.CantTell, "try 0.04 mm + 0.03 mm together (settled if it does not go in)"},
		{few, "less than 0.07 mm", "no limit", []string{".04 mm free, .15 mm refused"}, tolerance.CantTell, "try 0.04 mm + 0.03 mm together (settled either way)"},
		{metric, "max 1.03 mm", "no limit", []string{"1 mm free"}, tolerance.CantTell, "try 1.00 mm + 0.05 mm together (settled if it goes in)"},
		// None at all.
		{inch, "0.03–0.07 mm", "no limit", []string{".0025 in drag, .003 in refused"}, tolerance.CantTell,
			"try a blade of 0.07 mm (settled if it does not go in; if it does, [0.07 mm, 0.0762 mm) stays open) or " + micrometer + "imperial 26 narrows [0.0635 mm, 0.0762 mm)"},
		{inch, "0.03–0.07 mm", "no limit", []string{".0015 in refused"}, tolerance.CantTell,
			"try a blade of 0.03 mm (settled either way) or " + micrometer + "imperial 26 narrows [0 mm, 0.0381 mm)"},
		{metric, "max 0.05 mm", "no limit", []string{".05 mm drag, .1 mm refused"}, tolerance.CantTell,
			micrometer + "metric 20 narrows [0.05 mm, 0.1 mm)"},
		{one, "max 30 mm", "no limit", []string{".05 mm drag"}, tolerance.CantTell, micrometer + "this set narrows [0.05 mm, ∞)"},
		{one, "max 0.06 mm", "no limit", []string{".05 mm drag"}, tolerance.CantTell,
			"try a blade of 0.06 mm (settled if it does not go in; if it does, [0.06 mm, ∞) stays open) or " + micrometer + "this set narrows [0.05 mm, ∞)"},
		{metric, "max 0.06 mm", "no limit", []string{"1 mm refused, 0.95 mm free"}, tolerance.OutsideNewBand, ""},
		{metric, "max 0.97 mm", "no limit", []string{"1 mm refused, 0.95 mm free"}, tolerance.CantTell,
			"try a blade of 0.97 mm (settled if it does not go in; if it does, [0.97 mm, 1 mm) stays open) or measure the parts by micrometer: no blade and no stack of up to 4 blades of metric 20 narrows [0.95 mm, 1 mm)"},
		{feeler.Set{}, "max 0.06 mm", "no limit", []string{""}, tolerance.CantTell,
			"try a blade of 0.06 mm (settled if it does not go in; if it does, [0.06 mm, ∞) stays open) or " + micrometer + "this set narrows [0 mm, ∞)"},
		// Nothing tried; two limits open.
		{inch, "0.04–0.07 mm", "no limit", []string{""}, tolerance.CantTell,
			"on 0.04 mm, try .0015 in / 0.038 mm (settled if it does not go in), then .002 in / 0.051 mm (settled if it goes in); " +
				"on 0.07 mm, try .0025 in / 0.064 mm (settled if it does not go in), then .003 in / 0.076 mm (settled if it goes in)"},
		// Several stations: the greatest to the upper limit, the least to the lower.
		{inch, "0.03–0.07 mm", "no limit", []string{".002 in free, .0025 in refused", ".0025 in free"}, tolerance.CantTell,
			"rear: try .003 in / 0.076 mm (settled if it goes in)"},
		{inch, "0.03–0.07 mm", "no limit", []string{".0015 in refused", ".003 in free"}, tolerance.OutsideNewBand, ""},
		{inch, "0.03–0.07 mm", "max 0.07 mm", []string{".0015 in refused", ".003 in free"}, tolerance.PastWearLimit, ""},
		// As new or merely usable is open, usable is not.
		{inch, "0.03–0.07 mm", "max 0.12 mm", []string{".002 in free, .004 in refused"}, tolerance.Usable,
			"try .0025 in / 0.064 mm (settled if it does not go in), then .003 in / 0.076 mm (settled if it goes in)"},
		{inch, "no limit", "no limit", []string{".002 in free"}, tolerance.CantTell, "look up the limits in the engine maker's manual"},
	} {
		check := feeler.Check{Measure: "side clearance", Where: "here", Spec: spec(t, c.new, c.wear), Set: c.set}
		var stations []feeler.Station
		for i, tr := range c.trials {
			where := ""
			if len(c.trials) > 1 {
				where = []string{"front", "rear"}[i]
			}
			stations = append(stations, station(t, c.set, where, tr))
		}
		f, err := check.Assess(stations...)
		require.NoError(t, err)
		require.Equal(t, c.standing, f.Standing, "%v", c)
		require.Equal(t, c.settle, f.Settle, "%v", c)
		require.Equal(t, check.Measure+check.Where, f.Measure+f.Where)
	}
}

// Both sides of a part can fail at once.
func TestAssessBothSides(t *testing.T) {
	set := feeler.Imperial26()
	check := feeler.Check{Measure: "side clearance", Spec: spec(t, "0.05–0.07 mm", "no limit"), Set: set}
	f, err := check.Assess(station(t, set, "front", ".0015 in refused"), station(t, set, "rear", ".003 in free"))
	require.NoError(t, err)
	require.Equal(t, tolerance.Sides{Least: tolerance.Below, Greatest: tolerance.Above}, f.New)
	require.Contains(t, f.Explain(), "too small in one place and too large in another")
}

func TestAssessWithErrors(t *testing.T) {
	set, err := feeler.Metric20().WithErrors(feeler.ErrorClass{UpTo: 2 * mm, Error: 0.004 * mm})
	require.NoError(t, err)
	check := feeler.Check{Measure: "gap", Spec: spec(t, "max 0.202 mm", "no limit"), Set: set}
	trials := station(t, set, "", "0.15 mm free, 0.20 mm refused")
	f, err := check.Assess(trials)
	require.NoError(t, err)
	require.Equal(t, tolerance.AsNew, f.Standing)
	check.Errors = true
	f, err = check.Assess(trials)
	require.NoError(t, err)
	require.Equal(t, tolerance.CantTell, f.Standing)
	require.Equal(t, "[0.146 mm, 0.204 mm)", f.Least.String())
	// Three blades of 0.05, 0.10 … together are off by 0.012 mm and narrow nothing.
	require.Contains(t, f.Settle, "no blade and no stack of up to 4 blades of metric 20 narrows [0.146 mm, 0.204 mm)")

	// A blade whose error spans the limit only narrows it; one further off settles it.
	check.Spec = spec(t, "max 0.30 mm", "no limit")
	f, err = check.Assess(station(t, set, "", "0.20 mm free, 0.40 mm refused"))
	require.NoError(t, err)
	require.Equal(t, "try 0.30 mm (to narrow it), then 0.35 mm (settled if it goes in)", f.Settle)
}

func TestRead(t *testing.T) {
	set := feeler.Metric20()
	check := feeler.Check{Set: set}
	r, err := check.Read(station(t, set, "front", "0.20 mm free, 0.30 mm forced, 0.35 mm refused"))
	require.NoError(t, err)
	require.Equal(t, "front: [0.2 mm, 0.3 mm); try 0.25 mm to narrow it; 0.30 mm was forced, which counts as refused", r.String())
	require.Equal(t, []feeler.Blade{feeler.MustBlade("0.25 mm")}, r.Inside)
	r, err = check.Read(station(t, set, "", "0.20 mm free, 0.25 mm refused"))
	require.NoError(t, err)
	require.Equal(t, "[0.2 mm, 0.25 mm)", r.String())

	contrary := station(t, set, "rear", "0.20 mm refused, 0.30 mm free")
	_, err = check.Read(contrary)
	var e *feeler.StationError
	require.ErrorAs(t, err, &e)
	require.Equal(t, "rear", e.Where)
	require.ErrorIs(t, err, feeler.ErrContradiction)
	require.EqualError(t, err, "feeler: rear: trials contradict each other: 0.30 mm entered, but the thinner 0.20 mm did not: clean blades and gap, and try both again")
	contrary.Where = ""
	_, err = check.Assess(contrary)
	require.EqualError(t, err, "feeler: trials contradict each other: 0.30 mm entered, but the thinner 0.20 mm did not: clean blades and gap, and try both again")
}

func TestAssessRefuses(t *testing.T) {
	set := feeler.Metric20()
	check := feeler.Check{Measure: "gap", Spec: spec(t, "max 0.97 mm", "no limit"), Set: set}
	_, err := check.Assess()
	require.ErrorIs(t, err, tolerance.ErrNoReading)
	check.Most = 9
	_, err = check.Assess(station(t, set, "", "1 mm refused, 0.95 mm free"))
	require.ErrorIs(t, err, feeler.ErrSize)
	check.Most = -1
	_, err = check.Assess(station(t, set, "", "1 mm refused, 0.95 mm free"))
	require.ErrorIs(t, err, feeler.ErrSize)
	check.Most = 8
	_, err = check.Assess(station(t, set, "", "1 mm refused, 0.95 mm free"))
	require.NoError(t, err)
	check.Spec = tolerance.Spec{New: tolerance.AtMost(units.OutOfRange[units.Length]())}
	_, err = check.Assess(station(t, set, "", "1 mm refused"))
	require.ErrorIs(t, err, tolerance.ErrRange)
}
