// Command unitgen writes the methods that every quantity of package units
// has alike: one template, so that no type has a method of its own making.
//
//	go generate ./units
package main

import (
	"bytes"
	_ "embed"
	"fmt"
	"go/format"
	"os"
	"path/filepath"
	"strings"
	"text/template"
)

//go:embed methods.tmpl
var source string

var methods = template.Must(template.New("methods").Parse(source))

// Kind is what the template is told of one quantity.
type Kind struct {
	Type    string // Go type
	Var     string // receiver
	Table   string // its table of units
	Words   string // "length"
	Article string // "a length"
	Text    string // the unit of the text form
	Else    string // which unit takes what that one has no finite decimal for
	Affine  bool   // no arithmetic of its own: temperature
}

var kinds = []Kind{
	{"Length", "l", "lengths", "length", "a length", "millimetres", "", false},
	{"Angle", "a", "angles", "angle", "an angle", "degrees", " (where that has no end, in degrees, minutes and seconds)", false},
	{"Volume", "c", "volumes", "volume", "a volume", "cubic centimetres", "", false},
	{"Mass", "m", "masses", "mass", "a mass", "grams", "", false},
	{"Force", "f", "forces", "force", "a force", "newtons", "", false},
	{"Pressure", "p", "pressures", "pressure", "a pressure", "kilopascals", " (where that has no end, in another unit that has)", false},
	{"SpringRate", "k", "springRates", "spring rate", "a spring rate", "newtons per millimetre", " (where that has no end, in another unit that has)", false},
	{"TemperatureDifference", "dt", "temperatureDifferences", "temperature difference", "a temperature difference", "kelvins", " (where that has no end, in degrees Fahrenheit)", false},
	{"Temperature", "t", "temperatures", "temperature", "a temperature", "degrees Celsius", " (where that has no end, in degrees Fahrenheit)", true},
}

// Render gives the file name and content for one kind.
func Render(k Kind) (name string, content []byte, err error) {
	var buf bytes.Buffer
	if err := methods.Execute(&buf, k); err != nil {
		return "", nil, err
	}
	content, err = format.Source(buf.Bytes())
	if err != nil {
		return "", nil, fmt.Errorf("unitgen: %s: %w", k.Type, err)
	}
	return strings.ToLower(k.Type) + "_methods.go", content, nil
}

// write makes the files in a folder.
func write(dir string) error {
	for _, k := range kinds {
		name, content, err := Render(k)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, name), content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

func main() {
	dir := "."
	if len(os.Args) > 1 {
		dir = os.Args[1]
	}
	if err := write(dir); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
