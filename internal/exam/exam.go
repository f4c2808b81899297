// Package exam is the answer key that one recipe writes and another reads: what
// was asked, and what is right.
package exam

import (
	"encoding/json"
	"fmt"

	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/units"
)

// A Key is the answers to one sheet.
type Key struct {
	Schema    int        `json:"schema"` // 1
	Seed      uint64     `json:"seed"`   // that the sheet was made from
	Questions []Question `json:"questions"`
}

// A Question is one of the sheet, with its right answer.
type Question struct {
	Name   string       `json:"name"`   // "side clearance"
	Ask    string       `json:"ask"`    // the text on the sheet
	Answer units.Length `json:"answer"` // exactly
	Within units.Length `json:"within"` // how far off is still right
	Points int          `json:"points"`
}

// Text is the key as it is kept.
func (k Key) Text() ([]byte, error) {
	b, err := json.MarshalIndent(k, "", "  ")
	return append(b, '\n'), err
}

// Read reads a key that Text wrote. The name is its file's, for messages.
func Read(name string, data []byte) (k Key, err error) {
	if _, err = document.SchemaNamed(name, data, 1); err != nil {
		return k, err
	}
	var read Key
	if err = document.DecodeNamed(name, data, &read); err != nil {
		return k, err
	}
	if len(read.Questions) == 0 {
		return k, fmt.Errorf("%s: questions: there are none", name)
	}
	for i, q := range read.Questions {
		if q.Within < 0 || q.Points < 0 {
			at, _ := document.Locate(data, fmt.Sprintf("questions[%d]", i))
			return k, fmt.Errorf("%s:%d: questions[%d]: within and points must not be below 0", name, at.Line, i)
		}
	}
	return read, nil
}
