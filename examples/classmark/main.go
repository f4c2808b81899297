// Classmark answers: how is a class's list of answers marked against a sheet's
// key, with the same tolerance for everyone?
//
// Method: each answer is read with its unit, in any form that the library reads,
// and is right within what the key allows. An answer that is wrong is held to the
// common slips (decimal place, inch and millimetre, radius and diameter, π, a
// sign), and what fits is named: a ratio that fits is no proof.
//
// Source: the key, which the recipe worksheet writes; the slips are common
// practice.
//
// For: instructors.
//
// Caution: a mark is for the arithmetic. Who measures an engine goes by the
// maker's manual.
package main

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/exam"
	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance/working"
	"github.com/tenthou/tenthou/units"
)

//go:embed key.json
var demoKey []byte

//go:embed class.csv
var demoClass []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("classmark", "How is a class's list of answers marked against a sheet's key?\n\n"+
		"The list is comma-separated values: a row a student, the name first, then the answers in\n"+
		"the order of the sheet, each with its unit; an empty cell is no answer.", errs)
	class := flags.Input("class.csv", demoClass, "read the class list from this `FILE` (- is standard input)")
	keyPath := flags.String("key", "", "the `KEY` that worksheet -json wrote, if not the example's")
	var within units.Length
	flags.TextVar(&within, "within", within, "how far off is still right, `TOLERANCE` for every question in place of the key's own")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := class.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	keyName, keyData := "key.json", demoKey
	if *keyPath != "" {
		if keyData, err = recipe.ReadInput(*keyPath, nil); err != nil {
			return flags.Fail(err)
		}
		keyName = *keyPath
	}
	key, err := exam.Read(keyName, keyData)
	if err != nil {
		return flags.Fail(err)
	}
	if within < 0 {
		return flags.Fail(fmt.Errorf("-within: %v is below zero", within))
	}
	page, err := mark(name, data, key, within)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// mark marks the whole class, or names the first row that can't be marked.
func mark(name string, data []byte, key exam.Key, within units.Length) (string, error) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	r.FieldsPerRecord = len(key.Questions) + 1
	rows, err := r.ReadAll()
	if err != nil {
		return "", fmt.Errorf("%s: %w; a row has a name and %d answers", name, err, len(key.Questions))
	}
	if len(rows) == 0 {
		return "", fmt.Errorf("%s: the list is empty", name)
	}
	full := 0
	right := make([]int, len(key.Questions))
	for _, q := range key.Questions {
		full += q.Points
	}
	var b strings.Builder
	fmt.Fprintf(&b, "Sheet %d, %d questions, %d points\n", key.Seed, len(key.Questions), full)
	for _, row := range rows {
		total, notes := 0, ""
		for i, q := range key.Questions {
			allowed := q.Within
			if within > 0 {
				allowed = within
			}
			ok, note := markOne(q, row[i+1], allowed)
			if ok {
				total += q.Points
				right[i]++
			}
			if note != "" {
				notes += recipe.Wrap(fmt.Sprintf("%d. %s: %s", i+1, q.Name, note), 96, "    ", "       ")
			}
		}
		fmt.Fprintf(&b, "\n%.64s: %d of %d\n%s", row[0], total, full, notes)
	}
	b.WriteString("\nRight, of " + fmt.Sprint(len(rows)) + ":\n")
	for i, q := range key.Questions {
		fmt.Fprintf(&b, "  %2d. %-16s %d\n", i+1, q.Name, right[i])
	}
	return b.String(), nil
}

// markOne marks an answer. Only a right one needs no words.
func markOne(q exam.Question, answer string, within units.Length) (ok bool, note string) {
	if strings.TrimSpace(answer) == "" {
		return false, "no answer"
	}
	m, err := working.Mark(working.Exactly(q.Answer), answer, within)
	if err != nil {
		return false, fmt.Sprintf("%.64q can't be read: %v", answer, err)
	}
	if m.Grade == working.Right {
		return true, ""
	}
	return false, fmt.Sprintf("%.64s: %s", strings.TrimSpace(answer), m.Explain())
}
