package recipe_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/recipe"
)

// run is a recipe as small as they come.
func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("endgap", "Is the ring's end gap within its limits?", errs)
	gap := flags.String("gap", "0.35 mm", "the `gap` as measured")
	used := flags.Bool("used", false, "the ring has run")
	least := flags.Float64("least", 0, "the least gap in millimetres")
	flags.Words("FILE", 1)
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if flags.NArg() == 1 {
		data, err := recipe.ReadInput(flags.Arg(0), in)
		if err != nil {
			return flags.Fail(err)
		}
		*gap = strings.TrimSpace(string(data))
	}
	fmt.Fprintln(out, *gap, *used, *least)
	return recipe.Answered
}

func Example() {
	run([]string{"-gap", "0.40 mm", "-used"}, nil, os.Stdout, os.Stdout)
	run([]string{"-"}, strings.NewReader("0.45 mm\n"), os.Stdout, os.Stdout)
	// Output:
	// 0.40 mm true 0
	// 0.45 mm false 0
}

func ExampleFlags() {
	run([]string{"-h"}, nil, os.Stdout, os.Stdout)
	run([]string{"-gpa", "0.4"}, nil, os.Stdout, os.Stdout)
	// Output:
	// endgap: Is the ring's end gap within its limits?
	//
	// Use: endgap [flags] FILE
	//
	//   -h            this help
	//   -gap gap      the gap as measured, if not given 0.35 mm
	//   -least float  the least gap in millimetres
	//   -used         the ring has run
	//
	// Exit code: 0 with an answer, whatever the verdict; 1 if the input can't be used.
	// endgap: there is no flag -gpa (-h lists the flags)
}

func TestSet_parse(t *testing.T) {
	for _, c := range []struct {
		args []string
		exit int
		out  string
		errs string
	}{
		{nil, 0, "0.35 mm false 0\n", ""},
		{[]string{"-gap=1/64 in", "--least", "0.5"}, 0, "1/64 in false 0.5\n", ""},
		{[]string{"-least", "x"}, 1, "", `endgap: invalid value "x" for flag -least: parse error (-h lists the flags)` + "\n"},
		{[]string{"-gap"}, 1, "", "endgap: flag needs an argument: -gap (-h lists the flags)\n"},
		{[]string{"-", "0.4", "mm"}, 1, "", `endgap: "0.4" follows the flags and belongs to none (-h lists the flags)` + "\n"},
		{[]string{"--"}, 0, "0.35 mm false 0\n", ""},
		{[]string{"-least", strings.Repeat("é", 1000)}, 1, "", `endgap: invalid value "` + strings.Repeat("é", 112) + "… (-h lists the flags)\n"},
		{[]string{"no.txt"}, 1, "", "endgap: no.txt: no such file or directory\n"},
		{[]string{""}, 1, "", "endgap: input: no file named; - is the standard input\n"},
	} {
		var out, errs bytes.Buffer
		require.Equal(t, c.exit, run(c.args, strings.NewReader(""), &out, &errs), "%q", c.args)
		require.Equal(t, c.out, out.String(), "%q", c.args)
		require.Equal(t, c.errs, errs.String(), "%q", c.args)
	}
}

// A recipe without flags or words has help as well, and takes no word.
func TestFlags_none(t *testing.T) {
	var out, errs bytes.Buffer
	flags := recipe.Flags("pi", "What is pi?", &errs)
	exit, done := flags.Parse([]string{"-help"}, &out)
	require.True(t, done)
	require.Equal(t, 0, exit)
	require.Contains(t, out.String(), "\nUse: pi\n\n  -h  this help\n\n")
	require.Empty(t, errs.String())

	exit, done = recipe.Flags("pi", "What is pi?", &errs).Parse([]string{"3"}, &out)
	require.True(t, done)
	require.Equal(t, 1, exit)
	require.Equal(t, "pi: \"3\" follows the flags and belongs to none (-h lists the flags)\n", errs.String())
}

// A value of a type with UnmarshalText, as quantities are.
func TestFlags_text(t *testing.T) {
	var out, errs bytes.Buffer
	flags := recipe.Flags("when", "When?", &errs)
	var when time.Time
	flags.TextVar(&when, "at", time.Unix(0, 0).UTC(), "the `time`")
	_, done := flags.Parse([]string{"-h"}, &out)
	require.True(t, done)
	require.Contains(t, out.String(), "  -at time  the time, if not given 1970-01-01T00:00:00Z\n")
	exit, done := flags.Parse([]string{"-at", "noon"}, &out)
	require.True(t, done)
	require.Equal(t, recipe.Refused, exit)
	require.Contains(t, errs.String(), `when: invalid value "noon" for flag -at: `)
}

func TestSet_fail(t *testing.T) {
	var errs bytes.Buffer
	require.Equal(t, 1, recipe.Flags("x", "", &errs).Fail(errors.New("y")))
	require.Equal(t, "x: y\n", errs.String())
}
