package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

// checker is what is found in one package.
type checker struct {
	pkg        golist.Package
	fset       *token.FileSet
	names      int // exported
	benchmarks int
	faults     []string
}

func check(p golist.Package) (*checker, error) {
	c := &checker{pkg: p, fset: token.NewFileSet()}
	hasDoc := false
	for _, path := range p.Sources() {
		f, err := parser.ParseFile(c.fset, path, nil, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		if filepath.Base(path) == "doc.go" {
			hasDoc = true
			if !strings.HasPrefix(f.Doc.Text(), "Package "+p.Name+" ") {
				c.fault(f.Package, "the package's comment must begin %q", "Package "+p.Name)
			}
		}
		for _, d := range f.Decls {
			c.decl(d)
		}
	}
	if !hasDoc {
		c.faults = append(c.faults, p.Below()+": there is no doc.go")
	}
	for _, path := range p.Tests() {
		f, err := parser.ParseFile(c.fset, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			if fn, ok := d.(*ast.FuncDecl); ok && fn.Recv == nil && strings.HasPrefix(fn.Name.Name, "Benchmark") {
				c.benchmarks++
			}
		}
	}
	if c.benchmarks == 0 {
		c.faults = append(c.faults, p.Below()+": there is no benchmark")
	}
	return c, nil
}

func (c *checker) fault(pos token.Pos, format string, args ...any) {
	at := c.fset.Position(pos)
	c.faults = append(c.faults, fmt.Sprintf("%s/%s:%d: %s",
		c.pkg.Below(), filepath.Base(at.Filename), at.Line, fmt.Sprintf(format, args...)))
}

func (c *checker) decl(d ast.Decl) {
	switch d := d.(type) {
	case *ast.FuncDecl:
		if !d.Name.IsExported() || d.Recv != nil && !ast.IsExported(receiver(d)) {
			return
		}
		c.names++
		if d.Recv != nil && d.Name.Name == "Error" && d.Doc == nil {
			return
		}
		if !begins(d.Doc.Text(), false, d.Name.Name) {
			c.fault(d.Pos(), "the comment of %s must begin with its name", d.Name.Name)
		}
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				c.typeSpec(d, s)
			case *ast.ValueSpec:
				c.valueSpec(d, s)
			}
		}
	}
}

func (c *checker) typeSpec(d *ast.GenDecl, s *ast.TypeSpec) {
	if !s.Name.IsExported() {
		return
	}
	c.names++
	doc := s.Doc.Text()
	if doc == "" && !d.Lparen.IsValid() {
		doc = d.Doc.Text()
	}
	if !begins(doc, true, s.Name.Name) {
		c.fault(s.Pos(), "the comment of type %s must begin with its name", s.Name.Name)
	}
	switch t := s.Type.(type) {
	case *ast.StructType:
		c.members(s.Name.Name, "field", doc, t.Fields)
	case *ast.InterfaceType:
		c.members(s.Name.Name, "method", doc, t.Methods)
	}
}

// members checks fields or methods; an embedded one has no name, and is
// documented where it is declared.
func (c *checker) members(typeName, kind, typeDoc string, list *ast.FieldList) {
	for _, f := range list.List {
		for _, name := range f.Names {
			if !name.IsExported() {
				continue
			}
			c.names++
			if f.Doc.Text() == "" && f.Comment.Text() == "" && !mentions(typeDoc, name.Name) {
				c.fault(name.Pos(), "%s %s.%s has no comment", kind, typeName, name.Name)
			}
		}
	}
}

func (c *checker) valueSpec(d *ast.GenDecl, s *ast.ValueSpec) {
	var names []string
	for _, name := range s.Names {
		if name.IsExported() {
			names = append(names, name.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	c.names += len(names)
	if d.Lparen.IsValid() {
		if d.Doc.Text() == "" && s.Doc.Text() == "" && s.Comment.Text() == "" {
			c.fault(s.Pos(), "%s has no comment, nor has its group", names[0])
		}
		return
	}
	if !begins(d.Doc.Text(), true, names...) {
		c.fault(s.Pos(), "the comment of %s must begin with its name", names[0])
	}
}

// begins reports whether the comment begins with one of the names, after an
// article where that is allowed.
func begins(doc string, article bool, names ...string) bool {
	first, rest, _ := strings.Cut(strings.TrimSpace(doc), " ")
	if article && (first == "A" || first == "An" || first == "The") {
		first, _, _ = strings.Cut(rest, " ")
	}
	for _, name := range names {
		after, ok := strings.CutPrefix(first, name)
		if ok && (after == "" || !wordStart.MatchString(after)) {
			return true
		}
	}
	return false
}

var wordStart = regexp.MustCompile(`^[\pL\pN_]`)

func mentions(doc, name string) bool {
	return regexp.MustCompile(`\b` + regexp.QuoteMeta(name) + `\b`).MatchString(doc)
}

// receiver is the name of the type that the method belongs to.
func receiver(d *ast.FuncDecl) string {
	t := d.Recv.List[0].Type
	for {
		switch x := t.(type) {
		case *ast.StarExpr:
			t = x.X
		case *ast.ParenExpr:
			t = x.X
		case *ast.IndexExpr:
			t = x.X
		case *ast.IndexListExpr:
			t = x.X
		case *ast.Ident:
			return x.Name
		default:
			return ""
		}
	}
}
