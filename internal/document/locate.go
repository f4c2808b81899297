package document

import (
	"encoding/json"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Place is where a value of a document begins, for an error that only what
// several fields say together can tell: a blade that can't have entered.
type Place struct {
	Line, Column int // from 1
}

// Locate finds the value at a path such as grooves[2].trials[4] in a document
// that Decode has accepted; ok is false where there is none.
func Locate(data []byte, path string) (at Place, ok bool) {
	d := json.NewDecoder(strings.NewReader(string(data)))
	d.UseNumber()
	w := walker{data: data, d: d, want: path}
	if !w.value("") {
		return Place{}, false
	}
	start := w.found
	before := string(data[:start])
	from := strings.LastIndexByte(before, '\n') + 1
	return Place{Line: 1 + strings.Count(before, "\n"), Column: 1 + utf8.RuneCountInString(before[from:])}, true
}

type walker struct {
	data  []byte
	d     *json.Decoder
	want  string
	found int
}

// value walks over one value and reports whether the wanted one is in it.
func (w *walker) value(path string) bool {
	// The offset is that of the end of the last token; blanks and the
	// separator follow.
	start := int(w.d.InputOffset())
	for start < len(w.data) && strings.IndexByte(" \t\r\n,:", w.data[start]) >= 0 {
		start++
	}
	if path == w.want {
		w.found = start
		return true
	}
	t, err := w.d.Token()
	if err != nil {
		return false
	}
	switch t {
	case json.Delim('{'):
		for w.d.More() {
			name, err := w.d.Token()
			if err != nil {
				return false
			}
			p := name.(string)
			if path != "" {
				p = path + "." + p
			}
			if w.value(p) {
				return true
			}
		}
	case json.Delim('['):
		for i := 0; w.d.More(); i++ {
			if w.value(path + "[" + strconv.Itoa(i) + "]") {
				return true
			}
		}
	default:
		return false
	}
	_, _ = w.d.Token() // the closing bracket
	return false
}
