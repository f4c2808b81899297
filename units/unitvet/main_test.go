package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// TestCommand builds the command and runs it both ways over a small module of
// its own, which imports the stand-in for package units.
func TestCommand(t *testing.T) {
	stub, err := os.ReadFile(filepath.Join("analyzer", "testdata", "src", "github.com", "tenthou", "tenthou", "units", "units.go"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	write(t, filepath.Join(dir, "tenthou", "go.mod"), "module github.com/tenthou/tenthou\n\ngo 1.26\n")
	write(t, filepath.Join(dir, "tenthou", "units", "units.go"), string(stub))
	shop := filepath.Join(dir, "shop")
	write(t, filepath.Join(shop, "go.mod"), `module example.com/shop

go 1.26

require github.com/tenthou/tenthou v0.0.0

replace github.com/tenthou/tenthou => ../tenthou
`)
	write(t, filepath.Join(shop, "good", "good.go"), `package good

import "github.com/tenthou/tenthou/units"

func Shims(n int) units.Length { return units.Length(n) * units.Thou }
`)
	write(t, filepath.Join(shop, "bad", "bad.go"), `package bad

import "github.com/tenthou/tenthou/units"

const drill units.Length = 25 / 64 * units.IN

func Area(a, b units.Length) units.Length { return a * b }

func Far(l units.Length) bool { return l > 5 }
`)
	write(t, filepath.Join(shop, "bad", "bad_test.go"), `package bad

import "github.com/tenthou/tenthou/units"

var ratio = units.Inch / units.Thou
`)

	bin := filepath.Join(dir, "unitvet")
	if out, err := exec.Command("go", "build", "-o", bin, ".").CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	faults := []string{
		"bad.go:5:28: 25 / 64 is 0",
		"bad.go:7:52: a times b",
		"bad.go:9:44: 5 has no unit",
		"bad_test.go:5:13: units.Inch divided by units.Thou",
	}
	for _, command := range [][]string{
		{bin},
		{"go", "vet", "-vettool=" + bin},
	} {
		out, ok := run(t, shop, append(command, "./good")...)
		if !ok || out != "" {
			t.Errorf("%v on good code: passed is %v, printed %q", command, ok, out)
		}
		out, ok = run(t, shop, append(command, "./...")...)
		if ok {
			t.Errorf("%v on bad code: exit status 0", command)
		}
		for _, f := range faults {
			if !strings.Contains(out, f) {
				t.Errorf("%v did not print %q but:\n%s", command, f, out)
			}
		}
	}

	if out, ok := run(t, shop, bin, "-fix", "./bad"); !ok {
		t.Errorf("-fix failed:\n%s", out)
	}
	fixed, err := os.ReadFile(filepath.Join(shop, "bad", "bad.go"))
	if err != nil {
		t.Fatal(err)
	}
	if want := "25.0 / 64 * units.IN"; !strings.Contains(string(fixed), want) {
		t.Errorf("-fix did not write %q but:\n%s", want, fixed)
	}
}

func write(t *testing.T, name, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func run(t *testing.T, dir string, command ...string) (out string, ok bool) {
	t.Helper()
	cmd := exec.Command(command[0], command[1:]...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "GOWORK=off", "GOPROXY=off")
	b, err := cmd.CombinedOutput()
	return string(b), err == nil
}
