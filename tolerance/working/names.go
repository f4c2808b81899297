package working

import "strconv"

// word names the value i; one that has no name is read as the zero value.
func word(names []string, i int) string {
	if i >= len(names) {
		i = 0
	}
	return names[i]
}

func decimal(v int64) string { return strconv.FormatInt(v, 10) }

func readWord[T ~uint8](what string, names []string, text []byte, into *T) error {
	want := "one of"
	for i, n := range names {
		if n == string(text) {
			*into = T(i)
			return nil
		}
		if i > 0 {
			want += ","
		}
		want += " " + strconv.Quote(n)
	}
	return &Error{Op: "read", Field: what, Value: clip(string(text)), Kind: ErrName, Want: want}
}
