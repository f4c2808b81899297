// Coverage runs the tests of the module in the current directory and fails when
// a library package's own tests execute less of its statements than they must.
// Internal packages are in the table too, for information.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path"
	"slices"
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

func main() {
	least := flag.Float64("least", 95, "the least share of statements, in per cent")
	unfinished := flag.String("unfinished", "", "packages not held to it yet, with commas between")
	flag.Parse()
	if err := run(*least, *unfinished); err != nil {
		fmt.Fprintln(os.Stderr, "coverage:", err)
		os.Exit(1)
	}
}

func run(least float64, unfinished string) error {
	pkgs, err := golist.Load("./...")
	if err != nil {
		return err
	}
	pkgs = slices.DeleteFunc(pkgs, func(p golist.Package) bool { return p.Name == "main" })
	profile, err := profile(pkgs)
	if err != nil {
		return err
	}
	counts, err := count(profile)
	if err != nil {
		return err
	}

	library := golist.Library(pkgs, unfinished)
	var low []string
	for _, p := range pkgs {
		c := counts[p.ImportPath]
		must := slices.ContainsFunc(library, func(l golist.Package) bool { return l.ImportPath == p.ImportPath })
		note := "not gated"
		if must {
			note = "ok"
			if c.total > 0 && c.percent() < least {
				note = "TOO LOW"
				low = append(low, p.Below())
			}
		}
		fmt.Printf("%-28s %6d of %6d statements  %6.2f %%  %s\n", p.Below(), c.covered, c.total, c.percent(), note)
	}
	if len(library) == 0 {
		return fmt.Errorf("there is no library package")
	}
	if len(low) > 0 {
		return fmt.Errorf("less than %g %% of the statements of %s", least, strings.Join(low, ", "))
	}
	return nil
}

// profile is the coverage profile of each package under its own tests.
func profile(pkgs []golist.Package) (string, error) {
	f, err := os.CreateTemp("", "coverage")
	if err != nil {
		return "", err
	}
	defer os.Remove(f.Name())
	defer f.Close()
	args := []string{"test", "-count=1", "-coverprofile=" + f.Name()}
	for _, p := range pkgs {
		args = append(args, p.ImportPath)
	}
	if out, err := exec.Command("go", args...).CombinedOutput(); err != nil {
		return "", fmt.Errorf("go test: %w\n%s", err, out)
	}
	b, err := os.ReadFile(f.Name())
	return string(b), err
}

type statements struct{ covered, total int }

func (s statements) percent() float64 {
	if s.total == 0 {
		return 100
	}
	return 100 * float64(s.covered) / float64(s.total)
}

// count adds up a profile by package. Its lines read
//
//	path/of/package/file.go:7.20,9.2 3 1
//
// for a block of 3 statements that was executed.
func count(profile string) (map[string]statements, error) {
	counts := make(map[string]statements)
	for s := bufio.NewScanner(strings.NewReader(profile)); s.Scan(); {
		line := s.Text()
		if strings.HasPrefix(line, "mode:") {
			continue
		}
		file, rest, ok := strings.Cut(line, ".go:")
		fields := strings.Fields(rest)
		if !ok || len(fields) != 3 {
			return nil, fmt.Errorf("profile line %q", line)
		}
		n, err := strconv.Atoi(fields[1])
		if err != nil {
			return nil, fmt.Errorf("profile line %q: %w", line, err)
		}
		c := counts[path.Dir(file)]
		c.total += n
		if fields[2] != "0" {
			c.covered += n
		}
		counts[path.Dir(file)] = c
	}
	return counts, nil
}
