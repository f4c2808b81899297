// Proofread answers: can these limits and readings be what they say, or has a
// figure slipped on its way to the board?
//
// Method: a manual prints a size in both units and so checks itself; the two
// must agree within the rounding each shows. Where they don't, each common slip
// is undone in turn, and the ones that make the figures agree are named, the
// likeliest first. Limits for new parts are held to the wear limit, and the
// readings of one measure to each other.
//
// Source: the kinds of slip are those found in printed service manuals (package
// proofread tests itself on sixteen of them).
//
// For: shop software, instructors.
//
// Caution: a suspicion is no correction, and nothing flagged proves nothing:
// look the figure up in the engine maker's manual.
package main

import (
	"bufio"
	"bytes"
	_ "embed"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/tenthou/tenthou/internal/recipe"
	"github.com/tenthou/tenthou/tolerance/proofread"
	"github.com/tenthou/tenthou/units"
)

//go:embed limits.txt
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("proofread", "Has a figure slipped in these limits and readings?\n\n"+
		"Without flags it reads an invented list. Write your own as in examples/proofread/limits.txt,\n"+
		"a measure a line, two blanks or more between its name and its figures:\n\n"+
		"  main journal   63.487–63.500 mm (2.4995–2.5000 in)\n"+
		"  end float      0.05–0.18 mm (0.002–0.007 in); worn max 0.20 mm\n"+
		"  readings       86.02 mm, 86.03 mm, 86.52 mm", errs)
	source := flags.Input("limits.txt", demo, "the `FILE` to read; - for standard input")
	all := flags.Bool("all", false, "list the lines in which nothing is flagged, too")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	page, err := check(name, data, *all)
	if err != nil {
		return flags.Fail(err)
	}
	fmt.Fprint(out, page)
	return recipe.Answered
}

// check goes through the lines of a file.
func check(name string, data []byte, all bool) (string, error) {
	var b strings.Builder
	lines, flagged := 0, 0
	scan := bufio.NewScanner(bytes.NewReader(data))
	for n := 1; scan.Scan(); n++ {
		line := strings.TrimSpace(scan.Text())
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		lines++
		measure, figures, ok := cut(line)
		if !ok {
			return "", fmt.Errorf("%s:%d: %.60q: write the measure, two blanks, and its figures", name, n, line)
		}
		words, found, err := judge(measure, figures)
		if err != nil {
			return "", fmt.Errorf("%s:%d: %s: %w", name, n, measure, err)
		}
		if found {
			flagged++
		}
		if found || all {
			fmt.Fprintf(&b, "line %d, %s\n", n, measure)
			for w := range strings.Lines(words) {
				b.WriteString(recipe.Wrap(w, 78, "  ", "    "))
			}
		}
	}
	if err := scan.Err(); err != nil {
		return "", fmt.Errorf("%s: a line is too long: %w", name, err)
	}
	fmt.Fprintf(&b, "%d of %d lines are suspected.\n", flagged, lines)
	if flagged > 0 {
		b.WriteString("A suspicion is no correction: look each up in the engine maker's manual.\n")
	}
	return b.String(), nil
}

// cut parts a line at its first tab or run of two blanks.
func cut(line string) (measure, figures string, ok bool) {
	line = strings.ReplaceAll(line, "\t", "  ")
	measure, figures, ok = strings.Cut(line, "  ")
	return measure, strings.TrimSpace(figures), ok && strings.TrimSpace(figures) != ""
}

// judge checks one line: readings against each other, or a manual's columns.
func judge(measure, figures string) (words string, flagged bool, err error) {
	if strings.HasPrefix(measure, "readings") {
		var sizes []units.Length
		for text := range strings.SplitSeq(figures, ", ") {
			l, err := units.ParseLength(text)
			if err != nil {
				return "", false, err
			}
			sizes = append(sizes, l)
		}
		r, err := proofread.CheckReadings(sizes...)
		return r.String(), r.Flagged(), err
	}
	figures, worn, hasWorn := strings.Cut(figures, "; worn ")
	limits, err := proofread.ParseLimits(figures)
	if err != nil {
		return "", false, err
	}
	report, err := proofread.CheckLimits(limits)
	if err != nil || !hasWorn {
		return report.String(), report.Flagged(), err
	}
	column, err := proofread.ParseColumn(worn)
	if err != nil {
		return "", false, err
	}
	wear, err := proofread.CheckWear(limits.First, column)
	report.Results = append(report.Results, wear.Results...)
	return report.String(), report.Flagged(), err
}
