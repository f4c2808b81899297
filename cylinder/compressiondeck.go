package cylinder

import (
	"strconv"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
	"github.com/tenthou/tenthou/units"
)

// A Deck is where a piston's crown stands at top dead centre, measured at the
// crown's flat edge: so far below the block face, or so far above it. A plain
// number leaves open which, and the wrong sign moves the ratio the wrong way,
// so a deck always says it. Make one with [DeckBelow], [DeckAbove] or
// [ParseDeck]; the zero Deck was not measured.
//
// Its text is "0.3 mm below", "0.05 mm above" or "level".
type Deck struct{ below tolerance.Bracket }

// DeckBelow is a crown that stops so far below the block face.
func DeckBelow(depth tolerance.Bracket) Deck { return Deck{depth} }

// DeckAbove is a crown that stops so far above the block face (proud of it).
func DeckAbove(height tolerance.Bracket) Deck {
	return Deck{tolerance.Exactly(units.Length(0)).Sub(height)}
}

// LevelDeck is a crown that stops level with the block face.
func LevelDeck() Deck { return Deck{tolerance.Exactly(units.Length(0))} }

// Below is how far the crown stops below the block face; below zero where it
// stands above.
func (d Deck) Below() tolerance.Bracket { return d.below }

// Above is how far the crown stands above the block face; below zero where it
// stops below.
func (d Deck) Above() tolerance.Bracket { return DeckAbove(d.below).below }

// IsZero reports whether the deck was not measured.
func (d Deck) IsZero() bool { return d.below.IsZero() }

const deckForms = `a deck such as "0.30 mm below", "0.05 ±0.01 mm above" or "level"`

// ParseDeck reads a deck: a length, alone or with its error, and "below" or
// "above" (the block face), or "level". Anything else, a length below zero
// too, is an [InputError].
func ParseDeck(s string) (Deck, error) {
	text := strings.TrimSpace(s)
	if text == "level" {
		return LevelDeck(), nil
	}
	for _, side := range []struct {
		word string
		deck func(tolerance.Bracket) Deck
	}{{"below", DeckBelow}, {"above", DeckAbove}} {
		size, ok := strings.CutSuffix(text, side.word)
		if !ok {
			continue
		}
		b, err := tolerance.ParseBracket(size)
		// A sign beside the word would leave open which of them is meant.
		hi, end := b.Upper()
		if err != nil || b.IsZero() || end != tolerance.Absent && hi <= 0 && !b.Contains(0) {
			break
		}
		return side.deck(b), nil
	}
	return Deck{}, &InputError{"deck", strconv.Quote(clip(s)), deckForms}
}

// String is the deck as [ParseDeck] reads it, or "not measured". A bracket
// that lies on both sides of the face is written as below.
func (d Deck) String() string {
	hi, end := d.below.Upper()
	switch {
	case d.IsZero():
		return "not measured"
	case !d.below.InRange():
		return d.below.String()
	case d == LevelDeck():
		return "level"
	case end != tolerance.Absent && hi <= 0:
		return d.Above().String() + " above"
	}
	return d.below.String() + " below"
}

// MarshalText writes what String gives; a deck that was not measured is empty.
func (d Deck) MarshalText() ([]byte, error) {
	switch {
	case d.IsZero():
		return nil, nil
	case !d.below.InRange():
		return nil, &InputError{"deck", d.below.String(), "within range"}
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what ParseDeck reads, and nothing as not measured.
func (d *Deck) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*d = Deck{}
		return nil
	}
	parsed, err := ParseDeck(string(text))
	if err == nil {
		*d = parsed
	}
	return err
}
