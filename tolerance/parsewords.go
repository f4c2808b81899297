package tolerance

import (
	"errors"
	"strings"

	"github.com/tenthou/tenthou/units"
)

// side is what a one-sided limit's words mean.
type side uint8

const (
	most side = iota + 1 // hi included
	less                 // hi left out
	least
	more
)

// words before a number, the longer of two that begin alike first.
var before = []struct {
	word string
	side side
}{
	{"not more than", most}, {"no more than", most}, {"not over", most}, {"at most", most}, {"up to", most},
	{"maximum", most}, {"max.", most}, {"max", most}, {"≤", most}, {"<=", most},
	{"less than", less}, {"under", less}, {"below", less}, {"<", less},
	{"not less than", least}, {"no less than", least}, {"not under", least}, {"at least", least},
	{"minimum", least}, {"min.", least}, {"min", least}, {"≥", least}, {">=", least},
	{"more than", more}, {"over", more}, {"above", more}, {">", more},
}

var after = []struct {
	word string
	side side
}{
	{"maximum", most}, {"max.", most}, {"max", most},
	{"minimum", least}, {"min.", least}, {"min", least},
}

// verbs say at what reading a part is renewed: the limit is the other way
// round.
var verbs = []string{"renew", "replace", "reject", "scrap"}

// oneSided reads a limit on one side; ok is false where s holds none of its
// words.
func (r *bandReader[Q]) oneSided(s string) (p PrintedOf[Q], ok bool, err error) {
	for _, verb := range verbs {
		if rest, ok := cutWord(s, verb); ok {
			p, err := r.renewal(rest)
			return p, true, err
		}
	}
	for _, w := range before {
		if rest, ok := cutWord(s, w.word); ok {
			p, err := r.limit(rest, w.side)
			return p, true, err
		}
	}
	for _, w := range after {
		if n := len(s) - len(w.word); n > 0 && strings.EqualFold(s[n:], w.word) && s[n-1] == ' ' {
			p, err := r.limit(s[:n], w.side)
			return p, true, err
		}
	}
	for _, tail := range []string{"or more", "or less", "or over", "or under"} {
		if hasTail(s, tail) {
			return p, true, r.fail(ErrAmbiguous, `is that allowed, or the reading to renew at? write "min …" or "max …", or "renew at … `+tail+`"`, nil)
		}
	}
	return p, false, nil
}

// renewal reads what follows "renew".
func (r *bandReader[Q]) renewal(s string) (PrintedOf[Q], error) {
	for _, w := range []string{"if", "when", "at"} {
		if rest, ok := cutWord(s, w); ok {
			s = rest
		}
	}
	for _, tail := range []string{"or more", "or over", "or above"} {
		if hasTail(s, tail) {
			return r.limit(s[:len(s)-len(tail)], less)
		}
	}
	for _, tail := range []string{"or less", "or under", "or below"} {
		if hasTail(s, tail) {
			return r.limit(s[:len(s)-len(tail)], more)
		}
	}
	opposite := map[side]side{more: most, least: less, less: least, most: more}
	for _, w := range before {
		if rest, ok := cutWord(s, w.word); ok {
			return r.limit(rest, opposite[w.side])
		}
	}
	return PrintedOf[Q]{}, r.fail(ErrAmbiguous, `say on which side: "renew at 0.10 mm or more", "renew over 0.10 mm", "renew under 0.03 mm"`, nil)
}

func (r *bandReader[Q]) limit(s string, to side) (PrintedOf[Q], error) {
	w, err := r.number(strings.TrimPrefix(strings.TrimSpace(s), ":"), nil)
	if err != nil {
		return PrintedOf[Q]{}, err
	}
	switch to {
	case most:
		return PrintedOf[Q]{BandOf: AtMost(w.Value), Greatest: w}, nil
	case less:
		return PrintedOf[Q]{BandOf: LessThan(w.Value), Greatest: w}, nil
	case least:
		return PrintedOf[Q]{BandOf: AtLeast(w.Value), Least: w}, nil
	}
	return PrintedOf[Q]{BandOf: MoreThan(w.Value), Least: w}, nil
}

// cutWord takes a leading word, in any case, that is followed by something
// that doesn't go on with it.
func cutWord(s, word string) (rest string, ok bool) {
	if len(s) < len(word) || !strings.EqualFold(s[:len(word)], word) {
		return "", false
	}
	rest = s[len(word):]
	if rest != "" && isLetter(rest[0]) && isLetter(word[len(word)-1]) {
		return "", false
	}
	return strings.TrimSpace(rest), true
}

func hasTail(s, tail string) bool {
	n := len(s) - len(tail)
	return n > 0 && strings.EqualFold(s[n:], tail) && s[n-1] == ' '
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// deviations reads a size and two signed deviations from it; ok is false
// where s has no such pair.
func (r *bandReader[Q]) deviations(s string) (p PrintedOf[Q], ok bool, err error) {
	at := deviationStart(s)
	if at < 0 {
		return p, false, nil
	}
	size, rest := s[:at], s[at:]
	d1, d2, ok := cutDeviations(rest)
	if !ok {
		return p, false, nil
	}
	const want = `a size with two signed deviations, as "73.00 +0.03/-0.01 mm"`
	if !isDeviation(d1) || !isDeviation(d2) {
		return p, true, r.fail(ErrSyntax, want, nil)
	}
	a, b, err := r.pair(d1, d2)
	if errors.Is(err, units.ErrNoUnit) {
		// The unit may stand by the size.
		w, sizeErr := r.number(size, nil)
		if sizeErr != nil {
			return p, true, err
		}
		if a, err = r.number(d1, &w.Unit); err == nil {
			b, err = r.number(d2, &w.Unit)
		}
	}
	if err != nil {
		return p, true, err
	}
	w, err := r.number(size, &b.Unit)
	if err != nil {
		return p, true, err
	}
	lo, hi := min(a.Value, b.Value), max(a.Value, b.Value)
	band, err := Between(checkedAdd(w.Value, lo), checkedAdd(w.Value, hi))
	if err != nil {
		return p, true, r.fail(ErrOrder, want, err)
	}
	return PrintedOf[Q]{BandOf: band}, true, nil
}

// deviationStart is where the first deviation begins: a sign, or "0/", after
// a number and a space.
func deviationStart(s string) int {
	for i, c := range s {
		if i == 0 || s[i-1] != ' ' || !endsNumber(s[:i]) {
			continue
		}
		if c == '+' || (c == '-' || c == '−') && strings.ContainsAny(s[i:], "/+") || strings.HasPrefix(s[i:], "0/") || strings.HasPrefix(s[i:], "0 -") || strings.HasPrefix(s[i:], "0 −") {
			return i
		}
	}
	return -1
}

// cutDeviations splits a pair at its slash, or before the second sign. A
// slash inside a fraction has a digit after it and no sign.
func cutDeviations(s string) (a, b string, ok bool) {
	for i, c := range s {
		if i == 0 {
			continue
		}
		rest := strings.TrimLeft(s[i:], "/ ")
		signed := strings.HasPrefix(rest, "+") || strings.HasPrefix(rest, "-") || strings.HasPrefix(rest, "−")
		zero := c == '/' && strings.HasPrefix(rest, "0") && !strings.HasPrefix(rest, "0.") && !strings.HasPrefix(rest, "0,")
		if (c == '/' || c == ' ') && (signed || zero) {
			return s[:i], rest, true
		}
	}
	return "", "", false
}

// isDeviation reports whether s begins with a sign or is zero.
func isDeviation(s string) bool {
	s = strings.TrimSpace(s)
	return strings.HasPrefix(s, "+") || strings.HasPrefix(s, "-") || strings.HasPrefix(s, "−") || strings.HasPrefix(s, "0")
}
