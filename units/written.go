package units

// A Written is a quantity with the unit and the places it was written with:
// a limit as the manual prints it, a blade's mark. Its text is what was
// written (spelling and spaces made regular), so "0.070 mm" keeps its last
// zero and "25/64 in" stays a fraction.
type Written[Q Quantity] struct {
	Value       Q
	Unit        Unit[Q]
	Places      uint8  // decimal places
	Denominator uint16 // of a fraction; 0 where it was written in decimals
	Compound    bool   // written in descending units, as 44° 30′; Unit is the last
}

// ParseWritten reads a quantity as [Parse] does and keeps how it was written.
func ParseWritten[Q Quantity](s string) (Written[Q], error) {
	return parseWritten[Q](s, noUnit)
}

// ParseWrittenIn is [ParseWritten]; a number without a unit is in unit u.
func ParseWrittenIn[Q Quantity](s string, u Unit[Q]) (Written[Q], error) {
	if int(u) >= len(tableOf[Q]().units) {
		u = 0
	}
	return parseWritten[Q](s, uint8(u))
}

func parseWritten[Q Quantity](s string, def uint8) (Written[Q], error) {
	t := tableOf[Q]()
	v, w, err := t.parseAny(s, def, t.parseMax)
	if err != nil {
		return Written[Q]{}, err
	}
	return Written[Q]{Value: Q(v), Unit: Unit[Q](w.unit), Places: w.places, Denominator: w.den, Compound: w.compound}, nil
}

// As gives q the way of writing of w, rounded to nearest, ties to even; a
// fraction becomes decimals where q is not a whole number of its parts.
func (w Written[Q]) As(q Q) Written[Q] {
	w.Value = q
	return w
}

// Step is the value of one unit in the last place written: 0.01 mm for
// "0.07 mm", 1/64 in for "25/64 in".
func (w Written[Q]) Step() Q {
	u := tableOf[Q]().unit(uint8(w.Unit))
	if w.Denominator != 0 {
		return Q(u.quanta / int64(w.Denominator))
	}
	return Q(u.step[min(int(w.Places), u.places)])
}

// Exact reports whether the text shows the value exactly.
func (w Written[Q]) Exact() bool {
	_, exact := w.Append(nil)
	return exact
}

// String is the quantity as it was written.
func (w Written[Q]) String() string {
	dst, _ := w.Append(make([]byte, 0, 32))
	return string(dst)
}

// Append appends [Written.String] and tells whether it is exactly the value.
func (w Written[Q]) Append(dst []byte) ([]byte, bool) {
	t := tableOf[Q]()
	return t.appendWritten(dst, int64(w.Value), written{uint8(w.Unit), w.Places, w.Denominator, w.Compound})
}

func (t *table) appendWritten(dst []byte, v int64, w written) ([]byte, bool) {
	u := t.unit(w.unit)
	if w.compound && t.inRange(v) {
		return t.appendChain(dst, v, w), true
	}
	den := int64(w.den)
	if den == 0 {
		return t.append(dst, v, w.unit, int(w.places), NearestEven, 0)
	}
	if !t.inRange(v) || u.quanta%den != 0 || (v-u.zero)%(u.quanta/den) != 0 {
		return t.append(dst, v, w.unit, AllPlaces, NearestEven, 0)
	}
	if v -= u.zero; v < 0 {
		dst = append(dst, '-')
	}
	parts := magnitude(v) / uint64(u.quanta/den)
	if whole := parts / uint64(den); whole != 0 {
		dst = append(appendWhole(dst, whole, 1), ' ')
	}
	dst = append(appendWhole(dst, parts%uint64(den), 1), '/')
	dst = append(appendWhole(dst, uint64(den), 1), ' ')
	return append(dst, u.symbol...), true
}

// appendChain writes v in the descending units that end in w's: 44° 30′ 15″.
// The last keeps as many places as it needs.
func (t *table) appendChain(dst []byte, v int64, w written) []byte {
	if v < 0 {
		dst = append(dst, '-')
	}
	left := int64(magnitude(v))
	k := int(w.unit)
	for up := t.above(k); up >= 0; up = t.above(k) {
		k = up
	}
	for k != int(w.unit) {
		u := &t.units[k]
		if n := left / u.quanta; n != 0 {
			dst, _ = t.append(dst, n*u.quanta, uint8(k), 0, NearestEven, 0)
			left -= n * u.quanta
			if left == 0 {
				return dst
			}
			dst = append(dst, ' ')
		}
		k = u.sub - 1
	}
	if w.compound = false; w.den == 0 {
		if n, ok := t.places(left, w.unit); ok {
			w.places = max(w.places, uint8(n))
		}
	}
	dst, _ = t.appendWritten(dst, left, w)
	return dst
}

// above is the unit that unit k divides in written chains, or -1.
func (t *table) above(k int) int {
	for i := range t.units {
		if t.units[i].sub == k+1 {
			return i
		}
	}
	return -1
}

// MarshalText writes the quantity as it was written. It fails where that
// would not be exactly the value, or the value is out of range.
func (w Written[Q]) MarshalText() ([]byte, error) {
	t := tableOf[Q]()
	if !t.inRange(int64(w.Value)) {
		return nil, t.refuse("encode", int64(w.Value))
	}
	dst, exact := w.Append(make([]byte, 0, 32))
	if !exact {
		return nil, &RangeError{Quantity: t.quantity, Op: "encode", Value: string(dst), Kind: ErrTooFine, Want: "as many places as show the value exactly"}
	}
	return dst, nil
}

// UnmarshalText reads a quantity and keeps how it was written.
func (w *Written[Q]) UnmarshalText(text []byte) error {
	v, err := ParseWritten[Q](string(text))
	if err != nil {
		return err
	}
	*w = v
	return nil
}
