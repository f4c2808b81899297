package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

const source = `// Package gauge reads.
package gauge

// Good is good.
func Good() {}

// It is good.
func Bad() {}

func None() {}

// Goodness is another word.
func Goodn() {}

func hidden() {}

// A Dial turns. Its Face is round.
type Dial struct {
	Face   int
	Pointer int // turns
	// Case holds it.
	Case int
	Lost, hand int
	Reader
}

// Reader reads.
type Reader interface {
	// Read reads.
	Read()
	Unsaid()
}

type (
	// Sorted by hand.
	Wrong int
	// Right is.
	Right[T any] int
)

// Read reads.
func (d *Dial) Read() {}

// Turns it.
func (Right[T]) Turn() {}

func (h hand) Exported() {}

func (d Dial) Error() string { return "" }

type hand int

// Units.
const (
	MM = 1
	IN = 2
)

const (
	Said = 1 // at the end
	Unsaid = 2
	// Above is above.
	Above = 3
	private = 4
)

// The Limit is far.
const Limit = 1

// Quite away.
var Far = 1

var _ = 1
`

const tests = `package gauge

import "testing"

func BenchmarkGood(b *testing.B) {}

func ExampleGood() {}

func ExampleDial_Read() {}
`

func gauge(t *testing.T, files map[string]string) golist.Package {
	t.Helper()
	p := golist.Package{ImportPath: "example.com/shop/gauge", Name: "gauge", Dir: t.TempDir()}
	p.Module.Path = "example.com/shop"
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(p.Dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(name, "_test.go") {
			p.TestGoFiles = append(p.TestGoFiles, name)
		} else {
			p.GoFiles = append(p.GoFiles, name)
		}
	}
	return p
}

func TestCheck(t *testing.T) {
	c, err := check(gauge(t, map[string]string{"doc.go": source, "gauge_test.go": tests}))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"gauge/doc.go:8: the comment of Bad must begin with its name",
		"gauge/doc.go:10: the comment of None must begin with its name",
		"gauge/doc.go:13: the comment of Goodn must begin with its name",
		"gauge/doc.go:23: field Dial.Lost has no comment",
		"gauge/doc.go:31: method Reader.Unsaid has no comment",
		"gauge/doc.go:36: the comment of type Wrong must begin with its name",
		"gauge/doc.go:45: the comment of Turn must begin with its name",
		"gauge/doc.go:61: Unsaid has no comment, nor has its group",
		"gauge/doc.go:71: the comment of Far must begin with its name",
	}
	if !slices.Equal(c.faults, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(c.faults, "\n"), strings.Join(want, "\n"))
	}
	// 7 functions and methods, 4 types, 6 fields and methods of types, 7 constants and variables.
	if c.names != 4+3+4+6+7 || c.benchmarks != 1 {
		t.Errorf("%d names and %d benchmarks", c.names, c.benchmarks)
	}
}

func TestCheckPackage(t *testing.T) {
	c, err := check(gauge(t, map[string]string{"gauge.go": "package gauge\n"}))
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"gauge: there is no doc.go", "gauge: there is no benchmark"}; !slices.Equal(c.faults, want) {
		t.Errorf("got %q", c.faults)
	}
	c, err = check(gauge(t, map[string]string{"doc.go": "// A gauge.\npackage gauge\n", "gauge_test.go": tests}))
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{`gauge/doc.go:2: the package's comment must begin "Package gauge"`}; !slices.Equal(c.faults, want) {
		t.Errorf("got %q", c.faults)
	}
}

func TestExampleless(t *testing.T) {
	e, err := exampleless(gauge(t, map[string]string{"doc.go": source, "gauge_test.go": tests}))
	if err != nil {
		t.Fatal(err)
	}
	if want := []string{"Bad", "Goodn", "None"}; !slices.Equal(e.functions, want) || e.allFunctions != 4 {
		t.Errorf("functions %q of %d", e.functions, e.allFunctions)
	}
	if want := []string{"Dial.Error", "Right.Turn"}; !slices.Equal(e.methods, want) || e.allMethods != 3 {
		t.Errorf("methods %q of %d", e.methods, e.allMethods)
	}
}
