package svg

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// A Stroke says what a line means, which decides how it is drawn.
type Stroke uint8

// The strokes.
const (
	Guide     Stroke = iota // thin: axes, frames, leaders
	Measured                // thick: what was measured
	Limit                   // dashed: what is allowed
	Reference               // chain: what it is measured from
)

var strokeNames = [...]string{"guide", "measured", "limit", "reference"}

func (s Stroke) class() string {
	if int(s) >= len(strokeNames) {
		s = Guide
	}
	return strokeNames[s]
}

// An Anchor says which part of a text stands at its place.
type Anchor uint8

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

var anchorNames = [...]string{"start", "middle", "end"}

func (a Anchor) word() string {
	if int(a) >= len(anchorNames) {
		a = Start
	}
	return anchorNames[a]
}

// A Mark is the shape of a point. Different things get different shapes.
type Mark uint8

// The marks.
const (
	Dot Mark = iota
	Square
	Triangle
	Cross
)

// A Point is a place in a picture, in millimetres.
type Point struct{ X, Y float64 }

// style is for every picture alike. Colours follow the reader's page, and paper.
const style = `<style>
.paper{fill:#fff}
.guide,.measured,.limit,.reference{fill:none;stroke:#000;stroke-linejoin:round;stroke-linecap:round}
.guide{stroke-width:.2}
.measured{stroke-width:.7}
.limit{stroke-width:.4;stroke-dasharray:2 1.2}
.reference{stroke-width:.3;stroke-dasharray:4 1 .6 1}
.mark{fill:#000;stroke:#000;stroke-width:.4}
text{fill:#000;font-family:sans-serif;font-size:3.2px}
@media screen and (prefers-color-scheme:dark){
.paper{fill:#111}
.guide,.measured,.limit,.reference,.mark{stroke:#eee}
.mark,text{fill:#eee}
}
</style>
`

// A Picture is one that is being built. Its methods add what lies on top of
// what was added before.
type Picture struct {
	width, height, title, description string
	body                              []byte
}

// New begins a picture of a size in millimetres, at least 1 and at most 10 000.
// The title names it, the description says in words what it shows.
func New(width, height float64, title, description string) *Picture {
	return &Picture{width: number(side(width)), height: number(side(height)), title: escape(title), description: escape(description)}
}

func side(x float64) float64 {
	if !(x >= 1) {
		return 1
	}
	return min(x, 10_000)
}

// Bytes is the picture as it stands.
func (p *Picture) Bytes() []byte {
	return p.write(`<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-labelledby="title desc" width="`+p.width+`mm" height="`+p.height+`mm"`, "", style)
}

// Inline is the picture as a part of an HTML page, whose style sheet needs
// [InlineStyle] once. The id, letters and digits that no other picture of the
// page has, keeps the names of its parts apart. The page gives it its size.
func (p *Picture) Inline(id string) []byte {
	return p.write(`<svg class="drawn" role="img" aria-labelledby="`+id+`-title `+id+`-desc"`, id+"-", "")
}

func (p *Picture) write(open, id, style string) []byte {
	all := make([]byte, 0, len(open)+len(p.title)+len(p.description)+len(style)+len(p.body)+256)
	for _, s := range [...]string{
		open, ` viewBox="0 0 `, p.width, " ", p.height, "\">\n",
		`<title id="`, id, `title">`, p.title, "</title>\n", `<desc id="`, id, `desc">`, p.description, "</desc>\n", style,
		`<rect class="paper" width="`, p.width, `" height="`, p.height, "\"/>\n",
	} {
		all = append(all, s...)
	}
	return append(append(all, p.body...), "</svg>\n"...)
}

// InlineStyle is the style sheet of [Picture.Inline], for pictures alone.
func InlineStyle() string {
	in := strings.TrimSuffix(strings.TrimPrefix(style, "<style>\n"), "</style>\n")
	return strings.NewReplacer(".paper", ".drawn .paper", ".guide", ".drawn .guide", ".measured", ".drawn .measured", ".limit", ".drawn .limit",
		".reference", ".drawn .reference", ".mark", ".drawn .mark", "text{", ".drawn text{").Replace(in)
}

// Line draws from one place to another.
func (p *Picture) Line(s Stroke, x1, y1, x2, y2 float64) {
	if usable(x1, y1, x2, y2) {
		p.add(`<line class="`, s.class(), `" x1="`, number(x1), `" y1="`, number(y1), `" x2="`, number(x2), `" y2="`, number(y2), "\"/>\n")
	}
}

// Polyline draws through points; Polygon closes it.
func (p *Picture) Polyline(s Stroke, points []Point) { p.path("polyline", s, points) }

// Polygon draws round through points.
func (p *Picture) Polygon(s Stroke, points []Point) { p.path("polygon", s, points) }

func (p *Picture) path(element string, s Stroke, points []Point) {
	if len(points) < 2 {
		return
	}
	for _, q := range points {
		if !usable(q.X, q.Y) {
			return
		}
	}
	p.add("<", element, ` class="`, s.class(), `" points="`)
	for i, q := range points {
		if i > 0 {
			p.add(" ")
		}
		p.add(number(q.X), ",", number(q.Y))
	}
	p.add("\"/>\n")
}

// Circle draws a circle about a place.
func (p *Picture) Circle(s Stroke, x, y, radius float64) {
	if usable(x, y, radius) && radius >= 0 {
		p.add(`<circle class="`, s.class(), `" cx="`, number(x), `" cy="`, number(y), `" r="`, number(radius), "\"/>\n")
	}
}

// Mark sets a point, about 2 mm across.
func (p *Picture) Mark(m Mark, x, y float64) {
	if !usable(x, y) {
		return
	}
	const r = 0.9
	at := func(points ...Point) string {
		var s []string
		for _, q := range points {
			s = append(s, number(x+q.X)+","+number(y+q.Y))
		}
		return strings.Join(s, " ")
	}
	switch m {
	case Square:
		p.add(`<polygon class="mark" points="`, at(Point{-r, -r}, Point{r, -r}, Point{r, r}, Point{-r, r}), "\"/>\n")
	case Triangle:
		p.add(`<polygon class="mark" points="`, at(Point{0, -r}, Point{r, r}, Point{-r, r}), "\"/>\n")
	case Cross:
		p.add(`<path class="mark" d="M`, at(Point{-r, -r}), "L", at(Point{r, r}), "M", at(Point{r, -r}), "L", at(Point{-r, r}), "\"/>\n")
	default:
		p.add(`<circle class="mark" cx="`, number(x), `" cy="`, number(y), `" r="`, number(r), "\"/>\n")
	}
}

// Text writes a line of text, 3.2 mm high, on its base line.
func (p *Picture) Text(a Anchor, x, y float64, text string) {
	if usable(x, y) {
		p.add(`<text text-anchor="`, a.word(), `" x="`, number(x), `" y="`, number(y), `">`, escape(text), "</text>\n")
	}
}

func (p *Picture) add(parts ...string) {
	for _, s := range parts {
		p.body = append(p.body, s...)
	}
}

func usable(xs ...float64) bool {
	for _, x := range xs {
		if !(math.Abs(x) <= 1e6) {
			return false
		}
	}
	return true
}

// number writes x to a thousandth, without the zeros at its end.
func number(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	s = strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
	if s == "-0" || s == "" {
		return "0"
	}
	return s
}

// escape makes a text safe between tags.
func escape(s string) string {
	var b strings.Builder
	for _, r := range strings.ToValidUTF8(s, "\uFFFD") {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case unicode.IsControl(r) || r == 0xFFFE || r == 0xFFFF:
			b.WriteByte(' ') // XML 1.0 has no others
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
