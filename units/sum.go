package units

import (
	"math/bits"
	"strconv"
)

// total adds quanta in 128 bits.
func total[Q Quantity](op string, qs []Q) (hi int64, lo uint64, err error) {
	t := tableOf[Q]()
	for i, q := range qs {
		if !t.inRange(int64(q)) {
			return 0, 0, &RangeError{Quantity: t.quantity, Op: op, Value: "of item " + strconv.Itoa(i), Kind: ErrRange, Want: "every item within " + t.rangeText(limit)}
		}
		var carry uint64
		lo, carry = bits.Add64(lo, uint64(q), 0)
		hi += int64(q)>>63 + int64(carry)
	}
	return hi, lo, nil
}

// Sum adds exactly. An item or a sum out of range is a [RangeError]; so are
// temperatures, which are not added.
func Sum[Q Quantity](qs ...Q) (Q, error) {
	if isTemperature[Q]() {
		return 0, &RangeError{Quantity: temperatures.quantity, Op: "sum", Kind: ErrRange, Want: "differences: temperatures are not added"}
	}
	hi, lo, err := total("sum", qs)
	if err != nil {
		return 0, err
	}
	v := int64(lo)
	if hi != v>>63 || !ok(v) {
		t := tableOf[Q]()
		return 0, &RangeError{Quantity: t.quantity, Op: "sum", Kind: ErrRange, Want: "within " + t.rangeText(limit)}
	}
	return Q(v), nil
}

// Mean is the arithmetic mean, rounded once to the nearest quantum, ties to
// even. The mean of nothing, or of an item out of range, is a [RangeError].
func Mean[Q Quantity](qs ...Q) (Q, error) {
	if len(qs) == 0 {
		return 0, &RangeError{Quantity: tableOf[Q]().quantity, Op: "mean", Value: "of nothing", Kind: ErrRange, Want: "at least one value"}
	}
	hi, lo, err := total("mean", qs)
	if err != nil {
		return 0, err
	}
	negative := hi < 0
	if negative {
		var borrow uint64
		lo, borrow = bits.Sub64(0, lo, 0)
		hi = -hi - int64(borrow)
	}
	n := uint64(len(qs))
	q, rem := bits.Div64(uint64(hi), lo, n) // |mean| is in range, so hi < n
	v := int64(NearestEven.roundQuo(q, rem, n, negative))
	if negative {
		v = -v
	}
	return Q(v), nil
}
