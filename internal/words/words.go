// Package words gives small numbered types their names in text, for every
// package that has states, rules and remedies.
package words

import (
	"strconv"
	"strings"
)

// Of is the name of a value; one without a name is given by its number.
func Of[T ~uint8](names []string, i T) string {
	if int(i) < len(names) {
		return names[i]
	}
	return "(" + strconv.Itoa(int(i)) + ")"
}

// Read finds the value that a text names. Where there is none, want lists the
// names that were expected.
func Read[T ~uint8](names []string, text []byte, into *T) (want string, ok bool) {
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return "", true
		}
	}
	var b strings.Builder
	b.WriteString("one of ")
	for i, n := range names {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(strconv.Quote(n))
	}
	return b.String(), false
}
