package tolerance

import (
	"strings"

	"github.com/tenthou/tenthou/units"
)

// side is what a one-sided limit's words mean; 0 is none.
type side uint8

const (
	most side = iota + 1 // hi included
	less                 // hi left out
	least
	more
)

func (to side) upper() bool { return to == most || to == less }

func (to side) end() End {
	if to == most || to == least {
		return Closed
	}
	return Open
}

// opposite is what is allowed where what the words say is renewed.
func (to side) opposite() side { return [...]side{0, more, least, less, most}[to] }

// words before a number, the longer of two that begin alike first.
var before = []struct {
	word string
	to   side
}{
	{"not more than", most}, {"no more than", most}, {"not over", most}, {"at most", most}, {"up to", most},
	{"maximum", most}, {"max.", most}, {"max", most}, {"≤", most}, {"<=", most},
	{"less than", less}, {"under", less}, {"below", less}, {"<", less},
	{"not less than", least}, {"no less than", least}, {"not under", least}, {"at least", least},
	{"minimum", least}, {"min.", least}, {"min", least}, {"≥", least}, {">=", least},
	{"more than", more}, {"over", more}, {"above", more}, {">", more},
}

// words after a number.
var after = []struct {
	word string
	to   side
}{
	{"maximum", most}, {"max.", most}, {"max", most},
	{"minimum", least}, {"min.", least}, {"min", least},
}

// verbs say at what reading a part is renewed: the limit is the other way
// round.
var verbs = []string{"renew", "replace", "reject", "scrap"}

// orMore are the tails that say on which side of a number, the upper ones
// first.
var orMore = []string{"or more", "or over", "or above", "or less", "or under", "or below"}

// oneSided finds what the words of a one-sided limit mean, and its number.
// Without any of those words it gives no side.
func (r *reader[Q]) oneSided(p part) (to side, number part, err error) {
	p = p.trim()
	for _, verb := range verbs {
		if rest, ok := cutWord(p, verb); ok {
			return r.renewal(rest)
		}
	}
	if to, number := leading(p); to != 0 {
		return to, number, nil
	}
	for _, w := range after {
		if number, ok := cutTail(p, w.word); ok {
			return w.to, number, nil
		}
	}
	for _, tail := range orMore {
		if rest, ok := cutTail(p, tail); ok {
			return 0, p, r.fail(p.from(len(rest.s)), ErrAmbiguous, `is that allowed, or the reading to renew at? write "max …" or "min …", or "renew at … `+tail+`"`, nil)
		}
	}
	return 0, p, nil
}

// leading reads words that stand before a number.
func leading(p part) (to side, number part) {
	for _, w := range before {
		if rest, ok := cutWord(p, w.word); ok {
			return w.to, rest
		}
	}
	return 0, p
}

// renewal reads what follows "renew".
func (r *reader[Q]) renewal(p part) (to side, number part, err error) {
	for _, w := range []string{"if", "when", "at"} {
		if to, number := leading(p); to != 0 { // "at least" is one of those
			return to.opposite(), number, nil
		}
		if rest, ok := cutWord(p, w); ok {
			p = rest
		}
	}
	if to, number := leading(p); to != 0 {
		return to.opposite(), number, nil
	}
	for i, tail := range orMore {
		if rest, ok := cutTail(p, tail); ok {
			if i < 3 {
				return less, rest, nil
			}
			return more, rest, nil
		}
	}
	return 0, p, r.fail(p, ErrAmbiguous, `say on which side, as "renew at 0.10 mm or more" or "renew under 0.03 mm"`, nil)
}

// limitOf is the band of one limit.
func limitOf[Q units.Quantity](to side, w units.Written[Q]) PrintedOf[Q] {
	if to.upper() {
		return PrintedOf[Q]{BandOf: BandOf[Q]{interval(0, Absent, w.Value, to.end())}, Greatest: w}
	}
	return PrintedOf[Q]{BandOf: BandOf[Q]{interval(w.Value, to.end(), 0, Absent)}, Least: w}
}

// cutWord takes a leading word, in any case, that is followed by something
// that doesn't go on with it; a colon may follow.
func cutWord(p part, word string) (rest part, ok bool) {
	if len(p.s) < len(word) || !strings.EqualFold(p.s[:len(word)], word) {
		return p, false
	}
	rest = p.from(len(word))
	if rest.s != "" && isLetter(rest.s[0]) && isLetter(word[len(word)-1]) {
		return p, false
	}
	if strings.HasPrefix(rest.s, ":") {
		rest = rest.from(1)
	}
	return rest.trim(), true
}

// cutTail takes a word at the end, after a blank.
func cutTail(p part, word string) (rest part, ok bool) {
	n := len(p.s) - len(word)
	if n < 1 || p.s[n-1] != ' ' || !strings.EqualFold(p.s[n:], word) {
		return p, false
	}
	return p.to(n).trim(), true
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }
