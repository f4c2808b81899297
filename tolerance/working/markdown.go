package working

import "strings"

// Markdown is the solution as CommonMark: each step a paragraph, names and
// results in bold. Characters of names that mean something in Markdown or
// HTML are escaped, so that names print as they are.
func (s Solution) Markdown() string { return string(s.AppendMarkdown(nil)) }

// AppendMarkdown appends what [Solution.Markdown] gives.
func (s Solution) AppendMarkdown(dst []byte) []byte { return s.append(dst, markdown{}) }

// markdown is a page of CommonMark.
type markdown struct{}

func (markdown) title(dst []byte, s string) []byte {
	return append(escape(append(dst, "**"...), s), "**"...)
}
func (markdown) body(dst []byte, s string) []byte     { return escape(dst, s) }
func (m markdown) answer(dst []byte, s string) []byte { return m.title(dst, s) }
func (markdown) next(dst []byte, _ int) []byte        { return append(dst, "\\\n"...) }

// special are the characters that begin something wherever they stand; of
// the others, those of opening do so at the start of a line.
const (
	special = "\\`*_{}[]<>#~&|!$^:\""
	opening = "+-="
)

func escape(dst []byte, s string) []byte {
	start := len(dst) == 0 || dst[len(dst)-1] == '\n'
	if start && s != "" && strings.IndexByte(opening, s[0]) >= 0 && !strings.HasPrefix(s, "= ") {
		dst = append(dst, '\\')
	}
	digits := start // only digits so far on this line
	for i := range len(s) {
		c := s[i]
		number := c >= '0' && c <= '9'
		switch {
		case strings.IndexByte(special, c) >= 0,
			digits && i > 0 && (c == '.' || c == ')'),   // the item of a list
			c == '.' && strings.HasSuffix(s[:i], "www"): // some renderers make it a link
			dst = append(dst, '\\')
		}
		digits = digits && number
		dst = append(dst, c)
	}
	return dst
}
