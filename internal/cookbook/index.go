package cookbook

import (
	"cmp"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
)

// parts are the packages that are a part of an engine, with the words for it.
var parts = []struct{ pkg, words string }{
	{"cylinder", "Block, bores and faces"}, {"piston", "Pistons, rings and pins"}, {"crank", "Crankshaft, bearings and rods"}, {"valvetrain", "Cylinder head and valve drive"},
}

// part is what a recipe is about, by what it uses.
func (r Recipe) part() string {
	var of []string
	for _, p := range parts {
		if len(r.Uses[p.pkg]) > 0 {
			of = append(of, p.words)
		}
	}
	switch {
	case len(of) == 1:
		return of[0]
	case len(of) > 1:
		return "Several parts"
	}
	return "Tolerances, gauges and programs"
}

// Index is the file examples/README.md, made from the recipes and from the
// library's exported functions, by package as Functions lists them.
func Index(recipes []Recipe, functions map[string][]string) string {
	var b strings.Builder
	fmt.Fprintf(&b, `# The cookbook

%d recipes. One folder answers one question; each is a program that runs (`+"`go run ./examples/NAME`, `-h`"+` for its help) and is tested against what it printed when it was last read. This page is made from the recipes' own comments and code by a test, which fails when it falls behind (`+"`go test ./examples -update`"+` makes it anew).

## By question

| question | recipe | part |
|---|---|---|
`, len(recipes))
	for _, r := range recipes {
		name := r.link()
		if r.Own {
			name += " (a module of its own: run it from its folder)"
		}
		fmt.Fprintf(&b, "| %s | %s | %s |\n", r.Question, name, r.part())
	}
	b.WriteString("\n## By user\n\n")
	for _, u := range users {
		fmt.Fprintf(&b, "- **%s**: %s\n", title(u), links(recipes, func(r Recipe) bool { return slices.Contains(r.For, u) }))
	}
	b.WriteString("\n## By part\n\n")
	for _, words := range slices.Concat([]string{"Several parts"}, partWords(), []string{"Tolerances, gauges and programs"}) {
		if l := links(recipes, func(r Recipe) bool { return r.part() == words }); l != "" {
			fmt.Fprintf(&b, "- **%s**: %s\n", words, l)
		}
	}
	b.WriteString("\n## By function\n\nEvery exported function that a recipe calls, and the recipes that call it. Methods and types are in the packages' own documentation.\n")
	for _, pkg := range slices.Sorted(maps.Keys(functions)) {
		functionsOf(&b, pkg, functions[pkg], recipes)
	}
	return b.String()
}

func functionsOf(b *strings.Builder, pkg string, functions []string, recipes []Recipe) {
	without := 0
	var lines []string
	for _, f := range functions {
		l := links(recipes, func(r Recipe) bool { return slices.Contains(r.Uses[pkg], f) })
		if l == "" {
			without++
			continue
		}
		lines = append(lines, fmt.Sprintf("- `%s`: %s\n", f, l))
	}
	fmt.Fprintf(b, "\n### %s\n\n", pkg)
	b.WriteString(strings.Join(lines, ""))
	if without > 0 {
		if len(lines) > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(b, "%d more have an Example in the package's documentation, and no recipe.\n", without)
	}
}

func partWords() (words []string) {
	for _, p := range parts {
		words = append(words, p.words)
	}
	return words
}

func (r Recipe) link() string { return "[" + r.Name + "](" + r.Name + ")" }

func links(recipes []Recipe, is func(Recipe) bool) string {
	var l []string
	for _, r := range recipes {
		if is(r) {
			l = append(l, r.link())
		}
	}
	return strings.Join(l, ", ")
}

// Functions are the exported functions of the library packages below a folder,
// by package, sorted. Commands, internal packages, recipes and modules of their
// own are left out.
func Functions(root fs.FS) (map[string][]string, error) {
	all := map[string][]string{}
	err := fs.WalkDir(root, ".", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			_, own := fs.Stat(root, file+"/go.mod")
			if hidden := file != "." && strings.HasPrefix(d.Name(), "."); hidden || slices.Contains([]string{"testdata", "internal", "examples"}, d.Name()) || file != "." && own == nil {
				return fs.SkipDir
			}
			return nil
		}
		return functionsIn(root, file, all)
	})
	for p := range all {
		slices.SortFunc(all[p], cmp.Compare)
	}
	return all, err
}
