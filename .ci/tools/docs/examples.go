package main

import (
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"slices"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

// examples counts a package's exported functions and methods, and names those
// that have no Example.
type examples struct {
	allFunctions, allMethods int
	functions, methods       []string
}

func exampleless(p golist.Package) (examples, error) {
	var e examples
	fset := token.NewFileSet()
	var files []*ast.File
	for _, path := range slices.Concat(p.Sources(), p.Tests()) {
		f, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
		if err != nil {
			return e, err
		}
		files = append(files, f)
	}
	pkg, err := doc.NewFromFiles(fset, files, p.ImportPath)
	if err != nil {
		return e, err
	}
	function := func(f *doc.Func) {
		e.allFunctions++
		if len(f.Examples) == 0 {
			e.functions = append(e.functions, f.Name)
		}
	}
	for _, f := range pkg.Funcs {
		function(f)
	}
	for _, t := range pkg.Types {
		for _, f := range t.Funcs {
			function(f)
		}
		for _, m := range t.Methods {
			e.allMethods++
			if len(m.Examples) == 0 {
				e.methods = append(e.methods, t.Name+"."+m.Name)
			}
		}
	}
	slices.Sort(e.functions)
	slices.Sort(e.methods)
	return e, nil
}
