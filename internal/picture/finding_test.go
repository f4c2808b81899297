package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

var update = flag.Bool("update", false, "write the pictures anew")

func finding(t *testing.T, fresh, wear string, stations ...string) *tolerance.Finding {
	t.Helper()
	var spec tolerance.Spec
	if fresh != "" {
		spec.New = tolerance.MustParseBand(fresh)
	}
	if wear != "" {
		spec.Wear = tolerance.MustParseBand(wear)
	}
	var all []tolerance.Bracket
	for _, s := range stations {
		b, err := tolerance.ParseBracket(s)
		require.NoError(t, err)
		all = append(all, b)
	}
	f, err := tolerance.Assess("ring side clearance", "piston 2, top groove", spec, all...)
	require.NoError(t, err)
	return &f
}

// The golden pictures are for layout; they were looked at when they were made.
func TestFinding(t *testing.T) {
	for name, f := range map[string]*tolerance.Finding{
		"undecided": finding(t, "0.03–0.07 mm", "max 0.15 mm", "[0.0635 mm, 0.0762 mm)"),
		"stations":  finding(t, "2.3614–2.3622 in", "min 2.3602 in", "2.3612 ±.0001 in", "2.3609 ±.0001 in"),
		"noend":     finding(t, "0.03–0.07 mm", "", "[0.0762 mm, ∞)"),
		"exact":     finding(t, "max 0.07 mm", "", "0.05 mm"),
		"nolimits":  finding(t, "", "", "0.05 mm"),
		"nought":    finding(t, "", "", "0 mm"),
		"narrow":    finding(t, "0.03–0.07 mm", "max 5 mm", "[0.0501 mm, 0.0502 mm]"),
	} {
		t.Run(name, func(t *testing.T) {
			got := Finding(f, units.InMillimetres, 3).Bytes()
			whole(t, got)
			path := "testdata/" + name + ".svg"
			if *update {
				require.NoError(t, os.WriteFile(path, got, 0o644))
			}
			want, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
			require.Contains(t, string(got), "piston 2, top groove")
		})
	}
	inch := Finding(finding(t, "0.03–0.07 mm", "", ".002 in"), units.InInches, 4).Bytes()
	whole(t, inch)
	require.Contains(t, string(inch), ">0.001181<", "a limit without end in inches gets two places more")
	empty := Finding(&tolerance.Finding{Measure: "end float"}, units.InMillimetres, 3).Bytes()
	whole(t, empty)
	require.Contains(t, string(empty), "nothing to draw")
}

// An open end lies to the right of a closed one that is less, and both limits
// where they belong between them.
func TestFinding_places(t *testing.T) {
	f := finding(t, "0.03–0.07 mm", "max 0.15 mm", "[0.0635 mm, 0.0762 mm)")
	s, ok := scaleOf(rowsOf(f, Names{}))
	require.True(t, ok)
	at := func(q units.Length) float64 { return place(s, q, tolerance.Closed, 0) }
	last := left
	for _, um := range []int64{30, 63, 70, 76, 150} {
		x := at(units.Length(um) * units.Micrometre)
		require.Greater(t, x, last)
		last = x
	}
	require.Less(t, last, right)
}

func whole(t *testing.T, picture []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(picture))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
	}
	require.NotContains(t, string(picture), "NaN")
	require.NotContains(t, strings.ToLower(string(picture)), "inf\"")
}

func BenchmarkFinding(b *testing.B) {
	spec := tolerance.Spec{New: tolerance.MustParseBand("0.03–0.07 mm"), Wear: tolerance.MustParseBand("max 0.15 mm")}
	read, _ := tolerance.ParseBracket("[0.0635 mm, 0.0762 mm)")
	f, _ := tolerance.Assess("ring side clearance", "piston 2, top groove", spec, read)
	b.Run("lib=tenthou/op=bytes", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_ = Finding(&f, units.InMillimetres, 3).Bytes()
		}
	})
}
