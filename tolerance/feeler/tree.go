package feeler

import (
	"math/big"
	"strings"

	"github.com/tenthou/tenthou/tolerance"
)

// Done reports whether nothing is left to try.
func (t *Tree) Done() bool { return t == nil || t.Refused == nil || t.Entered == nil }

// Next is the plan after its blade was tried: Entered for free and drag,
// Refused for forced and refused. Where the blade was not tried, or nothing is
// left to try, it is the plan itself.
func (t *Tree) Next(feel Feel) *Tree {
	switch {
	case t.Done():
	case feel.Entered():
		return t.Entered
	case feel == Forced || feel == Refused:
		return t.Refused
	}
	return t
}

// Expected is the number of trials to expect, by the prior, as an exact
// fraction.
func (t *Tree) Expected() *big.Rat {
	sum := new(big.Rat)
	t.visit(func(t *Tree) {
		if !t.Done() && t.Chance != nil {
			sum.Add(sum, t.Chance)
		}
	})
	if t != nil && t.Chance != nil && t.Chance.Sign() > 0 {
		sum.Quo(sum, t.Chance)
	}
	return sum
}

// Most is the number of trials that it may take.
func (t *Tree) Most() int {
	if t.Done() {
		return 0
	}
	return 1 + max(t.Refused.Most(), t.Entered.Most())
}

func (t *Tree) visit(f func(*Tree)) {
	if t == nil {
		return
	}
	f(t)
	t.Refused.visit(f)
	t.Entered.visit(f)
}

// Text is the plan for the bench, a trial a line, each followed by what to do
// where the blade does not go in and where it does:
//
//	try .0025 in / 0.064 mm
//	  refused: try .0015 in / 0.038 mm
//	    refused: can't tell, no blade of the set lies in [0 mm, 0.0381 mm)
//	    entered: as new, [0.0381 mm, 0.0635 mm)
func (t *Tree) Text() string {
	if t == nil {
		return ""
	}
	var b strings.Builder
	t.write(&b, "", "")
	return b.String()
}

func (t *Tree) write(b *strings.Builder, indent, after string) {
	b.WriteString(indent + after)
	switch {
	case !t.Done():
		b.WriteString("try " + t.Blade.MarkText() + "\n")
		t.Refused.write(b, indent+"  ", "refused: ")
		t.Entered.write(b, indent+"  ", "entered: ")
	case t.Standing == tolerance.CantTell:
		b.WriteString("can't tell, no blade of the set lies in " + t.Bracket.String() + "\n")
	default:
		b.WriteString(t.Standing.String() + ", " + t.Bracket.String() + "\n")
	}
}
