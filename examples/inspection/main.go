// Inspection answers: what is to be done with this engine, in what order, with
// which parts, and what is still to be measured?
//
// Method: limits as the manual prints them and readings as they were taken go
// into the four part packages; each gives its slips, findings and decisions, and
// they are put into the order of the bench. What one part's work does to another
// goes across: a bored block asks for other pistons. What the clearances will be
// is predicted as brackets, and what is measured after the work is held to that.
//
// Source: the order is that of training manuals for engine mechanics; every
// formula's source stands with the formula. The engine here is invented.
//
// For: shop software, instructors, hobbyists.
//
// Caution: undecided is not a pass. The engine maker's manual governs, and work
// on engines that run, are lifted, heated or under pressure is for those trained
// for it.
package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/tenthou/tenthou/examples/inspection/engine"
	"github.com/tenthou/tenthou/examples/inspection/report"
	"github.com/tenthou/tenthou/examples/inspection/sheet"
	"github.com/tenthou/tenthou/internal/recipe"
)

//go:embed engine.json
var demo []byte

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := recipe.Flags("inspection", "What is to be done with this engine, in what order, with which parts, and what is still to be measured?\n\n"+
		"Without flags: an invented engine. The file holds its limits and its readings; readings\n"+
		"that are left out, or \"\", are still to be taken, and a half-filled file is the normal\n"+
		"case. What was measured again after the work stands under \"built\", beside \"readings\".\n"+
		"-blank makes a bench sheet to fill in by hand, and with -out the file to type it into.", errs)
	source := flags.Input("engine.json", demo, "read this engine's `FILE` (- is standard input)")
	folder := flags.String("out", "", "write the report to a new `FOLDER`: text, Markdown, JSON and a page with pictures")
	form := flags.String("form", "text", "print it as this `FORM`: text, markdown or json")
	inch := flags.Bool("inch", false, "lengths in inches")
	blank := flags.Bool("blank", false, "a blank bench sheet from the limits, in the order of measuring")
	stream := flags.Bool("batch", false, "the input is many engines, a JSON document a line; a line of decisions is printed for each, and a summary at the end")
	limits := flags.String("limits", "", "with -batch: the limits for engines that bring none, from this `FILE`")
	if exit, done := flags.Parse(args, out); done {
		return exit
	}
	if *stream {
		if err := batchOf(source, *limits, in, out, errs); err != nil {
			return flags.Fail(err)
		}
		return recipe.Answered
	}
	name, data, err := source.Read(in)
	if err != nil {
		return flags.Fail(err)
	}
	d, err := engine.Read(name, data)
	if err != nil {
		return flags.Fail(err)
	}
	if d.Limits == nil {
		return flags.Fail(engine.Locate(name, data, engine.ErrNoLimits))
	}
	files, text, err := pages(name, data, d, *blank, *form, *inch)
	if err != nil {
		return flags.Fail(err)
	}
	if *folder == "" {
		out.Write(text)
		return recipe.Answered
	}
	if err := writeFolder(*folder, files); err != nil {
		return flags.Fail(err)
	}
	fmt.Fprintf(out, "written to %s:\n", *folder)
	for _, f := range files {
		fmt.Fprintf(out, "  %s\n", f.name)
	}
	return recipe.Answered
}

// A file is one of those that -out writes.
type file struct {
	name string
	data []byte
}

// pages are the files, and the one of them that is printed without a folder.
func pages(name string, data []byte, d engine.Document, blank bool, form string, inch bool) (files []file, text []byte, err error) {
	at := map[string]int{"text": 0, "markdown": 1, "json": 2}
	printed, ok := at[form]
	if !ok {
		return nil, nil, fmt.Errorf("-form: %.64q is not text, markdown or json", form)
	}
	inspector := d.Limits.Prepare()
	if blank {
		empty := d.Limits.Blank(d.Engine)
		result, err := inspector.Inspect(&empty)
		if err != nil {
			return nil, nil, engine.Locate(name, data, err)
		}
		page, err1 := sheet.HTML(d.Engine, result.Missing)
		skeleton, err2 := engine.Skeleton(&empty, result.Missing)
		text := sheet.Text(d.Engine, result.Missing)
		return []file{{"sheet.txt", text}, {"sheet.html", page}, {"readings.json", skeleton}}, text, errors.Join(err1, err2)
	}
	result, err := inspector.Inspect(&d)
	if err != nil {
		return nil, nil, engine.Locate(name, data, err)
	}
	r := report.Report{Engine: d.Engine, Report: result.Report, Departed: result.Departed, Agreed: result.Agreed, Unmeasured: result.Unmeasured,
		Drawings: drawings(&d, &result), Inch: inch}
	page, err1 := r.HTML()
	asJSON, err2 := r.JSON()
	files = []file{{"report.txt", r.Text()}, {"report.md", r.Markdown()}, {"report.json", asJSON}, {"report.html", page}}
	return files, files[printed].data, errors.Join(err1, err2)
}
