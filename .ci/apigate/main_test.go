package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Each test makes a repository of its own: a module with a package gauge, whose
// functions take a type of package size.

const (
	goMod = "module example.com/shop\n\ngo 1.26\n"
	size  = "package size\n\ntype Length int64\n"
	gauge = "package gauge\n\nimport \"example.com/shop/size\"\n\nfunc Read(l size.Length) size.Length { return l }\n"
)

var released = map[string]string{
	"go.mod":                 goMod,
	"size/size.go":           size,
	"gauge/gauge.go":         gauge,
	"gauge/internal/x/x.go":  "package x\n\nfunc Gone() {}\n",
	"examples/demo/demo.go":  "package demo\n\nfunc Gone() {}\n",
	"cmd/shop/main.go":       "package main\n\nfunc Gone() {}\n\nfunc main() {}\n",
	"gauge/gauge_test.go":    "package gauge\n\nfunc Helper() {}\n",
	"tools/go.mod":           "module example.com/shop/tools\n\ngo 1.26\n",
	"tools/tools.go":         "package tools\n\nfunc Gone() {}\n",
	"internal/deep/gone.go":  "package deep\n\nfunc Gone() {}\n",
	"gauge/testdata/gone.go": "package broken\n",
}

func TestGate(t *testing.T) {
	tests := []struct {
		name   string
		tags   []string // put on the first commit, v0.1.0 if there are none
		change map[string]string
		print  []string
		fail   string
	}{
		{
			name:  "unchanged",
			print: []string{"compared with v0.1.0\n"},
		},
		{
			name:   "compatible",
			change: map[string]string{"gauge/gauge.go": gauge + "\nfunc Zero() {}\n", "depth/depth.go": "package depth\n"},
			print:  []string{"gauge: compatible: Zero: added\n", "depth: compatible: the package is new\n"},
		},
		{
			name:   "incompatible",
			change: map[string]string{"gauge/gauge.go": strings.Replace(gauge, "(l size.Length)", "(l, m size.Length)", 1)},
			print: []string{"gauge: incompatible: Read: changed from func(example.com/shop/size.Length) example.com/shop/size.Length " +
				"to func(example.com/shop/size.Length, example.com/shop/size.Length) example.com/shop/size.Length\n"},
			fail: `incompatible with v0.1.0, and CHANGELOG.md has no line "- Incompatible: package: what changed" in its section Unreleased for: ["gauge"]`,
		},
		{
			name:   "function gone",
			change: map[string]string{"gauge/gauge.go": "package gauge\n"},
			print:  []string{"gauge: incompatible: Read: removed\n"},
			fail:   `["gauge"]`,
		},
		{
			name:   "package gone",
			change: map[string]string{"gauge/gauge.go": "", "gauge/gauge_test.go": ""},
			print:  []string{"gauge: incompatible: the package is gone\n"},
			fail:   `["gauge"]`,
		},
		{
			name: "changed type in another package",
			change: map[string]string{
				"size/size.go": "package size\n\ntype Length float64\n",
				"CHANGELOG.md": "## Unreleased\n- Incompatible: gauge: not the one\n",
			},
			print: []string{"size: incompatible: Length: changed from int64 to float64\n"},
			fail:  `["size"]`,
		},
		{
			name: "announced",
			change: map[string]string{
				"gauge/gauge.go": "package gauge\n",
				"CHANGELOG.md":   "# Changes\n\n## Unreleased\n\n- Incompatible: gauge: Read is gone.\n\n## v0.1.0\n",
			},
			print: []string{"Read: removed\n", `announced, so the next release needs a new minor version: ["gauge"]`},
		},
		{
			name: "announced in an earlier release",
			change: map[string]string{
				"gauge/gauge.go": "package gauge\n",
				"CHANGELOG.md":   "## Unreleased\n\n## v0.1.0\n\n- Incompatible: gauge: Read is gone.\n",
			},
			fail: `["gauge"]`,
		},
		{
			name: "announced after v1",
			tags: []string{"v1.2.0"},
			change: map[string]string{
				"gauge/gauge.go": "package gauge\n",
				"CHANGELOG.md":   "## Unreleased\n\n- Incompatible: gauge: Read is gone.\n",
			},
			print: []string{"compared with v1.2.0\n"},
			fail:  `incompatible with v1.2.0, which needs a new major version: ["gauge"]`,
		},
		{
			name:  "greatest tag",
			tags:  []string{"v0.9.0", "v0.10.0", "v0.10.0-rc.1", "vernier", "v1", "gauge/v3.0.0"},
			print: []string{"compared with v0.10.0\n"},
		},
		{
			name: "nobody imports it",
			change: map[string]string{
				"gauge/internal/x/x.go": "package x\n",
				"internal/deep/gone.go": "package deep\n",
				"examples/demo/demo.go": "package demo\n",
				"cmd/shop/main.go":      "package main\n\nfunc main() {}\n",
				"gauge/gauge_test.go":   "package gauge\n",
				"tools/tools.go":        "package tools\n",
			},
			print: []string{"compared with v0.1.0\n"},
		},
		{
			name:   "another module",
			change: map[string]string{"go.mod": "module example.com/other\n\ngo 1.26\n", "gauge/gauge.go": "package gauge\n"},
			fail:   "the module is now example.com/other: it was example.com/shop at v0.1.0",
		},
		{
			name:   "broken code",
			change: map[string]string{"gauge/gauge.go": "package gauge\n\nfunc Read() { return 1 }\n"},
			fail:   "gauge.go:3:",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			dir := repository(t)
			if tt.tags == nil {
				tt.tags = []string{"v0.1.0"}
			}
			for _, tag := range tt.tags {
				command(t, dir, "git", "tag", tag)
			}
			files(t, dir, tt.change)
			var out, errs strings.Builder
			err := run([]string{"-dir", dir, "-v"}, &out, &errs)
			for _, want := range tt.print {
				if !strings.Contains(out.String(), want) {
					t.Errorf("it did not print %q but:\n%s", want, out.String())
				}
			}
			switch {
			case tt.fail == "" && err != nil:
				t.Errorf("it failed: %v", err)
			case tt.fail != "" && (err == nil || !strings.Contains(err.Error(), tt.fail)):
				t.Errorf("it did not fail with %q but with %v", tt.fail, err)
			}
			if left := command(t, dir, "git", "worktree", "list"); strings.Count(left, "\n") != 1 {
				t.Errorf("it left a worktree behind:\n%s", left)
			}
		})
	}
}

func TestNoTag(t *testing.T) {
	dir := repository(t)
	var out strings.Builder
	if err := run([]string{"-dir", dir}, &out, &out); err != nil {
		t.Fatal(err)
	}
	if got, want := out.String(), "no v* tag yet: compared with nothing\n"; got != want {
		t.Errorf("it printed %q, want %q", got, want)
	}
}

// A tag on a commit that isn't part of this history is no release of it.
func TestTagElsewhere(t *testing.T) {
	dir := repository(t)
	command(t, dir, "git", "checkout", "-q", "-b", "other")
	command(t, dir, "git", "commit", "-q", "--allow-empty", "-m", "elsewhere")
	command(t, dir, "git", "tag", "v0.1.0")
	command(t, dir, "git", "checkout", "-q", "main")
	var out strings.Builder
	if err := run([]string{"-dir", dir}, &out, &out); err != nil {
		t.Fatal(err)
	}
	if !strings.HasPrefix(out.String(), "no v* tag yet") {
		t.Errorf("it printed %q", out.String())
	}
}

func TestBadCalls(t *testing.T) {
	for _, args := range [][]string{
		{"-dir", t.TempDir()}, // no repository
		{"-nonsense"},
		{"extra"},
	} {
		var out strings.Builder
		if err := run(args, &out, &out); err == nil {
			t.Errorf("%q did not fail", args)
		}
	}
}

func TestAnnounced(t *testing.T) {
	got := announced("- Incompatible: early: before any section\n" +
		"## [Unreleased]\n" +
		"- Incompatible: `tolerance/feeler`: Plan takes the blade set first.\n" +
		"- Incompatible: units:\n" +
		"- Incompatible: piston\n" +
		"- Compatible: crank: more.\n" +
		"### Removed\n" +
		"- Incompatible: cylinder: Taper: gone.\n" +
		"## v0.1.0\n" +
		"- Incompatible: late: another release\n")
	if len(got) != 2 || !got["tolerance/feeler"] || !got["cylinder"] {
		t.Errorf("got %v", got)
	}
}

// repository is a new one with one commit.
func repository(t *testing.T) string {
	t.Helper()
	for k, v := range map[string]string{
		"GIT_CONFIG_GLOBAL": os.DevNull, "GIT_CONFIG_SYSTEM": os.DevNull,
		"GIT_AUTHOR_NAME": "a", "GIT_AUTHOR_EMAIL": "a@example.com",
		"GIT_COMMITTER_NAME": "a", "GIT_COMMITTER_EMAIL": "a@example.com",
		"GOWORK": "off", "GOPROXY": "off",
	} {
		t.Setenv(k, v)
	}
	dir := t.TempDir()
	files(t, dir, released)
	command(t, dir, "git", "init", "-q", "-b", "main")
	command(t, dir, "git", "add", ".")
	command(t, dir, "git", "commit", "-q", "-m", "first")
	return dir
}

// files writes the files named, and removes those that are to be empty.
func files(t *testing.T, dir string, text map[string]string) {
	t.Helper()
	for name, s := range text {
		name = filepath.Join(dir, filepath.FromSlash(name))
		if s == "" {
			if err := os.Remove(name); err != nil {
				t.Fatal(err)
			}
			continue
		}
		if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(s), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func command(t *testing.T, dir string, args ...string) string {
	t.Helper()
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Dir = dir
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %v\n%s", args, err, out)
	}
	return string(out)
}
