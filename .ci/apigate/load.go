package main

import (
	"fmt"
	"go/types"
	"path"
	"strings"

	"golang.org/x/tools/go/packages"
)

// module is what others can import of a module.
type module struct {
	path     string
	packages map[string]*types.Package // by the path below the module
}

// load reads the module in dir.
func load(dir string) (*module, error) {
	pkgs, err := packages.Load(&packages.Config{
		Dir:  dir,
		Mode: packages.NeedName | packages.NeedModule | packages.NeedTypes | packages.NeedImports | packages.NeedDeps,
	}, "./...")
	if err != nil {
		return nil, fmt.Errorf("loading %s: %w", dir, err)
	}
	m := &module{packages: make(map[string]*types.Package)}
	for _, p := range pkgs {
		if len(p.Errors) > 0 {
			return nil, fmt.Errorf("loading %s in %s: %w", p.PkgPath, dir, p.Errors[0])
		}
		if p.Module == nil {
			return nil, fmt.Errorf("loading %s in %s: it is in no module", p.PkgPath, dir)
		}
		m.path = p.Module.Path
		if name, ok := public(p, m.path); ok {
			m.packages[name] = p.Types
		}
	}
	if m.path == "" {
		return nil, fmt.Errorf("loading %s: it has no packages", dir)
	}
	return m, nil
}

// public is the package's name in a changelog, and whether others can import it.
func public(p *packages.Package, modulePath string) (string, bool) {
	if p.Name == "main" {
		return "", false
	}
	below := strings.TrimPrefix(strings.TrimPrefix(p.PkgPath, modulePath), "/")
	for i, elem := range strings.Split(below, "/") {
		if elem == "internal" || i == 0 && elem == "examples" {
			return "", false
		}
	}
	if below == "" {
		return path.Base(modulePath), true
	}
	return below, true
}
