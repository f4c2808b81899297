package cookbook

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"strings"
)

// functionsIn adds the exported functions of one file.
func functionsIn(root fs.FS, file string, all map[string][]string) error {
	if path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
		return nil
	}
	source, err := fs.ReadFile(root, file)
	if err != nil {
		return err
	}
	parsed, err := parser.ParseFile(token.NewFileSet(), file, source, parser.SkipObjectResolution)
	if err != nil || parsed.Name.Name == "main" {
		return err
	}
	pkg := path.Dir(file)
	for _, d := range parsed.Decls {
		if f, ok := d.(*ast.FuncDecl); ok && f.Recv == nil && f.Name.IsExported() {
			all[pkg] = append(all[pkg], f.Name.Name)
		}
	}
	return nil
}
