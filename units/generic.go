package units

// The functions here do for any Quantity, in generic code, what its methods
// do for the type itself.

// Append appends q in the given style and reports whether what it wrote is
// exactly q.
func Append[Q Quantity](dst []byte, q Q, s Style[Q]) (text []byte, exact bool) {
	return tableOf[Q]().append(dst, int64(q), uint8(s.Unit), s.Places, s.Rounding, s.flags())
}

// AppendText appends q exactly, as its own AppendText does.
func AppendText[Q Quantity](dst []byte, q Q) ([]byte, error) {
	return tableOf[Q]().appendText(dst, int64(q))
}

// Round is q rounded to so many decimal places of unit u, and whether it
// stood there already.
func Round[Q Quantity](q Q, u Unit[Q], places int, r Rounding) (rounded Q, exact bool) {
	v, exact := tableOf[Q]().round(int64(q), uint8(u), places, r)
	return Q(v), exact
}

// Places is the least number of decimal places that shows q exactly in unit
// u; ok is false where no finite number does.
func Places[Q Quantity](q Q, u Unit[Q]) (n int, ok bool) {
	return tableOf[Q]().places(int64(q), uint8(u))
}
