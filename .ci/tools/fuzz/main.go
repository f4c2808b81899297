// Fuzz finds every fuzz target of the module in the current directory and runs
// each for an equal share of the time given, two workers at a time: at least a
// second, and at most 20 seconds where there are few.
package main

import (
	"context"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/tenthou/tenthou/ci/tools/internal/golist"
)

func main() {
	budget := flag.Duration("budget", 3*time.Minute, "the time for all targets together")
	flag.Parse()
	if err := run(*budget); err != nil {
		fmt.Fprintln(os.Stderr, "fuzz:", err)
		os.Exit(1)
	}
}

// suite is the targets of one package.
type suite struct {
	pkg     golist.Package
	targets []string
}

func run(budget time.Duration) error {
	pkgs, err := golist.Load("./...")
	if err != nil {
		return err
	}
	var suites []suite
	n := 0
	for _, p := range pkgs {
		names, err := targets(p.Tests())
		if err != nil {
			return err
		}
		if len(names) > 0 {
			suites = append(suites, suite{p, names})
			n += len(names)
		}
	}
	if n == 0 {
		return fmt.Errorf("there is no fuzz target")
	}
	share := min(max(budget/time.Duration(n), time.Second), 20*time.Second)
	fmt.Printf("%d targets in %d packages, %s each\n", n, len(suites), share.Round(time.Millisecond))

	temp, err := os.MkdirTemp("", "fuzz")
	if err != nil {
		return err
	}
	defer os.RemoveAll(temp)
	for _, s := range suites {
		if err := s.run(temp, share); err != nil {
			return err
		}
	}
	return nil
}

// targets are the names of the fuzz targets in the files.
func targets(files []string) ([]string, error) {
	var names []string
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if ok && fn.Recv == nil && strings.HasPrefix(fn.Name.Name, "Fuzz") {
				names = append(names, fn.Name.Name)
			}
		}
	}
	return names, nil
}

// run builds the package's tests once, with the fuzzer's instrumentation.
func (s suite) run(temp string, share time.Duration) error {
	bin := filepath.Join(temp, "fuzz.test")
	build := exec.Command("go", "test", "-c", "-fuzz=.", "-o", bin, s.pkg.ImportPath)
	if out, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", s.pkg.Below(), err, out)
	}
	for _, name := range s.targets {
		out, err := s.fuzz(bin, temp, name, share)
		if err != nil && outOfTime(out) {
			fmt.Printf("%s %s: a worker was late at the end, once more\n", s.pkg.Below(), name)
			out, err = s.fuzz(bin, temp, name, share)
		}
		if err != nil {
			return fmt.Errorf("%s %s: %w\n%s%s", s.pkg.Below(), name, err, out, failingInput(s.pkg.Dir, out))
		}
		fmt.Printf("%s %s: %s\n", s.pkg.Below(), name, lastCount(out))
	}
	return nil
}

// fuzz runs one target for its share of the time.
func (s suite) fuzz(bin, temp, name string, share time.Duration) (string, error) {
	ctx, cancel := context.WithTimeout(context.Background(), share+2*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, bin, "-test.run=^$", "-test.fuzz=^"+name+"$",
		"-test.fuzztime="+share.String(), "-test.parallel=2",
		"-test.fuzzcachedir="+filepath.Join(temp, "cache", s.pkg.Below(), name))
	cmd.Dir = s.pkg.Dir
	out, err := cmd.CombinedOutput()
	return string(out), err
}

// outOfTime reports whether a run failed for nothing but that a worker was
// still busy when the time was up, as the fuzzer does now and then on a loaded
// machine. A target that fails leaves a failing input, or says something else.
func outOfTime(out string) bool {
	_, failure, ok := strings.Cut(out, "--- FAIL: ")
	if !ok {
		return false
	}
	_, failure, _ = strings.Cut(failure, "\n")
	failure, _, _ = strings.Cut(failure, "\nFAIL")
	return strings.TrimSpace(failure) == "context deadline exceeded"
}

// failingInput is the text of the input that failed, since the file that the
// fuzzer leaves it in may not outlive the run.
func failingInput(dir, out string) string {
	_, rest, ok := strings.Cut(out, "Failing input written to ")
	if !ok {
		return ""
	}
	name, _, _ := strings.Cut(rest, "\n")
	text, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(strings.TrimSpace(name))))
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// lastCount is the fuzzer's last line of progress, without the time.
func lastCount(out string) string {
	lines := strings.Split(out, "\n")
	for i := len(lines) - 1; i >= 0; i-- {
		if _, s, ok := strings.Cut(lines[i], "execs: "); ok {
			return "execs: " + s
		}
	}
	return "ran"
}
