package vectors

import (
	"errors"
	"io/fs"
	"path"
	"strconv"
)

// A Kind says where the expected values of a file come from.
type Kind string

// The kinds, each the name of a folder in testdata.
const (
	Published Kind = "published" // a standard, handbook or data set
	Reference Kind = "reference" // computed by a general-purpose library
	Practice  Kind = "practice"  // common practice without a source, or from memory
	Demo      Kind = "demo"      // invented
)

func (k Kind) known() bool {
	switch k {
	case Published, Reference, Practice, Demo:
		return true
	}
	return false
}

// A File is a vector file that was read whole and found in order.
type File struct {
	Path    string
	Source  string
	Kind    Kind
	Columns []string
	Rows    []Row
}

// A Row is one case as it stands in the file.
type Row struct {
	Line   int    // in the file, from 1
	ID     string // from the column id; empty without one
	Source string // from the column source, otherwise the file's
	Note   string // what follows the last cell
	Cells  []string
}

// What can be wrong with a vector file, for errors.Is.
var (
	ErrHeader    = errors.New("header")
	ErrColumns   = errors.New("columns")
	ErrCells     = errors.New("cells")
	ErrCount     = errors.New("count")
	ErrDuplicate = errors.New("duplicate")
	ErrText      = errors.New("text") // not valid UTF-8
)

// An Error is a slip in a vector file.
type Error struct {
	Path   string
	Line   int
	Kind   error // one of the sentinels
	Detail string
}

// Error gives file:line: kind: what is wrong.
func (e *Error) Error() string {
	kind := "vectors"
	if e.Kind != nil {
		kind = e.Kind.Error()
	}
	return e.Path + ":" + strconv.Itoa(e.Line) + ": " + kind + ": " + e.Detail
}

// Is reports whether target is the error's kind.
func (e *Error) Is(target error) bool { return e.Kind != nil && target == e.Kind }

// Read reads a vector file. The error is an [*Error], or the file system's.
func Read(fsys fs.FS, name string) (*File, error) {
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, err
	}
	r := reader{file: &File{Path: name}}
	if err := r.read(string(data)); err != nil {
		return nil, err
	}
	folder := Kind(path.Base(path.Dir(name)))
	if folder.known() && folder != r.file.Kind {
		return nil, r.refuse(1, ErrHeader, "a file of kind "+string(r.file.Kind)+" in the folder "+string(folder))
	}
	return r.file, nil
}
