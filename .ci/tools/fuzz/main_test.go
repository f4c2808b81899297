package main

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
)

func TestTargets(t *testing.T) {
	file := filepath.Join(t.TempDir(), "x_test.go")
	if err := os.WriteFile(file, []byte("package x\n\nfunc FuzzA(f *testing.F) {}\n\nfunc (t T) FuzzB() {}\n\nfunc helper() {}\n\nfunc FuzzC(f *testing.F) {}\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	got, err := targets([]string{file})
	if err != nil || !slices.Equal(got, []string{"FuzzA", "FuzzC"}) {
		t.Errorf("got %q, %v", got, err)
	}
}

func TestLastCount(t *testing.T) {
	out := "fuzz: elapsed: 0s, gathering baseline coverage: 0/1 completed\nfuzz: elapsed: 3s, execs: 10 (3/sec), new interesting: 1 (total: 2)\nPASS\n"
	if got, want := lastCount(out), "execs: 10 (3/sec), new interesting: 1 (total: 2)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if got := lastCount("PASS\n"); got != "ran" {
		t.Errorf("got %q", got)
	}
}

func TestFailingInput(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "input"), []byte("string(\"1/0\")\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	if got := failingInput(dir, "    Failing input written to input\n    To re-run:\n"); got != "string(\"1/0\")\n" {
		t.Errorf("got %q", got)
	}
	if got := failingInput(dir, "PASS\n"); got != "" {
		t.Errorf("got %q", got)
	}
}

func TestOutOfTime(t *testing.T) {
	for out, want := range map[string]bool{
		"fuzz: elapsed: 4s, execs: 22920\n--- FAIL: FuzzParseSet (3.74s)\n    context deadline exceeded\nFAIL\n":                    true,
		"--- FAIL: FuzzX (0.1s)\n    --- FAIL: FuzzX (0.00s)\n        x_test.go:9: wrong\n    Failing input written to a/b\nFAIL\n": false,
		"--- FAIL: FuzzX (0.1s)\n    context deadline exceeded\n    x_test.go:9: wrong\nFAIL\n":                                     false,
		"panic: context deadline exceeded": false,
		"PASS":                             false,
	} {
		if outOfTime(out) != want {
			t.Errorf("%q: not %v", out, want)
		}
	}
}
