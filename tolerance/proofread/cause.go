package proofread

import (
	"github.com/tenthou/tenthou/units"
)

// A CauseOf is what may have happened to one reading of a set: a suspicion,
// which nothing acts upon.
type CauseOf[Q units.Quantity] struct {
	Kind   Kind         `json:"kind"`            // ThimbleTurn, DecimalPlace, …
	Num    int64        `json:"num,omitzero"`    // the reading is Num/Den times what it should be;
	Den    int64        `json:"den,omitzero"`    // both 0 where it is off by an amount
	Offset units.Length `json:"offset,omitzero"` // how much it is too great
	Undone Q            `json:"undone"`          // what it would be without, to the nearest quantum
}

// A Cause is what may have happened to one length of a set.
type Cause = CauseOf[units.Length]

// factors are how many times too great or too small a reading can be. That an
// error of 10, 25.4, 2.54, 2 or 39.37 points to its cause is arithmetic.
var factors = [...]struct {
	kind     Kind
	num, den int64
	words    string
}{
	{DecimalPlace, 10, 1, "a decimal place"},
	{WrongUnit, 254, 10, "an inch figure among millimetres, or the other way"},
	{FactorTwo, 2, 1, "a radius for a diameter, or the other way"},
	{StepsMixed, 254, 100, "thousandths of an inch counted as hundredths of a millimetre, or the other way"},
	{StepsMixed, 10_000, 254, "tenths of a millimetre counted as ten-thousandths of an inch, or the other way"},
}

// offsets are what a micrometer is misread by. One turn of the thimble is
// 0.5 mm or 0.025 in, the distance of two marks on the sleeve (TM 9-243,
// pp. 7-5 and 7-6); frames and extension rods come in steps of 25 mm or 1 in.
var offsets = [...]struct {
	kind  Kind
	by    units.Length
	words string
}{
	{ThimbleTurn, 500 * units.Micrometre, "one turn of a metric micrometer's thimble, 0.5 mm"},
	{ThimbleTurn, 25 * units.Thou, "one turn of an inch micrometer's thimble, 0.025 in"},
	{RodLength, 25 * units.Millimetre, "one frame size or rod of a metric set, 25 mm"},
	{RodLength, units.Inch, "one frame size or rod of an inch set, 1 in"},
}

// String says the cause in words.
func (c CauseOf[Q]) String() string {
	for _, f := range factors {
		if c.Kind == f.kind && (c.Num == f.num && c.Den == f.den || c.Num == f.den && c.Den == f.num) {
			return f.words
		}
	}
	for _, o := range offsets {
		if c.Kind == o.kind && c.Offset.Abs() == o.by {
			return o.words
		}
	}
	return c.Kind.String()
}

// causes lists what would make x out of the size that its neighbours have, the
// nearest first. x is given as its middle and half its width.
func causes[Q units.Quantity](x, half, middle, spread int64) (found []CauseOf[Q]) {
	size := apart(middle, 0)
	type scored struct {
		cause CauseOf[Q]
		off   uint64
	}
	var list []scored
	// accept keeps the cause if what it undoes lies among the neighbours. Where
	// they lie too far apart, room, nothing can be told.
	accept := func(c CauseOf[Q], undoneHalf int64, least, room uint64) {
		if uint64(spread) > room || !units.InRange(Q(undoneHalf)) {
			return
		}
		allow := max(3*uint64(spread), least)
		off := apart(int64(c.Undone), middle)
		if allow > room {
			return
		}
		allow = min(allow, size/2)
		if !units.InRange(c.Undone) || off > allow+uint64(undoneHalf) || apart(x, middle) <= 2*allow+uint64(half) {
			return
		}
		i := 0
		for i < len(list) && list[i].off <= off {
			i++
		}
		list = append(list, scored{})
		copy(list[i+1:], list[i:])
		list[i] = scored{c, off}
	}
	for _, f := range factors {
		room := size / 4
		if f.num >= 10*f.den { // honest wear doesn't come near it
			room = size
		}
		for _, c := range []CauseOf[Q]{{Kind: f.kind, Num: f.num, Den: f.den}, {Kind: f.kind, Num: f.den, Den: f.num}} {
			c.Undone = units.ScaleRound(Q(x), c.Den, c.Num, units.NearestEven)
			accept(c, int64(units.ScaleRound(Q(half), c.Den, c.Num, units.Up)), size/50, room)
		}
	}
	if _, is := any(Q(0)).(units.Length); is {
		for _, o := range offsets {
			for _, by := range []units.Length{o.by, -o.by} {
				step := uint64(o.by)
				if size >= step {
					accept(CauseOf[Q]{Kind: o.kind, Offset: by, Undone: Q(x - int64(by))}, half, min(step/10, uint64(100*units.Micrometre)), step/4)
				}
			}
		}
	}
	for _, s := range list {
		found = append(found, s.cause)
	}
	return found
}
