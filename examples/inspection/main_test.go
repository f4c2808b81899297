package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/examples/inspection/engine"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/internal/recipe/recipetest"
)

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		golden string
		exit   int
		args   []string
	}{
		{"default", recipe.Answered, nil},
		{"inch", recipe.Answered, []string{"-inch", "-form", "markdown"}},
		{"blank", recipe.Answered, []string{"-blank"}},
		{"batch", recipe.Answered, []string{"-batch"}},
		{"form", recipe.Refused, []string{"-form", "paper"}},
		{"nofile", recipe.Refused, []string{"-in", "testdata/nowhere.json"}},
		{"nobatch", recipe.Refused, []string{"-batch", "-in", "testdata/nowhere.json"}},
		{"nolimits", recipe.Refused, []string{"-batch", "-limits", "testdata/nowhere.json"}},
	} {
		t.Run(c.golden, func(t *testing.T) {
			recipetest.Golden(t, run, c.args, "", c.exit, "testdata/"+c.golden+".golden")
		})
	}
	recipetest.Usage(t, run, 0)
}

func call(in string, args ...string) (out, errs string, exit int) {
	var o, e bytes.Buffer
	exit = run(args, strings.NewReader(in), &o, &e)
	return o.String(), e.String(), exit
}

// The folder is whole or not there.
func TestOut(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "new", "report")
	out, errs, exit := call("", "-out", folder)
	require.Equal(t, recipe.Answered, exit, errs)
	for _, name := range []string{"report.txt", "report.md", "report.json", "report.html"} {
		data, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		require.Contains(t, string(data), "Undecided is not a pass")
		require.Contains(t, out, name)
	}
	_, errs, exit = call("", "-out", folder)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "is there already")

	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, _, exit = call("", "-out", filepath.Join(file, "report"))
	require.Equal(t, recipe.Refused, exit)
}

// What the bench sheet's skeleton asks for, filled in or not, is a document
// that the inspection reads.
func TestSkeleton(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "sheet")
	_, errs, exit := call("", "-blank", "-out", folder)
	require.Equal(t, recipe.Answered, exit, errs)
	out, errs, exit := call("", "-in", filepath.Join(folder, "readings.json"))
	require.Equal(t, recipe.Answered, exit, errs)
	require.Contains(t, out, "Nothing was judged.")
}

// Each bad file is answered in under a second with line, path and reason, and
// nothing is written.
func TestBadFiles(t *testing.T) {
	good := string(demo)
	for _, c := range []struct{ name, in, say string }{
		{"empty", "", "empty"},
		{"cut short", good[:len(good)/2], "cut short"},
		{"wrong type", strings.Replace(good, `"cylinders": 4`, `"cylinders": "four"`, 1), "limits.cylinder.cylinders"},
		{"100 MB of one line", `{"schema": 1, "engine": "` + strings.Repeat("x", 100<<20) + `"}`, "longer than 64 MiB"},
		{"deep", strings.Repeat(`{"limits":`, 100_000), "nested too deeply"},
		{"deep lists", `{"schema": 1, "engine": ` + strings.Repeat("[", 100_000), "engine"},
		{"duplicate", strings.Replace(good, `"engine":`, `"engine": "x", "engine":`, 1), "engine: field given twice"},
		{"no unit", strings.Replace(good, `"reading": "152.9 mm"`, `"reading": "152.9"`, 1), "readings.valvetrain.drive[0].reading"},
		{"not a number", strings.Replace(good, `"reading": "152.9 mm"`, `"reading": "NaN mm"`, 1), "readings.valvetrain.drive[0].reading"},
		{"negative", strings.Replace(good, `"reading": "152.9 mm"`, `"reading": "-152.9 mm"`, 1), "readings.valvetrain.drive[0].reading"},
		{"two with one number", strings.Replace(good, `"cylinder": 3,`, `"cylinder": 2,`, 1), "readings.cylinder.cylinders[2]"},
		{"unknown", strings.Replace(good, `"mainTunnel"`, `"mainTunel"`, 1), "mainTunel: unknown field"},
		{"other schema", strings.Replace(good, `"schema": 1,`, `"schema": 7,`, 1), "schema"},
		{"no limits", `{"schema": 1, "engine": "x", "readings": {}}`, "no limits"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.NotEqual(t, good, c.in)
			folder := filepath.Join(t.TempDir(), "report")
			began := time.Now()
			out, errs, exit := call(c.in, "-in", "-", "-out", folder)
			require.Less(t, time.Since(began), 3*time.Second) // a second, on a machine of its own
			require.Equal(t, recipe.Refused, exit)
			require.Empty(t, out)
			require.Contains(t, errs, c.say)
			require.Contains(t, errs, "standard input")
			require.Equal(t, 1, strings.Count(errs, "\n"), errs)
			require.Less(t, len(errs), 1000)
			require.NoFileExists(t, folder)
		})
	}
}

// Many engines: in the order of the lines, with the bad one named and passed
// over, by their own limits or by shared ones.
func TestBatch(t *testing.T) {
	whole := strings.ReplaceAll(string(demo), "\n", " ")
	var d map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(demo, &d))
	bare := func(name string) string {
		text, err := json.Marshal(map[string]any{"schema": 1, "engine": name, "readings": d["readings"]})
		require.NoError(t, err)
		return string(text)
	}
	in := strings.Join([]string{bare("one"), whole, "", `{"schema": 1`, bare("five")}, "\n")
	limits := filepath.Join(t.TempDir(), "limits.json")
	require.NoError(t, os.WriteFile(limits, demo, 0o600))
	out, errs, exit := call(in, "-batch", "-in", "-", "-limits", limits)
	require.Equal(t, recipe.Refused, exit, "one record could not be used")
	require.Contains(t, errs, "standard input:4: ")
	require.Contains(t, errs, "1 records could not be used")
	require.Contains(t, errs, "3 engines")
	var names []string
	for line := range strings.Lines(out) {
		var l engine.Line
		require.NoError(t, json.Unmarshal([]byte(line), &l))
		names = append(names, l.Engine)
		require.NotEmpty(t, l.Decisions)
	}
	require.Equal(t, "one", names[0])
	require.Contains(t, names[1], "training engine 4")
	require.Equal(t, []string{"one", names[1], "five"}, names)

	_, errs, exit = call(bare("one"), "-batch", "-in", "-")
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs, "standard input:1: ")
	require.Contains(t, errs, "no limits")
}

func TestProgress(t *testing.T) {
	var b bytes.Buffer
	p := &progress{to: &b}
	p.count()
	p.clear()
	require.Contains(t, b.String(), "1 engines")
	require.Nil(t, newProgress(&b).to, "nothing of it where no one looks")
	f, err := os.CreateTemp(t.TempDir(), "log")
	require.NoError(t, err)
	defer f.Close()
	require.Nil(t, newProgress(f).to)
}
