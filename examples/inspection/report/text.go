package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/tenthou/tenthou/internal/recipe"
)

// width is that of a page of text.
const width = 110

// Text is the report for a terminal or a plain printer.
func (r *Report) Text() []byte {
	var b bytes.Buffer
	title := "Inspection: " + r.Engine
	fmt.Fprintf(&b, "%s\n%s\n", title, strings.Repeat("=", utf8.RuneCountInString(title)))
	b.WriteString(recipe.Wrap(notAPass, width, "", ""))
	for _, s := range r.sections() {
		fmt.Fprintf(&b, "\n%s\n%s\n", s.title, strings.Repeat("-", utf8.RuneCountInString(s.title)))
		if r.empty(s) {
			b.WriteString(recipe.Wrap(s.none, width, "", ""))
			continue
		}
		if s.lead != "" {
			b.WriteString(recipe.Wrap(s.lead, width, "", ""))
		}
		for i, line := range s.list {
			mark := "- "
			if s.id == "work" {
				mark = fmt.Sprintf("%2d. ", i+1)
			}
			b.WriteString(recipe.Wrap(line, width, mark, strings.Repeat(" ", len(mark))))
		}
		textRows(&b, s)
	}
	b.WriteString("\n" + recipe.Wrap(governs, width, "", ""))
	return b.Bytes()
}

// textRows writes each row as its first cells on a line and the rest wrapped
// under it: a terminal has no room for columns of sentences.
func textRows(b *bytes.Buffer, s section) {
	for _, row := range s.rows {
		if len(row) == 1 {
			b.WriteString(row[0] + "\n")
			continue
		}
		var parts []string
		for i, cell := range row {
			if cell == "" {
				continue
			}
			if name, ok := named[s.head[i]]; ok {
				cell = name + " " + cell
			}
			parts = append(parts, cell)
		}
		b.WriteString(recipe.Wrap(strings.Join(parts, " | "), width, "- ", "  "))
	}
}

// named are the columns that need their heading's words in text.
var named = map[string]string{
	"new parts": "new", "wear limit": "worn", "for new parts": "new", "predicted": "predicted", "built": "built", "off by": "off by",
	"because": "because:", "limit": "limit", "with": "with", "for": "for",
}

// Markdown is the report as CommonMark with tables.
func (r *Report) Markdown() []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# Inspection: %s\n\n%s\n", plain(r.Engine), notAPass)
	for _, s := range r.sections() {
		fmt.Fprintf(&b, "\n## %s\n\n", s.title)
		if r.empty(s) {
			b.WriteString(s.none + "\n")
			continue
		}
		if s.lead != "" {
			b.WriteString(s.lead + "\n\n")
		}
		for i, line := range s.list {
			mark := "-"
			if s.id == "work" {
				mark = fmt.Sprintf("%d.", i+1)
			}
			fmt.Fprintf(&b, "%s %s\n", mark, plain(line))
		}
		if len(s.rows) == 0 {
			continue
		}
		fmt.Fprintf(&b, "| %s |\n|%s\n", strings.Join(s.head, " | "), strings.Repeat(" --- |", len(s.head)))
		for _, row := range s.rows {
			cells := make([]string, len(s.head))
			for i, c := range row {
				cells[i] = plain(c)
			}
			if len(row) == 1 {
				cells[0] = "**" + cells[0] + "**"
			}
			fmt.Fprintf(&b, "| %s |\n", strings.Join(cells, " | "))
		}
	}
	fmt.Fprintf(&b, "\n%s\n", governs)
	return b.Bytes()
}

// plain is a text that Markdown and HTML leave as it is.
func plain(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch r {
		case '\\', '`', '*', '_', '[', ']', '<', '>', '|', '#', '&', '~':
			b.WriteByte('\\')
			b.WriteRune(r)
		case '\n', '\r', '\t':
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// JSON is the report as data, exact.
func (r *Report) JSON() ([]byte, error) {
	b, err := json.MarshalIndent(struct {
		Schema int `json:"schema"`
		*Report
		NotAPass string `json:"notAPass"`
		Governs  string `json:"governs"`
	}{1, r, notAPass, governs}, "", "  ")
	return append(b, '\n'), err
}
