package units

// A Written is a quantity with the unit and the places it was written with:
// a limit as the manual prints it, a blade's mark. Its text is what was
// written (spelling and spaces made regular), so "0.070 mm" keeps its last
// zero and "25/64 in" stays a fraction.
type Written[Q Quantity] struct {
	Value       Q       // exactly what was written
	Unit        Unit[Q] // that it was written in
	Places      uint8   // decimal places
	Denominator uint16  // of a fraction; 0 where it was written in decimals
	Compound    bool    // written in descending units, as 44° 30′; Unit is the last
}

// ParseWritten reads a quantity as [Parse] does and keeps how it was written.
func ParseWritten[Q Quantity](s string) (Written[Q], error) {
	return parseWritten[Q](s, noUnit, tableOf[Q]().parseMax)
}

// ParseWrittenIn is [ParseWritten]; a number without a unit is in unit u.
func ParseWrittenIn[Q Quantity](s string, u Unit[Q]) (Written[Q], error) {
	t := tableOf[Q]()
	return parseWritten[Q](s, t.index(uint8(u)), t.parseMax)
}

func parseWritten[Q Quantity](s string, def uint8, most int64) (Written[Q], error) {
	v, w, err := tableOf[Q]().parseAny(s, def, most)
	if err != nil {
		return Written[Q]{}, err
	}
	return Written[Q]{Value: Q(v), Unit: Unit[Q](w.unit), Places: w.places, Denominator: w.den, Compound: w.compound}, nil
}

// As gives q the way of writing of w: its text is rounded to as many places
// as w has, to nearest, ties to even ([Written.Exact] tells). Where q is not a
// whole number of a fraction's parts, it is written in decimals.
func (w Written[Q]) As(q Q) Written[Q] {
	w.Value = q
	return w
}

// Step is the value of one unit in the last place written: 0.01 mm for
// "0.07 mm", 1/64 in for "25/64 in". Beyond the places that the unit divides
// the quantum to ([Unit.Places]) it is the step of the last of those.
func (w Written[Q]) Step() Q {
	u := tableOf[Q]().unit(uint8(w.Unit))
	if w.Denominator != 0 {
		return Q(max(1, u.quanta/int64(w.Denominator)))
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
	if w.compound && t.inRange(v) && t.above(int(t.index(w.unit))) >= 0 {
		return t.appendChain(dst, v, w)
	}
	if w.den == 0 {
		return t.append(dst, v, w.unit, int(w.places), NearestEven, 0)
	}
	u := t.unit(w.unit)
	if !t.inRange(v) || !u.hasParts(v, w.den) {
		return t.append(dst, v, w.unit, AllPlaces, NearestEven, 0)
	}
	if v -= u.zero; v < 0 {
		dst = append(dst, '-')
	}
	return u.appendFraction(dst, magnitude(v), w.den), true
}

// hasParts reports whether v is a whole number of so many parts of u, and not
// too long to be read.
func (u *unit) hasParts(v int64, den uint16) bool {
	v -= u.zero
	return u.quanta%int64(den) == 0 && v%(u.quanta/int64(den)) == 0 && magnitude(v/u.quanta) < pow10[wholeDigits]
}

func (u *unit) appendFraction(dst []byte, m uint64, den uint16) []byte {
	parts := m / uint64(u.quanta/int64(den))
	whole, over := parts/uint64(den), parts%uint64(den)
	switch {
	case over == 0:
		return u.appendSymbol(appendWhole(dst, whole))
	case whole != 0:
		dst = append(appendWhole(dst, whole), ' ')
	}
	dst = append(appendWhole(dst, over), '/')
	return u.appendSymbol(appendWhole(dst, uint64(den)))
}

func (u *unit) appendSymbol(dst []byte) []byte {
	if !u.tight {
		dst = append(dst, ' ')
	}
	return append(dst, u.symbol...)
}

// appendChain writes v in descending units that end in w's: 44° 30′ 15″. It
// has two of them at least. What is rounded is rounded first, so that no part
// reaches one of the unit before it.
func (t *table) appendChain(dst []byte, v int64, w written) ([]byte, bool) {
	w.unit = t.index(w.unit)
	end := int(w.unit)
	last := &t.units[end]
	exact := true
	if w.den != 0 && !last.hasParts(v, w.den) {
		n, _ := t.places(v, w.unit)
		w.den, w.places = 0, uint8(n)
	}
	if w.den == 0 {
		var rounded int64
		if rounded, exact = t.round(v, w.unit, int(w.places), NearestEven); !exact {
			w.places = min(w.places, uint8(last.places))
			rounded, _ = t.round(v, w.unit, int(w.places), NearestEven)
		}
		if !t.inRange(rounded) { // at the very end of the range: no parts
			return t.append(dst, v, w.unit, int(w.places), NearestEven, 0)
		}
		v = rounded
	}
	top := end
	for up := t.above(end); up >= 0 && (top == end || magnitude(v) >= uint64(t.units[up].quanta)); up = t.above(up) {
		top = up
	}
	if v < 0 {
		dst = append(dst, '-')
	}
	left := magnitude(v)
	for k := top; k != end; k = t.units[k].sub - 1 {
		u := &t.units[k]
		dst = append(u.appendSymbol(appendWhole(dst, left/uint64(u.quanta))), ' ')
		left %= uint64(u.quanta)
	}
	if w.den != 0 {
		return last.appendFraction(dst, left, w.den), true
	}
	dst, _ = t.append(dst, int64(left), w.unit, int(w.places), NearestEven, 0)
	return dst, exact
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

// UnmarshalText reads a quantity, over the whole range, and keeps how it was
// written.
func (w *Written[Q]) UnmarshalText(text []byte) error {
	v, err := parseWritten[Q](capped(text), noUnit, limit)
	if err != nil {
		return err
	}
	*w = v
	return nil
}
