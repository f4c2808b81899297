package main

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"html/template"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/tenthou/tenthou/examples/benchpage/calc"
	"github.com/tenthou/tenthou/internal/svg"
)

//go:embed page.html
var pageHTML string

//go:embed page.css
var pageCSS []byte

//go:embed page.js
var pageJS []byte

// shown is a calculator with the answer to its example, so that the page says
// something before, or without, the library.
type shown struct {
	calc.Calculator
	Example calc.Answer
	Drawing template.HTML
}

// index is the page.
func index() ([]byte, error) {
	t, err := template.New("page").Parse(pageHTML)
	if err != nil {
		return nil, err
	}
	var all []shown
	for _, c := range calc.All() {
		a := c.Work(nil)
		all = append(all, shown{c, a, template.HTML(a.Picture)}) // our own, its texts escaped
	}
	var b bytes.Buffer
	err = t.Execute(&b, all)
	return b.Bytes(), err
}

// write makes the folder whole beside its place and moves it there; what was
// there before is not touched.
func write(folder string) (err error) {
	if _, err := os.Stat(folder); err == nil {
		return fmt.Errorf("%s is there already: name a new folder", folder)
	}
	if err := os.MkdirAll(filepath.Dir(folder), 0o755); err != nil {
		return err
	}
	making, err := os.MkdirTemp(filepath.Dir(folder), ".benchpage-")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(making))
		}
	}()
	page, err := index()
	if err != nil {
		return err
	}
	goroot, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("the Go tools are needed: %w", err)
	}
	loader, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(goroot)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	for name, data := range map[string][]byte{"index.html": page, "page.css": append(pageCSS, svg.InlineStyle()...), "page.js": pageJS, "wasm_exec.js": loader} {
		if err := os.WriteFile(filepath.Join(making, name), data, 0o644); err != nil {
			return err
		}
	}
	build := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", filepath.Join(making, "tenthou.wasm"), "github.com/tenthou/tenthou/examples/benchpage/wasm")
	build.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("%w\n%s", err, said)
	}
	if err := os.Chmod(making, 0o755); err != nil {
		return err
	}
	return os.Rename(making, folder)
}
