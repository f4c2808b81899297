// Package sheet writes a blank bench sheet: what to measure, in the order of the
// bench, with what is asked and a box to fill in by hand. It is made from the
// list of what is missing of an empty document, so that it can't ask for less
// than the inspection does.
package sheet

import (
	"bytes"
	_ "embed"
	"fmt"
	"html/template"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/tolerance/inspection"
)

//go:embed sheet.html
var sheetHTML string

var page = template.Must(template.New("sheet").Parse(sheetHTML))

// A group is the boxes of one step.
type group struct {
	Step  string
	Boxes []inspection.Missing
}

func groups(missing []inspection.Missing) (all []group) {
	for i, m := range missing {
		if i == 0 || m.Step != missing[i-1].Step {
			all = append(all, group{Step: m.Step.String()})
		}
		last := &all[len(all)-1]
		last.Boxes = append(last.Boxes, m)
	}
	return all
}

// HTML is the sheet as a page to print on A4 or Letter, and read on a phone.
func HTML(engine string, missing []inspection.Missing) ([]byte, error) {
	var b bytes.Buffer
	err := page.Execute(&b, struct {
		Engine string
		Groups []group
		Count  int
	}{engine, groups(missing), len(missing)})
	return b.Bytes(), err
}

// Text is the sheet for a plain printer: a line a reading.
func Text(engine string, missing []inspection.Missing) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "Bench sheet: %s\nDate ____________  By ____________  Room at ______ °C\nWrite the unit with every reading; leave open what was not read.\n", engine)
	for _, g := range groups(missing) {
		fmt.Fprintf(&b, "\n%s\n", strings.ToUpper(g.Step))
		width := 0
		for _, m := range g.Boxes {
			width = max(width, utf8.RuneCountInString(label(m)))
		}
		for _, m := range g.Boxes {
			l := label(m)
			line := fmt.Sprintf("  %s%s  ______________  %s", l, strings.Repeat(" ", width-utf8.RuneCountInString(l)), m.Limit)
			if m.With != "" {
				line += "  (" + m.With + ")"
			}
			b.WriteString(strings.TrimRight(line, " ") + "\n")
		}
	}
	fmt.Fprintf(&b, "\n%d readings. A reading that is not taken is no nought. The engine maker's manual governs.\n", len(missing))
	return b.Bytes()
}

func label(m inspection.Missing) string { return m.Where + ": " + m.Measure }
