package uncertainty

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Text sets the budget out as a table in plain text, a line for each source
// and the combined uncertainty below, numbers to three digits.
func (b Budget) Text() string { return b.table().text() }

// Markdown sets the budget out as a Markdown table.
func (b Budget) Markdown() string { return b.table().markdown() }

// String is the same as [Budget.Text].
func (b Budget) String() string { return b.Text() }

func (b Budget) table() table {
	rows := [][]string{{"source", "spread", "standard uncertainty", "sensitivity", "contribution", "degrees of freedom", "share"}}
	for _, l := range b.Lines {
		sensitivity := three(l.Sensitivity)
		if l.Unit != b.Unit {
			sensitivity = join(sensitivity, per(b.Unit, l.Unit))
		}
		name := l.Source
		if name == "" {
			name = "(unnamed)"
		}
		rows = append(rows, []string{name, l.Shape.String(), join(three(l.Standard), l.Unit), sensitivity,
			join(three(l.Contribution), b.Unit), l.Freedom.String(), percent(l.Share)})
	}
	last := "combined"
	if b.NearKink {
		last = "combined (first order is not enough: simulate it)"
	}
	rows = append(rows, []string{last, "", "", "", join(three(b.Standard), b.Unit), b.Freedom.String(), percent(1)})
	return table{rows: rows, left: 2}
}

// per is the unit a for each of unit b.
func per(a, b string) string {
	switch {
	case b == "":
		return a
	case a == "":
		a = "1"
	}
	if strings.ContainsAny(b, "/·* ") {
		b = "(" + b + ")"
	}
	return a + "/" + b
}

// three writes x to three significant digits.
func three(x float64) string {
	if x == 0 {
		return "0"
	}
	text := strconv.FormatFloat(x, 'e', 2, 64)
	before, after, ok := strings.Cut(text, "e")
	if !ok { // not-a-number or infinite
		return text
	}
	exponent, _ := strconv.Atoi(after)
	if exponent < -4 || exponent > 5 {
		return before + "·10" + superscripts.Replace(strconv.Itoa(exponent))
	}
	rounded, _ := strconv.ParseFloat(text, 64)
	return strconv.FormatFloat(rounded, 'f', max(0, 2-exponent), 64)
}

var superscripts = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// percent writes a part to a tenth of a percent.
func percent(part float64) string { return strconv.FormatFloat(100*part, 'f', 1, 64) + " %" }

func join(number, unit string) string {
	if unit == "" {
		return number
	}
	return number + " " + unit
}

// A table is set out in columns: the first few to the left, numbers to the
// right. A name that holds a line break can't break it.
type table struct {
	rows [][]string
	left int // how many columns stand to the left
}

func (t table) text() string {
	widths := make([]int, len(t.rows[0]))
	for _, r := range t.rows {
		for i, cell := range r {
			r[i] = oneLine(cell)
			widths[i] = max(widths[i], utf8.RuneCountInString(r[i]))
		}
	}
	var out strings.Builder
	for _, r := range t.rows {
		line := ""
		for i, cell := range r {
			pad := strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell))
			switch {
			case i == 0:
				line = cell + pad
			case i < t.left:
				line += "  " + cell + pad
			default:
				line += "  " + pad + cell
			}
		}
		out.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return out.String()
}

func (t table) markdown() string {
	var out strings.Builder
	for i, r := range t.rows {
		for _, cell := range r {
			out.WriteString("| " + markdownEscapes.Replace(oneLine(cell)) + " ")
		}
		out.WriteString("|\n")
		for j := 0; i == 0 && j < len(r); j++ {
			if j < t.left {
				out.WriteString("| --- ")
			} else {
				out.WriteString("| ---: ")
			}
		}
		if i == 0 {
			out.WriteString("|\n")
		}
	}
	return out.String()
}

// oneLine puts blanks for line breaks and other control characters.
func oneLine(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, s)
}

var markdownEscapes = strings.NewReplacer("\\", "\\\\", "|", "\\|", "`", "\\`", "*", "\\*", "_", "\\_", "<", "&lt;", "[", "\\[")
