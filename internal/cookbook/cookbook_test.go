package cookbook

import (
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

const main = `// Gap answers: is the gap
// right?
//
// Method: by hand.
//
// Source: geometry.
//
// For: instructors, hobbyists.
//
// Caution: eyes.
package main

import (
	"fmt"

	own "github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance/feeler"
)

func main() {
	fmt.Println(own.RingGap(1), own.RingGap(2), feeler.Bracket(), recipe.Fail)
	var feeler struct{ Blade int }
	_ = feeler.Blade
}
`

func tree(main string) fstest.MapFS {
	return fstest.MapFS{
		"gap/main.go":        {Data: []byte(main)},
		"gap/page.go":        {Data: []byte("package main\n\nimport \"github.com/tenthou/tenthou/crank\"\n\nvar x = crank.Journal{}\n")},
		"gap/page_test.go":   {Data: []byte("package main\n\nimport \"github.com/tenthou/tenthou/cylinder\"\n\nvar y = cylinder.Bore{}\n")},
		"gap/testdata/no.go": {Data: []byte("nothing that parses")},
		"gap/readings.json":  {Data: []byte("{}")},
		"notes/README.md":    {Data: []byte("no recipe")},
		"sqlite/go.mod":      {Data: []byte("module x")},
		"sqlite/main.go":     {Data: []byte(strings.ReplaceAll(strings.ReplaceAll(main, "Gap answers", "Sqlite answers"), "piston", "cylinder"))},
	}
}

func TestRecipes(t *testing.T) {
	all, err := Recipes(tree(main))
	require.NoError(t, err)
	require.Len(t, all, 2)
	r := all[0]
	require.Equal(t, "Is the gap right?", r.Question)
	require.Equal(t, []string{"instructors", "hobbyists"}, r.For)
	require.Equal(t, map[string][]string{"piston": {"RingGap"}, "tolerance/feeler": {"Bracket"}, "crank": {"Journal"}}, r.Uses)
	require.Equal(t, strings.Count(main, "\n"), r.Lines)
	require.Equal(t, "Several parts", r.part())
	require.True(t, all[1].Own)
	require.Equal(t, "Block, bores and faces", all[1].part())
	require.Equal(t, "Tolerances, gauges and programs", Recipe{}.part())

	for old, new := range map[string]string{
		"Gap answers:": "Gap says:", "right?": "right.", "Method:": "How:", "For: instructors": "For: dealers", "package main": "package",
	} {
		_, err := Recipes(tree(strings.Replace(main, old, new, 1)))
		require.ErrorContains(t, err, "recipe gap", old)
	}
}

func TestIndex(t *testing.T) {
	all, err := Recipes(tree(main))
	require.NoError(t, err)
	library := fstest.MapFS{
		"piston/gap.go":           {Data: []byte("package piston\n\nfunc RingGap(x int) int { return x }\n\nfunc Other() {}\n\nfunc hidden() {}\n\ntype T int\n\nfunc (T) Method() {}\n")},
		"piston/gap_test.go":      {Data: []byte("package piston\n\nfunc TestX() {}\n")},
		"piston/testdata/x.go":    {Data: []byte("broken")},
		"internal/words/words.go": {Data: []byte("package words\n\nfunc Of() {}\n")},
		"examples/gap/main.go":    {Data: []byte("broken")},
		".ci/tools/x.go":          {Data: []byte("broken")},
		"units/unitvet/go.mod":    {Data: []byte("module x")},
		"units/unitvet/x.go":      {Data: []byte("broken")},
		"piston/gen/main.go":      {Data: []byte("package main\n\nfunc Run() {}\n")},
	}
	functions, err := Functions(library)
	require.NoError(t, err)
	require.Equal(t, map[string][]string{"piston": {"Other", "RingGap"}}, functions)
	page := Index(all, functions)
	for _, line := range []string{
		"| Is the gap right? | [gap](gap) | Several parts |",
		"[sqlite](sqlite) (a module of its own: run it from its folder)",
		"- **Hobbyists**: [gap](gap), [sqlite](sqlite)",
		"- **Shop software**: \n",
		"- `RingGap`: [gap](gap)",
		"1 more have an Example",
	} {
		require.Contains(t, page, line)
	}
	library["piston/gap.go"].Data = []byte("broken")
	_, err = Functions(library)
	require.Error(t, err)
}
