package vectors_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"github.com/tenthou/tenthou/internal/vectors"
)

// read reads a file of the given text.
func read(text string) (*vectors.File, error) {
	return vectors.Read(fstest.MapFS{"demo.txt": {Data: []byte(text)}}, "demo.txt")
}

const header = "# source: invented\n# kind: demo\n"

func TestRead(t *testing.T) {
	got, err := read("# A remark: of its own\n" +
		"# source: a handbook: its page 7; third edition\r\n" +
		"#kind: published\r\n" +
		"\n" +
		"  # count:  3 \n" +
		"columns: id;source ; value; unit_2\n" +
		"a;-;0.07 mm;  mm  # a note # of two parts\n" +
		"\tb ; page 8 ; .0025\" ; -\n" +
		"# remark\n\n" +
		"c ; - ; 1\u00a0mm ; x y")
	require.NoError(t, err)
	require.Empty(t, cmp.Diff(&vectors.File{
		Path: "demo.txt", Source: "a handbook: its page 7; third edition", Kind: vectors.Published,
		Columns: []string{"id", "source", "value", "unit_2"},
		Rows: []vectors.Row{
			{Line: 7, ID: "a", Source: "a handbook: its page 7; third edition", Note: "a note # of two parts", Cells: []string{"a", "-", "0.07 mm", "mm"}},
			{Line: 8, ID: "b", Source: "page 8", Cells: []string{"b", "page 8", `.0025"`, "-"}},
			{Line: 11, ID: "c", Source: "a handbook: its page 7; third edition", Cells: []string{"c", "-", "1\u00a0mm", "x y"}},
		},
	}, got))
}

func TestRead_refuses(t *testing.T) {
	long := strings.Repeat("é", 100)
	for _, c := range []struct {
		text string
		kind error
		want string
	}{
		{"", vectors.ErrColumns, "1: columns: missing"},
		{header + "# count: 1\n", vectors.ErrColumns, "3: columns: missing"},
		{"# kind: demo\n# count: 1\ncolumns: a\n1", vectors.ErrHeader, "3: header: no line # source: … above the columns"},
		{"# Source: x\n# kind: demo\n# count: 1\ncolumns: a\n1", vectors.ErrHeader, "4: header: no line # source: … above the columns"},
		{"# source: x\n# count: 1\ncolumns: a\n1", vectors.ErrHeader, "3: header: no line # kind: … above the columns"},
		{header + "columns: a\n1", vectors.ErrHeader, "3: header: no line # count: … above the columns"},
		{header + "# source: y", vectors.ErrHeader, "3: header: source is given twice"},
		{header + "# kind: demo", vectors.ErrHeader, "3: header: kind is given twice"},
		{"# count: 1\n# count: 1", vectors.ErrHeader, "2: header: count is given twice"},
		{"# source:\n", vectors.ErrHeader, "1: header: source is empty"},
		{"# kind: measured", vectors.ErrHeader, `1: header: kind "measured" is not published, reference, practice or demo`},
		{"# kind: " + long, vectors.ErrHeader, `1: header: kind "` + strings.Repeat("é", 32) + `"… is not published, reference, practice or demo`},
		{"# count: 0", vectors.ErrHeader, `1: header: count "0" is not a whole number above 0`},
		{"# count: some", vectors.ErrHeader, `1: header: count "some" is not a whole number above 0`},
		{"# count: 1\n# kind: demo\n# source: x\ncolumns: a\n# source: y\n1", vectors.ErrHeader, "5: header: source is given twice"},
		{header + "# count: 1\ncolumns: a\ncolumns: a", vectors.ErrColumns, "5: columns: given twice"},
		{header + "# count: 1\n1 ; 2", vectors.ErrColumns, "4: columns: a case before the line columns: …"},
		{header + "# count: 1\ncolumns: a; b; a", vectors.ErrColumns, `4: columns: "a" is given twice`},
		{header + "# count: 1\ncolumns: a; ; b", vectors.ErrColumns, `4: columns: "" is not a name of small letters, digits and _`},
		{header + "# count: 1\ncolumns: a; B", vectors.ErrColumns, `4: columns: "B" is not a name of small letters, digits and _`},
		{header + "# count: 1\ncolumns: a; 2b", vectors.ErrColumns, `4: columns: "2b" is not a name of small letters, digits and _`},
		{header + "# count: 1\ncolumns: id; source", vectors.ErrColumns, `4: columns: nothing but id and source`},
		{header + "# count: 1\ncolumns: a; b\n1", vectors.ErrCells, `5: cells: 1 for 2 columns`},
		{header + "# count: 1\ncolumns: a; b\n1 ; 2 ; 3", vectors.ErrCells, `5: cells: 3 for 2 columns`},
		{header + "# count: 1\ncolumns: a; b\n1 ; 2 ;", vectors.ErrCells, `5: cells: 3 for 2 columns`},
		{header + "# count: 1\ncolumns: a; b\n1 ; ", vectors.ErrCells, `5: cells: b is empty; write - for no value`},
		{header + "# count: 1\ncolumns: a; b\n1 ; 2 #note", vectors.ErrCells, `5: cells: b holds a #; a note stands after a # between blanks`},
		{header + "# count: 1\ncolumns: id; b\n- ; 2", vectors.ErrCells, `5: cells: a case without its id`},
		{header + "# count: 2\ncolumns: id; b\nx ; 2\n\nx ; 3", vectors.ErrDuplicate, `7: duplicate: id "x" is also on line 5`},
		{header + "# count: 2\ncolumns: a; b\n1 ; 2\n1;2 # again", vectors.ErrDuplicate, `6: duplicate: the case on line 5 once more`},
		{header + "# count: 1\ncolumns: a\n1\n2", vectors.ErrCount, `6: count: the header says 1, the file has 2`},
		{header + "# count: 3\ncolumns: a\n1\n2\n", vectors.ErrCount, `6: count: the header says 3, the file has 2`},
		{header + "# count: 3\ncolumns: a\n", vectors.ErrCount, `4: count: the header says 3, the file has 0`},
		{header + "# count: 1\ncolumns: a\n\xe9", vectors.ErrText, `5: text: not valid UTF-8`},
		{"\ufeff" + header, vectors.ErrColumns, `1: columns: a case before the line columns: …`},
	} {
		f, err := read(c.text)
		require.Nil(t, f)
		require.EqualError(t, err, "demo.txt:"+c.want, c.text)
		require.ErrorIs(t, err, c.kind, c.text)
		var refused *vectors.Error
		require.True(t, errors.As(err, &refused))
	}
	_, err := read(header + "# count: 1\ncolumns: a\n1\n# source: y")
	require.EqualError(t, err, "demo.txt:6: header: source is given twice")
	require.Equal(t, "x:0: vectors: y", (&vectors.Error{Path: "x", Detail: "y"}).Error())
	require.NotErrorIs(t, &vectors.Error{}, nil)
}

// A file lies in the folder of its kind.
func TestRead_folder(t *testing.T) {
	text := []byte(header + "# count: 1\ncolumns: a\n1\n")
	files := fstest.MapFS{"testdata/demo/x.txt": {Data: text}, "testdata/published/x.txt": {Data: text}, "other/x.txt": {Data: text}}
	for _, good := range []string{"testdata/demo/x.txt", "other/x.txt"} {
		_, err := vectors.Read(files, good)
		require.NoError(t, err)
	}
	_, err := vectors.Read(files, "testdata/published/x.txt")
	require.EqualError(t, err, "testdata/published/x.txt:1: header: a file of kind demo in the folder published")
	_, err = vectors.Read(files, "testdata/demo/y.txt")
	require.ErrorIs(t, err, fs.ErrNotExist)
}

// Every vector file of the module is in order, and every reference file has
// the script that made it beside it, the one of its name or the one that its
// source names.
func TestRead_everyFile(t *testing.T) {
	root, err := vectors.Root()
	require.NoError(t, err)
	count := 0
	for _, kind := range []vectors.Kind{vectors.Published, vectors.Reference, vectors.Practice, vectors.Demo} {
		paths, err := filepath.Glob(filepath.Join(root, "testdata", string(kind), "*.txt"))
		require.NoError(t, err)
		for _, path := range paths {
			f := vectors.Load(t, string(kind)+"/"+filepath.Base(path))
			require.Equal(t, kind, f.Kind)
			count++
			if kind == vectors.Reference {
				script := strings.TrimSuffix(filepath.Base(path), ".txt") + ".py"
				for word := range strings.FieldsSeq(f.Source) { // one script may make several files
					if word = strings.Trim(word, "(),;"); strings.HasSuffix(word, ".py") {
						script = word
					}
				}
				_, err := os.Stat(filepath.Join(filepath.Dir(path), script))
				require.NoError(t, err, path)
			}
		}
	}
	t.Logf("%d files", count)
	require.GreaterOrEqual(t, count, 8)
}

func FuzzRead(f *testing.F) {
	f.Add(header + "# count: 1\ncolumns: id; a\nx ; 1 # note\n")
	f.Add(header + "# count: 2\ncolumns: a; b\n1;2\n-;3")
	f.Fuzz(func(t *testing.T, text string) {
		file, err := read(text)
		if err != nil {
			require.Nil(t, file)
			require.Contains(t, err.Error(), "demo.txt:")
			return
		}
		require.NotEmpty(t, file.Source)
		require.NotEmpty(t, file.Rows)
		for _, row := range file.Rows {
			require.Len(t, row.Cells, len(file.Columns))
			require.NotContains(t, row.Cells, "")
			require.Positive(t, row.Line)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	var text strings.Builder
	text.WriteString(header + "# count: 1000\ncolumns: x; num; den; even\n")
	for i := range 1000 {
		text.WriteString(strings.Repeat("1", 1+i%17) + " ; " + strings.Repeat("7", 1+i/17) + " ; 3 ; 5\n")
	}
	files := fstest.MapFS{"demo.txt": {Data: []byte(text.String())}}
	b.Run("lib=vectors/op=read", func(b *testing.B) {
		b.SetBytes(int64(len(text.String())))
		for b.Loop() {
			_, err := vectors.Read(files, "demo.txt")
			require.NoError(b, err)
		}
	})
}
