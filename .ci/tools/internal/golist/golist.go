// Package golist lists the packages of the module in the current directory.
package golist

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// Package is what these tools need of a package.
type Package struct {
	ImportPath   string
	Name         string
	Dir          string
	GoFiles      []string
	TestGoFiles  []string
	XTestGoFiles []string
	Module       struct{ Path string }
}

// Load lists the packages that match the patterns.
func Load(patterns ...string) ([]Package, error) {
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Name,Dir,GoFiles,TestGoFiles,XTestGoFiles,Module"}, patterns...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w", err)
	}
	var pkgs []Package
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p Package
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return pkgs, nil
		case err != nil:
			return nil, fmt.Errorf("go list: %w", err)
		}
		pkgs = append(pkgs, p)
	}
}

// Library keeps the packages that users import: no commands, nothing internal,
// no examples, and none of the unfinished, a list with commas between.
func Library(pkgs []Package, unfinished string) []Package {
	except := strings.Split(unfinished, ",")
	return slices.DeleteFunc(slices.Clone(pkgs), func(p Package) bool {
		if slices.Contains(except, p.Below()) {
			return true
		}
		elems := strings.Split(p.Below(), "/")
		return p.Name == "main" || slices.Contains(elems, "internal") || elems[0] == "examples"
	})
}

// Below is the package's path below its module: tolerance/feeler.
func (p Package) Below() string {
	if p.ImportPath == p.Module.Path {
		return "."
	}
	return strings.TrimPrefix(p.ImportPath, p.Module.Path+"/")
}

// Tests are the paths of the package's test files.
func (p Package) Tests() []string {
	var paths []string
	for _, name := range slices.Concat(p.TestGoFiles, p.XTestGoFiles) {
		paths = append(paths, filepath.Join(p.Dir, name))
	}
	return paths
}

// Sources are the paths of its other Go files.
func (p Package) Sources() []string {
	var paths []string
	for _, name := range p.GoFiles {
		paths = append(paths, filepath.Join(p.Dir, name))
	}
	return paths
}
