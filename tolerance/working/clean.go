package working

import (
	"strings"
	"unicode"
)

// clean makes a name fit for one line: what isn't printed becomes a blank,
// runs of blanks become one, and what isn't UTF-8 the replacement character.
func clean(s string) string {
	for _, r := range s {
		if r == unicode.ReplacementChar || r != ' ' && !unicode.IsPrint(r) {
			s = strings.Map(printed, strings.ToValidUTF8(s, string(unicode.ReplacementChar)))
			break
		}
	}
	if strings.Contains(s, "  ") || strings.HasPrefix(s, " ") || strings.HasSuffix(s, " ") {
		s = strings.Join(strings.Fields(s), " ")
	}
	return s
}

func printed(r rune) rune {
	if unicode.IsPrint(r) {
		return r
	}
	return ' '
}
