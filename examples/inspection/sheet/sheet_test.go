package sheet

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

var update = flag.Bool("update", false, "write the golden files anew")

var missing = []inspection.Missing{
	{Step: inspection.StepBores, Path: "cylinders[0].levels[0].across", Measure: "bore", Where: "cylinder 1, top, across the crank", With: "dial bore gauge", Limit: "86.000–86.019 mm"},
	{Step: inspection.StepBores, Path: "cylinders[0].levels[0].along", Measure: "bore", Where: "cylinder 1, top, along the crank"},
	{Step: inspection.StepCrank, Path: "mains[0].front[0]", Measure: "journal <main>", Where: "main 1, front", With: "micrometer", Limit: "max 60 mm"},
}

func TestGolden(t *testing.T) {
	page, err := HTML("training engine", missing)
	require.NoError(t, err)
	none, err := HTML("nothing", nil)
	require.NoError(t, err)
	for name, got := range map[string][]byte{"sheet.txt": Text("training engine", missing), "sheet.html": page, "none.txt": Text("nothing", nil), "none.html": none} {
		if *update {
			require.NoError(t, os.WriteFile("testdata/"+name, got, 0o644))
		}
		want, err := os.ReadFile("testdata/" + name)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got))
	}
	require.Equal(t, len(missing), strings.Count(string(page), `class="box"`), "a box a reading")
	require.NotContains(t, string(page), "<main>\" ")
	require.Contains(t, string(page), "journal &lt;main&gt;")
}
