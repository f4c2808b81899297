package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// finestFraction is the denominator of the finest fraction on a rule.
const finestFraction = 64

// parts is a size as whole units and a fraction in its lowest terms.
type parts struct{ whole, num, den int64 }

// partsOf takes a size as 64ths of a unit apart; ok is false where it isn't
// one of them.
func partsOf(v, unit int64) (p parts, ok bool) {
	part := unit / finestFraction
	if part == 0 || v%part != 0 {
		return p, false
	}
	n := v / part
	p = parts{n / finestFraction, n % finestFraction, finestFraction}
	for p.den > 1 && p.num%2 == 0 {
		p.num, p.den = p.num/2, p.den/2
	}
	return p, true
}

// mistakable reports whether one fraction is easily taken for the other: the
// next mark on a rule, the same numerator or the same fraction of another
// whole number, or one digit of the numerator.
func mistakable(a, b parts) bool {
	den := max(a.den, b.den)
	apart := (a.whole-b.whole)*den + a.num*(den/a.den) - b.num*(den/b.den)
	switch {
	case apart == 1 || apart == -1:
		return true
	case a.num == b.num && a.den == b.den:
		return true
	case a.whole != b.whole:
		return false
	case a.num == b.num:
		return a.num != 0
	case a.den != b.den:
		return false
	}
	x, y := uint64(a.num), uint64(b.num)
	return differing(x, y) == 1 || x%10 == y/10 && y%10 == x/10
}

// fraction tries another fraction for a printed one, and another line of a
// table of decimal equivalents for a decimal that stands in it.
func (s *search[Q]) fraction(side Side) {
	w := s.pair.side(side)
	length, is := any(w).(units.Written[units.Length])
	if !is || w.Denominator == 0 && (length.Unit != units.InInches || w.Places < 3) {
		return
	}
	unit := int64(units.Written[Q]{Unit: w.Unit}.Step())
	f, ok := nearestFraction(s.pair.side(side.other()), w)
	printed := int64(w.Value)
	if w.Denominator == 0 { // a decimal equivalent
		part := unit / finestFraction
		if printed = nearestPart(printed, part) * part; !rounds(printed, show(w), 0) {
			return
		}
	}
	a, okA := partsOf(printed, unit)
	b, okB := partsOf(int64(f.Value), unit)
	if !ok || !okA || !okB || printed == int64(f.Value) || !mistakable(a, b) {
		return
	}
	if w.Denominator == 0 && a.whole != b.whole { // a table of equivalents has no whole numbers
		return
	}
	undone := f
	if w.Denominator == 0 {
		undone = decimalOf(f.Value, w.Unit, int(w.Places))
	}
	s.add(SlipOf[Q]{Kind: FractionMisread, In: side, Undone: undone, Rank: rankFraction}, apart(int64(f.Value), s.at[side.other().index()].value))
}

// nearestPart is how many parts come nearest to v.
func nearestPart(v, part int64) int64 {
	n := v / part
	switch rest := v % part; {
	case 2*rest > part:
		n++
	case 2*rest < -part:
		n--
	}
	return n
}

// nearestFraction is the coarsest fraction of w's unit that agrees with a
// figure of another, as far as the figure shows.
func nearestFraction[Q units.Quantity](other, w units.Written[Q]) (units.Written[Q], bool) {
	unit, target := int64(units.Written[Q]{Unit: w.Unit}.Step()), show(other)
	for den := int64(1); den <= finestFraction && unit%den == 0; den *= 2 {
		v := nearestPart(target.value, unit/den) * (unit / den)
		if v != 0 && agree(shown{v, 0}, target) {
			f := units.Written[Q]{Value: Q(v), Unit: w.Unit, Denominator: uint16(den)}
			if den == 1 {
				f.Denominator = 0
			}
			return f, true
		}
	}
	return units.Written[Q]{}, false
}
