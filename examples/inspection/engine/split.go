package engine

import "bytes"

// split takes the top-level field "limits" out of a document on one line, so
// that engines of one kind need their limits read once: limits is its value as
// written, rest the document without it. ok is false where that can't be done
// simply; then the document is read as it is, and refused where it must be.
func split(record []byte) (limits, rest []byte, ok bool) {
	depth, from, to := 0, -1, -1
	fieldFrom := 0
	for i := 0; i < len(record); {
		switch c := record[i]; c {
		case '{', '[':
			depth++
			i++
		case '}', ']':
			if depth--; depth == 0 && from >= 0 && to < 0 {
				to = i
			}
			i++
		case ',':
			if depth == 1 && from >= 0 && to < 0 {
				to = i
			}
			i++
		case '"':
			end := closing(record, i)
			if end < 0 {
				return nil, nil, false
			}
			name := record[i : end+1]
			i = end + 1
			if depth != 1 || !bytes.Equal(name, []byte(`"limits"`)) {
				continue
			}
			colon := i
			for colon < len(record) && (record[colon] == ' ' || record[colon] == '\t') {
				colon++
			}
			if colon == len(record) || record[colon] != ':' {
				continue // a value, not a field
			}
			if from >= 0 {
				return nil, nil, false // twice
			}
			fieldFrom, from = i-len(name), colon+1
			i = from
		default:
			i++
		}
	}
	if from < 0 || to < 0 || depth != 0 {
		return nil, nil, false
	}
	limits = bytes.TrimSpace(record[from:to])
	if len(limits) == 0 || limits[0] != '{' {
		return nil, nil, false
	}
	before, after := bytes.TrimRight(record[:fieldFrom], " \t"), record[to:]
	switch {
	case after[0] == ',':
		after = after[1:]
	case len(before) > 0 && before[len(before)-1] == ',':
		before = before[:len(before)-1]
	}
	return limits, append(append(make([]byte, 0, len(before)+len(after)), before...), after...), true
}

// closing is where the text that begins at i ends.
func closing(b []byte, i int) int {
	for i++; i < len(b); i++ {
		next := bytes.IndexByte(b[i:], '"')
		if next < 0 {
			return -1
		}
		if slash := bytes.IndexByte(b[i:i+next], '\\'); slash >= 0 {
			i += slash + 1 // the escaped byte is passed over
			continue
		}
		return i + next
	}
	return -1
}
