// Package engine joins the four part packages: one engine's limits and readings
// in, one report out. What one part's work does to another (a bored block asks
// for other pistons, its bores for other ring gaps) goes across here, since no
// part package knows another.
package engine

import (
	"encoding/json"
	"errors"
	"strings"

	"github.com/tenthou/tenthou/crank"
	"github.com/tenthou/tenthou/cylinder"
	"github.com/tenthou/tenthou/internal/document"
	"github.com/tenthou/tenthou/piston"
	"github.com/tenthou/tenthou/tolerance/inspection"
	"github.com/tenthou/tenthou/valvetrain"
)

// Limits are what the manual and the shop give for the whole engine. A part
// that is left out is not inspected.
type Limits struct {
	Cylinder   *cylinder.Limits   `json:"cylinder,omitzero"`
	Piston     *piston.Limits     `json:"piston,omitzero"`
	Crank      *crank.Limits      `json:"crank,omitzero"`
	Valvetrain *valvetrain.Limits `json:"valvetrain,omitzero"`
}

// Readings are what was measured and seen of it.
type Readings struct {
	Cylinder   *cylinder.Readings   `json:"cylinder,omitzero"`
	Piston     *piston.Readings     `json:"piston,omitzero"`
	Crank      *crank.Readings      `json:"crank,omitzero"`
	Valvetrain *valvetrain.Readings `json:"valvetrain,omitzero"`
}

// A Document is one engine.
type Document struct {
	Schema   int      `json:"schema"`           // 1
	Engine   string   `json:"engine"`           // which one
	Limits   *Limits  `json:"limits,omitempty"` // may come from elsewhere
	Readings Readings `json:"readings"`         // as it came in; half filled in is the normal case
	// Built is what was measured again after the work, to be held against what
	// was predicted from Readings.
	Built *Readings `json:"built,omitempty"`
}

// ErrNoLimits is of a document that brings no limits where none were given.
var ErrNoLimits = errors.New("there are no limits to inspect by")

// Read reads a document. The name is its file's, for messages.
func Read(name string, data []byte) (Document, error) {
	var d Document
	if _, err := document.SchemaNamed(name, data, 1); err != nil {
		return d, err
	}
	err := document.DecodeNamed(name, data, &d)
	return d, err
}

// ReadLimits reads limits alone: the same document, whose readings are passed
// over.
func ReadLimits(name string, data []byte) (Document, error) {
	d, err := Read(name, data)
	if err == nil && d.Limits == nil {
		err = document.At(name, data, "", ErrNoLimits)
	}
	return d, err
}

// Locate gives an error of Inspect its line in the document that it came from.
func Locate(name string, data []byte, err error) error {
	var at *inspection.PathError
	if !errors.As(err, &at) {
		return document.At(name, data, "", err)
	}
	return document.At(name, data, at.Path, at.Err)
}

// JSON is the document as a file.
func (d *Document) JSON() ([]byte, error) {
	b, err := json.MarshalIndent(d, "", "  ")
	return append(b, '\n'), err
}

// Blank is an empty readings document for these limits: the skeleton that what
// was written on the bench sheet is typed into.
func (l *Limits) Blank(engine string) Document {
	d := Document{Schema: 1, Engine: engine, Limits: l}
	if l.Cylinder != nil {
		r := l.Cylinder.Blank()
		d.Readings.Cylinder = &r
	}
	if l.Piston != nil {
		r := l.Piston.Blank()
		d.Readings.Piston = &r
	}
	if l.Crank != nil {
		r := l.Crank.Blank()
		d.Readings.Crank = &r
	}
	if l.Valvetrain != nil {
		r := l.Valvetrain.Blank()
		d.Readings.Valvetrain = &r
	}
	return d
}

// path is a part's own path as one of the whole document. Those of limits begin
// with the word.
func path(readings, part, own string) string {
	if own == "limits" || strings.HasPrefix(own, "limits.") {
		return "limits." + part + strings.TrimPrefix(own, "limits")
	}
	if own == "" {
		return readings + "." + part
	}
	return readings + "." + part + "." + own
}
