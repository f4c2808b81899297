package crank

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

// passedWhole holds a report to what must be true of any: no part is passed that
// isn't wholly read, what is open says what would settle it, and it encodes.
func passedWhole(t testing.TB, r *inspection.Report) {
	t.Helper()
	inBenchOrder(t, r)
	sets := map[string]string{
		"main journals": "main ", "crankpins": "crankpin ", "main bearing shells": "main ", "big-end shells": "rod ", "crankshaft": "",
		"thrust washers": "", "oil pump": "oil pump", "relief valve spring": "relief", "masses of the rods": "mass", "balance of the crankshaft": "crankshaft",
	}
	for _, d := range r.Decisions {
		if d.Action != inspection.ReUse && d.Action != inspection.CleanAndReUse {
			continue
		}
		require.Empty(t, d.Slips, "%+v", d)
		for _, m := range r.Missing {
			if m.Step != d.Step {
				continue
			}
			prefix, isSet := sets[d.Part]
			if d.Where == "" {
				require.True(t, isSet, d.Part)
				require.False(t, strings.HasPrefix(m.Where, prefix), "%+v passed without %+v", d, m)
				continue
			}
			require.False(t, m.Where == d.Where || strings.HasPrefix(m.Where, d.Where+","), "%+v passed without %+v", d, m)
		}
	}
	_, err := json.Marshal(r)
	require.NoError(t, err)
}

func FuzzInspect(f *testing.F) {
	l := inspectLimits(f)
	in := l.Prepare()
	whole := inspectText(f, "readings")
	f.Add([]byte(whole))
	f.Add([]byte(`{"schema": 1}`))
	f.Add([]byte(strings.Replace(whole, `"59.988 mm"`, `""`, 1)))
	f.Add([]byte(strings.Replace(whole, `"59.988 mm"`, `"2.3617 in"`, 1)))
	f.Add([]byte(strings.Replace(whole, `"0.41 mm"`, `"[0.35 mm, ∞)"`, 1)))
	f.Add([]byte(strings.Replace(whole, `"cracked": "no"`, `"scored": "yes"`, 1)))
	f.Fuzz(func(t *testing.T, data []byte) {
		d, err := ReadReadings("x", data)
		if err != nil {
			return
		}
		r, err := in.Inspect(&d)
		if err != nil {
			var at *inspection.PathError
			require.ErrorAs(t, err, &at)
			return
		}
		passedWhole(t, &r)
	})
}

// Whatever limits are taken, their blank document is too, and asks for readings
// without deciding anything.
func FuzzInspectLimits(f *testing.F) {
	f.Add([]byte(inspectText(f, "limits")))
	f.Add([]byte(`{"schema": 1, "layout": {"mains": 3, "dialPlaces": 8, "positions": ["0 mm", "1 mm", "2 mm"]}, "shaft": {"bend": {"new": "max 1 mm"}}}`))
	f.Add([]byte(`{"schema": 1, "layout": {"rods": 2, "crankpins": 1, "rodPins": [1, 1]}, "balance": {"bobweight": {"new": "min 1 kg"}, "factor": "1/2"}, "rodBolts": {"yield": true}}`))
	f.Add([]byte(`{"schema": 1, "layout": {}, "thrust": {"endFloat": {"new": "max 1 mm"}, "halves": 2}, "oilPump": {"tip": {"wear": "max 1 mm"}, "relief": {"free": {"new": "1–2 mm"}}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		l, err := ReadLimits("x", data)
		if err != nil {
			return
		}
		blank := l.Blank()
		r, err := Inspect(&l, &blank)
		require.NoError(t, err)
		require.Empty(t, r.Decisions)
		require.Empty(t, r.Findings)
		passedWhole(t, &r)
	})
}

// An Inspector serves many goroutines, and what it gives is the same each time.
func TestInspectTogether(t *testing.T) {
	l, d := inspectLimits(t), inspectReadings(t)
	in := l.Prepare()
	want, err := in.Inspect(&d)
	require.NoError(t, err)
	reports := make(chan inspection.Report)
	for range 8 {
		go func() {
			r, _ := in.Inspect(&d)
			reports <- r
		}()
	}
	for range 8 {
		require.Equal(t, want, <-reports)
	}
	require.LessOrEqual(t, testing.AllocsPerRun(20, func() { _, _ = in.Inspect(&d) }), 180.0)
}

// Readings taken away, one at a time: whatever is missing, nothing that needs it
// passes.
func TestInspectEachMissing(t *testing.T) {
	l := inspectLimits(t)
	text := inspectText(t, "readings")
	in := l.Prepare()
	taken := 0
	for i := 0; i < len(text); i++ {
		j := strings.Index(text[i:], ` mm"`)
		if j < 0 {
			break
		}
		end := i + j + len(` mm"`)
		start := strings.LastIndex(text[:end-1], `"`)
		i = end
		if before := strings.TrimRight(text[:start], " "); strings.HasSuffix(before, `"wear":`) || strings.HasSuffix(before, `"where":`) {
			continue
		}
		d, err := ReadReadings("x", []byte(text[:start]+`""`+text[end:]))
		require.NoError(t, err)
		r, err := in.Inspect(&d)
		require.NoError(t, err)
		if strings.HasSuffix(strings.TrimRight(text[:start], " ["), `"housing":`) {
			require.Empty(t, r.Missing) // of a main it isn't asked for, and what it tells is left out
		} else {
			require.Len(t, r.Missing, 1, text[start:end])
		}
		passedWhole(t, &r)
		taken++
	}
	require.Greater(t, taken, 90)
}
