package vectors

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A reader takes a file line by line.
type reader struct {
	file  *File
	count int            // of the header; 0 until it is read
	ids   map[string]int // lines of the ids
	rows  map[string]int // lines of the cells
}

func (r *reader) refuse(line int, kind error, detail string) *Error {
	return &Error{Path: r.file.Path, Line: line, Kind: kind, Detail: detail}
}

func (r *reader) read(data string) error {
	r.ids, r.rows = map[string]int{}, map[string]int{}
	line := 0
	for text := range strings.Lines(data) {
		line++
		if !utf8.ValidString(text) {
			return r.refuse(line, ErrText, "not valid UTF-8")
		}
		if err := r.line(line, strings.Trim(text, " \t\r\n")); err != nil {
			return err
		}
	}
	line = max(line, 1)
	switch {
	case r.file.Columns == nil:
		return r.refuse(line, ErrColumns, "missing")
	case len(r.file.Rows) != r.count:
		return r.refuse(line, ErrCount, "the header says "+strconv.Itoa(r.count)+", the file has "+strconv.Itoa(len(r.file.Rows)))
	}
	return nil
}

func (r *reader) line(n int, text string) error {
	if remark, ok := strings.CutPrefix(text, "#"); ok {
		return r.header(n, remark)
	}
	if text == "" {
		return nil
	}
	if names, ok := strings.CutPrefix(text, "columns:"); ok {
		return r.columns(n, names)
	}
	if r.file.Columns == nil {
		return r.refuse(n, ErrColumns, "a case before the line columns: …")
	}
	return r.row(n, text)
}

// header takes a line that begins with #; most are remarks.
func (r *reader) header(n int, text string) error {
	key, value, _ := strings.Cut(text, ":")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	given := false
	switch key {
	case "source":
		given = r.file.Source != ""
		r.file.Source = value
	case "kind":
		given = r.file.Kind != ""
		r.file.Kind = Kind(value)
		if !r.file.Kind.known() {
			return r.refuse(n, ErrHeader, "kind "+quote(value)+" is not published, reference, practice or demo")
		}
	case "count":
		given = r.count != 0
		var err error
		if r.count, err = strconv.Atoi(value); err != nil || r.count < 1 {
			return r.refuse(n, ErrHeader, "count "+quote(value)+" is not a whole number above 0")
		}
	default:
		return nil
	}
	switch {
	case value == "":
		return r.refuse(n, ErrHeader, key+" is empty")
	case given:
		return r.refuse(n, ErrHeader, key+" is given twice")
	case r.file.Columns != nil:
		return r.refuse(n, ErrHeader, key+" stands below the line columns: …")
	}
	return nil
}

func (r *reader) columns(n int, text string) error {
	switch {
	case r.file.Columns != nil:
		return r.refuse(n, ErrColumns, "given twice")
	case r.file.Source == "":
		return r.refuse(n, ErrHeader, "no line # source: … above the columns")
	case r.file.Kind == "":
		return r.refuse(n, ErrHeader, "no line # kind: … above the columns")
	case r.count == 0:
		return r.refuse(n, ErrHeader, "no line # count: … above the columns")
	}
	values := 0
	for _, name := range cells(text) {
		if !plain(name) {
			return r.refuse(n, ErrColumns, quote(name)+" is not a name of small letters, digits and _")
		}
		if slices.Contains(r.file.Columns, name) {
			return r.refuse(n, ErrColumns, quote(name)+" is given twice")
		}
		if name != "id" && name != "source" {
			values++
		}
		r.file.Columns = append(r.file.Columns, name)
	}
	if values == 0 {
		return r.refuse(n, ErrColumns, "nothing but id and source")
	}
	return nil
}

// row takes a case.
func (r *reader) row(n int, text string) error {
	text, note, _ := strings.Cut(text, " # ")
	row := Row{Line: n, Source: r.file.Source, Note: strings.TrimSpace(note), Cells: cells(text)}
	if got, want := len(row.Cells), len(r.file.Columns); got != want {
		return r.refuse(n, ErrCells, strconv.Itoa(got)+" for "+strconv.Itoa(want)+" columns")
	}
	for i, cell := range row.Cells {
		name := r.file.Columns[i]
		switch {
		case cell == "":
			return r.refuse(n, ErrCells, name+" is empty; write - for no value")
		case strings.Contains(cell, "#"):
			return r.refuse(n, ErrCells, name+" holds a #; a note stands after a # between blanks")
		case name == "source" && cell != "-":
			row.Source = cell
		case name == "id" && cell == "-":
			return r.refuse(n, ErrCells, "a case without its id")
		case name == "id":
			row.ID = cell
			if first, ok := r.ids[cell]; ok {
				return r.refuse(n, ErrDuplicate, "id "+quote(cell)+" is also on line "+strconv.Itoa(first))
			}
			r.ids[cell] = n
		}
	}
	whole := strings.Join(row.Cells, ";")
	if first, ok := r.rows[whole]; ok {
		return r.refuse(n, ErrDuplicate, "the case on line "+strconv.Itoa(first)+" once more")
	}
	r.rows[whole] = n
	r.file.Rows = append(r.file.Rows, row)
	return nil
}

// cells takes a line apart.
func cells(text string) []string {
	parts := strings.Split(text, ";")
	for i := range parts {
		parts[i] = strings.Trim(parts[i], " \t")
	}
	return parts
}

// plain reports whether a column's name is one.
func plain(name string) bool {
	for i, r := range name {
		if (r < 'a' || r > 'z') && (i == 0 || r != '_' && (r < '0' || r > '9')) {
			return false
		}
	}
	return name != ""
}

// quote quotes at most 64 bytes of a file.
func quote(s string) string {
	if len(s) <= 64 {
		return strconv.Quote(s)
	}
	return strconv.Quote(strings.ToValidUTF8(s[:64], "")) + "…"
}
