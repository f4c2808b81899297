package working

import (
	"strconv"
	"strings"
)

// word names the value i; one that has no name is read as the zero value.
func word(names []string, i int) string {
	if i >= len(names) {
		i = 0
	}
	return names[i]
}

func decimal(v int64) string { return strconv.FormatInt(v, 10) }

func readWord[T ~uint8](what string, names []string, text []byte, into *T) error {
	quoted := make([]string, len(names))
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return nil
		}
		quoted[i] = strconv.Quote(n)
	}
	return &Error{Op: "read", Field: what, Value: clip(string(text)), Kind: ErrName, Want: "one of " + strings.Join(quoted, ", ")}
}
