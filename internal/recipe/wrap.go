package recipe

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks a text into lines of at most so many characters, at its blanks,
// for a page of fixed-width letters. The first line begins with first and
// the others with rest; a word that is longer than a line has one of its own.
func Wrap(text string, width int, first, rest string) string {
	var b strings.Builder
	b.WriteString(first)
	used := utf8.RuneCountInString(first)
	fresh := true
	for word := range strings.FieldsSeq(text) {
		n := utf8.RuneCountInString(word)
		switch {
		case fresh:
		case used+1+n > width:
			b.WriteString("\n" + rest)
			used = utf8.RuneCountInString(rest)
		default:
			b.WriteByte(' ')
			used++
		}
		b.WriteString(word)
		used += n
		fresh = false
	}
	b.WriteByte('\n')
	return b.String()
}
