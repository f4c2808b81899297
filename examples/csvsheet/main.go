// Csvsheet answers: how do readings kept in a spreadsheet get judged, and go
// back into it?
//
// Method: the sheet is saved as comma-separated values, each row is judged by
// package tolerance, and the same rows come back with the standing, the margin
// and what would settle an undecided one. A row that can't be used is named by
// its line and nothing is written. A cell that a spreadsheet would take for a
// formula gets an apostrophe before it, and loses it when it is read.
//
// Source: RFC 4180 (comma-separated values). Which first letters start a
// formula is common practice among spreadsheet programs.
//
// For: shop software.
//
// Caution: undecided is not a pass. The engine maker's manual governs.
package main

import (
	"bytes"
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

//go:embed readings.csv
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("csvsheet", "How do readings kept in a spreadsheet get judged, and go back into it?\n\n"+
		"The sheet has a heading row: measure, where, reading, new, wear, in any order; other\n"+
		"columns are kept. Limits and readings have their units: 0.03–0.07 mm, .0025 in.", errs)
	source := flags.Input("readings.csv", demo, "read this `FILE` of comma-separated values (- is standard input)")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	sheet, err := judge(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	if _, err := out.Write(sheet); err != nil {
		return flags.Fail(err)
	}
	return recipe.Answered
}

// needed are the columns that a sheet must have.
var needed = []string{"measure", "where", "reading", "new", "wear"}

// judge reads a whole sheet and writes it with its verdicts, or names the first
// row that can't be used.
func judge(name string, data []byte) ([]byte, error) {
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
	head, err := r.Read()
	if errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("%s: the sheet is empty", name)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	at := map[string]int{}
	for i, h := range head {
		h = strings.ToLower(strings.TrimSpace(plain(h)))
		if _, twice := at[h]; twice {
			return nil, fmt.Errorf("%s:1: the heading %.64q is there twice", name, h)
		}
		at[h] = i
	}
	for _, n := range needed {
		if _, ok := at[n]; !ok {
			return nil, fmt.Errorf("%s:1: there is no column headed %q: the sheet needs %s", name, n, strings.Join(needed, ", "))
		}
	}
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	write := func(cells []string) error { return w.Write(safe(cells)) }
	if err := write(append(head, "standing", "margin", "says")); err != nil {
		return nil, err
	}
	for {
		row, err := r.Read()
		if errors.Is(err, io.EOF) {
			w.Flush()
			return b.Bytes(), w.Error()
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		f, err := finding(row, at)
		if err != nil {
			line, _ := r.FieldPos(0)
			return nil, fmt.Errorf("%s:%d: %w", name, line, err)
		}
		if err := write(append(row, f...)); err != nil {
			return nil, err
		}
	}
}

// finding is what a row comes to. A row without a reading is one still to be
// measured, not a nought.
func finding(row []string, at map[string]int) ([]string, error) {
	cell := func(column string) string { return strings.TrimSpace(plain(row[at[column]])) }
	var spec tolerance.Spec
	for column, into := range map[string]*tolerance.Band{"new": &spec.New, "wear": &spec.Wear} {
		if cell(column) == "" {
			continue
		}
		band, err := tolerance.ParseBand(cell(column))
		if err != nil {
			return nil, fmt.Errorf("%s: %w", column, err)
		}
		*into = band
	}
	if cell("reading") == "" {
		return []string{"not measured", "", "still to be measured"}, nil
	}
	read, err := tolerance.ParseBracket(cell("reading"))
	if err != nil {
		return nil, fmt.Errorf("reading: %w", err)
	}
	f, err := tolerance.Assess(cell("measure"), cell("where"), spec, read)
	if err != nil {
		return nil, err
	}
	margin := ""
	if m, end := f.Margin.Lower(); end != tolerance.Absent {
		margin = m.Text(units.InMillimetres, units.AllPlaces)
	}
	return []string{f.Standing.String(), margin, f.Explain()}, nil
}
