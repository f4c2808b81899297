package cookbook

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Module is the path that library packages begin with.
const Module = "github.com/tenthou/tenthou/"

// users are whom a recipe can be for.
var users = []string{"shop software", "instructors", "hobbyists"}

// A Recipe is what its files say of it.
type Recipe struct {
	Name     string
	Question string              // "Which oversize cleans up all bores of a block?"
	For      []string            // of users, in their order
	Uses     map[string][]string // by library package, without Module: exported names, sorted
	Own      bool                // a module of its own
	Lines    int                 // of main.go
}

// Recipes reads all recipes below a folder: those of its folders that hold a
// main.go. What their tests use doesn't count.
func Recipes(root fs.FS) ([]Recipe, error) {
	folders, err := fs.ReadDir(root, ".")
	if err != nil {
		return nil, err
	}
	var all []Recipe
	for _, f := range folders {
		if _, err := fs.Stat(root, path.Join(f.Name(), "main.go")); err != nil {
			continue
		}
		r, err := read(root, f.Name())
		if err != nil {
			return nil, fmt.Errorf("recipe %s: %w", f.Name(), err)
		}
		all = append(all, r)
	}
	return all, nil
}

func read(root fs.FS, name string) (Recipe, error) {
	r := Recipe{Name: name, Uses: map[string][]string{}}
	_, err := fs.Stat(root, path.Join(name, "go.mod"))
	r.Own = err == nil
	err = fs.WalkDir(root, name, func(file string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "testdata":
			return fs.SkipDir
		case d.IsDir(), path.Ext(file) != ".go", strings.HasSuffix(file, "_test.go"):
			return nil
		}
		source, err := fs.ReadFile(root, file)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, source, parser.ParseComments)
		if err != nil {
			return err
		}
		if file == path.Join(name, "main.go") {
			r.Lines = strings.Count(string(source), "\n")
			if err := r.comment(parsed.Doc.Text()); err != nil {
				return err
			}
		}
		r.uses(parsed)
		return nil
	})
	for p, names := range r.Uses {
		slices.Sort(names)
		r.Uses[p] = slices.Compact(names)
	}
	return r, err
}

// comment takes the doc comment apart.
func (r *Recipe) comment(doc string) error {
	paragraphs := strings.Split(strings.TrimSpace(doc), "\n\n")
	first, ok := strings.CutPrefix(oneLine(paragraphs[0]), title(r.Name)+" answers: ")
	if !ok || !strings.HasSuffix(first, "?") {
		return fmt.Errorf("the doc comment doesn't begin %q, or doesn't end its first paragraph with a question mark", title(r.Name)+" answers: …")
	}
	r.Question = title(first)
	found := map[string]string{}
	for _, p := range paragraphs[1:] {
		if word, rest, ok := strings.Cut(oneLine(p), ": "); ok {
			found[word] = rest
		}
	}
	for _, want := range []string{"Method", "Source", "For", "Caution"} {
		if found[want] == "" {
			return fmt.Errorf("the doc comment has no paragraph that begins %q", want+":")
		}
	}
	named := strings.Split(strings.TrimSuffix(found["For"], "."), ", ")
	for _, u := range users {
		if slices.Contains(named, u) {
			r.For = append(r.For, u)
		}
	}
	if len(r.For) != len(named) {
		return fmt.Errorf("the doc comment is For: %q; it can be for %s", found["For"], strings.Join(users, ", "))
	}
	return nil
}

// uses notes each exported name of a library package that a file selects.
func (r *Recipe) uses(f *ast.File) {
	packages := map[string]string{}
	for _, i := range f.Imports {
		p, err := strconv.Unquote(i.Path.Value)
		p, ok := strings.CutPrefix(p, Module)
		if err != nil || !ok || strings.HasPrefix(p, "internal/") || strings.HasPrefix(p, "examples/") {
			continue
		}
		name := path.Base(p)
		if i.Name != nil {
			name = i.Name.Name
		}
		packages[name] = p
	}
	ast.Inspect(f, func(n ast.Node) bool {
		s, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		x, ok := s.X.(*ast.Ident)
		if p := packages[ident(x, ok)]; p != "" && x.Obj == nil && ast.IsExported(s.Sel.Name) {
			r.Uses[p] = append(r.Uses[p], s.Sel.Name)
		}
		return true
	})
}

func ident(x *ast.Ident, ok bool) string {
	if !ok {
		return ""
	}
	return x.Name
}

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// title begins a text with a capital.
func title(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(first)) + s[size:]
}
