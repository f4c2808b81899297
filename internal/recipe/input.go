package recipe

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
)

// MaxInput is the most bytes that a recipe reads, as for a document.
const MaxInput = 64 << 20

// What ReadInput refuses, for errors.Is, beside the file system's own errors.
var (
	ErrTooLong = errors.New("longer than 64 MiB")
	ErrNoInput = errors.New("no file named; - is the standard input")
)

// An InputError is an input that could not be read.
type InputError struct {
	Name string // the file, or "standard input"; empty if none was named
	Err  error
}

// Error names the input and says what is wrong with it.
func (e *InputError) Error() string {
	text := "refused"
	if e.Err != nil {
		text = e.Err.Error()
	}
	name := "input"
	if e.Name != "" {
		name = short(e.Name)
	}
	return name + ": " + text
}

// Unwrap gives the error that came from reading.
func (e *InputError) Unwrap() error { return e.Err }

// ReadInput reads a file whole, or standard input where the path is "-". The
// error is an [*InputError] that names it.
func ReadInput(path string, stdin io.Reader) ([]byte, error) {
	switch path {
	case "":
		return nil, &InputError{Err: ErrNoInput}
	case "-":
		return readAll("standard input", stdin)
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, inputError(path, err)
	}
	defer f.Close()
	return readAll(path, f)
}

func readAll(name string, r io.Reader) ([]byte, error) {
	if r == nil {
		return nil, &InputError{Name: name, Err: fs.ErrClosed}
	}
	data, err := io.ReadAll(io.LimitReader(r, MaxInput+1))
	if err != nil {
		return nil, inputError(name, err)
	}
	if len(data) > MaxInput {
		return nil, &InputError{Name: name, Err: ErrTooLong}
	}
	return data, nil
}

// inputError leaves out the operation and the path that the file system's error
// repeats.
func inputError(name string, err error) error {
	var of *fs.PathError
	if errors.As(err, &of) {
		err = of.Err
	}
	return &InputError{Name: name, Err: err}
}

// A Source is what a recipe works on: the file that its -in names, or the
// invented one that it carries.
type Source struct {
	name  string
	data  []byte
	path  string
	given bool
}

// Input defines the flag -in, with the invented file that stands in for it.
// The usage has the word for the value in back quotes.
func (s *Set) Input(name string, demo []byte, usage string) *Source {
	src := &Source{name: name, data: demo}
	s.Func("in", usage, func(path string) error {
		src.path, src.given = path, true
		return nil
	})
	return src
}

// Read gives the input and the name that errors in it begin with. The error
// is an [*InputError].
func (s *Source) Read(stdin io.Reader) (name string, data []byte, err error) {
	if !s.given {
		return s.name, s.data, nil
	}
	data, err = ReadInput(s.path, stdin)
	if name = s.path; name == "-" {
		name = "standard input"
	}
	return name, data, err
}

// Demo reports whether no file was named, so that the invented one stands in.
func (s *Source) Demo() bool { return !s.given }

// Open gives the input as a stream, for what is too long to hold, with its name
// and what closes it. The error is an [*InputError].
func (s *Source) Open(stdin io.Reader) (name string, stream io.Reader, done func(), err error) {
	switch {
	case !s.given:
		return s.name, bytes.NewReader(s.data), func() {}, nil
	case s.path == "-":
		return "standard input", stdin, func() {}, nil
	case s.path == "":
		return "", nil, nil, &InputError{Err: ErrNoInput}
	}
	f, err := os.Open(s.path)
	if err != nil {
		return "", nil, nil, inputError(s.path, err)
	}
	return s.path, f, func() { f.Close() }, nil
}
