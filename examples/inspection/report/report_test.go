package report

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/svg"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/units"
)

var update = flag.Bool("update", false, "write the golden files anew")

func assess[Q units.Quantity](t testing.TB, step inspection.Step, measure, where, fresh, wear string, stations ...string) inspection.Finding {
	t.Helper()
	var spec tolerance.SpecOf[Q]
	var err error
	if fresh != "" {
		spec.New, err = tolerance.ParseBandOf[Q](fresh)
		require.NoError(t, err)
	}
	if wear != "" {
		spec.Wear, err = tolerance.ParseBandOf[Q](wear)
		require.NoError(t, err)
	}
	var all []tolerance.Interval[Q]
	for _, s := range stations {
		i, err := tolerance.ParseInterval[Q](s)
		require.NoError(t, err)
		all = append(all, i)
	}
	f, err := tolerance.Assess(measure, where, spec, all...)
	require.NoError(t, err)
	return inspection.Found(step, "", f)
}

func sample(t testing.TB) *Report {
	length := assess[units.Length]
	r := &Report{Engine: "training engine <4>", Report: inspection.Report{
		Slips: []inspection.Slip{{Path: "limits.sideClearance.wearAlso", What: "ring side clearance", Text: "0.006 in is 0.152 mm: the 0.015 mm printed beside it looks a decimal place off"}},
		Findings: []inspection.Finding{
			length(t, inspection.StepBores, "taper", "cylinder 1", "max 0.01 mm", "max 0.05 mm", "0.03 ±0.002 mm"),
			length(t, inspection.StepRings, "ring side clearance", "piston 2, top groove", "0.03–0.07 mm", "", "[0.0635 mm, 0.0762 mm)"),
			length(t, inspection.StepCrank, "journal", "main 3", "2.3614–2.3622 in", "min 2.3602 in", "2.3612 ±.0001 in", "2.3598 ±.0001 in"),
			assess[units.Force](t, inspection.StepSprings, "load at installed height", "valve 1", "200–240 N", "", "190 ±2 N"),
			assess[units.SpringRate](t, inspection.StepSprings, "rate", "valve 1", "30–34 N/mm", "", "32 N/mm"),
			assess[units.Mass](t, inspection.StepBalance, "piston mass", "piston 1", "max 400 g", "", "398 g"),
			assess[units.Pressure](t, inspection.StepBeforeStrip, "compression", "cylinder 4", "min 900 kPa", "", "1000 kPa"),
			assess[units.Angle](t, inspection.StepBoreFinish, "cross-hatch", "cylinder 1", "40–50°", "", "45°"),
			assess[units.Volume](t, inspection.StepHead, "chamber", "cylinder 2", "44–46 cm³", "", "45 cm³"),
		},
		Decisions: []inspection.Decision{
			{Step: inspection.StepBores, Part: "cylinder bores", Action: inspection.ReconditionTo, Size: "+0.50 mm", Because: "0.095 mm worn", Governs: "cylinder 2"},
			{Step: inspection.StepRings, Part: "piston rings", Where: "piston 2", Action: inspection.MeasureAgain, Because: "a bracket lies across the limit", Settle: "a blade of 0.07 mm", Slips: []string{"limits.sideClearance.wearAlso"}},
			{Step: inspection.StepCrank, Part: "crankshaft", Action: inspection.ReUse, Because: "all within"},
		},
		Missing:   []inspection.Missing{{Step: inspection.StepCrank, Path: "mains[3].front", Measure: "journal", Where: "main 4, front | side", With: "micrometer", Limit: "2.3614–2.3622 in"}},
		Orders:    []inspection.Order{{Step: inspection.StepPistons, What: "pistons with rings", Size: "+0.50 mm", Count: 4, For: []string{"all cylinders"}, Sure: true}, {What: "main shells", Size: ".010 in", Count: 5}},
		Predicted: []inspection.Finding{length(t, inspection.StepAssembly, "piston clearance", "cylinder 1", "0.03–0.06 mm", "", "[0.038 mm, 0.052 mm]")},
		Cautions:  []string{"Ring ends are sharp: eyes and hands."},
	}}
	r.Drawings = []Drawing{{"Cylinder 2", func(id string) []byte {
		p := svg.New(60, 60, "Cylinder 2", "an oval, exaggerated")
		p.Circle(svg.Measured, 30, 30, 20)
		return p.Inline(id)
	}}}
	return r
}

// The golden files are for layout; they were read when they were made.
func TestGolden(t *testing.T) {
	r := sample(t)
	built := sample(t)
	built.Inch = true
	built.Departed, built.Agreed, built.Unmeasured = inspection.Compared(append(r.Predicted, r.Findings[0], r.Findings[1]),
		[]inspection.Finding{assess[units.Length](t, inspection.StepAssembly, "piston clearance", "cylinder 1", "0.03–0.06 mm", "", "0.061 ±0.002 mm"), r.Findings[0]})
	page, err := r.HTML()
	require.NoError(t, err)
	data, err := r.JSON()
	require.NoError(t, err)
	for name, got := range map[string][]byte{
		"report.txt": r.Text(), "report.md": r.Markdown(), "report.html": page, "report.json": data,
		"built.txt": built.Text(), "empty.txt": (&Report{Engine: "nothing yet"}).Text(), "empty.md": (&Report{Engine: "nothing yet"}).Markdown(),
	} {
		path := "testdata/" + name
		if *update {
			require.NoError(t, os.WriteFile(path, got, 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got), name)
	}
}

// Every form says that undecided is not a pass and who governs, and names the
// missing reading.
func TestSays(t *testing.T) {
	r := sample(t)
	page, err := r.HTML()
	require.NoError(t, err)
	data, err := r.JSON()
	require.NoError(t, err)
	for _, form := range [][]byte{r.Text(), r.Markdown(), page, data} {
		flat := strings.Join(strings.Fields(strings.ReplaceAll(string(form), "&#39;", "'")), " ")
		require.Contains(t, flat, "Undecided is not a pass")
		require.Contains(t, flat, "engine maker's manual governs")
		require.Contains(t, flat, "main 4, front")
		require.Contains(t, flat, "looks a decimal place off")
	}
	var back map[string]any
	require.NoError(t, json.Unmarshal(data, &back))
	require.InDelta(t, 1, back["schema"], 0)
}

// The page is whole, escapes what is written in documents, and shares no id.
func TestPage(t *testing.T) {
	r := sample(t)
	r.Engine = `<script>alert("1")</script>`
	page, err := r.HTML()
	require.NoError(t, err)
	require.NotContains(t, string(page), "<script")
	require.NotContains(t, string(page), "ZgotmplZ")
	require.NotContains(t, string(page), "http://", "it needs nothing else")
	d := xml.NewDecoder(bytes.NewReader(page))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	seen := map[string]bool{}
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if a.Name.Local == "id" {
					require.False(t, seen[a.Value], a.Value)
					seen[a.Value] = true
				}
			}
		}
	}
	require.True(t, seen["finding8-title"], "each finding has its picture")
}

func BenchmarkReport(b *testing.B) {
	r := sample(b)
	for len(r.Findings) < 200 {
		r.Findings = append(r.Findings, r.Findings...)
	}
	r.Findings = r.Findings[:200]
	for name, run := range map[string]func(){
		"text":     func() { r.Text() },
		"markdown": func() { r.Markdown() },
		"json":     func() { _, _ = r.JSON() },
		"page":     func() { _, _ = r.HTML() },
	} {
		b.Run(fmt.Sprintf("lib=tenthou/op=%s/findings=%d", name, len(r.Findings)), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				run()
			}
		})
	}
}
