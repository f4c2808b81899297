package cylinder

import (
	"encoding/json"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

// What the standard encoder writes of either document reads back as it was.
func TestDocuments_roundTrip(t *testing.T) {
	l, r := demoLimits(t), demoReadings(t)
	for _, blank := range []bool{false, true} {
		if blank {
			r = l.Blank()
		}
		text, err := json.Marshal(r)
		require.NoError(t, err)
		back, err := ReadReadings("again", text)
		require.NoError(t, err, "%s", text)
		require.Equal(t, r, back)
		require.NoError(t, back.Validate())
	}
	text, err := json.Marshal(l)
	require.NoError(t, err)
	back, err := ReadLimits("again", text)
	require.NoError(t, err, "%s", text)
	require.Equal(t, l, back)

	wet, err := ReadLimits("twin", []byte(smallLimits))
	require.NoError(t, err)
	blank := wet.Blank()
	require.Len(t, blank.Cylinders[1].Liner.Protrusion, 1)
	require.Len(t, blank.Faces[0].Local, 1)
	require.Len(t, blank.Faces[0].Lines, 2)
	wet.Face.Local, wet.Face.Grid, wet.Bores.Angles = nil, smallGrid(), []units.Angle{45 * units.Degree}
	blank = wet.Blank()
	require.Len(t, blank.Faces[0].Grid, 2)
	require.Len(t, blank.Cylinders[0].Levels[1].Angled, 1)
	report, err := Inspect(&wet, &blank)
	require.NoError(t, err)
	checkReport(t, &report)
	require.Empty(t, report.Decisions)
	paths := map[string]bool{}
	for _, m := range report.Missing {
		paths[m.Path] = true
	}
	require.True(t, paths["cylinders[0].levels[1].angled[0]"])
	require.True(t, paths["cylinders[1].liner.protrusion[0]"])
	require.True(t, paths["blockFaces[0].grid[1][1]"])

	// A report and an outcome are plain data.
	demo := demoReadings(t)
	whole, out, err := l.Prepare().Outcome(&demo)
	require.NoError(t, err)
	for _, v := range []any{whole, out} {
		_, err := json.Marshal(v)
		require.NoError(t, err)
	}
}

// A short straight-edge that isn't there yet is asked for once the long one
// doesn't settle it, or hasn't been laid.
func TestInspect_twin(t *testing.T) {
	l, err := ReadLimits("l.json", []byte(smallLimits))
	require.NoError(t, err)
	r, err := ReadReadings("r.json", []byte(smallReadings))
	require.NoError(t, err)
	report, out, err := l.Prepare().Outcome(&r)
	require.NoError(t, err)
	checkReport(t, &report)
	// The worst wall, 0.06 mm, from a bore of 86.02 mm at the most: 86.020 +
	// 0.12 + 0.02 + 0.05 mm. Below the greatest diameter, 86.12 mm, it can't be.
	require.Equal(t, bracket(t, "86.21 mm"), out.Oversize.Bores[0].Need.Size)
	require.Equal(t, "at least +0.25: 86.25 mm nominal", decision(t, &report, "cylinder bores", "").Size)
	require.Equal(t, inspection.Replace, decision(t, &report, "head", "").Action, "blued")
	blank := l.Blank()
	blank.Faces[0].Local[0] = read(t, "0.01 mm")
	report, err = Inspect(&l, &blank)
	require.NoError(t, err)
	require.Len(t, report.Findings, 1)
	require.Equal(t, "gap within 150 mm", report.Findings[0].Measure())
	require.Equal(t, inspection.MeasureAgain, decision(t, &report, "block face", "").Action)
}

func TestInspect_words(t *testing.T) {
	roundTrip(t, hatchNames, func(i uint8) string { return HatchAngle(i).String() }, func(b []byte) (uint8, error) {
		var h HatchAngle
		err := h.UnmarshalText(b)
		return uint8(h), err
	}, func(i uint8) ([]byte, error) { return HatchAngle(i).MarshalText() })
	roundTrip(t, stepRuleNames, func(i uint8) string { return StepRule(i).String() }, func(b []byte) (uint8, error) {
		var r StepRule
		err := r.UnmarshalText(b)
		return uint8(r), err
	}, func(i uint8) ([]byte, error) { return StepRule(i).MarshalText() })
}

// Which way to line is the cheapest where all is priced, else the one with the
// fewest liners.
func TestInspect_liningOption(t *testing.T) {
	option := func(priced bool) string {
		r := inspected(t, func(l *Limits, r *Readings) {
			l.Bores.Kits = l.Bores.Kits[:2]
			r.Cylinders[0].Walls = []BoreWall{{Where: "top", Heading: 0, Wear: bracket(t, "0.13 mm")}}
			worn(t, r, 3, "0.108 mm")
			r.Cylinders[2].Walls = []BoreWall{{Where: "top", Heading: 0, Wear: bracket(t, "0.4 mm")}}
			if priced {
				l.Bores.Boring, l.Bores.Liner.Price = PriceOf(10), PriceOf(100)
				l.Bores.Kits[0].Price, l.Bores.Kits[1].Price = PriceOf(10), PriceOf(1000)
			}
		})
		return decision(t, &r, "cylinder bores", "").Size
	}
	require.Contains(t, option(false), "line cylinder 3; all to +0.50 mm")
	require.Contains(t, option(true), "line cylinder 1, cylinder 3; all to +0.25 mm")
}

// Goroutines may share an inspector.
func TestInspector_shared(t *testing.T) {
	l, r := demoLimits(t), demoReadings(t)
	in := l.Prepare()
	want, err := in.Inspect(&r)
	require.NoError(t, err)
	reports := make([]inspection.Report, 8)
	var wait sync.WaitGroup
	for i := range reports {
		wait.Go(func() {
			for range 20 {
				reports[i], _ = in.Inspect(&r)
			}
		})
	}
	wait.Wait()
	for i := range reports {
		require.Equal(t, want, reports[i])
	}
}
