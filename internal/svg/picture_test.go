package svg

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// elements reads a picture with encoding/xml, which knows nothing of this
// package, and counts its elements; its text is in words.
func elements(t *testing.T, b []byte) (count map[string]int, words string) {
	t.Helper()
	count = map[string]int{}
	d := xml.NewDecoder(strings.NewReader(string(b)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return count, words
		}
		require.NoError(t, err)
		switch v := token.(type) {
		case xml.StartElement:
			count[v.Name.Local]++
		case xml.CharData:
			words += string(v)
		}
	}
}

func full() *Picture {
	p := New(100, 50, "A bore & its <limits>", "What it shows.")
	p.Line(Limit, 1, 2, 3, 4)
	p.Polyline(Measured, []Point{{1, 2}, {3, 4}})
	p.Polygon(Reference, []Point{{1, 2}, {3, 4}, {5, 6}})
	p.Circle(Guide, 5, 5, 2)
	for m := range Mark(5) {
		p.Mark(m, 10, 10)
	}
	p.Text(Middle, 1, 2, "86 < 87\x00 & \"more\"")
	return p
}

func TestPicture(t *testing.T) {
	count, words := elements(t, full().Bytes())
	require.Equal(t, map[string]int{"svg": 1, "title": 1, "desc": 1, "style": 1, "rect": 1, "line": 1, "polyline": 1, "polygon": 3, "circle": 3, "path": 1, "text": 1}, count)
	require.Contains(t, words, "A bore & its <limits>")
	require.Contains(t, words, "What it shows.")
	require.Contains(t, words, "86 < 87  & \"more\"")
	require.Equal(t, full().Bytes(), full().Bytes())
}

// Meaning doesn't hang on colour: one colour for all lines on a page, and
// strokes that differ without it; a page of either kind has its own.
func TestPicture_readable(t *testing.T) {
	s := string(full().Bytes())
	require.Contains(t, s, `role="img" aria-labelledby="title desc"`)
	require.Contains(t, s, "prefers-color-scheme:dark")
	dashes := map[string]bool{}
	for line := range strings.Lines(style) {
		if _, d, ok := strings.Cut(line, "stroke-width:"); ok && strings.HasPrefix(line, ".") {
			require.False(t, dashes[d], line)
			dashes[d] = true
		}
	}
	require.Len(t, dashes, 5, "four strokes and the marks")
	require.Equal(t, 2, strings.Count(style, "stroke:#"+"000")+strings.Count(style, "stroke:#eee")-1, "lines and marks are of one colour on each page")
}

// What is no number is left out with its element; the size has bounds.
func TestPicture_absurd(t *testing.T) {
	p := New(math.NaN(), 1e9, "\xff", "")
	for _, x := range []float64{math.NaN(), math.Inf(1), 2e6} {
		p.Line(Limit, x, 0, 0, 0)
		p.Polyline(Measured, []Point{{0, 0}, {0, x}})
		p.Circle(Guide, 0, x, 1)
		p.Circle(Guide, 0, 0, -1)
		p.Mark(Dot, x, 0)
		p.Text(Start, 0, x, "")
	}
	p.Polygon(Guide, []Point{{0, 0}})
	p.Line(99, 0, 0, -0.0001, 1)
	p.Text(99, 0, 0, "\uFFFE")
	count, _ := elements(t, p.Bytes())
	require.Equal(t, map[string]int{"svg": 1, "title": 1, "desc": 1, "style": 1, "rect": 1, "line": 1, "text": 1}, count)
	require.Contains(t, string(p.Bytes()), `viewBox="0 0 1 10000"`)
	require.Contains(t, string(p.Bytes()), `<line class="guide" x1="0" y1="0" x2="0" y2="1"/>`)
}

func FuzzPicture(f *testing.F) {
	f.Add("t", "<d>", 1.0, math.Inf(-1))
	f.Add("\x00]]>", "&#0;", math.Copysign(0, -1), 1e300)
	f.Fuzz(func(t *testing.T, title, text string, x, y float64) {
		p := New(x, y, title, text)
		p.Line(Limit, x, y, y, x)
		p.Mark(Cross, x, y)
		p.Text(End, x, y, text)
		elements(t, p.Bytes())
	})
}

func BenchmarkPicture(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		full().Bytes()
	}
}

func ExampleNew() {
	p := New(40, 20, "A bore", "One reading below its limit.")
	p.Line(Limit, 5, 5, 35, 5)
	p.Mark(Dot, 20, 10)
	s := string(p.Bytes())
	fmt.Println(s[strings.Index(s, "<line"):])
	// Output:
	// <line class="limit" x1="5" y1="5" x2="35" y2="5"/>
	// <circle class="mark" cx="20" cy="10" r="0.9"/>
	// </svg>
}

// In a page no two pictures share a name, and their style is theirs alone.
func TestInline(t *testing.T) {
	p := New(100, 50, "Bore <1>", "round")
	p.Line(Limit, 0, 0, 10, 10)
	got := string(p.Inline("bore1"))
	require.Contains(t, got, `<title id="bore1-title">Bore &lt;1&gt;</title>`)
	require.Contains(t, got, `aria-labelledby="bore1-title bore1-desc" viewBox="0 0 100 50"`)
	require.NotContains(t, got, "<style>")
	require.NotContains(t, got, `id="title"`)
	for line := range strings.SplitSeq(InlineStyle(), "\n") {
		if selectors, _, ok := strings.Cut(line, "{"); ok && !strings.HasPrefix(line, "@") {
			for one := range strings.SplitSeq(selectors, ",") {
				require.True(t, strings.HasPrefix(one, ".drawn "), one)
			}
		}
	}
	require.Contains(t, InlineStyle(), "prefers-color-scheme:dark")
}
